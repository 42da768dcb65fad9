// SPDX-License-Identifier: BSL-1.0
// Published corrections are checked in published/glass_hydrometer_test.cpp and
// published/us_gauging_manual_test.cpp.
#include <aqueth/density.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <limits>

namespace aqueth {
namespace {

using test::expect_refusal;

/// every liquid mixture and temperature for which the instrument can be read must come back
template <class Scale>
void expect_closure(hydrometer<Scale> const& meter) {
    int readable = 0;
    for (double w = 0.0; w <= 1.0; w += 0.01) {
        for (double t = -20.0; t <= 40.0; t += 2.5) {
            mass_fraction const liquid(w);
            if (t < plain::coldest_liquid_celsius(liquid.value())) continue;
            try {
                Scale const reading = meter.reading(liquid, celsius(t));
                EXPECT_NEAR(meter.composition(reading, celsius(t)).value(), w, 1e-13) << w << " " << t;
                ++readable;
            } catch (refusal const& off_the_scale) {
                EXPECT_EQ(off_the_scale.argument(), "density it floats by");
            }
        }
    }
    EXPECT_GT(readable, 2000);
}

TEST(Hydrometer, ReadingAndStrengthAreInverseOnEveryScale) {
    expect_closure(alcoholometer{});
    expect_closure(hydrometer<basic_volume_fraction<at_15_celsius>>{});
    expect_closure(hydrometer<basic_volume_fraction<at_60_fahrenheit>>{});
    expect_closure(hydrometer<mass_fraction>{celsius(20.0)});
    expect_closure(hydrometer<mass_fraction>{celsius(15.0), borosilicate_glass});
    expect_closure(proof_hydrometer{});
    expect_closure(density_hydrometer{celsius(20.0)});
    expect_closure(density_hydrometer{celsius(15.0)});
    expect_closure(gravity_hydrometer{gravity_reference{fahrenheit(60.0), fahrenheit(60.0), medium::vacuum}});
    expect_closure(gravity_hydrometer{gravity_reference{celsius(20.0), celsius(20.0), medium::air}});
    expect_closure(hydrometer<mass_concentration>{});
}

TEST(Hydrometer, IsRightAtItsReferenceTemperature) {
    for (double q = 0.0; q <= 100.0; q += 5.0) {
        EXPECT_NEAR(alcoholometer{}.strength(by_volume(q), celsius(20.0)).percent(), q, 1e-12);
        EXPECT_NEAR(proof_hydrometer{}.strength(proof(2.0 * q), fahrenheit(60.0)).degrees(), 2.0 * q, 2e-12);
    }
}

TEST(Hydrometer, ReadsAStrengthInEveryBasis) {
    mass_fraction const w = to<mass_fraction>(proof(80.0));
    EXPECT_EQ(alcoholometer{}.reading(proof(80.0), celsius(25.0)).value(),
              alcoholometer{}.reading(w, celsius(25.0)).value());
}

TEST(Hydrometer, WarmSpiritReadsHigh) {
    alcoholometer const meter;
    EXPECT_LT(meter.strength(by_volume(84.0), celsius(31.0)), by_volume(84.0));
    EXPECT_GT(meter.strength(by_volume(84.0), celsius(10.0)), by_volume(84.0));
    EXPECT_GT(meter.reading(parcel::of(1.0 * litre, by_volume(45.0), celsius(27.0))), by_volume(45.0));
}

TEST(Hydrometer, GlassGrowsWithTheLiquid) {
    // The equation in the class's docstring, by hand: reading 900 kg/m3 at 30 °C, soda-lime glass for 20 °C.
    density_hydrometer const glass{celsius(20.0)};
    EXPECT_NEAR(glass.density(900.0 * kilogram_per_cubic_metre, celsius(30.0)).value(), 900.0 / 1.00025,
                1e-10);
    density_hydrometer const rigid{celsius(20.0), 0.0 * per_kelvin};
    EXPECT_EQ(rigid.density(900.0 * kilogram_per_cubic_metre, celsius(30.0)).value(), 900.0);
}

// The alcoholometer's own strength has its own code path. It must give the same results and errors as the
// path through the composition.
TEST(Hydrometer, StrengthIsThatOfTheComposition) {
    alcoholometer const meter;
    int readable = 0, refused = 0;
    for (int i = 0; i <= 4000; ++i) {
        volume_fraction const shown(i / 4000.0);
        for (double t = -20.0; t <= 40.0; t += 1.25) {
            try {
                double const expected = to<volume_fraction>(meter.composition(shown, celsius(t))).value();
                EXPECT_NEAR(meter.strength(shown, celsius(t)).value(), expected, 2e-15 + 4e-16 * expected)
                    << shown.value() << " " << t;
                ++readable;
            } catch (refusal const& expected) {
                expect_refusal([&] { static_cast<void>(meter.strength(shown, celsius(t))); },
                               std::string(expected.argument()));
                ++refused;
            }
        }
    }
    EXPECT_GT(readable, 150000);
    EXPECT_GT(refused, 5000);
    constexpr double same = alcoholometer{}.strength(volume_fraction(0.45), celsius(20)).value();
    // one unit in the last place of a density, 1.1e-13 kg/m3, is 7e-16 here
    static_assert(0.449999999999999 < same && same < 0.450000000000001);
}

TEST(Hydrometer, ADensityScaleGivesTheStrengthToo) {
    density_hydrometer const meter{celsius(20.0)};
    auto const rho = density(to<mass_fraction>(by_volume(40.0)), celsius(20.0));
    EXPECT_NEAR(meter.strength(rho, celsius(20.0)).percent(), 40.0, 1e-12);
    EXPECT_NEAR(meter.strength<mass_fraction>(rho, celsius(20.0)).value(),
                to<mass_fraction>(by_volume(40.0)).value(), 1e-14);
}

TEST(Hydrometer, OtherScalesAndBasesGoOverTheComposition) {
    alcoholometer const meter;
    gravity_hydrometer const gravity{gravity_reference{fahrenheit(60.0), fahrenheit(60.0), medium::air}};
    volume_fraction const shown = by_volume(45.0);
    specific_gravity const mark(0.95);
    for (double const t : {5.0, 20.0, 35.0}) {
        EXPECT_EQ(meter.strength<mass_fraction>(shown, celsius(t)), meter.composition(shown, celsius(t)));
        EXPECT_EQ(gravity.strength(mark, celsius(t)),
                  to<volume_fraction>(gravity.composition(mark, celsius(t))));
    }
}

TEST(Hydrometer, RefusesReadingsNoMixtureGives) {
    alcoholometer const meter;
    // At 31 °C pure water already shows about 1.7 % vol.
    auto const low =
        expect_refusal([&] { static_cast<void>(meter.strength(by_volume(0.5), celsius(31.0))); }, "reading");
    EXPECT_GT(low.lower(), 1.0);
    EXPECT_EQ(low.upper(), 100.0);
    // At 10 °C pure ethanol shows about 98 % vol.
    auto const high =
        expect_refusal([&] { static_cast<void>(meter.strength(by_volume(99.5), celsius(10.0))); }, "reading");
    EXPECT_EQ(high.lower(), 0.0);
    EXPECT_LT(high.upper(), 99.0);
    // The bounds it names, the glass's expansion in them, are readings of pure water and of pure ethanol.
    EXPECT_NEAR(meter.composition(by_volume(low.lower()), celsius(31.0)).value(), 0.0, 1e-12);
    EXPECT_NEAR(meter.composition(by_volume(high.upper()), celsius(10.0)).value(), 1.0, 1e-12);
    // Colder water floats the stem out beyond its zero.
    expect_refusal([&] { static_cast<void>(meter.reading(mass_fraction(0.0), celsius(10.0))); },
                   "density it floats by");
    // A reading that would need a frozen mixture.
    auto const ice = [&](auto const& call) {
        EXPECT_EQ(expect_refusal(call, "temperature").property(), "hydrometer");
    };
    ice([&] { static_cast<void>(meter.strength(by_volume(5.0), celsius(-10.0))); });
    ice([&] { static_cast<void>(meter.composition(by_volume(5.0), celsius(-10.0))); });
}

TEST(Hydrometer, RefusesBadTemperaturesAndGlass) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    for (double const bad : {-5.0, 499.0, 1501.0, nan}) {
        expect_refusal(
            [&] { density_hydrometer{celsius(20.0)}.density(bad * kilogram_per_cubic_metre, celsius(20.0)); },
            "reading");
    }
    for (double const bad : {-20.5, 100.5, nan}) {
        expect_refusal([&] { static_cast<void>(alcoholometer{}.strength(by_volume(50.0), celsius(bad))); },
                       "temperature");
        expect_refusal([&] { static_cast<void>(alcoholometer{}.reading(by_mass(50.0), celsius(bad))); },
                       "temperature");
        expect_refusal([&] { static_cast<void>(density_hydrometer{celsius(bad)}); }, "reference temperature");
    }
    for (double const bad : {-1e-6, 1e-3, nan}) {
        expect_refusal([&] { static_cast<void>(alcoholometer{bad * per_kelvin}); },
                       "cubic expansion of the instrument");
    }
}

}  // namespace
}  // namespace aqueth
