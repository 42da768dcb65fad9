// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/model/traces.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/detail/column_solver.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

/// @file
/// Traces beside a run. Plain numbers: mole fractions, K, Pa. A trace changes nothing in the run, so its
/// balances are linear, and the run is computed first.

namespace aqueth::inline AQUETH_ABI::detail {

// The equations for one trace. It has the mole fraction ti in the liquid where ethanol has xi, and t'i in
// the vapour where ethanol has yi; K(x) is its volatility.
//
//     t'0 = K(x0) t0                                        over the pot
//     t'(n-1) = phi tn + (1 - phi) td                       balance from a stage to the distillate td
//     t'n = (1 - E) t'(n-1) + E K(xn) tn                    Murphree's efficiency
//     t'N = s tl + (1 - s) K(xl) tl                         neck, and likewise a partial condenser
//     dm/du = -(td / t0) m                                  m moles of it in the pot, u depth of the run
//
// Going up, t'n = a + b td with a > 0 and b <= 0, both sums of terms of one sign, so no digits are lost. At
// the top td = c (a + b td).

/// Composition and flows at a moment of a column that holds no liquid.
struct column_moment_of_run {
    double x;        ///< pot
    double d;        ///< distillate
    double phi;      ///< internal reflux
    double neck;     ///< share of the vapour that condenses in the neck
    double partial;  ///< share that condenses in a partial condenser
};

/// The three volatilities that a trace is followed with: as stated, lower and higher by the error band.
inline constexpr std::size_t trace_cases = 3;

/// A trace for each of the volatilities.
using trace_figures = std::array<double, trace_cases>;

/// a liquid at its bubble point
struct boiled_liquid {
    double x = 0.5;
    double kelvin = 0.0;
    double z = 0.0;  // of the short form of the activity coefficients
};

/// The volatilities of traces over boiling liquids.
template <boiling_mixture M>
class trace_volatilities {
public:
    trace_volatilities(M const& mixture, double pascals)
        : mixture_(mixture), ln_pascals_(std::log(pascals)) {}

    boiled_liquid boiling(double x) const {
        return {x, mixture_.temperature(x), x / (x + model::traces::skew * (1.0 - x))};
    }
    /// @return the volatility as stated, lower and higher by its band
    trace_figures of(trace which, boiled_liquid const& l) const {
        auto const& c = model::traces::of(which);
        double const ln = (1.0 - l.z) * (c.in_water + c.bend * l.z) + l.z * c.in_ethanol +
                          model::traces::ln_pressure(c, l.kelvin) - ln_pascals_;
        double const k = std::exp(ln);
        double const band = 1.0 + model::traces::band(which, l.x);
        return {k, k / band, k * band};
    }

private:
    M const& mixture_;
    double ln_pascals_;
};

/// The liquids in a column at one moment, and what traces do there.
template <boiling_mixture M>
class trace_column {
public:
    trace_column(M const& mixture, column const& c, flow_model flow, double pascals)
        : mixture_(mixture),
          flow_(flow),
          volatilities_(mixture, pascals),
          azeotrope_(column_solver<M>::azeotrope(mixture)) {
        for (int n = 0; n < c.whole(); ++n) stages_.push_back({c.efficiency(), 1.0, {}});
        if (c.topmost() > 0.0) stages_.push_back({c.topmost(), 1.0, {}});
    }

    /// Finds the liquids of a moment.
    void settle(column_moment_of_run const& at) {
        at_ = at;
        pot_ = boiling(at.x);
        column_works_ = at.phi > 0.0 && !stages_.empty();
        bool const empty = at.x < exhausted;
        double d = at.d;
        double enters = d;
        for (auto [share, where] : {condensing{at.partial, &partial_}, condensing{at.neck, &neck_}}) {
            if (share == 0.0) continue;
            double const x = empty ? 0.0 : liquid_below_vapour(vapours(), d, azeotrope_, 1e-14);
            *where = boiling(x);
            d = enters = share * x + (1.0 - share) * d;
        }
        if (!column_works_) return;
        double const net = flow_ == flow_model::enthalpy_balance && at.phi < 1.0 ? net_heat(enters) : 0.0;
        double y = enters;
        for (std::size_t n = stages_.size(); n > 0; --n) {
            stage& s = stages_[n - 1];
            double const guess = s.liquid.x;
            double const x = empty ? 0.0 : liquid_under(y, s.efficiency, net, guess);
            s.liquid = boiling(x);
            y = below(x, net, s.reflux).value;
        }
    }

    /// Mole fraction of a trace in the distillate over that in the pot.
    /// @param which the trace
    /// @return with the volatility as stated, lower and higher by its band
    trace_figures enrichment(trace which) const {
        trace_figures result{};
        by([&](boiled_liquid const& l) { return volatilities_.of(which, l); }, result);
        return result;
    }
    /// The same for a substance with another volatility.
    /// @param volatility callable: mole fraction of ethanol in a liquid -> volatility
    template <class F>
    double enrichment_by(F const& volatility) const {
        std::array<double, 1> result{};
        by([&](boiled_liquid const& l) { return std::array<double, 1>{volatility(l.x)}; }, result);
        return result[0];
    }

private:
    static constexpr double exhausted = 1e-9;  // below it the column holds water

