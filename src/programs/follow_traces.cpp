// SPDX-License-Identifier: BSL-1.0
// Where the traces of a charge go in a run: methanol, acetaldehyde, esters, higher alcohols, acids.
#include "drawing.hpp"
#include "still_options.hpp"
#include "still_program.hpp"

#include <aqueth/model/traces.hpp>
#include <aqueth/still/traces.hpp>

#include <algorithm>
#include <array>
#include <cctype>
#include <cmath>
#include <cstddef>
#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace {

using namespace program;

std::vector<correlation::source> sources() {
    auto all = run_sources();
    all.push_back(model::traces::cited);
    return all;
}

about const who{
    "follow_traces",
    topic::in_still,
    "Where do methanol and other traces go in a run?",
    "Follows traces through a batch distillation: how much of each comes in which fraction, with its error "
    "band.",
    "The Quillbeck teaching stillhouse asks where methanol and isoamyl alcohol go in its plain pot:\n"
    "  $ aqueth follow_traces --trace 'methanol 50 g/hL' --trace '3-methyl-1-butanol 120 g/hL' --charge '25 "
    "L' \\\n"
    "        --strength '11 %vol' --power '2 kW' --discard '100 mL' --cuts 'distillate 40 %vol' \\\n"
    "        --end 'distillate 5 %vol'\n"
    "  Hearts: 37.1 to 42.4 g/hL of methanol, the charge 50.0.",
    sources()};

/// Grams for each hectolitre of pure alcohol.
double grams_per_hectolitre(units::mass_density d) { return 100.0 * d.value(); }

/// A trace and how much of it the charge holds, as it was asked for.
struct asked_trace {
    given from;
    trace which;
    double number;
    bool of_alcohol;  ///< g/hL of pure alcohol; else mg for each litre of the charge

    trace_amount in_charge(wash const& charge) const {
        if (of_alcohol)
            return trace_amount::of_alcohol(which, charge, 0.01 * number * kilogram_per_cubic_metre);
        return {which, 1e-3 * number * in(charge.volume(celsius(20)), litre) * gram};
    }
};

std::string known_names() {
    std::string all;
    for (trace const each : all_traces) all += fmt::format("{}{}", all.empty() ? "" : ", ", name_of(each));
    return all;
}

/// Reads "methanol 50 g/hL" or "ethyl acetate 30 mg/L".
asked_trace read_trace(given const& g) {
    for (trace const each : all_traces) {
        std::string_view const name = name_of(each);
        if (g.text.size() <= name.size() || g.text.compare(0, name.size(), name) != 0 ||
            g.text[name.size()] != ' ')
            continue;
        std::string const rest = g.text.substr(name.size() + 1);
        auto const [number, unit] = read_quantity(g, rest, {"an amount", "g/hL or mg/L"});
        bool const of_alcohol = unit == "g/hL";
        if (!of_alcohol && unit != "mg/L")
            refuse(
                g,
                "expected g/hL (for each hectolitre of pure alcohol) or mg/L (for each litre of the charge)");
        if (!(number >= 0.0 && number <= 1e5))
            refuse(g, fmt::format("{:g} is outside 0 to 100000 {}", number, unit));
        return {g, each, number, of_alcohol};
    }
    refuse(g, fmt::format("expected a trace and its amount, as 'methanol 50 g/hL'; known are {}",
                          known_names()));
}

std::vector<asked_trace> read_traces(std::vector<given> const& all) {
    std::vector<asked_trace> result;
    for (given const& each : all) {
        asked_trace const now = read_trace(each);
        for (asked_trace const& before : result)
            if (before.which == now.which) refuse(each, fmt::format("{} is given twice", name_of(now.which)));
        result.push_back(now);
    }
    return result;
}

/// A figure with three digits, never with an exponent.
std::string short_number(double value) { return value < 0.05 ? "0" : number(value, 3); }

/// The figure of a fraction in g/hL, with its band in brackets.
std::string in_words(banded<units::mass> const& mass, parcel const& product) {
    auto const held = per_pure_alcohol(mass, product);
    return fmt::format("{} ({} to {})", short_number(grams_per_hectolitre(held.expected)),
                       short_number(grams_per_hectolitre(held.lower)),
                       short_number(grams_per_hectolitre(held.upper)));
}

json to_json(banded<units::mass> const& m) {
    return {{"expected", in(m.expected, gram)}, {"lower", in(m.lower, gram)}, {"upper", in(m.upper, gram)}};
}

