// SPDX-License-Identifier: BSL-1.0
#include <aqueth/boiling_curve.hpp>
#include <aqueth/caloric.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/column_limits.hpp>
#include <aqueth/still/detail/column_solver.hpp>

#include "expect_refusal.hpp"
#include "test_mixtures.hpp"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::ideal_mixture;

double const infinite = std::numeric_limits<double>::infinity();

boiling_curve const& sea_level() {
    static boiling_curve const curve(standard_atmosphere);
    return curve;
}

// Fenske's equation counts the still as a stage; exact stepping counts stages above it.
TEST(Column, ExactSteppingIsFenskesEquationForConstantVolatility) {
    ideal_mixture const m{2.5};
    for (double const stages : {0.0, 1.0, 2.0, 7.0}) {
        double const ratio = std::pow(2.5, stages + 1.0) * 0.1 / 0.9;
        auto const top = by_moles(100.0 * ratio / (1.0 + ratio));
        EXPECT_NEAR(fenske_stages(by_moles(10), top, 2.5), stages + 1.0, 1e-12);
        EXPECT_NEAR(minimum_stages(m, by_moles(10), top), stages, 1e-9);
        EXPECT_NEAR(distillate_strength(m, column::of_stages(stages), by_moles(10), infinite).value(),
                    top.value(), 1e-14);
    }
    // ln(19 x 19)/ln 2.5, by hand
    EXPECT_NEAR(fenske_stages(by_moles(5), by_moles(95), 2.5), 6.42687, 1e-5);
}

// With constant volatility the operating line pinches at the still: R = (d - y)/(y - x).
TEST(Column, MinimumRefluxForConstantVolatility) {
    ideal_mixture const m{2.5};
    double const x = 0.3, d = 0.9, y = m.vapour(x);
    EXPECT_NEAR(minimum_reflux(m, by_moles(30), by_moles(90)), (d - y) / (y - x), 1e-12);
    EXPECT_EQ(minimum_reflux(m, by_moles(30), by_moles(50)), 0.0);  // the pot alone gives 51.7
}

TEST(Column, MinimumRefluxOfEthanolAndWaterIsATangentPinch) {
    auto const& m = sea_level();
    double const x = 0.3, d = 0.85;
    double const at_still = (d - m.vapour(x)) / (m.vapour(x) - x);
    double const least = minimum_reflux(m, by_moles(30), by_moles(85));
    EXPECT_GT(least, 1.2 * at_still);
    // No liquid lies above the line, and one lies on it.
    double const phi = least / (1.0 + least);
    double closest = infinite;
    for (double liquid = x; liquid < d - 1e-3; liquid += 1e-4) {
        double const gap = m.vapour(liquid) - (d - phi * (d - liquid));
        EXPECT_GT(gap, -1e-9);
        closest = (std::min)(closest, gap);
    }
    EXPECT_LT(closest, 1e-7);
    // Just above it the separation can be done, with many stages.
    EXPECT_GT(stages_needed(m, by_moles(30), by_moles(85), 1.1 * least), 15.0);
}

TEST(Column, StagesNeededIsTheInverseOfDistillateStrength) {
    auto const& m = sea_level();
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        for (double const n : {0.4, 1.0, 2.3, 5.0, 8.7}) {
            for (double const ratio : {1.5, 3.0, 8.0}) {
                auto const d = distillate_strength(m, column::of_stages(n), by_moles(8), ratio, flow);
                EXPECT_NEAR(stages_needed(m, by_moles(8), d, ratio, flow), n, 2e-6) << n << " " << ratio;
            }
        }
    }
}

