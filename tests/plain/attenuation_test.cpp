// SPDX-License-Identifier: BSL-1.0
// Attenuation and strength are compared with published figures in published/.
#include <aqueth/attenuation.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

void expect_status(plain::status const& found, argument refused, limit set_by, double value) {
    EXPECT_FALSE(found.ok);
    EXPECT_EQ(found.argument, refused);
    EXPECT_EQ(found.limit, set_by);
    EXPECT_TRUE(found.value == value || (std::isnan(found.value) && std::isnan(value)));
}

void expect_refused(plain::checked<double> const& found, argument refused, limit set_by, double value) {
    EXPECT_TRUE(std::isnan(found.value));
    expect_status(found.status, refused, set_by, value);
}

static_assert(plain::apparent_attenuation(12.0, 3.0).value == 0.75);
static_assert(plain::mass_fraction_by_balling(12.0, 12.0).value == 0.0);
static_assert(!plain::volume_fraction_by_gravity_fall(1.0, 1.01).status.ok);

TEST(PlainAttenuation, IsTheTypedOneToTheDigit) {
    for (double const o : {6.0, 12.0, 19.5, 30.0}) {
        for (double const a : {-0.9, 0.5, 3.0, 6.0}) {
            EXPECT_EQ(plain::real_extract_plato(o, a).value,
                      real_extract(plato(o), apparent_extract(a)).degrees());
            EXPECT_EQ(plain::apparent_attenuation(o, a).value,
                      apparent_attenuation(plato(o), apparent_extract(a)));
            EXPECT_EQ(plain::mass_fraction_by_balling_factors(o, a).value,
                      alcohol_by_balling_factors(plato(o), apparent_extract(a)).value());
            if (a < 0.0) continue;
            EXPECT_EQ(plain::real_attenuation(o, a).value, real_attenuation(plato(o), plato(a)));
            EXPECT_EQ(plain::mass_fraction_by_balling(o, a).value,
                      alcohol_by_balling(plato(o), plato(a)).value());
        }
    }
    specific_gravity const original(1.062), now(1.009);
    EXPECT_EQ(plain::volume_fraction_by_gravity_fall(1.062, 1.009).value,
              alcohol_by_gravity_fall(original, now).value());
    auto const cold = plain::fermented_wash_from_gravity(1.062, 1.009).value;
    wash const typed = fermented_wash(1.0 * litre, original, now, celsius(20.0));
    EXPECT_NEAR(cold.volume_fraction, typed.strength().value(), 1e-12);
    EXPECT_NEAR(cold.plato, typed.extract().degrees(), 1e-11);
    EXPECT_NEAR(cold.ethanol_mass_fraction, in(typed.liquid().ethanol(), typed.mass()), 1e-13);
    // At 20 °C a stem for 20/20 °C shows the gravity itself.
    auto const read =
        plain::fermented_wash_from_reading(1.062, 1.009, 20.0, plain::density_kg_m3(0.0, 20.0).value).value;
    EXPECT_EQ(read.volume_fraction, cold.volume_fraction);
    EXPECT_EQ(read.plato, cold.plato);
    for (sugar const kind : {sugar::sucrose, sugar::hexose, sugar::glucose_monohydrate}) {
        auto const plan = plain::sugar_needed(25.0, 0.09, kind, 0.8).value;
        auto const same = sugar_needed(25.0 * litre, by_volume(9.0), kind, 0.8);
        EXPECT_DOUBLE_EQ(plan.least_kg, same.least.value());  // litres and m3 round
        EXPECT_DOUBLE_EQ(plan.practical_kg, same.practical.value());
        EXPECT_DOUBLE_EQ(plan.carbon_dioxide_kg, same.carbon_dioxide.value());
        EXPECT_DOUBLE_EQ(plan.original_plato, same.original.degrees());
        EXPECT_DOUBLE_EQ(plan.specific_gravity, same.gravity.value());
        EXPECT_DOUBLE_EQ(plan.water_kg, same.water.value());
    }
}

