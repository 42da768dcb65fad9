// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// What the programs about boiling share: temperatures of the still, mixtures in words, sources and cautions.

#include "program.hpp"

#include <aqueth/aqueth.hpp>
#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/excess_gibbs.hpp>
#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/correlation/modified_raoult.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/vapour_liquid.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>

#include <fmt/format.h>

#include <optional>
#include <string>
#include <vector>

namespace program {

inline std::vector<correlation::source> boiling_sources() {
    using namespace correlation;
    return {oiml_r22::cited,        vapour_liquid::cited,
            excess_gibbs::cited,    water_saturation_wagner_pruss::cited,
            modified_raoult::cited, ethanol_saturation_poling::cited,
            icao_atmosphere::cited};
}

inline constexpr char const* still_caution =
    "Caution: never close a vessel that is heated. Its vapour needs a way out that cannot clog, and a\n"
    "condenser with its water running; where it escapes it burns and scalds. Heat no spirit over a flame.\n"
    "Distil only where law and licence allow it.";

/// A mixture in all three fractions.
inline std::string fractions(mole_fraction x) {
    return fmt::format("{:.2f} % vol, {:.2f} % mass, {:.2f} % mol", to<volume_fraction>(x).percent(),
                       to<mass_fraction>(x).percent(), x.percent());
}
inline json to_json(mole_fraction x) {
    return {{"percent_vol_20C", to<volume_fraction>(x).percent()},
            {"percent_mass", to<mass_fraction>(x).percent()},
            {"percent_mol", x.percent()}};
}

/// The azeotrope, if there is one.
inline std::optional<equilibrium> azeotrope_at(units::pressure p) {
    try {
        return azeotrope(p);
    } catch (range_error const&) {
        return std::nullopt;
    }
}

/// The pressure at the still, and how well it is known.
inline std::string air_in_words(wording const& words, surroundings const& air, units::pressure p) {
    if (air.pressure.present) return words.pressure(p);
    return fmt::format("{}, the mean at {}; weather moves it by up to 4 %", words.pressure(p),
                       printable(trimmed(air.altitude.text)));
}

inline void say_azeotrope(page& text, wording const& words, units::pressure p) {
    auto const most = azeotrope_at(p);
    text.row("azeotrope", "{}",
             most ? fmt::format("{} at {}: distilling goes no further", fractions(most->liquid),
                                words.exact_temperature(most->temperature))
                  : std::string("none at this pressure"));
}
inline json azeotrope_to_json(units::pressure p) {
    auto const most = azeotrope_at(p);
    if (!most) return nullptr;
    json data = to_json(most->liquid);
    data["temperature_C"] = most->temperature.celsius();
    return data;
}

}  // namespace program
