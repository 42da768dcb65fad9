// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/batch_still.hpp>
#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/heating.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/run_plan.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <cmath>
#include <cstddef>
#include <vector>

namespace aqueth {

/// The state of a run at a moment.
struct run_point {
    units::time elapsed;         ///< since it began to boil
    units::volume collected;     ///< all distillate so far, as one liquid at 20 °C
    units::volume pure_alcohol;  ///< pure alcohol in it at 20 °C
    mole_fraction still;         ///< composition of what boils, extract not counted
    mole_fraction distillate;    ///< composition of what comes over
    units::temperature boiling;  ///< temperature in the pot
    units::temperature vapour;   ///< temperature of the vapour at the head: the dew point of the distillate
    double reflux_ratio;         ///< liquid returned on purpose per distillate taken
    units::power condenser;      ///< heat the condenser takes out
};

/// One fraction of a run.
struct run_fraction {
    parcel product;   ///< what was collected, at the plan's temperature
    bool kept;        ///< false if it is to be discarded
    run_point begin;  ///< state when it began
    run_point end;    ///< state when it ended
};

/// Where the heat went, from the first warming to the end of the run.
struct run_heat {
    units::energy supplied;         ///< by the heater while it boiled
    units::energy lost_by_pot;      ///< to the room
    units::energy lost_by_column;   ///< by what condensed on its walls
    units::energy condenser;        ///< taken out by the condenser
    units::energy with_distillate;  ///< carried over, counted from liquid ethanol and water at 0 °C
    units::energy
        gained_by_still;  ///< what the pot's content holds more at the end than at the start; negative, as
                          ///< it has become less
};

/// How far a run's sums fail to close, relative to the charge; rounding and the integrator's error.
struct run_balance {
    double ethanol;  ///< charge less fractions less residue, over the charge
    double water;    ///< the same for water
    double energy;   ///< heat supplied less where it went, over the heat supplied
};

/// What a run gives.
struct distillation {
    std::vector<run_fraction> fractions;  ///< in their order
    wash residue;                   ///< what stays in the pot, with the extract, at the plan's temperature
    heating warming;                ///< from the temperature of the charge to boiling
    units::time boiling_time;       ///< from boiling to the end
    run_heat heat;                  ///< where the heat went while it boiled
    run_balance balance;            ///< how well the sums close
    std::vector<run_point> points;  ///< what was recorded

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

/// turns the plain states of a batch into quantities
template <boiling_mixture M>
class run_writer {
public:
    run_writer(batch_still<M> const& b, run_plan const& plan) : batch_(b), plan_(plan) {}

    run_point point(batch_point const& p) const {
        auto const [d, phi] = batch_.top(p.x());
        parcel const all = collected(p.distilled, p.ethanol());
        double const rate = 1.0 / batch_.seconds_per_mole(p.x(), d, phi, p.left);
        double const share = 1.0 - batch_.apparatus().returned.heat_loss();
        return {p.seconds() * second,
                all.volume(celsius(20)),
                all.pure_alcohol(),
                mole_fraction(p.x()),
                mole_fraction(d),
                kelvin(batch_.boiling(p.x(), p.left)),
                kelvin(batch_.head_temperature(d)),
                batch_.apparatus().returned.external(phi),
                rate * share * batch_.condensation(d, phi) * watt};
    }
    run_fraction make_fraction(batch_point const& begin, batch_point const& end, bool kept) const {
        parcel const product = collected(end.distilled - begin.distilled, end.ethanol() - begin.ethanol());
        return {product.at(plan_.product_temperature), kept, point(begin), point(end)};
    }
    wash residue(batch_point const& end, units::mass solids) const {
        parcel const liquid = collected(end.left, end.left * end.x()).at(plan_.product_temperature);
        require_range("distillation", "extract of what stays in the pot",
                      100.0 * in(solids, solids + liquid.mass()), extract::unit, 0.0, 70.0,
                      "the run boils the charge down to a syrup, which burns; end it earlier");
        return wash::of(liquid, solids);
    }

private:
    static parcel collected(double moles, double ethanol) { return parcel_of_moles(moles, ethanol); }

    batch_still<M> const& batch_;
    run_plan const& plan_;
};

}  // namespace detail

/// Distils a charge in batch: integrates what boils, comes over and stays behind until the run ends.
///
/// Without a column it is differential (simple) distillation, d ln n/dx = 1/(y - x) after Rayleigh. With one,
/// the column is taken to be steady at every moment and to hold nothing; the head has a total condenser.
/// What the model leaves out stands in @ref distilling.
/// @param charge  the wash, weaker than the azeotrope, at its temperature
/// @param s       the still
/// @param plan    cuts and ends
/// @param mixture the equilibrium at the pressure of the day: a `boiling_curve`
/// @return fractions, residue, times, heat, balances and the points asked for
/// @throws range_error if the charge is empty, holds no ethanol or more than the azeotrope; the power is not
///         above what the pot loses; a strength to be kept is out of reach of the greatest reflux; a cut or
///         an end has come to pass before it is watched, or has not when 2 % of the charge's moles are left:
///         the error says what is reachable
/// @par Accuracy
/// Of the integration: 1e-8 in collected strength. Of the equilibrium: 0.005 in the vapour's mole fraction,
/// which is what laboratories differ by. Stages, heat loss and the pot's loss are the user's figures.
/// @par Source
/// @ref source_columns (Rayleigh; McCabe and Thiele)
template <boiling_mixture M>
distillation distil(wash const& charge, still const& s, run_plan const& plan, M const& mixture) {
    require_range("distillation", "number of ends of the run", static_cast<double>(plan.ends.size()), "", 1.0,
                  1e6, "a run must end");
    if (plan.points != 0) require_range("distillation", "number of points", plan.points, "", 2.0, 1e5);
    detail::batch_still<M> const batch(charge, s, mixture);
    detail::batch_history<detail::batch_still<M>> const history(batch, plan);
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
    }
    double const gained = batch.content_heat(last) - batch.content_heat(first);
    double const supplied = s.pot.power.value() * last.seconds();
    run_heat const went_where{supplied * joule,         last.pot_loss() * joule, last.column_loss() * joule,
                              last.condenser() * joule, last.carried() * joule,  gained * joule};
    double const went = last.pot_loss() + last.column_loss() + last.condenser() + last.carried() + gained;
    double const ethanol = first.left * first.x() - last.ethanol() - last.left * last.x();
    run_balance const balance{ethanol / (first.left * first.x()), -ethanol / (first.left * (1.0 - first.x())),
                              (supplied - went) / supplied};
    return {fractions,
            write.residue(last, charge.solids()),
            heat(charge, s.pot, kelvin(batch.boiling(first.x(), first.left))),
            last.seconds() * second,
            went_where,
            balance,
            points};
}

/// The same for a charge without extract, and the library's own equilibrium.
/// @param charge   parcel to distil
/// @param s        the still
/// @param plan     cuts and ends
/// @param pressure absolute pressure, 5 to 170 kPa
/// @return as `distil`
/// @throws range_error as `distil`, or if the pressure is outside its range
inline distillation distil(parcel const& charge, still const& s, run_plan const& plan,
                           units::pressure pressure = standard_atmosphere) {
    return distil(wash::of(charge), s, plan, boiling_curve(pressure));
}

}  // namespace aqueth
