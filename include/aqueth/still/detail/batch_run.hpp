// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/error.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/numeric/fixed_point.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/numeric/runge_kutta.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/wash.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <deque>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

/// @file
/// The machinery of a batch distillation in plain numbers: moles, K, J, s. `run.hpp` is the typed
/// interface.

namespace aqueth::inline AQUETH_ABI::detail {

/// Mass in kg and mass fraction of ethanol of so many moles of ethanol and water together, of which so many
/// are ethanol. Rounding below nothing or above all is cut off.
struct mass_of_moles {
    double mass, fraction;
    mass_of_moles(double moles, double ethanol) {
        namespace m = correlation::molar_mass;
        double const alcohol = ethanol * m::ethanol * 1e-3;
        double const all = alcohol + (moles - ethanol) * m::water * 1e-3;
        mass = (std::max)(0.0, all);
        fraction = all > 0.0 ? (std::min)(1.0, (std::max)(0.0, alcohol / all)) : 0.0;
    }
    /// volume at 20 °C in m3; not checked, as the search for an event asks for it at every try
    double volume() const { return mass / correlation::oiml_r22::density(fraction, 20.0); }
};

inline parcel parcel_of_moles(double moles, double ethanol) {
    mass_of_moles const all(moles, ethanol);
    return parcel::of(all.mass * kilogram, mass_fraction(all.fraction), celsius(20));
}

/// The unknowns of a run, in this order: x in the still, moles of ethanol collected, seconds, and the heats
/// in J: taken out by the condenser, by the neck, lost by the pot, carried over, taken out by a partial
/// condenser.
using batch_state = numeric::state<8>;

/// A moment of a run.
struct batch_point {
    double depth;             ///< ln of the charge's moles over what is left
    double left;              ///< moles left
    double distilled;         ///< moles distilled
    batch_state y;            ///< the unknowns
    batch_state slope;        ///< their slopes with respect to depth
    std::size_t stretch = 0;  ///< number of steps of the plan that have been taken

    double x() const { return y[0]; }
    double ethanol() const { return y[1]; }
    double seconds() const { return y[2]; }
    double condenser() const { return y[3]; }
    double neck() const { return y[4]; }
    double pot_loss() const { return y[5]; }
    double carried() const { return y[6]; }
    double partial_condenser() const { return y[7]; }
    double distillate() const { return y[0] - slope[0]; }  ///< composition, as dx/d(depth) = x - distillate
};

// The equations of a batch. There is no holdup: only the pot stores moles and heat.
//
//     n, N0      moles of ethanol and water in the pot now and at the start, mol; extract is not counted
//     u          depth, ln(N0 / n); the independent variable
//     x, d       mole fraction of ethanol in the pot and in the distillate
//     y(x)       mole fraction in the vapour in equilibrium with the liquid x
//     v          mole fraction in the vapour at the top of the column, which enters the neck
//     s1, s2     shares of the vapour's moles that condense: in the neck, of the rest in a partial condenser
//     p          share of the vapour that passes both: (1 - s1)(1 - s2)
//     v1; l1, l2 mole fractions in the vapour that passes the neck, in the liquids that run back from both
//     R          reflux ratio: moles that a total condenser returns per mole of distillate
//     c          moles of vapour at the top of the column that a mole of cold reflux condenses until it boils
//     phi        internal reflux: liquid over vapour in the column
//     h(x), H(y) molar enthalpy of boiling liquid and of saturated vapour, J/mol; h'(x) is dh/dx
//     h(d, Tc)   molar enthalpy of the distillate at the temperature Tc of the reflux
//     E          moles of ethanol collected
//     t          time since boiling began, s
//     P          power of the heater, W
//     k, kn      heat losses of the pot and of the neck in W/K
//     T, Tn, Tr  temperatures of the pot, of the vapour that leaves the neck, and of the room in K
//
// Neck and partial condenser. The liquid that runs back is in equilibrium with the vapour that goes on:
//     v1 = y(l1), d = y(l2)
//     v  = s1 l1 + (1 - s1) v1                       ethanol balance of the neck
//     v1 = s2 l2 + (1 - s2) d                        of the partial condenser
// Without a column v is y(x). The liquids run into the column, which gives v over x (column_solver). All
// together give d as a function of x, phi, s1, s2.
//
// Heats, in J per mole of vapour that enters the neck, if all condensate boils where it forms:
//     q1 = H(v) - s1 h(l1) - (1 - s1) H(v1)                      neck
//     q2 = (1 - s1) (H(v1) - s2 h(l2) - (1 - s2) H(d))           partial condenser
//     q3 = p (H(d) - h(d))                                       condenser
//
// Reflux. A mole of distillate takes (1 + R)/p moles of vapour through the top of the column. R moles of cold
// reflux condense c R more below the top:
//     c = (h(d) - h(d, Tc)) / (q1 + q2 + q3)         0 if the reflux boils
//     1 / (1 - phi) = (1 + R) / p + c R
// A take-off rate D in mol/s gives phi: the time of a mole of distillate, below, is 1/D.
//
// Component balances. Only distillate leaves the pot: dn = -n du, and d(n x) = d dn. So
//     dx/du = x - d                                   Rayleigh's equation, d ln n/dx = 1 / (d - x)
//     dE/du = n d                                     ethanol collected
// Column and top act on these balances through d alone. Water is the rest: N0 - n moles have come over, of
// which E are ethanol.
//
// Heat balance, around pot, column and top, in J per mole of distillate:
//     q = (q1 + q2 + q3) / (1 - phi)                  taken out above the column
//     (P - k (T - Tr)) dt = (q + h(d) - h(x) - h'(x) (d - x)) n du
// The last two terms are the heat that the pot's content loses, -d(n h(x)) = (h(x) + h'(x) (d - x)) n du. Of
// q the neck takes q1 (1 + R)/p, the partial condenser q2 (1 + R)/p, and the condenser the rest. The
// integrals of these, of k (T - Tr) dt/du and of n h(d) over u are the heats that a run reports.
//
// Shares that follow from heat. A neck that loses kn to the room, a partial condenser whose water takes Qw:
//     q1 (1 + R)/p = kn (Tn - Tr) dt/(n du)
//     q2 (1 + R)/p = Qw dt/(n du)
//
// Boiling temperature, by Raoult's law with S moles of dissolved extract and the gas constant G:
//     T = T(x) + ln(1 + S / n) G T(x)^2 / (H(y(x)) - h(x))

/// What condenses above the column and runs back: shares, and the effect of a cold reflux.
struct returned_above {
    condensing_shares shares;
    double cold = 0.0;  ///< c of the equations

