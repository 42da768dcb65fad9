// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/liquid.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/blending.hpp>
#include <aqueth/plain/status.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <initializer_list>
#include <optional>
#include <span>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// The outcome of a mixing: the product and the contraction.
struct [[nodiscard]] blend {
    parcel product;  ///< the mixture, at the temperature asked for
    /// sum of the parts' volumes before mixing, at the product's temperature
    units::volume sum_of_volumes;
    units::volume contraction;  ///< sum_of_volumes less the product's volume

    /// @return contraction in percent of the sum of volumes
    constexpr double contraction_percent() const { return 100.0 * in(contraction, sum_of_volumes); }
};

/// Mixes parcels: masses add, volumes do not.
/// @param parts               parcels, at least one of them not empty
/// @param product_temperature temperature of the mixture when it is used or measured; every part must be
///                            liquid there. By default the temperature that the mixture reaches
///                            without loss of heat (parts from 0 °C up). Water and strong spirit become
///                            warmer than either, so a reading of a fresh mixture needs this temperature.
/// @return product, sum of volumes and contraction
/// @throws refusal if there are no parts, all are empty, or a temperature (also that of the mixture) is
///         outside its range
/// @par Accuracy
/// Masses and strength are exact. The temperature without loss of heat is good to about 0.5 K; a real vessel
/// takes up some of the heat.
/// @par Source
/// @ref source_oiml_r22; heat of mixing @ref source_excess_gibbs
inline blend mix(std::span<parcel const> parts,
                 std::optional<units::temperature> product_temperature = std::nullopt) {
    double const product_celsius = product_temperature ? product_temperature->celsius() : 0.0;
    auto const mixed = plain::detail::mix_parts<double>(parts.data(), parts.size(),
                                                        product_temperature ? &product_celsius : nullptr);
    detail::accept("mixing", mixed.status);
    return {parcel::of(mixed.value.product), mixed.value.sum_m3 * cubic_metre,
            mixed.value.contraction_m3 * cubic_metre};
}

/// Mixes parcels given in braces: `mix({heart, tail}, celsius(20))`.
/// @copydetails mix(std::span<parcel const>, std::optional<units::temperature>)
inline blend mix(std::initializer_list<parcel> parts,
                 std::optional<units::temperature> product_temperature = std::nullopt) {
    return mix(std::span<parcel const>(parts.begin(), parts.size()), product_temperature);
}

/// A mixing that brings a parcel to a strength by adding one other liquid.
struct [[nodiscard]] adjustment : blend {
    parcel addition;  ///< what to add: weigh its mass, or measure its volume at its temperature
};

namespace detail {

// Strengths in the basis of the target, so that the message shows the number that was given.
template <strength_basis Target>
[[noreturn, gnu::cold, gnu::noinline]] void raise_refused(char const* property, Target target,
                                                          plain::status const& why) {
    bool const of_target = why.argument == argument::target_strength;
    bool const of_part = why.argument == argument::strength_of_the_diluent ||
                         why.argument == argument::strength_of_the_stronger_spirit;
    if (!of_target && !of_part) raise_refused(property, why);
    auto const in_basis = [](double w) { return to<Target>(mass_fraction(w)).number(); };
    raise_error(refusal(property, why.argument, of_target ? target.number() : in_basis(why.value),
                        Target::unit, in_basis(why.lower), in_basis(why.upper), name_of(why.limit)));
}

/// @param property the property being computed
/// @param target   the target as given
/// @param found    answer of the plain floor
/// @return its value; raises a refusal where it refused, with strengths in the basis of the target
template <strength_basis Target>
constexpr double answer(char const* property, Target target, plain::checked<double> const& found) {
    if (!found.status.ok) [[unlikely]]
        raise_refused(property, target, found.status);
    return found.value;
}

inline adjustment adjust(parcel const& start, parcel const& addition,
                         std::optional<units::temperature> product_temperature) {
    return {mix({start, addition}, product_temperature), addition};
}

}  // namespace detail

/// Dilutes a parcel with water, or with a weaker spirit, to a strength.
/// @param spirit              parcel to dilute
/// @param target              strength wanted, in any basis, above that of the diluent and not above that of
///                            the spirit
/// @param diluent             what is added: `water_at(celsius(15))`, or a weaker liquid
/// @param product_temperature temperature of the mixture when it is used or measured, from 0 °C up; left out,
///                            what it warms to without loss of heat (see `mix`)
/// @return diluent to add (`addition`), product, contraction
/// @throws refusal if the diluent is stronger than the spirit, the target is above the spirit's strength
///         or not above the diluent's, or the temperature is outside its range
/// @par Accuracy
/// The mass to add is exact; its error is that of the strengths.
template <strength_basis Target>
adjustment dilute(parcel const& spirit, Target target, liquid const& diluent,
                  std::optional<units::temperature> product_temperature = std::nullopt) {
    double const share = detail::answer("dilution", target,
                                        plain::detail::share_to_dilute(spirit.composition().value(),
                                                                       to<mass_fraction>(target).value(),
                                                                       diluent.composition().value()));
    return detail::adjust(spirit, parcel::of(share * spirit.mass(), diluent), product_temperature);
}

