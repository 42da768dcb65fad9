// SPDX-License-Identifier: BSL-1.0
// A run in jars of equal volume: strengths, readings, averages, and where to cut.
#include "drawing.hpp"
#include "still_options.hpp"

#include <cstddef>
#include <filesystem>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace {

using namespace program;

about const who{
    "fill_jars",
    topic::in_still,
    "How strong is each jar of a run, where do I cut?",
    "Forecasts a run in jars of equal volume: their strengths, what an alcoholometer shows, where to cut.",
    "The Quillbeck teaching stillhouse distils 20 L of 28 % vol in its pot; a tenth condenses in the neck. "
    "The\nspout runs at 24 C. Up to where is the average 68 % vol?\n"
    "  $ aqueth fill_jars --charge '20 L' --strength '28 %vol' --power '2 kW' --heat-loss '10 %' --discard "
    "'200 mL' "
    "\\\n"
    "        --jar '500 mL' --spout-temperature '24 C' --end 'distillate 10 %vol' --average '68 %vol'\n"
    "  Take jars 1 to 13 and 372.6 mL of jar 14: 6.867 L at 68.00 % vol.",
    run_sources()};

/// What the alcoholometer, or in US units the proof hydrometer, shows in a liquid.
std::string shown(wording const& words, mass_fraction w, units::temperature t) {
    try {
        if (words.us) return fmt::format("{:.1f}", proof_hydrometer().reading(w, t).degrees());
        return fmt::format("{:.1f}", alcoholometer().reading(w, t).percent());
    } catch (refusal const&) {
        return "-";  // off the scale, or frozen
    }
}

json percent_or_null(std::optional<volume_fraction> const& reading) {
    return reading ? json(reading->percent()) : json(nullptr);
}

/// The averages of the jars from one on.
std::vector<parcel> averages_from(run_in_jars const& r, int first) {
    std::vector<parcel> sums;
    for (std::size_t k = static_cast<std::size_t>(first) - 1; k < r.jars.size(); ++k) {
        parcel const& next = r.jars[k].content;
        sums.push_back(sums.empty() ? next : mix({sums.back(), next}, celsius(20)).product);
    }
    return sums;
}

