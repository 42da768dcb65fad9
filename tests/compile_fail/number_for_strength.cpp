// SPDX-License-Identifier: BSL-1.0
// A bare number does not say by what it is a strength.
#include <aqueth/composition.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
mass_fraction result() { return mass_fraction(0.4); }
#else
mass_fraction result() { return 0.4; }
#endif
