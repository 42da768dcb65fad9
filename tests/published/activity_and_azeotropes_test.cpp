// SPDX-License-Identifier: BSL-1.0
//
// The activity of ethanol at infinite dilution in water, and the azeotrope.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/model/vapour_liquid.hpp>

#include <cmath>
#include <cstdio>
#include <gtest/gtest.h>

using namespace aqueth::correlation;
using namespace aqueth::model;
using aqueth::published::deviations;
using aqueth::published::precision;
using aqueth::published::table;

namespace {

double gamma_at(double kelvin) { return std::exp(excess_gibbs::reduced_gibbs(0.0, kelvin).ethanol); }

}  // namespace

TEST(Activity, Vrbka) {
    table const t("vrbka_2005_infinite_dilution.csv");
    deviations d("vrbka_infinite_dilution", "relative", precision::printed());
    for (auto const& row : t.rows())
        d.add(row.text("temperature_k") + " K", gamma_at(row["temperature_k"]), row.printed("gamma_ethanol"));
    d.fitted({.largest = 0.015, .mean = 0.007});
    EXPECT_EQ(d.cells(), 13);
}

// Never fitted, and they contradict each other: the dilutor is 20 % above Vrbka and others at 303 K.
TEST(Activity, OtherLaboratories) {
    table const t("infinite_dilution_held.csv");
    deviations d("infinite_dilution_held", "relative", precision::printed());
    for (auto const& row : t.rows())
        d.add(row.text("temperature_k") + " K " + row.text("publication"), gamma_at(row["temperature_k"]),
              row.printed("gamma_ethanol"));
    d.guards({.largest = 0.171});
    EXPECT_EQ(d.cells(), 6);
}

// The window asked of the fit, and what Carey and Lewis (1932) print, which lies in it: 0.8943 and 78.15 °C.
// Lai and others (2014) find 0.891, just outside; they are held to their uncertainty in AgainstPressure.
TEST(Azeotropes, AtAtmosphericPressure) {
    auto const a = vapour_liquid::azeotrope_at_pressure(101325.0);
    double const celsius = a.temperature - 273.15;
    EXPECT_GE(a.x, 0.892);
    EXPECT_LE(a.x, 0.897);
    EXPECT_GE(celsius, 78.10);
    EXPECT_LE(celsius, 78.16);
    table const t("carey_lewis_1932.csv");
    auto const printed = t.where("x_ethanol", "0.8943");
    EXPECT_NEAR(a.x, printed["y_ethanol"], 0.0018);
    EXPECT_NEAR(celsius, printed["temperature_c"], 0.02);
}

// Regression: the library's own figures, as the pages give them. No source is claimed.
TEST(Azeotropes, RegressionAtAtmosphericPressure) {
    auto const a = vapour_liquid::azeotrope_at_pressure(101325.0);
    EXPECT_NEAR(a.x, 0.8960, 5e-5);
    EXPECT_NEAR(a.temperature - 273.15, 78.133, 5e-4);
}

TEST(Azeotropes, AgainstPressure) {
    table const t("azeotropes.csv");
    deviations d("azeotropes", "x", precision::unknown("the uncertainties in the table are ours"));
    for (auto const& row : t.rows()) {
        double const x = vapour_liquid::azeotrope_at_pressure(1e3 * row["pressure_kpa"]).x;
        double const off = x - row["x_ethanol"];
        d.add(row.text("pressure_kpa") + " kPa", off);
        EXPECT_LE(std::abs(off), 2 * row["x_uncertainty"]) << row.text("pressure_kpa");
    }
    d.fitted({.largest = 0.0103});
    EXPECT_EQ(d.cells(), 8);
}

// It vanishes between 8.5 and 10.5 kPa: no azeotrope below, one above.
TEST(Azeotropes, Vanishes) {
    EXPECT_TRUE(std::isnan(vapour_liquid::azeotrope_at_pressure(8.5e3).x));
    EXPECT_GT(vapour_liquid::azeotrope_at_pressure(10.5e3).x, 0.99);
    double below = 8.5e3, above = 10.5e3;
    for (int i = 0; i < 40; ++i) {
        double const p = 0.5 * (below + above);
        (std::isnan(vapour_liquid::azeotrope_at_pressure(p).x) ? below : above) = p;
    }
    std::printf("azeotrope vanishes at %.3f kPa\n", 1e-3 * below);
    EXPECT_NEAR(below, 10.366e3, 2.0);
}

// From memory, not read for this project: shown beside the library's figures, and no check.
TEST(Azeotropes, FromMemory) {
    table const t("azeotropes_from_memory.csv");
    ASSERT_EQ(t.rows().size(), 7U);
    for (auto const& row : t.rows()) {
        auto const a = vapour_liquid::azeotrope_at_pressure(1e3 * row["pressure_kpa"]);
        std::printf("%s kPa: computed x %.4f at %.2f K, remembered %s at %s K\n",
                    row.text("pressure_kpa").c_str(), a.x, a.temperature, row.text("x_ethanol").c_str(),
                    row.text("temperature_k").c_str());
    }
}
