// SPDX-License-Identifier: BSL-1.0
// Columns and runs of a still: balances close, strengths lie between that of the pot and the azeotrope.
#include "hostile.hpp"

#include <aqueth/aqueth.hpp>

using namespace aqueth;
using namespace aqueth::hostile;

namespace {

boiling_curve const& air() {
    static boiling_curve const at_sea_level(standard_atmosphere);  // made once: it takes a millisecond
    return at_sea_level;
}

std::optional<column> any_column(bytes& in) {
    double const stages = in.number(0.0, 30.0), efficiency = in.number(0.01, 1.0);
    int const plates = in.choice(40);
    switch (in.choice(4)) {
    case 0: return column::none();
    case 1: return unless_refused([&] { return column::of_plates(plates, efficiency); });
    case 2: return unless_refused([&] { return column::of_packing(stages * metre, efficiency * metre); });
    default: return unless_refused([&] { return column::of_stages(stages); });
    }
}

void columns(bytes& in) {
    double const still = in.number(0.0, 1.0), wanted = in.number(0.0, 1.0), ratio = in.number(0.0, 50.0);
    auto const flow = in.choice(2) ? flow_model::enthalpy_balance : flow_model::constant_molar_overflow;
    auto const tower = any_column(in);
    if (!tower) return;
    auto const d =
        unless_refused([&] { return distillate_strength(air(), *tower, mole_fraction(still), ratio, flow); });
    if (d) HOSTILE_WITHIN(d->value(), still * (1.0 - 1e-9), 1.0);
    auto const least =
        unless_refused([&] { return minimum_reflux(air(), mole_fraction(still), mole_fraction(wanted)); });
    if (least) HOSTILE_REQUIRE(*least >= 0.0 && std::isfinite(*least));
    auto const stages = unless_refused(
        [&] { return stages_needed(air(), mole_fraction(still), mole_fraction(wanted), ratio, flow); });
    if (!stages) return;
    HOSTILE_WITHIN(*stages, 0.0, column::most_stages);
}

condition any_condition(bytes& in) {
    double const strength = in.number(0.0, 100.0), degrees = in.number(78.0, 100.0);
    double const litres = in.number(0.0, 20.0), minutes = in.number(0.0, 1000.0);
    switch (in.choice(8)) {
    case 0: return condition::still_strength(by_volume(strength));
    case 1: return condition::distillate_strength(by_volume(strength));
    case 2: return condition::boiling_temperature(celsius(degrees));
    case 3: return condition::collected(litres * litre);
    case 4: return condition::head_temperature(celsius(degrees));
    case 5: return condition::reading_at_spout(by_volume(strength));
    case 6: return condition::strength_lost();
    default: return condition::elapsed(minutes * minute);
    }
}

reflux any_reflux(bytes& in) {
    double const ratio = in.number(0.0, 20.0), strength = in.number(50.0, 96.0);
    switch (in.choice(3)) {
    case 0: return reflux::constant(ratio);
    case 1: return reflux::constant_strength(by_volume(strength), ratio);
    default: return reflux::of_take_off(5.0 * ratio * millilitre / minute);
    }
}

head any_head(bytes& in) {
    double const number = in.number(0.0, 1.0), degrees = in.number(0.0, 100.0);
    switch (in.choice(5)) {
    case 0: return head::none();
    case 1: return head::partial_condenser(number);
    case 2:
        return head::partial_condenser(cooling_water{number * litre / minute, celsius(10), celsius(degrees)});
    case 3: return head::total_condenser(any_reflux(in)).reflux_at(celsius(degrees));
    default: return head::total_condenser(any_reflux(in));
    }
}

void runs(bytes& in) {
    auto const tower = any_column(in);
    double const kilograms = in.number(0.1, 30.0), w = in.number(0.0, 0.6), sugar = in.number(0.0, 2.0);
    if (!tower) return;
    auto const run = unless_refused([&] {
        wash const charge =
            wash::of(parcel::of(kilograms * kilogram, mass_fraction(w), celsius(20)), sugar * kilogram);
        still s{{in.number(500.0, 5000.0) * watt, in.number(0.0, 2e4) * joule_per_kelvin,
                 in.number(0.0, 10.0) * watt_per_kelvin, celsius(in.number(-10.0, 40.0))},
                *tower};
        s.head = any_head(in);
        switch (in.choice(3)) {
        case 0: break;
        case 1: s.neck = neck::condensing(in.number(0.0, 0.9)); break;
        default: s.neck = neck::losing(in.number(0.0, 10.0) * watt_per_kelvin);
        }
        if (in.choice(4) == 0) s.flow = flow_model::enthalpy_balance;
        if (in.choice(2)) s.tower = s.tower.holding(in.number(0.0, 0.3) * litre);
        if (in.choice(2)) s.head = s.head.holding(in.number(0.0, 1.0) * litre);
        run_plan plan;
        if (in.choice(4) == 0) plan.start = in.number(0.0, 100.0) * minute;
        for (int n = in.choice(3); n > 0; --n) {
            plan_step step{any_condition(in)};
            if (in.choice(2)) step.returned = any_reflux(in);
            if (in.choice(2)) step.power = in.number(500.0, 5000.0) * watt;
            plan.steps.push_back(step);
        }
        for (int n = in.choice(3); n > 0; --n) plan.cuts.push_back({any_condition(in), in.choice(2) == 0});
        for (int n = in.choice(3) + 1; n > 0; --n) plan.ends.push_back(any_condition(in));
        plan.points = in.choice(4);
        return distil(charge, s, plan, air());
    });
    if (!run) return;
    HOSTILE_NEAR(run->balance.ethanol, 0.0, 1e-7);
    HOSTILE_NEAR(run->balance.water, 0.0, 1e-7);
    HOSTILE_NEAR(run->balance.energy, 0.0, 1e-4);
    HOSTILE_WITHIN(run->residue.mass().value(), 0.0, (kilograms + sugar) * (1.0 + 1e-9));
    for (run_fraction const& f : run->fractions) HOSTILE_REQUIRE(f.end.elapsed >= f.begin.elapsed);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    bytes in(data, size);
    if (in.choice(2)) {
        columns(in);
    } else {
        runs(in);
    }
    return 0;
}
