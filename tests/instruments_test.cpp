// SPDX-License-Identifier: BSL-1.0
#include <aqueth/instruments.hpp>

#include "expect_range_error.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <set>
#include <string>

namespace aqueth {
namespace {

using test::expect_range_error;

double const nan = std::numeric_limits<double>::quiet_NaN();

TEST(InstrumentClasses, AreFoundByName) {
    std::set<std::string> keys;
    for (auto const& each : instrument_classes) {
        EXPECT_TRUE(keys.insert(each.key).second) << each.key;
        EXPECT_EQ(find_instrument_class(each.key), &each);
        EXPECT_GT(each.maximum_permissible_error, 0.0) << each.key;
        EXPECT_NE(std::string(each.citation), "") << each.key;
    }
    EXPECT_EQ(find_instrument_class("spoon"), nullptr);
}

double error(char const* key) { return find_instrument_class(key)->maximum_permissible_error; }

// Only what was read in the publication, or in a quotation of it, is checked here.
TEST(InstrumentClasses, CarryThePublishedErrors) {
    // Reichsgesetzblatt 1885, verification rules, section 72: 0.1 % for standards, 0.25 % for ordinary ones.
    EXPECT_EQ(error("alcoholmeter-fifths"), 0.1);
    EXPECT_EQ(error("alcoholmeter-halves"), 0.25);
    // German Verification Ordinance, annex EO 14-1, as quoted in a maker's table: -10 to 110 °C.
    EXPECT_EQ(error("thermometer-0.1"), 0.2);
    EXPECT_EQ(error("thermometer-0.2"), 0.3);
    EXPECT_EQ(error("thermometer-0.5"), 0.5);
    EXPECT_EQ(error("thermometer-1"), 1.0);
    // ASTM E1272-02 (2012), table 1.
    EXPECT_EQ(error("cylinder-100-A"), 0.5);
    EXPECT_EQ(error("cylinder-100-B"), 1.0);
    EXPECT_EQ(error("cylinder-250-A"), 1.0);
    EXPECT_EQ(error("cylinder-250-B"), 2.0);
    // UK SI 1987/51, schedule, metric measures.
    EXPECT_EQ(error("measure-1000"), 2.0);
    EXPECT_EQ(error("measure-2000"), 2.0);
    EXPECT_EQ(error("measure-5000"), 5.0);
    EXPECT_EQ(error("measure-10000"), 10.0);
}

// That law calls the instrument in fifths the standard ("Normal"): not what a distillery buys. Both are out of date.
TEST(InstrumentClasses, SayWhatIsNoLongerSold) {
    for (char const* key : {"alcoholmeter-fifths", "alcoholmeter-halves"}) {
        EXPECT_NE(std::string(find_instrument_class(key)->remark).find("OIML R 44"), std::string::npos)
            << key;
    }
    EXPECT_NE(std::string(find_instrument_class("alcoholmeter-fifths")->description).find("standard"),
              std::string::npos);
}

TEST(InstrumentClasses, BecomeInputsOfABudget) {
    auto const e = error_of(*find_instrument_class("thermometer-0.5"));
    EXPECT_EQ(e.estimate(), 0.0);
    EXPECT_EQ(e.unit(), "°C");
    EXPECT_EQ(e.distribution(), distribution::rectangular);
    EXPECT_NEAR(e.standard_uncertainty(), 0.5 / std::sqrt(3.0), 1e-15);
    auto const half = reading_error("thermometer", "°C", 0.25);
    EXPECT_NEAR(half.standard_uncertainty(), 0.125 / std::sqrt(3.0), 1e-15);
    for (double const bad : {0.0, -0.1, nan}) {
        expect_range_error([&] { reading_error("thermometer", "°C", bad); }, "smallest step read");
    }
}

// UK SI 1995/1907, schedule 2, table 3, class III: 0.5 e to 500 e, 1 e to 2000 e, 1.5 e to 10 000 e; in
// service twice that.
TEST(BalanceError, GrowsWithTheLoad) {
    auto const half_width = [](double grams) {
        return balance_error(grams * gram, 1.0 * gram).standard_uncertainty() * std::sqrt(3.0) * 1000.0;
    };
    EXPECT_NEAR(half_width(0.0), 1.0, 1e-12);
    EXPECT_NEAR(half_width(499.0), 1.0, 1e-12);
    EXPECT_NEAR(half_width(501.0), 2.0, 1e-12);
    EXPECT_NEAR(half_width(1999.0), 2.0, 1e-12);
    EXPECT_NEAR(half_width(2001.0), 3.0, 1e-12);
    EXPECT_NEAR(half_width(9999.0), 3.0, 1e-12);
    for (double const bad : {-1.0, 10001.0, nan}) {
        expect_range_error([&] { balance_error(bad * gram, 1.0 * gram); }, "load in scale intervals");
    }
    for (double const bad : {0.0, -1.0, nan}) {
        expect_range_error([&] { balance_error(100.0 * gram, bad * gram); }, "verification scale interval");
    }
}

TEST(TemperatureScaleError, IsAFewMillikelvins) {
    EXPECT_EQ(temperature_scale_error(celsius(0.0)).standard_uncertainty(), 0.0);
    EXPECT_NEAR(temperature_scale_error(celsius(20.0)).standard_uncertainty() * std::sqrt(3.0), 0.005,
                0.0005);
    EXPECT_NEAR(temperature_scale_error(celsius(40.0)).standard_uncertainty() * std::sqrt(3.0), 0.010,
                0.0005);
    for (double const bad : {-20.1, 40.1, nan}) {
        expect_range_error([&] { temperature_scale_error(celsius(bad)); }, "temperature");
    }
}

}  // namespace
}  // namespace aqueth
