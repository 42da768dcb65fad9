// SPDX-License-Identifier: BSL-1.0
// Typed properties of one mixture: refused with a refusal, or finite, in range, the same there and back.
#include "hostile.hpp"

#include <aqueth/aqueth.hpp>

using namespace aqueth;
using namespace aqueth::hostile;

namespace {

/// There and back through another basis. The tolerance is that of docs/accuracy.md: 1e-12 in the mass
/// fraction.
template <class Basis>
void there_and_back(mass_fraction w) {
    auto const there = to<Basis>(w);
    HOSTILE_REQUIRE(std::isfinite(there.number()));
    auto const back = unless_refused([&] { return to<mass_fraction>(there); });
    HOSTILE_REQUIRE(back.has_value());
    HOSTILE_NEAR(back->value(), w.value(), 1e-12);
}

void strengths(bytes& in) {
    double const given = in.number(0.0, 1.0);
    if (auto const w = unless_refused([&] { return mass_fraction(given); })) {
        there_and_back<mole_fraction>(*w);
        there_and_back<volume_fraction>(*w);
        there_and_back<basic_volume_fraction<at_15_celsius>>(*w);
        there_and_back<basic_volume_fraction<at_15_56_celsius>>(*w);
        there_and_back<basic_volume_fraction<at_60_fahrenheit>>(*w);
        there_and_back<us_proof>(*w);
        there_and_back<mass_concentration>(*w);
        there_and_back<basic_mass_concentration<at_15_celsius>>(*w);
    }
    double const degrees = in.number(0.0, 200.0);
    if (auto const w = unless_refused([&] { return to<mass_fraction>(proof(degrees)); }))
        HOSTILE_NEAR(to<us_proof>(*w).degrees(), degrees, 1e-9);
    double const grams = in.number(0.0, 80.0);
    unless_refused([&] { return to<volume_fraction>(grams_per_100_millilitres(grams)); });
}

void densities(bytes& in) {
    double const given = in.number(0.0, 1.0);
    auto const t = celsius(in.number(-20.0, 40.0));
    auto const rho = unless_refused([&] { return density(mass_fraction(given), t); });
    if (rho) {
        mass_fraction const w(given);
        HOSTILE_WITHIN(rho->value(), 770.0, 1001.0);
        auto const back = unless_refused([&] { return mass_fraction_from_density(*rho, t); });
        HOSTILE_REQUIRE(back.has_value());
        HOSTILE_NEAR(back->value(), given, 1e-11);
        HOSTILE_WITHIN(thermal_expansion(w, t).value(), -2e-3, 2e-3);
        HOSTILE_REQUIRE(molar_volume(w, t).value() > 1.7e-5);
        HOSTILE_WITHIN(density_in_air(*rho).value(), rho->value() - 1.2, rho->value());
        unless_refused([&] { return excess_molar_volume(w, t); });
    }
    double const any = in.number(700.0, 1100.0);
    if (auto const w =
            unless_refused([&] { return mass_fraction_from_density(any * kilogram_per_cubic_metre, t); }))
        HOSTILE_NEAR(density(*w, t).value(), any, 2e-9);
    if (auto const w = unless_refused([&] { return water_density_cipm_2001(t); }))
        HOSTILE_WITHIN(w->value(), 992.0, 1000.0);
    if (auto const freezing = unless_refused([&] { return freezing_point(mass_fraction(given)); }))
        HOSTILE_WITHIN(freezing->celsius(), -50.0, 0.0);
    double const kilograms = in.number(0.0, 1e3);
    auto const shown = unless_refused(
        [&] { return balance_indication(kilograms * kilogram, any * kilogram_per_cubic_metre); });
    if (shown) {
        auto const back = mass_from_balance(*shown, any * kilogram_per_cubic_metre);
        HOSTILE_NEAR(back.value(), kilograms, 1e-12 * kilograms);
    }
}

template <class Meter, class Mark>
void read_stem(Meter const& meter, Mark const& make, double mark, units::temperature t, double tolerance) {
    auto const w = unless_refused([&] { return meter.composition(make(mark), t); });
    if (!w) return;
    HOSTILE_WITHIN(w->value(), 0.0, 1.0);
    // The stem may end before the liquid does; where it does not, it shows what it showed.
    auto const again = unless_refused([&] { return meter.reading(*w, t); });
    if (!again) return;
    double shown = 0.0;
    if constexpr (requires { again->number(); }) {
        shown = again->number();
    } else {
        shown = again->value();
    }
    HOSTILE_NEAR(shown, mark, tolerance);
}

void instruments(bytes& in) {
    auto const t = celsius(in.number(-20.0, 40.0));
    auto const reference = celsius(in.number(0.0, 40.0));
    auto const glass = in.number(0.0, 3e-4) * per_kelvin;
    // what a ten millionth of a kilogram per cubic metre is on each scale, where it is most
    unless_refused([&] {
        read_stem(alcoholometer(glass), by_volume<at_20_celsius>, in.number(0.0, 100.0), t, 1e-8);
        read_stem(proof_hydrometer(glass), proof, in.number(0.0, 200.0), t, 1e-8);
        read_stem(hydrometer<mass_fraction>(reference, glass), by_mass, in.number(0.0, 100.0), t, 1e-8);
        read_stem(hydrometer<mole_fraction>(reference, glass), by_moles, in.number(0.0, 100.0), t, 1e-8);
        read_stem(
            density_hydrometer(reference, glass), [](double rho) { return rho * kilogram_per_cubic_metre; },
            in.number(700.0, 1100.0), t, 1e-7);
        gravity_reference const gravity{reference, celsius(in.number(0.0, 40.0)),
                                        in.choice(2) ? medium::air : medium::vacuum};
        read_stem(
            gravity_hydrometer(gravity, glass), [](double v) { return specific_gravity(v); },
            in.number(0.7, 1.1), t, 1e-10);
        return 0;
    });
}

void require_equilibrium(equilibrium const& e) {
    HOSTILE_WITHIN(e.temperature.celsius(), 0.0, 120.1);
    HOSTILE_WITHIN(in(e.pressure, kilopascal), 0.5, 500.0);
    HOSTILE_WITHIN(e.liquid.value(), 0.0, 1.0);
    HOSTILE_WITHIN(e.vapour.value(), 0.0, 1.0);
    HOSTILE_WITHIN(e.relative_volatility, 0.3, 30.0);
}

void boiling(bytes& in) {
    double const x = in.number(0.0, 1.0);
    auto const t = celsius(in.number(0.01, 120.0));
    auto const p = in.number(0.6, 430.0) * kilopascal;
    if (auto const e = unless_refused([&] { return bubble_point(mole_fraction(x), t); })) {
        require_equilibrium(*e);
        auto const back = unless_refused([&] { return bubble_point(e->liquid, e->pressure); });
        // A pressure at the very end of the range may be refused, for its last digit.
        if (back) HOSTILE_NEAR(back->temperature.celsius(), t.celsius(), 1e-9);
        if (auto const dew = unless_refused([&] { return dew_point(e->vapour, t); })) {
            require_equilibrium(*dew);
            HOSTILE_NEAR(dew->pressure.value(), e->pressure.value(), 1e-9 * e->pressure.value());
        }
    }
    if (auto const e = unless_refused([&] { return bubble_point(mole_fraction(x), p); })) {
        require_equilibrium(*e);
        if (auto const back = unless_refused([&] { return bubble_point(e->liquid, e->temperature); }))
            HOSTILE_NEAR(back->pressure.value(), p.value(), 1e-10 * p.value());
    }
    if (auto const e = unless_refused([&] { return dew_point(mole_fraction(x), p); }))
        require_equilibrium(*e);
    if (auto const e = unless_refused([&] { return dew_point(mole_fraction(x), t); }))
        require_equilibrium(*e);
    if (auto const e = unless_refused([&] { return azeotrope(p); })) require_equilibrium(*e);
    if (auto const e = unless_refused([&] { return azeotrope(t); })) require_equilibrium(*e);
    auto const which = in.choice(2) ? azeotrope_side::water_rich : azeotrope_side::ethanol_rich;
    if (auto const e = unless_refused([&] { return coexistence(t, p, which); })) {
        require_equilibrium(*e);
        HOSTILE_NEAR(bubble_point(e->liquid, t).pressure.value(), p.value(), 1e-9 * p.value());
    }
    if (auto const f = unless_refused([&] { return isothermal_flash(mole_fraction(x), t, p); })) {
        HOSTILE_WITHIN(f->vapour_fraction, 0.0, 1.0);
        HOSTILE_REQUIRE(f->liquid.has_value() || f->vapour_fraction == 1.0);
        HOSTILE_REQUIRE(f->vapour.has_value() || f->vapour_fraction == 0.0);
        double const sum = (f->liquid ? (1.0 - f->vapour_fraction) * f->liquid->value() : 0.0) +
                           (f->vapour ? f->vapour_fraction * f->vapour->value() : 0.0);
        HOSTILE_NEAR(sum, x, 1e-9);
    }
    if (auto const g = unless_refused([&] { return activity_coefficients_of(mole_fraction(x), t); })) {
        HOSTILE_WITHIN(g->ethanol, 0.9, 10.0);
        HOSTILE_WITHIN(g->water, 0.9, 10.0);
    }
}

void heats(bytes& in) {
    double const x = in.number(0.0, 1.0);
    auto const t = celsius(in.number(0.0, 116.85));
    auto const p = in.number(0.0, 300.0) * kilopascal;
    if (auto const h = unless_refused([&] { return excess_enthalpy(mole_fraction(x), t); }))
        HOSTILE_WITHIN(h->value(), -2000.0, 1000.0);
    if (auto const c = unless_refused([&] { return specific_heat_capacity(mole_fraction(x), t); }))
        HOSTILE_WITHIN(c->value(), 2000.0, 5000.0);
    if (auto const h = unless_refused([&] { return enthalpy_of_liquid(mole_fraction(x), t); })) {
        auto const back = unless_refused([&] { return temperature_of_liquid(mole_fraction(x), *h); });
        HOSTILE_REQUIRE(back.has_value());
        HOSTILE_NEAR(back->celsius(), t.celsius(), 1e-9);
        if (auto const vapour = unless_refused([&] { return enthalpy_of_vapour(mole_fraction(x), t, p); }))
            HOSTILE_WITHIN((*vapour - *h).value(), 7e5, 3e6);
    }
    double const any = in.number(-1e6, 1e6);
    unless_refused([&] { return temperature_of_liquid(mole_fraction(x), any * joule_per_kilogram); });
}

void washes(bytes& in) {
    double const degrees = in.number(-10.0, 70.0);
    if (auto const sg = unless_refused([&] { return specific_gravity_of(apparent_extract(degrees)); })) {
        auto const back = unless_refused([&] { return apparent_extract_of(*sg); });
        HOSTILE_REQUIRE(back.has_value());
        HOSTILE_NEAR(back->degrees(), degrees, 1e-8);
    }
    double const volume = in.number(0.0, 1e3), strength = in.number(0.0, 20.0);
    double const solids = in.number(0.0, 70.0);
    auto const t = celsius(in.number(0.0, 40.0));
    auto const made =
        unless_refused([&] { return wash::of(volume * litre, by_volume(strength), extract(solids), t); });
    if (made && volume > 0.0) {
        HOSTILE_REQUIRE(std::isfinite(made->mass().value()));
        if (volume > 1e-200 && volume < 1e200) {  // products of these stay numbers
            HOSTILE_NEAR(aqueth::in(made->volume(), litre), volume, 1e-9 * volume);
            HOSTILE_NEAR(made->strength().percent(), strength, 1e-8);
            HOSTILE_NEAR(made->extract().degrees(), solids, 1e-9);
        }
    }
    double const og = in.number(0.98, 1.2), fg = in.number(0.98, 1.2);
    unless_refused([&] { return alcohol_by_gravity_fall(specific_gravity(og), specific_gravity(fg)); });
    auto const fermented = unless_refused(
        [&] { return fermented_wash(1.0 * litre, specific_gravity(og), specific_gravity(fg), t); });
    if (fermented) HOSTILE_NEAR(fermented->specific_gravity().value(), fg, 1e-8);
    unless_refused([&] { return real_extract(extract(solids), apparent_extract(degrees)); });
    unless_refused([&] { return alcohol_by_balling(extract(solids), extract(degrees)); });
    unless_refused([&] { return alcohol_by_balling_factors(extract(solids), apparent_extract(degrees)); });
    unless_refused([&] { return apparent_attenuation(extract(solids), apparent_extract(degrees)); });
    auto const kind = static_cast<sugar>(in.choice(3));
    double const share = in.number(0.3, 1.0);
    auto const plan =
        unless_refused([&] { return sugar_needed(volume * litre, by_volume(strength), kind, share); });
    if (plan) HOSTILE_REQUIRE(plan->practical >= plan->least * (1.0 - 1e-12));
    if (auto const sg = unless_refused([&] {
            gravity_reference const gravity{celsius(in.number(0.0, 40.0)), celsius(in.number(0.0, 40.0)),
                                            medium::vacuum};
            return true_gravity(specific_gravity(og), t, gravity_hydrometer(gravity),
                                mass_fraction(strength / 100.0));
        }))
        HOSTILE_WITHIN(sg->value(), 0.5, 2.0);
}

void sugar_and_light(bytes& in) {
    double const strength = in.number(0.0, 100.0), concentration = in.number(0.0, 900.0);
    auto const t = celsius(in.number(0.0, 40.0));
    auto const kind = static_cast<sweetener>(in.choice(4));
    auto const liqueur = unless_refused(
        [&] { return sweetened::of(litre, by_volume(strength), concentration * gram_per_litre, t, kind); });
    if (liqueur) {
        auto const back = unless_refused([&] {
            return strength_behind_sugar(liqueur->density(), t, concentration * gram_per_litre, kind);
        });
        if (back) HOSTILE_NEAR(back->percent(), strength, 1e-5);
        unless_refused(
            [&] { return sugar_behind_density(liqueur->density(celsius(20)), liqueur->strength(), kind); });
        unless_refused([&] { return liqueur->strength_doubt(); });
        if (auto const n = unless_refused([&] { return refractive_index_of(*liqueur); }))
            unless_refused([&] { return brix_of(*n); });
    }
    auto const spirit =
        unless_refused([&] { return parcel::of(litre, by_volume(in.number(0.0, 100.0)), t); });
    if (spirit) {
        auto const plan = unless_refused(
            [&] { return sweeten(*spirit, by_volume(strength), concentration * gram_per_litre, kind); });
        if (plan) HOSTILE_NEAR(plan->product.strength().percent(), strength, 1e-6);
    }
    double const rho = in.number(700.0, 1400.0), light = in.number(1.3, 1.5);
    unless_refused([&] { return find_methanol(rho * kilogram_per_cubic_metre, refractive_index(light)); });
    unless_refused([&] {
        return wash_from_gravity_and_index(litre, specific_gravity(rho / 998.2), refractive_index(light), t);
    });
    unless_refused([&] {
        return fermented_wash(litre, specific_gravity(in.number(0.98, 1.15)), brix(in.number(0.0, 40.0)), t);
    });
    unless_refused([&] {
        return strength_of_distilled_sample(in.number(0.0, 1.0) * litre, t, in.number(0.0, 1.0) * litre,
                                            by_volume(strength), t, in.number(0.0, 0.2));
    });
}

void small_things(bytes& in) {
    double const degrees = in.number(0.0, 200.0), metres = in.number(-5000.0, 11000.0);
    auto const t = celsius(in.number(-20.0, 40.0));
    unless_refused([&] {
        HOSTILE_WITHIN(weight_per_volume(proof(degrees)).value(), 780.0, 1000.0);
        HOSTILE_WITHIN(wine_gallons_per_pound(proof(degrees)), 0.1, 0.2);
        HOSTILE_WITHIN(volume_factor_to_60_fahrenheit(proof(degrees), t), 0.9, 1.1);
        return 0;
    });
    if (auto const p = unless_refused([&] { return pressure_at_altitude(metres * metre); }))
        HOSTILE_WITHIN(p->value(), 2e4, 2e5);
}

void liquids(bytes& in) {
    double const given = in.number(0.0, 1.0);
    auto const t = celsius(in.number(-30.0, 110.0));
    auto const p = in.number(50.0, 210.0) * kilopascal;
    auto const w = unless_refused([&] { return mass_fraction(given); });
    if (!w) return;
    if (auto const eta = unless_refused([&] { return viscosity(*w, t); }))
        HOSTILE_WITHIN(eta->value(), 2e-4, 9e-3);
    if (auto const c = unless_refused([&] { return speed_of_sound(*w, t); }))
        HOSTILE_WITHIN(c->value(), 1100.0, 1640.0);
    if (auto const k = unless_refused([&] { return thermal_conductivity(*w, t); }))
        HOSTILE_WITHIN(k->value(), 0.2, 0.6);
    if (auto const flash = unless_refused([&] { return flash_point(*w); })) {
        HOSTILE_WITHIN(flash->celsius(), 12.7, 65.0);
        if (auto const limit =
                unless_refused([&] { return lower_flammable_temperature(*w, 101.325 * kilopascal); }))
            HOSTILE_REQUIRE(*limit < *flash);
    }
    if (auto const share = unless_refused([&] { return saturated_vapour_fraction(*w, t, p); }))
        HOSTILE_WITHIN(*share, 0.0, 1.0);
    unless_refused([&] { return vapour_hazard_over(*w, t, p, in.number(0.0, 50.0) * kelvins); });
    double const degrees = uk_proof_degrees(*w);
    HOSTILE_WITHIN(degrees, 0.0, 175.4);
    if (auto const back = unless_refused([&] { return by_uk_proof(degrees); }))
        HOSTILE_NEAR(back->value(), given, 1e-11);
    auto const scale = static_cast<trade_scale>(in.choice(4));
    double const marks = in.number(0.0, 150.0);
    if (auto const sg = unless_refused([&] { return gravity_on(scale, marks); }))
        HOSTILE_NEAR(degrees_on(scale, *sg), marks, 1e-9 * (1.0 + marks));
}

void cellar(bytes& in) {
    pycnometer const flask{in.number(0.0, 1.0) * kilogram,
                           in.number(0.0, 2.0) * kilogram,
                           celsius(in.number(0.0, 40.0)),
                           in.number(0.0, 2.0) * kilogram,
                           celsius(in.number(-20.0, 40.0)),
                           in.number(0.0, 3e-4) * per_kelvin,
                           in.number(0.5, 1.5) * kilogram_per_cubic_metre};
    if (auto const rho = unless_refused([&] { return flask.density(); }))
        HOSTILE_WITHIN(rho->value(), 0.0, 3e4);
    if (auto const w = unless_refused([&] { return flask.composition(); }))
        HOSTILE_WITHIN(w->value(), 0.0, 1.0);
    double const litres = in.number(0.0, 100.0), plato = in.number(0.0, 70.0);
    if (auto const made = unless_refused([&] { return wort_by_volume(litres * litre, extract(plato)); })) {
        auto const again = unless_refused([&] { return wort_of_extract(made->solids, made->volume); });
        if (again && litres > 1e-3 && litres < 1e200) HOSTILE_NEAR(again->extract.degrees(), plato, 1e-8);
    }
    mash tun{in.number(0.0, 20.0) * kilogram, in.number(0.0, 60.0) * kilogram, celsius(in.number(0.0, 60.0))};
    tun.vessel = in.number(0.0, 1e4) * joule_per_kelvin;
    tun.moisture = in.number(0.0, 0.08);
    auto const wanted = celsius(in.number(30.0, 80.0));
    if (auto const strike = unless_refused([&] { return strike_temperature(tun, wanted); }))
        HOSTILE_WITHIN(strike->celsius(), 0.0, 116.85);
    if (auto const heat = unless_refused([&] {
            return heat_of_fermentation(litres * litre, by_volume(in.number(0.0, 20.0)),
                                        static_cast<sugar>(in.choice(3)));
        }))
        HOSTILE_WITHIN(heat->rise.value(), 0.0, 60.0);
    auto const filled = unless_refused([&] {
        return parcel::of(in.number(0.0, 300.0) * kilogram, mass_fraction(in.number(0.0, 1.0)),
                          celsius(20.0));
    });
    if (!filled) return;
    cask_rates const rates{in.number(0.0, 0.5), in.number(-0.1, 0.5)};
    auto const time = in.number(0.0, 100.0) * julian_year;
    auto const left = unless_refused([&] { return cask_after(*filled, rates, time); });
    if (left) HOSTILE_REQUIRE(left->ethanol() <= filled->ethanol() * (1.0 + 1e-12));
    if (left) unless_refused([&] { return cask_rates_from_gaugings(*filled, *left, time); });
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    bytes in(data, size);
    switch (in.choice(10)) {
    case 0: strengths(in); break;
    case 1: densities(in); break;
    case 2: instruments(in); break;
    case 3: boiling(in); break;
    case 4: heats(in); break;
    case 5: washes(in); break;
    case 6: liquids(in); break;
    case 7: cellar(in); break;
    case 8: sugar_and_light(in); break;
    default: small_things(in); break;
    }
    return 0;
}
