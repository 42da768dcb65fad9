// SPDX-License-Identifier: BSL-1.0
// Runs with a column: collected strengths against a finer calculation, reflux, and the head.
#include <aqueth/boiling_curve.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/still/column_limits.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/run.hpp>

#include "runs.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>

namespace aqueth {
namespace {

using test::moles;
using test::pot_still;
using test::quillbeck;
using test::quillbeck_charge;
using test::sea_level;
using test::until;
using test::x_of;

struct planned_run {
    still apparatus;
    run_plan plan;
};

/// five stages, first runnings cut by volume and the rest by strength
planned_run five_stages(flow_model flow) {
    auto s = quillbeck();
    s.tower = column::of_stages(5);
    s.flow = flow;
    run_plan plan = until(condition::still_strength(by_volume(0.5)));
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(80))}};
    return {s, plan};
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
        s.head = head::total_condenser(reflux::constant(c.ratio));
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
    static model::vapour_liquid::equilibrium<double> over(double x) {
        return model::vapour_liquid::bubble_at_pressure(x, 101325.0);
    }
    double vapour(double x) const { return over(x).y; }
    value_and_slope vapour_with_slope(double x) const {
        auto const e = over(x);
        return {e.y, model::vapour_liquid::along_isobar(e).y_x};
    }
    double temperature(double x) const { return over(x).temperature; }
    value_and_slope liquid_enthalpy(double x) const {
        auto const h = [this](double v) { return model::enthalpy::liquid(v, temperature(v)); };
        return {h(x), (h(x + 1e-6) - h(x - 1e-6)) / 2e-6};
    }
    double vapour_enthalpy(double y) const {
        double const t = model::vapour_liquid::dew_at_pressure(y, 101325.0).temperature;
        return model::enthalpy::vapour(y, t, 101325.0);
    }
};

// The tables and the integrator together: a run with five stages, on the tables, against the same run on the
// correlations.
TEST(ColumnDistillation, TablesDoNotChangeTheCollectedStrength) {
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        auto [s, plan] = five_stages(flow);
        auto const by_table = distil(quillbeck_charge(), s, plan, sea_level());
        auto const by_model = distil(quillbeck_charge(), s, plan, correlations{});
        for (std::size_t k = 0; k < 3; ++k) {
            EXPECT_NEAR(x_of(by_table.fractions[k].product), x_of(by_model.fractions[k].product), 1e-9) << k;
        }
        EXPECT_NEAR(by_table.boiling_time.value() / by_model.boiling_time.value(), 1.0, 1e-9);
    }
}

/// A run by the classical method of fourth order with many equal steps of depth, through the solver of the
/// column called anew each time: collected ethanol and seconds, and the moles that are left.
struct fine_run {
    double x, ethanol, seconds, left;

    fine_run(wash const& charge, still const& s, double depth, int steps) {
        detail::column_solver<boiling_curve> const solver(sea_level(), s.tower, s.neck, s.flow);
        detail::amounts const n(charge);
        double const phi = detail::internal_reflux_of(s.head.returned().ratio(), s.neck.share());
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
        auto run = five_stages(flow);
        run.plan.points = 1000;
        auto const charge = quillbeck_charge();
        auto const r = distil(charge, run.apparatus, run.plan, sea_level());
        ASSERT_EQ(r.points.size(), 1000U);
        double const all = moles(charge.liquid());
        double const distilled = all - moles(r.residue.liquid());
        auto const expect = [&](double collected, double ethanol, double still, double seconds, int steps,
                                double strength) {
            fine_run const fine(charge, run.apparatus, -std::log1p(-collected / all), steps);
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

// The head is at the dew point of the distillate: without a column and without extract, the temperature of
// the pot.
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
        s.head = head::total_condenser(reflux::constant(ratio));
        for (auto const& p : distil(quillbeck_charge(), s, plan, sea_level()).points)
            EXPECT_NEAR(p.vapour.celsius(),
                        dew_point(p.distillate, standard_atmosphere).temperature.celsius(), 1e-7)
                << p.distillate.percent();
    }
}

TEST(ColumnDistillation, KeepsAStrengthUntilTheRefluxIsAtItsLimit) {
    auto s = quillbeck();
    s.head = head::total_condenser(reflux::constant_strength(by_volume(85), 6.0));
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

// The reflux keeps a strength until the moment that the run reports, and not a moment longer; a cut and an
// end can wait for it.
TEST(ColumnDistillation, SaysWhenTheStrengthIsLost) {
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        for (double const kept : {70.0, 80.0, 87.0}) {
            auto s = quillbeck();
            s.flow = flow;
            s.head = head::total_condenser(reflux::constant_strength(by_volume(kept), 6.0));
            run_plan plan = until(condition::distillate_strength(by_volume(30)));
            plan.points = 500;
            auto const r = distil(quillbeck_charge(), s, plan, sea_level());
            ASSERT_TRUE(r.strength_lost.has_value()) << kept;
            run_point const& lost = *r.strength_lost;
            EXPECT_NEAR(to<volume_fraction>(lost.distillate).percent(), kept, 1e-6);
            EXPECT_NEAR(lost.reflux_ratio, 6.0, 1e-6);
            for (run_point const& p : r.points) {
                double const strength = to<volume_fraction>(p.distillate).percent();
                if (p.elapsed < lost.elapsed) {
                    EXPECT_NEAR(strength, kept, 1e-9);
                    EXPECT_LT(p.reflux_ratio, 6.0);
                } else {
                    EXPECT_LT(strength, kept);
                }
            }
            auto const ended = distil(quillbeck_charge(), s, until(condition::strength_lost()), sea_level());
            EXPECT_NEAR(ended.boiling_time / lost.elapsed, 1.0, 1e-8);
            EXPECT_NEAR(ended.fractions.at(0).product.strength().percent(), kept, 1e-6);
            EXPECT_NEAR(ended.strength_lost.value().elapsed / ended.boiling_time, 1.0, 1e-9);
            plan.cuts = {{condition::collected(100.0 * millilitre), false}, {condition::strength_lost()}};
            auto const cut = distil(quillbeck_charge(), s, plan, sea_level());
            EXPECT_NEAR(cut.fractions.at(1).end.elapsed / lost.elapsed, 1.0, 1e-8);
            EXPECT_LT(cut.fractions.at(2).product.strength().percent(), kept - 1.0);
        }
    }
    // not lost before the run ends, or not kept
    auto s = quillbeck();
    s.head = head::total_condenser(reflux::constant_strength(by_volume(85), 6.0));
    auto const end = until(condition::collected(0.5 * litre));
    EXPECT_FALSE(distil(quillbeck_charge(), s, end, sea_level()).strength_lost.has_value());
    EXPECT_FALSE(distil(quillbeck_charge(), quillbeck(), end, sea_level()).strength_lost.has_value());
}

}  // namespace
}  // namespace aqueth
