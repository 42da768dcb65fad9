// SPDX-License-Identifier: BSL-1.0
#include <aqueth/still/learning.hpp>

#include "expect_refusal.hpp"

#include <boost/math/distributions/chi_squared.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

boiling_curve const& sea_level() {
    static boiling_curve const curve(standard_atmosphere);
    return curve;
}

wash charge() { return wash::of(parcel::of(25.0 * litre, by_volume(11), celsius(20))); }

/// a still with an insulated neck
detail::known_still with(reflux const& returned) { return {returned}; }

/// the forecast of a still with this number of stages
past_run made_by(double stages, reflux const& returned, double litres) {
    past_run p{charge(), 0.1 * litre, litres * litre, by_volume(50)};
    p.strength = by_volume(detail::forecast_strength(p, stages, with(returned), sea_level()));
    return p;
}

TEST(StillEstimate, BoilsDownToWhatTheFullForecastSays) {
    wash const strongest = wash::of(parcel::of(5.0 * litre, by_volume(40), celsius(20)));
    double largest = 0.0;
    for (double const percent : {6.0, 11.0, 40.0}) {
        for (double const stages : {0.0, 1.3, 4.0, 20.0}) {
            for (double const ratio : {0.0, 1.0, 3.0, 20.0}) {
                detail::known_still const known{reflux::constant(ratio), neck::condensing(0.05)};
                detail::boiling_down<boiling_curve> still(strongest, stages, known, sea_level());
                for (double const litres : {22.0, 0.3, 2.0}) {  // in any order
                    past_run const p{
                        wash::of(25.0 * litre, by_volume(percent), plato(percent < 12 ? 3 : 0), celsius(20)),
                        litres < 1.0 ? units::volume() : 0.1 * litre, litres * litre, by_volume(50)};
                    double const full = detail::forecast_strength(p, stages, known, sea_level());
                    largest = (std::max)(largest, std::abs(still.strength(p) - full));
                }
            }
        }
    }
    EXPECT_LT(largest, 2e-5);
}

// The weakest still that is offered for one run explains that run: its forecast is within the 95 % that the
// stated uncertainty allows, also where the most stages that are tried fit best.
TEST(StillEstimate, TheRangeOfOneRunExplainsIt) {
    double const u = 0.5;
    double const limit = 1.97 * u;  // square root of chi-squared at 95 %, one degree of freedom
    wash const charge = wash::of(parcel::of(25.0 * litre, by_volume(11), celsius(20)));
    for (double const percent : {90.0, 96.5, 96.9}) {
        past_run const run{charge, 100.0 * millilitre, 1.8 * litre, by_volume(percent)};
        for (double const ratio : {5.0, 6.0, 8.0, 12.0}) {
            reflux const returned = reflux::constant(ratio);
            stage_estimate e{};
            try {
                e = estimate_stages(std::span(&run, 1), returned, neck::insulated(), u, sea_level());
            } catch (refusal const&) {
                continue;  // beyond the reach of that reflux
            }
            if (!e.explains) continue;
            EXPECT_EQ(e.uncertainty, u);
            double const forecast = detail::forecast_strength(run, e.lowest, with(returned), sea_level());
            EXPECT_LE(std::abs(forecast - percent), limit) << percent << " " << ratio;
        }
    }
}

/// the mixture, with a count of its evaluations
struct counting_mixture {
    boiling_curve const& curve;
    mutable long asked = 0;

    double vapour(double x) const { return ++asked, curve.vapour(x); }
    auto vapour_with_slope(double x) const { return ++asked, curve.vapour_with_slope(x); }
    double temperature(double x) const { return curve.temperature(x); }
    auto liquid_enthalpy(double x) const { return curve.liquid_enthalpy(x); }
    double vapour_enthalpy(double x) const { return curve.vapour_enthalpy(x); }
};

// Sixty runs ask the equilibrium no oftener than one: the still is boiled down once for all of them.
TEST(StillEstimate, ManyRunsAreOneIntegration) {
    counting_mixture const mixture{sea_level()};
    auto const asked = [&](std::size_t runs) {
        std::vector<past_run> past;
        for (std::size_t i = 1; i <= runs; ++i)
            past.push_back({charge(), 0.1 * litre, (0.05 * static_cast<double>(i)) * litre, by_volume(85)});
        past.back().collected = 3.0 * litre;
        mixture.asked = 0;
        detail::stage_fit<counting_mixture> const fit(past, 0.5, mixture);
        fit.misses(4.0, with(reflux::constant(3.0)));
        return mixture.asked;
    };
    EXPECT_GT(asked(1), 0);
    EXPECT_EQ(asked(60), asked(1));
}

