// SPDX-License-Identifier: BSL-1.0
// Measurements are in published/: pure components, excess enthalpies and heat capacities.
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/vapour_liquid.hpp>

#include <boost/math/differentiation/autodiff.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth::model::enthalpy {
namespace {

using boost::math::differentiation::make_fvar;

TEST(Enthalpy, PureLiquidsAreZeroAtTheirZero) {
    EXPECT_NEAR(liquid(0.0, zero_kelvin), 0.0, 1e-9);
    EXPECT_NEAR(liquid(1.0, zero_kelvin), 0.0, 1e-9);
}

TEST(Enthalpy, HeatCapacityOfTheLiquidIsTheDerivative) {
    for (double t = 274.0; t < 390.0; t += 4.0)
        for (int i = 0; i <= 20; ++i) {
            double const x = i / 20.0;
            auto const warm = make_fvar<double, 1>(t);
            EXPECT_NEAR(liquid(decltype(warm)(x), warm).derivative(1), liquid_heat_capacity(x, t), 1e-10);
        }
}

// Boiling a pure liquid takes its enthalpy of vaporization.
TEST(Enthalpy, VapourOverThePureLiquids) {
    for (double t = 274.0; t < 390.0; t += 4.0) {
        double const p1 = correlation::ethanol_saturation_poling::pressure(t),
                     p2 = correlation::water_saturation_wagner_pruss::pressure(t);
        EXPECT_NEAR(vapour(1.0, t, p1) - liquid(1.0, t), ethanol_vaporization(t), 1e-9);
        EXPECT_NEAR(vapour(0.0, t, p2) - liquid(0.0, t), water_vaporization(t), 1e-9);
    }
}

// The slope of the vapour's enthalpy with pressure is v - T dv/dT of the virial vapour, B - T dB/dT of the
// mixture.
TEST(Enthalpy, PressureOnTheVapour) {
    for (double t = 280.0; t < 390.0; t += 20.0)
        for (double const y : {0.0, 0.3, 0.8, 1.0}) {
            auto const warm = make_fvar<double, 1>(t);
            auto const b1 = ethanol_second_virial::coefficient(warm).value,
                       b2 = correlation::second_virial_crc::water(warm).value;
            auto const b12 = 0.8 * 0.5 * (b1 + b2);
            auto const b = y * y * b1 + 2 * y * (1 - y) * b12 + (1 - y) * (1 - y) * b2;
            double const slope = (vapour(y, t, 60e3) - vapour(y, t, 20e3)) / 40e3;
            EXPECT_NEAR(slope / (b.derivative(0) - t * b.derivative(1)), 1.0, 1e-9);
        }
}

// The documented differences of the two heat capacities of the vapour.
TEST(Enthalpy, HeatCapacityOfTheVapourAgainstTheSlopeOfItsEnthalpy) {
    auto const ratio = [](double y, double t, double p) {
        auto const warm = make_fvar<double, 1>(t);
        using dual = std::remove_const_t<decltype(warm)>;
        return vapour<dual>(dual(y), warm, dual(p)).derivative(1) / vapour_heat_capacity(y, t, p);
    };
    for (double t = 275.0; t <= 345.0; t += 5.0)
        EXPECT_NEAR(ratio(1.0, t, correlation::ethanol_saturation_poling::pressure(t)), 1.0, 0.036) << t;
    EXPECT_NEAR(ratio(1.0, 355.0, 101325.0), 1.065, 0.005);
    EXPECT_NEAR(ratio(1.0, 385.0, 101325.0), 1.25, 0.01);
    for (double t = 275.0; t <= 390.0; t += 5.0)
        EXPECT_NEAR(ratio(0.0, t, correlation::water_saturation_wagner_pruss::pressure(t)), 1.0, 0.04) << t;
    // a dilute vapour is an ideal gas
    EXPECT_NEAR(vapour_heat_capacity(1.0, 330.0, 1e-6),
                correlation::heat_capacity_perry::ethanol_ideal_gas(330.0), 1e-8);
}

// Conservation of energy over a path: liquid at the bubble point to the vapour in equilibrium and on to
// another isobar.
// Beyond the ideal gases -T p d2B/dT2, with the second virial coefficient of the mixture written out,
// B = y1^2 B11 + 2 y1 y2 B12 + y2^2 B22 and B12 = cross_ratio (B11 + B22)/2.
TEST(Enthalpy, PressureOnTheHeatCapacityOfTheVapour) {
    for (double t = 280.0; t <= 390.0; t += 10.0)
        for (double y = 0.0; y <= 1.0; y += 0.125) {
            double const b11 = ethanol_second_virial::coefficient(t).curvature;
            double const b22 = correlation::second_virial_crc::water(t).curvature;
            double const b12 = modified_raoult::cross_ratio * (b11 + b22) / 2.0;
            double const mixed = y * y * b11 + 2.0 * y * (1.0 - y) * b12 + (1.0 - y) * (1.0 - y) * b22;
            double const ideal = y * correlation::heat_capacity_perry::ethanol_ideal_gas(t) +
                                 (1.0 - y) * correlation::heat_capacity_perry::water_ideal_gas(t);
            EXPECT_NEAR(vapour_heat_capacity(y, t, 5e4), ideal - t * 5e4 * mixed, 1e-11) << y << ' ' << t;
        }
}

TEST(Enthalpy, VapourCostsMoreThanLiquid) {
    for (double const p : {20e3, 101325.0})
        for (int i = 0; i <= 20; ++i) {
            auto const e = vapour_liquid::bubble_at_pressure(i / 20.0, p);
            double const heat = vapour(e.y, e.temperature, p) - liquid(e.x, e.temperature);
            EXPECT_GT(heat, 37e3);  // of mixtures of 38.6 and 40.7 kJ/mol, from the richer vapour's side
            EXPECT_LT(heat, 45e3);
        }
}

TEST(Enthalpy, CoversItsRangeOnlyAndPassesNaNThrough) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(covers(273.15) && covers(390.0));
    EXPECT_FALSE(covers(273.14) || covers(391.0) || covers(nan));
    EXPECT_TRUE(std::isnan(liquid(nan, 300.0)) && std::isnan(liquid(0.5, nan)));
    EXPECT_TRUE(std::isnan(vapour(0.5, nan, 1e5)) && std::isnan(vapour(0.5, 350.0, nan)));
    EXPECT_TRUE(std::isnan(vapour_heat_capacity(nan, 350.0, 1e5)) &&
                std::isnan(liquid_heat_capacity(0.5, nan)));
}

}  // namespace
}  // namespace aqueth::model::enthalpy
