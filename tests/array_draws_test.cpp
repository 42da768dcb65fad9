// SPDX-License-Identifier: BSL-1.0
// Measurements evaluated for many draws at once, against the same model one draw after the other and against
// the budget.
#include <aqueth/array_draws.hpp>
#include <aqueth/metrology/monte_carlo.hpp>

#include "expect_refusal.hpp"
#include "measured_dilution.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <span>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;
namespace model = measurement_model;

/// @return largest difference between two sets of as many trials, in order
double largest_difference(result_distribution const& a, result_distribution const& b) {
    double largest = 0.0;
    for (std::size_t i = 0; i < a.trials(); ++i)
        largest = (std::max)(largest, std::abs(a.sorted()[i] - b.sorted()[i]));
    return largest;
}

template <class Model>
void expect_same_trials(Model const& measurand, std::span<input_quantity const> inputs, double tolerance) {
    std::size_t const trials = 20011;  // no whole number of blocks
    auto const one = monte_carlo(measurand, inputs, trials),
               many = monte_carlo(in_blocks(measurand), inputs, trials);
    EXPECT_EQ(many.trials(), trials);
    EXPECT_LE(largest_difference(one, many), tolerance);
    EXPECT_GT(one.standard_uncertainty(), 1e6 * tolerance);
}

// Strengths in % vol: the array functions promise 1e-14 of the scale, and a dilution chains three of them.
TEST(ArrayDraws, TheDilutionIsThatOfSingleDraws) {
    auto const inputs = test::dilution::inputs();
    expect_same_trials(test::strength_of_spirit, inputs, 1e-11);
    expect_same_trials(test::water_to_add, inputs, 1e-12);
    expect_same_trials(test::strength_of_product, inputs, 1e-11);
}

// Draws outside the range of the array functions: a reading near 0 % vol, a cold spirit, a hot one.
TEST(ArrayDraws, WhatArraysRefuseIsAsWithNumbers) {
    auto const strength = [](auto const& x) {
        return model::volume_fraction(model::mass_fraction_from_reading(x[0] / 100.0, x[1]));
    };
    auto const density = [](auto const& x) { return model::density(x[0] / 100.0, x[1]); };
    struct {
        double reading, t;
    } const cases[] = {{0.1, 20.0}, {99.9, 20.0}, {10.0, -3.0}, {60.0, 40.0}, {40.0, -20.0}};
    for (auto const& each : cases) {
        std::vector<input_quantity> const inputs{
            input_quantity::rectangular("reading", "% vol", each.reading, 0.3),
            input_quantity::rectangular("temperature", "°C", each.t, 0.5)};
        auto const x = draws(each.reading), t = draws(each.t);
        EXPECT_TRUE(std::isfinite(model::density(x / 100.0, t)[0])) << each.reading;
        expect_same_trials(strength, inputs, 1e-11);
        expect_same_trials(density, inputs, 1e-9);
    }
}

// JCGM 101 against the GUM: a million draws of the dilution, by their mean and standard deviation, which they
// know to 0.001 u and 0.07 %; the curvature of the model moves the mean by 0.0005 % vol.
TEST(ArrayDraws, AMillionDrawsAgreeWithTheBudget) {
    auto const inputs = test::dilution::inputs();
    auto const budget = propagate(test::strength_of_product, inputs);
    auto const trials = monte_carlo(in_blocks(test::strength_of_product), inputs, 1000000);
    double const u = budget.standard_uncertainty;
    EXPECT_NEAR(trials.estimate(), budget.estimate, 0.004 * u + 0.0005);
    EXPECT_NEAR(trials.standard_uncertainty() / u, 1.0, 0.003);
    // The interval of the budget takes the result to be normal. The largest inputs are rectangular: with
    // these the interval of the trials is shorter, with normal ones of the same uncertainty it is the same.
    // An end is known to 0.003 u.
    double const half = budget.expanded_uncertainty(0.95);
    EXPECT_GT(trials.interval(0.95).lower, budget.estimate - half + 0.05 * u);
    EXPECT_LT(trials.interval(0.95).upper, budget.estimate + half - 0.05 * u);
    std::vector<input_quantity> normal;
    for (auto const& each : inputs)
        normal.push_back(
            input_quantity::normal(each.name(), each.unit(), each.estimate(), each.standard_uncertainty()));
    auto const of_normal = monte_carlo(in_blocks(test::strength_of_product), normal, 1000000).interval(0.95);
    EXPECT_NEAR(of_normal.lower, budget.estimate - half, 0.015 * u);
    EXPECT_NEAR(of_normal.upper, budget.estimate + half, 0.015 * u);
}

TEST(ArrayDraws, AdaptiveTrialsAreThoseOfSingleDraws) {
    auto const inputs = test::dilution::inputs();
    auto const one = adaptive_monte_carlo(test::water_to_add, inputs, 0.95, 1);
    auto const many = adaptive_monte_carlo(in_blocks(test::water_to_add), inputs, 0.95, 1);
    ASSERT_EQ(one.trials(), many.trials());
    EXPECT_LE(largest_difference(one, many), 1e-12);
}

TEST(ArrayDraws, ATrialThatIsNotFiniteIsRefused) {
    std::vector<input_quantity> const inputs{input_quantity::normal("a", "", 1.0, 0.3)};
    auto const root = [](auto const& x) {
        using std::sqrt;
        return sqrt(x[0] - 1.0);
    };
    auto const one = expect_refusal([&] { return monte_carlo(root, inputs, 1000); }, "value of the model");
    auto const many =
        expect_refusal([&] { return monte_carlo(in_blocks(root), inputs, 1000); }, "value of the model");
    EXPECT_STREQ(one.what(), many.what());
}

TEST(Draws, HaveTheArithmeticOfNumbers) {
    draws a, b;
    for (std::size_t i = 0; i < draws::count; ++i) {
        a[i] = 0.5 + static_cast<double>(i);
        b[i] = 300.0 - static_cast<double>(i);
    }
    auto const formula = [](auto const& x, auto const& y) {
        using std::abs, std::exp, std::log, std::sqrt;
        return -x + 2.0 * y - (x - 1.0) * (y + x) / (x * 3.0) + (1.0 - y) / 7.0 + (5.0 + x) / y + 4.0 / x +
               exp(x / 100.0) * log(y) + sqrt(x) - abs(x - y);
    };
    draws const found = formula(a, b);
    draws const each = draws::of([](double x, double y) { return x < y ? x : y; }, a, b);
    for (std::size_t i = 0; i < draws::count; ++i) {
        EXPECT_NEAR(found[i], formula(a[i], b[i]), 1e-12 * std::abs(found[i])) << i;
        EXPECT_EQ(each[i], (std::min)(a[i], b[i]));
    }
}

}  // namespace
}  // namespace aqueth
