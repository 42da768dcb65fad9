// SPDX-License-Identifier: BSL-1.0
// What to fill into a bottle of 700 mL, by temperature and strength.
#include <aqueth/bottling.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    double const strengths[] = {20.0, 38.0, 40.0, 43.0, 45.0, 50.0, 60.0};

    std::printf("mL to fill for a label volume of 700 mL\n\n°C \\ %% vol");
    for (double const q : strengths) std::printf("%9.0f", q);
    std::printf("\n");
    for (double const t : {5.0, 10.0, 15.0, 18.0, 20.0, 22.0, 25.0, 30.0}) {
        std::printf("%5.0f     ", t);
        for (double const q : strengths) {
            auto const fill = fill_volume(700.0 * millilitre, to<mass_fraction>(by_volume(q)), celsius(t));
            std::printf("%9.2f", in(fill, millilitre));
        }
        std::printf("\n");
    }
}
