// SPDX-License-Identifier: BSL-1.0
#include <aqueth/density.hpp>
#include <aqueth/metrology/instruments.hpp>

#include "expect_refusal.hpp"
#include "published/table.hpp"

#include <gtest/gtest.h>

#include <algorithm>

#include <cmath>
#include <limits>
#include <set>
#include <string>

namespace aqueth {
namespace {

using test::expect_refusal;

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
    EXPECT_EQ(error("alcoholometer-fifths"), 0.1);
    EXPECT_EQ(error("alcoholometer-halves"), 0.25);
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

// That law calls the instrument in fifths the standard ("Normal"); distilleries do not buy it. Both are out
// of date.
TEST(InstrumentClasses, SayWhatIsNoLongerSold) {
    for (char const* key : {"alcoholometer-fifths", "alcoholometer-halves"}) {
        EXPECT_NE(std::string(find_instrument_class(key)->remark).find("OIML R 44"), std::string::npos)
            << key;
    }
    EXPECT_NE(std::string(find_instrument_class("alcoholometer-fifths")->description).find("standard"),
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
        expect_refusal([&] { static_cast<void>(reading_error("thermometer", "°C", bad)); },
                       "smallest step read");
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
        expect_refusal([&] { static_cast<void>(balance_error(bad * gram, 1.0 * gram)); },
                       "load in scale intervals");
    }
    for (double const bad : {0.0, -1.0, nan}) {
        expect_refusal([&] { static_cast<void>(balance_error(100.0 * gram, bad * gram)); },
                       "verification scale interval");
    }
}

TEST(TemperatureScaleError, IsAFewMillikelvins) {
    EXPECT_EQ(temperature_scale_error(celsius(0.0)).standard_uncertainty(), 0.0);
    EXPECT_NEAR(temperature_scale_error(celsius(20.0)).standard_uncertainty() * std::sqrt(3.0), 0.005,
                0.0005);
    EXPECT_NEAR(temperature_scale_error(celsius(40.0)).standard_uncertainty() * std::sqrt(3.0), 0.010,
                0.0005);
    for (double const bad : {-20.1, 40.1, nan}) {
        auto const e =
            expect_refusal([&] { static_cast<void>(temperature_scale_error(celsius(bad))); }, "temperature");
        EXPECT_EQ(e.reason(), "OIML R 22");
    }
}

TEST(ModelErrors, OfTheVapourRefusesWhatIsNoMoleFraction) {
    EXPECT_GT(vapour_error(0.0).standard_uncertainty(), 0.0);
    EXPECT_GT(vapour_error(1.0).standard_uncertainty(), 0.0);
    for (double const bad : {-0.01, 1.01, nan})
        expect_refusal([&] { static_cast<void>(vapour_error(bad)); }, "mole fraction of the liquid");
}

// We could not read these tables, so no check claims them as its source. The test compares each row with a
// rule from memory, to find typing errors. Directive 76/765/EEC and OIML R 44: half a division for classes I
// and II, a whole one for class III. ISO 4788: half a division of a cylinder of class A, one of class B.
TEST(InstrumentClasses, RowsFromMemoryKeepTheRememberedRule) {
    int rows = 0;
    for (auto const& each : instrument_classes) {
        if (each.seen != provenance::memory) continue;
        ++rows;
        std::string const key = each.key;
        bool const coarse = key == "alcoholometer-III" || key.ends_with("-B");
        EXPECT_DOUBLE_EQ(each.maximum_permissible_error, (coarse ? 1.0 : 0.5) * each.division) << key;
        if (key.starts_with("cylinder-")) {  // a hundred divisions
            EXPECT_DOUBLE_EQ(each.division, std::stod(key.substr(9)) / 100.0) << key;
        }
    }
    EXPECT_EQ(rows, 9);
    EXPECT_EQ(find_instrument_class("alcoholometer-I")->division, 0.1);
    EXPECT_EQ(find_instrument_class("alcoholometer-II")->division, 0.2);
    EXPECT_EQ(find_instrument_class("alcoholometer-III")->division, 0.5);
}

// The names hold the divisions of the other classes, and each entry states how its figure was obtained.
TEST(InstrumentClasses, DivisionsAreThoseOfTheNames) {
    auto const division = [](char const* key) { return find_instrument_class(key)->division; };
    EXPECT_EQ(division("alcoholometer-fifths"), 0.2);
    EXPECT_EQ(division("alcoholometer-halves"), 0.5);
    EXPECT_EQ(division("thermometer-0.1"), 0.1);
    EXPECT_EQ(division("thermometer-0.2"), 0.2);
    EXPECT_EQ(division("thermometer-0.5"), 0.5);
    EXPECT_EQ(division("thermometer-1"), 1.0);
    // ASTM E1272-02 (2012), table 1
    EXPECT_EQ(division("cylinder-100-A"), 1.0);
    EXPECT_EQ(division("cylinder-100-B"), 1.0);
    EXPECT_EQ(division("cylinder-250-A"), 2.0);
    EXPECT_EQ(division("cylinder-250-B"), 2.0);
    for (char const* const key : {"measure-1000", "measure-2000", "measure-5000", "measure-10000"})
        EXPECT_EQ(division(key), 0.0) << key;
}

// Osborne, McKelvy and Bearce (1913), the densities behind the tables of the United States: the error of the
// formula must cover them all. It need not exceed the largest deviation of the sets since 2006, 0.52 kg/m3,
// whose own authors' ethanol held water (tables/modern_densities.csv).
TEST(FormulaError, CoversTheMeasurementsOf1913) {
    input_quantity const e = formula_error();
    EXPECT_EQ(e.name(), "OIML R 22 as a formula");
    EXPECT_EQ(e.unit(), "kg/m3");
    EXPECT_EQ(e.estimate(), 0.0);
    EXPECT_EQ(e.distribution(), distribution::rectangular);
    double const half_width = e.standard_uncertainty() * std::sqrt(3.0);
    published::table const t("nbs_1913_density_45_85.csv");
    double farthest = 0.0;
    for (auto const& row : t.rows()) {
        for (int const degrees : {10, 15, 20, 25, 30, 35, 40}) {
            std::string const column = "density_" + std::to_string(degrees) + "c_g_per_ml";
            double const measured = row[column] * 1000.0 / 1.000028;  // of the litre of 1901
            double const formula = density(by_mass(row["ethanol_mass_percent"]), celsius(degrees)).value();
            farthest = (std::max)(farthest, std::abs(measured - formula));
        }
    }
    EXPECT_GE(half_width, farthest - 0.005);  // printed to 0.01 kg/m3
    EXPECT_LE(half_width, 0.52);
}

// ISO 1768:1975, section 3: 0.000 025 per °C. The width is common practice. Example H.1 of the GUM (H.1.3.3)
// takes as much for a bar of known material, and the glass of the petroleum tables, 0.000 023 (from memory),
// is at its end.
TEST(GlassExpansion, IsTheConventionAndItsWidth) {
    input_quantity const e = glass_expansion_of_soda_lime();
    EXPECT_EQ(e.estimate(), 25e-6);
    EXPECT_EQ(e.unit(), "1/K");
    EXPECT_EQ(e.distribution(), distribution::rectangular);
    EXPECT_NEAR(e.standard_uncertainty() * std::sqrt(3.0), 2e-6, 1e-12);
}

TEST(InstrumentClasses, DescriptionsSayTheSizeOfTheKey) {
    for (auto const& each : instrument_classes) {
        std::string const key = each.key;
        if (key.starts_with("cylinder-")) {  // cylinder-100-A
            std::string const size = key.substr(9, key.size() - 11);
            EXPECT_EQ(each.description, "measuring cylinder, " + size + " mL, class " + key.back());
        } else if (key.starts_with("measure-")) {  // measure-1000
            EXPECT_EQ(each.description, "capacity measure, " + key.substr(8, key.size() - 11) + " L");
        }
    }
}

// UK SI 1995/1907, schedule 2, table 3: a load of 500 e belongs to the first class, any larger load to the
// next.
TEST(BalanceError, EndsOfTheClasses) {
    auto const half_width = [](double intervals) {
        return balance_error(intervals * gram, 1.0 * gram).standard_uncertainty() * std::sqrt(3.0) * 1000.0;
    };
    EXPECT_NEAR(half_width(499.99), 1.0, 1e-12);
    EXPECT_NEAR(half_width(500.01), 2.0, 1e-12);
    EXPECT_NEAR(half_width(1999.99), 2.0, 1e-12);
    EXPECT_NEAR(half_width(2000.01), 3.0, 1e-12);
    auto const e = expect_refusal([&] { half_width(10000.01); }, "load in scale intervals");
    EXPECT_EQ(e.upper(), 10000.0);
    auto const interval = expect_refusal([&] { static_cast<void>(balance_error(1.0 * gram, 0.0 * gram)); },
                                         "verification scale interval");
    EXPECT_EQ(interval.lower(), 1e-9);
    EXPECT_EQ(interval.upper(), 1e9);
}

}  // namespace
}  // namespace aqueth