/// A bar for each jar; the part that is taken is darker. The lines are the average so far and the one wanted.
std::string picture_of(std::filesystem::path const& path, wording const& words, run_in_jars const& r,
                       int first, std::optional<jar_cut> const& cut, std::optional<double> wanted) {
    auto const strength = [&](parcel const& p) { return words.strength_number(p.composition()); };
    std::string script =
        picture_head(path, 960, 580, "The jars of a run") +
        fmt::format("unset grid\nset grid ytics linecolor '#dddddd'\nset style fill solid 1.0 noborder\n"
                    "set xlabel 'jar'\nset ylabel 'strength, {}'\nset xrange [0:{}]\nset yrange [0:{}]\n"
                    "set xtics nomirror scale 0 ({})\nset ytics nomirror\n",
                    words.strength_unit(), r.jars.size(), words.us ? 200 : 100, [&] {
                        std::string numbers;
                        std::size_t const every = 1 + r.jars.size() / 26;
                        for (std::size_t k = 0; k < r.jars.size(); k += every)
                            numbers += fmt::format("{}'{}' {}", k == 0 ? "" : ",", k + 1,
                                                   static_cast<double>(k) + 0.5);
                        return numbers;
                    }());
    constexpr double gap = 0.07;
    std::string taken = "$taken << EOD\n", left = "$left << EOD\n", average = "$average << EOD\n";
    auto const sums = averages_from(r, first);
    for (std::size_t k = 0; k < r.jars.size(); ++k) {
        double const height = strength(r.jars[k].content), number = static_cast<double>(k);
        int const place = static_cast<int>(k) + 1 - first;  // among those that are taken, from 0
        double share = place < 0 ? 0.0 : 1.0;
        if (cut && place >= cut->full)
            share = place > cut->full ? 0.0 : in(cut->part, r.jars[k].content.volume(celsius(20)));
        double const from = number + gap, to = number + 1.0 - gap, middle = from + share * (to - from);
        auto const bar = [&](std::string& into, double begin, double end) {
            if (end > begin)
                into += fmt::format("{:.5g} {:.5g} {:.5g} {:.5g} 0 {:.5g}\n", 0.5 * (begin + end), height,
                                    begin, end, height);
        };
        bar(taken, from, middle);
        bar(left, middle, to);
        if (place >= 0)
            average +=
                fmt::format("{:.5g} {:.5g}\n", number + 1.0, strength(sums[static_cast<std::size_t>(place)]));
        double const least = words.us ? 16.0 : 8.0;  // a lower bar has no room for its number
        bool const mostly_taken = share >= 0.5;
        if (r.jars.size() <= 26 && height > least)  // at the foot, where no line crosses it
            script +=
                fmt::format("set label '{:.0f}' at {:.5g}, {:.5g} center font ',11' front textcolor '{}'\n",
                            height, mostly_taken ? 0.5 * (from + middle) : 0.5 * (middle + to), 0.4 * least,
                            mostly_taken ? "#ffffff" : "#333333");
    }
    // An empty block would be an error; a bar without width is not seen.
    script += taken + "0 0 0 0 0 0\nEOD\n" + left + "0 0 0 0 0 0\nEOD\n" + average + "EOD\n";
    script += "plot $taken using 1:2:3:4:5:6 with boxxyerror linecolor '#14304f' title 'taken', "
              "$left using 1:2:3:4:5:6 with boxxyerror linecolor '#b9c7d6' title 'left out', "
              "$average using 1:2 with linespoints linewidth 2 pointtype 7 pointsize 0.5 linecolor '#c4622d' "
              "title 'average so far'";
    if (wanted)
        script += fmt::format(
            ", {:.6g} with lines dashtype (12,5) linewidth 2 linecolor '#8a5a9e' title 'wanted'", *wanted);
    return script + "\n";
}

std::string csv_of(run_in_jars const& r, std::vector<parcel> const& sums, int first) {
    std::string csv = "jar,volume_L_20C,strength_percent_vol_20C,reading_percent_vol,average_percent_vol_20C,"
                      "end_min,end_distillate_percent_vol_20C,end_reading_percent_vol";
    auto const reading = [](std::optional<volume_fraction> const& q) {
        return q ? fmt::format("{:.10g}", q->percent()) : std::string();
    };
    for (std::size_t k = 0; k < r.jars.size(); ++k) {
        jar const& j = r.jars[k];
        int const place = static_cast<int>(k) + 1 - first;
        csv += fmt::format(
            "\n{},{:.10g},{:.10g},{},{},{:.10g},{:.10g},{}", k + 1, in(j.content.volume(celsius(20)), litre),
            j.content.strength().percent(), reading(j.reading),
            place < 0 ? std::string()
                      : fmt::format("{:.10g}", sums[static_cast<std::size_t>(place)].strength().percent()),
            in(j.end.elapsed, minute), percent_vol(j.end.distillate), reading(j.reading_at_end));
    }
    return csv + "\n";
}

