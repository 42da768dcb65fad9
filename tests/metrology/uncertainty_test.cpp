// SPDX-License-Identifier: BSL-1.0
#include <aqueth/blending.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/model/vapour_liquid.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <limits>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

double const nan = std::numeric_limits<double>::quiet_NaN();
double const infinity = std::numeric_limits<double>::infinity();

input_quantity sure(char const* name, double estimate, double u) {
    return input_quantity::normal(name, "", estimate, u);
}

TEST(InputQuantity, TurnsLimitsIntoStandardUncertainties) {
    EXPECT_DOUBLE_EQ(input_quantity::rectangular("x", "", 1.0, 3.0).standard_uncertainty(), std::sqrt(3.0));
    EXPECT_DOUBLE_EQ(input_quantity::triangular("x", "", 1.0, 6.0).standard_uncertainty(), std::sqrt(6.0));
    EXPECT_DOUBLE_EQ(input_quantity::arcsine("x", "", 1.0, 2.0).standard_uncertainty(), std::sqrt(2.0));
    EXPECT_DOUBLE_EQ(input_quantity::expanded("x", "", 1.0, 0.3, 2.0).standard_uncertainty(), 0.15);
}

TEST(Propagation, SquaresNeitherVanishNorOverflow) {
    auto const sum = [](auto const& x) { return x[0] + x[1]; };
    for (double const u : {1e-200, 1.0, 1e200}) {
        std::vector const inputs{sure("a", 1.0, u), sure("b", 1.0, u)};
        EXPECT_NEAR(propagate(sum, inputs).standard_uncertainty / u, std::sqrt(2.0), 1e-15);
    }
    std::vector const beyond{sure("a", 1.0, 1.7e308), sure("b", 1.0, 1.7e308)};
    expect_refusal([&] { static_cast<void>(propagate(sum, beyond)); }, "value of the model");
}

TEST(InputQuantity, TakesRepeatedReadings) {
    double const readings[] = {84.0, 84.1, 83.9, 84.2};
    auto const mean = input_quantity::repeated("reading", "% vol", readings);
    EXPECT_DOUBLE_EQ(mean.estimate(), 84.05);
    // squares of deviations 0.0025 + 0.0025 + 0.0225 + 0.0225 = 0.05, over 4 * 3
    EXPECT_NEAR(mean.standard_uncertainty(), std::sqrt(0.05 / 12.0), 1e-14);
    EXPECT_EQ(mean.degrees_of_freedom(), 3.0);
    EXPECT_EQ(mean.evaluation(), evaluation::type_a);
    EXPECT_EQ(sure("x", 0.0, 1.0).evaluation(), evaluation::type_b);
}

TEST(InputQuantity, RefusesWhatIsNone) {
    for (double const bad : {-0.1, nan, infinity}) {
        expect_refusal([&] { static_cast<void>(input_quantity::normal("t", "K", 20.0, bad)); },
                       "standard uncertainty");
        expect_refusal([&] { static_cast<void>(input_quantity::rectangular("t", "K", 20.0, bad)); },
                       "standard uncertainty");
        expect_refusal([&] { static_cast<void>(input_quantity::triangular("t", "K", 20.0, bad)); },
                       "standard uncertainty");
        expect_refusal([&] { static_cast<void>(input_quantity::arcsine("t", "K", 20.0, bad)); },
                       "standard uncertainty");
    }
    for (double const bad : {nan, infinity, -infinity}) {
        expect_refusal([&] { static_cast<void>(input_quantity::normal("t", "K", bad, 0.1)); }, "estimate");
    }
    for (double const bad : {0.0, -2.0, nan, infinity}) {
        expect_refusal([&] { static_cast<void>(input_quantity::expanded("t", "K", 20.0, 0.1, bad)); },
                       "coverage factor");
    }
    for (double const bad : {0.9, 0.0, -1.0, nan}) {
        expect_refusal([&] { static_cast<void>(input_quantity::normal("t", "K", 20.0, 0.1, bad)); },
                       "degrees of freedom");
    }
    double const one[] = {1.0};
    expect_refusal([&] { static_cast<void>(input_quantity::repeated("t", "K", one)); }, "number of readings");
    double const broken[] = {1.0, nan};
    expect_refusal([&] { static_cast<void>(input_quantity::repeated("t", "K", broken)); }, "estimate");
}

