// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/numeric/number_text.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// Error: a text is not the table or the quantity that was expected. For a table, the message names the line
/// and the column.
class text_error : public std::runtime_error {
public:
    /// @param text any text
    /// @return the text for a message: at most 40 bytes, with whole UTF-8 characters
    static std::string shortened(std::string_view text) {
        std::size_t length = 40;
        if (text.size() <= length) return std::string(text);
        while (length > 0 && (static_cast<unsigned char>(text[length]) & 0xc0) == 0x80) --length;
        return std::string(text.substr(0, length)) + "...";
    }

    /// @param line   line of the text, from 1; 0 if the reason concerns the whole text
    /// @param column name of the column; empty if the reason concerns the whole line
    /// @param reason what is wrong and what is accepted
    text_error(std::size_t line, std::string column, std::string const& reason)
        : std::runtime_error(where(line, column) + reason), line_(line), column_(std::move(column)) {}

    std::size_t line() const noexcept { return line_; }  ///< @return line of the text, from 1, or 0
    std::string const& column() const noexcept { return column_; }  ///< @return name of the column, or empty

private:
    static std::string where(std::size_t line, std::string const& column) {
        std::string text = line > 0 ? "line " + std::to_string(line) : "";
        if (!column.empty()) text += (text.empty() ? "column " : ", column ") + shortened(column);
        return text.empty() ? text : text + ": ";
    }

    std::size_t line_;
    std::string column_;
};

/// A table of numbers and words in text: CSV as RFC 4180 describes it, and its usual variants.
///
/// - The separator is the comma, the semicolon or the tab; the first line that is no comment shows which.
/// - Lines end with LF, CR LF or CR. A byte order mark of UTF-8 is ignored.
/// - A cell may be in double quotes; a quote inside it is doubled.
/// - A line that begins with '#' is a comment. Blank lines and lines of empty cells are ignored.
/// - Where the comma is not the separator, it may be the decimal sign; a text has one decimal sign only.
/// - The case of column names does not matter; no two names may be equal.
/// @par Source
/// @ref source_rfc_4180
class number_table {
public:
    /// A line of the text.
    struct line {
        std::size_t number;              ///< place in the text, from 1
        std::vector<std::string> cells;  ///< as written, without their quotes; one for a comment
    };

    /// Reads a table.
    /// @param text             contents of a file (UTF-8)
    /// @param names_if_nameless names of the columns, from the first, if the first line holds numbers: if one
    ///                         of its cells begins with a digit, a sign or a point. Empty: the first line
    ///                         always holds names
    /// @throws text_error if the text is UTF-16 or has a NUL, a quote is misplaced, a column has no name or
    ///         the name of another, a line has another number of cells than there are columns, or numbers
    ///         have decimal points and decimal commas
    explicit number_table(std::string_view text, std::vector<std::string> const& names_if_nameless = {}) {
        read_lines(text);
        if (rows_.empty()) return;
        names_line_ = rows_.front().number;
        bool const nameless =
            !names_if_nameless.empty() &&
            std::any_of(rows_.front().cells.begin(), rows_.front().cells.end(), begins_like_a_number);
        if (nameless) {
            std::size_t const count = rows_.front().cells.size();
            if (count > names_if_nameless.size()) {
                fail(rows_.front().number, "",
                     std::to_string(count) + " cells; without a line of names a line has at most " +
                         std::to_string(names_if_nameless.size()) + ": " + listed(names_if_nameless));
            }
            names_.assign(names_if_nameless.begin(),
                          names_if_nameless.begin() + static_cast<std::ptrdiff_t>(count));
        } else {
            take_names();
        }
        std::erase_if(rows_, [](line const& each) {
            return each.cells.size() > 1 &&
                   std::all_of(each.cells.begin(), each.cells.end(),
                               [](auto const& cell) { return trimmed(cell).empty(); });
        });
        for (line const& each : rows_) require_cells(each);
        if (separator_ != ',') find_decimal_sign();
    }

    /// @return names of the columns, as written
    std::vector<std::string> const& names() const { return names_; }
    /// @return line of the names, or of the first numbers if there are no names; 0 if the table is empty
    std::size_t names_line() const { return names_line_; }
    /// @return the lines below the names
    std::vector<line> const& rows() const { return rows_; }
    /// @return the lines that begin with '#'
    std::vector<line> const& comments() const { return comments_; }
    /// @return the character between cells: ',', ';' or a tab
    char separator() const { return separator_; }

