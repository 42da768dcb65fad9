// SPDX-License-Identifier: BSL-1.0
#pragma once

// The library proper is compiled once, here, and shows nothing but the functions of c.h.
#include <aqueth/array.hpp>
#include <aqueth/c.h>
#include <aqueth/plain/plain.hpp>

#include <algorithm>
#include <array>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <new>
#include <numeric>
#include <span>
#include <string_view>
#include <tuple>
#include <utility>

namespace aqueth::c {

int code_of(aqueth::argument code) noexcept;
int code_of(aqueth::limit code) noexcept;
char const* argument_name(int code) noexcept;
char const* limit_name(int code) noexcept;

using plain::strength_scale;

bool is_strength_scale(int code) noexcept;
bool is_medium(int code) noexcept;
bool is_azeotrope_side(int code) noexcept;
bool is_sugar(int code) noexcept;
bool is_sweetener(int code) noexcept;
strength_scale strength_scale_of(int code) noexcept;
medium medium_of(int code) noexcept;
azeotrope_side azeotrope_side_of(int code) noexcept;
sugar sugar_of(int code) noexcept;
sweetener sweetener_of(int code) noexcept;

/// True strength from the reading of a hydrometer for spirit, with the functions of its own scale.
inline plain::checked<double> strength_from_reading(double reading, double celsius, strength_scale scale,
                                                    double glass_per_kelvin) {
    return plain::with_basis(scale, [&]<class Basis>(Basis) {
        plain::hydrometer const meter(plain::strength_graduation<Basis, double>{}, glass_per_kelvin);
        return meter.template strength<Basis>(reading, celsius);
    });
}

/// The same for a block, in the loops of array.hpp if the scale is % vol and all instruments are of one
/// glass.
inline void strengths_from_readings(strength_scale scale, std::span<double const> reading,
                                    std::span<double const> celsius, std::span<double const> glass_per_kelvin,
                                    std::span<double> result, arrays::flags valid) {
    double const glass = glass_per_kelvin[0];
    bool const of_one_glass = glass >= 0.0 && glass <= 3e-4 &&
                              std::all_of(glass_per_kelvin.begin(), glass_per_kelvin.end(),
                                          [glass](double other) { return other == glass; });
    auto const in_loops = [&]<class Scale>(Scale const*) {
        arrays::strength(hydrometer<Scale>(glass * per_kelvin), reading, celsius, result, valid);
    };
    if (of_one_glass && scale == strength_scale::volume_fraction_at_20_celsius)
        return in_loops(static_cast<basic_volume_fraction<at_20_celsius>*>(nullptr));
    if (of_one_glass && scale == strength_scale::volume_fraction_at_15_celsius)
        return in_loops(static_cast<basic_volume_fraction<at_15_celsius>*>(nullptr));
    if (of_one_glass && scale == strength_scale::volume_fraction_at_15_56_celsius)
        return in_loops(static_cast<basic_volume_fraction<at_15_56_celsius>*>(nullptr));
    if (of_one_glass && scale == strength_scale::volume_fraction_at_60_fahrenheit)
        return in_loops(static_cast<basic_volume_fraction<at_60_fahrenheit>*>(nullptr));
    for (std::size_t k = 0; k < reading.size(); ++k) {
        auto const found = strength_from_reading(reading[k], celsius[k], scale, glass_per_kelvin[k]);
        result[k] = found.value;
        valid[k] = found.status.ok;
    }
}

/// Writes why a question was refused, as far as the caller's structure reaches.
/// @param why     what was refused
/// @param refusal the caller's structure, or nothing
/// @param limit   code of what sets the range
/// @return AQUETH_REFUSED, or AQUETH_BAD_CALL for a structure smaller than the first version's
inline aqueth_status report(plain::status const& why, aqueth_refusal* refusal, int limit) noexcept {
    if (refusal == nullptr) return AQUETH_REFUSED;
    if (refusal->size < sizeof(aqueth_refusal)) return AQUETH_BAD_CALL;
    refusal->argument = code_of(why.argument);
    refusal->limit = limit;
    refusal->value = why.value;
    refusal->lower = why.lower;
    refusal->upper = why.upper;
    return AQUETH_REFUSED;
}

inline aqueth_status report(plain::status const& why, aqueth_refusal* refusal) noexcept {
    return report(why, refusal, code_of(why.limit));
}

/// @param reason words of the typed functions for what sets a range
/// @return the code of these words; 0, no limit, for words that have none
inline int limit_code_of(std::string_view reason) noexcept {
    for (int code = 1; limit_name(code) != nullptr; ++code)
        if (reason == limit_name(code)) return code;
    return 0;
}

/// One question: the answer's numbers into the caller's, NaN where there is none.
template <class Answer, class Numbers, class... Results>
aqueth_status one(Answer const& answer, aqueth_refusal* refusal, Numbers numbers_of,
                  Results*... results) noexcept {
    if ((!results || ...)) return AQUETH_BAD_CALL;
    auto const numbers = numbers_of(answer.value);
    std::size_t k = 0;
    ((*results = answer.status.ok ? numbers[k] : std::numeric_limits<double>::quiet_NaN(), ++k), ...);
    return answer.status.ok ? AQUETH_OK : report(answer.status, refusal);
}

/// A column of numbers to read, and one to write: the distance between neighbours is `stride` elements.
struct input {
    double const* data;
    std::ptrdiff_t stride;
    double operator[](std::size_t k) const { return data[static_cast<std::ptrdiff_t>(k) * stride]; }
};
struct output {
    double* data;
    std::ptrdiff_t stride;
    double& operator[](std::size_t k) const { return data[static_cast<std::ptrdiff_t>(k) * stride]; }
};

/// Whether results could replace elements of an argument that are read later: the same memory, but another
/// place or stride. Columns of one table do not: none of their elements has the place of another's.
inline bool overlap_partly(input const& in, output const& out, std::size_t count) {
    if (count < 2 || (in.data == out.data && in.stride == out.stride)) return false;
    auto const ends = [count](auto const& column) {
        auto const size = static_cast<std::intptr_t>(sizeof(double));
        auto const first = reinterpret_cast<std::intptr_t>(column.data);
        auto const last = first + static_cast<std::intptr_t>(count - 1) * column.stride * size;
        return std::pair{std::min(first, last), std::max(first, last) + size};
    };
    auto const read = ends(in), written = ends(out);
    if (read.second <= written.first || written.second <= read.first) return false;
    auto const apart = reinterpret_cast<std::intptr_t>(in.data) - reinterpret_cast<std::intptr_t>(out.data);
    auto const step = std::gcd(in.stride, out.stride) * static_cast<std::intptr_t>(sizeof(double));
    return step == 0 || apart % step == 0;
}

/// Many questions, one after the other.
template <class Ask, class Numbers, std::size_t N, class... Inputs>
aqueth_status many(std::size_t count, unsigned char* refused, Ask ask, Numbers numbers_of,
                   std::array<output, N> const& results, Inputs const&... inputs) noexcept {
    if (count == 0) return AQUETH_OK;
    if ((!inputs.data || ...)) return AQUETH_BAD_CALL;
    for (output const& result : results)
        if (result.data == nullptr || (overlap_partly(inputs, result, count) || ...)) return AQUETH_BAD_CALL;
    for (std::size_t k = 0; k < count; ++k) {
        auto const answer = ask(inputs[k]...);
        auto const numbers = numbers_of(answer.value);
        for (std::size_t n = 0; n < N; ++n)
            results[n][k] = answer.status.ok ? numbers[n] : std::numeric_limits<double>::quiet_NaN();
        if (refused != nullptr) refused[k] = answer.status.ok ? 0 : 1;
    }
    return AQUETH_OK;
}

/// Many questions that array.hpp answers in blocks.
template <class Ask, class... Inputs>
aqueth_status many_by_array(std::size_t count, unsigned char* refused, Ask ask, output result,
                            Inputs const&... inputs) noexcept {
    if (count == 0) return AQUETH_OK;
    if (result.data == nullptr || (!inputs.data || ...)) return AQUETH_BAD_CALL;
    if ((overlap_partly(inputs, result, count) || ...)) return AQUETH_BAD_CALL;
    constexpr std::size_t block = 512;
    double gathered[sizeof...(Inputs)][block];
    double answers[block];
    bool valid[block];
    for (std::size_t begin = 0; begin < count; begin += block) {
        std::size_t const size = std::min(block, count - begin);
        std::size_t row = 0;
        auto const part = [&](input const& in) {
            double* const to = gathered[row++];
            if (in.stride == 1) return std::span<double const>(in.data + begin, size);
            for (std::size_t k = 0; k < size; ++k) to[k] = in[begin + k];
            return std::span<double const>(to, size);
        };
        std::span<double> out(answers, size);
        ask(part(inputs)..., out, arrays::flags(valid, size));
        for (std::size_t k = 0; k < size; ++k) {
            result[begin + k] = valid[k] ? answers[k] : std::numeric_limits<double>::quiet_NaN();
            if (refused != nullptr) refused[begin + k] = valid[k] ? 0 : 1;
        }
    }
    return AQUETH_OK;
}

}  // namespace aqueth::c
