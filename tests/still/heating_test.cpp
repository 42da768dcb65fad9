// SPDX-License-Identifier: BSL-1.0
#include <aqueth/atmosphere.hpp>
#include <aqueth/still/heating.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

vessel pot(double watts, double capacity, double loss) {
    return {watts * watt, capacity * joule_per_kelvin, loss * watt_per_kelvin, celsius(20)};
}

// Water takes 4.18 to 4.19 kJ/(kg K) (CRC Handbook of Chemistry and Physics, properties of water).
TEST(Heating, WaterInALosslessPot) {
    auto const h = heat(wash::of(water(1.0 * kilogram, celsius(20))), pot(1000.0, 0.0, 0.0), celsius(90));
    EXPECT_NEAR(in(h.to_liquid, kilojoule), 70.0 * 4.187, 0.005 * 70.0 * 4.187);
    EXPECT_NEAR(in(h.duration, second), in(h.to_liquid, kilojoule), 1e-9);
    EXPECT_NEAR(h.lost.value(), 0.0, 1e-6);
}

TEST(Heating, SharesOfTheHeatAddUp) {
    auto const charge = wash::of(4.0 * litre, by_volume(12), plato(1), celsius(18));
    auto const h = heat(charge, pot(400.0, 900.0, 1.2), celsius(91));
    EXPECT_NEAR((h.to_liquid + h.to_vessel + h.lost).value(), h.supplied.value(), 1e-6);
    EXPECT_NEAR(h.supplied.value(), 400.0 * h.duration.value(), 1e-6);
    EXPECT_NEAR(h.to_vessel.value(), 900.0 * 73.0, 1e-9);
    EXPECT_GT(h.lost.value(), 0.0);
    auto const again = heat(charge, pot(400.0, 900.0, 0.0), celsius(91));
    EXPECT_NEAR(h.to_liquid.value(), again.to_liquid.value(), 1e-9);
    EXPECT_GT(h.duration, again.duration);
}

// With an almost constant heat capacity the time is the textbook's: C/k ln[(P - k(t0 - room))/(P - k(t1 -
// room))].
TEST(Heating, LossMakesItExponential) {
    auto const h = heat(wash::of(water(1.0 * gram, celsius(20))), pot(100.0, 5000.0, 1.5), celsius(80));
    double const c = 5000.0 + h.to_liquid.value() / 60.0;
    EXPECT_NEAR(h.duration.value(), c / 1.5 * std::log(100.0 / (100.0 - 1.5 * 60.0)), 0.02);
}

// An empty pot warms by C dT/dt = P - k (T - room), whose solution is t = C/k ln[(P - k (T0 - room))/(P - k
// (T1 - room))], however near T1 is to the temperature at which the loss takes all the power.
TEST(Heating, EmptyPotIsTheClosedFormUpToTheWarmestTemperature) {
    auto const nothing = wash::of(water(0.0 * kilogram, celsius(20)));
    for (double const loss : {1e-300, 1e-12, 1e-6, 0.1, 1.25, 3.0}) {
        double const warmest = 20.0 + 100.0 / loss;
        for (double const below : {60.0, 10.0, 1.0, 0.01, 1e-4, 1.1e-6}) {
            double const target = (std::min)(100.0, warmest - below);
            if (target <= 20.0) continue;
            auto const h = heat(nothing, pot(100.0, 5000.0, loss), celsius(target));
            double const rise = target - 20.0;
            double const exact =
                loss < 1e-6 ? 5000.0 * rise / 100.0 : -5000.0 / loss * std::log1p(-loss * rise / 100.0);
            EXPECT_NEAR(h.duration.value() / exact, 1.0, 1e-8) << loss << " W/K, " << below << " K";
        }
    }
    // without any loss
    EXPECT_NEAR(heat(nothing, pot(100.0, 5000.0, 0.0), celsius(80)).duration.value(), 3000.0, 1e-9);
}

// A charge warms by the same equation with its own heat capacity, which changes with the temperature: the
// time from 10 K to 1.1 microkelvins below the warmest temperature, against small even steps of time.
TEST(Heating, ChargeNearTheWarmestTemperatureAgainstSmallSteps) {
    auto const charge = wash::of(1.0 * litre, by_volume(12), plato(5), celsius(20));
    auto const pot_of_2 = pot(120.0, 900.0, 2.0);  // 80 °C at most
    auto const capacity = [&](double t) {          // J/K, as a difference of heats
        auto const to = [&](double end) {
            return heat(charge, pot(1e3, 900.0, 0.0), celsius(end)).supplied.value();
        };
        return (to(t + 0.01) - to(t - 0.01)) / 0.02;
    };
    std::vector<double> tabulated;  // every kelvin from 60 °C
    for (int k = 0; k <= 20; ++k) tabulated.push_back(capacity(60.0 + k));
    auto const at = [&](double t) {
        auto const k = static_cast<std::size_t>((std::min)(19.0, t - 60.0));
        double const share = t - 60.0 - static_cast<double>(k);
        return (1.0 - share) * tabulated[k] + share * tabulated[k + 1];
    };
    double missing = 10.0, seconds = 0.0;  // kelvins below 80 °C; d(missing)/dt = -2 missing/C
    double const step = 2.0;
    while (missing > 1.1e-6) {
        double const half = missing * std::exp(-step / at(80.0 - missing));
        missing *= std::exp(-2.0 * step / at(80.0 - half));
        seconds += step;
    }
    double const target = 80.0 - missing;
    auto const whole = heat(charge, pot_of_2, celsius(target)).duration;
    auto const first = heat(charge, pot_of_2, celsius(70)).duration;
    EXPECT_NEAR((whole - first).value() / seconds, 1.0, 1e-5);
}

