// SPDX-License-Identifier: BSL-1.0
//
// Viscosity, speed of sound and thermal conductivity against published figures. The first two are fitted to a
// table each, and each is held against another that the fit did not see.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/density.hpp>
#include <aqueth/transport.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <string>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

namespace {

double viscosity_of(double mass_percent, double degrees) {
    return in(viscosity(by_mass(mass_percent), celsius(degrees)), millipascal_second);
}

double sound_in(mass_fraction w, double degrees) {
    return in(speed_of_sound(w, celsius(degrees)), metre_per_second);
}

}  // namespace

TEST(Viscosity, BinghamAndJackson) {
    table const t("bingham_jackson_1918.csv");
    deviations d("bingham_jackson_viscosity", "relative", precision::printed());
    for (auto const& row : t.rows()) {
        d.add(row.text("mass_percent") + " % mass, " + row.text("temperature_c") + " °C",
              viscosity_of(row["mass_percent"], row["temperature_c"]), row.printed("viscosity_mpas"));
    }
    EXPECT_EQ(d.cells(), 95);
    d.fitted(
        {.largest = 0.0245, .mean = 0.0045});  // largest at 20 % mass and 10 °C, where the curve is steep
}

// Other laboratories: the copy of 2007 is low throughout, which its own pure liquids are not.
TEST(Viscosity, MeasuredIn2007) {
    table const t("viscosity_2007.csv");
    deviations d("viscosity_2007", "relative", precision::printed());
    for (auto const& row : t.rows()) {
        double const w =
            correlation::molar_mass::mass_fraction_from_mole_fraction(1.0 - row["mole_fraction_of_water"]);
        d.add("x = " + row.text("mole_fraction_of_water") + " of water, " + row.text("temperature_k") + " K",
              viscosity_of(100.0 * w, row["temperature_k"] - 273.15), row.printed("viscosity_mpas"));
    }
    EXPECT_EQ(d.cells(), 22);
    d.guards({.largest = 0.0695});
}

// The refrigeration handbook's own polynomial, at its check values: 0.3 % at the pure end, 2 % in mixtures.
TEST(Viscosity, MelinderCheckValues) {
    table const t("melinder_2010_check_values.csv");
    deviations d("melinder_viscosity", "relative", precision::stated(0.001, "stated by those who computed"));
    for (auto const& row : t.rows()) {
        if (row.empty("viscosity_pa_s")) continue;
        double const printed = 1000.0 * row["viscosity_pa_s"];
        d.add(row.text("ethanol_mass_percent") + " % mass, " + row.text("temperature_c") + " °C",
              viscosity_of(row["ethanol_mass_percent"], row["temperature_c"]) / printed - 1.0);
    }
    EXPECT_GE(d.cells(), 8);
    d.guards({.largest = 0.0182});
}

TEST(SpeedOfSound, MeasuredIn2018) {
    table const t("sound_speed_2018.csv");
    deviations d("sound_speed_2018", "m/s", precision::printed());
    for (auto const& row : t.rows()) {
        mass_fraction const w(
            correlation::molar_mass::mass_fraction_from_mole_fraction(row["mole_fraction"]));
        // 293.15 K less 273.15 K is 20 °C but for rounding
        double const degrees = std::round(100.0 * (row["temperature_k"] - 273.15)) / 100.0;
        d.add("x = " + row.text("mole_fraction") + ", " + row.text("temperature_k") + " K",
              sound_in(w, degrees), row.printed("speed_of_sound_m_per_s"));
    }
    EXPECT_EQ(d.cells(), 56);
    d.fitted({.largest = 0.83, .mean = 0.33});
}

// Never fitted. Composition by density; pure ethanol by OIML R 22 at 25 °C is 785.1 kg/m3, theirs is 785.2.
TEST(SpeedOfSound, EthanolWithALittleWaterIn2007) {
    table const t("sound_speed_2007.csv");
    deviations d("sound_speed_2007", "m/s", precision::stated(0.5, "stated by the authors"));
    for (auto const& row : t.rows()) {
        mass_fraction const w =
            mass_fraction_from_density(row["density_kg_per_m3"] * kilogram_per_cubic_metre, celsius(25.0));
        d.add(row.text("density_kg_per_m3") + " kg/m3", sound_in(w, 25.0) - row["speed_of_sound_m_per_s"]);
    }
    EXPECT_EQ(d.cells(), 12);
    d.guards({.largest = 3.45});  // the driest points; from 97 % mol down both sets agree
}

TEST(ThermalConductivity, MelindersOwnTable) {
    table const t("melinder_2010_conductivity.csv");
    deviations d("melinder_conductivity", "relative", precision::printed());
    for (auto const& row : t.rows()) {
        std::string const cell = row.text("mass_percent") + " % mass, " + row.text("temperature_c") + " °C";
        mass_fraction const w = by_mass(row["mass_percent"]);
        if (celsius(row["temperature_c"]) < celsius(plain::freezing_celsius(w.value()).value)) {
            d.leave_out(cell, "frozen by the CRC Handbook's freezing points");
            continue;
        }
        d.add(cell, in(thermal_conductivity(w, celsius(row["temperature_c"])), watt_per_metre_kelvin),
              row.printed("thermal_conductivity_w_per_m_k"));
    }
    d.guards({.largest = 0.0035});
}
