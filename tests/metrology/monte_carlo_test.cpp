// SPDX-License-Identifier: BSL-1.0
#include <aqueth/metrology/monte_carlo.hpp>

#include "expect_refusal.hpp"

#include <boost/math/distributions/normal.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

double const nan = std::numeric_limits<double>::quiet_NaN();
auto const first = [](auto const& x) { return x[0]; };

struct moments {
    double mean, deviation, kurtosis;
};
moments moments_of(input_quantity const& input) {
    auto const drawn = monte_carlo(first, std::vector<input_quantity>{input}, 1000000);
    double fourth = 0.0;
    for (double const v : drawn.sorted()) fourth += std::pow(v - drawn.estimate(), 4.0);
    return {drawn.estimate(), drawn.standard_uncertainty(),
            fourth / 1e6 / std::pow(drawn.standard_uncertainty(), 4.0)};
}

// Mean, deviation and kurtosis of the distributions as any textbook has them; 1e6 draws show the deviation to
// 0.1 % and the kurtosis to about 0.02.
TEST(MonteCarlo, DrawsFromTheDistributions) {
    struct {
        input_quantity input;
        double kurtosis;
    } const cases[] = {
        {input_quantity::normal("x", "", 5.0, 2.0), 3.0},
        {input_quantity::rectangular("x", "", 5.0, 2.0 * std::sqrt(3.0)), 1.8},
        {input_quantity::triangular("x", "", 5.0, 2.0 * std::sqrt(6.0)), 2.4},
        {input_quantity::arcsine("x", "", 5.0, 2.0 * std::sqrt(2.0)), 1.5},
    };
    for (auto const& each : cases) {
        moments const m = moments_of(each.input);
        EXPECT_NEAR(m.mean, 5.0, 0.008);
        EXPECT_NEAR(m.deviation, 2.0, 0.004);
        EXPECT_NEAR(m.kurtosis, each.kurtosis, 0.02);
    }
}

TEST(MonteCarlo, DrawsFromStudentsT) {
    // variance nu / (nu - 2), kurtosis 3 + 6 / (nu - 4)
    moments const m = moments_of(input_quantity::normal("x", "", 5.0, 2.0, 20.0));
    EXPECT_NEAR(m.mean, 5.0, 0.008);
    EXPECT_NEAR(m.deviation, 2.0 * std::sqrt(20.0 / 18.0), 0.006);
    EXPECT_NEAR(m.kurtosis, 3.0 + 6.0 / 16.0, 0.04);
    auto const few = monte_carlo(
        first, std::vector<input_quantity>{input_quantity::normal("x", "", 0.0, 1.0, 4.0)}, 1000000);
    auto const interval = few.interval(0.95);
    EXPECT_NEAR(interval.upper, numeric::student_quantile(0.975, 4.0), 0.02);  // 2.776
    EXPECT_NEAR(interval.lower, -interval.upper, 0.03);
}

TEST(MonteCarlo, DrawsCorrelatedQuantities) {
    std::vector<input_quantity> const inputs{
        input_quantity::normal("a", "", 1.0, 0.3), input_quantity::rectangular("b", "", 2.0, 1.0),
        input_quantity::normal("c", "", 3.0, 0.4), input_quantity::normal("d", "", 4.0, 0.5)};
    correlation_coefficient const r[] = {{0, 2, 0.8}, {2, 3, -0.6}};
    auto const sum = [](auto const& x) { return x[0] + x[1] - x[2] + 2.0 * x[3]; };
    auto const budget = propagate(sum, inputs, r);
    auto const drawn = monte_carlo(sum, inputs, 1000000, r);
    EXPECT_NEAR(drawn.standard_uncertainty() / budget.standard_uncertainty, 1.0, 0.003);
    EXPECT_NEAR(drawn.estimate(), budget.estimate, 0.006);
    // fully correlated: the difference is certain
    std::vector<input_quantity> const twins{input_quantity::normal("a", "", 1.0, 0.3),
                                            input_quantity::normal("b", "", 1.0, 0.3)};
    correlation_coefficient const together[] = {{0, 1, 1.0}};
    auto const none = monte_carlo([](auto const& x) { return x[0] - x[1]; }, twins, 1000, together);
    EXPECT_NEAR(none.standard_uncertainty(), 0.0, 1e-15);
}

