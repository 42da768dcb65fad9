// SPDX-License-Identifier: BSL-1.0
// Published freezing points are checked in published/.
#include <aqueth/density.hpp>
#include <aqueth/freezing.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(Freezing, LineCutsTheRangeOfDensity) {
    // CRC Handbook: 4.47 K at 10 % mass, 20.47 K at 30 % mass, so that -20 °C is reached at 29.54 % mass.
    EXPECT_NEAR(freezing_point(by_mass(10.0)).celsius(), -4.47, 1e-12);
    EXPECT_NO_THROW(static_cast<void>(density(by_mass(10.0), celsius(-4.46))));
    auto const error =
        expect_refusal([] { static_cast<void>(density(by_mass(10.0), celsius(-4.48))); }, "temperature");
    EXPECT_NEAR(error.lower(), -4.47, 1e-12);
    EXPECT_EQ(error.upper(), plain::hottest_liquid_celsius(0.1));
    EXPECT_NO_THROW(static_cast<void>(density(by_mass(29.6), celsius(-20.0))));
    expect_refusal([] { static_cast<void>(density(by_mass(29.5), celsius(-20.0))); }, "temperature");
    EXPECT_NO_THROW(static_cast<void>(density(mass_fraction(0.0), celsius(0.0))));
    expect_refusal([] { static_cast<void>(density(mass_fraction(0.0), celsius(-0.01))); }, "temperature");
    expect_refusal([] { static_cast<void>(freezing_point(by_mass(68.1))); }, "mass fraction");
}

}  // namespace
}  // namespace aqueth
