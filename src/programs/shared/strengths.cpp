// SPDX-License-Identifier: BSL-1.0
#include "strengths.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <concepts>
#include <type_traits>

namespace program {

namespace {

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
        return understood(options.scale, [&] {
            with_reference(n.reference, [&](auto tag) {
                use([&] { return hydrometer<basic_volume_fraction<decltype(tag)>>(glass); });
            });
        });
    case basis::concentration:
        return understood(options.scale, [&] {
            with_reference(n.reference, [&](auto tag) {
                use([&] { return hydrometer<basic_mass_concentration<decltype(tag)>>(glass); });
            });
        });
    case basis::mass: return use([&] { return hydrometer<mass_fraction>(n.reference, glass); });
    case basis::moles: return use([&] { return hydrometer<mole_fraction>(n.reference, glass); });
    case basis::proof: return use([&] { return proof_hydrometer(glass); });
    case basis::density: return use([&] { return density_hydrometer(n.reference, glass); });
    case basis::gravity: return use([&] { return gravity_hydrometer(n.gravity, glass); });
    }
}

}  // namespace

mass_fraction composition(strength const& s) { return to<mass_fraction>(s); }

notation read_notation(given const& g, std::string_view text) {
    return understood(g, [&] { return text::read_notation(text); });
}

std::string degrees(units::temperature t) {
    return t == at_60_fahrenheit::temperature() ? "60 °F" : fmt::format("{:.4g} °C", written(t.celsius()));
}

char const* name_of(density_formulation f) {
    return f == density_formulation::hot_density ? "fit_above_40_C" : "oiml_r22";
}

std::string unit_as_written(notation const& n) {
    if (n.kind == basis::proof) return "proof";
    if (n.kind != basis::volume) return "";
    return fmt::format("%vol at {:.10g} C", n.reference.celsius());
}

std::string name_of(notation const& n) {
    switch (n.kind) {
    case basis::volume: return "% vol at " + degrees(n.reference);
    case basis::mass: return "% mass at " + degrees(n.reference);
    case basis::moles: return (n.factor == 1.0 ? "% mol at " : "mol/mol at ") + degrees(n.reference);
    case basis::proof: return "US proof";
    case basis::concentration: return (n.factor == 1.0 ? "g/100 mL at " : "g/L at ") + degrees(n.reference);
    case basis::density: return (n.factor == 1.0 ? "kg/m3 at " : "g/cm3 at ") + degrees(n.reference);
    case basis::gravity: break;
    }
    return fmt::format("specific gravity {}/{} in {}", degrees(n.gravity.liquid), degrees(n.gravity.water),
                       n.gravity.weighed_in == medium::air ? "air" : "vacuo");
}

std::string on_scale(notation const& n, double value) {
    bool const near_one = n.kind == basis::gravity || n.factor > 1.0;  // mol/mol, g/cm3
    return fmt::format("{:.{}f}", value, near_one ? 5 : 2);
}

bool same_reference(notation const& a, notation const& b) {
    return a.reference == b.reference && a.gravity.water == b.gravity.water &&
           a.gravity.weighed_in == b.gravity.weighed_in;
}

strength read_strength(given const& g) {
    return understood(g, [&] { return parse<any_strength>(g.text); });
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

certificate::certificate(given const& g) {
    if (g.text.empty()) return;
    wanted const w{"a correction in units of the scale", "no unit: '+0.2', or '+0.2 at 40, -0.1 at 60'"};
    std::string_view rest = g.text;
    do {
        std::string_view const part = rest.substr(0, rest.find_first_of(",;"));
        rest.remove_prefix((std::min)(part.size() + 1, rest.size()));
        number_and_unit const q = read_number(g, part.substr(0, part.find(" at ")), w);
        if (!squeezed(q.unit).empty()) refuse_unit(g, q.unit, w);
        bool const at_one_reading = part.find(" at ") != std::string_view::npos;
        if (!at_one_reading && (!points_.empty() || !rest.empty()))
            refuse(g, "several corrections need the readings they are for: '+0.2 at 40, -0.1 at 60'");
        double reading = 0.0;
        everywhere_ = !at_one_reading;
        if (at_one_reading) {
            number_and_unit const at = read_number(g, part.substr(part.find(" at ") + 4), w);
            if (!squeezed(at.unit).empty()) refuse_unit(g, at.unit, w);
            reading = at.number;
        }
        if (!points_.empty() && !(reading > points_.back().reading)) refuse(g, "the readings must rise");
        if (!points_.empty() && !(reading + q.number > points_.back().reading + points_.back().correction))
            refuse(g, "the corrected readings must rise with the readings");
        points_.push_back({reading, q.number});
    } while (!rest.empty());
}

double certificate::correction(double reading) const {
    if (points_.empty()) return 0.0;
    auto const above =
        std::find_if(points_.begin(), points_.end(), [=](point const& p) { return p.reading >= reading; });
    if (above == points_.begin()) return above->correction;
    if (above == points_.end()) return points_.back().correction;
    point const &a = *(above - 1), &b = *above;
    return a.correction + (b.correction - a.correction) * (reading - a.reading) / (b.reading - a.reading);
}

std::string certificate::beyond(double reading) const {
    if (points_.empty() || everywhere_) return {};
    if (reading < points_.front().reading)
        return fmt::format("its first point is at {:g}", points_.front().reading);
    if (reading > points_.back().reading)
        return fmt::format("its last point is at {:g}", points_.back().reading);
    return {};
}

double certificate::reading(double corrected) const {
    if (points_.empty()) return corrected;
    auto const value = [](point const& p) { return p.reading + p.correction; };
    auto const above =
        std::find_if(points_.begin(), points_.end(), [&](point const& p) { return value(p) >= corrected; });
    if (above == points_.begin()) return corrected - above->correction;
    if (above == points_.end()) return corrected - points_.back().correction;
    point const &a = *(above - 1), &b = *above;
    return a.reading + (b.reading - a.reading) * (corrected - value(a)) / (value(b) - value(a));
}

namespace {
/// The scale of an instrument that gave a reading.
given scale_behind(given const& scale, given const& reading) {
    if (scale.present || !reading.present) return scale;
    auto const unit = read_quantity(reading, reading.text, {"a reading", strength_units}).unit;
    static_cast<void>(read_notation(reading, unit));  // its errors quote the reading as it was written
    return {reading.name, std::string(unit), true};
}
}  // namespace

stem::stem(instrument const& options, given const& reading)
    : stem(instrument{scale_behind(options.scale, reading), options.glass, options.correction}) {}

stem::stem(instrument const& options) : certified_(options.correction) {
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
        density_ = [meter, marked](double number, given const& g, units::temperature t) {
            return meter.density(marked(g, number), t);
        };
        reading_ = [meter, scale](mass_fraction w, units::temperature t) {
            return number_on(scale, meter.reading(w, t));
        };
        reading_in_ = [meter, scale](units::mass_density rho, units::temperature t) {
            return number_on(scale, meter.reading_in(rho, t));
        };
        using basis_type = std::conditional_t<strength_basis<Scale>, Scale, volume_fraction>;
        bool const scaled = strength_basis<Scale> && scale.factor != 1.0;
        char const* const of_scale = scale.kind == basis::moles ? "mol/mol" : "g/L";
        strength_ = [factor = scaled ? scale.factor : 1.0,
                     unit = scaled ? of_scale : basis_type::unit](mass_fraction w) {
            return figure{to<basis_type>(w).number() / factor, unit};
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
