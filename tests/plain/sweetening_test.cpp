// SPDX-License-Identifier: BSL-1.0
#include "plain/refusal.hpp"

#include <aqueth/plain/hydrometer.hpp>
#include <aqueth/plain/sweetening.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr sweetener all_sugars[] = {sweetener::sucrose, sweetener::glucose, sweetener::fructose,
                                    sweetener::invert_sugar};

TEST(PlainSweetening, WithoutSugarIsAPlainSpiritToTheDigit) {
    for (sweetener const kind : all_sugars) {
        for (double const w : {0.0, 0.05, 0.33, 0.79, 1.0}) {
            for (double const t : {0.0, 20.0, 31.0, 40.0}) {
                double const rho = plain::density_kg_m3(w, t).value;
                EXPECT_EQ(plain::sweet_density_kg_m3<double>({w, 0.0}, kind, t).value, rho);
                EXPECT_EQ(plain::sweetened_litres<double>({{2.0, w, t}, 0.0, kind}, t).value,
                          plain::volume_litres<double>({2.0, w, t}, t).value);
                EXPECT_EQ(plain::strength_behind_sugar(rho, t, 0.0, kind).value,
                          plain::strength_in<plain::volume_basis<plain::at_20_celsius>>(
                              plain::mass_fraction_from_density(rho, t).value)
                              .value);
            }
            EXPECT_EQ(plain::sweetened_volume_fraction<double>({{2.0, w, 20.0}, 0.0, kind}).value,
                      plain::strength_in<plain::volume_basis<plain::at_20_celsius>>(w).value);
        }
        EXPECT_EQ(plain::strength_doubt_from_sugar(0.4, 0.0, kind).value, 0.0);
    }
    EXPECT_EQ(plain::sweetened_sugar_g_per_litre<double>({{2.0, 0.3, 20.0}, 0.0}).value, 0.0);
}

TEST(PlainSweetening, WithoutEthanolIsTheSugarSolution) {
    for (double const t : {0.0, 20.0, 40.0})
        for (double const plato : {0.001, 12.0, 40.0, 70.0})
            EXPECT_NEAR(plain::sweet_density_kg_m3<double>({0.0, plato / 100.0}, sweetener::sucrose, t).value,
                        plain::sucrose_density_kg_m3(plato, t).value, 1e-9);
}

// Volumes are additive: twice the sugar in twice the water takes twice the place, whatever the ethanol.
TEST(PlainSweetening, SugarTakesThePlaceThatItTakesInWater) {
    for (sweetener const kind : all_sugars) {
        for (double const t : {5.0, 20.0, 35.0}) {
            double const in_water = plain::sweetened_litres<double>({{1.0, 0.0, t}, 0.3, kind}, t).value -
                                    plain::volume_litres<double>({1.0, 0.0, t}, t).value;
            double const in_spirit = plain::sweetened_litres<double>({{1.6, 0.375, t}, 0.3, kind}, t).value -
                                     plain::volume_litres<double>({1.6, 0.375, t}, t).value;
            EXPECT_NEAR(in_spirit, in_water, 1e-12);
            // 0.6 L/kg, more when warm
            EXPECT_GT(in_water, 0.18);
            EXPECT_LT(in_water, 0.195);
        }
    }
    auto const volume = [](sweetener kind) {
        return plain::sweetened_litres<double>({{1.0, 0.0, 20.0}, 0.3, kind}, 20.0).value;
    };
    EXPECT_NEAR(volume(sweetener::invert_sugar),
                0.5 * (volume(sweetener::glucose) + volume(sweetener::fructose)), 1e-12);
    EXPECT_GT(volume(sweetener::glucose), volume(sweetener::sucrose));
    EXPECT_LT(volume(sweetener::fructose), volume(sweetener::sucrose));
}

