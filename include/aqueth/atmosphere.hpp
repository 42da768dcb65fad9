// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/plain/atmosphere.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// Mean air pressure at an altitude. Prefer a barometer: weather changes the pressure by up to 4 %.
/// @param altitude height above sea level, -500 to 11000 m
/// @return absolute pressure
/// @throws refusal if the altitude is outside that range
/// @par Source
/// @ref source_icao_atmosphere
[[nodiscard]] inline units::pressure pressure_at_altitude(units::length altitude) {
    return detail::answer("air pressure", plain::air_pressure_kpa(in(altitude, metre))) * kilopascal;
}

}  // namespace aqueth::inline AQUETH_ABI
