// SPDX-License-Identifier: BSL-1.0
//
// Ghersi and Castoldi, Ricettario domestico, p. 37: parts by weight of water for 100 parts by weight of
// alcohol. The book names neither scale nor temperature. By trial it is 17.5 °C (14 °Réaumur), found here
// again.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/blending.hpp>

#include <gtest/gtest.h>
#include <string>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

namespace {

struct at_17_5_celsius {
    static constexpr units::temperature temperature() noexcept { return celsius(17.5); }
    static constexpr char const* unit = "% vol at 17.5 °C";
};

std::string printed(table::row const& row) {
    return row.text("initial_volume_percent") + " to " + row.text("target_volume_percent") +
           " % vol, printed " + row.text("water_g_per_100_g");
}

// strengths that come out, if the percents of the table are taken at a reference temperature
template <class Reference>
deviations strengths_reached(std::string const& name, table const& t) {
    using basis = basic_volume_fraction<Reference>;
    auto const temperature = Reference::temperature();
    deviations d(name, "% vol", precision::unknown("the cells of ghersi_water"));
    for (auto const& row : t.rows()) {
        if (auto const doubt = row.doubt("water_g_per_100_g"); !doubt.empty()) {
            d.leave_out(printed(row), doubt);
            continue;
        }
        auto const spirit =
            parcel::of(100.0 * gram, by_volume<Reference>(row["initial_volume_percent"]), temperature);
        auto const mixed = mix({spirit, water(row["water_g_per_100_g"] * gram, temperature)}, temperature);
        d.add(printed(row),
              mixed.product.template strength<basis>().percent() - row["target_volume_percent"]);
    }
    return d;
}

}  // namespace

TEST(GhersiCastoldiDilution, StrengthReached) {
    table const t("ghersi_castoldi_dilution.csv");
    auto const d = strengths_reached<at_17_5_celsius>("ghersi_strength", t);
    EXPECT_EQ(d.cells(), 95);
    EXPECT_EQ(d.left_out(), 22);
    // The 22 cells were marked because the other cells of the table contradict them, without any formula. The
    // largest that is left, 85 to 65 printed 39.04, is 0.10 % above what the others give, just below the
    // limit for a mark.
    d.guards({.largest = 0.057, .mean = 0.0103});
    // Other temperatures that a book of its time might mean fit half as well.
    EXPECT_GT(strengths_reached<at_15_celsius>("at_15_c", t).mean(), 2.0 * d.mean());
    EXPECT_GT(strengths_reached<at_60_fahrenheit>("at_60_f", t).mean(), 2.0 * d.mean());
    EXPECT_GT(strengths_reached<at_20_celsius>("at_20_c", t).mean(), 2.0 * d.mean());
}

TEST(GhersiCastoldiDilution, WaterByWeight) {
    table const t("ghersi_castoldi_dilution.csv");
    constexpr auto reference = at_17_5_celsius::temperature();
    deviations d("ghersi_water", "relative", precision::printed());
    for (auto const& row : t.rows()) {
        if (!row.doubt("water_g_per_100_g").empty()) continue;
        auto const spirit =
            parcel::of(100.0 * gram, by_volume<at_17_5_celsius>(row["initial_volume_percent"]), reference);
        auto const target = by_volume<at_17_5_celsius>(row["target_volume_percent"]);
        d.add(printed(row), in(dilute(spirit, target, water_at(reference), reference).addition.mass(), gram),
              row.printed("water_g_per_100_g"));
    }
    EXPECT_EQ(d.cells(), 95);
    // 75 to 70: 8.64 printed, 8.70 computed
    d.guards({.largest = 0.0072, .mean = 0.00085, .meeting = 13});
}
