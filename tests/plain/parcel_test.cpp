// SPDX-License-Identifier: BSL-1.0
#include <aqueth/parcel.hpp>
#include <aqueth/plain/parcel.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <type_traits>

namespace aqueth {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

constexpr auto made = plain::parcel_by_mass(2.0, 0.4, 20.0);
static_assert(made.status.ok && made.value == plain::parcel<double>{2.0, 0.4, 20.0});
static_assert(plain::volume_litres(made.value).value > 2.0);
static_assert(!plain::parcel_by_mass(-1.0, 0.4, 20.0).status.ok);
static_assert(std::is_trivially_copyable_v<plain::parcel<float>>);
static_assert(std::is_trivially_copyable_v<plain::liquid<float>>);

TEST(PlainParcel, AnswersAreThoseOfTheTypedOnes) {
    for (double const w : {0.0, 0.1, 0.4, 0.93, 1.0}) {
        for (double const t : {0.0, 13.7, 20.0, 40.0}) {
            for (double const litres : {0.0, 0.7, 25.0}) {
                auto const typed = parcel::of(litres * litre, mass_fraction(w), celsius(t));
                auto const plainly = plain::parcel_by_volume(litres, w, t);
                ASSERT_TRUE(plainly.status.ok);
                EXPECT_EQ(plainly.value, static_cast<plain::parcel<double> const&>(typed));
                EXPECT_EQ(plain::parcel_by_mass(typed.mass().value(), w, t).value, plainly.value);
                EXPECT_EQ(plain::volume_litres(plainly.value).value, in(typed.volume(), litre));
                EXPECT_EQ(plain::volume_litres(plainly.value, 31.0).value,
                          in(typed.volume(celsius(31.0)), litre));
                EXPECT_EQ(plain::pure_alcohol_litres(plainly.value).value, in(typed.pure_alcohol(), litre));
                EXPECT_EQ(plain::pure_alcohol_litres(plainly.value, 15.0).value,
                          in(typed.pure_alcohol<at_15_celsius>(), litre));
                EXPECT_EQ(plain::ethanol_mol(plainly.value).value, typed.ethanol_amount().value());
                EXPECT_EQ(plain::water_mol(plainly.value).value, typed.water_amount().value());
            }
        }
    }
}

TEST(PlainParcel, MolesThereAndBack) {
    for (double const w : {0.0, 0.2, 0.7, 1.0}) {
        plain::parcel<double> const start{3.0, w, 20.0};
        auto const back = plain::parcel_by_moles(plain::ethanol_mol(start).value,
                                                 plain::water_mol(start).value, start.celsius);
        ASSERT_TRUE(back.status.ok);
        EXPECT_NEAR(back.value.mass_kg, 3.0, 1e-15);
        EXPECT_NEAR(back.value.mass_fraction, w, 1e-15);
    }
    auto const huge = plain::parcel_by_moles(1e300, 1e300, 20.0);  // no overflow on the way to the fraction
    EXPECT_NEAR(huge.value.mass_fraction, plain::parcel_by_moles(1.0, 1.0, 20.0).value.mass_fraction, 1e-15);
}

void expect_refused(plain::status const& found, argument which, double value, double lower, double upper,
                    limit set_by = limit::none) {
    EXPECT_FALSE(found.ok);
    EXPECT_EQ(found.argument, which) << name_of(found.argument);
    EXPECT_EQ(found.limit, set_by) << name_of(found.limit);
    if (std::isnan(value)) {
        EXPECT_TRUE(std::isnan(found.value));
    } else {
        EXPECT_DOUBLE_EQ(found.value, value);
    }
    EXPECT_EQ(found.lower, lower);
    EXPECT_EQ(found.upper, upper);
}

TEST(PlainParcel, RefusesWithArgumentValueAndRange) {
    for (double const bad : {-1.0, nan, infinity, -infinity}) {
        expect_refused(plain::parcel_by_mass(bad, 0.4, 20.0).status, argument::mass, bad, 0.0, infinity);
        expect_refused(plain::parcel_by_volume(bad, 0.4, 20.0).status, argument::volume, bad, 0.0, infinity);
        expect_refused(plain::parcel_by_moles(bad, 1.0, 20.0).status, argument::amount_of_ethanol, bad, 0.0,
                       infinity);
        expect_refused(plain::parcel_by_moles(1.0, bad, 20.0).status, argument::amount_of_water, bad, 0.0,
                       infinity);
        expect_refused(plain::parcel_by_mass(1.0, bad, 20.0).status, argument::mass_fraction, bad, 0.0, 1.0);
        expect_refused(plain::volume_litres(plain::parcel<double>{1.0, bad, 20.0}).status,
                       argument::mass_fraction, bad, 0.0, 1.0);
        expect_refused(plain::ethanol_mol(plain::parcel<double>{bad, 0.5, 20.0}).status, argument::mass, bad,
                       0.0, infinity);
    }
    for (double const bad : {-20.5, 85.0, nan, infinity}) {
        auto const reason = bad > 0.0 ? limit::liquid_below_boiling_point : limit::oiml_r22;
        auto const boils = [](double w) { return plain::hottest_liquid_celsius(w); };
        expect_refused(plain::parcel_by_mass(1.0, 0.4, bad).status, argument::temperature, bad, -20.0,
                       boils(0.4), reason);
        expect_refused(plain::parcel_by_volume(1.0, 0.4, bad).status, argument::temperature, bad, -20.0,
                       boils(0.4), reason);
        expect_refused(plain::parcel_by_moles(1.0, 1.0, bad).status, argument::temperature, bad, -20.0,
                       boils(correlation::molar_mass::mass_fraction_from_mole_fraction(0.5)), reason);
        expect_refused(plain::volume_litres(made.value, bad).status, argument::temperature, bad, -20.0,
                       boils(0.4), reason);
        expect_refused(plain::pure_alcohol_litres(made.value, bad).status, argument::temperature, bad, -20.0,
                       boils(1.0), reason);
    }
    expect_refused(plain::parcel_by_mass(1.0, 0.0, -0.5).status, argument::temperature, -0.5, 0.0,
                   plain::hottest_liquid_celsius(0.0), limit::liquid_above_freezing_point);
    expect_refused(plain::parcel_by_moles(0.0, 0.0, 20.0).status, argument::amount_of_ethanol_and_water, 0.0,
                   (std::numeric_limits<double>::min)(), infinity);
    // without an answer every number is NaN, and a parcel that was never made is none
    auto const none = plain::parcel_by_mass(-1.0, 0.4, 20.0).value;
    EXPECT_TRUE(std::isnan(none.mass_kg) && std::isnan(none.mass_fraction) && std::isnan(none.celsius));
    EXPECT_FALSE(plain::parcel_range(plain::parcel<double>{}).ok);
    EXPECT_FALSE(plain::liquid_range(plain::liquid<double>{}).ok);
    // the largest volume has a finite mass
    double const largest = (std::numeric_limits<double>::max)();
    EXPECT_TRUE(std::isfinite(plain::parcel_by_volume(largest, 0.0, 4.0).value.mass_kg));
    EXPECT_TRUE(std::isfinite(
        plain::parcel_by_volume((std::numeric_limits<float>::max)(), 0.0f, 4.0f).value.mass_kg));
}

TEST(PlainParcel, InFloat) {
    for (float const w : {0.0f, 0.1f, 0.4f, 1.0f}) {
        auto const single = plain::parcel_by_volume(25.0f, w, 17.0f);
        auto const exact = plain::parcel_by_volume(25.0, double(w), 17.0);
        ASSERT_TRUE(single.status.ok);
        EXPECT_NEAR(single.value.mass_kg, exact.value.mass_kg, 25e-6);
        EXPECT_NEAR(plain::volume_litres(single.value).value, 25.0, 1e-5);
        EXPECT_NEAR(plain::pure_alcohol_litres(single.value).value,
                    plain::pure_alcohol_litres(exact.value).value, 25e-6);
        EXPECT_NEAR(plain::ethanol_mol(single.value).value, plain::ethanol_mol(exact.value).value, 1e-3);
        auto const back = plain::parcel_by_moles(plain::ethanol_mol(single.value).value,
                                                 plain::water_mol(single.value).value, 17.0f);
        EXPECT_NEAR(back.value.mass_fraction, w, 5e-7);
    }
    EXPECT_EQ(plain::parcel_by_mass(std::numeric_limits<float>::infinity(), 0.5f, 20.0f).status.argument,
              argument::mass);
}

}  // namespace
}  // namespace aqueth
