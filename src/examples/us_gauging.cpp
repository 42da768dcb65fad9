// SPDX-License-Identifier: BSL-1.0
// Figures of the United States rules, computed beside those printed in 27 CFR part 30.
#include <aqueth/gauging.hpp>
#include <aqueth/hydrometer.hpp>

#include <cstdio>

namespace {

void show(char const* what, int decimals, double computed, double printed, char const* section) {
    std::printf("%-50s%10.*f%12.*f   %s\n", what, decimals, computed, decimals, printed, section);
}

}  // namespace

int main() {
    using namespace aqueth;
    std::printf("%-50s%10s%12s   section\n", "", "computed", "printed");
    // [body]
    auto const true_proof = proof_hydrometer{}.strength(proof(193.0), fahrenheit(75.0));
    show("proof of a spirit that reads 193 at 75 F", 1, true_proof.degrees(), 189.5, "30.61");

    auto const tank = parcel::of(4308.48 * us_gallon, proof(86.8), fahrenheit(72.0));
    show("proof gallons in 4308.48 gal of 86.8 proof, 72 F", 1, tank.proof_gallons(), 3721.1, "30.51");

    double const factor = volume_factor_to_60_fahrenheit(proof(190.0), fahrenheit(76.0));
    show("volume at 60 F over volume at 76 F, 190 proof", 3, factor, 0.991, "30.67");

    double const weight = in(weight_per_volume(proof(190.0)), pound / us_gallon);
    show("pounds in a gallon of 190 proof", 5, weight, 6.79434, "30.65");
    show("gallons in a pound of 190 proof", 5, wine_gallons_per_pound(proof(190.0)), 0.14718, "30.64");
    show("proof gallons in a pound of 190 proof", 5, proof_gallons_per_pound(proof(190.0)), 0.27964, "30.64");
    show("proof gallons in a pound of 200 proof", 5, proof_gallons_per_pound(proof(200.0)), 0.30258, "30.64");
    // [body]
}
