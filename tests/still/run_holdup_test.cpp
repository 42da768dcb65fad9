// SPDX-License-Identifier: BSL-1.0
// Runs of a column whose plates and condenser hold liquid: against an integration with tiny explicit steps,
// the model without holdup, Fenske's equation, and balances by hand.
#include <aqueth/boiling_curve.hpp>
#include <aqueth/still/column_limits.hpp>
#include <aqueth/still/detail/batch_run.hpp>
#include <aqueth/still/detail/holdup_run.hpp>
#include <aqueth/still/run.hpp>

#include "expect_refusal.hpp"
#include "runs.hpp"
#include "test_mixtures.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::ideal_mixture;
using test::sea_level;
using test::until;

wash charge() { return wash::of(parcel::of(25.0 * litre, by_volume(11.0), celsius(20))); }

/// four plates over the stillhouse's pot; volumes held on each plate and in the condenser
still four_plates(double plate, double condenser) {
    still s{{1.5 * kilowatt, units::heat_capacity(), 3.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_plates(4, 0.6).holding(plate * millilitre);
    s.head = head::total_condenser(reflux::constant(3.0)).holding(condenser * millilitre);
    return s;
}
/// foreshots, hearts above 80 % vol, and the rest
run_plan hearts(units::time start = units::time()) {
    run_plan plan = until(condition::still_strength(by_volume(0.5)));
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(80.0))}};
    plan.start = start;
    return plan;
}
double percent(mole_fraction x) { return to<volume_fraction>(x).percent(); }
double litres(parcel const& p) { return in(p.volume(celsius(20)), litre); }

// Figures of a model that was made independently of this one, in another language. It took the moles held
// from the first vapour's; its own moles are not known exactly, which explains 0.5 %. Limits: 1 % of the
// volume, and of the strengths the last digit stated twice.
TEST(Holdup, HeartsOfAnIndependentModel) {
    struct {
        double plate, condenser, minutes, volume, strength, first;
    } constexpr cases[] = {{0, 0, 0, 1.942, 85.7, 87.5},
                           {60, 10, 0, 2.057, 85.5, 86.4},
                           {120, 20, 0, 2.122, 85.2, 85.4},
                           {120, 20, 30, 2.111, 0.0, 88.2}};
    for (auto const& c : cases) {
        auto const r =
            distil(charge(), four_plates(c.plate, c.condenser), hearts(c.minutes * minute), sea_level());
        parcel const& product = r.fractions.at(1).product;
        EXPECT_NEAR(litres(product) / c.volume, 1.0, 0.01) << c.plate;
        if (c.strength > 0.0) {
            EXPECT_NEAR(product.strength<volume_fraction>().percent(), c.strength, 0.2) << c.plate;
        }
        EXPECT_NEAR(percent(r.fractions[1].begin.distillate), c.first, 0.2) << c.plate;
    }
}

/// Four plates with total condenser by the classical method of fourth order with many equal steps of the
/// vapour. Time by the heat balance over each step: heat contents at its ends, the rest at its middle.
struct fine_run {
    static constexpr std::size_t plates = 4;
    /// moles in the pot, ethanol there, moles distilled, ethanol in them, heat taken out by condenser and
    /// distillate, plates, condenser
    using unknowns = std::array<double, 5 + plates + 1>;

    double plate, condenser;          // volumes held, m3
    std::optional<double> like = {};  // the liquid whose moles they hold; empty: each liquid keeps its volume
    double ratio = 3.0;
    unknowns now{};
    double seconds = 0.0;

