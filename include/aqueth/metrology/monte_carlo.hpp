// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/error.hpp>
#include <aqueth/metrology/draws.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/numeric/random.hpp>

#include <boost/sort/pdqsort/pdqsort.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>
#include <span>
#include <utility>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// Citation, range and accuracy of the propagation of distributions.
inline constexpr correlation::source jcgm_101_cited{
    "JCGM 101:2008 (GUM, Supplement 1), Propagation of distributions using a Monte Carlo method, clauses 6 "
    "to 8",
    "any measurement with one result",
    "1e6 trials know a standard uncertainty to 0.07 %; the worked examples 9.2 and 9.3 as printed"};

/// An interval that covers a quantity with a stated probability.
struct [[nodiscard]] coverage_interval {
    double lower;  ///< lower end
    double upper;  ///< upper end
};

/// The distribution of a result from trials (JCGM 101:2008, 7.5).
class [[nodiscard]] result_distribution {
public:
    /// @param values results of the trials, at least two, finite; in any order
    /// @throws refusal if there are fewer than two
    explicit result_distribution(std::vector<double> values) : sorted_(std::move(values)) {
        require_range("Monte Carlo", argument::number_of_trials, static_cast<double>(sorted_.size()), "", 2.0,
                      unlimited);
        boost::sort::pdqsort(sorted_.begin(), sorted_.end());  // a third of the time of std::sort
        detail::spread const of(sorted_);
        estimate_ = of.mean;
        u_ = std::sqrt(of.squares / (static_cast<double>(sorted_.size()) - 1.0));
    }

    std::size_t trials() const noexcept { return sorted_.size(); }       ///< @return number of trials
    double estimate() const noexcept { return estimate_; }               ///< @return mean of the results
    double standard_uncertainty() const noexcept { return u_; }          ///< @return their standard deviation
    std::span<double const> sorted() const noexcept { return sorted_; }  ///< @return the results in order

    /// @param probability coverage probability, 0.001 to 0.999999
    /// @return the interval that leaves the same probability on either side
    /// @throws refusal if the probability is outside its range, or there are too few trials for it
    coverage_interval interval(double probability) const {
        std::size_t const q = covered(probability);
        std::size_t const r = (sorted_.size() - q + 1) / 2;  // the r-th, counted from 1
        return {sorted_[r - 1], sorted_[r + q - 1]};
    }
    /// @param probability coverage probability, 0.001 to 0.999999
    /// @return the shortest interval
    /// @throws refusal as `interval`
    coverage_interval shortest_interval(double probability) const {
        std::size_t const q = covered(probability);
        std::size_t best = 0;
        for (std::size_t r = 1; r + q < sorted_.size(); ++r) {
            if (sorted_[r + q] - sorted_[r] < sorted_[best + q] - sorted_[best]) best = r;
        }
        return {sorted_[best], sorted_[best + q]};
    }

private:
    /// number of results in an interval (JCGM 101, 7.7.2)
    std::size_t covered(double probability) const {
        detail::require_probability("coverage interval", probability);
        double const count = static_cast<double>(sorted_.size());
        double const q = std::floor(probability * count + 0.5);
        require_range("coverage interval", argument::number_of_results_covered, q, "", 1.0, count - 1.0,
                      "more trials show more");
        return static_cast<std::size_t>(q);
    }

    std::vector<double> sorted_;
    double estimate_ = 0.0;
    double u_ = 0.0;
};

namespace detail {

/// Draws the inputs in blocks. A run begins like every longer one. An input without uncertainty takes no
/// random numbers. Uniform numbers are the same with every compiler. Other distributions may differ in the
/// last digits: normal ones by fused multiply-adds, arcsine and Student's t also by the C library.
class sampler {
public:
    sampler(std::span<input_quantity const> inputs, std::span<correlation_coefficient const> correlations,
            std::uint64_t seed)
        : inputs_(inputs), r_(estimates(inputs).size(), correlations), x_(inputs.size()), uniform_(seed) {
        for (std::size_t i = 0; i < inputs.size(); ++i) {
            bool const normal = inputs[i].distribution() == distribution::normal;
            double const nu = inputs[i].degrees_of_freedom();
            if (normal && nu != unlimited) {
                require_range(
                    "Monte Carlo",
                    argument_name{argument::degrees_of_freedom, "degrees of freedom of " + inputs[i].name()},
                    nu, "", 3.0, unlimited, "fewer have no standard deviation");
            }
            bool const correlated = r_.any_with(i);
            correlated_.push_back(correlated);
            if (correlated && !(normal && nu == unlimited)) {
                raise_error(refusal(
                    "Monte Carlo",
                    {argument::correlation_coefficient, "greatest correlation of " + inputs[i].name()},
                    greatest(i), "", 0.0, 0.0,
                    "only normal quantities of known uncertainty can be correlated"));
            }
            x_[i] = draws(inputs[i].estimate());
        }
    }

