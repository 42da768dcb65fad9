// SPDX-License-Identifier: BSL-1.0
#include "still_program.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <concepts>
#include <cstddef>
#include <type_traits>
#include <variant>

namespace program {

double read_plain(given const& g, double least, double most) {
    std::string const range = fmt::format("{:g} to {:g}", least, most);
    wanted const w{"a number", range};
    number_and_unit const q = read_number(g, g.text, w);
    if (!q.unit.empty()) refuse(g, "expected a number without a unit");
    return on_behalf_of(g, [&] { return require_range("input", "number", q.number, "", least, most); });
}

apparent_extract read_extract(given const& g) {
    wanted const w{"a gravity or an extract", "sg (20/20 C), or plato"};
    number_and_unit const q = read_quantity(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    if (unit == "brix" || unit == "bx") {
        refuse(
            g,
            "Brix is what a refractometer shows, and alcohol raises it. For a saccharometer write 'plato'; "
            "read_refractometer gives the extract behind a refractometer's reading");
    }
    return on_behalf_of(g, [&] {
        if (unit == "sg") return apparent_extract_of(specific_gravity(q.number));
        if (unit == "plato" || unit == "p") return apparent_extract(q.number);
        refuse_unit(g, q.unit, w);
    });
}

std::vector<given> parts_of(given const& g) {
    std::vector<given> parts;
    std::string_view rest = g.text;
    for (;;) {
        auto const end = end_of_part(rest, ",;");
        parts.push_back({g.name, std::string(trimmed(rest.substr(0, end))), true});
        if (end == std::string_view::npos) return parts;
        rest.remove_prefix(end + 1);
    }
}

boiling_curve read_curve(surroundings const& air) {
    units::pressure const p = read_pressure(air);
    return on_behalf_of(air.decisive(), [&] { return boiling_curve(p); });
}

void require_beside(given const& g, bool other_present, char const* other) {
    if (g.present && !other_present) throw bad_input(fmt::format("{} needs {}", g.name, other));
}

void assumptions::say(page& text) const {
    constexpr std::size_t widest = 90;
    std::string line;
    char const* label = "assumed";
    auto const finish = [&] {
        text.row(label, "{}", line);
        label = "";
        line.clear();
    };
    for (std::size_t i = 0; i < all_.size(); ++i) {
        std::string const next =
            fmt::format("{} ({}){}", all_[i].words, all_[i].option, i + 1 < all_.size() ? "," : "");
        if (!line.empty() && line.size() + 1 + next.size() > widest) finish();
        line += line.empty() ? next : " " + next;
    }
    if (!line.empty()) finish();
}

json assumptions::to_json() const {
    json data = json::object();
    for (assumption const& each : all_) data[each.option] = each.value;
    return data;
}

units::volume volume_collected(wording const& words, run_point const& p) {
    if (!words.us || !(p.collected > units::volume())) return p.collected;
    auto const whole = volume_fraction((std::min)(1.0, in(p.pure_alcohol, p.collected)));
    return parcel::of(p.collected, whole, celsius(20)).volume(words.reference_temperature());
}

std::string plain_digits(double value, int significant) {
    std::string const text = fmt::format("{:.{}g}", value, significant);
    return text.find('e') == std::string::npos ? text : number(value, significant);
}

std::string in_hours(units::time t) {
    long long const minutes = std::llround(in(t, minute));
    return fmt::format("{} h {:02d} min", minutes / 60, minutes % 60);
}

charge_options charge_options::offer(session& s, char const* name, char const* description) {
    given const& a = s.required(name, "AMOUNT", description);
    given const& q = s.required("--strength", "STRENGTH", "strength of the charge");
    given const& e = s.option("--extract", "EXTRACT", "real extract of the charge, 'N plato'", "0 plato");
    given const& t =
        s.option("--temperature", "TEMP", "temperature of the charge before heating", "20 C", "60 F");
    s.carry_on(
        {{a, carried::weighed}, {q, carried::strength}, {e, carried::extract}, {t, carried::temperature}});
    return {a, q, e, t};
}

wash charge_options::read() const {
    units::temperature const t = read_any_temperature(temperature);
    double const degrees = read_extract(solids).degrees();
    extract const e = on_behalf_of(solids, [&] { return extract(degrees); });
    auto const how_much = read_amount(amount);
    auto const written = read_strength(strength);
    auto const w = composition(written);
    bool const by_amount =
        std::holds_alternative<mass_fraction>(written) || std::holds_alternative<mole_fraction>(written);
    if (e.degrees() > 0.0 && by_amount) {
        refuse(strength, "with --extract, give the strength of the whole wash in %vol");
    }
    if (e.degrees() == 0.0) return wash::of(make_parcel(how_much, w, temperature));
    return on_behalf_of(amount, [&] {
        // A strength in % vol is of the whole wash, its extract included.
        wash const one = on_behalf_of({{argument::temperature, temperature}},
                                      [&] { return wash::of(1.0 * litre, to<volume_fraction>(w), e, t); });
        double const share = std::visit(
            [&](auto const& each) {
                if constexpr (std::same_as<std::decay_t<decltype(each)>, units::mass>) {
                    return in(mass_from_balance(each, one.density(t)), one.mass());
                } else {
                    return in(each, one.volume());
                }
            },
            how_much);
        return wash::of(one.liquid().with_mass(share * one.liquid().mass()), share * one.solids());
    });
}

}  // namespace program
