// SPDX-License-Identifier: BSL-1.0
// Balances of ethanol, water and heat of whole runs, against closed forms and common practice.
#include <aqueth/boiling_curve.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/measured_equilibrium.hpp>
#include <aqueth/still/run.hpp>

#include "runs.hpp"
#include "test_mixtures.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <vector>

namespace aqueth {
namespace {

using test::ideal_mixture;
using test::moles;
using test::pot_still;
using test::quillbeck;
using test::quillbeck_charge;
using test::sea_level;
using test::until;
using test::x_of;

// Lord Rayleigh's equation for constant relative volatility in closed form:
// ln(n0/n1) = [ln(x0/x1) + alpha ln((1 - x1)/(1 - x0))]/(alpha - 1).
TEST(SimpleDistillation, ClosedFormForConstantVolatility) {
    for (double const alpha : {1.5, 2.5, 9.0}) {
        for (double const x1 : {0.39, 0.2, 0.05}) {
            ideal_mixture const m{alpha};
            auto const charge = parcel::of(1.0 * kilogram, by_moles(40), celsius(20));
            double const ln = (std::log(0.4 / x1) + alpha * std::log((1.0 - x1) / 0.6)) / (alpha - 1.0);
            if (ln > 3.9) continue;  // a run leaves 2 %
            auto const r = distil(wash::of(charge), pot_still(),
                                  until(condition::still_strength(by_moles(100.0 * x1))), m);
            double const left = std::exp(-ln);
            EXPECT_NEAR(moles(r.residue.liquid()) / moles(charge), left, 1e-9);
            double const mean = (0.4 - left * x1) / (1.0 - left);
            EXPECT_NEAR(x_of(r.fractions.at(0).product), mean, 1e-9);
        }
    }
}

TEST(ColumnDistillation, ReportsAmountsOfSubstance) {
    run_plan plan = until(condition::still_strength(by_volume(1)));
    plan.cuts = {{condition::collected(100 * millilitre), false}};
    auto const charge = quillbeck_charge();
    auto const r = distil(charge, quillbeck(), plan, 100 * kilopascal);
    double const all = moles(charge.liquid());
    EXPECT_EQ(in(r.fractions.front().begin.distilled, mole), 0.0);
    EXPECT_NEAR(in(r.fractions.front().begin.left, mole), all, 1e-9 * all);
    units::amount sum;
    for (run_fraction const& each : r.fractions) {
        // the product's mass and composition hold the same amount
        EXPECT_NEAR(in(each.amount(), mole), moles(each.product), 1e-9 * all);
        EXPECT_NEAR(in(each.end.distilled + each.end.left, mole), all, 1e-9 * all);
        sum += each.amount();
    }
    EXPECT_NEAR(in(sum, mole), in(r.fractions.back().end.distilled, mole), 1e-9 * all);
    EXPECT_NEAR(in(r.fractions.back().end.left, mole), moles(r.residue.liquid()), 1e-9 * all);
}

TEST(ColumnDistillation, TheLibrarysOwnEquilibriumNeedsOnlyThePressure) {
    auto const plan = until(condition::collected(1 * litre));
    auto const wash_run = [&](auto const&... air) {
        return distil(quillbeck_charge(), quillbeck(), plan, air...).kept_alcohol();
    };
    EXPECT_EQ(wash_run(), wash_run(sea_level()));
    EXPECT_EQ(wash_run(90 * kilopascal), wash_run(boiling_curve(90 * kilopascal)));
    parcel const spirit = parcel::of(10 * litre, by_volume(30), celsius(20));
    EXPECT_EQ(distil(spirit, quillbeck(), plan, 90 * kilopascal).kept_alcohol(),
              distil(wash::of(spirit), quillbeck(), plan, 90 * kilopascal).kept_alcohol());
}

TEST(ColumnDistillation, EverythingIsConserved) {
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        auto s = quillbeck();
        s.flow = flow;
        run_plan plan = until(condition::still_strength(by_volume(0.3)));
        plan.cuts = {{condition::collected(100.0 * millilitre), false},
                     {condition::distillate_strength(by_volume(80))}};
        auto const charge = quillbeck_charge();
        auto const r = distil(charge, s, plan, sea_level());
        ASSERT_EQ(r.fractions.size(), 3U);
        EXPECT_FALSE(r.fractions[0].kept);
        units::mass ethanol = r.residue.liquid().ethanol();
        units::mass water = r.residue.liquid().water();
        for (auto const& f : r.fractions) {
            ethanol += f.product.ethanol();
            water += f.product.water();
        }
        EXPECT_NEAR(in(ethanol, charge.liquid().ethanol()), 1.0, 1e-9);
        EXPECT_NEAR(in(water, charge.liquid().water()), 1.0, 1e-9);
        EXPECT_EQ(r.residue.solids(), charge.solids());
        EXPECT_LT(std::abs(r.balance.ethanol), 1e-9);
        EXPECT_LT(std::abs(r.balance.water), 1e-9);
        EXPECT_LT(std::abs(r.balance.energy), 1e-9);
        // heat, summed anew: what the heater gave is the sum of where it went
        auto const& h = r.heat;
        auto const sum = h.lost_by_pot + h.neck + h.condenser + h.with_distillate + h.gained_by_still;
        EXPECT_NEAR(sum.value() / h.supplied.value(), 1.0, 1e-9);
        EXPECT_NEAR(h.supplied.value(), 2000.0 * r.boiling_time.value(), 1e-6);
        EXPECT_NEAR(h.neck.value() / (h.neck + h.condenser).value(), 0.05, 0.005);
        EXPECT_NEAR(r.recovery(),
                    1.0 - in(r.residue.liquid().ethanol() + r.fractions[0].product.ethanol(), ethanol), 1e-9);
    }
}

// A charge with a trace of ethanol is computed as well as any: the tolerance of the steps is relative to its
// ethanol.
TEST(ColumnDistillation, EverythingIsConservedInWeakCharges) {
    for (double const percent : {0.01, 0.1, 0.2, 0.4, 0.7, 1.0}) {
        for (double const stages : {0.0, 1.0, 3.0, 6.0, 12.0}) {
            for (double const litres : {1.0, 5.0, 8.0, 15.0}) {
                still s = pot_still();
                s.tower = column::of_stages(stages);
                s.head = head::total_condenser(reflux::constant(5.0));
                auto const charge = wash::of(parcel::of(25.0 * litre, by_volume(percent), celsius(20)));
                auto const r = distil(charge, s, until(condition::collected(litres * litre)), sea_level());
                EXPECT_LT(std::abs(r.balance.ethanol), 1e-9) << percent << ' ' << stages << ' ' << litres;
                EXPECT_LT(std::abs(r.balance.water), 1e-9) << percent << ' ' << stages << ' ' << litres;
                EXPECT_LT(std::abs(r.balance.energy), 1e-9) << percent << ' ' << stages << ' ' << litres;
            }
        }
    }
}

// The balances are sums over the report, so they show a missing part of a report.
TEST(ColumnDistillation, BalancesAreSumsOfTheParcels) {
    run_plan plan = until(condition::still_strength(by_volume(0.3)));
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(80))}};
    auto const charge = quillbeck_charge();
    auto r = distil(charge, quillbeck(), plan, sea_level());
    auto const whole = detail::balance_of(charge, r.fractions, r.residue, r.heat);
    EXPECT_EQ(whole.ethanol, r.balance.ethanol);
    EXPECT_EQ(whole.water, r.balance.water);
    EXPECT_EQ(whole.energy, r.balance.energy);
    parcel const lost = r.fractions.front().product;
    r.fractions.erase(r.fractions.begin());
    r.heat.condenser = 0.99 * r.heat.condenser;
    auto const less = detail::balance_of(charge, r.fractions, r.residue, r.heat);
    EXPECT_NEAR(less.ethanol, in(lost.ethanol(), charge.liquid().ethanol()), 1e-9);
    EXPECT_NEAR(less.water, in(lost.water(), charge.liquid().water()), 1e-9);
    EXPECT_NEAR(less.energy, 0.01 * r.heat.condenser.value() / 0.99 / r.heat.supplied.value(), 1e-8);
}

