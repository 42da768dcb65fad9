// SPDX-License-Identifier: BSL-1.0
// Density takes a strength in any basis, but not a number without one.
#include <aqueth/density.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return density(by_volume(40.0), celsius(20.0)); }
#else
auto result() { return density(0.4, celsius(20.0)); }
#endif
