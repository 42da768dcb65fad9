// SPDX-License-Identifier: BSL-1.0
// A strength does not change its basis in place: `to` returns the converted one, which must not be dropped.
#include <aqueth/strength.hpp>

#pragma GCC diagnostic error "-Wunused-result"

using namespace aqueth;

#ifndef AQUETH_MISTAKE
mass_fraction by_mass_of(volume_fraction q) { return to<mass_fraction>(q); }
#else
void by_mass_of(volume_fraction q) { to<mass_fraction>(q); }
#endif
