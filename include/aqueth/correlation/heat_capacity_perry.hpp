// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cmath>

/// Molar heat capacities of pure ethanol and water at constant pressure: liquid and ideal gas.
///
/// Plain numbers: temperature in K, heat capacity in J/(mol K), enthalpy in J/mol.
namespace aqueth::inline AQUETH_ABI::correlation::heat_capacity_perry {

/// Citation, range and accuracy.
inline constexpr source cited{
    "Perry's Chemical Engineers' Handbook, McGraw-Hill: liquids 8th edition 2008, table 2-153 (DIPPR "
    "equation "
    "100); ideal gases 7th edition 1997, table 2-198 (DIPPR equation 107)",
    "liquids: ethanol 159.05 to 390 K, water 273.16 to 533.15 K; ideal gases: 200 to 1500 K",
    "liquids: of the order of 1 %, as stated by the compilers; ideal gases: likewise"};

inline constexpr double lowest_kelvin = 273.16;  ///< lower end of the range all four share, K
inline constexpr double highest_kelvin = 390.0;  ///< upper end of the range all four share, K

/// @param t temperature, K
/// @return whether all four equations are defined there
template <numeric::real T>
constexpr bool covers(T const& t) {
    return t >= T(lowest_kelvin) && t <= T(highest_kelvin);
}

namespace detail {

using coefficients = std::array<double, 5>;

inline constexpr coefficients ethanol_liquid{102640.0, -139.63, -0.030341, 0.0020386, 0.0};
inline constexpr coefficients water_liquid{276370.0, -2090.1, 8.125, -0.014116, 9.3701e-06};
inline constexpr coefficients ethanol_ideal_gas{0.4920e5, 1.4577e5, 1.6628e3, 0.9390e5, 744.7};
inline constexpr coefficients water_ideal_gas{0.33363e5, 0.26790e5, 2.6105e3, 0.08896e5, 1169.0};

/// @param c coefficients of 1, t, t^2, ..., J/(kmol K)
/// @param t temperature, K
/// @return integral of the heat capacity from 273.15 K to t, J/mol
template <numeric::real T>
constexpr T integral(coefficients const& c, T const& t) {
    coefficients const d{c[0], c[1] / 2, c[2] / 3, c[3] / 4, c[4] / 5};
    constexpr double from = 273.15;
    return T(1e-3) * (t * numeric::polynomial(d, t) - T(from * numeric::polynomial(d, from)));
}

/// @param c coefficients of DIPPR equation 107, J/(kmol K) and K
/// @param t temperature, K
/// @return c0 + c1 (u/sinh u)^2 + c3 (v/cosh v)^2, u = c2/t, v = c4/t, in J/(mol K)
template <numeric::real T>
T hyperbolic(coefficients const& c, T const& t) {
    using std::cosh;
    using std::sinh;
    T const u = T(c[2]) / t, v = T(c[4]) / t;
    T const a = u / sinh(u), b = v / cosh(v);
    return T(1e-3) * (T(c[0]) + T(c[1]) * a * a + T(c[3]) * b * b);
}

}  // namespace detail

/// @param t temperature, K, 159.05 to 390; not checked, NaN in gives NaN out
/// @return heat capacity of liquid ethanol, J/(mol K)
template <numeric::real T>
constexpr T ethanol_liquid(T const& t) {
    return T(1e-3) * numeric::polynomial(detail::ethanol_liquid, t);
}

/// @param t temperature, K, 273.16 to 533.15; not checked, NaN in gives NaN out
/// @return heat capacity of liquid water, J/(mol K)
template <numeric::real T>
constexpr T water_liquid(T const& t) {
    return T(1e-3) * numeric::polynomial(detail::water_liquid, t);
}

/// @param t temperature, K, 159.05 to 390; not checked, NaN in gives NaN out
/// @return enthalpy of liquid ethanol less that at 273.15 K, J/mol
template <numeric::real T>
constexpr T ethanol_liquid_enthalpy(T const& t) {
    return detail::integral(detail::ethanol_liquid, t);
}

/// @param t temperature, K, 273.16 to 533.15; not checked, NaN in gives NaN out
/// @return enthalpy of liquid water less that at 273.15 K, J/mol
template <numeric::real T>
constexpr T water_liquid_enthalpy(T const& t) {
    return detail::integral(detail::water_liquid, t);
}

/// @param t temperature, K, 200 to 1500; not checked, NaN in gives NaN out
/// @return heat capacity of ethanol as an ideal gas, J/(mol K)
template <numeric::real T>
T ethanol_ideal_gas(T const& t) {
    return detail::hyperbolic(detail::ethanol_ideal_gas, t);
}

/// @param t temperature, K, 200 to 1500; not checked, NaN in gives NaN out
/// @return heat capacity of water as an ideal gas, J/(mol K)
template <numeric::real T>
T water_ideal_gas(T const& t) {
    return detail::hyperbolic(detail::water_ideal_gas, t);
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::heat_capacity_perry
