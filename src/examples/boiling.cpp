// SPDX-License-Identifier: BSL-1.0
#include "boiling.hpp"

namespace program {

std::vector<correlation::source> boiling_sources() {
    using namespace correlation;
    return {oiml_r22::cited,        vapour_liquid::cited,
            excess_gibbs::cited,    water_saturation_wagner_pruss::cited,
            modified_raoult::cited, ethanol_saturation_poling::cited,
            icao_atmosphere::cited};
}

json to_json(mole_fraction x) {
    return {{"percent_vol_20C", to<volume_fraction>(x).percent()},
            {"percent_mass", to<mass_fraction>(x).percent()},
            {"percent_mol", x.percent()}};
}

std::optional<equilibrium> azeotrope_at(units::pressure p) {
    try {
        return azeotrope(p);
    } catch (range_error const&) {
        return std::nullopt;
    }
}

std::string air_in_words(wording const& words, surroundings const& air, units::pressure p) {
    if (air.pressure.present) return words.pressure(p);
    return fmt::format("{}, the mean at {}; weather moves it by up to 4 %", words.pressure(p),
                       printable(trimmed(air.altitude.text)));
}

void say_azeotrope(page& text, wording const& words, units::pressure p) {
    auto const most = azeotrope_at(p);
    text.row("azeotrope", "{}",
             most ? fmt::format("{} at {}: distilling goes no further", words.fractions(most->liquid),
                                words.exact_temperature(most->temperature))
                  : std::string("none at this pressure"));
}

json azeotrope_to_json(units::pressure p) {
    auto const most = azeotrope_at(p);
    if (!most) return nullptr;
    json data = to_json(most->liquid);
    data["temperature_C"] = most->temperature.celsius();
    return data;
}

}  // namespace program
