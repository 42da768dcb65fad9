// SPDX-License-Identifier: BSL-1.0
#include "expect_refusal.hpp"

#include <aqueth/trade_scales.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(TradeScales, ThereAndBack) {
    for (double const sg : {1.0, 1.02, 1.08, 1.2}) {
        for (auto const scale : {trade_scale::baume_above, trade_scale::oechsle, trade_scale::kmw})
            EXPECT_NEAR(gravity_on(scale, degrees_on(scale, specific_gravity(sg))).value(), sg, 1e-14) << sg;
    }
    for (double const sg : {0.8, 0.93, 1.0})
        EXPECT_NEAR(
            gravity_on(trade_scale::baume_below, degrees_on(trade_scale::baume_below, specific_gravity(sg)))
                .value(),
            sg, 1e-14);
    for (double const percent : {0.0, 12.0, 40.0, 57.1, 96.0, 100.0})
        EXPECT_NEAR(by_uk_proof(uk_proof_degrees(by_mass(percent))).percent(), percent, 1e-9) << percent;
}

TEST(TradeScales, WaterHasItsPlace) {
    EXPECT_EQ(degrees_on(trade_scale::baume_above, specific_gravity(1.0)), 0.0);
    EXPECT_EQ(degrees_on(trade_scale::baume_below, specific_gravity(1.0)), 10.0);
    EXPECT_EQ(degrees_on(trade_scale::oechsle, specific_gravity(1.0)), 0.0);
    EXPECT_EQ(degrees_on(trade_scale::kmw, specific_gravity(1.0)), 0.0);
    EXPECT_EQ(uk_proof_degrees(by_mass(0.0)), 0.0);
}

// Common practice of the trade: 40 % vol was sold as 70 degrees of British proof, 30 under proof.
TEST(TradeScales, SeventyProofIsFortyPercent) {
    EXPECT_NEAR(uk_proof_degrees(by_volume(40.0)), 70.0, 0.1);
    EXPECT_NEAR(to<volume_fraction>(by_uk_proof(70.0)).percent(), 40.0, 0.05);
}

TEST(TradeScales, RefusesWhatTheScaleLacks) {
    expect_refusal([] { return by_uk_proof(180.0); }, "degrees of the scale");
    expect_refusal([] { return by_uk_proof(-1.0); }, "degrees of the scale");
    expect_refusal([] { return by_uk_proof(std::numeric_limits<double>::quiet_NaN()); },
                   "degrees of the scale");
    expect_refusal([] { return gravity_on(trade_scale::kmw, 60.0); }, "degrees of the scale");
    expect_refusal([] { return gravity_on(trade_scale::baume_below, 5.0); }, "degrees of the scale");
    expect_refusal([] { return degrees_on(trade_scale::oechsle, specific_gravity(0.99)); },
                   "specific gravity");
    expect_refusal([] { return degrees_on(trade_scale::baume_below, specific_gravity(1.01)); },
                   "specific gravity");
    EXPECT_NEAR(plain::mass_fraction_from_uk_proof(70.0f).value,
                plain::mass_fraction_from_uk_proof(70.0).value, 1e-5);
}

}  // namespace
}  // namespace aqueth