// Against stepping from the top down with plain bisection, which shares no line with the solver.
TEST(Column, AgreesWithSteppingFromTheTopDown) {
    auto const& m = sea_level();
    for (int const n : {1, 3, 6}) {
        for (double const x : {0.002, 0.03, 0.2}) {
            for (double const ratio : {0.2, 1.0, 4.0, 30.0}) {
                double const phi = ratio / (1.0 + ratio);
                auto const bottom = [&](double d) {
                    double y = d;
                    for (int k = 0; k < n; ++k) y = phi * m.liquid(y) + (1.0 - phi) * d;
                    return m.liquid(y);
                };
                double low = x, high = azeotrope(standard_atmosphere).liquid.value();
                for (int i = 0; i < 60; ++i) {
                    double const middle = 0.5 * (low + high);
                    (bottom(middle) < x ? low : high) = middle;
                }
                EXPECT_NEAR(distillate_strength(m, column::of_stages(n), by_moles(100.0 * x), ratio).value(),
                            low, 1e-8)
                    << n << " " << x << " " << ratio;
            }
        }
    }
}

TEST(Column, KeepingAStrengthIsTheInverseOfTheDistillate) {
    auto const& m = sea_level();
    detail::column_solver<boiling_curve> const solver(m, column::of_plates(4, 0.6), neck::insulated(),
                                                      flow_model::constant_molar_overflow);
    for (double const x : {0.01, 0.05, 0.3}) {
        for (double const phi : {0.2, 0.6, 0.95}) {
            EXPECT_NEAR(solver.internal_reflux(x, solver.distillate(x, phi)), phi, 1e-8);
        }
    }
    EXPECT_EQ(solver.internal_reflux(0.3, 0.4), 0.0);
    EXPECT_GT(solver.internal_reflux(0.01, 0.85), 1.0);
}

// The same with flows by enthalpy, and over so many stages that the column pinches at its foot, above it
// (where the equilibrium curve bends), or hardly.
TEST(Column, KeepingAStrengthHoldsForBothFlowsAndManyStages) {
    auto const& m = sea_level();
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        for (double const stages : {3.0, 20.0, 100.0}) {
            detail::column_solver<boiling_curve> const solver(m, column::of_stages(stages), neck::insulated(),
                                                              flow);
            for (double const x : {0.0005, 0.002, 0.03, 0.2}) {
                for (double const d : {0.05, 0.0637, 0.4, 0.6, 0.8, 0.885}) {
                    double const phi = solver.internal_reflux(x, d);
                    if (phi == 0.0) {
                        EXPECT_GE(m.vapour(x), d);
                    } else if (phi > 1.0) {
                        EXPECT_LT(solver.distillate(x, 1.0), d) << stages << " " << x << " " << d;
                    } else {
                        EXPECT_NEAR(solver.distillate(x, phi), d, 1e-8) << stages << " " << x << " " << d;
                    }
                }
            }
        }
    }
}

// A liquid runs down the stages by the balance of moles and heat around all above it, written out here: what
// goes up less what comes down is the distillate, in ethanol as in heat.
TEST(Column, EnthalpyBalanceClosesOnTheFirstStage) {
    auto const& m = sea_level();
    detail::column_solver<boiling_curve> const solver(m, column::of_stages(1), neck::insulated(),
                                                      flow_model::enthalpy_balance);
    for (double const x : {0.01, 0.05, 0.3}) {
        for (double const phi : {0.1, 0.5, 0.9}) {
            double const y0 = m.vapour(x);
            double const d = solver.distillate(x, phi);
            double const liquid = m.liquid(d);             // on the only stage
            double const flow = (d - y0) / (y0 - liquid);  // of it, for each mole of distillate
            double const top = m.liquid_enthalpy(d).value;
            double const condensed = (m.vapour_enthalpy(d) - top) / (1.0 - phi);
            EXPECT_NEAR((flow + 1.0) * m.vapour_enthalpy(y0),
                        flow * m.liquid_enthalpy(liquid).value + top + condensed, 1e-3);
        }
    }
}