    /// internal reflux of a reflux ratio
    double internal_reflux(double ratio) const {
        if (cold == 0.0) return internal_reflux_of(ratio, shares.together());
        return 1.0 - 1.0 / ((1.0 + ratio) / (1.0 - shares.together()) + cold * ratio);
    }
    /// reflux ratio of an internal reflux
    double ratio(double phi) const {
        if (cold == 0.0) return reflux_ratio_of(phi, shares.together());
        double const vapour = 1.0 / (1.0 - shares.together());
        return (1.0 / (1.0 - phi) - vapour) / (vapour + cold);
    }
};

/// The top of the still at a moment.
struct still_top {
    double d;              ///< composition of the distillate
    double phi;            ///< internal reflux
    returned_above above;  ///< what runs back
    bool all_taken;        ///< a take-off rate is not reached, although nothing is returned

    double ratio() const { return above.ratio(phi); }
    /// moles of vapour that enter the neck per mole of distillate
    double vapour() const { return (1.0 + ratio()) / (1.0 - above.shares.together()); }
};

/// error of a step of a run, relative to the charge
inline constexpr double run_tolerance = 1e-9;

/// What a report shows of the top of a still at a moment.
struct still_figures {
    double distillate;         ///< composition
    double vapour;             ///< dew point of the vapour at the head, K
    double reflux_ratio;       ///< liquid that the condenser returns per distillate taken
    double condenser;          ///< heat taken out, W
    double neck;               ///< by the neck
    double partial_condenser;  ///< by a partial condenser
    double vapour_flow;        ///< vapour at the top of the column, mol/s
    double taken;              ///< distillate, mol/s
};

/// Heats that are taken out above the column, J per mole of distillate.
struct heats_above {
    double neck, partial_condenser, condenser;

    double all() const { return neck + partial_condenser + condenser; }
};

/// A charged still: distillate and heat for any composition in the pot, from one step of the plan to the
/// next.
template <boiling_mixture M>
class batch_still {
public:
    batch_still(wash const& charge, still const& s, M const& mixture)
        : still_(s),
          mixture_(mixture),
          above_{{s.neck.share(), s.head.share()}, 0.0},
          column_(column_solver<M>(mixture, s.tower, s.neck, s.flow).with(above_.shares)),
          amounts_(charge) {
        s.pot.require_possible();
        require_range("distillation", argument::mass_of_the_charge, charge.mass().value(), "kg", 1e-6,
                      unlimited);
        require_range("distillation", argument::extract_of_the_charge, charge.extract().degrees(),
                      extract::unit, 0.0, 50.0, "Raoult's law for dissolved sugar");
        double const x = amounts_.mole_fraction();
        auto const shown = [](double v) { return to<volume_fraction>(mole_fraction(v)).percent(); };
        require_range(
            "distillation", argument::strength_of_the_charge, shown(x), volume_fraction::unit, shown(1e-5),
            shown(column_.limit() - 1e-6),
            "from some ethanol to below the azeotrope, which distilling at this pressure cannot pass");
        begin(x, moles());
    }
    /// the same still after a step of its plan
    batch_still(batch_still const& before, plan_step const& step, batch_point const& now)
        : batch_still(before) {
        if (step.power) still_.pot.power = *step.power;
        if (step.returned) still_.head = still_.head.returning(*step.returned);
        still_.pot.require_possible();
        memory_ = {};
        substitution_ = {};
        begin(now.x(), now.left);
    }

    still const& apparatus() const { return still_; }
    double moles() const { return amounts_.volatiles(); }
    double x() const { return amounts_.mole_fraction(); }

    static constexpr int most_substitutions = 60;  ///< six are many
    /// below this mole fraction the still is exhausted: the distillate then has its composition, water
    static constexpr double exhausted = 1e-9;

    /// the top of the still over x, when `left` moles are left
    still_top top(double x, double left) const { return top(x, left, true); }
    /// distillate with the greatest reflux
    double strongest(double x, double left) const { return top(x, left, false).d; }
    /// positive while a reflux keeps its strength, 0 where it loses it
    double margin_of_strength(double x, double left) const {
        if (!still_.head.returned().keeps_strength()) return 1.0;
        return follows_heat() ? strongest(x, left) - still_.head.returned().kept() : x - lost_;
    }

