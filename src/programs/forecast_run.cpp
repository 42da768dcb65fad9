// SPDX-License-Identifier: BSL-1.0
// Forecast of a batch run: fractions, strengths, times and heat.
#include "drawing.hpp"
#include "still_program.hpp"

#include <aqueth/correlation/heat_capacity_perry.hpp>
#include <aqueth/model/enthalpy.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace {

using namespace program;

std::vector<correlation::source> sources() {
    auto all = boiling_sources();
    all.insert(all.end(), {model::enthalpy::cited, correlation::heat_capacity_perry::cited,
                           correlation::sucrose_density::cited});
    return all;
}

about const who{
    "forecast_run",
    "Forecasts a batch distillation: fractions, strengths, times and heat; on request with a picture.",
    "The Quillbeck teaching stillhouse charges 25 L of 11 % vol into its pot under the 4-plate column:\n"
    "  $ forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --pot-heat '4 kJ/K' \\\n"
    "        --pot-loss '3 W/K' --plates 4 --plate-efficiency 0.6 --reflux 3 --heat-loss '5 %' \\\n"
    "        --discard '100 mL' --cuts 'distillate 80 %vol' --end 'distillate 20 %vol'\n"
    "  Hearts: 2.009 L at 86.13 % vol. Kept in all: 2.565 L of pure alcohol (93 %).",
    sources()};

/// Reads "distillate 80 %vol", "pot 1 %vol", "pot 99 C", "collected 2 L", "elapsed 4 h", "strength lost";
/// "still" and "boiling" say of the pot which of the two is meant.
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
        if (word == "collected") return condition::collected(read_volume(rest));
        if (word == "elapsed")
            return condition::elapsed(read_as<units::time>(rest, {"a time", "s, min or h"}));
        refuse(g,
               "expected 'distillate' and a strength, 'pot' and a strength or a temperature, 'collected' and "
               "a volume, 'elapsed' and a time, or 'strength lost'");
    });
}

/// A condition and where it was written.
struct asked_condition {
    given from;
    condition what;
};

/// Reads a list of conditions.
std::vector<asked_condition> read_conditions(given const& g) {
    std::vector<asked_condition> result;
    for (given const& part : parts_of(g)) result.push_back({part, read_condition(part)});
    return result;
}

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

struct still_options {
    given const &power, &heat, &loss, &room, &stages, &plates, &efficiency, &packing, &hetp, &ratio, &keep,
        &heat_loss, &flows;

