// SPDX-License-Identifier: BSL-1.0
// The part of a handheld density meter that computes: strength from density and temperature, without a table.
// sizes.sh links it with nothing but the compiler's own arithmetic, and counts its bytes.
#include <aqueth/plain/density.hpp>

#if defined(BY_VOLUME)
#include <aqueth/plain/strength.hpp>
#endif

#if !defined(SCALAR)
#define SCALAR float
#endif

extern "C" {

// Negative for a refusal.
SCALAR strength(SCALAR kg_m3, SCALAR celsius);
SCALAR strength(SCALAR kg_m3, SCALAR celsius) {
    namespace plain = aqueth::plain;
    auto found = plain::compact_mass_fraction_from_density(kg_m3, celsius);
#if defined(BY_VOLUME)
    using scale = plain::strength_scale;
    if (found.status.ok)
        found = plain::convert(found.value, scale::mass_fraction, scale::volume_fraction_at_20_celsius);
#endif
    return found.status.ok ? found.value : SCALAR(-static_cast<int>(found.status.argument) - 1);
}

SCALAR volatile sensor[2] = {950, 20};
SCALAR volatile shown = 0;

[[noreturn]] void _start();
void _start() {
    for (;;) shown = strength(sensor[0], sensor[1]);
}

}  // extern "C"
