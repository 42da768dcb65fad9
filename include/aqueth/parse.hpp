// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities from texts as people write them. `parse` is for users; programs with texts of their own can use
/// the rest. Not in the front door: include it where you read.

#include <aqueth/composition.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/liquid.hpp>
#include <aqueth/number_table.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/text.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <iterator>
#include <string>
#include <string_view>
#include <type_traits>
#include <utility>
#include <variant>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// A strength in the basis in which it was written, so that messages use the same basis.
using any_strength =
    std::variant<volume_fraction, basic_volume_fraction<at_15_celsius>,
                 basic_volume_fraction<at_15_56_celsius>, basic_volume_fraction<at_60_fahrenheit>,
                 mass_fraction, mole_fraction, us_proof, mass_concentration,
                 basic_mass_concentration<at_15_celsius>, basic_mass_concentration<at_15_56_celsius>,
                 basic_mass_concentration<at_60_fahrenheit>>;

/// @tparam Target the basis wanted
/// @param strength a strength in any basis
/// @return the same mixture in the wanted basis
/// @throws refusal if a mass concentration is above that of pure ethanol
template <strength_basis Target>
Target to(any_strength const& strength) {
    return std::visit([](auto const& each) { return to<Target>(each); }, strength);
}

namespace text {

// --- characters --------------------------------------------------------------------------------------------

/// @param c a byte
/// @return whether it is an ASCII control character
constexpr bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }
/// @param c a byte
/// @return whether it is a digit; std::isdigit depends on the locale
constexpr bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// @param text any text
/// @return how many bytes at its head are one character of UTF-8 that XML allows, too; 0 if they are none
inline std::size_t length_of_character(std::string_view text) {
    auto const byte = [&](std::size_t k) {
        return k < text.size() ? static_cast<unsigned char>(text[k]) : 0u;
    };
    unsigned const first = byte(0);
    if (first < 0x80) return 1;
    std::size_t const length = first >= 0xc2 && first <= 0xdf   ? 2
                               : (first & 0xf0) == 0xe0         ? 3
                               : first >= 0xf0 && first <= 0xf4 ? 4
                                                                : 0;
    unsigned code = length == 0 ? 0 : first & (0x7fu >> length);
    for (std::size_t k = 1; k < length; ++k) {
        if ((byte(k) & 0xc0) != 0x80) return 0;
        code = code << 6 | (byte(k) & 0x3fu);
    }
    bool const too_long = (length == 3 && code < 0x800) || (length == 4 && code < 0x10000);
    bool const no_character =
        (code >= 0xd800 && code <= 0xdfff) || code > 0x10ffff || (code & 0xfffe) == 0xfffe;
    return too_long || no_character ? 0 : length;
}

/// @param text any text
/// @return the text with U+FFFD for every byte that is not UTF-8
inline std::string well_formed(std::string_view text) {
    std::string result;
    while (!text.empty()) {
        std::size_t const length = length_of_character(text);
        result += length == 0 ? std::string_view("\xEF\xBF\xBD") : text.substr(0, length);
        text.remove_prefix(length == 0 ? 1 : length);
    }
    return result;
}

/// @param text any text
/// @return it on one line: well formed, with a question mark for each control character
inline std::string on_one_line(std::string_view text) {
    std::string line = well_formed(text);
    for (char& c : line) {
        if (is_control(c)) c = '?';
    }
    return line;
}

/// @param any_text any text
/// @return it for a one-line message: as on_one_line, at most 60 bytes
inline std::string printable(std::string_view any_text) {
    std::string const text = on_one_line(any_text);
    std::size_t longest = 60;
    while (longest < text.size() && (static_cast<unsigned char>(text[longest]) & 0xc0) == 0x80)
        --longest;  // UTF-8
    return text.size() > longest ? text.substr(0, longest) + "..." : text;
}