TEST(Propagate, IsExactForALinearModel) {
    std::vector<input_quantity> const inputs{sure("a", 10.0, 0.3), sure("b", 2.0, 0.2)};
    auto const b = propagate([](auto const& x) { return 2.0 * x[0] - 4.0 * x[1]; }, inputs);
    EXPECT_DOUBLE_EQ(b.estimate, 12.0);
    EXPECT_DOUBLE_EQ(b.standard_uncertainty, 1.0);  // 0.6 and 0.8
    EXPECT_DOUBLE_EQ(b.lines[0].contribution, 0.6);
    EXPECT_DOUBLE_EQ(b.lines[1].contribution, 0.8);
    EXPECT_DOUBLE_EQ(b.lines[1].sensitivity, -4.0);
    EXPECT_DOUBLE_EQ(b.lines[0].share, 0.36);
    EXPECT_DOUBLE_EQ(b.lines[1].share, 0.64);
    EXPECT_EQ(b.effective_degrees_of_freedom, infinity);
    EXPECT_NEAR(b.coverage_factor(0.95), 1.959964, 1e-6);
    EXPECT_NEAR(b.expanded_uncertainty(0.95), 1.959964, 1e-6);
}

TEST(Propagate, WhollyCorrelatedInputsAddUpOrCancel) {
    std::vector<input_quantity> const inputs{sure("a", 1.0, 0.3), sure("b", 1.0, 0.4), sure("c", 1.0, 0.0)};
    auto const sum = [](auto const& x) { return x[0] + x[1] + x[2]; };
    auto const difference = [](auto const& x) { return 4.0 * x[0] - 3.0 * x[1]; };
    correlation_coefficient const together[] = {{0, 1, 1.0}};
    EXPECT_NEAR(propagate(sum, inputs, together).standard_uncertainty, 0.7, 1e-15);
    EXPECT_NEAR(propagate(difference, inputs, together).standard_uncertainty, 0.0, 1e-8);
    correlation_coefficient const against[] = {{1, 0, -1.0}};
    EXPECT_NEAR(propagate(sum, inputs, against).standard_uncertainty, 0.1, 1e-15);
    auto const lines = propagate(sum, inputs, together).lines;
    EXPECT_NEAR(lines[0].share + lines[1].share + lines[2].share, 1.0, 1e-15);
}

TEST(Propagate, DegreesOfFreedomNeedIndependence) {
    std::vector<input_quantity> const inputs{input_quantity::normal("a", "", 1.0, 0.3, 4.0),
                                             sure("b", 1.0, 0.4)};
    auto const sum = [](auto const& x) { return x[0] + x[1]; };
    auto const b = propagate(sum, inputs);
    EXPECT_NEAR(*b.effective_degrees_of_freedom, 0.0625 * 4.0 / 0.0081, 1e-12);  // 0.5^4 / (0.3^4 / 4)
    correlation_coefficient const together[] = {{0, 1, 0.5}};
    auto const c = propagate(sum, inputs, together);
    EXPECT_FALSE(c.effective_degrees_of_freedom);
    expect_refusal([&] { c.coverage_factor(0.95); }, "effective degrees of freedom");
}

