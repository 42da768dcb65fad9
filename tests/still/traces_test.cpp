// SPDX-License-Identifier: BSL-1.0
// Traces beside a run. No measured batch was found, so the checks are closed forms, balances and limits.
#include <aqueth/still/traces.hpp>

#include "expect_refusal.hpp"

#include <aqueth/traces.hpp>

#include <boost/math/quadrature/gauss_kronrod.hpp>

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <cstddef>
#include <limits>
#include <vector>

namespace aqueth {
namespace {

/// The pot of the Quillbeck teaching stillhouse.
still pot_still() { return {{1.5 * kilowatt}}; }
still plate_still() {
    still s = pot_still();
    s.tower = column::of_plates(4, 0.6);
    s.head = head::total_condenser(reflux::constant(3.0));
    return s;
}
wash charge_of(double percent = 11.0) {
    return wash::of(parcel::of(25.0 * litre, by_volume(percent), celsius(20)));
}
run_plan plan_to(double percent, int points = 0) {
    run_plan plan;
    plan.cuts = {{condition::collected(0.1 * litre), false},
                 {condition::distillate_strength(by_volume(45.0))}};
    plan.ends = {condition::still_strength(by_volume(percent))};
    plan.points = points;
    return plan;
}
std::vector<trace_amount> all_of(wash const& charge) {
    std::vector<trace_amount> result;
    for (trace const each : all_traces)
        result.push_back(trace_amount::of_alcohol(each, charge, 0.5 * kilogram_per_cubic_metre));
    return result;
}
boiling_curve const& curve() {
    static boiling_curve const c(standard_atmosphere);
    return c;
}

/// The stills that the checks go through.
std::vector<still> stills() {
    std::vector<still> all{pot_still(), plate_still()};
    still s = pot_still();
    s.neck = neck::condensing(0.15);
    all.push_back(s);
    s = plate_still();
    s.neck = neck::condensing(0.05);
    all.push_back(s);
    s.tower = column::of_stages(5.5);
    all.push_back(s);
    s.flow = flow_model::enthalpy_balance;
    all.push_back(s);
    s = plate_still();
    s.neck = neck::losing(3.0 * watt_per_kelvin);
    s.head = head::partial_condenser(0.7);
    all.push_back(s);
    s = plate_still();
    s.head = head::total_condenser(reflux::constant(3.0)).reflux_at(celsius(30));
    all.push_back(s);
    s = plate_still();
    s.head = head::total_condenser(reflux::constant_strength(by_volume(85.0), 4.0));
    all.push_back(s);
    return all;
}

// Rayleigh (1902): with a constant ratio of the distillate to the pot the rest falls as a power of what is
// left.
TEST(TraceHistory, RayleighsClosedForm) {
    struct steady {
        void settle(detail::column_moment_of_run const&) {}
        std::array<double, detail::trace_cases> enrichment(trace) const { return {3.0, 2.5, 3.6}; }
    } column;
    detail::trace_history history({trace::methanol}, 2.0);
    double depth = 0.0;
    for (double const length : {0.1, 0.3, 0.01, 0.5}) {
        history.add(depth, length, depth > 0.0, column,
                    [](double) { return detail::column_moment_of_run{}; });
        depth += length;
    }
    for (double const u : {0.0, 0.05, 0.1, 0.33, 0.91}) {
        double const distilled = -2.0 * std::expm1(-u);
        auto const left = history.at_distilled(distilled).left(0);
        auto const over = history.at_distilled(distilled).over(0);
        double const in_pot = 2.0 * std::exp(-u);
        EXPECT_NEAR(left[0], std::exp(-3.0 * u), 1e-14);
        EXPECT_NEAR(left[1], std::exp(-2.5 * u), 1e-14);
        EXPECT_NEAR(left[2], std::exp(-3.6 * u), 1e-14);
        EXPECT_NEAR(over[0], 3.0 * left[0] / in_pot, 1e-12);
        EXPECT_NEAR(over[1], 2.5 * left[1] / in_pot, 0.02 * left[1]);
    }
}

// A pot: ln(m/m0) is the integral of K dx/(y - x), here by Boost.Math, with volatilities that are asked one
// by one.
TEST(TraceRun, APotFollowsRayleighsIntegral) {
    auto const charge = charge_of();
    auto const r = distil_with_traces(charge, all_of(charge), pot_still(), plan_to(1.0), curve());
    double const from = r.run.fractions.front().begin.still.value();
    for (trace_course const& t : r.traces) {
        for (run_fraction const& f : r.run.fractions) {
            auto const slope = [&](double x) {
                auto const v = volatility_of(t.charged.which, mole_fraction(x));
                return v.volatility / (curve().vapour(x) - x);
            };
            using integrator = boost::math::quadrature::gauss_kronrod<double, 31>;
            double const ln = integrator::integrate(slope, f.end.still.value(), from, 10, 1e-10);
            double gone = 0.0;
            for (std::size_t k = 0; k < t.fractions.size(); ++k) {
                gone += in(t.fractions[k].expected, t.charged.mass);
                if (&r.run.fractions[k] == &f) break;
            }
            EXPECT_NEAR(1.0 - gone, std::exp(-ln), 1e-5) << name_of(t.charged.which);
        }
    }
}

TEST(TraceRun, MassIsConserved) {
    auto const charge = charge_of();
    for (still const& s : stills()) {
        auto const r = distil_with_traces(charge, all_of(charge), s, plan_to(1.0), curve());
        ASSERT_EQ(r.traces.size(), all_traces.size());
        for (trace_course const& t : r.traces) {
            ASSERT_EQ(t.fractions.size(), r.run.fractions.size());
            units::mass sum = t.residue.expected;
            for (auto const& f : t.fractions) sum += f.expected;
            EXPECT_NEAR(in(sum, t.charged.mass), 1.0, 1e-9);
        }
    }
}

TEST(TraceRun, IsLinearAndEachTraceIsOnItsOwn) {
    auto const charge = charge_of();
    auto const amounts = all_of(charge);
    auto const together = distil_with_traces(charge, amounts, plate_still(), plan_to(1.0), curve());
    for (std::size_t i = 0; i < amounts.size(); ++i) {
        auto const alone = distil_with_traces(charge, {{amounts[i].which, 3.0 * amounts[i].mass}},
                                              plate_still(), plan_to(1.0), curve());
        for (std::size_t k = 0; k < alone.traces[0].fractions.size(); ++k) {
            double const one = together.traces[i].fractions[k].expected.value();
            EXPECT_NEAR(alone.traces[0].fractions[k].expected.value(), 3.0 * one,
                        1e-12 * amounts[i].mass.value());
        }
    }
}

TEST(TraceRun, LeavesTheRunAsItIs) {
    auto const charge = charge_of();
    auto const plain = distil(charge, plate_still(), plan_to(1.0, 20), curve());
    auto const traced = distil_with_traces(charge, all_of(charge), plate_still(), plan_to(1.0, 20), curve());
    ASSERT_EQ(traced.run.points.size(), plain.points.size());
    for (std::size_t k = 0; k < plain.points.size(); ++k)
        EXPECT_NEAR(traced.run.points[k].distillate.value(), plain.points[k].distillate.value(), 1e-12);
    EXPECT_NEAR(traced.run.boiling_time.value(), plain.boiling_time.value(), 1e-6);
    EXPECT_TRUE(distil_with_traces(charge, {}, plate_still(), plan_to(1.0), curve()).traces.empty());
}

// Ethanol and water themselves, treated as traces with their own volatility, come out as the run has them.
TEST(TraceColumn, FindsEthanolAndWater) {
    auto const charge = charge_of();
    for (still const& s : stills()) {
        detail::batch_still<boiling_curve> const batch(charge, s, curve());
        detail::trace_column<boiling_curve> column(curve(), s.tower, s.flow, 101325.0);
        for (double const x : {0.03, 1e-2, 1e-3, 1e-5}) {
            auto const top = batch.top(x, batch.moles());
            double const d = top.d;
            column.settle({x, d, top.phi, top.above.shares.neck, top.above.shares.head});
            double const ethanol =
                column.enrichment_by([](double l) { return l > 0.0 ? curve().vapour(l) / l : 13.0; });
            double const water =
                column.enrichment_by([](double l) { return (1.0 - curve().vapour(l)) / (1.0 - l); });
            EXPECT_NEAR(ethanol * x / d, 1.0, 1e-7) << x;
            EXPECT_NEAR(water * (1.0 - x) / (1.0 - d), 1.0, 1e-7) << x;
        }
    }
}

// At total reflux a trace is enriched stage by stage by its volatility there: the form of Fenske (1932).
TEST(TraceColumn, FenskeAtTotalReflux) {
    still s = plate_still();
    s.tower = column::of_stages(5.0);
    detail::column_solver<boiling_curve> const solver(curve(), s.tower, s.neck, s.flow);
    detail::trace_column<boiling_curve> column(curve(), s.tower, s.flow, 101325.0);
    double const x = 0.02;
    column.settle({x, solver.distillate(x, 1.0), 1.0, 0.0, 0.0});
    for (trace const which : all_traces) {
        double product = 1.0;
        double liquid = x;
        for (int n = 0; n < 6; ++n) {
            product *= volatility_of(which, mole_fraction(liquid)).volatility;
            liquid = curve().vapour(liquid);
        }
        EXPECT_NEAR(column.enrichment(which)[0] / product, 1.0, 1e-6) << name_of(which);
    }
}

// Nearly water: every stage has the volatility of hot water, and the balance of stages with a constant
// volatility K and flow ratio phi is a geometric series (Kremser's equation).
TEST(TraceColumn, KremsersEquationInWater) {
    still s = plate_still();
    s.tower = column::of_stages(3.0);
    detail::trace_column<boiling_curve> column(curve(), s.tower, s.flow, 101325.0);
    double const phi = 0.75;
    column.settle({0.0, 0.0, phi, 0.0, 0.0});
    for (trace const which : all_traces) {
        double const k = volatility_of(which, mole_fraction(0.0)).volatility;
        double const gain = k / phi;
        double const n = 3.0;
        // t'N = gain^N K t0 - (1 - phi) td (gain + ... + gain^N), and t'N = td
        double const series = gain * (std::pow(gain, n) - 1.0) / (gain - 1.0);
        double const expected = std::pow(gain, n) * k / (1.0 + (1.0 - phi) * series);
        EXPECT_NEAR(column.enrichment(which)[0] / expected, 1.0, 1e-6) << name_of(which);
    }
}

// A pot without column, and a column without reflux, leave the vapour of the pot; a neck works once more.
TEST(TraceColumn, PotAndNeck) {
    double const x = 0.05;
    double const y = curve().vapour(x);
    for (column const& c : {column::none(), column::of_plates(4, 0.6)}) {
        detail::trace_column<boiling_curve> column(curve(), c, flow_model::constant_molar_overflow, 101325.0);
        column.settle({x, y, 0.0, 0.0, 0.0});
        for (trace const which : all_traces) {
            double const k = volatility_of(which, mole_fraction(x)).volatility;
            EXPECT_NEAR(column.enrichment(which)[0] / k, 1.0, 1e-6);
            double const band = volatility_of(which, mole_fraction(x)).band;
            EXPECT_NEAR(column.enrichment(which)[1] * (1.0 + band) / k, 1.0, 1e-6);
            EXPECT_NEAR(column.enrichment(which)[2] / (1.0 + band) / k, 1.0, 1e-6);
        }
    }
    detail::column_solver<boiling_curve> const solver(curve(), column::none(), neck::condensing(0.2),
                                                      flow_model::constant_molar_overflow);
    double const d = solver.distillate(x, 0.2);
    double const l = solver.liquid(d);
    for (bool const in_neck : {true, false}) {  // a partial condenser does the same
        detail::trace_column<boiling_curve> column(curve(), column::none(),
                                                   flow_model::constant_molar_overflow, 101325.0);
        column.settle({x, d, 0.2, in_neck ? 0.2 : 0.0, in_neck ? 0.0 : 0.2});
        for (trace const which : all_traces) {
            double const k = volatility_of(which, mole_fraction(x)).volatility;
            double const above = volatility_of(which, mole_fraction(l)).volatility;
            EXPECT_NEAR(column.enrichment(which)[0], k * above / (0.2 + 0.8 * above), 1e-6 * k);
        }
    }
}

/// what came over by the recorded points, with the trapezoidal rule
units::mass sum_of_points(distillation const& run, trace_course const& t) {
    double sum = 0.0;
    for (std::size_t k = 1; k < t.points.size(); ++k) {
        auto const& a = run.points[k - 1];
        auto const& b = run.points[k];
        auto const volume = [](run_point const& p) {
            return detail::mass_of_moles(1.0, p.distillate.value()).volume();
        };
        sum += 0.5 * in(b.distilled - a.distilled, mole) *
               (t.points[k - 1].in_distillate.expected.value() * volume(a) +
                t.points[k].in_distillate.expected.value() * volume(b));
    }
    return sum * kilogram;
}

/// The plate still with liquid in it.
std::vector<still> stills_with_holdup(double millilitres) {
    std::vector<still> all;
    still s = plate_still();
    s.tower = s.tower.holding(millilitres * millilitre);
    s.head = s.head.holding(0.3 * millilitres * millilitre);
    all.push_back(s);
    s.neck = neck::condensing(0.1);
    s.head = s.head.reflux_at(celsius(30));
    all.push_back(s);
    s.head = head::partial_condenser(0.6);
    all.push_back(s);
    return all;
}

// Ethanol itself, treated as a trace with its own volatility, comes out as the run with holdup has it.
TEST(HeldTrace, FindsEthanol) {
    auto const charge = charge_of();
    auto const plan = plan_to(1.0);
    for (still const& s : stills_with_holdup(60.0)) {
        detail::held_still<boiling_curve> const batch(charge, s, curve());
        detail::batch_history<detail::held_still<boiling_curve>> const history(batch, plan, [](double) {});
        std::vector<detail::held_trace> ethanol;
        double const all = batch.moles() * batch.x();
        auto const volatility = [](double l) { return curve().vapour(l) / l; };
        auto const three = [](double v) { return detail::trace_figures{v, v, v}; };
        history.for_each_step([&](double, double length, auto const& still, auto const& part) {
            auto const& liquid = still.column().liquid();
            if (ethanol.empty()) {
                auto const p = part(0.0);
                std::vector<detail::trace_figures> begin{three(p.y[detail::held::ethanol] / all)};
                for (std::size_t i = 0; i <= liquid.plate.size(); ++i)
                    begin.push_back(three(p.y[detail::held::plates + i] / all));
                ethanol.emplace_back(liquid, begin);
            }
            std::array<detail::held_trace_rates, 2> rates;
            std::array<detail::head_flows, 2> flows;
            for (std::size_t k = 0; k < 2; ++k) {
                auto const p = part(detail::held_trace_stages[k]);
                auto const& m = still.moment(p);
                flows[k] = m.flows;
                double const v1 = m.flows.neck > 0.0 ? volatility(m.neck_liquid) : 1.0;
                double const v2 = m.flows.partial > 0.0 ? volatility(m.back) : 1.0;
                double const first = 1.0 / (m.flows.neck + (1.0 - m.flows.neck) * v1);
                double const second = v1 * first / (m.flows.partial + (1.0 - m.flows.partial) * v2);
                rates[k].pot = three(volatility(p.x()) / p.left);
                rates[k].top = three(v2 * second);
                rates[k].back = three(m.flows.enters * (m.flows.neck * first +
                                                        (1.0 - m.flows.neck) * m.flows.partial * second) +
                                      1.0 - m.flows.enters);
                for (std::size_t i = 0; i < liquid.plate.size(); ++i)
                    rates[k].plate.push_back(
                        three(liquid.efficiency[i] * volatility(p.y[detail::held::plates + i])));
            }
            detail::trace_figures unused{};
            ethanol[0].step(length, rates, flows, unused);
        });
        EXPECT_NEAR(ethanol[0].collected()[0], history.ends().back().ethanol() / all, 2e-5);
        EXPECT_NEAR(ethanol[0].in_condenser()[0] * all, history.ends().back().distillate(), 2e-5);
    }
}

TEST(TraceRun, HoldupThatVanishesChangesNothing) {
    auto const charge = charge_of();
    auto const dry = stills_with_holdup(0.0);
    auto const wet = stills_with_holdup(0.01);
    for (std::size_t k = 0; k < dry.size(); ++k) {
        auto const a = distil_with_traces(charge, all_of(charge), dry[k], plan_to(1.0, 20), curve());
        auto const b = distil_with_traces(charge, all_of(charge), wet[k], plan_to(1.0, 20), curve());
        for (std::size_t i = 0; i < a.traces.size(); ++i) {
            for (std::size_t f = 0; f < a.run.fractions.size(); ++f) {
                EXPECT_NEAR(in(b.traces[i].fractions[f].expected, b.traces[i].charged.mass),
                            in(a.traces[i].fractions[f].expected, a.traces[i].charged.mass), 2e-3)
                    << name_of(a.traces[i].charged.which);
            }
            for (std::size_t p = 1; p < 20; ++p) {
                double const scale = a.traces[i].points.front().in_distillate.expected.value();
                EXPECT_NEAR(b.traces[i].points[p].in_distillate.expected.value(),
                            a.traces[i].points[p].in_distillate.expected.value(), 0.01 * scale + 0.01);
            }
        }
    }
}

TEST(TraceRun, MassIsConservedWithHoldup) {
    auto const charge = charge_of();
    for (still const& s : stills_with_holdup(120.0)) {
        auto plan = plan_to(1.0);
        plan.start = s.head.what() == head::kind::total_condenser ? 20.0 * minute : 0.0 * minute;
        auto const r = distil_with_traces(charge, all_of(charge), s, plan, curve());
        for (trace_course const& t : r.traces) {
            units::mass sum = t.residue.expected;
            for (auto const& f : t.fractions) sum += f.expected;
            EXPECT_NEAR(in(sum, t.charged.mass), 1.0, 1e-9);
            EXPECT_LT(in(t.residue.expected, t.charged.mass), 1.0);
            EXPECT_GT(in(t.residue.expected, t.charged.mass), -1e-9);
        }
        // plates that hold liquid mix what comes over: less of the ester in the first fraction than without
        // start, but half an hour at total reflux gathers it at the top
        auto const ester = static_cast<std::size_t>(trace::ethyl_acetate);
        EXPECT_GT(in(r.traces[ester].fractions[0].expected, r.traces[ester].charged.mass), 0.3);
    }
}

// A step of the plan changes the reflux: what comes over changes at once, and nothing is lost.
TEST(TraceRun, StepsOfThePlan) {
    auto const charge = charge_of();
    run_plan plan;
    plan.ends = {condition::still_strength(by_volume(1.0))};
    plan.points = 4001;
    plan_step more{condition::collected(1.0 * litre)};
    more.returned = reflux::constant(8.0);
    plan.steps = {more};
    auto const r = distil_with_traces(charge, all_of(charge), plate_still(), plan, curve());
    ASSERT_EQ(r.run.steps.size(), 1U);
    for (trace_course const& t : r.traces)
        EXPECT_NEAR(in(sum_of_points(r.run, t) + t.residue.expected, t.charged.mass), 1.0, 1e-3)
            << name_of(t.charged.which);
}

TEST(TraceRun, PointsAgreeWithFractions) {
    auto const charge = charge_of();
    run_plan plan;
    plan.ends = {condition::still_strength(by_volume(1.0))};
    plan.points = 2001;
    for (still const& s : stills()) {
        auto const r = distil_with_traces(charge, all_of(charge), s, plan, curve());
        for (trace_course const& t : r.traces) {
            ASSERT_EQ(t.points.size(), r.run.points.size());
            units::mass const sum = sum_of_points(r.run, t);
            EXPECT_NEAR(in(sum + t.residue.expected, t.charged.mass), 1.0, 1e-4) << name_of(t.charged.which);
        }
    }
}

TEST(TraceRun, BandsHoldTheFigure) {
    auto const charge = charge_of();
    for (still const& s : stills()) {
        auto const r = distil_with_traces(charge, all_of(charge), s, plan_to(1.0, 50), curve());
        for (trace_course const& t : r.traces) {
            for (auto const& f : t.fractions) {
                EXPECT_LE(f.lower, f.expected);
                EXPECT_GE(f.upper, f.expected);
                EXPECT_GE(f.lower.value(), 0.0);
                EXPECT_LE(f.upper, t.charged.mass);
            }
            EXPECT_LE(t.residue.lower, t.residue.expected);
            EXPECT_GE(t.residue.upper, t.residue.expected);
            for (trace_point const& p : t.points) EXPECT_LE(p.in_distillate.lower, p.in_distillate.upper);
        }
        // a wide band gives wide figures: 1-hexanol against 1-butanol
        auto const width = [&](std::size_t i) {
            auto const& f = r.traces[i].fractions.front();
            return f.upper / f.lower;
        };
        EXPECT_GT(width(static_cast<std::size_t>(trace::hexanol_1)),
                  width(static_cast<std::size_t>(trace::butanol_1)));
    }
}

// Methanol cannot be cut away: in a pot still every fraction of spirit holds much the same for each litre
// of alcohol.
TEST(TraceRun, MethanolIsInEveryFraction) {
    auto const charge = charge_of();
    auto const charged = trace_amount::of_alcohol(trace::methanol, charge, 0.5 * kilogram_per_cubic_metre);
    auto const r = distil_with_traces(charge, {charged}, pot_still(), plan_to(1.0), curve());
    for (std::size_t k = 0; k < r.run.fractions.size(); ++k) {
        auto const held = per_pure_alcohol(r.traces[0].fractions[k], r.run.fractions[k].product);
        EXPECT_GT(held.upper.value(), 0.3);
        EXPECT_NEAR(held.expected.value(), 0.4, 0.12);
    }
    // ethyl acetate is different: most of it is in the first fifth of the alcohol
    auto const ester = distil_with_traces(
        charge, {trace_amount::of_alcohol(trace::ethyl_acetate, charge, 0.5 * kilogram_per_cubic_metre)},
        pot_still(), plan_to(1.0), curve());
    auto const first = per_pure_alcohol(ester.traces[0].fractions[0], ester.run.fractions[0].product);
    EXPECT_GT(first.lower.value(), 4.0);
}

TEST(TraceRun, UnitsOfAmounts) {
    auto const charge = charge_of();
    auto const a =
        trace_amount::of_alcohol(trace::methanol, charge, 0.5 * kilogram_per_cubic_metre);  // 50 g/hL
    EXPECT_NEAR(in(a.mass, gram), 0.5 * 2.75, 1e-6);  // 25 L of 11 % vol hold 2.75 L
    EXPECT_NEAR(per_pure_alcohol(a.mass, charge.liquid()).value(), 0.5, 1e-9);
    test::expect_refusal(
        [&] { return per_pure_alcohol(1.0 * gram, parcel::of(1.0 * litre, by_volume(0.0), celsius(20))); },
        "amount of ethanol");
}

TEST(TraceRun, Refuses) {
    auto const charge = charge_of();
    auto const with = [&](units::mass m) {
        return distil_with_traces(charge, {{trace::methanol, m}}, pot_still(), plan_to(1.0), curve());
    };
    test::expect_refusal([&] { return with(-1.0 * gram); }, "mass");
    test::expect_refusal([&] { return with(std::numeric_limits<double>::quiet_NaN() * gram); }, "mass");
    for (int const which : {-1, 11}) {
        test::expect_refusal(
            [&] {
                return distil_with_traces(charge, {{static_cast<trace>(which), 1.0 * gram}}, pot_still(),
                                          plan_to(1.0), curve());
            },
            "index");
    }
    test::expect_refusal(
        [&] {
            return distil_with_traces(charge, std::vector<trace_amount>(1001, {trace::methanol, 1.0 * gram}),
                                      pot_still(), plan_to(1.0), curve());
        },
        "index");
    for (double const kpa : {70.0, 120.0}) {
        auto const error = test::expect_refusal(
            [&] {
                return distil_with_traces(charge, all_of(charge), pot_still(), plan_to(1.0),
                                          boiling_curve(kpa * kilopascal));
            },
            "pressure");
        EXPECT_EQ(error.lower(), 80.0);
    }
    EXPECT_NO_THROW(static_cast<void>(distil_with_traces(charge, all_of(charge), pot_still(), plan_to(1.0),
                                                         boiling_curve(80.0 * kilopascal))));
}

}  // namespace
}  // namespace aqueth
