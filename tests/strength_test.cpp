// SPDX-License-Identifier: BSL-1.0
// Published tables of strengths and specific gravities are checked in published/.
#include <aqueth/strength.hpp>

#include "expect_range_error.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>

namespace aqueth {
namespace {

using test::expect_range_error;

template <class Basis>
class StrengthBasis : public testing::Test {};

using bases =
    testing::Types<mass_fraction, mole_fraction, volume_fraction, basic_volume_fraction<at_15_celsius>,
                   basic_volume_fraction<at_15_56_celsius>, basic_volume_fraction<at_60_fahrenheit>,
                   mass_concentration, basic_mass_concentration<at_60_fahrenheit>, us_proof>;
TYPED_TEST_SUITE(StrengthBasis, bases);

TYPED_TEST(StrengthBasis, ThereAndBackClosesToWorkingPrecision) {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    double worst = 0.0;
    for (int i = 0; i < 100000; ++i) {
        mass_fraction const w(i % 3 == 0 ? std::pow(10.0, -7.0 * unit(random)) : unit(random));
        double const back = to<mass_fraction>(to<TypeParam>(w)).value();
        worst = (std::max)(worst, std::abs(back - w.value()) / w.value());
    }
    EXPECT_LE(worst, 2e-15);
}

TYPED_TEST(StrengthBasis, ToItselfIsTheSameToTheDigit) {
    for (int i = 0; i <= 2000; ++i) {
        auto const strength = to<TypeParam>(mass_fraction(i / 2000.0));
        EXPECT_EQ(to<TypeParam>(strength), strength);
    }
}

TYPED_TEST(StrengthBasis, GrowsWithTheMassFractionFromZeroToPure) {
    EXPECT_EQ(to<TypeParam>(mass_fraction(0.0)).number(), 0.0);
    auto previous = to<TypeParam>(mass_fraction(0.0));
    for (int i = 1; i <= 2000; ++i) {
        auto const next = to<TypeParam>(mass_fraction(i / 2000.0));
        EXPECT_GT(next, previous);
        previous = next;
    }
}

TEST(Strength, PureEthanolIsAHundredPercentInEveryBasis) {
    mass_fraction const pure(1.0);
    EXPECT_EQ(to<volume_fraction>(pure).percent(), 100.0);
    EXPECT_EQ(to<mole_fraction>(pure).percent(), 100.0);
    EXPECT_EQ(to<us_proof>(pure).degrees(), 200.0);
    EXPECT_NEAR(to<mass_concentration>(pure).grams_per_100_millilitres(), 78.924, 5e-4);
}

TEST(Strength, ProofIsTwiceThePercentageAt60Fahrenheit) {
    // 27 CFR 30.11
    for (double q = 0.0; q <= 100.0; q += 2.5) {
        EXPECT_NEAR(to<us_proof>(by_volume<at_60_fahrenheit>(q)).degrees(), 2.0 * q, 1e-12);
    }
}

TEST(Strength, ReferenceTemperaturesDifferByLessThanATenthOfAPercent) {
    // Why the type matters: at 60 °F and at 20 °C the strengths of one spirit differ in the second decimal.
    double const at_20 = 50.0;
    double const at_60 = to<basic_volume_fraction<at_60_fahrenheit>>(by_volume(at_20)).percent();
    EXPECT_NE(at_20, at_60);
    EXPECT_NEAR(at_20, at_60, 0.1);
}

TEST(Strength, RefusesMoreThanPureEthanol) {
    // 78.924 g/100 mL is pure ethanol at 20 °C; 79.5 passes as a number but is no mixture.
    auto const error =
        expect_range_error([] { to<mass_fraction>(grams_per_100_millilitres(79.5)); }, "mass concentration");
    EXPECT_NEAR(error.upper(), 78.924, 5e-4);
}

TEST(SpecificGravity, OfWaterIsOneAtTheSameTemperature) {
    for (medium const in_what : {medium::vacuum, medium::air}) {
        gravity_reference const reference{fahrenheit(60.0), fahrenheit(60.0), in_what};
        EXPECT_EQ(specific_gravity_of(mass_fraction(0.0), reference).value(), 1.0);
    }
}

TEST(SpecificGravity, ThereAndBackCloses) {
    for (medium const in_what : {medium::vacuum, medium::air}) {
        gravity_reference const reference{celsius(25.0), celsius(4.0), in_what};
        for (double w = 0.0; w <= 1.0; w += 0.01) {
            auto const gravity = specific_gravity_of(mass_fraction(w), reference);
            EXPECT_NEAR(mass_fraction_from_specific_gravity(gravity, reference).value(), w, 1e-14);
        }
    }
}

TEST(SpecificGravity, AirMakesALightLiquidLighter) {
    gravity_reference const vacuum{celsius(20.0), celsius(20.0), medium::vacuum};
    gravity_reference const air{celsius(20.0), celsius(20.0), medium::air};
    EXPECT_LT(specific_gravity_of(mass_fraction(1.0), air), specific_gravity_of(mass_fraction(1.0), vacuum));
}

TEST(SpecificGravity, RefusesTheImpossible) {
    gravity_reference const reference{};
    expect_range_error([&] { mass_fraction_from_specific_gravity(specific_gravity(0.7), reference); },
                       "density");
    expect_range_error([] { specific_gravity(0.1); }, "specific gravity");
    expect_range_error([] { specific_gravity{std::numeric_limits<double>::quiet_NaN()}; },
                       "specific gravity");
    expect_range_error(
        [] {
            specific_gravity_of(by_mass(50.0), gravity_reference{celsius(20.0), celsius(-1.0)});
        },
        "temperature");
}

TEST(WeighingInAir, WaterSeemsATenthOfAPercentLighter) {
    // OIML D 28 conventions: (1 - 1.2/998.2)/(1 - 1.2/8000)
    auto const rho = density(mass_fraction(0.0), celsius(20.0));
    EXPECT_NEAR(in(balance_indication(1.0 * kilogram, rho), gram), 998.948, 5e-4);
    EXPECT_NEAR(density_in_air(rho).value(), 997.151, 5e-4);
    EXPECT_NEAR(in(mass_from_balance(balance_indication(1.3 * kilogram, rho), rho), kilogram), 1.3, 1e-15);
    expect_range_error([] { balance_indication(1.0 * kilogram, 1.0 * kilogram_per_cubic_metre); }, "density");
    for (double const bad : {-1.0, std::numeric_limits<double>::quiet_NaN()}) {
        expect_range_error([&] { balance_indication(bad * kilogram, rho); }, "mass");
        expect_range_error([&] { mass_from_balance(bad * kilogram, rho); }, "indication");
    }
}

}  // namespace
}  // namespace aqueth
