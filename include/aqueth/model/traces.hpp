// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/source.hpp>
#include <aqueth/model/traces_constants.hpp>
#include <aqueth/numeric/real.hpp>

#include <array>
#include <cmath>
#include <cstddef>

namespace aqueth::inline AQUETH_ABI {

/// A substance that a fermented liquid holds in traces. Only substances whose volatility could be anchored to
/// published figures are here. The number in a name is the place of the group before it.
enum class trace {
    methanol,
    acetaldehyde,         ///< ethanal
    ethyl_acetate,        ///< ethyl ethanoate
    propanol_1,           ///< 1-propanol
    methyl_2_propanol_1,  ///< 2-methyl-1-propanol, isobutanol
    butanol_1,            ///< 1-butanol
    methyl_2_butanol_1,   ///< 2-methyl-1-butanol, active amyl alcohol
    methyl_3_butanol_1,   ///< 3-methyl-1-butanol, isoamyl alcohol
    hexanol_1,            ///< 1-hexanol
    furfural,             ///< furan-2-carbaldehyde
    acetic_acid           ///< ethanoic acid
};

/// All of them, in their order.
inline constexpr std::array<trace, 11> all_traces{
    trace::methanol,           trace::acetaldehyde,        trace::ethyl_acetate,
    trace::propanol_1,         trace::methyl_2_propanol_1, trace::butanol_1,
    trace::methyl_2_butanol_1, trace::methyl_3_butanol_1,  trace::hexanol_1,
    trace::furfural,           trace::acetic_acid};

/// @param which a trace
/// @return its name; "trace" for a number that is none
constexpr char const* name_of(trace which) noexcept {
    switch (which) {
    case trace::methanol: return "methanol";
    case trace::acetaldehyde: return "acetaldehyde";
    case trace::ethyl_acetate: return "ethyl acetate";
    case trace::propanol_1: return "1-propanol";
    case trace::methyl_2_propanol_1: return "2-methyl-1-propanol";
    case trace::butanol_1: return "1-butanol";
    case trace::methyl_2_butanol_1: return "2-methyl-1-butanol";
    case trace::methyl_3_butanol_1: return "3-methyl-1-butanol";
    case trace::hexanol_1: return "1-hexanol";
    case trace::furfural: return "furfural";
    case trace::acetic_acid: return "acetic acid";
    }
    return "trace";
}

}  // namespace aqueth::inline AQUETH_ABI

/// Volatility of traces in boiling ethanol and water.
///
/// Plain numbers: x is the mole fraction of ethanol in the liquid, temperature in K, pressure in Pa.
/// Nothing is checked. The trace is infinitely dilute, and the vapour is an ideal gas; acetic acid is a
/// single molecule there.
namespace aqueth::inline AQUETH_ABI::model::traces {

/// Citation, range and accuracy.
inline constexpr correlation::source cited{
    "this work: activity coefficients measured in hot water, sets of the DECHEMA series in ethanol, modified "
    "UNIFAC (Dortmund) between them; docs/traces_fit_report.txt",
    "boiling ethanol and water of any composition, 80 to 110 kPa",
    "each answer carries its band: 5 % where measurement anchors an end; between the ends 15 % for alcohols, "
    "20 % for ethyl acetate, 30 % for acetaldehyde and acetic acid, 40 % for furfural and 1-hexanol"};

inline constexpr double lowest_kilopascal = 80.0;    ///< lower end of the range, kPa
inline constexpr double highest_kilopascal = 110.0;  ///< upper end of the range, kPa

/// @param which a trace
/// @return its constants
constexpr constants const& of(trace which) { return table[static_cast<std::size_t>(which)]; }

/// Activity coefficient at infinite dilution along the boiling line.
/// @param c constants of the trace
/// @param x mole fraction of ethanol, 0 to 1
/// @return its logarithm, pure liquid as the reference state
template <numeric::real T>
constexpr T ln_activity_coefficient(constants const& c, T const& x) {
    T const z = x / (x + T(skew) * (T(1) - x));
    return (T(1) - z) * T(c.in_water) + z * T(c.in_ethanol) + T(c.bend) * z * (T(1) - z);
}

/// Vapour pressure of the pure trace; of acetic acid the part of the single molecules.
/// @param c constants of the trace
/// @param t temperature, K, 345 to 375
/// @return logarithm of the pressure in Pa
template <numeric::real T>
constexpr T ln_pressure(constants const& c, T const& t) {
    return T(c.a) - T(c.b) / (t + T(c.c));
}

/// Volatility: mole fraction in the vapour over that in the liquid.
/// @param which the trace
/// @param x     mole fraction of ethanol in the liquid, 0 to 1
/// @param t     temperature at which it boils, K
/// @param p     pressure, Pa
/// @return volatility K
template <numeric::real T>
T volatility(trace which, T const& x, T const& t, T const& p) {
    using std::exp;
    constants const& c = of(which);
    return exp(ln_activity_coefficient(c, x) + ln_pressure(c, t)) / p;
}

/// Error band of a volatility: the true value is expected between K / (1 + band) and K (1 + band). Between
/// the ends it says how far published predictions of the shape differ, for little is measured there.
/// @param which the trace
/// @param x     mole fraction of ethanol in the liquid, 0 to 1
/// @return the band, 0.05 for 5 %
template <numeric::real T>
constexpr T band(trace which, T const& x) {
    constants const& c = of(which);
    T const first = T(0.05), last = T(0.6);  // between them nothing holds the curve
    if (x < first) return T(c.band_water) + (T(c.band_between) - T(c.band_water)) * (x / first);
    if (x <= last) return T(c.band_between);
    return T(c.band_between) + (T(c.band_ethanol) - T(c.band_between)) * ((x - last) / (T(1) - last));
}

}  // namespace aqueth::inline AQUETH_ABI::model::traces
