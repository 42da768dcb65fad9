// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/still/detail/batch_run.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/detail/holdup_run.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/still/still.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <cmath>
#include <concepts>
#include <cstddef>
#include <optional>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// The state of a run at a moment.
struct [[nodiscard]] run_point {
    units::time elapsed;         ///< since it began to boil
    units::volume collected;     ///< all distillate so far, as one liquid at 20 °C
    units::volume pure_alcohol;  ///< pure alcohol in it at 20 °C
    units::amount distilled;     ///< ethanol and water in it
    units::amount left;          ///< ethanol and water left in the pot
    mole_fraction still;         ///< composition of the boiling liquid, without extract
    mole_fraction distillate;    ///< composition of the distillate
    units::temperature boiling;  ///< temperature in the pot
    units::temperature vapour;   ///< temperature of the vapour at the head: the dew point of the distillate
    double reflux_ratio;         ///< liquid that the condenser returns per distillate taken
    units::power condenser;      ///< heat the condenser takes out
    units::power neck;           ///< heat the neck loses
    units::power partial_condenser;  ///< heat a partial condenser takes out
    units::amount_flow vapour_flow;  ///< vapour at the top of the column or pot, where it enters the neck
    units::volume_flow take_off;     ///< distillate taken, volume at 20 °C
};

/// One fraction of a run.
struct run_fraction {
    parcel product;   ///< collected distillate, at the plan's temperature
    bool kept;        ///< false if it is to be discarded
    run_point begin;  ///< state when it began
    run_point end;    ///< state when it ended

    /// @return ethanol and water in it
    units::amount amount() const { return end.distilled - begin.distilled; }
};

/// Heat balance, from the first warming to the end of the run.
struct run_heat {
    units::energy supplied;           ///< by the heater while it boiled
    units::energy lost_by_pot;        ///< to the room
    units::energy neck;               ///< taken out by the neck: lost to the room, or to cooling water
    units::energy condenser;          ///< taken out by the condenser
    units::energy partial_condenser;  ///< taken out by a partial condenser
    units::energy with_distillate;    ///< carried over, counted from liquid ethanol and water at 0 °C
    units::energy
        gained_by_still;  ///< heat content of the pot at the end less that at the start; negative, as
                          ///< the content decreases
};

/// Errors of a run's balances: rounding and the integrator's error. The sums are over the reported parcels
/// and heats, not over the integrator's own unknowns.
struct [[nodiscard]] run_balance {
    double ethanol;  ///< mass in the charge less that in fractions and residue, over that in the charge
    double water;    ///< the same for water
    double energy;   ///< heat supplied less all heats taken up or lost, over the heat supplied
};

/// Results of a run.
struct [[nodiscard]] distillation {
    std::vector<run_fraction> fractions;  ///< in their order
    wash residue;              ///< content of the pot at the end, with the extract, at the plan's temperature
    heating warming;           ///< from the temperature of the charge to boiling
    units::time boiling_time;  ///< from boiling to the end
    run_heat heat;             ///< heat balance during boiling
    run_balance balance;       ///< errors of the balances
    /// state when the greatest reflux no longer kept the strength; empty if none was kept or the run ended
    /// before
    std::optional<run_point> strength_lost;
    std::vector<run_point> points;  ///< the recorded states
    std::vector<run_point> steps;   ///< states right after the steps of the plan that were taken

    /// @return mass of the ethanol in the fractions that are kept
    units::mass kept_ethanol() const {
        units::mass sum;
        for (run_fraction const& f : fractions)
            if (f.kept) sum += f.product.ethanol();
        return sum;
    }
    /// @return volume of pure alcohol at 20 °C in the fractions that are kept
    units::volume kept_alcohol() const { return kept_ethanol() / density(mass_fraction(1.0), celsius(20)); }
    /// @return share of the charge's ethanol that is in the fractions that are kept
    double recovery() const {
        units::mass all = residue.liquid().ethanol();
        for (run_fraction const& f : fractions) all += f.product.ethanol();
        return in(kept_ethanol(), all);
    }
    /// @return heat supplied from the first warming on
    units::energy energy() const { return warming.supplied + heat.supplied; }
    /// @return heat supplied for each litre of pure alcohol that is kept
    units::energy energy_per_litre() const { return energy() / in(kept_alcohol(), litre); }
};

namespace detail {

/// converts the plain states of a run to quantities
template <class History>
class run_writer {
public:
    using moment = typename History::point;

    run_writer(History const& h, run_plan const& plan) : history_(h), plan_(plan) {}

