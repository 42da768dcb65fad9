// SPDX-License-Identifier: BSL-1.0
// Any task for every row of a CSV file.
#include "drawing.hpp"
#include "help.hpp"
#include "program.hpp"
#include "progress.hpp"
#include "quick_answers.hpp"
#include "rows.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <limits>
#include <map>
#include <set>

namespace {

using namespace program;

about const who{
    "many",
    topic::how_strong,
    "What does a task answer for every row of a file?",
    "Answers a task for every row of a CSV file: columns are named like the task's options, with the unit\n"
    "in the name or in the cells. The same rows come out with the results behind them.",
    "The Quillbeck teaching stillhouse has a day's readings in a file:\n"
    "  $ printf 'jar,reading [%%vol],temperature [C]\\n1,81.5,28\\n2,,27\\n' | \\\n"
    "        aqueth many correct_reading --rows - --results true_strength\n"
    "  jar,reading [%vol],temperature [C],true_strength,refused",
    {correlation::oiml_r22::cited}};

constexpr char const* usage =
    "The rows: CSV of RFC 4180 in UTF-8, below a row of names: 'reading [%vol]' holds --reading in % vol.\n"
    "Cells are separated by commas, semicolons or tabs; with the last two, numbers may have a decimal "
    "comma.\n"
    "An empty cell leaves the option out; yes and no stand for options without a value. Other columns are\n"
    "carried on, but none can have the name of a result. Options behind the name of the task apply to every\n"
    "row. A row that is refused says why in its column 'refused' and stops nothing. Readings in % vol and\n"
    "most --results of convert_strength are quick: a million rows in about a second. Other tasks answer row\n"
    "by row.\n";

/// Options that are not of one row: they change the form of the answer, end the program, or write files.
bool is_of_a_row(std::string const& option) {
    static std::set<std::string> const others{"--help",    "--version", "--sources", "--cautions",
                                              "--json",    "--csv",     "--us",      "--metric",
                                              "--replace", "--draw",    "--output",  "--record"};
    return !others.contains(option);
}

/// The option that a column is named like.
std::string option_named(std::string_view column) {
    std::string name = "--";
    for (char const c : column)
        name += c == ' ' || c == '_' ? '-' : c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return name;
}

/// "1 row", "2 rows"
std::string counted(std::size_t count, char const* what) {
    return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s");
}

/// A column that holds an option.
struct use {
    std::size_t column;
    described_option option;
    std::string unit;
};

/// The options of a task that a row can have, and those that all rows share.
class question {
public:
    question(task const& asked, std::vector<std::string> const& shared) : task_(asked) {
        for (described_option const& each : asked.describe().options) {
            names_.push_back(each.name);
            options_[each.name] = each;
        }
        for (std::size_t k = 0; k < shared.size(); ++k) {
            auto const equals = shared[k].find('=');
            std::string const name = shared[k].substr(0, equals);
            described_option const& option = option_of(name, "there is no option");
            if (!is_of_a_row(name)) throw bad_input(fmt::format("{} is not for rows", name));
            std::string value;
            if (!option.type.empty() && equals != std::string::npos) {
                value = shared[k].substr(equals + 1);
            } else if (!option.type.empty()) {
                if (k + 1 >= shared.size()) throw bad_input(name + " needs a value");
                value = shared[++k];
            }
            shared_[name] = value;
            shared_options_.push_back(option.type.empty() ? name : name + "=" + value);
        }
    }

    void find_columns(given const& file, rows_file const& rows) {
        for (std::size_t k = 0; k < rows.columns().size(); ++k) {
            column_name const& column = rows.columns()[k];
            std::string const name = option_named(column.name);
            auto const found = options_.find(name);
            if (found == options_.end()) {
                refuse_open_bracket(file, column.name);
                continue;
            }
            if (!is_of_a_row(name))
                refuse(file, fmt::format("column '{}': {} is not for rows; give the column another name",
                                         printable(column.name), name));
            if (shared_.contains(name))
                throw bad_input(fmt::format("{} is given for all rows, but it is a column, too", name));
            uses_.push_back({k, found->second, column.unit});
        }
        if (!uses_.empty()) return;
        std::string const wanted = nearest_of(rows);
        refuse(file, fmt::format("no column is named like an option of {}{}", task_.who().name, wanted));
    }

