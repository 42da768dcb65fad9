// SPDX-License-Identifier: BSL-1.0
// The density above 40 °C: the join with the law, the pure ends, the limits, and the functions that use it.
#include <aqueth/blending.hpp>
#include <aqueth/correlation/ethanol_schroeder.hpp>
#include <aqueth/correlation/iapws_liquid_water.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/density.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/model/hot_density.hpp>
#include <aqueth/parcel.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;
namespace hot = model::hot_density;
namespace r22 = correlation::oiml_r22;

// Value and slope in t at 40 °C, at every composition, to rounding.
TEST(HotDensity, JoinsTheLawInValueAndSlope) {
    for (int i = 0; i <= 1000; ++i) {
        double const w = i / 1000.0;
        auto const law = r22::density_with_derivatives(w, 40.0);
        auto const above = hot::specific_volume(w, 40.0);
        EXPECT_NEAR(1.0 / above.value / law.value, 1.0, 4e-16) << w;
        EXPECT_NEAR(-above.slope / (above.value * above.value), law.d_temperature, 1e-13) << w;
        // and through the front door, from both sides
        double const below = density(by_mass(100.0 * w), celsius(40.0)).value();
        double const next = density(by_mass(100.0 * w), celsius(40.0 + 1e-9)).value();
        EXPECT_NEAR(next, below, 2e-9) << w;
    }
}

TEST(HotDensity, TheJoinFadesOutInValueAndSlope) {
    for (int i = 0; i <= 100; ++i) {
        double const w = i / 100.0;
        double const nearly = hot::joined_celsius - 1e-7;
        auto const joined = hot::specific_volume(w, nearly);
        auto const fitted = hot::fitted_volume(w, nearly);
        EXPECT_NEAR(joined.value / fitted.value, 1.0, 1e-15) << w;
        EXPECT_NEAR(joined.slope / fitted.slope, 1.0, 1e-9) << w;
        // the slope is that of the value
        for (double const t : {42.0, 50.0, 58.0, 70.0}) {
            double const h = 1e-3;
            double const change = hot::specific_volume(w, t + h).value - hot::specific_volume(w, t - h).value;
            EXPECT_NEAR(change / (2.0 * h) / hot::specific_volume(w, t).slope, 1.0, 1e-6) << w << " " << t;
        }
    }
}

// IAPWS SR6-08 and the equation of state of 2014: the polynomials for the pure liquids leave 1e-8.
TEST(HotDensity, PureEndsAreThePureLiquids) {
    for (double t = hot::joined_celsius; t <= 100.0; t += 0.5) {
        EXPECT_NEAR(hot::density(0.0, t) * correlation::iapws_liquid_water::specific_volume(t), 1.0, 3e-8)
            << t;
        EXPECT_NEAR(hot::density(1.0, t) / correlation::ethanol_schroeder::liquid_density(t), 1.0, 3e-8) << t;
    }
}

TEST(HotDensity, FallsWithStrengthAndTemperature) {
    for (double t = 40.0; t <= 100.0; t += 0.5) {
        for (int i = 0; i < 400; ++i) {
            double const w = i / 400.0;
            EXPECT_GT(hot::density(w, t), hot::density(w + 1.0 / 400.0, t)) << w << " " << t;
            EXPECT_GT(hot::specific_volume(w, t).slope, 0.0) << w << " " << t;
        }
    }
}

TEST(HotDensity, InverseClosesUpToTheBoilingPoint) {
    for (int i = 0; i <= 100; ++i) {
        mass_fraction const w(i / 100.0);
        for (double t = 40.25; t <= plain::hottest_liquid_celsius(w.value()); t += 0.75) {
            double const back = mass_fraction_from_density(density(w, celsius(t)), celsius(t)).value();
            EXPECT_NEAR(back, w.value(), 1e-12) << t;
        }
    }
}

TEST(HotDensity, SaysWhichFormulaSpoke) {
    static_assert(density_formulation_at(celsius(40.0)) == density_formulation::oiml_r22);
    static_assert(density_formulation_at(celsius(40.1)) == density_formulation::hot_density);
    static_assert(density(by_mass(40.0), celsius(62.0)) < density(by_mass(40.0), celsius(61.0)));
}

