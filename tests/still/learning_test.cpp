// SPDX-License-Identifier: BSL-1.0
#include <aqueth/still/learning.hpp>

#include "expect_refusal.hpp"
#include "still/learning_logs.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::log_contents;
using test::log_of;
using test::with_noise;
using figure = still_figure;

boiling_curve const& sea_level() {
    static boiling_curve const curve(standard_atmosphere);
    return curve;
}

wash charge() { return wash::of(25.0 * litre, by_volume(11), plato(1.5), celsius(20)); }

/// the teaching still of the documentation: four plates of efficiency 0.6, reflux 3, neck 5 %, 3 W/K
still teaching_still() {
    still s{{1.5 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_plates(4, 0.6);
    s.head = head::total_condenser(reflux::constant(3.0));
    s.neck = neck::condensing(0.05);
    return s;
}
still with_reflux(double ratio) {
    still s = teaching_still();
    s.head = head::total_condenser(reflux::constant(ratio));
    return s;
}
still pot_still() {
    still s{{1.5 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin, celsius(20)}};
    s.neck = neck::condensing(0.1);
    return s;
}

learned_still learn(still const& known, std::vector<run_log> const& logs,
                    std::vector<still_unknown> const& unknowns, log_uncertainties const& u = {}) {
    return learn_still(known, std::span<run_log const>(logs), std::span<still_unknown const>(unknowns), u,
                       sea_level());
}

/// every quantity that a log can hold
constexpr log_contents everything{12, 0.25, true, true, true, true, true};

// Logs without noise give back the figures that made them.
TEST(Learning, FindsTheFiguresThatMadeTheLog) {
    run_log const log = log_of(charge(), teaching_still(), everything, sea_level());
    struct {
        figure what;
        double value;
    } const known[] = {{figure::plate_efficiency, 0.6},
                       {figure::neck_share, 0.05},
                       {figure::reflux_ratio, 3.0},
                       {figure::pot_loss, 3.0}};
    for (auto const& one : known) {
        auto const r = learn(teaching_still(), {log}, {{one.what}});
        EXPECT_NEAR(r.figures.at(0).value, one.value, 0.05 * r.figures[0].uncertainty) << name_of(one.what);
        EXPECT_NEAR(r.figures[0].value, one.value, 1e-3 * one.value) << name_of(one.what);
        EXPECT_LT(r.chi_squared, 0.01);
        EXPECT_TRUE(r.consistent);
        EXPECT_TRUE(r.not_told_apart.empty());
        EXPECT_EQ(r.scatter, 1.0);
        EXPECT_FALSE(r.figures[0].at_limit);
    }
    auto const r = learn(teaching_still(), {log},
                         {{figure::plate_efficiency}, {figure::reflux_ratio}, {figure::pot_loss}});
    for (std::size_t j = 0; j < 3; ++j) {
        double const value[] = {0.6, 3.0, 3.0};
        EXPECT_NEAR(r.figures[j].value, value[j], 2e-3 * value[j]);
    }
    EXPECT_DOUBLE_EQ(r.found.tower.efficiency(), r.figures[0].value);
    EXPECT_DOUBLE_EQ(r.found.head.returned().ratio(), r.figures[1].value);
    EXPECT_DOUBLE_EQ(r.found.pot.loss.value(), r.figures[2].value);
    EXPECT_EQ(r.degrees_of_freedom, 12.0 * 5.0 - 3.0);
    // a wrong known figure shows in the agreement
    still wrong = teaching_still();
    wrong.neck = neck::condensing(0.3);
    EXPECT_FALSE(learn(wrong, {log}, {{figure::plate_efficiency}}).consistent);
}

// Stages, from a log with times only: the volume is not needed.
TEST(Learning, StagesFromTimesAlone) {
    still s = teaching_still();
    s.tower = column::of_stages(2.6);
    run_log log = log_of(charge(), s, {12, 0.25, true, false, true, false, true}, sea_level());
    for (log_row& row : log.rows) row.collected.reset();
    auto const r = learn(teaching_still(), {log}, {{figure::stages}});
    EXPECT_NEAR(r.figures.at(0).value, 2.6, 2e-3);
    EXPECT_GT(r.figures[0].uncertainty, 0.01);
}

// The forecast is interpolated between states: the log that was made without interpolation agrees within
// 0.002 % vol, K and min, a hundredth of what a reading is good for.
TEST(Learning, ForecastAtTheRowsIsThatOfTheRun) {
    for (still const& s : {teaching_still(), pot_still()}) {
        run_log const log = log_of(charge(), s, everything, sea_level());
        detail::log_forecast const forecast(log, s, sea_level());
        for (detail::log_reading const& r : detail::readings_of(log))
            EXPECT_NEAR(forecast.read(r).value, r.measured, 0.005) << name_of(r.what) << " " << r.row;
    }
}

struct coverage {
    int covered = 0;
    double squares = 0.0;  ///< of the errors over their standard uncertainties
};

/// Learns from logs with normal noise of the stated uncertainties, and counts the intervals with the truth.
std::vector<coverage> coverage_of(still const& truth, log_contents const& contents,
                                  std::vector<still_unknown> const& unknowns,
                                  std::vector<double> const& values, int seeds, double volume_noise) {
    run_log const log = log_of(charge(), truth, contents, sea_level());
    std::vector<coverage> result(unknowns.size());
    log_uncertainties u;
    u.volume = volume_noise * millilitre;
    for (int seed = 1; seed <= seeds; ++seed) {
        run_log const noisy = with_noise(log, static_cast<unsigned>(seed), 0.5, 0.5, volume_noise, 1.0);
        auto const r = learn(truth, {noisy}, unknowns, u);
        for (std::size_t j = 0; j < unknowns.size(); ++j) {
            learned_figure const& f = r.figures[j];
            result[j].covered += f.lowest <= values[j] && values[j] <= f.highest;
            result[j].squares += std::pow((f.value - values[j]) / f.uncertainty, 2) / seeds;
        }
    }
    return result;
}

// Of 200 logs, 95 % intervals hold the truth 190 times in the mean; below 180 or above 196 is less likely
// than one in five hundred (binomial distribution). The mean square of the errors over their uncertainties is
// 1.
TEST(Learning, IntervalsHoldTheTruth) {
    auto const found = coverage_of(pot_still(), {8, 0.4, true, false, false, true, true},
                                   {{figure::neck_share}, {figure::pot_loss}}, {0.1, 3.0}, 200, 10.0);
    for (coverage const& each : found) {
        EXPECT_GE(each.covered, 180);
        EXPECT_LE(each.covered, 196);
        EXPECT_NEAR(each.squares, 1.0, 0.3);
    }
}

// The same for a column, with every quantity. An error of the volume shifts all readings of its row: with 30
// mL, uncertainties that took the readings for independent would be far too small.
TEST(Learning, IntervalsHoldTheTruthOfAColumn) {
    auto const found =
        coverage_of(teaching_still(), {12, 0.25, true, false, true, true, true},
                    {{figure::plate_efficiency}, {figure::reflux_ratio}}, {0.6, 3.0}, 60, 30.0);
    for (coverage const& each : found) {
        EXPECT_GE(each.covered, 53);  // of 57 in the mean; less is rarer than one in a hundred
        EXPECT_NEAR(each.squares, 1.0, 0.5);
    }
}

// Liquid on the plates, from a log of a run with holdup; the column takes three minutes to fill, and times
// count from the first distillate.
TEST(Learning, FindsTheHoldup) {
    still s = teaching_still();
    s.neck = neck::insulated();
    s.tower = s.tower.holding(60.0 * millilitre);
    run_log const log = log_of(charge(), s, everything, sea_level());
    std::vector<still_unknown> const unknowns{{figure::plate_efficiency}, {figure::plate_holdup}};
    still known = s;
    known.tower = column::of_plates(4, 0.9);
    auto const r = learn(known, {log}, unknowns);
    EXPECT_NEAR(r.figures[0].value, 0.6, 1e-3);
    EXPECT_NEAR(r.figures[1].value, 60.0, 0.5);
    EXPECT_GT(r.figures[1].uncertainty, 1.0);
    EXPECT_LT(r.figures[1].uncertainty, 20.0);
    EXPECT_NEAR(in(r.found.tower.holdup(), millilitre), r.figures[1].value, 1e-9);
    // a time at total reflux before is no part of the times
    run_log waited = log;
    waited.start = 20.0 * minute;
    still const at_rest = s;
    detail::log_forecast const forecast(waited, at_rest, sea_level());
    for (detail::log_reading const& each : detail::readings_of(waited)) {
        if (each.what == log_quantity::time) {
            EXPECT_NEAR(forecast.read(each).value, each.measured, 3.0) << each.row;
        }
    }
}

// One strength determines one figure. Stages and reflux are then named with the remedy.
TEST(Learning, OneStrengthDoesNotTellStagesAndRefluxApart) {
    run_log const log{charge(), {log_row{{}, 0.1 * litre}, log_row{{}, 1.9 * litre, {}, by_volume(88)}}};
    auto const one = learn(teaching_still(), {log}, {{figure::stages}});
    EXPECT_TRUE(one.not_told_apart.empty());
    EXPECT_LT(one.chi_squared, 1e-4);
    EXPECT_TRUE(std::isfinite(one.figures[0].uncertainty));

    auto const both = learn(teaching_still(), {log}, {{figure::stages}, {figure::reflux_ratio}});
    ASSERT_EQ(both.not_told_apart.size(), 1u);
    auto const& a = both.not_told_apart[0];
    ASSERT_EQ(a.together.size(), 2u);
    EXPECT_EQ(a.together[0].what, figure::stages);
    EXPECT_EQ(a.together[1].what, figure::reflux_ratio);
    EXPECT_GT(a.together[0].by, 0.0);
    EXPECT_LT(a.together[1].by, 0.0);  // more stages or more reflux: the same strength
    EXPECT_TRUE(std::isinf(both.figures[0].uncertainty));
    EXPECT_TRUE(std::isinf(both.figures[1].uncertainty));
    EXPECT_EQ(in_words(a).rfind("the logs do not tell stages and reflux ratio apart: stages higher by ", 0),
              0u);
    EXPECT_NE(remedy_for(a).find("measure the reflux"), std::string::npos);

    // the remedy works: a measured reflux, or a second log with another known one
    auto const measured =
        learn(teaching_still(), {log}, {{figure::stages}, {figure::reflux_ratio, 3.0, 0.2}});
    EXPECT_TRUE(measured.not_told_apart.empty());
    EXPECT_NEAR(measured.figures[1].value, 3.0, 1e-3);
    EXPECT_NEAR(measured.figures[1].uncertainty, 0.2, 1e-3);
    EXPECT_GT(measured.figures[0].uncertainty, one.figures[0].uncertainty);
}

TEST(Learning, ASecondKnownRefluxTellsThemApart) {
    log_contents const jars{6, 0.4, false, true, false, false, false};
    run_log const unknown = log_of(charge(), with_reflux(3.0), jars, sea_level());
    run_log other = log_of(charge(), with_reflux(1.5), jars, sea_level());
    other.reflux_ratio = 1.5;
    auto const r =
        learn(teaching_still(), {unknown, other}, {{figure::plate_efficiency}, {figure::reflux_ratio}});
    EXPECT_TRUE(r.not_told_apart.empty());
    EXPECT_NEAR(r.figures[0].value, 0.6, 1e-3);
    EXPECT_NEAR(r.figures[1].value, 3.0, 1e-2);
}

// Efficiency, neck and reflux change strengths in nearly the same way: one log names all three together.
TEST(Learning, ThreeFiguresThatLookAlikeAreNamedTogether) {
    run_log const log = log_of(charge(), teaching_still(), everything, sea_level());
    auto const r = learn(teaching_still(), {log},
                         {{figure::plate_efficiency}, {figure::neck_share}, {figure::reflux_ratio}});
    ASSERT_FALSE(r.not_told_apart.empty());
    EXPECT_EQ(r.not_told_apart[0].together.size(), 3u);
    EXPECT_GT(std::abs(r.correlations[0][1]), 0.95);
}

// Strengths do not depend on the heat.
TEST(Learning, WhatALogDoesNotTellIsNamed) {
    run_log log = log_of(charge(), pot_still(), {8, 0.4, true}, sea_level());
    auto const r = learn(pot_still(), {log}, {{figure::neck_share}, {figure::pot_loss}});
    ASSERT_EQ(r.not_told_apart.size(), 1u);
    ASSERT_EQ(r.not_told_apart[0].together.size(), 1u);
    EXPECT_EQ(r.not_told_apart[0].together[0].what, figure::pot_loss);
    EXPECT_EQ(in_words(r.not_told_apart[0]), "the logs say nothing about the pot loss");
    EXPECT_NE(remedy_for(r.not_told_apart[0]).find("known power"), std::string::npos);
    EXPECT_TRUE(std::isinf(r.figures[1].uncertainty));
    EXPECT_NEAR(r.figures[0].value, 0.1, 1e-3);  // the other one is found all the same
    EXPECT_TRUE(std::isfinite(r.figures[0].uncertainty));
}

// A log that contradicts itself: the worst reading is named, the uncertainty grows with the scatter.
TEST(Learning, ContradictionsAreFound) {
    run_log log = log_of(charge(), teaching_still(), {12, 0.25, true}, sea_level());
    auto const good = learn(teaching_still(), {log}, {{figure::plate_efficiency}});
    log.rows[4].strength = by_volume(60);
    auto const bad = learn(teaching_still(), {log}, {{figure::plate_efficiency}});
    EXPECT_TRUE(good.consistent);
    EXPECT_FALSE(bad.consistent);
    ASSERT_EQ(bad.residuals.size(), 1u);
    EXPECT_EQ(bad.residuals[0].row, 4u);
    EXPECT_LT(bad.residuals[0].largest, -20.0);
    EXPECT_GT(bad.scatter, 5.0);
    EXPECT_NEAR(bad.scatter, std::sqrt(bad.chi_squared / bad.degrees_of_freedom), 1e-12);
    EXPECT_GT(bad.figures[0].uncertainty, 4.0 * good.figures[0].uncertainty);
    EXPECT_GT(bad.coverage_factor, 2.0);  // Student's t with 11 degrees of freedom: 2.201 (any table)
    EXPECT_NEAR(bad.coverage_factor, 2.201, 1e-3);
}

// What one strength says of the stages is what the search for stages says (`estimate_stages`).
TEST(Learning, AgreesWithTheEstimateOfStages) {
    past_run const past{charge(), 0.1 * litre, 1.8 * litre, by_volume(88)};
    auto const e = estimate_stages(std::span<past_run const>(&past, 1), reflux::constant(3.0),
                                   neck::insulated(), 0.5, sea_level());
    still known = with_reflux(3.0);
    known.neck = neck::insulated();
    run_log const log{charge(), {log_row{{}, 0.1 * litre}, log_row{{}, 1.9 * litre, {}, by_volume(88)}}};
    log_uncertainties exact_volume;
    exact_volume.volume = units::volume();
    auto const r = learn(known, {log}, {{figure::stages}}, exact_volume);
    EXPECT_NEAR(r.figures[0].value, e.stages, 0.02);  // 1.8 L and 100 mL are 1.9 L but for a thousandth
    EXPECT_NEAR(r.figures[0].uncertainty, 0.5 * (e.highest - e.lowest), 0.05 * (e.highest - e.lowest));
}

TEST(Learning, ShowsProgressAndStops) {
    run_log const log = log_of(charge(), pot_still(), everything, sea_level());
    std::vector<still_unknown> const unknowns{{figure::neck_share}};
    int calls = 0;
    auto const r =
        learn_still(pot_still(), std::span<run_log const>(&log, 1), std::span<still_unknown const>(unknowns),
                    {}, sea_level(), [&](learning_progress const& p) {
                        EXPECT_EQ(p.forecasts, ++calls);
                        return calls < 2;
                    });
    EXPECT_TRUE(r.stopped);
    EXPECT_EQ(r.forecasts, 2);
    EXPECT_TRUE(std::isinf(r.figures[0].uncertainty));
    auto const all = learn(pot_still(), {log}, unknowns);
    EXPECT_FALSE(all.stopped);
    EXPECT_LT(all.forecasts, 40);
}

TEST(Learning, Refuses) {
    run_log const good{charge(), {log_row{{}, 1.0 * litre, by_volume(60)}}};
    auto const refuses = [](still const& s, run_log const& log, std::vector<still_unknown> const& unknowns,
                            char const* what, log_uncertainties const& u = {}) {
        return expect_refusal([&] { static_cast<void>(learn(s, {log}, unknowns, u)); }, what);
    };
    auto const with_row = [&](log_row const& row) {
        run_log log = good;
        log.rows.push_back(row);
        return log;
    };
    std::vector<still_unknown> const stages{{figure::stages}};
    expect_refusal([&] { static_cast<void>(learn(teaching_still(), {}, stages)); }, "number of past runs");
    refuses(teaching_still(), good, {}, "number of input quantities");
    refuses(teaching_still(), {charge(), {}}, stages, "number of readings");
    refuses(teaching_still(), {charge(), {log_row{{}, 1.0 * litre}}}, stages, "number of readings");
    refuses(teaching_still(), {charge(), {log_row{{}, 0.0 * litre, by_volume(80)}}}, stages,
            "collected volume");
    refuses(teaching_still(), with_row({{}, 0.5 * litre, by_volume(60)}), stages, "collected volume");
    auto const much =
        refuses(teaching_still(), with_row({{}, 25.0 * litre, by_volume(60)}), stages, "collected volume");
    EXPECT_NEAR(much.upper(), 0.97 * 25.0, 1.0);
    refuses(teaching_still(), with_row({{}, 1.0 * litre, {}, by_volume(60)}), stages, "collected volume");
    refuses(teaching_still(), with_row({{}, {}, by_volume(60)}), stages, "elapsed time");
    refuses(teaching_still(), with_row({10.0 * minute, {}, by_volume(60)}), stages, "power");
    refuses(teaching_still(), good, {{figure::stages}, {figure::stages}}, "stages");
    refuses(teaching_still(), good, {{figure::stages}, {figure::plate_efficiency}}, "stages");
    refuses(pot_still(), good, {{figure::plate_efficiency}}, "number of plates");
    refuses(pot_still(), good, {{figure::plate_holdup}}, "number of plates");
    refuses(teaching_still(), good, {{figure::stages, 25.0, 1.0}}, "stages");
    refuses(teaching_still(), good, {{figure::stages, 3.0, 0.0}}, "standard uncertainty of a known figure");
    log_uncertainties u;
    u.strength = 0.0;
    refuses(teaching_still(), good, stages, "uncertainty of the strength", u);
    u = {};
    u.head_temperature = std::nan("");
    refuses(teaching_still(), good, stages, "standard uncertainty of the head temperature", u);
    still partial = teaching_still();
    partial.head = head::partial_condenser(0.5);
    refuses(partial, good, {{figure::reflux_ratio}}, "reflux ratio");
}

}  // namespace
}  // namespace aqueth
