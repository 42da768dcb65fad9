// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Points of equilibrium from files: the published tables of this project, or somebody's own.

#include "quantities.hpp"

#include <aqueth/measured_equilibrium.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <cstring>
#include <memory>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace program {

/// A measured point: what was measured of it.
struct point {
    mole_fraction liquid{0.0};
    std::optional<mole_fraction> vapour{};
    std::optional<units::temperature> temperature{};
    std::optional<units::pressure> pressure{};
};

inline constexpr char const* points_format =
    "A FILE of points has three numbers a line between commas: the mole fractions (0 to 1) of ethanol in\n"
    "liquid and vapour and the temperature in °C, or only the first two. Lines with # are passed over. Or "
    "it\n"
    "begins with names of columns: x_ethanol, and some of y_ethanol, temperature_c or temperature_k,\n"
    "pressure_kpa; other columns are passed over, and so are points of another pressure.";

/// The contents of a file, if it can be one of points.
inline std::string read_file(given const& file) {
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> const in(std::fopen(file.text.c_str(), "rb"),
                                                             std::fclose);
    if (!in) refuse(file, fmt::format("cannot be read: {}", std::strerror(errno)));
    std::string text(std::size_t{1} << 20, '\0');
    text.resize(std::fread(text.data(), 1, text.size(), in.get()));
    if (std::ferror(in.get())) refuse(file, fmt::format("cannot be read: {}", std::strerror(errno)));
    if (std::fgetc(in.get()) != EOF) refuse(file, "longer than 1 MiB: no table of points");
    if (text.find('\0') != std::string::npos) refuse(file, "no text: expected a CSV file");
    return text;
}

/// The cells of a line of a table without quotes.
inline std::vector<std::string_view> cells_of(std::string_view line) {
    std::vector<std::string_view> cells;
    for (;;) {
        auto const comma = line.find(',');
        cells.push_back(trimmed(line.substr(0, comma)));
        if (comma == std::string_view::npos) return cells;
        line.remove_prefix(comma + 1);
    }
}

/// Reads a table whose first line names its columns; every other line is a point.
inline std::vector<point> read_named_columns(given const& file, std::vector<std::string> const& lines) {
    auto const names = cells_of(lines.front());
    std::vector<point> points;
    for (std::size_t row = 1; row < lines.size(); ++row) {
        auto const cells = cells_of(lines[row]);
        if (cells.size() < names.size())
            refuse(file, fmt::format("point {}: fewer cells than there are names of columns", row));
        point read;
        bool has_liquid = false;
        for (std::size_t k = 0; k < names.size(); ++k) {
            if (cells[k].empty()) continue;
            given const cell{fmt::format("{}, point {}, {}", file.text, row, names[k]),
                             std::string(cells[k])};
            auto const number = [&] {
                number_and_unit const q =
                    read_number(cell, cell.text, {"a number", "as the column's name says"});
                if (!q.unit.empty())
                    refuse(cell, "expected a plain number, its unit is in the column's name");
                return q.number;
            };
            auto const fraction = [&] { return on_behalf_of(cell, [&] { return mole_fraction(number()); }); };
            if (names[k] == "x_ethanol") read.liquid = fraction(), has_liquid = true;
            if (names[k] == "y_ethanol") read.vapour = fraction();
            if (names[k] == "temperature_c") read.temperature = celsius(number());
            if (names[k] == "temperature_k") read.temperature = kelvin(number());
            if (names[k] == "pressure_kpa") read.pressure = number() * kilopascal;
        }
        if (!has_liquid) refuse(file, fmt::format("point {}: no mole fraction in the column x_ethanol", row));
        points.push_back(read);
    }
    return points;
}

inline std::vector<point> read_points(given const& file) {
    std::string const text = read_file(file);
    std::vector<std::string> lines;
    for (std::string_view rest = text; !rest.empty();) {
        auto const end = (std::min)(rest.find('\n'), rest.size());
        std::string_view line = rest.substr(0, end);
        if (line.ends_with('\r')) line.remove_suffix(1);
        if (!trimmed(line).empty() && !line.starts_with('#')) lines.emplace_back(line);
        rest.remove_prefix((std::min)(end + 1, rest.size()));
    }
    if (!lines.empty() && lines.front().find("x_ethanol") != std::string::npos)
        return read_named_columns(file, lines);
    return on_behalf_of(file, [&] {
        std::vector<point> points;
        for (measured_point const& each : parse_measured_points(text))
            points.push_back({each.liquid, each.vapour, each.temperature, std::nullopt});
        return points;
    });
}

/// The points of a file that are for a pressure (within 0.5 %, which is 0.15 K) or do not say for which.
struct points_at_pressure {
    std::vector<point> points;
    std::size_t left_out;  ///< points of other pressures
};

inline points_at_pressure read_points(given const& file, units::pressure p) {
    std::vector<point> points = read_points(file);
    std::size_t const left_out = std::erase_if(points, [&](point const& each) {
        return each.pressure && !(std::abs(in(*each.pressure, p) - 1.0) < 0.005);
    });
    if (points.empty() && left_out == 0) refuse(file, "no point in it");
    if (points.empty()) {
        refuse(file, fmt::format("no point in it for {:.5g} kPa; {} of other pressures", in(p, kilopascal),
                                 left_out));
    }
    return {points, left_out};
}

}  // namespace program
