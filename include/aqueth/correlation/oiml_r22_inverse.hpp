// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse_guess.hpp>
#include <aqueth/numeric/instructions.hpp>
#include <aqueth/numeric/pair.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>
#include <aqueth/numeric/root.hpp>

#include <array>
#include <cstddef>
#include <limits>
#include <tuple>
#include <type_traits>

/// @file
/// Inverses of OIML R 22: composition from density, from volume fraction, from a reading.
///
/// - For double and float a first guess and one step of Halley's method (error e becomes of the order e^3). A
///   convergence test follows. If it fails, the step is repeated; then bracketing takes over, which cannot
///   fail.
/// - For other scalars bracketing alone.
/// - For loops over arrays guesses and steps without a table or a branch, in parts.

namespace aqueth::inline AQUETH_ABI::correlation::oiml_r22 {

inline constexpr double middle_density = 890.0;              ///< kg/m3; origin of the guesses' density
inline constexpr double density_span = 120.0;                ///< kg/m3; its unit
inline constexpr double lowest_tabulated_density = 771.5;    ///< kg/m3; lower end of the table of guesses
inline constexpr double highest_tabulated_density = 1000.0;  ///< kg/m3; upper end

/// The composition of a mixture in two bases.
struct mixture_fractions {
    double mass_fraction;    ///< mass fraction of ethanol
    double volume_fraction;  ///< volume fraction of ethanol at 20 °C
};

/// A mass fraction after a step of an iteration, with its convergence test.
template <numeric::real T>
struct refined_mass_fraction {
    T mass_fraction;  ///< after the step
    /// Margin of the convergence test: not negative if the step began close enough for the result to be exact
    /// to rounding.
    T convergence_margin;
};

/// The inverse for double and float: a guess and mostly one step.
/// @tparam T scalar type
template <numeric::real T>
struct fast_inverse {
    /// whether this scalar has one; the others use bracketing
    static constexpr bool exists = std::is_same_v<T, double> || std::is_same_v<T, float>;
    /// largest error of s before the last Halley step: cube root of rounding
    static constexpr double halley_radius = std::is_same_v<T, float> ? 3e-3 : 4e-6;
    /// the same before a Newton step after a Householder step; smaller, because the slope is an approximation
    /// of that at the root
    static constexpr double newton_radius = std::is_same_v<T, float> ? 1e-4 : 1e-9;
    /// closer than this to a pure liquid rounding could lead past it; bracketing is exact there
    static constexpr double pure_liquid_margin =
        32.0 * static_cast<double>(std::numeric_limits<T>::epsilon());

    /// @param r result of a step from a density
    /// @return whether it is exact to rounding
    static constexpr bool density_converged(refined_mass_fraction<T> const& r) {
        return r.convergence_margin >= T(0) && r.mass_fraction >= T(pure_liquid_margin) &&
               r.mass_fraction <= T(1.0 - pure_liquid_margin);
    }
    /// @param r result of a step from a concentration, whose relative precision weak mixtures keep
    /// @return whether it is exact to rounding
    static constexpr bool concentration_converged(refined_mass_fraction<T> const& r) {
        return r.convergence_margin >= T(0) && r.mass_fraction >= T(0) &&
               r.mass_fraction <= T(1.0 - pure_liquid_margin);
    }
};

/// Density at 20 °C over that of ethanol, which is volume fraction over mass fraction, from a table.
/// @tparam Pair type of two numbers that are computed together
/// @tparam T    scalar type
template <class Pair, numeric::real T>
class density_ratio_at_20_celsius {
    static constexpr std::size_t intervals =
        std::tuple_size_v<std::remove_const_t<decltype(density_ratio_table)>>;

public:
    /// @param q volume fraction at 20 °C, 0 to 1; any other gives NaN
    explicit constexpr density_ratio_at_20_celsius(T const& q)
        : density_ratio_at_20_celsius(
              numeric::interval_of<intervals>(T(q * T(static_cast<double>(intervals))))) {}

    /// @return the ratio, to rounding; at other temperatures a first guess
    constexpr T value() const { return numeric::halved_polynomial(terms_, place_); }