/// @param text any text
/// @return the text without blanks at its ends
inline std::string_view trimmed(std::string_view text) {
    constexpr char const* blanks = " \t\r\n";  // a script with the line ends of another system leaves a CR
    auto const first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

/// @param unit a unit as written
/// @return its plain spelling: lower case, without spaces, degree signs, superscripts and the full stops of
///         abbreviations
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
    for (std::size_t k = text.size(); k-- > 1;) {
        bool const behind_a_letter = text[k - 1] >= 'a' && text[k - 1] <= 'z';
        bool const is_decimal = k + 1 < text.size() && is_digit(text[k + 1]);
        if (text[k] == '.' && behind_a_letter && !is_decimal) text.erase(k, 1);  // "fl. oz."
    }
    return text;
}

// --- numbers with units ------------------------------------------------------------------------------------

/// The quantity that a text must have, for messages: "a volume" and its units.
struct wanted {
    std::string_view what;   ///< name with its article
    std::string_view units;  ///< accepted units
    /// @return what is expected
    std::string text() const { return std::string("expected ").append(what).append(": ").append(units); }
};

/// @param reason what is wrong with a text and what is accepted
/// @throws text_error always
[[noreturn]] inline void refuse(std::string const& reason) { raise_error(text_error(0, "", reason)); }

/// A number and the text behind it.
struct number_and_unit {
    double number;          ///< finite
    std::string_view unit;  ///< without blanks at its ends; may be empty
};

namespace detail {

/// how many bytes at the head of a text are digits
inline std::size_t length_of_digits(std::string_view text) {
    std::size_t at = 0;
    while (at < text.size() && is_digit(text[at])) ++at;
    return at;
}

/// how many bytes at the head of a text are a decimal number: "-1.5e3", "3,5"; its first character is known
/// to fit. A comma is a decimal sign only between digits.
inline std::size_t length_of_number(std::string_view text) {
    std::size_t at = text.starts_with('-') ? 1 : 0;
    auto const skip_digits = [&] {
        std::size_t const digits = length_of_digits(text.substr(at));
        at += digits;
        return digits > 0;
    };
    bool const whole = skip_digits();
    bool const comma = whole && at + 1 < text.size() && text[at] == ',' && is_digit(text[at + 1]);
    if (comma || (at < text.size() && text[at] == '.')) {
        ++at;
        skip_digits();
    }
    std::size_t const mantissa = at;
    if (at < text.size() && (text[at] == 'e' || text[at] == 'E')) {
        ++at;
        if (at < text.size() && (text[at] == '+' || text[at] == '-')) ++at;
        if (skip_digits()) return at;
    }
    return mantissa;
}

/// Refuses "1,234", which is 1.234 to one reader and 1234 to another.
/// @param number a number with a decimal comma
inline void refuse_two_readings(std::string_view number) {
    std::string_view const magnitude = number.substr(number.starts_with('-') ? 1 : 0);
    std::size_t const whole = length_of_digits(magnitude);
    std::size_t const behind = length_of_digits(magnitude.substr(whole + 1));
    if (whole > 3 || magnitude.front() == '0' || behind != 3) return;
    std::string const before(number.substr(0, number.find(','))), after(magnitude.substr(whole + 1, behind));
    refuse("'" + before + "," + after + "' can mean " + before + "." + after + " or " + before + after +
           ": write one of them");
}

/// A common fraction at the head of a text.
struct common_fraction {
    double value;        ///< of the fraction; 0 if there is none
    std::size_t length;  ///< of its text; 0 if there is none
};

/// @param text "1/2 gal", "½ gal"
/// @return the fraction
/// @throws text_error if it divides by zero
inline common_fraction fraction_at_head(std::string_view text) {
    struct {
        std::string_view character;
        double value;
    } constexpr characters[] = {{"¼", 0.25}, {"½", 0.5}, {"¾", 0.75}};
    for (auto const& each : characters)
        if (text.starts_with(each.character)) return {each.value, each.character.size()};
    std::size_t const above = length_of_digits(text);
    if (above == 0 || above == text.size() || text[above] != '/') return {0.0, 0};
    std::size_t const below = length_of_digits(text.substr(above + 1));
    if (below == 0) return {0.0, 0};
    auto const numerator = numeric::number_in(text.substr(0, above));
    auto const denominator = numeric::number_in(text.substr(above + 1, below));
    if (!numerator || !denominator) refuse("a fraction has too many digits");
    if (*denominator == 0.0) refuse("a fraction divides by zero");
    return {*numerator / *denominator, above + 1 + below};
}

}  // namespace detail

