// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/correlation/wagner_form.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cmath>

namespace aqueth::inline AQUETH_ABI::correlation {

/// Saturation of ethanol: vapour pressure against temperature, and back.
///
/// Plain numbers: temperature in K, taken as ITS-90, pressure in Pa. Its functions are those of wagner_form.
struct ethanol_saturation_poling : wagner_form::saturation<ethanol_saturation_poling> {
    /// Citation, range and accuracy.
    static constexpr source cited{
        "B. E. Poling, J. M. Prausnitz and J. P. O'Connell, The Properties of Gases and Liquids, 5th "
        "edition, McGraw-Hill 2001, appendix A, Wagner equation",
        "159.05 to 513.92 K; compared with measurements from 273 to 400 K",
        "none stated; the best measurements on ITS-90 lie within 0.14 % from 293 to 365 K (0.04 K in boiling "
        "temperature), 0.2 to 0.3 % higher at 370 and 383 K; boils at 351.437 K under 101.325 kPa"};

    static constexpr double lowest_kelvin = 159.05;     ///< lower end of the range, K
    static constexpr double highest_kelvin = 513.92;    ///< upper end: the critical point, K
    static constexpr double critical_pascal = 6.132e6;  ///< pressure at the critical point, Pa
    static constexpr double boiling_kelvin = 351.437;   ///< normal boiling point, where a search starts, K

    /// Coefficients of th, th^1.5, th^2.5 and th^5.
    static constexpr std::array<double, 4> a{-8.68587, 1.17831, -4.8762, 1.588};

    /// @param th one less reduced temperature
    /// @return the sum of the terms and its derivative
    template <numeric::real T>
    static numeric::value_and_slope<T> series(T const& th) {
        using std::sqrt;
        T const root = sqrt(th), th4 = th * th * th * th;
        return {th * (T(a[0]) + root * (T(a[1]) + T(a[2]) * th) + T(a[3]) * th4),
                T(a[0]) + root * (T(1.5 * a[1]) + T(2.5 * a[2]) * th) + T(5 * a[3]) * th4};
    }
};

}  // namespace aqueth::inline AQUETH_ABI::correlation
