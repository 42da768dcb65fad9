// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/numeric/diagonally_implicit.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/still/heating.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

/// @file
/// A column whose plates and condenser hold liquid, over a pot that boils away. Plain numbers: moles, K, J, s.

namespace aqueth::inline AQUETH_ABI::detail {

// The equations. Flows are in moles per mole of vapour that leaves the pot; equal moles condense and boil on a
// plate.
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
//     q             heat that warms the reflux to boiling, J/mol
//     P, k, T, Tr   power of the heater in W, heat loss of the pot in W/K, temperatures of pot and room in K
//
// Vapours.   yi = (1 - Ei) y(i-1) + Ei y(xi)
// Neck.      yN = s1 l1 + (1 - s1) d1,  d1 = y(l1);  d1 = s2 l2 + (1 - s2) d2,  d2 = y(l2)
// Reflux.    r = v (1 - s1) (1 - s2) - e
//            1 - v = r q / (H(yN) - h(yN))                   vapour that cold reflux condenses at the top
//            phi x(N+1) = v (s1 l1 + (1 - s1) s2 l2) + r xc + (1 - v) yN    runs to the topmost plate
// Ethanol.   dm/dw     = phi x1 - y0                         in the pot
//            Ui dxi/dw = y(i-1) - yi + phi (x(i+1) - xi)     on a plate
//            Uc dxc/dw = v (1 - s1) (1 - s2) (d2 - xc)       in the condenser
//            dA/dw     = e xc                                collected
// Moles.     dn/dw     = -e
// Where a plate or the condenser holds nothing, U = 0, its balance is an equation without a derivative. Without
// any holdup these are the equations of `batch_run.hpp`, with e dw = n du.
//
// Heat, around pot, column and head, J per mole of vapour. All liquids boil.
//     qn = v (H(yN) - s1 h(l1) - (1 - s1) H(d1))                                     taken out by the neck
//     qp = v (1 - s1) (H(d1) - s2 h(l2) - (1 - s2) H(d2))                            by the partial condenser
//     qc = v (1 - s1) (1 - s2) (H(d2) - h(xc) - h'(xc) (d2 - xc)) + r q              by the total condenser
//     (P - k (T - Tr)) dt/dw = qn + qp + qc + e h(xc) + d(n h(x0) + U1 h(x1) + ... + Uc h(xc))/dw
//
// The start. The first vapour of the charge condenses and fills plates and condenser. They hold the moles of
// that liquid in their volumes at 20 °C.

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

/// Everything at one moment of a column with holdup, from its liquids.
struct column_moment {
    std::vector<double> vapour;  ///< y0 to yN
    double neck_liquid = 0.0;    ///< l1
    double neck_vapour = 0.0;    ///< d1
    double back = 0.0;           ///< l2
    double top = 0.0;            ///< d2
    double reflux = 0.0;         ///< phi x(N+1)
    head_flows flows;
    double seconds = 0.0;    ///< dt/dw
    double neck = 0.0;       ///< qn
    double partial = 0.0;    ///< qp
    double condenser = 0.0;  ///< qc
    double boiling = 0.0;    ///< T
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
/// implicit method. `Flows` sets the head: (column_moment const&, double distillate) -> head_flows.
template <boiling_mixture M>
class held_column {
public:
    held_column(M const& mixture, held_liquid liquid, vessel const& pot, double solids)
        : mixture_(mixture),
          liquid_(std::move(liquid)),
          pot_(pot),
          solids_(solids),
          number_(liquid_.plate.size()),
          size_(held::plates + number_ + 5),
          slope_(number_ + 1),
          rate_(size_),
          p_(number_ + 2),
          q_(number_ + 1) {
        moment_.vapour.resize(number_ + 1);
    }

    std::size_t size() const { return size_; }
    std::size_t condenser() const { return held::plates + number_; }
    std::size_t flows() const { return condenser() + 1; }
    held_liquid const& liquid() const { return liquid_; }

