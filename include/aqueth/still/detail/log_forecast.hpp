// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/density.hpp>
#include <aqueth/numeric/monotone_cubic.hpp>
#include <aqueth/still/detail/batch_run.hpp>
#include <aqueth/still/learned.hpp>
#include <aqueth/still/run.hpp>
#include <aqueth/still/run_log.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

/// @file
/// What a still would have written into the log of a run.

namespace aqueth::inline AQUETH_ABI::detail {

/// One reading of a log.
struct log_reading {
    log_quantity what;
    std::size_t row;
    double measured;
};

/// the readings of a log, row by row
inline std::vector<log_reading> readings_of(run_log const& log) {
    std::vector<log_reading> all;
    for (std::size_t k = 0; k < log.rows.size(); ++k) {
        log_row const& row = log.rows[k];
        auto const take = [&](log_quantity what, double value) { all.push_back({what, k, value}); };
        if (row.strength) take(log_quantity::strength, row.strength->percent());
        if (row.jar_strength) take(log_quantity::jar_strength, row.jar_strength->percent());
        if (row.head) take(log_quantity::head_temperature, row.head->celsius());
        if (row.pot) take(log_quantity::pot_temperature, row.pot->celsius());
        // The first moment is the beginning of the count, not a reading.
        bool const counts = log.power && row.elapsed && row.collected && row.collected->value() > 0.0;
        if (counts) take(log_quantity::time, in(*row.elapsed, minute));
    }
    return all;
}

/// The forecast of one run, read at the rows of its log.
class log_forecast {
public:
    /// A reading as it should have been, and how it depends on the volume at which it was taken.
    struct expected {
        double value;
        double per_litre;
    };

    /// States of a run between which the forecast interpolates. A hundred more change strengths by less than
    /// 0.002 % vol.
    static constexpr int states = 150;

    /// @param log   the log
    /// @param s     the still, with the power and the reflux of this run
    template <boiling_mixture M>
    log_forecast(run_log const& log, still const& s, M const& mixture) : log_(log) {
        distillation const run = distil(log.charge, s, plan_for(log), mixture);
        std::vector<double> volume, seconds, moles, alcohol, strength, head, pot;
        for (run_point const& p : run.points) {
            double const litres = in(p.collected, litre);
            if (!volume.empty() && !(litres > volume.back())) continue;
            volume.push_back(litres);
            // before the first distillate the column fills and may run at total reflux
            seconds.push_back((p.elapsed - run.points.front().elapsed).value());
            moles.push_back(p.distilled.value());
            alcohol.push_back(p.pure_alcohol.value());
            strength.push_back(to<volume_fraction>(p.distillate).percent());
            head.push_back(p.vapour.celsius());
            pot.push_back(p.boiling.celsius());
        }
        last_ = volume.back();
        last_second_ = seconds.back();
        volume_.emplace(seconds, volume);
        seconds_.emplace(volume, seconds);
        moles_.emplace(volume, moles);
        alcohol_.emplace(volume, alcohol);
        strength_.emplace(volume, strength);
        head_.emplace(volume, head);
        pot_.emplace(volume, pot);
    }

    expected read(log_reading const& r) const {
        double const at = litres(r.row);
        auto const of = [at](std::optional<numeric::monotone_cubic> const& curve) {
            auto const found = (*curve)(at);
            return expected{found.value, found.slope};
        };
        switch (r.what) {
        case log_quantity::strength: return of(strength_);
        case log_quantity::head_temperature: return of(head_);
        case log_quantity::pot_temperature: return of(pot_);
        case log_quantity::time: {
            expected const e = of(seconds_);
            return {e.value / 60.0, e.per_litre / 60.0};
        }
        case log_quantity::jar_strength: break;
        }
        return jar(r.row == 0 ? 0.0 : litres(r.row - 1), at);
    }

    /// rate of the distillate at a row, L/min
    double rate(std::size_t row) const { return 60.0 / (*seconds_)(litres(row)).slope; }

private:
    static run_plan plan_for(run_log const& log) {
        // A little more than the log, so that its last row lies inside.
        constexpr double more = 1.001;
        log_row const& last = log.rows.back();
        run_plan plan;
        if (last.collected) {
            plan.ends.push_back(condition::collected(more * *last.collected));
        } else {  // or until the pot is all but empty, which a slower still would not have been
            // the time that a column takes to fill comes on top
            plan.ends.push_back(condition::elapsed(log.start + 1.1 * *last.elapsed + 30.0 * minute));
            plan.ends.push_back(condition::collected(0.97 * log.charge.liquid().volume(celsius(20))));
        }
        plan.start = log.start;
        plan.steps = log.steps;
        plan.points = states;
        return plan;
    }

    double litres(std::size_t row) const {
        log_row const& r = log_.rows[row];
        double const v = r.collected ? in(*r.collected, litre)
                                     : (*volume_)((std::min)(r.elapsed->value(), last_second_)).value;
        return (std::min)(v, last_);
    }

    expected jar(double from, double to_) const {
        double const moles = (*moles_)(to_).value - (*moles_)(from).value;
        double const alcohol = (*alcohol_)(to_).value - (*alcohol_)(from).value;  // m3 at 20 °C
        static double const moles_per_m3 =
            density(mass_fraction(1.0), celsius(20)).value() * 1e3 / correlation::molar_mass::ethanol;
        mass_fraction const w(mass_of_moles(moles, alcohol * moles_per_m3).fraction);
        double const mean = to<volume_fraction>(w).percent();
        double const width = to_ - from;
        return {mean, std::hypot((*strength_)(to_).value - mean, mean - (*strength_)(from).value) / width};
    }

    run_log const& log_;
    double last_ = 0.0, last_second_ = 0.0;
    std::optional<numeric::monotone_cubic> volume_, seconds_, moles_, alcohol_, strength_, head_, pot_;
};

}  // namespace aqueth::inline AQUETH_ABI::detail