    static still_options offer(session& s) {
        given const& power = s.required("--power", "POWER", "heating power of the pot: W, kW");
        given const& heat = s.option("--pot-heat", "HEAT", "heat capacity of the empty pot", "0 kJ/K");
        given const& loss = s.option("--pot-loss", "LOSS", "heat loss of the pot to the room", "0 W/K");
        given const& room = s.option("--room", "TEMP", "temperature of the room", "20 C");
        given const& stages = s.option("--stages", "NUMBER", "theoretical stages above the pot");
        given const& plates = s.option("--plates", "NUMBER", "real plates, instead of --stages");
        given const& efficiency =
            s.option("--plate-efficiency", "SHARE", "Murphree efficiency of each plate", "0.6");
        given const& packing = s.option("--packing", "HEIGHT", "height of the packing, instead of --stages");
        given const& hetp =
            s.option("--hetp", "HEIGHT", "height of packing equivalent to one theoretical plate");
        given const& ratio = s.option(
            "--reflux", "RATIO", "reflux ratio: liquid returned by the condenser per distillate taken", "0");
        given const& keep = s.option("--keep-strength", "STRENGTH",
                                     "raise the reflux, up to --reflux, to keep this strength");
        given const& heat_loss =
            s.option("--heat-loss", "SHARE",
                     "share of the vapour that condenses in neck and head and runs back", "0 %");
        given const& flows =
            s.option("--flows", "MODEL", "flows in the column: 'constant' or by 'enthalpy'", "constant");
        return {power,   heat, loss,  room, stages,    plates, efficiency,
                packing, hetp, ratio, keep, heat_loss, flows};
    }
    /// Refuses options that need another one, instead of ignoring them.
    void refuse_what_does_not_apply() const {
        int const columns = stages.present + plates.present + packing.present;
        if (columns > 1) throw bad_input("give only one of --stages, --plates and --packing");
        require_beside(efficiency, plates.present, "--plates");
        require_beside(hetp, packing.present, "--packing");
        for (given const* const each : {&ratio, &keep, &flows})
            require_beside(*each, columns == 1, "a column: --stages, --plates or --packing");
        if (keep.present && !ratio.present)
            throw bad_input("--keep-strength needs --reflux, the highest ratio allowed");
        require_beside(room, loss.present, "--pot-loss");
    }
    /// A column without reflux works like a plain pot: that is refused, because the user expects a column.
    void refuse_dry_column(double condensed) const {
        for (given const* const each : {&stages, &plates, &packing}) {
            if (each->present && !ratio.present && condensed == 0.0) {
                throw bad_input(fmt::format(
                    "{} has no effect without reflux: give --reflux, or --heat-loss for the share that "
                    "condenses in the head and runs back",
                    each->name));
            }
        }
    }
    assumptions assumed() const {
        assumptions all;
        if (plates.present) all.unless_given(efficiency, "plates of efficiency 0.6");
        if (stages.present || plates.present || packing.present)
            all.unless_given(flows, "equal flows on all stages");
        if (stages.present || plates.present || packing.present)
            all.unless_given(ratio, "no reflux from the condenser");
        all.unless_given(heat_loss, "no vapour condenses in neck and head");
        all.unless_given(loss, "the pot loses no heat");
        all.unless_given(heat, "the metal of the pot takes up no heat");
        return all;
    }
    column read_column() const {
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
    }
    still read() const {
        refuse_what_does_not_apply();
        still result{{read_as<units::power>(power, {"a power", "W or kW"})}};
        result.pot.heat_capacity = read_as<units::heat_capacity>(heat, {"a heat capacity", "J/K or kJ/K"});
        result.pot.loss = read_as<units::thermal_conductance>(loss, {"a heat loss", "W/K"});
        result.pot.room = read_any_temperature(room);
        on_behalf_of({{argument::power, power},
                      {argument::heat_capacity, heat},
                      {argument::heat_loss_coefficient, loss},
                      {argument::temperature_of_the_room, room}},
                     [&] { result.pot.require_possible(); });
        result.tower = read_column();
        double const greatest = read_plain(ratio, 0.0, 1000.0);
        result.head = head::total_condenser(reflux::constant(greatest));
        if (keep.present) {
            std::visit(
                [&](auto const& each) {
                    result.head = head::total_condenser(reflux::constant_strength(each, greatest));
                },
                read_strength(keep));
        }
        double const share = read_share(heat_loss);
        refuse_dry_column(share);
        result.neck = on_behalf_of(heat_loss, [&] { return neck::condensing(share); });
        if (flows.text != "constant" && flows.text != "enthalpy")
            refuse(flows, "expected 'constant' or 'enthalpy'");
        if (flows.text == "enthalpy") result.flow = flow_model::enthalpy_balance;
        return result;
    }
};

/// The values of a recorded state, in CSV and JSON.
struct {
    char const* name;
    double (*value)(run_point const&);
} constexpr recorded[] = {
    {"elapsed_min", [](run_point const& p) { return in(p.elapsed, minute); }},
    {"collected_L_20C", [](run_point const& p) { return in(p.collected, litre); }},
    {"pure_alcohol_L_20C", [](run_point const& p) { return in(p.pure_alcohol, litre); }},
    {"still_percent_vol_20C", [](run_point const& p) { return percent_vol(p.still); }},
    {"distillate_percent_vol_20C", [](run_point const& p) { return percent_vol(p.distillate); }},
    {"boiling_C", [](run_point const& p) { return p.boiling.celsius(); }},
    {"vapour_C", [](run_point const& p) { return p.vapour.celsius(); }},
    {"reflux_ratio", [](run_point const& p) { return p.reflux_ratio; }},
    {"condenser_W", [](run_point const& p) { return in(p.condenser, watt); }},
};

std::string csv_of(distillation const& r) {
    std::string csv;
    for (auto const& each : recorded) csv += fmt::format("{}{}", csv.empty() ? "" : ",", each.name);
    for (run_point const& p : r.points) {
        char before = '\n';
        for (auto const& each : recorded) {
            csv += fmt::format("{}{:.10g}", before, each.value(p));
            before = ',';
        }
    }
    return csv + "\n";
}

json to_json(run_point const& p) {
    json data;
    for (auto const& each : recorded) data[each.name] = each.value(p);
    return data;
}

