// SPDX-License-Identifier: BSL-1.0
// The same dilution in four equal additions of water.
#include <aqueth/blending.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const spirit = parcel::of(1.85 * litre, by_volume(79.1), celsius(28.0));
    std::printf("addition   water, g   then %% vol\n");
    int number = 0;
    for (auto const& step :
         dilute_in_additions(spirit, by_volume(43.0), 4, water_at(celsius(14.0)), celsius(22.0))) {
        std::printf("%5d %13.1f %11.2f\n", ++number, in(step.addition.mass(), gram),
                    step.product.strength().percent());
    }
    // [body]
}
