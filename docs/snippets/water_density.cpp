// SPDX-License-Identifier: BSL-1.0
// The water of OIML R 22 beside that of the CIPM-2001 formula.
#include <aqueth/correlation/its90.hpp>
#include <aqueth/density.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    std::printf("°C      R 22, kg/m3   CIPM-2001   difference   with t68\n");
    for (double t = 0.0; t <= 40.0; t += 5.0) {
        double const oiml = density(mass_fraction(0.0), celsius(t)).value();
        double const cipm = water_density_cipm_2001(celsius(t)).value();
        double const strict = correlation::oiml_r22::density(0.0, correlation::its90::t68_from_t90(t));
        std::printf("%2.0f %15.4f %12.4f %11.4f %11.4f\n", t, oiml, cipm, oiml - cipm, strict - cipm);
    }
}
