// SPDX-License-Identifier: BSL-1.0
// What a refractometer shows in spirit, and what its reading means with a density: alcohol and extract of a
// wash, or methanol in a spirit.
#include "sugar_program.hpp"
#include "uncertainty_program.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <span>
#include <string>
#include <variant>
#include <vector>

namespace {

using namespace program;
namespace model_of = measurement_model;

about const who{
    "read_refractometer",
    topic::in_wash,
    "What do a refractometer and a gravity together mean?",
    "Computes alcohol and extract of a wash from a refractometer and a density, or from a refractometer and\n"
    "the original gravity; what a refractometer shows in a spirit; methanol put in place of ethanol.",
    "The Quillbeck teaching stillhouse reads 6.5 °Bx and a gravity of 0.992 in its wash:\n"
    "  $ aqueth read_refractometer --reading '6.5 brix' --gravity '0.992 sg'\n"
    "  The wash holds 12.40 % vol and 2.17 °P, give or take 0.40 and 0.13 (95 %).",
    {aqueth::model::refraction::cited, aqueth::model::sugar_solution::cited,
     aqueth::model::methanol_water::cited, correlation::balling::cited, correlation::oiml_r22::cited,
     gum_cited}};

struct options {
    given const& reading;
    given const& gravity;
    given const& original;
    bool const& methanol;
    given const& strength;
    given const& sugar;
    given const& kind;
    given const& reading_error;
    given const& gravity_error;
    given const& confidence;
};

/// Limits of error of the refractometer as a difference of the index at its reading.
double index_error(given const& g, refractive_index at) {
    wanted const w{"an error of the refractometer", "brix, or none for a refractive index"};
    number_and_unit const q = read_number(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    double const per_brix =
        (refractive_index_of(brix(70.0)).value() - refractive_index_of(brix(0.0)).value()) / 70.0;
    double const slope =
        at < refractive_index_of(brix(30.0)) ? 0.0015 : per_brix;  // of the index, for a degree
    return on_behalf_of(g, [&] {
        if (unit == "brix" || unit == "bx" || unit == "°bx")
            return slope * require_range("refractometer", "limits of error", q.number, "°Bx", 0.0, 2.0);
        if (unit.empty()) return require_range("refractometer", "limits of error", q.number, "", 0.0, 0.003);
        refuse_unit(g, q.unit, w);
    });
}

/// Limits of error of the density, kg/m3.
double density_error(given const& g) {
    wanted const w{"an error of the density", "kg/m3, g/cm3 or sg"};
    number_and_unit const q = read_quantity(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    return on_behalf_of(g, [&] {
        if (unit == "kg/m3") return require_range("density", "limits of error", q.number, "kg/m3", 0.0, 10.0);
        if (unit == "g/cm3" || unit == "sg")
            return 1000.0 * require_range("density", "limits of error", q.number, unit, 0.0, 0.01);
        refuse_unit(g, q.unit, w);
    });
}

/// The temperature of all readings, 20 °C.
std::string at_20(wording const& words) { return words.temperature(celsius(20.0)); }

void say_index(page& text, wording const& words, refractive_index n) {
    if (n < refractive_index_of(brix(0.0))) return;
    text.row("refractometer", "{:.2f} °Bx, refractive index {:.5f} ({}, 589 nm)", brix_of(n).degrees(),
             n.value(), at_20(words));
}

/// A density with as many digits as a refractometer needs beside it.
void say_density(page& text, wording const& words, units::mass_density rho) {
    text.row("density", "{} at {}", words.us ? words.density(rho) : fmt::format("{:.2f} kg/m3", rho.value()),
             at_20(words));
}

/// The unit of the strength of a wash, which judge_wash gives in % vol, too: proof is for spirits.
char const* strength_unit(wording const& words) { return words.us ? "% vol at 60 °F" : "% vol"; }

json brix_or_null(refractive_index n) {
    return n < refractive_index_of(brix(0.0)) ? json() : json(brix_of(n).degrees());
}

constexpr char const* sucrose_only =
    "The extract counts as sucrose. Dextrins, acids and salts bend light differently for their density.";

/// What it shows in a spirit or a liqueur.
void predict(session& s, options const& o) {
    for (given const* each : {&o.gravity, &o.original, &o.reading_error, &o.gravity_error, &o.confidence})
        if (each->present) refuse(*each, "needs --reading");
    if (o.methanol) throw bad_input("--methanol needs --reading");
    sweetener const kind = read_sweetener(o.kind);
    units::mass_density const sugar =
        o.sugar.present ? read_sugar_concentration(o.sugar) : 0.0 * gram_per_litre;
    auto const strength =
        std::visit([](auto const& each) { return to<volume_fraction>(each); }, read_strength(o.strength));
    sweetened const liquid =
        on_behalf_of({{argument::alcoholic_strength_by_volume, o.strength},
                      {argument::sugar_concentration, o.sugar},
                      {argument::sugar_in_its_water, o.sugar}},
                     [&] { return sweetened::of(litre, strength, sugar, celsius(20.0), kind); });
    refractive_index const n = on_behalf_of(o.strength, [&] { return refractive_index_of(liquid); });
    brix const shown = on_behalf_of(o.strength, [&] { return brix_of(n); });
    wording const words = s.words();
    page text;
    text.say("A refractometer shows {:.2f} °Bx at {}.", shown.degrees(), at_20(words));
    text.gap();
    text.row("refractive index", "{:.5f} at {}, 589 nm", n.value(), at_20(words));
    text.row("liquid", "{} with {} of {}", words.strength(to<mass_fraction>(strength)),
             in_words(words, sugar), name_of(kind));
    say_density(text, words, liquid.density());
    text.gap();
    if (sugar.value() > 0.0) say_sugar_doubt(text, words, liquid);
    text.say("The same reading fits other mixtures: alone it gives no strength.");
    text.say("{}", vapour_caution);
    s.answer(text, {{"refractometer_Bx", shown.degrees()},
                    {"refractive_index_20C", n.value()},
                    {"density_kg_m3_20C", liquid.density().value()},
                    {"strength_percent_vol_20C", strength.percent()},
                    {"sugar_g_L_20C", sugar.value()}});
}

/// Calls f; a refused index is reported in °Bx if the reading is in °Bx.
template <class F>
auto as_read(options const& o, F const& f) {
    return on_behalf_of({{argument::density, o.gravity},
                         {argument::refractive_index, o.reading},
                         {argument::refractometer_reading, o.reading}},
                        [&] {
                            try {
                                return f();
                            } catch (refusal const& e) {
                                if (e.code() != argument::refractive_index || !is_brix(o.reading)) throw;
                                auto const degrees = [](double index) {
                                    refractive_index const water = refractive_index_of(brix(0.0));
                                    refractive_index const n((std::max)(index, water.value()));
                                    return std::round(1000.0 * brix_of(n).degrees()) / 1000.0;
                                };
                                throw refusal(e.property(), argument::refractometer_reading,
                                              degrees(e.value()), "°Bx", degrees(e.lower()),
                                              degrees(e.upper()), e.reason());
                            }
                        });
}

void find_it(session& s, options const& o, refractive_index n) {
    if (!o.gravity.present) throw bad_input("--methanol needs --gravity");
    if (o.original.present) refuse(o.original, "is of no use with --methanol");
    units::mass_density const rho = read_density_at_20(o.gravity);
    methanol_in_spirit const found = as_read(o, [&] { return find_methanol(rho, n); });
    double const confidence = read_confidence(o.confidence);
    std::vector<input_quantity> const inputs{
        input_quantity::rectangular("density", "kg/m3", rho.value(), density_error(o.gravity_error)),
        input_quantity::rectangular("refractometer", "1", n.value(), index_error(o.reading_error, n)),
        input_quantity::normal("refractive indices of the model", "1", 0.0, 0.00008),
    };
    // The share is linear in the index. Its errors are followed from the index of pure spirit, because the
    // reading may lie at the end of the range.
    auto const linear = [](double kg_m3, double index) {
        units::mass_density const of = kg_m3 * kilogram_per_cubic_metre;
        refractive_index const pure = refractive_index_of(mass_fraction_from_density(of, celsius(20.0)));
        methanol_in_spirit const there = find_methanol(of, pure);
        return 100.0 * (there.share - (index - pure.value()) * there.share_per_index);
    };
    auto const share = [&](std::span<double const> x) {
        double const index = x[1] + x[2];
        try {
            return linear(x[0], index);
        } catch (refusal const&) {  // a density beyond the tables: as far to the other side, mirrored
            return 2.0 * linear(rho.value(), index) - linear(2.0 * rho.value() - x[0], index);
        }
    };
    uncertainty_budget const budget =
        on_behalf_of(o.gravity, [&] { return propagate_by_differences(share, inputs); });
    double const half = budget.expanded_uncertainty(confidence);
    wording const words = s.words();
    page text;
    if (budget.estimate - half > 0.0) {
        text.say("Methanol is {} % of the alcohol by mass, give or take {} ({:g} %). Do not drink it.",
                 sized(budget.estimate, half), sized(half, half), 100.0 * confidence);
    } else {
        // A reading on the side away from methanol is an error: it makes the limit no better.
        text.say("No methanol is shown; less than {} % of the alcohol cannot be seen ({:g} %).",
                 sized((std::max)(budget.estimate, 0.0) + half, half), 100.0 * confidence);
    }
    text.gap();
    text.row("alcohols", "{:.2f} % mass together", found.alcohol.percent());
    say_index(text, words, n);
    say_density(text, words, rho);
    text.row("sensitivity", "0.0001 in the index is {:.2f} % of the alcohol", 0.01 * found.share_per_index);
    text.gap();
    text.say(
        "This finds substitution, not the limits of law: those are 0.01 to 2 % of the alcohol, far below.");
    text.say("It says nothing about a spirit with sugar: 0.1 g/L is 0.000015 in the index.");
    text.say("Caution: this is no test of safety. Have doubtful spirit examined by a laboratory.");
    s.answer(text, {{"methanol_percent_of_alcohol_mass", budget.estimate},
                    {"expanded_uncertainty_percent", half},
                    {"confidence", confidence},
                    {"alcohols_percent_mass", found.alcohol.percent()},
                    {"refractive_index_20C", n.value()},
                    {"density_kg_m3_20C", rho.value()}});
}

void by_two_readings(session& s, options const& o, refractive_index n) {
    units::mass_density const rho = read_density_at_20(o.gravity);
    auto const water = density(mass_fraction(0.0), celsius(20.0));
    auto const gravity = on_behalf_of(o.gravity, [&] { return specific_gravity(in(rho, water)); });
    wash const found =
        as_read(o, [&] { return wash_from_gravity_and_index(litre, gravity, n, celsius(20.0)); });
    double const confidence = read_confidence(o.confidence);
    std::vector<input_quantity> const inputs{
        input_quantity::rectangular("density", "kg/m3", rho.value(), density_error(o.gravity_error)),
        input_quantity::rectangular("refractometer", "1", n.value(), index_error(o.reading_error, n)),
        refraction_error(),
    };
    model_of::alcohol_and_extract<double> const near{in(found.liquid().ethanol(), found.mass()),
                                                     found.extract().value()};
    double const pure = density(mass_fraction(1.0), celsius(20.0)).value();
    auto const strength = [&near, pure](auto const& x) {
        return 100.0 * model_of::from_density_and_index(x[0], x[1] + x[2], near).alcohol * x[0] / pure;
    };
    auto const extract = [&near](auto const& x) {
        return 100.0 * model_of::from_density_and_index(x[0], x[1] + x[2], near).extract;
    };
    uncertainty_budget const alcohol = propagate(strength, inputs), solids = propagate(extract, inputs);
    double const half = alcohol.expanded_uncertainty(confidence),
                 half_solids = solids.expanded_uncertainty(confidence);
    wording const words = s.words();
    double const per_percent = to_reference(words, found), half_shown = per_percent * half;
    page text;
    text.say("The wash holds {} {} and {} °P, give or take {} and {} ({:g} %).",
             sized(per_percent * alcohol.estimate, half_shown), strength_unit(words),
             sized(solids.estimate, half_solids), sized(half_shown, half_shown),
             sized(half_solids, half_solids), 100.0 * confidence);
    text.gap();
    text.row("alcohol", "{:.2f} % mass", alcohol.estimate * pure / rho.value());
    say_index(text, words, n);
    say_density(text, words, rho);
    for (auto const& line : alcohol.lines)
        if (line.share > 0.005)
            text.row("uncertainty", "{:.0f} % from the {}", 100.0 * line.share, line.input.name());
    json data{{"strength_percent_vol_20C", alcohol.estimate},
              {"alcohol_percent_mass", alcohol.estimate * pure / rho.value()},
              {"extract_P", solids.estimate},
              {"expanded_uncertainty_percent_vol", half},
              {"expanded_uncertainty_P", half_solids},
              {"confidence", confidence},
              {"refractometer_Bx", brix_or_null(n)},
              {"refractive_index_20C", n.value()},
              {"density_kg_m3_20C", rho.value()}};
    if (o.original.present) {  // the same wash by the balance of its fermentation, twice
        specific_gravity const original = read_original_gravity(o.original);
        auto const by_gravity =
            on_behalf_of({{argument::specific_gravity, o.gravity},
                          {argument::final_gravity, o.gravity},
                          {argument::original_extract, o.original}},
                         [&] { return fermented_wash(litre, original, gravity, celsius(20.0)); });
        auto const by_index = on_behalf_of(
            {{argument::refractometer_reading, o.reading}, {argument::original_extract, o.original}},
            [&] { return fermented_wash(litre, original, brix_of(n), celsius(20.0)); });
        text.row("original, gravity", "{:.2f} {} and {:.2f} °P, without the refractometer",
                 to_reference(words, by_gravity) * by_gravity.strength().percent(), strength_unit(words),
                 by_gravity.extract().degrees());
        text.row("original, index", "{:.2f} {} and {:.2f} °P, without the gravity",
                 to_reference(words, by_index) * by_index.strength().percent(), strength_unit(words),
                 by_index.extract().degrees());
        data["by_original_and_gravity_percent_vol_20C"] = by_gravity.strength().percent();
        data["by_original_and_reading_percent_vol_20C"] = by_index.strength().percent();
    }
    text.gap();
    text.say("{}", sucrose_only);
    text.say("{}", additive_volumes);
    s.answer(text, data);
}

/// Change of the strength with a tenth of a degree of the refractometer, % vol.
std::optional<double> tenth_of_a_degree(specific_gravity original, brix shown, wash const& now) {
    for (double const step : {-0.1, 0.1}) {
        try {
            wash const other = fermented_wash(litre, original, brix(shown.degrees() + step), celsius(20.0));
            return std::abs(other.strength().percent() - now.strength().percent());
        } catch (refusal const&) {  // beyond an end: the step the other way is within
        }
    }
    return std::nullopt;
}

void by_original(session& s, options const& o, refractive_index n) {
    for (given const* each : {&o.reading_error, &o.gravity_error, &o.confidence})
        if (each->present) refuse(*each, "needs --gravity");
    specific_gravity const original = read_original_gravity(o.original);
    wash const now = on_behalf_of({{argument::refractometer_reading, o.reading},
                                   {argument::refractive_index, o.reading},
                                   {argument::extract, o.original},
                                   {argument::specific_gravity, o.original},
                                   {argument::original_extract, o.original}},
                                  [&] { return fermented_wash(litre, original, brix_of(n), celsius(20.0)); });
    wording const words = s.words();
    page text;
    text.say("The wash holds {:.1f} {} and {:.1f} °P.", to_reference(words, now) * now.strength().percent(),
             strength_unit(words), now.extract().degrees());
    text.gap();
    say_index(text, words, n);
    text.row("before", "{:.2f} °P, gravity {:.4f}", apparent_extract_of(original).degrees(),
             original.value());
    text.row("gravity now", "{:.4f}, as a hydrometer would show at {}", now.specific_gravity().value(),
             at_20(words));
    if (std::optional<double> const slope = tenth_of_a_degree(original, brix_of(n), now))
        text.row("0.1 °Bx", "is {:.2g} % vol", *slope);
    text.gap();
    text.say("{}", sucrose_only);
    text.say("Balling's balance joins alcohol and extract; --gravity measures them apart.");
    s.answer(text, {{"strength_percent_vol_20C", now.strength().percent()},
                    {"extract_P", now.extract().degrees()},
                    {"refractometer_Bx", brix_or_null(n)},
                    {"refractive_index_20C", n.value()},
                    {"original_gravity_20_20C", original.value()},
                    {"gravity_20_20C", now.specific_gravity().value()}});
}

void run(session& s) {
    options const o{
        s.option("--reading", "READING", "of the refractometer at 20 C: 'N brix', or an index, '1.3450'"),
        s.option("--gravity", "DENSITY", "with --reading: density at 20 C, in kg/m3, g/cm3, sg or plato"),
        s.option("--original", "GRAVITY",
                 "with --reading: gravity before fermentation, in sg, plato or brix"),
        s.flag("--methanol", "with --reading and --gravity of a spirit without sugar: look for methanol"),
        s.option("--strength", "STRENGTH", "instead of --reading: a spirit, to predict the reading"),
        s.option("--sugar", "CONCENTRATION", "with --strength: its sugar, 'N g/L' or 'N g/100 mL'"),
        s.option("--kind", "SUGAR", "with --sugar: sucrose, glucose, fructose or 'invert sugar'", "sucrose"),
        s.option("--reading-error", "ERROR", "limits of error of the refractometer", "0.2 brix"),
        s.option("--gravity-error", "ERROR", "limits of error of the density", "0.5 kg/m3"),
        s.option("--confidence", "SHARE", "coverage probability", "95 %")};
    s.explain("All readings are for 20 C: no index at another temperature could be read in a source.");
    s.carry_on({{o.strength, carried::strength, {o.reading}},
                fillable(o.sugar, carried::sugar).beside(o.strength),
                fillable(o.original, carried::original_gravity).beside(o.reading)});
    s.offer_us_units();
    s.parse();
    if (o.reading.present == o.strength.present) throw bad_input("give either --reading or --strength");
    if (o.strength.present) return predict(s, o);
    if (o.sugar.present) refuse(o.sugar, "needs --strength");
    if (o.kind.present) refuse(o.kind, "needs --strength");
    refractive_index const n = index_of(read_refraction(o.reading));
    if (o.methanol) return find_it(s, o, n);
    if (o.gravity.present) return by_two_readings(s, o, n);
    if (o.original.present) return by_original(s, o, n);
    throw bad_input("give --gravity or --original beside --reading");
}

program::task const offered{who, run};

}  // namespace
