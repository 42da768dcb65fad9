// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/plain/strength.hpp>
#include <aqueth/units.hpp>

#include <compare>
#include <concepts>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI {

/// @name Reference temperatures
/// Tags that make the reference temperature of a volume part of the type of a strength.
/// @{

/// 20 °C: OIML R 22, the legal reference in Europe and most of the world.
struct at_20_celsius {
    static constexpr units::temperature temperature() noexcept { return celsius(20.0); }  ///< @return 20 °C
    static constexpr char const* unit = "% vol at 20 °C";                                 ///< as printed
};
/// 15 °C: older continental tables.
struct at_15_celsius {
    static constexpr units::temperature temperature() noexcept { return celsius(15.0); }  ///< @return 15 °C
    static constexpr char const* unit = "% vol at 15 °C";                                 ///< as printed
};
/// 15.56 °C: pharmacopoeial tables, 60 °F rounded.
struct at_15_56_celsius {
    static constexpr units::temperature temperature() noexcept {
        return celsius(15.56);
    }                                                         ///< @return 15.56 °C
    static constexpr char const* unit = "% vol at 15.56 °C";  ///< as printed
};
/// 60 °F (15.555... °C): United States rules.
struct at_60_fahrenheit {
    static constexpr units::temperature temperature() noexcept {
        return fahrenheit(60.0);
    }                                                      ///< @return 60 °F
    static constexpr char const* unit = "% vol at 60 °F";  ///< as printed
};
/// @}

namespace detail {

/// A reference temperature on the floor of plain numbers.
template <class Reference>
struct plain_reference_temperature {
    static constexpr double celsius = Reference::temperature().celsius();
};

/// Base of every fraction of a mixture: one number from 0 to 1, comparable within its own kind. It has no
/// arithmetic, because the sum of two strengths is not a strength.
/// @tparam Kind the derived type; gives the name and unit for messages
template <class Kind>
class fraction {
public:
    /// @param value the fraction, 0 to 1
    /// @throws refusal if the value is outside 0 to 1 or not a number
    explicit constexpr fraction(double value) : value_(value) {
        accept("strength", plain::strength_range<typename Kind::plain_basis>(value), {Kind::unit, 100.0});
    }

    /// @return the fraction, 0 to 1
    constexpr double value() const noexcept { return value_; }
    /// @return the fraction in percent, 0 to 100
    constexpr double percent() const noexcept { return 100.0 * value_; }
    /// @return the number that goes with the kind's `unit` when printed: percent
    constexpr double number() const noexcept { return percent(); }

    friend constexpr auto operator<=>(fraction, fraction) = default;  ///< weaker is less

private:
    double value_;
};

}  // namespace detail

/// Mass of ethanol per mass of mixture.
class [[nodiscard]] mass_fraction : public detail::fraction<mass_fraction> {
public:
    using fraction::fraction;
    static constexpr char const* name = "mass fraction";       ///< as printed
    static constexpr argument code = argument::mass_fraction;  ///< in errors
    using plain_basis = plain::mass_basis;                     ///< in plain numbers
    static constexpr char const* unit = "% mass";              ///< as printed
};

/// Amount of ethanol per amount of mixture (moles).
class [[nodiscard]] mole_fraction : public detail::fraction<mole_fraction> {
public:
    using fraction::fraction;
    static constexpr char const* name = "mole fraction";       ///< as printed
    static constexpr argument code = argument::mole_fraction;  ///< in errors
    using plain_basis = plain::mole_basis;                     ///< in plain numbers
    static constexpr char const* unit = "% mol";               ///< as printed
};

/// Alcoholic strength by volume: volume of pure ethanol in a mixture per volume of the mixture, both at one
/// reference temperature (OIML R 22: the volume the ethanol has on its own, not after contraction).
/// @tparam Reference tag of the reference temperature, part of the type so that strengths at different ones
///                   never mix
template <class Reference>
class [[nodiscard]] basic_volume_fraction : public detail::fraction<basic_volume_fraction<Reference>> {
public:
    using reference = Reference;  ///< the reference temperature's tag
    /// in plain numbers
    using plain_basis = plain::volume_basis<detail::plain_reference_temperature<Reference>>;
    using detail::fraction<basic_volume_fraction>::fraction;
    static constexpr char const* name = "alcoholic strength by volume";       ///< as printed
    static constexpr argument code = argument::alcoholic_strength_by_volume;  ///< in errors
    static constexpr char const* unit = Reference::unit;                      ///< as printed

    /// @return litres of pure ethanol per hectolitre of mixture, both at the reference temperature, 0 to 100
    constexpr double litres_per_hectolitre() const noexcept { return this->percent(); }
};

/// Alcoholic strength by volume at 20 °C, the default of the library.
using volume_fraction = basic_volume_fraction<at_20_celsius>;

