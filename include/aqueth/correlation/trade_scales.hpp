// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <cmath>

/// Hydrometer scales of the trade that count from specific gravity: Baumé, Oechsle, KMW.
///
/// Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::correlation::trade_scales {

/// Citation, range and accuracy.
inline constexpr source cited{
    "Baume of the United States (60/60 °F), degrees Oechsle (20/20 °C) and Klosterneuburg (KMW), by their "
    "usual formulas (read in secondary works)",
    "specific gravity 0.5 to 2; KMW from 0 to 40",
    "definitions, exact; other moduli of Baume were in use, and KMW is 0.12 off its older definition at 20 % "
    "of sugar"};

/// @param sg specific gravity 60/60 °F, of a liquid denser than water
/// @return degrees Baumé; 0 is water
template <numeric::real T>
constexpr T baume_above(T const& sg) {
    return T(145) - T(145) / sg;
}

/// @param degrees degrees Baumé of a liquid denser than water
/// @return its specific gravity 60/60 °F
template <numeric::real T>
constexpr T gravity_of_baume_above(T const& degrees) {
    return T(145) / (T(145) - degrees);
}

/// @param sg specific gravity 60/60 °F, of a liquid lighter than water
/// @return degrees Baumé; 10 is water
template <numeric::real T>
constexpr T baume_below(T const& sg) {
    return T(140) / sg - T(130);
}

/// @param degrees degrees Baumé of a liquid lighter than water
/// @return its specific gravity 60/60 °F
template <numeric::real T>
constexpr T gravity_of_baume_below(T const& degrees) {
    return T(140) / (T(130) + degrees);
}

/// @param sg specific gravity 20/20 °C
/// @return degrees Oechsle
template <numeric::real T>
constexpr T oechsle(T const& sg) {
    return T(1000) * (sg - T(1));
}

/// @param kmw degrees of the Klosterneuburg must scale
/// @return degrees Oechsle
template <numeric::real T>
constexpr T oechsle_of_kmw(T const& kmw) {
    return kmw * (T(4.54) + T(0.022) * kmw);
}

/// @param degrees degrees Oechsle
/// @return degrees of the Klosterneuburg must scale
template <numeric::real T>
T kmw_of_oechsle(T const& degrees) {
    using std::sqrt;
    // the root of 0.022 k^2 + 4.54 k = degrees, in the form that keeps its digits near zero
    return T(2) * degrees / (T(4.54) + sqrt(T(T(4.54 * 4.54) + T(0.088) * degrees)));
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::trade_scales
