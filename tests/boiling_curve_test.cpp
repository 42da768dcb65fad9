// SPDX-License-Identifier: BSL-1.0
#include <aqueth/boiling_curve.hpp>
#include <aqueth/caloric.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/measured_equilibrium.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

std::vector<double> compositions() {
    std::vector<double> x{0.0, 1.0};
    for (double v = 1e-6; v < 0.01; v *= 1.7) x.insert(x.end(), {v, 1.0 - v});
    for (double v = 0.01; v < 0.995; v += 0.007) x.push_back(v);
    return x;
}

/// converts J/kg of the typed interface to J/mol
double molar(units::specific_energy h, mole_fraction x) {
    return h.value() * 1e-3 * correlation::molar_mass::mixture(to<mass_fraction>(x).value());
}

TEST(BoilingCurve, AgreesWithTheModel) {
    for (double const kpa : {5.0, 20.0, 54.0, 101.325, 170.0}) {
        auto const p = kpa * kilopascal;
        boiling_curve const curve(p);
        double of_vapour = 0.0, kelvins_off = 0.0, heat_of_liquid = 0.0, heat_of_vapour = 0.0;
        for (double const each : compositions()) {
            mole_fraction const x(each);
            auto const boils = bubble_point(x, p);
            auto const condenses = dew_point(x, p);
            auto const off = [](double& most, double a, double b) {
                most = (std::max)(most, std::abs(a - b));
            };
            off(of_vapour, curve.vapour(each), boils.vapour.value());
            off(kelvins_off, curve.temperature(each), boils.temperature.kelvin());
            off(heat_of_liquid, curve.liquid_enthalpy(each).value,
                molar(enthalpy_of_liquid(x, boils.temperature), x));
            off(heat_of_vapour, curve.vapour_enthalpy(each),
                molar(enthalpy_of_vapour(x, condenses.temperature, p), x));
        }
        EXPECT_LE(of_vapour, 1e-7) << kpa;
        EXPECT_LE(kelvins_off, 1e-5) << kpa;
        EXPECT_LE(heat_of_liquid, 1e-3) << kpa;
        EXPECT_LE(heat_of_vapour, 1e-3) << kpa;
    }
}

TEST(BoilingCurve, SlopesAreThoseOfTheCurve) {
    boiling_curve const curve(standard_atmosphere);
    for (double const x : {1e-4, 0.01, 0.1, 0.4, 0.8, 0.95}) {
        double const h = 1e-6 * (x < 0.5 ? x : 1.0);
        double const dy = (curve.vapour(x + h) - curve.vapour(x - h)) / (2.0 * h);
        EXPECT_NEAR(curve.vapour_with_slope(x).slope, dy, 1e-5 * std::abs(dy)) << x;
        EXPECT_NEAR(curve.vapour_with_slope(x).value, curve.vapour(x), 1e-15);
        double const dh =
            (curve.liquid_enthalpy(x + h).value - curve.liquid_enthalpy(x - h).value) / (2.0 * h);
        EXPECT_NEAR(curve.liquid_enthalpy(x).slope, dh, 1e-4 * std::abs(dh) + 1e-2) << x;
    }
}

TEST(BoilingCurve, LiquidIsTheInverseOfVapour) {
    boiling_curve const curve(standard_atmosphere);
    for (double const x : compositions()) EXPECT_NEAR(curve.liquid(curve.vapour(x)), x, 1e-11);
}

// Heats of vaporization at the boiling points: CRC Handbook of Chemistry and Physics, Enthalpy of
// Vaporization: ethanol 38.56, water 40.65 kJ/mol. The limits are those that `enthalpy_of_vapour` states.
TEST(BoilingCurve, HeatsOfVaporizationOfThePureLiquids) {
    boiling_curve const curve(standard_atmosphere);
    EXPECT_NEAR(curve.vapour_enthalpy(1.0) - curve.liquid_enthalpy(1.0).value, 38560.0, 0.007 * 38560.0);
    EXPECT_NEAR(curve.vapour_enthalpy(0.0) - curve.liquid_enthalpy(0.0).value, 40650.0, 0.001 * 40650.0);
}

TEST(BoilingCurve, MeasuredVolatilityTakesTheModelsPlaceWhereItWasMeasured) {
    std::vector<measured_point> points;
    for (double const x : {0.05, 0.1, 0.2, 0.3, 0.5, 0.7}) {
        double const y = bubble_point(mole_fraction(x), standard_atmosphere).vapour.value();
        points.push_back({mole_fraction(x), mole_fraction(y - 0.01), {}});
    }
    measured_equilibrium const measured(points, standard_atmosphere);
    boiling_curve const curve(measured.curve());
    boiling_curve const model(standard_atmosphere);
    for (double const x : {0.06, 0.12, 0.4, 0.69})
        EXPECT_NEAR(curve.vapour(x), measured.vapour(mole_fraction(x)).value(), 1e-6) << x;
    // outside, the curve continues without a jump at either end and follows the model
    EXPECT_NEAR(curve.vapour(0.05 - 1e-4), curve.vapour(0.05 + 1e-4), 1.5e-3);
    auto const ratio = [&](double x) {
        return curve.equilibrium().relative_volatility(mole_fraction(x)) /
               model.equilibrium().relative_volatility(mole_fraction(x));
    };
    EXPECT_LT(ratio(0.02), 1.0);
    EXPECT_NEAR(ratio(0.02), ratio(0.001), 1e-6);
    EXPECT_NEAR(ratio(0.8), ratio(0.99), 1e-6);
}

TEST(BoilingCurve, TypedFunctionsAreThoseOfItsEquilibrium) {
    boiling_curve const curve(standard_atmosphere);
    for (double const x : compositions()) {
        mole_fraction const liquid(x);
        EXPECT_EQ(curve.vapour(liquid).value(), curve.vapour(x));
        EXPECT_EQ(curve.liquid(curve.vapour(liquid)).value(), curve.liquid(curve.vapour(x)));
        EXPECT_EQ(curve.temperature(liquid), curve.equilibrium().temperature(liquid));
    }
}

TEST(BoilingCurve, RefusesPressuresOutsideItsRange) {
    for (double const kpa : {0.0, -1.0, 4.9, 171.0, std::nan("")})
        expect_refusal([&] { boiling_curve curve(kpa * kilopascal); }, "pressure");
    expect_refusal([] { boiling_curve curve(equilibrium_curve(3.0 * kilopascal)); }, "pressure");
}

}  // namespace
}  // namespace aqueth
