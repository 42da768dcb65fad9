// SPDX-License-Identifier: BSL-1.0
#include <aqueth/array.hpp>
#include <aqueth/density.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/plain/refraction.hpp>
#include <aqueth/strength.hpp>

#include "expect_refusal.hpp"

#include <Eigen/Core>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <memory>
#include <random>
#include <span>
#include <thread>
#include <tuple>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

// A length of several blocks and a remainder; values inside and outside the range, NaN and infinity.
std::vector<double> spread(double low, double high, unsigned seed, std::size_t size = 20011) {
    std::mt19937_64 random(seed);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    std::vector<double> result(size);
    for (double& each : result) each = low + (high - low) * unit(random);
    for (double const odd : {nan, -nan, infinity, -infinity, -0.0, 0.0, low, high, 1e308, -1e-300, 5e-324})
        result[static_cast<std::size_t>(unit(random) * static_cast<double>(size))] = odd;
    return result;
}

template <class F>
double or_nan(F const& f) {
    try {
        return f();
    } catch (refusal const&) {
        return nan;
    }
}

struct comparison {
    std::size_t refused = 0;    // by the scalar function
    std::size_t disagreed = 0;  // refused by only one of the two, or a wrong flag
    double worst = 0.0;         // largest difference
};

// Compares the results of an array function with the scalar one, element by element.
template <class Scalar>
comparison compare(std::vector<double> const& results, std::span<bool const> valid, Scalar const& scalar) {
    comparison found;
    for (std::size_t i = 0; i < results.size(); ++i) {
        double const wanted = or_nan([&] { return scalar(i); });
        bool const refused = std::isnan(wanted);
        if (refused) ++found.refused;
        if (refused != std::isnan(results[i]) || valid[i] == refused) ++found.disagreed;
        if (!refused) found.worst = (std::max)(found.worst, std::abs(results[i] - wanted));
    }
    return found;
}

struct output {
    explicit output(std::size_t size) : values(size), flags(new bool[size]), valid(flags.get(), size) {}
    std::vector<double> values;
    std::unique_ptr<bool[]> flags;
    std::span<bool> valid;
};

void expect_agreement(comparison const& found, std::size_t refused, double tolerance) {
    EXPECT_EQ(found.disagreed, 0u);
    EXPECT_EQ(found.refused, refused);
    EXPECT_GT(refused, 0u);
    EXPECT_LE(found.worst, tolerance);
}

TEST(Array, DensityIsTheScalarOneAndRefusesWhatThatRefuses) {
    auto const w = spread(-0.05, 1.05, 1);
    auto const t = spread(-23.0, 105.0, 2);
    output rho(w.size());
    auto const refused = arrays::density(w, t, rho.values, rho.valid);
    expect_agreement(
        compare(rho.values, rho.valid,
                [&](std::size_t i) { return density(mass_fraction(w[i]), celsius(t[i])).value(); }),
        refused, 3e-13);
}

TEST(Array, ThermalExpansionIsTheScalarOne) {
    auto const w = spread(-0.05, 1.05, 31);
    auto const t = spread(-23.0, 105.0, 32);
    output found(w.size());
    auto const refused = arrays::thermal_expansion(w, t, found.values, found.valid);
    // The expansion is about 1e-3 per kelvin; the same polynomial in another order of its operations.
    expect_agreement(
        compare(found.values, found.valid,
                [&](std::size_t i) { return thermal_expansion(mass_fraction(w[i]), celsius(t[i])).value(); }),
        refused, 1e-16);
}

TEST(Array, DensityAtOneTemperature) {
    auto const w = spread(-0.05, 1.05, 3);
    for (double const t : {-20.0, -19.99, -8.0, -0.3, -0.0, 0.0, 20.0, 40.0}) {
        output rho(w.size());
        auto const refused = arrays::density(w, celsius(t), rho.values, rho.valid);
        expect_agreement(
            compare(rho.values, rho.valid,
                    [&](std::size_t i) { return density(mass_fraction(w[i]), celsius(t)).value(); }),
            refused, 3e-13);
    }
}

