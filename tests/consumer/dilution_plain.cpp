// SPDX-License-Identifier: BSL-1.0
// The same dilution with the plain floor: no Boost, no exceptions. (SCALAR may be float.)
#if defined(WINDOWS_HEADER_FIRST)
#include <windows.h>
#endif

#include <aqueth/plain/plain.hpp>

#if defined(WINDOWS_HEADER_LAST)
#include <windows.h>
#endif

#include <cstdio>

#if !defined(SCALAR)
#define SCALAR double
#endif

// [body]
int main() {
    namespace plain = aqueth::plain;
    using scale = plain::strength_scale;
    using number = SCALAR;
    auto const by_mass = [](number percent_vol) {
        return plain::convert(percent_vol / 100, scale::volume_fraction_at_20_celsius, scale::mass_fraction)
            .value;
    };
    auto const spirit = plain::parcel_by_volume(number(3.50), by_mass(80), number(20));
    if (!spirit.status.ok) return 1;
    auto const diluted = plain::dilute(spirit.value, by_mass(42), plain::liquid<number>{0, 15}, number(20));
    if (!diluted.status.ok) return 1;
    auto const volume = plain::volume_litres(diluted.value.product);
    std::printf("add %.4f kg of water: %.4f L\n", double(diluted.value.addition.mass_kg),
                double(volume.value));
    // and a refusal, which costs no exception
    auto const refused = plain::density_kg_m3(number(0.4), number(99));
    return !refused.status.ok && refused.status.argument == aqueth::argument::temperature ? 0 : 1;
}
// [body]
