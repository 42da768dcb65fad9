// SPDX-License-Identifier: BSL-1.0
//
// 'Alcohol Dilution Reduction Table', unsigned: volumes of water for 100 volumes of alcohol, three figures in
// most cells, taken at 60 °F.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/blending.hpp>

#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>
#include <string>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

namespace {

using volume_fraction_60f = basic_volume_fraction<at_60_fahrenheit>;
constexpr auto reference = at_60_fahrenheit::temperature();

parcel hundred_litres(double percent) {
    return parcel::of(100.0 * litre, by_volume<at_60_fahrenheit>(percent), reference);
}

std::string printed(table::row const& row) {
    return row.text("initial_volume_percent") + " to " + row.text("target_volume_percent") +
           " % vol, printed " + row.text("water_volumes_per_100");
}

}  // namespace

TEST(ReductionTable, WaterVolumes) {
    table const t("reduction_table.csv");
    deviations d("reduction_table_water", "volumes", precision::printed());
    int beyond_one_digit = 0;
    for (auto const& row : t.rows()) {
        if (auto const doubt = row.doubt("water_volumes_per_100"); !doubt.empty()) {
            d.leave_out(printed(row), doubt);
            continue;
        }
        auto const target = by_volume<at_60_fahrenheit>(row["target_volume_percent"]);
        auto const plan =
            dilute(hundred_litres(row["initial_volume_percent"]), target, water_at(reference), reference);
        double const volumes = in(plan.addition.volume(), litre);
        d.add(printed(row), volumes, row.printed("water_volumes_per_100"));
        double const digit = std::pow(10.0, -row.printed("water_volumes_per_100").decimals);
        if (std::abs(volumes - row["water_volumes_per_100"]) > digit) {
            ++beyond_one_digit;
            std::printf("beyond one digit: %s, computed %.3f\n", printed(row).c_str(), volumes);
        }
    }
    EXPECT_EQ(d.cells(), 151);
    EXPECT_EQ(d.left_out(), 2);
    // Large volumes are whole numbers, some of them cut instead of rounded: 85 to 10 is 753.65 in
    // Gay-Lussac's table, 753 here.
    d.guards({.largest = 0.68, .meeting = 126});
    EXPECT_LE(beyond_one_digit, 5);
}

TEST(ReductionTable, StrengthReached) {
    table const t("reduction_table.csv");
    deviations d("reduction_table_strength", "% vol",
                 precision::unknown("the cells of reduction_table_water"));
    for (auto const& row : t.rows()) {
        if (auto const doubt = row.doubt("water_volumes_per_100"); !doubt.empty()) {
            d.leave_out(printed(row), doubt);
            continue;
        }
        auto const added = parcel::of(row["water_volumes_per_100"] * litre, by_mass(0), reference);
        auto const mixed = mix({hundred_litres(row["initial_volume_percent"]), added}, reference);
        d.add(printed(row),
              mixed.product.strength<volume_fraction_60f>().percent() - row["target_volume_percent"]);
    }
    EXPECT_EQ(d.cells(), 151);
    // 85 to 60: 44.2 stands for 44.48 (Gay-Lussac). Next 95 to 45: 118 is 117.6 rounded, which is 0.09 % vol.
    d.guards({.largest = 0.106, .mean = 0.0145});
}
