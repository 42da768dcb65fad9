// SPDX-License-Identifier: BSL-1.0
#include <aqueth/vapour_uncertainty.hpp>

#include <aqueth/boiling_curve.hpp>
#include <aqueth/still/run.hpp>

#include "expect_range_error.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

namespace measured = model::vapour_deviations;
constexpr double nan = std::numeric_limits<double>::quiet_NaN();

TEST(VapourUncertainty, GoesThroughTheBandsAndIsLevelBeyond) {
    for (auto const& band : measured::bands) {
        EXPECT_NEAR(measured::uncertainty(band.x).value, band.uncertainty, 1e-15);
        EXPECT_GE(band.uncertainty, std::abs(band.bias)) << "bias and scatter are both in it";
        EXPECT_LT(band.from, band.x);
        EXPECT_LT(band.x, band.to);
        EXPECT_GE(band.sets, 5);
    }
    EXPECT_EQ(measured::uncertainty(0.0).value, measured::bands.front().uncertainty);
    EXPECT_EQ(measured::uncertainty(0.0).slope, 0.0);
    EXPECT_EQ(measured::uncertainty(1.0).value, measured::bands.back().uncertainty);
    EXPECT_EQ(measured::uncertainty(1.0).slope, 0.0);
    EXPECT_TRUE(std::isnan(measured::uncertainty(nan).value));
    double const x = 0.5 * (measured::bands[2].x + measured::bands[3].x), h = 1e-4;
    EXPECT_NEAR(measured::uncertainty(x).value,
                0.5 * (measured::bands[2].uncertainty + measured::bands[3].uncertainty), 1e-15);
    EXPECT_NEAR(measured::uncertainty(x).slope,
                (measured::uncertainty(x + h).value - measured::uncertainty(x - h).value) / (2 * h), 1e-9);
}

TEST(VapourUncertainty, OfTheVapourFollowsFromThatOfTheRelativeVolatility) {
    auto const p = 95.0 * kilopascal;
    for (double const x : {0.001, 0.02, 0.07, 0.3, 0.7, 0.9}) {
        auto const e = bubble_point(mole_fraction(x), p);
        double const u = relative_volatility_uncertainty(mole_fraction(x), p), h = 1e-6;
        auto const vapour = [&](double alpha) { return alpha * x / (1.0 + (alpha - 1.0) * x); };
        double const slope =
            (vapour(e.relative_volatility * (1 + h)) - vapour(e.relative_volatility * (1 - h))) / (2 * h);
        EXPECT_NEAR(vapour_uncertainty(e), slope * u, 1e-9) << x;
    }
    EXPECT_EQ(vapour_uncertainty(bubble_point(mole_fraction(0.0), p)), 0.0);
    EXPECT_EQ(vapour_uncertainty(bubble_point(mole_fraction(1.0), p)), 0.0);
    // The basis of the strength does not matter.
    EXPECT_NEAR(relative_volatility_uncertainty(to<volume_fraction>(mole_fraction(0.03)), p),
                relative_volatility_uncertainty(mole_fraction(0.03), p), 1e-12);
}

// The liquid under a known vapour: from the curves shifted by one uncertainty to either side.
TEST(VapourUncertainty, OfTheLiquidIsWhatShiftedCurvesGive) {
    auto const p = standard_atmosphere;
    boiling_curve const weaker(curve_with_vapour_shifted(p, -1.0)),
        stronger(curve_with_vapour_shifted(p, 1.0));
    for (double const y : {0.05, 0.2, 0.45, 0.6, 0.7}) {
        auto const e = dew_point(mole_fraction(y), p);
        double const half_width = 0.5 * (weaker.liquid(y) - stronger.liquid(y));
        EXPECT_NEAR(liquid_uncertainty(e), half_width, 0.06 * half_width) << y;
    }
}

TEST(VapourUncertainty, AShiftedVapourIsOneUncertaintyAway) {
    for (double const x : {0.005, 0.03, 0.07, 0.2, 0.5, 0.7}) {
        auto const e = bubble_point(mole_fraction(x), standard_atmosphere);
        auto const lower = with_vapour_shifted(e, -1.0), upper = with_vapour_shifted(e, 1.0);
        double const width = upper.vapour.value() - lower.vapour.value();
        EXPECT_NEAR(0.5 * width, vapour_uncertainty(e), 0.02 * vapour_uncertainty(e)) << x;
        EXPECT_LT(lower.vapour.value(), e.vapour.value());
        EXPECT_NEAR(with_vapour_shifted(e, 0.0).vapour.value(), e.vapour.value(), 1e-14);
        EXPECT_EQ(lower.temperature, e.temperature);
        EXPECT_EQ(lower.pressure, e.pressure);
        EXPECT_EQ(lower.liquid.value(), x);
    }
}

