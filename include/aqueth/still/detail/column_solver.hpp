// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/still/column.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>

namespace aqueth::inline AQUETH_ABI::detail {

/// Shares of the vapour's moles that condense above a column, in equilibrium with what goes on: in the neck,
/// and of what passes it in a partial condenser.
struct condensing_shares {
    double neck = 0.0;
    double head = 0.0;

    /// share of the vapour that condenses in both
    double together() const { return neck + (1.0 - neck) * head; }
};

/// Liquid over vapour at the top of a column.
/// @param ratio liquid that the condenser returns per distillate taken, may be infinite
/// @param share share of the vapour that condenses in neck and partial condenser
/// @return internal reflux, 0 to 1
inline double internal_reflux_of(double ratio, double share) {
    return share + (1.0 - share) * (std::isinf(ratio) ? 1.0 : ratio / (1.0 + ratio));
}
/// The reflux ratio of an internal reflux.
/// @param phi   liquid over vapour at the top of a column
/// @param share share of the vapour that condenses in neck and partial condenser
/// @return liquid that the condenser returns per distillate taken
inline double reflux_ratio_of(double phi, double share) { return (1.0 - share) / (1.0 - phi) - 1.0; }

/// Solutions of earlier calls. They are first guesses and change no result.
struct column_memory {
    /// what one search found: distillate for a reflux, or reflux for a distillate
    struct search {
        static constexpr double unknown = std::numeric_limits<double>::quiet_NaN();
        struct stage {
            double liquid = unknown;
            double slope = 0.0;  // with respect to the variable of the search
            double bend = 0.0;   // change of the slope
        };
        double target = unknown;   // of the search
        double root = unknown;     // what it found there
        double drift = unknown;    // slope of the root with respect to the target
        double bend = 0.0;         // change of the drift
        double profile = unknown;  // variable of the search for which the stages are remembered
        std::array<stage, static_cast<std::size_t>(column::most_stages) + 3>
            stages;  // with topmost, neck, head
    };
    search distillate, reflux;
    /// vapour over the still with the greatest reflux, and what it was calculated for
    struct {
        double distillate = search::unknown;
        double reflux = search::unknown;
        double vapour = search::unknown;
    } greatest;
};

/// The steady state of a column, its neck and head over a still, no holdup. Plain numbers: mole fractions of
/// ethanol; `phi` is the internal reflux, liquid coming down over vapour going up at the top of the column, 0
/// to 1, at least the share that condenses in neck and partial condenser. Without them it is R/(R + 1) for a
/// reflux ratio R.
template <boiling_mixture M>
class column_solver {
public:
    column_solver(M const& mixture, column const& c, neck const& n, flow_model flow)
        : mixture_(mixture), column_(c), shares_{n.share()}, flow_(flow), azeotrope_(azeotrope(mixture)) {}

    /// the same column with other shares condensed above it
    column_solver with(condensing_shares const& shares) const {
        column_solver result = *this;
        result.shares_ = shares;
        return result;
    }

    /// greatest strength that any column reaches from below: the azeotrope, or 1
    double limit() const { return azeotrope_; }

    static double azeotrope(M const& mixture) {
        auto const above_one = [&](double x) {  // relative volatility less 1, and its slope
            auto const y = mixture.vapour_with_slope(x);
            double const liquid = x / (1.0 - x);
            double const vapour = y.value / (1.0 - y.value);
            double const slope = y.slope / (y.value * (1.0 - y.value)) - 1.0 / (x * (1.0 - x));
            return numeric::value_and_slope<double>{vapour / liquid - 1.0, vapour / liquid * slope};
        };
        double const nearly_pure = 1.0 - 1e-6;
        if (above_one(nearly_pure).value >= 0.0) return 1.0;
        return numeric::bracketed_newton(above_one, 0.5, nearly_pure, 0.9, 1e-14);
    }