    static fine_run begin(double plate, double condenser, std::optional<double> like) {
        fine_run run{plate * 1e-6, condenser * 1e-6, like};
        run.fill();
        return run;
    }
    void fill() {
        detail::amounts const n(charge());
        double const first = sea_level().vapour(n.mole_fraction());
        double const all = plates * moles(plate, first) + moles(condenser, first);
        now.fill(first);
        now[0] = n.volatiles() - all;
        now[1] = n.ethanol - all * first;
        now[2] = now[3] = now[4] = 0.0;
        double const before = n.volatiles() * sea_level().liquid_enthalpy(n.mole_fraction()).value;
        double const to_condense = all * (sea_level().vapour_enthalpy(first) - enthalpy(first));
        seconds = (to_condense + content(now) - before) /
                  (1500.0 - 3.0 * (sea_level().temperature(n.mole_fraction()) - 293.15));
    }
    static double enthalpy(double x) { return sea_level().liquid_enthalpy(x).value; }
    double moles(double volume, double x) const {
        return volume / detail::mass_of_moles(1.0, like.value_or(x)).volume();
    }
    double moles_slope(double volume, double x) const {
        return (moles(volume, x + 1e-6) - moles(volume, x - 1e-6)) / 2e-6;
    }
    double content(unknowns const& y) const {
        double sum = y[0] * enthalpy(y[1] / y[0]) + moles(condenser, y[9]) * enthalpy(y[9]);
        for (std::size_t i = 0; i < plates; ++i) sum += moles(plate, y[5 + i]) * enthalpy(y[5 + i]);
        return sum;
    }
    unknowns slopes(unknowns const& y) const {
        std::array<double, plates + 1> v{sea_level().vapour(y[1] / y[0])};
        for (std::size_t i = 0; i < plates; ++i) v[i + 1] = 0.4 * v[i] + 0.6 * sea_level().vapour(y[5 + i]);
        unknowns s{};
        s[9] = (v[plates] - y[9]) / moles(condenser, y[9]);
        double const leaves = 1.0 - moles_slope(condenser, y[9]) * s[9];
        double const taken = leaves / (1.0 + ratio);
        double down = leaves - taken;
        for (std::size_t i = plates; i > 0; --i) {
            double const x = y[4 + i];
            s[4 + i] = (v[i - 1] - v[i] + down * (y[5 + i] - x)) / moles(plate, x);
            down -= moles_slope(plate, x) * s[4 + i];
        }
        s[0] = down - 1.0;
        s[1] = down * y[5] - v[0];
        s[2] = taken;
        s[3] = taken * y[9];
        // The condenser condenses the vapour, and its content is kept boiling while its composition changes.
        double const d = 1e-4;
        double const warmer = (enthalpy(y[9] + d) - enthalpy(y[9] - d)) / (2.0 * d);
        s[4] = sea_level().vapour_enthalpy(v[plates]) - enthalpy(y[9]) - warmer * (v[plates] - y[9]) +
               taken * enthalpy(y[9]);
        return s;
    }
    void advance(double h) {
        auto const moved = [&](unknowns y, unknowns const& s, double by) {
            for (std::size_t i = 0; i < y.size(); ++i) y[i] += by * s[i];
            return y;
        };
        unknowns const before = now;
        auto const a = slopes(now), b = slopes(moved(now, a, h / 2));
        auto const c = slopes(moved(now, b, h / 2)), d = slopes(moved(now, c, h));
        for (std::size_t i = 0; i < now.size(); ++i) now[i] += h / 6 * (a[i] + 2 * b[i] + 2 * c[i] + d[i]);
        unknowns const middle = moved(before, b, h / 2);
        double const power = 1500.0 - 3.0 * (sea_level().temperature(middle[1] / middle[0]) - 293.15);
        seconds += (now[4] - before[4] + content(now) - content(before)) / power;
    }
    double collected() const { return detail::mass_of_moles(now[2], now[3]).volume() * 1e3; }  // L
};
/// distillate of the steady column at the start
double first_distillate() {
    return distillate_strength(sea_level(), column::of_plates(4, 0.6),
                               mole_fraction(detail::amounts(charge()).mole_fraction()), 3.0)
        .value();
}

TEST(Holdup, AgainstTinyExplicitSteps) {
    for (double const volume : {0.1, 1.0, 2.5}) {
        auto const r =
            distil(charge(), four_plates(60, 10), until(condition::collected(volume * litre)), sea_level());
        run_point const& end = r.fractions.at(0).end;
        auto fine = fine_run::begin(60, 10, first_distillate());
        int const steps = 20000;
        double const vapour = 4.0 * in(end.distilled, mole);
        for (int i = 0; i < steps; ++i) fine.advance(vapour / steps);
        EXPECT_NEAR(fine.now[2] / in(end.distilled, mole), 1.0, 1e-9) << volume;
        EXPECT_NEAR(fine.now[3] / fine.now[2], test::x_of(r.fractions[0].product), 1e-8) << volume;
        EXPECT_NEAR(fine.now[9], end.distillate.value(), 1e-8) << volume;
        EXPECT_NEAR(fine.now[1] / fine.now[0], end.still.value(), 1e-8) << volume;
        EXPECT_NEAR(fine.seconds / r.boiling_time.value(), 1.0, 1e-8) << volume;
    }
}

