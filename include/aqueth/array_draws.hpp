// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/array.hpp>
#include <aqueth/metrology/draws.hpp>
#include <aqueth/metrology/measurement_model.hpp>

#include <cmath>
#include <cstddef>

/// The functions of `measurement_model` over draws, by the loops over arrays. Include this header before a
/// model that uses them, and give the model to `monte_carlo` as `in_blocks(model)`.
///
/// A draw that the array function refuses, like a reading a little below 0, gets the function over numbers,
/// which checks nothing.
namespace aqueth::inline AQUETH_ABI::measurement_model {

/// @cond
namespace detail {

/// Repeats the draws that have no result.
template <class Function, class... Draws>
draws complete(draws const& found, Function const& one, Draws const&... arguments) {
    draws result = found;
    for (std::size_t i = 0; i < draws::count; ++i) {
        if (std::isnan(result[i])) result[i] = one(arguments[i]...);
    }
    return result;
}

}  // namespace detail
/// @endcond

/// @param q volume fractions at 20 °C, 0 to 1
/// @return mass fractions of ethanol
/// @par Source
/// @ref source_oiml_r22
inline draws mass_fraction(draws const& q) {
    draws w;
    if (arrays::to<aqueth::mass_fraction, aqueth::volume_fraction>(q, w) == 0) return w;
    return detail::complete(
        w, [](double one) { return mass_fraction(one); }, q);
}

/// @param w mass fractions of ethanol, 0 to 1
/// @return volume fractions at 20 °C
/// @par Source
/// @ref source_oiml_r22
inline draws volume_fraction(draws const& w) {
    draws q;
    if (arrays::to<aqueth::volume_fraction, aqueth::mass_fraction>(w, q) == 0) return q;
    return detail::complete(
        q, [](double one) { return volume_fraction(one); }, w);
}

/// @param w             mass fractions of ethanol, 0 to 1
/// @param t             temperatures, °C, -20 to the boiling point
/// @param formula_error density of the liquid less that of the formula, kg/m3
/// @return densities, kg/m3
/// @par Source
/// @ref source_oiml_r22
inline draws density(draws const& w, draws const& t, draws const& formula_error = draws(0.0)) {
    draws rho;
    if (arrays::density(w, t, rho) != 0)
        rho = detail::complete(
            rho, [](double w1, double t1) { return density(w1, t1); }, w, t);
    return rho + formula_error;
}

/// @param shown         readings of the stem, corrected for their error, as volume fractions, 0 to 1
/// @param t             temperatures of liquid and instrument, °C, -20 to the boiling point
/// @param glass         cubic expansion of the instrument, 1/K; soda-lime glass unless given
/// @param formula_error density of the liquid less that of the formula, kg/m3
/// @return mass fractions of ethanol
/// @par Source
/// @ref source_oiml_r22
inline draws mass_fraction_from_reading(draws const& shown, draws const& t,
                                        draws const& glass = draws(correlation::glass_expansion::soda_lime),
                                        draws const& formula_error = draws(0.0)) {
    draws const w_shown = mass_fraction(shown);
    draws w;
    arrays::density(w_shown, celsius(20.0), w);  // NaN where it refuses, and so on
    draws const rho = w / (1.0 + glass * (t - 20.0)) - formula_error;
    if (arrays::mass_fraction_from_density(rho, t, w) == 0) return w;
    return detail::complete(
        w, [](double s, double t1, double g, double e) { return mass_fraction_from_reading(s, t1, g, e); },
        shown, t, glass, formula_error);
}

}  // namespace aqueth::inline AQUETH_ABI::measurement_model
