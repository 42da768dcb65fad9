// SPDX-License-Identifier: BSL-1.0
//
// Proof spirit by definition. United Kingdom: the Hydrometer Act of 1818 takes as proof a spirit that at 51
// °F weighs 12/13 of an equal measure of water; Cooley (1880) and Simmonds (1919) give what follows. United
// States: half its volume of alcohol of specific gravity 0.7939, water making up the rest.
#include "published/table.hpp"

#include <aqueth/blending.hpp>
#include <aqueth/strength.hpp>

#include <cstdio>
#include <gtest/gtest.h>

using namespace aqueth;
using published::table;

namespace {

using volume_fraction_60f = basic_volume_fraction<at_60_fahrenheit>;

class ProofSpirit : public testing::Test {
protected:
    double printed(char const* id) const { return table_.where("id", id)["value"]; }

    mass_fraction by_the_act(medium weighed_in) const {
        specific_gravity const ratio(12.0 / 13.0);
        return mass_fraction_from_specific_gravity(ratio, {fahrenheit(51), fahrenheit(51), weighed_in});
    }

    // water for 100 volumes of a strength from pure alcohol, everything measured at 60 °F
    static double water_volumes(volume_fraction_60f strength) {
        auto const made =
            make_up(100.0 * litre, fahrenheit(60), strength, by_mass(100), fahrenheit(60), fahrenheit(60));
        return in(made.water.volume(), litre);
    }

    static void show(char const* what, double computed, double printed) {
        std::printf("%s: computed %.5f, printed %g\n", what, computed, printed);
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
    show("UK proof, % vol at 60 F", q, printed("uk_proof_strength_cooley"));
    show("UK proof, % mass", w.percent(), printed("uk_proof_mass_percent"));
    EXPECT_NEAR(q, printed("uk_proof_strength"), 0.055);
    EXPECT_NEAR(q, printed("uk_proof_strength_cooley"), 0.015);
    EXPECT_NEAR(w.percent(), printed("uk_proof_mass_percent"), 0.0125);
    EXPECT_NEAR(to<volume_fraction_60f>(by_the_act(medium::vacuum)).percent(), printed("uk_proof_strength"),
                0.0115);
}

TEST_F(ProofSpirit, UkFiguresOfCooley) {
    auto const w = by_mass(printed("uk_proof_mass_percent"));
    // mass percent and volume percent of the same spirit
    EXPECT_NEAR(to<volume_fraction_60f>(w).percent(), printed("uk_proof_strength_cooley"), 0.005);
    double const sg = specific_gravity_of(w, {fahrenheit(60), fahrenheit(60)}).value();
    show("sg 60/60 of 49.24 % mass", sg, printed("uk_proof_sg_60_60"));
    EXPECT_NEAR(sg, printed("uk_proof_sg_60_60"), 1.5e-5);
    double const water = water_volumes(by_volume<at_60_fahrenheit>(printed("uk_proof_strength_cooley")));
    show("water in 100 volumes", water, printed("uk_proof_water_volumes"));
    EXPECT_NEAR(water, printed("uk_proof_water_volumes"), 0.0105);  // the density of ethanol in 1880 and now
}

// Simmonds: absolute alcohol is 75.35 over proof, that is 175.35 volumes of proof spirit can be made from
// 100.
TEST_F(ProofSpirit, UkOverProofOfAbsoluteAlcohol) {
    double const of_proof = 100.0 / to<volume_fraction_60f>(by_the_act(medium::air)).value();
    show("absolute alcohol, % of proof spirit", of_proof, printed("uk_absolute_alcohol_of_proof"));
    // 0.05 in 175 is 0.017 % vol in the strength of proof, a third of what the weighing in air or in vacuo
    // makes.
    EXPECT_NEAR(of_proof, printed("uk_absolute_alcohol_of_proof"), 0.055);
}

TEST_F(ProofSpirit, UsStatute) {
    auto const half = by_volume<at_60_fahrenheit>(printed("us_proof_alcohol_volumes"));
    EXPECT_NEAR(to<us_proof>(half).degrees(), 100.0, 1e-9);
    double const water = water_volumes(half);
    show("US proof, water in 100 volumes", water, printed("us_proof_water_volumes"));
    // The older figure 53.71; 53.73 is remembered from the manual's table 6. Both rest on other densities of
    // ethanol.
    EXPECT_NEAR(water, printed("us_proof_water_volumes"), 0.0275);
    double const sg = specific_gravity_of(by_mass(100), {fahrenheit(60), fahrenheit(60)}).value();
    show("absolute alcohol, sg 60/60", sg, printed("us_absolute_alcohol_sg_60_60"));
    EXPECT_NEAR(sg, printed("us_absolute_alcohol_sg_60_60"), 8.5e-5);  // R 22's ethanol is 0.08 kg/m3 lighter
}