// What the model leaves out: real plates keep their volume, and hold fewer moles when they become stronger.
// The limits state the difference; they are of the model, not of its numerics.
TEST(Holdup, ConstantMolesAgainstPlatesThatKeepTheirVolume) {
    for (double const plate : {60.0, 120.0}) {
        double const condenser = plate / 6.0;
        auto const r = distil(charge(), four_plates(plate, condenser), hearts(), sea_level());
        auto real = fine_run::begin(plate, condenser, std::nullopt);
        double begin = 0.0, first = 0.0;
        double const least = to<mole_fraction>(by_volume(80.0)).value();
        while (begin == 0.0 || real.now[9] > least) {
            real.advance(0.05);
            if (begin == 0.0 && real.collected() >= 0.1) {
                begin = real.collected();
                first = real.now[9];
            }
        }
        double const volume = real.collected() - begin;  // contraction is far below the difference
        EXPECT_NEAR(litres(r.fractions[1].product) / volume, 1.0, 0.007) << plate;
        EXPECT_NEAR(percent(r.fractions[1].begin.distillate), percent(mole_fraction(first)), 0.1) << plate;
    }
}

/// all kinds of heads and necks
std::vector<still> all_tops() {
    auto const base = four_plates(0, 0);
    std::vector<still> all(8, base);
    all[1].neck = neck::condensing(0.1);
    all[2].neck = neck::losing(1.0 * watt_per_kelvin);
    all[3].head = head::total_condenser(reflux::constant(2.0)).reflux_at(celsius(40));
    all[4].head = head::total_condenser(reflux::of_take_off(units::volume_flow::from_value(15e-6 / 60)));
    all[5].head = head::partial_condenser(0.7);
    all[6].head = head::partial_condenser(
        cooling_water{units::volume_flow::from_value(0.4e-3 / 60), celsius(15), celsius(40)});
    all[7].tower = column::of_stages(3.4);
    all[7].neck = neck::losing(1.0 * watt_per_kelvin);
    all[7].head = head::total_condenser(reflux::of_take_off(units::volume_flow::from_value(10e-6 / 60)))
                      .reflux_at(celsius(60));
    return all;
}
still holding(still s, double plate, double condenser) {
    s.tower = s.tower.holding(plate * millilitre);
    s.head = s.head.holding(condenser * millilitre);
    return s;
}

// Next to nothing is held: the model without holdup. With plates that hold nothing at all under such a
// condenser their balances are equations without a derivative.
TEST(Holdup, WithoutHoldupIsTheQuasiSteadyRun) {
    auto plan = until(condition::still_strength(by_volume(2.0)));
    plan.cuts = {{condition::collected(500.0 * millilitre)}};
    int which = 0;
    for (still const& s : all_tops()) {
        auto const expected = distil(charge(), s, plan, sea_level());
        for (double const plate : {0.0, 1e-5}) {
            auto const r = distil(charge(), holding(s, plate, 1e-5), plan, sea_level());
            for (std::size_t k = 0; k < 2; ++k) {
                EXPECT_NEAR(litres(r.fractions[k].product) / litres(expected.fractions[k].product), 1.0, 1e-6)
                    << which;
                EXPECT_NEAR(test::x_of(r.fractions[k].product), test::x_of(expected.fractions[k].product),
                            1e-6)
                    << which;
            }
            EXPECT_NEAR(r.fractions[1].begin.distillate.value(),
                        expected.fractions[1].begin.distillate.value(), 1e-6)
                << which;
            EXPECT_NEAR(r.fractions[1].begin.reflux_ratio, expected.fractions[1].begin.reflux_ratio, 1e-5)
                << which;
            EXPECT_NEAR(in(r.fractions[1].begin.vapour_flow, mole / second) /
                            in(expected.fractions[1].begin.vapour_flow, mole / second),
                        1.0, 1e-6)
                << which;
            EXPECT_NEAR(in(r.boiling_time, second) / in(expected.boiling_time, second), 1.0, 1e-6) << which;
            for (auto const heat : {&run_heat::condenser, &run_heat::neck, &run_heat::partial_condenser})
                EXPECT_NEAR((r.heat.*heat).value() / expected.heat.supplied.value(),
                            (expected.heat.*heat).value() / expected.heat.supplied.value(), 1e-6)
                    << which;
        }
        ++which;
    }
}

