// SPDX-License-Identifier: BSL-1.0
#include "still_options.hpp"

#include <aqueth/correlation/heat_capacity_perry.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/model/enthalpy.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string_view>
#include <variant>

namespace program {

std::vector<correlation::source> run_sources() {
    auto all = boiling_sources();
    all.insert(all.end(), {model::enthalpy::cited, correlation::heat_capacity_perry::cited,
                           correlation::sucrose_density::cited});
    return all;
}

units::volume_flow read_flow(given const& g) {
    wanted const w{"a volume in a time", "mL/min, L/min, L/h"};
    number_and_unit const q = read_quantity(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    auto const slash = unit.find('/');
    if (slash == std::string::npos) refuse_unit(g, q.unit, w);
    auto const* volume = find_unit(unit_table<units::volume>::rows, unit.substr(0, slash));
    auto const* time = find_unit(unit_table<units::time>::rows, unit.substr(slash + 1));
    if (!volume || !time) refuse_unit(g, q.unit, w);
    return units::volume_flow::from_value(q.number * volume->si / time->si);
}

units::volume read_volume_or_none(given const& g) {
    return read_as<units::volume>(g).value() == 0.0 ? units::volume() : read_volume(g);
}

// --- conditions --------------------------------------------------------------------------------------------

namespace {

/// Reads one condition; "still" and "boiling" say of the pot which of the two is meant.
condition read_condition(given const& g) {
    auto const space = g.text.find(' ');
    std::string const word = g.text.substr(0, space);
    given const rest{label(g) + ":", space == std::string::npos ? "" : g.text.substr(space + 1), true};
    auto const is_temperature = [&] {
        wanted const w{"the pot's strength or temperature", "%vol or C"};
        return temperature_scale(squeezed(read_quantity(rest, rest.text, w).unit)) != 0;
    };
    return on_behalf_of(g, [&] {
        bool const hot = word == "boiling" || (word == "pot" && is_temperature());
        if (word == "still" || word == "distillate" || (word == "pot" && !hot)) {
            return std::visit(
                [&](auto const& each) {
                    return word == "distillate" ? condition::distillate_strength(each)
                                                : condition::still_strength(each);
                },
                read_strength(rest));
        }
        if (g.text == "strength lost") return condition::strength_lost();
        if (hot) return condition::boiling_temperature(read_any_temperature(rest));
        if (word == "head") return condition::head_temperature(read_any_temperature(rest));
        if (word == "spout") {
            auto const reading = read_strength(rest);
            auto const* percent = std::get_if<volume_fraction>(&reading);
            if (!percent) refuse(rest, "expected the reading of an alcoholometer in %vol at 20 C");
            return condition::reading_at_spout(*percent);
        }
        if (word == "collected") return condition::collected(read_volume(rest));
        if (word == "elapsed")
            return condition::elapsed(read_as<units::time>(rest, {"a time", "s, min or h"}));
        refuse(g, "expected 'distillate' and a strength, 'pot' and a strength or a temperature, 'head' and a "
                  "temperature, 'spout' and a reading, 'collected' and a volume, 'elapsed' and a time, or "
                  "'strength lost'");
    });
}

}  // namespace

std::vector<asked_condition> read_conditions(given const& g) {
    std::vector<asked_condition> result;
    for (given const& part : parts_of(g)) result.push_back({part, read_condition(part)});
    return result;
}

// --- the apparatus -----------------------------------------------------------------------------------------

still_options still_options::offer(session& s) {
    given const& power = s.required("--power", "POWER", "heating power of the pot: W, kW");
    given const& heat = s.option("--pot-heat", "HEAT", "heat capacity of the empty pot", "0 kJ/K");
    given const& loss = s.option("--pot-loss", "LOSS", "heat loss of the pot to the room", "0 W/K");
    given const& room = s.option("--room", "TEMP", "temperature of the room", "20 C");
    given const& stages = s.option("--stages", "NUMBER", "theoretical stages above the pot");
    given const& plates = s.option("--plates", "NUMBER", "real plates, instead of --stages");
    given const& efficiency =
        s.option("--plate-efficiency", "SHARE", "Murphree efficiency of each plate", "0.6");
    given const& packing = s.option("--packing", "HEIGHT", "height of the packing, instead of --stages");
    given const& hetp = s.option("--hetp", "HEIGHT", "height of packing equivalent to one theoretical plate");
    given const& plate_holds =
        s.option("--plate-holds", "VOLUME", "liquid on each plate or stage while it runs", "0 mL");
    given const& column_holds =
        s.option("--column-holds", "VOLUME", "liquid in the whole column, instead of --plate-holds", "0 mL");
    given const& flows =
        s.option("--flows", "MODEL", "flows in the column: 'constant' or by 'enthalpy'", "constant");
    given const& neck = s.option("--heat-loss", "LOSS",
                                 "what condenses in neck and head and runs back: a share of the vapour, or "
                                 "its heat loss in W/K",
                                 "0 %");
    given const& ratio = s.option("--reflux", "RATIO",
                                  "reflux ratio: liquid returned by the condenser per distillate taken", "0");
    given const& take_off =
        s.option("--take-off", "RATE", "distillate taken in a time, instead of --reflux: mL/min, L/h");
    given const& keep =
        s.option("--keep-strength", "STRENGTH", "raise the reflux, up to --reflux, to keep this strength");
    given const& temperature = s.option("--reflux-temperature", "TEMP",
                                        "temperature of the reflux where it enters the column", "boiling");
    given const& partial = s.option("--partial-condenser", "SHARE",
                                    "a partial condenser: the share of the vapour that it condenses, or its "
                                    "water as 'FLOW, TEMP in, TEMP out'");
    given const& head_holds =
        s.option("--head-holds", "VOLUME", "liquid in condenser and reflux line", "0 mL");
    constexpr carried learned = carried::of_the_still;
    s.carry_on({{loss, learned},
                {stages, learned, {plates, packing}},
                {plates, learned, {stages, packing}},
                {efficiency, learned, {stages, packing}},
                {plate_holds, learned, {column_holds}},
                {neck, learned},
                {ratio, learned, {take_off}},
                {temperature, learned},
                {head_holds, learned}});
    return {power,        heat,  loss, room,  stages,   plates, efficiency,  packing, hetp,      plate_holds,
            column_holds, flows, neck, ratio, take_off, keep,   temperature, partial, head_holds};
}

/// Refuses options that need another one, instead of ignoring them.
void still_options::refuse_what_does_not_apply() const {
    int const columns = stages.present + plates.present + packing.present;
    if (columns > 1) throw bad_input("give only one of --stages, --plates and --packing");
    if (ratio.present + take_off.present + partial.present > 1)
        throw bad_input("give only one of --reflux, --take-off and --partial-condenser");
    if (plate_holds.present && column_holds.present)
        throw bad_input("give either --plate-holds or --column-holds");
    require_beside(efficiency, plates.present, "--plates");
    require_beside(hetp, packing.present, "--packing");
    for (given const* const each : {&ratio, &take_off, &keep, &flows, &plate_holds, &column_holds})
        require_beside(*each, columns == 1, "a column: --stages, --plates or --packing");
    if (keep.present && !ratio.present)
        throw bad_input("--keep-strength needs --reflux, the highest ratio allowed");
    require_beside(reflux_temperature, ratio.present || take_off.present, "--reflux or --take-off");
    require_beside(room, loss.present || neck.present, "--pot-loss or --heat-loss");
}

/// A column without reflux works like a plain pot: that is refused, because the user expects a column.
void still_options::refuse_dry_column(bool returns) const {
    for (given const* const each : {&stages, &plates, &packing}) {
        if (each->present && !ratio.present && !take_off.present && !returns) {
            throw bad_input(fmt::format(
                "{} has no effect without reflux: give --reflux, or --heat-loss for the share that "
                "condenses in the head and runs back",
                each->name));
        }
    }
}

assumptions still_options::assumed() const {
    assumptions all;
    if (plates.present) all.unless_given(efficiency, "plates of efficiency 0.6");
    if (has_column()) {
        all.unless_given(flows, "equal flows on all stages");
        if (!take_off.present && !partial.present) all.unless_given(ratio, "no reflux from the condenser");
        if (!column_holds.present) all.unless_given(plate_holds, "no liquid stays in the column");
    }
    if (ratio.present || take_off.present) all.unless_given(reflux_temperature, "reflux as hot as it boils");
    all.unless_given(neck, "no vapour condenses in neck and head");
    all.unless_given(loss, "the pot loses no heat");
    all.unless_given(heat, "the metal of the pot takes up no heat");
    return all;
}

vessel still_options::read_pot() const {
    vessel pot{read_as<units::power>(power, {"a power", "W or kW"})};
    pot.heat_capacity = read_as<units::heat_capacity>(heat, {"a heat capacity", "J/K or kJ/K"});
    pot.loss = read_as<units::thermal_conductance>(loss, {"a heat loss", "W/K"});
    pot.room = read_any_temperature(room);
    on_behalf_of({{argument::power, power},
                  {argument::heat_capacity, heat},
                  {argument::heat_loss_coefficient, loss},
                  {argument::temperature_of_the_room, room}},
                 [&] { pot.require_possible(); });
    return pot;
}

column still_options::read_column() const {
    auto const built = [&] {
        if (packing.present) {
            if (!hetp.present) throw bad_input("--packing needs --hetp");
            auto const height = [](given const& g) {
                return read_as<units::length>(g, {"a height", "m, cm, mm or ft"});
            };
            return on_behalf_of({{argument::height_of_the_packing, packing},
                                 {argument::height_equivalent_to_a_theoretical_plate, hetp},
                                 {argument::number_of_stages, packing}},
                                [&] { return column::of_packing(height(packing), height(hetp)); });
        }
        if (plates.present) {
            double const share = read_share(efficiency);
            return on_behalf_of(efficiency,
                                [&] { return column::of_plates(read_count(plates, 100), share); });
        }
        return stages.present ? column::of_stages(read_plain(stages, 0.0, column::most_stages))
                              : column::none();
    }();
    if (plate_holds.present)
        return on_behalf_of(plate_holds, [&] { return built.holding(read_volume_or_none(plate_holds)); });
    if (column_holds.present)
        return on_behalf_of(column_holds,
                            [&] { return built.holding_in_all(read_volume_or_none(column_holds)); });
    return built;
}

neck still_options::read_neck() const {
    wanted const w{"a share or a heat loss", "%, or a plain number up to 1; W/K"};
    std::string const unit = squeezed(read_number(neck, neck.text, w).unit);
    return on_behalf_of(neck, [&] {
        if (unit == "w/k") return aqueth::neck::losing(read_as<units::thermal_conductance>(neck, w));
        if (!unit.empty() && unit != "%") refuse_unit(neck, unit, w);
        return aqueth::neck::condensing(read_share(neck));
    });
}

head still_options::read_head() const {
    auto const kind = [&] {
        if (partial.present) {
            auto const parts = parts_of(partial);
            if (parts.size() != 1 && parts.size() != 3)
                refuse(partial, "expected a share, or its water as 'FLOW, TEMP in, TEMP out'");
            return on_behalf_of(partial, [&] {
                if (parts.size() == 1) return head::partial_condenser(read_share(parts[0]));
                return head::partial_condenser(cooling_water{
                    read_flow(parts[0]), read_any_temperature(parts[1]), read_any_temperature(parts[2])});
            });
        }
        if (take_off.present) {
            return on_behalf_of(
                take_off, [&] { return head::total_condenser(reflux::of_take_off(read_flow(take_off))); });
        }
        double const greatest = read_plain(ratio, 0.0, 1000.0);
        if (!keep.present) return head::total_condenser(reflux::constant(greatest));
        return std::visit(
            [&](auto const& each) {
                return head::total_condenser(reflux::constant_strength(each, greatest));
            },
            read_strength(keep));
    }();
    head result = kind;
    if (reflux_temperature.present) {
        result = on_behalf_of(reflux_temperature,
                              [&] { return result.reflux_at(read_any_temperature(reflux_temperature)); });
    }
    if (head_holds.present)
        result = on_behalf_of(head_holds, [&] { return result.holding(read_volume_or_none(head_holds)); });
    return result;
}

still still_options::read() const {
    refuse_what_does_not_apply();
    still result{read_pot()};
    result.tower = read_column();
    result.head = read_head();
    result.neck = read_neck();
    refuse_dry_column(partial.present || result.neck.share() > 0.0 || result.neck.loss().value() > 0.0);
    if (flows.text != "constant" && flows.text != "enthalpy")
        refuse(flows, "expected 'constant' or 'enthalpy'");
    if (flows.text == "enthalpy") result.flow = flow_model::enthalpy_balance;
    return result;
}

// --- the plan ----------------------------------------------------------------------------------------------

plan_options plan_options::offer(session& s) {
    given const& start =
        s.option("--total-reflux", "TIME", "time at total reflux before anything is taken", "0 min");
    given const& steps = s.option("--steps", "LIST",
                                  "changes while it runs: 'reflux 5 from collected 1 L; power 1 kW from pot "
                                  "97 C; take-off 10 mL/min from elapsed 2 h'");
    given const& spout =
        s.option("--spout-temperature", "TEMP", "temperature of the distillate where it is read", "20 C");
    given const& charged_at = s.option(
        "--filled-at", "TEMP",
        "temperature of a preheated charge that is filled into a cold pot. Hot wash gives off flammable, "
        "scalding vapour: transfer it through a closed line, with no source of ignition near");
    return {start, steps, spout, charged_at};
}

namespace {

plan_step read_step(given const& g, std::vector<asked_condition>& asked) {
    std::string_view const text = g.text;
    auto const from = text.find(" from ");
    auto const space = text.find(' ');
    if (from == std::string_view::npos || space >= from)
        refuse(g, "expected a change, 'from' and a condition: 'reflux 5 from collected 1 L'");
    std::string_view const word = text.substr(0, space);
    given const value{label(g) + ":", std::string(trimmed(text.substr(space, from - space))), true};
    given const when{g.name, std::string(trimmed(text.substr(from + 6))), true};
    plan_step step{read_condition(when)};
    asked.push_back({when, step.when});
    on_behalf_of(g, [&] {
        if (word == "reflux") {
            step.returned = reflux::constant(read_plain(value, 0.0, 1000.0));
        } else if (word == "take-off") {
            step.returned = reflux::of_take_off(read_flow(value));
        } else if (word == "power") {
            vessel const pot{read_as<units::power>(value, {"a power", "W or kW"})};
            pot.require_possible();
            step.power = pot.power;
        } else {
            refuse(g, "expected 'reflux' and a ratio, 'power' and a power, or 'take-off' and a rate");
        }
    });
    return step;
}

}  // namespace

void plan_options::read(run_plan& plan, std::vector<asked_condition>& asked) const {
    if (start.present) plan.start = read_as<units::time>(start, {"a time", "s, min or h"});
    plan.spout_temperature = read_any_temperature(spout);
    if (charged_at.present) plan.charged_at = read_any_temperature(charged_at);
    if (!steps.present) return;
    for (given const& part : parts_of(steps)) plan.steps.push_back(read_step(part, asked));
}

// --- fractions ---------------------------------------------------------------------------------------------

fraction_options fraction_options::offer(session& s) {
    given const& discard =
        s.option("--discard", "VOLUME", "volume of the foreshots at 20 C; they are not kept");
    given const& cuts = s.option("--cuts", "LIST", "ends of fractions: 'distillate 80 %vol, pot 99 C'");
    given const& ends =
        s.required("--end", "LIST", "end of the run, the first of: 'pot 1 %vol, elapsed 6 h'");
    return {discard, cuts, ends};
}

void fraction_options::read(run_plan& plan, std::vector<asked_condition>& asked, given const& keep) const {
    std::vector<asked_condition> of_cuts;
    if (cuts.present) of_cuts = read_conditions(cuts);
    asked.insert(asked.end(), of_cuts.begin(), of_cuts.end());
    if (discard.present && read_volume_or_none(discard).value() > 0.0) {
        asked.push_back({discard, condition::collected(read_volume(discard))});
        plan.cuts.push_back({asked.back().what, false});
    }
    for (asked_condition const& each : of_cuts) plan.cuts.push_back({each.what});
    for (asked_condition const& each : read_conditions(ends)) {
        asked.push_back(each);
        plan.ends.push_back(each.what);
    }
    for (auto const& [from, what] : asked) {
        if (what.what() == condition::watched::kept_strength && !keep.present)
            refuse(from, "needs --keep-strength");
    }
}

std::vector<std::string> usual_names(std::size_t number, bool discarded) {
    if (number == 1) return {discarded ? "foreshots" : "distillate"};
    std::vector<std::string> names(number, "hearts");
    std::size_t const first = discarded ? 1 : 0;
    if (discarded) names.front() = "foreshots";
    if (number - first > 1) names.back() = "tails";
    std::size_t const hearts = number - first - (names.back() == "tails" ? 1 : 0);
    for (std::size_t k = 0; hearts > 1 && k < hearts; ++k) names[first + k] += fmt::format(" {}", k + 1);
    return names;
}

// --- what is left -----------------------------------------------------------------------------------------

json to_json(wash const& w) {
    json data = to_json(w.liquid());
    if (w.solids() > units::mass()) {
        data["mass_kg"] = in(w.mass(), kilogram);
        data["balance_indication_kg"] =
            in(balance_indication(w.mass(), w.density(w.temperature())), kilogram);
        data["volume_L"] = in(w.volume(), litre);
        data["strength_percent_vol_20C"] = w.strength().percent();
        data["strength_percent_mass"] = 100.0 * in(w.liquid().ethanol(), w.mass());
    }
    data["real_extract_P"] = w.extract().degrees();  // so that no task takes it for spirit
    return data;
}

std::string alcohol_in_words(wording const& words, units::volume at_20_celsius) {
    return words.us ? words.pure_alcohol(at_20_celsius) : words.volume(at_20_celsius) + " of pure alcohol";
}

void say_residue(page& text, wording const& words, still const& s, wash const& residue,
                 std::string const& before) {
    bool const drains = s.tower.holdup().value() > 0.0 || s.head.holdup().value() > 0.0;
    mass_fraction const w = residue.solids() > units::mass() ? to<mass_fraction>(residue.strength())
                                                             : residue.liquid().composition();
    text.row(drains ? "left in the still" : "left in the pot", "{}{}{}", before, words.strength(w),
             drains ? ", in pot and column" : "");
}

// --- water and money ---------------------------------------------------------------------------------------

cooling_options cooling_options::offer(session& s) {
    given const& in_ =
        s.option("--water-in", "TEMP", "temperature of the condenser's water where it enters", "15 C");
    given const& out = s.option("--water-out", "TEMP", "temperature of this water where it leaves", "45 C");
    given const& receiver =
        s.option("--receiver", "TEMP", "temperature of the distillate in the receiver", "20 C");
    return {in_, out, receiver};
}

cooling_temperatures cooling_options::read() const {
    return {read_any_temperature(water_in), read_any_temperature(water_out), read_any_temperature(receiver)};
}

cost_options cost_options::offer(session& s) {
    given const& price =
        s.option("--price", "NUMBER", "price of a kWh of electricity or gas, in any money", "0");
    given const& efficiency =
        s.option("--heating-efficiency", "SHARE", "share of the energy bought that heats the pot", "100 %");
    given const& gas_heat = s.option("--gas-heat", "HEAT",
                                     "heat of a kg of gas, '46 MJ/kg', as its supplier says; --price is "
                                     "then for a kg");
    given const& water_price = s.option("--water-price", "NUMBER", "price of a m3 of cooling water", "0");
    given const& bottle = s.option("--bottle", "BOTTLE", "a bottle to tell the cost of, '700 mL of 40 %vol'");
    return {price, efficiency, gas_heat, water_price, bottle};
}

run_cost cost_options::read(units::energy heat, units::volume water, cooling_options const& cooling) const {
    double const each = read_plain(price, 0.0, 1e9);
    double const share = read_share(efficiency);
    require_beside(water_price, cooling.wanted(), "--water-in, --water-out or --receiver");
    double const for_water = read_plain(water_price, 0.0, 1e9);
    heat_source const source = on_behalf_of(
        {{argument::efficiency_of_the_heating, efficiency}, {argument::heating_value_of_the_fuel, gas_heat}},
        [&] {
            if (!gas_heat.present) return heat_source::gas(each, share);
            return heat_source::fuel(each, read_as<units::specific_energy>(gas_heat), share);
        });
    return cost_of(heat, source, water, for_water);
}

parcel cost_options::read_bottle() const {
    std::string_view const text = bottle.text;
    auto const of = text.find(" of ");
    if (of == std::string_view::npos) refuse(bottle, "expected a volume and a strength: '700 mL of 40 %vol'");
    given const contents{bottle.name, std::string(text.substr(0, of)), true};
    given const spirit{bottle.name, std::string(text.substr(of + 4)), true};
    mass_fraction const w = composition(read_strength(spirit));
    if (!(w.value() > 0.0)) refuse(bottle, "the bottle holds no alcohol");
    return make_parcel(read_volume(contents), w, celsius(20));
}

double cost_options::bottles_of(wording const& words, parcel const& product, std::string const& name) const {
    parcel const wanted = read_bottle();
    constexpr double as_printed = 5e-5;  // half of the last digit of a strength
    if (wanted.strength().value() > product.strength().value() + as_printed) {
        refuse(bottle, fmt::format("strength of the bottle {} is outside 0 to {}, the strength of the {}: "
                                   "water makes it weaker, nothing here makes it stronger",
                                   words.strength(wanted.composition()),
                                   words.strength(product.composition()), name));
    }
    return in(product.pure_alcohol(), wanted.pure_alcohol());
}

std::optional<units::mass> cost_options::gas(run_cost const& cost) const {
    if (!gas_heat.present) return std::nullopt;
    return cost.bought / read_as<units::specific_energy>(gas_heat);
}

void cost_options::say(page& text, wording const& words, run_cost const& cost, units::time duration,
                       std::optional<parcel> const& product, std::string const& name) const {
    std::string line = fmt::format("{:.2f} kWh", in(cost.bought, kilowatt_hour));
    if (auto const burnt = gas(cost)) line += " (" + words.mass(*burnt) + " of gas)";
    line += fmt::format(" for {:.2f}", cost.for_heat);
    if (cost.water.value() > 0.0)
        line += fmt::format(", {} of water for {:.2f}", words.volume(cost.water), cost.for_water);
    line += fmt::format(", {}; {:.2f} in all", in_hours(duration), cost.money());
    if (product) {
        double const per = words.us ? in(us_gallon, litre) : 1.0;
        line += fmt::format(", {:.2f} per {} of {}", per * cost.money_per_litre(product->volume(celsius(20))),
                            words.one_volume_name(), name);
    }
    if (bottle.present && product) {
        double const bottles = bottles_of(words, *product, name);
        double const whole = std::floor(bottles);
        std::string const contents = printable(trimmed(bottle.text));
        line += whole < 1.0 ? fmt::format("; less than one bottle of {}", contents)
                            : fmt::format(", {:.2f} for each {}: {:.0f} whole bottle{}",
                                          cost.money() / bottles, contents, whole, whole == 1.0 ? "" : "s");
    }
    text.row("cost", "{}", line);
}

json cost_options::to_json(run_cost const& cost, units::time duration,
                           std::optional<parcel> const& product) const {
    json data{{"bought_kWh", in(cost.bought, kilowatt_hour)},
              {"gas_kg", nullptr},
              {"heat_price", cost.for_heat},
              {"water_L", in(cost.water, litre)},
              {"water_price", cost.for_water},
              {"hours", in(duration, hour)},
              {"price", cost.money()},
              {"bought_kWh_per_L_20C", nullptr},
              {"price_per_L_20C", nullptr},
              {"bottles", nullptr},
              {"price_per_bottle", nullptr}};
    if (auto const burnt = gas(cost)) data["gas_kg"] = in(*burnt, kilogram);
    if (product) {
        units::volume const volume = product->volume(celsius(20));
        data["bought_kWh_per_L_20C"] = in(cost.bought_per_litre(volume), kilowatt_hour);
        data["price_per_L_20C"] = cost.money_per_litre(volume);
    }
    if (bottle.present && product) {
        double const bottles = in(product->pure_alcohol(), read_bottle().pure_alcohol());
        data["bottles"] = std::floor(bottles);
        if (bottles >= 1.0) data["price_per_bottle"] = cost.money() / bottles;
    }
    return data;
}

std::string how_far(run_progress const& p) {
    return p.recorded > 0.0 ? fmt::format("{:.0f} % of the states recorded", 100.0 * p.recorded)
                            : fmt::format("{:.0f} % of the charge distilled", 100.0 * p.distilled);
}

}  // namespace program
