// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <compare>
#include <concepts>

#include <boost/units/quantity.hpp>
#include <boost/units/systems/si/amount.hpp>
#include <boost/units/systems/si/energy.hpp>
#include <boost/units/systems/si/length.hpp>
#include <boost/units/systems/si/mass.hpp>
#include <boost/units/systems/si/mass_density.hpp>
#include <boost/units/systems/si/power.hpp>
#include <boost/units/systems/si/pressure.hpp>
#include <boost/units/systems/si/temperature.hpp>
#include <boost/units/systems/si/time.hpp>
#include <boost/units/systems/si/volume.hpp>

/// Quantity types of the public interface: Boost.Units quantities of double, and the affine temperature.
namespace aqueth::inline AQUETH_ABI::units {

namespace si = boost::units::si;

using mass = boost::units::quantity<si::mass>;                           ///< mass, held in kg
using amount = boost::units::quantity<si::amount>;                       ///< amount of substance, held in mol
using volume = boost::units::quantity<si::volume>;                       ///< volume, held in m3
using mass_density = boost::units::quantity<si::mass_density>;           ///< density, held in kg/m3
using temperature_difference = boost::units::quantity<si::temperature>;  ///< difference of temperatures, K
/// volume per amount of substance, held in m3/mol
using molar_volume = decltype(volume() / boost::units::quantity<si::amount>());
using pressure = boost::units::quantity<si::pressure>;  ///< absolute pressure, held in Pa
using length = boost::units::quantity<si::length>;      ///< length, held in m
using time = boost::units::quantity<si::time>;          ///< duration, held in s
using energy = boost::units::quantity<si::energy>;      ///< energy, held in J
using power = boost::units::quantity<si::power>;        ///< energy per time, held in W
/// heat capacity of a body, held in J/K
using heat_capacity = decltype(energy() / temperature_difference());
/// volume that flows in a time, held in m3/s
using volume_flow = decltype(volume() / time());
/// heat a body loses in a time for each kelvin it is warmer, held in W/K
using thermal_conductance = decltype(power() / temperature_difference());
/// energy per amount of substance, held in J/mol
using molar_energy = decltype(energy() / boost::units::quantity<si::amount>());
/// heat capacity per amount of substance, held in J/(mol K)
using molar_heat_capacity = decltype(molar_energy() / temperature_difference());
/// energy per mass, held in J/kg
using specific_energy = decltype(energy() / mass());
/// heat capacity per mass, held in J/(kg K)
using specific_heat_capacity = decltype(specific_energy() / temperature_difference());
/// relative change of volume per kelvin (cubic expansion), held in 1/K
using cubic_expansion = decltype(1.0 / temperature_difference());

/// A temperature: a point on a scale, not an amount.
///
/// Points can be compared and subtracted (giving a difference) and shifted by a difference. They cannot be
/// added or scaled, because 20 °C + 20 °C and 2 x 20 °C mean nothing. The value is held in degrees Celsius,
/// the unit of every source the library uses, so `celsius(20)` is exactly 20 in their formulas.
class [[nodiscard]] temperature {
public:
    /// @param degrees temperature in °C; any value (functions check their own ranges)
    /// @return the temperature
    static constexpr temperature from_celsius(double degrees) noexcept { return temperature(degrees); }

    /// @return the temperature in °C
    constexpr double celsius() const noexcept { return celsius_; }
    /// @return the thermodynamic temperature in K
    constexpr double kelvin() const noexcept { return celsius_ + 273.15; }
    /// @return the temperature in °F
    constexpr double fahrenheit() const noexcept { return celsius_ * 9.0 / 5.0 + 32.0; }

