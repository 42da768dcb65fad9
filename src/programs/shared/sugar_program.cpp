// SPDX-License-Identifier: BSL-1.0
#include "sugar_program.hpp"

#include "still_program.hpp"

#include <fmt/format.h>

namespace program {

units::mass_density read_sugar_concentration(given const& g) {
    wanted const w{"a sugar concentration", "g/L, g/100 mL"};
    number_and_unit const q = read_quantity(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    if (unit == "g/l") return q.number * gram_per_litre;
    if (unit == "g/100ml") return 10.0 * q.number * gram_per_litre;
    refuse_unit(g, q.unit, w);
}

sweetener read_sweetener(given const& g) {
    for (sweetener const each :
         {sweetener::sucrose, sweetener::glucose, sweetener::fructose, sweetener::invert_sugar})
        if (trimmed(g.text) == name_of(each)) return each;
    refuse(g, "expected sucrose, glucose, fructose or 'invert sugar', all without water of crystallization");
}

namespace {
constexpr wanted a_refraction{"a refractometer reading", "brix, or none for a refractive index"};
bool names_brix(std::string const& unit) { return unit == "brix" || unit == "bx" || unit == "°bx"; }
}  // namespace

bool is_brix(given const& g) {
    try {
        return g.present && names_brix(squeezed(read_number(g, g.text, a_refraction).unit));
    } catch (bad_input const&) {  // no number: reading it in earnest gives the error
        return false;
    }
}

refraction read_refraction(given const& g) {
    number_and_unit const q = read_number(g, g.text, a_refraction);
    std::string const unit = squeezed(q.unit);
    return on_behalf_of(g, [&]() -> refraction {
        if (names_brix(unit)) return brix(q.number);
        if (unit.empty()) return refractive_index(q.number);
        refuse_unit(g, q.unit, a_refraction);
    });
}

refractive_index index_of(refraction const& shown) {
    if (auto const* degrees = std::get_if<brix>(&shown)) return refractive_index_of(*degrees);
    return std::get<refractive_index>(shown);
}

units::mass_density read_density_at_20(given const& g) {
    wanted const w{"a density at 20 °C", "kg/m3, g/cm3, sg (20/20 C), or plato"};
    number_and_unit const q = read_quantity(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    auto const water = density(mass_fraction(0.0), celsius(20.0));
    return on_behalf_of(g, [&]() -> units::mass_density {
        if (unit == "kg/m3") return q.number * kilogram_per_cubic_metre;
        if (unit == "g/cm3") return q.number * gram_per_cubic_centimetre;
        if (unit == "sg") return specific_gravity(q.number).value() * water;
        if (unit == "plato" || unit == "p")
            return specific_gravity_of(apparent_extract(q.number)).value() * water;
        refuse_unit(g, q.unit, w);
    });
}

specific_gravity read_original_gravity(given const& g) {
    if (is_brix(g)) return specific_gravity_of(extract(std::get<brix>(read_refraction(g)).degrees()));
    units::mass_density const rho = read_density_at_20(g);
    return on_behalf_of(
        g, [&] { return specific_gravity(in(rho, density(mass_fraction(0.0), celsius(20.0)))); });
}

std::string in_words(wording const& words, units::mass_density sugar) {
    std::string const metric = fmt::format("{:.1f} g/L", sugar.value());
    if (!words.us) return metric;
    return fmt::format("{} ({} oz/US gal)", metric, number(in(sugar, ounce / us_gallon), words.digits));
}

double to_reference(wording const& words, wash const& w) {
    mass_fraction const pure(1.0);
    units::temperature const reference = words.reference_temperature();
    return in(density(pure, celsius(20)), density(pure, reference)) *
           in(w.volume(celsius(20)), w.volume(reference));
}

void say_sugar_doubt(page& text, wording const& words, sweetened const& liqueur) {
    text.say("{}", additive_volumes);
    if (liqueur.sugar().value() == 0.0) return;
    text.say(
        "{} of them was as strong and as sweet as this liquid. If the sugar takes 1 % more or less\nroom, "
        "a strength read from the density is wrong by {:.2g} {}.",
        liqueur.checked_by_analyses() ? "At least one" : "None",
        (words.us ? 200.0 : 100.0) * liqueur.strength_doubt(), words.strength_unit());
}

}  // namespace program
