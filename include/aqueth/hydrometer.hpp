// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/glass_expansion.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <concepts>
#include <type_traits>

namespace aqueth {

/// Cubic expansion of soda-lime glass, 25e-6 per kelvin, the convention for hydrometer tables.
/// @see @ref source_iso_1768
inline constexpr units::cubic_expansion soda_lime_glass =
    correlation::glass_expansion::soda_lime * per_kelvin;
/// Cubic expansion of borosilicate glass, 10e-6 per kelvin. Value from memory of glass makers' data: check
/// the instrument's own papers.
inline constexpr units::cubic_expansion borosilicate_glass =
    correlation::glass_expansion::borosilicate * per_kelvin;

namespace detail {

/// Scales whose type carries the reference temperature.
template <class Scale>
concept self_referenced_scale = strength_basis<Scale> && requires {
    Scale::reference::temperature();
};

/// Relation of a scale and density. It holds the data of the instrument. It gives the density of the liquid
/// in which the instrument shows a mark, for glass that has grown by a factor. And it gives the mark for a
/// density at the instrument's reference temperature.
template <class Scale>
struct graduation {  // strengths
    units::temperature temperature;
    constexpr units::mass_density density_at(Scale mark, double expansion) const {
        if constexpr (std::same_as<Scale, volume_fraction>) {
            return correlation::oiml_r22::mixture_at_20_celsius(mark.value()).density(expansion) *
                   kilogram_per_cubic_metre;
        } else if constexpr (self_referenced_scale<Scale>) {
            double const w = to<mass_fraction>(mark).value();
            return reference_isotherm<typename Scale::reference>.density(w) / expansion *
                   kilogram_per_cubic_metre;
        } else {
            return density(to<mass_fraction>(mark), temperature) / expansion;
        }
    }
    constexpr Scale mark_at(units::mass_density rho) const {
        return to<Scale>(mass_fraction_from_density(rho, temperature));
    }
    constexpr units::mass_density lightest() const { return density(mass_fraction(1.0), temperature); }
    constexpr units::mass_density heaviest() const { return density(mass_fraction(0.0), temperature); }
};

template <>
struct graduation<units::mass_density> {
    static constexpr char const* unit = "kg/m3";
    units::temperature temperature;
    constexpr units::mass_density density_at(units::mass_density mark, double expansion) const {
        return mark / expansion;
    }
    constexpr units::mass_density mark_at(units::mass_density rho) const { return rho; }
};

template <>
struct graduation<specific_gravity> {
    gravity_reference reference;
    units::temperature temperature;
    constexpr units::mass_density density_at(specific_gravity mark, double expansion) const {
        return density_from_gravity(mark, reference) / expansion;
    }
    constexpr specific_gravity mark_at(units::mass_density rho) const {
        return gravity_from_density(rho, reference);
    }
};

}  // namespace detail

/// Scales of a stem: % vol, % mass, US proof, g/100 mL, kg/m3 or specific gravity.
template <class Scale>
concept hydrometer_scale = strength_basis<Scale> || std::same_as<Scale, units::mass_density> ||
    std::same_as<Scale, specific_gravity>;

/// A glass hydrometer: it floats deeper in lighter liquid, and is correct only at its reference temperature.
///
/// At another temperature the liquid has another density and the glass another volume. R is the reading, as
/// density at the reference temperature T0; rho is the true density of the liquid at t. The weight of the
/// displaced liquid gives rho(t) [1 + alpha (t - T0)] = R. Surface tension of other liquids than the
/// instrument's own, and errors of its scale, are not included.
/// @tparam Scale what the stem reads: basic_volume_fraction<...>, mass_fraction, us_proof,
///               units::mass_density, specific_gravity
/// @par Source
/// @ref source_oiml_r22 (tables for glass alcoholometers); expansion of glass @ref source_iso_1768
template <hydrometer_scale Scale>
class hydrometer {
    static constexpr bool fixed = detail::self_referenced_scale<Scale> || std::same_as<Scale, us_proof>;
    static constexpr bool by_gravity = std::same_as<Scale, specific_gravity>;

public:
    /// For scales that carry their reference temperature: % vol, US proof, g/100 mL.
    /// @param glass cubic expansion of the instrument, 0 to 3e-4 /K
    /// @throws range_error if the expansion is outside that range
    explicit constexpr hydrometer(units::cubic_expansion glass = soda_lime_glass) requires fixed
        : hydrometer(scale_type{own_temperature()}, glass) {}

