// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/plain/density.hpp>
#include <aqueth/plain/status.hpp>

#include <cmath>
#include <limits>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI::plain {

namespace detail {

inline constexpr double lowest_plato = -10.0;  ///< of an apparent extract
inline constexpr double highest_plato = 100.0 * correlation::sucrose_density::highest_mass_fraction;

/// Density of the library's water at 20 °C, kg/m3.
template <number T>
inline constexpr T water_at_20_celsius = correlation::oiml_r22::density(T(0), T(20));

template <number T>
constexpr T specific_gravity_of_solution(T plato) {
    return T(1) + correlation::sucrose_density::excess(plato / T(100), T(20)).value / water_at_20_celsius<T>;
}

template <number T>
constexpr status wash_temperature_range(T celsius) {
    return within(argument::temperature, celsius, 0.0, correlation::sucrose_density::highest_celsius,
                  limit::water_liquid_and_sugar_solutions);
}

/// Whether a wash has room for its ethanol: not more of it than the extract leaves.
template <number T>
constexpr status room_for_ethanol(T ethanol_mass_fraction, T plato) {
    T const rounded = T(16) * std::numeric_limits<T>::epsilon();
    T const room = T(1) - plato / T(100);
    if (ethanol_mass_fraction >= T(0) && ethanol_mass_fraction <= room + rounded) return {};
    return refuse(argument::ethanol_beside_this_extract, double(ethanol_mass_fraction), 0.0, double(room),
                  limit::room_beside_extract);
}

/// Density by Tabarie's rule, kg/m3; not checked. Fractions are those of the whole.
template <number T>
T tabarie_density(T ethanol_mass_fraction, T solids_mass_fraction, T celsius) {
    bool const hot = celsius > T(correlation::oiml_r22::highest_celsius);
    correlation::oiml_r22::isotherm<T> const mixture(celsius);
    auto const density = [&](T w) {
        return hot ? model::hot_density::density(w, celsius) : mixture.density(w);
    };
    auto const mass_fraction_from_concentration = [&](T concentration) {
        if (!hot) return correlation::oiml_r22::mass_fraction_from_concentration(mixture, concentration);
        auto const excess = [&](T w) { return w * density(w) - concentration; };
        return numeric::bracketed_root(excess, T(0), T(1), T(0));
    };
    T const water = density(T(0));
    T const most = density(T(1));
    T const settled = std::is_same_v<T, float> ? rounding<T> : T(1e-10);
    auto const sucrose = [&](T s) { return correlation::sucrose_density::excess(s, celsius).value; };
    T rho = water;
    for (int i = 0; i < 60; ++i) {  // each pass takes the error down by five or more
        T const concentration = ethanol_mass_fraction * rho;
        T const w = mass_fraction_from_concentration(concentration < most ? concentration : most);
        T s = solids_mass_fraction;
        for (int k = 0; k < 60; ++k) {
            T const next = solids_mass_fraction * rho / (water + sucrose(s));
            if (next == s) break;
            s = next;
        }
        T const next = density(w) + sucrose(s);
        bool const done = std::abs(next - rho) < settled;
        rho = next;
        if (done) break;
    }
    return rho;
}

}  // namespace detail

/// Density of a solution of sucrose in water.
/// @param plato   dissolved sugar in degrees Plato, g in 100 g of solution, 0 to 70
/// @param celsius temperature, 0 to 80 °C
/// @return density, kg/m3; that of the library's own water at no sugar; refuses what is out of range
/// @par Accuracy
/// 20 °C, against the CRC Handbook: 0.10 kg/m3 to 40 °P, 0.28 kg/m3 to 70 °P. At other temperatures no
/// measured density was at hand.
/// @par Source
/// @ref source_sucrose_density; water @ref source_oiml_r22
template <number T>
constexpr checked<T> sucrose_density_kg_m3(T plato, T celsius) {
    status const solids = within(argument::extract, plato, 0.0, detail::highest_plato);
    if (!solids.ok) return no_answer<T>(solids);
    status const range = detail::wash_temperature_range(celsius);
    if (!range.ok) return no_answer<T>(range);
    auto const water = density_kg_m3(T(0), celsius);
    if (!water.status.ok) return water;
    return {water.value + correlation::sucrose_density::excess(plato / T(100), celsius).value, {}};
}

/// Specific gravity 20/20 °C in vacuo of a sugar solution, or of a wash by its apparent extract.
/// @param plato extract or apparent extract in degrees Plato, -10 to 70
/// @return specific gravity 20/20 °C; refuses what is out of range
/// @par Accuracy
/// As `sucrose_density_kg_m3`: 0.00006 to 40 °P. Classical tables are for weighing in air, where a gravity of
/// 1.1 is 0.00012 higher (0.03 °P).
/// @par Source
/// @ref source_sucrose_density
template <number T>
constexpr checked<T> specific_gravity_from_plato(T plato) {
    status const range =
        within(argument::apparent_extract, plato, detail::lowest_plato, detail::highest_plato);
    if (!range.ok) return no_answer<T>(range);
    return {detail::specific_gravity_of_solution(plato), {}};
}

