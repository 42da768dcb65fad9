// SPDX-License-Identifier: BSL-1.0
// What the doubt about the vapour is worth in a run: the same run with vapours one standard uncertainty
// weaker and stronger.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    // [body]
    auto const p = 93.8 * kilopascal;
    auto const charge = wash::of(20.0 * litre, by_volume(11.0), plato(0.0), celsius(20.0));
    still const pot{{1.5 * kilowatt}};
    run_plan plan;
    plan.cuts = {{condition::distillate_strength(by_volume(50.0))}};
    plan.ends = {condition::distillate_strength(by_volume(5.0))};
    for (double const shift : {-1.0, 0.0, 1.0}) {
        boiling_curve const curve(curve_with_vapour_shifted(p, shift));
        auto const run = distil(charge, pot, plan, curve);
        auto const& hearts = run.fractions[0].product;
        std::printf(
            "%+.0f standard uncertainty: first vapour %.1f %% vol; to 50 %% vol %.2f L of %.1f %% vol\n",
            shift,
            to<volume_fraction>(curve.equilibrium().vapour(to<mole_fraction>(by_volume(11.0)))).percent(),
            in(hearts.volume(celsius(20.0)), litre), hearts.strength().percent());
    }
    // [body]
}
