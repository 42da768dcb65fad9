// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/glass_expansion.hpp>
#include <aqueth/plain/density.hpp>
#include <aqueth/plain/freezing.hpp>
#include <aqueth/plain/specific_gravity.hpp>
#include <aqueth/plain/status.hpp>
#include <aqueth/plain/strength.hpp>

#include <type_traits>

namespace aqueth::inline AQUETH_ABI::plain {

template <basis_of_strength Basis, number T>
struct strength_graduation;

namespace detail {

/// Volume fraction at 20 °C, for which the correlation has the fastest functions.
template <class Basis>
inline constexpr bool is_volume_at_20_celsius = false;
template <class Reference>
inline constexpr bool is_volume_at_20_celsius<volume_basis<Reference>> = Reference::celsius == 20.0;
template <class Graduation>
inline constexpr bool is_alcoholometer_in_double = false;
template <class Basis>
inline constexpr bool is_alcoholometer_in_double<strength_graduation<Basis, double>> =
    is_volume_at_20_celsius<Basis>;

/// The temperature at which a scale of strengths is right, and densities there.
template <basis_of_strength Basis, number T>
struct reference_point {
    T celsius = T(20);
    constexpr T density(T w) const { return correlation::oiml_r22::density(w, celsius); }
};
template <volumetric_basis Basis, number T>
struct reference_point<Basis, T> {
    static constexpr T celsius = T(Basis::reference::celsius);
    static constexpr T density(T w) { return reference_isotherm<typename Basis::reference, T>.density(w); }
};

}  // namespace detail

/// @name Graduations
/// Scales of a stem, with their reference temperatures. Each gives the density of the liquid in which the
/// instrument shows a mark, for glass that has grown by a factor, and the mark for a density at the reference
/// temperature.
/// @{

/// Marks of strength: `strength_graduation<volume_basis<at_20_celsius>, double>{}`, or, with a reference
/// temperature in °C, `strength_graduation<mass_basis, double>{15.0}`.
/// @tparam Basis what the marks count; a volumetric basis brings its own reference temperature
/// @tparam T     scalar type
template <basis_of_strength Basis, number T>
struct strength_graduation {
    using scalar = T;                             ///< type of its numbers
    static constexpr bool has_ends = true;        ///< from water to ethanol, and no further
    detail::reference_point<Basis, T> reference;  ///< temperature at which it is right, 0 to 40 °C

    /// @return temperature at which it is right, °C
    constexpr T reference_celsius() const { return reference.celsius; }
    /// @param mark      what the stem shows
    /// @param expansion factor by which the glass has grown
    /// @return density of the liquid, kg/m3; refuses what is no strength
    constexpr checked<T> density_kg_m3(T mark, T expansion) const {
        if constexpr (detail::is_alcoholometer_in_double<strength_graduation>) {
            status const range = strength_range<Basis>(mark);
            if (!range.ok) return no_answer<T>(range);
            return {correlation::oiml_r22::mixture_at_20_celsius(mark).density(expansion), {}};
        } else {
            auto const w = mass_fraction_from<Basis>(mark);
            if (!w.status.ok) return w;
            return {reference.density(w.value) / expansion, {}};
        }
    }
    /// @param kg_m3 density that the instrument floats by, between those of ethanol and of water
    /// @return the mark
    constexpr checked<T> mark(T kg_m3) const {
        return strength_in<Basis>(
            correlation::oiml_r22::mass_fraction_from_density(kg_m3, reference.celsius));
    }
    /// @param mass_fraction of ethanol, 0 to 1
    /// @return density at the reference temperature, kg/m3
    constexpr T reference_density_kg_m3(T mass_fraction) const { return reference.density(mass_fraction); }
};

/// Marks of strength on a scale that is chosen at run time.
/// @tparam T scalar type
template <number T>
struct chosen_strength_graduation {
    using scalar = T;                       ///< type of its numbers
    static constexpr bool has_ends = true;  ///< from water to ethanol, and no further
    strength_scale scale = strength_scale::volume_fraction_at_20_celsius;  ///< what the marks count
    T celsius = T(20);  ///< temperature at which mass or mole fractions are right, 0 to 40 °C

