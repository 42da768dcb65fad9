// SPDX-License-Identifier: BSL-1.0
// The mixture of several lots, or the amount of each lot that gives a wanted strength.
#include "program.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace {

using namespace program;

about const who{
    "blend_lots",
    topic::to_strength,
    "How much of each lot gives a blend?",
    "Mixes lots and computes the product; with --target, how much of each lot gives that strength.",
    "The Quillbeck teaching stillhouse has three lots and wants 5 L at 50 % vol, all of the third in it:\n"
    "  $ aqueth blend_lots --lot '3.2 L, 62 %vol, 18 C' --lot '4 L, 41.5 %vol, 18 C' \\\n"
    "        --lot '0.5 kg, 55 %vol, 20 C, at least 0.5 kg' --target '50 %vol' --volume '5 L'\n"
    "  Lot 1: take 1.537 kg by the balance, or 1.698 L at 18 °C (53.1 % of the lot; 62.00 % vol)",
    {correlation::oiml_r22::cited, correlation::air_buoyancy::cited, correlation::freezing_point::cited}};

/// Reads "3.2 L, 62 %vol, 18 C" or "3.2 L, 62 %vol, 18 C, at least 1 L".
lot read_lot(given const& g) {
    std::vector<given> parts;
    std::string_view rest = g.text;
    for (bool more = true; more;) {
        auto const end = end_of_part(rest, ",;");
        more = end != std::string_view::npos;
        parts.push_back({g.name, std::string(trimmed(rest.substr(0, end))), true});
        if (more) rest.remove_prefix(end + 1);
    }
    if (parts.size() < 3 || parts.size() > 4) {
        refuse(g, "expected amount, strength, temperature and, if wanted, a minimum amount: "
                  "'3.2 L, 62 %vol, 18 C, at least 1 L'");
    }
    mass_fraction const w = composition(read_strength(parts[1]));
    lot result{make_parcel(read_amount(parts[0]), w, parts[2])};
    if (parts.size() == 4) {
        std::string_view const limit = parts[3].text;
        if (!limit.starts_with("at least ")) refuse(parts[3], "expected 'at least' and an amount");
        result.at_least = make_parcel(read_amount(parts[3], limit.substr(9)), w, parts[2]).mass();
        units::mass const all = result.available.mass();
        if (result.at_least > all * (1.0 + 1e-12)) refuse(parts[3], "the lot has " + parts[0].text);
        result.at_least = (std::min)(result.at_least, all);  // but for rounding: litres and kilograms
    }
    return result;
}

/// Why lots alone do not give a blend that they give with water.
template <strength_basis Target>
char const* why_water_helps(std::vector<lot> const& lots, Target target, units::temperature t) {
    try {
        static_cast<void>(blend_to_strength(lots, target, t));
        return "too little";
    } catch (refusal const& e) {
        return e.value() < e.lower() ? "too strong" : "too little";
    }
}

/// The range that the lots reach with water, from the refusals without and with it.
template <strength_basis Target>
[[noreturn]] void refuse_blend(refusal const& alone, refusal const& with_water, std::vector<lot> const& lots,
                               Target target, units::temperature of_water, units::temperature t) {
    auto const in_range = [](refusal const& e, double lower, double upper, std::string const& reason) {
        raise_error(
            refusal(e.property(), {e.code(), e.argument()}, e.value(), e.unit(), lower, upper, reason));
    };
    if (with_water.code() == argument::volume_wanted) {
        // The ethanol would do for the volume; the lots must also be strong enough.
        double const most = [&] {
            try {
                return in(blend_with_water(lots, target, of_water, t).product.volume(), litre);
            } catch (refusal const&) {
                return in(blend_to_strength(lots, target, t).product.volume(), litre);
            }
        }();
        in_range(with_water, with_water.lower(), (std::min)(with_water.upper(), most),
                 "what the lots and water reach within the limits of the lots");
    }
    if (with_water.code() == argument::target_strength && alone.code() == argument::target_strength)
        in_range(alone, with_water.lower(), alone.upper(),
                 alone.reason() == name_of(limit::reach_of_the_lots_at_this_volume)
                     ? "what the lots and water reach at this volume"
                     : "what the lots and water reach within the limits of the lots");
    raise_error(with_water);
}

