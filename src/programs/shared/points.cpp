// SPDX-License-Identifier: BSL-1.0
#include "points.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>
#include <utility>

namespace program {

std::string read_file(given const& file, char const* what) {
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> const in(std::fopen(file.text.c_str(), "rb"),
                                                             std::fclose);
    if (!in) refuse(file, fmt::format("cannot be read: {}", std::strerror(errno)));
    std::string text(std::size_t{1} << 20, '\0');
    text.resize(std::fread(text.data(), 1, text.size(), in.get()));
    if (std::ferror(in.get())) refuse(file, fmt::format("cannot be read: {}", std::strerror(errno)));
    if (std::fgetc(in.get()) != EOF)
        refuse(file, fmt::format("the file is longer than 1 MiB, too long for {}", what));
    return text;
}

points_at_pressure read_points(given const& file, units::pressure p) {
    std::string const text = read_file(file, "a table of points");
    equilibrium_points read;
    try {
        read = parse_equilibrium_points(text);
    } catch (text_error const& error) {
        refuse(file, error.what());
    }
    points_at_pressure result{std::move(read.points), 0, read.empty_lines, std::move(read.ignored_columns)};
    std::size_t const all = result.points.size();
    if (all == 0) refuse(file, "the file has no points");
    double const first = in(result.points.front().pressure.value_or(p), kilopascal);
    result.left_out =
        std::erase_if(result.points, [&](equilibrium_point const& each) { return !of_pressure(each, p); });
    if (result.points.empty()) {
        refuse(
            file,
            fmt::format("the file has no point at {:.5g} kPa; {} at other pressures, the first at {:.5g} kPa",
                        in(p, kilopascal), all, first));
    }
    return result;
}

std::string points_at_pressure::in_words() const {
    std::string text;
    if (left_out > 0) text += fmt::format("; {} at another pressure left out", left_out);
    if (empty_lines > 0) text += fmt::format("; {} without vapour and temperature left out", empty_lines);
    if (!ignored_columns.empty()) {
        std::vector<std::string> names;
        for (std::string const& each : ignored_columns) names.push_back(printable(each));
        text +=
            fmt::format("; not used: column{} {}", names.size() == 1 ? "" : "s", number_table::listed(names));
    }
    return text;
}

json points_at_pressure::to_json() const {
    return {{"left_out", left_out}, {"empty_lines", empty_lines}, {"ignored_columns", ignored_columns}};
}

}  // namespace program