    /// @return the difference of two temperatures
    friend constexpr temperature_difference operator-(temperature a, temperature b) {
        return temperature_difference::from_value(a.celsius_ - b.celsius_);
    }
    /// @return the temperature a difference above this one
    friend constexpr temperature operator+(temperature a, temperature_difference d) {
        return temperature(a.celsius_ + d.value());
    }
    /// @return the temperature a difference below this one
    friend constexpr temperature operator-(temperature a, temperature_difference d) {
        return temperature(a.celsius_ - d.value());
    }
    friend constexpr auto operator<=>(temperature, temperature) = default;  ///< colder is less

private:
    explicit constexpr temperature(double degrees) noexcept : celsius_(degrees) {}
    double celsius_;
};

}  // namespace aqueth::inline AQUETH_ABI::units

// Here, because arguments of these types make the compiler look here. Boost has only the operators for
// doubles.
namespace boost::units {

/// A whole number that counts units.
template <class T>
concept whole_number = std::integral<T> && !std::same_as<T, bool>;

/// @param number how many
/// @param unit   of a unit or another quantity: `2 * litre`
/// @return the multiple
template <whole_number Number, class Unit>
constexpr quantity<Unit> operator*(Number number, quantity<Unit> const& unit) {
    return static_cast<double>(number) * unit;
}
/// @param unit   a unit or another quantity
/// @param number how many of it
/// @return the multiple
template <whole_number Number, class Unit>
constexpr quantity<Unit> operator*(quantity<Unit> const& unit, Number number) {
    return unit * static_cast<double>(number);
}
/// @param all    a quantity
/// @param number into how many parts
/// @return one part
template <whole_number Number, class Unit>
constexpr quantity<Unit> operator/(quantity<Unit> const& all, Number number) {
    return all / static_cast<double>(number);
}

}  // namespace boost::units

