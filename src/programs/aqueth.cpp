// SPDX-License-Identifier: BSL-1.0
// The program aqueth: finds the task that its first argument names, or says which tasks there are.
#include "completion.hpp"
#include "help.hpp"
#include "manual.hpp"
#include "program.hpp"

#include <algorithm>
#include <cstdio>
#include <exception>
#include <string>
#include <vector>

namespace {

using namespace program;

int dispatch(std::vector<char*> const& words) {
    std::string const first = words.empty() ? "help" : task_name(words[0]);
    auto const needs = [&](std::size_t count, char const* usage) {
        if (words.size() != count) throw bad_input(fmt::format("usage: aqueth {}", usage));
    };
    bool const is_service = first == "help" || first == "write_manual" || first == "write_completion";
    bool const asks_for_help = words.size() == 2 && is_service &&
                               (words[1] == std::string_view("--help") || words[1] == std::string_view("-h"));
    if (asks_for_help || (first == "help" && words.size() <= 1)) return print("aqueth", list_of_tasks());
    if (first == "help") {
        needs(2, "help <task>");
        std::string help = "--help";
        char* arguments[] = {words[1], help.data(), nullptr};
        return find_task(words[1]).run(2, arguments);
    }
    if (first == "write_manual") {
        needs(2, "write_manual <folder>");
        if (words[1][0] == '-') throw bad_input("usage: aqueth write_manual <folder>");
        write_manual(words[1]);
        return 0;
    }
    if (first == "write_completion") {
        needs(2, "write_completion <bash or zsh>");
        return print("aqueth", completion_for(words[1]));
    }
    if (first.starts_with('-')) {
        needs(1, "<task>, or aqueth with one option");
        if (first == "-h" || first == "--help") return print("aqueth", list_of_tasks());
        if (first == "--version") return print("aqueth", fmt::format("aqueth {}\n", aqueth::version));
        if (first == "--sources") return print("aqueth", in_words(all_sources()));
        if (first == "--cautions") return print("aqueth", all_cautions);
        std::string const alike = nearest(first, words_of_services());
        throw bad_input(fmt::format("there is no option {}; {}", printable(words[0]),
                                    alike.empty() ? "'aqueth help' lists the tasks"
                                                  : fmt::format("did you mean {}?", alike)));
    }
    return find_task(words[0]).run(static_cast<int>(words.size()), std::vector<char*>(words).data());
}

}  // namespace

int main(int argc, char** argv) {
    try {
        return dispatch(std::vector<char*>(argv + (std::min)(argc, 1), argv + argc));
    } catch (bad_input const& error) {
        return fail("aqueth", 2, error.what());
    } catch (failure const& error) {
        return fail("aqueth", 1, error.what());
    } catch (std::exception const& error) {
        return fail("aqueth", 1, fmt::format("internal error: {}", error.what()));
    }
}
