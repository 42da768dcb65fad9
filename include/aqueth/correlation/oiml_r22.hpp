// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22_coefficients.hpp>
#include <aqueth/correlation/source.hpp>
#include <aqueth/numeric/pair.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cstddef>
#include <tuple>
#include <type_traits>
#include <utility>

/// OIML R 22: density of ethanol-water mixtures, the law in most of the world.
///
/// This header has the formula, `oiml_r22_inverse.hpp` its inverses. Plain numbers: w is the mass fraction of
/// ethanol (0 to 1), t the temperature in °C on IPTS-68 (-20 to 40), density in kg/m3. No function checks its
/// arguments: NaN in gives NaN out, and outside the range the polynomial is meaningless; `covers` tells.
/// Every function is generic in the scalar (float to multiprecision and automatic differentiation) and usable
/// in constant expressions.
namespace aqueth::inline AQUETH_ABI::correlation::oiml_r22 {

/// Citation, range and accuracy.
inline constexpr source cited{
    "OIML R 22, International alcoholometric tables, 1973 (edition 1975), general formula (= "
    "Council Directive 76/766/EEC, annex)",
    "mass fraction 0 to 1; -20 to 40 °C (IPTS-68), liquid only",
    "the legal definition; within 0.10 kg/m3 of NBS measurements of 1913 from 10 to 40 °C; below 0 °C no "
    "measurements were at hand, a refrigeration handbook (Melinder 2010) differs by up to 1.9 kg/m3; as "
    "evaluated here within 2 ulp of the printed decimals"};

inline constexpr double lowest_celsius = -20.0;  ///< lower end of the temperature range, °C
inline constexpr double highest_celsius = 40.0;  ///< upper end of the temperature range, °C

/// @param w mass fraction of ethanol
/// @param t temperature, °C
/// @return whether the formula is defined there (it does not test whether the mixture is liquid)
template <numeric::real T>
constexpr bool covers(T const& w, T const& t) {
    return w >= T(0) && w <= T(1) && t >= T(lowest_celsius) && t <= T(highest_celsius);
}

/// @param w mass fraction of ethanol
/// @return s = 2 w - 1, the centred composition: the variable of the polynomials, -1 to 1
template <numeric::real T>
[[gnu::always_inline]] constexpr T centred_composition(T const& w) {
    return T(2) * w - T(1);
}

/// @param t temperature, °C
/// @return tau = (t - 10 °C)/(30 °C), the other variable, -1 to 1
template <numeric::real T>
[[gnu::always_inline]] constexpr T scaled_temperature(T const& t) {
    return (t - T(10)) * (T(1) / T(30));
}

/// Density and its two partial derivatives.
template <numeric::real T>
struct density_derivatives {
    T value;            ///< density, kg/m3
    T d_mass_fraction;  ///< change per unit of mass fraction, kg/m3
    T d_temperature;    ///< change per kelvin, kg/(m3 K)
};

namespace detail {

/// Coefficients of the powers 2 J and 2 J + 1 of s side by side: two polynomials in tau, the shorter one
/// filled up with a zero.
template <std::size_t J>
constexpr auto side_by_side() {
    constexpr auto even = std::get<2 * J>(coefficients);
    constexpr auto odd = std::get<2 * J + 1>(coefficients);
    std::array<numeric::pair<double>, even.size()> rows{};
    for (std::size_t i = 0; i < even.size(); ++i) rows[i] = {even[i], i < odd.size() ? odd[i] : 0.0};
    return rows;
}
template <std::size_t J>
inline constexpr auto even_and_odd = side_by_side<J>();

template <std::size_t N>
constexpr std::array<float, N> rounded(std::array<double, N> const& exact) {
    std::array<float, N> result{};
    for (std::size_t i = 0; i < N; ++i) result[i] = static_cast<float>(exact[i]);
    return result;
}

}  // namespace detail

/// The coefficients for a scalar. In `float` they are rounded at compile time: with -Os a compiler would
/// convert each one at run time, small machines in software.
template <numeric::real T>
inline constexpr auto const& coefficients_for = coefficients;
/// The same, rounded.
template <>
inline constexpr auto coefficients_for<float> =
    std::apply([](auto const&... exact) { return std::make_tuple(detail::rounded(exact)...); }, coefficients);

/// The formula at one fixed temperature: a polynomial of degree 11 in s = 2 w - 1.
///
/// The temperature-dependent part takes two thirds of the time of a density. For work at one temperature
/// (conversions at 20 °C, tables, inverses) make an isotherm once. `density`, `density_even_odd` and
/// `density_horner` evaluate the same polynomial in different orders; they may differ in the last digit.
/// @tparam T    scalar type
/// @tparam Pair type of two numbers that are computed together; `quick_isotherm` has the fastest at run time
template <numeric::real T, class Pair = numeric::pair<T>>
class isotherm {
public:
    /// number of coefficients of the polynomial
    static constexpr std::size_t terms = std::tuple_size_v<std::remove_const_t<decltype(coefficients)>>;
    /// number of pairs of an even and an odd power
    static constexpr std::size_t pairs = terms / 2;

