// SPDX-License-Identifier: BSL-1.0
// A bare number does not say whether it is °C or °F.
#include <aqueth/density.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return density(by_mass(40.0), celsius(20.0)); }
#else
auto result() { return density(by_mass(40.0), 20.0); }
#endif
