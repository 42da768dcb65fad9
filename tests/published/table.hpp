// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/number_table.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <fstream>
#include <istream>
#include <iterator>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

/// The checks of the library against published tables, and the reader of those tables.
namespace aqueth::published {

/// A figure as the source prints it: the number, and how many decimals it was printed with.
struct figure {
    double value = 0.0;
    int decimals = 0;
};

/// A file of tables/ in the format that tables/README.md describes: aqueth::number_table splits it, and what
/// that format adds is checked here. Anything else is an error: no check may run on a file that was
/// understood by half.
class table {
public:
    /// One row; cells are asked for by the name of their column.
    class row {
    public:
        /// @return the words or the digits in a column
        std::string const& text(std::string_view column) const {
            return line_->cells[table_->column(column)];
        }
        /// @return whether the source prints nothing there
        bool empty(std::string_view column) const { return text(column).empty(); }
        /// @return the number in a column
        double operator[](std::string_view column) const { return printed(column).value; }
        /// @return the number in a column with its printed decimals
        figure printed(std::string_view column) const {
            auto const f = parse(text(column));
            if (!f)
                table_->fail(*line_,
                             "no number in column " + std::string(column) + ": '" + text(column) + "'");
            return *f;
        }
        /// @return why a figure is doubtful; empty if it is not
        std::string doubt(std::string_view column) const {
            if (!table_->has("note")) return {};
            auto const note = split_note(text("note"));
            return note && (note->first.empty() || note->first == column) ? note->second : std::string();
        }

    private:
        friend class table;
        row(table const& owner, number_table::line const& line) : table_(&owner), line_(&line) {}
        table const* table_;
        number_table::line const* line_;
    };

    /// The lines every file begins with, in this order; only doubts may come more than once.
    static constexpr std::array<std::string_view, 6> keys{"title", "source", "status",
                                                          "used",  "units",  "doubts"};

    /// Columns that hold words.
    static constexpr std::array<std::string_view, 8> words{"id",   "kind",   "quantity",    "property",
                                                           "unit", "status", "publication", "note"};

    /// @param file name of a file in tables/
    /// @throws std::runtime_error if it cannot be read or is not in the format
    explicit table(std::string file) : file_(std::move(file)) {
        std::ifstream stream(std::string(AQUETH_TABLES) + "/" + file_);
        if (!stream) fail("cannot be read");
        read(stream);
    }

    /// The same from text, for testing the reader itself.
    table(std::string file, std::istream& stream) : file_(std::move(file)) { read(stream); }

    std::string const& file() const { return file_; }                           ///< name of the file
    std::vector<std::string> const& columns() const { return lines_.names(); }  ///< names of the columns
    std::vector<std::string> const& doubts() const { return doubts_; }          ///< the doubts, one text each
    std::string const& header_of(std::size_t key) const { return text_[key]; }  ///< text of keys[key]

    /// @return the rows, in the order of the file
    std::vector<row> rows() const& {
        std::vector<row> result;
        result.reserve(lines_.rows().size());
        for (auto const& line : lines_.rows()) result.push_back(row(*this, line));
        return result;
    }

    /// @return the row whose column holds these words or digits
    row where(std::string_view column_name, std::string_view content) const& {
        auto const all = rows();
        auto const found = std::find_if(all.begin(), all.end(),
                                        [&](row const& r) { return r.text(column_name) == content; });
        if (found == all.end()) fail("no row with " + std::string(column_name) + " " + std::string(content));
        return *found;
    }

    std::vector<row> rows() && = delete;                        // rows look into their table
    row where(std::string_view, std::string_view) && = delete;  // and shall not outlive it

    /// @return whether there is such a column
    bool has(std::string_view name) const { return lines_.find(name).has_value(); }

    /// @return whether a column holds words
    static bool holds_words(std::string_view name) {
        return std::find(words.begin(), words.end(), name) != words.end();
    }

    /// @return the number a cell holds, if it is one and nothing else
    static std::optional<figure> parse(std::string_view cell) {
        bool const bare =
            !cell.empty() && cell.find_first_of("+ \t") != 0 && cell.find_last_of(" \t") + 1 != cell.size();
        auto const number = number_table::number_in(cell);
        if (!bare || !number) return {};
        figure result{*number};
        auto const point = cell.find('.');
        if (point != std::string_view::npos) result.decimals = static_cast<int>(cell.size() - point - 1);
        return result;
    }

private:
    [[noreturn]] void fail(std::string const& what) const {
        throw std::runtime_error("tables/" + file_ + ": " + what);
    }
    [[noreturn]] void fail(number_table::line const& line, std::string const& what) const {
        fail("line " + std::to_string(line.number) + ": " + what);
    }

