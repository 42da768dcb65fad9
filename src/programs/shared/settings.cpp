// SPDX-License-Identifier: BSL-1.0
#include "settings.hpp"

#include "program.hpp"
#include "still_program.hpp"

#include <fmt/format.h>

#define TOML_HEADER_ONLY 1
#define TOML_ENABLE_FORMATTERS 0
#include <toml++/toml.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <memory>

namespace program {

namespace {

// --- the keys ----------------------------------------------------------------------------------------------

void any(given const&) {}
void altitude(given const& g) { static_cast<void>(read_altitude(g)); }
void pressure(given const& g) { static_cast<void>(read_pressure(g)); }
void temperature(given const& g) { static_cast<void>(read_any_temperature(g)); }
void water(given const& g) { static_cast<void>(read_water_temperature(g)); }
void volume(given const& g) { static_cast<void>(read_volume(g)); }
void amount_of_liquid(given const& g) { static_cast<void>(read_amount(g)); }
void mass(given const& g) {
    if (!std::holds_alternative<units::mass>(read_amount(g)))
        refuse(g, fmt::format("expected a mass: {}", mass_units));
}
void share(given const& g) { static_cast<void>(read_share(g)); }
void price(given const& g) { static_cast<void>(read_plain(g, 0.0, 1e9)); }
void plain_number(given const& g) { static_cast<void>(read_plain(g, 0.0, 1000.0)); }
void scale(given const& g) { static_cast<void>(read_notation(g, g.text)); }
void glass(given const& g) { static_cast<void>(read_expansion(g)); }
void correction(given const& g) { static_cast<void>(certificate(g)); }
void strength_of(given const& g) { static_cast<void>(read_strength(g)); }
void power(given const& g) { static_cast<void>(read_as<units::power>(g)); }
void digits(given const& g) { static_cast<void>(read_count(g, 9, 3)); }

constexpr setting_key keys[] = {
    // name, outside of tables, in a table of a stem, a balance, a still
    {"altitude", true, {false, false, true}, altitude},
    {"pressure", true, {false, false, false}, pressure},
    {"water-temperature", true, {false, false, false}, water},
    {"water-in", true, {false, false, true}, temperature},
    {"water-out", true, {false, false, true}, temperature},
    {"receiver", true, {false, false, true}, temperature},
    {"room", true, {false, false, true}, temperature},
    {"price", true, {false, false, true}, price},
    {"water-price", true, {false, false, true}, price},
    {"heating-efficiency", true, {false, false, true}, share},
    {"digits", true, {false, false, false}, digits},
    {"scale", false, {true, false, false}, scale},
    {"glass", false, {true, false, false}, glass},
    {"correction", false, {true, false, false}, correction},
    {"alcoholometer", false, {true, false, false}, any},
    {"balance", false, {false, true, false}, mass},
    {"charge", false, {false, false, true}, amount_of_liquid},
    {"pot-charge", false, {false, false, true}, volume},
    {"power", false, {false, false, true}, power},
    {"pot-heat", false, {false, false, true}, any},
    {"pot-loss", false, {false, false, true}, any},
    {"heat-loss", false, {false, false, true}, any},
    {"stages", false, {false, false, true}, plain_number},
    {"plates", false, {false, false, true}, plain_number},
    {"plate-efficiency", false, {false, false, true}, share},
    {"plate-holds", false, {false, false, true}, volume},
    {"packing", false, {false, false, true}, any},
    {"hetp", false, {false, false, true}, any},
    {"column-holds", false, {false, false, true}, volume},
    {"column-width", false, {false, false, true}, any},
    {"flows", false, {false, false, true}, any},
    {"reflux", false, {false, false, true}, plain_number},
    {"take-off", false, {false, false, true}, any},
    {"keep-strength", false, {false, false, true}, strength_of},
    {"reflux-temperature", false, {false, false, true}, any},
    {"partial-condenser", false, {false, false, true}, any},
    {"head-holds", false, {false, false, true}, volume},
};

/// An option takes no setting if one of these was typed.
struct rivals {
    std::string_view option;
    std::vector<std::string_view> typed;
};

std::vector<rivals> const& all_rivals() {
    static std::vector<rivals> const all{
        {"altitude", {"pressure"}},
        {"pressure", {"altitude"}},
        {"water-temperature", {"fortify-with"}},
        {"stages", {"plates", "packing"}},
        {"plates", {"stages", "packing"}},
        {"plate-efficiency", {"stages", "packing"}},
        {"packing", {"stages", "plates"}},
        {"hetp", {"stages", "plates"}},
        {"plate-holds", {"column-holds"}},
        {"column-holds", {"plate-holds"}},
        {"reflux", {"take-off", "partial-condenser"}},
        {"keep-strength", {"take-off", "partial-condenser"}},
        {"reflux-temperature", {"partial-condenser"}},
        {"take-off", {"reflux", "keep-strength", "partial-condenser"}},
        {"partial-condenser", {"reflux", "keep-strength", "take-off"}},
    };
    return all;
}

/// An option takes no setting if none of these is there.
std::vector<rivals> const& all_needs() {
    static std::vector<rivals> const all{
        {"plate-efficiency", {"plates"}},
        {"hetp", {"packing"}},
        {"reflux", {"stages", "plates", "packing"}},
        {"take-off", {"stages", "plates", "packing"}},
        {"flows", {"stages", "plates", "packing"}},
        {"plate-holds", {"stages", "plates", "packing"}},
        {"column-holds", {"stages", "plates", "packing"}},
        {"keep-strength", {"reflux"}},
        {"reflux-temperature", {"reflux", "take-off"}},
        {"room", {"pot-loss", "heat-loss"}},
        {"water-price", {"water-in", "water-out", "receiver"}},
    };
    return all;
}

// --- reading -----------------------------------------------------------------------------------------------

/// The refusal of a line.
[[noreturn]] void refuse_line(std::string const& file, std::size_t line, std::string const& why) {
    throw bad_input(fmt::format("{}, line {}: {}", printable(file), line, why));
}

/// Refuses letters beyond ASCII outside of quotes and comments: TOML has none there, and toml++ 3.3 runs into
/// undefined behaviour.
void require_plain_names(std::string_view text, std::string const& file) {
    std::size_t line = 1;
    std::string_view quotes;                                      // of the text that we are in
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);  // byte order mark
    while (!text.empty()) {
        char const c = text.front();
        std::size_t taken = 1;
        if (c == '\n') {
            ++line;
            if (quotes.size() == 1) quotes = {};  // it has no end, which toml++ says
        } else if (!quotes.empty()) {
            if (c == '\\' && quotes.front() == '"' && !text.substr(1).starts_with('\n')) {
                taken = (std::min)(text.size(), std::size_t{2});
            } else if (text.starts_with(quotes)) {
                taken = quotes.size();
                // up to two quotes before the last three belong to the text
                while (taken > 1 && taken < 5 && text.substr(taken).starts_with(c)) ++taken;
                quotes = {};
            }
        } else if (c == '"' || c == '\'') {
            bool const triple = text.starts_with(c == '"' ? "\"\"\"" : "'''");
            taken = triple ? 3 : 1;
            quotes = text.substr(0, taken);
        } else if (c == '#') {
            taken = (std::min)(text.find('\n'), text.size());
        } else if (static_cast<unsigned char>(c) >= 0x80) {
            auto const continues = [](char each) {
                return (static_cast<unsigned char>(each) & 0xC0) == 0x80;
            };
            while (taken < text.size() && continues(text[taken])) ++taken;
            refuse_line(file, line,
                        fmt::format("'{}' needs quotes: names without have a to z, A to Z, 0 to 9, - and _",
                                    printable(std::string(text.substr(0, taken)))));
        }
        text.remove_prefix(taken);
    }
}

/// One file while it is read.
class reader {
public:
    explicit reader(std::string const& file) { read_.file = file; }

