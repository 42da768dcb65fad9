// SPDX-License-Identifier: BSL-1.0
#include <aqueth/correlation/freezing_point.hpp>

#include "published/table.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace aqueth::correlation::freezing_point {
namespace {

TEST(FreezingPoint, PassesThroughEveryRowOfItsTable) {
    // CRC Handbook of Chemistry and Physics, Concentrative Properties of Aqueous Solutions: ethanol.
    published::table const table("crc_freezing_point.csv");
    ASSERT_EQ(table.rows().size() + 1, points.size());
    for (auto const& row : table.rows()) {
        EXPECT_NEAR(celsius(row["mass_percent"] / 100.0), -row["freezing_depression_k"], 1e-12);
    }
}

TEST(FreezingPoint, FallsSteadily) {
    EXPECT_EQ(celsius(0.0), 0.0);
    for (double w = 0.001; w <= highest_mass_fraction; w += 0.001) EXPECT_LT(celsius(w), celsius(w - 0.001));
}

TEST(FreezingPoint, WithinWhatPublishedTablesDisagreeBy) {
    // Lange's Handbook, table 5.13, and Melinder 2010 (IIR): independent of the CRC table. The sources
    // themselves differ by 1.5 K near 30 % mass, where Lange's rows are above both others; see the doubts in
    // the files.
    double worst_lange = 0.0;
    published::table const lange("lange_freezing_point.csv");
    for (auto const& row : lange.rows()) {
        double const off = std::abs(celsius(row["ethanol_mass_percent"] / 100.0) - row["freezing_point_c"]);
        worst_lange = (std::max)(worst_lange, off);
    }
    double worst_melinder = 0.0;
    published::table const melinder("melinder_2010_freezing_point.csv");
    for (auto const& row : melinder.rows()) {
        double const off = std::abs(celsius(row["ethanol_mass_percent"] / 100.0) - row["freezing_point_c"]);
        worst_melinder = (std::max)(worst_melinder, off);
    }
    RecordProperty("worst_lange_k", std::to_string(worst_lange));
    RecordProperty("worst_melinder_k", std::to_string(worst_melinder));
    std::printf("largest deviation: Lange %.2f K, Melinder %.2f K\n", worst_lange, worst_melinder);
    EXPECT_LE(worst_lange, 1.5);
    EXPECT_LE(worst_melinder, 0.4);
}

TEST(FreezingPoint, CoversItsRangeOnlyAndPassesNaNThrough) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(covers(0.0) && covers(0.68));
    EXPECT_FALSE(covers(-0.1) || covers(0.69) || covers(nan));
    EXPECT_TRUE(std::isnan(celsius(nan)));
}

}  // namespace
}  // namespace aqueth::correlation::freezing_point
