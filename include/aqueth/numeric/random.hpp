// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/probability.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstring>
#include <limits>
#include <span>

/// Random numbers for trials, many at a time. Uniform numbers are the same to the bit with every compiler.
/// Normal ones agree to the last digits, because a compiler may or may not fuse a product and a sum.
namespace aqueth::inline AQUETH_ABI::numeric {

/// Uniform numbers from the Mersenne Twister mt19937_64 of the C++ standard, whose numbers they are to 52
/// bits.
///
/// The standard's class makes one number a call. Here the recurrence goes through loops without a branch,
/// which the compiler vectorizes.
/// @par Source
/// M. Matsumoto and T. Nishimura, ACM Transactions on Modeling and Computer Simulation 8 (1998)
/// 3; the constants are those of the C++ standard, [rand.predef] (the tests compare with std::mt19937_64)
class uniform_numbers {
public:
    /// @param seed any number; the same seed gives the same numbers
    explicit uniform_numbers(std::uint64_t seed) {
        state_[0] = seed;
        for (std::size_t i = 1; i < size; ++i)
            state_[i] = 6364136223846793005U * (state_[i - 1] ^ (state_[i - 1] >> 62)) + i;
    }

    /// @return the next number, above 0 and below 1
    double next() {
        if (used_ == size) make();
        return ready_[used_++];
    }
    /// @param numbers destination of the next numbers, above 0 and below 1
    void fill(std::span<double> numbers) {
        while (!numbers.empty()) {
            if (used_ == size) make();
            std::size_t const count = (std::min)(numbers.size(), size - used_);
            std::copy_n(ready_.begin() + static_cast<std::ptrdiff_t>(used_), count, numbers.begin());
            used_ += count;
            numbers = numbers.subspan(count);
        }
    }

private:
    static constexpr std::size_t size = 312, half = size / 2;

    static std::uint64_t twisted(std::uint64_t high, std::uint64_t low) {
        std::uint64_t const y = (high & 0xFFFFFFFF80000000U) | (low & 0x7FFFFFFFU);
        return (y >> 1) ^ ((0U - (y & 1U)) & 0xB5026F5AA96619E9U);
    }

    void make() {
        std::array<std::uint64_t, size + 1> old;
        std::copy(state_.begin(), state_.end(), old.begin());
        for (std::size_t i = 0; i < half; ++i) state_[i] = old[i + half] ^ twisted(old[i], old[i + 1]);
        old[size] = state_[0];
        for (std::size_t i = 0; i < half; ++i)
            state_[i + half] = state_[i] ^ twisted(old[i + half], old[i + half + 1]);
        std::array<std::uint64_t, size> bits;
        for (std::size_t i = 0; i < size; ++i) {
            std::uint64_t z = state_[i];
            z ^= (z >> 29) & 0x5555555555555555U;
            z ^= (z << 17) & 0x71D67FFFEDA60000U;
            z ^= (z << 37) & 0xFFF7EEE000000000U;
            z ^= z >> 43;
            bits[i] = (z >> 12) | 0x3FF0000000000000U;  // a number from 1 to 2
        }
        static_assert(sizeof ready_ == sizeof bits);
        std::memcpy(ready_.data(), bits.data(), sizeof bits);
        for (double& each : ready_) each -= 1.0 - 0x1p-53;  // exact, and never 0 or 1
        used_ = 0;
    }

    std::array<std::uint64_t, size> state_;
    std::array<double, size> ready_{};
    std::size_t used_ = size;
};

/// The quantile of the standard normal distribution from a table: normal numbers from uniform ones without a
/// branch.
///
/// Each octave of the probability of a tail has 32 cubic polynomials with the values and slopes of
/// `normal_quantile`. The bits of the probability are the index.
class normal_quantiles {
public:
    normal_quantiles() {
        double z = normal_quantile(smallest), slope = 1.0 / normal_density(z);
        for (std::size_t i = 0; i < pieces; ++i) {
            double const from = std::ldexp(1.0 + static_cast<double>(i % parts) / parts,
                                           static_cast<int>(i / parts) - octaves - 1);
            double const width = std::ldexp(1.0 / parts, static_cast<int>(i / parts) - octaves - 1);
            double const next = normal_quantile(from + width), next_slope = 1.0 / normal_density(next);
            double const a = width * slope, b = width * next_slope, rise = next - z;
            pieces_[i] = {z, a, 3.0 * rise - 2.0 * a - b, a + b - 2.0 * rise};
            z = next;
            slope = next_slope;
        }
        pieces_[pieces + 1].fill(std::numeric_limits<double>::quiet_NaN());
    }

    /// @param u probability, from 2^-53 to 1 - 2^-53
    /// @return the number that a standard normal quantity is not above with this probability, within 1e-8;
    ///             NaN
    ///         outside these
    double operator()(double u) const {
        double const p = (std::min)(u, 1.0 - u);
        std::uint64_t bits;
        std::memcpy(&bits, &p, sizeof bits);
        std::uint64_t const rest = ((bits << index_bits) & 0xFFFFFFFFFFFFFU) | 0x3FF0000000000000U;
        double x;
        std::memcpy(&x, &rest, sizeof x);
        x -= 1.0;
        // No more than the last piece, which is NaN: zero, a negative number or NaN has no other.
        std::uint64_t const piece = (std::min)((bits >> shift) - first, std::uint64_t{pieces + 1});
        auto const& c = pieces_.begin()[static_cast<std::ptrdiff_t>(piece)];
        double const z = c[0] + x * (c[1] + x * (c[2] + x * c[3]));
        return std::copysign(z, u - 0.5);
    }

private:
    static constexpr int octaves = 52;        ///< from 2^-53 to 1/2
    static constexpr std::size_t parts = 32;  ///< of an octave
    static constexpr int index_bits = 5;      ///< of the significand
    static constexpr int shift = 52 - index_bits;
    static constexpr double smallest = 0x1p-53;
    static constexpr std::uint64_t first = (1023U - 53U) * parts;  ///< index in the bits of 2^-53
    static constexpr std::size_t pieces = octaves * parts;

    std::array<std::array<double, 4>, pieces + 2> pieces_{};  // the last but one is 1/2 itself, quantile 0
};

}  // namespace aqueth::inline AQUETH_ABI::numeric