json to_json(run_in_jars const& r, std::vector<parcel> const& sums, int first,
             std::optional<jar_cut> const& cut) {
    json jars = json::array();
    for (std::size_t k = 0; k < r.jars.size(); ++k) {
        jar const& j = r.jars[k];
        int const place = static_cast<int>(k) + 1 - first;
        json one{{"name", fmt::format("jar {}", k + 1)}};
        one.update(program::to_json(j.content));
        one["jar"] = static_cast<int>(k) + 1;
        one["reading_percent_vol"] = percent_or_null(j.reading);
        one["average_percent_vol_20C"] =
            place < 0 ? json(nullptr) : json(sums[static_cast<std::size_t>(place)].strength().percent());
        one["end_min"] = in(j.end.elapsed, minute);
        one["end_distillate_percent_vol_20C"] = percent_vol(j.end.distillate);
        one["end_reading_percent_vol"] = percent_or_null(j.reading_at_end);
        jars.push_back(one);
    }
    json at = nullptr;
    if (cut) {
        at = {{"first_jar", cut->first},
              {"whole_jars", cut->full},
              {"of_the_next_jar_L_20C", in(cut->part, litre)},
              {"product", program::to_json(cut->product)},
              {"elapsed_min", in(cut->at.elapsed, minute)},
              {"distillate_percent_vol_20C", percent_vol(cut->at.distillate)},
              {"reading_percent_vol", percent_or_null(cut->reading)},
              {"pot_C", cut->at.boiling.celsius()}};
    }
    distillation const& run = r.run;
    return {
        {"jars", jars},
        {"cut", at},
        {"foreshots",
         run.fractions.front().kept ? json(nullptr) : program::to_json(run.fractions.front().product)},
        {"residue", program::to_json(run.residue.liquid())},
        {"residue_extract_kg", in(run.residue.solids(), kilogram)},
        {"warming_min", in(run.warming.duration, minute)},
        {"boiling_min", in(run.boiling_time, minute)},
        {"heat_kWh", in(run.energy(), kilowatt_hour)},
        {"balance_relative_to_charge",
         {{"ethanol", run.balance.ethanol}, {"water", run.balance.water}, {"energy", run.balance.energy}}}};
}

/// "jars 3 to 7", "jar 3", or nothing
std::string jars_in_words(int first, int number) {
    if (number == 0) return "";
    return number == 1 ? fmt::format("jar {}", first)
                       : fmt::format("jars {} to {}", first, first + number - 1);
}

std::string headline(wording const& words, run_in_jars const& r, std::vector<parcel> const& sums, int first,
                     std::optional<jar_cut> const& cut) {
    auto const how_much = [&](parcel const& p) {
        return fmt::format("{} at {}", words.volume(p.volume(words.reference_temperature())),
                           words.strength(p.composition()));
    };
    auto const number = static_cast<int>(r.jars.size());
    if (!cut)
        return fmt::format("Together {}: {}.", jars_in_words(first, number + 1 - first),
                           how_much(sums.back()));
    std::string const whole = jars_in_words(cut->first, cut->full);
    std::string const part = cut->part.value() > 0.0
                                 ? fmt::format("{}{} of jar {}", whole.empty() ? "" : " and ",
                                               words.volume(cut->part), cut->first + cut->full)
                                 : std::string();
    return fmt::format("Take {}{}: {}.", whole, part, how_much(cut->product));
}

