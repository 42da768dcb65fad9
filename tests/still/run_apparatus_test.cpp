// SPDX-License-Identifier: BSL-1.0
// The apparatus around the pot in runs without holdup: neck, partial condenser, cold reflux, take-off rate,
// time at total reflux, and steps of the plan. Against an independent dynamic model, published practice,
// balances by hand at one instant, and runs that are cut in two.
#include <aqueth/boiling_curve.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/still/column_limits.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/run.hpp>

#include "expect_refusal.hpp"
#include "runs.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <initializer_list>
#include <optional>
#include <utility>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::sea_level;
using test::until;

/// the stillhouse's 25 L pot with 11 % vol, 1.5 kW, 3 W/K
still pot() { return {{1.5 * kilowatt, units::heat_capacity(), 3.0 * watt_per_kelvin}}; }
still plates(int number, head const& top) {
    still s = pot();
    s.tower = column::of_plates(number, 0.6);
    s.head = top;
    return s;
}
still four_plates() { return plates(4, head::total_condenser(reflux::constant(3.0))); }
wash charge(double percent = 11.0) {
    return wash::of(parcel::of(25.0 * litre, by_volume(percent), celsius(20)));
}
cooling_water tap_water() { return {0.25 * litre / minute, celsius(15), celsius(60)}; }

double percent(mole_fraction x) { return to<volume_fraction>(x).percent(); }
double enthalpy(double x) { return sea_level().liquid_enthalpy(x).value; }

/// the hearts above a strength, after the first 100 mL
struct hearts {
    double litres, percent;
};
hearts above(double cut, still const& s) {
    run_plan plan = until(condition::distillate_strength(by_volume(cut - 20.0)));
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(cut))}};
    parcel const product = distil(charge(), s, plan, sea_level()).fractions.at(1).product;
    return {in(product.volume(celsius(20)), litre), product.strength().percent()};
}

/// a run with some recorded states
distillation recorded(still const& s, run_plan plan = until(condition::collected(1.5 * litre))) {
    plan.points = 5;
    return distil(charge(), s, plan, sea_level());
}

/// stills that differ in what condenses above the column
std::vector<still> apparatus() {
    std::vector<still> all{four_plates()};
    still s = pot();
    s.neck = neck::losing(2.0 * watt_per_kelvin);
    all.push_back(s);
    s.tower = column::of_plates(3, 0.6);
    s.head = head::partial_condenser(0.4);
    all.push_back(s);
    s.flow = flow_model::enthalpy_balance;
    all.push_back(s);
    s.head = head::partial_condenser(tap_water());
    all.push_back(s);
    s.neck = neck::insulated();
    s.flow = flow_model::constant_molar_overflow;
    all.push_back(s);
    s = four_plates();
    s.head = s.head.reflux_at(celsius(35));
    all.push_back(s);
    s.neck = neck::losing(1.0 * watt_per_kelvin);
    s.flow = flow_model::enthalpy_balance;
    all.push_back(s);
    s.head = head::total_condenser(reflux::of_take_off(12.0 * millilitre / minute)).reflux_at(celsius(50));
    all.push_back(s);
    s.head = head::total_condenser(reflux::constant_strength(by_volume(85), 8.0)).reflux_at(celsius(40));
    all.push_back(s);
    return all;
}

// Figures of an independent dynamic model of the same still, written apart from this library: 1 % of the
// volume. Its strengths were given to 0.1 or 0.01 % vol, and are met within 0.1.
TEST(Apparatus, AgreesWithAnIndependentDynamicModel) {
    auto const expect = [](double cut, still const& s, double litres, double strength) {
        hearts const found = above(cut, s);
        EXPECT_NEAR(found.litres / litres, 1.0, 0.01) << litres;
        EXPECT_NEAR(found.percent, strength, 0.1) << litres;
    };
    still s = pot();
    expect(50.0, s, 1.6456, 54.12);
    s.neck = neck::condensing(0.05);
    expect(50.0, s, 1.842, 55.0);
    s.neck = neck::condensing(0.10);
    expect(50.0, s, 2.018, 55.9);
    s.neck = neck::condensing(0.20);
    expect(50.0, s, 2.314, 58.0);
    expect(80.0, four_plates(), 1.942, 85.7);
    s = four_plates();
    s.neck = neck::condensing(0.20);  // a partial condenser before the total one
    expect(80.0, s, 2.191, 87.3);
}

