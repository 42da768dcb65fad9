// SPDX-License-Identifier: BSL-1.0
// What common practice tells of a small electric still, and how little that says about the still.
#include <aqueth/aqueth.hpp>

#include <algorithm>
#include <cstdio>

using namespace aqueth;

namespace {

/// 4 L of sugar wash, 500 mL collected
distillation run(double strength, double watts, double loss, double stages, double ratio,
                 boiling_curve const& curve) {
    still s{{watts * watt, 1000.0 * joule_per_kelvin, loss * watt_per_kelvin}};
    s.tower = column::of_stages(stages);
    s.returned = reflux::constant(ratio);
    run_plan plan;
    plan.ends = {condition::collected(500.0 * millilitre)};
    return distil(wash::of(4.0 * litre, by_volume(strength), plato(0.5), celsius(20)), s, plan, curve);
}

struct range {
    double least = 1e9, most = 0.0;
    void add(double value) {
        least = (std::min)(least, value);
        most = (std::max)(most, value);
    }
};

}  // namespace

int main() {
    boiling_curve const curve(standard_atmosphere);
    //! [one]
    auto const r = run(13.0, 350.0, 1.0, 3.0, 8.0, curve);
    std::printf("13 %% vol, 350 W, loss 1 W/K, 3 stages, reflux 8:\n");
    std::printf("  warming %.0f min, boiling %.1f h, 500 mL at %.1f %% vol\n\n",
                in(r.warming.duration, minute), in(r.boiling_time, hour),
                r.fractions[0].product.strength().percent());
    //! [one]

    int all = 0, fit = 0;
    range strength, power, loss, stages, ratio;
    for (double q = 12.0; q <= 15.0; q += 1.0) {
        for (double w = 300.0; w <= 500.0; w += 50.0) {
            for (double k : {0.5, 1.0, 2.0}) {
                for (double n : {1.0, 2.0, 3.0, 4.0, 6.0}) {
                    for (double reflux_ratio : {1.0, 4.0, 6.0, 8.0, 10.0}) {
                        auto const each = run(q, w, k, n, reflux_ratio, curve);
                        double const minutes = in(each.warming.duration, minute);
                        double const hours = in(each.boiling_time, hour);
                        double const percent = each.fractions[0].product.strength().percent();
                        ++all;
                        if (minutes < 60.0 || minutes > 90.0 || hours < 3.5 || hours > 4.5 ||
                            percent < 89.0 || percent > 91.0)
                            continue;
                        ++fit;
                        strength.add(q), power.add(w), loss.add(k), stages.add(n), ratio.add(reflux_ratio);
                    }
                }
            }
        }
    }
    std::printf(
        "%d of %d stills and washes warm in 60 to 90 min, boil for 3.5 to 4.5 h and give 89 to 91 %% vol:\n",
        fit, all);
    std::printf("  wash %g to %g %% vol, %g to %g W, loss %g to %g W/K, %g to %g stages, reflux %g to %g\n",
                strength.least, strength.most, power.least, power.most, loss.least, loss.most, stages.least,
                stages.most, ratio.least, ratio.most);
}
