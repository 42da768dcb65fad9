// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Rows of a CSV file (RFC 4180), read as they are and written again byte by byte with more cells behind.

#include "quantities.hpp"

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace program {

/// The name of a column: "reading [%vol]" is the name reading with the unit %vol.
struct column_name {
    std::string name;  ///< without the unit
    std::string unit;  ///< may be empty
};

/// One row of a file.
struct row {
    std::string_view text;      ///< without its line end
    std::string_view line_end;  ///< empty at the end of the file
    std::size_t line;           ///< in the file, from 1
};

/// A file of rows below a row of names. Cells are separated by commas, semicolons or tabs, whichever the row
/// of names has most of; quoted cells can hold all of them, and line breaks.
class rows_file {
public:
    /// @param g    the option that names the file, for messages
    /// @param text its contents
    /// @throws bad_input if there is no row of names, or a quote is not closed
    rows_file(given const& g, std::string text);
    rows_file(rows_file const&) = delete;  // views into its own text
    rows_file& operator=(rows_file const&) = delete;

    char separator() const { return separator_; }
    /// Whether numbers have a decimal comma: with semicolons or tabs, if some have one and none has a point.
    bool has_decimal_commas() const { return has_decimal_commas_; }
    std::vector<column_name> const& columns() const { return columns_; }
    /// The row of names, with the byte order mark if there is one.
    row const& head() const { return head_; }
    std::vector<row> const& rows() const { return rows_; }

    /// The cells of a row as they are written, with their quotes.
    void split(row const& r, std::vector<std::string_view>& cells) const;
    /// The row with as many cells as there are columns: empty ones added; too many joined in the last,
    /// quoted.
    std::string even(row const& r) const;

private:
    std::string text_;
    char separator_ = ',';
    bool has_decimal_commas_ = false;
    row head_;
    std::vector<row> rows_;
    std::vector<column_name> columns_;
};

/// The contents of a cell without its quotes.
std::string contents_of_cell(std::string_view cell);

/// A cell with quotes, if its contents need them.
std::string cell_of(std::string_view contents, char separator);

/// Appends a number with ten significant digits: as {:.10g}, but faster; a tie may be rounded otherwise.
void append_number(std::string& text, double number, char decimal_sign);

/// Reads a whole file, or standard input for "-".
/// @throws bad_input if it cannot be read
std::string read_all(given const& g);

}  // namespace program
