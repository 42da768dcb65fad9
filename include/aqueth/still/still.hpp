// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/still/column.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/heating.hpp>

namespace aqueth::inline AQUETH_ABI {

/// A still: pot, column, neck, head, and how the flows are found.
struct still {
    vessel pot;                                             ///< the heated pot
    column tower = column::none();                          ///< the column on the pot
    aqueth::neck neck = aqueth::neck::insulated();          ///< the neck from there to the head
    aqueth::head head = aqueth::head::none();               ///< what condenses, and what runs back
    flow_model flow = flow_model::constant_molar_overflow;  ///< model of the flows inside the column

    /// @return whether liquid stays in the column or in the head while the still runs
    bool has_holdup() const noexcept { return tower.holdup().value() > 0.0 || head.holdup().value() > 0.0; }
};

}  // namespace aqueth::inline AQUETH_ABI