// Far outside the range too: numbers whose bits differ from those of 0 and 1 in other places.
template <class T>
std::vector<T> far_and_near() {
    std::vector<T> result;
    for (int i = -4000; i <= 4000; ++i) result.push_back(T(i) / T(1000));
    for (double const odd :
         {nan, -nan, infinity, -infinity, -0.0, 1e30, -1e30, -1.5, -1.0, -2.0, 5e-324, -5e-324})
        result.push_back(T(odd));
    return result;
}

template <class T>
void expect_densities_above_40_celsius(double tolerance) {
    auto const w = far_and_near<T>();
    for (double const t : {40.01, 60.0, 77.9, 78.2, 85.0, 99.0, 99.97}) {
        std::vector<T> rho(w.size());
        output kept(w.size());
        std::size_t const count = arrays::density(w, celsius(t), rho, kept.valid);
        std::copy(rho.begin(), rho.end(), kept.values.begin());
        expect_agreement(
            compare(kept.values, kept.valid,
                    [&](std::size_t i) { return density(mass_fraction(double(w[i])), celsius(t)).value(); }),
            count, tolerance);
    }
}

TEST(Array, DensityAtOneTemperatureAbove40Celsius) {
    expect_densities_above_40_celsius<double>(3e-13);
    expect_densities_above_40_celsius<float>(5e-4);
}

template <class T>
void expect_compositions_above_40_celsius(double allowance) {
    std::vector<T> rho;
    for (int i = -200; i <= 24000; ++i) rho.push_back(T(i) / T(8));
    for (double const odd : {nan, infinity, -infinity, -0.0, 1e30, -1e30, 1312.5}) rho.push_back(T(odd));
    for (double const t : {40.01, 60.0, 70.0, 78.0, 85.0, 99.0}) {
        namespace hot = model::hot_density;
        // Liquid is what boils above t: from water to the mixture that boils there.
        double weakest_vapour = 1.0;
        if (t > 78.2) {
            double low = 0.0, high = 0.95;  // the boiling points fall up to there
            while (high - low > 1e-9) {
                double const middle = 0.5 * (low + high);
                (hot::boiling_celsius(middle) > t ? low : high) = middle;
            }
            weakest_vapour = low;
        }
        double const least = hot::density(weakest_vapour, t), greatest = hot::density(0.0, t);
        std::vector<T> w(rho.size());
        output out(rho.size());
        std::size_t const refused = arrays::mass_fraction_from_density(rho, celsius(t), w, out.valid);
        EXPECT_EQ(refused, static_cast<std::size_t>(std::count(out.valid.begin(), out.valid.end(), false)));
        std::size_t accepted = 0;
        for (std::size_t i = 0; i < rho.size(); ++i) {
            double const each = rho[i];
            if (std::abs(each - least) < allowance || std::abs(each - greatest) < allowance) continue;
            bool const liquid = each > least && each < greatest;
            ASSERT_EQ(out.valid[i], liquid) << each << " kg/m3 at " << t;
            ASSERT_EQ(std::isnan(w[i]), !liquid) << each << " kg/m3 at " << t;
            if (!liquid) continue;
            ++accepted;
            ASSERT_NEAR(hot::density(double(w[i]), t), each, allowance);
        }
        EXPECT_GT(accepted, 10u);
    }
}

TEST(Array, CompositionAtOneTemperatureAbove40Celsius) {
    expect_compositions_above_40_celsius<double>(1e-2);
    expect_compositions_above_40_celsius<float>(1e-2);
}

TEST(Array, CompositionOfEveryDensity) {
    auto const rho = spread(710.0, 1020.0, 4, 8011);
    auto const t = spread(-23.0, 105.0, 5, 8011);
    output w(rho.size());
    auto const refused = arrays::mass_fraction_from_density(rho, t, w.values, w.valid);
    auto const scalar = [&](std::size_t i) {
        return mass_fraction_from_density(rho[i] * kilogram_per_cubic_metre, celsius(t[i])).value();
    };
    expect_agreement(compare(w.values, w.valid, scalar), refused, 1e-14);
    for (double const at : {-15.0, 5.0, 20.0, 41.0, 90.0}) {
        auto const count = arrays::mass_fraction_from_density(rho, celsius(at), w.values, w.valid);
        auto const scalar_at = [&](std::size_t i) {
            return mass_fraction_from_density(rho[i] * kilogram_per_cubic_metre, celsius(at)).value();
        };
        expect_agreement(compare(w.values, w.valid, scalar_at), count, 1e-14);
    }
}

