// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities as people write them: numbers, units, temperatures and amounts, and how they are refused.

#include <aqueth/aqueth.hpp>

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>
#include <initializer_list>
#include <iterator>
#include <stdexcept>
#include <string>
#include <string_view>
#include <system_error>
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

inline bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }

/// A text as it can stand in a one-line message: no control characters, not endless.
inline std::string printable(std::string_view text) {
    std::size_t longest = 60;
    while (longest < text.size() && (static_cast<unsigned char>(text[longest]) & 0xc0) == 0x80)
        --longest;  // UTF-8
    std::string safe(text.substr(0, longest));
    for (char& c : safe) {
        if (is_control(c)) c = '?';
    }
    return text.size() > longest ? safe + "..." : safe;
}

/// The option and what was written, to begin a message with.
inline std::string label(given const& g) { return fmt::format("{} '{}'", g.name, printable(g.text)); }

[[noreturn]] inline void refuse(given const& g, std::string const& why) {
    throw bad_input(fmt::format("{}: {}", label(g), why));
}

/// Runs what may raise a range_error because of this option, and says so.
template <class F>
auto on_behalf_of(given const& g, F const& f) {
    try {
        return f();
    } catch (range_error const& e) {
        range_error const named(label(g), e.argument(), e.value(), e.unit(), e.lower(), e.upper(),
                                e.reason());
        throw bad_input(named.what());
    }
}

/// Which option an argument of the library came from.
struct origin {
    std::string_view argument;
    given const& option;
};

