// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/liquid.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth {

/// A parcel of liquid: a mass of an ethanol-water mixture at a temperature. Every operation takes and returns
/// parcels.
///
/// A parcel holds its mass and composition, because mixing and warming conserve mass. It computes its volume
/// at a given temperature, because volume is not conserved.
/// @par Source
/// Volumes and strengths by volume @ref source_oiml_r22; proof gallons @ref source_us_gauging
class [[nodiscard]] parcel {
public:
    /// @param mass        mass (true mass, in vacuo), 0 or more
    /// @param strength    strength in any basis
    /// @param temperature temperature, where the mixture is liquid, -20 to 40 °C
    /// @return the parcel
    /// @throws range_error if the mass is negative or not finite, or the temperature is outside its range
    template <strength_basis Strength>
    static constexpr parcel of(units::mass mass, Strength strength, units::temperature temperature) {
        return parcel(mass, to<aqueth::mass_fraction>(strength), temperature);
    }
    /// @param volume      volume as measured at `temperature`, 0 or more
    /// @param strength    strength in any basis
    /// @param temperature temperature, where the mixture is liquid, -20 to 40 °C
    /// @return the parcel
    /// @throws range_error if the volume is negative or not finite, or the temperature is outside its range
    template <strength_basis Strength>
    static constexpr parcel of(units::volume volume, Strength strength, units::temperature temperature) {
        require_range("parcel", argument::volume, in(volume, litre), "L", 0.0, unlimited);
        auto const w = to<aqueth::mass_fraction>(strength);
        return parcel(volume * density(w, temperature), w, temperature);
    }
    /// @param mass mass, 0 or more
    /// @param kind composition and temperature
    /// @return the parcel
    /// @throws range_error if the mass is negative or not finite
    static constexpr parcel of(units::mass mass, aqueth::liquid const& kind) {
        return parcel(mass, kind.composition(), kind.temperature());
    }
    /// @param volume volume as measured at the liquid's temperature, 0 or more
    /// @param kind   composition and temperature
    /// @return the parcel
    /// @throws range_error if the volume is negative or not finite
    static constexpr parcel of(units::volume volume, aqueth::liquid const& kind) {
        return of(volume, kind.composition(), kind.temperature());
    }

    /// @return mass
    constexpr units::mass mass() const { return mass_; }
    /// @return mass of the ethanol in it
    constexpr units::mass ethanol() const { return composition_.value() * mass_; }
    /// @return mass of the water in it
    constexpr units::mass water() const { return (1.0 - composition_.value()) * mass_; }
    /// @return composition, as the mass fraction of ethanol
    constexpr mass_fraction composition() const { return composition_; }
    /// @return temperature
    constexpr units::temperature temperature() const { return temperature_; }
    /// @return the same liquid without its amount
    constexpr aqueth::liquid liquid() const { return aqueth::liquid::of(composition_, temperature_); }

    /// @tparam Basis the basis wanted; alcoholic strength by volume at 20 °C unless given
    /// @return strength in that basis
    template <strength_basis Basis = volume_fraction>
    constexpr Basis strength() const {
        return to<Basis>(composition_);
    }

    /// @return volume at the parcel's own temperature
    constexpr units::volume volume() const { return volume(temperature_); }
    /// @param t temperature, where the mixture is liquid, -20 to 40 °C
    /// @return volume the parcel has at t
    /// @throws range_error if the temperature is outside its range
    constexpr units::volume volume(units::temperature t) const { return mass_ / density(composition_, t); }

    /// @tparam Reference tag of the reference temperature; 20 °C unless given
    /// @return volume that the parcel's ethanol would have on its own at the reference temperature
    ///         (litres of pure alcohol)
    template <class Reference = at_20_celsius>
    constexpr units::volume pure_alcohol() const {
        return ethanol() / density(mass_fraction(1.0), Reference::temperature());
    }

    /// @return US proof gallons: US gallons at 60 °F times proof over 100 (27 CFR 30.11)
    constexpr double proof_gallons() const {
        return in(volume(at_60_fahrenheit::temperature()), us_gallon) * strength<us_proof>().degrees() /
               100.0;
    }

    /// @param t temperature, where the mixture is liquid, -20 to 40 °C
    /// @return the same liquid at another temperature
    /// @throws range_error if the temperature is outside its range
    constexpr parcel at(units::temperature t) const { return parcel(mass_, composition_, t); }
    /// @param mass mass, 0 or more
    /// @return another amount of the same liquid at the same temperature
    /// @throws range_error if the mass is negative or not finite
    constexpr parcel with_mass(units::mass mass) const { return parcel(mass, composition_, temperature_); }

private:
    constexpr parcel(units::mass mass, mass_fraction composition, units::temperature temperature)
        : mass_(mass), composition_(composition), temperature_(temperature) {
        require_range("parcel", argument::mass, mass.value(), "kg", 0.0, unlimited);
        detail::require_liquid("parcel", composition, temperature);
    }

    units::mass mass_;
    mass_fraction composition_;
    units::temperature temperature_;
};

/// @param mass        mass of the water, 0 or more
/// @param temperature 0 to 40 °C
/// @return a parcel of pure water
/// @throws range_error if the mass is negative or not finite, or the temperature is outside its range
constexpr parcel water(units::mass mass, units::temperature temperature) {
    return parcel::of(mass, mass_fraction(0.0), temperature);
}

}  // namespace aqueth