TEST(Array, CompositionLeavesTwoUlpOfDensityAtMost) {
    // Over the whole range, including cold and weak mixtures, whose density hardly depends on the strength.
    std::mt19937_64 random(6);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    std::vector<double> rho, t;
    while (rho.size() < 200000) {
        double const w = unit(random), at = -20.0 + 60.0 * unit(random);
        if (at < plain::coldest_liquid_celsius(w)) continue;
        rho.push_back(density(mass_fraction(w), celsius(at)).value());
        t.push_back(at);
    }
    std::vector<double> w(rho.size()), again(rho.size());
    EXPECT_EQ(arrays::mass_fraction_from_density(rho, t, w), 0u);
    EXPECT_EQ(arrays::density(w, t, again), 0u);
    double worst = 0.0;
    for (std::size_t i = 0; i < rho.size(); ++i) {
        double const ulp = std::nextafter(rho[i], 2000.0) - rho[i];
        worst = (std::max)(worst, std::abs(again[i] - rho[i]) / ulp);
    }
    EXPECT_LE(worst, 2.0);
}

TEST(Array, PureLiquidsAreExact) {
    std::vector<double> const w{0.0, 1.0, 0.0, 1.0};
    std::vector<double> const t{20.0, 20.0, 4.0, -20.0};
    std::vector<double> rho(4), back(4);
    EXPECT_EQ(arrays::density(w, t, rho), 0u);
    for (std::size_t i = 0; i < 4; ++i) rho[i] = density(mass_fraction(w[i]), celsius(t[i])).value();
    EXPECT_EQ(arrays::mass_fraction_from_density(rho, t, back), 0u);
    EXPECT_EQ(back, w);
}

template <class Target, class Source>
void expect_conversion(double highest) {
    auto const strength = spread(-0.02 * highest, 1.02 * highest, 7);
    output result(strength.size());
    auto const refused = arrays::to<Target, Source>(strength, result.values, result.valid);
    double const scale = std::is_same_v<Target, us_proof> ? 200.0 : 1.0;
    expect_agreement(
        compare(result.values, result.valid,
                [&](std::size_t i) { return arrays::detail::number(to<Target>(Source(strength[i]))); }),
        refused, 1e-14 * scale);
}

TEST(Array, ConversionsAreTheScalarOnes) {
    using at_15 = basic_volume_fraction<at_15_celsius>;
    using at_60 = basic_volume_fraction<at_60_fahrenheit>;
    expect_conversion<mass_fraction, volume_fraction>(1.0);
    expect_conversion<volume_fraction, mass_fraction>(1.0);
    expect_conversion<mass_fraction, mole_fraction>(1.0);
    expect_conversion<mole_fraction, mass_fraction>(1.0);
    expect_conversion<at_15, volume_fraction>(1.0);
    expect_conversion<volume_fraction, at_15>(1.0);
    expect_conversion<volume_fraction, at_60>(1.0);
    expect_conversion<us_proof, volume_fraction>(1.0);
    expect_conversion<volume_fraction, us_proof>(200.0);
    expect_conversion<volume_fraction, mass_concentration>(79.0);
    expect_conversion<mass_fraction, mass_concentration>(79.0);
    expect_conversion<mass_fraction, mass_fraction>(1.0);
}

TEST(Array, ReadingsAreCorrectedAsByTheInstrument) {
    auto const reading = spread(-0.05, 1.05, 8, 8011);
    auto const t = spread(-23.0, 105.0, 9, 8011);
    output q(reading.size());
    for (auto const& glass : {soda_lime_glass, borosilicate_glass}) {
        alcoholometer const meter(glass);
        auto const refused = arrays::strength(meter, reading, t, q.values, q.valid);
        auto const scalar = [&](std::size_t i) {
            return meter.strength(volume_fraction(reading[i]), celsius(t[i])).value();
        };
        expect_agreement(compare(q.values, q.valid, scalar), refused, 1e-14);
    }
}

