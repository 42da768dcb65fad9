// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/dual.hpp>
#include <aqueth/numeric/probability.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// Citation, range and accuracy of the law of propagation of uncertainty.
inline constexpr correlation::source gum_cited{
    "JCGM 100:2008 (GUM), Guide to the expression of uncertainty in measurement, clauses 4 to 6 and annex G",
    "measurements whose model is nearly a straight line within the uncertainty of each input",
    "first order; the worked examples H.1 and H.2 as printed"};

namespace detail {

/// the mean and the sum of squared deviations from it
struct spread {
    double mean = 0.0;
    double squares = 0.0;

    explicit spread(std::span<double const> values) {
        for (double const v : values) mean += v;
        mean /= static_cast<double>(values.size());
        for (double const v : values) squares += (v - mean) * (v - mean);
    }
};

inline double require_probability(char const* property, double p) {
    return require_range(property, argument::probability, p, "", 0.001, 0.999999);
}

}  // namespace detail

/// The probability distribution of an input quantity.
enum class distribution {
    normal,       ///< Student's t if its degrees of freedom are finite
    rectangular,  ///< all values between two limits are equally likely
    triangular,   ///< between two limits, the middle most likely
    arcsine       ///< oscillates between two limits, like a regulated temperature
};

/// How a standard uncertainty was evaluated (GUM 2.3.2 and 2.3.3).
enum class evaluation {
    type_a,  ///< from repeated readings
    type_b   ///< from anything else: a certificate, a class of accuracy, experience
};

/// An input quantity of a measurement: an estimate with its standard uncertainty, and the origin of that.
/// @par Source
/// JCGM 100:2008 (GUM), 4.2 and 4.3, @ref source_gum
class [[nodiscard]] input_quantity {
public:
    /// From a standard uncertainty.
    /// @param name                 what it is, for the budget
    /// @param unit                 unit of estimate and uncertainty, for the budget
    /// @param estimate             the best estimate, finite
    /// @param standard_uncertainty 0 or more
    /// @param degrees_of_freedom   1 or more; infinite if the uncertainty itself is certain
    /// @return the input quantity
    /// @throws refusal if a number is outside its range
    static input_quantity normal(std::string name, std::string unit, double estimate,
                                 double standard_uncertainty, double degrees_of_freedom = unlimited) {
        return {std::move(name),      std::move(unit),    estimate,          standard_uncertainty,
                distribution::normal, evaluation::type_b, degrees_of_freedom};
    }
    /// From an expanded uncertainty, as a certificate states it (GUM 4.3.3).
    /// @param name                 what it is, for the budget
    /// @param unit                 unit of estimate and uncertainty, for the budget
    /// @param estimate             the best estimate, finite
    /// @param expanded_uncertainty 0 or more
    /// @param coverage_factor      above 0; 2 for about 95 %
    /// @param degrees_of_freedom   1 or more
    /// @return the input quantity
    /// @throws refusal if a number is outside its range
    static input_quantity expanded(std::string name, std::string unit, double estimate,
                                   double expanded_uncertainty, double coverage_factor,
                                   double degrees_of_freedom = unlimited) {
        require_range(name, argument::coverage_factor, coverage_factor, "",
                      (std::numeric_limits<double>::min)(), unlimited);
        return normal(std::move(name), std::move(unit), estimate, expanded_uncertainty / coverage_factor,
                      degrees_of_freedom);
    }
    /// Between two limits, nothing else known (GUM 4.3.7): a maximum permissible error, a rounded figure.
    /// @param name               what it is, for the budget
    /// @param unit               unit of estimate and limits, for the budget
    /// @param estimate           middle between the limits, finite
    /// @param half_width         from the middle to a limit, 0 or more
    /// @param degrees_of_freedom 1 or more; for limits that are themselves doubtful (GUM G.4.2)
    /// @return the input quantity, with standard uncertainty half_width / sqrt(3)
    /// @throws refusal if a number is outside its range
    static input_quantity rectangular(std::string name, std::string unit, double estimate, double half_width,
                                      double degrees_of_freedom = unlimited) {
        return {std::move(name),           std::move(unit),    estimate,          half_width / std::sqrt(3.0),
                distribution::rectangular, evaluation::type_b, degrees_of_freedom};
    }
    /// Between two limits, the middle most likely (GUM 4.3.9): a pointer or level read between two marks.
    /// @copydetails rectangular
    static input_quantity triangular(std::string name, std::string unit, double estimate, double half_width,
                                     double degrees_of_freedom = unlimited) {
        return {std::move(name),          std::move(unit),    estimate,          half_width / std::sqrt(6.0),
                distribution::triangular, evaluation::type_b, degrees_of_freedom};
    }
    /// Oscillating between two limits (GUM H.1.3.4).
    /// @copydetails rectangular
    static input_quantity arcsine(std::string name, std::string unit, double estimate, double half_width,
                                  double degrees_of_freedom = unlimited) {
        return {std::move(name),       std::move(unit),    estimate,          half_width / std::sqrt(2.0),
                distribution::arcsine, evaluation::type_b, degrees_of_freedom};
    }
    /// From independent readings of the same thing: their mean, and the experimental standard deviation of
    /// the mean (GUM 4.2).
    /// @param name     what it is, for the budget
    /// @param unit     unit of the readings, for the budget
    /// @param readings at least two finite numbers
    /// @return the input quantity, with one degree of freedom less than there are readings
    /// @throws refusal if there are fewer than two readings, or one is not finite
    static input_quantity repeated(std::string name, std::string unit, std::span<double const> readings) {
        double const n = static_cast<double>(readings.size());
        require_range(name, argument::number_of_readings, n, "", 2.0, unlimited,
                      "a single reading shows no scatter");
        detail::spread const of(readings);
        return {std::move(name),      std::move(unit),    of.mean, std::sqrt(of.squares / (n * (n - 1.0))),
                distribution::normal, evaluation::type_a, n - 1.0};
    }