/// Reads the number at the head of a text, the same in every locale: "43.5", "43,5", "1/2", "1 1/2", "1½".
/// There is no thousands separator; "1,234" has two readings and is refused with both.
/// @param text what to read
/// @param w    what is expected, for messages
/// @return the number, and the text behind it
/// @throws text_error if the text does not begin with a finite number
inline number_and_unit read_number(std::string_view text, wanted const& w) {
    text = trimmed(text);
    if (text.empty()) refuse("the value is empty; " + w.text());
    if (text.front() == '+') text.remove_prefix(1);
    auto const digit = [](std::string_view s) { return !s.empty() && is_digit(s[0]); };
    bool const negative = text.starts_with('-');
    std::string_view const magnitude = text.substr(negative ? 1 : 0);
    auto const [value, length] = detail::fraction_at_head(magnitude);
    if (length == 0 && !digit(magnitude) && !(magnitude.starts_with('.') && digit(magnitude.substr(1)))) {
        refuse("not a number; " + w.text());  // also "nan" and "inf"
    }
    if (length > 0) return {negative ? 0.0 - value : value, trimmed(magnitude.substr(length))};
    std::string written(text.substr(0, detail::length_of_number(text)));
    std::string_view unit = trimmed(text.substr(written.size()));
    bool const ends = !unit.starts_with(',') && !unit.starts_with('.') && !unit.starts_with('\'');
    if (auto const comma = written.find(','); comma != std::string::npos && ends) {
        detail::refuse_two_readings(written);
        written[comma] = '.';
    }
    auto const whole = detail::length_of_digits(magnitude) == written.size() - (negative ? 1 : 0);
    auto const fraction = whole ? detail::fraction_at_head(unit) : detail::common_fraction{0.0, 0};
    if (fraction.length > 0 && fraction.value >= 1.0)
        refuse("the fraction behind a whole number must be below 1: 1 1/2");
    unit = trimmed(unit.substr(fraction.length));
    if (digit(unit) || !ends) {
        refuse("write numbers with a decimal point or comma and no thousands separator: 43.5, 43,5, 1500");
    }
    auto const number = numeric::number_in(written);
    if (!number) refuse("the number is too large or too small; " + w.text());
    return {negative ? *number - fraction.value : *number + fraction.value, unit};
}

/// Like read_number, but requires a unit.
/// @param text what to read
/// @param w    what is expected, for messages
/// @return the number, and the unit
/// @throws text_error if the text does not begin with a finite number, or has no unit
inline number_and_unit read_quantity(std::string_view text, wanted const& w) {
    number_and_unit const q = read_number(text, w);
    if (q.unit.empty()) refuse("the unit is missing; " + w.text());
    return q;
}

/// @param table an array of rows with `spellings`
/// @param unit  a unit, squeezed
/// @return the row that has this spelling, or null
template <class Table>
auto const* find_unit(Table const& table, std::string const& unit) {
    auto const found = std::find_if(std::begin(table), std::end(table), [&](auto const& row) {
        return std::string(" ").append(row.spellings).append(" ").find(" " + unit + " ") != std::string::npos;
    });
    return found == std::end(table) ? nullptr : &*found;
}

/// @param unit a unit, squeezed
/// @return the letter of a temperature scale, or 0
inline char temperature_scale(std::string const& unit) {
    if (unit == "c" || unit == "degc" || unit == "celsius") return 'c';
    if (unit == "f" || unit == "degf" || unit == "fahrenheit") return 'f';
    if (unit == "k" || unit == "kelvin") return 'k';
    return 0;
}

/// @param number on the scale
/// @param scale  letter of the scale
/// @return the temperature
constexpr units::temperature temperature_of(double number, char scale) {
    return scale == 'c' ? celsius(number) : scale == 'f' ? fahrenheit(number) : kelvin(number);
}

/// The basis of a strength in a text.
enum class basis { volume, mass, moles, proof, concentration, density, gravity };