// The range ends at the boiling point at 101.325 kPa: the library's own equilibrium.
TEST(HotDensity, IsRefusedAboveTheBoilingPoint) {
    for (int i = 0; i <= 200; ++i) {
        auto const w = by_mass(i / 2.0);
        double const boils = bubble_point(w, standard_atmosphere).temperature.celsius();
        EXPECT_NEAR(plain::hottest_liquid_celsius(w.value()), boils, 0.005) << i;
        EXPECT_NO_THROW(static_cast<void>(density(w, celsius(boils)))) << i;
        auto const error =
            expect_refusal([&] { static_cast<void>(density(w, celsius(boils + 0.01))); }, "temperature");
        EXPECT_EQ(error.upper(), plain::hottest_liquid_celsius(w.value()));
    }
    for (double const bad : {100.1, 1e6, std::numeric_limits<double>::infinity(), std::nan("")}) {
        expect_refusal([&] { static_cast<void>(density(by_mass(0.0), celsius(bad))); }, "temperature");
        expect_refusal(
            [&] {
                static_cast<void>(mass_fraction_from_density(900.0 * kilogram_per_cubic_metre, celsius(bad)));
            },
            "temperature");
    }
    expect_refusal(
        [] {
            static_cast<void>(mass_fraction_from_density(700.0 * kilogram_per_cubic_metre, celsius(60.0)));
        },
        "density");
}

// Half the claims of the range: expanded 0.05 % at 50 °C, 0.1 % at 75 °C, 0.15 % at 100 °C.
TEST(HotDensity, UncertaintyIsThatClaimed) {
    auto const relative = [](double percent, double t) {
        return hot_density_uncertainty(by_mass(percent), celsius(t)) / density(by_mass(percent), celsius(t));
    };
    EXPECT_NEAR(relative(50.0, 50.0), 0.00025, 1e-12);
    EXPECT_NEAR(relative(50.0, 75.0), 0.0005, 1e-12);
    EXPECT_NEAR(relative(0.0, 99.0), 0.00074, 1e-12);
    EXPECT_NEAR(relative(0.0, 40.0), 0.00005, 1e-12);
    expect_refusal([&] { static_cast<void>(relative(50.0, 39.9)); }, "temperature");
    expect_refusal([&] { static_cast<void>(relative(50.0, 90.0)); }, "temperature");
}

// What users do above 40 °C: read an instrument in warm distillate, take its volume, mix it.
TEST(HotDensity, InstrumentsAndParcelsWorkThere) {
    auto const meter = alcoholometer{};
    for (double const t : {40.0, 40.001, 45.0, 62.0, 77.0}) {
        auto const strength = by_volume(60.0);
        auto const reading = meter.reading(strength, celsius(t));
        EXPECT_NEAR(meter.strength(reading, celsius(t)).percent(), 60.0, 1e-9) << t;
        auto const spirit = parcel::of(1.0 * litre, strength, celsius(t));
        EXPECT_NEAR(in(spirit.volume(celsius(t)), litre), 1.0, 1e-12) << t;
        EXPECT_LT(in(spirit.volume(celsius(20.0)), litre), 1.0);
        EXPECT_NEAR(spirit.strength().percent(), 60.0, 1e-9);
    }
    // mixing hot water and cold spirit
    auto const mixed = mix({parcel::of(1.0 * kilogram, by_mass(0.0), celsius(90.0)),
                            parcel::of(1.0 * kilogram, by_mass(50.0), celsius(20.0))});
    EXPECT_GT(mixed.product.temperature().celsius(), 55.0);
    EXPECT_LT(mixed.product.temperature().celsius(), 65.0);
    EXPECT_NEAR(in(mixed.product.mass(), kilogram), 2.0, 1e-15);
    EXPECT_GT(mixed.contraction.value(), 0.0);
    // boiling water into pure ethanol near its boiling point: the mixture would boil
    expect_refusal(
        [] {
            static_cast<void>(mix({parcel::of(1.0 * kilogram, by_mass(0.0), celsius(99.0)),
                                   parcel::of(1.0 * kilogram, by_mass(100.0), celsius(78.0))}));
        },
        "temperature of the mixture without loss of heat");
}

}  // namespace
}  // namespace aqueth
