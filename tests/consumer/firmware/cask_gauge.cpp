// SPDX-License-Identifier: BSL-1.0
// A gauge on a cask: litres of pure alcohol from weight, density and temperature, in single precision. It
// ends the emulator with 0 if the answer is as the same functions give it in double.
#include <aqueth/plain/plain.hpp>

#include <cstdint>

namespace plain = aqueth::plain;

template <plain::number T>
static T pure_alcohol(T kg, T kg_m3, T celsius) {
    auto const composition = plain::compact_mass_fraction_from_density(kg_m3, celsius);
    return plain::pure_alcohol_litres(plain::parcel<T>{kg, composition.value, celsius}, T(20)).value;
}

int main() {
    float volatile kg = 187.25f, kg_m3 = 912.4f, celsius = 14.5f;
    float const single = pure_alcohol<float>(kg, kg_m3, celsius);
    double const precise = pure_alcohol<double>(double(kg), double(kg_m3), double(celsius));
    double const off = double(single) - precise;
    bool const good = precise > 100.0 && off < 1e-3 && off > -1e-3 &&
                      !plain::density_kg_m3(0.4f, celsius + 90.0f).status.ok;

    std::uint32_t const end[2] = {0x20026, good ? 0u : 1u};  // Arm's semihosting: exit with this status
    register int operation asm("r0") = 0x20;
    register void const* block asm("r1") = end;
    asm volatile("bkpt 0xAB" : "+r"(operation) : "r"(block) : "memory");
}