// The same model: with 65 to 75 % condensed, a partial condenser as the only reflux of three plates gives 2.6
// to 3.8 % vol more than a total condenser that returns the same share.
TEST(Apparatus, PartialCondenserEnriches) {
    for (double const share : {0.65, 0.70, 0.75}) {
        hearts const total =
            above(80.0, plates(3, head::total_condenser(reflux::constant(share / (1.0 - share)))));
        hearts const partial = above(80.0, plates(3, head::partial_condenser(share)));
        EXPECT_GT(partial.percent, total.percent + 2.6) << share;
        EXPECT_LT(partial.percent, total.percent + 3.8) << share;
    }
}

// The same model: 13 % more internal reflux, from a reflux colder than it boils, gives 6 % more volume. How
// cold that is follows from heat capacity and heat of vaporization: 13 % of 39 kJ/mol over about 0.12 kJ/(mol
// K).
TEST(Apparatus, ColdReflux) {
    double const d = recorded(four_plates()).points[0].distillate.value();
    double const boils = sea_level().temperature(d);
    double const latent = sea_level().vapour_enthalpy(d) - enthalpy(d);
    double const capacity = model::enthalpy::liquid_heat_capacity(d, boils - 20.0);
    still s = four_plates();
    s.head = s.head.reflux_at(kelvin(boils - 0.13 * latent / capacity));
    EXPECT_NEAR(above(80.0, s).litres / above(80.0, four_plates()).litres, 1.06, 0.01);
    // As much as a warm reflux of 1.13 times the ratio gives at that instant.
    EXPECT_NEAR(
        recorded(s).points[0].distillate.value(),
        distillate_strength(sea_level(), s.tower, to<mole_fraction>(by_volume(11)), 3.0 * 1.13).value(),
        1e-5);
}

// Common practice (no source read): the second distillation of low wines of about 28 % vol begins with heads
// of 78 to 82 % vol. A bare pot gives 75; 10 to 20 % condensed in head and neck of the pot give 77 to 80.
TEST(Apparatus, SecondDistillationOfAPot) {
    auto const first = [](double share) {
        still s = pot();
        s.neck = neck::condensing(share);
        run_plan plan = until(condition::collected(1.0 * litre));
        plan.points = 2;
        return percent(distil(charge(28.0), s, plan, sea_level()).points[0].distillate);
    };
    EXPECT_LT(first(0.0), 77.0);
    EXPECT_GT(first(0.1), 77.0);
    EXPECT_LT(first(0.2), 80.0);
    EXPECT_GT(first(0.2), first(0.1) + 1.0);
}

// A partial condenser and a neck that condense the same share are the same.
TEST(Apparatus, NeckAndPartialCondenserAreOneThing) {
    still a = plates(4, head::none()), b = plates(4, head::partial_condenser(0.3));
    a.neck = neck::condensing(0.3);
    distillation const of_neck = recorded(a), of_head = recorded(b);
    for (std::size_t i = 0; i < of_neck.points.size(); ++i)
        EXPECT_NEAR(of_neck.points[i].distillate.value(), of_head.points[i].distillate.value(), 1e-12);
    EXPECT_NEAR(in(of_neck.heat.neck, of_head.heat.partial_condenser), 1.0, 1e-9);
    EXPECT_EQ(of_head.heat.neck.value(), 0.0);
}

// Neck and partial condenser in series, flows and heats from the top down with plain bisection. What both
// condense meets on the top stage.
TEST(Apparatus, NeckAndPartialCondenserInSeriesByHand) {
    auto const& m = sea_level();
    double const first = 0.15, second = 0.4, passed = (1.0 - first) * (1.0 - second);
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        for (int const stages : {0, 1, 3}) {
            for (double const d : {0.55, 0.7, 0.8}) {
                double const in_head = m.liquid(d);
                double const between = second * in_head + (1.0 - second) * d;
                double const in_neck = m.liquid(between);
                double vapour = first * in_neck + (1.0 - first) * between;
                double const leaves = m.vapour_enthalpy(vapour) - first * enthalpy(in_neck) -
                                      (1.0 - first) * second * enthalpy(in_head);  // with heat taken out
                for (int k = 0; k < stages; ++k) {
                    double const liquid = m.liquid(vapour);
                    double down = 1.0 - passed;
                    if (flow == flow_model::enthalpy_balance) {
                        double low = 0.0, high = 10.0;
                        for (int i = 0; i < 60; ++i) {
                            down = 0.5 * (low + high);
                            double const y = (down * liquid + passed * d) / (down + passed);
                            bool const much =
                                (down + passed) * m.vapour_enthalpy(y) > down * enthalpy(liquid) + leaves;
                            (much ? high : low) = down;
                        }
                    }
                    vapour = (down * liquid + passed * d) / (down + passed);
                }
                detail::column_solver<boiling_curve> const solver(m, column::of_stages(stages),
                                                                  neck::insulated(), flow);
                EXPECT_NEAR(solver.with({first, second}).distillate(m.liquid(vapour), 1.0 - passed), d, 1e-8)
                    << stages;
            }
        }
    }
}

