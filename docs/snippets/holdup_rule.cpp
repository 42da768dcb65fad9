// SPDX-License-Identifier: BSL-1.0
// When a run without holdup is good enough: the alcohol that the column holds, beside that of the hearts.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    boiling_curve const curve(standard_atmosphere);
    run_plan plan;
    plan.cuts = {{condition::distillate_strength(by_volume(80.0))}};
    plan.ends = {condition::distillate_strength(by_volume(20.0))};
    std::printf("charge     on a plate   alcohol held over that of the hearts   more alcohol in hearts\n");
    for (double const charge : {5.0, 11.0, 28.0}) {
        auto const hearts = [&](double millilitres) {
            still s{{1.5 * kilowatt}};
            s.tower = column::of_plates(4, 0.6).holding(millilitres * millilitre);
            s.head = head::total_condenser(reflux::constant(3.0));
            auto const wash_in = wash::of(25.0 * litre, by_volume(charge), plato(0.0), celsius(20.0));
            return distil(wash_in, s, plan, curve).fractions[0].product;
        };
        auto const without = hearts(0.0);
        for (double const millilitres : {5.0, 20.0, 60.0}) {
            double const held = 4.0 * millilitres * without.strength().value();  // mL of pure alcohol
            std::printf("%2.0f %% vol  %7.0f mL   %15.1f %%  %34.1f %%\n", charge, millilitres,
                        100.0 * held / in(without.pure_alcohol(), millilitre),
                        100.0 * (in(hearts(millilitres).pure_alcohol(), without.pure_alcohol()) - 1.0));
        }
    }
}
