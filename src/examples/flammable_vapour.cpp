// SPDX-License-Identifier: BSL-1.0
// Can the vapour over a spirit be lit in a room of 20 °C, from which temperature on, and how thick is the
// spirit?
#include <aqueth/flammability.hpp>
#include <aqueth/transport.hpp>

#include <cstdio>

char const* in_words(aqueth::vapour_hazard hazard) {
    switch (hazard) {
    case aqueth::vapour_hazard::below_lower_limit: return "too lean to burn";
    case aqueth::vapour_hazard::near_lower_limit: return "treat as flammable";
    case aqueth::vapour_hazard::above_lower_limit: break;
    }
    return "flammable";
}

int main() {
    using namespace aqueth;
    auto const sea_level = 1.0 * standard_atmosphere;
    auto const room = celsius(20.0);
    for (double const percent : {8.0, 12.0, 40.0, 62.0, 95.0}) {
        auto const spirit = by_volume(percent);
        std::printf(
            "%2.0f %% vol at 20 °C: %-18s  lower limit from %4.1f °C, flash point %4.1f °C, %.2f mPa s\n",
            percent, in_words(vapour_hazard_over(spirit, room, sea_level)),
            lower_flammable_temperature(spirit, sea_level).celsius(), flash_point(spirit).celsius(),
            in(viscosity(spirit, room), millipascal_second));
    }
}
