// SPDX-License-Identifier: BSL-1.0
// Conformity of a bottle with its label, within the tolerance of the law.
#include "uncertainty_program.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace {

using namespace program;

about const who{
    "check_label",
    topic::in_bottles,
    "Does the bottle match its label?",
    "Decides whether measurements show, with the confidence wanted, that the strength or the contents of a\n"
    "bottle match its label within the tolerance. Also: which uncertainty and how many readings are enough.",
    "The Quillbeck teaching stillhouse labels 43 % vol and measures 43.12, standard uncertainty 0.08:\n"
    "  $ aqueth check_label --label '43 %vol' --measured '43.12 %vol' --uncertainty '0.08 %vol'\n"
    "  Strength: within the tolerance, with 98.8 % probability (95 % wanted).",
    {jcgm_106_cited, gum_cited, correlation::oiml_r22::cited}};

/// A quantity as it was measured, in the unit of its tolerance: readings, or one reading with its
/// uncertainty.
struct measured {
    reading_series series;
    bool deviation_known;  ///< whether it is known how much one reading scatters
};

/// Type A of the readings, type B of what was told, put together. A repeatability from experience replaces
/// the scatter of these few readings.
measured put_together(std::vector<double> const& readings, double systematic, given const& repeatability,
                      double told_deviation) {
    double const n = static_cast<double>(readings.size());
    if (readings.size() == 1) {
        return {{readings[0], n, told_deviation, deviation_known_from::long_experience, systematic},
                told_deviation > 0.0};
    }
    input_quantity const mean = input_quantity::repeated("readings", "", readings);
    double const spread = mean.standard_uncertainty() * std::sqrt(n);
    if (told_deviation == 0.0) {
        return {{mean.estimate(), n, spread, deviation_known_from::these_readings, systematic}, spread > 0.0};
    }
    // Two readings of a normal distribution scatter so much once in a thousand times, more readings less
    // often.
    if (spread > 3.3 * told_deviation) {
        refuse(repeatability,
               fmt::format("the measurements scatter by {} % vol, more than three times as much: find the "
                           "cause, or leave --repeatability out",
                           sized(spread, spread)));
    }
    return {{mean.estimate(), n, told_deviation, deviation_known_from::long_experience, systematic}, true};
}

char const* verdict(conformity_decision d) {
    switch (d) {
    case conformity_decision::conforms: return "within the tolerance";
    case conformity_decision::does_not_conform: return "outside the tolerance";
    case conformity_decision::undecided: break;
    }
    return "the measurement cannot tell";
}

/// How a quantity is written.
struct notation_of {
    char const* unit;
    int decimals;          ///< of limits
    char const* mean;      ///< "the mean", "the average"
    char const* readings;  ///< "readings", "bottles"
};

/// The limits to print: a strength ends at 0 and at 100 % vol.
tolerance_interval permitted(tolerance_interval t, notation_of const& as) {
    if (!std::string_view(as.unit).starts_with("% vol")) return t;
    return {(std::max)(t.lower, 0.0), (std::min)(t.upper, 100.0)};
}

std::string in_words(tolerance_interval const& limits, notation_of const& as) {
    tolerance_interval const t = permitted(limits, as);
    if (std::isinf(t.upper)) return fmt::format("{:.{}f} {} or more", t.lower, as.decimals, as.unit);
    return fmt::format("{:.{}f} to {:.{}f} {}", t.lower, as.decimals, t.upper, as.decimals, as.unit);
}

/// The measured values that pass, rounded inwards: a value that is printed passes.
std::string to_pass(tolerance_interval const& a, notation_of const& as) {
    for (int decimals = as.decimals;; ++decimals) {
        double const unit = std::pow(10.0, -decimals);
        double const lower = std::ceil(a.lower / unit - 1e-6) * unit;
        double const upper = std::floor(a.upper / unit + 1e-6) * unit;
        if (std::isinf(a.upper))
            return fmt::format("{} must be {:.{}f} {} or more", as.mean, lower, decimals, as.unit);
        if (std::isinf(a.lower))
            return fmt::format("{} must be {:.{}f} {} or less", as.mean, upper, decimals, as.unit);
        if (lower <= upper || decimals == 9) {
            return fmt::format("{} must be between {:.{}f} and {:.{}f} {}", as.mean, lower, decimals, upper,
                               decimals, as.unit);
        }
    }
}

