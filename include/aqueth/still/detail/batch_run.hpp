// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/error.hpp>
#include <aqueth/hydrometer.hpp>
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
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <utility>
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
/// in J: taken out by the condenser, by the neck, lost by the pot, carried over.
using batch_state = numeric::state<7>;

/// A moment of a run.
struct batch_point {
    double depth;       ///< ln of the charge's moles over what is left
    double left;        ///< moles left
    double distilled;   ///< moles distilled
    batch_state y;      ///< the unknowns
    batch_state slope;  ///< their slopes with respect to depth

    double x() const { return y[0]; }
    double ethanol() const { return y[1]; }
    double seconds() const { return y[2]; }
    double condenser() const { return y[3]; }
    double neck() const { return y[4]; }
    double pot_loss() const { return y[5]; }
    double carried() const { return y[6]; }
    double distillate() const { return y[0] - slope[0]; }  ///< composition, as dx/d(depth) = x - distillate
};

// The equations of a batch. There is no holdup: only the pot stores moles and heat.
//
//     n, N0      moles of ethanol and water in the pot now and at the start, mol; extract is not counted
//     u          depth, ln(N0 / n); the independent variable
//     x, d       mole fraction of ethanol in the pot and in the distillate
//     y(x)       mole fraction in the vapour in equilibrium with the liquid x
//     v, l       mole fractions at the lower end of the neck: vapour that enters, liquid that runs back
//     s          share of the vapour's moles that condenses in the neck
//     R          reflux ratio: moles that the condenser returns per mole of distillate
//     phi        internal reflux: liquid over vapour at the top of the column, below the neck
//     h(x), H(y) molar enthalpy of boiling liquid and of saturated vapour, J/mol; h'(x) is dh/dx
//     E          moles of ethanol collected
//     t          time since boiling began, s
//     P          power of the heater, W
//     k, T, Tr   heat loss of the pot in W/K, temperatures of the pot and of the room in K
//
// Neck. The liquid that runs back is in equilibrium with the vapour that goes on, so d = y(l), and
//     v   = s l + (1 - s) d                           ethanol balance of the neck
//     phi = s + (1 - s) R / (1 + R)                   so a mole of vapour gives 1 - phi of distillate
// The column gives v over x (column_solver). Both together give d as a function of x and phi. Without a
// column v is y(x).
//
// Component balances. Only distillate leaves the pot: dn = -n du, and d(n x) = d dn. So
//     dx/du = x - d                                   Rayleigh's equation, d ln n/dx = 1 / (d - x)
//     dE/du = n d                                     ethanol collected
// Column and neck act on these balances through d alone. Water is the rest: N0 - n moles have come over, of
// which E are ethanol.
//
// Heat balance, around pot, column and neck with condenser, in J per mole of distillate:
//     q     = (H(v) - s h(l) - (1 - s) h(d)) / (1 - phi)      taken out by neck and condenser together
//     qc    = (1 - s) (H(d) - h(d)) / (1 - phi)               of this by the condenser; q - qc by the neck
//     (P - k (T - Tr)) dt = (q + h(d) - h(x) - h'(x) (d - x)) n du
// The last two terms are the heat that the pot's content loses, -d(n h(x)) = (h(x) + h'(x) (d - x)) n du.
// The integrals of q - qc, qc, k (T - Tr) dt/du and n h(d) over u are the heats that a run reports.
//
// Boiling temperature, by Raoult's law with S moles of dissolved extract and the gas constant G:
//     T = T(x) + ln(1 + S / n) G T(x)^2 / (H(y(x)) - h(x))

/// A charged still: distillate and heat for any composition in the pot.
template <boiling_mixture M>
class batch_still {
public:
    batch_still(wash const& charge, still const& s, M const& mixture)
        : still_(s), mixture_(mixture), column_(mixture, s.tower, s.neck, s.flow), amounts_(charge) {
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
        greatest_ = internal_reflux_of(s.head.returned().ratio(), s.neck.share());
        if (s.head.returned().keeps_strength()) {
            require_kept(x);
            // Rounding alone can make it possible at the start.
            lost_ = (std::min)(x, column_.still_under(s.head.returned().kept(), greatest_));
        }
        auto const [d, phi] = top(x);
        require_duration(amounts_.volatiles() * seconds_per_mole(x, d, phi, amounts_.volatiles()));
    }

    still const& apparatus() const { return still_; }
    double moles() const { return amounts_.volatiles(); }
    double x() const { return amounts_.mole_fraction(); }

    /// below this mole fraction the still is exhausted: the distillate then has its composition, water
    static constexpr double exhausted = 1e-9;

