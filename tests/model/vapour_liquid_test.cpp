// SPDX-License-Identifier: BSL-1.0
// Measurements are in published/: total pressures, boiling points, activity and azeotropes, worked examples.
#include <aqueth/model/vapour_liquid.hpp>

#include <boost/math/differentiation/autodiff.hpp>
#include <boost/multiprecision/cpp_bin_float.hpp>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth::model::vapour_liquid {
namespace {

/// A double that counts comparisons for equality: only the solvers of the bubble point make them, once in
/// each round.
class counting {
public:
    counting() = default;
    explicit counting(double value) : value_(value) {}
    friend counting operator+(counting a, counting b) { return counting(a.value_ + b.value_); }
    friend counting operator-(counting a, counting b) { return counting(a.value_ - b.value_); }
    friend counting operator*(counting a, counting b) { return counting(a.value_ * b.value_); }
    friend counting operator/(counting a, counting b) { return counting(a.value_ / b.value_); }
    counting operator-() const { return counting(-value_); }
    counting& operator+=(counting other) { return *this = *this + other; }
    friend bool operator>(counting a, counting b) { return a.value_ > b.value_; }
    friend bool operator<=(counting a, counting b) { return a.value_ <= b.value_; }
    friend bool operator==(counting a, counting b) {
        ++rounds;
        return a.value_ == b.value_;
    }
    friend counting exp(counting a) { return counting(std::exp(a.value_)); }
    friend counting log(counting a) { return counting(std::log(a.value_)); }
    friend counting sqrt(counting a) { return counting(std::sqrt(a.value_)); }

    static inline int rounds = 0;

private:
    double value_ = 0.0;
};

}  // namespace
}  // namespace aqueth::model::vapour_liquid

template <>
class std::numeric_limits<aqueth::model::vapour_liquid::counting> : public std::numeric_limits<double> {};