/// An uncertainty that is enough, rounded down, with so many digits that it differs from the one there is.
std::string enough_in_words(double enough, double present) {
    for (int digits = 2;; ++digits) {
        double const unit = std::pow(10.0, std::floor(std::log10(enough)) + 1 - digits);
        std::string const text = number(std::floor(enough / unit + 1e-6) * unit, digits);
        if (digits == 6 || text != number(present, digits)) return text;
    }
}

/// One quantity judged: the decision, and what would be enough for it to conform.
struct judgement {
    tolerance_interval tolerance;
    measured seen;
    double confidence;
    measurement_result result;
    double probability;  ///< of conformity
    conformity_decision decision;
    std::optional<double> needed_uncertainty, needed_readings;

    judgement(tolerance_interval const& t, measured const& m, double p)
        : tolerance(t),
          seen(m),
          confidence(p),
          result(result_of(m.series)),
          probability(conformance_probability(t, result)),
          decision(decide(t, result, p)) {
        if (!(t.lower < result.estimate && result.estimate < t.upper)) return;
        needed_uncertainty = largest_uncertainty(t, result.estimate, p, result.degrees_of_freedom);
        if (!m.deviation_known) return;
        try {
            needed_readings = aqueth::readings_needed(t, m.series, p);
        } catch (refusal const&) {  // no number of them is enough
        }
    }

    /// the probability that the verdict rests on
    std::string how_sure() const {
        double const p = decision == conformity_decision::does_not_conform ? 1.0 - probability : probability;
        return fmt::format("{} probability ({:g} % wanted)", percent(p), 100.0 * confidence);
    }

    /// What would be enough, if the measurement cannot tell.
    std::string enough(notation_of const& as) const {
        double const u = result.standard_uncertainty;
        if (!needed_uncertainty && tolerance.lower <= result.estimate && result.estimate <= tolerance.upper)
            return fmt::format("nothing: {} is on the limit, and no uncertainty is small enough there",
                               as.mean);
        if (!needed_uncertainty)
            return fmt::format(
                "nothing: {} is outside the tolerance, and a better measurement can only confirm that",
                as.mean);
        if (needed_readings) {
            reading_series more = seen.series;
            more.count = *needed_readings;
            return fmt::format("{:.0f} {} with {} and scatter unchanged: standard uncertainty {} {}",
                               *needed_readings, as.readings, as.mean,
                               number(result_of(more).standard_uncertainty, 3), as.unit);
        }
        std::string text =
            fmt::format("a standard uncertainty of {} {}", enough_in_words(*needed_uncertainty, u), as.unit);
        if (seen.deviation_known) {
            text += fmt::format("; more {} do not help: {} {} is systematic", as.readings,
                                number(seen.series.systematic, 2), as.unit);
        }
        return text;
    }

    void rows(page& text, notation_of const& as) const {
        double const u = result.standard_uncertainty;
        text.gap();
        if (decision == conformity_decision::undecided) text.row("enough", "{}", enough(as));
        text.row("measured", "{} {}, standard uncertainty {} {}{}", sized(result.estimate, u), as.unit,
                 sized(u, u), as.unit,
                 seen.series.count > 1.0 ? fmt::format(", {:.0f} {}", seen.series.count, as.readings) : "");
        text.row("permitted", "{}", in_words(tolerance, as));
        try {
            tolerance_interval const a =
                acceptance_interval(tolerance, u, confidence, result.degrees_of_freedom);
            text.row("to pass", "{}", to_pass(a, as));
        } catch (refusal const& e) {
            text.row("to pass", "impossible: the standard uncertainty must first be below {} {}",
                     enough_in_words(e.upper(), u), as.unit);
        }
    }

    /// @param unit the end of the names of numbers, such as "_mL"
    json data(std::string const& unit, notation_of const& as) const {
        tolerance_interval const limits = permitted(tolerance, as);
        json d{{"measured" + unit, result.estimate},
               {"standard_uncertainty" + unit, result.standard_uncertainty},
               {"effective_degrees_of_freedom", finite(result.degrees_of_freedom)},
               {"readings", seen.series.count},
               {"permitted" + unit, {finite(limits.lower), finite(limits.upper)}},
               {"probability_of_conformity", probability},
               {"confidence_wanted", confidence},
               {"decision", verdict(decision)},
               {"acceptance" + unit, json()},
               {"needed_standard_uncertainty" + unit, json()},
               {"needed_readings", json()}};
        try {
            tolerance_interval const a = acceptance_interval(tolerance, result.standard_uncertainty,
                                                             confidence, result.degrees_of_freedom);
            d["acceptance" + unit] = {finite(a.lower), finite(a.upper)};
        } catch (refusal const&) {  // no measured value would do
        }
        if (needed_uncertainty) d["needed_standard_uncertainty" + unit] = *needed_uncertainty;
        if (needed_readings) d["needed_readings"] = *needed_readings;
        return d;
    }

