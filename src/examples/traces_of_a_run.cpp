// SPDX-License-Identifier: BSL-1.0
// Methanol and isoamyl alcohol of the Quillbeck still: how much comes in which fraction.
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

    auto const g_per_hl = 0.01 * kilogram_per_cubic_metre;
    auto const r =
        distil_with_traces(charge,
                           {trace_amount::of_alcohol(trace::methanol, charge, 50.0 * g_per_hl),
                            trace_amount::of_alcohol(trace::methyl_3_butanol_1, charge, 150.0 * g_per_hl)},
                           quillbeck, plan, boiling_curve(standard_atmosphere));
    for (trace_course const& t : r.traces) {
        std::printf("%s, g/hL of pure alcohol\n", name_of(t.charged.which));
        for (std::size_t k = 0; k < t.fractions.size(); ++k) {
            auto const held = per_pure_alcohol(t.fractions[k], r.run.fractions[k].product);
            std::printf("  fraction %zu  %5.1f (%.1f to %.1f)\n", k + 1, in(held.expected, g_per_hl),
                        in(held.lower, g_per_hl), in(held.upper, g_per_hl));
        }
    }
    // [body]
}
