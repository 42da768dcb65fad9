// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/model/sound_speed_coefficients.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

/// Speed of sound in liquid ethanol-water mixtures.
///
/// Plain numbers: mass fraction of ethanol, temperature in °C. Nothing is checked, NaN in gives NaN out.
namespace aqueth::inline AQUETH_ABI::model::sound_speed {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "measurements of Journal of Chemical Thermodynamics (2018), DOI 10.1016/j.jct.2018.02.022, smoothed by "
    "src/fit/transport.cpp",
    "mass fraction 0 to 1; 20 to 35 °C",
    "1 m/s of the measurements; another set of ethanol with a little water lies up to 3.5 m/s lower (0.3 %)"};

inline constexpr double lowest_celsius = 20.0;   ///< lower end of the range, °C
inline constexpr double highest_celsius = 35.0;  ///< upper end of the range, °C

inline constexpr double relative_standard_uncertainty = 0.001;  ///< of a value, by other measurements

/// @param w mass fraction of ethanol
/// @param t temperature, °C
/// @return whether the measurements reach there
template <numeric::real T>
constexpr bool covers(T const& w, T const& t) {
    return w >= T(0) && w <= T(1) && t >= T(lowest_celsius) && t <= T(highest_celsius);
}

/// @param w mass fraction of ethanol, 0 to 1
/// @param t temperature, °C
/// @return speed of sound, m/s
template <numeric::real T>
constexpr T metres_per_second(T const& w, T const& t) {
    return numeric::polynomial(coefficients, T((t - T(25)) / T(10)), T(T(2) * w - T(1)));
}

}  // namespace aqueth::inline AQUETH_ABI::model::sound_speed
