// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/numeric/diagonally_implicit.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/still/detail/batch_run.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/still/still.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <utility>
#include <vector>

/// @file
/// A column whose plates and condenser hold liquid, over a pot that boils away. Plain numbers: moles, K, J,
/// s.

namespace aqueth::inline AQUETH_ABI::detail {

// The equations. Flows are in moles per mole of vapour that leaves the pot; equal moles condense and boil on
// a plate.
//
//     w             moles of vapour that have left the pot; the independent variable
//     n, m          moles of ethanol and water in the pot, and of ethanol alone; extract is not counted
//     x0            m / n, mole fraction of ethanol in the pot
//     xi, Ui        composition of the liquid on plate i, counted from the pot, and its moles (constant)
//     xc, Uc        the same of the condenser with its reflux line; the distillate has the composition xc
//     Ei            Murphree efficiency of plate i
//     y(x)          mole fraction in the vapour in equilibrium with the liquid x
//     yi            vapour that leaves plate i; y0 = y(x0) leaves the pot
//     v             vapour that enters the neck; 1 unless cold reflux condenses some of it
//     s1, l1, d1    neck: share of the vapour that condenses, liquid that runs back, vapour that goes on
//     s2, l2, d2    partial condenser: the same
//     e             distillate taken; with a reflux ratio R it is v (1 - s1) (1 - s2) / (1 + R)
//     phi           1 - e, internal reflux: liquid that runs down the column
//     r             liquid that the total condenser returns
//     h(x), H(y)    molar enthalpy of boiling liquid and of saturated vapour, J/mol; h'(x) is dh/dx
//     c             vapour that a mole of cold reflux condenses at the top of the column until it boils
//     h(xc, Tc)     molar enthalpy of the distillate at the temperature Tc of the reflux
//     P, k, T, Tr   power of the heater in W, heat loss of the pot in W/K, temperatures of pot and room in K
//
// Vapours.   yi = (1 - Ei) y(i-1) + Ei y(xi)
// Neck.      yN = s1 l1 + (1 - s1) d1,  d1 = y(l1);  d1 = s2 l2 + (1 - s2) d2,  d2 = y(l2)
// Reflux.    r = v (1 - s1) (1 - s2) - e
//            1 - v = c r                                     vapour that cold reflux condenses at the top
//            phi x(N+1) = v (s1 l1 + (1 - s1) s2 l2) + r xc + (1 - v) yN    runs to the topmost plate
// Ethanol.   dm/dw     = phi x1 - y0                         in the pot
//            Ui dxi/dw = y(i-1) - yi + phi (x(i+1) - xi)     on a plate
//            Uc dxc/dw = v (1 - s1) (1 - s2) (d2 - xc)       in the condenser
//            dA/dw     = e xc                                collected
// Moles.     dn/dw     = -e
// Where a plate or the condenser holds nothing, U = 0, its balance is an equation without a derivative.
// Without any holdup these are the equations of `batch_run.hpp`, with e dw = n du.
//
// Heat, around pot, column and head, J per mole of vapour. All liquids boil.
//     qn = v (H(yN) - s1 h(l1) - (1 - s1) H(d1))                                     taken out by the neck
//     qp = v (1 - s1) (H(d1) - s2 h(l2) - (1 - s2) H(d2))                            by the partial condenser
//     qc = v (1 - s1) (1 - s2) (H(d2) - h(xc) - h'(xc) (d2 - xc))                    by the total condenser
//     c  = (h(xc) - h(xc, Tc)) v / (qn + qp + qc)                       0 if the reflux boils
//     (P - k (T - Tr)) dt/dw = (qn + qp + qc)/v + e h(xc) + d(n h(x0) + U1 h(x1) + ... + Uc h(xc))/dw
//
// A reflux that keeps the strength ds of the vapour d2 is a regulator with a narrow range b. With eR for the
// greatest reflux ratio, and e for all that condenses without any,
//     e = eR + ((1 - s1)(1 - s2) - eR) (d2 - ds) / b           between these two
// If s1, s2 or v follow from heat they then have a lag w1: w1 ds1/dw = s1 that follows - s1. At once they
// would answer to e, which answers to them.
//
// The start. The first vapour of the charge condenses and fills plates and condenser; its heat goes to the
// condenser.
//
// Moles held. They are those of the distillate at the start, without holdup, in the volumes at 20 °C: the
// liquid on the upper plates, where holdup matters most, is nearly distillate. A model whose plates keep
// their volume gives 1.2 % less to 0.1 % more volume above 80 % vol (4 and 8 plates over charges of 11 to 40
// % vol). With the moles of the first vapour the volume would be 0.2 to 3 % above that model's.

/// Places of the unknowns of a run with holdup. Behind them come x1 to xN, xc and the flows s1, s2, v, e.
namespace held {
enum place : std::size_t {
    left,       ///< n
    collected,  ///< A
    seconds,    ///< time since boiling began
    neck,       ///< heat taken out by the neck, J
    partial,    ///< by a partial condenser
    condenser,  ///< by the total condenser
    pot_loss,   ///< lost by the pot
    carried,    ///< carried over by the distillate
    ethanol,    ///< m
    plates      ///< x1
};
}  // namespace held

/// Plates and condenser with the moles that they hold.
struct held_liquid {
    std::vector<double> efficiency;  ///< Murphree efficiency of each plate, from the pot up
    std::vector<double> plate;       ///< moles on each plate
    double condenser = 0.0;          ///< moles in condenser and reflux line