    /// boiling temperature of x when `left` moles are left: the extract raises it
    double boiling(double x, double left) const {
        double const t = mixture_.temperature(x);
        if (amounts_.solids == 0.0) return t;
        double const latent =
            mixture_.vapour_enthalpy(mixture_.vapour(x)) - mixture_.liquid_enthalpy(x).value;
        return t + std::log1p(amounts_.solids / left) * correlation::gas_constant::molar * t * t / latent;
    }
    /// dew point of the distillate
    double head_temperature(double d) const { return mixture_.temperature(column_.liquid(d)); }
    /// heats taken out above the column
    heats_above heats(still_top const& t) const {
        bool const plain = t.above.shares.together() == 0.0;
        return heats(t, plain ? column_.heats(t.d) : column_.with(t.above.shares).heats(t.d));
    }
    heats_above heats(still_top const& t, typename column_solver<M>::top_heats const& of_vapour) const {
        double const all = of_vapour.all() / (1.0 - t.phi);
        if (t.above.shares.together() == 0.0) return {0.0, 0.0, all};
        double const vapour = t.vapour();
        double const neck = vapour * of_vapour.neck, head = vapour * of_vapour.head;
        return {neck, head, all - neck - head};
    }
    /// time to distil one mole
    double seconds_per_mole(double x, double d, heats_above const& above, double left) const {
        auto const boiler = mixture_.liquid_enthalpy(x);
        // Balance around the whole still: the heat of the heater leaves at the top and with the distillate,
        // and warms the remaining liquid.
        double const heat =
            above.all() + mixture_.liquid_enthalpy(d).value - boiler.value - boiler.slope * (d - x);
        return heat / net_power(boiling(x, left));
    }

    /// slopes of the unknowns with respect to depth
    batch_state slopes(double depth, batch_state const& y) const {
        double const left = moles() * std::exp(-depth);
        double const x = (std::max)(y[0], 1e-300);
        still_top const t = top(x, left);
        heats_above const q = heats(t);
        double const seconds = left * seconds_per_mole(x, t.d, q, left);
        return {x - t.d,
                left * t.d,
                seconds,
                left * q.condenser,
                left * q.neck,
                seconds * pot_loss(x, left),
                left * mixture_.liquid_enthalpy(t.d).value,
                left * q.partial_condenser};
    }

    /// @name Moments of a run and steps between them, for `batch_history`
    /// @{

    using point = batch_point;
    using integration_step = numeric::rk_step<std::tuple_size_v<batch_state>>;
    /// whether the distillate becomes stronger first, while a column fills with ethanol
    static constexpr bool settles = false;

    /// the moment when boiling begins
    point begin_boiling() const {
        batch_state y{};
        y[0] = x();
        return make_point(0.0, y, batch_state{}, 0);
    }
    /// the moment when distillate begins to be taken, after so many seconds at total reflux
    template <class Record>
    point begin(double seconds, Record const&) const {
        batch_state const y = after_total_reflux(seconds);
        return make_point(0.0, y, slopes(0.0, y), 0);
    }
    /// the first moment after a step of the plan that made this still from another
    point go_on(point const& before) const {
        return make_point(before.depth, before.y, slopes(before.depth, before.y), before.stretch + 1);
    }
    /// length of a step after which so much of the charge is left
    double longest(point const& p, double share) const { return -std::log(share) - p.depth; }
    integration_step advance(point const& from, double h) const {
        auto const slopes_at = [this](double depth, batch_state const& y) { return slopes(depth, y); };
        double const heat = moles() * 4e4;      // approximate heat to boil all of it
        double const duration = from.slope[2];  // approximate time to boil all of it
        // of x in a charge of water with a trace of ethanol, too
        double const composition = from.x() + (std::min)(0.01, 0.1 * x());
        batch_state const scale{composition, moles() * x(), duration, heat, heat, heat, heat, heat};
        return numeric::dormand_prince(slopes_at, from.depth, from.y, from.slope, h, scale);
    }
    /// the end of a step
    point reached(point const& from, double h, integration_step const& s) const {
        return make_point(from.depth + h, s.end, s.slope, from.stretch);
    }
    /// the moment inside a step when so many moles had been distilled
    point inside(double depth, double length, integration_step const& s, double distilled,
                 std::size_t stretch) const {
        double const at = (std::max)(depth, -std::log1p(-distilled / moles()));
        double const theta = length > 0.0 ? (std::min)(1.0, (at - depth) / length) : 0.0;
        return make_point(at, s.at(theta), batch_state{}, stretch);
    }
    /// the moment after a part of a step
    point part_of(double depth, double length, integration_step const& s, double theta,
                  std::size_t stretch) const {
        return make_point(depth + theta * length, s.at(theta), batch_state{}, stretch);
    }
    /// the same moment with a weaker pot
    point weaker(point p, double share) const {
        p.y[0] /= 1.0 + share;
        return p;
    }
    double strongest(point const& p) const { return strongest(p.x(), p.left); }
    double margin_of_strength(point const& p) const { return margin_of_strength(p.x(), p.left); }
    double boiling(point const& p) const { return boiling(p.x(), p.left); }
    double head_temperature(point const& p) const { return head_temperature(p.distillate()); }
    /// enthalpy of the charge when it begins to boil, and of what the still holds at a moment
    double charge_heat() const { return moles() * mixture_.liquid_enthalpy(x()).value; }
    double content_heat(point const& p) const { return p.left * mixture_.liquid_enthalpy(p.x()).value; }
    /// moles that stay in the still, and of these ethanol
    std::pair<double, double> remaining(point const& p) const { return {p.left, p.left * p.x()}; }
    /// what a report shows of the moment
    still_figures figures(point const& p) const {
        still_top const t = top(p.x(), p.left);
        heats_above const q = heats(t);
        double const rate = 1.0 / seconds_per_mole(p.x(), t.d, q, p.left);
        return {t.d,           head_temperature(t.d),      t.ratio(),         rate * q.condenser,
                rate * q.neck, rate * q.partial_condenser, rate * t.vapour(), rate};
    }
    /// @}

