// SPDX-License-Identifier: BSL-1.0
// One run of the Quillbeck still, with and without each thing that a small still really does.
#include <aqueth/aqueth.hpp>

#include <algorithm>
#include <cstdio>
#include <cstring>

using namespace aqueth;

namespace {

/// a run: what changes from line to line
struct trial {
    still apparatus;
    run_plan plan;
    double extract = 0.0;       // °P
    double vapour_shift = 0.0;  // standard uncertainties
};

/// the column as simple as it can be: 4 plates, reflux 3, nothing held, nothing lost
trial simplest() {
    trial t{{{1.5 * kilowatt, 4000.0 * joule_per_kelvin}}, {}};
    t.apparatus.tower = column::of_plates(4, 0.6);
    t.apparatus.head = head::total_condenser(reflux::constant(3.0));
    t.plan.cuts = {{condition::collected(100.0 * millilitre), false},
                   {condition::distillate_strength(by_volume(80.0))}};
    t.plan.ends = {condition::distillate_strength(by_volume(20.0))};
    return t;
}

distillation run(trial const& t) {
    auto const charge = wash::of(25.0 * litre, by_volume(11.0), plato(t.extract), celsius(20.0));
    boiling_curve const curve(curve_with_vapour_shifted(standard_atmosphere, t.vapour_shift));
    return distil(charge, t.apparatus, t.plan, curve);
}

void line(char const* name, trial const& t) {
    static double const plain = run(simplest()).fractions[1].product.ethanol().value();
    auto const r = run(t);
    auto const& hearts = r.fractions[1].product;
    auto const marks = std::count(name, name + std::strlen(name), '\xc2');  // ° is two bytes
    std::printf("%-*s %7.0f %7.1f %+8.1f %10.1f %8.1f\n", 42 + static_cast<int>(marks), name,
                in(hearts.volume(celsius(20.0)), millilitre), hearts.strength().percent(),
                100.0 * (hearts.ethanol().value() / plain - 1.0), r.fractions[0].product.strength().percent(),
                in(r.boiling_time, hour));
}

template <class Change>
void with(char const* name, Change const& change) {
    trial t = simplest();
    change(t);
    line(name, t);
}

void hold(trial& t, double plate, double condenser) {
    t.apparatus.tower = t.apparatus.tower.holding(plate * millilitre);
    t.apparatus.head = t.apparatus.head.holding(condenser * millilitre);
}
void total_reflux(trial& t) { t.plan.start = 30.0 * minute; }
void lose(trial& t) { t.apparatus.pot.loss = 3.0 * watt_per_kelvin; }
void cold_reflux(trial& t) { t.apparatus.head = t.apparatus.head.reflux_at(celsius(40.0)); }

}  // namespace

int main() {
    std::printf("%-42s %7s %7s %8s %10s %8s\n", "", "hearts", "", "alcohol", "foreshots", "boiling");
    std::printf("%-42s %7s %7s %8s %10s %8s\n", "", "mL", "% vol", "%", "% vol", "h");
    with("4 plates, reflux 3, nothing else", [](trial&) {});
    with("pot loses 3 W/K", lose);
    with("flows by enthalpy", [](trial& t) { t.apparatus.flow = flow_model::enthalpy_balance; });
    with("neck condenses 5 %", [](trial& t) { t.apparatus.neck = neck::condensing(0.05); });
    with("neck condenses 20 %", [](trial& t) { t.apparatus.neck = neck::condensing(0.2); });
    with("neck loses 2 W/K", [](trial& t) { t.apparatus.neck = neck::losing(2.0 * watt_per_kelvin); });
    with("partial condenser of 75 % instead",
         [](trial& t) { t.apparatus.head = head::partial_condenser(0.75); });
    with("reflux comes back at 40 °C", cold_reflux);
    with("10 mL on a plate, 5 mL in the condenser", [](trial& t) { hold(t, 10.0, 5.0); });
    with("60 mL on a plate, 10 mL in the condenser", [](trial& t) { hold(t, 60.0, 10.0); });
    with("120 mL on a plate, 20 mL in the condenser", [](trial& t) { hold(t, 120.0, 20.0); });
    with("the same after 30 min at total reflux", [](trial& t) {
        hold(t, 120.0, 20.0);
        total_reflux(t);
    });
    with("extract of 5 °P, boiling point only", [](trial& t) { t.extract = 5.0; });
    with("vapour weaker by a standard uncertainty", [](trial& t) { t.vapour_shift = -1.0; });
    with("vapour stronger by a standard uncertainty", [](trial& t) { t.vapour_shift = 1.0; });
    with("all of it, as the still stands", [](trial& t) {
        hold(t, 60.0, 10.0);
        total_reflux(t);
        lose(t);
        cold_reflux(t);
        t.apparatus.neck = neck::condensing(0.05);
    });
}