    double all() const {
        double sum = condenser;
        for (double each : plate) sum += each;
        return sum;
    }
};

/// The flows that the head sets at a moment, moles per mole of vapour from the pot.
struct head_flows {
    double neck = 0.0;     ///< s1
    double partial = 0.0;  ///< s2
    double enters = 1.0;   ///< v
    double taken = 0.0;    ///< e

    /// what comes to the total condenser
    double condensed() const { return enters * (1.0 - neck) * (1.0 - partial); }
    double returned() const { return condensed() - taken; }
};

/// The flows that a head wants. A head that keeps a strength takes more the stronger the vapour d2 is; then
/// `taken` may be outside its limits.
struct wanted_flows {
    head_flows flows;
    double gain = 0.0;               ///< de/d(d2)
    double least = 0.0, most = 1.0;  ///< limits of e
    double lag = 0.0;  ///< moles of vapour in the course of which s1, s2, v come to what is wanted
};

/// Everything at one moment of a column with holdup, from its liquids.
struct column_moment {
    std::vector<double> vapour;  ///< y0 to yN
    double neck_liquid = 0.0;    ///< l1
    double neck_vapour = 0.0;    ///< d1
    double back = 0.0;           ///< l2
    double top = 0.0;            ///< d2
    double reflux = 0.0;         ///< phi x(N+1)
    head_flows flows;
    double seconds = 0.0;     ///< dt/dw
    double neck = 0.0;        ///< qn
    double partial = 0.0;     ///< qp
    double condenser = 0.0;   ///< qc, and the heat that cools the reflux
    double at_boiling = 0.0;  ///< (qn + qp + qc) / v
    double boiling = 0.0;     ///< T
};

/// A vapour part of which condenses in equilibrium with the rest, and the slopes with respect to the vapour.
struct condensed_share {
    numeric::value_and_slope<double> liquid, vapour;
};
/// @param share share of the moles that condenses, 0 to below 1
/// @param y     vapour that enters
template <boiling_mixture M>
condensed_share condense(M const& mixture, double share, double y) {
    auto const both = [share](double x, numeric::value_and_slope<double> const& over) {
        return numeric::value_and_slope<double>{share * x + (1.0 - share) * over.value,
                                                share + (1.0 - share) * over.slope};
    };
    auto const enters = [&](double x) { return both(x, mixture.vapour_with_slope(x)); };
    double const x = liquid_below_vapour(enters, y, 1.0, 1e-15);
    auto const over = mixture.vapour_with_slope(x);
    double const slope = both(x, over).slope;
    return {{x, 1.0 / slope}, {over.value, over.slope / slope}};
}

/// The equations above for one still: rates of change and the solution of the equations of a stage of an
/// implicit method. `Rule` sets the head: (column_moment const&, double distillate) -> wanted_flows.
template <boiling_mixture M>
class held_column {
public:
    held_column(M const& mixture, held_liquid liquid, vessel const& pot, double solids)
        : mixture_(&mixture),
          liquid_(std::move(liquid)),
          pot_(pot),
          solids_(solids),
          number_(liquid_.plate.size()),
          size_(held::plates + number_ + 5),
          slope_(number_ + 1),
          by_taken_(number_ + 1),
          rate_(size_),
          p_(number_ + 2),
          q_(number_ + 1),
          s_(number_ + 2) {
        moment_.vapour.resize(number_ + 1);
    }

    std::size_t size() const { return size_; }
    std::size_t condenser() const { return held::plates + number_; }
    std::size_t flows() const { return condenser() + 1; }
    held_liquid const& liquid() const { return liquid_; }
    /// moles that an unknown composition counts: of plate i, or of the condenser
    double moles(std::size_t i) const { return i < number_ ? liquid_.plate[i] : liquid_.condenser; }
    /// the same column with at least so many moles on every plate and in the condenser
    held_column holding_at_least(double least) const {
        held_column result = *this;
        for (double& each : result.liquid_.plate) each = (std::max)(each, least);
        result.liquid_.condenser = (std::max)(result.liquid_.condenser, least);
        return result;
    }
    /// changes the heating
    void heat(vessel const& pot) { pot_ = pot; }

    /// everything at a moment
    /// @param y    unknowns
    /// @param rule the head
    template <class Rule>
    column_moment const& at(double const* y, Rule const& rule) const {
        balance_ethanol(y);
        balance_heat(y);
        set_flows(y, rule);
        return moment_;
    }

