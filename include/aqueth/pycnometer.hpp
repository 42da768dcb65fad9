// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/pycnometer.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// Density of dry air in a room.
/// @param p absolute pressure, 50 to 110 kPa
/// @param t temperature, -20 to 40 °C
/// @return density
/// @throws refusal if the pressure or the temperature is outside its range
/// @par Accuracy
/// 1 %: moist air is lighter
/// @par Source
/// @ref source_icao_atmosphere
[[nodiscard]] constexpr units::mass_density air_density(units::pressure p, units::temperature t) {
    return detail::answer("density of air", plain::air_density_kg_m3(in(p, kilopascal), t.celsius())) *
           kilogram_per_cubic_metre;
}

/// A flask or a pycnometer, weighed three times on the same balance: empty and dry, filled to its mark with
/// water, filled to the same mark with the liquid.
struct pycnometer {
    units::mass empty;                      ///< indication with the empty flask
    units::mass with_water;                 ///< indication with water
    units::temperature water_temperature;   ///< temperature of the water, 0 to 40 °C
    units::mass with_liquid;                ///< indication with the liquid
    units::temperature liquid_temperature;  ///< temperature of the liquid, -20 to 40 °C
    units::cubic_expansion glass = correlation::glass_expansion::soda_lime * per_kelvin;  ///< of the flask
    units::mass_density air =
        correlation::air_buoyancy::air * kilogram_per_cubic_metre;  ///< density of the air

    /// @return volume to the mark at the temperature of the water
    /// @throws refusal if a weighing or a temperature is outside its range
    /// @par Source
    /// @ref source_oiml_r22 (water), @ref source_oiml_d28 (weights)
    [[nodiscard]] constexpr units::volume volume() const {
        return detail::answer("volume of a flask", plain::pycnometer_volume_ml(numbers())) * millilitre;
    }
    /// @return density of the liquid at its temperature
    /// @throws refusal if a weighing or a temperature is outside its range
    /// @par Source
    /// @ref source_oiml_r22 (water), @ref source_oiml_d28 (weights)
    [[nodiscard]] constexpr units::mass_density density() const {
        return detail::answer("weighing in a flask", plain::density_by_pycnometer_kg_m3(numbers())) *
               kilogram_per_cubic_metre;
    }
    /// @return composition of a spirit, which holds ethanol and water only
    /// @throws refusal if a weighing or a temperature is outside its range, or no mixture has the density
    /// @par Accuracy
    /// as its density: 0.1 kg/m3 is 0.02 to 0.09 % vol
    /// @par Source
    /// @ref source_oiml_r22, @ref source_oiml_d28
    [[nodiscard]] constexpr mass_fraction composition() const {
        return mass_fraction(
            detail::answer("weighing in a flask", plain::mass_fraction_by_pycnometer(numbers())));
    }

    /// @return its numbers, as the functions of `aqueth::plain` take them
    constexpr plain::pycnometer<double> numbers() const {
        return {in(empty, kilogram),
                in(with_water, kilogram),
                water_temperature.celsius(),
                in(with_liquid, kilogram),
                liquid_temperature.celsius(),
                glass.value(),
                in(air, kilogram_per_cubic_metre)};
    }
};

}  // namespace aqueth::inline AQUETH_ABI
