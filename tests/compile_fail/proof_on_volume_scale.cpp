// SPDX-License-Identifier: BSL-1.0
// An alcoholometer in % vol cannot show degrees of proof.
#include <aqueth/hydrometer.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return alcoholometer{}.composition(by_volume(45.0), celsius(20.0)); }
#else
auto result() { return alcoholometer{}.composition(proof(90.0), celsius(20.0)); }
#endif
