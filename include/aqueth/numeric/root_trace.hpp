// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/root.hpp>

#include <cmath>
#include <limits>

namespace aqueth::inline AQUETH_ABI::numeric {

/// Root finder with memory, for functions that change little from call to call: starts the secant method from
/// the extrapolated previous root and falls back to bracketing. There is one root, so memory only saves time.
class root_trace {
public:
    /// @param f     callable: double -> double, changing its sign once between the ends
    /// @param key   the variable that changes from call to call
    /// @param lower one end of the bracket
    /// @param upper the other
    /// @param width callable: accepted error of the root there
    /// @return the root; NaN if f does not change its sign
    template <class F, class Width>
    double find(F const& f, double key, double lower, double upper, Width const& width) {
        double const guess = root_ + (key - key_) * drift_;  // NaN in the beginning: compared quietly
        double root = std::isgreater(guess, lower) && std::isless(guess, upper)
                          ? root_by_secants(f, guess, lower, upper, width(guess))
                          : nothing;
        if (std::isnan(root)) {
            steepness_ = nothing;
            double const rough = bracketed_root(f, lower, upper, 1e-6 * (upper - lower));
            if (std::isnan(rough)) return nothing;
            root = root_by_secants(f, rough, lower, upper, width(rough));
            if (std::isnan(root)) root = bracketed_root(f, lower, upper, width(rough));
        }
        remember(key, root);
        return root;
    }

private:
    static constexpr double nothing = std::numeric_limits<double>::quiet_NaN();

    /// the root by the secant method, or NaN if it is not near
    template <class F>
    double root_by_secants(F const& f, double guess, double lower, double upper, double width) {
        double a = guess;
        double fa = f(a);
        double steepness = steepness_;
        double step = std::isnan(steepness) ? 0.0 : -fa / steepness;
        // A step from the last call's slope is too uncertain to accept the root: take at least 100 widths.
        if (std::abs(step) < 100.0 * width) step = std::copysign(100.0 * width, step);
        for (int i = 0; i < 8; ++i) {
            if (std::abs(fa) <= 4e-16) return a;
            double const b = a + step;
            if (!(b > lower && b < upper)) return nothing;
            if (std::abs(step) <= width) {
                steepness_ = steepness;
                return b;
            }
            double const fb = f(b);
            bool const nearer = std::abs(fb) < 0.5 * std::abs(fa);
            if (!nearer && std::abs(fa) < 1e-14) return a;  // down at rounding
            if (!nearer && i > 1) return nothing;
            steepness = (fb - fa) / step;
            a = b;
            fa = fb;
            step = -fa / steepness;
        }
        return nothing;
    }

    void remember(double key, double root) {
        double const change = key - key_;
        if (std::isnan(change)) {
            drift_ = 0.0;
        } else if (std::abs(change) > 1e-9 * std::abs(key)) {
            drift_ = (root - root_) / change;
        }
        key_ = key;
        root_ = root;
    }

    double key_ = nothing;
    double root_ = nothing;
    double drift_ = nothing;      // of the root with the key
    double steepness_ = nothing;  // of the function at the root
};

}  // namespace aqueth::inline AQUETH_ABI::numeric
