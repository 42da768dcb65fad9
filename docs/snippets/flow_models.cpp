// SPDX-License-Identifier: BSL-1.0
// What constant molar overflow is worth: the same columns by the enthalpies of liquid and vapour.
#include <aqueth/aqueth.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>

using namespace aqueth;

int main() {
    boiling_curve const curve(standard_atmosphere);
    std::printf("distillate of 5 stages, %% mol, by constant molar overflow and by enthalpy balance\n\n");
    std::printf("   in the pot     reflux 1          reflux 3          reflux 8\n");
    double largest = 0.0;
    for (double const pot : {1.0, 3.0, 10.0, 30.0}) {
        std::printf("  %5.1f %% mol", pot);
        for (double const ratio : {1.0, 3.0, 8.0}) {
            auto const c = column::of_stages(5);
            double const constant = distillate_strength(curve, c, by_moles(pot), ratio).percent();
            double const balance =
                distillate_strength(curve, c, by_moles(pot), ratio, flow_model::enthalpy_balance).percent();
            std::printf("    %5.2f  %5.2f", constant, balance);
            largest = (std::max)(largest, std::abs(constant - balance));
        }
        std::printf("\n");
    }
    std::printf("\nlargest difference %.1f %% mol\n", largest);
}