    std::vector<use> const& uses() const { return uses_; }
    bool uses_column(std::size_t k) const {
        return std::any_of(uses_.begin(), uses_.end(), [k](use const& each) { return each.column == k; });
    }
    std::map<std::string, std::string> const& shared() const { return shared_; }

    /// The task and the options of every row: "correct_reading --glass=borosilicate"
    std::string in_words() const {
        std::string words = task_.who().name;
        for (std::string const& each : shared_options_) words += fmt::format(" '{}'", printable(each));
        return words;
    }

    /// The answer to one row.
    outcome ask(std::vector<std::string_view> const& cells, rows_file const& rows) const {
        if (cells.size() != rows.columns().size())
            return {{},
                    fmt::format("{}, but {}", counted(cells.size(), "cell"),
                                counted(rows.columns().size(), "column"))};
        std::vector<std::string> options = shared_options_;
        for (use const& each : uses_) {
            std::string text(trimmed(contents_of_cell(cells[each.column])));
            if (text.empty()) continue;
            std::string const& name = each.option.name;
            if (each.option.type.empty()) {
                if (text != "yes" && text != "no")
                    return {{}, fmt::format("{} '{}': expected yes or no", name, printable(text))};
                if (text == "yes") options.push_back(name);
                continue;
            }
            if (rows.has_decimal_commas()) {
                // One decimal comma is what the other numbers have: "1,234" has one reading here.
                auto const digits = text.find_first_not_of("0123456789", text.front() == '-' ? 1 : 0);
                if (digits != std::string::npos && text[digits] == ',') text[digits] = '.';
            }
            bool const is_number = text.find_first_not_of("0123456789.,+-eE/ ") == std::string::npos;
            if (is_number && !each.unit.empty()) text += " " + each.unit;
            options.push_back(name + "=" + text);
        }
        return task_.ask(std::move(options));
    }

private:
    /// A column 'reading [%vol' would be carried on, and its numbers would not be answered.
    void refuse_open_bracket(given const& file, std::string const& column) const {
        auto const open = column.find_first_of("[(");
        if (open == std::string::npos) return;
        std::string const name(trimmed(std::string_view(column).substr(0, open)));
        if (options_.contains(option_named(name)))
            refuse(file, fmt::format("column '{}': expected the name and its unit, as in '{} [unit]'",
                                     printable(column), printable(name)));
    }

    described_option const& option_of(std::string const& name, char const* complaint) const {
        auto const found = options_.find(name);
        if (found != options_.end()) return found->second;
        if (!name.starts_with('-')) throw bad_input(fmt::format("'{}' is not expected", printable(name)));
        std::string const alike = nearest(name, names_);
        throw bad_input(fmt::format("{} {}; {}", complaint, printable(name),
                                    alike.empty()
                                        ? fmt::format("'aqueth help {}' lists them", task_.who().name)
                                        : fmt::format("did you mean {}?", alike)));
    }
    std::string nearest_of(rows_file const& rows) const {
        for (column_name const& column : rows.columns()) {
            std::string const alike = nearest("--" + column.name, names_);
            if (!alike.empty())
                return fmt::format("; did '{}' mean {}?", printable(column.name), alike.substr(2));
        }
        return "; the name of the option --reading in % vol is 'reading [%vol]'";
    }