    /// distillate and internal reflux over the still x
    std::pair<double, double> top(double x) const {
        reflux const& r = still_.head.returned();
        if (x < exhausted) return {x, greatest_};
        if (r.keeps_strength()) {
            double const phi = column_.internal_reflux(x, r.kept(), greatest_, memory_);
            if (phi <= greatest_) return {r.kept(), (std::max)(phi, still_.neck.share())};
        }
        return {column_.distillate(x, greatest_, memory_), greatest_};
    }

    /// distillate over the still x with the greatest reflux
    double strongest(double x) const { return column_.distillate(x, greatest_); }
    /// still in which the strength to keep is lost; 0 if none is kept
    double strength_lost() const { return lost_; }

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
    /// heat that neck and condenser take out, J per mole of distillate
    double condensation(double d, double phi) const { return column_.condensation(d, phi); }
    /// heat that the condenser alone takes out, J per mole of distillate
    double condensation_without_neck(double d, double phi) const {
        return column_.condensation_without_neck(d, phi);
    }
    /// enthalpy of the boiling liquid
    double content_heat(batch_point const& p) const { return p.left * mixture_.liquid_enthalpy(p.x()).value; }

    /// time to distil one mole
    double seconds_per_mole(double x, double d, double phi, double left) const {
        auto const boiler = mixture_.liquid_enthalpy(x);
        // Balance around the whole still: the heat of the heater leaves at the top and with the distillate,
        // and warms the remaining liquid.
        double const heat =
            condensation(d, phi) + mixture_.liquid_enthalpy(d).value - boiler.value - boiler.slope * (d - x);
        return heat / net_power(boiling(x, left));
    }

    /// slopes of the unknowns with respect to depth
    batch_state slopes(double depth, batch_state const& y) const {
        double const left = moles() * std::exp(-depth);
        double const x = (std::max)(y[0], 1e-300);
        auto const [d, phi] = top(x);
        double const seconds = left * seconds_per_mole(x, d, phi, left);
        double const condenser = left * condensation_without_neck(d, phi);
        return {x - d,
                left * d,
                seconds,
                condenser,
                left * condensation(d, phi) - condenser,
                seconds * still_.pot.loss.value() * (boiling(x, left) - still_.pot.room.kelvin()),
                left * mixture_.liquid_enthalpy(d).value};
    }

    batch_point point(double depth, batch_state const& y, batch_state const& slope) const {
        double const left = moles() * std::exp(-depth);
        return {depth, left, -moles() * std::expm1(-depth), y, slope};
    }

private:
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

    void require_kept(double x) const {
        reflux const& r = still_.head.returned();
        double const weakest = column_.distillate(x, still_.neck.share());
        if (weakest <= r.kept() && r.kept() <= strongest(x)) return;
        raise_error(refusal("distillation", argument::strength_of_the_distillate_to_keep, r.number(),
                            r.unit(), r.shown(weakest), r.shown(strongest(x)),
                            "from no reflux to the greatest one at the start of the run"));
    }

    still still_;
    M const& mixture_;
    column_solver<M> column_;
    amounts amounts_;
    double greatest_ = 0.0;
    double lost_ = 0.0;
    mutable column_memory memory_;  // never changes a result
};

/// The course of a run: integrates to its end, and stores the steps, so that the state at any moment is
/// available.
template <class Batch>
class batch_history {
public:
    static constexpr double tolerance = 1e-9;      ///< error of a step relative to the charge
    static constexpr double least_residue = 0.02;  ///< share of the charge that must be left: no boiling dry
    static constexpr double most_steps = 20000.0;  ///< far above any known run: prevents an endless one

    /// @param progress callable, told what share of the charge has been distilled after every step
    template <class Progress>
    batch_history(Batch const& batch, run_plan const& plan, Progress const& progress)
        : batch_(batch), plan_(plan) {
        batch_state y{};
        y[0] = batch.x();
        begin_ = batch.point(0.0, y, batch.slopes(0.0, y));
        if (begin_.x() <= batch.strength_lost()) lost_ = begin_;
        for (condition const& c : plan.ends) require_ahead(c, begin_);
        begin_fraction(begin_);
        double h = 0.01;
        for (batch_point now = begin_; ends_.size() < starts_.size();) {
            now = advance_once(now, h);
            require_range("distillation", argument::number_of_steps, static_cast<double>(steps_.size()), "",
                          0.0, most_steps, "an ordinary run takes some hundreds, and one for each cut");
            progress(now.distilled / batch.moles());
        }
    }

    std::vector<batch_point> const& starts() const { return starts_; }  ///< of the fractions
    std::vector<batch_point> const& ends() const { return ends_; }      ///< of the fractions

    /// the moment when the strength to keep was lost, if that happened
    std::optional<batch_point> const& strength_lost() const { return lost_; }

