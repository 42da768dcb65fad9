// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/glass_expansion.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/model/hot_density.hpp>
#include <aqueth/model/methanol_water.hpp>
#include <aqueth/model/refraction.hpp>
#include <aqueth/model/sample_distillation.hpp>
#include <aqueth/model/sugar_solution.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/real.hpp>
#include <aqueth/plain/pycnometer.hpp>

#include <cmath>
#include <type_traits>

/// The measurements of a bottling day as functions of plain numbers, generic in the scalar, so that
/// `propagate` can differentiate them and `monte_carlo` can evaluate them.
///
/// Nothing is checked: check the estimates with the typed functions first. Those give the same results (the
/// tests compare). Masses in kg, volumes in m3, temperatures in °C, densities in kg/m3; w is a mass fraction
/// and q a volume fraction at 20 °C, both 0 to 1.
/// @par Source
/// @ref source_oiml_r22
namespace aqueth::inline AQUETH_ABI::measurement_model {

namespace r22 = correlation::oiml_r22;

/// The formula at 20 °C, with the scalar of the model.
/// @return the isotherm
template <class T>
constexpr r22::isotherm<T> at_20_celsius() {
    return r22::isotherm<T>(T(20.0));
}

/// @param q volume fraction at 20 °C
/// @return mass fraction
template <class T>
constexpr T mass_fraction(T const& q) {
    auto const isotherm = at_20_celsius<T>();
    return r22::mass_fraction_from_concentration(isotherm, q * isotherm.density(T(1.0)));
}

/// @param w mass fraction
/// @return volume fraction at 20 °C
template <class T>
constexpr T volume_fraction(T const& w) {
    auto const isotherm = at_20_celsius<T>();
    return w * isotherm.density(w) / isotherm.density(T(1.0));
}

/// Composition from an alcoholometer of 20 °C, as `alcoholometer::composition`.
/// @param shown         reading of the stem, corrected for its error, as a fraction
/// @param t             temperature of liquid and instrument
/// @param glass         cubic expansion of the instrument, 1/K; soda-lime glass unless given
/// @param formula_error density of the liquid less that of the formula; 0 where the formula is the law. Above
///                      40 °C no law holds: `hot_density_uncertainty` is its standard uncertainty
/// @return mass fraction
template <class T>
constexpr T mass_fraction_from_reading(T const& shown, T const& t,
                                       T const& glass = T(correlation::glass_expansion::soda_lime),
                                       T const& formula_error = T(0.0)) {
    T const at_reference = at_20_celsius<T>().density(mass_fraction(shown));
    T const rho = at_reference / (T(1.0) + glass * (t - T(20.0)));
    T const by_formula = rho - formula_error;
    return t > T(r22::highest_celsius) ? model::hot_density::mass_fraction_from_density(by_formula, t)
                                       : r22::mass_fraction_from_density(by_formula, t);
}

/// Density of a liquid, as `density`.
/// @param w             mass fraction
/// @param t             temperature
/// @param formula_error density of the liquid less that of the formula, as above
/// @return density
template <class T>
constexpr T density(T const& w, T const& t, T const& formula_error = T(0.0)) {
    return model::hot_density::liquid_density(w, t) + formula_error;
}

/// Mass of water that dilutes a spirit, as `dilute`.
/// @param mass   mass of the spirit
/// @param w      its mass fraction
/// @param target mass fraction wanted, above 0
/// @return mass of water to add
template <class T>
constexpr T water_to_add(T const& mass, T const& w, T const& target) {
    return mass * (w / target - T(1.0));
}

/// Composition of a mixture of spirit and water, as `mix`.
/// @param mass  mass of the spirit
/// @param w     its mass fraction
/// @param water mass of water, 0 or more
/// @return mass fraction
template <class T>
constexpr T diluted(T const& mass, T const& w, T const& water) {
    return mass * w / (mass + water);
}

/// Composition of a spirit weighed in a flask, as `pycnometer`.
/// @param empty       indication with the empty flask
/// @param with_water  indication with water
/// @param water_t     temperature of the water
/// @param with_liquid indication with the spirit
/// @param liquid_t    temperature of the spirit
/// @param glass       cubic expansion of the flask, 1/K
/// @param air         density of the air
/// @param formula_error density of the liquid less that of the formula; 0 where the formula is the law
/// @return mass fraction
template <class T>
constexpr T mass_fraction_by_pycnometer(T const& empty, T const& with_water, T const& water_t,
                                        T const& with_liquid, T const& liquid_t, T const& glass, T const& air,
                                        T const& formula_error = T(0.0)) {
    T const rho =
        plain::detail::pycnometer_density(empty, with_water, water_t, with_liquid, liquid_t, glass, air);
    return r22::mass_fraction_from_density(T(rho - formula_error), liquid_t);
}

/// Vapour over a boiling liquid, as `bubble_point` at a pressure.
/// @param x                mole fraction of ethanol in the liquid, 0 to 1
/// @param p                absolute pressure, Pa
/// @param volatility_error error of the logarithm of the model's relative volatility: `vapour_error`
/// @return mole fraction of ethanol in the vapour
/// @par Source
/// @ref source_excess_gibbs
template <class T>
T vapour_over(T const& x, T const& p, T const& volatility_error = T(0.0)) {
    using std::exp;
    T const alpha = exp(model::vapour_liquid::bubble_at_pressure(x, p).ln_alpha + volatility_error);
    return alpha * x / (T(1.0) + (alpha - T(1.0)) * x);
}

/// Strength from a sample that was distilled and made up, as `strength_of_distilled_sample`.
/// @param sample   volume of the sample, m3
/// @param made_up  volume that the distillate was made up to, m3
/// @param t        temperature of both
/// @param w        mass fraction of the made-up distillate: `mass_fraction_from_reading`
/// @param lost     share of the alcohol lost in distilling
/// @return volume fraction of the sample
/// @par Source
/// @ref source_oiml_r22; the procedure is common practice
template <class T>
constexpr T volume_fraction_of_distilled_sample(T const& sample, T const& made_up, T const& t, T const& w,
                                                T const& lost = T(0.0)) {
    return model::sample_distillation::volume_fraction(sample, t, made_up, w, t, lost);
}

/// Alcohol and extract of a wash in mass fractions of the whole.
template <class T>
struct alcohol_and_extract {
    T alcohol;  ///< mass fraction of ethanol
    T extract;  ///< mass fraction of extract, counted as sucrose
};

/// Alcohol and extract from density and refractive index at 20 °C, as `wash_from_density_and_index`, by
/// steps with the slopes at a given place.
/// @param rho  density
/// @param n    refractive index
/// @param start a place within 0.02 of the answer: that of the estimates, from the checked function
/// @return alcohol and extract
/// @par Source
/// @ref source_refraction, @ref source_sugar_solution
template <class T>
alcohol_and_extract<T> from_density_and_index(T const& rho, T const& n,
                                              alcohol_and_extract<double> const& start) {
    double const h = 1e-5;
    auto const density = [](auto const& a, auto const& e) {
        using number = std::remove_cvref_t<decltype(a)>;
        return model::sugar_solution::density(a, e, sweetener::sucrose, number(20.0));
    };
    auto const index = [](auto const& a, auto const& e) {
        return model::refraction::index(a, e, sweetener::sucrose);
    };
    double const a = start.alcohol, e = start.extract;
    double const rho_a = (density(a + h, e) - density(a - h, e)) / (2.0 * h);
    double const rho_e = (density(a, e + h) - density(a, e - h)) / (2.0 * h);
    double const n_a = (index(a + h, e) - index(a - h, e)) / (2.0 * h);
    double const n_e = (index(a, e + h) - index(a, e - h)) / (2.0 * h);
    double const whole = rho_a * n_e - rho_e * n_a;
    alcohol_and_extract<T> at{T(a), T(e)};
    for (int i = 0; i < 8; ++i) {
        T const d = density(at.alcohol, at.extract) - rho, m = index(at.alcohol, at.extract) - n;
        at.alcohol = at.alcohol - (d * T(n_e) - m * T(rho_e)) / T(whole);
        at.extract = at.extract - (m * T(rho_a) - d * T(n_a)) / T(whole);
    }
    return at;
}

}  // namespace aqueth::inline AQUETH_ABI::measurement_model
