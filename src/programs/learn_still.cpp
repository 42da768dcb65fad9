// SPDX-License-Identifier: BSL-1.0
// The effective number of theoretical stages of a still, from earlier runs.
#include "still_program.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace {

using namespace program;

about const who{
    "learn_still",
    "Estimates the effective stages of a still from earlier runs, and lists other reflux ratios that fit.",
    "The Quillbeck teaching stillhouse once took 1.8 L of 90 % vol from 25 L of 11 % vol, reflux 3:\n"
    "  $ learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 90 %vol' --reflux 3\n"
    "  The still works like 4.6 theoretical stages above the pot (4.0 to 5.5).",
    boiling_sources()};

/// Reads "charge, its strength, discarded volume or none, collected volume, its strength".
past_run read_run(given const& g, wording const& words) {
    auto parts = parts_of(g);
    if (parts.size() != 5) {
        refuse(
            g,
            "expected charge, its strength, volume of foreshots or 'none', collected volume, its strength: "
            "'25 L, 11 %vol, 100 mL, 1.8 L, 90 %vol'");
    }
    // messages name the run and its part
    char const* const names[] = {"charge", "strength of the charge", "foreshots", "collected", "strength"};
    for (std::size_t i = 0; i < parts.size(); ++i) parts[i].name = label(g) + ", " + names[i];
    parcel const charge = make_parcel(read_amount(parts[0]), composition(read_strength(parts[1])),
                                      words.reference_temperature());
    mass_fraction const collected = composition(read_strength(parts[4]));
    // The library takes volumes at 20 °C. What was discarded grows like what was collected, to a thousandth.
    auto const at_20_celsius = [&](given const& volume) {
        return parcel::of(read_volume(volume), collected, words.reference_temperature()).volume(celsius(20));
    };
    units::volume const discarded = parts[2].text == "none" ? units::volume() : at_20_celsius(parts[2]);
    return {wash::of(charge), discarded, at_20_celsius(parts[3]), to<volume_fraction>(collected)};
}

std::string stages_of(stage_estimate const& e) {
    if (std::isinf(e.stages)) return fmt::format("{:.1f} stages or more", e.lowest);
    if (std::isinf(e.highest)) return fmt::format("{:.1f} stages ({:.1f} or more)", e.stages, e.lowest);
    return fmt::format("{:.1f} stages ({:.1f} to {:.1f})", e.stages, e.lowest, e.highest);
}

json to_json(stage_estimate const& e) {
    return {{"stages", std::isinf(e.stages) ? json() : json(e.stages)},
            {"stages_lowest", e.lowest},
            {"stages_highest", std::isinf(e.highest) ? json() : json(e.highest)},
            {"disagreement_percent_vol", e.disagreement},
            {"uncertainty_used_percent_vol", e.uncertainty},
            {"explains_the_runs", e.explains}};
}

/// The estimates for the reflux that was given, if any, and for the other ratios tried.
struct findings {
    std::optional<still_candidate> asked;
    std::vector<still_candidate> tried;  ///< in the order of their ratios; that of `asked` is among them
    double uncertainty;                  ///< as stated, % vol
    bool one_run;

    std::vector<still_candidate> explanations() const {
        std::vector<still_candidate> result;
        for (auto const& c : tried)
            if (c.estimate.explains) result.push_back(c);
        return result;
    }
    still_candidate const& nearest() const {
        return *std::min_element(tried.begin(), tried.end(), [](auto const& a, auto const& b) {
            return a.estimate.disagreement < b.estimate.disagreement;
        });
    }
    /// the estimate of the headline
    still_candidate const& first() const { return asked ? *asked : nearest(); }
};