    /// Solves M (y - known) = reach g(y) by Newton's method, from the guess y. Its matrix has the derivatives
    /// of the ethanol balances; the rest depends on them only weakly or not at all.
    /// @return false if it does not converge
    template <class Rule>
    bool solve(double const* known, double reach, double* y, Rule const& rule, int most = 30) const {
        double previous = 1e300;
        double* const g = rate_.data();
        for (int i = 0; i < most; ++i) {
            balance_ethanol(y);
            if (rule.follows_heat()) balance_heat(y);
            set_flows(y, rule);
            double const left = known[held::left] + reach * g[held::left];
            if (!(left > 0.0)) return false;
            for (std::size_t k = held::ethanol; k <= condenser(); ++k) {
                double const mass = k == held::ethanol ? 1.0 : moles(k - held::plates);
                p_[k - held::ethanol] = mass * (known[k] - y[k]) + reach * g[k];
            }
            double const taken = solve_rows_and_taken(reach, p_.data());
            double greatest = std::abs(p_[0]) / left;
            for (std::size_t k = 1; k < p_.size(); ++k) greatest = (std::max)(greatest, std::abs(p_[k]));
            for (std::size_t k = flows(); k + 1 < size_; ++k) {
                g[k] = (wanted_.lag * known[k] + reach * g[k]) / (wanted_.lag + reach);
                greatest = (std::max)(greatest, std::abs(g[k] - y[k]));
            }
            // of the vapour that it follows, where rounding is magnified
            greatest = (std::max)(greatest, std::abs(taken) / (1.0 + 0.01 * wanted_.gain));
            if (!(greatest < unlimited)) return false;
            // Far from the solution a part of the change goes further.
            double const part = (std::min)(1.0, 0.2 / greatest);
            greatest = (std::max)(greatest, std::abs(left - y[held::left]) / left);
            y[held::left] += part * (left - y[held::left]);
            for (std::size_t k = 0; k < p_.size(); ++k) y[held::ethanol + k] += part * p_[k];
            for (std::size_t k = flows(); k + 1 < size_; ++k) y[k] += part * (g[k] - y[k]);
            y[size_ - 1] += part * taken;
            if (greatest < 1e-13 || (greatest < 1e-10 && greatest > 0.5 * previous)) {
                if (!rule.follows_heat()) balance_heat(y);
                for (std::size_t k = held::seconds; k < held::ethanol; ++k) y[k] = known[k] + reach * g[k];
                // with the last change, so that what leaves the pot has arrived
                y[held::left] = known[held::left] - reach * y[size_ - 1];
                y[held::collected] = known[held::collected] + reach * y[size_ - 1] * y[condenser()];
                return true;
            }
            previous = greatest;
        }
        return false;
    }
    /// Replaces errors e by (M - reach J)^-1 M e. The flows follow the liquids and have no errors of their
    /// own.
    void damp(double* e, double reach) const {
        for (std::size_t k = held::plates; k <= condenser(); ++k) e[k] *= moles(k - held::plates);
        solve_rows(reach, e + held::ethanol);
        double const taken = moment_.flows.taken;
        if (wanted_.gain > 0.0 && wanted_.least < taken && taken < wanted_.most) {
            double const change = gain_of_taken(reach) * top_change(e + held::ethanol);
            for (std::size_t i = 0; i < s_.size(); ++i) e[held::ethanol + i] += change * s_[i];
        }
        for (std::size_t k = flows(); k + 1 < size_; ++k) e[k] *= wanted_.lag / (wanted_.lag + reach);
        e[size_ - 1] = 0.0;
    }

    /// boiling temperature of x when `left` moles are left: the extract raises it
    double boiling(double x, double left) const {
        double const t = mixture_->temperature(x);
        if (solids_ == 0.0) return t;
        double const latent =
            mixture_->vapour_enthalpy(mixture_->vapour(x)) - mixture_->liquid_enthalpy(x).value;
        return t + std::log1p(solids_ / left) * correlation::gas_constant::molar * t * t / latent;
    }
    /// heat content of pot, plates and condenser
    double content(double const* y) const {
        double const n = y[held::left];
        double sum = n * mixture_->liquid_enthalpy(y[held::ethanol] / n).value;
        for (std::size_t i = 0; i < number_; ++i)
            sum += liquid_.plate[i] * mixture_->liquid_enthalpy(y[held::plates + i]).value;
        return sum + liquid_.condenser * mixture_->liquid_enthalpy(y[condenser()]).value;
    }

private:
    static double within(double x) { return (std::min)(1.0, (std::max)(0.0, x)); }

    /// vapours, rates of change of the liquids, and slopes for `solve_rows`
    void balance_ethanol(double const* y) const {
        column_moment& m = moment_;
        m.flows = {y[flows()], y[flows() + 1], y[flows() + 2], y[flows() + 3]};
        head_flows const& f = m.flows;
        double const n = y[held::left];
        auto over = mixture_->vapour_with_slope(within(y[held::ethanol] / n));
        m.vapour[0] = over.value;
        slope_[0] = over.slope / n;
        for (std::size_t i = 1; i <= number_; ++i) {
            double const e = liquid_.efficiency[i - 1];
            over = mixture_->vapour_with_slope(within(y[held::plates + i - 1]));
            m.vapour[i] = (1.0 - e) * m.vapour[i - 1] + e * over.value;
            slope_[i] = e * over.slope;
        }
        double const top = m.vapour[number_];
        double const xc = y[condenser()];
        climb_head(top, f);
        double const cold = 1.0 - f.enters;
        double const of_neck = f.enters * f.neck, of_partial = f.enters * (1.0 - f.neck) * f.partial;
        m.reflux = of_neck * m.neck_liquid + of_partial * m.back + f.returned() * xc + cold * top;
        reflux_slope_ = of_neck * neck_liquid_slope_ + of_partial * back_slope_ + cold;

        double* const g = rate_.data();
        g[held::left] = -f.taken;
        g[held::collected] = f.taken * xc;
        double down = m.reflux;  // phi x of the plate above
        double above = xc;
        for (std::size_t i = number_; i > 0; --i) {
            double const leaves = (1.0 - f.taken) * y[held::plates + i - 1];
            g[held::plates + i - 1] = m.vapour[i - 1] - m.vapour[i] + down - leaves;
            down = leaves;
            by_taken_[i] = y[held::plates + i - 1] - above;
            above = y[held::plates + i - 1];
        }
        g[held::ethanol] = down - m.vapour[0];
        by_taken_[0] = -above;
        g[condenser()] = f.condensed() * (m.top - xc);
    }

