// SPDX-License-Identifier: BSL-1.0
// The published table is checked in published/water_density_test.cpp.
#include <aqueth/correlation/cipm_2001_water.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth::correlation::cipm_2001_water {
namespace {

TEST(Cipm2001Water, GreatestDensityIsTheFormulasOwn) {
    // a5 = 999.974950 kg/m3 at -a1 = 3.983035 °C (Tanaka et al. 2001, eq. 1 and its coefficients)
    EXPECT_DOUBLE_EQ(density(3.983035), 999.974950);
    EXPECT_LT(density(3.9), 999.974950);
    EXPECT_LT(density(4.1), 999.974950);
}

TEST(Cipm2001Water, WorksInOtherScalars) {
    EXPECT_NEAR(density(20.0f), density(20.0), 2e-4);
    EXPECT_NEAR(static_cast<double>(density(20.0L)), density(20.0), 2e-13);
    static_assert(density(20.0) > 998.2 && density(20.0) < 998.21);
}

TEST(Cipm2001Water, CoversItsRangeOnlyAndPassesNaNThrough) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(covers(0.0) && covers(40.0));
    EXPECT_FALSE(covers(-0.1) || covers(40.1) || covers(nan));
    EXPECT_TRUE(std::isnan(density(nan)));
}

}  // namespace
}  // namespace aqueth::correlation::cipm_2001_water