// A neck that loses heat by a coefficient, by hand at each recorded instant: the heat is the coefficient
// times the difference of temperatures, and the share that condenses for it closes the balance of the neck.
TEST(Apparatus, HeatLossOfTheNeckByHand) {
    auto const& m = sea_level();
    still s = four_plates();
    s.neck = neck::losing(2.0 * watt_per_kelvin);
    double least = 1.0, most = 0.0;
    for (run_point const& p : recorded(s).points) {
        EXPECT_NEAR(in(p.neck, watt), 2.0 * (p.vapour - celsius(20)).value(), 1e-7);
        // All that passes the neck condenses: three parts of four return.
        double const out = in(p.condenser, watt) /
                           (m.vapour_enthalpy(p.distillate.value()) - enthalpy(p.distillate.value()));
        double const enters = p.vapour_flow.value(), share = 1.0 - out / enters;
        double const back = m.liquid(p.distillate.value());
        double const vapour = share * back + (1.0 - share) * p.distillate.value();
        EXPECT_NEAR(enters * m.vapour_enthalpy(vapour),
                    out * m.vapour_enthalpy(p.distillate.value()) + share * enters * enthalpy(back) +
                        in(p.neck, watt),
                    1e-6 * in(p.condenser, watt));
        least = (std::min)(least, share);
        most = (std::max)(most, share);
    }
    EXPECT_NEAR(least, 0.09, 0.02);  // 120 W of 1300 W
    EXPECT_GT(most, least + 1e-4);   // it follows from the state
}

// A small loss is the share that it is of the power (the neck's own description).
TEST(Apparatus, HeatLossOfTheNeckAsAShare) {
    still a = pot(), b = pot();
    a.neck = neck::losing(1.0 * watt_per_kelvin);
    double const share = 71.0 / 1250.0;  // 91 °C above 20 °C, of the 1.5 kW less 3 W/K from about 96 °C
    b.neck = neck::condensing(share);
    EXPECT_NEAR(above(50.0, a).litres, above(50.0, b).litres, 0.02);
}

// The water takes up m cp dT at every instant, whatever the vapour does.
TEST(Apparatus, CoolingWaterOfAPartialCondenser) {
    // 0.25 kg/min x 4.18 kJ/(kg K) x 45 K
    double const watts = 0.25 / 60.0 * 4180.0 * 45.0;
    EXPECT_NEAR(in(tap_water().heat(), watt), watts, 1e-9);
    distillation const r = recorded(plates(4, head::partial_condenser(tap_water())));
    for (run_point const& p : r.points) EXPECT_NEAR(in(p.partial_condenser, watt), watts, 1e-7);
    EXPECT_NEAR(in(r.heat.partial_condenser, joule), watts * in(r.boiling_time, second), 1e-3);
    // More water gives less distillate, and a stronger one.
    cooling_water more = tap_water();
    more.flow = 1.2 * more.flow;
    distillation const colder = recorded(plates(4, head::partial_condenser(more)));
    EXPECT_GT(colder.points[0].distillate.value(), r.points[0].distillate.value());
    EXPECT_LT(colder.points[0].take_off, r.points[0].take_off);
}