namespace aqueth::inline AQUETH_ABI {

/// @param degrees temperature in °C
/// @return the temperature; not checked here, each function checks the range of its own source
constexpr units::temperature celsius(double degrees) noexcept {
    return units::temperature::from_celsius(degrees);
}
/// @param degrees temperature in K
/// @return the temperature; not checked here
constexpr units::temperature kelvin(double degrees) noexcept { return celsius(degrees - 273.15); }
/// @param degrees temperature in °F
/// @return the temperature; not checked here
constexpr units::temperature fahrenheit(double degrees) noexcept {
    return celsius((degrees - 32.0) * 5.0 / 9.0);
}

/// @name Units
/// Each is one unit of its quantity: `2 * litre` makes a volume, `in(v, millilitre)` reads one.
/// @{
inline constexpr auto kilogram = units::mass::from_value(1.0);                ///< kg
inline constexpr auto gram = units::mass::from_value(1e-3);                   ///< g
inline constexpr auto pound = units::mass::from_value(0.45359237);            ///< avoirdupois pound, exact
inline constexpr auto ounce = units::mass::from_value(0.028349523125);        ///< avoirdupois ounce, exact
inline constexpr auto mole = units::amount::from_value(1.0);                  ///< mol
inline constexpr auto kilomole = units::amount::from_value(1000.0);           ///< kmol
inline constexpr auto cubic_metre = units::volume::from_value(1.0);           ///< m3
inline constexpr auto hectolitre = units::volume::from_value(0.1);            ///< hL
inline constexpr auto litre = units::volume::from_value(1e-3);                ///< L
inline constexpr auto centilitre = units::volume::from_value(1e-5);           ///< cL
inline constexpr auto millilitre = units::volume::from_value(1e-6);           ///< mL
inline constexpr auto us_gallon = units::volume::from_value(0.003785411784);  ///< 231 cubic inches, exact
inline constexpr auto us_fluid_ounce =
    units::volume::from_value(29.5735295625e-6);                                ///< 1/128 US gallon, exact
inline constexpr auto imperial_gallon = units::volume::from_value(0.00454609);  ///< 4.54609 L, exact
inline constexpr auto kilogram_per_cubic_metre = units::mass_density::from_value(1.0);      ///< kg/m3
inline constexpr auto gram_per_cubic_centimetre = units::mass_density::from_value(1000.0);  ///< g/cm3
inline constexpr auto cubic_centimetre_per_mole = units::molar_volume::from_value(1e-6);    ///< cm3/mol
inline constexpr auto kelvins = units::temperature_difference::from_value(1.0);     ///< K, a difference
inline constexpr auto per_kelvin = units::cubic_expansion::from_value(1.0);         ///< 1/K
inline constexpr auto newton_per_square_metre = units::pressure::from_value(1.0);   ///< Pa
inline constexpr auto hectopascal = units::pressure::from_value(100.0);             ///< hPa, the same as mbar
inline constexpr auto kilopascal = units::pressure::from_value(1000.0);             ///< kPa
inline constexpr auto bar = units::pressure::from_value(1e5);                       ///< bar, exact
inline constexpr auto standard_atmosphere = units::pressure::from_value(101325.0);  ///< atm, exact
/// mmHg, conventional: 13.5951 g/cm3 under 9.80665 m/s2
inline constexpr auto millimetre_of_mercury = units::pressure::from_value(133.322387415);
/// inHg, conventional: 25.4 mmHg
inline constexpr auto inch_of_mercury = units::pressure::from_value(25.4 * 133.322387415);
inline constexpr auto torr = units::pressure::from_value(101325.0 / 760.0);  ///< Torr, exact
/// psi: a pound under 9.80665 m/s2 on a square inch
inline constexpr auto pound_force_per_square_inch =
    units::pressure::from_value(0.45359237 * 9.80665 / (0.0254 * 0.0254));
inline constexpr auto metre = units::length::from_value(1.0);                               ///< m
inline constexpr auto foot = units::length::from_value(0.3048);                             ///< ft, exact
inline constexpr auto second = units::time::from_value(1.0);                                ///< s
inline constexpr auto minute = units::time::from_value(60.0);                               ///< min
inline constexpr auto hour = units::time::from_value(3600.0);                               ///< h
inline constexpr auto joule = units::energy::from_value(1.0);                               ///< J
inline constexpr auto kilojoule = units::energy::from_value(1000.0);                        ///< kJ
inline constexpr auto megajoule = units::energy::from_value(1e6);                           ///< MJ
inline constexpr auto kilowatt_hour = units::energy::from_value(3.6e6);                     ///< kWh, exact
inline constexpr auto watt = units::power::from_value(1.0);                                 ///< W
inline constexpr auto kilowatt = units::power::from_value(1000.0);                          ///< kW
inline constexpr auto joule_per_kelvin = units::heat_capacity::from_value(1.0);             ///< J/K
inline constexpr auto watt_per_kelvin = units::thermal_conductance::from_value(1.0);        ///< W/K
inline constexpr auto joule_per_mole = units::molar_energy::from_value(1.0);                ///< J/mol
inline constexpr auto joule_per_mole_kelvin = units::molar_heat_capacity::from_value(1.0);  ///< J/(mol K)
inline constexpr auto joule_per_kilogram = units::specific_energy::from_value(1.0);         ///< J/kg
/// J/(kg K)
inline constexpr auto joule_per_kilogram_kelvin = units::specific_heat_capacity::from_value(1.0);
/// @}

/// Reads a quantity as a number of units.
/// @param quantity what to read
/// @param unit     a unit of the same dimension
/// @return how many units the quantity is: `in(2.0 * litre, millilitre)` is 2000
template <class Unit>
[[nodiscard]] constexpr double in(boost::units::quantity<Unit> const& quantity,
                                  boost::units::quantity<Unit> const& unit) {
    return quantity.value() / unit.value();
}

/// Reads a temperature on a scale. The scale is named by the function that makes a temperature of it.
/// @param t     a temperature
/// @param scale `celsius`, `kelvin` or `fahrenheit`, or another function that is linear
/// @return the number on that scale: `in(celsius(20), fahrenheit)` is 68
[[nodiscard]] constexpr double in(units::temperature t, units::temperature (*scale)(double)) {
    if (scale == celsius) return t.celsius();
    if (scale == kelvin) return t.kelvin();
    if (scale == fahrenheit) return t.fahrenheit();
    return (t - scale(0.0)) / (scale(1.0) - scale(0.0));
}

}  // namespace aqueth::inline AQUETH_ABI
