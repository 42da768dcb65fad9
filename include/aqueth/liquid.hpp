// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth {

/// A liquid without an amount: a composition at a temperature. Operations that compute an amount take one, so
/// that a temperature cannot be passed for another.
/// @par Source
/// Range and strengths by volume @ref source_oiml_r22
class [[nodiscard]] liquid {
public:
    /// @param strength    strength in any basis
    /// @param temperature temperature, where the mixture is liquid, -20 to 40 °C
    /// @return the liquid
    /// @throws range_error if the temperature is outside its range
    template <strength_basis Strength>
    static constexpr liquid of(Strength strength, units::temperature temperature) {
        return liquid(to<mass_fraction>(strength), temperature);
    }

    /// @return composition, as the mass fraction of ethanol
    constexpr mass_fraction composition() const { return composition_; }
    /// @return temperature
    constexpr units::temperature temperature() const { return temperature_; }

private:
    constexpr liquid(mass_fraction composition, units::temperature temperature)
        : composition_(composition), temperature_(temperature) {
        detail::require_liquid("liquid", composition, temperature);
    }

    mass_fraction composition_;
    units::temperature temperature_;
};

/// @param temperature 0 to 40 °C
/// @return pure water at that temperature
/// @throws range_error if the temperature is outside its range
constexpr liquid water_at(units::temperature temperature) {
    return liquid::of(mass_fraction(0.0), temperature);
}

}  // namespace aqueth
