// SPDX-License-Identifier: BSL-1.0
// Published tables of specific gravities are checked in published/.
#include <aqueth/specific_gravity.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

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

TEST(SpecificGravity, TakesAStrengthInEveryBasis) {
    gravity_reference const reference{celsius(25.0), celsius(4.0), medium::air};
    mass_fraction const w = to<mass_fraction>(by_volume(40.0));
    EXPECT_EQ(specific_gravity_of(by_volume(40.0), reference).value(),
              specific_gravity_of(w, reference).value());
}

TEST(SpecificGravity, AirMakesALightLiquidLighter) {
    gravity_reference const vacuum{celsius(20.0), celsius(20.0), medium::vacuum};
    gravity_reference const air{celsius(20.0), celsius(20.0), medium::air};
    EXPECT_LT(specific_gravity_of(mass_fraction(1.0), air), specific_gravity_of(mass_fraction(1.0), vacuum));
}

TEST(SpecificGravity, RefusesTheImpossible) {
    gravity_reference const reference{};
    expect_refusal(
        [&] { static_cast<void>(mass_fraction_from_specific_gravity(specific_gravity(0.7), reference)); },
        "density");
    expect_refusal([] { static_cast<void>(specific_gravity(0.1)); }, "specific gravity");
    expect_refusal([] { static_cast<void>(specific_gravity{std::numeric_limits<double>::quiet_NaN()}); },
                   "specific gravity");
    expect_refusal(
        [] {
            static_cast<void>(
                specific_gravity_of(by_mass(50.0), gravity_reference{celsius(20.0), celsius(-1.0)}));
        },
        "temperature");
}

}  // namespace
}  // namespace aqueth
