// SPDX-License-Identifier: BSL-1.0
//
// Water: the CIPM-2001 formula against its own published values and an independent table, R 22's water
// against it, and the temperature scales that stand between the two.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/correlation/cipm_2001_water.hpp>
#include <aqueth/correlation/its90.hpp>
#include <aqueth/density.hpp>

#include <cmath>
#include <gtest/gtest.h>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

namespace {

double cipm(double t90) { return in(water_density_cipm_2001(celsius(t90)), kilogram_per_cubic_metre); }

double r22_water(double t) { return in(density(by_mass(0.0), celsius(t)), kilogram_per_cubic_metre); }

}  // namespace

// Tanaka, Girard, Davis, Peuto, Bignell, Metrologia 38 (2001) 301-309: the table of the paper, every whole
// degree.
TEST(WaterDensity, Cipm2001Table) {
    table const t("cipm_2001_water.csv");
    deviations d("cipm_2001", "kg/m3", precision::printed());
    for (auto const& row : t.rows()) {
        d.add(row.text("temperature_c") + " °C", cipm(row["temperature_c"]),
              row.printed("density_kg_per_m3"));
    }
    EXPECT_EQ(d.cells(), 41);
    d.judges();
}

// The same paper, its formula with the five coefficients as printed.
TEST(WaterDensity, Cipm2001FormulaAsPrinted) {
    table const t("cipm_2001_water_coefficients.csv");
    auto const a = [&](char const* i) { return t.where("i", i)["value"]; };
    deviations d("cipm_2001_formula", "relative", precision::formula(1e-12));
    for (double c = 0.0; c <= 40.0; c += 0.25) {
        double const first = c + a("1");
        double const expected = a("5") * (1.0 - first * first * (c + a("2")) / (a("3") * (c + a("4"))));
        d.add(std::to_string(c) + " °C", cipm(c) / expected - 1.0);
    }
    d.judges();
}

// ITTC Recommended Procedure 7.5-02-01-03 (2011), table 1: from another formula than CIPM-2001.
TEST(WaterDensity, IttcFreshWater) {
    table const t("ittc_2011_water.csv");
    deviations d("ittc_2011", "kg/m3", precision::printed());
    for (auto const& row : t.rows()) {
        d.add(row.text("temperature_c") + " °C", cipm(row["temperature_c"]),
              row.printed("density_kg_per_m3"));
    }
    EXPECT_EQ(d.cells(), 31);
    // Two formulas for water of slightly different definition: they part by 0.0012 kg/m3 at 40 °C.
    d.guards({.largest = 0.00125});
}

// R 22 carries its own water, of 1973. Compared with the CIPM table both ways: the reading of the thermometer
// put on the scale of the formula (IPTS-68), and taken as it is.
TEST(WaterDensity, R22WaterAgainstCipm2001) {
    table const t("cipm_2001_water.csv");
    auto const counted = precision::unknown("the cells of cipm_2001");
    deviations scaled("r22_water_on_ipts_68", "kg/m3", counted);
    deviations plain("r22_water_as_read", "kg/m3", counted);
    for (auto const& row : t.rows()) {
        double const t90 = row["temperature_c"];
        double const rho = row["density_kg_per_m3"];
        double const t68 = correlation::its90::t68_from_t90(t90);
        auto const cell = row.text("temperature_c") + " °C";
        // R 22 ends at 40 °C of its own scale, so at 39.990 °C of today's.
        if (t68 > 40.0) {
            scaled.leave_out(cell, "above 40 °C on IPTS-68");
        } else {
            scaled.add(cell, r22_water(t68) - rho);
        }
        plain.add(cell, r22_water(t90) - rho);
    }
    EXPECT_EQ(scaled.cells(), 40);
    EXPECT_EQ(plain.cells(), 41);
    // The absolute density of water was taken lower in 1973: the whole curve lies 0.006 to 0.008 kg/m3 below.
    scaled.guards({.largest = 0.0077});
    EXPECT_NEAR(scaled.bias(), -0.0064, 0.0001);
    // Without the change of scale the warm end comes out higher, by up to 0.004 kg/m3.
    plain.guards({.largest = 0.0074});
}

// CRC Handbook, Conversion of temperatures from the 1948 and 1968 scales to ITS-90: the printed differences.
TEST(WaterDensity, TemperatureScales) {
    table const t("t90_minus_t68.csv");
    // What the source of the polynomial states for it, and half a unit of the digits of the table.
    deviations d("t90_minus_t68", "K",
                 precision::each_cell("Rusby: 0.0015 K below, 0.001 K above 0 °C; and half a printed digit"));
    for (auto const& row : t.rows()) {
        double const t90 = row["t90_c"];
        d.add(row.text("t90_c") + " °C", t90 - correlation::its90::t68_from_t90(t90) - row["t90_minus_t68_k"],
              (t90 < 0.0 ? 0.0015 : 0.001) + 0.0005);
        EXPECT_NEAR(correlation::its90::t90_from_t68(correlation::its90::t68_from_t90(t90)), t90, 1e-12);
    }
    EXPECT_EQ(d.cells(), 18);
    d.judges({.largest = 0.00073});
}

// Rusby, J. Chem. Thermodynamics 23 (1991) 1153: the polynomial with the eight coefficients as printed.
TEST(WaterDensity, TemperatureScalePolynomialAsPrinted) {
    table const t("t90_minus_t68_coefficients.csv");
    deviations d("t90_minus_t68_polynomial", "K", precision::formula(1e-12));
    for (double t90 = -20.0; t90 <= 110.0; t90 += 5.0) {
        double expected = 0.0;
        for (auto const& row : t.rows()) expected += row["value"] * std::pow(t90 / 630.0, row["i"]);
        d.add(std::to_string(t90) + " °C", t90 - correlation::its90::t68_from_t90(t90) - expected);
    }
    d.judges();
}