    /// heats taken out and the time of a mole of vapour, after `balance_ethanol`
    void balance_heat(double const* y) const {
        column_moment& m = moment_;
        head_flows const& f = m.flows;
        double* const g = rate_.data();
        double const x0 = within(y[held::ethanol] / y[held::left]);
        auto const h0 = mixture_->liquid_enthalpy(x0);
        double content = -f.taken * h0.value + h0.slope * (g[held::ethanol] + f.taken * x0);
        for (std::size_t i = held::plates; i < condenser(); ++i)
            content += mixture_->liquid_enthalpy(within(y[i])).slope * g[i];
        auto const hc = mixture_->liquid_enthalpy(within(y[condenser()]));
        double const kept = hc.slope * g[condenser()];
        double const up = mixture_->vapour_enthalpy(m.vapour[number_]);
        double const after = f.neck > 0.0 ? mixture_->vapour_enthalpy(m.neck_vapour) : up;
        double const last = f.partial > 0.0 ? mixture_->vapour_enthalpy(m.top) : after;
        m.neck = m.partial = 0.0;
        if (f.neck > 0.0) {
            double const back = f.neck * mixture_->liquid_enthalpy(m.neck_liquid).value;
            m.neck = f.enters * (up - back - (1.0 - f.neck) * after);
        }
        if (f.partial > 0.0) {
            double const back = f.partial * mixture_->liquid_enthalpy(m.back).value;
            m.partial = f.enters * (1.0 - f.neck) * (after - back - (1.0 - f.partial) * last);
        }
        m.condenser = f.condensed() * (last - hc.value) - kept;
        m.at_boiling = (m.neck + m.partial + m.condenser) / f.enters;
        m.condenser += (1.0 - f.enters) * m.at_boiling;
        m.boiling = boiling(x0, y[held::left]);
        double const loss = pot_.loss.value() * (m.boiling - pot_.room.kelvin());
        m.seconds = (m.at_boiling + f.taken * hc.value + content + kept) / (pot_.power.value() - loss);
        g[held::seconds] = m.seconds;
        g[held::neck] = m.neck;
        g[held::partial] = m.partial;
        g[held::condenser] = m.condenser;
        g[held::pot_loss] = loss * m.seconds;
        g[held::carried] = f.taken * hc.value;
    }

    /// the flows that the head sets
    template <class Rule>
    void set_flows(double const* y, Rule const& rule) const {
        wanted_ = rule(moment_, within(y[condenser()]));
        double* const g = rate_.data() + flows();
        g[0] = wanted_.flows.neck;
        g[1] = wanted_.flows.partial;
        g[2] = wanted_.flows.enters;
        g[3] = (std::min)(wanted_.most, (std::max)(wanted_.least, wanted_.flows.taken));
    }

    void climb_head(double yN, head_flows const& f) const {
        column_moment& m = moment_;
        m.neck_liquid = m.back = m.neck_vapour = m.top = yN;
        neck_liquid_slope_ = back_slope_ = top_slope_ = 1.0;
        if (f.neck > 0.0) {
            auto const c = condense(*mixture_, f.neck, yN);
            m.neck_liquid = c.liquid.value;
            m.neck_vapour = m.top = c.vapour.value;
            neck_liquid_slope_ = c.liquid.slope;
            top_slope_ = c.vapour.slope;
        }
        if (f.partial > 0.0) {
            auto const c = condense(*mixture_, f.partial, m.neck_vapour);
            m.back = c.liquid.value;
            m.top = c.vapour.value;
            back_slope_ = c.liquid.slope * top_slope_;
            top_slope_ *= c.vapour.slope;
        }
    }

    /// The same as `solve_rows`, with the distillate taken as one more unknown between its limits.
    /// @return change of the distillate taken
    double solve_rows_and_taken(double reach, double* r) const {
        solve_rows(reach, r);
        double const taken = moment_.flows.taken;
        double change = wanted_.flows.taken - taken;
        if (wanted_.gain > 0.0) {
            double const share = gain_of_taken(reach);  // before s_ is read
            double const gain = wanted_.gain * top_slope_;
            change = share / gain * change + share * top_change(r);
            change = (std::min)(wanted_.most, (std::max)(wanted_.least, taken + change)) - taken;
            for (std::size_t i = 0; i < s_.size(); ++i) r[i] += change * s_[i];
        }
        return change;
    }
    /// How the distillate taken follows a change of yN that it does not cause; its own effect on yN is in it.
    /// The changes of the liquids by it are in s_ then.
    double gain_of_taken(double reach) const {
        for (std::size_t i = 0; i <= number_; ++i) s_[i] = reach * by_taken_[i];
        s_[number_ + 1] = 0.0;
        solve_rows(reach, s_.data());
        double const gain = wanted_.gain * top_slope_;
        return gain / (1.0 - gain * top_change(s_.data()));
    }
    /// change of yN with changes of the liquids
    double top_change(double const* c) const {
        double change = slope_[0] * c[0];
        for (std::size_t i = 1; i <= number_; ++i)
            change = (1.0 - liquid_.efficiency[i - 1]) * change + slope_[i] * c[i];
        return change;
    }
    /// Solves (M - reach J) c = r for the changes c of m, x1 ... xN, xc, at the last moment. Each row
    /// contains only neighbours. Going up, every change is written as a + b c, where c is the change of phi x
    /// of the plate above, not known yet.
    /// @param r from m on; receives the changes
    void solve_rows(double reach, double* r) const {
        double const phi = 1.0 - moment_.flows.taken;
        double const pot = 1.0 + reach * slope_[0];
        r[0] /= pot;
        q_[0] = reach / pot;
        double a = slope_[0] * r[0];  // change of the vapour
        double b = slope_[0] * q_[0];
        for (std::size_t i = 1; i <= number_; ++i) {
            double const u = liquid_.plate[i - 1];
            double const e = liquid_.efficiency[i - 1];
            double const w = (1.0 - e) * b * phi + slope_[i];
            double const diagonal = u + reach * (phi + w - b * phi);
            r[i] = (r[i] + reach * e * a) / diagonal;
            q_[i] = reach / diagonal;
            a = (1.0 - e) * a + w * r[i];
            b = w * q_[i];
        }
        double& condenser = r[number_ + 1];
        double const flow = reach * moment_.flows.condensed();
        double const diagonal = liquid_.condenser + flow;
        double const returned = moment_.flows.returned();
        double const by_top = flow * top_slope_ / diagonal;  // change of xc with that of yN
        condenser /= diagonal;
        double const all = reflux_slope_ + returned * by_top;
        double c = (returned * condenser + all * a) / (1.0 - all * b);
        condenser += by_top * (a + b * c);
        for (std::size_t i = number_; i > 0; --i) {
            r[i] += q_[i] * c;
            c = phi * r[i];
        }
        r[0] += q_[0] * c;
    }