/// The notation of a strength in a text: its basis and its reference.
struct notation {
    basis kind = basis::volume;  ///< what the number means
    double factor = 1.0;         ///< the unit in percent, degrees of proof, g/100 mL or kg/m3
    units::temperature reference = celsius(20.0);  ///< of the volume, the density, or the instrument
    gravity_reference gravity = {};                ///< for specific gravity
    bool referenced = false;                       ///< whether the reference was written or is the default
};

/// The spellings of one notation, as unit_names.
struct notation_names {
    std::string_view spellings;  ///< of the unit
    basis kind;                  ///< what the number means
    double factor;               ///< as in a notation
};

/// The notations of strengths; and specific gravity, which begins with "sg".
inline constexpr notation_names notations[] = {
    {"%vol vol% %v/v %abv abv %byvolume l/hl", basis::volume, 1.0},
    {"%mass mass% %m/m %w/w wt% %wt %bymass %byweight", basis::mass, 1.0},
    {"%mol mol%", basis::moles, 1.0},
    {"mol/mol", basis::moles, 100.0},
    {"proof usproof", basis::proof, 1.0},
    {"g/100ml", basis::concentration, 1.0},
    {"g/l", basis::concentration, 0.1},
    {"kg/m3", basis::density, 1.0},
    {"g/cm3 g/ml kg/l", basis::density, 1000.0},
};

inline constexpr wanted a_strength{
    "a strength",
    "%vol, %mass, %mol, mol/mol, proof (US), g/100 mL, g/L, L/hL, kg/m3, g/cm3 or sg"};        ///< expected
inline constexpr wanted a_temperature{"a temperature", "C, F or K"};                           ///< expected
inline constexpr wanted a_gravity{"a specific gravity", "sg, sg 20/20 C, sg 60/60 F in air"};  ///< expected

/// The quantity that a text must have.
/// @tparam Quantity one of the quantities of aqueth::units
template <quantity_with_units Quantity>
inline constexpr wanted a_quantity{unit_table<Quantity>::what, unit_table<Quantity>::names};

/// How many letters must be changed, added or left out to turn one word into another (Levenshtein).
/// @param a a word
/// @param b another
/// @return their count
inline std::size_t letters_between(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    for (std::size_t j = 0; j <= b.size(); ++j) row[j] = j;
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = std::exchange(row[0], i);
        for (std::size_t j = 1; j <= b.size(); ++j) {
            std::size_t const changed = diagonal + (a[i - 1] == b[j - 1] ? 0 : 1);
            diagonal = std::exchange(row[j], (std::min)({row[j] + 1, row[j - 1] + 1, changed}));
        }
    }
    return row.back();
}

/// @param unit a unit that is not known, squeezed
/// @param w    what is expected
/// @return the unit expected that is written most like it, or nothing if none is
inline std::string nearest_unit(std::string const& unit, wanted const& w) {
    std::string nearest;
    std::size_t const most = unit.size() < 3 || unit.size() > 30 ? 0 : unit.size() < 6 ? 1 : 2;
    std::size_t fewest = most + 1;
    auto const look_at = [&](auto const& rows) {
        for (auto const& row : rows) {
            for (std::string_view rest = row.spellings; !rest.empty();) {
                auto const end = (std::min)(rest.find(' '), rest.size());
                std::string_view const word = rest.substr(0, end);
                rest.remove_prefix((std::min)(end + 1, rest.size()));
                std::size_t const between = letters_between(unit, word);
                if (between >= fewest || word.size() < 3) continue;
                fewest = between;
                nearest = word;
            }
        }
    };
    auto const look_in = [&]<class Quantity>(std::type_identity<Quantity>) {
        bool const is_expected = w.what.find(unit_table<Quantity>::what) != std::string_view::npos ||
                                 w.units.find(unit_table<Quantity>::names) != std::string_view::npos;
        if (is_expected) look_at(unit_table<Quantity>::rows);
    };
    look_in(std::type_identity<units::volume>());
    look_in(std::type_identity<units::mass>());
    look_in(std::type_identity<units::pressure>());
    look_in(std::type_identity<units::length>());
    look_in(std::type_identity<units::time>());
    look_in(std::type_identity<units::energy>());
    look_in(std::type_identity<units::power>());
    if (w.what == a_strength.what || w.units == a_strength.units) look_at(notations);
    if (w.what == a_temperature.what) {
        struct {
            std::string_view spellings;
        } constexpr scales[] = {{"celsius fahrenheit kelvin"}};
        look_at(scales);
    }
    return nearest;
}

