// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/model/traces.hpp>
#include <aqueth/still/detail/holdup_run.hpp>
#include <aqueth/still/detail/trace_run.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

/// @file
/// Traces beside a run whose plates and condenser hold liquid. The notation is that of `holdup_run.hpp`.

namespace aqueth::inline AQUETH_ABI::detail {

// The equations for one trace: t is its mole fraction where ethanol has x, t' where ethanol has y, K its
// volatility.
//
//     t'0 = K(x0) m / n                                  m moles of the trace in the pot
//     t'i = (1 - Ei) t'(i-1) + Ei K(xi) ti
//     neck: t'N = s1 tl1 + (1 - s1) K(l1) tl1; partial condenser alike, td2 comes to the condenser
//     X   = v (s1 tl1 + (1 - s1) s2 tl2) + r tc + (1 - v) t'N        runs to the topmost plate
//     dm/dw = phi t1 - t'0;  Ui dti/dw = t'(i-1) - t'i + phi (t(i+1) - ti);  Uc dtc/dw = (r + e)(td2 - tc)
//     collected: e tc
//
// They are linear, and stiff for volatile traces. The method is the L-stable one of second order with two
// stages (R. Alexander, SIAM J. Numer. Anal. 14 (1977) 1006; from memory), in the run's own steps, which
// are far shorter than traces need. Each stage conserves the trace, so the balance closes to rounding.

/// implicit part of both stages, 1 - 1/sqrt(2)
inline constexpr double held_trace_gamma = 0.2928932188134525;
/// parts of a step at which the stages lie
inline constexpr std::array<double, 2> held_trace_stages{held_trace_gamma, 1.0};

/// Volatilities and flows at a stage, for one trace.
struct held_trace_rates {
    trace_figures pot;                 ///< K(x0) / n
    std::vector<trace_figures> plate;  ///< Ei K(xi)
    trace_figures back;                ///< X - r tc for each t'N
    trace_figures top;                 ///< td2 for each t'N
};

/// A trace in a column that holds liquid: in the pot, on the plates and in the condenser.
class held_trace {
public:
    /// @param liquid the moles held
    /// @param begin  what is in the pot, and on the plates and in the condenser for each mole
    held_trace(held_liquid const& liquid, std::vector<trace_figures> begin)
        : liquid_(&liquid), u_(std::move(begin)), p_(u_), q_(u_), first_(u_) {}
    /// Plates and condenser have been filled with the first vapour of the charge.
    /// @param liquid     the moles held
    /// @param volatility over the charge
    /// @param moles      of the charge
    held_trace(held_liquid const& liquid, trace_figures const& volatility, double moles)
        : held_trace(liquid, std::vector<trace_figures>(liquid.plate.size() + 2)) {
        double const held = liquid.all();
        for (std::size_t c = 0; c < trace_cases; ++c) {
            u_.front()[c] = std::exp(volatility[c] * std::log1p(-held / moles));  // Rayleigh's closed form
            for (std::size_t k = 1; k < u_.size(); ++k) u_[k][c] = (1.0 - u_.front()[c]) / held;
        }
    }

    trace_figures const& collected() const { return collected_; }    ///< part of the charge's trace
    trace_figures const& in_condenser() const { return u_.back(); }  ///< part of it for each mole

