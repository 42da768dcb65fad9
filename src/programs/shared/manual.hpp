// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Manual pages, from the tasks' own definitions.

#include <string>

namespace program {

/// Writes aqueth.1 and a page for each task, such as aqueth-correct_reading.1.
/// @throws failure if a page cannot be written
void write_manual(std::string const& folder);

}  // namespace program
