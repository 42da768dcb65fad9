// SPDX-License-Identifier: BSL-1.0
// A label in % vol is not judged in degrees of proof.
#include <aqueth/metrology/labelling.hpp>

using namespace aqueth;

#ifndef AQUETH_MISTAKE
auto result() { return permitted_strengths(by_volume(45.0), strength_tolerances[0]); }
#else
auto result() { return permitted_strengths(proof(90.0), strength_tolerances[0]); }
#endif
