// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/specific_gravity.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <compare>

namespace aqueth::inline AQUETH_ABI {

/// The reference of a specific gravity t1/t2.
struct gravity_reference {
    units::temperature liquid = celsius(20.0);  ///< t1, temperature of the liquid
    units::temperature water = celsius(20.0);   ///< t2, temperature of the water it is compared with
    medium weighed_in = medium::vacuum;         ///< vacuum or air
};

/// Relative density: density of a liquid divided by the density of water, without unit.
class [[nodiscard]] specific_gravity {
public:
    static constexpr char const* name = "specific gravity";  ///< as printed
    static constexpr char const* unit = "";                  ///< no unit

    /// @param value the ratio, 0.5 to 2
    /// @throws refusal if outside that range or not a number
    explicit constexpr specific_gravity(double value) : value_(value) {
        detail::accept("specific gravity", plain::specific_gravity_range(value));
    }

    /// @return the ratio
    constexpr double value() const noexcept { return value_; }

    friend constexpr auto operator<=>(specific_gravity, specific_gravity) = default;  ///< by value

private:
    double value_;
};

namespace detail {

constexpr plain::gravity_reference<double> plain_reference(gravity_reference const& reference) {
    return {reference.liquid.celsius(), reference.water.celsius(), reference.weighed_in};
}

}  // namespace detail

/// Specific gravity of a mixture.
/// @param strength  strength of the mixture, in any basis
/// @param reference temperatures of liquid and water (each where it is liquid), vacuum or air
/// @return specific gravity t1/t2
/// @throws refusal if a temperature is outside its range
/// @par Source
/// @ref source_oiml_r22, its own water; buoyancy @ref source_oiml_d28
template <strength_basis Strength>
constexpr specific_gravity specific_gravity_of(Strength strength, gravity_reference const& reference) {
    double const w = to<mass_fraction>(strength).value();
    return specific_gravity(
        detail::answer("density", plain::specific_gravity_of(w, detail::plain_reference(reference))));
}

/// Mass fraction of a mixture from its specific gravity: the inverse of `specific_gravity_of`.
/// @param value     specific gravity t1/t2, between those of pure ethanol and of water at t1
/// @param reference temperatures of liquid and water, vacuum or air
/// @return mass fraction
/// @throws refusal if a temperature or the specific gravity is outside its range
/// @par Source
/// as `specific_gravity_of`
constexpr mass_fraction mass_fraction_from_specific_gravity(specific_gravity value,
                                                            gravity_reference const& reference) {
    auto const rho = detail::answer("density", plain::density_from_specific_gravity_kg_m3(
                                                   value.value(), detail::plain_reference(reference)));
    return mass_fraction_from_density(rho * kilogram_per_cubic_metre, reference.liquid);
}

}  // namespace aqueth::inline AQUETH_ABI
