// SPDX-License-Identifier: BSL-1.0
#include <aqueth/numeric/integration.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <numbers>

namespace aqueth::numeric {
namespace {

// x^3 from 0 to 2 is 4, from -1 to 3 it is 20: exact in two intervals, and in four.
constexpr auto cube = [](double x) { return x * x * x; };
static_assert(simpson(cube, 0.0, 2.0, 2) == 4.0 && simpson(cube, -1.0, 3.0, 4) == 20.0);
static_assert(simpson(cube, 3.0, -1.0, 4) == -20.0 && simpson(cube, 1.0, 1.0, 2) == 0.0);
// x^4 from 0 to 1 in two intervals: (0 + 4/16 + 1)/6 instead of 1/5.
static_assert(simpson([](double x) { return cube(x) * x; }, 0.0, 1.0, 2) == 1.25 / 6.0);

TEST(Simpson, ErrorFallsWithTheFourthPower) {
    auto const error = [](int intervals) {
        return simpson([](double x) { return std::sin(x); }, 0.0, std::numbers::pi, intervals) - 2.0;
    };
    // (b - a) h^4/180 times the mean of the fourth derivative, 2/pi
    EXPECT_NEAR(error(20) / (2.0 * std::pow(std::numbers::pi / 20.0, 4) / 180.0), 1.0, 0.01);
    EXPECT_NEAR(error(20) / error(40), 16.0, 0.1);
    EXPECT_NEAR(error(2000), 0.0, 1e-13);
}

TEST(Simpson, ClosedIntegrals) {
    // Errors of the rule itself: 1.2e-12 and 8e-12.
    EXPECT_NEAR(simpson([](double x) { return 1.0 / x; }, 1.0, 2.0, 400), std::log(2.0), 2e-12);
    EXPECT_NEAR(simpson([](double x) { return std::exp(x); }, -1.0, 1.0, 400), 2.0 * std::sinh(1.0), 1e-11);
}

}  // namespace
}  // namespace aqueth::numeric
