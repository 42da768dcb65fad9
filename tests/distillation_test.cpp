// SPDX-License-Identifier: BSL-1.0
#include <aqueth/boiling_curve.hpp>
#include <aqueth/correlation/enthalpy.hpp>
#include <aqueth/correlation/vapour_liquid.hpp>
#include <aqueth/distillation.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/measured_equilibrium.hpp>

#include "expect_range_error.hpp"
#include "test_mixtures.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

namespace aqueth {
namespace {

using test::expect_range_error;
using test::ideal_mixture;

boiling_curve const& sea_level() {
    static boiling_curve const curve(standard_atmosphere);
    return curve;
}

still pot_still() { return {{1.0 * kilowatt}}; }

/// The stillhouse's 25 L pot under the 4-plate column.
still quillbeck() {
    still s{{2.0 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_plates(4, 0.6);
    s.returned = reflux::constant(3.0).with_heat_loss(0.05);
    return s;
}
wash quillbeck_charge() { return wash::of(25.0 * litre, by_volume(11.0), plato(1.5), celsius(20)); }

run_plan until(condition const& end) {
    run_plan plan;
    plan.ends = {end};
    return plan;
}
double moles(parcel const& p) { return detail::amounts(wash::of(p)).volatiles(); }
double x_of(parcel const& p) { return p.strength<mole_fraction>().value(); }

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

/// collected strength by Simpson's rule over x: d ln n = dx/(d - x), an independent way through the same run
double reference_mean(column const& c, double ratio, double x0, double x1) {
    auto const f = [&](double x) {
        return 1.0 / (distillate_strength(sea_level(), c, by_moles(100.0 * x), ratio).value() - x);
    };
    constexpr int n = 20000;
    double sum = f(x0) + f(x1);
    for (int i = 1; i < n; ++i) sum += (i % 2 ? 4.0 : 2.0) * f(x1 + (x0 - x1) * i / n);
    double const left = std::exp(-sum * (x0 - x1) / (3.0 * n));
    return (x0 - left * x1) / (1.0 - left);
}

TEST(ColumnDistillation, CollectedStrengthAgainstAFineReference) {
    struct {
        double stages, ratio, x0, x1;
    } constexpr cases[] = {
        {0, 0, 0.05, 0.002}, {5, 3, 0.036, 0.001}, {3.4, 1, 0.2, 0.01}, {10, 8, 0.03, 0.0005}};
    for (auto const& c : cases) {
        still s = pot_still();
        s.tower = column::of_stages(c.stages);
        s.returned = reflux::constant(c.ratio);
        auto const charge = wash::of(parcel::of(1.0 * kilogram, by_moles(100.0 * c.x0), celsius(20)));
        auto const r =
            distil(charge, s, until(condition::still_strength(by_moles(100.0 * c.x1))), sea_level());
        EXPECT_NEAR(x_of(r.fractions.at(0).product), reference_mean(s.tower, c.ratio, c.x0, c.x1), 1e-8)
            << c.stages;
    }
}

/// the correlations themselves at one atmosphere, without any table
struct correlations {
    using value_and_slope = numeric::value_and_slope<double>;
    static correlation::vapour_liquid::equilibrium<double> over(double x) {
        return correlation::vapour_liquid::bubble_at_pressure(x, 101325.0);
    }
    double vapour(double x) const { return over(x).y; }
    value_and_slope vapour_with_slope(double x) const {
        auto const e = over(x);
        return {e.y, correlation::vapour_liquid::along_isobar(e).y_x};
    }
    double temperature(double x) const { return over(x).temperature; }
    value_and_slope liquid_enthalpy(double x) const {
        auto const h = [this](double v) { return correlation::enthalpy::liquid(v, temperature(v)); };
        return {h(x), (h(x + 1e-6) - h(x - 1e-6)) / 2e-6};
    }
    double vapour_enthalpy(double y) const {
        double const t = correlation::vapour_liquid::dew_at_pressure(y, 101325.0).temperature;
        return correlation::enthalpy::vapour(y, t, 101325.0);
    }
};

// The tables and the integrator together: a run with five stages, on the tables, against the same run on the
// correlations.
TEST(ColumnDistillation, TablesDoNotChangeTheCollectedStrength) {
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        auto s = quillbeck();
        s.tower = column::of_stages(5);
        s.flow = flow;
        run_plan plan = until(condition::still_strength(by_volume(0.5)));
        plan.cuts = {{condition::collected(100.0 * millilitre), false},
                     {condition::distillate_strength(by_volume(80))}};
        auto const by_table = distil(quillbeck_charge(), s, plan, sea_level());
        auto const by_model = distil(quillbeck_charge(), s, plan, correlations{});
        for (std::size_t k = 0; k < 3; ++k) {
            EXPECT_NEAR(x_of(by_table.fractions[k].product), x_of(by_model.fractions[k].product), 1e-9) << k;
        }
        EXPECT_NEAR(by_table.boiling_time.value() / by_model.boiling_time.value(), 1.0, 1e-9);
    }
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
        auto const sum =
            h.lost_by_pot + h.lost_by_column + h.condenser + h.with_distillate + h.gained_by_still;
        EXPECT_NEAR(sum.value() / h.supplied.value(), 1.0, 1e-9);
        EXPECT_NEAR(h.supplied.value(), 2000.0 * r.boiling_time.value(), 1e-6);
        EXPECT_NEAR(h.lost_by_column.value() / (h.lost_by_column + h.condenser).value(), 0.05, 1e-12);
        EXPECT_NEAR(r.recovery(),
                    1.0 - in(r.residue.liquid().ethanol() + r.fractions[0].product.ethanol(), ethanol), 1e-9);
    }
}

// The balances are sums of what is reported, so they show what is missing from a report.
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

/// A run by the classical method of fourth order with many equal steps of depth, through the solver of the
/// column called anew each time: collected ethanol and seconds, and the moles that are left.
struct fine_run {
    double x, ethanol, seconds, left;