    settings read(toml::table const& all) {
        for (auto const& [key, node] : all) {
            std::string const name(key.str());
            auto const kind = std::find_if(std::begin(kinds_of_tables), std::end(kinds_of_tables),
                                           [&](kind_of_table each) { return name == name_of(each); });
            if (kind != std::end(kinds_of_tables)) {
                read_kind(*kind, key, node);
            } else if (name == "units") {
                read_.units = text_of(key, node);
                read_.units_line = line_of(key);
                if (read_.units != "metric" && read_.units != "US")
                    refuse_line(read_.file, line_of(key), "units must be \"metric\" or \"US\"");
            } else if (node.is_table()) {
                refuse_line(
                    read_.file, line_of(key),
                    fmt::format("there are no tables [{}]; the tables are [stem.NAME], [balance.NAME] "
                                "and [still.NAME]",
                                printable(name)));
            } else {
                read_.plain.push_back(read_line(key, node, "", [](setting_key const& k) { return k.plain; }));
            }
        }
        for (kind_of_table const kind : kinds_of_tables) {
            std::string const& usual = read_.usual[static_cast<int>(kind)];
            if (!usual.empty()) static_cast<void>(read_.table(kind, usual));
        }
        sort(read_.plain);
        std::sort(read_.tables.begin(), read_.tables.end(),
                  [](auto const& a, auto const& b) { return a.line < b.line; });
        refuse_both(read_.plain, "altitude", "pressure");
        return std::move(read_);
    }

private:
    static std::size_t line_of(toml::key const& key) { return key.source().begin.line; }

