// SPDX-License-Identifier: BSL-1.0
// Diluting to a strength: the mass of water, the product, how to check it.
#include <aqueth/blending.hpp>
#include <aqueth/density.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/weighing.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const meter = alcoholometer{};
    auto const spirit =
        parcel::of(1.85 * litre, meter.strength(by_volume(81.5), celsius(28.0)), celsius(28.0));
    auto const water = water_at(celsius(14.0));
    auto const mixture_at = celsius(22.0);
    auto const plan = dilute(spirit, by_volume(43.0), water, mixture_at);

    auto const on_balance =
        balance_indication(plan.addition.mass(), density(water.composition(), water.temperature()));
    std::printf("water, mass          %.1f g\n", in(plan.addition.mass(), gram));
    std::printf("  a balance shows    %.1f g\n", in(on_balance, gram));
    std::printf("  or measure         %.1f mL at 14 °C\n", in(plan.addition.volume(), millilitre));
    std::printf("spirit               %.1f g of %.2f %% vol\n", in(spirit.mass(), gram),
                spirit.strength().percent());
    std::printf("product              %.1f g of %.2f %% vol\n", in(plan.product.mass(), gram),
                plan.product.strength().percent());
    std::printf("  volume at 22 °C    %.1f mL\n", in(plan.product.volume(), millilitre));
    std::printf("  volume at 20 °C    %.1f mL\n", in(plan.product.volume(celsius(20.0)), millilitre));
    std::printf("parts added, 22 °C   %.1f mL\n", in(plan.sum_of_volumes, millilitre));
    std::printf("contraction          %.1f mL (%.2f %%)\n", in(plan.contraction, millilitre),
                plan.contraction_percent());
    std::printf("the alcoholometer     shows %.1f at 22 °C\n", meter.reading(plan.product).percent());
    // [body]
}
