// SPDX-License-Identifier: BSL-1.0
#include "expect_refusal.hpp"

#include <aqueth/caloric.hpp>
#include <aqueth/mash.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(Wort, ThreeWaysGiveTheSameWort) {
    auto const a = wort_by_volume(25.0 * litre, extract(16.5));
    auto const b = wort_by_mass(a.solids, a.water);
    auto const c = wort_of_extract(a.solids, a.volume);
    for (auto const& each : {b, c}) {
        EXPECT_NEAR(each.extract.degrees(), 16.5, 1e-9);
        EXPECT_NEAR(in(each.volume, litre), 25.0, 1e-9);
        EXPECT_NEAR(in(each.mass, kilogram), in(a.mass, kilogram), 1e-9);
        EXPECT_NEAR(each.gravity.value(), a.gravity.value(), 1e-12);
    }
    EXPECT_NEAR(in(a.solids + a.water - a.mass, kilogram), 0.0, 1e-12);
}

TEST(Wort, WithoutExtractIsWater) {
    auto const none = wort_of_extract(0.0 * kilogram, 10.0 * litre);
    EXPECT_EQ(none.gravity.value(), 1.0);
    EXPECT_EQ(none.extract.degrees(), 0.0);
    EXPECT_NEAR(in(none.mass, kilogram), 9.98201, 0.0001);  // 10 L of water at 20 °C
}

// 25 L of 11 % vol: what goes into the vessel before pitching needs more room than what comes out.
TEST(Wort, VesselNeedsMoreSpaceThanTheWash) {
    auto const plan = sugar_needed(25.0 * litre, by_volume(11.0));
    auto const before = wort_by_mass(plan.practical, plan.water);
    EXPECT_NEAR(in(before.volume, litre), 25.4, 0.05);
    EXPECT_NEAR(before.extract.degrees(), plan.original.degrees(), 1e-9);
}

TEST(Wort, RefusesWhatCannotBe) {
    expect_refusal([] { return wort_by_volume(-1.0 * litre, extract(10.0)); }, "volume");
    expect_refusal([] { return wort_by_mass(10.0 * kilogram, 1.0 * kilogram); }, "mass");
    expect_refusal([] { return wort_of_extract(20.0 * kilogram, 10.0 * litre); }, "mass of the extract");
    expect_refusal([] { return wort_of_extract(1.0 * kilogram, 0.0 * litre); }, "volume");
    EXPECT_TRUE(
        std::isnan(plain::wort_of_extract(std::numeric_limits<double>::quiet_NaN(), 1.0).value.plato));
}

// The balance of heat that brewers publish (here with the water's real heat capacity): without slaking, equal
// heat capacities meet in the middle.
TEST(Strike, BalanceOfHeat) {
    mash m{1.0 * kilogram, 0.4 * kilogram};
    m.moisture = 0.035;  // specific heat 0.40, rise 1.9 K
    double const strike = strike_temperature(m, celsius(51.9)).celsius();
    EXPECT_NEAR(strike, 80.0, 0.4);
    auto const water_gave = 0.4 * (enthalpy_of_liquid(by_mass(0.0), celsius(strike)) -
                                   enthalpy_of_liquid(by_mass(0.0), celsius(50.0)))
                                      .value();
    EXPECT_NEAR(water_gave, 1.0 * 0.40 * 4186.8 * 30.0, 1.0);
}

TEST(Strike, ColdVesselsAndThickMashesNeedHotterWater) {
    mash m{6.0 * kilogram, 18.0 * kilogram};
    double const alone = strike_temperature(m, celsius(65.0)).celsius();
    m.vessel = 5000.0 * joule_per_kelvin;
    double const with_vessel = strike_temperature(m, celsius(65.0)).celsius();
    EXPECT_GT(with_vessel, alone + 2.0);
    m.vessel_temperature = celsius(63.5);  // the temperature of the mash before slaking: takes nothing
    EXPECT_NEAR(strike_temperature(m, celsius(65.0)).celsius(), alone, 1e-6);
    m.water = 12.0 * kilogram;
    EXPECT_GT(strike_temperature(m, celsius(65.0)).celsius(), alone + 2.0);
}

TEST(Strike, RefusesWhatBoilingWaterCannotDo) {
    mash m{6.0 * kilogram, 3.0 * kilogram};
    auto const e = expect_refusal([&] { return strike_temperature(m, celsius(75.0)); }, "temperature wanted");
    EXPECT_GT(e.upper(), 50.0);
    EXPECT_NEAR(strike_temperature(m, celsius(e.upper() - 1e-4)).celsius(), 100.0, 0.01);
    m.moisture = 0.0801;
    expect_refusal([&] { return strike_temperature(m, celsius(65.0)); }, "moisture");
    m = mash{0.0 * kilogram, 3.0 * kilogram};
    expect_refusal([&] { return strike_temperature(m, celsius(65.0)); }, "mass of the grain");
    m = mash{1.0 * kilogram, 3.0 * kilogram, celsius(-5.0)};
    expect_refusal([&] { return strike_temperature(m, celsius(65.0)); }, "temperature of the grain");
}

// By hand from the heats of combustion: sucrose 5644 - 4*1367 = 176 kJ/mol, 44 for each mole of ethanol;
// glucose 34.5. In a weak wash a mole of ethanol gives off 10 kJ more as it mixes (measured at infinite
// dilution: 10.15, DOI 10.1016/j.fluid.2007.06.007).
TEST(FermentationHeat, ByHandFromHeatsOfCombustion) {
    double const moles = 1000.0 * 0.78924 * 1.0 / 46.068;  // 100 L of 1 % vol
    auto const weak = heat_of_fermentation(100.0 * litre, by_volume(1.0));
    EXPECT_NEAR(in(weak.heat, kilojoule) / moles, 44.0 + 10.15, 0.5);
    auto const glucose = heat_of_fermentation(100.0 * litre, by_volume(1.0), sugar::hexose);
    EXPECT_NEAR(in(weak.heat - glucose.heat, kilojoule) / moles, 9.5, 0.01);
    EXPECT_NEAR(weak.rise.value(), in(weak.heat, kilojoule) / (99.7 * 4.19), 0.02);
    EXPECT_EQ(heat_of_fermentation(1.0 * litre, by_volume(0.0)).heat.value(), 0.0);
}

// Found by the fuzzer: the warming of a huge volume was not a number.
TEST(FermentationHeat, WarmingDoesNotDependOnTheVolume) {
    double const rise = heat_of_fermentation(25.0 * litre, by_volume(11.0)).rise.value();
    EXPECT_NEAR(rise, 23.73, 0.05);
    EXPECT_EQ(heat_of_fermentation(1e307 * litre, by_volume(11.0)).rise.value(), rise);
}

TEST(FermentationHeat, RefusesWhatYeastCannotReach) {
    expect_refusal([] { return heat_of_fermentation(25.0 * litre, by_volume(40.0)); }, "strength");
    expect_refusal([] { return heat_of_fermentation(0.0 * litre, by_volume(10.0)); }, "volume");
}

}  // namespace
}  // namespace aqueth