    M const* mixture_;
    held_liquid liquid_;
    vessel pot_;
    double solids_;
    std::size_t number_, size_;
    // work space, so that a run does not allocate; never changes a result
    mutable column_moment moment_;
    mutable std::vector<double> slope_;  // of each vapour with the liquid under it
    mutable double reflux_slope_ = 0.0, neck_liquid_slope_ = 0.0, back_slope_ = 0.0, top_slope_ = 0.0;
    mutable wanted_flows wanted_;
    mutable std::vector<double> by_taken_;  // changes of the rates of m, x1 ... xN with e
    mutable std::vector<double> rate_, p_, q_, s_;
};

/// A moment of a run with holdup.
struct held_point {
    double depth;               ///< w, moles of vapour that have left the pot
    double left;                ///< moles in the pot
    double distilled;           ///< moles distilled
    std::vector<double> y;      ///< the unknowns
    std::vector<double> ahead;  ///< their slopes with respect to w, a guess for the next step; may be empty
    std::size_t stretch = 0;    ///< number of steps of the plan that have been taken

    double x() const { return y[held::ethanol] / y[held::left]; }
    double ethanol() const { return y[held::collected]; }
    double seconds() const { return y[held::seconds]; }
    double condenser() const { return y[held::condenser]; }
    double neck() const { return y[held::neck]; }
    double pot_loss() const { return y[held::pot_loss]; }
    double carried() const { return y[held::carried]; }
    double partial_condenser() const { return y[held::partial]; }
    double distillate() const { return y[y.size() - 5]; }
};

/// How the head sets the flows, from those of a try: a rule for `held_column`.
template <boiling_mixture M>
class head_rule {
public:
    /// @param s     the still
    /// @param total whether everything is returned
    /// @param moles of the charge
    head_rule(M const& mixture, still const& s, bool total, double moles)
        : mixture_(&mixture),
          total_(total),
          ratio_(s.head.returned().ratio()),
          kept_(s.head.returned().kept()),
          rate_(s.head.returned().take_off().value()),
          neck_loss_(s.neck.loss().value()),
          room_(s.pot.room.kelvin()),
          water_(s.head.water() ? s.head.water()->heat().value() : 0.0),
          reflux_(s.head.reflux_temperature() ? s.head.reflux_temperature()->kelvin() : 0.0) {
        first_.neck = neck_loss_ > 0.0 ? 0.01 : s.neck.share();
        first_.partial = water_ > 0.0 ? 0.1 : s.head.share();
        // A regulator and shares that answer to it at once would drive each other. They follow as metal does.
        if (!total && kept_ >= 0.0 && follows_heat()) lag_ = 1e-4 * moles;
        if (!total) first_.taken = first_.condensed() / (1.0 + ratio_);
        if (!total && rate_ > 0.0) first_.taken *= 0.1;
    }

    /// whether the flows depend on heats and times, so that they vary
    bool follows_heat() const { return neck_loss_ > 0.0 || water_ > 0.0 || rate_ > 0.0 || reflux_ > 0.0; }
    /// whether shares and the effect of cold reflux have values of their own, which change in time
    bool has_lag() const { return lag_ > 0.0; }
    /// flows to begin a search with
    head_flows const& first() const { return first_; }

    /// A head that keeps a strength takes more the stronger the top vapour is, from what the greatest reflux
    /// leaves at that strength to all of it beyond this range, as a regulator of the head's temperature does.
    static constexpr double band = 1e-5;
    /// where in that range the vapour is: below 0 the strength is not kept
    double margin(column_moment const& m) const { return (m.top - kept_) / band; }

