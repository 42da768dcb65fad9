// SPDX-License-Identifier: BSL-1.0
//
// Scales of the trade against their definitions and against figures that other works give for them.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/attenuation.hpp>
#include <aqueth/trade_scales.hpp>

#include <gtest/gtest.h>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

TEST(TradeScales, FormulasAreThoseOfTheTable) {
    table const t("trade_scales.csv");
    auto const of = [&](char const* id) { return t.where("id", id)["value"]; };
    double const sg = 1.0825;
    EXPECT_NEAR(degrees_on(trade_scale::baume_above, specific_gravity(sg)),
                of("baume_above_m") - of("baume_above_m") / sg, 1e-12);
    EXPECT_NEAR(degrees_on(trade_scale::baume_below, specific_gravity(0.93)),
                of("baume_below_a") / 0.93 - of("baume_below_b"), 1e-12);
    EXPECT_NEAR(degrees_on(trade_scale::oechsle, specific_gravity(sg)), of("oechsle_factor") * (sg - 1.0),
                1e-12);
    double const kmw = 17.0;
    EXPECT_NEAR(1000.0 * (gravity_on(trade_scale::kmw, kmw).value() - 1.0),
                kmw * (of("kmw_p") + of("kmw_q") * kmw), 1e-10);
}

// By the older definition a solution of 20 % sucrose reads 17, because 3 % of a must is no sugar.
TEST(TradeScales, KlosterneuburgByItsOlderDefinition) {
    table const t("trade_scales.csv");
    deviations d("kmw_of_20_percent_sucrose", "KMW", precision::printed());
    auto const gravity = specific_gravity(plain::specific_gravity_from_plato(20.0).value);
    d.add("20 % sucrose", degrees_on(trade_scale::kmw, gravity),
          t.where("id", "kmw_of_20_percent_sucrose").printed("value"));
    d.judges({.largest = 0.14});
}

// The Act of 1818 (read in reprints) defines proof spirit; Simmonds (1919) prints what ethanol is of it.
TEST(TradeScales, BritishProof) {
    table const t("proof_spirit.csv");
    deviations d("uk_proof_degrees", "degrees", precision::printed());
    d.add("absolute alcohol", uk_proof_degrees(by_mass(100.0)),
          t.where("id", "uk_absolute_alcohol_of_proof").printed("value"));
    d.add("57.06 % vol at 60 F", uk_proof_degrees(by_volume<at_60_fahrenheit>(57.06)), {100.0, 2});
    d.guards({.largest = 0.055});
}
