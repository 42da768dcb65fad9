// SPDX-License-Identifier: BSL-1.0
#pragma once

// The plain floor, behind functions that WebAssembly can call: numbers in, numbers out, the rest in one
// place of the memory that JavaScript reads. An instance serves one thread, and neither side allocates.
#include <aqueth/plain/plain.hpp>

#include <array>
#include <cstddef>
#include <limits>

namespace aqueth::wasm {

inline constexpr std::size_t block = 1024;  ///< elements that one call of an array function answers

/// What JavaScript reads and writes. aqueth.js.in knows the places of the members.
struct shared_place {
    double results[8];  ///< from the second on
    double refusal[5];  ///< argument, limit, value, lower, upper
    double unused[3];
    double columns[12][block];  ///< of arguments, then of results
    unsigned char refused[block];
};
extern shared_place shared;

int code_of(aqueth::argument code) noexcept;
int code_of(aqueth::limit code) noexcept;

using plain::strength_scale;

strength_scale strength_scale_of(int code) noexcept;
medium medium_of(int code) noexcept;
azeotrope_side azeotrope_side_of(int code) noexcept;
sugar sugar_of(int code) noexcept;
sweetener sweetener_of(int code) noexcept;

/// True strength from the reading of a hydrometer for spirit. The functions of its own scale would be
/// faster; they are in the module for the legal scale of most countries alone, for the sake of its size.
inline plain::checked<double> strength_from_reading(double reading, double celsius, strength_scale scale,
                                                    double glass_per_kelvin) {
    if (scale == strength_scale::volume_fraction_at_20_celsius) {
        using basis = plain::volume_basis<plain::at_20_celsius>;
        plain::hydrometer const meter(plain::strength_graduation<basis, double>{}, glass_per_kelvin);
        return meter.template strength<basis>(reading, celsius);
    }
    plain::hydrometer const meter(plain::chosen_strength_graduation<double>{scale}, glass_per_kelvin);
    return meter.strength(reading, celsius, scale);
}

/// One question.
/// @return the first result, NaN if and only if it is refused; the others, or the refusal, are in `shared`
template <class Answer, class Numbers>
double one(Answer const& answer, Numbers numbers_of) noexcept {
    plain::status const& why = answer.status;
    if (!why.ok) {
        double const refusal[] = {double(code_of(why.argument)), double(code_of(why.limit)), why.value,
                                  why.lower, why.upper};
        for (std::size_t k = 0; k < std::size(refusal); ++k) shared.refusal[k] = refusal[k];
        return std::numeric_limits<double>::quiet_NaN();
    }
    auto const numbers = numbers_of(answer.value);
    for (std::size_t k = 1; k < numbers.size(); ++k) shared.results[k] = numbers[k];
    return numbers[0];
}

/// The first `count` questions of the columns, no more than `block`. The function of one question answers
/// each, so that the formulas are in the module once.
/// @param inputs how many columns hold arguments; the next hold the results
/// @param ask    asks the question of a row, and returns what `one` returns
template <std::size_t Results, class Ask>
void many(int count, std::size_t inputs, Ask ask) noexcept {
    for (std::size_t k = 0; k < std::size_t(count); ++k) {
        double const first = ask(k);
        bool const ok = first == first;
        shared.columns[inputs][k] = first;
        for (std::size_t n = 1; n < Results; ++n)
            shared.columns[inputs + n][k] = ok ? shared.results[n] : first;
        shared.refused[k] = ok ? 0 : 1;
    }
}

}  // namespace aqueth::wasm