TEST(Array, EquilibriumIsTheScalarOne) {
    auto const x = spread(-0.05, 1.05, 10, 1500);
    auto const p = spread(100.0, 500e3, 11, 1500);
    output y(x.size());
    equilibrium_curve const curve(90.0 * kilopascal);
    auto refused = arrays::vapour(curve, x, y.values, y.valid);
    auto const by_curve = [&](std::size_t i) { return curve.vapour(mole_fraction(x[i])).value(); };
    expect_agreement(compare(y.values, y.valid, by_curve), refused, 1e-14);
    refused = arrays::vapour(x, p, y.values, y.valid);
    auto const by_model = [&](std::size_t i) {
        return bubble_point(mole_fraction(x[i]), p[i] * newton_per_square_metre).vapour.value();
    };
    expect_agreement(compare(y.values, y.valid, by_model), refused, 1e-14);
    refused = arrays::bubble_temperature(x, p, y.values, y.valid);
    auto const boiling = [&](std::size_t i) {
        return bubble_point(mole_fraction(x[i]), p[i] * newton_per_square_metre).temperature.kelvin();
    };
    expect_agreement(compare(y.values, y.valid, boiling), refused, 1e-12);
}

TEST(Array, PressuresThatNeedNoSecondLookAreInEveryMixturesRange) {
    for (int i = 0; i <= 1000; ++i) {
        double const x = i / 1000.0;
        namespace vle = model::vapour_liquid;
        EXPECT_LT(vle::bubble_at_temperature(x, vle::lowest_kelvin).pressure, detail::surely_low);
        EXPECT_GT(vle::bubble_at_temperature(x, vle::highest_kelvin).pressure, detail::surely_high);
    }
}

TEST(Array, NearlyPureEthanolIsNeverMoreThanPure) {
    for (double const t : {-20.0, 0.0, 20.0, 40.0}) {
        std::vector<double> rho;
        // On both sides of pure ethanol, within the allowance for rounding.
        double const ethanol = correlation::oiml_r22::density(1.0, t);
        for (int k = -64; k < 64; ++k) rho.push_back(ethanol * (1.0 + k * 2.3e-16));
        std::vector<double> const all_at(rho.size(), t);
        std::vector<double> each(rho.size()), at_t(rho.size());
        EXPECT_EQ(arrays::mass_fraction_from_density(rho, all_at, each), 0u);
        EXPECT_EQ(arrays::mass_fraction_from_density(rho, celsius(t), at_t), 0u);
        for (std::size_t i = 0; i < rho.size(); ++i) {
            EXPECT_LE(each[i], 1.0) << t << " " << i;
            EXPECT_LE(at_t[i], 1.0) << t << " " << i;
            EXPECT_GT(each[i], 1.0 - 1e-13) << t << " " << i;
            EXPECT_GT(at_t[i], 1.0 - 1e-13) << t << " " << i;
        }
    }
}

TEST(Array, WhatNeedsNoSecondLookIsLiquid) {
    // The parabola lies above the freezing points, which are straight lines between the rows of their table,
    // so a fine grid is a complete check.
    for (int i = 0; i <= 6800; ++i) {
        double const w = i / 10000.0;
        double const above = arrays::detail::above_freezing(w, correlation::freezing_point::celsius(w));
        EXPECT_TRUE(above < 0.0 || w == 0.0) << w << " " << above;
        if (correlation::freezing_point::celsius(w) <= -20.0) break;
    }
    std::size_t doubtful = 0, liquid = 0;
    for (int i = 0; i <= 200; ++i) {
        for (int j = 0; j <= 200; ++j) {
            double const w = i / 200.0, t = -20.0 + 20.0 * j / 200.0;
            if (!arrays::detail::liquid(w, t)) continue;
            ++liquid;
            if ((arrays::detail::perhaps_not_liquid(w, t) >> 63) != 0) ++doubtful;
        }
    }
    EXPECT_LT(static_cast<double>(doubtful),
              0.02 * static_cast<double>(liquid));  // else the parabola would be useless
}