void run(session& s) {
    auto const charge_given = charge_options::offer(s);
    auto const still_given = still_options::offer(s);
    auto const plan_given = plan_options::offer(s);
    given const& jar_given = s.required("--jar", "VOLUME", "what goes into a jar, volume at 20 C");
    given const& discard =
        s.option("--discard", "VOLUME", "foreshots before the first jar, volume at 20 C", "0 mL");
    given const& ends =
        s.required("--end", "LIST", "end of the run, the first of: 'pot 1 %vol, elapsed 6 h'");
    given const& average =
        s.option("--average", "STRENGTH", "strength that the jars have together; says where to cut");
    given const& from_jar =
        s.option("--from-jar", "NUMBER", "first jar that is taken; those before it are heads", "1");
    surroundings const air = s.surroundings_options();
    auto const picture = picture_options::offer(s, "bar chart");
    s.explain(runs_explained);
    s.offer_us_units();
    s.offer_csv();
    s.parse();

    wash const charge = charge_given.read();
    still const apparatus = still_given.read();
    run_plan plan;
    std::vector<asked_condition> asked;
    plan_given.read(plan, asked);
    for (asked_condition const& each : read_conditions(ends)) {
        if (each.what.what() == condition::watched::kept_strength && !still_given.keep.present)
            refuse(each.from, "needs --keep-strength");
        asked.push_back(each);
        plan.ends.push_back(each.what);
    }
    jar_plan into{read_volume(jar_given)};
    if (discard.present) into.foreshots = read_volume(discard);
    int const first = read_count(from_jar, run_plan::most_cuts);
    boiling_curve const curve = read_curve(air);
    std::filesystem::path const path = picture.read();
    auto const named = [&](auto const& f) {
        return on_behalf_of(
            {{argument::volume_of_a_jar, jar_given},
             {argument::number_of_jars, jar_given},
             {argument::discarded_volume, discard},
             {argument::temperature_of_the_spout, plan_given.spout},
             {argument::average_of_the_jars, average},
             {argument::number_of_the_first_jar, from_jar},
             {argument::number_of_ends_of_the_run, ends}},
            [&] { return on_behalf_of_run(charge_given, still_given, plan_given, asked, f); });
    };
    run_in_jars const r = named([&] {
        progress_line line(who.name);
        return fill_jars(charge, apparatus, plan, into, curve,
                         [&](run_progress const& p) { line.show([&] { return how_far(p); }); });
    });
    if (first > static_cast<int>(r.jars.size()))
        refuse(from_jar, fmt::format("the run fills {} jars", r.jars.size()));
    std::optional<jar_cut> cut;
    std::optional<double> wanted;
    wording const words = s.words();
    if (average.present) {
        std::visit(
            [&](auto const& each) {
                cut = named(
                    [&] { return cut_for_average(charge, apparatus, plan, into, r, each, first, curve); });
                wanted = words.strength_number(to<mass_fraction>(each));
            },
            read_strength(average));
    }
    auto const sums = averages_from(r, first);

    page text;
    text.say("{}", headline(words, r, sums, first, cut));
    if (cut) {
        text.say("The cut comes {} after it began to boil: {} runs, which shows {} at {}; the pot is at {}.",
                 in_hours(cut->at.elapsed), words.strength(cut->at.distillate),
                 shown(words, to<mass_fraction>(cut->at.distillate), plan.spout_temperature),
                 words.temperature(plan.spout_temperature), words.rounded(cut->at.boiling));
    }
    text.gap();
    text.say("  jar   volume at {}   strength        shows at {}   average       until       runs at its end",
             words.temperature(words.reference_temperature()), words.temperature(plan.spout_temperature));
    for (std::size_t k = 0; k < r.jars.size(); ++k) {
        jar const& j = r.jars[k];
        int const place = static_cast<int>(k) + 1 - first;
        text.say("  {:>3} {:>17}   {:<15} {:>13}   {:<13} {:<11} {}", k + 1,
                 words.volume(j.content.volume(words.reference_temperature())),
                 words.strength(j.content.composition()),
                 shown(words, j.content.composition(), plan.spout_temperature),
                 place < 0 ? "heads" : words.strength(sums[static_cast<std::size_t>(place)].composition()),
                 in_hours(j.end.elapsed), words.strength(j.end.distillate));
    }
    text.gap();
    if (!r.run.fractions.front().kept)
        text.row("foreshots", "{} at {}, discarded",
                 words.volume(r.run.fractions.front().product.volume(words.reference_temperature())),
                 words.strength(r.run.fractions.front().product.composition()));
    text.row("time", "{} of warming and {} of boiling", in_hours(r.run.warming.duration),
             in_hours(r.run.boiling_time));
    text.row("left in the pot", "{}", words.strength(r.run.residue.liquid().composition()));
    assumptions assumed = still_given.assumed();
    assumed.unless_given(charge_given.solids, "no extract in the charge");
    assumed.unless_given(plan_given.spout, "the jars are read at 20 °C");
    assumed.say(text);
    if (picture.wanted()) picture.draw(s, text, path, picture_of(path, words, r, first, cut, wanted));
    text.gap();
    text.say("{}", run_caution);
    s.answer(text, s.in_json() ? to_json(r, sums, first, cut) : json(),
             s.in_csv() ? csv_of(r, sums, first) : "");
}

program::task const offered{who, run};

}  // namespace
