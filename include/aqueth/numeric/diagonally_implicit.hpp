// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

/// Integration of stiff differential equations, also with some that hold at every moment: M dy/dt = g(y) with
/// a constant diagonal matrix M, some of whose entries may be 0.
///
/// Boost.Odeint's method for stiff equations needs the exact matrix of derivatives, stores it in full, and
/// cannot take an M. This one leaves the solution of its equations to the caller, who knows their structure.
namespace aqueth::inline AQUETH_ABI::numeric {

/// The method SDIRK4 of E. Hairer and G. Wanner (Solving Ordinary Differential Equations II, 2nd ed. 1996,
/// IV.6, equations 6.16 to 6.18; from memory, the tests check the order conditions). Fourth order, L-stable;
/// the last of its five stages is the end of the step, so that equations without a derivative hold there.
namespace sdirk4 {

inline constexpr std::size_t stages = 5;  ///< number of stages
inline constexpr double gamma = 0.25;     ///< implicit part of each stage

/// explicit part of the stages: stage i uses those before it. The last row and gamma are the weights of the
/// end.
inline constexpr std::array<std::array<double, 4>, stages> before{{
    {},
    {1.0 / 2},
    {17.0 / 50, -1.0 / 25},
    {371.0 / 1360, -137.0 / 2720, 15.0 / 544},
    {25.0 / 24, -49.0 / 48, 125.0 / 16, -85.0 / 12},
}};

/// weights of the end less those of the method of third order
inline constexpr std::array<double, stages> error{-3.0 / 16, -27.0 / 32, 25.0 / 32, 0.0, 1.0 / 4};

/// polynomials of the weights inside the step: coefficients of theta, theta^2, theta^3, theta^4
inline constexpr std::array<std::array<double, 4>, stages> inside{{
    {11.0 / 3, -463.0 / 72, 217.0 / 36, -20.0 / 9},
    {11.0 / 2, -385.0 / 16, 661.0 / 24, -10.0},
    {-125.0 / 18, 20125.0 / 432, -8875.0 / 216, 250.0 / 27},
    {0.0, -85.0 / 4, 85.0 / 6, 0.0},
    {-11.0 / 9, 557.0 / 108, -359.0 / 54, 80.0 / 27},
}};

/// @param stage which, from 0
/// @param theta part of the step, 0 to 1
/// @return weight of the stage there
constexpr double weight(std::size_t stage, double theta) {
    auto const& c = inside[stage];
    return theta * (c[0] + theta * (c[1] + theta * (c[2] + theta * c[3])));
}

}  // namespace sdirk4

/// One step of an integration of stiff equations.
class stiff_step {
public:
    /// largest estimated error over the scale of its unknown; infinite if a stage had no solution
    double error = std::numeric_limits<double>::infinity();

    /// @param theta part of the step, 0 to 1
    /// @param y     receives the unknowns there, to third order
    void at(double theta, std::vector<double>& y) const {
        std::array<double, sdirk4::stages> w{};
        for (std::size_t s = 0; s < w.size(); ++s) w[s] = sdirk4::weight(s, theta);
        y.resize(size_);
        for (std::size_t i = 0; i < size_; ++i) {
            y[i] = values_[i];
            for (std::size_t s = 0; s < w.size(); ++s) y[i] += w[s] * change(s)[i];
        }
    }
    /// @param theta part of the step, 0 to 1
    /// @param i     which unknown
    /// @return that unknown there
    double at(double theta, std::size_t i) const {
        double y = values_[i];
        for (std::size_t s = 0; s < sdirk4::stages; ++s) y += sdirk4::weight(s, theta) * change(s)[i];
        return y;
    }
    /// @return unknowns at its end
    double const* end() const { return values_.data() + (1 + sdirk4::stages) * size_; }
    /// @return slopes of the unknowns at its end times its length
    double const* slope() const { return change(sdirk4::stages - 1); }

private:
    template <class System>
    friend stiff_step take_stiff_step(System const&, std::vector<double> const&, double const*, double,
                                      std::vector<double> const&);
    double const* change(std::size_t stage) const { return values_.data() + (1 + stage) * size_; }
    double* change(std::size_t stage) { return values_.data() + (1 + stage) * size_; }

    std::size_t size_ = 0;
    std::vector<double> values_;  ///< unknowns at the start, slopes of the stages times the length, end
};

/// One step by the method `sdirk4`.
/// @param system with two functions. `bool solve(double const* known, double reach, double* y)` solves M (y -
///              known) = reach g(y) for y, from the guess that is there; false if it cannot. `void
///              damp(double* e, double reach)` replaces e by (M - reach J)^-1 M e, J being the derivatives of
///              g at the last solution: an error that the equations damp at once does not count.
/// @param start unknowns where the step begins
/// @param slope slopes there times the length of the step, or null: only a guess for the first stage
/// @param h     length of the step
/// @param scale sizes against which errors are measured, above 0
/// @return the step
template <class System>
stiff_step take_stiff_step(System const& system, std::vector<double> const& start, double const* slope,
                           double h, std::vector<double> const& scale) {
    std::size_t const n = start.size();
    stiff_step step;
    step.size_ = n;
    step.values_.resize((2 + sdirk4::stages) * n);
    std::copy(start.begin(), start.end(), step.values_.begin());
    std::vector<double> known(n);
    double* const y = step.values_.data() + (1 + sdirk4::stages) * n;
    for (std::size_t s = 0; s < sdirk4::stages; ++s) {
        double* const change = step.change(s);
        double const* const last = s > 0 ? step.change(s - 1) : slope;
        for (std::size_t i = 0; i < n; ++i) {
            known[i] = start[i];
            for (std::size_t j = 0; j < s; ++j) known[i] += sdirk4::before[s][j] * step.change(j)[i];
            y[i] = last ? known[i] + sdirk4::gamma * last[i] : known[i];
        }
        if (!system.solve(known.data(), sdirk4::gamma * h, y)) return step;
        for (std::size_t i = 0; i < n; ++i) change[i] = (y[i] - known[i]) / sdirk4::gamma;
    }
    step.error = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        known[i] = 0.0;
        for (std::size_t s = 0; s < sdirk4::stages; ++s) known[i] += sdirk4::error[s] * step.change(s)[i];
    }
    system.damp(known.data(), sdirk4::gamma * h);
    for (std::size_t i = 0; i < n; ++i) step.error = (std::max)(step.error, std::abs(known[i]) / scale[i]);
    return step;
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
