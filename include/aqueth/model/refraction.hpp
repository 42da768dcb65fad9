// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/model/solution_coefficients.hpp>
#include <aqueth/model/sugar_solution.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cmath>

/// Refractive index of ethanol, water and sugar at 20 °C by the equation of Lorentz and Lorenz.
///
/// (n^2 - 1)/(n^2 + 2) = r rho, where the specific refraction r is that of water plus one linear and one
/// square term for each solute, and rho is the density of the library. Plain numbers: mass fractions of the
/// whole. No function checks its arguments.
namespace aqueth::inline AQUETH_ABI::model::refraction {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "our own: specific refractions (Lorentz and Lorenz) fitted to the CRC Handbook, 102nd edition, 2021, "
    "Concentrative Properties of Aqueous Solutions",
    "20 °C, 589 nm; ethanol to 98 % mass; sugar in its water to 70 % mass (sucrose), 50 % (glucose), 48 % "
    "(fructose, invert sugar)",
    "root mean square 0.00005 (ethanol), 0.00004 (sugars) against the fitted tables, whose last digit is "
    "0.0001; "
    "no index of ethanol with sugar could be read, so the sum of both is an assumption"};

inline constexpr double highest_mass_fraction = 0.98;  ///< of ethanol in ethanol and water

/// Refractive index from specific refraction and density.
/// @param specific specific refraction, cm3/g
/// @param rho      density, kg/m3
/// @return refractive index at 589 nm relative to air
template <numeric::real T>
T index(T const& specific, T const& rho) {
    using std::sqrt;
    T const x = T(1e-3) * specific * rho;
    return sqrt((T(1) + T(2) * x) / (T(1) - x));
}

/// @param w mass fraction of ethanol in ethanol and water
/// @return specific refraction, cm3/g
template <numeric::real T>
constexpr T ethanol_water(T const& w) {
    return T(solution::water_refraction) +
           w * (T(solution::ethanol_refraction[0]) + w * T(solution::ethanol_refraction[1]));
}

/// @param kind which sugar
/// @param c    mass of sugar per mass of sugar and water
/// @return specific refraction of the sugar, cm3/g
template <numeric::real T>
constexpr T sugar(sweetener kind, T const& c) {
    auto const in_water = [&](std::array<double, 2> const& of) {
        return T(solution::water_refraction) + T(of[0]) + c * T(of[1]);
    };
    switch (kind) {
    case sweetener::sucrose: break;
    case sweetener::glucose: return in_water(solution::glucose_refraction);
    case sweetener::fructose: return in_water(solution::fructose_refraction);
    case sweetener::invert_sugar:
        return T(0.5) * (in_water(solution::glucose_refraction) + in_water(solution::fructose_refraction));
    }
    return in_water(solution::sucrose_refraction);
}

/// Refractive index of ethanol, water and sugar at 20 °C.
/// @param ethanol mass fraction of ethanol in the whole
/// @param solids  mass fraction of sugar in the whole
/// @param kind    which sugar
/// @return refractive index at 589 nm relative to air
template <numeric::real T>
T index(T const& ethanol, T const& solids, sweetener kind) {
    T const rho = sugar_solution::density(ethanol, solids, kind, T(20));
    T const liquid = T(1) - solids, solution = T(1) - ethanol;
    if (!(solution > T(0))) return index(ethanol_water(ethanol), rho);
    T const c = solids / solution;
    return index(T(liquid * ethanol_water(T(ethanol / liquid)) + solids * sugar(kind, c)), rho);
}

}  // namespace aqueth::inline AQUETH_ABI::model::refraction
