// SPDX-License-Identifier: BSL-1.0
// Sugar solutions and washes are compared with published figures in published/.
#include <aqueth/wash.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

void expect_refused(plain::checked<double> const& found, argument refused, limit set_by, double value) {
    EXPECT_TRUE(std::isnan(found.value));
    EXPECT_FALSE(found.status.ok);
    EXPECT_EQ(found.status.argument, refused);
    EXPECT_EQ(found.status.limit, set_by);
    EXPECT_TRUE(found.status.value == value || (std::isnan(found.status.value) && std::isnan(value)));
}

static_assert(plain::sucrose_density_kg_m3(0.0, 20.0).value == plain::density_kg_m3(0.0, 20.0).value);
static_assert(plain::specific_gravity_from_plato(0.0).value == 1.0);
static_assert(plain::plato_from_specific_gravity(1.0f).value == 0.0f);
static_assert(!plain::sucrose_density_kg_m3(70.1, 20.0).status.ok);

TEST(PlainWash, IsTheTypedOneToTheDigit) {
    for (double const p : {0.0, 0.5, 12.0, 30.0, 70.0}) {
        for (double const t : {0.0, 20.0, 40.0})
            EXPECT_EQ(plain::sucrose_density_kg_m3(p, t).value, density(plato(p), celsius(t)).value());
        double const gravity = plain::specific_gravity_from_plato(p).value;
        EXPECT_EQ(gravity, specific_gravity_of(plato(p)).value());
        EXPECT_EQ(plain::plato_from_specific_gravity(gravity).value,
                  apparent_extract_of(specific_gravity(gravity)).degrees());
        EXPECT_NEAR(plain::plato_from_specific_gravity(gravity).value, p, 1e-10);
    }
    wash const beer = wash::of(2.0 * litre, by_volume(9.0), plato(4.0), celsius(20.0));
    double const ethanol = plain::wash_mass_fraction_from_volume_fraction(0.09, 4.0).value;
    EXPECT_NEAR(ethanol, in(beer.liquid().ethanol(), beer.mass()), 1e-15);
    for (double const t : {0.0, 20.0, 40.0})
        EXPECT_NEAR(plain::wash_density_kg_m3(ethanol, 4.0, t).value, beer.density(celsius(t)).value(), 1e-9);
    gravity_hydrometer const meter(gravity_reference{});
    for (double const t : {0.0, 20.0, 33.0}) {
        double const rho = meter.density(specific_gravity(1.05), celsius(t)).value();
        EXPECT_EQ(plain::true_gravity_from_density(rho, t).value,
                  true_gravity(specific_gravity(1.05), celsius(t), meter).value());
        EXPECT_EQ(plain::true_gravity_from_density(rho, t, 0.03).value,
                  true_gravity(specific_gravity(1.05), celsius(t), meter, by_mass(3.0)).value());
    }
}

// What Tabarie's rule comes to without a sugar, or without ethanol.
TEST(PlainWash, IsASolutionOrAMixtureAtItsEnds) {
    for (double const t : {0.0, 20.0, 40.0}) {
        for (double const p : {0.0, 5.0, 40.0, 70.0})
            EXPECT_NEAR(plain::wash_density_kg_m3(0.0, p, t).value, plain::sucrose_density_kg_m3(p, t).value,
                        1e-8);
        for (double const w : {0.0, 0.05, 0.4, 1.0})
            EXPECT_NEAR(plain::wash_density_kg_m3(w, 0.0, t).value, plain::density_kg_m3(w, t).value, 1e-8);
    }
    EXPECT_TRUE(plain::wash_density_kg_m3(0.3, 70.0, 20.0).status.ok);  // full, by rounding
}

TEST(PlainWash, RefusesWhatNoScaleHas) {
    for (double const bad : {-1e-9, 70.001, nan, infinity, -infinity}) {
        expect_refused(plain::sucrose_density_kg_m3(bad, 20.0), argument::extract, limit::none, bad);
        expect_refused(plain::wash_density_kg_m3(0.1, bad, 20.0), argument::extract, limit::none, bad);
        expect_refused(plain::wash_mass_fraction_from_volume_fraction(0.1, bad), argument::extract,
                       limit::none, bad);
    }
    auto const extract = plain::sucrose_density_kg_m3(nan, 20.0).status;
    EXPECT_EQ(extract.lower, 0.0);
    EXPECT_EQ(extract.upper, 70.0);
    for (double const bad : {-10.001, 70.001, nan, infinity}) {
        auto const found = plain::specific_gravity_from_plato(bad);
        expect_refused(found, argument::apparent_extract, limit::none, bad);
        EXPECT_EQ(found.status.lower, -10.0);
        EXPECT_EQ(found.status.upper, 70.0);
    }
    for (double const bad : {0.96, 1.36, nan, infinity}) {
        auto const found = plain::plato_from_specific_gravity(bad);
        expect_refused(found, argument::specific_gravity, limit::plato_scale, bad);
        EXPECT_EQ(found.status.lower, plain::specific_gravity_from_plato(-10.0).value);
        EXPECT_EQ(found.status.upper, plain::specific_gravity_from_plato(70.0).value);
    }
}

