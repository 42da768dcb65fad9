// SPDX-License-Identifier: BSL-1.0
// What a wash holds, from its specific gravities before and after fermentation.
#include <aqueth/attenuation.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const beer =
        fermented_wash(25.0 * litre, specific_gravity(1.085), specific_gravity(0.992), celsius(20.0));
    std::printf("strength of the wash   %.2f %% vol\n", beer.strength().percent());
    std::printf("real extract           %.2f °P\n", beer.extract().degrees());
    std::printf("ethanol                %.2f kg\n", in(beer.liquid().ethanol(), kilogram));

    auto const next = sugar_needed(25.0 * litre, by_volume(11.0));
    std::printf("sucrose for 11 %% vol   %.2f kg, theoretical minimum %.2f kg\n",
                in(next.practical, kilogram), in(next.least, kilogram));
    // [body]
}