    /// @return the ratio from its first five terms, within 2e-7 and available sooner
    constexpr T approximate_value() const {
        T const u = place_ * place_;
        auto const line = [&](Pair const& c) { return c.first() + c.second() * place_; };
        // c0 + c1 p + p^2 (c2 + c3 p + p^2 c4)
        return line(terms_[0]) + u * (line(terms_[1]) + u * terms_[2].first());
    }

private:
    explicit constexpr density_ratio_at_20_celsius(numeric::interval<T> const& at)
        : terms_(numeric::pairs_from<Pair>(density_ratio_table[at.index])), place_(at.place) {}

    std::array<Pair, std::tuple_size_v<std::remove_cvref_t<decltype(density_ratio_table[0])>>> terms_;
    T place_;
};

/// The Halley step of the inverse of density.
/// @param residual density minus the given one, as a series in s = 2 w - 1
/// @param s        2 w - 1 at the origin of the series
/// @return the result
template <numeric::real T>
constexpr refined_mass_fraction<T> halley_step_to_density(numeric::taylor_terms<T, 3> const& residual,
                                                          T const& s) {
    // With r = f[0]/f[1] and c = f[2]/f[1], the test is r^2 (1 + c^2) <= radius^2, multiplied by f[1]^4:
    // the error of the start measured in s, and measured by the curvature.
    T const slope = residual[1] * residual[1], allowed = T(fast_inverse<T>::halley_radius) * slope;
    T const margin = allowed * allowed - residual[0] * residual[0] * (slope + residual[2] * residual[2]);
    // w = (s + 1)/2
    return {T(0.5) * s + T(0.5) + T(0.5) * numeric::halley_step(residual), margin};
}

namespace detail {

/// The concentration residual w rho(w) - c as a series in w, from the series of rho in s = 2 w - 1.
template <std::size_t Terms, numeric::real T>
constexpr numeric::taylor_terms<T, Terms> concentration_residual(numeric::taylor_terms<T, Terms> const& rho,
                                                                 T const& w, T const& concentration) {
    // (w + h) rho(w + h) with rho(w + h) = rho0 + rho1 (2 h) + rho2 (2 h)^2 + rho3 (2 h)^3, by powers of h
    T const twice = T(2) * w;
    numeric::taylor_terms<T, Terms> residual{};
    // h^0: w rho0 - c
    residual[0] = w * rho[0] - concentration;
    // h^1: rho0 + 2 w rho1
    residual[1] = rho[0] + twice * rho[1];
    // h^2: 2 rho1 + 4 w rho2
    residual[2] = T(2) * (rho[1] + twice * rho[2]);
    // h^3: 4 rho2 + 8 w rho3
    if constexpr (Terms > 3) residual[3] = T(4) * (rho[2] + twice * rho[3]);
    return residual;
}

template <numeric::real T>
constexpr refined_mass_fraction<T> halley_step_to_concentration(numeric::taylor_terms<T, 3> const& residual,
                                                                T const& w) {
    // |f[0]/f[1]| <= radius w: relative, so that the weakest mixtures keep their digits. The curvature of a
    // concentration is negligible. Squares of the very weakest underflow and pass, rightly: a straight line.
    T const allowed = T(fast_inverse<T>::halley_radius) * w * residual[1];
    return {w + numeric::halley_step(residual), allowed * allowed - residual[0] * residual[0]};
}

/// The root of a monotone residual between w = 0 and w = 1.
template <class F, numeric::real T>
constexpr T bracketed_mass_fraction(F const& residual, T const& guess) {
    // Rounding leaves a few ulp of a density of about 1000 kg/m3 in the residual; a smaller tolerance would
    // be noise.
    T const noise = T(2000) * T(std::numeric_limits<T>::epsilon());
    T const start = guess < T(0) ? T(0) : (guess > T(1) ? T(1) : guess);
    return numeric::bracketed_newton(residual, T(0), T(1), start, noise);
}

template <numeric::real T, class Pair>
constexpr T mass_fraction_by_bracketing(isotherm<T, Pair> const& at_t, T const& rho) {
    T const water = at_t.density(T(0));
    T const ethanol = at_t.density(T(1));
    if (rho >= water && std::is_floating_point_v<T>) return T(0);
    if (rho <= ethanol && std::is_floating_point_v<T>) return T(1);
    // as if density were linear in w
    T const guess = (water - rho) / (water - ethanol);
    auto const residual = [&](T const& w) {
        auto const at = at_t.density_and_slope(w);
        return numeric::value_and_slope<T>{at.value - rho, at.slope};
    };
    return bracketed_mass_fraction(residual, guess);
}

/// The density residual rho(s) - rho as a series in s, from the even and odd powers.
template <numeric::real T, class Pair>
constexpr numeric::taylor_terms<T, 3> density_residual_series(isotherm<T, Pair> const& at_t, T const& s,
                                                              T const& rho) {
    auto residual = at_t.even_odd_pairs();
    residual[0] = residual[0] + Pair(T(-rho), T(0));
    return numeric::halved_polynomial_taylor(residual, s);
}

/// Two more steps, then bracketing. Out of line, to keep the fast path small; it makes an isotherm of its
/// own, so that the caller's need not be kept in memory.
template <class Pair, numeric::real T>
[[gnu::cold, gnu::noinline]] constexpr T mass_fraction_by_more_steps(T const& rho, T const& tau, T s) {
    auto const at_t = isotherm<T, Pair>::at_scaled_temperature(tau);
    for (int k = 0; k < 2; ++k) {
        auto const refined = halley_step_to_density(density_residual_series(at_t, s, rho), s);
        if (fast_inverse<T>::density_converged(refined)) return refined.mass_fraction;
        s = centred_composition(refined.mass_fraction);
    }
    return mass_fraction_by_bracketing(at_t, rho);
}

template <numeric::real T, class Pair>
constexpr T mass_fraction_from_guess(isotherm<T, Pair> const& at_t, T const& rho, T const& s) {
    auto const refined = halley_step_to_density(density_residual_series(at_t, s, rho), s);
    if (fast_inverse<T>::density_converged(refined)) [[likely]]
        return refined.mass_fraction;
    return mass_fraction_by_more_steps<Pair>(rho, at_t.scaled_temperature(),
                                             centred_composition(refined.mass_fraction));
}

/// First guess of s = 2 w - 1, in single precision: one cubic in density and temperature a cell of the table.
/// Error at most 1e-5 above 0 °C (typically 1e-6), except in cells that are mostly below the freezing line.
template <numeric::real T>
constexpr T guess_composition_from_table(T const& rho, T const& tau) {
    constexpr std::size_t bands = std::tuple_size_v<std::remove_const_t<decltype(composition_table)>>;
    constexpr std::size_t intervals = std::tuple_size_v<std::remove_cvref_t<decltype(composition_table[0])>>;
    constexpr double per_density =
        static_cast<double>(intervals) / (highest_tabulated_density - lowest_tabulated_density);
    auto const x =
        numeric::nearest_interval_of<intervals>(T((rho - T(lowest_tabulated_density)) * T(per_density)));
    auto const y = numeric::nearest_interval_of<bands>(T((tau + T(1)) * T(0.5 * bands)));
    auto const& cell = composition_table[y.index][x.index];
    float const p = static_cast<float>(x.place), p2 = p * p;
    float const q = static_cast<float>(y.place), q2 = q * q;
    // c_k(q) = c_k0 + c_k1 q + q^2 (c_k2 + c_k3 q), the four k in one vector
    std::array<float, 4> in_p{};
    for (std::size_t k = 0; k < 4; ++k)
        in_p[k] = (cell[3][k] * q + cell[2][k]) * q2 + (cell[1][k] * q + cell[0][k]);
    // s = c_0 + c_2 p^2 + p (c_1 + c_3 p^2)
    return T((in_p[0] + in_p[2] * p2) + p * (in_p[1] + in_p[3] * p2));
}

/// The inverse of density for one mixture. The guess comes before the isotherm, which the processor can then
/// compute while it waits for the table.
template <class Pair, numeric::real T>
AQUETH_PART_OF_FLATTENED constexpr T mass_fraction_from_density_at(T rho, T t) {
    T const tau = scaled_temperature(t);
    if constexpr (fast_inverse<T>::exists) {
        T const s = guess_composition_from_table(rho, tau);
        return mass_fraction_from_guess(isotherm<T, Pair>::at_scaled_temperature(tau), rho, s);
    } else {
        return mass_fraction_by_bracketing(isotherm<T, Pair>::at_scaled_temperature(tau), rho);
    }
}

}  // namespace detail

/// Inverse of `isotherm::density`, which falls strictly with w at every temperature of the range.
/// @param at_t isotherm
/// @param rho  density, kg/m3, between those of pure ethanol and of pure water
/// @return mass fraction, to working precision; the nearer end if rho lies outside
template <numeric::real T, class Pair>
constexpr T mass_fraction_from_density(isotherm<T, Pair> const& at_t, std::type_identity_t<T> const& rho) {
    if constexpr (fast_inverse<T>::exists) {
        return detail::mass_fraction_from_guess(
            at_t, rho, detail::guess_composition_from_table(rho, at_t.scaled_temperature()));
    } else {
        return detail::mass_fraction_by_bracketing(at_t, rho);
    }
}

/// @param rho density, kg/m3
/// @param t   temperature, °C
/// @return mass fraction, to working precision; the nearer end if rho is not a density of the mixture at t
template <numeric::real T>
constexpr T mass_fraction_from_density(T const& rho, T const& t) {
    if constexpr (fast_inverse<T>::exists) {
        if (!std::is_constant_evaluated())
            return numeric::fused_where_possible(
                [](auto... x) { return detail::mass_fraction_from_density_at<numeric::quick_pair<T>>(x...); },
                rho, t);
    }
    return detail::mass_fraction_from_density_at<numeric::pair<T>>(rho, t);
}

/// Inverse of `isotherm::ethanol_concentration`.
/// @param at_t          isotherm
/// @param concentration kg of ethanol per m3 of mixture, between 0 and the density of pure ethanol
/// @return mass fraction, to working precision; the nearer end if the argument lies outside
template <numeric::real T, class Pair>
constexpr T mass_fraction_from_concentration(isotherm<T, Pair> const& at_t,
                                             std::type_identity_t<T> const& concentration) {
    if constexpr (fast_inverse<T>::exists) {
        // w = q/(rho/rho(1)), the ratio as at 20 °C
        T const q = concentration / at_t.density(T(1));
        T w = q / density_ratio_at_20_celsius<Pair, T>(q).value();
        for (int k = 0; k < 3; ++k) {
            auto const rho = numeric::halved_polynomial_taylor(at_t.even_odd_pairs(), centred_composition(w));
            auto const refined = detail::halley_step_to_concentration(
                detail::concentration_residual(rho, w, concentration), w);
            if (fast_inverse<T>::concentration_converged(refined)) return refined.mass_fraction;
            w = refined.mass_fraction;
        }
    }
    // A mixture's density falls roughly linearly from c(0) to c(1);
    // this solves w (c(0) - w (c(0) - c(1))) coarsely.
    T const guess = concentration / (at_t.density(T(0)) - T(0.25) * concentration);
    auto const residual = [&](T const& w) {
        auto const at = at_t.ethanol_concentration(w);
        return numeric::value_and_slope<T>{at.value - concentration, at.slope};
    };
    return detail::bracketed_mass_fraction(residual, guess);
}

/// Inverse of `volume_fraction_from_mass_fraction`.
/// @param q volume fraction at t
/// @param t reference temperature, °C
/// @return mass fraction, to working precision
template <numeric::real T>
constexpr T mass_fraction_from_volume_fraction(T const& q, T const& t) {
    isotherm<T> const at_t(t);
    // concentration w rho(w) = q rho(1)
    return mass_fraction_from_concentration(at_t, q * at_t.density(T(1)));
}

/// A mixture from its alcoholic strength by volume at 20 °C, the usual reference temperature: from a table,
/// to working precision.
class mixture_at_20_celsius {
public:
    /// @param q volume fraction at 20 °C, 0 to 1; any other gives NaN
    explicit constexpr mixture_at_20_celsius(double q)
        : ratio_(std::is_constant_evaluated()
                     ? density_ratio_at_20_celsius<numeric::pair<double>, double>(q).value()
                     : density_ratio_at_20_celsius<numeric::quick_pair<double>, double>(q).value()),
          q_(q) {}