TEST(Propagate, RefusesWhatCannotBe) {
    std::vector<input_quantity> const inputs{sure("a", 1.0, 0.3), sure("b", 1.0, 0.4), sure("c", 1.0, 0.1)};
    auto const sum = [](auto const& x) { return x[0] + x[1] + x[2]; };
    auto const with = [&](std::vector<correlation_coefficient> const& r) {
        return [&sum, &inputs, r] { static_cast<void>(propagate(sum, inputs, r)); };
    };
    expect_refusal([&] { static_cast<void>(propagate(sum, {})); }, "number of input quantities");
    for (double const bad : {1.01, -1.01, nan}) expect_refusal(with({{0, 1, bad}}), "coefficient");
    expect_refusal(with({{0, 3, 0.5}}), "index");
    expect_refusal(with({{7, 1, 0.5}}), "index");
    expect_refusal(with({{0, 1, 0.5}, {1, 0, 0.5}}), "coefficients of one pair");
    expect_refusal(with({{0, 1, 0.0}, {0, 1, 0.5}}), "coefficients of one pair");
    expect_refusal(with({{1, 1, 1.0}}), "quantities in a pair");
    // Two inputs correlated with a third cannot be anticorrelated with each other; the limit is 0.62 here (2
    // * 0.9^2 - 1).
    expect_refusal(with({{0, 1, 0.9}, {0, 2, 0.9}, {1, 2, 0.61}}), "least pivot of the matrix");
    expect_refusal(with({{0, 1, 1.0}, {0, 2, 0.5}, {1, 2, 0.4}}), "least pivot of the matrix");
    EXPECT_NO_THROW(with({{0, 1, 0.9}, {0, 2, 0.9}, {1, 2, 0.62}})());
    EXPECT_NO_THROW(with({{0, 1, 1.0}, {0, 2, 0.5}, {1, 2, 0.5}})());
    expect_refusal(
        [&] { static_cast<void>(propagate([](auto const& x) { return log(x[0] - x[1]); }, inputs)); },
        "value of the model");
    for (double const bad : {0.0, 1.0, -0.5, 95.0, nan, infinity}) {
        expect_refusal([&] { propagate(sum, inputs).coverage_factor(bad); }, "probability");
    }
}

TEST(Propagate, GoesThroughTheEquilibrium) {
    namespace vle = model::vapour_liquid;
    std::vector<input_quantity> const inputs{sure("liquid", 0.05, 0.002), sure("pressure", 95000.0, 100.0)};
    auto const exact =
        propagate([](auto const& x) { return vle::bubble_at_pressure(x[0], x[1]).temperature; }, inputs);
    auto const typed = [](std::span<double const> x) {
        return bubble_point(mole_fraction(x[0]), x[1] * newton_per_square_metre).temperature.kelvin();
    };
    auto const by_differences = propagate_by_differences(typed, inputs);
    EXPECT_NEAR(by_differences.estimate, exact.estimate, 1e-10);
    for (std::size_t i = 0; i < 2; ++i) {
        EXPECT_NEAR(by_differences.lines[i].sensitivity / exact.lines[i].sensitivity, 1.0, 1e-7);
        EXPECT_EQ(exact.lines[i].sensitivity_error, 0.0);
        EXPECT_GT(by_differences.lines[i].sensitivity_error, 0.0);
        // the stated error covers the actual error
        EXPECT_LE(std::abs(by_differences.lines[i].sensitivity - exact.lines[i].sensitivity),
                  by_differences.lines[i].sensitivity_error + 1e-12);
    }
}

TEST(PropagateByDifferences, SaysWhenAModelIsNotSmooth) {
    std::vector<input_quantity> const inputs{sure("bottles", 10.2, 0.5)};
    auto const steps = [](std::span<double const> x) { return std::floor(x[0]); };
    expect_refusal([&] { static_cast<void>(propagate_by_differences(steps, inputs)); },
                   "bend of the model within one standard uncertainty");
    auto const rough = [](std::span<double const> x) { return x[0] + 0.01 * std::sin(1e5 * x[0]); };
    expect_refusal([&] { static_cast<void>(propagate_by_differences(rough, inputs)); },
                   "error of the derivatives, in the uncertainty");
    auto const kink = [](std::span<double const> x) { return std::abs(x[0] - 10.3); };
    expect_refusal([&] { static_cast<void>(propagate_by_differences(kink, inputs)); },
                   "bend of the model within one standard uncertainty");
}

TEST(PropagateByDifferences, LeavesConstantsAlone) {
    std::vector<input_quantity> const inputs{sure("strength", 100.0, 0.0), sure("mass", 2.0, 0.1)};
    // 100 % vol has no neighbour above
    auto const typed = [](std::span<double const> x) {
        return in(parcel::of(x[1] * kilogram, by_volume(x[0]), celsius(20.0)).volume(), litre);
    };
    auto const b = propagate_by_differences(typed, inputs);
    EXPECT_NEAR(b.standard_uncertainty, 0.1 / 0.78924, 1e-5);
    EXPECT_EQ(b.lines[0].contribution, 0.0);
}

