// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

namespace aqueth {

/// What stands between the boiler and the condenser: so many equilibrium stages, the boiler not counted. The
/// boiler is one more stage, so a pot without a column separates once.
///
/// A stage of Murphree efficiency E changes the vapour by the share E of what equilibrium would change it.
class column {
public:
    static constexpr double most_stages = 100.0;  ///< greatest number of stages or plates

    /// @return a pot without a column: no stage above the boiler
    static column none() { return column(0, 1.0, 0.0); }
    /// @param number theoretical stages above the boiler, 0 to 100; a fraction is a topmost stage of that
    ///               efficiency
    /// @return the column
    /// @throws range_error if the number is outside that range
    static column of_stages(double number) {
        require_range("column", argument::number_of_stages, number, "", 0.0, most_stages);
        double const whole = std::floor(number);
        return column(static_cast<int>(whole), 1.0, number - whole);
    }
    /// @param number     real plates above the boiler, 0 to 100
    /// @param efficiency Murphree vapour efficiency of each, above 0 to 1; common practice for small plates
    ///                   is 0.5 to 0.7
    /// @return the column
    /// @throws range_error if an argument is outside its range
    static column of_plates(int number, double efficiency) {
        require_range("column", argument::number_of_plates, number, "", 0.0, most_stages);
        require_range("column", argument::murphree_efficiency, efficiency, "", 0.01, 1.0);
        return column(number, efficiency, 0.0);
    }
    /// @param height height of the packing, above 0
    /// @param hetp   height equivalent to a theoretical plate, from the maker or from an earlier run; common
    ///               practice for columns under 0.6 m wide: about the width, not below 0.3 m (from memory of
    ///               Kister, Distillation Design, 1992); fine laboratory packing does better
    /// @return the column
    /// @throws range_error if an argument is not positive, or there are more than 100 stages
    static column of_packing(units::length height, units::length hetp) {
        double const most = std::numeric_limits<double>::infinity();
        require_range("column", argument::height_of_the_packing, height.value(), "m", 1e-3, most);
        require_range("column", argument::height_equivalent_to_a_theoretical_plate, hetp.value(), "m", 1e-3,
                      most);
        return of_stages(in(height, hetp));
    }

    /// @return number of plates or whole stages
    int whole() const noexcept { return whole_; }
    /// @return Murphree efficiency of each of them
    double efficiency() const noexcept { return efficiency_; }
    /// @return efficiency of one more stage on top of them, 0 to below 1
    double topmost() const noexcept { return topmost_; }

private:
    column(int whole, double efficiency, double topmost)
        : whole_(whole), efficiency_(efficiency), topmost_(topmost) {}
    int whole_;
    double efficiency_;
    double topmost_;
};

/// The way from the pot, or from the column on it, to the condenser. A share of the vapour condenses there
/// and runs back, in equilibrium with the vapour that goes on: a partial condenser. Heat lost by neck and
/// head does that, and so does cooling water that is led around a head on purpose.
///
/// What the condenser returns runs into the column below the neck.
class neck {
public:
    static constexpr double greatest_share = 0.9;  ///< greatest share that may condense

    /// @return a neck in which nothing condenses
    static neck insulated() { return neck(0.0); }
    /// @param share share of the vapour's moles that condenses, 0 to 0.9; from what it loses in W, divided by
    ///              the heat of the pot that boils
    /// @return the neck
    /// @throws range_error if the share is outside that range
    static neck condensing(double share) {
        require_range("neck", argument::share_of_the_vapour_that_condenses, share, "", 0.0, greatest_share);
        return neck(share);
    }

    /// @return share of the vapour's moles that condenses
    double share() const noexcept { return share_; }

private:
    explicit neck(double share) : share_(share) {}
    double share_;
};

/// How the flows inside a column are found.
enum class flow_model {
    /// as many moles condense on a stage as boil: the flows are equal on all stages
    constant_molar_overflow,
    /// flows from the enthalpies of liquid and vapour, stage by stage
    enthalpy_balance
};

namespace detail {

/// Root finder with memory, for functions that change little from call to call: starts the secant method from
/// the extrapolated previous root and falls back to bracketing. There is one root, so memory only saves time.
class root_trace {
public:
    /// @param f     callable: double -> double, changing its sign once between the ends
    /// @param key   what changes from call to call
    /// @param lower one end of the bracket
    /// @param upper the other
    /// @param width callable: how near to a root is near enough there
    /// @return the root; NaN if f does not change its sign
    template <class F, class Width>
    double find(F const& f, double key, double lower, double upper, Width const& width) {
        double const guess = root_ + (key - key_) * drift_;  // NaN in the beginning: compared quietly
        double root = std::isgreater(guess, lower) && std::isless(guess, upper)
                          ? near(f, guess, lower, upper, width(guess))
                          : nothing;
        if (!(root == root)) {
            steepness_ = nothing;
            double const rough = numeric::bracketed_root(f, lower, upper, 1e-6 * (upper - lower));
            if (!(rough == rough)) return nothing;
            root = near(f, rough, lower, upper, width(rough));
            if (!(root == root)) root = numeric::bracketed_root(f, lower, upper, width(rough));
        }
        remember(key, root);
        return root;
    }

private:
    static constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

