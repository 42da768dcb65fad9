// SPDX-License-Identifier: BSL-1.0
// Positions of cuts, ends and recorded states of a run, and refused runs.
#include <aqueth/boiling_curve.hpp>
#include <aqueth/still/run.hpp>

#include "expect_refusal.hpp"
#include "runs.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <limits>
#include <string>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::moles;
using test::quillbeck;
using test::quillbeck_charge;
using test::sea_level;
using test::until;

TEST(ColumnDistillation, CutsComeWhereTheyWereAsked) {
    run_plan plan = until(condition::elapsed(4.0 * hour));
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::collected(700.0 * millilitre)},
                 {condition::distillate_strength(by_volume(80))},
                 {condition::boiling_temperature(celsius(98.5))},
                 {condition::still_strength(by_volume(1.0))}};
    auto const r = distil(quillbeck_charge(), quillbeck(), plan, sea_level());
    ASSERT_EQ(r.fractions.size(), 6U);
    EXPECT_NEAR(in(r.fractions[0].product.volume(celsius(20)), millilitre), 100.0, 1e-6);
    EXPECT_NEAR(in(r.fractions[1].product.volume(celsius(20)), millilitre), 700.0, 1e-6);
    EXPECT_NEAR(to<volume_fraction>(r.fractions[2].end.distillate).percent(), 80.0, 1e-6);
    EXPECT_NEAR(r.fractions[3].end.boiling.celsius(), 98.5, 1e-6);
    EXPECT_NEAR(to<volume_fraction>(r.fractions[4].end.still).percent(), 1.0, 1e-6);
    EXPECT_NEAR(in(r.boiling_time, hour), 4.0, 1e-9);
    for (std::size_t k = 1; k < r.fractions.size(); ++k) {
        EXPECT_EQ(r.fractions[k].begin.elapsed, r.fractions[k - 1].end.elapsed);
        EXPECT_LT(r.fractions[k].product.composition(), r.fractions[k - 1].product.composition());
    }
}

TEST(ColumnDistillation, CuttingDoesNotChangeTheRun) {
    run_plan whole = until(condition::still_strength(by_volume(1)));
    run_plan parts = whole;
    for (int i = 0; i < 20; ++i) parts.cuts.push_back({condition::collected(100.0 * millilitre)});
    auto const a = distil(quillbeck_charge(), quillbeck(), whole, sea_level());
    auto const b = distil(quillbeck_charge(), quillbeck(), parts, sea_level());
    EXPECT_NEAR(in(a.residue.mass(), b.residue.mass()), 1.0, 1e-9);
    EXPECT_NEAR(a.boiling_time.value() / b.boiling_time.value(), 1.0, 1e-8);
}

// If the last cut and an end come together the run ends there, and nothing comes after the cut.
TEST(ColumnDistillation, AnEndTogetherWithTheLastCutEndsTheRun) {
    auto const charge = quillbeck_charge();
    for (auto const& what :
         {condition::still_strength(by_volume(1)), condition::boiling_temperature(celsius(98)),
          condition::distillate_strength(by_volume(50)), condition::elapsed(2.0 * hour)}) {
        run_plan plan = until(what);
        auto const plain = distil(charge, quillbeck(), plan, sea_level());
        plan.cuts = {{what, false}};
        auto const r = distil(charge, quillbeck(), plan, sea_level());
        ASSERT_EQ(r.fractions.size(), 1U) << what.name();
        EXPECT_FALSE(r.fractions[0].kept);
        EXPECT_NEAR(r.boiling_time / plain.boiling_time, 1.0, 1e-12);
        // one more cut is never reached
        plan.cuts.push_back({condition::collected(10.0 * millilitre)});
        expect_refusal([&] { static_cast<void>(distil(charge, quillbeck(), plan, sea_level())); },
                       "collected volume");
    }
}

// An end that comes before the cut by less than the steps are exact comes together with it, whatever the
// rounding. The volumes of the first such pair that the fuzzer found were 1e-13 apart.
TEST(ColumnDistillation, AnEndThatRoundingPutsBeforeTheCutIsTogetherWithIt) {
    auto const charge = quillbeck_charge();
    for (double litres = 0.5; litres < 4.0; litres += 0.25)
        for (double const earlier : {1e-15, 1e-13, 1e-11, 1e-9}) {
            run_plan plan = until(condition::collected(litres * (1.0 - earlier) * litre));
            plan.cuts = {{condition::collected(litres * litre), true}};
            auto const r = distil(charge, quillbeck(), plan, sea_level());
            EXPECT_EQ(r.fractions.size(), 1U) << litres << ' ' << earlier;
        }
    run_plan plan = until(condition::collected((1.0 - 1e-6) * litre));
    plan.cuts = {{condition::collected(1.0 * litre), true}};
    expect_refusal([&] { static_cast<void>(distil(charge, quillbeck(), plan, sea_level())); },
                   "collected volume");
}

