// SPDX-License-Identifier: BSL-1.0
// A run in jars: the jars add up to the run, and the cut gives the average.
#include <aqueth/still/jars.hpp>

#include "expect_refusal.hpp"
#include "runs.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::pot_still;
using test::quillbeck;
using test::quillbeck_charge;
using test::sea_level;
using test::until;

wash low_wines() { return wash::of(20.0 * litre, by_volume(28), plato(0), celsius(20)); }
run_plan spirit_run() {
    auto plan = until(condition::distillate_strength(by_volume(20)));
    plan.spout_temperature = celsius(26);
    return plan;
}
jar_plan half_litres() { return {0.5 * litre, 0.2 * litre}; }

// Masses of ethanol and water in the jars, the foreshots and the residue are those of the charge; the jars
// are equal but for the last one; the running average is the mixture.
TEST(Jars, AddUpToTheRun) {
    auto const r = fill_jars(low_wines(), pot_still(), spirit_run(), half_litres(), sea_level());
    ASSERT_GT(r.jars.size(), 10U);
    ASSERT_EQ(r.jars.size() + 1, r.run.fractions.size());
    double ethanol = r.run.fractions.front().product.ethanol().value(),
           water = r.run.fractions.front().product.water().value();
    bool weaker = true;
    for (std::size_t k = 0; k < r.jars.size(); ++k) {
        ethanol += r.jars[k].content.ethanol().value();
        water += r.jars[k].content.water().value();
        double const litres = in(r.jars[k].content.volume(celsius(20)), litre);
        EXPECT_NEAR(litres, 0.5, k + 1 < r.jars.size() ? 1e-9 : 0.5) << k;
        if (k > 0) weaker = weaker && r.jars[k].content.strength() < r.jars[k - 1].content.strength();
    }
    EXPECT_TRUE(weaker);
    auto const& residue = r.run.residue.liquid();
    EXPECT_NEAR((ethanol + residue.ethanol().value()) / low_wines().liquid().ethanol().value(), 1.0, 1e-9);
    EXPECT_NEAR((water + residue.water().value()) / low_wines().liquid().water().value(), 1.0, 1e-9);
    auto const& last = r.jars.back().so_far;
    EXPECT_NEAR(last.ethanol().value(), ethanol - r.run.fractions.front().product.ethanol().value(), 1e-9);
    EXPECT_NEAR(last.water().value(), water - r.run.fractions.front().product.water().value(), 1e-9);
    // the same run without jars
    auto const plain = distil(low_wines(), pot_still(), spirit_run(), sea_level());
    EXPECT_NEAR(in(plain.fractions[0].end.collected, r.run.fractions.back().end.collected), 1.0, 1e-7);
}

// A jar that is exactly full at the end of the run is the last one.
TEST(Jars, LastJarFull) {
    for (int const number : {1, 4, 7}) {
        auto const end = until(condition::collected((0.5 * number) * litre));
        auto const r = fill_jars(low_wines(), pot_still(), end, {0.5 * litre}, sea_level());
        EXPECT_EQ(r.jars.size(), static_cast<std::size_t>(number));
        EXPECT_NEAR(in(r.jars.back().content.volume(celsius(20)), litre), 0.5,
                    0.5e-3);  // mixed it is exact; apart it contracts less
    }
    auto const one = fill_jars(low_wines(), pot_still(), until(condition::collected(0.3 * litre)),
                               {0.5 * litre}, sea_level());
    EXPECT_EQ(one.jars.size(), 1U);
}

// The alcoholometer at the temperature of the spout shows what the strength becomes when it is read back.
TEST(Jars, ReadingIsTheStrengthReadBack) {
    auto const r = fill_jars(low_wines(), pot_still(), spirit_run(), half_litres(), sea_level());
    for (jar const& each : r.jars) {
        ASSERT_TRUE(each.reading && each.reading_at_end);
        EXPECT_NEAR(alcoholometer().strength(*each.reading, celsius(26)).value(),
                    each.content.strength().value(), 1e-9);
        EXPECT_NEAR(alcoholometer().strength(*each.reading_at_end, celsius(26)).value(),
                    to<volume_fraction>(each.end.distillate).value(), 1e-9);
        EXPECT_GT(*each.reading, each.content.strength());  // warm spirit is light
    }
    EXPECT_FALSE(reading_at(by_volume(99.9), celsius(35)));  // above 100
    EXPECT_FALSE(reading_at(by_volume(10), celsius(-15)));   // frozen
}

