// SPDX-License-Identifier: BSL-1.0
//
// The British Pharmaceutical Codex (1911), monograph Alcohol: the four official dilute alcohols, made from
// alcohol of 90 % to 100 volumes at 15.5 °C, with their specific gravities.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/blending.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>

#include <gtest/gtest.h>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

namespace {

// The codex's own reference temperature, 60 °F cut to one decimal; the library's strengths take any.
struct at_15_5_celsius {
    static constexpr units::temperature temperature() noexcept { return celsius(15.5); }
    static constexpr char const* unit = "% vol at 15.5 °C";
};

constexpr auto reference = at_15_5_celsius::temperature();

}  // namespace

TEST(Bpc1911, DiluteAlcohols) {
    table const t("bpc_1911_dilution.csv");
    deviations alcohol("bpc_alcohol", "volumes",
                       precision::printed(1.0, "77.777 and 66.666 are cut to 77.77 and 66.66"));
    deviations added("bpc_water", "volumes", precision::printed());
    deviations gravity("bpc_sg", "1", precision::printed());
    for (auto const& row : t.rows()) {
        auto const target = by_volume<at_15_5_celsius>(row["target_volume_percent"]);
        auto const stock = by_volume<at_15_5_celsius>(90.0);
        auto const made =
            make_up(100.0 * litre, reference, target, liquid::of(stock, reference), water_at(reference));
        auto const cell = row.text("target_volume_percent") + " % vol";
        alcohol.add(cell, in(made.spirit.volume(), litre), row.printed("alcohol_90_volumes"));
        added.add(cell, in(made.diluent.volume(), litre), row.printed("water_volumes"));
        gravity.add(cell, specific_gravity_of(made.product.composition(), {reference, reference}).value(),
                    row.printed("sg_15_5_15_5"));
        EXPECT_NEAR(in(made.product.volume(), litre), 100.0, 1e-9);
    }
    alcohol.judges({.largest = 0.0079});
    // 0.03 volumes of water are 0.01 % vol; the codex's densities are older than the NBS measurements.
    added.guards({.largest = 0.0325, .meeting = 1});
    gravity.judges({.largest = 4.9e-5});
    EXPECT_EQ(alcohol.cells(), 4);
    EXPECT_EQ(added.cells(), 4);
    EXPECT_EQ(gravity.cells(), 4);
}
