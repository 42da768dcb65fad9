// SPDX-License-Identifier: BSL-1.0
//
// Gay-Lussac's table of dilution (table de mouillage, 1824, in its pharmacopoeial form): volumes of water to
// add to 100 volumes of alcohol to bring it to a lower strength, contraction included, all at 15 °C.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/blending.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <string>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

namespace {

using volume_fraction_15c = basic_volume_fraction<at_15_celsius>;
constexpr auto reference = celsius(15);

parcel hundred_litres(double percent) {
    return parcel::of(100.0 * litre, by_volume<at_15_celsius>(percent), reference);
}

std::string cell(table::row const& row) {
    return row.text("initial_volume_percent") + " to " + row.text("target_volume_percent") + " % vol";
}

std::string printed(table::row const& row) {
    return cell(row) + ", printed " + row.text("water_volumes_per_100");
}

// strength after the printed volume of water
double strength_reached(table::row const& row) {
    auto const added = parcel::of(row["water_volumes_per_100"] * litre, by_mass(0), reference);
    auto const mixed = mix({hundred_litres(row["initial_volume_percent"]), added}, reference);
    return mixed.product.strength<volume_fraction_15c>().percent();
}

// water the library would add
double water_volumes(table::row const& row) {
    auto const target = by_volume<at_15_celsius>(row["target_volume_percent"]);
    auto const plan =
        dilute(hundred_litres(row["initial_volume_percent"]), target, water_at(reference), reference);
    return in(plan.addition.volume(), litre);
}

}  // namespace

// The decisive figure for a user of the table: the resulting strength.
TEST(GayLussacDilution, StrengthReached) {
    table const t("gay_lussac_mouillage.csv");
    deviations d("gay_lussac_strength", "% vol", precision::unknown("the cells of gay_lussac_water"));
    for (auto const& row : t.rows()) {
        double const miss = strength_reached(row) - row["target_volume_percent"];
        if (auto const doubt = row.doubt("water_volumes_per_100"); !doubt.empty()) {
            d.leave_out(printed(row), doubt);
        } else {
            d.add(printed(row), miss);
            EXPECT_LE(std::abs(miss), 0.03) << printed(row);
        }
    }
    EXPECT_EQ(d.cells(), 203);
    EXPECT_EQ(d.left_out(), 3);
    // Largest at 70 to 30 (136.04, probably a slip for 136.24), 70 to 50 and 90 to 50. Else 0.02 around a
    // target of 55 %: Gay-Lussac's densities, not rounding, which is 0.003 % vol at most.
    d.guards({.largest = 0.0273, .mean = 0.0053});
}

// The marked cells would miss: two of them by more than the whole table, the third (96 to 10) by its digits
// only.
TEST(GayLussacDilution, MarkedCells) {
    table const t("gay_lussac_mouillage.csv");
    double const miss[]{0.38, 0.125, 0.008};  // 97 to 60, 60 to 50, 96 to 10
    int marked = 0;
    for (auto const& row : t.rows()) {
        if (row.doubt("water_volumes_per_100").empty()) continue;
        ASSERT_LT(marked, 3);
        EXPECT_NEAR(strength_reached(row) - row["target_volume_percent"], miss[marked], 0.1 * miss[marked])
            << printed(row);
        ++marked;
    }
    EXPECT_EQ(marked, 3);
}

TEST(GayLussacDilution, WaterVolumes) {
    table const t("gay_lussac_mouillage.csv");
    deviations d("gay_lussac_water", "volumes", precision::printed_as_longest(t, "water_volumes_per_100"));
    for (auto const& row : t.rows()) {
        if (auto const doubt = row.doubt("water_volumes_per_100"); !doubt.empty()) {
            d.leave_out(printed(row), doubt);
            continue;
        }
        d.add(printed(row), water_volumes(row), row.printed("water_volumes_per_100"));
    }
    EXPECT_EQ(d.cells(), 203);
    // 95 to 10, printed 855.15, is probably a slip: the reduction table has 855.6, R 22 855.65.
    d.guards({.largest = 0.503, .mean = 0.0305, .meeting = 41});
}
