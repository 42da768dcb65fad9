// SPDX-License-Identifier: BSL-1.0
#include <aqueth/parse.hpp>
#include <aqueth/wash.hpp>

#include "expect_refusal.hpp"
#include "expect_text_error.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <concepts>
#include <limits>
#include <string>
#include <variant>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::expect_text_error;

TEST(Parse, ReadsTemperaturesOnEveryScale) {
    for (auto const* text : {"20 °C", "20C", "20 degC", "68 F", "68 °F", "+68.0 f", "2e1 celsius", " 20 ℃ "})
        EXPECT_EQ(parse<units::temperature>(text), celsius(20)) << text;
    EXPECT_NEAR(parse<units::temperature>("293.15 K").celsius(), 20.0, 1e-12);
    EXPECT_EQ(parse<units::temperature>("-5.5 °C"), celsius(-5.5));
    EXPECT_EQ(parse<units::temperature>("500 °C"), celsius(500));  // functions check their own ranges
}

TEST(Parse, ReadsQuantitiesInEveryUnit) {
    EXPECT_EQ(parse<units::volume>("3.5 L"), 3.5 * litre);
    EXPECT_EQ(parse<units::volume>("1 fl oz"), us_fluid_ounce);
    EXPECT_EQ(parse<units::volume>("2 m³"), 2 * cubic_metre);
    EXPECT_EQ(parse<units::mass>("12 lb"), 12 * pound);
    EXPECT_EQ(parse<units::mass_density>("0.95 g/cm3"), 0.95 * gram_per_cubic_centimetre);
    EXPECT_EQ(parse<units::temperature_difference>("9 F"), 5 * kelvins);
    EXPECT_EQ(parse<units::pressure>("29.92 inHg"), 29.92 * inch_of_mercury);
    EXPECT_EQ(parse<units::length>("1000 ft"), 1000 * foot);
    EXPECT_EQ(parse<units::time>("1.5 h"), 90 * minute);
    EXPECT_EQ(parse<units::energy>("2 kWh"), 2 * kilowatt_hour);
    EXPECT_EQ(parse<units::power>("1.5 kW"), 1500 * watt);
    EXPECT_EQ(parse<units::cubic_expansion>("25e-6 /K"), 25e-6 * per_kelvin);
}

TEST(Parse, ReadsStrengthsInEveryBasis) {
    EXPECT_EQ(parse<volume_fraction>("45 % vol"), by_volume(45));
    EXPECT_EQ(parse<volume_fraction>("45%ABV"), by_volume(45));
    EXPECT_EQ(parse<basic_volume_fraction<at_60_fahrenheit>>("45 %vol at 60 F"),
              by_volume<at_60_fahrenheit>(45));
    EXPECT_EQ(parse<us_proof>("80 proof"), proof(80));
    EXPECT_EQ(parse<mole_fraction>("0.25 mol/mol"), by_moles(25));
    // another basis is converted, as `to` does it
    EXPECT_EQ(parse<mass_fraction>("80 proof"), to<mass_fraction>(proof(80)));
    EXPECT_EQ(parse<volume_fraction>("45 %vol @ 15 C"), to<volume_fraction>(by_volume<at_15_celsius>(45)));
    EXPECT_EQ(parse<mass_fraction>("950 kg/m3 at 15 C"),
              mass_fraction_from_density(950 * kilogram_per_cubic_metre, celsius(15)));
    EXPECT_EQ(parse<mass_fraction>("0.95 sg 60/60 F in air"),
              mass_fraction_from_specific_gravity(specific_gravity(0.95),
                                                  {fahrenheit(60), fahrenheit(60), medium::air}));
    // or kept as it is written
    EXPECT_EQ(std::get<us_proof>(parse<any_strength>("80 proof")), proof(80));
    EXPECT_EQ(to<mass_fraction>(parse<any_strength>("80 proof")), to<mass_fraction>(proof(80)));
}

