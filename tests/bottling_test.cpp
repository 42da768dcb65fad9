// SPDX-License-Identifier: BSL-1.0
#include <aqueth/bottling.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(Bottling, WarmSpiritIsFilledHigher) {
    auto const w = to<mass_fraction>(by_volume(40.0));
    EXPECT_DOUBLE_EQ(in(fill_volume(700.0 * millilitre, w, celsius(20.0)), millilitre), 700.0);
    EXPECT_GT(fill_volume(700.0 * millilitre, w, celsius(26.0)), 700.0 * millilitre);
    EXPECT_LT(fill_volume(700.0 * millilitre, w, celsius(14.0)), 700.0 * millilitre);
}

TEST(Bottling, WhatIsFilledHoldsTheLabelVolumeAt20Celsius) {
    for (double const t : {-10.0, 5.0, 20.0, 33.0, 40.0}) {
        auto const w = to<mass_fraction>(by_volume(45.0));
        auto const filled = parcel::of(fill_volume(500.0 * millilitre, w, celsius(t)), w, celsius(t));
        EXPECT_NEAR(in(filled.volume(celsius(20.0)), millilitre), 500.0, 1e-10);
    }
}

// 27 CFR 30.51 and 30.67, examples of table 7: spirits of 86.8 proof at 72 °F shrink to 0.995 of their volume
// at 60 °F, spirits of 190 proof at 76 °F to 0.991. The digits printed are thousandths.
TEST(Bottling, UsLabelsMeanSixtyFahrenheit) {
    EXPECT_EQ(us_label_temperature, fahrenheit(60.0));
    struct {
        double proof_degrees, fahrenheit_now, factor;
    } const printed[] = {{86.8, 72.0, 0.995}, {190.0, 76.0, 0.991}};
    for (auto const& row : printed) {
        auto const w = to<mass_fraction>(proof(row.proof_degrees));
        auto const warm =
            fill_volume(1.0 * us_gallon, w, fahrenheit(row.fahrenheit_now), us_label_temperature);
        EXPECT_NEAR(in(1.0 * us_gallon, warm), row.factor, 0.0005) << row.proof_degrees;
    }
    auto const w = to<mass_fraction>(by_volume(40.0));
    auto const fill = fill_volume(750.0 * millilitre, w, celsius(20.0), us_label_temperature);
    EXPECT_NEAR(in(fill, millilitre), 752.31, 0.005);  // 750 x 951.03/948.10, densities of OIML R 22
    EXPECT_EQ(
        fill_bottles(parcel::of(10.0 * fill, w, celsius(20.0)), 750.0 * millilitre, us_label_temperature)
            .count,
        10.0);
    EXPECT_EQ(fill_volume(750.0 * millilitre, w, us_label_temperature, us_label_temperature),
              750.0 * millilitre);
    expect_refusal(
        [&] { static_cast<void>(fill_volume(750.0 * millilitre, w, celsius(20.0), celsius(90.0))); },
        "temperature");
}

TEST(Bottling, CountsWholeBottlesAndKeepsTheRest) {
    auto const spirit = parcel::of(3.55 * litre, by_volume(45.0), celsius(26.0));
    auto const result = fill_bottles(spirit, 700.0 * millilitre);
    EXPECT_EQ(result.count, 5.0);
    EXPECT_NEAR((result.count * result.fill_mass + result.remainder.mass()).value(), spirit.mass().value(),
                1e-15);
    EXPECT_LT(result.remainder.volume(), result.fill);
}

TEST(Bottling, AnExactNumberLosesNoBottleToRounding) {
    for (int n = 1; n <= 200; ++n) {
        auto const spirit = parcel::of(n * 0.7 * litre, by_volume(40.0), celsius(20.0));
        EXPECT_EQ(fill_bottles(spirit, 0.7 * litre).count, n);
    }
}

// A bottle that lacks a hundredth is not full, whatever the number of bottles. The code once ignored one part
// in 1e12.
TEST(Bottling, NoBottleIsCountedThatCannotBeFilled) {
    for (double const n : {1e3, 1e6, 1e9, 123456789012.0, 1e12 - 1.0}) {
        for (double const t : {5.0, 20.0, 31.0}) {
            auto const w = to<mass_fraction>(by_volume(40.0));
            auto const fill = fill_volume(0.7 * litre, w, celsius(t));
            auto const count = [&](double bottles) {
                return fill_bottles(parcel::of(bottles * fill, w, celsius(t)), 0.7 * litre).count;
            };
            EXPECT_EQ(count(n), n) << t;
            EXPECT_EQ(count(n - 0.02), n - 1.0) << t;
        }
    }
}

TEST(Bottling, RefusesMoreBottlesThanCanBeCounted) {
    auto const lake = parcel::of(1e9 * litre, by_volume(40.0), celsius(20.0));
    auto const e =
        expect_refusal([&] { static_cast<void>(fill_bottles(lake, 1e-6 * litre)); }, "label volume");
    EXPECT_NEAR(e.lower(), 1e-3, 1e-12);
    EXPECT_EQ(fill_bottles(lake, 2e-3 * litre).count, 5e11);
}

TEST(Bottling, FillVolumeTakesAStrengthInEveryBasis) {
    mass_fraction const w = to<mass_fraction>(by_volume(40.0));
    EXPECT_EQ(fill_volume(0.7 * litre, by_volume(40.0), celsius(15.0)),
              fill_volume(0.7 * litre, w, celsius(15.0)));
}

TEST(Bottling, TooLittleFillsNone) {
    auto const spirit = parcel::of(0.3 * litre, by_volume(40.0), celsius(20.0));
    auto const result = fill_bottles(spirit, 0.7 * litre);
    EXPECT_EQ(result.count, 0.0);
    EXPECT_EQ(result.remainder.mass(), spirit.mass());
}

TEST(Bottling, RefusesBadLabels) {
    auto const spirit = parcel::of(3.0 * litre, by_volume(40.0), celsius(20.0));
    for (double const bad :
         {0.0, -0.7, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        expect_refusal([&] { static_cast<void>(fill_bottles(spirit, bad * litre)); }, "label volume");
    }
    expect_refusal([&] { static_cast<void>(fill_volume(0.7 * litre, by_mass(5.0), celsius(-4.0))); },
                   "temperature");
}

}  // namespace
}  // namespace aqueth
