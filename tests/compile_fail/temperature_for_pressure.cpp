// SPDX-License-Identifier: BSL-1.0
// A mixture boils at a temperature under a pressure; the one cannot stand for the other.
#include <aqueth/equilibrium.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return isothermal_flash(by_moles(30.0), celsius(80.0), 80.0 * kilopascal); }
#else
auto result() { return isothermal_flash(by_moles(30.0), celsius(80.0), celsius(80.0)); }
#endif
