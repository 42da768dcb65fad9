// SPDX-License-Identifier: BSL-1.0
#include <aqueth/lot_blending.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <optional>
#include <random>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

lot some(double litres, double percent, double least_litres = 0.0) {
    auto const available = parcel::of(litres * litre, by_volume(percent), celsius(20.0));
    return {available, available.mass() * (least_litres / litres)};
}

void expect_within_limits(std::vector<lot> const& lots, lot_blend const& result) {
    ASSERT_EQ(result.parts.size(), lots.size());
    for (std::size_t i = 0; i < lots.size(); ++i) {
        EXPECT_GE(result.parts[i].mass().value(), lots[i].at_least.value() - 1e-12);
        EXPECT_LE(result.parts[i].mass().value(), lots[i].available.mass().value() + 1e-12);
        EXPECT_EQ(result.parts[i].composition(), lots[i].available.composition());
    }
}

TEST(LotBlending, TwoLotsAreAnAlligation) {
    // The classical rule of alligation, by mass: shares go by the distance from target to other lot.
    std::vector<lot> const lots{{parcel::of(10.0 * kilogram, by_mass(60.0), celsius(20.0)), {}},
                                {parcel::of(10.0 * kilogram, by_mass(20.0), celsius(20.0)), {}}};
    auto const result = blend_to_strength(lots, by_mass(30.0), celsius(20.0));
    EXPECT_NEAR(in(result.parts[1].mass(), kilogram), 10.0, 1e-12);
    EXPECT_NEAR(in(result.parts[0].mass(), kilogram), 10.0 / 3.0, 1e-12);
}

TEST(LotBlending, TakesParcelsInBraces) {
    auto const strong = parcel::of(10.0 * kilogram, by_mass(60.0), celsius(20.0));
    auto const weak = parcel::of(10.0 * kilogram, by_mass(20.0), celsius(20.0));
    auto const result = blend_to_strength({strong, weak}, by_mass(30.0), celsius(20.0));
    EXPECT_NEAR(in(result.parts[0].mass(), kilogram), 10.0 / 3.0, 1e-12);
    EXPECT_EQ(result.parts[1], weak);
    auto const some_litres = blend_to_strength({strong, weak}, by_mass(30.0), celsius(20.0), 2.0 * litre);
    EXPECT_NEAR(in(some_litres.product.volume(), litre), 2.0, 1e-12);
    auto const error = expect_refusal(
        [&] {
            return blend_to_strength({strong, weak}, by_mass(61.0), celsius(20.0));
        },
        "target strength");
    EXPECT_NEAR(error.upper(), 60.0, 1e-12);
}

TEST(LotBlending, GivesTheVolumeWantedAndDrawsEvenlyWhereItCan) {
    std::vector<lot> const lots{some(4.0, 40.0), some(8.0, 40.0)};
    auto const result = blend_to_strength(lots, by_volume(40.0), celsius(20.0), 6.0 * litre);
    EXPECT_NEAR(in(result.product.volume(), litre), 6.0, 1e-12);
    EXPECT_NEAR(in(result.parts[0].volume(), litre), 2.0, 1e-12);
    EXPECT_NEAR(in(result.parts[1].volume(), litre), 4.0, 1e-12);
}