    /// the moment when so many moles had been distilled
    batch_point at_distilled(double moles) const {
        double const depth = (std::min)(-std::log1p(-moles / batch_.moles()), ends_.back().depth);
        std::size_t k = cursor_ < steps_.size() && steps_[cursor_].depth <= depth ? cursor_ : 0;
        while (k + 1 < steps_.size() && steps_[k + 1].depth <= depth) ++k;
        cursor_ = k;
        taken_step const& s = steps_[k];
        double const theta = s.length > 0.0 ? (std::min)(1.0, (depth - s.depth) / s.length) : 0.0;
        return batch_.point(depth, s.step.at(theta), batch_state{});
    }

private:
    using rk = numeric::rk_step<7>;
    struct taken_step {
        double depth, length;
        rk step;
    };

    /// a condition that is met inside a step
    struct event {
        double at;              ///< position in the step
        condition const* what;  ///< null: none is met
        bool ends_run;          ///< false: ends only a fraction
        bool reaches_cut;       ///< the cut of the fraction is met
    };

    /// the condition that ends the fraction being collected; null for the last one
    condition const* next_cut() const {
        return starts_.size() <= plan_.cuts.size() ? &plan_.cuts[starts_.size() - 1].end : nullptr;
    }
    void begin_fraction(batch_point const& p) {
        starts_.push_back(p);
        if (next_cut()) require_ahead(*next_cut(), p);
    }

