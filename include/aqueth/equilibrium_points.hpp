// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/number_table.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// A point of an equilibrium table: the liquid, and the quantities measured with it.
struct equilibrium_point {
    mole_fraction liquid{0.0};                        ///< ethanol in the liquid
    std::optional<mole_fraction> vapour{};            ///< ethanol in the vapour
    std::optional<units::temperature> temperature{};  ///< boiling temperature
    std::optional<units::pressure> pressure{};        ///< absolute pressure
    std::size_t line = 0;                             ///< line of the text, from 1
};

/// A table of equilibrium as it was read.
struct [[nodiscard]] equilibrium_points {
    std::vector<equilibrium_point>
        points;                   ///< points with a vapour or a temperature, in the order of the lines
    std::size_t empty_lines = 0;  ///< lines with neither
    std::vector<std::string> ignored_columns{};  ///< names of columns that hold none of the four quantities
};

/// @param point    of a table
/// @param pressure of an isobar
/// @return whether the point was measured under that pressure, within 0.5 % (0.15 K), or has no pressure of
///         its own
[[nodiscard]] inline bool of_pressure(equilibrium_point const& point, units::pressure pressure) {
    return !point.pressure || std::abs(point.pressure->value() / pressure.value() - 1.0) < 0.005;
}

/// The columns of a table of equilibrium, for messages and for help.
inline constexpr char const* equilibrium_columns =
    "accepted are x or x_ethanol (liquid) and y or y_ethanol (vapour) for mole fractions, x and y with the "
    "ending "
    "_percent_mol, _percent_mass or _percent_vol; t or temperature in °C, or with _c, _k or _f; p or "
    "pressure with "
    "_kpa, _hpa, _mbar, _bar, _pa, _mmhg, _torr, _inhg, _atm or _psi";

namespace detail::points {

enum class quantity { liquid, vapour, temperature, pressure };

/// Units of a quantity, which the end of a column's name gives.
enum class unit {
    mole_fraction,
    percent_mol,
    percent_mass,
    percent_vol,
    celsius,
    kelvin,
    fahrenheit,
    pascals
};

struct stem {
    std::string_view name;
    quantity what;
};
inline constexpr stem stems[] = {
    {"x_ethanol", quantity::liquid}, {"x", quantity::liquid},
    {"liquid", quantity::liquid},    {"y_ethanol", quantity::vapour},
    {"y", quantity::vapour},         {"vapour", quantity::vapour},
    {"vapor", quantity::vapour},     {"temperature", quantity::temperature},
    {"t", quantity::temperature},    {"pressure", quantity::pressure},
    {"p", quantity::pressure},
};

struct ending {
    std::string_view name;
    unit in;
    double pascals = 0.0;  // one of the unit
};
inline constexpr ending fractions[] = {
    {"", unit::mole_fraction},
    {"percent_mol", unit::percent_mol},
    {"mol_percent", unit::percent_mol},
    {"percent_mass", unit::percent_mass},
    {"mass_percent", unit::percent_mass},
    {"percent_vol", unit::percent_vol},
    {"percent_vol_20c", unit::percent_vol},
};
inline constexpr ending temperatures[] = {
    {"", unit::celsius}, {"c", unit::celsius}, {"k", unit::kelvin}, {"f", unit::fahrenheit}};
inline constexpr ending pressures[] = {
    {"kpa", unit::pascals, kilopascal.value()},
    {"hpa", unit::pascals, hectopascal.value()},
    {"mbar", unit::pascals, hectopascal.value()},
    {"bar", unit::pascals, bar.value()},
    {"pa", unit::pascals, 1.0},
    {"mmhg", unit::pascals, millimetre_of_mercury.value()},
    {"torr", unit::pascals, torr.value()},
    {"inhg", unit::pascals, inch_of_mercury.value()},
    {"atm", unit::pascals, standard_atmosphere.value()},
    {"psi", unit::pascals, pound_force_per_square_inch.value()},
};

/// A column that holds one of the quantities.
struct role {
    std::size_t column;
    quantity what;
    unit in;
    double pascals;
};

/// A name with small letters and digits, everything else as one '_': "T / K" is "t_k", "x (% mol)" is
/// "x_percent_mol".
inline std::string plain(std::string_view name) {
    std::string result;
    for (char const c : number_table::lower(name)) {
        bool const kept = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        if (!kept && !result.empty() && result.back() != '_') result += '_';
        if (kept) result += c;
        if (c == '%') result += "percent_";
    }
    if (!result.empty() && result.back() == '_') result.pop_back();
    return result;
}

template <std::size_t Count>
ending const* find_ending(ending const (&endings)[Count], std::string_view name) {
    auto const* const found =
        std::find_if(endings, endings + Count, [&](ending const& e) { return e.name == name; });
    return found == endings + Count ? nullptr : found;
}

/// Quantity of a column; nothing if it is none of the quantities.
inline std::optional<role> role_of(number_table const& table, std::size_t column) {
    std::string const name = plain(table.names()[column]);
    if (name.find("uncertainty") != std::string::npos) return std::nullopt;
    std::optional<quantity> claimed;
    for (stem const& s : stems) {
        bool const whole = name == s.name;
        if (!whole && !(name.starts_with(s.name) && name[s.name.size()] == '_')) continue;
        claimed = s.what;
        std::string_view const rest =
            whole ? std::string_view() : std::string_view(name).substr(s.name.size() + 1);
        // "liquid" alone does not say whether by volume, mass or moles
        if (rest.empty() && (s.name == "liquid" || s.name.starts_with("vapo"))) break;
        ending const* const found = s.what == quantity::temperature ? find_ending(temperatures, rest)
                                    : s.what == quantity::pressure  ? find_ending(pressures, rest)
                                                                    : find_ending(fractions, rest);
        if (found) return role{column, s.what, found->in, found->pascals};
    }
    if (!claimed) return std::nullopt;
    number_table::fail(table.names_line(), table.names()[column],
                       std::string("the name has no known unit; ") + equilibrium_columns);
}

/// Reads the cells of one table.
class reader {
public:
    explicit reader(std::string_view text) : table_(text, {"x", "y", "t"}) {
        for (std::size_t k = 0; k < table_.names().size(); ++k) {
            if (auto const role = role_of(table_, k)) {
                roles_.push_back(*role);
            } else {
                ignored_.push_back(table_.names()[k]);
            }
        }
        // Of several columns for a quantity the most direct one counts; the others must agree with it.
        std::stable_sort(roles_.begin(), roles_.end(),
                         [](role const& a, role const& b) { return a.in < b.in; });
        if (table_.names().empty()) return;
        if (!holds(quantity::liquid)) refuse("no column holds the liquid");
        if (!holds(quantity::vapour) && !holds(quantity::temperature))
            refuse("no column holds the vapour or the temperature");
    }

