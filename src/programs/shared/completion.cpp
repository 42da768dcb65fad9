// SPDX-License-Identifier: BSL-1.0
#include "completion.hpp"

#include "help.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>
#include <vector>

namespace program {

namespace {

/// A text between single quotes of a shell.
std::string quoted(std::string const& text) {
    std::string result = "'";
    for (char const c : text) {
        if (c == '\'')
            result += R"('\'')";
        else
            result += c;
    }
    return result + "'";
}

bool is_option(described_option const& o) { return o.name.starts_with("--"); }
bool takes_file(described_option const& o) { return o.type.starts_with("FILE"); }

std::string joined(std::vector<std::string> const& words, char const* between) {
    return fmt::format("{}", fmt::join(words, between));
}

std::vector<std::string> names_of_tasks() {
    std::vector<std::string> names;
    for (task const* each : task::all()) names.emplace_back(each->who().name);
    return names;
}

/// Values that are words. "$(...)" asks the settings file for its names.
std::vector<std::string> words_for(described_option const& o) {
    for (kind_of_table const kind : kinds_of_tables)
        if (o.name == fmt::format("--{}", name_of(kind)))
            return {fmt::format("$(_aqueth_names {})", name_of(kind))};
    if (o.name == "--glass") return {"soda-lime", "borosilicate"};
    if (o.name == "--flows") return {"constant", "enthalpy"};
    return {};
}

/// A function of both shells: the names of one kind in the settings file.
constexpr char const* names_function = R"(_aqueth_names() {
    command aqueth settings 2>/dev/null | sed -n "s/^$1 \([^ ,]*\).*/\1/p"
}
)";

std::string for_bash() {
    std::string cases, choices;
    std::vector<std::string> chosen;
    for (task const* each : task::all()) {
        std::vector<std::string> options, values, files;
        for (described_option const& o : each->describe().options) {
            if (!is_option(o)) continue;
            options.push_back(o.name);
            if (!o.type.empty()) (takes_file(o) ? files : values).push_back(o.name);
            std::string const words = joined(words_for(o), " ");
            if (words.empty() || std::find(chosen.begin(), chosen.end(), o.name) != chosen.end()) continue;
            chosen.push_back(o.name);
            choices += fmt::format("    {}) mapfile -t COMPREPLY < <(compgen -W \"{}\" -- \"$word\") ;;\n",
                                   o.name, words);
        }
        cases +=
            fmt::format("    {})\n        options+={}\n        values+={}\n        files+={}\n        ;;\n",
                        each->who().name, quoted(joined(options, " ") + " "),
                        quoted(joined(values, " ") + " "), quoted(joined(files, " ") + " "));
    }
    return fmt::format(R"(# Completion of aqueth for bash, written by `aqueth write_completion bash`.
{0}_aqueth_options() {{ # adds those of a task
    case ${{1//-/_}} in
{3}    esac
}}
_aqueth() {{
    local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}}
    local options=' ' values=' ' files=' '
    local tasks={1}
    COMPREPLY=()
    if ((COMP_CWORD == 1)); then
        COMPREPLY=($(compgen -W "$tasks {2}" -- "$word"))
        return
    fi
    case ${{COMP_WORDS[1]//-/_}} in
    help)
        if ((COMP_CWORD == 2)); then COMPREPLY=($(compgen -W "$tasks" -- "$word")); fi
        return
        ;;
    write_completion)
        if ((COMP_CWORD == 2)); then COMPREPLY=($(compgen -W 'bash zsh' -- "$word")); fi
        return
        ;;
    write_manual)
        if ((COMP_CWORD == 2)); then mapfile -t COMPREPLY < <(compgen -d -- "$word"); fi
        return
        ;;
    many)
        if ((COMP_CWORD == 2)); then
            COMPREPLY=($(compgen -W "$tasks" -- "$word"))
            return
        fi
        _aqueth_options "${{COMP_WORDS[2]}}"
        ;;
    esac
    _aqueth_options "${{COMP_WORDS[1]}}"
    case $before in
{4}    *)
        if [[ $files == *" $before "* ]]; then
            compopt -o filenames 2>/dev/null
            mapfile -t COMPREPLY < <(compgen -f -- "$word")
        elif [[ $values == *" $before "* ]]; then
            return
        elif [[ $word == -* || -z $word ]]; then
            COMPREPLY=($(compgen -W "$options" -- "$word"))
        fi
        ;;
    esac
}}
complete -F _aqueth aqueth
)",
                       names_function, quoted(joined(names_of_tasks(), " ")),
                       joined(words_of_services(), " "), cases, choices);
}