TEST(StillEstimate, FindsTheStagesThatMadeTheRun) {
    for (double const stages : {0.0, 1.3, 4.0}) {
        std::array const past{made_by(stages, reflux::constant(3.0), 1.5)};
        auto const e = estimate_stages(std::span<past_run const>(past), reflux::constant(3.0),
                                       neck::insulated(), 0.5, sea_level());
        EXPECT_NEAR(e.stages, stages, 1e-3);
        EXPECT_LE(e.lowest, e.stages);
        EXPECT_GT(e.highest, e.stages);
        EXPECT_LT(e.disagreement, 1e-3);
        EXPECT_EQ(e.uncertainty, 0.5);
        EXPECT_TRUE(e.explains);
    }
}

// One run: the ends of the range are the stages for the strength less and plus its uncertainty.
TEST(StillEstimate, RangeOfOneRunIsThatOfItsStrength) {
    reflux const returned = reflux::constant(3.0);
    std::array past{made_by(3.0, returned, 1.5)};
    auto const e =
        estimate_stages(std::span<past_run const>(past), returned, neck::insulated(), 0.5, sea_level());
    double const measured = past[0].strength.percent();
    EXPECT_NEAR(detail::forecast_strength(past[0], e.lowest, with(returned), sea_level()), measured - 0.5,
                1e-3);
    EXPECT_NEAR(detail::forecast_strength(past[0], e.highest, with(returned), sea_level()), measured + 0.5,
                1e-3);
}

// Four runs that repeat each other: the mean has half the uncertainty of one (GUM, 4.2.3).
TEST(StillEstimate, RunsThatAgreeNarrowTheRange) {
    reflux const returned = reflux::constant(3.0);
    past_run const one = made_by(3.0, returned, 1.5);
    std::array const past{one, one, one, one};
    auto const e =
        estimate_stages(std::span<past_run const>(past), returned, neck::insulated(), 0.5, sea_level());
    double const measured = one.strength.percent();
    EXPECT_NEAR(detail::forecast_strength(one, e.lowest, with(returned), sea_level()), measured - 0.25, 1e-3);
    EXPECT_NEAR(detail::forecast_strength(one, e.highest, with(returned), sea_level()), measured + 0.25,
                1e-3);
}

// The integration goes through the compositions of the strongest charge, whichever run had it.
TEST(StillEstimate, OrderOfTheRunsDoesNotMatter) {
    reflux const returned = reflux::constant(3.0);
    past_run strong = made_by(3.0, returned, 1.5), weak = strong;
    weak.charge = wash::of(parcel::of(25.0 * litre, by_volume(8), celsius(20)));
    weak.strength = by_volume(detail::forecast_strength(weak, 3.0, with(returned), sea_level()));
    for (auto const& past : {std::array{strong, weak}, std::array{weak, strong}}) {
        auto const e =
            estimate_stages(std::span<past_run const>(past), returned, neck::insulated(), 0.5, sea_level());
        EXPECT_NEAR(e.stages, 3.0, 1e-4);
        EXPECT_NEAR(e.disagreement, 0.0, 1e-4);
    }
}

// Two runs that differ only by 4 % vol: their standard deviation is 4/sqrt(2), that of their mean is 2 (GUM,
// 4.2.2 and 4.2.3), whatever uncertainty was stated.
TEST(StillEstimate, RunsThatContradictWidenTheRange) {
    reflux const returned = reflux::constant(3.0);
    past_run one = made_by(3.0, returned, 1.5);
    past_run other = one;
    double const mean = one.strength.percent() - 4.0;
    one.strength = by_volume(mean - 2.0);
    other.strength = by_volume(mean + 2.0);
    std::array const past{one, other};
    auto const e =
        estimate_stages(std::span<past_run const>(past), returned, neck::insulated(), 0.5, sea_level());
    EXPECT_FALSE(e.explains);
    EXPECT_NEAR(e.disagreement, 2.0, 1e-3);
    EXPECT_NEAR(e.uncertainty, 4.0 / std::sqrt(2.0), 1e-3);
    EXPECT_NEAR(detail::forecast_strength(one, e.stages, with(returned), sea_level()), mean, 1e-2);
    EXPECT_NEAR(detail::forecast_strength(one, e.lowest, with(returned), sea_level()), mean - 2.0, 1e-2);
    EXPECT_NEAR(detail::forecast_strength(one, e.highest, with(returned), sea_level()), mean + 2.0, 1e-2);
    auto const tolerant =
        estimate_stages(std::span<past_run const>(past), returned, neck::insulated(), 3.0, sea_level());
    EXPECT_TRUE(tolerant.explains);
    EXPECT_EQ(tolerant.uncertainty, 3.0);
}