// US units from their definitions in NIST Handbook 44, appendix C (from memory): a gallon has 4 quarts and 8
// pints, a pound 16 ounces.
TEST(Parse, ReadsNumbersAsPeopleWriteThem) {
    EXPECT_EQ(parse<units::volume>("3L"), 3 * litre);
    EXPECT_EQ(parse<units::volume>("750ml"), 750 * millilitre);
    EXPECT_EQ(parse<units::volume>("3,5 L"), 3.5 * litre);
    EXPECT_EQ(parse<units::volume>("0,125 L"), 0.125 * litre) << "no thousands begin with 0";
    EXPECT_EQ(parse<units::volume>("1,25e2 mL"), 125 * millilitre);
    EXPECT_EQ(parse<units::volume>("1234,567 L"), 1234.567 * litre) << "thousands would be 1,234,567";
    EXPECT_EQ(parse<units::temperature>("-3,5 C"), celsius(-3.5));
    EXPECT_EQ(parse<units::volume>("1 1/2 gal"), 1.5 * us_gallon);
    EXPECT_EQ(parse<units::volume>("1½ gal."), 1.5 * us_gallon);
    EXPECT_EQ(parse<units::volume>("-¾L"), -0.75 * litre);
    EXPECT_EQ(parse<units::volume>("12 fl. oz."), 12.0 * us_fluid_ounce);
    EXPECT_EQ(parse<units::mass>("4 lb. 6¼ oz."), 4.0 * pound + 6.25 * ounce);
    EXPECT_EQ(parse<units::mass>("5 kgs"), 5.0 * kilogram);
    EXPECT_EQ(parse<volume_fraction>("43 % vol."), parse<volume_fraction>("43 %vol"));
    EXPECT_EQ(parse<volume_fraction>("0.95 sg 15.56/15.56 C"),
              parse<volume_fraction>("0.95 sg 15.56 C/15.56 C"));
    EXPECT_EQ(parse<units::volume>("1/2gal"), 0.5 * us_gallon);
    EXPECT_EQ(parse<units::volume>("2 qt"), 0.5 * us_gallon);
    EXPECT_EQ(parse<units::volume>("1 pint"), 0.125 * us_gallon);
    EXPECT_EQ(parse<units::volume>("1 gal 1 qt 1 pt"), 1.375 * us_gallon);
    EXPECT_EQ(parse<units::mass>("4 lb 6 oz"), 4.375 * pound);
    EXPECT_EQ(parse<units::mass>("4lb6oz"), 4.375 * pound);
    EXPECT_EQ(parse<units::time>("1 h 30 min"), 90 * minute);
    EXPECT_EQ(parse<mass_concentration>("350 g/L"), grams_per_100_millilitres(35));
    EXPECT_EQ(parse<parcel>("3,5 L,40,5 %vol,20 C").mass(), parse<parcel>("3.5 L, 40.5 %vol, 20 C").mass());
    EXPECT_EQ(parse<parcel>("3 m3,40 %vol,20 C").mass(), parse<parcel>("3000 L, 40 %vol, 20 C").mass());
    EXPECT_EQ(parse<parcel>("4 lb 6 oz, 40 %vol, 20 C").mass(), 4.375 * pound);
}

TEST(Parse, ReadsGravitiesExtractsLiquidsAndParcels) {
    EXPECT_EQ(parse<specific_gravity>("1.05 sg"), specific_gravity(1.05));
    auto const reference = parse<gravity_reference>("sg 15/4 C in air");
    EXPECT_EQ(reference.liquid, celsius(15));
    EXPECT_EQ(reference.water, celsius(4));
    EXPECT_EQ(reference.weighed_in, medium::air);
    EXPECT_EQ(parse<extract>("12 plato"), plato(12));
    EXPECT_EQ(parse<apparent_extract>("-1.5 °P"), apparent_extract(-1.5));
    auto const spirit = parse<parcel>("3 L, 40 % vol, 15 °C");
    auto const same = parcel::of(3 * litre, to<mass_fraction>(by_volume(40)), celsius(15));
    EXPECT_EQ(spirit.mass(), same.mass());
    EXPECT_EQ(spirit.composition(), same.composition());
    EXPECT_EQ(parse<parcel>("2 kg, 80 proof, 59 F").temperature(), celsius(15));
    EXPECT_EQ(parse<liquid>("80 proof, 59 F").composition(), to<mass_fraction>(proof(80)));
}