    wanted_flows operator()(column_moment const& m, double xc) const {
        wanted_flows wanted;
        wanted.flows = m.flows;
        wanted.lag = lag_;
        head_flows& f = wanted.flows;
        if (neck_loss_ == 0.0) f.neck = first_.neck;
        if (water_ == 0.0) f.partial = first_.partial;
        // The heat that a share takes is proportional to it, nearly.
        if (neck_loss_ > 0.0) {
            double const warmer = (std::max)(0.0, mixture_->temperature(m.neck_liquid) - room_);
            f.neck = limited(f.neck * neck_loss_ * warmer * m.seconds / m.neck);
        }
        if (water_ > 0.0) f.partial = limited(f.partial * water_ * m.seconds / m.partial);
        double const pass = (1.0 - f.neck) * (1.0 - f.partial);
        double const cold = reflux_ > 0.0 ? warming(xc) / m.at_boiling : 0.0;
        double const by_ratio = 1.0 / ((1.0 + ratio_) / pass + cold * ratio_);
        wanted.most = total_ ? 0.0 : pass;
        f.taken = rate_ > 0.0 ? rate_ * m.seconds / mass_of_moles(1.0, xc).volume() : by_ratio;
        if (kept_ >= 0.0) {
            wanted.least = (std::min)(by_ratio, wanted.most);
            wanted.gain = total_ ? 0.0 : (pass - by_ratio) / band;
            f.taken = by_ratio + (pass - by_ratio) * margin(m);
        }
        double const taken = (std::min)(wanted.most, (std::max)(wanted.least, f.taken));
        if (wanted.gain == 0.0) f.taken = taken;
        f.enters = (1.0 + cold * taken) / (1.0 + cold * pass);
        return wanted;
    }

private:
    static double limited(double share) { return (std::min)(0.999, (std::max)(1e-12, share)); }
    /// heat that warms a mole of the cold reflux to its boiling point
    double warming(double x) const {
        double const boils = mixture_->temperature(x);
        double const heat = model::enthalpy::liquid(x, boils) - model::enthalpy::liquid(x, reflux_);
        return (std::max)(0.0, heat);
    }

    M const* mixture_;
    bool total_;
    double ratio_, kept_, rate_, neck_loss_, room_, water_, reflux_;
    double lag_ = 0.0;
    head_flows first_;
};

/// A charged still with holdup, from one step of the plan to the next: moments of its run and steps between
/// them, for `batch_history`.
template <boiling_mixture M>
class held_still {
public:
    using point = held_point;
    using integration_step = numeric::stiff_step;
    /// the plates are filled with weak liquid, so the distillate becomes stronger first
    static constexpr bool settles = true;

    held_still(wash const& charge, still const& s, M const& mixture)
        : still_(refuse_unmodelled(s)),
          mixture_(&mixture),
          steady_(charge, s, mixture),
          column_(mixture, liquid_of(s, mixture, amounts(charge)), s.pot, amounts(charge).solids),
          rule_(mixture, s, false, steady_.moles()),
          scale_(column_.size(), 1.0) {
        double const all = steady_.moles();
        double const strongest = mixture.vapour(x());
        double const heat = 0.3 * all * 4e4;  // approximate heat to boil a part of it
        for (auto k : {held::neck, held::partial, held::condenser, held::pot_loss, held::carried})
            scale_[k] = heat;
        scale_[held::left] = all;
        scale_[held::collected] = scale_[held::ethanol] = all * steady_.x();
        scale_[held::seconds] = heat / s.pot.power.value();
        for (std::size_t k = held::plates; k <= column_.condenser(); ++k) scale_[k] = strongest;
        // A step may err by 1e-8 of the amounts of ethanol; the tests show that 1e-8 of what is reported
        // comes of it.
        for (std::size_t k = held::ethanol; k <= column_.condenser(); ++k) scale_[k] *= 10.0;
        scale_[held::collected] *= 10.0;
    }
    /// the same still after a step of its plan
    held_still(held_still const& before, plan_step const& change, point const& now)
        : still_(before.still_),
          mixture_(before.mixture_),
          steady_(before.steady_, change, {0.0, now.left, 0.0, {now.x()}, {}, 0}),  // checks the change
          column_(before.column_),
          rule_(before.rule_),
          scale_(before.scale_) {
        still_ = refuse_unmodelled(steady_.apparatus());
        column_.heat(still_.pot);
        rule_ = head_rule<M>(*mixture_, still_, false, moles());
    }

    still const& apparatus() const { return still_; }
    double moles() const { return steady_.moles(); }  ///< of the charge
    double x() const { return steady_.x(); }          ///< of the charge
    held_column<M> const& column() const { return column_; }

    /// everything at a moment; valid until the next one is computed
    column_moment const& moment(point const& p) const { return column_.at(p.y.data(), rule_); }