    /// @param y     unknowns
    /// @param rule  the head
    /// @return everything else at that moment; the rates of change are in `rate`
    template <class Rule>
    column_moment const& at(double const* y, Rule const& rule) const {
        head_flows const f{y[flows()], y[flows() + 1], y[flows() + 2], y[flows() + 3]};
        column_moment& m = moment_;
        m.flows = f;
        double const phi = 1.0 - f.taken;
        double const n = y[held::left];
        double const x0 = within(y[held::ethanol] / n);
        auto over = mixture_.vapour_with_slope(x0);
        m.vapour[0] = over.value;
        slope_[0] = over.slope / n;
        for (std::size_t i = 1; i <= number_; ++i) {
            double const e = liquid_.efficiency[i - 1];
            over = mixture_.vapour_with_slope(within(y[held::plates + i - 1]));
            m.vapour[i] = (1.0 - e) * m.vapour[i - 1] + e * over.value;
            slope_[i] = e * over.slope;
        }
        double const yN = m.vapour[number_];
        double const xc = within(y[condenser()]);
        climb_head(yN, f);

        // reflux, and its slope with respect to yN and xc
        double const r = f.returned();
        double const cold = 1.0 - f.enters;
        m.reflux =
            f.enters * (f.neck * m.neck_liquid + (1.0 - f.neck) * f.partial * m.back) + r * xc + cold * yN;
        reflux_slope_ =
            f.enters * (f.neck * neck_liquid_slope_ + (1.0 - f.neck) * f.partial * back_slope_) + cold;

        double const* const x = y + held::plates;
        auto const below = [&](std::size_t i) { return phi * x[i]; };  // comes from plate i + 1
        double above = number_ > 0 ? below(0) : m.reflux;
        double* const g = rate_.data();
        g[held::left] = -f.taken;
        g[held::collected] = f.taken * xc;
        g[held::ethanol] = above - m.vapour[0];
        auto const h0 = mixture_.liquid_enthalpy(x0);
        double content = -f.taken * h0.value + h0.slope * (g[held::ethanol] + f.taken * x0);
        for (std::size_t i = 0; i < number_; ++i) {
            above = i + 1 < number_ ? below(i + 1) : m.reflux;
            double const rate = m.vapour[i] - m.vapour[i + 1] + above - below(i);
            g[held::plates + i] = rate;
            content += mixture_.liquid_enthalpy(within(x[i])).slope * rate;
        }
        g[condenser()] = f.condensed() * (m.top - xc);

        // heat
        auto const hc = mixture_.liquid_enthalpy(xc);
        content += hc.slope * g[condenser()];
        double const up = mixture_.vapour_enthalpy(yN);
        double const after = f.neck > 0.0 ? mixture_.vapour_enthalpy(m.neck_vapour) : up;
        double const last = f.partial > 0.0 ? mixture_.vapour_enthalpy(m.top) : after;
        m.neck = m.partial = 0.0;
        if (f.neck > 0.0) {
            double const back = f.neck * mixture_.liquid_enthalpy(m.neck_liquid).value;
            m.neck = f.enters * (up - back - (1.0 - f.neck) * after);
        }
        if (f.partial > 0.0) {
            double const back = f.partial * mixture_.liquid_enthalpy(m.back).value;
            m.partial = f.enters * (1.0 - f.neck) * (after - back - (1.0 - f.partial) * last);
        }
        m.condenser = f.condensed() * (last - hc.value) - hc.slope * g[condenser()];
        if (cold > 0.0) m.condenser += cold * (up - mixture_.liquid_enthalpy(yN).value);
        m.boiling = boiling(x0, n);
        double const loss = pot_.loss.value() * (m.boiling - pot_.room.kelvin());
        double const heat = m.neck + m.partial + m.condenser + f.taken * hc.value + content;
        m.seconds = heat / (pot_.power.value() - loss);
        g[held::seconds] = m.seconds;
        g[held::neck] = m.neck;
        g[held::partial] = m.partial;
        g[held::condenser] = m.condenser;
        g[held::pot_loss] = loss * m.seconds;
        g[held::carried] = f.taken * hc.value;

        head_flows const wanted = rule(m, xc);
        g[flows()] = wanted.neck;
        g[flows() + 1] = wanted.partial;
        g[flows() + 2] = wanted.enters;
        g[flows() + 3] = wanted.taken;
        return m;
    }

