// SPDX-License-Identifier: BSL-1.0
// Water and sugar for a liqueur, and what instruments show in it.
#include "sugar_program.hpp"

#include <concepts>
#include <string>
#include <variant>

namespace {

using namespace program;

about const who{
    "sweeten_spirit",
    topic::to_strength,
    "How much water and sugar turn a spirit into a liqueur?",
    "Computes the water and sugar that turn a spirit into a liqueur, and what instruments show in it.",
    "The Quillbeck teaching stillhouse makes 5 L of 28 % vol with 250 g/L from spirit of 75 % vol at 21 °C:\n"
    "  $ aqueth sweeten_spirit --make '5 L' --strength '75 %vol' --temperature '21 C' --target '28 %vol' "
    "--sugar "
    "'250 g/L'\n"
    "  Add 1.249 kg of sucrose and 2.416 kg of water by the balance.",
    {model::sugar_solution::cited, model::refraction::cited, correlation::sucrose_density::cited,
     correlation::oiml_r22::cited}};

/// The reading on an instrument, or why there is none.
template <class Scale>
std::string shown(hydrometer<Scale> const& meter, sweetened const& liqueur, char const* unit) {
    try {
        Scale const mark = reading(meter, liqueur);
        if constexpr (std::same_as<Scale, us_proof>) {
            return fmt::format("{:.1f} {}", mark.degrees(), unit);
        } else if constexpr (strength_basis<Scale>) {
            return fmt::format("{:.1f} {}", mark.percent(), unit);
        } else {
            return fmt::format("{:.1f} {}", in(mark, kilogram_per_cubic_metre), unit);
        }
    } catch (refusal const&) {
        return "nothing: the liqueur is denser than water";
    }
}

/// Up to here wines were analysed with their sugar dissolved, % vol.
constexpr double strongest_analysed = 100.0 * plain::analysed_liquids.front().volume_fraction;

void run(session& s) {
    given const& amount =
        s.option("--amount", "AMOUNT", "spirit at hand: volume at its temperature, or mass");
    given const& make =
        s.option("--make", "VOLUME", "instead of --amount: wanted volume of the liqueur at 20 C");
    given const& strength = s.required("--strength", "STRENGTH", "true strength of the spirit");
    given const& at =
        s.option("--temperature", "TEMP", "temperature of the spirit, 0 to 40 C", "20 C", "60 F");
    given const& target = s.required("--target", "STRENGTH", "strength wanted, of the whole");
    given const& sugar =
        s.required("--sugar", "CONCENTRATION", "sugar wanted at 20 C: 'N g/L' or 'N g/100 mL'");
    given const& kind =
        s.option("--kind", "SUGAR", "sucrose, glucose, fructose or 'invert sugar'", "sucrose");
    s.explain("Sugar is without water of crystallization. Nothing is said about freezing or boiling.");
    s.carry_on(
        {{amount, carried::weighed, {make}}, {strength, carried::strength}, {at, carried::temperature}});
    s.offer_us_units();
    s.parse();
    if (amount.present == make.present) throw bad_input("give either --amount or --make");

    sweetener const which = read_sweetener(kind);
    units::mass_density const concentration = read_sugar_concentration(sugar);
    auto const wanted_strength =
        std::visit([](auto const& each) { return to<volume_fraction>(each); }, read_strength(target));
    mass_fraction const w = composition(read_strength(strength));
    units::temperature const t = read_any_temperature(at);
    sweetening_plan const plan = on_behalf_of(
        {{argument::temperature, at},
         {argument::mass_fraction, strength},
         {argument::alcoholic_strength_by_volume, target},
         {argument::sugar_concentration, sugar}},
        [&] {
            if (make.present) {
                return sweeten(read_volume(make), wanted_strength, concentration, liquid::of(w, t), which);
            }
            return sweeten(make_parcel(read_amount(amount), w, at), wanted_strength, concentration, which);
        });

    wording const words = s.words();
    sweetened const& liqueur = plan.product;
    units::mass_density const water = density(mass_fraction(0.0), celsius(20.0));
    page text;
    text.say("Add {} of {} and {} of water by the balance.", words.weight(plan.sugar, crystals),
             name_of(which), words.weight(plan.water, water));
    text.gap();
    text.row("spirit", "{}", words.liquid(plan.spirit));
    text.row("liqueur", "{} of {} with {} at {}", words.volume(liqueur.volume()),
             words.strength(to<mass_fraction>(liqueur.strength())),
             in_words(words, liqueur.sugar_concentration()), words.temperature(liqueur.temperature()));
    text.row("density", "{} at {}", words.density(liqueur.density()),
             words.temperature(liqueur.temperature()));
    say_contraction(text, words, plan.contraction, "");
    text.row("sugar adds", "{}", words.volume(plan.volume_of_the_sugar));
    text.gap();
    text.say("At {} instruments show, if the volumes are right:",
             words.temperature(words.reference_temperature()));
    if (words.us) {
        text.row("proof hydrometer", "{}",
                 shown(proof_hydrometer{}, liqueur.at(words.reference_temperature()), "US proof"));
    } else {
        text.row("alcoholometer", "{}", shown(alcoholometer{}, liqueur, "% vol"));
        text.row("density meter", "{}", shown(density_hydrometer(celsius(20.0)), liqueur, "kg/m3"));
    }
    json refractometer;
    try {
        refractive_index const n = refractive_index_of(liqueur);
        text.row("refractometer", "{:.1f} °Bx{} (alcohol bends light too)", brix_of(n).degrees(),
                 words.us ? " at 68 °F" : "");
        refractometer = brix_of(n).degrees();
    } catch (refusal const&) {  // beyond the tables of the index
    }
    text.gap();
    say_sugar_doubt(text, words, liqueur);
    if (plan.sugar > units::mass() && liqueur.strength() > by_volume(strongest_analysed))
        text.say(
            "Spirit dissolves less sugar than its water alone does; how much less is not known here. Try a "
            "small\nsample first: this recipe may not dissolve.");
    text.say("{}", vapour_caution);
    s.answer(text, {{"name", "liqueur"},
                    {"sugar", name_of(which)},
                    {"sugar_kg", in(plan.sugar, kilogram)},
                    {"sugar_balance_indication_kg", in(balance_indication(plan.sugar, crystals), kilogram)},
                    {"water_kg", in(plan.water, kilogram)},
                    {"water_balance_indication_kg", in(balance_indication(plan.water, water), kilogram)},
                    {"spirit", to_json(plan.spirit)},
                    {"volume_L_20C", in(liqueur.volume(), litre)},
                    {"mass_kg", in(liqueur.mass(), kilogram)},
                    {"strength_percent_vol_20C", liqueur.strength().percent()},
                    {"sugar_g_L_20C", liqueur.sugar_concentration().value()},
                    {"density_kg_m3_20C", liqueur.density().value()},
                    {"contraction_L", in(plan.contraction, litre)},
                    {"volume_of_the_sugar_L", in(plan.volume_of_the_sugar, litre)},
                    {"refractometer_Bx", refractometer},
                    {"checked_by_analyses", liqueur.checked_by_analyses()},
                    {"strength_doubt_percent_vol", 100.0 * liqueur.strength_doubt()}});
}

program::task const offered{who, run};

}  // namespace