    /// the unknowns after so many seconds at total reflux, before anything is taken
    batch_state after_total_reflux(double seconds) const {
        require_start(seconds);
        batch_state y{};
        y[0] = x();
        y[2] = seconds;
        if (seconds == 0.0) return y;
        double const lost = pot_loss(x(), moles());
        double const net = net_power(boiling(x(), moles()));
        double neck = 0.0;
        if (still_.neck.loss().value() > 0.0) {
            for (int i = 0; i < 10; ++i) {  // its temperature depends little on what condenses in it
                auto const column = column_.with({limited(neck / net), 0.0});
                auto const q = column.heats(column.distillate(x(), 1.0));
                neck = neck_loss(mixture_.temperature(q.liquid_of_neck));
            }
            require_share(argument::heat_loss_coefficient, "W/K", still_.neck.loss().value(), neck / net,
                          aqueth::neck::greatest_share);
        } else if (still_.neck.share() > 0.0) {
            auto const q = column_.heats(column_.distillate(x(), 1.0));
            neck = net * q.neck / q.all();
        }
        y[3] = seconds * (net - neck);
        y[4] = seconds * neck;
        y[5] = seconds * lost;
        return y;
    }

    /// Refuses a share that leaves too little vapour.
    /// @param value what condenses it, in its unit
    static void require_share(argument what, char const* unit, double value, double share, double greatest) {
        if (share <= greatest) return;
        raise_error(refusal("distillation", what, value, unit, 0.0, value * greatest / share,
                            "so that vapour is left to distil: at most " +
                                numeric::text_of(100.0 * greatest, 3) + " % of it may condense there"));
    }

    /// Refuses a time at total reflux that is not possible.
    void require_start(double seconds) const {
        bool const returns = still_.head.what() == head::kind::total_condenser;
        require_range("distillation", argument::time_at_total_reflux, seconds / 60.0, "min", 0.0,
                      returns ? 6e4 : 0.0, returns ? "" : "only a total condenser can return everything");
    }
    /// Refuses a take-off rate that is not reached at a moment of the run, or is next to nothing.
    void require_rate(batch_point const& p) const {
        if (!follows_rate()) return;
        still_top const t = top(p.x(), p.left);
        double const most = 1e6;  // beyond, rounding limits what can be said
        if (t.ratio() > most)
            raise_error(refusal("distillation", argument::take_off_rate, rate() * 6e7, "mL/min",
                                rate() * 6e7 * t.ratio() / most, unlimited,
                                "at the lower end a million times as much runs back"));
        if (!t.all_taken) return;
        double const all = mass_of_moles(1.0, t.d).volume() / seconds_per_mole(p.x(), t.d, heats(t), p.left);
        raise_error(refusal("distillation", argument::take_off_rate, rate() * 6e7, "mL/min", 0.0, all * 6e7,
                            "all that condenses " + numeric::text_of(p.seconds() / 60.0, 4) +
                                " min after boiling began"));
    }

private:
    point make_point(double depth, batch_state const& y, batch_state const& slope,
                     std::size_t stretch) const {
        double const left = moles() * std::exp(-depth);
        return {depth, left, -moles() * std::expm1(-depth), y, slope, stretch};
    }
    /// what every stretch between two steps of the plan checks and finds out at its beginning
    void begin(double x, double left) {
        head const& h = still_.head;
        guess_ = {above_.shares.neck, above_.shares.head, 0.0, follows_rate() ? 1.0 : 0.0};
        if (still_.neck.loss().value() > 0.0) guess_[0] = 0.01;
        if (h.water()) guess_[1] = 0.1;
        if (h.returned().keeps_strength()) {
            require_kept(x, left);
            if (!follows_heat()) {
                // Rounding alone can make it possible at the start.
                lost_ = (std::min)(x, column_.still_under(h.returned().kept(),
                                                          above_.internal_reflux(h.returned().ratio())));
            }
        }
        still_top const t = top(x, left);
        require_duration(left * seconds_per_mole(x, t.d, heats(t), left));
    }

    double ratio() const { return still_.head.returned().ratio(); }
    bool follows_rate() const { return still_.head.returned().follows_take_off(); }
    bool varies() const { return follows_heat() || follows_rate(); }
    double rate() const { return still_.head.returned().take_off().value(); }
    /// whether shares or the effect of a cold reflux follow from heat, so that they vary
    bool follows_heat() const {
        return still_.neck.loss().value() > 0.0 || still_.head.water() || still_.head.reflux_temperature();
    }

