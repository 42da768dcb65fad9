// SPDX-License-Identifier: BSL-1.0
// A program that tells its user in its own words, and in the unit of its form, which field to change.
#include <aqueth/density.hpp>

#include <cstdio>

// [body]
using namespace aqueth;

namespace {

void show_density(double mass_percent, double degrees_fahrenheit) {
    try {
        auto const found = density(by_mass(mass_percent), fahrenheit(degrees_fahrenheit));
        std::printf("%.1f kg/m3\n", found.value());
    } catch (refusal const& error) {
        switch (error.code()) {
        case argument::temperature:
            std::printf("field 2: enter %.0f to %.0f degrees\n", in(celsius(error.lower()), fahrenheit),
                        in(celsius(error.upper()), fahrenheit));
            break;
        case argument::mass_fraction: std::printf("field 1: enter 0 to 100 %%\n"); break;
        default: std::printf("%s\n", error.what());
        }
    }
}

}  // namespace

int main() {
    show_density(40.0, 68.0);
    show_density(10.0, 14.0);  // ice
    show_density(104.0, 68.0);
}
// [body]
