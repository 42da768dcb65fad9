// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <limits>

namespace aqueth {

/// Reference temperature of the volume on a label, in the European Union and most countries.
/// @see @ref source_76_211_eec
inline constexpr units::temperature label_temperature = celsius(20.0);

/// Reference temperature of the volume on a label of distilled spirits in the United States, 60 °F.
/// @see @ref source_us_label_volume
inline constexpr units::temperature us_label_temperature = at_60_fahrenheit::temperature();

/// Volume to fill so that a bottle holds its label volume at the reference temperature of the label.
/// @param label_volume        volume on the label, above 0
/// @param w                   mass fraction of ethanol of the spirit
/// @param filling_temperature temperature of the spirit while it is filled, where it is liquid, -20 to 40 °C
/// @param reference           temperature that the label is meant for, where the spirit is liquid, -20 to 40
///                            °C
/// @return volume to measure out at that temperature (the bottle's own expansion, 0.0025 % per kelvin,
///         is left out)
/// @throws range_error if the label volume is not positive or the temperature is outside its range
/// @par Source
/// @ref source_oiml_r22; 20 °C by @ref source_76_211_eec, 60 °F by @ref source_us_label_volume
inline units::volume fill_volume(units::volume label_volume, mass_fraction w,
                                 units::temperature filling_temperature,
                                 units::temperature reference = label_temperature) {
    require_range("bottling", argument::label_volume, in(label_volume, litre), "L", 1e-9, unlimited);
    return label_volume * in(density(w, reference), density(w, filling_temperature));
}

/// Bottles that a parcel fills.
struct bottling {
    double count;           ///< number of full bottles, a whole number
    units::volume fill;     ///< volume to fill into each, at the parcel's temperature
    units::mass fill_mass;  ///< the same as mass
    parcel remainder;       ///< what is left over
};

/// Fills bottles from a parcel at the parcel's temperature.
/// @param spirit       the spirit to bottle
/// @param label_volume volume on the label, above 0
/// @param reference    temperature that the label is meant for, where the spirit is liquid, -20 to 40 °C
/// @return number of bottles, fill of each, remainder
/// @throws range_error if the label volume is not positive or so small that it fills more than 1e12 bottles,
///         or a temperature is outside its range
/// @par Source
/// as `fill_volume`
inline bottling fill_bottles(parcel const& spirit, units::volume label_volume,
                             units::temperature reference = label_temperature) {
    units::volume const fill =
        fill_volume(label_volume, spirit.composition(), spirit.temperature(), reference);
    constexpr double most_bottles = 1e12;
    double const bottles = in(spirit.volume(), fill);
    require_range("bottling", argument::label_volume, in(label_volume, litre), "L",
                  (std::max)(1e-9, in(label_volume, litre) * (bottles / most_bottles)), unlimited,
                  "no more than 1e12 bottles, which are counted exactly");
    // A parcel that was made for n bottles must not lose one to rounding. The error is a few units of the
    // last place: less than a hundredth of a bottle in 1e12.
    double const nearest = std::round(bottles);
    double const rounding = 16.0 * std::numeric_limits<double>::epsilon() * bottles;
    double const count = std::abs(bottles - nearest) <= rounding ? nearest : std::floor(bottles);
    units::mass const each = fill * density(spirit.composition(), spirit.temperature());
    units::mass const left = spirit.mass() - count * each;
    return {count, fill, each, spirit.with_mass(left > units::mass() ? left : units::mass())};
}

}  // namespace aqueth