TEST(Holdup, EthanolWaterAndHeatAreConserved) {
    auto plan = hearts(20.0 * minute);
    int which = 0;
    for (still const& s : all_tops()) {
        plan.start = s.head.what() == head::kind::total_condenser ? 20.0 * minute : units::time();
        if (which == 0) {
            plan.steps = {{condition::elapsed(60.0 * minute), reflux::constant(5.0), 1.2 * kilowatt},
                          {condition::distillate_strength(by_volume(84.0)), reflux::constant(2.0), {}}};
        }
        auto const r = distil(charge(), holding(s, 40, 30), plan, sea_level());
        EXPECT_NEAR(r.balance.ethanol, 0.0, 1e-11) << which;
        EXPECT_NEAR(r.balance.water, 0.0, 1e-11) << which;
        EXPECT_NEAR(r.balance.energy, 0.0, 1e-9) << which;
        EXPECT_EQ(r.steps.size(), plan.steps.size());
        plan.steps.clear();
        ++which;
    }
}

// After a long time at total reflux: Fenske's equation for a constant volatility, and the library's own
// column.
TEST(Holdup, TotalRefluxSettlesToFenskesEquation) {
    run_plan plan = until(condition::collected(1.0 * millilitre));
    plan.start = 300.0 * hour;
    still s = four_plates(60, 10);
    for (double const alpha : {1.5, 2.5, 6.0}) {
        s.tower = column::of_stages(4).holding(60.0 * millilitre);
        auto const r = distil(charge(), s, plan, ideal_mixture{alpha});
        double const d = r.fractions.at(0).begin.distillate.value(), x = r.fractions[0].begin.still.value();
        EXPECT_NEAR(std::log(d / (1.0 - d) * (1.0 - x) / x) / std::log(alpha), 5.0, 1e-7) << alpha;
        EXPECT_LT(x, detail::amounts(charge()).mole_fraction());
    }
    for (column const& tower : {column::of_plates(4, 0.6), column::of_stages(7.5)}) {
        s.tower = tower.holding(60.0 * millilitre);
        auto const r = distil(charge(), s, plan, sea_level());
        run_point const& p = r.fractions.at(0).begin;
        double const expected =
            distillate_strength(sea_level(), tower, p.still, std::numeric_limits<double>::infinity()).value();
        EXPECT_NEAR(p.distillate.value(), expected, 1e-8);
    }
}

// Half the tolerance, and steps that are cut in halves, change nothing beyond the tolerance.
TEST(Holdup, ShorterStepsChangeNothing) {
    detail::held_still<boiling_curve> const engine(charge(), four_plates(60, 10), sea_level());
    auto const after = [&](double tolerance, int parts) {
        auto now = engine.begin(0.0, [](auto const&, double, auto const&) {});
        for (double h = 0.01; now.depth < 100.0;) {
            h = (std::min)(h, 100.0 - now.depth);
            auto const whole = engine.advance(now, h);
            if (whole.error <= tolerance) {
                for (int i = 0; i < parts; ++i)
                    now = engine.reached(now, h / parts, engine.advance(now, h / parts));
            }
            h = numeric::next_step(h, whole.error, tolerance);
        }
        return now;
    };
    auto const run = after(detail::run_tolerance, 1);
    for (auto const& finer : {after(0.5 * detail::run_tolerance, 1), after(detail::run_tolerance, 2)}) {
        EXPECT_NEAR(run.distillate(), finer.distillate(), 1e-8);
        EXPECT_NEAR(run.x(), finer.x(), 1e-9);
        EXPECT_NEAR(run.ethanol() / finer.ethanol(), 1.0, 1e-8);
        EXPECT_NEAR(run.seconds() / finer.seconds(), 1.0, 1e-9);
    }
}

