// SPDX-License-Identifier: BSL-1.0
#include <aqueth/plain/density.hpp>
#include <aqueth/text.hpp>
#include <aqueth/wash.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <string>

namespace aqueth {
namespace {

TEST(Text, EveryQuantityHasItsUnit) {
    EXPECT_EQ(text_of(celsius(20)), "20 °C");
    EXPECT_EQ(text_of(celsius(-0.0)), "0 °C");
    EXPECT_EQ(text_of(250 * millilitre), "0.25 L");
    EXPECT_EQ(text_of(750 * gram), "0.75 kg");
    EXPECT_EQ(text_of(2 * kilomole), "2000 mol");
    EXPECT_EQ(text_of(950 * kilogram_per_cubic_metre), "950 kg/m3");
    EXPECT_EQ(text_of(5 * kelvins), "5 K");
    EXPECT_EQ(text_of(58 * cubic_centimetre_per_mole), "58 cm3/mol");
    EXPECT_EQ(text_of(standard_atmosphere), "101.325 kPa");
    EXPECT_EQ(text_of(300 * metre), "300 m");
    EXPECT_EQ(text_of(1.5 * hour), "90 min");
    EXPECT_EQ(text_of(2 * megajoule), "2000 kJ");
    EXPECT_EQ(text_of(2 * kilowatt), "2000 W");
    EXPECT_EQ(text_of(4000 * joule_per_kelvin), "4000 J/K");
    EXPECT_EQ(text_of(3 * watt_per_kelvin), "3 W/K");
    EXPECT_EQ(text_of(40650 * joule_per_mole), "40650 J/mol");
    EXPECT_EQ(text_of(75.3 * joule_per_mole_kelvin), "75.3 J/(mol K)");
    EXPECT_EQ(text_of(1000 * joule_per_kilogram), "1000 J/kg");
    EXPECT_EQ(text_of(4186 * joule_per_kilogram_kelvin), "4186 J/(kg K)");
    EXPECT_EQ(text_of(25e-6 * per_kelvin), "2.5e-05 /K");
}

TEST(Text, AStrengthHasItsBasisAndItsReferenceTemperature) {
    EXPECT_EQ(text_of(by_volume(7)), "7 % vol at 20 °C");  // 100 * 0.07 is 7.000000000000001 in doubles
    EXPECT_EQ(text_of(by_volume<at_15_celsius>(40)), "40 % vol at 15 °C");
    EXPECT_EQ(text_of(by_volume<at_15_56_celsius>(40)), "40 % vol at 15.56 °C");
    EXPECT_EQ(text_of(by_volume<at_60_fahrenheit>(40)), "40 % vol at 60 °F");
    EXPECT_EQ(text_of(by_mass(33.5)), "33.5 % mass");
    EXPECT_EQ(text_of(by_moles(10)), "10 % mol");
    EXPECT_EQ(text_of(proof(80)), "80 US proof");
    EXPECT_EQ(text_of(grams_per_100_millilitres(30)), "30 g/100 mL at 20 °C");
    EXPECT_EQ(text_of(grams_per_100_millilitres<at_60_fahrenheit>(30)), "30 g/100 mL at 60 °F");
    EXPECT_EQ(text_of(specific_gravity(1.05)), "1.05 sg");
    EXPECT_EQ(text_of(plato(12)), "12 °P");
    EXPECT_EQ(text_of(apparent_extract(-1.5)), "-1.5 °P");
}

TEST(Text, LiquidsAndParcelsAreListed) {
    EXPECT_EQ(text_of(liquid::of(by_volume(40), celsius(15)), 6), "40 % vol at 20 °C, 15 °C");
    EXPECT_EQ(text_of(parcel::of(2.5 * kilogram, by_volume(40), celsius(15)), 6),
              "2.5 kg, 40 % vol at 20 °C, 15 °C");
}

TEST(Text, DigitsAreThoseAskedForOrAsManyAsCount) {
    units::volume const third = 1.0 / 3.0 * litre;
    EXPECT_EQ(text_of(third, 1), "0.3 L");
    EXPECT_EQ(text_of(third, 4), "0.3333 L");
    EXPECT_EQ(text_of(third), "0.3333333333333333 L");
    EXPECT_EQ(text_of(1e9 * litre, 3), "1e+09 L");
    for (int const digits : {0, 18, -1})
        test::expect_refusal([&] { static_cast<void>(text_of(third, digits)); }, "significant digits");
}

TEST(Text, ARefusalIsItsMessage) {
    try {
        static_cast<void>(by_volume(140));
        ADD_FAILURE() << "140 % vol was accepted";
    } catch (refusal const& error) {
        EXPECT_EQ(text_of(error), error.what());
    }
    EXPECT_EQ(text_of(plain::status()), "accepted");
    EXPECT_EQ(text_of(plain::density_kg_m3(0.4, 95.0).status),
              "refused: temperature 95 °C is outside -20 to 82.84463 °C (liquid, up to its boiling point at "
              "101.325 kPa)");
}

}  // namespace
}  // namespace aqueth