TEST(CorrelationOfResults, IsOneForTheSameAndNoneForStrangers) {
    std::vector<input_quantity> const inputs{sure("a", 1.0, 0.3), sure("b", 1.0, 0.4)};
    auto const a = propagate([](auto const& x) { return 2.0 * x[0]; }, inputs);
    auto const b = propagate([](auto const& x) { return -3.0 * x[1]; }, inputs);
    auto const both = propagate([](auto const& x) { return x[0] + x[1]; }, inputs);
    EXPECT_DOUBLE_EQ(correlation_of_results(a, a), 1.0);
    EXPECT_DOUBLE_EQ(correlation_of_results(a, b), 0.0);
    EXPECT_DOUBLE_EQ(correlation_of_results(a, both), 0.6);
    EXPECT_DOUBLE_EQ(correlation_of_results(b, both), -0.8);
    std::vector<input_quantity> const one{sure("a", 1.0, 0.3)};
    auto const other = propagate([](auto const& x) { return x[0]; }, one);
    expect_refusal([&] { static_cast<void>(correlation_of_results(a, other)); },
                   "lines of the second budget");
    auto const constant = propagate([](auto const& x) { return 0.0 * x[0]; }, inputs);
    expect_refusal([&] { static_cast<void>(correlation_of_results(a, constant)); },
                   "product of the uncertainties");
}

TEST(CorrelationOfReadings, RefusesWhatHasNone) {
    double const rising[] = {1.0, 2.0, 3.0}, falling[] = {6.0, 4.0, 2.0}, level[] = {5.0, 5.0, 5.0},
                 two[] = {1.0, 2.0};
    EXPECT_DOUBLE_EQ(correlation_of_readings(rising, falling), -1.0);
    expect_refusal([&] { static_cast<void>(correlation_of_readings(rising, two)); },
                   "number of second readings");
    expect_refusal([&] { static_cast<void>(correlation_of_readings(rising, level)); },
                   "spread of the readings");
    expect_refusal([&] { static_cast<void>(correlation_of_readings({}, {})); }, "number of readings");
}

// Limit of the curvature. The variance of a cubic model of a normal input has a closed form, which shows the
// error of the first order: Y = X + c X^3 has the variance u^2 + 6 c u^4 + 15 c^2 u^6, of which the first
// order has u^2. The error of an accepted model must not exceed the relative uncertainty of the standard
// deviation of five readings, 1/sqrt(2 (n - 1)) = 35 % (GUM E.4.3). A model with an error below a tenth must
// not be refused.
TEST(PropagateByDifferences, RefusesABendThatFirstOrderMisses) {
    double const doubt_of_five_readings = 1.0 / std::sqrt(2.0 * (5.0 - 1.0));
    double const u = 0.2;
    std::vector<input_quantity> const inputs{sure("x", 0.0, u)};
    int accepted = 0, refused = 0;
    for (double bend = 0.0; bend < 0.5; bend += 0.005) {  // c u^2
        double const c = bend / (u * u);
        auto const cubic = [c](std::span<double const> x) { return x[0] + c * x[0] * x[0] * x[0]; };
        double const missed = std::sqrt(1.0 + 6.0 * bend + 15.0 * bend * bend) - 1.0;
        try {
            auto const b = propagate_by_differences(cubic, inputs);
            EXPECT_NEAR(b.standard_uncertainty, u, 1e-9 * u);
            EXPECT_LT(missed, doubt_of_five_readings) << bend;
            ++accepted;
        } catch (refusal const& e) {
            EXPECT_EQ(e.argument(), "bend of the model within one standard uncertainty");
            EXPECT_NEAR(e.value(), 100.0 * bend, 1e-6);
            EXPECT_GT(missed, 0.1) << bend;
            ++refused;
        }
    }
    EXPECT_GT(accepted, 5);
    EXPECT_GT(refused, 50);
}