void run(session& s) {
    auto const& given_lots =
        s.repeated("--lot", "LOT", "'amount, strength, temperature[, at least amount]'; once for each lot");
    given const& target =
        s.option("--target", "STRENGTH", "strength wanted; without it all lots are mixed whole");
    given const& volume =
        s.option("--volume", "VOLUME", "with --target: volume wanted (default: as much as possible)");
    given const& mixture_at = s.option("--mixture-temperature", "TEMP",
                                       "temperature at which the product is measured", "20 C", "60 F");
    s.carry_on({{given_lots, "--lot", carried::whole_lot}});
    given const& water_at =
        s.option("--water-temperature", "TEMP",
                 "temperature of water, if the lots are too strong or too little", "20 C", "60 F");
    s.offer_us_units();
    s.offer_csv();
    s.parse();
    if (volume.present && !target.present) throw bad_input("--volume needs --target");

    std::vector<lot> lots;
    std::vector<parcel> all;
    for (given each : given_lots) {
        each.name += fmt::format(" number {}", lots.size() + 1);
        lots.push_back(read_lot(each));
        all.push_back(lots.back().available);
        if (lots.back().at_least > units::mass() && !target.present)
            refuse(each, "'at least' needs --target");
    }
    units::temperature const t = read_any_temperature(mixture_at);
    std::string why_water;  // empty if the lots do without
    auto const reach = [&](auto const& strength) -> lot_blend {
        std::optional<units::volume> wanted;
        if (volume.present) wanted = read_volume(volume);
        try {
            return blend_to_strength(lots, strength, t, wanted);
        } catch (refusal const& alone) {
            if (alone.code() != argument::target_strength && alone.code() != argument::volume_wanted) throw;
            units::temperature const of_water = read_water_temperature(water_at);
            try {
                lot_blend const result = blend_with_water(lots, strength, of_water, t, wanted);
                why_water = why_water_helps(lots, strength, t);
                return result;
            } catch (refusal const& with_water) {
                refuse_blend(alone, with_water, lots, strength, of_water, t);
            }
        }
    };
    lot_blend const plan = on_behalf_of(
        {{argument::temperature, mixture_at},
         {argument::target_strength, target},
         {argument::volume_wanted, volume}},
        [&] {
            return target.present ? std::visit(reach, read_strength(target)) : lot_blend{mix(all, t), all};
        });

    page text;
    json data = {{"lots", json::array()}};
    std::string csv =
        "lot,mass_kg,balance_indication_kg,volume_L,temperature_C,strength_percent_vol_20C,share_of_lot\n";
    wording const words = s.words();
    if (!why_water.empty()) {
        text.say("The lots alone are {}. With water the blend has {}:", why_water,
                 words.strength(plan.product.composition()));
    }
    for (std::size_t k = 0; k < lots.size(); ++k) {
        parcel const& part = plan.parts[k];
        double const share = in(part.mass(), lots[k].available.mass());
        text.say("Lot {}: take {} by the balance, or {} at {} ({:.1f} % of the lot; {})", k + 1,
                 words.weight(part), words.volume(part.volume()), words.temperature(part.temperature()),
                 100.0 * share, words.strength(part.composition()));
        json row{{"name", fmt::format("lot {}", k + 1)}};
        row.update(to_json(part));
        row["share_of_lot"] = share;
        data["lots"].push_back(row);
        csv += fmt::format("{},{:.10g},{:.10g},{:.10g},{:.10g},{:.10g},{:.10g}\n", k + 1,
                           in(part.mass(), kilogram), in(balance_indication_of(part), kilogram),
                           in(part.volume(), litre), part.temperature().celsius(), part.strength().percent(),
                           share);
    }
    data["water"] = nullptr;
    if (!why_water.empty()) {
        parcel const& water = plan.parts.back();
        text.say("Water: add {} by the balance, or {} at {}", words.weight(water),
                 words.volume(water.volume()), words.temperature(water.temperature()));
        data["water"] = to_json(water);
        csv += fmt::format("water,{:.10g},{:.10g},{:.10g},{:.10g},0,\n", in(water.mass(), kilogram),
                           in(balance_indication_of(water), kilogram), in(water.volume(), litre),
                           water.temperature().celsius());
    }
    text.gap();
    say_blend(text, words, plan);
    data.update(to_json(plan));
    fresh_mixture const fresh(plan.parts);
    if (!mixture_at.present) say_fresh(text, data, words, fresh, t);
    text.gap();
    if (!mixture_at.present) {
        text.say("The product is stated at {}; give --mixture-temperature for another temperature.",
                 words.temperature(t));
    }
    text.say("{}", mixing_cautions(fresh));
    s.answer(text, data, csv);
}

program::task const offered{who, run};

}  // namespace
