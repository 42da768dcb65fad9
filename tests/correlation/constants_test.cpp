// SPDX-License-Identifier: BSL-1.0
#include <aqueth/correlation/air_buoyancy.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/correlation/glass_expansion.hpp>
#include <aqueth/correlation/molar_mass.hpp>

#include <gtest/gtest.h>

namespace aqueth::correlation {
namespace {

// The SI defines both factors exactly (9th edition, 2019); the library carries ten digits of the product.
TEST(Constants, GasConstantIsBoltzmannsTimesAvogadros) {
    EXPECT_NEAR(gas_constant::molar, 1.380649e-23 * 6.02214076e23, 5e-10);
}

// The weights as the citation prints them, and the formulas C2H6O and H2O.
TEST(Constants, MolarMassesAreSumsOfTheAtomicWeights) {
    EXPECT_EQ(molar_mass::hydrogen, 1.00794);
    EXPECT_EQ(molar_mass::carbon, 12.0107);
    EXPECT_EQ(molar_mass::oxygen, 15.9994);
    EXPECT_DOUBLE_EQ(molar_mass::ethanol, 46.06844);
    EXPECT_DOUBLE_EQ(molar_mass::water, 18.01528);
}

// From the moles and masses of each component: the fractions follow from the masses, and back; the mean is
// mass over moles.
TEST(Constants, FractionsCountTheSameMixture) {
    for (double ethanol = 0.0; ethanol <= 3.0; ethanol += 0.25)
        for (double water = 0.25; water <= 3.0; water += 0.25) {
            double const grams = ethanol * molar_mass::ethanol + water * molar_mass::water;
            double const w = ethanol * molar_mass::ethanol / grams, x = ethanol / (ethanol + water);
            EXPECT_NEAR(molar_mass::mole_fraction_from_mass_fraction(w), x, 1e-15);
            EXPECT_NEAR(molar_mass::mass_fraction_from_mole_fraction(x), w, 1e-15);
            EXPECT_NEAR(molar_mass::mixture(w), grams / (ethanol + water), 1e-13);
        }
}

// OIML D 28: the balance is adjusted with weights of 8000 kg/m3 in air of 1.2 kg/m3, so it shows their true
// mass. For an object of the density of air it shows zero.
TEST(Constants, BalanceShowsItsOwnWeights) {
    EXPECT_DOUBLE_EQ(air_buoyancy::indication_per_mass(8000.0), 1.0);
    EXPECT_EQ(air_buoyancy::indication_per_mass(1.2), 0.0);
    EXPECT_NEAR(air_buoyancy::indication_per_mass(2.4), 0.5 / (1.0 - 1.2 / 8000.0), 1e-15);
}

// ISO 1768; that of borosilicate glass is from memory, and this test only compares it with the documentation.
TEST(Constants, GlassesGrowAsDocumented) {
    EXPECT_EQ(glass_expansion::soda_lime, 25e-6);
    EXPECT_EQ(glass_expansion::borosilicate, 10e-6);
}

}  // namespace
}  // namespace aqueth::correlation