TEST(MonteCarlo, TheSameSeedGivesTheSameTrials) {
    std::vector<input_quantity> const inputs{input_quantity::normal("a", "", 1.0, 0.3)};
    auto const one = monte_carlo(first, inputs, 1000), same = monte_carlo(first, inputs, 1000);
    EXPECT_EQ(one.estimate(), same.estimate());
    EXPECT_NE(one.estimate(), monte_carlo(first, inputs, 1000, {}, 2).estimate());
    EXPECT_NEAR(one.estimate(), 1.0, 0.03);
    // The C++ standard fixes mt19937_64, and our code the transformations of it: draw k of a normal input is
    // the quantile of its k-th number. The draws of a rectangular one come a block of 256 later.
    std::vector<input_quantity> const two{input_quantity::normal("a", "", 1.0, 0.3),
                                          input_quantity::normal("sure", "", 2.0, 0.0),
                                          input_quantity::rectangular("b", "", 5.0, 0.5)};
    std::vector<double> drawn;
    std::vector<double> of_b;
    static_cast<void>(monte_carlo(
        [&](auto const& x) {
            drawn.push_back(x[0]);
            of_b.push_back(x[2]);
            return x[0] + x[1];
        },
        two, 200));
    std::mt19937_64 standard(1);
    auto const uniform = [&] { return (static_cast<double>(standard() >> 12) + 0.5) * 0x1p-52; };
    for (int k = 0; k < 200; ++k)
        EXPECT_NEAR(drawn[static_cast<std::size_t>(k)], 1.0 + 0.3 * numeric::normal_quantile(uniform()),
                    1e-8);
    for (int k = 200; k < 256; ++k) static_cast<void>(uniform());
    for (int k = 0; k < 200; ++k) EXPECT_NEAR(of_b[static_cast<std::size_t>(k)], 4.5 + uniform(), 1e-14);
}

// Quantiles of a million draws of a normal quantity against Boost.Math, within four standard deviations of an
// empirical quantile, sqrt(p (1 - p) / n) / density.
TEST(MonteCarlo, NormalDrawsHaveTheQuantilesOfBoostMath) {
    auto const drawn =
        monte_carlo(first, std::vector<input_quantity>{input_quantity::normal("x", "", 0.0, 1.0)}, 1000000);
    boost::math::normal const normal;
    for (double const p : {1e-5, 1e-3, 0.025, 0.25, 0.5, 0.841, 0.975, 0.999, 1.0 - 1e-5}) {
        double const z = boost::math::quantile(normal, p);
        double const deviation = std::sqrt(p * (1.0 - p) / 1e6) / boost::math::pdf(normal, z);
        EXPECT_NEAR(drawn.sorted()[static_cast<std::size_t>(p * 1e6)], z, 4.0 * deviation) << p;
    }
}

TEST(MonteCarlo, AShortRunIsTheBeginningOfALongOne) {
    std::vector<input_quantity> const inputs{input_quantity::normal("a", "", 1.0, 0.3),
                                             input_quantity::rectangular("b", "", 1.0, 0.3)};
    auto const trials = [&](std::size_t count) {
        std::vector<double> seen;
        static_cast<void>(monte_carlo(
            [&](auto const& x) {
                seen.push_back(x[0] + x[1]);
                return seen.back();
            },
            inputs, count));
        return seen;
    };
    auto const brief = trials(300), lengthy = trials(1000);
    EXPECT_TRUE(std::equal(brief.begin(), brief.end(), lengthy.begin()));
}

TEST(ResultDistribution, CutsIntervals) {
    std::vector<double> hundred;
    for (int k = 100; k >= 1; --k) hundred.push_back(k < 97 ? k : 10.0 * k);
    result_distribution const d(hundred);
    auto const symmetric = d.interval(0.9);  // q = 90, r = 5: the 5th to the 95th
    EXPECT_EQ(symmetric.lower, 5.0);
    EXPECT_EQ(symmetric.upper, 95.0);
    auto const shortest = d.shortest_interval(0.95);  // the only one without the far ones
    EXPECT_EQ(shortest.lower, 1.0);
    EXPECT_EQ(shortest.upper, 96.0);
    for (double const bad : {0.0, 1.0, -1.0, nan})
        expect_refusal([&] { static_cast<void>(d.interval(bad)); }, "probability");
    expect_refusal([&] { static_cast<void>(d.interval(0.999)); }, "number of results covered");
    expect_refusal([&] { static_cast<void>(d.shortest_interval(0.001)); }, "number of results covered");
    expect_refusal([&] { result_distribution({1.0}); }, "number of trials");
}

