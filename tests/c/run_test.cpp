// SPDX-License-Identifier: BSL-1.0
#include <aqueth/c.h>
#include <aqueth/still/run.hpp>

#include "../runs.hpp"

#include <gtest/gtest.h>

#include <cstddef>
#include <vector>

namespace aqueth {
namespace {

using test::quillbeck;
using test::quillbeck_charge;

/// The options that describe a charge in a still.
aqueth_run_options options_of(wash const& charge, still const& s, run_plan const& plan) {
    aqueth_run_options options{};
    options.size = sizeof options;
    EXPECT_EQ(aqueth_run_options_init(&options), AQUETH_OK);
    options.charge_kg = charge.mass().value();
    options.charge_ethanol_mass_fraction = in(charge.liquid().ethanol(), charge.mass());
    options.charge_plato = charge.extract().degrees();
    options.charge_celsius = charge.temperature().celsius();
    options.power_watts = s.pot.power.value();
    options.heat_capacity_j_k = s.pot.heat_capacity.value();
    options.heat_loss_w_k = s.pot.loss.value();
    options.room_celsius = s.pot.room.celsius();
    options.stages = s.tower.whole();
    options.murphree_efficiency = s.tower.efficiency();
    options.neck_share = s.neck.share();
    options.flow_model = s.flow == flow_model::enthalpy_balance ? AQUETH_FLOW_MODEL_ENTHALPY_BALANCE
                                                                : AQUETH_FLOW_MODEL_CONSTANT_MOLAR_OVERFLOW;
    options.reflux_ratio = s.head.returned().ratio();
    if (s.head.returned().keeps_strength()) {
        options.reflux = AQUETH_REFLUX_CONSTANT_STRENGTH;
        options.kept_strength = s.head.returned().kept();
        options.kept_scale = AQUETH_STRENGTH_SCALE_MOLE_FRACTION;
    }
    options.points = plan.points;
    options.product_celsius = plan.product_temperature.celsius();
    return options;
}

aqueth_condition given(aqueth_watched watched, double value, bool discard = false,
                       aqueth_strength_scale scale = AQUETH_STRENGTH_SCALE_MASS_FRACTION) {
    return {sizeof(aqueth_condition), watched, scale, value, discard ? 1 : 0};
}

// The charge passes through numbers in C and back, which rounds it; the integrator's tolerance is 1e-8.
constexpr double tolerance = 1e-7;

void expect_same(aqueth_run_point const& found, run_point const& expected) {
    auto const near = [](double a, double b) { EXPECT_NEAR(a, b, tolerance * (1.0 + std::abs(b))); };
    near(found.seconds, expected.elapsed.value());
    near(found.collected_litres, in(expected.collected, litre));
    near(found.pure_alcohol_litres, in(expected.pure_alcohol, litre));
    near(found.distilled_moles, in(expected.distilled, mole));
    near(found.left_moles, in(expected.left, mole));
    near(found.still_mole_fraction, expected.still.value());
    near(found.distillate_mole_fraction, expected.distillate.value());
    near(found.boiling_celsius, expected.boiling.celsius());
    near(found.vapour_celsius, expected.vapour.celsius());
    near(found.reflux_ratio, expected.reflux_ratio);
    near(found.condenser_watts, expected.condenser.value());
}

void expect_same(aqueth_run_options options, std::vector<aqueth_condition> const& cuts,
                 std::vector<aqueth_condition> const& ends, distillation const& expected) {
    options.cuts = cuts.data();
    options.cut_count = cuts.size();
    options.ends = ends.data();
    options.end_count = ends.size();
    aqueth_refusal why{};
    why.size = sizeof why;
    aqueth_run* run = nullptr;
    ASSERT_EQ(aqueth_run_new(&options, &run, &why), AQUETH_OK) << aqueth_argument_name(why.argument);
    ASSERT_EQ(aqueth_run_fraction_count(run), expected.fractions.size());
    ASSERT_EQ(aqueth_run_point_count(run), expected.points.size());
    auto const near = [](double a, double b) { EXPECT_NEAR(a, b, tolerance * (1.0 + std::abs(b))); };
    for (std::size_t k = 0; k < expected.fractions.size(); ++k) {
        run_fraction const& f = expected.fractions[k];
        aqueth_run_fraction found{};
        found.size = sizeof found;
        ASSERT_EQ(aqueth_run_get_fractions(run, k, 1, &found), AQUETH_OK);
        near(found.kg, f.product.mass().value());
        near(found.mass_fraction, f.product.composition().value());
        near(found.celsius, f.product.temperature().celsius());
        near(found.litres, in(f.product.volume(), litre));
        near(found.volume_fraction, f.product.strength().value());
        near(found.pure_alcohol_litres, in(f.product.pure_alcohol(), litre));
        EXPECT_EQ(found.kept, f.kept ? 1 : 0);
        aqueth_run_point begin{}, end{};
        begin.size = end.size = sizeof begin;
        ASSERT_EQ(aqueth_run_get_fraction_ends(run, k, &begin, &end), AQUETH_OK);
        expect_same(begin, f.begin);
        expect_same(end, f.end);
    }
    std::vector<aqueth_run_point> points(expected.points.size() + 1);
    points[0].size = sizeof points[0];
    ASSERT_EQ(aqueth_run_get_points(run, 0, expected.points.size(), points.data()), AQUETH_OK);
    for (std::size_t k = 0; k < expected.points.size(); ++k) expect_same(points[k], expected.points[k]);
    aqueth_run_residue residue{};
    residue.size = sizeof residue;
    ASSERT_EQ(aqueth_run_get_residue(run, &residue), AQUETH_OK);
    near(residue.kg, expected.residue.mass().value());
    near(residue.ethanol_mass_fraction, in(expected.residue.liquid().ethanol(), expected.residue.mass()));
    near(residue.plato, expected.residue.extract().degrees());
    near(residue.celsius, expected.residue.temperature().celsius());
    aqueth_run_totals totals{};
    totals.size = sizeof totals;
    ASSERT_EQ(aqueth_run_get_totals(run, &totals), AQUETH_OK);
    near(totals.warming_seconds, expected.warming.duration.value());
    near(totals.warming_joules, expected.warming.supplied.value());
    near(totals.boiling_seconds, expected.boiling_time.value());
    near(totals.supplied_joules, expected.heat.supplied.value());
    near(totals.lost_by_pot_joules, expected.heat.lost_by_pot.value());
    near(totals.neck_joules, expected.heat.neck.value());
    near(totals.condenser_joules, expected.heat.condenser.value());
    near(totals.with_distillate_joules, expected.heat.with_distillate.value());
    near(totals.gained_by_still_joules, expected.heat.gained_by_still.value());
    near(totals.kept_alcohol_litres, in(expected.kept_alcohol(), litre));
    near(totals.recovery, expected.recovery());
    if (expected.strength_lost)
        near(totals.strength_lost_seconds, expected.strength_lost->elapsed.value());
    else
        EXPECT_TRUE(totals.strength_lost_seconds != totals.strength_lost_seconds);
    aqueth_run_free(run);
}

TEST(RunInC, IsTheTypedRunOfTheStillhouse) {
    run_plan plan;
    plan.cuts = {{condition::collected(0.2 * litre), false},
                 {condition::distillate_strength(by_volume(70.0))},
                 {condition::boiling_temperature(celsius(98.5))}};
    plan.ends = {condition::still_strength(by_mass(0.5)), condition::elapsed(6.0 * hour)};
    plan.points = 9;
    plan.product_temperature = celsius(15);
    expect_same(options_of(quillbeck_charge(), quillbeck(), plan),
                {given(AQUETH_WATCHED_COLLECTED_VOLUME, 0.2, true),
                 given(AQUETH_WATCHED_DISTILLATE_STRENGTH, 0.7, false,
                       AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_20_CELSIUS),
                 given(AQUETH_WATCHED_BOILING_TEMPERATURE, 98.5)},
                {given(AQUETH_WATCHED_STILL_STRENGTH, 0.005), given(AQUETH_WATCHED_ELAPSED_TIME, 360.0)},
                distil(quillbeck_charge(), quillbeck(), plan));
}

TEST(RunInC, KeepsAStrengthUnderTheFlowsOfTheEnthalpies) {
    still s = quillbeck();
    s.head = head::total_condenser(reflux::constant_strength(by_volume(80.0), 8.0));
    s.flow = flow_model::enthalpy_balance;
    run_plan plan;
    plan.cuts = {{condition::strength_lost()}};
    plan.ends = {condition::elapsed(5.0 * hour)};
    auto options = options_of(quillbeck_charge(), s, plan);
    options.kpa = 90.0;
    auto const expected = distil(quillbeck_charge(), s, plan, 90.0 * kilopascal);
    ASSERT_TRUE(expected.strength_lost);
    expect_same(options, {given(AQUETH_WATCHED_KEPT_STRENGTH, 0.0)},
                {given(AQUETH_WATCHED_ELAPSED_TIME, 300.0)}, expected);
}

TEST(RunInC, TakesAStrengthOnEveryScale) {
    run_plan const plan = test::until(condition::still_strength(by_mass(2.0)));
    distillation const expected = distil(quillbeck_charge(), quillbeck(), plan);
    for (int scale = AQUETH_STRENGTH_SCALE_MASS_FRACTION;
         scale <= AQUETH_STRENGTH_SCALE_GRAMS_PER_100_ML_AT_60_FAHRENHEIT; ++scale) {
        double strength = 0.0;
        ASSERT_EQ(
            aqueth_convert_strength(0.02, AQUETH_STRENGTH_SCALE_MASS_FRACTION, scale, &strength, nullptr),
            AQUETH_OK);
        auto end = given(AQUETH_WATCHED_STILL_STRENGTH, strength);
        end.scale = scale;
        expect_same(options_of(quillbeck_charge(), quillbeck(), plan), {}, {end}, expected);
    }
}

}  // namespace
}  // namespace aqueth