    equilibrium_points read() const {
        equilibrium_points result;
        result.ignored_columns = ignored_;
        for (number_table::line const& row : table_.rows()) {
            equilibrium_point const point = point_of(row);
            if (point.vapour || point.temperature) {
                result.points.push_back(point);
            } else {
                ++result.empty_lines;
            }
        }
        return result;
    }

private:
    bool holds(quantity wanted) const {
        return std::any_of(roles_.begin(), roles_.end(), [=](role const& r) { return r.what == wanted; });
    }

    [[noreturn]] void refuse(std::string const& why) const {
        number_table::fail(table_.names_line(), "",
                           why + ": " + number_table::listed(table_.names()) + "; " + equilibrium_columns);
    }

    equilibrium_point point_of(number_table::line const& row) const {
        std::optional<mole_fraction> liquid;
        equilibrium_point point;
        point.line = row.number;
        for (role const& r : roles_) {
            if (number_table::empty(row, r.column)) continue;
            switch (r.what) {
            case quantity::liquid: take(row, r, liquid, fraction(row, r), 0.002); break;
            case quantity::vapour: take(row, r, point.vapour, fraction(row, r), 0.002); break;
            case quantity::temperature: take(row, r, point.temperature, temperature(row, r), 0.05); break;
            case quantity::pressure:
                take(row, r, point.pressure, pressure(row, r), 0.002 * pressure(row, r).value());
                break;
            }
        }
        if (!liquid) number_table::fail(row.number, "", "no number for the liquid");
        point.liquid = *liquid;
        return point;
    }

    static double plain_number(mole_fraction x) { return x.value(); }
    static double plain_number(units::temperature t) { return t.kelvin(); }
    static double plain_number(units::pressure p) { return p.value(); }

    // Sets a quantity that is not known yet; a known one must agree within the digits of printed tables.
    template <class Quantity>
    void take(number_table::line const& row, role const& r, std::optional<Quantity>& known, Quantity found,
              double tolerance) const {
        if (known && !(std::abs(plain_number(found) - plain_number(*known)) <= tolerance))
            fail(row, r,
                 number_table::shown(row, r.column) + " contradicts another column of the same quantity");
        if (!known) known = found;
    }

