// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_pressure.hpp>
#include <aqueth/correlation/fermentation.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/hot_density.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/integration.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <algorithm>
#include <cmath>
#include <optional>

namespace aqueth::inline AQUETH_ABI {

/// A heated pot.
struct vessel {
    /// heat given to the pot, 1 mW to 1 GW; for an electric element its full power
    units::power power;
    /// heat capacity of the empty pot, 0 to 1 GJ/K: about 0.5 kJ/K for each kg of steel, 0.39 kJ/K for each
    /// kg of copper (common practice: the metals' specific heats, rounded)
    units::heat_capacity heat_capacity = units::heat_capacity();
    /// heat lost to the room for each kelvin the pot is warmer, 0 to 1 MW/K: about 10 W/K for each m2 of bare
    /// metal (common practice: air at rest and radiation together)
    units::thermal_conductance loss = units::thermal_conductance();
    units::temperature room = celsius(20.0);  ///< temperature of the room, -40 to 60 °C

    /// Checks the ranges above; every function that heats calls it.
    /// @throws refusal if one of the figures is outside its range
    void require_possible() const {
        require_range("pot", argument::power, power.value(), "W", 1e-3, 1e9, "a pot must be heated");
        require_range("pot", argument::heat_capacity, heat_capacity.value(), "J/K", 0.0, 1e9);
        require_range("pot", argument::heat_loss_coefficient, loss.value(), "W/K", 0.0, 1e6);
        require_range("pot", argument::temperature_of_the_room, room.celsius(), "°C", -40.0, 60.0);
    }
};

/// Heat balance and duration of a warming.
struct [[nodiscard]] heating {
    units::temperature from;  ///< temperature at the start
    units::temperature to;    ///< temperature reached
    units::energy to_liquid;  ///< heat taken up by the charge
    units::energy to_vessel;  ///< heat taken up by the pot
    units::energy lost;       ///< heat lost to the room
    units::energy supplied;   ///< the sum
    units::time duration;     ///< at the pot's power
};

namespace detail {

/// moles of ethanol and water in a parcel, and of extract beside it as sucrose
struct amounts {
    double ethanol, water, solids;
    explicit amounts(wash const& w)
        : ethanol(in(w.liquid().ethanol(), gram) / correlation::molar_mass::ethanol),
          water(in(w.liquid().water(), gram) / correlation::molar_mass::water),
          solids(in(w.solids(), gram) / correlation::fermentation::disaccharide) {}
    double volatiles() const { return ethanol + water; }
    double mole_fraction() const { return ethanol / volatiles(); }
};

}  // namespace detail

/// Temperature at which a wash boils.
/// @param charge   the wash, not empty
/// @param pressure absolute pressure, 5 to 170 kPa
/// @return boiling temperature
/// @throws refusal if the charge is empty, more than half of it extract, or the pressure outside its
///         range
/// @par Accuracy
/// 0.3 K, the spread of laboratories. Extract counts as sucrose by Raoult's law, which raises the boiling
/// point of 10 °P by 0.16 K. Its effect on the vapour's strength is left out.
inline units::temperature boiling_temperature(wash const& charge, units::pressure pressure) {
    detail::require_boiling_pressure(pressure);
    require_range("boiling", argument::mass_of_the_charge, charge.mass().value(), "kg", 1e-9, unlimited);
    require_range("boiling", argument::extract, charge.extract().degrees(), extract::unit, 0.0, 50.0,
                  "Raoult's law for dissolved sugar");
    detail::amounts const n(charge);
    double const share = n.volatiles() / (n.volatiles() + n.solids);
    return kelvin(
        model::vapour_liquid::bubble_at_pressure(n.mole_fraction(), pressure.value() / share).temperature);
}

namespace detail {

/// heat capacity of a charge: one function of the temperature in °C, in J/K
class charge_capacity {
public:
    explicit charge_capacity(wash const& charge)
        : moles_(amounts(charge).volatiles()),
          x_(moles_ > 0.0 ? amounts(charge).mole_fraction() : 0.0),
          solids_(charge.solids().value()) {}
    double operator()(double t) const {
        return moles_ * model::enthalpy::liquid_heat_capacity(x_, t + 273.15) + solids_ * (1673.0 + 7.5 * t);
    }

private:
    double moles_, x_, solids_;
};

}  // namespace detail

/// Temperature that a hot charge and a pot at the temperature of the room take on together.
/// @param charge     the wash; its own temperature does not matter
/// @param pot        the pot
/// @param charged_at temperature with which the charge comes into the pot, 0 to 115 °C
/// @return temperature of both, when the pot has taken up its heat and before any is lost
/// @throws refusal if the temperature is outside that range, or a figure of the pot
/// @par Accuracy
/// as `heat`
inline units::temperature temperature_in_the_pot(wash const& charge, vessel const& pot,
                                                 units::temperature charged_at) {
    pot.require_possible();
    double const hot = require_range("heating", argument::temperature_of_the_charge, charged_at.celsius(),
                                     "°C", 0.0, 115.0, "where the heat capacities hold");
    double const room = pot.room.celsius(), metal = pot.heat_capacity.value();
    detail::charge_capacity const capacity(charge);
    auto const excess = [&](double t) {  // heat that the charge gives less what the metal takes, J
        double const given =
            (hot - t) * numeric::simpson([&](double s) { return capacity(t + s * (hot - t)); }, 0.0, 1.0, 8);
        return given - metal * (t - room);
    };
    if (metal == 0.0 || hot == room) return charged_at;
    return celsius(numeric::bracketed_root(excess, (std::min)(hot, room), (std::max)(hot, room), 1e-9));
}

/// Heats a charge in a pot.
/// @param charge the wash
/// @param pot    the pot
/// @param target temperature wanted, from that of the charge to 115 °C; its boiling temperature at most,
///               which is not checked here
/// @param start  temperature of charge and pot, 0 °C or more; unless given that of the charge. A charge that
///               is filled in hot: `temperature_in_the_pot`
/// @return heat and time; nothing evaporates
/// @throws refusal if the target is outside that range or out of reach of the pot's power
/// @par Accuracy
/// Heat capacity of the mixture 1 %; of extract 1.67 kJ/(kg K) + 0.0075 per °C (sugar handbooks, read second
/// hand). In practice the loss coefficient dominates.
/// @par Source
/// @ref source_wash for the extract
inline heating heat(wash const& charge, vessel const& pot, units::temperature target,
                    units::temperature start) {
    pot.require_possible();
    require_range("heating", argument::temperature_wanted, target.celsius(), "°C", start.celsius(), 115.0,
                  "from that of the charge to where the heat capacities hold");
    double const loss = pot.loss.value();
    if (loss > 0.0) {
        double const warmest = pot.room.celsius() + pot.power.value() / loss;
        require_range("heating", argument::temperature_wanted, target.celsius(), "°C", start.celsius(),
                      warmest - 1e-6, "the pot loses all its power to the room at the upper bound");
    }
    detail::charge_capacity const capacity(charge);  // J/K
    // time = integral of C dT/(power - loss (T - room)). The power left for heating falls linearly with the
    // temperature and may become tiny, so the variable of integration is its logarithm. C varies smoothly
    // there, however near the target is to the highest reachable temperature.
    double const rise = (target - start).value();
    double const at_start = pot.power.value() - loss * (start - pot.room).value();
    double const at_target = pot.power.value() - loss * (target - pot.room).value();
    double const logarithm = std::log1p(loss * rise / at_target);
    double const mean =
        logarithm > 1e-200 ? loss * rise / logarithm : at_start;  // logarithmic mean of the two
    auto const warmed = [&](double share) {  // share of the rise after that share of the time
        return loss * rise / at_start > 1e-9 ? std::expm1(-share * logarithm) / std::expm1(-logarithm)
                                             : share;
    };
    auto const capacity_after = [&](double share) { return capacity(start.celsius() + share * rise); };
    constexpr int intervals = 400;
    double const liquid = rise * numeric::simpson(capacity_after, 0.0, 1.0, intervals);
    double const seconds =
        rise / mean *
        numeric::simpson(
            [&](double share) { return capacity_after(warmed(share)) + pot.heat_capacity.value(); }, 0.0, 1.0,
            intervals);
    units::time const duration = seconds * second;
    units::energy const to_liquid = liquid * joule;
    units::energy const to_vessel = pot.heat_capacity * (target - start);
    units::energy const supplied = pot.power * duration;
    return {start, target, to_liquid, to_vessel, supplied - to_liquid - to_vessel, supplied, duration};
}

/// Heats a charge in a pot of its own temperature.
/// @param charge the wash at the temperature it has
/// @param pot    the pot, at the same temperature
/// @param target temperature wanted, as above
/// @return heat and time, as above
/// @throws refusal as above
inline heating heat(wash const& charge, vessel const& pot, units::temperature target) {
    return heat(charge, pot, target, charge.temperature());
}

namespace detail {

/// heats a charge to where it boils; if it is filled in hot, the metal of the pot takes its share first
inline heating heat_to_boiling(wash const& charge, vessel const& pot, units::temperature boiling,
                               std::optional<units::temperature> charged_at) {
    if (!charged_at) return aqueth::heat(charge, pot, boiling);
    require_range("heating", argument::temperature_of_the_charge, charged_at->celsius(), "°C", 0.0,
                  boiling.celsius(), "below boiling");
    return aqueth::heat(charge, pot, boiling, temperature_in_the_pot(charge, pot, *charged_at));
}

}  // namespace detail

/// Heats a charge to its boiling temperature.
/// @param charge     the wash, not empty
/// @param pot        the pot
/// @param pressure   absolute pressure, 5 to 170 kPa
/// @param charged_at temperature with which the charge comes into a pot of the room's temperature, from 0 °C
///                   to boiling; unless given, charge and pot have the charge's own temperature
/// @return heat and time
/// @throws refusal if an argument is outside its range or the pot's power too small
/// @par Accuracy
/// as `heat`
inline heating heat_to_boil(wash const& charge, vessel const& pot, units::pressure pressure,
                            std::optional<units::temperature> charged_at = std::nullopt) {
    return detail::heat_to_boiling(charge, pot, boiling_temperature(charge, pressure), charged_at);
}

/// Volume of a charge at its boiling point: what the pot must hold, before foam and surging, which need head
/// space of their own.
/// @param charge   the wash, not empty
/// @param pressure absolute pressure, 5 to 140 kPa
/// @return volume of the boiling charge
/// @throws refusal as `boiling_temperature`, or if the charge boils above 110 °C
/// @par Accuracy
/// As `density` at that temperature, 0.15 % at 100 °C. Extract is taken to expand as the liquid does: for 10
/// °P within 0.3 % (an estimate).
/// @par Source
/// @ref source_hot_density
inline units::volume volume_at_boil(wash const& charge, units::pressure pressure) {
    namespace hot = model::hot_density;
    double const boils = boiling_temperature(charge, pressure).celsius();
    double const w = charge.liquid().composition().value();
    require_range("volume at the boil", argument::temperature, boils, "°C", 0.0, hot::highest_celsius,
                  "where the density is known");
    units::temperature const reference = celsius(20.0);
    double const expansion =
        density(charge.liquid().composition(), reference).value() / hot::liquid_density(w, boils);
    return charge.mass() / charge.density(reference) * expansion;
}

}  // namespace aqueth::inline AQUETH_ABI
