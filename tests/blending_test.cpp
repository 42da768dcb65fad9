// SPDX-License-Identifier: BSL-1.0
// Published dilution tables are checked in published/.
#include <aqueth/blending.hpp>
#include <aqueth/caloric.hpp>
#include <aqueth/freezing.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <limits>
#include <random>
#include <string>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

parcel spirit(double litres, double percent, double t = 20.0) {
    return parcel::of(litres * litre, by_volume(percent), celsius(t));
}

TEST(Mix, ConservesEthanolAndWater) {
    auto const a = spirit(1.3, 88.0, 25.0);
    auto const b = spirit(2.1, 31.0, 12.0);
    auto const result = mix({a, b}, celsius(20.0));
    EXPECT_DOUBLE_EQ(result.product.ethanol().value(), (a.ethanol() + b.ethanol()).value());
    EXPECT_DOUBLE_EQ(result.product.water().value(), (a.water() + b.water()).value());
}

TEST(Mix, LosesVolumeAndSaysHowMuch) {
    auto const result = mix({spirit(1.0, 96.0), water(1.0 * kilogram, celsius(20.0))}, celsius(20.0));
    EXPECT_GT(result.contraction, 0.0 * litre);
    EXPECT_DOUBLE_EQ(result.contraction.value(), (result.sum_of_volumes - result.product.volume()).value());
    EXPECT_NEAR(result.contraction_percent(), 100.0 * in(result.contraction, result.sum_of_volumes), 1e-12);
}

TEST(Mix, AParcelWithItselfIsTwiceTheParcel) {
    auto const a = spirit(1.3, 55.0);
    auto const result = mix({a, a}, celsius(20.0));
    EXPECT_DOUBLE_EQ(result.product.mass().value(), 2.0 * a.mass().value());
    EXPECT_DOUBLE_EQ(result.product.composition().value(), a.composition().value());
    EXPECT_NEAR(in(result.contraction, millilitre), 0.0, 1e-9);
}

TEST(Mix, OrderAndGroupingDoNotMatter) {
    std::mt19937 random(3);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    for (int trial = 0; trial < 200; ++trial) {
        std::vector<parcel> parts;
        for (int i = 0; i < 5; ++i) parts.push_back(spirit(0.01 + 5.0 * unit(random), 100.0 * unit(random)));
        auto const whole = mix(parts, celsius(20.0)).product;
        auto const grouped = mix({mix(std::span(parts).first(2), celsius(20.0)).product,
                                  mix(std::span(parts).last(3), celsius(20.0)).product},
                                 celsius(20.0))
                                 .product;
        std::shuffle(parts.begin(), parts.end(), random);
        auto const shuffled = mix(parts, celsius(20.0)).product;
        for (auto const& other : {grouped, shuffled}) {
            EXPECT_NEAR(other.mass().value(), whole.mass().value(), 1e-13);
            EXPECT_NEAR(other.composition().value(), whole.composition().value(), 1e-14);
        }
    }
}

TEST(Mix, RefusesNothing) {
    expect_refusal([] { return mix(std::span<parcel const>(), celsius(20.0)); }, "number of parcels");
    expect_refusal(
        [] {
            return mix({spirit(0.0, 40.0), spirit(0.0, 50.0)}, celsius(20.0));
        },
        "mass of all parcels");
    expect_refusal([] { return mix({spirit(1.0, 40.0)}, celsius(90.0)); }, "temperature");
    expect_refusal([] { return mix({spirit(1.0, 40.0), spirit(1.0, 2.0)}, celsius(-5.0)); }, "temperature");
}

TEST(Mix, NamesTheTemperaturesThatWouldDoForEveryPart) {
    std::vector<parcel> const parts{spirit(1.0, 96.0), spirit(1.0, 5.0), spirit(0.0, 0.0)};
    double const coldest = freezing_point(parts[1].composition()).celsius();
    double const boils =
        plain::hottest_liquid_celsius(mix(parts, celsius(20.0)).product.composition().value());
    for (double const t : {90.0, boils + 0.01, coldest - 0.001, -20.0, -273.0, nan, infinity}) {
        refusal const error = expect_refusal([&] { return mix(parts, celsius(t)); }, "temperature");
        EXPECT_EQ(error.lower(), coldest);
        EXPECT_EQ(error.upper(), boils);
    }
    EXPECT_NO_THROW(static_cast<void>(mix(parts, celsius(coldest))));
    EXPECT_NO_THROW(static_cast<void>(mix(parts, celsius(boils))));
}