    /// @param t temperature, °C
    explicit constexpr isotherm(T const& t) : isotherm(oiml_r22::scaled_temperature(t), each_pair{}) {}

    /// @param tau (t - 10 °C)/(30 °C)
    /// @return the isotherm at t
    static constexpr isotherm at_scaled_temperature(T const& tau) { return isotherm(tau, each_pair{}); }

    /// @return tau = (t - 10 °C)/(30 °C)
    constexpr T const& scaled_temperature() const { return tau_; }

    /// For one density: even and odd powers of s in one pair each, the shortest chain of dependent
    /// operations.
    /// @param w mass fraction
    /// @return density, kg/m3
    constexpr T density(T const& w) const {
        // rho = E(s^2) + s O(s^2): both by Horner's rule, side by side in a pair
        if (std::is_constant_evaluated()) return numeric::halved_polynomial(c_, centred_composition(w));
        return numeric::halved_polynomial(numeric::pairs_from<numeric::quick_pair<T>>(c_),
                                          centred_composition(w));
    }

    /// For loops with one isotherm: Horner's rule on the even and on the odd powers of s.
    /// @param w mass fraction
    /// @return density, kg/m3
    constexpr T density_even_odd(T const& w) const {
        // rho = c0 + s (O(s^2) + s E(s^2)), E of the even powers from s^2 on
        return numeric::polynomial(polynomial(), centred_composition(w));
    }

    /// For loops over `numeric::lanes`, where other elements fill the waiting time: the fewest operations.
    /// @param w mass fraction, or several
    /// @return density, kg/m3
    template <class W>
    [[gnu::always_inline]] constexpr W density_horner(W const& w) const {
        // rho = c0 + s (c1 + s (c2 + ...))
        return numeric::polynomial_in_one_chain(polynomial(), centred_composition(w));
    }

    /// @param w mass fraction
    /// @return density in kg/m3 and its derivative with respect to the mass fraction
    constexpr numeric::value_and_slope<T> density_and_slope(T const& w) const {
        auto const in_s = numeric::polynomial_with_slope(polynomial(), centred_composition(w));
        // d rho/dw = d rho/ds ds/dw, ds/dw = 2
        return {in_s.value, T(2) * in_s.slope};
    }

    /// Mass of ethanol in a volume of mixture (partial density), w times the density; it grows with w.
    /// @param w mass fraction
    /// @return kg of ethanol per m3 of mixture, and its derivative with respect to the mass fraction
    constexpr numeric::value_and_slope<T> ethanol_concentration(T const& w) const {
        auto const rho = density_and_slope(w);
        // d (w rho)/dw = rho + w d rho/dw
        return {w * rho.value, rho.value + w * rho.slope};
    }

    /// @return coefficients of density in powers of s = 2 w - 1, lowest first
    constexpr std::array<T, terms> polynomial() const {
        return polynomial(std::make_index_sequence<terms>{});
    }

    /// @return the same in pairs: those of s^(2 k) and s^(2 k + 1) at k
    constexpr std::array<Pair, pairs> const& even_odd_pairs() const { return c_; }

private:
    using each_pair = std::make_index_sequence<pairs>;

