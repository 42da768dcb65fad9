// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22_coefficients.hpp>
#include <aqueth/correlation/oiml_r22_inverse_guess.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>

#include <array>
#include <cstddef>
#include <limits>
#include <tuple>
#include <type_traits>
#include <utility>

/// OIML R 22: density of ethanol-water mixtures, the law in most of the world.
///
/// Plain numbers: w is the mass fraction of ethanol (0 to 1), t the temperature in °C on IPTS-68 (-20 to 40),
/// density in kg/m3. Nothing is checked: NaN in gives NaN out, and outside the range the polynomial is
/// meaningless; `covers` asks. Every function is generic in the scalar (float to multiprecision and automatic
/// differentiation) and usable in constant expressions.
namespace aqueth::correlation::oiml_r22 {

/// Citation, range and accuracy.
inline constexpr source cited{
    "OIML R 22, International alcoholometric tables, 1975, general formula (= "
    "Council Directive 76/766/EEC, annex)",
    "mass fraction 0 to 1; -20 to 40 °C (IPTS-68), liquid only",
    "the legal definition; within 0.10 kg/m3 of NBS measurements of 1913 from 10 to 40 °C; below 0 °C no "
    "measurements were at hand, a refrigeration handbook (Melinder 2010) differs by up to 1.9 kg/m3; as "
    "evaluated here within 2 ulp of the printed decimals"};

inline constexpr double lowest_celsius = -20.0;  ///< lower end of the temperature range, °C
inline constexpr double highest_celsius = 40.0;  ///< upper end of the temperature range, °C

inline constexpr double middle_density = 890.0;  ///< kg/m3; the guesses for inverses count from here
inline constexpr double density_span = 120.0;    ///< kg/m3; and in units of this

/// @param w mass fraction of ethanol
/// @param t temperature, °C
/// @return whether the formula is defined there (whether the mixture is liquid is another question)
template <class T>
constexpr bool covers(T const& w, T const& t) {
    return w >= T(0) && w <= T(1) && t >= T(lowest_celsius) && t <= T(highest_celsius);
}

/// Density and its two partial derivatives.
template <class T>
struct density_derivatives {
    T value;            ///< density, kg/m3
    T d_mass_fraction;  ///< change per unit of mass fraction, kg/m3
    T d_temperature;    ///< change per kelvin, kg/(m3 K)
};

/// What a fixed number of steps towards a mass fraction came to.
template <class T>
struct attempt {
    T mass_fraction;  ///< where they ended
    /// how much nearer to the root the last of them began than it had to; negative if it began too far away.
    /// Near enough, what it leaves, the fourth power of where it began, is below rounding.
    T reserve;
};

/// Inverses of the formula for double and float, quick and without a branch, so that loops over arrays can
/// use them: a polynomial as first guess, then steps that multiply the number of good digits by four. They
/// succeed for practically every mixture, and `settled` says whether they did.
/// @tparam T scalar type
template <class T>
struct quick_inverse {
    /// whether there is one for this scalar; the others take their time
    static constexpr bool exists = std::is_same_v<T, double> || std::is_same_v<T, float>;
    /// how near the last step towards a density must begin, as mass fraction; the density of cold weak
    /// mixtures is so bent that the fourth power has a large factor
    static constexpr double near = std::is_same_v<T, float> ? 3e-3 : 1e-5;
    /// how near the last step towards a concentration must begin, relative; it is hardly bent at all
    static constexpr double near_relative = std::is_same_v<T, float> ? 1e-2 : 1e-4;
    /// nearer than this to a pure liquid the last digit is not left to chance
    static constexpr double edge = 32.0 * static_cast<double>(std::numeric_limits<T>::epsilon());

    /// @param a what the steps came to, from a density
    /// @return whether that is the answer, to rounding
    static constexpr bool settled(attempt<T> const& a) {
        return a.reserve >= T(0) && a.mass_fraction >= T(edge) && a.mass_fraction <= T(1.0 - edge);
    }
    /// @param a what the steps came to, from a concentration: weak mixtures have all their digits there
    /// @return whether that is the answer, to rounding
    static constexpr bool settled_relative(attempt<T> const& a) {
        return a.reserve >= T(0) && a.mass_fraction >= T(0) && a.mass_fraction <= T(1.0 - edge);
    }
};

/// The formula at one fixed temperature: a polynomial of degree 11 in s = 2 w - 1.
///
/// Collapsing costs four fifths of a full evaluation, so whoever works at one temperature (conversions at 20
/// °C, tables, inverses) makes an isotherm once.
template <class T>
class isotherm {
public:
    /// @param t temperature, °C
    explicit constexpr isotherm(T const& t)
        : isotherm(T((t - T(10)) * (T(1) / T(30))), std::make_index_sequence<terms>{}) {}

