// SPDX-License-Identifier: BSL-1.0
// What changes if OIML R 22 is given temperatures on IPTS-68, as printed, when the thermometer shows ITS-90.
#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/correlation/its90.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/strength.hpp>

#include <algorithm>
#include <cmath>
#include <cstdio>

namespace {

namespace r22 = aqueth::correlation::oiml_r22;
namespace ice = aqueth::correlation::freezing_point;
using aqueth::correlation::its90::t68_from_t90;

double const temperatures[] = {-20.0, -10.0, 0.0, 10.0, 20.0, 30.0, 40.0};

/// % vol at 20 °C from a density measured at t
double strength(double density, double t, double t_reference) {
    return 100.0 *
           r22::volume_fraction_from_mass_fraction(r22::mass_fraction_from_density(density, t), t_reference);
}

// [body]
// kg/m3: as the library takes the thermometer's temperature t, less as the strict reading does
double density_difference(double w, double t) {
    return r22::density(w, t) - r22::density(w, t68_from_t90(t));
}

// % vol at 20 °C from a measured density, likewise, the reference temperature included
double strength_difference(double w, double t) {
    double const measured = r22::density(w, t);
    return strength(measured, t, 20.0) - strength(measured, t68_from_t90(t), t68_from_t90(20.0));
}
// [body]

/// so that a trifle below zero does not print as -0.0
double rounded(double value) { return std::round(10.0 * value) / 10.0 + 0.0; }

template <class F>
void table(char const* title, F const& difference) {
    std::printf("\n%s\n\n%% vol \\ °C", title);
    for (double const t : temperatures) std::printf("%9.0f", t);
    std::printf("\n");
    double largest = 0.0;
    for (double q = 0.0; q <= 100.0; q += 10.0) {
        double const w = aqueth::to<aqueth::mass_fraction>(aqueth::by_volume(q)).value();
        std::printf("%6.0f    ", q);
        for (double const t : temperatures) {
            if (ice::covers(w) && t < ice::celsius(w)) {
                std::printf("%9s", "ice");
                continue;
            }
            double const value = rounded(1000.0 * difference(w, t));
            largest = (std::max)(largest, std::abs(value));
            std::printf("%9.1f", value);
        }
        std::printf("\n");
    }
    std::printf("largest: %.1f\n", largest);
}

}  // namespace

int main() {
    std::printf("t90, °C      t68, °C    t68 - t90, mK\n");
    for (double const t : temperatures) {
        std::printf("%5.0f %14.4f %13.1f\n", t, t68_from_t90(t), 1000.0 * (t68_from_t90(t) - t));
    }
    table("density, g/m3", density_difference);
    table("strength from a measured density, 0.001 % vol", strength_difference);
}
