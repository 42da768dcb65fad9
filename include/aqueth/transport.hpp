// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/transport.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <boost/units/systems/si/dynamic_viscosity.hpp>
#include <boost/units/systems/si/velocity.hpp>

namespace aqueth::inline AQUETH_ABI::units {

using dynamic_viscosity = boost::units::quantity<si::dynamic_viscosity>;  ///< viscosity, held in Pa s
using velocity = boost::units::quantity<si::velocity>;                    ///< speed, held in m/s
/// heat flow per area and gradient of temperature, held in W/(m K)
using thermal_conductivity = decltype(power() / length() / temperature_difference());

}  // namespace aqueth::inline AQUETH_ABI::units

namespace aqueth::inline AQUETH_ABI {

/// mPa s, the same as centipoise
inline constexpr auto millipascal_second = units::dynamic_viscosity::from_value(1e-3);
inline constexpr auto metre_per_second = units::velocity::from_value(1.0);  ///< m/s
/// W/(m K)
inline constexpr auto watt_per_metre_kelvin = units::thermal_conductivity::from_value(1.0);

/// Dynamic viscosity of a liquid mixture.
/// @param strength strength in any basis; above 70 °C to 60 % by mass
/// @param t        temperature, 0 to 80 °C
/// @return dynamic viscosity; at 20 °C the greatest is that of 43 % by mass, 2.9 times that of water
/// @throws refusal if the strength or the temperature is outside its range
/// @par Accuracy
/// The table of 1918 within 2.5 %, on average 0.4 %. Measurements of 2007 are lower: mixtures by 3.2 % on
/// average, pure liquids by 1 %. Relative standard uncertainty 2 %
/// (`model::viscosity::relative_standard_uncertainty`).
/// @par Source
/// @ref source_bingham_jackson
template <strength_basis Strength>
[[nodiscard]] units::dynamic_viscosity viscosity(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("viscosity", plain::viscosity_mpa_s(w, t.celsius())) * millipascal_second;
}

/// Speed of sound in a liquid mixture. It has a maximum near 22 % by mass, so a speed alone is no strength.
/// @param strength strength in any basis
/// @param t        temperature, 20 to 35 °C
/// @return speed of sound
/// @throws refusal if the temperature is outside its range
/// @par Accuracy
/// Within 1 m/s of the measurements it was fitted to. Another set near pure ethanol is up to 3.5 m/s (0.3 %)
/// lower. Relative standard uncertainty 0.1 % (`model::sound_speed::relative_standard_uncertainty`).
/// @par Source
/// @ref source_sound_speed
template <strength_basis Strength>
[[nodiscard]] constexpr units::velocity speed_of_sound(Strength strength, units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("speed of sound", plain::speed_of_sound_m_s(w, t.celsius())) * metre_per_second;
}

/// Thermal conductivity of a liquid mixture.
/// @param strength strength in any basis, 11 to 60 % by mass
/// @param t        temperature, from the freezing point to 20 °C
/// @return thermal conductivity
/// @throws refusal if the strength or the temperature is outside its range
/// @par Accuracy
/// No measurement was at hand. The author's own table agrees within 0.5 %; another handbook, from memory, is
/// 7 % higher. Relative standard uncertainty 4 %
/// (`correlation::thermal_conductivity_melinder::relative_standard_uncertainty`).
/// @par Source
/// @ref source_melinder_conductivity
template <strength_basis Strength>
[[nodiscard]] constexpr units::thermal_conductivity thermal_conductivity(Strength strength,
                                                                         units::temperature t) {
    double const w = to<mass_fraction>(strength).value();
    return detail::answer("thermal conductivity", plain::thermal_conductivity_w_m_k(w, t.celsius())) *
           watt_per_metre_kelvin;
}

}  // namespace aqueth::inline AQUETH_ABI
