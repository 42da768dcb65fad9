// SPDX-License-Identifier: BSL-1.0
#include <aqueth/density.hpp>
#include <aqueth/freezing.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

TEST(Density, IsTheCorrelationWithUnits) {
    EXPECT_EQ(density(by_mass(40.0), celsius(12.5)).value(), correlation::oiml_r22::density(0.4, 12.5));
    static_assert(density(mass_fraction(1.0), celsius(20.0)) < 789.3 * kilogram_per_cubic_metre);
}

TEST(Density, TakesAStrengthInEveryBasisAsBubblePointDoes) {
    auto const t = celsius(12.5);
    mass_fraction const w = to<mass_fraction>(by_volume(40.0));
    EXPECT_EQ(density(by_volume(40.0), t).value(), density(w, t).value());
    EXPECT_EQ(density(proof(80.0), t), density(to<mass_fraction>(proof(80.0)), t));
    EXPECT_EQ(thermal_expansion(by_volume(40.0), t).value(), thermal_expansion(w, t).value());
    EXPECT_EQ(molar_volume(by_volume(40.0), t).value(), molar_volume(w, t).value());
    EXPECT_EQ(excess_molar_volume(by_volume(40.0), t).value(), excess_molar_volume(w, t).value());
    EXPECT_EQ(freezing_point(by_volume(40.0)), freezing_point(w));
    static_assert(density(by_moles(100.0), celsius(20.0)) == density(by_mass(100.0), celsius(20.0)));
}

TEST(Density, InverseClosesOverTheWholeLiquidRange) {
    for (int i = 0; i <= 1000; ++i) {
        mass_fraction const w(i / 1000.0);
        for (double t = -20.0; t <= 40.0; t += 0.75) {
            if (t < plain::coldest_liquid_celsius(w.value())) continue;
            double const back = mass_fraction_from_density(density(w, celsius(t)), celsius(t)).value();
            EXPECT_NEAR(back, w.value(), 1e-12 * w.value() + 1e-15) << w.value() << " " << t;
        }
    }
}

TEST(Density, TellsTheSameRangeFromBothSides) {
    for (double const percent : {0.0, 10.0, 29.5, 29.6, 60.0}) {
        auto const w = by_mass(percent);
        double const coldest = percent > 29.55 ? -20.0 : freezing_point(w).celsius();
        for (double const bad : {-300.0, coldest - 0.001, 100.001, 1e6, nan, infinity}) {
            auto const error =
                expect_refusal([&] { static_cast<void>(density(w, celsius(bad))); }, "temperature");
            EXPECT_EQ(error.lower(), coldest) << bad;
            EXPECT_EQ(error.upper(), plain::hottest_liquid_celsius(w.value())) << bad;
        }
    }
}

TEST(Density, RefusesTemperaturesOutsideTheStandard) {
    for (double const bad : {-20.01, 100.01, nan, infinity, -infinity}) {
        auto const w = by_mass(60.0);
        expect_refusal([&] { static_cast<void>(density(w, celsius(bad))); }, "temperature");
        expect_refusal([&] { static_cast<void>(thermal_expansion(w, celsius(bad))); }, "temperature");
        expect_refusal([&] { static_cast<void>(molar_volume(w, celsius(bad))); }, "temperature");
        expect_refusal(
            [&] {
                static_cast<void>(mass_fraction_from_density(900.0 * kilogram_per_cubic_metre, celsius(bad)));
            },
            "temperature");
    }
    for (double const bad : {-0.01, 40.01, nan, infinity}) {
        expect_refusal([&] { static_cast<void>(water_density_cipm_2001(celsius(bad))); }, "temperature");
    }
    for (double const bad : {-0.01, 79.0, nan, infinity})
        expect_refusal([&] { static_cast<void>(excess_molar_volume(by_mass(60.0), celsius(bad))); },
                       "temperature");
}

TEST(Density, RefusesDensitiesNoMixtureHas) {
    for (double const bad : {789.2, 998.3, 0.0, -1.0, nan, infinity}) {
        auto const error = expect_refusal(
            [&] {
                static_cast<void>(mass_fraction_from_density(bad * kilogram_per_cubic_metre, celsius(20.0)));
            },
            "density");
        EXPECT_NEAR(error.lower(), 789.24, 0.005);
        EXPECT_NEAR(error.upper(), 998.20, 0.005);
    }
    // a density that only a frozen mixture would have
    expect_refusal(
        [] {
            static_cast<void>(mass_fraction_from_density(990.0 * kilogram_per_cubic_metre, celsius(-10.0)));
        },
        "temperature");
}

TEST(Density, ThermalExpansionIsTheSlopeOfTheLogarithm) {
    for (double w = 0.3; w <= 1.0; w += 0.1) {
        double const h = 1e-3;
        double const slope = std::log(density(mass_fraction(w), celsius(20.0 - h)).value() /
                                      density(mass_fraction(w), celsius(20.0 + h)).value()) /
                             (2.0 * h);
        EXPECT_NEAR(thermal_expansion(mass_fraction(w), celsius(20.0)).value(), slope, 1e-9);
    }
    EXPECT_LT(thermal_expansion(mass_fraction(0.0), celsius(2.0)).value(), 0.0);  // water below 4 °C
}

TEST(Density, ExcessVolumeVanishesForPureLiquidsAndIsNegativeBetween) {
    for (double const t : {5.0, 20.0, 40.0}) {
        EXPECT_NEAR(in(excess_molar_volume(mass_fraction(0.0), celsius(t)), cubic_centimetre_per_mole), 0.0,
                    1e-13);
        EXPECT_NEAR(in(excess_molar_volume(mass_fraction(1.0), celsius(t)), cubic_centimetre_per_mole), 0.0,
                    1e-13);
        for (double w = 0.01; w < 1.0; w += 0.01) {
            EXPECT_LT(excess_molar_volume(mass_fraction(w), celsius(t)).value(), 0.0) << w;
        }
    }
}

}  // namespace
}  // namespace aqueth
