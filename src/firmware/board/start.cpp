// SPDX-License-Identifier: BSL-1.0
// The start of a Cortex-M4F: vector table, memory, floating-point unit. Nothing else runs before main.
#include <cstdint>

extern "C" {
extern std::uint32_t stack_top, data_in_flash, data_begin, data_end, zero_begin,
    zero_end;  // of the linker script
int main();
[[noreturn]] void start();
/// Any exception of the processor. A program may have its own.
[[gnu::weak]] void fault() {
    for (;;) {
    }
}
}

namespace {

using handler = void (*)();

struct vector_table {
    void* stack;
    handler reset;
    handler exceptions[14];
};

}  // namespace

extern "C" [[gnu::section(".vectors"), gnu::used]] vector_table const vectors = {
    &stack_top,
    start,
    {fault, fault, fault, fault, fault, nullptr, nullptr, nullptr, nullptr, fault, fault, nullptr, fault,
     fault}};

extern "C" void start() {
    auto& access_to_coprocessors = *reinterpret_cast<std::uint32_t volatile*>(0xE000ED88);
    access_to_coprocessors = access_to_coprocessors | (0xFu << 20);
    asm volatile("dsb\n isb" ::: "memory");
    std::uint32_t const* from = &data_in_flash;
    for (std::uint32_t* to = &data_begin; to != &data_end;) *to++ = *from++;
    for (std::uint32_t* to = &zero_begin; to != &zero_end;) *to++ = 0;
    main();
    for (;;) {
    }
}
