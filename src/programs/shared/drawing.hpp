// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Pictures drawn by gnuplot, and files that are written completely or not at all.

#include "program.hpp"

#include <array>
#include <chrono>
#include <cstddef>
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
/// The same for a PNG picture; the terminal is pngcairo, which not every gnuplot has.
std::string png_by_gnuplot(std::string const& script,
                           std::chrono::milliseconds limit = std::chrono::minutes(1));

/// Reads the path of a file that may not exist yet, unless it may be replaced.
std::filesystem::path read_new_path(given const& g, bool replace);

/// Reads the path of a picture: a new .svg or .png file, or with replace an existing one.
std::filesystem::path read_picture_path(given const& g, bool replace);

/// The first lines of a script: the terminal of the file, the title above, the key below.
std::string picture_head(std::filesystem::path const& path, int width, int height, std::string_view title);

/// The picture in the form that the name of its file asks for.
std::string picture_by_gnuplot(std::filesystem::path const& path, std::string const& script);

/// Colours that differ in lightness, so that a copy in grey and people who see few colours tell them apart.
inline constexpr std::array colours{"#14304f", "#c4622d", "#3f8fa8", "#8a5a9e", "#d9a441", "#7a7a7a"};

/// How line number k is drawn, from 0: colours and dashes differ, a mark tells the rest apart.
std::string line_style(std::size_t k, double width = 2.5);

/// The options --draw and --replace of a task that can draw its answer.
struct picture_options {
    given const& file;
    bool const& replace;

    /// @param what what is drawn, for the help
    static picture_options offer(session& s, std::string const& what);
    bool wanted() const { return file.present; }
    /// The path, checked before anything is computed; empty if no picture is wanted.
    std::filesystem::path read() const;
    /// Draws the picture and names the file on the page.
    void draw(session& s, page& text, std::filesystem::path const& path, std::string const& script) const;
};

/// Writes a file. A new one is created at once and removed if the session fails; an existing file is
/// replaced after the answer is printed. Signals that end the program leave no temporary file.
/// @param s       the session
/// @param g       option that names the file, for messages
/// @param path    the file
/// @param replace whether a file that is there may be replaced; it keeps its permissions
/// @param text    contents
void put_file(session& s, given const& g, std::filesystem::path const& path, bool replace,
              std::string_view text);

}  // namespace program
