// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>

/// Density of liquid water at 0.1 MPa by the equation of IAPWS, from ice to above the boiling point.
namespace aqueth::inline AQUETH_ABI::correlation::iapws_liquid_water {

/// Citation, range and accuracy.
inline constexpr source cited{
    "International Association for the Properties of Water and Steam, Revised Supplementary Release on "
    "Properties of Liquid Water at 0.1 MPa, IAPWS SR6-08(2011), eq. 2",
    "253.15 to 383.15 K (ITS-90), 0.1 MPa; metastable below the freezing and above the boiling point",
    "not read; CIPM-2001 is within 0.001 kg/m3 from 0 to 40 °C (tested)"};

inline constexpr double lowest_celsius = -20.0;   ///< lower end of the range, °C
inline constexpr double highest_celsius = 110.0;  ///< upper end of the range, °C

/// A term: a coefficient and a whole power.
struct term {
    int power;           ///< of the variable
    double coefficient;  ///< without unit
};
inline constexpr std::array<term, 6> a{{{0, 1.93763157e-2},
                                        {4, 6.74458446e3},
                                        {5, -2.22521604e5},
                                        {7, 1.00231247e8},
                                        {8, -1.63552118e9},
                                        {9, 8.32299658e9}}};  ///< of powers of 10 K/(593 K - T)
inline constexpr std::array<term, 6> b{{{1, 5.78545292e-3},
                                        {2, -1.53195665e-2},
                                        {3, 3.11337859e-2},
                                        {4, -4.23546241e-2},
                                        {5, 3.38713507e-2},
                                        {6, -1.19946761e-2}}};  ///< of powers of 10 K/(T - 232 K)

/// @param t temperature, °C (ITS-90), -20 to 110; not checked, NaN in gives NaN out
/// @return specific volume of water at 0.1 MPa, m3/kg
template <numeric::real T>
constexpr T specific_volume(T const& t) {
    auto const sum = [](std::array<term, 6> const& terms, T const& x) {
        T power = T(1);
        T total = T(0);
        int reached = 0;
        for (term const& each : terms) {
            for (; reached < each.power; ++reached) power = power * x;
            total = total + T(each.coefficient) * power;
        }
        return total;
    };
    T const kelvin = t + T(273.15);
    return T(461.51805 * 10.0 / 1e5) *
           (sum(a, T(10) / (T(593) - kelvin)) + sum(b, T(10) / (kelvin - T(232))));
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::iapws_liquid_water
