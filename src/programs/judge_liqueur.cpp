// SPDX-License-Identifier: BSL-1.0
// The strength of a liqueur: from a hydrometer and its sugar, or from a distilled sample; and its dry
// extract.
#include "sugar_program.hpp"
#include "uncertainty_program.hpp"

#include <optional>
#include <string>
#include <vector>

namespace {

using namespace program;

about const who{
    "judge_liqueur",
    topic::to_strength,
    "How strong is a liqueur, in spite of its sugar?",
    "Computes the strength of a liqueur from a hydrometer reading and its sugar, or from a sample that was\n"
    "distilled and made up with water; with the density also its dry extract.",
    "The Quillbeck teaching stillhouse distils 100 mL of a liqueur, makes it up to 100 mL and reads 25.3:\n"
    "  $ aqueth judge_liqueur --sample '100 mL' --made-up '100 mL' --reading '25.3 %vol' --temperature '20 "
    "C'\n"
    "  The liqueur has 25.35 % vol, give or take 0.29 (95 %).",
    {model::sugar_solution::cited, correlation::sucrose_density::cited, correlation::oiml_r22::cited,
     gum_cited}};

struct options {
    given const& reading;
    given const& temperature;
    given const& sugar;
    given const& kind;
    given const& sample;
    given const& made_up;
    given const& loss;
    given const& rho;
    given const& meter_error;
    given const& flask_error;
    given const& thermometer_error;
    given const& confidence;
    instrument scale;
};

/// The strength behind a reading in the liqueur itself.
void undo_obscuration(session& s, options const& o) {
    for (given const* each :
         {&o.loss, &o.rho, &o.meter_error, &o.flask_error, &o.thermometer_error, &o.confidence})
        if (each->present) refuse(*each, "needs --sample");
    units::temperature const t = read_any_temperature(o.temperature);
    units::mass_density const sugar = read_sugar_concentration(o.sugar);
    sweetener const kind = read_sweetener(o.kind);
    stem const meter(o.scale, o.reading);
    auto const attributed = [&](auto const& f) {
        return on_behalf_of({{argument::temperature, o.temperature},
                             {argument::sugar_concentration, o.sugar},
                             {argument::density_behind_the_reading, o.reading}},
                            f);
    };
    units::mass_density const rho = attributed([&] { return meter.density(o.reading, t); });
    volume_fraction const strength = attributed([&] { return strength_behind_sugar(rho, t, sugar, kind); });
    auto const liqueur = sweetened::of(litre, strength, sugar, t, kind);
    double const doubt = 100.0 * liqueur.strength_doubt();
    std::optional<mass_fraction> plain;  // what the reading would mean without the sugar
    try {
        plain = mass_fraction_from_density(rho, t);
    } catch (refusal const&) {  // denser than water
    }
    wording const words = s.words();
    page text;
    double const shown = words.strength_number(to<mass_fraction>(strength));
    text.say("The liqueur has {:.1f} {}, give or take {:.2g} for the sugar's volume.", shown,
             words.strength_unit(), (words.us ? 2.0 : 1.0) * doubt);
    text.gap();
    text.row("reading", "{} at {}", on_scale(meter.scale(), meter.number(o.reading)), words.temperature(t));
    text.row("density", "{} at {}", words.density(rho), words.temperature(t));
    text.row("sugar", "{} of {} at {}", in_words(words, sugar), name_of(kind),
             words.temperature(celsius(20.0)));
    if (plain) {
        text.row("obscuration", "{:.{}f} {}: without sugar the reading would mean {}",
                 shown - words.strength_number(*plain), words.us ? 1 : 2, words.strength_unit(),
                 words.strength(*plain));
    }
    text.gap();
    say_sugar_doubt(text, words, liqueur);
    text.say("{}", vapour_caution);
    s.answer(text, {{"strength_percent_vol_20C", strength.percent()},
                    {"strength_doubt_percent_vol", doubt},
                    {"checked_by_analyses", liqueur.checked_by_analyses()},
                    {"density_kg_m3", rho.value()},
                    {"temperature_C", t.celsius()},
                    {"sugar_g_L_20C", sugar.value()},
                    {"strength_without_sugar_percent_vol_20C",
                     plain ? json(to<volume_fraction>(*plain).percent()) : json()}});
}

void judge_sample(session& s, options const& o) {
    if (o.sugar.present) refuse(o.sugar, "is not needed with --sample");
    if (!o.made_up.present)
        throw bad_input("--sample needs --made-up, the volume of the distillate with its water");
    units::volume const sample = read_volume(o.sample), made_up = read_volume(o.made_up);
    units::temperature const t = read_any_temperature(o.temperature);
    sweetener const kind = read_sweetener(o.kind);
    double const lost = read_share(o.loss);
    stem const meter(o.scale, o.reading);
    mass_fraction const w = on_behalf_of({{argument::temperature, o.temperature}},
                                         [&] { return meter.composition(o.reading, t); });
    volume_fraction const strength = on_behalf_of(
        {{argument::volume_of_the_sample, o.sample},
         {argument::volume_of_the_distillate, o.made_up},
         {argument::temperature, o.temperature},
         {argument::share_lost_in_distillation, o.loss}},
        [&] {
            try {
                return strength_of_distilled_sample(sample, t, made_up, w, t, lost);
            } catch (refusal const& e) {
                if (e.code() != argument::volume_of_the_distillate || !(e.upper() < unlimited)) throw;
                refuse(o.made_up,
                       fmt::format("so much distillate of {:.2f} % vol means a sample above 95 % vol: "
                                   "with {} at most {:.4g} mL",
                                   to<volume_fraction>(w).percent(), label(o.sample), 1000.0 * e.upper()));
            }
        });
    double const confidence = read_confidence(o.confidence);
    using input = input_quantity;
    double const flask = read_millilitres(o.flask_error),
                 meter_limit = read_strength_difference(o.meter_error);
    double const distillate = to<volume_fraction>(w).percent();
    std::vector<input> const inputs{
        input::rectangular("volume of the sample", "mL", in(sample, millilitre), flask),
        input::rectangular("volume made up", "mL", in(made_up, millilitre), flask),
        input::rectangular("strength of the distillate", "% vol", distillate, meter_limit),
        input::rectangular("thermometer", "K", 0.0, read_temperature_difference(o.thermometer_error)),
        // half of what is stated as lost is the doubt of it
        input::rectangular("loss in distilling", "1", lost, 0.5 * lost),
    };
    auto const measured = [&t](auto const& x) {
        auto const shown = x[2] / 100.0;
        // an error of the thermometer moves the strength as it moves the reading of an alcoholometer
        auto const at_20 = measurement_model::mass_fraction(shown);
        auto const rho = correlation::oiml_r22::density(at_20, decltype(at_20)(t.celsius()));
        auto const read = correlation::oiml_r22::mass_fraction_from_density(
            decltype(at_20)(rho), decltype(at_20)(t.celsius() + x[3]));
        return 100.0 * measurement_model::volume_fraction_of_distilled_sample(
                           x[0], x[1], decltype(at_20)(t.celsius()), read, x[4]);
    };
    uncertainty_budget const budget =
        on_behalf_of({{argument::estimate, o.reading}}, [&] { return propagate(measured, inputs); });
    double const half = budget.expanded_uncertainty(confidence);

    wording const words = s.words();
    page text;
    double const half_shown = (words.us ? 2.0 : 1.0) * half;
    text.say("The liqueur has {} {}, give or take {} ({:g} %).",
             sized(words.strength_number(to<mass_fraction>(strength)), half_shown), words.strength_unit(),
             sized(half_shown, half_shown), 100.0 * confidence);
    text.gap();
    text.row("sample", "{} at {}", words.volume(sample), words.temperature(t));
    text.row("distillate", "{} of {}", words.volume(made_up), words.strength(w));
    json data{{"strength_percent_vol_20C", strength.percent()},
              {"expanded_uncertainty_percent_vol", half},
              {"confidence", confidence},
              {"distillate_percent_vol_20C", distillate},
              {"extract_g_L_20C", nullptr}};  // unknown without --density
    if (o.rho.present) {
        units::mass_density const rho = read_density_at_20(o.rho);
        units::mass_density const sugar =
            on_behalf_of(o.rho, [&] { return sugar_behind_density(rho, strength, kind); });
        auto const liqueur = sweetened::of(litre, strength, sugar, celsius(20.0), kind);
        text.row("dry extract", "{}, as {}, by added volumes", in_words(words, sugar), name_of(kind));
        data["extract_g_L_20C"] = sugar.value();
        data["checked_by_analyses"] = liqueur.checked_by_analyses();
        try {
            units::mass_density const tabarie = tabarie_extract(rho, strength);
            text.row("", "{}, as sucrose, by Tabarie's relation", in_words(words, tabarie));
            data["extract_by_tabarie_g_L_20C"] = tabarie.value();
        } catch (refusal const& e) {
            text.row("", "Tabarie's relation is for at most 18 % mass of ethanol");
        }
    }
    for (auto const& line : budget.lines) {
        if (line.share < 0.005) continue;
        text.row("uncertainty", "{:.0f} % from the {}", 100.0 * line.share, line.input.name());
    }
    text.gap();
    if (o.rho.present) text.say("{}", additive_volumes);
    text.say("{}", no_law);
    text.say("{}", vapour_caution);
    s.answer(text, data);
}

void run(session& s) {
    options const o{
        s.required("--reading", "STRENGTH",
                   "hydrometer reading in the liqueur, or in the made-up distillate"),
        s.required("--temperature", "TEMP", "temperature of the reading and of the volumes, 0 to 40 C"),
        s.option("--sugar", "CONCENTRATION", "sugar of the liqueur at 20 C: 'N g/L' or 'N g/100 mL'"),
        s.option("--kind", "SUGAR", "sucrose, glucose, fructose or 'invert sugar'", "sucrose"),
        s.option("--sample", "VOLUME", "instead of --sugar: volume of the sample that was distilled"),
        s.option("--made-up", "VOLUME", "volume of the distillate with the water added"),
        s.option("--loss", "SHARE", "share of the alcohol lost in distilling, 0 to 10 %", "0.2 %"),
        s.option("--density", "DENSITY", "density of the liqueur at 20 C, for its dry extract"),
        s.option("--meter-error", "STRENGTH", "limits of error of the alcoholometer", "0.15 %vol"),
        s.option("--flask-error", "VOLUME", "limits of error of either volume", "0.1 mL"),
        s.option("--thermometer-error", "TEMP", "limits of error of the thermometer", "0.5 K"),
        s.option("--confidence", "SHARE", "coverage probability", "95 %"),
        s.instrument_options()};
    s.explain("Distil slowly and cool well: what evaporates is lost. Open flames do not belong near spirit.");
    s.carry_on({{o.sugar, carried::sugar, {o.sample}}});
    s.offer_us_units();
    s.parse();
    if (o.sugar.present == o.sample.present && !o.sample.present)
        throw bad_input("give --sugar, or --sample");
    if (!o.sample.present && o.made_up.present) refuse(o.made_up, "needs --sample");
    o.sample.present ? judge_sample(s, o) : undo_obscuration(s, o);
}

program::task const offered{who, run};

}  // namespace
