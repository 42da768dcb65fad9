// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/caloric.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/error.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/liquid.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <initializer_list>
#include <limits>
#include <optional>
#include <span>
#include <vector>

namespace aqueth {

/// The outcome of a mixing: the product and the contraction.
struct [[nodiscard]] blend {
    parcel product;  ///< the mixture, at the temperature asked for
    /// sum of the parts' volumes before mixing, at the product's temperature
    units::volume sum_of_volumes;
    units::volume contraction;  ///< sum_of_volumes less the product's volume

    /// @return contraction in percent of the sum of volumes
    constexpr double contraction_percent() const { return 100.0 * in(contraction, sum_of_volumes); }
};

namespace detail {

/// Totals of parcels: mass, composition, and the temperature of the mixture without loss of heat.
struct totals {
    units::mass mass{};
    units::mass ethanol{};
    mass_fraction composition{0.0};
    mass_fraction weakest{1.0};  ///< of the parts that are not empty: it freezes first

    explicit totals(std::span<parcel const> parts) {
        require_range("mixing", argument::number_of_parcels, static_cast<double>(parts.size()), "", 1.0,
                      unlimited);
        for (parcel const& part : parts) {
            mass += part.mass();
            ethanol += part.ethanol();
            if (part.mass() > units::mass()) weakest = (std::min)(weakest, part.composition());
        }
        require_range("mixing", argument::mass_of_all_parcels, mass.value(), "kg",
                      (std::numeric_limits<double>::min)(), unlimited);
        double const w = in(ethanol, mass);
        composition = mass_fraction(w < 1.0 ? w : 1.0);
    }

