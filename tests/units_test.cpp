// SPDX-License-Identifier: BSL-1.0
#include <aqueth/units.hpp>

#include <gtest/gtest.h>

#include <type_traits>

namespace aqueth {
namespace {

// Exact definitions: NIST Handbook 44, appendix C (pound 0.453 592 37 kg, gallon 231 inch3, inch 2.54 cm).
static_assert(pound.value() == 0.45359237);
static_assert(16.0 * ounce == pound);
static_assert(us_gallon.value() == 0.003785411784);
static_assert(128.0 * us_fluid_ounce == us_gallon);
static_assert(imperial_gallon.value() == 0.00454609);

static_assert(fahrenheit(32.0).celsius() == 0.0);
static_assert(fahrenheit(68.0).celsius() == 20.0);
static_assert(fahrenheit(212.0).celsius() == 100.0);
static_assert(fahrenheit(60.0).celsius() == 140.0 / 9.0);
static_assert(celsius(20.0).celsius() == 20.0);
static_assert(celsius(20.0).kelvin() == 293.15);
static_assert(celsius(100.0).fahrenheit() == 212.0);
static_assert(kelvin(273.15).celsius() == 0.0);

static_assert(celsius(31.0) - celsius(20.0) == 11.0 * kelvins);
static_assert(celsius(20.0) + 11.0 * kelvins == celsius(31.0));
static_assert(celsius(20.0) - 20.0 * kelvins == celsius(0.0));
static_assert(celsius(19.9) < celsius(20.0));

static_assert(std::is_trivially_copyable_v<units::temperature>);
static_assert(sizeof(units::temperature) == sizeof(double));

TEST(Units, ReadsAQuantityInAnyUnitOfItsKind) {
    EXPECT_DOUBLE_EQ(in(2.0 * litre, millilitre), 2000.0);
    EXPECT_DOUBLE_EQ(in(1.0 * hectolitre, litre), 100.0);
    EXPECT_DOUBLE_EQ(in(75.0 * centilitre, millilitre), 750.0);
    EXPECT_DOUBLE_EQ(in(1.0 * kilogram, gram), 1000.0);
    EXPECT_DOUBLE_EQ(in(1.0 * us_gallon, us_fluid_ounce), 128.0);
    EXPECT_DOUBLE_EQ(in(1.0 * gram_per_cubic_centimetre, kilogram_per_cubic_metre), 1000.0);
}

template <class... Unit>
constexpr bool whole_numbers_count(Unit const&... unit) {
    return ((2 * unit == 2.0 * unit && unit * 3u == unit * 3.0 && unit / 4L == unit / 4.0) && ...);
}
static_assert(whole_numbers_count(
    kilogram, gram, pound, ounce, mole, kilomole, cubic_metre, hectolitre, litre, centilitre, millilitre,
    us_gallon, us_fluid_ounce, imperial_gallon, kilogram_per_cubic_metre, gram_per_cubic_centimetre,
    cubic_centimetre_per_mole, kelvins, per_kelvin, hectopascal, kilopascal, bar, standard_atmosphere,
    millimetre_of_mercury, inch_of_mercury, torr, pound_force_per_square_inch, metre, foot, second, minute,
    hour, joule, kilojoule, megajoule, kilowatt_hour, watt, kilowatt, joule_per_kelvin, watt_per_kelvin,
    joule_per_mole, joule_per_mole_kelvin, joule_per_kilogram, joule_per_kilogram_kelvin));

constexpr units::temperature rankine(double degrees) { return kelvin(degrees / 1.8); }

TEST(Units, ReadsATemperatureOnTheScaleOfTheFunctionThatMakesIt) {
    EXPECT_EQ(in(celsius(20), celsius), 20.0);
    EXPECT_EQ(in(celsius(20), fahrenheit), 68.0);
    EXPECT_EQ(in(celsius(20), kelvin), 293.15);
    EXPECT_NEAR(in(celsius(100), rankine), 671.67, 1e-9);  // 212 + 459.67
}

TEST(Units, KelvinAndCelsiusDifferByTheIcePointOnly) {
    for (double t = -20.0; t <= 40.0; t += 0.25) EXPECT_NEAR(kelvin(celsius(t).kelvin()).celsius(), t, 6e-14);
}

}  // namespace
}  // namespace aqueth
