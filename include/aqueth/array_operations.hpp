// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/density.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/array_loop.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <limits>
#include <type_traits>

/// @def AQUETH_EACH_OF_BLOCK(i)
/// Begins a loop over the elements of a block. The body must not touch the data
/// of another element; the pragma promises this to the compiler.
#if defined(__clang__)
#define AQUETH_EACH_OF_BLOCK(i)                                                                              \
    _Pragma("clang loop vectorize(assume_safety)") for (std::size_t i = 0; i < numeric::block; ++i)
#elif defined(__GNUC__)
#define AQUETH_EACH_OF_BLOCK(i) _Pragma("GCC ivdep") for (std::size_t i = 0; i < numeric::block; ++i)
#else
#define AQUETH_EACH_OF_BLOCK(i) for (std::size_t i = 0; i < numeric::block; ++i)
#endif

/// @file
/// What `array.hpp` does with each element: an operation for every function there, for internal use.
///
/// The member `quick` of an operation handles a block, `careful` one element: see
/// `numeric::for_each_element`.
namespace aqueth::inline AQUETH_ABI::arrays::detail {

using numeric::bits;
using numeric::bits_of;
using numeric::block;
using numeric::certain_or_nan;
using numeric::columns;
using numeric::doubtful;
using numeric::highest_bit;
using numeric::lanes_of;
using numeric::load;
using numeric::outside;
using numeric::results;
using numeric::store;
using plain::coldest_liquid_celsius;

namespace r22 = correlation::oiml_r22;

template <class T>
inline constexpr T nothing = std::numeric_limits<T>::quiet_NaN();

/// Allowance for rounding of a computed density outside the pure liquids', kg/m3.
template <class T>
inline constexpr double rounding = std::is_same_v<T, float> ? 2e-4 : aqueth::detail::rounding;

/// OIML R 22 at a reference temperature, for float too.
template <class Reference, class T>
inline constexpr r22::isotherm<T> reference_isotherm{T(Reference::temperature().celsius())};

/// Kelvins above a parabola, which is up to 0.4 K above the freezing points from 0 down to -20 °C: if not
/// negative, the mixture is certainly liquid.
template <class T>
constexpr T above_freezing(T w, T t) {
    return t + w * (T(28) + T(132) * w);
}

/// Doubt bits: the highest is set unless OIML R 22 covers w at t, the mixture is certainly liquid, and w is
/// at least `apart` from both pure liquids.
template <class T>
constexpr bits<T> perhaps_not_liquid(T w, T t, T apart = T(0)) {
    return outside(w, apart, T(T(1) - apart)) | outside(T(t - T(r22::lowest_celsius)), T(0), T(60)) |
           bits_of(above_freezing(w, t));
}

/// The least mass fraction that is certainly liquid at t, up to 40 °C, where the parabola reaches t.
template <class T>
T weakest_liquid(T t) {
    if (t >= T(0)) return T(0);
    T const root = std::sqrt(T(28 * 28) - T(4 * 132) * t);
    return (root - T(28)) / T(2 * 132) + T(1e-6);
}

/// @return whether the mixture is liquid there: what the scalar functions require
inline bool liquid(double w, double t) { return plain::liquid_range(w, t).ok; }

/// The mass fraction of a liquid mixture from its density at t; NaN if there is none.
inline double composition(double rho, double t, double tolerance) {
    if (!plain::liquid_temperature_range(t).ok) return nothing<double>;
    if (t > r22::highest_celsius) {
        double const ethanol = model::hot_density::density(1.0, t);
        double const water = model::hot_density::density(0.0, t);
        if (!(rho >= ethanol - tolerance && rho <= water + tolerance)) return nothing<double>;
        return plain::mass_fraction_from_density(std::clamp(rho, ethanol, water), t).value;
    }
    r22::isotherm<double> const at_t(t);
    if (!(rho >= at_t.density(1.0) - tolerance && rho <= at_t.density(0.0) + tolerance))
        return nothing<double>;
    double const w = r22::mass_fraction_from_density(at_t, rho);
    return liquid(w, t) ? w : nothing<double>;
}

/// Compositions closer than this to a pure liquid take the careful way, which is exact there.
template <class T>
inline constexpr T edge{r22::fast_inverse<T>::pure_liquid_margin};

#if defined(__clang__)
#pragma clang diagnostic push
#pragma clang diagnostic ignored "-Wpass-failed"  // some loops, and all at -O1, are not vectorized
#endif

template <class T>
struct density_operation {
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<T> quick(T const* w, T const* t, results<V> out) {
        constexpr T warmest{r22::highest_celsius};
        bits<T> any = 0;
        // The range above freezing is quicker to test. From the first element below it on the whole test
        // takes over.
        if (!some_cold_) {
            AQUETH_EACH_OF_BLOCK(i) any |= outside(w[i], T(0), T(1)) | outside(t[i], T(0), warmest);
            some_cold_ = highest_bit(any);
        }
        if (some_cold_) {
            any = 0;
            AQUETH_EACH_OF_BLOCK(i) any |= out.set_doubt(i, perhaps_not_liquid(w[i], t[i]));
        }
        auto const& c = numeric::as_variable(r22::coefficients_for<T>);
        for (std::size_t i = 0; i < block; i += lanes_of<V>)
            store(r22::density_horner(c, load<V>(w + i), load<V>(t + i)), out.value + i);
        return any;
    }
    T careful(T w, T t) const { return liquid(w, t) ? model::hot_density::liquid_density(w, t) : nothing<T>; }

private:
    bool some_cold_ = false;
};

/// At one temperature up to 40 °C.
template <class T>
struct density_at_operation {
    explicit density_at_operation(T degrees) : t(degrees), weakest(weakest_liquid(degrees)), at_t(degrees) {}
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<T> quick(T const* w, results<V> out) const {
        bits<T> any = 0;
        AQUETH_EACH_OF_BLOCK(i) any |= out.set_doubt(i, outside(w[i], weakest, T(1)));
        for (std::size_t i = 0; i < block; i += lanes_of<V>)
            store(at_t.density_horner(load<V>(w + i)), out.value + i);
        return any;
    }
    T careful(T w) const { return liquid(w, t) ? at_t.density(w) : nothing<T>; }
    T t, weakest;
    r22::isotherm<T> at_t;
};

template <class T>
struct thermal_expansion_operation {
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<T> quick(T const* w, T const* t, results<V> out) const {
        using half = numeric::half_of<V>;  // value and slope take twice the registers
        bits<T> any = 0;
        AQUETH_EACH_OF_BLOCK(i) any |= out.set_doubt(i, perhaps_not_liquid(w[i], t[i]));
        auto const& c = numeric::as_variable(r22::coefficients_for<T>);
        for (std::size_t i = 0; i < block; i += lanes_of<half>)
            store(r22::thermal_expansion_horner(c, load<half>(w + i), load<half>(t + i)), out.value + i);
        return any;
    }
    T careful(T w, T t) const { return plain::thermal_expansion_per_kelvin(w, t).value; }
};

/// First guess of s = 2 w - 1 from a density; single precision is enough.
template <class T>
[[gnu::always_inline]] inline T guess_composition(T rho, T t) {
    return T(r22::guess_composition(static_cast<float>(rho), static_cast<float>(t)));
}

/// Compositions from densities: a first guess, a step of Householder's method and one of Newton's.
/// @param rho densities, kg/m3
/// @param t   temperatures, °C
/// @param w   destination of the mass fractions; NaN for an uncertain one
template <class T>
[[gnu::always_inline]] inline void compositions(T const* rho, T const* t, T* w) {
    using isotherm = r22::isotherm<T>;
    T s[block], inverse_slope[block];
    columns<T, isotherm::terms> residual;
    columns<T, 4> series;
    // s0 = P(rho, t)/Q(rho, t)
    AQUETH_EACH_OF_BLOCK(i) s[i] = guess_composition(rho[i], t[i]);
    // f(s) = rho(s, t) - rho, and f(s0), f'(s0), f''(s0)/2, f'''(s0)/6
    AQUETH_EACH_OF_BLOCK(i) {
        auto const each = r22::density_residual(isotherm(t[i]), rho[i]);
        residual.set(i, each);
        series.set(i, numeric::polynomial_taylor<4>(each, s[i]));
    }
    // s1 = s0 + Householder's step; 1/f'(s1)
    AQUETH_EACH_OF_BLOCK(i) {
        auto const first = numeric::householder_step(series[i]);
        s[i] += first.step;
        inverse_slope[i] = first.inverse_slope;
    }
    // w = (s1 - f(s1)/f'(s1) + 1)/2
    AQUETH_EACH_OF_BLOCK(i) {
        auto const last = r22::newton_step_to_density<T>(residual[i], s[i], inverse_slope[i]);
        w[i] = certain_or_nan<T>({last.mass_fraction, bits_of(last.convergence_margin)});
    }
}

template <class T>
struct composition_operation {
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<T> quick(T const* rho, T const* t, results<V> out) const {
        T w[block];
        compositions(rho, t, w);
        bits<T> any = 0;
        AQUETH_EACH_OF_BLOCK(i) any |= out.set(i, {w[i], perhaps_not_liquid(w[i], t[i], edge<T>)});
        return any;
    }
    T careful(T rho, T t) const { return T(composition(rho, t, rounding<T>)); }
};

/// At one temperature up to 40 °C.
template <class T>
struct composition_at_operation {
    explicit composition_at_operation(T degrees)
        : t(degrees), least((std::max)(weakest_liquid(degrees), edge<T>)), at_t(degrees) {}
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<T> quick(T const* rho, results<V> out) const {
        T s[block];
        AQUETH_EACH_OF_BLOCK(i) s[i] = guess_composition(rho[i], t);
        bits<T> any = 0;
        AQUETH_EACH_OF_BLOCK(i) {
            auto const residual = r22::density_residual(at_t, rho[i]);
            auto const first = numeric::householder_step(numeric::polynomial_taylor<4>(residual, s[i]));
            auto const last =
                r22::newton_step_to_density(residual, T(s[i] + first.step), first.inverse_slope);
            T const w = last.mass_fraction;
            any |= out.set(i, {w, bits_of(last.convergence_margin) | outside(w, least, T(T(1) - edge<T>))});
        }
        return any;
    }
    T careful(T rho) const { return T(composition(rho, t, rounding<T>)); }
    T t, least;
    r22::isotherm<T> at_t;
};

/// Conversion of a basis of strength to a mass fraction and back without a branch: directly, or through the
/// volume fraction at a reference temperature, which needs the solution of an equation.
template <class Basis>
struct quick_basis;

template <>
struct quick_basis<mass_fraction> {
    static constexpr double highest = 1.0;
    template <class T>
    static T to_mass(T w) {
        return w;
    }
    template <class T>
    static T from_mass(T w) {
        return w;
    }
};

template <>
struct quick_basis<mole_fraction> {
    static constexpr double highest = 1.0;
    template <class T>
    static T to_mass(T x) {
        return correlation::molar_mass::mass_fraction_from_mole_fraction(x);
    }
    template <class T>
    static T from_mass(T w) {
        return correlation::molar_mass::mole_fraction_from_mass_fraction(w);
    }
};

template <class Reference>
struct quick_basis<basic_volume_fraction<Reference>> {
    using reference = Reference;
    static constexpr double highest = 1.0;
    template <class T>
    static T to_volume(T q) {
        return q;
    }
    template <class T>
    static T from_mass(T w) {
        constexpr auto const& at_t = reference_isotherm<Reference, T>;
        constexpr T per_ethanol = T(1) / at_t.density(T(1));
        T const q = w * (at_t.density_even_odd(w) * per_ethanol);
        return q < T(1) ? q : T(1);
    }
};

template <>
struct quick_basis<us_proof> {
    using reference = at_60_fahrenheit;
    static constexpr double highest = 200.0;
    template <class T>
    static T to_volume(T degrees) {
        return degrees / T(200);
    }
    template <class T>
    static T from_mass(T w) {
        return T(200) * quick_basis<basic_volume_fraction<reference>>::from_mass(w);
    }
};

template <class Reference>
struct quick_basis<basic_mass_concentration<Reference>> {
    using reference = Reference;
    static constexpr double highest =
        basic_mass_concentration<Reference>::plain_basis::template highest<double>;
    template <class T>
    static T to_volume(T grams) {
        constexpr T per_ethanol = T(10) / reference_isotherm<Reference, T>.density(T(1));
        return per_ethanol * grams;
    }
    template <class T>
    static T from_mass(T w) {
        return w * (reference_isotherm<Reference, T>.density_even_odd(w) * T(0.1));
    }
};

/// Mixtures of a block from their strengths in a basis of volume, all but the last step.
template <class Basis, class T>
class mixtures_by_volume {
    using basis = quick_basis<Basis>;

public:
    /// @param strength strengths
    [[gnu::always_inline]] explicit mixtures_by_volume(T const* strength) {
        AQUETH_EACH_OF_BLOCK(i) {
            auto const q = static_cast<float>(basis::to_volume(strength[i]));
            if constexpr (std::is_same_v<typename basis::reference, at_20_celsius>) {
                guess_[i] = T(r22::guess_mass_fraction_at_20_celsius(q));
            } else {
                guess_[i] =
                    T(r22::guess_mass_fraction(reference_isotherm<typename basis::reference, float>, q));
            }
        }
        AQUETH_EACH_OF_BLOCK(i) series_.set(i, r22::density_series(at_reference, guess_[i]));
    }

