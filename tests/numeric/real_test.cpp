// SPDX-License-Identifier: BSL-1.0
// Every public kernel refuses integers, in which it would compute silently: density(1, 25) was 799 kg/m3, not
// 784.954. The configuration stops at a kernel that does not demand a real scalar (aqueth_require_real).
#include <aqueth/aqueth.hpp>

#include <aqueth/correlation/its90.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/numeric/dual.hpp>
#include <aqueth/numeric/pair.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/real.hpp>
#include <aqueth/numeric/root.hpp>

#include <boost/math/differentiation/autodiff.hpp>
#include <boost/multiprecision/cpp_bin_float.hpp>
#include <boost/multiprecision/cpp_int.hpp>
#include <boost/numeric/interval.hpp>

#include <gtest/gtest.h>

#include <array>
#include <cstdint>
#include <type_traits>

namespace {

using namespace aqueth::correlation;
using namespace aqueth::model;
namespace numeric = aqueth::numeric;
namespace multiprecision = boost::multiprecision;

static_assert(numeric::real<float> && numeric::real<double> && numeric::real<long double>);
static_assert(numeric::real<multiprecision::cpp_bin_float_50> && numeric::real<multiprecision::cpp_rational>);
static_assert(numeric::real<numeric::dual> &&
              numeric::real<boost::math::differentiation::autodiff_fvar<double, 2>>);
static_assert(numeric::real<boost::numeric::interval<double>>);
static_assert(!numeric::real<int> && !numeric::real<bool> && !numeric::real<char> &&
              !numeric::real<std::uint64_t>);
static_assert(!numeric::real<multiprecision::cpp_int>);

constexpr std::array<double, 9> nine{};

struct line {
    auto operator()(auto const& x) const {
        return numeric::value_and_slope<std::remove_cvref_t<decltype(x)>>{x, 1};
    }
};

// The call compiles for every x of a real type, and for none of an integer type.
#define REAL_ONLY(name, ...)                                                                                 \
    template <class T>                                                                                       \
    concept name = requires(T x) {                                                                           \
        __VA_ARGS__;                                                                                         \
    };                                                                                                       \
    static_assert(name<float> && name<double> && name<long double> && name<numeric::dual>);                  \
    static_assert(!name<int> && !name<unsigned> && !name<long long> && !name<bool> &&                        \
                  !name<multiprecision::cpp_int>)

REAL_ONLY(buoyancy, air_buoyancy::indication_per_mass(x));
REAL_ONLY(balling_original, balling::original_extract(x, x));
REAL_ONLY(balling_alcohol, balling::alcohol(x, x));
REAL_ONLY(balling_from_alcohol, balling::real_extract_from_alcohol(x, x));
REAL_ONLY(balling_real, balling::real_extract(x, x));
REAL_ONLY(balling_factor, balling::factor(x));
REAL_ONLY(cipm_covers, cipm_2001_water::covers(x));
REAL_ONLY(cipm_density, cipm_2001_water::density(x));
REAL_ONLY(heat_covers, enthalpy::covers(x));
REAL_ONLY(heat_ethanol_vaporization, enthalpy::ethanol_vaporization(x));
REAL_ONLY(heat_water_vaporization, enthalpy::water_vaporization(x));
REAL_ONLY(heat_ethanol, enthalpy::ethanol_liquid(x));
REAL_ONLY(heat_water, enthalpy::water_liquid(x));
REAL_ONLY(heat_liquid, enthalpy::liquid(x, x));
REAL_ONLY(heat_liquid_capacity, enthalpy::liquid_heat_capacity(x, x));
REAL_ONLY(heat_vapour, enthalpy::vapour(x, x, x));
REAL_ONLY(heat_vapour_capacity, enthalpy::vapour_heat_capacity(x, x, x));
REAL_ONLY(poling_covers, ethanol_saturation_poling::covers(x));
REAL_ONLY(poling_ln, ethanol_saturation_poling::ln_pressure_and_slope(x));
REAL_ONLY(poling_pressure, ethanol_saturation_poling::pressure(x));
REAL_ONLY(poling_slope, ethanol_saturation_poling::temperature_and_slope(x));
REAL_ONLY(poling_temperature, ethanol_saturation_poling::temperature(x));
REAL_ONLY(water_covers, water_saturation_wagner_pruss::covers(x));
REAL_ONLY(water_ln, water_saturation_wagner_pruss::ln_pressure_and_slope(x));
REAL_ONLY(water_pressure, water_saturation_wagner_pruss::pressure(x));
REAL_ONLY(water_slope, water_saturation_wagner_pruss::temperature_and_slope(x));
REAL_ONLY(water_temperature, water_saturation_wagner_pruss::temperature(x));
REAL_ONLY(virial_covers, ethanol_second_virial::covers(x));
REAL_ONLY(virial, ethanol_second_virial::coefficient(x));
REAL_ONLY(crc_covers, second_virial_crc::covers(x));
REAL_ONLY(crc_water, second_virial_crc::water(x));
REAL_ONLY(crc_ethanol, second_virial_crc::ethanol(x));
REAL_ONLY(gibbs_covers, excess_gibbs::covers(x, x));
REAL_ONLY(gibbs_at, excess_gibbs::at_temperature(x));
REAL_ONLY(gibbs_evaluate, excess_gibbs::evaluate(x, std::array<T, 4>{}));
REAL_ONLY(gibbs, excess_gibbs::reduced_gibbs(x, x));
REAL_ONLY(gibbs_enthalpy, excess_gibbs::enthalpy(x, x));
REAL_ONLY(gibbs_heat_capacity, excess_gibbs::heat_capacity(x, x));
REAL_ONLY(redlich_at, skewed_redlich_kister::at_temperature(x, 300.0));
REAL_ONLY(redlich_series, skewed_redlich_kister::series(x, 0.5, 3, [](int) { return T(1); }));
REAL_ONLY(excise, excise_notice_226::percent_vol(x));
REAL_ONLY(freezing_covers, freezing_point::covers(x));
REAL_ONLY(freezing, freezing_point::celsius(x));
REAL_ONLY(perry_covers, heat_capacity_perry::covers(x));
REAL_ONLY(perry_ethanol, heat_capacity_perry::ethanol_liquid(x));
REAL_ONLY(perry_water, heat_capacity_perry::water_liquid(x));
REAL_ONLY(perry_ethanol_enthalpy, heat_capacity_perry::ethanol_liquid_enthalpy(x));
REAL_ONLY(perry_water_enthalpy, heat_capacity_perry::water_liquid_enthalpy(x));
REAL_ONLY(perry_ethanol_gas, heat_capacity_perry::ethanol_ideal_gas(x));
REAL_ONLY(perry_water_gas, heat_capacity_perry::water_ideal_gas(x));
REAL_ONLY(icao_covers, icao_atmosphere::covers(x));
REAL_ONLY(icao_pressure, icao_atmosphere::pressure(x));
REAL_ONLY(its90_to_68, its90::t68_from_t90(x));
REAL_ONLY(its90_to_90, its90::t90_from_t68(x));
REAL_ONLY(raoult_virial_of, modified_raoult::virial_vapour(x, x, 0.8, x));
REAL_ONLY(raoult_virial, modified_raoult::virial_vapour(x));
REAL_ONLY(raoult_slope, modified_raoult::virial_vapour_slope(x));
REAL_ONLY(raoult_at, modified_raoult::at({}, x, x, x, x));
REAL_ONLY(raoult_relative, modified_raoult::relative_square(x, x));
REAL_ONLY(raoult_bubble, modified_raoult::bubble(x, x, x, x, x, {}));
REAL_ONLY(raoult_arrival, modified_raoult::arrival<T>{});
REAL_ONLY(molar_x, molar_mass::mole_fraction_from_mass_fraction(x));
REAL_ONLY(molar_w, molar_mass::mass_fraction_from_mole_fraction(x));
REAL_ONLY(molar_mixture, molar_mass::mixture(x));
REAL_ONLY(r22_covers, oiml_r22::covers(x, x));
REAL_ONLY(r22_isotherm, oiml_r22::isotherm<T>(x));
REAL_ONLY(r22_density, oiml_r22::density(x, x));
REAL_ONLY(r22_derivatives, oiml_r22::density_with_derivatives(x, x));
REAL_ONLY(r22_inverse, oiml_r22::mass_fraction_from_density(x, x));
REAL_ONLY(r22_volume_fraction, oiml_r22::volume_fraction_from_mass_fraction(x, x));
REAL_ONLY(r22_mass_fraction, oiml_r22::mass_fraction_from_volume_fraction(x, x));
REAL_ONLY(sucrose_covers, sucrose_density::covers(x, x));
REAL_ONLY(sucrose, sucrose_density::excess(x, x));
REAL_ONLY(vle_covers, vapour_liquid::covers(x));
REAL_ONLY(vle_isobar, vapour_liquid::along_isobar(vapour_liquid::equilibrium<T>{}));
REAL_ONLY(vle_isotherm, vapour_liquid::along_isotherm(vapour_liquid::equilibrium<T>{}));
REAL_ONLY(vle_bubble_t, vapour_liquid::bubble_at_temperature(x, x));
REAL_ONLY(vle_bubble_p, vapour_liquid::bubble_at_pressure(x, x));
REAL_ONLY(vle_dew_t, vapour_liquid::dew_at_temperature(x, x));
REAL_ONLY(vle_dew_p, vapour_liquid::dew_at_pressure(x, x));
REAL_ONLY(vle_azeotrope_t, vapour_liquid::azeotrope_at_temperature(x));
REAL_ONLY(vle_azeotrope_p, vapour_liquid::azeotrope_at_pressure(x));

REAL_ONLY(sum, numeric::multiply_add(x, x, x));
REAL_ONLY(of_one, numeric::polynomial(nine, x));
REAL_ONLY(of_one_chain, numeric::polynomial_in_one_chain(nine, x));
REAL_ONLY(of_two, numeric::polynomial(std::array<std::array<double, 2>, 3>{}, x, x));
REAL_ONLY(with_slope, numeric::polynomial_with_slope(nine, x));
REAL_ONLY(taylor, numeric::polynomial_taylor<3>(std::array<T, 9>{}, x));
REAL_ONLY(halved, numeric::halved_polynomial(std::array<numeric::pair<T>, 3>{}, x));
REAL_ONLY(halved_taylor, numeric::halved_polynomial_taylor(std::array<numeric::pair<T>, 3>{}, x));
REAL_ONLY(which, numeric::interval_of<3>(x));
REAL_ONLY(nearest, numeric::nearest_interval_of<3>(x));
REAL_ONLY(newton, numeric::bracketed_newton(line{}, x, x, x, x));
REAL_ONLY(halley, numeric::halley_step(numeric::taylor_terms<T, 3>{}));
REAL_ONLY(householder, numeric::householder_step(numeric::taylor_terms<T, 4>{}));

// The figures of a table beside those that integers gave. OIML R 22, table of densities: ethanol at 25 °C
// 784.95; CIPM-2001, table 1: water at 25 °C 997.0470.
TEST(Real, WholeNumbersAreWrittenWithAPoint) {
    EXPECT_NEAR(oiml_r22::density(1.0, 25.0), 784.95, 0.005);
    EXPECT_NEAR(cipm_2001_water::density(25.0), 997.047, 0.0005);
}

}  // namespace
