// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/plain/status.hpp>

namespace aqueth::inline AQUETH_ABI::plain {

/// Mean air pressure at an altitude, where nothing better is known than the place. A barometer knows better:
/// weather moves the pressure by up to 4 %.
/// @param altitude_metres height above sea level, -500 to 11000 m
/// @return absolute pressure, kPa; refuses an altitude out of range
/// @par Source
/// @ref source_icao_atmosphere
template <number T>
checked<T> air_pressure_kpa(T altitude_metres) {
    namespace icao = correlation::icao_atmosphere;
    status const range = within(argument::altitude, altitude_metres, icao::lowest_metres,
                                icao::highest_metres, limit::icao_standard_atmosphere);
    if (!range.ok) return no_answer<T>(range);
    return {icao::pressure(altitude_metres) / T(1000), {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