    static json finite(double x) { return std::isfinite(x) ? json(x) : json(); }
};

/// a strength in % vol at the temperature of the tolerance
template <class Reference>
double percent_at(strength const& s) {
    return to<basic_volume_fraction<Reference>>(composition(s)).percent();
}

json check_strength(page& text, given const& label, std::vector<given> const& readings,
                    given const& uncertainty, given const& repeatability, given const& tolerance,
                    double confidence) {
    strength const stated = read_strength(label);
    bool const stated_at_60 = std::holds_alternative<us_proof>(stated) ||
                              std::holds_alternative<basic_volume_fraction<at_60_fahrenheit>>(stated);
    strength_tolerance const* law = find_strength_tolerance(trimmed(tolerance.text));
    strength_tolerance own{"own",
                           "",
                           0.0,
                           stated_at_60 ? at_60_fahrenheit::temperature() : at_20_celsius::temperature(),
                           provenance::common_practice,
                           "as told",
                           ""};
    if (!law) {
        if (tolerance.text.empty() || !(is_digit(tolerance.text[0]) || tolerance.text[0] == '.'))
            refuse(tolerance,
                   "neither a tolerance listed by --laws nor a difference of strengths like '0.3 %vol'");
        own.percent_vol = read_strength_difference(tolerance, 1e-3);
        law = &own;
    }
    bool const us = law->reference == at_60_fahrenheit::temperature();
    if (us && !stated_at_60) refuse(label, "this tolerance needs a label in proof or '%vol at 60 F'");
    if (!us && !std::holds_alternative<volume_fraction>(stated))
        refuse(label, "this tolerance needs a label in %vol");
    auto const number = [&](strength const& s) {
        return us ? percent_at<at_60_fahrenheit>(s) : percent_at<at_20_celsius>(s);
    };
    std::vector<double> percents;
    for (given const& each : readings) percents.push_back(number(read_strength(each)));
    if (percents.size() == 1 && !uncertainty.present)
        throw bad_input("--uncertainty is required: a single measurement does not show its own uncertainty");
    double const systematic = uncertainty.present ? read_strength_difference(uncertainty) : 0.0;
    double const told = repeatability.present ? read_strength_difference(repeatability) : 0.0;
    measured const m = put_together(percents, systematic, repeatability, told);
    if (!(std::hypot(m.series.deviation, systematic) > 0.0)) {
        if (uncertainty.present) refuse(uncertainty, "the uncertainty must be above 0");
        throw bad_input("--measured: readings that do not differ need --uncertainty as well");
    }
    // as the tolerance has it, from the number on the label
    double const at_label = number(stated);
    constexpr double rounding = 1e-9;
    if (!(at_label > law->above + rounding || law->above == 0.0) || at_label > law->up_to + rounding)
        refuse(label, fmt::format("the tolerance {} is for {}", law->key, law->drinks));
    tolerance_interval limits = us ? permitted_strengths(by_volume<at_60_fahrenheit>(at_label), *law)
                                   : permitted_strengths(by_volume(at_label), *law);
    // A mean on a limit is permitted, whatever the rounding of 43 - 0.3.
    double const mean = result_of(m.series).estimate;
    for (double* each : {&limits.lower, &limits.upper})
        if (std::abs(mean - *each) < rounding) *each = mean;
    // Where strengths end there is nothing to exceed.
    bool const from_water = limits.lower <= 0.0, to_ethanol = limits.upper >= 100.0;
    if (from_water && to_ethanol) refuse(tolerance, "permits every strength");
    if (from_water) limits.lower = -unlimited;
    if (to_ethanol) limits.upper = unlimited;
    judgement const j(limits, m, confidence);
    text.say("Strength: {}, with {}.",
             j.decision == conformity_decision::undecided
                 ? "the measurement cannot tell; within the tolerance"
                 : verdict(j.decision),
             j.how_sure());
    notation_of const as{us ? "% vol at 60 °F" : "% vol", 2, "the mean", "readings"};
    j.rows(text, as);
    json data = j.data(us ? "_percent_vol_60F" : "_percent_vol_20C", as);
    text.row("tolerance", "±{:g} % vol: {}", law->percent_vol, law->citation);
    if (*law->drinks) text.row("", "for {}", law->drinks);
    if (*law->remark) text.row("", "{}", law->remark);
    data["tolerance_percent_vol"] = law->percent_vol;
    data["tolerance_source"] = law->citation;
    return data;
}

