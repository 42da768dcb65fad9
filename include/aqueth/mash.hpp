// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/attenuation.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/plain/mash.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

namespace aqueth::inline AQUETH_ABI {

/// A solution of extract in water: a wort, or a sugar wash before pitching.
struct [[nodiscard]] wort {
    units::mass mass;          ///< mass of the whole
    units::mass water;         ///< water in it
    units::mass solids;        ///< dissolved extract in it
    units::volume volume;      ///< volume at 20 °C
    aqueth::extract extract;   ///< extract, degrees Plato
    specific_gravity gravity;  ///< 20/20 °C
};

namespace detail {

inline wort typed(plain::checked<plain::wort<double>> const& found) {
    auto const w = answer("wort", found);
    return {w.mass_kg * kilogram, w.water_kg * kilogram, w.extract_kg * kilogram,
            w.litres * litre,     extract(w.plato),      specific_gravity(w.specific_gravity)};
}

}  // namespace detail

/// What is in a volume of wort.
/// @param volume volume at 20 °C, 0 or more
/// @param plato  extract, 0 to 70 °P
/// @return its masses and gravity
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// as `wash`: extract counts as sucrose
/// @par Source
/// @ref source_sucrose_density, @ref source_oiml_r22
inline wort wort_by_volume(units::volume volume, extract plato) {
    return detail::typed(plain::wort_by_volume(in(volume, litre), plato.degrees()));
}

/// The wort that a mass of extract and a mass of water make: the space it needs in a vessel is its volume.
/// @param solids extract, 0 or more
/// @param water  water, the water of crystals included, at least three sevenths of the extract
/// @return the wort
/// @throws refusal if an argument is outside its range
/// @par Source
/// @ref source_sucrose_density, @ref source_oiml_r22
inline wort wort_by_mass(units::mass solids, units::mass water) {
    return detail::typed(plain::wort_by_mass(in(solids, kilogram), in(water, kilogram)));
}

/// The wort of a volume into which a mass of extract was brought: gravity from extract and volume.
/// @param solids extract: the grain times the share of it that dissolves
/// @param volume volume of the wort at 20 °C, above 0, with room for the extract at 70 °P
/// @return the wort
/// @throws refusal if an argument is outside its range
/// @par Source
/// @ref source_sucrose_density, @ref source_oiml_r22
inline wort wort_of_extract(units::mass solids, units::volume volume) {
    return detail::typed(plain::wort_of_extract(in(solids, kilogram), in(volume, litre)));
}

/// A mash: grain and the water it is stirred into.
struct mash {
    units::mass grain;                                      ///< mass of the grain, above 0
    units::mass water;                                      ///< mass of the water, above 0
    units::temperature grain_temperature = celsius(20.0);   ///< 0 to 60 °C
    units::heat_capacity vessel = 0.0 * joule_per_kelvin;   ///< heat capacity of the vessel, 0 or more
    units::temperature vessel_temperature = celsius(20.0);  ///< of the vessel before, 0 to 100 °C
    double moisture = 0.04;  ///< mass fraction of water in the grain, 0 to 0.08
};

/// Temperature of the water that brings a mash to a temperature, by a balance of heat.
/// @param m      the mash
/// @param wanted temperature wanted after stirring, 30 to 80 °C
/// @return temperature of the water before
/// @throws refusal if an argument is outside its range, or boiling water is too cold: the bounds then give
///                 the
///         highest temperature that it reaches
/// @par Accuracy
/// about 1 K (common practice): rounded figures for malt; losses to the room come on top
/// @par Source
/// @ref source_malt_heat, @ref source_perry_heat_capacity (water)
[[nodiscard]] inline units::temperature strike_temperature(mash const& m, units::temperature wanted) {
    plain::mash<double> const numbers{in(m.grain, kilogram),          in(m.water, kilogram),
                                      m.grain_temperature.celsius(),  m.vessel.value(),
                                      m.vessel_temperature.celsius(), m.moisture};
    return celsius(detail::answer("strike water", plain::strike_celsius(numbers, wanted.celsius())));
}

/// What a fermentation does to the temperature.
struct [[nodiscard]] fermentation_heat {
    units::energy heat;                  ///< heat given off
    units::temperature_difference rise;  ///< warming if nothing is lost to the room
};

/// Heat of a fermentation and the warming if nothing is lost to the room.
/// @param volume   volume of the fermented wash at 20 °C, above 0
/// @param strength alcoholic strength it has reached, up to `greatest_wash_strength`
/// @param kind     sugar; the sugars of malt count as sucrose
/// @return heat and warming. The wash is taken to hold no extract, and the gas to carry no heat away.
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// 5 % for sucrose, 12 % for glucose: the heat that dissolving the sugar took up beforehand is left out
/// @par Source
/// @ref source_fermentation_heat; mixing of the ethanol @ref source_excess_gibbs
inline fermentation_heat heat_of_fermentation(units::volume volume, volume_fraction strength,
                                              sugar kind = sugar::sucrose) {
    auto const found = detail::answer("heat of fermentation",
                                      plain::heat_of_fermentation(in(volume, litre), strength.value(), kind));
    return {found.joules * joule, found.rise_kelvins * kelvins};
}

}  // namespace aqueth::inline AQUETH_ABI
