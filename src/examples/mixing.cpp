// SPDX-License-Identifier: BSL-1.0
// Two lots put together.
#include <aqueth/blending.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const run_3 = parcel::of(6.40 * litre, by_volume(72.5), celsius(18.0));
    auto const run_4 = parcel::of(4.90 * litre, by_volume(58.0), celsius(16.0));
    auto const both = mix({run_3, run_4}, celsius(20.0));
    std::printf("product        %.3f kg of %.2f %% vol\n", in(both.product.mass(), kilogram),
                both.product.strength().percent());
    std::printf("volume         %.4f L at 20 °C\n", in(both.product.volume(), litre));
    std::printf("contraction    %.1f mL (%.3f %%)\n", in(both.contraction, millilitre),
                both.contraction_percent());
    std::printf("pure alcohol   %.4f L at 20 °C\n", in(both.product.pure_alcohol(), litre));
    // [body]
}
