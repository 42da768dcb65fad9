// SPDX-License-Identifier: BSL-1.0
// The neck of a still, a partial condenser: against closed forms, stepping by hand and Rayleigh's equation.
#include <aqueth/boiling_curve.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/column_limits.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/still/learning.hpp>
#include <aqueth/still/run.hpp>

#include "runs.hpp"
#include "test_mixtures.hpp"

#include <gtest/gtest.h>

#include <array>
#include <cmath>
#include <initializer_list>
#include <limits>
#include <span>

namespace aqueth {
namespace {

using test::ideal_mixture;
using test::pot_still;
using test::quillbeck;
using test::quillbeck_charge;
using test::sea_level;
using test::until;

constexpr auto both_flows = {flow_model::constant_molar_overflow, flow_model::enthalpy_balance};

template <class M>
double over_bare_pot(M const& m, double x, double share, flow_model flow) {
    return distillate_strength(m, column::none(), by_moles(100.0 * x), 0.0, flow, neck::condensing(share))
        .value();
}

// Constant volatility a: ethanol that enters, y, is share c of liquid x and share 1 - c of vapour a x/(1 + (a
// - 1) x), which is a quadratic equation in x.
TEST(Neck, ClosedFormForConstantVolatility) {
    for (double const a : {1.5, 2.5, 9.0}) {
        ideal_mixture const m{a};
        for (double const pot : {1e-6, 0.01, 0.2, 0.7, 0.99}) {
            for (double const c : {0.05, 0.3, 0.9}) {
                double const y = m.vapour(pot);
                double const p = c * (a - 1.0), q = c + (1.0 - c) * a - (a - 1.0) * y;
                double const x = 2.0 * y / (q + std::sqrt(q * q + 4.0 * p * y));
                for (auto const flow : both_flows)
                    EXPECT_NEAR(over_bare_pot(m, pot, c, flow) / m.vapour(x), 1.0, 1e-9) << a << ' ' << pot;
            }
        }
    }
}

// Nothing condenses: a bare pot. Everything but a trace condenses: that trace is in equilibrium with a liquid
// of the composition of the vapour, a second distillation; what is missing is of the order of the trace.
TEST(Neck, LiesBetweenABarePotAndASecondDistillation) {
    auto const& m = sea_level();
    for (double const x : {0.001, 0.01, 0.036, 0.2, 0.6}) {
        double const once = m.vapour(x), twice = m.vapour(once);
        for (auto const flow : both_flows) {
            EXPECT_EQ(over_bare_pot(m, x, 0.0, flow), once);
            double before = once;
            for (double const share : {0.05, 0.1, 0.2, 0.4, 0.8, 0.9}) {
                EXPECT_GT(over_bare_pot(m, x, share, flow), before);
                before = over_bare_pot(m, x, share, flow);
            }
            EXPECT_LT(before, twice);
            EXPECT_LT(twice - before, 0.8 * (twice - over_bare_pot(m, x, 0.8, flow)));
        }
    }
}

/// yield of a run above 50 % vol after the first 100 mL, down to 10 % vol, from 25 L of 11 % vol
struct hearts {
    double litres, percent;
};

hearts by_the_library(double share) {
    still s{{1.5 * kilowatt, units::heat_capacity(), 3.0 * watt_per_kelvin}};
    s.neck = neck::condensing(share);
    run_plan plan = until(condition::distillate_strength(by_volume(10)));
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(50))}};
    auto const charge = wash::of(parcel::of(25.0 * litre, by_volume(11), celsius(20)));
    parcel const product = distil(charge, s, plan, sea_level()).fractions.at(1).product;
    return {in(product.volume(celsius(20)), litre), product.strength().percent()};
}

