// SPDX-License-Identifier: BSL-1.0
// The water, or the stronger spirit, that brings a spirit to a wanted strength.
#include "drawing.hpp"
#include "program.hpp"

#include <algorithm>
#include <cmath>
#include <filesystem>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace program;

about const who{
    "dilute_spirit",
    topic::to_strength,
    "How much water brings a spirit to strength?",
    "Computes how much water, or stronger spirit, brings a spirit to a wanted strength.\n"
    "With --make: how much spirit and water make a wanted volume. With --steps or --portions: what to add,\n"
    "what the scale shows and what the stem shows after each step.",
    "The Quillbeck teaching stillhouse has 1.85 L of spirit at 28 °C; its alcoholometer shows 81.5:\n"
    "  $ aqueth dilute_spirit --amount '1.85 L' --reading '81.5 %vol' --temperature '28 C' --target '43 "
    "%vol'\n"
    "  Add 1.600 kg of water by the balance, or 1.605 L of it at 20 °C.",
    {correlation::oiml_r22::cited, correlation::glass_expansion::cited, correlation::air_buoyancy::cited,
     correlation::freezing_point::cited}};

/// The options, and what the three ways of bringing a spirit to strength share.
struct task {
    session& s;
    given const& amount =
        s.option("--amount", "AMOUNT", "spirit at hand: volume at its temperature, or mass");
    given const& make = s.option("--make", "VOLUME", "instead of --amount: wanted volume of the product");
    given const& strength = s.option("--strength", "STRENGTH", "true strength of the spirit");
    given const& reading =
        s.option("--reading", "STRENGTH", "instead of --strength: hydrometer reading in the spirit");
    given const& temperature = s.required("--temperature", "TEMP", "temperature of the spirit");
    given const& target = s.required("--target", "STRENGTH", "strength wanted");
    given const& steps =
        s.option("--steps", "LIST", "strengths on the way to the target: '60 %vol, 50 %vol'");
    given const& portions = s.option("--portions", "NUMBER", "number of equal portions of water", "1");
    given const& room =
        s.option("--room", "TEMP",
                 "with --steps or --portions: temperature to which each product cools (default: "
                 "--mixture-temperature)");
    given const& water_at =
        s.option("--water-temperature", "TEMP", "temperature of the water", "20 C", "60 F");
    given const& stronger =
        s.option("--fortify-with", "STRENGTH", "true strength of a stronger spirit to add");
    given const& stronger_at =
        s.option("--fortify-temperature", "TEMP", "temperature of the stronger spirit", "20 C", "60 F");
    given const& mixture_at = s.option("--mixture-temperature", "TEMP",
                                       "temperature at which the product is measured", "20 C", "60 F");
    instrument instrument_ = s.instrument_options();
    picture_options picture = picture_options::offer(s, "the strengths and temperatures of the steps");
    page text = {};
    json data = {};
    std::filesystem::path path = {};
    std::string script = {};

    bool stepwise() const { return steps.present || portions.present; }

    void check() const {
        if (amount.present == make.present) throw bad_input("give either --amount or --make");
        if (reading.present == strength.present) throw bad_input("give either --strength or --reading");
        if (steps.present && portions.present) throw bad_input("give either --steps or --portions");
        if (make.present && stronger.present) throw bad_input("--fortify-with needs --amount, not --make");
        if (stronger.present && (stepwise() || water_at.present)) {
            throw bad_input("--steps, --portions and --water-temperature cannot be used with --fortify-with");
        }
        if (room.present && !stepwise()) throw bad_input("--room needs --steps or --portions");
        if (picture.wanted() && !stepwise()) throw bad_input("--draw needs --steps or --portions");
        if (stronger_at.present && !stronger.present) {
            throw bad_input("--fortify-temperature needs --fortify-with");
        }
    }

    mass_fraction spirit_strength() const {
        if (strength.present) return composition(read_strength(strength));
        units::temperature const at = read_temperature(temperature);
        return on_behalf_of({{argument::temperature, temperature}},
                            [&] { return stem(instrument_, reading).composition(reading, at); });
    }

