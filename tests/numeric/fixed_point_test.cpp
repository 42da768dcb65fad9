// SPDX-License-Identifier: BSL-1.0
// Fixed points by substitution and Broyden's update: against a closed form and systems with known roots.
#include <aqueth/numeric/fixed_point.hpp>

#include <gtest/gtest.h>

#include <array>
#include <cmath>

namespace aqueth {
namespace {

// cos x = x at 0.7390851332151607 (a well-known constant, from memory; the check is that the cosine returns
// it).
TEST(FixedPoint, OfTheCosine) {
    numeric::fixed_point<1> search;
    auto const cosine = [](std::array<double, 1> const& x) { return std::array<double, 1>{std::cos(x[0])}; };
    double const x = search.find(cosine, {0.0}, 1e-14, 1.0, 60)[0];
    EXPECT_TRUE(search.converged());
    EXPECT_NEAR(std::cos(x), x, 1e-14);
    EXPECT_NEAR(x, 0.7390851332151607, 1e-13);
    EXPECT_LE(search.evaluations(), 10);  // substitution alone takes 80
}

// A linear system x = A x + b with eigenvalues of A beyond one, where substitution alone runs away.
TEST(FixedPoint, OfASystemThatSubstitutionDoesNotSolve) {
    numeric::fixed_point<2> search;
    auto const system = [](std::array<double, 2> const& x) {
        return std::array<double, 2>{-1.5 * x[0] + 0.5 * x[1] + 1.0, 0.25 * x[0] - 1.2 * x[1] + 2.0};
    };
    auto const x = search.find(system, {0.0, 0.0}, 1e-12, 10.0, 60);
    ASSERT_TRUE(search.converged());
    // (2.5, -0.5; -0.25, 2.2) x = (1, 2) by Cramer's rule
    double const determinant = 2.5 * 2.2 - 0.5 * 0.25;
    EXPECT_NEAR(x[0], (2.2 + 1.0) / determinant, 1e-11);
    EXPECT_NEAR(x[1], (5.0 + 0.25) / determinant, 1e-11);
}

// A second search near the first begins with what that learned, and is not misled by it.
TEST(FixedPoint, LearnsFromTheLastSearch) {
    numeric::fixed_point<2> search;
    auto const solve = [&](double a, std::array<double, 2> const& start) {
        return search.find(
            [a](std::array<double, 2> const& x) {
                return std::array<double, 2>{a * std::exp(-x[1]), 0.5 * std::sin(x[0]) + a};
            },
            start, 1e-13, 1.0, 60);
    };
    auto const first = solve(0.8, {0.0, 0.0});
    ASSERT_TRUE(search.converged());
    int const cold = search.evaluations();
    solve(0.801, first);
    ASSERT_TRUE(search.converged());
    EXPECT_LT(search.evaluations(), cold);
    auto const far = solve(-0.4, first);
    ASSERT_TRUE(search.converged());
    EXPECT_NEAR(far[0], -0.4 * std::exp(-far[1]), 1e-12);
}

// Without a fixed point (x = x + 1) it says so, after the evaluations it was given.
TEST(FixedPoint, SaysWhereThereIsNone) {
    numeric::fixed_point<1> search;
    search.find([](std::array<double, 1> const& x) { return std::array<double, 1>{x[0] + 1.0}; }, {0.0}, 1e-9,
                0.5, 20);
    EXPECT_FALSE(search.converged());
    EXPECT_EQ(search.evaluations(), 20);
}

}  // namespace
}  // namespace aqueth
