// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/plain/caloric.hpp>
#include <aqueth/plain/freezing.hpp>
#include <aqueth/plain/parcel.hpp>
#include <aqueth/plain/status.hpp>

#include <cstddef>
#include <limits>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI::plain {

/// The outcome of a mixing: the product and the contraction.
template <number T>
struct blend {
    parcel<T> product;  ///< the mixture, at the temperature asked for
    /// sum of the parts' volumes before mixing, at the product's temperature, L
    T sum_of_volumes_litres = std::numeric_limits<T>::quiet_NaN();
    /// that sum less the product's volume, L
    T contraction_litres = std::numeric_limits<T>::quiet_NaN();
};

/// A mixing that brings a parcel to a strength by adding one other liquid.
template <number T>
struct adjustment : blend<T> {
    parcel<T> addition;  ///< what to add
};

/// An amount made up from a stock and water, or a weaker liquid.
template <number T>
struct preparation : blend<T> {
    parcel<T> spirit;   ///< stock to take
    parcel<T> diluent;  ///< diluent to take
};

namespace detail {

/// Temperature of a liquid of this enthalpy, °C. Spirits of nearly one strength cool as they mix. Below the
/// range of the heats the heat capacity at its end gives an estimate, because a refusal must name a
/// temperature.
template <number T>
T celsius_from_enthalpy(T mass_fraction, T enthalpy) {
    T const lowest = T(heat::lowest_kelvin);
    T const lacking = amounts<T>(mass_fraction).enthalpy_j_kg(lowest) - enthalpy;
    if (lacking > T(0)) {
        T const below = lacking / amounts<T>(mass_fraction).heat_capacity_j_kg_k(lowest);
        return below <= rounding<T> ? T(heat::lowest_celsius) : T(heat::lowest_celsius) - below;
    }
    auto const residual = [&](T kelvin) {
        return numeric::value_and_slope<T>{amounts<T>(mass_fraction).enthalpy_j_kg(kelvin) - enthalpy,
                                           amounts<T>(mass_fraction).heat_capacity_j_kg_k(kelvin)};
    };
    T const noise = T(1e6) * std::numeric_limits<T>::epsilon();
    return numeric::bracketed_newton(residual, lowest, T(heat::highest_kelvin), T(300), noise) - T(273.15);
}

/// Numbers of a part: a plain parcel, or a typed one that converts to it.
template <number T, class Part>
constexpr parcel<T> const& numbers(Part const& part) {
    return static_cast<parcel<T> const&>(part);
}

/// Temperature of a mixture without loss of heat. Parts without mass have no heat. A part alone keeps its
/// temperature, whatever that is.
template <number T, class Part>
checked<T> celsius_without_loss(Part const* parts, std::size_t count, T mass_kg, T mass_fraction) {
    T enthalpy = T(0);
    for (std::size_t i = 0; i < count; ++i) {
        parcel<T> const& part = numbers<T>(parts[i]);
        if (part.mass_kg == mass_kg) return {part.celsius, {}};
        if (part.mass_kg == T(0)) continue;
        status const range = within(argument::temperature_of_a_part, part.celsius, heat::lowest_celsius,
                                    heat::highest_celsius, limit::heats_of_mixing);
        if (!range.ok) return no_answer<T>(range);
        enthalpy += part.mass_kg * amounts<T>(part.mass_fraction).enthalpy_j_kg(part.celsius + T(273.15));
    }
    T const mixed = celsius_from_enthalpy(mass_fraction, enthalpy / mass_kg);
    T const highest = hottest_liquid_celsius(mass_fraction);
    status const range =
        within(argument::temperature_of_the_mixture_without_loss_of_heat, mixed, heat::lowest_celsius,
               double(highest + rounding<T>), limit::oiml_r22_and_heats_of_mixing);
    if (!range.ok) return no_answer<T>(range);
    return {mixed < highest ? mixed : highest, {}};
}

/// `blend` with volumes in m3.
template <number T>
struct mixture {
    parcel<T> product;
    T sum_m3 = std::numeric_limits<T>::quiet_NaN();
    T contraction_m3 = std::numeric_limits<T>::quiet_NaN();
};

/// Mixes parts that are not checked.
/// @param parts           the parts
/// @param count           how many
/// @param product_celsius temperature of the mixture; null for that without loss of heat
// Inlined, because copying the answer takes as long as a density.
template <number T, class Part>
[[gnu::always_inline]] constexpr checked<mixture<T>> mix_parts(Part const* parts, std::size_t count,
                                                               T const* product_celsius) {
    using answer = mixture<T>;
    status range = within(argument::number_of_parcels, double(count), 1.0, unlimited);
    if (!range.ok) return no_answer<answer>(range);
    T mass_kg = T(0);
    T ethanol_kg = T(0);
    T weakest = T(1);  // of the parts that are not empty: it freezes first
    for (std::size_t i = 0; i < count; ++i) {
        parcel<T> const& part = numbers<T>(parts[i]);
        mass_kg += part.mass_kg;
        ethanol_kg += part.mass_fraction * part.mass_kg;
        if (part.mass_kg > T(0) && part.mass_fraction < weakest) weakest = part.mass_fraction;
    }
    range =
        within(argument::mass_of_all_parcels, mass_kg, double((std::numeric_limits<T>::min)()), unlimited);
    if (!range.ok) return no_answer<answer>(range);
    T const share = ethanol_kg / mass_kg;
    T const mass_fraction = share < T(1) ? share : T(1);

    T celsius{};
    if (product_celsius != nullptr) {
        celsius = *product_celsius;
    } else {
        auto const without_loss = celsius_without_loss(parts, count, mass_kg, mass_fraction);
        if (!without_loss.status.ok) return no_answer<answer>(without_loss.status);
        celsius = without_loss.value;
    }
    // No part that is not empty may freeze there, else the sum has no meaning. A part that would boil is
    // taken as superheated liquid.
    range = liquid_range(celsius > T(0) ? mass_fraction : weakest, celsius);
    if (!range.ok) {
        range.lower = double(coldest_liquid_celsius(weakest));
        range.upper = double(hottest_liquid_celsius(mass_fraction));
        return no_answer<answer>(range);
    }

    T sum_m3 = T(0);
    for (std::size_t i = 0; i < count; ++i) {
        parcel<T> const& part = numbers<T>(parts[i]);
        if (part.mass_kg > T(0))
            sum_m3 += part.mass_kg / model::hot_density::liquid_density(part.mass_fraction, celsius);
    }
    T const product_m3 = mass_kg / model::hot_density::liquid_density(mass_fraction, celsius);
    return {{{mass_kg, mass_fraction, celsius}, sum_m3, sum_m3 - product_m3}, {}};
}

/// As `mix_parts`, in litres.
template <number T>
constexpr checked<blend<T>> blend_parts(parcel<T> const* parts, std::size_t count, T const* product_celsius) {
    auto const mixed = mix_parts<T>(parts, count, product_celsius);
    if (!mixed.status.ok) return no_answer<blend<T>>(mixed.status);
    return {{mixed.value.product, mixed.value.sum_m3 / cubic_metres_per_litre<T>,
             mixed.value.contraction_m3 / cubic_metres_per_litre<T>},
            {}};
}

template <number T>
constexpr status parcels_range(parcel<T> const* parts, std::size_t count) {
    for (std::size_t i = 0; i < count; ++i) {
        status const range = parcel_range(parts[i]);
        if (!range.ok) return range;
    }
    return {};
}

/// Rounding of a converted strength: a target equal to a limit must not fail because of it.
template <number T>
inline constexpr T conversion = std::is_same_v<T, float> ? T(1e-6) : T(1e-12);

/// How far above the diluent's mass fraction a product must be; a smaller distance would need unlimited
/// diluent.
inline constexpr double least_above_diluent = 1e-6;

/// A target between two mass fractions, which lie from 0 to 1 themselves.
template <number T>
constexpr checked<T> reachable(T target, T weakest, T strongest, limit set_by) {
    if (!(weakest - conversion<T> <= target && target <= strongest + conversion<T>))
        return no_answer<T>(
            refuse(argument::target_strength, double(target), double(weakest), double(strongest), set_by));
    return {target < weakest ? weakest : strongest < target ? strongest : target, {}};
}

template <number T>
constexpr status weaker(T diluent, T spirit) {
    return diluent <= spirit ? status{}
                             : refuse(argument::strength_of_the_diluent, double(diluent), 0.0, double(spirit),
                                      limit::no_stronger_than_the_spirit);
}

/// Mass of diluent per mass of spirit, from mass fractions. Checks the target and the order of the others.
template <number T>
constexpr checked<T> share_to_dilute(T spirit, T target, T diluent) {
    status const order = weaker(diluent, spirit);
    if (!order.ok) return no_answer<T>(order);
    T const least = diluent + T(least_above_diluent);  // but a spirit's own strength needs no diluent at all
    auto const w = reachable(target, least < spirit ? least : spirit, spirit,
                             diluent == T(0) ? limit::water_only_weakens : limit::diluent_only_weakens);
    if (!w.status.ok) return w;
    T const too_strong_by = spirit - w.value;
    return {too_strong_by == T(0) ? T(0) : too_strong_by / (w.value - diluent), {}};
}

/// Mass of stock per mass of the weaker parcel, from mass fractions. Checks the target and the order of the
/// others.
template <number T>
constexpr checked<T> share_to_fortify(T weak, T target, T stock) {
    if (stock < weak)
        return no_answer<T>(refuse(argument::strength_of_the_stronger_spirit, double(stock), double(weak),
                                   1.0, limit::no_weaker_than_the_parcel));
    auto const w = reachable(target, weak, stock, limit::from_the_parcel_to_the_stronger_spirit);
    if (!w.status.ok) return w;
    T const room = stock - w.value;
    status const enough = within(argument::stronger_spirit_above_the_target_by, room, 1e-6, 1.0,
                                 limit::no_amount_reaches_the_stronger_spirit);
    if (!enough.ok) return no_answer<T>(enough);
    return {(w.value - weak) / room, {}};
}

/// Target of a preparation, between the mass fractions of diluent and stock.
template <number T>
constexpr checked<T> made_up(T target, T stock, T diluent) {
    status const order = weaker(diluent, stock);
    if (!order.ok) return no_answer<T>(order);
    return reachable(target, diluent, stock, limit::from_the_diluent_to_the_stock);
}

/// Mass of stock per mass of a preparation of mass fraction w.
template <number T>
constexpr T share_of_stock(T w, T stock, T diluent) {
    T const room = stock - diluent;
    return room > T(0) ? (w - diluent) / room : T(1);
}

/// Mixes a checked parcel with another.
template <number T>
constexpr checked<adjustment<T>> adjust(parcel<T> const& start, parcel<T> const& addition,
                                        T const* product_celsius) {
    parcel<T> const parts[] = {start, addition};
    auto const mixed = blend_parts(parts, 2, product_celsius);
    if (!mixed.status.ok) return no_answer<adjustment<T>>(mixed.status);
    return {{mixed.value, addition}, {}};
}

/// Adds another liquid, a share of the parcel's mass.
template <number T>
constexpr checked<adjustment<T>> adjust(parcel<T> const& start, checked<T> const& share,
                                        liquid<T> const& added, T const* product_celsius) {
    if (!share.status.ok) return no_answer<adjustment<T>>(share.status);
    auto const addition = parcel_by_mass(share.value * start.mass_kg, added.mass_fraction, added.celsius);
    if (!addition.status.ok) return no_answer<adjustment<T>>(addition.status);
    return adjust(start, addition.value, product_celsius);
}

template <number T>
constexpr status pair_range(parcel<T> const& start, liquid<T> const& added) {
    status const first = parcel_range(start);
    return first.ok ? liquid_range(added) : first;
}

template <number T>
constexpr checked<adjustment<T>> dilute(parcel<T> const& spirit, T target, liquid<T> const& diluent,
                                        T const* product_celsius) {
    status const range = pair_range(spirit, diluent);
    if (!range.ok) return no_answer<adjustment<T>>(range);
    return adjust(spirit, share_to_dilute(spirit.mass_fraction, target, diluent.mass_fraction), diluent,
                  product_celsius);
}

template <number T>
constexpr checked<adjustment<T>> fortify(parcel<T> const& weak, T target, liquid<T> const& stock,
                                         T const* product_celsius) {
    status const range = pair_range(weak, stock);
    if (!range.ok) return no_answer<adjustment<T>>(range);
    return adjust(weak, share_to_fortify(weak.mass_fraction, target, stock.mass_fraction), stock,
                  product_celsius);
}

template <number T>
constexpr checked<preparation<T>> make_up(T mass_kg, T w, liquid<T> const& stock, liquid<T> const& diluent,
                                          T const* product_celsius) {
    T const share = share_of_stock(w, stock.mass_fraction, diluent.mass_fraction);
    parcel<T> const parts[] = {{share * mass_kg, stock.mass_fraction, stock.celsius},
                               {(T(1) - share) * mass_kg, diluent.mass_fraction, diluent.celsius}};
    auto const mixed = blend_parts(parts, 2, product_celsius);
    if (!mixed.status.ok) return no_answer<preparation<T>>(mixed.status);
    return {{mixed.value, parts[0], parts[1]}, {}};
}

template <number T>
constexpr checked<preparation<T>> make_up_by_mass(T mass_kg, T target, liquid<T> const& stock,
                                                  liquid<T> const& diluent, T const* product_celsius) {
    status range = liquid_range(stock);
    if (range.ok) range = liquid_range(diluent);
    if (!range.ok) return no_answer<preparation<T>>(range);
    auto const w = made_up(target, stock.mass_fraction, diluent.mass_fraction);
    range = w.status.ok ? within(argument::mass, mass_kg, 0.0, unlimited) : w.status;
    if (!range.ok) return no_answer<preparation<T>>(range);
    return make_up(mass_kg, w.value, stock, diluent, product_celsius);
}

constexpr status additions_range(int additions) {
    return within(argument::number_of_additions, double(additions), 1.0, 1000.0);
}

template <number T>
constexpr status dilute_in_additions(parcel<T> const& spirit, T target, liquid<T> const& diluent,
                                     adjustment<T>* steps, int additions, T const* product_celsius) {
    status const number = additions_range(additions);
    if (!number.ok) return number;
    auto const whole = dilute(spirit, target, diluent, product_celsius);
    if (!whole.status.ok) return whole.status;
    parcel<T> portion = whole.value.addition;
    portion.mass_kg /= T(additions);
    parcel<T> current = spirit;
    for (int k = 0; k < additions; ++k) {
        auto const step = adjust(current, portion, product_celsius);
        if (!step.status.ok) {
            while (k-- > 0) steps[k] = {};  // no half-written plan
            return step.status;
        }
        steps[k] = step.value;
        current = step.value.product;
    }
    return {};
}

}  // namespace detail

