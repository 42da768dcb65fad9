// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/model/solution_coefficients.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>

namespace aqueth::inline AQUETH_ABI {

/// Sugars of sweetened spirit, all without water of crystallization.
enum class sweetener {
    sucrose,      ///< table sugar
    glucose,      ///< also called dextrose
    fructose,     ///< fruit sugar
    invert_sugar  ///< glucose and fructose in equal masses
};

/// @param of_this a sweetener
/// @return its name
constexpr char const* name_of(sweetener of_this) noexcept {
    switch (of_this) {
    case sweetener::sucrose: return "sucrose";
    case sweetener::glucose: return "glucose";
    case sweetener::fructose: return "fructose";
    case sweetener::invert_sugar: return "invert sugar";
    }
    return "";
}

}  // namespace aqueth::inline AQUETH_ABI

/// Ethanol, water and sugar: additive apparent volumes.
///
/// The volume of a sweetened spirit is that of its ethanol and water, by OIML R 22, plus that of its sugar,
/// which is what the sugar takes in the same water without ethanol. Plain numbers: mass fractions of the
/// whole, t in °C. No function checks its arguments. Below no sugar the formulas continue smoothly.
namespace aqueth::inline AQUETH_ABI::model::sugar_solution {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "our own: additive apparent volumes, OIML R 22 for ethanol and water, ICUMSA (1990) for sucrose; glucose "
    "and fructose fitted to the CRC Handbook, 102nd edition, 2021, Concentrative Properties of Aqueous "
    "Solutions",
    "sugar in its water up to 70 % mass (sucrose), 50 % (glucose), 48 % (fructose, invert sugar); 0 to 40 °C",
    "the effect of ethanol on the sugar's volume was not measured: analyses of wines to 14 % vol with at "
    "most 22 g/L and of beers of about 5 % vol with up to 66 g/L of malt extract agree, nothing checks a "
    "liqueur; 1 % in the sugar's volume at 300 g/L is 1.0 % vol at 40 % vol. "
    "The change with temperature of glucose and fructose is taken from sucrose"};

/// @param kind which sugar
/// @return greatest mass of sugar per mass of sugar and water, the end of its table
constexpr double highest_mass_fraction(sweetener kind) {
    switch (kind) {
    case sweetener::sucrose: return correlation::sucrose_density::highest_mass_fraction;
    case sweetener::glucose: return 0.5;
    default: return 0.48;
    }
}

namespace detail {

/// A polynomial of three terms.
template <numeric::real T>
constexpr T quadratic(std::array<double, 3> const& of, T const& x) {
    return T(of[0]) + x * (T(of[1]) + x * T(of[2]));
}

}  // namespace detail

/// Volume that a sugar takes in water.
/// @param kind which sugar
/// @param c    mass of sugar per mass of sugar and water, 0 to `highest_mass_fraction`
/// @param t    temperature, 0 to 40 °C
/// @return apparent specific volume, m3/kg
template <numeric::real T>
constexpr T apparent_volume(sweetener kind, T const& c, T const& t) {
    T const water = correlation::oiml_r22::density(T(0), t);
    auto const excess = correlation::sucrose_density::excess(c, t);
    // (1/rho - (1 - c)/water)/c with rho = water + excess, without the quotient of two small numbers
    T const per_sugar = c == T(0) ? excess.slope : T(excess.value / c);
    T const sucrose = (water - (T(1) - c) * per_sugar) / (water * (water + excess.value));
    switch (kind) {
    case sweetener::sucrose: break;
    case sweetener::glucose: return sucrose + T(1e-3) * detail::quadratic(solution::glucose_volume, c);
    case sweetener::fructose: return sucrose + T(1e-3) * detail::quadratic(solution::fructose_volume, c);
    case sweetener::invert_sugar:
        return sucrose + T(0.5e-3) * (detail::quadratic(solution::glucose_volume, c) +
                                      detail::quadratic(solution::fructose_volume, c));
    }
    return sucrose;
}

/// Volume of ethanol, water and sugar.
/// @param ethanol mass of ethanol, kg
/// @param water   mass of water, kg; above 0 if there is sugar
/// @param sugar   mass of sugar, kg
/// @param kind    which sugar
/// @param t       temperature, 0 to 40 °C
/// @return volume, m3
template <numeric::real T>
constexpr T volume(T const& ethanol, T const& water, T const& sugar, sweetener kind, T const& t) {
    T const liquid = ethanol + water;
    T const without = liquid / correlation::oiml_r22::density(T(ethanol / liquid), t);
    T const solution = water + sugar;
    if (!(solution > T(0))) return without;
    return without + sugar * apparent_volume(kind, T(sugar / solution), t);
}

/// Density of ethanol, water and sugar.
/// @param ethanol mass fraction of ethanol in the whole
/// @param sugar   mass fraction of sugar in the whole
/// @param kind    which sugar
/// @param t       temperature, 0 to 40 °C
/// @return density, kg/m3
template <numeric::real T>
constexpr T density(T const& ethanol, T const& sugar, sweetener kind, T const& t) {
    return T(1) / volume(ethanol, T(T(1) - ethanol - sugar), sugar, kind, t);
}

}  // namespace aqueth::inline AQUETH_ABI::model::sugar_solution
