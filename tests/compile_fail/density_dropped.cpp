// SPDX-License-Identifier: BSL-1.0
// A density, like every quantity that a function returns, must not be dropped.
#include <aqueth/density.hpp>

#pragma GCC diagnostic error "-Wunused-result"

using namespace aqueth;

#ifndef AQUETH_MISTAKE
units::mass_density of_spirit() { return density(by_mass(40.0), celsius(20.0)); }
#else
void of_spirit() { density(by_mass(40.0), celsius(20.0)); }
#endif