// At one instant, from the reported liquids alone: what comes to every plate less what leaves it is what it
// gains in a short time. The same with heat around pot, plates and condenser. Around a single plate equal
// flows do not balance the heat; the test states by how much, as constant molar overflow leaves it out.
TEST(Holdup, PlateByPlateBalances) {
    still s = four_plates(60, 10);
    s.neck = neck::condensing(0.1);
    detail::held_still<boiling_curve> const engine(charge(), s, sea_level());
    auto now = engine.begin(0.0, [](auto const&, double, auto const&) {});
    double h = 0.01;
    while (now.depth < 20.0) {
        auto const step = engine.advance(now, h);
        if (step.error <= detail::run_tolerance) now = engine.reached(now, h, step);
        h = numeric::next_step(h, step.error, detail::run_tolerance);
    }
    double const dw = 1e-3;
    auto const later = engine.reached(now, dw, engine.advance(now, dw));
    auto const latest = engine.reached(later, dw, engine.advance(later, dw));
    auto const rate = [&](auto const& of) { return (of(latest) - of(now)) / (2.0 * dw); };  // at `later`
    namespace place = detail::held;
    auto const liquid = [](detail::held_point const& p, std::size_t i) { return p.y[place::plates + i]; };

    std::array<double, 5> x{}, y{};
    y[0] = sea_level().vapour(later.x());
    for (std::size_t i = 1; i <= 4; ++i) {
        x[i] = liquid(later, i - 1);
        y[i] = y[i - 1] + 0.6 * (sea_level().vapour(x[i]) - y[i - 1]);
    }
    double const xc = later.distillate();
    // the neck: y4 = 0.1 l + 0.9 y(l), by bisection
    double low = 0.0, high = 1.0;
    for (int i = 0; i < 60; ++i) {
        double const l = 0.5 * (low + high);
        (0.1 * l + 0.9 * sea_level().vapour(l) < y[4] ? low : high) = l;
    }
    double const back = low, on = sea_level().vapour(low);
    double const taken = 0.9 / 4.0, down = 1.0 - taken;
    double const from_above = (0.1 * back + 0.9 * 0.75 * xc) / down;

    auto const& held = engine.column().liquid();
    EXPECT_NEAR(rate([](auto const& p) { return p.left; }), -taken, 1e-9);
    EXPECT_NEAR(rate([](auto const& p) { return p.y[place::ethanol]; }), down * x[1] - y[0], 1e-7);
    for (std::size_t i = 1; i <= 4; ++i) {
        double const above = i < 4 ? x[i + 1] : from_above;
        EXPECT_NEAR(held.plate[i - 1] * rate([&](auto const& p) { return liquid(p, i - 1); }),
                    y[i - 1] - y[i] + down * (above - x[i]), 1e-7)
            << i;
    }
    EXPECT_NEAR(held.condenser * rate([](auto const& p) { return p.distillate(); }), 0.9 * (on - xc), 1e-7);

    auto const vapour = [](double v) { return sea_level().vapour_enthalpy(v); };
    auto const boiling = [](double v) { return sea_level().liquid_enthalpy(v).value; };
    double const neck = vapour(y[4]) - 0.1 * boiling(back) - 0.9 * vapour(on);
    double const gains_above = held.condenser * rate([&](auto const& p) { return boiling(p.distillate()); });
    double const condenser = 0.9 * (vapour(on) - boiling(xc)) - gains_above;
    EXPECT_NEAR(rate([](auto const& p) { return p.neck(); }), neck, 1e-3);  // J/mol of 40 000
    EXPECT_NEAR(rate([](auto const& p) { return p.condenser(); }), condenser, 1e-3);
    double const content = rate([&](auto const& p) { return engine.content_heat(p); });
    double const seconds = rate([](auto const& p) { return p.seconds(); });
    double const net = 1500.0 - 3.0 * (sea_level().temperature(later.x()) - 293.15);
    EXPECT_NEAR(net * seconds, neck + condenser + taken * boiling(xc) + content, 1e-2);

    double greatest = 0.0;
    for (std::size_t i = 1; i <= 4; ++i) {
        double const above = i < 4 ? boiling(x[i + 1]) : (0.1 * boiling(back) + 0.675 * boiling(xc)) / down;
        double const gains =
            held.plate[i - 1] * rate([&](auto const& p) { return boiling(liquid(p, i - 1)); });
        double const missing = vapour(y[i - 1]) - vapour(y[i]) + down * (above - boiling(x[i])) - gains;
        greatest = (std::max)(greatest, std::abs(missing));
    }
    EXPECT_LT(greatest / (vapour(y[4]) - boiling(y[4])), 0.02);
}

