// SPDX-License-Identifier: BSL-1.0
#include <aqueth/numeric/minimum.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace aqueth::numeric {
namespace {

TEST(Minimum, OfKnownValleys) {
    EXPECT_NEAR(minimum([](double x) { return (x - 0.3) * (x - 0.3); }, -2.0, 5.0, 1e-7), 0.3, 1e-7);
    EXPECT_NEAR(minimum([](double x) { return x * std::log(x); }, 0.01, 1.0, 1e-6), std::exp(-1.0), 1e-6);
    EXPECT_NEAR(minimum([](double x) { return std::cos(x); }, 1.0, 6.0, 1e-6), std::numbers::pi, 1e-6);
    // A kink is found to rounding, and its two sides need not be alike.
    auto const kink = [](double x) { return x < 2.0 ? 5.0 * (2.0 - x) : x - 2.0; };
    EXPECT_NEAR(minimum(kink, 0.0, 7.0, 1e-13), 2.0, 1e-13);
}

TEST(Minimum, IsTheEndOfWhatRisesOrFalls) {
    EXPECT_NEAR(minimum([](double x) { return x; }, 1.0, 2.0, 1e-9), 1.0, 1e-9);
    EXPECT_NEAR(minimum([](double x) { return -x; }, 1.0, 2.0, 1e-9), 2.0, 1e-9);
}

TEST(Minimum, OneValueForEachDivisionByTheGoldenRatio) {
    int count = 0;
    auto const f = [&](double x) {
        ++count;
        return x * x;
    };
    EXPECT_NEAR(minimum(f, -1.0, 2.0, 1e-5), 0.0, 1e-5);
    EXPECT_EQ(count, 2 + std::ceil(std::log(3.0 / 1e-5) / std::log(std::numbers::phi)));
}

TEST(Minimum, EndsThoughTheWidthIsBelowRounding) {
    EXPECT_NEAR(minimum([](double x) { return std::abs(x - 1e6); }, 0.0, 3e6, 1e-300), 1e6, 1e-9);
}

}  // namespace
}  // namespace aqueth::numeric