TEST(ColumnDistillation, PointsLieOnTheRun) {
    run_plan plan = until(condition::still_strength(by_volume(0.5)));
    plan.points = 1000;
    auto const r = distil(quillbeck_charge(), quillbeck(), plan, sea_level());
    ASSERT_EQ(r.points.size(), 1000U);
    EXPECT_EQ(r.points.front().collected.value(), 0.0);
    EXPECT_NEAR(in(r.points.back().collected, r.fractions[0].product.volume(celsius(20))), 1.0, 1e-9);
    EXPECT_NEAR(r.points.back().elapsed.value() / r.boiling_time.value(), 1.0, 1e-9);
    // a run that ends at an inner point must agree with it
    auto const& p = r.points[613];
    auto const part =
        distil(quillbeck_charge(), quillbeck(), until(condition::elapsed(p.elapsed)), sea_level());
    EXPECT_NEAR(in(part.fractions[0].product.volume(celsius(20)), p.collected), 1.0, 1e-7);
    EXPECT_NEAR(part.fractions[0].end.still.value(), p.still.value(), 1e-9);
    EXPECT_NEAR(part.fractions[0].end.distillate.value(), p.distillate.value(), 1e-7);
    for (std::size_t i = 1; i < r.points.size(); ++i) {
        EXPECT_GT(r.points[i].elapsed, r.points[i - 1].elapsed);
        EXPECT_LT(r.points[i].distillate, r.points[i - 1].distillate);
        EXPECT_GT(r.points[i].vapour, r.points[i - 1].vapour);
    }
}

// Progress rises, first for distillation, then for recording.
TEST(ColumnDistillation, TellsHowFarItIs) {
    run_plan plan = until(condition::still_strength(by_volume(0.5)));
    plan.points = 50;
    std::vector<run_progress> told;
    auto const r = distil(quillbeck_charge(), quillbeck(), plan, sea_level(),
                          [&](run_progress const& p) { told.push_back(p); });
    ASSERT_GT(told.size(), 55U);
    EXPECT_EQ(told.front().recorded, 0.0);
    EXPECT_EQ(told.back().recorded, 1.0);
    EXPECT_NEAR(told.back().distilled, 1.0 - moles(r.residue.liquid()) / moles(quillbeck_charge().liquid()),
                1e-12);
    for (std::size_t i = 1; i < told.size(); ++i) {
        EXPECT_GE(told[i].distilled, told[i - 1].distilled);
        EXPECT_GE(told[i].recorded, told[i - 1].recorded);
    }
}

