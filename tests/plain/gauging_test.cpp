// SPDX-License-Identifier: BSL-1.0
// The figures printed in 27 CFR part 30 are checked in published/us_gauging_manual_test.cpp, through the
// typed functions.
#include <aqueth/gauging.hpp>
#include <aqueth/plain/gauging.hpp>

#include "refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

static_assert(plain::kg_per_pound == in(pound, kilogram));
static_assert(plain::m3_per_us_gallon == in(us_gallon, cubic_metre));
static_assert(plain::proof_gallons_per_pound(100.0).value == plain::wine_gallons_per_pound(100.0).value);
static_assert(plain::volume_factor_to_60_fahrenheit(190.0f, 30.0f).value < 1.0f);

TEST(PlainGauging, AnswersAreThoseOfTheTypedOnes) {
    for (double p = 0.0; p <= 200.0; p += 2.5) {
        EXPECT_EQ(plain::weight_per_volume_kg_m3(p).value, weight_per_volume(proof(p)).value());
        EXPECT_EQ(plain::wine_gallons_per_pound(p).value, wine_gallons_per_pound(proof(p)));
        EXPECT_EQ(plain::proof_gallons_per_pound(p).value, proof_gallons_per_pound(proof(p)));
        EXPECT_EQ(plain::volume_factor_to_60_fahrenheit(p, 27.0).value,
                  volume_factor_to_60_fahrenheit(proof(p), celsius(27.0)));
        EXPECT_NEAR(double(plain::weight_per_volume_kg_m3(float(p)).value),
                    plain::weight_per_volume_kg_m3(p).value, 5e-4);
    }
}

TEST(PlainGauging, RefusesProofsAndTemperatures) {
    for (double const bad :
         {-0.1, 200.1, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        auto const why =
            expect_refusal(plain::weight_per_volume_kg_m3(bad), argument::proof, limit::none, bad);
        EXPECT_EQ(why.lower, 0.0);
        EXPECT_EQ(why.upper, 200.0);
        expect_refusal(plain::wine_gallons_per_pound(bad), argument::proof, limit::none, bad);
        expect_refusal(plain::proof_gallons_per_pound(bad), argument::proof, limit::none, bad);
        expect_refusal(plain::volume_factor_to_60_fahrenheit(bad, 20.0), argument::proof, limit::none, bad);
    }
    auto const warm = expect_refusal(plain::volume_factor_to_60_fahrenheit(190.0, 79.0),
                                     argument::temperature, limit::liquid_below_boiling_point, 79.0);
    EXPECT_NEAR(warm.upper, 78.2, 0.1);
    expect_refusal(plain::volume_factor_to_60_fahrenheit(10.0, -10.0), argument::temperature,
                   limit::liquid_above_freezing_point, -10.0);
}

}  // namespace
}  // namespace aqueth