    template <std::size_t... J>
    constexpr isotherm(T const& tau, std::index_sequence<J...>) : tau_(tau), c_{at_tau<J>(tau)...} {}

    // Coefficients of s^(2 J) and s^(2 J + 1): two polynomials in tau.
    template <std::size_t J>
    static constexpr Pair at_tau(T const& tau) {
        if constexpr (std::is_same_v<Pair, numeric::pair<T>>) {
            return Pair(numeric::polynomial(std::get<2 * J>(coefficients_for<T>), tau),
                        numeric::polynomial(std::get<2 * J + 1>(coefficients_for<T>), tau));
        } else {
            return numeric::pair_polynomial(numeric::pairs_from<Pair>(detail::even_and_odd<J>),
                                            Pair(tau, tau));
        }
    }

    template <std::size_t... K>
    constexpr std::array<T, terms> polynomial(std::index_sequence<K...>) const {
        return {(K % 2 == 0 ? c_[K / 2].first() : c_[K / 2].second())...};
    }

    T tau_;
    std::array<Pair, pairs> c_;
};

/// An isotherm for use at run time; for double about twice as fast.
template <numeric::real T>
using quick_isotherm = isotherm<T, numeric::quick_pair<T>>;

/// @param w mass fraction
/// @param t temperature, °C
/// @return density, kg/m3
template <numeric::real T>
constexpr T density(T const& w, T const& t) {
    if (std::is_constant_evaluated()) return isotherm<T>(t).density(w);
    return quick_isotherm<T>(t).density(w);
}

/// The same for loops over arrays, by Horner's rule in both variables: the fewest operations and registers.
/// @param c `coefficients_for` the scalar
/// @param w mass fraction, or several as `numeric::lanes`
/// @param t temperature, °C, likewise
/// @return density, kg/m3
template <class Coefficients, numeric::real T>
[[gnu::always_inline]] constexpr T density_horner(Coefficients const& c, T const& w, T const& t) {
    return numeric::polynomial_in_one_chain(c, centred_composition(w), scaled_temperature(t));
}

/// Cubic expansion for loops over arrays, likewise.
/// @param c `coefficients_for` the scalar
/// @param w mass fraction, or several as `numeric::lanes`
/// @param t temperature, °C, likewise
/// @return -(1/rho) d rho/dt, 1/K
template <class Coefficients, numeric::real T>
[[gnu::always_inline]] constexpr T thermal_expansion_horner(Coefficients const& c, T const& w, T const& t) {
    T rho(0), slope(0);
    numeric::polynomial_with_slope_in_one_chain(c, centred_composition(w), scaled_temperature(t), rho, slope);
    return slope / (T(-30) * rho);  // d tau = dt/(30 °C)
}

/// @param w mass fraction
/// @param t temperature, °C
/// @return density, kg/m3, and its exact partial derivatives
template <numeric::real T>
constexpr density_derivatives<T> density_with_derivatives(T const& w, T const& t) {
    T const s = centred_composition(w);
    T const tau = scaled_temperature(t);
    return std::apply(
        [&](auto const&... in_tau) {
            std::array<T, sizeof...(in_tau)> value{};
            std::array<T, sizeof...(in_tau)> slope{};
            // rho = sum of s^j p_j(tau): all p_j and p_j'
            std::size_t j = 0;
            ((value[j] = numeric::polynomial_with_slope(in_tau, tau).value,
              slope[j] = numeric::polynomial_with_slope(in_tau, tau).slope, ++j),
             ...);
            auto const rho = numeric::polynomial_with_slope(value, s);
            // d rho/dw = 2 d rho/ds; d rho/dt = (sum of s^j p_j')/30
            return density_derivatives<T>{rho.value, T(2) * rho.slope, numeric::polynomial(slope, s) / T(30)};
        },
        coefficients);
}

/// Alcoholic strength by volume, q = w rho(w, t) / rho(1, t) with t the reference temperature.
/// @param w mass fraction
/// @param t reference temperature, °C
/// @return volume fraction at t
template <numeric::real T>
constexpr T volume_fraction_from_mass_fraction(T const& w, T const& t) {
    isotherm<T> const at_t(t);
    return w * at_t.density(w) / at_t.density(T(1));
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::oiml_r22