/// Mixes parcels: masses add, volumes do not. The mixture has the temperature that it reaches without loss of
/// heat. Water and strong spirit become warmer than either.
/// @param parts parcels, at least one of them not empty; those not empty from 0 °C up
/// @param count how many parcels there are
/// @return product, sum of volumes and contraction; refuses no parcels, only empty ones, and temperatures
///         (also that of the mixture) out of range
/// @par Accuracy
/// Masses and strength are exact. The temperature is good to about 0.5 K; a real vessel takes up some heat.
/// @par Source
/// @ref source_oiml_r22; heat of mixing @ref source_excess_gibbs
template <number T>
checked<blend<T>> mix(parcel<T> const* parts, std::size_t count) {
    status const range = detail::parcels_range(parts, count);
    if (!range.ok) return no_answer<blend<T>>(range);
    return detail::blend_parts<T>(parts, count, nullptr);
}

/// Two parcels mixed without loss of heat.
/// @param a one parcel, from 0 °C up
/// @param b the other, from 0 °C up
/// @return the mixture; refuses as the function above
template <number T>
checked<blend<T>> mix(parcel<T> const& a, parcel<T> const& b) {
    parcel<T> const both[] = {a, b};
    return mix(both, 2);
}

/// Mixes parcels to a mixture of known temperature.
/// @param parts           parcels, at least one of them not empty
/// @param count           how many parcels there are
/// @param product_celsius temperature of the mixture when it is used or measured; every part that is not
///                        empty must be liquid there
/// @return product, sum of volumes and contraction; refuses no parcels, only empty ones, and temperatures out
///         of range
/// @par Source
/// @ref source_oiml_r22
template <number T>
constexpr checked<blend<T>> mix(parcel<T> const* parts, std::size_t count, T product_celsius) {
    status const range = detail::parcels_range(parts, count);
    if (!range.ok) return no_answer<blend<T>>(range);
    return detail::blend_parts(parts, count, &product_celsius);
}

