// SPDX-License-Identifier: BSL-1.0
#include <aqueth/metrology/labelling.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <string_view>

namespace aqueth {
namespace {

using test::expect_refusal;

// Regulation (EU) No 1169/2011, annex XII, and 27 CFR 19.356 (c) and (d): 39.7 to 40.3 % vol for a label of
// 40.
TEST(StrengthTolerances, AreThoseOfTheTexts) {
    EXPECT_EQ(find_strength_tolerance("eu-spirits")->percent_vol, 0.3);
    EXPECT_EQ(find_strength_tolerance("eu-macerated")->percent_vol, 1.5);
    EXPECT_EQ(find_strength_tolerance("eu-cider")->percent_vol, 1.0);
    EXPECT_EQ(find_strength_tolerance("eu-beer")->percent_vol, 0.5);
    EXPECT_EQ(find_strength_tolerance("eu-beer")->up_to, 5.5);
    EXPECT_EQ(find_strength_tolerance("eu-spirits")->above, 1.2);
    auto const us =
        permitted_strengths(by_volume<at_60_fahrenheit>(40.0), *find_strength_tolerance("us-spirits"));
    EXPECT_NEAR(us.lower, 39.7, 1e-12);
    EXPECT_NEAR(us.upper, 40.3, 1e-12);
    EXPECT_EQ(find_strength_tolerance("moon"), nullptr);
    auto const weak = permitted_strengths(by_volume(0.2), *find_strength_tolerance("eu-spirits"));
    EXPECT_EQ(weak.lower, 0.0);
    auto const strong = permitted_strengths(by_volume(99.9), *find_strength_tolerance("eu-spirits"));
    EXPECT_EQ(strong.upper, 100.0);
}

// Council Directive 76/211/EEC, annex I, 2.4; shares rounded up to the next 0.1 mL (UK guidance to the
// Packaged Goods Regulations, which carry the same table).
TEST(EuFillLimits, FollowTheTable) {
    struct {
        double label, error;
    } const rows[] = {{5, 0.5},    {20, 1.8},   {50, 4.5},   {75, 4.5},    {100, 4.5},   {150, 6.8},
                      {200, 9.0},  {250, 9.0},  {300, 9.0},  {330, 9.9},   {350, 10.5},  {375, 11.3},
                      {500, 15.0}, {700, 15.0}, {750, 15.0}, {1000, 15.0}, {1500, 22.5}, {10000, 150.0}};
    for (auto const& row : rows) {
        auto const limits = eu_fill_limits(row.label * millilitre);
        EXPECT_NEAR(limits.single.lower, row.label - row.error, 1e-9) << row.label;
        EXPECT_NEAR(limits.least, row.label - 2.0 * row.error, 1e-9) << row.label;
        EXPECT_EQ(limits.single.upper, std::numeric_limits<double>::infinity());
    }
}

// 27 CFR 19.356 (b): 1.5 % from 1 L, 2 % from 376 to 999 mL, 3 % from 101 to 375 mL, 4.5 % to 100 mL.
TEST(UsFillLimits, FollowTheText) {
    struct {
        double label, percent;
    } const rows[] = {{50, 4.5},  {100, 4.5}, {101, 3.0}, {200, 3.0},  {375, 3.0},
                      {376, 2.0}, {750, 2.0}, {999, 2.0}, {1000, 1.5}, {1750, 1.5}};
    for (auto const& row : rows) {
        for (units::volume const& volume : {row.label * millilitre, row.label / 1000.0 * litre}) {
            auto const limits = us_fill_limits(volume);
            EXPECT_NEAR(limits.single.lower, row.label * (1.0 - row.percent / 100.0), 1e-9) << row.label;
            EXPECT_NEAR(limits.single.upper, row.label * (1.0 + row.percent / 100.0), 1e-9) << row.label;
        }
    }
}

// Directive 76/211/EEC, annex I: 1, the average is not below the label; 2.2, volumes are those at 20 °C.
TEST(EuFillLimits, AskTheBatchForItsAverage) {
    auto const limits = eu_fill_limits(700.0 * millilitre);
    EXPECT_EQ(limits.average.lower, 700.0);
    EXPECT_EQ(limits.average.upper, std::numeric_limits<double>::infinity());
    EXPECT_EQ(limits.reference, celsius(20.0));
}

// From memory: NIST Handbook 133 has distilled spirits at 60 °F.
TEST(UsFillLimits, MeanSixtyFahrenheit) {
    auto const limits = us_fill_limits(750.0 * millilitre);
    EXPECT_EQ(limits.reference, fahrenheit(60.0));
    EXPECT_TRUE(std::string_view(limits.remark).find("from memory") != std::string_view::npos);
}

// Annex XII, item 3, has the drinks that fruit or parts of plants are in; the Government Chemist's opinion of
// 2017 has item 4 for a filtered liqueur.
TEST(StrengthTolerances, OfMacerationsAreForWhatContainsThem) {
    auto const* of = find_strength_tolerance("eu-macerated");
    EXPECT_TRUE(std::string_view(of->drinks).find("contain") != std::string_view::npos);
    EXPECT_TRUE(std::string_view(of->remark).find("filtered") != std::string_view::npos);
}

TEST(FillLimits, RefuseWhatTheTextsDoNotCover) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    for (double const bad : {0.0, 4.9, 10001.0, -700.0, nan}) {
        expect_refusal([&] { static_cast<void>(eu_fill_limits(bad * millilitre)); }, "label volume");
    }
    for (double const bad : {0.0, -700.0, 1e6, nan}) {
        expect_refusal([&] { static_cast<void>(us_fill_limits(bad * millilitre)); }, "label volume");
    }
}

// 27 CFR 19.356 (b) names sizes in whole millilitres and leaves gaps: to 100 and from 101 mL, to 375 and from
// 376, to 999 and from 1000 (1 L). Between them the code takes the stricter class, which satisfies both
// readings.
TEST(UsFillLimits, InTheGapsOfTheTextTheStricterSide) {
    struct {
        double label, stricter, laxer;
    } const rows[] = {{100.001, 3.0, 4.5}, {100.5, 3.0, 4.5},   {100.999, 3.0, 4.5}, {375.001, 2.0, 3.0},
                      {375.5, 2.0, 3.0},   {999.001, 1.5, 2.0}, {999.5, 1.5, 2.0}};
    for (auto const& row : rows) {
        auto const limits = us_fill_limits(row.label * millilitre);
        EXPECT_NEAR(limits.single.lower, row.label * (1.0 - row.stricter / 100.0), 1e-9) << row.label;
        EXPECT_NEAR(limits.single.upper, row.label * (1.0 + row.stricter / 100.0), 1e-9) << row.label;
        EXPECT_NEAR(limits.least, limits.single.lower, 1e-9) << row.label;
        EXPECT_GT(limits.least, row.label * (1.0 - row.laxer / 100.0)) << row.label;
    }
}

// Regulation (EU) No 1169/2011, annex XII: strengths at 20 °C. Title 27 of the CFR: at 60 °F.
TEST(StrengthTolerances, AreForTheTemperatureOfTheirLaw) {
    int union_ = 0, states = 0;
    for (strength_tolerance const& each : strength_tolerances) {
        std::string_view const key = each.key;
        std::string_view const citation = each.citation;
        if (key.starts_with("eu-")) {
            ++union_;
            EXPECT_EQ(each.reference, celsius(20.0)) << key;
            EXPECT_NE(citation.find("1169/2011, annex XII"), std::string_view::npos) << key;
        } else {
            ++states;
            EXPECT_EQ(each.reference, fahrenheit(60.0)) << key;
            EXPECT_NE(citation.find("27 CFR"), std::string_view::npos) << key;
        }
        EXPECT_EQ(find_strength_tolerance(key), &each);
    }
    EXPECT_EQ(union_, 4);
    EXPECT_EQ(states, 1);
    EXPECT_EQ(find_strength_tolerance("us-spirits")->percent_vol, 0.3);
}

// Council Directive 76/211/EEC, annex I, 2.4: the ends of the classes. Just beyond an end, rounding up makes
// a share a tenth larger than the fixed error of the neighbouring class.
TEST(EuFillLimits, EndsOfTheClasses) {
    struct {
        double label, error;
    } const rows[] = {{49.99, 4.5},   {50.04, 4.5},   {99.99, 4.5},   {100.04, 4.6},
                      {199.99, 9.0},  {200.04, 9.0},  {299.99, 9.0},  {300.04, 9.1},
                      {499.99, 15.0}, {500.04, 15.0}, {999.99, 15.0}, {1000.04, 15.1}};
    for (auto const& row : rows) {
        EXPECT_NEAR(eu_fill_limits(row.label * millilitre).single.lower, row.label - row.error, 1e-9)
            << row.label;
    }
    auto const large =
        expect_refusal([] { static_cast<void>(eu_fill_limits(10000.04 * millilitre)); }, "label volume");
    EXPECT_EQ(large.lower(), 5.0);
    EXPECT_EQ(large.upper(), 10000.0);
    EXPECT_EQ(large.reason(), "Directive 76/211/EEC");
    auto const us =
        expect_refusal([] { static_cast<void>(us_fill_limits(0.0 * millilitre)); }, "label volume");
    EXPECT_EQ(us.lower(), 1.0);
    EXPECT_EQ(us.upper(), 1e5);
}

// Regulation (EU) No 1169/2011, annex XII, names the drinks in four items; 27 CFR 19.356 has strength in (c).
TEST(StrengthTolerances, NameTheDrinksOfTheirItems) {
    auto const drinks = [](char const* key) {
        return std::string_view(find_strength_tolerance(key)->drinks);
    };
    auto const cited = [](char const* key) {
        return std::string_view(find_strength_tolerance(key)->citation);
    };
    EXPECT_EQ(cited("eu-beer"), "Regulation (EU) No 1169/2011, annex XII, item 1");
    EXPECT_EQ(cited("eu-cider"), "Regulation (EU) No 1169/2011, annex XII, item 2");
    EXPECT_EQ(cited("eu-macerated"), "Regulation (EU) No 1169/2011, annex XII, item 3");
    EXPECT_EQ(cited("eu-spirits"), "Regulation (EU) No 1169/2011, annex XII, item 4");
    EXPECT_EQ(cited("us-spirits"), "27 CFR 19.356 (c)");
    EXPECT_NE(drinks("eu-beer").find("up to 5.5 % vol"), std::string_view::npos);
    EXPECT_NE(drinks("eu-cider").find("above 5.5 % vol"), std::string_view::npos);
    EXPECT_NE(drinks("eu-spirits").find("above 1.2 % vol"), std::string_view::npos);
}

}  // namespace
}  // namespace aqueth
