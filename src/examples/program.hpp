// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// What the programs share: quantities as people write them, and one way to answer or to refuse.

#include <aqueth/aqueth.hpp>
#include <aqueth/correlation/source.hpp>

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cerrno>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <cstring>
#include <deque>
#include <iterator>
#include <span>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <system_error>
#include <utility>
#include <variant>
#include <vector>

namespace program {

using namespace aqueth;
using json = nlohmann::ordered_json;

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

// --- numbers with units ------------------------------------------------------------------------------------

inline constexpr std::string_view volume_units = "mL, cL, dL, L, hL, m3, fl oz or gal (US), imp gal";
inline constexpr std::string_view mass_units = "g, kg, oz, lb";
inline constexpr std::string_view temperature_units = "C, F or K";
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

[[noreturn]] inline void refuse_unit(given const& g, std::string_view unit, wanted const& w) {
    std::string const text = squeezed(unit);
    std::string_view is;
    if (find_unit(volumes, text)) is = "a volume";
    if (find_unit(masses, text)) is = "a mass";
    if (text.starts_with("sg") || find_unit(notations, text)) is = "a strength";
    if (temperature_scale(text)) is = "a temperature";
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

inline units::temperature read_temperature(given const& g, std::string_view text) {
    wanted const w{"a temperature", temperature_units};
    number_and_unit const q = read_quantity(g, text, w);
    char const scale = temperature_scale(squeezed(q.unit));
    if (!scale) refuse_unit(g, q.unit, w);
    units::temperature const t = temperature_of(q.number, scale);
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
    units::temperature const t = read_temperature(g);
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

inline int read_count(given const& g, int most) {
    int count = 0;
    std::string_view const text = trimmed(g.text);
    auto const [end, error] = std::from_chars(text.data(), text.data() + text.size(), count);
    if (error != std::errc() || end != text.data() + text.size() || count < 1 || count > most) {
        refuse(g, fmt::format("expected a whole number from 1 to {}", most));
    }
    return count;
}

// --- strengths ---------------------------------------------------------------------------------------------

/// A strength in the basis it was written in, so that messages can stay in that basis.
using strength =
    std::variant<volume_fraction, basic_volume_fraction<at_15_celsius>,
                 basic_volume_fraction<at_15_56_celsius>, basic_volume_fraction<at_60_fahrenheit>,
                 mass_fraction, mole_fraction, us_proof, mass_concentration,
                 basic_mass_concentration<at_15_celsius>, basic_mass_concentration<at_15_56_celsius>,
                 basic_mass_concentration<at_60_fahrenheit>>;

inline mass_fraction composition(strength const& s) {
    return std::visit([](auto const& each) { return to<mass_fraction>(each); }, s);
}

/// Temperatures of "20/20 C", "60 F/60 F"; "in air" at the end.
inline gravity_reference read_gravity_reference(given const& g, std::string text) {
    wanted const w{"a specific gravity", "sg, sg 20/20 C, sg 60/60 F in air"};
    gravity_reference reference;
    for (std::string_view const ending : {"inair", "invacuo"}) {
        if (!text.ends_with(ending)) continue;
        reference.weighed_in = ending == "inair" ? medium::air : medium::vacuum;
        text.resize(text.size() - ending.size());
    }
    if (text.empty()) return reference;
    auto const slash = text.find('/');
    if (slash == std::string::npos) refuse(g, w.text());
    number_and_unit const water = read_quantity(g, std::string_view(text).substr(slash + 1), w);
    number_and_unit const liquid = read_number(g, std::string_view(text).substr(0, slash), w);
    char const water_scale = temperature_scale(std::string(water.unit));
    char const liquid_scale = liquid.unit.empty() ? water_scale : temperature_scale(std::string(liquid.unit));
    if (!water_scale || !liquid_scale) refuse(g, w.text());
    reference.liquid = temperature_of(liquid.number, liquid_scale);
    reference.water = temperature_of(water.number, water_scale);
    return reference;
}

/// Reads "%vol", "%vol at 60 F", "proof", "kg/m3 at 15 C", "sg 60/60 F in air".
inline notation read_notation(given const& g, std::string_view text) {
    wanted const w{"a strength", strength_units};
    auto at = text.find(" at ");
    auto skip = at == std::string_view::npos ? std::size_t{1} : std::size_t{4};
    if (at == std::string_view::npos) at = text.find('@');
    std::string const unit = squeezed(text.substr(0, at));
    notation result;
    if (unit.starts_with("sg")) {
        if (at != std::string_view::npos) refuse(g, "write the two temperatures behind 'sg': sg 20/20 C");
        result.kind = basis::gravity;
        result.gravity = read_gravity_reference(g, unit.substr(2));
        result.reference = result.gravity.liquid;
        result.referenced = unit != "sg";
        return result;
    }
    if (unit == "%") refuse(g, "'%' does not say of what: %vol, %mass or %mol");
    auto const* known = find_unit(notations, unit);
    if (!known) refuse_unit(g, trimmed(text.substr(0, at)), w);
    result.kind = known->kind;
    result.factor = known->factor;
    if (known->kind == basis::proof) result.reference = at_60_fahrenheit::temperature();
    if (at != std::string_view::npos) {
        units::temperature const reference = read_temperature(g, text.substr(at + skip));
        if (known->kind == basis::proof && reference != result.reference) {
            refuse(g, "US proof is defined at 60 F and at no other temperature");
        }
        result.reference = reference;
        result.referenced = true;
    }
    return result;
}

/// A temperature; 60 F keeps its name, because it stands for a convention.
inline std::string degrees(units::temperature t) {
    return t == at_60_fahrenheit::temperature() ? "60 °F" : fmt::format("{:.4g} °C", t.celsius());
}

/// A scale in words, with the temperature it is for.
inline std::string name_of(notation const& n) {
    switch (n.kind) {
    case basis::volume: return "% vol at " + degrees(n.reference);
    case basis::mass: return "% mass at " + degrees(n.reference);
    case basis::moles: return (n.factor == 1.0 ? "% mol at " : "mol/mol at ") + degrees(n.reference);
    case basis::proof: return "US proof";
    case basis::concentration: return "g/100 mL at " + degrees(n.reference);
    case basis::density: return (n.factor == 1.0 ? "kg/m3 at " : "g/cm3 at ") + degrees(n.reference);
    case basis::gravity: break;
    }
    return fmt::format("specific gravity {}/{} in {}", degrees(n.gravity.liquid), degrees(n.gravity.water),
                       n.gravity.weighed_in == medium::air ? "air" : "vacuo");
}

/// A number on a scale with the decimals that such a scale deserves.
inline std::string on_scale(notation const& n, double value) {
    bool const near_one = n.kind == basis::gravity || n.factor != 1.0;
    return fmt::format("{:.{}f}", value, near_one ? 5 : 2);
}

/// Whether two notations of one kind refer to the same conditions.
inline bool same_reference(notation const& a, notation const& b) {
    return a.reference == b.reference && a.gravity.water == b.gravity.water &&
           a.gravity.weighed_in == b.gravity.weighed_in;
}

/// Calls f with the tag of a reference temperature.
template <class F>
auto with_reference(given const& g, units::temperature t, F const& f) {
    if (t == at_20_celsius::temperature()) return f(at_20_celsius{});
    if (t == at_15_celsius::temperature()) return f(at_15_celsius{});
    if (t == at_15_56_celsius::temperature()) return f(at_15_56_celsius{});
    if (t == at_60_fahrenheit::temperature()) return f(at_60_fahrenheit{});
    refuse(g, "volumes are referred to 20 C, 15 C, 15.56 C or 60 F");
}

/// A number on a scale, as the library's type for it.
template <hydrometer_scale Scale>
Scale mark(notation const& n, double number) {
    double const value = number * n.factor;
    if constexpr (std::same_as<Scale, units::mass_density>) {
        return value * kilogram_per_cubic_metre;
    } else if constexpr (std::constructible_from<Scale, double> && requires { Scale(0.0).percent(); }) {
        return Scale(value / 100.0);
    } else {
        return Scale(value);
    }
}

/// The number that a mark has on a scale: the inverse of mark.
template <hydrometer_scale Scale>
double number_on(notation const& n, Scale const& mark) {
    if constexpr (strength_basis<Scale>) {
        return mark.number() / n.factor;
    } else {
        return mark.value() / n.factor;
    }
}

inline strength read_strength(given const& g) {
    number_and_unit const q = read_quantity(g, g.text, {"a strength", strength_units});
    notation const n = read_notation(g, q.unit);
    auto const read = [&]() -> strength {
        switch (n.kind) {
        case basis::volume:
            return with_reference(g, n.reference, [&](auto tag) -> strength {
                return mark<basic_volume_fraction<decltype(tag)>>(n, q.number);
            });
        case basis::concentration:
            return with_reference(g, n.reference, [&](auto tag) -> strength {
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
    };
    return on_behalf_of(g, [&] {
        strength const result = read();
        composition(result);  // there may be more than pure ethanol has
        return result;
    });
}

// --- instruments -------------------------------------------------------------------------------------------

/// The options that describe an instrument.
struct instrument {
    given const& scale;
    given const& glass;
};

inline units::cubic_expansion read_expansion(given const& g) {
    if (g.text == "soda-lime") return soda_lime_glass;
    if (g.text == "borosilicate") return borosilicate_glass;
    wanted const w{"soda-lime, borosilicate or a cubic expansion", "/K, like '25e-6 /K'"};
    number_and_unit const q = read_quantity(g, g.text, w);
    if (squeezed(q.unit) != "/k") refuse_unit(g, q.unit, w);
    return on_behalf_of(
        g, [&] { return require_range("input", "cubic expansion", q.number, "/K", 0.0, 3e-4) * per_kelvin; });
}

/// Calls f with the hydrometer that the options describe, and with its scale.
template <class F>
void with_instrument(instrument const& options, F const& f) {
    units::cubic_expansion const glass = read_expansion(options.glass);
    notation const n = read_notation(options.scale, options.scale.text);
    switch (n.kind) {
    case basis::volume:
        return with_reference(options.scale, n.reference, [&](auto tag) {
            f(hydrometer<basic_volume_fraction<decltype(tag)>>(glass), n);
        });
    case basis::concentration:
        return with_reference(options.scale, n.reference, [&](auto tag) {
            f(hydrometer<basic_mass_concentration<decltype(tag)>>(glass), n);
        });
    case basis::mass: return f(hydrometer<mass_fraction>(n.reference, glass), n);
    case basis::moles: return f(hydrometer<mole_fraction>(n.reference, glass), n);
    case basis::proof: return f(proof_hydrometer(glass), n);
    case basis::density: return f(density_hydrometer(n.reference, glass), n);
    case basis::gravity: return f(gravity_hydrometer(n.gravity, glass), n);
    }
}

/// Reads what a stem shows; the unit must be that of the scale.
template <hydrometer_scale Scale>
Scale read_mark(given const& g, notation const& scale) {
    std::string const is = "the scale is " + name_of(scale);
    number_and_unit const q = read_quantity(g, g.text, {"a reading", is});
    notation const n = read_notation(g, q.unit);
    if (n.kind != scale.kind || (n.referenced && !same_reference(n, scale))) {
        refuse(g, "not in the unit of the stem; " + is + " (--scale names another)");
    }
    return on_behalf_of(g, [&] { return mark<Scale>(n, q.number); });
}

inline parcel make_parcel(amount const& how_much, mass_fraction w, units::temperature t) {
    return std::visit([&](auto const& each) { return parcel::of(each, w, t); }, how_much);
}

// --- putting quantities on paper ---------------------------------------------------------------------------

/// A number with so many significant digits, never with an exponent.
inline std::string number(double value, int significant = 5) {
    if (std::abs(value) < 1e-12) return "0";  // rounding of a difference
    int const decimals = significant - 1 - static_cast<int>(std::floor(std::log10(std::abs(value))));
    return fmt::format("{:.{}f}", value, std::clamp(decimals, 0, 15));
}

/// Quantities in text: metric, or US customary.
struct wording {
    bool us = false;

    std::string mass(units::mass m) const {
        if (us) return m < pound ? number(in(m, ounce)) + " oz" : number(in(m, pound)) + " lb";
        return m < kilogram ? number(in(m, gram)) + " g" : number(in(m, kilogram)) + " kg";
    }
    std::string volume(units::volume v) const {
        if (us) {
            return v < us_gallon ? number(in(v, us_fluid_ounce)) + " US fl oz"
                                 : number(in(v, us_gallon)) + " US gal";
        }
        return v < litre ? number(in(v, millilitre)) + " mL" : number(in(v, litre)) + " L";
    }
    std::string temperature(units::temperature t) const {
        return us ? fmt::format("{:.4g} °F", t.fahrenheit()) : fmt::format("{:.4g} °C", t.celsius());
    }
    std::string strength(mass_fraction w) const {
        return us ? fmt::format("{:.2f} US proof", to<us_proof>(w).degrees())
                  : fmt::format("{:.2f} % vol", to<volume_fraction>(w).percent());
    }
    std::string alcohol(parcel const& p) const {
        return us ? number(p.proof_gallons()) + " proof gal" : volume(p.pure_alcohol()) + " at 20 °C";
    }
    std::string liquid(parcel const& p) const {
        std::string const at =
            fmt::format("{}, {} at {}", mass(p.mass()), volume(p.volume()), temperature(p.temperature()));
        return p.ethanol() > units::mass() ? at + ", " + strength(p.composition()) : at;
    }
};

inline json to_json(parcel const& p) {
    return {{"mass_kg", in(p.mass(), kilogram)},
            {"volume_L", in(p.volume(), litre)},
            {"temperature_C", p.temperature().celsius()},
            {"strength_percent_vol_20C", p.strength().percent()},
            {"strength_percent_mass", p.composition().percent()},
            {"pure_alcohol_L_20C", in(p.pure_alcohol(), litre)},
            {"proof_gallons", p.proof_gallons()}};
}

/// The text of an answer: first what to do, then rows of details.
class page {
public:
    template <class... T>
    void say(fmt::format_string<T...> format, T&&... arguments) {
        fmt::format_to(std::back_inserter(text_), format, std::forward<T>(arguments)...);
        text_ += '\n';
    }
    template <class... T>
    void row(std::string_view label, fmt::format_string<T...> format, T&&... arguments) {
        fmt::format_to(std::back_inserter(text_), "  {:<17} ", label);
        say(format, std::forward<T>(arguments)...);
    }
    void gap() { text_ += '\n'; }
    std::string const& text() const { return text_; }

private:
    std::string text_;
};

/// Rows and values that every mixing ends with.
inline void say_blend(page& text, wording const& in_words, blend const& b) {
    text.row("product", "{}", in_words.liquid(b.product));
    text.row("pure alcohol", "{}", in_words.alcohol(b.product));
    text.row("sum of the parts", "{} at {}", in_words.volume(b.sum_of_volumes),
             in_words.temperature(b.product.temperature()));
    text.row("contraction", "{} ({:.2f} %)", in_words.volume(b.contraction), b.contraction_percent());
}
inline json to_json(blend const& b) {
    return {{"product", to_json(b.product)},
            {"sum_of_volumes_L", in(b.sum_of_volumes, litre)},
            {"contraction_L", in(b.contraction, litre)},
            {"contraction_percent", b.contraction_percent()}};
}

inline constexpr char const* vapour_caution =
    "Caution: spirit and its vapour catch fire. No flame, spark or hot plate near; let in fresh air.";
inline constexpr char const* fresh_mixture_caution =
    "Caution: a fresh mixture is warm and full of fine bubbles and reads wrongly. Let it stand, stir,\n"
    "measure its temperature, and correct the reading (correct_reading).";

// --- the run of a program ----------------------------------------------------------------------------------

/// Who a program is.
struct about {
    char const* name;
    char const* purpose;
    /// What the stillhouse does, the command behind "$ ", the first line of the answer (a test compares).
    char const* example;
    std::vector<correlation::source> sources;
};

/// One run: options in, one answer out.
class session {
public:
    session(about const& who, int argc, char** argv)
        : about_(who), app_(who.purpose, who.name), argc_(argc), argv_(argv) {
        app_.set_help_flag("-h,--help", "Print this and exit");
        app_.set_version_flag("--version", fmt::format("{} (aqueth {})", who.name, aqueth::version),
                              "Print the version and exit");
        app_.add_flag_callback(
            "--sources", [] { throw sources_wanted(); },
            "Print the publications behind the figures and exit");
        app_.get_formatter()->column_width(30);
    }

    /// An option that takes one text.
    given& option(char const* name, char const* type, char const* description, char const* standard = "") {
        given& g = options_.emplace_back(given{name, standard});
        auto const store = [&g](std::string const& text) {
            if (text.starts_with("--")) throw bad_input(g.name + " needs a value");
            g.text = text;
            g.present = true;
        };
        std::string const ending = *standard ? fmt::format(" (else '{}')", standard) : "";
        last_ = app_.add_option_function<std::string>(name, store, description + ending)->type_name(type);
        return g;
    }
    given& required(char const* name, char const* type, char const* description) {
        given& g = option(name, type, description);
        last_->required();
        return g;
    }
    /// What stands in the command line without an option's name.
    given& argument(char const* name, char const* description) { return required(name, "", description); }
    /// An option that may be given any number of times.
    std::vector<given>& repeated(char const* name, char const* type, char const* description) {
        auto const store = [this, name](std::vector<std::string> const& texts) {
            for (std::string const& text : texts) repeats_.push_back({name, text, true});
        };
        app_.add_option_function<std::vector<std::string>>(name, store, description)
            ->type_name(type)
            ->required()
            ->expected(1)
            ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
        return repeats_;
    }
    instrument instrument_options() {
        given const& scale = option("--scale", "SCALE", "what is engraved on the stem", "%vol at 20 C");
        given const& glass =
            option("--glass", "GLASS", "soda-lime, borosilicate, or like '25e-6 /K'", "soda-lime");
        return {scale, glass};
    }
    void offer_us_units() { app_.add_flag("--us", us_, "text in lb, US gallons, °F and proof"); }
    void offer_csv() { app_.add_flag("--csv", csv_, "answer in CSV"); }

    void parse() {
        app_.add_flag("--json", json_, "answer in JSON, metric and in full precision");
        app_.footer(fmt::format(
            "Volumes: {}.\nMasses: {}. Temperatures: {}.\n"
            "Strengths: {}.\n"
            "They take a reference: '43 %vol at 60 F', '935 kg/m3 at 15 C', '0.9345 sg 60/60 F in air';\n"
            "without one it is 20 C (sg: 20/20 C in vacuo). Numbers have a decimal point.\n"
            "Masses are true masses; an ordinary balance, in air, shows 0.1 % less.\n"
            "Exit status: 0 answered, 2 cannot be answered as asked, 1 fault of the program.\n\n"
            "An example:\n{}\n\n{}\nThe law, local codes and licensed practice come first.",
            volume_units, mass_units, temperature_units, strength_units, about_.example, vapour_caution));
        app_.parse(argc_, argv_);
        if (json_ && csv_) throw bad_input("give either --json or --csv");
    }

    wording words() const { return {us_}; }

    /// The answer, in the form asked for; printed when the run is over.
    void answer(page const& text, json const& data, std::string const& csv = {}) {
        output_ = json_ ? data.dump(2) + "\n" : csv_ ? csv : text.text();
    }

    /// Runs the body; whatever happens becomes an exit status.
    template <class Body>
    int run(Body const& body) {
        try {
            body(*this);
            return print();
        } catch (CLI::ParseError const& error) {
            std::ostringstream out, err;
            if (app_.exit(error, out, err) != 0) return fail(2, error.what());
            output_ = out.str();
            return print();
        } catch (sources_wanted const&) {
            output_ = sources();
            return print();
        } catch (bad_input const& error) {
            return fail(2, error.what());
        } catch (range_error const& error) {
            return fail(2, error.what());
        } catch (std::exception const& error) {
            return fail(1, fmt::format("internal error: {}", error.what()));
        }
    }

private:
    struct sources_wanted {};

    int fail(int status, std::string message) const {
        for (char& c : message) c = is_control(c) ? ' ' : c;
        std::fputs(fmt::format("{}: {}\n", about_.name, message).c_str(),
                   stderr);  // fmt::print would throw if it is closed
        return status;
    }
    int print() const {
        bool const written = std::fwrite(output_.data(), 1, output_.size(), stdout) == output_.size();
        if (written && std::fflush(stdout) == 0) return 0;
        return fail(1, fmt::format("standard output cannot be written: {}", std::strerror(errno)));
    }
    std::string sources() const {
        page text;
        for (correlation::source const& each : about_.sources) {
            text.say("{}\n  valid: {}\n  accuracy: {}", each.citation, each.range, each.accuracy);
        }
        return text.text();
    }

    about const& about_;
    CLI::App app_;
    int argc_;
    char** argv_;
    CLI::Option* last_ = nullptr;
    std::deque<given> options_;  // never moves what the programs hold references to
    std::vector<given> repeats_;
    bool json_ = false, csv_ = false, us_ = false;
    std::string output_;
};

}  // namespace program
