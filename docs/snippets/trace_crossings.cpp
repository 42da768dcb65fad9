// SPDX-License-Identifier: BSL-1.0
// The liquid over which a trace boils like ethanol, and how its error band moves it.
#include <aqueth/aqueth.hpp>

#include <cstdio>

namespace {

using namespace aqueth;

/// % vol of the liquid over which factor times the volatility is that of ethanol
double crossing(trace which, double share_of_band) {
    auto const leads = [&](double percent) {
        auto const v = volatility_of(which, by_volume(percent));
        double const factor = share_of_band < 0.0 ? 1.0 / (1.0 + v.band) : 1.0 + share_of_band * v.band;
        return v.to_ethanol * factor > 1.0;
    };
    double low = 0.0, high = 100.0;
    bool const first = leads(low);
    for (int i = 0; i < 40; ++i) {
        double const middle = 0.5 * (low + high);
        (leads(middle) == first ? low : high) = middle;
    }
    return low;
}

}  // namespace

int main() {
    std::puts("as volatile as ethanol over a boiling liquid of so many % vol (with its band)");
    for (trace const which :
         {trace::methanol, trace::propanol_1, trace::methyl_2_propanol_1, trace::butanol_1,
          trace::methyl_2_butanol_1, trace::methyl_3_butanol_1, trace::hexanol_1}) {
        double const one = crossing(which, -1.0), other = crossing(which, 1.0);
        std::printf("%-19s  %.0f (%.0f to %.0f)\n", name_of(which), crossing(which, 0.0),
                    one < other ? one : other, one < other ? other : one);
    }
}
