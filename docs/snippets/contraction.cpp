// SPDX-License-Identifier: BSL-1.0
// How much volume is lost when a litre of spirit is diluted, by strength before and after.
#include <aqueth/blending.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    double const before[] = {96.0, 90.0, 80.0, 70.0, 60.0, 50.0};

    std::printf("mL lost for each litre of spirit, all at 20 °C\n\nto \\ from ");
    for (double const from : before) std::printf("%8.0f", from);
    std::printf("\n");
    for (double const target : {80.0, 70.0, 60.0, 50.0, 45.0, 40.0, 30.0, 20.0}) {
        std::printf("%6.0f    ", target);
        for (double const from : before) {
            if (target >= from) break;  // from here on the spirits are too weak
            auto const spirit = parcel::of(1.0 * litre, by_volume(from), celsius(20.0));
            auto const plan = dilute(spirit, by_volume(target), water_at(celsius(20.0)), celsius(20.0));
            std::printf("%8.1f", in(plan.contraction, millilitre));
        }
        std::printf("\n");
    }
}
