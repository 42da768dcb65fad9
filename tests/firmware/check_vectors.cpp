// SPDX-License-Identifier: BSL-1.0
// In the emulator: every question of tests/vectors/vectors.tsv. SCALAR is float or double.
#include "semihosting.hpp"

#include <aqueth/plain/plain.hpp>

#include <limits>

extern "C" void fault() { host::exit(3); }

using number = SCALAR;  // of plain_functions.inc

namespace aqueth::c {

using plain::strength_scale;

#include "codes.inc"

plain::checked<number> strength_from_reading(number reading, number celsius, strength_scale scale,
                                             number glass_per_kelvin) {
    return plain::with_basis(scale, [&]<class Basis>(Basis) {
        plain::hydrometer const meter(plain::strength_graduation<Basis, number>{}, glass_per_kelvin);
        return meter.template strength<Basis>(reading, celsius);
    });
}

}  // namespace aqueth::c

using namespace aqueth;

namespace {

struct outcome {
    plain::status status;
    number results[6];
};

struct range {
    double low, high;
    bool enumerated;
};

struct function {
    char const* name;
    range arguments[9];
    outcome (*ask)(number const*);
};

function const functions[] = {
#include "plain_functions.inc"
};

constexpr double none = std::numeric_limits<double>::quiet_NaN();
constexpr double infinite = std::numeric_limits<double>::infinity();

struct vector {
    char const* function;
    double arguments[9];
    bool answered;
    double expected[6];  // results; or the codes of argument and limit
    double tail[2];      // tolerance; or the range
};

vector const vectors[] = {
#include "vectors.inc"
};

double size_of(double x) { return x < 0 ? -x : x; }

bool alike(double found, double expected, double tolerance) {
    if (expected != expected) return found != found;
    if (size_of(expected) > 1e300) return found == expected;
    return size_of(found - expected) <= tolerance * (size_of(expected) > 1.0 ? size_of(expected) : 1.0);
}

bool same(char const* a, char const* b) {
    while (*a != '\0' && *a == *b) ++a, ++b;
    return *a == *b;
}

// Vectors are in double. In float a result may differ by 2e-4 (of 1, or of the result if that is larger):
// differences of masses and heats lose digits. A bound is a result too. Two kinds lose more:
// - A small volume that is the difference of large ones keeps their rounding, 5e-7 of the largest result.
// - A bound in degrees Brix follows from a refractive index. Its last digit in float is 8e-5 degrees, and a
// dozen
//   operations round it: measured, 1.1e-3 degrees.
constexpr bool single = sizeof(number) == sizeof(float);

bool good(vector const& v, outcome const& found) {
    // the one limit that only float has
    if (single && found.status.limit == limit::bottles_counted_in_single_precision) return v.answered;
    if (found.status.ok != v.answered) return false;
    double const tolerance = single ? 2e-4 : 1e-9;
    if (!v.answered) {
        bool const in_brix = single && found.status.argument == argument::refractometer_reading;
        double const of_bound = in_brix ? 2e-3 : tolerance;
        return c::code_of(found.status.argument) == static_cast<int>(v.expected[0]) &&
               c::code_of(found.status.limit) == static_cast<int>(v.expected[1]) &&
               alike(found.status.lower, v.tail[0], of_bound) &&
               alike(found.status.upper, v.tail[1], of_bound);
    }
    double largest = 0;
    for (double const each : v.expected)
        if (size_of(each) > largest) largest = size_of(each);
    for (int k = 0; k < 6; ++k) {  // behind the results, both are zero
        double const result = double(found.results[k]), expected = v.expected[k];
        bool const rounded = single && size_of(result - expected) <= 5e-7 * largest;
        if (!rounded && !alike(result, expected, single ? tolerance : v.tail[0])) return false;
    }
    return true;
}

outcome ask(function const& f, vector const& v) {
    number arguments[9];
    for (int k = 0; k < 9; ++k) arguments[k] = static_cast<number>(v.arguments[k]);
    return f.ask(arguments);
}

}  // namespace

int main() {
    long asked = 0, refused = 0, failed = 0;
    for (vector const& v : vectors) {
        function const* which = nullptr;
        for (function const& f : functions)
            if (same(f.name, v.function)) which = &f;
        ++asked;
        if (!v.answered) ++refused;
        if (which != nullptr && good(v, ask(*which, v))) continue;
        ++failed;
        host::print(v.function);
        host::print(": not as in vector ");
        host::print(asked);
        host::print("\n");
    }
    host::print(asked);
    host::print(" questions, ");
    host::print(refused);
    host::print(" of them refused, ");
    host::print(failed);
    host::print(" answered wrongly\n");
    host::exit(failed == 0 && asked > 0 ? 0 : 1);
}
