// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities as users write them: numbers, units, temperatures and amounts, and the errors for bad ones.

#include <aqueth/aqueth.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>
#include <iterator>
#include <stdexcept>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace program {

using namespace aqueth;

// --- what the user wrote, and refusing it ------------------------------------------------------------------

/// Input that cannot be used. The message names the option, the error and the accepted values.
class bad_input : public std::runtime_error {
    using runtime_error::runtime_error;
};

/// The text of one option.
struct given {
    std::string name;      ///< the option, for messages
    std::string text;      ///< what was written, or the default
    bool present = false;  ///< whether it was written
};

bool is_control(char c);

/// A text that fits a one-line message: without control characters, and shortened.
std::string printable(std::string_view text);

/// A text with U+FFFD for every byte that is not UTF-8.
std::string well_formed(std::string_view text);

/// The option and its text, for the start of a message.
std::string label(given const& g);

[[noreturn]] void refuse(given const& g, std::string const& why);

/// The error with the option as its property. A temperature written in °F is reported in °F.
refusal named_after(given const& g, refusal const& e);

/// Calls f, and reports a refusal as an error of this option.
template <class F>
auto on_behalf_of(given const& g, F const& f) {
    try {
        return f();
    } catch (refusal const& e) {
        throw bad_input(named_after(g, e).what());
    }
}

/// The option that an argument of the library came from.
struct origin {
    aqueth::argument argument;
    given const& option;
};

/// Calls f, and reports a refusal as an error of the option that caused it.
template <class F>
auto on_behalf_of(std::initializer_list<origin> origins, F const& f) {
    try {
        return f();
    } catch (refusal const& e) {
        for (origin const& each : origins) {
            if (each.argument == e.code()) on_behalf_of(each.option, [&] { raise_error(e); });
        }
        throw;
    }
}

// --- numbers with units ------------------------------------------------------------------------------------

inline constexpr std::string_view volume_units = "mL, cL, dL, L, hL, m3, fl oz or gal (US), imp gal";
inline constexpr std::string_view mass_units = "g, kg, oz, lb";
inline constexpr std::string_view temperature_units = "C, F or K";
inline constexpr std::string_view pressure_units = "kPa, hPa, mbar, bar, Pa, mmHg, inHg, atm, psi (absolute)";
inline constexpr std::string_view altitude_units = "m, ft";
inline constexpr std::string_view strength_units =
    "%vol, %mass, %mol, mol/mol, proof (US), g/100 mL, L/hL, kg/m3, g/cm3 or sg";

/// The quantity that an option expects, for messages: "a volume" and its units.
struct wanted {
    std::string_view what;
    std::string_view units;
    std::string text() const { return fmt::format("expected {}: {}", what, units); }
};

bool is_digit(char c);

/// Whether a text has a quantity in US proof, gallons, fluid ounces, pounds or ounces.
bool is_us_customary(std::string_view text);

/// A text without blanks at its ends.
std::string_view trimmed(std::string_view text);

/// A unit in its plain spelling: lower case, without spaces, degree signs and superscripts.
std::string squeezed(std::string_view unit);

/// The spellings of one unit, squeezed, and its value in the SI unit.
struct unit_names {
    std::string_view spellings;
    double si;
};

inline constexpr unit_names volumes[] = {
    {"ml cc cm3", millilitre.value()},
    {"cl", centilitre.value()},
    {"dl", 1e-4},
    {"l litre litres liter liters", litre.value()},
    {"hl", hectolitre.value()},
    {"m3", cubic_metre.value()},
    {"floz usfloz", us_fluid_ounce.value()},
    {"gal gallon gallons usgal", us_gallon.value()},
    {"impgal ukgal", imperial_gallon.value()},
};
inline constexpr unit_names masses[] = {
    {"g gram grams", gram.value()},
    {"kg", kilogram.value()},
    {"oz ounce ounces", ounce.value()},
    {"lb lbs pound pounds", pound.value()},
};
inline constexpr unit_names pressures[] = {
    {"pa", newton_per_square_metre.value()},
    {"hpa mbar millibar", hectopascal.value()},
    {"kpa", kilopascal.value()},
    {"bar", bar.value()},
    {"atm", standard_atmosphere.value()},
    {"torr", torr.value()},
    {"mmhg", millimetre_of_mercury.value()},
    {"inhg", inch_of_mercury.value()},
    {"psi psia", pound_force_per_square_inch.value()},
};
inline constexpr unit_names altitudes[] = {
    {"m metre metres meter meters", metre.value()},
    {"ft foot feet", foot.value()},
};

