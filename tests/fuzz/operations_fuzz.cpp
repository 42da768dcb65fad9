// SPDX-License-Identifier: BSL-1.0
// Operations on parcels and lots: whatever is asked for, mass and ethanol are neither made nor lost.
#include "hostile.hpp"

#include <aqueth/aqueth.hpp>

#include <vector>

using namespace aqueth;
using namespace aqueth::hostile;

namespace {

std::optional<parcel> any_parcel(bytes& in) {
    double const amount = in.number(0.0, 100.0), w = in.number(0.0, 1.0);
    auto const t = celsius(in.number(-10.0, 40.0));
    if (in.choice(2)) return unless_refused([&] { return parcel::of(amount * litre, mass_fraction(w), t); });
    return unless_refused([&] { return parcel::of(amount * kilogram, mass_fraction(w), t); });
}

std::optional<units::temperature> any_product_temperature(bytes& in) {
    if (in.choice(2)) return std::nullopt;
    return celsius(in.number(-10.0, 40.0));
}

bool ordinary(double kilograms) { return kilograms > 1e-150 && kilograms < 1e150; }  // products are numbers

void require_sum(blend const& b, double kilograms, double ethanol) {
    if (!ordinary(kilograms)) return;
    HOSTILE_NEAR(b.product.mass().value(), kilograms, 1e-12 * kilograms);
    HOSTILE_NEAR(b.product.ethanol().value(), ethanol, 1e-12 * kilograms);
    HOSTILE_NEAR((b.sum_of_volumes - b.contraction).value(), b.product.volume().value(),
                 1e-12 * b.sum_of_volumes.value());
    HOSTILE_WITHIN(b.contraction_percent(), -1.0, 6.0);
}

void blends(bytes& in) {
    std::vector<parcel> parts;
    double mass = 0.0, ethanol = 0.0;
    for (int n = in.choice(6); n > 0; --n) {
        if (auto const part = any_parcel(in)) {
            parts.push_back(*part);
            mass += part->mass().value();
            ethanol += part->ethanol().value();
        }
    }
    auto const t = any_product_temperature(in);
    if (auto const b = unless_refused([&] { return mix(parts, t); })) require_sum(*b, mass, ethanol);
}

void adjustments(bytes& in) {
    auto const start = any_parcel(in);
    if (!start) return;
    double const wanted = in.number(0.0, 1.0), stock = in.number(0.0, 1.0);
    auto const added = celsius(in.number(0.0, 40.0));
    auto const t = any_product_temperature(in);
    mass_fraction const target(wanted >= 0.0 && wanted <= 1.0 ? wanted : 0.5);
    double const kg = start->mass().value(), pure = start->ethanol().value();
    auto const reached = [&](adjustment const& a) {
        if (!ordinary(kg)) return;
        HOSTILE_NEAR(a.product.composition().value(), target.value(), 1e-12);
        require_sum(a, kg + a.addition.mass().value(), pure + a.addition.ethanol().value());
    };
    if (auto const a = unless_refused([&] { return dilute(*start, target, water_at(added), t); }))
        reached(*a);
    if (auto const a = unless_refused(
            [&] { return fortify(*start, target, liquid::of(mass_fraction(stock), added), t); }))
        reached(*a);
    int const additions = in.choice(20);
    auto const steps =
        unless_refused([&] { return dilute_in_additions(*start, target, additions, water_at(added), t); });
    if (steps && ordinary(kg))
        HOSTILE_NEAR(steps->back().product.composition().value(), target.value(), 1e-11);
    double const litres = in.number(0.0, 100.0);
    auto const made = unless_refused([&] {
        return make_up(litres * litre, t.value_or(celsius(20)), target,
                       liquid::of(mass_fraction(stock), added), water_at(added));
    });
    if (made && litres > 1e-100 && litres < 1e100) {
        HOSTILE_NEAR(aqueth::in(made->product.volume(), litre), litres, 1e-11 * litres);
        HOSTILE_NEAR(made->product.composition().value(), target.value(), 1e-12);
    }
    double const label = in.number(1e-3, 10.0);
    if (auto const b = unless_refused([&] { return fill_bottles(*start, label * litre); })) {
        HOSTILE_REQUIRE(b->count >= 0.0 && b->count == std::floor(b->count));
        if (ordinary(kg)) {
            double const out = b->count * b->fill_mass.value() + b->remainder.mass().value();
            HOSTILE_NEAR(out, kg, 1e-11 * kg);
        }
    }
}

void lots(bytes& in) {
    std::vector<lot> there;
    for (int n = in.choice(6); n > 0; --n) {
        auto const available = any_parcel(in);
        if (!available) continue;
        double const least = in.choice(3) ? 0.0 : in.number(0.0, available->mass().value());
        there.push_back({*available, least * kilogram});
    }
    double const wanted = in.number(0.0, 100.0), litres = in.number(0.0, 100.0);
    std::optional<units::volume> volume;
    if (in.choice(2)) volume = litres * litre;
    auto const t = celsius(in.number(0.0, 40.0));
    auto const b = unless_refused([&] { return blend_to_strength(there, by_volume(wanted), t, volume); });
    if (!b) return;
    double mass = 0.0, ethanol = 0.0, most = 0.0, smallest = 1e300;
    HOSTILE_REQUIRE(b->parts.size() == there.size());
    for (std::size_t i = 0; i < there.size(); ++i) {
        double const taken = b->parts[i].mass().value(), all = there[i].available.mass().value();
        HOSTILE_WITHIN(taken, there[i].at_least.value() - 1e-9 * all, all * (1.0 + 1e-9));
        mass += taken;
        ethanol += b->parts[i].ethanol().value();
        most += all;
        if (all > 0.0) smallest = std::fmin(smallest, all);
    }
    require_sum(*b, mass, ethanol);
    if (!ordinary(mass) || !ordinary(smallest)) return;
    // The mass taken from a lot is the available less the held mass: the rounding is that of the available
    // mass.
    HOSTILE_NEAR(b->product.strength().percent(), wanted, 1e-7 + 1e-13 * most / mass);
    if (volume)
        HOSTILE_NEAR(b->product.volume().value(), volume->value(), 1e-8 * volume->value() + 1e-16 * most);
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    bytes in(data, size);
    switch (in.choice(3)) {
    case 0: blends(in); break;
    case 1: adjustments(in); break;
    default: lots(in); break;
    }
    return 0;
}
