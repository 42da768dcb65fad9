// SPDX-License-Identifier: BSL-1.0
// The tests in published/ compare heats with published measurements.
#include <aqueth/caloric.hpp>
#include <aqueth/equilibrium.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(Caloric, HeatCapacityIsTheSlopeOfTheEnthalpy) {
    for (double w = 0.0; w <= 1.0; w += 0.1) {
        for (double t = 5.0; t <= 110.0; t += 15.0) {
            double const h = 1e-3;
            double const slope = (enthalpy_of_liquid(mass_fraction(w), celsius(t + h)) -
                                  enthalpy_of_liquid(mass_fraction(w), celsius(t - h)))
                                     .value() /
                                 (2.0 * h);
            EXPECT_NEAR(specific_heat_capacity(mass_fraction(w), celsius(t)).value(), slope, 1e-3);
        }
    }
}

TEST(Caloric, TemperatureIsTheInverseOfEnthalpy) {
    for (double w = 0.0; w <= 1.0; w += 0.05) {
        for (double t = 0.5; t <= 116.0; t += 5.5) {
            auto const h = enthalpy_of_liquid(mass_fraction(w), celsius(t));
            EXPECT_NEAR(temperature_of_liquid(mass_fraction(w), h).celsius(), t, 1e-10);
        }
    }
}

TEST(Caloric, PureLiquidsHaveNoExcess) {
    EXPECT_NEAR(excess_enthalpy(mass_fraction(0.0), celsius(25.0)).value(), 0.0, 1e-12);
    EXPECT_NEAR(excess_enthalpy(mass_fraction(1.0), celsius(25.0)).value(), 0.0, 1e-12);
    EXPECT_LT(excess_enthalpy(by_moles(10.0), celsius(25.0)).value(), -600.0);
}

TEST(Caloric, MolarAndSpecificHeatCapacitiesAreOneProperty) {
    // 18.01528 g/mol for water, 46.06844 g/mol for ethanol (Coplen 1996)
    EXPECT_NEAR(molar_heat_capacity(mass_fraction(0.0), celsius(30.0)).value(),
                specific_heat_capacity(mass_fraction(0.0), celsius(30.0)).value() * 18.01528e-3, 1e-9);
    EXPECT_NEAR(molar_heat_capacity(mass_fraction(1.0), celsius(30.0)).value(),
                specific_heat_capacity(mass_fraction(1.0), celsius(30.0)).value() * 46.06844e-3, 1e-9);
}

TEST(Caloric, VapourHoldsTheHeatOfVaporizationMore) {
    // Water at its normal boiling point: 40.65 kJ/mol (CRC Handbook) is 2256.6 kJ/kg.
    auto const boiling = bubble_point(mole_fraction(0.0), standard_atmosphere).temperature;
    auto const heat = enthalpy_of_vapour(mass_fraction(0.0), boiling, standard_atmosphere) -
                      enthalpy_of_liquid(mass_fraction(0.0), boiling);
    EXPECT_NEAR(heat.value() / 1000.0, 2256.6, 0.002 * 2256.6);
}

TEST(Caloric, RefusesWhatIsOutside) {
    for (double const bad : {-0.1, 117.0, std::numeric_limits<double>::quiet_NaN()}) {
        expect_refusal([&] { static_cast<void>(excess_enthalpy(by_mass(40.0), celsius(bad))); },
                       "temperature");
        expect_refusal([&] { static_cast<void>(molar_heat_capacity(by_mass(40.0), celsius(bad))); },
                       "temperature");
        expect_refusal([&] { static_cast<void>(specific_heat_capacity(by_mass(40.0), celsius(bad))); },
                       "temperature");
        expect_refusal([&] { static_cast<void>(enthalpy_of_liquid(by_mass(40.0), celsius(bad))); },
                       "temperature");
        expect_refusal(
            [&] { static_cast<void>(enthalpy_of_vapour(by_mass(40.0), celsius(bad), standard_atmosphere)); },
            "temperature");
    }
    expect_refusal(
        [] {
            static_cast<void>(
                enthalpy_of_vapour(by_mass(40.0), celsius(80.0), -1.0 * newton_per_square_metre));
        },
        "pressure");
    expect_refusal(
        [] { static_cast<void>(enthalpy_of_vapour(by_mass(0.0), celsius(20.0), 400.0 * kilopascal)); },
        "pressure");
    EXPECT_NO_THROW(static_cast<void>(enthalpy_of_liquid(by_mass(40.0), celsius(0.0))));
    EXPECT_NO_THROW(static_cast<void>(enthalpy_of_liquid(by_mass(40.0), celsius(116.85))));
    auto const dew = dew_point(by_mass(40.0), celsius(80.0));
    EXPECT_NO_THROW(static_cast<void>(enthalpy_of_vapour(by_mass(40.0), celsius(80.0), dew.pressure)));
    expect_refusal([] { static_cast<void>(temperature_of_liquid(by_mass(40.0), 1e7 * joule_per_kilogram)); },
                   "specific enthalpy");
    expect_refusal([] { static_cast<void>(temperature_of_liquid(by_mass(40.0), -1e6 * joule_per_kilogram)); },
                   "specific enthalpy");
}

// Rounding may change a computed dew point, and an enthalpy at either end of the range, by one unit in the
// last place.
TEST(Caloric, EndsMissedByRoundingAreForgiven) {
    auto const t = celsius(80.0);
    for (double const w : {0.0, 0.3, 0.9, 1.0}) {
        double const y = to<mole_fraction>(mass_fraction(w)).value();
        double const dew = model::vapour_liquid::dew_at_temperature(y, t.kelvin()).pressure;
        EXPECT_NO_THROW(static_cast<void>(enthalpy_of_vapour(
            mass_fraction(w), t, dew * (1.0 + 0.5 * detail::rounding) * newton_per_square_metre)));
        expect_refusal(
            [&] {
                static_cast<void>(
                    enthalpy_of_vapour(mass_fraction(w), t, dew * (1.0 + 1e-6) * newton_per_square_metre));
            },
            "pressure");
        for (double const end : {0.0, 116.85}) {
            auto const h = enthalpy_of_liquid(mass_fraction(w), celsius(end));
            for (double const off : {-0.5, 0.0, 0.5}) {  // of a rounding, which is in kJ/kg there
                auto const rounded = h + 1000.0 * off * detail::rounding * joule_per_kilogram;
                EXPECT_NEAR(temperature_of_liquid(mass_fraction(w), rounded).celsius(), end, 1e-8);
            }
        }
    }
}

}  // namespace
}  // namespace aqueth
