// SPDX-License-Identifier: BSL-1.0
// A volume of a strength from a stock, and a weak lot lifted with a strong one.
#include <aqueth/blending.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const stock = liquid::of(by_volume(80.0), celsius(18.0));
    auto const batch = make_up(5.00 * litre, celsius(20.0), by_volume(43.0),  // wanted
                               stock, water_at(celsius(15.0)));
    std::printf("5 L of 43 %% vol:\n");
    std::printf("  spirit of 80 %% vol  %.3f kg, %.3f L at 18 °C\n", in(batch.spirit.mass(), kilogram),
                in(batch.spirit.volume(), litre));
    std::printf("  water               %.3f kg, %.3f L at 15 °C\n\n", in(batch.diluent.mass(), kilogram),
                in(batch.diluent.volume(), litre));

    auto const weak = parcel::of(3.00 * litre, by_volume(41.2), celsius(20.0));
    auto const lift = fortify(weak, by_volume(45.0), stock, celsius(20.0));
    std::printf("3 L of 41.2 %% vol lifted to 45 %% vol:\n");
    std::printf("  spirit of 80 %% vol  %.1f g, %.1f mL at 18 °C\n", in(lift.addition.mass(), gram),
                in(lift.addition.volume(), millilitre));
    std::printf("  product             %.3f L at 20 °C\n", in(lift.product.volume(), litre));
    // [body]
}