/// Degrees Plato from specific gravity: the inverse of `specific_gravity_from_plato`.
/// @param specific_gravity 20/20 °C in vacuo, 0.962 to 1.350
/// @return apparent extract in degrees Plato, the extract itself if there is no alcohol; refuses what is out
///         of range
/// @par Source
/// @ref source_sucrose_density
template <number T>
constexpr checked<T> plato_from_specific_gravity(T specific_gravity) {
    status const range =
        within(argument::specific_gravity, specific_gravity,
               double(detail::specific_gravity_of_solution(T(detail::lowest_plato))),
               double(detail::specific_gravity_of_solution(T(detail::highest_plato))), limit::plato_scale);
    if (!range.ok) return no_answer<T>(range);
    // Water, without what rounding would add: a computed gravity may be a unit of the last place off.
    T const rounded = T(4) * std::numeric_limits<T>::epsilon();
    if (specific_gravity >= T(1) - rounded && specific_gravity <= T(1) + rounded) return {T(0), {}};
    T const wanted = detail::water_at_20_celsius<T> * (specific_gravity - T(1));
    auto const miss = [&](T w) {
        auto const at = correlation::sucrose_density::excess(w, T(20));
        return numeric::value_and_slope<T>{at.value - wanted, at.slope};
    };
    T const noise = std::is_same_v<T, float> ? T(1e-4) : T(1e-12);
    return {T(100) * numeric::bracketed_newton(miss, T(-0.1), T(0.7), wanted / T(400), noise), {}};
}

/// Density of a wash: ethanol, water and dissolved extract, by Tabarie's rule.
/// @param ethanol_mass_fraction of ethanol in the whole wash, 0 to what the extract leaves
/// @param plato                 (real) extract in degrees Plato, 0 to 70
/// @param celsius               temperature, from the freezing point of the liquid to 80 °C; without extract
///                              to the boiling point
/// @return density, kg/m3; refuses what is out of range
/// @par Accuracy
/// As `aqueth::wash`; in `float` 0.001 kg/m3 more.
/// @par Source
/// @ref source_wash
template <number T>
checked<T> wash_density_kg_m3(T ethanol_mass_fraction, T plato, T celsius) {
    status const solids = within(argument::extract, plato, 0.0, detail::highest_plato);
    if (!solids.ok) return no_answer<T>(solids);
    status const room = detail::room_for_ethanol(ethanol_mass_fraction, plato);
    if (!room.ok) return no_answer<T>(room);
    T const w = ethanol_mass_fraction / (T(1) - plato / T(100));
    status const liquid = liquid_range(w < T(1) ? w : T(1), celsius);  // rounding may pass 1
    if (!liquid.ok) return no_answer<T>(liquid);
    if (plato == T(0))
        return density_kg_m3(ethanol_mass_fraction < T(1) ? ethanol_mass_fraction : T(1), celsius);
    if (celsius > T(0)) {
        status const sugar = detail::wash_temperature_range(celsius);
        if (!sugar.ok) return no_answer<T>(sugar);
    }
    return {detail::tabarie_density(ethanol_mass_fraction, plato / T(100), celsius), {}};
}

/// Mass fraction of ethanol in a wash from its alcoholic strength.
/// @param volume_fraction alcoholic strength at 20 °C of the whole wash, 0 to 1
/// @param plato           (real) extract in degrees Plato, 0 to 70
/// @return mass of ethanol per mass of the whole wash; refuses what is out of range, and a wash that would
///         have no room for both
/// @par Source
/// @ref source_wash
template <number T>
checked<T> wash_mass_fraction_from_volume_fraction(T volume_fraction, T plato) {
    status const strength = within(argument::alcoholic_strength_by_volume, volume_fraction, 0.0, 1.0);
    if (!strength.ok) return no_answer<T>(strength);
    status const solids = within(argument::extract, plato, 0.0, detail::highest_plato);
    if (!solids.ok) return no_answer<T>(solids);
    T const pure = correlation::oiml_r22::density(T(1), T(20)) * volume_fraction;
    T rho = T(1000);  // the strength needs the density at 20 °C, which needs the mass fraction
    for (int i = 0; i < 60; ++i) {
        status const room = detail::room_for_ethanol(pure / rho, plato);
        if (!room.ok) return no_answer<T>(room);
        T const next = detail::tabarie_density(pure / rho, plato / T(100), T(20));
        if (next == rho) break;
        rho = next;
    }
    return {pure / rho, {}};
}

/// True specific gravity 20/20 °C of a wash from its density at another temperature, which
/// `gravity_hydrometer` of this floor gives for a reading.
/// @param kg_m3                 density at `celsius`, between those without extract and with 70 °P
/// @param celsius               temperature, 0 to 80 °C
/// @param ethanol_mass_fraction ethanol in the whole, as far as known: 0 before fermentation
/// @return specific gravity 20/20 °C; refuses what is out of range
/// @par Accuracy
/// As `aqueth::true_gravity`; in `float` 2e-6 more.
/// @par Source
/// @ref source_sucrose_density, @ref source_wash
template <number T>
checked<T> true_gravity_from_density(T kg_m3, T celsius, T ethanol_mass_fraction = T(0)) {
    status const range = detail::wash_temperature_range(celsius);
    if (!range.ok) return no_answer<T>(range);
    status const strength = within(argument::mass_fraction, ethanol_mass_fraction, 0.0, 1.0);
    if (!strength.ok) return no_answer<T>(strength);
    T const least = T(-0.02) * (T(1) - ethanol_mass_fraction);
    T const most = T(0.7) * (T(1) - ethanol_mass_fraction);
    auto const density = [&](T solids) {
        return detail::tabarie_density(ethanol_mass_fraction, solids, celsius);
    };
    status const reachable = within(argument::density_behind_the_reading, kg_m3, double(density(least)),
                                    double(density(most)), limit::no_extract_to_70_plato);
    if (!reachable.ok) return no_answer<T>(reachable);
    auto const miss = [&](T solids) { return density(solids) - kg_m3; };
    T const solids = numeric::bracketed_root(miss, least, most, T(1e-13));
    return {detail::tabarie_density(ethanol_mass_fraction, solids, T(20)) / detail::water_at_20_celsius<T>,
            {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
