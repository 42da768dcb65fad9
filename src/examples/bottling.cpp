// SPDX-License-Identifier: BSL-1.0
// Bottles that hold their label volume at 20 °C, filled from spirit at 22 °C.
#include <aqueth/bottling.hpp>
#include <aqueth/density.hpp>
#include <aqueth/weighing.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const spirit = parcel::of(3.37 * litre, by_volume(43.0), celsius(22.0));
    auto const result = fill_bottles(spirit, 350.0 * millilitre);
    auto const on_balance =
        balance_indication(result.fill_mass, density(spirit.composition(), spirit.temperature()));
    std::printf("fill each    %.2f mL at 22 °C\n", in(result.fill, millilitre));
    std::printf("  or weigh   %.1f g as a balance shows it\n", in(on_balance, gram));
    std::printf("bottles      %.0f of 350 mL\n", result.count);
    std::printf("left over    %.1f mL at 22 °C\n", in(result.remainder.volume(), millilitre));
    // [body]
}