    void read(std::istream& stream) {
        std::string const text{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
        if (text.starts_with('\n') || text.find("\n\n") != std::string::npos) fail("empty line");
        try {
            lines_ = number_table(text);
        } catch (text_error const& error) {
            fail(error.what());
        }
        if (lines_.rows().empty()) fail("no rows");
        if (lines_.separator() != ',') fail("the separator is not the comma");
        for (number_table::line const& line : lines_.comments()) header(line);
        if (key_ + 1 != keys.size()) fail("the header lines are not complete");
        names();
        for (number_table::line const& line : lines_.rows()) cells(line);
    }

    std::size_t column(std::string_view name) const {
        auto const found = lines_.find(name);
        if (!found) fail("no column named " + std::string(name));
        return *found;
    }

    // "suspect: why" and "suspect column: why" to the column (empty for the whole row) and the reason
    static std::optional<std::pair<std::string, std::string>> split_note(std::string_view note) {
        constexpr std::string_view mark = "suspect";
        auto const colon = note.find(": ");
        if (note.substr(0, mark.size()) != mark || colon == std::string_view::npos) return {};
        std::string_view column = note.substr(mark.size(), colon - mark.size());
        if (!column.empty() && column.front() == ' ') column.remove_prefix(1);
        return std::pair(std::string(column), std::string(note.substr(colon + 2)));
    }

    void header(number_table::line const& comment) {
        std::string const& line = comment.cells.front();
        if (comment.number > lines_.names_line()) fail(comment, "a # line below the names of the columns");
        if (line.rfind("#  ", 0) == 0) {  // goes on from the line above
            if (key_ == keys.size()) fail(comment, "nothing to go on from");
            std::string const more = line.substr(line.find_first_not_of(' ', 1));
            text_[key_] += " " + more;
            if (key_ + 1 == keys.size()) doubts_.back() += " " + more;
            return;
        }
        auto const colon = line.find(": ");
        std::string const key = line.substr((std::min)(std::size_t(2), line.size()), colon - 2);
        auto const found = std::find(keys.begin(), keys.end(), key);
        if (line.rfind("# ", 0) != 0 || colon == std::string::npos || found == keys.end()) {
            fail(comment, "unknown header line: " + line);
        }
        auto const index = static_cast<std::size_t>(found - keys.begin());
        bool const is_doubt = index + 1 == keys.size();
        std::size_t const expected = key_ == keys.size() ? 0 : key_ + 1;
        if (index != expected && !(is_doubt && key_ == index)) fail(comment, "out of order: " + key);
        key_ = index;
        std::string const text = line.substr(colon + 2);
        if (is_doubt) {
            doubts_.push_back(text);
            if (!text_[key_].empty()) text_[key_] += " ";
        }
        text_[key_] += text;
    }

    void names() const {
        auto const& all = columns();
        for (std::size_t i = 0; i < all.size(); ++i) {
            bool const snake_case =
                all[i].find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string::npos;
            if (!snake_case) fail("not snake_case: " + all[i]);
            if (all[i] == "note" && i + 1 != all.size()) fail("note is not the last column");
        }
    }

    void cells(number_table::line const& line) const {
        for (std::size_t i = 0; i < line.cells.size(); ++i) {
            std::string const& name = columns()[i];
            std::string const& cell = line.cells[i];
            if (name == "note") {
                auto const note = split_note(cell);
                if (!cell.empty() && !note) fail(line, "a note that marks nothing: " + cell);
                if (note && !note->first.empty() && !has(note->first))
                    fail(line, "a note on no column: " + cell);
            } else if (holds_words(name)) {
                if (cell.empty()) fail(line, "no words in column " + name);
            } else if (!cell.empty() && !parse(cell)) {
                fail(line, "not a number: '" + cell + "' in column " + name);
            }
        }
    }

    std::string file_;
    number_table lines_{""};
    std::size_t key_ = keys.size();
    std::array<std::string, keys.size()> text_;
    std::vector<std::string> doubts_;
};

}  // namespace aqueth::published
