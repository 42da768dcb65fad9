// SPDX-License-Identifier: BSL-1.0
#include <aqueth/atmosphere.hpp>
#include <aqueth/plain/atmosphere.hpp>

#include "refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

TEST(PlainAtmosphere, IsTheTypedPressureInKilopascals) {
    for (double z = -500.0; z <= 11000.0; z += 250.0) {
        double const kpa = plain::air_pressure_kpa(z).value;
        EXPECT_EQ(kpa * kilopascal, pressure_at_altitude(z * metre));
        EXPECT_NEAR(double(plain::air_pressure_kpa(float(z)).value), kpa, 5e-5);
    }
    // by the standard's definition
    EXPECT_EQ(plain::air_pressure_kpa(0.0).value, 101.325);
}

TEST(PlainAtmosphere, RefusesWhatTheLayerDoesNotReach) {
    double const infinity = std::numeric_limits<double>::infinity();
    for (double const bad :
         {-500.5, 11000.5, infinity, -infinity, std::numeric_limits<double>::quiet_NaN()}) {
        auto const why = test::expect_refusal(plain::air_pressure_kpa(bad), argument::altitude,
                                              limit::icao_standard_atmosphere, bad);
        EXPECT_EQ(why.lower, -500.0);
        EXPECT_EQ(why.upper, 11000.0);
    }
}

}  // namespace
}  // namespace aqueth
