// SPDX-License-Identifier: BSL-1.0
#include "uncertainty_program.hpp"

#include <algorithm>
#include <cmath>

namespace program {

double read_confidence(given const& g) {
    double const p = read_share(g, "a probability");
    return on_behalf_of(g, [&] { return require_range("input", "probability", p, "", 0.51, 0.999999); });
}

double read_strength_difference(given const& g, double least) {
    number_and_unit const q = read_quantity(g, g.text, {"a difference of strengths", "%vol or proof"});
    notation const n = read_notation(g, q.unit);
    if (n.kind != basis::volume && n.kind != basis::proof)
        refuse(g, "expected a difference of strengths: %vol or proof");
    double const percent = n.kind == basis::proof ? q.number / 2.0 : q.number;
    return on_behalf_of(g,
                        [&] { return require_range("input", "difference", percent, "% vol", least, 100.0); });
}

double read_temperature_difference(given const& g) {
    wanted const w{"a difference of temperatures", "K, C or F"};
    number_and_unit const q = read_quantity(g, g.text, w);
    char const scale = temperature_scale(squeezed(q.unit));
    if (!scale) refuse_unit(g, q.unit, w);
    double const kelvins_ = scale == 'f' ? q.number * 5.0 / 9.0 : q.number;
    return on_behalf_of(g, [&] { return require_range("input", "difference", kelvins_, "K", 0.0, 100.0); });
}

double read_millilitres(given const& g) {
    double const ml = in(read_as<units::volume>(g), millilitre);
    return on_behalf_of(g, [&] { return require_range("input", "volume", ml, "mL", 0.0, 1e9); });
}

int decimals_for(double uncertainty) {
    if (!(uncertainty > 0.0)) return 6;
    return std::clamp(1 - static_cast<int>(std::floor(std::log10(uncertainty * (1.0 + 1e-9)))), 0, 12);
}

std::string sized(double value, double uncertainty) {
    return fmt::format("{:.{}f}", value, decimals_for(uncertainty));
}

shown_unit unit_to_show(wording const& words, std::string_view unit) {
    struct {
        char const *metric, *us;
        double factor;
    } constexpr units_of_a_budget[] = {
        {"% vol", "US proof", 2.0},
        {"kg", "lb", in(kilogram, pound)},
        {"L", "US gal", in(litre, us_gallon)},
        {"mL", "US fl oz", in(millilitre, us_fluid_ounce)},
        {"°C", "°F", 1.8},
        {"K", "°F", 1.8},
        {"1/K", "1/°F", 1.0 / 1.8},
        {"kg/m3", "lb/US gal", in(kilogram_per_cubic_metre, pound / us_gallon)},
    };
    for (auto const& each : units_of_a_budget)
        if (unit == each.metric)
            return words.us ? shown_unit{each.us, each.factor} : shown_unit{each.metric, 1.0};
    return {"", 1.0};
}

double shown_value(wording const& words, std::string_view unit, double value) {
    if (words.us && unit == "% vol" && value >= 0.0 && value <= 100.0)
        return to<us_proof>(by_volume(value)).degrees();
    return value * unit_to_show(words, unit).factor;
}

doubt doubt_of(wording const& words, std::string_view unit, uncertainty_budget const& budget, double half,
               std::optional<coverage_interval> const& drawn) {
    double const most = unit == "% vol" ? 100.0 : unlimited;
    shown_unit const as = unit_to_show(words, unit);
    double const u = budget.standard_uncertainty * as.factor;
    auto const from_to = [&](double lower, double upper) {
        return fmt::format("{} to {} {}", sized(shown_value(words, unit, lower), u),
                           sized(shown_value(words, unit, upper), u), as.name);
    };
    coverage_interval const linear{budget.estimate - half, budget.estimate + half};
    if (linear.lower <= 0.0 && linear.upper >= most) {
        return {true, fmt::format("The interval covers all of {}: this measurement tells nothing.",
                                  from_to(0.0, most))};
    }
    for (coverage_interval const& each : {linear, drawn.value_or(linear)}) {
        if (each.lower >= 0.0 && each.upper <= most) continue;
        double const lower = (std::max)(0.0, each.lower), upper = (std::min)(most, each.upper);
        return {false, fmt::format("The errors reach impossible values; of the interval only {} is possible.",
                                   from_to(lower, upper))};
    }
    if (!drawn || !(half > 0.0)) return {};
    double const apart =
        (std::max)(std::abs(linear.lower - drawn->lower), std::abs(linear.upper - drawn->upper));
    if (apart <= 0.1 * half || apart <= numerical_tolerance(budget.standard_uncertainty, 1)) return {};
    return {false, fmt::format("Random draws give {} instead: where both differ, the draws hold.",
                               from_to(drawn->lower, drawn->upper))};
}

std::string drawn_in_words(double drawn, double budgeted, double factor) {
    if (!(drawn <= 10.0 * budgeted)) return "-";
    return sized(drawn * factor, budgeted * factor);
}

std::string percent(double p) {
    double const shown = 100.0 * p;
    if (shown > 99.99) return "more than 99.99 %";
    if (shown < 0.01) return "less than 0.01 %";
    return fmt::format("{:.{}f} %", shown, shown > 99.0 || shown < 1.0 ? 2 : 1);
}

}  // namespace program
