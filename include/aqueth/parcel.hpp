// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/liquid.hpp>
#include <aqueth/plain/parcel.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

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
    /// @param temperature temperature, where the mixture is liquid, from -20 °C up
    /// @return the parcel
    /// @throws refusal if the mass is negative or not finite, or the temperature is outside its range
    template <strength_basis Strength>
    static constexpr parcel of(units::mass mass, Strength strength, units::temperature temperature) {
        return of({mass.value(), to<aqueth::mass_fraction>(strength).value(), temperature.celsius()});
    }
    /// @param volume      volume as measured at `temperature`, 0 or more
    /// @param strength    strength in any basis
    /// @param temperature temperature, where the mixture is liquid, from -20 °C up
    /// @return the parcel
    /// @throws refusal if the volume is negative or not finite, or the temperature is outside its range
    template <strength_basis Strength>
    static constexpr parcel of(units::volume volume, Strength strength, units::temperature temperature) {
        auto const made = plain::detail::parcel_by_cubic_metres(
            volume.value(), to<aqueth::mass_fraction>(strength).value(), temperature.celsius());
        bool const no_density = made.status.argument == argument::temperature;
        return parcel(detail::answer(no_density ? "density" : "parcel", made));
    }
    /// @param ethanol     amount of ethanol, 0 or more
    /// @param water       amount of water, 0 or more; not both amounts can be 0
    /// @param temperature temperature, where the mixture is liquid, from -20 °C up
    /// @return the parcel
    /// @throws refusal if an amount is negative or not finite, both are 0, or the temperature is outside
    ///         its range
    /// @par Source
    /// molar masses @ref source_molar_mass
    static constexpr parcel of_moles(units::amount ethanol, units::amount water,
                                     units::temperature temperature) {
        return parcel(detail::answer(
            "parcel", plain::parcel_by_moles(ethanol.value(), water.value(), temperature.celsius())));
    }
    /// @param numbers mass, mass fraction and temperature, as the functions of `aqueth::plain` answer
    /// @return the parcel
    /// @throws refusal if the mass is negative or not finite, or the mass fraction or the temperature is
    ///         outside its range
    static constexpr parcel of(plain::parcel<double> const& numbers) {
        detail::accept("parcel", plain::parcel_range(numbers));
        return parcel(numbers);
    }
    /// @param mass mass, 0 or more
    /// @param kind composition and temperature
    /// @return the parcel
    /// @throws refusal if the mass is negative or not finite
    static constexpr parcel of(units::mass mass, aqueth::liquid const& kind) {
        return of(mass, kind.composition(), kind.temperature());
    }
    /// @param volume volume as measured at the liquid's temperature, 0 or more
    /// @param kind   composition and temperature
    /// @return the parcel
    /// @throws refusal if the volume is negative or not finite
    static constexpr parcel of(units::volume volume, aqueth::liquid const& kind) {
        return of(volume, kind.composition(), kind.temperature());
    }

    /// @return mass
    constexpr units::mass mass() const { return numbers_.mass_kg * kilogram; }
    /// @return mass of the ethanol in it
    constexpr units::mass ethanol() const { return numbers_.mass_fraction * numbers_.mass_kg * kilogram; }
    /// @return mass of the water in it
    constexpr units::mass water() const {
        return (1.0 - numbers_.mass_fraction) * numbers_.mass_kg * kilogram;
    }
    /// @return amount of the ethanol in it
    /// @par Source
    /// molar mass @ref source_molar_mass
    constexpr units::amount ethanol_amount() const { return plain::detail::ethanol_mol(numbers_) * mole; }
    /// @return amount of the water in it
    /// @par Source
    /// molar mass @ref source_molar_mass
    constexpr units::amount water_amount() const { return plain::detail::water_mol(numbers_) * mole; }
    /// @return composition, as the mass fraction of ethanol
    constexpr mass_fraction composition() const { return mass_fraction(numbers_.mass_fraction); }
    /// @return temperature
    constexpr units::temperature temperature() const { return celsius(numbers_.celsius); }
    /// @return the same liquid without its amount
    constexpr aqueth::liquid liquid() const { return aqueth::liquid::of(composition(), temperature()); }

    /// @tparam Basis the basis wanted; alcoholic strength by volume at 20 °C unless given
    /// @return strength in that basis
    template <strength_basis Basis = volume_fraction>
    constexpr Basis strength() const {
        return to<Basis>(composition());
    }

    /// @return volume at the parcel's own temperature
    constexpr units::volume volume() const { return volume(temperature()); }
    /// @param t temperature, where the mixture is liquid, from -20 °C up
    /// @return volume the parcel has at t
    /// @throws refusal if the temperature is outside its range
    constexpr units::volume volume(units::temperature t) const {
        return detail::answer("density", plain::detail::volume_m3(numbers_, t.celsius())) * cubic_metre;
    }

    /// @tparam Reference tag of the reference temperature; 20 °C unless given
    /// @return volume that the parcel's ethanol would have on its own at the reference temperature
    ///         (litres of pure alcohol)
    template <class Reference = at_20_celsius>
    constexpr units::volume pure_alcohol() const {
        constexpr double reference = Reference::temperature().celsius();
        return detail::answer("density", plain::detail::pure_alcohol_m3(numbers_, reference)) * cubic_metre;
    }

    /// @return US proof gallons: US gallons at 60 °F times proof over 100 (27 CFR 30.11)
    constexpr double proof_gallons() const {
        return in(volume(at_60_fahrenheit::temperature()), us_gallon) * strength<us_proof>().degrees() /
               100.0;
    }

    /// @param t temperature, where the mixture is liquid, from -20 °C up
    /// @return the same liquid at another temperature
    /// @throws refusal if the temperature is outside its range
    constexpr parcel at(units::temperature t) const {
        return of({numbers_.mass_kg, numbers_.mass_fraction, t.celsius()});
    }
    /// @param mass mass, 0 or more
    /// @return another amount of the same liquid at the same temperature
    /// @throws refusal if the mass is negative or not finite
    constexpr parcel with_mass(units::mass mass) const {
        return of({mass.value(), numbers_.mass_fraction, numbers_.celsius});
    }

    /// @return its numbers, as the functions of `aqueth::plain` take them
    explicit constexpr operator plain::parcel<double> const&() const { return numbers_; }

    /// same mass, composition and temperature
    friend constexpr bool operator==(parcel const&, parcel const&) = default;

private:
    explicit constexpr parcel(plain::parcel<double> const& checked) : numbers_(checked) {}

    plain::parcel<double> numbers_;
};

/// @param mass        mass of the water, 0 or more
/// @param temperature 0 °C to the boiling point
/// @return a parcel of pure water
/// @throws refusal if the mass is negative or not finite, or the temperature is outside its range
constexpr parcel water(units::mass mass, units::temperature temperature) {
    return parcel::of(mass, mass_fraction(0.0), temperature);
}

}  // namespace aqueth::inline AQUETH_ABI