TEST(Mix, WithoutATemperatureComesOutWarmAndConservesEnthalpy) {
    auto const a = spirit(2.0, 80.0, 31.0);
    auto const b = water(1.6 * kilogram, celsius(15.0));
    auto const product = mix({a, b}).product;
    EXPECT_GT(product.temperature(), celsius(25.0));  // without the heat of mixing about 21 °C
    auto const heat = [](parcel const& p) {
        return p.mass() * enthalpy_of_liquid(p.composition(), p.temperature());
    };
    EXPECT_NEAR(heat(product).value(), (heat(a) + heat(b)).value(), 1e-6);
    // the same liquid twice has no heat of mixing
    EXPECT_NEAR(mix({a, a}).product.temperature().celsius(), 31.0, 1e-9);
    // ice water, the warm end, an empty part and a part alone
    EXPECT_NO_THROW(static_cast<void>(mix({spirit(1.0, 40.0, 20.0), water(1.0 * kilogram, celsius(0.0))})));
    EXPECT_NEAR(mix({spirit(1.0, 40.0, 40.0), spirit(1.0, 40.0, 40.0)}).product.temperature().celsius(), 40.0,
                1e-9);
    EXPECT_EQ(mix({spirit(1.0, 96.0, -10.0), spirit(0.0, 50.0, 20.0)}).product.temperature(), celsius(-10.0));
    EXPECT_EQ(dilute(spirit(1.0, 45.0, -10.0), by_volume(45.0), water_at(celsius(20.0))).addition.mass(),
              0.0 * kilogram);
    // so warm that the mixture would boil, too cold for the heats
    EXPECT_GT(
        mix({spirit(1.0, 100.0, 39.0), water(1.0 * kilogram, celsius(39.0))}).product.temperature().celsius(),
        40.0);
    expect_refusal(
        [] {
            return mix({spirit(1.0, 100.0, 78.0), water(1.0 * kilogram, celsius(99.0))});
        },
        "temperature of the mixture without loss of heat");
    expect_refusal(
        [] {
            return mix({spirit(1.0, 96.0, -5.0), water(1.0 * kilogram, celsius(20.0))});
        },
        "temperature of a part");
}

TEST(Mix, SaysWhatHelpsWhenTheMixtureComesOutTooCold) {
    // By the model's enthalpies of mixing, strong and weaker spirit cool each other near 0 °C.
    std::vector<parcel> const parts{spirit(1.0, 50.0, 0.0), spirit(1.0, 95.0, 0.0)};
    refusal const error =
        expect_refusal([&] { return mix(parts); }, "temperature of the mixture without loss of heat");
    EXPECT_EQ(error.unit(), "°C");
    EXPECT_EQ(error.lower(), 0.0);
    double const product = mix(parts, celsius(5.0)).product.composition().value();
    EXPECT_NEAR(error.upper(), plain::hottest_liquid_celsius(product),
                2e-9);  // with the allowance for rounding
    EXPECT_NE(error.reason().find("give the temperature at which it will be measured"), std::string::npos);
    // The heat capacity gives that temperature: it is as far below 0 °C as the same parts at 5 °C end below 5
    // °C.
    double const from_5 =
        mix({spirit(1.0, 50.0, 5.0), spirit(1.0, 95.0, 5.0)}).product.temperature().celsius();
    EXPECT_LT(error.value(), -0.2);
    EXPECT_NEAR(error.value(), from_5 - 5.0, 0.2);  // the heat of mixing changes with temperature
    EXPECT_NO_THROW(static_cast<void>(mix(parts, celsius(0.0))));
    // The end of the range itself is accepted.
    EXPECT_EQ(mix({spirit(1.0, 95.0, 0.0), spirit(2.0, 95.0, 0.0)}).product.temperature(), celsius(0.0));
    EXPECT_NEAR(mix({spirit(1.0, 93.0, 0.0), spirit(3.0, 93.0, 0.0)}).product.temperature().celsius(), 0.0,
                1e-9);
}

TEST(Dilute, WithoutATemperatureComesOutWarm) {
    auto const plan = dilute(spirit(2.0, 80.0, 25.0), by_volume(45.0), water_at(celsius(25.0)));
    EXPECT_GT(plan.product.temperature(), celsius(29.0));
    EXPECT_NEAR(plan.product.strength().percent(), 45.0, 1e-12);
    auto const steps =
        dilute_in_additions(spirit(2.0, 80.0, 25.0), by_volume(45.0), 3, water_at(celsius(25.0)));
    EXPECT_NEAR(steps.back().product.temperature().celsius(), plan.product.temperature().celsius(), 1e-9);
}