// The condenser's watts at 2000 moments, summed over the time, are the heat it took in all, whatever the
// column loses to the room; and that is what the heater gave less what went elsewhere.
TEST(ColumnDistillation, CondenserTakesWhatTheColumnDoesNotLose) {
    for (double const loss : {0.0, 0.2, 0.6}) {
        auto s = quillbeck();
        s.neck = neck::condensing(loss);
        run_plan plan = until(condition::still_strength(by_volume(0.5)));
        plan.points = 2000;
        auto const r = distil(quillbeck_charge(), s, plan, sea_level());
        double joules = 0.0;
        for (std::size_t i = 1; i < r.points.size(); ++i) {
            auto const &a = r.points[i - 1], &b = r.points[i];
            joules += 0.5 * (a.condenser + b.condenser).value() * (b.elapsed - a.elapsed).value();
        }
        EXPECT_NEAR(joules / r.heat.condenser.value(), 1.0, 1e-8) << loss;
        EXPECT_LT(std::abs(r.balance.energy), 1e-9);
    }
}

// The energy per litre of pure alcohol includes the warming: the heater's power from the first minute on.
TEST(ColumnDistillation, EnergyForALitreCountsTheWarming) {
    run_plan plan = until(condition::distillate_strength(by_volume(20)));
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(80))}};
    auto const r = distil(quillbeck_charge(), quillbeck(), plan, sea_level());
    double const joules = 2000.0 * (r.warming.duration + r.boiling_time).value();
    double const litres =
        in(r.fractions.at(1).product.pure_alcohol() + r.fractions.at(2).product.pure_alcohol(), litre);
    EXPECT_NEAR(r.energy_per_litre().value() / (joules / litres), 1.0, 1e-9);
    EXPECT_GT(r.warming.supplied, 0.2 * r.energy());
}

