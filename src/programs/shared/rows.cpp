// SPDX-License-Identifier: BSL-1.0
#include "rows.hpp"

#include <algorithm>
#include <cerrno>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <memory>
#include <utility>

namespace program {

namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

/// Where the row that begins at a byte ends: at its line end, or at the end of the text.
/// @return npos if a quote is not closed
std::size_t end_of_row(std::string_view text, std::size_t begin, char separator) {
    for (std::size_t at = begin; at < text.size(); ++at) {
        char const c = text[at];
        if (c == '\n') return at;
        bool const opens = c == '"' && (at == begin || text[at - 1] == separator);
        if (!opens) continue;
        // A doubled quote is one quote inside.
        do {
            at = text.find('"', at + 1);
            if (at == std::string_view::npos) return at;
            if (at + 1 >= text.size() || text[at + 1] != '"') break;
            ++at;
        } while (true);
    }
    return text.size();
}

/// The separator of which a row of names has most, outside quotes; a comma if there is none.
char most_frequent_separator(std::string_view names) {
    std::size_t counts[3] = {};
    constexpr std::string_view separators = ",;\t";
    bool quoted = false;
    for (char const c : names) {
        if (c == '"') quoted = !quoted;
        auto const which = separators.find(c);
        if (!quoted && which != std::string_view::npos) ++counts[which];
    }
    return separators[static_cast<std::size_t>(std::max_element(counts, counts + 3) - counts)];
}

column_name name_of_column(std::string_view cell) {
    std::string const text(trimmed(contents_of_cell(cell)));
    auto const open = text.find_last_of("[(");
    if (open == std::string::npos || (text.back() != ']' && text.back() != ')')) return {text, ""};
    std::string_view const view = text;
    return {std::string(trimmed(view.substr(0, open))),
            std::string(trimmed(view.substr(open + 1, view.size() - open - 2)))};
}

/// The sign between the digits of a number at the head of a cell; 0 if there is none.
char decimal_sign_of(std::string_view cell) {
    if (cell.starts_with('"')) cell.remove_prefix(1);
    if (cell.starts_with('-') || cell.starts_with('+')) cell.remove_prefix(1);
    auto const digits = cell.find_first_not_of("0123456789");
    if (digits == 0 || digits == std::string_view::npos || digits + 1 >= cell.size()) return 0;
    bool const is_sign = (cell[digits] == '.' || cell[digits] == ',') && is_digit(cell[digits + 1]);
    return is_sign ? cell[digits] : '\0';
}

}  // namespace

rows_file::rows_file(given const& g, std::string text) : text_(std::move(text)) {
    std::string_view const all = text_;
    std::size_t const marked = all.starts_with(byte_order_mark) ? byte_order_mark.size() : 0;
    separator_ = most_frequent_separator(all.substr(marked, all.find('\n', marked) - marked));
    std::size_t line = 1;
    for (std::size_t begin = marked; begin < all.size(); ++line) {
        std::size_t const end = end_of_row(all, begin, separator_);
        if (end == std::string_view::npos) refuse(g, fmt::format("line {}: a quote is not closed", line));
        bool const carriage = end > begin && end < all.size() && all[end - 1] == '\r';
        std::size_t const last = carriage ? end - 1 : end;
        std::size_t const next = (std::min)(end + 1, all.size());
        row const r{all.substr(begin, last - begin), all.substr(last, next - last), line};
        if (columns_.empty()) {
            if (trimmed(r.text).empty()) refuse(g, "the first line must name the columns");
            head_ = {all.substr(0, last), r.line_end, line};
            std::vector<std::string_view> cells;
            split(r, cells);
            for (std::string_view const cell : cells) columns_.push_back(name_of_column(cell));
        } else if (!r.text.empty() || columns_.size() == 1) {  // a blank line is no row
            rows_.push_back(r);
        }
        if (r.text.find('"') != std::string_view::npos)
            line += static_cast<std::size_t>(std::count(r.text.begin(), r.text.end(), '\n'));
        begin = next;
    }
    if (columns_.empty()) refuse(g, "the file is empty; the first line must name the columns");
    if (separator_ == ',') return;
    bool points = false;
    std::vector<std::string_view> cells;
    for (std::size_t k = 0; k < (std::min)(rows_.size(), std::size_t{10000}); ++k) {
        split(rows_[k], cells);
        for (std::string_view const cell : cells) {
            has_decimal_commas_ = has_decimal_commas_ || decimal_sign_of(cell) == ',';
            points = points || decimal_sign_of(cell) == '.';
        }
    }
    has_decimal_commas_ = has_decimal_commas_ && !points;
}