    /// Composition of the distillate over the still x.
    /// @param x      still, above 0 and below the azeotrope
    /// @param phi    internal reflux, 0 to 1
    /// @param memory of earlier calls: only saves time
    double distillate(double x, double phi, column_memory& memory) const {
        double const y0 = mixture_.vapour(x);
        if (phi <= 0.0 || !(x > 0.0)) return y0;
        if (shares_.together() == 0.0 && column_.whole() == 0 && column_.topmost() == 0.0) return y0;
        // Between ln(d/(a - d)) for the azeotrope a and the same of the vapour over the still the relation is
        // nearly linear: with a constant relative volatility and total reflux it is Fenske's straight line.
        double const target = logit(y0);
        auto const vapour = [&](double v) {
            double const e = std::exp(-v);
            double const d = azeotrope_ / (1.0 + e);
            double const missing = d * e;  // azeotrope less d
            auto const y = vapour_over_still({d, missing * d / azeotrope_}, {phi, 0.0}, v, memory.distillate);
            // Next to the azeotrope the rounding of d limits the residual. The scale changes no root and no
            // step, only when a step is the last.
            double const scale = (std::max)(1e-5, 1.0 / (1.0 + 1e-7 / missing));
            return numeric::value_and_slope<double>{scale * (logit(y.value) - target), scale * y.slope};
        };
        double const nearest = 37.0;  // e^-37: nearer to the azeotrope d is rounded to it
        double const v = find(vapour, target, target, nearest, target + 1.0, memory.distillate);
        return azeotrope_ / (1.0 + std::exp(-v));
    }
    double distillate(double x, double phi) const {
        column_memory none;
        return distillate(x, phi, none);
    }

    /// Internal reflux that keeps the distillate at d over the still x.
    /// @param d      distillate, below the azeotrope
    /// @param most   the greatest possible, up to 1
    /// @param memory of earlier calls: only saves time
    /// @return 0 if none is needed, above 1 if even the greatest does not reach d
    double internal_reflux(double x, double d, double most, column_memory& memory) const {
        double const y0 = mixture_.vapour(x);
        if (y0 >= before(before(d, shares_.head).vapour, shares_.neck).vapour) return 0.0;
        auto& top = memory.greatest;
        if (top.distillate != d || top.reflux != most) top = {d, most, vapour_over_still(d, most)};
        double const unreached = 2.0;
        if (top.vapour > y0) return unreached;
        double const target = logit(y0);
        auto const vapour = [&](double phi) {
            auto const y = vapour_over_still({d, 0.0}, {phi, 1.0}, phi, memory.reflux);
            return numeric::value_and_slope<double>{logit(y.value) - target, y.slope};
        };
        double const pinched = (std::max)(0.0, (d - y0) / (d - x));  // with constant flows
        return find(vapour, target, 0.0, most, 0.5 * ((std::min)(pinched, most) + most), memory.reflux);
    }
    double internal_reflux(double x, double d) const {
        column_memory none;
        return internal_reflux(x, d, 1.0, none);
    }

    /// Descends the stages from the distillate to the still.
    /// @param d   distillate, up to the azeotrope
    /// @param phi internal reflux, 0 to 1
    /// @return vapour that the still must give
    double vapour_over_still(double d, double phi) const {
        column_memory::search none;
        return vapour_over_still({d, 0.0}, {phi, 1.0}, phi, none).value;
    }

    /// the still over which an internal reflux gives the distillate d
    double still_under(double d, double phi) const { return liquid(vapour_over_still(d, phi)); }

    /// Heat that is taken out above the column, J per mole of vapour that enters the neck.
    struct top_heats {
        double neck, head, condenser;
        double liquid_of_neck;  ///< mole fraction in the liquid that runs back from the neck

        double all() const { return neck + head + condenser; }
    };
    /// the heats for the distillate d, if all condensate boils where it forms
    top_heats heats(double d) const {
        double const product = mixture_.vapour_enthalpy(d) - mixture_.liquid_enthalpy(d).value;
        if (shares_.together() == 0.0) return {0.0, 0.0, product, d};
        auto const head = before(d, shares_.head);
        auto const neck = before(head.vapour, shares_.neck);
        double const passed = 1.0 - shares_.neck;
        return {heat_of(neck, shares_.neck, head.vapour), passed * heat_of(head, shares_.head, d),
                passed * (1.0 - shares_.head) * product, neck.liquid};
    }
    /// heat that is taken out above the column, J/mol of distillate, with internal reflux phi
    double condensation(double d, double phi) const { return heats(d).all() / (1.0 - phi); }

    /// liquid in equilibrium with a vapour
    double liquid(double y) const {
        auto const vapour = [this](double x) { return mixture_.vapour_with_slope(x); };
        return liquid_below_vapour(vapour, y, azeotrope_, 1e-14);
    }

private:
    using number = numeric::value_and_slope<double>;  // slope with respect to the variable of a search