TEST(PlainWash, RefusesATemperatureAtWhichItIsNoLiquid) {
    for (double const bad : {-0.1, 80.1, nan, infinity}) {
        expect_refused(plain::sucrose_density_kg_m3(10.0, bad), argument::temperature,
                       limit::water_liquid_and_sugar_solutions, bad);
        auto const found = plain::true_gravity_from_density(1050.0, bad);
        expect_refused(found, argument::temperature, limit::water_liquid_and_sugar_solutions, bad);
        EXPECT_EQ(found.status.lower, 0.0);
        EXPECT_EQ(found.status.upper, 80.0);
    }
    EXPECT_TRUE(plain::wash_density_kg_m3(0.2, 5.0, -5.0).status.ok);
    for (double const bad : {-19.0, nan})
        expect_refused(plain::wash_density_kg_m3(0.2, 5.0, bad), argument::temperature,
                       limit::liquid_above_freezing_point, bad);
    expect_refused(plain::wash_density_kg_m3(0.05, 5.0, 80.1), argument::temperature,
                   limit::water_liquid_and_sugar_solutions, 80.1);
    expect_refused(plain::wash_density_kg_m3(0.2, 5.0, 95.0), argument::temperature,
                   limit::liquid_below_boiling_point, 95.0);
}

TEST(PlainWash, RefusesMoreEthanolThanTheExtractLeaves) {
    for (double const bad : {-1e-9, 0.4001, nan, infinity}) {
        auto const found = plain::wash_density_kg_m3(bad, 60.0, 20.0);
        expect_refused(found, argument::ethanol_beside_this_extract, limit::room_beside_extract, bad);
        EXPECT_EQ(found.status.lower, 0.0);
        EXPECT_EQ(found.status.upper, 0.4);
    }
    auto const full = plain::wash_mass_fraction_from_volume_fraction(0.9, 60.0);
    EXPECT_EQ(full.status.argument, argument::ethanol_beside_this_extract);
    EXPECT_TRUE(std::isnan(full.value));
    for (double const bad : {-0.01, 1.01, nan})
        expect_refused(plain::wash_mass_fraction_from_volume_fraction(bad, 10.0),
                       argument::alcoholic_strength_by_volume, limit::none, bad);
}

TEST(PlainWash, RefusesADensityThatNoWashHas) {
    for (double const bad : {900.0, 1400.0, nan, infinity}) {
        auto const found = plain::true_gravity_from_density(bad, 25.0);
        expect_refused(found, argument::density_behind_the_reading, limit::no_extract_to_70_plato, bad);
        EXPECT_LT(found.status.lower, plain::density_kg_m3(0.0, 25.0).value);
        EXPECT_NEAR(found.status.upper, plain::sucrose_density_kg_m3(70.0, 25.0).value, 1e-8);
    }
    for (double const bad : {-0.1, 1.1, nan})
        expect_refused(plain::true_gravity_from_density(1050.0, 25.0, bad), argument::mass_fraction,
                       limit::none, bad);
}

// A float holds a density near 1000 kg/m3 to 6e-5, a gravity to 1e-7.
TEST(PlainWash, InFloatTheSameToWhatItHolds) {
    for (float const p : {0.0f, 1.0f, 12.0f, 30.0f, 70.0f}) {
        double const pd = p;
        for (float const t : {0.0f, 20.0f, 40.0f}) {
            double const td = t;
            EXPECT_NEAR(plain::sucrose_density_kg_m3(p, t).value, plain::sucrose_density_kg_m3(pd, td).value,
                        5e-4);
            for (float const w : {0.0f, 0.01f, 0.1f, 0.29f})
                EXPECT_NEAR(plain::wash_density_kg_m3(w, p, t).value,
                            plain::wash_density_kg_m3(double(w), pd, td).value, 1e-3);
            float const rho = plain::sucrose_density_kg_m3(p < 60.0f ? p : 60.0f, t).value;
            auto const gravity = plain::true_gravity_from_density(rho, t);
            ASSERT_TRUE(gravity.status.ok);
            EXPECT_NEAR(gravity.value, plain::true_gravity_from_density(double(rho), td).value, 2e-6);
        }
        float const gravity = plain::specific_gravity_from_plato(p).value;
        EXPECT_NEAR(gravity, plain::specific_gravity_from_plato(pd).value, 5e-7);
        EXPECT_NEAR(plain::plato_from_specific_gravity(gravity).value, p, 1e-3);
    }
    EXPECT_NEAR(plain::wash_mass_fraction_from_volume_fraction(0.12f, 3.0f).value,
                plain::wash_mass_fraction_from_volume_fraction(double(0.12f), 3.0).value, 1e-6);
}

}  // namespace
}  // namespace aqueth
