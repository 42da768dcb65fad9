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
std::string number(double value, int significant = 5);

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

json to_json(parcel const& p);

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
void say_blend(page& text, wording const& in_words, blend const& b);
json to_json(blend const& b);

/// What parts give before the mixture loses any heat, if that can be worked out.
std::optional<parcel> fresh_mixture(std::span<parcel const> parts);
void say_fresh(page& text, json& data, wording const& in_words, std::optional<parcel> const& fresh,
               units::temperature later);

inline constexpr char const* vapour_caution =
    "Caution: spirit and its vapour catch fire. No flame, spark or hot plate near; let in fresh air.";
inline constexpr char const* fresh_mixture_caution =
    "Caution: a fresh mixture is warm and full of fine bubbles and reads wrongly. Let it stand, stir,\n"
    "measure its temperature, and correct the reading (correct_reading).";

}  // namespace program