/// Dilutes a parcel with water, or with a weaker spirit, to a strength. The mixture has the temperature that
/// it reaches without loss of heat.
/// @param spirit               parcel to dilute
/// @param target_mass_fraction strength wanted, above that of the diluent and not above that of the spirit
/// @param diluent              what is added: `{0.0, 15.0}` is water at 15 °C
/// @return diluent to add, product, contraction; refuses a diluent stronger than the spirit, a target that
///         cannot be reached, and temperatures out of range
/// @par Source
/// as `mix`
template <number T>
checked<adjustment<T>> dilute(parcel<T> const& spirit, T target_mass_fraction, liquid<T> const& diluent) {
    return detail::dilute<T>(spirit, target_mass_fraction, diluent, nullptr);
}

/// Dilutes a parcel to a strength, measured at a known temperature.
/// @param spirit               parcel to dilute
/// @param target_mass_fraction strength wanted, above that of the diluent and not above that of the spirit
/// @param diluent              what is added: `{0.0, 15.0}` is water at 15 °C
/// @param product_celsius      temperature of the mixture when it is used or measured, °C
/// @return diluent to add, product, contraction; refuses as the other `dilute`
/// @par Source
/// as `mix`
template <number T>
constexpr checked<adjustment<T>> dilute(parcel<T> const& spirit, T target_mass_fraction,
                                        liquid<T> const& diluent, T product_celsius) {
    return detail::dilute(spirit, target_mass_fraction, diluent, &product_celsius);
}

