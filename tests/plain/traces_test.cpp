// SPDX-License-Identifier: BSL-1.0
#include <aqueth/plain/traces.hpp>
#include <aqueth/traces.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

TEST(PlainTraces, IsTheTypedOneToTheDigit) {
    for (trace const which : all_traces) {
        for (double const x : {0.0, 0.01, 0.4, 1.0}) {
            auto const plain = plain::volatility_of_trace(which, x, 101.325);
            ASSERT_TRUE(plain.status.ok);
            auto const typed = volatility_of(which, mole_fraction(x));
            EXPECT_EQ(plain.value.volatility, typed.volatility);
            EXPECT_EQ(plain.value.to_ethanol, typed.to_ethanol);
            EXPECT_EQ(plain.value.to_water, typed.to_water);
            EXPECT_EQ(plain.value.band, typed.band);
        }
    }
}

TEST(PlainTraces, InSinglePrecision) {
    for (trace const which : all_traces) {
        auto const single = plain::volatility_of_trace(which, 0.2F, 101.325F);
        auto const twice = plain::volatility_of_trace(which, 0.2, 101.325);
        EXPECT_NEAR(single.value.to_ethanol, twice.value.to_ethanol, 1e-4 * twice.value.to_ethanol);
    }
}

TEST(PlainTraces, RefusesWhatIsOutOfRange) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    double const infinity = std::numeric_limits<double>::infinity();
    for (double const x : {-1e-9, 1.0 + 1e-9, nan, infinity}) {
        auto const found = plain::volatility_of_trace(trace::methanol, x, 100.0);
        EXPECT_FALSE(found.status.ok);
        EXPECT_EQ(found.status.argument, argument::mole_fraction_of_the_liquid);
        EXPECT_EQ(found.status.upper, 1.0);
        EXPECT_TRUE(std::isnan(found.value.volatility) && std::isnan(found.value.band));
    }
    for (double const kpa : {79.99, 110.01, nan, -infinity}) {
        auto const found = plain::volatility_of_trace(trace::methanol, 0.5, kpa);
        EXPECT_FALSE(found.status.ok);
        EXPECT_EQ(found.status.argument, argument::pressure);
        EXPECT_EQ(found.status.lower, 80.0);
        EXPECT_EQ(found.status.upper, 110.0);
    }
    for (int const which : {-1, 11}) {
        auto const found = plain::volatility_of_trace(static_cast<trace>(which), 0.5, 100.0);
        EXPECT_FALSE(found.status.ok);
        EXPECT_EQ(found.status.argument, argument::index);
        EXPECT_EQ(found.status.value, which);
    }
}

}  // namespace
}  // namespace aqueth
