// SPDX-License-Identifier: BSL-1.0
#include <aqueth/density.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/wash.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

double const nan = std::numeric_limits<double>::quiet_NaN();

TEST(Extract, GravityAndPlatoAreInverse) {
    for (double p = -10.0; p <= 70.0; p += 0.5) {
        EXPECT_NEAR(apparent_extract_of(specific_gravity_of(apparent_extract(p))).degrees(), p, 1e-10);
    }
    EXPECT_EQ(specific_gravity_of(plato(0.0)).value(), 1.0);
    EXPECT_EQ(density(plato(0.0), celsius(20)), density(mass_fraction(0.0), celsius(20)));
}

TEST(Extract, RefusesWhatIsNoExtract) {
    for (double const bad : {-0.1, 70.1, nan})
        expect_refusal([&] { static_cast<void>(plato(bad)); }, "extract");
    for (double const bad : {-10.1, 71.0, nan})
        expect_refusal([&] { static_cast<void>(apparent_extract{bad}); }, "apparent extract");
    expect_refusal([] { static_cast<void>(apparent_extract_of(specific_gravity(0.9))); }, "specific gravity");
    expect_refusal([] { static_cast<void>(apparent_extract_of(specific_gravity(1.5))); }, "specific gravity");
}

TEST(Wash, WithoutExtractIsAParcelAndWithoutAlcoholASugarSolution) {
    auto const spirit = parcel::of(4.0 * litre, by_volume(11.0), celsius(25));
    auto const plain = wash::of(spirit);
    EXPECT_NEAR(in(plain.volume(), litre), 4.0, 1e-12);
    EXPECT_NEAR(plain.strength().percent(), 11.0, 1e-10);
    EXPECT_NEAR(plain.density(celsius(30)).value(), density(spirit.composition(), celsius(30)).value(), 1e-9);
    auto const must = wash::of(water(0.85 * kilogram, celsius(20)), 0.15 * kilogram);
    EXPECT_NEAR(must.extract().degrees(), 15.0, 1e-12);
    EXPECT_NEAR(must.density(celsius(35)).value(), density(plato(15.0), celsius(35)).value(), 1e-9);
}

// The equation term by term, as it is written: powers of w and of (t - 20 °C)/(100 °C).
TEST(SucroseDensity, IsTheSumOfItsTerms) {
    namespace sucrose = correlation::sucrose_density;
    for (double w = 0.0; w <= 0.7; w += 0.1)
        for (double t = 0.0; t <= 80.0; t += 10.0) {
            double sum = 0.0, slope = 0.0;
            for (int i = 0; i < 5; ++i)
                for (int k = 0; k < 6; ++k) {
                    double const term =
                        sucrose::coefficients[static_cast<std::size_t>(i)][static_cast<std::size_t>(k)] *
                        std::pow((t - 20.0) / 100.0, i);
                    sum += term * std::pow(w, k + 1);
                    slope += term * (k + 1) * std::pow(w, k);
                }
            EXPECT_NEAR(sucrose::excess(w, t).value, sum, 1e-12);
            EXPECT_NEAR(sucrose::excess(w, t).slope, slope, 1e-12);
        }
}

TEST(SucroseDensity, CoversItsRangeOnlyAndPassesNaNThrough) {
    namespace sucrose = correlation::sucrose_density;
    EXPECT_TRUE(sucrose::covers(0.0, 0.0) && sucrose::covers(0.7, 80.0));
    EXPECT_FALSE(sucrose::covers(-0.001, 20.0) || sucrose::covers(0.701, 20.0));
    EXPECT_FALSE(sucrose::covers(0.3, -0.05) || sucrose::covers(0.3, 80.05));
    EXPECT_FALSE(sucrose::covers(nan, 20.0) || sucrose::covers(0.3, nan));
    EXPECT_TRUE(std::isnan(sucrose::excess(nan, 20.0).value) && std::isnan(sucrose::excess(0.3, nan).slope));
}

// An empty wash has no strength and no extract, and the density of its (empty) liquid.
TEST(Wash, OfNothing) {
    auto const none = wash::of(parcel::of(0.0 * kilogram, by_mass(5), celsius(20)));
    EXPECT_EQ(none.mass().value(), 0.0);
    EXPECT_EQ(none.extract().degrees(), 0.0);
    EXPECT_EQ(none.strength().percent(), 0.0);
    EXPECT_EQ(none.density(celsius(20)), density(by_mass(5), celsius(20)));
    EXPECT_EQ(none.volume().value(), 0.0);
}

TEST(Wash, MadeFromVolumeAndStrengthHasThem) {
    for (double const q : {0.0, 4.0, 9.0, 14.0}) {
        for (double const e : {0.0, 2.5, 10.0}) {
            auto const w = wash::of(25.0 * litre, by_volume(q), plato(e), celsius(27));
            EXPECT_NEAR(in(w.volume(), litre), 25.0, 1e-9);
            EXPECT_NEAR(w.strength().percent(), q, 1e-9);
            EXPECT_NEAR(w.extract().degrees(), e, 1e-10);
            EXPECT_NEAR(in(w.pure_alcohol(), litre), q / 100.0 * in(w.volume(celsius(20)), litre), 1e-9);
        }
    }
}