// CRC Handbook of Chemistry and Physics, Ebullioscopic Constants: water 0.513 K kg/mol.
TEST(BoilingTemperature, ExtractLiftsItLikeTheEbullioscopicConstant) {
    auto const plain = boiling_temperature(wash::of(water(0.9 * kilogram, celsius(20))), standard_atmosphere);
    auto const sweet = boiling_temperature(wash::of(water(0.9 * kilogram, celsius(20)), 0.1 * kilogram),
                                           standard_atmosphere);
    EXPECT_NEAR(plain.celsius(), 99.974, 0.005);
    EXPECT_NEAR((sweet - plain).value(), 0.513 * (100.0 / 342.3 / 0.9), 0.004);
}

// Carey and Lewis (1932): 82.7 °C at x = 0.2337, 79.8 °C at 0.5079; laboratories differ by 0.2 to 0.4 K.
TEST(BoilingTemperature, OfMixturesAndAtAltitude) {
    auto const boils = [](double percent, units::pressure p) {
        return boiling_temperature(wash::of(parcel::of(1.0 * kilogram, by_moles(percent), celsius(20))), p)
            .celsius();
    };
    EXPECT_NEAR(boils(50.79, standard_atmosphere), 79.8, 0.4);
    EXPECT_NEAR(boils(23.37, standard_atmosphere), 82.7, 0.4);
    EXPECT_LT(boils(5.0, pressure_at_altitude(1500.0 * metre)), boils(5.0, standard_atmosphere) - 4.0);
}

TEST(Heating, RefusesWhatCannotBe) {
    auto const charge = wash::of(4.0 * litre, by_volume(12), plato(1), celsius(18));
    for (double const bad : {0.0, -100.0, std::nan("")}) {
        expect_refusal([&] { static_cast<void>(heat(charge, pot(bad, 0, 0), celsius(50))); }, "power");
    }
    expect_refusal([&] { static_cast<void>(heat(charge, pot(100, -1, 0), celsius(50))); }, "heat capacity");
    expect_refusal([&] { static_cast<void>(heat(charge, pot(100, 0, -1), celsius(50))); },
                   "heat loss coefficient");
    // absurd ones, whose figures would overflow somewhere
    expect_refusal([&] { static_cast<void>(heat(charge, pot(1e10, 0, 0), celsius(50))); }, "power");
    expect_refusal([&] { static_cast<void>(heat(charge, pot(100, 1e303, 0), celsius(50))); },
                   "heat capacity");
    expect_refusal([&] { static_cast<void>(heat(charge, pot(1e9, 0, 1e7), celsius(50))); },
                   "heat loss coefficient");
    expect_refusal([&] { static_cast<void>(heat(charge, pot(100, 0, 0), celsius(10))); },
                   "temperature wanted");
    expect_refusal([&] { static_cast<void>(heat(charge, pot(100, 0, 0), celsius(130))); },
                   "temperature wanted");
    auto const e = expect_refusal([&] { static_cast<void>(heat(charge, pot(100, 0, 2), celsius(91))); },
                                  "temperature wanted");
    EXPECT_NEAR(e.upper(), 70.0, 1e-4);
    expect_refusal(
        [&] {
            static_cast<void>(
                boiling_temperature(wash::of(water(0.0 * gram, celsius(20))), standard_atmosphere));
        },
        "mass of the charge");
    expect_refusal([&] { static_cast<void>(boiling_temperature(charge, 300.0 * kilopascal)); }, "pressure");
}

