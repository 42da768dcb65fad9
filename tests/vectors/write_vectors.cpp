// SPDX-License-Identifier: BSL-1.0
// Writes vectors.tsv: questions to every function of the C interface with the answers of the plain floor, for
// the tests of all languages. Columns: function, arguments, "ok" with the results or "refused" with argument
// and limit, and then the tolerance of the results or the bounds of the refusal. Numbers have 17 digits.
#include "interface.hpp"

#include <cmath>
#include <cstddef>
#include <cstdio>
#include <limits>
#include <string>
#include <vector>

using namespace aqueth;

namespace {

using number = double;  // of plain_functions.inc

struct outcome {
    plain::status status;
    std::vector<double> results;
};

struct range {
    double low, high;
    bool enumerated;
};

struct function {
    char const* name;
    std::vector<range> arguments;
    outcome (*ask)(double const*);
};

function const functions[] = {
#include "plain_functions.inc"
};

/// element k of the van der Corput sequence: numbers from 0 to 1 that fill the interval evenly
double spread(unsigned k, unsigned base) {
    double value = 0.0;
    for (double share = 1.0 / base; k > 0; k /= base, share /= base) value += share * (k % base);
    return value;
}

std::string text(double value) {
    char digits[40];
    std::snprintf(digits, sizeof digits, "%.17g", value);
    return digits;
}

std::string joined(std::vector<double> const& values) {
    std::string line;
    for (double const value : values) line += (line.empty() ? "" : " ") + text(value);
    return line;
}

bool answered(function const& f, std::vector<double> const& arguments) {
    return f.ask(arguments.data()).status.ok;
}

void write(function const& f, std::vector<double> const& arguments) {
    auto const answer = f.ask(arguments.data());
    std::printf("%s\t%s\t", f.name, joined(arguments).c_str());
    if (answer.status.ok) {
        // what compilers and processors may round in another way, and a root that is found from another side
        std::printf("ok\t%s\t1e-9\n", joined(answer.results).c_str());
    } else {
        std::printf("refused\t%d %d\t%s\n", c::code_of(answer.status.argument),
                    c::code_of(answer.status.limit),
                    joined({answer.status.lower, answer.status.upper}).c_str());
    }
}

}  // namespace

int main() {
    std::puts("# SPDX-License-Identifier: BSL-1.0");
    std::puts("function\targuments\toutcome\tresults or codes\ttolerance or bounds");
    unsigned const bases[] = {2, 3, 5, 7, 11, 13, 17, 19, 23};
    for (function const& f : functions) {
        std::vector<double> inside(f.arguments.size());
        int answers = 0, refusals = 0;
        for (unsigned k = 1; k < 5000 && answers < 16; ++k) {
            for (std::size_t i = 0; i < inside.size(); ++i) {
                range const& r = f.arguments[i];
                double const share = spread(k, bases[i]);
                inside[i] = r.enumerated ? std::floor(r.high * share) : r.low + (r.high - r.low) * share;
            }
            bool const ok = answered(f, inside);
            if (ok || refusals < 8) write(f, inside);
            ++(ok ? answers : refusals);
        }
        for (std::size_t i = 0; i < inside.size(); ++i) {  // one argument outside at a time
            range const& r = f.arguments[i];
            if (r.enumerated) continue;
            double const beyond[] = {r.low,
                                     r.high,
                                     r.low - 0.01 * (r.high - r.low),
                                     1.5 * r.high + 1.0,
                                     std::numeric_limits<double>::quiet_NaN(),
                                     std::numeric_limits<double>::infinity()};
            for (double const value : beyond) {
                auto arguments = inside;
                arguments[i] = value;
                write(f, arguments);
            }
        }
    }
}