// Tabarie's rule as it is printed for specific gravities (J. H. Hackbarth, J. Am. Soc. Brew. Chem. 67 (2009)
// 146): gravity of the wash = gravity of its alcohol made up with water + gravity of its residue made up - 1.
TEST(Wash, DensityFollowsTabarie) {
    auto const w = wash::of(1.0 * litre, by_volume(8.0), plato(4.0), celsius(20));
    double const water = density(mass_fraction(0.0), celsius(20)).value();
    auto const distillate = parcel::of(1.0 * litre, by_volume(8.0), celsius(20));
    double solids = w.solids().value();  // kg in a litre: mass fraction of the solution made up to a litre
    double share = solids;
    for (int i = 0; i < 50; ++i) share = solids / (density(plato(100.0 * share), celsius(20)).value() * 1e-3);
    double const residue = density(plato(100.0 * share), celsius(20)).value() / water;
    double const alcohol = density(distillate.composition(), celsius(20)).value() / water;
    EXPECT_NEAR(w.specific_gravity().value(), alcohol + residue - 1.0, 1e-12);
}

TEST(Wash, RefusesWhatCannotBe) {
    auto const spirit = parcel::of(1.0 * kilogram, by_volume(10.0), celsius(20));
    expect_refusal([&] { static_cast<void>(wash::of(spirit, -1.0 * gram)); }, "mass of the extract");
    expect_refusal([&] { static_cast<void>(wash::of(spirit, nan * gram)); }, "mass of the extract");
    expect_refusal([&] { static_cast<void>(wash::of(spirit, 10.0 * kilogram)); }, "extract");
    expect_refusal([&] { static_cast<void>(wash::of(-1.0 * litre, by_volume(5), plato(1), celsius(20))); },
                   "volume");
    expect_refusal([&] { static_cast<void>(wash::of(1.0 * litre, by_volume(90), plato(60), celsius(20))); },
                   "ethanol beside this extract");
    expect_refusal([&] { static_cast<void>(wash::of(spirit).density(celsius(95))); }, "temperature");
}

TEST(Wash, MixingAddsMasses) {
    auto const a = wash::of(12.0 * litre, by_volume(9.0), plato(3.0), celsius(18));
    auto const b = wash::of(8.0 * litre, by_volume(14.0), plato(1.0), celsius(24));
    auto const m = mix(a, b, celsius(20));
    EXPECT_NEAR(m.mass().value(), (a.mass() + b.mass()).value(), 1e-12);
    EXPECT_NEAR(m.pure_alcohol().value(), (a.pure_alcohol() + b.pure_alcohol()).value(), 1e-15);
    EXPECT_EQ(m.solids(), a.solids() + b.solids());
    // nearly the mean of strengths by volume, as so little contracts
    EXPECT_NEAR(m.strength().percent(), (12.0 * 9.0 + 8.0 * 14.0) / 20.0, 0.05);
    auto const stretched = mix(a, wash::of(water(5.0 * kilogram, celsius(20))), celsius(20));
    EXPECT_NEAR(stretched.extract().degrees(), 100.0 * in(a.solids(), a.mass() + 5.0 * kilogram), 1e-12);
    auto const empty = wash::of(parcel::of(0.0 * litre, by_volume(9.0), celsius(20)));
    expect_refusal([&] { return mix(empty, empty, celsius(20)); }, "mass of all parcels");
    expect_refusal([&] { return mix(a, b, celsius(92)); }, "temperature");
}

TEST(TrueGravity, UndoesTheTemperature) {
    gravity_hydrometer const meter({});
    for (double const t : {5.0, 20.0, 35.0}) {
        for (double const p : {0.0, 12.0, 24.0}) {
            // reading of the stem: the liquid's density there, corrected for the glass of 20 °C
            double const glass = 1.0 + 25e-6 * (t - 20.0);
            specific_gravity const shown(density(plato(p), celsius(t)).value() * glass /
                                         density(mass_fraction(0.0), celsius(20)).value());
            EXPECT_NEAR(true_gravity(shown, celsius(t), meter).value(), specific_gravity_of(plato(p)).value(),
                        1e-10);
        }
    }
    auto const w = wash::of(1.0 * litre, by_volume(10.0), plato(2.0), celsius(20));
    auto const a = mass_fraction(in(w.liquid().ethanol(), w.mass()));
    double const glass = 1.0 + 25e-6 * 8.0;
    specific_gravity const shown(w.density(celsius(28)).value() * glass /
                                 density(mass_fraction(0.0), celsius(20)).value());
    EXPECT_NEAR(true_gravity(shown, celsius(28), meter, a).value(), w.specific_gravity().value(), 1e-10);
    EXPECT_NEAR(true_gravity(shown, celsius(28), meter).value(), w.specific_gravity().value(), 4.5e-4);
}

TEST(TrueGravity, RefusesBadReadings) {
    gravity_hydrometer const meter({});
    expect_refusal([&] { static_cast<void>(true_gravity(specific_gravity(1.05), celsius(81), meter)); },
                   "temperature");
    expect_refusal([&] { static_cast<void>(true_gravity(specific_gravity(0.9), celsius(20), meter)); },
                   "density behind the reading");
}

}  // namespace
}  // namespace aqueth
