// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/minimum.hpp>
#include <aqueth/still/column.hpp>
#include <aqueth/still/detail/column_solver.hpp>
#include <aqueth/strength.hpp>

#include <algorithm>
#include <cmath>

namespace aqueth::inline AQUETH_ABI {

namespace detail {

/// two strengths between which a column works, checked and as mole fractions
struct separation {
    double still;
    double distillate;
};

template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
separation require_separation(char const* property, M const& mixture, Still still, Distillate distillate) {
    auto const from = to<mole_fraction>(still);
    auto const up_to = to<mole_fraction>(distillate);
    double const limit = column_solver<M>::azeotrope(mixture);
    require_range(property, argument::strength_in_the_still, from.percent(), mole_fraction::unit, 1e-6,
                  100.0 * limit, "below the azeotrope at this pressure");
    if (!(from <= up_to && up_to.value() < limit)) {
        auto const shown = [](double x) { return to<Distillate>(mole_fraction(x)).number(); };
        raise_error(refusal(property, argument::strength_of_the_distillate, distillate.number(),
                            Distillate::unit, shown(from.value()), shown(limit * (1.0 - 1e-9)),
                            "from that of the still to below the azeotrope at this pressure"));
    }
    return {from.value(), up_to.value()};
}

}  // namespace detail

/// Number of stages between two strengths at total reflux if the relative volatility were constant: Fenske's
/// equation. The volatility of ethanol and water is far from constant; `minimum_stages` steps exactly.
/// @param still      strength in the still, above 0 and below 1
/// @param distillate strength of the distillate, below 1
/// @param volatility relative volatility of ethanol to water, above 1
/// @return number of stages, including the still
/// @throws refusal if an argument is outside its range
/// @par Source
/// @ref source_columns (Fenske)
template <strength_basis Still, strength_basis Distillate>
[[nodiscard]] double fenske_stages(Still still, Distillate distillate, double volatility) {
    double const x = to<mole_fraction>(still).value();
    double const d = to<mole_fraction>(distillate).value();
    require_range("Fenske's equation", argument::mole_fraction_in_the_still, x, "", 1e-12, 1.0 - 1e-12);
    require_range("Fenske's equation", argument::mole_fraction_of_the_distillate, d, "", x, 1.0 - 1e-12);
    require_range("Fenske's equation", argument::relative_volatility, volatility, "", 1.0 + 1e-9, 1e9);
    return std::log(d * (1.0 - x) / (x * (1.0 - d))) / std::log(volatility);
}

/// Number of stages between two strengths with a given reflux ratio, by exact stepping.
/// @param mixture      a boiling mixture at one pressure
/// @param still        strength in the still, below the azeotrope
/// @param distillate   strength of the distillate, below the azeotrope
/// @param reflux_ratio liquid returned per distillate taken, above `minimum_reflux`; infinity for total
///                     reflux
/// @param flow         how the flows inside are found
/// @return theoretical stages above the boiler; the last one counted in part, by its Murphree efficiency
/// @throws refusal if a strength is outside its range or the reflux ratio not above the least one
template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
[[nodiscard]] double stages_needed(M const& mixture, Still still, Distillate distillate, double reflux_ratio,
                                   flow_model flow = flow_model::constant_molar_overflow);

/// Number of stages between two strengths at total reflux, by exact stepping. No column needs fewer.
/// @param mixture    a boiling mixture at one pressure
/// @param still      strength in the still, below the azeotrope
/// @param distillate strength of the distillate, below the azeotrope
/// @return theoretical stages above the boiler; the last one counted in part, by its Murphree efficiency
/// @throws refusal if a strength is outside its range
template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
[[nodiscard]] double minimum_stages(M const& mixture, Still still, Distillate distillate) {
    return stages_needed(mixture, still, distillate, unlimited);
}

/// Least reflux ratio for a separation: that of a column with infinitely many stages. For constant molar
/// overflow it is the slope of the steepest line from the distillate to the equilibrium curve. For ethanol
/// and water that line often touches the curve far above the still (a tangent pinch).
/// @param mixture    a boiling mixture at one pressure
/// @param still      strength in the still, below the azeotrope
/// @param distillate strength of the distillate, below the azeotrope
/// @return reflux ratio; 0 if the vapour over the still is strong enough
/// @throws refusal if a strength is outside its range
template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
[[nodiscard]] double minimum_reflux(M const& mixture, Still still, Distillate distillate) {
    auto const [x, d] = detail::require_separation("minimum reflux", mixture, still, distillate);
    auto const steepness = [&, d = d](double liquid) { return (d - mixture.vapour(liquid)) / (d - liquid); };
    constexpr int points = 400;
    double const width = (d - x) / points;
    double phi = steepness(x);
    double at = x;
    for (int i = 1; i < points; ++i) {
        double const liquid = x + width * i;
        if (steepness(liquid) > phi) {
            phi = steepness(liquid);
            at = liquid;
        }
    }
    double const lower = (std::max)(x, at - width);
    double const upper = (std::min)(d - 1e-3 * width, at + width);
    double const steepest =  // the steepness has one top there
        numeric::minimum([&](double liquid) { return -steepness(liquid); }, lower, upper, 1e-10 * width);
    phi = (std::max)(phi, steepness(steepest));
    return phi <= 0.0 ? 0.0 : phi / (1.0 - phi);
}

template <boiling_mixture M, strength_basis Still, strength_basis Distillate>
[[nodiscard]] double stages_needed(M const& mixture, Still still, Distillate distillate, double reflux_ratio,
                                   flow_model flow) {
    auto const [x, d] = detail::require_separation("stages", mixture, still, distillate);
    if (mixture.vapour(x) >= d) return 0.0;
    double const least = minimum_reflux(mixture, still, distillate);
    if (!(reflux_ratio > least)) {
        raise_error(refusal("stages", argument::reflux_ratio, reflux_ratio, "", least, unlimited,
                            "above the minimum reflux of this separation"));
    }
    double const phi = detail::internal_reflux_of(reflux_ratio, 0.0);
    double const vapour = mixture.vapour(x);
    auto const excess = [&, d = d](double stages) {
        detail::column_solver<M> const solver(mixture, column::of_stages(stages), neck::insulated(), flow);
        return vapour - solver.vapour_over_still(d, phi);
    };
    double whole = 1.0;
    while (excess(whole) < 0.0) {
        whole += 1.0;
        if (whole > column::most_stages) {
            raise_error(refusal("stages", argument::number_of_stages_above, column::most_stages, "", 0.0,
                                column::most_stages - 1.0, "the reflux is too close to the least one"));
        }
    }
    return numeric::bracketed_root(excess, whole - 1.0, whole, 1e-13);
}

/// Strength of the distillate over a still.
/// @param mixture      a boiling mixture at one pressure
/// @param c            the column on the still
/// @param still        strength in the still, below the azeotrope
/// @param reflux_ratio liquid that the condenser returns per distillate taken, 0 or more; infinity for total
///                     reflux
/// @param flow         how the flows inside are found
/// @param n            the neck on the column
/// @return strength of the distillate
/// @throws refusal if the strength or the reflux ratio is outside its range
template <boiling_mixture M, strength_basis Still>
mole_fraction distillate_strength(M const& mixture, column const& c, Still still, double reflux_ratio,
                                  flow_model flow = flow_model::constant_molar_overflow,
                                  neck const& n = neck::insulated()) {
    double const x = detail::require_separation("distillate", mixture, still, still).still;
    if (!(reflux_ratio >= 0.0))
        require_range("distillate", argument::reflux_ratio, reflux_ratio, "", 0.0, 1e300);
    double const phi = detail::internal_reflux_of(reflux_ratio, n.share());
    return mole_fraction(detail::column_solver<M>(mixture, c, n, flow).distillate(x, phi));
}

}  // namespace aqueth::inline AQUETH_ABI
