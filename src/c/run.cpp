// SPDX-License-Identifier: BSL-1.0
// Runs of a still as opaque handles, and parcels in arrays: what needs memory, and the typed floor that
// throws.
#include "interface.hpp"

#include <aqueth/still/run.hpp>

#include <cmath>
#include <cstring>
#include <limits>
#include <memory>
#include <new>
#include <string>
#include <vector>

using namespace aqueth;

/// The results of a run, as the caller reads them.
struct aqueth_run {
    std::vector<aqueth_run_fraction> fractions;
    std::vector<aqueth_run_point> begins;  ///< of fractions
    std::vector<aqueth_run_point> ends;    ///< of fractions
    std::vector<aqueth_run_point> points;
    aqueth_run_residue residue;
    aqueth_run_totals totals;
};

namespace {

/// A call that no value of its arguments could answer.
struct bad_call {};

/// Turns what a function throws into a status. Nothing may be thrown into a caller in C.
template <class Body>
aqueth_status guarded(aqueth_refusal* why, Body body) noexcept {
    try {
        return body();
    } catch (refusal const& error) {
        // Typed functions print a strength in percent; in C it is a fraction.
        double const per = error.unit().starts_with('%') ? 100.0 : 1.0;
        auto const status =
            plain::refuse(error.code(), error.value() / per, error.lower() / per, error.upper() / per);
        return c::report(status, why, c::limit_code_of(error.reason()));
    } catch (std::bad_alloc const&) {
        return AQUETH_NO_MEMORY;
    } catch (bad_call const&) {
        return AQUETH_BAD_CALL;
    } catch (...) {
        return AQUETH_INTERNAL;
    }
}

/// Calls with a strength of the type that belongs to its scale.
template <class Call>
auto with_strength(int scale, double value, Call call) {
    if (!c::is_strength_scale(scale)) throw bad_call();
    switch (c::strength_scale_of(scale)) {
    case c::strength_scale::mass_fraction: return call(mass_fraction(value));
    case c::strength_scale::mole_fraction: return call(mole_fraction(value));
    case c::strength_scale::volume_fraction_at_20_celsius: return call(volume_fraction(value));
    case c::strength_scale::volume_fraction_at_15_celsius:
        return call(basic_volume_fraction<at_15_celsius>(value));
    case c::strength_scale::volume_fraction_at_15_56_celsius:
        return call(basic_volume_fraction<at_15_56_celsius>(value));
    case c::strength_scale::volume_fraction_at_60_fahrenheit:
        return call(basic_volume_fraction<at_60_fahrenheit>(value));
    case c::strength_scale::us_proof: return call(us_proof(value));
    case c::strength_scale::grams_per_100_ml_at_20_celsius: return call(mass_concentration(value));
    case c::strength_scale::grams_per_100_ml_at_15_celsius:
        return call(basic_mass_concentration<at_15_celsius>(value));
    case c::strength_scale::grams_per_100_ml_at_15_56_celsius:
        return call(basic_mass_concentration<at_15_56_celsius>(value));
    case c::strength_scale::grams_per_100_ml_at_60_fahrenheit:
        return call(basic_mass_concentration<at_60_fahrenheit>(value));
    }
    throw bad_call();
}

/// A flag of the caller: 0 or 1, so that other numbers can mean more one day.
bool flag(int number) {
    if (number != 0 && number != 1) throw bad_call();
    return number == 1;
}

condition condition_of(aqueth_condition const& given) {
    switch (given.watched) {
    case AQUETH_WATCHED_STILL_STRENGTH:
        return with_strength(given.scale, given.value,
                             [](auto strength) { return condition::still_strength(strength); });
    case AQUETH_WATCHED_BOILING_TEMPERATURE: return condition::boiling_temperature(celsius(given.value));
    case AQUETH_WATCHED_DISTILLATE_STRENGTH:
        return with_strength(given.scale, given.value,
                             [](auto strength) { return condition::distillate_strength(strength); });
    case AQUETH_WATCHED_KEPT_STRENGTH: return condition::strength_lost();
    case AQUETH_WATCHED_COLLECTED_VOLUME: return condition::collected(given.value * litre);
    case AQUETH_WATCHED_ELAPSED_TIME: return condition::elapsed(given.value * minute);
    default: throw bad_call();
    }
}

wash charge_of(aqueth_run_options const& given) {
    double const solids = extract(given.charge_plato).value();
    require_range("charge", argument::mass_of_the_charge, given.charge_kg, "kg", 0.0, unlimited);
    require_range("charge", argument::mass_fraction, given.charge_ethanol_mass_fraction, "", 0.0,
                  1.0 - solids);
    double const liquid_kg = given.charge_kg * (1.0 - solids);
    return wash::of(parcel::of(liquid_kg * kilogram,
                               mass_fraction(given.charge_ethanol_mass_fraction / (1.0 - solids)),
                               celsius(given.charge_celsius)),
                    given.charge_kg * solids * kilogram);
}

column column_of(aqueth_run_options const& given) {
    if (given.murphree_efficiency == 1.0) return column::of_stages(given.stages);
    require_range("column", argument::number_of_plates, given.stages, "", 0.0, column::most_stages);
    double const whole = std::floor(given.stages);
    require_range("column", argument::number_of_plates, given.stages, "", whole, whole,
                  "a number of plates is whole");
    return column::of_plates(static_cast<int>(whole), given.murphree_efficiency);
}

reflux reflux_of(aqueth_run_options const& given) {
    switch (given.reflux) {
    case AQUETH_REFLUX_CONSTANT_RATIO: return reflux::constant(given.reflux_ratio);
    case AQUETH_REFLUX_CONSTANT_STRENGTH:
        return with_strength(given.kept_scale, given.kept_strength, [&](auto strength) {
            return reflux::constant_strength(strength, given.reflux_ratio);
        });
    default: throw bad_call();
    }
}

still still_of(aqueth_run_options const& given) {
    still s{{given.power_watts * watt, given.heat_capacity_j_k * joule_per_kelvin,
             given.heat_loss_w_k * watt_per_kelvin, celsius(given.room_celsius)}};
    s.tower = column_of(given);
    s.head = head::total_condenser(reflux_of(given));
    s.flow = flag(given.flow_model) ? flow_model::enthalpy_balance : flow_model::constant_molar_overflow;
    s.neck = neck::condensing(given.neck_share);
    return s;
}

run_plan plan_of(aqueth_run_options const& given) {
    if (given.cut_count > 0 && given.cuts == nullptr) throw bad_call();
    if (given.end_count > 0 && given.ends == nullptr) throw bad_call();
    // Before they are read, as distil itself requires: a wild count is not a length to walk.
    require_range("distillation", argument::number_of_cuts, static_cast<double>(given.cut_count), "", 0.0,
                  run_plan::most_cuts);
    require_range("distillation", argument::number_of_ends_of_the_run, static_cast<double>(given.end_count),
                  "", 1.0, run_plan::most_ends, "a run must end");
    if (given.cut_count > 0 && given.cuts->size != sizeof(aqueth_condition)) throw bad_call();
    if (given.ends->size != sizeof(aqueth_condition)) throw bad_call();
    run_plan plan;
    for (std::size_t k = 0; k < given.cut_count; ++k)
        plan.cuts.push_back({condition_of(given.cuts[k]), !flag(given.cuts[k].discard)});
    for (std::size_t k = 0; k < given.end_count; ++k) plan.ends.push_back(condition_of(given.ends[k]));
    plan.points = given.points;
    plan.product_temperature = celsius(given.product_celsius);
    return plan;
}

aqueth_run_point read(run_point const& p) {
    return {sizeof(aqueth_run_point),  in(p.elapsed, second), in(p.collected, litre),
            in(p.pure_alcohol, litre), in(p.distilled, mole), in(p.left, mole),
            p.still.value(),           p.distillate.value(),  p.boiling.celsius(),
            p.vapour.celsius(),        p.reflux_ratio,        in(p.condenser, watt)};
}

aqueth_run_fraction read(run_fraction const& f) {
    return {sizeof(aqueth_run_fraction),         in(f.product.mass(), kilogram),
            f.product.composition().value(),     f.product.temperature().celsius(),
            in(f.product.volume(), litre),       f.product.strength().value(),
            in(f.product.pure_alcohol(), litre), f.kept ? 1 : 0};
}

aqueth_run_residue read(wash const& w) {
    return {sizeof(aqueth_run_residue), in(w.mass(), kilogram), in(w.liquid().ethanol(), w.mass()),
            w.extract().degrees(), w.temperature().celsius()};
}

aqueth_run_totals totals_of(distillation const& d) {
    return {sizeof(aqueth_run_totals),
            in(d.warming.duration, second),
            in(d.warming.supplied, joule),
            in(d.boiling_time, second),
            in(d.heat.supplied, joule),
            in(d.heat.lost_by_pot, joule),
            in(d.heat.neck, joule),
            in(d.heat.condenser, joule),
            in(d.heat.with_distillate, joule),
            in(d.heat.gained_by_still, joule),
            in(d.kept_alcohol(), litre),
            d.recovery(),
            d.strength_lost ? in(d.strength_lost->elapsed, second)
                            : std::numeric_limits<double>::quiet_NaN()};
}

/// Copies a structure into the caller's, which may be of a later version and then longer.
template <class Structure>
void copy(Structure const& from, unsigned char* to, std::size_t size) noexcept {
    std::memcpy(to, &from, sizeof(Structure));
    std::memcpy(to, &size, sizeof size);  // the first member
}

template <class Structure>
aqueth_status get(Structure const& from, Structure* to) noexcept {
    if (to == nullptr || to->size < sizeof(Structure)) return AQUETH_BAD_CALL;
    copy(from, reinterpret_cast<unsigned char*>(to), to->size);
    return AQUETH_OK;
}

template <class Structure>
aqueth_status get(std::vector<Structure> const& from, std::size_t first, std::size_t count,
                  Structure* to) noexcept {
    if (first > from.size() || count > from.size() - first) return AQUETH_BAD_CALL;
    if (count == 0) return AQUETH_OK;
    if (to == nullptr || to->size < sizeof(Structure)) return AQUETH_BAD_CALL;
    std::size_t const size = to->size;
    auto* const bytes = reinterpret_cast<unsigned char*>(to);
    for (std::size_t k = 0; k < count; ++k) copy(from[first + k], bytes + k * size, size);
    return AQUETH_OK;
}

}  // namespace