    std::string const& name() const noexcept { return name_; }   ///< @return what it is
    std::string const& unit() const noexcept { return unit_; }   ///< @return unit of estimate and uncertainty
    double estimate() const noexcept { return estimate_; }       ///< @return the best estimate
    double standard_uncertainty() const noexcept { return u_; }  ///< @return standard uncertainty, 0 or more
    aqueth::distribution distribution() const noexcept { return distribution_; }  ///< @return distribution
    aqueth::evaluation evaluation() const noexcept { return evaluation_; }        ///< @return type A or B
    /// @return degrees of freedom of the standard uncertainty, 1 or more, or infinite
    double degrees_of_freedom() const noexcept { return nu_; }

private:
    input_quantity(std::string name, std::string unit, double estimate, double u,
                   aqueth::distribution distribution, aqueth::evaluation evaluation, double nu)
        : name_(std::move(name)),
          unit_(std::move(unit)),
          estimate_(estimate),
          u_(u),
          distribution_(distribution),
          evaluation_(evaluation),
          nu_(nu) {
        double const largest = (std::numeric_limits<double>::max)();
        require_range(name_, argument::estimate, estimate_, unit_, -largest, largest);
        require_range(name_, argument::standard_uncertainty, u_, unit_, 0.0, unlimited);
        if (nu_ != unlimited) require_range(name_, argument::degrees_of_freedom, nu_, "", 1.0, unlimited);
    }

    std::string name_;
    std::string unit_;
    double estimate_;
    double u_;
    aqueth::distribution distribution_;
    aqueth::evaluation evaluation_;
    double nu_;
};

/// Correlation of the estimates of two input quantities (GUM 5.2.2).
struct correlation_coefficient {
    std::size_t first;   ///< index of one input quantity
    std::size_t second;  ///< index of another
    double value;        ///< -1 to 1
};

