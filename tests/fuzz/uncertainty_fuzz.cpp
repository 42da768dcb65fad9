// SPDX-License-Identifier: BSL-1.0
// Budgets, Monte Carlo, conformity and labels.
#include "hostile.hpp"

#include <aqueth/aqueth.hpp>

#include <array>
#include <span>
#include <vector>

using namespace aqueth;
using namespace aqueth::hostile;

namespace {

std::optional<input_quantity> any_input(bytes& in, double lower, double upper) {
    double const estimate = in.number(lower, upper), width = in.number(0.0, 1.0);
    double const freedom = in.choice(2) ? unlimited : in.number(1.0, 100.0);
    switch (in.choice(6)) {
    case 0: return unless_refused([&] { return input_quantity::normal("a", "", estimate, width, freedom); });
    case 1: return unless_refused([&] { return input_quantity::expanded("a", "", estimate, width, 2.0); });
    case 2:
        return unless_refused([&] { return input_quantity::rectangular("a", "", estimate, width, freedom); });
    case 3: return unless_refused([&] { return input_quantity::triangular("a", "", estimate, width); });
    case 4: return unless_refused([&] { return input_quantity::arcsine("a", "", estimate, width); });
    default:
        std::array<double, 3> const readings{estimate, in.number(lower, upper), in.number(lower, upper)};
        return unless_refused([&] { return input_quantity::repeated("a", "", readings); });
    }
}

struct dilution {
    template <class T>
    T operator()(std::span<T const> x) const {
        return measurement_model::diluted(T(x[0]), T(x[1]), T(x[2]));
    }
};

void require_budget(uncertainty_budget const& b, double probability) {
    HOSTILE_REQUIRE(std::isfinite(b.estimate));
    HOSTILE_REQUIRE(b.standard_uncertainty >= 0.0);
    if (auto const k = unless_refused([&] { return b.coverage_factor(probability); }))
        HOSTILE_REQUIRE(*k >= 0.0);
}

void budgets(bytes& in) {
    std::vector<input_quantity> inputs;
    for (int k = 0; k < 3; ++k) {
        auto const each = any_input(in, k == 1 ? 0.0 : 1.0, k == 1 ? 1.0 : 10.0);
        if (!each) return;
        inputs.push_back(*each);
    }
    std::vector<correlation_coefficient> related;
    for (int n = in.choice(3); n > 0; --n) {
        auto const first = static_cast<std::size_t>(in.choice(4));
        auto const second = static_cast<std::size_t>(in.choice(4));
        related.push_back({first, second, in.number(-1.0, 1.0)});
    }
    double const probability = in.number(0.5, 0.999);
    auto const exact = unless_refused([&] { return propagate(dilution{}, inputs, related); });
    if (exact) require_budget(*exact, probability);
    auto const by_differences =
        unless_refused([&] { return propagate_by_differences(dilution{}, inputs, related); });
    if (by_differences) require_budget(*by_differences, probability);
    auto const drawn = unless_refused([&] { return monte_carlo(dilution{}, inputs, 200, related, 7); });
    if (!drawn) return;
    if (auto const i = unless_refused([&] { return drawn->interval(probability); }))
        HOSTILE_REQUIRE(i->lower <= i->upper);
    if (exact) unless_refused([&] { return validate(*exact, *drawn, probability); });
}

void decisions(bytes& in) {
    tolerance_interval const tolerance{in.number(-1.0, 1.0), in.number(0.0, 2.0)};
    measurement_result const measured{in.number(-1.0, 2.0), in.number(0.0, 1.0),
                                      in.choice(2) ? unlimited : in.number(1.0, 50.0)};
    double const confidence = in.number(0.51, 0.999999);
    auto const p = unless_refused([&] { return conformance_probability(tolerance, measured); });
    if (p) HOSTILE_WITHIN(*p, 0.0, 1.0);
    auto const inside = unless_refused([&] {
        return acceptance_interval(tolerance, measured.standard_uncertainty, confidence,
                                   measured.degrees_of_freedom);
    });
    if (inside) {
        HOSTILE_REQUIRE(inside->lower >= tolerance.lower);
        HOSTILE_REQUIRE(inside->upper <= tolerance.upper);
    }
    unless_refused([&] { return decide(tolerance, measured, confidence); });
    auto const most = unless_refused([&] {
        return largest_uncertainty(tolerance, measured.estimate, confidence, measured.degrees_of_freedom);
    });
    if (most) HOSTILE_REQUIRE(*most > 0.0 && std::isfinite(*most));
    auto const n = unless_refused(
        [&] { return readings_needed(in.number(0.0, 1.0), in.number(0.0, 1.0), in.number(0.0, 1.0)); });
    if (n) HOSTILE_WITHIN(*n, 1.0, 1e6);
    reading_series const series{measured.estimate, std::floor(in.number(1.0, 50.0)), in.number(0.0, 1.0),
                                in.choice(2) ? deviation_known_from::long_experience
                                             : deviation_known_from::these_readings,
                                in.number(0.0, 1.0)};
    auto const decision = unless_refused([&] { return decide(tolerance, result_of(series), confidence); });
    auto const more = unless_refused([&] { return readings_needed(tolerance, series, confidence); });
    if (decision && more)
        HOSTILE_REQUIRE((*decision == conformity_decision::conforms) == (*more <= series.count));
    if (in.choice(8) == 0) {  // slow
        double const u = in.number(0.01, 1.0);
        auto const r = unless_refused(
            [&] { return risks(tolerance, tolerance, measured.estimate, measured.standard_uncertainty, u); });
        if (r) HOSTILE_WITHIN(r->consumer + r->producer, -1e-9, 1.0 + 1e-6);
    }
}

void labels(bytes& in) {
    double const ml = in.number(0.0, 2e4), percent = in.number(0.0, 100.0);
    if (auto const f = unless_refused([&] { return eu_fill_limits(ml * millilitre); }))
        HOSTILE_REQUIRE(f->least <= f->single.lower && f->single.lower < ml);
    if (auto const f = unless_refused([&] { return us_fill_limits(ml * millilitre); }))
        HOSTILE_REQUIRE(f->least <= ml);
    for (strength_tolerance const& each : strength_tolerances) {
        auto const t = unless_refused([&] { return permitted_strengths(by_volume(percent), each); });
        if (t) HOSTILE_WITHIN(by_volume(percent).percent(), t->lower, t->upper);
    }
    unless_refused(
        [&] { return balance_error(in.number(0.0, 10.0) * kilogram, in.number(1e-4, 1e-1) * kilogram); });
    unless_refused([&] { return temperature_scale_error(celsius(in.number(-20.0, 40.0))); });
    unless_refused([&] { return reading_error("stem", "% vol", in.number(0.0, 1.0)); });
    unless_refused([&] { return numerical_tolerance(in.number(0.0, 1.0), in.choice(6)); });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    bytes in(data, size);
    switch (in.choice(3)) {
    case 0: budgets(in); break;
    case 1: decisions(in); break;
    default: labels(in); break;
    }
    return 0;
}