    /// @return mass fraction, `mass_fraction_from_volume_fraction` at 20 °C
    constexpr double mass_fraction() const {
        double const w = q_ / ratio_;
        return q_ < 1.0 ? (w > 1.0 ? 1.0 : w) : (q_ == 1.0 ? 1.0 : w);  // rounding may exceed 1; NaN stays
    }

    /// @param expansion factor by which the volume of an instrument has grown
    /// @return density at 20 °C divided by that factor, kg/m3
    constexpr double density(double expansion = 1.0) const {
        constexpr double ethanol = isotherm<double>(20.0).density(1.0);
        return ethanol / expansion * ratio_;
    }

private:
    double ratio_;
    double q_;
};

/// The mixture in which an alcoholometer for 20 °C shows a reading, for any scalar and kind of pair. The
/// first guess does not wait for the last digits of the density.
/// @tparam Pair type of two numbers that are computed together
/// @param q         volume fraction that the instrument shows, 0 to 1
/// @param t         temperature of liquid and instrument, °C
/// @param expansion factor by which the volume of the instrument has grown since 20 °C
/// @return mass fraction and volume fraction at 20 °C; NaN for any other q
template <class Pair, numeric::real T>
AQUETH_PART_OF_FLATTENED constexpr Pair fractions_from_reading(T q, T t, T expansion) {
    T const tau = scaled_temperature(t);
    constexpr isotherm<T> at_20(T(20));
    constexpr T ethanol = at_20.density(T(1)), per_ethanol = T(1) / ethanol;
    T const scale = ethanol / expansion;
    // rho = rho_20(q)/expansion = rho_20(1)/expansion times the density ratio
    density_ratio_at_20_celsius<Pair, T> const ratio(q);
    T const s = detail::guess_composition_from_table(scale * ratio.approximate_value(), tau);
    auto const at_t = isotherm<T, Pair>::at_scaled_temperature(tau);
    T const rho = scale * ratio.value();
    T const w = detail::mass_fraction_from_guess(at_t, rho, s);
    // q_20 = w rho_20(w)/rho_20(1)
    return {w, w * (per_ethanol * at_20.density(w))};
}

/// The mixture in which an alcoholometer for 20 °C shows a reading.
/// @param q         volume fraction that it shows, 0 to 1
/// @param t         temperature of liquid and instrument, °C
/// @param expansion factor by which the volume of the instrument has grown since 20 °C
/// @return the mixture, to working precision; the nearer end if none is so light or heavy; NaN for any
///         other q
constexpr mixture_fractions mixture_from_reading(double q, double t, double expansion) {
    auto const as_struct = [](auto const& found) { return mixture_fractions{found.first(), found.second()}; };
    if (std::is_constant_evaluated())
        return as_struct(fractions_from_reading<numeric::pair<double>>(q, t, expansion));
    return as_struct(numeric::fused_where_possible(
        [](auto... x) { return fractions_from_reading<numeric::quick_pair<double>>(x...); }, q, t,
        expansion));
}

/// @name For loops over arrays
/// Guesses and steps without a table or a branch, in parts, each for a loop of its own. Single precision is
/// enough for a guess.
/// - From a density: `guess_composition`, a Householder step on the Taylor series of `density_residual`,
///   `newton_step_to_density`.
/// - From a concentration: `guess_mass_fraction`, `density_series`, `halley_mass_fraction`.
/// @{

/// @param rho density, kg/m3
/// @param t   temperature, °C
/// @return s = 2 w - 1 of a liquid mixture, in single precision within 0.003
template <numeric::real T>
constexpr T guess_composition(T const& rho, T const& t) {
    // x = (rho - 890)/120, tau = (t - 10)/30
    T const x = (rho - T(middle_density)) * (T(1) / T(density_span)), tau = scaled_temperature(t);
    // s = P(x, tau)/Q(x, tau)
    return numeric::polynomial(composition_guess_numerator, x, tau) /
           numeric::polynomial(composition_guess_denominator, x, tau);
}

/// @param at_t isotherm
/// @param rho  density, kg/m3
/// @return the density minus rho, as coefficients of s = 2 w - 1, lowest power first
template <numeric::real T, class Pair>
constexpr auto density_residual(isotherm<T, Pair> const& at_t, std::type_identity_t<T> const& rho) {
    auto c = at_t.polynomial();
    c[0] = c[0] - rho;
    return c;
}

/// The last step of the inverse of density: Newton's, with the slope from a Householder step.
/// @param residual      `density_residual`
/// @param s             2 w - 1 after a Householder step from `guess_composition`
/// @param inverse_slope one over the slope of the residual there, approximately
/// @return the result
template <numeric::real T, std::size_t Terms>
constexpr refined_mass_fraction<T> newton_step_to_density(std::array<T, Terms> const& residual, T const& s,
                                                          T const& inverse_slope) {
    // f(s)/f'(s)
    T const step = numeric::polynomial(residual, s) * inverse_slope;
    T const allowed = T(fast_inverse<T>::newton_radius);
    // w = (s - step + 1)/2
    return {(T(0.5) * s + T(0.5)) - T(0.5) * step, allowed * allowed - step * step};
}

/// @param q volume fraction at 20 °C: concentration over the density of pure ethanol
/// @return mass fraction, relative error at most 3e-6
template <numeric::real T>
constexpr T guess_mass_fraction_at_20_celsius(T const& q) {
    // w = q (w/q)
    return q * numeric::polynomial(mass_to_volume_fraction_guess, centred_composition(q));
}

/// @param at_t isotherm
/// @param q    volume fraction at its temperature: concentration over the density of pure ethanol
/// @return mass fraction, in single precision with a relative error of at most 4e-7
template <numeric::real T, class Pair>
[[gnu::flatten]] constexpr T guess_mass_fraction(isotherm<T, Pair> const& at_t,
                                                 std::type_identity_t<T> const& q) {
    T const w = guess_mass_fraction_at_20_celsius(q), concentration = q * at_t.density_even_odd(T(1));
    auto const rho = numeric::polynomial_taylor<4>(at_t.polynomial(), centred_composition(w));
    return w + numeric::householder_step(detail::concentration_residual(rho, w, concentration)).step;
}

/// @param at_t isotherm
/// @param w    mass fraction
/// @return Taylor series of the density there, in s = 2 w - 1
template <numeric::real T, class Pair>
[[gnu::flatten]] constexpr numeric::taylor_terms<T, 3> density_series(isotherm<T, Pair> const& at_t,
                                                                      std::type_identity_t<T> const& w) {
    return numeric::polynomial_taylor<3>(at_t.polynomial(), centred_composition(w));
}

/// @param concentration kg of ethanol per m3 of mixture
/// @param guess         mass fraction from `guess_mass_fraction` or `guess_mass_fraction_at_20_celsius`
/// @param rho           `density_series` there
/// @return mass fraction, to rounding
template <numeric::real T>
constexpr T halley_mass_fraction(T const& concentration, T const& guess,
                                 numeric::taylor_terms<T, 3> const& rho) {
    return guess + numeric::halley_step(detail::concentration_residual(rho, guess, concentration));
}

/// @param concentration kg of ethanol per m3 of mixture
/// @param guess         mass fraction from `guess_mass_fraction` or `guess_mass_fraction_at_20_celsius`
/// @param rho           `density_series` there
/// @return density of the mixture with that concentration, kg/m3
template <numeric::real T>
constexpr T halley_density(T const& concentration, T const& guess, numeric::taylor_terms<T, 3> const& rho) {
    // ds = 2 dw
    T const step_in_s =
        T(2) * numeric::halley_step(detail::concentration_residual(rho, guess, concentration));
    // rho(s + h) = rho0 + h (rho1 + h rho2)
    return rho[0] + step_in_s * (rho[1] + step_in_s * rho[2]);
}
/// @}

/// The inverse of density in little code, for small machines: `guess_composition` and two steps of Newton's
/// method. There is no table (that of `mass_fraction_from_density` takes 24 kB), no loop and no test.
/// @param rho density of a liquid mixture at t, kg/m3
/// @param t   temperature, -20 to 40 °C
/// @return mass fraction, within 3e-10 of `mass_fraction_from_density`, in single precision within 1e-6, the
///         rounding of the density; 0 or 1 if the steps lead beyond; meaningless for a density that no liquid
///         mixture has at t
template <numeric::real T>
constexpr T compact_mass_fraction_from_density(T const& rho, T const& t) {
    auto const residual = density_residual(isotherm<T>(t), rho);
    T s = guess_composition(rho, t);
    for (int step = 0; step < 2; ++step) {
        auto const at = numeric::polynomial_with_slope(residual, s);
        // s - f(s)/f'(s)
        s = s - at.value / at.slope;
    }
    T const w = T(0.5) * s + T(0.5);
    return w < T(0) ? T(0) : (w > T(1) ? T(1) : w);
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::oiml_r22
