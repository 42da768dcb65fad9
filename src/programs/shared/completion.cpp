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

std::string for_bash() {
    std::string cases;
    for (task const* each : task::all()) {
        std::vector<std::string> options, values, files;
        for (described_option const& o : each->describe().options) {
            if (!is_option(o)) continue;
            options.push_back(o.name);
            if (!o.type.empty()) (takes_file(o) ? files : values).push_back(o.name);
        }
        cases += fmt::format("    {})\n        options={}\n        values={}\n        files={}\n        ;;\n",
                             each->who().name, quoted(joined(options, " ")), quoted(joined(values, " ")),
                             quoted(joined(files, " ")));
    }
    return fmt::format(R"(# Completion of aqueth for bash, written by `aqueth write_completion bash`.
_aqueth() {{
    local word=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}} options values files
    local tasks={}
    COMPREPLY=()
    if ((COMP_CWORD == 1)); then
        COMPREPLY=($(compgen -W "$tasks {}" -- "$word"))
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
        if ((COMP_CWORD == 2)); then COMPREPLY=($(compgen -d -- "$word")); fi
        return
        ;;
{}    *) return ;;
    esac
    if [[ " $files " == *" $before "* ]]; then
        compopt -o filenames 2>/dev/null
        COMPREPLY=($(compgen -f -- "$word"))
    elif [[ " $values " == *" $before "* ]]; then
        return
    elif [[ $word == -* || -z $word ]]; then
        COMPREPLY=($(compgen -W "$options" -- "$word"))
    fi
}}
complete -F _aqueth aqueth
)",
                       quoted(joined(names_of_tasks(), " ")), joined(words_of_services(), " "), cases);
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
    std::string tasks, cases;
    for (task const* each : task::all()) {
        tasks +=
            fmt::format("        {}\n", quoted(fmt::format("{}:{}", each->who().name, each->who().question)));
        cases += fmt::format("    {})\n        _arguments -S", each->who().name);
        for (described_option const& o : each->describe().options) {
            if (!is_option(o)) continue;
            std::string const value =
                o.type.empty() ? ""
                               : fmt::format(":{}:{}", in_brackets(o.type), takes_file(o) ? "_files" : " ");
            cases += fmt::format(" \\\n            {}",
                                 quoted(fmt::format("*{}[{}]{}", o.name, in_brackets(o.description), value)));
        }
        cases += "\n        ;;\n";
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
_aqueth() {{
    local -a tasks own
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
    case $task in
    help) ((CURRENT == 2)) && _describe -t tasks 'task' tasks ;;
    write_completion) ((CURRENT == 2)) && _values 'shell' bash zsh ;;
    write_manual) ((CURRENT == 2)) && _files -/ ;;
{}    esac
}}
_aqueth "$@"
)",
                       tasks, own, cases);
}

}  // namespace

std::string completion_for(std::string const& shell) {
    if (shell == "bash") return for_bash();
    if (shell == "zsh") return for_zsh();
    throw bad_input(fmt::format("completion is for bash or zsh, not for {}", printable(shell)));
}

}  // namespace program
