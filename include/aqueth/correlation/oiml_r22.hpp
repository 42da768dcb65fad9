// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22_coefficients.hpp>
#include <aqueth/correlation/oiml_r22_inverse_guess.hpp>
#include <aqueth/correlation/source.hpp>
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

inline constexpr double middle_density = 890.0;    ///< kg/m3; the guesses for inverses count from here
inline constexpr double density_span = 120.0;      ///< kg/m3; and in units of this
inline constexpr double lowest_density = 771.5;    ///< kg/m3; the table of guesses begins here
inline constexpr double highest_density = 1000.0;  ///< kg/m3; and ends here

/// @param w mass fraction of ethanol
/// @param t temperature, °C
/// @return whether the formula is defined there (whether the mixture is liquid is another question)
template <numeric::real T>
constexpr bool covers(T const& w, T const& t) {
    return w >= T(0) && w <= T(1) && t >= T(lowest_celsius) && t <= T(highest_celsius);
}

/// Density and its two partial derivatives.
template <numeric::real T>
struct density_derivatives {
    T value;            ///< density, kg/m3
    T d_mass_fraction;  ///< change per unit of mass fraction, kg/m3
    T d_temperature;    ///< change per kelvin, kg/(m3 K)
};

/// A mixture that an instrument has been read in.
struct gauged_mixture {
    double mass_fraction;    ///< mass fraction of ethanol
    double volume_fraction;  ///< the same as volume fraction at 20 °C
};

/// Where a step towards a mass fraction has led.
template <numeric::real T>
struct attempt {
    T mass_fraction;  ///< the place
    /// how much nearer to the root the step began than it had to; negative if it began too far away. Near
    /// enough, what it leaves is below rounding.
    T reserve;
};

/// Inverses of the formula for double and float: a polynomial as first guess, then mostly one step, of those
/// that multiply the number of good digits by three. They succeed for practically every mixture, and
/// `settled` says whether they did; if not, bracketing takes over.
/// @tparam T scalar type
template <numeric::real T>
struct quick_inverse {
    /// whether there is one for this scalar; the others take their time
    static constexpr bool exists = std::is_same_v<T, double> || std::is_same_v<T, float>;
    /// how near the last step must begin: cube root of rounding
    static constexpr double near = std::is_same_v<T, float> ? 3e-3 : 4e-6;
    /// the same for a last step of Newton's method after one of Householder's: nearer, as its slope is only
    /// nearly that at the root
    static constexpr double near_enough = std::is_same_v<T, float> ? 1e-4 : 1e-9;
    /// nearer than this to a pure liquid the last digit is not left to chance
    static constexpr double edge = 32.0 * static_cast<double>(std::numeric_limits<T>::epsilon());

    /// @param a what a step came to, from a density
    /// @return whether that is the answer, to rounding
    static constexpr bool settled(attempt<T> const& a) {
        return a.reserve >= T(0) && a.mass_fraction >= T(edge) && a.mass_fraction <= T(1.0 - edge);
    }
    /// @param a what a step came to, from a concentration: weak mixtures have all their digits there
    /// @return whether that is the answer, to rounding
    static constexpr bool settled_relative(attempt<T> const& a) {
        return a.reserve >= T(0) && a.mass_fraction >= T(0) && a.mass_fraction <= T(1.0 - edge);
    }
};

/// Density at 20 °C over that of ethanol, which is volume fraction over mass fraction, from a table.
/// @tparam Pair how two numbers are worked on at once
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

    /// @return the ratio, to rounding; as first guess good at any temperature
    constexpr T value() const { return numeric::halved_polynomial(terms_, place_); }

    /// @return the ratio from its first terms, within 2e-7, sooner
    constexpr T near() const {
        T const u = place_ * place_;
        auto const line = [&](Pair const& c) { return c.first() + c.second() * place_; };
        return line(terms_[0]) + u * (line(terms_[1]) + u * terms_[2].first());
    }

private:
    explicit constexpr density_ratio_at_20_celsius(numeric::interval<T> const& at)
        : terms_(numeric::pairs_from<Pair>(density_ratio_table[at.index])), place_(at.place) {}

    std::array<Pair, std::tuple_size_v<std::remove_cvref_t<decltype(density_ratio_table[0])>>> terms_;
    T place_;
};