    /// the root by the secant method, or NaN if it is not near
    template <class F>
    double near(F const& f, double guess, double lower, double upper, double width) {
        double a = guess;
        double fa = f(a);
        double steepness = steepness_;
        double step = steepness == steepness ? -fa / steepness : 0.0;
        // The steepness of the last call is not trusted to say that this is the root.
        if (std::abs(step) < 100.0 * width) step = std::copysign(100.0 * width, step);
        for (int i = 0; i < 8; ++i) {
            if (std::abs(fa) <= 4e-16) return a;
            double const b = a + step;
            if (!(b > lower && b < upper)) return nothing;
            if (std::abs(step) <= width) {
                steepness_ = steepness;
                return b;
            }
            double const fb = f(b);
            bool const nearer = std::abs(fb) < 0.5 * std::abs(fa);
            if (!nearer && std::abs(fa) < 1e-14) return a;  // down at rounding
            if (!nearer && i > 1) return nothing;
            steepness = (fb - fa) / step;
            a = b;
            fa = fb;
            step = -fa / steepness;
        }
        return nothing;
    }

    void remember(double key, double root) {
        double const change = key - key_;
        if (!(change == change)) {
            drift_ = 0.0;
        } else if (std::abs(change) > 1e-9 * std::abs(key)) {
            drift_ = (root - root_) / change;
        }
        key_ = key;
        root_ = root;
    }

