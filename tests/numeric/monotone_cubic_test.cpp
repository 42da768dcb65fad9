// SPDX-License-Identifier: BSL-1.0
#include <aqueth/numeric/monotone_cubic.hpp>

#include <math.h>  // Boost 1.74's pchip.hpp calls isnan unqualified

#include <boost/math/interpolators/pchip.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <random>
#include <utility>
#include <vector>

namespace aqueth::numeric {
namespace {

// u^3 - 2 u + 5 on the unit interval: slope 3 u^2 - 2.
static_assert(unit_cubic({5.0, -2.0}, {4.0, 1.0}, 0.0).value == 5.0);
static_assert(unit_cubic({5.0, -2.0}, {4.0, 1.0}, 0.5).value == 4.125);
static_assert(unit_cubic({5.0, -2.0}, {4.0, 1.0}, 0.5).slope == -1.25);
static_assert(unit_cubic({5.0, -2.0}, {4.0, 1.0}, 0.25).value == 4.515625);
static_assert(unit_cubic({5.0, -2.0}, {4.0, 1.0}, 1.0).slope == 1.0);

constexpr bool held_to(double slope, double rise, double expected) {
    value_and_slope<double> a{1.0, slope}, b{1.0 + rise, slope};
    hold_monotone(a, b);
    return a.slope == expected && b.slope == expected && a.value == 1.0 && b.value == 1.0 + rise;
}
static_assert(held_to(7.0, 2.0, 6.0) && held_to(-7.0, -2.0, -6.0));  // too steep
static_assert(held_to(5.0, 2.0, 5.0) && held_to(-7.0, 2.0, -7.0));   // not too steep; of the other sign

struct points {
    std::vector<double> x;
    std::vector<double> y;
};

// Rising, falling, to and fro, level, uneven steps, and random ones.
std::vector<points> examples() {
    std::vector<points> all{
        {{0.0, 1.0, 2.0, 3.0}, {0.0, 1.0, 8.0, 27.0}},
        {{0.019, 0.0721, 0.0966, 0.1238, 0.1661, 0.2337, 0.2608}, {2.2, 1.94, 1.9, 1.8, 1.5, 1.1, 0.99}},
        {{-3.0, -1.0, 0.0, 0.5, 4.0, 4.5}, {1.0, -2.0, 3.0, 3.0, 3.0, -1e3}},
        {{0.0, 1e-6, 0.5, 1.0}, {100.0, 99.9, 80.0, 78.3}},
    };
    std::mt19937 engine(1);
    for (int set = 0; set < 40; ++set) {
        points p;
        double at = -1.0;
        for (int i = 0; i < 4 + set; ++i) {
            at += 1e-3 + static_cast<double>(engine() % 1000) / 500.0;
            p.x.push_back(at);
            p.y.push_back(static_cast<double>(engine() % 1000) / 100.0 - 5.0);
        }
        all.push_back(p);
    }
    return all;
}

TEST(MonotoneCubic, AgreesWithBoost) {
    for (points const& p : examples()) {
        monotone_cubic const ours(p.x, p.y);
        auto x = p.x, y = p.y;
        boost::math::interpolators::pchip<std::vector<double>> const reference(std::move(x), std::move(y));
        double size = 0.0, narrowest = 1.0;
        for (std::size_t i = 0; i < p.x.size(); ++i) {
            size = std::max(size, std::abs(p.y[i]));
            if (i > 0) narrowest = std::min(narrowest, p.x[i] - p.x[i - 1]);
        }
        double const rounding = 20.0 * std::numeric_limits<double>::epsilon() * size;
        for (int i = 0; i <= 5000; ++i) {
            double const at = i == 5000 ? p.x.back() : p.x.front() + (p.x.back() - p.x.front()) * i / 5000.0;
            EXPECT_NEAR(ours(at).value, reference(at), rounding) << at;
            EXPECT_NEAR(ours(at).slope, reference.prime(at), 10.0 * rounding / narrowest) << at;
        }
    }
}

TEST(MonotoneCubic, GoesThroughThePointsAndOneWayBetweenThem) {
    for (points const& p : examples()) {
        monotone_cubic const curve(p.x, p.y);
        for (std::size_t i = 0; i < p.x.size(); ++i) EXPECT_EQ(curve(p.x[i]).value, p.y[i]);
        for (std::size_t i = 0; i + 1 < p.x.size(); ++i) {
            double const rise = p.y[i + 1] - p.y[i];
            for (double u = 0.0; u < 1.0; u += 1.0 / 64.0) {
                double const slope = curve(p.x[i] + u * (p.x[i + 1] - p.x[i])).slope;
                EXPECT_GE(slope * rise, -1e-10 * rise * rise) << p.x[i];
                if (rise == 0.0) {
                    EXPECT_EQ(slope, 0.0) << p.x[i];
                }
            }
        }
    }
}

TEST(MonotoneCubic, TwoPointsAreAStraightLine) {
    monotone_cubic const line({1.0, 3.0}, {10.0, 20.0});
    EXPECT_EQ(line(2.0).value, 15.0);
    EXPECT_EQ(line(2.5).slope, 5.0);
}

}  // namespace
}  // namespace aqueth::numeric