TEST(LotBlending, ReachesEveryStrengthBetweenTheBoundsItNamesAndNoneBeyond) {
    std::mt19937 random(11);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    int solved = 0;
    for (int trial = 0; trial < 500; ++trial) {
        std::vector<lot> lots;
        int const count = 1 + trial % 5;
        for (int i = 0; i < count; ++i) {
            double const litres = 0.1 + 5.0 * unit(random);
            lots.push_back(
                some(litres, 100.0 * unit(random), trial % 2 == 0 ? 0.0 : 0.8 * litres * unit(random)));
        }
        std::optional<units::volume> volume;
        if (trial % 3 == 0) {
            double least = 0.0;
            double most = 0.0;
            for (lot const& each : lots) {
                least += in(each.at_least, kilogram);
                most += in(each.available.mass(), kilogram);
            }
            // as litres of the strongest and the weakest possible liquid, so that every target stays inside
            // the limits
            double const low = least / 0.7892;
            double const high = most / 0.9983;
            if (low >= high) continue;
            volume = (low + (high - low) * unit(random)) * litre;
        }
        // an impossible request names the bounds
        auto const bounds_of = [&](double percent) {
            try {
                static_cast<void>(blend_to_strength(lots, by_mass(percent), celsius(20.0), volume));
            } catch (refusal const& error) {
                if (error.argument() == "target strength") return std::pair{error.lower(), error.upper()};
                throw;
            }
            return std::pair{percent, percent};
        };
        double const lower = bounds_of(0.0).first;
        double const upper = bounds_of(100.0).second;
        EXPECT_LE(lower, upper);
        for (double const share : {0.001, 0.3, 0.5, 0.9, 0.999}) {
            double const target = lower + share * (upper - lower);
            auto const result = blend_to_strength(lots, by_mass(target), celsius(20.0), volume);
            expect_within_limits(lots, result);
            EXPECT_NEAR(result.product.composition().percent(), target, 1e-10);
            if (volume) {
                EXPECT_NEAR(in(result.product.volume(), *volume), 1.0, 1e-12);
            }
            ++solved;
        }
        if (upper < 99.0) {
            expect_refusal(
                [&] {
                    static_cast<void>(blend_to_strength(lots, by_mass(upper + 0.5), celsius(20.0), volume));
                },
                "target strength");
        }
        if (lower > 1.0) {
            expect_refusal(
                [&] {
                    static_cast<void>(blend_to_strength(lots, by_mass(lower - 0.5), celsius(20.0), volume));
                },
                "target strength");
        }
    }
    EXPECT_GT(solved, 1500);
}

TEST(LotBlending, WithoutAVolumeNoLargerBlendExists) {
    // Against brute force over a grid of draws from three lots.
    std::vector<lot> const lots{some(1.0, 80.0), some(2.0, 55.0, 0.5), some(3.0, 20.0)};
    double const target = 0.36;
    double const found = blend_to_strength(lots, mass_fraction(target), celsius(20.0)).product.mass().value();
    double best = 0.0;
    int const n = 100;
    for (int a = 0; a <= n; ++a) {
        for (int b = 0; b <= n; ++b) {
            double const first = lots[0].available.mass().value() * a / n;
            double const second =
                lots[1].at_least.value() + (lots[1].available.mass() - lots[1].at_least).value() * b / n;
            // the third lot's mass follows from the target
            double const surplus = first * (lots[0].available.composition().value() - target) +
                                   second * (lots[1].available.composition().value() - target);
            double const third = surplus / (target - lots[2].available.composition().value());
            if (third >= 0.0 && third <= lots[2].available.mass().value())
                best = (std::max)(best, first + second + third);
        }
    }
    EXPECT_GE(found, best - 1e-12);
    EXPECT_NEAR(found, best, 0.02 * best);
}

// Running sums: when each lot summed all others again, this took more than a minute. bench.operations times
// both.
TEST(LotBlending, TakesAHundredThousandLots) {
    std::mt19937 random(5);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    std::vector<lot> lots;
    for (int i = 0; i < 100000; ++i)
        lots.push_back(some(1.0 + unit(random), 90.0 * unit(random), 0.5 * unit(random)));
    auto const all = blend_to_strength(lots, by_volume(50.0), celsius(20.0));
    EXPECT_NEAR(all.product.strength().percent(), 50.0, 1e-7);
    expect_within_limits(lots, all);
    auto const some_of_all = blend_to_strength(lots, by_volume(45.0), celsius(20.0), 100000.0 * litre);
    EXPECT_NEAR(some_of_all.product.strength().percent(), 45.0, 1e-7);
    expect_within_limits(lots, some_of_all);
}