// The reflux follows from what is taken: the volume rises evenly with time, and at each instant the strength
// is that of a constant reflux of the same ratio.
TEST(Apparatus, TakeOffRate) {
    units::volume_flow const rate = 12.0 * millilitre / minute;
    still const s = plates(4, head::total_condenser(reflux::of_take_off(rate)));
    distillation const r = recorded(s);
    double least = 1e9, most = 0.0;
    for (run_point const& p : r.points) {
        EXPECT_NEAR(in(p.take_off, rate), 1.0, 1e-9);
        EXPECT_NEAR(distillate_strength(sea_level(), s.tower, p.still, p.reflux_ratio).value(),
                    p.distillate.value(), 1e-9);
        least = (std::min)(least, p.reflux_ratio);
        most = (std::max)(most, p.reflux_ratio);
    }
    EXPECT_GT(most, least + 0.05);
    // Volumes of unlike strengths shrink a little when they mix: 1e-3 here.
    EXPECT_NEAR(in(r.points.back().collected, r.boiling_time * rate), 1.0, 1e-3);
    // More than condenses cannot be taken.
    auto const refused = expect_refusal(
        [] { return recorded(plates(4, head::total_condenser(reflux::of_take_off(1.0 * litre / minute)))); },
        "take-off rate");
    still bare = pot();
    EXPECT_NEAR(refused.upper(), recorded(bare).points[0].take_off.value() * 6e7, 1e-6 * refused.upper());
}

// A rate that falls short later is refused where it does, and not by a look beyond the end of the run.
TEST(Apparatus, TakeOffRateThatFallsShort) {
    still const s = plates(4, head::total_condenser(reflux::of_take_off(34.0 * millilitre / minute)));
    auto const run = [&](units::time end) {
        return distil(charge(), s, until(condition::elapsed(end)), sea_level());
    };
    double shortest = 1.0, longest = 400.0;  // min
    for (int i = 0; i < 40; ++i) {
        double const middle = 0.5 * (shortest + longest);
        try {
            static_cast<void>(run(middle * minute));
            shortest = middle;
        } catch (refusal const& e) {
            ASSERT_EQ(e.code(), argument::take_off_rate) << e.what();
            longest = middle;
        }
    }
    EXPECT_GT(shortest, 30.0);
    EXPECT_LT(longest, 390.0);
    // Up to there the reflux falls to nothing.
    EXPECT_NEAR(run(shortest * minute).fractions[0].end.reflux_ratio, 0.0, 1e-6);

    still large = plates(4, head::total_condenser(reflux::of_take_off(1e-3 * millilitre / minute)));
    large.pot.power = 100.0 * kilowatt;
    expect_refusal(
        [&] { return distil(charge(), large, until(condition::elapsed(1.0 * hour)), sea_level()); },
        "take-off rate");
}

// Under a low pressure the vapour can be colder than the room. The neck then loses nothing.
TEST(Apparatus, NeckInAWarmRoom) {
    boiling_curve const vacuum(5.0 * kilopascal);
    still s = pot();
    s.pot.room = celsius(60);
    auto const run = [&] {
        run_plan plan = until(condition::collected(0.5 * litre));
        plan.points = 2;
        return distil(charge(), s, plan, vacuum);
    };
    distillation const insulated = run();
    s.neck = neck::losing(2.0 * watt_per_kelvin);
    distillation const losing = run();
    ASSERT_LT(losing.points[0].vapour, celsius(60));
    EXPECT_NEAR(losing.heat.neck.value(), 0.0, 1e-3);
    EXPECT_NEAR(losing.points[1].distillate.value(), insulated.points[1].distillate.value(), 1e-9);
}

// The time at total reflux costs time and heat; without holdup nothing else changes.
TEST(Apparatus, TimeAtTotalReflux) {
    for (bool const loses : {false, true}) {
        still s = four_plates();
        s.neck = loses ? neck::losing(1.0 * watt_per_kelvin) : neck::condensing(0.05);
        run_plan plan = until(condition::collected(1.0 * litre));
        distillation const without = distil(charge(), s, plan, sea_level());
        plan.start = 30.0 * minute;
        distillation const with = distil(charge(), s, plan, sea_level());
        EXPECT_NEAR((with.boiling_time - without.boiling_time).value(), 1800.0, 1e-6);
        EXPECT_NEAR((with.energy() - without.energy()).value(), 1800.0 * 1500.0, 1e-2);
        EXPECT_EQ(with.fractions[0].product.mass(), without.fractions[0].product.mass());
        EXPECT_LT(std::abs(with.balance.energy), 1e-9);
        EXPECT_NEAR(in(with.fractions[0].begin.elapsed, minute), 30.0, 1e-9);
        // Over half an hour neck and condenser take what the pot does not lose to the room.
        double const lost = 3.0 * (with.fractions[0].begin.boiling - celsius(20)).value();
        EXPECT_NEAR(
            (with.heat.neck + with.heat.condenser - without.heat.neck - without.heat.condenser).value(),
            1800.0 * (1500.0 - lost), 1e-2);
        EXPECT_GT(with.heat.neck, without.heat.neck);
    }
    // An end counts from the boiling, a cut from the beginning of its fraction.
    run_plan plan = until(condition::elapsed(100.0 * minute));
    plan.start = 30.0 * minute;
    plan.cuts = {{condition::elapsed(10.0 * minute)}};
    distillation const r = distil(charge(), four_plates(), plan, sea_level());
    EXPECT_NEAR(in(r.fractions[0].end.elapsed, minute), 40.0, 1e-9);
    EXPECT_NEAR(in(r.boiling_time, minute), 100.0, 1e-9);
}

