// SPDX-License-Identifier: BSL-1.0
// At which room temperature can the vapour over a spirit be lit, and how thick is the spirit there?
#include <aqueth/flammability.hpp>
#include <aqueth/transport.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    auto const sea_level = 1.0 * standard_atmosphere;
    for (double const percent : {12.0, 40.0, 62.0, 95.0}) {
        auto const spirit = by_volume(percent);
        auto const limit = lower_flammable_temperature(spirit, sea_level);
        bool const at_20 =
            vapour_hazard_over(spirit, celsius(20.0), sea_level) == vapour_hazard::above_lower_limit;
        std::printf(
            "%2.0f %% vol: lower limit from %4.1f °C, flash point %4.1f °C, at 20 °C %s, %.2f mPa s\n",
            percent, limit.celsius(), flash_point(spirit).celsius(),
            at_20 ? "flammable" : "treat as flammable",
            in(viscosity(spirit, celsius(20.0)), millipascal_second));
    }
}