    /// Solves M (y - known) = reach g(y) by Newton's method, from the guess y. Its matrix has the derivatives of
    /// the ethanol balances; the rest depends on them only weakly or not at all.
    /// @return false if it does not converge
    template <class Rule>
    bool solve(double const* known, double reach, double* y, Rule const& rule) const {
        double previous = 1e300;
        double const* const g = rate_.data();
        for (int i = 0; i < 30; ++i) {
            at(y, rule);
            double const left = known[held::left] + reach * g[held::left];
            if (!(left > 0.0)) return false;
            double greatest = std::abs(left - y[held::left]) / left;
            y[held::left] = left;
            for (std::size_t k = held::ethanol; k <= condenser(); ++k) {
                double const mass = k == held::ethanol ? 1.0 : moles(k - held::plates);
                p_[k - held::ethanol] = mass * (known[k] - y[k]) + reach * g[k];
            }
            solve_rows(reach, p_.data());
            for (std::size_t k = held::ethanol; k <= condenser(); ++k) {
                double const change = p_[k - held::ethanol];
                y[k] += change;
                greatest = (std::max)(greatest, std::abs(k == held::ethanol ? change / left : change));
            }
            for (std::size_t k = flows(); k < size_; ++k) {
                greatest = (std::max)(greatest, std::abs(g[k] - y[k]));
                y[k] = g[k];
            }
            if (!(greatest < 10.0)) return false;
            if (greatest < 1e-13 || (greatest < 1e-10 && greatest > 0.5 * previous)) {
                for (std::size_t k = held::collected; k < held::ethanol; ++k) y[k] = known[k] + reach * g[k];
                return true;
            }
            previous = greatest;
        }
        return false;
    }
    /// Replaces errors e by (M - reach J)^-1 M e. The flows follow the liquids and have no errors of their own.
    void damp(double* e, double reach) const {
        for (std::size_t k = held::plates; k <= condenser(); ++k) e[k] *= moles(k - held::plates);
        solve_rows(reach, e + held::ethanol);
        for (std::size_t k = flows(); k < size_; ++k) e[k] = 0.0;
    }

    /// boiling temperature of x when `left` moles are left: the extract raises it
    double boiling(double x, double left) const {
        double const t = mixture_.temperature(x);
        if (solids_ == 0.0) return t;
        double const latent =
            mixture_.vapour_enthalpy(mixture_.vapour(x)) - mixture_.liquid_enthalpy(x).value;
        return t + std::log1p(solids_ / left) * correlation::gas_constant::molar * t * t / latent;
    }
    /// heat content of pot, plates and condenser
    double content(double const* y) const {
        double const n = y[held::left];
        double sum = n * mixture_.liquid_enthalpy(y[held::ethanol] / n).value;
        for (std::size_t i = 0; i < number_; ++i)
            sum += liquid_.plate[i] * mixture_.liquid_enthalpy(y[held::plates + i]).value;
        return sum + liquid_.condenser * mixture_.liquid_enthalpy(y[condenser()]).value;
    }

private:
    static double within(double x) { return (std::min)(1.0, (std::max)(0.0, x)); }

    void climb_head(double yN, head_flows const& f) const {
        column_moment& m = moment_;
        m.neck_liquid = m.back = m.neck_vapour = m.top = yN;
        neck_liquid_slope_ = back_slope_ = top_slope_ = 1.0;
        if (f.neck > 0.0) {
            auto const c = condense(mixture_, f.neck, yN);
            m.neck_liquid = c.liquid.value;
            m.neck_vapour = m.top = c.vapour.value;
            neck_liquid_slope_ = c.liquid.slope;
            top_slope_ = c.vapour.slope;
        }
        if (f.partial > 0.0) {
            auto const c = condense(mixture_, f.partial, m.neck_vapour);
            m.back = c.liquid.value;
            m.top = c.vapour.value;
            back_slope_ = c.liquid.slope * top_slope_;
            top_slope_ *= c.vapour.slope;
        }
    }

    /// moles that an unknown composition counts: of plate i, or of the condenser
    double moles(std::size_t i) const { return i < number_ ? liquid_.plate[i] : liquid_.condenser; }

    /// Solves (M - reach J) c = r for the changes c of m, x1 ... xN, xc, at the last moment. Each row contains
    /// only neighbours. Going up, every change is written as a + b c, where c is the change of phi x of the
    /// plate above, not known yet.
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

    M const& mixture_;
    held_liquid liquid_;
    vessel pot_;
    double solids_;
    std::size_t number_, size_;
    // work space, so that a run does not allocate; never changes a result
    mutable column_moment moment_;
    mutable std::vector<double> slope_;  // of each vapour with the liquid under it
    mutable double reflux_slope_ = 0.0, neck_liquid_slope_ = 0.0, back_slope_ = 0.0, top_slope_ = 0.0;
    mutable std::vector<double> rate_, p_, q_;
};

}  // namespace aqueth::inline AQUETH_ABI::detail
