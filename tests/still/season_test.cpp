// SPDX-License-Identifier: BSL-1.0
// A season of strips and spirit runs: its ledgers close, and the lot that repeats itself does so when it is
// distilled by hand.
#include <aqueth/still/season.hpp>

#include "expect_refusal.hpp"
#include "runs.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <optional>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::sea_level;
using test::until;

/// 200 L of wash through the stillhouse's 25 L pot: strips without the column, spirit runs with a neck
season_plan two_hundred_litres() {
    still pot{{2.0 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin, celsius(20)}};
    still with_neck = pot;
    with_neck.neck = neck::condensing(0.1);
    run_plan spirit = until(condition::distillate_strength(by_volume(10)));
    spirit.cuts = {{condition::collected(150.0 * millilitre), false},
                   {condition::distillate_strength(by_volume(60))}};
    return {pot,         until(condition::distillate_strength(by_volume(3))), 24.0 * litre, with_neck, spirit,
            24.0 * litre};
}
wash lot() { return wash::of(200.0 * litre, by_volume(9.0), plato(2.0), celsius(20)); }

void expect_closed(season const& s) {
    EXPECT_NEAR(s.ethanol.balance(), 0.0, 1e-9);
    EXPECT_NEAR(s.water.balance(), 0.0, 1e-9);
    EXPECT_NEAR(in(s.ethanol.returned, s.ethanol.taken_up), 1.0, 1e-8);
    EXPECT_NEAR(in(s.water.returned, s.water.taken_up), 1.0, 1e-8);
}

TEST(Season, LedgersClose) {
    auto plan = two_hundred_litres();
    for (double const lost : {0.0, 0.02}) {
        for (auto const strongest : {std::optional<volume_fraction>(), std::optional(by_volume(25.0))}) {
            plan.lost = lost;
            plan.strongest_charge = strongest;
            auto const s = distil_season(lot(), plan, sea_level());
            expect_closed(s);
            EXPECT_EQ(s.strips, 9);  // 200/24 = 8.3
            EXPECT_EQ(s.ethanol.lost.value() > 0.0, lost > 0.0);
            EXPECT_EQ(s.water.added.value() > 0.0, strongest.has_value());
            double const charged = s.steady().charge.strength().percent();
            EXPECT_TRUE(!strongest || std::abs(charged - 25.0) < 1e-9) << charged;
            EXPECT_NEAR(s.ethanol.from_wash.value(), lot().liquid().ethanol().value(), 1e-12);
            EXPECT_GT(s.yield(), 0.6);
            EXPECT_LT(s.yield(), 1.0 - lost);
        }
    }
}

// What is returned is put in again by hand: it comes out again.
TEST(Season, TheLastLotRepeatsItself) {
    auto const plan = two_hundred_litres();
    auto const s = distil_season(lot(), plan, sea_level());
    ASSERT_GT(s.cycles.size(), 3U);
    parcel const all = mix({s.low_wines, s.steady().returned}, celsius(20)).product;
    int const runs = s.steady().spirit_runs;
    auto const again = distil(all.with_mass(all.mass() / runs), plan.spirit_still, plan.spirit_run);
    ASSERT_EQ(again.fractions.size(), 3U);
    EXPECT_NEAR(in(runs * again.fractions[2].product.ethanol(), s.steady().returned.ethanol()), 1.0, 1e-8);
    EXPECT_NEAR(in(runs * again.fractions[1].product.mass(), s.steady().hearts.mass()), 1.0, 1e-8);
    EXPECT_NEAR(in(runs * again.fractions[0].product.mass(), s.steady().discarded.mass()), 1.0, 1e-8);
    // and the changes from lot to lot shrink
    for (std::size_t k = 2; k + 2 < s.cycles.size(); ++k) {
        auto const change = [&](std::size_t i) {
            return std::abs((s.cycles[i].returned.ethanol() - s.cycles[i - 1].returned.ethanol()).value());
        };
        EXPECT_LE(change(k), change(k - 1) + 1e-9) << k;
    }
}

