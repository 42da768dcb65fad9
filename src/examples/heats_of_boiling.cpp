// SPDX-License-Identifier: BSL-1.0
// Heat to bring a charge to the boil, and to boil a part of it away.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const pressure = pressure_at_altitude(430.0 * metre);
    auto const charge = parcel::of(20.0 * litre, by_volume(9.0), celsius(18.0));
    auto const boil = bubble_point(charge.strength(), pressure);

    auto const cold = enthalpy_of_liquid(charge.strength(), charge.temperature());
    auto const hot = enthalpy_of_liquid(charge.strength(), boil.temperature);
    auto const first_vapour = enthalpy_of_vapour(boil.vapour, boil.temperature, pressure);
    auto const its_condensate = enthalpy_of_liquid(boil.vapour, celsius(20.0));

    std::printf("%.2f kg of wash at 18 °C boil at %.2f °C under %.2f kPa\n", in(charge.mass(), kilogram),
                boil.temperature.celsius(), in(pressure, kilopascal));
    std::printf(
        "heat capacity        %.3f kJ/(kg K) at 18 °C\n",
        in(specific_heat_capacity(charge.strength(), charge.temperature()), joule_per_kilogram_kelvin) /
            1000.0);
    std::printf("heat to the boil     %.2f kWh\n", in(charge.mass() * (hot - cold), kilowatt_hour));
    std::printf("first vapour         %.1f %% vol as condensate\n",
                to<volume_fraction>(boil.vapour).percent());
    std::printf("to condense and cool %.0f kJ for each kg of it, down to 20 °C\n",
                in(first_vapour - its_condensate, joule_per_kilogram) / 1000.0);
    // [body]
}
