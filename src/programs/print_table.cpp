// SPDX-License-Identifier: BSL-1.0
// Tables for the wall of a stillhouse: density, temperature correction, dilution.
#include "drawing.hpp"
#include "program.hpp"
#include "progress.hpp"

#include <aqueth/array.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>
#include <variant>

namespace {

using namespace program;

about const who{
    "print_table",
    topic::how_strong,
    "A table of density, correction or dilution for the wall",
    "Prints a table. TABLE is one of\n"
    "  density          rows: strengths; columns: temperatures\n"
    "  correction       rows: readings; columns: temperatures; cells: true strength on the same scale\n"
    "  contraction      rows: strengths of a mixture; columns: temperatures; cells: volume lost in mixing "
    "it\n"
    "                   from ethanol and water, in % of their volumes\n"
    "  water-by-mass    rows: strengths of a spirit; columns: strengths wanted; cells: water to add by the "
    "balance\n"
    "  water-by-volume  the same; cells: water to add by volume\n"
    "Write a range as '40 to 60 %vol by 5' (default step 1), or give a single value.",
    "The Quillbeck teaching stillhouse hangs a correction table beside its alcoholometer:\n"
    "  $ aqueth print_table correction --rows '82 to 86 %vol' --columns '15 to 35 C by 5'\n"
    "  True strength in % vol at 20 °C",
    {correlation::oiml_r22::cited, correlation::glass_expansion::cited, correlation::freezing_point::cited}};

using row_of_cells = std::vector<std::optional<double>>;

/// Computes cells that may have no value (frozen, off the scale, stronger than the spirit). It keeps the
/// first error, which is reported if no cell has a value. Callers skip further cells that are sure to fail,
/// because an exception takes the time of many cells.
class asker {
public:
    template <class F>
    auto ask(F const& f) -> std::optional<decltype(f())> {
        try {
            return f();
        } catch (refusal const& error) {
            if (!first_) first_ = error;
            return std::nullopt;
        }
    }
    bool knows_a_refusal() const { return first_.has_value(); }
    [[noreturn]] void raise_first() const { raise_error(*first_); }

private:
    std::optional<refusal> first_;
};

/// The contents of a table: names of its sides, and the cells of a row, empty where there is no value.
struct content {
    std::string caption;
    char const* down;
    char const* across;
    std::function<row_of_cells(given const&)> row;
    int decimals = 2;
    std::string axis = {};   ///< name of the cells in a picture, if the caption is too long for it
    std::string title = {};  ///< of the picture, likewise
};

content density_table(wording const& words, side const& columns, asker& cells) {
    std::vector<double> t;
    for (given const& column : columns.values) t.push_back(read_temperature(column).celsius());
    auto const row_of = [&cells, t, words](given const& row) {
        row_of_cells result(t.size());
        auto const w = cells.ask([&] { return composition(read_strength(row)); });
        if (!w) return result;
        std::vector<double> const same(t.size(), w->value());
        std::vector<double> rho(t.size());
        arrays::density(same, t, rho);  // NaN instead of an exception
        for (std::size_t k = 0; k < t.size(); ++k) {
            if (!std::isnan(rho[k]))
                result[k] = words.us
                                ? in(density_in_air(rho[k] * kilogram_per_cubic_metre), pound / us_gallon)
                                : rho[k];
            else if (!cells.knows_a_refusal())
                cells.ask([&] { return density(*w, celsius(t[k])); });
        }
        return result;
    };
    if (words.us) return {"Weight in lb/US gal, in air", "strength", "temperature", row_of, 4};
    return {"Density in kg/m3", "strength", "temperature", row_of};
}

content contraction_table(side const& columns, asker& cells) {
    std::vector<units::temperature> t;
    for (given const& column : columns.values) t.push_back(read_temperature(column));
    auto const row_of = [&cells, t](given const& row) {
        row_of_cells result(t.size());
        auto const w = cells.ask([&] { return composition(read_strength(row)); });
        for (std::size_t k = 0; w && k < t.size(); ++k) {
            result[k] = cells.ask([&] {
                std::array const parts{parcel::of(w->value() * kilogram, mass_fraction(1.0), t[k]),
                                       water((1.0 - w->value()) * kilogram, t[k])};
                return mix(parts, t[k]).contraction_percent();
            });
        }
        return result;
    };
    return {
        "Volume lost in mixing ethanol and water, %", "strength", "temperature", row_of, 2, "volume lost, %"};
}

content correction_table(side const& columns, instrument const& options, asker& cells) {
    content table{"True strength", "reading", "temperature", {}, 2, "true strength"};
    stem const meter(options);
    table.axis += ", " + (meter.shows_strength() ? name_of(meter.scale()) : "% vol at 20 °C");
    table.caption += meter.shows_strength() ? " in " + name_of(meter.scale())
                                            : " in % vol at 20 °C, readings in " + name_of(meter.scale());
    std::vector<units::temperature> t;
    for (given const& column : columns.values) t.push_back(read_temperature(column));
    table.row = [&cells, meter, t](given const& row) {
        row_of_cells result(t.size());
        for (std::size_t k = 0; k < t.size(); ++k) {
            bool const covered = plain::liquid_temperature_range(t[k].celsius()).ok;
            if (!covered && cells.knows_a_refusal()) continue;
            result[k] = cells.ask([&] { return meter.strength(meter.composition(row, t[k])).number; });
        }
        return result;
    };
    return table;
}

/// The unit of the water to add, and the decimals of its cells.
struct cell_unit {
    char const* name;
    units::mass mass = kilogram;
    units::volume volume = litre;
    int decimals = 4;
};

/// A unit in which the amount of spirit is a number of 1 or more, and decimals that tell as many digits of it
/// as the answer has. Machines get kilograms and litres.
cell_unit unit_near(wording const& words, amount const& spirit, bool by_mass, bool for_machines) {
    double const rough_litres = std::holds_alternative<units::volume>(spirit)
                                    ? in(std::get<units::volume>(spirit), litre)
                                    : in(std::get<units::mass>(spirit), kilogram);
    units::mass const rough_mass = rough_litres * kilogram;
    units::volume const rough_volume = rough_litres * litre;
    cell_unit unit = {};
    double size = 0.0;
    if (by_mass) {
        bool const small = !for_machines && rough_mass < (words.us ? pound : kilogram);
        unit.name = words.us ? (small ? "oz" : "lb") : small ? "g" : "kg";
        unit.mass = words.us ? (small ? ounce : pound) : small ? gram : kilogram;
        size = in(rough_mass, unit.mass);
    } else {
        bool const small = !for_machines && rough_volume < words.one_volume();
        unit.name = words.us ? (small ? "US fl oz" : "US gal") : small ? "mL" : "L";
        unit.volume = words.us ? (small ? us_fluid_ounce : us_gallon) : small ? millilitre : litre;
        size = in(rough_volume, unit.volume);
    }
    unit.decimals = std::clamp(words.digits - static_cast<int>(std::floor(std::log10(size))), 0, 15);
    return unit;
}

content water_table(wording const& words, side const& columns, given const& amount, given const& at,
                    bool by_mass, bool for_machines, asker& cells) {
    units::temperature const t = read_water_temperature(at);
    std::vector<strength> targets;
    std::vector<std::optional<mass_fraction>> compositions;
    for (given const& column : columns.values) {
        targets.push_back(read_strength(column));
        compositions.push_back(cells.ask([&] { return composition(targets.back()); }));
    }
    program::amount const how_much = read_amount(amount);
    cell_unit const unit = unit_near(words, how_much, by_mass, for_machines);
    auto const row_of = [=, &cells](given const& row) {
        row_of_cells result(targets.size());
        auto const spirit =
            cells.ask([&] { return make_parcel(how_much, composition(read_strength(row)), t); });
        if (!spirit) return result;
        for (std::size_t k = 0; k < targets.size(); ++k) {
            bool const too_strong =
                !compositions[k] || compositions[k]->value() > spirit->composition().value() + 1e-6;
            if (too_strong && cells.knows_a_refusal()) continue;
            result[k] = cells.ask([&] {
                parcel const water = std::visit(
                    [&](auto const& target) {
                        return dilute(*spirit, target, water_at(t), words.reference_temperature()).addition;
                    },
                    targets[k]);
                return by_mass ? in(balance_indication_of(water), unit.mass)
                               : in(water.volume(), unit.volume);
            });
        }
        return result;
    };
    char const* const how = by_mass ? " by the balance" : "";
    std::string const caption = fmt::format("{} of water{} for {} of spirit, measured at {}", unit.name, how,
                                            amount.text, words.temperature(t));
    content table{caption, "spirit", "strength wanted", row_of, unit.decimals};
    table.axis = fmt::format("water to add, {}{}", unit.name, how);
    table.title = fmt::format("Water for {} of spirit, at {}", amount.text, words.temperature(t));
    return table;
}

/// The cautions of spirit and water that are mixed at a temperature.
std::string water_cautions(given const& at) {
    std::array const parts{water(kilogram, read_water_temperature(at))};
    return mixing_cautions(fresh_mixture(parts));
}

/// All rows. Cells without a value stay empty; if all are empty, the first error is raised.
std::vector<row_of_cells> fill(content const& table, side const& rows, asker const& cells) {
    std::vector<row_of_cells> result;
    progress_line line(who.name);
    bool any = false;
    for (given const& row : rows.values) {
        result.push_back(table.row(row));
        for (auto const& cell : result.back()) any = any || cell;
        line.show([&] {
            double const share = static_cast<double>(result.size()) / static_cast<double>(rows.values.size());
            return fmt::format("{:.0f} % of the table computed", 100.0 * share);
        });
    }
    if (!any) cells.raise_first();
    return result;
}

/// A unit as a picture shows it: "% vol" and "°C" for '%vol' and 'C' of the command line.
std::string in_picture(std::string const& unit) {
    if (unit == "C" || unit == "F") return "°" + unit;
    if (unit.size() > 1 && unit[0] == '%') return "% " + unit.substr(1);
    return unit;
}

/// A line for each column of the table.
std::string picture_of(std::filesystem::path const& path, content const& table, side const& rows,
                       side const& columns, std::vector<row_of_cells> const& cells) {
    std::string script = picture_head(path, 960, 640, table.title.empty() ? table.caption : table.title) +
                         fmt::format("set xlabel {}\nset ylabel {}\n",
                                     in_quotes(fmt::format("{}, {}", table.down, in_picture(rows.unit))),
                                     in_quotes(table.axis.empty() ? table.caption : table.axis));
    std::string plots;
    for (std::size_t k = 0; k < columns.numbers.size(); ++k) {
        std::string lines;
        for (std::size_t row = 0; row < cells.size(); ++row) {
            if (cells[row][k]) lines += fmt::format("{:.8g} {:.8g}\n", rows.numbers[row], *cells[row][k]);
        }
        if (lines.empty()) continue;
        script += fmt::format("$column{} << EOD\n{}EOD\n", k, lines);
        plots += fmt::format("{}$column{} using 1:2 with linespoints {} pointtype {} pointsize 0.5 title {}",
                             plots.empty() ? "plot " : ", ", k, line_style(k), k + 4,
                             in_quotes(fmt::format("{:g} {}", columns.numbers[k], in_picture(columns.unit))));
    }
    return script + plots + "\n";
}

/// Writes the table in all three forms, and draws it.
void write(session& s, content const& table, side const& rows, side const& columns, asker const& asked,
           picture_options const& picture, std::filesystem::path const& path, std::string const& caution) {
    auto const cells = fill(table, rows, asked);
    auto const shown = [&](std::optional<double> const& cell) {
        return cell ? fmt::format("{:.{}f}", *cell, table.decimals) : std::string("-");
    };
    std::size_t width = 8;
    bool complete = true;
    for (row_of_cells const& row : cells) {
        for (auto const& cell : row) {
            width = (std::max)(width, shown(cell).size() + 2);
            complete = complete && cell;
        }
    }

    page text;
    text.say("{}", table.caption);
    text.say("down: {} in {}; across: {} in {}\n", table.down, rows.unit, table.across, columns.unit);
    std::string line = fmt::format("{:>8}", ""), csv = fmt::format("{} [{}]", table.down, rows.unit);
    for (double const number : columns.numbers) {
        line += fmt::format("{:>{}.6g}", number, width);
        csv += fmt::format(",{:.10g} {}", number, columns.unit);
    }
    text.say("{}", line);
    json values = json::array();
    for (std::size_t k = 0; k < cells.size(); ++k) {
        line = fmt::format("{:>8.6g}", rows.numbers[k]);
        csv += fmt::format("\n{:.10g}", rows.numbers[k]);
        json& row = values.push_back(json::array());
        for (auto const& cell : cells[k]) {
            line += fmt::format("{:>{}}", shown(cell), width);
            csv += cell ? fmt::format(",{:.10g}", *cell) : ",";
            row.push_back(cell ? json(*cell) : json());
        }
        text.say("{}", line);
    }
    if (picture.wanted()) {
        text.gap();
        picture.draw(s, text, path, picture_of(path, table, rows, columns, cells));
    }
    if (!complete) text.say("\n-: no value (frozen, off the scale, or stronger than the spirit).");
    text.say("\n{}", caution);
    s.answer(text,
             {{"table", table.caption},
              {"rows", {{"name", table.down}, {"unit", rows.unit}, {"values", rows.numbers}}},
              {"columns", {{"name", table.across}, {"unit", columns.unit}, {"values", columns.numbers}}},
              {"cells", values}},
             csv + "\n");
}

void run(session& s) {
    given const& kind =
        s.argument("TABLE", "density, correction, contraction, water-by-mass or water-by-volume");
    given const& down = s.required("--rows", "RANGE", "strengths or readings, '82 to 86 %vol'");
    given const& across = s.required("--columns", "RANGE", "temperatures or strengths, '15 to 35 C by 5'");
    instrument const options = s.instrument_options();
    given const& amount =
        s.option("--amount", "AMOUNT", "for water-by-...: amount of spirit", "1 L", "1 gal");
    given const& at = s.option("--temperature", "TEMP", "for water-by-...: temperature of spirit and water",
                               "20 C", "60 F");
    auto const picture = picture_options::offer(s, "the table, a line for each column");
    s.offer_us_units();
    s.offer_csv();
    s.parse();

    bool const correction = kind.text == "correction", by_mass = kind.text == "water-by-mass";
    bool const water = by_mass || kind.text == "water-by-volume";
    bool const contraction = kind.text == "contraction";
    if (!correction && !water && !contraction && kind.text != "density") {
        refuse(kind, "expected density, correction, contraction, water-by-mass or water-by-volume");
    }
    if (!water && (amount.present || at.present)) {
        throw bad_input("--amount and --temperature need water-by-mass or water-by-volume");
    }
    if (!correction && (options.scale.typed() || options.glass.typed() || options.correction.typed())) {
        throw bad_input("--scale, --glass and --correction need correction");
    }
    if (!correction) {
        for (given const* each : {&options.scale, &options.glass, &options.correction}) s.without(*each);
    }
    bool const for_machines = s.in_json() || s.in_csv();
    wording const words{s.words().us && !for_machines, s.words().digits};  // for machines tables are metric
    side const rows = read_side(down), columns = read_side(across);
    if (rows.values.size() * columns.values.size() > 1000000) {
        throw bad_input("--rows and --columns give more than 1000000 cells");
    }
    if (picture.wanted() && columns.values.size() > colours.size())
        refuse(across, fmt::format("a picture has at most {} columns", colours.size()));
    std::filesystem::path const path = picture.read();
    asker cells;
    content const table = water        ? water_table(words, columns, amount, at, by_mass, for_machines, cells)
                          : correction ? correction_table(columns, options, cells)
                          : contraction ? contraction_table(columns, cells)
                                        : density_table(words, columns, cells);
    write(s, table, rows, columns, cells, picture, path, water ? water_cautions(at) : vapour_caution);
}

program::task const offered{who, run};

}  // namespace