    mole_fraction fraction(number_table::line const& row, role const& r) const {
        double const number = table_.number(row, r.column);
        bool const whole = r.in == unit::mole_fraction;
        if (!(number >= 0.0 && number <= (whole ? 1.0 : 100.0))) {
            bool const may_be_percent = whole && number > 1.0 && number <= 100.0;
            fail(row, r,
                 number_table::shown(row, r.column) + " is outside " + (whole ? "0 to 1" : "0 to 100 %") +
                     (may_be_percent
                          ? "; is this percent? Then name the column " +
                                std::string(r.what == quantity::liquid ? "x" : "y") + "_percent_mol"
                          : ""));
        }
        switch (r.in) {
        case unit::percent_mol: return mole_fraction(number / 100.0);
        case unit::percent_mass: return to<mole_fraction>(mass_fraction(number / 100.0));
        case unit::percent_vol: return to<mole_fraction>(volume_fraction(number / 100.0));
        default: return mole_fraction(number);
        }
    }

    units::temperature temperature(number_table::line const& row, role const& r) const {
        namespace vle = model::vapour_liquid;
        units::temperature const lowest = aqueth::celsius(vle::lowest_celsius);
        units::temperature const highest = aqueth::celsius(vle::highest_celsius);
        double const number = table_.number(row, r.column);
        auto const within = [number](double lower, double upper) {
            return number >= lower && number <= upper;
        };
        bool const may_be_celsius = within(lowest.celsius(), highest.celsius());
        bool const may_be_kelvin = within(lowest.kelvin(), highest.kelvin());
        bool const may_be_fahrenheit = within(lowest.fahrenheit(), highest.fahrenheit());
        bool const accepted = r.in == unit::celsius  ? may_be_celsius
                              : r.in == unit::kelvin ? may_be_kelvin
                                                     : may_be_fahrenheit;
        if (!accepted) {
            char const* const range = r.in == unit::celsius  ? "0.01 to 120 °C"
                                      : r.in == unit::kelvin ? "273.16 to 393.15 K"
                                                             : "32.018 to 248 °F";
            char const* const hint = may_be_kelvin       ? "; are these kelvins? Then name the column t_k"
                                     : may_be_celsius    ? "; are these °C? Then name the column t_c"
                                     : may_be_fahrenheit ? "; are these °F? Then name the column t_f"
                                                         : "";
            fail(row, r, number_table::shown(row, r.column) + " is outside " + range + hint);
        }
        return r.in == unit::celsius  ? aqueth::celsius(number)
               : r.in == unit::kelvin ? aqueth::kelvin(number)
                                      : aqueth::fahrenheit(number);
    }

    // The bounds show a pressure that was given in another unit than the column's. Points beyond the model's
    // pressures are accepted here; `of_pressure` leaves them out.
    units::pressure pressure(number_table::line const& row, role const& r) const {
        units::pressure const p = table_.number(row, r.column) * r.pascals * newton_per_square_metre;
        if (!(p >= 0.1 * kilopascal && p <= 20000.0 * kilopascal))
            fail(row, r, number_table::shown(row, r.column) + " is outside 0.1 to 20000 kPa");
        return p;
    }

    [[noreturn]] void fail(number_table::line const& row, role const& r, std::string const& reason) const {
        number_table::fail(row.number, table_.names()[r.column], reason);
    }

    number_table table_;
    std::vector<role> roles_;
    std::vector<std::string> ignored_;
};

}  // namespace detail::points

/// Reads points of equilibrium from CSV text, in any form that number_table reads.
///
/// The first line names the columns, in any case and order (equilibrium_columns); further columns that hold
/// none of the four quantities are ignored and listed. Several columns may hold one quantity in different
/// units if they agree. Without such a line every line has x, y and perhaps the temperature in °C.
/// @param text contents of the file (UTF-8)
/// @return the points
/// @throws text_error with line and column if the text is no such table, no column holds the liquid, a column
///         of a quantity has an unknown unit, columns contradict each other, or a number is outside 0 to 1
///         (fractions), 0 to 100 % (percent), 0.01 to 120 °C or 0.1 to 20000 kPa
/// @par Accuracy
/// Percent by mass or volume is converted as `to` does.
/// @par Source
/// The form of the text: @ref source_rfc_4180
inline equilibrium_points parse_equilibrium_points(std::string_view text) {
    return detail::points::reader(text).read();
}

}  // namespace aqueth::inline AQUETH_ABI
