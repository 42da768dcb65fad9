// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Completion of command lines: the names of tasks and of their options, from the tasks' own definitions.

#include <string>

namespace program {

/// @param shell bash or zsh
/// @return the script that the shell loads
/// @throws bad_input for another shell
std::string completion_for(std::string const& shell);

}  // namespace program