    fine_run(wash const& charge, still const& s, double depth, int steps) {
        detail::column_solver<boiling_curve> const solver(sea_level(), s.tower, s.flow);
        detail::amounts const n(charge);
        double const phi = s.returned.internal(s.returned.ratio());
        struct slope {
            double x, ethanol, seconds;
        };
        auto const slopes = [&](double at, double still) -> slope {
            double const d = solver.distillate(still, phi);
            double const moles = n.volatiles() * std::exp(-at);
            auto const boiler = sea_level().liquid_enthalpy(still);
            double const heat = solver.condensation(d, phi) + sea_level().liquid_enthalpy(d).value -
                                boiler.value - boiler.slope * (d - still);
            // the extract lifts the boiling point, and so what the pot loses
            double const t = sea_level().temperature(still);
            double const latent = sea_level().vapour_enthalpy(sea_level().vapour(still)) - boiler.value;
            double const lift = 8.314462618 * t * t / latent * std::log1p(n.solids / moles);
            double const lost = s.pot.loss.value() * (t + lift - s.pot.room.kelvin());
            return {still - d, moles * d, moles * heat / (s.pot.power.value() - lost)};
        };
        x = n.mole_fraction();
        ethanol = seconds = 0.0;
        double const h = depth / steps;
        for (int i = 0; i < steps; ++i) {
            double const at = h * i;
            auto const a = slopes(at, x);
            auto const b = slopes(at + 0.5 * h, x + 0.5 * h * a.x);
            auto const c = slopes(at + 0.5 * h, x + 0.5 * h * b.x);
            auto const d = slopes(at + h, x + h * c.x);
            x += h / 6.0 * (a.x + 2.0 * b.x + 2.0 * c.x + d.x);
            ethanol += h / 6.0 * (a.ethanol + 2.0 * b.ethanol + 2.0 * c.ethanol + d.ethanol);
            seconds += h / 6.0 * (a.seconds + 2.0 * b.seconds + 2.0 * c.seconds + d.seconds);
        }
        left = n.volatiles() * std::exp(-depth);
    }
};

// The forecast that the benchmark times: five stages, two cuts, a thousand recorded states. Collected
// strength at the ends of the fractions and at every hundredth state; promised is 1e-6.
TEST(ColumnDistillation, ForecastOfFiveStagesAgainstFineSteps) {
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        auto s = quillbeck();
        s.tower = column::of_stages(5);
        s.flow = flow;
        run_plan plan = until(condition::still_strength(by_volume(0.5)));
        plan.cuts = {{condition::collected(100.0 * millilitre), false},
                     {condition::distillate_strength(by_volume(80))}};
        plan.points = 1000;
        auto const charge = quillbeck_charge();
        auto const r = distil(charge, s, plan, sea_level());
        ASSERT_EQ(r.points.size(), 1000U);
        double const all = moles(charge.liquid());
        double const distilled = all - moles(r.residue.liquid());
        auto const expect = [&](double collected, double ethanol, double still, double seconds, int steps,
                                double strength) {
            fine_run const fine(charge, s, -std::log1p(-collected / all), steps);
            EXPECT_NEAR(ethanol / collected, fine.ethanol / collected, strength) << collected;
            EXPECT_NEAR(still, fine.x, 1e-9) << collected;                // 2e-10
            EXPECT_NEAR(seconds / fine.seconds, 1.0, 1e-8) << collected;  // 5e-10
        };
        double collected = 0.0;
        double ethanol = 0.0;
        for (auto const& f : r.fractions) {
            collected += moles(f.product);
            ethanol += moles(f.product) * x_of(f.product);
            expect(collected, ethanol, f.end.still.value(), f.end.elapsed.value(), 4000, 1e-8);
        }
        EXPECT_NEAR(collected / distilled, 1.0, 1e-12);
        for (std::size_t i = 100; i < 1000; i += 100) {
            auto const& p = r.points[i];
            auto const pure = parcel::of(p.pure_alcohol, mass_fraction(1.0), celsius(20));
            expect(distilled * static_cast<double>(i) / 999.0, moles(pure), p.still.value(),
                   p.elapsed.value(), 1000, 2e-8);
        }
    }
}

// The head has the dew point of what comes over: without a column, and without extract, that of the pot.
TEST(SimpleDistillation, HeadIsAsWarmAsThePot) {
    for (double const percent : {8.0, 40.0, 90.0}) {
        run_plan plan = until(condition::still_strength(by_volume(0.5 * percent)));
        plan.points = 50;
        auto const charge = wash::of(parcel::of(10.0 * litre, by_volume(percent), celsius(20)));
        for (auto const& p : distil(charge, pot_still(), plan, sea_level()).points)
            EXPECT_NEAR(p.vapour.celsius(), p.boiling.celsius(), 1e-9) << percent;
    }
}

TEST(ColumnDistillation, HeadHasTheDewPointOfTheDistillate) {
    run_plan plan = until(condition::still_strength(by_volume(0.5)));
    plan.points = 50;
    auto s = quillbeck();
    for (double const ratio : {1.0, 3.0, 20.0}) {
        s.returned = reflux::constant(ratio);
        for (auto const& p : distil(quillbeck_charge(), s, plan, sea_level()).points)
            EXPECT_NEAR(p.vapour.celsius(),
                        dew_point(p.distillate, standard_atmosphere).temperature.celsius(), 1e-7)
                << p.distillate.percent();
    }
}

// The condenser's watts at 2000 moments, summed over the time, are the heat it took in all, whatever the
// column loses to the room; and that is what the heater gave less what went elsewhere.
TEST(ColumnDistillation, CondenserTakesWhatTheColumnDoesNotLose) {
    for (double const loss : {0.0, 0.2, 0.6}) {
        auto s = quillbeck();
        s.returned = reflux::constant(3.0).with_heat_loss(loss);
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
        EXPECT_NEAR(r.heat.lost_by_column.value() / (r.heat.lost_by_column + r.heat.condenser).value(), loss,
                    1e-12);
    }
}

// What a litre of pure alcohol costs counts the warming: the heater's watts from the first minute on.
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

TEST(ColumnDistillation, CutsComeWhereTheyWereAsked) {
    run_plan plan = until(condition::elapsed(4.0 * hour));
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::collected(700.0 * millilitre)},
                 {condition::distillate_strength(by_volume(80))},
                 {condition::boiling_temperature(celsius(98.5))},
                 {condition::still_strength(by_volume(1.0))}};
    auto const r = distil(quillbeck_charge(), quillbeck(), plan, sea_level());
    ASSERT_EQ(r.fractions.size(), 6U);
    EXPECT_NEAR(in(r.fractions[0].product.volume(celsius(20)), millilitre), 100.0, 1e-6);
    EXPECT_NEAR(in(r.fractions[1].product.volume(celsius(20)), millilitre), 700.0, 1e-6);
    EXPECT_NEAR(to<volume_fraction>(r.fractions[2].end.distillate).percent(), 80.0, 1e-6);
    EXPECT_NEAR(r.fractions[3].end.boiling.celsius(), 98.5, 1e-6);
    EXPECT_NEAR(to<volume_fraction>(r.fractions[4].end.still).percent(), 1.0, 1e-6);
    EXPECT_NEAR(in(r.boiling_time, hour), 4.0, 1e-9);
    for (std::size_t k = 1; k < r.fractions.size(); ++k) {
        EXPECT_EQ(r.fractions[k].begin.elapsed, r.fractions[k - 1].end.elapsed);
        EXPECT_LT(r.fractions[k].product.composition(), r.fractions[k - 1].product.composition());
    }
}