TEST(Array, SinglePrecisionKeepsItsDigits) {
    std::mt19937_64 random(12);
    std::uniform_real_distribution<float> unit(0.0f, 1.0f);
    std::vector<float> w(5000), t(5000), rho(5000), back(5000), q(5000);
    for (float& each : w) each = unit(random);
    for (float& each : t) each = 40.0f * unit(random);
    EXPECT_EQ(arrays::density(w, t, rho), 0u);
    EXPECT_EQ(arrays::mass_fraction_from_density(rho, t, back), 0u);
    std::size_t const none = arrays::to<volume_fraction, mass_fraction>(w, q);
    EXPECT_EQ(none, 0u);
    for (std::size_t i = 0; i < w.size(); ++i) {
        double const exact = density(mass_fraction(w[i]), celsius(t[i])).value();
        EXPECT_NEAR(rho[i], exact, 2e-4);
        // half an ulp of such a float is 3e-5 kg/m3, and the density of cold weak mixtures changes little
        EXPECT_NEAR(back[i], w[i], t[i] < 15.0f && w[i] < 0.3f ? 1e-5 : 2e-6);
        EXPECT_NEAR(q[i], to<volume_fraction>(mass_fraction(w[i])).value(), 2e-6);
    }
    alcoholometer const meter;
    arrays::strength(meter, w, t, q);
    for (std::size_t i = 0; i < w.size(); ++i) {
        double const exact =
            or_nan([&] { return meter.strength(volume_fraction(w[i]), celsius(t[i])).value(); });
        if (std::isnan(exact)) continue;
        EXPECT_NEAR(q[i], exact, 5e-6);
    }
}

// Conversion to float may round it up; the function must neither refuse nor throw because of that.
template <class Reference>
void expect_highest_concentration_is_ethanol() {
    using concentration = basic_mass_concentration<Reference>;
    double const highest = to<concentration>(mass_fraction(1.0)).grams_per_100_millilitres();
    EXPECT_DOUBLE_EQ(to<mass_fraction>(concentration(highest)).value(), 1.0);
    std::vector<double> const grams(70, highest);
    std::vector<double> w(70);
    EXPECT_EQ((arrays::to<mass_fraction, concentration>(grams, w)), 0u);
    for (double const each : w) EXPECT_DOUBLE_EQ(each, 1.0);
    std::vector<float> const nearly(70, static_cast<float>(highest));
    std::vector<float> single(70);
    EXPECT_EQ((arrays::to<mass_fraction, concentration>(nearly, single)), 0u);
    for (float const each : single) EXPECT_NEAR(each, 1.0f, 1e-6f);
}

TEST(Array, TheHighestMassConcentrationIsPureEthanol) {
    expect_highest_concentration_is_ethanol<at_15_celsius>();
    expect_highest_concentration_is_ethanol<at_15_56_celsius>();
    expect_highest_concentration_is_ethanol<at_60_fahrenheit>();
    expect_highest_concentration_is_ethanol<at_20_celsius>();
}

TEST(Array, EveryLengthAndPlace) {
    // Lengths around the block, in the middle of a longer array whose rest must not change.
    auto const w = spread(0.1, 0.9, 13, 400);
    for (std::size_t length = 0; length < 200; ++length) {
        std::vector<double> rho(400, -1.0);
        auto const part = std::span(rho).subspan(7, length);
        arrays::density(std::span(w).first(length), celsius(20.0), part);
        for (std::size_t i = 0; i < rho.size(); ++i) {
            if (i < 7 || i >= 7 + length) {
                EXPECT_EQ(rho[i], -1.0);
            } else {
                double const wanted =
                    or_nan([&] { return density(mass_fraction(w[i - 7]), celsius(20.0)).value(); });
                if (std::isnan(wanted)) continue;
                EXPECT_NEAR(rho[i], wanted, 3e-13);
            }
        }
    }
}

// One odd element at every place of arrays of every length around the block.
TEST(Array, AnOddElementIsFoundAtEveryPlace) {
    for (std::size_t length = 1; length <= 130; ++length) {
        for (std::size_t place = 0; place < length; ++place) {
            std::vector<double> w(length, 0.4), t(length, 20.0);
            output rho(length);
            std::size_t const kind = (length + place) % 7;
            double const odd[]{nan, infinity, -1e-9, 1.0000001, -0.0, 60.0, -20.0};  // 60 and -20 are °C
            (kind < 5 ? w : t)[place] = odd[kind];
            bool const refused = kind < 4;  // -20 °C is cold, and liquid at this strength
            ASSERT_EQ(arrays::density(w, t, rho.values, rho.valid), refused ? 1u : 0u);
            for (std::size_t i = 0; i < length; ++i) {
                bool const is_refused = refused && i == place;
                ASSERT_EQ(rho.valid[i], !is_refused) << length << " " << place << " " << i;
                if (is_refused) {
                    ASSERT_TRUE(std::isnan(rho.values[i]));
                } else {
                    ASSERT_NEAR(rho.values[i], density(mass_fraction(w[i]), celsius(t[i])).value(), 3e-13);
                }
            }
        }
    }
}

