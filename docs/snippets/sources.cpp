// SPDX-License-Identifier: BSL-1.0
// The sources as the library itself carries them.
#include <aqueth/correlation/air_buoyancy.hpp>
#include <aqueth/correlation/balling.hpp>
#include <aqueth/correlation/cask_loss_limits.hpp>
#include <aqueth/correlation/cipm_2001_water.hpp>
#include <aqueth/correlation/ethanol_saturation_poling.hpp>
#include <aqueth/correlation/ethanol_schroeder.hpp>
#include <aqueth/correlation/excise_notice_226.hpp>
#include <aqueth/correlation/fermentation.hpp>
#include <aqueth/correlation/fermentation_heat.hpp>
#include <aqueth/correlation/flammability.hpp>
#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/correlation/glass_expansion.hpp>
#include <aqueth/correlation/heat_capacity_perry.hpp>
#include <aqueth/correlation/iapws_liquid_water.hpp>
#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/correlation/its90.hpp>
#include <aqueth/correlation/malt_heat.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/second_virial_crc.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/correlation/thermal_conductivity_melinder.hpp>
#include <aqueth/correlation/trade_scales.hpp>
#include <aqueth/correlation/water_saturation_wagner_pruss.hpp>
#include <aqueth/metrology/conformity.hpp>
#include <aqueth/metrology/monte_carlo.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/ethanol_second_virial.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/model/hot_density.hpp>
#include <aqueth/model/methanol_water.hpp>
#include <aqueth/model/modified_raoult.hpp>
#include <aqueth/model/refraction.hpp>
#include <aqueth/model/sound_speed.hpp>
#include <aqueth/model/sugar_solution.hpp>
#include <aqueth/model/traces.hpp>
#include <aqueth/model/vapour_deviations.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/model/viscosity.hpp>

#include <cstdio>
#include <string>

namespace {

/// prints words behind a label, broken at 90 columns
void paragraph(std::string const& label, std::string text) {
    std::string line = "  " + label + std::string(9 - label.size(), ' ');
    std::size_t const indent = line.size();
    text += ' ';
    while (!text.empty()) {
        auto const end = text.find(' ');
        if (line.size() + end >= 90) {
            std::printf("%s\n", line.c_str());
            line = std::string(indent, ' ');
        }
        line += ' ' + text.substr(0, end);
        text.erase(0, end + 1);
    }
    std::printf("%s\n", line.c_str());
}

void show(char const* name, aqueth::correlation::source const& cited, bool first = false) {
    std::printf("%s%s\n", first ? "" : "\n", name);
    paragraph("source", cited.citation);
    paragraph("range", cited.range);
    paragraph("accuracy", cited.accuracy);
}

}  // namespace

int main() {
    using namespace aqueth::correlation;
    using namespace aqueth::model;
    show("correlation::oiml_r22", oiml_r22::cited, true);
    show("model::hot_density", hot_density::cited);
    show("correlation::iapws_liquid_water", iapws_liquid_water::cited);
    show("correlation::ethanol_schroeder", ethanol_schroeder::cited);
    show("correlation::cipm_2001_water", cipm_2001_water::cited);
    show("correlation::freezing_point", freezing_point::cited);
    show("correlation::glass_expansion", glass_expansion::cited);
    show("correlation::its90", its90::cited);
    show("correlation::air_buoyancy", air_buoyancy::cited);
    show("correlation::molar_mass", molar_mass::cited);
    show("correlation::gas_constant", gas_constant::cited);
    show("model::vapour_liquid", vapour_liquid::cited);
    show("model::vapour_deviations", vapour_deviations::cited);
    show("model::traces", aqueth::model::traces::cited);
    show("model::excess_gibbs", excess_gibbs::cited);
    show("model::modified_raoult", modified_raoult::cited);
    show("correlation::water_saturation_wagner_pruss", water_saturation_wagner_pruss::cited);
    show("correlation::ethanol_saturation_poling", ethanol_saturation_poling::cited);
    show("correlation::second_virial_crc", second_virial_crc::cited);
    show("model::ethanol_second_virial", ethanol_second_virial::cited);
    show("model::enthalpy", enthalpy::cited);
    show("correlation::heat_capacity_perry", heat_capacity_perry::cited);
    show("correlation::icao_atmosphere", icao_atmosphere::cited);
    show("model::viscosity", viscosity::cited);
    show("model::sound_speed", sound_speed::cited);
    show("correlation::thermal_conductivity_melinder", thermal_conductivity_melinder::cited);
    show("correlation::flammability", flammability::cited);
    show("correlation::sucrose_density", sucrose_density::cited);
    show("model::sugar_solution", sugar_solution::cited);
    show("model::refraction", refraction::cited);
    show("model::methanol_water", methanol_water::cited);
    show("correlation::balling", balling::cited);
    show("correlation::balling, factors", balling::factors_cited);
    show("correlation::fermentation", fermentation::cited);
    show("correlation::fermentation_heat", fermentation_heat::cited);
    show("correlation::malt_heat", malt_heat::cited);
    show("correlation::cask_loss_limits", cask_loss_limits::cited);
    show("correlation::trade_scales", trade_scales::cited);
    show("correlation::excise_notice_226", excise_notice_226::cited);
    show("uncertainty", aqueth::gum_cited);
    show("monte_carlo", aqueth::jcgm_101_cited);
    show("conformity", aqueth::jcgm_106_cited);
}
