// SPDX-License-Identifier: BSL-1.0
// A spirit run in jars: their strengths, what the alcoholometer shows, where to cut.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    boiling_curve const curve(standard_atmosphere);
    auto const low_wines = wash::of(20.0 * litre, by_volume(28.0), plato(0.0), celsius(20.0));
    still pot{{2.0 * kilowatt}};
    pot.neck = neck::condensing(0.1);
    run_plan plan;
    plan.ends = {condition::distillate_strength(by_volume(10.0))};
    plan.spout_temperature = celsius(24.0);
    jar_plan const into{500.0 * millilitre, 200.0 * millilitre};

    auto const filled = fill_jars(low_wines, pot, plan, into, curve);
    for (std::size_t k = 0; k < filled.jars.size(); k += 4) {
        jar const& each = filled.jars[k];
        std::printf("jar %2zu   %.1f %% vol, shows %.1f at 24 °C; all so far %.1f %% vol\n", k + 1,
                    each.content.strength().percent(), each.reading->percent(),
                    each.so_far.strength().percent());
    }
    auto const cut = cut_for_average(low_wines, pot, plan, into, filled, by_volume(68.0), 1, curve);
    std::printf("68 %% vol: %d jars and %.0f mL of the next, %.2f L\n", cut.full, in(cut.part, millilitre),
                in(cut.product.volume(celsius(20.0)), litre));
    // [body]
}
