// SPDX-License-Identifier: BSL-1.0
// A liqueur: its recipe, what instruments show in it, and its strength read back.
#include <aqueth/refraction.hpp>
#include <aqueth/sweetening.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const cut = liquid::of(by_volume(75.0), celsius(21.0));
    auto const sugar = 250.0 * gram_per_litre;
    auto const plan = sweeten(5.0 * litre, by_volume(28.0), sugar, cut);
    std::printf("spirit      %.3f kg\n", in(plan.spirit.mass(), kilogram));
    std::printf("water       %.3f kg\n", in(plan.water, kilogram));
    std::printf("sugar       %.3f kg\n", in(plan.sugar, kilogram));

    auto const cool = plan.product.at(celsius(16.0));
    density_hydrometer const meter(celsius(20.0));
    auto const shown = reading(meter, cool);
    std::printf("hydrometer  %.1f kg/m3 at 16 °C\n", in(shown, kilogram_per_cubic_metre));
    std::printf("read back   %.2f %% vol, +- %.1f for the sugar's volume\n",
                strength_behind_sugar(meter, shown, celsius(16.0), sugar).percent(),
                100.0 * cool.strength_doubt());
    std::printf("refractometer %.1f °Bx\n", brix_of(refractive_index_of(plan.product)).degrees());
    // [body]
}
