// SPDX-License-Identifier: BSL-1.0
// What an outside program does first: link the library and ask it for a volume.
#include "duty.hpp"

#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    auto const cask = parcel::of(180.0 * kilogram, by_volume(58.3), celsius(14.0));
    std::printf("aqueth %s: %.1f L at 20 degC, %.1f L of pure alcohol\n", version,
                in(cask.volume(celsius(20.0)), litre), litres_of_pure_alcohol(cask));
}
