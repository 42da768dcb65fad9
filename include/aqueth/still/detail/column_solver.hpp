// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/numeric/root_trace.hpp>
#include <aqueth/still/column.hpp>

#include <algorithm>
#include <cmath>
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

/// solutions of earlier calls, as first guesses
struct column_memory {
    double constant_flows = 0.0;  // what the distillate was solved for
    numeric::root_trace pinch, distillate, reflux;
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
    /// @param x    still, above 0 and below the azeotrope
    /// @param phi  internal reflux, 0 to 1
    /// @param memory of earlier calls with this phi: only saves time
    double distillate(double x, double phi, column_memory& memory) const {
        double const y0 = mixture_.vapour(x);
        if (phi <= 0.0 || !(x > 0.0)) return y0;
        if (column_.whole() == 0 && column_.topmost() == 0.0) return after_top(y0).value;
        if (flow_ == flow_model::enthalpy_balance) return distillate_by_enthalpy(x, y0, phi, memory);
        if (phi >= 1.0) return after_top(climb_constant(x, y0, 0.0, 1.0).value).value;
        // At the upper end the operating line pinches at the still (or at the azeotrope); at d = y0 no stage
        // gains. The excess of the top vapour over d falls between these ends. With many stages it falls very
        // steeply next to the upper end, but smoothly in the logarithm of the distance from there.
        double const upper = (std::min)((y0 - phi * x) / (1.0 - phi), azeotrope_);
        double low = nearest;
        double high = std::log(upper - y0);
        if (!(high > low)) return y0;
        double& hint = memory.constant_flows;
        double v = hint > low && hint < high ? hint : high - 1.0;
        double previous = 2.0;
        for (int i = 0; i < 100; ++i) {
            double const distance = std::exp(v);
            auto const top = leaving_by_constant(x, y0, upper - distance, phi);
            double const miss = top.value - (upper - distance);
            if (v == nearest && miss >= 0.0) break;
            (miss > 0.0 ? high : low) = v;
            double next = v + miss / ((top.slope - 1.0) * distance);
            double close = 1e-7;  // Newton's method squares it
            // NaN where there is no slope: a quiet comparison raises no floating-point exception.
            if (std::islessequal(next, low) && low == nearest) {
                next = nearest;
            } else if (!(std::isgreater(next, low) && std::isless(next, high)) ||
                       std::abs(miss) > 0.5 * previous) {
                if (std::abs(miss) < 4.0 * std::numeric_limits<double>::epsilon() * upper) break;
                next = 0.5 * (low + high);
                close = 1e-15;  // bisection does not
            }
            double const step = std::abs(next - v);
            previous = std::abs(miss);
            v = next;
            if (step <= close) break;
        }
        hint = v;
        return upper - std::exp(v);
    }
    double distillate(double x, double phi) const {
        column_memory none;
        return distillate(x, phi, none);
    }

    /// Internal reflux that keeps the distillate at d over the still x.
    /// @param most   the greatest possible, up to 1
    /// @param memory of earlier calls with this d: only saves time
    /// @return 0 if none is needed, above 1 if even the greatest does not reach d
    double internal_reflux(double x, double d, double most, column_memory& memory) const {
        double const y0 = mixture_.vapour(x);
        double const enters = before_top(d);
        if (y0 >= enters) return 0.0;
        double const pinched = (std::max)(0.0, pinched_at_still(x, y0, d));
        double const unreached = 2.0;
        if (!(most - pinched > std::exp(nearest))) return unreached;
        // With many stages the answer is next to the pinch: again the function is smooth in the logarithm of
        // the distance.
        auto const excess = [&](double v) { return climb(x, y0, d, pinched + std::exp(v)) - enters; };
        if (excess(nearest) >= 0.0) return pinched;
        double const v = memory.reflux.find(excess, x, nearest, std::log(most - pinched), fine);
        return std::isnan(v) ? unreached : pinched + std::exp(v);
    }
    double internal_reflux(double x, double d) const {
        column_memory none;
        return internal_reflux(x, d, 1.0, none);
    }

    /// Where the vapour at the top of the column condenses, and the heat that is taken out there.
    struct top_heats {
        double neck, head, condenser;  ///< J per mole of vapour that enters the neck

