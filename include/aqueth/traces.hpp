// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/traces.hpp>
#include <aqueth/plain/traces.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// How a trace divides between boiling ethanol and water and their vapour: `volatility`, `to_ethanol`,
/// `to_water` and their relative `band`.
using trace_volatility = plain::trace_volatility<double>;

/// Volatility of a trace in boiling ethanol and water.
/// @param which    the trace
/// @param liquid   strength of the boiling liquid, in any basis
/// @param pressure absolute pressure, 80 to 110 kPa
/// @return volatilities and their error band
/// @throws refusal if the pressure is outside its range
/// @par Accuracy
/// The band of each answer: 5 % where a measurement anchors an end, between the ends 15 % for alcohols, 20
/// % for ethyl acetate, 30 % for acetaldehyde and acetic acid, 40 % for furfural and 1-hexanol.
/// Acetaldehyde is an upper bound: what water, ethanol and sulfur dioxide bind does not boil.
/// @par Source
/// @ref source_traces
template <strength_basis Strength>
[[nodiscard]] trace_volatility volatility_of(trace which, Strength liquid,
                                             units::pressure pressure = standard_atmosphere) {
    double const x = to<mole_fraction>(liquid).value();
    return detail::answer("volatility of a trace",
                          plain::volatility_of_trace(which, x, in(pressure, kilopascal)));
}

}  // namespace aqueth::inline AQUETH_ABI
