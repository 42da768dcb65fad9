// SPDX-License-Identifier: BSL-1.0
// Density is a function of the mass fraction; another strength must be converted, visibly.
#include <aqueth/density.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return density(by_mass(40.0), celsius(20.0)); }
#else
auto result() { return density(by_volume(40.0), celsius(20.0)); }
#endif
