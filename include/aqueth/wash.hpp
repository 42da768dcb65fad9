// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/blending.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/wash.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/units.hpp>

#include <compare>
#include <limits>

namespace aqueth::inline AQUETH_ABI {

/// Dissolved solids in degrees Plato: grams in 100 g of liquid, counted as sucrose. (Degrees Brix and Balling
/// mean the same; their classical tables differ in the third decimal.)
class [[nodiscard]] extract {
public:
    static constexpr char const* name = "extract";  ///< as printed
    static constexpr char const* unit = "°P";       ///< as printed

    /// @param degrees degrees Plato, 0 to 70
    /// @throws refusal if outside that range or not a number
    explicit constexpr extract(double degrees)
        : degrees_(require_range("extract", argument::extract, degrees, unit, 0.0,
                                 100.0 * correlation::sucrose_density::highest_mass_fraction)) {}

    /// @return degrees Plato, 0 to 70
    constexpr double degrees() const noexcept { return degrees_; }
    /// @return mass of solids per mass of liquid, 0 to 0.7
    constexpr double value() const noexcept { return degrees_ / 100.0; }

    friend constexpr auto operator<=>(extract, extract) = default;  ///< less solids is less

private:
    double degrees_;
};

/// The extract that a saccharometer shows in a liquid with alcohol: that of the sugar solution of the same
/// density. Alcohol is light, so it is less than the real extract, and below zero in a dry wash.
class [[nodiscard]] apparent_extract {
public:
    static constexpr char const* name = "apparent extract";  ///< as printed
    static constexpr char const* unit = "°P";                ///< as printed

    /// @param degrees degrees Plato, -10 to 70. Below zero the scale continues its equation, as is common
    ///                practice.
    /// @throws refusal if outside that range or not a number
    explicit constexpr apparent_extract(double degrees)
        : degrees_(require_range("extract", argument::apparent_extract, degrees, unit, -10.0, 70.0)) {}
    /// The apparent extract of a liquid without alcohol is its extract.
    /// @param e its extract
    constexpr apparent_extract(extract e) : degrees_(e.degrees()) {}

    /// @return degrees Plato, -10 to 70
    constexpr double degrees() const noexcept { return degrees_; }