    double key_ = nothing;
    double root_ = nothing;
    double drift_ = nothing;      // of the root with the key
    double steepness_ = nothing;  // of the function at the root
};

/// Liquid over vapour at the top of a column.
/// @param ratio liquid that the condenser returns per distillate taken, may be infinite
/// @param share share of the vapour that condenses in the neck
/// @return internal reflux, 0 to 1
inline double internal_reflux_of(double ratio, double share) {
    return share + (1.0 - share) * (std::isinf(ratio) ? 1.0 : ratio / (1.0 + ratio));
}
/// The reflux ratio of an internal reflux.
/// @param phi   liquid over vapour at the top of a column
/// @param share share of the vapour that condenses in the neck
/// @return liquid that the condenser returns per distillate taken
inline double reflux_ratio_of(double phi, double share) { return (1.0 - share) / (1.0 - phi) - 1.0; }

/// where a column was in earlier calls
struct column_memory {
    double constant_flows = 0.0;  // what the distillate was solved for
    root_trace pinch, distillate, reflux;
};

/// The steady state of a column and its neck over a still, total condenser, no holdup. Plain numbers: mole
/// fractions of ethanol; `phi` is the internal reflux, liquid coming down over vapour going up at the top of
/// the column, 0 to 1, at least what condenses in the neck. Without that it is R/(R + 1) of a reflux ratio R.
template <boiling_mixture M>
class column_solver {
public:
    column_solver(M const& mixture, column const& c, neck const& n, flow_model flow)
        : mixture_(mixture), column_(c), share_(n.share()), flow_(flow), azeotrope_(azeotrope(mixture)) {}

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
        if (column_.whole() == 0 && column_.topmost() == 0.0) return after_neck(y0).value;
        if (flow_ == flow_model::enthalpy_balance) return distillate_by_enthalpy(x, y0, phi, memory);
        if (phi >= 1.0) return after_neck(climb_constant(x, y0, 0.0, 1.0).value).value;
        // At the upper end the operating line pinches at the still (or at the azeotrope), at d = y0 no stage
        // gains; the excess of the top vapour over d falls from one to the other. Over many stages it falls
        // ever steeper next to the upper end, but never steeply in the logarithm of the distance from there.
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
            // NaN where there is no slope: compared quietly, for those who trap floating-point exceptions.
            if (std::islessequal(next, low) && low == nearest) {
                next = nearest;
            } else if (!(std::isgreater(next, low) && std::isless(next, high)) ||
                       std::abs(miss) > 0.5 * previous) {
                if (std::abs(miss) < 4.0 * std::numeric_limits<double>::epsilon() * upper) break;
                next = 0.5 * (low + high);
                close = 1e-15;  // halving the bracket does not
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
    /// @param most   the greatest to be had, up to 1
    /// @param memory of earlier calls with this d: only saves time
    /// @return 0 if none is needed, above 1 if even the greatest does not reach d
    double internal_reflux(double x, double d, double most, column_memory& memory) const {
        double const y0 = mixture_.vapour(x);
        double const enters = before_neck(d).vapour;
        if (y0 >= enters) return 0.0;
        double const pinched = (std::max)(0.0, pinched_at_still(x, y0, d));
        double const unreached = 2.0;
        if (!(most - pinched > std::exp(nearest))) return unreached;
        // Over many stages the answer is next to the pinch: again the logarithm of the distance is even.
        auto const excess = [&](double v) { return climb(x, y0, d, pinched + std::exp(v)) - enters; };
        if (excess(nearest) >= 0.0) return pinched;
        double const v = memory.reflux.find(excess, x, nearest, std::log(most - pinched), fine);
        return v == v ? pinched + std::exp(v) : unreached;
    }
    double internal_reflux(double x, double d) const {
        column_memory none;
        return internal_reflux(x, d, 1.0, none);
    }

    /// heat that neck and condenser take out, J/mol of distillate, with internal reflux phi
    double condensation(double d, double phi) const { return condensation_of_vapour(d) / (1.0 - phi); }
    /// that of the condenser alone
    double condensation_without_neck(double d, double phi) const {
        return (1.0 - share_) * (mixture_.vapour_enthalpy(d) - mixture_.liquid_enthalpy(d).value) /
               (1.0 - phi);
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
    /// what meets at the lower end of the neck: vapour that enters, liquid that runs back
    struct neck_flows {
        double vapour, liquid;
    };
    /// the flows of a neck that the vapour d leaves
    neck_flows before_neck(double d) const {
        if (share_ == 0.0) return {d, d};
        double const x = liquid(d);
        return {share_ * x + (1.0 - share_) * d, x};
    }
    /// vapour that leaves the neck if y enters it, and its slope with respect to y
    numeric::value_and_slope<double> after_neck(double y) const {
        if (share_ == 0.0) return {y, 1.0};
        // A liquid x in the neck and the vapour over it, both together, are the vapour that enters.
        auto const both = [this](double x, numeric::value_and_slope<double> const& vapour) {
            return numeric::value_and_slope<double>{share_ * x + (1.0 - share_) * vapour.value,
                                                    share_ + (1.0 - share_) * vapour.slope};
        };
        auto const enters = [&](double x) { return both(x, mixture_.vapour_with_slope(x)); };
        double const x = liquid_below_vapour(enters, y, 1.0, 1e-15);
        auto const leaves = mixture_.vapour_with_slope(x);
        return {leaves.value, leaves.slope / both(x, leaves).slope};
    }

    /// heat that neck and condenser take out, J/mol of the vapour that enters the neck
    double condensation_of_vapour(double d) const {
        auto const [enters, back] = before_neck(d);
        double const product = mixture_.liquid_enthalpy(d).value;
        if (share_ == 0.0) return mixture_.vapour_enthalpy(d) - product;
        return mixture_.vapour_enthalpy(enters) - share_ * mixture_.liquid_enthalpy(back).value -
               (1.0 - share_) * product;
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

    /// what leaves the neck if the distillate were d, and its slope with respect to d
    numeric::value_and_slope<double> leaving_by_constant(double x, double y0, double d, double phi) const {
        auto const enters = climb_constant(x, y0, d, phi);
        auto const leaves = after_neck(enters.value);
        return {leaves.value, leaves.slope * enters.slope};
    }

    /// liquid that meets the vapour y between two stages; kept inside 0 to 1, which it leaves only while d is
    /// far from right
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
        return 1.0 - condensation_of_vapour(d) / (net - product);
    }

    double climb_by_enthalpy(double x, double y0, double d, double phi) const {
        // Balance from a stage to the condenser: what goes up less what comes down is the distillate and the
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
                    if (step <= 1e-8) break;  // the method squares it
                }
            }
            y += efficiency * (mixture_.vapour(liquid) - y);
        });
        return y;
    }

