// SPDX-License-Identifier: BSL-1.0
#include <aqueth/numeric/random.hpp>

#include <boost/math/distributions/normal.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <random>
#include <span>
#include <vector>

namespace aqueth::numeric {
namespace {

// The numbers of the standard library's Mersenne Twister, to 52 bits, one at a time and in pieces of any
// length.
TEST(UniformNumbers, AreThoseOfTheStandardLibrary) {
    for (std::uint64_t const seed :
         {std::uint64_t{0}, std::uint64_t{1}, std::uint64_t{5489}, ~std::uint64_t{0}}) {
        std::mt19937_64 standard(seed);
        uniform_numbers ours(seed);
        auto const wanted = [&] { return (static_cast<double>(standard() >> 12) + 0.5) * 0x1p-52; };
        for (std::size_t length = 0; length < 700; length += 29) {
            std::vector<double> piece(length);
            ours.fill(piece);
            for (double const each : piece) ASSERT_EQ(each, wanted()) << seed;
            ASSERT_EQ(ours.next(), wanted()) << seed;
        }
    }
}

// Boost.Math, over all octaves of both tails.
TEST(NormalQuantiles, AgreeWithBoostMath) {
    normal_quantiles const ours;
    boost::math::normal const normal;
    std::mt19937_64 random(1);
    std::uniform_real_distribution<double> octave(-53.0, -1.0);
    double worst = 0.0;
    for (int i = 0; i < 100000; ++i) {
        double const p = std::exp2(octave(random));
        worst = (std::max)(worst, std::abs(ours(p) - boost::math::quantile(normal, p)));
        worst = (std::max)(
            worst, std::abs(ours(1.0 - p) - boost::math::quantile(complement(normal, 1.0 - (1.0 - p)))));
    }
    EXPECT_LT(worst, 1e-8);  // as documented; cubic polynomials over a 32nd of an octave reach 6e-9
    EXPECT_NEAR(ours(0x1p-53), boost::math::quantile(normal, 0x1p-53),
                1e-12);  // an end of a polynomial is exact
    EXPECT_NEAR(ours(1.0 - 0x1p-53), -ours(0x1p-53), 1e-15);
    EXPECT_EQ(ours(0.5), 0.0);
    double const infinity = std::numeric_limits<double>::infinity();
    for (double const u : {0.0, -0.0, 1.0, 0x1p-54, 5e-324, -0.5, 1.5, 1e300, infinity, -infinity,
                           std::numeric_limits<double>::quiet_NaN()})
        EXPECT_TRUE(std::isnan(ours(u))) << u;
}

}  // namespace
}  // namespace aqueth::numeric
