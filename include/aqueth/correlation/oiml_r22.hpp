// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22_coefficients.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>

#include <array>
#include <cstddef>
#include <limits>
#include <tuple>
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

/// The formula at one fixed temperature: a polynomial of degree 11 in s = 2 w - 1.
///
/// Collapsing costs four fifths of a full evaluation, so whoever works at one temperature (conversions at 20
/// °C, tables, inverses) makes an isotherm once.
template <class T>
class isotherm {
public:
    /// @param t temperature, °C
    explicit constexpr isotherm(T const& t)
        : isotherm(T((t - T(10)) / T(30)), std::make_index_sequence<terms>{}) {}

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
        T const water = density(T(0));
        T const ethanol = density(T(1));
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
        // A mixture's density falls roughly linearly from c(0) to c(1);
        // this solves w (c(0) - w (c(0) - c(1))) coarsely.
        T const guess = concentration / (density(T(0)) - T(0.25) * concentration);
        auto const residual = [&](T const& w) {
            auto const at = ethanol_concentration(w);
            return numeric::value_and_slope<T>{at.value - concentration, at.slope};
        };
        return solve(residual, guess);
    }

private:
    static constexpr std::size_t terms = std::tuple_size_v<std::remove_const_t<decltype(coefficients)>>;

    template <std::size_t... J>
    constexpr isotherm(T const& tau, std::index_sequence<J...>)
        : c_{numeric::polynomial(std::get<J>(coefficients), tau)...} {}

    static constexpr T centred(T const& w) { return T(2) * w - T(1); }

    template <class F>
    static constexpr T solve(F const& residual, T const& guess) {
        // Rounding leaves a few ulp of a density of about 1000 kg/m3 in the residual; closer is chance.
        T const noise = T(2000) * T(std::numeric_limits<T>::epsilon());
        T const start = guess < T(0) ? T(0) : (guess > T(1) ? T(1) : guess);
        return numeric::bracketed_newton(residual, T(0), T(1), start, noise);
    }

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
    T const tau = (t - T(10)) / T(30);
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
