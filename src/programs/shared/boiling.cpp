// SPDX-License-Identifier: BSL-1.0
#include "boiling.hpp"

#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/model/modified_raoult.hpp>
#include <aqueth/model/vapour_deviations.hpp>
#include <aqueth/model/vapour_liquid.hpp>

#include <fmt/format.h>

#include <algorithm>

namespace program {

namespace {

std::optional<model_doubt> doubt_about(equilibrium const& e, mole_fraction x,
                                       double (*uncertainty)(equilibrium const&)) {
    try {
        double const u = uncertainty(e);
        return model_doubt{mole_fraction((std::max)(0.0, x.value() - u)),
                           mole_fraction((std::min)(1.0, x.value() + u)), u,
                           relative_volatility_uncertainty(e.liquid, e.pressure)};
    } catch (refusal const&) {
        return std::nullopt;
    }
}

}  // namespace

std::vector<correlation::source> boiling_sources() {
    using namespace correlation;
    using namespace model;
    return {oiml_r22::cited,          vapour_liquid::cited,
            excess_gibbs::cited,      water_saturation_wagner_pruss::cited,
            modified_raoult::cited,   ethanol_saturation_poling::cited,
            vapour_deviations::cited, icao_atmosphere::cited};
}

double percent_vol(mole_fraction x) { return to<volume_fraction>(x).percent(); }

json to_json(mole_fraction x) {
    return {{"percent_vol_20C", percent_vol(x)},
            {"percent_mass", to<mass_fraction>(x).percent()},
            {"percent_mol", x.percent()}};
}

std::optional<equilibrium> azeotrope_at(units::pressure p) {
    try {
        return azeotrope(p);
    } catch (refusal const&) {
        return std::nullopt;
    }
}

std::string air_in_words(wording const& words, surroundings const& air, units::pressure p) {
    if (air.pressure.present) return words.pressure(p);
    return fmt::format("{}, the mean at {}; the weather changes it by up to 4 %", words.pressure(p),
                       printable(trimmed(air.altitude.text)));
}

char const* what_a_wash_adds(wording const& words) { return words.us ? "0.2 to 0.4 °F" : "0.1 to 0.2 K"; }

char const* measured_pressures(wording const& words) {
    return words.us ? "7.38 to 88.6 inHg" : "25 to 300 kPa";
}

std::optional<model_doubt> doubt_about_vapour(equilibrium const& e) {
    return doubt_about(e, e.vapour, &vapour_uncertainty);
}
std::optional<model_doubt> doubt_about_liquid(equilibrium const& e) {
    return doubt_about(e, e.liquid, &liquid_uncertainty);
}

std::string in_brackets(wording const& words, std::optional<model_doubt> const& doubt) {
    if (!doubt) return {};
    std::string const lower = words.rounded(doubt->lower), upper = words.rounded(doubt->upper);
    return lower == upper ? std::string() : fmt::format(" ({} to {})", lower, upper);
}

void say_doubt(page& text, wording const& words, std::optional<model_doubt> const& doubt) {
    if (doubt && doubt->uncertainty == 0.0) return;  // a pure liquid
    if (!doubt) {
        text.row("  uncertainty", "not known: vapours were measured from {} only", measured_pressures(words));
        return;
    }
    text.row("  uncertainty", "{} to {}, one standard uncertainty of the model", words.rounded(doubt->lower),
             words.rounded(doubt->upper));
}

json to_json(std::optional<model_doubt> const& doubt) {
    if (!doubt) return nullptr;
    return {{"standard_uncertainty_percent_mol", 100.0 * doubt->uncertainty},
            {"percent_vol_20C_from", percent_vol(doubt->lower)},
            {"percent_vol_20C_to", percent_vol(doubt->upper)},
            {"relative_standard_uncertainty_of_volatility", doubt->relative_volatility}};
}

void say_azeotrope(page& text, wording const& words, units::pressure p) {
    auto const most = azeotrope_at(p);
    text.row("azeotrope", "{}",
             most ? fmt::format("{} at {}: distilling cannot go beyond it", words.fractions(most->liquid),
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
