// SPDX-License-Identifier: BSL-1.0
// The tests in published/ compare the model with published measurements; these tests check its consistency.
#include <aqueth/equilibrium.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace aqueth {
namespace {

using test::expect_refusal;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

TEST(Equilibrium, PureLiquidsAreTheirOwnVapour) {
    for (double const x : {0.0, 1.0}) {
        auto const at = bubble_point(mole_fraction(x), celsius(60.0));
        EXPECT_EQ(at.vapour.value(), x);
        EXPECT_EQ(at.liquid.value(), x);
    }
    // Water boils at 99.974 °C on ITS-90 (Wagner and Pruss 1993, as computed from their equation).
    EXPECT_NEAR(bubble_point(mole_fraction(0.0), standard_atmosphere).temperature.celsius(), 99.974, 5e-4);
}

TEST(Equilibrium, BubblePointsAtTemperatureAndAtPressureAgree) {
    for (double x = 0.0; x <= 1.0; x += 0.02) {
        for (double t = 1.0; t <= 119.0; t += 5.9) {
            auto const there = bubble_point(mole_fraction(x), celsius(t));
            auto const back = bubble_point(mole_fraction(x), there.pressure);
            EXPECT_NEAR(back.temperature.celsius(), t, 1e-10);
            EXPECT_NEAR(back.vapour.value(), there.vapour.value(), 1e-12);
            EXPECT_NEAR(back.relative_volatility, there.relative_volatility, 1e-10);
        }
    }
}

TEST(Equilibrium, DewPointsFindTheLiquidBack) {
    for (double x = 0.0; x <= 1.0; x += 0.05) {
        for (double const t : {5.0, 40.0, 78.0, 110.0}) {
            auto const bubble = bubble_point(mole_fraction(x), celsius(t));
            auto const dew = dew_point(bubble.vapour, celsius(t));
            EXPECT_NEAR(dew.liquid.value(), x, 1e-11) << x << " " << t;
            EXPECT_NEAR(dew.pressure.value(), bubble.pressure.value(), 1e-8 * bubble.pressure.value());
        }
        for (double const p : {2.0, 20.0, 101.325, 190.0}) {
            auto const bubble = bubble_point(mole_fraction(x), p * kilopascal);
            auto const dew = dew_point(bubble.vapour, p * kilopascal);
            EXPECT_NEAR(dew.liquid.value(), x, 1e-11) << x << " " << p;
            EXPECT_NEAR(dew.temperature.celsius(), bubble.temperature.celsius(), 1e-9);
        }
    }
}

TEST(Equilibrium, TakesAStrengthInAnyBasis) {
    auto const by_vol = bubble_point(by_volume(12.0), standard_atmosphere);
    auto const by_mol = bubble_point(to<mole_fraction>(by_volume(12.0)), standard_atmosphere);
    EXPECT_EQ(by_vol.temperature, by_mol.temperature);
}

TEST(Azeotrope, IsWhereTheVapourIsTheLiquid) {
    for (double const p : {11.0, 30.0, 101.325, 300.0, 420.0}) {
        auto const a = azeotrope(p * kilopascal);
        auto const bubble = bubble_point(a.liquid, a.temperature);
        EXPECT_NEAR(bubble.vapour.value(), a.liquid.value(), 1e-10);
        EXPECT_NEAR(bubble.pressure.value(), p * 1000.0, 1e-7 * p * 1000.0);
        EXPECT_NEAR(azeotrope(a.temperature).liquid.value(), a.liquid.value(), 1e-8);
        // and it boils lowest
        EXPECT_LT(a.temperature, bubble_point(mole_fraction(1.0), p * kilopascal).temperature);
        EXPECT_LT(a.temperature,
                  bubble_point(mole_fraction(a.liquid.value() - 0.05), p * kilopascal).temperature);
    }
}

TEST(Azeotrope, SaysWhereThereIsNone) {
    auto const error = expect_refusal([] { static_cast<void>(azeotrope(5.0 * kilopascal)); }, "pressure");
    EXPECT_GT(error.lower(), 8.5);  // measured isotherms leave 8.5 to 10.5 kPa
    EXPECT_LT(error.lower(), 10.5);
    EXPECT_NEAR(azeotrope(error.lower() * kilopascal).liquid.value(), 1.0, 1e-6);
    EXPECT_NEAR(azeotrope(error.upper() * kilopascal).temperature.celsius(), 120.0, 1e-6);
    EXPECT_NEAR(azeotrope(celsius(120.0)).pressure.value(), 1000.0 * error.upper(), 1e-3);
    expect_refusal([] { static_cast<void>(azeotrope(celsius(20.0))); }, "temperature");
    expect_refusal([] { static_cast<void>(azeotrope(celsius(nan))); }, "temperature");
    expect_refusal([] { static_cast<void>(azeotrope(nan * kilopascal)); }, "pressure");
}

TEST(Coexistence, ReadsStrengthsFromATemperature) {
    for (double x = 0.0; x < 0.89; x += 0.01) {
        auto const bubble = bubble_point(mole_fraction(x), standard_atmosphere);
        auto const found = coexistence(bubble.temperature, standard_atmosphere);
        // where the boiling temperature changes little with strength, the problem is ill-conditioned, and so
        // is the answer
        EXPECT_NEAR(found.liquid.value(), x, 1e-9) << x;
        EXPECT_NEAR(found.vapour.value(), bubble.vapour.value(), 1e-9) << x;
    }
    for (double const x : {0.93, 0.96, 1.0}) {
        auto const bubble = bubble_point(mole_fraction(x), standard_atmosphere);
        auto const found = coexistence(bubble.temperature, standard_atmosphere, azeotrope_side::ethanol_rich);
        EXPECT_NEAR(found.liquid.value(), x, 1e-7);
    }
}

TEST(Coexistence, RefusesTemperaturesAtWhichNothingBoils) {
    expect_refusal([] { static_cast<void>(coexistence(celsius(101.0), standard_atmosphere)); }, "pressure");
    expect_refusal([] { static_cast<void>(coexistence(celsius(78.0), standard_atmosphere)); }, "pressure");
    expect_refusal(
        [] {
            static_cast<void>(coexistence(celsius(80.0), standard_atmosphere, azeotrope_side::ethanol_rich));
        },
        "pressure");
    expect_refusal([] { static_cast<void>(coexistence(celsius(nan), standard_atmosphere)); }, "temperature");
    expect_refusal([] { static_cast<void>(coexistence(celsius(80.0), nan * newton_per_square_metre)); },
                   "pressure");
}

TEST(Flash, BalancesEthanolToRounding) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    int split = 0;
    for (int trial = 0; trial < 3000; ++trial) {
        double const z = unit(random);
        double const p = (5.0 + 180.0 * unit(random)) * 1000.0;
        auto const bubble = bubble_point(mole_fraction(z), p * newton_per_square_metre).temperature;
        auto const dew = dew_point(mole_fraction(z), p * newton_per_square_metre).temperature;
        auto const t = bubble + unit(random) * (dew - bubble);
        auto const result = isothermal_flash(mole_fraction(z), t, p * newton_per_square_metre);
        if (!result.liquid || !result.vapour) continue;
        ++split;
        double const beta = result.vapour_fraction;
        EXPECT_NEAR((1.0 - beta) * result.liquid->value() + beta * result.vapour->value(), z, 1e-12);
        EXPECT_GE(beta, 0.0);
        EXPECT_LE(beta, 1.0);
        auto const over = bubble_point(*result.liquid, t);
        EXPECT_NEAR(over.vapour.value(), result.vapour->value(), 1e-9);
    }
    EXPECT_GT(split, 2500);
}

