// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/boiling_curve.hpp>
#include <aqueth/caloric.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/modified_raoult.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/still/head.hpp>
#include <aqueth/still/run.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>

namespace aqueth::inline AQUETH_ABI {

/// Temperatures of a condenser: of its water and of the liquid that leaves it.
struct cooling_temperatures {
    units::temperature water_in = celsius(15.0);   ///< water that enters, 0 to 40 °C
    units::temperature water_out = celsius(45.0);  ///< water that leaves, warmer, to 95 °C
    units::temperature receiver = celsius(20.0);   ///< distillate in the receiver, warmer than `water_in`

    /// Checks the ranges above; every function of this header calls it.
    /// @throws refusal if a temperature is outside its range
    void require_possible() const {
        char const* const property = "cooling water";
        require_range(property, argument::temperature_of_the_water_in, water_in.celsius(), "°C", 0.0, 40.0);
        require_range(property, argument::temperature_of_the_water_out, water_out.celsius(), "°C",
                      water_in.celsius() + least_difference, 95.0, "from that of the water in upwards");
        require_range(property, argument::temperature_of_the_receiver, receiver.celsius(), "°C",
                      water_in.celsius() + least_difference, 95.0,
                      "above that of the water in, which cools the distillate last");
    }

    static constexpr double least_difference = 0.1;  ///< least approach of two temperatures, K
};

/// What a condenser takes at a moment. The water flows against the vapour: it first cools the condensate,
/// then it condenses the vapour.
struct [[nodiscard]] condenser_demand {
    units::power condensing;                   ///< heat of the vapour, from its dew point to its bubble point
    units::power cooling;                      ///< heat of the condensate, from there on
    units::volume_flow water;                  ///< water, measured as it enters
    units::temperature water_between;          ///< water between cooling and condensing
    units::thermal_conductance condensing_ua;  ///< heat transfer coefficient times area, to condense
    units::thermal_conductance cooling_ua;     ///< the same, to cool the condensate