// Columns by heat balances from the top down, per kilogram of distillate, with the enthalpies and dew points
// of the library's front door and plain bisection: no table and no line of the solver. Every stage gets so
// much vapour from below that heat and ethanol balance around it and all above it.
TEST(Column, EnthalpyBalanceAgreesWithHeatBalancesFromTheTopDown) {
    auto const p = standard_atmosphere;
    auto const liquid = [&](mass_fraction w) {
        return enthalpy_of_liquid(w, bubble_point(w, p).temperature).value();
    };
    auto const vapour = [&](mass_fraction w) {
        return enthalpy_of_vapour(w, dew_point(w, p).temperature, p).value();
    };
    for (int const n : {1, 3, 6}) {
        for (double const top : {0.5, 0.7, 0.83}) {
            for (double const ratio : {2.0, 5.0, 20.0}) {
                auto const d = to<mass_fraction>(mole_fraction(top));
                double const leaves = liquid(d) + (ratio + 1.0) * (vapour(d) - liquid(d));
                mass_fraction up = d;
                for (int k = 0; k < n; ++k) {
                    auto const down = to<mass_fraction>(dew_point(up, p).liquid);
                    double low = 0.0, high = 1000.0;  // kg of liquid that runs down
                    for (int i = 0; i < 60; ++i) {
                        double const flow = 0.5 * (low + high);
                        up = mass_fraction((flow * down.value() + d.value()) / (flow + 1.0));
                        bool const much = (flow + 1.0) * vapour(up) > flow * liquid(down) + leaves;
                        (much ? high : low) = flow;
                    }
                }
                auto const still = dew_point(up, p).liquid;
                double const solved = distillate_strength(sea_level(), column::of_stages(n), still, ratio,
                                                          flow_model::enthalpy_balance)
                                          .value();
                EXPECT_NEAR(solved, top, 1e-9) << n << " stages, reflux " << ratio;
            }
        }
    }
}

// The memory of earlier calls saves time and changes no result: forwards, backwards, and in jumps.
TEST(Column, MemoryDoesNotChangeTheAnswer) {
    auto const& m = sea_level();
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        for (double const stages : {4.6, 40.0}) {
            detail::column_solver<boiling_curve> const solver(m, column::of_stages(stages), neck::insulated(),
                                                              flow);
            detail::column_memory memory;
            for (int i = 0; i < 300; ++i) {
                double const x = 0.002 + 0.3 * ((i * 37) % 300) / 300.0 * (i % 3 ? 1.0 : 0.01);
                EXPECT_NEAR(solver.distillate(x, 0.8, memory), solver.distillate(x, 0.8), 1e-11) << x;
                EXPECT_NEAR(solver.internal_reflux(x, 0.83, 1.0, memory), solver.internal_reflux(x, 0.83),
                            1e-11)
                    << x;
            }
        }
    }
}

/// counts the evaluations of the vapour over a liquid
struct counting_mixture {
    boiling_curve const& curve;
    long mutable count = 0;

    double vapour(double x) const { return ++count, curve.vapour(x); }
    numeric::value_and_slope<double> vapour_with_slope(double x) const {
        return ++count, curve.vapour_with_slope(x);
    }
    double temperature(double x) const { return curve.temperature(x); }
    numeric::value_and_slope<double> liquid_enthalpy(double x) const { return curve.liquid_enthalpy(x); }
    double vapour_enthalpy(double x) const { return curve.vapour_enthalpy(x); }
};

// Newton's method needs five evaluations with the right slope, and 24 to 86 with a wrong one.
TEST(Column, AzeotropeIsFoundInFewLooks) {
    counting_mixture const m{sea_level()};
    EXPECT_NEAR(detail::column_solver<counting_mixture>::azeotrope(m),
                azeotrope(standard_atmosphere).liquid.value(), 1e-5);
    EXPECT_LE(m.count, 6);
}

// A neck has its own slope: the search for a distillate needs 17 evaluations for each state with it.
TEST(Column, ANeckCostsFewLooks) {
    counting_mixture const m{sea_level()};
    detail::column_solver<counting_mixture> const solver(m, column::of_stages(4), neck::condensing(0.2),
                                                         flow_model::constant_molar_overflow);
    detail::column_memory memory;
    m.count = 0;
    for (int i = 0; i < 100; ++i) solver.distillate(0.04 * (1.0 - i / 101.0), 0.75, memory);
    EXPECT_LT(m.count, 20 * 100);
}

