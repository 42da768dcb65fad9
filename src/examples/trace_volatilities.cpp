// SPDX-License-Identifier: BSL-1.0
// Which traces boil off before ethanol, and from which liquid.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    std::puts("volatility over that of ethanol, and its band, in boiling liquids of so many % vol");
    std::puts("                         2         10         20         40         60         80");
    for (trace const which : all_traces) {
        std::printf("%-19s", name_of(which));
        for (double const percent : {2.0, 10.0, 20.0, 40.0, 60.0, 80.0}) {
            auto const v = volatility_of(which, by_volume(percent));
            std::printf("%7.3g %2.0f%%", v.to_ethanol, 100.0 * v.band);
        }
        std::puts("");
    }
    // [body]
}