    /// Takes a step of the run.
    /// @param length its length
    /// @param rates  at the stages
    /// @param flows  at the stages
    /// @param inside receives what is in the condenser at the first stage
    void step(double length, std::array<held_trace_rates, 2> const& rates,
              std::array<head_flows, 2> const& flows, trace_figures& inside) {
        constexpr double g = held_trace_gamma;
        first_ = u_;
        solve(g * length, rates[0], flows[0], first_);
        inside = first_.back();
        for (std::size_t k = 0; k < u_.size(); ++k)
            for (std::size_t c = 0; c < trace_cases; ++c)
                u_[k][c] += (1.0 - g) / g * (first_[k][c] - u_[k][c]);
        solve(g * length, rates[1], flows[1], u_);
        for (std::size_t c = 0; c < trace_cases; ++c) {
            collected_[c] +=
                length * ((1.0 - g) * flows[0].taken * first_.back()[c] + g * flows[1].taken * u_.back()[c]);
        }
    }

private:
    /// Solves M (u - known) = reach du/dw for u, which comes as what is known. Going up, each unknown is
    /// written as p + q X with what comes down to it, not known yet.
    void solve(double reach, held_trace_rates const& k, head_flows const& f, std::vector<trace_figures>& u) {
        std::size_t const number = liquid_->plate.size();
        double const phi = 1.0 - f.taken;
        double const flow = reach * f.condensed();
        double const all = liquid_->condenser + flow;
        for (std::size_t c = 0; c < trace_cases; ++c) {
            double const pot = 1.0 + reach * k.pot[c];
            p_[0][c] = u[0][c] / pot;
            q_[0][c] = reach / pot;
            double a = k.pot[c] * p_[0][c];  // the vapour is a + b X
            double b = k.pot[c] * q_[0][c];
            for (std::size_t i = 1; i <= number; ++i) {
                double const held = liquid_->plate[i - 1], e = liquid_->efficiency[i - 1];
                double const gain = k.plate[i - 1][c];
                double const inverse = 1.0 / (held + reach * (phi * (1.0 - e * b) + gain));
                p_[i][c] = (held * u[i][c] + reach * e * a) * inverse;
                q_[i][c] = reach * inverse;
                double const w = (1.0 - e) * b * phi + gain;
                a = (1.0 - e) * a + w * p_[i][c];
                b = w * q_[i][c];
            }
            double const known = liquid_->condenser * u.back()[c] / all;
            double const by_top = flow * k.top[c] / all;  // of what is in the condenser, for each t'N
            double const down = k.back[c] + f.returned() * by_top;
            double x = (f.returned() * known + down * a) / (1.0 - down * b);
            u.back()[c] = known + by_top * (a + b * x);
            for (std::size_t i = number; i > 0; --i) {
                u[i][c] = p_[i][c] + q_[i][c] * x;
                x = phi * u[i][c];
            }
            u[0][c] = p_[0][c] + q_[0][c] * x;
        }
    }

    held_liquid const* liquid_;
    std::vector<trace_figures> u_;  // m, t1 ... tN, tc
    trace_figures collected_{};
    std::vector<trace_figures> p_, q_, first_;  // work space
};

/// Traces in a run with holdup, each as parts of what the charge holds.
class held_trace_history {
    struct course {
        trace_figures left;  // not collected, where the step begins
        std::array<trace_figures, 3>
            over;  // in the condenser for each mole: at the begin, the first stage, the end
    };
    struct step {
        double distilled, length;  // moles
        std::size_t first;         // its courses
    };

public:
    /// A moment of the run, from which the traces are read.
    class moment {
    public:
        /// @param i which trace
        /// @return part of the charge's trace that has not been collected; at the ends of steps
        trace_figures left(std::size_t i) const {
            trace_figures result = at(i).left;
            if (theta_ > 0.0) {
                trace_figures const& end = history_.end_of(step_, i);
                for (std::size_t c = 0; c < trace_cases; ++c) result[c] += theta_ * (end[c] - result[c]);
            }
            return result;
        }
        /// @param i which trace
        /// @return what comes over: part of the charge's trace for each mole of distillate
        trace_figures over(std::size_t i) const {
            auto const& o = at(i).over;
            constexpr double g = held_trace_gamma;  // parabola through 0, g and 1
            double const t = theta_;
            double const begin = (t - g) * (t - 1.0) / g, inside = t * (t - 1.0) / (g * (g - 1.0)),
                         end = t * (t - g) / (1.0 - g);
            trace_figures result{};
            for (std::size_t c = 0; c < trace_cases; ++c)
                result[c] = (std::max)(0.0, begin * o[0][c] + inside * o[1][c] + end * o[2][c]);
            return result;
        }

    private:
        friend class held_trace_history;
        moment(held_trace_history const& history, step const& s, double theta)
            : history_(history), step_(s), theta_(theta) {}
        course const& at(std::size_t i) const { return history_.courses_[step_.first + i]; }
        held_trace_history const& history_;
        step const& step_;
        double theta_;
    };

