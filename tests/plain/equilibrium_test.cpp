// SPDX-License-Identifier: BSL-1.0
// The model is held against published measurements in published/.
#include <aqueth/equilibrium.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace aqueth {
namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double infinity = std::numeric_limits<double>::infinity();

void expect_same(plain::checked<plain::equilibrium<double>> const& found, equilibrium const& typed) {
    ASSERT_TRUE(found.status.ok);
    EXPECT_EQ(found.value.celsius, typed.temperature.celsius());
    EXPECT_DOUBLE_EQ(found.value.kpa, in(typed.pressure, kilopascal));  // Pa and kPa round
    EXPECT_EQ(found.value.liquid_mole_fraction, typed.liquid.value());
    EXPECT_EQ(found.value.vapour_mole_fraction, typed.vapour.value());
    EXPECT_EQ(found.value.relative_volatility, typed.relative_volatility);
}

void expect_refused(plain::status const& found, argument refused, limit set_by, double value) {
    EXPECT_FALSE(found.ok);
    EXPECT_EQ(found.argument, refused);
    EXPECT_EQ(found.limit, set_by);
    EXPECT_TRUE(found.value == value || (std::isnan(found.value) && std::isnan(value)));
}

void expect_no_number(plain::equilibrium<double> const& e) {
    EXPECT_TRUE(std::isnan(e.celsius) && std::isnan(e.kpa) && std::isnan(e.liquid_mole_fraction) &&
                std::isnan(e.vapour_mole_fraction) && std::isnan(e.relative_volatility));
}

TEST(PlainEquilibrium, IsTheTypedOneToTheDigit) {
    for (double const x : {0.0, 1e-6, 0.05, 0.3, 0.7, 0.95, 1.0}) {
        for (double const t : {0.01, 20.0, 78.0, 120.0}) {
            expect_same(plain::bubble_point_at_celsius(x, t), bubble_point(mole_fraction(x), celsius(t)));
            expect_same(plain::dew_point_at_celsius(x, t), dew_point(mole_fraction(x), celsius(t)));
            auto const gamma = plain::activity_coefficients_of(x, t).value;
            auto const typed = activity_coefficients_of(mole_fraction(x), celsius(t));
            EXPECT_EQ(gamma.ethanol, typed.ethanol);
            EXPECT_EQ(gamma.water, typed.water);
        }
        for (double const p : {1.8, 30.0, 101.325, 195.0}) {
            expect_same(plain::bubble_point_at_kpa(x, p), bubble_point(mole_fraction(x), p * kilopascal));
            expect_same(plain::dew_point_at_kpa(x, p), dew_point(mole_fraction(x), p * kilopascal));
        }
    }
    expect_same(plain::azeotrope_at_celsius(78.0), azeotrope(celsius(78.0)));
    expect_same(plain::azeotrope_at_kpa(101.325), azeotrope(101.325 * kilopascal));
    expect_same(plain::coexistence(85.0, 101.325), coexistence(celsius(85.0), 101.325 * kilopascal));
    expect_same(plain::coexistence(78.2, 101.325, azeotrope_side::ethanol_rich),
                coexistence(celsius(78.2), 101.325 * kilopascal, azeotrope_side::ethanol_rich));
}

TEST(PlainEquilibrium, FlashHasNoCompositionOfAMissingPhase) {
    auto const both = plain::isothermal_flash(0.2, 85.0, 101.325);
    auto const typed = isothermal_flash(mole_fraction(0.2), celsius(85.0), 101.325 * kilopascal);
    ASSERT_TRUE(both.status.ok && typed.liquid && typed.vapour);
    EXPECT_EQ(both.value.vapour_fraction, typed.vapour_fraction);
    EXPECT_EQ(both.value.liquid_mole_fraction, typed.liquid->value());
    EXPECT_EQ(both.value.vapour_mole_fraction, typed.vapour->value());
    auto const cold = plain::isothermal_flash(0.2, 20.0, 101.325).value;
    EXPECT_EQ(cold.vapour_fraction, 0.0);
    EXPECT_EQ(cold.liquid_mole_fraction, 0.2);
    EXPECT_TRUE(std::isnan(cold.vapour_mole_fraction));
    auto const hot = plain::isothermal_flash(0.2, 110.0, 101.325).value;
    EXPECT_EQ(hot.vapour_fraction, 1.0);
    EXPECT_EQ(hot.vapour_mole_fraction, 0.2);
    EXPECT_TRUE(std::isnan(hot.liquid_mole_fraction));
}

