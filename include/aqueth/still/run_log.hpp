// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/equilibrium_points.hpp>
#include <aqueth/error.hpp>
#include <aqueth/number_table.hpp>
#include <aqueth/plain/hydrometer.hpp>
#include <aqueth/still/run_plan.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <iterator>
#include <limits>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// Measurements of an earlier run.
struct past_run {
    wash charge;               ///< charge of the pot
    units::volume discarded;   ///< foreshots, at 20 °C; 0 if there were none
    units::volume collected;   ///< volume collected after them, at 20 °C, above 0
    volume_fraction strength;  ///< strength of the whole collected volume
};

/// A row of a run's log: readings at one moment. Any of them may be missing, but not both time and volume.
struct log_row {
    std::optional<units::time> elapsed{};           ///< since the first distillate
    std::optional<units::volume> collected{};       ///< all distillate since then, as a volume at 20 °C
    std::optional<volume_fraction> strength{};      ///< distillate at the spout at this moment
    std::optional<volume_fraction> jar_strength{};  ///< everything collected since the row before
    std::optional<units::temperature> head{};       ///< vapour at the head
    std::optional<units::temperature> pot{};        ///< boiling liquid in the pot
    std::size_t line = 0;                           ///< line of the text it was read from, or 0

    /// @return whether it has a reading beside time and volume
    bool has_reading() const { return strength || jar_strength || head || pot; }
};

/// The log of a run, with the figures of that run.
struct run_log {
    wash charge;                ///< charge of the pot
    std::vector<log_row> rows;  ///< in their order: times and volumes do not fall
    /// heating power; unless it is known, times beside volumes are not used
    std::optional<units::power> power{};
    std::optional<double> reflux_ratio{};  ///< reflux ratio of this run, if it is known
    units::time start = units::time();     ///< time at total reflux before anything was taken
    std::vector<plan_step> steps = {};     ///< changes of reflux or power during the run
};

/// The rows of a log as they were read.
struct [[nodiscard]] run_log_rows {
    std::vector<log_row> rows;                 ///< in the order of the lines
    std::vector<std::string> ignored_columns;  ///< names of columns that hold none of the quantities
};

/// The columns of a log, for messages and for help.
inline constexpr char const* run_log_columns =
    "accepted are time_min (or _s, _h) since the first distillate; collected_ml (or _cl, _l, _fl_oz, _gal); "
    "strength_percent_vol (or _us_proof) at the spout, or reading_percent_vol of an alcoholometer with "
    "reading_temperature_c; jar_strength_percent_vol, or jar_reading_percent_vol with jar_temperature_c; "
    "head_temperature_c; pot_temperature_c (temperatures also _k or _f)";

