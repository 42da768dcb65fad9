// SPDX-License-Identifier: BSL-1.0
// Where the freezing line cuts the range of OIML R 22.
#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/strength.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    double const bottom = correlation::oiml_r22::lowest_celsius;

    std::printf("%% vol    %% mass   freezes at, °C   density from, °C\n");
    for (double q = 0.0; q <= 100.0; q += q < 40.0 ? 2.5 : 10.0) {
        auto const w = to<mass_fraction>(by_volume(q));
        std::printf("%5.1f %9.2f", q, w.percent());
        if (correlation::freezing_point::covers(w.value())) {
            double const ice = freezing_point(w).celsius();
            std::printf("%17.1f%18.1f\n", ice, ice > bottom ? ice : bottom);
        } else {
            std::printf("%17s%18.1f\n", "below -49", bottom);
        }
    }

    double frozen = 0.0;  // at -20 °C
    double liquid = 0.5;
    while (liquid - frozen > 1e-9) {
        double const middle = (frozen + liquid) / 2.0;
        (correlation::freezing_point::celsius(middle) > bottom ? frozen : liquid) = middle;
    }
    std::printf("\nliquid at -20 °C from %.1f %% mass, %.1f %% vol, upwards\n", 100.0 * liquid,
                to<volume_fraction>(mass_fraction(liquid)).percent());
}
