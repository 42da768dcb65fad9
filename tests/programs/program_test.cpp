// SPDX-License-Identifier: BSL-1.0
// How the programs read quantities. Units are checked against their definitions (from memory; NIST SP 811,
// 2008, appendix B): US gallon 231 cubic inches of 25.4 mm, pound 0.45359237 kg, imperial gallon 4.54609 L,
// mmHg 133.3224 Pa, inHg 3386.389 Pa, psi 6894.757 Pa, foot 0.3048 m.
#include "program.hpp"

#include <gtest/gtest.h>

#include <initializer_list>
#include <locale>
#include <string>
#include <vector>

namespace program {
namespace {

given option(std::string const& text) { return {"--option", text, true}; }

double litres(std::string const& text) { return in(read_volume(option(text)), litre); }
double kilograms(std::string const& text) {
    return in(std::get<units::mass>(read_amount(option(text))), kilogram);
}
double celsius_of(std::string const& text) { return read_temperature(option(text)).celsius(); }

/// the message with which a text is refused
template <class Read>
std::string refusal(Read const& read, std::string const& text) {
    try {
        static_cast<void>(read(option(text)));
    } catch (bad_input const& error) {
        EXPECT_EQ(std::string(error.what()).rfind("--option '", 0), 0u) << error.what();
        return error.what();
    }
    ADD_FAILURE() << "not refused: " << text;
    return {};
}

auto const as_volume = [](given const& g) { return read_volume(g); };
auto const as_amount = [](given const& g) { return read_amount(g); };
auto const as_temperature = [](given const& g) { return read_temperature(g); };
auto const as_strength = [](given const& g) { return read_strength(g); };
auto const as_count = [](given const& g) { return read_count(g, 1000); };

TEST(Volumes, HaveUnitsAsPeopleWriteThem) {
    for (char const* text :
         {"0.7L", "0.7 l", "700 mL", "700ml", " 700  mL ", "70 cl", "7 dL", "700 cc", "700 cm³", "700 cm3",
          ".7 litre", "+0.7 liters", "0.007 hL", "7e-4 m3", "700\u00a0mL", "7e2 mL"}) {
        EXPECT_NEAR(litres(text), 0.7, 1e-15) << text;
    }
    for (char const* text : {"2 gal", "2 US gal", "2 gallons", "256 fl oz", "256 US fl oz"}) {
        EXPECT_NEAR(litres(text), 2 * 231 * 0.0254 * 0.0254 * 0.0254 * 1000, 1e-12) << text;
    }
    EXPECT_NEAR(litres("2 imp gal"), 9.09218, 1e-12);
    EXPECT_NEAR(litres("2 UK gal"), 9.09218, 1e-12);
}

// NIST Handbook 44, appendix C (from memory): 4 quarts or 8 pints are a US gallon of 231 cubic inches.
TEST(Volumes, HaveNumbersAsPeopleWriteThem) {
    double const gallon = 231 * 0.0254 * 0.0254 * 0.0254 * 1000;
    for (char const* text :
         {"1 1/2 gal", "1,5 gal", "3/2 gal", "6 qt", "12 pints", "1 gal 2 quarts", "1gal 4pt"})
        EXPECT_NEAR(litres(text), 1.5 * gallon, 1e-14) << text;
    EXPECT_EQ(litres("3,5 L"), 3.5);
    EXPECT_EQ(litres("3L"), 3.0);
    EXPECT_EQ(litres("0,750 L"), 0.75);
    std::string const ambiguous = refusal(as_volume, "1,234 L");
    EXPECT_NE(ambiguous.find("'1,234' can mean 1.234 or 1234"), std::string::npos) << ambiguous;
    EXPECT_NE(refusal(as_amount, "4 lbbs").find("did you mean lbs?"), std::string::npos);
    EXPECT_TRUE(is_us_customary("1 1/2 qt"));
    EXPECT_TRUE(is_us_customary("1 gal 2 pt"));
    EXPECT_FALSE(is_us_customary("1,5 L"));
}

TEST(Masses, HaveUnitsAsPeopleWriteThem) {
    for (char const* text : {"1.5 kg", "1500 g", "1.5kg", "1500 grams"})
        EXPECT_NEAR(kilograms(text), 1.5, 1e-15) << text;
    EXPECT_NEAR(kilograms("2 lb"), 0.90718474, 1e-15);
    EXPECT_NEAR(kilograms("32 oz"), 0.90718474, 1e-15);
    EXPECT_NEAR(kilograms("4 lb 6 oz"), 4.375 * 0.45359237, 1e-15);
}

TEST(Temperatures, HaveUnitsAsPeopleWriteThem) {
    for (char const* text : {"20 C", "20C", "20 °C", "20°C", "20 ºC", "20 ℃", "20 degC", "20 deg C",
                             "20 Celsius", "68 F", "68°F", "68 ℉", "293.15 K", "293.15 kelvin"}) {
        EXPECT_NEAR(celsius_of(text), 20.0, 1e-12) << text;
    }
    EXPECT_EQ(celsius_of("-20 C"), -20.0);
    EXPECT_EQ(celsius_of("40 C"), 40.0);
}

TEST(Strengths, KeepTheBasisTheyAreWrittenIn) {
    for (char const* text : {"43 %vol", "43% vol", "43 % VOL", "43 %abv", "43 % v/v", "43 vol%", "43 L/hL",
                             "43 %vol at 20 C", "43 %vol@68F", "43 % by volume"}) {
        EXPECT_EQ(std::get<volume_fraction>(read_strength(option(text))), by_volume(43.0)) << text;
    }
    for (char const* text : {"43 %mass", "43% w/w", "43 wt%", "43 % by weight", "43 % m/m"}) {
        EXPECT_EQ(std::get<mass_fraction>(read_strength(option(text))), by_mass(43.0)) << text;
    }
    EXPECT_EQ(std::get<us_proof>(read_strength(option("90 proof"))), proof(90.0));
    EXPECT_EQ(std::get<us_proof>(read_strength(option("90 US proof"))), proof(90.0));
    EXPECT_EQ(std::get<us_proof>(read_strength(option("90 proof at 60 F"))), proof(90.0));
    EXPECT_EQ(std::get<mole_fraction>(read_strength(option("0.35 mol/mol"))), by_moles(35.0));
    EXPECT_EQ(std::get<mole_fraction>(read_strength(option("35 %mol"))), by_moles(35.0));
    EXPECT_EQ(std::get<mass_concentration>(read_strength(option("35 g/100 mL"))),
              grams_per_100_millilitres(35.0));
    EXPECT_EQ(std::get<mass_concentration>(read_strength(option("350 g/L"))),
              grams_per_100_millilitres(35.0));
    EXPECT_EQ(std::get<basic_volume_fraction<at_60_fahrenheit>>(read_strength(option("45 %vol at 60 F"))),
              by_volume<at_60_fahrenheit>(45.0));
    EXPECT_EQ(std::get<basic_volume_fraction<at_15_celsius>>(read_strength(option("45 %vol at 15 °C"))),
              by_volume<at_15_celsius>(45.0));
    EXPECT_EQ(std::get<basic_volume_fraction<at_15_56_celsius>>(read_strength(option("45 %vol at 15.56 C"))),
              by_volume<at_15_56_celsius>(45.0));
}

TEST(Strengths, MayBeDensitiesAndGravities) {
    auto const w = by_mass(38.0);
    auto const density_text = [&](units::temperature t, char const* unit, double factor) {
        return fmt::format("{} {}", density(w, t).value() / factor, unit);
    };
    auto const gravity_text = [&](gravity_reference const& reference, char const* unit) {
        return fmt::format("{} {}", specific_gravity_of(w, reference).value(), unit);
    };
    for (std::string const& text : {
             density_text(celsius(20), "kg/m3", 1.0),
             density_text(celsius(20), "kg/m³", 1.0),
             density_text(celsius(15), "kg/m3 at 15 C", 1.0),
             density_text(fahrenheit(60), "g/cm3 at 60 F", 1000.0),
             density_text(celsius(20), "g/mL", 1000.0),
             gravity_text({}, "sg"),
             gravity_text({celsius(20), celsius(4)}, "sg 20/4 C"),
             gravity_text({celsius(15.56), celsius(15.56)}, "sg 15.56/15.56 °C in vacuo"),
             gravity_text({fahrenheit(60), fahrenheit(60), medium::air}, "SG 60°F/60°F in air"),
             gravity_text({fahrenheit(60), fahrenheit(60), medium::air}, "sg 60/60 F in air"),
         }) {
        EXPECT_NEAR(composition(read_strength(option(text))).value(), 0.38, 1e-13) << text;
    }
}

TEST(Pressures, HaveUnitsAsPeopleWriteThem) {
    auto const pascals = [](char const* text) {
        return in(read_pressure(option(text)), newton_per_square_metre);
    };
    for (char const* text : {"101.325 kPa", "1013.25 hPa", "1013.25hPa", "1013.25 mbar", "1.01325 bar",
                             "101325 Pa", "1 atm", "760 torr"}) {
        EXPECT_NEAR(pascals(text), 101325.0, 1e-9) << text;
    }
    EXPECT_NEAR(pascals("1 mmHg"), 133.3224, 5e-5);
    EXPECT_NEAR(pascals("1 inHg"), 3386.389, 5e-4);
    EXPECT_NEAR(pascals("1 psi"), 6894.757, 5e-4);
}

TEST(Altitudes, HaveUnitsAsPeopleWriteThem) {
    for (char const* text : {"1524 m", "1524 metres", "5000 ft", "5000 feet", "5000ft"}) {
        EXPECT_NEAR(in(read_altitude(option(text)), metre), 1524.0, 1e-9) << text;
    }
}

TEST(Air, IsAPressureOrAnAltitudeOrSeaLevel) {
    given const none, pressure = option("90 kPa"), altitude = option("5000 m"), sea{"--altitude", "0 m"};
    EXPECT_EQ(read_pressure(surroundings{none, sea}), standard_atmosphere);
    EXPECT_EQ(read_pressure(surroundings{pressure, sea}), 90.0 * kilopascal);
    // By the equations of ISO 2533:1975: geopotential altitude 6356766 m * 5000/6361766 = 4996.07 m,
    // 288.15 K - 0.0065 K/m * 4996.07 m = 255.6755 K, 101325 Pa * (255.6755/288.15)^5.255877 = 54048 Pa.
    EXPECT_NEAR(in(read_pressure(surroundings{none, altitude}), newton_per_square_metre), 54048.0, 1.0);
    EXPECT_THROW(read_pressure(surroundings{pressure, altitude}), bad_input);
}

TEST(Counts, AreWholeNumbers) {
    EXPECT_EQ(read_count(option("1"), 1000), 1);
    EXPECT_EQ(read_count(option(" 1000 "), 1000), 1000);
    EXPECT_EQ(read_count(option("1e2"), 1000), 100);
    for (char const* text :
         {"0", "1001", "-1", "2.5", "two", "", "nan", "inf", "1e-2", "1e2.5", "99999999999999999999"}) {
        EXPECT_NE(refusal(as_count, text).find("whole number from 1 to 1000"), std::string::npos) << text;
    }
}

TEST(Refusals, NameTheFault) {
    struct {
        char const *text, *says;
    } const volumes_not_read[] = {
        {"", "the value is empty"},
        {"   ", "the value is empty"},
        {"700", "the unit is missing"},
        {"mL", "not a number"},
        {"- 700 mL", "not a number"},
        {"--700 mL", "not a number"},
        {"nan mL", "not a number"},
        {"NaN mL", "not a number"},
        {"inf L", "not a number"},
        {"-infinity L", "not a number"},
        {"1e400 L", "too large"},
        {"1e-400 L", "too small"},
        {"1,234.5 L", "decimal point"},
        {"1,000 L", "can mean 1.000 or 1000"},
        {"1 000 L", "decimal point"},
        {"1'000 L", "decimal point"},
        {"1.000.5 L", "decimal point"},
        {"0x10 L", "unknown unit 'x10 L'"},
        {"7 pimts", "did you mean pints?"},
        {"7 L L", "unknown unit"},
        {"7 L/hL", "unit of a strength"},
        {"7 kg", "unit of a mass"},
        {"7 K", "unit of a temperature"},
        {"0 L", "is outside 1e-06 to 1e+09 L"},
        {"-1 L", "volume -1 L"},
        {"1e10 L", "volume 1e+10 L"},
    };
    for (auto const& c : volumes_not_read) {
        EXPECT_NE(refusal(as_volume, c.text).find(c.says), std::string::npos) << c.text;
    }
    EXPECT_NE(refusal(as_amount, "20 C").find("expected a volume or a mass: mL"), std::string::npos);
    EXPECT_NE(refusal(as_amount, "-1 kg").find("mass -1 kg is outside"), std::string::npos);
    EXPECT_NE(refusal(as_temperature, "20").find("the unit is missing; expected a temperature: C, F or K"),
              std::string::npos);
    EXPECT_NE(refusal(as_temperature, "20°").find("unknown unit '°'"), std::string::npos);
    EXPECT_NE(refusal(as_temperature, "20 C C C").find("unknown unit 'C C C'"), std::string::npos);
    EXPECT_NE(refusal(as_temperature, "100.001 C").find("is outside -20 to 99.97"), std::string::npos);
    EXPECT_NE(refusal(as_temperature, "20 K").find("temperature -253.15 °C"), std::string::npos);
    EXPECT_NE(refusal(as_strength, "43 %").find("%vol, %mass or %mol"), std::string::npos);
    EXPECT_NE(refusal(as_strength, "43 %vol at 20").find("the unit is missing"), std::string::npos);
    EXPECT_NE(refusal(as_strength, "43 %vol at 18 C").find("20 C, 15 C, 15.56 C or 60 F"), std::string::npos);
    EXPECT_NE(refusal(as_strength, "45 %mass at 60 F").find("a mass fraction does not depend on temperature"),
              std::string::npos);
    EXPECT_NE(refusal(as_strength, "45 %mol at 20 C").find("a mole fraction does not depend on temperature"),
              std::string::npos);
    EXPECT_NE(refusal(as_strength, "0.95 sg at 20 C").find("sg 20/20 C"), std::string::npos);
    EXPECT_NE(refusal(as_strength, "0.95 sg 20/ C").find("not a number"), std::string::npos);
    EXPECT_NE(refusal(as_strength, "0.95 sg /20 C").find("the value is empty"), std::string::npos);
    EXPECT_NE(refusal(as_strength, "0.95 sg 120/20 C").find("120 °C"), std::string::npos);
}

TEST(Refusals, NameTheOptionThatAnArgumentCameFrom) {
    given const temperature{"--temperature", "-1 C", true}, other{"--other", "5 L", true};
    auto const message = [&](std::initializer_list<origin> origins) -> std::string {
        try {
            on_behalf_of(origins, [] { return density(mass_fraction(0.0), celsius(-1.0)); });
        } catch (bad_input const& error) {
            return error.what();
        } catch (aqueth::refusal const& error) {
            return error.what();
        }
        return {};
    };
    EXPECT_EQ(message({{argument::volume, other}, {argument::temperature, temperature}})
                  .rfind("--temperature '-1 C': temp", 0),
              0u);
    EXPECT_EQ(message({{argument::volume, other}}).rfind("density: temperature -1 ", 0), 0u)
        << "nobody's fault";
}

TEST(Refusals, AreOneShortLine) {
    std::string const message = refusal(as_volume, "7 \n\t\x01" + std::string(5000, 'x'));
    EXPECT_EQ(message.find_first_of("\n\t\x01"), std::string::npos);
    EXPECT_LT(message.size(), 400u);
    EXPECT_EQ(printable(std::string(59, 'x') + "°"), std::string(59, 'x') + "...") << "no half characters";
}

struct decimal_comma : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

TEST(Locale, ChangesNothing) {
    std::locale const before = std::locale::global(std::locale(std::locale::classic(), new decimal_comma));
    EXPECT_EQ(litres("1234.5 L"), 1234.5);
    EXPECT_EQ(litres("1234,5 L"), 1234.5);
    EXPECT_EQ(number(1234.5, 5), "1234.5");
    EXPECT_EQ(wording{}.volume(12345.6 * litre), "12346 L");
    EXPECT_EQ(json(1234.5).text(), "1234.5");
    std::locale::global(before);
}

TEST(Json, IsWrittenAsItWasBuilt) {
    json const object{
        {"number", 0.5}, {"count", 3}, {"text", "a \"b\""}, {"nothing", nullptr}, {"truth", true}};
    EXPECT_EQ(object.text(), "{\n  \"number\": 0.5,\n  \"count\": 3,\n  \"text\": \"a \\\"b\\\"\",\n  "
                             "\"nothing\": null,\n  \"truth\": true\n}");
    EXPECT_EQ(json({1.0, 2.0}).text(), "[\n  1.0,\n  2.0\n]");
    EXPECT_EQ(json({"two", "words"}).text(), "[\n  \"two\",\n  \"words\"\n]");
    EXPECT_EQ(json(std::vector<double>{}).text(), "[]");
    EXPECT_EQ(json::object().text(), "{}");
    EXPECT_EQ(json(std::numeric_limits<double>::infinity()).text(), "null");
    EXPECT_EQ(json("\xff").text(), "\"\xef\xbf\xbd\"");  // no UTF-8: the sign for what cannot be shown
    json changed;
    changed["list"].push_back(1);
    changed["list"].push_back({{"a", 2}});
    changed.update({{"list", 7}, {"more", json::array()}});
    EXPECT_EQ(changed.text(), "{\n  \"list\": 7,\n  \"more\": []\n}");
}

TEST(Numbers, HaveSignificantDigitsAndNoExponent) {
    EXPECT_EQ(number(0.0), "0");
    EXPECT_EQ(number(-1e-17), "0");
    EXPECT_EQ(number(1.63982353), "1.640");
    EXPECT_EQ(number(-0.0123456, 5), "-0.012346");
    EXPECT_EQ(number(123456.7), "123457");
    EXPECT_EQ(number(1e9), "1000000000");
}

TEST(Page, HasNoSignBeforeAZero) {
    page text;
    text.say("{:.2f} % vol, {:+.2f} and ({:.1f})", -1e-9, -0.001, -0.0);
    text.row("correction", "{:+.2f}", -1e-12);
    text.say("|{:>8.2f}|{:>8.2f}|", -0.001, -0.01);
    text.say("R 22-0, 2026-01-05, --0, '-0 C', -0.01, -0.5, -0e-3, 1e-05, -05, -0.0");
    EXPECT_EQ(text.text(), "0.00 % vol, 0.00 and (0.0)\n"
                           "  correction        0.00\n"
                           "|    0.00|   -0.01|\n"
                           "R 22-0, 2026-01-05, --0, '-0 C', -0.01, -0.5, -0e-3, 1e-05, -05, 0.0\n");
}

TEST(Wording, IsMetricOrCustomary) {
    EXPECT_EQ(wording{}.mass(1.5 * kilogram), "1.500 kg");
    EXPECT_EQ(wording{}.mass(150.0 * gram), "150.0 g");
    EXPECT_EQ(wording{}.volume(0.7 * litre), "700.0 mL");
    EXPECT_EQ(wording{true}.mass(1.5 * pound), "1.500 lb");
    EXPECT_EQ(wording{true}.volume(64.0 * us_fluid_ounce), "64.00 US fl oz");
    EXPECT_EQ(wording{true}.volume(2.0 * us_gallon), "2.0000 US gal");
    EXPECT_EQ(wording{true}.volume(25168.83 * us_gallon), "25168.8 US gal");
    EXPECT_EQ(wording{true}.temperature(celsius(20)), "68 °F");
    EXPECT_EQ(wording{true}.strength(to<mass_fraction>(proof(90.0))), "90.0 US proof");
    EXPECT_EQ(wording{true}.alcohol(parcel::of(100.0 * us_gallon, proof(90.0), fahrenheit(60))),
              "90.000 proof gal");
    // 27 CFR 30.65, table 5, as the tests of the US gauging manual read it: 190 proof weighs 6.7943 lb a
    // gallon.
    EXPECT_EQ(wording{true}.density(density(to<mass_fraction>(proof(190.0)), fahrenheit(60))).substr(0, 5),
              "6.794");
}

// OIML D 28: a kilogram of water on a balance is 1.00105 kg of mass, and the balance shows a kilogram again.
TEST(Wording, KnowsThatABalanceStandsInAir) {
    parcel const weighed = make_parcel(amount(1.0 * kilogram), mass_fraction(0.0), celsius(20));
    EXPECT_NEAR(in(weighed.mass(), kilogram), 1.00105, 5e-6);
    EXPECT_NEAR(in(balance_indication_of(weighed), kilogram), 1.0, 1e-15);
    EXPECT_EQ(wording{}.weight(weighed), "1.000 kg");
}

TEST(Quantities, TellUsCustomaryUnits) {
    for (char const* text :
         {"190 proof", "3 gal", "2 US gal", "3 gal.", "1½ gal", "½ gal", "12 fl. oz.", "12 floz", "81000 lb",
          "16 fl oz", "3.2 gal, 62 %vol, 18 C", "80 to 100 proof by 5", "proof", "12.oz"})
        EXPECT_TRUE(is_us_customary(text)) << text;
    for (char const* text : {"3 L", "2 imp gal", "45 %vol at 60 F", "65 F", "pounds.csv", "waterproof",
                             "3 galaxies", "80 %vol", ""})
        EXPECT_FALSE(is_us_customary(text)) << text;
}

TEST(Instruments, ReadOnlyTheirOwnScale) {
    given const glass = option("soda-lime"), uncorrected = option("");
    auto const kind_of = [&](std::string const& scale) {
        given const g = option(scale);
        stem const meter({g, glass, uncorrected});
        return fmt::format("{}, {:.2f}", name_of(meter.scale()), meter.scale().reference.celsius());
    };
    EXPECT_EQ(kind_of("%vol"), "% vol at 20 °C, 20.00");
    EXPECT_EQ(kind_of("%vol at 15 C"), "% vol at 15 °C, 15.00");
    EXPECT_EQ(kind_of("%vol at 60 F"), "% vol at 60 °F, 15.56");
    EXPECT_EQ(kind_of("proof"), "US proof, 15.56");
    EXPECT_EQ(kind_of("%mass at 15 C"), "% mass at 15 °C, 15.00");
    EXPECT_EQ(kind_of("%mol"), "% mol at 20 °C, 20.00");
    EXPECT_EQ(kind_of("g/100 mL"), "g/100 mL at 20 °C, 20.00");
    EXPECT_EQ(kind_of("kg/m3 at 15 C"), "kg/m3 at 15 °C, 15.00");
    EXPECT_EQ(kind_of("g/cm3"), "g/cm3 at 20 °C, 20.00");
    EXPECT_EQ(kind_of("sg 60/60 F in air"), "specific gravity 60 °F/60 °F in air, 15.56");

    given const proof_scale = option("proof");
    stem const meter({proof_scale, glass, uncorrected});
    EXPECT_NE(
        refusal([&](given const& g) { return meter.number(g); }, "84 %vol").find("the scale is US proof"),
        std::string::npos);
    EXPECT_EQ(meter.number(option("90 proof")), 90.0);
    given const per_cubic_centimetre = option("g/cm3");
    EXPECT_EQ(stem({per_cubic_centimetre, glass, uncorrected}).number(option("935 kg/m3")), 0.935);
}

TEST(Instruments, HaveGlass) {
    EXPECT_EQ(read_expansion(option("soda-lime")), soda_lime_glass);
    EXPECT_EQ(read_expansion(option("borosilicate")), borosilicate_glass);
    EXPECT_EQ(read_expansion(option("25e-6 /K")), soda_lime_glass);
    auto const as_glass = [](given const& g) { return read_expansion(g); };
    EXPECT_NE(refusal(as_glass, "25e-6").find("the unit is missing"), std::string::npos);
    EXPECT_NE(refusal(as_glass, "25e-6 /F").find("unknown unit"), std::string::npos);
    EXPECT_NE(refusal(as_glass, "-1e-6 /K").find("is outside 0 to 0.0003 /K"), std::string::npos);
    EXPECT_NE(refusal(as_glass, "crystal").find("soda-lime, borosilicate"), std::string::npos);
}

}  // namespace
}  // namespace program
