// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/plain/status.hpp>

#include <limits>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI::plain {

/// @name Reference temperatures
/// Types, so that OIML R 22 at a reference temperature is worked out at compile time. Any type with such a
/// `celsius`, 0 to 40, is a reference temperature too.
/// @{

/// 20 °C: OIML R 22, the legal reference in Europe and most of the world.
struct at_20_celsius {
    static constexpr double celsius = 20.0;  ///< °C
};
/// 15 °C: older continental tables.
struct at_15_celsius {
    static constexpr double celsius = 15.0;  ///< °C
};
/// 15.56 °C: pharmacopoeial tables, 60 °F rounded.
struct at_15_56_celsius {
    static constexpr double celsius = 15.56;  ///< °C
};
/// 60 °F (15.555... °C): United States rules.
struct at_60_fahrenheit {
    static constexpr double celsius = (60.0 - 32.0) * 5.0 / 9.0;  ///< °C
};
/// @}

/// OIML R 22 at a reference temperature.
/// @tparam Reference the reference temperature
/// @tparam T         scalar type
template <class Reference, number T>
inline constexpr correlation::oiml_r22::isotherm<T> reference_isotherm{T(Reference::celsius)};

/// @name Bases of strength
/// Meanings of a number as content of ethanol in a mixture. Each has its argument code, its greatest value
/// (pure ethanol), and the unchecked conversion to and from the mass fraction.
/// @{

/// Mass of ethanol per mass of mixture, 0 to 1: the pivot of all conversions, because it alone needs no
/// temperature and no atomic weight.
struct mass_basis {
    static constexpr argument code = argument::mass_fraction;  ///< in refusals
    static constexpr limit set_by = limit::none;               ///< the range, which is the definition's
    template <number T>
    static constexpr T highest = T(1);  ///< pure ethanol
    /// @param w mass fraction, 0 to 1
    /// @return the mass fraction
    template <number T>
    static constexpr T to_mass_fraction(T w) {
        return w;
    }
    /// @param w mass fraction, 0 to 1
    /// @return the strength in this basis
    template <number T>
    static constexpr T from_mass_fraction(T w) {
        return w;
    }
};

/// Amount of ethanol per amount of mixture (moles), 0 to 1.
struct mole_basis {
    static constexpr argument code = argument::mole_fraction;  ///< in refusals
    static constexpr limit set_by = limit::none;               ///< the range, which is the definition's
    template <number T>
    static constexpr T highest = T(1);  ///< pure ethanol
    /// @param x mole fraction, 0 to 1
    /// @return the mass fraction
    template <number T>
    static constexpr T to_mass_fraction(T x) {
        return correlation::molar_mass::mass_fraction_from_mole_fraction(x);
    }
    /// @param w mass fraction, 0 to 1
    /// @return the strength in this basis
    template <number T>
    static constexpr T from_mass_fraction(T w) {
        return correlation::molar_mass::mole_fraction_from_mass_fraction(w);
    }
};

/// Alcoholic strength by volume, 0 to 1: volume of pure ethanol in a mixture per volume of the mixture, both
/// at the reference temperature.
/// @tparam Reference the reference temperature
template <class Reference>
struct volume_basis {
    using reference = Reference;                                              ///< the reference temperature
    static constexpr argument code = argument::alcoholic_strength_by_volume;  ///< in refusals
    static constexpr limit set_by = limit::none;  ///< the range, which is the definition's
    template <number T>
    static constexpr T highest = T(1);  ///< pure ethanol
    /// @param q volume fraction, 0 to 1
    /// @return the mass fraction
    template <number T>
    static constexpr T to_mass_fraction(T q) {
        namespace r22 = correlation::oiml_r22;
        if constexpr (Reference::celsius == 20.0 && std::is_same_v<T, double>) {
            return r22::mixture_at_20_celsius(q).mass_fraction();
        } else {
            auto const& isotherm = reference_isotherm<Reference, T>;
            return r22::mass_fraction_from_concentration(isotherm, q * isotherm.density(T(1)));
        }
    }
    /// @param w mass fraction, 0 to 1
    /// @return the strength in this basis
    template <number T>
    static constexpr T from_mass_fraction(T w) {
        constexpr auto const& isotherm = reference_isotherm<Reference, T>;
        constexpr T per_ethanol = T(1) / isotherm.density(T(1));  // a product is faster than a quotient
        T const q = w * (isotherm.density(w) * per_ethanol);
        return q < T(1) ? q : T(1);  // rounding may reach 1 + 1 ulp
    }
    /// @param q volume fraction, 0 to 1
    /// @return the volume fraction at the reference temperature
    template <number T>
    static constexpr T to_volume_fraction(T q) {
        return q;
    }
    /// @param q volume fraction, 0 to 1
    /// @return the strength in this basis
    template <number T>
    static constexpr T from_volume_fraction(T q) {
        return q;
    }
};