namespace detail::run_logs {

enum class quantity {
    time,
    collected,
    strength,
    reading,
    reading_temperature,
    jar_strength,
    jar_reading,
    jar_temperature,
    head,
    pot
};

enum class unit { si, percent_vol, us_proof, celsius, kelvin, fahrenheit };

struct ending {
    std::string_view name;
    unit in;
    double si = 1.0;  ///< one of the unit in the unit of the SI
};
inline constexpr ending times[] = {{"s", unit::si},
                                   {"min", unit::si, 60.0},
                                   {"minutes", unit::si, 60.0},
                                   {"h", unit::si, 3600.0},
                                   {"hours", unit::si, 3600.0}};
inline constexpr ending volumes[] = {{"ml", unit::si, 1e-6},
                                     {"cl", unit::si, 1e-5},
                                     {"l", unit::si, 1e-3},
                                     {"fl_oz", unit::si, us_fluid_ounce.value()},
                                     {"gal", unit::si, us_gallon.value()}};
inline constexpr ending strengths[] = {
    {"percent_vol", unit::percent_vol}, {"percent_vol_20c", unit::percent_vol}, {"us_proof", unit::us_proof}};
inline constexpr ending temperatures[] = {{"c", unit::celsius}, {"k", unit::kelvin}, {"f", unit::fahrenheit}};

struct stem {
    std::string_view name;
    quantity what;
};
// a longer name stands before a shorter one with which it begins
inline constexpr stem stems[] = {
    {"jar_strength", quantity::jar_strength},
    {"jar_reading", quantity::jar_reading},
    {"jar_temperature", quantity::jar_temperature},
    {"reading_temperature", quantity::reading_temperature},
    {"head_temperature", quantity::head},
    {"pot_temperature", quantity::pot},
    {"strength", quantity::strength},
    {"reading", quantity::reading},
    {"time", quantity::time},
    {"elapsed", quantity::time},
    {"collected", quantity::collected},
    {"volume", quantity::collected},
};

struct role {
    std::size_t column;
    quantity what;
    unit in;
    double si;
};

template <std::size_t Count>
ending const* find_in(ending const (&endings)[Count], std::string_view name) {
    auto const* const found =
        std::find_if(std::begin(endings), std::end(endings), [&](ending const& e) { return e.name == name; });
    return found == std::end(endings) ? nullptr : found;
}

inline ending const* find_ending(quantity what, std::string_view name) {
    switch (what) {
    case quantity::time: return find_in(times, name);
    case quantity::collected: return find_in(volumes, name);
    case quantity::strength:
    case quantity::reading:
    case quantity::jar_strength:
    case quantity::jar_reading: return find_in(strengths, name);
    case quantity::reading_temperature:
    case quantity::jar_temperature:
    case quantity::head:
    case quantity::pot: break;
    }
    return find_in(temperatures, name);
}

/// Quantity of a column; nothing if it is none of the quantities.
inline std::optional<role> role_of(number_table const& table, std::size_t column) {
    std::string const name = points::plain(table.names()[column]);
    for (stem const& s : stems) {
        if (name != s.name && !name.starts_with(std::string(s.name) + '_')) continue;
        std::string_view const rest =
            name == s.name ? std::string_view() : std::string_view(name).substr(s.name.size() + 1);
        if (ending const* const found = find_ending(s.what, rest))
            return role{column, s.what, found->in, found->si};
        number_table::fail(table.names_line(), table.names()[column],
                           std::string("the name has no known unit; ") + run_log_columns);
    }
    return std::nullopt;
}

/// Reads the cells of one log.
class reader {
public:
    explicit reader(std::string_view text) : table_(text) {
        for (std::size_t k = 0; k < table_.names().size(); ++k) {
            auto const found = role_of(table_, k);
            if (!found) {
                ignored_.push_back(table_.names()[k]);
                continue;
            }
            if (column_of(found->what))
                number_table::fail(table_.names_line(), table_.names()[k],
                                   "another column holds this quantity");
            roles_.push_back(*found);
        }
        if (table_.rows().empty())
            number_table::fail(0, "", "no log: expected a line of names and lines of numbers");
        if (!column_of(quantity::time) && !column_of(quantity::collected))
            refuse("no column holds time or volume");
        require_temperature(quantity::reading, quantity::reading_temperature, "reading_temperature_c");
        require_temperature(quantity::jar_reading, quantity::jar_temperature, "jar_temperature_c");
        require_one(quantity::strength, quantity::reading);
        require_one(quantity::jar_strength, quantity::jar_reading);
    }

    run_log_rows read() const {
        run_log_rows result{{}, ignored_};
        log_row last;
        bool measured = false;
        for (number_table::line const& row : table_.rows()) {
            log_row const now = read(row);
            if (!now.elapsed && !now.collected) {
                if (!now.has_reading()) continue;
                number_table::fail(row.number, "", "neither time nor volume");
            }
            if (now.elapsed && last.elapsed && *now.elapsed < *last.elapsed)
                fail_falling(row, quantity::time);
            if (now.collected && last.collected && *now.collected < *last.collected)
                fail_falling(row, quantity::collected);
            if (now.elapsed) last.elapsed = now.elapsed;
            if (now.collected) last.collected = now.collected;
            measured = measured || now.has_reading() || (now.elapsed && now.collected);
            result.rows.push_back(now);
        }
        if (!measured) refuse("no row has a reading beside its time or volume");
        return result;
    }

private:
    role const* column_of(quantity what) const {
        auto const found =
            std::find_if(roles_.begin(), roles_.end(), [=](role const& r) { return r.what == what; });
        return found == roles_.end() ? nullptr : &*found;
    }
    [[noreturn]] void refuse(std::string const& why) const {
        number_table::fail(table_.names_line(), "",
                           why + ": " + number_table::listed(table_.names()) + "; " + run_log_columns);
    }
    void require_temperature(quantity reading, quantity temperature, char const* wanted) const {
        role const* const r = column_of(reading);
        if (r != nullptr && !column_of(temperature)) {
            number_table::fail(table_.names_line(), table_.names()[r->column],
                               std::string("an alcoholometer's reading needs the column ") + wanted);
        }
    }
    void require_one(quantity a, quantity b) const {
        role const* const other = column_of(b);
        if (column_of(a) && other)
            number_table::fail(table_.names_line(), table_.names()[other->column],
                               "another column holds this strength; keep one of them");
    }

    log_row read(number_table::line const& row) const {
        log_row now;
        now.line = row.number;
        if (auto const t = number(row, quantity::time, 0.0, 3.6e6, "s")) now.elapsed = *t * second;
        if (auto const v = number(row, quantity::collected, 0.0, 1e6, "m3")) now.collected = *v * cubic_metre;
        now.strength = strength(row, quantity::strength, quantity::reading, quantity::reading_temperature);
        now.jar_strength =
            strength(row, quantity::jar_strength, quantity::jar_reading, quantity::jar_temperature);
        now.head = temperature(row, quantity::head, 0.0, 120.0);
        now.pot = temperature(row, quantity::pot, 0.0, 150.0);
        return now;
    }

