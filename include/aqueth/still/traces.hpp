// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/traces.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/still/detail/held_trace_run.hpp>
#include <aqueth/still/detail/trace_run.hpp>
#include <aqueth/still/run.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <utility>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// A trace in the charge of a still.
struct trace_amount {
    trace which;       ///< the substance
    units::mass mass;  ///< how much the charge holds

    /// @param which            the substance
    /// @param charge           the charge
    /// @param per_pure_alcohol mass for each volume of pure alcohol at 20 °C: 1 g/hL is 0.01 g/L
    /// @return how much the charge holds
    static trace_amount of_alcohol(trace which, wash const& charge, units::mass_density per_pure_alcohol) {
        return {which, per_pure_alcohol * charge.liquid().pure_alcohol()};
    }
};

/// A figure with its error band: what follows if the volatility of the trace is everywhere as stated, or
/// everywhere lower or higher by its band.
template <class Quantity>
struct banded {
    Quantity expected;  ///< with the volatility as stated
    Quantity lower;     ///< the least of the three
    Quantity upper;     ///< the greatest of the three
};

/// A trace at one of the recorded states of a run.
struct trace_point {
    banded<units::mass_density> in_distillate;  ///< in the distillate at the moment, for each volume at 20 °C
};

/// Where a trace of the charge went.
struct [[nodiscard]] trace_course {
    trace_amount charged;                        ///< what the charge held
    std::vector<banded<units::mass>> fractions;  ///< in each fraction
    banded<units::mass> residue;                 ///< what stays in the still
    std::vector<trace_point> points;             ///< at the states that the run recorded
};

/// A run and its traces.
struct [[nodiscard]] traced_distillation {
    distillation run;                  ///< as `distil` has it
    std::vector<trace_course> traces;  ///< in the order they were given
};

/// Mass of a trace for each volume of pure alcohol at 20 °C: 1 kg/m3 is 100 g/hL.
/// @param mass  of the trace
/// @param spirit what holds it, stronger than water
/// @return the concentration
/// @throws refusal if the spirit holds no alcohol
[[nodiscard]] inline units::mass_density per_pure_alcohol(units::mass mass, parcel const& spirit) {
    require_range("concentration of a trace", argument::amount_of_ethanol, spirit.ethanol().value(), "kg",
                  1e-9, unlimited);
    return mass / spirit.pure_alcohol();
}
/// The same for a figure with its band.
/// @param mass  of the trace
/// @param spirit what holds it, stronger than water
/// @return the concentration
/// @throws refusal if the spirit holds no alcohol
[[nodiscard]] inline banded<units::mass_density> per_pure_alcohol(banded<units::mass> const& mass,
                                                                  parcel const& spirit) {
    return {per_pure_alcohol(mass.expected, spirit), per_pure_alcohol(mass.lower, spirit),
            per_pure_alcohol(mass.upper, spirit)};
}

namespace detail {

/// figures for the three volatilities, put in order
template <class Quantity>
banded<Quantity> in_order(std::array<double, trace_cases> const& figures, Quantity const& unit) {
    auto const [least, greatest] = std::minmax_element(figures.begin(), figures.end());
    return {figures[0] * unit, *least * unit, *greatest * unit};
}

/// follows the traces along the steps of a run without holdup
template <boiling_mixture M>
trace_history follow(M const& mixture, std::vector<trace> const& which,
                     batch_history<batch_still<M>> const& history) {
    still const& s = history.batch(history.starts().front()).apparatus();
    trace_column<M> column(mixture, s.tower, s.flow, mixture.pressure().value());
    trace_history result(which, history.batch(history.starts().front()).moles());
    batch_still<M> const* last = nullptr;  // a step of the plan makes another one
    history.for_each_step([&](double depth, double length, batch_still<M> const& batch, auto const& part) {
        result.add(depth, length, &batch == last, column, [&](double theta) {
            batch_point const p = part(theta);
            double const x = (std::max)(p.x(), 1e-300);
            still_top const top = batch.top(x, p.left);
            return column_moment_of_run{x, top.d, top.phi, top.above.shares.neck, top.above.shares.head};
        });
        last = &batch;
    });
    return result;
}
/// the same with holdup
template <boiling_mixture M>
held_trace_history follow(M const& mixture, std::vector<trace> const& which,
                          batch_history<held_still<M>> const& history) {
    return held_trace_history(mixture, which, history);
}

}  // namespace detail