    double boiling(double x, double left) const { return column_.boiling(x, left); }
    double boiling(point const& p) const { return boiling(p.x(), p.left); }
    /// dew point of the vapour that comes to the condenser
    double head_temperature(point const& p) const { return steady_.head_temperature(moment(p).top); }
    /// whether the reflux keeps a strength that would be lost: positive while it is kept
    double margin_of_strength(point const& p) const {
        return still_.head.returned().keeps_strength() ? rule_.margin(moment(p)) : 1.0;
    }
    static double strongest(point const& p) { return p.distillate(); }
    static point weaker(point const& p, double) { return p; }
    /// enthalpy of the charge when it begins to boil, and of what the still holds at a moment
    double charge_heat() const { return moles() * mixture_->liquid_enthalpy(x()).value; }
    double content_heat(point const& p) const { return column_.content(p.y.data()); }
    /// moles that stay in the still, and of these ethanol: column and head drain into the pot
    std::pair<double, double> remaining(point const& p) const {
        double ethanol = p.y[held::ethanol];
        for (std::size_t k = held::plates; k <= column_.condenser(); ++k)
            ethanol += column_.moles(k - held::plates) * p.y[k];
        return {p.left + column_.liquid().all(), ethanol};
    }
    /// what a report shows of the moment
    still_figures figures(point const& p) const {
        column_moment const& m = moment(p);
        double const rate = 1.0 / m.seconds;
        return {p.distillate(),
                steady_.head_temperature(m.top),
                m.flows.returned() / m.flows.taken,
                rate * m.condenser,
                rate * m.neck,
                rate * m.partial,
                rate * m.flows.enters,
                rate * m.flows.taken};
    }
    /// Refuses a take-off rate that is not reached at a moment, and too great a share that condenses.
    void require_rate(point const& p) const {
        column_moment const& m = moment(p);
        reflux const& r = still_.head.returned();
        if (r.follows_take_off() && !(m.flows.returned() > 1e-9)) {
            double const all = m.flows.condensed() / m.seconds * mass_of_moles(1.0, p.distillate()).volume();
            raise_error(refusal("distillation", argument::take_off_rate, r.take_off().value() * 6e7, "mL/min",
                                0.0, all * 6e7,
                                "all that condenses " + numeric::text_of(p.seconds() / 60.0, 4) +
                                    " min after boiling began"));
        }
        batch_still<M>::require_share(argument::heat_loss_coefficient, "W/K", still_.neck.loss().value(),
                                      m.flows.neck, neck::greatest_share);
        if (auto const& water = still_.head.water())
            batch_still<M>::require_share(argument::flow_of_the_cooling_water, "L/min",
                                          water->flow.value() * 6e4, m.flows.partial, head::greatest_share);
    }

    /// the moment when boiling begins; the liquids of column and head are not there yet
    point begin_boiling() const {
        std::vector<double> y(column_.size(), 0.0);
        y[held::left] = moles();
        y[held::ethanol] = moles() * x();
        for (std::size_t k = held::plates; k <= column_.condenser(); ++k) y[k] = mixture_->vapour(x());
        y[column_.flows() + 2] = 1.0;
        return {0.0, moles(), 0.0, std::move(y), {}, 0};
    }
    /// the moment when distillate begins to be taken: plates and condenser have been filled, and so many
    /// seconds at total reflux have passed
    /// @param record callable: (point const& from, double length, integration_step const&), told every step
    template <class Record>
    point begin(double seconds, Record const& record) const {
        steady_.require_start(seconds);
        point now = filled();
        if (seconds == 0.0 && !rule_.has_lag()) return settled(now);
        held_still total = *this;
        total.rule_ = head_rule<M>(*mixture_, still_, true, moles());
        now = total.settled(now);
        double const end = now.seconds() + seconds;
        for (double h = 0.01; now.seconds() < end;) {
            integration_step taken = total.advance(now, h);
            for (; taken.error > run_tolerance && h > 1e-12; taken = total.advance(now, h))
                h = numeric::next_step(h, taken.error, run_tolerance);
            double const next = numeric::next_step(h, taken.error, run_tolerance);
            point after = total.reached(now, h, taken);
            if (after.seconds() >= end) {
                auto const late = [&](double length) {
                    return length > 0.0
                               ? total.reached(now, length, total.advance(now, length)).seconds() - end
                               : now.seconds() - end;
                };
                h = numeric::bracketed_root(late, 0.0, h, 1e-14);
                taken = total.advance(now, h);
                after = total.reached(now, h, taken);
                after.y[held::seconds] = end;  // but for rounding
            }
            record(now, h, taken);
            now = std::move(after);
            h = next;
        }
        return settled(now);
    }
    /// the first moment after a step of the plan that made this still from another
    point go_on(point const& before) const {
        point p = settled(before);
        ++p.stretch;
        return p;
    }
    /// length of a step after which so much of the charge is left, if nothing else changes
    double longest(point const& p, double share) const {
        return (p.left - share * moles()) / p.y[column_.flows() + 3];
    }
    integration_step advance(point const& from, double h) const {
        struct equations {
            held_still const& still;
            bool solve(double const* known, double reach, double* y) const {
                return still.column_.solve(known, reach, y, still.rule_);
            }
            void damp(double* e, double reach) const { still.column_.damp(e, reach); }
        };
        std::vector<double> guess = from.ahead;
        for (double& each : guess) each *= h;
        return numeric::take_stiff_step(equations{*this}, from.y, guess.empty() ? nullptr : guess.data(), h,
                                        scale_);
    }
    /// the end of a step
    point reached(point const& from, double h, integration_step const& s) const {
        std::size_t const n = column_.size();
        point p = make_point(from.depth + h, std::vector<double>(s.end(), s.end() + n), from.stretch);
        p.ahead.assign(s.slope(), s.slope() + n);
        for (double& each : p.ahead) each /= h;
        return p;
    }
    /// the moment inside a step when so many moles had been distilled
    point inside(double depth, double length, integration_step const& s, double distilled,
                 std::size_t stretch) const {
        double const wanted = moles() - column_.liquid().all() - distilled;
        auto const more = [&](double theta) { return s.at(theta, held::left) - wanted; };
        double theta = 0.0;
        if (more(0.0) > 0.0) theta = more(1.0) < 0.0 ? numeric::bracketed_root(more, 0.0, 1.0, 1e-12) : 1.0;
        return part_of(depth, length, s, theta, stretch);
    }
    /// the moment after a part of a step
    point part_of(double depth, double length, integration_step const& s, double theta,
                  std::size_t stretch) const {
        std::vector<double> y;
        s.at(theta, y);
        return make_point(depth + theta * length, std::move(y), stretch);
    }

private:
    point make_point(double depth, std::vector<double> y, std::size_t stretch) const {
        double const left = y[held::left];
        return {depth, left, moles() - column_.liquid().all() - left, std::move(y), {}, stretch};
    }
    /// plates and condenser have just been filled
    point filled() const {
        double const all = moles(), held = column_.liquid().all();
        double const first = mixture_->vapour(x());
        std::vector<double> y = begin_boiling().y;
        y[held::left] = all - held;
        y[held::ethanol] = all * x() - held * first;
        double const condensed =
            held * (mixture_->vapour_enthalpy(first) - mixture_->liquid_enthalpy(first).value);
        double const loss = still_.pot.loss.value() * (boiling(x(), all) - still_.pot.room.kelvin());
        double const heat = condensed + column_.content(y.data()) - charge_heat();
        y[held::seconds] = heat / (still_.pot.power.value() - loss);
        y[held::condenser] = condensed;
        y[held::pot_loss] = loss * y[held::seconds];
        return make_point(0.0, std::move(y), 0);
    }
    /// the moment with the flows of this head, and with the liquids that hold nothing in balance
    point settled(point p) const {
        p.ahead.clear();
        std::vector<double> const y = balanced(column_, rule_, p.y);
        std::copy(y.begin() + held::plates, y.end(), p.y.begin() + held::plates);
        return p;
    }
    /// Solves all equations without a derivative.
    static std::vector<double> balanced(held_column<M> const& column, head_rule<M> const& rule,
                                        std::vector<double> y) {
        head_flows const f = rule.first();
        double* const flows = y.data() + column.flows();
        if (!rule.has_lag()) {
            flows[0] = f.neck;
            flows[1] = f.partial;
            flows[2] = f.enters;
        }
        flows[3] = f.taken;
        double const at_once = 1e-12;
        std::vector<double> known = y;
        if (column.solve(known.data(), at_once, y.data(), rule, 100)) return y;
        // From too far for Newton's method: liquids that hold next to nothing go there in the course of a
        // time.
        y = known;
        for (double pace = 1e-3; pace < 1e12; pace *= 3.0) {
            held_column<M> const eased = column.holding_at_least(at_once / pace);
            if (eased.solve(known.data(), at_once, y.data(), rule)) known = y;
            y = known;
        }
        constexpr int most = 100;
        if (!column.solve(known.data(), at_once, y.data(), rule, most)) {
            raise_error(refusal("distillation", argument::number_of_steps, most + 1, "", 0.0, most,
                                "the flows at the head cannot be found"));
        }
        return y;
    }

