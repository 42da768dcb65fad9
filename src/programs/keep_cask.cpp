// SPDX-License-Identifier: BSL-1.0
// A cask over the years, by the parts of its ethanol and of its water that it loses; or these parts from two
// gaugings.
#include "still_program.hpp"

#include <cmath>
#include <optional>
#include <string>
#include <vector>

namespace {

using namespace program;

about const who{
    "keep_cask",
    topic::in_bottles,
    "What does a cask hold after years?",
    "Keeps the account of a cask: volume and strength after years, by the yearly losses of ethanol and of\n"
    "water that you give; or the losses from two gaugings. It predicts no climate.",
    "The Quillbeck teaching stillhouse has a cask of 50 L of 62 % vol, to lie four years:\n"
    "  $ aqueth keep_cask --amount '50 L' --strength '62 %vol' --period '4 years, ethanol 4 %, water 2 %'\n"
    "  After 4 years the cask holds 43.92 L of 59.95 % vol.",
    {correlation::oiml_r22::cited, correlation::cask_loss_limits::cited}};

/// A stretch of time with its losses.
struct period {
    given text;
    double years;
    cask_rates rates;
};

double read_years(given const& g) {
    wanted const w{"a time", "years or months"};
    number_and_unit const q = read_quantity(g, g.text, w);
    std::string const unit = squeezed(q.unit);
    double const in_a_year = unit == "years" || unit == "year"     ? 1.0
                             : unit == "months" || unit == "month" ? 12.0
                                                                   : 0.0;
    if (in_a_year == 0.0) refuse_unit(g, q.unit, w);
    return on_behalf_of(
        g, [&] { return require_range("input", "time", q.number / in_a_year, "years", 0.0, 100.0); });
}

/// "ethanol 4 %", or "ethanol legal spirits": the limit of law for these goods in wood.
double read_loss(given const& part, std::string_view name) {
    std::string_view const text = trimmed(part.text);
    if (!text.starts_with(name)) refuse(part, fmt::format("expected '{} ... %', a yearly loss", name));
    given const rest{part.name, std::string(trimmed(text.substr(name.size()))), true};
    if (rest.text.starts_with("legal ")) {
        for (auto const& each : correlation::cask_loss_limits::limits)
            if (rest.text.substr(6) == each.goods) return each.in_wood;
        refuse(part, "unknown goods; --law lists the limits");
    }
    return read_share(rest, "a yearly loss");
}

period read_period(given const& g) {
    std::vector<given> const parts = parts_of(g);
    if (parts.size() != 3) refuse(g, "expected time and losses: '4 years, ethanol 4 %, water 2 %'");
    return {g, read_years(parts[0]), {read_loss(parts[1], "ethanol"), read_loss(parts[2], "water")}};
}

void list_limits(session& s) {
    page text;
    json list = json::array();
    text.say("Yearly losses that French excise accepts, as parts of the mean stock. They are upper limits of "
             "law, not\n"
             "what casks lose; the text in force counts.");
    text.gap();
    for (auto const& each : correlation::cask_loss_limits::limits) {
        text.say("  {:<34} {:g} % in wood, {:g} % in tight tanks", each.goods, 100.0 * each.in_wood,
                 100.0 * each.in_tanks);
        list.push_back(
            {{"goods", std::string(each.goods)}, {"in_wood", each.in_wood}, {"in_tanks", each.in_tanks}});
    }
    text.gap();
    text.say("Source: {}.", correlation::cask_loss_limits::cited.citation);
    s.answer(text, {{"limits", list}});
}

/// In which direction the strength of what is in the cask goes over these years.
char const* direction(cask_rates const& rates, parcel const& held, double years) {
    mass_fraction const w = held.composition();
    if (w == mass_fraction(0.0) || w == mass_fraction(1.0) || years == 0.0) return "stays";
    if (rates.ethanol > rates.water) return "falls";
    return rates.ethanol < rates.water ? "rises" : "stays";
}

bool holds_ethanol(parcel const& p) { return p.ethanol() > units::mass(); }

/// "1 year", "1.5 years".
std::string in_words(double years, int digits) {
    std::string const number = fmt::format("{:.{}g}", years, digits);
    return number + (number == "1" ? " year" : " years");
}

void run(session& s) {
    given const& amount_text = s.option("--amount", "AMOUNT", "what was filled in");
    given const& strength = s.option("--strength", "STRENGTH", "its strength");
    given const& at = s.option("--temperature", "TEMP", "temperature of all gaugings", "20 C", "60 F");
    std::vector<given>& periods = s.repeated(
        "--period", "PERIOD", "'4 years, ethanol 4 %, water 2 %'; once for each stretch of time", false);
    given const& later = s.option("--later-amount", "AMOUNT", "instead of --period: what was gauged later");
    given const& later_strength =
        s.option("--later-strength", "STRENGTH", "with --later-amount: its strength");
    given const& after = s.option("--after", "TIME", "with --later-amount: '3 years' or '18 months'");
    bool const& law = s.flag("--law", "list the losses that a law accepts and exit");
    s.explain("A loss is the part of the ethanol, or of the water, that is in the cask. 'ethanol legal "
              "spirits' takes\n"
              "the limit of French law. A negative loss of water is a gain.");
    s.carry_on(
        {{amount_text, carried::weighed, {}}, {strength, carried::strength}, {at, carried::temperature}});
    s.offer_us_units();
    s.parse();
    if (law) return list_limits(s);
    if (!amount_text.present || !strength.present) throw bad_input("give --amount and --strength");
    if (periods.empty() == !later.present) throw bad_input("give either --period or --later-amount");
    if (later.present && !(later_strength.present && after.present))
        throw bad_input("--later-amount needs --later-strength and --after");
    if (!later.present && (later_strength.present || after.present))
        throw bad_input("--later-strength and --after go with --later-amount");

    wording const words = s.words();
    mass_fraction const w = composition(read_strength(strength));
    parcel const filled = make_parcel(read_amount(amount_text), w, at);
    units::temperature const shown_at = filled.temperature();
    page text;
    json data = {{"filled", to_json(filled)}};
    if (later.present) {
        parcel const left = make_parcel(read_amount(later), composition(read_strength(later_strength)), at);
        double const years = read_years(after);
        cask_rates const rates =
            on_behalf_of({{argument::yearly_loss_of_ethanol, later},
                          {argument::yearly_loss_of_water, later},
                          {argument::years, after}},
                         [&] { return cask_rates_from_gaugings(filled, left, years * julian_year); });
        bool const spirit = holds_ethanol(filled);
        if (spirit) {
            text.say("Each year took {:.2f} % of the ethanol and {:.2f} % of the water: the strength {}.",
                     100.0 * rates.ethanol, 100.0 * rates.water, direction(rates, filled, years));
        } else {
            text.say("Each year took {:.2f} % of the water; there was no ethanol.", 100.0 * rates.water);
        }
        text.gap();
        text.row("at first", "{}", words.liquid(filled));
        text.row("later", "{}, after {}", words.liquid(left), in_words(years, 3));
        if (spirit)
            text.row("alcohol lost", "{:.2f} % in all",
                     100.0 * (1.0 - in(left.ethanol(), kilogram) / in(filled.ethanol(), kilogram)));
        data["later"] = to_json(left);
        data["main_product"] = "later";
        data["years"] = years;
        data["yearly_loss_of_ethanol"] = spirit ? json(rates.ethanol) : json();
        data["yearly_loss_of_water"] = rates.water;
    } else {
        json steps = json::array();
        page rows;
        parcel now = filled;
        double elapsed = 0.0;
        struct turn {
            double years;
            mass_fraction strength;
        };
        std::optional<turn> turned;
        std::string previous;
        rows.row("at first", "{}", words.liquid(filled));
        for (given const& each : periods) {
            period const p = read_period(each);
            std::string const way = direction(p.rates, now, p.years);
            if (!previous.empty() && way != previous && way != "stays" && previous != "stays" && !turned)
                turned = turn{elapsed, now.composition()};
            if (way != "stays") previous = way;
            now = on_behalf_of({{argument::yearly_loss_of_ethanol, each},
                                {argument::yearly_loss_of_water, each},
                                {argument::years, each},
                                {argument::temperature, at}},
                               [&] { return cask_after(now, p.rates, p.years * julian_year); });
            elapsed += p.years;
            std::string const time = "after " + in_words(elapsed, 4);
            rows.row(time, "{}{}", words.liquid(now), holds_ethanol(now) ? "; the strength " + way : "");
            json cask = to_json(now);
            cask["name"] = "cask " + time;
            steps.push_back({{"years", elapsed},
                             {"yearly_loss_of_ethanol", p.rates.ethanol},
                             {"yearly_loss_of_water", p.rates.water},
                             {"cask", cask}});
        }
        text.say("After {} the cask holds {} of {}.", in_words(elapsed, 4), words.volume(now.volume()),
                 words.strength(now.composition()));
        text.gap();
        text.say("{}", rows.text());
        std::optional<double> lost;
        if (holds_ethanol(filled)) {
            lost = 1.0 - in(now.ethanol(), kilogram) / in(filled.ethanol(), kilogram);
            std::string const yearly =
                elapsed > 0.0
                    ? fmt::format(", {:.2f} % a year", 100.0 * (1.0 - std::pow(1.0 - *lost, 1.0 / elapsed)))
                    : "";
            text.row("alcohol lost", "{:.2f} % in all{}; French law accepts up to 6 % of spirits in wood",
                     100.0 * *lost, yearly);
        }
        if (turned)
            text.row("strength turns", "after {}, at {}", in_words(turned->years, 4),
                     words.strength(turned->strength));
        data["periods"] = steps;
        data["cask"] = to_json(now);
        data["main_product"] = "cask";
        data["share_of_alcohol_lost"] = lost ? json(*lost) : json();
        data["turns_after_years"] = turned ? json(turned->years) : json();
    }
    text.gap();
    text.say("All volumes are at {}. This is an account, not a forecast: the losses are yours. New wood "
             "soaks up about\n"
             "2 % beforehand.",
             words.temperature(shown_at));
    text.say("{}", vapour_caution);
    s.answer(text, data);
}

program::task const offered{who, run};

}  // namespace