/// The volume collected, at the temperature to which the answer refers volumes.
units::volume volume_collected(wording const& words, run_point const& p) {
    if (!words.us || !(p.collected > units::volume())) return p.collected;
    auto const strength = volume_fraction((std::min)(1.0, in(p.pure_alcohol, p.collected)));
    return parcel::of(p.collected, strength, celsius(20)).volume(words.reference_temperature());
}

/// Strength and temperature against what has been collected, with a line where a fraction ends.
std::string picture_of(wording const& words, distillation const& r) {
    char const* const degrees = words.temperature_unit();
    std::string script =
        "set encoding utf8\n"
        "set terminal svg size 960,600 font 'sans-serif,14' background '#ffffff' noenhanced\n"
        "set border linecolor '#444444'\nset grid linecolor '#dddddd'\n"
        "set xtics nomirror\nset y2tics\nset key outside top center horizontal\n";
    script += fmt::format(
        "set xlabel 'collected, {} at {}'\nset ylabel 'strength, {}'\nset y2label 'temperature, {}'\n"
        "set yrange [0:{}]\nset ytics {} nomirror\n$run << EOD\n",
        words.us ? "US gal" : "L", words.temperature(words.reference_temperature()), words.strength_unit(),
        degrees, words.us ? 200 : 100, words.us ? 20 : 10);
    auto const collected = [&](run_point const& p) {
        return in(volume_collected(words, p), words.one_volume());
    };
    auto const strength = [&](mole_fraction x) { return words.strength_number(x); };
    auto const temperature = [&](units::temperature t) { return words.temperature_number(t); };
    for (run_point const& p : r.points) {
        script += fmt::format("{:.6g} {:.6g} {:.6g} {:.6g} {:.6g}\n", collected(p), strength(p.distillate),
                              strength(p.still), temperature(p.vapour), temperature(p.boiling));
    }
    script += "EOD\n";
    for (std::size_t k = 0; k + 1 < r.fractions.size(); ++k) {
        script +=
            fmt::format("set arrow from first {0:.6g}, graph 0 to first {0:.6g}, graph 1 nohead dashtype 2 "
                        "linecolor '#888888'\n",
                        collected(r.fractions[k].end));
    }
    return script +
           fmt::format("plot $run using 1:2 with lines linewidth 2.5 linecolor '#1f4e79' title 'distillate', "
                       "$run using 1:3 with lines linewidth 2.5 linecolor '#009e73' title 'in the pot', "
                       "$run using 1:4 axes x1y2 with lines linewidth 2 dashtype 4 linecolor '#b03a2e' title "
                       "'head, {0}', "
                       "$run using 1:5 axes x1y2 with lines linewidth 2 dashtype 4 linecolor '#d55e00' title "
                       "'pot, {0}'\n",
                       degrees);
}

json to_json(run_fraction const& f, std::string const& name) {
    json data{{"name", name}};
    data.update(program::to_json(f.product));
    data["kept"] = f.kept;
    data["begin_min"] = in(f.begin.elapsed, minute);
    data["end_min"] = in(f.end.elapsed, minute);
    data["end_distillate_percent_vol_20C"] = percent_vol(f.end.distillate);
    data["end_still_percent_vol_20C"] = percent_vol(f.end.still);
    data["end_boiling_C"] = f.end.boiling.celsius();
    return data;
}

/// Names for so many fractions: foreshots if the first is discarded, tails for the last, hearts between.
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

/// The names of the fractions: those that were given, or the usual ones.
std::vector<std::string> names_of(given const& g, distillation const& r) {
    std::size_t const number = r.fractions.size();
    if (!g.present) return usual_names(number, !r.fractions.front().kept);
    std::vector<std::string> names;
    for (given const& part : parts_of(g)) names.push_back(printable(part.text));
    if (names.size() != number)
        refuse(g, fmt::format("{} names for {} fractions: give one name for each", names.size(), number));
    for (std::string const& each : names)
        if (each.empty()) refuse(g, "a name is empty");
    return names;
}

/// The headline product: the hearts, or the whole distillate; with other names, everything kept.
struct main_product {
    std::string name;
    std::vector<parcel> parts;

