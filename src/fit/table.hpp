// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <algorithm>
#include <charconv>
#include <cstddef>
#include <fstream>
#include <stdexcept>
#include <string>
#include <system_error>
#include <vector>

/// What the fitting programs share.
namespace aqueth::fit {

/// A table of tables/: one header row, then rows of text cells. Lines beginning with '#' describe the source.
struct table {
    std::vector<std::string> names;
    std::vector<std::vector<std::string>> rows;

    /// @param name a column's name
    /// @return its index
    /// @throws std::runtime_error if there is none
    std::size_t column(std::string const& name) const {
        for (std::size_t i = 0; i < names.size(); ++i)
            if (names[i] == name) return i;
        throw std::runtime_error("no column named " + name);
    }

    /// @param name a column's name
    /// @return whether there is one
    bool has(std::string const& name) const {
        return std::find(names.begin(), names.end(), name) != names.end();
    }

    /// @param row  which row
    /// @param name a column's name
    /// @return whether the source prints nothing there
    bool empty(std::size_t row, std::string const& name) const {
        return rows.at(row).at(column(name)).empty();
    }

    /// @param row  which row
    /// @param name a column's name
    /// @return the number in that cell
    /// @throws std::runtime_error if it is not one
    double number(std::size_t row, std::string const& name) const {
        std::string const& text = rows.at(row).at(column(name));
        double value = 0.0;
        auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
        if (error != std::errc() || end != text.data() + text.size())
            throw std::runtime_error(name + ": not a number: '" + text + "'");
        return value;
    }

    /// @param row which row
    /// @return its temperature in K, from whichever of the two columns the table has
    double kelvin(std::size_t row) const {
        return has("temperature_k") ? number(row, "temperature_k") : number(row, "temperature_c") + 273.15;
    }
};

/// Reads a table of tables/.
/// @param path file name
/// @return its header and rows, cells as printed (so that a fit can use the exact decimals)
/// @throws std::runtime_error if the file cannot be read or a row has another number of cells than the header
inline table read_table(std::string const& path) {
    std::ifstream file(path);
    if (!file) throw std::runtime_error("cannot read " + path);
    table result;
    std::string line;
    while (std::getline(file, line)) {
        if (line.empty() || line.front() == '#') continue;
        std::vector<std::string> cells(1);
        for (char const c : line) {
            if (c == ',') {
                cells.emplace_back();
            } else {
                cells.back() += c;
            }
        }
        if (result.names.empty()) {
            result.names = cells;
        } else if (cells.size() == result.names.size()) {
            result.rows.push_back(cells);
        } else {
            throw std::runtime_error(path + ": a row has " + std::to_string(cells.size()) +
                                     " cells, the header " + std::to_string(result.names.size()) + ": " +
                                     line);
        }
    }
    return result;
}

}  // namespace aqueth::fit
