// SPDX-License-Identifier: BSL-1.0
// Litres are not kilograms.
#include <aqueth/units.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
units::mass result() { return 2.0 * kilogram; }
#else
units::mass result() { return 2.0 * litre; }
#endif