/// Correlation of two means from readings taken in pairs (GUM 5.2.3).
/// @param one   readings of one quantity, at least two that differ
/// @param other readings of the other, as many, in the same order, at least two that differ
/// @return correlation coefficient, -1 to 1
/// @throws refusal if there are fewer than two pairs, the numbers of readings differ, or there is no
///         spread
[[nodiscard]] inline double correlation_of_readings(std::span<double const> one,
                                                    std::span<double const> other) {
    double const n = static_cast<double>(one.size());
    require_range("correlation", argument::number_of_readings, n, "", 2.0, unlimited);
    require_range("correlation", argument::number_of_second_readings, static_cast<double>(other.size()), "",
                  n, n, "as many as first ones");
    detail::spread const a(one), b(other);
    double together = 0.0;
    for (std::size_t i = 0; i < one.size(); ++i) together += (one[i] - a.mean) * (other[i] - b.mean);
    require_range("correlation", argument::spread_of_the_readings, a.squares * b.squares, "",
                  (std::numeric_limits<double>::min)(), unlimited);
    return (std::min)(1.0, (std::max)(-1.0, together / std::sqrt(a.squares * b.squares)));
}

namespace detail {

/// All correlation coefficients of a set of input quantities, and their Cholesky factor, which exists only
/// for a consistent set.
class correlation_matrix {
public:
    correlation_matrix(std::size_t size, std::span<correlation_coefficient const> given)
        : size_(size), r_(size * size, 0.0) {
        for (std::size_t i = 0; i < size; ++i) r_[i * size + i] = 1.0;
        double const last = static_cast<double>(size) - 1.0;
        for (correlation_coefficient const& each : given) {
            require_range(property, argument::index, static_cast<double>(each.first), "", 0.0, last);
            require_range(property, argument::index, static_cast<double>(each.second), "", 0.0, last);
            require_range(property, argument::coefficient, each.value, "", -1.0, 1.0);
            auto const same_pair = [&](correlation_coefficient const& other) {
                return (std::min)(other.first, other.second) == (std::min)(each.first, each.second) &&
                       (std::max)(other.first, other.second) == (std::max)(each.first, each.second);
            };
            auto const times = std::count_if(given.begin(), given.end(), same_pair);
            require_range(property, argument::coefficients_of_one_pair, static_cast<double>(times), "", 1.0,
                          1.0);
            require_range(property, argument::quantities_in_a_pair, each.first == each.second ? 1.0 : 2.0, "",
                          2.0, 2.0);
            r_[each.first * size + each.second] = r_[each.second * size + each.first] = each.value;
            correlated_ = correlated_ || each.value != 0.0;
        }
        if (correlated_) factorize();
    }

    double operator()(std::size_t i, std::size_t j) const { return r_[i * size_ + j]; }
    bool any_with(std::size_t i) const {
        for (std::size_t j = 0; j < size_; ++j) {
            if (j != i && (*this)(i, j) != 0.0) return true;
        }
        return false;
    }
    /// lower triangle L with L L' = r; only if there is any correlation
    double factor(std::size_t i, std::size_t j) const { return factor_[i * size_ + j]; }

private:
    static constexpr char const* property = "correlation";

    // A semidefinite matrix is accepted: a fully correlated input has a pivot of zero, and then a column of
    // zeros.
    void factorize() {
        double const noise = 1e-12;
        factor_.assign(size_ * size_, 0.0);
        for (std::size_t j = 0; j < size_; ++j) {
            double pivot = 1.0;
            for (std::size_t k = 0; k < j; ++k) pivot -= factor(j, k) * factor(j, k);
            if (pivot < -noise) refuse(pivot);
            double const root = pivot > noise ? std::sqrt(pivot) : 0.0;
            factor_[j * size_ + j] = root;
            for (std::size_t i = j + 1; i < size_; ++i) {
                double rest = (*this)(i, j);
                for (std::size_t k = 0; k < j; ++k) rest -= factor(i, k) * factor(j, k);
                if (root == 0.0 && std::abs(rest) > 1e-6) refuse(-std::abs(rest));
                factor_[i * size_ + j] = root > 0.0 ? rest / root : 0.0;
            }
        }
    }
    [[noreturn]] static void refuse(double pivot) {
        raise_error(refusal(property, argument::least_pivot_of_the_matrix, pivot, "", 0.0, unlimited,
                            "the correlation matrix must be positive semidefinite"));
    }