        double all() const { return neck + head + condenser; }
    };
    /// the heats for the distillate d, if all condensate boils where it forms
    top_heats heats(double d) const {
        double const product = mixture_.vapour_enthalpy(d) - mixture_.liquid_enthalpy(d).value;
        if (shares_.together() == 0.0) return {0.0, 0.0, product};
        auto const head = before(d, shares_.head);
        auto const neck = before(head.vapour, shares_.neck);
        double const passed = 1.0 - shares_.neck;
        return {heat_of(neck, shares_.neck, head.vapour), passed * heat_of(head, shares_.head, d),
                passed * (1.0 - shares_.head) * product};
    }
    /// heat that is taken out above the column, J/mol of distillate, with internal reflux phi
    double condensation(double d, double phi) const { return heats(d).all() / (1.0 - phi); }
    /// temperature of the vapour that leaves the neck, K
    double neck_temperature(double d) const {
        return mixture_.temperature(liquid(before(d, shares_.head).vapour));
    }

    /// liquid in equilibrium with a vapour
    double liquid(double y) const {
        auto const vapour = [this](double x) { return mixture_.vapour_with_slope(x); };
        return liquid_below_vapour(vapour, y, azeotrope_, 1e-14);
    }

    /// Climbs the stages from the still to the top vapour, if the distillate were d.
    double climb(double x, double y0, double d, double phi) const {
        return flow_ == flow_model::enthalpy_balance ? climb_by_enthalpy(x, y0, d, phi)
                                                     : climb_constant(x, y0, d, phi).value;
    }

private:
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
    /// heat it takes out, J/mol of vapour that enters
    double heat_of(lower_end const& l, double share, double leaves) const {
        if (share == 0.0) return 0.0;
        return mixture_.vapour_enthalpy(l.vapour) - share * mixture_.liquid_enthalpy(l.liquid).value -
               (1.0 - share) * mixture_.vapour_enthalpy(leaves);
    }
    /// vapour that leaves a partial condenser if y enters it, and its slope with respect to y
    numeric::value_and_slope<double> after(double y, double share) const {
        if (share == 0.0) return {y, 1.0};
        // The sum of a liquid x and the vapour over it is the vapour that enters.
        auto const both = [share](double x, numeric::value_and_slope<double> const& vapour) {
            return numeric::value_and_slope<double>{share * x + (1.0 - share) * vapour.value,
                                                    share + (1.0 - share) * vapour.slope};
        };
        auto const enters = [&](double x) { return both(x, mixture_.vapour_with_slope(x)); };
        double const x = liquid_below_vapour(enters, y, 1.0, 1e-15);
        auto const leaves = mixture_.vapour_with_slope(x);
        return {leaves.value, leaves.slope / both(x, leaves).slope};
    }
    /// vapour that must enter the neck for the distillate d
    double before_top(double d) const { return before(before(d, shares_.head).vapour, shares_.neck).vapour; }
    /// distillate if y enters the neck, and its slope with respect to y
    numeric::value_and_slope<double> after_top(double y) const {
        auto const neck = after(y, shares_.neck);
        auto const head = after(neck.value, shares_.head);
        return {head.value, head.slope * neck.slope};
    }

    template <class Stage>
    void for_each_stage(Stage const& stage) const {
        for (int n = 0; n < column_.whole(); ++n) stage(column_.efficiency());
        if (column_.topmost() > 0.0) stage(column_.topmost());
    }

    numeric::value_and_slope<double> climb_constant(double, double y0, double d, double phi) const {
        double y = y0;
        double slope = 0.0;  // dy/dd
        for_each_stage([&](double efficiency) {
            double const x = line(y, d, phi);
            auto const at = mixture_.vapour_with_slope(x);
            double dx = (slope - (1.0 - phi)) / phi;
            if (x <= 0.0 || x >= 1.0) dx = std::numeric_limits<double>::quiet_NaN();  // bisect from here
            y += efficiency * (at.value - y);
            slope += efficiency * (at.slope * dx - slope);
        });
        return {y, slope};
    }