TEST(ColumnDistillation, CuttingDoesNotChangeTheRun) {
    run_plan whole = until(condition::still_strength(by_volume(1)));
    run_plan parts = whole;
    for (int i = 0; i < 20; ++i) parts.cuts.push_back({condition::collected(100.0 * millilitre)});
    auto const a = distil(quillbeck_charge(), quillbeck(), whole, sea_level());
    auto const b = distil(quillbeck_charge(), quillbeck(), parts, sea_level());
    EXPECT_NEAR(in(a.residue.mass(), b.residue.mass()), 1.0, 1e-9);
    EXPECT_NEAR(a.boiling_time.value() / b.boiling_time.value(), 1.0, 1e-8);
}

TEST(ColumnDistillation, KeepsAStrengthUntilTheRefluxIsAtItsLimit) {
    auto s = quillbeck();
    s.returned = reflux::constant_strength(by_volume(85), 6.0).with_heat_loss(0.05);
    run_plan plan = until(condition::distillate_strength(by_volume(60)));
    plan.cuts = {{condition::distillate_strength(by_volume(84.999999))}};
    plan.points = 200;
    auto const r = distil(quillbeck_charge(), s, plan, sea_level());
    EXPECT_NEAR(r.fractions[0].product.strength().percent(), 85.0, 1e-5);
    EXPECT_NEAR(r.fractions[0].end.reflux_ratio, 6.0, 1e-6);
    EXPECT_LT(r.fractions[0].begin.reflux_ratio, 4.0);
    for (std::size_t i = 1; i < r.points.size(); ++i) {
        EXPECT_GE(r.points[i].reflux_ratio, r.points[i - 1].reflux_ratio - 1e-9);
        EXPECT_LE(r.points[i].reflux_ratio, 6.0 + 1e-9);
    }
    EXPECT_LT(std::abs(r.balance.ethanol), 1e-9);
}

