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

std::string percent(double p) {
    double const shown = 100.0 * p;
    if (shown > 99.99) return "more than 99.99 %";
    if (shown < 0.01) return "less than 0.01 %";
    return fmt::format("{:.{}f} %", shown, shown > 99.0 || shown < 1.0 ? 2 : 1);
}

}  // namespace program
