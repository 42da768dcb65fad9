// SPDX-License-Identifier: BSL-1.0
// Checked functions over plain numbers: a status instead of an exception, no units, no Boost.
#include <aqueth/plain/density.hpp>

#include <cstdio>

// [body]
namespace {

void show(double mass_fraction, double celsius) {
    auto const density = aqueth::plain::density_kg_m3(mass_fraction, celsius);
    if (density.status.ok) {
        std::printf("%.4f kg/m3\n", density.value);
    } else {
        auto const& why = density.status;
        std::printf("%s %g, accepted: %g to %g (%s)\n", name_of(why.argument), why.value, why.lower,
                    why.upper, name_of(why.limit));
    }
}

}  // namespace

int main() {
    show(0.40, 20.0);
    show(0.40, 90.0);  // it boils
    show(0.10, -6.0);  // ice
}
// [body]
