// SPDX-License-Identifier: BSL-1.0
#include "expect_refusal.hpp"

#include <aqueth/density.hpp>
#include <aqueth/metrology/instruments.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/metrology/monte_carlo.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/pycnometer.hpp>
#include <aqueth/strength.hpp>

#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>
#include <limits>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

/// What a balance shows: the weights that balance an object in air, by Archimedes for every part.
struct scene {
    double glass_kg = 0.040, glass_density = 2500.0, inside_m3 = 100e-6, expansion = 25e-6, air = 1.2;

    double indication(double contents_density, double t, double water_t) const {
        double const inside = inside_m3 * (1.0 + expansion * (t - water_t));
        double const contents = contents_density * inside;
        double const displaced = air * (glass_kg / glass_density + inside);
        return (glass_kg + contents - displaced) / (1.0 - air / 8000.0);
    }
    double empty() const { return (glass_kg - air * glass_kg / glass_density) / (1.0 - air / 8000.0); }

    pycnometer weighed(mass_fraction w, double t, double water_t) const {
        return {empty() * kilogram,
                indication(density(by_mass(0.0), celsius(water_t)).value(), water_t, water_t) * kilogram,
                celsius(water_t),
                indication(density(w, celsius(t)).value(), t, water_t) * kilogram,
                celsius(t),
                expansion * per_kelvin,
                air * kilogram_per_cubic_metre};
    }
};

TEST(Pycnometer, FindsTheMixtureBehindTheWeighings) {
    for (double const percent : {0.0, 12.0, 40.0, 96.0, 100.0}) {
        for (double const t : {5.0, 20.0, 35.0}) {
            for (double const air : {1.0, 1.2}) {
                scene with;
                with.air = air;
                auto const p = with.weighed(by_mass(percent), t, 22.0);
                EXPECT_NEAR(p.composition().percent(), percent, 1e-9) << percent << ' ' << t;
                EXPECT_NEAR(p.density().value(), density(by_mass(percent), celsius(t)).value(), 1e-9);
                EXPECT_NEAR(in(p.volume(), millilitre), 100.0, 1e-9);
            }
        }
    }
}

// Without the buoyancy of the air the density of a spirit of 40 % vol would be off by 0.06 kg/m3, which is
// 0.04 % vol; 10 K between the fillings would be 0.24 kg/m3 of glass.
TEST(Pycnometer, BuoyancyAndGlassCount) {
    auto p = scene{}.weighed(by_mass(33.3), 25.0, 15.0);
    double const right = p.density().value();
    p.air = 0.5 * kilogram_per_cubic_metre;
    EXPECT_GT(std::abs(p.density().value() - right), 0.03);
    p.air = 1.2 * kilogram_per_cubic_metre;
    p.glass = 0.0 * per_kelvin;
    EXPECT_NEAR(p.density().value() - right, 0.236, 0.005);
}

TEST(Pycnometer, AirIsLighterInTheMountains) {
    // ISO 2533: 1.225 kg/m3 at sea level and 15 °C, by definition of the atmosphere
    EXPECT_NEAR(air_density(1.0 * standard_atmosphere, celsius(15.0)).value(), 1.225, 5e-5);
    EXPECT_NEAR(air_density(90.0 * kilopascal, celsius(20.0)).value(), 1.0695, 5e-4);
}

TEST(Pycnometer, RefusesImpossibleWeighings) {
    auto const good = scene{}.weighed(by_mass(40.0), 20.0, 20.0);
    auto p = good;
    p.with_water = p.empty;
    expect_refusal([&] { return p.composition(); }, "indication with water");
    p = good;
    p.with_liquid = 0.5 * p.empty;
    expect_refusal([&] { return p.density(); }, "indication with the liquid");
    p = good;
    p.water_temperature = celsius(-1.0);
    expect_refusal([&] { return p.volume(); }, "temperature of the water");
    p = good;
    p.liquid_temperature = celsius(45.0);
    expect_refusal([&] { return p.composition(); }, "temperature");
    p = good;
    p.air = 2.0 * kilogram_per_cubic_metre;
    expect_refusal([&] { return p.composition(); }, "density of the air");
    p = good;
    p.with_liquid = 1.05 * p.with_water;  // syrup
    expect_refusal([&] { return p.composition(); }, "density");
    p = good;
    p = good;
    p.with_liquid = 1e6 * kilogram;  // no liquid is that dense
    expect_refusal([&] { return p.density(); }, "density");
    p.empty = std::numeric_limits<double>::quiet_NaN() * kilogram;
    expect_refusal([&] { return p.composition(); }, "indication");
    expect_refusal([] { return air_density(20.0 * kilopascal, celsius(20.0)); }, "pressure");
    EXPECT_TRUE(std::isnan(plain::mass_fraction_by_pycnometer<double>({0, 0, 20, 0, 20}).value));
    EXPECT_FALSE(plain::mass_fraction_by_pycnometer<double>({0, 0, 20, 0, 20}).status.ok);
}

// A flask of 100 mL on a balance of 0.01 g, thermometers of 0.2 K: the budget against half a million draws,
// and the share that matters most.
TEST(Pycnometer, BudgetAgreesWithDraws) {
    auto const p = scene{}.weighed(by_mass(33.3), 21.0, 19.5).numbers();
    using input = input_quantity;
    std::vector<input> const inputs{
        input::rectangular("empty", "kg", p.empty_kg, 1e-5),
        input::rectangular("with water", "kg", p.with_water_kg, 1e-5),
        input::rectangular("temperature of the water", "°C", p.water_celsius, 0.2),
        input::rectangular("with spirit", "kg", p.with_liquid_kg, 1e-5),
        input::rectangular("temperature of the spirit", "°C", p.liquid_celsius, 0.2),
        input::rectangular("expansion of the glass", "1/K", p.cubic_expansion, 5e-6),
        input::rectangular("density of the air", "kg/m3", p.air_kg_m3, 0.05),
    };
    auto const strength = [](auto const& x) {
        return 100.0 * measurement_model::volume_fraction(measurement_model::mass_fraction_by_pycnometer(
                           x[0], x[1], x[2], x[3], x[4], x[5], x[6]));
    };
    auto const budget = propagate(strength, inputs);
    auto const drawn = monte_carlo(strength, inputs, 500000);
    std::printf("strength %.3f, u %.4f by budget, %.4f by draws\n", budget.estimate,
                budget.standard_uncertainty, drawn.standard_uncertainty());
    EXPECT_NEAR(budget.estimate, to<volume_fraction>(by_mass(33.3)).percent(), 1e-9);
    EXPECT_NEAR(drawn.standard_uncertainty() / budget.standard_uncertainty, 1.0, 0.005);
    EXPECT_LT(budget.standard_uncertainty, 0.1);
    EXPECT_GT(budget.lines[4].share, 0.3);  // the thermometer in the spirit
}

}  // namespace
}  // namespace aqueth
