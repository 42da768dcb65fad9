// SPDX-License-Identifier: BSL-1.0
#include "quantities.hpp"

#include <charconv>
#include <cmath>
#include <system_error>

namespace program {

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7f; }

/// How many bytes at the head of a text are one character of UTF-8 that XML takes, too; 0 if they are none.
static std::size_t length_of_character(std::string_view text) {
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

std::string well_formed(std::string_view text) {
    std::string result;
    while (!text.empty()) {
        std::size_t const length = length_of_character(text);
        result += length == 0 ? std::string_view("\xEF\xBF\xBD") : text.substr(0, length);
        text.remove_prefix(length == 0 ? 1 : length);
    }
    return result;
}

std::string printable(std::string_view any_text) {
    std::string const text = well_formed(any_text);
    std::size_t longest = 60;
    while (longest < text.size() && (static_cast<unsigned char>(text[longest]) & 0xc0) == 0x80)
        --longest;  // UTF-8
    std::string safe = text.substr(0, longest);
    for (char& c : safe) {
        if (is_control(c)) c = '?';
    }
    return text.size() > longest ? safe + "..." : safe;
}

std::string label(given const& g) { return fmt::format("{} '{}'", g.name, printable(g.text)); }

refusal named_after(given const& g, refusal const& e) {
    std::string_view const text = trimmed(g.text);
    bool const fahrenheits = e.unit() == "°C" && !text.empty() && (text.back() == 'F' || text.back() == 'f');
    auto const shown = [&](double value) { return fahrenheits ? 32.0 + 1.8 * value : value; };
    return {label(g),         {e.code(), e.argument()}, shown(e.value()), fahrenheits ? "°F" : e.unit(),
            shown(e.lower()), shown(e.upper()),         e.reason()};
}

void refuse(given const& g, std::string const& why) { throw bad_input(fmt::format("{}: {}", label(g), why)); }

bool is_digit(char c) { return c >= '0' && c <= '9'; }  // std::isdigit asks the locale

std::string_view trimmed(std::string_view text) {
    constexpr char const* blanks = " \t\r\n";  // a script with the line ends of another system leaves a CR
    auto const first = text.find_first_not_of(blanks);
    if (first == std::string_view::npos) return {};
    return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

bool is_us_customary(std::string_view text) {
    static constexpr std::string_view names =
        " proof gal gallon gallons fl lb lbs pound pounds oz ounce ounces ";
    auto const is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    bool behind_a_number = false;
    for (std::size_t at = 0; at < text.size();) {
        if (!is_letter(text[at])) {
            if (text[at] != ' ') behind_a_number = is_digit(text[at]) || text[at] == '.';
            ++at;
            continue;
        }
        std::size_t const begin = at;
        while (at < text.size() && is_letter(text[at])) ++at;
        std::string const word = squeezed(text.substr(begin, at - begin));
        bool const ends = at == text.size() || text[at] == ' ' || text[at] == ',' || text[at] == ';';
        bool const is_unit = names.find(" " + word + " ") != std::string_view::npos;
        if (ends && is_unit && (behind_a_number || text == word)) return true;
        behind_a_number = behind_a_number && word == "us";
    }
    return false;
}

std::string squeezed(std::string_view unit) {
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

char temperature_scale(std::string const& unit) {
    if (unit == "c" || unit == "degc" || unit == "celsius") return 'c';
    if (unit == "f" || unit == "degf" || unit == "fahrenheit") return 'f';
    if (unit == "k" || unit == "kelvin") return 'k';
    return 0;
}

units::temperature temperature_of(double number, char scale) {
    return scale == 'c' ? celsius(number) : scale == 'f' ? fahrenheit(number) : kelvin(number);
}

double written(double degrees) { return std::abs(degrees) < 1e-9 ? 0.0 : degrees; }

void refuse_unit(given const& g, std::string_view unit, wanted const& w) {
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

number_and_unit read_number(given const& g, std::string_view text, wanted const& w) {
    text = trimmed(text);
    if (text.empty()) refuse(g, "the value is empty; " + w.text());
    if (text.front() == '+') text.remove_prefix(1);
    auto const digit = [](std::string_view s) { return !s.empty() && is_digit(s[0]); };
    std::string_view const magnitude = text.substr(text.starts_with('-') ? 1 : 0);
    if (!digit(magnitude) && !(magnitude.starts_with('.') && digit(magnitude.substr(1)))) {
        refuse(g, "not a number; " + w.text());  // also "nan" and "inf", which from_chars would take
    }
    double number = 0.0;
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), number);
    if (error == std::errc::result_out_of_range)
        refuse(g, "the number is too large or too small; " + w.text());
    std::string_view const unit = trimmed(text.substr(static_cast<std::size_t>(end - text.data())));
    if (digit(unit) || unit.starts_with(',') || unit.starts_with('.') || unit.starts_with('\'')) {
        refuse(g, "write numbers with a decimal point and no thousands separator: 43.5, 1500");
    }
    return {number, unit};
}

number_and_unit read_quantity(given const& g, std::string_view text, wanted const& w) {
    number_and_unit const q = read_number(g, text, w);
    if (q.unit.empty()) refuse(g, "the unit is missing; " + w.text());
    return q;
}

units::temperature read_any_temperature(given const& g, std::string_view text) {
    wanted const w{"a temperature", temperature_units};
    number_and_unit const q = read_quantity(g, text, w);
    char const scale = temperature_scale(squeezed(q.unit));
    if (!scale) refuse_unit(g, q.unit, w);
    units::temperature const t = temperature_of(q.number, scale);
    // what is a number in another unit may be none in celsius
    if (!std::isfinite(t.celsius())) refuse(g, "the number is too large; " + w.text());
    return t;
}

units::temperature read_temperature(given const& g, std::string_view text) {
    units::temperature const t = read_any_temperature(g, text);
    namespace r22 = correlation::oiml_r22;
    on_behalf_of(g, [&] {
        return require_range("input", "temperature", t.celsius(), "°C", r22::lowest_celsius,
                             r22::highest_celsius, "OIML R 22");
    });
    return t;
}

units::temperature read_any_temperature(given const& g) { return read_any_temperature(g, g.text); }

units::temperature read_temperature(given const& g) { return read_temperature(g, g.text); }

units::temperature read_water_temperature(given const& g) {
    units::temperature const t = read_any_temperature(g);
    on_behalf_of(g, [&] { return density(mass_fraction(0.0), t); });
    return t;
}

amount read_amount(given const& g, std::string_view text, bool volume_only) {
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

amount read_amount(given const& g) { return read_amount(g, g.text); }

units::volume read_volume(given const& g) { return std::get<units::volume>(read_amount(g, g.text, true)); }

parcel make_parcel(amount const& how_much, mass_fraction w, units::temperature t) {
    if (auto const* volume = std::get_if<units::volume>(&how_much)) return parcel::of(*volume, w, t);
    return parcel::of(mass_from_balance(std::get<units::mass>(how_much), density(w, t)), w, t);
}

parcel make_parcel(amount const& how_much, mass_fraction w, given const& temperature) {
    units::temperature const t = read_any_temperature(temperature);
    return on_behalf_of(temperature, [&] { return make_parcel(how_much, w, t); });
}

units::pressure read_pressure(given const& g) {
    return read_in_si(g, pressures, {"a pressure", pressure_units}) * newton_per_square_metre;
}

units::length read_altitude(given const& g) {
    return read_in_si(g, altitudes, {"an altitude", altitude_units}) * metre;
}

units::pressure read_pressure(surroundings const& air) {
    if (air.pressure.present && air.altitude.present) throw bad_input("give either --pressure or --altitude");
    if (air.pressure.present) return read_pressure(air.pressure);
    return on_behalf_of(air.altitude, [&] { return pressure_at_altitude(read_altitude(air.altitude)); });
}

double read_share(given const& g, std::string_view what) {
    wanted const w{what, "%, or a plain number up to 1"};
    number_and_unit const q = read_number(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    if (!unit.empty() && unit != "%") refuse_unit(g, q.unit, w);
    return unit.empty() ? q.number : q.number / 100.0;
}

int read_count(given const& g, int most, int least) {
    double count = 0.0;  // "1e6" is a whole number as well
    std::string_view const text = trimmed(g.text);
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    bool const is_number = error == std::errc() && end == text.data() + text.size();
    if (!is_number || !(count >= least && count <= most) || count != std::floor(count)) {
        refuse(g, fmt::format("expected a whole number from {} to {}", least, most));
    }
    return static_cast<int>(count);
}

side read_side(given const& g) {
    wanted const w{"a range", "'40 to 60 %vol by 5'"};
    std::string_view text = trimmed(g.text);
    double step = 1.0;
    auto const by = text.rfind(" by ");
    if (by != std::string_view::npos && text.find_first_of("0123456789", by) != std::string_view::npos) {
        number_and_unit const q = read_number(g, text.substr(by + 4), w);
        if (!q.unit.empty()) refuse(g, "write the step without a unit: it has the unit of the range");
        if (!(q.number > 0.0)) refuse(g, "the step must be above 0");
        step = q.number;
        text = text.substr(0, by);
    }
    auto const to = text.find(" to ");
    bool const single = to == std::string_view::npos;
    number_and_unit const last = read_quantity(g, single ? text : text.substr(to + 4), w);
    number_and_unit const first = single ? last : read_number(g, text.substr(0, to), w);
    if (!first.unit.empty() && first.unit != last.unit)
        refuse(g, "write the unit once, after the second number");
    if (!(first.number <= last.number)) refuse(g, "the first number of a range must not exceed the second");
    double const steps = std::floor((last.number - first.number) / step * (1.0 + 1e-12) + 1e-9);
    if (!(steps < 10000.0)) refuse(g, "a range can have at most 10000 values");
    side result{std::string(last.unit), {}, {}};
    for (int k = 0; k <= static_cast<int>(steps); ++k) {
        result.numbers.push_back(first.number + k * step);
        result.values.push_back({g.name, fmt::format("{:.10g} {}", result.numbers.back(), last.unit), true});
    }
    return result;
}

}  // namespace program
