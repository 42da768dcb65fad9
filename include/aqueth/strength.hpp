// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/air_buoyancy.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

#include <compare>
#include <limits>
#include <type_traits>

namespace aqueth {

namespace detail {

/// OIML R 22 at a reference temperature, collapsed at compile time.
template <class Reference>
inline constexpr correlation::oiml_r22::isotherm<double> reference_isotherm{
    Reference::temperature().celsius()};

/// How one basis of strength is turned into a mass fraction and back: the mass fraction is the pivot of all
/// conversions, because it alone needs no temperature and no atomic weight.
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
    // g/100 mL, pure ethanol; one constant, which no build can round in two ways
    static constexpr double highest = reference_isotherm<Reference>.density(1.0) / 10.0;
    static constexpr mass_fraction to_mass(basic_mass_concentration<Reference> c) {
        auto const& isotherm = reference_isotherm<Reference>;
        double const kg_per_m3 = 10.0 * c.grams_per_100_millilitres();
        require_range("strength", argument::mass_concentration, c.grams_per_100_millilitres(),
                      basic_mass_concentration<Reference>::unit, 0.0, highest, "pure ethanol, OIML R 22");
        return mass_fraction(isotherm.mass_fraction_from_concentration(kg_per_m3));
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
                isotherm.mass_fraction_from_concentration(q.value() * isotherm.density(1.0)));
        }
    }
    static constexpr basic_volume_fraction<Reference> from_mass(mass_fraction w) {
        constexpr auto const& isotherm = reference_isotherm<Reference>;
        constexpr double per_ethanol = 1.0 / isotherm.density(1.0);  // a product is quicker than a quotient
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
        return strength;  // to the digit, where a way through the mass fraction could round
    } else {
        return detail::basis<Target>::from_mass(detail::basis<Source>::to_mass(strength));
    }
}

/// @name Weighing in air
/// @{

/// What an ordinary balance shows: balances are set with weights of 8000 kg/m3 in air of 1.2 kg/m3, so a
/// liquid seems lighter than its mass by about 0.11 % (water) to 0.14 % (ethanol).
/// @param mass what lies on the balance, 0 or more
/// @param rho  its density, above 10 kg/m3
/// @return the balance's indication
/// @throws range_error if the density is below 10 kg/m3, the mass is negative, or either is no finite number
/// @par Source
/// @ref source_oiml_d28
constexpr units::mass balance_indication(units::mass mass, units::mass_density rho) {
    require_range("weighing in air", argument::density, rho.value(), "kg/m3", 10.0, 1e6);
    require_range("weighing in air", argument::mass, in(mass, kilogram), "kg", 0.0,
                  std::numeric_limits<double>::infinity());
    return mass * correlation::air_buoyancy::indication_per_mass(rho.value());
}

/// Mass of a liquid from what an ordinary balance shows: the inverse of `balance_indication`.
/// @param indication what the balance shows, 0 or more
/// @param rho        density of the liquid, above 10 kg/m3
/// @return true mass
/// @throws range_error if the density is below 10 kg/m3, the mass is negative, or either is no finite number
/// @par Source
/// @ref source_oiml_d28
constexpr units::mass mass_from_balance(units::mass indication, units::mass_density rho) {
    double const per_kilogram = in(balance_indication(1.0 * kilogram, rho), kilogram);
    require_range("weighing in air", argument::indication, in(indication, kilogram), "kg", 0.0,
                  std::numeric_limits<double>::infinity());
    return indication / per_kilogram;
}

/// Density as tables "in air" give it: what a balance shows for one cubic metre.
/// @param rho density, above 10 kg/m3
/// @return apparent density in kg/m3
/// @throws range_error if the density is below 10 kg/m3 or not a number
/// @par Source
/// @ref source_oiml_d28
constexpr units::mass_density density_in_air(units::mass_density rho) {
    return balance_indication(rho.value() * kilogram, rho).value() * kilogram_per_cubic_metre;
}
/// @}

/// @name Specific gravity
/// @{

/// Whether the two weighings behind a specific gravity are corrected to vacuum.
enum class medium {
    vacuum,  ///< ratio of true densities
    air      ///< ratio of weights found in air of 1.2 kg/m3, the same volume of liquid and of water
};

/// What a specific gravity t1/t2 refers to.
struct gravity_reference {
    units::temperature liquid = celsius(20.0);  ///< t1, temperature of the liquid
    units::temperature water = celsius(20.0);   ///< t2, temperature of the water it is compared with
    medium weighed_in = medium::vacuum;         ///< vacuum or air
};

/// Relative density: density of a liquid divided by the density of water, without unit.
class specific_gravity {
public:
    static constexpr char const* name = "specific gravity";  ///< as printed
    static constexpr char const* unit = "";                  ///< no unit

    /// @param value the ratio, 0.5 to 2
    /// @throws range_error if outside that range or not a number
    explicit constexpr specific_gravity(double value)
        : value_(require_range("specific gravity", argument::specific_gravity, value, unit, 0.5, 2.0)) {}

    /// @return the ratio
    constexpr double value() const noexcept { return value_; }

    friend constexpr auto operator<=>(specific_gravity, specific_gravity) = default;  ///< by value

private:
    double value_;
};

namespace detail {

constexpr double air_density(medium weighed_in) {
    return weighed_in == medium::air ? correlation::air_buoyancy::air : 0.0;
}

/// density of a liquid from its specific gravity
constexpr units::mass_density density_from_gravity(specific_gravity value,
                                                   gravity_reference const& reference) {
    double const air = air_density(reference.weighed_in);
    double const water = density(mass_fraction(0.0), reference.water).value();
    return (air + value.value() * (water - air)) * kilogram_per_cubic_metre;
}

/// specific gravity of a liquid from its density
constexpr specific_gravity gravity_from_density(units::mass_density rho, gravity_reference const& reference) {
    double const air = air_density(reference.weighed_in);
    double const water = density(mass_fraction(0.0), reference.water).value();
    return specific_gravity((rho.value() - air) / (water - air));
}

}  // namespace detail

/// Specific gravity of a mixture.
/// @param w         mass fraction of ethanol
/// @param reference temperatures of liquid and water (each where it is liquid, up to 40 °C), vacuum or air
/// @return specific gravity t1/t2
/// @throws range_error if a temperature is outside its range
/// @par Source
/// @ref source_oiml_r22, its own water; buoyancy @ref source_oiml_d28
constexpr specific_gravity specific_gravity_of(mass_fraction w, gravity_reference const& reference) {
    return detail::gravity_from_density(density(w, reference.liquid), reference);
}

/// Mass fraction of a mixture from its specific gravity: the inverse of `specific_gravity_of`.
/// @param value     specific gravity t1/t2, between those of pure ethanol and of water at t1
/// @param reference temperatures of liquid and water, vacuum or air
/// @return mass fraction
/// @throws range_error if a temperature or the specific gravity is outside its range
/// @par Source
/// as `specific_gravity_of`
constexpr mass_fraction mass_fraction_from_specific_gravity(specific_gravity value,
                                                            gravity_reference const& reference) {
    return mass_fraction_from_density(detail::density_from_gravity(value, reference), reference.liquid);
}
/// @}

}  // namespace aqueth
