// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/liquid.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/units.hpp>

#include <array>
#include <concepts>
#include <string>
#include <string_view>

/// The texts of quantities: the units that a text can have, and the unit that each quantity is written in.
/// `text_of` and `parse` are for users; programs with texts of their own can use the rest.
namespace aqueth::inline AQUETH_ABI::text {

/// The spellings of one unit, separated by blanks, as `squeezed` gives them; and its value in the SI unit.
struct unit_names {
    std::string_view spellings;  ///< of the unit
    double si;                   ///< the unit in the unit of the SI
};

/// The unit in which a quantity is written.
struct printed_unit {
    std::string_view name;  ///< as printed
    double si;              ///< the unit in the unit of the SI
};

/// The units of one type of quantity: its name and its units for messages, the unit in which it is written,
/// and the units that are read.
/// @tparam Quantity one of the quantities of aqueth::units
template <class Quantity>
struct unit_table;

// Case does not matter in a text, so no unit of a table may differ from another by its case alone
// (as MJ and mJ).

/// of volumes
template <>
struct unit_table<units::volume> {
    static constexpr std::string_view what = "a volume";  ///< name
    static constexpr std::string_view names =
        "mL, cL, dL, L, hL, m3, fl oz, pt, qt or gal (US), imp gal";  ///< listed
    static constexpr printed_unit printed{"L", litre.value()};        ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"ml cc cm3 millilitre millilitres milliliter milliliters", millilitre.value()},
        {"cl", centilitre.value()},
        {"dl", 1e-4},
        {"l ltr ltrs litre litres liter liters", litre.value()},
        {"hl", hectolitre.value()},
        {"m3", cubic_metre.value()},
        {"floz usfloz", us_fluid_ounce.value()},
        {"pt pint pints uspt", us_gallon.value() / 8},
        {"qt quart quarts usqt", us_gallon.value() / 4},
        {"gal gals gallon gallons usgal", us_gallon.value()},
        {"impgal ukgal", imperial_gallon.value()},
    };
};
/// of masses
template <>
struct unit_table<units::mass> {
    static constexpr std::string_view what = "a mass";              ///< name
    static constexpr std::string_view names = "g, kg, oz, lb";      ///< listed
    static constexpr printed_unit printed{"kg", kilogram.value()};  ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"g gram grams", gram.value()},
        {"kg kgs kilogram kilograms", kilogram.value()},
        {"oz ounce ounces", ounce.value()},
        {"lb lbs pound pounds", pound.value()},
    };
};
/// of amounts of substance
template <>
struct unit_table<units::amount> {
    static constexpr std::string_view what = "an amount of substance";  ///< name
    static constexpr std::string_view names = "mol, kmol";              ///< listed
    static constexpr printed_unit printed{"mol", mole.value()};         ///< written
    /// read
    static constexpr unit_names rows[] = {{"mol mole moles", mole.value()}, {"kmol", kilomole.value()}};
};
/// of densities
template <>
struct unit_table<units::mass_density> {
    static constexpr std::string_view what = "a density";                              ///< name
    static constexpr std::string_view names = "kg/m3, g/cm3";                          ///< listed
    static constexpr printed_unit printed{"kg/m3", kilogram_per_cubic_metre.value()};  ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"kg/m3", kilogram_per_cubic_metre.value()},
        {"g/cm3 g/ml kg/l", gram_per_cubic_centimetre.value()},
    };
};
/// of differences of temperatures
template <>
struct unit_table<units::temperature_difference> {
    static constexpr std::string_view what = "a difference of temperatures";  ///< name
    static constexpr std::string_view names = "K, C or F";                    ///< listed
    static constexpr printed_unit printed{"K", kelvins.value()};              ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"k kelvin kelvins c degc celsius", kelvins.value()},
        {"f degf fahrenheit", 5.0 / 9.0},
    };
};
/// of molar volumes
template <>
struct unit_table<units::molar_volume> {
    static constexpr std::string_view what = "a molar volume";                            ///< name
    static constexpr std::string_view names = "cm3/mol";                                  ///< listed
    static constexpr printed_unit printed{"cm3/mol", cubic_centimetre_per_mole.value()};  ///< written
    static constexpr unit_names rows[] = {{"cm3/mol ml/mol", cubic_centimetre_per_mole.value()}};  ///< read
};
/// of pressures
template <>
struct unit_table<units::pressure> {
    static constexpr std::string_view what = "a pressure";  ///< name
    static constexpr std::string_view names =
        "kPa, hPa, mbar, bar, Pa, mmHg, inHg, atm, psi (absolute)";    ///< listed
    static constexpr printed_unit printed{"kPa", kilopascal.value()};  ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"pa", 1.0},
        {"hpa mbar millibar", hectopascal.value()},
        {"kpa", kilopascal.value()},
        {"bar", bar.value()},
        {"atm", standard_atmosphere.value()},
        {"torr", torr.value()},
        {"mmhg", millimetre_of_mercury.value()},
        {"inhg", inch_of_mercury.value()},
        {"psi psia", pound_force_per_square_inch.value()},
    };
};
/// of lengths
template <>
struct unit_table<units::length> {
    static constexpr std::string_view what = "a length";            ///< name
    static constexpr std::string_view names = "mm, cm, m, in, ft";  ///< listed
    static constexpr printed_unit printed{"m", metre.value()};      ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"mm", 1e-3},
        {"cm", 1e-2},
        {"m metre metres meter meters", metre.value()},
        {"in inch inches", 0.0254},
        {"ft foot feet", foot.value()},
    };
};
/// of times
template <>
struct unit_table<units::time> {
    static constexpr std::string_view what = "a time";             ///< name
    static constexpr std::string_view names = "s, min, h";         ///< listed
    static constexpr printed_unit printed{"min", minute.value()};  ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"s sec second seconds", second.value()},
        {"min minute minutes", minute.value()},
        {"h hour hours", hour.value()},
    };
};
/// of energies
template <>
struct unit_table<units::energy> {
    static constexpr std::string_view what = "a heat";               ///< name
    static constexpr std::string_view names = "J, kJ, kWh";          ///< listed
    static constexpr printed_unit printed{"kJ", kilojoule.value()};  ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"j joule joules", joule.value()},
        {"kj", kilojoule.value()},
        {"kwh", kilowatt_hour.value()},
    };
};
/// of powers
template <>
struct unit_table<units::power> {
    static constexpr std::string_view what = "a power";        ///< name
    static constexpr std::string_view names = "W, kW";         ///< listed
    static constexpr printed_unit printed{"W", watt.value()};  ///< written
    static constexpr unit_names rows[] = {{"w watt watts", watt.value()},
                                          {"kw", kilowatt.value()}};  ///< read
};
/// of heat capacities
template <>
struct unit_table<units::heat_capacity> {
    static constexpr std::string_view what = "a heat capacity";                                  ///< name
    static constexpr std::string_view names = "J/K, kJ/K";                                       ///< listed
    static constexpr printed_unit printed{"J/K", joule_per_kelvin.value()};                      ///< written
    static constexpr unit_names rows[] = {{"j/k", joule_per_kelvin.value()}, {"kj/k", 1000.0}};  ///< read
};
/// of heat loss coefficients
template <>
struct unit_table<units::thermal_conductance> {
    static constexpr std::string_view what = "a heat loss coefficient";       ///< name
    static constexpr std::string_view names = "W/K";                          ///< listed
    static constexpr printed_unit printed{"W/K", watt_per_kelvin.value()};    ///< written
    static constexpr unit_names rows[] = {{"w/k", watt_per_kelvin.value()}};  ///< read
};
/// of molar energies
template <>
struct unit_table<units::molar_energy> {
    static constexpr std::string_view what = "a molar energy";               ///< name
    static constexpr std::string_view names = "J/mol, kJ/mol";               ///< listed
    static constexpr printed_unit printed{"J/mol", joule_per_mole.value()};  ///< written
    static constexpr unit_names rows[] = {{"j/mol", joule_per_mole.value()}, {"kj/mol", 1000.0}};  ///< read
};
/// of molar heat capacities
template <>
struct unit_table<units::molar_heat_capacity> {
    static constexpr std::string_view what = "a molar heat capacity";                    ///< name
    static constexpr std::string_view names = "J/(mol K)";                               ///< listed
    static constexpr printed_unit printed{"J/(mol K)", joule_per_mole_kelvin.value()};   ///< written
    static constexpr unit_names rows[] = {{"j/(molk)", joule_per_mole_kelvin.value()}};  ///< read
};
/// of specific energies
template <>
struct unit_table<units::specific_energy> {
    static constexpr std::string_view what = "a specific energy";               ///< name
    static constexpr std::string_view names = "J/kg, kJ/kg, MJ/kg, kWh/kg";     ///< listed
    static constexpr printed_unit printed{"J/kg", joule_per_kilogram.value()};  ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"j/kg", joule_per_kilogram.value()}, {"kj/kg", 1e3}, {"mj/kg", 1e6}, {"kwh/kg", 3.6e6}};
};
/// of specific heat capacities
template <>
struct unit_table<units::specific_heat_capacity> {
    static constexpr std::string_view what = "a specific heat capacity";                   ///< name
    static constexpr std::string_view names = "J/(kg K), kJ/(kg K)";                       ///< listed
    static constexpr printed_unit printed{"J/(kg K)", joule_per_kilogram_kelvin.value()};  ///< written
    /// read
    static constexpr unit_names rows[] = {
        {"j/(kgk)", joule_per_kilogram_kelvin.value()},
        {"kj/(kgk)", 1000.0},
    };
};
/// of cubic expansions
template <>
struct unit_table<units::cubic_expansion> {
    static constexpr std::string_view what = "a cubic expansion";       ///< name
    static constexpr std::string_view names = "/K, like '25e-6 /K'";    ///< listed
    static constexpr printed_unit printed{"/K", per_kelvin.value()};    ///< written
    static constexpr unit_names rows[] = {{"/k", per_kelvin.value()}};  ///< read
};

