// SPDX-License-Identifier: BSL-1.0
#include "expect_refusal.hpp"

#include <aqueth/flammability.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

constexpr auto sea_level = 1.0 * standard_atmosphere;

TEST(Flammability, WeakerLiquidsFlashLater) {
    double before = 13.0;
    for (double percent = 95.0; percent >= 5.0; percent -= 5.0) {
        double const now = flash_point(by_volume(percent)).celsius();
        EXPECT_GT(now, before) << percent;
        before = now;
    }
}

// The lower limit is reached below the flash point, earlier under less pressure, and is what its name says.
TEST(Flammability, LowerLimitIsThreePointOnePercent) {
    for (double percent : {5.0, 40.0, 96.0}) {
        auto const t = lower_flammable_temperature(by_volume(percent), sea_level);
        EXPECT_LT(t, flash_point(by_volume(percent)));
        EXPECT_NEAR(saturated_vapour_fraction(by_volume(percent), t, sea_level), 0.031, 1e-9);
        EXPECT_LT(lower_flammable_temperature(by_volume(percent), 80.0 * kilopascal), t);
    }
}

TEST(Flammability, HazardTurnsAtTheLimitAndAtTheMargin) {
    auto const strength = by_volume(20.0);
    double const limit = lower_flammable_temperature(strength, sea_level).celsius();
    auto const at = [&](double t) { return vapour_hazard_over(strength, celsius(t), sea_level); };
    EXPECT_EQ(at(limit + 0.01), vapour_hazard::above_lower_limit);
    EXPECT_EQ(at(limit - 0.01), vapour_hazard::near_lower_limit);
    EXPECT_EQ(at(limit - 14.99), vapour_hazard::near_lower_limit);
    EXPECT_EQ(at(limit - 15.01), vapour_hazard::below_lower_limit);
    EXPECT_EQ(vapour_hazard_over(strength, celsius(limit - 15.01), sea_level, 16.0 * kelvins),
              vapour_hazard::near_lower_limit);
    EXPECT_EQ(vapour_hazard_over(strength, celsius(95.0), sea_level), vapour_hazard::above_lower_limit);
    EXPECT_EQ(vapour_hazard_over(by_volume(0.0), celsius(95.0), sea_level), vapour_hazard::below_lower_limit);
    // spirit in a warm room, the figure of the README's caution
    EXPECT_EQ(vapour_hazard_over(by_volume(40.0), celsius(26.0), sea_level),
              vapour_hazard::above_lower_limit);
}

TEST(Flammability, RefusesWhatIsOutOfRange) {
    expect_refusal([] { return flash_point(by_mass(3.0)); }, "mass fraction");
    expect_refusal([] { return lower_flammable_temperature(by_volume(40.0), 20.0 * kilopascal); },
                   "pressure");
    expect_refusal([] { return saturated_vapour_fraction(by_volume(40.0), celsius(90.0), sea_level); },
                   "pressure");
    expect_refusal([] { return vapour_hazard_over(by_volume(40.0), celsius(-5.0), sea_level); },
                   "temperature");
    expect_refusal(
        [] { return vapour_hazard_over(by_volume(40.0), celsius(20.0), sea_level, -1.0 * kelvins); },
        "margin of temperature");
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_FALSE(plain::vapour_hazard_of(nan, 20.0, 101.3).status.ok);
    EXPECT_EQ(plain::vapour_hazard_of(0.4, nan, 101.3).value, vapour_hazard::above_lower_limit);
    EXPECT_TRUE(std::isnan(plain::flash_point_celsius(nan).value));
    EXPECT_NEAR(plain::flash_point_celsius(0.4f).value, plain::flash_point_celsius(0.4).value, 1e-3);
}

}  // namespace
}  // namespace aqueth