// Runs explain each other as long as their sum of squares over the stated variance stays below what
// chi-squared, with as many degrees of freedom as there are runs less one, exceeds once in twenty times:
// 3.841, 7.815, 14.067 for 1, 3 and 7 (any table of chi-squared at 95 %; here Boost.Math). The approximation
// that is used is 2.4 % low for one.
TEST(StillEstimate, ExplainsUpToChiSquaredAt95Percent) {
    reflux const returned = reflux::constant(3.0);
    past_run const one = made_by(3.0, returned, 1.5);
    double const u = 0.5;
    for (std::size_t const runs : {2U, 4U, 8U}) {
        double const n = static_cast<double>(runs);
        double const limit = boost::math::quantile(boost::math::chi_squared(n - 1.0), 0.95);
        for (double const share : {0.96, 1.01}) {
            double const off = u * std::sqrt(share * limit / n);  // half of the runs above, half below
            std::vector<past_run> past(runs, one);
            for (std::size_t i = 0; i < runs; ++i)
                past[i].strength = by_volume(one.strength.percent() - 2.0 + (i % 2 == 0 ? off : -off));
            auto const e = detail::stage_fit<boiling_curve>(past, u, sea_level()).estimate({returned});
            EXPECT_NEAR(e.disagreement, off, 1e-3);
            EXPECT_EQ(e.explains, share < 1.0) << runs << " runs, " << share;
        }
    }
}

// Least squares, not the mean: a run that stages hardly change says little about them. On either side of the
// least sum of squares it is larger.
TEST(StillEstimate, LeastSquares) {
    reflux const returned = reflux::constant(2.0);
    std::array past{made_by(3.0, returned, 0.3), made_by(3.0, returned, 1.5), made_by(3.0, returned, 4.0)};
    past[0].strength = by_volume(past[0].strength.percent() - 0.6);
    past[2].strength = by_volume(past[2].strength.percent() + 0.4);
    auto const e =
        estimate_stages(std::span<past_run const>(past), returned, neck::insulated(), 0.5, sea_level());
    auto const squares = [&](double stages) {
        double sum = 0.0;
        for (past_run const& p : past) {
            double const miss =
                detail::forecast_strength(p, stages, with(returned), sea_level()) - p.strength.percent();
            sum += miss * miss;
        }
        return sum;
    };
    EXPECT_LT(squares(e.stages), squares(e.stages - 0.01));
    EXPECT_LT(squares(e.stages), squares(e.stages + 0.01));
    EXPECT_NEAR(e.disagreement, std::sqrt(squares(e.stages) / 3.0), 1e-4);
}

TEST(StillEstimate, NearestStagesOfARefluxThatExplainsNothing) {
    std::array const past{made_by(4.0, reflux::constant(3.0), 1.5)};
    std::array const ratios{0.0, 1.0, 3.0};
    auto const all = nearest_stages(std::span<past_run const>(past), std::span<double const>(ratios),
                                    neck::insulated(), 0.3, sea_level());
    ASSERT_EQ(all.size(), 3U);
    EXPECT_FALSE(all[0].estimate.explains);
    EXPECT_FALSE(all[1].estimate.explains);
    EXPECT_GT(all[0].estimate.disagreement, all[1].estimate.disagreement);
    EXPECT_TRUE(std::isinf(all[0].estimate.stages));  // without reflux no stage does anything
    EXPECT_TRUE(all[2].estimate.explains);
    expect_refusal(
        [&] {
            static_cast<void>(estimate_stages(std::span<past_run const>(past), reflux::none(),
                                              neck::insulated(), 0.3, sea_level()));
        },
        "measured strength");
}

// An estimate that does not explain the runs still has a range: it contains the nearest stages, and has no
// upper end if more stages change nothing.
TEST(StillEstimate, RangesOfEstimatesThatDoNotExplainAreRanges) {
    double const ratios[] = {0.0, 0.25, 0.5, 1.0, 2.0, 3.0, 5.0, 12.0, 50.0};
    int unexplained = 0;
    for (double const percent : {15.0, 30.0, 60.0, 75.0, 85.0, 92.0, 96.0, 96.9}) {
        for (double const litres : {0.3, 1.0, 3.0}) {
            std::vector<past_run> past{{charge(), 0.1 * litre, litres * litre, by_volume(percent)}};
            for (int runs = 1; runs <= 2; ++runs) {
                for (auto const& c :
                     nearest_stages(std::span<past_run const>(past), std::span<double const>(ratios),
                                    neck::insulated(), 0.3, sea_level())) {
                    stage_estimate const& e = c.estimate;
                    unexplained += !e.explains;
                    EXPECT_LT(e.lowest, e.highest) << percent << ' ' << litres << ' ' << c.reflux_ratio;
                    EXPECT_LE(e.lowest, e.stages);
                    EXPECT_LE(e.stages, e.highest);
                    EXPECT_TRUE(!std::isinf(e.stages) || std::isinf(e.highest));
                }
                past.push_back({charge(), 0.1 * litre, 2.0 * litre, by_volume(percent - 10.0)});
            }
        }
    }
    EXPECT_GT(unexplained, 200);
}

