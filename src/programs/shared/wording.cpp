// SPDX-License-Identifier: BSL-1.0
#include "wording.hpp"

#include <algorithm>
#include <cmath>

namespace program {

std::string number(double value, int significant) {
    if (std::abs(value) < 1e-12) return "0";  // rounding of a difference
    // Half a unit of the last digit first, so that 99.9999 gets the digits of the 100.00 it is printed as.
    double const size = std::abs(value) * (1.0 + 0.5 * std::pow(10.0, -significant));
    int const decimals = significant - 1 - static_cast<int>(std::floor(std::log10(size)));
    return fmt::format("{:.{}f}", value, std::clamp(decimals, 0, 15));
}

namespace {
/// The larger unit begins where the digits of the smaller one would show it: no "1000 g".
double nearly(int digits) { return 1.0 - 0.5 * std::pow(10.0, -digits); }

/// Gallons are gauged to a tenth (27 CFR part 30), however many there are.
std::string gallons(double value, int digits) {
    return value < 1000.0 ? number(value, digits + 1) : fmt::format("{:.1f}", value);
}
}  // namespace

void clear_signs_of_zeros(std::string& text, std::size_t begin) {
    constexpr std::string_view digits = "0123456789";
    for (auto at = text.find("-0", begin); at != std::string::npos; at = text.find("-0", at + 1)) {
        // A sign stands apart: the hyphens of "R 22-0", "2026-01-05", "--0" and of a quoted "'-0 C'" are
        // none.
        bool const is_sign = at == 0 || text[at - 1] == ' ' || text[at - 1] == '(' || text[at - 1] == '\n';
        std::size_t end = text.find_first_not_of('0', at + 1);
        if (end < text.size() && text[end] == '.') end = text.find_first_not_of('0', end + 1);
        char const behind = end < text.size() ? text[end] : ' ';
        bool const is_zero = digits.find(behind) == std::string_view::npos && behind != 'e';
        if (!is_sign || !is_zero) continue;
        bool const is_in_column = at >= begin + 2 && text[at - 1] == ' ' && text[at - 2] == ' ';
        if (is_in_column) {
            text[at] = ' ';
        } else {
            text.erase(at, 1);
        }
    }
}

std::vector<std::string_view> lines_of(std::string_view text) {
    std::vector<std::string_view> lines;
    while (!text.empty()) {
        auto const end = (std::min)(text.find('\n'), text.size());
        lines.push_back(text.substr(0, end));
        text.remove_prefix((std::min)(end + 1, text.size()));
    }
    return lines;
}

units::mass balance_indication_of(parcel const& p) {
    return balance_indication(p.mass(), density(p.composition(), p.temperature()));
}

std::string wording::mass(units::mass m) const {
    bool const small = m < nearly(digits) * (us ? pound : kilogram);
    if (us) return small ? number(in(m, ounce), digits) + " oz" : number(in(m, pound), digits) + " lb";
    return small ? number(in(m, gram), digits) + " g" : number(in(m, kilogram), digits) + " kg";
}
std::string wording::weight(units::mass m, units::mass_density rho) const {
    return mass(balance_indication(m, rho));
}
std::string wording::weight(parcel const& p) const { return mass(balance_indication_of(p)); }

std::string wording::volume(units::volume v) const {
    if (us) {
        return v < nearly(digits) * us_gallon ? number(in(v, us_fluid_ounce), digits) + " US fl oz"
                                              : gallons(in(v, us_gallon), digits) + " US gal";
    }
    return v < nearly(digits) * litre ? number(in(v, millilitre), digits) + " mL"
                                      : number(in(v, litre), digits) + " L";
}

std::string wording::temperature(units::temperature t) const {
    return fmt::format("{:.4g} {}", written(temperature_number(t)), temperature_unit());
}
std::string wording::exact_temperature(units::temperature t) const {
    return fmt::format("{:.2f} {}", temperature_number(t), temperature_unit());
}
std::string wording::rounded(units::temperature t) const {
    return fmt::format("{:.1f} {}", temperature_number(t), temperature_unit());
}
std::string wording::difference(units::temperature_difference d) const {
    double const degrees = us ? 1.8 * d.value() : d.value();
    std::string const shown = std::abs(degrees) < 0.005 ? "less than 0.01" : number(degrees, 2);
    return shown + (us ? " °F" : " K");
}

std::string wording::rounded(mole_fraction x) const {
    return fmt::format("{:.{}f} {}", strength_number(x), us ? 0 : 1, strength_unit());
}

double wording::pressure_number(units::pressure p) const { return in(p, us ? inch_of_mercury : kilopascal); }
std::string wording::pressure(units::pressure p) const {
    return fmt::format("{} {}", number(pressure_number(p)), pressure_unit());
}

double wording::strength_number(mass_fraction w) const {
    return us ? to<us_proof>(w).degrees() : to<volume_fraction>(w).percent();
}
std::string wording::strength(mass_fraction w) const {
    return fmt::format("{:.{}f} {}", strength_number(w), us ? 1 : 2, strength_unit());
}

std::string wording::strength_difference(double percent_vol) const {
    double const shown = us ? 2.0 * percent_vol : percent_vol;
    return fmt::format("{:.3g} {}", shown < 0.005 ? 0.0 : shown, strength_unit());
}

std::string wording::fractions(mass_fraction w) const {
    return fmt::format("{}, {:.2f} % mass, {:.2f} % mol", strength(w), w.percent(),
                       to<mole_fraction>(w).percent());
}

std::string wording::density(units::mass_density rho) const {
    return us ? fmt::format("{:.4f} lb/US gal in air", in(density_in_air(rho), pound / us_gallon))
              : fmt::format("{:.1f} kg/m3", rho.value());
}

std::string wording::pure_alcohol(units::volume at_20_celsius) const {
    if (!us) return volume(at_20_celsius) + " at 20 °C";
    // A gallon of pure alcohol at 60 °F, 200 proof, is two proof gallons.
    mass_fraction const pure(1.0);
    double const shrunk = in(aqueth::density(pure, celsius(20)), aqueth::density(pure, fahrenheit(60)));
    return gallons(2.0 * in(shrunk * at_20_celsius, us_gallon), digits) + " proof gal";
}

std::string wording::liquid(parcel const& p) const {
    std::string const at =
        fmt::format("{}, {} at {}", weight(p), volume(p.volume()), temperature(p.temperature()));
    return p.ethanol() > units::mass() ? at + ", " + strength(p.composition()) : at;
}

json to_json(parcel const& p) {
    return {{"mass_kg", in(p.mass(), kilogram)},
            {"balance_indication_kg", in(balance_indication_of(p), kilogram)},
            {"volume_L", in(p.volume(), litre)},
            {"temperature_C", p.temperature().celsius()},
            {"strength_percent_vol_20C", p.strength().percent()},
            {"strength_percent_mass", p.composition().percent()},
            {"pure_alcohol_L_20C", in(p.pure_alcohol(), litre)},
            {"proof_gallons", p.proof_gallons()}};
}

void say_blend(page& text, wording const& in_words, blend const& b) {
    text.row("product", "{}", in_words.liquid(b.product));
    text.row("pure alcohol", "{}", in_words.alcohol(b.product));
    text.row("before mixing", "{} at {}", in_words.volume(b.sum_of_volumes),
             in_words.temperature(b.product.temperature()));
    // Parts of one strength leave only rounding, which is neither lost nor gained.
    bool const rounding = std::abs(b.contraction_percent()) < 1e-9;
    say_contraction(text, in_words, rounding ? units::volume() : b.contraction,
                    fmt::format(" ({:.2f} %)", rounding ? 0.0 : std::abs(b.contraction_percent())));
}

void say_contraction(page& text, wording const& in_words, units::volume lost, std::string_view in_brackets) {
    bool const gained = lost < units::volume();
    text.row(gained ? "gained in mixing" : "lost in mixing", "{}{}", in_words.volume(gained ? -lost : lost),
             in_brackets);
}

json to_json(blend const& b) {
    return {{"product", to_json(b.product)},
            {"sum_of_volumes_L", in(b.sum_of_volumes, litre)},
            {"contraction_L", in(b.contraction, litre)},
            {"contraction_percent", b.contraction_percent()}};
}

namespace {
/// Water above this scalds within minutes (common practice, from memory).
constexpr double scalding_celsius = 50.0;

/// The boiling point at sea level.
units::temperature boils_at(mass_fraction w) { return bubble_point(w, 101.325 * kilopascal).temperature; }
}  // namespace

fresh_mixture::fresh_mixture(std::span<parcel const> parts) {
    auto const hottest = [&](auto const& than) {
        return std::any_of(parts.begin(), parts.end(), [&](parcel const& each) {
            return each.mass() > units::mass() && each.temperature() >= than;
        });
    };
    hot = hottest(celsius(scalding_celsius));
    try {
        product = mix(parts).product;
        hot = hot || product->temperature() >= celsius(scalding_celsius);
    } catch (refusal const& e) {
        boils = e.code() == argument::temperature_of_the_mixture_without_loss_of_heat &&
                !(e.value() <= e.upper());
    }
    if (!hot) return;
    near_boiling =
        boils || (product && product->temperature() > boils_at(product->composition()) - 10.0 * kelvins) ||
        std::any_of(parts.begin(), parts.end(), [&](parcel const& each) {
            return each.mass() > units::mass() && hottest(boils_at(each.composition()) - 10.0 * kelvins);
        });
}

void say_fresh(page& text, json& data, wording const& in_words, fresh_mixture const& fresh,
               units::temperature later) {
    if (fresh.product) {
        units::temperature const at_once = fresh.product->temperature();
        text.row("comes to", "{}, {}, {}", in_words.rounded(at_once),
                 in_words.volume(fresh.product->volume()),
                 at_once > later + kelvins   ? "if no heat is lost: let it cool before you read it"
                 : at_once < later - kelvins ? "if it takes up no heat: let it warm before you read it"
                                             : "if no heat is lost");
    } else if (fresh.boils) {
        text.row("comes to", "its boiling point: let the parts cool before you mix them");
    } else {
        text.row("comes to", "not known: the heat of mixing is known from {} to the boiling point",
                 in_words.temperature(celsius(0)));
    }
    data["fresh_mixture"] = fresh.product ? to_json(*fresh.product) : json();
}

std::string mixing_cautions(fresh_mixture const& fresh) {
    std::string lines =
        "A fresh mixture is often warm, and full of bubbles. Let it settle and clear before you read it.\n";
    if (fresh.near_boiling)
        lines +=
            "Caution: this mixture can boil up, throw out scalding spirit and fill the room with vapour.\n"
            "Let the parts cool before you mix them.\n";
    else if (fresh.hot)
        lines += "Caution: hot liquid scalds, and hot spirit gives off much vapour. Let the parts cool "
                 "before you mix them.\n";
    return lines + vapour_caution;
}

}  // namespace program