    /// @param wanted number of trials
    /// @return how many of them this block has, at least one
    std::size_t next(std::size_t wanted) {
        if (used_ == draws::count) {
            draw();
            used_ = 0;
        }
        return (std::min)(wanted, draws::count - used_);
    }
    /// @param trials how many of the block have been made
    void made(std::size_t trials) { used_ += trials; }

    std::size_t used() const { return used_; }           ///< @return number of trials of the block made
    std::span<draws const> block() const { return x_; }  ///< @return the inputs, one after the other

private:
    double greatest(std::size_t i) const {
        double r = 0.0;
        for (std::size_t j = 0; j < inputs_.size(); ++j) {
            if (j != i && std::abs(r_(i, j)) > std::abs(r)) r = r_(i, j);
        }
        return r;
    }

    bool varies(std::size_t i) const { return correlated_[i] || inputs_[i].standard_uncertainty() > 0.0; }

    void draw() {
        for (std::size_t i = 0; i < inputs_.size(); ++i) {
            if (varies(i)) standardize(inputs_[i], x_[i]);
        }
        for (std::size_t i = inputs_.size(); i-- > 0;) {  // each from those before it
            if (!correlated_[i]) continue;
            draws z = r_.factor(i, i) * x_[i];
            for (std::size_t j = 0; j < i; ++j) {
                if (r_.factor(i, j) != 0.0) z = z + r_.factor(i, j) * x_[j];
            }
            x_[i] = z;
        }
        for (std::size_t i = 0; i < inputs_.size(); ++i) {
            if (varies(i)) x_[i] = inputs_[i].estimate() + inputs_[i].standard_uncertainty() * x_[i];
        }
    }

    /// with mean 0, to be scaled by the standard uncertainty
    void standardize(input_quantity const& input, draws& z) {
        std::span<double> const all(z.data(), draws::count);
        switch (input.distribution()) {
        case distribution::rectangular:
            uniform_.fill(all);
            z = std::numbers::sqrt3 * (2.0 * z - 1.0);
            return;
        case distribution::triangular: {
            draws second;
            uniform_.fill(all);
            uniform_.fill({second.data(), draws::count});
            z = std::sqrt(6.0) * (z + second - 1.0);
            return;
        }
        case distribution::arcsine:
            uniform_.fill(all);
            for (double& each : all) each = std::numbers::sqrt2 * std::sin(2.0 * std::numbers::pi * each);
            return;
        case distribution::normal: break;
        }
        double const nu = input.degrees_of_freedom();
        if (nu == unlimited) {
            static numeric::normal_quantiles const quantile;
            uniform_.fill(all);
            for (double& each : all) each = quantile(each);
        } else {
            for (double& each : all) each = student(nu);
        }
    }

    /// Student's t by the polar method of R. W. Bailey, Mathematics of Computation 62 (1994) 779 (cited from
    /// memory).
    double student(double nu) {
        for (;;) {
            double const u = 2.0 * uniform_.next() - 1.0;
            double const v = 2.0 * uniform_.next() - 1.0;
            double const w = u * u + v * v;
            if (w > 1.0) continue;
            return u * std::sqrt(nu * std::expm1(-2.0 * std::log(w) / nu) / w);
        }
    }

