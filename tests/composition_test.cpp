// SPDX-License-Identifier: BSL-1.0
#include <aqueth/composition.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <type_traits>

namespace aqueth {
namespace {

using test::expect_refusal;

static_assert(by_volume(84.0).value() == 0.84);
static_assert(by_mass(40.0) < by_mass(41.0));
static_assert(proof(90.0).degrees() == 90.0);
static_assert(by_volume(45.0).litres_per_hectolitre() == by_volume(45.0).percent());
static_assert(strength_basis<mass_fraction> && strength_basis<volume_fraction> && strength_basis<us_proof>);
static_assert(!strength_basis<double>);

// Strengths of different bases or reference temperatures do not convert implicitly.
static_assert(!std::is_convertible_v<double, volume_fraction>);
static_assert(!std::is_convertible_v<volume_fraction, double>);
static_assert(!std::is_convertible_v<mass_fraction, volume_fraction>);
static_assert(!std::is_constructible_v<volume_fraction, mass_fraction>);
static_assert(!std::is_constructible_v<volume_fraction, us_proof>);
static_assert(!std::is_constructible_v<volume_fraction, basic_volume_fraction<at_60_fahrenheit>>);

static_assert(std::is_trivially_copyable_v<mass_fraction> && sizeof(mass_fraction) == sizeof(double));

TEST(Composition, AcceptsTheWholeRange) {
    EXPECT_EQ(by_mass(0.0).value(), 0.0);
    EXPECT_EQ(by_moles(100.0).value(), 1.0);
    EXPECT_EQ(by_volume<at_15_celsius>(100.0).value(), 1.0);
    EXPECT_EQ(proof(200.0).number(), 200.0);
    EXPECT_EQ(grams_per_100_millilitres(30.0).grams_per_100_millilitres(), 30.0);
}

TEST(Composition, RefusesWhatIsNoStrength) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    double const infinity = std::numeric_limits<double>::infinity();
    for (double const bad : {-1e-12, 100.0 + 1e-10, nan, infinity, -infinity}) {
        expect_refusal([&] { static_cast<void>(by_mass(bad)); }, "mass fraction");
        expect_refusal([&] { static_cast<void>(by_moles(bad)); }, "mole fraction");
        expect_refusal([&] { static_cast<void>(by_volume(bad)); }, "alcoholic strength by volume");
        expect_refusal([&] { static_cast<void>(by_volume<at_60_fahrenheit>(bad)); },
                       "alcoholic strength by volume");
        expect_refusal([&] { static_cast<void>(proof(2.0 * bad)); }, "proof");
        expect_refusal([&] { static_cast<void>(grams_per_100_millilitres(bad)); }, "mass concentration");
    }
}

TEST(Composition, ErrorNamesQuantityValueAndRange) {
    auto const error =
        expect_refusal([] { static_cast<void>(by_volume(120.0)); }, "alcoholic strength by volume");
    EXPECT_DOUBLE_EQ(error.value(), 120.0);
    EXPECT_EQ(error.lower(), 0.0);
    EXPECT_EQ(error.upper(), 100.0);
    EXPECT_EQ(error.unit(), "% vol at 20 °C");
    EXPECT_STREQ(
        error.what(),
        "strength: alcoholic strength by volume 120 % vol at 20 °C is outside 0 to 100 % vol at 20 °C");
}

TEST(Composition, ReadsAStrengthByTheFunctionThatMakesIt) {
    EXPECT_EQ(in(by_volume(40), by_volume), 40.0);
    EXPECT_EQ(in(by_volume<at_60_fahrenheit>(40), by_volume), 40.0);
    EXPECT_EQ(in(by_mass(33), by_mass), 33.0);
    EXPECT_EQ(in(by_moles(12.5), by_moles), 12.5);
    EXPECT_EQ(in(proof(86), proof), 86.0);
    EXPECT_EQ(in(grams_per_100_millilitres<at_15_celsius>(30), grams_per_100_millilitres), 30.0);
}

}  // namespace
}  // namespace aqueth