    static still const& refuse_unmodelled(still const& s) {
        if (s.flow != flow_model::constant_molar_overflow)
            raise_error(refusal("distillation", argument::holdup,
                                (s.tower.holdup() + s.head.holdup()).value() * 1e3, "L", 0.0, 0.0,
                                "holdup is computed only with constant molar overflow"));
        return s;
    }
    /// efficiencies, and the moles held
    static held_liquid liquid_of(still const& s, M const& mixture, amounts const& charge) {
        held_liquid liquid;
        std::vector<double> volume;
        for (int i = 0; i < s.tower.whole(); ++i) {
            liquid.efficiency.push_back(s.tower.efficiency());
            volume.push_back(s.tower.holdup().value());
        }
        if (s.tower.topmost() > 0.0) {
            liquid.efficiency.push_back(s.tower.topmost());
            volume.push_back(s.tower.holdup().value() * s.tower.topmost());
        }
        liquid.plate.assign(volume.size(), 0.0);
        double const concentration =
            1.0 / mass_of_moles(1.0, first_distillate(s, mixture, liquid, charge)).volume();
        for (std::size_t i = 0; i < volume.size(); ++i) liquid.plate[i] = concentration * volume[i];
        liquid.condenser = concentration * s.head.holdup().value();
        double const most = 0.5 * charge.ethanol / mixture.vapour(charge.mole_fraction());
        require_range(
            "distillation", argument::holdup, liquid.all() / concentration * 1e3, "L", 0.0,
            most / concentration * 1e3,
            "all that column and head hold: filling them takes half of the ethanol at the upper bound");
        return liquid;
    }
    /// distillate at the start, without holdup
    static double first_distillate(still const& s, M const& mixture, held_liquid const& empty,
                                   amounts const& charge) {
        if (s.head.returned().keeps_strength()) return s.head.returned().kept();
        held_column<M> const column(mixture, empty, s.pot, charge.solids);
        head_rule<M> const rule(mixture, s, false, charge.volatiles());
        std::vector<double> y(column.size(), 0.0);
        y[held::left] = charge.volatiles();
        y[held::ethanol] = charge.ethanol;
        for (std::size_t k = held::plates; k <= column.condenser(); ++k)
            y[k] = mixture.vapour(charge.mole_fraction());
        return balanced(column, rule, y)[column.condenser()];
    }

    still still_;
    M const* mixture_;
    batch_still<M> steady_;  // checks the charge and the still
    held_column<M> column_;
    head_rule<M> rule_;
    std::vector<double> scale_;
};

}  // namespace aqueth::inline AQUETH_ABI::detail
