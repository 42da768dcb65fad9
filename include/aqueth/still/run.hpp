// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/still/detail/batch_run.hpp>
#include <aqueth/still/detail/column_solver.hpp>
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
    units::amount left;          ///< ethanol and water left in the still
    mole_fraction still;         ///< composition of the boiling liquid, without extract
    mole_fraction distillate;    ///< composition of the distillate
    units::temperature boiling;  ///< temperature in the pot
    units::temperature vapour;   ///< temperature of the vapour at the head: the dew point of the distillate
    double reflux_ratio;         ///< liquid that the condenser returns per distillate taken
    units::power condenser;      ///< heat the condenser takes out
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
    units::energy supplied;         ///< by the heater while it boiled
    units::energy lost_by_pot;      ///< to the room
    units::energy neck;             ///< taken out by the neck: lost to the room, or to cooling water
    units::energy condenser;        ///< taken out by the condenser
    units::energy with_distillate;  ///< carried over, counted from liquid ethanol and water at 0 °C
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

/// converts the plain states of a batch to quantities
template <boiling_mixture M>
class run_writer {
public:
    run_writer(batch_still<M> const& b, run_plan const& plan) : batch_(b), plan_(plan) {}

    run_point point(batch_point const& p) const {
        auto const [d, phi] = batch_.top(p.x());
        parcel const all = collected(p.distilled, p.ethanol());
        double const rate = 1.0 / batch_.seconds_per_mole(p.x(), d, phi, p.left);
        return {p.seconds() * second,
                all.volume(celsius(20)),
                all.pure_alcohol(),
                p.distilled * mole,
                p.left * mole,
                mole_fraction(p.x()),
                mole_fraction(d),
                kelvin(batch_.boiling(p.x(), p.left)),
                kelvin(batch_.head_temperature(d)),
                reflux_ratio_of(phi, batch_.apparatus().neck.share()),
                rate * batch_.condensation_without_neck(d, phi) * watt};
    }
    run_fraction make_fraction(batch_point const& begin, batch_point const& end, bool kept) const {
        parcel const product = collected(end.distilled - begin.distilled, end.ethanol() - begin.ethanol());
        return {product.at(plan_.product_temperature), kept, point(begin), point(end)};
    }
    wash residue(batch_point const& end, units::mass solids) const {
        parcel const liquid = collected(end.left, end.left * end.x()).at(plan_.product_temperature);
        require_range("distillation", argument::extract_of_what_stays_in_the_pot,
                      100.0 * in(solids, solids + liquid.mass()), extract::unit, 0.0, 70.0,
                      "the run boils the charge down to a syrup, which burns; end it earlier");
        return wash::of(liquid, solids);
    }

private:
    static parcel collected(double moles, double ethanol) { return parcel_of_moles(moles, ethanol); }

    batch_still<M> const& batch_;
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
                               heat.with_distillate - heat.gained_by_still;
    return {in(ethanol, charge.liquid().ethanol()), in(water, charge.liquid().water()),
            in(lost, heat.supplied)};
}

/// Refuses what no model of this version computes.
inline void require_modelled(still const& s, run_plan const& plan) {
    char const* const reason = "not modelled yet";
    require_range("distillation", argument::holdup, (s.tower.holdup() + s.head.holdup()).value() * 1e3, "L",
                  0.0, 0.0, reason);
    require_range("distillation", argument::heat_loss_coefficient, s.neck.loss().value(), "W/K", 0.0, 0.0,
                  reason);
    require_range("distillation", argument::share_of_the_vapour_that_condenses,
                  s.head.what() == head::kind::partial_condenser ? 1.0 : 0.0, "", 0.0, 0.0, reason);
    require_range("distillation", argument::temperature_of_the_reflux,
                  s.head.reflux_temperature() ? 1.0 : 0.0, "", 0.0, 0.0, reason);
    require_range("distillation", argument::take_off_rate, s.head.returned().take_off().value(), "m3/s", 0.0,
                  0.0, reason);
    require_range("distillation", argument::time_at_total_reflux, plan.start.value(), "s", 0.0, 0.0, reason);
    require_range("distillation", argument::number_of_steps_of_the_plan,
                  static_cast<double>(plan.steps.size()), "", 0.0, 0.0, reason);
}

}  // namespace detail

