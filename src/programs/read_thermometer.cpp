// SPDX-License-Identifier: BSL-1.0
// Strengths from the thermometers of a still, and their uncertainty.
#include "boiling.hpp"

#include <utility>

namespace {

using namespace program;

about const who{
    "read_thermometer",
    topic::in_still,
    "What do the temperatures of pot and head mean?",
    "Computes the strength of liquid and distillate from the temperature of the boiling pot or of the\n"
    "vapour at the head, and the effect of an error of the thermometer.",
    "The Quillbeck teaching stillhouse, 650 m above the sea, reads 93.4 °C in the pot, 85 °C at the head:\n"
    "  $ aqueth read_thermometer --pot '93.4 C' --head '85 C' --altitude '650 m'\n"
    "  Pot: the liquid has 5.0 % vol, the vapour over it 39.5 % vol (36.8 % vol to 42.0 % vol).",
    boiling_sources()};

/// Everything that boils under a pressure, from water to the azeotrope.
struct boiling_range {
    units::pressure pressure;
    equilibrium weakest = bubble_point(mole_fraction(0.0), pressure);
    equilibrium strongest = azeotrope_at(pressure).value_or(bubble_point(mole_fraction(1.0), pressure));

    equilibrium at(given const& g, units::temperature t) const {
        std::string const why =
            "from the azeotrope, or ethanol, to water under " + wording{}.pressure(pressure);
        return on_behalf_of(g, [&] {
            require_range("boiling", "temperature", t.celsius(), "°C", strongest.temperature.celsius(),
                          weakest.temperature.celsius(), why);
            return coexistence(t, pressure);
        });
    }
    /// For thermometers that may be wrong: beyond an end, that end.
    equilibrium near(units::temperature t) const {
        if (t <= strongest.temperature) return strongest;
        if (t >= weakest.temperature) return weakest;
        return coexistence(t, pressure);
    }
};

/// A thermometer, and which of liquid and vapour it tells of.
struct thermometer {
    units::temperature shows;
    equilibrium state;
    mole_fraction equilibrium::*what;

