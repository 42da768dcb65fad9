// SPDX-License-Identifier: BSL-1.0
// Published formulas over plain numbers: no units, no checks, any scalar, constant expressions.
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/strength.hpp>

#include <cstdio>

// [body]
namespace r22 = aqueth::correlation::oiml_r22;

// w is the mass fraction from 0 to 1, t in °C, density in kg/m3; all of it also at compile time
static_assert(r22::density(0.40, 20.0) > 935.14 && r22::density(0.40, 20.0) < 935.15);

int main() {
    auto const rho = r22::density_with_derivatives(0.40, 20.0);
    std::printf("rho       %.4f kg/m3\n", rho.value);
    std::printf("d rho/dw  %.2f kg/m3\n", rho.d_mass_fraction);
    std::printf("d rho/dt  %.4f kg/(m3 K)\n", rho.d_temperature);
    std::printf("in float  %.3f kg/m3\n", static_cast<double>(r22::density(0.40f, 20.0f)));

    r22::isotherm<double> const at_20(20.0);  // worth making when many questions share one temperature
    std::printf("w         %.6f at 950 kg/m3\n", r22::mass_fraction_from_density(at_20, 950.0));

    constexpr auto label = aqueth::to<aqueth::us_proof>(aqueth::by_volume(43.0));
    static_assert(label.degrees() > 85.86 && label.degrees() < 85.87);
}
// [body]