/// Strengthens a parcel with a stronger spirit. The mixture has the temperature that it reaches without loss
/// of heat.
/// @param weak                 parcel to fortify
/// @param target_mass_fraction strength wanted, from that of the parcel to 1e-6 below that of the stock
/// @param stock                the stronger spirit
/// @return stock to add, product, contraction; refuses a stock weaker than the parcel, a target that cannot
///         be reached, and temperatures out of range
/// @par Source
/// as `mix`
template <number T>
checked<adjustment<T>> fortify(parcel<T> const& weak, T target_mass_fraction, liquid<T> const& stock) {
    return detail::fortify<T>(weak, target_mass_fraction, stock, nullptr);
}

/// Strengthens a parcel with a stronger spirit, measured at a known temperature.
/// @param weak                 parcel to fortify
/// @param target_mass_fraction strength wanted, from that of the parcel to 1e-6 below that of the stock
/// @param stock                the stronger spirit
/// @param product_celsius      temperature of the mixture when it is used or measured, °C
/// @return stock to add, product, contraction; refuses as the other `fortify`
/// @par Source
/// as `mix`
template <number T>
constexpr checked<adjustment<T>> fortify(parcel<T> const& weak, T target_mass_fraction,
                                         liquid<T> const& stock, T product_celsius) {
    return detail::fortify(weak, target_mass_fraction, stock, &product_celsius);
}

