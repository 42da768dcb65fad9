// SPDX-License-Identifier: BSL-1.0
// The uncertainty of a strength and of a dilution, and its sources.
#include "progress.hpp"
#include "uncertainty_program.hpp"

#include <aqueth/array_draws.hpp>

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <variant>
#include <vector>

namespace {

using namespace program;
namespace model = measurement_model;

about const who{
    "judge_uncertainty",
    topic::how_sure,
    "How sure is a strength, and which instrument matters most?",
    "Computes the uncertainty of a strength and of a dilution, and the share of each instrument in it: an\n"
    "uncertainty budget by the GUM, checked by random draws.",
    "The Quillbeck teaching stillhouse reads 81.5 at 28 °C, and dilutes 1.85 L of that to 43 % vol:\n"
    "  $ aqueth judge_uncertainty --reading '81.5 %vol' --temperature '28 C' --amount '1.85 L' --target '43 "
    "%vol'\n"
    "  The product will have 43.00 % vol, give or take 0.33 (95 %).",
    {gum_cited, jcgm_101_cited, correlation::oiml_r22::cited, correlation::its90::cited,
     correlation::glass_expansion::cited}};

/// The inputs of the measurement, in the order in which the models take them.
enum : std::size_t {
    reading,
    meter,
    level,
    temperature,
    thermometer,
    thermometer_level,
    scale,
    glass,
    formula,
    quantity,
    measure,
    measure_level,
    water,
    balance
};

/// The measurement, for differentiation and for many draws at once.
struct measurement {
    bool by_mass = false;
    double target = 0.0;  ///< volume fraction