    main_product(distillation const& r, std::vector<std::string> const& names) : name("Hearts") {
        bool const in_one = names.size() == 1 && names.front() == "distillate";
        if (in_one) name = "Distillate";
        for (std::size_t k = 0; k < names.size(); ++k)
            if (r.fractions[k].kept && (names[k].starts_with("hearts") || in_one))
                parts.push_back(r.fractions[k].product);
        if (!parts.empty()) return;
        name = "Kept";
        for (run_fraction const& f : r.fractions)
            if (f.kept) parts.push_back(f.product);
    }
    parcel whole() const { return parts.size() == 1 ? parts.front() : mix(parts).product; }
    std::string how_much(wording const& words) const {
        parcel const p = whole();
        return fmt::format("{} at {}", words.volume(p.volume(words.reference_temperature())),
                           words.strength(p.composition()));
    }
    std::string headline(wording const& words, distillation const& r) const {
        if (parts.empty()) return name + ": nothing.";
        std::string const alcohol = words.us ? words.pure_alcohol(r.kept_alcohol())
                                             : words.volume(r.kept_alcohol()) + " of pure alcohol";
        return fmt::format("{}: {}{} {} ({:.0f} %).", name, how_much(words),
                           name == "Kept" ? "," : ". Kept in all:", alcohol, 100.0 * r.recovery());
    }
};

/// The same run with a vapour that is weaker by one standard uncertainty of the model.
struct weaker_run {
    std::optional<distillation> run;
    std::string why_not;  ///< if there is none

    weaker_run(wash const& charge, still const& s, run_plan plan, units::pressure p,
               distillation const& forecast, wording const& words) {
        if (!vapour_uncertainty_known(p)) {
            why_not = fmt::format("not known: vapours were measured from {} only", measured_pressures(words));
            return;
        }
        plan.points = 0;
        try {
            run = distil(charge, s, plan, boiling_curve(curve_with_vapour_shifted(p, -1.0)));
            // A run that ends together with its last cut has a fraction less: there is nothing to compare.
            if (run->fractions.size() != forecast.fractions.size()) run.reset();
        } catch (refusal const&) {
        }
        if (!run)
            why_not = "not known: with a vapour weaker by one standard uncertainty this plan cannot be run";
    }
    /// alcohol that comes in the main product, over that of the forecast
    double share(distillation const& forecast, std::vector<std::string> const& names) const {
        return in(main_product(*run, names).whole().ethanol(),
                  main_product(forecast, names).whole().ethanol());
    }
    std::string in_words(wording const& words, distillation const& forecast,
                         std::vector<std::string> const& names) const {
        if (!run) return why_not;
        double const less = 100.0 - 100.0 * share(forecast, names);
        return fmt::format("{}, {} alcohol, if the vapour is weaker by one standard uncertainty",
                           main_product(*run, names).how_much(words),
                           std::abs(less) < 0.5
                               ? std::string("the same")
                               : fmt::format("{:.0f} % {}", std::abs(less), less < 0.0 ? "more" : "less"));
    }
    json to_json(distillation const& forecast, std::vector<std::string> const& names) const {
        if (!run) return nullptr;
        main_product const of_run(*run, names);
        return {{"product", program::to_json(of_run.whole())},
                {"alcohol_over_that_of_the_forecast", share(forecast, names)},
                {"kept_alcohol_L_20C", in(run->kept_alcohol(), litre)}};
    }
};

/// Until when the reflux kept the strength.
std::string kept_until(wording const& words, distillation const& r) {
    if (!r.strength_lost) return "to the end";
    run_point const& p = *r.strength_lost;
    return fmt::format("until {}, {} collected, {} in the pot; reflux {:.3g} from there", in_hours(p.elapsed),
                       words.volume(volume_collected(words, p)), words.strength(p.still), p.reflux_ratio);
}

