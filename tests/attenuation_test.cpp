// SPDX-License-Identifier: BSL-1.0
#include <aqueth/attenuation.hpp>
#include <aqueth/density.hpp>
#include <aqueth/specific_gravity.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(Attenuation, FromExtracts) {
    EXPECT_DOUBLE_EQ(apparent_attenuation(plato(12), apparent_extract(3)), 0.75);
    EXPECT_DOUBLE_EQ(apparent_attenuation(plato(20), apparent_extract(-2)), 1.1);
    EXPECT_DOUBLE_EQ(real_attenuation(plato(20), plato(4)), 0.8);
}

// The weights of the real extract are from memory, so measured beers show their accuracy; all of them are in
// tests/published/sugar_solution_test.cpp. C. J. N. Balling, Die Bierbrauerei, volume 2, p. 480: 4.250 fresh,
// 5.550 boiled, 11.177 before. A. J. Cutaia and others, J. Inst. Brew. 115 (2009), table III, set RPB-II:
// 2.53, 4.88 and 14.54.
TEST(Attenuation, RealExtractOfBeers) {
    EXPECT_NEAR(real_extract(plato(11.177), apparent_extract(4.250)).degrees(), 5.550, 0.05);
    EXPECT_NEAR(real_extract(plato(14.54), apparent_extract(2.53)).degrees(), 4.88, 0.18);
    EXPECT_EQ(real_extract(plato(10), apparent_extract(10)).degrees(), 10.0);  // nothing has fermented
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
    // Balling, Die Bierbrauerei, volume 2, p. 505: 100 parts of malt extract give 48.391 of alcohol (the scan
    // has 48.691, with which the parts would be 100.3), 46.285 of carbon dioxide and 5.324 of yeast; and 100
    // parts of beer of a wort of 12 % come from 106.601 of wort, if all ferments.
    EXPECT_NEAR(100.0 / b::extract_per_alcohol, 48.391, 0.001);
    EXPECT_NEAR(100.0 * b::carbon_dioxide_per_alcohol / b::extract_per_alcohol, 46.285, 0.0015);
    EXPECT_NEAR(100.0 * b::yeast_per_alcohol / b::extract_per_alcohol, 5.324, 0.0015);
    double const all = b::alcohol(12.0, 0.0);
    EXPECT_NEAR(100.0 + all * (b::carbon_dioxide_per_alcohol + b::yeast_per_alcohol), 106.601, 0.0015);
}

