// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/number_table.hpp>

#include <cstddef>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>

/// Shared parts of the fitting programs.
namespace aqueth::fit {

/// A table of tables/, its cells as printed, so that a fit can use the exact decimals.
struct table : number_table {
    using number_table::number_table;

    /// @param name a column's name
    /// @return whether there is one
    bool has(std::string const& name) const { return find(name).has_value(); }

    /// @param row  which row
    /// @param name a column's name
    /// @return the cell as printed
    /// @throws text_error if there is no such column
    std::string const& text(std::size_t row, std::string const& name) const {
        return rows().at(row).cells.at(column(name));
    }

    /// @param row  which row
    /// @param name a column's name
    /// @return whether the cell is empty in the source
    bool empty(std::size_t row, std::string const& name) const { return text(row, name).empty(); }

    /// @param row  which row
    /// @param name a column's name
    /// @return the number in that cell
    /// @throws text_error if it is not one
    double number(std::size_t row, std::string const& name) const {
        return number_table::number(rows().at(row), column(name));
    }

    /// @param row which row
    /// @return its temperature in K, from whichever of the two columns the table has
    double kelvin(std::size_t row) const {
        return has("temperature_k") ? number(row, "temperature_k") : number(row, "temperature_c") + 273.15;
    }
};

/// Reads a table of tables/.
/// @param path file name
/// @return its names and rows
/// @throws std::runtime_error if the file cannot be read or is no table
inline table read_table(std::string const& path) {
    std::ifstream file(path);
    if (!file) throw std::runtime_error("cannot read " + path);
    std::string const text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    try {
        return table(text);
    } catch (text_error const& error) {
        throw std::runtime_error(path + ": " + error.what());
    }
}

}  // namespace aqueth::fit
