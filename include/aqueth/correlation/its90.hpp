// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>

/// Difference between the temperature scales ITS-90 (today's thermometers) and IPTS-68 (that of OIML R 22).
namespace aqueth::inline AQUETH_ABI::correlation::its90 {

/// Citation, range and accuracy.
inline constexpr source cited{"H. Preston-Thomas, The International Temperature Scale of 1990, Metrologia 27 "
                              "(1990) 3-10 and 107, differences t90 - "
                              "t68; polynomial of R. L. Rusby, J. Chem. Thermodynamics 23 (1991) 1153",
                              "-200 to 630 °C", "1 mK above 0 °C, 1.5 mK below"};

namespace detail {
/// Powers of t90/630 °C, in kelvins; the difference vanishes at 0 °C.
inline constexpr std::array<double, 9> difference{0.0,       -0.148759, -0.267408, 1.080760, 1.269056,
                                                  -4.089591, -1.871251, 7.438081,  -3.536296};
}  // namespace detail

/// @param t90 temperature, °C (ITS-90), -200 to 630; not checked
/// @return the same temperature on IPTS-68, °C: 20 °C is 20.005 °C, 40 °C is 40.010 °C
template <numeric::real T>
constexpr T t68_from_t90(T const& t90) {
    return t90 - numeric::polynomial(detail::difference, T(t90 / T(630)));
}

/// @param t68 temperature, °C (IPTS-68), -200 to 630; not checked
/// @return the same temperature on ITS-90, °C
/// @note Substitution: the difference changes by less than 1e-3 of a change in its argument, so each round
///       gains three digits.
template <numeric::real T>
constexpr T t90_from_t68(T const& t68) {
    T t90 = t68;
    for (int k = 0; k < 4; ++k) t90 = t68 + numeric::polynomial(detail::difference, T(t90 / T(630)));
    return t90;
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::its90
