// SPDX-License-Identifier: BSL-1.0
// Turning % mass into % vol needs a density, so it never happens unasked.
#include <aqueth/composition.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
volume_fraction result() { return by_volume(40.0); }
#else
volume_fraction result() { return by_mass(40.0); }
#endif
