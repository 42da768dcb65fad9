// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <boost/math/constants/constants.hpp>
#include <boost/multiprecision/cpp_dec_float.hpp>
#include <boost/multiprecision/eigen.hpp>

#include <Eigen/Dense>

#include <cstddef>
#include <cstdio>
#include <vector>

/// First guesses for iterations: polynomials, so that they cost no branch and no table.
///
/// A guess need not be good, because the iteration that follows multiplies its digits; it has to be the same
/// on every machine. So the least squares are solved in 50 digits, where neither the order of sums nor the
/// conditioning of the normal equations reaches the digits that are printed.
namespace aqueth::fit {

using decimal = boost::multiprecision::cpp_dec_float_50;

/// A function of two variables, wanted as a polynomial of them.
struct sample {
    decimal x;
    decimal y;
    decimal value;
};

/// A polynomial in x whose coefficients are polynomials in y, lowest powers first.
using polynomial = std::vector<std::vector<decimal>>;

/// @param count how many
/// @return the places where a polynomial of high degree is best tied down: dense towards the ends of -1 to 1
inline std::vector<decimal> chebyshev_places(int count) {
    std::vector<decimal> places;
    decimal const pi = boost::math::constants::pi<decimal>();
    for (int k = 0; k < count; ++k) places.push_back(cos(pi * (count - 1 - k) / (count - 1)));
    return places;
}

/// @param x        base
/// @param exponent 0 or more
/// @return the power
inline decimal power(decimal const& x, std::size_t exponent) {
    decimal result = 1;
    for (std::size_t k = 0; k < exponent; ++k) result *= x;
    return result;
}

/// @param samples what to fit
/// @param degrees for each power of x the degree in y
/// @return the polynomial that fits best
inline polynomial fit(std::vector<sample> const& samples, std::vector<std::size_t> const& degrees) {
    using matrix = Eigen::Matrix<decimal, Eigen::Dynamic, Eigen::Dynamic>;
    using column = Eigen::Matrix<decimal, Eigen::Dynamic, 1>;
    Eigen::Index columns = 0;
    for (std::size_t const degree : degrees) columns += static_cast<Eigen::Index>(degree) + 1;
    matrix normal = matrix::Zero(columns, columns);
    column right = column::Zero(columns);
    for (sample const& each : samples) {
        column row(columns);
        Eigen::Index k = 0;
        for (std::size_t i = 0; i < degrees.size(); ++i)
            for (std::size_t j = 0; j <= degrees[i]; ++j) row(k++) = power(each.x, i) * power(each.y, j);
        normal += row * row.transpose();
        right += row * each.value;
    }
    // What the samples leave undetermined stays small, where it would otherwise be anything.
    for (Eigen::Index k = 0; k < columns; ++k) normal(k, k) += decimal("1e-20");
    column const solution = normal.ldlt().solve(right);
    polynomial result;
    Eigen::Index k = 0;
    for (std::size_t const degree : degrees) {
        result.emplace_back();
        for (std::size_t j = 0; j <= degree; ++j) result.back().push_back(solution(k++));
    }
    return result;
}

/// @param samples what was fitted
/// @param fitted  the polynomial
/// @return the largest difference between the two
inline double worst_miss(std::vector<sample> const& samples, polynomial const& fitted) {
    decimal worst = 0;
    for (sample const& each : samples) {
        decimal sum = 0;
        for (std::size_t i = 0; i < fitted.size(); ++i)
            for (std::size_t j = 0; j < fitted[i].size(); ++j)
                sum += fitted[i][j] * power(each.x, i) * power(each.y, j);
        if (abs(sum - each.value) > worst) worst = abs(sum - each.value);
    }
    return static_cast<double>(worst);
}

/// Prints numbers as doubles, in braces.
/// @param values the numbers
inline void print_braced(std::vector<decimal> const& values) {
    std::printf("{");
    for (std::size_t j = 0; j < values.size(); ++j)
        std::printf("%s%.17g", j == 0 ? "" : ", ", static_cast<double>(values[j]));
    std::printf("}");
}

/// Prints a constant: a tuple of arrays, the powers of x one below the other.
/// @param name   its name
/// @param fitted the polynomial
inline void print_tuple(char const* name, polynomial const& fitted) {
    std::printf("inline constexpr auto %s = std::make_tuple(\n", name);
    for (std::size_t i = 0; i < fitted.size(); ++i) {
        std::printf("    std::array<double, %zu>", fitted[i].size());
        print_braced(fitted[i]);
        std::puts(i + 1 < fitted.size() ? "," : ");");
    }
}

}  // namespace aqueth::fit
