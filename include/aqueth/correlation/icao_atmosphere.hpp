// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/real.hpp>

#include <cmath>

/// Standard atmosphere of ICAO (= ISO 2533): mean air pressure against altitude, up to 11 km.
namespace aqueth::inline AQUETH_ABI::correlation::icao_atmosphere {

/// Citation, range and accuracy.
inline constexpr source cited{"ICAO Doc 7488, Manual of the ICAO Standard Atmosphere, troposphere (= ISO "
                              "2533:1975 and the U.S. Standard "
                              "Atmosphere 1976)",
                              "-500 to 11000 m above sea level",
                              "a convention; weather moves the pressure of a place by up to 4 %, which is 1 "
                              "K in a boiling temperature"};

inline constexpr double lowest_metres = -500.0;       ///< lower end of the range, m
inline constexpr double highest_metres = 11000.0;     ///< upper end of the range, m
inline constexpr double earth_radius = 6356766.0;     ///< nominal radius of the earth, m
inline constexpr double sea_level_kelvin = 288.15;    ///< temperature at sea level, K
inline constexpr double sea_level_pascal = 101325.0;  ///< pressure at sea level, Pa
inline constexpr double lapse_rate = 0.0065;          ///< fall of temperature with geopotential altitude, K/m
/// exponent g0 M0/(R L) with g0 = 9.80665 m/s2, M0 = 28.9644 kg/kmol and R = 8314.32 J/(kmol K)
inline constexpr double exponent = 9.80665 * 28.9644 / (8314.32 * lapse_rate);

/// @param metres altitude above sea level, m
/// @return whether the atmosphere's lowest layer reaches there
template <numeric::real T>
constexpr bool covers(T const& metres) {
    return metres >= T(lowest_metres) && metres <= T(highest_metres);
}

/// @param metres altitude above sea level, m, -500 to 11000; not checked, NaN in gives NaN out
/// @return pressure, Pa
template <numeric::real T>
T pressure(T const& metres) {
    using std::pow;
    T const geopotential = T(earth_radius) * metres / (T(earth_radius) + metres);
    T const kelvin = T(sea_level_kelvin) - T(lapse_rate) * geopotential;
    return T(sea_level_pascal) * pow(T(kelvin / T(sea_level_kelvin)), T(exponent));
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::icao_atmosphere