    /// @return temperature at which it is right, °C
    constexpr T reference_celsius() const { return plain::reference_celsius(scale, celsius); }
    /// @param mark      what the stem shows
    /// @param expansion factor by which the glass has grown
    /// @return density of the liquid, kg/m3; refuses what is no strength
    constexpr checked<T> density_kg_m3(T mark, T expansion) const {
        auto const w = convert(mark, scale, strength_scale::mass_fraction);
        if (!w.status.ok) return w;
        return {reference_density_kg_m3(w.value) / expansion, {}};
    }
    /// @param kg_m3 density that the instrument floats by, between those of ethanol and of water
    /// @return the mark
    constexpr checked<T> mark(T kg_m3) const {
        return convert(correlation::oiml_r22::mass_fraction_from_density(kg_m3, reference_celsius()),
                       strength_scale::mass_fraction, scale);
    }
    /// @param mass_fraction of ethanol, 0 to 1
    /// @return density at the reference temperature, kg/m3
    constexpr T reference_density_kg_m3(T mass_fraction) const {
        return correlation::oiml_r22::density(mass_fraction, reference_celsius());
    }
};

/// Marks of density, kg/m3.
/// @tparam T scalar type
template <number T>
struct density_graduation {
    using scalar = T;                        ///< type of its numbers
    static constexpr bool has_ends = false;  ///< 500 to 1500 kg/m3, whatever the liquid
    T celsius = T(20);                       ///< temperature at which it is right, 0 to 40 °C

    /// @return temperature at which it is right, °C
    constexpr T reference_celsius() const { return celsius; }
    /// @param mark      what the stem shows
    /// @param expansion factor by which the glass has grown
    /// @return density of the liquid, kg/m3; refuses a mark outside 500 to 1500 kg/m3
    constexpr checked<T> density_kg_m3(T mark, T expansion) const {
        status const range = within(argument::reading, mark, 500.0, 1500.0, limit::hydrometer_liquids);
        if (!range.ok) return no_answer<T>(range);
        return {mark / expansion, {}};
    }
    /// @param kg_m3 density that the instrument floats by
    /// @return the mark
    constexpr checked<T> mark(T kg_m3) const { return {kg_m3, {}}; }
};

/// Marks of specific gravity t1/t2. It is right at t1.
/// @tparam T scalar type
template <number T>
struct gravity_graduation {
    using scalar = T;                        ///< type of its numbers
    static constexpr bool has_ends = false;  ///< 0.5 to 2, whatever the liquid
    gravity_reference<T> reference;          ///< temperatures of liquid and water, vacuum or air

    /// @return temperature at which it is right, °C
    constexpr T reference_celsius() const { return reference.liquid_celsius; }
    /// @param mark      what the stem shows
    /// @param expansion factor by which the glass has grown
    /// @return density of the liquid, kg/m3; refuses as `density_from_specific_gravity_kg_m3`
    constexpr checked<T> density_kg_m3(T mark, T expansion) const {
        auto const rho = density_from_specific_gravity_kg_m3(mark, reference);
        if (!rho.status.ok) return rho;
        return {rho.value / expansion, {}};
    }
    /// @param kg_m3 density that the instrument floats by
    /// @return the mark; refuses as `specific_gravity_from_density`
    constexpr checked<T> mark(T kg_m3) const { return specific_gravity_from_density(kg_m3, reference); }
};
/// @}

/// A glass hydrometer: it floats deeper in lighter liquid, and is correct only at its reference temperature.
/// `aqueth::hydrometer` has the equation.
///
/// Every answer also refuses an instrument that cannot be: see `range`.
/// @tparam Graduation one of the graduations
/// @par Source
/// @ref source_oiml_r22 (tables for glass alcoholometers); expansion of glass @ref source_iso_1768
template <class Graduation>
class hydrometer {
    using T = typename Graduation::scalar;

public:
    /// @param graduation       what the stem shows
    /// @param glass_per_kelvin cubic expansion of the instrument, 0 to 3e-4 /K; soda-lime glass unless given
    explicit constexpr hydrometer(Graduation const& graduation = {},
                                  T glass_per_kelvin = T(correlation::glass_expansion::soda_lime))
        : graduation_(graduation), glass_per_kelvin_(glass_per_kelvin) {}

    /// @return whether the expansion of the glass lies in 0 to 3e-4 /K, and the reference temperature in 0 to
    ///         40 °C
    constexpr status range() const {
        status const glass =
            within(argument::cubic_expansion_of_the_instrument, glass_per_kelvin_, 0.0, 3e-4);
        if (!glass.ok) return glass;
        return within(argument::reference_temperature, graduation_.reference_celsius(), 0.0,
                      correlation::oiml_r22::highest_celsius, limit::oiml_r22_water_liquid);
    }

    /// @return what the stem shows
    constexpr Graduation const& graduation() const { return graduation_; }
    /// @return temperature at which the scale is right, °C
    constexpr T reference_celsius() const { return graduation_.reference_celsius(); }
    /// @return cubic expansion of the instrument, 1/K
    constexpr T glass_per_kelvin() const { return glass_per_kelvin_; }

