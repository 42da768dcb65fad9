// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <cstddef>
#include <fstream>
#include <stdexcept>
#include <string>
#include <vector>

/// What the fitting programs share.
namespace aqueth::fit {

/// A table of tables/: one header row, then rows of text cells. Lines that begin with '#' describe the source.
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
