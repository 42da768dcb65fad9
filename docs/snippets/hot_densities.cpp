// SPDX-License-Identifier: BSL-1.0
// Densities from the law's range to the boiling point, and the formula behind each.
#include <aqueth/density.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/still/heating.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    std::printf("density, kg/m3\n%% vol");
    for (double const t : {20.0, 40.0, 50.0, 62.0, 75.0}) std::printf("%9.0f °C", t);
    std::printf("   boiling at\n");
    for (double const percent : {0.0, 11.0, 28.0, 40.0, 60.0, 84.0, 96.0}) {
        auto const strength = by_volume(percent);
        std::printf("%5.0f", percent);
        for (double const t : {20.0, 40.0, 50.0, 62.0, 75.0})
            std::printf("%12.2f", density(strength, celsius(t)).value());
        auto const boils = bubble_point(strength, standard_atmosphere).temperature;
        std::printf("%7.1f °C: %.1f\n", boils.celsius(), density(strength, boils).value());
    }
    std::printf("formula    ");
    for (double const t : {20.0, 40.0, 50.0, 62.0, 75.0})
        std::printf("%s", density_formulation_at(celsius(t)) == density_formulation::oiml_r22
                              ? "R 22        "
                              : "fit         ");
    std::printf("\n\n");

    // [body]
    auto const meter = alcoholometer{};
    auto const warm = celsius(45.0);  // distillate straight from the condenser
    auto const actual = meter.strength(by_volume(72.0), warm);
    auto const spirit = parcel::of(2.00 * litre, actual, warm);
    auto const charge = wash::of(22.0 * litre, by_volume(11.0), plato(1.5), celsius(20.0));
    auto const boiling = volume_at_boil(charge, standard_atmosphere);
    auto const u = hot_density_uncertainty(actual, warm);

    std::printf("warm distillate that shows 72   %.1f %% vol\n", actual.percent());
    std::printf("two litres of it, at 20 °C      %.3f L\n", in(spirit.volume(celsius(20.0)), litre));
    std::printf("standard uncertainty            %.2f kg/m3\n", u.value());
    std::printf("22 L of wash, at the boil       %.2f L\n", in(boiling, litre));
    // [body]
}