    double distillate_by_enthalpy(double x, double y0, double phi, column_memory& memory) const {
        if (phi >= 1.0) return after_neck(climb_by_enthalpy(x, y0, 0.0, 1.0)).value;
        // As with constant flows, but the pinch at the still depends on the enthalpies there.
        double const up = mixture_.vapour_enthalpy(y0);
        double const down = mixture_.liquid_enthalpy(x).value;
        auto const beyond_pinch = [&](double d) {
            double const net = condensation(d, phi) + mixture_.liquid_enthalpy(d).value;
            return d - y0 - (y0 - x) * (net - up) / (up - down);
        };
        double const pinch = memory.pinch.find(beyond_pinch, x, y0, azeotrope_, [](double) { return 1e-15; });
        double const upper = pinch == pinch ? pinch : azeotrope_;
        double const high = std::log(upper - y0);
        if (!(high > nearest)) return y0;
        auto const excess = [&](double v) {
            double const d = upper - std::exp(v);
            return climb_by_enthalpy(x, y0, d, phi) - before_neck(d).vapour;
        };
        double const v = memory.distillate.find(excess, x, nearest, high, fine);
        if (!(v == v)) return excess(nearest) >= 0.0 ? upper : y0;
        return upper - std::exp(v);
    }

    static constexpr double nearest = -30.0;  // e^-30: nearer than rounding lets the stages tell
    /// how well a logarithm of a distance must be known for the distance to be right to 1e-13
    static double fine(double v) { return (std::max)(1e-12, 1e-13 * std::exp(-v)); }

    M const& mixture_;
    column column_;
    double share_;  // of the vapour, condensed in the neck
    flow_model flow_;
    double azeotrope_;
};

/// two strengths between which a column works, checked and as mole fractions
struct separation {
    double still;
    double distillate;
};

template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
separation require_separation(char const* property, M const& mixture, Still still, Distillate distillate) {
    auto const from = to<mole_fraction>(still);
    auto const up_to = to<mole_fraction>(distillate);
    double const limit = column_solver<M>::azeotrope(mixture);
    require_range(property, argument::strength_in_the_still, from.percent(), mole_fraction::unit, 1e-6,
                  100.0 * limit, "below the azeotrope at this pressure");
    if (!(from <= up_to && up_to.value() < limit)) {
        auto const shown = [](double x) { return to<Distillate>(mole_fraction(x)).number(); };
        raise(range_error(property, argument::strength_of_the_distillate, distillate.number(),
                          Distillate::unit, shown(from.value()), shown(limit * (1.0 - 1e-9)),
                          "from that of the still to below the azeotrope at this pressure"));
    }
    return {from.value(), up_to.value()};
}

}  // namespace detail

/// Number of stages between two strengths at total reflux if the relative volatility were constant: Fenske's
/// equation. Ethanol and water are far from that; `minimum_stages` steps exactly.
/// @param still      strength in the still, above 0 and below 1
/// @param distillate strength of the distillate, below 1
/// @param volatility relative volatility of ethanol to water, above 1
/// @return number of stages with the still as one of them
/// @throws range_error if an argument is outside its range
/// @par Source
/// @ref source_columns (Fenske)
template <strength_basis Still, strength_basis Distillate>
double fenske_stages(Still still, Distillate distillate, double volatility) {
    double const x = to<mole_fraction>(still).value();
    double const d = to<mole_fraction>(distillate).value();
    require_range("Fenske's equation", argument::mole_fraction_in_the_still, x, "", 1e-12, 1.0 - 1e-12);
    require_range("Fenske's equation", argument::mole_fraction_of_the_distillate, d, "", x, 1.0 - 1e-12);
    require_range("Fenske's equation", argument::relative_volatility, volatility, "", 1.0 + 1e-9, 1e9);
    return std::log(d * (1.0 - x) / (x * (1.0 - d))) / std::log(volatility);
}

/// Number of stages between two strengths with a given reflux ratio, by exact stepping.
/// @param mixture      a boiling mixture at one pressure
/// @param still        strength in the still, below the azeotrope
/// @param distillate   strength of the distillate, below the azeotrope
/// @param reflux_ratio liquid returned per distillate taken, above `minimum_reflux`; infinity for total
///                     reflux
/// @param flow         how the flows inside are found
/// @return theoretical stages above the boiler; the last one counted in part, by its Murphree efficiency
/// @throws range_error if a strength is outside its range or the reflux ratio not above the least one
template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
double stages_needed(M const& mixture, Still still, Distillate distillate, double reflux_ratio,
                     flow_model flow = flow_model::constant_molar_overflow);