/// One bottle beside the limits for a single one.
struct bottle_judged {
    double contents;  ///< mL at the temperature of the label
    conformity_decision decision;
    double probability;  ///< that it is within the tolerance for one bottle
    bool below_least;    ///< shown to be below the lowest contents allowed
    double above_least;  ///< probability that it is not
};

bottle_judged judge_bottle(fill_limits const& limits, double ml, double u, double confidence) {
    tolerance_interval const least{limits.least, unlimited};
    measurement_result const m{ml, u};
    return {ml, decide(limits.single, m, confidence), conformance_probability(limits.single, m),
            decide(least, m, confidence) == conformity_decision::does_not_conform,
            conformance_probability(least, m)};
}

/// The verdict on a single bottle, in words.
std::string bottle_in_words(bottle_judged const& b, double label, double u) {
    std::string const is = b.contents < label ? fmt::format("{} mL short", sized(label - b.contents, u))
                                              : std::string("not short");
    if (b.below_least) return is + ", below the lowest contents allowed for any bottle";
    switch (b.decision) {
    case conformity_decision::conforms:
        return b.contents < label ? is + ", within the tolerance for one bottle" : is;
    case conformity_decision::does_not_conform:
        return is + ", more than the tolerance for one bottle; only a few may be";
    case conformity_decision::undecided: break;
    }
    return is + ", and the measurement cannot tell whether that is within the tolerance for one bottle";
}

/// European rule: the average of the batch first, then its bottles.
void say_european_contents(page& text, json& data, fill_limits const& limits,
                           std::vector<bottle_judged> const& all, std::vector<double> const& contents,
                           double u, double confidence) {
    double const label = limits.average.lower;
    notation_of const as{"mL", 1, "the average", "bottles"};
    bottle_judged const& worst = all.front();
    data["average"] = json();
    if (all.size() == 1) {
        text.say("Contents: the batch must average {:g} mL; this bottle is {}.", label,
                 bottle_in_words(worst, label, u));
        text.gap();
        text.row("enough", "several bottles: give --contents for each, and their average is judged");
        text.row("measured", "{} mL, standard uncertainty {} mL", sized(worst.contents, u), sized(u, u));
    } else {
        judgement const j(limits.average, put_together(contents, u, {}, 0.0), confidence);
        char const* const says = j.decision == conformity_decision::conforms           ? "reaches"
                                 : j.decision == conformity_decision::does_not_conform ? "is below"
                                                                                       : "";
        std::string const average =
            *says ? fmt::format("the average of the batch {} {:g} mL, with {}", says, label, j.how_sure())
                  : fmt::format("these bottles cannot tell whether the batch averages {:g} mL: {}", label,
                                j.how_sure());
        if (worst.below_least) {
            text.say("Contents: a bottle is below {:g} mL, the lowest allowed for any; {}.", limits.least,
                     average);
        } else {
            text.say("Contents: {}.", average);
        }
        j.rows(text, as);
        data["average"] = j.data("_mL", as);
        text.row("shortest bottle", "{} mL, {}", sized(worst.contents, u), bottle_in_words(worst, label, u));
    }
    char const* const which = all.size() > 1 ? "the shortest is" : "it is";
    text.row("one bottle", "only a few may be below {:g} mL; {} not, with {} probability",
             limits.single.lower, which, percent(worst.probability));
    text.row("lowest allowed", "{:g} mL for any bottle; {} not below, with {} probability", limits.least,
             which, percent(worst.above_least));
}

/// United States: every bottle is within the tolerance, and of the batch as many are over as under.
void say_american_contents(page& text, fill_limits const& limits, std::vector<bottle_judged> const& all,
                           double label, double u, double confidence) {
    bottle_judged const& worst = all.front();
    judgement const j(limits.single,
                      {{worst.contents, 1.0, 0.0, deviation_known_from::long_experience, u}, false},
                      confidence);
    char const* const whose = all.size() > 1 ? "the worst bottle is " : "";
    text.say("Contents: {}, with {}; the batch must have {}.",
             j.decision == conformity_decision::undecided
                 ? "the measurement cannot tell; within the tolerance"
                 : whose + std::string(verdict(j.decision)),
             j.how_sure(), limits.lot);
    j.rows(text, {"mL", 1, "the contents", "bottles"});
    if (all.size() > 1) {
        auto const over =
            std::count_if(all.begin(), all.end(), [&](auto const& b) { return b.contents > label; });
        auto const under =
            std::count_if(all.begin(), all.end(), [&](auto const& b) { return b.contents < label; });
        text.row("these bottles", "{} over the label, {} under", over, under);
    }
}

