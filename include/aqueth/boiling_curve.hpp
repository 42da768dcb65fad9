// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_pressure.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/excess_gibbs.hpp>
#include <aqueth/numeric/cubic_table.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/units.hpp>

#include <concepts>
#include <cstddef>
#include <utility>

namespace aqueth::inline AQUETH_ABI {

/// The properties of a boiling mixture at one pressure that a column or a still needs. A column evaluates
/// them tens of thousands of times, so they are plain numbers: mole fractions of ethanol, kelvin, and J/mol
/// of the boiling liquid and of the vapour at its dew point. Nothing is checked.
template <class M>
concept boiling_mixture = requires(M const& mixture, double x) {
    { mixture.vapour(x) } -> std::convertible_to<double>;                                // over the liquid x
    { mixture.vapour_with_slope(x) } -> std::same_as<numeric::value_and_slope<double>>;  // and d/dx
    { mixture.temperature(x) } -> std::convertible_to<double>;                           // where x boils
    { mixture.liquid_enthalpy(x) } -> std::same_as<numeric::value_and_slope<double>>;    // and d/dx
    { mixture.vapour_enthalpy(x) } -> std::convertible_to<double>;                       // of the vapour x
};

/// Boiling ethanol and water at one pressure: an equilibrium curve with the enthalpies of liquid and vapour,
/// tabulated in the same way. Construction takes about half a millisecond.
/// @par Accuracy
/// Of the table: as `equilibrium_curve`, and 0.001 J/mol in the enthalpies. Of the enthalpies: as
/// `enthalpy_of_liquid` and `enthalpy_of_vapour`.
class [[nodiscard]] boiling_curve {
public:
    /// @param p absolute pressure, 5 to 170 kPa
    /// @throws refusal if the pressure is outside that range
    explicit boiling_curve(units::pressure p)
        : boiling_curve(equilibrium_curve(detail::require_boiling_pressure(p))) {}
    /// @param equilibrium a curve for 5 to 170 kPa, perhaps of measured points
    /// @throws refusal if its pressure is outside that range
    explicit boiling_curve(equilibrium_curve equilibrium)
        : equilibrium_(checked(std::move(equilibrium))), heats_([this](double x) { return heats_at(x); }) {}

    /// @return the equilibrium alone
    equilibrium_curve const& equilibrium() const { return equilibrium_; }
    /// @return the pressure of the curve
    units::pressure pressure() const { return equilibrium_.pressure(); }

    /// @name Quantities
    /// @{

    /// @param liquid mole fraction of the liquid
    /// @return mole fraction of the vapour over it
    mole_fraction vapour(mole_fraction liquid) const { return equilibrium_.vapour(liquid); }
    /// @param vapour mole fraction of the vapour
    /// @return mole fraction of the liquid that it rises from: the inverse of `vapour`
    mole_fraction liquid(mole_fraction vapour) const { return equilibrium_.liquid(vapour); }
    /// @param liquid mole fraction of the liquid
    /// @return temperature at which it boils
    units::temperature temperature(mole_fraction liquid) const { return equilibrium_.temperature(liquid); }
    /// @}

    /// @name Plain numbers, as a boiling_mixture
    /// Of x and y, the mole fractions of ethanol in liquid and vapour, 0 to 1; not checked.
    /// @{

    /// @param x liquid
    /// @return vapour over it
    double vapour(double x) const { return equilibrium_.vapour(x); }
    /// @param x liquid
    /// @return vapour over it, and its derivative with respect to x
    numeric::value_and_slope<double> vapour_with_slope(double x) const {
        return equilibrium_.vapour_with_slope(x);
    }
    /// @param y vapour
    /// @return liquid that gives it: the inverse of `vapour`
    double liquid(double y) const { return equilibrium_.liquid(y); }
    /// @param x liquid
    /// @return boiling temperature, K
    double temperature(double x) const { return equilibrium_.temperature(x); }
    /// @param x liquid
    /// @return enthalpy of the boiling liquid, J/mol, and its derivative with respect to x
    numeric::value_and_slope<double> liquid_enthalpy(double x) const {
        return heats_.value_and_slope_at(x, of_liquid);
    }
    /// @param y vapour
    /// @return enthalpy of the vapour at its dew point, J/mol
    double vapour_enthalpy(double y) const { return heats_.value(y, of_vapour); }
    /// @}

private:
    using table = numeric::cubic_table<2>;
    static constexpr std::size_t of_liquid = 0;  // columns of the table
    static constexpr std::size_t of_vapour = 1;

    static equilibrium_curve checked(equilibrium_curve equilibrium) {
        detail::require_boiling_pressure(equilibrium.pressure());
        return equilibrium;
    }

    /// enthalpies of the boiling liquid and of the vapour at its dew point, both of composition x
    table::row heats_at(double x) const {
        namespace heat = model::enthalpy;
        auto const boils = equilibrium_.temperature_with_slope(x);
        double const t = boils.value;
        auto const mixing = model::excess_gibbs::enthalpy(x, t);
        double const exchange =
            heat::ethanol_liquid(t) + mixing.ethanol - heat::water_liquid(t) - mixing.water;
        double const liquid_slope = exchange + heat::liquid_heat_capacity(x, t) * boils.slope;

        double const below = liquid(x);
        auto const condenses = equilibrium_.temperature_with_slope(below);
        double const dew = condenses.value;
        double const dew_slope = condenses.slope / vapour_with_slope(below).slope;
        auto const enthalpy = [&](double h) {  // h from here along the dew line
            return heat::vapour(x + h, dew + h * dew_slope, pressure().value());
        };
        double const h = 1e-6;  // rounding 1e-5 J/mol in the slope, curvature less
        return {
            {{heat::liquid(x, t), liquid_slope}, {enthalpy(0.0), (enthalpy(h) - enthalpy(-h)) / (2 * h)}}};
    }

    equilibrium_curve equilibrium_;
    table heats_;
};

}  // namespace aqueth::inline AQUETH_ABI
