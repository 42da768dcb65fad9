// SPDX-License-Identifier: BSL-1.0
// The temperatures of water and mixture cannot change places.
#include <aqueth/blending.hpp>

using namespace aqueth;

auto const spirit = parcel::of(litre, by_volume(80.0), celsius(20.0));

#ifndef AQUETH_MISTAKE
auto result() { return dilute(spirit, by_volume(45.0), water_at(celsius(15.0)), celsius(22.0)); }
#else
auto result() { return dilute(spirit, by_volume(45.0), celsius(22.0), water_at(celsius(15.0))); }
#endif