// A run with a measured table works as with the model.
TEST(SimpleDistillation, OnMeasuredPoints) {
    std::vector<measured_point> points;
    for (double const x : {0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5})
        points.push_back({mole_fraction(x), mole_fraction(sea_level().vapour(x)), {}});
    boiling_curve const measured(measured_equilibrium(points, standard_atmosphere).curve());
    auto const charge = wash::of(parcel::of(10.0 * litre, by_volume(40), celsius(20)));
    auto const end = until(condition::still_strength(by_volume(1)));
    auto const a = distil(charge, pot_still(), end, measured);
    auto const b = distil(charge, pot_still(), end, sea_level());
    // the error of eight points and a monotone cubic
    EXPECT_NEAR(x_of(a.fractions[0].product), x_of(b.fractions[0].product), 0.002);
    EXPECT_NE(x_of(a.fractions[0].product), x_of(b.fractions[0].product));
    EXPECT_LT(std::abs(a.balance.ethanol), 1e-9);
}

TEST(Distillation, ExtractStaysAndLiftsTheBoilingPoint) {
    auto const sweet = wash::of(10.0 * litre, by_volume(8), plato(10), celsius(20));
    auto const plain = wash::of(sweet.liquid());
    auto const end = until(condition::still_strength(by_volume(0.5)));
    auto const a = distil(sweet, pot_still(), end, sea_level());
    auto const b = distil(plain, pot_still(), end, sea_level());
    EXPECT_NEAR(a.fractions[0].product.mass().value(), b.fractions[0].product.mass().value(), 1e-9);
    EXPECT_GT(a.residue.extract(), sweet.extract());
    auto const lift = a.fractions[0].end.boiling - b.fractions[0].end.boiling;
    EXPECT_GT(lift, 0.1 * kelvins);
    EXPECT_NEAR(a.warming.to.celsius(), boiling_temperature(sweet, standard_atmosphere).celsius(), 0.005);
    EXPECT_NEAR(b.warming.to.celsius(), boiling_temperature(plain, standard_atmosphere).celsius(), 1e-4);
}

// An exhausted still continues boiling: the distillate is water, and nothing becomes negative.
TEST(Distillation, GoesOnWhenTheAlcoholIsGone) {
    auto s = quillbeck();
    s.tower = column::of_stages(12);
    s.head = head::total_condenser(reflux::constant(5.0));
    run_plan plan = until(condition::collected(15.0 * litre));
    plan.points = 100;
    auto const r = distil(quillbeck_charge(), s, plan, sea_level());
    EXPECT_NEAR(in(r.fractions[0].product.volume(), litre), 15.0, 1e-6);
    EXPECT_GE(r.residue.strength().percent(), 0.0);
    EXPECT_LT(r.residue.strength().percent(), 1e-6);
    EXPECT_LT(std::abs(r.balance.ethanol), 1e-9);
    EXPECT_LT(r.points.back().distillate.value(), 1e-6);
}

// Common practice: about 4 L of fermented sugar wash in a small electric still heats in 60 to 90 minutes,
// runs for about 4 hours, and gives about 500 mL at about 90 % vol. One set of figures that gives all of it:
TEST(CommonPractice, SmallElectricStill) {
    still s{{350.0 * watt, 1000.0 * joule_per_kelvin, 1.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_stages(3);
    s.head = head::total_condenser(reflux::constant(8.0));
    auto const charge = wash::of(4.0 * litre, by_volume(13), plato(0.5), celsius(20));
    auto const r = distil(charge, s, until(condition::collected(500.0 * millilitre)), sea_level());
    EXPECT_GT(in(r.warming.duration, minute), 60.0);
    EXPECT_LT(in(r.warming.duration, minute), 90.0);
    EXPECT_NEAR(in(r.boiling_time, hour), 4.0, 0.5);
    EXPECT_NEAR(r.fractions[0].product.strength().percent(), 90.0, 1.0);
    EXPECT_LT(r.recovery(), 1.0);
}

// 500 mL of 90 % vol are all of the alcohol in 4 L of 11.25 % vol: no still recovers them from less. From
// slightly more a still does, slowly, or within common practice.
TEST(CommonPractice, HalfALitreOfNinetyPercentNeedsMoreThanElevenAndAQuarter) {
    auto const run = [](double percent, double ratio) {
        still s{{350.0 * watt, 1000.0 * joule_per_kelvin, 0.5 * watt_per_kelvin, celsius(20)}};
        s.tower = column::of_stages(20);
        s.head = head::total_condenser(reflux::constant(ratio));
        auto const charge = wash::of(parcel::of(4.0 * litre, by_volume(percent), celsius(20)));
        return distil(charge, s, until(condition::collected(500.0 * millilitre)), sea_level());
    };
    auto const strength = [](distillation const& r) {
        return r.fractions.at(0).product.strength().percent();
    };
    EXPECT_LT(strength(run(11.2, 100.0)), 90.0);
    EXPECT_GT(strength(run(11.3, 30.0)), 90.0);
    auto const usual = run(11.3, 10.0);
    EXPECT_NEAR(in(usual.warming.duration, minute), 75.0, 15.0);
    EXPECT_NEAR(in(usual.boiling_time, hour), 4.0, 0.5);
    EXPECT_NEAR(strength(usual), 90.0, 1.0);
}

}  // namespace
}  // namespace aqueth
