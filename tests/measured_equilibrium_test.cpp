// SPDX-License-Identifier: BSL-1.0
#include <aqueth/measured_equilibrium.hpp>

#include "expect_refusal.hpp"
#include "published/table.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

namespace aqueth {
namespace {

using test::expect_refusal;

std::vector<measured_point> from_model(units::pressure p, double bias = 0.0) {
    std::vector<measured_point> points;
    for (double x = 0.02; x < 0.99; x += 0.04) {
        auto const at = bubble_point(mole_fraction(x), p);
        double const ln_alpha = std::log(at.relative_volatility) + bias;
        double const y = x * std::exp(ln_alpha) / (1.0 + x * (std::exp(ln_alpha) - 1.0));
        points.push_back({mole_fraction(x), mole_fraction(y), at.temperature});
    }
    return points;
}

TEST(ParseMeasuredPoints, ReadsTwoOrThreeColumns) {
    auto const points = parse_measured_points("# our own still\r\nx,y,t\r\n0.1, 0.43 ,86.7\n\n0.2,0.53,83.1");
    ASSERT_EQ(points.size(), 2u);
    EXPECT_EQ(points[0].liquid.value(), 0.1);
    EXPECT_EQ(points[0].vapour.value(), 0.43);
    EXPECT_EQ(points[1].temperature->celsius(), 83.1);
    EXPECT_FALSE(parse_measured_points("0.1,0.43").front().temperature.has_value());
    EXPECT_TRUE(parse_measured_points("").empty());
}

// A table of measured_equilibrium is an isobar with its vapours.
TEST(ParseMeasuredPoints, RefusesPointsThatDoNotBelongTogether) {
    try {
        static_cast<void>(
            parse_measured_points("x,y,p_kpa\n0.1,0.44,101.3\n0.2,0.53,101.6\n0.3,0.57,93.8\n"));
        FAIL() << "points of two pressures";
    } catch (text_error const& refused) {
        EXPECT_EQ(refused.line(), 4u);
    }
    EXPECT_THROW(static_cast<void>(parse_measured_points("x,y,t\n0.1,0.44,86\n0.2,,83\n")), text_error);
}

TEST(MeasuredEquilibrium, PassesThroughItsPoints) {
    auto const points = from_model(standard_atmosphere);
    measured_equilibrium const measured(points, standard_atmosphere);
    for (auto const& point : points) {
        EXPECT_NEAR(measured.vapour(point.liquid).value(), point.vapour.value(), 1e-14);
        EXPECT_NEAR(measured.temperature(point.liquid).celsius(), point.temperature->celsius(), 1e-12);
    }
    EXPECT_NEAR(measured.vapour(mole_fraction(0.45)).value(),
                bubble_point(mole_fraction(0.45), standard_atmosphere).vapour.value(), 1e-3);
}

// Boiling points of the pure liquids are often in such a table: they have a temperature but no volatility.
TEST(MeasuredEquilibrium, PureLiquidsCountForTheTemperatureOnly) {
    auto points = from_model(standard_atmosphere);
    for (double const x : {0.0, 1.0}) {
        auto const at = bubble_point(mole_fraction(x), standard_atmosphere);
        points.push_back({mole_fraction(x), mole_fraction(x), at.temperature});
    }
    measured_equilibrium const measured(points, standard_atmosphere);
    EXPECT_NEAR(measured.temperature(mole_fraction(0.0)).celsius(), 99.97, 0.02);
    expect_refusal([&] { static_cast<void>(measured.vapour(mole_fraction(0.0))); },
                   "mole fraction of the liquid");
}

// Beyond the measured liquids the curve follows the model, shifted so that it joins.
TEST(MeasuredEquilibrium, CurveGoesOnBeyondThePoints) {
    double const bias = 0.05;
    auto const curve =
        measured_equilibrium(from_model(standard_atmosphere, bias), standard_atmosphere).curve();
    for (double const x : {0.0, 0.004, 0.01, 0.985, 0.995, 1.0}) {
        double const model = bubble_point(mole_fraction(x), standard_atmosphere).relative_volatility;
        EXPECT_NEAR(std::log(curve.relative_volatility(mole_fraction(x)) / model), bias, 1e-3) << x;
    }
}

TEST(MeasuredEquilibrium, TrustsConsistentDataAndNotShiftedData) {
    measured_equilibrium const good(from_model(standard_atmosphere), standard_atmosphere);
    EXPECT_LT(good.check().area_percent, 1.0);
    EXPECT_TRUE(good.check().trusted);
    measured_equilibrium const shifted(from_model(standard_atmosphere, 0.25), standard_atmosphere);
    EXPECT_GT(shifted.check().area_percent, 10.0);
    EXPECT_FALSE(shifted.check().trusted);
}

TEST(MeasuredEquilibrium, DoesNotTrustAShiftedThermometerNorAScrapOfTheRange) {
    auto warm = from_model(standard_atmosphere);
    for (auto& point : warm) point.temperature = *point.temperature + 10.0 * kelvins;
    EXPECT_FALSE(measured_equilibrium(warm, standard_atmosphere).check().trusted);
    auto const all = from_model(standard_atmosphere);
    measured_equilibrium const scrap({all.begin() + 8, all.begin() + 13}, standard_atmosphere);
    EXPECT_LT(scrap.check().measured_share, 0.2);
    EXPECT_FALSE(scrap.check().trusted);
}

TEST(MeasuredEquilibrium, WorksWithoutTemperatures) {
    auto points = from_model(standard_atmosphere);
    for (auto& point : points) point.temperature.reset();
    measured_equilibrium const measured(points, standard_atmosphere);
    EXPECT_FALSE(measured.has_temperature());
    EXPECT_LT(measured.check().area_percent, 1.0);
    expect_refusal([&] { static_cast<void>(measured.temperature(mole_fraction(0.3))); },
                   "number of measured temperatures");
}

TEST(MeasuredEquilibrium, RefusesTablesThatCannotServe) {
    auto const make = [](std::vector<measured_point> points) {
        return measured_equilibrium(std::move(points), standard_atmosphere);
    };
    auto const good = from_model(standard_atmosphere);
    expect_refusal([&] { static_cast<void>(make({})); }, "number of points");
    expect_refusal([&] { static_cast<void>(make({good.begin(), good.begin() + 3})); }, "number of points");
    auto twice = good;
    twice.push_back(good[3]);
    expect_refusal([&] { static_cast<void>(make(twice)); }, "distance between the liquids of two points");
    auto dry = good;
    dry[2].vapour = mole_fraction(1.0);
    expect_refusal([&] { static_cast<void>(make(dry)); }, "vapour over a mixture");
    auto some_warm = good;
    some_warm[2].temperature.reset();
    expect_refusal([&] { static_cast<void>(make(some_warm)); }, "temperature of a point");
    measured_equilibrium const measured = make(good);
    expect_refusal([&] { static_cast<void>(measured.vapour(mole_fraction(0.001))); },
                   "mole fraction of the liquid");
    expect_refusal([&] { static_cast<void>(measured.temperature(mole_fraction(0.999))); },
                   "mole fraction of the liquid");
    expect_refusal([&] { static_cast<void>(measured_equilibrium(good, 900.0 * kilopascal)); }, "pressure");
}

}  // namespace
}  // namespace aqueth
