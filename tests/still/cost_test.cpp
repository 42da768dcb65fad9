// SPDX-License-Identifier: BSL-1.0
// What heat and water cost: against figures worked by hand.
#include <aqueth/still/cost.hpp>
#include <aqueth/still/heating.hpp>
#include <aqueth/still/run.hpp>

#include "expect_refusal.hpp"
#include "runs.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

// 8 kWh at 0.35 with an element; over gas of 0.12 a kWh at 40 %: 20 kWh and 2.40. 300 L of water at 4 a m3:
// 1.20.
TEST(Cost, ByHand) {
    auto const by_element = cost_of(8.0 * kilowatt_hour, heat_source::electricity(0.35));
    EXPECT_NEAR(by_element.money(), 2.80, 1e-12);
    EXPECT_NEAR(in(by_element.bought, kilowatt_hour), 8.0, 1e-12);
    auto const by_gas = cost_of(8.0 * kilowatt_hour, heat_source::gas(0.12, 0.4), 300.0 * litre, 4.0);
    EXPECT_NEAR(in(by_gas.bought, kilowatt_hour), 20.0, 1e-12);
    EXPECT_NEAR(by_gas.for_heat, 2.40, 1e-12);
    EXPECT_NEAR(by_gas.for_water, 1.20, 1e-12);
    EXPECT_NEAR(by_gas.money_per_litre(2.0 * litre), 1.80, 1e-12);
    EXPECT_NEAR(in(by_gas.bought_per_litre(2.0 * litre), kilowatt_hour), 10.0, 1e-12);
}

// A bottle of 11 kg propane for 33 holds 11 x 46.4/3.6 = 141.8 kWh, 0.2328 a kWh; at 40 % a kWh of heat is
// 0.582.
TEST(Cost, GasByTheBottle) {
    auto const bottle = heat_source::fuel(3.0, 46.4e6 * joule_per_kilogram, 0.4);
    EXPECT_NEAR(bottle.price_per_kilowatt_hour(), 0.2328, 5e-5);
    EXPECT_NEAR(bottle.price_of(1.0 * kilowatt_hour), 0.5819, 5e-5);
    EXPECT_EQ(bottle.efficiency(), 0.4);
}

// A charge that is filled in hot saves its warming, and changes nothing else of the run.
TEST(Cost, PreheatedRunSavesItsWarming) {
    auto plan = test::until(condition::distillate_strength(by_volume(50)));
    auto const cold = distil(test::quillbeck_charge(), test::quillbeck(), plan, test::sea_level());
    plan.charged_at = celsius(70);
    auto const hot = distil(test::quillbeck_charge(), test::quillbeck(), plan, test::sea_level());
    auto const by_itself =
        heat_to_boil(test::quillbeck_charge(), test::quillbeck().pot, standard_atmosphere, celsius(70));
    // the rise of the boiling point by extract is linearized in a run: 0.1 mK
    EXPECT_NEAR(in(hot.warming.supplied, by_itself.supplied), 1.0, 1e-5);
    EXPECT_EQ(hot.boiling_time, cold.boiling_time);
    EXPECT_LT(cost_of(hot.energy(), heat_source::electricity(0.3)).money(),
              cost_of(cold.energy(), heat_source::electricity(0.3)).money());
    plan.charged_at = celsius(95);
    expect_refusal(
        [&] { return distil(test::quillbeck_charge(), test::quillbeck(), plan, test::sea_level()); },
        "temperature of the charge");
}

TEST(Cost, RefusesWhatCannotBe) {
    for (double const bad : {-0.1, std::nan(""), std::numeric_limits<double>::infinity()}) {
        expect_refusal([&] { return heat_source::electricity(bad); }, "price");
        expect_refusal([&] { return heat_source::fuel(bad, 46e6 * joule_per_kilogram, 0.4); }, "price");
        expect_refusal([&] { return cost_of(bad * kilowatt_hour, heat_source::electricity(0.3)); }, "heat");
        expect_refusal([&] { return cost_of(kilowatt_hour, heat_source::electricity(0.3), bad * litre); },
                       "volume");
        expect_refusal([&] { return cost_of(kilowatt_hour, heat_source::electricity(0.3), litre, bad); },
                       "price");
    }
    for (double const bad : {0.0, 1.01, std::nan("")})
        expect_refusal([&] { return heat_source::gas(0.1, bad); }, "efficiency of the heating");
    expect_refusal([] { return heat_source::fuel(1.0, 1.0 * joule_per_kilogram, 0.4); },
                   "heating value of the fuel");
    auto const c = cost_of(kilowatt_hour, heat_source::electricity(0.3));
    expect_refusal([&] { return c.money_per_litre(0.0 * litre); }, "collected volume");
    expect_refusal([&] { return c.bought_per_litre(0.0 * litre); }, "collected volume");
}

}  // namespace
}  // namespace aqueth
