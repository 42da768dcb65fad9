// SPDX-License-Identifier: BSL-1.0
// Published tables of strengths are checked in published/.
#include <aqueth/strength.hpp>

#include "expect_range_error.hpp"

#include <gtest/gtest.h>

#include <cmath>
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

// At compile time too, with every compiler: by way of the table of 20 °C and back.
static_assert(to<us_proof>(by_volume(43.0)).degrees() > 85.86 &&
              to<us_proof>(by_volume(43.0)).degrees() < 85.87);

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
    auto const error = expect_range_error(
        [] { static_cast<void>(to<mass_fraction>(grams_per_100_millilitres(79.5))); }, "mass concentration");
    EXPECT_NEAR(error.upper(), 78.924, 5e-4);
}

}  // namespace
}  // namespace aqueth