// The loops for one processor after the other: those with fused multiply-adds give the same numbers to the
// last bit.
template <class T, class Operation, std::size_t N>
void expect_same_on_all_processors(Operation const& operation, std::array<T const*, N> const& in,
                                   T tolerance) {
    constexpr std::size_t blocks = 3, size = blocks * numeric::block;
    std::vector<T> plain(size), fused(size), widest(size);
    numeric::detail::doubts<T> doubt;
    EXPECT_EQ(numeric::detail::do_blocks_as_compiled(operation, in, plain.data(), doubt, blocks), blocks);
#if AQUETH_CHOOSES_INSTRUCTIONS && !defined(__AVX512F__)
    if (!__builtin_cpu_supports("avx2") || !__builtin_cpu_supports("fma")) return;
    EXPECT_EQ(numeric::detail::do_blocks_avx2(operation, in, fused.data(), doubt, blocks), blocks);
    for (std::size_t i = 0; i < size; ++i) EXPECT_NEAR(fused[i], plain[i], tolerance);
    if (!__builtin_cpu_supports("avx512f") || !__builtin_cpu_supports("avx512dq") ||
        !__builtin_cpu_supports("avx512vl"))
        return;
    EXPECT_EQ(numeric::detail::do_blocks_avx512(operation, in, widest.data(), doubt, blocks), blocks);
    EXPECT_EQ(fused, widest);
#endif
}

template <class T>
void expect_densities_are_the_same_on_all_processors(T tolerance) {
    std::mt19937_64 random(17);
    std::uniform_real_distribution<T> unit(T(0), T(1));
    std::vector<T> w(200), t(200);
    for (T& each : w) each = unit(random);
    for (T& each : t) each = T(40) * unit(random);
    // Every place in memory relative to a vector of 64 bytes
    for (std::size_t offset = 0; offset < 8; ++offset) {
        std::array<T const*, 2> const in{w.data() + offset, t.data() + offset};
        expect_same_on_all_processors<T>(arrays::detail::density_operation<T>{}, in, tolerance);
        expect_same_on_all_processors<T>(arrays::detail::thermal_expansion_operation<T>{}, in,
                                         tolerance / T(1000));
        expect_same_on_all_processors<T>(arrays::detail::density_at_operation<T>(T(20)),
                                         std::array<T const*, 1>{w.data() + offset}, tolerance);
    }
}

TEST(Array, EveryProcessorGivesTheSameDensities) {
    expect_densities_are_the_same_on_all_processors<double>(3e-13);
    expect_densities_are_the_same_on_all_processors<float>(2e-4f);
}

/// @param function callable: inputs, then the output and flags -> count
template <class Function, class... Inputs>
void expect_same_in_place(char const* what, Function const& function, Inputs const&... inputs) {
    auto const one = [&](std::size_t place) {
        std::array<std::vector<double>, sizeof...(Inputs)> in{inputs...};
        std::size_t const size = in[0].size();
        output apart(size), over(size);
        std::apply(
            [&](auto&... each) {
                std::size_t const refused = function(each..., apart.values, apart.valid);
                EXPECT_EQ(function(each..., in[place], over.valid), refused) << what;
            },
            in);
        std::size_t refused = 0, different = 0;
        for (std::size_t i = 0; i < size; ++i) {
            bool const same =
                apart.values[i] == in[place][i] || (std::isnan(apart.values[i]) && std::isnan(in[place][i]));
            if (!same || apart.valid[i] != over.valid[i]) ++different;
            if (!apart.valid[i]) ++refused;
        }
        EXPECT_EQ(different, 0u) << what << " over input " << place;
        EXPECT_TRUE(0 < refused && refused < size) << what << " " << refused;
    };
    for (std::size_t place = 0; place < sizeof...(Inputs); ++place) one(place);
}

