// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/plain/density.hpp>
#include <aqueth/plain/freezing.hpp>
#include <aqueth/plain/status.hpp>

#include <limits>

namespace aqueth::inline AQUETH_ABI::plain {

/// A liquid without its amount. The numbers are not checked until a function uses them.
template <number T>
struct liquid {
    T mass_fraction = std::numeric_limits<T>::quiet_NaN();  ///< of ethanol, 0 to 1
    T celsius = std::numeric_limits<T>::quiet_NaN();        ///< temperature, °C

    friend constexpr bool operator==(liquid const&, liquid const&) = default;  ///< equal in every number
};

/// A mass of a mixture at a temperature. The numbers are not checked until a function uses them.
template <number T>
struct parcel {
    T mass_kg = std::numeric_limits<T>::quiet_NaN();        ///< mass (true mass, in vacuo), kg
    T mass_fraction = std::numeric_limits<T>::quiet_NaN();  ///< of ethanol, 0 to 1
    T celsius = std::numeric_limits<T>::quiet_NaN();        ///< temperature, °C

    friend constexpr bool operator==(parcel const&, parcel const&) = default;  ///< equal in every number
};

/// @param of_this liquid
/// @return whether it is one: a mass fraction, and a temperature where the mixture is liquid
template <number T>
constexpr status liquid_range(liquid<T> const& of_this) {
    return liquid_range(of_this.mass_fraction, of_this.celsius);
}

/// @param of_this parcel
/// @return whether it is one: a finite mass of 0 or more of a liquid as `liquid_range` has it
template <number T>
constexpr status parcel_range(parcel<T> const& of_this) {
    status const mass = within(argument::mass, of_this.mass_kg, 0.0, unlimited);
    return mass.ok ? liquid_range(of_this.mass_fraction, of_this.celsius) : mass;
}

namespace detail {

// Volumes in m3, the unit of the typed functions, so that a change of unit does not round their results.

template <number T>
inline constexpr T cubic_metres_per_litre = T(1e-3);

template <number T>
constexpr checked<T> in_litres(checked<T> const& cubic_metres) {
    return {cubic_metres.value / cubic_metres_per_litre<T>, cubic_metres.status};
}

template <number T>
constexpr checked<parcel<T>> parcel_by_cubic_metres(T cubic_metres, T mass_fraction, T celsius) {
    status const volume = within(argument::volume, cubic_metres / cubic_metres_per_litre<T>, 0.0, unlimited);
    if (!volume.ok) return no_answer<parcel<T>>(volume);
    auto const rho = density_kg_m3(mass_fraction, celsius);
    if (!rho.status.ok) return no_answer<parcel<T>>(rho.status);
    // fewer kilograms than litres, so the product is finite
    return {{cubic_metres * rho.value, mass_fraction, celsius}, {}};
}

/// The parcel is not checked, the temperature is.
template <number T>
constexpr checked<T> volume_m3(parcel<T> const& of_this, T celsius) {
    auto const rho = density_kg_m3(of_this.mass_fraction, celsius);
    if (!rho.status.ok) return rho;
    return {of_this.mass_kg / rho.value, {}};
}

/// The parcel is not checked, the temperature is.
template <number T>
constexpr checked<T> pure_alcohol_m3(parcel<T> const& of_this, T reference_celsius) {
    auto const rho = density_kg_m3(T(1), reference_celsius);
    if (!rho.status.ok) return rho;
    return {of_this.mass_fraction * of_this.mass_kg / rho.value, {}};
}

template <number T>
constexpr T ethanol_mol(parcel<T> const& of_this) {
    return of_this.mass_fraction * of_this.mass_kg / T(1e-3 * correlation::molar_mass::ethanol);
}

template <number T>
constexpr T water_mol(parcel<T> const& of_this) {
    return (T(1) - of_this.mass_fraction) * of_this.mass_kg / T(1e-3 * correlation::molar_mass::water);
}

}  // namespace detail

/// @param mass_kg       mass (true mass, in vacuo), 0 or more, kg
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, where the mixture is liquid, from -20 °C up
/// @return the parcel; refuses what is out of range
template <number T>
constexpr checked<parcel<T>> parcel_by_mass(T mass_kg, T mass_fraction, T celsius) {
    parcel<T> const made{mass_kg, mass_fraction, celsius};
    status const range = parcel_range(made);
    if (!range.ok) return no_answer<parcel<T>>(range);
    return {made, {}};
}

/// @param litres        volume as measured at that temperature, 0 or more, L
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, where the mixture is liquid, from -20 °C up
/// @return the parcel; refuses what is out of range
/// @par Source
/// @ref source_oiml_r22
template <number T>
constexpr checked<parcel<T>> parcel_by_volume(T litres, T mass_fraction, T celsius) {
    return detail::parcel_by_cubic_metres(litres * detail::cubic_metres_per_litre<T>, mass_fraction, celsius);
}

/// @param ethanol_mol amount of ethanol, 0 or more, mol
/// @param water_mol   amount of water, 0 or more, mol; not both amounts can be 0
/// @param celsius     temperature, where the mixture is liquid, from -20 °C up
/// @return the parcel; refuses what is out of range
/// @par Source
/// molar masses @ref source_molar_mass
template <number T>
constexpr checked<parcel<T>> parcel_by_moles(T ethanol_mol, T water_mol, T celsius) {
    status range = within(argument::amount_of_ethanol, ethanol_mol, 0.0, unlimited);
    if (range.ok) range = within(argument::amount_of_water, water_mol, 0.0, unlimited);
    if (range.ok)
        range = within(argument::amount_of_ethanol_and_water, ethanol_mol + water_mol,
                       double((std::numeric_limits<T>::min)()), unlimited);
    if (!range.ok) return no_answer<parcel<T>>(range);
    // The fraction comes from the mole fraction: products with tiny or huge amounts could under- or overflow.
    T const x = ethanol_mol / (ethanol_mol + water_mol);
    T const w = correlation::molar_mass::mass_fraction_from_mole_fraction(x);
    T const mass_kg = ethanol_mol * T(1e-3 * correlation::molar_mass::ethanol) +
                      water_mol * T(1e-3 * correlation::molar_mass::water);
    return parcel_by_mass(mass_kg, w < T(1) ? w : T(1), celsius);
}

/// @param of_this parcel
/// @param celsius temperature, where the mixture is liquid, from -20 °C up
/// @return volume it has at that temperature, L; refuses what is out of range
/// @par Source
/// @ref source_oiml_r22
template <number T>
constexpr checked<T> volume_litres(parcel<T> const& of_this, T celsius) {
    status const range = parcel_range(of_this);
    if (!range.ok) return no_answer<T>(range);
    return detail::in_litres(detail::volume_m3(of_this, celsius));
}

/// @param of_this parcel
/// @return volume at its own temperature, L; refuses what is no parcel
/// @par Source
/// @ref source_oiml_r22
template <number T>
constexpr checked<T> volume_litres(parcel<T> const& of_this) {
    return volume_litres(of_this, of_this.celsius);
}

/// @param of_this           parcel
/// @param reference_celsius reference temperature, -20 to 40 °C
/// @return volume that the parcel's ethanol would have on its own at the reference temperature, L (litres of
///         pure alcohol); refuses what is out of range
/// @par Source
/// @ref source_oiml_r22
template <number T>
constexpr checked<T> pure_alcohol_litres(parcel<T> const& of_this, T reference_celsius = T(20)) {
    status const range = parcel_range(of_this);
    if (!range.ok) return no_answer<T>(range);
    return detail::in_litres(detail::pure_alcohol_m3(of_this, reference_celsius));
}

/// @param of_this parcel
/// @return amount of the ethanol in it, mol; refuses what is no parcel
/// @par Source
/// molar mass @ref source_molar_mass
template <number T>
constexpr checked<T> ethanol_mol(parcel<T> const& of_this) {
    status const range = parcel_range(of_this);
    if (!range.ok) return no_answer<T>(range);
    return {detail::ethanol_mol(of_this), {}};
}

/// @param of_this parcel
/// @return amount of the water in it, mol; refuses what is no parcel
/// @par Source
/// molar mass @ref source_molar_mass
template <number T>
constexpr checked<T> water_mol(parcel<T> const& of_this) {
    status const range = parcel_range(of_this);
    if (!range.ok) return no_answer<T>(range);
    return {detail::water_mol(of_this), {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