// A run with a thousand states asks a thousand times. Every stage then takes about one evaluation, as it
// remembers its liquid and slopes; a search that climbs from the still needs six, or hundreds where the
// column pinches.
TEST(Column, OneLookAtEachStageForEachStateOfALongRun) {
    counting_mixture const m{sea_level()};
    int const stages = 100;
    for (auto const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        detail::column_solver<counting_mixture> const solver(m, column::of_stages(stages), neck::insulated(),
                                                             flow);
        for (double const d : {0.75, 0.85, 0.888}) {
            detail::column_memory memory;
            m.count = 0;
            for (int i = 0; i < 1000; ++i) {
                double const x = 0.036 * (1.0 - i / 1001.0);
                if (solver.internal_reflux(x, d, 1000.0 / 1001.0, memory) > 1.0)
                    solver.distillate(x, 1000.0 / 1001.0, memory);
            }
            EXPECT_LT(m.count, 1000 * 1.5 * stages) << d;
        }
        for (double const phi : {0.75, 0.9}) {
            detail::column_memory memory;
            m.count = 0;
            for (int i = 0; i < 1000; ++i) solver.distillate(0.036 * (1.0 - i / 1001.0), phi, memory);
            EXPECT_LT(m.count, 1000 * 2.5 * stages) << phi;
        }
    }
}

TEST(Column, LimitsOfStagesEfficiencyAndReflux) {
    auto const& m = sea_level();
    auto const at = [&](column const& c, double ratio) {
        return distillate_strength(m, c, by_moles(5), ratio).value();
    };
    EXPECT_DOUBLE_EQ(at(column::none(), 7.0), m.vapour(0.05));
    EXPECT_DOUBLE_EQ(at(column::of_stages(4), 0.0), m.vapour(0.05));
    EXPECT_NEAR(at(column::of_stages(4), 1e-7), m.vapour(0.05), 1e-6);
    EXPECT_DOUBLE_EQ(at(column::of_plates(4, 1.0), 3.0), at(column::of_stages(4), 3.0));
    EXPECT_DOUBLE_EQ(at(column::of_packing(1.2 * metre, 0.3 * metre), 3.0), at(column::of_stages(4), 3.0));
    EXPECT_LT(at(column::of_plates(4, 0.6), 3.0), at(column::of_stages(4), 3.0));
    // continuous where a stage is added, rising all the way
    EXPECT_NEAR(at(column::of_stages(3.0 - 1e-9), 3.0), at(column::of_stages(3), 3.0), 1e-8);
    double before = 0.0;
    for (double n = 0.0; n < 10.0; n += 0.25) {
        EXPECT_GT(at(column::of_stages(n), 3.0), before);
        before = at(column::of_stages(n), 3.0);
    }
    EXPECT_LT(at(column::of_stages(100), 50.0), azeotrope(standard_atmosphere).liquid.value());
}

// The two ways to find the flows differ little: the molar heats of vaporization differ by 5 %.
TEST(Column, ConstantMolarOverflowIsCloseToTheEnthalpyBalance) {
    auto const& m = sea_level();
    auto const c = column::of_stages(5);
    for (double const x : {1.0, 5.0, 20.0}) {
        double const constant = distillate_strength(m, c, by_moles(x), 3.0).value();
        double const balance =
            distillate_strength(m, c, by_moles(x), 3.0, flow_model::enthalpy_balance).value();
        EXPECT_NE(constant, balance);
        EXPECT_NEAR(constant, balance, 0.015) << x;
    }
    // and they agree where the heats are equal
    ideal_mixture const even{2.5};
    EXPECT_NEAR(distillate_strength(even, c, by_moles(10), 3.0).value(),
                distillate_strength(even, c, by_moles(10), 3.0, flow_model::enthalpy_balance).value(), 1e-10);
}