TEST(Flash, OutsideTheTwoPhaseRegionThereIsOnePhase) {
    auto const cold = isothermal_flash(mole_fraction(0.3), celsius(70.0), standard_atmosphere);
    EXPECT_EQ(cold.vapour_fraction, 0.0);
    EXPECT_FALSE(cold.vapour.has_value());
    EXPECT_NEAR(cold.liquid->value(), 0.3, 1e-15);
    auto const hot = isothermal_flash(mole_fraction(0.3), celsius(99.0), standard_atmosphere);
    EXPECT_EQ(hot.vapour_fraction, 1.0);
    EXPECT_FALSE(hot.liquid.has_value());
    EXPECT_NEAR(hot.vapour->value(), 0.3, 1e-15);
    expect_refusal(
        [] { static_cast<void>(isothermal_flash(mole_fraction(0.3), celsius(130.0), standard_atmosphere)); },
        "temperature");
    expect_refusal(
        [] {
            static_cast<void>(
                isothermal_flash(mole_fraction(0.3), celsius(80.0), -1.0 * newton_per_square_metre));
        },
        "pressure");
}

TEST(ActivityCoefficients, AreOneForThePureLiquid) {
    for (double const t : {1.0, 25.0, 78.0, 119.0}) {
        EXPECT_NEAR(activity_coefficients_of(mole_fraction(1.0), celsius(t)).ethanol, 1.0, 1e-15);
        EXPECT_NEAR(activity_coefficients_of(mole_fraction(0.0), celsius(t)).water, 1.0, 1e-15);
        EXPECT_GT(activity_coefficients_of(mole_fraction(0.0), celsius(t)).ethanol, 2.0);
    }
}

TEST(Equilibrium, TheEndsOfTheRangeBelongToIt) {
    for (double const t : {0.01, 120.0}) {
        EXPECT_EQ(bubble_point(by_volume(40.0), celsius(t)).temperature, celsius(t));
        EXPECT_EQ(dew_point(by_volume(40.0), celsius(t)).temperature, celsius(t));
    }
}

// Conversions there and back at the ends of the range, where the last digit decides whether a result is a
// valid input.
TEST(Equilibrium, IsThereAndBackAtTheEndsOfTheRange) {
    for (double const t : {0.01, 120.0}) {
        for (int i = 0; i <= 100; ++i) {
            mole_fraction const x(0.01 * i);
            auto const there = bubble_point(x, celsius(t));
            auto const back = bubble_point(x, there.pressure);
            EXPECT_NEAR(back.temperature.celsius(), t, 1e-11);
            EXPECT_EQ(bubble_point(x, back.temperature).liquid, x);
            EXPECT_NEAR(dew_point(back.vapour, back.temperature).liquid.value(), x.value(), 1e-10);
        }
    }
}

TEST(Equilibrium, RefusesWhatIsOutside) {
    for (double const bad : {-0.1, 120.1, nan, std::numeric_limits<double>::infinity()}) {
        expect_refusal([&] { static_cast<void>(bubble_point(by_volume(40.0), celsius(bad))); },
                       "temperature");
        expect_refusal([&] { static_cast<void>(dew_point(by_volume(40.0), celsius(bad))); }, "temperature");
        expect_refusal([&] { static_cast<void>(activity_coefficients_of(by_volume(40.0), celsius(bad))); },
                       "temperature");
    }
    for (double const bad : {0.0, -1.0, 0.5, 500.0, nan, std::numeric_limits<double>::infinity()}) {
        expect_refusal([&] { static_cast<void>(bubble_point(by_volume(40.0), bad * kilopascal)); },
                       "pressure");
        expect_refusal([&] { static_cast<void>(dew_point(by_volume(40.0), bad * kilopascal)); }, "pressure");
    }
}

}  // namespace
}  // namespace aqueth
