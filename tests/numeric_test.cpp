// SPDX-License-Identifier: BSL-1.0
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>

namespace aqueth::numeric {
namespace {

// 1 + 2x + 3x2 at 2: value 17, slope 2 + 6x = 14
constexpr std::array<double, 3> quadratic{1.0, 2.0, 3.0};
static_assert(polynomial(quadratic, 2.0) == 17.0);
static_assert(polynomial_with_slope(quadratic, 2.0).value == 17.0);
static_assert(polynomial_with_slope(quadratic, 2.0).slope == 14.0);
static_assert(polynomial(std::array<double, 1>{5.0}, 3.0) == 5.0);

constexpr auto square_less_two = [](double x) { return value_and_slope<double>{x * x - 2.0, 2.0 * x}; };
static_assert(bracketed_newton(square_less_two, 0.0, 2.0, 1.0, 1e-15) > 1.4142135623);

TEST(Root, FindsARootToWorkingPrecision) {
    EXPECT_DOUBLE_EQ(bracketed_newton(square_less_two, 0.0, 2.0, 0.1, 4e-16), std::sqrt(2.0));
    EXPECT_DOUBLE_EQ(bracketed_newton(square_less_two, 0.0, 2.0, 2.0, 4e-16), std::sqrt(2.0));
}

TEST(Root, ConvergesWhereNewtonAloneDiverges) {
    // Newton's method for arctan runs away from any guess beyond 1.39.
    auto const arctangent = [](double x) {
        return value_and_slope<double>{std::atan(x), 1.0 / (1.0 + x * x)};
    };
    for (double const guess : {-40.0, -3.0, 2.0, 25.0, 49.0}) {
        EXPECT_NEAR(bracketed_newton(arctangent, -50.0, 50.0, guess, 1e-16), 0.0, 1e-15) << guess;
    }
}

TEST(Root, ConvergesThroughAFlatPlace) {
    // x^9 - tiny: nearly flat around the root's neighbourhood of zero.
    auto const flat = [](double x) {
        return value_and_slope<double>{std::pow(x, 9) - 1e-9, 9.0 * std::pow(x, 8)};
    };
    EXPECT_NEAR(bracketed_newton(flat, 0.0, 1.0, 1.0, 1e-25), 0.1, 1e-15);
}

TEST(Root, FallingFunctionsServeAsWell) {
    auto const falling = [](double x) { return value_and_slope<double>{2.0 - x * x, -2.0 * x}; };
    EXPECT_DOUBLE_EQ(bracketed_newton(falling, 0.0, 2.0, 0.5, 4e-16), std::sqrt(2.0));
}

TEST(Root, RootAtAnEndIsThatEnd) {
    auto const line = [](double x) { return value_and_slope<double>{x, 1.0}; };
    EXPECT_EQ(bracketed_newton(line, 0.0, 1.0, 0.7, 1e-16), 0.0);
    auto const line_to_one = [](double x) { return value_and_slope<double>{x - 1.0, 1.0}; };
    EXPECT_EQ(bracketed_newton(line_to_one, 0.0, 1.0, 0.7, 1e-16), 1.0);
}

TEST(Root, RootOutsideGivesTheNearerEnd) {
    auto const line = [](double x) { return value_and_slope<double>{x - 1.5, 1.0}; };
    EXPECT_EQ(bracketed_newton(line, 0.0, 1.0, 0.7, 1e-16), 1.0);
    auto const below = [](double x) { return value_and_slope<double>{x + 0.5, 1.0}; };
    EXPECT_EQ(bracketed_newton(below, 0.0, 1.0, 0.7, 1e-16), 0.0);
}

TEST(Root, NaNInNaNOut) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    auto const broken = [&](double) { return value_and_slope<double>{nan, 1.0}; };
    EXPECT_TRUE(std::isnan(bracketed_newton(broken, 0.0, 1.0, 0.5, 1e-16)));
}

}  // namespace
}  // namespace aqueth::numeric