/// US degrees of proof: twice the percentage of alcohol by volume at 60 °F (27 CFR 30.11).
class [[nodiscard]] us_proof {
public:
    static constexpr char const* name = "proof";     ///< as printed
    static constexpr char const* unit = "US proof";  ///< as printed
    using plain_basis = plain::proof_basis;          ///< in plain numbers

    /// @param degrees degrees of proof, 0 to 200
    /// @throws refusal if outside 0 to 200 or not a number
    explicit constexpr us_proof(double degrees) : degrees_(degrees) {
        detail::accept("strength", plain::strength_range<plain_basis>(degrees));
    }

    /// @return degrees of proof, 0 to 200
    constexpr double degrees() const noexcept { return degrees_; }
    /// @return the number that goes with `unit` when printed: degrees
    constexpr double number() const noexcept { return degrees_; }

    friend constexpr auto operator<=>(us_proof, us_proof) = default;  ///< weaker is less

private:
    double degrees_;
};

/// Mass of ethanol per volume of mixture at a reference temperature.
/// @tparam Reference tag of the reference temperature
template <class Reference>
class [[nodiscard]] basic_mass_concentration {
public:
    using reference = Reference;                               ///< the reference temperature's tag
    static constexpr char const* name = "mass concentration";  ///< as printed
    static constexpr char const* unit = "g/100 mL";            ///< as printed
    /// in plain numbers
    using plain_basis = plain::mass_concentration_basis<detail::plain_reference_temperature<Reference>>;

    /// @param grams_per_100_millilitres grams of ethanol in 100 mL of mixture, 0 to 80 (pure ethanol has
    ///                                  about 79)
    /// @throws refusal if outside that range or not a number
    explicit constexpr basic_mass_concentration(double grams_per_100_millilitres)
        : grams_(require_range("strength", argument::mass_concentration, grams_per_100_millilitres, unit, 0.0,
                               80.0)) {}

    /// @return grams of ethanol in 100 mL of mixture
    constexpr double grams_per_100_millilitres() const noexcept { return grams_; }
    /// @return the number that goes with `unit` when printed
    constexpr double number() const noexcept { return grams_; }

    friend constexpr auto operator<=>(basic_mass_concentration,
                                      basic_mass_concentration) = default;  ///< by value

private:
    double grams_;
};

/// Grams of ethanol per 100 mL of mixture at 20 °C.
using mass_concentration = basic_mass_concentration<at_20_celsius>;

namespace detail {

template <class T>
inline constexpr bool is_strength = false;
template <>
inline constexpr bool is_strength<mass_fraction> = true;
template <>
inline constexpr bool is_strength<mole_fraction> = true;
template <>
inline constexpr bool is_strength<us_proof> = true;
template <class Reference>
inline constexpr bool is_strength<basic_volume_fraction<Reference>> = true;
template <class Reference>
inline constexpr bool is_strength<basic_mass_concentration<Reference>> = true;

}  // namespace detail

/// Any type of strength: the content of ethanol in a mixture.
template <class T>
concept strength_basis = detail::is_strength<T>;

/// @param percent mass of ethanol in 100 mass units of mixture, 0 to 100
/// @return the mass fraction
/// @throws refusal if outside 0 to 100
constexpr mass_fraction by_mass(double percent) { return mass_fraction(percent / 100.0); }

/// @param percent moles of ethanol in 100 moles of mixture, 0 to 100
/// @return the mole fraction
/// @throws refusal if outside 0 to 100
constexpr mole_fraction by_moles(double percent) { return mole_fraction(percent / 100.0); }

/// @tparam Reference tag of the reference temperature; 20 °C unless given
/// @param percent alcoholic strength by volume in % vol, 0 to 100
/// @return the volume fraction
/// @throws refusal if outside 0 to 100
template <class Reference = at_20_celsius>
constexpr basic_volume_fraction<Reference> by_volume(double percent) {
    return basic_volume_fraction<Reference>(percent / 100.0);
}

/// @param degrees US degrees of proof, 0 to 200
/// @return the proof
/// @throws refusal if outside 0 to 200
constexpr us_proof proof(double degrees) { return us_proof(degrees); }

/// @tparam Reference tag of the reference temperature; 20 °C unless given
/// @param grams grams of ethanol in 100 mL of mixture, 0 to 80
/// @return the mass concentration
/// @throws refusal if outside 0 to 80
template <class Reference = at_20_celsius>
constexpr basic_mass_concentration<Reference> grams_per_100_millilitres(double grams) {
    return basic_mass_concentration<Reference>(grams);
}

/// Reads a strength as a number of the unit in which its basis is written. The unit is named by the function
/// that makes such a strength; `to` gives the strength in another basis.
/// @param strength a strength
/// @return percent, degrees of proof or g/100 mL: `in(by_volume(40), by_volume)` is 40
template <strength_basis Strength>
[[nodiscard]] constexpr double in(Strength strength, std::type_identity_t<Strength> (*)(double)) {
    return strength.number();
}

}  // namespace aqueth::inline AQUETH_ABI