/// US degrees of proof, 0 to 200: twice the percentage of alcohol by volume at 60 °F (27 CFR 30.11).
struct proof_basis {
    using reference = at_60_fahrenheit;                ///< the reference temperature
    static constexpr argument code = argument::proof;  ///< in refusals
    static constexpr limit set_by = limit::none;       ///< the range, which is the definition's
    template <number T>
    static constexpr T highest = T(200);  ///< pure ethanol
    /// @param degrees degrees of proof, 0 to 200
    /// @return the volume fraction at the reference temperature
    template <number T>
    static constexpr T to_volume_fraction(T degrees) {
        return degrees / T(200);
    }
    /// @param q volume fraction, 0 to 1
    /// @return the strength in this basis
    template <number T>
    static constexpr T from_volume_fraction(T q) {
        return T(200) * q;
    }
    /// @param degrees degrees of proof, 0 to 200
    /// @return the mass fraction
    template <number T>
    static constexpr T to_mass_fraction(T degrees) {
        return volume_basis<reference>::to_mass_fraction(to_volume_fraction(degrees));
    }
    /// @param w mass fraction, 0 to 1
    /// @return the strength in this basis
    template <number T>
    static constexpr T from_mass_fraction(T w) {
        return from_volume_fraction(volume_basis<reference>::from_mass_fraction(w));
    }
};

/// Grams of ethanol in 100 mL of mixture at the reference temperature, 0 to about 79.
/// @tparam Reference the reference temperature
template <class Reference>
struct mass_concentration_basis {
    using reference = Reference;                                    ///< the reference temperature
    static constexpr argument code = argument::mass_concentration;  ///< in refusals
    static constexpr limit set_by = limit::oiml_r22_pure_ethanol;   ///< the greatest value
    /// pure ethanol; one constant, so that every use has the same rounding
    template <number T>
    static constexpr T highest = reference_isotherm<Reference, T>.density(T(1)) / T(10);
    /// @param grams_per_100_ml grams in 100 mL, 0 to pure ethanol
    /// @return the mass fraction
    template <number T>
    static constexpr T to_mass_fraction(T grams_per_100_ml) {
        return correlation::oiml_r22::mass_fraction_from_concentration(reference_isotherm<Reference, T>,
                                                                       T(10) * grams_per_100_ml);
    }
    /// @param w mass fraction, 0 to 1
    /// @return the strength in this basis
    template <number T>
    static constexpr T from_mass_fraction(T w) {
        T const c = w * reference_isotherm<Reference, T>.density(w) / T(10);
        return c < highest<T> ? c : highest<T>;  // rounding may pass it
    }
    /// @param grams_per_100_ml grams in 100 mL, 0 to pure ethanol
    /// @return the volume fraction at the reference temperature
    template <number T>
    static constexpr T to_volume_fraction(T grams_per_100_ml) {
        return grams_per_100_ml / highest<T>;
    }
    /// @param q volume fraction, 0 to 1
    /// @return the strength in this basis
    template <number T>
    static constexpr T from_volume_fraction(T q) {
        return q * highest<T>;
    }
};
/// @}

