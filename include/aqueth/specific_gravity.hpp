// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/air_buoyancy.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

#include <compare>

namespace aqueth {

/// Whether the two weighings behind a specific gravity are corrected to vacuum.
enum class medium {
    vacuum,  ///< ratio of true densities
    air      ///< ratio of weights found in air of 1.2 kg/m3, the same volume of liquid and of water
};

/// The reference of a specific gravity t1/t2.
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

}  // namespace aqueth
