// SPDX-License-Identifier: BSL-1.0
#include <aqueth/bottling.hpp>
#include <aqueth/plain/bottling.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

static_assert(plain::fill_litres(0.7, 0.4, 20.0).value == 0.7);
static_assert(plain::fill_litres(0.7, 0.4, 28.0).value > 0.7);
static_assert(!plain::fill_litres(0.0, 0.4, 20.0).status.ok);

TEST(PlainBottling, AnswersAreThoseOfTheTypedOnes) {
    for (double const w : {0.1, 0.33, 0.95}) {
        for (double const t : {4.0, 20.0, 29.5}) {
            for (double const label : {0.05, 0.7, 1.75}) {
                mass_fraction const strength(w);
                // fractions of litres in m3 may round the last digit
                EXPECT_DOUBLE_EQ(plain::fill_litres(label, w, t).value,
                                 in(fill_volume(label * litre, strength, celsius(t)), litre));
                auto const spirit = parcel::of(7.0 * litre, strength, celsius(t));
                auto const typed = fill_bottles(spirit, label * litre, us_label_temperature);
                auto const plainly = plain::fill_bottles(static_cast<plain::parcel<double> const&>(spirit),
                                                         label, us_label_temperature.celsius());
                ASSERT_TRUE(plainly.status.ok);
                EXPECT_EQ(plainly.value.count, typed.count);
                EXPECT_DOUBLE_EQ(plainly.value.fill_litres, in(typed.fill, litre));
                EXPECT_EQ(plainly.value.fill_mass_kg, typed.fill_mass.value());
                EXPECT_EQ(plainly.value.remainder,
                          static_cast<plain::parcel<double> const&>(typed.remainder));
            }
        }
    }
}

TEST(PlainBottling, RefusesWithArgumentValueAndRange) {
    plain::parcel<double> const spirit{6.0, 0.4, 20.0};
    for (double const bad : {0.0, -0.7, nan, infinity}) {
        for (auto const& found :
             {plain::fill_litres(bad, 0.4, 20.0).status, plain::fill_bottles(spirit, bad).status}) {
            EXPECT_EQ(found.argument, argument::label_volume);
            EXPECT_EQ(found.limit, limit::none);
            EXPECT_TRUE(found.value == bad || (std::isnan(bad) && std::isnan(found.value)));
            EXPECT_EQ(found.lower, 1e-9);
            EXPECT_EQ(found.upper, infinity);
        }
    }
    for (double const bad : {-21.0, 85.0, nan}) {
        for (auto const& found :
             {plain::fill_litres(0.7, 0.4, bad).status, plain::fill_litres(0.7, 0.4, 20.0, bad).status,
              plain::fill_bottles(spirit, 0.7, bad).status,
              plain::fill_bottles(plain::parcel<double>{6.0, 0.4, bad}, 0.7).status}) {
            EXPECT_EQ(found.argument, argument::temperature);
            EXPECT_EQ(found.limit, bad > 0.0 ? limit::liquid_below_boiling_point : limit::oiml_r22);
            EXPECT_EQ(found.lower, -20.0);
            EXPECT_EQ(found.upper, plain::hottest_liquid_celsius(0.4));
        }
    }
    EXPECT_EQ(plain::fill_bottles(plain::parcel<double>{nan, 0.4, 20.0}, 0.7).status.argument,
              argument::mass);
    auto const many = plain::fill_bottles(plain::parcel<double>{1e9, 0.4, 20.0}, 1e-6);
    EXPECT_EQ(many.status.argument, argument::label_volume);
    EXPECT_EQ(many.status.limit, limit::bottles_counted);
    EXPECT_GT(many.status.lower, 1e-3);
    EXPECT_TRUE(std::isnan(many.value.count) && std::isnan(many.value.remainder.mass_kg));
}

TEST(PlainBottling, InFloatCountsFiveThousand) {
    for (float const n : {1.0f, 12.0f, 999.0f, 4999.0f}) {
        auto const spirit = plain::parcel_by_volume(0.7f * n, 0.33f, 20.0f).value;
        EXPECT_EQ(plain::fill_bottles(spirit, 0.7f).value.count, n);
        auto const short_of = plain::parcel_by_volume(0.7f * (n - 0.02f), 0.33f, 20.0f).value;
        EXPECT_EQ(plain::fill_bottles(short_of, 0.7f).value.count, n - 1.0f);
    }
    auto const many = plain::fill_bottles(plain::parcel<float>{1e4f, 0.33f, 20.0f}, 0.7f);
    EXPECT_EQ(many.status.limit, limit::bottles_counted_in_single_precision);
    EXPECT_NEAR(plain::fill_litres(0.7f, 0.33f, 28.0f).value, plain::fill_litres(0.7, 0.33, 28.0).value,
                2e-7);
}

}  // namespace
}  // namespace aqueth