TEST(Dilute, ReachesTheTarget) {
    for (double from = 20.0; from <= 100.0; from += 10.0) {
        for (double to_percent = 5.0; to_percent <= from; to_percent += 5.0) {
            auto const plan = dilute(spirit(2.0, from, 28.0), by_volume(to_percent), water_at(celsius(12.0)),
                                     celsius(23.0));
            EXPECT_NEAR(plan.product.strength().percent(), to_percent, 1e-12);
            EXPECT_EQ(plan.product.temperature(), celsius(23.0));
            EXPECT_EQ(plan.addition.temperature(), celsius(12.0));
            EXPECT_EQ(plan.addition.composition().value(), 0.0);
        }
    }
}

TEST(Dilute, ToItsOwnStrengthNeedsNoWater) {
    auto const plan = dilute(spirit(2.0, 45.0), by_volume(45.0), water_at(celsius(20.0)), celsius(20.0));
    EXPECT_EQ(plan.addition.mass().value(), 0.0);
    EXPECT_NEAR(in(plan.contraction, millilitre), 0.0, 1e-9);
}

TEST(Dilute, ToItsOwnStrengthIsNotRefusedForTheRoundingOfAConversion) {
    for (int k = 1; k < 1000; ++k) {
        for (parcel const& own :
             {spirit(1.0, 0.1 * k), parcel::of(kilogram, by_mass(0.1 * k), celsius(20.0))}) {
            auto const expect_little = [&](auto const& target) {
                auto const plan = dilute(own, target, water_at(celsius(20.0)), celsius(20.0));
                EXPECT_LE(in(plan.addition.mass(), own.mass()), 1e-12 / own.composition().value());
                auto const none =
                    fortify(own, target, liquid::of(by_mass(100.0), celsius(20.0)), celsius(20.0));
                EXPECT_LE(in(none.addition.mass(), own.mass()), 1e-12 / (1.0 - own.composition().value()));
                auto const made =
                    make_up(litre, celsius(20.0), target, liquid::of(own.composition(), celsius(20.0)),
                            water_at(celsius(20.0)));
                EXPECT_LE(in(made.diluent.mass(), own.mass()), 1e-12 / own.composition().value());
            };
            expect_little(own.strength());
            expect_little(own.strength<us_proof>());
            expect_little(own.strength<mole_fraction>());
        }
    }
    // More than rounding is refused, and the message shows the difference.
    refusal const error = expect_refusal(
        [] { return dilute(spirit(1.0, 40.0), by_volume(40.0 + 1e-9), water_at(celsius(20.0))); },
        "target strength");
    EXPECT_NE(std::string(error.what()).find("strength 40.000000001 % vol"), std::string::npos)
        << error.what();
}

TEST(Dilute, TakesTheTargetInAnyBasis) {
    auto const by_proof = dilute(spirit(2.0, 80.0), proof(90.0), water_at(celsius(20.0)), celsius(20.0));
    EXPECT_NEAR(by_proof.product.strength<us_proof>().degrees(), 90.0, 1e-12);
    auto const massed = dilute(spirit(2.0, 80.0), by_mass(33.0), water_at(celsius(20.0)), celsius(20.0));
    EXPECT_NEAR(massed.product.composition().percent(), 33.0, 1e-12);
}

TEST(Dilute, RefusesAStrongerOrEmptyTarget) {
    auto const error = expect_refusal(
        [] { return dilute(spirit(2.0, 60.0), by_volume(70.0), water_at(celsius(20.0)), celsius(20.0)); },
        "target strength");
    EXPECT_NEAR(error.upper(), 60.0, 1e-9);
    EXPECT_EQ(error.unit(), "% vol at 20 °C");
    expect_refusal(
        [] { return dilute(spirit(2.0, 60.0), by_volume(0.0), water_at(celsius(20.0)), celsius(20.0)); },
        "target strength");
    expect_refusal(
        [] { return dilute(spirit(2.0, 60.0), by_volume(40.0), water_at(celsius(-3.0)), celsius(20.0)); },
        "temperature");
    expect_refusal(
        [] { return dilute(spirit(2.0, 60.0), by_volume(40.0), water_at(celsius(20.0)), celsius(nan)); },
        "temperature");
}