    /// The top of the still. Shares that follow from heat, a cold reflux and the reflux that leaves the rate
    /// to take off are found by substitution: each depends little on itself, as the vapour's flow and its
    /// latent heat change little with it.
    still_top top(double x, double left, bool keep) const {
        if (!varies()) return top_with(x, above_, above_.internal_reflux(ratio()), column_, keep);
        still_top t{};
        auto const found = [&](std::array<double, 4> const& from) {
            returned_above above = above_;
            if (still_.neck.loss().value() > 0.0) above.shares.neck = limited(from[0]);
            if (still_.head.water()) above.shares.head = limited(from[1]);
            above.cold = from[2];
            auto const column = column_.with(above.shares);
            double const r = follows_rate() ? std::expm1((std::max)(0.0, from[3])) : ratio();
            t = top_with(x, above, above.internal_reflux(r), column, keep);
            auto next = substituted(x, left, t, column);
            t.all_taken = next[3] < 0.0;
            next[3] = (std::max)(0.0, next[3]);
            return next;
        };
        guess_ = substitution_.find(found, guess_, 1e-12, 0.3, most_substitutions);
        require_range("distillation", argument::number_of_steps,
                      substitution_.converged() ? 0.0 : most_substitutions, "", 0.0, most_substitutions - 1,
                      "towards the reflux of this still at one moment");
        require_share(argument::heat_loss_coefficient, "W/K", still_.neck.loss().value(), t.above.shares.neck,
                      neck::greatest_share);
        if (auto const& water = still_.head.water())
            require_share(argument::flow_of_the_cooling_water, "L/min", water->flow.value() * 6e4,
                          t.above.shares.head, head::greatest_share);
        return t;
    }
    still_top top_with(double x, returned_above const& above, double greatest, column_solver<M> const& column,
                       bool keep) const {
        reflux const& r = still_.head.returned();
        if (x < exhausted) return {x, greatest, above, false};
        if (keep && r.keeps_strength()) {
            double const phi = column.internal_reflux(x, r.kept(), greatest, memory_);
            if (phi <= greatest) return {r.kept(), (std::max)(phi, above.shares.together()), above, false};
        }
        return {column.distillate(x, greatest, memory_), greatest, above, false};
    }
    /// the unknowns of `top`, from the heats and flows of a solution: both shares, the effect of a cold
    /// reflux, and for a rate to take off ln(1 + R)
    std::array<double, 4> substituted(double x, double left, still_top const& t,
                                      column_solver<M> const& column) const {
        auto const q = column.heats(t.d);
        double const seconds = seconds_per_mole(x, t.d, heats(t, q), left);
        double const of_vapour = seconds / t.vapour();  // time of a mole of vapour
        auto const& shares = t.above.shares;
        std::array<double, 4> next{shares.neck, shares.head, t.above.cold, 0.0};
        // The heat that a share takes is proportional to it, nearly.
        if (still_.neck.loss().value() > 0.0)
            next[0] =
                limited(shares.neck * neck_loss(mixture_.temperature(q.liquid_of_neck)) * of_vapour / q.neck);
        if (auto const& water = still_.head.water())
            next[1] = limited(shares.head * water->heat().value() * of_vapour / q.head);
        if (auto const& cold = still_.head.reflux_temperature())
            next[2] = (std::max)(0.0, warming(t.d, cold->kelvin())) / q.all();
        // The time of a mole of distillate is proportional to 1 + R, nearly.
        if (follows_rate())
            next[3] = std::log1p(t.ratio()) + std::log(mass_of_moles(1.0, t.d).volume() / (seconds * rate()));
        return next;
    }
    static double limited(double share) { return (std::min)(0.999, (std::max)(1e-12, share)); }
    /// heat that the neck loses, W; none to a warmer room
    double neck_loss(double kelvin) const {
        return still_.neck.loss().value() * (std::max)(0.0, kelvin - still_.pot.room.kelvin());
    }
    /// heat that warms a mole of liquid of composition d to its boiling point
    double warming(double d, double kelvin) const {
        double const boils = mixture_.temperature(d);
        return model::enthalpy::liquid(d, boils) - model::enthalpy::liquid(d, kelvin);
    }
    /// heat lost by the pot, W
    double pot_loss(double x, double left) const {
        return still_.pot.loss.value() * (boiling(x, left) - still_.pot.room.kelvin());
    }
    /// power left for boiling; at least a thousandth, or the run would never end
    double net_power(double kelvin) const {
        double const lost = still_.pot.loss.value() * (kelvin - still_.pot.room.kelvin());
        double const power = still_.pot.power.value();
        double const least = lost / 0.999;
        if (!(power > least)) {
            raise_error(refusal("distillation", argument::power, power, "W", least, unlimited,
                                "above what the boiling pot loses to the room"));
        }
        return power - lost;
    }

    void require_duration(double seconds) const {
        constexpr double longest = 3.6e9;
        if (seconds <= longest) return;
        double const power = still_.pot.power.value();
        double const lost = power - net_power(boiling(x(), moles()));
        raise_error(refusal("distillation", argument::power, power, "W",
                            lost + (power - lost) * seconds / longest, unlimited,
                            "so that boiling away the charge takes no more than a million hours"));
    }