TEST(PlainEquilibrium, RefusesAMoleFractionThatIsNone) {
    for (double const bad : {-1e-9, 1.0 + 1e-9, nan, infinity, -infinity}) {
        for (auto const& found :
             {plain::bubble_point_at_celsius(bad, 80.0), plain::bubble_point_at_kpa(bad, 100.0),
              plain::bubble_point_at_kpa(bad, 1.0), plain::dew_point_at_celsius(bad, 80.0),
              plain::dew_point_at_kpa(bad, 100.0)}) {
            expect_refused(found.status, argument::mole_fraction, limit::none, bad);
            EXPECT_EQ(found.status.lower, 0.0);
            EXPECT_EQ(found.status.upper, 1.0);
            expect_no_number(found.value);
        }
        expect_refused(plain::isothermal_flash(bad, 80.0, 100.0).status, argument::mole_fraction, limit::none,
                       bad);
        expect_refused(plain::activity_coefficients_of(bad, 80.0).status, argument::mole_fraction,
                       limit::none, bad);
    }
}

TEST(PlainEquilibrium, RefusesATemperatureOutsideTheModel) {
    for (double const bad : {0.0099, 120.001, nan, infinity, -infinity}) {
        for (auto const& found : {plain::bubble_point_at_celsius(0.3, bad),
                                  plain::dew_point_at_celsius(0.3, bad), plain::coexistence(bad, 100.0)}) {
            expect_refused(found.status, argument::temperature, limit::vapour_liquid_equilibrium, bad);
            EXPECT_EQ(found.status.lower, 0.01);
            EXPECT_EQ(found.status.upper, 120.0);
            expect_no_number(found.value);
        }
        auto const flash = plain::isothermal_flash(0.3, bad, 100.0);
        expect_refused(flash.status, argument::temperature, limit::vapour_liquid_equilibrium, bad);
        EXPECT_TRUE(std::isnan(flash.value.vapour_fraction));
        auto const gamma = plain::activity_coefficients_of(0.3, bad);
        expect_refused(gamma.status, argument::temperature, limit::vapour_liquid_equilibrium, bad);
        EXPECT_TRUE(std::isnan(gamma.value.ethanol) && std::isnan(gamma.value.water));
    }
    for (double const bad : {25.0, 120.001, nan, infinity}) {  // below about 30 °C there is no azeotrope
        auto const found = plain::azeotrope_at_celsius(bad);
        expect_refused(found.status, argument::temperature, limit::azeotrope_exists, bad);
        EXPECT_NEAR(found.status.lower, 30.0, 3.0);
        EXPECT_EQ(found.status.upper, 120.0);
        expect_no_number(found.value);
    }
}

TEST(PlainEquilibrium, RefusesAPressureOutsideTheModel) {
    for (double const bad : {-1.0, 0.0, 0.5, 500.0, nan, infinity}) {
        auto const water = plain::bubble_point_at_kpa(0.0, bad);
        expect_refused(water.status, argument::pressure, limit::vapour_liquid_equilibrium, bad);
        EXPECT_NEAR(water.status.lower, 0.612, 0.001);  // water at 0.01 °C: 0.6117 kPa (from memory)
        EXPECT_NEAR(water.status.upper, 198.7, 0.1);    // water at 120 °C: 198.67 kPa (from memory)
        expect_no_number(water.value);
        expect_refused(plain::dew_point_at_kpa(0.3, bad).status, argument::pressure,
                       limit::vapour_liquid_equilibrium, bad);
        expect_refused(plain::azeotrope_at_kpa(bad).status, argument::pressure,
                       limit::azeotrope_exists_to_120_celsius, bad);
        if (bad != 0.5 && bad != 500.0) {
            auto const flash = plain::isothermal_flash(0.3, 80.0, bad);
            expect_refused(flash.status, argument::pressure, limit::none, bad);
            EXPECT_EQ(flash.status.lower, 1e-6);
            EXPECT_EQ(flash.status.upper, 1e6);
        }
    }
    for (double const bad : {99.0, 230.0, nan}) {  // at 100 °C: 101.4 kPa for water, 226 for the azeotrope
        auto const found = plain::coexistence(100.0, bad);
        expect_refused(found.status, argument::pressure, limit::pure_liquid_to_azeotrope, bad);
        EXPECT_NEAR(found.status.lower, 101.42, 0.01);  // from memory
        EXPECT_GT(found.status.upper, found.status.lower);
        expect_no_number(found.value);
    }
    // Ethanol boils under pressures that water does not, and the other way round.
    EXPECT_TRUE(plain::bubble_point_at_kpa(1.0, 400.0).status.ok);
    EXPECT_TRUE(plain::bubble_point_at_kpa(0.0, 0.7).status.ok);
    EXPECT_FALSE(plain::bubble_point_at_kpa(1.0, 0.7).status.ok);
}

