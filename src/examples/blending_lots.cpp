// SPDX-License-Identifier: BSL-1.0
// Choosing how much of each lot reaches a strength.
#include <aqueth/lot_blending.hpp>

#include <array>
#include <cstdio>

namespace {

using namespace aqueth;

void show(char const* title, lot_blend const& result) {
    std::printf("%s: %.3f L of %.2f %% vol\n", title, in(result.product.volume(), litre),
                result.product.strength().percent());
    for (auto const& part : result.parts) {
        std::printf("  %7.3f kg, %7.3f L of %.1f %% vol\n", in(part.mass(), kilogram),
                    in(part.volume(), litre), part.strength().percent());
    }
}

}  // namespace

int main() {
    // [body]
    auto const cellar = celsius(18.0);
    std::array const lots{
        // the last of the strong lot: at least 3 kg of it must go
        lot{parcel::of(12.0 * litre, by_volume(74.0), cellar), 3.0 * kilogram},
        lot{parcel::of(9.0 * litre, by_volume(63.5), cellar)},
        lot{parcel::of(7.0 * litre, by_volume(51.0), cellar)},
    };
    show("a cask of 20 L", blend_to_strength(lots, by_volume(62.0), cellar, 20.0 * litre));
    show("as much as there can be", blend_to_strength(lots, by_volume(62.0), cellar));

    try {
        show("stronger than any lot", blend_to_strength(lots, by_volume(72.0), cellar, 20.0 * litre));
    } catch (refusal const& error) {
        std::printf("%s\n", error.what());
    }
    // [body]
}