// The printed factors are below the balance with the usual weights of the real extract; the difference grows
// with the strength of the wort. The weights are from memory: a description, no check of a source.
TEST(Balling, FactorsLieBelowTheUsualWeights) {
    struct {
        double original, more;
    } constexpr rows[] = {{6.0, 0.0044}, {12.0, 0.0093}, {20.0, 0.0160}, {30.0, 0.0241}};
    for (auto const& row : rows) {
        auto const original = plato(row.original);
        for (double const part : {0.0, 0.2, 0.5}) {
            apparent_extract const apparent(part * row.original);
            double const by_factor = alcohol_by_balling_factors(original, apparent).percent();
            double const by_weights =
                alcohol_by_balling(original, real_extract(original, apparent)).percent();
            EXPECT_NEAR(by_weights / by_factor - 1.0, row.more, 0.0001) << row.original;
        }
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

/// reading of a stem of soda-lime glass for 20/20 °C in a wash
specific_gravity shown_in(wash const& w, double celsius_) {
    double const glass = 1.0 + 25e-6 * (celsius_ - 20.0);  // ISO 1768
    return specific_gravity(w.density(celsius(celsius_)).value() * glass /
                            density(mass_fraction(0.0), celsius(20)).value());
}

TEST(FermentedWash, FromAReadingAtAnyTemperature) {
    gravity_hydrometer const meter({});
    for (double const t : {0.0, 10.0, 20.0, 35.0, 40.0}) {
        for (double const final_ : {0.984, 0.992, 1.020, 1.0849}) {
            specific_gravity const before(1.085);
            wash const w = fermented_wash(25.0 * litre, before, specific_gravity(final_), celsius(t));
            wash const found = fermented_wash(25.0 * litre, before, shown_in(w, t), celsius(t), meter);
            EXPECT_NEAR(found.strength().percent(), w.strength().percent(), 1e-7) << t << ' ' << final_;
            EXPECT_NEAR(found.specific_gravity().value(), final_, 1e-10);
            EXPECT_NEAR(in(found.volume(), litre), 25.0, 1e-9);
        }
        // the same reading before and after, corrected in two ways: nothing has fermented
        specific_gravity const shown(1.050);
        auto const none =
            fermented_wash(1.0 * litre, true_gravity(shown, celsius(t), meter), shown, celsius(t), meter);
        EXPECT_NEAR(none.strength().percent(), 0.0, 1e-6) << t;
    }
}

// A cold reading of a good wash is above the original gravity, a hot one below the lowest possible at 20 °C.
// Impossible readings are refused there too.
TEST(FermentedWash, RefusesReadingsByTheirTemperature) {
    gravity_hydrometer const meter({});
    specific_gravity const before(1.085);
    auto const read = [&](double shown, double t) {
        return fermented_wash(1.0 * litre, before, specific_gravity(shown), celsius(t), meter);
    };
    EXPECT_LT(read(1.0855, 10.0).strength().percent(), 1.0);
    EXPECT_GT(read(0.980, 35.0).strength().percent(), 12.0);
    // 30 °P there and back through its gravity is 30 °P
    EXPECT_EQ(fermented_wash(1.0 * litre, specific_gravity_of(plato(30)), specific_gravity_of(plato(30)),
                             celsius(20))
                  .strength()
                  .percent(),
              0.0);
    expect_refusal(
        [] {
            static_cast<void>(fermented_wash(1.0 * litre, specific_gravity_of(plato(30.001)),
                                             specific_gravity(1.0), celsius(20)));
        },
        "original extract");
    auto const cold = expect_refusal([&] { static_cast<void>(read(1.0895, 10.0)); }, "reading");
    EXPECT_GT(cold.upper(), 1.0855);
    EXPECT_LT(cold.upper(), 1.0895);
    EXPECT_LT(expect_refusal([&] { static_cast<void>(read(0.975, 35.0)); }, "reading").lower(), 0.980);
    expect_refusal([&] { static_cast<void>(read(1.0855, 20.0)); }, "reading");
    expect_refusal([&] { static_cast<void>(read(0.980, 20.0)); }, "reading");
    expect_refusal([&] { static_cast<void>(read(1.0, 81.0)); }, "temperature");
    expect_refusal([&] { static_cast<void>(read(1.0, -1.0)); }, "temperature");
}

// Four independent methods for the strength: they agree within the accuracy that each states. The library's
// densities give up to 1.9 % less alcohol than the usual weights of the real extract, which are from memory.
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

// Molar masses 198.17 with and 180.16 without water of crystallization, as a maker's sheet prints them after
// the United States Pharmacopeia.
TEST(SugarNeeded, GlucoseMonohydrateBringsItsWater) {
    namespace f = correlation::fermentation;
    EXPECT_NEAR(f::glucose_monohydrate, 198.17, 0.005);
    EXPECT_NEAR(f::hexose, 180.16, 0.005);
    auto const dry = sugar_needed(25.0 * litre, by_volume(11), sugar::hexose);
    auto const crystals = sugar_needed(25.0 * litre, by_volume(11), sugar::glucose_monohydrate);
    EXPECT_NEAR(in(crystals.practical, dry.practical), 198.17 / 180.16, 1e-4);
    EXPECT_NEAR(in(crystals.least, dry.least), 198.17 / 180.16, 1e-4);
    EXPECT_NEAR((crystals.practical + crystals.water).value(), (dry.practical + dry.water).value(), 1e-12);
    EXPECT_EQ(crystals.original, dry.original);
    EXPECT_EQ(crystals.carbon_dioxide, dry.carbon_dioxide);
}

// Every planned wash can be judged: none begins above the 30 °P of Balling's balance.
TEST(SugarNeeded, RefusesWhatWouldBeginAsSyrup) {
    for (sugar const kind : {sugar::sucrose, sugar::hexose, sugar::glucose_monohydrate}) {
        for (double const share : {0.3, 0.55, 0.8}) {
            auto const e = expect_refusal(
                [&] { static_cast<void>(sugar_needed(25.0 * litre, by_volume(20), kind, share)); },
                "strength");
            EXPECT_EQ(e.value(), 20.0);
            EXPECT_NE(e.reason().find(" % of the stoichiometric yield"), std::string::npos) << e.what();
            auto const plan = sugar_needed(25.0 * litre, by_volume(e.upper() - 1e-6), kind, share);
            EXPECT_NEAR(plan.original.degrees(), 30.0, 1e-5);
        }
        EXPECT_LT(sugar_needed(25.0 * litre, by_volume(20), kind).original.degrees(), 30.0);
    }
}

TEST(Attenuation, RefusesBadInput) {
    expect_refusal([] { static_cast<void>(real_extract(plato(10), apparent_extract(11))); },
                   "apparent extract");
    expect_refusal([] { static_cast<void>(real_extract(plato(10), apparent_extract(-5))); },
                   "apparent extract");
    expect_refusal([] { static_cast<void>(apparent_attenuation(plato(0), apparent_extract(0))); },
                   "original extract");
    expect_refusal([] { static_cast<void>(alcohol_by_balling(plato(35), plato(3))); }, "original extract");
    expect_refusal([] { static_cast<void>(alcohol_by_balling(plato(10), plato(11))); }, "real extract");
    expect_refusal([] { static_cast<void>(alcohol_by_balling_factors(plato(5), apparent_extract(1))); },
                   "original extract");
    expect_refusal(
        [] { static_cast<void>(alcohol_by_gravity_fall(specific_gravity(1.05), specific_gravity(1.06))); },
        "fall");
    expect_refusal(
        [] { static_cast<void>(alcohol_by_gravity_fall(specific_gravity(1.12), specific_gravity(1.0))); },
        "fall");
    auto const e = expect_refusal(
        [] {
            static_cast<void>(
                fermented_wash(1.0 * litre, specific_gravity(1.04), specific_gravity(0.98), celsius(20)));
        },
        "final gravity");
    EXPECT_GT(e.lower(), 0.98);
    expect_refusal([] { static_cast<void>(sugar_needed(0.0 * litre, by_volume(10))); }, "volume");
    auto const strong =
        expect_refusal([] { static_cast<void>(sugar_needed(1.0 * litre, by_volume(25))); }, "strength");
    EXPECT_EQ(strong.upper(), greatest_wash_strength);
    expect_refusal([] { static_cast<void>(sugar_needed(1.0 * litre, by_volume(10), sugar::sucrose, 1.1)); },
                   "share of the stoichiometric yield");
}

// Casey, Magnus and Ingledew (1984) reached 16.2 % vol with well-fed brewer's yeast, so the function must
// allow that much; common practice: yeast stops below 20 % vol.
TEST(SugarNeeded, AllowsWhatYeastHasReachedAndNoMore) {
    EXPECT_NO_THROW(static_cast<void>(sugar_needed(25.0 * litre, by_volume(16.2))));
    EXPECT_NO_THROW(static_cast<void>(sugar_needed(25.0 * litre, by_volume(20.0))));
    auto const strong =
        expect_refusal([] { static_cast<void>(sugar_needed(25.0 * litre, by_volume(20.01))); }, "strength");
    EXPECT_EQ(strong.upper(), 20.0);
}

// The ends of the accepted range. With the usual weights 0.1808 and 0.8192, -2.207 °P means that nothing of
// 10 °P is left.
TEST(Attenuation, EndsOfWhatIsAccepted) {
    auto const dry = expect_refusal([] { static_cast<void>(real_extract(plato(10), apparent_extract(-5))); },
                                    "apparent extract");
    EXPECT_NEAR(dry.lower(), -0.1808 / 0.8192 * 10.0, 1e-12);
    EXPECT_NEAR(real_extract(plato(10), apparent_extract(dry.lower())).degrees(), 0.0, 1e-12);
    auto const ferment = [](double final_) {
        return fermented_wash(1.0 * litre, specific_gravity(1.04), specific_gravity(final_), celsius(20));
    };
    auto const light = expect_refusal([&] { static_cast<void>(ferment(0.98)); }, "final gravity");
    EXPECT_NEAR(ferment(light.lower()).extract().degrees(), 0.0, 1e-6);
    EXPECT_NEAR(ferment(1.04).strength().percent(), 0.0, 1e-6);
    auto const poor = expect_refusal(
        [] { static_cast<void>(sugar_needed(25.0 * litre, by_volume(20), sugar::sucrose, 0.55)); },
        "strength");
    EXPECT_EQ(poor.reason().find("at 55 % of the stoichiometric yield"), 0U) << poor.what();
}

}  // namespace
}  // namespace aqueth
