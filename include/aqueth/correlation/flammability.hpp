// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>

/// Flammability of ethanol vapour in air.
namespace aqueth::inline AQUETH_ABI::correlation::flammability {

/// Citation, range and accuracy.
inline constexpr source cited{
    "NIOSH Pocket Guide to Chemical Hazards, ethyl alcohol; NFPA 497 (2008); IEC 60079-20-1 (2010)",
    "ethanol vapour in ordinary air",
    "the three differ: flash point 12 to 13 °C, lower limit 3.1 to 3.3 % (the library takes 3.1)"};

inline constexpr double ethanol_flash_point_celsius = 12.8;  ///< NIOSH, 55 °F, closed cup, °C
inline constexpr double lower_limit = 0.031;                 ///< IEC: volume fraction of vapour in air
inline constexpr double upper_limit = 0.19;                  ///< all three: volume fraction of vapour in air

inline constexpr double standard_uncertainty_kelvins = 2.0;  ///< of a flash point by Liaw's relation

}  // namespace aqueth::inline AQUETH_ABI::correlation::flammability
