// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

namespace detail {

/// Pressures at which pots and columns are computed: the boiling points lie where the heat capacities hold.
inline units::pressure require_boiling_pressure(units::pressure pressure) {
    require_range("boiling", argument::pressure, in(pressure, kilopascal), "kPa", 5.0, 170.0,
                  "the heat capacities hold from 0 to 116.85 °C");
    return pressure;
}

}  // namespace detail

}  // namespace aqueth::inline AQUETH_ABI