    /// @return all heat that the water takes
    units::power heat() const { return condensing + cooling; }
    /// @return heat transfer coefficient times area of both parts
    units::thermal_conductance ua() const { return condensing_ua + cooling_ua; }
};

namespace detail {

/// logarithmic mean of two positive numbers
inline double logarithmic_mean(double a, double b) {
    double const r = (a - b) / b;
    return r == 0.0 ? b : (a - b) / std::log1p(r);
}

/// heat that a kilogram of water takes from the first temperature to the second, J/kg
inline double heat_of_water(units::temperature from, units::temperature to_) {
    return (enthalpy_of_liquid(mass_fraction(0.0), to_) - enthalpy_of_liquid(mass_fraction(0.0), from))
        .value();
}

/// heat over the logarithmic mean of the differences of temperature at both ends
inline units::thermal_conductance exchanger(double watts, units::temperature hot_in,
                                            units::temperature hot_out, units::temperature cold_in,
                                            units::temperature cold_out) {
    double const mean = logarithmic_mean((hot_in - cold_out).value(), (hot_out - cold_in).value());
    return watts / mean * watt_per_kelvin;
}

/// volume of water, as it enters, that takes so much heat
inline units::volume water_for(units::energy heat, cooling_temperatures const& t) {
    return heat.value() / heat_of_water(t.water_in, t.water_out) * kilogram /
           density(mass_fraction(0.0), t.water_in);
}

/// refuses water that would leave warmer than the vapour
inline void require_colder(cooling_temperatures const& t, units::temperature vapour) {
    require_range("cooling water", argument::temperature_of_the_water_out, t.water_out.celsius(), "°C",
                  t.water_in.celsius(), vapour.celsius() - cooling_temperatures::least_difference,
                  "colder than the vapour that it condenses");
}

/// Vapour and liquid above the column at a moment. Moles in a second, mole fractions, J, K.
struct top_of_still {
    double taken;      ///< moles of distillate
    double condensed;  ///< moles of vapour that reach the condenser
    double passed;     ///< moles of vapour that pass the neck
    double vapour;     ///< their mole fraction
    double column;     ///< mole fraction of the vapour that leaves the column
    top_of_still(run_point const& p, boiling_curve const& curve) {
        double const d = p.distillate.value();
        taken = p.take_off.value() / mass_of_moles(1.0, d).volume();
        condensed = taken * (1.0 + p.reflux_ratio);
        double const all = p.vapour_flow.value(), heat = p.partial_condenser.value();
        double const back = curve.liquid(d);  // what runs back from a partial condenser
        auto const mixed = [&](double moles) { return d + (1.0 - condensed / moles) * (back - d); };
        passed = condensed;
        if (heat > 0.0) {
            auto const excess = [&](double moles) {
                return moles * curve.vapour_enthalpy(mixed(moles)) -
                       (moles - condensed) * curve.liquid_enthalpy(back).value -
                       condensed * curve.vapour_enthalpy(d) - heat;
            };
            double const found = numeric::bracketed_root(excess, condensed, all, 1e-13 * all);
            passed = std::isnan(found) ? all : found;  // NaN: rounding; all of it passes the neck
        }
        vapour = mixed(passed);
        column = vapour + (1.0 - passed / all) * (curve.liquid(vapour) - vapour);
    }
};

}  // namespace detail

/// What the total condenser takes at a moment of a run.
///
/// The vapour condenses from its dew point to its bubble point. The condensate then cools: the distillate to
/// the receiver, the reflux to its own temperature, if it has one. Each part is a counterflow exchanger with
/// the logarithmic mean of the differences of temperature at its ends. A reflux cools with the distillate, so
/// the area to cool it is on the safe side.
/// @param p     the moment
/// @param h     the head of the still, for the temperature of its reflux
/// @param t     temperatures of water and receiver
/// @param curve the equilibrium of the run
/// @return heats, water, and the heat transfer coefficient times area that they need
/// @throws refusal if a temperature is outside its range, the water would leave warmer than the vapour, or
///                 the
///         receiver would be warmer than the boiling distillate
/// @par Accuracy
/// Of the heats 1 %. A condenser that is fouled, or in which the water does not flow against the vapour,
/// needs more area.
/// @par Source
/// @ref source_columns (logarithmic mean)
inline condenser_demand demand_of_condenser(run_point const& p, head const& h, cooling_temperatures const& t,
                                            boiling_curve const& curve) {
    t.require_possible();
    detail::require_colder(t, p.vapour);
    double const d = p.distillate.value();
    units::temperature const bubble = kelvin(curve.temperature(d));
    require_range("cooling water", argument::temperature_of_the_receiver, t.receiver.celsius(), "°C",
                  t.water_in.celsius(), bubble.celsius() - cooling_temperatures::least_difference,
                  "below the boiling point of the distillate");
    auto const colder = [&](units::temperature end) {  // J/mol
        return (std::max)(0.0, model::enthalpy::liquid(d, bubble.kelvin()) -
                                   model::enthalpy::liquid(d, end.kelvin()));
    };
    detail::top_of_still const top(p, curve);
    double const reflux =
        h.reflux_temperature() ? (top.condensed - top.taken) * colder(*h.reflux_temperature()) : 0.0;
    double const condensing = p.condenser.value() - reflux;
    double const cooling = reflux + top.taken * colder(t.receiver);
    double const water = (condensing + cooling) / detail::heat_of_water(t.water_in, t.water_out);  // kg/s
    units::temperature const between =
        temperature_of_liquid(mass_fraction(0.0), enthalpy_of_liquid(mass_fraction(0.0), t.water_in) +
                                                      cooling / water * joule_per_kilogram);
    return {condensing * watt,
            cooling * watt,
            detail::water_for((condensing + cooling) * joule, t) / second,
            between,
            detail::exchanger(condensing, p.vapour, bubble, between, t.water_out),
            detail::exchanger(cooling, bubble, t.receiver, t.water_in, between)};
}

/// What a partial condenser (a dephlegmator) takes at a moment of a run. What it condenses runs back at its
/// boiling point. The water flows against the vapour, which cools from its dew point at the entry to that at
/// the exit.
/// @param p     the moment
/// @param t     temperatures of its water; that of the receiver does not matter here
/// @param curve the equilibrium of the run
/// @return as `demand_of_condenser`, without any cooling of the condensate; all 0 if there is none
/// @throws refusal as `demand_of_condenser`
/// @par Accuracy
/// as `demand_of_condenser`
/// @par Source
/// @ref source_columns (logarithmic mean)
inline condenser_demand demand_of_partial_condenser(run_point const& p, cooling_temperatures const& t,
                                                    boiling_curve const& curve) {
    t.require_possible();
    detail::top_of_still const top(p, curve);
    units::temperature const enters = kelvin(curve.temperature(curve.liquid(top.vapour)));
    detail::require_colder(t, p.vapour);
    double const heat = p.partial_condenser.value();
    return {heat * watt,
            units::power(),
            detail::water_for(heat * joule, t) / second,
            t.water_in,
            detail::exchanger(heat, enters, p.vapour, t.water_in, t.water_out),
            units::thermal_conductance()};
}

/// Heat and water of a condenser in a whole run.
struct [[nodiscard]] condenser_total {
    units::energy condensing;  ///< heat of the vapour, and of a reflux that comes back cold
    units::energy cooling;     ///< heat of the distillate, from its bubble point to the receiver
    units::volume water;       ///< water, measured as it enters