namespace aqueth::model::vapour_liquid {
namespace {

using boost::math::differentiation::make_fvar;
using dual = decltype(make_fvar<double, 1>(0.0));

// Compositions from pure water to pure ethanol at pressures over the whole range.
template <class F>
void over_the_range(F const& f) {
    for (double const p : {650.0, 2e3, 10e3, 30e3, 70e3, 101325.0, 200e3, 400e3})
        for (int i = 0; i <= 50; ++i) {
            auto const e = bubble_at_pressure(i / 50.0, p);
            if (e.temperature >= lowest_kelvin && e.temperature <= highest_kelvin) f(e);
        }
}

// The equations of the equilibrium, written out naively: y_i p = x_i gamma_i p_i exp e_i.
TEST(VapourLiquid, FugacitiesAreEqual) {
    over_the_range([](equilibrium<double> const& e) {
        double const t = e.temperature, p = e.pressure, rt = correlation::gas_constant::molar * t;
        double const b1 = ethanol_second_virial::coefficient(t).value,
                     b2 = correlation::second_virial_crc::water(t).value;
        double const delta = 2 * 0.8 * (b1 + b2) / 2 - b1 - b2;
        double const p1 = correlation::ethanol_saturation_poling::pressure(t),
                     p2 = correlation::water_saturation_wagner_pruss::pressure(t);
        auto const g = excess_gibbs::reduced_gibbs(e.x, t);
        double const y = e.y, z = 1 - y;
        double const e1 = -((b1 - 61e-6) * (p - p1) + p * z * z * delta) / rt;
        double const e2 = -((b2 - 18.3e-6) * (p - p2) + p * y * y * delta) / rt;
        EXPECT_NEAR(e.x * std::exp(g.ethanol + e1) * p1 / p, y, 1e-14) << e.x << ' ' << p;
        EXPECT_NEAR((1 - e.x) * std::exp(g.water + e2) * p2 / p, z, 1e-14) << e.x << ' ' << p;
        if (e.x > 0.0 && e.x < 1.0) {
            EXPECT_NEAR(e.ln_alpha, std::log(y * (1 - e.x) / (z * e.x)), 1e-13) << e.x << ' ' << p;
        }
    });
}

TEST(VapourLiquid, SolversAreInversesOfEachOther) {
    over_the_range([](equilibrium<double> const& e) {
        auto const b = bubble_at_temperature(e.x, e.temperature);
        EXPECT_NEAR(b.pressure / e.pressure, 1.0, 2e-14);
        EXPECT_NEAR(b.y, e.y, 2e-14);
        EXPECT_NEAR(b.ln_alpha, e.ln_alpha, 2e-14);
        auto const d = dew_at_pressure(e.y, e.pressure);
        EXPECT_NEAR(d.x, e.x, 2e-14);
        EXPECT_NEAR(d.temperature, e.temperature, 2e-12);
        auto const c = dew_at_temperature(e.y, e.temperature);
        EXPECT_NEAR(c.x, e.x, 2e-14);
        EXPECT_NEAR(c.pressure / e.pressure, 1.0, 5e-14);
        EXPECT_EQ(c.y, e.y);
    });
}

TEST(VapourLiquid, DilutedToTheEnd) {
    // relative, not absolute, digits remain
    auto const limit = bubble_at_pressure(0.0, 101325.0);
    for (double const x : {1e-300, 1e-100, 1e-16, 1e-9}) {
        auto const e = bubble_at_pressure(x, 101325.0);
        EXPECT_NEAR(e.y / x / std::exp(limit.ln_alpha), 1.0, 1e-6) << x;
        EXPECT_NEAR(dew_at_pressure(e.y, 101325.0).x / x, 1.0, 1e-13) << x;
        EXPECT_NEAR(dew_at_temperature(e.y, e.temperature).x / x, 1.0, 1e-13) << x;
    }
}

TEST(VapourLiquid, PureLiquidsBoilWhereTheirSaturationSays) {
    for (double const p : {1e3, 20e3, 101325.0, 190e3}) {
        auto const w = bubble_at_pressure(0.0, p);
        EXPECT_NEAR(w.temperature, correlation::water_saturation_wagner_pruss::temperature(p), 1e-12);
        EXPECT_EQ(w.y, 0.0);
        auto const a = bubble_at_pressure(1.0, p);
        EXPECT_NEAR(a.temperature, correlation::ethanol_saturation_poling::temperature(p), 1e-12);
        EXPECT_EQ(a.y, 1.0);
    }
}

TEST(VapourLiquid, SlopesAreTheDerivatives) {
    over_the_range([](equilibrium<double> const& e) {
        dual const x = make_fvar<double, 1>(e.x);
        auto const isobar = bubble_at_pressure<dual>(x, dual(e.pressure));
        auto const s = along_isobar(e);
        EXPECT_NEAR(isobar.temperature.derivative(1), s.temperature_x,
                    1e-12 * (1 + std::abs(s.temperature_x)));
        EXPECT_NEAR(isobar.y.derivative(1), s.y_x, 1e-12 * (1 + s.y_x));
        EXPECT_NEAR(isobar.ln_alpha.derivative(1), s.ln_alpha_x, 1e-12 * (1 + std::abs(s.ln_alpha_x)));
        auto const isotherm = bubble_at_temperature<dual>(x, dual(e.temperature));
        auto const r = along_isotherm(e);
        EXPECT_NEAR(isotherm.pressure.derivative(1) / e.pressure, r.pressure_x / e.pressure, 1e-12 * 20);
        EXPECT_NEAR(isotherm.y.derivative(1), r.y_x, 1e-12 * (1 + r.y_x));
        EXPECT_NEAR(isotherm.ln_alpha.derivative(1), r.ln_alpha_x, 1e-12 * (1 + std::abs(r.ln_alpha_x)));
        EXPECT_GT(s.y_x, 0.0);  // a richer liquid gives a richer vapour
        EXPECT_GT(r.y_x, 0.0);
    });
}

TEST(VapourLiquid, InversesCarryDerivatives) {
    for (double const x : {0.02, 0.2, 0.7, 0.95}) {
        auto const e = bubble_at_pressure(x, 101325.0);
        auto const d = dew_at_pressure<dual>(make_fvar<double, 1>(e.y), dual(e.pressure));
        EXPECT_NEAR(d.x.derivative(1) * along_isobar(e).y_x, 1.0, 1e-11) << x;
        EXPECT_NEAR(d.temperature.derivative(1) * along_isobar(e).y_x / along_isobar(e).temperature_x, 1.0,
                    1e-11)
            << x;
    }
    double const h = 50.0;
    auto const a = azeotrope_at_pressure<dual>(make_fvar<double, 1>(70e3));
    double const secant = (azeotrope_at_pressure(70e3 + h).x - azeotrope_at_pressure(70e3 - h).x) / (2 * h);
    EXPECT_NEAR(a.x.derivative(1) / secant, 1.0, 1e-5);
}

TEST(VapourLiquid, Azeotrope) {
    for (double const p : {11e3, 20e3, 50e3, 101325.0, 200e3, 280e3}) {
        auto const a = azeotrope_at_pressure(p);
        EXPECT_NEAR(a.y, a.x, 4e-16) << p;
        EXPECT_NEAR(azeotrope_at_temperature(a.temperature).x, a.x, 1e-13) << p;
        EXPECT_NEAR(along_isobar(a).temperature_x, 0.0, 1e-10)
            << p;  // Gibbs and Konovalov: the least boiling point
        EXPECT_LT(a.temperature, bubble_at_pressure(a.x - 0.01, p).temperature);
        EXPECT_LT(a.temperature, bubble_at_pressure(1.0, p).temperature);
    }
    EXPECT_TRUE(std::isnan(azeotrope_at_pressure(5e3).x));
    EXPECT_TRUE(std::isnan(azeotrope_at_temperature(290.0).temperature));
}

// One crossing of y = x at most, from 0 to 120 °C: none in the cold, one from where the azeotrope appears
// (near 303 K; a step around it is left open).
TEST(VapourLiquid, NoFalseAzeotrope) {
    for (double t = lowest_kelvin; t <= highest_kelvin; t += 2.0) {
        int crossings = 0;
        bool above = bubble_at_temperature(0.0, t).ln_alpha > 0.0;
        EXPECT_TRUE(above) << t;
        for (int i = 1; i <= 500; ++i) {
            bool const now = bubble_at_temperature(i / 500.0, t).ln_alpha > 0.0;
            if (now != above) ++crossings;
            above = now;
        }
        EXPECT_LE(crossings, 1) << t;
        if (t > 304.0) {
            EXPECT_EQ(crossings, 1) << t;
        }
        if (t < 302.0) {
            EXPECT_EQ(crossings, 0) << t;
        }
    }
}

TEST(VapourLiquid, WorksInOtherScalars) {
    using digits_50 = boost::multiprecision::cpp_bin_float_50;
    for (double const x : {0.0, 0.05, 0.5, 0.95, 1.0}) {
        auto const e = bubble_at_pressure(x, 101325.0);
        auto const exact = bubble_at_pressure(digits_50(x), digits_50(101325));
        EXPECT_NEAR(static_cast<double>(exact.temperature), e.temperature, 1e-12);
        EXPECT_NEAR(static_cast<double>(exact.y), e.y, 5e-15);
        EXPECT_NEAR(static_cast<double>(exact.ln_alpha), e.ln_alpha, 2e-14);
        auto const back = bubble_at_temperature(digits_50(x), exact.temperature);
        EXPECT_LT(abs(back.pressure / digits_50(101325) - 1),
                  digits_50(1e-46));  // the solvers end at rounding
        auto const rough = bubble_at_pressure(static_cast<float>(x), 101325.0F);
        EXPECT_NEAR(rough.temperature, e.temperature, 1e-3);
        EXPECT_NEAR(rough.y, e.y, 1e-5);
    }
}

// The documented number of rounds plus one: a scalar that is no floating-point type could carry derivatives,
// which converge one round later.
TEST(VapourLiquid, SearchesTakeFewRounds) {
    over_the_range([](equilibrium<double> const& e) {
        counting::rounds = 0;
        bubble_at_pressure(counting(e.x), counting(e.pressure));
        EXPECT_EQ(counting::rounds, 2 + 1) << e.x << ' ' << e.pressure;
        counting::rounds = 0;
        bubble_at_temperature(counting(e.x), counting(e.temperature));
        EXPECT_GE(counting::rounds, 1 + 1) << e.x << ' ' << e.temperature;
        EXPECT_LE(counting::rounds, 3 + 1) << e.x << ' ' << e.temperature;
    });
    counting::rounds = 0;
    bubble_at_pressure(counting(0.5), counting(std::numeric_limits<double>::quiet_NaN()));
    EXPECT_EQ(counting::rounds, 1);  // NaN ends a search at once
}

// Dew points and azeotropes are searched among bubble points. Their number shows the quality of the first
// guess; averages, because rounding decides about the last one or two.
TEST(VapourLiquid, DewPointsAndAzeotropesTakeFewBubblePoints) {
    int bubbles = 0, searches = 0;
    over_the_range([&](equilibrium<double> const& e) {
        auto const bubble = [&](double x) {
            ++bubbles;
            return bubble_at_temperature(x, e.temperature);
        };
        auto const slope = [](equilibrium<double> const& at) { return along_isotherm(at).y_x; };
        EXPECT_NEAR(detail::dew(e.y, bubble, slope).x, e.x, 2e-14);
        ++searches;
    });
    EXPECT_LT(bubbles, 7 * searches);
    bubbles = searches = 0;
    for (double t = 310.0; t <= 390.0; t += 2.0) {
        auto const bubble = [&](double x) {
            ++bubbles;
            return bubble_at_temperature(x, t);
        };
        auto const slope = [](equilibrium<double> const& at) { return along_isotherm(at).ln_alpha_x; };
        auto const a = detail::azeotrope<double>(bubble, slope);
        EXPECT_NEAR(a.y, a.x, 1e-15) << t;
        ++searches;
    }
    EXPECT_LT(2 * bubbles, 17 * searches);
}

TEST(VapourLiquid, CoversItsRangeOnlyAndPassesNaNThrough) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(covers(273.16) && covers(393.15));
    EXPECT_FALSE(covers(273.15) || covers(393.2) || covers(nan));
    EXPECT_TRUE(std::isnan(bubble_at_temperature(nan, 300.0).pressure));
    EXPECT_TRUE(std::isnan(bubble_at_temperature(0.5, nan).y));
    EXPECT_TRUE(std::isnan(bubble_at_pressure(0.5, nan).temperature));
    EXPECT_TRUE(std::isnan(bubble_at_pressure(nan, 1e5).temperature));
    EXPECT_TRUE(std::isnan(dew_at_pressure(nan, 1e5).x) && std::isnan(dew_at_pressure(0.5, nan).x));
    EXPECT_TRUE(std::isnan(dew_at_temperature(nan, 350.0).x) && std::isnan(dew_at_temperature(0.5, nan).x));
    EXPECT_TRUE(std::isnan(azeotrope_at_pressure(nan).x) && std::isnan(azeotrope_at_temperature(nan).x));
}

}  // namespace
}  // namespace aqueth::model::vapour_liquid
