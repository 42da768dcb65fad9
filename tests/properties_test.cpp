// SPDX-License-Identifier: BSL-1.0
// Properties of every mixture, tested on random ones (the same each time): order, scale and intermediate
// steps do not matter, and relations are monotone. The tests of each header check that header alone.
#include <aqueth/aqueth.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <vector>

namespace aqueth {
namespace {

/// Random mixtures; the numbers are ours to the bit, because the distributions of libraries differ.
class any {
public:
    double number(double lower, double upper) {
        return lower + (upper - lower) * (static_cast<double>(bits_() >> 11) * 0x1p-53);
    }
    std::size_t index(std::size_t below) { return bits_() % below; }
    /// a parcel from 0 to 40 °C, which is liquid at 20 °C too
    parcel spirit(double weakest = 0.0, double strongest = 100.0) {
        return parcel::of(number(0.01, 100.0) * litre, by_volume(number(weakest, strongest)),
                          celsius(number(0.0, 40.0)));
    }
    std::vector<parcel> parcels() {
        std::vector<parcel> result;
        for (std::size_t n = 2 + index(6); n > 0; --n) result.push_back(spirit());
        return result;
    }
    template <class T>
    void shuffle(std::vector<T>& v) {
        for (std::size_t n = v.size(); n > 1; --n) std::swap(v[n - 1], v[index(n)]);
    }

private:
    std::mt19937_64 bits_{20};
};

constexpr int tries = 500;
auto const at_20 = celsius(20);

void expect_same(parcel const& a, parcel const& b, double relative = 1e-12) {
    EXPECT_NEAR(in(a.mass(), b.mass()), 1.0, relative);
    EXPECT_NEAR(a.composition().value(), b.composition().value(), relative);
    EXPECT_NEAR(a.temperature().celsius(), b.temperature().celsius(), 1e-9);
}

TEST(Properties, ABlendDoesNotKnowTheOrderOfItsParts) {
    any random;
    for (int k = 0; k < tries; ++k) {
        auto parts = random.parcels();
        blend const one = mix(parts, at_20);
        random.shuffle(parts);
        blend const other = mix(parts, at_20);
        expect_same(other.product, one.product);
        EXPECT_NEAR(in(other.contraction, one.sum_of_volumes), in(one.contraction, one.sum_of_volumes),
                    1e-12);
    }
}

TEST(Properties, ABlendDoesNotKnowWhatWasBlendedFirst) {
    any random;
    for (int k = 0; k < tries; ++k) {
        auto const parts = random.parcels();
        std::size_t const cut = 1 + random.index(parts.size() - 1);
        auto const middle = parts.begin() + static_cast<std::ptrdiff_t>(cut);
        std::vector<parcel> const first(parts.begin(), middle), rest(middle, parts.end());
        blend const at_once = mix(parts, at_20);
        blend const a = mix(first, at_20), b = mix(rest, at_20);
        blend const in_two = mix({a.product, b.product}, at_20);
        expect_same(in_two.product, at_once.product);
        // Contractions of the steps add up, whatever the order.
        EXPECT_NEAR((a.contraction + b.contraction + in_two.contraction).value(), at_once.contraction.value(),
                    1e-12 * at_once.sum_of_volumes.value());
    }
}

TEST(Properties, WarmthDoesNotKnowTheOrderEither) {
    any random;
    int answered = 0;
    for (int k = 0; k < tries; ++k) {
        parcel const a = random.spirit().at(celsius(random.number(5.0, 25.0)));
        parcel const b = random.spirit().at(celsius(random.number(5.0, 25.0)));
        parcel const c = random.spirit().at(celsius(random.number(5.0, 25.0)));
        try {
            parcel const at_once = mix({a, b, c}).product;
            expect_same(mix({mix({c, a}).product, b}).product, at_once, 1e-11);
            ++answered;
        } catch (refusal const& e) {  // warmer than 40 °C on the way; 5 °C, because strong ones cool
            EXPECT_NE(std::string(e.what()).find("without loss of heat"), std::string::npos) << e.what();
        }
    }
    EXPECT_GT(answered, tries / 2);
}

TEST(Properties, TenTimesThePartsAreTenTimesTheBlend) {
    any random;
    for (int k = 0; k < tries; ++k) {
        auto const parts = random.parcels();
        std::vector<parcel> large;
        for (parcel const& part : parts) large.push_back(part.with_mass(10.0 * part.mass()));
        blend const one = mix(parts, at_20), ten = mix(large, at_20);
        expect_same(ten.product, one.product.with_mass(10.0 * one.product.mass()));
        EXPECT_NEAR(ten.contraction_percent(), one.contraction_percent(), 1e-10);
    }
}

TEST(Properties, NothingAddedChangesNothing) {
    any random;
    for (int k = 0; k < tries; ++k) {
        parcel const spirit = random.spirit(1.0);
        expect_same(mix({spirit, random.spirit().with_mass(units::mass())}).product, spirit);
        expect_same(dilute(spirit, spirit.composition(), water_at(at_20)).product, spirit);
        expect_same(spirit.at(celsius(35)).at(spirit.temperature()), spirit);
    }
}

TEST(Properties, DilutingInTwoStepsIsDilutingOnce) {
    any random;
    for (int k = 0; k < tries; ++k) {
        parcel const spirit = random.spirit(40.0);
        auto const half_way = by_volume(random.number(25.0, 40.0)),
                   target = by_volume(random.number(5.0, 25.0));
        adjustment const once = dilute(spirit, target, water_at(at_20), at_20);
        adjustment const first = dilute(spirit, half_way, water_at(at_20), at_20);
        adjustment const second = dilute(first.product, target, water_at(at_20), at_20);
        expect_same(second.product, once.product);
        EXPECT_NEAR(in(first.addition.mass() + second.addition.mass(), once.addition.mass()), 1.0, 1e-12);
    }
}

TEST(Properties, FortifyingUndoesDiluting) {
    any random;
    for (int k = 0; k < tries; ++k) {
        parcel const spirit = random.spirit(30.0, 90.0);
        parcel const weak =
            dilute(spirit, by_volume(random.number(5.0, 30.0)), water_at(at_20), at_20).product;
        parcel const back = fortify(weak, spirit.composition(),
                                    liquid::of(by_volume(random.number(91.0, 100.0)), at_20), at_20)
                                .product;
        EXPECT_NEAR(back.composition().value(), spirit.composition().value(), 1e-12);
        EXPECT_GE(back.mass(), weak.mass());
    }
}

TEST(Properties, WeakerNeedsMoreWater) {
    any random;
    for (int k = 0; k < tries; ++k) {
        parcel const spirit = random.spirit(60.0);
        double const stronger = random.number(10.0, 59.0), weaker = random.number(1.0, stronger - 0.01);
        EXPECT_GT(dilute(spirit, by_volume(weaker), water_at(at_20), at_20).addition.mass(),
                  dilute(spirit, by_volume(stronger), water_at(at_20), at_20).addition.mass());
    }
}

TEST(Properties, LotsGiveTheSameInAnyOrderAndInProportion) {
    any random;
    for (int k = 0; k < tries; ++k) {
        std::vector<lot> lots{{random.spirit(60.0)}, {random.spirit(0.0, 20.0)}};
        for (std::size_t n = random.index(4); n > 0; --n) lots.push_back({random.spirit()});
        auto const target = by_volume(random.number(20.0, 60.0));
        lot_blend const one = blend_to_strength(lots, target, at_20);
        EXPECT_NEAR(one.product.strength().percent(), target.percent(), 1e-9);

        random.shuffle(lots);
        expect_same(blend_to_strength(lots, target, at_20).product, one.product, 1e-11);

        for (lot& each : lots) each.available = each.available.with_mass(3.0 * each.available.mass());
        parcel const thrice = blend_to_strength(lots, target, at_20).product;
        expect_same(thrice, one.product.with_mass(3.0 * one.product.mass()), 1e-11);

        // Made once, it is a lot of that strength, and all of it is taken.
        std::vector<lot> const made{{one.product}, {random.spirit(70.0)}};
        double const most = in(blend_to_strength(made, target, at_20).parts[0].mass(), one.product.mass());
        EXPECT_NEAR(most, 1.0, 1e-9);
    }
}

TEST(Properties, BottlesAndRestAreTheSpirit) {
    any random;
    for (int k = 0; k < tries; ++k) {
        parcel const spirit = random.spirit();
        units::volume const label = random.number(0.02, 2.0) * litre;
        bottling const b = fill_bottles(spirit, label);
        EXPECT_NEAR(in(b.count * b.fill_mass + b.remainder.mass(), spirit.mass()), 1.0, 1e-12);
        EXPECT_LT(in(b.remainder.mass(), b.fill_mass), 1.0 + 1e-9);
        // At 20 °C every bottle holds its label.
        EXPECT_NEAR(in(spirit.with_mass(b.fill_mass).volume(at_20), label), 1.0, 1e-12);
    }
}

TEST(Properties, WarmerSpiritOfOneReadingIsWeaker) {
    any random;
    alcoholometer const meter;
    for (int k = 0; k < tries; ++k) {
        auto const reading = by_volume(random.number(10.0, 95.0));
        double const cold = random.number(10.0, 35.0), warm = random.number(cold + 0.01, 40.0);
        EXPECT_GT(meter.strength(reading, celsius(cold)), meter.strength(reading, celsius(warm)))
            << reading.percent() << ' ' << cold << ' ' << warm;
    }
}

TEST(Properties, MorePressureBoilsLater) {
    any random;
    for (int k = 0; k < tries; ++k) {
        mole_fraction const x(random.number(0.0, 1.0));
        double const low = random.number(2.0, 180.0), high = random.number(low + 0.01, 190.0);
        EXPECT_LT(bubble_point(x, low * kilopascal).temperature,
                  bubble_point(x, high * kilopascal).temperature);
        EXPECT_LT(dew_point(x, low * kilopascal).temperature, dew_point(x, high * kilopascal).temperature);
        // A liquid boils before its vapour condenses altogether.
        EXPECT_LE(bubble_point(x, low * kilopascal).temperature.celsius(),
                  dew_point(x, low * kilopascal).temperature.celsius() + 1e-9);
    }
}

TEST(Properties, StrongerLiquidHasStrongerVapour) {
    any random;
    for (int k = 0; k < tries; ++k) {
        double const weak = random.number(0.0, 0.999), strong = random.number(weak + 1e-6, 1.0);
        auto const p = random.number(2.0, 190.0) * kilopascal;
        EXPECT_LT(bubble_point(mole_fraction(weak), p).vapour, bubble_point(mole_fraction(strong), p).vapour);
    }
}

TEST(Properties, TwiceTheChargeOnTwiceThePowerIsTheSameRunTwice) {
    any random;
    boiling_curve const mixture(standard_atmosphere);
    for (int k = 0; k < 5; ++k) {
        parcel const charge = random.spirit(5.0, 40.0);
        double const watts = random.number(500.0, 5000.0), loss = random.number(0.0, 3.0);
        column const tower = column::of_stages(random.number(0.0, 5.0));
        head const top = head::total_condenser(reflux::constant(random.number(0.0, 4.0)));
        double const cut_at = random.number(0.1, 0.5), end = random.number(0.5, 2.0);
        auto const run = [&](double scale) {
            run_plan plan;
            plan.cuts.push_back({condition::collected(scale * cut_at * charge.pure_alcohol())});
            plan.ends.push_back(condition::still_strength(by_volume(end)));
            still const s{{scale * watts * watt, units::heat_capacity(), scale * loss * watt_per_kelvin},
                          tower,
                          neck::insulated(),
                          top};
            return distil(wash::of(charge.with_mass(scale * charge.mass())), s, plan, mixture);
        };
        auto const one = run(1.0), two = run(2.0);
        ASSERT_EQ(one.fractions.size(), two.fractions.size());
        EXPECT_NEAR(in(two.boiling_time, one.boiling_time), 1.0, 1e-6);
        for (std::size_t i = 0; i < one.fractions.size(); ++i) {
            parcel const& a = one.fractions[i].product;
            EXPECT_NEAR(in(two.fractions[i].product.mass(), a.mass()), 2.0, 1e-6);
            EXPECT_NEAR(two.fractions[i].product.composition().value(), a.composition().value(), 1e-7);
        }
    }
}

}  // namespace
}  // namespace aqueth
