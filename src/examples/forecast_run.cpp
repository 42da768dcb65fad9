// SPDX-License-Identifier: BSL-1.0
// What a run will give: fractions, strengths, times and heat.
#include "drawing.hpp"
#include "still_program.hpp"

#include <aqueth/correlation/enthalpy.hpp>
#include <aqueth/correlation/heat_capacity_perry.hpp>

#include <filesystem>
#include <string>
#include <variant>
#include <vector>

namespace {

using namespace program;

std::vector<correlation::source> sources() {
    auto all = boiling_sources();
    all.insert(all.end(), {correlation::enthalpy::cited, correlation::heat_capacity_perry::cited,
                           correlation::sucrose_density::cited});
    return all;
}

about const who{
    "forecast_run", "Forecasts a batch distillation: fractions, strengths, times, heat; can draw it.",
    "The Quillbeck teaching stillhouse charges 25 L of 11 % vol into its pot under the 4-plate column:\n"
    "  $ forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --pot-heat '4 kJ/K' \\\n"
    "        --pot-loss '3 W/K' --plates 4 --plate-efficiency 0.6 --reflux 3 --heat-loss '5 %' \\\n"
    "        --discard '100 mL' --cuts 'distillate 80 %vol' --end 'distillate 20 %vol'\n"
    "  Kept: 2.5655 L of pure alcohol (93 %), after 1 h 09 min of warming and 3 h 01 min of boiling.",
    sources()};

/// Reads "still 1 %vol", "distillate 80 %vol", "boiling 99 C", "collected 2 L", "elapsed 4 h".
condition read_condition(given const& g) {
    auto const space = g.text.find(' ');
    std::string const word = g.text.substr(0, space);
    given const rest{label(g) + ":", space == std::string::npos ? "" : g.text.substr(space + 1), true};
    return on_behalf_of(g, [&] {
        if (word == "still" || word == "distillate") {
            return std::visit(
                [&](auto const& each) {
                    return word == "still" ? condition::still_strength(each)
                                           : condition::distillate_strength(each);
                },
                read_strength(rest));
        }
        if (word == "boiling") return condition::boiling_temperature(read_any_temperature(rest, rest.text));
        if (word == "collected") return condition::collected(read_volume(rest));
        if (word == "elapsed")
            return condition::elapsed(read_in_si(rest, durations, {"a time", "s, min or h"}) * second);
        refuse(g, "expected 'still' or 'distillate' and a strength, 'boiling' and a temperature, "
                  "'collected' and a volume, or 'elapsed' and a time");
    });
}

/// A condition and where it was written.
struct asked_condition {
    given from;
    condition what;
};

/// Reads conditions with semicolons between.
std::vector<asked_condition> read_conditions(given const& g) {
    std::vector<asked_condition> result;
    for (given const& part : parts_of(g, ';')) result.push_back({part, read_condition(part)});
    return result;
}

/// Runs what may raise a range_error because of one of several conditions, and says which.
template <class F>
auto on_behalf_of_one(std::vector<asked_condition> const& asked, F const& f) {
    try {
        return f();
    } catch (range_error const& e) {
        for (auto const& [from, what] : asked) {
            if (e.code() == what.code() && e.value() == what.number()) on_behalf_of(from, [&] { raise(e); });
        }
        throw;
    }
}

struct still_options {
    given const &power, &heat, &loss, &room, &stages, &plates, &efficiency, &packing, &hetp, &ratio, &keep,
        &heat_loss, &flows;

