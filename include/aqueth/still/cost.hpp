// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

namespace aqueth::inline AQUETH_ABI {

/// Where the heat comes from, and what it costs. Money is a plain number in any currency.
class [[nodiscard]] heat_source {
public:
    /// Electricity. Everything that the meter counts becomes heat; with an element in the pot all of it
    /// arrives.
    /// @param price_per_kilowatt_hour price, 0 or more
    /// @param efficiency              share of it that heats the pot: 1 for an element inside, about 0.7 to
    ///                                0.8 for a plate under the pot (common practice)
    /// @return the source
    /// @throws refusal if an argument is outside its range
    static heat_source electricity(double price_per_kilowatt_hour, double efficiency = 1.0) {
        return heat_source(price_per_kilowatt_hour, efficiency);
    }
    /// Gas that is sold by its energy.
    /// @param price_per_kilowatt_hour price for each kWh of gas, 0 or more
    /// @param efficiency              share of it that heats the pot; common practice for an open burner
    ///                                under a pot is 0.3 to 0.5
    /// @return the source
    /// @throws refusal if an argument is outside its range
    static heat_source gas(double price_per_kilowatt_hour, double efficiency) {
        return heat_source(price_per_kilowatt_hour, efficiency);
    }
    /// Gas in bottles, or another fuel that is sold by its mass.
    /// @param price_per_kilogram price, 0 or more
    /// @param heating_value      heat of its combustion without that of the steam, on the supplier's sheet;
    ///                           propane 46.4 MJ/kg (from memory)
    /// @param efficiency         as above
    /// @return the source
    /// @throws refusal if an argument is outside its range
    static heat_source fuel(double price_per_kilogram, units::specific_energy heating_value,
                            double efficiency) {
        double const per_kilogram = heating_value.value() / kilowatt_hour.value();
        require_range("heat source", argument::heating_value_of_the_fuel, per_kilogram, "kWh/kg", 0.1, 100.0);
        require_range("heat source", argument::price, price_per_kilogram, "a kg", 0.0, unlimited);
        return heat_source(price_per_kilogram / per_kilogram, efficiency);
    }

    /// @return share of the energy bought that heats the pot
    double efficiency() const noexcept { return efficiency_; }
    /// @return price of each kWh that is bought
    double price_per_kilowatt_hour() const noexcept { return price_; }
    /// @param heat heat that the pot gets
    /// @return energy to buy for it
    units::energy bought(units::energy heat) const { return heat / efficiency_; }
    /// @param heat heat that the pot gets
    /// @return its price
    double price_of(units::energy heat) const { return price_ * in(bought(heat), kilowatt_hour); }

private:
    heat_source(double price, double efficiency)
        : price_(require_range("heat source", argument::price, price, "a kWh", 0.0, unlimited)),
          efficiency_(require_range("heat source", argument::efficiency_of_the_heating, efficiency, "", 0.01,
                                    1.0, "share of the energy bought that heats the pot")) {}
    double price_;
    double efficiency_;
};

/// What a run, or several, takes and costs.
struct [[nodiscard]] run_cost {
    units::energy heat;    ///< that the pot gets
    units::energy bought;  ///< for it
    double for_heat;       ///< money for that
    units::volume water;   ///< cooling water
    double for_water;      ///< money for that

    /// @return money in all
    double money() const { return for_heat + for_water; }
    /// @param product what the cost is to be divided by: hearts, or pure alcohol
    /// @return money for each litre of it
    /// @throws refusal if there is none of it
    double money_per_litre(units::volume product) const { return money() / litres(product); }
    /// @param product as above
    /// @return energy to buy for each litre of it
    /// @throws refusal if there is none of it
    units::energy bought_per_litre(units::volume product) const { return bought / litres(product); }

private:
    static double litres(units::volume product) {
        return require_range("cost", argument::collected_volume, in(product, litre), "L", 1e-9, unlimited,
                             "there must be something to divide the cost by");
    }
};

/// Cost of heat and water.
/// @param heat                  heat that the pot gets: `distillation::energy`
/// @param source                where it comes from
/// @param water                 cooling water, 0 or more: `demand_of_condenser`
/// @param price_per_cubic_metre price of the water, 0 or more
/// @return energy and money
/// @throws refusal if an argument is outside its range
inline run_cost cost_of(units::energy heat, heat_source const& source, units::volume water = units::volume(),
                        double price_per_cubic_metre = 0.0) {
    require_range("cost", argument::heat, in(heat, kilowatt_hour), "kWh", 0.0, unlimited);
    require_range("cost", argument::volume, in(water, litre), "L", 0.0, unlimited);
    require_range("cost", argument::price, price_per_cubic_metre, "a m3", 0.0, unlimited);
    return {heat, source.bought(heat), source.price_of(heat), water,
            price_per_cubic_metre * in(water, cubic_metre)};
}

}  // namespace aqueth::inline AQUETH_ABI
