// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>

#include <array>
#include <string_view>

/// Yearly losses in store that a law accepts: upper limits, not what casks lose.
namespace aqueth::inline AQUETH_ABI::correlation::cask_loss_limits {

/// Citation, range and accuracy.
inline constexpr source cited{"France, Code general des impots, annexe III, article 111-00 C",
                              "goods under French excise, in wood or tanks",
                              "limits of law, as read in 2026; the text in force counts"};

/// One row of the table: parts of the mean stock in a year.
struct limit_of_law {
    std::string_view goods;  ///< kind of goods
    double in_wood;          ///< in wooden casks
    double in_tanks;         ///< in tight tanks
};

/// The table.
inline constexpr std::array<limit_of_law, 5> limits{{{"wine and cider", 0.045, 0.007},
                                                     {"fortified wine", 0.05, 0.007},
                                                     {"spirits", 0.06, 0.015},
                                                     {"rum of the overseas departments", 0.08, 0.03},
                                                     {"alcohol", 0.06, 0.015}}};

}  // namespace aqueth::inline AQUETH_ABI::correlation::cask_loss_limits