TEST(ColumnDistillation, HeatLossOfTheColumnIsReflux) {
    auto lossy = quillbeck();
    lossy.returned = reflux::none().with_heat_loss(0.5);
    auto lossless = quillbeck();
    lossless.returned = reflux::constant(1.0);
    auto const end = until(condition::still_strength(by_volume(1)));
    auto const a = distil(quillbeck_charge(), lossy, end, sea_level());
    auto const b = distil(quillbeck_charge(), lossless, end, sea_level());
    EXPECT_NEAR(a.fractions[0].product.strength().percent(), b.fractions[0].product.strength().percent(),
                1e-9);
    EXPECT_EQ(a.fractions[0].begin.reflux_ratio, 0.0);
}

TEST(ColumnDistillation, PointsLieOnTheRun) {
    run_plan plan = until(condition::still_strength(by_volume(0.5)));
    plan.points = 1000;
    auto const r = distil(quillbeck_charge(), quillbeck(), plan, sea_level());
    ASSERT_EQ(r.points.size(), 1000U);
    EXPECT_EQ(r.points.front().collected.value(), 0.0);
    EXPECT_NEAR(in(r.points.back().collected, r.fractions[0].product.volume(celsius(20))), 1.0, 1e-9);
    EXPECT_NEAR(r.points.back().elapsed.value() / r.boiling_time.value(), 1.0, 1e-9);
    // a run that ends at an inner point must agree with it
    auto const& p = r.points[613];
    auto const part =
        distil(quillbeck_charge(), quillbeck(), until(condition::elapsed(p.elapsed)), sea_level());
    EXPECT_NEAR(in(part.fractions[0].product.volume(celsius(20)), p.collected), 1.0, 1e-7);
    EXPECT_NEAR(part.fractions[0].end.still.value(), p.still.value(), 1e-9);
    EXPECT_NEAR(part.fractions[0].end.distillate.value(), p.distillate.value(), 1e-7);
    for (std::size_t i = 1; i < r.points.size(); ++i) {
        EXPECT_GT(r.points[i].elapsed, r.points[i - 1].elapsed);
        EXPECT_LT(r.points[i].distillate, r.points[i - 1].distillate);
        EXPECT_GT(r.points[i].vapour, r.points[i - 1].vapour);
    }
}