    /// Follows the traces along the steps of a run.
    template <boiling_mixture M>
    held_trace_history(M const& mixture, std::vector<trace> const& which,
                       batch_history<held_still<M>> const& history)
        : number_(which.size()) {
        trace_volatilities<M> const volatilities(mixture, mixture.pressure().value());
        std::vector<held_trace> traces;
        std::array<stage, 2> stages;
        std::array<head_flows, 2> flows;
        std::array<held_trace_rates, 2> rates;
        history.for_each_step([&](double, double length, held_still<M> const& still, auto const& part) {
            held_liquid const& liquid = still.column().liquid();
            if (traces.empty()) {
                for (trace const each : which)
                    traces.emplace_back(liquid, volatilities.of(each, volatilities.boiling(still.x())),
                                        still.moles());
                left_.assign(number_, {1.0, 1.0, 1.0});
            }
            double const begin = steps_.empty() ? 0.0 : steps_.back().distilled + steps_.back().length;
            double end = begin;
            for (std::size_t s = 0; s < stages.size(); ++s) {
                held_point const p = part(held_trace_stages[s]);
                stages[s].set(volatilities, still, p);
                flows[s] = stages[s].flows;
                end = p.distilled;
            }
            steps_.push_back({begin, end - begin, courses_.size()});
            for (std::size_t i = 0; i < number_; ++i) {
                courses_.push_back({left_[i], {}});
                course& now = courses_.back();
                for (std::size_t s = 0; s < stages.size(); ++s)
                    stages[s].set(rates[s], volatilities, which[i], liquid);
                now.over[0] = traces[i].in_condenser();
                traces[i].step(length, rates, flows, now.over[1]);
                now.over[2] = traces[i].in_condenser();
                for (std::size_t c = 0; c < trace_cases; ++c) left_[i][c] = 1.0 - traces[i].collected()[c];
            }
        });
    }

    /// @param distilled moles of distillate
    /// @return the moment when so much had been distilled
    moment at_distilled(double distilled) const {
        auto const after = std::upper_bound(steps_.begin(), steps_.end(), distilled,
                                            [](double value, step const& s) { return value < s.distilled; });
        step const& s = after == steps_.begin() ? steps_.front() : *(after - 1);
        double const theta = s.length > 0.0 ? (distilled - s.distilled) / s.length : 0.0;
        return {*this, s, (std::min)(1.0, (std::max)(0.0, theta))};
    }

private:
    /// liquids and flows at a stage of the method
    struct stage {
        head_flows flows;
        double in_pot = 1.0;
        boiled_liquid pot, neck, back;
        std::vector<boiled_liquid> plates;

        template <class Volatilities, class Still>
        void set(Volatilities const& v, Still const& still, held_point const& p) {
            column_moment const& m = still.moment(p);
            flows = m.flows;
            auto const within = [](double x) { return (std::min)(1.0, (std::max)(0.0, x)); };
            in_pot = p.left;
            pot = v.boiling(within(p.x()));
            if (flows.neck > 0.0) neck = v.boiling(within(m.neck_liquid));
            if (flows.partial > 0.0) back = v.boiling(within(m.back));
            plates.resize(still.column().liquid().plate.size());
            for (std::size_t i = 0; i < plates.size(); ++i)
                plates[i] = v.boiling(within(p.y[held::plates + i]));
        }
        /// sets the rates of a trace
        template <class Volatilities>
        void set(held_trace_rates& r, Volatilities const& v, trace which, held_liquid const& liquid) const {
            trace_figures const in_the_pot = v.of(which, pot);
            trace_figures const at_neck = flows.neck > 0.0 ? v.of(which, neck) : trace_figures{1.0, 1.0, 1.0};
            trace_figures const at_head =
                flows.partial > 0.0 ? v.of(which, back) : trace_figures{1.0, 1.0, 1.0};
            for (std::size_t c = 0; c < trace_cases; ++c) {
                r.pot[c] = in_the_pot[c] / in_pot;
                double const first =
                    1.0 / (flows.neck + (1.0 - flows.neck) * at_neck[c]);  // tl1 for each t'N
                double const second =
                    at_neck[c] * first / (flows.partial + (1.0 - flows.partial) * at_head[c]);
                r.top[c] = at_head[c] * second;
                r.back[c] =
                    flows.enters * (flows.neck * first + (1.0 - flows.neck) * flows.partial * second) + 1.0 -
                    flows.enters;
            }
            r.plate.resize(plates.size());
            for (std::size_t i = 0; i < plates.size(); ++i) {
                trace_figures const k = v.of(which, plates[i]);
                for (std::size_t c = 0; c < trace_cases; ++c) r.plate[i][c] = liquid.efficiency[i] * k[c];
            }
        }
    };

    trace_figures const& end_of(step const& s, std::size_t i) const {
        std::size_t const next = s.first + number_ + i;
        return next < courses_.size() ? courses_[next].left : left_[i];
    }

    std::size_t number_;
    std::vector<trace_figures> left_;  // at the end of the last step
    std::vector<step> steps_;
    std::vector<course> courses_;
};

}  // namespace aqueth::inline AQUETH_ABI::detail