TEST(Array, AResultMayReplaceAnInput) {
    std::size_t const size = 4003;
    auto const w = spread(-0.05, 1.05, 14, size), t = spread(-23.0, 105.0, 15, size);
    auto const rho = spread(700.0, 1020.0, 33, size), p = spread(100.0, 500e3, 34, 1003);
    std::vector<double> const x(w.begin(), w.begin() + 1003);
    for (double const at : {-15.0, 20.0, 60.0, 85.0}) {
        expect_same_in_place(
            "density at",
            [at](auto& in, auto& out, auto& valid) { return arrays::density(in, celsius(at), out, valid); },
            w);
        expect_same_in_place(
            "composition at",
            [at](auto& in, auto& out, auto& valid) {
                return arrays::mass_fraction_from_density(in, celsius(at), out, valid);
            },
            rho);
    }
    expect_same_in_place(
        "density", [](auto&... a) { return arrays::density(a...); }, w, t);
    expect_same_in_place(
        "expansion", [](auto&... a) { return arrays::thermal_expansion(a...); }, w, t);
    expect_same_in_place(
        "composition", [](auto&... a) { return arrays::mass_fraction_from_density(a...); }, rho, t);
    expect_same_in_place(
        "correction", [](auto&... a) { return arrays::strength(alcoholometer(), a...); }, w, t);
    expect_same_in_place(
        "conversion", [](auto&... a) { return arrays::to<mass_fraction, volume_fraction>(a...); }, w);
    equilibrium_curve const curve(90.0 * kilopascal);
    expect_same_in_place(
        "vapour from a curve", [&](auto&... a) { return arrays::vapour(curve, a...); }, w);
    expect_same_in_place(
        "vapour", [](auto&... a) { return arrays::vapour(a...); }, x, p);
    expect_same_in_place(
        "bubble temperature", [](auto&... a) { return arrays::bubble_temperature(a...); }, x, p);
    expect_same_in_place(
        "viscosity", [](auto&... a) { return arrays::viscosity(a...); }, w, t);
}

// A result that begins elsewhere in an input would overwrite arguments before they are read.
TEST(Array, RefusesAResultThatOverlapsAnInputPartly) {
    std::vector<double> all(400, 0.4);
    std::vector<double> const t(200, 20.0);
    auto const before = all;
    std::span<double> const whole(all);
    std::string const what = "overlap of the results";
    for (std::size_t const offset : {1u, 64u, 199u}) {
        auto const low = whole.first(200), high = whole.subspan(offset, 200);
        auto const error = expect_refusal([&] { return arrays::density(low, t, high); }, what);
        EXPECT_EQ(error.value(), 200.0 - static_cast<double>(offset));
        expect_refusal([&] { return arrays::density(high, t, low); }, what);
        expect_refusal([&] { return arrays::density(low, celsius(20.0), high); }, what);
        expect_refusal([&] { return arrays::density(low, celsius(60.0), high); }, what);
        expect_refusal([&] { return arrays::mass_fraction_from_density(t, low, high); }, what);
        expect_refusal([&] { return arrays::to<volume_fraction, mass_fraction>(high, low); }, what);
        expect_refusal([&] { return arrays::viscosity(low, t, high); }, what);
        expect_refusal([&] { return arrays::viscosity(t, low, high); }, what);
        EXPECT_EQ(all, before);
        std::vector<double> apart(200);
        EXPECT_EQ(arrays::density(low, high, apart), 0u);  // inputs may overlap
    }
    EXPECT_EQ(arrays::density(whole.first(200), t, whole.subspan(200)), 0u);
    EXPECT_EQ(arrays::density(whole.first(200), t, whole.first(200)), 0u);
    EXPECT_EQ(arrays::density(whole.first(0), celsius(20.0), whole.subspan(1, 0)), 0u);
}