/// the same by Rayleigh's equation in small steps of the moles left (the midpoint method), the neck by
/// bisection; of the library it uses the equilibrium and densities
hearts by_small_steps(double share) {
    auto const distillate = [share](double pot) {
        double const y = sea_level().vapour(pot);
        double low = 0.0, high = 1.0;
        for (int i = 0; i < 60; ++i) {
            double const x = 0.5 * (low + high);
            (share * x + (1.0 - share) * sea_level().vapour(x) < y ? low : high) = x;
        }
        return sea_level().vapour(low);
    };
    auto const liquid = [](double moles, double ethanol) {
        double const grams = 46.068 * ethanol + 18.015 * (moles - ethanol);
        return parcel::of(grams * gram, mass_fraction(46.068 * ethanol / grams), celsius(20));
    };
    auto const charge = parcel::of(25.0 * litre, by_volume(11), celsius(20));
    double const ethanol = in(charge.ethanol(), gram) / 46.068, water = in(charge.water(), gram) / 18.015;
    double left = ethanol + water, x = ethanol / left;
    double const cut = to<mole_fraction>(by_volume(50)).value();
    double const step = 4e-5 * left;
    double moles = 0.0, alcohol = 0.0, first_moles = 0.0, first_alcohol = 0.0;
    while (distillate(x) > cut) {
        double const middle = x + 0.5 * step * (x - distillate(x)) / left;
        double const d = distillate(middle);
        x += step * (middle - d) / (left - 0.5 * step);
        left -= step;
        moles += step;
        alcohol += step * d;
        double const all = in(liquid(moles, alcohol).volume(), litre);
        if (all <= 0.1) {
            first_moles = moles;
            first_alcohol = alcohol;
        } else if (first_moles + step > moles - 0.5 * step) {  // the step in which 100 mL are full
            double const over =
                step * (all - 0.1) / (all - in(liquid(moles - step, alcohol - step * d).volume(), litre));
            first_moles = moles - over;
            first_alcohol = alcohol - over * d;
        }
    }
    parcel const product = liquid(moles - first_moles, alcohol - first_alcohol);
    return {in(product.volume(), litre), product.strength().percent()};
}

TEST(Neck, HeartsOfAPotAgainstRayleighInSmallSteps) {
    double before = 0.0;
    for (double const share : {0.0, 0.05, 0.1, 0.2, 0.5}) {
        hearts const run = by_the_library(share), steps = by_small_steps(share);
        EXPECT_NEAR(run.litres, steps.litres, 0.002) << share;  // one step is about 1.5 mL
        EXPECT_NEAR(run.percent, steps.percent, 0.01) << share;
        EXPECT_GT(run.litres, before + 0.15);
        before = run.litres;
    }
    EXPECT_NEAR(by_the_library(0.0).litres, 1.6456, 1e-4);  // as before there was a neck
    EXPECT_NEAR(by_the_library(0.0).percent, 54.12, 0.005);
}

// Flows from the top down, for one mole of vapour that enters the neck, with plain bisection: what the neck
// condenses and what the condenser returns meet on the top stage.
TEST(Neck, OnAColumnAgreesWithSteppingFromTheTopDown) {
    auto const& m = sea_level();
    for (double const ratio : {0.0, 1.0, 5.0}) {
        for (double const c : {0.05, 0.3}) {
            for (int const stages : {1, 4}) {
                for (double const x : {0.002, 0.03, 0.2}) {
                    double const product = (1.0 - c) / (1.0 + ratio);
                    auto const bottom = [&](double d) {
                        double const in_neck = m.liquid(d);
                        double const rises = c * in_neck + (1.0 - c) * d;  // into the neck
                        double down = c + ratio * product;                 // moles
                        double composition = (c * in_neck + ratio * product * d) / down;
                        double vapour = rises;
                        for (int k = 0; k < stages; ++k) {
                            double const on_stage = m.liquid(vapour);
                            // moles of ethanol around the stage: in from below and above, out likewise
                            vapour = vapour + down * on_stage - down * composition;
                            composition = on_stage;
                        }
                        return m.liquid(vapour);
                    };
                    double low = x, high = m.vapour(m.vapour(x)), top = 0.894;
                    high = (std::max)(high, top);
                    for (int i = 0; i < 60; ++i) {
                        double const middle = 0.5 * (low + high);
                        (bottom(middle) < x ? low : high) = middle;
                    }
                    EXPECT_NEAR(distillate_strength(m, column::of_stages(stages), by_moles(100.0 * x), ratio,
                                                    flow_model::constant_molar_overflow, neck::condensing(c))
                                    .value(),
                                low, 1e-8)
                        << ratio << ' ' << c << ' ' << stages << ' ' << x;
                }
            }
        }
    }
}

