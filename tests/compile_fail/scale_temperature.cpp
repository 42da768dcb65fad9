// SPDX-License-Identifier: BSL-1.0
// Twice 20 °C depends on where the scale has its zero.
#include <aqueth/units.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return 2.0 * (celsius(30.0) - celsius(20.0)); }
#else
auto result() { return 2.0 * celsius(20.0); }
#endif