    std::span<input_quantity const> inputs_;
    correlation_matrix r_;
    std::vector<bool> correlated_;
    std::vector<draws> x_;
    numeric::uniform_numbers uniform_;
    std::size_t used_ = draws::count;
};

template <class Model>
void try_often(Model const& model, sampler& from, std::size_t trials, std::vector<double>& results) {
    std::vector<double> x(from.block().size());
    while (trials > 0) {
        std::size_t const ready = from.next(trials);
        std::span<draws const> const block = from.block();
        for (std::size_t k = from.used(); k < from.used() + ready; ++k) {
            for (std::size_t i = 0; i < x.size(); ++i) x[i] = block[i][k];
            results.push_back(require_finite(model(std::span<double const>(x)), "at a draw of the inputs"));
        }
        from.made(ready);
        trials -= ready;
    }
}

template <class Model>
void try_often(block_model<Model> const& blocks, sampler& from, std::size_t trials,
               std::vector<double>& results) {
    while (trials > 0) {
        std::size_t const ready = from.next(trials);
        draws const y = blocks.model(from.block());
        for (std::size_t k = from.used(); k < from.used() + ready; ++k)
            results.push_back(require_finite(y[k], "at a draw of the inputs"));
        from.made(ready);
        trials -= ready;
    }
}

}  // namespace detail

inline constexpr double fewest_trials = 100.0;  ///< of a Monte Carlo evaluation
inline constexpr double most_trials = 1e8;      ///< of a Monte Carlo evaluation; 0.8 GB of results

/// Propagation of distributions by a fixed number of trials.
///
/// The same seed gives the same trials on one machine with one build. Elsewhere the uniform random numbers
/// are the same to the bit, and what is computed from them may differ in the last digits.
/// @param model        callable: std::span<double const> -> double; or `in_blocks` of one over draws, which
///                     takes a fraction of the time
/// @param inputs       at least one
/// @param trials       number of trials, 100 to 1e8; 1e6 gives two digits of a 95 % interval
/// @param correlations pairs that are not independent: both normal, with infinite degrees of freedom
/// @param seed         of the random numbers
/// @return distribution of the result
/// @throws refusal if there is no input, the number of trials is outside its range, the coefficients
///         cannot hold together, a correlated input is not normal, a normal input has fewer than three
///         degrees of freedom, a trial is not finite; and the errors of the model
/// @par Accuracy
/// Standard uncertainty to about 1 / sqrt(2 trials): 0.07 % with 1e6.
/// @par Source
/// JCGM 101:2008, 6.4 and 7, @ref source_jcgm_101
template <class Model>
result_distribution
monte_carlo(Model const& model, std::span<input_quantity const> inputs, std::size_t trials,
            std::span<correlation_coefficient const> correlations = {}, std::uint64_t seed = 1) {
    require_range("Monte Carlo", argument::number_of_trials, static_cast<double>(trials), "", fewest_trials,
                  most_trials);
    detail::sampler from(inputs, correlations, seed);
    std::vector<double> results;
    results.reserve(trials);
    detail::try_often(model, from, trials, results);
    return result_distribution(std::move(results));
}

/// Half a unit of the last significant digit of an uncertainty.
/// @param standard_uncertainty above 0, finite
/// @param significant_digits   number of significant digits, 1 to 4
/// @return numerical tolerance, in the unit of the uncertainty
/// @throws refusal if an argument is outside its range
/// @par Source
/// JCGM 101:2008, 7.9.2, @ref source_jcgm_101
[[nodiscard]] inline double numerical_tolerance(double standard_uncertainty, int significant_digits) {
    require_range("numerical tolerance", argument::standard_uncertainty, standard_uncertainty, "",
                  (std::numeric_limits<double>::min)(), unlimited);
    require_range("numerical tolerance", argument::significant_digits, significant_digits, "", 1.0, 4.0);
    double exponent = std::floor(std::log10(standard_uncertainty)) - (significant_digits - 1);
    // 0.0996 is 10 x 10^-2, not 99 x 10^-3, once it is rounded to two digits
    if (std::round(standard_uncertainty / std::pow(10.0, exponent)) >= std::pow(10.0, significant_digits)) {
        exponent += 1.0;
    }
    return 0.5 * std::pow(10.0, exponent);
}