/// Runs what may raise a range_error because of one of several options, and says which.
template <class F>
auto on_behalf_of(std::initializer_list<origin> origins, F const& f) {
    try {
        return f();
    } catch (range_error const& e) {
        for (origin const& each : origins) {
            if (each.argument == e.argument()) on_behalf_of(each.option, [&] { raise(e); });
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

inline bool is_digit(char c) { return c >= '0' && c <= '9'; }  // std::isdigit asks the locale

inline std::string_view trimmed(std::string_view text) {
    auto const first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

/// A unit without what people write differently: case, spaces, degree signs, raised figures.
inline std::string squeezed(std::string_view unit) {
    struct {
        std::string_view from, to;
    } constexpr replacements[] = {
        {" ", ""}, {"\t", ""}, {"\u00a0", ""}, {"\u202f", ""}, {"°", ""},
        {"º", ""}, {"³", "3"}, {"℃", "c"},     {"℉", "f"},
    };
    std::string text(unit);
    for (auto const& r : replacements) {
        for (auto at = text.find(r.from); at != std::string::npos; at = text.find(r.from)) {
            text.replace(at, r.from.size(), r.to);
        }
    }
    for (char& c : text) {
        if (c >= 'A' && c <= 'Z') c = static_cast<char>(c - 'A' + 'a');
    }
    return text;
}

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
    {"torr", standard_atmosphere.value() / 760.0},
    {"mmhg", millimetre_of_mercury.value()},
    {"inhg", 25.4 * millimetre_of_mercury.value()},
    {"psi psia", pound.value() * 9.80665 / (0.0254 * 0.0254)},
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
inline char temperature_scale(std::string const& unit) {
    if (unit == "c" || unit == "degc" || unit == "celsius") return 'c';
    if (unit == "f" || unit == "degf" || unit == "fahrenheit") return 'f';
    if (unit == "k" || unit == "kelvin") return 'k';
    return 0;
}

inline units::temperature temperature_of(double number, char scale) {
    return scale == 'c' ? celsius(number) : scale == 'f' ? fahrenheit(number) : kelvin(number);
}

/// A temperature as somebody would have written it: what a conversion rounds to zero is zero,
/// and that has no sign.
inline double written(double degrees) { return std::abs(degrees) < 1e-9 ? 0.0 : degrees; }

[[noreturn]] inline void refuse_unit(given const& g, std::string_view unit, wanted const& w) {
    std::string const text = squeezed(unit);
    std::string_view is;
    if (find_unit(volumes, text)) is = "a volume";
    if (find_unit(masses, text)) is = "a mass";
    if (text.starts_with("sg") || find_unit(notations, text)) is = "a strength";
    if (temperature_scale(text)) is = "a temperature";
    if (find_unit(pressures, text)) is = "a pressure";
    if (find_unit(altitudes, text)) is = "an altitude";
    if (!is.empty()) refuse(g, fmt::format("'{}' is the unit of {}; {}", printable(unit), is, w.text()));
    refuse(g, fmt::format("unknown unit '{}'; {}", printable(unit), w.text()));
}

struct number_and_unit {
    double number;
    std::string_view unit;
};

/// Reads the number at the head of a text, whatever the locale: decimal point, nothing between thousands.
inline number_and_unit read_number(given const& g, std::string_view text, wanted const& w) {
    text = trimmed(text);
    if (text.empty()) refuse(g, "nothing there; " + w.text());
    if (text.front() == '+') text.remove_prefix(1);
    auto const digit = [](std::string_view s) { return !s.empty() && is_digit(s[0]); };
    std::string_view const magnitude = text.substr(text.starts_with('-') ? 1 : 0);
    if (!digit(magnitude) && !(magnitude.starts_with('.') && digit(magnitude.substr(1)))) {
        refuse(g, "no number; " + w.text());  // also "nan" and "inf", which from_chars would take
    }
    double number = 0.0;
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error == std::errc::result_out_of_range)
        refuse(g, "the number is too large or too small; " + w.text());
    std::string_view const unit = trimmed(text.substr(static_cast<std::size_t>(end - text.data())));
    if (digit(unit) || unit.starts_with(',') || unit.starts_with('.') || unit.starts_with('\'')) {
        refuse(g, "numbers are written with a decimal point and nothing between the thousands: 43.5, 1500");
    }
    return {number, unit};
}

/// As read_number, and there must be a unit.
inline number_and_unit read_quantity(given const& g, std::string_view text, wanted const& w) {
    number_and_unit const q = read_number(g, text, w);
    if (q.unit.empty()) refuse(g, "no unit; " + w.text());
    return q;
}

// --- temperatures and amounts ------------------------------------------------------------------------------

/// A temperature, of whatever: its range is not checked.
inline units::temperature read_any_temperature(given const& g, std::string_view text) {
    wanted const w{"a temperature", temperature_units};
    number_and_unit const q = read_quantity(g, text, w);
    char const scale = temperature_scale(squeezed(q.unit));
    if (!scale) refuse_unit(g, q.unit, w);
    units::temperature const t = temperature_of(q.number, scale);
    // what is a number in another unit may be none in celsius
    if (!std::isfinite(t.celsius())) refuse(g, "the number is too large; " + w.text());
    return t;
}

/// The temperature of a liquid whose density is asked for and whose composition is not known yet.
inline units::temperature read_temperature(given const& g, std::string_view text) {
    units::temperature const t = read_any_temperature(g, text);
    namespace r22 = correlation::oiml_r22;
    on_behalf_of(g, [&] {
        return require_range("input", "temperature", t.celsius(), "°C", r22::lowest_celsius,
                             r22::highest_celsius, "OIML R 22");
    });
    return t;
}
inline units::temperature read_temperature(given const& g) { return read_temperature(g, g.text); }

/// The temperature of water, which must be liquid.
inline units::temperature read_water_temperature(given const& g) {
    units::temperature const t = read_any_temperature(g, g.text);
    on_behalf_of(g, [&] { return density(mass_fraction(0.0), t); });
    return t;
}

using amount = std::variant<units::volume, units::mass>;

inline amount read_amount(given const& g, std::string_view text, bool volume_only = false) {
    std::string const any = fmt::format("{}; {}", volume_units, mass_units);
    wanted const w = volume_only ? wanted{"a volume", volume_units} : wanted{"a volume or a mass", any};
    number_and_unit const q = read_quantity(g, text, w);
    std::string const unit = squeezed(q.unit);
    auto const* volume = find_unit(volumes, unit);
    auto const* mass = volume_only ? nullptr : find_unit(masses, unit);
    if (!volume && !mass) refuse_unit(g, q.unit, w);
    return on_behalf_of(g, [&]() -> amount {
        if (volume) {
            auto const v = units::volume::from_value(q.number * volume->si);
            require_range("input", "volume", in(v, litre), "L", 1e-6, 1e9);
            return v;
        }
        auto const m = units::mass::from_value(q.number * mass->si);
        require_range("input", "mass", in(m, kilogram), "kg", 1e-6, 1e9);
        return m;
    });
}
inline amount read_amount(given const& g) { return read_amount(g, g.text); }
inline units::volume read_volume(given const& g) {
    return std::get<units::volume>(read_amount(g, g.text, true));
}

inline parcel make_parcel(amount const& how_much, mass_fraction w, units::temperature t) {
    return std::visit([&](auto const& each) { return parcel::of(each, w, t); }, how_much);
}
/// The same; if the liquid is frozen or hot, that is the temperature's fault, and the range is that of the
/// liquid.
inline parcel make_parcel(amount const& how_much, mass_fraction w, given const& temperature) {
    units::temperature const t = read_any_temperature(temperature, temperature.text);
    return on_behalf_of(temperature, [&] { return make_parcel(how_much, w, t); });
}

/// A number with one of the units of a table, in the unit of the SI; its range is not checked.
template <class Table>
double read_in_si(given const& g, Table const& table, wanted const& w) {
    number_and_unit const q = read_quantity(g, g.text, w);
    auto const* unit = find_unit(table, squeezed(q.unit));
    if (!unit) refuse_unit(g, q.unit, w);
    return q.number * unit->si;
}
inline units::pressure read_pressure(given const& g) {
    return read_in_si(g, pressures, {"a pressure", pressure_units}) * pascal;
}
inline units::length read_altitude(given const& g) {
    return read_in_si(g, altitudes, {"an altitude", altitude_units}) * metre;
}

/// The options that describe the air over a liquid: one of them, or sea level.
struct surroundings {
    given const& pressure;
    given const& altitude;

    given const& decisive() const { return pressure.present ? pressure : altitude; }
};

inline units::pressure read_pressure(surroundings const& air) {
    if (air.pressure.present && air.altitude.present) throw bad_input("give either --pressure or --altitude");
    if (air.pressure.present) return read_pressure(air.pressure);
    return on_behalf_of(air.altitude, [&] { return pressure_at_altitude(read_altitude(air.altitude)); });
}

inline int read_count(given const& g, int most, int least = 1) {
    int count = 0;
    std::string_view const text = trimmed(g.text);
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    if (error != std::errc() || end != text.data() + text.size() || count < least || count > most) {
        refuse(g, fmt::format("expected a whole number from {} to {}", least, most));
    }
    return count;
}

// --- ranges ------------------------------------------------------------------------------------------------

/// The values along one side of a table, each as somebody would have written it.
struct side {
    std::string unit;
    std::vector<double> numbers;
    std::vector<given> values;
};

/// Reads "40 to 60 %vol by 5", "40 to 60 %vol" (by 1) or "40 %vol".
inline side read_side(given const& g) {
    wanted const w{"a range", "'40 to 60 %vol by 5'"};
    std::string_view text = trimmed(g.text);
    double step = 1.0;
    auto const by = text.rfind(" by ");
    if (by != std::string_view::npos && text.find_first_of("0123456789", by) != std::string_view::npos) {
        number_and_unit const q = read_number(g, text.substr(by + 4), w);
        if (!q.unit.empty()) refuse(g, "the step is a plain number, in the unit of the range");
        if (!(q.number > 0.0)) refuse(g, "the step must be above 0");
        step = q.number;
        text = text.substr(0, by);
    }
    auto const to = text.find(" to ");
    bool const single = to == std::string_view::npos;
    number_and_unit const last = read_quantity(g, single ? text : text.substr(to + 4), w);
    number_and_unit const first = single ? last : read_number(g, text.substr(0, to), w);
    if (!first.unit.empty() && first.unit != last.unit)
        refuse(g, "the unit is written once, behind the second number");
    if (!(first.number <= last.number)) refuse(g, "the first number of a range is the smaller one");
    double const steps = std::floor((last.number - first.number) / step * (1.0 + 1e-12) + 1e-9);
    if (!(steps < 10000.0)) refuse(g, "a side of a table has at most 10000 values");
    side result{std::string(last.unit), {}, {}};
    for (int k = 0; k <= static_cast<int>(steps); ++k) {
        result.numbers.push_back(first.number + k * step);
        result.values.push_back({g.name, fmt::format("{:.10g} {}", result.numbers.back(), last.unit), true});
    }
    return result;
}

}  // namespace program