namespace detail {

/// Polynomials 2 J and 2 J + 1 of the coefficients side by side, the shorter one filled up with a zero.
template <std::size_t J>
constexpr auto side_by_side() {
    constexpr auto even = std::get<2 * J>(coefficients);
    constexpr auto odd = std::get<2 * J + 1>(coefficients);
    std::array<numeric::pair<double>, even.size()> rows{};
    for (std::size_t i = 0; i < even.size(); ++i) rows[i] = {even[i], i < odd.size() ? odd[i] : 0.0};
    return rows;
}
template <std::size_t J>
inline constexpr auto halves = side_by_side<J>();

}  // namespace detail

/// The formula at one fixed temperature: a polynomial of degree 11 in s = 2 w - 1.
///
/// Collapsing costs two thirds of the time of a full evaluation, so whoever works at one temperature
/// (conversions at 20 °C, tables, inverses) makes an isotherm once.
/// @tparam T    scalar type
/// @tparam Pair how two numbers are worked on at once; `quick_isotherm` has the quickest for run time
template <numeric::real T, class Pair = numeric::pair<T>>
class isotherm {
public:
    /// of the polynomial
    static constexpr std::size_t terms = std::tuple_size_v<std::remove_const_t<decltype(coefficients)>>;

    /// @param t temperature, °C
    explicit constexpr isotherm(T const& t) : isotherm(centred_temperature(t), each_pair{}) {}

    /// @param w mass fraction
    /// @return density, kg/m3
    constexpr T density(T const& w) const {
        if (std::is_constant_evaluated()) return numeric::halved_polynomial(c_, centred(w));
        return numeric::halved_polynomial(numeric::pairs_from<numeric::quick_pair<T>>(c_), centred(w));
    }

    /// What `density` does, for a loop along this isotherm.
    /// @param w mass fraction
    /// @return density, kg/m3
    constexpr T density_along(T const& w) const { return numeric::polynomial(powers(), centred(w)); }

    /// The same for a loop across isotherms. To make them there is much to do that need not wait, so that the
    /// rest may take the way of fewest operations.
    /// @param w mass fraction
    /// @return density, kg/m3
    constexpr T density_across(T const& w) const {
        return numeric::polynomial_in_one_chain(powers(), centred(w));
    }