TEST(VapourUncertainty, AShiftedCurveShiftsEveryVapourAndKeepsTheAzeotrope) {
    for (double const k : {-3.0, -1.0, 1.0, 3.0})
        for (double const kpa : {26.0, 101.325, 165.0}) {
            auto const p = kpa * kilopascal;
            auto const curve = curve_with_vapour_shifted(p, k);
            for (double const x :
                 {0.0, 0.001, 0.0159, 0.03, 0.0746, 0.25, 0.5, 0.7136, 0.72, 0.8, 0.95, 1.0}) {
                auto const e = with_vapour_shifted(bubble_point(mole_fraction(x), p), k);
                // the uncertainty has a kink at every band, which the cubics of the curve round off
                EXPECT_NEAR(curve.vapour(mole_fraction(x)).value(), e.vapour.value(), 2e-5) << x;
            }
            auto const z = azeotrope(p).liquid;
            EXPECT_NEAR(curve.vapour(z).value(), z.value(), 1e-7);
            // The vapour rises with the liquid, and the volatility falls, as with the model.
            boiling_curve const boils(curve);
            for (int i = 1; i <= 1000; ++i) {
                EXPECT_LT(boils.vapour(1e-3 * (i - 1)), boils.vapour(1e-3 * i));
                EXPECT_GE(curve.relative_volatility(mole_fraction(1e-3 * (i - 1))),
                          curve.relative_volatility(mole_fraction(1e-3 * i)));
            }
        }
}

// The example of README and pages for a pot without reflux: 20 L of 11 % vol, run until the distillate has 50
// % vol.
TEST(VapourUncertainty, IsWorthAFifthOfWhatAPotGivesAbove50PercentByVolume) {
    auto const charge = wash::of(20.0 * litre, by_volume(11.0), plato(0.0), celsius(20.0));
    run_plan plan;
    plan.ends = {condition::distillate_strength(by_volume(50.0))};
    auto const litres = [&](double shift) {
        boiling_curve const curve(curve_with_vapour_shifted(93.8 * kilopascal, shift));
        return distil(charge, still{{1.5 * kilowatt}}, plan, curve).fractions[0].product.volume() / litre;
    };
    double const model = litres(0.0), weaker = litres(-1.0);
    EXPECT_NEAR(litres(1e-12), model, 1e-9);
    EXPECT_NEAR(weaker / model, 0.8, 0.04);
    // The same without the library's help: every vapour 0.015 lower, about as the measurements lie on
    // average. The slopes of the table are the model's, which is near enough.
    auto const lowered =
        equilibrium_curve(93.8 * kilopascal, [](double x, numeric::value_and_slope<double> const& of_model) {
            double const y = 1.0 / (1.0 + (1.0 - x) / (x * std::exp(of_model.value)));
            if (x < 0.005 || x > 0.3) return of_model;
            return numeric::value_and_slope<double>{std::log((y - 0.015) / (1.015 - y) * (1.0 - x) / x),
                                                    of_model.slope};
        });
    boiling_curve const curve(lowered);
    auto const by_hand =
        distil(charge, still{{1.5 * kilowatt}}, plan, curve).fractions[0].product.volume() / litre;
    EXPECT_NEAR(by_hand / model, 0.8, 0.04);
}

TEST(VapourUncertainty, RefusesWhereNoVapoursWereMeasured) {
    using test::expect_range_error;
    EXPECT_FALSE(vapour_uncertainty_known(12.7 * kilopascal));
    EXPECT_TRUE(vapour_uncertainty_known(25.0 * kilopascal));
    EXPECT_TRUE(vapour_uncertainty_known(300.0 * kilopascal));
    EXPECT_FALSE(vapour_uncertainty_known(301.0 * kilopascal));
    for (double const kpa : {10.0, 24.9, 300.1, 400.0, nan}) {
        auto const p = kpa * kilopascal;
        expect_range_error([&] { static_cast<void>(relative_volatility_uncertainty(mole_fraction(0.1), p)); },
                           "pressure");
        expect_range_error([&] { static_cast<void>(curve_with_vapour_shifted(p, -1.0)); }, "pressure");
        equilibrium const e{celsius(80), p, mole_fraction(0.1), mole_fraction(0.4), 6.0};
        expect_range_error([&] { static_cast<void>(vapour_uncertainty(e)); }, "pressure");
        expect_range_error([&] { static_cast<void>(liquid_uncertainty(e)); }, "pressure");
        expect_range_error([&] { static_cast<void>(with_vapour_shifted(e, -1.0)); }, "pressure");
    }
    for (double const k : {-3.1, 3.1, nan}) {
        expect_range_error([&] { static_cast<void>(curve_with_vapour_shifted(standard_atmosphere, k)); },
                           "number of standard uncertainties");
        auto const e = bubble_point(mole_fraction(0.1), standard_atmosphere);
        expect_range_error([&] { static_cast<void>(with_vapour_shifted(e, k)); },
                           "number of standard uncertainties");
    }
}

}  // namespace
}  // namespace aqueth
