// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/detail/log_fit.hpp>
#include <aqueth/still/detail/stage_fit.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/learned.hpp>
#include <aqueth/still/run_log.hpp>
#include <aqueth/still/still.hpp>

#include <concepts>
#include <cstddef>
#include <span>
#include <vector>

/// @file
/// Learning a still from its earlier runs. This header needs Eigen (3.4 or later), so `aqueth.hpp` leaves it
/// out.

namespace aqueth::inline AQUETH_ABI {

// --- figures of a still from logs --------------------------------------------------------------------------

/// Estimates figures of a still from the logs of earlier runs, by weighted least squares.
///
/// Each reading counts with its standard uncertainty (type B); the uncertainty of the volume, or of the time
/// where there is no volume, counts through the slope of the forecast. If the readings scatter about the
/// forecast by more than that, all uncertainties are multiplied by the ratio (type A). Intervals then use
/// Student's t. Readings count as independent: an offset of a thermometer is not one more unknown. The doubt
/// of the equilibrium is not included; learning again with `curve_with_vapour_shifted` shows its effect.
/// @param known    the still with the figures that are known; its power does not count, and its unknown
///                 figures are replaced. For an unknown plate efficiency it has plates
/// @param logs     one or more, all of this still
/// @param unknowns 1 to 5 different figures; the stages or the plate efficiency, not both
/// @param u        standard uncertainties of the readings
/// @param mixture  the equilibrium at the pressure of the day
/// @param progress callable: learning_progress -> bool; called after every forecast; false stops the search,
///                 and the best so far is returned without uncertainties
/// @return the figures with their uncertainties and correlations, what the logs do not tell apart, and how
///         well logs and forecast agree
/// @throws refusal if there is no log or no reading, an unknown occurs twice or has no column to belong to,
///                 an
///         uncertainty is outside its range, times or volumes fall, a volume is beyond the charge, a row
///         without a volume has no power, or `distil` refuses a run of the still
/// @par Accuracy
/// Of the search: a hundredth of a standard uncertainty. Of the forecast: that of `distil`, interpolated
/// between 150 states. The intervals hold the true value in 90 to 98 % of simulated runs.
/// @par Source
/// Least squares after K. Levenberg, Quarterly of Applied Mathematics 2 (1944) 164 and D. Marquardt, Journal
/// of the Society for Industrial and Applied Mathematics 11 (1963) 431 (from memory); types A and B as
/// `estimate_stages`
template <boiling_mixture M, std::predicate<learning_progress> Progress>
learned_still learn_still(still const& known, std::span<run_log const> logs,
                          std::span<still_unknown const> unknowns, log_uncertainties const& u,
                          M const& mixture, Progress const& progress) {
    return detail::log_fit<M, Progress>(known, logs, unknowns, u, mixture, progress).learn();
}

/// The same without progress.
/// @param known    as above
/// @param logs     as above
/// @param unknowns as above
/// @param u        as above
/// @param mixture  as above
/// @return as above
/// @throws refusal as above
template <boiling_mixture M>
learned_still learn_still(still const& known, std::span<run_log const> logs,
                          std::span<still_unknown const> unknowns, log_uncertainties const& u,
                          M const& mixture) {
    return learn_still(known, logs, unknowns, u, mixture, [](learning_progress const&) { return true; });
}

// --- stages from single strengths
// ---------------------------------------------------------------------------

/// Effective stages of a still's column from earlier runs, for the next forecast. They have the least sum of
/// squares of forecast less measured strength. Pot and neck do not count.
///
/// One run gives one strength, which determines only one unknown: the reflux must be known or assumed.
/// `reflux_candidates` shows which other assumptions would also fit.
///
/// The range is that of one standard uncertainty. Each strength counts with the stated uncertainty (type B),
/// or with the scatter of the runs about the fit (type A, as many degrees of freedom as there are runs, less
/// one) if that is larger, so contradictory runs give a wide range. If the most stages fit best, the range
/// holds the stages that explain the runs at 95 %.
/// @param past        one run or more, all on the same still
/// @param returned    reflux of the runs, a constant ratio
/// @param n           the still's neck
/// @param uncertainty standard uncertainty of each of the measured strengths, 0.01 to 5 % vol
/// @param mixture     the equilibrium at the pressure of the day
/// @return the stages, their range, and whether they explain the runs
/// @throws refusal if there is no run, a charge holds no ethanol or is not below the azeotrope, a volume
///         is not positive or larger than possible, or the mean strength is outside the strengths of a bare
///         pot to 20 stages, which are the bounds of the error
/// @par Accuracy
/// Of the search: 1e-4 stages. Of the forecast strengths: 2e-5 % vol from those of `distil`.
/// @par Source
/// Type A and type B: JCGM 100:2008 (GUM), 4.2 and 4.3, from memory
template <boiling_mixture M>
stage_estimate estimate_stages(std::span<past_run const> past, reflux const& returned, neck const& n,
                               double uncertainty, M const& mixture) {
    detail::stage_fit<M> const fit(past, uncertainty, mixture);
    detail::known_still const known{returned, n};
    stage_estimate const e = fit.estimate(known);
    if (e.explains) return e;
    double const weakest = fit.measured() + fit.misses(0.0, known).mean;
    double const strongest = fit.measured() + fit.misses(most_estimated_stages, known).mean;
    require_range("estimate of stages", argument::measured_strength, fit.measured(), volume_fraction::unit,
                  weakest, strongest,
                  "from a bare pot to 20 stages with " + detail::reflux_in_words(returned) +
                      " and the same volume collected");
    return e;
}

/// The stages nearest to the measurements for each of several reflux ratios. The more ratios explain the
/// measurements, the less the data distinguish reflux from stages.
/// @param past        one run or more, all on the same still and with the same reflux
/// @param ratios      reflux ratios to try
/// @param n           the still's neck
/// @param uncertainty standard uncertainty of each of the measured strengths, 0.01 to 5 % vol
/// @param mixture     the equilibrium at the pressure of the day
/// @param progress    callable: std::size_t -> void; called after each ratio with the number of ratios tried
/// @return the ratios in their order, each with its nearest stages, explaining or not
/// @throws refusal as `estimate_stages`, except for the strength: a ratio that cannot give it has a
/// disagreement instead
template <boiling_mixture M, std::invocable<std::size_t> Progress>
[[nodiscard]] std::vector<still_candidate>
nearest_stages(std::span<past_run const> past, std::span<double const> ratios, neck const& n,
               double uncertainty, M const& mixture, Progress const& progress) {
    detail::stage_fit<M> const fit(past, uncertainty, mixture);
    std::vector<still_candidate> result;
    for (double const ratio : ratios) {
        result.push_back({ratio, fit.estimate({reflux::constant(ratio), n})});
        progress(result.size());
    }
    return result;
}

/// The same without progress.
/// @param past        as above
/// @param ratios      as above
/// @param n           as above
/// @param uncertainty as above
/// @param mixture     as above
/// @return as above
/// @throws refusal as above
template <boiling_mixture M>
[[nodiscard]] std::vector<still_candidate> nearest_stages(std::span<past_run const> past,
                                                          std::span<double const> ratios, neck const& n,
                                                          double uncertainty, M const& mixture) {
    return nearest_stages(past, ratios, n, uncertainty, mixture, [](std::size_t) {});
}

/// The pairs of reflux and stages that explain the measurements.
/// @param past        as `nearest_stages`
/// @param ratios      as `nearest_stages`
/// @param n           as `nearest_stages`
/// @param uncertainty as `nearest_stages`
/// @param mixture     as `nearest_stages`
/// @return the ratios with which some number of stages explains the runs, with those stages
/// @throws refusal as `nearest_stages`
template <boiling_mixture M>
[[nodiscard]] std::vector<still_candidate> reflux_candidates(std::span<past_run const> past,
                                                             std::span<double const> ratios, neck const& n,
                                                             double uncertainty, M const& mixture) {
    std::vector<still_candidate> result;
    for (still_candidate const& c : nearest_stages(past, ratios, n, uncertainty, mixture))
        if (c.estimate.explains) result.push_back(c);
    return result;
}

}  // namespace aqueth::inline AQUETH_ABI