TEST(PlainSweetening, GoesThereAndBack) {
    for (sweetener const kind : all_sugars) {
        for (double const q : {0.0, 0.05, 0.2, 0.4, 0.55}) {
            for (double const sugar : {0.01, 5.0, 100.0, 250.0}) {
                auto const w = plain::sweet_composition_from_strength(q, sugar, kind);
                ASSERT_TRUE(w.status.ok) << q << " " << sugar;
                double const rho = plain::sweet_density_kg_m3(w.value, kind, 20.0).value;
                EXPECT_NEAR(w.value.sugar * rho, sugar, 1e-9);
                EXPECT_NEAR(w.value.ethanol * rho / plain::density_kg_m3(1.0, 20.0).value, q, 1e-12);
                for (double const t : {0.0, 20.0, 31.0}) {
                    double const there = plain::sweet_density_kg_m3(w.value, kind, t).value;
                    EXPECT_NEAR(plain::strength_behind_sugar(there, t, sugar, kind).value, q, 1e-11);
                }
                EXPECT_NEAR(plain::sugar_behind_density_g_per_litre(rho, q, kind).value, sugar, 1e-8);
                plain::sweetened<double> const liqueur{
                    {3.0 * (1.0 - w.value.sugar), w.value.ethanol / (1.0 - w.value.sugar), 20.0},
                    3.0 * w.value.sugar,
                    kind};
                EXPECT_NEAR(plain::sweetened_volume_fraction(liqueur).value, q, 1e-12);
                EXPECT_NEAR(plain::sweetened_sugar_g_per_litre(liqueur).value, sugar, 1e-9);
            }
        }
    }
    EXPECT_EQ(plain::sugar_behind_density_g_per_litre(plain::density_kg_m3(0.3, 20.0).value, 0.0,
                                                      sweetener::sucrose)
                  .status.argument,
              argument::density);
}

// The ends of what dissolves are accepted as they were computed.
TEST(PlainSweetening, EndsGoThereAndBack) {
    for (sweetener const kind : all_sugars) {
        double const c = model::sugar_solution::highest_mass_fraction(kind);
        for (double const alcohol : {0.0, 0.1, 0.3}) {
            plain::sweet_composition<double> const w{alcohol, c * (1.0 - alcohol)};
            auto const rho = plain::sweet_density_kg_m3(w, kind, 20.0);
            ASSERT_TRUE(rho.status.ok);
            double const q = alcohol * rho.value / plain::density_kg_m3(1.0, 20.0).value;
            double const sugar = w.sugar * rho.value;
            EXPECT_NEAR(plain::strength_behind_sugar(rho.value, 20.0, sugar, kind).value, q, 1e-6);
            EXPECT_NEAR(plain::sugar_behind_density_g_per_litre(rho.value, q, kind).value, sugar, 1e-5);
            EXPECT_TRUE(plain::sweet_composition_from_strength(q, sugar, kind).status.ok);
        }
    }
}

// The doubt is the strength by which the density changes with the sugar's volume.
TEST(PlainSweetening, DoubtIsWhatOnePercentOfTheSugarsVolumeMoves) {
    for (double const q : {0.0, 0.14, 0.4, 0.5}) {
        for (double const sugar : {20.0, 300.0}) {
            auto const kind = sweetener::sucrose;
            auto const w = plain::sweet_composition_from_strength(q, sugar, kind).value;
            double const rho = plain::sweet_density_kg_m3(w, kind, 20.0).value;
            double const c = w.sugar / (1.0 - w.ethanol);
            double const swollen =
                1.0 / (1.0 / rho + 0.01 * w.sugar * model::sugar_solution::apparent_volume(kind, c, 20.0));
            double const doubt = plain::strength_doubt_from_sugar(q, sugar, kind).value;
            EXPECT_NEAR(doubt, plain::strength_behind_sugar(swollen, 20.0, sugar, kind).value - q,
                        0.03 * doubt);
        }
    }
    EXPECT_NEAR(plain::strength_doubt_from_sugar(0.4, 300.0, sweetener::sucrose).value, 0.010, 0.0002);
    EXPECT_TRUE(plain::sweetening_checked(0.4, 0.0));
    EXPECT_TRUE(plain::sweetening_checked(0.14, 1.2));
    EXPECT_TRUE(plain::sweetening_checked(0.087f, 22.0f));
    EXPECT_TRUE(plain::sweetening_checked(0.048, 65.0));
    // no wine or beer is both as strong and as sweet
    EXPECT_FALSE(plain::sweetening_checked(0.14, 66.0));
    EXPECT_FALSE(plain::sweetening_checked(0.13, 60.0));
    EXPECT_FALSE(plain::sweetening_checked(0.135, 20.0));
    EXPECT_FALSE(plain::sweetening_checked(0.087, 23.0));
    EXPECT_FALSE(plain::sweetening_checked(0.141, 1.0));
    EXPECT_FALSE(plain::sweetening_checked(0.04, 66.1));
}

