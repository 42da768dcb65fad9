// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/model/vapour_deviation_table.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <cstddef>

/// Uncertainty of the vapour of the equilibrium model, from measured vapours, by composition.
///
/// Measured vapours over weak liquids lie below the model. The static pressures, which the model follows, and
/// the measured vapours cannot both be right. The difference is therefore an uncertainty, not a correction.
/// The standard uncertainty is the root mean square deviation, bias included (GUM F.2.4.5, as recalled from
/// memory).
///
/// Plain numbers: x is the mole fraction of ethanol in the liquid. Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::model::vapour_deviations {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "this work: seven sets of measured vapours, 1932 to 2014, against the model (docs/fit_report.txt, "
    "section 9)",
    "25 to 300 kPa; 0 to 100 %, from points between x = 0.0028 and 0.99",
    "a standard uncertainty from five to seven sets in a band: itself good to a third"};

inline constexpr double lowest_kilopascal = 25.0;    ///< lower end of the range, kPa
inline constexpr double highest_kilopascal = 300.0;  ///< upper end of the range, kPa

/// Standard uncertainty of the logarithm of the relative volatility, which is the relative standard
/// uncertainty of the relative volatility: linear between the mean compositions of the bands, constant beyond
/// them.
/// @param x mole fraction of ethanol in the liquid, 0 to 1
/// @return the uncertainty, and its derivative with respect to x: 0 beyond the outermost bands
template <numeric::real T>
constexpr numeric::value_and_slope<T> uncertainty(T const& x) {
    if (x <= T(bands.front().x)) return {T(bands.front().uncertainty), T(0)};
    for (std::size_t k = 1; k < bands.size(); ++k) {
        band const& low = bands[k - 1];
        band const& high = bands[k];
        if (x <= T(high.x)) {
            T const slope = T((high.uncertainty - low.uncertainty) / (high.x - low.x));
            return {T(low.uncertainty) + (x - T(low.x)) * slope, slope};
        }
    }
    if (numeric::is_nan(x)) return {x, x};
    return {T(bands.back().uncertainty), T(0)};
}

}  // namespace aqueth::inline AQUETH_ABI::model::vapour_deviations
