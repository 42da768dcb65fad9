// SPDX-License-Identifier: BSL-1.0
// The inverse of density for small machines: OIML R 22 itself judges it, over its whole range.
#include <aqueth/plain/density.hpp>

#include "refusal.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

static_assert(
    std::abs(plain::compact_mass_fraction_from_density(plain::density_kg_m3(0.4, 20.0).value, 20.0).value -
             0.4) < 1e-12);
static_assert(plain::compact_mass_fraction_from_density(900.0f, 20.0f).status.ok);

/// @return largest error of the mass fraction over all liquid mixtures between two temperatures; for `float`
///         against the exact inverse of the rounded density
template <plain::number T>
double largest_error(double from_celsius, double to_celsius) {
    namespace r22 = correlation::oiml_r22;
    double largest = 0.0;
    for (double t = from_celsius; t <= to_celsius; t += 0.25) {
        for (int i = 0; i <= 1000; ++i) {
            double const w = i / 1000.0;
            if (t < plain::coldest_liquid_celsius(w)) continue;
            T const rho = T(r22::density(w, t));
            auto const found = plain::compact_mass_fraction_from_density(rho, T(t));
            // the density of the mixture that just freezes may be rounded to that of ice
            if (!found.status.ok && t <= plain::coldest_liquid_celsius(w) + 1e-3) continue;
            EXPECT_TRUE(found.status.ok) << w << " " << t;
            double const exact = r22::mass_fraction_from_density(double(rho), t);
            double const error = std::abs(double(found.value) - exact);
            EXPECT_LE(error, 1e-5) << w << " " << t;
            largest = (std::max)(largest, error);
        }
    }
    return largest;
}

// Limits: 0.0001 % mass is the promise for float. For double the deviations reached, 2.6e-10 and 2.8e-13,
// with a little room; they guard against change.
TEST(CompactInverseOfDensity, IsAccurateOverTheWholeRange) {
    EXPECT_LE(largest_error<double>(-20.0, 40.0), 3e-10);
    EXPECT_LE(largest_error<double>(10.0, 40.0), 1e-12);
    EXPECT_LE(largest_error<float>(-20.0, 40.0), 1.1e-6);
    EXPECT_LE(largest_error<float>(10.0, 40.0), 6e-7);
}

// Also where the first guess, which is fitted to liquids, means nothing.
TEST(CompactInverseOfDensity, AnswersAndRefusesAsTheOtherInverse) {
    int answered = 0, refused = 0;
    for (double t = -20.0; t <= 40.0; t += 0.25) {
        for (double rho = 600.0; rho <= 1200.0; rho += 0.5) {
            auto const compact = plain::compact_mass_fraction_from_density(rho, t);
            auto const other = plain::mass_fraction_from_density(rho, t);
            ASSERT_EQ(compact.status.ok, other.status.ok) << rho << " " << t;
            if (compact.status.ok) {
                EXPECT_NEAR(compact.value, other.value, 3e-10) << rho << " " << t;
                ++answered;
            } else {
                EXPECT_EQ(compact.status.argument, other.status.argument) << rho << " " << t;
                EXPECT_EQ(compact.status.limit, other.status.limit) << rho << " " << t;
                EXPECT_EQ(compact.status.value, other.status.value);
                ++refused;
            }
            auto const in_float = plain::compact_mass_fraction_from_density(float(rho), float(t));
            EXPECT_EQ(in_float.status.ok, other.status.ok) << rho << " " << t;
        }
    }
    EXPECT_GT(answered, 50000);
    EXPECT_GT(refused, 50000);
}

TEST(CompactInverseOfDensity, RefusesDensitiesAndTemperatures) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    double const infinity = std::numeric_limits<double>::infinity();
    for (double const bad : {700.0, 1100.0, nan, infinity, -infinity}) {
        auto const why = expect_refusal(plain::compact_mass_fraction_from_density(bad, 20.0),
                                        argument::density, limit::oiml_r22_ethanol_to_water, bad);
        EXPECT_NEAR(why.lower, plain::density_kg_m3(1.0, 20.0).value, 2e-9);
        EXPECT_NEAR(why.upper, plain::density_kg_m3(0.0, 20.0).value, 2e-9);
    }
    for (double const bad : {-20.1, 40.1, nan, infinity}) {
        auto const why = expect_refusal(plain::compact_mass_fraction_from_density(900.0, bad),
                                        argument::temperature, limit::oiml_r22, bad);
        EXPECT_EQ(why.lower, -20.0);
        EXPECT_EQ(why.upper, 40.0);
    }
}

}  // namespace
}  // namespace aqueth