// The same wash, shown by a scale of weights in air: its mark 0 is the density of air, 1.2 kg/m3.
TEST(PlainAttenuation, AScaleWeighedInAirGivesTheSameWash) {
    double const water = plain::density_kg_m3(0.0, 20.0).value;
    double const air = 1.2;
    for (double const gravity : {0.99, 1.0, 1.02, 1.05}) {
        auto const wanted = plain::fermented_wash_from_gravity(1.07, gravity).value;
        double const in_air = (gravity * water - air) / (water - air);
        auto const found = plain::fermented_wash_from_reading(1.07, in_air, 20.0, water, air).value;
        EXPECT_NEAR(found.volume_fraction, wanted.volume_fraction, 1e-12);
        // and with the typed hydrometer
        gravity_hydrometer const meter(gravity_reference{celsius(20.0), celsius(20.0), medium::air});
        wash const typed = fermented_wash(1.0 * litre, specific_gravity(1.07), specific_gravity(in_air),
                                          celsius(20.0), meter);
        EXPECT_NEAR(typed.strength().value(), wanted.volume_fraction, 1e-11);
    }
}

TEST(PlainAttenuation, RefusesExtractsOutsideTheirRange) {
    for (double const bad : {-0.1, 70.1, nan, infinity})
        expect_refused(plain::real_extract_plato(bad, 0.0), argument::original_extract, limit::none, bad);
    for (double const bad : {-5.0, 10.1, nan, infinity})
        expect_refused(plain::real_extract_plato(10.0, bad), argument::apparent_extract,
                       limit::nothing_left_to_nothing_fermented, bad);
    for (double const bad : {0.0, 70.1, nan}) {
        auto const found = plain::apparent_attenuation(bad, 0.0);
        expect_refused(found, argument::original_extract, limit::none, bad);
        EXPECT_EQ(found.status.lower, 0.01);
        EXPECT_EQ(found.status.upper, 70.0);
    }
    for (double const bad : {-10.1, 12.1, nan}) {
        auto const found = plain::apparent_attenuation(12.0, bad);
        expect_refused(found, argument::apparent_extract, limit::nothing_fermented, bad);
        EXPECT_EQ(found.status.lower, -10.0);
        EXPECT_EQ(found.status.upper, 12.0);
    }
    expect_refused(plain::real_attenuation(12.0, -0.1), argument::real_extract, limit::nothing_fermented,
                   -0.1);
    for (double const bad : {-0.1, 30.1, nan, infinity})
        expect_refused(plain::mass_fraction_by_balling(bad, 0.0), argument::original_extract, limit::balling,
                       bad);
    for (double const bad : {-0.1, 10.1, nan})
        expect_refused(plain::mass_fraction_by_balling(10.0, bad), argument::real_extract,
                       limit::nothing_fermented, bad);
    for (double const bad : {5.9, 30.1, nan})
        expect_refused(plain::mass_fraction_by_balling_factors(bad, 1.0), argument::original_extract,
                       limit::balling_printed_table, bad);
    for (double const bad : {-10.1, 10.1, nan})
        expect_refused(plain::mass_fraction_by_balling_factors(10.0, bad), argument::apparent_extract,
                       limit::nothing_fermented, bad);
}

TEST(PlainAttenuation, RefusesGravitiesOutsideTheirRange) {
    for (double const bad : {0.49, 2.01, nan, infinity}) {
        expect_refused(plain::volume_fraction_by_gravity_fall(bad, 1.0), argument::specific_gravity,
                       limit::none, bad);
        expect_refused(plain::volume_fraction_by_gravity_fall(1.0, bad), argument::specific_gravity,
                       limit::none, bad);
    }
    auto const fall = plain::volume_fraction_by_gravity_fall(1.2, 1.0);
    EXPECT_EQ(fall.status.argument, argument::fall);
    EXPECT_EQ(fall.status.limit, limit::excise_notice_226);
    EXPECT_NEAR(fall.status.value, 200.0, 1e-9);
    EXPECT_EQ(fall.status.upper, 100.75);
    for (double const bad : {0.9, 1.4, nan, infinity})
        expect_status(plain::fermented_wash_from_gravity(bad, 1.0).status, argument::specific_gravity,
                      limit::plato_scale, bad);
    EXPECT_EQ(plain::fermented_wash_from_gravity(1.2, 1.0).status.limit, limit::balling);
    for (double const bad : {0.97, 1.0601, nan, infinity}) {
        auto const found = plain::fermented_wash_from_gravity(1.06, bad);
        expect_status(found.status, argument::final_gravity, limit::all_fermented_to_none, bad);
        EXPECT_LT(found.status.lower, 0.995);
        EXPECT_NEAR(found.status.upper, 1.06, 1e-9);
        EXPECT_TRUE(std::isnan(found.value.volume_fraction) && std::isnan(found.value.plato) &&
                    std::isnan(found.value.ethanol_mass_fraction));
        expect_status(plain::fermented_wash_from_reading(1.06, bad, 20.0, 998.2).status, argument::reading,
                      limit::all_fermented_to_none_at_that_temperature, bad);
    }
    for (double const bad : {-0.1, 80.1, nan})
        expect_status(plain::fermented_wash_from_reading(1.06, 1.0, bad, 998.2).status, argument::temperature,
                      limit::water_liquid_and_sugar_solutions, bad);
    for (double const bad : {0.0, 1600.0, nan})
        expect_status(plain::fermented_wash_from_reading(1.06, 1.0, 20.0, bad).status,
                      argument::density_behind_the_reading, limit::none, bad);
    for (double const bad : {-0.1, 10.1, nan})
        expect_status(plain::fermented_wash_from_reading(1.06, 1.0, 20.0, 998.2, bad).status,
                      argument::density, limit::none, bad);
}

