// SPDX-License-Identifier: BSL-1.0
// Published corrections are checked through the typed hydrometer, which calls this one.
#include <aqueth/hydrometer.hpp>
#include <aqueth/plain/hydrometer.hpp>

#include "refusal.hpp"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

using plain::strength_scale;
using test::expect_refusal;

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

using at_20 = plain::volume_basis<plain::at_20_celsius>;

static_assert(plain::alcoholometer<double>{}.strength<at_20>(0.45, 30.0).value < 0.45);
static_assert(plain::alcoholometer<float>{}.strength<at_20>(0.45f, 10.0f).value > 0.45f);
static_assert(plain::density_hydrometer<double>{}.density_kg_m3(900.0, 20.0).value == 900.0);

/// every question that the typed instrument can answer, asked of both
template <class Scale, class Graduation>
void expect_as_typed(hydrometer<Scale> const& typed, plain::hydrometer<Graduation> const& meter,
                     double lowest_mark, double highest_mark) {
    int answered = 0;
    for (int i = 0; i <= 40; ++i) {
        double const mark = lowest_mark + (highest_mark - lowest_mark) * i / 40.0;
        double const w = i / 40.0;
        auto const reading = [&]() -> Scale {
            if constexpr (std::same_as<Scale, units::mass_density>) {
                return mark * kilogram_per_cubic_metre;
            } else {
                return Scale(mark);
            }
        }();
        for (double t = -20.0; t <= 40.0; t += 5.0) {
            auto const rho = meter.density_kg_m3(mark, t);
            ASSERT_TRUE(rho.status.ok);
            EXPECT_EQ(rho.value, typed.density(reading, celsius(t)).value());
            if (auto const found = meter.mass_fraction(mark, t); found.status.ok) {
                EXPECT_EQ(found.value, typed.composition(reading, celsius(t)).value());
                auto const proofs = meter.template strength<plain::proof_basis>(mark, t);
                EXPECT_EQ(proofs.value, typed.template strength<us_proof>(reading, celsius(t)).degrees());
                EXPECT_EQ(meter.strength(mark, t, strength_scale::us_proof).value, proofs.value);
                ++answered;
            }
            if (auto const shown = meter.reading(w, t); shown.status.ok) {
                auto const expected = typed.reading(mass_fraction(w), celsius(t));
                if constexpr (std::same_as<Scale, us_proof>) {
                    EXPECT_EQ(shown.value, expected.degrees());
                } else {
                    EXPECT_EQ(shown.value, expected.value());
                }
                EXPECT_NEAR(meter.mass_fraction(shown.value, t).value, w, 1e-13);
                ++answered;
            }
        }
    }
    EXPECT_GT(answered, 250);
}

TEST(PlainHydrometer, AnswersAreThoseOfTheTypedOnes) {
    using strong = plain::strength_graduation<plain::mass_basis, double>;
    expect_as_typed(alcoholometer{}, plain::alcoholometer<double>{}, 0.0, 1.0);
    expect_as_typed(proof_hydrometer{}, plain::proof_hydrometer<double>{}, 0.0, 200.0);
    expect_as_typed(hydrometer<mass_fraction>{celsius(15.0), borosilicate_glass},
                    plain::hydrometer<strong>{strong{15.0}, 10e-6}, 0.0, 1.0);
    expect_as_typed(density_hydrometer{celsius(15.0)},
                    plain::density_hydrometer<double>{plain::density_graduation<double>{15.0}}, 780.0,
                    1000.0);
    expect_as_typed(
        gravity_hydrometer{gravity_reference{celsius(20.0), celsius(4.0), medium::air}},
        plain::gravity_hydrometer<double>{plain::gravity_graduation<double>{{20.0, 4.0, medium::air}}}, 0.78,
        1.0);
}