// Steps come exactly where their conditions are met, one after another, by whatever is watched.
TEST(Apparatus, StepsComeWhereTheyAreDue) {
    run_plan plan = until(condition::distillate_strength(by_volume(60)));
    plan.steps = {
        {condition::elapsed(47.0 * minute), reflux::constant(5.0)},
        {condition::collected(1.1 * litre), std::nullopt, 1.2 * kilowatt},
        {condition::head_temperature(celsius(80.2)), reflux::of_take_off(8.0 * millilitre / minute)},
        {condition::boiling_temperature(celsius(96.5)), reflux::constant(2.0), 1.5 * kilowatt},
        {condition::distillate_strength(by_volume(30)), reflux::none()}};  // does not come
    distillation const r = distil(charge(), four_plates(), plan, sea_level());
    ASSERT_EQ(r.steps.size(), 4u);
    EXPECT_NEAR(in(r.steps[0].elapsed, minute), 47.0, 1e-6);
    EXPECT_NEAR(r.steps[0].reflux_ratio, 5.0, 1e-9);
    EXPECT_NEAR(in(r.steps[1].collected, litre), 1.1, 1e-8);
    EXPECT_NEAR(in(r.steps[2].take_off, millilitre / minute), 8.0, 1e-8);
    EXPECT_NEAR(r.steps[3].boiling.celsius(), 96.5, 1e-6);
    EXPECT_NEAR(r.steps[3].reflux_ratio, 2.0, 1e-9);
    for (double const error : {r.balance.ethanol, r.balance.water, r.balance.energy})
        EXPECT_LT(std::abs(error), 1e-9);
    // The head temperature of the third is that just before it: with the reflux of the second.
    mole_fraction const before =
        distillate_strength(sea_level(), column::of_plates(4, 0.6), r.steps[2].still, 5.0);
    EXPECT_NEAR(sea_level().temperature(sea_level().liquid(before)).celsius(), 80.2, 1e-5);
    // 1.2 kW boil less than 1.5 kW.
    EXPECT_LT(r.steps[1].vapour_flow, 0.8 * r.steps[0].vapour_flow);
}

// A run with a step is two runs: the second begins with what the first left in the pot.
TEST(Apparatus, AStepIsTwoRuns) {
    run_plan plan = until(condition::still_strength(by_volume(2)));
    plan.cuts = {{condition::collected(1.0 * litre)}};
    plan.steps = {{condition::collected(1.0 * litre), reflux::constant(6.0), 1.8 * kilowatt}};
    distillation const whole = distil(charge(), four_plates(), plan, sea_level());

    run_plan first = until(condition::collected(1.0 * litre));
    first.product_temperature = celsius(20);
    distillation const one = distil(charge(), four_plates(), first, sea_level());
    still s = plates(4, head::total_condenser(reflux::constant(6.0)));
    s.pot.power = 1.8 * kilowatt;
    distillation const two =
        distil(one.residue, s, until(condition::still_strength(by_volume(2))), sea_level());

    ASSERT_EQ(whole.fractions.size(), 2u);
    EXPECT_NEAR(in(whole.fractions[0].product.mass(), one.fractions[0].product.mass()), 1.0, 1e-8);
    EXPECT_NEAR(in(whole.fractions[1].product.mass(), two.fractions[0].product.mass()), 1.0, 1e-7);
    EXPECT_NEAR(whole.fractions[1].product.strength().percent(),
                two.fractions[0].product.strength().percent(), 1e-6);
    EXPECT_NEAR(in(whole.boiling_time, one.boiling_time + two.boiling_time), 1.0, 1e-7);
    EXPECT_NEAR(in(whole.heat.supplied, one.heat.supplied + two.heat.supplied), 1.0, 1e-7);
}