    friend constexpr auto operator<=>(apparent_extract, apparent_extract) = default;  ///< by value

private:
    double degrees_;
};

/// @param degrees degrees Plato, 0 to 70
/// @return the extract
/// @throws refusal if outside that range
constexpr extract plato(double degrees) { return extract(degrees); }

/// Density of a solution of sucrose in water.
/// @param e dissolved sugar
/// @param t temperature, 0 to 80 °C
/// @return density; for zero extract that of the library's own water
/// @throws refusal if the temperature is outside its range
/// @par Accuracy
/// 20 °C, against the CRC Handbook: 0.10 kg/m3 to 40 °P, 0.28 kg/m3 to 70 °P. At other temperatures there was
/// no measured density to compare with.
/// @par Source
/// @ref source_sucrose_density; water @ref source_oiml_r22
[[nodiscard]] inline units::mass_density density(extract e, units::temperature t) {
    return detail::answer("density", plain::sucrose_density_kg_m3(e.degrees(), t.celsius())) *
           kilogram_per_cubic_metre;
}

/// Specific gravity 20/20 °C in vacuo of a sugar solution, or of a wash by its apparent extract.
/// @param e extract or apparent extract
/// @return specific gravity 20/20 °C
/// @par Accuracy
/// As `density`: 0.00006 to 40 °P. Classical tables are for weighing in air, where a gravity of 1.1 is
/// 0.00012 higher (0.03 °P).
/// @par Source
/// @ref source_sucrose_density
inline specific_gravity specific_gravity_of(apparent_extract e) {
    return specific_gravity(
        detail::answer("specific gravity", plain::specific_gravity_from_plato(e.degrees())));
}

/// Degrees Plato from specific gravity: the inverse of `specific_gravity_of`.
/// @param gravity specific gravity 20/20 °C in vacuo, 0.962 to 1.350
/// @return apparent extract; the extract itself if there is no alcohol
/// @throws refusal if the gravity is outside that range
/// @par Source
/// @ref source_sucrose_density
inline apparent_extract apparent_extract_of(specific_gravity gravity) {
    return apparent_extract(detail::answer("extract", plain::plato_from_specific_gravity(gravity.value())));
}

/// A parcel with dissolved extract: the charge of a still. Its alcohol and water are a parcel. Its solids
/// count as sucrose and stay behind in distillation.
///
/// Tabarie's rule gives its density: water's, less the loss by the alcohol, plus the gain by the extract,
/// each dissolved in the volume of the wash.
/// @par Accuracy
/// Tabarie's rule is within the uncertainty of measurement below 5 % sucrose and 18 % ethanol by mass (@ref
/// source_wash, Hackbarth); it is not meant for liqueurs. It gives the real extract of beers, from alcohol
/// and apparent extract, within 0.04 °P (@ref source_balling, Cutaia and others).
class [[nodiscard]] wash {
public:
    /// @param liquid the ethanol and water in it
    /// @param solids mass of the extract, 0 or more, at most 70 % of the whole
    /// @return the wash, at the temperature of the liquid
    /// @throws refusal if the mass of the extract is outside its range
    static wash of(parcel const& liquid, units::mass solids = units::mass()) {
        require_range("wash", argument::mass_of_the_extract, solids.value(), "kg", 0.0, unlimited);
        double const whole = (liquid.mass() + solids).value();
        static_cast<void>(aqueth::extract(whole > 0.0 ? 100.0 * solids.value() / whole : 0.0));  // its range
        return wash(liquid, solids);
    }
    /// @param volume      volume at `temperature`, 0 or more
    /// @param strength    alcoholic strength by volume of the wash as a whole
    /// @param solids      its (real) extract
    /// @param temperature 0 to 80 °C; without extract to the boiling point
    /// @return the wash
    /// @throws refusal if an argument is outside its range or both do not fit into the volume
    static wash of(units::volume volume, volume_fraction strength, aqueth::extract solids,
                   units::temperature temperature) {
        require_range("wash", argument::volume, in(volume, litre), "L", 0.0, unlimited);
        double const ethanol = detail::answer(
            "wash", plain::wash_mass_fraction_from_volume_fraction(strength.value(), solids.degrees()));
        // The parcel comes first, so that a wrong temperature gives its own error and not one about the mass.
        parcel const liquid =
            parcel::of(kilogram, mass_fraction(ethanol / (1.0 - solids.value())), temperature);
        double const mass =
            volume.value() * detail::answer("wash", plain::wash_density_kg_m3(ethanol, solids.degrees(),
                                                                              temperature.celsius()));
        return wash(liquid.with_mass(mass * (1.0 - solids.value()) * kilogram),
                    mass * solids.value() * kilogram);
    }

    /// @return the ethanol and water in it
    parcel const& liquid() const { return liquid_; }
    /// @return mass of the whole wash
    units::mass mass() const { return liquid_.mass() + solids_; }
    /// @return mass of the dissolved extract
    units::mass solids() const { return solids_; }
    /// @return (real) extract
    aqueth::extract extract() const {
        return aqueth::extract(mass().value() > 0.0 ? 100.0 * in(solids_, mass()) : 0.0);
    }
    /// @return temperature
    units::temperature temperature() const { return liquid_.temperature(); }

