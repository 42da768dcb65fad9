// SPDX-License-Identifier: BSL-1.0
#include "expect_refusal.hpp"

#include <aqueth/blending.hpp>
#include <aqueth/metrology/instruments.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/metrology/monte_carlo.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/sweetening.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <string>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(Sweetened, WithoutSugarIsThePlainSpiritToTheDigit) {
    auto const spirit = parcel::of(2.0 * litre, by_volume(42.0), celsius(23.0));
    auto const same = sweetened::of(spirit, 0.0 * kilogram);
    EXPECT_EQ(same.mass(), spirit.mass());
    EXPECT_EQ(same.volume(), spirit.volume());
    EXPECT_EQ(same.density(celsius(11.0)), density(spirit.composition(), celsius(11.0)));
    EXPECT_EQ(same.strength(), spirit.strength());
    EXPECT_EQ(same.sugar_concentration().value(), 0.0);
    EXPECT_EQ(same.strength_doubt(), 0.0);
    EXPECT_TRUE(same.checked_by_analyses());
    alcoholometer const meter;
    EXPECT_EQ(reading(meter, same), meter.reading(spirit));
    EXPECT_EQ(strength_behind_sugar(meter, by_volume(43.0), celsius(23.0), 0.0 * gram_per_litre),
              meter.strength(by_volume(43.0), celsius(23.0)));
    auto const again = sweetened::of(2.0 * litre, by_volume(42.0), 0.0 * gram_per_litre, celsius(23.0));
    EXPECT_EQ(again.spirit(), spirit);
    auto const plan = sweeten(spirit, by_volume(30.0), 0.0 * gram_per_litre);
    auto const diluted = dilute(spirit, by_volume(30.0), water_at(celsius(20.0)), celsius(20.0));
    EXPECT_NEAR(plan.water.value(), diluted.addition.mass().value(), 1e-13);
    EXPECT_NEAR(plan.product.volume().value(), diluted.product.volume(celsius(20.0)).value(), 1e-16);
}

TEST(Sweetened, GivesWhatThePlainFloorGives) {
    auto const liqueur = sweetened::of(0.7 * litre, by_volume(25.0), 180.0 * gram_per_litre, celsius(15.0),
                                       sweetener::invert_sugar);
    EXPECT_NEAR(in(liqueur.volume(), litre), 0.7, 1e-12);
    EXPECT_NEAR(liqueur.strength().percent(), 25.0, 1e-10);
    EXPECT_NEAR(liqueur.sugar_concentration().value(), 180.0, 1e-9);
    EXPECT_EQ(liqueur.kind(), sweetener::invert_sugar);
    EXPECT_EQ(in(liqueur.volume(celsius(20.0)), litre),
              plain::sweetened_litres(liqueur.numbers(), 20.0).value);
    EXPECT_NEAR(liqueur.strength().value(), plain::sweetened_volume_fraction(liqueur.numbers()).value, 1e-14);
    EXPECT_EQ(liqueur.strength_doubt(),
              plain::strength_doubt_from_sugar(liqueur.strength().value(),
                                               liqueur.sugar_concentration().value(), liqueur.kind(), 15.0)
                  .value);
    EXPECT_FALSE(liqueur.checked_by_analyses());
    auto const warm = liqueur.at(celsius(30.0));
    EXPECT_EQ(warm.mass(), liqueur.mass());
    EXPECT_LT(warm.density(), liqueur.density());
    EXPECT_NEAR(sugar_behind_density(liqueur.density(celsius(20.0)), by_volume(25.0), sweetener::invert_sugar)
                    .value(),
                180.0, 1e-7);
    EXPECT_NEAR(in(liqueur.volume_of_the_sugar(), litre),
                in(liqueur.volume(celsius(20.0)), litre) - in(liqueur.spirit().volume(celsius(20.0)), litre),
                1e-15);
}

// A liqueur recipe, made by weighing and read back: the true strength is within the stated doubt, even if the
// sugar took 1 % more or less place than in water.
TEST(Sweetened, RecipeIsMadeAndReadBackWithinItsDoubt) {
    auto const cut = liquid::of(by_volume(75.0), celsius(21.0));
    auto const sugar = 250.0 * gram_per_litre;
    auto const plan = sweeten(5.0 * litre, by_volume(28.0), sugar, cut);
    EXPECT_NEAR(in(plan.product.volume(), litre), 5.0, 1e-10);
    EXPECT_NEAR(plan.product.strength().percent(), 28.0, 1e-10);
    EXPECT_NEAR(plan.product.sugar_concentration().value(), 250.0, 1e-8);
    EXPECT_NEAR(in(plan.sugar, kilogram), 1.25, 1e-10);
    EXPECT_NEAR((plan.spirit.mass() + plan.water + plan.sugar).value(), plan.product.mass().value(), 1e-14);
    EXPECT_NEAR(in(plan.spirit.volume(celsius(20.0)), litre) +
                    in(water(plan.water, celsius(20.0)).volume(), litre) +
                    in(plan.volume_of_the_sugar, litre) - in(plan.contraction, litre),
                5.0, 1e-10);

    density_hydrometer const meter(celsius(20.0));
    for (double const t : {12.0, 20.0, 30.0}) {
        auto const product = plan.product.at(celsius(t));
        auto const shown = reading(meter, product);
        EXPECT_NEAR(strength_behind_sugar(meter, shown, celsius(t), sugar).percent(), 28.0, 1e-8);
        // the same masses, if the dissolved sugar is bigger or smaller
        for (double const error : {-0.01, 0.01}) {
            auto const volume = product.volume() + error * plan.volume_of_the_sugar;
            auto const really = meter.reading_in(product.mass() / volume, celsius(t));
            double const percent = in(product.spirit().pure_alcohol(),
                                      product.volume(celsius(20.0)) + error * plan.volume_of_the_sugar) *
                                   100.0;
            double const read = strength_behind_sugar(meter, really, celsius(t), sugar).percent();
            double const doubt = 100.0 * product.strength_doubt();
            EXPECT_LT(std::abs(read - percent), 1.1 * doubt) << t << " °C, " << error;
            EXPECT_GT(std::abs(read - percent), 0.8 * doubt) << t << " °C, " << error;
        }
    }
    EXPECT_NEAR(100.0 * plan.product.strength_doubt(), 1.206, 0.001);
}

