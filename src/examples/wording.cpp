// SPDX-License-Identifier: BSL-1.0
#include "wording.hpp"

namespace program {

std::string number(double value, int significant) {
    if (std::abs(value) < 1e-12) return "0";  // rounding of a difference
    // Half a unit of the last digit first, so that 99.9999 gets the digits of the 100.00 it is printed as.
    double const size = std::abs(value) * (1.0 + 0.5 * std::pow(10.0, -significant));
    int const decimals = significant - 1 - static_cast<int>(std::floor(std::log10(size)));
    return fmt::format("{:.{}f}", value, std::clamp(decimals, 0, 15));
}

json to_json(parcel const& p) {
    return {{"mass_kg", in(p.mass(), kilogram)},
            {"volume_L", in(p.volume(), litre)},
            {"temperature_C", p.temperature().celsius()},
            {"strength_percent_vol_20C", p.strength().percent()},
            {"strength_percent_mass", p.composition().percent()},
            {"pure_alcohol_L_20C", in(p.pure_alcohol(), litre)},
            {"proof_gallons", p.proof_gallons()}};
}

void say_blend(page& text, wording const& in_words, blend const& b) {
    text.row("product", "{}", in_words.liquid(b.product));
    text.row("pure alcohol", "{}", in_words.alcohol(b.product));
    text.row("sum of the parts", "{} at {}", in_words.volume(b.sum_of_volumes),
             in_words.temperature(b.product.temperature()));
    text.row("contraction", "{} ({:.2f} %)", in_words.volume(b.contraction), b.contraction_percent());
}

json to_json(blend const& b) {
    return {{"product", to_json(b.product)},
            {"sum_of_volumes_L", in(b.sum_of_volumes, litre)},
            {"contraction_L", in(b.contraction, litre)},
            {"contraction_percent", b.contraction_percent()}};
}

std::optional<parcel> fresh_mixture(std::span<parcel const> parts) {
    try {
        return mix(parts).product;
    } catch (range_error const&) {
        return std::nullopt;
    }
}

void say_fresh(page& text, json& data, wording const& in_words, std::optional<parcel> const& fresh,
               units::temperature later) {
    if (fresh) {
        text.row("comes out", "at {}, {}, if no heat is lost{}", in_words.rounded(fresh->temperature()),
                 in_words.volume(fresh->volume()),
                 fresh->temperature() > later + kelvins ? ": let it cool before you read it" : "");
    } else {
        text.row("comes out",
                 "nobody knows how warm: a part or the mixture is below 0 °C, or it is above 40 °C");
    }
    data["fresh_mixture"] = fresh ? to_json(*fresh) : json();
}

}  // namespace program
