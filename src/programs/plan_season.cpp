// SPDX-License-Identifier: BSL-1.0
// A lot of wash, distilled twice: strips, spirit runs, hours, yields, until the lots repeat themselves.
#include "still_options.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace {

using namespace program;

about const who{
    "plan_season",
    topic::in_still,
    "How many runs does a lot of wash need, what do they yield?",
    "Plans strips and spirit runs of a lot of wash: runs, hours, heat, yield, with what is returned.",
    "The Quillbeck teaching stillhouse has 200 L of wash of 9 % vol. Its pot, named 25 L after its charge, "
    "holds\n"
    "40 L: a third stays empty. Heads are discarded, tails are returned:\n"
    "  $ aqueth plan_season --wash '200 L' --strength '9 %vol' --pot-charge '24 L' --strip-end 'distillate 3 "
    "%vol' "
    "\\\n"
    "        --power '2 kW' --pot-heat '4 kJ/K' --pot-loss '3 W/K' --heat-loss '10 %' --discard '150 mL' \\\n"
    "        --cuts 'distillate 60 %vol' --end 'distillate 10 %vol' --lost '1 %' --between '45 min'\n"
    "  Hearts of a lot: 22.94 L at 72.08 % vol, 16.53 L of pure alcohol (92 %).",
    run_sources()};

std::string liquid_in_words(wording const& words, parcel const& p) {
    if (!(p.mass().value() > 0.0)) return "nothing";
    return fmt::format("{} at {}", words.volume(p.volume(words.reference_temperature())),
                       words.strength(p.composition()));
}

json liquid_to_json(parcel const& p) { return p.mass().value() > 0.0 ? program::to_json(p) : json(nullptr); }

json to_json(season_ledger const& l) {
    auto const kg = [](units::mass m) { return in(m, kilogram); };
    return {{"from_wash_kg", kg(l.from_wash)},
            {"added_kg", kg(l.added)},
            {"taken_up_kg", kg(l.taken_up)},
            {"hearts_kg", kg(l.hearts)},
            {"returned_kg", kg(l.returned)},
            {"stillage_kg", kg(l.stillage)},
            {"spent_lees_kg", kg(l.spent_lees)},
            {"discarded_kg", kg(l.discarded)},
            {"lost_kg", kg(l.lost)},
            {"balance", l.balance()}};
}

json to_json(season const& r, json const& cost) {
    season_cycle const& last = r.steady();
    json lots = json::array();
    for (season_cycle const& c : r.cycles)
        lots.push_back({{"spirit_runs", c.spirit_runs},
                        {"charge", liquid_to_json(c.charge)},
                        {"hearts", liquid_to_json(c.hearts)},
                        {"returned", liquid_to_json(c.returned)}});
    auto const run = [](distillation const& d) {
        return json{{"warming_min", in(d.warming.duration, minute)},
                    {"boiling_min", in(d.boiling_time, minute)},
                    {"heat_kWh", in(d.energy(), kilowatt_hour)}};
    };
    return {{"strips", r.strips},
            {"strip", run(r.strip)},
            {"low_wines", liquid_to_json(r.low_wines)},
            {"spirit_runs", last.spirit_runs},
            {"spirit_run", run(last.spirit)},
            {"charge", liquid_to_json(last.charge)},
            {"water_added_kg", in(last.water, kilogram)},
            {"hearts", liquid_to_json(last.hearts)},
            {"hearts_pure_alcohol_L_20C", in(last.hearts.pure_alcohol(), litre)},
            {"returned", liquid_to_json(last.returned)},
            {"discarded", liquid_to_json(last.discarded)},
            {"yield", r.yield()},
            {"hours", in(r.duration, hour)},
            {"heat_kWh", in(r.energy, kilowatt_hour)},
            {"cost", cost},
            {"ethanol", to_json(r.ethanol)},
            {"water", to_json(r.water)},
            {"lots", lots}};
}