/// The basis of a strength.
enum class basis { volume, mass, moles, proof, concentration, density, gravity };

/// The notation of a strength, in an option or on a scale: its basis and its reference.
struct notation {
    basis kind = basis::volume;
    double factor = 1.0;  ///< one of the unit in percent, degrees of proof, g/100 mL or kg/m3
    units::temperature reference = celsius(20.0);  ///< of the volume, the density, or the instrument
    gravity_reference gravity = {};                ///< for specific gravity
    bool referenced = false;                       ///< whether the reference was written or is the default
};

struct notation_names {
    std::string_view spellings;
    basis kind;
    double factor;
};

inline constexpr notation_names notations[] = {
    {"%vol %vol. vol% %v/v %abv abv %byvolume l/hl", basis::volume, 1.0},
    {"%mass mass% %m/m %w/w wt% %wt %bymass %byweight", basis::mass, 1.0},
    {"%mol mol%", basis::moles, 1.0},
    {"mol/mol", basis::moles, 100.0},
    {"proof usproof", basis::proof, 1.0},
    {"g/100ml", basis::concentration, 1.0},
    {"kg/m3", basis::density, 1.0},
    {"g/cm3 g/ml kg/l", basis::density, 1000.0},
};

/// The row of a table that knows a spelling, or null.
template <class Table>
auto const* find_unit(Table const& table, std::string const& unit) {
    auto const found = std::find_if(std::begin(table), std::end(table), [&](auto const& row) {
        return fmt::format(" {} ", row.spellings).find(" " + unit + " ") != std::string::npos;
    });
    return found == std::end(table) ? nullptr : &*found;
}

/// The letter of a temperature scale, or 0.
char temperature_scale(std::string const& unit);

units::temperature temperature_of(double number, char scale);

/// A temperature without the rounding error of a conversion near zero, and without a negative zero.
double written(double degrees);

[[noreturn]] void refuse_unit(given const& g, std::string_view unit, wanted const& w);

struct number_and_unit {
    double number;
    std::string_view unit;
};

/// Reads the number at the head of a text in every locale: decimal point, no thousands separator.
number_and_unit read_number(given const& g, std::string_view text, wanted const& w);

/// Like read_number, but requires a unit.
number_and_unit read_quantity(given const& g, std::string_view text, wanted const& w);

// --- temperatures and amounts ------------------------------------------------------------------------------

/// A temperature; its range is not checked.
units::temperature read_any_temperature(given const& g, std::string_view text);
units::temperature read_any_temperature(given const& g);

/// The temperature of a liquid of a composition not known yet, within the range of OIML R 22.
units::temperature read_temperature(given const& g, std::string_view text);
units::temperature read_temperature(given const& g);

/// The temperature of water, which must be liquid.
units::temperature read_water_temperature(given const& g);

/// An amount as measured: a volume, or the indication of a balance in air.
using amount = std::variant<units::volume, units::mass>;

amount read_amount(given const& g, std::string_view text, bool volume_only = false);
amount read_amount(given const& g);
units::volume read_volume(given const& g);

/// The amount as a parcel. This is the only place where a balance indication becomes true mass.
parcel make_parcel(amount const& how_much, mass_fraction w, units::temperature t);
/// The same. If the liquid would be frozen or too hot, the error names the temperature and its range.
parcel make_parcel(amount const& how_much, mass_fraction w, given const& temperature);

/// A number with one of the units of a table, in the unit of the SI; its range is not checked.
template <class Table>
double read_in_si(given const& g, Table const& table, wanted const& w) {
    number_and_unit const q = read_quantity(g, g.text, w);
    auto const* unit = find_unit(table, squeezed(q.unit));
    if (!unit) refuse_unit(g, q.unit, w);
    return q.number * unit->si;
}
units::pressure read_pressure(given const& g);
units::length read_altitude(given const& g);

/// The options that describe the air over a liquid: one of them, or sea level.
struct surroundings {
    given const& pressure;
    given const& altitude;

    given const& decisive() const { return pressure.present ? pressure : altitude; }
};

units::pressure read_pressure(surroundings const& air);

/// A share, '5 %' or '0.05'; its range is not checked.
/// @param what name of the quantity in messages
double read_share(given const& g, std::string_view what = "a share");

int read_count(given const& g, int most, int least = 1);

// --- ranges ------------------------------------------------------------------------------------------------

/// The values along one side of a table, each as text with its unit.
struct side {
    std::string unit;
    std::vector<double> numbers;
    std::vector<given> values;
};

/// Reads "40 to 60 %vol by 5", "40 to 60 %vol" (by 1) or "40 %vol".
side read_side(given const& g);

}  // namespace program
