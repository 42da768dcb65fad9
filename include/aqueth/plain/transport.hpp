// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/thermal_conductivity_melinder.hpp>
#include <aqueth/model/sound_speed.hpp>
#include <aqueth/model/viscosity.hpp>
#include <aqueth/plain/freezing.hpp>
#include <aqueth/plain/status.hpp>

namespace aqueth::inline AQUETH_ABI::plain {

/// Dynamic viscosity of a liquid mixture.
/// @param mass_fraction of ethanol, 0 to 1; above 70 °C 0 to 0.6
/// @param celsius       temperature, 0 to 80 °C
/// @return dynamic viscosity, mPa s; refuses what is out of range
/// @par Accuracy
/// As `aqueth::viscosity`: about 2 %.
/// @par Source
/// @ref source_bingham_jackson
template <number T>
checked<T> viscosity_mpa_s(T mass_fraction, T celsius) {
    namespace source = model::viscosity;
    status const temperature = within(argument::temperature, celsius, source::lowest_celsius,
                                      source::highest_celsius, limit::bingham_jackson);
    if (!temperature.ok) return no_answer<T>(temperature);
    bool const all = celsius <= T(source::highest_celsius_of_all);
    status const range = within(argument::mass_fraction, mass_fraction, 0.0,
                                all ? 1.0 : source::highest_mass_fraction_above, limit::bingham_jackson);
    if (!range.ok) return no_answer<T>(range);
    return {source::millipascal_seconds(mass_fraction, celsius), {}};
}

/// Speed of sound in a liquid mixture.
/// @param mass_fraction of ethanol, 0 to 1
/// @param celsius       temperature, 20 to 35 °C
/// @return speed of sound, m/s; refuses what is out of range
/// @par Accuracy
/// As `aqueth::speed_of_sound`: 0.1 %; in nearly pure ethanol 0.3 %.
/// @par Source
/// @ref source_sound_speed
template <number T>
constexpr checked<T> speed_of_sound_m_s(T mass_fraction, T celsius) {
    namespace source = model::sound_speed;
    status const strength = within(argument::mass_fraction, mass_fraction, 0.0, 1.0);
    if (!strength.ok) return no_answer<T>(strength);
    status const temperature = within(argument::temperature, celsius, source::lowest_celsius,
                                      source::highest_celsius, limit::measured_speeds_of_sound);
    if (!temperature.ok) return no_answer<T>(temperature);
    return {source::metres_per_second(mass_fraction, celsius), {}};
}

/// Thermal conductivity of a liquid mixture.
/// @param mass_fraction of ethanol, 0.11 to 0.6
/// @param celsius       temperature, from the freezing point to 20 °C
/// @return thermal conductivity, W/(m K); refuses what is out of range
/// @par Accuracy
/// As `aqueth::thermal_conductivity`: not known; 0.5 % of the author's own table.
/// @par Source
/// @ref source_melinder_conductivity
template <number T>
constexpr checked<T> thermal_conductivity_w_m_k(T mass_fraction, T celsius) {
    namespace source = correlation::thermal_conductivity_melinder;
    status const strength = within(argument::mass_fraction, mass_fraction, source::lowest_mass_fraction,
                                   source::highest_mass_fraction, limit::melinder);
    if (!strength.ok) return no_answer<T>(strength);
    T const frozen = correlation::freezing_point::celsius(mass_fraction);
    status const temperature =
        within(argument::temperature, celsius, double(frozen), source::highest_celsius, limit::melinder);
    if (!temperature.ok) return no_answer<T>(temperature);
    return {source::watts_per_metre_kelvin(mass_fraction, celsius), {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
