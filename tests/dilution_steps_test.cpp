// SPDX-License-Identifier: BSL-1.0
#include <aqueth/dilution_steps.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

namespace aqueth {
namespace {

using test::expect_refusal;

parcel spirit() { return parcel::of(2.0 * litre, by_volume(70.0), celsius(24.0)); }
liquid water() { return water_at(celsius(15.0)); }

TEST(StepwiseDilution, StepsTakeTheWaterOfOneDilution) {
    stepwise_dilution d(spirit(), water(), celsius(18.0));
    for (double const strength : {60.0, 50.0, 43.0}) static_cast<void>(d.down_to(by_volume(strength)));
    auto const once = dilute(spirit(), by_volume(43.0), water(), celsius(18.0));
    ASSERT_EQ(d.steps().size(), 3u);
    EXPECT_NEAR(in(d.all_added().mass(), once.addition.mass()), 1.0, 1e-13);
    EXPECT_NEAR(in(d.current().mass(), once.product.mass()), 1.0, 1e-13);
    EXPECT_NEAR(in(d.current().volume(), once.product.volume()), 1.0, 1e-13);
    EXPECT_NEAR(d.current().strength().percent(), 43.0, 1e-10);
}

TEST(StepwiseDilution, EachStepHasItsStrengthAndTheTemperatureOfTheRoom) {
    stepwise_dilution d(spirit(), water(), celsius(18.0));
    for (double const strength : {60.0, 50.0, 43.0}) {
        dilution_step const& step = d.down_to(by_volume(strength));
        EXPECT_NEAR(step.product.strength().percent(), strength, 1e-10);
        EXPECT_DOUBLE_EQ(step.product.temperature().celsius(), 18.0);
        EXPECT_DOUBLE_EQ(
            step.scale_shows.value(),
            balance_indication(step.product.mass(), step.product.mass() / step.product.volume()).value());
    }
}

// The first step starts from the spirit's temperature, the others from that of the room.
TEST(StepwiseDilution, WarmsAsMixingDoes) {
    stepwise_dilution d(spirit(), water(), celsius(18.0));
    auto const first = d.down_to(by_volume(60.0));
    ASSERT_TRUE(first.at_once);
    EXPECT_DOUBLE_EQ(first.at_once->celsius(),
                     mix({spirit(), first.addition}).product.temperature().celsius());
    auto const second = d.down_to(by_volume(50.0));
    ASSERT_TRUE(second.at_once);
    EXPECT_DOUBLE_EQ(second.at_once->celsius(),
                     mix({first.product, second.addition}).product.temperature().celsius());
    EXPECT_GT(second.at_once->celsius(), 18.0);
}

TEST(StepwiseDilution, KnowsNoWarmthBelowZero) {
    stepwise_dilution d(spirit().at(celsius(-5.0)), water_at(celsius(10.0)), celsius(18.0));
    EXPECT_FALSE(d.down_to(by_volume(60.0)).at_once);
    EXPECT_TRUE(d.down_to(by_volume(50.0)).at_once);
}

TEST(StepwiseDilution, PortionsAreEqualAndEndAtTheTarget) {
    stepwise_dilution d(spirit(), water(), celsius(18.0));
    d.in_portions(by_volume(43.0), 4);
    ASSERT_EQ(d.steps().size(), 4u);
    for (dilution_step const& step : d.steps())
        EXPECT_NEAR(in(step.addition.mass(), d.steps().front().addition.mass()), 1.0, 1e-14);
    EXPECT_NEAR(d.current().strength().percent(), 43.0, 1e-10);
}

TEST(StepwiseDilution, RefusesToGoUp) {
    stepwise_dilution d(spirit(), water(), celsius(18.0));
    static_cast<void>(d.down_to(by_volume(50.0)));
    expect_refusal([&] { static_cast<void>(d.down_to(by_volume(60.0))); }, "target strength");
    expect_refusal([&] { d.in_portions(by_volume(43.0), 0); }, "number of additions");
    EXPECT_EQ(d.steps().size(), 1u);
}

}  // namespace
}  // namespace aqueth