json to_json(wash const& charge, traced_distillation const& r, std::vector<std::string> const& names,
             assumptions const& assumed) {
    json fractions = json::array();
    for (std::size_t k = 0; k < names.size(); ++k) {
        json data{{"name", names[k]}};
        data.update(program::to_json(r.run.fractions[k].product));
        fractions.push_back(data);
    }
    json traces = json::array();
    for (trace_course const& t : r.traces) {
        json each = json::array();
        for (std::size_t k = 0; k < names.size(); ++k) {
            auto const held = per_pure_alcohol(t.fractions[k], r.run.fractions[k].product);
            each.push_back({{"mass_g", to_json(t.fractions[k])},
                            {"g_per_hL_pure_alcohol",
                             {{"expected", grams_per_hectolitre(held.expected)},
                              {"lower", grams_per_hectolitre(held.lower)},
                              {"upper", grams_per_hectolitre(held.upper)}}}});
        }
        traces.push_back({{"name", name_of(t.charged.which)},
                          {"charge_g", in(t.charged.mass, gram)},
                          {"fractions", each},
                          {"residue_g", to_json(t.residue)}});
    }
    return {{"charge", program::to_json(charge.liquid())},
            {"charge_extract_kg", in(charge.solids(), kilogram)},
            {"fractions", fractions},
            {"residue", program::to_json(r.run.residue.liquid())},
            {"residue_extract_kg", in(r.run.residue.solids(), kilogram)},
            {"traces", traces},
            {"assumed", assumed.to_json()}};
}

/// Milligrams for each litre of distillate.
double milligrams_per_litre(units::mass_density d) { return 1e3 * d.value(); }

std::string csv_of(traced_distillation const& r) {
    std::string csv = "collected_L_20C,distillate_percent_vol_20C";
    for (trace_course const& t : r.traces) {
        std::string name = name_of(t.charged.which);
        std::replace(name.begin(), name.end(), ' ', '_');
        for (char const* const each : {"", "_lower", "_upper"})
            csv += fmt::format(",{}_mg_per_L{}", name, each);
    }
    for (std::size_t k = 0; k < r.run.points.size(); ++k) {
        run_point const& p = r.run.points[k];
        csv += fmt::format("\n{:.10g},{:.10g}", in(p.collected, litre), percent_vol(p.distillate));
        for (trace_course const& t : r.traces) {
            auto const& d = t.points[k].in_distillate;
            for (units::mass_density const& each : {d.expected, d.lower, d.upper})
                csv += fmt::format(",{:.6g}", milligrams_per_litre(each));
        }
    }
    return csv + "\n";
}

/// Traces in the distillate against the volume collected, with bands, on a logarithmic scale.
std::string picture_of(std::filesystem::path const& path, wording const& words, traced_distillation const& r,
                       std::vector<std::string> const& names) {
    double greatest = 0.0;
    for (trace_course const& t : r.traces)
        for (trace_point const& p : t.points)
            greatest = (std::max)(greatest, milligrams_per_litre(p.in_distillate.upper));
    double const top = std::pow(10.0, std::ceil(std::log10((std::max)(greatest, 1e-3))));
    auto const collected = [&](run_point const& p) {
        return in(volume_collected(words, p), words.one_volume());
    };
    std::string script = picture_head(path, 960, 640, "Traces in the distillate, with their bands") +
                         "set tmargin 6\nset logscale y\n"
                         "set style fill transparent solid 0.18 noborder\n"
                         "set ylabel 'in the distillate, mg/L'\n";
    script += fmt::format("set xlabel 'collected, {} at {}'\n", words.us ? "US gal" : "L",
                          words.temperature(words.reference_temperature()));
    script += fmt::format("set yrange [{:g}:{:g}]\n$run << EOD\n", 1e-4 * top, top);
    for (std::size_t k = 0; k < r.run.points.size(); ++k) {
        script += fmt::format("{:.6g}", collected(r.run.points[k]));
        for (trace_course const& t : r.traces) {
            auto const& d = t.points[k].in_distillate;
            for (units::mass_density const& each : {d.expected, d.lower, d.upper})
                script += fmt::format(" {:.5g}", (std::max)(1e-5 * top, milligrams_per_litre(each)));
        }
        script += "\n";
    }
    script += "EOD\n";
    for (std::size_t k = 0; k + 1 < r.run.fractions.size(); ++k) {
        script +=
            fmt::format("set arrow from first {0:.6g}, graph 0 to first {0:.6g}, graph 1 nohead dashtype 2 "
                        "linecolor '#888888'\n",
                        collected(r.run.fractions[k].end));
    }
    for (std::size_t k = 0; k < r.run.fractions.size(); ++k) {
        double const from = collected(r.run.fractions[k].begin);
        double const to = collected(r.run.fractions[k].end);
        script +=
            fmt::format("set label {} at first {:.6g}, graph 1.025 left rotate by 25 textcolor '#444444'\n",
                        in_quotes(names[k]), 0.5 * (from + to));
    }
    script += "plot ";
    std::size_t const every = (std::max)(std::size_t{1}, r.run.points.size() / 12);
    for (std::size_t i = 0; i < r.traces.size(); ++i) {
        std::size_t const column = 2 + 3 * i;
        script += fmt::format("{}$run using 1:{}:{} with filledcurves linecolor '{}' notitle, "
                              "$run using 1:{} with linespoints {} pointtype {} pointinterval {} title {}",
                              i > 0 ? ", " : "", column + 1, column + 2, colours[i % colours.size()], column,
                              line_style(i), i + 4, every, in_quotes(name_of(r.traces[i].charged.which)));
    }
    return script + "\n";
}

