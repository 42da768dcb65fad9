// SPDX-License-Identifier: BSL-1.0
#pragma once

/// Degrees Brix from specific gravity, the classical table in one cubic, with which the library's sugar
/// solutions are compared: F. J. Bates and associates, Polarimetry, Saccharimetry and the Sugars, National
/// Bureau of Standards Circular C440, 1942, table of degrees Brix and specific gravity, as a published cubic
/// fit (read second hand). It is not part of the library.
///
/// Range: apparent specific gravity 20/20 °C in air, 1.00000 to 1.17874 (0 to 40 degrees Brix). Accuracy:
/// 0.0009 degrees Brix against that table (stated); at 1.00000 it gives -0.005.
namespace aqueth::published::nbs_1942_brix {

/// @param gravity apparent specific gravity 20/20 °C
/// @return degrees Brix, grams of sucrose in 100 g of solution
constexpr double brix(double gravity) {
    return -669.56218 + gravity * (1262.7794 + gravity * (-775.68212 + gravity * 182.46007));
}

}  // namespace aqueth::published::nbs_1942_brix