    static void sort(std::vector<setting>& lines) {
        std::sort(lines.begin(), lines.end(), [](auto const& a, auto const& b) { return a.line < b.line; });
    }

    void refuse_both(std::vector<setting> const& lines, std::string_view one, std::string_view other) const {
        for (setting const& a : lines)
            for (setting const& b : lines)
                if (a.key == one && b.key == other)
                    refuse_line(read_.file, (std::max)(a.line, b.line),
                                fmt::format("give either {} or {}", one, other));
    }

    std::string text_of(toml::key const& key, toml::node const& node) const {
        if (auto const* text = node.as_string()) {
            if (text->get().find_first_of(std::string_view("\n\r\0", 3)) == std::string::npos &&
                !text->get().empty())
                return text->get();
        } else if (auto const* whole = node.as_integer()) {
            return fmt::format("{}", whole->get());
        } else if (auto const* real = node.as_floating_point()) {
            return fmt::format("{}", real->get());
        }
        refuse_line(read_.file, line_of(key),
                    fmt::format("{} must be one line of text in quotes, or a number",
                                printable(std::string(key.str()))));
    }

    template <class Belongs>
    setting read_line(toml::key const& key, toml::node const& node, std::string const& table,
                      Belongs const& belongs) const {
        std::string const name(key.str());
        auto const known = std::find_if(std::begin(keys), std::end(keys),
                                        [&](setting_key const& each) { return name == each.name; });
        if (known == std::end(keys) || !belongs(*known)) {
            std::vector<std::string> names;
            for (setting_key const& each : keys)
                if (belongs(each)) names.emplace_back(each.name);
            names.emplace_back(table.empty() ? "units" : "certificate");
            std::string const alike = nearest(name, names);
            std::string what = fmt::format("there is no setting {}", printable(name));
            if (known != std::end(keys))
                what += table.empty() ? " outside of a table" : " in a table of this kind";
            if (!table.empty()) what = fmt::format("[{}]: {}", table, what);
            refuse_line(read_.file, line_of(key),
                        fmt::format("{}; {}", what,
                                    known != std::end(keys) || alike.empty()
                                        ? "'aqueth help settings' lists them"
                                        : fmt::format("did you mean {}?", alike)));
        }
        setting result{name, text_of(key, node), line_of(key)};
        try {
            known->check({name, result.value, true});
        } catch (bad_input const& e) {
            refuse_line(read_.file, result.line,
                        table.empty() ? std::string(e.what()) : fmt::format("[{}]: {}", table, e.what()));
        }
        return result;
    }