/// Strengthens a parcel with a stronger spirit.
/// @param weak                parcel to fortify
/// @param target              strength wanted, in any basis, from that of the parcel to below that of the
///                            stronger spirit
/// @param stock               the stronger spirit, at the temperature at which it is measured
/// @param product_temperature temperature of the mixture when it is used or measured; left out,
///                            what it warms to without loss of heat (see `mix`)
/// @return stronger spirit to add (`addition`), product, contraction
/// @throws refusal if the stronger spirit is weaker than the parcel, the target cannot be reached, or a
///         temperature is outside its range
template <strength_basis Target>
adjustment fortify(parcel const& weak, Target target, liquid const& stock,
                   std::optional<units::temperature> product_temperature = std::nullopt) {
    double const share = detail::answer("fortification", target,
                                        plain::detail::share_to_fortify(weak.composition().value(),
                                                                        to<mass_fraction>(target).value(),
                                                                        stock.composition().value()));
    return detail::adjust(weak, parcel::of(share * weak.mass(), stock), product_temperature);
}

/// An amount made up from a spirit and water, or a weaker liquid.
struct [[nodiscard]] preparation : blend {
    parcel spirit;   ///< spirit to take
    parcel diluent;  ///< diluent to take
};

namespace detail {

template <strength_basis Target>
constexpr mass_fraction made_up(Target target, liquid const& stock, liquid const& diluent) {
    return mass_fraction(
        answer("making up", target,
               plain::detail::made_up(to<mass_fraction>(target).value(), stock.composition().value(),
                                      diluent.composition().value())));
}

inline preparation make_up(units::mass mass, mass_fraction w, liquid const& stock, liquid const& diluent,
                           std::optional<units::temperature> product_temperature) {
    double const share =
        plain::detail::share_of_stock(w.value(), stock.composition().value(), diluent.composition().value());
    parcel const spirit = parcel::of(share * mass, stock);
    parcel const added = parcel::of((1.0 - share) * mass, diluent);
    return {mix({spirit, added}, product_temperature), spirit, added};
}

}  // namespace detail

/// Makes a given volume of a given strength from a stronger stock and water, or a weaker liquid.
/// @param volume              volume wanted, at `product_temperature`
/// @param product_temperature temperature at which that volume is meant, from 0 °C up
/// @param target              strength wanted, in any basis, from that of the diluent to that of the stock
/// @param stock               the stock, at the temperature at which it is measured
/// @param diluent             what is added: `water_at(celsius(15))`, or a weaker liquid
/// @return spirit and diluent to take, product, contraction
/// @throws refusal if the target is not between the strengths of the two, the volume is negative or not
///         finite, or the temperature is outside its range
template <strength_basis Target>
preparation make_up(units::volume volume, units::temperature product_temperature, Target target,
                    liquid const& stock, liquid const& diluent) {
    mass_fraction const w = detail::made_up(target, stock, diluent);
    return detail::make_up(parcel::of(volume, w, product_temperature).mass(), w, stock, diluent,
                           product_temperature);
}

/// Makes a given mass of a given strength from a stronger stock and water, or a weaker liquid.
/// @param mass                mass wanted, above 0
/// @param target              strength wanted, in any basis, from that of the diluent to that of the stock
/// @param stock               the stock, at the temperature at which it is measured
/// @param diluent             what is added: `water_at(celsius(15))`, or a weaker liquid
/// @param product_temperature temperature of the mixture when it is used or measured, from 0 °C up; left out,
///                            what it warms to without loss of heat (see `mix`)
/// @return spirit and diluent to take, product, contraction
/// @throws refusal if the target is not between the strengths of the two, the mass is not above 0 or not
///         finite, or the temperature is outside its range
template <strength_basis Target>
preparation make_up(units::mass mass, Target target, liquid const& stock, liquid const& diluent,
                    std::optional<units::temperature> product_temperature = std::nullopt) {
    mass_fraction const w = detail::made_up(target, stock, diluent);
    return detail::make_up(mass, w, stock, diluent, product_temperature);
}

/// Dilutes in several equal additions, a practice against clouding and warming.
/// @param spirit              parcel to dilute
/// @param target              strength after the last addition, in any basis, not above that of the spirit
/// @param additions           number of equal additions, 1 to 1000
/// @param diluent             what is added: `water_at(celsius(15))`, or a weaker liquid
/// @param product_temperature temperature of the mixture when it is measured, from 0 °C up; left out, each
///                            addition warms it without loss of heat (see `mix`)
/// @return one adjustment for each addition, each starting from the product of the previous one
/// @throws refusal as `dilute`, or if the number of additions is outside its range
template <strength_basis Target>
[[nodiscard]] std::vector<adjustment>
dilute_in_additions(parcel const& spirit, Target target, int additions, liquid const& diluent,
                    std::optional<units::temperature> product_temperature = std::nullopt) {
    detail::accept("dilution", plain::detail::additions_range(additions));
    adjustment const whole = dilute(spirit, target, diluent, product_temperature);
    parcel const portion = whole.addition.with_mass(whole.addition.mass() / static_cast<double>(additions));
    std::vector<adjustment> steps;
    parcel current = spirit;
    for (int k = 0; k < additions; ++k) {
        steps.push_back(detail::adjust(current, portion, product_temperature));
        current = steps.back().product;
    }
    return steps;
}

}  // namespace aqueth::inline AQUETH_ABI
