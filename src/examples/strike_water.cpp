// SPDX-License-Identifier: BSL-1.0
// A mash of 6 kg of malt: the water for it, its gravity, and the heat of its fermentation.
#include <aqueth/mash.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    mash const tun{6.0 * kilogram, 18.0 * kilogram};
    std::printf("strike water     %.1f °C for 65 °C\n", strike_temperature(tun, celsius(65.0)).celsius());

    wort const made = wort_of_extract(0.65 * tun.grain, 25.0 * litre);
    std::printf("wort             gravity %.4f, %.2f °P\n", made.gravity.value(), made.extract.degrees());

    auto const heat = heat_of_fermentation(25.0 * litre, by_volume(7.5));
    std::printf("fermentation     %.0f kJ, %.1f K if no heat is lost\n", in(heat.heat, kilojoule),
                heat.rise.value());
}