    /// vapour that leaves the top if the distillate were d, and its slope with respect to d
    numeric::value_and_slope<double> leaving_by_constant(double x, double y0, double d, double phi) const {
        auto const enters = climb_constant(x, y0, d, phi);
        auto const leaves = after_top(enters.value);
        return {leaves.value, leaves.slope * enters.slope};
    }

    /// liquid that meets the vapour y between two stages; limited to 0 to 1, which matters only while d is
    /// far from the solution
    static double line(double y, double d, double phi) {
        return (std::min)(1.0, (std::max)(0.0, (y - (1.0 - phi) * d) / phi));
    }

    /// internal reflux at which liquid and vapour meet in equilibrium at the still, so that no stage gains
    double pinched_at_still(double x, double y0, double d) const {
        if (flow_ == flow_model::constant_molar_overflow) return (d - y0) / (d - x);
        double const up = mixture_.vapour_enthalpy(y0);
        double const down = mixture_.liquid_enthalpy(x).value;
        double const product = mixture_.liquid_enthalpy(d).value;
        double const net = up + (d - y0) / (y0 - x) * (up - down);  // as in climb_by_enthalpy
        return 1.0 - heats(d).all() / (net - product);
    }

    double climb_by_enthalpy(double x, double y0, double d, double phi) const {
        // Balance from a stage to the condenser: the flow up less the flow down is the distillate and the
        // heat taken out, `net` per mole of distillate. So in a diagram of enthalpy and composition (of
        // Ponchon and of Savarit) liquid and vapour between two stages lie on a line through (d, net).
        double const net = condensation(d, phi) + mixture_.liquid_enthalpy(d).value;
        double y = y0;
        double liquid = x;
        for_each_stage([&](double efficiency) {
            if (phi >= 1.0) {
                liquid = y;
            } else {
                double const up = mixture_.vapour_enthalpy(y);
                double const run = (d - y) / (std::max)(net - up, 1e-5);
                for (int i = 0; i < 40; ++i) {  // by Newton's method
                    auto const down = mixture_.liquid_enthalpy(liquid);
                    double const miss = liquid - y + run * (up - down.value);
                    double const slope = (std::max)(1.0 - run * down.slope, 0.1);
                    double const next = (std::min)(1.0, (std::max)(0.0, liquid - miss / slope));
                    double const step = std::abs(next - liquid);
                    liquid = next;
                    if (step <= 1e-8) break;  // the method squares the error
                }
            }
            y += efficiency * (mixture_.vapour(liquid) - y);
        });
        return y;
    }

    double distillate_by_enthalpy(double x, double y0, double phi, column_memory& memory) const {
        if (phi >= 1.0) return after_top(climb_by_enthalpy(x, y0, 0.0, 1.0)).value;
        // As with constant flows, but the pinch at the still depends on the enthalpies there.
        double const up = mixture_.vapour_enthalpy(y0);
        double const down = mixture_.liquid_enthalpy(x).value;
        auto const beyond_pinch = [&](double d) {
            double const net = condensation(d, phi) + mixture_.liquid_enthalpy(d).value;
            return d - y0 - (y0 - x) * (net - up) / (up - down);
        };
        double const pinch = memory.pinch.find(beyond_pinch, x, y0, azeotrope_, [](double) { return 1e-15; });
        double const upper = std::isnan(pinch) ? azeotrope_ : pinch;
        double const high = std::log(upper - y0);
        if (!(high > nearest)) return y0;
        auto const excess = [&](double v) {
            double const d = upper - std::exp(v);
            return climb_by_enthalpy(x, y0, d, phi) - before_top(d);
        };
        double const v = memory.distillate.find(excess, x, nearest, high, fine);
        if (std::isnan(v)) return excess(nearest) >= 0.0 ? upper : y0;
        return upper - std::exp(v);
    }

    static constexpr double nearest = -30.0;  // e^-30: smaller distances are below the rounding of the stages
    /// tolerance of the logarithm of a distance, for a distance correct to 1e-13
    static double fine(double v) { return (std::max)(1e-12, 1e-13 * std::exp(-v)); }

    M const& mixture_;
    column column_;
    condensing_shares shares_;
    flow_model flow_;
    double azeotrope_;
};

}  // namespace aqueth::inline AQUETH_ABI::detail
