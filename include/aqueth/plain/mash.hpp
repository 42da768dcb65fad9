// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/fermentation_heat.hpp>
#include <aqueth/correlation/malt_heat.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/plain/attenuation.hpp>
#include <aqueth/plain/caloric.hpp>
#include <aqueth/plain/status.hpp>
#include <aqueth/plain/wash.hpp>

#include <limits>

namespace aqueth::inline AQUETH_ABI::plain {

/// A solution of extract in water: a wort, or a sugar wash before pitching. Not a number where there is no
/// answer.
/// @tparam T float or double
template <number T>
struct wort {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T mass_kg = nan;           ///< mass of the whole
    T water_kg = nan;          ///< water in it
    T extract_kg = nan;        ///< dissolved extract in it
    T litres = nan;            ///< volume at 20 °C
    T plato = nan;             ///< extract in degrees Plato
    T specific_gravity = nan;  ///< 20/20 °C
};

namespace detail {

/// A wort of this mass and extract.
template <number T>
constexpr wort<T> wort_of(T mass_kg, T plato) {
    T const gravity = specific_gravity_of_solution(plato);
    T const extract = mass_kg * plato / T(100);
    return {mass_kg, mass_kg - extract,
            extract, T(1000) * mass_kg / (gravity * water_at_20_celsius<T>),
            plato,   gravity};
}

template <number T>
constexpr status extract_range(T plato) {
    return within(argument::extract, plato, 0.0, highest_plato, limit::plato_scale);
}

}  // namespace detail

/// What is in a volume of wort.
/// @param litres volume at 20 °C, 0 or more
/// @param plato  extract in degrees Plato, 0 to 70
/// @return its masses and gravity; refuses what is out of range
/// @par Accuracy
/// as `sucrose_density_kg_m3`: extract counts as sucrose
/// @par Source
/// @ref source_sucrose_density, @ref source_oiml_r22
template <number T>
constexpr checked<wort<T>> wort_by_volume(T litres, T plato) {
    status const volume = within(argument::volume, litres, 0.0, unlimited);
    if (!volume.ok) return no_answer<wort<T>>(volume);
    status const extract = detail::extract_range(plato);
    if (!extract.ok) return no_answer<wort<T>>(extract);
    T const rho = detail::specific_gravity_of_solution(plato) * detail::water_at_20_celsius<T>;
    wort<T> found = detail::wort_of(T(1e-3) * litres * rho, plato);
    found.litres = litres;
    return {found, {}};
}

/// The wort that a mass of extract and a mass of water make.
/// @param extract_kg extract, 0 or more
/// @param water_kg   water, the water of crystals included, at least three sevenths of the extract
/// @return the wort; refuses what is out of range
/// @par Source
/// @ref source_sucrose_density, @ref source_oiml_r22
template <number T>
constexpr checked<wort<T>> wort_by_mass(T extract_kg, T water_kg) {
    status const extract = within(argument::mass_of_the_extract, extract_kg, 0.0, unlimited);
    if (!extract.ok) return no_answer<wort<T>>(extract);
    status const water = within(argument::mass, water_kg, double(extract_kg) * 3.0 / 7.0, unlimited);
    if (!water.ok) return no_answer<wort<T>>(water);
    T const mass = extract_kg + water_kg;
    return {detail::wort_of(mass, mass > T(0) ? T(100) * extract_kg / mass : T(0)), {}};
}

/// The wort of a volume into which a mass of extract was brought: gravity from extract and volume.
/// @param extract_kg extract, 0 or more
/// @param litres     volume of the wort at 20 °C, above 0, with room for the extract at 70 °P
/// @return the wort; refuses what is out of range
/// @par Source
/// @ref source_sucrose_density, @ref source_oiml_r22
template <number T>
checked<wort<T>> wort_of_extract(T extract_kg, T litres) {
    status const volume = within(argument::volume, litres, 1e-9, unlimited);
    if (!volume.ok) return no_answer<wort<T>>(volume);
    auto const extract_in = [&](T plato) {
        return T(1e-5) * litres * plato * detail::specific_gravity_of_solution(plato) *
               detail::water_at_20_celsius<T>;
    };
    T const most = T(detail::highest_plato);
    status const extract =
        within(argument::mass_of_the_extract, extract_kg, 0.0, double(extract_in(most)), limit::plato_scale);
    if (!extract.ok) return no_answer<wort<T>>(extract);
    T const plato =
        extract_kg == T(0)
            ? T(0)
            : numeric::bracketed_root([&](T p) { return extract_in(p) - extract_kg; }, T(0), most, T(1e-11));
    return wort_by_volume(litres, plato);
}

/// A mash: grain and the water it is stirred into.
/// @tparam T float or double
template <number T>
struct mash {
    T grain_kg;                ///< mass of the grain, above 0
    T water_kg;                ///< mass of the water, above 0
    T grain_celsius;           ///< temperature of the grain, 0 to 60 °C
    T vessel_j_per_k = T(0);   ///< heat capacity of the vessel, 0 or more
    T vessel_celsius = T(20);  ///< temperature of the vessel before, 0 to 100 °C
    T moisture = T(0.04);      ///< mass fraction of water in the grain, 0 to 0.08
};

/// Temperature of the water that brings a mash to a temperature, by a balance of heat.
/// @param m       the mash
/// @param celsius temperature wanted after stirring, 30 to 80 °C
/// @return temperature of the water before, °C; refuses what is out of range, and a mash for which boiling
///                     water
///         is too cold: the upper bound is then what it can reach
/// @par Accuracy
/// about 1 K (common practice): rounded figures for malt; losses to the room come on top
/// @par Source
/// @ref source_malt_heat, @ref source_perry_heat_capacity (water)
template <number T>
checked<T> strike_celsius(mash<T> const& m, T celsius) {
    status const grain = within(argument::mass_of_the_grain, m.grain_kg, 1e-6, unlimited);
    if (!grain.ok) return no_answer<T>(grain);
    status const water = within(argument::mass_of_the_water, m.water_kg, 1e-6, unlimited);
    if (!water.ok) return no_answer<T>(water);
    status const cold = within(argument::temperature_of_the_grain, m.grain_celsius, 0.0, 60.0);
    if (!cold.ok) return no_answer<T>(cold);
    status const capacity = within(argument::heat_capacity, m.vessel_j_per_k, 0.0, unlimited);
    if (!capacity.ok) return no_answer<T>(capacity);
    status const vessel = within(argument::temperature_of_the_vessel, m.vessel_celsius, 0.0, 100.0);
    if (!vessel.ok) return no_answer<T>(vessel);
    status const moist = within(argument::moisture, m.moisture, 0.0, correlation::malt_heat::highest_moisture,
                                limit::malt_table);
    if (!moist.ok) return no_answer<T>(moist);
    status const wanted = within(argument::temperature_wanted, celsius, 30.0, 80.0);
    if (!wanted.ok) return no_answer<T>(wanted);
    auto const of_malt = correlation::malt_heat::specific_heat_and_rise(m.moisture);
    T const rise = of_malt[1];
    T const capacity_of_water = T(4186.8);  // the calorie behind the table, J/(kg K)
    T const malt = m.grain_kg * of_malt[0] * capacity_of_water;
    // Slaking warms the mash by itself: water, grain and vessel must only reach the rest.
    auto const heat_needed = [&](T reached) {
        T const before = reached - rise;
        return malt * (before - m.grain_celsius) + m.vessel_j_per_k * (before - m.vessel_celsius);
    };
    detail::amounts<T> const pure_water(T(0));
    auto const enthalpy = [&](T at) { return pure_water.enthalpy_j_kg(at + T(273.15)); };
    T const highest = enthalpy(T(100));
    auto const too_cold = [&](T reached) {
        return enthalpy(reached - rise) + heat_needed(reached) / m.water_kg - highest;
    };
    if (too_cold(celsius) > T(0)) {
        T const reachable = numeric::bracketed_root(too_cold, T(-50), celsius, T(1e-6));
        return no_answer<T>(refuse(argument::temperature_wanted, double(celsius), 30.0, double(reachable),
                                   limit::boiling_water_is_too_cold));
    }
    return liquid_celsius_from_enthalpy(T(0), enthalpy(celsius - rise) + heat_needed(celsius) / m.water_kg);
}

/// What a fermentation does to the temperature. Not a number where there is no answer.
/// @tparam T float or double
template <number T>
struct fermentation_heat {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T joules = nan;        ///< heat given off
    T rise_kelvins = nan;  ///< warming if nothing is lost to the room
};

/// Heat of a fermentation and the warming if nothing is lost to the room.
/// @param litres          volume of the fermented wash at 20 °C, above 0
/// @param volume_fraction alcoholic strength it has reached at 20 °C, 0 to `greatest_wash_volume_fraction`
/// @param kind            sugar; the sugars of malt count as sucrose
/// @return heat and warming; refuses what is out of range. The wash is taken to hold no extract, and the gas
///              to
///         carry no heat away.
/// @par Accuracy
/// 5 % for sucrose, 12 % for glucose: the heat that dissolving the sugar took up beforehand is left out (from
/// memory). Brewers reckon with about 590 kJ per kilogram of fermented extract (from memory); here it is
/// about 570 at Balling's yield.
/// @par Source
/// @ref source_fermentation_heat; mixing of the ethanol @ref source_excess_gibbs
template <number T>
checked<fermentation_heat<T>> heat_of_fermentation(T litres, T volume_fraction, sugar kind = sugar::sucrose) {
    using answer = fermentation_heat<T>;
    status const volume = within(argument::volume, litres, 1e-9, unlimited);
    if (!volume.ok) return no_answer<answer>(volume);
    status const strength = within(argument::strength, volume_fraction, 0.0, greatest_wash_volume_fraction,
                                   limit::yeast_common_practice);
    if (!strength.ok) return no_answer<answer>(strength);
    namespace heat = correlation::fermentation_heat;
    T const w = T(correlation::oiml_r22::mixture_at_20_celsius(double(volume_fraction)).mass_fraction());
    // per kilogram of wash, so that the warming does not depend on the volume
    T const moles = T(1000) * w / T(correlation::molar_mass::ethanol);
    T const reaction = moles * T(1000) *
                       T(kind == sugar::sucrose ? heat::disaccharide_per_ethanol : heat::hexose_per_ethanol);
    T const x = correlation::molar_mass::mole_fraction_from_mass_fraction(w);
    detail::amounts<T> const wash(w);
    T const mixing = -model::excess_gibbs::enthalpy(x, T(298.15)).molar / wash.kg_per_mole;
    T const mass = T(1e-3) * litres * correlation::oiml_r22::density(w, T(20));
    return {{mass * (reaction + mixing), (reaction + mixing) / wash.heat_capacity_j_kg_k(T(298.15))}, {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
