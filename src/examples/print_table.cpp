// SPDX-License-Identifier: BSL-1.0
// Tables for the wall of a stillhouse: density, temperature correction, dilution.
#include "program.hpp"

#include <functional>
#include <limits>
#include <optional>

namespace {

using namespace program;

about const who{
    "print_table",
    "Prints a table. TABLE is one of\n"
    "  density          rows: strengths; columns: temperatures\n"
    "  correction       rows: readings; columns: temperatures; cells: true strength on the same scale\n"
    "  water-by-mass    rows: strengths of a spirit; columns: strengths wanted; cells: water to weigh in\n"
    "  water-by-volume  the same; cells: water to measure in\n"
    "A range is written '40 to 60 %vol by 5' (without 'by': by 1), or is a single value.",
    "The Quillbeck teaching stillhouse hangs a correction table beside its alcoholmeter:\n"
    "  $ print_table correction --rows '82 to 86 %vol' --columns '15 to 35 C by 5'\n"
    "  True strength in % vol at 20 °C",
    {correlation::oiml_r22::cited, correlation::glass_expansion::cited, correlation::freezing_point::cited}};

/// What a table holds: words for the sides, and the cell for a row and a column.
struct content {
    std::string caption;
    char const* down;
    char const* across;
    std::function<double(given const&, given const&)> cell;
    int decimals = 2;
};

content density_table() {
    auto const cell = [](given const& row, given const& column) {
        return density(composition(read_strength(row)), read_temperature(column)).value();
    };
    return {"Density in kg/m3", "strength", "temperature", cell};
}

content correction_table(instrument const& options) {
    content table{"True strength", "reading", "temperature", {}};
    stem const meter(options);
    table.caption += meter.shows_strength() ? " in " + name_of(meter.scale())
                                            : " in % vol at 20 °C, readings in " + name_of(meter.scale());
    table.cell = [meter](given const& row, given const& column) {
        return meter.strength(meter.composition(row, read_temperature(column))).number;
    };
    return table;
}

content water_table(given const& amount, given const& at, bool by_mass) {
    units::temperature const t = read_water_temperature(at);
    auto const cell = [by_mass, t, how_much = read_amount(amount)](given const& row, given const& column) {
        parcel const spirit = make_parcel(how_much, composition(read_strength(row)), t);
        parcel const water =
            std::visit([&](auto const& target) { return dilute(spirit, target, t, celsius(20)).addition; },
                       read_strength(column));
        return by_mass ? in(water.mass(), kilogram) : in(water.volume(), litre);
    };
    std::string const caption = fmt::format("{} of water for {} of spirit, measured at {}",
                                            by_mass ? "kg" : "L", amount.text, degrees(t));
    return {caption, "spirit", "strength wanted", cell, 4};
}

using row_of_cells = std::vector<std::optional<double>>;

/// Cells without an answer (frozen, off the scale, stronger than the spirit) stay empty; not all may.
std::vector<row_of_cells> fill(content const& table, side const& rows, side const& columns) {
    std::vector<row_of_cells> cells(rows.values.size());
    std::optional<range_error> no_answer;
    bool any = false;
    for (std::size_t k = 0; k < cells.size(); ++k) {
        for (given const& column : columns.values) {
            try {
                cells[k].emplace_back(table.cell(rows.values[k], column));
                any = true;
            } catch (range_error const& error) {
                no_answer = no_answer ? no_answer : error;
                cells[k].emplace_back();
            }
        }
    }
    if (!any) raise(*no_answer);
    return cells;
}

/// Puts the table on paper in all three forms.
void write(session& s, content const& table, side const& rows, side const& columns, char const* caution) {
    auto const cells = fill(table, rows, columns);
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
        json& row = values.emplace_back(json::array());
        for (auto const& cell : cells[k]) {
            line += fmt::format("{:>{}}", shown(cell), width);
            csv += cell ? fmt::format(",{:.10g}", *cell) : ",";
            row.push_back(cell ? json(*cell) : json());
        }
        text.say("{}", line);
    }
    if (!complete) text.say("\n-: frozen, off the scale, or stronger than the spirit.");
    text.say("\n{}", caution);
    s.answer(text,
             {{"table", table.caption},
              {"rows", {{"name", table.down}, {"unit", rows.unit}, {"values", rows.numbers}}},
              {"columns", {{"name", table.across}, {"unit", columns.unit}, {"values", columns.numbers}}},
              {"cells", values}},
             csv + "\n");
}

void run(session& s) {
    given const& kind = s.argument("TABLE", "density, correction, water-by-mass or water-by-volume");
    given const& down = s.required("--rows", "RANGE", "strengths or readings, '82 to 86 %vol'");
    given const& across = s.required("--columns", "RANGE", "temperatures or strengths, '15 to 35 C by 5'");
    instrument const options = s.instrument_options();
    given const& amount = s.option("--amount", "AMOUNT", "for water-by-...: of spirit", "1 L");
    given const& at = s.option("--temperature", "TEMP", "for water-by-...: of spirit and water", "20 C");
    s.offer_csv();
    s.parse();

    bool const correction = kind.text == "correction", by_mass = kind.text == "water-by-mass";
    bool const water = by_mass || kind.text == "water-by-volume";
    if (!correction && !water && kind.text != "density") {
        refuse(kind, "expected density, correction, water-by-mass or water-by-volume");
    }
    if (!water && (amount.present || at.present)) {
        throw bad_input("--amount and --temperature go with water-by-mass and water-by-volume");
    }
    if (!correction && (options.scale.present || options.glass.present)) {
        throw bad_input("--scale and --glass go with correction");
    }
    side const rows = read_side(down), columns = read_side(across);
    if (rows.values.size() * columns.values.size() > 1000000) {
        throw bad_input("--rows and --columns make more than 1000000 cells");
    }
    if (water) {
        write(s, water_table(amount, at, by_mass), rows, columns, fresh_mixture_caution);
    } else {
        write(s, correction ? correction_table(options) : density_table(), rows, columns, vapour_caution);
    }
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