TEST(PlainHydrometer, TheStrengthOfAnAlcoholometerIsThatOfItsComposition) {
    plain::alcoholometer<double> const meter;
    for (int i = 10; i <= 90; ++i) {
        double const mark = i / 100.0;
        double const found = meter.strength<at_20>(mark, 27.0).value;
        EXPECT_EQ(found, alcoholometer{}.strength(volume_fraction(mark), celsius(27.0)).value());
        EXPECT_NEAR(found, meter.strength(mark, 27.0, strength_scale::volume_fraction_at_20_celsius).value,
                    2e-15);
    }
}

TEST(PlainHydrometer, AScaleChosenAtRunTimeIsThatOfTheType) {
    for (double const t : {0.0, 12.5, 31.0}) {
        for (double const share : {0.3, 0.5, 0.9}) {
            plain::strength_hydrometer<double> proofs{{strength_scale::us_proof}};
            auto const by_type = plain::proof_hydrometer<double>{}.mass_fraction(200.0 * share, t).value;
            EXPECT_NEAR(proofs.mass_fraction(200.0 * share, t).value, by_type, 1e-14);
            EXPECT_NEAR(proofs.reading(by_type, t).value, 200.0 * share, 1e-11);
            plain::strength_hydrometer<double> mass{{strength_scale::mass_fraction, 15.0}, 10e-6};
            EXPECT_NEAR(mass.mass_fraction(share, t).value,
                        hydrometer<mass_fraction>(celsius(15.0), borosilicate_glass)
                            .composition(mass_fraction(share), celsius(t))
                            .value(),
                        1e-14);
            EXPECT_EQ(mass.reference_celsius(), 15.0);
        }
    }
    EXPECT_EQ((plain::strength_hydrometer<double>{{strength_scale::volume_fraction_at_15_celsius}})
                  .reference_celsius(),
              15.0);
}

// In float a density is rounded to 6e-5 kg/m3, which is up to 1e-6 of mass fraction; the mark adds as much.
TEST(PlainHydrometer, SinglePrecisionIsCloseToDouble) {
    plain::alcoholometer<float> const single;
    plain::alcoholometer<double> const twice;
    plain::gravity_hydrometer<float> const single_gravity;
    plain::gravity_hydrometer<double> const gravity;
    for (int i = 3; i <= 97; ++i) {
        for (float const t : {5.0f, 20.0f, 35.0f}) {
            float const mark = float(i) / 100.0f;
            auto const found = single.strength<at_20>(mark, t);
            auto const expected = twice.strength<at_20>(double(mark), double(t));
            if (!expected.status.ok) continue;
            EXPECT_NEAR(double(found.value), expected.value, 4e-6) << mark << " " << t;
            double const w = twice.mass_fraction(double(mark), double(t)).value;
            if (auto const shown = twice.reading(w, double(t)); shown.status.ok) {
                EXPECT_NEAR(double(single.reading(float(w), t).value), shown.value, 4e-6);
            }
            auto const sg = gravity.reading(w, double(t));
            EXPECT_NEAR(double(single_gravity.mass_fraction(float(sg.value), t).value), w, 4e-6);
        }
    }
}

TEST(PlainHydrometer, RefusesReadingsNoMixtureGives) {
    plain::alcoholometer<double> const meter;
    // At 31 °C pure water already shows about 1.7 % vol, at 10 °C pure ethanol about 98 % vol.
    for (auto const& found : {meter.strength<at_20>(0.005, 31.0), meter.mass_fraction(0.005, 31.0)}) {
        auto const low = expect_refusal(found, argument::reading, limit::hydrometer_water_to_ethanol, 0.005);
        EXPECT_GT(low.lower, 0.01);
        EXPECT_EQ(low.upper, 1.0);
        EXPECT_NEAR(meter.mass_fraction(low.lower, 31.0).value, 0.0, 1e-12);
    }
    auto const high = expect_refusal(meter.strength(0.995, 10.0, strength_scale::us_proof), argument::reading,
                                     limit::hydrometer_water_to_ethanol, 0.995);
    EXPECT_EQ(high.lower, 0.0);
    EXPECT_LT(high.upper, 0.99);
    // a reading that only ice could give
    expect_refusal(meter.strength<at_20>(0.05, -10.0), argument::temperature,
                   limit::liquid_above_freezing_point, -10.0);
    // colder water floats the stem out beyond its zero
    auto const out = meter.reading(0.0, 10.0);
    EXPECT_EQ(out.status.argument, argument::density_it_floats_by);
    EXPECT_EQ(out.status.limit, limit::hydrometer_scale_ends);
    EXPECT_EQ(out.status.upper, plain::density_kg_m3(0.0, 20.0).value);
    EXPECT_EQ(out.status.lower, plain::density_kg_m3(1.0, 20.0).value);
}

