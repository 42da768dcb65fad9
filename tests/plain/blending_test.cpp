// SPDX-License-Identifier: BSL-1.0
#include <aqueth/blending.hpp>
#include <aqueth/plain/blending.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

namespace aqueth {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

constexpr plain::parcel<double> strong{2.0, 0.8, 25.0};
constexpr plain::parcel<double> weak{3.0, 0.1, 15.0};
constexpr plain::liquid<double> water_15{0.0, 15.0};
constexpr plain::liquid<double> stock{0.9, 22.0};

constexpr plain::parcel<double> two[] = {strong, weak};
static_assert(plain::mix(two, 2, 20.0).value.product.mass_kg == 5.0);
static_assert(plain::mix(two, 2, 20.0).value.contraction_litres > 0.0);
static_assert(plain::dilute(strong, 0.4, water_15, 20.0).value.addition.mass_kg > 1.99);
static_assert(plain::make_up_by_mass(1.0, 0.45, stock, water_15, 20.0).value.spirit.mass_kg == 0.5);
static_assert(!plain::fortify(weak, 0.95, stock, 20.0).status.ok);

parcel typed(plain::parcel<double> const& numbers) { return parcel::of(numbers); }
liquid typed(plain::liquid<double> const& numbers) {
    return liquid::of(mass_fraction(numbers.mass_fraction), celsius(numbers.celsius));
}
plain::parcel<double> numbers(parcel const& of) { return static_cast<plain::parcel<double> const&>(of); }

// The typed functions reckon in m3, these in litres: a contraction is equal to the rounding of the volumes.
void expect_same(plain::blend<double> const& plainly, blend const& with_types) {
    EXPECT_EQ(plainly.product, numbers(with_types.product));
    EXPECT_EQ(plainly.sum_of_volumes_litres, in(with_types.sum_of_volumes, litre));
    EXPECT_EQ(plainly.contraction_litres, in(with_types.contraction, litre));
}

TEST(PlainBlending, AnswersAreThoseOfTheTypedOnes) {
    expect_same(plain::mix(two, 2).value, mix({typed(strong), typed(weak)}));
    expect_same(plain::mix(two, 2, 12.5).value, mix({typed(strong), typed(weak)}, celsius(12.5)));
    for (double const target : {0.15, 0.4, 0.8}) {
        for (auto const& diluent : {water_15, plain::liquid<double>{0.12, 5.0}}) {
            auto const by = plain::dilute(strong, target, diluent);
            auto const with_types = dilute(typed(strong), mass_fraction(target), typed(diluent));
            expect_same(by.value, with_types);
            EXPECT_EQ(by.value.addition, numbers(with_types.addition));
            expect_same(plain::dilute(strong, target, diluent, 18.0).value,
                        dilute(typed(strong), mass_fraction(target), typed(diluent), celsius(18.0)));
        }
        auto const more = fortify(typed(weak), mass_fraction(target), typed(stock));
        expect_same(plain::fortify(weak, target, stock).value, more);
        EXPECT_EQ(plain::fortify(weak, target, stock, 9.0).value.addition, numbers(more.addition));

        auto const volume =
            make_up(4.5 * litre, celsius(20.0), mass_fraction(target), typed(stock), typed(water_15));
        auto const by_volume = plain::make_up_by_volume(4.5, 20.0, target, stock, water_15);
        expect_same(by_volume.value, volume);
        EXPECT_EQ(by_volume.value.spirit, numbers(volume.spirit));
        EXPECT_EQ(by_volume.value.diluent, numbers(volume.diluent));

        auto const mass = make_up(4.5 * kilogram, mass_fraction(target), typed(stock), typed(water_15));
        auto const by_mass = plain::make_up_by_mass(4.5, target, stock, water_15);
        expect_same(by_mass.value, mass);
        EXPECT_EQ(by_mass.value.spirit, numbers(mass.spirit));
        EXPECT_EQ(by_mass.value.diluent, numbers(mass.diluent));
        expect_same(
            plain::make_up_by_mass(4.5, target, stock, water_15, 17.0).value,
            make_up(4.5 * kilogram, mass_fraction(target), typed(stock), typed(water_15), celsius(17.0)));
    }
    plain::adjustment<double> steps[4];
    ASSERT_TRUE(plain::dilute_in_additions(strong, 0.5, water_15, steps, 4).ok);
    auto const with_types = dilute_in_additions(typed(strong), mass_fraction(0.5), 4, typed(water_15));
    for (std::size_t k = 0; k < 4; ++k) {
        expect_same(steps[k], with_types[k]);
        EXPECT_EQ(steps[k].addition, numbers(with_types[k].addition));
    }
    ASSERT_TRUE(plain::dilute_in_additions(strong, 0.5, water_15, steps, 4, 21.0).ok);
    EXPECT_EQ(steps[3].product.celsius, 21.0);
}

// Balances of mass and of ethanol, by hand: 2 kg of 80 % and 2 kg of water are 4 kg of 40 %.
TEST(PlainBlending, BalancesByHand) {
    auto const halved = plain::dilute(strong, 0.4, water_15, 20.0).value;
    EXPECT_NEAR(halved.addition.mass_kg, 2.0, 1e-14);
    EXPECT_EQ(halved.addition.celsius, 15.0);
    EXPECT_NEAR(halved.product.mass_fraction, 0.4, 1e-15);
    auto const half = plain::make_up_by_mass(4.0, 0.45, stock, water_15).value;
    EXPECT_NEAR(half.spirit.mass_kg, 2.0, 1e-15);
    EXPECT_NEAR(half.diluent.mass_kg, 2.0, 1e-15);
    EXPECT_GT(half.product.celsius, 20.0);  // the heat of mixing
    auto const up = plain::fortify(weak, 0.5, stock, 20.0).value;
    EXPECT_NEAR(up.addition.mass_kg, 3.0, 1e-14);
}

void expect_refused(plain::status const& found, argument which, limit set_by, double value, double lower,
                    double upper) {
    EXPECT_FALSE(found.ok);
    EXPECT_EQ(found.argument, which) << name_of(found.argument);
    EXPECT_EQ(found.limit, set_by) << name_of(found.limit);
    if (std::isnan(value)) {
        EXPECT_TRUE(std::isnan(found.value));
    } else {
        EXPECT_EQ(found.value, value);
    }
    EXPECT_EQ(found.lower, lower);
    EXPECT_EQ(found.upper, upper);
}

TEST(PlainBlending, RefusesWithArgumentValueAndRange) {
    double const least = (std::numeric_limits<double>::min)();
    plain::parcel<double> const empty[] = {{0.0, 0.4, 20.0}, {0.0, 0.5, 20.0}};
    expect_refused(plain::mix(two, 0).status, argument::number_of_parcels, limit::none, 0.0, 1.0, infinity);
    expect_refused(plain::mix(empty, 2).status, argument::mass_of_all_parcels, limit::none, 0.0, least,
                   infinity);
    double const boils = plain::hottest_liquid_celsius(plain::mix(two, 2, 20.0).value.product.mass_fraction);
    expect_refused(plain::mix(two, 2, 95.0).status, argument::temperature, limit::liquid_below_boiling_point,
                   95.0, plain::freezing_celsius(0.1).value, boils);
    expect_refused(plain::mix(two, 2, nan).status, argument::temperature, limit::liquid_above_freezing_point,
                   nan, plain::freezing_celsius(0.1).value, boils);
    plain::parcel<double> const cold[] = {{1.0, 0.9, -5.0}, weak};
    expect_refused(plain::mix(cold, 2).status, argument::temperature_of_a_part, limit::heats_of_mixing, -5.0,
                   0.0, 116.85);
    plain::parcel<double> const hot[] = {{1.0, 1.0, 78.0}, {1.0, 0.0, 99.0}};
    auto const too_warm = plain::mix(hot, 2).status;
    expect_refused(too_warm, argument::temperature_of_the_mixture_without_loss_of_heat,
                   limit::oiml_r22_and_heats_of_mixing, too_warm.value, 0.0,
                   plain::hottest_liquid_celsius(0.5) + 1e-9);
    EXPECT_GT(too_warm.value, 81.8);

    for (double const bad : {0.81, nan, infinity}) {
        expect_refused(plain::dilute(strong, bad, water_15).status, argument::target_strength,
                       limit::water_only_weakens, bad, 1e-6, 0.8);
    }
    expect_refused(plain::dilute(strong, 0.1, plain::liquid<double>{0.1, 15.0}).status,
                   argument::target_strength, limit::diluent_only_weakens, 0.1, 0.1 + 1e-6, 0.8);
    expect_refused(plain::dilute(weak, 0.1, stock).status, argument::strength_of_the_diluent,
                   limit::no_stronger_than_the_spirit, 0.9, 0.0, 0.1);
    expect_refused(plain::fortify(weak, 0.05, stock).status, argument::target_strength,
                   limit::from_the_parcel_to_the_stronger_spirit, 0.05, 0.1, 0.9);
    expect_refused(plain::fortify(weak, 0.9, stock).status, argument::stronger_spirit_above_the_target_by,
                   limit::no_amount_reaches_the_stronger_spirit, 0.0, 1e-6, 1.0);
    expect_refused(plain::fortify(weak, 0.9, water_15).status, argument::strength_of_the_stronger_spirit,
                   limit::no_weaker_than_the_parcel, 0.0, 0.1, 1.0);
    expect_refused(plain::make_up_by_volume(1.0, 20.0, 0.95, stock, water_15).status,
                   argument::target_strength, limit::from_the_diluent_to_the_stock, 0.95, 0.0, 0.9);
    expect_refused(plain::make_up_by_mass(1.0, 0.5, water_15, stock).status,
                   argument::strength_of_the_diluent, limit::no_stronger_than_the_spirit, 0.9, 0.0, 0.0);
    for (double const bad : {-1.0, nan, infinity}) {
        expect_refused(plain::make_up_by_volume(bad, 20.0, 0.5, stock, water_15).status, argument::volume,
                       limit::none, bad, 0.0, infinity);
        expect_refused(plain::make_up_by_mass(bad, 0.5, stock, water_15).status, argument::mass, limit::none,
                       bad, 0.0, infinity);
        expect_refused(plain::dilute(plain::parcel<double>{bad, 0.5, 20.0}, 0.4, water_15).status,
                       argument::mass, limit::none, bad, 0.0, infinity);
        expect_refused(plain::dilute(strong, 0.4, plain::liquid<double>{bad, 20.0}).status,
                       argument::mass_fraction, limit::none, bad, 0.0, 1.0);
        expect_refused(plain::fortify(weak, 0.4, plain::liquid<double>{bad, 20.0}).status,
                       argument::mass_fraction, limit::none, bad, 0.0, 1.0);
        expect_refused(plain::make_up_by_mass(1.0, 0.4, stock, plain::liquid<double>{bad, 20.0}).status,
                       argument::mass_fraction, limit::none, bad, 0.0, 1.0);
        plain::parcel<double> const parts[] = {strong, {1.0, bad, 20.0}};
        expect_refused(plain::mix(parts, 2, 20.0).status, argument::mass_fraction, limit::none, bad, 0.0,
                       1.0);
    }
    expect_refused(plain::make_up_by_mass(0.0, 0.5, stock, water_15).status, argument::mass_of_all_parcels,
                   limit::none, 0.0, least, infinity);
    auto const none = plain::dilute(strong, 0.9, water_15).value;
    EXPECT_TRUE(std::isnan(none.addition.mass_kg) && std::isnan(none.product.celsius) &&
                std::isnan(none.contraction_litres));
}

TEST(PlainBlending, APlanOfAdditionsThatBreaksOffIsNone) {
    plain::adjustment<double> steps[5];
    for (int const bad : {0, -1, 1001}) {
        expect_refused(plain::dilute_in_additions(strong, 0.5, water_15, steps, bad),
                       argument::number_of_additions, limit::none, bad, 1.0, 1000.0);
    }
    // Equal additions of hot water to hot strong spirit: liquid after the first one and at the end, boiling
    // on the way.
    plain::parcel<double> const warm{1.0, 0.95, 77.0};
    plain::liquid<double> const tap{0.0, 90.0};
    ASSERT_TRUE(plain::dilute(warm, 0.05, tap).status.ok);
    plain::parcel<double> const first[] = {warm, {0.01, 0.0, 90.0}};
    ASSERT_TRUE(plain::mix(first, 2).status.ok);
    constexpr int many = 1000;
    std::vector<plain::adjustment<double>> plan(many, plain::adjustment<double>{{strong, 1.0, 1.0}, strong});
    auto const broken = plain::dilute_in_additions(warm, 0.05, tap, plan.data(), many);
    EXPECT_EQ(broken.argument, argument::temperature_of_the_mixture_without_loss_of_heat);
    EXPECT_TRUE(std::isnan(plan.front().addition.mass_kg));
    EXPECT_EQ(plan.back().addition, strong);  // not reached
}

TEST(PlainBlending, AnEmptyPartHasNoTemperature) {
    plain::parcel<double> const parts[] = {strong, weak, {0.0, 0.9, -10.0}};
    auto const mixed = plain::mix(parts, 3);
    ASSERT_TRUE(mixed.status.ok);
    EXPECT_EQ(mixed.value.product, plain::mix(two, 2).value.product);
}

TEST(PlainBlending, InFloat) {
    plain::parcel<float> const parts[] = {{2.0f, 0.8f, 25.0f}, {3.0f, 0.1f, 15.0f}};
    auto const single = plain::mix(parts, 2);
    auto const exact = plain::mix(two, 2);
    ASSERT_TRUE(single.status.ok);
    EXPECT_NEAR(single.value.product.mass_fraction, exact.value.product.mass_fraction, 2e-7);
    EXPECT_NEAR(single.value.product.celsius, exact.value.product.celsius, 1e-3);
    EXPECT_NEAR(single.value.contraction_litres, exact.value.contraction_litres, 5e-6);
    for (float const target : {0.1f, 0.4f, 0.79f, 0.8f}) {
        auto const plan = plain::dilute(parts[0], target, plain::liquid<float>{0.0f, 15.0f}, 20.0f);
        ASSERT_TRUE(plan.status.ok);
        EXPECT_NEAR(plan.value.product.mass_fraction, target, 2e-7);
    }
    auto const up = plain::make_up_by_volume(10.0f, 20.0f, 0.4f, plain::liquid<float>{0.9f, 20.0f},
                                             plain::liquid<float>{0.0f, 20.0f});
    ASSERT_TRUE(up.status.ok);
    EXPECT_NEAR(plain::volume_litres(up.value.product).value, 10.0, 1e-5);
    // A strength that was itself converted in float is not refused.
    EXPECT_TRUE(
        plain::dilute(parts[0], std::nextafter(0.8f, 1.0f), plain::liquid<float>{0.0f, 15.0f}).status.ok);
    EXPECT_FALSE(plain::dilute(parts[0], 0.80001f, plain::liquid<float>{0.0f, 15.0f}).status.ok);
}

}  // namespace
}  // namespace aqueth
