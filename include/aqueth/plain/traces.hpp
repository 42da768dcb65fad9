// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/model/traces.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/plain/status.hpp>

#include <cmath>
#include <limits>

namespace aqueth::inline AQUETH_ABI::plain {

/// How a trace divides between boiling ethanol and water and their vapour. Not a number where there is no
/// answer.
/// @tparam T float or double
template <number T>
struct trace_volatility {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T volatility = nan;  ///< mole fraction in the vapour over that in the liquid
    T to_ethanol = nan;  ///< volatility over that of ethanol: above 1 the trace comes over before it
    T to_water = nan;    ///< volatility over that of water
    T band = nan;        ///< relative error band of all three: from value/(1 + band) to value (1 + band)
};

/// Volatility of a trace in boiling ethanol and water.
/// @param which         the trace
/// @param mole_fraction of ethanol in the liquid, 0 to 1
/// @param kpa           absolute pressure, 80 to 110 kPa
/// @return volatilities and their band; refuses what is out of range
/// @par Accuracy
/// the band of each answer, 5 to 40 %; in `float` 1e-5 more
/// @par Source
/// @ref source_traces
template <number T>
checked<trace_volatility<T>> volatility_of_trace(trace which, T mole_fraction, T kpa) {
    using result = trace_volatility<T>;
    int const last = static_cast<int>(all_traces.size()) - 1;
    int const index = static_cast<int>(which);
    if (index < 0 || index > last) return no_answer<result>(refuse(argument::index, index, 0.0, last));
    status const strength = within(argument::mole_fraction_of_the_liquid, mole_fraction, 0.0, 1.0);
    if (!strength.ok) return no_answer<result>(strength);
    namespace traces = model::traces;
    status const range =
        within(argument::pressure, kpa, traces::lowest_kilopascal, traces::highest_kilopascal);
    if (!range.ok) return no_answer<result>(range);
    auto const e = model::vapour_liquid::bubble_at_pressure(mole_fraction, T(1000) * kpa);
    T const alpha = std::exp(e.ln_alpha);
    T const of_water = T(1) / (T(1) - mole_fraction + alpha * mole_fraction);
    T const k = traces::volatility(which, mole_fraction, e.temperature, e.pressure);
    return {{k, k / (alpha * of_water), k / of_water, traces::band(which, mole_fraction)}, {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
