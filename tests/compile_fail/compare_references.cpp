// SPDX-License-Identifier: BSL-1.0
// % vol at 20 °C and % vol at 60 °F are different scales.
#include <aqueth/composition.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
bool result() { return by_volume(40.0) < by_volume(50.0); }
#else
bool result() { return by_volume(40.0) < by_volume<at_60_fahrenheit>(50.0); }
#endif