extern "C" aqueth_status aqueth_run_options_init(aqueth_run_options* options) {
    if (options == nullptr || options->size != sizeof(aqueth_run_options)) return AQUETH_BAD_CALL;
    *options = {};
    options->size = sizeof(aqueth_run_options);
    options->charge_celsius = options->room_celsius = options->product_celsius = 20.0;
    options->murphree_efficiency = 1.0;
    options->kpa = in(standard_atmosphere, kilopascal);
    return AQUETH_OK;
}

extern "C" aqueth_status aqueth_run_new(aqueth_run_options const* options, aqueth_run** run,
                                        aqueth_refusal* refusal) {
    if (run == nullptr) return AQUETH_BAD_CALL;
    *run = nullptr;
    if (options == nullptr || options->size != sizeof(aqueth_run_options)) return AQUETH_BAD_CALL;
    if (refusal != nullptr && refusal->size < sizeof(aqueth_refusal)) return AQUETH_BAD_CALL;
    return guarded(refusal, [&] {
        still const s = still_of(*options);
        run_plan const plan = plan_of(*options);
        distillation const d = distil(charge_of(*options), s, plan, options->kpa * kilopascal);
        auto made = std::make_unique<aqueth_run>();
        for (run_fraction const& f : d.fractions) {
            made->fractions.push_back(read(f));
            made->begins.push_back(read(f.begin));
            made->ends.push_back(read(f.end));
        }
        for (run_point const& p : d.points) made->points.push_back(read(p));
        made->residue = read(d.residue);
        made->totals = totals_of(d);
        *run = made.release();
        return AQUETH_OK;
    });
}

