// SPDX-License-Identifier: BSL-1.0
// The strength of a wash from its gravities before and after fermentation, or the sugar for a new wash.
#include "still_program.hpp"
#include "sugar_program.hpp"

#include <algorithm>
#include <functional>
#include <string>
#include <variant>

namespace {

using namespace program;

about const who{
    "judge_wash",
    topic::in_wash,
    "How strong is the wash, how much sugar for the next?",
    "Computes the strength of a wash from its gravities before and after fermentation, or the sugar for a\n"
    "new wash.",
    "The Quillbeck teaching stillhouse has 25 L of sugar wash that fell from 1.085 to 0.992:\n"
    "  $ aqueth judge_wash --volume '25 L' --original '1.085 sg' --final '0.992 sg'\n"
    "  The wash holds 12.4 % vol: 3.103 L of pure alcohol in 25.00 L.",
    {correlation::sucrose_density::cited, correlation::balling::cited, correlation::balling::factors_cited,
     correlation::excise_notice_226::cited, correlation::fermentation::cited,
     aqueth::model::refraction::cited, correlation::oiml_r22::cited}};

/// Refuses the temperature beside a refractometer, which is read at 20 °C.
void require_no_temperature(given const& temperature) {
    if (temperature.present) refuse(temperature, "is for hydrometers: a refractometer is read at 20 C");
}

/// gravity at 20 °C from a reading at another temperature, in a must without alcohol
specific_gravity corrected(given const& reading, given const& temperature) {
    if (is_brix(reading)) {  // without alcohol the index is that of the sugar
        require_no_temperature(temperature);
        return read_original_gravity(reading);
    }
    specific_gravity const shown = specific_gravity_of(read_extract(reading));
    units::temperature const t = read_any_temperature(temperature);
    return on_behalf_of({{argument::temperature, temperature}}, [&] {
        return on_behalf_of({{argument::density_behind_the_reading, reading}},
                            [&] { return true_gravity(shown, t, gravity_hydrometer({})); });
    });
}

/// Sugars that can be added, as it is written and as it is called.
struct sugar_name {
    char const* written;
    char const* words;
    sugar kind;
};
constexpr sugar_name sugars[] = {
    {"sucrose", "sucrose", sugar::sucrose},
    {"glucose", "anhydrous glucose", sugar::hexose},
    {"glucose monohydrate", "glucose monohydrate", sugar::glucose_monohydrate},
    {"fructose", "fructose", sugar::hexose},
};

sugar_name const& read_sugar(given const& g) {
    for (sugar_name const& each : sugars)
        if (g.text == each.written) return each;
    refuse(g, "expected sucrose, glucose (anhydrous), glucose monohydrate (sold as dextrose) or fructose");
}

void plan_sugar(session& s, units::volume volume, given const& wanted_strength, given const& kind,
                given const& share) {
    sugar_name const& weighed = read_sugar(kind);
    auto const strength = std::visit([](auto const& each) { return to<volume_fraction>(each); },
                                     read_strength(wanted_strength));
    double const reached =
        share.present
            ? on_behalf_of(share,
                           [&] { return require_range("sugar", "yield", read_share(share), "", 0.3, 1.0); })
            : correlation::fermentation::practical_share;
    sugar_plan const plan =
        on_behalf_of(wanted_strength, [&] { return sugar_needed(volume, strength, weighed.kind, reached); });
    wording const words = s.words();
    page text;
    units::mass_density const water = density(mass_fraction(0.0), words.reference_temperature());
    text.say("Add {} of {} and {} of water.", words.weight(plan.practical, crystals), weighed.words,
             words.weight(plan.water, water));
    text.gap();
    text.row("wash", "{} of {}", words.volume(volume), words.strength(to<mass_fraction>(strength)));
    text.row("minimum", "{} in theory, if yeast made only alcohol and carbon dioxide",
             words.weight(plan.least, crystals));
    text.row("yield assumed", "{:.3g} %", 100.0 * reached);
    if (weighed.kind == sugar::glucose_monohydrate) {
        units::mass const bound = plan.practical * (correlation::molar_mass::water /
                                                    correlation::fermentation::glucose_monohydrate);
        text.row("in the crystals", "{} of water, already subtracted from the water above",
                 words.mass(bound));
    } else if (kind.text == "glucose") {
        text.row("sold as dextrose", "is mostly the monohydrate: give --sugar 'glucose monohydrate'");
    }
    text.row("before", "{:.2f} °P, gravity {:.4f}", plan.original.degrees(), plan.gravity.value());
    text.row("carbon dioxide", "{} given off", words.mass(plan.carbon_dioxide));
    text.gap();
    text.say("{}", gas_caution);
    s.answer(text,
             {{"sugar", weighed.words},
              {"sugar_kg", in(plan.practical, kilogram)},
              {"sugar_balance_indication_kg", in(balance_indication(plan.practical, crystals), kilogram)},
              {"sugar_stoichiometric_kg", in(plan.least, kilogram)},
              {"share_of_stoichiometric_yield", reached},
              {"water_kg", in(plan.water, kilogram)},
              {"water_balance_indication_kg", in(balance_indication(plan.water, water), kilogram)},
              {"carbon_dioxide_kg", in(plan.carbon_dioxide, kilogram)},
              {"original_extract_P", plan.original.degrees()},
              {"original_gravity_20_20C", plan.gravity.value()}});
}

/// Refuses an option that was given but that the question does not use.
void refuse_if_given(given const& g, std::string const& other) {
    if (g.present) refuse(g, "needs " + other);
}

/// calls f; returns its % vol in those of the answer, or the reason why it does not apply
template <class F>
std::string if_it_applies(double to_reference, F const& f) {
    try {
        return fmt::format("{:.2f} % vol", to_reference * f().percent());
    } catch (refusal const& e) {
        return fmt::format("does not apply ({})", e.what());
    }
}

void run(session& s) {
    given const& volume = s.required("--volume", "VOLUME", "volume of the wash");
    given const& original =
        s.option("--original", "GRAVITY", "gravity before fermentation: 'N sg', 'N plato' or 'N brix'");
    given const& original_at =
        s.option("--original-temperature", "TEMP", "temperature at the --original reading", "20 C");
    given const& last = s.option("--final", "GRAVITY", "gravity now");
    given const& last_at = s.option("--final-temperature", "TEMP", "temperature of the wash now", "20 C");
    given const& wanted_strength =
        s.option("--wanted", "STRENGTH", "instead of gravities: strength wanted of a new wash");
    given const& kind =
        s.option("--sugar", "SUGAR",
                 "with --wanted: sucrose, glucose (anhydrous), 'glucose monohydrate' or fructose", "sucrose");
    given const& share =
        s.option("--yield", "SHARE",
                 "with --wanted: share of the theoretical yield (default that of Balling, 89.9 %)");
    surroundings const air = s.surroundings_options();
    s.explain("Gravities: sg (20/20 C in vacuo) or plato, read on a hydrometer or a saccharometer; brix, "
              "read on a\n"
              "refractometer at 20 C. Alcohol bends light too, which is taken into account.");
    s.carry_on({{volume, carried::volume}});
    s.offer_us_units();
    s.parse();

    units::volume const amount = read_volume(volume);
    if (wanted_strength.present) {
        if (original.present || last.present)
            throw bad_input("--wanted cannot be used with --original and --final");
        refuse_if_given(original_at, "--original, not --wanted");
        refuse_if_given(last_at, "--final, not --wanted");
        for (given const& g : {std::cref(air.pressure), std::cref(air.altitude)})
            refuse_if_given(g, "--original and --final, not --wanted");
        return plan_sugar(s, amount, wanted_strength, kind, share);
    }
    refuse_if_given(kind, "--wanted");
    refuse_if_given(share, "--wanted");
    if (!original.present || !last.present) throw bad_input("give both --original and --final, or --wanted");
    units::pressure const pressure = read_pressure(air);

    specific_gravity const before = corrected(original, original_at);
    double const degrees = apparent_extract_of(before).degrees();
    on_behalf_of(original, [&] {
        return require_range("wash", "original extract", degrees, extract::unit, 0.01, 30.0 + 1e-9,
                             "Balling");
    });
    extract const oe((std::min)(degrees, 30.0));  // 30 plato there and back
    units::temperature const t = read_any_temperature(last_at);
    wash const now =
        on_behalf_of({{argument::temperature, last_at},
                      {argument::reading, last},
                      {argument::refractometer_reading, last}},
                     [&] {
                         if (is_brix(last)) {
                             require_no_temperature(last_at);
                             return fermented_wash(amount, before, std::get<brix>(read_refraction(last)), t);
                         }
                         return fermented_wash(amount, before, specific_gravity_of(read_extract(last)), t,
                                               gravity_hydrometer({}));
                     });
    specific_gravity const after = now.specific_gravity();
    units::temperature const boils =
        on_behalf_of(air.decisive(), [&] { return boiling_temperature(now, pressure); });
    // Not above the original, but for rounding.
    apparent_extract const ae = (std::min)(apparent_extract_of(after), apparent_extract(oe));
    extract const re = (std::min)(now.extract(), oe);

    auto const by_mass_of_wash = [&](mass_fraction a) {  // % mass of the wash to % vol of the wash
        return by_volume(100.0 * a.value() *
                         in(now.density(celsius(20)), density(mass_fraction(1.0), celsius(20))));
    };
    wording const words = s.words();
    units::temperature const reference = words.reference_temperature();
    double const to_reference = program::to_reference(words, now);
    double const strength = to_reference * now.strength().percent();
    page text;
    if (words.us) {
        text.say("The wash holds {:.1f} % vol at 60 °F: {} proof gal in {}.", strength,
                 number(now.liquid().proof_gallons()), words.volume(now.volume(reference)));
    } else {
        text.say("The wash holds {:.1f} % vol: {} of pure alcohol in {}.", strength,
                 words.volume(now.pure_alcohol()), words.volume(amount));
    }
    text.gap();
    std::string const at_20 = words.temperature(celsius(20));
    text.row("before", "{:.2f} °P, gravity {:.4f} at {}", degrees, before.value(), at_20);
    text.row("now", "{:.2f} °P apparent, gravity {:.4f} at {}", ae.degrees(), after.value(), at_20);
    text.row("real extract", "{:.2f} °P", re.degrees());
    text.row("attenuation", "{:.1f} % apparent, {:.1f} % real", 100.0 * apparent_attenuation(oe, ae),
             100.0 * real_attenuation(oe, re));
    text.row("boils at", "{} under {}", words.exact_temperature(boils), air_in_words(words, air, pressure));
    text.gap();
    text.say("Strength by several methods. Their differences show the uncertainty of a strength from two "
             "gravities:");
    text.row("Balling's balance", "{:.2f} % vol, with the density of the library, as above", strength);
    text.row("usual weights", "{}", if_it_applies(to_reference, [&] {
                 return by_mass_of_wash(alcohol_by_balling(oe, real_extract(oe, ae)));
             }));
    text.row("Balling's factors", "{}", if_it_applies(to_reference, [&] {
                 return by_mass_of_wash(alcohol_by_balling_factors(oe, ae));
             }));
    text.row("fall in gravity", "{}",
             if_it_applies(to_reference, [&] { return alcohol_by_gravity_fall(before, after); }));
    text.gap();
    text.say("{}", gas_caution);
    s.answer(text, {{"name", "wash"},
                    {"volume_L", in(now.volume(t), litre)},
                    {"temperature_C", t.celsius()},
                    {"strength_percent_vol_20C", now.strength().percent()},
                    {"pure_alcohol_L_20C", in(now.pure_alcohol(), litre)},
                    {"mass_kg", in(now.mass(), kilogram)},
                    {"balance_indication_kg", in(balance_indication(now.mass(), now.density(t)), kilogram)},
                    {"original_extract_P", degrees},
                    {"original_gravity_20_20C", before.value()},
                    {"apparent_extract_P", ae.degrees()},
                    {"final_gravity_20_20C", after.value()},
                    {"real_extract_P", re.degrees()},
                    {"apparent_attenuation", apparent_attenuation(oe, ae)},
                    {"real_attenuation", real_attenuation(oe, re)},
                    {"boiling_temperature_C", boils.celsius()},
                    {"pressure_kPa", in(pressure, kilopascal)}});
}

program::task const offered{who, run};

}  // namespace
