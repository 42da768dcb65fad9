// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/polynomial.hpp>

namespace aqueth::numeric {

/// Finds the root of a monotone function inside a bracket by Newton's method, falling back to bisection.
///
/// Boost.Math has root finders of the same kind; this one exists because the inverse of a correlation is
/// property computation (the library's own trade), it must work on constant expressions,
/// automatic-differentiation and multiprecision scalars alike, and it has to stop at the rounding noise of
/// the function, which only the caller knows.
///
/// @param f      callable: x -> value_and_slope; strictly monotone between the ends, slope never zero at the
///               root
/// @param lower  lower end of the bracket
/// @param upper  upper end of the bracket
/// @param guess  first guess, between the ends
/// @param noise  residual (absolute value of f) that rounding alone can produce; one last Newton step is
///               taken from there
/// @return the root; the nearer end when rounding puts the root just outside the bracket; NaN if f gives NaN.
///         Cannot fail to converge: a step that leaves the bracket or does not halve the previous one is
///         replaced by bisection, so the iteration ends after at most the number of bits of T.
/// @note With an automatic-differentiation scalar the last Newton step carries the exact first derivative of
///       the root with respect to the parameters inside f.
template <class F, class T>
constexpr T bracketed_newton(F const& f, T lower, T upper, T const& guess, T const& noise) {
    auto const magnitude = [](T const& v) { return v < T(0) ? T(-v) : v; };
    bool lower_tried = false;
    bool upper_tried = false;
    T x = guess;
    T previous = upper - lower;
    for (int iteration = 0; iteration < 200; ++iteration) {
        value_and_slope<T> const at_x = f(x);
        T const step = at_x.value / at_x.slope;
        if (!(step == step)) return step;  // NaN in, NaN out
        T next = x - step;
        bool const converged = magnitude(at_x.value) <= noise;
        if (converged) return next < lower ? lower : (next > upper ? upper : next);
        if (step < T(0)) {  // the root lies above x
            lower = x;
            lower_tried = true;
        } else {
            upper = x;
            upper_tried = true;
        }
        T const middle = lower + (upper - lower) / T(2);
        if (next <= lower) {
            next = lower_tried ? middle : lower;
        } else if (next >= upper) {
            next = upper_tried ? middle : upper;
        } else if (iteration > 2 && magnitude(step) > previous / T(2)) {
            next = middle;
        }
        if (next == x || middle == lower || middle == upper)
            return next;  // the bracket is down to neighbours
        previous = magnitude(T(next - x));
        x = next;
    }
    return x;
}

}  // namespace aqueth::numeric