/// The lots that differ to the eye: the first ones, and the one that repeats itself.
void say_lots(page& text, wording const& words, season const& r) {
    std::vector<std::array<std::string, 4>> rows{
        {"spirit runs", "charge of each", "hearts", "returned to the next lot"}};
    bool repeats = false;
    for (std::size_t k = 0; k < r.cycles.size() && !repeats; ++k) {
        season_cycle const& c = r.cycles[k];
        std::array<std::string, 4> row{fmt::format("{:>11}", c.spirit_runs), liquid_in_words(words, c.charge),
                                       liquid_in_words(words, c.hearts), liquid_in_words(words, c.returned)};
        repeats = row == rows.back();
        if (!repeats) rows.push_back(std::move(row));
    }
    std::array<std::size_t, 2> widths{};
    for (auto const& row : rows)
        for (std::size_t i = 0; i < 2; ++i) widths[i] = (std::max)(widths[i], row[i + 1].size());
    for (std::size_t k = 0; k < rows.size(); ++k) {
        text.say("  {:>3}   {}   {:<{}}   {:<{}}   {}", k == 0 ? "lot" : std::to_string(k), rows[k][0],
                 rows[k][1], widths[0], rows[k][2], widths[1], rows[k][3]);
    }
    if (repeats) text.say("  and so on");
}

