// SPDX-License-Identifier: BSL-1.0
// How many theoretical stages a still works like, from what earlier runs gave.
#include "still_program.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <span>
#include <string>
#include <vector>

namespace {

using namespace program;

about const who{
    "find_stages",
    "Finds the effective stages of a still from earlier runs, and what else would explain them.",
    "The Quillbeck teaching stillhouse once took 1.8 L of 90 % vol from 25 L of 11 % vol, reflux 3:\n"
    "  $ find_stages --run '25 L, 11 %vol, 100 mL, 1.8 L, 90 %vol' --reflux 3\n"
    "  The still works like 4.6 theoretical stages above the pot (4.0 to 5.5).",
    boiling_sources()};

/// Reads "charge, its strength, discarded volume or none, collected volume, its strength".
past_run read_run(given const& g) {
    auto const parts = parts_of(g, ',');
    if (parts.size() != 5) {
        refuse(g,
               "expected charge, its strength, discarded volume or 'none', collected volume, its strength: "
               "'25 L, 11 %vol, 100 mL, 1.8 L, 90 %vol'");
    }
    parcel const charge =
        make_parcel(read_amount(parts[0]), composition(read_strength(parts[1])), celsius(20));
    units::volume const discarded = parts[2].text == "none" ? units::volume() : read_volume(parts[2]);
    return {wash::of(charge), discarded, read_volume(parts[3]),
            to<volume_fraction>(composition(read_strength(parts[4])))};
}

std::string range_of(stage_estimate const& e) {
    return std::isinf(e.highest) ? fmt::format("{:.1f} or more", e.lowest)
                                 : fmt::format("{:.1f} to {:.1f}", e.lowest, e.highest);
}

void run(session& s) {
    auto const& given_runs =
        s.repeated("--run", "RUN", "'charge, strength, discarded or none, collected, strength', all at 20 C");
    given const& ratio = s.option("--reflux", "RATIO", "reflux ratio of those runs", "0");
    given const& heat_loss =
        s.option("--heat-loss", "SHARE", "of the vapour, condensed on the column", "0 %");
    given const& uncertainty = s.option("--uncertainty", "NUMBER", "of the strengths, % vol", "0.5");
    surroundings const air = s.surroundings_options();
    s.parse();

    std::vector<past_run> past;
    for (given const& each : given_runs) past.push_back(read_run(each));
    double const known = read_plain(ratio, 0.0, 1000.0);
    double const share = read_share(heat_loss);
    double const u = read_plain(uncertainty, 0.01, 5.0);
    boiling_curve const curve = read_curve(air);
    std::span<past_run const> const runs(past);
    reflux const returned =
        on_behalf_of(heat_loss, [&] { return reflux::constant(known).with_heat_loss(share); });
    stage_estimate const found = estimate_stages(runs, returned, u, curve);
    std::array const ratios{0.0, 0.5, 1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 20.0};
    auto const others = reflux_candidates(runs, std::span<double const>(ratios), share, u, curve);

    page text;
    if (std::isinf(found.stages)) {
        text.say("The still works like {:.1f} stages or more above the pot: no number is too many.",
                 found.lowest);
    } else {
        text.say("The still works like {:.1f} theoretical stages above the pot ({}).", found.stages,
                 range_of(found));
    }
    text.gap();
    text.row("reflux", "{:g}, as given; heat loss {:g} %", known, 100.0 * share);
    text.row("disagreement", "{:.2f} % vol between forecast and measured strength", found.disagreement);
    text.gap();
    json list = json::array();
    for (auto const& c : others) {
        list.push_back({{"reflux_ratio", c.reflux_ratio}, {"stages", c.estimate.stages}});
        text.row(fmt::format("with reflux {:g}", c.reflux_ratio), "{:.1f} stages ({})", c.estimate.stages,
                 range_of(c.estimate));
    }
    bool const agrees = found.disagreement <= u;
    bool const told_apart =
        agrees && std::all_of(others.begin(), others.end(),
                              [&](still_candidate const& c) { return c.reflux_ratio == known; });
    if (told_apart) {
        text.say("No other of the reflux ratios tried explains the runs: they tell stages and reflux apart.");
    } else if (agrees) {
        text.say("All these explain the runs within {:g} % vol: the data do not tell reflux and stages\n"
                 "apart. Measure the reflux, or another run that collects much more or less.",
                 u);
    } else {
        text.say("No number of stages explains all the runs within {:g} % vol with this reflux{}", u,
                 others.empty() ? ", nor with any\nother that was tried: they contradict one another."
                                : "; those above do.");
    }
    text.gap();
    text.say("{}", still_caution);
    s.answer(text, {{"stages", std::isinf(found.stages) ? json() : json(found.stages)},
                    {"stages_lowest", found.lowest},
                    {"stages_highest", std::isinf(found.highest) ? json() : json(found.highest)},
                    {"disagreement_percent_vol", found.disagreement},
                    {"explains_the_runs", agrees},
                    {"reflux_and_stages_told_apart", told_apart},
                    {"candidates", list}});
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
