// SPDX-License-Identifier: BSL-1.0
// What the neck of a pot still does: its condensate is the only reflux.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    boiling_curve const curve(standard_atmosphere);
    auto const charge = wash::of(25.0 * litre, by_volume(11.0), plato(0.0), celsius(20.0));
    run_plan plan;
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(50.0))}};
    plan.ends = {condition::distillate_strength(by_volume(10.0))};
    std::printf("condenses in the neck   first vapour   above 50 %% vol\n");
    for (double const share : {0.0, 0.05, 0.1, 0.2}) {
        still pot{{1.5 * kilowatt}};
        pot.neck = neck::condensing(share);
        auto const run = distil(charge, pot, plan, curve);
        auto const& hearts = run.fractions[1].product;
        std::printf("%17.0f %%   %8.1f %% vol   %.3f L at %.1f %% vol\n", 100.0 * share,
                    to<volume_fraction>(run.fractions[0].begin.distillate).percent(),
                    in(hearts.volume(celsius(20.0)), litre), hearts.strength().percent());
    }
}