// A step whose condition is met when its turn comes changes at once; a cut that the change passes comes at
// once.
TEST(Apparatus, StepsThatAreDueAtOnce) {
    run_plan plan = until(condition::collected(1.2 * litre));
    plan.steps = {{condition::collected(0.4 * litre), reflux::constant(1.0)},
                  {condition::elapsed(1.0 * minute), std::nullopt, 1.4 * kilowatt}};
    plan.cuts = {{condition::distillate_strength(by_volume(86))}};  // 87 before, 81 after the first step
    distillation const r = distil(charge(), four_plates(), plan, sea_level());
    ASSERT_EQ(r.steps.size(), 2u);
    EXPECT_EQ(r.steps[1].collected, r.steps[0].collected);
    EXPECT_NEAR(in(r.fractions[0].product.volume(celsius(20)), litre), 0.4, 1e-8);
    EXPECT_LT(percent(r.fractions[1].begin.distillate), 84.0);
}

// A strength that is kept only from a step on can be lost, and a lost one can be waited for.
TEST(Apparatus, StrengthKeptFromAStepOn) {
    run_plan plan = until(condition::strength_lost());
    plan.steps = {{condition::collected(0.5 * litre), reflux::constant_strength(by_volume(85), 8.0)}};
    plan.points = 40;
    distillation const r = distil(charge(), four_plates(), plan, sea_level());
    ASSERT_TRUE(r.strength_lost.has_value());
    EXPECT_NEAR(percent(r.strength_lost->distillate), 85.0, 1e-5);
    EXPECT_NEAR(r.strength_lost->reflux_ratio, 8.0, 1e-5);
    EXPECT_NEAR(percent(r.points[38].distillate), 85.0, 1e-6);
    EXPECT_GT(percent(r.points[0].distillate), 87.0);
    // The same with a cold reflux, for which the greatest ratio keeps it longer.
    still s = four_plates();
    s.head = s.head.reflux_at(celsius(30));
    distillation const cold = distil(charge(), s, plan, sea_level());
    ASSERT_TRUE(cold.strength_lost.has_value());
    EXPECT_NEAR(percent(cold.strength_lost->distillate), 85.0, 1e-5);
    EXPECT_NEAR(cold.strength_lost->reflux_ratio, 8.0, 1e-4);
    EXPECT_GT(cold.strength_lost->collected, r.strength_lost->collected);
}

// What people watch: a thermometer in the head, an alcoholometer at the spout that nobody corrects.
TEST(Apparatus, HeadTemperatureAndReadingAtTheSpout) {
    run_plan plan = until(condition::head_temperature(celsius(85)));
    plan.cuts = {{condition::reading_at_spout(by_volume(86))}};
    plan.spout_temperature = celsius(30);
    distillation const r = distil(charge(), four_plates(), plan, sea_level());
    EXPECT_NEAR(r.fractions[1].end.vapour.celsius(), 85.0, 1e-6);
    mole_fraction const d = r.fractions[0].end.distillate;
    EXPECT_NEAR(alcoholometer().reading(d, celsius(30)).percent(), 86.0, 1e-6);
    EXPECT_LT(percent(d), 84.0);  // warm spirit reads high
}

// Ethanol, water and heat over the reported parcels close for every apparatus.
TEST(Apparatus, BalancesClose) {
    for (still const& s : apparatus()) {
        distillation const r = recorded(s, until(condition::collected(1.0 * litre)));
        EXPECT_LT(std::abs(r.balance.ethanol), 1e-9);
        EXPECT_LT(std::abs(r.balance.water), 1e-9);
        EXPECT_LT(std::abs(r.balance.energy), 1e-9);
        // and at every instant: the heater against pot, neck, condensers, distillate and what the pot gains
        for (run_point const& p : r.points) {
            double const d = p.distillate.value(), x = p.still.value();
            double const rate = p.take_off.value() / detail::mass_of_moles(1.0, d).volume();
            auto const pot = sea_level().liquid_enthalpy(x);
            double const out = 3.0 * (p.boiling - celsius(20)).value() +
                               in(p.neck + p.partial_condenser + p.condenser, watt) +
                               rate * (enthalpy(d) - pot.value - pot.slope * (d - x));
            EXPECT_NEAR(out, 1500.0, 1e-6);
        }
    }
}

