// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/numeric/runge_kutta.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/detail/batch_run.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/still/run.hpp>
#include <aqueth/still/run_log.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/wash.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

/// @file
/// The strengths of many past runs from one integration, for the search for stages.

namespace aqueth::inline AQUETH_ABI::detail {

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
        double const d = batch_.top((std::max)(y[0], 1e-300), 1.0).d;
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

}  // namespace aqueth::inline AQUETH_ABI::detail
