// SPDX-License-Identifier: BSL-1.0
#pragma once

// What a test in the emulator needs from its host: a line of text and an exit status, by Arm's semihosting.
// And the count of instructions: QEMU with -icount shift=0 lets an instruction take 1 ns, and the board's
// SysTick counts 25 MHz.
#include <cstdint>

namespace host {

inline int call(int operation, void const* parameters) {
    register int r0 asm("r0") = operation;
    register void const* r1 asm("r1") = parameters;
    asm volatile("bkpt 0xAB" : "+r"(r0) : "r"(r1) : "memory");
    return r0;
}

inline void print(char const* text) { call(0x04, text); }

inline void print(long number) {
    char digits[16];
    char* at = digits + sizeof digits;
    *--at = '\0';
    bool const negative = number < 0;
    unsigned long left =
        negative ? 0UL - static_cast<unsigned long>(number) : static_cast<unsigned long>(number);
    do *--at = static_cast<char>('0' + left % 10);
    while ((left /= 10) > 0);
    if (negative) *--at = '-';
    print(at);
}

/// Ends the emulator with the status.
[[noreturn]] inline void exit(int status) {
    std::uint32_t const block[2] = {0x20026, static_cast<std::uint32_t>(status)};  // an application's end
    call(0x20, block);
    for (;;) {
    }
}

inline std::uint32_t volatile* const systick = reinterpret_cast<std::uint32_t volatile*>(0xE000E010);

inline void start_clock() {
    systick[1] = 0xFFFFFF;
    systick[2] = 0;
    systick[0] = 5;  // the processor's clock, no interrupt
}

/// @return ticks of 40 instructions, counted down; 24 bits
inline std::uint32_t ticks() { return systick[2]; }

inline long instructions_between(std::uint32_t begin, std::uint32_t end) {
    return static_cast<long>((begin - end) & 0xFFFFFF) * 40;
}

}  // namespace host

extern "C" void fault();
