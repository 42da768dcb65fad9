// SPDX-License-Identifier: BSL-1.0
// A mixture at a temperature: its vapour and whether that can be lit, how it flows, and how sound and heat
// travel in it.
#include "program.hpp"
#include "uncertainty_program.hpp"

#include <string>
#include <tuple>

namespace {

using namespace program;

about const who{
    "describe_liquid",
    topic::how_strong,
    "Can its vapour be lit? Density, viscosity and more",
    "Says whether the vapour over a liquid can be lit, and lists flash point, density, viscosity, speed\n"
    "of sound and thermal conductivity.",
    "The Quillbeck teaching stillhouse keeps a demijohn of 62 % vol in a room of 18 °C:\n"
    "  $ aqueth describe_liquid --strength '62 %vol' --temperature '18 C'\n"
    "  The vapour is close to its lower flammable limit at 18 °C: treat it as flammable.",
    {correlation::oiml_r22::cited, correlation::flammability::cited, model::excess_gibbs::cited,
     correlation::ethanol_saturation_poling::cited, model::viscosity::cited, model::sound_speed::cited,
     correlation::thermal_conductivity_melinder::cited}};

/// Where a property is known, for an answer without it.
std::string where_known(wording const& words, refusal const& e) {
    auto const [lower, upper, unit] = [&]() -> std::tuple<double, double, std::string> {
        if (words.us && e.unit() == "°C")
            return {celsius(e.lower()).fahrenheit(), celsius(e.upper()).fahrenheit(), "°F"};
        if (words.us && e.unit() == "kPa")
            return {words.pressure_number(e.lower() * kilopascal),
                    words.pressure_number(e.upper() * kilopascal), words.pressure_unit()};
        return {e.lower(), e.upper(), e.unit()};
    }();
    return fmt::format("not offered here, only for a {} of {:.4g} to {:.4g} {}", e.argument(), lower, upper,
                       unit);
}

/// One property, or why it is not known here.
template <class F>
void say_property(page& text, json& data, wording const& words, char const* label, char const* key,
                  char const* unit, int decimals, double relative_uncertainty, F const& value) {
    try {
        double const found = value();
        text.row(label, "{:.{}f} {}, standard uncertainty {:.2g} %", found, decimals, unit,
                 100.0 * relative_uncertainty);
        data[key] = found;
    } catch (refusal const& e) {
        text.row(label, "{}", where_known(words, e));
        data[key] = nullptr;
    }
}

char const* name_of(vapour_hazard hazard) {
    switch (hazard) {
    case vapour_hazard::below_lower_limit: return "below_lower_limit";
    case vapour_hazard::near_lower_limit: return "near_lower_limit";
    case vapour_hazard::above_lower_limit: break;
    }
    return "above_lower_limit";
}

void run(session& s) {
    given const& of = s.required("--strength", "STRENGTH", "strength of the liquid");
    given const& at = s.option("--temperature", "TEMP", "temperature of the liquid", "20 C", "60 F");
    surroundings const air = s.surroundings_options();
    given const& margin =
        s.option("--margin", "DIFFERENCE",
                 "how far below its lower flammable limit a vapour still counts as close to it", "15 K");
    s.carry_on({{of, carried::strength}, {at, carried::temperature}});
    s.offer_us_units();
    s.parse();

    mass_fraction const w = composition(read_strength(of));
    units::temperature const t = read_any_temperature(at);
    units::pressure const p = read_pressure(air);
    auto const allowance = read_temperature_difference(margin) * kelvins;
    vapour_hazard const hazard = on_behalf_of({{argument::temperature, at},
                                               {argument::margin_of_temperature, margin},
                                               {argument::pressure, air.decisive()}},
                                              [&] { return vapour_hazard_over(w, t, p, allowance); });

    wording const words = s.words();
    page text;
    json data = {{"temperature_C", t.celsius()}, {"pressure_kPa", in(p, kilopascal)}};
    data["vapour_hazard"] = name_of(hazard);
    switch (hazard) {
    case vapour_hazard::above_lower_limit:
        text.say("The vapour can be lit at {}: no flame, no sparks, fresh air.", words.temperature(t));
        break;
    case vapour_hazard::near_lower_limit:
        text.say("The vapour is close to its lower flammable limit at {}: treat it as flammable.",
                 words.temperature(t));
        break;
    case vapour_hazard::below_lower_limit:
        text.say("The vapour over the still liquid is too lean to burn at {}, by more than {}.",
                 words.temperature(t), words.difference(allowance));
        break;
    }
    text.gap();
    text.row("liquid", "{}", words.fractions(w));
    auto const say_temperature = [&](char const* label, char const* key, std::string const& under,
                                     auto const& value) {
        try {
            units::temperature const found = value();
            text.row(label, "{}{}, standard uncertainty {}", words.rounded(found), under,
                     words.difference(correlation::flammability::standard_uncertainty_kelvins * kelvins));
            data[key] = found.celsius();
        } catch (refusal const& e) {
            text.row(label, "{}", where_known(words, e));
            data[key] = nullptr;
        }
    };
    units::pressure const of_flash_point = 101.325 * kilopascal;
    say_temperature("flash point", "flash_point_C",
                    fmt::format(" under {} (lower in thinner air)", words.pressure(of_flash_point)),
                    [&] { return flash_point(w); });
    data["flash_point_pressure_kPa"] = in(of_flash_point, kilopascal);
    say_temperature("lower limit from", "lower_limit_temperature_C",
                    fmt::format(" under {}", words.pressure(p)),
                    [&] { return lower_flammable_temperature(w, p); });
    try {
        double const percent = 100.0 * saturated_vapour_fraction(w, t, p);
        text.row("vapour", "{:.2f} % by volume in still air; it burns from 3.1 to 19 %", percent);
        data["saturated_vapour_percent"] = percent;
    } catch (refusal const& e) {
        // the hazard above has refused every pressure but one at which the liquid boils
        text.row("vapour", "the liquid boils at {} under {}", words.rounded(bubble_point(w, p).temperature),
                 words.pressure(p));
        data["saturated_vapour_percent"] = nullptr;
    }
    try {
        auto const rho = density(w, t);
        text.row("density", "{}", words.density(rho));
        data["density_kg_m3"] = rho.value();
    } catch (refusal const& e) {
        text.row("density", "{}", where_known(words, e));
        data["density_kg_m3"] = nullptr;
    }
    say_property(text, data, words, "viscosity", "viscosity_mPa_s", "mPa s", 3,
                 model::viscosity::relative_standard_uncertainty,
                 [&] { return in(viscosity(w, t), millipascal_second); });
    say_property(text, data, words, "sound travels", "speed_of_sound_m_s", "m/s", 1,
                 model::sound_speed::relative_standard_uncertainty,
                 [&] { return in(speed_of_sound(w, t), metre_per_second); });
    say_property(text, data, words, "conducts heat", "thermal_conductivity_W_mK", "W/(m K)", 3,
                 correlation::thermal_conductivity_melinder::relative_standard_uncertainty,
                 [&] { return in(thermal_conductivity(w, t), watt_per_metre_kelvin); });
    text.gap();
    text.say(
        "These figures are for ethanol and water at rest. A spill, a mist, a wick or a hot surface burns\n"
        "earlier; a vapour too rich to burn burns where it meets more air. Local codes decide.");
    text.say("{}", vapour_caution);
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
