// SPDX-License-Identifier: BSL-1.0
// One strength in every basis that the trade uses.
#include "program.hpp"

namespace {

using namespace program;

about const who{
    "convert_strength",
    topic::how_strong,
    "What is a strength in % vol, % mass, proof, moles?",
    "Converts a strength; with --all, to every basis that the trade uses. Also degrees of old hydrometers\n"
    "and of must scales.",
    "The Quillbeck teaching stillhouse wants to know its 43 % vol by mass and in proof:\n"
    "  $ aqueth convert_strength --strength '43 %vol'\n"
    "  43 %vol is 43.00 % vol at 20 °C, 35.99 % mass, 85.9 US proof",
    {correlation::oiml_r22::cited, correlation::molar_mass::cited, correlation::air_buoyancy::cited,
     correlation::freezing_point::cited, correlation::trade_scales::cited,
     correlation::sucrose_density::cited}};

struct line {
    std::string key;   ///< for machines
    std::string name;  ///< for people
    std::string unit;
    double value;
    int decimals;
};

/// All bases, densities and specific gravities of a mixture.
std::vector<line> every_basis(mass_fraction w, units::temperature t) {
    using at_60 = at_60_fahrenheit;
    units::mass_density const rho = density(w, t);
    us_proof const p = to<us_proof>(w);
    std::string const at_t = " at " + degrees(t);
    std::vector<line> lines{
        {"percent_vol_20C", "alcoholic strength by volume", "% vol at 20 °C",
         to<volume_fraction>(w).percent(), 2},
        {"percent_vol_15C", "  Gay-Lussac's scale", "% vol at 15 °C",
         to<basic_volume_fraction<at_15_celsius>>(w).percent(), 2},
        {"percent_vol_15.56C", "", "% vol at 15.56 °C",
         to<basic_volume_fraction<at_15_56_celsius>>(w).percent(), 2},
        {"percent_vol_60F", "  Tralles' scale", "% vol at 60 °F",
         to<basic_volume_fraction<at_60>>(w).percent(), 2},
        {"us_proof", "proof", "US proof (60 °F)", p.degrees(), 2},
        {"percent_mass", "mass fraction", "% mass", w.percent(), 2},
        {"mole_fraction", "mole fraction", "mol/mol", to<mole_fraction>(w).value(), 5},
        {"g_per_100mL_20C", "mass concentration", "g/100 mL at 20 °C", to<mass_concentration>(w).number(), 2},
        {"L_per_hL_20C", "pure alcohol", "L/hL at 20 °C", to<volume_fraction>(w).litres_per_hectolitre(), 2},
        {"density_kg_m3", "density in vacuo", "kg/m3" + at_t, rho.value(), 2},
        {"density_in_air_kg_m3", "density in air", "kg/m3" + at_t, density_in_air(rho).value(), 2},
        {"weight_lb_per_gal_60F", "weight in air", "lb/US gal at 60 °F",
         in(weight_per_volume(p), pound / us_gallon), 4},
    };
    struct {
        char const *key, *name;
        units::temperature at;
    } const gravities[] = {{"20C", "20/20 °C", celsius(20)},
                           {"15C", "15/15 °C", celsius(15)},
                           {"60F", "60/60 °F", fahrenheit(60)}};
    for (auto const& g : gravities) {
        for (medium const in_what : {medium::vacuum, medium::air}) {
            char const* const where = in_what == medium::air ? "air" : "vacuo";
            lines.push_back({fmt::format("sg_{}_{}", g.key, where), "specific gravity",
                             fmt::format("{} in {}", g.name, where),
                             specific_gravity_of(w, {g.at, g.at, in_what}).value(), 5});
        }
    }
    auto const at_60_60 = specific_gravity_of(w, {fahrenheit(60), fahrenheit(60)});
    lines.push_back(
        {"uk_proof", "British proof (Sikes)", "degrees, 100 is proof (60 °F)", uk_proof_degrees(w), 1});
    lines.push_back({"baume_lighter_60F", "Baumé, lighter than water", "degrees (60/60 °F)",
                     degrees_on(trade_scale::baume_below, at_60_60), 2});
    return lines;
}

/// A number and the name behind it, in small letters.
struct number_and_scale {
    double number;
    std::string scale;
};

number_and_scale read_degrees(given const& g, char const* scales) {
    number_and_unit const q = read_quantity(g, g.text, {"degrees of a scale", scales});
    return {q.number, squeezed(q.unit)};
}

/// The spirit behind degrees of an old hydrometer.
mass_fraction read_old_degrees(given const& g) {
    constexpr char const* scales = "UK proof, or Baume (lighter than water)";
    number_and_scale const q = read_degrees(g, scales);
    return on_behalf_of(g, [&] {
        if (q.scale == "ukproof" || q.scale == "sikes") return by_uk_proof(q.number);
        if (q.scale != "baume") refuse(g, fmt::format("expected degrees of {}", scales));
        return mass_fraction_from_specific_gravity(gravity_on(trade_scale::baume_below, q.number),
                                                   {fahrenheit(60), fahrenheit(60)});
    });
}

/// A must or a wort on every scale that counts its sugar.
void convert_must(session& s, given const& must) {
    constexpr char const* scales = "Oechsle, KMW, Baume, Plato, Balling or sg";
    number_and_scale const q = read_degrees(must, scales);
    specific_gravity const gravity = on_behalf_of(must, [&] {
        if (q.scale == "oechsle") return gravity_on(trade_scale::oechsle, q.number);
        if (q.scale == "kmw" || q.scale == "babo") return gravity_on(trade_scale::kmw, q.number);
        if (q.scale == "plato" || q.scale == "balling") return specific_gravity_of(extract(q.number));
        if (q.scale == "sg") return specific_gravity(q.number);
        if (q.scale != "baume") refuse(must, fmt::format("expected degrees of {}", scales));
        // Baumé is of 60/60 °F; a solution of the same extract has nearly the same gravity at 20/20 °C
        return gravity_on(trade_scale::baume_above, q.number);
    });
    on_behalf_of(must, [&] {
        return require_range("input", argument::specific_gravity, gravity.value(), "", 1.0, 1.2168,
                             "musts, to 40 KMW");
    });
    double const plato = on_behalf_of(must, [&] { return apparent_extract_of(gravity).degrees(); });
    struct {
        char const *key, *name, *unit;
        double value;
        int decimals;
    } const rows[] = {
        {"sg_20C", "specific gravity", "20/20 °C", gravity.value(), 4},
        {"oechsle", "Oechsle", "degrees", degrees_on(trade_scale::oechsle, gravity), 1},
        {"kmw", "Klosterneuburg (KMW, Babo)", "degrees", degrees_on(trade_scale::kmw, gravity), 2},
        {"baume", "Baumé, modulus 145", "degrees", degrees_on(trade_scale::baume_above, gravity), 2},
        {"plato", "Plato, Balling, Brix", "% mass of sucrose", plato, 2}};
    page text;
    json data = json::object();
    text.say("{} is a gravity of {:.4f}, {:.2f} °P.", printable(trimmed(must.text)), gravity.value(), plato);
    text.gap();
    std::string csv = "scale,value,unit\n";
    for (auto const& each : rows) {
        text.say("{:<30}{:>10.{}f} {}", each.name, each.value, each.decimals, each.unit);
        data[each.key] = each.value;
        csv += fmt::format("{},{:.10g},{}\n", each.key, each.value, each.unit);
    }
    text.gap();
    text.say("Plato, Balling and Brix all mean grams of sucrose in 100 g, by tables of different years; a "
             "refractometer\n"
             "in Brix is right only before fermentation. Baumé is treated as if it were of 20/20 °C.");
    s.answer(text, data, csv);
}

void run(session& s) {
    given const& from = s.option("--strength", "STRENGTH", "strength to convert");
    given const& old = s.option("--degrees", "DEGREES",
                                "instead: degrees of an old hydrometer, '70 UK proof' or '22 Baume'");
    given const& must =
        s.option("--must", "DEGREES",
                 "instead: a must or wort, '85 Oechsle', '17 KMW', '11 Baume', '20 Plato', '1.085 sg'");
    given const& at = s.option("--temperature", "TEMP",
                               "with --all, --json or --csv: temperature of the densities", "20 C");
    bool const& all = s.flag("--all", "print every basis, densities and specific gravities");
    s.carry_on({{from, carried::strength, {old, must}}});
    s.offer_us_units();
    s.offer_csv();
    s.parse();

    if (int{from.present} + int{old.present} + int{must.present} != 1)
        throw bad_input("give one of --strength, --degrees and --must");
    if (must.present) return convert_must(s, must);
    mass_fraction const w = old.present ? read_old_degrees(old) : composition(read_strength(from));
    units::temperature const t = read_any_temperature(at);
    page text;
    json data = {{"density_temperature_C", t.celsius()}};
    std::string csv = "basis,value,unit\n";
    double const by_volume = s.words().us ? to<basic_volume_fraction<at_60_fahrenheit>>(w).percent()
                                          : to<volume_fraction>(w).percent();
    text.say("{} is {:.2f} % vol at {}, {:.2f} % mass, {:.1f} US proof",
             printable(trimmed(old.present ? old.text : from.text)), by_volume,
             degrees(s.words().reference_temperature()), w.percent(), to<us_proof>(w).degrees());
    if (all) text.gap();
    for (line const& each : on_behalf_of(at, [&] { return every_basis(w, t); })) {
        if (all) text.say("{:<30}{:>10.{}f} {}", each.name, each.value, each.decimals, each.unit);
        data[each.key] = each.value;
        csv += fmt::format("{},{:.10g},{}\n", each.key, each.value, each.unit);
    }
    s.answer(text, data, csv);
}

program::task const offered{who, run};

}  // namespace