    task const& task_;
    std::map<std::string, described_option> options_;
    std::vector<std::string> names_;
    std::map<std::string, std::string> shared_;
    std::vector<std::string> shared_options_;
    std::vector<use> uses_;
};

/// The results of all rows.
struct results {
    std::vector<std::string> names;  ///< of the columns, in their order
    std::optional<quick_answers> quick;
    std::map<std::size_t, std::map<std::string, json::leaf>>
        single;  ///< of rows that the task itself answered
    std::map<std::size_t, std::string> refused;
};

/// A plain number; NaN if it is something else.
/// @param must_have_unit whether the unit must stand behind it, or only can
double plain_number(std::string_view cell, std::string_view unit, bool must_have_unit, bool decimal_commas) {
    constexpr double none = std::numeric_limits<double>::quiet_NaN();
    cell = trimmed(cell);
    bool const has_unit = !unit.empty() && cell.ends_with(unit);
    if (has_unit) cell = trimmed(cell.substr(0, cell.size() - unit.size()));
    if (must_have_unit && !has_unit) return none;
    char buffer[32];
    if (cell.empty() || cell.size() > sizeof buffer) return none;
    if (decimal_commas) {
        std::copy(cell.begin(), cell.end(), buffer);
        std::replace(buffer, buffer + cell.size(), ',', '.');
        cell = {buffer, cell.size()};
    }
    return numeric::number_in(cell).value_or(none);
}

/// The unit of a column: in its name, or behind the number of its first cell.
std::string unit_of(use const& u, rows_file const& rows) {
    if (!u.unit.empty() || rows.rows().empty()) return u.unit;
    std::vector<std::string_view> cells;
    rows.split(rows.rows().front(), cells);
    if (u.column >= cells.size()) return "";
    std::string_view const cell = trimmed(cells[u.column]);
    auto const end = cell.find_first_not_of("0123456789.,+-");
    return end == std::string_view::npos ? "" : std::string(trimmed(cell.substr(end)));
}

/// Answers what loops can answer.
/// @param settings the options that the settings file gave to a row
std::optional<quick_answers> answer_quickly(task const& asked, question const& q, rows_file const& rows,
                                            std::map<std::string, std::string> const& settings) {
    std::map<std::string, column_of_numbers> columns;
    std::vector<column_of_numbers*> of_use;
    for (use const& each : q.uses()) {
        column_of_numbers& column = columns[each.option.name];
        if (!column.numbers.empty()) return {};  // a second column of this option
        column = {unit_of(each, rows), std::vector<double>(rows.rows().size())};
        of_use.push_back(&column);
    }
    std::vector<std::string_view> cells;
    for (std::size_t k = 0; k < rows.rows().size(); ++k) {
        rows.split(rows.rows()[k], cells);
        bool const even = cells.size() == rows.columns().size();
        for (std::size_t i = 0; i < of_use.size(); ++i) {
            use const& u = q.uses()[i];
            of_use[i]->numbers[k] = even ? plain_number(cells[u.column], of_use[i]->unit, u.unit.empty(),
                                                        rows.has_decimal_commas())
                                         : std::numeric_limits<double>::quiet_NaN();
        }
    }
    std::map<std::string, std::string> fixed = q.shared();
    fixed.insert(settings.begin(), settings.end());
    for (char const* const spent : {"--settings", "--no-settings", "--stem"}) fixed.erase(spent);
    for (char const* const only_in_text : {"units", "--digits", "digits"}) fixed.erase(only_in_text);
    return answer_quickly(asked.who().name, columns, fixed);
}

/// Whether the loops give every result.
bool gives_all(quick_answers const& quick, std::vector<std::string> const& names) {
    return std::all_of(names.begin(), names.end(),
                       [&](std::string const& name) { return quick.columns.contains(name); });
}

/// The names of results; of the members of a list, which can be thousands, the first one's.
std::string in_short(std::set<std::string> const& names) {
    std::string list;
    for (std::string const& name : names) {
        bool later = false;  // "points.2.pot_C"
        for (auto dot = name.find('.'); dot != std::string::npos; dot = name.find('.', dot + 1)) {
            std::string_view const member = std::string_view(name).substr(dot + 1);
            std::string_view const number = member.substr(0, member.find('.'));
            later = later || (number != "1" && number.find_first_not_of("0123456789") == number.npos);
        }
        if (!later) list += (list.empty() ? "" : ", ") + name;
    }
    return list;
}

/// Refuses a file that has the column of a result already: its old values would look like answers. A column
/// that the task reads keeps its values, if the result of its name is not asked for.
void require_new_columns(question const& q, rows_file const& rows, std::vector<std::string> const& wanted,
                         std::vector<std::string> const& names) {
    for (std::size_t k = 0; k < rows.columns().size(); ++k) {
        std::string const& column = rows.columns()[k].name;
        bool const is_result = std::find(names.begin(), names.end(), column) != names.end();
        bool const carries_on = wanted.empty() && q.uses_column(k);
        if (column == "refused" || (is_result && !carries_on))
            throw bad_input(fmt::format("the file has a column '{}' already: rename it, or leave it out{}",
                                        printable(column),
                                        column == "refused" ? "" : "; --results names the results wanted"));
    }
}

results answer_all(task const& asked, question const& q, rows_file const& rows,
                   std::vector<std::string> const& wanted) {
    results all{wanted, {}, {}, {}};
    std::size_t const count = rows.rows().size();
    progress_line progress("many");
    std::vector<std::string_view> cells;
    std::set<std::string> known(wanted.begin(), wanted.end()), answered;
    std::map<std::string, std::string> settings;
    require_new_columns(q, rows, wanted, wanted);
    auto const ask = [&](std::size_t k) {
        rows.split(rows.rows()[k], cells);
        outcome const one = q.ask(cells, rows);
        settings = one.settings;
        if (!one.complaint.empty()) {
            all.refused[k] = one.complaint;
            return false;
        }
        auto& single = all.single[k];
        for (json::leaf const& leaf : one.data.leaves()) {
            answered.insert(leaf.name);
            if (wanted.empty() && known.insert(leaf.name).second) all.names.push_back(leaf.name);
            if (known.contains(leaf.name)) single[leaf.name] = leaf;
        }
        return true;
    };
    auto const require_results = [&] {
        for (std::string const& name : wanted) {
            if (!answered.contains(name))
                throw bad_input(fmt::format("--results '{}': the results of {} are: {}", printable(name),
                                            asked.who().name, in_short(answered)));
        }
    };
    std::size_t next = 0;  // the first rows are asked singly, until one says which results there are
    while (next < count && next < 1000 && !ask(next)) ++next;
    if (next < count && next < 1000) {
        ++next;
        require_results();
        all.quick = answer_quickly(asked, q, rows, settings);
        if (all.quick && !gives_all(*all.quick, all.names)) all.quick.reset();
    }
    for (; next < count; ++next) {
        if (all.quick && all.quick->answered[next]) continue;
        progress.show([&] { return fmt::format("{} of {} rows", next, count); });
        ask(next);
    }
    if (!answered.empty()) require_results();
    require_new_columns(q, rows, wanted, all.names);
    return all;
}

std::string written(results const& all, rows_file const& rows) {
    char const separator = rows.separator(), sign = rows.has_decimal_commas() ? ',' : '.';
    std::set<std::string> there;
    for (column_name const& column : rows.columns()) there.insert(column.name);
    std::vector<std::string> names;  // what the task reads from a column is not repeated
    for (std::string const& name : all.names) {
        if (!there.contains(name)) names.push_back(name);
    }
    std::string_view const line_end = rows.head().line_end.empty() ? "\n" : rows.head().line_end;
    std::vector<std::vector<double> const*> numbers;
    std::vector<std::vector<char const*> const*> words;
    std::vector<std::string> texts;
    for (std::string const& name : names) {
        quick_column const* const column = all.quick ? &all.quick->columns.at(name) : nullptr;
        numbers.push_back(column ? std::get_if<std::vector<double>>(column) : nullptr);
        words.push_back(column ? std::get_if<std::vector<char const*>>(column) : nullptr);
        auto const* const text = column ? std::get_if<std::string>(column) : nullptr;
        texts.push_back(text ? cell_of(*text, separator) : "");
    }

    std::string out(rows.head().text);
    for (std::string const& name : names) out += separator + cell_of(name, separator);
    out += separator + std::string("refused");
    out += line_end;
    std::size_t const size = rows.rows().size();
    out.reserve(out.size() + size * (40 + 14 * names.size()));
    auto single = all.single.begin();
    auto refused = all.refused.begin();
    for (std::size_t k = 0; k < size; ++k) {
        row const& r = rows.rows()[k];
        bool const is_single = single != all.single.end() && single->first == k;
        bool const is_refused = refused != all.refused.end() && refused->first == k;
        if (is_refused) {
            out += rows.even(r);
        } else {
            out += r.text;
        }
        for (std::size_t i = 0; i < names.size(); ++i) {
            out += separator;
            if (is_refused) continue;
            if (is_single) {
                auto const leaf = single->second.find(names[i]);
                if (leaf == single->second.end()) continue;
                std::string text = leaf->second.text;
                if (leaf->second.is_number) std::replace(text.begin(), text.end(), '.', sign);
                out += cell_of(text, separator);
            } else if (numbers[i]) {
                append_number(out, (*numbers[i])[k], sign);
            } else if (words[i]) {
                out += (*words[i])[k];
            } else {
                out += texts[i];
            }
        }
        out += separator;
        if (is_refused) out += cell_of((refused++)->second, separator);
        if (is_single) ++single;
        out += r.line_end.empty() ? line_end : r.line_end;
    }
    return out;
}

void say_aside(std::string const& line) { std::fputs(("aqueth many: " + line + "\n").c_str(), stderr); }

std::vector<std::string> read_names(given const& g) {
    std::vector<std::string> names;
    if (!g.present) return names;
    std::string_view rest = g.text;
    for (std::size_t end = 0; end != std::string_view::npos;) {
        end = rest.find(',');
        names.emplace_back(trimmed(rest.substr(0, end)));
        if (names.back().empty()) refuse(g, "expected names of results, separated by commas");
        if (end != std::string_view::npos) rest.remove_prefix(end + 1);
    }
    return names;
}

void run(session& s) {
    given const& name = s.argument("task", "task to answer; its other options apply to every row");
    given const& file = s.required("--rows", "FILE", "CSV file of the rows, or - for standard input");
    given const& chosen =
        s.option("--results", "NAMES", "results wanted, separated by commas (default: all)");
    given const& out = s.option("--out", "FILE", "file for the rows (default: standard output)");
    bool const& replace = s.flag("--replace", "overwrite an existing file");
    s.explain(usage);
    s.leave_rest();
    s.parse();
    if (replace && !out.present) throw bad_input("--replace needs --out");
    if (s.in_json() && !out.present) throw bad_input("--json needs --out: rows are CSV");
    if (s.wants_record() && !out.present)
        throw bad_input("--record needs --out: the record names the file of the rows");
    task const& asked = find_task(name.text);
    if (asked.who().name == std::string_view(who.name) ||
        asked.who().name == std::string_view("draw_equilibrium"))
        refuse(name, "this task is not for rows");
    std::vector<std::string> const wanted = read_names(chosen);
    std::filesystem::path const path = out.present ? read_new_path(out, replace) : std::filesystem::path();
    std::error_code is_another;
    if (out.present &&
        std::filesystem::equivalent(path, file.text == "-" ? "/dev/stdin" : file.text, is_another))
        refuse(out, "is the file of --rows, which is never changed; name another one");

    question q(asked, s.rest());
    rows_file const rows(file, read_all(file));
    q.find_columns(file, rows);
    results const all = answer_all(asked, q, rows, wanted);
    std::string text = written(all, rows);

    if (rows.separator() != ',') {
        say_aside(fmt::format("cells are read and written with {} between them{}",
                              rows.separator() == ';' ? "semicolons" : "tabs",
                              rows.has_decimal_commas() ? ", numbers with decimal commas" : ""));
    }
    std::size_t const count = rows.rows().size(), refused = all.refused.size();
    if (refused > 0)
        say_aside(
            fmt::format("{} of {} refused: the column 'refused' says why", refused, counted(count, "row")));
    if (!out.present) return s.answer_rows(std::move(text));
    page report;
    report.say("{} answered, {} refused, in {}", counted(count - refused, "row"), refused,
               printable(out.text));
    report.gap();
    report.row("task", "{}", q.in_words());
    put_file(s, out, path, replace, text);
    s.answer(report,
             {{"rows", count}, {"answered", count - refused}, {"refused", refused}, {"file", out.text}});
}

program::task const offered{who, run};

}  // namespace