    void require_kept(double x, double left) const {
        reflux const& r = still_.head.returned();
        still_top const t = top(x, left, false);
        double const strongest = t.d;
        condensing_shares const& shares = t.above.shares;
        double const weakest = column_.with(shares).distillate(x, shares.together());
        if (weakest <= r.kept() && r.kept() <= strongest) return;
        raise_error(refusal("distillation", argument::strength_of_the_distillate_to_keep, r.number(),
                            r.unit(), r.shown(weakest), r.shown(strongest),
                            "from no reflux to the greatest one at the start"));
    }

    still still_;
    M const& mixture_;
    returned_above above_;  // as given; 0 where it follows from heat
    column_solver<M> column_;
    amounts amounts_;
    double lost_ = 0.0;  // still in which the strength to keep is lost; 0 if none is kept
    // Never change a result.
    mutable column_memory memory_;
    mutable std::array<double, 4> guess_{};
    mutable numeric::fixed_point<4> substitution_;
};

/// The course of a run: integrates to its end, and stores the steps, so that the state at any moment is
/// available. `Batch` is a charged still, without or with holdup; its members say how moments follow each
/// other.
template <class Batch>
class batch_history {
public:
    using point = typename Batch::point;
    using integration_step = typename Batch::integration_step;

    static constexpr double tolerance = run_tolerance;
    static constexpr double least_residue = 0.02;  ///< share of the charge that must be left: no boiling dry
    static constexpr double most_steps = 20000.0;  ///< far above any known run: prevents an endless one

    /// @param progress callable, told what share of the charge has been distilled after every step
    template <class Progress>
    batch_history(Batch const& batch, run_plan const& plan, Progress const& progress) : plan_(plan) {
        stretches_.push_back(batch);
        boiling_ = batch.begin_boiling();
        point const first =
            batch.begin(plan.start.value(), [&](point const& from, double length, integration_step const& s) {
                store(from, length, s);
                progress(0.0);
            });
        begin_stretch(first);
        for (condition const& c : plan.ends) require_ahead(c, boiling_, first);
        for (plan_step const& step : plan.steps)
            if (step.when.what() == condition::watched::kept_strength) require_keeps();
        begin_fraction(first);
        double h = 0.01;
        for (point now = first; ends_.size() < starts_.size();) {
            now = advance_once(now, h);
            progress(now.distilled / batch.moles());
        }
    }

    std::vector<point> const& starts() const { return starts_; }  ///< of the fractions
    std::vector<point> const& ends() const { return ends_; }      ///< of the fractions
    /// the first moments after the steps of the plan that were taken
    std::vector<point> const& steps_of_plan() const { return steps_of_plan_; }
    /// the still as it is at a moment
    Batch const& batch(point const& p) const { return stretches_[p.stretch]; }

    /// the moment when the strength to keep was lost, if that happened
    std::optional<point> const& strength_lost() const { return lost_; }

    /// Calls f for every step: with its depth and length, the still in it, and a callable: part of the step,
    /// 0 to 1 -> point.
    template <class F>
    void for_each_step(F const& f) const {
        for (taken_step const& s : steps_) {
            Batch const& still = stretches_[s.stretch];
            f(s.depth, s.length, still,
              [&](double theta) { return still.part_of(s.depth, s.length, s.taken, theta, s.stretch); });
        }
    }

    /// the moment when so many moles had been distilled
    point at_distilled(double moles) const {
        std::size_t k = cursor_ < steps_.size() && steps_[cursor_].distilled <= moles ? cursor_ : 0;
        while (k + 1 < steps_.size() && steps_[k + 1].distilled <= moles) ++k;
        cursor_ = k;
        taken_step const& s = steps_[k];
        double const most = ends_.back().distilled;
        return stretches_[s.stretch].inside(s.depth, s.length, s.taken, (std::min)(moles, most), s.stretch);
    }

private:
    struct taken_step {
        double distilled, depth, length;
        integration_step taken;
        std::size_t stretch;
    };

    /// a condition that is met inside a step
    struct event {
        double at;              ///< position in the step
        condition const* what;  ///< null: none is met
        bool ends_run;          ///< false: ends only a fraction
        bool reaches_cut;       ///< the cut of the fraction is met
        bool changes;           ///< a step of the plan is due, and ends neither
    };

    void store(point const& from, double length, integration_step const& taken) {
        steps_.push_back({from.distilled, from.depth, length, taken, from.stretch});
        require_range("distillation", argument::number_of_steps, static_cast<double>(steps_.size()), "", 0.0,
                      most_steps, "an ordinary run takes some hundreds, and one for each cut");
    }
    /// the condition that ends the fraction being collected; null for the last one
    condition const* next_cut() const {
        return starts_.size() <= plan_.cuts.size() ? &plan_.cuts[starts_.size() - 1].end : nullptr;
    }
    void begin_fraction(point const& p) {
        starts_.push_back(p);
        if (next_cut()) require_ahead(*next_cut(), p, p);
    }
    /// the next step of the plan; null after the last one
    plan_step const* next_step() const {
        std::size_t const taken = stretches_.size() - 1;
        return taken < plan_.steps.size() ? &plan_.steps[taken] : nullptr;
    }
    void begin_stretch(point const& p) {
        keeps_ = batch(p).margin_of_strength(p) > 0.0;
        if (!keeps_ && !lost_ && !Batch::settles) lost_ = p;
        batch(p).require_rate(p);
    }
    /// takes a step of the plan
    point change(plan_step const& due, point const& before) {
        stretches_.emplace_back(stretches_.back(), due, before);
        point const p = stretches_.back().go_on(before);
        begin_stretch(p);
        steps_of_plan_.push_back(p);
        return p;
    }

