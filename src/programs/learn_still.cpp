// SPDX-License-Identifier: BSL-1.0
// Stages, efficiency, reflux and losses of a still, from its earlier runs or their logs.
#include "points.hpp"
#include "still_program.hpp"
#include "uncertainty_program.hpp"

#include <aqueth/still/learning.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <optional>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace program;

about const who{
    "learn_still",
    topic::in_still,
    "What do my earlier runs say about my still?",
    "Learns a still from earlier runs: its stages from what was collected, or more of its figures from logs.",
    "The Quillbeck teaching stillhouse once took 1.8 L of 90 % vol from 25 L of 11 % vol, reflux 3:\n"
    "  $ aqueth learn_still --run '25 L, 11 %vol, 100 mL, 1.8 L, 90 %vol' --reflux 3\n"
    "  The still works like 4.6 theoretical stages above the pot (4.0 to 5.5).",
    boiling_sources()};

// --- from what was collected -------------------------------------------------------------------------------

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
    // The library takes volumes at 20 °C. The discarded volume grows like the collected one, to a thousandth.
    auto const at_20_celsius = [&](given const& volume) {
        return parcel::of(read_volume(volume), collected, words.reference_temperature()).volume(celsius(20));
    };
    units::volume const discarded = parts[2].text == "none" ? units::volume() : at_20_celsius(parts[2]);
    return {wash::of(charge), discarded, at_20_celsius(parts[3]), to<volume_fraction>(collected)};
}

/// The azeotrope, which no column passes; nothing where the pressure is too low for one.
std::optional<volume_fraction> strongest_distillate(units::pressure p) {
    try {
        return to<volume_fraction>(azeotrope(p).liquid);
    } catch (refusal const&) {
        return std::nullopt;
    }
}

/// How far above the azeotrope a strength may be read, % vol: 95 % of the errors are within it.
double allowance(double uncertainty) { return 1.96 * uncertainty; }