    /// the flows at the lower end of a partial condenser: vapour that enters, liquid that runs back
    struct lower_end {
        double vapour, liquid;
    };
    /// the flows of a partial condenser that condenses this share and whose outgoing vapour is y
    lower_end before(double y, double share) const {
        if (share == 0.0) return {y, y};
        double const x = liquid(y);
        return {share * x + (1.0 - share) * y, x};
    }
    /// heat that it takes out, J/mol of the vapour that enters
    double heat_of(lower_end const& l, double share, double leaves) const {
        if (share == 0.0) return 0.0;
        return mixture_.vapour_enthalpy(l.vapour) - share * mixture_.liquid_enthalpy(l.liquid).value -
               (1.0 - share) * mixture_.vapour_enthalpy(leaves);
    }

    /// ln(y/(a - y)) for the azeotrope a
    double logit(double y) const { return std::log(y / (std::max)(azeotrope_ - y, 1e-17)); }

    /// Root of a search, by Newton's method from where the last one points to.
    template <class F>
    double find(F const& f, double target, double lower, double upper, double guess,
                column_memory::search& memory) const {
        double const change = target - memory.target;
        double const expected = memory.root + change * (memory.drift + 0.5 * change * memory.bend);
        if (std::isgreater(expected, lower) && std::isless(expected, upper)) guess = expected;
        double slope = 1.0;
        auto const noted = [&](double v) {
            number const at = f(v);
            slope = at.slope;
            return at;
        };
        // From a residual of 1e-7 the last step leaves 1e-14.
        double const root = numeric::bracketed_newton(noted, lower, upper, guess, 1e-7);
        double const drift = 1.0 / slope;
        memory.bend = change_of_slope(memory.bend, memory.drift, drift, change);
        memory.target = target;
        memory.root = root;
        memory.drift = drift;
        return root;
    }

    /// second derivative from two slopes; the earlier one where they are too close
    static double change_of_slope(double earlier, double from, double to, double distance) {
        return std::isgreater(std::abs(distance), 1e-7) ? (to - from) / distance : earlier;
    }

    /// Descends the stages. Downwards an error shrinks from stage to stage where the column pinches at its
    /// foot; the search for d and phi is well conditioned there.
    /// @param d      distillate
    /// @param phi    internal reflux
    /// @param at     variable of the search
    /// @param memory of the search
    /// @return vapour that the still must give; the slope is that of its logit
    number vapour_over_still(number d, number phi, double at, column_memory::search& memory) const {
        double const change = at - memory.profile;
        auto stage = memory.stages.begin();
        line l{d, phi, {0.0, 0.0}, {0.0, 0.0}};
        number y = d;
        if (flow_ == flow_model::enthalpy_balance) l.product = liquid_heat(d);
        number kept = l.product;  // heat that the liquids of neck, head and condenser keep
        for (double const share : {shares_.head, shares_.neck}) {
            if (share == 0.0) continue;
            number const back = liquid_of_stage(y, 1.0, l, change, *stage++);
            y = mixed(share, back, y);
            if (flow_ == flow_model::enthalpy_balance) kept = mixed(share, liquid_heat(back), kept);
        }
        if (flow_ == flow_model::enthalpy_balance) {
            number const vapour = vapour_heat(y);
            l.condensed = {vapour.value - kept.value, vapour.slope - kept.slope};
        }
        auto const descends = [&](double efficiency) {
            number const x = liquid_of_stage(y, efficiency, l, change, *stage++);
            crossing const below = vapour_below(l, x.value);
            number const next{below.vapour, below.by_liquid * x.slope + below.by_search};
            bool const pinched = std::abs(next.value - y.value) <= 4e-16 * y.value;
            y = next;
            return !pinched;  // else all further stages are alike
        };
        // A topmost stage of next to no efficiency changes nothing, which is no pinch.
        if (column_.topmost() > 0.0) descends(column_.topmost());
        bool goes_on = true;
        for (int n = 0; goes_on && n < column_.whole(); ++n) goes_on = descends(column_.efficiency());
        memory.profile = at;
        double const missing = (std::max)(azeotrope_ - y.value, 1e-17);
        return {y.value, y.slope * azeotrope_ / (y.value * missing)};
    }