    /// For % mass and density scales.
    /// @param reference reference temperature of the instrument, 0 to 40 °C
    /// @param glass     cubic expansion of the instrument, 0 to 3e-4 /K
    /// @throws range_error if an argument is outside its range
    explicit constexpr hydrometer(units::temperature reference,
                                  units::cubic_expansion glass = soda_lime_glass) requires(!fixed &&
                                                                                           !by_gravity)
        : hydrometer(scale_type{reference}, glass) {}

    /// For specific gravity t1/t2; t1 is the reference temperature of the instrument.
    /// @param reference temperatures of the liquid and of the water, vacuum or air
    /// @param glass     cubic expansion of the instrument, 0 to 3e-4 /K
    /// @throws range_error if an argument is outside its range
    explicit constexpr hydrometer(gravity_reference const& reference,
                                  units::cubic_expansion glass = soda_lime_glass) requires by_gravity
        : hydrometer(scale_type{reference, reference.liquid}, glass) {}

    /// @return reference temperature of the scale
    constexpr units::temperature reference_temperature() const { return scale_.temperature; }

    /// @return cubic expansion of the instrument
    constexpr units::cubic_expansion glass() const { return glass_; }

    /// True density of a liquid from a reading.
    /// @param reading what the stem shows; 500 to 1500 kg/m3 on a density scale
    /// @param t       temperature of liquid and instrument, -20 to 40 °C
    /// @return density of the liquid at t
    /// @throws range_error if the temperature, or a density scale's reading, is outside its range
    constexpr units::mass_density density(Scale reading, units::temperature t) const {
        require_temperature(t);
        if constexpr (std::same_as<Scale, units::mass_density>) {
            require_range(property, argument::reading, number(reading), unit(), 500.0, 1500.0,
                          "liquids a hydrometer floats in");
        }
        return scale_.density_at(reading, expansion(t));
    }

    /// Composition of a liquid from a reading.
    /// @param reading what the stem shows
    /// @param t       temperature of liquid and instrument, -20 to 40 °C
    /// @return mass fraction of ethanol
    /// @throws range_error if the temperature is outside its range, or no ethanol-water mixture gives this
    ///         reading there
    constexpr mass_fraction composition(Scale reading, units::temperature t) const {
        units::mass_density const rho = density(reading, t);
        double const w = correlation::oiml_r22::mass_fraction_from_density(rho.value(), t.celsius());
        if (w > 0.0 && w < 1.0) {
            detail::require_liquid(property, mass_fraction(w), t);
            return mass_fraction(w);
        }
        return composition_at_an_end(reading, t);
    }

    /// True strength of a liquid from a reading.
    /// @tparam Basis the basis wanted; unless given the scale's own, % vol at 20 °C for density and gravity
    /// @param reading what the stem shows
    /// @param t       temperature of liquid and instrument, -20 to 40 °C
    /// @return strength (for % vol and proof at the basis's reference temperature, whatever t is)
    /// @throws range_error as `composition`
    template <strength_basis Basis = std::conditional_t<strength_basis<Scale>, Scale, volume_fraction>>
    constexpr Basis strength(Scale reading, units::temperature t) const {
        if constexpr (std::same_as<Scale, volume_fraction> && std::same_as<Basis, volume_fraction>) {
            // The most frequent result is computed together with the composition.
            require_temperature(t);
            auto const found =
                correlation::oiml_r22::mixture_from_reading(reading.value(), t.celsius(), expansion(t));
            if (found.mass_fraction > 0.0 && found.mass_fraction < 1.0) {
                detail::require_liquid(property, mass_fraction(found.mass_fraction), t);
                return volume_fraction(found.volume_fraction);
            }
            return to<Basis>(composition_at_an_end(reading, t));
        } else {
            return to<Basis>(composition(reading, t));
        }
    }

