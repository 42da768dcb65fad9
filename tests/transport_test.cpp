// SPDX-License-Identifier: BSL-1.0
#include "expect_refusal.hpp"

#include <aqueth/array.hpp>
#include <aqueth/transport.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <limits>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

TEST(Transport, TypedFunctionsGiveWhatThePlainOnesGive) {
    EXPECT_EQ(in(viscosity(by_mass(40.0), celsius(20.0)), millipascal_second),
              1e3 * (plain::viscosity_mpa_s(0.4, 20.0).value * 1e-3));
    EXPECT_EQ(speed_of_sound(by_mass(40.0), celsius(25.0)).value(),
              plain::speed_of_sound_m_s(0.4, 25.0).value);
    EXPECT_EQ(thermal_conductivity(by_mass(40.0), celsius(10.0)).value(),
              plain::thermal_conductivity_w_m_k(0.4, 10.0).value);
    EXPECT_NEAR(plain::viscosity_mpa_s(0.4f, 20.0f).value, plain::viscosity_mpa_s(0.4, 20.0).value, 1e-5);
}

// A mixture is thicker than both pure liquids, and thickest near 43 % mass.
TEST(Transport, ViscosityHasAMaximum) {
    double const most = plain::viscosity_mpa_s(0.43, 20.0).value;
    EXPECT_GT(most, 2.8);
    for (double w = 0.0; w <= 1.0; w += 0.01) {
        EXPECT_LE(plain::viscosity_mpa_s(w, 20.0).value, 1.002 * most) << w;
        EXPECT_GT(plain::viscosity_mpa_s(w, 20.0).value, plain::viscosity_mpa_s(w, 25.0).value) << w;
    }
}

TEST(Transport, SoundIsFastestNear22PercentMass) {
    double const most = plain::speed_of_sound_m_s(0.22, 25.0).value;
    for (double w = 0.0; w <= 1.0; w += 0.01)
        EXPECT_LE(plain::speed_of_sound_m_s(w, 25.0).value, most + 0.5) << w;
}

TEST(Transport, RefusesWhatIsOutsideItsSource) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    expect_refusal([] { return viscosity(by_mass(40.0), celsius(-1.0)); }, "temperature");
    expect_refusal([] { return viscosity(by_mass(80.0), celsius(75.0)); }, "mass fraction");
    expect_refusal([=] { return viscosity(by_mass(40.0), celsius(nan)); }, "temperature");
    expect_refusal([] { return speed_of_sound(by_mass(40.0), celsius(40.0)); }, "temperature");
    expect_refusal([] { return thermal_conductivity(by_mass(5.0), celsius(10.0)); }, "mass fraction");
    expect_refusal([] { return thermal_conductivity(by_mass(40.0), celsius(-40.0)); }, "temperature");
    EXPECT_FALSE(plain::viscosity_mpa_s(nan, 20.0).status.ok);
    EXPECT_TRUE(std::isnan(plain::speed_of_sound_m_s(nan, 25.0).value));
    EXPECT_FALSE(plain::thermal_conductivity_w_m_k(0.4, std::numeric_limits<double>::infinity()).status.ok);
}

TEST(Transport, ArraysGiveTheSame) {
    std::vector<double> const w{0.0, 0.1, 0.4, 0.9, 1.2}, t{20.0, 25.0, 30.0, 20.0, 20.0};
    std::vector<double> eta(5), c(5);
    bool flags[5];
    EXPECT_EQ(arrays::viscosity(w, t, eta, flags), 1U);
    EXPECT_EQ(arrays::speed_of_sound(w, t, c), 1U);
    for (std::size_t i = 0; i < 4; ++i) {
        EXPECT_TRUE(flags[i]);
        EXPECT_NEAR(eta[i], plain::viscosity_mpa_s(w[i], t[i]).value, 1e-14);
        EXPECT_NEAR(c[i], plain::speed_of_sound_m_s(w[i], t[i]).value, 1e-11);
    }
    EXPECT_FALSE(flags[4]);
    EXPECT_TRUE(std::isnan(eta[4]) && std::isnan(c[4]));
    std::vector<double> k(5);
    EXPECT_EQ(arrays::thermal_conductivity(w, std::vector<double>(5, 10.0), k),
              4U);  // 40 % mass alone is covered
    EXPECT_NEAR(k[2], plain::thermal_conductivity_w_m_k(0.4, 10.0).value, 1e-15);
}

}  // namespace
}  // namespace aqueth
