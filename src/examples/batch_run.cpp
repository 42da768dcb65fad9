// SPDX-License-Identifier: BSL-1.0
// A run of the Quillbeck still: 25 L of wash under four plates, foreshots, hearts and tails.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const charge = wash::of(25.0 * litre, by_volume(11.0), plato(1.5), celsius(20.0));

    still quillbeck{{2.0 * kilowatt}};
    quillbeck.tower = column::of_plates(4, 0.6);
    quillbeck.head = head::total_condenser(reflux::constant(3.0));

    run_plan plan;
    plan.cuts = {{condition::collected(100.0 * millilitre), false},
                 {condition::distillate_strength(by_volume(80.0))}};
    plan.ends = {condition::distillate_strength(by_volume(20.0))};

    auto const run = distil(charge, quillbeck, plan, boiling_curve(standard_atmosphere));
    char const* const names[] = {"foreshots", "hearts", "tails"};
    for (std::size_t k = 0; k < run.fractions.size(); ++k) {
        auto const& product = run.fractions[k].product;
        std::printf("%-9s  %6.1f mL of %.1f %% vol\n", names[k],
                    in(product.volume(celsius(20.0)), millilitre), product.strength().percent());
    }
    std::printf("warming    %.0f min, then boiling %.0f min\n", in(run.warming.duration, minute),
                in(run.boiling_time, minute));
    // [body]
}