TEST(Apparatus, RefusesWhatCannotBe) {
    auto const run = [](still const& s, run_plan const& plan = until(condition::collected(1.0 * litre))) {
        return distil(charge(), s, plan, sea_level());
    };
    double const nan = std::nan("");
    expect_refusal([&] { return neck::losing(-1.0 * watt_per_kelvin); }, "heat loss coefficient");
    expect_refusal([&] { return head::partial_condenser(0.995); }, "share of the vapour that condenses");
    expect_refusal([&] { return head::partial_condenser(nan); }, "share of the vapour that condenses");
    cooling_water water = tap_water();
    water.flow = 0.0 * water.flow;
    expect_refusal([&] { return head::partial_condenser(water); }, "flow of the cooling water");
    water = tap_water();
    water.out = celsius(14);
    expect_refusal([&] { return head::partial_condenser(water); }, "warming of the cooling water");
    expect_refusal([&] { return head::none().reflux_at(celsius(40)); }, "temperature of the reflux");
    expect_refusal([&] { return four_plates().head.reflux_at(celsius(101)); }, "temperature of the reflux");
    expect_refusal([&] { return head::partial_condenser(0.3).returning(reflux::constant(1.0)); },
                   "reflux ratio");
    expect_refusal([&] { return reflux::of_take_off(-1.0 * litre / minute); }, "take-off rate");
    expect_refusal([&] { return column::of_plates(4, 0.6).holding(-1.0 * litre); }, "holdup");
    expect_refusal([&] { return column::none().holding_in_all(1.0 * litre); }, "holdup");

    still s = pot();
    s.neck = neck::losing(20.0 * watt_per_kelvin);  // more than the heater gives
    auto const loss = expect_refusal([&] { return run(s); }, "heat loss coefficient");
    s.neck = neck::losing(0.9 * loss.upper() * watt_per_kelvin);
    EXPECT_NO_THROW(static_cast<void>(run(s)));
    water = tap_water();
    water.flow = 2.0 * water.flow;
    expect_refusal([&] { return run(plates(4, head::partial_condenser(water))); },
                   "flow of the cooling water");

    run_plan plan = until(condition::collected(1.0 * litre));
    plan.start = 10.0 * minute;
    expect_refusal([&] { return run(pot(), plan); }, "time at total reflux");
    plan.start = -1.0 * minute;
    expect_refusal([&] { return run(four_plates(), plan); }, "time at total reflux");
    plan.start = units::time();
    plan.spout_temperature = celsius(41);
    expect_refusal([&] { return run(four_plates(), plan); }, "temperature of the spout");
    plan.spout_temperature = celsius(20);
    plan.steps = {{condition::collected(0.1 * litre), reflux::constant(2.0)}};
    expect_refusal([&] { return run(pot(), plan); }, "reflux ratio");
    plan.steps = {{condition::collected(0.1 * litre), reflux::of_take_off(10.0 * millilitre / minute)}};
    expect_refusal([&] { return run(pot(), plan); }, "take-off rate");
    auto const of_a_pot =
        expect_refusal([] { return head::none().reflux_at(celsius(40)); }, "temperature of the reflux");
    EXPECT_EQ(of_a_pot.upper(), 0.0) << "bounds that a person can read: " << of_a_pot.what();
    plan.steps = {{condition::collected(0.1 * litre), std::nullopt, 200.0 * watt}};
    expect_refusal([&] { return run(four_plates(), plan); }, "power");
    plan.steps = {{condition::collected(0.1 * litre), reflux::constant_strength(by_volume(96), 5.0)}};
    expect_refusal([&] { return run(four_plates(), plan); }, "strength of the distillate to keep");
    plan.steps = {{condition::strength_lost(), reflux::constant(2.0)}};
    expect_refusal([&] { return run(four_plates(), plan); }, "strengths kept by the reflux");
    plan.steps.assign(run_plan::most_steps + 1, {condition::collected(0.1 * litre)});
    expect_refusal([&] { return run(four_plates(), plan); }, "number of steps of the plan");
}

}  // namespace
}  // namespace aqueth
