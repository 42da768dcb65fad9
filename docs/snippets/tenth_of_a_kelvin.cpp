// SPDX-License-Identifier: BSL-1.0
// How much strength a tenth of a kelvin is worth, in the pot and at the head, under 101.325 kPa.
#include <aqueth/equilibrium.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const p = standard_atmosphere;
    auto const boils = [p](double percent) { return bubble_point(by_volume(percent), p).temperature; };
    auto const condenses = [p](double percent) { return dew_point(by_volume(percent), p).temperature; };
    auto const worth = [](auto const& temperature, double percent) {  // of 0.1 K, in % vol
        return 0.1 * 0.2 / (temperature(percent - 0.1) - temperature(percent + 0.1)).value();
    };
    std::printf("%% vol   liquid boils at   0.1 K is      vapour condenses at   0.1 K is\n");
    for (double const v : {2.0, 5.0, 8.0, 12.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 95.0}) {
        std::printf("%5.0f       %6.2f °C    %5.2f %% vol            %6.2f °C    %5.2f %% vol\n", v,
                    boils(v).celsius(), worth(boils, v), condenses(v).celsius(), worth(condenses, v));
    }
    // [body]
}
