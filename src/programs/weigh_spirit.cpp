// SPDX-License-Identifier: BSL-1.0
// Strength from a flask on a balance, and the contents of a vessel from its weight.
#include "uncertainty_program.hpp"

#include <cmath>
#include <string>
#include <vector>

namespace {

using namespace program;
namespace model = measurement_model;

about const who{
    "weigh_spirit",
    topic::how_strong,
    "How strong is it by a flask, how much is there by a scale?",
    "Computes a strength from three weighings of a flask: empty, with water, with spirit; or, with --gross,\n"
    "what a tank or a demijohn holds. Both with their uncertainty.",
    "The Quillbeck teaching stillhouse weighs its 100 mL flask with a new spirit:\n"
    "  $ aqueth weigh_spirit --empty '58.42 g' --with-water '158.13 g' --with-spirit '149.61 g' "
    "--temperature '21 "
    "C'\n"
    "  The spirit has 57.88 % vol, give or take 0.11 (95 %).",
    {correlation::oiml_r22::cited, correlation::air_buoyancy::cited, correlation::icao_atmosphere::cited,
     correlation::glass_expansion::cited, gum_cited, jcgm_101_cited}};

constexpr char const* pure_alcohol = "pure alcohol";

units::mass read_mass(given const& g) {
    amount const how_much = read_amount(g);
    if (!std::holds_alternative<units::mass>(how_much))
        refuse(g, fmt::format("expected a mass: {}", mass_units));
    return std::get<units::mass>(how_much);
}

/// One result with its budget and its draws.
struct result {
    char const* name;
    char const* unit;       ///< of the budget
    char const* reference;  ///< " at 20 °C", or nothing
    uncertainty_budget budget;
    double half_width;
    double drawn;  ///< standard uncertainty by random draws
    coverage_interval covered;
};

template <class Model>
result judge(char const* name, char const* unit, char const* reference, Model const& f,
             std::vector<input_quantity> const& inputs, double confidence, int draws) {
    auto const drawn = monte_carlo(f, inputs, static_cast<std::size_t>(draws));
    result r{name,
             unit,
             reference,
             propagate(f, inputs),
             0.0,
             drawn.standard_uncertainty(),
             drawn.interval(confidence)};
    r.half_width = r.budget.expanded_uncertainty(confidence);
    return r;
}

/// A result as the answer shows it.
struct shown {
    std::string unit;
    double value, factor;
};

/// Pure alcohol is in proof gallons in US units, as in the heading.
shown as_shown(wording const& words, result const& r) {
    double const estimate = r.budget.estimate;
    if (words.us && std::string_view(r.name) == pure_alcohol) {
        mass_fraction const pure(1.0);
        double const proof_gallons =
            2.0 * in(litre, us_gallon) * in(density(pure, celsius(20.0)), density(pure, fahrenheit(60.0)));
        return {"proof gal", estimate * proof_gallons, proof_gallons};
    }
    shown_unit const unit = unit_to_show(words, r.unit);
    std::string const at = *r.reference ? words.us ? " at 68 °F" : r.reference : "";
    return {unit.name + at, shown_value(words, r.unit, estimate), unit.factor};
}

/// The text is in the units of the answer, JSON in metric units.
void say(page& text, wording const& words, json& data, result const& r) {
    shown const as = as_shown(words, r);
    double const u = r.budget.standard_uncertainty * as.factor;
    text.say("{}: {} {}, standard uncertainty {} (by draws {})", r.name, sized(as.value, u), as.unit,
             sized(u, u), drawn_in_words(r.drawn, r.budget.standard_uncertainty, as.factor));
    json lines = json::array();
    for (budget_line const& line : r.budget.lines) {
        if (line.contribution != 0.0)
            text.say("  {:<34} {:>5.1f} % of the variance", line.input.name(), 100.0 * line.share);
        lines.push_back({{"input", line.input.name()},
                         {"unit", line.input.unit()},
                         {"estimate", line.input.estimate()},
                         {"standard_uncertainty", line.input.standard_uncertainty()},
                         {"sensitivity", line.sensitivity},
                         {"share", line.share}});
    }
    text.gap();
    doubt const in_doubt = doubt_of(wording{}, r.unit, r.budget, r.half_width, r.covered);
    data["results"].push_back({{"quantity", r.name},
                               {"unit", std::string(r.unit) + r.reference},
                               {"estimate", r.budget.estimate},
                               {"standard_uncertainty", r.budget.standard_uncertainty},
                               {"standard_uncertainty_by_draws", r.drawn},
                               {"expanded_uncertainty", r.half_width},
                               {"doubt", in_doubt.sentence.empty() ? json() : json(in_doubt.sentence)},
                               {"budget", lines}});
}

void run(session& s) {
    given const& empty = s.option("--empty", "MASS", "indication with the empty, dry flask");
    given const& with_water = s.option("--with-water", "MASS", "indication with water to the mark");
    given const& water_at =
        s.option("--temperature-with-water", "TEMP", "temperature of the water in the flask", "20 C", "68 F");
    given const& with_spirit = s.option("--with-spirit", "MASS", "indication with spirit to the mark");
    given const& gross = s.option("--gross", "MASS", "instead of a flask: indication with the full vessel");
    given const& tare = s.option("--tare", "MASS", "with --gross: indication with the empty vessel");
    given const& strength_text = s.option("--strength", "STRENGTH", "with --gross: strength of the spirit");
    given const& strength_limit = s.option("--strength-error", "DIFFERENCE",
                                           "with --gross: largest error of that strength", "0.2 %vol");
    given const& at = s.option("--temperature", "TEMP", "temperature of the spirit", "20 C", "68 F");
    given const& glass =
        s.option("--glass", "GLASS", "soda-lime, borosilicate, or the flask's cubic expansion: '10e-6 /K'",
                 "soda-lime");
    given const& balance = s.option(
        "--balance", "MASS", "largest error of each weighing, or a balance of the settings file", "0.01 g");
    given const& thermometer =
        s.option("--thermometer", "DIFFERENCE", "largest error of each temperature", "0.2 K");
    surroundings const air = s.surroundings_options();
    given const& wanted_confidence = s.option("--confidence", "SHARE", "probability of the interval", "95 %");
    given const& draws_text = s.option("--draws", "NUMBER", "number of random draws for the check", "100000");
    s.explain("Limits of error are plus or minus; every error between them counts as equally likely.");
    s.carry_on({fillable(strength_text, carried::strength).beside(gross)});
    s.offer_us_units();
    s.parse();

    bool const flask = empty.present || with_water.present || with_spirit.present;
    if (flask == gross.present)
        throw bad_input("give --empty, --with-water and --with-spirit for a flask, or --gross for a vessel");
    if (flask && !(empty.present && with_water.present && with_spirit.present))
        throw bad_input("a flask needs all of --empty, --with-water and --with-spirit");
    if (gross.present && !(tare.present && strength_text.present))
        throw bad_input("--gross needs --tare and --strength");
    if (flask && (tare.present || strength_text.present))
        throw bad_input("--tare and --strength go with --gross, not with a flask");

    double const confidence = read_confidence(wanted_confidence);
    int const draws = read_count(draws_text, 10000000, 10000);
    if (std::floor(confidence * draws + 0.5) > draws - 1.0)
        refuse(wanted_confidence, "the draws are too few for this confidence; give more --draws");
    units::temperature const t = read_temperature(at);
    double const heat_error = read_temperature_difference(thermometer);
    double const mass_error = in(read_mass(balance), kilogram);
    on_behalf_of(balance, [&] { return require_range("input", "error", mass_error, "kg", 0.0, 1e3); });
    units::pressure const p = read_pressure(air);
    wording const words = s.words();
    page text;
    json data = {{"confidence", confidence}, {"results", json::array()}};
    using input = input_quantity;

    if (flask) {
        auto const density_of_air =
            on_behalf_of(air.decisive(), [&] { return air_density(p, celsius(20.0)); });
        pycnometer const weighed{read_mass(empty),
                                 read_mass(with_water),
                                 read_water_temperature(water_at),
                                 read_mass(with_spirit),
                                 t,
                                 read_expansion(glass),
                                 density_of_air};
        mass_fraction const w = on_behalf_of({{argument::indication, empty},
                                              {argument::indication_with_water, with_water},
                                              {argument::indication_with_the_liquid, with_spirit},
                                              {argument::density, with_spirit},
                                              {argument::temperature_of_the_water, water_at},
                                              {argument::temperature, at}},
                                             [&] { return weighed.composition(); });
        auto const n = weighed.numbers();
        // The formula holds in its range only: what the errors reach must stay inside.
        on_behalf_of(at, [&] {
            require_range("input", "temperature plus its error", t.celsius() + heat_error, "°C", -20.0, 40.0);
            require_range("input", "temperature minus its error", t.celsius() - heat_error, "°C", -20.0,
                          40.0);
        });
        std::vector<input> const inputs{
            input::rectangular("weighing of the empty flask", "kg", n.empty_kg, mass_error),
            input::rectangular("weighing with water", "kg", n.with_water_kg, mass_error),
            input::rectangular("temperature of the water", "°C", n.water_celsius, heat_error),
            input::rectangular("weighing with spirit", "kg", n.with_liquid_kg, mass_error),
            input::rectangular("temperature of the spirit", "°C", n.liquid_celsius, heat_error),
            input::rectangular("expansion of the glass", "1/K", n.cubic_expansion, 0.2 * n.cubic_expansion),
            input::rectangular("density of the air", "kg/m3", n.air_kg_m3, 0.05 * n.air_kg_m3)};
        auto const composition_of = [](auto const& x) {
            return model::mass_fraction_by_pycnometer(x[0], x[1], x[2], x[3], x[4], x[5], x[6]);
        };
        result const strength = judge(
            "strength of the spirit", "% vol", "",
            [&](auto const& x) { return 100.0 * model::volume_fraction(composition_of(x)); }, inputs,
            confidence, draws);
        double const half_width = strength.half_width * as_shown(words, strength).factor;
        doubt const in_doubt =
            doubt_of(words, strength.unit, strength.budget, strength.half_width, strength.covered);
        if (in_doubt.tells_nothing) {
            text.say("The spirit has {}, but the errors are too large: this measurement tells nothing.",
                     words.strength(w));
        } else {
            text.say("The spirit has {}, give or take {} ({:g} %).", words.strength(w),
                     sized(half_width, half_width), 100.0 * confidence);
        }
        if (!in_doubt.sentence.empty()) text.say("{}", in_doubt.sentence);
        text.gap();
        text.row("spirit", "{}", words.fractions(w));
        text.row("density", "{} at {}", words.density(weighed.density()), words.temperature(t));
        text.row("flask holds", "{} at {}", words.volume(weighed.volume()),
                 words.temperature(weighed.water_temperature));
        text.row("air", "{:.3f} kg/m3, {}", n.air_kg_m3, "known to 5 %");
        text.gap();
        data["percent_vol_20C"] = to<volume_fraction>(w).percent();
        data["density_kg_m3"] = weighed.density().value();
        data["flask_mL"] = in(weighed.volume(), millilitre);
        say(text, words, data, strength);
        text.say("Dissolved sugar makes the spirit look weaker than it is; density shows no methanol.");
    } else {
        mass_fraction const w = composition(read_strength(strength_text));
        units::mass const full = read_mass(gross), bare = read_mass(tare);
        on_behalf_of(gross, [&] {
            return require_range("input", "mass", in(full, kilogram), "kg", in(bare, kilogram), unlimited,
                                 "at least the empty vessel");
        });
        on_behalf_of(
            tare, [&] { return require_range("input", "mass", in(bare, kilogram), "kg", 0.0, unlimited); });
        parcel const held = make_parcel(amount(full - bare), w, at);
        double const off = read_strength_difference(strength_limit);
        double const percent = to<volume_fraction>(w).percent();
        on_behalf_of(strength_limit, [&] {
            require_range("input", "strength plus its error", percent + off, "% vol", 0.0, 100.0);
            require_range("input", "strength minus its error", percent - off, "% vol", 0.0, 100.0);
        });
        std::vector<input> const inputs{
            input::rectangular("weighing of the full vessel", "kg", in(full, kilogram), mass_error),
            input::rectangular("weighing of the empty vessel", "kg", in(bare, kilogram), mass_error),
            input::rectangular("strength", "% vol", percent, off)};
        auto const mass_of = [](auto const& x, auto const& rho) {
            return (x[0] - x[1]) / correlation::air_buoyancy::indication_per_mass(rho);
        };
        auto const at_20 = [&](auto const& x) {
            auto const composition_of = model::mass_fraction(x[2] / 100.0);
            using T = std::remove_cvref_t<decltype(composition_of)>;
            auto const rho = correlation::oiml_r22::density(composition_of, T(20.0));
            return T(1000.0) * mass_of(x, rho) / rho;
        };
        result const volume = judge("volume", "L", " at 20 °C", at_20, inputs, confidence, draws);
        result const alcohol = judge(
            pure_alcohol, "L", " at 20 °C", [&](auto const& x) { return at_20(x) * x[2] / 100.0; }, inputs,
            confidence, draws);
        double const half_width = alcohol.half_width * as_shown(words, alcohol).factor;
        text.say("The vessel holds {}; pure alcohol {}, give or take {} {} ({:g} %).",
                 words.volume(held.volume()), words.alcohol(held), sized(half_width, half_width),
                 words.us ? "proof gal" : "L", 100.0 * confidence);
        doubt const in_doubt =
            doubt_of(words, alcohol.unit, alcohol.budget, alcohol.half_width, alcohol.covered);
        if (!in_doubt.sentence.empty()) text.say("{}", in_doubt.sentence);
        text.gap();
        text.row("contents", "{} by the balance, {} in vacuo", words.weight(held), words.mass(held.mass()));
        std::string const taken = words.volume(held.volume()) + " at " + words.temperature(t);
        std::string const referred = words.volume(held.volume(words.reference_temperature())) + " at " +
                                     words.temperature(words.reference_temperature());
        text.row("volume", "{}", taken == referred ? taken : taken + ", " + referred);
        text.gap();
        data["contents"] = to_json(held);
        say(text, words, data, volume);
        say(text, words, data, alcohol);
        text.say("A tare of last year is not the tare of today: wood takes up spirit, and labels and hoses "
                 "weigh.");
    }
    text.say("{}\n{}", no_law, vapour_caution);
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