    /// @param name of a column, in any case
    /// @return its place, from 0; nothing if there is no such column
    std::optional<std::size_t> find(std::string_view name) const {
        auto const found = std::find_if(names_.begin(), names_.end(),
                                        [&](auto const& each) { return lower(each) == lower(name); });
        if (found == names_.end()) return std::nullopt;
        return static_cast<std::size_t>(found - names_.begin());
    }
    /// @param name of a column, in any case
    /// @return its place, from 0
    /// @throws text_error if there is no such column
    std::size_t column(std::string_view name) const {
        auto const found = find(name);
        if (!found) fail(0, "", "no column " + std::string(name) + "; the columns are: " + listed(names_));
        return *found;
    }

    /// @param row    one of rows()
    /// @param column place of a column
    /// @return whether the cell is empty or blank
    static bool empty(line const& row, std::size_t column) { return trimmed(row.cells.at(column)).empty(); }

    /// @param row    one of rows()
    /// @param column place of a column
    /// @return the number in that cell
    /// @throws text_error if the cell is no finite number as a whole
    double number(line const& row, std::size_t column) const {
        auto const value = number_in(row.cells.at(column), decimal_sign_);
        if (value) return *value;
        std::string_view const cell = trimmed(row.cells.at(column));
        if (cell.empty()) fail(row.number, names_.at(column), "empty; a number is expected");
        bool const other_sign = number_in(cell, decimal_sign_ == '.' ? ',' : '.').has_value();
        fail(row.number, names_.at(column),
             quoted(cell) + " is not a number" +
                 (other_sign ? std::string(" with a decimal ") +
                                   (decimal_sign_ == '.' ? "point" : "comma, as the other numbers have")
                  : separator_ == ',' ? ""
                                      : "; thousands have no separator"));
    }

    /// @param text a cell
    /// @param decimal_sign point or comma
    /// @return the finite number that the cell holds as a whole, blanks around it and a plus sign allowed
    static std::optional<double> number_in(std::string_view text, char decimal_sign = '.') {
        text = trimmed(text);
        if (text.size() > 1 && text.front() == '+' && text[1] != '-') text.remove_prefix(1);
        std::string with_point;
        if (decimal_sign != '.') {
            if (text.find('.') != std::string_view::npos) return std::nullopt;
            with_point = text;
            std::replace(with_point.begin(), with_point.end(), decimal_sign, '.');
            text = with_point;
        }
        return numeric::number_in(text);
    }

    /// @param line   line of the text, from 1, or 0
    /// @param column name of a column, or empty
    /// @param reason what is wrong
    /// @throws text_error always
    [[noreturn]] static void fail(std::size_t line, std::string column, std::string const& reason) {
        raise_error(text_error(line, std::move(column), reason));
    }

    /// @param text any text
    /// @return the text without blanks at its ends, with A to Z in lower case
    static std::string lower(std::string_view text) {
        std::string result(trimmed(text));
        for (char& c : result) {
            if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
        }
        return result;
    }

    /// @param names any number of texts
    /// @return the first twelve, separated by commas, and the number of the others
    static std::string listed(std::vector<std::string> const& names) {
        constexpr std::size_t most = 12;
        std::string result;
        for (std::size_t k = 0; k < (std::min)(names.size(), most); ++k)
            result += (k == 0 ? "" : ", ") + text_error::shortened(names[k]);
        if (names.size() > most) result += " and " + std::to_string(names.size() - most) + " more";
        return result;
    }

    /// @param row    one of rows()
    /// @param column place of a column
    /// @return the cell as text for a message
    static std::string shown(line const& row, std::size_t column) {
        return text_error::shortened(trimmed(row.cells.at(column)));
    }

private:
    static std::string_view trimmed(std::string_view text) {
        auto const first = text.find_first_not_of(" \t");
        if (first == std::string_view::npos) return {};
        return text.substr(first, text.find_last_not_of(" \t") - first + 1);
    }

    // Without +, which g++ 12 takes for an overlapping copy here.
    static std::string quoted(std::string_view text) {
        return std::string("'").append(text_error::shortened(text)).append("'");
    }

    static bool begins_like_a_number(std::string_view cell) {
        cell = trimmed(cell);
        return !cell.empty() &&
               std::string_view("0123456789+-.").find(cell.front()) != std::string_view::npos;
    }

    // A tab or a semicolon between cells leaves commas inside them; outside quotes both are rare in names.
    static char separator_of(std::string_view line) {
        bool in_quotes = false;
        char found = ',';
        for (char const c : line) {
            if (c == '"') in_quotes = !in_quotes;
            if (in_quotes) continue;
            if (c == '\n' || c == '\r') break;
            if (c == '\t') return c;
            if (c == ';') found = c;
        }
        return found;
    }

    static void require_text(std::string_view text) {
        if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
            fail(0, "", "the text is in UTF-16; save it as UTF-8");
        if (text.find('\0') != std::string_view::npos) fail(0, "", "no text: expected a CSV file");
    }