/// @param unit a unit that is not one of the quantity expected
/// @param w    what is expected
/// @throws text_error always: with the quantity that the unit belongs to, if it is known
[[noreturn]] inline void refuse_unit(std::string_view unit, wanted const& w) {
    std::string const text = squeezed(unit);
    std::string_view is;
    auto const look_in = [&]<class... Quantity>(std::type_identity<Quantity>...) {
        ((find_unit(unit_table<Quantity>::rows, text) ? void(is = unit_table<Quantity>::what) : void()), ...);
    };
    look_in(std::type_identity<units::power>(), std::type_identity<units::energy>(),
            std::type_identity<units::time>(), std::type_identity<units::volume>(),
            std::type_identity<units::mass>());
    if (text.starts_with("sg") || find_unit(notations, text)) is = "a strength";
    if (temperature_scale(text)) is = "a temperature";
    look_in(std::type_identity<units::pressure>(), std::type_identity<units::length>());
    std::string const shown = "'" + printable(unit) + "'";
    if (!is.empty()) refuse(shown + " is the unit of " + std::string(is) + "; " + w.text());
    std::string const nearest = nearest_unit(text, w);
    std::string const hint = nearest.empty() ? "" : "; did you mean " + nearest + "?";
    refuse("unknown unit " + shown + hint + (nearest.empty() ? "; " : " ") + w.text());
}

/// A unit of a quantity at the head of a text, and what is behind it.
struct unit_at_head {
    unit_names const* unit;  ///< null if it is none of the quantity
    std::string_view rest;   ///< begins with a digit or is empty
};

/// @tparam Quantity one of the quantities of aqueth::units
/// @param text the text behind a number: "L", "lb 6 oz"
/// @return the unit; the text behind it begins with the next number, if there is one
template <quantity_with_units Quantity>
unit_at_head find_unit_at_head(std::string_view text) {
    auto const& rows = unit_table<Quantity>::rows;
    if (unit_names const* unit = find_unit(rows, squeezed(text))) return {unit, {}};
    for (std::size_t at = 1; at < text.size(); ++at) {
        if (!is_digit(text[at]) || is_digit(text[at - 1])) continue;  // "m3" is not the unit m of a volume
        if (unit_names const* unit = find_unit(rows, squeezed(text.substr(0, at))))
            return {unit, text.substr(at)};
    }
    return {nullptr, {}};
}

/// @param text a number with one of the units of a quantity, or a sum of them: "4 lb 6 oz"
/// @param w    what is expected, for messages
/// @return the quantity; its range is not checked
/// @throws text_error if the text is none
template <quantity_with_units Quantity>
Quantity read(std::string_view text, wanted const& w = a_quantity<Quantity>) {
    double sum = 0.0, before = 0.0;
    for (bool first = true;; first = false) {
        number_and_unit const q = read_quantity(text, w);
        auto const [unit, rest] = find_unit_at_head<Quantity>(q.unit);
        if (!unit) refuse_unit(q.unit, w);
        double const part = q.number * unit->si;
        if (!first && !(unit->si < before && part < before))
            refuse(
                "each part of a sum must have a smaller unit and be below one of the unit before: 4 lb 6 oz");
        if ((!first || !rest.empty()) && q.number < 0.0) refuse("the parts of a sum cannot be negative");
        sum += part;
        if (rest.empty()) return Quantity::from_value(sum);
        before = unit->si;
        text = rest;
    }
}