    static still_options offer(session& s) {
        given const& power = s.required("--power", "POWER", "heat given to the pot: W, kW");
        given const& heat = s.option("--pot-heat", "HEAT", "heat capacity of the empty pot", "0 kJ/K");
        given const& loss = s.option("--pot-loss", "LOSS", "heat it loses to the room", "0 W/K");
        given const& room = s.option("--room", "TEMP", "temperature of the room", "20 C");
        given const& stages = s.option("--stages", "NUMBER", "theoretical stages above the pot");
        given const& plates = s.option("--plates", "NUMBER", "real plates, instead of stages");
        given const& efficiency =
            s.option("--plate-efficiency", "SHARE", "of each plate, after Murphree", "0.6");
        given const& packing = s.option("--packing", "HEIGHT", "of the packing, instead of stages");
        given const& hetp = s.option("--hetp", "HEIGHT", "of the packing that makes one stage");
        given const& ratio = s.option("--reflux", "RATIO", "returned per distillate taken", "0");
        given const& keep =
            s.option("--keep-strength", "STRENGTH", "raise the reflux to keep this, up to --reflux");
        given const& heat_loss =
            s.option("--heat-loss", "SHARE", "of the vapour, condensed on column and head", "0 %");
        given const& flows =
            s.option("--flows", "MODEL", "in the column: 'constant' or by 'enthalpy'", "constant");
        return {power,   heat, loss,  room, stages,    plates, efficiency,
                packing, hetp, ratio, keep, heat_loss, flows};
    }
    /// Options that belong to another one are not passed over without a word.
    void refuse_what_does_not_apply() const {
        int const columns = stages.present + plates.present + packing.present;
        if (columns > 1) throw bad_input("--stages, --plates, --packing: give one of them");
        require_beside(efficiency, plates.present, "--plates");
        require_beside(hetp, packing.present, "--packing");
        for (given const* const each : {&ratio, &keep, &flows})
            require_beside(*each, columns == 1, "a column: --stages, --plates or --packing");
        if (keep.present && !ratio.present)
            throw bad_input("--keep-strength needs --reflux, the greatest ratio");
        require_beside(room, loss.present, "--pot-loss");
    }
    column read_column() const {
        if (packing.present) {
            if (!hetp.present) throw bad_input("--packing needs --hetp");
            auto const height = [](given const& g) {
                return read_in_si(g, heights, {"a height", "m, cm, mm or ft"}) * metre;
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
        still result{{read_in_si(power, powers, {"a power", "W or kW"}) * watt}};
        result.pot.heat_capacity =
            read_in_si(heat, heat_capacities, {"a heat capacity", "J/K or kJ/K"}) * joule_per_kelvin;
        result.pot.loss = read_in_si(loss, conductances, {"a heat loss", "W/K"}) * watt_per_kelvin;
        result.pot.room = read_any_temperature(room, room.text);
        on_behalf_of({{argument::power, power},
                      {argument::heat_capacity, heat},
                      {argument::heat_loss_coefficient, loss},
                      {argument::temperature_of_the_room, room}},
                     [&] { result.pot.require_possible(); });
        result.tower = read_column();
        double const greatest = read_plain(ratio, 0.0, 1000.0);
        result.returned = reflux::constant(greatest);
        if (keep.present) {
            std::visit([&](auto const& each) { result.returned = reflux::constant_strength(each, greatest); },
                       read_strength(keep));
        }
        double const share = read_share(heat_loss);
        result.returned = on_behalf_of(heat_loss, [&] { return result.returned.with_heat_loss(share); });
        if (flows.text != "constant" && flows.text != "enthalpy")
            refuse(flows, "expected 'constant' or 'enthalpy'");
        if (flows.text == "enthalpy") result.flow = flow_model::enthalpy_balance;
        return result;
    }
};

double percent(mole_fraction x) { return to<volume_fraction>(x).percent(); }

/// What is told of a recorded state, in CSV and JSON.
struct {
    char const* name;
    double (*value)(run_point const&);
} constexpr recorded[] = {
    {"elapsed_min", [](run_point const& p) { return in(p.elapsed, minute); }},
    {"collected_L_20C", [](run_point const& p) { return in(p.collected, litre); }},
    {"pure_alcohol_L_20C", [](run_point const& p) { return in(p.pure_alcohol, litre); }},
    {"still_percent_vol_20C", [](run_point const& p) { return percent(p.still); }},
    {"distillate_percent_vol_20C", [](run_point const& p) { return percent(p.distillate); }},
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

/// Strength and temperature against what has been collected, with a line where a fraction ends.
std::string picture_of(distillation const& r) {
    std::string script =
        "set encoding utf8\n"
        "set terminal svg size 960,600 font 'sans-serif,14' background '#ffffff' noenhanced\n"
        "set border linecolor '#444444'\nset grid linecolor '#dddddd'\n"
        "set xlabel 'collected, L at 20 °C'\nset ylabel 'strength, % vol'\nset y2label 'temperature, °C'\n"
        "set yrange [0:100]\nset ytics 10 nomirror\nset xtics nomirror\nset y2tics\n"
        "set key outside top center horizontal\n$run << EOD\n";
    for (run_point const& p : r.points) {
        script +=
            fmt::format("{:.6g} {:.6g} {:.6g} {:.6g} {:.6g}\n", in(p.collected, litre), percent(p.distillate),
                        percent(p.still), p.vapour.celsius(), p.boiling.celsius());
    }
    script += "EOD\n";
    for (std::size_t k = 0; k + 1 < r.fractions.size(); ++k) {
        script +=
            fmt::format("set arrow from first {0:.6g}, graph 0 to first {0:.6g}, graph 1 nohead dashtype 2 "
                        "linecolor '#888888'\n",
                        in(r.fractions[k].end.collected, litre));
    }
    return script +
           "plot $run using 1:2 with lines linewidth 2.5 linecolor '#1f4e79' title 'distillate', "
           "$run using 1:3 with lines linewidth 2.5 linecolor '#009e73' title 'in the pot', "
           "$run using 1:4 axes x1y2 with lines linewidth 2 dashtype 4 linecolor '#b03a2e' title 'head, °C', "
           "$run using 1:5 axes x1y2 with lines linewidth 2 dashtype 4 linecolor '#d55e00' title 'pot, °C'\n";
}

json to_json(run_fraction const& f) {
    json data = program::to_json(f.product);
    data["kept"] = f.kept;
    data["begin_min"] = in(f.begin.elapsed, minute);
    data["end_min"] = in(f.end.elapsed, minute);
    data["end_distillate_percent_vol_20C"] = percent(f.end.distillate);
    data["end_still_percent_vol_20C"] = percent(f.end.still);
    data["end_boiling_C"] = f.end.boiling.celsius();
    return data;
}

json to_json(wash const& charge, distillation const& r) {
    auto const mj = [](units::energy e) { return in(e, megajoule); };
    json fractions = json::array();
    for (run_fraction const& f : r.fractions) fractions.push_back(to_json(f));
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
                   {"lost_by_column", mj(r.heat.lost_by_column)},
                   {"condenser", mj(r.heat.condenser)},
                   {"with_distillate", mj(r.heat.with_distillate)},
                   {"gained_by_still", mj(r.heat.gained_by_still)},
                   {"per_litre_of_kept_alcohol",
                    r.kept_alcohol().value() > 0.0 ? json(mj(r.energy_per_litre())) : json(nullptr)}}},
                 {"balance_relative_to_charge",
                  {{"ethanol", r.balance.ethanol}, {"water", r.balance.water}, {"energy", r.balance.energy}}},
                 {"points", points}};
    return data;
}

void run(session& s) {
    auto const charge_given = charge_options::offer(s);
    auto const still_given = still_options::offer(s);
    given const& discard = s.option("--discard", "VOLUME", "first fraction, not to be kept");
    given const& cuts =
        s.option("--cuts", "LIST", "ends of fractions, ';' between: 'distillate 80 %vol; boiling 99 C'");
    given const& ends =
        s.required("--end", "LIST", "end of the run, the first of: 'still 1 %vol; elapsed 6 h'");
    surroundings const air = s.surroundings_options();
    given const& points =
        s.option("--points", "NUMBER", "states recorded for --csv, --json and --draw", "200");
    given const& picture = s.option("--draw", "FILE", "draw it with gnuplot: a name that ends in .svg");
    bool const& replace = s.flag("--replace", "draw even if there is such a file already");
    s.explain(
        "Powers: W, kW. Heat of a pot: J/K, kJ/K; loss of it: W/K. Heights: m, cm, mm, ft. Times: s, min, "
        "h.\n"
        "Cuts and ends: 'still STRENGTH' or 'distillate STRENGTH' when it has fallen to it, 'boiling TEMP',\n"
        "'collected VOLUME' and 'elapsed TIME' since the fraction began, or the run if it ends the run.");
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
    bool const recording = picture.present || s.in_json() || s.in_csv();
    require_beside(points, recording, "--csv, --json or --draw");
    if (replace && !picture.present) throw bad_input("--replace goes with --draw");
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
                                 if (p.recorded > 0.0)
                                     line.show(p.recorded, "of the states recorded");
                                 else
                                     line.show(p.distilled, "of the charge distilled");
                             });
                         });
                     });
    if (picture.present) put_picture(s, picture, path, svg_by_gnuplot(picture_of(r)));

    wording const words = s.words();
    page text;
    text.say("Kept: {} of pure alcohol ({:.0f} %), after {} of warming and {} of boiling.",
             words.volume(r.kept_alcohol()), 100.0 * r.recovery(), in_hours(r.warming.duration),
             in_hours(r.boiling_time));
    text.gap();
    text.say("  fraction        volume at 20 °C   strength       until        at the end: distillate  pot");
    int number = 0;
    for (run_fraction const& f : r.fractions) {
        text.say("  {:<2} {:<12} {:>15}   {:<14} {:<12} {:>12} {:>18}", ++number, f.kept ? "" : "discard",
                 words.volume(f.product.volume(celsius(20))), words.strength(f.product.composition()),
                 in_hours(f.end.elapsed), words.strength(to<mass_fraction>(f.end.distillate)),
                 words.temperature(f.end.boiling));
    }
    text.gap();
    text.row("charge", "{}, {} of pure alcohol", words.mass(charge.mass()),
             words.volume(charge.pure_alcohol()));
    text.row("left in the pot", "{}, {}", words.mass(r.residue.mass()),
             words.strength(r.residue.liquid().composition()));
    text.row("boils at", "{} to {} under {}", words.rounded(r.fractions.front().begin.boiling),
             words.rounded(r.fractions.back().end.boiling), air_in_words(words, air, curve.pressure()));
    if (r.kept_alcohol().value() > 0.0) {
        text.row("heat", "{:.2f} kWh, {:.2f} kWh for a litre of pure alcohol kept",
                 in(r.energy(), kilowatt_hour), in(r.energy_per_litre(), kilowatt_hour));
    } else {
        text.row("heat", "{:.2f} kWh", in(r.energy(), kilowatt_hour));
    }
    text.row("condenser", "{:.0f} W at the start", in(r.fractions.front().begin.condenser, watt));
    if (picture.present) text.row("drawing", "{}", printable(picture.text));
    text.gap();
    text.say("{}\n{}", still_caution, run_caution);
    s.answer(text, s.in_json() ? to_json(charge, r) : json(), s.in_csv() ? csv_of(r) : "");
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