    /// The operating line: liquid that runs down and vapour that comes up between two stages.
    struct line {
        number d, phi;
        number condensed;  // with an enthalpy balance: heat taken out, J/mol of the vapour at the top
        number product;    // and enthalpy of the distillate
    };
    /// vapour between two stages, and its slopes
    struct crossing {
        double vapour, by_liquid, by_search;
    };

    /// liquid that leaves a stage from which the vapour y rises
    number liquid_of_stage(number y, double efficiency, line const& l, double change,
                           column_memory::search::stage& memory) const {
        double guess = memory.liquid + change * (memory.slope + 0.5 * change * memory.bend);
        if (!(std::isgreater(guess, 0.0) && std::isless(guess, y.value)))
            guess = y.value < 0.8 ? 0.5 * y.value * y.value : y.value;
        double slope = 1.0;
        crossing below{};
        auto const miss = [&](double x) {
            number at = mixture_.vapour_with_slope(x);
            if (efficiency < 1.0) {
                below = vapour_below(l, x);
                at.value = efficiency * at.value + (1.0 - efficiency) * below.vapour;
                at.slope = efficiency * at.slope + (1.0 - efficiency) * below.by_liquid;
            }
            slope = at.slope;
            return number{at.value - y.value, at.slope};
        };
        double const x = numeric::bracketed_newton(miss, 0.0, y.value, guess, 1e-7 * y.value);
        double const by_search = (y.slope - (1.0 - efficiency) * below.by_search) / slope;
        memory = {x, by_search, change_of_slope(memory.bend, memory.slope, by_search, change)};
        return {x, by_search};
    }

    /// vapour that meets the liquid x between two stages
    crossing vapour_below(line const& l, double x) const {
        double const d = l.d.value;
        double const taken = 1.0 - l.phi.value;
        double const by_search = (x - d) * l.phi.slope + taken * l.d.slope;
        double y = l.phi.value * x + taken * d;
        if (flow_ == flow_model::constant_molar_overflow) return {y, l.phi.value, by_search};
        // Balance from a stage to the condenser: the flow up less the flow down is the distillate and the
        // heat taken out, `net` per mole of distillate. So in a diagram of enthalpy and composition (of
        // Ponchon and of Savarit) liquid and vapour between two stages lie on a line through (d, net):
        //     y = x + (d - x) (H(y) - h(x)) / (net - h(x))
        auto const liquid = mixture_.liquid_enthalpy(x);
        double const all = l.condensed.value + taken * (l.product.value - liquid.value);
        double const over_net = taken / all;  // 1/(net - h), 0 at total reflux
        double const run = (d - x) * over_net;
        double latent = 0.0;
        double bend = 1.0;  // 1 - run H'(y), by the secant method
        double y_before = y;
        double miss_before = 0.0;
        for (int i = 0; i < 20; ++i) {
            latent = mixture_.vapour_enthalpy(y) - liquid.value;
            double const miss = y - x - run * latent;
            if (i > 0) bend = (miss - miss_before) / (y - y_before);
            double const next = y - miss / bend;
            miss_before = miss;
            y_before = y;
            y = next;
            if (std::abs(y - y_before) <= 1e-9) break;  // the method leaves less than a millionth of a step
        }
        double const line_by_search =
            -(l.phi.slope * l.condensed.value + taken * (l.condensed.slope + taken * l.product.slope)) /
            (all * all);
        return {y, (1.0 - over_net * latent + run * liquid.slope * (over_net * latent - 1.0)) / bend,
                latent * (l.d.slope * over_net + (d - x) * line_by_search) / bend};
    }

    /// share of a and the rest of b
    static number mixed(double share, number a, number b) {
        return {share * a.value + (1.0 - share) * b.value, share * a.slope + (1.0 - share) * b.slope};
    }
    /// enthalpy of the boiling liquid x
    number liquid_heat(number x) const {
        auto const h = mixture_.liquid_enthalpy(x.value);
        return {h.value, h.slope * x.slope};
    }
    /// enthalpy of the vapour y
    number vapour_heat(number y) const {
        double const value = mixture_.vapour_enthalpy(y.value);
        double const h = 1e-5;
        return {value, (value - mixture_.vapour_enthalpy(y.value - h)) / h * y.slope};
    }

    M const& mixture_;
    column column_;
    condensing_shares shares_;
    flow_model flow_;
    double azeotrope_;
};

}  // namespace aqueth::inline AQUETH_ABI::detail