/// @param text "20 °C", "68 F", "293.15 K"
/// @return the temperature; its range is not checked
/// @throws text_error if the text is none
inline units::temperature read_temperature(std::string_view text) {
    number_and_unit const q = read_quantity(text, a_temperature);
    char const scale = temperature_scale(squeezed(q.unit));
    if (!scale) refuse_unit(q.unit, a_temperature);
    units::temperature const t = temperature_of(q.number, scale);
    // A finite number of another scale may be infinite in degrees Celsius.
    if (!std::isfinite(t.celsius())) refuse("the number is too large; " + a_temperature.text());
    return t;
}

/// @param text any text
/// @return the temperature, as the reference of a strength
/// @throws text_error if the text is none
/// @throws refusal if the temperature is outside -20 to 40 °C
inline units::temperature read_reference_temperature(std::string_view text) {
    units::temperature const t = read_temperature(text);
    namespace r22 = correlation::oiml_r22;
    require_range("input", argument::temperature, t.celsius(), "°C", r22::lowest_celsius,
                  r22::highest_celsius, "OIML R 22");
    return t;
}

// --- strengths ---------------------------------------------------------------------------------------------

/// @param text "20/20 C", "60 F/60 F", both squeezed; "inair" at the end; empty for 20/20 °C in vacuo
/// @return the reference
/// @throws text_error if the text is none
inline gravity_reference read_gravity_reference(std::string text) {
    gravity_reference reference;
    for (std::string_view const ending : {"inair", "invacuo"}) {
        if (!text.ends_with(ending)) continue;
        reference.weighed_in = ending == "inair" ? medium::air : medium::vacuum;
        text.erase(text.size() - ending.size());
    }
    if (text.empty()) return reference;
    auto const slash = text.find('/');
    if (slash == std::string::npos) refuse(a_gravity.text());
    number_and_unit const water = read_quantity(std::string_view(text).substr(slash + 1), a_gravity);
    number_and_unit const liquid = read_number(std::string_view(text).substr(0, slash), a_gravity);
    char const water_scale = temperature_scale(std::string(water.unit));
    char const liquid_scale = liquid.unit.empty() ? water_scale : temperature_scale(std::string(liquid.unit));
    if (!water_scale || !liquid_scale) refuse(a_gravity.text());
    reference.liquid = temperature_of(liquid.number, liquid_scale);
    reference.water = temperature_of(water.number, water_scale);
    return reference;
}

/// @param text "%vol", "%vol at 60 F", "proof", "kg/m3 at 15 C", "sg 60/60 F in air"
/// @return the notation
/// @throws text_error if the text is none
/// @throws refusal if its temperature is outside -20 to 40 °C
inline notation read_notation(std::string_view text) {
    auto at = text.find(" at ");
    auto skip = at == std::string_view::npos ? std::size_t{1} : std::size_t{4};
    if (at == std::string_view::npos) at = text.find('@');
    std::string const unit = squeezed(text.substr(0, at));
    notation result;
    if (unit.starts_with("sg")) {
        if (at != std::string_view::npos) refuse("write the two temperatures after 'sg': sg 20/20 C");
        result.kind = basis::gravity;
        result.gravity = read_gravity_reference(unit.substr(2));
        result.reference = result.gravity.liquid;
        result.referenced = unit != "sg";
        return result;
    }
    if (unit == "%") refuse("'%' alone is ambiguous: write %vol, %mass or %mol");
    auto const* known = find_unit(notations, unit);
    if (!known) refuse_unit(trimmed(text.substr(0, at)), a_strength);
    result.kind = known->kind;
    result.factor = known->factor;
    if (known->kind == basis::proof) result.reference = at_60_fahrenheit::temperature();
    if (at != std::string_view::npos) {
        units::temperature const reference = read_reference_temperature(text.substr(at + skip));
        if (known->kind == basis::proof && reference != result.reference) {
            refuse("US proof is defined at 60 F and at no other temperature");
        }
        result.reference = reference;
        result.referenced = true;
    }
    return result;
}