// The same with heat: neck and condenser take out what their flows give up, and moles, ethanol and heat
// balance around every stage and all above it.
TEST(Neck, OnAColumnAgreesWithHeatBalancesFromTheTopDown) {
    auto const& m = sea_level();
    auto const h = [&](double x) { return m.liquid_enthalpy(x).value; };
    for (int const stages : {0, 1, 4}) {
        for (double const c : {0.05, 0.4}) {
            for (double const ratio : {0.0, 3.0}) {
                for (double const d : {0.6, 0.75, 0.84}) {
                    double const product = (1.0 - c) / (1.0 + ratio);
                    double const in_neck = m.liquid(d);
                    double vapour = c * in_neck + (1.0 - c) * d;
                    double const by_neck =
                        m.vapour_enthalpy(vapour) - c * h(in_neck) - (1.0 - c) * m.vapour_enthalpy(d);
                    double const by_condenser = (1.0 - c) * (m.vapour_enthalpy(d) - h(d));
                    double const leaves = by_neck + by_condenser + product * h(d);
                    for (int k = 0; k < stages; ++k) {
                        double const liquid = m.liquid(vapour);
                        double low = 0.0, high = 10.0;  // moles that run down
                        for (int i = 0; i < 60; ++i) {
                            double const down = 0.5 * (low + high);
                            vapour = (down * liquid + product * d) / (down + product);
                            bool const much =
                                (down + product) * m.vapour_enthalpy(vapour) > down * h(liquid) + leaves;
                            (much ? high : low) = down;
                        }
                    }
                    double const pot = m.liquid(vapour);
                    EXPECT_NEAR(distillate_strength(m, column::of_stages(stages), by_moles(100.0 * pot),
                                                    ratio, flow_model::enthalpy_balance, neck::condensing(c))
                                    .value(),
                                d, 1e-8)
                        << stages << ' ' << c << ' ' << ratio;
                }
            }
        }
    }
}

// A reflux that keeps a strength under a neck is the inverse of the distillate.
TEST(Neck, KeepingAStrengthIsTheInverseOfTheDistillate) {
    for (auto const flow : both_flows) {
        detail::column_solver<boiling_curve> const solver(sea_level(), column::of_plates(4, 0.6),
                                                          neck::condensing(0.1), flow);
        for (double const x : {0.01, 0.05, 0.3}) {
            for (double const phi : {0.2, 0.6, 0.95})
                EXPECT_NEAR(solver.internal_reflux(x, solver.distillate(x, phi)), phi, 1e-8) << x;
        }
    }
}

// In many small stills only the head gives reflux: plates under a neck enrich.
TEST(Neck, IsTheRefluxOfPlatesThatHaveNoOther) {
    auto const strength = [](column const& c, double share) {
        still s{{2.0 * kilowatt}, c};
        s.neck = neck::condensing(share);
        auto const r = distil(quillbeck_charge(), s, until(condition::collected(1.0 * litre)), sea_level());
        return r.fractions.at(0).product.strength().percent();
    };
    column const plates = column::of_plates(4, 0.6);
    EXPECT_NEAR(strength(plates, 0.0), strength(column::none(), 0.0), 1e-9);
    EXPECT_GT(strength(column::none(), 0.5), strength(column::none(), 0.0) + 5.0);
    EXPECT_GT(strength(plates, 0.5), strength(column::none(), 0.5) + 4.0);
}

// The neck takes its share of the heat of the vapour, the condenser the rest: with equal heats of
// vaporization exactly, with those of ethanol and water (38.6 and 40.7 kJ/mol at their boiling points) within
// a tenth.
TEST(Neck, TakesItsShareOfTheHeat) {
    for (double const share : {0.05, 0.3}) {
        still s = pot_still();
        s.neck = neck::condensing(share);
        auto const of_neck = [&](auto const& m, wash const& charge) {
            auto const r = distil(charge, s, until(condition::collected(100.0 * millilitre)), m);
            EXPECT_LT(std::abs(r.balance.energy), 1e-9);
            return r.heat.neck.value() / (r.heat.neck + r.heat.condenser).value();
        };
        EXPECT_NEAR(
            of_neck(ideal_mixture{2.5}, wash::of(parcel::of(1.0 * kilogram, by_moles(40), celsius(20)))),
            share, 1e-9);
        EXPECT_NEAR(of_neck(sea_level(), quillbeck_charge()), share, 0.1 * share);
    }
}

// Stages found from a run on a still with a neck are those between pot and neck.
TEST(Neck, StagesAreFoundUnderIt) {
    for (double const stages : {0.0, 3.0}) {
        detail::known_still const known{reflux::constant(stages), neck::condensing(0.1)};
        past_run run{wash::of(parcel::of(25.0 * litre, by_volume(11), celsius(20))), 0.1 * litre, 1.5 * litre,
                     by_volume(50)};
        run.strength = by_volume(detail::forecast_strength(run, stages, known, sea_level()));
        auto const e =
            estimate_stages(std::span<past_run const>(&run, 1), known.returned, known.neck, 0.5, sea_level());
        EXPECT_TRUE(e.explains);
        EXPECT_NEAR(stages > 0.0 ? e.stages : 0.0, stages, 1e-3);
    }
}

}  // namespace
}  // namespace aqueth
