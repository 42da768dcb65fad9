// SPDX-License-Identifier: BSL-1.0
// The water, or the stronger spirit, that brings a spirit to a wanted strength.
#include "program.hpp"

namespace {

using namespace program;

about const who{
    "dilute_spirit",
    topic::to_strength,
    "How much water brings a spirit to strength?",
    "Computes how much water, or stronger spirit, brings a spirit to a wanted strength.\n"
    "With --make: how much spirit and water make a wanted volume.",
    "The Quillbeck teaching stillhouse has 2.00 L of spirit at 31 °C; its alcoholometer shows 84 in it:\n"
    "  $ aqueth dilute_spirit --amount '2.00 L' --reading '84 %vol' --temperature '31 C' --target '45 %vol'\n"
    "  Add 1.638 kg of water by the balance, or 1.643 L of it at 20 °C.",
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
    given const& additions = s.option("--additions", "NUMBER", "number of equal additions of water", "1");
    given const& water_at =
        s.option("--water-temperature", "TEMP", "temperature of the water", "20 C", "60 F");
    given const& stronger =
        s.option("--fortify-with", "STRENGTH", "true strength of a stronger spirit to add");
    given const& stronger_at =
        s.option("--fortify-temperature", "TEMP", "temperature of the stronger spirit", "20 C", "60 F");
    given const& mixture_at = s.option("--mixture-temperature", "TEMP",
                                       "temperature at which the product is measured", "20 C", "60 F");
    instrument instrument_ = s.instrument_options();
    page text = {};
    json data = {};

    void check() const {
        if (amount.present == make.present) throw bad_input("give either --amount or --make");
        if (reading.present == strength.present) throw bad_input("give either --strength or --reading");
        if (make.present && (stronger.present || additions.present)) {
            throw bad_input("--fortify-with and --additions need --amount, not --make");
        }
        if (stronger.present && (additions.present || water_at.present)) {
            throw bad_input("--additions and --water-temperature cannot be used with --fortify-with");
        }
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

    void add(char const* what, parcel const& addition, int times = 1) {
        wording const words = s.words();
        std::string const share = times > 1 ? fmt::format("{} times ", times) : "";
        text.say("Add {}{} of {} by the balance, or {}{} of it at {}.", share, words.weight(addition), what,
                 share, words.volume(addition.volume()), words.temperature(addition.temperature()));
    }

    void part(char const* label, char const* key, parcel const& p) {
        text.row(label, "{}", s.words().liquid(p));
        data[key] = to_json(p);
    }

    void finish(blend const& b, std::initializer_list<parcel> parts) {
        say_blend(text, s.words(), b);
        data.update(to_json(b));
        std::vector<units::temperature> temperatures;
        double const step = s.words().us ? 10.0 / 1.8 : 5.0;  // 10 °F or 5 K
        for (double const steps : {0.0, 1.0, 2.0})
            temperatures.push_back(b.product.temperature() + steps * step * kelvins);
        if (!mixture_at.present) {
            std::optional<parcel> const fresh = fresh_mixture(parts);
            say_fresh(text, data, s.words(), fresh, b.product.temperature());
            if (fresh) temperatures.push_back(fresh->temperature());
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
        text.gap();
        if (!mixture_at.present) {
            text.say("The product is stated at {}; give --mixture-temperature for another temperature.",
                     s.words().temperature(b.product.temperature()));
        }
        text.say("{}", fresh_mixture_caution);
        s.answer(text, data);
    }
};

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
    int const times = read_count(t.additions, 1000);
    auto const steps =
        attributed([&] { return dilute_in_additions(spirit, target, times, water, mixture_at); });
    auto const plan = dilute(spirit, target, water, mixture_at);
    t.add("water", steps.front().addition, times);
    t.text.gap();
    t.part("spirit", "spirit", spirit);
    t.part("water", "water", plan.addition);
    for (std::size_t k = 0; times > 1 && k < steps.size(); ++k) {
        t.text.row(fmt::format("addition {}", k + 1), "{}", t.s.words().liquid(steps[k].product));
        t.data["additions"].push_back(to_json(steps[k]));
    }
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
    std::visit([&](auto const& target) { bring_to(target, t); }, read_strength(t.target));
}

program::task const offered{who, run};

}  // namespace