    std::size_t size_;
    std::vector<double> r_;
    std::vector<double> factor_;
    bool correlated_ = false;
};

}  // namespace detail

/// Contribution of one input quantity to the uncertainty of a result.
struct budget_line {
    input_quantity input;      ///< the input quantity
    double sensitivity;        ///< sensitivity coefficient, change of the result per unit of the input
    double sensitivity_error;  ///< bound of its error; 0 (rounding) for automatic differentiation
    double contribution;       ///< |sensitivity| times standard uncertainty, in the unit of the result
    /// share of the variance of the result; each of two correlated inputs counts half of their covariance;
    /// the sum is 1
    double share;
};

/// A result with its combined standard uncertainty and the contributions to it (GUM 5 and 6).
struct [[nodiscard]] uncertainty_budget {
    double estimate;                 ///< the result, from the estimates of the inputs
    double standard_uncertainty;     ///< combined standard uncertainty, to first order
    std::vector<budget_line> lines;  ///< one line for each input, in their order
    /// by the Welch-Satterthwaite formula (GUM G.4.1); infinite if all uncertainties are certain; nothing if
    /// an uncertainty with finite degrees of freedom is correlated with another, where the formula does not
    /// hold
    std::optional<double> effective_degrees_of_freedom;

    /// @param probability coverage probability, 0.001 to 0.999999
    /// @return coverage factor: quantile of Student's t, effective degrees of freedom rounded down (GUM
    ///         G.6.4)
    /// @throws refusal if the probability is outside its range, or there are no effective degrees of
    ///         freedom
    double coverage_factor(double probability) const {
        detail::require_probability("coverage factor", probability);
        double const nu = effective_degrees_of_freedom
                              ? std::floor(*effective_degrees_of_freedom)
                              : require_range("coverage factor", argument::effective_degrees_of_freedom,
                                              std::numeric_limits<double>::quiet_NaN(), "", 1.0, unlimited,
                                              "inputs with finite ones are correlated");
        return numeric::student_quantile(0.5 + 0.5 * probability, nu);
    }
    /// @param probability coverage probability, 0.001 to 0.999999
    /// @return expanded uncertainty: half the length of the interval, about the estimate, that covers the
    ///         quantity with that probability
    /// @throws refusal as `coverage_factor`
    double expanded_uncertainty(double probability) const {
        return coverage_factor(probability) * standard_uncertainty;
    }
};

namespace detail {

inline std::vector<double> estimates(std::span<input_quantity const> inputs) {
    require_range("uncertainty", argument::number_of_input_quantities, static_cast<double>(inputs.size()), "",
                  1.0, unlimited);
    std::vector<double> x;
    for (input_quantity const& each : inputs) x.push_back(each.estimate());
    return x;
}

inline double require_finite(double value, char const* why) {
    double const largest = (std::numeric_limits<double>::max)();
    return require_range("uncertainty", argument::value_of_the_model, value, "", -largest, largest, why);
}

struct slope {
    double value;
    double error = 0.0;
    double over_step = 0.0;  ///< difference quotient over the whole first step
};

inline uncertainty_budget combine(double estimate, std::span<input_quantity const> inputs,
                                  std::span<slope const> slopes, correlation_matrix const& r) {
    uncertainty_budget result{require_finite(estimate, "at the estimates of the inputs"), 0.0, {}, unlimited};
    std::vector<double> signed_contribution;
    double largest = 0.0;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        require_finite(slopes[i].value, "its derivative at the estimates of the inputs");
        double const own = slopes[i].value * inputs[i].standard_uncertainty();
        signed_contribution.push_back(require_finite(own, "what an input adds to its uncertainty"));
        largest = (std::max)(largest, std::abs(own));
    }
    // In units of the largest, so that no square overflows or vanishes.
    double const unit = largest > 0.0 ? largest : 1.0;
    double variance = 0.0, per_freedom = 0.0;
    bool sure = true;
    for (std::size_t i = 0; i < inputs.size(); ++i) {
        double const own = signed_contribution[i] / unit;
        double with_all = 0.0;
        for (std::size_t j = 0; j < inputs.size(); ++j) with_all += r(i, j) * (signed_contribution[j] / unit);
        variance += own * with_all;
        result.lines.push_back(
            {inputs[i], slopes[i].value, slopes[i].error, std::abs(signed_contribution[i]), own * with_all});
        double const nu = inputs[i].degrees_of_freedom();
        per_freedom += own * own * own * own / nu;
        sure = sure && (own == 0.0 || nu == unlimited || !r.any_with(i));
    }
    variance = (std::max)(variance, 0.0);  // fully correlated inputs may cancel
    result.standard_uncertainty = require_finite(unit * std::sqrt(variance), "its uncertainty");
    for (budget_line& line : result.lines) line.share = variance > 0.0 ? line.share / variance + 0.0 : 0.0;
    if (!sure) {
        result.effective_degrees_of_freedom = std::nullopt;
    } else if (per_freedom > 0.0) {
        result.effective_degrees_of_freedom = variance * variance / per_freedom;
    }
    return result;
}

