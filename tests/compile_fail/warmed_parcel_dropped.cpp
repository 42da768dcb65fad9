// SPDX-License-Identifier: BSL-1.0
// A parcel does not warm in place: `at` returns the warmer one, which must not be dropped.
#include <aqueth/parcel.hpp>

#pragma GCC diagnostic error "-Wunused-result"

using namespace aqueth;

#ifndef AQUETH_MISTAKE
parcel warm(parcel const& spirit) { return spirit.at(celsius(30.0)); }
#else
void warm(parcel const& spirit) { spirit.at(celsius(30.0)); }
#endif
