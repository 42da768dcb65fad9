// SPDX-License-Identifier: BSL-1.0
// How little one strength tells of a still, and which second run would tell more.
#include <aqueth/aqueth.hpp>
#include <aqueth/still/learning.hpp>

#include <cstdio>
#include <span>

using namespace aqueth;

namespace {

wash charge() { return wash::of(25.0 * litre, by_volume(11), plato(1.5), celsius(20)); }

/// what a still gives after 100 mL of foreshots, and how long it boils
struct outcome {
    double percent, hours;
};

outcome collect(double litres, still const& s, boiling_curve const& curve) {
    run_plan plan;
    plan.cuts = {{condition::collected(100.0 * millilitre), false}};
    plan.ends = {condition::collected((0.1 + litres) * litre)};
    auto const r = distil(charge(), s, plan, curve);
    return {r.fractions[1].product.strength().percent(), in(r.boiling_time, hour)};
}

}  // namespace

int main() {
    boiling_curve const curve(standard_atmosphere);
    // [one]
    past_run const run{charge(), 100.0 * millilitre, 1.8 * litre, by_volume(88)};
    double const ratios[] = {2.5, 3.0, 4.0, 6.0, 12.0, 50.0};
    std::printf("reflux  stages    1.8 L      0.4 L      3.2 L\n");
    for (still_candidate const& c : nearest_stages(std::span(&run, 1), std::span<double const>(ratios),
                                                   neck::condensing(0.05), 0.5, curve)) {
        still s{{2.0 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin}};
        s.tower = column::of_stages(c.estimate.stages);
        s.neck = neck::condensing(0.05);
        s.head = head::total_condenser(reflux::constant(c.reflux_ratio));
        auto const same = collect(1.8, s, curve);
        std::printf("%5.1f  %6.1f  %5.1f %% vol %5.1f %% vol %5.1f %% vol  %4.1f h for 1.8 L\n",
                    c.reflux_ratio, c.estimate.stages, same.percent, collect(0.4, s, curve).percent,
                    collect(3.2, s, curve).percent, same.hours);
    }
    // [one]
}
