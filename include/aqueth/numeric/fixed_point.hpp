// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

namespace aqueth::inline AQUETH_ABI::numeric {

/// A fixed point x = f(x) of a function of N variables that depends little on x: substitution, improved by
/// Broyden's first update (C. G. Broyden, Math. Comp. 19 (1965) 577), which learns from the steps taken how f
/// depends on x. The next search begins with what the last one learned.
template <std::size_t N>
class fixed_point {
public:
    using vector = std::array<double, N>;  ///< the variables

    /// @param f         callable: vector -> vector
    /// @param start     where to begin
    /// @param tolerance greatest difference between x and f(x)
    /// @param longest   greatest step in a variable
    /// @param most      greatest number of evaluations
    /// @return last argument of f; `converged` tells whether it is a fixed point
    template <class F>
    vector find(F const& f, vector const& start, double tolerance, double longest, int most) {
        vector x = start;
        vector miss{}, step{};
        double best = 0.0;
        evaluations_ = 0;
        converged_ = false;
        for (;;) {
            vector const found = f(x);
            ++evaluations_;
            vector now;
            for (std::size_t i = 0; i < N; ++i) now[i] = found[i] - x[i];
            double const size = largest(now);
            converged_ = size <= tolerance;
            if (converged_ || evaluations_ == most) return x;
            if (evaluations_ > 1) learn(step, now, miss);
            // What it learned elsewhere may mislead.
            if (evaluations_ > 1 && size > 4.0 * best) inverse_ = identity();
            best = evaluations_ > 1 ? (std::min)(best, size) : size;
            miss = now;
            step = times(inverse_, miss);
            double const length = largest(step);
            double const factor = length > longest ? longest / length : 1.0;
            for (std::size_t i = 0; i < N; ++i) x[i] += step[i] *= factor;
        }
    }

    bool converged() const { return converged_; }     ///< @return whether the last search found one
    int evaluations() const { return evaluations_; }  ///< @return evaluations in the last search

private:
    using matrix = std::array<vector, N>;

    static matrix identity() {
        matrix m{};
        for (std::size_t i = 0; i < N; ++i) m[i][i] = 1.0;
        return m;
    }
    static vector times(matrix const& m, vector const& v) {
        vector r{};
        for (std::size_t i = 0; i < N; ++i)
            for (std::size_t j = 0; j < N; ++j) r[i] += m[i][j] * v[j];
        return r;
    }
    static double largest(vector const& v) {
        double most = 0.0;
        for (double const each : v) most = (std::max)(most, std::abs(each));
        return most;
    }
    /// makes inverse_ (of the derivative of x - f) fit the last step
    void learn(vector const& step, vector const& now, vector const& before) {
        vector change;
        for (std::size_t i = 0; i < N; ++i) change[i] = before[i] - now[i];
        vector const expected = times(inverse_, change);
        double length = 0.0, projected = 0.0;
        vector left{};
        for (std::size_t i = 0; i < N; ++i) {
            length += step[i] * step[i];
            projected += step[i] * expected[i];
            for (std::size_t j = 0; j < N; ++j) left[i] += step[j] * inverse_[j][i];
        }
        if (!(std::abs(projected) > 0.1 * length)) return;  // nearly singular
        for (std::size_t i = 0; i < N; ++i)
            for (std::size_t j = 0; j < N; ++j)
                inverse_[i][j] += (step[i] - expected[i]) * left[j] / projected;
    }

    matrix inverse_ = identity();
    bool converged_ = false;
    int evaluations_ = 0;
};

}  // namespace aqueth::inline AQUETH_ABI::numeric