    run_point point(moment const& p) const {
        auto const& batch = history_.batch(p);
        still_figures const f = batch.figures(p);
        parcel const all = collected(p.distilled, p.ethanol());
        return {p.seconds() * second,
                all.volume(celsius(20)),
                all.pure_alcohol(),
                p.distilled * mole,
                p.left * mole,
                mole_fraction(p.x()),
                mole_fraction(f.distillate),
                kelvin(batch.boiling(p)),
                kelvin(f.vapour),
                f.reflux_ratio,
                f.condenser * watt,
                f.neck * watt,
                f.partial_condenser * watt,
                f.vapour_flow * mole / second,
                f.taken * mass_of_moles(1.0, f.distillate).volume() * cubic_metre / second};
    }
    run_fraction make_fraction(moment const& begin, moment const& end, bool kept) const {
        parcel const product = collected(end.distilled - begin.distilled, end.ethanol() - begin.ethanol());
        return {product.at(plan_.product_temperature), kept, point(begin), point(end)};
    }
    wash residue(moment const& end, units::mass solids) const {
        auto const [moles, ethanol] = history_.batch(end).remaining(end);
        parcel const liquid = collected(moles, ethanol).at(plan_.product_temperature);
        require_range("distillation", argument::extract_of_what_stays_in_the_pot,
                      100.0 * in(solids, solids + liquid.mass()), extract::unit, 0.0, 70.0,
                      "the run boils the charge down to a syrup, which burns; end it earlier");
        return wash::of(liquid, solids);
    }

private:
    static parcel collected(double moles, double ethanol) { return parcel_of_moles(moles, ethanol); }

    History const& history_;
    run_plan const& plan_;
};

/// errors of the balances of a run's report
inline run_balance balance_of(wash const& charge, std::vector<run_fraction> const& fractions,
                              wash const& residue, run_heat const& heat) {
    units::mass ethanol = charge.liquid().ethanol() - residue.liquid().ethanol();
    units::mass water = charge.liquid().water() - residue.liquid().water();
    for (run_fraction const& f : fractions) {
        ethanol -= f.product.ethanol();
        water -= f.product.water();
    }
    units::energy const lost = heat.supplied - heat.lost_by_pot - heat.neck - heat.condenser -
                               heat.partial_condenser - heat.with_distillate - heat.gained_by_still;
    return {in(ethanol, charge.liquid().ethanol()), in(water, charge.liquid().water()),
            in(lost, heat.supplied)};
}

/// the run of a charged still, without or with holdup
/// @param watch callable: (batch_history const&) -> void; called when the run is computed
template <class Batch, class Progress, class Watch>
distillation run_of(Batch const& batch, wash const& charge, run_plan const& plan, Progress const& progress,
                    Watch const& watch) {
    heating const warming = heat_to_boiling(charge, batch.apparatus().pot,
                                            kelvin(batch.boiling(batch.x(), batch.moles())), plan.charged_at);
    double distilled = 0.0;
    batch_history<Batch> const history(batch, plan, [&](double share) {
        progress(run_progress{distilled = share, 0.0});
    });
    run_writer<batch_history<Batch>> const write(history, plan);
    watch(history);

    vessel const& pot = batch.apparatus().pot;
    auto const& last = history.ends().back();
    std::vector<run_fraction> fractions;
    for (std::size_t k = 0; k < history.ends().size(); ++k) {
        bool const kept = k >= plan.cuts.size() || plan.cuts[k].keep;
        fractions.push_back(write.make_fraction(history.starts()[k], history.ends()[k], kept));
    }
    std::vector<run_point> points;
    for (int i = 0; i < plan.points; ++i) {
        double const share = static_cast<double>(i) / (plan.points - 1);
        points.push_back(write.point(history.at_distilled(share * last.distilled)));
        progress(run_progress{distilled, share});
    }
    // at the power of each stretch between two steps of the plan
    double supplied = 0.0;
    double since = 0.0;
    double power = pot.power.value();
    for (auto const& p : history.steps_of_plan()) {
        supplied += power * (p.seconds() - since);
        since = p.seconds();
        power = history.batch(p).apparatus().pot.power.value();
    }
    supplied += power * (last.seconds() - since);
    double const gained = batch.content_heat(last) - batch.charge_heat();
    std::vector<run_point> steps;
    for (auto const& p : history.steps_of_plan()) steps.push_back(write.point(p));
    run_heat const went_where{supplied * joule,
                              last.pot_loss() * joule,
                              last.neck() * joule,
                              last.condenser() * joule,
                              last.partial_condenser() * joule,
                              last.carried() * joule,
                              gained * joule};
    wash const residue = write.residue(last, charge.solids());
    auto const& lost = history.strength_lost();
    return {fractions,
            residue,
            warming,
            last.seconds() * second,
            went_where,
            balance_of(charge, fractions, residue, went_where),
            lost ? std::optional<run_point>(write.point(*lost)) : std::nullopt,
            points,
            steps};
}

/// The run of `distil`, whose course can be read.
/// @param watch callable: (batch_history const&) -> void; called when the run is computed
template <boiling_mixture M, class Progress, class Watch>
distillation distil_watched(wash const& charge, still const& s, run_plan const& plan, M const& mixture,
                            Progress const& progress, Watch const& watch) {
    require_range("distillation", argument::number_of_ends_of_the_run, static_cast<double>(plan.ends.size()),
                  "", 1.0, run_plan::most_ends, "a run must end");
    require_range("distillation", argument::number_of_cuts, static_cast<double>(plan.cuts.size()), "", 0.0,
                  run_plan::most_cuts);
    if (plan.points != 0)
        require_range("distillation", argument::number_of_points, plan.points, "", 2.0,
                      run_plan::most_points);
    require_range("distillation", argument::temperature_of_the_spout, plan.spout_temperature.celsius(), "°C",
                  -20.0, 40.0);
    require_range("distillation", argument::number_of_steps_of_the_plan,
                  static_cast<double>(plan.steps.size()), "", 0.0, run_plan::most_steps);
    if (s.has_holdup()) return run_of(held_still<M>(charge, s, mixture), charge, plan, progress, watch);
    return run_of(batch_still<M>(charge, s, mixture), charge, plan, progress, watch);
}

}  // namespace detail

