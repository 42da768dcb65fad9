// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities as users write them: numbers, units, temperatures and amounts, and the errors for bad ones.

#include <aqueth/aqueth.hpp>
#include <aqueth/number_table.hpp>
#include <aqueth/parse.hpp>
#include <aqueth/text.hpp>

#include <fmt/format.h>

#include <initializer_list>
#include <stdexcept>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace program {

using namespace aqueth;
using namespace aqueth::text;

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
    bool set = false;      ///< whether it was written in the settings file; then it is present as well

    /// Whether it was written on the command line.
    bool typed() const { return present && !set; }
};

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

/// Calls f, which reads the text of this option, and reports its errors as errors of the option.
template <class F>
auto understood(given const& g, F const& f) {
    try {
        return on_behalf_of(g, f);
    } catch (text_error const& e) {
        refuse(g, e.what());
    }
}

// --- numbers with units: what aqueth/parse.hpp reads, with errors that name the option ---------------------

inline constexpr std::string_view volume_units = unit_table<units::volume>::names;
inline constexpr std::string_view mass_units = unit_table<units::mass>::names;
inline constexpr std::string_view temperature_units = a_temperature.units;
inline constexpr std::string_view pressure_units = unit_table<units::pressure>::names;
inline constexpr std::string_view altitude_units = "m, ft";
inline constexpr std::string_view strength_units = a_strength.units;

/// Whether a text has a quantity in US proof, gallons, quarts, pints, fluid ounces, pounds or ounces.
bool is_us_customary(std::string_view text);

/// A temperature without the rounding error of a conversion near zero, and without a negative zero.
double written(double degrees);

[[noreturn]] void refuse_unit(given const& g, std::string_view unit, wanted const& w);

/// Reads the number at the head of a text in every locale: decimal point or comma, no thousands separator.
number_and_unit read_number(given const& g, std::string_view text, wanted const& w);

/// Like read_number, but requires a unit.
number_and_unit read_quantity(given const& g, std::string_view text, wanted const& w);

/// A quantity; its range is not checked.
template <quantity_with_units Quantity>
Quantity read_as(given const& g, wanted const& w = a_quantity<Quantity>) {
    return understood(g, [&] { return text::read<Quantity>(g.text, w); });
}

// --- temperatures and amounts ------------------------------------------------------------------------------

/// A temperature; its range is not checked.
units::temperature read_any_temperature(given const& g, std::string_view text);
units::temperature read_any_temperature(given const& g);

/// The temperature of a liquid of a composition not known yet: -20 °C to the boiling point of water.
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
