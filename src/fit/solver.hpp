// SPDX-License-Identifier: BSL-1.0
#pragma once

#include "observations.hpp"

#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>
#include <aqueth/model/modified_raoult.hpp>
#include <aqueth/model/skewed_redlich_kister.hpp>

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <stdexcept>
#include <utility>
#include <vector>

namespace aqueth::fit {

namespace rk = aqueth::model::skewed_redlich_kister;
namespace raoult = aqueth::model::modified_raoult;
using ethanol = correlation::ethanol_saturation_poling;
using water = correlation::water_saturation_wagner_pruss;

inline constexpr double reference_kelvin = 343.15;  ///< T0: middle of the temperature range

/// Source of the virial coefficient of ethanol; none: ideal vapour.
enum class vapour_kind { ideal, crc_handbook, clapeyron };

/// A form of the excess Gibbs energy: the skew, the number of powers of s for each function of temperature,
/// and the vapour.
struct form {
    double skew;
    std::array<int, 4> terms;
    vapour_kind vapour;
    double cross_ratio;  ///< B12 over the mean of B11 and B22

    int size() const { return terms[0] + terms[1] + terms[2] + terms[3]; }
};

/// A form with its coefficients, in the order a, b, c, d.
struct model {
    form shape;
    Eigen::VectorXd coefficients;

    /// Effect of one unit of each coefficient on a molar property and on the partial molar properties of
    /// ethanol and water.
    struct basis {
        Eigen::VectorXd molar, ethanol, water;
    };

    basis of(double x, std::array<double, 4> const& f) const {
        basis b;
        for (auto* v : {&b.molar, &b.ethanol, &b.water}) v->setZero(shape.size());
        double const x2 = 1.0 - x, parts = x + shape.skew * x2, s = (x - shape.skew * x2) / parts;
        double const ds = 2 * shape.skew / (parts * parts);
        Eigen::Index n = 0;
        for (std::size_t j = 0; j < 4; ++j) {
            double power = 1.0, slope = 0.0;  // s^k and its derivative with respect to x
            for (int k = 0; k < shape.terms[j]; ++k, ++n) {
                b.molar(n) = f[j] * x * x2 * power;
                b.ethanol(n) = f[j] * x2 * x2 * (power + x * slope);
                b.water(n) = f[j] * x * x * (power - x2 * slope);
                slope = slope * s + power * ds;
                power *= s;
            }
        }
        return b;
    }

    basis gibbs_basis(double x, double kelvin) const {
        return of(x, rk::at_temperature(kelvin, reference_kelvin).gibbs);
    }
    Eigen::VectorXd enthalpy_basis(double x, double kelvin) const {
        return correlation::gas_constant::molar * kelvin *
               of(x, rk::at_temperature(kelvin, reference_kelvin).enthalpy).molar;
    }
    Eigen::VectorXd heat_capacity_basis(double x, double kelvin) const {
        return correlation::gas_constant::molar *
               of(x, rk::at_temperature(kelvin, reference_kelvin).heat_capacity).molar;
    }

    /// Logarithms of the activity coefficients.
    std::pair<double, double> ln_gamma(double x, double kelvin) const {
        auto const b = gibbs_basis(x, kelvin);
        return {b.ethanol.dot(coefficients), b.water.dot(coefficients)};
    }
    double enthalpy(double x, double kelvin) const { return enthalpy_basis(x, kelvin).dot(coefficients); }
    double heat_capacity(double x, double kelvin) const {
        return heat_capacity_basis(x, kelvin).dot(coefficients);
    }

    raoult::vapour<double> vapour(double kelvin) const {
        if (shape.vapour == vapour_kind::ideal) return {0.0, 0.0, 0.0};
        double const b1 = shape.vapour == vapour_kind::clapeyron
                              ? aqueth::model::ethanol_second_virial::coefficient(kelvin).value
                              : correlation::second_virial_crc::ethanol(kelvin).value;
        return raoult::virial_vapour(b1, correlation::second_virial_crc::water(kelvin).value,
                                     shape.cross_ratio, kelvin);
    }

