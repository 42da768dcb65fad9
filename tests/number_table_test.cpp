// SPDX-License-Identifier: BSL-1.0
#include <aqueth/number_table.hpp>

#include "expect_text_error.hpp"

#include <gtest/gtest.h>

#include <string>
#include <string_view>
#include <vector>

namespace aqueth {
namespace {

using test::expect_text_error;
using cells = std::vector<std::string>;

// The rules of RFC 4180, section 2, by their numbers.
TEST(NumberTable, KeepsTheRulesOfRfc4180) {
    number_table const two_lines("a,b,c\r\n1,2,3\r\n4,5,6\r\n");  // 1, 3
    EXPECT_EQ(two_lines.names(), (cells{"a", "b", "c"}));
    ASSERT_EQ(two_lines.rows().size(), 2u);
    EXPECT_EQ(two_lines.rows()[1].cells, (cells{"4", "5", "6"}));
    EXPECT_EQ(number_table("a,b\r\n1,2").rows().size(), 1u);                                   // 2
    EXPECT_EQ(number_table("a,b\r\n w , x \r\n").rows()[0].cells, (cells{" w ", " x "}));      // 4
    EXPECT_EQ(number_table("\"a\",\"b\"\r\n\"1\",2\r\n").rows()[0].cells, (cells{"1", "2"}));  // 5
    number_table const folded("a,b,c\r\n\"aaa\",\"b\r\nbb, b\",\"ccc\"\r\n7,8,9\r\n");         // 6
    EXPECT_EQ(folded.rows()[0].cells, (cells{"aaa", "b\r\nbb, b", "ccc"}));
    EXPECT_EQ(folded.rows()[1].number, 4u);
    EXPECT_EQ(number_table("a,b,c\r\n\"aaa\",\"b\"\"bb\",\"ccc\"\r\n").rows()[0].cells,
              (cells{"aaa", "b\"bb", "ccc"}));                                                       // 7
    expect_text_error([] { number_table("a,b\r\n1,2,3\r\n"); }, 2, "", "3 cells, but 2 columns");    // 4
    expect_text_error([] { number_table("a,b\r\n1,b\"b\r\n"); }, 2, "", "a quote inside the cell");  // 5
}

// One table in all the variants that programs write.
TEST(NumberTable, ReadsTheUsualVariants) {
    for (std::string_view const text :
         {"x,y\n0.1,0.44\n", "x,y\r0.1,0.44\r", "x;y\r\n0,1;0,44\r\n", "x;y\n0.1;0.44", "x\ty\n0.1\t0.44\n",
          "x\ty\n0,1\t0,44\n", "\xEF\xBB\xBFx,y\n0.1,0.44\n",
          "\n\n# a word; with a semicolon\nx,y\n0.1,0.44\n", "x,y\n,\n \n0.1,0.44\n,\n",
          "x;y\n\"0,1\";\"0,44\"\n", "x,y\n+0.1, 4.4e-1 \n", "x,y\n 0.1 ,0.44\t\n"}) {
        SCOPED_TRACE(std::string(text));
        number_table const table(text);
        ASSERT_EQ(table.rows().size(), 1u);
        EXPECT_EQ(table.number(table.rows()[0], table.column("x")), 0.1);
        EXPECT_EQ(table.number(table.rows()[0], table.column("Y ")), 0.44);
    }
    EXPECT_TRUE(number_table("").rows().empty());
    EXPECT_TRUE(number_table("# nothing\n\n").names().empty());
    EXPECT_EQ(number_table("# one\nx\n1\n# two\n").comments().size(), 2u);
    EXPECT_EQ(number_table("\n\nx\n1\n").names_line(), 3u);
}

TEST(NumberTable, NamesColumnsWhereTheTextDoesNot) {
    number_table const table("0,1;0,44\n", {"x", "y", "t"});
    EXPECT_EQ(table.names(), (cells{"x", "y"}));
    EXPECT_EQ(table.number(table.rows()[0], 1), 0.44);
    EXPECT_EQ(number_table("y,x\n1,2\n", {"x", "y", "t"}).names(), (cells{"y", "x"}));
    expect_text_error([] { number_table("1,2,3,4\n", {"x", "y", "t"}); }, 1, "", "at most 3: x, y, t");
}

TEST(NumberTable, RefusesByLineAndColumn) {
    auto const number_of = [](char const* text) {
        return [text] {
            number_table const table(text);
            return table.number(table.rows().back(), table.column("y"));
        };
    };
    expect_text_error(number_of("x,y\n1,2\n\n3,much\n"), 4, "y", "'much' is not a number");
    expect_text_error(number_of("x,y\n1,\n"), 2, "y", "empty");
    for (char const* const bad : {"nan", "inf", "1e400", "0x1p3", "1 2", "--1", "+-1", "1.2.3", "1e", "O.1"})
        expect_text_error(number_of((std::string("x,y\n1,") + bad).c_str()), 2, "y", "is not a number");
    expect_text_error(number_of("x;y\n1;1.234,5\n"), 2, "y", "thousands have no separator");
    expect_text_error(number_of("x;y\n0,1;4\n2;0.3\n"), 3, "y",
                      "'0.3' has a decimal point, a number in line 2 a decimal comma");
    expect_text_error([] { number_table("x,y\n0,1,0,44\n"); }, 2, "", "decimal commas need semicolons");
    expect_text_error([] { number_table("x,y,X\n1,2,3\n"); }, 1, "X", "two columns have this name");
    expect_text_error([] { number_table("# our table\nx,\n1,2\n"); }, 2, "", "the column 2 has no name");
    expect_text_error([] { number_table("x,y\n1,\"2\n3,4\n"); }, 2, "",
                      "a quote opens here and does not close");
    expect_text_error([] { number_table("x,y\n1,\"2\"3\n"); }, 2, "", "text behind the closing quote");
    expect_text_error([] { number_table("\xFF\xFEx"); }, 0, "", "UTF-16");
    expect_text_error([] { number_table(std::string_view("x\0y", 3)); }, 0, "", "no text");
    expect_text_error([] { number_table("x,y\n1,2\n").column("z"); }, 0, "",
                      "no column z; the columns are: x, y");
}

// A user's file may contain anything; time and messages must stay bounded.
TEST(NumberTable, KeepsWithinBounds) {
    std::string names, ones;
    for (int k = 0; k < 60000; ++k) {
        names += (k == 0 ? "c" : ",c") + std::to_string(k);
        ones += k == 0 ? "1" : ",1";
    }
    number_table const table(names + "\n" + ones + "\n");
    EXPECT_EQ(table.names().size(), 60000u);
    try {
        table.column("x");
        FAIL() << "no such column";
    } catch (text_error const& error) {
        EXPECT_LT(std::string(error.what()).size(), 200u);
        EXPECT_NE(std::string(error.what()).find("c11 and 59988 more"), std::string::npos) << error.what();
    }
    std::string const long_name(100000, 'x');
    try {
        number_table const other("y," + long_name + "\n1," + long_name + "\n");
        other.number(other.rows()[0], 1);
        FAIL() << "no number";
    } catch (text_error const& error) {
        EXPECT_EQ(error.column(), long_name);
        EXPECT_LT(std::string(error.what()).size(), 200u);
    }
    EXPECT_EQ(text_error::shortened(std::string(39, 'a') + "\u00e9"), std::string(39, 'a') + "...");
}

}  // namespace
}  // namespace aqueth
