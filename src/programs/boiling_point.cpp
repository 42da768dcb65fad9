// SPDX-License-Identifier: BSL-1.0
// The boiling point of a liquid and the vapour over it, or the dew point of a vapour and the liquid under it.
#include "boiling.hpp"

namespace {

using namespace program;

about const who{
    "boiling_point",
    topic::in_still,
    "How hot does it boil, how strong is its vapour?",
    "Computes the boiling point of a liquid and the strength of its first vapour. With --vapour: the\n"
    "temperature at which a vapour begins to condense and the strength of the first liquid.",
    "The Quillbeck teaching stillhouse, 650 m above the sea, fills its pot with 20 L of 8 % vol:\n"
    "  $ aqueth boiling_point --strength '8 %vol' --altitude '650 m' --amount '20 L'\n"
    "  Boils at 91.3 °C; the first distillate has 50.9 % vol (48.3 % vol to 53.3 % vol).",
    boiling_sources()};

/// Heat to bring a charge to the boil, if the caloric range allows.
std::optional<units::energy> heat_to_boil(given const& amount, given const& temperature,
                                          equilibrium const& e) {
    mass_fraction const w = to<mass_fraction>(e.liquid);
    parcel const charge = make_parcel(read_amount(amount), w, temperature);
    auto const cold = on_behalf_of(temperature, [&] {
        require_range("heat", "temperature", charge.temperature().celsius(), "°C",
                      model::enthalpy::lowest_celsius, e.temperature.celsius(), "up to the boil");
        return enthalpy_of_liquid(w, charge.temperature());
    });
    try {
        return charge.mass() * (enthalpy_of_liquid(w, e.temperature) - cold);
    } catch (refusal const&) {
        return std::nullopt;
    }
}

/// Heat that a condenser takes from a vapour that leaves it with a temperature, if the caloric range allows.
std::optional<double> kilojoules_per_kilogram(equilibrium const& e, units::temperature leaving) {
    try {
        auto const heat =
            enthalpy_of_vapour(e.vapour, e.temperature, e.pressure) - enthalpy_of_liquid(e.vapour, leaving);
        return heat.value() / 1000.0;
    } catch (refusal const&) {
        return std::nullopt;
    }
}

void run(session& s) {
    given const& liquid = s.option("--strength", "STRENGTH", "strength of the liquid");
    given const& vapour =
        s.option("--vapour", "STRENGTH", "instead of --strength: strength of the vapour, once condensed");
    surroundings const air = s.surroundings_options();
    given const& amount =
        s.option("--amount", "AMOUNT", "amount of liquid, to compute the heat up to the boil");
    given const& temperature =
        s.option("--temperature", "TEMP", "with --amount: temperature of the cold liquid", "20 C", "60 F");
    s.carry_on({{liquid, carried::strength, {vapour}},
                {amount, carried::weighed, {vapour}},
                fillable(temperature, carried::temperature).beside(amount)});
    s.offer_us_units();
    s.parse();
    if (liquid.present == vapour.present) throw bad_input("give either --strength or --vapour");
    if (amount.present && !liquid.present) throw bad_input("--amount needs --strength");
    if (temperature.present && !amount.present) throw bad_input("--temperature needs --amount");

    units::pressure const p = read_pressure(air);
    mass_fraction const w = composition(read_strength(liquid.present ? liquid : vapour));
    equilibrium const e =
        on_behalf_of(air.decisive(), [&] { return liquid.present ? bubble_point(w, p) : dew_point(w, p); });

    wording const words = s.words();
    auto const doubt = liquid.present ? doubt_about_vapour(e) : doubt_about_liquid(e);
    page text;
    if (liquid.present) {
        text.say("Boils at {}; the first distillate has {}{}.", words.rounded(e.temperature),
                 words.rounded(e.vapour), in_brackets(words, doubt));
    } else {
        text.say("Begins to condense at {}; the first liquid has {}{}.", words.rounded(e.temperature),
                 words.rounded(e.liquid), in_brackets(words, doubt));
    }
    text.gap();
    text.row("pressure", "{}", air_in_words(words, air, p));
    text.row(liquid.present ? "boils at" : "condenses from", "{}", words.exact_temperature(e.temperature));
    text.row("liquid", "{}", words.fractions(e.liquid));
    if (vapour.present) say_doubt(text, words, doubt);
    text.row("vapour", "{}", words.fractions(e.vapour));
    if (liquid.present) say_doubt(text, words, doubt);
    text.row("volatility", "{}, ethanol relative to water", number(e.relative_volatility, 4));
    say_azeotrope(text, words, p);
    json data = {{"pressure_kPa", in(p, kilopascal)},
                 {"temperature_C", e.temperature.celsius()},
                 {"liquid", to_json(e.liquid)},
                 {"vapour", to_json(e.vapour)},
                 {liquid.present ? "uncertainty_of_vapour" : "uncertainty_of_liquid", to_json(doubt)},
                 {"relative_volatility", e.relative_volatility},
                 {"azeotrope", azeotrope_to_json(p)}};
    if (amount.present) {
        if (auto const heat = heat_to_boil(amount, temperature, e)) {
            parcel const charge = make_parcel(read_amount(amount), w, temperature);
            text.row("to the boil", "{} kWh, {} Wh per {}; pot and losses come on top",
                     number(in(*heat, kilowatt_hour)),
                     number(1000.0 * in(*heat, kilowatt_hour) / in(charge.volume(), words.one_volume())),
                     words.one_volume_name());
            data["heat_to_boil_kJ"] = in(*heat, kilojoule);
        }
    }
    units::temperature const condensed = bubble_point(e.vapour, p).temperature;
    auto const condensing = kilojoules_per_kilogram(e, condensed);
    units::temperature const cool = words.reference_temperature();
    auto const cooling = kilojoules_per_kilogram(e, cool);
    if (condensing && cooling) {
        auto const per_volume = [&](double kilojoules) {
            units::mass const distillate = words.one_volume() * density(e.vapour, cool);
            return number(in(distillate, kilogram) * kilojoules / 3600.0, 3);
        };
        // Under a low pressure it condenses colder than that.
        std::string const cooled = condensed > cool
                                       ? fmt::format(", {} kWh if it also cools it to {}",
                                                     per_volume(*cooling), words.temperature(cool))
                                       : "";
        text.row("condenser takes", "{} kWh per {} of distillate{}", per_volume(*condensing),
                 words.one_volume_name(), cooled);
        data["condensing_kJ_per_kg"] = *condensing;
        data["condensing_and_cooling_to_20C_kJ_per_kg"] =
            condensed > celsius(20) ? json(*kilojoules_per_kilogram(e, celsius(20))) : json();
    }
    text.gap();
    if (doubt && e.liquid.value() > 0.0 && e.liquid.value() <= 0.1) {
        text.say("Over liquids this weak, most measured vapours are weaker than the model's.");
    }
    text.say("These figures are for ethanol and water alone. Dissolved solids raise the boiling point of a "
             "wash by\n{}.",
             what_a_wash_adds(words));
    text.say("{}", still_caution);
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