TEST(Distillation, RefusesWhatCannotBe) {
    auto const& m = sea_level();
    auto const charge = quillbeck_charge();
    auto const end = until(condition::still_strength(by_volume(1)));
    double const nan = std::numeric_limits<double>::quiet_NaN();

    for (double const bad : {0.0, -1.0, nan}) {
        still s = quillbeck();
        s.pot.power = bad * watt;
        expect_refusal([&] { static_cast<void>(distil(charge, s, end, m)); }, "power");
    }
    still weak = quillbeck();
    weak.pot.power = 200.0 * watt;
    auto const e = expect_refusal([&] { static_cast<void>(distil(charge, weak, end, m)); }, "power");
    EXPECT_NEAR(e.lower(), 3.0 * 71.7, 2.0);  // heat loss of the boiling pot

    auto const strong = wash::of(parcel::of(1.0 * litre, by_volume(97.5), celsius(20)));
    expect_refusal([&] { static_cast<void>(distil(strong, quillbeck(), end, m)); }, "strength of the charge");
    expect_refusal(
        [&] { static_cast<void>(distil(wash::of(water(1.0 * kilogram, celsius(20))), quillbeck(), end, m)); },
        "strength of the charge");
    expect_refusal(
        [&] {
            static_cast<void>(
                distil(wash::of(parcel::of(0.0 * litre, by_volume(10), celsius(20))), quillbeck(), end, m));
        },
        "mass of the charge");
    expect_refusal([&] { static_cast<void>(distil(charge, quillbeck(), run_plan{}, m)); },
                   "number of ends of the run");
    run_plan many = end;
    many.ends.resize(21, end.ends.front());
    expect_refusal([&] { static_cast<void>(distil(charge, quillbeck(), many, m)); },
                   "number of ends of the run");
    many = end;
    many.cuts.resize(1001, {condition::elapsed(1.0 * second)});
    expect_refusal([&] { static_cast<void>(distil(charge, quillbeck(), many, m)); }, "number of cuts");
    many = end;
    many.points = 100001;
    expect_refusal([&] { static_cast<void>(distil(charge, quillbeck(), many, m)); }, "number of points");
    // it would boil almost for ever; just above the required power it boils for a million hours at most
    auto const lake = wash::of(parcel::of(1e6 * cubic_metre, by_volume(11), celsius(20)));
    still ages = quillbeck();
    auto const least = expect_refusal([&] { static_cast<void>(distil(lake, ages, end, m)); }, "power");
    ages.pot.power = 1.0001 * least.lower() * watt;
    EXPECT_LE(in(distil(lake, ages, end, m).boiling_time, hour), 1e6);
    ages.pot.power = 0.9999 * least.lower() * watt;
    expect_refusal([&] { static_cast<void>(distil(lake, ages, end, m)); }, "power");

    // never reached, or already met: the bounds give the reachable values
    auto const much = expect_refusal(
        [&] { static_cast<void>(distil(charge, quillbeck(), until(condition::collected(30.0 * litre)), m)); },
        "collected volume");
    EXPECT_GT(much.upper(), 23.0);
    EXPECT_LT(much.upper(), 25.0);
    auto const late = expect_refusal(
        [&] { static_cast<void>(distil(charge, quillbeck(), until(condition::elapsed(1000.0 * hour)), m)); },
        "elapsed time");
    EXPECT_LT(late.upper(), 60.0 * 1000.0);
    auto const hot = expect_refusal(
        [&] {
            static_cast<void>(
                distil(charge, quillbeck(), until(condition::boiling_temperature(celsius(120))), m));
        },
        "boiling temperature");
    EXPECT_LT(hot.upper(), 106.0);
    auto const past = expect_refusal(
        [&] {
            static_cast<void>(
                distil(charge, quillbeck(), until(condition::still_strength(by_volume(12))), m));
        },
        "strength in the still");
    EXPECT_LT(past.upper(), 12.0);
    // the strength of the charge cannot end a run either, whatever the rounding of two conversions
    for (double percent = 1.0; percent < 95.0; percent += 0.5) {
        auto const of_strength = wash::of(parcel::of(25.0 * litre, by_volume(percent), celsius(20)));
        auto const end_at = [&](double p) { return until(condition::still_strength(by_volume(p))); };
        auto const there =
            expect_refusal([&] { static_cast<void>(distil(of_strength, quillbeck(), end_at(percent), m)); },
                           "strength in the still");
        EXPECT_NEAR(there.upper(), percent, 1e-5);
        EXPECT_NO_THROW(static_cast<void>(distil(of_strength, quillbeck(), end_at(percent - 1e-3), m)))
            << percent;
    }
    expect_refusal(
        [&] {
            static_cast<void>(
                distil(charge, quillbeck(), until(condition::distillate_strength(by_volume(95))), m));
        },
        "strength of the distillate");
    run_plan late_cut = until(condition::collected(1.0 * litre));
    late_cut.cuts = {{condition::collected(2.0 * litre)}};
    auto const cut = expect_refusal([&] { static_cast<void>(distil(charge, quillbeck(), late_cut, m)); },
                                    "collected volume");
    EXPECT_NEAR(cut.upper(), 1.0, 1e-9);

    // reflux too small for the strength that is to be kept
    still keep = quillbeck();
    keep.head = head::total_condenser(reflux::constant_strength(by_volume(93), 3.0));
    auto const kept = expect_refusal([&] { static_cast<void>(distil(charge, keep, end, m)); },
                                     "strength of the distillate to keep");
    EXPECT_EQ(kept.value(), 93.0);
    EXPECT_LT(kept.upper(), 93.0);
    EXPECT_GT(kept.upper(), 80.0);
    // its loss: of none, where it is lost already, or later than the run lasts
    auto const lost = condition::strength_lost();
    expect_refusal([&] { static_cast<void>(distil(charge, quillbeck(), until(lost), m)); },
                   "strengths kept by the reflux");
    keep.head = head::total_condenser(reflux::constant_strength(by_volume(80), 3.0));
    run_plan twice = until(condition::still_strength(by_volume(0.1)));
    twice.cuts = {{lost}, {lost}};
    auto const again =
        expect_refusal([&] { static_cast<void>(distil(charge, keep, twice, m)); }, "strength that is kept");
    EXPECT_EQ(again.value(), 80.0);
    EXPECT_NEAR(again.upper(), 80.0, 1e-3);
    run_plan short_run = until(condition::collected(0.1 * litre));
    short_run.cuts = {{lost}};
    auto const reachable = expect_refusal([&] { static_cast<void>(distil(charge, keep, short_run, m)); },
                                          "strength that is kept");
    EXPECT_GT(reachable.lower(), 80.0);
    EXPECT_GT(reachable.upper(), reachable.lower());
    // the strength itself is there from the start
    auto const there = expect_refusal(
        [&] {
            static_cast<void>(distil(charge, keep, until(condition::distillate_strength(by_volume(80))), m));
        },
        "strength of the distillate");
    EXPECT_NE(there.reason().find("wait until the strength is lost"), std::string::npos);

    for (double const bad : {-0.1, 1001.0, nan})
        expect_refusal([&] { static_cast<void>(reflux::constant(bad)); }, "reflux ratio");
    for (double const bad : {-0.01, 0.91, nan})
        expect_refusal([&] { static_cast<void>(neck::condensing(bad)); },
                       "share of the vapour that condenses");
    expect_refusal([] { static_cast<void>(condition::collected(0.0 * litre)); }, "volume to collect");
    expect_refusal([] { static_cast<void>(condition::elapsed(-1.0 * hour)); }, "time to elapse");
}

}  // namespace
}  // namespace aqueth