TEST(PlainSweetening, RecipeKeepsTheMasses) {
    plain::parcel<double> const spirit{1.7, 0.78, 24.0};
    for (sweetener const kind : all_sugars) {
        auto const plan = plain::sweeten(spirit, 0.25, 200.0, kind);
        ASSERT_TRUE(plan.status.ok);
        auto const& p = plan.value;
        double const liquid = p.spirit_kg + p.water_kg;
        plain::sweetened<double> const product{{liquid, 1.7 * 0.78 / liquid, 20.0}, p.sugar_kg, kind};
        EXPECT_NEAR(plain::sweetened_litres(product, 20.0).value, p.litres, 1e-10);
        EXPECT_NEAR(plain::sweetened_volume_fraction(product).value, 0.25, 1e-12);
        EXPECT_NEAR(plain::sweetened_sugar_g_per_litre(product).value, 200.0, 1e-9);
        double const before = plain::volume_litres<double>({1.7, 0.78, 20.0}, 20.0).value +
                              plain::volume_litres<double>({p.water_kg, 0.0, 20.0}, 20.0).value;
        EXPECT_NEAR(before + p.sugar_litres - p.contraction_litres, p.litres, 1e-10);
        EXPECT_GT(p.contraction_litres, 0.0);
    }
    // the strongest that the spirit reaches takes no water
    auto const refused = plain::sweeten(spirit, 0.8, 200.0, sweetener::sucrose);
    auto const range =
        expect_refusal(plain::checked<double>{refused.value.water_kg, refused.status},
                       argument::alcoholic_strength_by_volume, limit::reach_of_this_spirit_with_sugar, 0.8);
    auto const most = plain::sweeten(spirit, range.upper, 200.0, sweetener::sucrose);
    ASSERT_TRUE(most.status.ok);
    EXPECT_NEAR(most.value.water_kg, 0.0, 1e-9);
    // without sugar it is a dilution
    auto const diluted = plain::sweeten(spirit, 0.4, 0.0, sweetener::sucrose);
    double const w = plain::mass_fraction_from<plain::volume_basis<plain::at_20_celsius>>(0.4).value;
    EXPECT_NEAR(diluted.value.water_kg, 1.7 * (0.78 / w - 1.0), 1e-12);
    EXPECT_NEAR(diluted.value.sugar_litres, 0.0, 1e-12);
}

TEST(PlainSweetening, DistilledSample) {
    // a liqueur of 25 % vol: 100 mL distilled, made up to 100 mL, is a spirit of 25 % vol
    double const w = plain::mass_fraction_from<plain::volume_basis<plain::at_20_celsius>>(0.25).value;
    EXPECT_NEAR(plain::strength_of_distilled_sample(0.1, 20.0, 0.1, w, 20.0).value, 0.25, 1e-14);
    // at another temperature of both the expansion cancels
    EXPECT_NEAR(plain::strength_of_distilled_sample(0.1, 27.0, 0.1, w, 27.0).value, 0.25, 1e-13);
    // half the volume, half the strength; a loss is given back
    EXPECT_NEAR(plain::strength_of_distilled_sample(0.2, 20.0, 0.1, w, 20.0).value, 0.125, 1e-14);
    EXPECT_NEAR(plain::strength_of_distilled_sample(0.1, 20.0, 0.1, w, 20.0, 0.02).value, 0.25 / 0.98, 1e-13);
    // a sample measured warm was smaller at 20 °C
    EXPECT_GT(plain::strength_of_distilled_sample(0.1, 30.0, 0.1, w, 20.0).value, 0.2505);
    EXPECT_EQ(plain::strength_of_distilled_sample(0.1, 20.0, 0.1, 0.0, 20.0).value, 0.0);
}