/// The options about contents.
struct contents_options {
    given const& bottle;
    std::vector<given> const& contents;
    given const& uncertainty;
    given const& temperature;
    given const& strength;
    given const& rule;
};

json check_contents(page& text, wording const& words, contents_options const& o, given const& label_strength,
                    double confidence) {
    units::volume const label = read_volume(o.bottle);
    bool const us = o.rule.text == "us";
    if (!us && o.rule.text != "eu") refuse(o.rule, "expected eu or us");
    fill_limits const limits =
        on_behalf_of(o.bottle, [&] { return us ? us_fill_limits(label) : eu_fill_limits(label); });
    double u = read_millilitres(o.uncertainty);
    if (!(u > 0.0)) refuse(o.uncertainty, "the uncertainty must be above 0");
    units::temperature const t = read_temperature(o.temperature);
    double to_label = 1.0;  // volume at the temperature of the label over volume as measured
    if (t != limits.reference) {
        given const& strength = o.strength.present ? o.strength : label_strength;
        if (!strength.present) {
            refuse(
                o.temperature,
                fmt::format("the label refers to {}: give --strength (or --label), from which the expansion "
                            "of the spirit is computed",
                            degrees(limits.reference)));
        }
        mass_fraction const w = composition(read_strength(strength));
        to_label = on_behalf_of({{argument::temperature, o.temperature}},
                                [&] { return in(density(w, t), density(w, limits.reference)); });
    }
    u *= to_label;
    std::vector<double> contents;
    std::vector<bottle_judged> all;
    for (given const& each : o.contents) {
        contents.push_back(to_label * in(read_volume(each), millilitre));
        all.push_back(judge_bottle(limits, contents.back(), u, confidence));
    }
    json bottles = json::array();
    for (bottle_judged const& b : all) {
        bottles.push_back({{"contents_mL", b.contents},
                           {"decision", verdict(b.decision)},
                           {"probability_of_conformity", b.probability},
                           {"probability_above_least", b.above_least}});
    }
    std::sort(all.begin(), all.end(), [](bottle_judged const& a, bottle_judged const& b) {
        return a.probability != b.probability ? a.probability < b.probability : a.contents < b.contents;
    });
    double const label_ml = in(label, millilitre);
    json data{{"label_mL", label_ml},
              {"label_temperature_C", limits.reference.celsius()},
              {"standard_uncertainty_mL", u},
              {"single_mL", {limits.single.lower, judgement::finite(limits.single.upper)}},
              {"least_mL", limits.least},
              {"confidence_wanted", confidence},
              {"bottles", bottles},
              {"batch", limits.lot},
              {"tolerance_source", limits.citation}};
    if (us) {
        say_american_contents(text, limits, all, label_ml, u, confidence);
    } else {
        say_european_contents(text, data, limits, all, contents, u, confidence);
        text.row("the batch", "{}", limits.lot);
    }
    if (t == limits.reference) {
        text.row("temperature", "measured at {}, the temperature of the label", degrees(t));
    } else {
        text.row("temperature", "measured at {}; figures above are at {}, {:.2f} % {}", words.temperature(t),
                 degrees(limits.reference), 100.0 * std::abs(to_label - 1.0),
                 to_label < 1.0 ? "less" : "more");
    }
    text.row("tolerance", "{}", limits.citation);
    text.row("", "{}", limits.remark);
    return data;
}