void run(session& s) {
    auto const wash_given = charge_options::offer(s, "--wash", "all wash of a lot: volume, or mass");
    given const& pot_charge =
        s.required("--pot-charge", "VOLUME",
                   "most that goes into the pot, volume at 20 C; never more than two thirds of the vessel");
    given const& strip_end =
        s.required("--strip-end", "LIST", "end of a strip, the first of: 'distillate 3 %vol, elapsed 5 h'");
    auto const still_given = still_options::offer(s);
    auto const plan_given = plan_options::offer(s);
    auto const fractions_given = fraction_options::offer(s);
    bool const& heads = s.flag("--return-heads", "return what --discard says, instead of discarding it");
    given const& lost =
        s.option("--lost", "SHARE", "share of all that runs off which evaporates or stays in hoses", "0 %");
    given const& dilute_to =
        s.option("--dilute-to", "STRENGTH", "add water to the charges of spirit runs that are stronger");
    given const& between =
        s.option("--between", "TIME", "time between runs, to empty, clean and fill", "0 min");
    auto const cooling = cooling_options::offer(s);
    auto const costs = cost_options::offer(s);
    surroundings const air = s.surroundings_options();
    s.explain(
        "Strips are made in the pot with its neck alone. Spirit runs have column and head as well. --cuts, "
        "--discard,\n--end, --total-reflux and --steps are for spirit runs. The hearts are all fractions but "
        "what --discard says and\nthe last one, which is returned to the next lot.");
    s.explain(runs_explained);
    s.offer_us_units();
    s.parse();

    wash const lot = wash_given.read();
    still const apparatus = still_given.read();
    still pot{apparatus.pot};
    pot.neck = apparatus.neck;
    run_plan spirit, strip;
    std::vector<asked_condition> asked, asked_of_strip;
    plan_given.read(spirit, asked);
    strip.charged_at = spirit.charged_at;
    fractions_given.read(spirit, asked, still_given.keep);
    for (asked_condition const& each : read_conditions(strip_end)) {
        if (each.what.what() == condition::watched::kept_strength)
            refuse(each.from, "a strip keeps no strength");
        asked.push_back(each);
        strip.ends.push_back(each.what);
    }
    strip.spout_temperature = spirit.spout_temperature;
    units::volume const most = read_volume(pot_charge);
    season_plan plan{pot, strip, most, apparatus, spirit, most};
    plan.lost = read_share(lost);
    plan.between_runs = read_as<units::time>(between, {"a time", "s, min or h"});
    if (dilute_to.present) plan.strongest_charge = to<volume_fraction>(composition(read_strength(dilute_to)));
    bool const discards = !spirit.cuts.empty() && !spirit.cuts.front().keep;
    if (heads && !discards) throw bad_input("--return-heads needs --discard");
    if (heads) {
        plan.destinations.assign(spirit.cuts.size() + 1, destination::hearts);
        plan.destinations.front() = destination::returned;
        if (plan.destinations.size() > 1) plan.destinations.back() = destination::returned;
    }
    boiling_curve const curve = read_curve(air);
    season const r = on_behalf_of(
        {{argument::volume_of_the_charge, pot_charge},
         {argument::number_of_runs, pot_charge},
         {argument::share_that_is_lost, lost},
         {argument::time_between_runs, between},
         {argument::strongest_charge, dilute_to},
         {argument::number_of_hearts, fractions_given.cuts},
         {argument::number_of_cuts, fractions_given.cuts},
         {argument::number_of_ends_of_the_run, fractions_given.ends}},
        [&] {
            return on_behalf_of_run(wash_given, still_given, plan_given, asked, [&] {
                progress_line line(who.name);
                return distil_season(lot, plan, curve, [&](season_progress const& p) {
                    line.show([&] { return fmt::format("lot {}: {}", p.cycle, how_far(p.run)); });
                });
            });
        });
    wording const words = s.words();
    season_cycle const& last = r.steady();
    units::volume water;
    if (cooling.wanted()) {
        cooling_temperatures const t = cooling.read();
        cooling.on_behalf([&] {
            water =
                static_cast<double>(r.strips) * demand_of_condenser(r.strip, t).water +
                static_cast<double>(last.spirit_runs) * (demand_of_condenser(last.spirit, t).water +
                                                         demand_of_partial_condenser(last.spirit, t).water);
        });
    }
    run_cost const cost = costs.read(r.energy, water, cooling);
    std::optional<parcel> const hearts =
        last.hearts.mass().value() > 0.0 ? std::optional(last.hearts) : std::nullopt;

    page text;
    auto const alcohol = [&](units::mass ethanol) {
        return parcel::of(ethanol, mass_fraction(1.0), celsius(20)).pure_alcohol();
    };
    auto const in_hearts = words.us ? words.pure_alcohol(alcohol(r.ethanol.hearts))
                                    : words.volume(alcohol(r.ethanol.hearts)) + " of pure alcohol";
    text.say("Hearts of a lot: {}, {} ({:.0f} %).", liquid_in_words(words, last.hearts), in_hearts,
             100.0 * r.yield());
    auto const plural = [](int count) { return count == 1 ? "" : "s"; };
    text.say("{} strip{} and {} spirit run{}, {} in all.", r.strips, plural(r.strips), last.spirit_runs,
             plural(last.spirit_runs), in_hours(r.duration));
    text.gap();
    say_lots(text, words, r);
    text.gap();
    auto const each = [&](distillation const& d) {
        return fmt::format("{} of warming, {} of boiling, {:.2f} kWh", in_hours(d.warming.duration),
                           in_hours(d.boiling_time), in(d.energy(), kilowatt_hour));
    };
    text.row("a strip", "{}", each(r.strip));
    text.row("low wines", "{}", liquid_in_words(words, r.low_wines));
    text.row("a spirit run", "{}", each(last.spirit));
    if (last.water.value() > 0.0)
        text.row("water to add", "{} to the charges of a lot",
                 words.weight(last.water, density(mass_fraction(0.0), celsius(20))));
    auto const share = [&](units::mass m) {
        return fmt::format("{:.1f} %", 100.0 * in(m, r.ethanol.from_wash));
    };
    text.row("of the alcohol",
             "{} in hearts, {} left by the strips, {} left by the spirit runs, {} discarded, {} lost",
             share(r.ethanol.hearts), share(r.ethanol.stillage), share(r.ethanol.spent_lees),
             share(r.ethanol.discarded), share(r.ethanol.lost));
    text.row("heat", "{:.1f} kWh", in(r.energy, kilowatt_hour));
    if (cooling.wanted()) text.row("cooling water", "{}", words.volume(water));
    if (costs.wanted()) costs.say(text, words, cost, r.duration, hearts, "hearts");
    assumptions assumed = still_given.assumed();
    assumed.unless_given(wash_given.solids, "no extract in the wash");
    assumed.unless_given(lost, "nothing is lost");
    assumed.unless_given(between, "no time between runs");
    assumed.say(text);
    text.gap();
    text.say("{}", run_caution);
    s.answer(text, s.in_json()
                       ? to_json(r, costs.wanted() ? costs.to_json(cost, r.duration, hearts) : json(nullptr))
                       : json());
}

program::task const offered{who, run};

}  // namespace
