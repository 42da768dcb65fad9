// SPDX-License-Identifier: BSL-1.0
// Forecast of a batch run: fractions, strengths, times and heat.
#include "drawing.hpp"
#include "still_options.hpp"

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

about const who{
    "forecast_run",
    topic::in_still,
    "What will a run give: strengths, fractions, hours, heat?",
    "Forecasts a batch distillation: fractions, strengths, times and heat; on request with a picture.",
    "The Quillbeck teaching stillhouse charges 25 L of 11 % vol into its pot under the 4-plate column:\n"
    "  $ aqueth forecast_run --charge '25 L' --strength '11 %vol' --power '2 kW' --pot-heat '4 kJ/K' \\\n"
    "        --pot-loss '3 W/K' --plates 4 --plate-efficiency 0.6 --reflux 3 --heat-loss '5 %' \\\n"
    "        --discard '100 mL' --cuts 'distillate 80 %vol' --end 'distillate 20 %vol'\n"
    "  Hearts: 2.009 L at 86.13 % vol. Kept in all: 2.565 L of pure alcohol (93 %).",
    run_sources()};

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

/// Strength and temperature against what has been collected, with a line where a fraction ends.
std::string picture_of(std::filesystem::path const& path, wording const& words, distillation const& r,
                       std::vector<std::string> const& names) {
    char const* const degrees = words.temperature_unit();
    std::string script = picture_head(path, 960, 640, "A run of the still: strength and temperature") +
                         "set y2tics\nset tmargin 6\n";
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
    double const width = collected(r.fractions.back().end);
    for (std::size_t k = 0; k < r.fractions.size(); ++k) {
        double const from = collected(r.fractions[k].begin), to = collected(r.fractions[k].end);
        if (k + 1 < r.fractions.size()) {
            script += fmt::format(
                "set arrow from first {0:.6g}, graph 0 to first {0:.6g}, graph 1 nohead dashtype 2 "
                "linecolor '#888888'\n",
                to);
        }
        // A name stands above its fraction; slanted if it is wider.
        double const letters = 0.011 * static_cast<double>(names[k].size()) * width;
        script += fmt::format("set label {} at first {:.6g}, graph 1.025 {} textcolor '#444444'\n",
                              in_quotes(names[k]), 0.5 * (from + to),
                              to - from > letters ? "center" : "left rotate by 25");
    }
    std::pair<char const*, std::string> const curves[] = {{"1:2", "distillate"},
                                                          {"1:3", "in the pot"},
                                                          {"1:4 axes x1y2", fmt::format("head, {}", degrees)},
                                                          {"1:5 axes x1y2", fmt::format("pot, {}", degrees)}};
    for (std::size_t k = 0; k < std::size(curves); ++k) {
        script += fmt::format("{} $run using {} with lines {} title '{}'", k == 0 ? "plot" : ",",
                              curves[k].first, line_style(k), curves[k].second);
    }
    return script + "\n";
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
    for (char const* const reserved : {"charge", "residue", "product"})
        if (std::find(names.begin(), names.end(), reserved) != names.end())
            refuse(g,
                   fmt::format("'{}' is the name of another liquid in the answer: choose another", reserved));
    return names;
}

/// The headline product: the hearts, or the whole distillate; with other names, everything kept.
struct main_product {
    std::string name;
    std::vector<parcel> parts;
    std::string lot;  ///< the fraction that --from takes from the answer; empty if there are several