template <class T>
void refuses(std::string const& text, std::string const& words) {
    expect_text_error([&] { static_cast<void>(parse<T>(text)); }, 0, "", words);
}

TEST(Parse, RefusesWhatIsNoQuantity) {
    refuses<units::temperature>("", "the value is empty; expected a temperature: C, F or K");
    refuses<units::temperature>("warm", "not a number; expected a temperature");
    refuses<units::temperature>("20", "the unit is missing; expected a temperature");
    refuses<units::temperature>("20 L", "'L' is the unit of a volume; expected a temperature");
    refuses<units::temperature>("1e308 F", "the number is too large");
    refuses<units::volume>("nan L", "not a number");
    refuses<units::volume>("inf L", "not a number");
    refuses<units::volume>("1e999 L", "the number is too large or too small");
    refuses<units::volume>("1,234 L", "'1,234' can mean 1.234 or 1234: write one of them");
    refuses<units::volume>("1,234.5 L", "decimal point or comma and no thousands separator");
    refuses<units::volume>("3 1/0 gal", "divides by zero");
    refuses<units::volume>("3 5/4 gal", "the fraction behind a whole number must be below 1");
    refuses<units::volume>("3 gallns", "unknown unit 'gallns'; did you mean gallons? expected a volume");
    refuses<units::mass>("6 oz 4 lb", "each part of a sum must have a smaller unit");
    refuses<units::mass>("4 lb 16 oz", "below one of the unit before");
    refuses<units::mass>("4 lb 6", "the unit is missing");
    refuses<units::mass>("-4 lb 6 oz", "cannot be negative");
    refuses<units::mass>("4 lb 6 L", "'L' is the unit of a volume");
    refuses<units::volume>("1'500 L", "no thousands separator");
    refuses<units::volume>("3 kg", "'kg' is the unit of a mass; expected a volume: mL, cL");
    refuses<units::volume>("3 W", "'W' is the unit of a power");
    refuses<units::volume>("3 barrels", "unknown unit 'barrels'");
    refuses<units::volume>("3 \x01\xff", "unknown unit '?\xEF\xBF\xBD'");
    refuses<volume_fraction>("45 %", "'%' alone is ambiguous: write %vol, %mass or %mol");
    refuses<volume_fraction>("45 %vol at 25 C", "the reference temperature must be 20 C, 15 C");
    refuses<volume_fraction>("45 %mass at 20 C", "a mass fraction does not depend on temperature");
    refuses<us_proof>("80 proof at 20 C", "US proof is defined at 60 F");
    refuses<mass_fraction>("0.95 sg at 20 C", "write the two temperatures after 'sg'");
    refuses<mass_fraction>("0.95 sg 20", "expected a specific gravity");
    refuses<specific_gravity>("1.05", "the unit is missing");
    refuses<specific_gravity>("1.05 sg 20/20 C", "its unit sg alone");
    refuses<extract>("12 kg", "'kg' is the unit of a mass; expected an extract: plato");
    refuses<parcel>("3 L, 40 %vol", "expected amount, strength, temperature");
    refuses<parcel>("3 m, 40 %vol, 20 C", "'m' is the unit of a length; expected a volume or a mass");
    refuses<liquid>("3 L, 40 %vol, 20 C", "expected strength, temperature");
}

TEST(Parse, RefusesQuantitiesOutsideTheirRange) {
    expect_refusal([] { static_cast<void>(parse<volume_fraction>("120 %vol")); },
                   "alcoholic strength by volume");
    expect_refusal([] { static_cast<void>(parse<mass_concentration>("79.9 g/100 mL")); },
                   "mass concentration");
    expect_refusal([] { static_cast<void>(parse<mass_fraction>("950 kg/m3 at 120 C")); }, "temperature");
    expect_refusal([] { static_cast<void>(parse<specific_gravity>("3 sg")); }, "specific gravity");
    expect_refusal([] { static_cast<void>(parse<parcel>("-3 L, 40 %vol, 20 C")); }, "volume");
    expect_refusal([] { static_cast<void>(parse<liquid>("40 %vol, 95 C")); }, "temperature");
}