void rows_file::split(row const& r, std::vector<std::string_view>& cells) const {
    cells.clear();
    std::string_view const text = r.text;
    std::size_t begin = 0;
    for (std::size_t at = 0; at <= text.size(); ++at) {
        if (at < text.size() && text[at] == '"' && at == begin) {
            while ((at = text.find('"', at + 1)) != std::string_view::npos && at + 1 < text.size() &&
                   text[at + 1] == '"')
                ++at;
            if (at == std::string_view::npos) at = text.size();
            if (at < text.size()) continue;
        }
        if (at < text.size() && text[at] != separator_) continue;
        cells.push_back(text.substr(begin, at - begin));
        begin = at + 1;
    }
}

std::string rows_file::even(row const& r) const {
    std::vector<std::string_view> cells;
    split(r, cells);
    std::string result(r.text);
    if (cells.size() <= columns_.size()) return result.append(columns_.size() - cells.size(), separator_);
    auto const kept = static_cast<std::size_t>(cells[columns_.size() - 1].data() - r.text.data());
    return result.substr(0, kept) + "\"" + [&] {
        std::string quoted;
        for (char const c : r.text.substr(kept)) quoted.append(c == '"' ? 2 : 1, c);
        return quoted;
    }() + "\"";
}

std::string contents_of_cell(std::string_view cell) {
    if (!cell.starts_with('"')) return std::string(cell);
    std::string contents;
    std::size_t at = 1;
    for (; at < cell.size(); ++at) {
        if (cell[at] == '"' && (at + 1 >= cell.size() || cell[at + 1] != '"')) break;
        if (cell[at] == '"') ++at;
        contents += cell[at];
    }
    if (at < cell.size()) contents += cell.substr(at + 1);  // what is behind the quotes
    return contents;
}

std::string cell_of(std::string_view contents, char separator) {
    char const special[] = {separator, '"', '\n', '\r', '\0'};
    if (contents.find_first_of(special) == std::string_view::npos) return std::string(contents);
    std::string quoted = "\"";
    for (char const c : contents) quoted.append(c == '"' ? 2 : 1, c);
    return quoted + "\"";
}

void append_number(std::string& text, double number, char decimal_sign) {
    double const magnitude = std::abs(number);
    if (!(magnitude >= 1e-3 && magnitude < 1e9)) {
        std::string printed = fmt::format("{:.10g}", number + 0.0);  // a zero has no sign
        std::replace(printed.begin(), printed.end(), '.', decimal_sign);
        text += printed;
        return;
    }
    // The number without its decimal sign, as an integer of ten digits.
    static constexpr double powers[] = {1,   1e1, 1e2, 1e3,  1e4,  1e5,  1e6,
                                        1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13};
    int before = 1;  // digits before the sign; 0, -1, -2 for 0.x, 0.0x, 0.00x
    if (magnitude < 1.0) {
        before = magnitude >= 0.1 ? 0 : magnitude >= 0.01 ? -1 : -2;
    } else {
        while (magnitude >= powers[before]) ++before;
    }
    int decimals = 10 - before;
    auto digits = static_cast<unsigned long long>(std::llround(magnitude * powers[decimals]));
    while (decimals > 0 && digits % 10 == 0) {
        digits /= 10;
        --decimals;
    }
    char buffer[32];
    char* at = buffer + sizeof buffer;
    char* const end = at;
    for (int k = 0; digits > 0 || k <= decimals; ++k) {
        if (k == decimals && decimals > 0) *--at = decimal_sign;
        *--at = static_cast<char>('0' + digits % 10);
        digits /= 10;
    }
    if (number < 0.0) *--at = '-';
    text.append(at, static_cast<std::size_t>(end - at));
}

std::string read_all(given const& g) {
    struct closer {
        void operator()(std::FILE* f) const {
            if (f != stdin) std::fclose(f);
        }
    };
    std::unique_ptr<std::FILE, closer> const file(g.text == "-" ? stdin : std::fopen(g.text.c_str(), "rb"));
    if (!file) refuse(g, fmt::format("cannot be read: {}", std::strerror(errno)));
    std::string text;
    constexpr std::size_t block = 1 << 20;
    for (std::size_t size = 0;;) {
        text.resize(size + block);
        std::size_t const n = std::fread(text.data() + size, 1, block, file.get());
        size += n;
        if (n == block) continue;
        if (std::ferror(file.get())) refuse(g, fmt::format("cannot be read: {}", std::strerror(errno)));
        text.resize(size);
        return text;
    }
}

}  // namespace program
