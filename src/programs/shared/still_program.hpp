// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Shared by the programs about wash and still: quantities, the charge, cautions.

#include "boiling.hpp"
#include "program.hpp"
#include "progress.hpp"

#include <aqueth/aqueth.hpp>

#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace program {

/// Reads a plain number within limits.
double read_plain(given const& g, double least, double most);

/// Reads "1.050 sg" or "12.4 plato". Brix is refused, because with alcohol a refractometer and a
/// saccharometer show different values of it.
apparent_extract read_extract(given const& g);

/// The parts of a list, separated by commas or semicolons.
std::vector<given> parts_of(given const& g);

/// The mixture that boils at the pressure of the day.
boiling_curve read_curve(surroundings const& air);

/// The charge: amount, strength, extract, temperature.
struct charge_options {
    given const& amount;
    given const& strength;
    given const& solids;
    given const& temperature;

    /// @param name        the option of the amount
    /// @param description its help
    static charge_options
    offer(session& s, char const* name = "--charge",
          char const* description =
              "liquid in the pot: volume at its temperature, or mass; never more than two "
              "thirds of what the vessel holds");
    wash read() const;
};

/// Refuses an option that has no effect without another one.
void require_beside(given const& g, bool other_present, char const* other);

/// The defaults that the answer assumes, each with the option that changes it.
class assumptions {
public:
    /// @param g     the option; nothing is assumed if it was given
    /// @param words the assumption, in words
    void unless_given(given const& g, std::string words) {
        if (!g.present) all_.push_back({g.name, g.text, std::move(words)});
    }
    void say(page& text) const;
    json to_json() const;  ///< the options and the values taken for them

private:
    struct assumption {
        std::string option, value, words;
    };
    std::vector<assumption> all_;
};

/// A number with at most so many significant digits, never with an exponent: "3", "0.25", "14000".
std::string plain_digits(double value, int significant);

std::string in_hours(units::time t);

/// The volume collected, at the temperature to which the answer refers volumes.
units::volume volume_collected(wording const& words, run_point const& p);

inline constexpr char const* run_caution = "Caution: never close or leave a running still. Discarding "
                                           "foreshots does not remove methanol (--cautions).";
inline constexpr char const* gas_caution =
    "Caution: carbon dioxide is heavy and chokes. Let fresh air through cellars and vats.";

}  // namespace program
