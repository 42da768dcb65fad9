// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities in answers: in words, in JSON, and on a page that begins with what to do.

#include "json.hpp"
#include "quantities.hpp"

#include <aqueth/aqueth.hpp>

#include <fmt/format.h>

#include <iterator>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace program {

using namespace aqueth;

/// The significant digits of volumes and masses, unless --digits gives others.
inline constexpr int usual_digits = 4;

/// A number with the given count of significant digits, never with an exponent.
std::string number(double value, int significant = usual_digits);

/// Quantities in text: metric, referred to 20 °C; or US customary, referred to 60 °F as in 27 CFR part 30.
struct wording {
    bool us = false;
    int digits = usual_digits;  ///< significant, of volumes and masses

    /// @return the temperature to which volumes and strengths are referred
    units::temperature reference_temperature() const { return us ? fahrenheit(60.0) : celsius(20.0); }

    /// @return the volume that figures per volume are for, and its name
    units::volume one_volume() const { return us ? us_gallon : litre; }
    char const* one_volume_name() const { return us ? "US gallon" : "litre"; }

    /// @return a strength as a number of `strength_unit`: degrees of US proof, or % vol at 20 °C
    double strength_number(mass_fraction w) const;
    double strength_number(mole_fraction x) const { return strength_number(to<mass_fraction>(x)); }
    char const* strength_unit() const { return us ? "US proof" : "% vol"; }
    /// @return a temperature as a number of `temperature_unit`
    double temperature_number(units::temperature t) const { return us ? t.fahrenheit() : t.celsius(); }
    char const* temperature_unit() const { return us ? "°F" : "°C"; }
    /// @return a pressure as a number of `pressure_unit`
    double pressure_number(units::pressure p) const;
    char const* pressure_unit() const { return us ? "inHg" : "kPa"; }

    /// The balance indication of a parcel in air.
    std::string weight(parcel const& p) const;
    /// The same for a mass of any material of that density.
    std::string weight(units::mass m, units::mass_density rho) const;
    /// A mass that is not weighed: of a gas, or of what is dissolved.
    std::string mass(units::mass m) const;
    std::string volume(units::volume v) const;
    std::string temperature(units::temperature t) const;
    /// A temperature with two decimals, for boiling points.
    std::string exact_temperature(units::temperature t) const;
    /// A temperature that is computed rather than measured.
    std::string rounded(units::temperature t) const;
    /// A difference of temperatures.
    std::string difference(units::temperature_difference d) const;
    /// The strength of a vapour, with the digits that its uncertainty allows.
    std::string rounded(mole_fraction x) const;
    std::string pressure(units::pressure p) const;
    std::string strength(mass_fraction w) const;
    std::string strength(mole_fraction x) const { return strength(to<mass_fraction>(x)); }
    /// A difference of strengths in % vol; US proof counts it twice.
    std::string strength_difference(double percent_vol) const;
    /// A strength by volume, by mass and by moles.
    std::string fractions(mass_fraction w) const;
    std::string fractions(mole_fraction x) const { return fractions(to<mass_fraction>(x)); }
    /// A density; the US one is a weight in air by volume, as 27 CFR part 30 has it.
    std::string density(units::mass_density rho) const;
    /// Pure alcohol, or proof gallons.
    std::string alcohol(parcel const& p) const { return pure_alcohol(p.pure_alcohol()); }
    /// The same of a volume of pure alcohol at 20 °C.
    std::string pure_alcohol(units::volume at_20_celsius) const;
    std::string liquid(parcel const& p) const;
};

/// The balance indication of a parcel in air (OIML D 28).
units::mass balance_indication_of(parcel const& p);

json to_json(parcel const& p);

/// Takes the sign from every number that was rounded to zero: "-0.00" becomes "0.00".
/// @param begin where to begin
void clear_signs_of_zeros(std::string& text, std::size_t begin = 0);

/// The text of an answer: first what to do, then rows of details.
class page {
public:
    template <class... T>
    void say(fmt::format_string<T...> format, T&&... arguments) {
        std::size_t const begin = text_.size();
        fmt::format_to(std::back_inserter(text_), format, std::forward<T>(arguments)...);
        clear_signs_of_zeros(text_, begin);
        text_ += '\n';
    }
    template <class... T>
    void row(std::string_view label, fmt::format_string<T...> format, T&&... arguments) {
        fmt::format_to(std::back_inserter(text_), "  {:<17} ", label);
        say(format, std::forward<T>(arguments)...);
    }
    /// One blank line, even where the block before already ends with one.
    void gap() {
        if (!text_.ends_with("\n\n")) text_ += '\n';
    }
    std::string const& text() const { return text_; }

private:
    std::string text_;
};

/// @return the lines of a text, without their ends
std::vector<std::string_view> lines_of(std::string_view text);

/// Rows and values of every mixture.
void say_blend(page& text, wording const& in_words, blend const& b);
json to_json(blend const& b);

/// A row with the volume lost in mixing, or gained: a weak spirit and water take more room together.
/// @param in_brackets what follows the volume, "(1.87 %)"
void say_contraction(page& text, wording const& in_words, units::volume lost, std::string_view in_brackets);

/// The mixture before it gives heat to its surroundings or takes it from them.
struct fresh_mixture {
    explicit fresh_mixture(std::span<parcel const> parts);

    std::optional<parcel> product = {};  ///< nothing if it cannot be computed
    bool boils = false;                  ///< the parts are too hot for a liquid mixture
    bool near_boiling = false;           ///< or it comes within 10 K of that, or boils where the parts meet
    bool hot = false;                    ///< a part or the mixture scalds
};
void say_fresh(page& text, json& data, wording const& in_words, fresh_mixture const& fresh,
               units::temperature later);

// --- cautions: one line that fits the answer; --cautions prints them all -----------------------------------

inline constexpr char const* vapour_caution =
    "Caution: spirit and its vapour catch fire. Keep flames and sparks away; let in fresh air.";

/// Cautions before a mixture is read, and while it is made.
std::string mixing_cautions(fresh_mixture const& fresh);

}  // namespace program
