// SPDX-License-Identifier: BSL-1.0
// The sum of two strengths is the strength of nothing.
#include <aqueth/composition.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
double result() { return by_volume(40.0).percent() + by_volume(20.0).percent(); }
#else
auto result() { return by_volume(40.0) + by_volume(20.0); }
#endif
