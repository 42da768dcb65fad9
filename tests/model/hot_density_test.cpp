// SPDX-License-Identifier: BSL-1.0
// The density above 40 °C: the join with the law, the pure ends, the limits, and the functions that use it.
#include <aqueth/array.hpp>
#include <aqueth/blending.hpp>
#include <aqueth/correlation/ethanol_schroeder.hpp>
#include <aqueth/correlation/iapws_liquid_water.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/density.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/model/hot_density.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/wash.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <limits>
#include <type_traits>
#include <vector>

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

// Arrays give what the scalar functions give, below, at and above the end of the law, and flag what boils.
TEST(HotDensity, ArraysAgreeWithTheScalarFunctions) {
    std::vector<double> w, t, rho, back;
    for (int i = 0; i <= 50; ++i)
        for (double degrees = 30.0; degrees <= 104.0; degrees += 2.5) {
            w.push_back(i / 50.0);
            t.push_back(degrees);
        }
    rho.resize(w.size());
    back.resize(w.size());
    std::size_t boiling = 0;
    for (std::size_t i = 0; i < w.size(); ++i) boiling += plain::liquid_range(w[i], t[i]).ok ? 0U : 1U;
    EXPECT_EQ(arrays::density(w, t, rho), boiling);
    static_cast<void>(arrays::mass_fraction_from_density(rho, t, back));
    for (std::size_t i = 0; i < w.size(); ++i) {
        auto const one = plain::density_kg_m3(w[i], t[i]);
        if (one.status.ok) {
            EXPECT_NEAR(rho[i], one.value, 1e-11);
            EXPECT_NEAR(back[i], w[i], 1e-11);
        } else {
            EXPECT_TRUE(std::isnan(rho[i]));
        }
    }
    for (double const degrees : {40.0, 62.0, 85.0}) {
        static_cast<void>(arrays::density(w, celsius(degrees), rho));
        static_cast<void>(arrays::mass_fraction_from_density(rho, celsius(degrees), back));
        for (std::size_t i = 0; i < w.size(); ++i) {
            auto const one = plain::density_kg_m3(w[i], degrees);
            EXPECT_EQ(std::isnan(rho[i]), !one.status.ok);
            if (one.status.ok) {
                EXPECT_NEAR(rho[i], one.value, 1e-11);
                EXPECT_NEAR(back[i], w[i], 1e-11);
            }
        }
    }
}

// A wash is continuous at 40 °C, and without extract it is the mixture, to the digit.
TEST(HotDensity, WashesGoTo80Celsius) {
    auto const at = [](double plato, double t) { return plain::wash_density_kg_m3(0.08, plato, t).value; };
    for (double const plato : {0.0, 2.0, 20.0}) {
        EXPECT_NEAR(at(plato, 40.0 + 1e-9), at(plato, 40.0), 2e-9) << plato;
        double const h = 1e-3;
        EXPECT_NEAR((at(plato, 40.0 + h) - at(plato, 40.0)) / h, (at(plato, 40.0) - at(plato, 40.0 - h)) / h,
                    2e-4)
            << plato;
    }
    for (double const t : {45.0, 62.0, 80.0}) {
        auto const spirit = parcel::of(1.0 * kilogram, by_mass(8.0), celsius(20.0));
        EXPECT_EQ(wash::of(spirit).density(celsius(t)), density(spirit.composition(), celsius(t)));
        EXPECT_NEAR(at(0.0, t), density(by_mass(8.0), celsius(t)).value(), 1e-9);
        // a mash gravity, read hot and corrected
        gravity_hydrometer const meter({});
        double const glass = 1.0 + 25e-6 * (t - 20.0);
        specific_gravity const shown(density(plato(15.0), celsius(t)).value() * glass /
                                     density(mass_fraction(0.0), celsius(20.0)).value());
        EXPECT_NEAR(true_gravity(shown, celsius(t), meter).value(), specific_gravity_of(plato(15.0)).value(),
                    1e-10);
    }
}

// What a pot must hold: mass over the density at the boiling point of the day.
TEST(HotDensity, VolumeAtTheBoil) {
    for (double const kpa : {80.0, 101.325, 140.0}) {
        auto const p = kpa * kilopascal;
        auto const charge = wash::of(parcel::of(20.0 * litre, by_volume(11.0), celsius(20.0)));
        double const boils = boiling_temperature(charge, p).celsius();
        double const expected =
            charge.mass().value() / hot::density(charge.liquid().composition().value(), boils);
        EXPECT_NEAR(volume_at_boil(charge, p).value() / expected, 1.0, 1e-12) << kpa;
    }
    // by hand: 20 L of water, IAPWS 998.21 and 958.37 kg/m3 at 20 and 99.97 °C
    auto const water_only = wash::of(parcel::of(20.0 * litre, by_mass(0.0), celsius(20.0)));
    EXPECT_NEAR(in(volume_at_boil(water_only, standard_atmosphere), litre), 20.0 * 998.21 / 958.37, 0.001);
    auto const sweet = wash::of(22.0 * litre, by_volume(11.0), plato(5.0), celsius(20.0));
    EXPECT_NEAR(in(volume_at_boil(sweet, standard_atmosphere), litre), 22.9, 0.1);
    expect_refusal([&] { static_cast<void>(volume_at_boil(water_only, 160.0 * kilopascal)); }, "temperature");
}

// The budget of a warm reading: the formula's doubt enters as an input.
TEST(HotDensity, EntersABudget) {
    namespace budget = measurement_model;
    for (double const t : {39.0, 45.0, 62.0}) {
        EXPECT_NEAR(budget::mass_fraction_from_reading(0.72, t),
                    alcoholometer{}.composition(by_volume(72.0), celsius(t)).value(), 1e-12)
            << t;
        EXPECT_NEAR(budget::density(0.5, t), density(by_mass(50.0), celsius(t)).value(), 1e-12) << t;
    }
    double const u = hot_density_uncertainty(by_mass(63.0), celsius(62.0)).value();
    std::vector<input_quantity> const inputs{input_quantity::normal("reading", "% vol", 72.0, 0.0),
                                             input_quantity::normal("temperature", "°C", 62.0, 0.0),
                                             input_quantity::normal("formula", "kg/m3", 0.0, u)};
    auto const model = [](auto const& x) {
        using T = std::decay_t<decltype(x[0])>;
        return budget::mass_fraction_from_reading(T(x[0] / T(100.0)), T(x[1]), T(25e-6), T(x[2]));
    };
    double const w = alcoholometer{}.composition(by_volume(72.0), celsius(62.0)).value();
    double const h = 1e-4;
    double const slope = (hot::density(w + h, 62.0) - hot::density(w - h, 62.0)) / (2.0 * h);
    EXPECT_NEAR(propagate(model, inputs).standard_uncertainty / std::abs(u / slope), 1.0, 1e-5);
}

}  // namespace
}  // namespace aqueth