/// A quantity that has a table of units.
template <class T>
concept quantity_with_units = requires {
    unit_table<T>::printed;
};

/// A strong type of degrees, as degrees Plato.
template <class T>
concept degrees_with_unit = !strength_basis<T> && requires(T const& x) {
    { x.degrees() } -> std::same_as<double>;
    { T::unit } -> std::convertible_to<std::string_view>;
};

/// A number with its unit, as a text has it: "40 % vol at 20 °C".
struct figure {
    double number;                       ///< in the unit
    std::string_view unit;               ///< of the number
    std::string_view condition;          ///< to which the unit refers, for example " at 20 °C"; may be empty
    double held;                         ///< the number that the library holds
    double (*held_from)(double number);  ///< the same of a number in the unit, as `parse` computes it
};

/// @param number the number that the library holds
/// @param unit   of it
/// @return figure of a quantity that is held in the unit in which it is written
constexpr figure figure_as_held(double number, std::string_view unit) {
    return {number, unit, {}, number, [](double same) { return same; }};
}

/// @name The numbers of a quantity, with their units
/// The only place that knows in which unit a quantity is written.
/// @{

/// @param t temperature
/// @return in °C
constexpr std::array<figure, 1> figures_of(units::temperature t) {
    return {{figure_as_held(t.celsius(), "°C")}};
}
/// @param quantity any quantity of aqueth::units
/// @return in its printed unit
template <quantity_with_units Quantity>
constexpr std::array<figure, 1> figures_of(Quantity const& quantity) {
    using table = unit_table<Quantity>;
    return {
        {{quantity.value() / table::printed.si, table::printed.name, {}, quantity.value(), [](double number) {
              return number * table::printed.si;
          }}}};
}
/// @param strength a strength in any basis
/// @return in the unit of its basis, with the reference temperature of a volume
template <strength_basis Strength>
constexpr std::array<figure, 1> figures_of(Strength const& strength) {
    figure f = figure_as_held(strength.number(), Strength::unit);
    if constexpr (requires { strength.value(); }) {
        f.held = strength.value();
        f.held_from = [](double percent) { return percent / 100.0; };
    }
    if constexpr (requires { typename Strength::reference; }) {
        std::string_view const reference = Strength::reference::unit;  // "% vol at 20 °C"
        std::string_view const at = reference.substr(reference.find(" at "));
        if (!f.unit.ends_with(at)) f.condition = at;
    }
    return {{f}};
}
/// @param gravity specific gravity
/// @return the ratio, marked as one
constexpr std::array<figure, 1> figures_of(specific_gravity gravity) {
    return {{figure_as_held(gravity.value(), "sg")}};
}
/// @param degrees extract or apparent extract
/// @return in degrees Plato
template <degrees_with_unit Degrees>
constexpr std::array<figure, 1> figures_of(Degrees const& degrees) {
    return {{figure_as_held(degrees.degrees(), Degrees::unit)}};
}
/// @param of a liquid
/// @return alcoholic strength by volume, temperature
constexpr std::array<figure, 2> figures_of(liquid const& of) {
    return {{figures_of(to<volume_fraction>(of.composition()))[0], figures_of(of.temperature())[0]}};
}
/// @param of a parcel
/// @return mass, alcoholic strength by volume, temperature
constexpr std::array<figure, 3> figures_of(parcel const& of) {
    return {{figures_of(of.mass())[0], figures_of(of.strength())[0], figures_of(of.temperature())[0]}};
}
/// @}

