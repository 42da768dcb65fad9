// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/blending.hpp>
#include <aqueth/caloric.hpp>
#include <aqueth/density.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/parcel.hpp>
#include <aqueth/strength.hpp>

#include "comparison.hpp"

#include <cstddef>
#include <string>

/// Typed calls, compiled twice in one program: against the headers of today and against those of
/// AQUETH_EARLIER_HEADERS. So the two versions are timed side by side in one run.
namespace aqueth::bench {

/// Plain numbers to ask with; `plain_bench.cpp` fills them.
struct plain_questions {
    numbers<double> w;        ///< mass fractions
    numbers<double> t;        ///< temperatures where these are liquid, °C
    numbers<double> rho;      ///< their densities, kg/m3
    numbers<double> q;        ///< their volume fractions at 20 °C
    numbers<double> reading;  ///< readings of an alcoholometer, as volume fraction
    numbers<double> warm;     ///< temperatures of these readings, °C
    numbers<double> x;        ///< mole fractions
    numbers<double> kpa;      ///< pressures
};
plain_questions const& asked();

/// Registers a typed call as a way to do an operation.
struct typed_ways {
    using registering = void (*)(std::string const& operation, std::string const& way);
    registering density;
    registering composition;
    registering strength;
    registering reading;
    registering bubble_point;
    registering bubble_point_at_temperature;
    registering dew_point;
    registering heat_capacity;
    registering dilution;
};
typed_ways today();
typed_ways earlier();

}  // namespace aqueth::bench

namespace {

aqueth::alcoholometer const meter;

inline aqueth::bench::typed_ways typed_calls() {
    using namespace aqueth;
    using bench::asked;
    using bench::one_by_one;
    using text = std::string const&;
    bench::typed_ways ways;
    ways.density = [](text operation, text way) {
        one_by_one(operation, way, [](std::size_t i) {
            return density(mass_fraction(asked().w[i]), celsius(asked().t[i])).value();
        });
    };
    ways.composition = [](text operation, text way) {
        one_by_one(operation, way, [](std::size_t i) {
            return mass_fraction_from_density(asked().rho[i] * kilogram_per_cubic_metre,
                                              celsius(asked().t[i]))
                .value();
        });
    };
    ways.strength = [](text operation, text way) {
        one_by_one(operation, way,
                   [](std::size_t i) { return to<mass_fraction>(volume_fraction(asked().q[i])).value(); });
    };
    ways.reading = [](text operation, text way) {
        one_by_one(operation, way, [](std::size_t i) {
            return meter.strength(volume_fraction(asked().reading[i]), celsius(asked().warm[i])).value();
        });
    };
    ways.bubble_point = [](text operation, text way) {
        one_by_one(operation, way, [](std::size_t i) {
            return bubble_point(mole_fraction(asked().x[i]), asked().kpa[i] * kilopascal).vapour.value();
        });
    };
    ways.bubble_point_at_temperature = [](text operation, text way) {
        one_by_one(operation, way, [](std::size_t i) {
            return bubble_point(mole_fraction(asked().x[i]), celsius(asked().kpa[i])).vapour.value();
        });
    };
    ways.dew_point = [](text operation, text way) {
        one_by_one(operation, way, [](std::size_t i) {
            return dew_point(mole_fraction(asked().x[i]), asked().kpa[i] * kilopascal).liquid.value();
        });
    };
    ways.heat_capacity = [](text operation, text way) {
        one_by_one(operation, way, [](std::size_t i) {
            return specific_heat_capacity(mole_fraction(asked().x[i]), celsius(asked().kpa[i])).value();
        });
    };
    ways.dilution = [](text operation, text way) {
        one_by_one(operation, way, [](std::size_t i) {
            auto const t = celsius(asked().warm[i]);
            double const target = asked().reading[i];
            auto const spirit = parcel::of(asked().kpa[i] * kilogram, volume_fraction(target + 0.2), t);
            return dilute(spirit, volume_fraction(target), water_at(t), t).contraction.value();
        });
    };
    return ways;
}

}  // namespace