    /// Parts without mass have no heat; a part alone keeps its temperature, whatever it is.
    units::temperature temperature(std::span<parcel const> parts) const {
        units::energy heat;
        double const highest = correlation::oiml_r22::highest_celsius;
        for (parcel const& part : parts) {
            if (part.mass() == mass) return part.temperature();
            if (part.mass() == units::mass()) continue;
            require_range("mixing", argument::temperature_of_a_part, part.temperature().celsius(), "°C",
                          heat::lowest_celsius, highest,
                          "where heats of mixing are known; else give the temperature of the mixture");
            heat += part.mass() * enthalpy_of_liquid(part.composition(), part.temperature());
        }
        double const mixed = mixed_celsius(heat / mass);
        require_range("mixing", argument::temperature_of_the_mixture_without_loss_of_heat, mixed, "°C",
                      heat::lowest_celsius, highest + rounding,
                      "OIML R 22, heats of mixing; give the temperature at which it will be measured");
        return celsius((std::min)(mixed, highest));
    }

private:
    /// Spirits of nearly one strength cool as they mix. Below the range of the heats the heat capacity at its
    /// end gives an estimate, because the error must name a temperature.
    double mixed_celsius(units::specific_energy mixed) const {
        double const lacking = specific_enthalpy(composition, heat::lowest_kelvin) - mixed.value();
        if (lacking <= 0.0) return temperature_of_liquid(composition, mixed).celsius();
        double const below = lacking / specific_heat(composition, heat::lowest_kelvin);
        return below <= rounding ? heat::lowest_celsius : heat::lowest_celsius - below;
    }
};

}  // namespace detail

/// Mixes parcels: masses add, volumes do not.
/// @param parts               parcels, at least one of them not empty
/// @param product_temperature temperature of the mixture when it is used or measured; every part must be
///                            liquid there, up to 40 °C. By default the temperature that the mixture reaches
///                            without loss of heat (parts at 0 to 40 °C). Water and strong spirit become
///                            warmer than either, so a reading of a fresh mixture needs this temperature.
/// @return product, sum of volumes and contraction
/// @throws range_error if there are no parts, all are empty, or a temperature (also that of the mixture) is
///         outside its range
/// @par Accuracy
/// Masses and strength are exact. The temperature without loss of heat is good to about 0.5 K; a real vessel
/// takes up some of the heat.
/// @par Source
/// @ref source_oiml_r22; heat of mixing @ref source_excess_gibbs
inline blend mix(std::span<parcel const> parts,
                 std::optional<units::temperature> product_temperature = std::nullopt) {
    detail::totals const all(parts);
    units::temperature const t = product_temperature ? *product_temperature : all.temperature(parts);
    if (product_temperature) detail::require_liquid("mixing", all.weakest, t);  // else the sum has no meaning
    parcel const product = parcel::of(all.mass, all.composition, t);
    units::volume sum;
    for (parcel const& part : parts) {
        if (part.mass() > units::mass())
            sum += part.volume(t);  // an empty part may be a liquid that is frozen at t
    }
    return {product, sum, sum - product.volume()};
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

/// Target strength, checked to lie between two compositions, as a mass fraction. A target equal to a limit
/// must not fail because its conversion was rounded.
template <strength_basis Target>
constexpr mass_fraction reachable(char const* property, Target target, mass_fraction weakest,
                                  mass_fraction strongest, char const* reason) {
    constexpr double conversion = 1e-12;
    double const w = to<mass_fraction>(target).value();
    if (!(weakest.value() - conversion <= w && w <= strongest.value() + conversion)) {
        raise(range_error(property, argument::target_strength, target.number(), Target::unit,
                          to<Target>(weakest).number(), to<Target>(strongest).number(), reason));
    }
    return mass_fraction(std::clamp(w, weakest.value(), strongest.value()));
}

/// how far above the diluent's mass fraction a product must be; a smaller distance would need unlimited
/// diluent
inline constexpr double least_above_diluent = 1e-6;

/// Raises a range_error unless a diluent is no stronger than what it dilutes.
template <strength_basis Target>
constexpr void require_weaker(char const* property, mass_fraction diluent, mass_fraction spirit) {
    if (diluent <= spirit) return;
    raise(range_error(property, argument::strength_of_the_diluent, to<Target>(diluent).number(), Target::unit,
                      to<Target>(mass_fraction(0.0)).number(), to<Target>(spirit).number(),
                      "no higher than that of the spirit"));
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
/// @param product_temperature temperature of the mixture when it is used or measured, 0 to 40 °C; left out,
///                            what it warms to without loss of heat (see `mix`)
/// @return diluent to add (`addition`), product, contraction
/// @throws range_error if the diluent is stronger than the spirit, the target is above the spirit's strength
///         or not above the diluent's, or the temperature is outside its range
/// @par Accuracy
/// The mass to add is exact; its error is that of the strengths.
template <strength_basis Target>
adjustment dilute(parcel const& spirit, Target target, liquid const& diluent,
                  std::optional<units::temperature> product_temperature = std::nullopt) {
    detail::require_weaker<Target>("dilution", diluent.composition(), spirit.composition());
    double const added = diluent.composition().value();
    mass_fraction const w = detail::reachable(
        "dilution", target, mass_fraction((std::min)(added + detail::least_above_diluent, 1.0)),
        spirit.composition(),
        added == 0.0 ? "water only weakens: no higher than the spirit itself"
                     : "above the diluent, no higher than the spirit itself");
    double const share = (spirit.composition().value() - w.value()) / (w.value() - added);
    return detail::adjust(spirit, parcel::of(share * spirit.mass(), diluent), product_temperature);
}

/// Strengthens a parcel with a stronger spirit.
/// @param weak                parcel to fortify
/// @param target              strength wanted, in any basis, from that of the parcel to below that of the
///                            stronger spirit
/// @param stock               the stronger spirit, at the temperature at which it is measured
/// @param product_temperature temperature of the mixture when it is used or measured, to 40 °C; left out,
///                            what it warms to without loss of heat (see `mix`)
/// @return stronger spirit to add (`addition`), product, contraction
/// @throws range_error if the stronger spirit is weaker than the parcel, the target cannot be reached, or a
///         temperature is outside its range
template <strength_basis Target>
adjustment fortify(parcel const& weak, Target target, liquid const& stock,
                   std::optional<units::temperature> product_temperature = std::nullopt) {
    mass_fraction const strongest = stock.composition();
    if (strongest < weak.composition()) {
        raise(range_error("fortification", argument::strength_of_the_stronger_spirit,
                          to<Target>(strongest).number(), Target::unit,
                          to<Target>(weak.composition()).number(), to<Target>(mass_fraction(1.0)).number(),
                          "no lower than that of the parcel"));
    }
    mass_fraction const w =
        detail::reachable("fortification", target, weak.composition(), strongest,
                          "between the parcel's own strength and that of the stronger spirit");
    double const room = strongest.value() - w.value();
    require_range("fortification", argument::stronger_spirit_above_the_target_by, 100.0 * room,
                  mass_fraction::unit, 1e-4, 100.0, "no finite amount reaches its own strength");
    units::mass const mass = weak.mass() * ((w.value() - weak.composition().value()) / room);
    return detail::adjust(weak, parcel::of(mass, stock), product_temperature);
}

/// A volume made up from a spirit and water, or a weaker liquid.
struct [[nodiscard]] preparation : blend {
    parcel spirit;   ///< spirit to take
    parcel diluent;  ///< diluent to take
};

/// Makes a given volume of a given strength from a stronger stock and water, or a weaker liquid.
/// @param volume              volume wanted, at `product_temperature`
/// @param product_temperature temperature at which that volume is meant, 0 to 40 °C
/// @param target              strength wanted, in any basis, from that of the diluent to that of the stock
/// @param stock               the stock, at the temperature at which it is measured
/// @param diluent             what is added: `water_at(celsius(15))`, or a weaker liquid
/// @return spirit and diluent to take, product, contraction
/// @throws range_error if the target is not between the strengths of the two, the volume is negative or not
///         finite, or the temperature is outside its range
template <strength_basis Target>
preparation make_up(units::volume volume, units::temperature product_temperature, Target target,
                    liquid const& stock, liquid const& diluent) {
    detail::require_weaker<Target>("making up", diluent.composition(), stock.composition());
    mass_fraction const w = detail::reachable("making up", target, diluent.composition(), stock.composition(),
                                              "no lower than the diluent, no higher than the stock itself");
    units::mass const mass = parcel::of(volume, w, product_temperature).mass();
    double const weakest = diluent.composition().value();
    double const room = stock.composition().value() - weakest;
    double const share = room > 0.0 ? (w.value() - weakest) / room : 1.0;
    parcel const spirit = parcel::of(share * mass, stock);
    parcel const added = parcel::of((1.0 - share) * mass, diluent);
    return {mix({spirit, added}, product_temperature), spirit, added};
}

/// Dilutes in several equal additions, a practice against clouding and warming.
/// @param spirit              parcel to dilute
/// @param target              strength after the last addition, in any basis, not above that of the spirit
/// @param additions           number of equal additions, 1 to 1000
/// @param diluent             what is added: `water_at(celsius(15))`, or a weaker liquid
/// @param product_temperature temperature of the mixture when it is measured, 0 to 40 °C; left out, each
///                            addition warms it without loss of heat (see `mix`)
/// @return one adjustment for each addition, each starting from the product of the previous one
/// @throws range_error as `dilute`, or if the number of additions is outside its range
template <strength_basis Target>
std::vector<adjustment>
dilute_in_additions(parcel const& spirit, Target target, int additions, liquid const& diluent,
                    std::optional<units::temperature> product_temperature = std::nullopt) {
    require_range("dilution", argument::number_of_additions, additions, "", 1.0, 1000.0);
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

}  // namespace aqueth
