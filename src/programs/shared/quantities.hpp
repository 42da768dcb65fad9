// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities as people write them: numbers, units, temperatures and amounts, and how they are refused.

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

/// What the user wrote cannot be used; the message says which option, what was wrong and what would be right.
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

/// A text as it can stand in a one-line message: no control characters, not endless.
std::string printable(std::string_view text);

/// A text with U+FFFD for every byte that is not UTF-8.
std::string well_formed(std::string_view text);

/// The option and what was written, to begin a message with.
std::string label(given const& g);

[[noreturn]] void refuse(given const& g, std::string const& why);

/// The error with the option for its property; a temperature that was written in °F is refused in °F.
range_error named_after(given const& g, range_error const& e);

/// Runs what may raise a range_error because of this option, and says so.
template <class F>
auto on_behalf_of(given const& g, F const& f) {
    try {
        return f();
    } catch (range_error const& e) {
        throw bad_input(named_after(g, e).what());
    }
}

/// Which option an argument of the library came from.
struct origin {
    aqueth::argument argument;
    given const& option;
};

/// Runs what may raise a range_error because of one of several options, and says which.
template <class F>
auto on_behalf_of(std::initializer_list<origin> origins, F const& f) {
    try {
        return f();
    } catch (range_error const& e) {
        for (origin const& each : origins) {
            if (each.argument == e.code()) on_behalf_of(each.option, [&] { raise(e); });
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

/// What an option asks for, for messages: "a volume" and the units it may have.
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

/// A unit without what people write differently: case, spaces, degree signs, raised figures.
std::string squeezed(std::string_view unit);

/// The spellings of one unit, squeezed, and what one of it is in the unit of the SI.
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
    {"pa", pascal.value()},
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

/// What a strength is a strength by.
enum class basis { volume, mass, moles, proof, concentration, density, gravity };

/// How a strength is written or engraved on a stem: its basis and what that refers to.
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

/// A temperature as somebody would have written it: what a conversion rounds to zero is zero,
/// and that has no sign.
double written(double degrees);

[[noreturn]] void refuse_unit(given const& g, std::string_view unit, wanted const& w);

struct number_and_unit {
    double number;
    std::string_view unit;
};

/// Reads the number at the head of a text, whatever the locale: decimal point, nothing between thousands.
number_and_unit read_number(given const& g, std::string_view text, wanted const& w);

/// As read_number, and there must be a unit.
number_and_unit read_quantity(given const& g, std::string_view text, wanted const& w);

// --- temperatures and amounts ------------------------------------------------------------------------------

/// A temperature, of whatever: its range is not checked.
units::temperature read_any_temperature(given const& g, std::string_view text);
units::temperature read_any_temperature(given const& g);

/// The temperature of a liquid whose density is asked for and whose composition is not known yet.
units::temperature read_temperature(given const& g, std::string_view text);
units::temperature read_temperature(given const& g);

/// The temperature of water, which must be liquid.
units::temperature read_water_temperature(given const& g);

/// How much there is, as it was measured: a volume, or the mass that a balance in air shows.
using amount = std::variant<units::volume, units::mass>;

amount read_amount(given const& g, std::string_view text, bool volume_only = false);
amount read_amount(given const& g);
units::volume read_volume(given const& g);

/// What was measured, as a parcel: a balance's indication becomes true mass here, and nowhere else.
parcel make_parcel(amount const& how_much, mass_fraction w, units::temperature t);
/// The same; if the liquid is frozen or hot, that is the temperature's fault, and the range is that of the
/// liquid.
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
/// @param what what it is called in messages
double read_share(given const& g, std::string_view what = "a share");

int read_count(given const& g, int most, int least = 1);

// --- ranges ------------------------------------------------------------------------------------------------

/// The values along one side of a table, each as somebody would have written it.
struct side {
    std::string unit;
    std::vector<double> numbers;
    std::vector<given> values;
};

/// Reads "40 to 60 %vol by 5", "40 to 60 %vol" (by 1) or "40 %vol".
side read_side(given const& g);

}  // namespace program
