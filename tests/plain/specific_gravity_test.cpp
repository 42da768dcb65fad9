// SPDX-License-Identifier: BSL-1.0
#include <aqueth/plain/specific_gravity.hpp>
#include <aqueth/specific_gravity.hpp>

#include "refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

static_assert(plain::specific_gravity_of(0.0, plain::gravity_reference<double>{}).value == 1.0);
static_assert(plain::specific_gravity_of(1.0f, plain::gravity_reference<float>{25.0f, 25.0f, medium::air})
                  .value < 0.79f);

TEST(PlainSpecificGravity, AnswersAreThoseOfTheTypedOnes) {
    for (medium const in_what : {medium::vacuum, medium::air}) {
        plain::gravity_reference<double> const reference{25.0, 4.0, in_what};
        plain::gravity_reference<float> const in_float{25.0f, 4.0f, in_what};
        gravity_reference const typed{celsius(25.0), celsius(4.0), in_what};
        for (int i = 0; i <= 100; ++i) {
            double const w = i / 100.0;
            auto const gravity = plain::specific_gravity_of(w, reference);
            EXPECT_EQ(gravity.value, specific_gravity_of(mass_fraction(w), typed).value());
            EXPECT_EQ(plain::mass_fraction_from_specific_gravity(gravity.value, reference).value,
                      mass_fraction_from_specific_gravity(specific_gravity(gravity.value), typed).value());
            auto const single = plain::specific_gravity_of(float(w), in_float);
            EXPECT_NEAR(double(single.value), gravity.value, 3e-7);
            EXPECT_NEAR(double(plain::mass_fraction_from_specific_gravity(single.value, in_float).value), w,
                        3e-6);
            // a density of any liquid, there and back
            double const rho = 800.0 + 4.0 * i;
            EXPECT_NEAR(plain::density_from_specific_gravity_kg_m3(
                            plain::specific_gravity_from_density(rho, reference).value, reference)
                            .value,
                        rho, 1e-12 * rho);
        }
    }
}

TEST(PlainSpecificGravity, RefusesTheImpossible) {
    plain::gravity_reference<double> const reference{};
    for (double const bad : {0.49, 2.01, nan, infinity, -infinity}) {
        for (auto const& found : {plain::density_from_specific_gravity_kg_m3(bad, reference),
                                  plain::mass_fraction_from_specific_gravity(bad, reference)}) {
            auto const why = expect_refusal(found, argument::specific_gravity, limit::none, bad);
            EXPECT_EQ(why.lower, 0.5);
            EXPECT_EQ(why.upper, 2.0);
        }
    }
    EXPECT_FALSE(plain::specific_gravity_from_density(100.0, reference).status.ok);
    // 0.7 is a specific gravity, but of no mixture: the density is refused
    double const rho = plain::density_from_specific_gravity_kg_m3(0.7, reference).value;
    auto const light = expect_refusal(plain::mass_fraction_from_specific_gravity(0.7, reference),
                                      argument::density, limit::oiml_r22_ethanol_to_water, rho);
    EXPECT_NEAR(light.lower, plain::density_kg_m3(1.0, 20.0).value, 2e-9);
    for (double const bad : {-1.0, 101.0, nan}) {
        plain::gravity_reference<double> const water{20.0, bad};
        plain::gravity_reference<double> const liquid{bad, 20.0};
        EXPECT_EQ(plain::specific_gravity_of(0.0, water).status.argument, argument::temperature);
        EXPECT_EQ(plain::specific_gravity_of(0.0, liquid).status.argument, argument::temperature);
        EXPECT_FALSE(plain::mass_fraction_from_specific_gravity(0.9, water).status.ok);
        EXPECT_FALSE(plain::specific_gravity_from_density(900.0, water).status.ok);
    }
}

}  // namespace
}  // namespace aqueth
