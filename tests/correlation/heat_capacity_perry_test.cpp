// SPDX-License-Identifier: BSL-1.0
// The coefficients are checked in published/pure_components_test.cpp.
#include <aqueth/correlation/heat_capacity_perry.hpp>

#include <boost/math/differentiation/autodiff.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth::correlation {
namespace {

namespace perry = heat_capacity_perry;

TEST(HeatCapacityPerry, EnthalpyIsTheIntegral) {
    EXPECT_NEAR(perry::ethanol_liquid_enthalpy(273.15), 0.0, 1e-10);
    EXPECT_NEAR(perry::water_liquid_enthalpy(273.15), 0.0, 1e-10);
    for (double t = 274.0; t < 390.0; t += 4.0) {
        auto const dual = boost::math::differentiation::make_fvar<double, 1>(t);
        EXPECT_NEAR(perry::ethanol_liquid_enthalpy(dual).derivative(1), perry::ethanol_liquid(t), 1e-11);
        EXPECT_NEAR(perry::water_liquid_enthalpy(dual).derivative(1), perry::water_liquid(t), 1e-11);
    }
}

TEST(HeatCapacityPerry, AsEverybodyKnowsThem) {
    // Common knowledge, to the digits that are common: water 75.3 J/(mol K) (4.18 J/(g K)), steam 33.6 and
    // ethanol vapour 65 J/(mol K) at 25 °C.
    EXPECT_NEAR(perry::water_liquid(298.15), 75.3, 0.1);
    EXPECT_NEAR(perry::water_ideal_gas(298.15), 33.6, 0.05);
    EXPECT_NEAR(perry::ethanol_ideal_gas(298.15), 65.0, 0.6);
}

TEST(HeatCapacityPerry, WorksInOtherScalars) {
    static_assert(perry::water_liquid(298.15) > 75.2 && perry::water_liquid(298.15) < 75.4);
    EXPECT_NEAR(perry::ethanol_ideal_gas(300.0F), perry::ethanol_ideal_gas(300.0), 1e-4);
}

TEST(HeatCapacityPerry, CoversItsRangeOnlyAndPassesNaNThrough) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(perry::covers(273.16) && perry::covers(390.0));
    EXPECT_FALSE(perry::covers(390.1) || perry::covers(273.15) || perry::covers(nan));
    EXPECT_TRUE(std::isnan(perry::ethanol_liquid(nan)) && std::isnan(perry::water_ideal_gas(nan)));
}

}  // namespace
}  // namespace aqueth::correlation