TEST(LotBlending, ASmallLotKeepsItsDigitsBesideALargeOne) {
    // Nearly all of the large lot is held back: the mass taken must not be a difference of large masses.
    parcel const large = parcel::of(23.0 * kilogram, by_volume(62.0), celsius(20.0));
    for (double const small : {3e-10, 1e-6, 1e-4}) {
        for (double const target : {31.0, 45.0, 60.0, 61.999}) {
            std::vector<lot> const lots{{parcel::of(small * kilogram, by_volume(30.0), celsius(20.0)), {}},
                                        {large, {}}};
            auto const up = blend_to_strength(lots, by_volume(target), celsius(20.0));
            EXPECT_NEAR(up.product.strength().percent(), target, 1e-9) << small;
            EXPECT_EQ(in(up.parts[0].mass(), kilogram), small);
            expect_within_limits(lots, up);
        }
        // The same downwards, with another lot that is held back altogether and one with a least mass.
        parcel const strong = parcel::of(small * kilogram, by_volume(90.0), celsius(20.0));
        std::vector<lot> const lots{{large, 0.1 * strong.mass()}, {some(9.0, 5.0)}, {strong}};
        for (double const target : {63.0, 75.0, 86.0}) {
            auto const down = blend_to_strength(lots, by_volume(target), celsius(20.0));
            EXPECT_NEAR(down.product.strength().percent(), target, 1e-9) << small;
            EXPECT_EQ(in(down.parts[2].mass(), kilogram), small);
            EXPECT_NEAR(in(down.parts[1].mass(), kilogram), 0.0, 1e-9 * small);
            expect_within_limits(lots, down);
        }
    }
}

TEST(LotBlending, ALotAloneMakesItsOwnStrength) {
    std::vector<lot> const lots{some(2.0, 43.7)};
    EXPECT_NEAR(in(blend_to_strength(lots, by_volume(43.7), celsius(20.0)).product.volume(), litre), 2.0,
                1e-12);
    expect_refusal([&] { static_cast<void>(blend_to_strength(lots, by_volume(43.0), celsius(20.0))); },
                   "target strength");
}

// The weakest and the strongest product are then equal, but rounding of two summation orders may reverse
// them.
TEST(LotBlending, LotsOfOneStrengthMakeThatStrength) {
    for (double percent = 5.0; percent < 100.0; percent += 0.5) {
        std::vector<lot> const lots{some(0.3, percent), some(0.7, percent), some(1.1, percent)};
        for (double const litres : {0.4, 1.234, 2.0}) {
            auto const blend = blend_to_strength(lots, by_volume(percent), celsius(20.0), litres * litre);
            EXPECT_NEAR(in(blend.product.volume(), litre), litres, 1e-12);
            EXPECT_NEAR(blend.product.strength().percent(), percent, 1e-10);
        }
        EXPECT_NEAR(in(blend_to_strength(lots, by_volume(percent), celsius(20.0)).product.volume(), litre),
                    2.1, 1e-12);
    }
}

TEST(LotBlending, SaysWhatIsReachable) {
    std::vector<lot> const lots{some(1.0, 80.0), some(3.0, 30.0, 3.0)};
    auto const error =
        expect_refusal([&] { static_cast<void>(blend_to_strength(lots, by_volume(60.0), celsius(20.0))); },
                       "target strength");
    EXPECT_NEAR(error.lower(), 30.0, 1e-9);
    EXPECT_LT(error.upper(), 45.0);  // all of both
    EXPECT_NO_THROW(
        static_cast<void>(blend_to_strength(lots, by_volume(error.upper() - 1e-6), celsius(20.0))));
}

// Least and greatest volumes at the wanted strength; a request for all of it stays within them.
TEST(LotBlending, NamesTheVolumesThatTheLimitsAddUpTo) {
    std::vector<lot> const lots{some(10.0, 80.0, 1.0), some(5.0, 40.0, 0.5)};
    auto const kilograms = in(parcel::of(1.0 * litre, by_volume(60), celsius(20)).mass(), kilogram);
    for (double const litres : {0.1, 100.0}) {
        auto const e = expect_refusal(
            [&] { static_cast<void>(blend_to_strength(lots, by_volume(60), celsius(20), litres * litre)); },
            "volume wanted");
        EXPECT_NEAR(e.lower(), in(lots[0].at_least + lots[1].at_least, kilogram) / kilograms, 1e-12);
        EXPECT_NEAR(e.upper(), in(lots[0].available.mass() + lots[1].available.mass(), kilogram) / kilograms,
                    1e-12);
    }
    for (double litres = 1.0; litres < 20.0; litres += 1.0) {
        std::vector<lot> const all{some(litres, 80.0), some(5.0, 40.0)};
        auto const whole = mix({all[0].available, all[1].available}, celsius(20)).product;
        EXPECT_NO_THROW(static_cast<void>(
            blend_to_strength(all, whole.composition(), celsius(20), whole.volume(celsius(20)))))
            << litres;
    }
}