TEST(Array, TakesVectorsOfEigen) {
    Eigen::ArrayXd const w = Eigen::ArrayXd::LinSpaced(100, 0.0, 1.0);
    Eigen::ArrayXd const t = Eigen::ArrayXd::Constant(100, 31.0);
    Eigen::ArrayXd rho(100);
    EXPECT_EQ(arrays::density(w, t, rho), 0u);
    EXPECT_NEAR(rho(37), density(mass_fraction(w(37)), celsius(31.0)).value(), 3e-13);
    Eigen::VectorXd part = Eigen::VectorXd::Zero(100);
    EXPECT_EQ(arrays::density(w.head(10), celsius(20.0), part.segment(5, 10)), 0u);
    EXPECT_EQ(part(4), 0.0);
    EXPECT_EQ(part(15), 0.0);
    EXPECT_NEAR(part(5), 998.2, 0.01);
    Eigen::Map<Eigen::ArrayXd const> const mapped(w.data(), 50);
    EXPECT_EQ(arrays::density(mapped, celsius(20.0), part.head(50)), 0u);

    Eigen::ArrayXXd table(4, 4);
    static_assert(arrays::readable<decltype(table.col(0))>);
    static_assert(!arrays::readable<decltype(table.row(0))>);  // its elements are not contiguous
    static_assert(!arrays::readable<Eigen::ArrayXXd>);
    static_assert(!arrays::writable<Eigen::ArrayXd const>);
}

// A file of a density meter and a refractometer: what both say about the alcohol.
TEST(Array, AppliesAnyCheckedFunction) {
    auto const rho = spread(960.0, 1060.0, 21, 2003), n = spread(1.333, 1.37, 22, 2003);
    auto const alcohol = [](double density, double index) {
        auto const found = plain::wash_from_density_and_index(density, index);
        return plain::checked<double>{found.value.volume_fraction, found.status};
    };
    output out(rho.size());
    std::size_t const refused = arrays::apply(alcohol, out.values, out.valid, rho, n);
    auto const found = compare(out.values, out.valid, [&](std::size_t i) {
        auto const each = plain::wash_from_density_and_index(rho[i], n[i]);
        return each.status.ok ? each.value.volume_fraction : nan;
    });
    EXPECT_LT(refused, rho.size());
    expect_agreement(found, refused, 0.0);

    std::vector<double> in_place{0.0, 12.0, 80.0};
    auto const index = [](double brix) { return plain::refractive_index_from_brix(brix); };
    EXPECT_EQ(arrays::apply(index, in_place, {}, in_place), 1u);
    EXPECT_EQ(in_place[1], plain::refractive_index_from_brix(12.0).value);
    EXPECT_TRUE(std::isnan(in_place[2]));
    std::vector<double> shorter(2);
    expect_refusal([&] { return arrays::apply(index, shorter, {}, in_place); }, "length of the results");
}

TEST(Array, RefusesArraysOfDifferentLengthsBeforeWriting) {
    std::vector<double> const w(10, 0.4), t(9, 20.0);
    std::vector<double> rho(10, -1.0);
    expect_refusal([&] { arrays::density(w, t, rho); }, "length of an input");
    expect_refusal([&] { arrays::density(w, celsius(20.0), std::span(rho).first(9)); },
                   "length of the results");
    std::array<bool, 3> flags{};
    expect_refusal([&] { arrays::density(w, celsius(20.0), rho, flags); }, "length of the flags");
    expect_refusal([&] { arrays::density(w, celsius(100.5), rho); }, "temperature");
    expect_refusal([&] { arrays::density(w, celsius(nan), rho); }, "temperature");
    expect_refusal([&] { arrays::mass_fraction_from_density(w, celsius(-21.0), rho); }, "temperature");
    EXPECT_EQ(rho, std::vector<double>(10, -1.0));
}

TEST(Array, SeveralThreadsAtOnce) {
    auto const w = spread(-0.05, 1.05, 16), t = spread(-23.0, 43.0, 17);
    std::vector<double> alone(w.size());
    auto const refused = arrays::density(w, t, alone);
    std::vector<std::vector<double>> together(4, std::vector<double>(w.size()));
    std::array<std::size_t, 4> counts{};
    std::vector<std::thread> threads;
    for (std::size_t k = 0; k < 4; ++k)
        threads.emplace_back([&, k] { counts[k] = arrays::density(w, t, together[k]); });
    for (auto& each : threads) each.join();
    for (std::size_t k = 0; k < 4; ++k) {
        EXPECT_EQ(counts[k], refused);
        for (std::size_t i = 0; i < w.size(); ++i)
            EXPECT_TRUE(together[k][i] == alone[i] || std::isnan(alone[i]));
    }
}

}  // namespace
}  // namespace aqueth
