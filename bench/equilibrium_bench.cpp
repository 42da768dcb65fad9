// SPDX-License-Identifier: BSL-1.0
// Equilibria: from the model, which solves for them, through the root finders of Boost.Math, and from a
// curve, which looks them up. An integration of a run needs thousands; these figures show when a curve pays
// off.
#include <aqueth/array.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/equilibrium_curve.hpp>

#include "comparison.hpp"

#include <boost/math/tools/roots.hpp>
#include <boost/math/tools/toms748_solve.hpp>

#include <cstddef>
#include <cstdint>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace {

using namespace aqueth;
namespace vle = aqueth::model::vapour_liquid;
namespace tools = boost::math::tools;

// Weak to strong, under the pressures of weather and altitude, so that no branch and no first guess suits
// all.
struct questions {
    bench::numbers<double> x, pressure, kelvin;
    questions() {
        std::mt19937_64 random(3);
        std::uniform_real_distribution<double> unit(0.0, 1.0);
        for (std::size_t i = 0; i < bench::elements; ++i) {
            x.push_back(unit(random) * unit(random));
            pressure.push_back(60e3 + 50e3 * unit(random));
            kelvin.push_back(340.0 + 30.0 * unit(random));
        }
    }
};
questions const asked;
bench::numbers<double> out(bench::elements);

double toms748(double x, double pressure) {
    std::uintmax_t rounds = 100;
    auto const bracket = tools::toms748_solve(
        [&](double kelvin) { return vle::bubble_at_temperature(x, kelvin).pressure - pressure; },
        vle::lowest_kelvin, vle::highest_kelvin, tools::eps_tolerance<double>(50), rounds);
    return 0.5 * (bracket.first + bracket.second);
}

// With the slope from Clausius and Clapeyron, d ln p/d(1/T) = -4800 K, approximately right for both liquids.
double newton(double x, double pressure) {
    std::uintmax_t rounds = 100;
    return tools::newton_raphson_iterate(
        [&](double kelvin) {
            double const p = vle::bubble_at_temperature(x, kelvin).pressure;
            return std::make_pair(p - pressure, p * 4800.0 / (kelvin * kelvin));
        },
        355.0, vle::lowest_kelvin, vle::highest_kelvin, 48, rounds);
}

void register_all() {
    using bench::all_at_once;
    using bench::one_by_one;

    std::string const bubble = "bubble temperature at a pressure";
    one_by_one(bubble, "Boost.Math, toms748_solve on our pressures",
               [](std::size_t i) { return toms748(asked.x[i], asked.pressure[i]); });
    one_by_one(bubble, "Boost.Math, newton_raphson_iterate on our pressures",
               [](std::size_t i) { return newton(asked.x[i], asked.pressure[i]); });
    one_by_one(bubble, "aqueth, one by one", [](std::size_t i) {
        return vle::bubble_at_pressure(asked.x[i], asked.pressure[i]).temperature;
    });
    one_by_one(bubble, "typed and checked, one by one", [](std::size_t i) {
        return bubble_point(mole_fraction(asked.x[i]), asked.pressure[i] * newton_per_square_metre)
            .temperature.celsius();
    });
    all_at_once(bubble, "aqueth, arrays, checked",
                [] { arrays::bubble_temperature(asked.x, asked.pressure, out); });

    std::string const pressure = "bubble pressure at a temperature";
    one_by_one(pressure, "aqueth, one by one", [](std::size_t i) {
        return vle::bubble_at_temperature(asked.x[i], asked.kelvin[i]).pressure;
    });

    static equilibrium_curve const curve(standard_atmosphere);
    std::string const vapour = "vapour over a liquid at one pressure";
    one_by_one(vapour, "the model, solved",
               [](std::size_t i) { return vle::bubble_at_pressure(asked.x[i], 101325.0).y; });
    one_by_one(vapour, "aqueth, one by one, from a curve",
               [](std::size_t i) { return curve.vapour(mole_fraction(asked.x[i])).value(); });
    all_at_once(vapour, "aqueth, arrays, from a curve, checked", [] { arrays::vapour(curve, asked.x, out); });

    std::string const made = "an equilibrium curve, made";
    static double kilopascals = 90.0;
    all_at_once(
        made, "one curve",
        [] {
            benchmark::DoNotOptimize(kilopascals);
            equilibrium_curve one(kilopascals * kilopascal);
            benchmark::DoNotOptimize(one);
        },
        1);
    all_at_once(made, "aqueth, one by one: a bubble point at that pressure", [] {
        for (double const x : asked.x)
            benchmark::DoNotOptimize(vle::bubble_at_pressure(x, kilopascals * 1000.0).temperature);
    });

    std::string const dew = "dew temperature at a pressure";
    one_by_one(dew, "aqueth, one by one",
               [](std::size_t i) { return vle::dew_at_pressure(asked.x[i], asked.pressure[i]).temperature; });

    std::string const flash = "flash at 85 °C and one atmosphere, of a feed that splits";
    one_by_one(flash, "aqueth, one by one", [](std::size_t i) {
        mole_fraction const feed(0.15 + 0.3 * asked.x[i]);
        return isothermal_flash(feed, celsius(85.0), standard_atmosphere).vapour_fraction;
    });
}

}  // namespace

int main(int argc, char** argv) {
    register_all();
    return bench::run(argc, argv);
}