TEST(PlainHydrometer, RefusesWhatIsNoMarkTemperatureOrInstrument) {
    plain::alcoholometer<double> const meter;
    plain::density_hydrometer<double> const density;
    plain::gravity_hydrometer<double> const gravity;
    for (double const bad : {-0.01, 1.01, nan, infinity, -infinity}) {
        expect_refusal(meter.strength<at_20>(bad, 20.0), argument::alcoholic_strength_by_volume, limit::none,
                       bad);
        expect_refusal(meter.density_kg_m3(bad, 20.0), argument::alcoholic_strength_by_volume, limit::none,
                       bad);
        expect_refusal(meter.reading(bad, 20.0), argument::mass_fraction, limit::none, bad);
        expect_refusal(gravity.mass_fraction(10.0 * bad, 20.0), argument::specific_gravity, limit::none,
                       10.0 * bad);
    }
    for (double const bad : {499.0, 1501.0, nan}) {
        auto const why = expect_refusal(density.density_kg_m3(bad, 20.0), argument::reading,
                                        limit::hydrometer_liquids, bad);
        EXPECT_EQ(why.lower, 500.0);
        EXPECT_EQ(why.upper, 1500.0);
    }
    for (double const bad : {-20.5, 100.5, nan, infinity}) {
        auto const reason = bad > 0.0 ? limit::liquid_below_boiling_point : limit::oiml_r22;
        auto const why = expect_refusal(meter.strength<at_20>(0.5, bad), argument::temperature, reason, bad);
        EXPECT_EQ(why.lower, -20.0);
        EXPECT_EQ(why.upper, plain::hottest_liquid_celsius(0.0));
        expect_refusal(density.density_kg_m3(900.0, bad), argument::temperature, reason, bad);
        EXPECT_FALSE(meter.reading(0.5, bad).status.ok);
    }
    for (double const bad : {-0.5, 40.5, nan}) {
        plain::density_hydrometer<double> const no_reference{plain::density_graduation<double>{bad}};
        auto const why = expect_refusal(no_reference.mass_fraction(900.0, 20.0),
                                        argument::reference_temperature, limit::oiml_r22_water_liquid, bad);
        EXPECT_EQ(why.upper, 40.0);
        EXPECT_FALSE(no_reference.range().ok);
        EXPECT_FALSE(no_reference.reading(0.5, 20.0).status.ok);
    }
    for (double const bad : {-1e-6, 1e-3, nan}) {
        plain::alcoholometer<double> const no_glass{{}, bad};
        auto const why = expect_refusal(no_glass.strength<at_20>(0.5, 20.0),
                                        argument::cubic_expansion_of_the_instrument, limit::none, bad);
        EXPECT_EQ(why.upper, 3e-4);
    }
    plain::strength_hydrometer<double> const no_scale{{static_cast<strength_scale>(99)}};
    expect_refusal(no_scale.mass_fraction(0.5, 20.0), argument::strength_scale, limit::none, 99.0);
    expect_refusal(meter.strength(0.5, 20.0, static_cast<strength_scale>(-1)), argument::strength_scale,
                   limit::none, -1.0);
}

}  // namespace
}  // namespace aqueth
