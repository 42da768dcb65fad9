// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/minimum.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/numeric/probability.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/numeric/runge_kutta.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/detail/batch_run.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/still/run.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/wash.hpp>

#include <algorithm>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// Measurements of an earlier run.
struct past_run {
    wash charge;               ///< charge of the pot
    units::volume discarded;   ///< foreshots, at 20 °C; 0 if there were none
    units::volume collected;   ///< volume collected after them, at 20 °C, above 0
    volume_fraction strength;  ///< strength of the whole collected volume
};

/// Effective stages of a still, for one assumed reflux.
struct [[nodiscard]] stage_estimate {
    double stages;   ///< stages above the boiler that come nearest to what was measured; infinity if it is
                     ///< the most that is tried, so that no number would be too many
    double lowest;   ///< lower end of the range by the standard uncertainty, 0 or more
    double highest;  ///< its upper end; infinity if no number of stages is too many
    double disagreement;  ///< root mean square of forecast less measured strengths, % vol
    double uncertainty;  ///< standard uncertainty of one strength behind the range, % vol: the stated one, or
                         ///< the scatter of the runs if that is larger
    bool explains;       ///< whether runs and forecasts are consistent at 95 %
};

/// An assumed reflux with the fitted stages.
struct [[nodiscard]] still_candidate {
    double reflux_ratio;      ///< assumed
    stage_estimate estimate;  ///< the stages that fit with it
};

/// Greatest number of theoretical stages that an estimate tries.
inline constexpr double most_estimated_stages = 20.0;

namespace detail {

/// the known data of a still with unknown stages
struct known_still {
    reflux returned;
    aqueth::neck neck = aqueth::neck::insulated();

    /// the still with this number of stages; its power does not affect the strengths
    still of_stages(double stages) const {
        return {{1.0 * kilowatt}, column::of_stages(stages), neck, head::total_condenser(returned)};
    }
};

/// Forecast strength of a past run for this number of stages, % vol, by the full forecast. `boiling_down`
/// gives the same for many runs in a fraction of the time.
template <boiling_mixture M>
double forecast_strength(past_run const& past, double stages, known_still const& known, M const& mixture) {
    run_plan plan;
    if (past.discarded > units::volume()) plan.cuts.push_back({condition::collected(past.discarded), false});
    // a cut, because a volume at the end of the run counts from its beginning and volumes do not add
    plan.cuts.push_back({condition::collected(past.collected)});
    plan.ends.push_back(condition::collected(past.discarded + 1.001 * past.collected));
    distillation const forecast = distil(past.charge, known.of_stages(stages), plan, mixture);
    return forecast.fractions[plan.cuts.size() - 1].product.strength().percent();
}

/// One distillation from the strongest charge on. A stronger charge passes through every weaker one (the
/// column has no holdup, and the extract does not change strengths). One integration therefore serves all
/// runs of a still, for all charges and volumes.
template <boiling_mixture M>
class boiling_down {
public:
    boiling_down(wash const& strongest, double stages, known_still const& known, M const& mixture)
        : batch_(strongest, known.of_stages(stages), mixture) {}

    /// strength of the volume that a run collects, % vol; its charge is not stronger than the strongest
    double strength(past_run const& p) {
        amounts const charge(p.charge);
        double const x = charge.mole_fraction();
        moment const begin =
            first_moment({0, 0.0, state_at(0, 0.0)}, [x](moment const& m) { return x - m.x(); });
        double const moles = charge.volatiles() / std::exp(-begin.depth());
        auto const between = [moles](moment const& a, moment const& b) {
            return mass_of_moles(moles * (std::exp(-a.depth()) - std::exp(-b.depth())),
                                 moles * (b.ethanol() - a.ethanol()));
        };
        auto const collected = [&](moment const& since, units::volume volume) {
            return first_moment(since,
                                [&](moment const& m) { return between(since, m).volume() - volume.value(); });
        };
        moment const kept = p.discarded > units::volume() ? collected(begin, p.discarded) : begin;
        mass_fraction const found(between(kept, collected(kept, p.collected)).fraction);
        return to<volume_fraction>(found).percent();
    }

private:
    /// composition in the still, ethanol that has come over for each mole of the strongest charge, and depth:
    /// ln of those moles over what is left of them
    using unknowns = numeric::state<3>;
    using rk = numeric::rk_step<3>;

    struct moment {
        std::size_t step;
        double theta;  ///< position in the step, 0 to 1
        unknowns y;
        double x() const { return y[0]; }
        double ethanol() const { return y[1]; }
        double depth() const { return y[2]; }
    };

    unknowns slopes(unknowns const& y) const {
        double const d = batch_.top((std::max)(y[0], 1e-300)).first;
        return {y[0] - d, std::exp(-y[2]) * d, 1.0};
    }
    void boil_on() {
        unknowns const y = steps_.empty() ? unknowns{batch_.x(), 0.0, 0.0} : steps_.back().end;
        unknowns const slope = steps_.empty() ? slopes(y) : steps_.back().slope;
        unknowns const scale{y[0] + (std::min)(0.01, 0.1 * batch_.x()), batch_.x(), 1.0};
        auto const f = [this](double, unknowns const& at) { return slopes(at); };
        for (;;) {
            double const tried = length_;
            rk const step = numeric::dormand_prince(f, 0.0, y, slope, tried, scale);
            length_ = numeric::next_step(tried, step.error, tolerance);
            if (step.error > tolerance && tried > 1e-12) continue;
            steps_.push_back(step);
            return;
        }
    }
    unknowns state_at(std::size_t step, double theta) {
        if (step == steps_.size()) boil_on();
        return steps_[step].at(theta);
    }
    /// the first moment from `since` on at which a rising function reaches zero from below
    template <class F>
    moment first_moment(moment const& since, F const& figure) {
        moment before = since;
        for (std::size_t k = since.step;; ++k) {
            moment const end{k, 1.0, state_at(k, 1.0)};
            if (figure(end) < 0.0) {
                before = {k + 1, 0.0, end.y};
                continue;
            }
            auto const miss = [&](double theta) { return figure({k, theta, state_at(k, theta)}); };
            double const theta = numeric::bracketed_root(miss, before.theta, 1.0, 1e-13);
            return std::isnan(theta) ? before
                                     : moment{k, theta, state_at(k, theta)};  // NaN: it is zero at once
        }
    }

