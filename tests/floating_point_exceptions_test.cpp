// SPDX-License-Identifier: BSL-1.0
// Programs that trap invalid operations, divisions by zero and overflows to find their own mistakes must be
// able to call the library: with valid arguments it raises none of these. A run with plates and an estimate
// of stages once compared NaN. (A NaN among the arguments is compared, which raises FE_INVALID, and is
// refused.)
#include <aqueth/aqueth.hpp>
#include <aqueth/array.hpp>
#include <aqueth/measured_equilibrium.hpp>
#include <aqueth/still/learning.hpp>

#include <gtest/gtest.h>

#include <cfenv>
#include <vector>

namespace aqueth {
namespace {

/// the exceptions of the three that a task raises
template <class Task>
int raised(Task const& task) {
    std::feclearexcept(FE_ALL_EXCEPT);
    task();
    return std::fetestexcept(FE_INVALID | FE_DIVBYZERO | FE_OVERFLOW);
}

/// hides a number from the compiler, which would otherwise compute with it at compile time
double at_run_time(double v) {
    double volatile hidden = v;
    return hidden;
}

class FloatingPointExceptions : public testing::Test {
protected:
    void SetUp() override {
#if defined(__clang__)
        GTEST_SKIP() << "clang computes both sides of a choice";
#endif
        ASSERT_NE(raised([] { at_run_time(1.0 / at_run_time(0.0)); }), 0);
    }
};

TEST_F(FloatingPointExceptions, NoneInPropertiesFromEndToEnd) {
    for (double const percent : {0.0, 1e-300, 1e-9, 0.1, 5.0, 40.0, 96.0, 99.99, 100.0}) {
        EXPECT_EQ(raised([&] {
                      auto const q = by_volume(at_run_time(percent));
                      auto const w = to<mass_fraction>(q);
                      static_cast<void>(to<us_proof>(to<mass_concentration>(w)));
                      static_cast<void>(mass_fraction_from_density(density(w, celsius(20)), celsius(20)));
                      static_cast<void>(freezing_point(by_mass(0.68 * percent)));
                      static_cast<void>(bubble_point(q, standard_atmosphere));
                      static_cast<void>(bubble_point(q, celsius(60)));
                      static_cast<void>(dew_point(to<mole_fraction>(q), standard_atmosphere));
                      static_cast<void>(enthalpy_of_liquid(w, celsius(22)));
                      static_cast<void>(hydrometer<volume_fraction>().strength(by_volume(0.9 * percent + 1.0),
                                                                               celsius(22)));
                  }),
                  0)
            << percent;
    }
    EXPECT_EQ(raised([] {
                  static_cast<void>(azeotrope(standard_atmosphere));
                  static_cast<void>(azeotrope(celsius(at_run_time(70.0))));
                  static_cast<void>(coexistence(celsius(at_run_time(85.0)), standard_atmosphere));
                  static_cast<void>(pressure_at_altitude(at_run_time(600.0) * metre));
              }),
              0);
}

TEST_F(FloatingPointExceptions, NoneInSweetenedSpiritAndRefraction) {
    for (double const percent : {0.0, 1e-9, 12.0, 45.0}) {
        for (double const sugar : {0.0, 1e-9, 250.0}) {
            EXPECT_EQ(raised([&] {
                          auto const liqueur = sweetened::of(at_run_time(1.0) * litre, by_volume(percent),
                                                             sugar * gram_per_litre, celsius(20));
                          auto const rho = liqueur.density();
                          static_cast<void>(liqueur.strength_doubt());
                          static_cast<void>(strength_behind_sugar(rho, celsius(20), sugar * gram_per_litre));
                          static_cast<void>(sugar_behind_density(rho, liqueur.strength()));
                          auto const shown = refractive_index_of(liqueur);
                          static_cast<void>(brix_of(shown));
                          static_cast<void>(plain::wash_from_density_and_index(rho.value(), shown.value()));
                      }),
                      0)
                << percent << " % vol, " << sugar << " g/L";
        }
    }
    EXPECT_EQ(raised([] {
                  auto const spirit = parcel::of(at_run_time(2.0) * litre, by_volume(80), celsius(20));
                  auto const nothing = parcel::of(at_run_time(0.0) * litre, by_volume(80), celsius(20));
                  static_cast<void>(sweeten(spirit, by_volume(30), 200.0 * gram_per_litre));
                  static_cast<void>(sweeten(nothing, by_volume(30), 200.0 * gram_per_litre));
                  static_cast<void>(sweetened::of(nothing, 0.0 * gram).strength());
                  static_cast<void>(refractive_index_of(sweetened::of(nothing, 0.0 * gram)));
                  static_cast<void>(fermented_wash(litre, specific_gravity(1.085), brix(6.5), celsius(20)));
                  static_cast<void>(find_methanol(948.0 * kilogram_per_cubic_metre, refractive_index(1.353)));
                  static_cast<void>(strength_of_distilled_sample(0.1 * litre, celsius(20), 0.1 * litre,
                                                                 by_volume(0.0), celsius(20)));
              }),
              0);
}

TEST_F(FloatingPointExceptions, NoneInOperations) {
    EXPECT_EQ(raised([] {
                  auto const spirit = parcel::of(at_run_time(2.0) * litre, by_volume(80), celsius(20));
                  auto const nothing = parcel::of(at_run_time(0.0) * litre, by_volume(80), celsius(20));
                  static_cast<void>(dilute(spirit, by_volume(40), water_at(celsius(15))));
                  static_cast<void>(mix({spirit, nothing}));
                  static_cast<void>(fill_bottles(spirit, 0.7 * litre));
                  std::vector<lot> const lots{{spirit, {}},
                                              {parcel::of(3.0 * litre, by_volume(30), celsius(20)), {}}};
                  static_cast<void>(blend_to_strength(lots, by_volume(45), celsius(20)));
                  static_cast<void>(blend_to_strength(lots, by_volume(45), celsius(20), 2.0 * litre));
                  static_cast<void>(fermented_wash(20.0 * litre, specific_gravity(1.06),
                                                   specific_gravity(at_run_time(0.998)), celsius(20)));
                  static_cast<void>(sugar_needed(20.0 * litre, by_volume(at_run_time(10.0))));
              }),
              0);
}

TEST_F(FloatingPointExceptions, NoneInStills) {
    auto const charge = parcel::of(25.0 * litre, by_volume(10), celsius(20));
    boiling_curve const mixture(standard_atmosphere);
    for (flow_model const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        for (column const& tower : {column::none(), column::of_plates(4, 0.6), column::of_stages(30.5)}) {
            for (reflux const& returned :
                 {reflux::none(), reflux::constant(2.0), reflux::constant_strength(by_volume(60), 20.0)}) {
                if (tower.whole() == 0 && returned.ratio() > 2.0) continue;
                still s;
                s.pot.power = 1500.0 * watt;
                s.tower = tower;
                s.head = head::total_condenser(returned);
                s.flow = flow;
                run_plan plan;
                plan.ends.push_back(condition::still_strength(by_volume(2)));
                plan.points = 5;
                EXPECT_EQ(raised([&] { static_cast<void>(distil(wash::of(charge), s, plan, mixture)); }), 0)
                    << tower.whole() << ' ' << returned.ratio() << ' ' << static_cast<int>(flow);
            }
        }
    }
    for (flow_model const flow : {flow_model::constant_molar_overflow, flow_model::enthalpy_balance}) {
        for (head const& top :
             {head::total_condenser(reflux::constant(2.0)).reflux_at(celsius(40)),
              head::total_condenser(reflux::of_take_off(10.0 * millilitre / minute)),
              head::partial_condenser(cooling_water{0.2 * litre / minute, celsius(15), celsius(60)})}) {
            still s;
            s.pot.power = 1500.0 * watt;
            s.tower = column::of_plates(3, 0.6);
            s.neck = neck::losing(1.0 * watt_per_kelvin);
            s.head = top;
            s.flow = flow;
            run_plan plan;
            plan.ends.push_back(condition::collected(1.0 * litre));
            plan.points = 5;
            plan.steps = {{condition::elapsed(20.0 * minute), std::nullopt, 1.4 * kilowatt}};
            EXPECT_EQ(raised([&] { static_cast<void>(distil(wash::of(charge), s, plan, mixture)); }), 0)
                << static_cast<int>(top.what()) << ' ' << static_cast<int>(flow);
        }
    }
    for (head const& top : {head::total_condenser(reflux::constant(2.0)).reflux_at(celsius(40)),
                            head::total_condenser(reflux::constant_strength(by_volume(80), 20.0)),
                            head::total_condenser(reflux::of_take_off(10.0 * millilitre / minute))}) {
        for (double const held : {0.0, 50.0}) {
            still s;
            s.pot.power = 1500.0 * watt;
            s.tower = column::of_plates(3, 0.6).holding(held * millilitre);
            s.neck = neck::losing(1.0 * watt_per_kelvin);
            s.head = top.holding(10.0 * millilitre);
            run_plan plan;
            plan.ends.push_back(condition::collected(1.0 * litre));
            plan.points = 5;
            plan.start = 10.0 * minute;
            EXPECT_EQ(raised([&] { static_cast<void>(distil(wash::of(charge), s, plan, mixture)); }), 0)
                << top.returned().ratio() << ' ' << held;
        }
    }
    EXPECT_EQ(raised([&] {
                  std::vector<past_run> const runs{
                      {wash::of(charge), 0.1 * litre, 2.0 * litre, by_volume(at_run_time(75.0))}};
                  static_cast<void>(
                      estimate_stages(runs, reflux::constant(2), neck::insulated(), 0.5, mixture));
              }),
              0);
    EXPECT_EQ(raised([] {
                  auto const points = parse_measured_points("0.02,0.2,95\n0.1,0.44,86.5\n0.3,0.575,81.5\n0.5,"
                                                            "0.65,79.8\n0.7,0.755,78.6\n0.85,0.85,78.2\n");
                  measured_equilibrium const measured(points, standard_atmosphere);
                  static_cast<void>(measured.check());
                  static_cast<void>(measured.vapour(by_moles(20)));
              }),
              0);
}

TEST_F(FloatingPointExceptions, NoneInUncertainties) {
    EXPECT_EQ(raised([] {
                  std::vector<input_quantity> const inputs{input_quantity::normal("a", "", 1.0, 0.3),
                                                           input_quantity::rectangular("b", "", 2.0, 0.1)};
                  auto const product = [](auto const& x) { return x[0] * x[1]; };
                  propagate(product, inputs).expanded_uncertainty(0.95);
                  static_cast<void>(monte_carlo(product, inputs, 1000).interval(0.95));
                  for (double const p : {1e-9, 0.01, 0.5, 0.975, 0.999999}) {
                      numeric::normal_quantile(at_run_time(p));
                      numeric::student_quantile(at_run_time(p), 3.0);
                  }
                  static_cast<void>(conformance_probability({39.7, 40.3}, {40.0, 0.1}));
                  static_cast<void>(acceptance_interval({39.7, 40.3}, 0.05, 0.95));
                  static_cast<void>(largest_uncertainty({39.7, 40.3}, 40.0, 0.95));
                  reading_series const alike{40.0, 3.0, at_run_time(0.0),
                                             deviation_known_from::these_readings, 0.1};
                  static_cast<void>(readings_needed({39.7, 40.3}, alike, 0.95));
                  static_cast<void>(risks({39.7, 40.3}, {39.7, 40.3}, 40.0, 0.1, 0.05));
              }),
              0);
}

TEST_F(FloatingPointExceptions, NoneInArrays) {
    std::vector<double> w(200, 0.4), t(200, 20.0), p(200, 101325.0), r(200);
    w[5] = 0.0;
    w[6] = 1.0;
    EXPECT_EQ(raised([&] {
                  arrays::density(w, t, r);
                  arrays::mass_fraction_from_density(r, t, w);
                  arrays::to<volume_fraction, mass_fraction>(w, r);
                  arrays::vapour(w, p, r);
                  arrays::bubble_temperature(w, p, r);
              }),
              0);
}

}  // namespace
}  // namespace aqueth
