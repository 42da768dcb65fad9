// SPDX-License-Identifier: BSL-1.0
// Worked examples of the guides in metrology, read in an electronic edition of their text:
//   JCGM 100:2008, Guide to the expression of uncertainty in measurement (GUM);
//   JCGM 101:2008, Supplement 1, propagation of distributions using a Monte Carlo method;
//   JCGM 106:2012, The role of measurement uncertainty in conformity assessment.
// Each figure is held to half a unit of its last printed digit and stands in a row of the report, unless said
// otherwise.
#include "published/deviations.hpp"

#include <aqueth/metrology/conformity.hpp>
#include <aqueth/metrology/monte_carlo.hpp>
#include <aqueth/metrology/uncertainty.hpp>

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstdint>
#include <vector>

namespace aqueth {
namespace {

/// Figures that a guide prints.
class figures {
public:
    explicit figures(char const* name) : deviations_(name, "digits", published::precision::printed()) {}

    /// @param half_digit half a unit of the last digit that the guide prints
    void add(char const* what, double computed, double printed, double half_digit) {
        deviations_.add(what, (computed - printed) / (2.0 * half_digit), 0.5);
    }
    void judges() const { deviations_.judges(); }

private:
    published::deviations deviations_;
};

// --- JCGM 100 ----------------------------------------------------------------------------------------------

TEST(Gum, StandardUncertaintiesOfClause4) {
    figures guide("gum_4_3_and_5_1");
    // 4.3.7: 0.40e-6 /°C to either side; the voltmeter, 15 uV to either side, and in 5.1.5 with 12 uV of type
    // A.
    guide.add("input_quantity::rectangular('a', '', 16.52e-6, 0.40e-6).standard_uncertainty()",
              input_quantity::rectangular("a", "", 16.52e-6, 0.40e-6).standard_uncertainty(), 0.23e-6,
              0.005e-6);
    double const half_width = 14e-6 * 0.928571 + 2e-6 * 1.0;
    auto const voltmeter = input_quantity::rectangular("voltmeter", "V", 0.0, half_width);
    guide.add("voltmeter.standard_uncertainty()", voltmeter.standard_uncertainty(), 8.7e-6, 0.05e-6);
    std::vector<input_quantity> const inputs{input_quantity::normal("mean", "V", 0.928571, 12e-6), voltmeter};
    auto const budget = propagate([](auto const& x) { return x[0] + x[1]; }, inputs);
    guide.add("budget.standard_uncertainty", budget.standard_uncertainty, 15e-6, 0.5e-6);
    guide.add("budget.standard_uncertainty / budget.estimate", budget.standard_uncertainty / budget.estimate,
              16e-6, 0.5e-6);
    guide.judges();
}

/// Example H.1: calibration of an end gauge, lengths in nm, temperatures as deviations from 20 °C.
struct end_gauge {
    enum { standard, mean, random, systematic, expansion, temperature, swing, expansions, temperatures };
    double static constexpr certified = 50.000623e6;

