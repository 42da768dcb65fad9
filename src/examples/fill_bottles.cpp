// SPDX-License-Identifier: BSL-1.0
// How full to fill a bottle that shall hold its label volume at 20 °C, and how many there will be.
#include "program.hpp"

namespace {

using namespace program;

about const who{
    "fill_bottles",
    "Tells what to fill into each bottle so that it holds its label volume at 20 °C, and how many\n"
    "bottles there will be.",
    "The Quillbeck teaching stillhouse fills 3.55 L of 45 % vol at 22 °C into half-litre bottles:\n"
    "  $ fill_bottles --amount '3.55 L' --strength '45 %vol' --temperature '22 C' --bottle '500 mL'\n"
    "  Fill 500.77 mL at 22 °C, or 469.77 g, into each bottle: 7 bottles.",
    {correlation::oiml_r22::cited, correlation::air_buoyancy::cited, correlation::freezing_point::cited}};

void run(session& s) {
    given const& how_much =
        s.required("--amount", "AMOUNT", "spirit there is: volume at its temperature, or mass");
    given const& strength = s.required("--strength", "STRENGTH", "its true strength");
    given const& temperature = s.required("--temperature", "TEMP", "of the spirit while it is filled");
    given const& bottle = s.required("--bottle", "VOLUME", "volume on the label, meant at 20 °C");
    s.offer_us_units();
    s.parse();

    parcel const spirit =
        make_parcel(read_amount(how_much), composition(read_strength(strength)), temperature);
    units::temperature const t = spirit.temperature();
    units::volume const label = read_volume(bottle);
    bottling const plan = aqueth::fill_bottles(spirit, label);
    if (plan.count < 1.0) {
        refuse(bottle, fmt::format("larger than all there is: {} '{}' is {} at 20 °C", how_much.name,
                                   printable(how_much.text), s.words().volume(spirit.volume(celsius(20)))));
    }
    parcel const each = spirit.with_mass(plan.fill_mass);
    units::volume const hottest = each.volume(celsius(40));

    wording const words = s.words();
    page text;
    text.say("Fill {} at {}, or {}, into each bottle: {:.0f} bottle{}.", words.volume(plan.fill),
             words.temperature(t), words.mass(plan.fill_mass), plan.count, plan.count == 1.0 ? "" : "s");
    text.gap();
    text.row("spirit", "{}", words.liquid(spirit));
    text.row("label volume", "{} at 20 °C", words.volume(label));
    text.row("on a balance", "{} a bottle",
             words.mass(balance_indication(each.mass(), density(each.composition(), t))));
    text.row("pure alcohol", "{} a bottle", words.alcohol(each));
    text.row("left over", "{}", words.liquid(plan.remainder));
    text.row("room to leave", "{}: what a bottle's filling is at 40 °C", words.volume(hottest));
    text.gap();
    text.say("Caution: a bottle without that room bursts or leaks when it gets warm.\n{}", vapour_caution);

    s.answer(text, {{"bottles", plan.count},
                    {"fill_volume_L", in(plan.fill, litre)},
                    {"fill_mass_kg", in(plan.fill_mass, kilogram)},
                    {"filling_temperature_C", t.celsius()},
                    {"label_volume_L_20C", in(label, litre)},
                    {"volume_at_40C_L", in(hottest, litre)},
                    {"spirit", to_json(spirit)},
                    {"left_over", to_json(plan.remainder)}});
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
