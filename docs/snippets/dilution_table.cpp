// SPDX-License-Identifier: BSL-1.0
// Water to add by strength before and after.
#include <aqueth/blending.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    double const targets[] = {38.0, 40.0, 42.0, 43.0, 45.0, 50.0, 55.0, 60.0};

    std::printf("g of water for each litre of spirit at 20 °C\n\nfrom \\ to");
    for (double const target : targets) std::printf("%8.0f", target);
    std::printf("\n");
    for (double q = 60.0; q <= 95.0; q += 5.0) {
        std::printf("%6.0f   ", q);
        auto const spirit = parcel::of(1.0 * litre, by_volume(q), celsius(20.0));
        for (double const target : targets) {
            auto const plan = dilute(spirit, by_volume(target), celsius(20.0), celsius(20.0));
            std::printf("%8.0f", in(plan.addition.mass(), gram));
        }
        std::printf("\n");
    }
}