/// Propagation of distributions until estimate, uncertainty and coverage interval have settled.
/// @param model              as `monte_carlo`
/// @param inputs             at least one
/// @param probability        coverage probability, 0.001 to 0.999998
/// @param significant_digits digits of the uncertainty that must be right, 1 to 4
/// @param correlations       as `monte_carlo`
/// @param seed               of the random numbers
/// @return distribution of the result
/// @throws refusal as `monte_carlo`, or if 1e8 trials do not settle it
/// @par Source
/// JCGM 101:2008, 7.9.4, @ref source_jcgm_101
template <class Model>
result_distribution adaptive_monte_carlo(Model const& model, std::span<input_quantity const> inputs,
                                         double probability, int significant_digits = 2,
                                         std::span<correlation_coefficient const> correlations = {},
                                         std::uint64_t seed = 1) {
    // A block has 100 / (1 - probability) trials, and a comparison needs two blocks.
    require_range("Monte Carlo", argument::probability, probability, "", 0.001, 1.0 - 200.0 / most_trials,
                  "1e8 trials show no rarer result");
    static_cast<void>(numerical_tolerance(1.0, significant_digits));  // refuses digits out of range
    double const block_size = (std::max)(1e4, std::ceil(100.0 / (1.0 - probability)));
    auto const block = static_cast<std::size_t>(block_size);
    detail::sampler from(inputs, correlations, seed);
    std::vector<double> results;
    std::array<std::vector<double>, 4> settled;  // one value for each block: estimate, uncertainty, two ends
    for (;;) {
        require_range("Monte Carlo", argument::number_of_trials_that_settle_the_result,
                      static_cast<double>(results.size() + block), "", block_size, most_trials);
        std::size_t const before = results.size();
        detail::try_often(model, from, block, results);
        auto const begin = results.begin() + static_cast<std::ptrdiff_t>(before);
        result_distribution const one(std::vector<double>(begin, results.end()));
        coverage_interval const ends = one.interval(probability);
        double const found[] = {one.estimate(), one.standard_uncertainty(), ends.lower, ends.upper};
        for (std::size_t i = 0; i < 4; ++i) settled[i].push_back(found[i]);
        double const h = static_cast<double>(settled[0].size());
        if (h < 2.0) continue;
        // all trials so far, from the results of the blocks
        double squares = block_size * detail::spread(settled[0]).squares;
        for (double const u : settled[1]) squares += u * u * (block_size - 1.0);
        double const u = std::sqrt(squares / (h * block_size - 1.0));
        bool const sure = u == 0.0 || std::all_of(settled.begin(), settled.end(), [&](auto const& values) {
                              double const s = std::sqrt(detail::spread(values).squares / (h * (h - 1.0)));
                              return 2.0 * s <= numerical_tolerance(u, significant_digits);
                          });
        if (sure) return result_distribution(std::move(results));
    }
}

/// Comparison of the first-order result with the propagated distribution.
struct [[nodiscard]] validation {
    double tolerance;  ///< numerical tolerance of the uncertainty
    double lower;      ///< by how much the lower ends of the coverage intervals differ
    double upper;      ///< by how much the upper ends differ
    bool valid;        ///< neither difference exceeds the tolerance
};

/// Compares the coverage interval of a budget with that of the trials.
/// @param budget             result of `propagate`
/// @param trials             result of `monte_carlo` or `adaptive_monte_carlo` for the same model and inputs
/// @param probability        coverage probability, 0.001 to 0.999999
/// @param significant_digits significant digits of the uncertainty, 1 to 4
/// @return differences, and whether they are within the tolerance
/// @throws refusal if an argument is outside its range or the budget has no uncertainty
/// @par Source
/// JCGM 101:2008, 8.1, @ref source_jcgm_101
inline validation validate(uncertainty_budget const& budget, result_distribution const& trials,
                           double probability, int significant_digits = 2) {
    double const tolerance = numerical_tolerance(budget.standard_uncertainty, significant_digits);
    double const half = budget.expanded_uncertainty(probability);
    coverage_interval const drawn = trials.interval(probability);
    double const lower = std::abs(budget.estimate - half - drawn.lower);
    double const upper = std::abs(budget.estimate + half - drawn.upper);
    return {tolerance, lower, upper, lower <= tolerance && upper <= tolerance};
}

}  // namespace aqueth::inline AQUETH_ABI
