// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Pictures drawn by gnuplot. A file is written completely or not at all.

#include "program.hpp"

#include <chrono>
#include <filesystem>
#include <string>
#include <string_view>

namespace program {

/// A text in single quotes for gnuplot.
std::string in_quotes(std::string_view text);

/// Runs gnuplot with a script.
/// @param script commands whose terminal is svg
/// @param limit  time after which gnuplot is stopped
/// @return the SVG picture
/// @throws failure if there is no gnuplot, it draws nothing, or it needs longer
std::string svg_by_gnuplot(std::string const& script,
                           std::chrono::milliseconds limit = std::chrono::minutes(1));

/// Reads the path of a picture: a new .svg file, or with replace an existing one.
std::filesystem::path read_picture_path(given const& g, bool replace);

/// Writes a picture. A new file is created at once and removed if the session fails; an existing file is
/// replaced after the answer is printed. Signals that end the program leave no temporary file.
/// @param s       the session
/// @param g       option that names the file, for messages
/// @param path    the file
/// @param replace whether a file that is there may be replaced; it keeps its permissions
/// @param picture contents
void put_picture(session& s, given const& g, std::filesystem::path const& path, bool replace,
                 std::string_view picture);

}  // namespace program
