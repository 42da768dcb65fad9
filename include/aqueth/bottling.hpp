// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/bottling.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// Reference temperature of the volume on a label, in the European Union and most countries.
/// @see @ref source_76_211_eec
inline constexpr units::temperature label_temperature = celsius(20.0);

/// Reference temperature of the volume on a label of distilled spirits in the United States, 60 °F.
/// @see @ref source_us_label_volume
inline constexpr units::temperature us_label_temperature = at_60_fahrenheit::temperature();

/// Volume to fill so that a bottle holds its label volume at the reference temperature of the label.
/// @param label_volume        volume on the label, above 0
/// @param strength            strength of the spirit, in any basis
/// @param filling_temperature temperature of the spirit while it is filled, where it is liquid, from -20 °C
///                            up
/// @param reference           temperature that the label is meant for, where the spirit is liquid, -20 to 40
///                            °C
/// @return volume to measure out at that temperature (the bottle's own expansion, 0.0025 % per kelvin,
///         is left out)
/// @throws refusal if the label volume is not positive or the temperature is outside its range
/// @par Source
/// @ref source_oiml_r22; 20 °C by @ref source_76_211_eec, 60 °F by @ref source_us_label_volume
template <strength_basis Strength>
[[nodiscard]] units::volume fill_volume(units::volume label_volume, Strength strength,
                                        units::temperature filling_temperature,
                                        units::temperature reference = label_temperature) {
    detail::accept("bottling", plain::detail::label_range(in(label_volume, litre)));
    double const w = to<mass_fraction>(strength).value();
    return label_volume * detail::answer("density", plain::detail::expansion(w, filling_temperature.celsius(),
                                                                             reference.celsius()));
}

/// Bottles that a parcel fills.
struct [[nodiscard]] bottling {
    double count;           ///< number of full bottles, a whole number
    units::volume fill;     ///< volume to fill into each, at the parcel's temperature
    units::mass fill_mass;  ///< the same as mass
    parcel remainder;       ///< what is left over
};

/// Fills bottles from a parcel at the parcel's temperature.
/// @param spirit       the spirit to bottle
/// @param label_volume volume on the label, above 0
/// @param reference    temperature that the label is meant for, where the spirit is liquid, from -20 °C up
/// @return number of bottles, fill of each, remainder
/// @throws refusal if the label volume is not positive or so small that it fills more than 1e12 bottles,
///         or a temperature is outside its range
/// @par Source
/// as `fill_volume`
inline bottling fill_bottles(parcel const& spirit, units::volume label_volume,
                             units::temperature reference = label_temperature) {
    units::volume const fill =
        fill_volume(label_volume, spirit.composition(), spirit.temperature(), reference);
    auto const filled = detail::answer(
        "bottling", plain::detail::count_bottles(static_cast<plain::parcel<double> const&>(spirit),
                                                 in(label_volume, litre), fill.value()));
    return {filled.count, fill, filled.fill_mass_kg * kilogram, parcel::of(filled.remainder)};
}

}  // namespace aqueth::inline AQUETH_ABI