    /// @return all heat that the water takes
    units::energy heat() const { return condensing + cooling; }
};

/// What the total condenser takes in a whole run.
/// @param r the run
/// @param t temperatures of water and receiver
/// @return heat and water
/// @throws refusal if a temperature is outside its range
/// @par Accuracy
/// Of the heats 1 %. The heat of mixing of early and late distillate counts as taken by the condenser: below
/// 0.1 % of the whole.
inline condenser_total demand_of_condenser(distillation const& r, cooling_temperatures const& t) {
    t.require_possible();
    units::energy cold;
    for (run_fraction const& f : r.fractions)
        cold += f.product.mass() * enthalpy_of_liquid(f.product.composition(), t.receiver);
    units::energy const cooling = r.heat.with_distillate - cold;
    return {r.heat.condenser, cooling, detail::water_for(r.heat.condenser + cooling, t)};
}

/// What a partial condenser takes in a whole run.
/// @param r the run
/// @param t temperatures of its water; that of the receiver does not matter here
/// @return heat and water
/// @throws refusal if a temperature is outside its range
inline condenser_total demand_of_partial_condenser(distillation const& r, cooling_temperatures const& t) {
    t.require_possible();
    return {r.heat.partial_condenser, units::energy(), detail::water_for(r.heat.partial_condenser, t)};
}

/// The vapour that leaves a column, as makers of plates and packing rate it.
struct [[nodiscard]] vapour_load {
    mole_fraction composition;       ///< ethanol in the vapour
    units::temperature temperature;  ///< its dew point
    units::mass_density density;     ///< of the vapour
    units::volume_flow flow;         ///< of the vapour
    units::velocity velocity;        ///< flow over the empty column's cross section
    /// velocity times the square root of the density, Pa^0.5. It compares vapours of different density: drag
    /// goes with density and the square of the velocity.
    double f_factor;
};

/// Load of the top of a column, or of a neck on a pot, at a moment of a run.
/// @param p        the moment
/// @param diameter inner diameter, 1 mm to 10 m
/// @param curve    the equilibrium of the run
/// @return velocity and F-factor, to compare with the maker's limits
/// @throws refusal if the diameter is outside its range
/// @par Accuracy
/// Of the flow 1 %, of the vapour's density 0.3 %. Reflux that comes back cold condenses more vapour on the
/// top plate; the plate below carries that much more.
/// @par Source
/// @ref source_columns (F-factor); virial coefficients as the equilibrium
inline vapour_load load_at_top(run_point const& p, units::length diameter, boiling_curve const& curve) {
    require_range("column", argument::diameter_of_the_column, in(diameter, 1e-3 * metre), "mm", 1.0, 1e4);
    double const y = detail::top_of_still(p, curve).column;
    units::temperature const t = kelvin(curve.temperature(curve.liquid(y)));
    double const volume =
        model::modified_raoult::molar_volume(y, t.kelvin(), curve.pressure().value());  // m3/mol
    double const mass =
        1e-3 * (y * correlation::molar_mass::ethanol + (1.0 - y) * correlation::molar_mass::water);
    constexpr double pi = 3.14159265358979323846;
    double const flow = p.vapour_flow.value() * volume;  // m3/s
    double const velocity = flow / (0.25 * pi * diameter.value() * diameter.value());
    return {mole_fraction(y),
            t,
            mass / volume * kilogram_per_cubic_metre,
            flow * cubic_metre / second,
            velocity * metre / second,
            velocity * std::sqrt(mass / volume)};
}

}  // namespace aqueth::inline AQUETH_ABI
