// SPDX-License-Identifier: BSL-1.0
#include "chain.hpp"

#include "points.hpp"
#include "strengths.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <cstddef>
#include <cstdio>
#include <filesystem>
#include <optional>

namespace program {

namespace {

using library = nlohmann::ordered_json;

constexpr char const* strength_key = "strength_percent_vol_20C";
constexpr std::size_t deepest = 32;  // of an answer; a file of somebody else may be deeper

/// A part of an answer that has a strength. The answer itself has depth 0.
struct lot_found {
    std::string name;
    library const* data;
    std::size_t depth;
    double extract_kg;  ///< which the member beside it states: 'residue_extract_kg' of 'residue'
};

/// An answer as it was read.
struct answer_read {
    given from;  ///< with the file alone, for messages
    std::string lot;
    library data;
    std::vector<lot_found> lots = {};
};

std::optional<double> number_in(library const& data, char const* key) {
    auto const found = data.find(key);
    if (found == data.end() || !found->is_number()) return std::nullopt;
    return found->get<double>();
}

std::string text_in(library const& data, char const* key) {
    auto const found = data.find(key);
    return found != data.end() && found->is_string() ? found->get<std::string>() : "";
}

/// Collects the lots, but no lot of a member that supposes something else: 'with_vapour_weaker_by_...'.
void collect_lots(library const& data, std::string const& key, std::size_t depth, double extract_kg,
                  std::vector<lot_found>& lots) {
    if (depth > deepest || key.starts_with("with_")) return;
    if (data.is_object() && number_in(data, strength_key)) {
        std::string const name = text_in(data, "name");
        lots.push_back({name.empty() ? key : name, &data, depth, extract_kg});
    }
    if (data.is_array()) {
        for (library const& each : data) collect_lots(each, key, depth + 1, extract_kg, lots);
    } else if (data.is_object()) {
        for (auto const& [name, value] : data.items()) {
            double const beside = number_in(data, (name + "_extract_kg").c_str()).value_or(0.0);
            collect_lots(value, name, depth + 1, beside, lots);
        }
    }
}

std::string standard_input(given const& from) {
    constexpr std::size_t most = std::size_t{1} << 20;
    std::string text(most, '\0');
    text.resize(std::fread(text.data(), 1, most, stdin));
    if (std::fgetc(stdin) != EOF) refuse(from, "standard input is longer than 1 MiB, too long for an answer");
    return text;
}

answer_read read_answer(given const& from) {
    answer_read result{from, "", {}};
    auto const mark = from.text.rfind('#');
    std::error_code no_matter;
    if (mark != std::string::npos && !std::filesystem::exists(from.text, no_matter)) {
        result.lot = from.text.substr(mark + 1);
        result.from.text = from.text.substr(0, mark);
        if (result.lot.empty()) refuse(from, "expected the name of a lot behind '#'");
    }
    std::string const text =
        result.from.text == "-" ? standard_input(from) : read_file(result.from, "an answer");
    if (trimmed(text).empty()) {
        refuse(result.from, fmt::format("{} is empty; --json writes an answer",
                                        result.from.text == "-" ? "standard input" : "the file"));
    }
    try {
        result.data = library::parse(text);
    } catch (library::parse_error const& error) {
        auto const line =
            1 + std::count(text.begin(),
                           text.begin() + static_cast<std::ptrdiff_t>((std::min)(error.byte, text.size())),
                           '\n');
        refuse(result.from, fmt::format("no JSON: an error in line {}; --json writes an answer", line));
    } catch (library::exception const&) {
        refuse(result.from, "a number in it is too large; --json writes an answer");
    }
    if (!result.data.is_object() || text_in(result.data, "task").empty())
        refuse(result.from, "no answer of aqueth, which has a 'task'; --json writes one");
    if (text_in(result.data, "schema") != answer_schema) {
        refuse(result.from, fmt::format("has schema '{}', expected '{}' (aqueth {})",
                                        printable(text_in(result.data, "schema")), answer_schema, version));
    }
    return result;
}

/// The names of the lots of an answer, each once, and what was learned of a still.
std::string contents_of(answer_read const& answer) {
    std::vector<std::string> names;
    for (lot_found const& each : answer.lots) {
        std::string const name =
            each.depth == 0 && each.name.empty() ? "its own result" : printable(each.name);
        if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    if (answer.data.contains("still")) names.push_back("a still");
    if (names.empty()) return fmt::format("the answer of {} has no lot", text_in(answer.data, "task"));
    return fmt::format("the answer of {} has: {}", text_in(answer.data, "task"), number_table::listed(names));
}

/// The lot that is meant: the one with the name, the nearest to the top; without a name the answer's own
/// result, the lot that it calls its main product, its product, or its only lot. Null if the answer has no
/// lot at all.
lot_found const* lot_meant(given const& from, answer_read const& answer) {
    auto const refuse_choice = [&](std::string const& why) {
        refuse(from, fmt::format("{}; {}", why, contents_of(answer)));
    };
    auto const named = [&](std::string_view name) -> lot_found const* {
        lot_found const* best = nullptr;
        bool alone = true;
        for (lot_found const& each : answer.lots) {
            if (each.name != name) continue;
            if (best && best->depth == each.depth) alone = false;
            if (!best || each.depth < best->depth) best = &each, alone = true;
        }
        if (best && !alone) refuse_choice(fmt::format("more than one lot is called '{}'", printable(name)));
        return best;
    };
    if (!answer.lot.empty()) {
        lot_found const* const found = named(answer.lot);
        if (!found) refuse_choice(fmt::format("there is no lot '{}'", printable(answer.lot)));
        return found;
    }
    if (answer.lots.empty()) return nullptr;
    if (answer.lots.front().depth == 0) return &answer.lots.front();
    std::string const main = text_in(answer.data, "main_product");
    if (lot_found const* const product = main.empty() ? nullptr : named(main)) return product;
    if (lot_found const* const product = named("product")) return product;
    if (answer.lots.size() == 1) return &answer.lots.front();
    refuse_choice("name a lot behind '#'");
    return nullptr;
}

std::optional<std::string> with_unit(library const& data, char const* key, char const* unit) {
    auto const number = number_in(data, key);
    if (!number) return std::nullopt;
    return fmt::format("{:.10g} {}", *number, unit);
}

/// The figure as an option takes it.
std::optional<std::string> figure_of(answer_read const& answer, lot_found const* lot,
                                     fillable const& target) {
    if (target.what == carried::of_the_still) {
        auto const still = answer.data.find("still");
        if (still == answer.data.end() || !still->is_object()) return std::nullopt;
        std::string const value = text_in(*still, target.option->name.substr(2).c_str());
        return value.empty() ? std::nullopt : std::optional(value);
    }
    if (target.what == carried::label_volume) return with_unit(answer.data, "label_volume_L", "L");
    if (target.what == carried::uncertainty) {
        if (!answer.data.contains("results")) return std::nullopt;
        for (library const& each : answer.data["results"]) {
            if (each.is_object() && text_in(each, "quantity") == "strength of the spirit")
                return with_unit(each, "standard_uncertainty", "%vol");
        }
        return std::nullopt;
    }
    if (!lot) return std::nullopt;
    library const& data = *lot->data;
    auto const amount = [&] {
        auto const weighed = with_unit(data, "balance_indication_kg", "kg");
        return weighed ? weighed : with_unit(data, "volume_L", "L");
    };
    auto const strength = with_unit(data, strength_key, "%vol");
    auto const temperature = with_unit(data, "temperature_C", "C");
    switch (target.what) {
    case carried::weighed: return amount();
    case carried::volume: return with_unit(data, "volume_L", "L");
    case carried::strength: return strength;
    case carried::measured_strength: return data.contains("reading") ? strength : std::nullopt;
    case carried::temperature: return temperature;
    case carried::extract: {
        auto const real = with_unit(data, "real_extract_P", "plato");
        return real ? real : with_unit(data, "extract_P", "plato");
    }
    case carried::sugar: return with_unit(data, "sugar_g_L_20C", "g/L");
    case carried::original_gravity: return with_unit(data, "original_gravity_20_20C", "sg");
    case carried::reading: {
        std::string const unit = text_in(data, "reading_unit");
        return unit.empty() ? std::nullopt : with_unit(data, "reading", unit.c_str());
    }
    case carried::correction: {
        std::string const list = text_in(data, "correction");
        return list.empty() ? std::nullopt : std::optional(list);
    }
    case carried::whole_lot: {
        auto const how_much = amount();
        if (!how_much || !strength || !temperature) return std::nullopt;
        return fmt::format("{}, {}, {}", *how_much, *strength, *temperature);
    }
    case carried::label_volume:
    case carried::uncertainty:
    case carried::of_the_still: break;
    }
    return std::nullopt;
}

/// Whether a figure of a lot means something else if sugar or extract is in it.
bool is_of_plain_spirit(carried what) {
    return what == carried::weighed || what == carried::strength || what == carried::measured_strength ||
           what == carried::temperature || what == carried::whole_lot;
}

/// Refuses a wash or a liqueur where dissolved solids would be forgotten.
void refuse_solids(given const& from, lot_found const& lot, std::vector<fillable> const& options) {
    library const& data = *lot.data;
    auto const takes = [&](carried what) {
        return std::any_of(options.begin(), options.end(),
                           [&](fillable const& each) { return each.what == what; });
    };
    auto const refuse_it = [&](std::string const& what, char const* instead) {
        std::string const name = lot.name.empty() ? "the lot" : fmt::format("'{}'", printable(lot.name));
        refuse(from, fmt::format("{} holds {}, which this task does not take into account; {}", name, what,
                                 instead));
    };
    constexpr char const* for_wash =
        "forecast_run, fill_jars, follow_traces and plan_season take the extract of a wash";
    constexpr char const* for_liqueur = "judge_liqueur and read_refractometer take sugar";
    constexpr char const* for_any = "distil it first, or type what the task can take";
    for (char const* const key : {"real_extract_P", "extract_P"}) {
        double const degrees = number_in(data, key).value_or(0.0);
        if (degrees > 0.0 && !takes(carried::extract))
            refuse_it(fmt::format("{:.4g} °P of extract", degrees), for_wash);
    }
    double const sugar = number_in(data, "sugar_g_L_20C").value_or(0.0);
    if (sugar > 0.0 && !takes(carried::sugar))
        refuse_it(fmt::format("{:.4g} g/L of sugar", sugar), for_liqueur);
    // These forms of an extract fill no option.
    if (auto const extract = data.find("extract_g_L_20C"); extract != data.end()) {
        if (extract->is_null()) refuse_it("an unknown amount of extract", for_any);
        if (extract->is_number() && extract->get<double>() > 0.0)
            refuse_it(fmt::format("{:.4g} g/L of extract", extract->get<double>()), for_any);
    }
    if (lot.extract_kg > 0.0) refuse_it(fmt::format("{:.4g} kg of extract", lot.extract_kg), for_any);
}

/// Refuses the reading of an instrument whose glass grows otherwise than a task takes for granted.
void refuse_other_glass(given const& from, library const& data) {
    std::string const glass = text_in(data, "glass");
    auto const growth = [&](std::string const& text) {
        return read_expansion({fmt::format("{}: its glass", label(from)), text, true});
    };
    if (glass.empty() || growth(glass) == growth("soda-lime")) return;
    refuse(from,
           fmt::format("the instrument that was read is of glass '{}'; this task knows soda-lime glass only",
                       printable(glass)));
}

}  // namespace

std::vector<taken_figure> figures_from(std::vector<given> const& from, std::vector<fillable> const& options) {
    std::vector<taken_figure> taken;
    auto const has_value = [&](given const* g) {
        return g->present || std::any_of(taken.begin(), taken.end(),
                                         [&](taken_figure const& each) { return each.target.option == g; });
    };
    auto const name_of = [](fillable const& each) { return each.option ? each.option->name : each.name; };
    // Why an option takes nothing; empty if it does. A list of lots grows, whatever it has.
    auto const why_closed = [&](fillable const& each) -> std::string {
        bool const given_before = each.option ? has_value(each.option) : !each.list->empty();
        bool const filled_before = std::any_of(taken.begin(), taken.end(), [&](taken_figure const& t) {
            return each.list && t.target.list == each.list;
        });
        if (each.what != carried::whole_lot && (given_before || filled_before))
            return fmt::format("{} has a value already", name_of(each));
        auto const other = std::find_if(each.instead.begin(), each.instead.end(), has_value);
        if (other != each.instead.end())
            return fmt::format("{} takes the place of {}", (*other)->name, name_of(each));
        bool const alone =
            (each.companion && !has_value(each.companion)) || (each.companions && each.companions->empty());
        return alone ? fmt::format("{} is taken only with {}", name_of(each), each.companion_name) : "";
    };
    bool const stdin_twice = std::count_if(from.begin(), from.end(), [](given const& g) {
                                 return g.text == "-" || g.text.starts_with("-#");
                             }) > 1;
    if (stdin_twice) throw bad_input("--from '-' can be given only once");
    for (given const& each : from) {
        answer_read answer = read_answer(each);
        collect_lots(answer.data, "", 0, 0.0, answer.lots);
        bool const wants_lot = std::any_of(options.begin(), options.end(), [](fillable const& o) {
            return o.what != carried::of_the_still && o.what != carried::label_volume &&
                   o.what != carried::uncertainty;
        });
        bool const is_still = answer.data.contains("still") && answer.lot.empty();
        lot_found const* const lot = wants_lot && !is_still ? lot_meant(each, answer) : nullptr;
        bool fills_any = false, takes_reading = false;
        std::vector<std::string> closed;
        for (fillable const& option : options) {
            auto const value = figure_of(answer, lot, option);
            if (!value) continue;
            std::string why = why_closed(option);
            if (why.empty() && option.what == carried::correction && !takes_reading)
                why = fmt::format("{} belongs to a reading that is not taken", name_of(option));
            if (!why.empty()) {
                closed.push_back(why);
                continue;
            }
            if (is_of_plain_spirit(option.what)) refuse_solids(each, *lot, options);
            if (option.what == carried::reading) refuse_other_glass(each, *lot->data);
            fills_any = true;
            takes_reading |= option.what == carried::reading;
            taken.push_back({option, name_of(option), *value, answer.from.text, lot ? lot->name : ""});
        }
        if (fills_any) continue;
        bool const for_spirit = std::any_of(options.begin(), options.end(),
                                            [](fillable const& o) { return is_of_plain_spirit(o.what); });
        if (lot && for_spirit) refuse_solids(each, *lot, options);
        if (closed.empty())
            refuse(each, fmt::format("holds nothing that this task takes; {}", contents_of(answer)));
        refuse(each,
               fmt::format("nothing is taken from it, and it holds nothing else that this task takes: {}",
                           fmt::join(closed, ", ")));
    }
    return taken;
}

}  // namespace program
