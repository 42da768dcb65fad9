// SPDX-License-Identifier: BSL-1.0
#include <aqueth/blending.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/metrology/monte_carlo.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/vapour_uncertainty.hpp>

#include "measured_dilution.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace aqueth {
namespace {

namespace model = measurement_model;

TEST(MeasurementModel, GivesWhatTheTypedFunctionsGive) {
    for (double const percent : {5.0, 40.0, 84.0, 96.0}) {
        for (double const t : {2.0, 20.0, 31.0}) {
            double const w = model::mass_fraction(percent / 100.0);
            EXPECT_NEAR(w, to<mass_fraction>(by_volume(percent)).value(), 1e-15);
            EXPECT_NEAR(model::volume_fraction(w), percent / 100.0, 1e-15);
            double const read = model::mass_fraction_from_reading(percent / 100.0, t, 25e-6, 0.0);
            EXPECT_EQ(model::mass_fraction_from_reading(percent / 100.0, t), read);
            EXPECT_NEAR(read, alcoholometer{}.composition(by_volume(percent), celsius(t)).value(), 1e-15);
        }
    }
    auto const spirit = parcel::of(2.0 * kilogram, by_mass(74.0), celsius(25.0));
    auto const plan = dilute(spirit, by_mass(38.0), water_at(celsius(15.0)), celsius(20.0));
    double const water = model::water_to_add(2.0, 0.74, 0.38);
    EXPECT_NEAR(water, in(plan.addition.mass(), kilogram), 1e-14);
    EXPECT_NEAR(model::diluted(2.0, 0.74, water), 0.38, 1e-15);
}

using test::dilution;
using test::strength_of_product;
using test::strength_of_spirit;
using test::water_to_add;

// The estimates are the README's printed figures; the law of propagation must agree with a million trials
// within 1 % of the uncertainty. (A million trials give a standard deviation to 0.07 %.)
TEST(Dilution, BudgetAgreesWithAMillionDraws) {
    auto const inputs = dilution::inputs();
    auto const check = [&](auto const& measurand, double printed, double half_a_digit, char const* what) {
        auto const budget = propagate(measurand, inputs);
        auto const trials = monte_carlo(measurand, inputs, 1000000);
        double const off = trials.standard_uncertainty() / budget.standard_uncertainty - 1.0;
        std::string const name = std::string(what) + "_off_percent";
        ::testing::Test::RecordProperty(name, std::to_string(100.0 * off));
        std::printf("%-20s %.5f  u %.5f, %+.3f %% in 1e6 draws\n", what, budget.estimate,
                    budget.standard_uncertainty, 100.0 * off);
        EXPECT_NEAR(budget.estimate, printed, half_a_digit) << what;
        EXPECT_LT(std::abs(off), 0.01) << what;
        EXPECT_GT(budget.standard_uncertainty, 0.0) << what;
        double shares = 0.0;
        for (auto const& line : budget.lines) shares += line.share;
        EXPECT_NEAR(shares, 1.0, 1e-12) << what;
    };
    check(strength_of_spirit, 80.76, 0.005, "strength");
    check(water_to_add, 1.640, 0.0005, "water");
    check(strength_of_product, 45.0, 0.01, "product");
}

TEST(Dilution, DerivativesAgreeWithDifferencesOfTheTypedFunctions) {
    auto const inputs = dilution::inputs();
    auto const typed = [](std::span<double const> x) {
        auto const t = celsius(x[dilution::temperature] + x[dilution::thermometer] + x[dilution::scale]);
        auto const shown = by_volume(x[dilution::reading] + x[dilution::meter] + x[dilution::level]);
        auto const actual = alcoholometer(x[dilution::glass] * per_kelvin).strength(shown, t);
        auto const spirit = parcel::of((x[dilution::volume] + x[dilution::measure]) * millilitre, actual, t);
        return in(dilute(spirit, by_volume(45.0), water_at(celsius(15.0)), celsius(22.0)).addition.mass(),
                  kilogram);
    };
    auto const by_differences = propagate_by_differences(typed, inputs);
    auto const exact = propagate(water_to_add, inputs);
    EXPECT_NEAR(by_differences.estimate, exact.estimate, 1e-13);
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        if (i == dilution::formula || inputs[i].standard_uncertainty() == 0.0)
            continue;  // there is no typed function for it
        EXPECT_NEAR(by_differences.lines[i].sensitivity, exact.lines[i].sensitivity,
                    1e-7 * std::abs(exact.lines[i].sensitivity) + 1e-12)
            << inputs[i].name();
    }
}

// The vapour over a wash of 8 % vol, whose strength is known to 0.1 % vol: the model is by far the largest
// uncertainty.
TEST(Vapour, BudgetOfTheModelAgreesWithTheTypedFunctions) {
    double const x = to<mole_fraction>(by_volume(8.0)).value();
    auto const e = bubble_point(by_volume(8.0), 95.0 * kilopascal);
    std::vector<input_quantity> const inputs{
        input_quantity::normal("liquid", "", x, 0.0003),
        input_quantity::rectangular("pressure", "Pa", 95e3, 100.0),
        vapour_error(x),
    };
    auto const vapour = [](auto const& in) { return model::vapour_over(in[0], in[1], in[2]); };
    auto const budget = propagate(vapour, inputs);
    EXPECT_NEAR(budget.estimate, e.vapour.value(), 1e-14);
    EXPECT_NEAR(std::sqrt(budget.lines[2].share) * budget.standard_uncertainty, vapour_uncertainty(e), 1e-12);
    EXPECT_GT(budget.lines[2].share, 0.9);
    double const plain = model::vapour_over(x, 95e3);
    EXPECT_NEAR(plain, e.vapour.value(), 1e-14);
    auto const shifted = with_vapour_shifted(e, -1.0);
    EXPECT_NEAR(model::vapour_over(x, 95e3, -inputs[2].standard_uncertainty()), shifted.vapour.value(),
                1e-14);
}

}  // namespace
}  // namespace aqueth
