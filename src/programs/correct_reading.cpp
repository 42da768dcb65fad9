// SPDX-License-Identifier: BSL-1.0
// The reading of a hydrometer in warm or cold spirit, and the true strength.
#include "drawing.hpp"
#include "program.hpp"

#include <filesystem>
#include <string>

namespace {

using namespace program;

about const who{
    "correct_reading",
    topic::how_strong,
    "How strong is warm or cold spirit by its hydrometer?",
    "Corrects a hydrometer reading to the true strength, or predicts the reading for a true strength.",
    "The Quillbeck teaching stillhouse reads 81.5 on its 20 °C alcoholometer; the spirit is at 28 °C:\n"
    "  $ aqueth correct_reading --reading '81.5 %vol' --temperature '28 C'\n"
    "  True strength 79.10 % vol at 20 °C",
    {correlation::oiml_r22::cited, model::hot_density::cited, correlation::glass_expansion::cited,
     correlation::freezing_point::cited}};

/// "stem no7, with its certificate": the instrument as the title of its chart names it.
std::string whose_chart(session const& s, instrument const& options) {
    std::string name = "a hydrometer";
    for (used_setting const& each : s.used_settings()) {
        if (each.table.starts_with("stem ")) name = each.table;
    }
    return name + (options.correction.present ? ", with its certificate" : "");
}

/// True strength less reading of the stem against the temperature: at the reading, at 10 below and at 10
/// above it. The reading itself is marked.
std::string picture_of(std::filesystem::path const& path, wording const& words, std::string const& whose,
                       stem const& meter, double shown, double strength, units::temperature t) {
    std::string script =
        picture_head(path, 960, 600, "Correction of readings: " + whose) +
        fmt::format("set xlabel 'temperature of the spirit, {}'\nset ylabel 'true strength less reading, "
                    "{}'\nset xzeroaxis linecolor '#444444'\n",
                    words.temperature_unit(), name_of(meter.scale()));
    std::string plots;
    std::size_t count = 0;
    for (double const away : {-10.0, 0.0, 10.0}) {
        std::string lines;
        for (int k = 0; k <= 80; ++k) {
            units::temperature const at = celsius(0.5 * k);
            try {
                mass_fraction const w = meter.composition(shown + away, at);
                lines += fmt::format("{:.6g} {:.6g}\n", words.temperature_number(at),
                                     meter.strength(w).number - shown - away);
            } catch (std::runtime_error const&) {  // off the scale or frozen: the line ends there
            }
        }
        if (lines.empty()) continue;
        script += fmt::format("$reading{} << EOD\n{}EOD\n", count, lines);
        plots +=
            fmt::format("{}$reading{} using 1:2 with lines {} title 'reading {}'", count > 0 ? ", " : "plot ",
                        count, line_style(count), on_scale(meter.scale(), shown + away));
        ++count;
    }
    script +=
        fmt::format("$here << EOD\n{:.6g} {:.6g}\nEOD\n", words.temperature_number(t), strength - shown);
    return script + plots +
           fmt::format(
               "{}$here using 1:2 with points pointtype 7 pointsize 1.3 linecolor '#000000' title 'this "
               "reading'\n",
               count > 0 ? ", " : "plot ");
}

/// A correction with its sign, with the decimals of the scale.
std::string signed_on_scale(notation const& scale, double value) {
    return (value < 0.0 ? "" : "+") + on_scale(scale, value);
}

/// The reading to expect; a liquid in which the instrument floats off its scale is refused by its options.
double predicted(stem const& meter, mass_fraction w, units::temperature t, given const& truth,
                 given const& at) {
    try {
        return meter.reading(w, t);
    } catch (refusal const& e) {
        if (e.code() != argument::density_it_floats_by) throw;
        refuse(truth, fmt::format("with {} the hydrometer floats off its scale, {}: it floats as in {:.2f} "
                                  "kg/m3, and the scale is for {:.2f} to {:.2f} kg/m3",
                                  label(at), name_of(meter.scale()), e.value(), e.lower(), e.upper()));
    }
}

void run(session& s) {
    given const& reading = s.option("--reading", "STRENGTH", "hydrometer reading, in the unit of its scale");
    given const& truth =
        s.option("--strength", "STRENGTH", "instead of --reading: true strength, to predict the reading");
    given const& at =
        s.required("--temperature", "TEMP", "temperature of the liquid, with the instrument in it");
    instrument const options = s.instrument_options();
    s.carry_on({{truth, carried::strength, {reading}}, {at, carried::temperature}});
    auto const picture = picture_options::offer(s, "corrections of the instrument at other temperatures");
    s.offer_us_units();
    s.parse();
    std::filesystem::path const path = picture.read();
    if (reading.present == truth.present) throw bad_input("give either --reading or --strength");

    wording const in_words = s.words();
    units::temperature const t = read_temperature(at);
    stem const meter(options, reading);
    if (picture.wanted() && !meter.shows_strength())
        refuse(picture.file, "only a scale of strength has corrections to draw");
    auto const attributed = [&](auto const& f) { return on_behalf_of({{argument::temperature, at}}, f); };
    mass_fraction const w = attributed(
        [&] { return reading.present ? meter.composition(reading, t) : composition(read_strength(truth)); });
    double const shown = reading.present ? meter.number(reading)
                                         : attributed([&] { return predicted(meter, w, t, truth, at); });
    certificate const certified(options.correction);
    notation const& scale = meter.scale();
    stem::figure const strength = meter.strength(w);
    units::mass_density const rho = density(w, t);

    std::string const unit = unit_as_written(scale);

    page text;
    if (reading.present && in_words.us && !meter.shows_strength()) {
        text.say("True strength {}", in_words.strength(w));
    } else if (reading.present) {
        text.say("True strength {:.2f} {}", strength.number, strength.unit);
    } else {
        text.say("The instrument will show {} at {}", on_scale(scale, shown), in_words.temperature(t));
    }
    text.gap();
    double const per_kelvin = 1e6 * read_expansion(options.glass).value();
    text.row("scale", "{}; glass grows by {:.3g}e-6 per {}", name_of(scale),
             in_words.us ? per_kelvin / 1.8 : per_kelvin, in_words.us ? "°F" : "K");
    text.row("reading", "{} at {}", on_scale(scale, shown), in_words.temperature(t));
    if (options.correction.present) {
        double const by_certificate = certified.correction(shown);
        std::string const beyond = certified.beyond(shown);
        text.row("certificate", "{}{}", signed_on_scale(scale, by_certificate),
                 beyond.empty() ? "" : fmt::format(", kept beyond its points: {}", beyond));
        if (meter.shows_strength())
            text.row("temperature", "{:+.2f}", strength.number - shown - by_certificate);
    }
    if (meter.shows_strength()) text.row("correction", "{:+.2f}", strength.number - shown);
    if (in_words.us) {
        text.row("true strength", "{}, {:.2f} % vol at 60 °F, {:.2f} % mass", in_words.strength(w),
                 to<basic_volume_fraction<at_60_fahrenheit>>(w).percent(), w.percent());
    } else {
        text.row("true strength", "{} at 20 °C, {:.2f} % mass, {:.1f} US proof", in_words.strength(w),
                 w.percent(), to<us_proof>(w).degrees());
    }
    text.row("density", "{} at {}, {} at {}", in_words.density(rho), in_words.temperature(t),
             in_words.density(density(w, in_words.reference_temperature())),
             in_words.temperature(in_words.reference_temperature()));
    bool const hot = density_formulation_at(t) == density_formulation::hot_density;
    if (hot) {
        text.row("uncertainty", "{:.2f} % of the density (k = 2); above 40 °C no law defines it",
                 200.0 * in(hot_density_uncertainty(w, t), rho));
    }
    if (picture.wanted())
        picture.draw(s, text, path,
                     picture_of(path, in_words, whose_chart(s, options), meter, shown, strength.number, t));
    text.gap();
    text.say("{}", vapour_caution);

    json data{{"scale", name_of(scale)},
              {"reading", shown},
              {"reading_unit", !unit.empty()            ? json(unit)
                               : meter.shows_strength() ? json(strength.unit)
                                                        : json()},
              {"temperature_C", t.celsius()},
              {"true_strength", strength.number},
              {"true_strength_unit", strength.unit},
              {"strength_percent_vol_20C", to<volume_fraction>(w).percent()},
              {"strength_percent_mass", w.percent()},
              {"us_proof", to<us_proof>(w).degrees()},
              {"density_kg_m3", rho.value()},
              {"density_formulation", name_of(density_formulation_at(t))}};
    if (options.glass.present) data["glass"] = options.glass.text;
    if (options.correction.present) data["correction"] = options.correction.text;
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