TEST(Holdup, TimeAtTotalRefluxComesAfterFilling) {
    still const s = four_plates(120, 20);
    auto const filled = distil(charge(), s, hearts(), sea_level()).fractions.at(0).begin;
    auto const waited = distil(charge(), s, hearts(30.0 * minute), sea_level()).fractions.at(0).begin;
    EXPECT_GT(in(filled.elapsed, minute), 3.0);  // 0.5 L of first vapour at 1.26 kW: 0.013 mol/s and more
    EXPECT_LT(in(filled.elapsed, minute), 10.0);
    EXPECT_NEAR(in(waited.elapsed - filled.elapsed, minute), 30.0, 1e-9);
    EXPECT_EQ(in(waited.collected, litre), 0.0);
    EXPECT_LT(percent(filled.distillate), 60.0);  // the first vapour
    EXPECT_GT(percent(waited.distillate), 88.0);
    EXPECT_GT(waited.vapour.celsius(), 78.0);
}

TEST(Holdup, ConditionsAreMetInsideSteps) {
    still const s = four_plates(60, 10);
    auto const ended = [&](condition const& c) {
        return distil(charge(), s, until(c), sea_level()).fractions.at(0).end;
    };
    EXPECT_NEAR(percent(ended(condition::distillate_strength(by_volume(80.0))).distillate), 80.0, 1e-7);
    EXPECT_NEAR(in(ended(condition::elapsed(50.0 * minute)).elapsed, minute), 50.0, 1e-9);
    EXPECT_NEAR(in(ended(condition::collected(321.0 * millilitre)).collected, millilitre), 321.0, 1e-7);
    EXPECT_NEAR(ended(condition::boiling_temperature(celsius(97.0))).boiling.celsius(), 97.0, 1e-8);
    EXPECT_NEAR(percent(ended(condition::still_strength(by_volume(3.0))).still), 3.0, 1e-8);
    // The vapour is as hot as that at the start, and cooler when the column has settled.
    EXPECT_NEAR(ended(condition::head_temperature(celsius(84.0))).vapour.celsius(), 84.0, 1e-7);
    auto const all_hearts = ended(condition::distillate_strength(by_volume(80.0)));
    EXPECT_GT(in(all_hearts.collected, litre), 2.0);
}

TEST(Holdup, TakeOffRateIsKept) {
    still s = four_plates(60, 10);
    auto const rate = units::volume_flow::from_value(15e-6 / 60);
    s.head = head::total_condenser(reflux::of_take_off(rate)).holding(10.0 * millilitre);
    auto plan = until(condition::collected(1.5 * litre));
    plan.points = 20;
    auto const r = distil(charge(), s, plan, sea_level());
    for (run_point const& p : r.points) EXPECT_NEAR(p.take_off.value() / rate.value(), 1.0, 1e-7);
    EXPECT_NEAR(in(r.fractions[0].end.elapsed - r.fractions[0].begin.elapsed, minute), 100.0,
                0.5);  // no contraction
    EXPECT_GT(r.points.front().reflux_ratio, r.points.back().reflux_ratio * 0.5);
}

// Recorded states are as exact as the run: each against a run that ends there.
TEST(Holdup, RecordedStatesAreThoseOfShorterRuns) {
    still const s = four_plates(60, 10);
    auto plan = until(condition::still_strength(by_volume(1.0)));
    plan.points = 40;
    auto const r = distil(charge(), s, plan, sea_level());
    ASSERT_EQ(r.points.size(), 40u);
    for (std::size_t i = 1; i < r.points.size(); i += 6) {
        run_point const& p = r.points[i];
        auto const end =
            distil(charge(), s, until(condition::collected(p.collected)), sea_level()).fractions.at(0).end;
        EXPECT_NEAR(p.distilled.value() / end.distilled.value(), 1.0, 1e-8) << i;
        EXPECT_NEAR(p.pure_alcohol.value() / end.pure_alcohol.value(), 1.0, 1e-8) << i;
        EXPECT_NEAR(p.distillate.value(), end.distillate.value(), 1e-7) << i;
        EXPECT_NEAR(p.still.value(), end.still.value(), 1e-8) << i;
        EXPECT_NEAR(p.elapsed.value() / end.elapsed.value(), 1.0, 1e-8) << i;
    }
}

