// SPDX-License-Identifier: BSL-1.0
#include <aqueth/numeric/probability.hpp>

#include <boost/math/distributions/chi_squared.hpp>
#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth::numeric {
namespace {

// The tests compare the functions with Boost.Math, an independent implementation.

TEST(NormalDistribution, AgreesWithBoost) {
    boost::math::normal const reference;
    for (double z = -8.0; z <= 8.0; z += 0.37) {
        EXPECT_NEAR(normal_probability(z) / cdf(reference, z), 1.0, 1e-13) << z;
        EXPECT_NEAR(normal_density(z) / pdf(reference, z), 1.0, 1e-13) << z;
    }
    for (double const p : {1e-300, 1e-12, 1e-4, 0.025, 0.3, 0.5, 0.8, 0.975, 0.9999}) {
        double const z = quantile(reference, p);
        EXPECT_NEAR(normal_quantile(p), z, 1e-13 * (1.0 + std::abs(z))) << p;
    }
    EXPECT_EQ(normal_probability(std::numeric_limits<double>::infinity()), 1.0);
}

TEST(StudentsT, AgreesWithBoost) {
    for (double const nu : {1.0, 2.0, 3.0, 4.0, 7.0, 16.0, 25.0, 100.0, 1001.0}) {
        boost::math::students_t const reference(nu);
        for (double t = -6.0; t <= 6.0; t += 0.43) {
            EXPECT_NEAR(student_probability(t, nu), cdf(reference, t), 2e-14) << nu << ' ' << t;
        }
        for (double const p : {0.005, 0.025, 0.4, 0.5, 0.84, 0.95, 0.975, 0.9995}) {
            double const t = quantile(reference, p);
            EXPECT_NEAR(student_quantile(p, nu), t, 1e-10 * (1.0 + std::abs(t))) << nu << ' ' << p;
        }
    }
}

TEST(StudentsT, EndsInTheNormalDistribution) {
    EXPECT_NEAR(student_quantile(0.975, normal_from - 1.0), normal_quantile(0.975), 1e-5);
    EXPECT_EQ(student_quantile(0.975, std::numeric_limits<double>::infinity()), normal_quantile(0.975));
}

// The documented accuracy of an approximation, judged by Boost.Math.
TEST(ChiSquared, IsNearBoost) {
    for (double const nu : {1.0, 2.0, 3.0, 5.0, 7.0, 20.0, 100.0}) {
        double const within = nu == 1.0 ? 0.025 : nu == 2.0 ? 0.016 : 0.006;
        for (double const p : {0.9, 0.95, 0.99}) {
            double const exact = quantile(boost::math::chi_squared(nu), p);
            EXPECT_NEAR(chi_squared_quantile(p, nu) / exact, 1.0, within) << nu << ' ' << p;
        }
    }
}

}  // namespace
}  // namespace aqueth::numeric
