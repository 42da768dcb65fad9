// SPDX-License-Identifier: BSL-1.0
//
// Proof spirit by definition. United Kingdom: the Hydrometer Act of 1818 takes as proof a spirit that at 51
// °F weighs 12/13 of an equal measure of water; Cooley (1880) and Simmonds (1919) give what follows. United
// States: half its volume of alcohol of specific gravity 0.7939, water making up the rest.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/blending.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>

#include <gtest/gtest.h>

using namespace aqueth;
using published::deviations;
using published::figure;
using published::precision;
using published::table;

namespace {

using volume_fraction_60f = basic_volume_fraction<at_60_fahrenheit>;

class ProofSpirit : public testing::Test {
protected:
    double printed(char const* id) const { return table_.where("id", id)["value"]; }
    figure figure_of(char const* id) const { return table_.where("id", id).printed("value"); }

    mass_fraction by_the_act(medium weighed_in) const {
        specific_gravity const ratio(12.0 / 13.0);
        return mass_fraction_from_specific_gravity(ratio, {fahrenheit(51), fahrenheit(51), weighed_in});
    }

    // water for 100 volumes of a strength from pure alcohol, everything measured at 60 °F
    static double water_volumes(volume_fraction_60f strength) {
        auto const made = make_up(100.0 * litre, fahrenheit(60), strength,
                                  liquid::of(by_mass(100), fahrenheit(60)), water_at(fahrenheit(60)));
        return in(made.diluent.volume(), litre);
    }

private:
    table table_{"proof_spirit.csv"};
};

}  // namespace

TEST_F(ProofSpirit, UkByTheAct) {
    EXPECT_NEAR(printed("uk_act_weight_ratio_51f"), 12.0 / 13.0, 5e-7);
    // Weighed in air, as the Act weighs. In vacuo it would be 57.089 % vol and 49.270 % mass.
    auto const w = by_the_act(medium::air);
    double const q = to<volume_fraction_60f>(w).percent();
    deviations d("uk_proof_by_the_act", "%", precision::printed());
    d.add("57.1 % vol", q, figure_of("uk_proof_strength"));
    d.add("57.06 % vol, Cooley", q, figure_of("uk_proof_strength_cooley"));
    d.add("% mass", w.percent(), figure_of("uk_proof_mass_percent"));
    d.guards({.largest = 0.055});
    EXPECT_NEAR(q, printed("uk_proof_strength_cooley"), 0.015);
    EXPECT_NEAR(w.percent(), printed("uk_proof_mass_percent"), 0.0125);
    deviations in_vacuo("uk_proof_in_vacuo", "% vol", precision::printed());
    in_vacuo.add("57.1 % vol", to<volume_fraction_60f>(by_the_act(medium::vacuum)).percent(),
                 figure_of("uk_proof_strength"));
    in_vacuo.judges({.largest = 0.0115});
}

TEST_F(ProofSpirit, UkFiguresOfCooley) {
    auto const w = by_mass(printed("uk_proof_mass_percent"));
    // mass percent and volume percent of the same spirit
    deviations scales("cooley_proof_mass_to_volume", "% vol", precision::printed());
    scales.add("49.24 % mass", to<volume_fraction_60f>(w).percent(), figure_of("uk_proof_strength_cooley"));
    scales.judges();
    deviations gravity("cooley_proof_sg_60_60", "1", precision::printed());
    gravity.add("49.24 % mass", specific_gravity_of(w, {fahrenheit(60), fahrenheit(60)}).value(),
                figure_of("uk_proof_sg_60_60"));
    gravity.guards({.largest = 1.5e-5});
    deviations water("cooley_proof_water", "volumes", precision::printed());
    water.add("57.06 % vol", water_volumes(by_volume<at_60_fahrenheit>(printed("uk_proof_strength_cooley"))),
              figure_of("uk_proof_water_volumes"));
    water.guards({.largest = 0.0105});  // the density of ethanol in 1880 and now
}

// Simmonds: absolute alcohol is 75.35 over proof, that is 175.35 volumes of proof spirit can be made from
// 100.
TEST_F(ProofSpirit, UkOverProofOfAbsoluteAlcohol) {
    double const of_proof = 100.0 / to<volume_fraction_60f>(by_the_act(medium::air)).value();
    deviations d("simmonds_over_proof", "%", precision::printed());
    d.add("absolute alcohol, % of proof spirit", of_proof, figure_of("uk_absolute_alcohol_of_proof"));
    // 0.05 in 175 is 0.017 % vol in the strength of proof, a third of what the weighing in air or in vacuo
    // makes.
    d.guards({.largest = 0.055});
}

TEST_F(ProofSpirit, UsStatute) {
    auto const half = by_volume<at_60_fahrenheit>(printed("us_proof_alcohol_volumes"));
    EXPECT_NEAR(to<us_proof>(half).degrees(), 100.0, 1e-9);
    deviations water("us_proof_water", "volumes", precision::printed());
    water.add("100 proof", water_volumes(half), figure_of("us_proof_water_volumes"));
    // The older figure 53.71; 53.73 is remembered from the manual's table 6. Both rest on other densities of
    // ethanol.
    water.guards({.largest = 0.0275});
    deviations gravity("us_absolute_alcohol_sg_60_60", "1", precision::printed());
    gravity.add("absolute alcohol",
                specific_gravity_of(by_mass(100), {fahrenheit(60), fahrenheit(60)}).value(),
                figure_of("us_absolute_alcohol_sg_60_60"));
    gravity.guards({.largest = 8.5e-5});  // R 22's ethanol is 0.08 kg/m3 lighter
}