/// Makes a volume of a strength from a stronger stock and water, or a weaker liquid.
/// @param litres               volume wanted, at `product_celsius`, above 0, L
/// @param product_celsius      temperature at which that volume is meant, °C
/// @param target_mass_fraction strength wanted, from that of the diluent to that of the stock
/// @param stock                the stock
/// @param diluent              what is added: `{0.0, 15.0}` is water at 15 °C
/// @return stock and diluent to take, product, contraction; refuses a target that is not between the two, and
///         a volume or temperature out of range
/// @par Source
/// as `mix`
template <number T>
constexpr checked<preparation<T>> make_up_by_volume(T litres, T product_celsius, T target_mass_fraction,
                                                    liquid<T> const& stock, liquid<T> const& diluent) {
    status range = liquid_range(stock);
    if (range.ok) range = liquid_range(diluent);
    if (!range.ok) return no_answer<preparation<T>>(range);
    auto const w = detail::made_up(target_mass_fraction, stock.mass_fraction, diluent.mass_fraction);
    if (!w.status.ok) return no_answer<preparation<T>>(w.status);
    auto const wanted = parcel_by_volume(litres, w.value, product_celsius);
    if (!wanted.status.ok) return no_answer<preparation<T>>(wanted.status);
    return detail::make_up(wanted.value.mass_kg, w.value, stock, diluent, &product_celsius);
}

