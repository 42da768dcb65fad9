// SPDX-License-Identifier: BSL-1.0
// The coefficients are checked in published/pure_components_test.cpp.
#include <aqueth/correlation/second_virial_crc.hpp>
#include <aqueth/model/ethanol_second_virial.hpp>

#include <boost/math/differentiation/autodiff.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth::correlation {
namespace {

TEST(SecondVirial, DerivativesAreTheDerivatives) {
    auto const check = [](auto const& b) {
        for (double t = 273.15; t <= 393.15; t += 5.0) {
            auto const dual = b(boost::math::differentiation::make_fvar<double, 2>(t));
            auto const plain = b(t);
            EXPECT_NEAR(dual.value.derivative(1) / plain.slope, 1.0, 1e-13) << t;
            EXPECT_NEAR(dual.value.derivative(2) / plain.curvature, 1.0, 1e-13) << t;
            EXPECT_LT(plain.value, 0.0);      // molecules attract each other
            EXPECT_GT(plain.slope, 0.0);      // less so when they are hot
            EXPECT_LT(plain.curvature, 0.0);  // so the vapour's heat capacity grows with pressure
        }
    };
    check([](auto const& t) { return second_virial_crc::water(t); });
    check([](auto const& t) { return second_virial_crc::ethanol(t); });
    check([](auto const& t) { return model::ethanol_second_virial::coefficient(t); });
}

TEST(SecondVirial, WorksAtCompileTime) {
    static_assert(model::ethanol_second_virial::coefficient(351.44).value == -1.29e-3);
    static_assert(second_virial_crc::water(298.15).value == 1e-6 * -1158.0);
}

TEST(SecondVirial, CoversItsRangeOnlyAndPassesNaNThrough) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    for (double const end : {273.15, 393.15})
        EXPECT_TRUE(model::ethanol_second_virial::covers(end) && second_virial_crc::covers(end)) << end;
    for (double const beyond : {273.145, 393.155})
        EXPECT_FALSE(model::ethanol_second_virial::covers(beyond) || second_virial_crc::covers(beyond))
            << beyond;
    EXPECT_FALSE(model::ethanol_second_virial::covers(nan) || second_virial_crc::covers(nan));
    EXPECT_TRUE(std::isnan(model::ethanol_second_virial::coefficient(nan).value));
    EXPECT_TRUE(std::isnan(second_virial_crc::water(nan).slope));
}

}  // namespace
}  // namespace aqueth::correlation
