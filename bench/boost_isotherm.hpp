// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22.hpp>

#include <boost/math/tools/rational.hpp>
#include <boost/math/tools/roots.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <tuple>
#include <utility>

namespace aqueth::bench {

namespace tools = boost::math::tools;

/// Boost.Math's polynomial of known degree, which it unrolls; it takes built-in arrays.
template <std::size_t N>
double evaluate(std::array<double, N> const& c, double x) {
    return tools::evaluate_polynomial(*reinterpret_cast<double const(*)[N]>(c.data()), x);
}

/// OIML R 22 at one temperature from our centred coefficients, by the polynomials and root finders of
/// Boost.Math, as a developer with that library would write it.
struct boost_isotherm {
    std::array<double, 12> c;
    std::array<double, 11> d;

    explicit boost_isotherm(double t) {
        double const tau = (t - 10.0) / 30.0;
        c = std::apply([&](auto const&... each) { return std::array<double, 12>{evaluate(each, tau)...}; },
                       correlation::oiml_r22::coefficients);
        for (std::size_t k = 0; k < d.size(); ++k) d[k] = static_cast<double>(k + 1) * c[k + 1];
    }
    double density(double w) const { return evaluate(c, 2.0 * w - 1.0); }
    double slope(double w) const { return 2.0 * evaluate(d, 2.0 * w - 1.0); }
    double line(double rho) const {  // first guess: a straight line between the pure liquids
        double const water = density(0.0), ethanol = density(1.0);
        return (water - rho) / (water - ethanol);
    }
    double newton(double rho) const {
        std::uintmax_t rounds = 100;
        return tools::newton_raphson_iterate(
            [&](double w) { return std::make_pair(density(w) - rho, slope(w)); }, line(rho), 0.0, 1.0,
            std::numeric_limits<double>::digits - 4, rounds);
    }
    double toms748(double rho) const {
        std::uintmax_t rounds = 100;
        auto const bracket = tools::toms748_solve([&](double w) { return density(w) - rho; }, 0.0, 1.0,
                                                  tools::eps_tolerance<double>(50), rounds);
        return 0.5 * (bracket.first + bracket.second);
    }
    double newton_from_volume(double q) const {
        double const concentration = q * density(1.0);
        std::uintmax_t rounds = 100;
        return tools::newton_raphson_iterate(
            [&](double w) {
                double const rho = density(w);
                return std::make_pair(w * rho - concentration, rho + w * slope(w));
            },
            0.8 * q, 0.0, 1.0, std::numeric_limits<double>::digits - 4, rounds);
    }
};

/// The whole formula and its slope, as a function of a library would be called.
[[gnu::noinline]] inline std::pair<double, double> whole_formula(double w, double t) {
    boost_isotherm const at_t(t);
    return {at_t.density(w), at_t.slope(w)};
}

/// Newton's method on the whole formula: the simplest code.
inline double newton_on_the_whole_formula(double rho, double t) {
    std::uintmax_t rounds = 100;
    return tools::newton_raphson_iterate(
        [&](double w) {
            auto const at = whole_formula(w, t);
            return std::make_pair(at.first - rho, at.second);
        },
        0.5, 0.0, 1.0, std::numeric_limits<double>::digits - 4, rounds);
}

}  // namespace aqueth::bench
