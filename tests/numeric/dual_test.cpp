// SPDX-License-Identifier: BSL-1.0
#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/dual.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth::numeric {
namespace {

/// slope by central differences, accurate to about 1e-9 where the curvature of f is small within h
template <class F>
double difference(F const& f, double x, double h) {
    double const once = (f(x + h) - f(x - h)) / (2.0 * h);
    double const half = (f(x + h / 2.0) - f(x - h / 2.0)) / h;
    return (4.0 * half - once) / 3.0;
}

/// compares the derivative that a generic function carries with its differences
template <class F>
void expect_slope(F const& f, double x, double h, double tolerance, char const* what) {
    dual const carried = f(dual(x, 1.0));
    double const slope = difference(f, x, h);
    EXPECT_NEAR(carried.value, f(x), 1e-13 * std::abs(f(x))) << what;
    EXPECT_NEAR(carried.derivative, slope, tolerance * std::abs(slope)) << what;
}

TEST(Dual, FollowsTheRulesOfDifferentiation) {
    auto const arithmetic = [](auto x) {
        auto y = -x;
        y += 3.0;
        y *= x;
        y -= 1.0 / x;
        y /= x + 2.0;
        return +y - 0.5 * x;
    };
    expect_slope(arithmetic, 1.3, 1e-2, 1e-8, "arithmetic");
}

TEST(Dual, DifferentiatesTheFunctionsThatKernelsUse) {
    using std::abs, std::cos, std::cosh, std::exp, std::log, std::pow, std::sin, std::sinh, std::sqrt;
    expect_slope([](auto x) { return exp(x); }, 0.7, 1e-2, 1e-9, "exp");
    expect_slope([](auto x) { return log(x); }, 0.7, 1e-2, 1e-7, "log");
    expect_slope([](auto x) { return sqrt(x); }, 0.7, 1e-2, 1e-7, "sqrt");
    expect_slope([](auto x) { return sin(x); }, 0.7, 1e-2, 1e-8, "sin");
    expect_slope([](auto x) { return cos(x); }, 0.7, 1e-2, 1e-8, "cos");
    expect_slope([](auto x) { return sinh(x); }, 0.7, 1e-2, 1e-8, "sinh");
    expect_slope([](auto x) { return cosh(x); }, 0.7, 1e-2, 1e-8, "cosh");
    expect_slope([](auto x) { return abs(x); }, -0.7, 1e-2, 1e-8, "abs");
    expect_slope([](auto x) { return pow(x, 2.3); }, 0.7, 1e-2, 1e-7, "a constant power");
    expect_slope([](auto x) { return pow(x, x); }, 0.7, 1e-2, 1e-7, "a power that varies");
    EXPECT_EQ(pow(dual(0.0, 1.0), dual(2.0)).derivative, 0.0);
}

TEST(Dual, ComparesByValue) {
    EXPECT_TRUE(dual(1.0, 5.0) == dual(1.0, -5.0));
    EXPECT_TRUE(dual(1.0, 5.0) < 2.0);
    EXPECT_TRUE(3.0 > dual(2.0, 9.0));
    EXPECT_FALSE(dual(std::numeric_limits<double>::quiet_NaN()) == dual(0.0));
    EXPECT_EQ(std::numeric_limits<dual>::epsilon(), std::numeric_limits<double>::epsilon());
}

// Inverses stop at rounding; the last Newton step must still carry the derivative of the implicit function.
TEST(Dual, GoesThroughTheKernelsAndTheirInverses) {
    namespace r22 = correlation::oiml_r22;
    for (double const w : {0.05, 0.3339, 0.75, 0.99}) {
        auto const exact = r22::density_with_derivatives(w, 18.0);
        EXPECT_NEAR(r22::density(dual(w, 1.0), dual(18.0)).derivative, exact.d_mass_fraction, 1e-9);
        EXPECT_NEAR(r22::density(dual(w), dual(18.0, 1.0)).derivative, exact.d_temperature, 1e-10);
        dual const inverse = r22::mass_fraction_from_density(dual(exact.value, 1.0), dual(18.0));
        EXPECT_NEAR(inverse.value, w, 1e-14);
        EXPECT_NEAR(inverse.derivative * exact.d_mass_fraction, 1.0, 1e-10);
        dual const warmer = r22::mass_fraction_from_density(dual(exact.value), dual(18.0, 1.0));
        EXPECT_NEAR(warmer.derivative * exact.d_mass_fraction / -exact.d_temperature, 1.0, 1e-10);
    }
    auto const q = [](auto w) { return r22::volume_fraction_from_mass_fraction(w, decltype(w)(20.0)); };
    expect_slope(q, 0.4, 1e-3, 1e-9, "strength by volume");
    auto const w_of = [](auto v) { return r22::mass_fraction_from_volume_fraction(v, decltype(v)(20.0)); };
    expect_slope(w_of, 0.4, 1e-3, 1e-8, "and its inverse");
}

TEST(Dual, GoesThroughBoilingAndHeats) {
    namespace vle = model::vapour_liquid;
    auto const bubble = [](auto x) { return vle::bubble_at_pressure(x, decltype(x)(101325.0)).temperature; };
    expect_slope(bubble, 0.2, 1e-3, 1e-7, "boiling temperature over the liquid");
    auto const under = [](auto p) { return vle::bubble_at_pressure(decltype(p)(0.2), p).temperature; };
    expect_slope(under, 95000.0, 500.0, 1e-7, "boiling temperature over the pressure");
    auto const vapour = [](auto x) { return vle::bubble_at_pressure(x, decltype(x)(101325.0)).y; };
    expect_slope(vapour, 0.2, 1e-3, 1e-7, "strength of the vapour");
    auto const latent = [](auto t) { return model::enthalpy::ethanol_vaporization(t); };
    expect_slope(latent, 340.0, 0.5, 1e-7, "heat of vaporization");
    auto const warm = [](auto t) { return model::enthalpy::liquid(decltype(t)(0.3), t); };
    expect_slope(warm, 320.0, 0.5, 1e-7, "enthalpy of a liquid");
    auto const air = [](auto h) { return correlation::icao_atmosphere::pressure(h); };
    expect_slope(air, 650.0, 10.0, 1e-8, "pressure of the air");
}

}  // namespace
}  // namespace aqueth::numeric
