// SPDX-License-Identifier: BSL-1.0
#include <aqueth/atmosphere.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

TEST(Atmosphere, GivesTheStandardsOwnValues) {
    // ISO 2533:1975, equations and constants of the troposphere. 101325 Pa at sea level by definition;
    // 54048.286 Pa at a geometric altitude of 5000 m (value of an open general-purpose library follows it).
    EXPECT_EQ(pressure_at_altitude(0.0 * metre), standard_atmosphere);
    EXPECT_NEAR(in(pressure_at_altitude(5000.0 * metre), newton_per_square_metre), 54048.28614576141, 1e-6);
}

TEST(Atmosphere, FallsWithAltitude) {
    for (double z = -500.0; z < 11000.0; z += 50.0) {
        EXPECT_GT(pressure_at_altitude(z * metre), pressure_at_altitude((z + 50.0) * metre));
    }
}

TEST(Atmosphere, RefusesWhatTheLayerDoesNotReach) {
    for (double const end : {-500.0, 11000.0}) {
        EXPECT_TRUE(correlation::icao_atmosphere::covers(end));
        EXPECT_NO_THROW(static_cast<void>(pressure_at_altitude(end * metre)));
    }
    for (double const bad : {-500.05, 11000.05, std::numeric_limits<double>::quiet_NaN()}) {
        EXPECT_FALSE(correlation::icao_atmosphere::covers(bad));
        test::expect_refusal([&] { static_cast<void>(pressure_at_altitude(bad * metre)); }, "altitude");
    }
}

}  // namespace
}  // namespace aqueth