    /// @param w mass fraction
    /// @return density in kg/m3 and its derivative with respect to the mass fraction
    constexpr numeric::value_and_slope<T> density_and_slope(T const& w) const {
        auto const in_s = numeric::polynomial_with_slope(powers(), centred(w));
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
            return mass_fraction_from_guess(rho, composition_from_table(rho, tau_));
        } else {
            return patient_mass_fraction(rho);
        }
    }

    /// The same for one density only. The guess comes before the isotherm, which can then be made while the
    /// processor waits for the table.
    /// @param rho density, kg/m3
    /// @param t   temperature, °C
    /// @return as the other
    static constexpr T mass_fraction_from_density_at(T rho, T t) {
        T const tau = centred_temperature(t);
        if constexpr (quick_inverse<T>::exists) {
            T const s = composition_from_table(rho, tau);
            return isotherm(tau, each_pair{}).mass_fraction_from_guess(rho, s);
        } else {
            return isotherm(tau, each_pair{}).patient_mass_fraction(rho);
        }
    }

    /// What an instrument floats in: the inverse of `density` for the density that it shows, where the first
    /// guess need not wait for the last digit of that.
    /// @param q         volume fraction that an instrument for 20 °C shows, 0 to 1
    /// @param t         temperature of liquid and instrument, °C
    /// @param expansion factor by which the volume of the instrument has grown
    /// @return mass fraction and volume fraction at 20 °C; NaN for any other q
    static constexpr Pair gauged(T q, T t, T expansion) {
        T const tau = centred_temperature(t);
        constexpr isotherm<T> at_20(T(20));
        constexpr T ethanol = at_20.density(T(1)), per_ethanol = T(1) / ethanol;
        T const scale = ethanol / expansion;
        density_ratio_at_20_celsius<Pair, T> const ratio(q);
        T const s = composition_from_table(scale * ratio.near(), tau);
        isotherm const at_t(tau, each_pair{});
        T const rho = scale * ratio.value();
        T const w = at_t.mass_fraction_from_guess(rho, s);
        return {w, w * (per_ethanol * at_20.density(w))};
    }

    /// The step that the inverse of `density` takes from its first guess.
    /// @param miss density less the one whose composition is wanted, as a series in 2 w - 1
    /// @param s    2 w - 1 where the series begins
    /// @return what the step comes to
    static constexpr attempt<T> step_to_density(numeric::taylor_terms<T, 3> const& miss, T const& s) {
        // Near, measured in s and measured by the bend of the curve: miss/first and miss second/first^2.
        T const slope = miss[1] * miss[1], far = T(quick_inverse<T>::near) * slope;
        T const reserve = far * far - miss[0] * miss[0] * (slope + miss[2] * miss[2]);
        return {T(0.5) * s + T(0.5) + T(0.5) * numeric::halley_step(miss), reserve};
    }

    /// Inverse of `ethanol_concentration`.
    /// @param concentration kg of ethanol per m3 of mixture, between 0 and the density of pure ethanol
    /// @return mass fraction, to working precision; the nearer end if the argument lies outside
    constexpr T mass_fraction_from_concentration(T const& concentration) const {
        if constexpr (quick_inverse<T>::exists) {
            T const q = concentration / density(T(1));
            T w = q / density_ratio_at_20_celsius<Pair, T>(q).value();
            for (int k = 0; k < 3; ++k) {
                auto const tried = step_to_concentration(
                    miss_of_concentration(numeric::halved_polynomial_taylor(c_, centred(w)), w,
                                          concentration),
                    w);
                if (quick_inverse<T>::settled_relative(tried)) return tried.mass_fraction;
                w = tried.mass_fraction;
            }
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

    /// @name For loops over arrays
    /// What `mass_fraction_from_density` and `mass_fraction_from_concentration` do, without a table or a
    /// branch and in parts, each for a loop of its own. To come near, single precision will do.
    /// - From a density: `near_density`, a Householder step on the Taylor series of `density_less`,
    ///   `last_step`.
    /// - From a concentration: `near_volume_fraction`, `series`, `mass_fraction_from_near`.
    /// @{

    /// @param rho density, kg/m3
    /// @param t   temperature, °C
    /// @return 2 w - 1 of a liquid mixture, in single precision within 0.003
    static constexpr T near_density(T const& rho, T const& t) {
        T const x = (rho - T(middle_density)) * (T(1) / T(density_span)), tau = centred_temperature(t);
        return numeric::polynomial(composition_guess_above, x, tau) /
               numeric::polynomial(composition_guess_below, x, tau);
    }
    /// @param rho density, kg/m3
    /// @return the density less rho, as a polynomial in s = 2 w - 1
    constexpr std::array<T, terms> density_less(T const& rho) const {
        std::array<T, terms> c = powers();
        c[0] = c[0] - rho;
        return c;
    }
    /// @param miss          `density_less` the one whose composition is wanted
    /// @param s             2 w - 1 after a step from `near_density`
    /// @param inverse_slope one over the slope of the polynomial there, nearly
    /// @return a mass fraction that is the answer if `reserve` is not negative
    static constexpr attempt<T> last_step(std::array<T, terms> const& miss, T const& s,
                                          T const& inverse_slope) {
        T const step = numeric::polynomial(miss, s) * inverse_slope;
        T const near = T(quick_inverse<T>::near_enough);
        return {(T(0.5) * s + T(0.5)) - T(0.5) * step, near * near - step * step};
    }

    /// @param q concentration over the density of pure ethanol: the volume fraction
    /// @return mass fraction within 3e-6 of itself at 20 °C
    static constexpr T near_volume_fraction_at_20_celsius(T const& q) {
        return q * numeric::polynomial(ratio_guess, centred(q));
    }
    /// @param q concentration over the density of pure ethanol: the volume fraction
    /// @return mass fraction, in single precision within 4e-7 of itself
    [[gnu::flatten]] constexpr T near_volume_fraction(T const& q) const {
        T const w = near_volume_fraction_at_20_celsius(q), concentration = q * density_along(T(1));
        return w + numeric::householder_step(
                       miss_of_concentration(numeric::polynomial_taylor<4>(powers(), centred(w)), w,
                                             concentration))
                       .step;
    }
    /// @param w mass fraction
    /// @return the density around it as a series in 2 w - 1
    [[gnu::flatten]] constexpr numeric::taylor_terms<T, 3> series(T const& w) const {
        return numeric::polynomial_taylor<3>(powers(), centred(w));
    }
    /// @param concentration kg of ethanol per m3 of mixture
    /// @param near          mass fraction from one of the two
    /// @param rho           `series` there
    /// @return mass fraction: from so near, to rounding
    static constexpr T mass_fraction_from_near(T const& concentration, T const& near,
                                               numeric::taylor_terms<T, 3> const& rho) {
        return near + numeric::halley_step(miss_of_concentration(rho, near, concentration));
    }
    /// @param concentration kg of ethanol per m3 of mixture
    /// @param near          mass fraction from one of the two
    /// @param rho           `series` there
    /// @return the density that belongs to that mass fraction, kg/m3
    static constexpr T density_from_near(T const& concentration, T const& near,
                                         numeric::taylor_terms<T, 3> const& rho) {
        T const step_in_s = T(2) * numeric::halley_step(miss_of_concentration(rho, near, concentration));
        return rho[0] + step_in_s * (rho[1] + step_in_s * rho[2]);
    }
    /// @}

private:
    static constexpr std::size_t pairs = terms / 2;
    using each_pair = std::make_index_sequence<pairs>;

    template <std::size_t... J>
    constexpr isotherm(T const& tau, std::index_sequence<J...>) : tau_(tau), c_{collapsed<J>(tau)...} {}

    template <std::size_t J>
    static constexpr Pair collapsed(T const& tau) {
        if constexpr (std::is_same_v<Pair, numeric::pair<T>>) {
            return Pair(numeric::polynomial(std::get<2 * J>(coefficients), tau),
                        numeric::polynomial(std::get<2 * J + 1>(coefficients), tau));
        } else {
            return numeric::pair_polynomial(numeric::pairs_from<Pair>(detail::halves<J>), Pair(tau, tau));
        }
    }

    static constexpr T centred(T const& w) { return T(2) * w - T(1); }
    static constexpr T centred_temperature(T const& t) { return (t - T(10)) * (T(1) / T(30)); }

    constexpr T mass_fraction_from_guess(T const& rho, T const& s) const {
        auto const tried = step_to_density(miss_of_one(s, rho), s);
        if (quick_inverse<T>::settled(tried)) [[likely]]
            return tried.mass_fraction;
        return mass_fraction_from_afar(rho, tau_, centred(tried.mass_fraction));
    }
    // out of the way of the others; an isotherm of its own, so that theirs need not be kept in memory
    [[gnu::cold, gnu::noinline]] static constexpr T mass_fraction_from_afar(T const& rho, T const& tau, T s) {
        isotherm const at_t(tau, each_pair{});
        for (int k = 0; k < 2; ++k) {
            auto const tried = step_to_density(at_t.miss_of_one(s, rho), s);
            if (quick_inverse<T>::settled(tried)) return tried.mass_fraction;
            s = centred(tried.mass_fraction);
        }
        return at_t.patient_mass_fraction(rho);
    }
    constexpr T patient_mass_fraction(T const& rho) const {
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

    // First guess of s: from 0 °C up within 1e-5, mostly 1e-6, but where an interval holds hardly a liquid.
    // Single precision will do, and works on four polynomials at once.
    static constexpr T composition_from_table(T const& rho, T const& tau) {
        constexpr std::size_t bands = std::tuple_size_v<std::remove_const_t<decltype(composition_table)>>;
        constexpr std::size_t intervals =
            std::tuple_size_v<std::remove_cvref_t<decltype(composition_table[0])>>;
        constexpr double per_density = static_cast<double>(intervals) / (highest_density - lowest_density);
        auto const x = numeric::nearest_interval_of<intervals>(T((rho - T(lowest_density)) * T(per_density)));
        auto const y = numeric::nearest_interval_of<bands>(T((tau + T(1)) * T(0.5 * bands)));
        auto const& cell = composition_table[y.index][x.index];
        float const p = static_cast<float>(x.place), p2 = p * p;
        float const q = static_cast<float>(y.place), q2 = q * q;
        std::array<float, 4> in_p{};
        for (std::size_t k = 0; k < 4; ++k)
            in_p[k] = (cell[3][k] * q + cell[2][k]) * q2 + (cell[1][k] * q + cell[0][k]);
        return T((in_p[0] + in_p[2] * p2) + p * (in_p[1] + in_p[3] * p2));
    }

    constexpr std::array<T, terms> powers() const { return powers(std::make_index_sequence<terms>{}); }
    template <std::size_t... K>
    constexpr std::array<T, terms> powers(std::index_sequence<K...>) const {
        return {(K % 2 == 0 ? c_[K / 2].first() : c_[K / 2].second())...};
    }

    // The density less a value, as a series in s: by halves, which wait less for each other.
    constexpr numeric::taylor_terms<T, 3> miss_of_one(T const& s, T const& rho) const {
        std::array<Pair, pairs> from_rho = c_;
        from_rho[0] = from_rho[0] + Pair(T(-rho), T(0));
        return numeric::halved_polynomial_taylor(from_rho, s);
    }

    // The series of w rho(w) less a concentration, from that of rho: in terms of w, where each order of s =
    // 2 w - 1 brings a factor of two.
    template <std::size_t Terms>
    static constexpr numeric::taylor_terms<T, Terms>
    miss_of_concentration(numeric::taylor_terms<T, Terms> const& rho, T const& w, T const& concentration) {
        T const twice = T(2) * w;
        numeric::taylor_terms<T, Terms> miss{};
        miss[0] = w * rho[0] - concentration;
        miss[1] = rho[0] + twice * rho[1];
        miss[2] = T(2) * (rho[1] + twice * rho[2]);
        if constexpr (Terms > 3) miss[3] = T(4) * (rho[2] + twice * rho[3]);
        return miss;
    }

    static constexpr attempt<T> step_to_concentration(numeric::taylor_terms<T, 3> const& miss, T const& w) {
        // A concentration is hardly bent; near is relative, so that the weakest mixtures have their digits.
        // (Of the very weakest the squares vanish, and count as settled: rightly, it is a straight line.)
        T const far = T(quick_inverse<T>::near) * w * miss[1];
        return {w + numeric::halley_step(miss), far * far - miss[0] * miss[0]};
    }

    template <class F>
    static constexpr T solve(F const& residual, T const& guess) {
        // Rounding leaves a few ulp of a density of about 1000 kg/m3 in the residual; closer is chance.
        T const noise = T(2000) * T(std::numeric_limits<T>::epsilon());
        T const start = guess < T(0) ? T(0) : (guess > T(1) ? T(1) : guess);
        return numeric::bracketed_newton(residual, T(0), T(1), start, noise);
    }

    T tau_;
    std::array<Pair, pairs> c_;
};

/// An isotherm for use at run time; for double about twice as quick.
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

/// @param w mass fraction
/// @param t temperature, °C
/// @return density, kg/m3, and its exact partial derivatives
template <numeric::real T>
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
template <numeric::real T>
constexpr T mass_fraction_from_density(T const& rho, T const& t) {
    if constexpr (quick_inverse<T>::exists) {
        if (!std::is_constant_evaluated())
            return numeric::fused_where_possible(
                [](auto... x) { return quick_isotherm<T>::mass_fraction_from_density_at(x...); }, rho, t);
    }
    return isotherm<T>::mass_fraction_from_density_at(rho, t);
}

/// The mixture that an instrument for strengths at 20 °C has been read in.
/// @param q         volume fraction that it shows, 0 to 1
/// @param t         temperature of liquid and instrument, °C
/// @param expansion factor by which the volume of the instrument has grown since 20 °C
/// @return the mixture, to working precision; the nearer end if none is so light or heavy; NaN for any
///         other q
constexpr gauged_mixture mixture_from_reading(double q, double t, double expansion) {
    auto const as_struct = [](auto const& found) { return gauged_mixture{found.first(), found.second()}; };
    if (std::is_constant_evaluated()) return as_struct(isotherm<double>::gauged(q, t, expansion));
    return as_struct(numeric::fused_where_possible(
        [](auto... x) { return quick_isotherm<double>::gauged(x...); }, q, t, expansion));
}

/// A mixture from its alcoholic strength by volume at 20 °C, the reference temperature that everybody uses:
/// from a table, to working precision.
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
        return q_ < 1.0 ? (w > 1.0 ? 1.0 : w) : (q_ == 1.0 ? 1.0 : w);  // rounding may pass 1; NaN stays
    }

    /// @param expansion by which factor the volume of something is to have grown
    /// @return density at 20 °C over that factor, kg/m3
    constexpr double density(double expansion = 1.0) const {
        constexpr double ethanol = isotherm<double>(20.0).density(1.0);
        return ethanol / expansion * ratio_;
    }

private:
    double ratio_;
    double q_;
};

/// Alcoholic strength by volume, q = w rho(w, t) / rho(1, t) with t the reference temperature.
/// @param w mass fraction
/// @param t reference temperature, °C
/// @return volume fraction at t
template <numeric::real T>
constexpr T volume_fraction_from_mass_fraction(T const& w, T const& t) {
    isotherm<T> const at_t(t);
    return w * at_t.density(w) / at_t.density(T(1));
}

/// Inverse of `volume_fraction_from_mass_fraction`.
/// @param q volume fraction at t
/// @param t reference temperature, °C
/// @return mass fraction, to working precision
template <numeric::real T>
constexpr T mass_fraction_from_volume_fraction(T const& q, T const& t) {
    isotherm<T> const at_t(t);
    return at_t.mass_fraction_from_concentration(q * at_t.density(T(1)));
}

}  // namespace aqueth::correlation::oiml_r22