    /// @param w mass fraction
    /// @return density, kg/m3
    constexpr T density(T const& w) const { return numeric::polynomial(c_, centred(w)); }

    /// @param w mass fraction
    /// @return density in kg/m3 and its derivative with respect to the mass fraction
    constexpr numeric::value_and_slope<T> density_and_slope(T const& w) const {
        auto const in_s = numeric::polynomial_with_slope(c_, centred(w));
        return {in_s.value, T(2) * in_s.slope};
    }

    /// Mass of ethanol in a volume of mixture (partial density), w times the density; it grows with w.
    /// @param w mass fraction
    /// @return kg of ethanol per m3 of mixture, and its derivative with respect to the mass fraction
    constexpr numeric::value_and_slope<T> ethanol_concentration(T const& w) const {
        auto const rho = density_and_slope(w);
        return {w * rho.value, rho.value + w * rho.slope};
    }

    /// Inverse of `density`, which falls strictly with w at every temperature of the range.
    /// @param rho density, kg/m3, between those of pure ethanol and of pure water
    /// @return mass fraction, to working precision; the nearer end if rho lies outside
    constexpr T mass_fraction_from_density(T const& rho) const {
        if constexpr (quick_inverse<T>::exists) {
            auto const tried = attempt_from_density(rho);
            if (quick_inverse<T>::settled(tried)) return tried.mass_fraction;
        }
        T const water = density(T(0));
        T const ethanol = density(T(1));
        if (rho >= water && std::is_floating_point_v<T>) return T(0);
        if (rho <= ethanol && std::is_floating_point_v<T>) return T(1);
        T const guess = (water - rho) / (water - ethanol);
        auto const residual = [&](T const& w) {
            auto const at = density_and_slope(w);
            return numeric::value_and_slope<T>{at.value - rho, at.slope};
        };
        return solve(residual, guess);
    }

    /// Inverse of `ethanol_concentration`.
    /// @param concentration kg of ethanol per m3 of mixture, between 0 and the density of pure ethanol
    /// @return mass fraction, to working precision; the nearer end if the argument lies outside
    constexpr T mass_fraction_from_concentration(T const& concentration) const {
        if constexpr (quick_inverse<T>::exists) {
            auto tried = attempt_from_concentration<1>(concentration);
            if (quick_inverse<T>::settled_relative(tried)) return tried.mass_fraction;
            tried = attempt_from_concentration<2>(concentration);
            if (quick_inverse<T>::settled_relative(tried)) return tried.mass_fraction;
        }
        // A mixture's density falls roughly linearly from c(0) to c(1);
        // this solves w (c(0) - w (c(0) - c(1))) coarsely.
        T const guess = concentration / (density(T(0)) - T(0.25) * concentration);
        auto const residual = [&](T const& w) {
            auto const at = ethanol_concentration(w);
            return numeric::value_and_slope<T>{at.value - concentration, at.slope};
        };
        return solve(residual, guess);
    }

    /// The quick part of `mass_fraction_from_density`: two steps, whatever they come to.
    /// @param rho density, kg/m3
    /// @return a mass fraction that is the answer if `quick_inverse::settled` says so
    [[gnu::flatten]] constexpr attempt<T> attempt_from_density(T const& rho) const {
        T s = numeric::polynomial(composition_guess, T((rho - T(middle_density)) * (T(1) / T(density_span))),
                                  tau_);
        numeric::taylor_terms<T> miss{};
        auto const step = [&] {
            miss = numeric::polynomial_taylor(c_, s);
            miss.value = miss.value - rho;
            s = s + numeric::householder_step(miss);
        };
        step();
        step();
        T const far = T(2.0 * quick_inverse<T>::near) * miss.first;
        return {T(0.5) * s + T(0.5), far * far - miss.value * miss.value};
    }