    static std::vector<input_quantity> inputs() {
        using input = input_quantity;
        return {
            input::expanded("length of the standard", "nm", certified, 75.0, 3.0, 18.0),
            input::normal("mean difference", "nm", 215.0, 13.0 / std::sqrt(5.0), 24.0),
            input::expanded("comparator, random", "nm", 0.0, 10.0, 2.57, 5.0),
            input::expanded("comparator, systematic", "nm", 0.0, 20.0, 3.0, 8.0),
            input::rectangular("expansion of the standard", "1/K", 11.5e-6, 2e-6),
            input::normal("mean temperature of the bed", "K", -0.1, 0.2),
            input::arcsine("swing of the temperature", "K", 0.0, 0.5),
            input::rectangular("difference of the expansions", "1/K", 0.0, 1e-6, 50.0),
            input::rectangular("difference of the temperatures", "K", 0.0, 0.05, 2.0),
        };
    }
    template <class X>
    static auto length(X const& x) {
        auto const theta = x[temperature] + x[swing];
        return x[standard] + x[mean] + x[random] + x[systematic] -
               x[standard] * (x[expansions] * theta + x[expansion] * x[temperatures]);
    }
};

TEST(Gum, EndGaugeCalibrationH1) {
    figures guide("gum_h1");
    auto const budget = propagate([](auto const& x) { return end_gauge::length(x); }, end_gauge::inputs());
    guide.add("budget.estimate", budget.estimate, 50.000838e6, 0.5);
    guide.add("budget.standard_uncertainty", budget.standard_uncertainty, 32.0, 0.5);
    EXPECT_NEAR(budget.standard_uncertainty * budget.standard_uncertainty, 1002.0, 2.0);  // of rounded parts
    auto const contribution = [&](int i) { return budget.lines[static_cast<std::size_t>(i)].contribution; };
    guide.add("contribution(end_gauge::standard)", contribution(end_gauge::standard), 25.0, 0.5);
    guide.add("contribution(end_gauge::mean)", contribution(end_gauge::mean), 5.8, 0.05);
    guide.add("contribution(end_gauge::random)", contribution(end_gauge::random), 3.9, 0.05);
    guide.add("contribution(end_gauge::systematic)", contribution(end_gauge::systematic), 6.7, 0.05);
    EXPECT_EQ(contribution(end_gauge::expansion), 0.0);
    EXPECT_EQ(contribution(end_gauge::temperature), 0.0);
    guide.add("contribution(end_gauge::expansions)", contribution(end_gauge::expansions), 2.9, 0.05);
    guide.add("contribution(end_gauge::temperatures)", contribution(end_gauge::temperatures), 16.6, 0.05);
    guide.add("budget.lines[end_gauge::swing].input.standard_uncertainty()",
              budget.lines[end_gauge::swing].input.standard_uncertainty(), 0.35, 0.005);
    // The guide has 16.7 from uncertainties rounded to two digits.
    EXPECT_NEAR(*budget.effective_degrees_of_freedom, 16.7, 0.15);
    guide.add("budget.coverage_factor(0.99)", budget.coverage_factor(0.99), 2.92, 0.005);
    // The guide multiplies what it has rounded: 2.92 x 32 nm = 93 nm. Unrounded it is 92.5 nm.
    guide.add("budget.coverage_factor(0.99) * std::round(budget.standard_uncertainty)",
              budget.coverage_factor(0.99) * std::round(budget.standard_uncertainty), 93.0, 0.5);
    EXPECT_NEAR(budget.expanded_uncertainty(0.99), 92.5, 0.05);
    guide.judges();
}

// H.1.7: the terms of second order bring 32 nm to 34 nm. First order cannot know; the trials do.
TEST(Gum, EndGaugeSecondOrderH17) {
    figures guide("gum_h1_7");
    std::vector<input_quantity> sure;
    for (auto const& each : end_gauge::inputs()) {  // the same, with sure uncertainties
        double const u = each.standard_uncertainty();
        sure.push_back(each.distribution() == distribution::normal
                           ? input_quantity::normal(each.name(), each.unit(), each.estimate(), u)
                           : each);
    }
    auto const trials = monte_carlo([](auto const& x) { return end_gauge::length(x); }, sure, 1000000);
    guide.add("trials.standard_uncertainty()", trials.standard_uncertainty(), 34.0, 0.5);
    guide.judges();
}

TEST(Gum, ResistanceAndReactanceH2) {
    figures guide("gum_h2");
    double const v[] = {5.007, 4.994, 5.005, 4.990, 4.999};
    double const i[] = {19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3};
    double const phi[] = {1.0456, 1.0438, 1.0468, 1.0428, 1.0433};
    std::vector<input_quantity> const inputs{input_quantity::repeated("V", "V", v),
                                             input_quantity::repeated("I", "A", i),
                                             input_quantity::repeated("phi", "rad", phi)};
    guide.add("inputs[0].estimate()", inputs[0].estimate(), 4.9990, 0.00005);
    guide.add("inputs[1].estimate()", inputs[1].estimate(), 19.6610e-3, 0.00005e-3);
    guide.add("inputs[2].estimate()", inputs[2].estimate(), 1.04446, 0.000005);
    guide.add("inputs[0].standard_uncertainty()", inputs[0].standard_uncertainty(), 0.0032, 0.00005);
    guide.add("inputs[1].standard_uncertainty()", inputs[1].standard_uncertainty(), 0.0095e-3, 0.00005e-3);
    guide.add("inputs[2].standard_uncertainty()", inputs[2].standard_uncertainty(), 0.00075, 0.000005);
    std::array<correlation_coefficient, 3> const r{{{0, 1, correlation_of_readings(v, i)},
                                                    {0, 2, correlation_of_readings(v, phi)},
                                                    {1, 2, correlation_of_readings(i, phi)}}};
    guide.add("r[0].value", r[0].value, -0.36, 0.005);
    guide.add("r[1].value", r[1].value, 0.86, 0.005);
    guide.add("r[2].value", r[2].value, -0.65, 0.005);

    auto const resistance = propagate(
        [](auto const& x) {
            using std::cos;
            return x[0] / x[1] * cos(x[2]);
        },
        inputs, r);
    auto const reactance = propagate(
        [](auto const& x) {
            using std::sin;
            return x[0] / x[1] * sin(x[2]);
        },
        inputs, r);
    auto const impedance = propagate([](auto const& x) { return x[0] / x[1]; }, inputs, r);
    guide.add("resistance.estimate", resistance.estimate, 127.732, 0.0005);
    guide.add("resistance.standard_uncertainty", resistance.standard_uncertainty, 0.071, 0.0005);
    guide.add("reactance.estimate", reactance.estimate, 219.847, 0.0005);
    // The guide prints 0.295. By its approach 1, which this is, the data give 0.29558; by its approach 2, a
    // reactance from each set of readings, 0.29549, which is what it seems to have rounded.
    EXPECT_NEAR(reactance.standard_uncertainty, 0.29558, 0.000005);
    double each_set[5];
    for (int k = 0; k < 5; ++k) each_set[k] = v[k] / i[k] * std::sin(phi[k]);
    guide.add("input_quantity::repeated('X', 'Ohm', each_set).standard_uncertainty()",
              input_quantity::repeated("X", "Ohm", each_set).standard_uncertainty(), 0.295, 0.0005);
    guide.add("impedance.estimate", impedance.estimate, 254.260, 0.0005);
    guide.add("impedance.standard_uncertainty", impedance.standard_uncertainty, 0.236, 0.0005);
    guide.add("correlation_of_results(resistance, reactance, r)",
              correlation_of_results(resistance, reactance, r), -0.588, 0.0005);
    guide.add("correlation_of_results(resistance, impedance, r)",
              correlation_of_results(resistance, impedance, r), -0.485, 0.0005);
    guide.add("correlation_of_results(reactance, impedance, r)",
              correlation_of_results(reactance, impedance, r), 0.993, 0.0005);
    guide.judges();
}

// --- JCGM 101 ----------------------------------------------------------------------------------------------

double sum_of_four(std::span<double const> x) { return x[0] + x[1] + x[2] + x[3]; }

auto const generic_sum = [](auto const& x) { return x[0] + x[1] + x[2] + x[3]; };

TEST(Supplement1, AdditiveModel92) {
    figures guide("jcgm_101_9_2");
    auto const set_of = [](distribution kind, double last) {
        std::vector<input_quantity> inputs;
        for (double const u : {1.0, 1.0, 1.0, last}) {
            inputs.push_back(kind == distribution::normal
                                 ? input_quantity::normal("x", "", 0.0, u)
                                 : input_quantity::rectangular("x", "", 0.0, u * std::sqrt(3.0)));
        }
        return inputs;
    };
    // Table 2, normal: 2.00 and [-3.92, 3.92]; the trials of the guide scatter by 0.02.
    auto const normal = set_of(distribution::normal, 1.0);
    auto const normal_trials = monte_carlo(sum_of_four, normal, 1000000);
    guide.add("normal_trials.standard_uncertainty()", normal_trials.standard_uncertainty(), 2.00, 0.005);
    EXPECT_NEAR(normal_trials.interval(0.95).lower, -3.92, 0.02);
    EXPECT_NEAR(normal_trials.interval(0.95).upper, 3.92, 0.02);
    auto const normal_budget = propagate(generic_sum, normal);
    EXPECT_NEAR(normal_budget.standard_uncertainty, 2.0, 1e-12);
    guide.add("normal_budget.expanded_uncertainty(0.95)", normal_budget.expanded_uncertainty(0.95), 3.92,
              0.005);
    auto const checked = validate(normal_budget, normal_trials, 0.95);
    EXPECT_DOUBLE_EQ(checked.tolerance, 0.05);
    EXPECT_TRUE(checked.valid);

    // Table 3, rectangular of the same width: +-2 sqrt(3) (2 - (3/5)^(1/4)), in closed form.
    auto const rectangular_trials = monte_carlo(sum_of_four, set_of(distribution::rectangular, 1.0), 1000000);
    double const exact = 2.0 * std::sqrt(3.0) * (2.0 - std::pow(0.6, 0.25));
    guide.add("exact", exact, 3.88, 0.005);
    EXPECT_NEAR(rectangular_trials.interval(0.95).upper, exact, 0.015);
    EXPECT_NEAR(rectangular_trials.interval(0.95).lower, -exact, 0.015);

    // Table 4, one much wider: 10.1 and [-17.0, 17.0], where the first-order result says 19.9 and fails.
    auto const wide = set_of(distribution::rectangular, 10.0);
    auto const wide_trials = adaptive_monte_carlo(sum_of_four, wide, 0.95, 3);
    auto const wide_budget = propagate(generic_sum, wide);
    guide.add("wide_budget.expanded_uncertainty(0.95)", wide_budget.expanded_uncertainty(0.95), 19.9, 0.05);
    EXPECT_NEAR(wide_trials.standard_uncertainty(), 10.15, 0.05);
    guide.add("wide_trials.interval(0.95).upper", wide_trials.interval(0.95).upper, 17.0, 0.05);
    auto const failed = validate(wide_budget, wide_trials, 0.95);
    EXPECT_DOUBLE_EQ(failed.tolerance, 0.5);
    EXPECT_FALSE(failed.valid);
    EXPECT_NEAR(failed.upper, 2.8, 0.15);  // 2.8 and 2.9 in two runs of the guide
    EXPECT_TRUE(validate(wide_budget, wide_trials, 0.95, 1).valid);
    guide.judges();
}

// 9.3, tables 5 and 6, nominally 100 g (the electronic edition has lost the point in 100 000.000 mg): first
// order 0.0539 mg, trials 0.0754 mg and [1.0834, 1.3825] (shortest).
TEST(Supplement1, MassCalibration93) {
    figures guide("jcgm_101_9_3");
    std::vector<input_quantity> const inputs{
        input_quantity::normal("reference", "mg", 100000.0, 0.050),
        input_quantity::normal("difference", "mg", 1.234, 0.020),
        input_quantity::rectangular("air", "kg/m3", 1.20, 0.10),
        input_quantity::rectangular("weight", "kg/m3", 8e3, 1e3),
        input_quantity::rectangular("density of the reference", "kg/m3", 8.00e3, 0.05e3)};
    auto const deviation = [](auto const& x) {
        return (x[0] + x[1]) * (1.0 + (x[2] - 1.2) * (1.0 / x[3] - 1.0 / x[4])) - 100000.0;
    };
    auto const budget = propagate(deviation, inputs);
    EXPECT_NEAR(budget.estimate, 1.2340, 1e-7);
    guide.add("budget.standard_uncertainty", budget.standard_uncertainty, 0.0539, 0.00005);
    EXPECT_NEAR(budget.estimate - budget.expanded_uncertainty(0.95), 1.1285, 0.0001);
    EXPECT_NEAR(budget.estimate + budget.expanded_uncertainty(0.95), 1.3395, 0.0001);
    auto const trials = monte_carlo(deviation, inputs, 1000000);
    EXPECT_NEAR(trials.estimate(), 1.2341, 0.0003);
    EXPECT_NEAR(trials.standard_uncertainty(), 0.0754, 0.0002);
    // The ends of the shortest interval of a million trials scatter by 0.0008 from seed to seed, those of the
    // guide's 0.72e6 trials by 0.001. The mean of nine seeds leaves the scatter of the guide.
    double lower = 0.0, upper = 0.0;
    for (std::uint64_t seed = 1; seed <= 9; ++seed) {
        auto const ends =
            monte_carlo(in_blocks(deviation), inputs, 1000000, {}, seed).shortest_interval(0.95);
        lower += ends.lower / 9.0;
        upper += ends.upper / 9.0;
    }
    EXPECT_NEAR(lower, 1.0834, 0.002);
    EXPECT_NEAR(upper, 1.3825, 0.002);
    EXPECT_FALSE(validate(budget, trials, 0.95, 1).valid);
    guide.judges();
}

TEST(Supplement1, NumericalTolerance792) {
    EXPECT_DOUBLE_EQ(numerical_tolerance(0.00035, 2), 0.000005);
    EXPECT_DOUBLE_EQ(numerical_tolerance(0.00035, 1), 0.00005);
    EXPECT_DOUBLE_EQ(numerical_tolerance(2.0, 1), 0.5);
}

// --- JCGM 106 ----------------------------------------------------------------------------------------------

TEST(Jcgm106, ConformanceProbabilities73And74) {
    figures guide("jcgm_106_7_3_and_7_4");
    double const none = std::numeric_limits<double>::infinity();
    guide.add("conformance_probability({-none, -5.40}, {-5.47, 0.05})",
              conformance_probability({-none, -5.40}, {-5.47, 0.05}), 0.92, 0.005);
    guide.add("conformance_probability({490.0, none}, {509.7, 8.6})",
              conformance_probability({490.0, none}, {509.7, 8.6}), 0.99, 0.005);
    guide.add("conformance_probability({12.5, 16.3}, {13.6, 1.8})",
              conformance_probability({12.5, 16.3}, {13.6, 1.8}), 0.66, 0.005);
    struct {
        double p, z;
    } const table_1[] = {{0.80, 0.84}, {0.90, 1.28}, {0.95, 1.64}, {0.99, 2.33}, {0.999, 3.09}};
    for (auto const& row : table_1) EXPECT_NEAR(numeric::normal_quantile(row.p), row.z, 0.005);
    guide.judges();
}

TEST(Jcgm106, GuardBands83) {
    figures guide("jcgm_106_8_3");
    double const none = std::numeric_limits<double>::infinity();
    // 8.3.2.3: a guard band of 2 u leaves at most 2.3 % of false acceptance.
    guide.add("1.0 - conformance_probability({-none, 10.0}, {10.0 - 2.0 * 0.5, 0.5})",
              1.0 - conformance_probability({-none, 10.0}, {10.0 - 2.0 * 0.5, 0.5}), 0.023, 0.0005);
    // 8.3.3.2: the speed above which 100 km/h has been exceeded with 99.9 %, u = 2 % of the speed.
    double const z = numeric::normal_quantile(0.999);
    double const speed = 100.0 / (1.0 - 0.02 * z);
    guide.add("speed", speed, 107.0, 0.5);
    EXPECT_NEAR(1.0 - conformance_probability({-none, 100.0}, {speed, 0.02 * speed}), 0.999, 1e-12);
    EXPECT_EQ(decide({-none, 100.0}, {speed * 1.001, 0.02 * speed}, 0.999),
              conformity_decision::does_not_conform);
    // Nandrolone: 9 degrees of freedom, 0.20 ug/L, limit 2.00; suspect from 2.37 (2.00 + 1.83 * 0.20) on.
    auto const accepted = acceptance_interval({2.00, none}, 0.20, 0.95, 9.0);
    guide.add("accepted.lower", accepted.lower, 2.37, 0.005);
    guide.judges();
}

TEST(Jcgm106, PrecisionResistors95) {
    figures guide("jcgm_106_9_5");
    auto const r = risks({1499.8, 1500.2}, {1499.82, 1500.18}, 1500.0, 0.12, 0.04);
    guide.add("r.conforming", r.conforming, 0.90, 0.005);
    guide.add("r.consumer", r.consumer, 0.01, 0.005);
    guide.add("r.producer", r.producer, 0.07, 0.005);
    guide.judges();
}

// 9.5.6: u0 a sixth of the tolerance, no guard band. Read off a graph by the guide, "about".
TEST(Jcgm106, ValueOfReducedUncertainty956) {
    figures guide("jcgm_106_9_5_6");
    double const tolerance = 6.0;
    auto const at_index = [&](double c) {
        return risks({-3.0, 3.0}, {-3.0, 3.0}, 0.0, 1.0, tolerance / (4.0 * c));
    };
    guide.add("at_index(2.0).consumer", at_index(2.0).consumer, 0.001, 0.0005);
    EXPECT_NEAR(at_index(2.0).producer, 0.015, 0.0015);
    EXPECT_NEAR(at_index(10.0).consumer, 0.0004, 0.0001);
    EXPECT_NEAR(at_index(10.0).producer, 0.0007, 0.0001);
    guide.judges();
}

}  // namespace
}  // namespace aqueth