// Sugar technologists calculate the heat capacity of sugar juices as 4.1868 - 0.0297 B + 0.000046 B P +
// 0.000075 B t kJ/(kg K), with B °Brix of purity P % at t °C (a handbook's formula, read second hand).
// Heating a solution of pure sucrose must take as much, within the 1 % that is claimed for the mixture.
TEST(Heating, SugarSolutionsTakeWhatTheHandbookSays) {
    auto const handbook = [](double brix, double t) {
        return 4.1868 - 0.0297 * brix + 0.000046 * brix * 100.0 + 0.000075 * brix * t;
    };
    for (double const brix : {0.0, 10.0, 20.0, 30.0, 40.0, 50.0}) {
        auto const must =
            wash::of(water((1.0 - brix / 100.0) * kilogram, celsius(20)), brix / 100.0 * kilogram);
        for (double const to : {40.0, 60.0, 90.0}) {
            auto const h = heat(must, pot(1000.0, 0.0, 0.0), celsius(to));
            double const mean =
                in(h.to_liquid, kilojoule) / (to - 20.0);  // of 1 kg; the formula is linear in t
            EXPECT_NEAR(mean / handbook(brix, 0.5 * (20.0 + to)), 1.0, 0.01)
                << brix << " °Bx to " << to << " °C";
        }
    }
    // and by itself: what the sugar takes is what the solution takes more than its water
    auto const with = wash::of(water(0.5 * kilogram, celsius(20)), 0.5 * kilogram);
    auto const without = wash::of(water(0.5 * kilogram, celsius(20)));
    for (double const to : {40.0, 90.0}) {
        double const sugar = in(heat(with, pot(1000.0, 0.0, 0.0), celsius(to)).to_liquid -
                                    heat(without, pot(1000.0, 0.0, 0.0), celsius(to)).to_liquid,
                                kilojoule);
        double const t = 0.5 * (20.0 + to);
        double const expected = 0.5 * (to - 20.0) * (handbook(100.0, t));
        EXPECT_NEAR(sugar / expected, 1.0, 0.005) << to;
    }
}

// 100 W against 2 W/K are 50 K above the room: there the pot never arrives, and a little below it does. The
// pot may be warmer than the room at the start, and what it takes then is the textbook's too.
TEST(Heating, NeverReachesTheWarmestTemperature) {
    auto const charge = wash::of(water(1.0 * gram, celsius(40)));
    auto const e =
        expect_refusal([&] { static_cast<void>(heat(charge, pot(100.0, 5000.0, 2.0), celsius(70.0))); },
                       "temperature wanted");
    EXPECT_LT(e.upper(), 70.0);
    auto const h = heat(charge, pot(100.0, 5000.0, 2.0), celsius(60.0));
    double const c = 5000.0 + h.to_liquid.value() / 20.0;
    EXPECT_NEAR(h.duration.value(), c / 2.0 * std::log((100.0 - 2.0 * 20.0) / (100.0 - 2.0 * 40.0)), 0.02);
    EXPECT_NEAR((h.to_liquid + h.to_vessel + h.lost).value(), h.supplied.value(), 1e-6);
}

// Mixing by hand: 20 kg of water at 80 °C, 4.19 kJ/(kg K) (CRC Handbook), into 10 kJ/K of metal at 20 °C:
// (83.8 x 80 + 10 x 20)/93.8 = 73.6 °C.
TEST(Heating, HotChargeWarmsTheMetal) {
    auto const charge = wash::of(water(20.0 * kilogram, celsius(20)));
    auto const metal = pot(2000.0, 10e3, 0.0);
    EXPECT_NEAR(temperature_in_the_pot(charge, metal, celsius(80)).celsius(), 73.6, 0.05);
    EXPECT_EQ(temperature_in_the_pot(charge, pot(2000.0, 0.0, 0.0), celsius(80)).celsius(), 80.0);
    EXPECT_NEAR(temperature_in_the_pot(charge, metal, celsius(20)).celsius(), 20.0, 1e-9);
    // a cold charge into a warm pot
    auto warm = metal;
    warm.room = celsius(35);
    EXPECT_NEAR(temperature_in_the_pot(charge, warm, celsius(5)).celsius(), (83.8 * 5 + 350) / 93.8, 0.05);
    for (double const bad : {-1.0, 116.0, std::nan("")})
        expect_refusal([&] { return temperature_in_the_pot(charge, metal, celsius(bad)); },
                       "temperature of the charge");
}

// What a hot charge brings along, the heater need not supply: without loss the heats differ by the charge's.
TEST(Heating, PreheatedChargeNeedsThatMuchLess) {
    auto const charge = wash::of(25.0 * litre, by_volume(11), plato(1.5), celsius(20));
    auto const metal = pot(2000.0, 4000.0, 0.0);
    auto const cold = heat_to_boil(charge, metal, standard_atmosphere);
    auto const hot = heat_to_boil(charge, metal, standard_atmosphere, celsius(60));
    auto const brought = heat(charge, pot(2000.0, 0.0, 0.0), celsius(60)).to_liquid;
    EXPECT_NEAR(in(cold.supplied - hot.supplied, brought), 1.0, 1e-6);
    EXPECT_NEAR(cold.to.celsius(), boiling_temperature(charge, standard_atmosphere).celsius(), 1e-12);
    EXPECT_LT(hot.from.celsius(), 60.0);
    EXPECT_NEAR((hot.to_liquid + hot.to_vessel + hot.lost).value(), hot.supplied.value(), 1e-6);
    // filled in at the temperature of the room it is the same as ever
    EXPECT_NEAR(in(heat_to_boil(charge, metal, standard_atmosphere, celsius(20)).duration, cold.duration),
                1.0, 1e-9);
    expect_refusal([&] { return heat_to_boil(charge, metal, standard_atmosphere, celsius(95)); },
                   "temperature of the charge");
    expect_refusal([&] { return heat_to_boil(charge, metal, 300.0 * kilopascal); }, "pressure");
}

}  // namespace
}  // namespace aqueth