/// @param f a number with its unit
/// @return the number with as few digits as give the held number back, 17 at most
inline std::string number_of(figure const& f) {
    int digits = 15;  // a number that a person wrote has no more
    auto const same = [&] {
        auto const number = numeric::number_in(numeric::text_of(f.number, digits));
        return number && f.held_from(*number) == f.held;
    };
    while (digits < 17 && !same()) ++digits;
    return numeric::text_of(f.number, digits);
}

/// A quantity that can be written: temperatures, all quantities of aqueth::units, strengths, specific
/// gravity, extracts, liquids and parcels.
template <class T>
concept has_text = requires(T const& x) {
    figures_of(x);
};

/// Writes a quantity: numbers with their units, separated by commas.
/// @param quantity what to write
/// @param number   callable: figure; writes its number
/// @param words    callable: std::string_view; writes the text
template <has_text Quantity, class Number, class Words>
constexpr void write(Quantity const& quantity, Number const& number, Words const& words) {
    std::string_view between;
    for (figure each : figures_of(quantity)) {
        if (each.number == 0.0) each.number = 0.0;  // no negative zero
        words(between);
        number(each);
        words(" ");
        words(each.unit);
        words(each.condition);
        between = ", ";
    }
}

}  // namespace aqueth::inline AQUETH_ABI::text