// Those who wait are told: the share rises, first of what is distilled, then of what is recorded.
TEST(ColumnDistillation, TellsHowFarItIs) {
    run_plan plan = until(condition::still_strength(by_volume(0.5)));
    plan.points = 50;
    std::vector<run_progress> told;
    auto const r = distil(quillbeck_charge(), quillbeck(), plan, sea_level(),
                          [&](run_progress const& p) { told.push_back(p); });
    ASSERT_GT(told.size(), 55U);
    EXPECT_EQ(told.front().recorded, 0.0);
    EXPECT_EQ(told.back().recorded, 1.0);
    EXPECT_NEAR(told.back().distilled, 1.0 - moles(r.residue.liquid()) / moles(quillbeck_charge().liquid()),
                1e-12);
    for (std::size_t i = 1; i < told.size(); ++i) {
        EXPECT_GE(told[i].distilled, told[i - 1].distilled);
        EXPECT_GE(told[i].recorded, told[i - 1].recorded);
    }
}

// If the last cut and an end come together the run ends there, and nothing comes after the cut.
TEST(ColumnDistillation, AnEndTogetherWithTheLastCutEndsTheRun) {
    auto const charge = quillbeck_charge();
    for (auto const& what :
         {condition::still_strength(by_volume(1)), condition::boiling_temperature(celsius(98)),
          condition::distillate_strength(by_volume(50)), condition::elapsed(2.0 * hour)}) {
        run_plan plan = until(what);
        auto const plain = distil(charge, quillbeck(), plan, sea_level());
        plan.cuts = {{what, false}};
        auto const r = distil(charge, quillbeck(), plan, sea_level());
        ASSERT_EQ(r.fractions.size(), 1U) << what.name();
        EXPECT_FALSE(r.fractions[0].kept);
        EXPECT_NEAR(r.boiling_time / plain.boiling_time, 1.0, 1e-12);
        // one more cut is never reached
        plan.cuts.push_back({condition::collected(10.0 * millilitre)});
        expect_range_error([&] { distil(charge, quillbeck(), plan, sea_level()); }, "collected volume");
    }
}

// An end that comes before the cut by less than the steps are exact comes together with it, whatever the
// rounding. The volumes of the first such pair that the fuzzer found were 1e-13 apart.
TEST(ColumnDistillation, AnEndThatRoundingPutsBeforeTheCutIsTogetherWithIt) {
    auto const charge = quillbeck_charge();
    for (double litres = 0.5; litres < 4.0; litres += 0.25)
        for (double const earlier : {1e-15, 1e-13, 1e-11, 1e-9}) {
            run_plan plan = until(condition::collected(litres * (1.0 - earlier) * litre));
            plan.cuts = {{condition::collected(litres * litre), true}};
            auto const r = distil(charge, quillbeck(), plan, sea_level());
            EXPECT_EQ(r.fractions.size(), 1U) << litres << ' ' << earlier;
        }
    run_plan plan = until(condition::collected((1.0 - 1e-6) * litre));
    plan.cuts = {{condition::collected(1.0 * litre), true}};
    expect_range_error([&] { distil(charge, quillbeck(), plan, sea_level()); }, "collected volume");
}