/// Distils a charge in batch and follows traces of other substances: through pot, column, neck and head
/// into the fractions.
///
/// A trace changes nothing in the run. It boils by its volatility in the ethanol and water around it, and
/// it neither forms nor reacts while it boils. Extract does not change its volatility.
/// @param charge   the wash, as for `distil`
/// @param amounts  the traces and how much of them the charge holds; may be empty
/// @param s        the still
/// @param plan     cuts, ends and points
/// @param mixture  the equilibrium at the pressure of the day, 80 to 110 kPa: a `boiling_curve`
/// @param progress callable: run_progress -> void
/// @return the run, and of each trace the mass in fractions and residue with its band
/// @throws refusal as `distil`; if an amount is negative, a trace is not one of `all_traces`, there are more
///         than 1000, or the pressure is out of range
/// @par Accuracy
/// Of the integration 1e-5 of the charge; mass is conserved to rounding. Of the volatility: the band of
/// each figure. No measured batch was found to check a whole run: @ref traces.
/// @par Source
/// @ref source_traces
template <boiling_mixture M, std::invocable<run_progress> Progress>
traced_distillation distil_with_traces(wash const& charge, std::vector<trace_amount> const& amounts,
                                       still const& s, run_plan const& plan, M const& mixture,
                                       Progress const& progress) {
    constexpr double most = 1000.0;
    require_range("traces", argument::index, static_cast<double>(amounts.size()), "", 0.0, most,
                  "number of traces");
    for (trace_amount const& each : amounts) {
        require_range("traces", argument::index, static_cast<double>(each.which), "", 0.0,
                      static_cast<double>(all_traces.size()) - 1.0, "number of a trace");
        require_range("traces", argument::mass, in(each.mass, gram), "g", 0.0, unlimited);
    }
    require_range("traces", argument::pressure, in(mixture.pressure(), kilopascal), "kPa",
                  model::traces::lowest_kilopascal, model::traces::highest_kilopascal,
                  "where the volatility of traces is known");
    std::vector<trace> which;
    for (trace_amount const& each : amounts) which.push_back(each.which);

    std::vector<trace_course> traces;
    for (trace_amount const& each : amounts) traces.push_back({each, {}, {}, {}});
    std::vector<detail::trace_figures> over;  // at the points, for each mole of distillate
    auto const watch = [&](auto const& history) {
        auto const course = detail::follow(mixture, which, history);
        for (std::size_t k = 0; k < history.ends().size(); ++k) {
            auto const begin = course.at_distilled(history.starts()[k].distilled);
            auto const end = course.at_distilled(history.ends()[k].distilled);
            for (std::size_t i = 0; i < traces.size(); ++i) {
                auto gone = begin.left(i);
                auto const left = end.left(i);
                for (std::size_t c = 0; c < gone.size(); ++c) gone[c] -= left[c];
                traces[i].fractions.push_back(detail::in_order(gone, amounts[i].mass));
                traces[i].residue = detail::in_order(left, amounts[i].mass);
            }
        }
        over.reserve(traces.size() * static_cast<std::size_t>(plan.points));
        for (int k = 0; k < plan.points; ++k) {
            double const share = static_cast<double>(k) / (plan.points - 1);
            auto const now = course.at_distilled(share * history.ends().back().distilled);
            for (std::size_t i = 0; i < traces.size(); ++i) over.push_back(now.over(i));
        }
    };
    distillation run = detail::distil_watched(charge, s, plan, mixture, progress, watch);
    for (trace_course& each : traces) each.points.reserve(run.points.size());
    for (std::size_t k = 0; k < run.points.size(); ++k) {
        auto const mole_of_it =
            detail::mass_of_moles(1.0, run.points[k].distillate.value()).volume() * 1e3 * litre;
        for (std::size_t i = 0; i < traces.size(); ++i) {
            traces[i].points.push_back(
                {detail::in_order(over[k * traces.size() + i], amounts[i].mass / mole_of_it)});
        }
    }
    return {std::move(run), std::move(traces)};
}

/// The same without progress.
/// @param charge  the wash, as for `distil`
/// @param amounts the traces and how much of them the charge holds; may be empty
/// @param s       the still
/// @param plan    cuts, ends and points
/// @param mixture the equilibrium at the pressure of the day, 80 to 110 kPa: a `boiling_curve`
/// @return as above
/// @throws refusal as above
template <boiling_mixture M>
traced_distillation distil_with_traces(wash const& charge, std::vector<trace_amount> const& amounts,
                                       still const& s, run_plan const& plan, M const& mixture) {
    return distil_with_traces(charge, amounts, s, plan, mixture, [](run_progress const&) {});
}

}  // namespace aqueth::inline AQUETH_ABI
