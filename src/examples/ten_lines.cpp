// SPDX-License-Identifier: BSL-1.0
// The example of the README, which shows the program below and what it prints, word for word.
// [program]
#include <aqueth/aqueth.hpp>
#include <cstdio>

int main() {
    using namespace aqueth;
    auto const meter = alcoholometer{};                                   // % vol at 20 °C, soda-lime glass
    auto const actual = meter.strength(by_volume(81.5), celsius(28.0));   // it shows 81.5 in spirit of 28 °C
    auto const spirit = parcel::of(1.85 * litre, actual, celsius(28.0));  // 1.85 L of it, still warm
    auto const plan = dilute(spirit, by_volume(43.0), water_at(celsius(14.0)), celsius(22.0));

    std::printf("true strength      %.2f %% vol\n", actual.percent());
    std::printf("mass of water      %.3f kg\n", in(plan.addition.mass(), kilogram));
    std::printf("product at 20 °C   %.3f L\n", in(plan.product.volume(celsius(20.0)), litre));
    std::printf("lost by mixing     %.3f L\n", in(plan.contraction, litre));
    std::printf("check at 22 °C     %.1f on the alcoholometer\n", meter.reading(plan.product).percent());
}
// [program]