    /// @param t temperature, 0 to 80 °C and not below the freezing point of the liquid
    /// @return density there
    /// @throws refusal if the temperature is outside its range
    units::mass_density density(units::temperature t) const {
        if (!(mass().value() > 0.0)) {
            detail::require_liquid("wash", liquid_.composition(), t);
            return aqueth::density(liquid_.composition(), t);
        }
        return detail::answer("wash", plain::wash_density_kg_m3(in(liquid_.ethanol(), mass()),
                                                                extract().degrees(), t.celsius())) *
               kilogram_per_cubic_metre;
    }
    /// @param t temperature, 0 to 80 °C
    /// @return volume there
    /// @throws refusal if the temperature is outside its range
    units::volume volume(units::temperature t) const { return mass() / density(t); }
    /// @return volume at its own temperature
    units::volume volume() const { return volume(temperature()); }
    /// @return specific gravity 20/20 °C
    aqueth::specific_gravity specific_gravity() const {
        return aqueth::specific_gravity(
            in(density(celsius(20)), aqueth::density(mass_fraction(0.0), celsius(20))));
    }
    /// @return volume of the pure alcohol in it at 20 °C
    units::volume pure_alcohol() const { return liquid_.pure_alcohol(); }
    /// @return alcoholic strength by volume at 20 °C of the wash as a whole
    volume_fraction strength() const {
        return volume_fraction(mass().value() > 0.0 ? in(pure_alcohol(), volume(celsius(20))) : 0.0);
    }

    /// @param t temperature, 0 to 80 °C
    /// @return the same wash at another temperature
    /// @throws refusal if the temperature is outside its range
    wash at(units::temperature t) const { return wash(liquid_.at(t), solids_); }

    /// Density by Tabarie's rule. Plain numbers.
    /// @param ethanol mass fraction of ethanol in the whole
    /// @param solids  mass fraction of extract in the whole
    /// @param t       temperature, °C
    /// @return density, kg/m3
    static double density_of(double ethanol, double solids, double t) {
        return plain::detail::tabarie_density(ethanol, solids, t);
    }

private:
    wash(parcel const& liquid, units::mass solids) : liquid_(liquid), solids_(solids) {}

    parcel liquid_;
    units::mass solids_;
};

/// Mixes two washes without loss: racking, topping up, diluting with water or low wine.
/// @param a           one wash
/// @param b           the other; a parcel as `wash::of(parcel)`
/// @param temperature temperature of the mixture, 0 to 80 °C and not below its freezing point
/// @return the mixture; its masses are the sums, and its `strength` follows from them
/// @throws refusal if both are empty or the temperature is outside its range
inline wash mix(wash const& a, wash const& b, units::temperature temperature) {
    return wash::of(mix({a.liquid(), b.liquid()}, temperature).product, a.solids() + b.solids());
}

/// True specific gravity 20/20 °C of a wash from a saccharometer at another temperature. The correction
/// includes the expansion of glass and liquid.
/// @param reading   what the stem shows
/// @param t         temperature of wash and instrument, 0 to 80 °C
/// @param meter     the instrument: its reference temperature, the reference of its gravity, its glass
/// @param alcohol   mass fraction of ethanol, as far as known: 0 before fermentation
/// @return specific gravity 20/20 °C
/// @throws refusal if the temperature or the reading is outside its range
/// @par Accuracy
/// The expansion is that of sugar solution, or of the ethanol-water mixture with the sugar's share added
/// (Tabarie's rule at either temperature). Leaving out one percent by mass of alcohol changes the result by
/// 0.00007 at 10 K from 20 °C.
/// @par Source
/// @ref source_sucrose_density, @ref source_wash
inline specific_gravity true_gravity(specific_gravity reading, units::temperature t,
                                     gravity_hydrometer const& meter,
                                     mass_fraction alcohol = mass_fraction(0.0)) {
    char const* const property = "gravity of a wash";
    detail::accept(property, plain::detail::wash_temperature_range(t.celsius()));
    double const rho = meter.density(reading, t).value();
    return specific_gravity(
        detail::answer(property, plain::true_gravity_from_density(rho, t.celsius(), alcohol.value())));
}

}  // namespace aqueth::inline AQUETH_ABI