json to_json(wash const& charge, distillation const& r, std::vector<std::string> const& names,
             assumptions const& assumed, json const& with_weaker_vapour) {
    auto const mj = [](units::energy e) { return in(e, megajoule); };
    json fractions = json::array();
    for (std::size_t k = 0; k < names.size(); ++k) fractions.push_back(to_json(r.fractions[k], names[k]));
    json points = json::array();
    for (run_point const& p : r.points) points.push_back(to_json(p));
    json data = {{"charge", program::to_json(charge.liquid())},
                 {"charge_extract_kg", in(charge.solids(), kilogram)},
                 {"fractions", fractions},
                 {"residue", program::to_json(r.residue.liquid())},
                 {"residue_extract_kg", in(r.residue.solids(), kilogram)},
                 {"kept_alcohol_L_20C", in(r.kept_alcohol(), litre)},
                 {"recovery", r.recovery()},
                 {"warming_min", in(r.warming.duration, minute)},
                 {"boiling_min", in(r.boiling_time, minute)},
                 {"heat_MJ",
                  {{"warming", mj(r.warming.supplied)},
                   {"boiling", mj(r.heat.supplied)},
                   {"lost_by_pot", mj(r.heat.lost_by_pot)},
                   {"neck", mj(r.heat.neck)},
                   {"condenser", mj(r.heat.condenser)},
                   {"with_distillate", mj(r.heat.with_distillate)},
                   {"gained_by_still", mj(r.heat.gained_by_still)},
                   {"per_litre_of_kept_alcohol",
                    r.kept_alcohol().value() > 0.0 ? json(mj(r.energy_per_litre())) : json(nullptr)}}},
                 {"balance_relative_to_charge",
                  {{"ethanol", r.balance.ethanol}, {"water", r.balance.water}, {"energy", r.balance.energy}}},
                 {"strength_lost", r.strength_lost ? to_json(*r.strength_lost) : json(nullptr)},
                 {"with_vapour_weaker_by_standard_uncertainty", with_weaker_vapour},
                 {"assumed", assumed.to_json()},
                 {"points", points}};
    return data;
}

std::string how_far(run_progress const& p) {
    return p.recorded > 0.0 ? fmt::format("{:.0f} % of the states recorded", 100.0 * p.recorded)
                            : fmt::format("{:.0f} % of the charge distilled", 100.0 * p.distilled);
}