/// Cautions that belong to the traces that were asked for.
void say_cautions(page& text, std::vector<asked_trace> const& traces) {
    auto const asked = [&](trace which) {
        return std::any_of(traces.begin(), traces.end(),
                           [&](asked_trace const& t) { return t.which == which; });
    };
    if (asked(trace::methanol))
        text.say(
            "Methanol comes over with all fractions: no cut removes it, and no cut makes a spirit safe.");
    if (asked(trace::acetaldehyde))
        text.say(
            "Acetaldehyde is an upper bound: what ethanol, water and sulfur dioxide bind does not boil.");
    text.say("The bands are those of the volatilities. No measured run was found to check a whole run.");
    text.say("{}", run_caution);
}

void run(session& s) {
    std::vector<given> const& traces_given = s.repeated(
        "--trace", "TRACE", "a trace and how much the charge holds: 'methanol 50 g/hL', 'furfural 2 mg/L'");
    auto const charge_given = charge_options::offer(s);
    auto const still_given = still_options::offer(s);
    auto const plan_given = plan_options::offer(s);
    auto const fractions_given = fraction_options::offer(s);
    surroundings const air = s.surroundings_options();
    given const& points = s.option("--points", "NUMBER", "states recorded for --csv and --draw", "200");
    auto const picture = picture_options::offer(s, "traces in the distillate");
    std::string const traces_explained =
        "Traces: " + known_names() +
        ".\nAmounts: g/hL, for each hectolitre of pure alcohol; mg/L, for each litre of the charge.";
    s.explain(traces_explained.c_str());
    s.explain(runs_explained);
    s.offer_us_units();
    s.offer_csv();
    s.parse();

    auto const traces = read_traces(traces_given);
    wash const charge = charge_given.read();
    still const apparatus = still_given.read();
    run_plan plan;
    std::vector<asked_condition> asked;
    plan_given.read(plan, asked);
    fractions_given.read(plan, asked, still_given.keep);
    bool const recording = picture.wanted() || s.in_csv();
    require_beside(points, recording, "--csv or --draw");
    plan.points = recording ? read_count(points, run_plan::most_points, 2) : 0;
    boiling_curve const curve = read_curve(air);
    std::filesystem::path const path = picture.read();
    std::vector<trace_amount> amounts;
    for (asked_trace const& each : traces) amounts.push_back(each.in_charge(charge));
    traced_distillation const r =
        on_behalf_of({{argument::number_of_cuts, fractions_given.cuts},
                      {argument::number_of_ends_of_the_run, fractions_given.ends}},
                     [&] {
                         return on_behalf_of_run(charge_given, still_given, plan_given, asked, [&] {
                             progress_line line(who.name);
                             return distil_with_traces(
                                 charge, amounts, apparatus, plan, curve,
                                 [&](run_progress const& p) { line.show([&] { return how_far(p); }); });
                         });
                     });
    wording const words = s.words();
    auto const names = usual_names(r.run.fractions.size(), !r.run.fractions.front().kept);
    assumptions assumed = still_given.assumed();
    assumed.unless_given(charge_given.solids, "no extract in the charge");

    // the hearts, or the distillate, first
    std::size_t main = 0;
    while (main + 1 < names.size() && !names[main].starts_with("hearts")) ++main;
    std::string title = names[main];
    title.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(title.front())));
    page text;
    {
        trace_course const& t = r.traces.front();
        auto const held = per_pure_alcohol(t.fractions[main], r.run.fractions[main].product);
        text.say("{}: {} to {} g/hL of {}, the charge {}.", title,
                 number(grams_per_hectolitre(held.lower), 3), number(grams_per_hectolitre(held.upper), 3),
                 name_of(t.charged.which),
                 number(grams_per_hectolitre(per_pure_alcohol(t.charged.mass, charge.liquid())), 3));
    }
    text.gap();
    text.say("g/hL of pure alcohol, with the band of the volatility");
    for (std::size_t k = 0; k < names.size(); ++k) {
        run_fraction const& f = r.run.fractions[k];
        text.say("  {}, {} at {}", names[k], words.volume(f.product.volume(words.reference_temperature())),
                 words.strength(f.product.composition()));
        for (trace_course const& t : r.traces)
            text.say("    {:<20} {}", name_of(t.charged.which), in_words(t.fractions[k], f.product));
    }
    text.say("  left in the still, share of the charge");
    for (trace_course const& t : r.traces) {
        auto const share = [&](units::mass m) {
            return t.charged.mass.value() > 0.0 ? 100.0 * in(m, t.charged.mass) : 0.0;
        };
        text.say("    {:<20} {} % ({} to {})", name_of(t.charged.which),
                 short_number(share(t.residue.expected)), short_number(share(t.residue.lower)),
                 short_number(share(t.residue.upper)));
    }
    text.gap();
    assumed.say(text);
    if (picture.wanted()) picture.draw(s, text, path, picture_of(path, words, r, names));
    text.gap();
    say_cautions(text, traces);
    s.answer(text, s.in_json() ? to_json(charge, r, names, assumed) : json(), s.in_csv() ? csv_of(r) : "");
}

program::task const offered{who, run};

}  // namespace