    void read_kind(kind_of_table kind, toml::key const& key, toml::node const& node) {
        char const* const name = name_of(kind);
        toml::table const* const tables = node.as_table();
        if (!tables) {
            refuse_line(
                read_.file, line_of(key),
                fmt::format("{0} is a kind of table: [{0}.NAME]; {0}.usual = \"NAME\" chooses one", name));
        }
        for (auto const& [inner, each] : *tables) {
            std::string const called(inner.str());
            if (called == "usual" && !each.is_table()) {
                read_.usual[static_cast<int>(kind)] = text_of(inner, each);
            } else if (toml::table const* const table = each.as_table()) {
                read_table(kind, called, line_of(inner), *table);
            } else {
                refuse_line(
                    read_.file, line_of(inner),
                    fmt::format("[{0}]: there is no setting {1}; a table of a {0} has a name: [{0}.NAME]",
                                name, printable(called)));
            }
        }
    }

    void read_table(kind_of_table kind, std::string const& called, std::size_t line,
                    toml::table const& table) {
        settings_table& result = read_.tables.emplace_back(settings_table{kind, called, line, {}, {}});
        std::string const shown = fmt::format("{}.{}", name_of(kind), printable(called));
        for (auto const& [key, node] : table) {
            if (key.str() == "certificate") {
                result.certificate = text_of(key, node);
            } else {
                result.entries.push_back(read_line(key, node, shown, [kind](setting_key const& k) {
                    return k.in_tables[static_cast<int>(kind)];
                }));
            }
        }
        sort(result.entries);
        for (rivals const& each : all_rivals())
            for (std::string_view const other : each.typed)
                if (other != "altitude" && each.option != "keep-strength")
                    refuse_both(result.entries, each.option, other);
    }

    settings read_;
};

/// A file of at most a megabyte; nothing if it is not there.
std::optional<std::string> contents_of(std::string const& path) {
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> const file(std::fopen(path.c_str(), "rb"), std::fclose);
    if (!file && errno == ENOENT) return std::nullopt;
    std::string text(1 << 20, '\0');
    std::size_t const size = file ? std::fread(text.data(), 1, text.size(), file.get()) : 0;
    if (!file || std::ferror(file.get())) {
        int const why = errno;  // of opening or of reading
        throw bad_input(
            fmt::format("settings file {} cannot be read: {}", printable(path), std::strerror(why)));
    }
    if (size == text.size())
        throw bad_input(
            fmt::format("settings file {} cannot be read: it is larger than 1 MB", printable(path)));
    text.resize(size);
    return text;
}

std::string environment(char const* name) {
    char const* const value = std::getenv(name);
    return value ? value : "";
}

}  // namespace

char const* name_of(kind_of_table kind) {
    switch (kind) {
    case kind_of_table::stem: return "stem";
    case kind_of_table::balance: return "balance";
    case kind_of_table::still: break;
    }
    return "still";
}

std::span<setting_key const> setting_keys() { return keys; }

settings_table const* settings::find(kind_of_table kind, std::string_view name) const {
    for (settings_table const& each : tables)
        if (each.kind == kind && each.name == name) return &each;
    return nullptr;
}

settings_table const& settings::table(kind_of_table kind, std::string const& name) const {
    if (settings_table const* const found = find(kind, name)) return *found;
    std::vector<std::string> names;
    for (settings_table const& each : tables)
        if (each.kind == kind) names.push_back(each.name);
    std::string const alike = nearest(name, names);
    throw bad_input(fmt::format("there is no {0} {1} in {2}; {3}", name_of(kind), printable(name),
                                printable(file),
                                alike.empty() ? "'aqueth settings' shows the file"
                                              : fmt::format("did you mean {}?", printable(alike))));
}

