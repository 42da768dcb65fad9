// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities on paper: in words, in JSON, and on a page with what to do first.

#include "quantities.hpp"

#include <aqueth/aqueth.hpp>

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>

namespace program {

using namespace aqueth;
using json = nlohmann::ordered_json;

/// A number with so many significant digits, never with an exponent.
inline std::string number(double value, int significant = 5) {
    if (std::abs(value) < 1e-12) return "0";  // rounding of a difference
    // Half a unit of the last digit first, so that 99.9999 gets the digits of the 100.00 it is printed as.
    double const size = std::abs(value) * (1.0 + 0.5 * std::pow(10.0, -significant));
    int const decimals = significant - 1 - static_cast<int>(std::floor(std::log10(size)));
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
        return us ? fmt::format("{:.4g} °F", written(t.fahrenheit()))
                  : fmt::format("{:.4g} °C", written(t.celsius()));
    }
    /// A temperature of which hundredths matter: that of boiling.
    std::string exact_temperature(units::temperature t) const {
        return us ? fmt::format("{:.2f} °F", t.fahrenheit()) : fmt::format("{:.2f} °C", t.celsius());
    }
    /// A temperature that is worked out rather than measured.
    std::string rounded(units::temperature t) const {
        return us ? fmt::format("{:.1f} °F", t.fahrenheit()) : fmt::format("{:.1f} °C", t.celsius());
    }
    /// The strength of a vapour: no finer than that is known.
    std::string rounded(mole_fraction x) const {
        auto const w = to<mass_fraction>(x);
        return us ? fmt::format("{:.0f} US proof", to<us_proof>(w).degrees())
                  : fmt::format("{:.1f} % vol", to<volume_fraction>(w).percent());
    }
    std::string pressure(units::pressure p) const {
        return us ? number(in(p, 25.4 * millimetre_of_mercury)) + " inHg"
                  : number(in(p, kilopascal)) + " kPa";
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

/// What parts give before the mixture loses any heat, if that can be worked out.
inline std::optional<parcel> fresh_mixture(std::span<parcel const> parts) {
    try {
        return mix(parts).product;
    } catch (range_error const&) {
        return std::nullopt;
    }
}
inline void say_fresh(page& text, json& data, wording const& in_words, std::optional<parcel> const& fresh,
                      units::temperature later) {
    if (fresh) {
        text.row("comes out", "at {}, {}, if no heat is lost{}", in_words.rounded(fresh->temperature()),
                 in_words.volume(fresh->volume()),
                 fresh->temperature() > later + kelvins ? ": let it cool before you read it" : "");
    } else {
        text.row("comes out",
                 "nobody knows how warm: a part or the mixture is below 0 °C, or it is above 40 °C");
    }
    data["fresh_mixture"] = fresh ? to_json(*fresh) : json();
}

inline constexpr char const* vapour_caution =
    "Caution: spirit and its vapour catch fire. No flame, spark or hot plate near; let in fresh air.";
inline constexpr char const* fresh_mixture_caution =
    "Caution: a fresh mixture is warm and full of fine bubbles and reads wrongly. Let it stand, stir,\n"
    "measure its temperature, and correct the reading (correct_reading).";

}  // namespace program
