// SPDX-License-Identifier: BSL-1.0
// Liquid and vapour in equilibrium, row by row: by the model, or between measured points.
#include "boiling.hpp"
#include "points.hpp"

#include <aqueth/measured_equilibrium.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <optional>

namespace {

using namespace program;

about const who{
    "equilibrium_table",
    topic::in_still,
    "How strong is the vapour over each liquid, as a table?",
    "Prints liquid and vapour in equilibrium, at a pressure or at a temperature. With --measured:\n"
    "interpolated between the measured points of a file, with a check of their consistency.",
    "The Quillbeck teaching stillhouse, 650 m above the sea, wants to see what one distillation gains:\n"
    "  $ aqueth equilibrium_table --liquids '0 to 90 %vol by 10' --altitude '650 m'\n"
    "  Equilibrium of ethanol and water under 93.76 kPa",
    boiling_sources()};

/// Names of the columns in CSV and JSON.
constexpr std::array columns{"liquid_percent_vol_20C",
                             "liquid_percent_mass",
                             "liquid_percent_mol",
                             "vapour_percent_vol_20C",
                             "vapour_percent_mass",
                             "vapour_percent_mol",
                             "temperature_C",
                             "pressure_kPa",
                             "relative_volatility",
                             "vapour_uncertainty_percent_vol_20C",
                             "vapour_uncertainty_percent_mol"};
using row = std::array<std::optional<double>, columns.size()>;
constexpr std::size_t uncertain = 9;  // column: standard uncertainty of the model's vapour, % vol

/// The known values over a liquid. The rest stays empty.
row make_row(mole_fraction x, std::optional<mole_fraction> y, std::optional<units::temperature> t,
             std::optional<units::pressure> p, std::optional<double> volatility) {
    row cells{percent_vol(x), to<mass_fraction>(x).percent(), x.percent()};
    if (y) cells[3] = percent_vol(*y);
    if (y) cells[4] = to<mass_fraction>(*y).percent();
    if (y) cells[5] = y->percent();
    if (t) cells[6] = t->celsius();
    if (p) cells[7] = in(*p, kilopascal);
    cells[8] = volatility;
    return cells;
}

/// The rows of the model. A row without an answer stays empty; not all may.
template <class Known>
std::vector<row> model_rows(std::vector<mole_fraction> const& liquids, Known known) {
    std::vector<row> rows;
    std::optional<refusal> no_answer;
    bool any = false;
    for (mole_fraction const x : liquids) {
        try {
            equilibrium const e = bubble_point(x, known);
            rows.push_back(make_row(x, e.vapour, e.temperature, e.pressure, e.relative_volatility));
            if (auto const doubt = doubt_about_vapour(e)) {
                rows.back()[uncertain] = 0.5 * (percent_vol(doubt->upper) - percent_vol(doubt->lower));
                rows.back()[uncertain + 1] = 100.0 * doubt->uncertainty;
            }
            any = true;
        } catch (refusal const& error) {
            no_answer = error;
            rows.push_back(make_row(x, {}, {}, {}, {}));
        }
    }
    if (!any) raise_error(*no_answer);
    return rows;
}

/// The rows between measured points; outside them the cells stay empty.
std::vector<row> measured_rows(std::vector<mole_fraction> const& liquids,
                               measured_equilibrium const& points) {
    std::vector<row> rows;
    auto const if_measured = [](auto const& property) -> decltype(std::optional(property())) {
        try {
            return property();
        } catch (refusal const&) {
            return std::nullopt;
        }
    };
    for (mole_fraction const x : liquids) {
        auto const y = if_measured([&] { return points.vapour(x); });
        auto const t = if_measured([&] { return points.temperature(x); });
        std::optional<double> volatility;
        if (y) volatility = y->value() / (1.0 - y->value()) * (1.0 - x.value()) / x.value();
        rows.push_back(make_row(x, y, t, points.pressure(), volatility));
    }
    return rows;
}

measured_equilibrium laid_through(given const& file, points_at_pressure const& read, units::pressure p) {
    std::vector<measured_point> points;
    for (equilibrium_point const& each : read.points) {
        if (each.vapour) points.push_back({each.liquid, *each.vapour, each.temperature});
    }
    return on_behalf_of(file, [&] { return measured_equilibrium(points, p); });
}

void say_consistency(page& text, json& data, wording const& words, measured_equilibrium const& points,
                     points_at_pressure const& read) {
    consistency const found = points.check();
    std::size_t const count = points.points().size();
    text.say(
        "{}",
        found.trusted
            ? "The points can be trusted: they agree with one another and with the model."
            : "Do not trust the points: they disagree with one another or with the model, or are too few.");
    text.row("points", "{}, {} to {} % mol{}", count, number(points.points().front().liquid.percent(), 3),
             number(points.points().back().liquid.percent(), 3), read.in_words());
    text.row("share measured", "{:.0f} % of the way from water to ethanol (good: half or more)",
             100.0 * found.measured_share);
    text.row("area test", "{:.1f} % (good: below 10 %)", found.area_percent);
    text.row("vapour", "{:.1f} % mol from the model on average (good: below 2), at most {:.1f}",
             100.0 * found.mean_vapour_deviation, 100.0 * found.largest_vapour_deviation);
    data["consistency"] = {{"trusted", found.trusted},
                           {"points", count},
                           {"measured_share", found.measured_share},
                           {"area_percent", found.area_percent},
                           {"mean_vapour_deviation", found.mean_vapour_deviation},
                           {"largest_vapour_deviation", found.largest_vapour_deviation}};
    data["consistency"].update(read.to_json());
    if (points.has_temperature()) {
        text.row("temperature", "{} from the model on average (good: below {}), at most {}",
                 words.difference(found.mean_temperature_deviation * kelvins),
                 words.difference(1.0 * kelvins),
                 words.difference(found.largest_temperature_deviation * kelvins));
        data["consistency"]["mean_temperature_deviation_K"] = found.mean_temperature_deviation;
        data["consistency"]["largest_temperature_deviation_K"] = found.largest_temperature_deviation;
    }
    text.gap();
}

/// A cell for people: a strength, a temperature or a pressure in their units, with the digits a bench can
/// use.
std::string cell_text(std::optional<double> cell, std::size_t column, wording const& words) {
    if (!cell) return "-";
    if (!words.us || (column < 6 && column % 3 != 0) || column == 8) return number(*cell, column < 6 ? 3 : 4);
    if (column < 6) return number(to<us_proof>(volume_fraction(*cell / 100.0)).degrees(), 3);
    if (column == 6) return number(words.temperature_number(celsius(*cell)), 4);
    return number(words.pressure_number(*cell * kilopascal), 4);
}

/// The uncertainty of the vapour of a row, for people.
std::string doubt_text(row const& cells, wording const& words) {
    if (!cells[uncertain]) return "-";
    double const vapour = *cells[3], half = *cells[uncertain];
    auto const proof = [](double percent) {
        return to<us_proof>(volume_fraction(std::clamp(percent, 0.0, 100.0) / 100.0)).degrees();
    };
    return fmt::format("{:.1f}", words.us ? 0.5 * (proof(vapour + half) - proof(vapour - half)) : half);
}

/// Writes the rows in all three forms; the text leaves out the column that is the same in all rows.
void write(session& s, page& text, json& data, std::vector<row> const& rows, bool isothermal,
           bool of_the_model = true) {
    wording const words = s.words();
    char const* const strength = words.strength_unit();
    text.say("{:>26}{:>28}{:>13}{:>12}{}", "liquid", "vapour", isothermal ? "pressure" : "boils at",
             "relative", of_the_model ? "   uncertainty" : "");
    text.say("{0:>8}{1:>9}{2:>9}{0:>10}{1:>9}{2:>9}{3:>13}{4:>12}{5}", strength, "% mass", "% mol",
             isothermal ? words.pressure_unit() : words.temperature_unit(), "volatility",
             of_the_model ? fmt::format("{:>14}", fmt::format("± {}", strength)) : "");
    std::string csv;
    for (char const* const name : columns) csv += fmt::format("{}{}", csv.empty() ? "" : ",", name);
    data["rows"] = json::array();
    bool complete = true;
    for (row const& cells : rows) {
        std::string line;
        json values;
        for (std::size_t k = 0; k < cells.size(); ++k) {
            bool const hidden = k == (isothermal ? 6u : 7u) || k >= uncertain;
            int const width = k == 0 ? 8 : k == 3 ? 10 : k < 6 ? 9 : k < 8 ? 13 : 12;
            if (!hidden) line += fmt::format("{:>{}}", cell_text(cells[k], k, words), width);
            csv +=
                fmt::format("{}{}", k == 0 ? "\n" : ",", cells[k] ? fmt::format("{:.10g}", *cells[k]) : "");
            values[columns[k]] = cells[k] ? json(*cells[k]) : json();
            complete = complete && (cells[k] || k >= uncertain);
        }
        if (of_the_model) line += fmt::format("{:>14}", doubt_text(cells, words));
        text.say("{}", line);
        data["rows"].push_back(values);
    }
    if (of_the_model) {
        text.say("\nUncertainty: one standard uncertainty of the model's vapour; known from {}.\n"
                 "Over washes most measured vapours are weaker than the model's.",
                 measured_pressures(words));
    }
    if (!complete) {
        text.say("\n-: no value, outside the measured points or outside {}.",
                 words.us ? "32.02 to 248 °F" : "0.01 to 120 °C");
    }
    text.say("\n{}", still_caution);
    s.answer(text, data, csv + "\n");
}

void run(session& s) {
    given const& liquids = s.option("--liquids", "RANGE", "strengths of the liquid", "0 to 100 %mol by 5");
    surroundings const air = s.surroundings_options();
    given const& temperature =
        s.option("--temperature", "TEMP", "one temperature for all rows, instead of a pressure");
    given const& measured =
        s.option("--measured", "FILE", "file of points measured at that pressure (see below)");
    s.explain(points_format);
    s.offer_us_units();
    s.offer_csv();
    s.parse();
    bool const isothermal = temperature.present;
    if (isothermal && (air.pressure.typed() || air.altitude.typed())) {
        throw bad_input("give either --temperature or a pressure or altitude");
    }
    if (isothermal) {
        s.without(air.pressure);
        s.without(air.altitude);
    }
    if (isothermal && measured.present)
        throw bad_input("--measured needs a pressure or an altitude, not --temperature");

    std::vector<mole_fraction> strengths;
    for (given const& each : read_side(liquids).values) {
        strengths.push_back(to<mole_fraction>(composition(read_strength(each))));
    }
    page text;
    json data;
    if (isothermal) {
        units::temperature const t = read_any_temperature(temperature);
        text.say("Equilibrium of ethanol and water at {}", s.words().exact_temperature(t));
        text.gap();
        auto const rows = on_behalf_of(temperature, [&] { return model_rows(strengths, t); });
        return write(s, text, data, rows, true);
    }
    units::pressure const p = read_pressure(air);
    wording const words = s.words();
    std::string const under = words.pressure(p);
    data["pressure_kPa"] = in(p, kilopascal);
    if (measured.present) {
        points_at_pressure const read = read_points(measured, p);
        measured_equilibrium const points = laid_through(measured, read, p);
        text.say("Equilibrium of ethanol and water as measured under {}", under);
        text.gap();
        say_consistency(text, data, s.words(), points, read);
        return write(s, text, data, measured_rows(strengths, points), false, false);
    }
    text.say("Equilibrium of ethanol and water under {}", under);
    text.gap();
    say_azeotrope(text, words, p);
    data["azeotrope"] = azeotrope_to_json(p);
    text.gap();
    write(s, text, data, on_behalf_of(air.decisive(), [&] { return model_rows(strengths, p); }), false);
}

program::task const offered{who, run};

}  // namespace