// Without anything returned the first lot is the last one: a strip and a spirit run by hand, times their
// number.
TEST(Season, NothingReturnedIsTheChainByHand) {
    auto plan = two_hundred_litres();
    plan.destinations = {destination::discarded, destination::hearts, destination::discarded};
    plan.lost = 0.01;
    plan.between_runs = 1.0 * hour;
    auto const s = distil_season(lot(), plan, sea_level());
    EXPECT_NEAR(s.ethanol.balance(), 0.0, 1e-9);
    EXPECT_EQ(s.cycles.size(), 1U);
    auto const strip = distil(wash::of(lot().volume() / 9, by_volume(9.0), plato(2.0), celsius(20)),
                              plan.stripping_still, plan.strip);
    parcel const low_wines = strip.fractions[0].product;
    EXPECT_NEAR(in(s.low_wines.mass(), 9 * 0.99 * low_wines.mass()), 1.0, 1e-7);
    int const runs = static_cast<int>(std::ceil(9 * 0.99 * in(low_wines.volume(), litre) / 24.0));
    EXPECT_EQ(s.steady().spirit_runs, runs);
    auto const spirit =
        distil(low_wines.with_mass(9 * 0.99 / runs * low_wines.mass()), plan.spirit_still, plan.spirit_run);
    EXPECT_NEAR(in(s.steady().hearts.ethanol(), runs * 0.99 * spirit.fractions[1].product.ethanol()), 1.0,
                1e-7);
    EXPECT_NEAR(s.duration / (9.0 * (strip.warming.duration + strip.boiling_time + 1.0 * hour) +
                              static_cast<double>(runs) *
                                  (spirit.warming.duration + spirit.boiling_time + 1.0 * hour)),
                1.0, 1e-7);
    EXPECT_NEAR(in(s.energy, 9.0 * strip.energy() + static_cast<double>(runs) * spirit.energy()), 1.0, 1e-7);
}

// Heads may be returned too; then more comes in hearts, and nothing is discarded.
TEST(Season, HeadsReturned) {
    auto plan = two_hundred_litres();
    auto const without = distil_season(lot(), plan, sea_level());
    plan.destinations = {destination::returned, destination::hearts, destination::returned};
    auto const with = distil_season(lot(), plan, sea_level());
    expect_closed(with);
    EXPECT_EQ(with.ethanol.discarded.value(), 0.0);
    EXPECT_GT(with.yield(), without.yield());
}

TEST(Season, ShowsItsProgress) {
    int strip = 0, last = 0;
    static_cast<void>(distil_season(lot(), two_hundred_litres(), sea_level(), [&](season_progress const& p) {
        p.cycle == 0 ? ++strip : (last = p.cycle);
    }));
    EXPECT_GT(strip, 0);
    EXPECT_GT(last, 3);
}

TEST(Season, RefusesWhatCannotBe) {
    auto const refused = [](auto const& change, char const* what) {
        auto plan = two_hundred_litres();
        change(plan);
        expect_refusal([&] { return distil_season(lot(), plan, sea_level()); }, what);
    };
    for (double const bad : {0.0, -1.0, std::nan("")}) {
        refused([&](season_plan& p) { p.wash_in_a_strip = bad * litre; }, "volume of the charge");
        refused([&](season_plan& p) { p.charge_of_a_spirit_run = bad * litre; }, "volume of the charge");
    }
    refused([](season_plan& p) { p.wash_in_a_strip = 0.1 * litre; }, "number of runs");
    for (double const bad : {-0.1, 0.3, std::nan("")})
        refused([&](season_plan& p) { p.lost = bad; }, "share that is lost");
    refused([](season_plan& p) { p.between_runs = -1.0 * hour; }, "time between runs");
    refused([](season_plan& p) { p.destinations = {destination::hearts}; }, "number of destinations");
    refused([](season_plan& p) { p.strip.cuts = {{condition::collected(litre)}}; }, "number of cuts");
    refused([](season_plan& p) { p.strongest_charge = by_volume(0.5); }, "strongest charge");
    // everything is returned for ever
    refused([](season_plan& p) { p.destinations = std::vector(3, destination::returned); },
            "number of hearts");
}

}  // namespace
}  // namespace aqueth
