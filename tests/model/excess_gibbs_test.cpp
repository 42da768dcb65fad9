// SPDX-License-Identifier: BSL-1.0
// Measurements are in published/: total pressures, boiling points, excess enthalpies and heat capacities.
#include <aqueth/model/excess_gibbs.hpp>

#include <boost/math/differentiation/autodiff.hpp>
#include <boost/multiprecision/cpp_bin_float.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace aqueth::model::excess_gibbs {
namespace {

using boost::math::differentiation::make_fvar;
using dual = decltype(make_fvar<double, 2>(0.0));

template <class F>
void over_the_range(F const& f) {
    for (double t = lowest_kelvin; t <= highest_kelvin; t += 7.5)
        for (int i = 0; i <= 40; ++i) f(i / 40.0, t);
}

// x1 d ln(gamma1)/dx + x2 d ln(gamma2)/dx = 0, to rounding: the activity coefficients come from one function.
TEST(ExcessGibbs, GibbsAndDuhem) {
    over_the_range([](double x, double t) {
        auto const g = reduced_gibbs<dual>(make_fvar<double, 2>(x), dual(t));
        EXPECT_NEAR(x * g.ethanol.derivative(1) + (1.0 - x) * g.water.derivative(1), 0.0, 3e-14)
            << x << ' ' << t;
    });
}

TEST(ExcessGibbs, PartialMolarPropertiesAndCurvatureAreTheDerivatives) {
    over_the_range([](double x, double t) {
        auto const g = reduced_gibbs<dual>(make_fvar<double, 2>(x), dual(t));
        auto const plain = reduced_gibbs(x, t);
        EXPECT_NEAR(g.molar.derivative(1), plain.ethanol - plain.water, 1e-13) << x << ' ' << t;
        EXPECT_NEAR(g.molar.derivative(2), plain.curvature, 1e-12) << x << ' ' << t;
        EXPECT_NEAR(x * plain.ethanol + (1.0 - x) * plain.water, plain.molar, 1e-15) << x << ' ' << t;
        dual const at = make_fvar<double, 2>(x);
        EXPECT_NEAR(enthalpy<dual>(at, dual(t)).molar.derivative(2), enthalpy(x, t).curvature, 1e-8);
        EXPECT_NEAR(heat_capacity<dual>(at, dual(t)).molar.derivative(2), heat_capacity(x, t).curvature,
                    1e-9);
    });
}

// H = -R T^2 d(G/(R T))/dT, of the mixture and of each component, and Cp = dH/dT.
TEST(ExcessGibbs, EnthalpyAndHeatCapacityAreTheDerivatives) {
    over_the_range([](double x, double t) {
        dual const warm = make_fvar<double, 2>(t);
        auto const g = reduced_gibbs<dual>(dual(x), warm);
        auto const h = enthalpy(x, t);
        double const factor = -correlation::gas_constant::molar * t * t;
        EXPECT_NEAR(factor * g.molar.derivative(1), h.molar, 1e-9) << x << ' ' << t;
        EXPECT_NEAR(factor * g.ethanol.derivative(1), h.ethanol, 1e-9) << x << ' ' << t;
        EXPECT_NEAR(factor * g.water.derivative(1), h.water, 1e-9) << x << ' ' << t;
        auto const c = heat_capacity(x, t);
        auto const dh = enthalpy<dual>(dual(x), warm);
        EXPECT_NEAR(dh.molar.derivative(1), c.molar, 1e-11) << x << ' ' << t;
        EXPECT_NEAR(dh.ethanol.derivative(1), c.ethanol, 1e-11) << x << ' ' << t;
        EXPECT_NEAR(dh.water.derivative(1), c.water, 1e-11) << x << ' ' << t;
    });
}

TEST(ExcessGibbs, PureLiquidsHaveNone) {
    for (double t = lowest_kelvin; t <= highest_kelvin; t += 10.0) {
        auto const at_water = reduced_gibbs(0.0, t);
        auto const at_ethanol = reduced_gibbs(1.0, t);
        EXPECT_EQ(at_water.molar, 0.0);
        EXPECT_EQ(at_water.water, 0.0);
        EXPECT_EQ(at_ethanol.molar, 0.0);
        EXPECT_EQ(at_ethanol.ethanol, 0.0);
        EXPECT_GT(at_water.ethanol, 0.0);  // both components deviate positively from Raoult's law
        EXPECT_GT(at_ethanol.water, 0.0);
    }
}

// A liquid splits where d ln(x gamma)/d ln x falls to zero: nowhere near it from 0 to 120 °C.
TEST(ExcessGibbs, LiquidDoesNotSplit) {
    double least = 1.0;
    for (double t = lowest_kelvin; t <= highest_kelvin; t += 1.0)
        for (int i = 1; i < 1000; ++i) {
            double const x = i / 1000.0;
            least = (std::min)(least, 1.0 + x * (1.0 - x) * reduced_gibbs(x, t).curvature);
        }
    RecordProperty("least_stability", std::to_string(least));
    EXPECT_GT(least, 0.29);
}

// Activity coefficients approach the pure liquids without a kink: their slopes do not jump near the ends.
TEST(ExcessGibbs, LimitsAreSmooth) {
    for (double t = lowest_kelvin; t <= highest_kelvin; t += 5.0) {
        for (double const x : {1e-12, 1e-8, 1e-5}) {
            auto const limit = reduced_gibbs(0.0, t);
            EXPECT_NEAR(reduced_gibbs(x, t).ethanol, limit.ethanol + x * limit.curvature,
                        400.0 * x * x + 1e-14);
            auto const other = reduced_gibbs(1.0, t);
            EXPECT_NEAR(reduced_gibbs(1.0 - x, t).water, other.water + x * other.curvature,
                        300.0 * x * x + 1e-14);
        }
    }
}

TEST(ExcessGibbs, WorksInOtherScalars) {
    using digits_50 = boost::multiprecision::cpp_bin_float_50;
    for (double const x : {0.01, 0.3, 0.9})
        for (double const t : {280.0, 360.0}) {
            EXPECT_NEAR(static_cast<double>(reduced_gibbs(digits_50(x), digits_50(t)).ethanol),
                        reduced_gibbs(x, t).ethanol, 1e-14);
            EXPECT_NEAR(enthalpy(static_cast<float>(x), static_cast<float>(t)).molar, enthalpy(x, t).molar,
                        0.02);
        }
}

TEST(ExcessGibbs, CoversItsRangeOnlyAndPassesNaNThrough) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(covers(0.0, 273.15) && covers(1.0, 393.15));
    EXPECT_FALSE(covers(-0.1, 300.0) || covers(1.1, 300.0) || covers(0.5, 273.0) || covers(0.5, 394.0));
    EXPECT_FALSE(covers(nan, 300.0) || covers(0.5, nan));
    EXPECT_TRUE(std::isnan(reduced_gibbs(nan, 300.0).ethanol) && std::isnan(reduced_gibbs(0.5, nan).molar));
    EXPECT_TRUE(std::isnan(enthalpy(0.5, nan).molar) && std::isnan(heat_capacity(nan, 300.0).molar));
}

}  // namespace
}  // namespace aqueth::model::excess_gibbs
