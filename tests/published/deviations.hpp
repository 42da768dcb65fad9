// SPDX-License-Identifier: BSL-1.0
#pragma once

#include "published/table.hpp"

#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>
#include <sstream>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace aqueth::published {

/// What a printed table says about the library: cell by cell computed less printed, summed up.
///
/// A check adds its cells, names those it leaves out, reports, and then asserts on the figures. The
/// deviations are shown on the output of the test and kept as properties of the test.
class deviations {
public:
    /// @param name short name, also used for the properties: letters, digits and underscores
    /// @param unit unit of the figures, or relative: deviations are then parts of the printed figure
    deviations(std::string name, std::string unit)
        : name_(std::move(name)), unit_(std::move(unit)), scaled_(std::string_view(unit_) == "relative") {}

    /// Counts one cell.
    /// @param cell     where it stands, for the report
    /// @param computed what the library says
    /// @param printed  what the source prints
    void add(std::string const& cell, double computed, figure printed) {
        double const scale = std::pow(10.0, printed.decimals);
        ++cells_;
        figures_ = true;
        // The two sides are the same number of units of the last printed digit.
        if (std::llround(computed * scale) == std::llround(printed.value * scale)) ++rounding_;
        deviation(cell, (computed - printed.value) / (scaled_ ? printed.value : 1.0));
    }

    /// Counts one cell that is compared in another quantity than the printed one, so that rounding means
    /// nothing.
    /// @param cell  where it stands
    /// @param value deviation, in the unit of this report
    void add(std::string const& cell, double value) {
        ++cells_;
        deviation(cell, value);
    }

    /// Names a cell that is left out.
    void leave_out(std::string const& cell, std::string const& reason) {
        left_out_.push_back(cell + " (" + reason + ")");
    }

    int cells() const { return cells_; }        ///< cells compared
    int rounding() const { return rounding_; }  ///< of these, round to the printed digit
    int left_out() const { return static_cast<int>(left_out_.size()); }  ///< cells named and left out
    double mean() const {
        return cells_ == 0 ? 0.0 : sum_of_sizes_ / cells_;
    }                                                                  ///< mean size of the deviations
    double bias() const { return cells_ == 0 ? 0.0 : sum_ / cells_; }  ///< mean deviation, with its sign
    double largest() const { return std::abs(largest_); }              ///< size of the largest deviation
    std::string const& where() const { return where_; }                ///< the cell it stands in

    /// Shows the result and keeps it with the test.
    void report() const {
        std::ostringstream text;
        text << name_ << ": " << cells_ << " cells";
        if (figures_) text << ", " << rounding_ << " round to the printed digit";
        text << "; " << unit_ << ": mean " << mean() << ", bias " << bias() << ", largest " << largest_
             << " at " << where_;
        for (auto const& cell : left_out_) text << "\n  left out: " << cell;
        std::printf("%s\n", text.str().c_str());
        testing::Test::RecordProperty(name_, text.str());
    }

private:
    void deviation(std::string const& cell, double value) {
        sum_ += value;
        sum_of_sizes_ += std::abs(value);
        if (std::isnan(value) || std::abs(value) > std::abs(largest_) || where_.empty()) {
            largest_ = value;
            where_ = cell;
        }
    }

    std::string name_;
    std::string unit_;
    bool scaled_;
    bool figures_ = false;
    int cells_ = 0;
    int rounding_ = 0;
    double sum_ = 0.0;
    double sum_of_sizes_ = 0.0;
    double largest_ = 0.0;
    std::string where_;
    std::vector<std::string> left_out_;
};

}  // namespace aqueth::published
