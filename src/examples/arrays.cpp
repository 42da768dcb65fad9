// SPDX-License-Identifier: BSL-1.0
// Many at once: a morning's readings of a warm spirit, one of them impossible.
#include <aqueth/array.hpp>

#include <array>
#include <cstddef>
#include <cstdio>
#include <vector>

// [body]
using namespace aqueth;

int main() {
    std::vector<double> const reading{0.842, 0.847, 0.851, 0.998, 0.846};  // % vol / 100
    std::vector<double> const celsius_read{31.0, 29.5, 27.0, 14.0, 24.5};
    std::vector<double> strength(reading.size()), mass(reading.size());
    std::array<bool, 5> valid{};

    std::size_t const refused = arrays::strength(alcoholometer{}, reading, celsius_read, strength, valid);
    arrays::to<mass_fraction, volume_fraction>(strength, mass);  // NaN in, NaN out

    for (std::size_t i = 0; i < reading.size(); ++i) {
        if (valid[i]) std::printf("%.2f %% vol  %.2f %% mass\n", 100.0 * strength[i], 100.0 * mass[i]);
        if (!valid[i]) std::printf("refused\n");
    }
    std::printf("%zu refused\n", refused);
}
// [body]
