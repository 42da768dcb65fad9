// SPDX-License-Identifier: BSL-1.0
// % mass and % vol are different figures for the same spirit.
#include <aqueth/strength.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
bool result() { return to<volume_fraction>(by_mass(40.0)) < by_volume(45.0); }
#else
bool result() { return by_mass(40.0) < by_volume(45.0); }
#endif
