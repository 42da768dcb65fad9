// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Answers to many rows at once, by the loops of aqueth/array.hpp instead of one run of a task a row.

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace program {

/// The numbers of one option, one a row; NaN where the row needs the task itself.
struct column_of_numbers {
    std::string unit;
    std::vector<double> numbers;
};

/// A result of every row: one text for all, a word each, or a number each.
using quick_column = std::variant<std::string, std::vector<char const*>, std::vector<double>>;

/// The answers to many rows.
struct quick_answers {
    std::map<std::string, quick_column> columns;  ///< by the names in the JSON of the task
    /// False for a row that needs the task itself: out of range, or not a plain number.
    std::unique_ptr<bool[]> answered;
};

/// @param task    name of the task
/// @param columns the options that differ from row to row
/// @param fixed   the options that all rows have in common
/// @return the answers; nothing if there is no loop for these options
std::optional<quick_answers> answer_quickly(std::string const& task,
                                            std::map<std::string, column_of_numbers> const& columns,
                                            std::map<std::string, std::string> const& fixed);

}  // namespace program
