// SPDX-License-Identifier: BSL-1.0
#include <aqueth/correlation/oiml_r22.hpp>

#include "published/table.hpp"

#include <boost/math/differentiation/autodiff.hpp>
#include <boost/multiprecision/cpp_dec_float.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>
#include <type_traits>
#include <vector>

namespace aqueth::correlation::oiml_r22 {
namespace {

using decimal = boost::multiprecision::cpp_dec_float_50;

// The formula as OIML R 22 prints it, with the printed decimals, in 50 digits: the reference for the
// library's double arithmetic. Deliberately naive.
class printed_formula {
public:
    printed_formula() {
        published::table const table("oiml_r22_coefficients.csv");
        for (auto const& row : table.rows()) {
            std::string const kind = row.text("kind");
            int const k = std::stoi(row.text("k"));
            int const power_of_p = kind == "A" ? k - 1 : (kind == "B" ? 0 : k);
            int const power_of_t = kind == "A" ? 0 : (kind == "B" ? k : std::stoi(row.text("i")));
            terms_.push_back({power_of_p, power_of_t, decimal(row.text("value"))});
        }
    }

    decimal density(double w, double t) const {
        decimal sum = 0;
        for (auto const& each : terms_) {
            sum +=
                each.coefficient * pow(decimal(w), each.power_of_p) * pow(decimal(t) - 20, each.power_of_t);
        }
        return sum;
    }

private:
    struct term {
        int power_of_p;
        int power_of_t;
        decimal coefficient;
    };
    std::vector<term> terms_;
};

TEST(OimlR22, HasAllTermsOfTheStandard) {
    published::table const table("oiml_r22_coefficients.csv");
    EXPECT_EQ(table.rows().size(),
              12u + 6u + 11u + 10u + 9u + 4u + 2u);  // Directive 76/766/EEC: m = 11, 10, 9, 4, 2
}

TEST(OimlR22, WaterAndEthanolAt20Celsius) {
    // A1 of the formula is the density of water at 20 °C as printed. Density of ethanol 0.78924 g/cm3: OIML
    // R 22, table IVa, as quoted by the Australian Taxation Office, Excise guidelines for the alcohol
    // industry, 2006.
    EXPECT_NEAR(density(0.0, 20.0), 998.20123, 1.2e-13);
    EXPECT_NEAR(density(1.0, 20.0), 789.24, 0.005);
}

TEST(OimlR22, AgreesWithThePrintedDecimalsWithinTwoUlp) {
    printed_formula const printed;
    double worst_ulp = 0.0;
    for (int i = 0; i <= 60; ++i) {
        for (int j = 0; j <= 60; ++j) {
            double const w = i / 60.0;
            double const t = -20.0 + j;
            double const value = density(w, t);
            double const ulp = std::nextafter(value, 2000.0) - value;
            double const off = static_cast<double>(abs(decimal(value) - printed.density(w, t))) / ulp;
            worst_ulp = (std::max)(worst_ulp, off);
        }
    }
    RecordProperty("worst_ulp", std::to_string(worst_ulp));
    EXPECT_LE(worst_ulp, 2.0);
}

TEST(OimlR22, SinglePrecisionKeepsFourDecimalsOfAGramPerLitre) {
    double worst = 0.0;
    for (int i = 0; i <= 200; ++i) {
        for (int j = 0; j <= 60; ++j) {
            float const w = static_cast<float>(i) / 200.0f;
            float const t = -20.0f + static_cast<float>(j);
            double const exact = density(static_cast<double>(w), static_cast<double>(t));
            worst = (std::max)(worst, std::abs(static_cast<double>(density(w, t)) - exact));
        }
    }
    EXPECT_LE(worst, 2e-4);  // one ulp of a float near 1000 is 6e-5
}

TEST(OimlR22, LongDoubleAndMultiprecisionScalarsWork) {
    for (double const w : {0.0, 0.1, 0.37, 0.5, 0.93, 1.0}) {
        for (double const t : {-20.0, 0.0, 20.0, 40.0}) {
            double const value = density(w, t);
            EXPECT_NEAR(static_cast<double>(density<long double>(w, t)), value, 3e-13);
            EXPECT_NEAR(static_cast<double>(density<decimal>(w, t)), value, 3e-13);
        }
    }
}

TEST(OimlR22, DerivativesAreThoseOfAutomaticDifferentiation) {
    namespace ad = boost::math::differentiation;
    for (double w = 0.0; w <= 1.0; w += 0.05) {
        for (double t = -20.0; t <= 40.0; t += 5.0) {
            auto const with = density_with_derivatives(w, t);
            auto const variables = ad::make_ftuple<double, 1, 1>(w, t);
            auto const& wv = std::get<0>(variables);
            auto const& tv = std::get<1>(variables);
            using scalar = std::decay_t<decltype(wv * tv)>;
            scalar const rho = density(scalar(wv), scalar(tv));
            EXPECT_NEAR(with.value, rho.derivative(0, 0), 3e-13);
            EXPECT_NEAR(with.d_mass_fraction, rho.derivative(1, 0), 2e-11) << w << " " << t;
            EXPECT_NEAR(with.d_temperature, rho.derivative(0, 1), 1e-13) << w << " " << t;
        }
    }
}

TEST(OimlR22, DensityFallsWithStrengthAtEveryTemperature) {
    // The inverse (oiml_r22_inverse.hpp) rests on this. Least slope -6.0 kg/m3 per unit, at -20 °C near
    // w = 0.19.
    double least_steep = -1e9;
    for (double t = -20.0; t <= 40.0; t += 0.05) {
        isotherm<double> const at_t(t);
        for (double w = 0.0; w <= 1.0; w += 1.0 / 1024.0) {
            least_steep = (std::max)(least_steep, at_t.density_and_slope(w).slope);
        }
    }
    EXPECT_LT(least_steep, -5.9);
    EXPECT_GT(least_steep, -6.1);
}

TEST(OimlR22, NaNInNaNOut) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(std::isnan(density(nan, 20.0)));
    EXPECT_TRUE(std::isnan(density(0.5, nan)));
}

TEST(OimlR22, CoversItsRangeOnly) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(covers(0.0, -20.0) && covers(1.0, 40.0));
    EXPECT_FALSE(covers(-0.1, 20.0) || covers(1.1, 20.0) || covers(0.5, -20.1) || covers(0.5, 40.1));
    EXPECT_FALSE(covers(nan, 20.0) || covers(0.5, nan));
}

