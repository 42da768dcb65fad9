// SPDX-License-Identifier: BSL-1.0
#include <aqueth/still_estimate.hpp>

#include "expect_range_error.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace aqueth {
namespace {

using test::expect_range_error;

boiling_curve const& sea_level() {
    static boiling_curve const curve(standard_atmosphere);
    return curve;
}

wash charge() { return wash::of(parcel::of(25.0 * litre, by_volume(11), celsius(20))); }

/// what a still of so many stages gives
past_run made_by(double stages, reflux const& returned, double litres) {
    past_run p{charge(), 0.1 * litre, litres * litre, by_volume(50)};
    p.strength = by_volume(detail::forecast_strength(p, stages, returned, sea_level()));
    return p;
}

TEST(StillEstimate, FindsTheStagesThatMadeTheRun) {
    for (double const stages : {0.0, 1.3, 4.0}) {
        std::array const past{made_by(stages, reflux::constant(3.0), 1.5)};
        auto const e =
            estimate_stages(std::span<past_run const>(past), reflux::constant(3.0), 0.5, sea_level());
        EXPECT_NEAR(e.stages, stages, 1e-3);
        EXPECT_LE(e.lowest, e.stages);
        EXPECT_GT(e.highest, e.stages);
        EXPECT_LT(e.disagreement, 1e-3);
    }
}

TEST(StillEstimate, OneRunDoesNotTellStagesAndRefluxApart) {
    std::array const past{made_by(4.0, reflux::constant(3.0), 1.5)};
    std::array const ratios{1.0, 2.0, 3.0, 4.0, 6.0, 10.0};
    auto const fits = reflux_candidates(std::span<past_run const>(past), std::span<double const>(ratios), 0.0,
                                        0.3, sea_level());
    EXPECT_GE(fits.size(), 3U);
    for (std::size_t i = 1; i < fits.size(); ++i)
        EXPECT_LT(fits[i].estimate.stages, fits[i - 1].estimate.stages);
}

TEST(StillEstimate, SeveralRunsOfDifferentLengthCan) {
    std::array const past{made_by(4.0, reflux::constant(3.0), 0.3), made_by(4.0, reflux::constant(3.0), 1.5),
                          made_by(4.0, reflux::constant(3.0), 3.0)};
    std::array const ratios{1.0, 2.0, 3.0, 4.0, 6.0, 10.0};
    auto const fits = reflux_candidates(std::span<past_run const>(past), std::span<double const>(ratios), 0.0,
                                        0.1, sea_level());
    ASSERT_EQ(fits.size(), 1U);
    EXPECT_EQ(fits[0].reflux_ratio, 3.0);
    EXPECT_NEAR(fits[0].estimate.stages, 4.0, 1e-3);
}

TEST(StillEstimate, SaysWhenNoNumberOfStagesIsTooMany) {
    std::array past{made_by(20.0, reflux::constant(3.0), 1.0)};
    auto const e = estimate_stages(std::span<past_run const>(past), reflux::constant(3.0), 0.5, sea_level());
    EXPECT_TRUE(std::isinf(e.highest));
    EXPECT_LT(e.lowest, 20.0);
}

TEST(StillEstimate, RefusesWhatNoStillGives) {
    std::array past{made_by(3.0, reflux::constant(3.0), 1.5)};
    auto const estimate = [&] {
        estimate_stages(std::span<past_run const>(past), reflux::constant(3.0), 0.5, sea_level());
    };
    past[0].strength = by_volume(96.5);
    auto const strong = expect_range_error(estimate, "measured strength");
    EXPECT_LT(strong.upper(), 96.5);
    past[0].strength = by_volume(30.0);
    auto const weak = expect_range_error(estimate, "measured strength");
    EXPECT_GT(weak.lower(), 30.0);
    past[0].collected = 25.0 * litre;
    expect_range_error(estimate, "collected volume");
    expect_range_error(
        [&] { estimate_stages(std::span<past_run const>(), reflux::none(), 0.5, sea_level()); },
        "number of past runs");
    past[0] = made_by(3.0, reflux::constant(3.0), 1.5);
    expect_range_error(
        [&] { estimate_stages(std::span<past_run const>(past), reflux::none(), 0.0, sea_level()); },
        "uncertainty of the strength");
}

}  // namespace
}  // namespace aqueth