    /// True density of a liquid from a reading.
    /// @param reading what the stem shows
    /// @param celsius temperature of liquid and instrument, -20 °C to the boiling point at 101.325 kPa
    /// @return density of the liquid, kg/m3; refuses what is out of range
    constexpr checked<T> density_kg_m3(T reading, T celsius) const {
        status const usable = range_at(celsius);
        if (!usable.ok) return no_answer<T>(usable);
        return graduation_.density_kg_m3(reading, expansion(celsius));
    }

    /// Composition of a liquid from a reading.
    /// @param reading what the stem shows
    /// @param celsius temperature of liquid and instrument, -20 °C to the boiling point at 101.325 kPa
    /// @return mass fraction of ethanol; refuses what is out of range, and a reading that no mixture gives
    constexpr checked<T> mass_fraction(T reading, T celsius) const {
        auto const rho = density_kg_m3(reading, celsius);
        if (!rho.status.ok) return rho;
        if (celsius > T(correlation::oiml_r22::highest_celsius))
            return mass_fraction_at_an_end(reading, rho.value, celsius);
        T const w = correlation::oiml_r22::mass_fraction_from_density(rho.value, celsius);
        if (w > T(0) && w < T(1)) {
            status const liquid = liquid_range(w, celsius);
            if (!liquid.ok) return no_answer<T>(liquid);
            return {w, {}};
        }
        return mass_fraction_at_an_end(reading, rho.value, celsius);
    }

    /// True strength of a liquid from a reading.
    /// @tparam Basis the basis wanted
    /// @param reading what the stem shows
    /// @param celsius temperature of liquid and instrument, -20 °C to the boiling point at 101.325 kPa
    /// @return strength, of volumetric bases at the basis's reference temperature; refuses as `mass_fraction`
    template <basis_of_strength Basis>
    constexpr checked<T> strength(T reading, T celsius) const {
        if constexpr (detail::is_alcoholometer_in_double<Graduation> &&
                      detail::is_volume_at_20_celsius<Basis>) {
            // The most frequent answer, without the tests that would say why there is none.
            bool const usual = range().ok && celsius >= 0.0 &&
                               celsius <= correlation::oiml_r22::highest_celsius && reading >= 0.0 &&
                               reading <= 1.0;
            if (usual) {
                auto const found = mixture(reading, celsius);
                if (found.mass_fraction > 0.0 && found.mass_fraction < 1.0)
                    return {found.volume_fraction, {}};
            }
            return strength_or_reason(reading, celsius);
        } else {
            auto const w = mass_fraction(reading, celsius);
            if (!w.status.ok) return w;
            return strength_in<Basis>(w.value);
        }
    }
    /// The same in a basis that is chosen at run time.
    /// @param reading what the stem shows
    /// @param celsius temperature of liquid and instrument, -20 °C to the boiling point at 101.325 kPa
    /// @param wanted  the scale of the answer
    /// @return strength on that scale; refuses as `mass_fraction`, and a number that is no scale
    constexpr checked<T> strength(T reading, T celsius, strength_scale wanted) const {
        auto const w = mass_fraction(reading, celsius);
        if (!w.status.ok) return w;
        return convert(w.value, strength_scale::mass_fraction, wanted);
    }

    /// What the instrument shows in a mixture.
    /// @param mass_fraction of ethanol, 0 to 1
    /// @param celsius       temperature of liquid and instrument, from the freezing point or -20 °C to
    ///                      the boiling point at 101.325 kPa
    /// @return reading; refuses what is out of range, and a mixture that floats it beyond the ends of its
    ///         scale
    constexpr checked<T> reading(T mass_fraction, T celsius) const {
        status const instrument = range();
        if (!instrument.ok) return no_answer<T>(instrument);
        auto const rho = plain::density_kg_m3(mass_fraction, celsius);
        if (!rho.status.ok) return rho;
        return mark_at(rho.value, celsius);
    }

    /// What the instrument shows in a liquid of any kind.
    /// @param kg_m3   density of the liquid, 500 to 1500 kg/m3
    /// @param celsius temperature of liquid and instrument, -20 to 40 °C
    /// @return reading; refuses what is out of range, and a liquid that floats it beyond the ends of its
    ///         scale
    constexpr checked<T> reading_in(T kg_m3, T celsius) const {
        status const usable = range_at(celsius);
        if (!usable.ok) return no_answer<T>(usable);
        status const liquid =
            within(argument::density_it_floats_by, kg_m3, 500.0, 1500.0, limit::hydrometer_liquids);
        if (!liquid.ok) return no_answer<T>(liquid);
        return mark_at(kg_m3, celsius);
    }

private:
    /// the mark at which it floats, if that is on the scale
    constexpr checked<T> mark_at(T kg_m3, T celsius) const {
        T const shown = kg_m3 * expansion(celsius);
        if constexpr (Graduation::has_ends) {
            status const on_scale = within(
                argument::density_it_floats_by, shown, double(graduation_.reference_density_kg_m3(T(1))),
                double(graduation_.reference_density_kg_m3(T(0))), limit::hydrometer_scale_ends);
            if (!on_scale.ok) return no_answer<T>(on_scale);
        }
        return graduation_.mark(shown);
    }

