// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

namespace aqueth {

/// Mean air pressure at an altitude. Prefer a barometer: weather changes the pressure by up to 4 %.
/// @param altitude height above sea level, -500 to 11000 m
/// @return absolute pressure
/// @throws range_error if the altitude is outside that range
/// @par Source
/// @ref source_icao_atmosphere
inline units::pressure pressure_at_altitude(units::length altitude) {
    namespace icao = correlation::icao_atmosphere;
    require_range("air pressure", argument::altitude, in(altitude, metre), "m", icao::lowest_metres,
                  icao::highest_metres, "ICAO standard atmosphere, lowest layer");
    return icao::pressure(in(altitude, metre)) * pascal;
}

}  // namespace aqueth
