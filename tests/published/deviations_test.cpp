// SPDX-License-Identifier: BSL-1.0
//
// The harness of the checks against published tables: which cells meet a source's precision, and when a check
// fails.
#include "published/deviations.hpp"

#include <cmath>
#include <gtest/gtest-spi.h>
#include <gtest/gtest.h>
#include <limits>
#include <sstream>

using aqueth::published::deviations;
using aqueth::published::figure;
using aqueth::published::precision;
using aqueth::published::table;

namespace {

// Two cells: one within half of the last printed digit, one a whole digit off.
deviations half_met() {
    deviations d("example", "1", precision::printed());
    d.add("near", 1.2349, figure{1.23, 2});
    d.add("off", 2.34, figure{2.33, 2});
    return d;
}

deviations all_met() {
    deviations d("example", "1", precision::printed());
    d.add("near", 1.2349, figure{1.23, 2});
    d.add("at the half", 0.125, figure{0.12, 2});
    return d;
}

}  // namespace

TEST(Deviations, CountsWhatMeetsThePrintedDigits) {
    EXPECT_EQ(half_met().cells(), 2);
    EXPECT_EQ(half_met().meeting(), 1);
    EXPECT_NEAR(half_met().largest(), 0.01, 1e-12);
    EXPECT_NEAR(half_met().bias(), 0.00745, 1e-12);
    EXPECT_EQ(all_met().meeting(), 2);
}

TEST(Deviations, JudgingFailsAtOneCellBeyondTheSource) {
    all_met().judges();
    EXPECT_NONFATAL_FAILURE(half_met().judges(), "miss the source's own precision");
}

TEST(Deviations, GuardingFailsWhenItMightJudge) {
    half_met().guards({.largest = 0.0101});
    EXPECT_NONFATAL_FAILURE(all_met().guards({.largest = 0.0101}), "it can judge");
}

TEST(Deviations, LimitsAreHeld) {
    EXPECT_NONFATAL_FAILURE(half_met().guards({.largest = 0.0099}), "example at off");
    EXPECT_NONFATAL_FAILURE(half_met().guards({.mean = 0.0074}), "example");
    EXPECT_NONFATAL_FAILURE(half_met().fitted({.meeting = 2}), "example");
    EXPECT_NONFATAL_FAILURE(all_met().judges({.largest = 0.0049}), "example at ");
    EXPECT_NONFATAL_FAILURE(deviations("none", "1", precision::printed()).shows(), "none");
}

// NaN meets nothing and stays the largest deviation, which no limit allows.
TEST(Deviations, NotANumberMeetsNothing) {
    auto d = all_met();
    d.add("nowhere", std::numeric_limits<double>::quiet_NaN(), figure{1.0, 1});
    d.add("off", 5.0, figure{1.0, 1});
    EXPECT_EQ(d.meeting(), 2);
    EXPECT_TRUE(std::isnan(d.largest()));
}

TEST(Deviations, UnitsScaleDeviationAndPrecisionAlike) {
    for (auto const* unit : {"1", "relative", "digits"}) {
        deviations d("example", unit, precision::printed());
        d.add("met", 200.04, figure{200.0, 1});
        d.add("missed", 200.06, figure{200.0, 1});
        EXPECT_EQ(d.meeting(), 1) << unit;
    }
    deviations relative("example", "relative", precision::stated(0.01, "here"));
    relative.add("met", 201.9, figure{200.0, 1});
    relative.add("missed", 202.1, figure{200.0, 1});
    EXPECT_EQ(relative.meeting(), 1);
    EXPECT_NEAR(relative.largest(), 0.0105, 1e-12);
    deviations digits("example", "digits", precision::printed());
    digits.add("three digits", 0.123, figure{0.12, 2});
    EXPECT_NEAR(digits.largest(), 0.3, 1e-12);
}

TEST(Deviations, CellsOfTheirOwnPrecision) {
    deviations d("example", "K", precision::each_cell("here"));
    d.add("met", 0.9, 1.0);
    d.add("missed", 0.9, 0.5);
    EXPECT_EQ(d.meeting(), 1);
    deviations cut("example", "1", precision::printed(1.0, "cut"));
    cut.add("cut", 77.7777, figure{77.77, 2});
    EXPECT_EQ(cut.meeting(), 1);
}

// 99.5 of a column with three decimals stands for 99.500.
TEST(Deviations, ZerosThatTheCopyLost) {
    std::istringstream text("# title: t\n# source: s\n# status: read\n# used: fitted\n# units: u\n# doubts: "
                            "d\na\n99.5\n12.345\n");
    table const t("example", text);
    deviations d("example", "1", precision::printed_as_longest(t, "a"));
    for (auto const& row : t.rows()) d.add("a", row["a"] + 0.0006, row.printed("a"));
    EXPECT_EQ(d.meeting(), 0);
}