/// Distils a charge in batch: integrates pot, distillate and residue until the run ends.
///
/// Without a column and with an insulated neck it is differential (simple) distillation, d ln n/dx = 1/(y -
/// x) after Rayleigh. Column and neck are in a steady state at every moment and have no holdup; a total
/// condenser follows them. @ref distilling lists the limits of the model.
/// @param charge   the wash, weaker than the azeotrope, at its temperature
/// @param s        the still
/// @param plan     cuts and ends
/// @param mixture  the equilibrium at the pressure of the day: a `boiling_curve`
/// @param progress callable: run_progress -> void; called after every step and every point
/// @return fractions, residue, times, heat, balances and the points asked for
/// @throws refusal if the charge is empty, holds no ethanol or more than the azeotrope; there are too
///         many cuts, ends or points; the power is not above the pot's heat loss, or would need more than a
///         million hours to boil the charge away; the greatest reflux cannot keep a strength; a cut or an end
///         is already met at its start, or is not met when 2 % of the charge's moles are left (the bounds
///         give the reachable values)
/// @par Accuracy
/// Of the integration: 1e-8 in the strength of fractions, 2e-8 in what has been collected at a point. Of the
/// equilibrium: `vapour_uncertainty`, 0.02 in the vapour's mole fraction over a wash and less over spirit; a
/// `curve_with_vapour_shifted` shows its effect. Stages, heat loss and the pot's loss are the user's figures.
/// @par Source
/// @ref source_columns (Rayleigh; McCabe and Thiele)
template <boiling_mixture M, std::invocable<run_progress> Progress>
distillation distil(wash const& charge, still const& s, run_plan const& plan, M const& mixture,
                    Progress const& progress) {
    require_range("distillation", argument::number_of_ends_of_the_run, static_cast<double>(plan.ends.size()),
                  "", 1.0, run_plan::most_ends, "a run must end");
    require_range("distillation", argument::number_of_cuts, static_cast<double>(plan.cuts.size()), "", 0.0,
                  run_plan::most_cuts);
    if (plan.points != 0)
        require_range("distillation", argument::number_of_points, plan.points, "", 2.0,
                      run_plan::most_points);
    require_range("distillation", argument::temperature_of_the_spout, plan.spout_temperature.celsius(), "°C",
                  -20.0, 40.0);
    detail::require_modelled(s, plan);
    detail::batch_still<M> const batch(charge, s, mixture);
    double distilled = 0.0;
    detail::batch_history<detail::batch_still<M>> const history(batch, plan, [&](double share) {
        progress(run_progress{distilled = share, 0.0});
    });
    detail::run_writer<M> const write(batch, plan);

    detail::batch_point const& first = history.starts().front();
    detail::batch_point const& last = history.ends().back();
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
    double const gained = batch.content_heat(last) - batch.content_heat(first);
    run_heat const went_where{s.pot.power * (last.seconds() * second),
                              last.pot_loss() * joule,
                              last.neck() * joule,
                              last.condenser() * joule,
                              last.carried() * joule,
                              gained * joule};
    wash const residue = write.residue(last, charge.solids());
    auto const& lost = history.strength_lost();
    return {fractions,
            residue,
            heat(charge, s.pot, kelvin(batch.boiling(first.x(), first.left))),
            last.seconds() * second,
            went_where,
            detail::balance_of(charge, fractions, residue, went_where),
            lost ? std::optional<run_point>(write.point(*lost)) : std::nullopt,
            points};
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
