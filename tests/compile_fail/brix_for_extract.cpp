// SPDX-License-Identifier: BSL-1.0
// A refractometer's degrees Brix are not the extract of a fermented wash.
#include <aqueth/refraction.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return wash::of(25.0 * litre, by_volume(12.4), plato(2.2), celsius(20.0)); }
#else
auto result() { return wash::of(25.0 * litre, by_volume(12.4), brix(6.5), celsius(20.0)); }
#endif
