// SPDX-License-Identifier: BSL-1.0
#include "expect_refusal.hpp"

#include <aqueth/cask.hpp>
#include <aqueth/composition.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

parcel full() { return parcel::of(200.0 * litre, by_volume(62.0), celsius(20.0)); }

TEST(Cask, LosesTheSamePartEveryYear) {
    parcel const left = cask_after(full(), {0.05, 0.02}, 3.0 * julian_year);
    EXPECT_NEAR(in(left.ethanol(), kilogram), in(full().ethanol(), kilogram) * 0.857375, 1e-10);  // 0.95^3
    EXPECT_NEAR(in(left.water(), kilogram), in(full().water(), kilogram) * 0.941192, 1e-10);      // 0.98^3
    // years add up, as they must for an account
    parcel const in_two_steps =
        cask_after(cask_after(full(), {0.05, 0.02}, 1.25 * julian_year), {0.05, 0.02}, 1.75 * julian_year);
    EXPECT_NEAR(in(in_two_steps.mass(), kilogram), in(left.mass(), kilogram), 1e-10);
    EXPECT_EQ(cask_after(full(), {0.05, 0.02}, 0.0 * julian_year).strength(), full().strength());
}

TEST(Cask, StrengthTurnsWhereTheRatesAreEqual) {
    auto const after = [](double ethanol, double water) {
        return cask_after(full(), {ethanol, water}, 5.0 * julian_year).strength().percent();
    };
    EXPECT_NEAR(after(0.04, 0.04), 62.0, 1e-9);
    EXPECT_LT(after(0.041, 0.04), 62.0);
    EXPECT_GT(after(0.039, 0.04), 62.0);
    EXPECT_LT(after(0.03, -0.01), after(0.03, 0.0));  // a damp cellar gives water
}

TEST(Cask, GaugingsGiveTheRatesBack) {
    parcel const left = cask_after(full(), {0.055, 0.013}, 4.5 * julian_year);
    auto const found = cask_rates_from_gaugings(full(), left, 4.5 * julian_year);
    EXPECT_NEAR(found.ethanol, 0.055, 1e-12);
    EXPECT_NEAR(found.water, 0.013, 1e-12);
}

TEST(Cask, RefusesWhatNoCaskDoes) {
    expect_refusal(
        [] {
            return cask_after(full(), {-0.01, 0.02}, 1.0 * julian_year);
        },
        "yearly loss of ethanol");
    expect_refusal([] { return cask_after(full(), {0.01, 0.6}, 1.0 * julian_year); }, "yearly loss of water");
    expect_refusal([] { return cask_after(full(), {0.01, 0.02}, -1.0 * julian_year); }, "years");
    expect_refusal([] { return cask_after(full(), {0.01, 0.02}, 200.0 * julian_year); }, "years");
    expect_refusal(
        [] {
            return cask_rates_from_gaugings(cask_after(full(), {0.05, 0.02}, 1.0 * julian_year), full(),
                                            1.0 * julian_year);
        },
        "yearly loss of ethanol");  // it has become more
    double const nan = std::numeric_limits<double>::quiet_NaN();
    expect_refusal(
        [=] {
            return cask_after(full(), {nan, 0.02}, 1.0 * julian_year);
        },
        "yearly loss of ethanol");
    // a weak cask in frost: losing ethanol would freeze it
    auto const cold = parcel::of(100.0 * litre, by_volume(25.0), celsius(-9.0));
    expect_refusal([=] { return cask_after(cold, {0.4, 0.0}, 3.0 * julian_year); }, "temperature");
}

}  // namespace
}  // namespace aqueth
