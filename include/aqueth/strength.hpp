// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

#include <type_traits>

namespace aqueth {

namespace detail {

/// OIML R 22 at a reference temperature, collapsed at compile time.
template <class Reference>
inline constexpr correlation::oiml_r22::isotherm<double> reference_isotherm{
    Reference::temperature().celsius()};

/// Conversion of one basis of strength to a mass fraction and back. Every conversion goes through the mass
/// fraction, because it alone needs no temperature and no atomic weight.
template <strength_basis Basis>
struct basis;

template <>
struct basis<mass_fraction> {
    static constexpr mass_fraction to_mass(mass_fraction w) { return w; }
    static constexpr mass_fraction from_mass(mass_fraction w) { return w; }
};

template <>
struct basis<mole_fraction> {
    static constexpr mass_fraction to_mass(mole_fraction x) {
        return mass_fraction(correlation::molar_mass::mass_fraction_from_mole_fraction(x.value()));
    }
    static constexpr mole_fraction from_mass(mass_fraction w) {
        return mole_fraction(correlation::molar_mass::mole_fraction_from_mass_fraction(w.value()));
    }
};

template <class Reference>
struct basis<basic_mass_concentration<Reference>> {
    // g/100 mL, pure ethanol; one constant, so that every use has the same rounding
    static constexpr double highest = reference_isotherm<Reference>.density(1.0) / 10.0;
    static constexpr mass_fraction to_mass(basic_mass_concentration<Reference> c) {
        auto const& isotherm = reference_isotherm<Reference>;
        double const kg_per_m3 = 10.0 * c.grams_per_100_millilitres();
        require_range("strength", argument::mass_concentration, c.grams_per_100_millilitres(),
                      basic_mass_concentration<Reference>::unit, 0.0, highest, "pure ethanol, OIML R 22");
        return mass_fraction(correlation::oiml_r22::mass_fraction_from_concentration(isotherm, kg_per_m3));
    }
    static constexpr basic_mass_concentration<Reference> from_mass(mass_fraction w) {
        double const c = w.value() * reference_isotherm<Reference>.density(w.value()) / 10.0;
        return basic_mass_concentration<Reference>(c < highest ? c : highest);  // rounding may pass it
    }
};

template <class Reference>
struct basis<basic_volume_fraction<Reference>> {
    static constexpr mass_fraction to_mass(basic_volume_fraction<Reference> q) {
        namespace r22 = correlation::oiml_r22;
        if constexpr (std::is_same_v<Reference, at_20_celsius>) {
            return mass_fraction(r22::mixture_at_20_celsius(q.value()).mass_fraction());
        } else {
            auto const& isotherm = reference_isotherm<Reference>;
            return mass_fraction(
                r22::mass_fraction_from_concentration(isotherm, q.value() * isotherm.density(1.0)));
        }
    }
    static constexpr basic_volume_fraction<Reference> from_mass(mass_fraction w) {
        constexpr auto const& isotherm = reference_isotherm<Reference>;
        constexpr double per_ethanol = 1.0 / isotherm.density(1.0);  // a product is faster than a quotient
        double const q = w.value() * (isotherm.density(w.value()) * per_ethanol);
        return basic_volume_fraction<Reference>(q < 1.0 ? q : 1.0);  // rounding may reach 1 + 1 ulp
    }
};

template <>
struct basis<us_proof> {
    using volume = basic_volume_fraction<at_60_fahrenheit>;
    static constexpr mass_fraction to_mass(us_proof p) {
        return basis<volume>::to_mass(volume(p.degrees() / 200.0));
    }
    static constexpr us_proof from_mass(mass_fraction w) {
        return us_proof(200.0 * basis<volume>::from_mass(w).value());
    }
};

}  // namespace detail

/// Converts a strength from any basis to any other: `to<mass_fraction>(by_volume(40.0))`.
/// @tparam Target the basis wanted: mass_fraction, mole_fraction, basic_volume_fraction<...>,
///                basic_mass_concentration<...> or us_proof
/// @param strength the strength to convert
/// @return the same mixture in the wanted basis
/// @throws range_error if a mass concentration is above that of pure ethanol
/// @par Accuracy
/// There and back closes within a few units of the last place. Against measurements as `density`: 0.1 kg/m3
/// is 0.02 to 0.09 % vol at 20 °C, up to 0.14 at 0 °C and 0.24 at -10 °C.
/// @par Source
/// Definition of alcoholic strength, @ref source_oiml_r22; mole fractions with @ref source_molar_mass;
/// US proof 27 CFR 30.11, @ref source_us_gauging
template <strength_basis Target, strength_basis Source>
constexpr Target to(Source strength) {
    if constexpr (std::is_same_v<Target, Source>) {
        return strength;  // exact: a conversion through the mass fraction could round
    } else {
        return detail::basis<Target>::from_mass(detail::basis<Source>::to_mass(strength));
    }
}

}  // namespace aqueth