/// A description in the square brackets of zsh's _arguments.
std::string in_brackets(std::string const& text) {
    std::string result;
    for (char const c : text) {
        if (c == '[' || c == ']' || c == '\\' || c == ':') result += '\\';
        result += c == '\n' ? ' ' : c;
    }
    return result;
}

std::string for_zsh() {
    std::string tasks, cases, of_many;
    for (task const* each : task::all()) {
        tasks +=
            fmt::format("        {}\n", quoted(fmt::format("{}:{}", each->who().name, each->who().question)));
        std::string options;
        for (described_option const& o : each->describe().options) {
            if (!is_option(o)) continue;
            std::string const words = joined(words_for(o), " ");
            std::string const action = takes_file(o)            ? "_files"
                                       : words.starts_with('$') ? fmt::format("_aqueth_{}s", o.name.substr(2))
                                       : words.empty()          ? " "
                                                                : fmt::format("({})", words);
            std::string const value =
                o.type.empty() ? "" : fmt::format(":{}:{}", in_brackets(o.type), action);
            std::string const specification =
                quoted(fmt::format("*{}[{}]{}", o.name, in_brackets(o.description), value));
            options += fmt::format("            {}\n", specification);
        }
        if (each->who().name == std::string_view("many"))
            of_many = options;
        else
            cases += fmt::format("    {})\n        options=(\n{}        )\n        ;;\n", each->who().name,
                                 options);
    }
    std::string own;
    for (std::string const& word : words_of_services()) {
        auto const* const it = std::find_if(std::begin(services), std::end(services), [&](service const& s) {
            return std::string_view(s.words).starts_with(word);
        });
        own += fmt::format("        {}\n", quoted(fmt::format("{}:{}", word, it->what)));
    }
    return fmt::format(R"(#compdef aqueth
# Completion of aqueth for zsh, written by `aqueth write_completion zsh`.
{}_aqueth_stems() {{ compadd "$@" -- $(_aqueth_names stem) }}
_aqueth_balances() {{ compadd "$@" -- $(_aqueth_names balance) }}
_aqueth_stills() {{ compadd "$@" -- $(_aqueth_names still) }}
_aqueth() {{
    local -a tasks own shared options
    tasks=(
{}    )
    own=(
{}    )
    if ((CURRENT == 2)); then
        _describe -t tasks 'task' tasks
        _describe -t own 'about the program' own
        return
    fi
    local task=${{words[2]//-/_}}
    shift words
    ((CURRENT--))
    if [[ $task == many ]] && ((CURRENT > 2)); then
        shared=(
{}        )
        task=${{words[2]//-/_}}
        shift words
        ((CURRENT--))
    fi
    case $task in
    many) ((CURRENT == 2)) && _describe -t tasks 'task' tasks ;;
    help) ((CURRENT == 2)) && _describe -t tasks 'task' tasks ;;
    write_completion) ((CURRENT == 2)) && _values 'shell' bash zsh ;;
    write_manual) ((CURRENT == 2)) && _files -/ ;;
{}    esac
    ((!$#options)) || _arguments -S $shared $options
}}
_aqueth "$@"
)",
                       names_function, tasks, own, of_many, cases);
}

}  // namespace

std::string completion_for(std::string const& shell) {
    if (shell == "bash") return for_bash();
    if (shell == "zsh") return for_zsh();
    throw bad_input(fmt::format("completion is for bash or zsh, not for {}", printable(shell)));
}

}  // namespace program
