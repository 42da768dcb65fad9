// SPDX-License-Identifier: BSL-1.0
// Doubt of a strength from 1 % in the sugar's volume, and the strength that sugar hides.
#include <aqueth/sweetening.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    std::puts("% vol   g/L   doubt, % vol");
    for (auto const& [percent, sugar] :
         {std::pair{14.0, 66.0}, std::pair{25.0, 200.0}, std::pair{28.0, 250.0}, std::pair{40.0, 300.0}}) {
        auto const liqueur = sweetened::of(litre, by_volume(percent), sugar * gram_per_litre, celsius(20.0));
        std::printf("%5.0f %5.0f %14.2f\n", percent, sugar, 100.0 * liqueur.strength_doubt());
    }
    std::puts("\n% vol   g/L   hidden, % vol   for each g/L");
    for (double const percent : {20.0, 40.0, 50.0}) {
        for (double const sugar : {1.0, 5.0, 20.0}) {
            auto const spirit =
                sweetened::of(litre, by_volume(percent), sugar * gram_per_litre, celsius(20.0));
            double const hidden = percent - reading(alcoholometer{}, spirit).percent();
            std::printf("%5.0f %5.0f %15.2f %14.3f\n", percent, sugar, hidden, hidden / sugar);
        }
    }
}