TEST(AdaptiveMonteCarlo, StopsWhenItHasSettled) {
    std::vector<input_quantity> const inputs{input_quantity::normal("a", "", 1.0, 0.3)};
    auto const coarse = adaptive_monte_carlo(first, inputs, 0.95, 1);
    auto const fine = adaptive_monte_carlo(first, inputs, 0.95, 2);
    EXPECT_GE(coarse.trials(), 20000u);
    EXPECT_GT(fine.trials(), 2 * coarse.trials());
    EXPECT_NEAR(fine.interval(0.95).upper, 1.0 + 1.96 * 0.3, 0.01);
    std::vector<input_quantity> const constant{input_quantity::normal("a", "", 1.0, 0.0)};
    EXPECT_EQ(adaptive_monte_carlo(first, constant, 0.95).standard_uncertainty(), 0.0);
}

TEST(MonteCarlo, RefusesBadInput) {
    std::vector<input_quantity> const inputs{input_quantity::normal("a", "", 1.0, 0.3),
                                             input_quantity::rectangular("b", "", 1.0, 0.3),
                                             input_quantity::normal("c", "", 1.0, 0.3, 9.0)};
    expect_refusal([&] { static_cast<void>(monte_carlo(first, inputs, 99)); }, "number of trials");
    expect_refusal([&] { static_cast<void>(monte_carlo(first, inputs, 100000001)); }, "number of trials");
    expect_refusal([&] { static_cast<void>(monte_carlo(first, {}, 1000)); }, "number of input quantities");
    correlation_coefficient const bent[] = {{0, 1, 0.5}};
    expect_refusal([&] { static_cast<void>(monte_carlo(first, inputs, 1000, bent)); },
                   "greatest correlation of b");
    correlation_coefficient const unsure[] = {{0, 2, -0.5}};
    expect_refusal([&] { static_cast<void>(monte_carlo(first, inputs, 1000, unsure)); },
                   "greatest correlation of c");
    std::vector<input_quantity> const two{input_quantity::normal("x", "", 1.0, 0.3, 2.0)};
    expect_refusal([&] { static_cast<void>(monte_carlo(first, two, 1000)); }, "degrees of freedom of x");
    auto const root = [](auto const& x) { return std::sqrt(x[0] - 1.0); };
    expect_refusal([&] { static_cast<void>(monte_carlo(root, inputs, 1000)); }, "value of the model");
    for (double const bad : {0.0, 1.0, nan}) {
        expect_refusal([&] { static_cast<void>(adaptive_monte_carlo(first, inputs, bad)); }, "probability");
    }
    // Two blocks of 100 / (1 - p) trials must fit into 1e8. Beyond that, the code once evaluated the model
    // 5e7 times in vain.
    auto const untried = [](auto const&) -> double { throw std::logic_error("a trial was made"); };
    for (double const bad : {0.9999981, 0.999999, 1.0 - 1e-7}) {
        auto const e = expect_refusal([&] { static_cast<void>(adaptive_monte_carlo(untried, inputs, bad)); },
                                      "probability");
        EXPECT_NEAR(e.upper(), 0.999998, 1e-12);
    }
    EXPECT_THROW(static_cast<void>(adaptive_monte_carlo(untried, inputs, 0.999998)), std::logic_error);
    for (int const bad : {0, 5, -1}) {
        expect_refusal([&] { static_cast<void>(adaptive_monte_carlo(first, inputs, 0.95, bad)); },
                       "significant digits");
    }
}

TEST(NumericalTolerance, RefusesBadInput) {
    for (double const bad : {0.0, -1.0, nan}) {
        expect_refusal([&] { static_cast<void>(numerical_tolerance(bad, 2)); }, "standard uncertainty");
    }
    EXPECT_DOUBLE_EQ(numerical_tolerance(0.0996, 2), 0.005);   // 0.10
    EXPECT_DOUBLE_EQ(numerical_tolerance(0.0994, 2), 0.0005);  // 0.099
}

// JCGM 101:2008, 7.6: the mean of the results, and their standard deviation with one degree of freedom less.
TEST(ResultDistribution, OfFewResults) {
    result_distribution const few({5.0, 1.0, 4.0, 2.0, 3.0});
    EXPECT_EQ(few.trials(), 5U);
    EXPECT_DOUBLE_EQ(few.estimate(), 3.0);
    EXPECT_DOUBLE_EQ(few.standard_uncertainty(), std::sqrt(2.5));
    EXPECT_EQ(few.sorted().front(), 1.0);
}

}  // namespace
}  // namespace aqueth
