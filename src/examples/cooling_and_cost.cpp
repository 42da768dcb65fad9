// SPDX-License-Identifier: BSL-1.0
// Cooling water, the load of the column, and what a run costs.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    boiling_curve const curve(standard_atmosphere);
    auto const charge = wash::of(25.0 * litre, by_volume(11.0), plato(1.5), celsius(20.0));
    still quillbeck{{2.0 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin}};
    quillbeck.tower = column::of_plates(4, 0.6);
    quillbeck.head = head::total_condenser(reflux::constant(3.0));

    run_plan plan;
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(80.0))}};
    plan.ends = {condition::distillate_strength(by_volume(20.0))};
    auto const run = distil(charge, quillbeck, plan, curve);
    run_point const start = run.fractions.front().begin;

    cooling_temperatures const water{celsius(12.0), celsius(50.0), celsius(20.0)};
    auto const demand = demand_of_condenser(start, quillbeck.head, water, curve);
    auto const whole = demand_of_condenser(run, water);
    std::printf("condenser      %.0f W at the start, UA %.0f W/K\n", in(demand.heat(), watt),
                in(demand.ua(), watt_per_kelvin));
    std::printf("water          %.2f L a minute, %.0f L in all\n", in(demand.water * minute, litre),
                in(whole.water, litre));
    auto const load = load_at_top(start, 54e-3 * metre, curve);
    std::printf("column 54 mm   %.2f m/s, F-factor %.2f Pa^0.5\n", load.velocity.value(), load.f_factor);

    auto const hearts = run.fractions[1].product.volume(celsius(20.0));
    auto const cost = cost_of(run.energy(), heat_source::electricity(0.30), whole.water, 4.0);
    std::printf("to buy         %.2f kWh and water for %.2f, %.2f per litre of hearts\n",
                in(cost.bought, kilowatt_hour), cost.money(), cost.money_per_litre(hearts));
    auto const preheated = heat_to_boil(charge, quillbeck.pot, standard_atmosphere, celsius(70.0));
    std::printf("to boiling     %.0f min, or %.0f min if it is filled in at 70 °C\n",
                in(run.warming.duration, minute), in(preheated.duration, minute));
    // [body]
}
