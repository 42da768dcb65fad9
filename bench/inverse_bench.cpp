// SPDX-License-Identifier: BSL-1.0
// The inverses: compositions from densities and strengths, corrections of readings. The comparison is with
// the root finders of Boost.Math on the same polynomials, with an obvious first guess.
#include <aqueth/array.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/density.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/strength.hpp>

#include "boost_isotherm.hpp"
#include "comparison.hpp"
#include "oiml_r22_states.hpp"

#include <cstdint>
#include <limits>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace aqueth;
namespace r22 = aqueth::correlation::oiml_r22;

using bench::boost_isotherm;

boost_isotherm const boost_at_20(20.0);
constexpr double glass = 25e-6;

// The calculation of a reading's correction, with Newton's method twice: on isotherms, and on the whole
// formula.
double whole_correction(double reading, double t) {
    std::uintmax_t rounds = 100;
    double const ethanol = bench::whole_formula(1.0, 20.0).first;
    double const apparent = bench::tools::newton_raphson_iterate(
        [&](double w) {
            auto const at = bench::whole_formula(w, 20.0);
            return std::make_pair(w * at.first - reading * ethanol, at.first + w * at.second);
        },
        reading, 0.0, 1.0, std::numeric_limits<double>::digits - 4, rounds);
    double const rho = bench::whole_formula(apparent, 20.0).first / (1.0 + glass * (t - 20.0));
    double const w = bench::newton_on_the_whole_formula(rho, t);
    return w * bench::whole_formula(w, 20.0).first / ethanol;
}
double boost_correction(double reading, double t) {
    double const floats_at = boost_at_20.density(boost_at_20.newton_from_volume(reading));
    boost_isotherm const at_t(t);
    double const w = at_t.newton(floats_at / (1.0 + glass * (t - 20.0)));
    return w * boost_at_20.density(w) / boost_at_20.density(1.0);
}

bench::states const all(-20.0);
bench::states const warm(0.0);
bench::numbers<double> readings;  // for strengths from 20 to 80 % vol, so that all are on the scale
alcoholometer const meter;
bench::numbers<double> out(bench::elements);

void register_all() {
    using bench::all_at_once;
    using bench::one_by_one;
    readings.reserve(bench::elements);
    for (double const q : warm.q) {
        std::size_t const i = readings.size();
        auto const w = to<mass_fraction>(volume_fraction(0.2 + 0.6 * q));
        readings.push_back(meter.reading(w, celsius(warm.t[i])).value());
    }

    for (auto const& [name, set] : {std::pair<std::string, bench::states const*>{"0 to 40", &warm},
                                    std::pair<std::string, bench::states const*>{"-20 to 40", &all}}) {
        std::string const density = "mass fraction from density, " + name + " °C";
        auto const* s = set;
        one_by_one(density, "Boost.Math, toms748_solve",
                   [s](std::size_t i) { return boost_isotherm(s->t[i]).toms748(s->rho[i]); });
        one_by_one(density, "Boost.Math, newton_raphson_iterate, whole formula",
                   [s](std::size_t i) { return bench::newton_on_the_whole_formula(s->rho[i], s->t[i]); });
        one_by_one(density, "Boost.Math, newton_raphson_iterate, isotherm first",
                   [s](std::size_t i) { return boost_isotherm(s->t[i]).newton(s->rho[i]); });
        one_by_one(density, "aqueth, one by one",
                   [s](std::size_t i) { return r22::mass_fraction_from_density(s->rho[i], s->t[i]); });
        one_by_one(density, "typed and checked, one by one", [s](std::size_t i) {
            return mass_fraction_from_density(s->rho[i] * kilogram_per_cubic_metre, celsius(s->t[i])).value();
        });
        all_at_once(density, "aqueth, arrays, checked",
                    [s] { arrays::mass_fraction_from_density(s->rho, s->t, out); });
        all_at_once(density, "for comparison: a density, arrays, checked",
                    [s] { arrays::density(s->w, s->t, out); });
    }

    std::string const volume = "mass fraction from % vol at 20 °C";
    one_by_one(volume, "Boost.Math, newton_raphson_iterate, isotherm first",
               [](std::size_t i) { return boost_at_20.newton_from_volume(all.q[i]); });
    one_by_one(volume, "aqueth, one by one",
               [](std::size_t i) { return r22::mixture_at_20_celsius(all.q[i]).mass_fraction(); });
    one_by_one(volume, "typed and checked, one by one",
               [](std::size_t i) { return to<mass_fraction>(volume_fraction(all.q[i])).value(); });
    all_at_once(volume, "aqueth, arrays, checked",
                [] { arrays::to<mass_fraction, volume_fraction>(all.q, out); });

    std::string const correction = "true strength from the reading of an alcoholometer";
    one_by_one(correction, "Boost.Math, newton_raphson_iterate twice, whole formula",
               [](std::size_t i) { return whole_correction(readings[i], warm.t[i]); });
    one_by_one(correction, "Boost.Math, newton_raphson_iterate twice, isotherms first",
               [](std::size_t i) { return boost_correction(readings[i], warm.t[i]); });
    one_by_one(correction, "aqueth, one by one, typed and checked", [](std::size_t i) {
        return meter.strength(volume_fraction(readings[i]), celsius(warm.t[i])).value();
    });
    all_at_once(correction, "aqueth, arrays, checked",
                [] { arrays::strength(meter, readings, warm.t, out); });
}

}  // namespace

int main(int argc, char** argv) {
    register_all();
    return bench::run(argc, argv);
}