void run(session& s) {
    auto const charge_given = charge_options::offer(s);
    auto const still_given = still_options::offer(s);
    given const& discard =
        s.option("--discard", "VOLUME", "volume of the foreshots at 20 C; they are not kept");
    given const& cuts = s.option("--cuts", "LIST", "ends of fractions: 'distillate 80 %vol, pot 99 C'");
    given const& given_names =
        s.option("--names", "LIST", "names of the fractions in order (default foreshots, hearts, tails)");
    given const& ends =
        s.required("--end", "LIST", "end of the run, the first of: 'pot 1 %vol, elapsed 6 h'");
    surroundings const air = s.surroundings_options();
    given const& points =
        s.option("--points", "NUMBER", "states recorded for --csv, --json and --draw", "200");
    given const& picture =
        s.option("--draw", "FILE", "picture file, drawn with gnuplot; its name ends in .svg");
    bool const& replace = s.flag("--replace", "overwrite an existing picture");
    s.explain(
        "Powers: W, kW. Heat capacity: J/K, kJ/K; heat loss: W/K. Heights: m, cm, mm, ft. Times: s, min, "
        "h.\n"
        "Cuts and ends, separated by commas or semicolons:\n"
        "  'distillate STRENGTH', 'pot STRENGTH': the strength has fallen to this value\n"
        "  'pot TEMP': the pot boils at this temperature\n"
        "  'strength lost': --reflux no longer keeps --keep-strength\n"
        "  'collected VOLUME' (at 20 C), 'elapsed TIME': since the start of the fraction; of the run in "
        "--end\n"
        "--heat-loss is also the share that a cooled head (a partial condenser, a dephlegmator) condenses.");
    s.offer_us_units();
    s.offer_csv();
    s.parse();

    wash const charge = charge_given.read();
    still const apparatus = still_given.read();
    run_plan plan;
    std::vector<asked_condition> asked;
    if (cuts.present) asked = read_conditions(cuts);
    if (discard.present) {
        asked.push_back({discard, condition::collected(read_volume(discard))});
        plan.cuts.push_back({asked.back().what, false});
    }
    for (auto const& [from, what] : asked)
        if (from.name == cuts.name) plan.cuts.push_back({what});
    for (asked_condition const& each : read_conditions(ends)) {
        asked.push_back(each);
        plan.ends.push_back(each.what);
    }
    for (auto const& [from, what] : asked) {
        if (what.what() == condition::watched::kept_strength && !still_given.keep.present)
            refuse(from, "needs --keep-strength");
    }
    bool const recording = picture.present || s.in_json() || s.in_csv();
    require_beside(points, recording, "--csv, --json or --draw");
    if (replace && !picture.present) throw bad_input("--replace needs --draw");
    plan.points = recording ? read_count(points, run_plan::most_points, 2) : 0;
    boiling_curve const curve = read_curve(air);
    std::filesystem::path const path =
        picture.present ? read_picture_path(picture, replace) : std::filesystem::path();
    distillation const r =
        on_behalf_of({{argument::power, still_given.power},
                      {argument::mass_of_the_charge, charge_given.amount},
                      {argument::strength_of_the_charge, charge_given.strength},
                      {argument::strength_of_the_distillate_to_keep, still_given.keep},
                      {argument::number_of_cuts, cuts},
                      {argument::number_of_ends_of_the_run, ends}},
                     [&] {
                         progress_line line(who.name);
                         return on_behalf_of_one(asked, [&] {
                             return distil(charge, apparatus, plan, curve, [&](run_progress const& p) {
                                 line.show([&] { return how_far(p); });
                             });
                         });
                     });
    wording const words = s.words();
    auto const names = names_of(given_names, r);
    assumptions assumed = still_given.assumed();
    assumed.unless_given(charge_given.solids, "no extract in the charge");
    assumed.unless_given(
        charge_given.temperature,
        fmt::format("a charge of {} to warm up", words.temperature(charge.liquid().temperature())));
    weaker_run const weaker(charge, apparatus, plan, curve.pressure(), r, words);
    if (picture.present) put_picture(s, picture, path, replace, svg_by_gnuplot(picture_of(words, r)));

    page text;
    main_product const product(r, names);
    text.say("{}", product.headline(words, r));
    text.say("{} of warming and {} of boiling.", in_hours(r.warming.duration), in_hours(r.boiling_time));
    text.gap();
    std::size_t widest = 10;
    for (std::string const& each : names) widest = (std::max)(widest, each.size());
    text.say("  {:<{}} {:>17}   {:<15} {:<13} {}", "fraction", widest,
             "volume at " + words.temperature(words.reference_temperature()), "strength", "until",
             "at its end: distillate, pot");
    for (std::size_t k = 0; k < names.size(); ++k) {
        run_fraction const& f = r.fractions[k];
        text.say("  {:<{}} {:>16}   {:<15} {:<13} {}, {} and {}", names[k], widest,
                 words.volume(f.product.volume(words.reference_temperature())),
                 words.strength(f.product.composition()), in_hours(f.end.elapsed),
                 words.strength(f.end.distillate), words.strength(f.end.still),
                 words.temperature(f.end.boiling));
    }
    text.gap();
    if (!product.parts.empty()) text.row("uncertainty", "{}", weaker.in_words(words, r, names));
    if (apparatus.head.returned().keeps_strength()) text.row("strength kept", "{}", kept_until(words, r));
    auto const weight = [&](wash const& w) {
        return words.weight(w.mass(), w.density(w.liquid().temperature()));
    };
    text.row("charge", "{} by the balance, {}", weight(charge), words.alcohol(charge.liquid()));
    text.row("left in the pot", "{} by the balance, {}", weight(r.residue),
             words.strength(r.residue.liquid().composition()));
    text.row("boils at", "{} to {} under {}", words.rounded(r.fractions.front().begin.boiling),
             words.rounded(r.fractions.back().end.boiling), air_in_words(words, air, curve.pressure()));
    if (r.kept_alcohol().value() > 0.0) {
        double const kilowatt_hours = in(r.energy(), kilowatt_hour);
        parcel const kept = parcel::of(r.kept_alcohol(), volume_fraction(1.0), celsius(20));
        text.row("heat", "{:.2f} kWh, {:.2f} kWh per {} kept", kilowatt_hours,
                 kilowatt_hours / (words.us ? kept.proof_gallons() : in(r.kept_alcohol(), litre)),
                 words.us ? "proof gallon" : "litre of pure alcohol");
    } else {
        text.row("heat", "{:.2f} kWh", in(r.energy(), kilowatt_hour));
    }
    text.row("condenser", "{:.0f} W at the start", in(r.fractions.front().begin.condenser, watt));
    assumed.say(text);
    if (picture.present) text.row("drawing", "{}", printable(picture.text));
    text.gap();
    text.say("{}", run_caution);
    json const doubt = product.parts.empty() ? json(nullptr) : weaker.to_json(r, names);
    s.answer(text, s.in_json() ? to_json(charge, r, names, assumed, doubt) : json(),
             s.in_csv() ? csv_of(r) : "");
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
