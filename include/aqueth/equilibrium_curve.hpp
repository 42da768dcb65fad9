// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/cubic_table.hpp>
#include <aqueth/numeric/exponential.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/units.hpp>

#include <cmath>
#include <cstddef>

namespace aqueth::inline AQUETH_ABI {

namespace detail {

/// The liquid that gives a vapour: the inverse of a curve of vapour over liquid.
/// @param vapour_with_slope callable: mole fraction of the liquid -> that of the vapour, and its derivative
/// @param y                 mole fraction of the vapour
/// @param strongest         upper end of the search: 1, or the azeotrope if the curve ends there
/// @param noise             rounding error of the vapour
/// @return mole fraction of the liquid
template <class Vapour>
double liquid_below_vapour(Vapour const& vapour_with_slope, double y, double strongest, double noise) {
    auto const miss = [&](double x) {
        auto const at = vapour_with_slope(x);
        return numeric::value_and_slope<double>{at.value - y, at.slope};
    };
    // Only a first guess: a weak liquid gives a far stronger vapour, near the azeotrope the two are alike.
    double const guess = y < 0.8 ? 0.5 * y * y : y;
    return numeric::bracketed_newton(miss, 0.0, strongest, guess, noise);
}

}  // namespace detail

/// The equilibrium at one pressure, tabulated for an integrator's inner loop.
///
/// The curve interpolates the logarithm of the relative volatility (and the boiling temperature) by the
/// cubics of `numeric::cubic_table`. The cubics are monotone where the volatility is, so interpolation
/// neither adds nor removes an azeotrope.
/// @par Accuracy
/// within 1e-7 in the vapour's mole fraction and 1e-5 K of the model
/// @par Source
/// Values and slopes of the model, @ref source_excess_gibbs; limit of the slopes @ref source_fritsch_carlson
class [[nodiscard]] equilibrium_curve {
public:
    /// Tabulates the model at a pressure.
    /// @param p absolute pressure at which every mixture boils between 0 and 120 °C: 1.6 to 198 kPa
    /// @throws refusal if the pressure is outside its range
    explicit equilibrium_curve(units::pressure p)
        : equilibrium_curve(p, [](double, auto const& of_the_model) { return of_the_model; }) {}

    /// Tabulates the model at a pressure, with another relative volatility, for example a measured one.
    /// @param p        absolute pressure, as above
    /// @param ln_alpha callable: mole fraction of the liquid and `numeric::value_and_slope<double>` of the
    ///                 logarithm of the model's relative volatility -> the same of the volatility to use
    ///                 instead
    /// @throws refusal if the pressure is outside its range
    template <class Volatility>
    equilibrium_curve(units::pressure p, Volatility const& ln_alpha)
        : pressure_(require_pressure(p)), table_([&](double x) -> table::row {
              auto const e = detail::vle::bubble_at_pressure(x, p.value());
              auto const slope = detail::vle::along_isobar(e);
              numeric::value_and_slope<double> const of_the_model{e.ln_alpha, slope.ln_alpha_x};
              return {{ln_alpha(x, of_the_model), {e.temperature - 273.15, slope.temperature_x}}};
          }) {
        table_.hold_monotone(ln_volatility);
    }

    /// @return the pressure of the curve
    units::pressure pressure() const { return pressure_; }

    /// @name Quantities
    /// @{

    /// @param liquid mole fraction of the liquid
    /// @return mole fraction of the vapour over it
    mole_fraction vapour(mole_fraction liquid) const { return mole_fraction(vapour(liquid.value())); }
    /// @param vapour mole fraction of the vapour
    /// @return mole fraction of the liquid that it rises from: the inverse of `vapour`
    mole_fraction liquid(mole_fraction vapour) const { return mole_fraction(liquid(vapour.value())); }
    /// @param liquid mole fraction of the liquid
    /// @return temperature at which it boils
    units::temperature temperature(mole_fraction liquid) const {
        return celsius(table_.value(liquid.value(), degrees));
    }
    /// @param liquid mole fraction of the liquid
    /// @return relative volatility of ethanol to water
    double relative_volatility(mole_fraction liquid) const {
        return std::exp(table_.value(liquid.value(), ln_volatility));
    }
    /// @}

    /// @name Plain numbers, for inner loops
    /// Of x and y, the mole fractions of ethanol in liquid and vapour, 0 to 1; not checked.
    /// @{

    /// @param x liquid
    /// @return vapour over it
    double vapour(double x) const {
        double const alpha = std::exp(table_.value(x, ln_volatility));
        return alpha * x / (1.0 + (alpha - 1.0) * x);
    }
    /// @param x liquid
    /// @return vapour over it, and its derivative with respect to x
    numeric::value_and_slope<double> vapour_with_slope(double x) const {
        auto const ln = table_.value_and_slope_at(x, ln_volatility);
        double const alpha = std::exp(ln.value);
        double const scale = 1.0 + (alpha - 1.0) * x;
        return {alpha * x / scale, alpha * (1.0 + ln.slope * x * (1.0 - x)) / (scale * scale)};
    }
    /// @param y vapour
    /// @return liquid that gives it: the inverse of `vapour`
    double liquid(double y) const {
        return detail::liquid_below_vapour([this](double x) { return vapour_with_slope(x); }, y, 1.0, 1e-14);
    }
    /// @param x liquid
    /// @return boiling temperature, K
    double temperature(double x) const { return table_.value(x, degrees) + 273.15; }
    /// @param x liquid
    /// @return boiling temperature, K, and its derivative with respect to x
    numeric::value_and_slope<double> temperature_with_slope(double x) const {
        auto const boils = table_.value_and_slope_at(x, degrees);
        return {boils.value + 273.15, boils.slope};
    }
    /// @}

    /// @name In parts, for loops over arrays
    /// `vapour` in three parts, of which only the second one reads the table: the others need no branch.
    /// @{

    /// a place in the table
    using position = numeric::cubic_table<2>::position;
    /// natural logarithms of the relative volatility at the nodes on both sides of a place, and their slopes
    struct neighbours {
        numeric::value_and_slope<double> left;   ///< at the node before
        numeric::value_and_slope<double> right;  ///< at the node behind
    };
    /// @param left index of the node before a place
    /// @return the neighbours of the place
    neighbours around(int left) const {
        return {table_.node(left, ln_volatility), table_.node(left + 1, ln_volatility)};
    }
    /// @param x      liquid
    /// @param nodes  the neighbours of its place
    /// @param within how far it is from the left one to the right one
    /// @return vapour over it
    static double vapour_between(double x, neighbours const& nodes, double within) {
        double const alpha = numeric::exponential(numeric::unit_cubic(nodes.left, nodes.right, within).value);
        return alpha * x / (1.0 + (alpha - 1.0) * x);
    }
    /// @}

private:
    using table = numeric::cubic_table<2>;
    static constexpr std::size_t ln_volatility = 0;  // columns of the table
    static constexpr std::size_t degrees = 1;

    static units::pressure require_pressure(units::pressure p) {
        detail::require_vle_pressure("equilibrium curve", 0.0, p);
        detail::require_vle_pressure("equilibrium curve", 1.0, p);
        return p;
    }

    units::pressure pressure_;
    table table_;
};

}  // namespace aqueth::inline AQUETH_ABI