    constexpr status range_at(T celsius) const {
        status const instrument = range();
        if (!instrument.ok) return instrument;
        return liquid_temperature_range(celsius);
    }

    /// factor by which the glass has grown since the reference temperature
    constexpr T expansion(T celsius) const {
        return T(1) + glass_per_kelvin_ * (celsius - graduation_.reference_celsius());
    }

    /// the composition if the density is that of water or ethanol, or of no mixture, or above 40 °C; out of
    /// line
    [[gnu::cold, gnu::noinline]] constexpr checked<T> mass_fraction_at_an_end(T reading, T kg_m3,
                                                                              T celsius) const {
        T const ethanol = model::hot_density::liquid_density(T(1), celsius);
        T const water = model::hot_density::liquid_density(T(0), celsius);
        if (!(ethanol - rounding<T> <= kg_m3 && kg_m3 <= water + rounding<T>)) {
            auto const a = mark_on_scale(ethanol * expansion(celsius));
            auto const b = mark_on_scale(water * expansion(celsius));
            if (!a.status.ok) return a;
            if (!b.status.ok) return b;
            return no_answer<T>(
                refuse(argument::reading, double(reading), double(a.value < b.value ? a.value : b.value),
                       double(a.value < b.value ? b.value : a.value), limit::hydrometer_water_to_ethanol));
        }
        return mass_fraction_from_density(kg_m3, celsius);
    }

    /// composition and volume fraction at 20 °C, computed together
    constexpr correlation::oiml_r22::mixture_fractions mixture(T reading, T celsius) const {
        return correlation::oiml_r22::mixture_from_reading(reading, celsius, expansion(celsius));
    }

    /// the volume fraction at 20 °C, with all tests; out of line
    [[gnu::cold, gnu::noinline]] constexpr checked<T> strength_or_reason(T reading, T celsius) const {
        using basis = volume_basis<at_20_celsius>;
        status const usable = range_at(celsius);
        if (!usable.ok) return no_answer<T>(usable);
        status const mark = strength_range<basis>(reading);
        if (!mark.ok) return no_answer<T>(mark);
        if (celsius <= correlation::oiml_r22::highest_celsius) {
            auto const found = mixture(reading, celsius);
            if (found.mass_fraction > 0.0 && found.mass_fraction < 1.0) {
                status const liquid = liquid_range(found.mass_fraction, celsius);
                if (!liquid.ok) return no_answer<T>(liquid);
                return {found.volume_fraction, {}};
            }
        }
        auto const w = mass_fraction(reading, celsius);
        if (!w.status.ok) return w;
        return strength_in<basis>(w.value);
    }

    /// the mark for a density, or the nearer end of the scale; only for the bounds of a refusal
    constexpr checked<T> mark_on_scale(T kg_m3) const {
        if constexpr (Graduation::has_ends) {
            T const lightest = graduation_.reference_density_kg_m3(T(1));
            T const heaviest = graduation_.reference_density_kg_m3(T(0));
            return graduation_.mark(kg_m3 < lightest ? lightest : (kg_m3 > heaviest ? heaviest : kg_m3));
        } else {
            return graduation_.mark(kg_m3);
        }
    }

    Graduation graduation_;
    T glass_per_kelvin_;
};

/// % vol at 20 °C as a fraction 0 to 1.
template <number T>
using alcoholometer = hydrometer<strength_graduation<volume_basis<at_20_celsius>, T>>;
/// US degrees of proof at 60 °F.
template <number T>
using proof_hydrometer = hydrometer<strength_graduation<proof_basis, T>>;
/// Any scale of strength.
template <number T>
using strength_hydrometer = hydrometer<chosen_strength_graduation<T>>;
/// kg/m3.
template <number T>
using density_hydrometer = hydrometer<density_graduation<T>>;
/// Specific gravity t1/t2.
template <number T>
using gravity_hydrometer = hydrometer<gravity_graduation<T>>;

}  // namespace aqueth::inline AQUETH_ABI::plain
