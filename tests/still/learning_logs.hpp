// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Logs of stills whose figures are known: what the forecast says at the ends of fractions, with noise.

#include <aqueth/still/run.hpp>
#include <aqueth/still/run_log.hpp>

#include <random>

namespace aqueth::test {

/// The readings that a log holds.
struct log_contents {
    int rows = 12;
    double litres_each = 0.25;
    bool strength = true;
    bool jar_strength = false;
    bool head = false;
    bool pot = false;
    bool time = false;
};

/// The log that a run of the still leaves, without noise. The forecast ends a fraction at every row, so no
/// interpolation is involved.
template <class M>
run_log log_of(wash const& charge, still const& s, log_contents const& c, M const& mixture) {
    run_plan plan;
    for (int k = 1; k < c.rows; ++k) plan.cuts.push_back({condition::collected(c.litres_each * litre)});
    // volumes before mixing do not quite add up, so the last fraction ends with the run
    plan.ends.push_back(condition::collected(c.rows * c.litres_each * 0.9999 * litre));
    distillation const run = distil(charge, s, plan, mixture);
    run_log log{charge, {}, s.pot.power, {}};
    for (run_fraction const& f : run.fractions) {
        log_row row;
        row.collected = f.end.collected;
        if (c.time) row.elapsed = f.end.elapsed - run.fractions.front().begin.elapsed;
        if (c.strength) row.strength = to<volume_fraction>(f.end.distillate);
        if (c.jar_strength) row.jar_strength = f.product.strength();
        if (c.head) row.head = f.end.vapour;
        if (c.pot) row.pot = f.end.boiling;
        log.rows.push_back(row);
    }
    return log;
}

/// Adds normal noise with these standard deviations.
inline run_log with_noise(run_log log, unsigned seed, double percent_vol, double kelvins, double millilitres,
                          double minutes) {
    std::mt19937 random(seed);
    std::normal_distribution<double> normal;
    auto const off = [&](double u) { return u * normal(random); };
    for (log_row& row : log.rows) {
        auto const strength = [&](std::optional<volume_fraction>& v) {
            if (v) v = by_volume((std::min)(100.0, (std::max)(0.0, v->percent() + off(percent_vol))));
        };
        strength(row.strength);
        strength(row.jar_strength);
        if (row.head) row.head = celsius(row.head->celsius() + off(kelvins));
        if (row.pot) row.pot = celsius(row.pot->celsius() + off(kelvins));
        if (row.collected) row.collected = *row.collected + off(millilitres) * millilitre;
        if (row.elapsed) row.elapsed = *row.elapsed + off(minutes) * minute;
    }
    return log;
}

}  // namespace aqueth::test
