// SPDX-License-Identifier: BSL-1.0
#include <aqueth/io.hpp>

#include <aqueth/plain/density.hpp>

#include <gtest/gtest.h>

#include <iomanip>
#include <locale>
#include <sstream>
#include <string>

// From outside the namespace, as in a user's program: the operators must be found there.
namespace {

template <class... Part>
std::string streamed(Part const&... part) {
    std::ostringstream out;
    (out << ... << part);
    return out.str();
}

TEST(Io, StreamsTakeQuantities) {
    EXPECT_EQ(streamed(aqueth::celsius(20)), "20 °C");
    EXPECT_EQ(streamed(3 * aqueth::litre, ", ", aqueth::by_volume(40)), "3 L, 40 % vol at 20 °C");
    EXPECT_EQ(streamed(aqueth::proof(80)), "80 US proof");
    EXPECT_EQ(streamed(aqueth::specific_gravity(0.95)), "0.95 sg");
    EXPECT_EQ(streamed(aqueth::liquid::of(aqueth::by_volume(40), aqueth::celsius(15))),
              "40 % vol at 20 °C, 15 °C");
    EXPECT_EQ(streamed(aqueth::water(2 * aqueth::kilogram, aqueth::celsius(15))),
              "2 kg, 0 % vol at 20 °C, 15 °C");
    EXPECT_EQ(streamed(aqueth::plain::density_kg_m3(0.4, 95.0).status),
              "refused: temperature 95 °C is outside -20 to 82.84463 °C (liquid, up to its boiling point at "
              "101.325 kPa)");
}

TEST(Io, StreamsTakeRefusals) {
    try {
        static_cast<void>(aqueth::by_volume(140));
        ADD_FAILURE() << "140 % vol was accepted";
    } catch (aqueth::refusal const& error) {
        EXPECT_EQ(streamed(error), error.what());
    }
}

TEST(Io, PrecisionNotationAndWidthAreThoseOfTheStream) {
    aqueth::units::volume const third = 1.0 / 3.0 * aqueth::litre;
    EXPECT_EQ(streamed(third), "0.333333 L");
    EXPECT_EQ(streamed(std::setprecision(3), third), "0.333 L");
    EXPECT_EQ(streamed(std::fixed, std::setprecision(1), aqueth::by_volume(40)), "40.0 % vol at 20 °C");
    EXPECT_EQ(streamed(std::setw(10), third * 3, "|"), "       1 L|");
    EXPECT_EQ(streamed(std::fixed, std::setprecision(1), aqueth::celsius(-0.0)), "0.0 °C");
}

// A locale with a decimal comma and points between thousands.
struct decimal_comma : std::numpunct<char> {
    char do_decimal_point() const override { return ','; }
    char do_thousands_sep() const override { return '.'; }
    std::string do_grouping() const override { return "\3"; }
};

TEST(Io, TheLocaleChangesNothing) {
    std::ostringstream out;
    out.imbue(std::locale(std::locale::classic(), new decimal_comma));
    out << 1234.5;
    ASSERT_EQ(out.str(), "1.234,5");  // the locale is in force
    out << ' ' << 1234.5 * aqueth::litre;
    EXPECT_EQ(out.str(), "1.234,5 1234.5 L");
}

}  // namespace
