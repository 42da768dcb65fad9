// SPDX-License-Identifier: BSL-1.0
#include <aqueth/plain/strength.hpp>
#include <aqueth/strength.hpp>

#include "refusal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

using plain::convert;
using plain::strength_scale;
using test::expect_refusal;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr int scales = static_cast<int>(strength_scale::grams_per_100_ml_at_60_fahrenheit) + 1;

constexpr double highest(strength_scale scale) {
    return plain::with_basis(scale, [](auto basis) { return decltype(basis)::template highest<double>; });
}

static_assert(convert<plain::volume_basis<plain::at_60_fahrenheit>, plain::proof_basis>(0.45).value == 90.0);
static_assert(convert(0.4f, strength_scale::volume_fraction_at_20_celsius, strength_scale::us_proof).value >
              79.8f);
static_assert(plain::mass_fraction_from<plain::mole_basis>(1.0).value == 1.0);
static_assert(plain::strength_in<plain::proof_basis>(1.0f).value == 200.0f);
static_assert(!convert(201.0, strength_scale::us_proof, strength_scale::mass_fraction).status.ok);

/// the typed conversion of a number on one scale to another
template <class Source, class Target>
void expect_as_typed(strength_scale from, strength_scale to_scale) {
    for (int i = 0; i <= 100; ++i) {
        double const number = highest(from) * i / 100.0;
        Source const strength(number);
        Target const expected = to<Target>(strength);
        auto const found = convert(number, from, to_scale);
        ASSERT_TRUE(found.status.ok);
        EXPECT_EQ(Target(found.value).number(), expected.number());
        using source = typename Source::plain_basis;
        using target = typename Target::plain_basis;
        EXPECT_EQ((convert<source, target>(number).value), found.value);
    }
}

TEST(PlainStrength, ChosenAtRunTimeIsWhatTheTypesGive) {
    using s = strength_scale;
    using at_15 = basic_volume_fraction<at_15_celsius>;
    using at_15_56 = basic_volume_fraction<at_15_56_celsius>;
    using at_60 = basic_volume_fraction<at_60_fahrenheit>;
    using grams_60 = basic_mass_concentration<at_60_fahrenheit>;
    using grams_15 = basic_mass_concentration<at_15_celsius>;
    using grams_15_56 = basic_mass_concentration<at_15_56_celsius>;
    expect_as_typed<mass_fraction, mole_fraction>(s::mass_fraction, s::mole_fraction);
    expect_as_typed<mole_fraction, volume_fraction>(s::mole_fraction, s::volume_fraction_at_20_celsius);
    expect_as_typed<volume_fraction, at_15>(s::volume_fraction_at_20_celsius,
                                            s::volume_fraction_at_15_celsius);
    expect_as_typed<at_15, at_15_56>(s::volume_fraction_at_15_celsius, s::volume_fraction_at_15_56_celsius);
    expect_as_typed<at_15_56, at_60>(s::volume_fraction_at_15_56_celsius,
                                     s::volume_fraction_at_60_fahrenheit);
    expect_as_typed<at_60, us_proof>(s::volume_fraction_at_60_fahrenheit, s::us_proof);
    expect_as_typed<us_proof, mass_concentration>(s::us_proof, s::grams_per_100_ml_at_20_celsius);
    expect_as_typed<mass_concentration, volume_fraction>(s::grams_per_100_ml_at_20_celsius,
                                                         s::volume_fraction_at_20_celsius);
    expect_as_typed<grams_15, grams_60>(s::grams_per_100_ml_at_15_celsius,
                                        s::grams_per_100_ml_at_60_fahrenheit);
    expect_as_typed<grams_60, us_proof>(s::grams_per_100_ml_at_60_fahrenheit, s::us_proof);
    expect_as_typed<grams_15_56, mass_fraction>(s::grams_per_100_ml_at_15_56_celsius, s::mass_fraction);
}

