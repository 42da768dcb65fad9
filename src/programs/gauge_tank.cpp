// SPDX-License-Identifier: BSL-1.0
// What a tank holds, by the depth of its liquid and its dip table.
#include "points.hpp"
#include "program.hpp"

#include <aqueth/dip_table.hpp>

#include <string>

namespace {

using namespace program;

about const who{
    "gauge_tank",
    topic::in_bottles,
    "How much is in the tank, by its dip table?",
    "Computes what a tank holds from the depth of the liquid and the tank's dip table. By weight:\n"
    "aqueth weigh_spirit --gross.",
    "The Quillbeck teaching stillhouse dips its tank, whose table says 120.0 L at 400 mm and 150.4 L at 500 "
    "mm:\n"
    "  $ aqueth gauge_tank --table <(printf 'depth_mm,volume_l\\n400,120.0\\n500,150.4\\n') --dip '432 mm' "
    "\\\n"
    "        --strength '62 %vol' --temperature '17 C'\n"
    "  The tank holds 129.7 L at 17 °C; pure alcohol 80.65 L at 20 °C.",
    {correlation::oiml_r22::cited, correlation::air_buoyancy::cited, correlation::freezing_point::cited}};

dip_table read_table(given const& file) {
    try {
        return dip_table::read(read_file(file, "a dip table"));
    } catch (text_error const& error) {
        refuse(file, error.what());
    }
}

void run(session& s) {
    given const& file = s.required("--table", "FILE", "dip table of the tank, a CSV file (see below)");
    given const& dip = s.required("--dip", "LENGTH", "depth of the liquid, in the depths of the table");
    given const& strength = s.required("--strength", "STRENGTH", "true strength of the spirit");
    given const& at = s.required("--temperature", "TEMP", "temperature of the spirit");
    s.carry_on({{strength, carried::strength}, {at, carried::temperature}});
    s.explain("A dip table is a CSV file. Its first line names the columns: depth_mm (or _cm, _m, _in) and "
              "volume_l\n"
              "(or _ml, _hl, _m3, _gal). Each depth is above the one before. Between two lines the volume is "
              "linear.\n"
              "There is no answer beyond the first and the last line. Lengths: mm, cm, m, in, ft.");
    s.offer_us_units();
    s.parse();

    dip_table const table = read_table(file);
    auto const depth = read_as<units::length>(dip);
    auto const volume = on_behalf_of(dip, [&] { return table.volume(depth); });
    units::volume const each = table.volume_of_a_millimetre(depth);
    // A slope in the unit of the dip: millimetres for metric ones, inches for inches and feet.
    std::string const unit =
        squeezed(read_quantity(dip, dip.text, {"a length", unit_table<units::length>::names}).unit);
    bool const in_inches = unit.starts_with("in") || unit.starts_with("f");
    mass_fraction const w = composition(read_strength(strength));
    parcel const held = make_parcel(amount(volume), w, at);
    wording const words = s.words();

    page text;
    text.say("The tank holds {} at {}; pure alcohol {}.", words.volume(volume),
             words.temperature(held.temperature()), words.alcohol(held));
    text.gap();
    text.row("contents", "{}", words.liquid(held));
    text.row("volume", "{} at {}", words.volume(held.volume(words.reference_temperature())),
             words.temperature(words.reference_temperature()));
    text.row(in_inches ? "one inch" : "one millimetre", "of depth is {} here",
             words.volume(in_inches ? 25.4 * each : each));
    text.gap();
    text.say(
        "The volume is that of the table: the expansion of the tank is left out. A tank of\n"
        "stainless steel grows by about 0.05 % in 10 K. Dip twice, on a still liquid, with the tank level.");
    text.say("{}", vapour_caution);
    json data{{"depth_mm", 1000.0 * depth.value()},
              {"contents", to_json(held)},
              {"volume_L_20C", in(held.volume(celsius(20)), litre)},
              {"volume_of_a_millimetre_L", in(each, litre)}};
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
