// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/glass_expansion.hpp>
#include <aqueth/error.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/plain/hydrometer.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <concepts>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI {

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
concept self_referenced_scale = strength_basis<Scale> && plain::volumetric_basis<typename Scale::plain_basis>;

/// A scale on the floor of plain numbers, and how its readings are printed.
template <class Scale>
struct graduation {  // strengths
    using plain_type = plain::strength_graduation<typename Scale::plain_basis, double>;
    static constexpr printed as{Scale::unit, std::derived_from<Scale, fraction<Scale>> ? 100.0 : 1.0};
};

template <>
struct graduation<units::mass_density> {
    using plain_type = plain::density_graduation<double>;
    static constexpr printed as{"kg/m3", 1.0};
};
template <>
struct graduation<specific_gravity> {
    using plain_type = plain::gravity_graduation<double>;
    static constexpr printed as{specific_gravity::unit, 1.0};
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
class [[nodiscard]] hydrometer {
    using graduation = typename detail::graduation<Scale>::plain_type;
    static constexpr bool fixed = detail::self_referenced_scale<Scale>;
    static constexpr bool by_gravity = std::same_as<Scale, specific_gravity>;

public:
    /// For scales that carry their reference temperature: % vol, US proof, g/100 mL.
    /// @param glass cubic expansion of the instrument, 0 to 3e-4 /K
    /// @throws refusal if the expansion is outside that range
    explicit constexpr hydrometer(units::cubic_expansion glass = soda_lime_glass) requires fixed
        : hydrometer(graduation{}, glass) {}

    /// For % mass and density scales.
    /// @param reference reference temperature of the instrument, 0 to 40 °C
    /// @param glass     cubic expansion of the instrument, 0 to 3e-4 /K
    /// @throws refusal if an argument is outside its range
    explicit constexpr hydrometer(units::temperature reference,
                                  units::cubic_expansion glass = soda_lime_glass) requires(!fixed &&
                                                                                           !by_gravity)
        : hydrometer(graduation{reference.celsius()}, glass) {}

    /// For specific gravity t1/t2; t1 is the reference temperature of the instrument.
    /// @param reference temperatures of the liquid and of the water, vacuum or air
    /// @param glass     cubic expansion of the instrument, 0 to 3e-4 /K
    /// @throws refusal if an argument is outside its range
    explicit constexpr hydrometer(gravity_reference const& reference,
                                  units::cubic_expansion glass = soda_lime_glass) requires by_gravity
        : hydrometer(graduation{detail::plain_reference(reference)}, glass) {}

    /// @return reference temperature of the scale
    constexpr units::temperature reference_temperature() const { return celsius(plain_.reference_celsius()); }

    /// @return cubic expansion of the instrument
    constexpr units::cubic_expansion glass() const { return plain_.glass_per_kelvin() * per_kelvin; }

    /// True density of a liquid from a reading.
    /// @param reading what the stem shows; 500 to 1500 kg/m3 on a density scale
    /// @param t       temperature of liquid and instrument, -20 °C to boiling
    /// @return density of the liquid at t
    /// @throws refusal if the temperature, or a density scale's reading, is outside its range
    constexpr units::mass_density density(Scale reading, units::temperature t) const {
        return answer(plain_.density_kg_m3(number(reading), t.celsius())) * kilogram_per_cubic_metre;
    }

    /// Composition of a liquid from a reading.
    /// @param reading what the stem shows
    /// @param t       temperature of liquid and instrument, -20 °C to boiling
    /// @return mass fraction of ethanol
    /// @throws refusal if the temperature is outside its range, or no ethanol-water mixture gives this
    ///         reading there
    constexpr mass_fraction composition(Scale reading, units::temperature t) const {
        return mass_fraction(answer(plain_.mass_fraction(number(reading), t.celsius())));
    }

    /// True strength of a liquid from a reading.
    /// @tparam Basis the basis wanted; unless given the scale's own, % vol at 20 °C for density and gravity
    /// @param reading what the stem shows
    /// @param t       temperature of liquid and instrument, -20 °C to boiling
    /// @return strength (for % vol and proof at the basis's reference temperature, whatever t is)
    /// @throws refusal as `composition`
    template <strength_basis Basis = std::conditional_t<strength_basis<Scale>, Scale, volume_fraction>>
    constexpr Basis strength(Scale reading, units::temperature t) const {
        using wanted = typename Basis::plain_basis;
        return Basis(answer(plain_.template strength<wanted>(number(reading), t.celsius())));
    }

    /// Reading of the instrument in a mixture.
    /// @param strength strength of the mixture, in any basis
    /// @param t        temperature of liquid and instrument, from freezing to boiling
    /// @return reading
    /// @throws refusal if the temperature is outside its range, or the reading would be off the scale
    template <strength_basis Strength>
    constexpr Scale reading(Strength strength, units::temperature t) const {
        auto const found = plain_.reading(to<mass_fraction>(strength).value(), t.celsius());
        // an error in the temperature is one of the density, which is computed first
        if (found.status.argument == argument::temperature) detail::accept("density", found.status);
        return mark(answer(found));
    }
    /// Reading of the instrument in a parcel at the parcel's temperature.
    /// @param liquid the parcel
    /// @return reading
    /// @throws refusal if the reading would be off the scale
    constexpr Scale reading(parcel const& liquid) const {
        return reading(liquid.composition(), liquid.temperature());
    }
    /// Reading of the instrument in a liquid of any kind.
    /// @param rho density of the liquid, 500 to 1500 kg/m3
    /// @param t   temperature of liquid and instrument, -20 to 40 °C
    /// @return reading
    /// @throws refusal if an argument is outside its range, or the reading would be off the scale
    constexpr Scale reading_in(units::mass_density rho, units::temperature t) const {
        return mark(answer(plain_.reading_in(rho.value(), t.celsius())));
    }

private:
    static constexpr char const* property = "hydrometer";

    constexpr hydrometer(graduation const& scale, units::cubic_expansion glass)
        : plain_(scale, glass.value()) {
        detail::accept(property, plain_.range());
    }

    static constexpr double answer(plain::checked<double> const& found) {
        if (!found.status.ok) [[unlikely]]
            refuse(found.status);
        return found.value;
    }
    [[noreturn, gnu::cold, gnu::noinline]] static void refuse(plain::status const& why) {
        if (why.argument == argument::reading)
            detail::raise_refused(property, why, detail::graduation<Scale>::as);
        detail::raise_refused(property, why);
    }

    static constexpr double number(Scale const& reading) {
        if constexpr (strength_basis<Scale>) {
            return detail::plain_number(reading);
        } else {
            return reading.value();
        }
    }
    static constexpr Scale mark(double number) {
        if constexpr (std::same_as<Scale, units::mass_density>) {
            return number * kilogram_per_cubic_metre;
        } else {
            return Scale(number);
        }
    }

    plain::hydrometer<graduation> plain_;
};

using alcoholometer = hydrometer<volume_fraction>;           ///< % vol at 20 °C
using proof_hydrometer = hydrometer<us_proof>;               ///< US proof at 60 °F
using density_hydrometer = hydrometer<units::mass_density>;  ///< kg/m3 at a temperature of the user's choice
using gravity_hydrometer = hydrometer<specific_gravity>;     ///< specific gravity t1/t2

}  // namespace aqueth::inline AQUETH_ABI