// Obscuration: an alcoholometer shows less than the strength. US practice for 80 to 100 proof: 0.4 degrees of
// proof for 100 mg of solids in 100 mL (27 CFR 30.32(b)), that is 0.2 % vol for 1 g/L.
TEST(Sweetened, ObscurationIsThatOfTheUsRule) {
    alcoholometer const meter;
    double mean = 0.0;
    for (double const percent : {40.0, 50.0}) {
        for (double const solids : {4.0, 6.0}) {  // 400 to 600 mg in 100 mL
            auto const spirit =
                sweetened::of(litre, by_volume(percent), solids * gram_per_litre, celsius(20.0));
            double const hidden = (percent - reading(meter, spirit).percent()) / solids;
            EXPECT_NEAR(hidden, 0.2, 0.04) << percent << " % vol, " << solids << " g/L";
            mean += 0.25 * hidden;
        }
    }
    EXPECT_NEAR(mean, 0.2, 0.015);
    auto const liqueur = sweetened::of(litre, by_volume(25.0), 200.0 * gram_per_litre, celsius(20.0));
    expect_refusal([&] { return reading(meter, liqueur); }, "density it floats by");
}

// The budget of a distilled sample against draws: 100 mL of a liqueur in a flask, distilled and made up in
// the same flask, read with an alcoholometer of class II.
TEST(DistilledSample, BudgetAgreesWithDraws) {
    using input = input_quantity;
    std::vector<input> const inputs{
        input::rectangular("flask, sample", "mL", 100.0, 0.1),
        input::rectangular("flask, distillate", "mL", 100.0, 0.1),
        input::rectangular("reading", "% vol", 25.0, 0.05),
        error_of(*find_instrument_class("alcoholometer-II")),
        input::rectangular("temperature", "°C", 21.0, 0.2),
        input::rectangular("loss in distilling", "%", 0.2, 0.2),
    };
    auto const strength = [](auto const& x) {
        auto const w = measurement_model::mass_fraction_from_reading((x[2] + x[3]) / 100.0, x[4]);
        return 100.0 *
               measurement_model::volume_fraction_of_distilled_sample(x[0], x[1], x[4], w, x[5] / 100.0);
    };
    auto const budget = propagate(strength, inputs);
    auto const trials = monte_carlo(strength, inputs, 200000);
    EXPECT_LT(std::abs(trials.standard_uncertainty() / budget.standard_uncertainty - 1.0), 0.01);
    EXPECT_NEAR(budget.standard_uncertainty, 0.09, 0.02);
    auto const actual = alcoholometer{}.strength(by_volume(25.0), celsius(21.0));
    EXPECT_NEAR(budget.estimate,
                strength_of_distilled_sample(100.0 * millilitre, celsius(21.0), 100.0 * millilitre, actual,
                                             celsius(21.0), 0.002)
                    .percent(),
                1e-10);
}

TEST(Sweetened, Refuses) {
    auto const spirit = parcel::of(kilogram, by_volume(40.0), celsius(20.0));
    expect_refusal([&] { return sweetened::of(spirit, -1.0 * gram); }, "mass of the sugar");
    expect_refusal([&] { return sweetened::of(spirit, 2.0 * kilogram); }, "sugar in its water");
    expect_refusal([&] { return sweetened::of(spirit.at(celsius(-5.0)), gram); }, "temperature");
    expect_refusal(
        [&] { return sweetened::of(-1.0 * litre, by_volume(20.0), 9.0 * gram_per_litre, celsius(20.0)); },
        "volume");
    expect_refusal([&] { return sweetened::of(spirit, gram).at(celsius(41.0)); }, "temperature");
    expect_refusal([&] { return sweeten(spirit, by_volume(45.0), 100.0 * gram_per_litre); },
                   "alcoholic strength by volume");
    auto const error =
        expect_refusal([&] { return sweeten(spirit, by_volume(39.0), 100.0 * gram_per_litre); },
                       "alcoholic strength by volume");
    EXPECT_EQ(std::string(error.reason()), "what this spirit reaches with this much sugar");
    EXPECT_NO_THROW(static_cast<void>(
        sweeten(spirit, by_volume(std::floor(1e6 * error.upper()) / 1e6), 100.0 * gram_per_litre)));
    expect_refusal([&] { return sweeten(spirit, by_volume(20.0), -1.0 * gram_per_litre); },
                   "sugar concentration");
    expect_refusal([&] { return tabarie_extract(1050.0 * kilogram_per_cubic_metre, by_volume(40.0)); },
                   "alcoholic strength by volume");
}

}  // namespace
}  // namespace aqueth
