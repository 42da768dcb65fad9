// SPDX-License-Identifier: BSL-1.0
#include <aqueth/plain/weighing.hpp>
#include <aqueth/weighing.hpp>

#include "refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

// OIML D 28 conventions: (1 - 1.2/998.2)/(1 - 1.2/8000)
static_assert(plain::balance_indication_kg(1.0, 998.2).value > 0.998947);
static_assert(plain::balance_indication_kg(1.0f, 998.2f).value < 0.998949f);
static_assert(plain::density_in_air_kg_m3(998.2).value < 997.15);

TEST(PlainWeighing, AnswersAreThoseOfTheTypedOnes) {
    for (double rho = 10.0; rho < 2000.0; rho += 37.0) {
        auto const typed = rho * kilogram_per_cubic_metre;
        EXPECT_EQ(plain::balance_indication_kg(1.7, rho).value,
                  in(balance_indication(1.7 * kilogram, typed), kilogram));
        EXPECT_EQ(plain::mass_from_balance_kg(1.7, rho).value,
                  in(mass_from_balance(1.7 * kilogram, typed), kilogram));
        EXPECT_EQ(plain::density_in_air_kg_m3(rho).value, density_in_air(typed).value());
        EXPECT_NEAR(plain::mass_from_balance_kg(1.7f, float(rho)).value,
                    plain::mass_from_balance_kg(1.7, rho).value, 4e-7);
    }
}

TEST(PlainWeighing, RefusesMassesAndDensities) {
    for (double const bad : {-1.0, 9.9, 1.1e6, nan, infinity}) {
        auto const why =
            expect_refusal(plain::balance_indication_kg(1.0, bad), argument::density, limit::none, bad);
        EXPECT_EQ(why.lower, 10.0);
        EXPECT_EQ(why.upper, 1e6);
        expect_refusal(plain::mass_from_balance_kg(1.0, bad), argument::density, limit::none, bad);
        expect_refusal(plain::density_in_air_kg_m3(bad), argument::density, limit::none, bad);
    }
    for (double const bad : {-1e-3, nan, infinity}) {
        EXPECT_EQ(
            expect_refusal(plain::balance_indication_kg(bad, 900.0), argument::mass, limit::none, bad).upper,
            plain::unlimited);
        expect_refusal(plain::mass_from_balance_kg(bad, 900.0), argument::indication, limit::none, bad);
    }
}

}  // namespace
}  // namespace aqueth
