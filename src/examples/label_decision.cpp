// SPDX-License-Identifier: BSL-1.0
// Whether a measurement shows that a label is kept, and what an inspection lets through in the long run.
#include <aqueth/metrology/labelling.hpp>

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
    // Three readings, which say themselves how much one scatters, and a systematic uncertainty of 0.03 % vol.
    reading_series const readings{40.17, 3.0, 0.15, deviation_known_from::these_readings, 0.03};
    auto const result = result_of(readings);
    std::printf("three readings: %.3f +- %.3f, %.1f degrees of freedom: %s; enough: %.0f readings\n",
                result.estimate, result.standard_uncertainty, result.degrees_of_freedom,
                decide(permitted, result, 0.95) == conformity_decision::conforms ? "kept" : "cannot tell",
                readings_needed(permitted, readings, 0.95));
    auto const r = risks(permitted, accepted, 40.05, 0.15, u);
    std::printf("of lots at 40.05 +- 0.15: %.1f %% good, %.2f %% wrongly passed, %.1f %% wrongly held back\n",
                100.0 * r.conforming, 100.0 * r.consumer, 100.0 * r.producer);
    // [body]
}