    void add(char const* what, parcel const& addition) {
        wording const words = s.words();
        text.say("Add {} of {} by the balance, or {} of it at {}.", words.weight(addition), what,
                 words.volume(addition.volume()), words.temperature(addition.temperature()));
    }

    void part(char const* label, char const* key, parcel const& p) {
        text.row(label, "{}", s.words().liquid(p));
        data[key] = to_json(p);
    }

    void finish(blend const& b, std::initializer_list<parcel> parts) {
        say_blend(text, s.words(), b);
        data.update(to_json(b));
        std::vector<units::temperature> temperatures;
        double const apart = s.words().us ? 10.0 / 1.8 : 5.0;  // 10 °F or 5 K
        for (double const times : {0.0, 1.0, 2.0})
            temperatures.push_back(b.product.temperature() + times * apart * kelvins);
        fresh_mixture const fresh{std::span(parts.begin(), parts.size())};
        if (!mixture_at.present) {
            say_fresh(text, data, s.words(), fresh, b.product.temperature());
            if (fresh.product) temperatures.push_back(fresh.product->temperature());
        }
        stem const meter(instrument_, reading);
        for (units::temperature const t : temperatures) {
            try {
                double const shown = meter.reading(b.product.composition(), t);
                text.row("check reading", "{} at {}", on_scale(meter.scale(), shown),
                         s.words().temperature(t));
                data["check_readings"].push_back({{"temperature_C", t.celsius()}, {"reading", shown}});
            } catch (refusal const&) {  // off the scale, or it would boil: nothing to check by
            }
        }
        text.row("read on", "{} marked in {}", meter.shows_strength() ? "an alcoholometer" : "a hydrometer",
                 name_of(meter.scale()));
        if (picture.wanted()) picture.draw(s, text, path, script);
        text.gap();
        if (!mixture_at.present) {
            text.say("The product is stated at {}; give --mixture-temperature for another temperature.",
                     s.words().temperature(b.product.temperature()));
        }
        text.say("{}", mixing_cautions(fresh));
        s.answer(text, data);
    }
};

/// The strengths of --steps, each with its own text for messages.
std::vector<given> strengths_on_the_way(given const& g) {
    std::vector<given> list;
    std::string_view rest = g.text;
    for (bool more = g.present; more;) {
        auto const end = rest.find_first_of(",;");
        more = end != std::string_view::npos;
        list.push_back({g.name, std::string(trimmed(rest.substr(0, end))), true});
        if (list.back().text.empty()) refuse(g, "expected strengths with commas between: '60 %vol, 50 %vol'");
        if (more) rest.remove_prefix(end + 1);
    }
    return list;
}

/// The water of a dilution in steps or in portions.
template <strength_basis Target>
stepwise_dilution in_steps(Target target, task const& t, parcel const& spirit, liquid const& water) {
    given const& at = t.room.present ? t.room : t.mixture_at;
    stepwise_dilution ladder(spirit, water, read_any_temperature(at));
    auto const down = [&](given const& from, auto const& strength) {
        on_behalf_of({{argument::temperature, at}, {argument::target_strength, from}},
                     [&] { static_cast<void>(ladder.down_to(strength)); });
    };
    for (given const& each : strengths_on_the_way(t.steps)) {
        if (ladder.steps().size() >= 1000) refuse(t.steps, "expected at most 1000 strengths");
        std::visit(
            [&](auto const& strength) {
                if (to<mass_fraction>(strength).value() < to<mass_fraction>(target).value())
                    refuse(each, fmt::format("a strength on the way cannot be below {}", label(t.target)));
                down(each, strength);
            },
            read_strength(each));
    }
    if (t.steps.present) {
        down(t.target, target);
    } else {
        int const portions = read_count(t.portions, 1000);
        on_behalf_of({{argument::temperature, at}, {argument::target_strength, t.target}},
                     [&] { ladder.in_portions(target, portions); });
    }
    return ladder;
}

/// The reading of the stem, or nothing if it is off its scale.
std::optional<double> shown(stem const& meter, parcel const& p) {
    try {
        return meter.reading(p.composition(), p.temperature());
    } catch (refusal const&) {
        return std::nullopt;
    }
}