    /// takes one accepted step from `now`, shorter if a condition is met in it; `h` is the length to try, and
    /// returns the length to try next
    point advance_once(point const& now, double& h) {
        double const longest = batch(now).longest(now, least_residue);
        double tried = (std::min)(h, longest);
        integration_step taken = advance(now, tried);
        while (taken.error > tolerance && tried > 1e-12) {
            tried = numeric::next_step(tried, taken.error, tolerance);
            taken = advance(now, tried);
        }
        h = numeric::next_step(tried, taken.error, tolerance);
        // The slopes have a kink where the strength to keep is lost: a step ends there.
        point const tip = point_of(now, tried, taken);
        bool const bends = keeps_ && batch(tip).margin_of_strength(tip) < 0.0;
        if (bends) {
            tried = when(condition::strength_lost(), boiling_, now, tried);
            taken = advance(now, tried);
        }
        event const first = first_event(now, tried, point_of(now, tried, taken));
        if (first.at < tried) taken = advance(now, first.at);
        store(now, first.at, taken);
        point const reached = point_of(now, first.at, taken);
        batch(reached).require_rate(reached);
        // A column with holdup comes to that strength in the course of the run.
        if (Batch::settles && !lost_) keeps_ = keeps_ || batch(reached).margin_of_strength(reached) > 0.0;
        if (bends && first.at >= tried - tolerance) {
            keeps_ = false;
            if (!lost_) lost_ = reached;
        }
        if (first.changes) return change(*next_step(), reached);
        if (!first.what && tried == longest && !bends) raise_unreached(reached);
        if (first.what) {
            // The state at the end of the run decides: only rounding may separate it from the cut.
            bool const waits = next_cut() && settles(*next_cut(), starts_.back(), now);
            bool const at_cut = first.reaches_cut ||
                                (next_cut() && !waits && excess(*next_cut(), starts_.back(), reached) >= 0.0);
            bool const at_last_cut = at_cut && starts_.size() == plan_.cuts.size();
            if (first.ends_run && next_cut() && !at_last_cut) {
                if (at_cut) begin_fraction(reached);  // with a cut that never comes
                raise_cut_unreached(*next_cut(), reached);
            }
            ends_.push_back(reached);
            if (!first.ends_run) begin_fraction(reached);
        }
        return reached;
    }
    event first_event(point const& now, double length, point const& end) const {
        event first{length, nullptr, false, false, false};
        // The cut comes first, so later conditions do not matter. If both come together the run ends. The
        // search for ends therefore goes a little beyond the cut, by the tolerance of the steps.
        point last = end;
        double reach = length;
        auto const watch = [&](condition const& c, point const& since, bool ends_run) {
            if (excess(c, since, last) < 0.0 || settles(c, since, now)) return;
            double const at = when(c, since, now, reach);
            if (first.what && at > first.at + tolerance) return;
            first = {at, &c, ends_run, !ends_run || (first.reaches_cut && at + tolerance >= first.at), false};
            reach = (std::min)(reach, at + tolerance);
            last = point_of(now, reach, advance(now, reach));
        };
        if (next_cut()) watch(*next_cut(), starts_.back(), false);
        for (condition const& c : plan_.ends) watch(c, boiling_, true);
        if (plan_step const* const due = next_step()) {
            if (excess(due->when, boiling_, last) < 0.0 || settles(due->when, boiling_, now)) return first;
            double const at = when(due->when, boiling_, now, reach);
            // together with a cut or an end: after it
            if (!first.what || at < first.at) first = {at, &due->when, false, false, true};
        }
        return first;
    }

    integration_step advance(point const& from, double h) const { return batch(from).advance(from, h); }
    point point_of(point const& from, double h, integration_step const& taken) const {
        return batch(from).reached(from, h, taken);
    }