    template <class X>
    auto at(X const& x) const {
        return x[temperature] + x[thermometer] + x[thermometer_level] + x[scale];
    }
    template <class X>
    auto composition(X const& x) const {
        return model::mass_fraction_from_reading((x[reading] + x[meter] + x[level]) / 100.0, at(x), x[glass],
                                                 x[formula]);
    }
    template <class X, class T>
    auto mass(X const& x, T const& w) const {
        T const measured = x[quantity] + x[measure] + x[measure_level];
        return by_mass ? measured : measured / 1e6 * model::density(w, at(x), x[formula]);
    }
    template <class X>
    auto strength(X const& x) const {
        return 100.0 * model::volume_fraction(composition(x));
    }
    template <class X>
    auto water_to_add(X const& x) const {
        auto const w = composition(x);
        return model::water_to_add(mass(x, w), w, model::mass_fraction(decltype(w)(target)));
    }
    template <class X>
    auto product(X const& x) const {
        auto const w = composition(x);
        return 100.0 * model::volume_fraction(model::diluted(mass(x, w), w, x[water] + x[balance]));
    }
};

/// One result: its budget and its distribution by random draws.
struct judged {
    char const* name;
    char const* unit;
    uncertainty_budget budget;
    double half_width;  ///< expanded uncertainty
    std::optional<result_distribution> drawn;
    std::optional<coverage_interval> covered;
};

/// The class of instruments behind each input; null where there is none.
using classes = std::vector<instrument_class const*>;

instrument_class const* class_in(given const& g) { return find_instrument_class(trimmed(g.text)); }

template <class Model>
judged judge(progress_line& line, char const* name, char const* unit, Model const& f,
             std::span<input_quantity const> inputs, double confidence, std::size_t trials) {
    judged result{name, unit, propagate(f, inputs), 0.0, std::nullopt, std::nullopt};
    result.half_width = result.budget.expanded_uncertainty(confidence);
    if (trials > 0) {
        std::size_t made = 0;
        auto const counted = [&](auto const& x) {
            line.show([&] {
                double const share = static_cast<double>(made) / static_cast<double>(trials);
                return fmt::format("{:.0f} % of the draws for the {}", 100.0 * share, name);
            });
            made += draws::count;
            return f(x);
        };
        result.drawn = monte_carlo(in_blocks(counted), inputs, trials);
        result.covered = result.drawn->interval(confidence);
    }
    return result;
}

/// The error of an instrument: a class by its name, or limits with a unit.
template <class Read>
input_quantity instrument_error(given const& g, char const* what, char const* unit, Read const& read) {
    if (instrument_class const* known = class_in(g)) {
        if (std::string_view(known->unit) != unit)
            refuse(g, fmt::format("that is a {}; its error is in {}, not in {}", known->description,
                                  known->unit, unit));
        return error_of(*known);
    }
    std::string_view const text = trimmed(g.text);
    if (text.empty() || !(is_digit(text[0]) || text[0] == '.' || text[0] == '-' || text[0] == '+'))
        refuse(g, "neither a class of instruments (--instruments lists them) nor limits of error like '0.5'");
    return input_quantity::rectangular(fmt::format("error of the {}", what), unit, 0.0, read());
}

/// The default of the smallest step read: half a division of the class, or none.
double usual_step(given const& class_of) {
    instrument_class const* known = class_in(class_of);
    return known ? 0.5 * known->division : 0.0;
}

/// The error of reading in steps.
input_quantity step_error(char const* what, char const* unit, double step) {
    return step > 0.0 ? reading_error(what, unit, step)
                      : input_quantity::normal(fmt::format("reading of the {}", what), unit, 0.0, 0.0);
}

void list_instruments(session& s) {
    page text;
    json list = json::array();
    text.say("Classes of instruments and the largest errors allowed them:");
    text.gap();
    for (instrument_class const& each : instrument_classes) {
        text.say("  {:<21} {:<40} ±{:g} {}", each.key, each.description, each.maximum_permissible_error,
                 each.unit);
        text.say("  {:<21} {}: {}", "", name_of(each.seen), each.citation);
        if (*each.remark) text.say("  {:<21} {}", "", each.remark);
        list.push_back({{"class", each.key},
                        {"instrument", each.description},
                        {"unit", each.unit},
                        {"division", each.division},
                        {"maximum_permissible_error", each.maximum_permissible_error},
                        {"source", each.citation},
                        {"source_seen", name_of(each.seen)},
                        {"remark", each.remark}});
    }
    text.gap();
    text.say("The calibration certificate of your own instrument is better evidence than its class.");
    s.answer(text, {{"instruments", list}});
}

/// @param doubts whether its doubt is told here, and not in the heading
void say(page& text, wording const& words, judged const& j, bool doubts) {
    shown_unit const unit = unit_to_show(words, j.unit);
    double const u = j.budget.standard_uncertainty * unit.factor;
    text.say("{}: {} {}, standard uncertainty {} {}", j.name,
             sized(shown_value(words, j.unit, j.budget.estimate), u), unit.name, sized(u, u), unit.name);
    text.say("  {:<50} {:>14} {:>12} {:>13} {:>7}", "input", "uncertainty", "sensitivity", "contribution",
             "share");
    for (budget_line const& line : j.budget.lines) {
        if (line.contribution == 0.0) continue;
        shown_unit const of_input = unit_to_show(words, line.input.unit());
        text.say("  {:<50} {:>14} {:>12.5g} {:>13.2g} {:>5.1f} %", line.input.name(),
                 fmt::format("{:.2g} {}", line.input.standard_uncertainty() * of_input.factor, of_input.name),
                 line.sensitivity * unit.factor / of_input.factor, line.contribution * unit.factor,
                 100.0 * line.share);
    }
    doubt const of = doubt_of(words, j.unit, j.budget, j.half_width, j.covered);
    if (j.drawn && of.tells_nothing) {
        text.say("  {} draws: they reach impossible values, too", j.drawn->trials());
    } else if (j.drawn) {
        text.say("  {} draws: standard uncertainty {}, interval {} to {} {}", j.drawn->trials(),
                 drawn_in_words(j.drawn->standard_uncertainty(), j.budget.standard_uncertainty, unit.factor),
                 sized(shown_value(words, j.unit, j.covered->lower), u),
                 sized(shown_value(words, j.unit, j.covered->upper), u), unit.name);
    } else {
        text.say("  no draws: the t distribution of fewer than four readings has no standard deviation");
    }
    if (doubts && !of.sentence.empty()) text.say("  {}", of.sentence);
    text.gap();
}

/// The share of the variance that comes from limits of error not read in a source.
void say_what_is_remembered(page& text, judged const& j, classes const& of) {
    double remembered = 0.0;
    for (std::size_t i = 0; i < of.size(); ++i) {
        if (of[i] && of[i]->seen == provenance::memory) remembered += j.budget.lines[i].share;
    }
    if (remembered < 0.005) return;
    text.say("{:.0f} % of the variance comes from limits of error quoted from memory, not read in a source.\n"
             "Confirm them, or give those of your own instrument.",
             100.0 * remembered);
}

/// Where the limits of error come from.
void say_sources(page& text, judged const& j, classes const& of) {
    for (std::size_t i = 0; i < of.size(); ++i) {
        if (!of[i] || j.budget.lines[i].contribution == 0.0) continue;
        text.say("{}: ±{:g} {}, {}: {}", of[i]->description, of[i]->maximum_permissible_error, of[i]->unit,
                 name_of(of[i]->seen), of[i]->citation);
        if (*of[i]->remark) text.say("  {}", of[i]->remark);
    }
    text.gap();
}

json to_json(judged const& j, classes const& of) {
    doubt const in_doubt = doubt_of(wording{}, j.unit, j.budget, j.half_width, j.covered);
    json lines = json::array();
    for (std::size_t i = 0; i < j.budget.lines.size(); ++i) {
        budget_line const& line = j.budget.lines[i];
        instrument_class const* const known = i < of.size() ? of[i] : nullptr;
        lines.push_back({{"input", line.input.name()},
                         {"unit", line.input.unit()},
                         {"estimate", line.input.estimate()},
                         {"standard_uncertainty", line.input.standard_uncertainty()},
                         {"evaluation", line.input.evaluation() == evaluation::type_a ? "A" : "B"},
                         {"sensitivity", line.sensitivity},
                         {"contribution", line.contribution},
                         {"share", line.share},
                         {"limits", known ? json(known->citation) : json()},
                         {"limits_seen", known ? json(name_of(known->seen)) : json()}});
    }
    json data{{"quantity", j.name},
              {"unit", j.unit},
              {"estimate", j.budget.estimate},
              {"standard_uncertainty", j.budget.standard_uncertainty},
              {"expanded_uncertainty", j.half_width},
              {"draws", nullptr},
              {"doubt", in_doubt.sentence.empty() ? json() : json(in_doubt.sentence)},
              {"budget", lines}};
    if (j.drawn && !in_doubt.tells_nothing) {
        data["draws"] = {{"number", j.drawn->trials()},
                         {"estimate", j.drawn->estimate()},
                         {"standard_uncertainty", j.drawn->standard_uncertainty()},
                         {"interval", {j.covered->lower, j.covered->upper}}};
    }
    return data;
}

std::string to_csv(std::vector<judged> const& results) {
    std::string csv = "quantity,input,estimate,unit,standard_uncertainty,sensitivity,contribution,share\n";
    for (judged const& j : results) {
        for (budget_line const& line : j.budget.lines) {
            csv += fmt::format("\"{}\",\"{}\",{:.10g},{},{:.10g},{:.10g},{:.10g},{:.10g}\n", j.name,
                               line.input.name(), line.input.estimate(), line.input.unit(),
                               line.input.standard_uncertainty(), line.sensitivity, line.contribution,
                               line.share);
        }
        csv += fmt::format("\"{}\",\"result\",{:.10g},{},{:.10g},,{:.10g},1\n", j.name, j.budget.estimate,
                           j.unit, j.budget.standard_uncertainty, j.budget.standard_uncertainty);
    }
    return csv;
}

/// The formula is not valid outside its range: the inputs must stay inside, errors included.
void require_room(given const& g, char const* what, double value, double error, char const* unit,
                  double least, double most) {
    on_behalf_of(g, [&] {
        require_range("input", fmt::format("{} minus its errors", what), value - error, unit, least, most);
        require_range("input", fmt::format("{} plus its errors", what), value + error, unit, least, most);
    });
}

void run(session& s) {
    std::vector<given>& shown = s.repeated(
        "--reading", "STRENGTH", "reading of the 20 °C alcoholometer, %vol; once for each reading", false);
    given const& at =
        s.option("--temperature", "TEMP", "temperature of the spirit, with the instrument in it");
    given const& meter_class =
        s.option("--alcoholometer", "CLASS", "a class (--instruments), or limits of error: '0.2 %vol'",
                 "alcoholometer-halves");
    given const& correction = s.correction_option();
    given const& step = s.option("--read-to", "STEP",
                                 "smallest step read: '0.1 %vol' (default half a division of the class)");
    given const& thermometer_class =
        s.option("--thermometer", "CLASS", "a class, or limits of error: '0.3 K'", "thermometer-0.5");
    given const& how_much =
        s.option("--amount", "AMOUNT", "spirit at hand: volume at its temperature, or mass");
    given const& measure_class =
        s.option("--measure", "CLASS", "for a volume: a class, or limits: '10 mL'", "cylinder-2000-B");
    given const& interval = s.option(
        "--balance", "MASS",
        "verification scale interval of the balance, class III, or a balance of the settings file", "1 g");
    given const& target = s.option("--target", "STRENGTH", "strength wanted by adding water");
    given const& real = s.option("--formula-error", "DENSITY",
                                 "largest error of OIML R 22 for real mixtures, like '0.1 kg/m3'");
    given const& wanted_confidence = s.option("--confidence", "SHARE", "probability of the interval", "95 %");
    given const& draws = s.option("--draws", "NUMBER", "number of random draws for the check", "100000");
    bool const& list = s.flag("--instruments", "list the classes of instruments and exit");
    s.explain("Limits of error are plus or minus; every error between them counts as equally likely.");
    s.carry_on({{shown, "--reading", carried::reading},
                {correction, carried::correction},
                {at, carried::temperature},
                fillable(how_much, carried::weighed).beside(target)});
    s.offer_us_units();
    s.offer_csv();
    s.parse();
    if (list) return list_instruments(s);
    if (shown.empty() || !at.present) throw bad_input("give --reading and --temperature");
    if (how_much.present != target.present) throw bad_input("give both --amount and --target, or neither");

    double const confidence = read_confidence(wanted_confidence);
    int const asked = read_count(draws, 10000000, 10000);
    bool const can_draw = shown.size() == 1 || shown.size() > 3;
    auto const trials = static_cast<std::size_t>(can_draw ? asked : 0);
    // An interval must leave one draw out (JCGM 101, 7.7.2), which the trials demand only when they are
    // drawn.
    if (can_draw && std::floor(confidence * asked + 0.5) > asked - 1.0)
        refuse(wanted_confidence,
               fmt::format("{} draws are too few for this confidence; give more --draws", asked));

    // readings and temperature, first as the typed functions take them, which refuse what cannot be
    units::temperature const t = read_temperature(at);
    on_behalf_of(at, [&] {  // the budget is that of the law's formula
        return require_range("input", argument::temperature, t.celsius(), "°C",
                             correlation::oiml_r22::lowest_celsius, correlation::oiml_r22::highest_celsius,
                             "OIML R 22");
    });
    certificate const certified(correction);
    std::vector<double> read_percents, percents;  // as read, corrected
    for (given const& each : shown) {
        strength const mark = read_strength(each);
        if (!std::holds_alternative<volume_fraction>(mark))
            refuse(each, "expected the reading of a 20 °C alcoholometer: %vol");
        double const percent = std::get<volume_fraction>(mark).percent();
        read_percents.push_back(percent);
        percents.push_back(percent + certified.correction(percent));
        static_cast<void>(on_behalf_of({{argument::temperature, at}, {argument::reading, each}}, [&] {
            return alcoholometer{}.composition(by_volume(percents.back()), t);
        }));
    }
    input_quantity const stem = percents.size() > 1
                                    ? input_quantity::repeated("reading", "% vol", percents)
                                    : input_quantity::normal("reading", "% vol", percents[0], 0.0);
    input_quantity const stem_error = instrument_error(meter_class, "alcoholometer", "% vol",
                                                       [&] { return read_strength_difference(meter_class); });
    double const smallest = step.present ? read_strength_difference(step) : usual_step(meter_class);
    input_quantity const stem_step = step_error("alcoholometer", "% vol", smallest);
    input_quantity const heat_error = instrument_error(thermometer_class, "thermometer", "°C", [&] {
        return read_temperature_difference(thermometer_class);
    });
    input_quantity const heat_step = step_error("thermometer", "°C", usual_step(thermometer_class));
    double const room = std::sqrt(3.0);  // of rectangular limits
    if (double const reach = 6.0 * stem.standard_uncertainty();
        stem.estimate() - reach < 0.0 || stem.estimate() + reach > 100.0) {
        throw bad_input(
            fmt::format("the readings scatter too much: {:g} to {:g} % vol, standard uncertainty of "
                        "their mean {:.2g} % vol; find the cause and read again",
                        *std::min_element(percents.begin(), percents.end()),
                        *std::max_element(percents.begin(), percents.end()), stem.standard_uncertainty()));
    }
    require_room(at, "temperature", t.celsius(),
                 room * (heat_error.standard_uncertainty() + heat_step.standard_uncertainty()) + 0.02, "°C",
                 correlation::oiml_r22::lowest_celsius, correlation::oiml_r22::highest_celsius);
    require_room(shown[0], "reading", stem.estimate(),
                 room * (stem_error.standard_uncertainty() + stem_step.standard_uncertainty()) +
                     6.0 * stem.standard_uncertainty(),
                 "% vol", 0.0, 100.0);
    double density_limit = 0.0;
    if (real.present) {
        density_limit = on_behalf_of(real, [&] {
            wanted const w{"a density", "kg/m3 or g/cm3"};
            number_and_unit const q = read_quantity(real, real.text, w);
            auto const* unit = find_unit(notations, squeezed(q.unit));
            if (!unit || unit->kind != basis::density) refuse_unit(real, q.unit, w);
            return require_range("input", "difference of densities", q.number * unit->factor, "kg/m3", 0.0,
                                 10.0);
        });
    }
    std::vector<input_quantity> inputs{
        stem,
        stem_error,
        stem_step,
        input_quantity::normal("temperature", "°C", t.celsius(), 0.0),
        heat_error,
        heat_step,
        temperature_scale_error(t),
        glass_expansion_of_soda_lime(),
        input_quantity::rectangular("OIML R 22 as a formula", "kg/m3", 0.0, density_limit)};

    classes of(inputs.size());
    of[meter] = class_in(meter_class);
    of[thermometer] = class_in(thermometer_class);

    measurement m;
    std::optional<parcel> addition;
    std::vector<judged> results;
    std::optional<progress_line> line(std::in_place, who.name);
    auto const strength = [&m](auto const& x) { return m.strength(x); };
    results.push_back(judge(*line, "strength of the spirit", "% vol", strength, inputs, confidence, trials));
    if (target.present) {
        mass_fraction const w = alcoholometer{}.composition(by_volume(stem.estimate()), t);
        parcel const spirit =
            on_behalf_of(how_much, [&] { return make_parcel(read_amount(how_much), w, t); });
        m.by_mass = std::holds_alternative<units::mass>(read_amount(how_much));
        volume_fraction const aim = to<volume_fraction>(composition(read_strength(target)));
        m.target = aim.value();
        adjustment const plan =
            on_behalf_of(target, [&] { return dilute(spirit, aim, water_at(celsius(20)), celsius(20)); });
        addition = plan.addition;
        amount const read_interval = read_amount(interval);
        if (!std::holds_alternative<units::mass>(read_interval))
            refuse(interval, fmt::format("expected a mass: {}", mass_units));
        units::mass const e = std::get<units::mass>(read_interval);
        auto const weighed = [&](units::mass mass, char const* what) {
            return on_behalf_of(interval, [&] {
                return balance_error(mass, e, fmt::format("balance, class III, {}", what));
            });
        };
        if (m.by_mass) {
            inputs.push_back(
                input_quantity::normal("mass of the spirit", "kg", in(spirit.mass(), kilogram), 0.0));
            inputs.push_back(weighed(spirit.mass(), "spirit"));
            inputs.push_back(input_quantity::normal("reading of the balance", "kg", 0.0, 0.0));
        } else {
            inputs.push_back(
                input_quantity::normal("volume of the spirit", "mL", in(spirit.volume(), millilitre), 0.0));
            inputs.push_back(instrument_error(measure_class, "measure", "mL",
                                              [&] { return read_millilitres(measure_class); }));
            inputs.push_back(step_error("measure", "mL", usual_step(measure_class)));
            of.resize(inputs.size());
            of[measure] = class_in(measure_class);
        }
        inputs.push_back(
            input_quantity::normal("mass of the water added", "kg", in(plan.addition.mass(), kilogram), 0.0));
        inputs.push_back(weighed(plan.addition.mass(), "water"));
        auto const add = [&m](auto const& x) { return m.water_to_add(x); };
        auto const product = [&m](auto const& x) { return m.product(x); };
        results.push_back(judge(*line, "water to add", "kg", add, inputs, confidence, trials));
        results.push_back(
            judge(*line, "strength of the product", "% vol", product, inputs, confidence, trials));
    }

    line.reset();  // erased before the answer
    page text;
    wording const words = s.words();
    judged const& last = results.back();
    shown_unit const of_strength = unit_to_show(words, last.unit);
    double const half_width = last.half_width * of_strength.factor;
    std::string const headline =
        fmt::format("The {} {:.{}f} {}", target.present ? "product will have" : "spirit has",
                    shown_value(words, last.unit, last.budget.estimate), words.us ? 1 : 2, of_strength.name);
    doubt const in_doubt = doubt_of(words, last.unit, last.budget, last.half_width, last.covered);
    if (in_doubt.tells_nothing) {
        text.say("{}, but its errors are too large: this measurement tells nothing.", headline);
    } else {
        text.say("{}, give or take {} ({:g} %).", headline, sized(half_width, half_width),
                 100.0 * confidence);
        if (!in_doubt.sentence.empty()) text.say("{}", in_doubt.sentence);
    }
    json data{{"confidence", confidence}};
    if (addition) {
        text.say("Add {} of water by the balance; the budget is in true mass.", words.weight(*addition));
        data["water"] = program::to_json(*addition);
    }
    for (double const each : read_percents) {
        std::string const beyond = certified.beyond(each);
        if (!beyond.empty())
            text.say("The correction of the reading {:g} is kept beyond the points of the certificate: {}.",
                     each, beyond);
    }
    say_what_is_remembered(text, last, of);
    text.gap();
    for (judged const& each : results) say(text, words, each, &each != &last);
    say_sources(text, last, of);
    text.say("{}\n{}", no_law, vapour_caution);
    json list_of_results = json::array();
    for (judged const& each : results) list_of_results.push_back(to_json(each, of));
    data["results"] = list_of_results;
    s.answer(text, data, to_csv(results));
}

program::task const offered{who, run};

}  // namespace