    static constexpr double tolerance = 1e-9;  // of a step, as in a run
    batch_still<M> batch_;
    std::vector<rk> steps_;
    double length_ = 0.01;
};

inline std::string reflux_in_words(reflux const& r) { return "reflux " + numeric::text_of(r.ratio(), 6); }

/// differences of forecast and measured strengths, in % vol
struct forecast_misses {
    double mean;     ///< mean of forecast less measured
    double squares;  ///< sum of their squares
};

/// Checked past runs, and the fit of a number of stages to them.
template <boiling_mixture M>
class stage_fit {
public:
    stage_fit(std::span<past_run const> past, double uncertainty, M const& mixture)
        : past_(past), stated_(uncertainty), mixture_(mixture) {
        double const azeotrope = column_solver<M>::azeotrope(mixture);
        auto const percent_vol = [](double x) { return to<volume_fraction>(mole_fraction(x)).percent(); };
        require_range("estimate of stages", argument::number_of_past_runs, count(), "", 1.0, 1e4);
        require_range("estimate of stages", argument::uncertainty_of_the_strength, uncertainty, "% vol", 0.01,
                      5.0);
        for (past_run const& p : past) {
            require_range("estimate of stages", argument::mass_of_the_charge, p.charge.mass().value(), "kg",
                          1e-6, unlimited);
            double const x = amounts(p.charge).mole_fraction();
            require_range("estimate of stages", argument::strength_of_the_charge, percent_vol(x),
                          volume_fraction::unit, percent_vol(1e-5), percent_vol(azeotrope - 1e-6),
                          "from some ethanol to below the azeotrope");
            require_range("estimate of stages", argument::discarded_volume, in(p.discarded, litre), "L", 0.0,
                          unlimited);
            require_range("estimate of stages", argument::collected_volume, in(p.collected, litre), "L", 1e-6,
                          unlimited);
            units::volume const most = 0.97 * p.charge.liquid().volume(celsius(20)) - p.discarded;
            if (p.collected >= most) {
                raise_error(refusal("estimate of stages", argument::collected_volume, in(p.collected, litre),
                                    "L", 0.0, in(most, litre),
                                    "the charge less the first fraction and what must stay in the pot"));
            }
            measured_ += p.strength.percent() / count();
            if (x > amounts(strongest().charge).mole_fraction())
                strongest_ = static_cast<std::size_t>(&p - past.data());
        }
    }

    double measured() const { return measured_; }  ///< mean of the measured strengths, % vol

    forecast_misses misses(double stages, known_still const& known) const {
        boiling_down<M> still(strongest().charge, stages, known, mixture_);
        forecast_misses sum{0.0, 0.0};
        for (past_run const& p : past_) {
            double const miss = still.strength(p) - p.strength.percent();
            sum.mean += miss / count();
            sum.squares += miss * miss;
        }
        return sum;
    }

    /// The stages with the least sum of squares, whether or not they explain the runs.
    stage_estimate estimate(known_still const& known) const {
        double const most = most_estimated_stages;
        auto const squares = [&](double stages) { return misses(stages, known).squares; };
        double best = 0.0, least = squares(0.0);
        double const at_most = squares(most);
        for (double n = 1.0; n <= most; n += 1.0) {  // contradictory runs can cause two minima
            double const s = n < most ? squares(n) : at_most;
            if (s < least) {
                best = n;
                least = s;
            }
        }
        double const stages =
            numeric::minimum(squares, (std::max)(0.0, best - 1.0), (std::min)(most, best + 1.0), 1e-5);
        if (squares(stages) < least) {
            best = stages;
            least = squares(stages);
        }
        double const freedom = (std::max)(1.0, count() - 1.0);
        double const found = count() > 1.0 ? std::sqrt(least / freedom) : 0.0;  // one run has no scatter
        double const u = (std::max)(stated_, found);
        double const explained = stated_ * stated_ * numeric::chi_squared_quantile(0.95, freedom);
        // In the range the sum of squares exceeds its minimum by at most one squared standard uncertainty of
        // a strength. For one run that is the stages for the strength plus and minus the uncertainty. If the
        // most stages are as good as the best, the sum has no minimum inside. The range is then the stages
        // that explain the runs, or, if none do, those as good as the most stages.
        double const negligible = 1e-6 * u * u;
        bool const flat = at_most - least <= negligible;
        double const allowed = flat ? (std::max)(least + negligible, explained) : least + u * u;
        auto const beyond = [&](double n) { return squares(n) - allowed; };
        double const lowest = beyond(0.0) <= 0.0 ? 0.0 : numeric::bracketed_root(beyond, 0.0, best, 1e-5);
        double const highest =
            at_most <= allowed ? unlimited : numeric::bracketed_root(beyond, best, most, 1e-5);
        return {flat ? unlimited : best, lowest, highest, std::sqrt(least / count()), u, least <= explained};
    }

private:
    double count() const { return static_cast<double>(past_.size()); }
    past_run const& strongest() const { return past_[strongest_]; }

    std::span<past_run const> past_;
    double stated_;
    M const& mixture_;
    double measured_ = 0.0;
    std::size_t strongest_ = 0;
};

}  // namespace detail

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
