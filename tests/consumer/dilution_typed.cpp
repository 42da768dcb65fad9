// SPDX-License-Identifier: BSL-1.0
// The dilution that every program of this folder computes, with the typed functions: 3.50 L of 80 % vol, measured at 20 °C,
// diluted to 42 % vol with water of 15 °C.
#if defined(WINDOWS_HEADER_FIRST)
#include <windows.h>
#endif

#include <aqueth/aqueth.hpp>
#include <aqueth/array.hpp>
#include <aqueth/measured_equilibrium.hpp>

#if defined(WINDOWS_HEADER_LAST)
#include <windows.h>
#endif

#include <cstdio>

// [body]
int main() {
    using namespace aqueth;
    auto const spirit = parcel::of(3.50 * litre, by_volume(80.0), celsius(20.0));
    auto const diluted = dilute(spirit, by_volume(42.0), water_at(celsius(15.0)), celsius(20.0));
    std::printf("add %.4f kg of water: %.4f L\n", in(diluted.addition.mass(), kilogram),
                in(diluted.product.volume(), litre));
}
// [body]