// A weaker spirit dilutes as water does: mixing the computed parts gives the target.
TEST(Dilute, WithAWeakerSpirit) {
    auto const start = spirit(2.0, 80.0);
    auto const faints = liquid::of(by_volume(20.0), celsius(15.0));
    auto const plan = dilute(start, by_volume(45.0), faints, celsius(20.0));
    EXPECT_EQ(plan.addition.temperature(), celsius(15.0));
    EXPECT_NEAR(plan.addition.strength().percent(), 20.0, 1e-12);
    EXPECT_NEAR(mix({start, plan.addition}, celsius(20.0)).product.strength().percent(), 45.0, 1e-12);
    EXPECT_GT(plan.addition.mass(),
              dilute(start, by_volume(45.0), water_at(celsius(15.0)), celsius(20.0)).addition.mass());
    auto const made = make_up(10.0 * litre, celsius(20.0), by_volume(45.0), start.liquid(), faints);
    EXPECT_NEAR(mix({made.spirit, made.diluent}, celsius(20.0)).product.strength().percent(), 45.0, 1e-12);
    EXPECT_NEAR(in(made.product.volume(), litre), 10.0, 1e-12);
    expect_refusal([&] { return dilute(start, by_volume(20.0), faints); }, "target strength");
}

// The two strengths differ by 1e-7 mass fraction, less than a dilution can reach into.
TEST(Dilute, NamesTheRangeInOrderNextToTheDiluent) {
    auto const faints = liquid::of(mass_fraction(0.3), celsius(20.0));
    auto const start = parcel::of(2.0 * kilogram, mass_fraction(0.3 + 1e-7), celsius(20.0));
    auto const error =
        expect_refusal([&] { return dilute(start, by_mass(20.0), faints); }, "target strength");
    EXPECT_LE(error.lower(), error.upper());
    EXPECT_EQ(dilute(start, start.composition(), faints, celsius(20.0)).addition.mass(), units::mass());
}

TEST(Dilute, RefusesAStrongerDiluent) {
    auto const strong = liquid::of(by_volume(90.0), celsius(20.0));
    auto const start = spirit(2.0, 80.0);
    expect_refusal([&] { return dilute(start, by_volume(85.0), strong); }, "strength of the diluent");
    expect_refusal([&] { return make_up(litre, celsius(20.0), by_volume(85.0), start.liquid(), strong); },
                   "strength of the diluent");
}

TEST(DiluteInAdditions, EndsWhereOneAdditionEnds) {
    auto const start = spirit(2.0, 80.0, 24.0);
    auto const steps = dilute_in_additions(start, by_volume(40.0), 4, water_at(celsius(18.0)), celsius(22.0));
    ASSERT_EQ(steps.size(), 4u);
    auto const whole = dilute(start, by_volume(40.0), water_at(celsius(18.0)), celsius(22.0));
    EXPECT_NEAR(steps.back().product.strength().percent(), 40.0, 1e-12);
    EXPECT_NEAR(steps.back().product.mass().value(), whole.product.mass().value(), 1e-14);
    double added = 0.0;
    double previous = 80.0;
    for (auto const& step : steps) {
        EXPECT_NEAR(in(step.addition.mass(), whole.addition.mass()), 0.25, 1e-15);
        EXPECT_LT(step.product.strength().percent(), previous);
        previous = step.product.strength().percent();
        added += step.addition.mass().value();
    }
    EXPECT_NEAR(added, whole.addition.mass().value(), 1e-14);
    for (int const bad : {0, -1, 1001}) {
        expect_refusal(
            [&] {
                return dilute_in_additions(start, by_volume(40.0), bad, water_at(celsius(18.0)),
                                           celsius(22.0));
            },
            "number of additions");
    }
}

TEST(Fortify, ReachesTheTarget) {
    auto const plan = fortify(spirit(5.0, 12.0), by_volume(18.0), liquid::of(by_volume(96.0), celsius(20.0)),
                              celsius(20.0));
    EXPECT_NEAR(plan.product.strength().percent(), 18.0, 1e-12);
    EXPECT_NEAR(plan.addition.strength().percent(), 96.0, 1e-12);
    EXPECT_DOUBLE_EQ(plan.product.mass().value(), (spirit(5.0, 12.0).mass() + plan.addition.mass()).value());
}