// The formula works at compile time with both compilers.
static_assert(density(0.0, 20.0) > 998.2012 && density(0.0, 20.0) < 998.2013);

TEST(OimlR22, ConcentrationIsMassFractionTimesDensity) {
    for (double const t : {-10.0, 20.0, 40.0}) {
        isotherm<double> const at_t(t);
        for (double w = 0.3; w <= 1.0; w += 0.05)
            EXPECT_NEAR(at_t.ethanol_concentration(w).value, w * at_t.density(w), 1e-11) << w << " " << t;
    }
}

TEST(OimlR22, SlopeOfConcentrationIsThatOfAutomaticDifferentiation) {
    namespace ad = boost::math::differentiation;
    for (double const t : {-10.0, 20.0, 40.0}) {
        for (double w = 0.0; w <= 1.0; w += 0.05) {
            auto const variable = ad::make_fvar<double, 1>(w);
            using scalar = std::decay_t<decltype(variable)>;
            double const slope = (variable * density(variable, scalar(t))).derivative(1);
            EXPECT_NEAR(isotherm<double>(t).ethanol_concentration(w).slope, slope, 3e-11) << w << " " << t;
        }
    }
}

// Definition of alcoholic strength by volume: volume of ethanol, at its own density, over that of the
// mixture.
TEST(OimlR22, VolumeFractionIsVolumeOfEthanolOverVolumeOfMixture) {
    for (double const t : {-10.0, 15.0, 20.0, 40.0}) {
        EXPECT_EQ(volume_fraction_from_mass_fraction(0.0, t), 0.0);
        EXPECT_EQ(volume_fraction_from_mass_fraction(1.0, t), 1.0);
        for (double w = 0.05; w < 1.0; w += 0.05) {
            double const litres_of_ethanol = w / density(1.0, t), litres = 1.0 / density(w, t);
            EXPECT_NEAR(volume_fraction_from_mass_fraction(w, t), litres_of_ethanol / litres, 5e-16)
                << w << " " << t;
        }
    }
}

// Orders of evaluation differ by rounding only: 5e-13 kg/m3 is 2 ulp for each of two.
TEST(OimlR22, DensityIsTheSameInEveryOrderOfEvaluation) {
    for (double t = -20.0; t <= 40.0; t += 2.5) {
        isotherm<double> const at_t(t);
        for (double w = 0.0; w <= 1.0; w += 1.0 / 64.0) {
            double const rho = density(w, t);
            EXPECT_NEAR(at_t.density(w), rho, 5e-13) << w << " " << t;
            EXPECT_NEAR(at_t.density_even_odd(w), rho, 5e-13) << w << " " << t;
            EXPECT_NEAR(at_t.density_horner(w), rho, 5e-13) << w << " " << t;
        }
    }
}

}  // namespace
}  // namespace aqueth::correlation::oiml_r22