settings read_settings(std::string const& text, std::string const& file) {
    require_plain_names(text, file);
    try {
        return reader(file).read(toml::parse(std::string_view(text)));
    } catch (toml::parse_error const& e) {
        refuse_line(file, e.source().begin.line, fmt::format("not TOML: {}", e.description()));
    }
}

std::optional<settings> find_settings(given const& named) {
    std::string path = named.present ? named.text : environment("AQUETH_SETTINGS");
    bool const must_be_there = !path.empty();
    if (named.present && path.empty()) refuse(named, "expected the name of a file");
    if (!must_be_there) {
        std::string folder = environment("XDG_CONFIG_HOME");
        if (folder.empty()) {
            std::string const home = environment("HOME");
            if (home.empty()) return std::nullopt;
            folder = home + "/.config";
        }
        path = folder + "/aqueth/settings.toml";
    }
    std::optional<std::string> const text = contents_of(path);
    if (!text && must_be_there)
        throw bad_input(
            fmt::format("settings file {} cannot be read: {}", printable(path), std::strerror(ENOENT)));
    if (!text) return std::nullopt;
    return read_settings(*text, path);
}

std::string in_words(std::vector<used_setting> const& used) {
    std::vector<std::string> parts;
    for (used_setting const& each : used) {
        if (each.as_built_in) continue;
        std::string const part = each.table.empty()
                                     ? fmt::format("{} {}", printable(each.option), printable(each.value))
                                     : each.table;
        if (std::find(parts.begin(), parts.end(), part) == parts.end()) parts.push_back(part);
    }
    return fmt::format("{}", fmt::join(parts, ", "));
}

std::vector<used_setting> apply(settings const& s, std::vector<settings_table const*> const& chosen,
                                offered_options const& options) {
    auto const find = [&](std::string_view key) -> given* {
        for (given* each : options)
            if (each->name.starts_with("--") && std::string_view(each->name).substr(2) == key) return each;
        return nullptr;
    };
    auto const is_there = [&](std::string_view key) {
        given const* const g = find(key);
        return g && g->present;
    };
    auto const names_it = [](std::vector<rivals> const& all, std::string_view key, auto const& f) {
        for (rivals const& each : all)
            if (each.option == key) return std::any_of(each.typed.begin(), each.typed.end(), f);
        return false;
    };
    struct taken {
        given* option;
        std::string standard;
        used_setting as;
    };
    std::vector<taken> all;
    auto const take = [&](setting const& line, settings_table const* table) {
        given* const option = find(line.key);
        // A table comes before the plain keys, so that its altitude displaces their pressure.
        if (!option || option->present || names_it(all_rivals(), line.key, is_there)) return;
        all.push_back({option,
                       option->text,
                       {"--" + line.key, line.value, line.line,
                        table ? fmt::format("{} {}", name_of(table->kind), printable(table->name)) : "",
                        table ? table->certificate : "", line.value == option->text}});
    };
    auto const set_all = [&] {
        for (taken const& each : all) {
            each.option->text = each.as.value;
            each.option->present = each.option->set = true;
        }
    };
    for (settings_table const* table : chosen)
        for (setting const& line : table->entries) take(line, table);
    set_all();
    for (setting const& line : s.plain) take(line, nullptr);
    set_all();

    // What needs another option gives way without it; that may take away what a third one needs.
    for (std::size_t before = all.size() + 1; before != all.size();) {
        before = all.size();
        std::erase_if(all, [&](taken const& each) {
            std::string_view const key = std::string_view(each.as.option).substr(2);
            bool const has_needs = std::any_of(all_needs().begin(), all_needs().end(),
                                               [&](rivals const& needs) { return needs.option == key; });
            if (!has_needs || names_it(all_needs(), key, is_there)) return false;
            each.option->text = each.standard;
            each.option->present = each.option->set = false;
            return true;
        });
    }
    std::vector<used_setting> used;
    for (taken const& each : all) {
        each.option->name += fmt::format(" ({}, {})", printable(s.file), each.as.place());
        used.push_back(each.as);
    }
    return used;
}

}  // namespace program