TEST(PlainAttenuation, RefusesAWashThatSugarCannotMake) {
    for (double const bad : {0.0, -1.0, nan, infinity})
        expect_status(plain::sugar_needed(bad, 0.1).status, argument::volume, limit::none, bad);
    for (double const bad : {0.0, 0.2001, nan, infinity}) {
        auto const found = plain::sugar_needed(25.0, bad);
        expect_status(found.status, argument::strength, limit::yeast_common_practice, bad);
        EXPECT_EQ(found.status.lower, 1e-4);
        EXPECT_EQ(found.status.upper, 0.2);
        EXPECT_TRUE(std::isnan(found.value.least_kg) && std::isnan(found.value.water_kg));
    }
    for (double const bad : {0.29, 1.01, nan})
        expect_status(plain::sugar_needed(25.0, 0.1, sugar::sucrose, bad).status,
                      argument::share_of_the_stoichiometric_yield, limit::none, bad);
    auto const thick = plain::sugar_needed(25.0, 0.19, sugar::sucrose, 0.6).status;
    expect_status(thick, argument::strength, limit::begins_above_30_plato, 0.19);
    EXPECT_NEAR(plain::sugar_needed(25.0, thick.upper - 1e-9, sugar::sucrose, 0.6).value.original_plato, 30.0,
                1e-5);
}

TEST(PlainAttenuation, InFloatTheSameToWhatItHolds) {
    EXPECT_NEAR(plain::real_extract_plato(12.0f, 2.0f).value, plain::real_extract_plato(12.0, 2.0).value,
                1e-5);
    EXPECT_NEAR(plain::mass_fraction_by_balling(12.0f, 4.0f).value,
                plain::mass_fraction_by_balling(12.0, 4.0).value, 1e-7);
    EXPECT_NEAR(plain::mass_fraction_by_balling_factors(12.0f, 2.0f).value,
                plain::mass_fraction_by_balling_factors(12.0, 2.0).value, 1e-7);
    EXPECT_NEAR(plain::volume_fraction_by_gravity_fall(1.05f, 1.01f).value,
                plain::volume_fraction_by_gravity_fall(double(1.05f), double(1.01f)).value, 1e-7);
    for (float const original : {1.02f, 1.06f, 1.12f}) {
        for (float const now : {1.0f, 1.01f, 1.02f}) {
            auto const found = plain::fermented_wash_from_gravity(original, now);
            auto const exact = plain::fermented_wash_from_gravity(double(original), double(now)).value;
            ASSERT_TRUE(found.status.ok);
            EXPECT_NEAR(found.value.volume_fraction, exact.volume_fraction, 1e-5);
            EXPECT_NEAR(found.value.ethanol_mass_fraction, exact.ethanol_mass_fraction, 1e-5);
            EXPECT_NEAR(found.value.plato, exact.plato, 1e-3);
        }
    }
    // 30 °P, there and back
    float const thickest = plain::specific_gravity_from_plato(30.0f).value;
    EXPECT_TRUE(plain::fermented_wash_from_gravity(thickest, thickest).status.ok);
    auto const plan = plain::sugar_needed(25.0f, 0.09f).value;
    auto const exact = plain::sugar_needed(25.0, double(0.09f)).value;
    EXPECT_NEAR(plan.practical_kg, exact.practical_kg, 1e-5);
    EXPECT_NEAR(plan.water_kg, exact.water_kg, 1e-4);
    EXPECT_NEAR(plan.original_plato, exact.original_plato, 1e-4);
}

}  // namespace
}  // namespace aqueth