namespace detail {

template <class Basis>
inline constexpr bool is_basis = false;
template <>
inline constexpr bool is_basis<mass_basis> = true;
template <>
inline constexpr bool is_basis<mole_basis> = true;
template <>
inline constexpr bool is_basis<proof_basis> = true;
template <class Reference>
inline constexpr bool is_basis<volume_basis<Reference>> = true;
template <class Reference>
inline constexpr bool is_basis<mass_concentration_basis<Reference>> = true;

}  // namespace detail

/// Any of the bases of strength.
template <class Basis>
concept basis_of_strength = detail::is_basis<Basis>;

/// A basis that counts ethanol in a volume of mixture.
template <class Basis>
concept volumetric_basis = basis_of_strength<Basis> && requires {
    Basis::reference::celsius;
};

/// @tparam Basis basis of the strength
/// @param strength fraction 0 to 1, degrees of proof or grams in 100 mL
/// @return whether it lies between 0 and pure ethanol
template <basis_of_strength Basis, number T>
constexpr status strength_range(T strength) {
    return within(Basis::code, strength, 0.0, double(Basis::template highest<T>), Basis::set_by);
}

namespace detail {

template <class A, class B>
constexpr bool same_reference() {
    if constexpr (volumetric_basis<A> && volumetric_basis<B>) {
        return A::reference::celsius == B::reference::celsius;
    } else {
        return false;
    }
}

}  // namespace detail

/// A strength from one basis to another: `convert<volume_basis<at_20_celsius>, proof_basis>(0.4)`.
///
/// Volumetric bases with one reference temperature differ by a constant factor only. All others go through
/// the mass fraction.
/// @tparam From basis of the strength
/// @tparam To   basis wanted
/// @param strength fraction 0 to 1, degrees of proof or grams in 100 mL
/// @return the same mixture in the wanted basis; refuses what is negative or more than pure ethanol
/// @par Accuracy
/// As `aqueth::to`. In `float` there and back closes within 1e-6 of full scale.
/// @par Source
/// Definition of alcoholic strength, @ref source_oiml_r22; mole fractions with @ref source_molar_mass;
/// US proof 27 CFR 30.11, @ref source_us_gauging
template <basis_of_strength From, basis_of_strength To, number T>
constexpr checked<T> convert(T strength) {
    status const range = strength_range<From>(strength);
    if (!range.ok) return no_answer<T>(range);
    if constexpr (std::is_same_v<From, To>) {
        return {strength, {}};
    } else if constexpr (detail::same_reference<From, To>()) {
        return {To::from_volume_fraction(From::to_volume_fraction(strength)), {}};
    } else {
        return {To::from_mass_fraction(From::to_mass_fraction(strength)), {}};
    }
}

/// @tparam From basis of the strength
/// @param strength fraction 0 to 1, degrees of proof or grams in 100 mL
/// @return mass fraction; refuses as `convert`
/// @par Source
/// as `convert`
template <basis_of_strength From, number T>
constexpr checked<T> mass_fraction_from(T strength) {
    return convert<From, mass_basis>(strength);
}

/// @tparam To basis wanted
/// @param mass_fraction of ethanol, 0 to 1
/// @return fraction 0 to 1, degrees of proof or grams in 100 mL; refuses as `convert`
/// @par Source
/// as `convert`
template <basis_of_strength To, number T>
constexpr checked<T> strength_in(T mass_fraction) {
    return convert<mass_basis, To>(mass_fraction);
}

/// A basis of strength that is chosen at run time, with its unit. Compare by name: the numbers behind the
/// names may grow from version to version.
enum class strength_scale {
    mass_fraction,                      ///< 0 to 1
    mole_fraction,                      ///< 0 to 1
    volume_fraction_at_20_celsius,      ///< 0 to 1
    volume_fraction_at_15_celsius,      ///< 0 to 1
    volume_fraction_at_15_56_celsius,   ///< 0 to 1
    volume_fraction_at_60_fahrenheit,   ///< 0 to 1
    us_proof,                           ///< 0 to 200
    grams_per_100_ml_at_20_celsius,     ///< 0 to about 79
    grams_per_100_ml_at_15_celsius,     ///< 0 to about 79
    grams_per_100_ml_at_15_56_celsius,  ///< 0 to about 79
    grams_per_100_ml_at_60_fahrenheit   ///< 0 to about 79
};