TEST(Holdup, ColumnAndHeadDrainIntoThePot) {
    still const s = four_plates(120, 500);
    auto const r = distil(charge(), s, until(condition::collected(1.0 * litre)), sea_level());
    double const in_pot = in(r.fractions[0].end.left, mole);
    double const residue = test::moles(r.residue.liquid());
    detail::held_still<boiling_curve> const engine(charge(), s, sea_level());
    EXPECT_NEAR(residue - in_pot, engine.column().liquid().all(), 1e-6);
    EXPECT_GT(test::x_of(r.residue.liquid()), r.fractions[0].end.still.value());
}

// The regulator's range is 1e-5 in the mole fraction of the vapour: so near is the strength, and without
// holdup the run to that of the steady column.
TEST(Holdup, RefluxKeepsAStrength) {
    auto plan = until(condition::still_strength(by_volume(1.0)));
    plan.cuts = {{condition::strength_lost()}};
    plan.points = 30;
    auto const kept = [](double plate, double condenser) {
        still s = holding(four_plates(0, 0), plate, condenser);
        s.head =
            head::total_condenser(reflux::constant_strength(by_volume(85.0), 20.0)).holding(s.head.holdup());
        return s;
    };
    double const wanted = to<mole_fraction>(by_volume(85.0)).value();
    auto const steady = distil(charge(), kept(0, 0), plan, sea_level());
    auto const r = distil(charge(), kept(0, 1e-5), plan, sea_level());
    for (std::size_t k = 0; k < 2; ++k) {
        EXPECT_NEAR(litres(r.fractions[k].product) / litres(steady.fractions[k].product), 1.0, 2e-5) << k;
        EXPECT_NEAR(test::x_of(r.fractions[k].product), test::x_of(steady.fractions[k].product), 2e-5) << k;
    }
    auto const held = distil(charge(), kept(60, 10), plan, sea_level());
    ASSERT_TRUE(held.strength_lost.has_value());
    double const until_lost = in(held.strength_lost->collected, litre);
    EXPECT_NEAR(in(held.fractions[0].end.collected, litre), until_lost, 1e-9);
    EXPECT_NEAR(held.strength_lost->reflux_ratio, 20.0, 1e-6);
    EXPECT_LT(until_lost, in(steady.strength_lost->collected, litre));
    double last = 0.0;
    for (run_point const& p : held.points) {
        double const at = in(p.collected, litre);
        if (at < 0.2) continue;  // until the column and the condenser have settled
        if (at > until_lost) {
            EXPECT_LT(p.distillate.value(), wanted);
            EXPECT_NEAR(p.reflux_ratio, 20.0, 1e-6);
        } else {
            EXPECT_NEAR(p.distillate.value(), wanted, 1.1e-5);
            EXPECT_GT(p.reflux_ratio, last);
            last = p.reflux_ratio;
        }
    }
    EXPECT_NEAR(held.balance.ethanol, 0.0, 1e-11);
    EXPECT_NEAR(held.balance.energy, 0.0, 1e-9);
}

// A share of the neck that follows from heat answers to the regulator, and the regulator to it.
TEST(Holdup, RefluxKeepsAStrengthUnderANeckThatLosesHeat) {
    auto plan = until(condition::strength_lost());
    plan.points = 20;
    plan.start = 10.0 * minute;
    still s = four_plates(50, 10);
    s.neck = neck::losing(1.0 * watt_per_kelvin);
    s.head =
        head::total_condenser(reflux::constant_strength(by_volume(85.0), 20.0)).holding(10.0 * millilitre);
    auto const r = distil(charge(), s, plan, sea_level());
    EXPECT_NEAR(r.balance.ethanol, 0.0, 1e-11);
    EXPECT_NEAR(r.balance.energy, 0.0, 1e-9);
    EXPECT_GT(percent(r.points.front().distillate), 88.0);  // all is taken until it is weaker
    EXPECT_NEAR(r.points.front().reflux_ratio, 0.0, 0.01);
    double const wanted = to<mole_fraction>(by_volume(85.0)).value();
    for (run_point const& p : r.points) {
        if (in(p.collected, litre) > 0.5) {
            EXPECT_NEAR(p.distillate.value(), wanted, 1.1e-5);
        }
        if (in(p.collected, litre) > 0.01) {  // the lag is over
            EXPECT_NEAR(p.neck.value() / (p.vapour - celsius(20)).value(), 1.0, 1e-3);
        }
    }
    EXPECT_NEAR(r.fractions.at(0).end.reflux_ratio, 20.0, 1e-4);
}