void say_answer(page& text, wording const& words, findings const& f) {
    auto const list = f.explanations();
    char const* const these = f.one_run ? "this run" : "these runs";
    stage_estimate const& e = f.first().estimate;
    std::string const nearest =
        std::isinf(e.stages) ? fmt::format("even {:g} stages miss by {}", most_estimated_stages,
                                           words.strength_difference(e.disagreement))
                             : fmt::format("the nearest is {}, which miss by {}",
                                           f.one_run ? fmt::format("{:.1f} stages", e.stages) : stages_of(e),
                                           words.strength_difference(e.disagreement));
    if (list.empty() && f.asked) {
        text.say("No number of stages explains {}, with reflux {:g} or any other tried;\nwith {:g} {}.",
                 these, f.asked->reflux_ratio, f.asked->reflux_ratio, nearest);
    } else if (list.empty()) {
        text.say("No number of stages explains {}, with any reflux tried;\nwith reflux {:g} {}.", these,
                 f.first().reflux_ratio, nearest);
    } else if (f.asked && !e.explains) {
        auto const& other = *std::min_element(list.begin(), list.end(), [&](auto const& a, auto const& b) {
            return std::abs(a.reflux_ratio - f.asked->reflux_ratio) <
                   std::abs(b.reflux_ratio - f.asked->reflux_ratio);
        });
        text.say("No number of stages explains {} with reflux {:g}: {}.\nReflux {:g} would, with {}.", these,
                 f.asked->reflux_ratio, nearest, other.reflux_ratio, stages_of(other.estimate));
    } else if (f.asked) {
        text.say(
            "The still works like {}.",
            std::isinf(e.stages)
                ? fmt::format("{:.1f} stages or more above the pot; the runs give no upper limit", e.lowest)
                : fmt::format("{:.1f} theoretical stages above the pot ({:.1f} {})", e.stages, e.lowest,
                              std::isinf(e.highest) ? "or more" : fmt::format("to {:.1f}", e.highest)));
    } else if (f.one_run) {
        text.say("One run cannot tell reflux and stages apart. Each of these pairs explains it:");
    } else if (list.size() > 1) {
        text.say("These runs do not tell reflux and stages apart. Each of these pairs explains them:");
    } else {
        text.say("Only one of the reflux ratios tried explains these runs: {:g}, with {}.",
                 list[0].reflux_ratio, stages_of(list[0].estimate));
    }
}

void say_what_it_means(page& text, wording const& words, findings const& f) {
    auto const list = f.explanations();
    if (list.empty()) {
        text.say("A standard uncertainty of {} (--uncertainty) does not explain that: {}.",
                 words.strength_difference(f.uncertainty),
                 f.one_run ? "no still\nof this kind gives this result"
                           : "the runs\ncontradict one another, or their reflux differed");
    } else if (list.size() == 1 && !f.one_run) {
        text.say("No other of the reflux ratios tried explains the runs: they tell stages and reflux apart.");
    } else {
        if (f.asked) {
            text.say("{}", f.one_run
                               ? "All of these explain the run: one run cannot tell reflux and stages apart."
                               : "All of these explain the runs, which do not tell reflux and stages apart.");
        }
        text.say(
            "To tell them apart, measure the reflux (volume returned over volume taken). Or add a second "
            "run\n"
            "that collects much less or much more. Or give a second run with another, known reflux alone:\n"
            "its stages show which line above is right.");
    }
}

