// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/model/hot_density_coefficients.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>
#include <aqueth/numeric/root.hpp>

#include <array>
#include <cstddef>

/// Density of liquid ethanol and water above 40 °C, where OIML R 22 ends, to the boiling point.
///
/// The molar volume is that of the pure liquids and an excess volume:
///
///     V = x V_ethanol(t) + (1 - x) V_water(t) + x (1 - x) sum_k A_k(t) (1 - 2x)^k
///
/// From 40 to 60 °C a cubic in t joins it to R 22: at 40 °C value and slope are those of the law at every
/// composition, and the difference has faded out at 60 °C, again in value and slope.
namespace aqueth::inline AQUETH_ABI::model::hot_density {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "this project's fit (src/fit/hot_density.cpp) to OIML R 22, Pecar and Dolecek, Fluid Phase Equilib. 230 "
    "(2005) 36, and Hyncica and others, J. Chem. Thermodyn. 36 (2004); water by IAPWS SR6-08, ethanol by "
    "Schroeder and others, J. Phys. Chem. Ref. Data 43 (2014) 043102",
    "mass fraction 0 to 1; 40 °C to the boiling point (ITS-90); 0.1 MPa",
    "expanded uncertainty (k = 2) 0.05 % at 50 °C, 0.1 % at 75 °C, 0.15 % at 100 °C"};

inline constexpr double lowest_celsius = 40.0;    ///< where R 22 ends, °C
inline constexpr double joined_celsius = 60.0;    ///< from here up the fit alone, °C
inline constexpr double highest_celsius = 110.0;  ///< upper end of the equations of the pure liquids, °C

/// @param t temperature, °C
/// @return the variable of the polynomials: (t - 70 °C)/(40 °C)
template <numeric::real T>
constexpr T scaled_temperature(T const& t) {
    return (t - T(70)) * T(0.025);
}

/// @param w mass fraction of ethanol
/// @param t temperature, °C
/// @return whether the formula is defined there (it does not test whether the mixture is liquid)
template <numeric::real T>
constexpr bool covers(T const& w, T const& t) {
    return w >= T(0) && w <= T(1) && t >= T(lowest_celsius) && t <= T(highest_celsius);
}

/// The fit by itself, without the join.
/// @param w mass fraction of ethanol
/// @param t temperature, °C
/// @return specific volume, m3/kg, and its derivative with respect to t
template <numeric::real T>
constexpr numeric::value_and_slope<T> fitted_volume(T const& w, T const& t) {
    namespace mass = correlation::molar_mass;
    T const tau = scaled_temperature(t);
    T const x = mass::mole_fraction_from_mass_fraction(w);
    T const z = T(1) - T(2) * x;
    numeric::value_and_slope<T> sum{T(0), T(0)};
    for (std::size_t k = excess.size(); k-- > 0;) {
        auto const a = numeric::polynomial_with_slope(excess[k], tau);
        sum = {sum.value * z + a.value, sum.slope * z + a.slope};
    }
    auto const ethanol = numeric::polynomial_with_slope(ethanol_volume, tau);
    auto const water = numeric::polynomial_with_slope(water_volume, tau);
    T const scale = T(1e-3) / mass::mixture(w);  // from cm3/mol to m3/kg
    return {scale * (x * ethanol.value + (T(1) - x) * (water.value + x * sum.value)),
            scale * T(0.025) * (x * ethanol.slope + (T(1) - x) * (water.slope + x * sum.slope))};
}

/// @param w mass fraction of ethanol, 0 to 1
/// @param t temperature, °C, 40 to the boiling point; not checked, NaN in gives NaN out
/// @return specific volume, m3/kg, and its derivative with respect to t
template <numeric::real T>
constexpr numeric::value_and_slope<T> specific_volume(T const& w, T const& t) {
    auto volume = fitted_volume(w, t);
    if (t < T(joined_celsius)) {
        auto const law = correlation::oiml_r22::density_with_derivatives(w, T(lowest_celsius));
        auto const fit = fitted_volume(w, T(lowest_celsius));
        constexpr double width = joined_celsius - lowest_celsius;
        T const law_volume = T(1) / law.value;
        T const gap = law_volume - fit.value;
        T const gap_slope = (-law.d_temperature * law_volume * law_volume - fit.slope) * T(width);
        T const s = (t - T(lowest_celsius)) * T(1.0 / width);
        T const rest = T(1) - s;
        volume.value = volume.value + rest * rest * (gap * (T(1) + T(2) * s) + gap_slope * s);
        volume.slope =
            volume.slope + rest * (gap_slope * (T(1) - T(3) * s) - T(6) * gap * s) * T(1.0 / width);
    }
    return volume;
}

/// @param w mass fraction of ethanol, 0 to 1
/// @param t temperature, °C, 40 to the boiling point; not checked, NaN in gives NaN out
/// @return density at 0.1 MPa, kg/m3
template <numeric::real T>
constexpr T density(T const& w, T const& t) {
    return T(1) / specific_volume(w, t).value;
}

/// Mass fraction from a density: the inverse of `density`.
/// @param rho   density, kg/m3, between those of ethanol and water at t; the nearer end beyond them
/// @param t     temperature, °C, 40 to the boiling point; not checked
/// @param noise residual that rounding leaves, kg/m3
/// @return mass fraction of ethanol
template <numeric::real T>
constexpr T mass_fraction_from_density(T const& rho, T const& t, T const& noise = T(1e-9)) {
    auto const residual = [&](T const& w) {
        T const h = T(1e-4);  // the slope only speeds the search up
        return numeric::value_and_slope<T>{density(w, t) - rho,
                                           (density(T(w + h), t) - density(T(w - h), t)) * T(5e3)};
    };
    return numeric::bracketed_newton(residual, T(0), T(1), T(0.5), noise);
}

/// @param w mass fraction of ethanol, 0 to 1; not checked
/// @return boiling point at 101.325 kPa, °C: straight lines between close points of `model::vapour_liquid`,
///         within 0.005 K
template <numeric::real T>
constexpr T boiling_celsius(T const& w) {
    constexpr auto intervals = boiling_points.size() - 1;
    T const place = w * T(static_cast<double>(intervals));
    std::size_t left = 0;
    while (left + 1 < intervals && place >= T(static_cast<double>(left + 1))) ++left;
    T const within = place - T(static_cast<double>(left));
    return T(boiling_points[left]) + within * T(boiling_points[left + 1] - boiling_points[left]);
}

/// Density of the liquid at any temperature: by the law, OIML R 22, up to 40 °C, and by the fit above.
/// @param w mass fraction of ethanol, 0 to 1
/// @param t temperature, °C, up to the boiling point; not checked
/// @return density, kg/m3
template <numeric::real T>
constexpr T liquid_density(T const& w, T const& t) {
    return t > T(lowest_celsius) ? density(w, t) : correlation::oiml_r22::density(w, t);
}

/// Uncertainty of the density, for the budget of a measurement.
/// @param t temperature, °C, 40 to 110
/// @return relative standard uncertainty: 0.005 % at 40 °C, 0.025 % at 50, 0.05 % at 75, 0.075 % at 100,
///                  linear
///         between and beyond
template <numeric::real T>
constexpr T relative_standard_uncertainty(T const& t) {
    if (t < T(50)) return T(0.00005) + (t - T(40)) * T(0.00002);
    return T(0.00025) + (t - T(50)) * T(0.00001);
}

}  // namespace aqueth::inline AQUETH_ABI::model::hot_density
