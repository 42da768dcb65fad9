// SPDX-License-Identifier: BSL-1.0
// Heats are held against published measurements in published/.
#include <aqueth/caloric.hpp>
#include <aqueth/plain/equilibrium.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace aqueth {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

void expect_refused(plain::checked<double> const& found, argument refused, limit set_by, double value,
                    double lower, double upper) {
    EXPECT_TRUE(std::isnan(found.value));
    EXPECT_FALSE(found.status.ok);
    EXPECT_EQ(found.status.argument, refused);
    EXPECT_EQ(found.status.limit, set_by);
    EXPECT_TRUE(found.status.value == value || (std::isnan(found.status.value) && std::isnan(value)));
    EXPECT_EQ(found.status.lower, lower);
    EXPECT_EQ(found.status.upper, upper);
}

TEST(PlainCaloric, IsTheTypedOneToTheDigit) {
    for (double const w : {0.0, 1e-6, 0.05, 0.3, 0.7, 0.95, 1.0}) {
        mass_fraction const typed(w);
        for (double const t : {0.0, 20.0, 78.3, 116.85}) {
            EXPECT_EQ(plain::excess_enthalpy_j_mol(w, t).value, excess_enthalpy(typed, celsius(t)).value());
            EXPECT_EQ(plain::molar_heat_capacity_j_mol_k(w, t).value,
                      molar_heat_capacity(typed, celsius(t)).value());
            EXPECT_EQ(plain::specific_heat_capacity_j_kg_k(w, t).value,
                      specific_heat_capacity(typed, celsius(t)).value());
            auto const h = plain::enthalpy_of_liquid_j_kg(w, t);
            EXPECT_EQ(h.value, enthalpy_of_liquid(typed, celsius(t)).value());
            EXPECT_EQ(plain::enthalpy_of_vapour_j_kg(w, t, 0.5).value,
                      enthalpy_of_vapour(typed, celsius(t), 0.5 * kilopascal).value());
            auto const back = plain::liquid_celsius_from_enthalpy(w, h.value);
            EXPECT_EQ(back.value, temperature_of_liquid(typed, h.value * joule_per_kilogram).celsius());
            EXPECT_NEAR(back.value, t, 1e-10);
            EXPECT_TRUE(plain::enthalpy_of_liquid_j_kg(w, back.value).status.ok);  // at the very ends too
        }
    }
}

TEST(PlainCaloric, RefusesAMassFractionThatIsNone) {
    for (double const bad : {-1e-9, 1.0 + 1e-9, nan, infinity, -infinity}) {
        for (auto const& found :
             {plain::excess_enthalpy_j_mol(bad, 20.0), plain::molar_heat_capacity_j_mol_k(bad, 20.0),
              plain::specific_heat_capacity_j_kg_k(bad, 20.0), plain::enthalpy_of_liquid_j_kg(bad, 20.0),
              plain::enthalpy_of_vapour_j_kg(bad, 20.0, 1.0), plain::liquid_celsius_from_enthalpy(bad, 1e5)})
            expect_refused(found, argument::mass_fraction, limit::none, bad, 0.0, 1.0);
    }
}

TEST(PlainCaloric, RefusesATemperatureBeyondTheHeatCapacities) {
    for (double const bad : {-1e-9, 116.851, nan, infinity, -infinity}) {
        for (auto const& found :
             {plain::excess_enthalpy_j_mol(0.4, bad), plain::molar_heat_capacity_j_mol_k(0.4, bad),
              plain::specific_heat_capacity_j_kg_k(0.4, bad), plain::enthalpy_of_liquid_j_kg(0.4, bad),
              plain::enthalpy_of_vapour_j_kg(0.4, bad, 1.0)})
            expect_refused(found, argument::temperature, limit::heat_capacities_of_the_pure_liquids, bad, 0.0,
                           116.85);
    }
}

TEST(PlainCaloric, RefusesAVapourThatWouldCondense) {
    // Water at 100 °C boils under 101.42 kPa (from memory).
    auto const dew = plain::dew_point_at_celsius(0.0, 100.0).value.kpa;
    EXPECT_NEAR(dew, 101.42, 0.01);
    EXPECT_TRUE(plain::enthalpy_of_vapour_j_kg(0.0, 100.0, dew).status.ok);
    EXPECT_TRUE(plain::enthalpy_of_vapour_j_kg(0.0, 100.0, dew * (1.0 + 1e-10)).status.ok);
    for (double const bad : {-1e-9, 101.5, nan, infinity})
        expect_refused(plain::enthalpy_of_vapour_j_kg(0.0, 100.0, bad), argument::pressure,
                       limit::vapour_condenses_above, bad, 0.0, dew);
}

TEST(PlainCaloric, RefusesAnEnthalpyThatNoLiquidHas) {
    double const lowest = plain::enthalpy_of_liquid_j_kg(0.4, 0.0).value;
    double const highest = plain::enthalpy_of_liquid_j_kg(0.4, 116.85).value;
    for (double const bad : {lowest - 1.0, highest + 1.0, nan, infinity, -infinity}) {
        auto const found = plain::liquid_celsius_from_enthalpy(0.4, bad);
        EXPECT_TRUE(std::isnan(found.value));
        EXPECT_EQ(found.status.argument, argument::specific_enthalpy);
        EXPECT_EQ(found.status.limit, limit::liquid_to_116_85_celsius);
        EXPECT_NEAR(found.status.lower, lowest, 1e-5);
        EXPECT_NEAR(found.status.upper, highest, 1e-5);
    }
}

TEST(PlainCaloric, InFloatTheSameToWhatItHolds) {
    for (float const w : {0.0f, 0.01f, 0.1f, 0.4f, 0.7f, 0.95f, 1.0f}) {
        for (float const t : {0.0f, 1.0f, 20.0f, 78.0f, 100.0f, 116.85f}) {
            double const wd = w;
            double const td = (std::min)(double(t), 116.85);
            EXPECT_NEAR(plain::excess_enthalpy_j_mol(w, t).value, plain::excess_enthalpy_j_mol(wd, td).value,
                        0.05);
            EXPECT_NEAR(plain::molar_heat_capacity_j_mol_k(w, t).value,
                        plain::molar_heat_capacity_j_mol_k(wd, td).value, 1e-3);
            EXPECT_NEAR(plain::specific_heat_capacity_j_kg_k(w, t).value,
                        plain::specific_heat_capacity_j_kg_k(wd, td).value, 0.05);
            float const h = plain::enthalpy_of_liquid_j_kg(w, t).value;
            EXPECT_NEAR(h, plain::enthalpy_of_liquid_j_kg(wd, td).value, 2.0);
            auto const back = plain::liquid_celsius_from_enthalpy(w, h);
            ASSERT_TRUE(back.status.ok);
            EXPECT_NEAR(back.value, t, 1e-3);
            EXPECT_NEAR(plain::enthalpy_of_vapour_j_kg(w, t, 0.5f).value,
                        plain::enthalpy_of_vapour_j_kg(wd, td, 0.5).value, 20.0);
            if (t == 0.0f) continue;  // no equilibrium to ask for
            auto const x = correlation::molar_mass::mole_fraction_from_mass_fraction(w);
            float const dew = plain::dew_point_at_celsius(x, t).value.kpa;
            EXPECT_TRUE(plain::enthalpy_of_vapour_j_kg(w, t, dew).status.ok);
        }
    }
}

}  // namespace
}  // namespace aqueth
