// SPDX-License-Identifier: BSL-1.0
//
// The library's freezing points (CRC Handbook) against the other published ones. They say where R 22 stops
// applying to a liquid, and that limit is no sharper than the sources agree.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/freezing.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <string>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

namespace {

double library(double mass_percent) { return freezing_point(by_mass(mass_percent)).celsius(); }

}  // namespace

// The rows of the table the library interpolates in: fitted, so to speak.
TEST(FreezingPoints, CrcHandbook) {
    table const t("crc_freezing_point.csv");
    deviations d("crc_freezing_point", "K", precision::printed());
    for (auto const& row : t.rows())
        d.add(row.text("mass_percent") + " % mass", -library(row["mass_percent"]),
              row.printed("freezing_depression_k"));
    d.fitted({.largest = 1e-9, .meeting = 45});
    EXPECT_EQ(d.cells(), 45);
    EXPECT_THROW(static_cast<void>(freezing_point(by_mass(68.5))), refusal);
}

TEST(FreezingPoints, Melinder) {
    table const t("melinder_2010_freezing_point.csv");
    // Table and polynomial of the same author are 0.4 K apart: no figure of theirs can be surer than that.
    char const* const basis = "the source's table and its polynomial differ by 0.4 K";
    deviations d("melinder_freezing_point", "K", precision::stated(0.4, basis));
    for (auto const& row : t.rows()) {
        double const w = row["ethanol_mass_percent"];
        d.add(row.text("ethanol_mass_percent") + " % mass", library(w) - row["freezing_point_c"]);
    }
    EXPECT_EQ(d.cells(), 11);
    d.judges({.largest = 0.36});  // at 16 % mass, where this fit also misses its author's polynomial by 0.4 K

    table const coefficients("melinder_2010_coefficients.csv");
    deviations p("melinder_freezing_polynomial", "K", precision::formula(0.4, basis));
    for (double w = 0.0; w <= 60.0; w += 1.0) {
        double sum = 0.0;
        for (auto const& row : coefficients.rows()) {
            if (row.text("property") != "freezing" || row["j"] != 0.0) continue;
            sum += row["coefficient"] * std::pow(w - 29.2361, row["i"]);
        }
        p.add(std::to_string(static_cast<int>(w)) + " % mass", library(w) - sum);
    }
    p.judges({.largest = 0.39});  // a polynomial of degree 5 through a curve that bends twice
}

TEST(FreezingPoints, Lange) {
    table const t("lange_freezing_point.csv");
    deviations d("lange_freezing_point", "K", precision::printed());
    for (auto const& row : t.rows()) {
        double const w = row["ethanol_mass_percent"];
        d.add(row.text("ethanol_mass_percent") + " % mass", library(w), row.printed("freezing_point_c"));
        // The two scales of the same row; 0.1 and 0.1 °F is as far as they round.
        EXPECT_NEAR(celsius(row["freezing_point_c"]).fahrenheit(), row["freezing_point_f"], 0.151) << w;
    }
    EXPECT_EQ(d.cells(), 15);
    // Lange lies above CRC by 0.3 to 1.5 K from 14 to 34 % mass: antifreeze practice, older measurements.
    d.guards({.largest = 1.47});
}
