// SPDX-License-Identifier: BSL-1.0
// In the emulator: the density meter's strength against a published figure and against double, and the
// instructions and the stack of a call. Prints the mean and the most instructions, bytes of stack, and the
// largest difference from double in 1e-9 % vol. SCALAR is float or double.
#include "semihosting.hpp"

#include "density_meter.hpp"

extern "C" void fault() { host::exit(3); }

namespace {

using number = SCALAR;
namespace plain = aqueth::plain;

plain::checked<number> ask(number kg_m3, number celsius) { return meter::chosen_percent_vol(kg_m3, celsius); }
plain::checked<number> nothing(number kg_m3, number) { return {kg_m3, {}}; }

using question = plain::checked<number> (*)(number, number);
question volatile asked = ask;  // which the compiler cannot see through
question volatile empty = nothing;

int failures = 0;

void expect(bool good, char const* what) {
    if (good) return;
    ++failures;
    host::print("fails: ");
    host::print(what);
    host::print("\n");
}

long count(question const question, number kg_m3, number celsius) {
    constexpr int calls = 40;
    auto const begin = host::ticks();
    for (int k = 0; k < calls; ++k) (void)question(kg_m3, celsius);
    return host::instructions_between(begin, host::ticks()) / calls;
}

/// bytes of stack that a call reaches down to
long stack_of_call(number kg_m3, number celsius) {
    constexpr std::uint32_t mark = 0xA5A5A5A5;
    std::uint32_t* stack;
    asm volatile("mov %0, sp" : "=r"(stack));
    constexpr int words = 2048;
    for (int k = 1; k <= words; ++k) *(static_cast<std::uint32_t volatile*>(stack) - k) = mark;
    (void)asked(kg_m3, celsius);
    int deepest = words;
    while (deepest > 0 && *(static_cast<std::uint32_t volatile*>(stack) - deepest) == mark) --deepest;
    return 4L * deepest;
}

/// Instructions by a loop of which their number is known.
void check_clock() {
    std::uint32_t loops = 100000;
    auto const begin = host::ticks();
    asm volatile("1: subs %0, %0, #1\n bne 1b" : "+r"(loops) : : "cc");
    long const found = host::instructions_between(begin, host::ticks());
    expect(found > 199900 && found < 200100,
           "the clock does not count instructions: run with -icount shift=0");
}

void check_answers() {
    // tables/crc_ethanol_20c.csv: 40 % mass has 0.9352 at 20/4 °C. With 789.24 kg/m3 for ethanol (OIML R 22)
    // that is the strength by volume. Half a digit of the table is 0.05 kg/m3, or 0.03 % vol.
    auto const published = asked(number(0.9352 * 999.972), number(20));
    number const expected = number(100 * 0.40 * 0.9352 * 999.972 / 789.24);
    number const off = published.value - expected;
    expect(published.status.ok && off < number(0.04) && off > number(-0.04), "not as the handbook has it");
    auto const hot = asked(number(900), number(101));
    expect(!hot.status.ok && hot.status.argument == aqueth::argument::temperature && hot.value != hot.value,
           "101 degrees are not refused");
    auto const heavy = asked(number(1020), number(20));
    expect(!heavy.status.ok && heavy.status.argument == aqueth::argument::density,
           "1020 kg/m3 is not refused");
}

}  // namespace

int main() {
    host::start_clock();
    check_clock();
    check_answers();
    long sum = 0, most = 0, stack = 0, questions = 0;
    double largest = 0.0;
    for (int k = 0; k <= 20; ++k)
        for (int celsius = 0; celsius <= 40; celsius += 8) {
            number const kg_m3 = number(800 + 9 * k);
            auto const found = asked(kg_m3, number(celsius));
            if (!found.status.ok) continue;
            double const exact =
                100.0 * plain::strength_in<plain::volume_basis<plain::at_20_celsius>>(
                            plain::mass_fraction_from_density(double(kg_m3), double(celsius)).value)
                            .value;
            double const off = double(found.value) - exact;
            largest = off > largest ? off : -off > largest ? -off : largest;
            long const instructions =
                count(asked, kg_m3, number(celsius)) - count(empty, kg_m3, number(celsius));
            long const bytes = stack_of_call(kg_m3, number(celsius));
            sum += instructions;
            ++questions;
            if (instructions > most) most = instructions;
            if (bytes > stack) stack = bytes;
        }
    expect(questions > 60, "too few questions were answered");
    // in float the density itself is rounded to 3e-5 kg/m3, which near water is 3e-5 % vol
    expect(largest < (sizeof(number) == sizeof(float) ? 1e-4 : 1e-7), "float and double disagree");
    host::print(sum / questions);
    host::print(" ");
    host::print(most);
    host::print(" ");
    host::print(stack);
    host::print(" ");
    host::print(long(largest * 1e9));
    host::print("\n");
    host::exit(failures == 0 ? 0 : 1);
}