/// Strength, and warmth at once, against what the scale shows.
std::string picture_of(std::filesystem::path const& path, wording const& words, stepwise_dilution const& d) {
    units::mass const unit = words.us ? pound : kilogram;
    double const first = in(balance_indication_of(d.spirit()), unit);
    double const last = (std::max)(in(d.steps().back().scale_shows, unit), 1.001 * first);
    double const width = last - first;
    std::string script = picture_head(path, 960, 640, "A dilution in steps: strength and warmth");
    script += fmt::format("set xlabel 'the scale shows, {}'\nset ylabel 'strength, {}'\n"
                          "set y2label 'temperature just after mixing, {}'\n",
                          words.us ? "lb" : "kg", words.strength_unit(), words.temperature_unit());
    std::string strengths = fmt::format("$strengths << EOD\n{:.8g} {:.8g} \"spirit\"\n", first,
                                        words.strength_number(d.spirit().composition()));
    std::string warmth;
    std::vector<double> temperatures;
    std::size_t const every = 1 + d.steps().size() / 7;  // more labels would overlap
    for (std::size_t k = 0; k < d.steps().size(); ++k) {
        dilution_step const& step = d.steps()[k];
        double const scale = in(step.scale_shows, unit);
        double const strength = words.strength_number(step.product.composition());
        bool const labelled = (d.steps().size() - 1 - k) % every == 0;
        strengths +=
            fmt::format("{:.8g} {:.8g} \"{}\"\n", scale, strength,
                        labelled ? fmt::format("{:.1f}, + {}", strength, words.weight(step.addition)) : "");
        if (step.at_once) {
            temperatures.push_back(words.temperature_number(*step.at_once));
            warmth += fmt::format("{:.8g} {:.6g}\n", scale, temperatures.back());
        }
    }
    // The temperatures lie in the lower fifth of the picture, or above strengths that end there.
    double const top = words.us ? 200.0 : 100.0;
    double const grid = words.us ? 10.0 : 5.0;
    if (!temperatures.empty()) {
        auto const [least, most] = std::minmax_element(temperatures.begin(), temperatures.end());
        double const low = grid * std::floor(*least / grid);
        double const high = (std::max)(grid * std::ceil(*most / grid), low + grid);
        bool const above = words.strength_number(d.steps().back().product.composition()) < 0.3 * top;
        script +=
            fmt::format("set y2tics {}\nset y2range [{}:{}]\n", high - low,
                        above ? high - 5.0 * (high - low) : low, above ? high : low + 5.0 * (high - low));
    }
    script += fmt::format("set xrange [{:.6g}:{:.6g}]\nset yrange [0:{}]\n", first - 0.05 * width,
                          last + 0.23 * width, top);
    script += strengths + "EOD\n$warmth << EOD\n" + warmth + "EOD\n";
    script += fmt::format("plot $strengths using 1:2 with linespoints {} pointtype 7 pointsize 0.8 "
                          "title 'strength', "
                          "$strengths using 1:2:3 with labels left offset 1,0.8 notitle",
                          line_style(0));
    if (!warmth.empty()) {
        script +=
            fmt::format(", $warmth using 1:2 axes x1y2 with points pointtype 5 pointsize 1.1 linecolor '{}' "
                        "title 'temperature just after mixing'",
                        colours[1]);
    }
    return script + "\n";
}