// A table that somebody measured runs a still as well as the model does.
TEST(SimpleDistillation, OnMeasuredPoints) {
    std::vector<measured_point> points;
    for (double const x : {0.01, 0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.5})
        points.push_back({mole_fraction(x), mole_fraction(sea_level().vapour(x)), {}});
    boiling_curve const measured(measured_equilibrium(points, standard_atmosphere).curve());
    auto const charge = wash::of(parcel::of(10.0 * litre, by_volume(40), celsius(20)));
    auto const end = until(condition::still_strength(by_volume(1)));
    auto const a = distil(charge, pot_still(), end, measured);
    auto const b = distil(charge, pot_still(), end, sea_level());
    // what eight points and a monotone cubic make of it
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

// Common practice: about 4 L of fermented sugar wash in a small electric still heats in 60 to 90 minutes,
// runs for about 4 hours, and gives about 500 mL at about 90 % vol. One set of figures that gives all of it:
TEST(CommonPractice, SmallElectricStill) {
    still s{{350.0 * watt, 1000.0 * joule_per_kelvin, 1.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_stages(3);
    s.returned = reflux::constant(8.0);
    auto const charge = wash::of(4.0 * litre, by_volume(13), plato(0.5), celsius(20));
    auto const r = distil(charge, s, until(condition::collected(500.0 * millilitre)), sea_level());
    EXPECT_GT(in(r.warming.duration, minute), 60.0);
    EXPECT_LT(in(r.warming.duration, minute), 90.0);
    EXPECT_NEAR(in(r.boiling_time, hour), 4.0, 0.5);
    EXPECT_NEAR(r.fractions[0].product.strength().percent(), 90.0, 1.0);
    EXPECT_LT(r.recovery(), 1.0);
}

// 500 mL of 90 % vol are all of the alcohol in 4 L of 11.25 % vol: no still gets it out of less. Out of
// hardly more one still does, slowly, or within what common practice says.
TEST(CommonPractice, HalfALitreOfNinetyPercentNeedsMoreThanElevenAndAQuarter) {
    auto const run = [](double percent, double ratio) {
        still s{{350.0 * watt, 1000.0 * joule_per_kelvin, 0.5 * watt_per_kelvin, celsius(20)}};
        s.tower = column::of_stages(20);
        s.returned = reflux::constant(ratio);
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

// An exhausted still goes on boiling: what comes over is water, and nothing becomes negative.
TEST(Distillation, GoesOnWhenTheAlcoholIsGone) {
    auto s = quillbeck();
    s.tower = column::of_stages(12);
    s.returned = reflux::constant(5.0);
    run_plan plan = until(condition::collected(15.0 * litre));
    plan.points = 100;
    auto const r = distil(quillbeck_charge(), s, plan, sea_level());
    EXPECT_NEAR(in(r.fractions[0].product.volume(), litre), 15.0, 1e-6);
    EXPECT_GE(r.residue.strength().percent(), 0.0);
    EXPECT_LT(r.residue.strength().percent(), 1e-6);
    EXPECT_LT(std::abs(r.balance.ethanol), 1e-9);
    EXPECT_LT(r.points.back().distillate.value(), 1e-6);
}

TEST(Distillation, RefusesWhatCannotBe) {
    auto const& m = sea_level();
    auto const charge = quillbeck_charge();
    auto const end = until(condition::still_strength(by_volume(1)));
    double const nan = std::numeric_limits<double>::quiet_NaN();

    for (double const bad : {0.0, -1.0, nan}) {
        still s = quillbeck();
        s.pot.power = bad * watt;
        expect_range_error([&] { distil(charge, s, end, m); }, "power");
    }
    still weak = quillbeck();
    weak.pot.power = 200.0 * watt;
    auto const e = expect_range_error([&] { distil(charge, weak, end, m); }, "power");
    EXPECT_NEAR(e.lower(), 3.0 * 71.7, 2.0);  // what the boiling pot loses

    auto const strong = wash::of(parcel::of(1.0 * litre, by_volume(97.5), celsius(20)));
    expect_range_error([&] { distil(strong, quillbeck(), end, m); }, "strength of the charge");
    expect_range_error([&] { distil(wash::of(water(1.0 * kilogram, celsius(20))), quillbeck(), end, m); },
                       "strength of the charge");
    expect_range_error(
        [&] { distil(wash::of(parcel::of(0.0 * litre, by_volume(10), celsius(20))), quillbeck(), end, m); },
        "mass of the charge");
    expect_range_error([&] { distil(charge, quillbeck(), run_plan{}, m); }, "number of ends of the run");
    run_plan many = end;
    many.ends.resize(21, end.ends.front());
    expect_range_error([&] { distil(charge, quillbeck(), many, m); }, "number of ends of the run");
    many = end;
    many.cuts.resize(1001, {condition::elapsed(1.0 * second)});
    expect_range_error([&] { distil(charge, quillbeck(), many, m); }, "number of cuts");
    many = end;
    many.points = 100001;
    expect_range_error([&] { distil(charge, quillbeck(), many, m); }, "number of points");
    // it would boil for ages; just above what is asked for it boils for a million hours at most
    auto const lake = wash::of(parcel::of(1e6 * cubic_metre, by_volume(11), celsius(20)));
    still ages = quillbeck();
    auto const least = expect_range_error([&] { distil(lake, ages, end, m); }, "power");
    ages.pot.power = 1.0001 * least.lower() * watt;
    EXPECT_LE(in(distil(lake, ages, end, m).boiling_time, hour), 1e6);
    ages.pot.power = 0.9999 * least.lower() * watt;
    expect_range_error([&] { distil(lake, ages, end, m); }, "power");

    // never reached, or past already: the error says what is reachable
    auto const much =
        expect_range_error([&] { distil(charge, quillbeck(), until(condition::collected(30.0 * litre)), m); },
                           "collected volume");
    EXPECT_GT(much.upper(), 23.0);
    EXPECT_LT(much.upper(), 25.0);
    auto const late = expect_range_error(
        [&] { distil(charge, quillbeck(), until(condition::elapsed(1000.0 * hour)), m); }, "elapsed time");
    EXPECT_LT(late.upper(), 60.0 * 1000.0);
    auto const hot = expect_range_error(
        [&] { distil(charge, quillbeck(), until(condition::boiling_temperature(celsius(120))), m); },
        "boiling temperature");
    EXPECT_LT(hot.upper(), 106.0);
    auto const past = expect_range_error(
        [&] { distil(charge, quillbeck(), until(condition::still_strength(by_volume(12))), m); },
        "strength in the still");
    EXPECT_LT(past.upper(), 12.0);
    // what the charge has is no end of a run either, whatever two conversions of its strength round to
    for (double percent = 1.0; percent < 95.0; percent += 0.5) {
        auto const of_strength = wash::of(parcel::of(25.0 * litre, by_volume(percent), celsius(20)));
        auto const end_at = [&](double p) { return until(condition::still_strength(by_volume(p))); };
        auto const there = expect_range_error([&] { distil(of_strength, quillbeck(), end_at(percent), m); },
                                              "strength in the still");
        EXPECT_NEAR(there.upper(), percent, 1e-5);
        EXPECT_NO_THROW(distil(of_strength, quillbeck(), end_at(percent - 1e-3), m)) << percent;
    }
    expect_range_error(
        [&] { distil(charge, quillbeck(), until(condition::distillate_strength(by_volume(95))), m); },
        "strength of the distillate");
    run_plan late_cut = until(condition::collected(1.0 * litre));
    late_cut.cuts = {{condition::collected(2.0 * litre)}};
    auto const cut =
        expect_range_error([&] { distil(charge, quillbeck(), late_cut, m); }, "collected volume");
    EXPECT_NEAR(cut.upper(), 1.0, 1e-9);

    // reflux too small for the strength that is to be kept
    still keep = quillbeck();
    keep.returned = reflux::constant_strength(by_volume(93), 3.0);
    auto const kept =
        expect_range_error([&] { distil(charge, keep, end, m); }, "strength of the distillate to keep");
    EXPECT_EQ(kept.value(), 93.0);
    EXPECT_LT(kept.upper(), 93.0);
    EXPECT_GT(kept.upper(), 80.0);
    for (double const bad : {-0.1, 1001.0, nan})
        expect_range_error([&] { reflux::constant(bad); }, "reflux ratio");
    expect_range_error([] { reflux::none().with_heat_loss(1.0); },
                       "share of the vapour condensed by heat loss");
    expect_range_error([] { condition::collected(0.0 * litre); }, "volume to collect");
    expect_range_error([] { condition::elapsed(-1.0 * hour); }, "time to elapse");
}

}  // namespace
}  // namespace aqueth
