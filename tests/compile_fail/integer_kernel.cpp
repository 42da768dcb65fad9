// SPDX-License-Identifier: BSL-1.0
// In integers the coefficients would be integers too: 799 kg/m3 for 784.95.
#include <aqueth/correlation/oiml_r22.hpp>

using namespace aqueth::correlation;

#ifndef AQUETH_MISTAKE
auto result() { return oiml_r22::density(1.0, 25.0); }
#else
auto result() { return oiml_r22::density(1, 25); }
#endif