    /// the quantity that a condition watches, in the unit of its `value`
    double seen(condition const& c, point const& since, point const& p) const {
        using watched = condition::watched;
        switch (c.what()) {
        case watched::still_strength: return p.x();
        case watched::kept_strength: return batch(p).margin_of_strength(p);
        case watched::boiling_temperature: return batch(p).boiling(p);
        case watched::distillate_strength:
        case watched::reading_at_spout: return p.distillate();
        case watched::head_temperature: return batch(p).head_temperature(p);
        case watched::collected_volume:
            return mass_of_moles(p.distilled - since.distilled, p.ethanol() - since.ethanol()).volume();
        case watched::elapsed_time: break;
        }
        return p.seconds() - since.seconds();
    }
    /// Whether a condition waits until it has not been met: while a column with holdup settles, the
    /// distillate becomes stronger first.
    bool settles(condition const& c, point const& since, point const& p) const {
        using watched = condition::watched;
        bool const of_head = c.what() == watched::distillate_strength ||
                             c.what() == watched::reading_at_spout || c.what() == watched::head_temperature ||
                             c.what() == watched::kept_strength;
        return Batch::settles && of_head && excess(c, since, p) >= 0.0;
    }
    static bool falls(condition const& c) {
        return c.what() == condition::watched::still_strength ||
               c.what() == condition::watched::distillate_strength ||
               c.what() == condition::watched::reading_at_spout ||
               c.what() == condition::watched::kept_strength;
    }
    /// the value at which a condition is met
    double threshold(condition const& c) const {
        if (c.what() == condition::watched::kept_strength) return 0.0;  // of the margin
        if (c.what() != condition::watched::reading_at_spout) return c.value();
        return alcoholometer()
            .strength<mole_fraction>(volume_fraction(c.value()), plan_.spout_temperature)
            .value();
    }
    /// What a condition watches at a moment, as the user gave it; for a kept strength, the strength that the
    /// greatest reflux reaches. `shift` is added to the quantity as `seen` has it.
    double shown(condition const& c, point const& since, point const& p, double shift = 0.0) const {
        using watched = condition::watched;
        if (c.what() == watched::kept_strength) {
            reflux const& r = batch(p).apparatus().head.returned();
            return r.shown(batch(p).strongest(p));
        }
        double const value = seen(c, since, p) + shift;
        if (c.what() != watched::reading_at_spout) return c.shown(value);
        return alcoholometer().reading(mole_fraction(value), plan_.spout_temperature).number();
    }
    double number(condition const& c, point const& p) const {
        return c.what() == condition::watched::kept_strength ? batch(p).apparatus().head.returned().number()
                                                             : c.number();
    }
    char const* unit(condition const& c, point const& p) const {
        return c.what() == condition::watched::kept_strength ? batch(p).apparatus().head.returned().unit()
                                                             : c.unit();
    }
    /// negative before it is met
    double excess(condition const& c, point const& since, point const& p) const {
        double const more = seen(c, since, p) - threshold(c);
        return falls(c) ? -more : more;
    }
    double when(condition const& c, point const& since, point const& from, double h) const {
        if (excess(c, since, from) >= 0.0) return 0.0;  // since a step of the plan
        auto const miss = [&](double length) {
            return length > 0.0 ? excess(c, since, point_of(from, length, advance(from, length)))
                                : excess(c, since, from);
        };
        double const at = numeric::bracketed_root(miss, 0.0, h, 1e-14);
        return std::isnan(at) ? h : at;
    }

    /// Refuses to wait for the loss of a strength that is never kept.
    void require_keeps() const {
        bool keeps = stretches_.front().apparatus().head.returned().keeps_strength();
        for (plan_step const& step : plan_.steps)
            keeps = keeps || (step.returned && step.returned->keeps_strength());
        require_range("distillation", argument::strengths_kept_by_the_reflux, keeps ? 1.0 : 0.0, "", 1.0, 1.0,
                      "a cut, an end or a step waits until that strength is lost");
    }
    /// A condition within the tolerance of the steps counts as met: a charge of 11 % vol already satisfies
    /// "still at 11 % vol", whatever the rounding of two conversions.
    void require_ahead(condition const& c, point const& since, point const& p) const {
        using watched = condition::watched;
        if (settles(c, since, p)) return;
        reflux const& r = batch(p).apparatus().head.returned();
        if (c.what() == watched::kept_strength) require_keeps();
        double const now = seen(c, since, p);
        double const nearest = falls(c) ? now / (1.0 + tolerance) : now / (1.0 - tolerance);
        if (falls(c) ? threshold(c) < nearest : threshold(c) > nearest) return;
        // What the greatest reflux reaches must not be rounded to the strength to keep.
        point const beyond = batch(p).weaker(p, tolerance);
        double const bound =
            c.what() == watched::kept_strength ? shown(c, since, beyond) : shown(c, since, p, nearest - now);
        bool const kept = c.what() == watched::distillate_strength && r.keeps_strength();
        raise_error(refusal("distillation", c.code(), number(c, p), unit(c, p), falls(c) ? 0.0 : bound,
                            falls(c) ? bound : unlimited,
                            kept ? "it is already met at the start, as the reflux keeps that strength; wait "
                                   "until the strength is lost"
                                 : "it is already met at the start of the run or of the fraction"));
    }
    [[noreturn]] void raise_unreached(point const& p) const {
        condition const* const cut = next_cut();
        unreached(cut ? *cut : plan_.ends.front(), cut ? starts_.back() : boiling_, p,
                  "when 2 % of the charge is left; no still is boiled dry");
    }
    [[noreturn]] void raise_cut_unreached(condition const& c, point const& p) const {
        unreached(c, starts_.back(), p, "when the run ends; the cut comes later");
    }
    [[noreturn]] void unreached(condition const& c, point const& since, point const& p,
                                char const* reason) const {
        double const first = shown(c, since, since);
        double const last = shown(c, since, p);
        raise_error(refusal("distillation", c.code(), number(c, p), unit(c, p), (std::min)(first, last),
                            (std::max)(first, last),
                            std::string("the values that the run passes through, up to ") + reason));
    }

    std::deque<Batch> stretches_;  // between the steps of the plan
    run_plan const& plan_;
    point boiling_{};     // where the boiling began
    bool keeps_ = false;  // whether the reflux still keeps its strength
    std::vector<point> starts_;
    std::vector<point> ends_;
    std::optional<point> lost_;
    std::vector<point> steps_of_plan_;
    std::vector<taken_step> steps_;
    mutable std::size_t cursor_ = 0;  // points are requested in their order
};

}  // namespace aqueth::inline AQUETH_ABI::detail
