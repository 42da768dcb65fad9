// SPDX-License-Identifier: BSL-1.0
// Whether measurements show that a bottle is what its label says, within what the law leaves.
#include "uncertainty_program.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <variant>
#include <vector>

namespace {

using namespace program;

about const who{
    "check_label",
    "Tells whether a measurement shows, with the confidence you want, that strength or contents of a\n"
    "bottle are what the label says, within the tolerance; how good and how many readings must be.",
    "The Quillbeck teaching stillhouse labels 45 % vol and measures 45.12, standard uncertainty 0.08:\n"
    "  $ check_label --label '45 %vol' --measured '45.12 %vol' --uncertainty '0.08 %vol'\n"
    "  Strength: within the tolerance, with 98.8 % probability (95 % wanted).",
    {jcgm_106_cited, gum_cited, correlation::oiml_r22::cited}};

/// What is measured, in the unit of the tolerance.
struct measured {
    measurement_result result;
    double repeatability;  ///< standard deviation of one reading, 0 if nothing is known of it
    double remaining;      ///< standard uncertainty that repeating does not mend
    double readings;       ///< how many there were
};

/// Type A of the readings, type B of what was told, put together.
measured put_together(std::vector<double> const& readings, double remaining, double told_repeatability) {
    input_quantity const mean = readings.size() > 1
                                    ? input_quantity::repeated("readings", "", readings)
                                    : input_quantity::normal("reading", "", readings[0], told_repeatability);
    std::vector<input_quantity> const inputs{mean, input_quantity::normal("rest", "", 0.0, remaining)};
    uncertainty_budget const both = propagate([](auto const& x) { return x[0] + x[1]; }, inputs);
    double const n = static_cast<double>(readings.size());
    double const spread = mean.standard_uncertainty() * std::sqrt(n);
    return {{both.estimate, both.standard_uncertainty, *both.effective_degrees_of_freedom},
            told_repeatability > 0.0 ? told_repeatability : spread,
            remaining,
            n};
}

char const* verdict(conformity_decision d) {
    switch (d) {
    case conformity_decision::conforms: return "within the tolerance";
    case conformity_decision::does_not_conform: return "outside the tolerance";
    case conformity_decision::undecided: break;
    }
    return "the measurement cannot tell";
}

std::string in_words(tolerance_interval const& t, char const* unit) {
    return std::isinf(t.upper) ? fmt::format("{:.2f} {} or more", t.lower, unit)
                               : fmt::format("{:.2f} to {:.2f} {}", t.lower, t.upper, unit);
}

/// Judges one quantity: adds to the text, gives the data.
json judge(page& text, char const* name, char const* unit, tolerance_interval const& tolerance,
           measured const& m, double confidence) {
    measurement_result const& r = m.result;
    double const u = r.standard_uncertainty;
    double const p = conformance_probability(tolerance, r);
    conformity_decision const decision = decide(tolerance, r, confidence);
    if (decision == conformity_decision::does_not_conform) {
        text.say("{}: {}, with {} probability ({:g} % wanted).", name, verdict(decision), percent(1.0 - p),
                 100.0 * confidence);
    } else {
        text.say("{}: {}, with {} probability ({:g} % wanted).", name,
                 decision == conformity_decision::undecided
                     ? "the measurement cannot tell; within the tolerance"
                     : verdict(decision),
                 percent(p), 100.0 * confidence);
    }
    text.gap();
    text.row("measured", "{} {}, standard uncertainty {} {}", sized(r.estimate, u), unit, sized(u, u), unit);
    text.row("permitted", "{}", in_words(tolerance, unit));
    json data{{"measured", r.estimate},
              {"standard_uncertainty", u},
              {"permitted", {tolerance.lower, tolerance.upper}},
              {"probability_of_conformity", p},
              {"confidence_wanted", confidence},
              {"decision", verdict(decision)}};
    try {
        tolerance_interval const a = acceptance_interval(tolerance, u, confidence, r.degrees_of_freedom);
        text.row("shown by", "measured values of {}", in_words(a, unit));
        data["acceptance"] = {a.lower, a.upper};
    } catch (range_error const& e) {
        text.row("shown by", "no measured value: the standard uncertainty must be below {} {}",
                 sized(e.upper(), e.upper()), unit);
        data["acceptance"] = json();
    }
    if (tolerance.lower < r.estimate && r.estimate < tolerance.upper) {
        double const needed = largest_uncertainty(tolerance, r.estimate, confidence);
        text.row("needed", "standard uncertainty {} {} at this measured value", sized(needed, needed), unit);
        data["needed_standard_uncertainty"] = needed;
        if (m.repeatability > 0.0) {
            try {
                double const n = readings_needed(needed, m.repeatability, m.remaining);
                text.row("readings", "{:.0f}, if one scatters by {} {} and they keep this mean", n,
                         sized(m.repeatability, m.repeatability), unit);
                data["needed_readings"] = n;
            } catch (range_error const&) {
                text.row("readings", "no number of them would do: what repeating does not mend is {} {}",
                         sized(m.remaining, m.remaining), unit);
                data["needed_readings"] = json();
            }
        }
    }
    return data;
}

/// a strength in % vol at the temperature of the tolerance
template <class Reference>
double percent_at(strength const& s) {
    return to<basic_volume_fraction<Reference>>(composition(s)).percent();
}

json check_strength(page& text, given const& label, std::vector<given> const& readings,
                    given const& uncertainty, given const& repeatability, given const& tolerance,
                    double confidence) {
    strength_tolerance const* law = find_strength_tolerance(trimmed(tolerance.text));
    strength_tolerance own{"own", "", 0.0, "20 °C", provenance::common_practice, "as told", ""};
    if (!law) {
        if (tolerance.text.empty() || !(is_digit(tolerance.text[0]) || tolerance.text[0] == '.'))
            refuse(tolerance,
                   "no such tolerance (--laws lists them), and no difference of strengths like '0.3 %vol'");
        own.percent_vol = read_strength_difference(tolerance, 1e-3);
        law = &own;
    }
    bool const us = std::string_view(law->reference) == "60 °F";
    strength const stated = read_strength(label);
    bool const stated_at_60 = std::holds_alternative<us_proof>(stated) ||
                              std::holds_alternative<basic_volume_fraction<at_60_fahrenheit>>(stated);
    if (us && !stated_at_60) refuse(label, "this tolerance is for labels in proof, or '%vol at 60 F'");
    if (!us && !std::holds_alternative<volume_fraction>(stated))
        refuse(label, "this tolerance is for labels in %vol");
    auto const number = [&](strength const& s) {
        return us ? percent_at<at_60_fahrenheit>(s) : percent_at<at_20_celsius>(s);
    };
    std::vector<double> percents;
    for (given const& each : readings) percents.push_back(number(read_strength(each)));
    if (percents.size() == 1 && !uncertainty.present)
        throw bad_input("--uncertainty is required: one measurement does not say how sure it is");
    double const remaining = uncertainty.present ? read_strength_difference(uncertainty) : 0.0;
    double const told = repeatability.present ? read_strength_difference(repeatability) : 0.0;
    measured const m = put_together(percents, remaining, told);
    if (!(m.result.standard_uncertainty > 0.0)) {
        if (uncertainty.present) refuse(uncertainty, "no measurement is without uncertainty");
        throw bad_input("--measured: readings that do not differ need --uncertainty beside them");
    }
    // as the tolerance has it, from the number on the label
    double const at_label = number(stated);
    tolerance_interval const permitted = us ? permitted_strengths(by_volume<at_60_fahrenheit>(at_label), *law)
                                            : permitted_strengths(by_volume(at_label), *law);
    char const* const unit = us ? "% vol at 60 °F" : "% vol";
    json data = judge(text, "Strength", unit, permitted, m, confidence);
    text.row("tolerance", "±{:g} % vol: {}", law->percent_vol, law->citation);
    if (*law->remark) text.row("", "{}", law->remark);
    data["tolerance_percent_vol"] = law->percent_vol;
    data["tolerance_source"] = law->citation;
    return data;
}

json check_contents(page& text, given const& bottle, given const& contents, given const& uncertainty,
                    given const& rule, double confidence) {
    units::volume const label = read_volume(bottle);
    bool const us = rule.text == "us";
    if (!us && rule.text != "eu") refuse(rule, "expected eu or us");
    fill_limits const limits =
        on_behalf_of(bottle, [&] { return us ? us_fill_limits(label) : eu_fill_limits(label); });
    double const ml = in(read_volume(contents), millilitre);
    double const u = read_millilitres(uncertainty, uncertainty.text);
    if (!(u > 0.0)) refuse(uncertainty, "no measurement is without uncertainty");
    json data = judge(text, "Contents", "mL", limits.single, {{ml, u}, 0.0, u, 1.0}, confidence);
    if (!us) {
        double const p = conformance_probability({limits.least, detail::unlimited}, {ml, u});
        text.row("at the worst", "{:.1f} mL, which no bottle may be below: {} probability", limits.least,
                 percent(p));
        data["least_mL"] = limits.least;
        data["probability_above_least"] = p;
    }
    text.row("a lot", "{}", limits.lot);
    text.row("tolerance", "{}", limits.citation);
    data["tolerance_source"] = limits.citation;
    return data;
}

void list_laws(session& s) {
    page text;
    json list = json::array();
    text.say("Tolerances of strength on labels, as read; laws change:");
    text.gap();
    for (strength_tolerance const& each : strength_tolerances) {
        text.say("  {:<13} ±{:g} % vol at {}: {}", each.key, each.percent_vol, each.reference, each.drinks);
        text.say("  {:<13} {} ({})", "", each.citation, name_of(each.seen));
        list.push_back({{"tolerance", each.key},
                        {"drinks", each.drinks},
                        {"percent_vol", each.percent_vol},
                        {"reference", each.reference},
                        {"source", each.citation},
                        {"source_seen", name_of(each.seen)},
                        {"remark", each.remark}});
    }
    text.gap();
    text.say("{}", no_law);
    s.answer(text, {{"tolerances", list}});
}

void run(session& s) {
    given const& label = s.option("--label", "STRENGTH", "strength on the label");
    std::vector<given>& readings = s.repeated(
        "--measured", "STRENGTH", "true strength as measured; again for each independent measurement", false);
    given const& uncertainty = s.option("--uncertainty", "DIFFERENCE",
                                        "standard uncertainty that repeating does not mend: '0.08 %vol'");
    given const& repeatability =
        s.option("--repeatability", "DIFFERENCE", "standard deviation of one measurement, from experience");
    given const& tolerance = s.option("--tolerance", "LAW", "of --laws, or like '0.3 %vol'", "eu-spirits");
    given const& bottle = s.option("--bottle", "VOLUME", "volume on the label");
    given const& contents = s.option("--contents", "VOLUME", "of the bottle, as measured, at 20 °C");
    given const& contents_uncertainty =
        s.option("--contents-uncertainty", "VOLUME", "standard uncertainty of that");
    given const& rule = s.option("--filling", "RULE", "eu or us", "eu");
    given const& wanted_confidence = s.option("--confidence", "SHARE", "probability wanted", "95 %");
    bool const& list = s.flag("--laws", "list the tolerances of strength and exit");
    s.explain("An expanded uncertainty of 0.2 with k = 2 is a standard uncertainty of 0.1.");
    s.parse();
    if (list) return list_laws(s);

    bool const strength_asked = label.present || !readings.empty();
    bool const contents_asked = bottle.present || contents.present || contents_uncertainty.present;
    if (!strength_asked && !contents_asked)
        throw bad_input("give --label and --measured, or --bottle and --contents");
    if (strength_asked && (!label.present || readings.empty()))
        throw bad_input("give both --label and --measured");
    if (contents_asked && !(bottle.present && contents.present && contents_uncertainty.present))
        throw bad_input("give all of --bottle, --contents and --contents-uncertainty");
    double const confidence = read_confidence(wanted_confidence);

    page text;
    json data = json::object();
    if (strength_asked)
        data["strength"] =
            check_strength(text, label, readings, uncertainty, repeatability, tolerance, confidence);
    if (strength_asked && contents_asked) text.gap();
    if (contents_asked)
        data["contents"] = check_contents(text, bottle, contents, contents_uncertainty, rule, confidence);
    text.gap();
    text.say("{}", no_law);
    s.answer(text, data);
}

}  // namespace

int main(int argc, char** argv) { return session(who, argc, argv).run(run); }
