// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <boost/math/constants/constants.hpp>
#include <boost/multiprecision/cpp_dec_float.hpp>
#include <boost/multiprecision/eigen.hpp>

#include <Eigen/Dense>

#include <cstddef>
#include <cstdio>
#include <vector>

/// First guesses for iterations: polynomials, which need no branch and no table.
///
/// A guess need not be accurate, because the iteration after it multiplies its digits. It must be the same on
/// every machine. The least squares are therefore solved in 50 digits: there neither the order of sums nor
/// the conditioning of the normal equations affects the printed digits.
namespace aqueth::fit {

using decimal = boost::multiprecision::cpp_dec_float_50;

/// A sample of a function of two variables, for the fit of a polynomial.
struct sample {
    decimal x;
    decimal y;
    decimal value;
};

/// A polynomial in x whose coefficients are polynomials in y, lowest powers first.
using polynomial = std::vector<std::vector<decimal>>;

/// @param count how many
/// @return good nodes for a polynomial of high degree: dense towards the ends of -1 to 1
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

namespace detail {

/// @param x       first argument
/// @param y       second argument
/// @param degrees for each power of x the degree in y
/// @return x^i y^j for all of them, one power of x after the other
inline std::vector<decimal> terms_at(decimal const& x, decimal const& y,
                                     std::vector<std::size_t> const& degrees) {
    std::vector<decimal> terms;
    for (std::size_t i = 0; i < degrees.size(); ++i)
        for (std::size_t j = 0; j <= degrees[i]; ++j) terms.push_back(power(x, i) * power(y, j));
    return terms;
}

/// Linear least squares by the normal equations.
class normal_equations {
public:
    explicit normal_equations(std::size_t unknowns)
        : matrix_(matrix::Zero(static_cast<Eigen::Index>(unknowns), static_cast<Eigen::Index>(unknowns))),
          right_(column::Zero(static_cast<Eigen::Index>(unknowns))) {}

    /// Adds an equation: the sum of the unknowns, times these factors, is this value.
    void add(std::vector<decimal> const& factors, decimal const& wanted) {
        auto const row = Eigen::Map<column const>(factors.data(), right_.size());
        matrix_.selfadjointView<Eigen::Lower>().rankUpdate(row);
        right_ += row * wanted;
    }

    std::vector<decimal> solution() const {
        matrix all = matrix_.selfadjointView<Eigen::Lower>();
        // Keeps coefficients small that the samples do not determine.
        for (Eigen::Index k = 0; k < right_.size(); ++k) all(k, k) += decimal("1e-20");
        column const solved = all.ldlt().solve(right_);
        return {solved.data(), solved.data() + solved.size()};
    }

private:
    using matrix = Eigen::Matrix<decimal, Eigen::Dynamic, Eigen::Dynamic>;
    using column = Eigen::Matrix<decimal, Eigen::Dynamic, 1>;

    matrix matrix_;
    column right_;
};

/// @param next    the first coefficient; moved behind the last
/// @param degrees for each power of x the degree in y
/// @return the polynomial of these coefficients
inline polynomial take(std::vector<decimal>::const_iterator& next, std::vector<std::size_t> const& degrees) {
    polynomial taken;
    for (std::size_t const degree : degrees) {
        auto const end = next + static_cast<std::ptrdiff_t>(degree) + 1;
        taken.emplace_back(next, end);
        next = end;
    }
    return taken;
}

}  // namespace detail

/// @param p a polynomial
/// @param x first argument
/// @param y second argument
/// @return its value
inline decimal value(polynomial const& p, decimal const& x, decimal const& y) {
    decimal sum = 0;
    for (std::size_t i = 0; i < p.size(); ++i)
        for (std::size_t j = 0; j < p[i].size(); ++j) sum += p[i][j] * power(x, i) * power(y, j);
    return sum;
}

/// @param samples what to fit
/// @param degrees for each power of x the degree in y
/// @return the polynomial that fits best
inline polynomial fit(std::vector<sample> const& samples, std::vector<std::size_t> const& degrees) {
    detail::normal_equations equations(detail::terms_at(0, 0, degrees).size());
    for (sample const& each : samples) equations.add(detail::terms_at(each.x, each.y, degrees), each.value);
    std::vector<decimal> const solution = equations.solution();
    auto next = solution.begin();
    return detail::take(next, degrees);
}

/// One polynomial over another.
struct quotient {
    polynomial numerator;
    polynomial denominator;
};

/// @param q a quotient
/// @param x first argument
/// @param y second argument
/// @return its value
inline decimal value(quotient const& q, decimal const& x, decimal const& y) {
    return value(q.numerator, x, y) / value(q.denominator, x, y);
}

/// Least squares for a quotient, approximately: numerator minus value times denominator, divided by the
/// denominator of the round before, is linear in the coefficients. The mean of the denominator over the
/// samples is 1.
/// @param samples     what to fit
/// @param numerator   for each power of x the degree in y of the numerator
/// @param denominator the same for the denominator
/// @return the quotient
/// @par Source
/// C. K. Sanathanan, J. Koerner, IEEE Trans. Autom. Control 8 (1963) 56 (cited from memory)
inline quotient fit(std::vector<sample> const& samples, std::vector<std::size_t> const& numerator,
                    std::vector<std::size_t> const& denominator) {
    constexpr int rounds = 12;
    std::size_t const numerator_terms = detail::terms_at(0, 0, numerator).size();
    std::vector<decimal> means(detail::terms_at(0, 0, denominator).size());
    for (sample const& each : samples) {
        std::vector<decimal> const terms = detail::terms_at(each.x, each.y, denominator);
        for (std::size_t k = 0; k < means.size(); ++k) means[k] += terms[k] / samples.size();
    }
    quotient result{{}, {{1}}};
    for (int round = 0; round < rounds; ++round) {
        detail::normal_equations equations(numerator_terms + means.size() - 1);
        for (sample const& each : samples) {
            std::vector<decimal> factors = detail::terms_at(each.x, each.y, numerator);
            std::vector<decimal> const terms = detail::terms_at(each.x, each.y, denominator);
            for (std::size_t k = 1; k < terms.size(); ++k)
                factors.push_back(each.value * (means[k] - terms[k]));
            decimal const weight = 1 / value(result.denominator, each.x, each.y);
            for (decimal& factor : factors) factor *= weight;
            equations.add(factors, each.value * weight);
        }
        std::vector<decimal> solution = equations.solution();
        decimal first = 1;
        for (std::size_t k = 1; k < means.size(); ++k) first -= solution[numerator_terms + k - 1] * means[k];
        solution.insert(solution.begin() + static_cast<std::ptrdiff_t>(numerator_terms), first);
        auto next = solution.cbegin();
        result.numerator = detail::take(next, numerator);
        result.denominator = detail::take(next, denominator);
    }
    return result;
}

/// @param samples what was fitted
/// @param fitted  the polynomial, or quotient
/// @return the largest difference between the two
template <class Fitted>
double worst_error(std::vector<sample> const& samples, Fitted const& fitted) {
    decimal worst = 0;
    for (sample const& each : samples) {
        decimal const deviation = abs(value(fitted, each.x, each.y) - each.value);
        if (deviation > worst) worst = deviation;
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

/// Prints a constant: a tuple of arrays, one line for each power of x.
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
