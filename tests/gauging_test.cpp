// SPDX-License-Identifier: BSL-1.0
// The figures printed in 27 CFR part 30 are checked in published/us_gauging_manual_test.cpp.
#include <aqueth/gauging.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

namespace aqueth {
namespace {

TEST(Gauging, WeightsAndVolumesFitTogether) {
    for (double p = 0.0; p <= 200.0; p += 10.0) {
        double const pounds_per_gallon = in(weight_per_volume(proof(p)), pound / us_gallon);
        EXPECT_NEAR(pounds_per_gallon * wine_gallons_per_pound(proof(p)), 1.0, 1e-14);
        EXPECT_NEAR(proof_gallons_per_pound(proof(p)) * 100.0, wine_gallons_per_pound(proof(p)) * p, 1e-12);
    }
}

TEST(Gauging, VolumeFactorIsOneAt60FahrenheitAndFallsWithWarmth) {
    for (double p = 60.0; p <= 200.0; p += 20.0) {
        EXPECT_EQ(volume_factor_to_60_fahrenheit(proof(p), fahrenheit(60.0)), 1.0);
        EXPECT_LT(volume_factor_to_60_fahrenheit(proof(p), fahrenheit(80.0)), 1.0);
        EXPECT_GT(volume_factor_to_60_fahrenheit(proof(p), fahrenheit(40.0)), 1.0);
    }
}

TEST(Gauging, RefusesTemperaturesOutsideTheRange) {
    test::expect_refusal(
        [] { static_cast<void>(volume_factor_to_60_fahrenheit(proof(190.0), fahrenheit(180.0))); },
        "temperature");
}

}  // namespace
}  // namespace aqueth