TEST(LotBlending, RefusesBadLotsAndVolumes) {
    std::vector<lot> const none;
    expect_refusal([&] { static_cast<void>(blend_to_strength(none, by_volume(40.0), celsius(20.0))); },
                   "number of lots");
    std::vector<lot> const empty{some(1.0, 50.0)};
    std::vector<lot> const greedy{{empty[0].available, 2.0 * empty[0].available.mass()}};
    expect_refusal([&] { static_cast<void>(blend_to_strength(greedy, by_volume(50.0), celsius(20.0))); },
                   "least mass of a lot");
    std::vector<lot> const nothing{{empty[0].available.with_mass(0.0 * kilogram), {}}};
    expect_refusal([&] { static_cast<void>(blend_to_strength(nothing, by_volume(50.0), celsius(20.0))); },
                   "mass of all lots");
    for (double const bad : {-1.0, 0.0, 1.5, std::numeric_limits<double>::quiet_NaN()}) {
        expect_refusal(
            [&] { static_cast<void>(blend_to_strength(empty, by_volume(50.0), celsius(20.0), bad * litre)); },
            "volume wanted");
    }
}

// Lots alone too strong, or too little: water makes up the rest.
TEST(BlendWithWater, TakesAllLotsWithoutAVolume) {
    std::vector<lot> const lots{{parcel::of(3.0 * litre, by_volume(62.0), celsius(20.0)), {}},
                                {parcel::of(4.0 * litre, by_volume(50.0), celsius(20.0)), {}}};
    auto const blend = blend_with_water(lots, by_volume(40.0), celsius(15.0), celsius(20.0));
    ASSERT_EQ(blend.parts.size(), 3u);
    EXPECT_EQ(blend.parts[0], lots[0].available);
    EXPECT_EQ(blend.parts[1], lots[1].available);
    EXPECT_NEAR(blend.product.strength().percent(), 40.0, 1e-10);
    auto const all = mix({lots[0].available, lots[1].available}, celsius(20.0)).product;
    EXPECT_NEAR(
        in(blend.parts[2].mass(), dilute(all, by_volume(40.0), water_at(celsius(15.0))).addition.mass()), 1.0,
        1e-12);
}

TEST(BlendWithWater, GivesTheVolumeAndTakesTheSameShareOfEachLot) {
    std::vector<lot> const lots{{parcel::of(3.0 * litre, by_volume(62.0), celsius(20.0)), {}},
                                {parcel::of(4.0 * litre, by_volume(50.0), celsius(20.0)), 1.0 * kilogram}};
    auto const blend = blend_with_water(lots, by_volume(40.0), celsius(15.0), celsius(20.0), 6.0 * litre);
    EXPECT_NEAR(in(blend.product.volume(), litre), 6.0, 1e-10);
    EXPECT_NEAR(blend.product.strength().percent(), 40.0, 1e-10);
    double const first = in(blend.parts[0].mass(), lots[0].available.mass());
    double const second =
        in(blend.parts[1].mass() - 1.0 * kilogram, lots[1].available.mass() - 1.0 * kilogram);
    EXPECT_NEAR(first, second, 1e-12);
}

TEST(BlendWithWater, RefusesMoreThanTheLotsHold) {
    std::vector<lot> const lots{{parcel::of(3.0 * litre, by_volume(62.0), celsius(20.0)), {}}};
    expect_refusal(
        [&] {
            static_cast<void>(
                blend_with_water(lots, by_volume(40.0), celsius(15.0), celsius(20.0), 6.0 * litre));
        },
        "volume wanted");
    expect_refusal(
        [&] { static_cast<void>(blend_with_water(lots, by_volume(70.0), celsius(15.0), celsius(20.0))); },
        "target strength");
    expect_refusal(
        [&] { static_cast<void>(blend_with_water(lots, by_volume(0.0), celsius(15.0), celsius(20.0))); },
        "target strength");
}

}  // namespace
}  // namespace aqueth
