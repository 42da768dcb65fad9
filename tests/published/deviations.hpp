// SPDX-License-Identifier: BSL-1.0
#pragma once

#include "published/table.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>
#include <limits>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace aqueth::published {

/// The stated precision of a source's figures, and its origin.
class precision {
public:
    /// The precision follows from the printed digits.
    /// @param units in units of the last printed digit; 0.5 for figures that are rounded, 1 for figures cut
    /// @param basis how that is known
    static precision printed(double units = 0.5, std::string basis = "half a unit in the last digit") {
        return {kind::printed, units, std::move(basis)};
    }
    /// The printed digits say it, but the copy lost the zeros at their end: all figures of a column have as
    /// many decimals as the longest.
    /// @param t      table
    /// @param column column of it
    static precision printed_as_longest(table const& t, std::string_view column) {
        precision result = printed();
        for (auto const& row : t.rows())
            if (!row.empty(column))
                result.decimals_ = (std::max)(result.decimals_, row.printed(column).decimals);
        result.basis_ += ", " + std::to_string(result.decimals_) + " decimals";
        return result;
    }
    /// The source states it, one figure for all cells.
    /// @param value in the unit of the report
    /// @param basis where it is stated
    static precision stated(double value, std::string basis) {
        return {kind::stated, value, std::move(basis)};
    }
    /// The source states it cell by cell, or its digits are converted cell by cell to the unit of the report.
    /// @param basis where it is stated, or what is converted
    static precision each_cell(std::string basis) { return {kind::each_cell, 0.0, std::move(basis)}; }
    /// The source prints a formula, whose coefficients are exact. Its values are no printed cells: they are
    /// not counted with those.
    /// @param value in the unit of the report
    /// @param basis how that is known
    static precision formula(double value, std::string basis = "rounding of double arithmetic") {
        return {kind::formula, value, std::move(basis)};
    }
    /// Not known, or the cells are counted by another check already.
    /// @param basis why
    static precision unknown(std::string basis) { return {kind::unknown, 0.0, std::move(basis)}; }

private:
    friend class deviations;
    enum class kind { printed, stated, each_cell, formula, unknown };
    precision(kind k, double value, std::string basis) : kind_(k), value_(value), basis_(std::move(basis)) {}
    kind kind_;
    double value_;
    std::string basis_;
    int decimals_ = -1;  // of every printed figure; none: as it stands
};

/// Deviations reached. They guard against change; they say nothing about the source.
struct reached {
    double largest = std::numeric_limits<double>::infinity();  ///< size of the largest deviation
    double mean = std::numeric_limits<double>::infinity();     ///< mean size of the deviations
    int meeting = 0;                                           ///< cells that meet the source's precision
};

/// Comparison of a printed table with the library: computed less printed for each cell, summarized in one
/// row.
///
/// A check states the precision of its source, adds its cells, names the cells it leaves out, and ends with
/// one of these calls:
/// - judges(): every cell must meet the source's own precision;
/// - guards(): not every cell does, and the limit is the deviation reached, so that a change is noticed;
/// - fitted(): the library's coefficients come from this table; the limit is the deviation reached;
/// - shows(): no limit, for comparison.
///
/// The row stands on the output of the test and in the test's properties; tests/published/report.sh puts the
/// rows of all checks together.
class deviations {
public:
    /// @param name   short name, also used for the properties: letters, digits and underscores
    /// @param unit   unit of the deviations; "relative": they are parts of the printed figure; "digits": they
    ///               are counted in units of its last printed digit
    /// @param source how precise the source is
    deviations(std::string name, std::string unit, precision source)
        : name_(std::move(name)), unit_(std::move(unit)), source_(std::move(source)) {}

    /// Counts one cell.
    /// @param cell     where it stands, for the report
    /// @param computed the library's figure
    /// @param printed  the source's printed figure
    void add(std::string const& cell, double computed, figure printed) {
        double const digit = std::pow(10.0, -(source_.decimals_ < 0 ? printed.decimals : source_.decimals_));
        double const scale = unit_ == "relative" ? std::abs(printed.value) : unit_ == "digits" ? digit : 1.0;
        bool const by_digits = source_.kind_ == precision::kind::printed;
        count(cell, (computed - printed.value) / scale,
              by_digits ? source_.value_ * digit / scale : source_.value_);
    }

    /// Counts one cell that is compared in another quantity than the printed one.
    /// @param cell  where it stands
    /// @param value deviation, in the unit of this report
    void add(std::string const& cell, double value) { count(cell, value, source_.value_); }

