// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <array>
#include <cmath>
#include <cstddef>
#include <utility>

namespace aqueth::inline AQUETH_ABI {

/// Many draws of one quantity, with the arithmetic of a number: a scalar for models that `monte_carlo`
/// evaluates in blocks (`in_blocks`).
///
/// It has + - * /, exp, log, sqrt and abs, draw by draw. It has no comparisons: draws need not take the same
/// branch. `of` calls any other function.
class draws {
public:
    static constexpr std::size_t count = 256;  ///< number of draws

    /// Draws without values, which must be set before they are read.
    draws() = default;
    /// @param same value of all draws
    draws(double same) { values_.fill(same); }  // implicit: constants in formulas

    /// @param i index of a draw, below `count`
    /// @return the draw
    double& operator[](std::size_t i) { return values_[i]; }
    /// @param i index of a draw, below `count`
    /// @return the draw
    double const& operator[](std::size_t i) const { return values_[i]; }
    double* data() { return values_.data(); }              ///< @return the first draw
    double const* data() const { return values_.data(); }  ///< @return the first draw
    static constexpr std::size_t size() { return count; }  ///< @return number of draws

    /// @cond
    friend draws operator-(draws const& a) { return 0.0 - a; }
    friend draws operator+(draws const& a, draws const& b) {
        return of([](double x, double y) { return x + y; }, a, b);
    }
    friend draws operator-(draws const& a, draws const& b) {
        return of([](double x, double y) { return x - y; }, a, b);
    }
    friend draws operator*(draws const& a, draws const& b) {
        return of([](double x, double y) { return x * y; }, a, b);
    }
    friend draws operator/(draws const& a, draws const& b) {
        return of([](double x, double y) { return x / y; }, a, b);
    }
    friend draws operator+(draws const& a, double b) {
        return of([b](double x) { return x + b; }, a);
    }
    friend draws operator-(draws const& a, double b) {
        return of([b](double x) { return x - b; }, a);
    }
    friend draws operator*(draws const& a, double b) {
        return of([b](double x) { return x * b; }, a);
    }
    friend draws operator/(draws const& a, double b) {
        return of([b](double x) { return x / b; }, a);
    }
    friend draws operator+(double a, draws const& b) {
        return of([a](double y) { return a + y; }, b);
    }
    friend draws operator-(double a, draws const& b) {
        return of([a](double y) { return a - y; }, b);
    }
    friend draws operator*(double a, draws const& b) {
        return of([a](double y) { return a * y; }, b);
    }
    friend draws operator/(double a, draws const& b) {
        return of([a](double y) { return a / y; }, b);
    }
    friend draws exp(draws const& a) {
        return of([](double x) { return std::exp(x); }, a);
    }
    friend draws log(draws const& a) {
        return of([](double x) { return std::log(x); }, a);
    }
    friend draws sqrt(draws const& a) {
        return of([](double x) { return std::sqrt(x); }, a);
    }
    friend draws abs(draws const& a) {
        return of([](double x) { return std::abs(x); }, a);
    }
    /// @endcond

    /// Any function, one draw after the other.
    /// @param function callable: a number of each argument -> number
    /// @param arguments of the function, all draws
    /// @return its results
    template <class Function, class... Draws>
    static draws of(Function const& function, Draws const&... arguments) {
        draws result;
        for (std::size_t i = 0; i < count; ++i) result.values_[i] = function(arguments.values_[i]...);
        return result;
    }

private:
    alignas(64) std::array<double, count> values_;
};

/// A model that is evaluated for many draws at once.
template <class Model>
struct block_model {
    Model model;  ///< callable: std::span<draws const> -> draws
};

/// Marks a model that `monte_carlo` and `adaptive_monte_carlo` evaluate for 256 draws at once: a model
/// generic in its numbers, like those for `propagate`. The functions of `measurement_model` over draws
/// (`array_draws.hpp`) go through the loops over arrays.
/// @param model callable: std::span<draws const> -> draws; captures what it needs
/// @return the model, marked
template <class Model>
block_model<Model> in_blocks(Model model) {
    return block_model<Model>{std::move(model)};
}

}  // namespace aqueth::inline AQUETH_ABI
