// SPDX-License-Identifier: BSL-1.0
//
// R 22 against three modern sets of measurements (NIST ThermoML records; temperatures on ITS-90, so the
// thermometer is put on the formula's scale first). They differ from one another by 0.3 to 0.5 kg/m3, mostly
// by water in the ethanol and by calibration, so they bound the formula only that far.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/correlation/its90.hpp>
#include <aqueth/density.hpp>
#include <aqueth/strength.hpp>

#include <gtest/gtest.h>
#include <string>

using namespace aqueth;
using published::deviations;
using published::table;

namespace {

double r22(double x, double t90) {
    auto const t68 = celsius(correlation::its90::t68_from_t90(t90));
    return in(density(to<mass_fraction>(by_moles(100.0 * x)), t68), kilogram_per_cubic_metre);
}

deviations set(table const& t, std::string const& id) {
    deviations d(id, "kg/m3");
    for (auto const& row : t.rows()) {
        if (row.text("id") != id) continue;
        double const x = row["ethanol_mole_fraction"];
        double const t90 = row["temperature_c"];
        d.add("x = " + row.text("ethanol_mole_fraction") + ", " + row.text("temperature_c") + " °C",
              r22(x, t90), row.printed("density_kg_per_m3"));
    }
    d.report();
    return d;
}

}  // namespace

TEST(ModernDensities, AgainstR22) {
    table const t("modern_densities.csv");
    auto const gonzalez = set(t, "gonzalez_2007");
    EXPECT_EQ(gonzalez.cells(), 12);
    EXPECT_LE(gonzalez.largest(), 0.52);  // pure ethanol, as with 0.17 % of water in it
    auto const whole = set(t, "je060335h");
    EXPECT_EQ(whole.cells(), 164);     // 41 compositions at 10, 15, 20 and 25 °C
    EXPECT_LE(whole.largest(), 0.39);  // its stated expanded uncertainty
    EXPECT_LE(whole.mean(), 0.1);
    auto const jct = set(t, "jct_2018");
    EXPECT_EQ(jct.cells(), 18);
    EXPECT_LE(jct.largest(), 0.32);  // its water is 0.225 high throughout
}

// An offset of calibration drops out of the change with temperature: a check of R 22's thermal expansion.
TEST(ModernDensities, ChangeFrom20To35Degrees) {
    table const t("modern_densities.csv");
    deviations d("jct_2018_change_20_to_35", "kg/m3");
    for (auto const& cold : t.rows()) {
        if (cold.text("id") != "jct_2018" || cold.text("temperature_c") != "20") continue;
        for (auto const& warm : t.rows()) {
            auto const& x = cold.text("ethanol_mole_fraction");
            if (warm.text("id") != "jct_2018" || warm.text("temperature_c") != "35") continue;
            if (warm.text("ethanol_mole_fraction") != x) continue;
            double const fraction = cold["ethanol_mole_fraction"];
            double const measured = cold["density_kg_per_m3"] - warm["density_kg_per_m3"];
            d.add("x = " + x, r22(fraction, 20) - r22(fraction, 35) - measured);
        }
    }
    d.report();
    EXPECT_EQ(d.cells(), 4);
    EXPECT_LE(d.largest(), 0.0255);  // 0.2 % of the change
}
