// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/correlation/wagner_form.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cmath>

namespace aqueth::inline AQUETH_ABI::correlation {

/// Saturation of water: vapour pressure against temperature, and back.
///
/// Plain numbers: temperature in K on ITS-90, pressure in Pa. Its functions are those of wagner_form.
struct water_saturation_wagner_pruss : wagner_form::saturation<water_saturation_wagner_pruss> {
    /// Citation, range and accuracy.
    static constexpr source cited{"W. Wagner and A. Pruss, Journal of Physical and Chemical Reference Data "
                                  "22 (1993) 783, eq. 1 (= IAPWS SR1-86, 1992)",
                                  "273.16 to 647.096 K (ITS-90)",
                                  "about 0.02 % of the pressure below 393 K; IAPWS-IF97, another equation, "
                                  "lies within 0.004 % at 300 K"};

    static constexpr double lowest_kelvin = 273.16;      ///< lower end of the range: the triple point, K
    static constexpr double highest_kelvin = 647.096;    ///< upper end: the critical point, K
    static constexpr double critical_pascal = 22.064e6;  ///< pressure at the critical point, Pa
    static constexpr double boiling_kelvin = 373.1243;   ///< normal boiling point, where a search starts, K

    /// Coefficients of th, th^1.5, th^3, th^3.5, th^4 and th^7.5.
    static constexpr std::array<double, 6> a{-7.85951783, 1.84408259,  -11.7866497,
                                             22.6807411,  -15.9618719, 1.80122502};

    /// @param th one less reduced temperature
    /// @return the sum of the terms and its derivative
    template <numeric::real T>
    static numeric::value_and_slope<T> series(T const& th) {
        using std::sqrt;
        T const root = sqrt(th), th2 = th * th, th3 = th2 * th, th6 = th3 * th3;
        return {th * (T(a[0]) + T(a[1]) * root + th2 * (T(a[2]) + T(a[3]) * root + T(a[4]) * th) +
                      T(a[5]) * th6 * root),
                T(a[0]) + T(1.5 * a[1]) * root +
                    th2 * (T(3 * a[2]) + T(3.5 * a[3]) * root + T(4 * a[4]) * th) +
                    T(7.5 * a[5]) * th6 * root};
    }
};

}  // namespace aqueth::inline AQUETH_ABI::correlation
