// SPDX-License-Identifier: BSL-1.0
// The volatilities are held against published measurements in published/.
#include <aqueth/traces.hpp>

#include "expect_refusal.hpp"

#include <aqueth/equilibrium.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <set>
#include <string>

namespace aqueth {
namespace {

/// % vol of the liquid in which a trace boils like ethanol; the volatility falls or rises through it once
double crossing(trace which, units::pressure p = standard_atmosphere) {
    double low = 0.0, high = 1.0;
    bool const rises = volatility_of(which, mole_fraction(0.0), p).to_ethanol < 1.0;
    for (int i = 0; i < 50; ++i) {
        double const x = 0.5 * (low + high);
        ((volatility_of(which, mole_fraction(x), p).to_ethanol < 1.0) == rises ? low : high) = x;
    }
    return to<volume_fraction>(mole_fraction(low)).percent();
}

TEST(TraceVolatility, CrossesThatOfEthanol) {
    // Common practice: isoamyl alcohol leaves a liquid below 42 % vol before ethanol, above it after.
    EXPECT_NEAR(crossing(trace::methyl_3_butanol_1), 42.0, 2.0);
    // Regression, of figures that docs/traces.md shows.
    EXPECT_NEAR(crossing(trace::methanol), 37.0, 0.1);
    EXPECT_NEAR(crossing(trace::propanol_1), 44.4, 0.1);
    EXPECT_NEAR(crossing(trace::methyl_2_propanol_1), 55.8, 0.1);
    EXPECT_NEAR(crossing(trace::methyl_2_butanol_1), 46.8, 0.1);
    EXPECT_NEAR(crossing(trace::methyl_3_butanol_1), 41.7, 0.1);
}

TEST(TraceVolatility, HeadsComeFirstAndTailsLast) {
    for (double const x : {0.0, 0.02, 0.1, 0.4, 0.9, 1.0}) {
        EXPECT_GT(volatility_of(trace::acetaldehyde, mole_fraction(x)).to_ethanol, 2.0);
        EXPECT_GT(volatility_of(trace::ethyl_acetate, mole_fraction(x)).to_ethanol, 2.0);
        EXPECT_LT(volatility_of(trace::furfural, mole_fraction(x)).to_ethanol, 0.7);
        EXPECT_LT(volatility_of(trace::acetic_acid, mole_fraction(x)).to_ethanol, 0.1);
    }
}

TEST(TraceVolatility, IsRelativeToTheEquilibriumOfTheLibrary) {
    for (trace const which : all_traces) {
        for (double const x : {0.01, 0.3, 0.95}) {
            auto const e = bubble_point(mole_fraction(x), 95.0 * kilopascal);
            auto const v = volatility_of(which, mole_fraction(x), 95.0 * kilopascal);
            double const y = e.vapour.value();
            EXPECT_NEAR(v.to_ethanol, v.volatility / (y / x), 1e-10 * v.to_ethanol);
            EXPECT_NEAR(v.to_water, v.volatility / ((1.0 - y) / (1.0 - x)), 1e-10 * v.to_water);
            // any basis of strength
            auto const by_volume = to<volume_fraction>(mole_fraction(x));
            EXPECT_NEAR(volatility_of(which, by_volume, 95.0 * kilopascal).volatility, v.volatility,
                        1e-6 * v.volatility);
        }
    }
}

// At x = 0 and x = 1 the limits, not 0/0.
TEST(TraceVolatility, IsSmoothToThePureLiquids) {
    for (trace const which : all_traces) {
        for (auto const& [end, beside] : {std::pair{0.0, 1e-7}, std::pair{1.0, 1.0 - 1e-7}}) {
            auto const there = volatility_of(which, mole_fraction(end));
            auto const near = volatility_of(which, mole_fraction(beside));
            EXPECT_NEAR(near.to_ethanol, there.to_ethanol, 1e-5 * there.to_ethanol);
            EXPECT_NEAR(near.to_water, there.to_water, 1e-5 * there.to_water);
            EXPECT_NEAR(near.volatility, there.volatility, 1e-5 * there.volatility);
        }
    }
}

TEST(TraceVolatility, CarriesItsBand) {
    auto const band = [](trace which, double x) { return volatility_of(which, mole_fraction(x)).band; };
    for (trace const which : all_traces) {
        bool const measured = which != trace::acetaldehyde && which != trace::hexanol_1 &&
                              which != trace::acetic_acid && which != trace::methyl_2_butanol_1;
        if (measured) {
            EXPECT_EQ(band(which, 0.0), 0.05) << name_of(which);
        }
        for (double const x : {0.05, 0.2, 0.6}) {
            bool const fusel = which == trace::methanol || which == trace::propanol_1 ||
                               which == trace::methyl_2_propanol_1 || which == trace::butanol_1 ||
                               which == trace::methyl_2_butanol_1 || which == trace::methyl_3_butanol_1;
            if (fusel) {
                EXPECT_EQ(band(which, x), 0.15) << name_of(which);
            }
        }
    }
    EXPECT_EQ(band(trace::methyl_2_butanol_1, 0.0), 0.10);  // two vapour pressures 8 % apart
    EXPECT_EQ(band(trace::ethyl_acetate, 0.3), 0.20);
    EXPECT_EQ(band(trace::acetaldehyde, 0.0), 0.30);
    EXPECT_EQ(band(trace::acetic_acid, 0.3), 0.30);
    EXPECT_EQ(band(trace::furfural, 0.3), 0.40);
    EXPECT_EQ(band(trace::hexanol_1, 0.0), 0.40);
    EXPECT_NEAR(band(trace::methanol, 0.025), 0.10, 1e-12);  // half way to the part that nothing holds
    EXPECT_NEAR(band(trace::methanol, 0.8), 0.10, 1e-12);
    EXPECT_EQ(band(trace::methanol, 1.0), 0.05);
}

// Substances that boil higher than ethanol lose volatility faster with falling temperature (Clausius and
// Clapeyron), so they come over a little later under a lower pressure: by less than the band in the whole
// range.
TEST(TraceVolatility, FallsALittleWithPressure) {
    for (trace const which :
         {trace::propanol_1, trace::butanol_1, trace::methyl_3_butanol_1, trace::furfural}) {
        for (double const x : {0.05, 0.2, 0.6}) {
            auto const at = [&](double kpa) {
                return volatility_of(which, mole_fraction(x), kpa * kilopascal);
            };
            EXPECT_LT(at(80.0).to_ethanol, at(101.325).to_ethanol);
            EXPECT_LT(at(101.325).to_ethanol, at(110.0).to_ethanol);
            EXPECT_GT(at(80.0).to_ethanol * (1.0 + at(80.0).band), at(110.0).to_ethanol);
        }
    }
}

TEST(TraceVolatility, RefusesOtherPressures) {
    for (double const kpa :
         {79.9, 110.1, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
        auto const error = test::expect_refusal(
            [&] { return volatility_of(trace::methanol, mole_fraction(0.1), kpa * kilopascal); }, "pressure");
        EXPECT_EQ(error.lower(), 80.0);
        EXPECT_EQ(error.upper(), 110.0);
        EXPECT_EQ(error.property(), "volatility of a trace");
    }
}

TEST(Trace, HasANameOfItsOwn) {
    std::set<std::string> names;
    for (std::size_t i = 0; i < all_traces.size(); ++i) {
        EXPECT_EQ(static_cast<std::size_t>(all_traces[i]), i);
        names.insert(name_of(all_traces[i]));
    }
    EXPECT_EQ(names.size(), all_traces.size());
    EXPECT_STREQ(name_of(static_cast<trace>(99)), "trace");
}

}  // namespace
}  // namespace aqueth