    struct stage {
        double efficiency;
        double reflux;  // liquid from it over vapour to it
        boiled_liquid liquid;
    };
    struct condensing {
        double share;
        boiled_liquid* where;
    };

    auto vapours() const {
        return [this](double x) { return mixture_.vapour_with_slope(x); };
    }
    boiled_liquid boiling(double x) const { return volatilities_.boiling(x); }

    /// enthalpy of the difference of the flows up and down, J/mol of distillate
    double net_heat(double enters) const {
        double const product = mixture_.liquid_enthalpy(at_.d).value;
        double back = 0.0, passes = 1.0;
        for (auto [share, where] : {std::pair{at_.neck, &neck_}, std::pair{at_.partial, &partial_}}) {
            if (share == 0.0) continue;
            back += passes * share * mixture_.liquid_enthalpy(where->x).value;
            passes *= 1.0 - share;
        }
        return product + (mixture_.vapour_enthalpy(enters) - back - passes * product) / (1.0 - at_.phi);
    }
    /// vapour that meets the liquid x between two stages, and its slope; the ratio of their flows in `reflux`
    numeric::value_and_slope<double> below(double x, double net, double& reflux) const {
        reflux = at_.phi;
        if (net == 0.0) return {at_.phi * x + (1.0 - at_.phi) * at_.d, at_.phi};
        double const down = net - mixture_.liquid_enthalpy(x).value;
        double y = at_.phi * x + (1.0 - at_.phi) * at_.d;
        for (int i = 0; i < 20;
             ++i) {  // the enthalpy of the vapour changes little: each round gains two digits
            reflux = (net - mixture_.vapour_enthalpy(y)) / down;
            double const next = reflux * x + (1.0 - reflux) * at_.d;
            double const moved = std::abs(next - y);
            y = next;
            if (moved < 1e-13) break;
        }
        return {y, reflux};
    }
    /// liquid that leaves a stage from which the vapour y rises
    double liquid_under(double y, double efficiency, double net, double guess) const {
        double unused = 0.0;
        auto const miss = [&](double x) {
            auto const over = mixture_.vapour_with_slope(x);
            if (efficiency == 1.0) return numeric::value_and_slope<double>{over.value - y, over.slope};
            auto const enters = below(x, net, unused);
            return numeric::value_and_slope<double>{
                efficiency * over.value + (1.0 - efficiency) * enters.value - y,
                efficiency * over.slope + (1.0 - efficiency) * enters.slope};
        };
        return numeric::bracketed_newton(miss, 0.0, azeotrope_, (std::min)(guess, y), 1e-9);
    }

    /// writes the enrichment for every volatility that `volatilities` gives for a liquid
    template <class F, std::size_t N>
    void by(F const& volatilities, std::array<double, N>& result) const {
        std::array<double, N> a = volatilities(pot_);
        std::array<double, N> b{};
        if (column_works_) {
            for (stage const& s : stages_) {
                auto const k = volatilities(s.liquid);
                for (std::size_t i = 0; i < N; ++i) {
                    double const gain = s.efficiency * k[i] / s.reflux;
                    double const passes = 1.0 - s.efficiency + gain;
                    a[i] *= passes;
                    b[i] = b[i] * passes - gain * (1.0 - s.reflux);
                }
            }
        }
        for (auto [share, where] : {std::pair{at_.neck, &neck_}, std::pair{at_.partial, &partial_}}) {
            if (share == 0.0) continue;
            auto const k = volatilities(*where);
            for (std::size_t i = 0; i < N; ++i) {
                double const passes = k[i] / (share + (1.0 - share) * k[i]);
                a[i] *= passes;
                b[i] *= passes;
            }
        }
        for (std::size_t i = 0; i < N; ++i) result[i] = a[i] / (1.0 - b[i]);
    }

    M const& mixture_;
    flow_model flow_;
    trace_volatilities<M> volatilities_;
    double azeotrope_;
    std::vector<stage> stages_;  // from the pot up
    boiled_liquid pot_, neck_, partial_;
    column_moment_of_run at_{};
    bool column_works_ = false;
};

/// Traces in pot and distillate during a run, each as parts of what the charge holds.
class trace_history {
    /// where a step is looked at; the last node is the first one of the next step (Simpson's rule)
    static constexpr std::array<double, 3> nodes{0.0, 0.5, 1.0};
    using weights = std::array<double, 3>;  // of the nodes

    /// one trace in one step
    struct course {
        trace_figures left;                         // in the pot where the step begins
        std::array<trace_figures, 3> enrichment{};  // at the nodes
        std::array<trace_figures, 3> band{};        // what comes over at the nodes, over the figure as stated
    };
    struct step {
        double depth, length;
        std::size_t first;  // its courses
    };

public:
    /// @param which the traces
    /// @param moles of the charge
    trace_history(std::vector<trace> which, double moles) : which_(std::move(which)), moles_(moles) {
        left_.assign(which_.size(), {1.0, 1.0, 1.0});
    }