void run(session& s) {
    auto const& given_runs = s.repeated(
        "--run", "RUN",
        "'charge, strength, foreshots or none, collected, strength', all at 20 C (in US units 60 F)");
    given const& ratio = s.option("--reflux", "RATIO", "reflux ratio of these runs, if known");
    given const& heat_loss = s.option(
        "--heat-loss", "SHARE", "share of the vapour that condenses in neck and head and runs back", "0 %");
    given const& uncertainty =
        s.option("--uncertainty", "NUMBER", "standard uncertainty of the measured strengths, % vol", "0.5");
    surroundings const air = s.surroundings_options();
    s.offer_us_units();
    s.parse();
    wording const words = s.words();

    std::vector<past_run> past;
    for (given const& each : given_runs) past.push_back(read_run(each, words));
    std::span<past_run const> const runs(past);
    std::vector<double> ratios{0.0, 0.25, 0.5, 0.75, 1.0, 1.5,  2.0,  2.5,
                               3.0, 4.0,  5.0, 6.0,  8.0, 12.0, 20.0, 50.0};
    std::optional<double> known;
    if (ratio.present) {
        known = read_plain(ratio, 0.0, 1000.0);
        if (std::find(ratios.begin(), ratios.end(), *known) == ratios.end()) ratios.push_back(*known);
        std::sort(ratios.begin(), ratios.end());
    }
    double const share = read_share(heat_loss);
    double const u = read_plain(uncertainty, 0.01, 5.0);
    boiling_curve const curve = read_curve(air);
    neck const of_still = on_behalf_of(heat_loss, [&] { return neck::condensing(share); });
    for (std::size_t i = 0; i < past.size(); ++i) {  // each by itself, to name the one that cannot be
        on_behalf_of(given_runs[i], [&] {
            return nearest_stages(runs.subspan(i, 1), std::span<double const>(), of_still, u, curve);
        });
    }

    findings found{{}, {}, u, past.size() == 1};
    {
        progress_line line(who.name);
        found.tried =
            nearest_stages(runs, std::span<double const>(ratios), of_still, u, curve, [&](std::size_t tried) {
                line.show([&] { return fmt::format("{} of {} reflux ratios tried", tried, ratios.size()); });
            });
    }
    for (auto const& c : found.tried)
        if (known && c.reflux_ratio == *known) found.asked = c;
    auto const list = found.explanations();
    if (list.empty()) {  // what no still gives with any reflux is refused, with the range that one gives
        auto const refuse_impossible = [&](double r) {
            static_cast<void>(estimate_stages(runs, reflux::constant(r), of_still, u, curve));
        };
        try {
            refuse_impossible(ratios.back());
        } catch (refusal const& e) {
            auto const say_so = [&] {
                if (known) refuse_impossible(*known);
                raise_error(e);
            };
            found.one_run ? on_behalf_of(given_runs.front(), say_so) : say_so();
        }
    }

    page text;
    say_answer(text, words, found);
    text.gap();
    stage_estimate const& first = found.first().estimate;
    text.row("reflux", "{}; heat loss {:g} %", known ? fmt::format("{:g}, as given", *known) : "not given",
             100.0 * share);
    if (known)
        text.row("disagreement", "{} between forecast and measured strength",
                 words.strength_difference(first.disagreement));
    if (first.uncertainty > u && !found.one_run) {
        text.row("uncertainty", "{} of each strength, from the scatter of the runs; {} was stated",
                 words.strength_difference(first.uncertainty), words.strength_difference(u));
    }
    assumptions assumed;
    assumed.unless_given(heat_loss, "no vapour condenses in neck and head");
    assumed.unless_given(uncertainty,
                         "strengths with a standard uncertainty of " + words.strength_difference(u));
    bool const elsewhere = air.pressure.present || air.altitude.present;
    if (!elsewhere) assumed.unless_given(air.altitude, "air as at sea level");
    assumed.say(text);
    text.gap();
    json candidates = json::array();
    for (auto const& c : list) {
        json row{{"reflux_ratio", c.reflux_ratio}};
        row.update(to_json(c.estimate));
        candidates.push_back(row);
        text.row(fmt::format("with reflux {:g}", c.reflux_ratio), "{}", stages_of(c.estimate));
    }
    if (!list.empty()) text.gap();
    say_what_it_means(text, words, found);
    text.gap();
    text.say("{}", run_caution);
    json answer{{"reflux_ratio", known ? json(*known) : json()}};
    if (known) answer.update(to_json(first));
    answer["reflux_and_stages_told_apart"] = list.size() == 1 && !found.one_run;
    answer["candidates"] = candidates;
    answer["assumed"] = assumed.to_json();
    s.answer(text, answer);
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
