// SPDX-License-Identifier: BSL-1.0
// One spirit, many instruments: what each shows in it, and what each reading leads back to.
#include <aqueth/hydrometer.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/strength.hpp>

#include <cstdio>

namespace {

using namespace aqueth;

double number(units::mass_density mark) { return mark.value(); }
double number(specific_gravity mark) { return mark.value(); }
double number(strength_basis auto mark) { return mark.number(); }

template <class Scale>
void show(char const* name, int decimals, hydrometer<Scale> const& instrument) {
    auto const spirit = to<mass_fraction>(by_volume(62.0));
    Scale const reading = instrument.reading(spirit, celsius(12.0));
    auto const back = instrument.template strength<volume_fraction>(reading, celsius(12.0));
    std::printf("%-34s%9.*f%22.2f\n", name, decimals, number(reading), back.percent());
}

}  // namespace

int main() {
    std::printf("scale                             shows, 12 °C   %% vol at 20 °C\n");
    // [body]
    show("% vol at 20 °C", 2, alcoholometer{});
    show("% vol at 15 °C", 2, hydrometer<basic_volume_fraction<at_15_celsius>>{});
    show("% vol at 60 °F", 2, hydrometer<basic_volume_fraction<at_60_fahrenheit>>{});
    show("US proof at 60 °F", 2, proof_hydrometer{});
    show("% mass, for 20 °C", 2, hydrometer<mass_fraction>{celsius(20.0)});
    show("kg/m3, for 20 °C", 2, density_hydrometer{celsius(20.0)});
    show("kg/m3, for 15 °C", 2, density_hydrometer{celsius(15.0)});
    show("sg 20/20 °C in vacuo", 5, gravity_hydrometer{{celsius(20.0), celsius(20.0)}});
    show("sg 60/60 °F in air", 5, gravity_hydrometer{{fahrenheit(60.0), fahrenheit(60.0), medium::air}});
    show("% vol at 20 °C, borosilicate", 2, alcoholometer{borosilicate_glass});
    // [body]
}
