// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// What the programs about wash and still share: their quantities, the charge, their cautions.

#include "boiling.hpp"
#include "program.hpp"

#include <aqueth/aqueth.hpp>

#include <fmt/format.h>

#include <unistd.h>

#include <chrono>
#include <cmath>
#include <concepts>
#include <cstdio>
#include <string>
#include <string_view>
#include <type_traits>
#include <variant>
#include <vector>

namespace program {

inline constexpr unit_names heights[] = {
    {"m", metre.value()}, {"cm", 0.01}, {"mm", 0.001}, {"ft", foot.value()}};
inline constexpr unit_names powers[] = {{"w", watt.value()}, {"kw", kilowatt.value()}};
inline constexpr unit_names durations[] = {{"s sec second seconds", second.value()},
                                           {"min minute minutes", minute.value()},
                                           {"h hour hours", hour.value()}};
inline constexpr unit_names heat_capacities[] = {{"j/k", 1.0}, {"kj/k", 1e3}};
inline constexpr unit_names conductances[] = {{"w/k", 1.0}};

/// Reads a plain number within limits.
inline double read_plain(given const& g, double least, double most) {
    std::string const range = fmt::format("{:g} to {:g}", least, most);
    wanted const w{"a number", range};
    number_and_unit const q = read_number(g, g.text, w);
    if (!q.unit.empty()) refuse(g, "a number without a unit is expected");
    return on_behalf_of(g, [&] { return require_range("input", "number", q.number, "", least, most); });
}

/// Reads a share, '5 %' or '0.05'.
inline double read_share(given const& g) {
    wanted const w{"a share", "%, or a plain number up to 1"};
    number_and_unit const q = read_number(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    if (!unit.empty() && unit != "%") refuse_unit(g, q.unit, w);
    return unit.empty() ? q.number : q.number / 100.0;
}

/// Reads "1.050 sg" or "12.4 plato".
inline apparent_extract read_extract(given const& g) {
    wanted const w{"a gravity or an extract", "sg (20/20 C), or plato"};
    number_and_unit const q = read_quantity(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    return on_behalf_of(g, [&] {
        if (unit == "sg") return apparent_extract_of(specific_gravity(q.number));
        if (unit == "plato" || unit == "p" || unit == "brix") return apparent_extract(q.number);
        refuse_unit(g, q.unit, w);
    });
}

/// The parts of a text between separators.
inline std::vector<given> parts_of(given const& g, char separator) {
    std::vector<given> parts;
    std::string_view rest = g.text;
    for (;;) {
        auto const end = rest.find(separator);
        parts.push_back({g.name, std::string(trimmed(rest.substr(0, end))), true});
        if (end == std::string_view::npos) return parts;
        rest.remove_prefix(end + 1);
    }
}

/// The mixture that boils at the pressure of the day.
inline boiling_curve read_curve(surroundings const& air) {
    units::pressure const p = read_pressure(air);
    return on_behalf_of(air.decisive(), [&] { return boiling_curve(p); });
}

/// The charge: amount, strength, extract, temperature.
struct charge_options {
    given const& amount;
    given const& strength;
    given const& solids;
    given const& temperature;

    static charge_options offer(session& s) {
        given const& a =
            s.required("--charge", "AMOUNT", "what is in the pot: volume at its temperature, or mass");
        given const& q = s.required("--strength", "STRENGTH", "its strength");
        given const& e = s.option("--extract", "EXTRACT", "its real extract, 'N plato'", "0 plato");
        given const& t = s.option("--temperature", "TEMP", "of the charge when it is heated", "20 C");
        return {a, q, e, t};
    }
    wash read() const {
        units::temperature const t = read_any_temperature(temperature, temperature.text);
        double const degrees = read_extract(solids).degrees();
        extract const e = on_behalf_of(solids, [&] { return extract(degrees); });
        auto const how_much = read_amount(amount);
        auto const written = read_strength(strength);
        auto const w = composition(written);
        bool const by_amount =
            std::holds_alternative<mass_fraction>(written) || std::holds_alternative<mole_fraction>(written);
        if (e.degrees() > 0.0 && by_amount) {
            refuse(strength, "beside --extract the strength is that of the whole wash: give it in %vol");
        }
        if (e.degrees() == 0.0) return wash::of(make_parcel(how_much, w, temperature));
        return on_behalf_of(amount, [&] {
            // A strength in % vol is of the whole wash, its extract included.
            wash const one = on_behalf_of({{"temperature", temperature}}, [&] {
                return wash::of(1.0 * litre, to<volume_fraction>(w), e, t);
            });
            double const share = std::visit(
                [&](auto const& each) {
                    if constexpr (std::same_as<std::decay_t<decltype(each)>, units::mass>) {
                        return in(each, one.mass());
                    } else {
                        return in(each, one.volume());
                    }
                },
                how_much);
            return wash::of(one.liquid().with_mass(share * one.liquid().mass()), share * one.solids());
        });
    }
};

/// Refuses an option that means nothing without another one.
inline void require_beside(given const& g, bool other_present, char const* other) {
    if (g.present && !other_present) throw bad_input(fmt::format("{} goes with {}", g.name, other));
}

/// A line on standard error that says how far the work is: on a terminal, if it lasts; gone when it is done.
class progress_line {
public:
    explicit progress_line(char const* program) : program_(program), terminal_(isatty(STDERR_FILENO) == 1) {}
    ~progress_line() {
        if (!shown_.empty()) write(std::string(shown_.size(), ' ') + "\r");
    }
    progress_line(progress_line const&) = delete;
    progress_line& operator=(progress_line const&) = delete;

    void show(run_progress const& p) {
        if (!terminal_ || clock::now() < next_) return;
        next_ = clock::now() + std::chrono::milliseconds(200);
        std::string const done = p.recorded > 0.0
                                     ? fmt::format("{:.0f} % of the states recorded", 100.0 * p.recorded)
                                     : fmt::format("{:.0f} % of the charge distilled", 100.0 * p.distilled);
        shown_ = fmt::format("{:<{}}", fmt::format("{}: {}", program_, done), shown_.size());
        write(shown_ + "\r");
    }

private:
    using clock = std::chrono::steady_clock;
    static void write(std::string const& text) {
        std::fputs(text.c_str(), stderr);
        std::fflush(stderr);
    }

    char const* program_;
    bool terminal_;
    clock::time_point next_ = clock::now() + std::chrono::seconds(1);
    std::string shown_;
};

inline std::string in_hours(units::time t) {
    long long const minutes = std::llround(in(t, minute));
    return fmt::format("{} h {:02d} min", minutes / 60, minutes % 60);
}

inline constexpr char const* run_caution =
    "Never leave a run alone. Leave head space and put in boil enhancers against surging, and let the pot\n"
    "cool before it is opened. A first fraction is discarded because it is unpleasant and may hold what is\n"
    "harmful; that does not take methanol out, and distilling does not make bad spirit good. Nothing of "
    "lead.";
inline constexpr char const* gas_caution =
    "Caution: carbon dioxide is heavy and chokes. Let fresh air through cellars and vats.";

}  // namespace program