namespace aqueth::inline AQUETH_ABI {

/// Writes a quantity with its unit, the same in every locale: "20 °C", "40 % vol at 20 °C", "3.5 L".
/// A parcel is its mass, alcoholic strength by volume and temperature. `parse` reads the text back.
/// @param quantity temperature, strength, specific gravity, extract, liquid, parcel or a quantity of
///                 aqueth::units
/// @param digits   significant digits, 1 to 17; without them, as many as `parse` needs to give the same
///                 quantity
/// @return the text
/// @throws refusal if there are no such digits
template <text::has_text Quantity>
[[nodiscard]] std::string text_of(Quantity const& quantity, int digits) {
    require_range("text", argument::significant_digits, digits, "", 1.0, 17.0);
    std::string result;
    text::write(
        quantity, [&](text::figure const& f) { result += numeric::text_of(f.number, digits); },
        [&](std::string_view words) { result += words; });
    return result;
}
/// @param quantity as above
/// @return the text
template <text::has_text Quantity>
[[nodiscard]] std::string text_of(Quantity const& quantity) {
    std::string result;
    text::write(
        quantity, [&](text::figure const& f) { result += text::number_of(f); },
        [&](std::string_view words) { result += words; });
    return result;
}

/// @param error a refusal of the library
/// @return its message
[[nodiscard]] inline std::string text_of(refusal const& error) { return error.what(); }
/// @param status what a function of aqueth::plain answers
/// @return "accepted", or the message of the refusal
[[nodiscard]] inline std::string text_of(plain::status const& status) {
    if (status.ok) return "accepted";
    detail::printed const as = detail::printed_as(status.argument);
    double const factor = as.per_plain_unit;
    return text_of(refusal("refused", status.argument, factor * status.value, as.unit, factor * status.lower,
                           factor * status.upper, name_of(status.limit)));
}

}  // namespace aqueth::inline AQUETH_ABI
