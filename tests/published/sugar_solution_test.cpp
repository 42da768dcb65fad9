// SPDX-License-Identifier: BSL-1.0
//
// Sugar solutions and strengths from gravities against tables: CRC Handbook, 102nd edition; the cubic fit of
// NBS Circular C440; Balling's factors; Excise Notice 226.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/attenuation.hpp>
#include <aqueth/correlation/nbs_1942_brix.hpp>

#include <gtest/gtest.h>

#include <string>

namespace aqueth {
namespace {

TEST(SugarSolution, CrcDensities) {
    published::table const t("crc_sucrose_20c.csv");
    published::deviations weak("crc_sucrose_to_40_percent", "kg/m3");
    published::deviations strong("crc_sucrose_above_40_percent", "kg/m3");
    for (auto const& row : t.rows()) {
        double const percent = row["mass_percent"];
        std::string const cell = row.text("mass_percent") + " % mass";
        published::deviations& report = percent <= 40.0 ? weak : strong;
        if (percent > 70.0) {
            report.leave_out(cell, "beyond the range in which the library uses the equation");
        } else {
            report.add(cell, density(plato(percent), celsius(20)).value() - 1000.0 * row["density_g_cm3"]);
        }
    }
    weak.report();
    strong.report();
    EXPECT_GE(weak.cells() + strong.cells(), 30);
    EXPECT_LE(weak.largest(), 0.11);  // rounding alone is 0.05
    EXPECT_LE(strong.largest(), 0.35);
}

// The classical table is for weighing in air; so is the cubic that was fitted to it.
TEST(SugarSolution, NbsBrix) {
    namespace nbs = correlation::nbs_1942_brix;
    published::deviations report("nbs_c440_cubic", "degrees Brix");
    auto const water = density_in_air(density(mass_fraction(0.0), celsius(20)));
    for (int p = 1; p <= 40; ++p) {
        auto const gravity = in(density_in_air(density(plato(p), celsius(20))), water);
        report.add(std::to_string(p) + " degrees Brix", p - nbs::brix(gravity));
    }
    report.report();
    EXPECT_LE(report.largest(), 0.03);
    EXPECT_TRUE(nbs::covers(1.17));
    EXPECT_FALSE(nbs::covers(1.2));
    EXPECT_NEAR(nbs::brix(1.0), -0.0048, 0.0001);  // as its citation says
}

TEST(Balling, FactorsAreThoseOfTheTable) {
    published::table const t("balling_alcohol_factors.csv");
    for (auto const& row : t.rows()) {
        double const oe = row["original_extract_plato"];
        EXPECT_DOUBLE_EQ(correlation::balling::factor(oe), row["factor"]);
        auto const a = alcohol_by_balling_factors(plato(oe), apparent_extract(0.25 * oe));
        EXPECT_NEAR(a.percent(), row["factor"] * 0.75 * oe, 1e-12);
    }
    EXPECT_EQ(t.rows().size(), correlation::balling::factors.size());
}

TEST(ExciseNotice226, FactorsAndStrengthsOfTheTable) {
    published::table const t("excise_notice_226_factors.csv");
    for (auto const& row : t.rows()) {
        double const fall = row["greatest_fall_degrees"];
        auto const q = alcohol_by_gravity_fall(specific_gravity(1.0 + fall / 1000.0), specific_gravity(1.0));
        EXPECT_NEAR(q.percent(), fall * row["factor"], 1e-9);
        // the strengths printed beside it, cut or rounded to 0.1
        EXPECT_NEAR(q.percent(), row["greatest_strength_percent_vol"], 0.1);
    }
}

}  // namespace
}  // namespace aqueth
