// SPDX-License-Identifier: BSL-1.0
// One strength in every basis that the trade uses.
#include "program.hpp"

namespace {

using namespace program;

about const who{"convert_strength",
                topic::how_strong,
                "What is a strength in % vol, % mass, proof, moles?",
                "Converts a strength; with --all, to every basis that the trade uses.",
                "The Quillbeck teaching stillhouse wants to know its 45 % vol by mass and in proof:\n"
                "  $ aqueth convert_strength --strength '45 %vol'\n"
                "  45 %vol is 45.00 % vol at 20 °C, 37.80 % mass, 89.9 US proof",
                {correlation::oiml_r22::cited, correlation::molar_mass::cited,
                 correlation::air_buoyancy::cited, correlation::freezing_point::cited}};

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
        {"percent_vol_15C", "", "% vol at 15 °C", to<basic_volume_fraction<at_15_celsius>>(w).percent(), 2},
        {"percent_vol_15.56C", "", "% vol at 15.56 °C",
         to<basic_volume_fraction<at_15_56_celsius>>(w).percent(), 2},
        {"percent_vol_60F", "", "% vol at 60 °F", to<basic_volume_fraction<at_60>>(w).percent(), 2},
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
    return lines;
}

void run(session& s) {
    given const& from = s.required("--strength", "STRENGTH", "strength to convert");
    given const& at = s.option("--temperature", "TEMP",
                               "with --all, --json or --csv: temperature of the densities", "20 C");
    bool const& all = s.flag("--all", "print every basis, densities and specific gravities");
    s.offer_us_units();
    s.offer_csv();
    s.parse();

    mass_fraction const w = composition(read_strength(from));
    units::temperature const t = read_any_temperature(at);
    page text;
    json data = {{"density_temperature_C", t.celsius()}};
    std::string csv = "basis,value,unit\n";
    double const by_volume = s.words().us ? to<basic_volume_fraction<at_60_fahrenheit>>(w).percent()
                                          : to<volume_fraction>(w).percent();
    text.say("{} is {:.2f} % vol at {}, {:.2f} % mass, {:.1f} US proof", printable(trimmed(from.text)),
             by_volume, degrees(s.words().reference_temperature()), w.percent(), to<us_proof>(w).degrees());
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
