// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

namespace aqueth::inline AQUETH_ABI {

/// How far a figure's source was seen.
enum class provenance {
    read,            ///< in the publication or a reprint of it
    second_hand,     ///< as another publication quotes it
    memory,          ///< nobody here saw it: confirm before relying on it
    common_practice  ///< of the trade, no source
};

/// @param p how far a source was seen
/// @return the same in words
constexpr char const* name_of(provenance p) noexcept {
    switch (p) {
    case provenance::read: return "read";
    case provenance::second_hand: return "second hand";
    case provenance::memory: return "from memory";
    case provenance::common_practice: break;
    }
    return "common practice";
}

}  // namespace aqueth::inline AQUETH_ABI