extern "C" void aqueth_run_free(aqueth_run* run) { delete run; }

extern "C" size_t aqueth_run_fraction_count(aqueth_run const* run) {
    return run == nullptr ? 0 : run->fractions.size();
}
extern "C" size_t aqueth_run_point_count(aqueth_run const* run) {
    return run == nullptr ? 0 : run->points.size();
}

extern "C" aqueth_status aqueth_run_get_fractions(aqueth_run const* run, size_t first, size_t count,
                                                  aqueth_run_fraction* fractions) {
    return run == nullptr ? AQUETH_BAD_CALL : get(run->fractions, first, count, fractions);
}
extern "C" aqueth_status aqueth_run_get_points(aqueth_run const* run, size_t first, size_t count,
                                               aqueth_run_point* points) {
    return run == nullptr ? AQUETH_BAD_CALL : get(run->points, first, count, points);
}
extern "C" aqueth_status aqueth_run_get_fraction_ends(aqueth_run const* run, size_t fraction,
                                                      aqueth_run_point* begin, aqueth_run_point* end) {
    if (run == nullptr || end == nullptr || end->size < sizeof(aqueth_run_point)) return AQUETH_BAD_CALL;
    aqueth_status const got = get(run->begins, fraction, 1, begin);
    return got == AQUETH_OK ? get(run->ends, fraction, 1, end) : got;
}
extern "C" aqueth_status aqueth_run_get_residue(aqueth_run const* run, aqueth_run_residue* residue) {
    return run == nullptr ? AQUETH_BAD_CALL : get(run->residue, residue);
}
extern "C" aqueth_status aqueth_run_get_totals(aqueth_run const* run, aqueth_run_totals* totals) {
    return run == nullptr ? AQUETH_BAD_CALL : get(run->totals, totals);
}

extern "C" aqueth_status aqueth_mix_parcels(size_t count, double const* kg, double const* mass_fraction,
                                            double const* celsius, double* product_kg_result,
                                            double* product_mass_fraction_result,
                                            double* product_celsius_result, double* contraction_litres_result,
                                            aqueth_refusal* refusal) {
    if (count > 0 && (kg == nullptr || mass_fraction == nullptr || celsius == nullptr))
        return AQUETH_BAD_CALL;
    return guarded(refusal, [&] {
        if (count > std::vector<plain::parcel<double>>().max_size()) throw std::bad_alloc();
        std::vector<plain::parcel<double>> parts(count);
        for (std::size_t k = 0; k < count; ++k) parts[k] = {kg[k], mass_fraction[k], celsius[k]};
        return c::one(
            plain::mix(parts.data(), count), refusal,
            [](plain::blend<double> const& value) {
                return std::array{value.product.mass_kg, value.product.mass_fraction, value.product.celsius,
                                  value.contraction_litres};
            },
            product_kg_result, product_mass_fraction_result, product_celsius_result,
            contraction_litres_result);
    });
}