    /// The range of strengths, the weaker first, for a reading too high or too low by this much.
    std::pair<mole_fraction, mole_fraction> off_by(boiling_range const& range,
                                                   units::temperature_difference off) const {
        return {range.near(shows + off).*what, range.near(shows - off).*what};
    }
    /// The same if there is less or more pressure than was believed.
    std::pair<mole_fraction, mole_fraction> under(boiling_range const& less,
                                                  boiling_range const& more) const {
        return {less.near(shows).*what, more.near(shows).*what};
    }
};

inline constexpr units::temperature_difference tenth_of_a_kelvin = 0.1 * kelvins;
inline constexpr units::temperature_difference half_a_kelvin = 0.5 * kelvins;

/// How far two ordinary thermometers may disagree at one temperature: half a kelvin each.
inline constexpr units::temperature_difference thermometers_differ = 1.0 * kelvins;

/// How much a tenth of a kelvin is worth: half of what lies between one too high and one too low.
double worth_of(std::pair<mole_fraction, mole_fraction> const& tenth, wording const& words) {
    return 0.5 * (words.strength_number(tenth.second) - words.strength_number(tenth.first));
}
/// More than 0.5 % vol a tenth of a kelvin: then a thermometer is no alcoholometer.
bool tells_strength(std::pair<mole_fraction, mole_fraction> const& tenth) {
    return worth_of(tenth, wording{}) < 0.5;
}

void say(page& text, json& data, wording const& words, thermometer const& one, boiling_range const& range) {
    bool const pot = one.what == &equilibrium::liquid;
    text.row(pot ? "pot" : "head", "{}", words.exact_temperature(one.shows));
    text.row("  liquid", "{}{}", words.fractions(one.state.liquid),
             pot ? "" : ": the reflux, if it wets the bulb");
    text.row("  vapour", "{}{}", words.fractions(one.state.vapour), pot ? "" : ": the distillate");
    auto const doubt = doubt_about_vapour(one.state);
    say_doubt(text, words, doubt);
    json row = {{"temperature_C", one.shows.celsius()},
                {"liquid", to_json(one.state.liquid)},
                {"vapour", to_json(one.state.vapour)},
                {"uncertainty_of_vapour", to_json(doubt)}};
    auto const maybe = [&](std::string const& label, char const* key,
                           std::pair<mole_fraction, mole_fraction> const& between) {
        text.row(label, "{} to {}", words.strength(between.first), words.strength(between.second));
        row[key] = {percent_vol(between.first), percent_vol(between.second)};
    };
    auto const off = [&](units::temperature_difference d) {
        return fmt::format("  if {} off", words.difference(d));
    };
    auto const tenth = one.off_by(range, tenth_of_a_kelvin);
    maybe(off(tenth_of_a_kelvin), "percent_vol_if_off_by_0.1K", tenth);
    maybe(off(half_a_kelvin), "percent_vol_if_off_by_0.5K", one.off_by(range, half_a_kelvin));
    try {
        maybe("  pressure ± 1 %", "percent_vol_if_pressure_off_by_1_percent",
              one.under({0.99 * range.pressure}, {1.01 * range.pressure}));
    } catch (refusal const&) {  // at the ends of what the library knows
    }
    row["tells_strength"] = tells_strength(tenth);
    data[pot ? "pot" : "head"] = row;
}

/// Warnings about figures that are less certain than they look.
void warn(page& text, wording const& words, thermometer const& one, boiling_range const& range) {
    char const* const where = one.what == &equilibrium::liquid ? "Pot" : "Head";
    auto const tenth = one.off_by(range, tenth_of_a_kelvin);
    if (!tells_strength(tenth)) {
        text.say("{}: an error of {} changes the strength by {:.1f} {}. Cool a sample and read its strength.",
                 where, words.difference(tenth_of_a_kelvin), worth_of(tenth, words), words.strength_unit());
    }
    units::temperature const ethanol = bubble_point(mole_fraction(1.0), range.pressure).temperature;
    if (range.strongest.liquid < mole_fraction(1.0) && one.shows <= ethanol) {
        auto const beyond = coexistence(one.shows, range.pressure, azeotrope_side::ethanol_rich);
        text.say("{}: {} has this temperature too, but only dehydrated spirit is that strong.", where,
                 words.strength(beyond.*one.what));
    }
}

void run(session& s) {
    given const& pot = s.option("--pot", "TEMP", "temperature of the boiling liquid");
    given const& head = s.option("--head", "TEMP", "temperature of the vapour that goes to the condenser");
    surroundings const air = s.surroundings_options();
    s.offer_us_units();
    s.parse();
    if (!pot.present && !head.present) throw bad_input("give --pot or --head, or both");

    units::pressure const p = read_pressure(air);
    boiling_range const range = on_behalf_of(air.decisive(), [&] { return boiling_range{p}; });
    std::vector<thermometer> both;
    auto const read = [&](given const& g, mole_fraction equilibrium::*what) {
        if (!g.present) return;
        units::temperature const t = read_any_temperature(g);
        both.push_back({t, range.at(g, t), what});
    };
    read(pot, &equilibrium::liquid);
    read(head, &equilibrium::vapour);

    wording const words = s.words();
    if (both.size() == 2 && both[1].shows > both[0].shows + thermometers_differ) {
        throw bad_input(
            fmt::format("--head '{}' is hotter than --pot '{}', which is impossible: were the two swapped?",
                        printable(trimmed(head.text)), printable(trimmed(pot.text))));
    }
    page text;
    for (thermometer const& one : both) {
        if (one.what == &equilibrium::liquid) {
            text.say("Pot: the liquid has {}, the vapour over it {}{}.", words.rounded(one.state.liquid),
                     words.rounded(one.state.vapour), in_brackets(words, doubt_about_vapour(one.state)));
        } else {
            text.say("Head: the distillate has {}{}.", words.rounded(one.state.vapour),
                     in_brackets(words, doubt_about_vapour(one.state)));
        }
    }
    text.gap();
    text.row("pressure", "{}", air_in_words(words, air, p));
    json data = {{"pressure_kPa", in(p, kilopascal)}};
    for (thermometer const& one : both) say(text, data, words, one, range);
    say_azeotrope(text, words, p);
    data["azeotrope"] = azeotrope_to_json(p);
    text.gap();
    for (thermometer const& one : both) warn(text, words, one, range);
    if (both.size() == 2 && both[1].shows > both[0].shows) {
        text.say("The head is hotter than the pot: one thermometer is wrong, or is in the wrong place.");
    }
    text.say("Valid while the pot boils and the bulb is wet with the liquid or vapour measured. Dissolved "
             "solids of\n"
             "a wash raise the temperature of the pot by {}.\n{}",
             what_a_wash_adds(words), still_caution);
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
