// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>

/// Integration of ordinary differential equations, for small systems of known size.
///
/// Boost.Odeint holds the same method and many more. It costs four seconds of compile time in every file that
/// includes it; the run of a still needs one step of one method, which is thirty lines.
namespace aqueth::inline AQUETH_ABI::numeric {

/// The unknowns of a system of N equations, or their slopes.
template <std::size_t N>
using state = std::array<double, N>;

/// One step of an integration.
template <std::size_t N>
struct rk_step {
    state<N> end;    ///< unknowns at the end of the step
    state<N> slope;  ///< their slopes there
    double error;    ///< largest estimated error of the step over the scale of its unknown

    /// @param theta part of the step, 0 to 1
    /// @return unknowns there, by the method's own polynomial of fourth order (E. Hairer, S. P. Norsett, G.
    ///         Wanner, Solving Ordinary Differential Equations I, 2nd ed. 1993, II.6)
    state<N> at(double theta) const {
        state<N> y;
        for (std::size_t i = 0; i < N; ++i) {
            y[i] = start[i] +
                   theta *
                       (change[i] + (1.0 - theta) * (bend[i] + theta * (twist[i] + (1.0 - theta) * rest[i])));
        }
        return y;
    }

    state<N> start;   ///< first coefficient of that polynomial: the unknowns where the step begins
    state<N> change;  ///< second: by how much they change
    state<N> bend;    ///< third
    state<N> twist;   ///< fourth
    state<N> rest;    ///< fifth
};

/// One step by the method of J. R. Dormand and P. J. Prince (J. Comput. Appl. Math. 6 (1980) 19): fifth
/// order, with an error estimate of fourth order.
/// @param f     callable: (double t, state<N> const& y) -> state<N>, the slopes
/// @param t     where the step begins
/// @param y     unknowns there
/// @param slope slopes there
/// @param h     length of the step
/// @param scale sizes against which errors are measured, above 0
/// @return end of the step, slopes there, error
template <std::size_t N, class F>
rk_step<N> dormand_prince(F const& f, double t, state<N> const& y, state<N> const& slope, double h,
                          state<N> const& scale) {
    auto const moved = [&](auto const&... term) {  // y + h (a1 k1 + a2 k2 + ...)
        state<N> r = y;
        for (std::size_t i = 0; i < N; ++i) r[i] += h * ((term.first * (*term.second)[i]) + ...);
        return r;
    };
    struct term {
        double first;
        state<N> const* second;
    };
    state<N> const& k1 = slope;
    state<N> const k2 = f(t + h / 5, moved(term{1.0 / 5, &k1}));
    state<N> const k3 = f(t + 3 * h / 10, moved(term{3.0 / 40, &k1}, term{9.0 / 40, &k2}));
    state<N> const k4 =
        f(t + 4 * h / 5, moved(term{44.0 / 45, &k1}, term{-56.0 / 15, &k2}, term{32.0 / 9, &k3}));
    state<N> const k5 = f(t + 8 * h / 9, moved(term{19372.0 / 6561, &k1}, term{-25360.0 / 2187, &k2},
                                               term{64448.0 / 6561, &k3}, term{-212.0 / 729, &k4}));
    state<N> const k6 =
        f(t + h, moved(term{9017.0 / 3168, &k1}, term{-355.0 / 33, &k2}, term{46732.0 / 5247, &k3},
                       term{49.0 / 176, &k4}, term{-5103.0 / 18656, &k5}));
    rk_step<N> step;
    step.end = moved(term{35.0 / 384, &k1}, term{500.0 / 1113, &k3}, term{125.0 / 192, &k4},
                     term{-2187.0 / 6784, &k5}, term{11.0 / 84, &k6});
    step.slope = f(t + h, step.end);
    step.error = 0.0;
    for (std::size_t i = 0; i < N; ++i) {
        double const e = h * (71.0 / 57600 * k1[i] - 71.0 / 16695 * k3[i] + 71.0 / 1920 * k4[i] -
                              17253.0 / 339200 * k5[i] + 22.0 / 525 * k6[i] - step.slope[i] / 40);
        step.error = (std::max)(step.error, std::abs(e) / scale[i]);
        step.start[i] = y[i];
        step.change[i] = step.end[i] - y[i];
        step.bend[i] = h * k1[i] - step.change[i];
        step.twist[i] = step.change[i] - h * step.slope[i] - step.bend[i];
        step.rest[i] = h * (-12715105075.0 / 11282082432 * k1[i] + 87487479700.0 / 32700410799 * k3[i] -
                            10690763975.0 / 1880347072 * k4[i] + 701980252875.0 / 199316789632 * k5[i] -
                            1453857185.0 / 822651844 * k6[i] + 69997945.0 / 29380423 * step.slope[i]);
    }
    return step;
}

/// Length for the next try of a step.
/// @param h         length just tried
/// @param error     its error, as `rk_step` has it
/// @param tolerance error allowed; the step was good if the error is not above it
/// @return a length that should just meet the tolerance, from a fifth to four times the length tried
inline double next_step(double h, double error, double tolerance) {
    double const factor = error > 0.0 ? 0.9 * std::pow(tolerance / error, 0.2) : 4.0;
    return h * (std::min)(4.0, (std::max)(0.2, factor));
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
