// SPDX-License-Identifier: BSL-1.0
// A parcel of 40 - of what?
#include <aqueth/parcel.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return parcel::of(2.0 * litre, by_volume(40.0), celsius(20.0)); }
#else
auto result() { return parcel::of(2.0 * litre, 40.0, celsius(20.0)); }
#endif
