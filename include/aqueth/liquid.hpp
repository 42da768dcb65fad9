// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/parcel.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// A liquid without an amount: a composition at a temperature. Operations that compute an amount take one, so
/// that a temperature cannot be passed for another.
/// @par Source
/// Range and strengths by volume @ref source_oiml_r22
class [[nodiscard]] liquid {
public:
    /// @param strength    strength in any basis
    /// @param temperature temperature, where the mixture is liquid, from -20 °C up
    /// @return the liquid
    /// @throws refusal if the temperature is outside its range
    template <strength_basis Strength>
    static constexpr liquid of(Strength strength, units::temperature temperature) {
        return liquid({to<mass_fraction>(strength).value(), temperature.celsius()});
    }

    /// @return composition, as the mass fraction of ethanol
    constexpr mass_fraction composition() const { return mass_fraction(numbers_.mass_fraction); }
    /// @return temperature
    constexpr units::temperature temperature() const { return celsius(numbers_.celsius); }
    /// @return its numbers, as the functions of `aqueth::plain` take them
    explicit constexpr operator plain::liquid<double> const&() const { return numbers_; }

    friend constexpr bool operator==(liquid const&,
                                     liquid const&) = default;  ///< same composition and temperature

private:
    explicit constexpr liquid(plain::liquid<double> const& numbers) : numbers_(numbers) {
        detail::accept("liquid", plain::liquid_range(numbers));
    }

    plain::liquid<double> numbers_;
};

/// @param temperature 0 °C to the boiling point
/// @return pure water at that temperature
/// @throws refusal if the temperature is outside its range
constexpr liquid water_at(units::temperature temperature) {
    return liquid::of(mass_fraction(0.0), temperature);
}

}  // namespace aqueth::inline AQUETH_ABI
