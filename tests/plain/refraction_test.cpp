// SPDX-License-Identifier: BSL-1.0
#include "plain/refusal.hpp"

#include <aqueth/plain/refraction.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <string>

namespace aqueth {
namespace {

using test::expect_refusal;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

plain::checked<double> one(plain::checked<plain::fermented<double>> const& f) {
    return {f.value.volume_fraction, f.status};
}

TEST(PlainRefraction, BrixIsTheSugarOfASolution) {
    for (double const b : {0.0, 0.01, 5.0, 20.0, 70.0}) {
        double const n = plain::refractive_index_from_brix(b).value;
        EXPECT_NEAR(plain::brix_from_refractive_index(n).value, b, 1e-8);
        EXPECT_EQ(plain::refractive_index<double>({0.0, b / 100.0}, sweetener::sucrose).value, n);
    }
    EXPECT_EQ(plain::brix_from_refractive_index(plain::refractive_index_from_brix(0.0).value).value, 0.0);
    // water is 1.33299 (CRC Handbook: 1.3330)
    EXPECT_NEAR(plain::refractive_index_from_brix(0.0).value, 1.3330, 0.00005);
}

TEST(PlainRefraction, TwoReadingsGoThereAndBack) {
    for (double const ethanol : {0.0, 0.001, 0.05, 0.1, 0.3, 0.45}) {
        for (double const sugar : {0.0, 0.0005, 0.02, 0.1, 0.3, 0.4}) {
            plain::sweet_composition<double> const w{ethanol, sugar};
            if (sugar > 0.7 * (1.0 - ethanol)) continue;  // more than its water dissolves
            double const rho = plain::sweet_density_kg_m3(w, sweetener::sucrose, 20.0).value;
            double const n = plain::refractive_index(w, sweetener::sucrose).value;
            auto const found = plain::wash_from_density_and_index(rho, n);
            ASSERT_TRUE(found.status.ok) << ethanol << " " << sugar;
            EXPECT_NEAR(found.value.ethanol_mass_fraction, ethanol, 1e-9);
            EXPECT_NEAR(found.value.plato, 100.0 * sugar, 1e-7);
        }
    }
}

TEST(PlainRefraction, OriginalGravityAndBrixGoThereAndBack) {
    for (double const oe : {5.0, 12.0, 20.0, 30.0}) {
        double const gravity = plain::specific_gravity_from_plato(oe).value;
        double const most = correlation::balling::alcohol(oe, 0.0);
        for (double const share : {0.0, 0.3, 0.8, 1.0}) {
            double const a = share * most, left = correlation::balling::real_extract_from_alcohol(oe, a);
            plain::sweet_composition<double> const w{a / 100.0, std::fmax(0.0, left / 100.0)};
            double const brix =
                plain::brix_from_refractive_index(plain::refractive_index(w, sweetener::sucrose).value).value;
            auto const found = plain::wash_from_original_gravity_and_brix(gravity, brix);
            ASSERT_TRUE(found.status.ok) << oe << " " << share;
            EXPECT_NEAR(100.0 * found.value.ethanol_mass_fraction, a, 1e-7);
            EXPECT_NEAR(found.value.plato, left, 1e-7);
        }
    }
}

// Refraction goes by mass: that of ethanol and water, and what the sugar has in the same water without
// ethanol.
TEST(PlainRefraction, RefractionsAreAdded) {
    auto const specific = [](plain::sweet_composition<double> const& w, sweetener kind) {
        double const n = plain::refractive_index(w, kind).value, square = n * n;
        return (square - 1.0) / (square + 2.0) / plain::sweet_density_kg_m3(w, kind, 20.0).value;
    };
    for (auto const kind :
         {sweetener::sucrose, sweetener::glucose, sweetener::fructose, sweetener::invert_sugar}) {
        double const ethanol = 0.15, sugar = 0.2, water = 0.65, solution = sugar + water;
        double const of_sugar =
            solution * specific({0.0, sugar / solution}, kind) - water * specific({0.0, 0.0}, kind);
        double const of_liquid = (ethanol + water) * specific({ethanol / (ethanol + water), 0.0}, kind);
        EXPECT_NEAR(specific({ethanol, sugar}, kind) / (of_liquid + of_sugar), 1.0, 1e-13);
    }
    plain::sweet_composition<double> const w{0.0, 0.4};
    EXPECT_NEAR(specific(w, sweetener::invert_sugar),
                0.5 * (specific(w, sweetener::glucose) + specific(w, sweetener::fructose)), 1e-15);
    // the CRC Handbook's solutions of 40 % mass: 1.3986 and 1.3985
    EXPECT_NEAR(plain::refractive_index(w, sweetener::invert_sugar).value, 1.39855, 0.0001);
}

// The reading of the refractometer in a dry wash is far above the extract that is left.
TEST(PlainRefraction, AlcoholRaisesTheReading) {
    auto const dry = plain::wash_from_original_gravity_and_brix(1.085, 6.0);
    EXPECT_GT(dry.value.volume_fraction, 0.11);
    EXPECT_LT(dry.value.plato, 3.0);
}

TEST(PlainRefraction, MethanolThereAndBack) {
    for (double const w : {0.06, 0.2, 0.4, 0.9}) {
        double const rho = correlation::oiml_r22::density(w, 20.0);
        double const n = model::refraction::index(w, 0.0, sweetener::sucrose);
        auto const none = plain::methanol_from_density_and_index(rho, n);
        EXPECT_NEAR(none.value.share, 0.0, 1e-12);
        EXPECT_NEAR(none.value.alcohol, w, 1e-12);
    }
    // all of it
    for (double const w : {0.1, 0.4, 0.9}) {
        auto const all = plain::methanol_from_density_and_index(model::methanol_water::density(w),
                                                                model::methanol_water::index(w));
        EXPECT_NEAR(all.value.share, 1.0, 1e-9);
        EXPECT_NEAR(all.value.alcohol, w, 1e-9);
    }
    // what 0.0002 is worth: 11 % of the alcohol at 5 % mass, 2.2 at 20, 1.3 at 40, 0.7 at 90
    double const worth[][2] = {{0.0501, 0.11}, {0.2, 0.022}, {0.4, 0.013}, {0.9, 0.0066}};
    for (auto const& [w, share] : worth) {
        double const rho = correlation::oiml_r22::density(w, 20.0);
        double const n = model::refraction::index(w, 0.0, sweetener::sucrose);
        EXPECT_NEAR(plain::methanol_from_density_and_index(rho, n).value.share_per_index * 0.0002, share,
                    0.05 * share);
        EXPECT_NEAR(plain::methanol_from_density_and_index(rho, n - 0.0002).value.share, share, 0.05 * share);
    }
}

TEST(PlainRefraction, Refuses) {
    for (double const bad : {nan, infinity, -0.1, 70.1}) {
        expect_refusal(plain::refractive_index_from_brix(bad), argument::refractometer_reading,
                       limit::brix_scale, bad);
        expect_refusal(plain::brix_from_refractive_index(bad), argument::refractive_index, limit::brix_scale,
                       bad);
    }
    for (double const bad : {nan, 1.32, 1.47})
        expect_refusal(plain::brix_from_refractive_index(bad), argument::refractive_index, limit::brix_scale,
                       bad);
    expect_refusal(plain::refractive_index<double>({0.99, 0.0}, sweetener::sucrose), argument::mass_fraction,
                   limit::refraction_tables, 0.99);
    for (double const bad : {nan, 800.0, 1400.0}) {
        expect_refusal(one(plain::wash_from_density_and_index(bad, 1.35)), argument::density,
                       limit::refraction_tables, bad);
    }
    for (double const bad : {nan, 1.33, 1.5}) {
        auto const why =
            expect_refusal(one(plain::wash_from_density_and_index(1000.0, bad)), argument::refractive_index,
                           limit::ethanol_and_sugar_of_this_density, bad);
        if (std::isnan(bad)) continue;
        for (double const end : {why.lower, why.upper})
            EXPECT_TRUE(plain::wash_from_density_and_index(1000.0, end).status.ok);
    }
    // The ends as they are computed, with sugar alone and with as much as dissolves.
    for (double const ethanol : {0.0, 0.1, 0.3}) {
        plain::sweet_composition<double> const w{ethanol, 0.7 * (1.0 - ethanol)};
        double const rho = plain::sweet_density_kg_m3(w, sweetener::sucrose, 20.0).value;
        double const n = plain::refractive_index(w, sweetener::sucrose).value;
        auto const found = plain::wash_from_density_and_index(rho, n);
        EXPECT_TRUE(found.status.ok) << ethanol;
        EXPECT_NEAR(found.value.ethanol_mass_fraction, ethanol, 1e-6);
    }
    expect_refusal(one(plain::wash_from_original_gravity_and_brix(1.2, 10.0)), argument::original_extract,
                   limit::balling, plain::plato_from_specific_gravity(1.2).value);
    for (double const bad : {nan, 3.0, 21.0})
        expect_refusal(one(plain::wash_from_original_gravity_and_brix(1.085, bad)),
                       argument::refractometer_reading, limit::all_fermented_to_none_at_20_celsius, bad);
    for (double const bad : {nan, 780.0, 992.0}) {
        auto const found = plain::methanol_from_density_and_index(bad, 1.35);
        expect_refusal(plain::checked<double>{found.value.share, found.status}, argument::density,
                       limit::refraction_tables, bad);
    }
    for (double const bad : {nan, 1.33, 1.37}) {
        auto const found = plain::methanol_from_density_and_index(948.0, bad);
        expect_refusal(plain::checked<double>{found.value.share, found.status}, argument::refractive_index,
                       limit::ethanol_to_methanol_at_this_density, bad);
    }
}

// Whatever the arguments: an answer is finite, a refusal names a value outside its bounds.
template <class T>
void expect_sound(plain::checked<T> const& found, bool finite, std::string const& call) {
    if (found.status.ok) {
        EXPECT_TRUE(finite) << call;
    } else {
        auto const& why = found.status;
        EXPECT_FALSE(why.lower <= why.value && why.value <= why.upper && std::isfinite(why.value)) << call;
    }
}

TEST(PlainRefraction, AnyArgumentsAreAnsweredOrRefused) {
    std::mt19937_64 random(7);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    auto const pick = [&](double low, double high) {
        double const u = unit(random);
        if (u < 0.02) return nan;
        if (u < 0.04) return infinity;
        if (u < 0.06) return -infinity;
        if (u < 0.1) return low;
        if (u < 0.14) return high;
        if (u < 0.18) return 0.0;
        return low - 0.1 * (high - low) + 1.2 * (high - low) * unit(random);
    };
    for (int i = 0; i < 3000; ++i) {
        auto const kind = static_cast<sweetener>(i % 4);
        double const q = pick(0.0, 1.0), sugar = pick(0.0, 900.0), t = pick(0.0, 40.0),
                     rho = pick(780.0, 1400.0);
        double const n = pick(1.33, 1.47), w = pick(0.0, 1.0), s = pick(0.0, 0.7), gravity = pick(0.99, 1.13);
        std::string const call = std::to_string(i);
        auto const one = [&](plain::checked<double> const& found) {
            expect_sound(found, std::isfinite(found.value), call);
        };
        one(plain::sweet_density_kg_m3<double>({w, s}, kind, t));
        one(plain::strength_behind_sugar(rho, t, sugar, kind));
        one(plain::sugar_behind_density_g_per_litre(rho, q, kind));
        one(plain::strength_doubt_from_sugar(q, sugar, kind, t));
        one(plain::tabarie_extract_g_per_litre(rho, q));
        one(plain::sweetened_litres<double>({{w, q, t}, s, kind}, t));
        one(plain::sweetened_volume_fraction<double>({{w, q, t}, s, kind}));
        one(plain::strength_of_distilled_sample(w, t, s, q, t, pick(0.0, 0.1)));
        one(plain::refractive_index<double>({w, s}, kind));
        one(plain::brix_from_refractive_index(n));
        auto const made = plain::sweet_composition_from_strength(q, sugar, kind);
        expect_sound(made, std::isfinite(made.value.ethanol) && std::isfinite(made.value.sugar), call);
        auto const plan = plain::sweeten<double>({w, s, t}, q, sugar, kind);
        expect_sound(plan, std::isfinite(plan.value.water_kg) && std::isfinite(plan.value.litres), call);
        auto const wash = plain::wash_from_density_and_index(rho, n);
        expect_sound(wash, std::isfinite(wash.value.volume_fraction) && std::isfinite(wash.value.plato),
                     call);
        auto const fermented = plain::wash_from_original_gravity_and_brix(gravity, pick(0.0, 30.0));
        expect_sound(fermented, std::isfinite(fermented.value.volume_fraction), call);
        auto const methanol = plain::methanol_from_density_and_index(rho, n);
        expect_sound(methanol, std::isfinite(methanol.value.share), call);
    }
}

TEST(PlainRefraction, FloatIsNearDouble) {
    EXPECT_NEAR(double(plain::brix_from_refractive_index(1.35f).value),
                plain::brix_from_refractive_index(1.35).value, 2e-3);
    auto const f = plain::wash_from_density_and_index(1000.0f, 1.35f).value;
    auto const d = plain::wash_from_density_and_index(1000.0, 1.35).value;
    EXPECT_NEAR(double(f.ethanol_mass_fraction), d.ethanol_mass_fraction, 1e-4);
    EXPECT_NEAR(double(f.plato), d.plato, 1e-2);
    auto const og = plain::wash_from_original_gravity_and_brix(1.085f, 8.0f).value;
    EXPECT_NEAR(double(og.volume_fraction),
                plain::wash_from_original_gravity_and_brix(1.085, 8.0).value.volume_fraction, 1e-4);
    EXPECT_NEAR(double(plain::methanol_from_density_and_index(948.0f, 1.35f).value.share),
                plain::methanol_from_density_and_index(948.0, 1.35).value.share, 1e-3);
}

}  // namespace
}  // namespace aqueth
