// SPDX-License-Identifier: BSL-1.0
// One spirit in every basis.
#include <aqueth/strength.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const spirit = by_volume(40.0);  // % vol at 20 °C
    std::printf("%% mass               %.4f\n", to<mass_fraction>(spirit).percent());
    std::printf("%% mol                %.4f\n", to<mole_fraction>(spirit).percent());
    std::printf("%% vol at 15 °C       %.4f\n", to<basic_volume_fraction<at_15_celsius>>(spirit).percent());
    std::printf("%% vol at 15.56 °C    %.4f\n",
                to<basic_volume_fraction<at_15_56_celsius>>(spirit).percent());
    std::printf("%% vol at 60 °F       %.4f\n",
                to<basic_volume_fraction<at_60_fahrenheit>>(spirit).percent());
    std::printf("US proof             %.4f\n", to<us_proof>(spirit).degrees());
    std::printf("g/100 mL at 20 °C    %.4f\n", to<mass_concentration>(spirit).grams_per_100_millilitres());
    std::printf("L of alcohol in 1 hL %.4f\n", spirit.litres_per_hectolitre());
    // [body]
}
