// SPDX-License-Identifier: BSL-1.0
#include <aqueth/numeric/array_loop.hpp>
#include <aqueth/numeric/cubic_table.hpp>
#include <aqueth/numeric/exponential.hpp>
#include <aqueth/numeric/lanes.hpp>
#include <aqueth/numeric/pair.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/numeric/runge_kutta.hpp>

#include <array>
#include <bit>
#include <cmath>
#include <cstdint>
#include <gtest/gtest.h>
#include <limits>
#include <type_traits>
#include <utility>

namespace aqueth::numeric {
namespace {

// 1 + 2x + 3x2 at 2: value 17, slope 2 + 6x = 14
constexpr std::array<double, 3> quadratic{1.0, 2.0, 3.0};
static_assert(polynomial(quadratic, 2.0) == 17.0);
static_assert(polynomial_in_one_chain(quadratic, 2.0) == 17.0);
static_assert(polynomial_with_slope(quadratic, 2.0).value == 17.0);
static_assert(polynomial_with_slope(quadratic, 2.0).slope == 14.0);
static_assert(polynomial(std::array<double, 1>{5.0}, 3.0) == 5.0);

// Every length takes a path of its own: x^k added up at 2 gives 2^N - 1.
template <std::size_t N>
constexpr bool sums_powers() {
    std::array<double, N> ones{};
    for (double& each : ones) each = 1.0;
    return polynomial(ones, 2.0) == static_cast<double>((1u << N) - 1u);
}
static_assert(sums_powers<1>() && sums_powers<2>() && sums_powers<3>() && sums_powers<5>() &&
              sums_powers<6>() && sums_powers<7>() && sums_powers<8>() && sums_powers<12>());

// (1 + y) + 2 x: rows are powers of x
static_assert(polynomial(std::make_tuple(std::array<double, 2>{1.0, 1.0}, std::array<double, 1>{2.0}), 3.0,
                         4.0) == 11.0);
static_assert(polynomial_in_one_chain(std::make_tuple(std::array<double, 2>{1.0, 1.0},
                                                      std::array<double, 1>{2.0}),
                                      3.0, 4.0) == 11.0);

// x^7 + x^4 + x at 2: 146, 7 x^6 + 4 x^3 + 1 = 481, 21 x^5 + 6 x^2 = 696, 35 x^4 + 4 x = 568
constexpr std::array<pair<double>, 4> halves{{{0, 1}, {0, 0}, {1, 0}, {0, 1}}};
constexpr auto seventh = halved_polynomial_taylor(halves, 2.0);
static_assert(halved_polynomial(halves, 2.0) == 146.0);
static_assert(seventh[0] == 146.0 && seventh[1] == 481.0 && seventh[2] == 696.0);
constexpr std::array<double, 8> in_one{0, 1, 0, 0, 1, 0, 0, 1};
static_assert(polynomial_taylor<4>(in_one, 2.0) == taylor_terms<double, 4>{146.0, 481.0, 696.0, 568.0});
static_assert(polynomial_taylor<2>(std::array<double, 2>{1.0, 3.0}, 2.0) ==
              taylor_terms<double, 2>{7.0, 3.0});

// Three intervals: their beginnings, a middle, the end, which belongs to the last, and points outside.
static_assert(interval_of<3>(0.0).index == 0 && interval_of<3>(0.0).place == 0.0);
static_assert(interval_of<3>(1.5).index == 1 && interval_of<3>(1.5).place == 0.5);
static_assert(interval_of<3>(3.0).index == 2 && interval_of<3>(3.0).place == 1.0);

// The nearest interval extends to any argument.
static_assert(nearest_interval_of<3>(1.5).index == 1 && nearest_interval_of<3>(1.5).place == 0.5);
static_assert(nearest_interval_of<3>(3.0).index == 2 && nearest_interval_of<3>(3.0).place == 1.0);
static_assert(nearest_interval_of<3>(-2.0).index == 0 && nearest_interval_of<3>(-2.0).place == -2.0);
static_assert(nearest_interval_of<3>(1e300).index == 2 && nearest_interval_of<3>(1e300).place == 1e300);

TEST(Numeric, ExponentialIsThatOfTheStandardLibrary) {
    EXPECT_EQ(exponential(0.0), 1.0);
    // Densely where volatilities are, and as far as it goes.
    for (auto const& [lowest, highest] : {std::pair{-4.0, 4.0}, std::pair{-700.0, 700.0}}) {
        for (int k = 0; k <= 100000; ++k) {
            double const x = lowest + (highest - lowest) * k / 100000.0;
            double const wanted = std::exp(x);
            ASSERT_LE(std::abs(exponential(x) - wanted), 2.0 * (std::nextafter(wanted, 1e308) - wanted)) << x;
        }
    }
}

#if AQUETH_VECTOR_BYTES > 0
// Lanes are what the same formula gives for one number after the other, wherever they are in memory.
template <real T, std::size_t Vectors>
void expect_lanes_are_scalars() {
    using V = lanes<T, AQUETH_VECTOR_BYTES, Vectors>;
    static_assert(lanes_of<V> == Vectors * AQUETH_VECTOR_BYTES / sizeof(T));
    static_assert(std::is_constructible_v<V, int> && std::is_constructible_v<V, double>);
    static_assert(!std::is_constructible_v<V, long long>);  // 2^53 + 1 would round
    std::array<T, lanes_of<V> + 3> x{}, y{}, out{};
    for (std::size_t i = 0; i < x.size(); ++i) x[i] = T(static_cast<int>(i) - 4), y[i] = T(8 << (i % 3));
    auto const expect = [&](V const& all, auto const& one) {
        for (std::size_t offset = 0; offset < 3; ++offset) {
            out.fill(T(-99));
            store(all, out.data() + offset);
            for (std::size_t i = 0; i < lanes_of<V>; ++i) EXPECT_EQ(out[i + offset], one(x[i + 1], y[i + 1]));
            for (std::size_t i = 0; i < 3; ++i)  // and nothing else is written
                EXPECT_EQ(out[i < offset ? i : i + lanes_of<V>], T(-99));
        }
    };
    V const a = load<V>(x.data() + 1), b = load<V>(y.data() + 1);
    expect(a + b, [](T p, T q) { return p + q; });
    expect(a - b, [](T p, T q) { return p - q; });
    expect(a * b, [](T p, T q) { return p * q; });
    expect(a / b, [](T p, T q) { return p / q; });  // exact, as q is a power of two
    expect(multiply_add(a, b, V(3.0)), [](T p, T q) { return p * q + T(3); });
    expect(polynomial(quadratic, a), [](T p, T) { return polynomial(quadratic, p); });
}

TEST(Numeric, LanesAreScalarsSideBySide) {
    expect_lanes_are_scalars<double, 1>();
    expect_lanes_are_scalars<double, 4>();
    expect_lanes_are_scalars<float, 2>();
    expect_lanes_are_scalars<float, 4>();
}
#endif

TEST(Interval, NearestToNoNumberIsTheFirst) {
    auto const none = nearest_interval_of<3>(std::numeric_limits<double>::quiet_NaN());
    EXPECT_EQ(none.index, 0u);
    EXPECT_TRUE(std::isnan(none.place));
}

TEST(Interval, HasNoPlaceOutside) {
    for (double const x : {-1e-300, 3.0000001, -1e300, 1e300, std::numeric_limits<double>::infinity(),
                           std::numeric_limits<double>::quiet_NaN()}) {
        EXPECT_EQ(interval_of<3>(x).index, 0u) << x;
        EXPECT_TRUE(std::isnan(interval_of<3>(x).place)) << x;
    }
}

TEST(ArrayLoop, OutsideIsWhatComparisonsSay) {
    auto const is_outside = [](auto x, auto low, auto high) {
        return (outside(x, low, high) >> (8 * sizeof(x) - 1)) != 0;
    };
    // Numbers of all sizes and both signs, infinities and NaN, by their bits; and the neighbours of the ends.
    for (auto const& [low, high] : {std::pair{0.0f, 1.0f},
                                    {1e-30f, 1.0f},
                                    {3.8e-6f, 0.999f},
                                    {0.0f, 60.0f},
                                    {2.0f, 3e38f},
                                    {1e-45f, 1e-44f},
                                    {5.0f, 5.0f}}) {
        for (std::uint64_t bits = 0; bits <= 0xffffffffu; bits += 9973) {
            float const x = std::bit_cast<float>(static_cast<std::uint32_t>(bits));
            EXPECT_EQ(is_outside(x, low, high), !(x >= low && x <= high) || std::signbit(x)) << x;
        }
        for (float const end : {low, high}) {
            for (float const x : {end, std::nextafter(end, 1e38f), std::nextafter(end, -1.0f), -end}) {
                EXPECT_EQ(is_outside(x, low, high), !(x >= low && x <= high) || std::signbit(x)) << x;
            }
        }
    }
    double const nan = std::numeric_limits<double>::quiet_NaN(),
                 inf = std::numeric_limits<double>::infinity();
    for (double const x : {-1e300, -2.0, -1.0, -0.5, -5e-324, -0.0, 0.0, 5e-324, 1e-16, 1.0,
                           1.0000000000000002, 2.0, 1e300, inf, -inf, nan, -nan}) {
        EXPECT_EQ(is_outside(x, 0.0, 1.0), !(x >= 0.0 && x <= 1.0) || std::signbit(x)) << x;
        EXPECT_EQ(is_outside(x, 1e-14, 1.0), !(x >= 1e-14 && x <= 1.0)) << x;
    }
}

TEST(ArrayLoop, ColumnsKeepWhatIsSet) {
    columns<double, 3> kept;
    for (std::size_t i = 0; i < block; ++i) {
        double const x = static_cast<double>(i);
        kept.set(i, {x, -x, x * x});
    }
    for (std::size_t i = 0; i < block; ++i) {
        double const x = static_cast<double>(i);
        EXPECT_EQ(kept[i], (std::array<double, 3>{x, -x, x * x})) << i;
    }
}

TEST(ArrayLoop, DoubtBecomesNoNumber) {
    EXPECT_EQ(certain_or_nan(doubtful<double>{2.5, 0}), 2.5);
    EXPECT_EQ(certain_or_nan(doubtful<float>{2.5f, 0x7fffffffu}), 2.5f);  // only the highest bit counts
    EXPECT_TRUE(std::isnan(certain_or_nan(doubtful<double>{2.5, outside(-1.0, 0.0, 1.0)})));
    EXPECT_TRUE(std::isnan(certain_or_nan(doubtful<float>{0.0f, 0x80000000u})));
}

TEST(Root, StepsOfHigherOrderMultiplyTheDigits) {
    // x^2 - 2 from a miss of 1e-2: the next miss is of the order of its cube, or its fourth power.
    double const root = std::sqrt(2.0), x = root + 1e-2;
    double const halley = std::abs(x + halley_step<double>({x * x - 2.0, 2.0 * x, 1.0}) - root);
    auto const third = householder_step<double>({x * x - 2.0, 2.0 * x, 1.0, 0.0});
    double const householder = std::abs(x + third.step - root);
    EXPECT_LT(halley, 1e-6);
    EXPECT_GT(halley, 1e-8);
    EXPECT_LT(householder, 1e-8);
    EXPECT_GT(householder, 1e-10);
}

TEST(Root, AStepKnowsTheSlopeWhereItLeads) {
    // x^3 + x^2 - 2, whose root is 1 and slope there 5; the slope is off by the cube of the step.
    auto const miss = [](double off) {
        double const x = 1.0 + off;
        auto const found =
            householder_step<double>({x * x * x + x * x - 2.0, 3.0 * x * x + 2.0 * x, 3.0 * x + 1.0, 1.0});
        return std::abs(5.0 * found.inverse_slope - 1.0);
    };
    EXPECT_LT(miss(1e-2), 3e-6);
    EXPECT_NEAR(miss(1e-2) / miss(5e-3), 8.0, 0.5);
    EXPECT_NEAR(miss(-1e-2) / miss(-5e-3), 8.0, 0.5);
}

constexpr auto square_less_two = [](double x) { return value_and_slope<double>{x * x - 2.0, 2.0 * x}; };
static_assert(bracketed_newton(square_less_two, 0.0, 2.0, 1.0, 1e-15) > 1.4142135623);

TEST(Root, FindsARootToWorkingPrecision) {
    EXPECT_DOUBLE_EQ(bracketed_newton(square_less_two, 0.0, 2.0, 0.1, 4e-16), std::sqrt(2.0));
    EXPECT_DOUBLE_EQ(bracketed_newton(square_less_two, 0.0, 2.0, 2.0, 4e-16), std::sqrt(2.0));
}

TEST(Root, ConvergesWhereNewtonAloneDiverges) {
    // Newton's method for arctan runs away from any guess beyond 1.39.
    auto const arctangent = [](double x) {
        return value_and_slope<double>{std::atan(x), 1.0 / (1.0 + x * x)};
    };
    for (double const guess : {-40.0, -3.0, 2.0, 25.0, 49.0}) {
        EXPECT_NEAR(bracketed_newton(arctangent, -50.0, 50.0, guess, 1e-16), 0.0, 1e-15) << guess;
    }
}

TEST(Root, ConvergesThroughAFlatPlace) {
    // x^9 - tiny: nearly flat around the root's neighbourhood of zero.
    auto const flat = [](double x) {
        return value_and_slope<double>{std::pow(x, 9) - 1e-9, 9.0 * std::pow(x, 8)};
    };
    EXPECT_NEAR(bracketed_newton(flat, 0.0, 1.0, 1.0, 1e-25), 0.1, 1e-15);
}

TEST(Root, FallingFunctionsServeAsWell) {
    auto const falling = [](double x) { return value_and_slope<double>{2.0 - x * x, -2.0 * x}; };
    EXPECT_DOUBLE_EQ(bracketed_newton(falling, 0.0, 2.0, 0.5, 4e-16), std::sqrt(2.0));
}

TEST(Root, RootAtAnEndIsThatEnd) {
    auto const line = [](double x) { return value_and_slope<double>{x, 1.0}; };
    EXPECT_EQ(bracketed_newton(line, 0.0, 1.0, 0.7, 1e-16), 0.0);
    auto const line_to_one = [](double x) { return value_and_slope<double>{x - 1.0, 1.0}; };
    EXPECT_EQ(bracketed_newton(line_to_one, 0.0, 1.0, 0.7, 1e-16), 1.0);
}

TEST(Root, RootOutsideGivesTheNearerEnd) {
    auto const line = [](double x) { return value_and_slope<double>{x - 1.5, 1.0}; };
    EXPECT_EQ(bracketed_newton(line, 0.0, 1.0, 0.7, 1e-16), 1.0);
    auto const below = [](double x) { return value_and_slope<double>{x + 0.5, 1.0}; };
    EXPECT_EQ(bracketed_newton(below, 0.0, 1.0, 0.7, 1e-16), 0.0);
}

TEST(Root, NaNInNaNOut) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    auto const broken = [&](double) { return value_and_slope<double>{nan, 1.0}; };
    EXPECT_TRUE(std::isnan(bracketed_newton(broken, 0.0, 1.0, 0.5, 1e-16)));
}

// y' = -2 t y, y(0) = 1: y = exp(-t^2)
state<1> bell(double t, state<1> const& y) { return {-2.0 * t * y[0]}; }

double error_of(int steps) {
    state<1> y{1.0};
    state<1> slope = bell(0.0, y);
    double const h = 1.5 / steps;
    for (int i = 0; i < steps; ++i) {
        auto const step = dormand_prince(bell, i * h, y, slope, h, {1.0});
        y = step.end;
        slope = step.slope;
    }
    return std::abs(y[0] - std::exp(-2.25));
}

TEST(DormandPrince, IsOfFifthOrder) {
    EXPECT_LT(error_of(100), 1e-10);
    double const order = std::log2(error_of(20) / error_of(40));
    EXPECT_GT(order, 4.7);
    EXPECT_LT(order, 5.6);
}

TEST(DormandPrince, ErrorEstimateIsOfTheSizeOfTheErrorOfFourthOrder) {
    state<1> const y{1.0};
    auto const large = dormand_prince(bell, 0.2, y, bell(0.2, y), 0.2, {1.0});
    auto const small = dormand_prince(bell, 0.2, y, bell(0.2, y), 0.1, {1.0});
    double const order = std::log2(large.error / small.error);
    EXPECT_GT(order, 4.3);
    EXPECT_LT(order, 5.7);
}

TEST(DormandPrince, PolynomialInsideAStepIsOfFourthOrder) {
    auto const off = [](double h, double theta) {
        state<1> const y{std::exp(-0.04)};
        return std::abs(dormand_prince(bell, 0.2, y, bell(0.2, y), h, {1.0}).at(theta)[0] -
                        std::exp(-(0.2 + theta * h) * (0.2 + theta * h)));
    };
    for (double const theta : {0.2, 0.5, 0.8}) {
        double const order = std::log2(off(0.2, theta) / off(0.1, theta));
        EXPECT_GT(order, 4.5) << theta;  // of a single step: one more than of a whole integration
    }
    EXPECT_LT(off(0.3, 0.0), 1e-15);
    EXPECT_LT(off(0.1, 0.5), 2e-8);
}

TEST(NextStep, GrowsAndShrinksWithinLimits) {
    EXPECT_DOUBLE_EQ(next_step(1.0, 0.0, 1e-9), 4.0);
    EXPECT_DOUBLE_EQ(next_step(1.0, 1e9, 1e-9), 0.2);
    EXPECT_NEAR(next_step(1.0, 1e-9, 1e-9), 0.9, 1e-12);
}

TEST(BracketedRoot, FindsRootsOfBentFunctions) {
    auto const steep = [](double x) { return std::exp(40.0 * x) - 5.0; };
    EXPECT_NEAR(bracketed_root(steep, -1.0, 1.0, 0.0), std::log(5.0) / 40.0, 1e-15);
    auto const falling = [](double x) { return 1e-3 - x * x * x; };
    EXPECT_NEAR(bracketed_root(falling, 0.0, 1.0, 1e-14), 0.1, 1e-13);
    auto const flat = [](double x) { return std::pow(x - 0.3, 9); };
    EXPECT_NEAR(bracketed_root(flat, 0.0, 1.0, 1e-12), 0.3, 0.02);  // rounding allows no better
}

TEST(BracketedRoot, EndsAndFailures) {
    auto const line = [](double x) { return x; };
    EXPECT_EQ(bracketed_root(line, 0.0, 1.0, 0.0), 0.0);
    EXPECT_EQ(bracketed_root(line, -1.0, 0.0, 0.0), 0.0);
    EXPECT_TRUE(std::isnan(bracketed_root(line, 0.5, 1.0, 0.0)));
    EXPECT_TRUE(std::isnan(bracketed_root([](double) { return std::nan(""); }, 0.0, 1.0, 0.0)));
}

/// the functions of the test table: one curved at the weak end, and a straight line
cubic_table<2> example() {
    return cubic_table<2>([](double x) -> cubic_table<2>::row {
        return {{{std::log(x + 0.05), 1.0 / (x + 0.05)}, {3.0 - 2.0 * x, -2.0}}};
    });
}

// Within h^4/384 of the fourth derivative on the skewed grid, where a straight line is curved too.
TEST(CubicTable, ValuesAndSlopes) {
    auto const t = example();
    for (double x = 0.0; x <= 1.0; x += 1.0 / 1777.0) {
        EXPECT_NEAR(t.value(x, 0), std::log(x + 0.05), 5e-9) << x;
        EXPECT_NEAR(t.value(x, 1), 3.0 - 2.0 * x, 2.5e-8) << x;
        auto const both = t.value_and_slope_at(x, 0);
        EXPECT_NEAR(both.value, t.value(x, 0), 1e-15);
        EXPECT_NEAR(both.slope, 1.0 / (x + 0.05), 1e-6) << x;
    }
    EXPECT_EQ(t.value(0.0, 0), std::log(0.05));
    EXPECT_NEAR(t.value(1.0, 0), std::log(1.05), 1e-15);
}

TEST(CubicTable, HeldMonotoneItGoesOneWay) {
    // Slopes unrelated to the values, so that the cubics oscillate.
    auto const made = [] {
        return cubic_table<1>([](double x) -> cubic_table<1>::row { return {{{x, 50.0}}}; });
    };
    auto const falls = [](cubic_table<1> const& t) {
        int count = 0;
        for (double x = 0.0; x < 1.0 - 1e-4; x += 1e-4) count += t.value(x + 1e-4, 0) < t.value(x, 0) - 1e-15;
        return count;
    };
    auto held = made();
    held.hold_monotone(0);
    EXPECT_GT(falls(made()), 1000);
    EXPECT_EQ(falls(held), 0);
}

}  // namespace
}  // namespace aqueth::numeric
