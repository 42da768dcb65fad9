// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// The list of the tasks, and the task that a word names.

#include "program.hpp"

#include <string>
#include <vector>

namespace program {

/// @return the answer of `aqueth help`
std::string list_of_tasks();

/// @return the word as names of tasks are spelt: hyphens become underscores, except at the start
std::string task_name(std::string const& word);

/// @throws bad_input with the nearest name
task const& find_task(std::string const& word);

/// @return the publications behind all tasks, each once
std::vector<correlation::source> all_sources();

/// A topic of `aqueth help`, with its heading.
struct heading {
    topic of;
    char const* text;
};
extern heading const headings[7];

/// A use of aqueth besides its tasks.
struct service {
    char const* words;  ///< on the command line
    char const* what;
};
extern service const services[7];

/// @return their first words, each once: "help", "--version"
std::vector<std::string> words_of_services();

}  // namespace program