    main_product(distillation const& r, std::vector<std::string> const& names) : name("Hearts") {
        bool const in_one = names.size() == 1 && names.front() == "distillate";
        if (in_one) name = "Distillate";
        for (std::size_t k = 0; k < names.size(); ++k)
            if (names[k].starts_with("hearts") || in_one) add(r.fractions[k], names[k]);
        if (!parts.empty()) return;
        name = "Kept";
        for (std::size_t k = 0; k < names.size(); ++k) add(r.fractions[k], names[k]);
    }
    void add(run_fraction const& f, std::string const& its_name) {
        if (!f.kept) return;
        parts.push_back(f.product);
        lot = parts.size() == 1 ? its_name : "";
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

/// The moments of a run that are compared: where fractions begin and end, and those recorded.
std::vector<run_point> moments(distillation const& r) {
    std::vector<run_point> all = r.points;
    for (run_fraction const& f : r.fractions) all.insert(all.end(), {f.begin, f.end});
    all.insert(all.end(), r.steps.begin(), r.steps.end());
    return all;
}

/// What the condensers take: at most, and in all.
struct water_demand {
    cooling_temperatures temperatures;
    condenser_total condenser, partial;
    condenser_demand most, most_of_partial;  ///< those with the greatest flow

    static water_demand of(cooling_options const& options, still const& s, distillation const& r,
                           boiling_curve const& curve) {
        cooling_temperatures const t = options.read();
        auto const greatest = [&](auto const& demand) {
            std::vector<condenser_demand> every;
            for (run_point const& p : moments(r)) every.push_back(demand(p));
            return *std::max_element(every.begin(), every.end(),
                                     [](auto const& a, auto const& b) { return a.water < b.water; });
        };
        return options.on_behalf([&]() -> water_demand {
            return {t, demand_of_condenser(r, t), demand_of_partial_condenser(r, t),
                    greatest([&](run_point const& p) { return demand_of_condenser(p, s.head, t, curve); }),
                    greatest([&](run_point const& p) { return demand_of_partial_condenser(p, t, curve); })};
        });
    }
    units::volume all() const { return condenser.water + partial.water; }
    bool is_partial() const { return partial.water.value() > 0.0; }

    void say(page& text, wording const& words) const {
        auto const row = [&](char const* label, condenser_demand const& d, units::volume in_all) {
            text.row(label, "{} a minute at most, {} in all, from {} to {}; UA {:.0f} W/K",
                     words.volume(d.water * minute), words.volume(in_all),
                     words.temperature(temperatures.water_in), words.temperature(temperatures.water_out),
                     d.ua().value());
        };
        row("cooling water", most, condenser.water);
        if (is_partial()) row("partial condenser", most_of_partial, partial.water);
        text.row("receiver", "{}; the water is at {} where the vapour begins to condense",
                 words.temperature(temperatures.receiver), words.rounded(most.water_between));
    }
    json to_json() const {
        auto const one = [](condenser_demand const& d, condenser_total const& in_all) {
            return json{{"water_L_per_min", in(d.water * minute, litre)},
                        {"water_L", in(in_all.water, litre)},
                        {"heat_W", d.heat().value()},
                        {"heat_MJ", in(in_all.heat(), megajoule)},
                        {"condensing_UA_W_per_K", d.condensing_ua.value()},
                        {"cooling_UA_W_per_K", d.cooling_ua.value()}};
        };
        return {{"water_in_C", temperatures.water_in.celsius()},
                {"water_out_C", temperatures.water_out.celsius()},
                {"receiver_C", temperatures.receiver.celsius()},
                {"condenser", one(most, condenser)},
                {"partial_condenser", is_partial() ? one(most_of_partial, partial) : json(nullptr)}};
    }
};

/// The greatest load of the column's top.
vapour_load greatest_load(given const& width, distillation const& r, boiling_curve const& curve) {
    auto const diameter = read_as<units::length>(width, {"a width", "m, cm, mm or ft"});
    return on_behalf_of(width, [&] {
        std::vector<vapour_load> all;
        for (run_point const& p : moments(r)) all.push_back(load_at_top(p, diameter, curve));
        return *std::max_element(all.begin(), all.end(),
                                 [](auto const& a, auto const& b) { return a.f_factor < b.f_factor; });
    });
}

json to_json(vapour_load const& load) {
    return {{"velocity_m_per_s", load.velocity.value()},
            {"f_factor_root_Pa", load.f_factor},
            {"vapour_kg_per_m3", load.density.value()},
            {"vapour_C", load.temperature.celsius()}};
}

/// When the steps of the plan were taken.
void say_steps(page& text, wording const& words, given const& steps, distillation const& r) {
    if (!steps.present) return;
    auto const parts = parts_of(steps);
    for (std::size_t k = 0; k < parts.size(); ++k) {
        std::string const when = k < r.steps.size()
                                     ? fmt::format("{}, {} collected", in_hours(r.steps[k].elapsed),
                                                   words.volume(volume_collected(words, r.steps[k])))
                                     : std::string("not before the run ends");
        text.row(k == 0 ? "steps" : "", "{}: {}", printable(parts[k].text), when);
    }
}

/// Until when the reflux kept the strength.
std::string kept_until(wording const& words, distillation const& r) {
    if (!r.strength_lost) return "to the end";
    run_point const& p = *r.strength_lost;
    return fmt::format("until {}, {} collected, {} in the pot; reflux {:.3g} from there", in_hours(p.elapsed),
                       words.volume(volume_collected(words, p)), words.strength(p.still), p.reflux_ratio);
}

json to_json(wash const& charge, distillation const& r, std::vector<std::string> const& names,
             assumptions const& assumed, json const& with_weaker_vapour, json const& more) {
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
                   {"partial_condenser", mj(r.heat.partial_condenser)},
                   {"with_distillate", mj(r.heat.with_distillate)},
                   {"gained_by_still", mj(r.heat.gained_by_still)},
                   {"per_litre_of_kept_alcohol",
                    r.kept_alcohol().value() > 0.0 ? json(mj(r.energy_per_litre())) : json(nullptr)}}},
                 {"balance_relative_to_charge",
                  {{"ethanol", r.balance.ethanol}, {"water", r.balance.water}, {"energy", r.balance.energy}}},
                 {"strength_lost", r.strength_lost ? to_json(*r.strength_lost) : json(nullptr)},
                 {"with_vapour_weaker_by_standard_uncertainty", with_weaker_vapour},
                 {"assumed", assumed.to_json()}};
    data.update(more);
    data["points"] = points;
    return data;
}