TEST(Holdup, StepsOfThePlanChangeRefluxAndPower) {
    still const s = four_plates(60, 10);
    auto plan = hearts();
    plan.steps = {{condition::collected(1.0 * litre), reflux::constant(6.0), 1.0 * kilowatt}};
    auto const r = distil(charge(), s, plan, sea_level());
    auto const without = distil(charge(), s, hearts(), sea_level());
    ASSERT_EQ(r.steps.size(), 1u);
    EXPECT_NEAR(in(r.steps[0].collected, litre), 1.0, 1e-9);
    EXPECT_NEAR(r.steps[0].reflux_ratio, 6.0, 1e-9);
    EXPECT_NEAR(r.fractions[1].end.reflux_ratio, 6.0, 1e-9);
    EXPECT_GT(litres(r.fractions[1].product), litres(without.fractions[1].product) + 0.02);
    EXPECT_GT(r.boiling_time, without.boiling_time);
}

TEST(Holdup, ProgressIsToldAndCanStopARun) {
    auto plan = hearts(30.0 * minute);
    plan.points = 10;
    int at_rest = 0, distilling = 0;
    double last = 0.0;
    auto const r = distil(charge(), four_plates(60, 10), plan, sea_level(), [&](run_progress const& p) {
        ++(p.distilled > 0.0 ? distilling : at_rest);
        EXPECT_GE(p.distilled, last);
        last = p.distilled;
    });
    EXPECT_GT(at_rest, 50);
    EXPECT_GT(distilling, 200);
    EXPECT_LT(last, 1.0);
    struct stopped {};
    EXPECT_THROW(static_cast<void>(distil(charge(), four_plates(60, 10), plan, sea_level(),
                                          [](run_progress const&) { throw stopped(); })),
                 stopped);
}

TEST(Holdup, Refuses) {
    auto const run = [](still const& s, run_plan const& plan) {
        return [s, plan] { return distil(charge(), s, plan, sea_level()); };
    };
    still s = four_plates(60, 10);
    s.flow = flow_model::enthalpy_balance;
    EXPECT_NE(std::string(expect_refusal(run(s, hearts()), "holdup").what()).find("constant molar overflow"),
              std::string::npos);
    // all that is held, against what half of the charge's ethanol fills
    auto const much = expect_refusal(run(four_plates(1000, 500), hearts()), "holdup");
    EXPECT_NEAR(much.value(), 4.5, 1e-9);
    EXPECT_GT(much.upper(), 2.0);
    EXPECT_LT(much.upper(), 4.5);
    auto const nearly = four_plates(0, 1000.0 * much.upper() * (1.0 - 1e-9));
    EXPECT_NO_THROW(static_cast<void>(run(nearly, until(condition::collected(1.0 * litre)))()));

    s = four_plates(60, 10);
    s.head = head::total_condenser(reflux::of_take_off(units::volume_flow::from_value(200e-6 / 60)))
                 .holding(10.0 * millilitre);
    expect_refusal(run(s, hearts()), "take-off rate");
    s = four_plates(60, 10);
    s.head = head::partial_condenser(0.5).holding(10.0 * millilitre);
    expect_refusal(run(s, hearts(10.0 * minute)), "time at total reflux");

    // never met: stronger than the column makes it
    auto plan = hearts();
    plan.cuts[1].end = condition::distillate_strength(by_volume(95.0));
    expect_refusal(run(four_plates(60, 10), plan), "strength of the distillate");
    expect_refusal(run(four_plates(60, 10), until(condition::still_strength(by_volume(50.0)))),
                   "strength in the still");
}

}  // namespace
}  // namespace aqueth
