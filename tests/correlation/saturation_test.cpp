// SPDX-License-Identifier: BSL-1.0
// Published check values and measurements are in published/pure_components_test.cpp.
#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/wagner_form.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>

#include <boost/math/differentiation/autodiff.hpp>
#include <boost/multiprecision/cpp_bin_float.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth::correlation {
namespace {

using ethanol = ethanol_saturation_poling;
using water = water_saturation_wagner_pruss;
using boost::math::differentiation::make_fvar;

// Calls f with a curve of each substance: its functions, and the ends of its range.
template <class F>
void for_both(F const& f) {
    f([](auto const& t) { return ethanol::ln_pressure_and_slope(t); },
      [](auto const& p) { return ethanol::temperature_and_slope(p); }, ethanol::lowest_kelvin,
      ethanol::highest_kelvin);
    f([](auto const& t) { return water::ln_pressure_and_slope(t); },
      [](auto const& p) { return water::temperature_and_slope(p); }, water::lowest_kelvin,
      water::highest_kelvin);
}

TEST(Saturation, TemperatureIsTheInverseToRounding) {
    for_both([](auto const& ln_pressure, auto const& temperature, double lowest, double highest) {
        for (int i = 0; i <= 1000; ++i) {
            double const t = lowest + (highest - lowest) * i / 1000;
            // one ulp of ln p (up to 17) times dT/d ln p (t/7 near the critical point), and a few of t itself
            EXPECT_NEAR(temperature(std::exp(ln_pressure(t).value)).value, t, 1e-12) << t;
        }
    });
}

TEST(Saturation, SlopesAreTheDerivatives) {
    for_both([](auto const& ln_pressure, auto const& temperature, double lowest, double highest) {
        for (int i = 0; i < 100; ++i) {
            double const t = lowest + (highest - lowest) * i / 100;
            auto const dual = make_fvar<double, 1>(t);
            auto const l = ln_pressure(dual);
            EXPECT_NEAR(l.value.derivative(1) / ln_pressure(t).slope, 1.0, 1e-13) << t;
            double const p = std::exp(ln_pressure(t).value);
            auto const back = temperature(make_fvar<double, 1>(p));
            EXPECT_NEAR(back.value.derivative(1) / temperature(p).slope, 1.0, 1e-12) << t;
            EXPECT_NEAR(p * ln_pressure(t).slope * temperature(p).slope, 1.0, 1e-12) << t;
        }
    });
}

TEST(Saturation, BeyondTheEndsTheTemperatureIsTheNearerEnd) {
    for_both([](auto const& ln_pressure, auto const& temperature, double lowest, double highest) {
        double const least = std::exp(ln_pressure(lowest).value), most = std::exp(ln_pressure(highest).value);
        for (double const factor : {1.001, 1.1, 2.0, 10.0}) {
            EXPECT_NEAR(temperature(least / factor).value, lowest, 1e-12) << factor;
            EXPECT_NEAR(temperature(most * factor).value, highest, 1e-12) << factor;
        }
    });
}

// The number of evaluations shows the quality of the search's start and stopping rule. An average, because
// rounding decides about the last evaluation.
TEST(Saturation, InverseTakesFewLooksAtTheCurve) {
    for_both([](auto const& ln_pressure, auto const& temperature, double lowest, double highest) {
        int looks = 0, searches = 0;
        auto const curve = [&](double t) {
            ++looks;
            return ln_pressure(t);
        };
        double const boiling = temperature(101325.0).value;
        for (double t = 274.0; t < 394.0; t += 0.5) {
            double const p = std::exp(ln_pressure(t).value);
            EXPECT_NEAR(wagner_form::temperature_and_slope(curve, lowest, highest, boiling, p).value, t,
                        1e-12);
            ++searches;
        }
        EXPECT_LT(2 * looks, 11 * searches);
    });
}

TEST(Saturation, PressureGrows) {
    for (double t = 274.0; t < 394.0; t += 1.0) {
        EXPECT_GT(ethanol::pressure(t), ethanol::pressure(t - 1.0));
        EXPECT_GT(water::pressure(t), water::pressure(t - 1.0));
        EXPECT_GT(ethanol::pressure(t), water::pressure(t));
    }
}

TEST(Saturation, WorksInOtherScalars) {
    using digits_50 = boost::multiprecision::cpp_bin_float_50;
    for (double const t : {280.0, 330.0, 390.0}) {
        EXPECT_NEAR(static_cast<double>(ethanol::pressure(digits_50(t))) / ethanol::pressure(t), 1.0, 1e-14);
        EXPECT_NEAR(static_cast<double>(water::pressure(digits_50(t))) / water::pressure(t), 1.0, 1e-14);
        digits_50 const p = water::pressure(digits_50(t));
        EXPECT_LT(abs(water::temperature(p) - digits_50(t)), digits_50(1e-45));
        float const warm = static_cast<float>(t);
        EXPECT_NEAR(ethanol::temperature(ethanol::pressure(warm)), warm, 1e-3F);
    }
}

TEST(Saturation, CoversItsRangeOnlyAndPassesNaNThrough) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(water::covers(273.16) && water::covers(647.096));
    EXPECT_FALSE(water::covers(273.15) || water::covers(647.1) || water::covers(nan));
    EXPECT_TRUE(ethanol::covers(159.05) && ethanol::covers(513.92));
    EXPECT_FALSE(ethanol::covers(159.045) || ethanol::covers(514.0) || ethanol::covers(nan));
    EXPECT_TRUE(std::isnan(water::pressure(nan)) && std::isnan(water::temperature(nan)));
    EXPECT_TRUE(std::isnan(ethanol::pressure(nan)) && std::isnan(ethanol::temperature(nan)));
}

}  // namespace
}  // namespace aqueth::correlation
