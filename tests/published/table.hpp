// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstddef>
#include <fstream>
#include <istream>
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

/// A file of tables/ in the format that tables/README.md describes. Anything else is an error: a check shall
/// not run on a file that was understood by half.
class table {
public:
    /// One row; cells are asked for by the name of their column.
    class row {
    public:
        /// @return the words or the digits in a column
        std::string const& text(std::string_view column) const { return (*cells_)[table_->column(column)]; }
        /// @return whether the source prints nothing there
        bool empty(std::string_view column) const { return text(column).empty(); }
        /// @return the number in a column
        double operator[](std::string_view column) const { return printed(column).value; }
        /// @return the number in a column with its printed decimals
        figure printed(std::string_view column) const {
            auto const f = parse(text(column));
            if (!f) table_->fail("no number in column " + std::string(column) + ": '" + text(column) + "'");
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
        row(table const& owner, std::vector<std::string> const& cells) : table_(&owner), cells_(&cells) {}
        table const* table_;
        std::vector<std::string> const* cells_;
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
    std::vector<std::string> const& columns() const { return names_; }          ///< names of the columns
    std::vector<std::string> const& doubts() const { return doubts_; }          ///< the doubts, one text each
    std::string const& header_of(std::size_t key) const { return text_[key]; }  ///< text of keys[key]

    /// @return the rows, in the order of the file
    std::vector<row> rows() const& {
        std::vector<row> result;
        result.reserve(rows_.size());
        for (auto const& cells : rows_) result.push_back(row(*this, cells));
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
    bool has(std::string_view name) const {
        return std::find(names_.begin(), names_.end(), name) != names_.end();
    }

    /// @return whether a column holds words
    static bool holds_words(std::string_view name) {
        return std::find(words.begin(), words.end(), name) != words.end();
    }

    /// @return the number a cell holds, if it is one and nothing else
    static std::optional<figure> parse(std::string_view cell) {
        figure result;
        auto const [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), result.value);
        if (error != std::errc() || end != cell.data() + cell.size() || !std::isfinite(result.value))
            return {};
        auto const point = cell.find('.');
        if (point != std::string_view::npos) result.decimals = static_cast<int>(cell.size() - point - 1);
        return result;
    }

private:
    [[noreturn]] void fail(std::string const& what) const {
        throw std::runtime_error("tables/" + file_ + (line_ > 0 ? " line " + std::to_string(line_) : "") +
                                 ": " + what);
    }

    void read(std::istream& stream) {
        std::string line;
        while (std::getline(stream, line)) {
            ++line_;
            if (line.empty()) fail("empty line");
            if (line.front() == '#') {
                header(line);
            } else if (names_.empty()) {
                names(line);
            } else {
                cells(line);
            }
        }
        line_ = 0;
        if (rows_.empty()) fail("no rows");
    }

    std::size_t column(std::string_view name) const {
        auto const found = std::find(names_.begin(), names_.end(), name);
        if (found == names_.end()) fail("no column named " + std::string(name));
        return static_cast<std::size_t>(found - names_.begin());
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

    void header(std::string const& line) {
        if (!names_.empty()) fail("a # line below the names of the columns");
        if (line.rfind("#  ", 0) == 0) {  // goes on from the line above
            if (key_ == keys.size()) fail("nothing to go on from");
            std::string const more = line.substr(line.find_first_not_of(' ', 1));
            text_[key_] += " " + more;
            if (key_ + 1 == keys.size()) doubts_.back() += " " + more;
            return;
        }
        auto const colon = line.find(": ");
        std::string const key = line.substr((std::min)(std::size_t(2), line.size()), colon - 2);
        auto const found = std::find(keys.begin(), keys.end(), key);
        if (line.rfind("# ", 0) != 0 || colon == std::string::npos || found == keys.end()) {
            fail("unknown header line: " + line);
        }
        auto const index = static_cast<std::size_t>(found - keys.begin());
        bool const is_doubt = index + 1 == keys.size();
        std::size_t const expected = key_ == keys.size() ? 0 : key_ + 1;
        if (index != expected && !(is_doubt && key_ == index)) fail("out of order: " + key);
        key_ = index;
        std::string const text = line.substr(colon + 2);
        if (is_doubt) {
            doubts_.push_back(text);
            if (!text_[key_].empty()) text_[key_] += " ";
        }
        text_[key_] += text;
    }

    static std::vector<std::string> split(std::string const& line) {
        std::vector<std::string> result(1);
        for (char const c : line) {
            if (c == ',') {
                result.emplace_back();
            } else {
                result.back() += c;
            }
        }
        return result;
    }

    void names(std::string const& line) {
        if (key_ + 1 != keys.size()) fail("the header lines are not complete");
        names_ = split(line);
        for (std::size_t i = 0; i < names_.size(); ++i) {
            bool const snake_case =
                !names_[i].empty() &&
                names_[i].find_first_not_of("abcdefghijklmnopqrstuvwxyz0123456789_") == std::string::npos;
            if (!snake_case) fail("not snake_case: " + names_[i]);
            if (std::count(names_.begin(), names_.end(), names_[i]) != 1)
                fail("two columns named " + names_[i]);
            if (names_[i] == "note" && i + 1 != names_.size()) fail("note is not the last column");
        }
    }

    void cells(std::string const& line) {
        auto const values = split(line);
        if (values.size() != names_.size()) {
            fail(std::to_string(values.size()) + " cells for " + std::to_string(names_.size()) + " columns");
        }
        for (std::size_t i = 0; i < values.size(); ++i) {
            if (names_[i] == "note") {
                auto const note = split_note(values[i]);
                if (!values[i].empty() && !note) fail("a note that marks nothing: " + values[i]);
                if (note && !note->first.empty() && !has(note->first))
                    fail("a note on no column: " + values[i]);
            } else if (holds_words(names_[i])) {
                if (values[i].empty()) fail("no words in column " + names_[i]);
            } else if (!values[i].empty() && !parse(values[i])) {
                fail("not a number: '" + values[i] + "' in column " + names_[i]);
            }
        }
        rows_.push_back(values);
    }

    std::string file_;
    std::size_t line_ = 0;  // while reading, for messages
    std::size_t key_ = keys.size();
    std::array<std::string, keys.size()> text_;
    std::vector<std::string> doubts_;
    std::vector<std::string> names_;
    std::vector<std::vector<std::string>> rows_;
};

}  // namespace aqueth::published