    /// takes one accepted step from `now`, shorter if a condition is met in it; `h` is the length to try, and
    /// returns the length to try next
    batch_point advance_once(batch_point const& now, double& h) {
        double const longest = -std::log(least_residue) - now.depth;
        double tried = (std::min)(h, longest);
        rk step = advance(now, tried);
        while (step.error > tolerance && tried > 1e-12) {
            tried = numeric::next_step(tried, step.error, tolerance);
            step = advance(now, tried);
        }
        h = numeric::next_step(tried, step.error, tolerance);
        // The slopes have a kink where the strength to keep is lost: a step ends there.
        bool const bends = !lost_ && point_of(now, tried, step).x() < batch_.strength_lost();
        if (bends) {
            tried = when(condition::strength_lost(), begin_, now, tried);
            step = advance(now, tried);
        }
        event const first = first_event(now, tried, point_of(now, tried, step));
        if (first.at < tried) step = advance(now, first.at);
        steps_.push_back({now.depth, first.at, step});
        batch_point const reached = point_of(now, first.at, step);
        if (bends && first.at >= tried - tolerance) lost_ = reached;
        if (!first.what && tried == longest && !bends) raise_unreached(reached);
        if (first.what) {
            // The state at the end of the run decides: only rounding may separate it from the cut.
            bool const at_cut =
                first.reaches_cut || (next_cut() && excess(*next_cut(), starts_.back(), reached) >= 0.0);
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
    event first_event(batch_point const& now, double length, batch_point const& end) const {
        event first{length, nullptr, false, false};
        // The cut comes first, so later conditions do not matter. If both come together the run ends. The
        // search for ends therefore goes a little beyond the cut, by the tolerance of the steps.
        batch_point last = end;
        double reach = length;
        auto const watch = [&](condition const& c, batch_point const& since, bool ends_run) {
            if (excess(c, since, last) < 0.0) return;
            double const at = when(c, since, now, reach);
            if (first.what && at > first.at + tolerance) return;
            first = {at, &c, ends_run, !ends_run || (first.reaches_cut && at + tolerance >= first.at)};
            reach = (std::min)(reach, at + tolerance);
            last = point_of(now, reach, advance(now, reach));
        };
        if (next_cut()) watch(*next_cut(), starts_.back(), false);
        for (condition const& c : plan_.ends) watch(c, begin_, true);
        return first;
    }

    rk advance(batch_point const& from, double h) const {
        auto const slopes = [&](double depth, batch_state const& y) { return batch_.slopes(depth, y); };
        double const heat = batch_.moles() * 4e4;  // approximate heat to boil all of it
        double const duration = from.slope[2];     // approximate time to boil all of it
        // of x in a charge of water with a trace of ethanol, too
        double const composition = from.x() + (std::min)(0.01, 0.1 * batch_.x());
        batch_state const scale{composition, batch_.moles() * batch_.x(), duration, heat, heat, heat, heat};
        return numeric::dormand_prince(slopes, from.depth, from.y, from.slope, h, scale);
    }
    batch_point point_of(batch_point const& from, double h, rk const& step) const {
        return batch_.point(from.depth + h, step.end, step.slope);
    }

    /// the quantity that a condition watches, in the unit of its `value`
    double seen(condition const& c, batch_point const& since, batch_point const& p) const {
        using watched = condition::watched;
        switch (c.what()) {
        case watched::still_strength:
        case watched::kept_strength: return p.x();
        case watched::boiling_temperature: return batch_.boiling(p.x(), p.left);
        case watched::distillate_strength:
        case watched::reading_at_spout: return p.distillate();
        case watched::head_temperature: return batch_.head_temperature(p.distillate());
        case watched::collected_volume:
            return mass_of_moles(p.distilled - since.distilled, p.ethanol() - since.ethanol()).volume();
        case watched::elapsed_time: break;
        }
        return p.seconds() - since.seconds();
    }
    static bool falls(condition const& c) {
        return c.what() == condition::watched::still_strength ||
               c.what() == condition::watched::distillate_strength ||
               c.what() == condition::watched::reading_at_spout ||
               c.what() == condition::watched::kept_strength;
    }
    /// the value at which a condition is met
    double threshold(condition const& c) const {
        if (c.what() == condition::watched::kept_strength) return batch_.strength_lost();
        if (c.what() != condition::watched::reading_at_spout) return c.value();
        return alcoholometer()
            .strength<mole_fraction>(volume_fraction(c.value()), plan_.spout_temperature)
            .value();
    }
    /// a value as `seen` has it, the threshold and its unit, as the user gave them; for a kept strength, the
    /// strength that the greatest reflux reaches; for a reading, the reading
    double shown(condition const& c, double value) const {
        if (c.what() == condition::watched::kept_strength)
            return batch_.apparatus().head.returned().shown(batch_.strongest(value));
        if (c.what() != condition::watched::reading_at_spout) return c.shown(value);
        return alcoholometer().reading(mole_fraction(value), plan_.spout_temperature).number();
    }
    double number(condition const& c) const {
        return c.what() == condition::watched::kept_strength ? batch_.apparatus().head.returned().number()
                                                             : c.number();
    }
    char const* unit(condition const& c) const {
        return c.what() == condition::watched::kept_strength ? batch_.apparatus().head.returned().unit()
                                                             : c.unit();
    }
    /// negative before it is met
    double excess(condition const& c, batch_point const& since, batch_point const& p) const {
        double const more = seen(c, since, p) - threshold(c);
        return falls(c) ? -more : more;
    }
    double when(condition const& c, batch_point const& since, batch_point const& from, double h) const {
        auto const miss = [&](double length) {
            return length > 0.0 ? excess(c, since, point_of(from, length, advance(from, length)))
                                : excess(c, since, from);
        };
        double const at = numeric::bracketed_root(miss, 0.0, h, 1e-14);
        return std::isnan(at) ? h : at;
    }

    /// A condition within the tolerance of the steps counts as met: a charge of 11 % vol already satisfies
    /// "still at 11 % vol", whatever the rounding of two conversions.
    void require_ahead(condition const& c, batch_point const& p) const {
        using watched = condition::watched;
        reflux const& r = batch_.apparatus().head.returned();
        if (c.what() == watched::kept_strength) {
            require_range("distillation", argument::strengths_kept_by_the_reflux,
                          r.keeps_strength() ? 1.0 : 0.0, "", 1.0, 1.0,
                          "a cut or an end waits until that strength is lost");
        }
        double const now = seen(c, p, p);
        double const nearest = falls(c) ? now / (1.0 + tolerance) : now / (1.0 - tolerance);
        if (falls(c) ? threshold(c) < nearest : threshold(c) > nearest) return;
        double const bound = shown(c, nearest);
        bool const kept = c.what() == watched::distillate_strength && r.keeps_strength();
        raise_error(refusal("distillation", c.code(), number(c), unit(c), falls(c) ? 0.0 : bound,
                            falls(c) ? bound : unlimited,
                            kept ? "it is already met at the start, as the reflux keeps that strength; wait "
                                   "until the strength is lost"
                                 : "it is already met at the start of the run or of the fraction"));
    }
    [[noreturn]] void raise_unreached(batch_point const& p) const {
        condition const* const cut = next_cut();
        unreached(cut ? *cut : plan_.ends.front(), cut ? starts_.back() : begin_, p,
                  "when 2 % of the charge is left; no still is boiled dry");
    }
    [[noreturn]] void raise_cut_unreached(condition const& c, batch_point const& p) const {
        unreached(c, starts_.back(), p, "when the run ends; the cut comes later");
    }
    [[noreturn]] void unreached(condition const& c, batch_point const& since, batch_point const& p,
                                char const* reason) const {
        double const first = shown(c, seen(c, since, since));
        double const last = shown(c, seen(c, since, p));
        raise_error(refusal("distillation", c.code(), number(c), unit(c), (std::min)(first, last),
                            (std::max)(first, last),
                            std::string("the values that the run passes through, up to ") + reason));
    }

    Batch const& batch_;
    run_plan const& plan_;
    batch_point begin_{};
    std::vector<batch_point> starts_;
    std::vector<batch_point> ends_;
    std::optional<batch_point> lost_;
    std::vector<taken_step> steps_;
    mutable std::size_t cursor_ = 0;  // points are requested in their order
};

}  // namespace aqueth::inline AQUETH_ABI::detail
