// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// A user's settings file in TOML: instruments, balances and stills by name, and values for every task. A key
/// is the name of the option it stands for.

#include "quantities.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace program {

/// The kinds of tables that a settings file can have, and the option that chooses one of each.
enum class kind_of_table { stem, balance, still };

inline constexpr kind_of_table kinds_of_tables[] = {kind_of_table::stem, kind_of_table::balance,
                                                    kind_of_table::still};

/// "stem": in the file [stem.no7], on the command line --stem.
char const* name_of(kind_of_table kind);

/// A key that a settings file can have.
struct setting_key {
    char const* name;             ///< of the option, without dashes
    bool plain;                   ///< whether it can stand outside the tables
    bool in_tables[3];            ///< of which kind: stem, balance, still
    void (*check)(given const&);  ///< refuses a value that no task can use
};

/// Every key that stands for an option.
std::span<setting_key const> setting_keys();

/// A line of a settings file.
struct setting {
    std::string key, value;
    std::size_t line;
};

/// An instrument, a balance or a still of a settings file.
struct settings_table {
    kind_of_table kind;
    std::string name;
    std::size_t line;
    std::vector<setting> entries;  ///< in the order of the file
    std::string certificate;       ///< a note; no task computes with it
};

/// A settings file.
struct settings {
    std::string file;
    std::vector<setting> plain;  ///< in the order of the file
    std::vector<settings_table> tables;
    std::string units;  ///< "metric" or "US"; empty if the file does not say
    std::size_t units_line = 0;
    std::string usual[3];  ///< for each kind, the table that applies if none is chosen

    /// @return the table of that name, or null
    settings_table const* find(kind_of_table kind, std::string_view name) const;
    /// @throws bad_input if there is no such table, with the nearest name
    settings_table const& table(kind_of_table kind, std::string const& name) const;
};

/// @param text the file
/// @param file its name, for messages
/// @throws bad_input with file and line: no TOML, an unknown key or table, a value that no task can use
settings read_settings(std::string const& text, std::string const& file);

/// Reads the file of --settings; else of $AQUETH_SETTINGS; else aqueth/settings.toml in $XDG_CONFIG_HOME or
/// ~/.config, if it is there.
/// @throws bad_input if the file named cannot be read
std::optional<settings> find_settings(given const& named);

/// A setting that a run takes.
struct used_setting {
    std::string option;  ///< "--altitude"
    std::string value;
    std::size_t line;
    std::string table;        ///< "still quillbeck"; empty outside of tables
    std::string certificate;  ///< that of the table
    bool as_built_in;         ///< whether the task would take this value anyway

    /// "line 12, still quillbeck"
    std::string place() const { return fmt::format("line {}{}{}", line, table.empty() ? "" : ", ", table); }
};

/// Settings in one line: tables by their name, other settings by option and value.
std::string in_words(std::vector<used_setting> const& used);

/// Options that are offered by a task, each with what was typed.
using offered_options = std::vector<given*>;

/// Sets every option that was not typed from the settings: from the tables chosen, then from the plain keys.
/// A setting gives way to a typed option that takes its place (--pressure to --altitude), and to the lack of
/// one that it needs.
/// @return the settings taken
std::vector<used_setting> apply(settings const& s, std::vector<settings_table const*> const& chosen,
                                offered_options const& options);

}  // namespace program