/// Calls f with the tag of a reference temperature.
/// @param t reference temperature
/// @param f callable: a tag such as at_20_celsius -> the result
/// @return what f returns
/// @throws text_error if no tag has this temperature
template <class F>
auto with_reference(units::temperature t, F const& f) {
    if (t == at_20_celsius::temperature()) return f(at_20_celsius{});
    if (t == at_15_celsius::temperature()) return f(at_15_celsius{});
    if (t == at_15_56_celsius::temperature()) return f(at_15_56_celsius{});
    if (t == at_60_fahrenheit::temperature()) return f(at_60_fahrenheit{});
    refuse("the reference temperature must be 20 C, 15 C, 15.56 C or 60 F");
}

/// @tparam Scale the library's type for the notation
/// @param n      a notation
/// @param number a number in that notation
/// @return the number as that type
/// @throws refusal if the number is outside the range of the type
template <class Scale>
Scale mark(notation const& n, double number) {
    double const value = number * n.factor;
    if constexpr (std::same_as<Scale, units::mass_density>) {
        return value * kilogram_per_cubic_metre;
    } else if constexpr (requires { Scale(0.0).percent(); }) {
        return Scale(value / 100.0);
    } else {
        return Scale(value);
    }
}

/// @param text "45 % vol", "45 % vol at 15 °C", "80 proof", "0.95 sg 20/20 C"
/// @return the strength; of a density or a specific gravity, the mass fraction
/// @throws text_error if the text is none
/// @throws refusal if the strength is outside its range
inline any_strength read_strength(std::string_view text) {
    number_and_unit const q = read_quantity(text, a_strength);
    notation const n = read_notation(q.unit);
    if (n.referenced && (n.kind == basis::mass || n.kind == basis::moles)) {
        refuse(std::string("a ") + (n.kind == basis::mass ? "mass" : "mole") +
               " fraction does not depend on temperature: leave the reference out");
    }
    auto const result = [&]() -> any_strength {
        switch (n.kind) {
        case basis::volume:
            return with_reference(n.reference, [&](auto tag) -> any_strength {
                return mark<basic_volume_fraction<decltype(tag)>>(n, q.number);
            });
        case basis::concentration:
            return with_reference(n.reference, [&](auto tag) -> any_strength {
                return mark<basic_mass_concentration<decltype(tag)>>(n, q.number);
            });
        case basis::mass: return mark<mass_fraction>(n, q.number);
        case basis::moles: return mark<mole_fraction>(n, q.number);
        case basis::proof: return mark<us_proof>(n, q.number);
        case basis::density:
            return mass_fraction_from_density(mark<units::mass_density>(n, q.number), n.reference);
        case basis::gravity: break;
        }
        return mass_fraction_from_specific_gravity(mark<specific_gravity>(n, q.number), n.gravity);
    }();
    static_cast<void>(to<mass_fraction>(result));  // a mass concentration may exceed that of pure ethanol
    return result;
}

// --- liquids and parcels -----------------------------------------------------------------------------------

/// @param text       parts
/// @param separators what can stand between them
/// @return where the first part ends: before a separator, which a decimal comma is not; else npos
inline std::size_t end_of_part(std::string_view text, std::string_view separators) {
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (separators.find(text[at]) == std::string_view::npos) continue;
        std::size_t number = at;  // where the digits before a comma begin
        while (number > 0 && is_digit(text[number - 1])) --number;
        bool const between_digits = number < at && at + 1 < text.size() && is_digit(text[at + 1]);
        if (number > 0 && (text[number - 1] == '-' || text[number - 1] == '+')) --number;
        bool const is_head = number == 0 || text[number - 1] == ' ';  // "m3,40 %vol" has no decimal comma
        if (text[at] != ',' || !between_digits || !is_head) return at;
    }
    return std::string_view::npos;
}

/// @param text  parts separated by commas
/// @param count how many
/// @param what  the parts, for messages
/// @return the parts
/// @throws text_error if there are more or fewer
inline std::vector<std::string_view> parts_of(std::string_view text, std::size_t count,
                                              std::string_view what) {
    std::vector<std::string_view> parts;
    for (std::string_view rest = text;;) {
        auto const comma = end_of_part(rest, ",");
        parts.push_back(rest.substr(0, comma));
        if (comma == std::string_view::npos) break;
        rest.remove_prefix(comma + 1);
    }
    if (parts.size() != count) refuse(std::string("expected ").append(what));
    return parts;
}