// The product of the cut has the average to the last digits; a little more of the run has less.
TEST(Jars, CutGivesTheAverage) {
    auto const charge = low_wines();
    auto const plan = spirit_run();
    auto const into = half_litres();
    auto const r = fill_jars(charge, pot_still(), plan, into, sea_level());
    for (int const first : {1, 3}) {
        for (double const average : {70.0, 68.0, 60.0}) {
            auto const c =
                cut_for_average(charge, pot_still(), plan, into, r, by_volume(average), first, sea_level());
            EXPECT_NEAR(c.product.strength().percent(), average, 1e-6);
            EXPECT_EQ(c.first, first);
            EXPECT_LT(c.part, into.jar);
            // by hand: whole jars, and the head of the next one
            parcel sum = r.jars[static_cast<std::size_t>(first) - 1].content;
            for (int k = first; k < first - 1 + c.full; ++k)
                sum = mix({sum, r.jars[static_cast<std::size_t>(k)].content}, celsius(20)).product;
            EXPECT_GE(sum.strength().percent(), average);
            parcel const more =
                mix({sum, r.jars[static_cast<std::size_t>(first - 1 + c.full)].content}, celsius(20)).product;
            EXPECT_LT(more.strength().percent(), average);
            // what is added has the volume of the part
            auto const added = parcel::of(
                c.product.mass() - sum.mass(),
                mass_fraction(in(c.product.ethanol() - sum.ethanol(), c.product.mass() - sum.mass())),
                celsius(20));
            EXPECT_NEAR(in(added.volume(), c.part), 1.0, 1e-6);
        }
    }
    // all jars, exactly
    auto const all = cut_for_average(charge, pot_still(), plan, into, r,
                                     r.jars.back().so_far.strength<mole_fraction>(), 1, sea_level());
    EXPECT_EQ(all.full, static_cast<int>(r.jars.size()));
    EXPECT_EQ(all.part.value(), 0.0);
    // inside the first jar
    auto const early = cut_for_average(charge, pot_still(), plan, into, r,
                                       by_moles(50.0 * (r.jars[0].content.strength<mole_fraction>().value() +
                                                        r.jars[0].begin.distillate.value())),
                                       1, sea_level());
    EXPECT_EQ(early.full, 0);
    EXPECT_GT(early.part.value(), 0.0);
}

TEST(Jars, RefusesWhatCannotBe) {
    auto const fill = [](jar_plan const& into) {
        return [=] { return fill_jars(low_wines(), pot_still(), spirit_run(), into, sea_level()); };
    };
    for (double const bad : {0.0, -1.0, 2000.0, std::nan("")})
        expect_refusal(fill({bad * litre}), "volume of a jar");
    for (double const bad : {-1.0, 30.0, std::nan("")})
        expect_refusal(fill({litre, bad * litre}), "discarded volume");
    for (double const bad : {-30.0, 41.0, std::nan("")}) {
        auto plan = spirit_run();
        plan.spout_temperature = celsius(bad);
        expect_refusal([&] { return fill_jars(low_wines(), pot_still(), plan, {litre}, sea_level()); },
                       "temperature of the spout");
    }
    expect_refusal(fill({1.0 * millilitre}), "number of jars");
    auto with_cuts = spirit_run();
    with_cuts.cuts = {{condition::collected(litre)}};
    expect_refusal([&] { return fill_jars(low_wines(), pot_still(), with_cuts, {litre}, sea_level()); },
                   "number of cuts");
    auto const r = fill_jars(low_wines(), pot_still(), spirit_run(), half_litres(), sea_level());
    auto const cut = [&](double average, int first) {
        return [=, &r] {
            return cut_for_average(low_wines(), pot_still(), spirit_run(), half_litres(), r,
                                   by_volume(average), first, sea_level());
        };
    };
    for (double const bad : {10.0, 95.0}) {
        auto const e = expect_refusal(cut(bad, 1), "average of the jars");
        EXPECT_NEAR(e.lower(), r.jars.back().so_far.strength().percent(), 1e-6);
        EXPECT_NEAR(e.upper(), to<volume_fraction>(r.jars[0].begin.distillate).percent(), 1e-6);
    }
    for (int const bad : {0, -1, 1000}) expect_refusal(cut(60, bad), "number of the first jar");
}

}  // namespace
}  // namespace aqueth