    /// @param i        index of an element
    /// @param strength its strength, again
    /// @return its mass fraction
    [[gnu::always_inline]] T mass_fraction(std::size_t i, T strength) const {
        return r22::halley_mass_fraction<T>(concentration(strength), guess_[i], series_[i]);
    }
    /// @param i        index of an element
    /// @param strength its strength, again
    /// @return its density at the reference temperature, kg/m3
    [[gnu::always_inline]] T density(std::size_t i, T strength) const {
        return r22::halley_density<T>(concentration(strength), guess_[i], series_[i]);
    }

private:
    static constexpr auto const& at_reference = reference_isotherm<typename basis::reference, T>;
    static T concentration(T strength) { return basis::to_volume(strength) * at_reference.density(T(1)); }

    T guess_[block];
    columns<T, 3> series_;
};

/// Conversion of a strength of this kind to its number and back.
template <class Basis>
constexpr double number(Basis const& strength) {
    if constexpr (requires { strength.value(); }) {
        return strength.value();
    } else {
        return strength.number();
    }
}

template <class T, class Target, class Source>
struct conversion {
    using from = quick_basis<Source>;
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<T> quick(T const* strength, results<V> out) const {
        bits<T> any = 0;
        if constexpr (requires { typename from::reference; }) {
            mixtures_by_volume<Source, T> const mixtures(strength);
            AQUETH_EACH_OF_BLOCK(i) {
                T const w = mixtures.mass_fraction(i, strength[i]);
                any |= out.set(i, into(w, outside(w, T(0), T(T(1) - edge<T>)), strength[i]));
            }
        } else {
            AQUETH_EACH_OF_BLOCK(i) any |= out.set(i, into(from::to_mass(strength[i]), 0, strength[i]));
        }
        return any;
    }
    static doubtful<T> into(T w, bits<T> doubt, T strength) {
        return {quick_basis<Target>::from_mass(w), doubt | outside(strength, T(0), T(from::highest))};
    }
    T careful(T strength) const {
        if (!(strength >= T(0) && strength <= T(from::highest))) return nothing<T>;
        double const as_double = strength;  // conversion to float may have rounded the highest up
        return T(number(aqueth::to<Target>(Source((std::min)(as_double, from::highest)))));
    }
};

/// An instrument in % vol and the liquid in which it floats.
template <class T, class Reference>
struct reading_correction {
    T glass;
    static constexpr T reference = T(Reference::temperature().celsius());