/// @param text "40 % vol, 20 °C"
/// @return the liquid
/// @throws text_error if the text is none
/// @throws refusal if strength or temperature is outside its range
inline liquid read_liquid(std::string_view text) {
    auto const parts = parts_of(text, 2, "strength, temperature: 40 % vol, 20 C");
    return liquid::of(to<mass_fraction>(read_strength(parts[0])), read_temperature(parts[1]));
}

/// @param text "3 L, 40 % vol, 20 °C" or "2.8 kg, 40 % vol, 20 °C": a volume at that temperature, or a true
///             mass
/// @return the parcel
/// @throws text_error if the text is none
/// @throws refusal if amount, strength or temperature is outside its range
inline parcel read_parcel(std::string_view text) {
    auto const parts = parts_of(text, 3, "amount, strength, temperature: 3 L, 40 % vol, 20 C");
    std::string const amounts =
        std::string(unit_table<units::volume>::names).append("; ").append(unit_table<units::mass>::names);
    wanted const w{"a volume or a mass", amounts};
    std::string_view const unit = read_quantity(parts[0], w).unit;
    auto const strength = to<mass_fraction>(read_strength(parts[1]));
    units::temperature const t = read_temperature(parts[2]);
    if (find_unit_at_head<units::volume>(unit).unit)
        return parcel::of(read<units::volume>(parts[0], w), strength, t);
    return parcel::of(read<units::mass>(parts[0], w), strength, t);
}

/// What `parse` can read.
template <class T>
concept readable = has_text<T> || std::same_as<T, any_strength> || std::same_as<T, gravity_reference>;

}  // namespace text

/// Reads a quantity as people write it, the same in every locale: "20 °C", "68 F", "45 % vol", "45 %vol at
/// 60 F", "80 proof", "3.5 L", "96 kPa", "12 plato", "1.05 sg", "3 L, 40 % vol, 20 °C". Reads what `text_of`
/// writes. Case and blanks in a unit do not matter.
/// @tparam Quantity units::temperature, a quantity of aqueth::units, a strength in any basis (the text can
///                  have another), any_strength (in the basis of the text), specific_gravity,
///                  gravity_reference, an extract, liquid or parcel
/// @param text number with its unit; several, separated by commas, for a liquid or a parcel
/// @return the quantity
/// @throws text_error if the text is no such quantity
/// @throws refusal if a strength, gravity, liquid or parcel is outside its range. The ranges of
///         temperatures and of quantities of aqueth::units are those of the functions that take them
template <text::readable Quantity>
[[nodiscard]] Quantity parse(std::string_view text) {
    if constexpr (text::quantity_with_units<Quantity>) {
        return text::read<Quantity>(text);
    } else if constexpr (std::same_as<Quantity, units::temperature>) {
        return text::read_temperature(text);
    } else if constexpr (std::same_as<Quantity, any_strength>) {
        return text::read_strength(text);
    } else if constexpr (strength_basis<Quantity>) {
        return to<Quantity>(text::read_strength(text));
    } else if constexpr (std::same_as<Quantity, gravity_reference>) {
        std::string const unit = text::squeezed(text);
        return text::read_gravity_reference(unit.starts_with("sg") ? unit.substr(2) : unit);
    } else if constexpr (std::same_as<Quantity, specific_gravity>) {
        text::number_and_unit const q = text::read_quantity(text, text::a_gravity);
        if (text::squeezed(q.unit) != "sg")
            text::refuse("expected a specific gravity with its unit sg alone: 1.05 sg");
        return specific_gravity(q.number);
    } else if constexpr (std::same_as<Quantity, liquid>) {
        return text::read_liquid(text);
    } else if constexpr (std::same_as<Quantity, parcel>) {
        return text::read_parcel(text);
    } else {
        text::wanted const w{"an extract", "plato"};
        text::number_and_unit const q = text::read_quantity(text, w);
        std::string const unit = text::squeezed(q.unit);
        if (unit != "plato" && unit != "p") text::refuse_unit(q.unit, w);
        return Quantity(q.number);
    }
}

}  // namespace aqueth::inline AQUETH_ABI
