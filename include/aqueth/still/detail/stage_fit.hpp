// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/minimum.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/numeric/probability.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/still/detail/boiling_down.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/still/learned.hpp>
#include <aqueth/still/run_log.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <string>

/// @file
/// The fit of a number of stages to the strengths of past runs.

namespace aqueth::inline AQUETH_ABI::detail {

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

}  // namespace aqueth::inline AQUETH_ABI::detail