    /// the number of a cell in the unit of the SI, within limits; nothing if there is none
    std::optional<double> number(number_table::line const& row, quantity what, double least, double most,
                                 char const* si) const {
        role const* const r = column_of(what);
        if (r == nullptr || number_table::empty(row, r->column)) return std::nullopt;
        double const value = table_.number(row, r->column) * r->si;
        if (!(value >= least && value <= most)) {
            fail(row, *r,
                 number_table::shown(row, r->column) + " is outside " + numeric::text_of(least, 4) + " to " +
                     numeric::text_of(most, 4) + " " + si);
        }
        return value;
    }

    std::optional<units::temperature> temperature(number_table::line const& row, quantity what, double least,
                                                  double most) const {
        role const* const r = column_of(what);
        if (r == nullptr || number_table::empty(row, r->column)) return std::nullopt;
        double const value = table_.number(row, r->column);
        units::temperature const t = r->in == unit::celsius  ? celsius(value)
                                     : r->in == unit::kelvin ? kelvin(value)
                                                             : fahrenheit(value);
        if (!(t.celsius() >= least && t.celsius() <= most)) {
            fail(row, *r,
                 number_table::shown(row, r->column) + " is outside " + numeric::text_of(least, 4) + " to " +
                     numeric::text_of(most, 4) + " °C");
        }
        return t;
    }

    /// a true strength: as written, or from an alcoholometer's reading
    std::optional<volume_fraction> strength(number_table::line const& row, quantity true_one,
                                            quantity reading, quantity its_temperature) const {
        role const* const direct = column_of(true_one);
        role const* const r = direct != nullptr ? direct : column_of(reading);
        if (r == nullptr || number_table::empty(row, r->column)) return std::nullopt;
        double const value = table_.number(row, r->column);
        bool const proof = r->in == unit::us_proof;
        if (!(value >= 0.0 && value <= (proof ? 200.0 : 100.0))) {
            fail(row, *r,
                 number_table::shown(row, r->column) + " is outside 0 to " +
                     (proof ? "200 US proof" : "100 % vol"));
        }
        if (direct != nullptr)
            return proof ? to<volume_fraction>(us_proof(value)) : volume_fraction(value / 100.0);
        auto const t = temperature(row, its_temperature, -20.0, 40.0);
        if (!t) {
            fail(row, *column_of(its_temperature), "empty; the reading of this line needs its temperature");
        }
        // The plain floor answers without an exception, so the error can name the cell.
        double const value_at_20 = proof ? true_strength(plain::proof_hydrometer<double>(), value, *t)
                                         : true_strength(plain::alcoholometer<double>(), value / 100.0, *t);
        if (std::isnan(value_at_20)) {
            fail(row, *r,
                 "no mixture of ethanol and water shows " + number_table::shown(row, r->column) + " at " +
                     numeric::text_of(t->celsius(), 4) + " °C");
        }
        return volume_fraction(value_at_20);
    }

    /// NaN if no mixture gives this reading
    template <class Instrument>
    static double true_strength(Instrument const& instrument, double reading, units::temperature t) {
        auto const found = instrument.template strength<volume_fraction::plain_basis>(reading, t.celsius());
        return found.status.ok ? found.value : std::numeric_limits<double>::quiet_NaN();
    }

    [[noreturn]] void fail(number_table::line const& row, role const& r, std::string const& reason) const {
        number_table::fail(row.number, table_.names()[r.column], reason);
    }
    [[noreturn]] void fail_falling(number_table::line const& row, quantity what) const {
        role const& r = *column_of(what);
        fail(row, r, number_table::shown(row, r.column) + " is less than in a line before");
    }

    number_table table_;
    std::vector<role> roles_;
    std::vector<std::string> ignored_;
};

}  // namespace detail::run_logs

/// Reads the log of a run from CSV text, in any form that number_table reads.
///
/// The first line names the columns with their units, in any case and order (run_log_columns). Other columns
/// are ignored and listed. A cell may be empty. Alcoholometer readings become true strengths.
/// @param text contents of the file (UTF-8)
/// @return its rows
/// @throws text_error with line and column if the text is no such table, a column has an unknown unit or
///         occurs twice, a reading has no temperature, a row with readings has neither time nor volume, times
///         or volumes fall, or a number is outside 0 to 1000 h, 0 to 100 % vol, 0 to 120 °C at the head, 0 to
///         150 °C in the pot, -20 to 40 °C for readings
/// @par Accuracy
/// Of the readings: as `hydrometer`. Volumes are taken as volumes at 20 °C: 10 K change them by 1 %.
/// @par Source
/// The form of the text: @ref source_rfc_4180
inline run_log_rows parse_run_log(std::string_view text) { return detail::run_logs::reader(text).read(); }

}  // namespace aqueth::inline AQUETH_ABI