    /// Counts one cell with a precision of its own.
    /// @param cell     where it stands
    /// @param value    deviation, in the unit of this report
    /// @param demanded precision of the source there, in the same unit
    void add(std::string const& cell, double value, double demanded) { count(cell, value, demanded); }

    /// Names a cell that is left out.
    void leave_out(std::string const& cell, std::string const& reason) {
        left_out_.push_back(cell + " (" + reason + ")");
    }

    int cells() const { return cells_; }      ///< cells compared
    int meeting() const { return meeting_; }  ///< of these, within the source's own precision
    int left_out() const { return static_cast<int>(left_out_.size()); }  ///< cells named and left out
    /// mean size of the deviations
    double mean() const { return cells_ == 0 ? 0.0 : sum_of_sizes_ / cells_; }
    /// mean deviation, with its sign
    double bias() const { return cells_ == 0 ? 0.0 : sum_ / cells_; }
    double largest() const { return std::abs(largest_); }  ///< size of the largest deviation

    /// Ends a check that judges: every cell must meet the source's own precision.
    /// @param guard limits on top of that
    void judges(reached const& guard = {}) const {
        report("judges", guard);
        EXPECT_EQ(meeting_, cells_) << name_ << ": cells miss the source's own precision";
    }

    /// Ends a check that guards. It fails when it might judge.
    void guards(reached const& guard) const {
        report("guards", guard);
        EXPECT_TRUE(!known() || meeting_ < cells_) << name_ << ": every cell meets the source: it can judge";
    }

    /// Ends a check against a table that the library was fitted to.
    void fitted(reached const& guard) const { report("fitted", guard); }

    /// Ends a comparison without a limit.
    void shows() const { report("shown", {}); }

private:
    bool known() const { return source_.kind_ != precision::kind::unknown; }
    bool printed_cells() const { return known() && source_.kind_ != precision::kind::formula; }

    void count(std::string const& cell, double value, double demanded) {
        ++cells_;
        sum_ += value;
        sum_of_sizes_ += std::abs(value);
        if (std::isnan(value) || std::abs(value) > std::abs(largest_) || where_.empty()) {
            largest_ = value;
            where_ = cell;
        }
        if (!known()) return;
        // A difference of two decimals is not exact: half a digit is met by 0.5 and a little.
        if (std::abs(value) <= demanded * (1.0 + 1e-9)) ++meeting_;
        least_demanded_ = std::fmin(least_demanded_, demanded);
        most_demanded_ = std::fmax(most_demanded_, demanded);
    }

    static std::string number(double value) {
        char text[32];
        std::snprintf(text, sizeof text, "%.3g", value);
        return text;
    }

    void report(char const* role, reached const& guard) const {
        EXPECT_GT(cells_, 0) << name_;
        EXPECT_LE(largest(), guard.largest) << name_ << " at " << where_;
        EXPECT_LE(mean(), guard.mean) << name_;
        EXPECT_GE(meeting_, guard.meeting) << name_;

        std::string const demanded = !known() ? "-"
                                     : least_demanded_ == most_demanded_
                                         ? number(most_demanded_)
                                         : number(least_demanded_) + "-" + number(most_demanded_);
        bool const judging = role == std::string("judges");
        std::string const limit = !std::isinf(guard.largest) ? number(guard.largest)
                                  : judging                  ? "demanded"
                                                             : "-";
        std::string const meet = printed_cells() ? std::to_string(meeting_) : "-";
        char row[256];
        std::snprintf(row, sizeof row, "%-33s %-9s %5d %4s %9s %9s %15s %8s  %s", name_.c_str(),
                      unit_.c_str(), cells_, meet.c_str(), number(mean()).c_str(), number(largest_).c_str(),
                      demanded.c_str(), limit.c_str(), role);
        std::string text = row;
        text += "\n    largest at " + where_ + "; bias " + number(bias());
        if (!std::isinf(guard.mean)) text += "; limit of the mean " + number(guard.mean);
        text += "; source: " + source_.basis_;
        for (auto const& cell : left_out_) text += "\n    left out: " + cell;
        std::printf("%s\n", text.c_str());
        testing::Test::RecordProperty(name_, text);
    }

    std::string name_;
    std::string unit_;
    precision source_;
    int cells_ = 0;
    int meeting_ = 0;
    double sum_ = 0.0;
    double sum_of_sizes_ = 0.0;
    double largest_ = 0.0;
    double least_demanded_ = std::numeric_limits<double>::infinity();
    double most_demanded_ = 0.0;
    std::string where_;
    std::vector<std::string> left_out_;
};

}  // namespace aqueth::published
