// SPDX-License-Identifier: BSL-1.0
// The method for stiff equations: its coefficients by the order conditions, its steps by closed-form
// solutions.
#include <aqueth/numeric/diagonally_implicit.hpp>

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

namespace aqueth::numeric {
namespace {

using weights = std::array<double, sdirk4::stages>;

double a(std::size_t i, std::size_t j) { return i == j ? sdirk4::gamma : j < i ? sdirk4::before[i][j] : 0.0; }
/// sum over j of a(i, j) v(j)
weights times_a(weights const& v) {
    weights sum{};
    for (std::size_t i = 0; i < v.size(); ++i)
        for (std::size_t j = 0; j < v.size(); ++j) sum[i] += a(i, j) * v[j];
    return sum;
}
weights product(weights x, weights const& y) {
    for (std::size_t i = 0; i < x.size(); ++i) x[i] *= y[i];
    return x;
}
double dot(weights const& x, weights const& y) {
    double sum = 0.0;
    for (double each : product(x, y)) sum += each;
    return sum;
}

/// what the weights of a point at theta miss in the conditions of order one to four (E. Hairer, S. P.
/// Norsett, G. Wanner, Solving Ordinary Differential Equations I, 2nd ed. 1993, II.2)
std::array<double, 8> missed(weights const& b, double theta) {
    weights const one{1.0, 1.0, 1.0, 1.0, 1.0};
    weights const c = times_a(one);
    weights const c2 = product(c, c);
    double const t2 = theta * theta, t3 = t2 * theta, t4 = t3 * theta;
    return {dot(b, one) - theta,
            dot(b, c) - t2 / 2,
            dot(b, c2) - t3 / 3,
            dot(b, times_a(c)) - t3 / 6,
            dot(b, product(c2, c)) - t4 / 4,
            dot(b, product(c, times_a(c))) - t4 / 8,
            dot(b, times_a(c2)) - t4 / 12,
            dot(b, times_a(times_a(c))) - t4 / 24};
}
weights end_weights() {
    weights b{};
    for (std::size_t j = 0; j < b.size(); ++j) b[j] = a(4, j);
    return b;
}

TEST(Sdirk4, EndIsOfFourthOrder) {
    for (double each : missed(end_weights(), 1.0)) EXPECT_NEAR(each, 0.0, 1e-14);
}
TEST(Sdirk4, ErrorIsAgainstAMethodOfThirdOrder) {
    weights b = end_weights();
    for (std::size_t i = 0; i < b.size(); ++i) b[i] -= sdirk4::error[i];
    auto const miss = missed(b, 1.0);
    for (std::size_t k = 0; k < 4; ++k) EXPECT_NEAR(miss[k], 0.0, 1e-14) << k;
    EXPECT_GT(std::abs(miss[4]), 1e-3);  // and not of fourth
}
TEST(Sdirk4, InsideIsOfThirdOrder) {
    for (double theta : {0.0, 0.1, 0.37, 0.5, 0.93, 1.0}) {
        weights b{};
        for (std::size_t s = 0; s < b.size(); ++s) b[s] = sdirk4::weight(s, theta);
        auto const miss = missed(b, theta);
        for (std::size_t k = 0; k < 5; ++k) EXPECT_NEAR(miss[k], 0.0, 1e-14) << theta << " " << k;
    }
    for (std::size_t s = 0; s < sdirk4::stages; ++s) EXPECT_NEAR(sdirk4::weight(s, 1.0), a(4, s), 1e-14) << s;
}

/// y' = -y + z and 0 = y^2 - z: y = 1/(1 + C e^t)
struct with_an_equation {
    static constexpr double c = 1.0;
    static double exact(double t) { return 1.0 / (1.0 + c * std::exp(t)); }

    bool solve(double const* known, double reach, double* y) const {
        // y - known = reach (y^2 - y), the root that continues the solution
        double const b = 1.0 + reach;
        y[0] = 2.0 * known[0] / (b + std::sqrt(b * b - 4.0 * reach * known[0]));
        y[1] = y[0] * y[0];
        return true;
    }
    void damp(double* e, double) const { e[1] = 0.0; }
};

/// greatest errors at the ends of equal steps to t = 2, and in their middles
std::array<double, 2> errors(int steps) {
    std::vector<double> y{with_an_equation::exact(0.0), 0.25};
    std::vector<double> const scale{1.0, 1.0};
    double const h = 2.0 / steps;
    std::array<double, 2> greatest{};
    for (int i = 0; i < steps; ++i) {
        auto const step = take_stiff_step(with_an_equation(), y, nullptr, h, scale);
        std::vector<double> middle;
        step.at(0.5, middle);
        EXPECT_EQ(step.at(0.5, 0), middle[0]);
        greatest[1] = (std::max)(greatest[1], std::abs(middle[0] - with_an_equation::exact((i + 0.5) * h)));
        y.assign(step.end(), step.end() + 2);
        greatest[0] = (std::max)(greatest[0], std::abs(y[0] - with_an_equation::exact((i + 1) * h)));
        EXPECT_EQ(y[1], y[0] * y[0]);  // the equation without a derivative holds at the end
    }
    return greatest;
}
TEST(StiffStep, ConvergesWithItsOrder) {
    auto const coarse = errors(8), fine = errors(16);
    EXPECT_NEAR(std::log2(coarse[0] / fine[0]), 4.0, 0.3);
    EXPECT_GT(std::log2(coarse[1] / fine[1]), 3.6);  // a local error of fourth order
    EXPECT_LT(fine[0], 1e-7);
}

/// y' = -k (y - 1): any step must come to 1 if k is large
struct decay {
    double k;
    bool solve(double const* known, double reach, double* y) const {
        y[0] = (known[0] + reach * k) / (1.0 + reach * k);
        return true;
    }
    void damp(double* e, double reach) const { e[0] /= 1.0 + reach * k; }
};
TEST(StiffStep, LongStepsDampWhatIsFast) {
    for (double k : {1.0, 1e3, 1e6, 1e12}) {
        auto const step = take_stiff_step(decay{k}, {3.0}, nullptr, 1.0, {1.0});
        EXPECT_LE(std::abs(step.end()[0] - 1.0), k == 1.0 ? 0.75 : 40.0 / k)
            << k;  // L-stable: falls with 1/k
    }
    auto const exact = 1.0 + 2.0 * std::exp(-1.0);
    auto const step = take_stiff_step(decay{1.0}, {3.0}, nullptr, 1.0, {1.0});
    EXPECT_NEAR(step.end()[0], exact, 1e-3);
    EXPECT_GT(step.error, 1e-5);
    EXPECT_LT(step.error, 1e-1);
}

struct unsolvable {
    bool solve(double const*, double, double*) const { return false; }
    void damp(double*, double) const {}
};
TEST(StiffStep, WithoutASolutionHasAnInfiniteError) {
    EXPECT_EQ(take_stiff_step(unsolvable(), {1.0}, nullptr, 1.0, {1.0}).error,
              std::numeric_limits<double>::infinity());
}

}  // namespace
}  // namespace aqueth::numeric