TEST(PlainSweetening, Tabarie) {
    // without ethanol the extract is that of the solution
    double const rho = plain::sucrose_density_kg_m3(5.0, 20.0).value;
    EXPECT_NEAR(plain::tabarie_extract_g_per_litre(rho, 0.0).value, 0.05 * rho, 1e-9);
    // at 5 % sucrose and 12 % vol additive volumes differ by less than 1 g/L
    double const wine = plain::sweet_density_kg_m3(
                            plain::sweet_composition_from_strength(0.12, 50.0, sweetener::sucrose).value,
                            sweetener::sucrose, 20.0)
                            .value;
    EXPECT_NEAR(plain::tabarie_extract_g_per_litre(wine, 0.12).value, 50.0, 1.0);
    // and in a liqueur by many: it is refused there
    expect_refusal(plain::tabarie_extract_g_per_litre(1057.8, 0.4), argument::alcoholic_strength_by_volume,
                   limit::tabarie, 0.4);
    expect_refusal(plain::tabarie_extract_g_per_litre(900.0, 0.1), argument::density,
                   limit::with_this_strength, 900.0);
}

TEST(PlainSweetening, Refuses) {
    auto const kind = sweetener::sucrose;
    for (double const bad : {nan, infinity, -1e-9, 1.1}) {
        expect_refusal(plain::sweet_density_kg_m3<double>({bad, 0.1}, kind, 20.0), argument::mass_fraction,
                       limit::none, bad);
        expect_refusal(plain::strength_doubt_from_sugar(bad, 10.0, kind),
                       argument::alcoholic_strength_by_volume, limit::none, bad);
        expect_refusal(plain::sugar_behind_density_g_per_litre(1000.0, bad, kind),
                       argument::alcoholic_strength_by_volume, limit::none, bad);
    }
    for (double const bad : {nan, infinity, -1.0}) {
        expect_refusal(plain::strength_behind_sugar(990.0, 20.0, bad, kind), argument::sugar_concentration,
                       limit::none, bad);
        EXPECT_EQ(plain::sweet_composition_from_strength(0.2, bad, kind).status.argument,
                  argument::sugar_concentration);
        EXPECT_EQ(plain::sweeten<double>({1.0, 0.5, 20.0}, 0.2, bad, kind).status.argument,
                  argument::sugar_concentration);
        expect_refusal(plain::sweetened_litres<double>({{1.0, 0.4, 20.0}, bad, kind}, 20.0),
                       argument::mass_of_the_sugar, limit::none, bad);
        expect_refusal(plain::sweetened_sugar_g_per_litre<double>({{1.0, 0.4, 20.0}, bad, kind}),
                       argument::mass_of_the_sugar, limit::none, bad);
        expect_refusal(plain::sweetened_volume_fraction<double>({{1.0, 0.4, 20.0}, bad, kind}),
                       argument::mass_of_the_sugar, limit::none, bad);
        expect_refusal(plain::strength_of_distilled_sample(bad, 20.0, 0.1, 0.2, 20.0),
                       argument::volume_of_the_sample, limit::none, bad);
        expect_refusal(plain::strength_of_distilled_sample(0.1, 20.0, bad, 0.2, 20.0),
                       argument::volume_of_the_distillate, limit::none, bad);
    }
    for (double const bad : {nan, -0.1, 40.1}) {
        expect_refusal(plain::sweet_density_kg_m3<double>({0.1, 0.1}, kind, bad), argument::temperature,
                       limit::oiml_r22_water_liquid, bad);
        expect_refusal(plain::strength_behind_sugar(990.0, bad, 10.0, kind), argument::temperature,
                       limit::oiml_r22_water_liquid, bad);
        expect_refusal(plain::sweetened_litres<double>({{1.0, 0.4, 20.0}, 0.1, kind}, bad),
                       argument::temperature, limit::oiml_r22_water_liquid, bad);
        expect_refusal(plain::strength_of_distilled_sample(0.1, bad, 0.1, 0.2, 20.0), argument::temperature,
                       limit::oiml_r22_water_liquid, bad);
    }
    for (double const bad : {nan, 800.0, 1400.0}) {
        expect_refusal(plain::strength_behind_sugar(bad, 20.0, 100.0, kind),
                       argument::density_behind_the_reading, limit::with_this_sugar, bad);
    }
    // more sugar than its water dissolves
    EXPECT_EQ(plain::sweet_density_kg_m3<double>({0.5, 0.4}, kind, 20.0).status.limit,
              limit::dissolved_by_its_water);
    EXPECT_EQ(plain::sweet_density_kg_m3<double>({0.5, 0.5}, kind, 20.0).status.limit,
              limit::dissolved_by_its_water);
    auto const room = plain::sweet_composition_from_strength(0.4, 2000.0, kind).status;
    EXPECT_EQ(room.limit, limit::with_this_strength);
    EXPECT_TRUE(plain::sweet_composition_from_strength(0.4, room.upper, kind).status.ok);
    // more alcohol than the sample holds
    auto const much = plain::strength_of_distilled_sample(0.1, 20.0, 1.0, 0.3, 20.0).status;
    EXPECT_EQ(much.limit, limit::alcohol_of_the_sample);
    EXPECT_LE(plain::strength_of_distilled_sample(0.1, 20.0, much.upper, 0.3, 20.0).value, 0.9501);
    expect_refusal(plain::strength_of_distilled_sample(0.1, 20.0, 0.1, 0.2, 20.0, 0.2),
                   argument::share_lost_in_distillation, limit::none, 0.2);
    EXPECT_EQ(plain::sweeten<double>({1.0, 0.5, 20.0}, 0.0, 10.0, kind).status.argument,
              argument::alcoholic_strength_by_volume);
    EXPECT_EQ(plain::sweeten<double>({1.0, 0.0, 20.0}, 0.2, 10.0, kind).status.argument,
              argument::mass_fraction);
}

