// SPDX-License-Identifier: BSL-1.0
#include "expect_refusal.hpp"

#include <aqueth/metrology/instruments.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/metrology/monte_carlo.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/refraction.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(Refraction, GivesWhatThePlainFloorGives) {
    for (double const degrees : {0.0, 8.0, 20.0, 70.0}) {
        auto const n = refractive_index_of(brix(degrees));
        EXPECT_EQ(n.value(), plain::refractive_index_from_brix(degrees).value);
        EXPECT_NEAR(brix_of(n).degrees(), degrees, 1e-8);
    }
    EXPECT_EQ(refractive_index_of(by_mass(40.0)).value(),
              plain::refractive_index<double>({0.4, 0.0}, sweetener::sucrose).value);
    auto const spirit = parcel::of(litre, by_mass(40.0), celsius(25.0));
    EXPECT_EQ(refractive_index_of(sweetened::of(spirit, 0.0 * gram)), refractive_index_of(by_mass(40.0)));
    EXPECT_EQ(refractive_index_of(sweetened::of(spirit.with_mass(units::mass()), 0.0 * gram)),
              refractive_index_of(by_mass(40.0)));
}

// The Quillbeck wash of 1.085, measured with a hydrometer and with a refractometer after fermentation: what
// both together say without the original gravity, and each with it.
TEST(Refraction, AWashMeasuredThreeWays) {
    specific_gravity const original(1.085);
    wash const truth = fermented_wash(25.0 * litre, original, specific_gravity(0.992), celsius(20.0));
    brix const shown = brix_of(refractive_index_of(truth));
    EXPECT_GT(shown.degrees(), truth.extract().degrees() + 4.0);  // alcohol raises the reading

    wash const by_index = fermented_wash(25.0 * litre, original, shown, celsius(20.0));
    EXPECT_NEAR(by_index.strength().percent(), truth.strength().percent(), 0.02);
    EXPECT_NEAR(by_index.extract().degrees(), truth.extract().degrees(), 0.02);

    wash const by_both =
        wash_from_gravity_and_index(25.0 * litre, truth.specific_gravity(), shown, celsius(20.0));
    EXPECT_NEAR(by_both.strength().percent(), truth.strength().percent(), 0.03);
    EXPECT_NEAR(by_both.extract().degrees(), truth.extract().degrees(), 0.03);
    EXPECT_NEAR(in(by_both.volume(), litre), 25.0, 1e-9);
}

// Density to 0.1 kg/m3 and index to 0.0001: alcohol to 0.084 % mass, extract to 0.034 %.
TEST(Refraction, BudgetOfTwoReadingsAgreesWithDraws) {
    namespace model = measurement_model;
    for (auto const& [alcohol, solids] :
         {std::pair{0.10, 0.02}, std::pair{0.098, 0.0}, std::pair{0.05, 0.05}}) {
        double const rho = aqueth::model::sugar_solution::density(alcohol, solids, sweetener::sucrose, 20.0);
        double const n = aqueth::model::refraction::index(alcohol, solids, sweetener::sucrose);
        std::vector<input_quantity> const inputs{
            input_quantity::normal("density", "kg/m3", rho, 0.1),
            input_quantity::normal("refractive index", "1", n, 0.0001),
        };
        model::alcohol_and_extract<double> const near{alcohol, solids};
        auto const ethanol = [&near](auto const& x) {
            return 100.0 * model::from_density_and_index(x[0], x[1], near).alcohol;
        };
        auto const extract = [&near](auto const& x) {
            return 100.0 * model::from_density_and_index(x[0], x[1], near).extract;
        };
        auto const a = propagate(ethanol, inputs), e = propagate(extract, inputs);
        EXPECT_NEAR(a.estimate, 100.0 * alcohol, 1e-9);
        EXPECT_NEAR(e.estimate, 100.0 * solids, 1e-9);
        EXPECT_NEAR(a.standard_uncertainty, 0.084, 0.002);
        EXPECT_NEAR(e.standard_uncertainty, 0.034, 0.002);
        auto const trials_a = monte_carlo(ethanol, inputs, 50000),
                   trials_e = monte_carlo(extract, inputs, 50000);
        EXPECT_NEAR(trials_a.standard_uncertainty() / a.standard_uncertainty, 1.0, 0.015);
        EXPECT_NEAR(trials_e.standard_uncertainty() / e.standard_uncertainty, 1.0, 0.015);
        std::printf("%.1f %% mass, %.1f °P: u %.3f %% mass, %.3f °P; draws %.3f and %.3f\n", 100.0 * alcohol,
                    100.0 * solids, a.standard_uncertainty, e.standard_uncertainty,
                    trials_a.standard_uncertainty(), trials_e.standard_uncertainty());
    }
}

TEST(Refraction, MeasurementModelIsTheCheckedFunction) {
    for (double const rho : {985.0, 1000.0, 1040.0}) {
        auto const found = plain::wash_from_density_and_index(rho, 1.352).value;
        measurement_model::alcohol_and_extract<double> const near{found.ethanol_mass_fraction + 0.01,
                                                                  found.plato / 100.0 + 0.01};
        auto const again = measurement_model::from_density_and_index(rho, 1.352, near);
        EXPECT_NEAR(again.alcohol, found.ethanol_mass_fraction, 1e-10);
        EXPECT_NEAR(again.extract, found.plato / 100.0, 1e-10);
    }
}

TEST(Methanol, IsFoundWhereItWasPut) {
    auto const rho = 948.0 * kilogram_per_cubic_metre;
    auto const none = find_methanol(rho, refractive_index(1.35533));
    EXPECT_NEAR(none.share, 0.0, 0.002);
    auto const some = find_methanol(rho, refractive_index(1.3510));
    EXPECT_GT(some.share, 0.2);
    EXPECT_NEAR(some.share, (1.35533 - 1.3510) * some.share_per_index, 0.002);
    expect_refusal([&] { return find_methanol(rho, refractive_index(1.36)); }, "refractive index");
    expect_refusal([&] { return find_methanol(995.0 * kilogram_per_cubic_metre, refractive_index(1.334)); },
                   "density");
}

TEST(Refraction, Refuses) {
    expect_refusal([] { return refractive_index(1.2); }, "refractive index");
    expect_refusal([] { return brix(-1.0); }, "refractometer reading");
    expect_refusal([] { return refractive_index_of(by_mass(99.0)); }, "mass fraction");
    expect_refusal([] { return brix_of(refractive_index(1.33)); }, "refractive index");
    specific_gravity const original(1.085);
    expect_refusal([&] { return fermented_wash(litre, original, brix(25.0), celsius(20.0)); },
                   "refractometer reading");
    expect_refusal([&] { return fermented_wash(litre, original, brix(8.0), celsius(50.0)); }, "temperature");
    expect_refusal(
        [&] { return wash_from_gravity_and_index(litre, specific_gravity(0.99), brix(0.0), celsius(20.0)); },
        "refractive index");
    expect_refusal(
        [&] { return wash_from_gravity_and_index(litre, specific_gravity(1.0), brix(8.0), celsius(50.0)); },
        "temperature");
}

}  // namespace
}  // namespace aqueth