TEST(StillEstimate, TellsHowManyRatiosAreTried) {
    std::array const past{made_by(3.0, reflux::constant(3.0), 1.5)};
    std::array const ratios{1.0, 3.0, 6.0};
    std::vector<std::size_t> told;
    static_cast<void>(nearest_stages(std::span<past_run const>(past), std::span<double const>(ratios),
                                     neck::insulated(), 0.3, sea_level(),
                                     [&](std::size_t tried) { told.push_back(tried); }));
    EXPECT_EQ(told, (std::vector<std::size_t>{1, 2, 3}));
}

TEST(StillEstimate, OneRunDoesNotTellStagesAndRefluxApart) {
    std::array const past{made_by(4.0, reflux::constant(3.0), 1.5)};
    std::array const ratios{1.0, 2.0, 3.0, 4.0, 6.0, 10.0};
    auto const fits = reflux_candidates(std::span<past_run const>(past), std::span<double const>(ratios),
                                        neck::insulated(), 0.3, sea_level());
    EXPECT_GE(fits.size(), 3U);
    for (std::size_t i = 1; i < fits.size(); ++i)
        EXPECT_LT(fits[i].estimate.stages, fits[i - 1].estimate.stages);
}

TEST(StillEstimate, SeveralRunsOfDifferentLengthCan) {
    std::array const past{made_by(4.0, reflux::constant(3.0), 0.3), made_by(4.0, reflux::constant(3.0), 1.5),
                          made_by(4.0, reflux::constant(3.0), 3.0)};
    std::array const ratios{1.0, 2.0, 3.0, 4.0, 6.0, 10.0};
    auto const fits = reflux_candidates(std::span<past_run const>(past), std::span<double const>(ratios),
                                        neck::insulated(), 0.1, sea_level());
    ASSERT_EQ(fits.size(), 1U);
    EXPECT_EQ(fits[0].reflux_ratio, 3.0);
    EXPECT_NEAR(fits[0].estimate.stages, 4.0, 1e-3);
}

TEST(StillEstimate, SaysWhenNoNumberOfStagesIsTooMany) {
    std::array past{made_by(20.0, reflux::constant(3.0), 1.0)};
    auto const e = estimate_stages(std::span<past_run const>(past), reflux::constant(3.0), neck::insulated(),
                                   0.5, sea_level());
    EXPECT_TRUE(std::isinf(e.highest));
    EXPECT_LT(e.lowest, 20.0);
}

TEST(StillEstimate, RefusesWhatNoStillGives) {
    std::array past{made_by(3.0, reflux::constant(3.0), 1.5)};
    auto const estimate = [&] {
        return estimate_stages(std::span<past_run const>(past), reflux::constant(3.0), neck::insulated(), 0.5,
                               sea_level());
    };
    past[0].strength = by_volume(96.5);
    auto const strong = expect_refusal(estimate, "measured strength");
    EXPECT_LT(strong.upper(), 96.5);
    past[0].strength = by_volume(30.0);
    auto const weak = expect_refusal(estimate, "measured strength");
    EXPECT_GT(weak.lower(), 30.0);
    past[0].collected = 25.0 * litre;
    expect_refusal(estimate, "collected volume");
    expect_refusal(
        [&] {
            static_cast<void>(estimate_stages(std::span<past_run const>(), reflux::none(), neck::insulated(),
                                              0.5, sea_level()));
        },
        "number of past runs");
    past[0] = made_by(3.0, reflux::constant(3.0), 1.5);
    expect_refusal(
        [&] {
            static_cast<void>(estimate_stages(std::span<past_run const>(past), reflux::none(),
                                              neck::insulated(), 0.0, sea_level()));
        },
        "uncertainty of the strength");
    auto const kept = reflux::constant_strength(by_volume(85), 6.0);  // which a bare pot cannot keep
    expect_refusal(
        [&] {
            static_cast<void>(
                estimate_stages(std::span<past_run const>(past), kept, neck::insulated(), 0.5, sea_level()));
        },
        "strength of the distillate to keep");
    past[0].charge = wash::of(parcel::of(0.0 * litre, by_volume(11), celsius(20)));
    expect_refusal(estimate, "mass of the charge");
    past[0].charge = wash::of(parcel::of(25.0 * litre, by_volume(0), celsius(20)));
    expect_refusal(estimate, "strength of the charge");
    past[0].charge = wash::of(parcel::of(25.0 * litre, by_volume(98), celsius(20)));
    expect_refusal(estimate, "strength of the charge");
}

}  // namespace
}  // namespace aqueth
