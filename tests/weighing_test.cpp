// SPDX-License-Identifier: BSL-1.0
#include <aqueth/density.hpp>
#include <aqueth/weighing.hpp>

#include "expect_range_error.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

using test::expect_range_error;

TEST(WeighingInAir, WaterSeemsATenthOfAPercentLighter) {
    // OIML D 28 conventions: (1 - 1.2/998.2)/(1 - 1.2/8000)
    auto const rho = density(mass_fraction(0.0), celsius(20.0));
    EXPECT_NEAR(in(balance_indication(1.0 * kilogram, rho), gram), 998.948, 5e-4);
    EXPECT_NEAR(density_in_air(rho).value(), 997.151, 5e-4);
    EXPECT_NEAR(in(mass_from_balance(balance_indication(1.3 * kilogram, rho), rho), kilogram), 1.3, 1e-15);
    expect_range_error(
        [] { static_cast<void>(balance_indication(1.0 * kilogram, 1.0 * kilogram_per_cubic_metre)); },
        "density");
    for (double const bad : {-1.0, std::numeric_limits<double>::quiet_NaN()}) {
        expect_range_error([&] { static_cast<void>(balance_indication(bad * kilogram, rho)); }, "mass");
        expect_range_error([&] { static_cast<void>(mass_from_balance(bad * kilogram, rho)); }, "indication");
    }
}

}  // namespace
}  // namespace aqueth
