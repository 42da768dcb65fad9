// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/distillation.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/run_plan.hpp>
#include <aqueth/wash.hpp>

#include <cmath>
#include <limits>
#include <span>
#include <vector>

namespace aqueth {

/// What was measured in an earlier run.
struct past_run {
    wash charge;               ///< what was in the pot
    units::volume discarded;   ///< first fraction, at 20 °C; 0 if there was none
    units::volume collected;   ///< what was collected after it, at 20 °C, above 0
    volume_fraction strength;  ///< strength of that collected whole
};

/// Effective stages of a still, for one assumed reflux.
struct stage_estimate {
    double stages;        ///< stages above the boiler that give back what was measured
    double lowest;        ///< if the measured strength were too high by its uncertainty; 0 at least
    double highest;       ///< if it were too low; infinity if no number of stages gives that much
    double disagreement;  ///< root mean square of forecast less measured strengths, % vol; 0 for one run
};

/// An assumed reflux with the stages that go with it.
struct still_candidate {
    double reflux_ratio;      ///< assumed
    stage_estimate estimate;  ///< the stages with which it fits
};

namespace detail {

inline constexpr double most_estimated_stages = 20.0;

/// strength that a still of so many stages would have given in a past run, % vol
template <boiling_mixture M>
double forecast_strength(past_run const& past, double stages, reflux const& returned, M const& mixture) {
    still s{{1.0 * kilowatt}, column::of_stages(stages), returned};
    run_plan plan;
    if (past.discarded > units::volume()) plan.cuts.push_back({condition::collected(past.discarded), false});
    // the end of the run counts from its beginning, and volumes do not add: a cut ends what was collected
    plan.cuts.push_back({condition::collected(past.collected)});
    plan.ends.push_back(condition::collected(past.discarded + 1.001 * past.collected));
    distillation const forecast = distil(past.charge, s, plan, mixture);
    return forecast.fractions[plan.cuts.size() - 1].product.strength().percent();
}

}  // namespace detail

/// Effective stages of a still from what earlier runs gave, so that the next forecast fits it.
///
/// One run gives one strength, so only one figure can be found from it: the reflux must be known or assumed.
/// `reflux_candidates` shows what other assumptions would fit as well.
/// @param past        one run or more, all on the same still
/// @param returned    reflux they were run with, heat loss included
/// @param uncertainty standard uncertainty of the measured strengths, 0.01 to 5 % vol
/// @param mixture     the equilibrium at the pressure of the day
/// @return the stages, with what the uncertainty makes of them
/// @throws range_error if there is no run, a volume is not positive or more than was there, or the strength
///         is outside what a bare pot to 20 stages give: the error says both
template <boiling_mixture M>
stage_estimate estimate_stages(std::span<past_run const> past, reflux const& returned, double uncertainty,
                               M const& mixture) {
    double const infinite = std::numeric_limits<double>::infinity();
    double const count = static_cast<double>(past.size());
    require_range("estimate of stages", "number of past runs", count, "", 1.0, 1e4);
    require_range("estimate of stages", "uncertainty of the strength", uncertainty, "% vol", 0.01, 5.0);
    for (past_run const& p : past) {
        require_range("estimate of stages", "discarded volume", in(p.discarded, litre), "L", 0.0, infinite);
        require_range("estimate of stages", "collected volume", in(p.collected, litre), "L", 1e-6, infinite);
        if (p.collected >= 0.97 * p.charge.volume(celsius(20)) - p.discarded) {
            raise(range_error("estimate of stages", "collected volume", in(p.collected, litre), "L", 0.0,
                              in(0.97 * p.charge.volume(celsius(20)) - p.discarded, litre),
                              "the charge less the first fraction and what must stay in the pot"));
        }
    }
    double measured = 0.0;
    for (past_run const& p : past) measured += p.strength.percent() / count;
    auto const mean = [&](double stages) {
        double sum = 0.0;
        for (past_run const& p : past) sum += detail::forecast_strength(p, stages, returned, mixture) / count;
        return sum;
    };
    double const most = detail::most_estimated_stages;
    double const weakest = mean(0.0);
    double const strongest = mean(most);
    require_range("estimate of stages", "measured strength", measured, volume_fraction::unit,
                  weakest - uncertainty, strongest + uncertainty,
                  "from a bare pot to 20 stages with this reflux, as much collected");
    auto const stages_for = [&](double strength) {
        if (strength <= weakest) return 0.0;
        if (strength >= strongest) return infinite;
        return numeric::bracketed_root([&](double n) { return mean(n) - strength; }, 0.0, most, 1e-5);
    };
    double const allowed = uncertainty / std::sqrt(count);
    double const stages = stages_for(measured);
    double squares = 0.0;
    for (past_run const& p : past) {
        double const miss = detail::forecast_strength(p, stages < most ? stages : most, returned, mixture) -
                            p.strength.percent();
        squares += miss * miss / count;
    }
    return {stages, stages_for(measured - allowed), stages_for(measured + allowed), std::sqrt(squares)};
}

/// Which pairs of reflux and stages would give back what was measured: the more of them agree within the
/// uncertainty, the less the data tell reflux and stages apart.
/// @param past        one run or more, all on the same still and with the same reflux
/// @param ratios      reflux ratios to try
/// @param heat_loss   share of the vapour condensed by heat loss, 0 to 0.9
/// @param uncertainty standard uncertainty of the measured strengths, 0.01 to 5 % vol
/// @param mixture     the equilibrium at the pressure of the day
/// @return the ratios with which some number of stages fits within the uncertainty, with those stages
/// @throws range_error as `estimate_stages`, but for the strength: a ratio that cannot give it is left out
template <boiling_mixture M>
std::vector<still_candidate> reflux_candidates(std::span<past_run const> past, std::span<double const> ratios,
                                               double heat_loss, double uncertainty, M const& mixture) {
    std::vector<still_candidate> result;
    for (double const ratio : ratios) {
        reflux const returned = reflux::constant(ratio).with_heat_loss(heat_loss);
        double weakest = 0.0;
        double strongest = 0.0;
        double measured = 0.0;
        for (past_run const& p : past) {
            weakest += detail::forecast_strength(p, 0.0, returned, mixture);
            strongest += detail::forecast_strength(p, detail::most_estimated_stages, returned, mixture);
            measured += p.strength.percent();
        }
        if (measured < weakest || measured > strongest) continue;
        stage_estimate const e = estimate_stages(past, returned, uncertainty, mixture);
        if (e.disagreement <= uncertainty) result.push_back({ratio, e});
    }
    return result;
}

}  // namespace aqueth