TEST(Column, LimitIsTheAzeotropeOrPureEthanol) {
    for (double const kpa : {20.0, 101.325, 170.0}) {
        boiling_curve const curve(kpa * kilopascal);
        EXPECT_NEAR(detail::column_solver<boiling_curve>::azeotrope(curve),
                    azeotrope(kpa * kilopascal).liquid.value(), 1e-5)
            << kpa;
    }
    EXPECT_EQ(detail::column_solver<boiling_curve>::azeotrope(boiling_curve(5.0 * kilopascal)), 1.0);
    EXPECT_EQ(detail::column_solver<ideal_mixture>::azeotrope(ideal_mixture{2.5}), 1.0);
}

TEST(Column, RefusesBadInput) {
    auto const& m = sea_level();
    expect_refusal([] { static_cast<void>(column::of_stages(-0.1)); }, "number of stages");
    expect_refusal([] { static_cast<void>(column::of_stages(std::nan(""))); }, "number of stages");
    expect_refusal([] { static_cast<void>(column::of_plates(4, 0.0)); }, "Murphree efficiency");
    expect_refusal([] { static_cast<void>(column::of_plates(4, 1.2)); }, "Murphree efficiency");
    expect_refusal([] { static_cast<void>(column::of_packing(1.0 * metre, 0.0 * metre)); },
                   "height equivalent to a theoretical plate");
    expect_refusal([&] { static_cast<void>(distillate_strength(m, column::none(), by_volume(97.5), 1.0)); },
                   "strength in the still");
    expect_refusal([&] { static_cast<void>(distillate_strength(m, column::none(), by_volume(10), -1.0)); },
                   "reflux ratio");
    auto const past =
        expect_refusal([&] { static_cast<void>(minimum_reflux(m, by_volume(10), by_volume(98))); },
                       "strength of the distillate");
    EXPECT_NEAR(past.upper(), to<volume_fraction>(azeotrope(standard_atmosphere).liquid).percent(), 1e-4);
    auto const least = minimum_reflux(m, by_volume(10), by_volume(92));
    auto const low = expect_refusal(
        [&] { static_cast<void>(stages_needed(m, by_volume(10), by_volume(92), 0.9 * least)); },
        "reflux ratio");
    EXPECT_NEAR(low.lower(), least, 1e-12);
    auto const close = 1.001 * minimum_reflux(m, by_volume(10), by_volume(97));  // near the azeotrope
    expect_refusal([&] { static_cast<void>(stages_needed(m, by_volume(10), by_volume(97), close)); },
                   "number of stages above");
    expect_refusal([&] { static_cast<void>(fenske_stages(by_moles(10), by_moles(5), 2.0)); },
                   "mole fraction of the distillate");
}

// Newton's method from the last root ends at the same root as from nowhere. It once accepted a bisected
// bracket too early, with an error of 6e-9.
TEST(Column, MemoryOnlySavesTime) {
    boiling_curve const mixture(95.0 * kilopascal);
    for (double const share : {0.0, 0.05}) {
        detail::column_solver<boiling_curve> const solver(
            mixture, column::of_plates(4, 0.6), neck::condensing(share), flow_model::constant_molar_overflow);
        double const phi = detail::internal_reflux_of(3.0, share);
        detail::column_memory memory;
        for (double x = 0.036; x > 0.0005; x *= 0.9997) {
            double const fresh = solver.distillate(x, phi);
            EXPECT_NEAR(solver.distillate(x, phi, memory), fresh, 1e-13 * fresh) << x;
        }
    }
}

// A fraction of a stage down to rounding is no stage: the whole stages below it still count.
TEST(Column, ATopmostStageMayDoNextToNothing) {
    auto const strength = [](double stages) {
        return distillate_strength(sea_level(), column::of_stages(stages), by_moles(30), 1.0).value();
    };
    EXPECT_NEAR(strength(std::nextafter(30.0, 31.0)), strength(30.0), 1e-12);
    EXPECT_NEAR(strength(std::nextafter(1.0, 2.0)), strength(1.0), 1e-12);
}

}  // namespace
}  // namespace aqueth
