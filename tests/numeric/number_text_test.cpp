// SPDX-License-Identifier: BSL-1.0
#include <aqueth/numeric/number_text.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

using aqueth::numeric::number_in;
using aqueth::numeric::text_of;

TEST(NumberText, IsWrittenWithoutTrailingZeros) {
    EXPECT_EQ(text_of(20.0, 7), "20");
    EXPECT_EQ(text_of(-4.25, 7), "-4.25");
    EXPECT_EQ(text_of(0.000125, 7), "0.000125");
    EXPECT_EQ(text_of(1e-6, 7), "1e-06");
    EXPECT_EQ(text_of(2.0 / 3.0, 4), "0.6667");
    EXPECT_EQ(text_of(std::numeric_limits<double>::infinity(), 7), "inf");
    EXPECT_EQ(text_of(-std::numeric_limits<double>::infinity(), 7), "-inf");
}

TEST(NumberText, SeventeenDigitsComeBackToTheBit) {
    for (double x = 1e-300; x < 1e300; x *= 1234.567) {
        EXPECT_EQ(number_in(text_of(x, 17)), x);
        EXPECT_EQ(number_in(text_of(-x, 17)), -x);
    }
}

TEST(NumberText, ANumberIsTheWholeText) {
    EXPECT_EQ(number_in("41.5"), 41.5);
    EXPECT_EQ(number_in("-3e2"), -300.0);
    EXPECT_EQ(number_in("007"), 7.0);
    EXPECT_FALSE(std::signbit(number_in("-0.0").value()));  // else an answer has "-0.00 % vol"
    for (std::string const text :
         {"", " 1", "1 ", "+1", "1,5", "1.2.3", "0x10", "inf", "nan", "1e", "e5", "--1", "1e999"})
        EXPECT_FALSE(number_in(text).has_value()) << text;
}
