// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Pictures: gnuplot draws them, and they reach their file whole or not at all.

#include "program.hpp"

#include <chrono>
#include <filesystem>
#include <string>
#include <string_view>

namespace program {

/// A text as gnuplot takes it between single quotes.
std::string in_quotes(std::string_view text);

/// Runs gnuplot with a script.
/// @param script commands whose terminal is svg
/// @param limit  time after which gnuplot is stopped
/// @return the SVG picture
/// @throws failure if there is no gnuplot, it draws nothing, or it needs longer
std::string svg_by_gnuplot(std::string const& script,
                           std::chrono::milliseconds limit = std::chrono::minutes(1));

/// Where a picture may be put: a new file called .svg, or an old one that may be replaced.
std::filesystem::path read_picture_path(given const& g, bool replace);

/// Writes a picture. A new file appears at once and is removed if the session does not answer; an old one is
/// replaced once the answer is out. Signals that end the program leave nothing behind.
/// @param s       the session
/// @param g       option that names the file, for messages
/// @param path    the file
/// @param replace whether a file that is there may be replaced; it keeps its permissions
/// @param picture contents
void put_picture(session& s, given const& g, std::filesystem::path const& path, bool replace,
                 std::string_view picture);

}  // namespace program