void run(session& s) {
    auto const charge_given = charge_options::offer(s);
    auto const still_given = still_options::offer(s);
    auto const plan_given = plan_options::offer(s);
    auto const fractions_given = fraction_options::offer(s);
    auto const cooling = cooling_options::offer(s);
    given const& width =
        s.option("--column-width", "LENGTH", "inner diameter of the column, for the load of its top");
    auto const costs = cost_options::offer(s);
    given const& given_names =
        s.option("--names", "LIST", "names of the fractions in order (default foreshots, hearts, tails)");
    surroundings const air = s.surroundings_options();
    given const& points =
        s.option("--points", "NUMBER", "states recorded for --csv, --json and --draw", "200");
    auto const picture = picture_options::offer(s, "strengths and temperatures");
    s.explain(runs_explained);
    s.explain("A neck that loses heat, and a partial condenser, condense a part of the vapour, which runs "
              "back. Of the\n"
              "rest, a total condenser returns --reflux.");
    s.offer_us_units();
    s.offer_csv();
    s.parse();

    wash const charge = charge_given.read();
    still const apparatus = still_given.read();
    run_plan plan;
    std::vector<asked_condition> asked;
    plan_given.read(plan, asked);
    fractions_given.read(plan, asked, still_given.keep);
    bool const recording = picture.wanted() || s.in_json() || s.in_csv();
    require_beside(points, recording, "--csv, --json or --draw");
    plan.points = recording ? read_count(points, run_plan::most_points, 2) : 0;
    boiling_curve const curve = read_curve(air);
    std::filesystem::path const path = picture.read();
    distillation const r =
        on_behalf_of({{argument::number_of_cuts, fractions_given.cuts},
                      {argument::number_of_ends_of_the_run, fractions_given.ends}},
                     [&] {
                         return on_behalf_of_run(charge_given, still_given, plan_given, asked, [&] {
                             progress_line line(who.name);
                             return distil(charge, apparatus, plan, curve, [&](run_progress const& p) {
                                 line.show([&] { return how_far(p); });
                             });
                         });
                     });
    wording const words = s.words();
    auto const names = names_of(given_names, r);
    assumptions assumed = still_given.assumed();
    assumed.unless_given(charge_given.solids, "no extract in the charge");
    if (!plan_given.charged_at.present) {
        assumed.unless_given(
            charge_given.temperature,
            fmt::format("a charge of {} to warm up", words.temperature(charge.liquid().temperature())));
    }
    weaker_run const weaker(charge, apparatus, plan, curve.pressure(), r, words);
    page text;
    main_product const product(r, names);
    std::optional<water_demand> const water =
        cooling.wanted() ? std::optional(water_demand::of(cooling, apparatus, r, curve)) : std::nullopt;
    std::vector<vapour_load> load;  // none or one
    if (width.present) load.push_back(greatest_load(width, r, curve));
    std::optional<parcel> const whole =
        r.kept_alcohol().value() > 0.0 ? std::optional(product.whole()) : std::nullopt;
    units::time const duration = r.warming.duration + r.boiling_time;
    run_cost const cost = costs.read(r.energy(), water ? water->all() : units::volume(), cooling);
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
    say_steps(text, words, plan_given.steps, r);
    if (water) water->say(text, words);
    for (vapour_load const& each : load)
        text.row("column at the top", "{:.2f} m/s, F-factor {:.2f} Pa^0.5 at most; the maker's limits decide",
                 each.velocity.value(), each.f_factor);
    if (costs.wanted())
        costs.say(text, words, cost, duration, whole, product.name == "Hearts" ? "hearts" : "distillate");
    assumed.say(text);
    if (picture.wanted()) picture.draw(s, text, path, picture_of(path, words, r, names));
    text.gap();
    text.say("{}", run_caution);
    json const doubt = product.parts.empty() ? json(nullptr) : weaker.to_json(r, names);
    json const more{{"main_product", product.lot.empty() ? json(nullptr) : json(product.lot)},
                    {"cooling", water ? water->to_json() : json(nullptr)},
                    {"column_top", load.empty() ? json(nullptr) : to_json(load.front())},
                    {"cost", costs.wanted() ? costs.to_json(cost, duration, whole) : json(nullptr)},
                    {"steps_taken", static_cast<int>(r.steps.size())}};
    s.answer(text, s.in_json() ? to_json(charge, r, names, assumed, doubt, more) : json(),
             s.in_csv() ? csv_of(r) : "");
}

program::task const offered{who, run};

}  // namespace
