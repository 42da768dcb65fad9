// SPDX-License-Identifier: BSL-1.0
#include "strengths.hpp"

#include <fmt/format.h>

#include <concepts>
#include <type_traits>

namespace program {

namespace {

/// Calls f with the tag of a reference temperature.
template <class F>
auto with_reference(given const& g, units::temperature t, F const& f) {
    if (t == at_20_celsius::temperature()) return f(at_20_celsius{});
    if (t == at_15_celsius::temperature()) return f(at_15_celsius{});
    if (t == at_15_56_celsius::temperature()) return f(at_15_56_celsius{});
    if (t == at_60_fahrenheit::temperature()) return f(at_60_fahrenheit{});
    refuse(g, "the reference temperature must be 20 C, 15 C, 15.56 C or 60 F");
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

/// Calls f with the hydrometer that the options describe, and with its scale.
template <class F>
void with_instrument(instrument const& options, F const& f) {
    units::cubic_expansion const glass = read_expansion(options.glass);
    notation const n = read_notation(options.scale, options.scale.text);
    // The scale may ask for a reference temperature that no instrument has.
    auto const use = [&](auto const& make) { f(on_behalf_of(options.scale, make), n); };
    switch (n.kind) {
    case basis::volume:
        return with_reference(options.scale, n.reference, [&](auto tag) {
            use([&] { return hydrometer<basic_volume_fraction<decltype(tag)>>(glass); });
        });
    case basis::concentration:
        return with_reference(options.scale, n.reference, [&](auto tag) {
            use([&] { return hydrometer<basic_mass_concentration<decltype(tag)>>(glass); });
        });
    case basis::mass: return use([&] { return hydrometer<mass_fraction>(n.reference, glass); });
    case basis::moles: return use([&] { return hydrometer<mole_fraction>(n.reference, glass); });
    case basis::proof: return use([&] { return proof_hydrometer(glass); });
    case basis::density: return use([&] { return density_hydrometer(n.reference, glass); });
    case basis::gravity: return use([&] { return gravity_hydrometer(n.gravity, glass); });
    }
}

}  // namespace

mass_fraction composition(strength const& s) {
    return std::visit([](auto const& each) { return to<mass_fraction>(each); }, s);
}

gravity_reference read_gravity_reference(given const& g, std::string text) {
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

notation read_notation(given const& g, std::string_view text) {
    wanted const w{"a strength", strength_units};
    auto at = text.find(" at ");
    auto skip = at == std::string_view::npos ? std::size_t{1} : std::size_t{4};
    if (at == std::string_view::npos) at = text.find('@');
    std::string const unit = squeezed(text.substr(0, at));
    notation result;
    if (unit.starts_with("sg")) {
        if (at != std::string_view::npos) refuse(g, "write the two temperatures after 'sg': sg 20/20 C");
        result.kind = basis::gravity;
        result.gravity = read_gravity_reference(g, unit.substr(2));
        result.reference = result.gravity.liquid;
        result.referenced = unit != "sg";
        return result;
    }
    if (unit == "%") refuse(g, "'%' alone is ambiguous: write %vol, %mass or %mol");
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

std::string degrees(units::temperature t) {
    return t == at_60_fahrenheit::temperature() ? "60 °F" : fmt::format("{:.4g} °C", written(t.celsius()));
}

std::string name_of(notation const& n) {
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

std::string on_scale(notation const& n, double value) {
    bool const near_one = n.kind == basis::gravity || n.factor != 1.0;
    return fmt::format("{:.{}f}", value, near_one ? 5 : 2);
}

bool same_reference(notation const& a, notation const& b) {
    return a.reference == b.reference && a.gravity.water == b.gravity.water &&
           a.gravity.weighed_in == b.gravity.weighed_in;
}

strength read_strength(given const& g) {
    number_and_unit const q = read_quantity(g, g.text, {"a strength", strength_units});
    notation const n = read_notation(g, q.unit);
    if (n.referenced && (n.kind == basis::mass || n.kind == basis::moles)) {
        refuse(g, fmt::format("a {} fraction does not depend on temperature: leave the reference out",
                              n.kind == basis::mass ? "mass" : "mole"));
    }
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
        static_cast<void>(composition(result));  // there may be more than pure ethanol has
        return result;
    });
}

units::cubic_expansion read_expansion(given const& g) {
    if (g.text == "soda-lime") return soda_lime_glass;
    if (g.text == "borosilicate") return borosilicate_glass;
    wanted const w{"soda-lime, borosilicate or a cubic expansion", "/K, like '25e-6 /K'"};
    number_and_unit const q = read_quantity(g, g.text, w);
    if (squeezed(q.unit) != "/k") refuse_unit(g, q.unit, w);
    return on_behalf_of(
        g, [&] { return require_range("input", "cubic expansion", q.number, "/K", 0.0, 3e-4) * per_kelvin; });
}

namespace {
/// The scale of an instrument that gave a reading.
given scale_behind(given const& scale, given const& reading) {
    if (scale.present || !reading.present) return scale;
    auto const unit = read_quantity(reading, reading.text, {"a reading", strength_units}).unit;
    return {reading.name, std::string(unit), true};
}
}  // namespace

stem::stem(instrument const& options, given const& reading)
    : stem(instrument{scale_behind(options.scale, reading), options.glass}) {}

stem::stem(instrument const& options) {
    with_instrument(options, [this]<class Scale>(hydrometer<Scale> const& meter, notation const& scale) {
        scale_ = scale;
        shows_strength_ = strength_basis<Scale>;
        auto const marked = [scale](given const& g, double number) {
            return on_behalf_of(g, [&] { return mark<Scale>(scale, number); });
        };
        check_ = [marked](given const& g, double number) { static_cast<void>(marked(g, number)); };
        composition_ = [meter, marked](double number, given const& g, units::temperature t) {
            return meter.composition(marked(g, number), t);
        };
        reading_ = [meter, scale](mass_fraction w, units::temperature t) {
            return number_on(scale, meter.reading(w, t));
        };
        strength_ = [](mass_fraction w) {
            using basis_type = std::conditional_t<strength_basis<Scale>, Scale, volume_fraction>;
            return figure{to<basis_type>(w).number(), basis_type::unit};
        };
    });
}

double stem::number(given const& reading) const {
    std::string const is = "the scale is " + name_of(scale_);
    number_and_unit const q = read_quantity(reading, reading.text, {"a reading", is});
    notation const n = read_notation(reading, q.unit);
    if (n.kind != scale_.kind || (n.referenced && !same_reference(n, scale_))) {
        refuse(reading, "the unit is not that of the scale; " + is + " (--scale changes it)");
    }
    double const marked = n.factor == scale_.factor ? q.number : q.number * n.factor / scale_.factor;
    check_(reading, marked);
    return marked;
}

}  // namespace program