TEST(PlainEquilibrium, ThereAndBackWorksAtTheEndsInBothScalars) {
    auto const both = []<class T>(T) {
        for (T const x : {T(0), T(0.1), T(0.9), T(1)}) {
            for (T const t : {T(0.01), T(120)}) {
                T const p = plain::bubble_point_at_celsius(x, t).value.kpa;
                auto const back = plain::bubble_point_at_kpa(x, p);
                ASSERT_TRUE(back.status.ok) << double(x) << ' ' << double(t);
                EXPECT_TRUE(plain::bubble_point_at_celsius(x, back.value.celsius).status.ok);
            }
        }
    };
    both(0.0);
    both(0.0f);
}

// Seven digits: 373 K is known to 3e-5 K, and exponentials of ten lose another digit.
TEST(PlainEquilibrium, InFloatTheSameToWhatItHolds) {
    for (double const x : {0.0, 0.01, 0.1, 0.3, 0.5, 0.7, 0.95, 1.0}) {
        auto const xf = static_cast<float>(x);
        double const same = xf;
        for (double const t : {1.0, 20.0, 50.0, 78.0, 100.0, 119.0}) {
            auto const tf = static_cast<float>(t);
            auto const b = plain::bubble_point_at_celsius(xf, tf);
            auto const exact = plain::bubble_point_at_celsius(same, double(tf)).value;
            ASSERT_TRUE(b.status.ok);
            EXPECT_NEAR(b.value.kpa, exact.kpa, 2e-5 * exact.kpa);
            EXPECT_NEAR(b.value.vapour_mole_fraction, exact.vapour_mole_fraction, 1e-5);
            auto const d = plain::dew_point_at_celsius(xf, tf);
            auto const dew = plain::dew_point_at_celsius(same, double(tf)).value;
            ASSERT_TRUE(d.status.ok);
            EXPECT_NEAR(d.value.kpa, dew.kpa, 3e-5 * dew.kpa);
            auto const gamma = plain::activity_coefficients_of(xf, tf).value;
            auto const exact_gamma = plain::activity_coefficients_of(same, double(tf)).value;
            EXPECT_NEAR(gamma.ethanol, exact_gamma.ethanol, 1e-5 * exact_gamma.ethanol);
            EXPECT_NEAR(gamma.water, exact_gamma.water, 1e-5 * exact_gamma.water);
        }
        for (double const p : {1.75, 20.0, 101.325, 195.0}) {
            auto const pf = static_cast<float>(p);
            auto const b = plain::bubble_point_at_kpa(xf, pf);
            auto const exact = plain::bubble_point_at_kpa(same, double(pf)).value;
            ASSERT_TRUE(b.status.ok);
            EXPECT_NEAR(b.value.celsius, exact.celsius, 1e-3);
            EXPECT_NEAR(b.value.vapour_mole_fraction, exact.vapour_mole_fraction, 1e-5);
            auto const d = plain::dew_point_at_kpa(xf, pf);
            ASSERT_TRUE(d.status.ok);
            EXPECT_NEAR(d.value.celsius, plain::dew_point_at_kpa(same, double(pf)).value.celsius, 1e-3);
        }
    }
    EXPECT_NEAR(plain::azeotrope_at_celsius(78.0f).value.liquid_mole_fraction,
                plain::azeotrope_at_celsius(78.0).value.liquid_mole_fraction, 1e-4);
    EXPECT_NEAR(plain::azeotrope_at_kpa(101.325f).value.liquid_mole_fraction,
                plain::azeotrope_at_kpa(101.325).value.liquid_mole_fraction, 1e-4);
    for (float const t : {79.0f, 82.0f, 90.0f, 99.0f}) {
        EXPECT_NEAR(plain::coexistence(t, 101.325f).value.liquid_mole_fraction,
                    plain::coexistence(double(t), double(101.325f)).value.liquid_mole_fraction, 1e-4);
        EXPECT_NEAR(plain::isothermal_flash(0.2f, t, 101.325f).value.vapour_fraction,
                    plain::isothermal_flash(double(0.2f), double(t), double(101.325f)).value.vapour_fraction,
                    1e-3);
    }
}

}  // namespace
}  // namespace aqueth
