// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/trade_scales.hpp>
#include <aqueth/plain/specific_gravity.hpp>
#include <aqueth/plain/status.hpp>
#include <aqueth/plain/strength.hpp>

namespace aqueth::inline AQUETH_ABI::plain {

namespace detail {

/// Volume fraction of ethanol at 60 °F in British proof spirit: at 51 °F it weighs, in air, 12/13 of an equal
/// measure of water (Act of 1818).
template <number T>
constexpr T uk_proof_spirit() {
    gravity_reference<T> const by_the_act{T(95.0 / 9.0), T(95.0 / 9.0), medium::air};  // 51 °F
    T const w = mass_fraction_from_specific_gravity(T(12.0 / 13.0), by_the_act).value;
    T const f60 = T(140.0 / 9.0);
    return w * correlation::oiml_r22::density(w, f60) / correlation::oiml_r22::density(T(1), f60);
}

}  // namespace detail

/// Degrees of British proof (Sikes): the part of proof spirit, in percent, that has as much alcohol in the
/// same volume at 60 °F. 100 is proof spirit, 57.1 % vol at 60 °F; pure ethanol is 175.
/// @param mass_fraction of ethanol, 0 to 1
/// @return degrees; less 100 they are "over proof", 100 less them "under proof"; refuses what is out of range
/// @par Accuracy
/// 0.05 degrees of the printed figure for ethanol. Sikes's hydrometer had its own tables, which were not
/// read.
/// @par Source
/// @ref source_uk_proof; densities @ref source_oiml_r22
template <number T>
constexpr checked<T> uk_proof_degrees(T mass_fraction) {
    status const strength = within(argument::mass_fraction, mass_fraction, 0.0, 1.0);
    if (!strength.ok) return no_answer<T>(strength);
    T const f60 = T(140.0 / 9.0);
    T const volume_fraction = mass_fraction * correlation::oiml_r22::density(mass_fraction, f60) /
                              correlation::oiml_r22::density(T(1), f60);
    return {T(100) * volume_fraction / detail::uk_proof_spirit<T>(), {}};
}

/// Mass fraction of a spirit from its degrees of British proof: the inverse of `uk_proof_degrees`.
/// @param degrees 0 to those of pure ethanol, 175.2
/// @return mass fraction; refuses what is out of range
/// @par Source
/// as `uk_proof_degrees`
template <number T>
constexpr checked<T> mass_fraction_from_uk_proof(T degrees) {
    T const proof = detail::uk_proof_spirit<T>();
    status const range = within(argument::degrees_of_the_scale, degrees, 0.0, double(T(100) / proof));
    if (!range.ok) return no_answer<T>(range);
    correlation::oiml_r22::isotherm<T> const at_60(T(140.0 / 9.0));
    T const whole = degrees * proof / T(100);
    return {correlation::oiml_r22::mass_fraction_from_concentration(at_60, (whole < T(1) ? whole : T(1)) *
                                                                               at_60.density(T(1))),
            {}};
}

/// The scales that `gravity_from_degrees` and `degrees_from_gravity` know.
enum class trade_scale {
    baume_above,  ///< Baumé for liquids denser than water, modulus 145, of sg 60/60 °F
    baume_below,  ///< Baumé for liquids lighter than water, of sg 60/60 °F
    oechsle,      ///< degrees Oechsle of must, of sg 20/20 °C
    kmw           ///< degrees of the Klosterneuburg must scale (Babo), of sg 20/20 °C
};

/// Degrees of a scale of the trade from a specific gravity.
/// @param scale            the scale
/// @param specific_gravity in vacuo, at the scale's temperatures: 1 to 2 for liquids denser than water (KMW:
///                         to 1.21), 0.5 to 1 for `baume_below`
/// @return degrees; refuses what is out of range
/// @par Accuracy
/// a definition
/// @par Source
/// @ref source_trade_scales
template <number T>
checked<T> degrees_from_gravity(trade_scale scale, T specific_gravity) {
    namespace scales = correlation::trade_scales;
    bool const below = scale == trade_scale::baume_below;
    double const most = scale == trade_scale::kmw ? 1.2168 : 2.0;  // 40 KMW
    status const range =
        within(argument::specific_gravity, specific_gravity, below ? 0.5 : 1.0, below ? 1.0 : most);
    if (!range.ok) return no_answer<T>(range);
    switch (scale) {
    case trade_scale::baume_above: return {scales::baume_above(specific_gravity), {}};
    case trade_scale::baume_below: return {scales::baume_below(specific_gravity), {}};
    case trade_scale::oechsle: return {scales::oechsle(specific_gravity), {}};
    case trade_scale::kmw: break;
    }
    return {scales::kmw_of_oechsle(scales::oechsle(specific_gravity)), {}};
}

/// Specific gravity from degrees of a scale of the trade: the inverse of `degrees_from_gravity`.
/// @param scale   the scale
/// @param degrees 0 to 72.5 (Baumé above), 10 to 150 (Baumé below), 0 to 1000 (Oechsle), 0 to 40 (KMW)
/// @return specific gravity in vacuo, at the scale's temperatures; refuses what is out of range
/// @par Source
/// as `degrees_from_gravity`
template <number T>
constexpr checked<T> gravity_from_degrees(trade_scale scale, T degrees) {
    namespace scales = correlation::trade_scales;
    double const least = scale == trade_scale::baume_below ? 10.0 : 0.0;
    double const most = scale == trade_scale::baume_above   ? 72.5
                        : scale == trade_scale::baume_below ? 150.0
                        : scale == trade_scale::oechsle     ? 1000.0
                                                            : 40.0;
    status const range = within(argument::degrees_of_the_scale, degrees, least, most);
    if (!range.ok) return no_answer<T>(range);
    switch (scale) {
    case trade_scale::baume_above: return {scales::gravity_of_baume_above(degrees), {}};
    case trade_scale::baume_below: return {scales::gravity_of_baume_below(degrees), {}};
    case trade_scale::oechsle: return {T(1) + degrees / T(1000), {}};
    case trade_scale::kmw: break;
    }
    return {T(1) + scales::oechsle_of_kmw(degrees) / T(1000), {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
