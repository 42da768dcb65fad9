// SPDX-License-Identifier: BSL-1.0
// Counts how often a call asks for memory on the heap: all of malloc, so that exceptions count too (glibc
// only). One line each: what is called, its allocations, the most it may have.
#include <aqueth/aqueth.hpp>
#include <aqueth/array.hpp>
#include <aqueth/plain/plain.hpp>

#include <cstdio>
#include <cstdlib>

static long allocations = 0;

extern "C" {
void* __libc_malloc(std::size_t size);
void* malloc(std::size_t size) {
    ++allocations;
    return __libc_malloc(size);
}
}

static bool all_met = true;

template <class Call>
static void count(char const* name, long most, Call call) {
    call();  // the C library may set something up once
    long const before = allocations;
    call();
    long const counted = allocations - before;
    if (counted > most) all_met = false;
    std::printf("%-58s %6ld  at most %ld\n", name, counted, most);
}

int main() {
    using namespace aqueth;
    double volatile sink = 0;
    double volatile forty = 40;
    bool counts = false;
    {
        long const before = allocations;
        void* volatile block = std::malloc(100);  // volatile, or the compiler would leave it out
        std::free(block);
        counts = allocations == before + 1;
    }
    if (!counts) {
        std::fputs("allocations: this C library does not let malloc be counted\n", stderr);
        return 1;
    }
    setvbuf(stdout, nullptr, _IONBF, 0);

    count("typed: density", 0, [&] { sink = density(by_mass(forty), celsius(20.0)).value(); });
    count("typed: strength by volume from a density", 0, [&] {
        auto const found = mass_fraction_from_density(density(by_mass(forty), celsius(20.0)), celsius(20.0));
        sink = to<volume_fraction>(found).percent();
    });
    count("typed: alcoholometer reading", 0,
          [&] { sink = alcoholometer{}.strength(by_volume(forty), celsius(25.0)).percent(); });
    count("typed: dilution", 0, [&] {
        auto const spirit = parcel::of(2.0 * litre, by_volume(80.0), celsius(20.0));
        sink = in(dilute(spirit, by_volume(forty), water_at(celsius(15.0)), celsius(20.0)).addition.mass(),
                  gram);
    });
    count("typed: bubble point", 0,
          [&] { sink = bubble_point(by_mass(forty), 101.325 * kilopascal).vapour.percent(); });
    // Hotter than every liquid: what is not refused must not be counted as a refusal.
    bool refused = true;
    count("plain: refusal", 0, [&] {
        auto const answer = plain::density_kg_m3(0.4, forty + 100);
        refused = refused && !answer.status.ok;
        sink = answer.status.value;
    });
    // The exception, its message and its parts.
    count("typed: refusal, caught", 10, [&] {
        try {
            sink = density(by_mass(forty), celsius(forty + 100)).value();
            refused = false;
        } catch (refusal const& error) {
            sink = error.value();
        }
    });
    if (!refused) std::fputs("allocations: 140 °C was not refused\n", stderr);
    return all_met && refused ? 0 : 1;
}
