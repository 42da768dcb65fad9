// SPDX-License-Identifier: BSL-1.0
// The settings file: what it may say, what applies, and where each value comes from.
#include "program.hpp"

#include <algorithm>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

using namespace program;

about const who{
    "settings",
    topic::your_own,
    "What does my settings file say, and what applies?",
    "Shows the settings file: your instruments, balances and stills by name, and the values that every task\n"
    "takes from it. With --still, --stem or any option, shows what would apply and where it comes from.\n"
    "It writes nothing.",
    "The Quillbeck teaching stillhouse has written no settings file yet:\n"
    "  $ aqueth settings --no-settings --altitude '310 m'\n"
    "  Settings file: none is read.",
    {correlation::oiml_r22::cited}};

/// An option that a settings file can give, as the first task that has it describes it.
struct known_option {
    setting_key const* key;
    std::string name, type, description, standard;
};

std::vector<known_option> options_of_tasks() {
    std::vector<known_option> all;
    for (setting_key const& key : setting_keys())
        all.push_back({&key, fmt::format("--{}", key.name), "", "", ""});
    for (task const* each : task::all()) {
        if (each->who().name == std::string_view(who.name)) continue;  // it would ask itself
        for (described_option const& d : each->describe().options) {
            auto const found = std::find_if(all.begin(), all.end(), [&](known_option const& k) {
                return k.name == d.name && k.type.empty() && d.name != "--digits";
            });
            if (found == all.end()) continue;
            found->type = d.type;
            found->description = d.description.substr(0, d.description.find(" (default"));
            found->standard = d.standard;
        }
    }
    for (known_option const& k : all) {
        if (k.type.empty() && k.name != "--digits")
            throw std::logic_error(fmt::format("no task takes the setting {}", k.name));
    }
    std::erase_if(all, [](known_option const& k) { return k.name == "--digits"; });  // every task has it
    return all;
}

std::string places(setting_key const& key) {
    std::string text = key.plain ? "outside of tables" : "";
    for (kind_of_table const kind : kinds_of_tables) {
        if (key.in_tables[static_cast<int>(kind)])
            text += fmt::format("{}[{}.NAME]", text.empty() ? "" : ", ", name_of(kind));
    }
    return text;
}

std::string list_of_keys() {
    std::string text = "A settings file is TOML. Its keys, and where they stand:\n";
    for (setting_key const& key : setting_keys()) text += fmt::format("  {:<20} {}\n", key.name, places(key));
    text += "  units                outside of tables: \"metric\" or \"US\"\n"
            "  certificate          [stem.NAME], [balance.NAME], [still.NAME]: a note\n"
            "  usual                [stem], [balance], [still]: the name that applies if none is chosen\n"
            "The file is that of --settings, else of $AQUETH_SETTINGS, else aqueth/settings.toml in\n"
            "$XDG_CONFIG_HOME or ~/.config. An option on the command line always wins.";
    return text;
}

void run(session& s) {
    std::vector<known_option> const known = options_of_tasks();
    std::vector<given const*> options;
    for (known_option const& k : known) {
        options.push_back(
            &s.option(k.name.c_str(), k.type.c_str(), k.description.c_str(), k.standard.c_str()));
    }
    std::string const keys = list_of_keys();
    s.explain(keys.c_str());
    s.offer_us_units();
    s.parse();

    page text;
    json data = {{"file", s.file() ? json(s.file()->file) : json(nullptr)},
                 {"tables", json::array()},
                 {"options", json::array()}};
    text.say("Settings file: {}.", s.file() ? printable(s.file()->file) : "none is read");
    text.gap();
    if (s.file()) {
        for (settings_table const& table : s.file()->tables) {
            bool const usual = s.file()->usual[static_cast<int>(table.kind)] == table.name;
            text.say("{} {}{}, line {}{}", name_of(table.kind), printable(table.name),
                     usual ? " (usual)" : "", table.line,
                     table.certificate.empty()
                         ? ""
                         : fmt::format("; certificate: {}", on_one_line(table.certificate)));
            json entries = json::object();
            for (setting const& each : table.entries) {
                text.row(each.key, "{}", printable(each.value));
                entries[each.key] = each.value;
            }
            data["tables"].push_back({{"kind", name_of(table.kind)},
                                      {"name", table.name},
                                      {"line", table.line},
                                      {"usual", usual},
                                      {"certificate", table.certificate},
                                      {"settings", entries}});
        }
        if (!s.file()->tables.empty()) text.gap();
    }
    text.say("{:<18} {:<34} {}", "option", "value", "from");
    for (std::size_t k = 0; k < known.size(); ++k) {
        given const& g = *options[k];
        std::string from = "built in";
        if (g.typed()) from = "command line";
        for (used_setting const& each : s.used_settings())
            if (each.option == known[k].name) from = each.place();
        std::string const value = g.text.empty() ? "-" : printable(g.text);
        text.say("{:<18} {:<34} {}", known[k].key->name, value, g.text.empty() ? "not set" : from);
        data["options"].push_back({{"option", known[k].name},
                                   {"value", g.text.empty() ? json(nullptr) : json(g.text)},
                                   {"from", g.text.empty() ? "not set" : from}});
    }
    text.say("{:<18} {:<34} {}", "units", s.words().us ? "US" : "metric",
             s.file() && !s.file()->units.empty() ? fmt::format("line {}", s.file()->units_line)
                                                  : "built in");
    std::string digits_from = "built in or command line";
    for (used_setting const& each : s.used_settings())
        if (each.option == "--digits") digits_from = each.place();
    text.say("{:<18} {:<34} {}", "digits", s.words().digits, digits_from);
    text.gap();
    text.say("'aqueth help settings' lists the keys. An option on the command line always wins.");
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