    /// Reading of the instrument in a mixture.
    /// @param w mass fraction of ethanol
    /// @param t temperature of liquid and instrument, -20 to 40 °C and not below the freezing point
    /// @return reading
    /// @throws range_error if the temperature is outside its range, or the reading would be off the scale
    constexpr Scale reading(mass_fraction w, units::temperature t) const {
        units::mass_density const shown = aqueth::density(w, t) * expansion(t);
        if constexpr (strength_basis<Scale>) {
            require_range(property, argument::density_it_floats_by, shown.value(), "kg/m3",
                          scale_.lightest().value(), scale_.heaviest().value(), "the ends of the scale");
        }
        return scale_.mark_at(shown);
    }
    /// Reading of the instrument in a parcel at the parcel's temperature.
    /// @param liquid the parcel
    /// @return reading
    /// @throws range_error if the reading would be off the scale
    constexpr Scale reading(parcel const& liquid) const {
        return reading(liquid.composition(), liquid.temperature());
    }

private:
    using scale_type = detail::graduation<Scale>;
    static constexpr char const* property = "hydrometer";

    constexpr hydrometer(scale_type scale, units::cubic_expansion glass) : scale_(scale), glass_(glass) {
        require_range(property, argument::cubic_expansion_of_the_instrument, glass.value(), "1/K", 0.0, 3e-4);
        require_range(property, argument::reference_temperature, scale.temperature.celsius(), "°C", 0.0,
                      correlation::oiml_r22::highest_celsius, "OIML R 22, water liquid");
    }

    static constexpr void require_temperature(units::temperature t) {
        namespace r22 = correlation::oiml_r22;
        require_range(property, argument::temperature, t.celsius(), "°C", r22::lowest_celsius,
                      r22::highest_celsius, "OIML R 22");
    }

    static constexpr units::temperature own_temperature() {
        if constexpr (std::same_as<Scale, us_proof>) {
            return at_60_fahrenheit::temperature();
        } else {
            return Scale::reference::temperature();
        }
    }

    /// the composition if the density is that of water or ethanol, or of no mixture; out of line
    [[gnu::cold, gnu::noinline]] constexpr mass_fraction composition_at_an_end(Scale reading,
                                                                               units::temperature t) const {
        units::mass_density const rho = density(reading, t);
        correlation::oiml_r22::isotherm<double> const at_t(t.celsius());
        double const ethanol = at_t.density(1.0);
        double const water = at_t.density(0.0);
        if (!(ethanol - detail::rounding <= rho.value() && rho.value() <= water + detail::rounding)) {
            double const a = number(mark_on_scale(ethanol * kilogram_per_cubic_metre * expansion(t)));
            double const b = number(mark_on_scale(water * kilogram_per_cubic_metre * expansion(t)));
            raise(range_error(property, argument::reading, number(reading), unit(), (std::min)(a, b),
                              (std::max)(a, b), "water to ethanol at the temperature of the reading"));
        }
        return mass_fraction_from_density(rho, t);
    }

    /// factor by which the glass has grown since the reference temperature
    constexpr double expansion(units::temperature t) const {
        return 1.0 + glass_.value() * (t - scale_.temperature).value();
    }

    /// the mark for a density, or the nearer end of the scale; only for the bounds of an error
    constexpr Scale mark_on_scale(units::mass_density rho) const {
        if constexpr (strength_basis<Scale>) {
            if (rho < scale_.lightest()) return scale_.mark_at(scale_.lightest());
            if (rho > scale_.heaviest()) return scale_.mark_at(scale_.heaviest());
        }
        return scale_.mark_at(rho);
    }

    static constexpr double number(Scale const& mark) {
        if constexpr (strength_basis<Scale>) {
            return mark.number();
        } else {
            return mark.value();
        }
    }
    static constexpr char const* unit() {
        if constexpr (std::same_as<Scale, units::mass_density>) {
            return scale_type::unit;
        } else {
            return Scale::unit;
        }
    }

    scale_type scale_;
    units::cubic_expansion glass_;
};

using alcoholometer = hydrometer<volume_fraction>;           ///< % vol at 20 °C
using proof_hydrometer = hydrometer<us_proof>;               ///< US proof at 60 °F
using density_hydrometer = hydrometer<units::mass_density>;  ///< kg/m3 at a temperature of the user's choice
using gravity_hydrometer = hydrometer<specific_gravity>;     ///< specific gravity t1/t2

}  // namespace aqueth
