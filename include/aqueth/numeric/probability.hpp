// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>

#include <cmath>
#include <limits>
#include <numbers>

/// The distributions that uncertainties are stated with: the standard normal one, Student's t and chi
/// squared.
///
/// Boost.Math has them for every distribution; its quantile of t costs 2 s of compile time in every file.
namespace aqueth::inline AQUETH_ABI::numeric {

/// @param z any number
/// @return density of the standard normal distribution at z
inline double normal_density(double z) { return std::exp(-0.5 * z * z) / std::sqrt(2.0 * std::numbers::pi); }

/// @param z any number, infinities included
/// @return probability that a standard normal quantity is not above z
inline double normal_probability(double z) { return 0.5 * std::erfc(-z / std::numbers::sqrt2); }

/// @param p probability, above 0 and below 1; not checked
/// @return the z that a standard normal quantity is not above with probability p; relative error near
///         rounding of p
inline double normal_quantile(double p) {
    if (p > 0.5) return -normal_quantile(1.0 - p);  // the lower tail keeps all digits
    auto const residual = [p](double z) {
        return value_and_slope<double>{normal_probability(z) - p, normal_density(z)};
    };
    return bracketed_newton(residual, -38.0, 0.0, -1.0, 4.0 * std::numeric_limits<double>::epsilon() * p);
}

/// Degrees of freedom from which t counts as normal: its quantiles then differ by less than 1e-5.
inline constexpr double normal_from = 1e6;

/// @param t                  any finite number
/// @param degrees_of_freedom whole number, 1 or more; not checked
/// @return probability that a quantity with Student's t distribution is not above t
/// @par Source
/// finite series for whole degrees of freedom, M. Abramowitz and I. A. Stegun, Handbook of Mathematical
/// Functions, 1964, 26.7.3 and 26.7.4 (from memory; the tests compare with Boost.Math)
inline double student_probability(double t, double degrees_of_freedom) {
    if (!(degrees_of_freedom < normal_from)) return normal_probability(t);
    int const nu = static_cast<int>(degrees_of_freedom);
    double const theta = std::atan(t / std::sqrt(static_cast<double>(nu)));
    double const cosine = std::cos(theta);
    bool const odd = nu % 2 == 1;
    double term = odd ? cosine : 1.0;
    double sum = nu == 1 ? 0.0 : term;
    for (int k = odd ? 3 : 2; k < nu; k += 2) {
        term *= cosine * cosine * (k - 1) / k;
        sum += term;
    }
    double const within =
        odd ? 2.0 / std::numbers::pi * (theta + std::sin(theta) * sum) : std::sin(theta) * sum;
    return 0.5 + 0.5 * within;
}

/// @param p                  probability, above 0 and below 1; not checked
/// @param degrees_of_freedom whole number, 1 or more; not checked
/// @return the t that a quantity with Student's t distribution is not above with probability p
inline double student_quantile(double p, double degrees_of_freedom) {
    if (!(degrees_of_freedom < normal_from)) return normal_quantile(p);
    if (p < 0.5) return -student_quantile(1.0 - p, degrees_of_freedom);
    double upper = 2.0;
    while (student_probability(upper, degrees_of_freedom) < p && upper < 1e300) upper *= 2.0;
    return bracketed_root([&](double t) { return student_probability(t, degrees_of_freedom) - p; }, 0.0,
                          upper, 0.0);
}

/// @param p                  probability, 0.5 to 0.999; not checked
/// @param degrees_of_freedom 1 or more; not checked
/// @return what a quantity with a chi-squared distribution is not above with probability p
/// @par Accuracy
/// An approximation: for p from 0.9 to 0.99 within 2.5 % for one degree of freedom, 1.6 % for two, 0.6 % from
/// three on.
/// @par Source
/// E. B. Wilson and M. M. Hilferty, Proceedings of the National Academy of Sciences 17 (1931) 684 (from
/// memory)
inline double chi_squared_quantile(double p, double degrees_of_freedom) {
    double const v = 2.0 / (9.0 * degrees_of_freedom);
    double const root = 1.0 - v + normal_quantile(p) * std::sqrt(v);
    return degrees_of_freedom * root * root * root;
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