    // Four steps: the density that the instrument shows at the reference temperature, the density of the
    // liquid at t, its composition, its strength.
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<T> quick(T const* reading, T const* t, results<V> out) const {
        using volume_fraction = basic_volume_fraction<Reference>;
        T rho[block], w[block];
        mixtures_by_volume<volume_fraction, T> const apparent(reading);
        AQUETH_EACH_OF_BLOCK(i) {
            T const expansion = T(1) + glass * (t[i] - reference);
            rho[i] = apparent.density(i, reading[i]) / expansion;
        }
        compositions(rho, t, w);
        bits<T> any = 0;
        AQUETH_EACH_OF_BLOCK(i) {
            any |= out.set(i, {quick_basis<volume_fraction>::from_mass(w[i]),
                               outside(reading[i], T(0), T(1)) | perhaps_not_liquid(w[i], t[i], edge<T>)});
        }
        return any;
    }
    T careful(T reading, T t) const {
        if (!(reading >= T(0) && reading <= T(1))) return nothing<T>;
        using strength = basic_volume_fraction<Reference>;
        auto const& at_reference =
            plain::reference_isotherm<aqueth::detail::plain_reference_temperature<Reference>, double>;
        double const floats_at = at_reference.density(aqueth::to<mass_fraction>(strength(reading)).value());
        double const rho = floats_at / (1.0 + double(glass) * (double(t) - double(reference)));
        double const w = composition(rho, t, rounding<T>);
        return std::isnan(w) ? nothing<T> : T(aqueth::to<strength>(mass_fraction(w)).value());
    }
};

struct vapour_operation {
    equilibrium_curve const* curve;
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<double> quick(double const* x, results<V> out) const {
        int left[block];
        double fraction[block], within[block];
        columns<double, 4> nodes;
        // In loops of their own: g++ would otherwise branch at both ends.
        AQUETH_EACH_OF_BLOCK(i) fraction[i] = x[i] > 0.0 ? x[i] : 0.0;  // NaN is not
        AQUETH_EACH_OF_BLOCK(i) fraction[i] = fraction[i] < 1.0 ? fraction[i] : 1.0;
        AQUETH_EACH_OF_BLOCK(i) {
            equilibrium_curve::position const at(fraction[i]);
            left[i] = at.left;
            within[i] = at.within;
        }
        for (std::size_t i = 0; i < block; ++i) {
            auto const [a, b] = curve->around(left[i]);
            nodes.set(i, {a.value, a.slope, b.value, b.slope});
        }
        bits<double> any = 0;
        AQUETH_EACH_OF_BLOCK(i) {
            auto const [a, a_slope, b, b_slope] = nodes[i];
            double const y = equilibrium_curve::vapour_between(x[i], {{a, a_slope}, {b, b_slope}}, within[i]);
            any |= out.set(i, {y, outside(x[i], 0.0, 1.0)});
        }
        return any;
    }
    double careful(double x) const { return x >= 0.0 && x <= 1.0 ? curve->vapour(x) : nothing<double>; }
};

/// Boiling temperature or vapour of a liquid, by the model itself.
/// @tparam Member the wanted member of the equilibrium
template <auto Member>
struct bubble_point_operation {
    static double solve(double x, double pascals) {
        return model::vapour_liquid::bubble_at_pressure(x, pascals).*Member;
    }
    template <class V>
    [[gnu::always_inline, gnu::flatten]] bits<double> quick(double const* x, double const* pascals,
                                                            results<V> out) const {
        bits<double> any = 0;
        AQUETH_EACH_OF_BLOCK(i) {
            bool const inside = x[i] >= 0.0 && x[i] <= 1.0 && pascals[i] >= aqueth::detail::surely_low &&
                                pascals[i] <= aqueth::detail::surely_high;
            any |= out.set(
                i, {inside ? solve(x[i], pascals[i]) : nothing<double>, inside ? 0 : ~bits<double>{0}});
        }
        return any;
    }
    double careful(double x, double pascals) const {
        namespace vle = model::vapour_liquid;
        if (!(x >= 0.0 && x <= 1.0)) return nothing<double>;
        bool const boils =
            pascals >= vle::bubble_at_temperature(x, aqueth::detail::coldest_kelvin).pressure &&
            pascals <= vle::bubble_at_temperature(x, aqueth::detail::hottest_kelvin).pressure;
        return boils ? solve(x, pascals) : nothing<double>;
    }
};

#if defined(__clang__)
#pragma clang diagnostic pop
#endif

}  // namespace aqueth::inline AQUETH_ABI::arrays::detail

#undef AQUETH_EACH_OF_BLOCK
