// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/still/run.hpp>

/// Stills, charges and plans that the tests of runs share.
namespace aqueth::test {

inline boiling_curve const& sea_level() {
    static boiling_curve const curve(standard_atmosphere);
    return curve;
}

inline still pot_still() { return {{1.0 * kilowatt}}; }

/// The stillhouse's 25 L pot under the 4-plate column.
inline still quillbeck() {
    still s{{2.0 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_plates(4, 0.6);
    s.neck = neck::condensing(0.05);
    s.head = head::total_condenser(reflux::constant(3.0));
    return s;
}
inline wash quillbeck_charge() { return wash::of(25.0 * litre, by_volume(11.0), plato(1.5), celsius(20)); }

inline run_plan until(condition const& end) {
    run_plan plan;
    plan.ends = {end};
    return plan;
}
inline double moles(parcel const& p) { return detail::amounts(wash::of(p)).volatiles(); }
inline double x_of(parcel const& p) { return p.strength<mole_fraction>().value(); }

}  // namespace aqueth::test