    /// The quick part of `mass_fraction_from_concentration`.
    /// @tparam Steps how many: one is enough at 20 °C, two from 0 to 30 °C
    /// @param concentration kg of ethanol per m3 of mixture
    /// @return a mass fraction that is the answer if `quick_inverse::settled_relative` says so
    template <int Steps>
    [[gnu::flatten]] constexpr attempt<T> attempt_from_concentration(T const& concentration) const {
        T const q = concentration * (T(1) / density(T(1)));
        T w = q * numeric::polynomial(ratio_guess, centred(q));
        numeric::taylor_terms<T> miss{};
        auto const step = [&] {
            auto const rho = numeric::polynomial_taylor(c_, centred(w));
            T const twice = T(2) * w;  // in terms of w: each order of s = 2 w - 1 brings a factor of two
            miss = {w * rho.value - concentration, rho.value + twice * rho.first,
                    T(2) * (rho.first + twice * rho.second), T(4) * (rho.second + twice * rho.third)};
            w = w + numeric::householder_step(miss);
        };
        if constexpr (Steps > 1) step();
        step();
        T const far = T(quick_inverse<T>::near_relative) * w * miss.first;
        return {w, far * far - miss.value * miss.value};
    }

private:
    static constexpr std::size_t terms = std::tuple_size_v<std::remove_const_t<decltype(coefficients)>>;

    template <std::size_t... J>
    constexpr isotherm(T const& tau, std::index_sequence<J...>)
        : tau_(tau), c_{numeric::polynomial(std::get<J>(coefficients), tau)...} {}

    static constexpr T centred(T const& w) { return T(2) * w - T(1); }

    template <class F>
    static constexpr T solve(F const& residual, T const& guess) {
        // Rounding leaves a few ulp of a density of about 1000 kg/m3 in the residual; closer is chance.
        T const noise = T(2000) * T(std::numeric_limits<T>::epsilon());
        T const start = guess < T(0) ? T(0) : (guess > T(1) ? T(1) : guess);
        return numeric::bracketed_newton(residual, T(0), T(1), start, noise);
    }

    T tau_;
    std::array<T, terms> c_;
};

/// @param w mass fraction
/// @param t temperature, °C
/// @return density, kg/m3
template <class T>
constexpr T density(T const& w, T const& t) {
    return isotherm<T>(t).density(w);
}

/// @param w mass fraction
/// @param t temperature, °C
/// @return density, kg/m3, and its exact partial derivatives
template <class T>
constexpr density_derivatives<T> density_with_derivatives(T const& w, T const& t) {
    T const s = T(2) * w - T(1);
    T const tau = (t - T(10)) * (T(1) / T(30));
    return std::apply(
        [&](auto const&... in_tau) {
            std::array<T, sizeof...(in_tau)> value{};
            std::array<T, sizeof...(in_tau)> slope{};
            std::size_t j = 0;
            ((value[j] = numeric::polynomial_with_slope(in_tau, tau).value,
              slope[j] = numeric::polynomial_with_slope(in_tau, tau).slope, ++j),
             ...);
            auto const rho = numeric::polynomial_with_slope(value, s);
            return density_derivatives<T>{rho.value, T(2) * rho.slope, numeric::polynomial(slope, s) / T(30)};
        },
        coefficients);
}

/// @param rho density, kg/m3
/// @param t   temperature, °C
/// @return mass fraction, to working precision; the nearer end if rho is not a density of the mixture at t
template <class T>
constexpr T mass_fraction_from_density(T const& rho, T const& t) {
    return isotherm<T>(t).mass_fraction_from_density(rho);
}

/// Alcoholic strength by volume, q = w rho(w, t) / rho(1, t) with t the reference temperature.
/// @param w mass fraction
/// @param t reference temperature, °C
/// @return volume fraction at t
template <class T>
constexpr T volume_fraction_from_mass_fraction(T const& w, T const& t) {
    isotherm<T> const at_t(t);
    return w * at_t.density(w) / at_t.density(T(1));
}

/// Inverse of `volume_fraction_from_mass_fraction`.
/// @param q volume fraction at t
/// @param t reference temperature, °C
/// @return mass fraction, to working precision
template <class T>
constexpr T mass_fraction_from_volume_fraction(T const& q, T const& t) {
    isotherm<T> const at_t(t);
    return at_t.mass_fraction_from_concentration(q * at_t.density(T(1)));
}

}  // namespace aqueth::correlation::oiml_r22