/// Slope of f at x by central differences, extrapolated to a step of zero (Ridders); f is evaluated within
/// one `step` of x.
template <class F>
slope ridders(F const& f, double x, double step) {
    constexpr std::size_t rows = 8;
    std::array<std::array<double, rows>, rows> a{};
    slope best{0.0, unlimited, 0.0};
    double h = step;
    for (std::size_t i = 0; i < rows; ++i, h /= 2.0) {
        double const above = f(x + h), below = f(x - h);
        a[0][i] = (above - below) / ((x + h) - (x - h));
        if (i == 0) best.over_step = a[0][0];
        double const rounding_alone =
            4.0 * std::numeric_limits<double>::epsilon() * (std::max)(std::abs(above), std::abs(below)) / h;
        double power = 4.0;
        for (std::size_t j = 1; j <= i; ++j, power *= 4.0) {
            a[j][i] = (power * a[j - 1][i] - a[j - 1][i - 1]) / (power - 1.0);
            double const error = (std::max)(
                {rounding_alone, std::abs(a[j][i] - a[j - 1][i]), std::abs(a[j][i] - a[j - 1][i - 1])});
            if (error <= best.error) best = {a[j][i], error, best.over_step};
        }
    }
    return best;
}

}  // namespace detail

/// Law of propagation of uncertainty, with exact derivatives.
///
/// The model is written once, generic in the scalar, over the kernels of `correlation/` and the plain-number
/// operations of measurement_model.hpp:
/// `propagate([](auto const& x) { return x[0] * density(x[1], x[2]); }, inputs)`.
/// @param model        callable: std::span<numeric::dual const> -> numeric::dual, the result from the values
///                     of the inputs, in their order
/// @param inputs       at least one
/// @param correlations pairs that are not independent; all others are
/// @return result, combined standard uncertainty, and the budget
/// @throws refusal if there is no input, the coefficients cannot hold together, or the model has no
///         finite value or derivative at the estimates
/// @par Accuracy
/// First order: exact for a linear model. `monte_carlo` shows the effect of the curvature of a model.
/// @par Source
/// JCGM 100:2008 (GUM), 5.1.2 and 5.2.2, @ref source_gum
template <class Model>
uncertainty_budget propagate(Model const& model, std::span<input_quantity const> inputs,
                             std::span<correlation_coefficient const> correlations = {}) {
    std::vector<double> const x = detail::estimates(inputs);
    detail::correlation_matrix const r(x.size(), correlations);
    std::vector<numeric::dual> seeded(x.begin(), x.end());
    std::vector<detail::slope> slopes;
    double estimate = 0.0;
    for (numeric::dual& each : seeded) {
        each.derivative = 1.0;
        numeric::dual const y = model(std::span<numeric::dual const>(seeded));
        each.derivative = 0.0;
        estimate = y.value;
        slopes.push_back({y.derivative});
    }
    return detail::combine(estimate, inputs, slopes, r);
}

