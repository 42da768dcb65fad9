// SPDX-License-Identifier: BSL-1.0
#include <aqueth/still/run_log.hpp>

#include <aqueth/hydrometer.hpp>

#include "expect_text_error.hpp"

#include <gtest/gtest.h>

#include <string>

namespace aqueth {
namespace {

using test::expect_text_error;

TEST(RunLog, ReadsEveryColumn) {
    auto const log = parse_run_log("time_min,collected_ml,strength_percent_vol,jar_strength_percent_vol,"
                                   "head_temperature_c,pot_temperature_f,smell\n"
                                   "0,0,,,78.9,,sharp\n"
                                   "# a remark\n"
                                   "12.5,250,87.8,88.1,79.7,197.6,clean\n");
    ASSERT_EQ(log.rows.size(), 2u);
    EXPECT_EQ(log.ignored_columns, std::vector<std::string>{"smell"});
    log_row const& first = log.rows[0];
    EXPECT_EQ(in(*first.elapsed, minute), 0.0);
    EXPECT_FALSE(first.strength || first.jar_strength || first.pot);
    EXPECT_DOUBLE_EQ(first.head->celsius(), 78.9);
    EXPECT_EQ(first.line, 2u);
    log_row const& second = log.rows[1];
    EXPECT_DOUBLE_EQ(in(*second.elapsed, minute), 12.5);
    EXPECT_DOUBLE_EQ(in(*second.collected, millilitre), 250.0);
    EXPECT_DOUBLE_EQ(second.strength->percent(), 87.8);
    EXPECT_DOUBLE_EQ(second.jar_strength->percent(), 88.1);
    EXPECT_NEAR(second.pot->celsius(), 92.0, 1e-9);
    EXPECT_EQ(second.line, 4u);
}

TEST(RunLog, DecimalCommasAndUnits) {
    auto const log = parse_run_log("Time (h);Collected (L);Strength (US proof);Head temperature (K)\n"
                                   "0,5;1,25;150,5;353,15\n");
    ASSERT_EQ(log.rows.size(), 1u);
    EXPECT_DOUBLE_EQ(in(*log.rows[0].elapsed, minute), 30.0);
    EXPECT_DOUBLE_EQ(in(*log.rows[0].collected, litre), 1.25);
    EXPECT_DOUBLE_EQ(log.rows[0].strength->percent(), to<volume_fraction>(us_proof(150.5)).percent());
    EXPECT_DOUBLE_EQ(log.rows[0].head->celsius(), 80.0);
}

// Readings of an alcoholometer are corrected for the temperature, as OIML R 22 does.
TEST(RunLog, CorrectsReadings) {
    auto const log = parse_run_log("collected_l,reading_percent_vol,reading_temperature_c,"
                                   "jar_reading_us_proof,jar_temperature_f\n"
                                   "0.5,84,30,170,77\n"
                                   "1,,,,\n");
    ASSERT_EQ(log.rows.size(), 2u);
    EXPECT_DOUBLE_EQ(log.rows[0].strength->percent(),
                     alcoholometer().strength(by_volume(84), celsius(30)).percent());
    EXPECT_LT(log.rows[0].strength->percent(), 82.0);
    EXPECT_DOUBLE_EQ(
        log.rows[0].jar_strength->percent(),
        hydrometer<us_proof>().strength<volume_fraction>(us_proof(170), fahrenheit(77)).percent());
    EXPECT_FALSE(log.rows[1].has_reading());
}

TEST(RunLog, RefusesWithLineAndColumn) {
    auto const refused = [](char const* text, std::size_t line, char const* column, char const* reason) {
        expect_text_error([=] { static_cast<void>(parse_run_log(text)); }, line, column, reason);
    };
    refused("", 0, "", "no log");
    refused("collected_ml,strength_percent_vol\n", 0, "", "no log");
    refused("a,b\n1,2\n", 1, "", "no column holds time or volume");
    refused("collected,strength_percent_vol\n1,2\n", 1, "collected", "no known unit");
    refused("collected_ml,strength\n1,2\n", 1, "strength", "no known unit");
    refused("collected_ml,head_temperature\n1,2\n", 1, "head_temperature", "no known unit");
    refused("collected_ml,volume_l,strength_percent_vol\n1,2,3\n", 1, "volume_l", "another column");
    refused("collected_ml,reading_percent_vol\n1,2\n", 1, "reading_percent_vol", "reading_temperature_c");
    refused("collected_ml,jar_reading_percent_vol\n1,2\n", 1, "jar_reading_percent_vol", "jar_temperature_c");
    refused("collected_ml,strength_percent_vol,reading_percent_vol,reading_temperature_c\n1,2,3,4\n", 1,
            "reading_percent_vol", "keep one");
    refused("collected_ml,strength_percent_vol\n100,\n200,\n", 1, "", "no row has a reading");
    refused("collected_ml,strength_percent_vol\n,80\n", 2, "", "neither time nor volume");
    refused("collected_ml,strength_percent_vol\n200,80\n100,79\n", 3, "collected_ml",
            "less than in a line before");
    refused("time_min,strength_percent_vol\n20,80\n\n10,79\n", 4, "time_min", "less than in a line before");
    refused("time_min,strength_percent_vol\n-1,80\n", 2, "time_min", "outside 0");
    refused("time_min,strength_percent_vol\n1,101\n", 2, "strength_percent_vol", "outside 0 to 100 % vol");
    refused("time_min,strength_us_proof\n1,201\n", 2, "strength_us_proof", "outside 0 to 200");
    refused("time_min,head_temperature_c\n1,353\n", 2, "head_temperature_c", "outside 0 to 120");
    refused("time_min,pot_temperature_c\n1,151\n", 2, "pot_temperature_c", "outside 0 to 150");
    refused("time_min,strength_percent_vol\n1,eighty\n", 2, "strength_percent_vol", "not a number");
    refused("time_min,strength_percent_vol\n1,nan\n", 2, "strength_percent_vol", "not a number");
    refused("time_min,reading_percent_vol,reading_temperature_c\n1,80,\n", 2, "reading_temperature_c",
            "empty");
    refused("time_min,reading_percent_vol,reading_temperature_c\n1,80,41\n", 2, "reading_temperature_c",
            "outside -20 to 40");
    refused("time_min,reading_percent_vol,reading_temperature_c\n1,100,0\n", 2, "reading_percent_vol",
            "no mixture of ethanol and water");
}

}  // namespace
}  // namespace aqueth
