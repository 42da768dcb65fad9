// SPDX-License-Identifier: BSL-1.0
// Grain and juice: the gravity of a wort, the water for it, the strike water, the space and the heat of a
// fermentation.
#include "still_program.hpp"
#include "uncertainty_program.hpp"

#include <optional>

namespace {

using namespace program;

about const who{
    "plan_mash",
    topic::in_wash,
    "How much grain and water, how hot the strike water?",
    "Plans a mash or a wash: gravity and water from grain and volume; the temperature of the strike water;\n"
    "the space, the heat and the temperature of a fermentation.",
    "The Quillbeck teaching stillhouse mashes 6 kg of malt in 18 L of water at 65 °C:\n"
    "  $ aqueth plan_mash --grain '6 kg' --mash-water '18 L' --mash-temperature '65 C'\n"
    "  Heat the mash water to 69.3 °C.",
    {correlation::oiml_r22::cited, correlation::sucrose_density::cited, correlation::malt_heat::cited,
     correlation::fermentation::cited, correlation::fermentation_heat::cited, model::excess_gibbs::cited}};

/// The mass in vacuo of an amount of water or of grain; a volume counts as water at this temperature.
units::mass read_mass(given const& g, std::optional<units::temperature> water_of) {
    amount const how_much = read_amount(g, g.text);
    units::mass mass = 0.0 * kilogram;
    if (auto const* volume = std::get_if<units::volume>(&how_much)) {
        if (!water_of) refuse(g, fmt::format("expected a mass: {}", mass_units));
        mass = *volume * density(mass_fraction(0.0), *water_of);
    } else {
        mass = std::get<units::mass>(how_much);
    }
    on_behalf_of(g,
                 [&] { return require_range("input", "mass", in(mass, kilogram), "kg", 1e-6, unlimited); });
    return mass;
}

units::heat_capacity read_heat_capacity(given const& g) {
    wanted const w{"a heat capacity", "kJ/K, like '5 kJ/K'"};
    number_and_unit const q = read_quantity(g, g.text, w);
    if (squeezed(q.unit) != "kj/k") refuse_unit(g, q.unit, w);
    return on_behalf_of(g,
                        [&] { return require_range("input", "heat capacity", q.number, "kJ/K", 0.0, 1e6); }) *
           1000.0 * joule_per_kelvin;
}

/// Water for each mass of grain, in L/kg or US quarts for each pound.
std::string thickness(wording const& words, double litres_per_kg) {
    if (!words.us) return fmt::format("{:.3g} L/kg", litres_per_kg);
    double const quarts = 4.0 * in(litres_per_kg * litre, us_gallon) / in(kilogram, pound);
    return fmt::format("{:.3g} US qt/lb", quarts);
}

void say_wort(page& text, json& data, wording const& words, given const& volume, units::mass grain,
              double share, given const& blamed, given const& absorption) {
    units::volume const wanted_volume = read_volume(volume);
    double const litres_per_kg = on_behalf_of(absorption, [&] {
        wanted const w{"a volume of water for each kilogram of grain", "L/kg"};
        number_and_unit const q = read_quantity(absorption, absorption.text, w);
        if (squeezed(q.unit) != "l/kg") refuse_unit(absorption, q.unit, w);
        return require_range("input", "absorption", q.number, "L/kg", 0.0, 5.0);
    });
    wort const made = on_behalf_of({{argument::mass_of_the_extract, blamed}, {argument::volume, volume}},
                                   [&] { return wort_of_extract(share * grain, wanted_volume); });
    auto const water_density = density(mass_fraction(0.0), celsius(20.0));
    units::mass const kept = in(grain, kilogram) * litres_per_kg * litre * water_density;
    text.say("The wort has a gravity of {:.4f} ({:.2f} °P): {} of water in all.", made.gravity.value(),
             made.extract.degrees(), words.weight(made.water + kept, water_density));
    text.gap();
    text.row("wort", "{} with {} of extract", words.volume(made.volume), words.mass(made.solids));
    text.row("water in it", "{}", words.weight(made.water, water_density));
    text.row("stays in grain", "{} ({}); what boils off comes on top", words.weight(kept, water_density),
             thickness(words, litres_per_kg));
    text.gap();
    data["wort"] = {{"volume_L", in(made.volume, litre)},   {"gravity_20_20C", made.gravity.value()},
                    {"extract_P", made.extract.degrees()},  {"extract_kg", in(made.solids, kilogram)},
                    {"water_kg", in(made.water, kilogram)}, {"water_kept_by_grain_kg", in(kept, kilogram)}};
}

void say_fermentation(page& text, json& data, wording const& words, given const& wash, given const& strength,
                      given const& sugar_text, given const& head_space, given const& pitched) {
    sugar kind = sugar::sucrose;
    if (sugar_text.text == "glucose" || sugar_text.text == "fructose")
        kind = sugar::hexose;
    else if (sugar_text.text == "glucose monohydrate")
        kind = sugar::glucose_monohydrate;
    else if (sugar_text.text != "sucrose" && sugar_text.text != "malt")
        refuse(sugar_text, "expected sucrose, malt, glucose, glucose monohydrate or fructose");
    units::volume const volume = read_volume(wash);
    volume_fraction const q = to<volume_fraction>(composition(read_strength(strength)));
    double const free_share = on_behalf_of(head_space, [&] {
        return require_range("input", "head space", read_share(head_space), "", 0.0, 0.9);
    });
    units::temperature const start = on_behalf_of(pitched, [&] {
        units::temperature const t = read_any_temperature(pitched);
        require_range("input", "temperature", t.celsius(), "°C", 5.0, 40.0, "fermentations, common practice");
        return t;
    });
    auto const [before, heat] = on_behalf_of({{argument::strength, strength}, {argument::volume, wash}}, [&] {
        sugar_plan const plan = sugar_needed(volume, q, kind);
        units::mass const bound = kind == sugar::glucose_monohydrate
                                      ? plan.practical * (correlation::molar_mass::water /
                                                          correlation::fermentation::glucose_monohydrate)
                                      : 0.0 * kilogram;
        return std::pair(wort_by_mass(plan.practical - bound, plan.water + bound),
                         heat_of_fermentation(volume, q, kind));
    });
    units::volume const vessel = before.volume / (1.0 - free_share);
    units::temperature const hottest = start + heat.rise;
    text.say("Before pitching there are {} at gravity {:.4f}: take a vessel of {} or more.",
             words.volume(before.volume), before.gravity.value(), words.volume(vessel));
    text.say("If no heat were lost, the wash would warm from {} to {}.", words.temperature(start),
             words.rounded(hottest));
    text.gap();
    text.row("wash", "{} of {}", words.volume(volume), words.strength(to<mass_fraction>(q)));
    text.row("before", "{} with {} of extract, {:.2f} °P", words.mass(before.mass), words.mass(before.solids),
             before.extract.degrees());
    text.row("head space", "{:.3g} % of the vessel, for foam", 100.0 * free_share);
    text.row("heat", "{} kWh, {} in the wash itself", number(in(heat.heat, kilowatt_hour), 3),
             words.difference(heat.rise));
    text.gap();
    if (hottest > celsius(35.0))
        text.say("Above {} most yeasts suffer (common practice): cool, or ferment in smaller vessels.",
                 words.temperature(celsius(35.0)));
    data["fermentation"] = {{"before_L", in(before.volume, litre)},
                            {"before_gravity_20_20C", before.gravity.value()},
                            {"before_extract_P", before.extract.degrees()},
                            {"vessel_L", in(vessel, litre)},
                            {"heat_kJ", in(heat.heat, kilojoule)},
                            {"rise_K", heat.rise.value()},
                            {"temperature_without_losses_C", hottest.celsius()}};
}

void run(session& s) {
    given const& grain_text = s.option("--grain", "MASS", "mass of the grain");
    given const& volume = s.option("--volume", "VOLUME", "with --grain: volume of the wort at 20 °C");
    given const& share = s.option("--extract-yield", "SHARE",
                                  "with --volume: share of the grain that becomes extract", "65 %");
    given const& absorption = s.option("--absorption", "VOLUME",
                                       "with --volume: water that stays in each kilogram of grain", "1 L/kg");
    given const& water = s.option("--mash-water", "AMOUNT", "with --grain: water to stir the grain into");
    given const& mash_at =
        s.option("--mash-temperature", "TEMP", "temperature wanted after stirring", "65 C", "149 F");
    given const& grain_at =
        s.option("--grain-temperature", "TEMP", "temperature of the grain", "20 C", "68 F");
    given const& moisture = s.option("--moisture", "SHARE", "water in the grain, to 8 %", "4 %");
    given const& vessel = s.option("--vessel", "CAPACITY", "heat capacity of the vessel: '5 kJ/K'", "0 kJ/K");
    given const& vessel_at =
        s.option("--vessel-temperature", "TEMP", "temperature of the vessel", "20 C", "68 F");
    given const& wash =
        s.option("--wash", "VOLUME", "instead of --grain: volume of the fermented wash at 20 °C");
    given const& strength = s.option("--strength", "STRENGTH", "with --wash: strength it is to reach");
    given const& sugar_text =
        s.option("--sugar", "SUGAR", "with --wash: sucrose, malt, glucose, glucose monohydrate or fructose",
                 "sucrose");
    given const& head_space =
        s.option("--head-space", "SHARE", "with --wash: part of the vessel left free", "20 %");
    given const& pitched =
        s.option("--pitch-temperature", "TEMP", "with --wash: at the start", "20 C", "68 F");
    s.offer_us_units();
    s.parse();
    if (grain_text.present == wash.present) throw bad_input("give either --grain or --wash");
    if (wash.present && !strength.present) throw bad_input("--wash needs --strength");
    if (wash.present && (volume.present || water.present))
        throw bad_input("--volume and --mash-water go with --grain");
    if (grain_text.present && !volume.present && !water.present)
        throw bad_input("--grain needs --volume (gravity and water) or --mash-water (strike water), or both");
    if (grain_text.present && strength.present) throw bad_input("--strength goes with --wash");

    wording const words = s.words();
    page text;
    json data = json::object();
    if (wash.present) {
        say_fermentation(text, data, words, wash, strength, sugar_text, head_space, pitched);
        text.say("{}", gas_caution);
        return s.answer(text, data);
    }
    units::mass const grain = read_mass(grain_text, std::nullopt);
    if (water.present) {
        mash const m{grain,
                     read_mass(water, celsius(20.0)),
                     read_any_temperature(grain_at),
                     read_heat_capacity(vessel),
                     read_any_temperature(vessel_at),
                     read_share(moisture)};
        units::temperature const wanted_temperature = read_any_temperature(mash_at);
        units::temperature const strike =
            on_behalf_of({{argument::temperature_wanted, mash_at},
                          {argument::temperature_of_the_grain, grain_at},
                          {argument::temperature_of_the_vessel, vessel_at},
                          {argument::moisture, moisture},
                          {argument::heat_capacity, vessel}},
                         [&] { return strike_temperature(m, wanted_temperature); });
        text.say("Heat the mash water to {}.", words.rounded(strike));
        text.gap();
        units::volume const poured = m.water / density(mass_fraction(0.0), celsius(20.0));
        text.row("mash", "{} of grain and {} of water, {}", words.mass(m.grain), words.mass(m.water),
                 thickness(words, in(poured, litre) / in(m.grain, kilogram)));
        text.row("after stirring", "{}, within about {}; the room takes some on top",
                 words.temperature(wanted_temperature), words.us ? "2 °F" : "1 K");
        text.gap();
        data["strike_water_C"] = strike.celsius();
        data["mash_water_kg"] = in(m.water, kilogram);
    }
    if (volume.present) {
        double const part = on_behalf_of(
            share, [&] { return require_range("input", "extract yield", read_share(share), "", 0.0, 1.0); });
        // A yield that was not given cannot be wrong.
        say_wort(text, data, words, volume, grain, part, share.present ? share : grain_text, absorption);
    }
    text.say("Caution: hot water and hot mash scald. Pour slowly, wear gloves, keep children away.");
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
