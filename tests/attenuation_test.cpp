// SPDX-License-Identifier: BSL-1.0
#include <aqueth/attenuation.hpp>

#include "expect_range_error.hpp"

#include <gtest/gtest.h>

namespace aqueth {
namespace {

using test::expect_range_error;

TEST(Attenuation, FromExtracts) {
    EXPECT_DOUBLE_EQ(apparent_attenuation(plato(12), apparent_extract(3)), 0.75);
    EXPECT_DOUBLE_EQ(apparent_attenuation(plato(20), apparent_extract(-2)), 1.1);
    EXPECT_DOUBLE_EQ(real_attenuation(plato(20), plato(4)), 0.8);
    EXPECT_NEAR(real_extract(plato(12), apparent_extract(2)).degrees(), 0.1808 * 12 + 0.8192 * 2, 1e-12);
    EXPECT_GT(real_extract(plato(12), apparent_extract(2)).degrees(), 2.0);
}

// H. Nielsen and others, Balling's Formula: 2.0665 g of extract give 1 g of alcohol, 0.9565 g of carbon
// dioxide and 0.11 g of yeast, so that the masses close; the equation for the original extract follows from
// it.
TEST(Balling, MassesClose) {
    namespace b = correlation::balling;
    EXPECT_NEAR(b::extract_per_alcohol, 1.0 + b::carbon_dioxide_per_alcohol + b::yeast_per_alcohol, 1e-12);
    double const a = 5.0, re = 4.0;  // in 100 g of beer
    double const before = 100.0 + a * (b::carbon_dioxide_per_alcohol + b::yeast_per_alcohol);
    EXPECT_NEAR(b::original_extract(a, re), 100.0 * (re + b::extract_per_alcohol * a) / before, 1e-12);
    EXPECT_NEAR(b::alcohol(b::original_extract(a, re), re), a, 1e-12);
    EXPECT_NEAR(b::real_extract_from_alcohol(b::original_extract(a, re), a), re, 1e-12);
}

// The printed factors lie 3 % below the balance with the usual weights of the real extract; the weights are
// from memory, so that this is a description and no check of a source.
TEST(Balling, FactorsLieThreePercentBelowTheBalance) {
    for (double const oe : {8.0, 12.0, 18.0}) {
        auto const original = plato(oe);
        apparent_extract const apparent(0.2 * oe);
        double const by_factor = alcohol_by_balling_factors(original, apparent).percent();
        double const by_balance = alcohol_by_balling(original, real_extract(original, apparent)).percent();
        EXPECT_GT(by_balance / by_factor, 1.0);
        EXPECT_LT(by_balance / by_factor, 1.035);
    }
}

TEST(FermentedWash, AgreesWithBallingAndWithItsGravity) {
    specific_gravity const before(1.060), after(1.010);
    auto const w = fermented_wash(25.0 * litre, before, after, celsius(22));
    EXPECT_NEAR(w.specific_gravity().value(), after.value(), 1e-10);
    EXPECT_NEAR(in(w.volume(), litre), 25.0, 1e-9);
    double const a = 100.0 * in(w.liquid().ethanol(), w.mass());
    EXPECT_NEAR(correlation::balling::original_extract(a, w.extract().degrees()),
                apparent_extract_of(before).degrees(), 1e-8);
    auto const none = fermented_wash(1.0 * litre, before, before, celsius(20));
    EXPECT_NEAR(none.strength().percent(), 0.0, 1e-9);
}

// Four ways to the strength, of four origins: they agree as far as each claims. The library's densities give
// up to 1.9 % less alcohol than the usual weights of the real extract, which are from memory.
TEST(FermentedWash, AgreesWithTheOtherWays) {
    struct {
        double original, final_;
    } constexpr cases[] = {{1.040, 1.010}, {1.050, 1.008}, {1.070, 1.012}, {1.090, 1.000}};
    for (auto const& c : cases) {
        specific_gravity const before(c.original), after(c.final_);
        auto const w = fermented_wash(1.0 * litre, before, after, celsius(20));
        double const fall = alcohol_by_gravity_fall(before, after).percent();
        EXPECT_NEAR(fall / w.strength().percent(), 1.0, 0.03) << c.original;
        extract const oe(apparent_extract_of(before).degrees());
        auto const ae = apparent_extract_of(after);
        double const a = 100.0 * in(w.liquid().ethanol(), w.mass());
        EXPECT_NEAR(alcohol_by_balling(oe, real_extract(oe, ae)).percent() / a, 1.0, 0.02) << c.original;
        EXPECT_NEAR(alcohol_by_balling_factors(oe, ae).percent() / a, 1.0, 0.03) << c.original;
    }
}

// Gay-Lussac's equation as an old handbook prints it: 100 parts of cane sugar give 53.8 of alcohol and 51.46
// of carbon dioxide; 180 parts of glucose 92 and 88.
TEST(SugarNeeded, StoichiometryAsPrinted) {
    namespace f = correlation::fermentation;
    EXPECT_NEAR(100.0 * f::ethanol_per_disaccharide, 53.8, 0.05);
    EXPECT_NEAR(100.0 * f::ethanol_per_disaccharide * f::carbon_dioxide_per_ethanol, 51.46, 0.05);
    EXPECT_NEAR(180.0 * f::ethanol_per_hexose, 92.0, 0.1);
    EXPECT_NEAR(180.0 * f::ethanol_per_hexose * f::carbon_dioxide_per_ethanol, 88.0, 0.1);
    EXPECT_NEAR(f::practical_share, 0.90, 0.005);
}

// Common practice: 500 mL at 90 % vol is what 4 L of wash at 11.25 % vol hold, and no more.
TEST(SugarNeeded, WashThatHoldsHalfALitreOfNinetyPercent) {
    auto const plan = sugar_needed(4.0 * litre, by_volume(11.25));
    auto const wanted = parcel::of(500.0 * millilitre, by_volume(90.0), celsius(20));
    EXPECT_NEAR(in(wanted.pure_alcohol(), millilitre), 450.0, 1e-9);
    double const ethanol = 450.0 * 0.78924;  // g, density of pure ethanol by OIML R 22
    EXPECT_NEAR(in(plan.least, gram), ethanol / 0.53834, 0.1);
    EXPECT_NEAR(in(plan.practical, plan.least), 1.0 / 0.899, 0.001);
    EXPECT_NEAR(in(plan.carbon_dioxide, gram), ethanol * 44.01 / 46.07, 0.2);
    EXPECT_NEAR(plan.original.degrees(), 100.0 * in(plan.practical, plan.practical + plan.water), 1e-10);
    auto const grape = sugar_needed(4.0 * litre, by_volume(11.25), sugar::hexose, 1.0);
    EXPECT_NEAR(in(grape.practical, gram), ethanol / 0.51142, 0.1);
    EXPECT_EQ(grape.practical, grape.least);
}

TEST(Attenuation, RefusesBadInput) {
    expect_range_error([] { real_extract(plato(10), apparent_extract(11)); }, "apparent extract");
    expect_range_error([] { real_extract(plato(10), apparent_extract(-5)); }, "apparent extract");
    expect_range_error([] { apparent_attenuation(plato(0), apparent_extract(0)); }, "original extract");
    expect_range_error([] { alcohol_by_balling(plato(35), plato(3)); }, "original extract");
    expect_range_error([] { alcohol_by_balling(plato(10), plato(11)); }, "real extract");
    expect_range_error([] { alcohol_by_balling_factors(plato(5), apparent_extract(1)); }, "original extract");
    expect_range_error([] { alcohol_by_gravity_fall(specific_gravity(1.05), specific_gravity(1.06)); },
                       "fall");
    expect_range_error([] { alcohol_by_gravity_fall(specific_gravity(1.12), specific_gravity(1.0)); },
                       "fall");
    auto const e = expect_range_error(
        [] { fermented_wash(1.0 * litre, specific_gravity(1.04), specific_gravity(0.98), celsius(20)); },
        "final gravity");
    EXPECT_GT(e.lower(), 0.98);
    expect_range_error([] { sugar_needed(0.0 * litre, by_volume(10)); }, "volume");
    expect_range_error([] { sugar_needed(1.0 * litre, by_volume(25)); }, "strength");
    expect_range_error([] { sugar_needed(1.0 * litre, by_volume(10), sugar::sucrose, 1.1); },
                       "share of the stoichiometric yield");
}

}  // namespace
}  // namespace aqueth
