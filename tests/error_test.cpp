// SPDX-License-Identifier: BSL-1.0
#include <aqueth/error.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <clocale>
#include <cmath>
#include <cstdlib>
#include <cstring>
#include <limits>
#include <set>
#include <string>
#include <utility>

namespace aqueth {
namespace {

constexpr double infinity = std::numeric_limits<double>::infinity();
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

static_assert(require_range("density", "temperature", 20.0, "°C", -20.0, 40.0) == 20.0);
static_assert(require_range("density", argument::temperature, 40.0, "°C", -20.0, 40.0) == 40.0);

TEST(Error, PassesWhatIsInRange) {
    EXPECT_EQ(require_range("parcel", "mass", 0.0, "kg", 0.0, infinity), 0.0);
    EXPECT_EQ(require_range("parcel", "mass", 1e300, "kg", 0.0, infinity), 1e300);
}

TEST(Error, NaNAndInfinityAreOutsideEveryRange) {
    for (double const bad : {nan, infinity, -infinity}) {
        EXPECT_THROW(require_range("parcel", "mass", bad, "kg", 0.0, infinity), refusal);
        EXPECT_THROW(require_range("density", "temperature", bad, "°C", -20.0, 40.0), refusal);
    }
}

TEST(Error, SaysWhatWhichHowMuchAndWhatIsAllowed) {
    EXPECT_STREQ(refusal("density", "temperature", 45.0, "°C", -20.0, 40.0, "OIML R 22").what(),
                 "density: temperature 45 °C is outside -20 to 40 °C (OIML R 22)");
    EXPECT_STREQ(refusal("parcel", "volume", -1.0, "L", 0.0, infinity, "").what(),
                 "parcel: volume -1 L is not a number of at least 0 L");
    EXPECT_STREQ(refusal("parcel", "volume", nan, "L", 0.0, infinity, "").what(),
                 "parcel: volume nan L is not a number of at least 0 L");
}

TEST(Error, ShowsTheRefusedValueApartFromTheRange) {
    EXPECT_STREQ(refusal("density", "temperature", 40.00000004, "°C", -20.0, 40.0, "").what(),
                 "density: temperature 40.00000004 °C is outside -20 to 40 °C");
    EXPECT_STREQ(refusal("blend", "target strength", 88.0, "% vol", 0.0, 87.99999999, "").what(),
                 "blend: target strength 88 % vol is outside 0 to 87.99999999 % vol");
    EXPECT_STREQ(refusal("parcel", "mass", 0.99999999, "kg", 1.0, infinity, "").what(),
                 "parcel: mass 0.99999999 kg is not a number of at least 1 kg");
    EXPECT_STREQ(refusal("a", "b", -1.23456789e-300, "", -1.23456788e-300, 1.0, "").what(),
                 "a: b -1.23456789e-300 is outside -1.23456788e-300 to 1");
    // Neighbouring doubles need up to seventeen digits.
    for (double const bound : {40.0, 0.1, 1.0 / 3.0, 99.97432, 1e-310, 1.7e308}) {
        for (double const value : {std::nextafter(bound, infinity), std::nextafter(bound, -infinity)}) {
            std::string const outside = refusal("a", "b", value, "", bound, bound, "").what();
            std::string const no_number = refusal("a", "b", value, "", bound, infinity, "").what();
            for (auto const& text : {outside, no_number}) {
                auto const after = [&](char const* word) {
                    return std::strtod(text.c_str() + text.find(word) + std::strlen(word), nullptr);
                };
                EXPECT_NE(after("a: b "), after(text.find("outside") < text.size() ? "outside " : "least "))
                    << text;
            }
        }
    }
}

TEST(Error, HasNoMoreDigitsThanThat) {
    EXPECT_STREQ(refusal("a", "b", 1.0 / 3.0, "", 2.0 / 3.0, 1.0, "").what(),
                 "a: b 0.3333333 is outside 0.6666667 to 1");
    // A value that equals a bound (an open end) is printed like the bound.
    EXPECT_STREQ(refusal("a", "b", 1.0 / 3.0, "", 1.0 / 3.0, 1.0, "").what(),
                 "a: b 0.3333333 is outside 0.3333333 to 1");
    EXPECT_STREQ(refusal("a", "b", infinity, "", 0.0, infinity, "").what(),
                 "a: b inf is not a number of at least 0");
    EXPECT_STREQ(refusal("a", "b", nan, "", nan, nan, "").what(), "a: b nan cannot be met");
}

TEST(Error, CarriesItsFacts) {
    refusal const error("density", "temperature", 45.0, "°C", -20.0, 40.0, "OIML R 22");
    EXPECT_EQ(error.property(), "density");
    EXPECT_EQ(error.argument(), "temperature");
    EXPECT_EQ(error.unit(), "°C");
    EXPECT_EQ(error.reason(), "OIML R 22");
    EXPECT_EQ(error.value(), 45.0);
    EXPECT_EQ(error.lower(), -20.0);
    EXPECT_EQ(error.upper(), 40.0);
}

TEST(Error, CarriesACodeWhoseWordsAreItsText) {
    refusal const known("heating", argument::temperature_of_the_room, 90.0, "°C", -40.0, 60.0, "");
    EXPECT_EQ(known.code(), argument::temperature_of_the_room);
    EXPECT_EQ(known.argument(), "temperature of the room");
    EXPECT_STREQ(known.what(), "heating: temperature of the room 90 °C is outside -40 to 60 °C");

    refusal const more("reading", {argument::reading, std::string("reading in line ") + "3"}, 2.0, "", 0.0,
                       1.0, "");
    EXPECT_EQ(more.code(), argument::reading);
    EXPECT_EQ(more.argument(), "reading in line 3");

    // A quantity that the library does not know has only words.
    EXPECT_EQ(refusal("a", "temperature", 2.0, "", 0.0, 1.0, "").code(), argument::other);
    EXPECT_STREQ(name_of(argument::other), "argument");

    auto const code_of = [](auto const& refused) {
        try {
            require_range("a", refused, 2.0, "", 0.0, 1.0);
        } catch (refusal const& e) {
            return std::pair(e.code(), e.argument());
        }
        return std::pair(argument::other, std::string());
    };
    EXPECT_EQ(code_of(argument::mass), std::pair(argument::mass, std::string("mass")));
    EXPECT_EQ(code_of(argument_name(argument::mass, "mass of B")),
              std::pair(argument::mass, std::string("mass of B")));
    EXPECT_EQ(code_of("tea"), std::pair(argument::other, std::string("tea")));
}

// Each quantity has a code, and each code has a name.
TEST(Error, NoTwoCodesHaveTheSameWords) {
    std::set<std::string> words;
    int const last = static_cast<int>(argument::years);
    for (int i = 0; i <= last; ++i) {
        EXPECT_TRUE(words.insert(name_of(static_cast<argument>(i))).second) << i;
    }
    EXPECT_GT(words.size(), 100u);
    EXPECT_STREQ(name_of(static_cast<argument>(last + 1)), "argument") << "years is no longer the last";
}

TEST(Error, TextDoesNotChangeWithTheLocale) {
    std::string const before = refusal("a", "b", 1.5, "", 2.5, 3.5, "").what();
    // Where the locale is not installed setlocale does nothing and the test still holds.
    std::setlocale(LC_ALL, "de_DE.UTF-8");
    std::string const after = refusal("a", "b", 1.5, "", 2.5, 3.5, "").what();
    std::setlocale(LC_ALL, "C");
    EXPECT_EQ(before, after);
}

}  // namespace
}  // namespace aqueth
