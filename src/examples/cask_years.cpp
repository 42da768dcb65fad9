// SPDX-License-Identifier: BSL-1.0
// A cask of 50 L over twelve years, by the parts of its ethanol and of its water that a year takes.
#include <aqueth/cask.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    auto const filled = parcel::of(50.0 * litre, by_volume(62.0), celsius(20.0));
    for (double const years : {0.0, 3.0, 6.0, 12.0}) {
        parcel const damp = cask_after(filled, {0.04, 0.02}, years * julian_year);
        parcel const dry = cask_after(filled, {0.02, 0.05}, years * julian_year);
        std::printf("%2.0f years: damp %4.1f L of %4.1f %% vol, dry %4.1f L of %4.1f %% vol\n", years,
                    in(damp.volume(), litre), damp.strength().percent(), in(dry.volume(), litre),
                    dry.strength().percent());
    }
}