/// Says that a strength above the azeotrope fits only because it is uncertain.
void say_above_azeotrope(page& text, wording const& words, volume_fraction read, volume_fraction limit,
                         double uncertainty) {
    text.say("{} is above the azeotrope, {}, which no column passes: it fits only within the\n"
             "stated uncertainty of {} (--uncertainty). Check that reading.",
             words.strength(to<mass_fraction>(read)), words.strength(to<mass_fraction>(limit)),
             words.strength_difference(uncertainty));
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

/// The options of both ways of learning.
struct learning_options {
    std::vector<given> const &runs, &logs;
    given const &learn, &stages, &plates, &efficiency, &holdup, &head_holdup, &cold, &ratio, &heat_loss,
        &loss, &room, &uncertainty, &kelvins, &volume, &time;
    surroundings air;

    static learning_options offer(session& s) {
        auto const& runs = s.repeated(
            "--run", "RUN",
            "'charge, strength, foreshots or none, collected, strength', all at 20 C (in US units 60 F)",
            false);
        auto const& logs =
            s.repeated("--log", "LOG",
                       "'FILE, charge, strength' of a run, then what is known: '1.5 kW, reflux 3'", false);
        given const& learn =
            s.option("--learn", "LIST",
                     "figures to learn from logs (default stages, or plate-efficiency with --plates)");
        given const& stages = s.option("--stages", "NUMBER", "theoretical stages above the pot, if known");
        given const& plates = s.option("--plates", "NUMBER", "real plates, instead of stages");
        given const& efficiency =
            s.option("--plate-efficiency", "SHARE", "Murphree efficiency of each, if known");
        given const& holdup =
            s.option("--plate-holds", "VOLUME", "liquid on each plate or stage while it runs", "0 mL");
        given const& head_holdup =
            s.option("--head-holds", "VOLUME", "liquid in condenser and reflux line", "0 mL");
        given const& cold =
            s.option("--reflux-temperature", "TEMP",
                     "temperature of the reflux where it enters the column (default boiling)");
        given const& ratio = s.option("--reflux", "RATIO", "reflux ratio of these runs, if known");
        given const& heat_loss =
            s.option("--heat-loss", "SHARE",
                     "share of the vapour that condenses in neck and head and runs back", "0 %");
        given const& loss = s.option("--pot-loss", "LOSS", "heat loss of the pot to the room", "0 W/K");
        given const& room = s.option("--room", "TEMP", "temperature of the room", "20 C");
        given const& uncertainty = s.option("--uncertainty", "NUMBER",
                                            "standard uncertainty of the measured strengths, % vol", "0.5");
        given const& kelvins = s.option("--temperature-uncertainty", "DIFFERENCE",
                                        "standard uncertainty of head and pot temperatures", "0.5 K");
        given const& volume = s.option("--volume-uncertainty", "VOLUME",
                                       "standard uncertainty of the volume collected", "10 mL");
        given const& time =
            s.option("--time-uncertainty", "TIME", "standard uncertainty of the times", "1 min");
        surroundings const air = s.surroundings_options();
        return {runs,  logs,      learn, stages, plates,      efficiency, holdup, head_holdup, cold,
                ratio, heat_loss, loss,  room,   uncertainty, kelvins,    volume, time,        air};
    }
};

void learn_from_runs(session& s, learning_options const& o) {
    auto const& given_runs = o.runs;
    given const& ratio = o.ratio;
    given const& heat_loss = o.heat_loss;
    given const& uncertainty = o.uncertainty;
    surroundings const& air = o.air;
    for (given const* const each : {&o.learn, &o.stages, &o.plates, &o.efficiency, &o.holdup, &o.head_holdup,
                                    &o.cold, &o.loss, &o.room, &o.kelvins, &o.volume, &o.time})
        require_beside(*each, false, "--log");
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
    volume_fraction const strongest =
        std::max_element(past.begin(), past.end(), [](past_run const& a, past_run const& b) {
            return a.strength < b.strength;
        })->strength;
    auto const azeotropic = strongest_distillate(curve.pressure());
    if (azeotropic && strongest > *azeotropic) {
        say_above_azeotrope(text, words, strongest, *azeotropic, u);
        text.gap();
    }
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
    if (known && first.explains && std::isfinite(first.stages)) {
        answer["still"] = {{"stages", fmt::format("{:.3g}", first.stages)},
                           {"reflux", fmt::format("{:.4g}", *known)},
                           {"heat-loss", fmt::format("{:.4g} %", 100.0 * share)}};
    }
    answer["assumed"] = assumed.to_json();
    s.answer(text, answer);
}

// --- from logs ---------------------------------------------------------------------------------------------

constexpr char const* log_format =
    "A FILE is a CSV table, one row a reading; its first line names the columns with their units:\n"
    "  time_min (or _s, _h), since the first distillate; collected_ml (_cl, _l, _fl_oz, _gal), at 20 °C;\n"
    "  strength_percent_vol at the spout; or reading_percent_vol of an alcoholometer there and\n"
    "    reading_temperature_c; the same of a jar filled since the row before: jar_strength_percent_vol,\n"
    "    or jar_reading_percent_vol and jar_temperature_c;\n"
    "  head_temperature_c, pot_temperature_c (temperatures also _k or _f).\n"
    "Any column and any cell may be missing, but not both time and volume. Commas, semicolons or tabs "
    "separate\n"
    "the cells; with the last two, numbers may have a decimal comma. Lines that begin with # are comments.\n"
    "Behind FILE, charge and strength a --log may have its power ('1.5 kW'), its reflux ('reflux 3'), the "
    "time\n"
    "before anything was taken ('total reflux 30 min'), and the extract of its charge ('1.5 plato').\n"
    "--learn takes: stages, plate-efficiency, heat-loss, reflux, pot-loss, plate-holds. A figure to learn "
    "may\n"
    "have a value from elsewhere with its standard uncertainty: --reflux '3 +- 0.3'.";

/// A value and, behind "+-", its standard uncertainty.
struct stated_value {
    given value;
    std::optional<given> uncertainty;

    explicit stated_value(given const& g) : value(g) {
        for (std::string_view const sign : {"+-", "±"}) {
            auto const at = g.text.find(sign);
            if (at == std::string::npos) continue;
            value.text = std::string(trimmed(std::string_view(g.text).substr(0, at)));
            uncertainty =
                given{label(g) + ", uncertainty",
                      std::string(trimmed(std::string_view(g.text).substr(at + sign.size()))), true};
        }
    }
};

/// A figure that can be learned: its word in --learn, its option, and how that is read.
struct learnable {
    char const* word;
    still_figure what;
    given const& option;
    double (*read)(given const&);
};

double read_number_of(given const& g) { return read_plain(g, 0.0, 1000.0); }
double read_share_of(given const& g) { return read_share(g); }
double read_loss_of(given const& g) {
    return read_as<units::thermal_conductance>(g, {"a heat loss", "W/K"}).value();
}

std::vector<learnable> learnables(learning_options const& o) {
    return {{"stages", still_figure::stages, o.stages, read_number_of},
            {"plate-efficiency", still_figure::plate_efficiency, o.efficiency, read_share_of},
            {"heat-loss", still_figure::neck_share, o.heat_loss, read_share_of},
            {"reflux", still_figure::reflux_ratio, o.ratio, read_number_of},
            {"pot-loss", still_figure::pot_loss, o.loss, read_loss_of},
            {"plate-holds", still_figure::plate_holdup, o.holdup, read_millilitres}};
}

/// The figures to learn, with what is known of them.
std::vector<still_unknown> read_unknowns(learning_options const& o, std::vector<learnable> const& all) {
    std::vector<still_unknown> unknowns;
    given wanted = o.learn;
    if (!o.learn.present) wanted.text = o.plates.present ? "plate-efficiency" : "stages";
    for (given const& part : parts_of(wanted)) {
        auto const found = std::find_if(all.begin(), all.end(),
                                        [&](learnable const& each) { return each.word == part.text; });
        if (found == all.end()) {
            refuse(part, "expected of: stages, plate-efficiency, heat-loss, reflux, pot-loss, plate-holds");
        }
        for (still_unknown const& each : unknowns)
            if (each.what == found->what) refuse(part, "named twice");
        still_unknown unknown{found->what};
        if (found->option.present) {
            stated_value const stated(found->option);
            if (!stated.uncertainty && found->option.set) {
                unknowns.push_back(unknown);  // what the settings say is what the logs are to tell
                continue;
            }
            if (!stated.uncertainty) {
                refuse(found->option,
                       fmt::format("{} is to be learned (--learn): leave the option out, or give its "
                                   "standard uncertainty behind +-",
                                   found->word));
            }
            unknown.known = found->read(stated.value);
            unknown.uncertainty = found->read(*stated.uncertainty);
        }
        unknowns.push_back(unknown);
    }
    return unknowns;
}

/// A log with the option and the file it came from.
struct log_given {
    given from;
    std::string file;
    run_log log;
    std::vector<std::string> ignored;
};

/// Reads "FILE, charge, strength" and what is known of the run: power, reflux, start, extract.
log_given read_log(given const& g, wording const& words) {
    auto parts = parts_of(g);
    if (parts.size() < 3)
        refuse(
            g,
            "expected FILE, charge, its strength, and what else is known: 'run.csv, 25 L, 11 %vol, 1.5 kW'");
    parts[0].name = label(g);
    parts[1].name = label(g) + ", charge";
    parts[2].name = label(g) + ", strength of the charge";
    std::optional<units::power> power;
    std::optional<double> ratio;
    std::optional<units::time> start;
    std::optional<double> plato;
    for (std::size_t i = 3; i < parts.size(); ++i) {
        given& part = parts[i];
        part.name = label(g);
        auto const take = [&](auto& known, auto const& read) {
            if (known) refuse(part, fmt::format("'{}' is a second figure of its kind", printable(part.text)));
            known = read();
        };
        auto const behind = [&](std::size_t letters) {
            return given{label(g), std::string(trimmed(std::string_view(part.text).substr(letters))), true};
        };
        if (part.text.starts_with("reflux ")) {
            take(ratio, [&] { return read_plain(behind(7), 0.0, 1000.0); });
        } else if (part.text.starts_with("total reflux ")) {
            take(start, [&] { return read_as<units::time>(behind(13), {"a time", "s, min or h"}); });
        } else if (part.text.ends_with("plato")) {
            take(plato, [&] { return read_extract(part).degrees(); });
        } else {
            take(power, [&] {
                return read_as<units::power>(
                    part, {"a power", "W or kW; or 'reflux R', 'total reflux TIME', 'N plato'"});
            });
        }
    }
    auto const whole = composition(read_strength(parts[2]));
    auto const how_much = read_amount(parts[1]);
    wash const charge = on_behalf_of(parts[1], [&] {
        parcel const p = make_parcel(how_much, whole, words.reference_temperature());
        if (!plato) return wash::of(p);
        return wash::of(p.volume(), to<volume_fraction>(whole), extract(*plato),
                        words.reference_temperature());
    });
    given const file{g.name, parts[0].text, true};
    run_log_rows rows;
    try {
        rows = parse_run_log(read_file(file, "a log"));
    } catch (text_error const& e) {
        refuse(file, e.what());
    }
    bool const all_volumes = std::all_of(rows.rows.begin(), rows.rows.end(),
                                         [](log_row const& row) { return row.collected.has_value(); });
    if (!power && !all_volumes) {
        refuse(file, "the power is missing: a row without a volume needs the power of its run, "
                     "as in 'FILE, 25 L, 11 %vol, 2 kW'");
    }
    return {g,
            parts[0].text,
            {charge, std::move(rows.rows), power, ratio, start.value_or(units::time()), {}},
            std::move(rows.ignored_columns)};
}

/// The still as far as it is known.
still read_known(learning_options const& o, std::vector<learnable> const& all,
                 std::vector<still_unknown> const& unknowns, std::vector<log_given> const& logs) {
    auto const learned = [&](still_figure f) {
        return std::any_of(unknowns.begin(), unknowns.end(),
                           [=](still_unknown const& u) { return u.what == f; });
    };
    for (learnable const& each : all) {
        if (each.option.present && !learned(each.what) && stated_value(each.option).uncertainty)
            refuse(each.option, fmt::format("an uncertainty needs --learn '{}'", each.word));
    }
    if (o.plates.present && (o.stages.present || learned(still_figure::stages)))
        throw bad_input("give stages or --plates, not both");
    if (!o.plates.present) {
        require_beside(o.efficiency, false, "--plates");
        if (learned(still_figure::plate_efficiency))
            throw bad_input("learning plate-efficiency needs --plates");
    }
    bool const column_known = o.plates.present || o.stages.present;
    bool const reflux_known = o.ratio.present || learned(still_figure::reflux_ratio) || o.heat_loss.present ||
                              learned(still_figure::neck_share) ||
                              std::all_of(logs.begin(), logs.end(),
                                          [](log_given const& l) { return l.log.reflux_ratio.has_value(); });
    if (!reflux_known && (column_known || learned(still_figure::stages)))
        throw bad_input("a column has no effect without reflux: give --reflux, or name reflux in --learn");
    still known{{1.0 * kilowatt}};
    auto const value = [&](still_figure f, double otherwise) {
        for (learnable const& each : all)
            if (each.what == f && !learned(f) && (each.option.present || !each.option.text.empty()))
                return each.read(each.option);
        return otherwise;
    };
    on_behalf_of({{argument::heat_loss_coefficient, o.loss},
                  {argument::temperature_of_the_room, o.room},
                  {argument::share_of_the_vapour_that_condenses, o.heat_loss},
                  {argument::murphree_efficiency, o.efficiency},
                  {argument::number_of_stages, o.stages},
                  {argument::holdup, o.holdup},
                  {argument::temperature_of_the_reflux, o.cold}},
                 [&] {
                     if (o.plates.present) {
                         known.tower = column::of_plates(read_count(o.plates, 100),
                                                         value(still_figure::plate_efficiency, 0.6));
                     } else if (!learned(still_figure::stages)) {
                         known.tower = column::of_stages(value(still_figure::stages, 0.0));
                     }
                     known.tower = known.tower.holding(value(still_figure::plate_holdup, 0.0) * millilitre);
                     known.neck = neck::condensing(value(still_figure::neck_share, 0.0));
                     known.head =
                         head::total_condenser(reflux::constant(value(still_figure::reflux_ratio, 0.0)));
                     if (o.cold.present) known.head = known.head.reflux_at(read_any_temperature(o.cold));
                     known.pot.loss = value(still_figure::pot_loss, 0.0) * watt_per_kelvin;
                     on_behalf_of(o.head_holdup, [&] {
                         known.head = known.head.holding(read_millilitres(o.head_holdup) * millilitre);
                     });
                     known.pot.room = read_any_temperature(o.room);
                     known.pot.require_possible();
                 });
    return known;
}

char const* word_of(std::vector<learnable> const& all, still_figure f) {
    return std::find_if(all.begin(), all.end(), [=](learnable const& each) { return each.what == f; })->word;
}

/// A figure as its option takes it; without its unit in the lower end of an interval.
std::string written(still_figure f, double value, int decimals, bool with_unit = true) {
    bool const share = f == still_figure::neck_share;
    std::string const unit = share ? "%" : unit_of(f);
    return fmt::format("{:.{}f}{}{}", share ? 100.0 * value : value,
                       share ? (std::max)(0, decimals - 2) : decimals, unit.empty() || !with_unit ? "" : " ",
                       with_unit ? unit : "");
}

std::string in_words(learned_figure const& f) {
    if (std::isinf(f.uncertainty))
        return fmt::format("not determined (a still with {} would fit)", written(f.what, f.value, 2));
    int const d = decimals_for(f.uncertainty);
    return fmt::format("{}, standard uncertainty {}; 95 %: {} to {}{}", written(f.what, f.value, d),
                       written(f.what, f.uncertainty, d), written(f.what, f.lowest, d, false),
                       written(f.what, f.highest, d), f.at_limit ? " (at its limit)" : "");
}

/// A difference of readings of one quantity.
std::string difference_of(wording const& words, log_quantity q, double value, bool with_sign) {
    std::string const sign = !with_sign ? "" : value < 0.0 ? "-" : "+";
    double const size = std::abs(value);
    if (q == log_quantity::time) return fmt::format("{}{} min", sign, plain_digits(size, 2));
    if (q == log_quantity::head_temperature || q == log_quantity::pot_temperature)
        return sign + words.difference(size * kelvins);
    return sign + words.strength_difference(size);
}

json to_json(learned_still const& r, std::vector<learnable> const& all, std::vector<log_given> const& logs) {
    json figures = json::object(), residuals = json::array(), alike = json::array();
    for (std::size_t j = 0; j < r.figures.size(); ++j) {
        learned_figure const& f = r.figures[j];
        bool const known = !std::isinf(f.uncertainty);
        json correlations = json::object();
        for (std::size_t k = 0; k < r.figures.size(); ++k)
            if (k != j) correlations[word_of(all, r.figures[k].what)] = r.correlations[j][k];
        figures[word_of(all, f.what)] = {{"value", f.value},
                                         {"unit", unit_of(f.what)},
                                         {"standard_uncertainty", known ? json(f.uncertainty) : json()},
                                         {"lowest_95_percent", known ? json(f.lowest) : json()},
                                         {"highest_95_percent", known ? json(f.highest) : json()},
                                         {"at_limit", f.at_limit},
                                         {"correlations", correlations}};
    }
    for (log_residuals const& q : r.residuals) {
        residuals.push_back({{"quantity", name_of(q.what)},
                             {"unit", unit_of(q.what)},
                             {"readings", q.count},
                             {"mean", q.mean},
                             {"root_mean_square", q.root_mean_square},
                             {"over_stated_uncertainty", q.relative},
                             {"largest", q.largest},
                             {"largest_in_log", logs[q.log].file},
                             {"largest_in_line", logs[q.log].log.rows[q.row].line}});
    }
    for (alike_figures const& a : r.not_told_apart) {
        json together = json::object();
        for (auto const& c : a.together) together[word_of(all, c.what)] = c.by;
        alike.push_back({{"together", together}, {"correlation", a.correlation}, {"remedy", remedy_for(a)}});
    }
    return {{"figures", figures},
            {"not_told_apart", alike},
            {"residuals", residuals},
            {"chi_squared", r.chi_squared},
            {"degrees_of_freedom", r.degrees_of_freedom},
            {"consistent", r.consistent},
            {"scatter_over_stated", r.scatter},
            {"coverage_factor", r.coverage_factor}};
}

using chosen_options = std::vector<std::pair<std::string, std::string>>;

/// The options with which forecast_run takes the learned still: names without dashes, and values.
chosen_options as_options(learned_still const& r, learning_options const& o,
                          std::vector<log_given> const& logs) {
    chosen_options options;
    auto const add = [&](char const* name, std::string value) {
        options.emplace_back(name, std::move(value));
    };
    column const& tower = r.found.tower;
    if (o.plates.present) {
        add("plates", fmt::format("{}", tower.whole()));
        add("plate-efficiency", plain_digits(tower.efficiency(), 3));
    } else if (tower.whole() + tower.topmost() > 0.0) {
        add("stages", plain_digits(tower.whole() + tower.topmost(), 3));
    }
    // The reflux of the logs, if all were made with the same, stands for the still's.
    double ratio = r.found.head.returned().ratio();
    double const of_first = logs.front().log.reflux_ratio.value_or(0.0);
    bool const all_alike = std::all_of(logs.begin(), logs.end(), [=](log_given const& each) {
        return each.log.reflux_ratio.value_or(0.0) == of_first;
    });
    if (!(ratio > 0.0) && all_alike) ratio = of_first;
    if (ratio > 0.0) add("reflux", plain_digits(ratio, 3));
    if (r.found.neck.share() > 0.0) add("heat-loss", plain_digits(100.0 * r.found.neck.share(), 2) + " %");
    if (r.found.pot.loss.value() > 0.0) add("pot-loss", plain_digits(r.found.pot.loss.value(), 2) + " W/K");
    if (r.found.tower.holdup().value() > 0.0)
        add("plate-holds", plain_digits(in(r.found.tower.holdup(), millilitre), 2) + " mL");
    if (r.found.head.holdup().value() > 0.0)
        add("head-holds", plain_digits(in(r.found.head.holdup(), millilitre), 2) + " mL");
    if (o.cold.present) add("reflux-temperature", printable(o.cold.text));
    return options;
}

/// The same on a command line.
std::string in_words(chosen_options const& options) {
    std::string text;
    for (auto const& [name, value] : options) {
        char const* const quote = value.find(' ') == std::string::npos ? "" : "'";
        text += fmt::format(" --{} {}{}{}", name, quote, value, quote);
    }
    return text;
}

void say_agreement(page& text, wording const& words, learned_still const& r,
                   std::vector<log_given> const& logs) {
    for (log_residuals const& q : r.residuals) {
        text.row(name_of(q.what), "{} reading{}, off by {} (root mean square), {} times what was stated",
                 q.count, q.count == 1 ? "" : "s", difference_of(words, q.what, q.root_mean_square, false),
                 plain_digits(q.relative, 2));
        if (q.count > 1)
            text.row("", "most in line {} of {}: {} from the forecast", logs[q.log].log.rows[q.row].line,
                     printable(logs[q.log].file), difference_of(words, q.what, q.largest, true));
    }
    if (!(r.degrees_of_freedom > 0.0)) {
        text.row("agreement", "not tested: no more readings than figures to learn");
        return;
    }
    text.row("agreement", "chi-squared {:.1f} with {:g} degree{} of freedom: {}", r.chi_squared,
             r.degrees_of_freedom, r.degrees_of_freedom == 1.0 ? "" : "s",
             r.consistent ? "logs and forecast agree" : "logs and forecast contradict each other");
}

/// The strongest distillate in the logs; one that no column gives, however uncertain, is refused.
std::optional<volume_fraction> strongest_of(std::vector<log_given> const& logs, wording const& words,
                                            std::optional<volume_fraction> const& azeotropic,
                                            double uncertainty) {
    std::optional<volume_fraction> strongest;
    for (log_given const& each : logs) {
        for (log_row const& row : each.log.rows) {
            for (auto const& [name, read] : {std::pair("strength of the distillate", row.strength),
                                             std::pair("strength of the jar", row.jar_strength)}) {
                if (!read) continue;
                if (!strongest || *read > *strongest) strongest = read;
                if (!azeotropic || read->percent() <= azeotropic->percent() + allowance(uncertainty))
                    continue;
                refuse(
                    each.from,
                    fmt::format("line {}: {} {} is outside 0 to {}, the azeotrope, which no column passes; "
                                "the stated uncertainty is {} (--uncertainty)",
                                row.line, name, words.strength(to<mass_fraction>(*read)),
                                words.strength(to<mass_fraction>(*azeotropic)),
                                words.strength_difference(uncertainty)));
            }
        }
    }
    return strongest;
}

void learn_from_logs(session& s, learning_options const& o) {
    wording const words = s.words();
    std::vector<learnable> const all = learnables(o);
    std::vector<still_unknown> const unknowns = read_unknowns(o, all);
    std::vector<log_given> logs;
    for (given const& each : o.logs) logs.push_back(read_log(each, words));
    still const known = read_known(o, all, unknowns, logs);
    log_uncertainties u;
    u.strength = read_plain(o.uncertainty, 0.01, 5.0);
    u.head_temperature = u.pot_temperature = on_behalf_of(o.kelvins, [&] {
        return require_range("input", "difference", read_temperature_difference(o.kelvins), "K", 0.01, 10.0);
    });
    u.volume = read_millilitres(o.volume) * millilitre;
    u.time = read_as<units::time>(o.time, {"a time", "s, min or h"});
    boiling_curve const curve = read_curve(o.air);
    auto const azeotropic = strongest_distillate(curve.pressure());
    auto const strongest = strongest_of(logs, words, azeotropic, u.strength);

    std::vector<run_log> read;
    for (log_given const& each : logs) read.push_back(each.log);
    auto const learn = [&](std::span<run_log const> of, boiling_curve const& mixture, auto const& progress) {
        return learn_still(known, of, std::span<still_unknown const>(unknowns), u, mixture, progress);
    };
    // each by itself and no further than its first run, to name the one that cannot be
    for (std::size_t i = 0; i < logs.size(); ++i) {
        on_behalf_of(logs[i].from, [&] {
            static_cast<void>(learn(std::span<run_log const>(read).subspan(i, 1), curve,
                                    [](learning_progress const&) { return false; }));
        });
    }
    progress_line line(who.name);
    auto const show = [&](char const* search) {
        return [&line, search](learning_progress const& p) {
            line.show([&] {
                std::string const done = fmt::format("{}{} runs forecast", search, p.forecasts);
                bool const all_logs_once = std::isfinite(p.chi_squared);
                return all_logs_once ? fmt::format("{}, chi-squared {:.4g}", done, p.chi_squared) : done;
            });
            return true;
        };
    };
    learned_still const r = learn(read, curve, show(""));
    std::optional<learned_still> weaker;
    if (vapour_uncertainty_known(curve.pressure()))
        weaker = learn(read, boiling_curve(curve_with_vapour_shifted(curve.pressure(), -1.0)),
                       show("weaker vapour, "));

    page text;
    std::size_t readings = 0;
    for (log_residuals const& q : r.residuals) readings += q.count;
    text.say("From {} log{} with {} reading{}, the still has:", logs.size(), logs.size() == 1 ? "" : "s",
             readings, readings == 1 ? "" : "s");
    for (learned_figure const& f : r.figures) text.row(name_of(f.what), "{}", in_words(f));
    text.gap();
    if (azeotropic && strongest && *strongest > *azeotropic) {
        say_above_azeotrope(text, words, *strongest, *azeotropic, u.strength);
        text.gap();
    }
    if (!r.consistent) {
        text.say(
            "Logs and forecast contradict each other: they differ by {} times the stated uncertainties.\n"
            "Look at the lines named below for slips. If there are none, this kind of still does not "
            "describe\n"
            "yours, or a known figure is wrong. The uncertainties above allow for the scatter.",
            plain_digits(r.scatter, 2));
        text.gap();
    }
    for (alike_figures const& a : r.not_told_apart) {
        std::string sentence = aqueth::in_words(a);
        sentence.front() = 'T';
        if (auto const colon = sentence.find(": "); colon != std::string::npos) sentence[colon + 1] = '\n';
        text.say("{}.\nRemedy: {}.", sentence, remedy_for(a));
        text.gap();
    }
    if (r.not_told_apart.empty() && r.figures.size() > 1) {
        text.say("The logs tell all of these apart.");
        text.gap();
    }
    for (std::size_t j = 0; j < r.figures.size(); ++j) {
        for (std::size_t k = j + 1; k < r.figures.size(); ++k)
            text.row(j == 0 && k == 1 ? "correlation" : "", "{:+.2f} between {} and {}", r.correlations[j][k],
                     name_of(r.figures[j].what), name_of(r.figures[k].what));
    }
    say_agreement(text, words, r, logs);
    if (weaker) {
        std::string changed;
        for (learned_figure const& f : weaker->figures)
            changed += fmt::format(
                "{}{} {}", changed.empty() ? "" : ", ", name_of(f.what),
                written(f.what, f.value, std::isinf(f.uncertainty) ? 2 : decimals_for(f.uncertainty)));
        text.row("equilibrium", "if the vapour is weaker by one standard uncertainty:");
        text.row("", "{}", changed);
    }
    for (log_given const& each : logs) {
        bool const has_times = std::any_of(each.log.rows.begin(), each.log.rows.end(),
                                           [](log_row const& row) { return row.elapsed && row.collected; });
        if (!each.log.power && has_times)
            text.row("not used", "the times of {}: they need its power ('1.5 kW' in --log)",
                     printable(each.file));
        if (each.ignored.empty()) continue;
        std::vector<std::string> names;
        for (std::string const& name : each.ignored) names.push_back(printable(name));
        text.row("not used", "of {}: {}", printable(each.file), number_table::listed(names));
    }
    assumptions assumed;
    auto const is_learned = [&](still_figure f) {
        return std::any_of(unknowns.begin(), unknowns.end(),
                           [=](still_unknown const& each) { return each.what == f; });
    };
    if (!is_learned(still_figure::neck_share))
        assumed.unless_given(o.heat_loss, "no vapour condenses in neck and head");
    if (!is_learned(still_figure::pot_loss)) assumed.unless_given(o.loss, "the pot loses no heat");
    if (!is_learned(still_figure::plate_holdup))
        assumed.unless_given(o.holdup, "no liquid stays in the column");
    assumed.unless_given(o.uncertainty, "strengths uncertain by " + words.strength_difference(u.strength));
    assumed.unless_given(o.kelvins, words.us ? "temperatures by 0.9 °F" : "temperatures by 0.5 K");
    assumed.unless_given(o.volume, words.us ? "volumes by 0.34 US fl oz" : "volumes by 10 mL");
    assumed.unless_given(o.time, "times by 1 min");
    if (!o.air.pressure.present) assumed.unless_given(o.air.altitude, "air as at sea level");
    assumed.say(text);
    auto const options = as_options(r, o, logs);
    if (!options.empty()) text.row("forecast with it", "aqueth forecast_run{} ...", in_words(options));
    text.gap();
    text.say("{}", run_caution);
    json answer = to_json(r, all, logs);
    if (weaker) {
        json shifted = json::object();
        for (learned_figure const& f : weaker->figures) shifted[word_of(all, f.what)] = f.value;
        answer["with_vapour_weaker_by_standard_uncertainty"] = shifted;
    }
    answer["assumed"] = assumed.to_json();
    for (auto const& [name, value] : options) answer["still"][name] = value;
    s.answer(text, answer);
}

void run(session& s) {
    learning_options const o = learning_options::offer(s);
    s.explain(log_format);
    s.offer_us_units();
    s.parse();
    if (o.runs.empty() == o.logs.empty()) throw bad_input("give --run or --log, and only one of them");
    if (o.logs.empty()) {
        learn_from_runs(s, o);
    } else {
        learn_from_logs(s, o);
    }
}

program::task const offered{who, run};

}  // namespace