/// Passes the basis of a scale to a function: `with_basis(scale, [](auto basis) { ... })`.
/// @param scale    one of the enumerators
/// @param function called once with an object of the basis's type
/// @return what the function returns; for a number that is no scale, what it returns for the mass fraction
template <class Function>
constexpr auto with_basis(strength_scale scale, Function const& function) {
    switch (scale) {
    case strength_scale::mass_fraction: break;
    case strength_scale::mole_fraction: return function(mole_basis{});
    case strength_scale::volume_fraction_at_20_celsius: return function(volume_basis<at_20_celsius>{});
    case strength_scale::volume_fraction_at_15_celsius: return function(volume_basis<at_15_celsius>{});
    case strength_scale::volume_fraction_at_15_56_celsius: return function(volume_basis<at_15_56_celsius>{});
    case strength_scale::volume_fraction_at_60_fahrenheit: return function(volume_basis<at_60_fahrenheit>{});
    case strength_scale::us_proof: return function(proof_basis{});
    case strength_scale::grams_per_100_ml_at_20_celsius:
        return function(mass_concentration_basis<at_20_celsius>{});
    case strength_scale::grams_per_100_ml_at_15_celsius:
        return function(mass_concentration_basis<at_15_celsius>{});
    case strength_scale::grams_per_100_ml_at_15_56_celsius:
        return function(mass_concentration_basis<at_15_56_celsius>{});
    case strength_scale::grams_per_100_ml_at_60_fahrenheit:
        return function(mass_concentration_basis<at_60_fahrenheit>{});
    }
    return function(mass_basis{});
}

/// @param scale an enumerator, or a number that was taken for one
/// @return whether there is such a scale
constexpr status scale_range(strength_scale scale) {
    return within(argument::strength_scale, double(static_cast<int>(scale)), 0.0,
                  double(static_cast<int>(strength_scale::grams_per_100_ml_at_60_fahrenheit)));
}

/// @param scale a scale
/// @param celsius temperature for scales that have none of their own: mass and mole fractions, °C
/// @return the reference temperature of the scale, °C
template <number T>
constexpr T reference_celsius(strength_scale scale, T celsius) {
    return with_basis(scale, [&](auto basis) {
        if constexpr (volumetric_basis<decltype(basis)>) {
            return T(decltype(basis)::reference::celsius);
        } else {
            return celsius;
        }
    });
}

/// A strength from one basis to another, both chosen at run time.
/// @param strength fraction 0 to 1, degrees of proof or grams in 100 mL, as `from` says
/// @param from     scale of the strength
/// @param to       scale wanted
/// @return the same mixture on the wanted scale; refuses what is negative or more than pure ethanol, and
///         numbers that are no scale
/// @par Source
/// as the other `convert`
template <number T>
constexpr checked<T> convert(T strength, strength_scale from, strength_scale to) {
    for (strength_scale const scale : {from, to}) {
        status const known = scale_range(scale);
        if (!known.ok) return no_answer<T>(known);
    }
    status const range =
        with_basis(from, [&](auto basis) { return strength_range<decltype(basis)>(strength); });
    if (!range.ok) return no_answer<T>(range);
    if (from == to) return {strength, {}};
    // NaN, which equals nothing, for the two scales without a reference temperature
    constexpr T none = std::numeric_limits<T>::quiet_NaN();
    if (reference_celsius(from, none) == reference_celsius(to, none)) {
        T const q = with_basis(from, [&](auto basis) {
            if constexpr (volumetric_basis<decltype(basis)>) return basis.to_volume_fraction(strength);
            return T(0);
        });
        return {with_basis(to,
                           [&](auto basis) {
                               if constexpr (volumetric_basis<decltype(basis)>)
                                   return basis.from_volume_fraction(q);
                               return T(0);
                           }),
                {}};
    }
    T const w = with_basis(from, [&](auto basis) { return basis.to_mass_fraction(strength); });
    return {with_basis(to, [&](auto basis) { return basis.from_mass_fraction(w); }), {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