    /// Bubble point at a temperature; saturation pressures of zero mean those of the library.
    raoult::bubble_point<double> bubble(double x, double kelvin, double p1 = 0.0, double p2 = 0.0) const {
        auto const [g1, g2] = ln_gamma(x, kelvin);
        return raoult::bubble(x, g1, g2, p1 > 0.0 ? p1 : ethanol::pressure(kelvin),
                              p2 > 0.0 ? p2 : water::pressure(kelvin), vapour(kelvin));
    }

    /// d ln p/dT at the bubble point from the pure liquids: a few percent off, accurate enough for root
    /// finding.
    static double slope(double y, double kelvin) {
        return y * ethanol::ln_pressure_and_slope(kelvin).slope +
               (1.0 - y) * water::ln_pressure_and_slope(kelvin).slope;
    }

    /// Boiling temperature by Newton's method on ln p against 1/T.
    double boiling_kelvin(double x, double pascals) const {
        double t = 345.0;
        for (int i = 0; i < 50; ++i) {
            auto const b = bubble(x, t);
            double const miss = std::log(b.pressure / pascals);
            t = t / (1.0 + miss / (t * slope(b.y, t)));
            if (!(std::abs(miss) > 1e-13)) break;
        }
        return t;
    }

    double ln_alpha(double x, double pascals) const { return bubble(x, boiling_kelvin(x, pascals)).ln_alpha; }
};

/// One row of the least-squares problem: calculated minus observed, and the effect of a unit of each
/// coefficient on it.
struct row {
    double residual;
    Eigen::VectorXd gradient;
};

/// Gradients of pressures and compositions are those over an ideal vapour: within about 2 % of the exact
/// ones. Each Gauss-Newton step still gains more than a digit, without the derivative of an iteration.
inline row evaluate(model const& m, observation const& o) {
    switch (o.what) {
    case kind::pressure:
    case kind::boiling_point: {
        auto const b = m.gibbs_basis(o.x, o.kelvin);
        auto const p = m.bubble(o.x, o.kelvin, o.p1, o.p2);
        row r{std::log(p.pressure / o.pascals), p.y * b.ethanol + (1.0 - p.y) * b.water};
        if (o.what == kind::pressure) return r;
        double const per_kelvin = model::slope(p.y, o.kelvin);
        return {-r.residual / per_kelvin, -r.gradient / per_kelvin};
    }
    case kind::vapour: {
        double const t = m.boiling_kelvin(o.x, o.pascals), y = m.bubble(o.x, t).y;
        auto const b = m.gibbs_basis(o.x, t);
        return {y - o.value, y * (1.0 - y) * (b.ethanol - b.water)};
    }
    case kind::infinite_dilution: {
        auto const b = m.gibbs_basis(0.0, o.kelvin);
        return {b.ethanol.dot(m.coefficients) - std::log(o.value), b.ethanol};
    }
    case kind::azeotrope: {  // one Newton step away in x
        double const t = m.boiling_kelvin(o.x, o.pascals), h = 1e-3;
        double const slope = (m.ln_alpha(o.x + h, o.pascals) - m.ln_alpha(o.x - h, o.pascals)) / (2.0 * h);
        auto const b = m.gibbs_basis(o.x, t);
        return {-m.bubble(o.x, t).ln_alpha / slope, (b.water - b.ethanol) / slope};
    }
    case kind::enthalpy: {
        Eigen::VectorXd const b = m.enthalpy_basis(o.x, o.kelvin);
        return {b.dot(m.coefficients) - o.value, b};
    }
    case kind::heat_capacity: {
        Eigen::VectorXd const b = m.heat_capacity_basis(o.x, o.kelvin);
        return {b.dot(m.coefficients) - o.value, b};
    }
    }
    throw std::logic_error("unknown kind of observation");
}

/// Pulls every coefficient towards zero by this much of a standard deviation per unit: negligible where there
/// are data (coefficients are 0.03 to 30), but enough to determine a combination that no remaining set
/// determines.
inline constexpr double ridge = 0.01;

/// Weighted least squares by Gauss-Newton over the sets marked fitted. Each step is a column-pivoted QR
/// decomposition. Azeotropes join after three steps, when the model has an azeotrope.
/// @param shape    the form
/// @param sets     the sets
/// @param left_out place of one to leave out; -1: none
/// @return the model, to rounding
/// @throws std::runtime_error if the steps do not settle
inline model solve(form const& shape, std::vector<data_set> const& sets, int left_out = -1) {
    model m{shape, Eigen::VectorXd::Zero(shape.size())};
    m.coefficients(0) = 1.0;
    Eigen::Index const unknowns = shape.size();
    double change = 1.0, share = 1.0;
    for (int step = 0; step < 80 && change > 1e-12; ++step) {
        std::vector<row> rows;
        for (std::size_t s = 0; s < sets.size(); ++s) {
            if (!sets[s].fitted || static_cast<int>(s) == left_out) continue;
            for (auto const& o : sets[s].rows) {
                if (o.what == kind::azeotrope && step < 3) continue;
                row r = evaluate(m, o);
                r.residual /= o.sigma;
                r.gradient /= o.sigma;
                rows.push_back(std::move(r));
            }
        }
        auto const n = static_cast<Eigen::Index>(rows.size());
        Eigen::MatrixXd left(n + unknowns, unknowns);
        Eigen::VectorXd right(n + unknowns);
        for (Eigen::Index i = 0; i < n; ++i) {
            auto const& r = rows[static_cast<std::size_t>(i)];
            left.row(i) = r.gradient;
            right(i) = -r.residual;
        }
        left.bottomRows(unknowns) = ridge * Eigen::MatrixXd::Identity(unknowns, unknowns);
        right.tail(unknowns) = -ridge * m.coefficients;
        Eigen::VectorXd const correction = left.colPivHouseholderQr().solve(right);
        m.coefficients += share * correction;
        double const before = change;
        change = correction.norm() / m.coefficients.norm();
        if (step > 15 && change > 0.5 * before)
            share = 0.5;  // damps oscillation, which plain Redlich-Kister shows
    }
    if (!(change < 1e-9)) throw std::runtime_error("the fit did not settle");
    return m;
}

/// Deviations of one set from a model, in the unit of its residuals.
struct deviations {
    double mean = 0.0, largest = 0.0, bias = 0.0;
    double relative = 0.0;  ///< root mean square over the standard deviation given to the set
};

inline deviations compare(model const& m, std::vector<observation> const& rows) {
    deviations d;
    for (auto const& o : rows) {
        double const r = evaluate(m, o).residual;
        d.mean += std::abs(r);
        d.bias += r;
        d.largest = (std::max)(d.largest, std::abs(r));
        d.relative += r * r / (o.sigma * o.sigma);
    }
    auto const n = static_cast<double>(rows.size());
    return {d.mean / n, d.largest, d.bias / n, std::sqrt(d.relative / n)};
}

/// Every set of a form, fitted and left out.
struct assessment {
    model fitted;
    std::vector<deviations> with,
        without;  ///< without: the set left out of the fit; of held sets the same as with
    double mean_with = 0.0, mean_without = 0.0;  ///< geometric means of `relative` over the fitted sets
};

inline assessment assess(form const& shape, std::vector<data_set> const& sets) {
    assessment a{solve(shape, sets), {}, {}};
    double n = 0.0;
    for (std::size_t s = 0; s < sets.size(); ++s) {
        a.with.push_back(compare(a.fitted, sets[s].rows));
        a.without.push_back(sets[s].fitted ? compare(solve(shape, sets, static_cast<int>(s)), sets[s].rows)
                                           : a.with.back());
        if (!sets[s].fitted) continue;
        a.mean_with += std::log(a.with.back().relative);
        a.mean_without += std::log(a.without.back().relative);
        n += 1.0;
    }
    a.mean_with = std::exp(a.mean_with / n);
    a.mean_without = std::exp(a.mean_without / n);
    return a;
}

}  // namespace aqueth::fit