/// Number of stages between two strengths at total reflux, by exact stepping: no column does it with fewer.
/// @param mixture    a boiling mixture at one pressure
/// @param still      strength in the still, below the azeotrope
/// @param distillate strength of the distillate, below the azeotrope
/// @return theoretical stages above the boiler; the last one counted in part, by its Murphree efficiency
/// @throws range_error if a strength is outside its range
template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
double minimum_stages(M const& mixture, Still still, Distillate distillate) {
    return stages_needed(mixture, still, distillate, std::numeric_limits<double>::infinity());
}

/// Least reflux ratio for a separation: it would take a column without end. Found for constant molar overflow
/// as the steepest line from the distillate to the equilibrium curve, which for ethanol and water often
/// touches the curve far above the still (a tangent pinch).
/// @param mixture    a boiling mixture at one pressure
/// @param still      strength in the still, below the azeotrope
/// @param distillate strength of the distillate, below the azeotrope
/// @return reflux ratio; 0 if the vapour over the still is strong enough
/// @throws range_error if a strength is outside its range
template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
double minimum_reflux(M const& mixture, Still still, Distillate distillate) {
    auto const [x, d] = detail::require_separation("minimum reflux", mixture, still, distillate);
    auto const steepness = [&, d = d](double liquid) { return (d - mixture.vapour(liquid)) / (d - liquid); };
    constexpr int points = 400;
    double const width = (d - x) / points;
    double phi = steepness(x);
    double at = x;
    for (int i = 1; i < points; ++i) {
        double const liquid = x + width * i;
        if (steepness(liquid) > phi) {
            phi = steepness(liquid);
            at = liquid;
        }
    }
    double lower = (std::max)(x, at - width);
    double upper = (std::min)(d - 1e-3 * width, at + width);
    for (int i = 0; i < 60; ++i) {  // thirds: the steepness has one top there
        double const a = lower + (upper - lower) / 3.0;
        double const b = upper - (upper - lower) / 3.0;
        (steepness(a) < steepness(b) ? lower : upper) = steepness(a) < steepness(b) ? a : b;
    }
    phi = (std::max)(phi, steepness(0.5 * (lower + upper)));
    return phi <= 0.0 ? 0.0 : phi / (1.0 - phi);
}

template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
double stages_needed(M const& mixture, Still still, Distillate distillate, double reflux_ratio,
                     flow_model flow) {
    auto const [x, d] = detail::require_separation("stages", mixture, still, distillate);
    if (mixture.vapour(x) >= d) return 0.0;
    double const least = minimum_reflux(mixture, still, distillate);
    if (!(reflux_ratio > least)) {
        raise(
            range_error("stages", argument::reflux_ratio, reflux_ratio, "", least,
                        std::numeric_limits<double>::infinity(),
                        "above the least reflux for this separation, which no number of stages gets below"));
    }
    double const phi = detail::internal_reflux_of(reflux_ratio, 0.0);
    auto const top = [&, x = x, d = d](double stages) {
        detail::column_solver<M> const solver(mixture, column::of_stages(stages), neck::insulated(), flow);
        return solver.climb(x, mixture.vapour(x), d, phi);
    };
    double whole = 1.0;
    while (top(whole) < d) {
        whole += 1.0;
        if (whole > column::most_stages) {
            raise(range_error("stages", argument::number_of_stages_above, column::most_stages, "", 0.0,
                              column::most_stages - 1.0, "the reflux is too close to the least one"));
        }
    }
    double const before = top(whole - 1.0);
    return whole - 1.0 + (d - before) / (top(whole) - before);  // the vapour is straight in the efficiency
}

/// Strength of the distillate over a still.
/// @param mixture      a boiling mixture at one pressure
/// @param c            the column on the still
/// @param still        strength in the still, below the azeotrope
/// @param reflux_ratio liquid that the condenser returns per distillate taken, 0 or more; infinity for total
///                     reflux
/// @param flow         how the flows inside are found
/// @param n            the neck on the column
/// @return strength of the distillate
/// @throws range_error if the strength or the reflux ratio is outside its range
template <boiling_mixture M, strength_basis Still>
mole_fraction distillate_strength(M const& mixture, column const& c, Still still, double reflux_ratio,
                                  flow_model flow = flow_model::constant_molar_overflow,
                                  neck const& n = neck::insulated()) {
    double const x = detail::require_separation("distillate", mixture, still, still).still;
    if (!(reflux_ratio >= 0.0))
        require_range("distillate", argument::reflux_ratio, reflux_ratio, "", 0.0, 1e300);
    double const phi = detail::internal_reflux_of(reflux_ratio, n.share());
    return mole_fraction(detail::column_solver<M>(mixture, c, n, flow).distillate(x, phi));
}

}  // namespace aqueth
