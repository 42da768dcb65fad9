// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Shared by the programs that run a still: the apparatus, the plan of a run, conditions, water and money.

#include "still_program.hpp"

#include <aqueth/aqueth.hpp>
#include <aqueth/correlation/source.hpp>

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace program {

/// The sources of a run.
std::vector<correlation::source> run_sources();

/// A volume in a time: "10 mL/min", "0.5 L/h".
units::volume_flow read_flow(given const& g);

/// A volume that may be 0: nothing discarded, nothing held.
units::volume read_volume_or_none(given const& g);

// --- conditions --------------------------------------------------------------------------------------------

/// A condition and where it was written.
struct asked_condition {
    given from;
    condition what;
};

/// Reads a list of conditions: 'distillate 80 %vol, pot 99 C'.
std::vector<asked_condition> read_conditions(given const& g);

/// The help about units and conditions of runs.
inline constexpr char const* runs_explained =
    "Powers: W, kW. Heat capacity: J/K, kJ/K; heat loss: W/K. Heights: m, cm, mm, in, ft. Times: s, min, h.\n"
    "Cuts and ends, separated by commas or semicolons:\n"
    "  'distillate STRENGTH', 'pot STRENGTH': the strength has fallen to this value\n"
    "  'spout STRENGTH': an alcoholometer in the distillate, not corrected, has fallen to it\n"
    "  'pot TEMP', 'head TEMP': the pot boils at this temperature; the vapour at the head has it\n"
    "  'strength lost': --reflux no longer keeps --keep-strength\n"
    "  'collected VOLUME' (at 20 C), 'elapsed TIME': since the start of the fraction; of the run in --end\n";

/// Calls f, and names the condition that causes a refusal.
template <class F>
auto on_behalf_of_one(std::vector<asked_condition> const& asked, F const& f) {
    try {
        return f();
    } catch (refusal const& e) {
        for (auto const& [from, what] : asked) {
            bool const by_number = what.what() != condition::watched::kept_strength;
            if (e.code() == what.code() && (!by_number || e.value() == what.number()))
                on_behalf_of(from, [&] { raise_error(e); });
        }
        throw;
    }
}

// --- the apparatus -----------------------------------------------------------------------------------------

/// The options that describe a still.
struct still_options {
    given const &power, &heat, &loss, &room;
    given const &stages, &plates, &efficiency, &packing, &hetp, &plate_holds, &column_holds, &flows;
    given const& neck;
    given const &ratio, &take_off, &keep, &reflux_temperature, &partial, &head_holds;

    static still_options offer(session& s);
    still read() const;
    assumptions assumed() const;
    /// Whether there is a column.
    bool has_column() const { return stages.present || plates.present || packing.present; }

private:
    void refuse_what_does_not_apply() const;
    void refuse_dry_column(bool returns) const;
    vessel read_pot() const;
    column read_column() const;
    aqueth::neck read_neck() const;
    head read_head() const;
};

/// The options that say what is done while a still runs.
struct plan_options {
    given const &start, &steps, &spout, &charged_at;

    static plan_options offer(session& s);
    /// Sets start, steps and temperatures of a plan. The conditions of its steps join those asked for.
    void read(run_plan& plan, std::vector<asked_condition>& asked) const;
};

/// The options about the fractions of a run and its end.
struct fraction_options {
    given const &discard, &cuts, &ends;

    static fraction_options offer(session& s);
    /// Sets cuts and ends of a plan. The conditions join those asked for.
    /// @param keep the option that 'strength lost' needs
    void read(run_plan& plan, std::vector<asked_condition>& asked, given const& keep) const;
};

/// Names for so many fractions: foreshots if the first is discarded, tails for the last, hearts between.
std::vector<std::string> usual_names(std::size_t number, bool discarded);

/// Calls f, which distils, and names the option that causes a refusal.
template <class F>
auto on_behalf_of_run(charge_options const& charge, still_options const& s, plan_options const& plan,
                      std::vector<asked_condition> const& asked, F const& f) {
    given const& holds = s.plate_holds.present    ? s.plate_holds
                         : s.column_holds.present ? s.column_holds
                                                  : s.head_holds;
    given const& condensed = s.partial.present ? s.partial : s.neck;
    return on_behalf_of({{argument::power, s.power},
                         {argument::mass_of_the_charge, charge.amount},
                         {argument::strength_of_the_charge, charge.strength},
                         {argument::temperature_of_the_charge, plan.charged_at},
                         {argument::strength_of_the_distillate_to_keep, s.keep},
                         {argument::holdup, holds},
                         {argument::heat_loss_coefficient, s.neck},
                         {argument::share_of_the_vapour_that_condenses, condensed},
                         {argument::flow_of_the_cooling_water, s.partial},
                         {argument::temperature_of_the_reflux, s.reflux_temperature},
                         {argument::take_off_rate, s.take_off},
                         {argument::time_at_total_reflux, plan.start},
                         {argument::number_of_steps_of_the_plan, plan.steps}},
                        [&] { return on_behalf_of_one(asked, f); });
}

// --- what is left -----------------------------------------------------------------------------------------

/// A wash as a lot: masses, volume and strength are those of the whole, its extract included.
json to_json(wash const& w);

/// "2.5 L of pure alcohol", or proof gallons.
std::string alcohol_in_words(wording const& words, units::volume at_20_celsius);

/// The row of what is left when a run ends: in the pot, and what drains into it from column and head.
/// @param before what comes before the strength
void say_residue(page& text, wording const& words, still const& s, wash const& residue,
                 std::string const& before = "");

// --- water and money ---------------------------------------------------------------------------------------

/// The options about the water of the condenser.
struct cooling_options {
    given const &water_in, &water_out, &receiver;

    static cooling_options offer(session& s);
    bool wanted() const { return water_in.present || water_out.present || receiver.present; }
    cooling_temperatures read() const;
    /// Calls f, and names the option that causes a refusal.
    template <class F>
    auto on_behalf(F const& f) const {
        return on_behalf_of({{argument::temperature_of_the_water_in, water_in},
                             {argument::temperature_of_the_water_out, water_out},
                             {argument::temperature_of_the_receiver, receiver}},
                            f);
    }
};

/// The options about what heat and water cost.
struct cost_options {
    given const &price, &efficiency, &gas_heat, &water_price, &bottle;

    static cost_options offer(session& s);
    bool wanted() const {
        return price.present || efficiency.present || gas_heat.present || water_price.present ||
               bottle.present;
    }
    /// The cost of heat and water; the price of water is refused without any.
    run_cost read(units::energy heat, units::volume water, cooling_options const& cooling) const;
    /// Says on one row what to buy, how long it takes, and what the product costs.
    /// @param product what the cost is to be divided by; nothing if there is none
    /// @throws bad_input if the bottle is stronger than the product
    void say(page& text, wording const& words, run_cost const& cost, units::time duration,
             std::optional<parcel> const& product, std::string const& name) const;
    json to_json(run_cost const& cost, units::time duration, std::optional<parcel> const& product) const;

private:
    /// The contents of the bottle of --bottle.
    parcel read_bottle() const;
    /// How many of them the product fills; a bottle that is stronger than the product is refused.
    double bottles_of(wording const& words, parcel const& product, std::string const& name) const;
    /// Mass of the gas, if it is bought by its mass.
    std::optional<units::mass> gas(run_cost const& cost) const;
};

std::string how_far(run_progress const& p);

}  // namespace program
