// SPDX-License-Identifier: BSL-1.0
#include <aqueth/parcel.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <type_traits>

namespace aqueth {
namespace {

using test::expect_refusal;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

TEST(Parcel, FromAVolumeHasThatVolume) {
    for (double const t : {-5.0, 10.0, 20.0, 40.0}) {
        auto const p = parcel::of(2.5 * litre, by_volume(63.0), celsius(t));
        EXPECT_NEAR(in(p.volume(), litre), 2.5, 1e-14);
        EXPECT_DOUBLE_EQ(p.strength().percent(), 63.0);
        EXPECT_EQ(p.temperature(), celsius(t));
    }
}

TEST(Parcel, KeepsItsMassWhenItWarmsAndGrows) {
    auto const cold = parcel::of(1.0 * litre, by_volume(90.0), celsius(10.0));
    auto const warm = cold.at(celsius(30.0));
    EXPECT_EQ(cold.mass(), warm.mass());
    EXPECT_EQ(cold.composition(), warm.composition());
    EXPECT_GT(warm.volume(), cold.volume());
    EXPECT_EQ(cold.volume(celsius(30.0)), warm.volume());
}

TEST(Parcel, EthanolAndWaterAddUp) {
    auto const p = parcel::of(3.0 * kilogram, by_mass(40.0), celsius(20.0));
    EXPECT_DOUBLE_EQ(in(p.ethanol(), kilogram), 1.2);
    EXPECT_DOUBLE_EQ(in(p.ethanol() + p.water(), kilogram), 3.0);
}

TEST(Parcel, PureAlcoholIsStrengthTimesVolumeAtTheReference) {
    // the definition of alcoholic strength by volume, OIML R 22
    auto const p = parcel::of(10.0 * litre, by_volume(43.0), celsius(20.0));
    EXPECT_NEAR(in(p.pure_alcohol(), litre), 4.3, 1e-13);
    auto const q = parcel::of(10.0 * litre, by_volume<at_15_celsius>(43.0), celsius(15.0));
    EXPECT_NEAR(in(q.pure_alcohol<at_15_celsius>(), litre), 4.3, 1e-13);
}

TEST(Parcel, ProofGallons) {
    // 27 CFR 19.1: a proof gallon is a US gallon at 60 °F of 50 % alcohol by volume.
    EXPECT_NEAR(parcel::of(1.0 * us_gallon, proof(100.0), fahrenheit(60.0)).proof_gallons(), 1.0, 1e-14);
    EXPECT_NEAR(parcel::of(100.0 * us_gallon, proof(86.0), fahrenheit(60.0)).proof_gallons(), 86.0, 1e-12);
    EXPECT_LT(parcel::of(100.0 * us_gallon, proof(86.0), fahrenheit(80.0)).proof_gallons(), 86.0);
}

// A program may copy parcels as bytes, keep them in shared memory and compare them.
static_assert(std::is_trivially_copyable_v<parcel> && std::is_standard_layout_v<parcel>);
static_assert(std::is_trivially_copyable_v<liquid> && std::is_standard_layout_v<liquid>);

TEST(Parcel, IsEqualInMassCompositionAndTemperature) {
    auto const p = parcel::of(2.0 * kilogram, by_mass(40.0), celsius(20.0));
    EXPECT_EQ(p, parcel::of(2.0 * kilogram, p.liquid()));
    EXPECT_NE(p, p.with_mass(2.1 * kilogram));
    EXPECT_NE(p, p.at(celsius(21.0)));
    EXPECT_NE(p, parcel::of(2.0 * kilogram, by_mass(41.0), celsius(20.0)));
    EXPECT_EQ(p.liquid(), liquid::of(by_mass(40.0), celsius(20.0)));
    EXPECT_NE(p.liquid(), water_at(celsius(20.0)));
    EXPECT_EQ(parcel::of(plain::parcel<double>{2.0, 0.4, 20.0}), p);
    expect_refusal([] { return parcel::of(plain::parcel<double>{2.0, 1.4, 20.0}); }, "mass fraction");
}

// IUPAC standard atomic weights of 1995, as the library cites them: ethanol 46.06844 g/mol, water 18.01528.
TEST(Parcel, MolesInAndOut) {
    auto const p = parcel::of_moles(10.0 * mole, 30.0 * mole, celsius(20.0));
    EXPECT_NEAR(in(p.mass(), gram), 460.6844 + 540.4584, 1e-9);
    EXPECT_NEAR(in(p.ethanol(), gram), 460.6844, 1e-9);
    EXPECT_NEAR(in(p.ethanol_amount(), mole), 10.0, 1e-13);
    EXPECT_NEAR(in(p.water_amount(), mole), 30.0, 1e-13);
    EXPECT_NEAR(p.strength<mole_fraction>().value(), 0.25, 1e-15);
    EXPECT_EQ(parcel::of_moles(kilomole, 0.0 * mole, celsius(20.0)).composition().value(), 1.0);
    auto const error = expect_refusal([] { return parcel::of_moles(-1.0 * mole, mole, celsius(20.0)); },
                                      "amount of ethanol");
    EXPECT_EQ(error.unit(), "mol");
    expect_refusal([] { return parcel::of_moles(mole, nan * mole, celsius(20.0)); }, "amount of water");
    expect_refusal([] { return parcel::of_moles(0.0 * mole, 0.0 * mole, celsius(20.0)); },
                   "amount of ethanol and water");
}

TEST(Parcel, StrengthInAnyBasis) {
    auto const p = parcel::of(1.0 * kilogram, proof(90.0), celsius(20.0));
    EXPECT_NEAR(p.strength<us_proof>().degrees(), 90.0, 1e-12);
    EXPECT_NEAR(p.strength<mass_fraction>().value(), p.composition().value(), 0.0);
}

TEST(Parcel, MayBeEmpty) {
    EXPECT_EQ(parcel::of(0.0 * litre, by_volume(40.0), celsius(20.0)).mass(), 0.0 * kilogram);
    EXPECT_EQ(water(0.0 * kilogram, celsius(5.0)).volume(), 0.0 * litre);
}

TEST(Parcel, RefusesWhatCannotBe) {
    for (double const bad : {-1e-9, nan, infinity, -infinity}) {
        expect_refusal([&] { return parcel::of(bad * litre, by_volume(40.0), celsius(20.0)); }, "volume");
        expect_refusal([&] { return parcel::of(bad * kilogram, by_volume(40.0), celsius(20.0)); }, "mass");
        expect_refusal([&] { return water(bad * kilogram, celsius(20.0)); }, "mass");
        expect_refusal([&] { return water(1.0 * kilogram, celsius(20.0)).with_mass(bad * kilogram); },
                       "mass");
    }
    for (double const bad : {-21.0, 101.0, nan}) {
        expect_refusal([&] { return parcel::of(1.0 * litre, by_volume(40.0), celsius(bad)); }, "temperature");
        expect_refusal([&] { return parcel::of(1.0 * kilogram, by_volume(40.0), celsius(bad)); },
                       "temperature");
    }
    expect_refusal([] { return water(1.0 * kilogram, celsius(-0.5)); }, "temperature");  // ice
    auto const weak = parcel::of(1.0 * litre, by_volume(10.0), celsius(5.0));
    expect_refusal([&] { static_cast<void>(weak.at(celsius(-10.0))); }, "temperature");
    expect_refusal([&] { static_cast<void>(weak.volume(celsius(-10.0))); }, "temperature");
}

}  // namespace
}  // namespace aqueth
