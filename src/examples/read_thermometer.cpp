// SPDX-License-Identifier: BSL-1.0
// What thermometers in a still say of the liquid and of the distillate, and how little they can say.
#include "boiling.hpp"

#include <utility>

namespace {

using namespace program;

about const who{
    "read_thermometer",
    "Tells what the temperature of the boiling pot, or of the vapour at the head, means: how strong\n"
    "the liquid and the distillate are, and what an error of the thermometer does to that.",
    "The Quillbeck teaching stillhouse, 650 m above the sea, reads 93.4 °C in the pot, 85 °C at the head:\n"
    "  $ read_thermometer --pot '93.4 C' --head '85 C' --altitude '650 m'\n"
    "  Pot: the liquid has 5.0 % vol, the vapour over it 39.5 % vol.",
    boiling_sources()};

double percent_vol(mole_fraction x) { return to<volume_fraction>(x).percent(); }

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

    /// The strengths in % vol that it may mean, the weaker first, if it is so much too high or too low.
    std::pair<double, double> off_by(boiling_range const& range, units::temperature_difference off) const {
        return {percent_vol(range.near(shows + off).*what), percent_vol(range.near(shows - off).*what)};
    }
    /// The same if there is less or more pressure than was believed.
    std::pair<double, double> under(boiling_range const& less, boiling_range const& more) const {
        return {percent_vol(less.near(shows).*what), percent_vol(more.near(shows).*what)};
    }
};

/// More than 0.5 % vol a tenth of a kelvin: then a thermometer is no alcoholmeter.
bool tells_strength(std::pair<double, double> tenth) { return tenth.second - tenth.first < 1.0; }

void say(page& text, json& data, wording const& words, thermometer const& one, boiling_range const& range) {
    bool const pot = one.what == &equilibrium::liquid;
    text.row(pot ? "pot" : "head", "{}", words.exact_temperature(one.shows));
    text.row("  liquid", "{}{}", words.fractions(one.state.liquid),
             pot ? "" : ": what runs back, if it wets the bulb");
    text.row("  vapour", "{}{}", words.fractions(one.state.vapour), pot ? "" : ": the distillate");
    json row = {{"temperature_C", one.shows.celsius()},
                {"liquid", to_json(one.state.liquid)},
                {"vapour", to_json(one.state.vapour)}};
    auto const maybe = [&](char const* label, char const* key, std::pair<double, double> between) {
        text.row(label, "{:.2f} to {:.2f} % vol", between.first, between.second);
        row[key] = {between.first, between.second};
    };
    auto const tenth = one.off_by(range, 0.1 * kelvins);
    maybe("  if 0.1 K off", "percent_vol_if_off_by_0.1K", tenth);
    maybe("  if 0.5 K off", "percent_vol_if_off_by_0.5K", one.off_by(range, 0.5 * kelvins));
    try {
        maybe("  pressure ± 1 %", "percent_vol_if_pressure_off_by_1_percent",
              one.under({0.99 * range.pressure}, {1.01 * range.pressure}));
    } catch (range_error const&) {  // at the ends of what the library knows
    }
    row["tells_strength"] = tells_strength(tenth);
    data[pot ? "pot" : "head"] = row;
}

/// What should be known before such figures are believed.
void warn(page& text, thermometer const& one, boiling_range const& range) {
    char const* const where = one.what == &equilibrium::liquid ? "Pot" : "Head";
    auto const tenth = one.off_by(range, 0.1 * kelvins);
    if (!tells_strength(tenth)) {
        text.say("{}: a tenth of a kelvin is worth {:.1f} % vol here. Cool a sample and read its strength.",
                 where, 0.5 * (tenth.second - tenth.first));
    }
    units::temperature const ethanol = bubble_point(mole_fraction(1.0), range.pressure).temperature;
    if (range.strongest.liquid < mole_fraction(1.0) && one.shows <= ethanol) {
        auto const beyond = coexistence(one.shows, range.pressure, azeotrope_side::ethanol_rich);
        text.say("{}: {:.2f} % vol has this temperature too, but only dehydrated spirit is so strong.", where,
                 percent_vol(beyond.*one.what));
    }
}

void run(session& s) {
    given const& pot = s.option("--pot", "TEMP", "of the boiling liquid");
    given const& head = s.option("--head", "TEMP", "of the vapour that goes to the condenser");
    surroundings const air = s.surroundings_options();
    s.offer_us_units();
    s.parse();
    if (!pot.present && !head.present) throw bad_input("give --pot or --head, or both");

    units::pressure const p = read_pressure(air);
    boiling_range const range = on_behalf_of(air.decisive(), [&] { return boiling_range{p}; });
    std::vector<thermometer> both;
    auto const read = [&](given const& g, mole_fraction equilibrium::*what) {
        if (!g.present) return;
        units::temperature const t = read_any_temperature(g, g.text);
        both.push_back({t, range.at(g, t), what});
    };
    read(pot, &equilibrium::liquid);
    read(head, &equilibrium::vapour);

    wording const words = s.words();
    page text;
    for (thermometer const& one : both) {
        if (one.what == &equilibrium::liquid) {
            text.say("Pot: the liquid has {}, the vapour over it {}.", words.rounded(one.state.liquid),
                     words.rounded(one.state.vapour));
        } else {
            text.say("Head: the distillate has {}.", words.rounded(one.state.vapour));
        }
    }
    text.gap();
    text.row("pressure", "{}", air_in_words(words, air, p));
    json data = {{"pressure_kPa", in(p, kilopascal)}};
    for (thermometer const& one : both) say(text, data, words, one, range);
    say_azeotrope(text, words, p);
    data["azeotrope"] = azeotrope_to_json(p);
    text.gap();
    for (thermometer const& one : both) warn(text, one, range);
    if (both.size() == 2 && both[1].shows > both[0].shows) {
        text.say("The head is hotter than the pot: a thermometer, or the place where it sits, is wrong.");
    }
    text.say(
        "Holds while it boils, for a bulb wet with what it measures. What is dissolved in a wash makes the\n"
        "pot warmer by a tenth of a kelvin or two.\n{}",
        still_caution);
    s.answer(text, data);
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
