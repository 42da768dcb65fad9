// SPDX-License-Identifier: BSL-1.0
// The filling of a bottle that holds its label volume at 20 °C, or at 60 °F, and the number of bottles.
#include "program.hpp"

#include <cmath>
#include <string>

namespace {

using namespace program;

about const who{
    "fill_bottles",
    topic::in_bottles,
    "How many bottles, and how full?",
    "Computes how much to fill into each bottle so that it holds its label volume at the temperature\n"
    "of the label, and the number of bottles.",
    "The Quillbeck teaching stillhouse fills 3.37 L of 43 % vol at 22 °C into bottles of 350 mL:\n"
    "  $ aqueth fill_bottles --amount '3.37 L' --strength '43 %vol' --temperature '22 C' --bottle '350 mL'\n"
    "  Fill 350.5 mL at 22 °C, or 329.7 g, into each bottle: 9 bottles.",
    {correlation::oiml_r22::cited, correlation::air_buoyancy::cited, correlation::freezing_point::cited}};

/// Three digits, rounded up: a bottle that holds this holds the filling.
std::string room(double volume) {
    double const unit = std::pow(10.0, std::floor(std::log10(volume)) - 2.0);
    return number(std::ceil(volume / unit - 1e-9) * unit, 3);
}

void run(session& s) {
    given const& how_much =
        s.required("--amount", "AMOUNT", "spirit at hand: volume at its temperature, or mass");
    given const& strength = s.required("--strength", "STRENGTH", "true strength of the spirit");
    given const& temperature =
        s.required("--temperature", "TEMP", "temperature of the spirit during filling");
    given const& bottle = s.required("--bottle", "VOLUME", "volume on the label");
    given const& rule =
        s.option("--filling", "RULE", "rule for the label: eu (volume at 20 C) or us (60 F)", "eu", "us");
    s.carry_on(
        {{how_much, carried::weighed}, {strength, carried::strength}, {temperature, carried::temperature}});
    s.offer_us_units();
    s.parse();

    bool const us_label = rule.text == "us";
    if (!us_label && rule.text != "eu") refuse(rule, "expected eu or us");
    units::temperature const reference = us_label ? us_label_temperature : label_temperature;
    parcel const spirit =
        make_parcel(read_amount(how_much), composition(read_strength(strength)), temperature);
    units::temperature const t = spirit.temperature();
    units::volume const label = read_volume(bottle);
    bottling const plan = on_behalf_of({{argument::label_volume, bottle}},
                                       [&] { return aqueth::fill_bottles(spirit, label, reference); });
    wording const words = s.words();
    if (plan.count < 1.0) {
        refuse(bottle, fmt::format("larger than the whole amount: {} '{}' is {} at {}", how_much.name,
                                   printable(how_much.text), words.volume(spirit.volume(reference)),
                                   degrees(reference)));
    }
    parcel const each = spirit.with_mass(plan.fill_mass);
    units::volume const at_40 = each.volume(celsius(40));
    bool const filled_hotter = plan.fill > at_40;
    units::volume const largest = filled_hotter ? plan.fill : at_40;
    units::temperature const hottest = filled_hotter ? t : celsius(40);

    page text;
    text.say("Fill {} at {}, or {}, into each bottle: {:.0f} bottle{}.", words.volume(plan.fill),
             words.temperature(t), words.weight(each), plan.count, plan.count == 1.0 ? "" : "s");
    text.gap();
    text.row("spirit", "{}", words.liquid(spirit));
    text.row("label volume", "{} at {}", printable(trimmed(bottle.text)), degrees(reference));
    if (us_label) text.row("", "{}", us_label_temperature_remark);
    text.row("pure alcohol", "{} per bottle", words.alcohol(each));
    text.row("left over", "{}", words.liquid(plan.remainder));
    text.row("room", "the bottle must hold {} to the cork: its filling at {}",
             words.us ? room(in(largest, us_fluid_ounce)) + " US fl oz"
                      : room(in(largest, millilitre)) + " mL",
             words.temperature(hottest));
    text.gap();
    text.say("Caution: an overfilled bottle bursts or leaks when it warms. Keep flames and sparks away from "
             "spirit.");

    s.answer(text, {{"bottles", plan.count},
                    {"fill_volume_L", in(plan.fill, litre)},
                    {"fill_mass_kg", in(plan.fill_mass, kilogram)},
                    {"fill_balance_indication_kg", in(balance_indication_of(each), kilogram)},
                    {"filling_temperature_C", t.celsius()},
                    {"label_volume_L", in(label, litre)},
                    {"label_temperature_C", reference.celsius()},
                    {"volume_at_40C_L", in(at_40, litre)},
                    {"bottle_to_the_cork_L", in(largest, litre)},
                    {"temperature_of_that_C", hottest.celsius()},
                    {"spirit", to_json(spirit)},
                    {"left_over", to_json(plan.remainder)}});
}

program::task const offered{who, run};

}  // namespace