// An input without uncertainty, or with a certain one, does not affect the degrees of freedom of the rest.
TEST(Propagate, DegreesOfFreedomOfCorrelatedInputsThatAreSure) {
    auto const sum = [](auto const& x) { return x[0] + x[1] + 0.0 * x[2]; };
    correlation_coefficient const together[] = {{0, 1, 0.5}, {1, 2, 0.5}};
    std::vector<input_quantity> const all_sure{sure("a", 1.0, 0.3), sure("b", 1.0, 0.4), sure("c", 1.0, 0.1)};
    EXPECT_EQ(propagate(sum, all_sure, together).effective_degrees_of_freedom, infinity);
    // the third counts for nothing, so neither do its degrees of freedom
    std::vector<input_quantity> const idle{sure("a", 1.0, 0.3), sure("b", 1.0, 0.4),
                                           input_quantity::normal("c", "", 1.0, 0.1, 4.0)};
    EXPECT_EQ(propagate(sum, idle, together).effective_degrees_of_freedom, infinity);
}

// GUM G.6.4: degrees of freedom rounded down to a whole number. 7.7 are 7; t for 95 % is 2.36 (GUM, table
// G.2).
TEST(Propagate, CoverageFactorTakesWholeDegreesOfFreedom) {
    std::vector<input_quantity> const inputs{input_quantity::normal("a", "", 1.0, 0.3, 1.0),
                                             sure("b", 1.0, 0.4)};
    auto const b = propagate([](auto const& x) { return x[0] + x[1]; }, inputs);
    EXPECT_NEAR(*b.effective_degrees_of_freedom, 7.716, 0.0005);
    EXPECT_NEAR(b.coverage_factor(0.95), 2.36, 0.005);
    EXPECT_NEAR(b.expanded_uncertainty(0.95), 0.5 * 2.36, 0.0025);
}

TEST(Propagate, SharesHaveNoNegativeZero) {
    std::vector<input_quantity> const inputs{sure("a", 1.0, 0.3), sure("b", 1.0, 0.0)};
    auto const b = propagate([](auto const& x) { return x[0] - x[1]; }, inputs);
    correlation_coefficient const together[] = {{0, 1, 0.5}};
    for (auto const& budget : {b, propagate([](auto const& x) { return x[0] - x[1]; }, inputs, together)}) {
        EXPECT_EQ(budget.lines[1].share, 0.0);
        EXPECT_FALSE(std::signbit(budget.lines[1].share));
    }
}

// Two values near 1e9 are each rounded to 1.2e-7, half of it at the most off: so is their difference, however
// small the step. The bound of the error must not be less, although all values are exact here.
TEST(PropagateByDifferences, BoundOfTheErrorCountsRounding) {
    auto const large = [](std::span<double const> x) { return 1e9 + x[0]; };
    std::vector<input_quantity> const inputs{sure("x", 0.0, 1.0)};
    auto const b = propagate_by_differences(large, inputs);
    EXPECT_EQ(b.lines[0].sensitivity, 1.0);
    EXPECT_GE(b.lines[0].sensitivity_error, 1.2e-7);
    EXPECT_LE(b.lines[0].sensitivity_error, 1e-4);
}

// The criterion is the error of a slope times the uncertainty: the scale of a model does not matter.
TEST(PropagateByDifferences, TakesSmallUncertainties) {
    for (double const u : {1e-6, 1e-3, 1.0}) {
        std::vector<input_quantity> const inputs{sure("x", 1.0, u)};
        auto const b = propagate_by_differences([](std::span<double const> x) { return 3.0 * x[0]; }, inputs);
        EXPECT_NEAR(b.standard_uncertainty / u, 3.0, 1e-6);
    }
}

// If the product of two spreads underflows, the result must not come from a division by zero.
TEST(Correlation, RefusesSpreadsBelowWhatADoubleHolds) {
    double const tiny[] = {0.0, 1e-100};
    expect_refusal([&] { static_cast<void>(correlation_of_readings(tiny, tiny)); }, "spread of the readings");
    std::vector<input_quantity> const inputs{sure("a", 1.0, 1e-200), sure("b", 1.0, 1e-200)};
    auto const a = propagate([](auto const& x) { return x[0] + x[1]; }, inputs);
    expect_refusal([&] { static_cast<void>(correlation_of_results(a, a)); }, "product of the uncertainties");
}

}  // namespace
}  // namespace aqueth
