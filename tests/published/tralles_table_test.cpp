// SPDX-License-Identifier: BSL-1.0
//
// Tralles (1811), alcoholometrical table in Ure's Dictionary of Arts: percent by volume at 60 °F and specific
// gravity to water at its greatest density. The scale behind a century of trade, not a modern measurement.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>

#include <gtest/gtest.h>
#include <string>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

namespace {

constexpr gravity_reference to_water_at_its_greatest_density{fahrenheit(60), celsius(4)};

}  // namespace

TEST(TrallesTable, SpecificGravity) {
    table const t("tralles_60f.csv");
    deviations usual("tralles_0_to_90", "1", precision::printed());
    deviations strong("tralles_91_to_100", "1", precision::printed());
    for (auto const& row : t.rows()) {
        double const percent = row["volume_percent_60f"];
        auto const w = to<mass_fraction>(by_volume<at_60_fahrenheit>(percent));
        (percent <= 90.0 ? usual : strong)
            .add(row.text("volume_percent_60f") + " % vol",
                 specific_gravity_of(w, to_water_at_its_greatest_density).value(),
                 row.printed("sg_60f_to_water_at_greatest_density"));
    }
    EXPECT_EQ(usual.cells(), 91);
    EXPECT_EQ(strong.cells(), 10);
    // Four printed decimals of measurements of the 1790s: up to 2.6e-4 (88 % vol), 0.9e-4 on average, and
    // nearly always on the same side: his alcohol held some water.
    usual.guards({.largest = 2.6e-4, .mean = 1.0e-4, .meeting = 24});
    // His 100 %, of 0.7939, has 99.84 % vol by R 22 (next check), and the top of the scale leans on it.
    strong.guards({.largest = 8.5e-4});
}

// The same in % vol: what strength R 22 gives to the specific gravity of each row.
TEST(TrallesTable, StrengthOfThePrintedGravity) {
    table const t("tralles_60f.csv");
    auto const counted = precision::unknown("the cells of the specific gravities");
    deviations usual("tralles_strength_0_to_90", "% vol", counted);
    deviations strong("tralles_strength_91_to_100", "% vol", counted);
    for (auto const& row : t.rows()) {
        double const percent = row["volume_percent_60f"];
        auto const cell = row.text("volume_percent_60f") + " % vol";
        specific_gravity const sg(row["sg_60f_to_water_at_greatest_density"]);
        if (percent == 0.0) {
            // 0.9991 stands for 0.99904: above the density of water at 60 °F, so there is no such mixture.
            EXPECT_THROW(
                static_cast<void>(mass_fraction_from_specific_gravity(sg, to_water_at_its_greatest_density)),
                refusal);
            usual.leave_out(cell, "0.9991 is water itself, rounded up");
            continue;
        }
        auto const w = mass_fraction_from_specific_gravity(sg, to_water_at_its_greatest_density);
        (percent <= 90.0 ? usual : strong)
            .add(cell, to<basic_volume_fraction<at_60_fahrenheit>>(w).percent() - percent);
    }
    EXPECT_EQ(usual.cells(), 90);
    // Largest around 36 % vol, where a unit of the fourth decimal is 0.07 % vol.
    usual.guards({.largest = 0.17, .mean = 0.053});
    EXPECT_EQ(strong.cells(), 10);
    strong.guards({.largest = 0.165});
    EXPECT_LE(strong.bias(), -0.1);  // weaker than its name, throughout
}

// The printed differences guard the typing: each is the step from the row above.
TEST(TrallesTable, PrintedDifferences) {
    table const t("tralles_60f.csv");
    double previous = 0.0;
    for (auto const& row : t.rows()) {
        double const sg = row["sg_60f_to_water_at_greatest_density"];
        if (!row.empty("difference_printed_1e_4")) {
            EXPECT_NEAR(1e4 * (previous - sg), row["difference_printed_1e_4"], 1e-6)
                << row.text("volume_percent_60f");
        }
        previous = sg;
    }
}