    /// Adds a step of the run.
    /// @param depth   depth where it begins
    /// @param length  its length
    /// @param goes_on whether it begins in the state in which the last one ended
    /// @param column  the column
    /// @param state   callable: part of the step, 0 to 1 -> column_moment_of_run
    template <class Column, class F>
    void add(double depth, double length, bool goes_on, Column& column, F const& state) {
        step const s{depth, length, courses_.size()};
        steps_.push_back(s);
        for (trace_figures const& each : left_) courses_.push_back({each});
        for (std::size_t k = 0; k < nodes.size(); ++k) {
            bool const known = k == 0 && goes_on && s.first > 0;
            if (!known) column.settle(state(nodes[k]));
            for (std::size_t i = 0; i < which_.size(); ++i) {
                trace_figures& e = courses_[s.first + i].enrichment[k];
                e = known ? courses_[s.first - which_.size() + i].enrichment.back()
                          : column.enrichment(which_[i]);
            }
        }
        auto const whole = integral(1.0);
        for (std::size_t i = 0; i < which_.size(); ++i) {
            course& at = courses_[s.first + i];
            for (std::size_t k = 0; k < nodes.size(); ++k) {
                auto const until = integral(nodes[k]);
                double const stated = left_in(s, at, until, 0) * at.enrichment[k][0];
                for (std::size_t c = 0; c < trace_cases; ++c)
                    at.band[k][c] =
                        stated > 0.0 ? left_in(s, at, until, c) * at.enrichment[k][c] / stated : 1.0;
            }
            for (std::size_t c = 0; c < trace_cases; ++c) left_[i][c] = left_in(s, at, whole, c);
        }
    }

    /// A moment of the run, from which the traces are read.
    class moment {
    public:
        /// @param i which trace
        /// @return part of the charge's trace that is left in the pot
        trace_figures left(std::size_t i) const {
            trace_figures result{};
            for (std::size_t c = 0; c < trace_cases; ++c)
                result[c] = left_in(step_, history_.courses_[step_.first + i], integral_, c);
            return result;
        }
        /// What comes over: part of the charge's trace for each mole of distillate. The figure as stated is
        /// exact; the other two are interpolated from their ratios to it.
        /// @param i which trace
        /// @return the parts
        trace_figures over(std::size_t i) const {
            course const& at = history_.courses_[step_.first + i];
            auto const between = [&](std::array<trace_figures, 3> const& f, std::size_t c) {
                return (std::max)(0.0,
                                  parabola_[0] * f[0][c] + parabola_[1] * f[1][c] + parabola_[2] * f[2][c]);
            };
            double const stated = left_in(step_, at, integral_, 0) * between(at.enrichment, 0) / in_pot_;
            trace_figures result{};
            for (std::size_t c = 0; c < trace_cases; ++c) result[c] = stated * between(at.band, c);
            return result;
        }

    private:
        friend class trace_history;
        moment(trace_history const& history, step const& s, double theta, double in_pot)
            : history_(history),
              step_(s),
              in_pot_(in_pot),
              parabola_(parabola(theta)),
              integral_(integral(theta)) {}
        trace_history const& history_;
        step const& step_;
        double in_pot_;  // moles
        weights parabola_, integral_;
    };
    /// @param distilled moles of distillate
    /// @return the moment when so much had been distilled
    moment at_distilled(double distilled) const {
        double const depth = -std::log1p(-distilled / moles_);
        auto const after = std::upper_bound(steps_.begin(), steps_.end(), depth,
                                            [](double value, step const& s) { return value < s.depth; });
        step const& s = after == steps_.begin() ? steps_.front() : *(after - 1);
        double const theta = s.length > 0.0 ? (depth - s.depth) / s.length : 0.0;
        return {*this, s, (std::min)(1.0, (std::max)(0.0, theta)), moles_ - distilled};
    }

private:
    /// weights of the values at the nodes for the parabola through them, at theta
    static weights parabola(double theta) {
        return {(1.0 - theta) * (1.0 - 2.0 * theta), 4.0 * theta * (1.0 - theta),
                theta * (2.0 * theta - 1.0)};
    }
    /// weights of the values for the integral of that parabola from 0 to theta
    static weights integral(double theta) {
        double const square = theta * theta, cube = square * theta;
        return {theta - 1.5 * square + 2.0 / 3.0 * cube, 2.0 * square - 4.0 / 3.0 * cube,
                2.0 / 3.0 * cube - 0.5 * square};
    }
    static double left_in(step const& s, course const& at, weights const& w, std::size_t c) {
        double sum = 0.0;
        for (std::size_t k = 0; k < nodes.size(); ++k) sum += w[k] * at.enrichment[k][c];
        return at.left[c] * std::exp(-s.length * sum);
    }

    std::vector<trace> which_;
    double moles_;
    std::vector<trace_figures> left_;  // at the end of the last step
    std::vector<step> steps_;
    std::vector<course> courses_;
};

}  // namespace aqueth::inline AQUETH_ABI::detail
