// SPDX-License-Identifier: BSL-1.0
// A second source that includes the whole library: linking fails if a definition in a header is not inline.
#include "duty.hpp"

#include <aqueth/aqueth.hpp>

double litres_of_pure_alcohol(aqueth::parcel const& cask) {
    return aqueth::in(cask.pure_alcohol(), aqueth::litre);
}