    // Character by character, because the end of a line depends on the quotes before it.
    void read_lines(std::string_view text) {
        require_text(text);
        if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
        std::size_t number = 1;
        auto const end_of_line = [&](std::size_t& at) {  // skips LF, CR LF or CR
            at += text.substr(at, 2) == "\r\n" ? 2u : 1u;
            ++number;
        };
        bool first = true;
        for (std::size_t at = 0; at < text.size();) {
            std::string_view const rest = text.substr(at, text.find_first_of("\r\n", at) - at);
            std::string_view const content = trimmed(rest);
            if (content.empty() || content.front() == '#') {
                if (!content.empty()) comments_.push_back({number, {std::string(rest)}});
                at += rest.size();
                if (at < text.size()) end_of_line(at);
                continue;
            }
            if (std::exchange(first, false)) separator_ = separator_of(text.substr(at));
            line& row = rows_.emplace_back(line{number, {}});
            for (bool more = true; more;) {
                row.cells.push_back(take_cell(text, at, number));
                more = at < text.size() && text[at] == separator_;
                if (more) ++at;
            }
            if (at < text.size()) end_of_line(at);
        }
    }

    // The cell that begins at a place, which moves to the separator or the end of the line behind it.
    std::string take_cell(std::string_view text, std::size_t& at, std::size_t& number) const {
        std::string const ends{separator_, '\r', '\n'};
        auto const end = (std::min)(text.find_first_of(ends, at), text.size());
        std::string_view const plain = text.substr(at, end - at);
        auto const quote = plain.find('"');
        if (quote == std::string_view::npos) {
            at = end;
            return std::string(plain);
        }
        if (!trimmed(plain.substr(0, quote)).empty()) {
            fail(number, "",
                 "a quote inside the cell " + quoted(plain) +
                     "; such a cell stands in quotes, and the quote inside is doubled");
        }
        std::size_t const opened = number;
        std::string cell;
        for (at += quote + 1;; ++at) {
            if (at >= text.size()) fail(opened, "", "a quote opens here and does not close");
            if (text[at] == '"' && text.substr(at, 2) != "\"\"") break;
            if (text[at] == '"') ++at;
            bool const line_ends = text[at] == '\n' || (text[at] == '\r' && text.substr(at, 2) != "\r\n");
            if (line_ends) ++number;
            cell += text[at];
        }
        ++at;
        auto const next = (std::min)(text.find_first_of(ends, at), text.size());
        if (!trimmed(text.substr(at, next - at)).empty())
            fail(number, "", "text behind the closing quote of " + quoted(cell));
        at = next;
        return cell;
    }

    void take_names() {
        line const head = std::move(rows_.front());
        rows_.erase(rows_.begin());
        std::set<std::string> known;
        for (std::string const& cell : head.cells) {
            std::string const name(trimmed(cell));
            if (name.empty()) {
                fail(head.number, "",
                     "the column " + std::to_string(names_.size() + 1) +
                         " has no name; the line of names is " + quoted(listed(head.cells)));
            }
            if (!known.insert(lower(name)).second) fail(head.number, name, "two columns have this name");
            names_.push_back(name);
        }
    }

    void require_cells(line const& row) const {
        if (row.cells.size() == names_.size()) return;
        bool const decimal_commas = separator_ == ',' && row.cells.size() == 2 * names_.size();
        fail(row.number, "",
             std::to_string(row.cells.size()) + (row.cells.size() == 1 ? " cell, but " : " cells, but ") +
                 std::to_string(names_.size()) + (names_.size() == 1 ? " column" : " columns") +
                 (decimal_commas ? "; decimal commas need semicolons or tabs between the cells" : ""));
    }

    // The first number with a fraction decides; a number with the other sign could mean thousands.
    void find_decimal_sign() {
        std::optional<std::size_t> decided;
        for (line const& row : rows_) {
            for (std::size_t k = 0; k < names_.size(); ++k) {
                std::string const& cell = row.cells[k];
                bool const comma = cell.find(',') != std::string::npos;
                if (!comma && cell.find('.') == std::string::npos) continue;
                char const sign = comma ? ',' : '.';
                if (!number_in(cell, sign)) continue;
                if (decided && sign != decimal_sign_) {
                    fail(row.number, names_[k],
                         quoted(cell) + " has a decimal " + (comma ? "comma" : "point") +
                             ", a number in line " + std::to_string(*decided) + " a decimal " +
                             (comma ? "point" : "comma"));
                }
                if (!decided) decided = row.number;
                decimal_sign_ = sign;
            }
        }
    }

    std::size_t names_line_ = 0;
    char separator_ = ',';
    char decimal_sign_ = '.';
    std::vector<std::string> names_;
    std::vector<line> rows_;
    std::vector<line> comments_;
};

}  // namespace aqueth::inline AQUETH_ABI