template <plain::number T>
void expect_closure(double tolerance) {
    for (int from = 0; from < scales; ++from) {
        for (int to_scale = 0; to_scale < scales; ++to_scale) {
            auto const a = static_cast<strength_scale>(from), b = static_cast<strength_scale>(to_scale);
            for (int i = 0; i <= 50; ++i) {
                T const number = T(highest(a)) * T(i) / T(50);
                auto const there = convert(number, a, b);
                ASSERT_TRUE(there.status.ok);
                auto const back = convert(there.value, b, a);
                ASSERT_TRUE(back.status.ok);
                EXPECT_NEAR(double(back.value), double(number), tolerance * highest(a)) << from << to_scale;
            }
        }
    }
}

// A mole fraction of 1 - e is a mass fraction of 1 - 0.39 e: at that end the first has 2.6 times the
// rounding.
TEST(PlainStrength, ThereAndBackClosesOnEveryPairOfScales) {
    expect_closure<double>(1e-15);
    expect_closure<float>(1e-6);
}

TEST(PlainStrength, SinglePrecisionIsCloseToDouble) {
    for (int from = 0; from < scales; ++from) {
        for (int to_scale = 0; to_scale < scales; ++to_scale) {
            auto const a = static_cast<strength_scale>(from), b = static_cast<strength_scale>(to_scale);
            for (int i = 0; i <= 50; ++i) {
                float const number = float(highest(a)) * float(i) / 51.0f;
                double const expected = convert(double(number), a, b).value;
                EXPECT_NEAR(double(convert(number, a, b).value), expected, 6e-7 * highest(b));
            }
        }
    }
}

// 27 CFR 30.11: proof is twice the percentage by volume at 60 °F. Nothing is rounded on the way.
TEST(PlainStrength, ScalesWithOneReferenceTemperatureDifferByAFactor) {
    for (int i = 0; i <= 200; ++i) {
        double const degrees = i;
        EXPECT_EQ(convert(degrees, strength_scale::us_proof, strength_scale::volume_fraction_at_60_fahrenheit)
                      .value,
                  degrees / 200.0);
    }
    double const pure = highest(strength_scale::grams_per_100_ml_at_20_celsius);
    EXPECT_EQ(convert(0.5, strength_scale::volume_fraction_at_20_celsius,
                      strength_scale::grams_per_100_ml_at_20_celsius)
                  .value,
              0.5 * pure);
}

TEST(PlainStrength, RefusesWhatIsNoStrength) {
    for (int k = 0; k < scales; ++k) {
        auto const scale = static_cast<strength_scale>(k);
        auto const code = plain::with_basis(scale, [](auto basis) { return decltype(basis)::code; });
        bool const grams = code == argument::mass_concentration;
        limit const set_by = grams ? limit::oiml_r22_pure_ethanol : limit::none;
        for (double const bad : {-1e-9, highest(scale) * 1.001, nan, infinity, -infinity}) {
            for (strength_scale const target : {scale, strength_scale::mass_fraction}) {
                auto const why = expect_refusal(convert(bad, scale, target), code, set_by, bad);
                EXPECT_EQ(why.lower, 0.0);
                EXPECT_EQ(why.upper, highest(scale));
            }
        }
        EXPECT_FALSE(convert(std::numeric_limits<float>::quiet_NaN(), scale, scale).status.ok);
    }
}

TEST(PlainStrength, RefusesANumberThatIsNoScale) {
    for (int const bad : {-1, scales}) {
        auto const no_scale = static_cast<strength_scale>(bad);
        auto const why = expect_refusal(convert(0.5, no_scale, strength_scale::mass_fraction),
                                        argument::strength_scale, limit::none, bad);
        EXPECT_EQ(why.upper, scales - 1);
        expect_refusal(convert(0.5, strength_scale::mass_fraction, no_scale), argument::strength_scale,
                       limit::none, bad);
    }
}

}  // namespace
}  // namespace aqueth