void list_laws(session& s) {
    page text;
    json list = json::array();
    text.say("Tolerances for the strength on labels, as last read; laws change:");
    text.gap();
    for (strength_tolerance const& each : strength_tolerances) {
        text.say("  {:<13} ±{:g} % vol at {}: {}", each.key, each.percent_vol, degrees(each.reference),
                 each.drinks);
        text.say("  {:<13} {} ({});", "", each.citation, name_of(each.seen));
        text.say("  {:<13} {}", "", each.remark);
        list.push_back({{"tolerance", each.key},
                        {"drinks", each.drinks},
                        {"percent_vol", each.percent_vol},
                        {"reference", degrees(each.reference)},
                        {"source", each.citation},
                        {"source_seen", name_of(each.seen)},
                        {"remark", each.remark}});
    }
    text.gap();
    text.say("Contents (--filling):");
    text.gap();
    json contents = json::array();
    for (bool const us : {false, true}) {
        fill_limits const limits = us ? us_fill_limits(litre) : eu_fill_limits(litre);
        char const* const key = us ? "us" : "eu";
        text.say("  {:<13} volumes at {}: {}", key, degrees(limits.reference), limits.lot);
        text.say("  {:<13} {};", "", limits.citation);
        text.say("  {:<13} {}", "", limits.remark);
        contents.push_back({{"filling", key},
                            {"reference", degrees(limits.reference)},
                            {"batch", limits.lot},
                            {"source", limits.citation},
                            {"remark", limits.remark}});
    }
    text.gap();
    text.say("{}", no_law);
    s.answer(text, {{"tolerances", list}, {"contents", contents}});
}

void run(session& s) {
    given const& label = s.option("--label", "STRENGTH", "strength on the label");
    std::vector<given>& readings = s.repeated(
        "--measured", "STRENGTH", "true strength, measured; once for each independent measurement", false);
    given const& uncertainty =
        s.option("--uncertainty", "DIFFERENCE",
                 "systematic standard uncertainty, the same in all measurements: '0.08 %vol'");
    given const& repeatability =
        s.option("--repeatability", "DIFFERENCE", "standard deviation of one measurement, from experience");
    given const& tolerance =
        s.option("--tolerance", "LAW", "a key listed by --laws, or a tolerance: '0.3 %vol'", "eu-spirits",
                 "us-spirits");
    given const& bottle = s.option("--bottle", "VOLUME", "volume on the label");
    std::vector<given>& contents =
        s.repeated("--contents", "VOLUME", "measured contents of a bottle; once for each bottle", false);
    given const& contents_uncertainty =
        s.option("--contents-uncertainty", "VOLUME", "systematic standard uncertainty of --contents");
    given const& contents_temperature = s.option(
        "--contents-temperature", "TEMP", "temperature of the spirit when its volume was measured", "20 C");
    given const& strength =
        s.option("--strength", "STRENGTH",
                 "strength of the spirit, to refer its volume to the label's temperature (default --label)");
    given const& rule = s.option("--filling", "RULE", "eu (label at 20 C) or us (label at 60 F)", "eu", "us");
    given const& wanted_confidence = s.option("--confidence", "SHARE", "probability wanted", "95 %");
    bool const& list = s.flag("--laws", "list the tolerances and exit");
    s.carry_on({{label, carried::strength},
                {readings, "--measured", carried::measured_strength},
                {uncertainty, carried::uncertainty},
                fillable(bottle, carried::label_volume).beside(contents, "--contents")});
    s.offer_us_units();
    s.explain("Spirits labels are metric in the United States too: contents in mL, strengths in % vol.\n"
              "An expanded uncertainty of 0.2 with k = 2 is a standard uncertainty of 0.1.");
    s.parse();
    if (list) return list_laws(s);

    bool const contents_only =
        label.present && readings.empty() && bottle.present;  // the label tells the strength
    bool const strength_asked = !contents_only && (label.present || !readings.empty());
    bool const contents_asked = bottle.present || !contents.empty() || contents_uncertainty.present;
    if (!strength_asked && !contents_asked)
        throw bad_input("give --label and --measured, or --bottle and --contents");
    for (given const* each : {&uncertainty, &repeatability, &tolerance})
        if (each->present && !strength_asked) refuse(*each, "needs --label and --measured");
    for (given const* each : {&contents_temperature, &strength, &rule})
        if (each->present && !contents_asked) refuse(*each, "needs --bottle and --contents");
    if (strength_asked && (!label.present || readings.empty()))
        throw bad_input("give both --label and --measured");
    if (contents_asked && !(bottle.present && !contents.empty() && contents_uncertainty.present))
        throw bad_input("give all of --bottle, --contents and --contents-uncertainty");
    double const confidence = read_confidence(wanted_confidence);

    page text;
    json data = json::object();
    if (strength_asked)
        data["strength"] =
            check_strength(text, label, readings, uncertainty, repeatability, tolerance, confidence);
    if (strength_asked && contents_asked) text.gap();
    if (contents_asked)
        data["contents"] = check_contents(
            text, s.words(), {bottle, contents, contents_uncertainty, contents_temperature, strength, rule},
            label, confidence);
    text.gap();
    text.say("{}", no_law);
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
