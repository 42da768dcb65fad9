// SPDX-License-Identifier: BSL-1.0
// A strength is read in its own basis; `to` changes the basis.
#include <aqueth/strength.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
double result() { return in(to<mass_fraction>(by_volume(40)), by_mass); }
#else
double result() { return in(by_volume(40), by_mass); }
#endif