/// Distils a charge in batch: integrates pot, distillate and residue until the run ends.
///
/// Without a column, with an insulated neck and without a head it is differential (simple) distillation, d ln
/// n/dx = 1/(y - x) after Rayleigh. @ref distilling lists the limits of the model.
///
/// Without holdup column, neck and head are in a steady state at every moment. That is a good model of a pot,
/// and of a column that holds little beside its charge. Heat that a column loses on its way up may be counted
/// as loss of the neck: a model that spreads it over the plates differs by 0.1 %.
///
/// With holdup the liquids on the plates and in the condenser have balances of their own. When the charge
/// begins to boil, its first vapour fills them; a time at total reflux begins after that. So the distillate
/// is weak at first and becomes stronger, and a condition on it waits until it has been stronger. Column and
/// head hold constant moles: those of the distillate that the steady column would give at the start, in the
/// volumes stated. A reflux that keeps a strength regulates the vapour at the head, to 1e-5 in its mole
/// fraction. At the end they drain into the pot and belong to the residue. On a 25 L pot of 11 % vol, four
/// plates with 60 mL each (1 % of the charge) give 5.5 % more volume above 80 % vol, about half of what they
/// hold, and a first strength 1.0 % vol lower.
/// @param charge   the wash, weaker than the azeotrope, at its temperature
/// @param s        the still
/// @param plan     cuts, ends and steps
/// @param mixture  the equilibrium at the pressure of the day: a `boiling_curve`
/// @param progress callable: run_progress -> void; called after every step and every point
/// @return fractions, residue, times, heat, balances and the points asked for
/// @throws refusal if the charge is empty, holds no ethanol or more than the azeotrope; there are too
///         many cuts, ends, steps or points; the power is not above the pot's heat loss, or would need more
///         than a million hours to boil the charge away; the greatest reflux cannot keep a strength; more
///         condenses above the column than it may, or less than is to be taken; holdup is more than half of
///         the ethanol fills, or meets an enthalpy balance; a cut or an end
///         is already met at its start, or is not met when 2 % of the charge's moles are left (the bounds
///         give the reachable values)
/// @par Accuracy
/// Of the integration: 1e-8 in the strength of fractions, 2e-8 in what has been collected at a point. Of
/// constant moles on the plates: up to 1.2 % of a volume above a strength, against plates that keep their
/// volume. Of the equilibrium: `vapour_uncertainty`, 0.02 in the vapour's mole fraction over a wash and less
/// over spirit; a `curve_with_vapour_shifted` shows its effect. Stages, heat loss and the pot's loss are the
/// user's figures.
/// @par Source
/// @ref source_columns (Rayleigh; McCabe and Thiele; Hairer and Wanner)
template <boiling_mixture M, std::invocable<run_progress> Progress>
distillation distil(wash const& charge, still const& s, run_plan const& plan, M const& mixture,
                    Progress const& progress) {
    return detail::distil_watched(charge, s, plan, mixture, progress, [](auto const&) {});
}

/// The same without progress.
/// @param charge  the wash, weaker than the azeotrope, at its temperature
/// @param s       the still
/// @param plan    cuts and ends
/// @param mixture the equilibrium at the pressure of the day: a `boiling_curve`
/// @return as above
/// @throws refusal as above
template <boiling_mixture M>
distillation distil(wash const& charge, still const& s, run_plan const& plan, M const& mixture) {
    return distil(charge, s, plan, mixture, [](run_progress const&) {});
}

/// The same with the library's own equilibrium.
/// @param charge   the wash, weaker than the azeotrope, at its temperature
/// @param s        the still
/// @param plan     cuts and ends
/// @param pressure absolute pressure, 5 to 170 kPa
/// @return as `distil`
/// @throws refusal as `distil`, or if the pressure is outside its range
inline distillation distil(wash const& charge, still const& s, run_plan const& plan,
                           units::pressure pressure = standard_atmosphere) {
    return distil(charge, s, plan, boiling_curve(pressure));
}
/// The same for a charge without extract.
/// @param charge   parcel to distil
/// @param s        the still
/// @param plan     cuts and ends
/// @param pressure absolute pressure, 5 to 170 kPa
/// @return as `distil`
/// @throws refusal as `distil`, or if the pressure is outside its range
inline distillation distil(parcel const& charge, still const& s, run_plan const& plan,
                           units::pressure pressure = standard_atmosphere) {
    return distil(wash::of(charge), s, plan, pressure);
}

}  // namespace aqueth::inline AQUETH_ABI