TEST(Fortify, RefusesWhatTheStockCannotReach) {
    auto const fortify_to = [](double target) {
        return fortify(spirit(5.0, 12.0), by_volume(target), liquid::of(by_volume(60.0), celsius(20.0)),
                       celsius(20.0));
    };
    expect_refusal([&] { return fortify_to(61.0); }, "target strength");
    expect_refusal([&] { return fortify_to(11.0); }, "target strength");
    expect_refusal([&] { return fortify_to(60.0); }, "stronger spirit, above the target by");
    auto const error = expect_refusal(
        [] {
            return fortify(spirit(5.0, 12.0), by_volume(11.0), liquid::of(by_volume(10.0), celsius(20.0)),
                           celsius(20.0));
        },
        "strength of the stronger spirit");
    EXPECT_NEAR(error.lower(), 12.0, 1e-9);
    EXPECT_NEAR(error.upper(), 100.0, 1e-9);
}

TEST(MakeUp, GivesTheVolumeAndTheStrength) {
    auto const plan = make_up(10.0 * litre, celsius(20.0), by_volume(40.0),
                              liquid::of(by_volume(92.0), celsius(26.0)), water_at(celsius(14.0)));
    EXPECT_NEAR(in(plan.product.volume(), litre), 10.0, 1e-13);
    EXPECT_NEAR(plan.product.strength().percent(), 40.0, 1e-12);
    EXPECT_NEAR(plan.spirit.strength().percent(), 92.0, 1e-12);
    EXPECT_EQ(plan.spirit.temperature(), celsius(26.0));
    EXPECT_EQ(plan.diluent.temperature(), celsius(14.0));
    // the same plan the other way round
    auto const check = dilute(plan.spirit, by_volume(40.0), water_at(celsius(14.0)), celsius(20.0));
    EXPECT_NEAR(check.addition.mass().value(), plan.diluent.mass().value(), 1e-13);
}

TEST(MakeUp, GivesTheMassAndTheStrength) {
    auto const stock = liquid::of(by_volume(92.0), celsius(26.0));
    auto const plan =
        make_up(10.0 * kilogram, by_volume(40.0), stock, water_at(celsius(14.0)), celsius(20.0));
    EXPECT_NEAR(in(plan.product.mass(), kilogram), 10.0, 1e-14);
    EXPECT_NEAR(plan.product.strength().percent(), 40.0, 1e-12);
    EXPECT_EQ(plan.spirit.liquid(), stock);
    EXPECT_EQ(plan.product.temperature(), celsius(20.0));
    // the same as the volume that this mass has
    auto const by_its_volume =
        make_up(plan.product.volume(), celsius(20.0), by_volume(40.0), stock, water_at(celsius(14.0)));
    EXPECT_NEAR(by_its_volume.spirit.mass().value(), plan.spirit.mass().value(), 1e-13);
    // left out, the temperature is that without loss of heat
    auto const warm = make_up(10.0 * kilogram, by_volume(40.0), stock, water_at(celsius(14.0)));
    EXPECT_GT(warm.product.temperature(), celsius(20.0));
    for (double const bad : {-1.0, nan, infinity}) {
        expect_refusal(
            [&] {
                return make_up(bad * kilogram, by_volume(40.0), stock, water_at(celsius(14.0)),
                               celsius(20.0));
            },
            "mass");
    }
    auto const error = expect_refusal(
        [&] { return make_up(kilogram, by_volume(95.0), stock, water_at(celsius(14.0)), celsius(20.0)); },
        "target strength");
    EXPECT_NEAR(error.upper(), 92.0, 1e-9);
    EXPECT_EQ(error.unit(), "% vol at 20 °C");
}

TEST(MakeUp, OfWaterFromWaterTakesNoOther) {
    auto const made = make_up(10.0 * litre, celsius(20.0), by_volume(0),
                              liquid::of(by_volume(0), celsius(20.0)), water_at(celsius(14.0)));
    EXPECT_NEAR(in(made.spirit.volume(), litre), 10.0, 1e-12);
    EXPECT_EQ(made.diluent.mass().value(), 0.0);
}

TEST(MakeUp, RefusesTheImpossible) {
    auto const make = [](double litres, double target, double stock) {
        return make_up(litres * litre, celsius(20.0), by_volume(target),
                       liquid::of(by_volume(stock), celsius(20.0)), water_at(celsius(20.0)));
    };
    expect_refusal([&] { return make(1.0, 60.0, 50.0); }, "target strength");
    expect_refusal([&] { return make(-1.0, 40.0, 50.0); }, "volume");
    expect_refusal([&] { return make(infinity, 40.0, 50.0); }, "volume");
    expect_refusal([&] { return make(nan, 40.0, 50.0); }, "volume");
}

}  // namespace
}  // namespace aqueth