// --- text_of and back --------------------------------------------------------------------------------------

/// Numbers as people write them, and some that only a computation gives.
constexpr double written[] = {0.0, 0.07, 0.1, 0.29, 1.0, 3.5, 7.0, 12.34, 33.3, 57.0, 58.1, 78.0};
constexpr double computed[] = {1.0 / 3.0, 2.0 / 7.0, 10.0 / 3.0, 1e-3 / 7.0, 100.0 / 7.0, 55.0 / 3.0};

/// @param make callable: number in the printed unit -> quantity
/// @param held callable: quantity -> the number that it holds
template <class Make, class Held>
void returns(Make const& make, Held const& held) {
    using quantity = decltype(make(1.0));
    for (double const number : written) {
        quantity const x = make(number);
        EXPECT_EQ(held(parse<quantity>(text_of(x))), held(x)) << text_of(x);
    }
    // Seventeen digits of a converted number: its rounding and that of the conversion back.
    for (double const number : computed) {
        quantity const x = make(number);
        EXPECT_NEAR(held(parse<quantity>(text_of(x))), held(x), 4e-16 * std::abs(held(x))) << text_of(x);
    }
}

template <class... Quantity>
void return_all() {
    auto const each = []<class Q>(std::type_identity<Q>) {
        constexpr double unit = text::unit_table<Q>::printed.si;
        returns([](double number) { return Q::from_value(number * unit); }, [](Q q) { return q.value(); });
    };
    (each(std::type_identity<Quantity>()), ...);
}

TEST(ParseOfText, GivesTheQuantityBack) {
    return_all<units::volume, units::mass, units::amount, units::mass_density, units::temperature_difference,
               units::molar_volume, units::pressure, units::length, units::time, units::energy, units::power,
               units::heat_capacity, units::thermal_conductance, units::molar_energy,
               units::molar_heat_capacity, units::specific_energy, units::specific_heat_capacity,
               units::cubic_expansion>();
    returns([](double t) { return celsius(-t); }, [](units::temperature t) { return t.celsius(); });
}

TEST(ParseOfText, GivesTheStrengthBack) {
    auto const number = [](auto strength) { return strength.number(); };
    returns(by_mass, number);
    returns(by_moles, number);
    returns(by_volume<at_20_celsius>, number);
    returns(by_volume<at_15_celsius>, number);
    returns(by_volume<at_15_56_celsius>, number);
    returns(by_volume<at_60_fahrenheit>, number);
    returns(proof, number);
    returns(grams_per_100_millilitres<at_20_celsius>, number);
    returns(grams_per_100_millilitres<at_15_celsius>, number);
    returns(grams_per_100_millilitres<at_15_56_celsius>, number);
    returns(grams_per_100_millilitres<at_60_fahrenheit>, number);
    returns([](double n) { return specific_gravity(0.7 + 0.01 * n); }, [](auto g) { return g.value(); });
    auto const degrees = [](auto e) { return e.degrees(); };
    returns([](double n) { return plato(0.8 * n); }, degrees);
    returns([](double n) { return apparent_extract(0.8 * n - 10.0); }, degrees);
}

// Their strengths are converted to % vol and back, which closes within a few units of the last place.
TEST(ParseOfText, GivesTheParcelBack) {
    for (double const percent : {0.0, 0.3, 11.0, 40.0, 57.15, 96.0, 100.0}) {
        parcel const x = parcel::of(2.5 * litre, by_volume(percent), celsius(12.3));
        parcel const y = parse<parcel>(text_of(x));
        EXPECT_EQ(y.mass(), x.mass()) << text_of(x);
        EXPECT_EQ(y.temperature(), x.temperature()) << text_of(x);
        EXPECT_NEAR(y.composition().value(), x.composition().value(), 2e-15) << text_of(x);
        liquid const z = parse<liquid>(text_of(x.liquid()));
        EXPECT_EQ(z.temperature(), x.temperature());
        EXPECT_NEAR(z.composition().value(), x.composition().value(), 2e-15);
    }
}

}  // namespace
}  // namespace aqueth