/// Law of propagation of uncertainty for a model over doubles: any typed operation of the library, or a whole
/// run of a still.
///
/// Derivatives are extrapolated differences; the budget holds the bound of their error
/// (`budget_line::sensitivity_error`).
/// @param model        callable: std::span<double const> -> double; evaluated within one standard uncertainty
///                     of the estimates
/// @param inputs       at least one
/// @param correlations pairs that are not independent; all others are
/// @return result, combined standard uncertainty, and the budget
/// @throws refusal as `propagate`, or if the errors of the sensitivities could move the uncertainty by
///         more than 1 %: the model is not smooth; use `monte_carlo`
/// @par Source
/// JCGM 100:2008 (GUM), 5.1.3 note 2, with the extrapolation of C. J. F. Ridders, Advances in Engineering
/// Software 4 (1982) 75 (cited from memory), @ref source_gum
template <class Model>
uncertainty_budget propagate_by_differences(Model const& model, std::span<input_quantity const> inputs,
                                            std::span<correlation_coefficient const> correlations = {}) {
    std::vector<double> x = detail::estimates(inputs);
    detail::correlation_matrix const r(x.size(), correlations);
    double const estimate = model(std::span<double const>(x));
    std::vector<detail::slope> slopes;
    double doubt = 0.0, bend = 0.0;
    for (std::size_t i = 0; i < x.size(); ++i) {
        double const u = inputs[i].standard_uncertainty();
        slopes.push_back({0.0});
        if (u == 0.0) continue;  // a constant; its slope is not needed
        double& varied = x[i];
        auto const along = [&](double value) {
            varied = value;
            return model(std::span<double const>(x));
        };
        slopes.back() = detail::ridders(along, inputs[i].estimate(), u);
        varied = inputs[i].estimate();
        doubt += slopes.back().error * u;
        bend += std::abs(slopes.back().value - slopes.back().over_step) * u;
    }
    uncertainty_budget const result = detail::combine(estimate, inputs, slopes, r);
    auto const share = [&](double part) {
        return part > 0.0 ? 100.0 * part / result.standard_uncertainty : 0.0;
    };
    require_range("uncertainty", argument::bend_of_the_model_within_one_standard_uncertainty, share(bend),
                  "%", 0.0, 10.0, "the model must be nearly linear; use Monte Carlo");
    require_range("uncertainty", argument::error_of_the_derivatives_in_the_uncertainty, share(doubt), "%",
                  0.0, 1.0, "a smooth model");
    return result;
}

/// Correlation of two results that share inputs (GUM H.2.3).
/// @param one          budget of one result
/// @param other        budget of another, from the same inputs in the same order
/// @param correlations of the inputs, as given to both
/// @return correlation coefficient of the results, -1 to 1
/// @throws refusal if the budgets have different numbers of lines, a result has no uncertainty, or the
///         coefficients cannot hold together
[[nodiscard]] inline double
correlation_of_results(uncertainty_budget const& one, uncertainty_budget const& other,
                       std::span<correlation_coefficient const> correlations = {}) {
    double const lines = static_cast<double>(one.lines.size());
    require_range("correlation", argument::lines_of_the_second_budget,
                  static_cast<double>(other.lines.size()), "", lines, lines, "as many as the first has");
    require_range("correlation", argument::product_of_the_uncertainties,
                  one.standard_uncertainty * other.standard_uncertainty, "",
                  (std::numeric_limits<double>::min)(), unlimited);
    detail::correlation_matrix const r(one.lines.size(), correlations);
    double covariance = 0.0;
    for (std::size_t i = 0; i < one.lines.size(); ++i) {
        for (std::size_t j = 0; j < other.lines.size(); ++j) {
            covariance += r(i, j) * one.lines[i].sensitivity * other.lines[j].sensitivity *
                          one.lines[i].input.standard_uncertainty() *
                          other.lines[j].input.standard_uncertainty();
        }
    }
    double const value = covariance / (one.standard_uncertainty * other.standard_uncertainty);
    return (std::min)(1.0, (std::max)(-1.0, value));
}

}  // namespace aqueth::inline AQUETH_ABI
