// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/parcel.hpp>

/// @return litres of pure alcohol at 20 °C
double litres_of_pure_alcohol(aqueth::parcel const& cask);
