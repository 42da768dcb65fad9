// SPDX-License-Identifier: BSL-1.0
// Whether a measurement shows that a label is kept, and what an inspection lets through in the long run.
#include <aqueth/labelling.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const& law = *find_strength_tolerance("eu-spirits");
    auto const permitted = permitted_strengths(by_volume(40.0), law);
    double const u = 0.09;  // standard uncertainty of the measured strength, % vol
    auto const accepted = acceptance_interval(permitted, u, 0.95);
    std::printf("permitted %.2f to %.2f, shown at 95 %% by %.2f to %.2f\n", permitted.lower, permitted.upper,
                accepted.lower, accepted.upper);
    for (double const measured : {40.05, 40.20, 40.50}) {
        auto const decision = decide(permitted, {measured, u}, 0.95);
        std::printf("measured %.2f: %5.1f %%, %s\n", measured,
                    100.0 * conformance_probability(permitted, {measured, u}),
                    decision == conformity_decision::conforms           ? "kept"
                    : decision == conformity_decision::does_not_conform ? "not kept"
                                                                        : "cannot tell");
    }
    double const needed = largest_uncertainty(permitted, 40.20, 0.95);
    std::printf("to tell at 40.20: %.3f %% vol, or %.0f readings that scatter by 0.15\n", needed,
                readings_needed(needed, 0.15, 0.03));
    auto const r = risks(permitted, accepted, 40.05, 0.15, u);
    std::printf("of lots at 40.05 +- 0.15: %.1f %% good, %.2f %% wrongly passed, %.1f %% wrongly held back\n",
                100.0 * r.conforming, 100.0 * r.consumer, 100.0 * r.producer);
    // [body]
}