TEST(PlainSweetening, FloatIsNearDouble) {
    auto const kind = sweetener::sucrose;
    for (double const q : {0.1, 0.4}) {
        for (double const sugar : {20.0, 200.0}) {
            auto const w = plain::sweet_composition_from_strength(q, sugar, kind).value;
            auto const f = plain::sweet_composition_from_strength(float(q), float(sugar), kind).value;
            EXPECT_NEAR(double(f.ethanol), w.ethanol, 1e-6);
            EXPECT_NEAR(double(f.sugar), w.sugar, 1e-6);
            double const rho = plain::sweet_density_kg_m3(w, kind, 20.0).value;
            EXPECT_NEAR(double(plain::sweet_density_kg_m3(f, kind, 20.0f).value), rho, 2e-3);
            EXPECT_NEAR(double(plain::strength_behind_sugar(float(rho), 20.0f, float(sugar), kind).value), q,
                        2e-5);
            EXPECT_NEAR(double(plain::sugar_behind_density_g_per_litre(float(rho), float(q), kind).value),
                        sugar, 5e-3);
        }
    }
}

// A hydrometer in any liquid is the one in a mixture of that density.
TEST(PlainSweetening, ReadingInALiquidOfAnyKind) {
    plain::alcoholometer<double> const meter;
    for (double const w : {0.0, 0.3, 0.9})
        for (double const t : {10.0, 20.0, 30.0})
            if (auto const shown = meter.reading(w, t); shown.status.ok) {
                EXPECT_EQ(meter.reading_in(plain::density_kg_m3(w, t).value, t).value, shown.value);
            }
    EXPECT_EQ(meter.reading_in(1010.0, 20.0).status.argument, argument::density_it_floats_by);
    EXPECT_EQ(meter.reading_in(nan, 20.0).status.limit, limit::hydrometer_liquids);
    EXPECT_EQ(meter.reading_in(990.0, 200.0).status.argument, argument::temperature);
    plain::density_hydrometer<double> const scale({20.0});
    EXPECT_NEAR(scale.reading_in(1057.8, 20.0).value, 1057.8, 1e-12);
    EXPECT_EQ(scale.reading_in(1600.0, 20.0).status.limit, limit::hydrometer_liquids);
}

}  // namespace
}  // namespace aqueth
