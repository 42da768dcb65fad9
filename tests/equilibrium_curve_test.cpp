// SPDX-License-Identifier: BSL-1.0
#include <aqueth/equilibrium_curve.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace aqueth {
namespace {

TEST(EquilibriumCurve, AgreesWithTheModel) {
    for (double const p : {1.7, 5.0, 10.3, 54.0, 101.325, 198.0}) {
        equilibrium_curve const curve(p * kilopascal);
        double worst_vapour = 0.0;
        double worst_temperature = 0.0;
        for (int i = 0; i <= 3001; ++i) {
            // closer together at the weak end, where the curve is steepest
            double const x = std::pow(i / 3001.0, 2);
            auto const model = bubble_point(mole_fraction(x), p * kilopascal);
            worst_vapour = (std::max)(
                worst_vapour, std::abs(curve.vapour(mole_fraction(x)).value() - model.vapour.value()));
            worst_temperature =
                (std::max)(worst_temperature,
                           std::abs((curve.temperature(mole_fraction(x)) - model.temperature).value()));
        }
        EXPECT_LE(worst_vapour, 1e-7) << p;
        EXPECT_LE(worst_temperature, 1e-5) << p;
    }
}

TEST(EquilibriumCurve, KeepsTheAzeotropeAndInventsNone) {
    for (double const p : {11.0, 101.325, 190.0}) {
        equilibrium_curve const curve(p * kilopascal);
        double const expected = azeotrope(p * kilopascal).liquid.value();
        int crossings = 0;
        double crossed_at = 0.0;
        for (int i = 1; i < 100000; ++i) {
            double const x = i / 100000.0;
            bool const above = curve.relative_volatility(mole_fraction(x)) > 1.0;
            bool const was_above = curve.relative_volatility(mole_fraction(x - 1e-5)) > 1.0;
            if (above != was_above) {
                ++crossings;
                crossed_at = x;
            }
        }
        EXPECT_EQ(crossings, 1) << p;
        EXPECT_NEAR(crossed_at, expected, 2e-5) << p;
    }
    equilibrium_curve const vacuum(5.0 * kilopascal);
    for (int i = 0; i <= 100000; ++i) EXPECT_GT(vacuum.relative_volatility(mole_fraction(i / 100000.0)), 1.0);
}

TEST(EquilibriumCurve, PureLiquidsAreTheirOwnVapour) {
    equilibrium_curve const curve(standard_atmosphere);
    EXPECT_EQ(curve.vapour(mole_fraction(0.0)).value(), 0.0);
    EXPECT_DOUBLE_EQ(curve.vapour(mole_fraction(1.0)).value(), 1.0);
    EXPECT_EQ(curve.pressure(), standard_atmosphere);
}

TEST(EquilibriumCurve, PlainNumbersAreThoseOfTheQuantities) {
    for (double const p : {5.0, 101.325, 190.0}) {
        equilibrium_curve const curve(p * kilopascal);
        for (int i = 0; i <= 1000; ++i) {
            double const x = std::pow(i / 1000.0, 2);
            EXPECT_EQ(curve.vapour(x), curve.vapour(mole_fraction(x)).value()) << x;
            EXPECT_NEAR(curve.temperature(x), curve.temperature(mole_fraction(x)).kelvin(), 1e-12) << x;
            EXPECT_NEAR(curve.vapour_with_slope(x).value, curve.vapour(x), 1e-15) << x;
            EXPECT_NEAR(curve.temperature_with_slope(x).value, curve.temperature(x), 1e-12) << x;
            EXPECT_NEAR(curve.liquid(curve.vapour(x)), x, 1e-11) << x;
        }
    }
}

TEST(EquilibriumCurve, TheLiquidUnderAVapourIsThatOfTheDewPoint) {
    for (auto const& pressure : {90 * kilopascal, standard_atmosphere}) {
        equilibrium_curve const curve(pressure);
        for (double const y : {0.0, 0.01, 0.2, 0.5, 0.7, 0.87, 0.95, 1.0}) {
            mole_fraction const x = curve.liquid(mole_fraction(y));
            auto const dew = dew_point(mole_fraction(y), pressure);
            // the error of the tabulated vapour, over its slope, which is 0.4 and more
            EXPECT_NEAR(x.value(), dew.liquid.value(), 1e-6) << y;
            EXPECT_NEAR(in(curve.temperature(x), celsius), in(dew.temperature, celsius), 1e-4) << y;
        }
    }
}

TEST(EquilibriumCurve, SlopesAreThoseOfTheCurve) {
    equilibrium_curve const curve(standard_atmosphere);
    for (double const x : {1e-4, 0.01, 0.1, 0.4, 0.8, 0.95}) {
        double const h = 1e-6 * (x < 0.5 ? x : 1.0);
        double const dy = (curve.vapour(x + h) - curve.vapour(x - h)) / (2.0 * h);
        EXPECT_NEAR(curve.vapour_with_slope(x).slope, dy, 1e-5 * std::abs(dy)) << x;
        double const wide = 1e-4 * (x < 0.5 ? x : 1.0);  // kelvins have fewer digits behind the point
        double const dt = (curve.temperature(x + wide) - curve.temperature(x - wide)) / (2.0 * wide);
        EXPECT_NEAR(curve.temperature_with_slope(x).slope, dt, 1e-4 * std::abs(dt) + 1e-3) << x;
    }
}

TEST(EquilibriumCurve, RefusesPressuresAtWhichSomeMixtureIsOutsideTheModel) {
    for (double const bad : {0.0, 1.0, 250.0, std::numeric_limits<double>::quiet_NaN()}) {
        test::expect_refusal([&] { static_cast<void>(equilibrium_curve{bad * kilopascal}); }, "pressure");
    }
}

}  // namespace
}  // namespace aqueth