/// The steps as a table: what to add, what the scale shows, how warm it is, what the stem shows later.
void say_steps(task& t, stepwise_dilution const& d) {
    wording const words = t.s.words();
    stem const meter(t.instrument_, t.reading);
    t.text.say("  {:<6}{:>12}{:>14}{:>13}{:>20}{:>13}", "step", "add", "scale shows", "just mixed",
               fmt::format("volume at {}", words.temperature(d.room())), "stem shows");
    t.text.say("  {:<6}{:>12}{:>14}{:>13}{:>20}", "spirit", "", words.weight(d.spirit()), "",
               words.volume(d.spirit().volume(d.room())));
    for (std::size_t k = 0; k < d.steps().size(); ++k) {
        dilution_step const& step = d.steps()[k];
        auto const reading = shown(meter, step.product);
        std::string const warm = step.at_once ? words.rounded(*step.at_once) : "-";
        t.text.say("  {:<6}{:>12}{:>14}{:>13}{:>20}{:>13}", k + 1, words.weight(step.addition),
                   words.weight(step.product), warm, words.volume(step.product.volume()),
                   reading ? on_scale(meter.scale(), *reading) : "-");
        json one = to_json(static_cast<blend const&>(step));
        one["add"] = to_json(step.addition);
        one["scale_shows_kg"] = in(step.scale_shows, kilogram);
        one["just_mixed_C"] = step.at_once ? json(step.at_once->celsius()) : json(nullptr);
        one["stem_shows"] = reading ? json(*reading) : json(nullptr);
        t.data["steps"].push_back(one);
    }
    t.data["room_C"] = d.room().celsius();
    t.text.gap();
    t.text.say("The scale shows the liquid alone: set it to zero with the empty vessel on it.");
    t.text.say("Let each step come to {} before you read it or go on.", words.temperature(d.room()));
    t.text.gap();
    if (t.picture.wanted()) t.script = picture_of(t.path, words, d);
}

/// Water, a stronger spirit or both parts of a volume: what to weigh comes first.
template <strength_basis Target>
void bring_to(Target target, task& t) {
    mass_fraction const w = t.spirit_strength();
    auto const mixture_at = read_any_temperature(t.mixture_at);
    liquid const water = water_at(read_water_temperature(t.water_at));
    auto const attributed = [&t](auto const& mixing) {
        return on_behalf_of({{argument::temperature, t.mixture_at},
                             {argument::target_strength, t.target},
                             {argument::strength_of_the_stronger_spirit, t.stronger},
                             {argument::stronger_spirit_above_the_target_by, t.stronger}},
                            mixing);
    };
    if (t.make.present) {
        liquid const stock = make_parcel(kilogram, w, t.temperature).liquid();
        auto const plan = attributed([&] {
            // --make refuses the same input as --amount
            static_cast<void>(dilute(parcel::of(kilogram, stock), target, water, mixture_at));
            return make_up(read_volume(t.make), mixture_at, target, stock, water);
        });
        t.add("the spirit", plan.spirit);
        t.add("water", plan.diluent);
        t.text.gap();
        if (t.stepwise()) say_steps(t, in_steps(target, t, plan.spirit, water));
        t.part("spirit", "spirit", plan.spirit);
        t.part("water", "water", plan.diluent);
        return t.finish(plan, {plan.spirit, plan.diluent});
    }
    parcel const spirit = make_parcel(read_amount(t.amount), w, t.temperature);
    if (t.stronger.present) {
        liquid const stock =
            make_parcel(kilogram, composition(read_strength(t.stronger)), t.stronger_at).liquid();
        auto const plan = attributed([&] { return fortify(spirit, target, stock, mixture_at); });
        t.add("the stronger spirit", plan.addition);
        t.text.gap();
        t.part("spirit", "spirit", spirit);
        t.part("stronger spirit", "stronger_spirit", plan.addition);
        return t.finish(plan, {spirit, plan.addition});
    }
    auto const plan = attributed([&] { return dilute(spirit, target, water, mixture_at); });
    t.add("water", plan.addition);
    t.text.gap();
    if (t.stepwise()) say_steps(t, in_steps(target, t, spirit, water));
    t.part("spirit", "spirit", spirit);
    t.part("water", "water", plan.addition);
    t.finish(plan, {spirit, plan.addition});
}

void run(session& s) {
    task t{s};
    s.carry_on({{t.amount, carried::weighed, {t.make}},
                {t.strength, carried::strength, {t.reading}},
                {t.temperature, carried::temperature}});
    s.offer_us_units();
    s.parse();
    t.check();
    t.path = t.picture.read();
    std::visit([&](auto const& target) { bring_to(target, t); }, read_strength(t.target));
}

program::task const offered{who, run};

}  // namespace
