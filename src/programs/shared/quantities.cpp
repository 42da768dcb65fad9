// SPDX-License-Identifier: BSL-1.0
#include "quantities.hpp"

#include <charconv>
#include <cmath>
#include <system_error>

namespace program {

std::string label(given const& g) { return fmt::format("{} '{}'", g.name, printable(g.text)); }

refusal named_after(given const& g, refusal const& e) {
    std::string_view const text = trimmed(g.text);
    // A bound of the smallest number is written so that 0 is outside: it is no bound to show.
    double const lower = e.value() != 0.0 && e.lower() > 0.0 && e.lower() < 1e-300 ? 0.0 : e.lower();
    if (e.unit() == "°C" && !text.empty() && (text.back() == 'F' || text.back() == 'f')) {
        auto const shown = [](double celsius) { return 32.0 + 1.8 * celsius; };
        return {label(g),     {e.code(), e.argument()}, shown(e.value()), "°F",
                shown(lower), shown(e.upper()),         e.reason()};
    }
    if (e.unit().empty() && !text.empty() && text.back() == '%') {  // a share, written in percent
        return {label(g),      {e.code(), e.argument()}, 100.0 * e.value(), "%",
                100.0 * lower, 100.0 * e.upper(),        e.reason()};
    }
    return {label(g), {e.code(), e.argument()}, e.value(), e.unit(), lower, e.upper(), e.reason()};
}

void refuse(given const& g, std::string const& why) { throw bad_input(fmt::format("{}: {}", label(g), why)); }

bool is_us_customary(std::string_view text) {
    static constexpr std::string_view names = " proof gal gals gallon gallons qt quart quarts pt pint pints "
                                              "fl floz lb lbs pound pounds oz ounce ounces ";
    auto const is_letter = [](char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); };
    bool behind_a_number = false;
    for (std::size_t at = 0; at < text.size();) {
        if (!is_letter(text[at])) {
            bool const is_fraction = text.substr(at).starts_with("¼") || text.substr(at).starts_with("½") ||
                                     text.substr(at).starts_with("¾");
            if (text[at] != ' ') behind_a_number = is_digit(text[at]) || text[at] == '.' || is_fraction;
            at += is_fraction ? 2 : 1;
            continue;
        }
        std::size_t const begin = at;
        while (at < text.size() && is_letter(text[at])) ++at;
        std::string const word = squeezed(text.substr(begin, at - begin));
        bool const ends =
            at == text.size() || text[at] == ' ' || text[at] == ',' || text[at] == ';' || text[at] == '.';
        bool const is_unit = names.find(" " + word + " ") != std::string_view::npos;
        if (ends && is_unit && (behind_a_number || text == word)) return true;
        behind_a_number = behind_a_number && word == "us";
    }
    return false;
}

double written(double degrees) { return std::abs(degrees) < 1e-9 ? 0.0 : degrees; }

void refuse_unit(given const& g, std::string_view unit, wanted const& w) {
    try {
        text::refuse_unit(unit, w);
    } catch (text_error const& e) {
        refuse(g, e.what());
    }
}

number_and_unit read_number(given const& g, std::string_view text, wanted const& w) {
    return understood(g, [&] { return text::read_number(text, w); });
}

number_and_unit read_quantity(given const& g, std::string_view text, wanted const& w) {
    return understood(g, [&] { return text::read_quantity(text, w); });
}

units::temperature read_any_temperature(given const& g, std::string_view text) {
    return understood(g, [&] { return parse<units::temperature>(text); });
}

units::temperature read_temperature(given const& g, std::string_view text) {
    return understood(g, [&] {
        auto const t = parse<units::temperature>(text);
        using correlation::oiml_r22::lowest_celsius;
        if (t.celsius() < lowest_celsius) {
            require_range("input", argument::temperature, t.celsius(), "°C", lowest_celsius,
                          plain::hottest_liquid_celsius(0.0), "OIML R 22 begins at -20 °C");
        }
        aqueth::detail::accept("input", plain::liquid_temperature_range(t.celsius()));
        return t;
    });
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
    std::string_view const unit = read_quantity(g, text, w).unit;
    return understood(g, [&]() -> amount {
        if (!volume_only && find_unit_at_head<units::mass>(unit).unit) {
            auto const m = text::read<units::mass>(text, w);
            require_range("input", "mass", in(m, kilogram), "kg", 1e-6, 1e9);
            return m;
        }
        auto const v = text::read<units::volume>(text, w);
        require_range("input", "volume", in(v, litre), "L", 1e-6, 1e9);
        return v;
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

units::pressure read_pressure(given const& g) { return read_as<units::pressure>(g); }

units::length read_altitude(given const& g) {
    return read_as<units::length>(g, {"an altitude", altitude_units});
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