/// Makes a mass of a strength from a stronger stock and water, or a weaker liquid. The mixture has the
/// temperature that it reaches without loss of heat.
/// @param mass_kg              mass wanted, above 0, kg
/// @param target_mass_fraction strength wanted, from that of the diluent to that of the stock
/// @param stock                the stock
/// @param diluent              what is added: `{0.0, 15.0}` is water at 15 °C
/// @return stock and diluent to take, product, contraction; refuses a target that is not between the two, and
///         a mass or temperature out of range
/// @par Source
/// as `mix`
template <number T>
checked<preparation<T>> make_up_by_mass(T mass_kg, T target_mass_fraction, liquid<T> const& stock,
                                        liquid<T> const& diluent) {
    return detail::make_up_by_mass<T>(mass_kg, target_mass_fraction, stock, diluent, nullptr);
}

/// Makes a mass of a strength, measured at a known temperature.
/// @param mass_kg              mass wanted, above 0, kg
/// @param target_mass_fraction strength wanted, from that of the diluent to that of the stock
/// @param stock                the stock
/// @param diluent              what is added: `{0.0, 15.0}` is water at 15 °C
/// @param product_celsius      temperature of the mixture when it is used or measured, °C
/// @return stock and diluent to take, product, contraction; refuses as the other `make_up_by_mass`
/// @par Source
/// as `mix`
template <number T>
constexpr checked<preparation<T>> make_up_by_mass(T mass_kg, T target_mass_fraction, liquid<T> const& stock,
                                                  liquid<T> const& diluent, T product_celsius) {
    return detail::make_up_by_mass(mass_kg, target_mass_fraction, stock, diluent, &product_celsius);
}

/// Dilutes in several equal additions. Each addition warms the mixture without loss of heat.
/// @param spirit               parcel to dilute
/// @param target_mass_fraction strength after the last addition, as for `dilute`
/// @param diluent              what is added
/// @param[out] steps           room for one adjustment for each addition, each starting from the product of
///                             the previous one; after a refusal all are NaN or untouched
/// @param additions            number of equal additions, 1 to 1000
/// @return whether there is an answer; refuses as `dilute`
/// @par Source
/// as `mix`
template <number T>
status dilute_in_additions(parcel<T> const& spirit, T target_mass_fraction, liquid<T> const& diluent,
                           adjustment<T>* steps, int additions) {
    return detail::dilute_in_additions<T>(spirit, target_mass_fraction, diluent, steps, additions, nullptr);
}

/// Dilutes in several equal additions, measured at a known temperature.
/// @param spirit               parcel to dilute
/// @param target_mass_fraction strength after the last addition, as for `dilute`
/// @param diluent              what is added
/// @param[out] steps           room for one adjustment for each addition, each starting from the product of
///                             the previous one; after a refusal all are NaN or untouched
/// @param additions            number of equal additions, 1 to 1000
/// @param product_celsius      temperature of the mixtures when they are measured, °C
/// @return whether there is an answer; refuses as `dilute`
/// @par Source
/// as `mix`
template <number T>
constexpr status dilute_in_additions(parcel<T> const& spirit, T target_mass_fraction,
                                     liquid<T> const& diluent, adjustment<T>* steps, int additions,
                                     T product_celsius) {
    return detail::dilute_in_additions(spirit, target_mass_fraction, diluent, steps, additions,
                                       &product_celsius);
}

}  // namespace aqueth::inline AQUETH_ABI::plain
