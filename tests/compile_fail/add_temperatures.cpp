// SPDX-License-Identifier: BSL-1.0
// Two temperatures have no sum: 20 °C and 20 °C are not 40 °C.
#include <aqueth/units.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return celsius(20.0) + 20.0 * kelvins; }
#else
auto result() { return celsius(20.0) + celsius(20.0); }
#endif
