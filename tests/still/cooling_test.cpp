// SPDX-License-Identifier: BSL-1.0
// Cooling water and the load of a column: against steam, closed forms and the heats of the run.
#include <aqueth/still/cooling.hpp>
#include <aqueth/still/run.hpp>

#include "expect_refusal.hpp"
#include "runs.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>

namespace aqueth {
namespace {

using test::expect_refusal;
using test::quillbeck;
using test::quillbeck_charge;
using test::sea_level;
using test::until;

/// a gram of steam in a second, all of it taken: the last drops of a run
run_point steam() {
    auto p = distil(quillbeck_charge(), test::pot_still(), until(condition::still_strength(by_volume(1))),
                    sea_level())
                 .fractions.back()
                 .end;
    p.distillate = mole_fraction(0.0);
    p.vapour = kelvin(sea_level().temperature(0.0));
    p.condenser = 2256.5 * watt;
    p.reflux_ratio = 0.0;
    p.vapour_flow = 1.0 / correlation::molar_mass::water * mole / second;
    p.take_off = 1e-3 / density(mass_fraction(0.0), celsius(20)).value() * cubic_metre / second;
    return p;
}

// Steam tables (from memory, kJ/kg): evaporation at 100 °C 2256.5; liquid at 15, 20, 45 and 100 °C 62.98,
// 83.91, 188.43, 419.1; 101.3 kPa boil at 99.97 °C, 419.0. A gram in a second, cooled to 20 °C with water
// from 15 to 45 °C, gives 2256.5 + 335.1 W, and 2591.6 W/125.45 kJ/kg = 20.66 g/s of water. The library
// claims 1 %.
TEST(Cooling, SteamByTheSteamTables) {
    auto const d =
        demand_of_condenser(steam(), head::none(), {celsius(15), celsius(45), celsius(20)}, sea_level());
    EXPECT_NEAR(in(d.condensing, watt), 2256.5, 1e-9);
    EXPECT_NEAR(in(d.cooling, watt), 335.1, 1e-3 * 335.1);
    EXPECT_NEAR(in(d.water * second, millilitre), 20.66 / 0.99910, 2e-3 * 20.66);
    EXPECT_NEAR(d.water_between.celsius(), 15.0 + 335.1 / 20.66 / 4.188, 0.01);
}

// One temperature on the side of the steam: the textbook's UA = (water's heat capacity) ln[(T - t1)/(T -
// t2)], here for the part that condenses. The other part has the logarithmic mean of its two ends.
TEST(Cooling, AreaOfACondenserWithOneTemperature) {
    for (double const out : {20.0, 45.0, 80.0}) {
        auto const d =
            demand_of_condenser(steam(), head::none(), {celsius(15), celsius(out), celsius(20)}, sea_level());
        double const boils = sea_level().temperature(0.0) - 273.15, between = d.water_between.celsius();
        double const capacity = 2256.5 / (out - between);  // W/K
        EXPECT_NEAR(d.condensing_ua.value(), capacity * std::log((boils - between) / (boils - out)), 1e-9);
        double const warm = boils - between, cold = 20.0 - 15.0;
        EXPECT_NEAR(d.cooling_ua.value(), d.cooling.value() * std::log(warm / cold) / (warm - cold), 1e-9);
    }
    // equal differences at both ends: any of them is the mean
    EXPECT_EQ(detail::logarithmic_mean(7.0, 7.0), 7.0);
    EXPECT_NEAR(detail::logarithmic_mean(7.0, 7.0 + 1e-9), 7.0, 1e-8);
}

// An exchanger cut into slices, each with the difference of temperature in its middle, needs the same area.
TEST(Cooling, LogarithmicMeanIsTheSumOfSlices) {
    auto const p =
        distil(quillbeck_charge(), quillbeck(), until(condition::still_strength(by_volume(3))), sea_level())
            .fractions.back()
            .end;
    auto const d = demand_of_condenser(p, head::none(), {celsius(12), celsius(60), celsius(18)}, sea_level());
    double const bubble = sea_level().temperature(p.distillate.value()) - 273.15;
    constexpr int slices = 20000;
    auto const sliced = [&](double heat, double hot_in, double hot_out, double cold_in, double cold_out) {
        double sum = 0.0;
        for (int k = 0; k < slices; ++k) {
            double const s = (k + 0.5) / slices;
            sum += heat / slices / (hot_in + s * (hot_out - hot_in) - cold_out - s * (cold_in - cold_out));
        }
        return sum;
    };
    EXPECT_NEAR(d.condensing_ua.value(),
                sliced(d.condensing.value(), p.vapour.celsius(), bubble, d.water_between.celsius(), 60.0),
                1e-6);
    EXPECT_NEAR(d.cooling_ua.value(),
                sliced(d.cooling.value(), bubble, 18.0, 12.0, d.water_between.celsius()), 1e-6);
    EXPECT_NEAR(d.heat().value(), (d.condensing + d.cooling).value(), 1e-9);
    EXPECT_NEAR(d.ua().value(), (d.condensing_ua + d.cooling_ua).value(), 1e-9);
}

/// the stillhouse's column under a partial condenser, with a neck before it
still with_partial_condenser() {
    still s = quillbeck();
    s.head = head::partial_condenser(0.6);
    return s;
}
still with_cold_reflux() {
    still s = quillbeck();
    s.head = s.head.reflux_at(celsius(40));
    return s;
}

// The moments of a run add up to what is demanded in all: trapezoids of 4000 moments.
TEST(Cooling, MomentsAddUpToTheRun) {
    for (still const& s : {quillbeck(), with_cold_reflux(), with_partial_condenser()}) {
        auto plan = until(condition::distillate_strength(by_volume(20)));
        plan.points = 4000;
        auto const r = distil(quillbeck_charge(), s, plan, sea_level());
        cooling_temperatures const t{celsius(12), celsius(50), celsius(20)};
        auto const whole = demand_of_condenser(r, t);
        auto const partial = demand_of_partial_condenser(r, t);
        double heat = 0.0, condensing = 0.0, water = 0.0, partial_water = 0.0;
        for (std::size_t k = 1; k < r.points.size(); ++k) {
            double const seconds = 0.5 * (r.points[k].elapsed - r.points[k - 1].elapsed).value();
            for (std::size_t const i : {k - 1, k}) {
                auto const d = demand_of_condenser(r.points[i], s.head, t, sea_level());
                heat += seconds * d.heat().value();
                condensing += seconds * d.condensing.value();
                water += seconds * d.water.value();
                auto const n = demand_of_partial_condenser(r.points[i], t, sea_level());
                EXPECT_EQ(n.cooling.value(), 0.0);
                partial_water += seconds * n.water.value();
            }
        }
        EXPECT_NEAR(heat / whole.heat().value(), 1.0, 1e-3);  // mixing in the receiver
        EXPECT_NEAR(water / whole.water.value(), 1.0, 1e-3);
        if (s.head.reflux_temperature()) {
            EXPECT_LT(condensing, 0.95 * whole.condensing.value());
        } else {
            EXPECT_NEAR(condensing / whole.condensing.value(), 1.0, 1e-5);
        }
        EXPECT_NEAR(partial_water, partial.water.value(), 1e-5 * partial.water.value());
        EXPECT_EQ(partial.water.value() > 0.0, s.head.what() == head::kind::partial_condenser);
    }
}

// A cold reflux: the vapour's heat is that of the moles that condense, and the rest cools the reflux.
TEST(Cooling, ColdRefluxCoolsBeforeItReturns) {
    auto const& c = sea_level();
    auto const s = with_cold_reflux();
    auto const p =
        distil(quillbeck_charge(), s, until(condition::still_strength(by_volume(5))), c).fractions.back().end;
    double const d = p.distillate.value(), bubble = c.temperature(d);
    auto const to = [&](double celsius_) {  // J/mol
        return model::enthalpy::liquid(d, bubble) - model::enthalpy::liquid(d, celsius_ + 273.15);
    };
    auto const one = detail::parcel_of_moles(1.0, d).volume(celsius(20));  // of a mole
    double const taken = p.take_off.value() / one.value();
    double const latent = c.vapour_enthalpy(d) - c.liquid_enthalpy(d).value;
    auto const demand = demand_of_condenser(p, s.head, {celsius(12), celsius(50), celsius(18)}, c);
    EXPECT_NEAR(demand.condensing.value() / (4.0 * taken * latent), 1.0, 1e-9);
    EXPECT_NEAR(demand.cooling.value() / (3.0 * taken * to(40.0) + taken * to(18.0)), 1.0, 1e-9);
    EXPECT_NEAR(p.condenser.value() / (4.0 * taken * latent + 3.0 * taken * to(40.0)), 1.0, 1e-9);
}

// What neck and partial condenser take is what the vapour loses: heat and ethanol balance by hand, from the
// shares. What runs back from each is in equilibrium with what goes on.
TEST(Cooling, PartialCondenserBalances) {
    auto const& c = sea_level();
    cooling_temperatures const t{celsius(15), celsius(60), celsius(20)};
    for (double const pot : {9.0, 3.0, 0.5}) {
        auto const p = distil(quillbeck_charge(), with_partial_condenser(),
                              until(condition::still_strength(by_volume(pot))), c)
                           .fractions.back()
                           .end;
        double const d = p.distillate.value(), l2 = c.liquid(d);
        double const beyond = p.condenser.value() / (c.vapour_enthalpy(d) - c.liquid_enthalpy(d).value);
        double const passed = beyond / 0.4, all = passed / 0.95;
        double const v = 0.6 * l2 + 0.4 * d, l1 = c.liquid(v), y = 0.05 * l1 + 0.95 * v;
        double const heat = passed * c.vapour_enthalpy(v) - (passed - beyond) * c.liquid_enthalpy(l2).value -
                            beyond * c.vapour_enthalpy(d);
        auto const demand = demand_of_partial_condenser(p, t, c);
        EXPECT_NEAR(demand.condensing.value() / heat, 1.0, 1e-9);
        double const enters = c.temperature(l1) - 273.15, leaves = p.vapour.celsius();
        EXPECT_NEAR(demand.condensing_ua.value() / (heat * std::log((enters - 60.0) / (leaves - 15.0)) /
                                                    (enters - 60.0 - leaves + 15.0)),
                    1.0, 1e-7);
        auto const top = load_at_top(p, 50e-3 * metre, c);
        EXPECT_NEAR(top.composition.value() / y, 1.0, 1e-7);
        EXPECT_NEAR(top.temperature.kelvin(), c.temperature(c.liquid(y)), 1e-6);
        EXPECT_NEAR(p.vapour_flow.value() / all, 1.0, 1e-9);
        EXPECT_NEAR(demand_of_condenser(p, head::none(), t, c).condensing.value() / p.condenser.value(), 1.0,
                    1e-12);
    }
}

// Saturated steam at 101.3 kPa fills 1.673 m3/kg (steam tables, from memory). A gram in a second through 50
// mm has 0.852 m/s, and F = 0.852 sqrt(0.5977) = 0.659 Pa^0.5. The definition is every textbook's: w
// sqrt(rho).
TEST(Cooling, LoadOfAColumnBySteam) {
    auto const top = load_at_top(steam(), 50e-3 * metre, sea_level());
    EXPECT_NEAR(1.0 / top.density.value(), 1.673, 0.003);
    EXPECT_NEAR(top.velocity.value(), 0.852, 0.002);
    EXPECT_NEAR(top.f_factor, 0.659, 0.0015);
    EXPECT_NEAR(top.flow.value(), 1.673e-3, 3e-6);
    auto twice = steam();
    twice.vapour_flow = 2.0 * twice.vapour_flow;
    EXPECT_NEAR(load_at_top(twice, 50e-3 * metre, sea_level()).velocity.value(), 2.0 * top.velocity.value(),
                1e-9);
    EXPECT_NEAR(load_at_top(steam(), 100e-3 * metre, sea_level()).f_factor, 0.25 * top.f_factor, 1e-12);
}

TEST(Cooling, RefusesWhatCannotBe) {
    auto const p = steam();
    auto const ask = [&](double in_, double out, double receiver) {
        return [=] {
            return demand_of_condenser(p, head::none(), {celsius(in_), celsius(out), celsius(receiver)},
                                       sea_level());
        };
    };
    for (double const bad : {-1.0, 41.0, std::nan("")})
        expect_refusal(ask(bad, 60, 50), "temperature of the water in");
    for (double const bad : {15.0, 10.0, 96.0, std::nan("")})
        expect_refusal(ask(15, bad, 20), "temperature of the water out");
    for (double const bad : {15.0, 99.0, std::nan("")})
        expect_refusal(ask(15, 45, bad), "temperature of the receiver");
    auto strong = p;  // of which the vapour is colder than the water would be
    strong.distillate = mole_fraction(0.8);
    strong.vapour = kelvin(sea_level().temperature(0.8));
    auto const e = expect_refusal(
        [&] {
            return demand_of_condenser(strong, head::none(), {celsius(15), celsius(90), celsius(20)},
                                       sea_level());
        },
        "temperature of the water out");
    EXPECT_NEAR(e.upper(), strong.vapour.celsius() - 0.1, 1e-9);
    EXPECT_NEAR(expect_refusal(
                    [&] {
                        return demand_of_condenser(strong, head::none(),
                                                   {celsius(15), celsius(45), celsius(90)}, sea_level());
                    },
                    "temperature of the receiver")
                    .upper(),
                sea_level().temperature(0.8) - 273.25, 1e-9);
    expect_refusal(
        [&] {
            return demand_of_partial_condenser(strong, {celsius(15), celsius(90)}, sea_level());
        },
        "temperature of the water out");
    for (double const bad : {0.0, -0.1, 11.0, std::nan("")})
        expect_refusal([&] { return load_at_top(p, bad * metre, sea_level()); }, "diameter of the column");
}

}  // namespace
}  // namespace aqueth
