// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <iterator>
#include <limits>
#include <optional>
#include <string>
#include <string_view>

/// Shared parts of the fuzz targets: numbers from bytes, and the checks that must hold for all bytes.
namespace aqueth::hostile {

/// Stops the run and shows where; the fuzzer then keeps the bytes that led here.
[[noreturn]] inline void broken(char const* file, int line, char const* what, double a, double b) {
    std::fprintf(stderr, "%s:%d: not so: %s (%.17g, %.17g)\n", file, line, what, a, b);
    std::abort();
}

// Macros, because only they know the line and the words of what was claimed.
#define HOSTILE_REQUIRE(condition)                                                                           \
    ((condition) ? static_cast<void>(0) : ::aqueth::hostile::broken(__FILE__, __LINE__, #condition, 0, 0))
#define HOSTILE_NEAR(a, b, tolerance)                                                                        \
    (std::abs((a) - (b)) <= (tolerance)                                                                      \
         ? static_cast<void>(0)                                                                              \
         : ::aqueth::hostile::broken(__FILE__, __LINE__, #a " near " #b, (a), (b)))
#define HOSTILE_WITHIN(a, lower, upper)                                                                      \
    ((a) >= (lower) && (a) <= (upper)                                                                        \
         ? static_cast<void>(0)                                                                              \
         : ::aqueth::hostile::broken(__FILE__, __LINE__, #a " within " #lower " to " #upper, (a), (lower)))

/// Reads numbers from what the fuzzer made up; zeros when there is no more.
class bytes {
public:
    bytes(std::uint8_t const* data, std::size_t size) : at_(data), left_(size) {}

    bool empty() const { return left_ == 0; }

    template <class T>
    T raw() {
        unsigned char buffer[sizeof(T)] = {};
        std::size_t const n = left_ < sizeof(T) ? left_ : sizeof(T);
        if (n > 0) std::memcpy(buffer, at_, n);
        at_ += n;
        left_ -= n;
        T value;
        std::memcpy(&value, buffer, sizeof(T));
        return value;
    }
    /// @return one of 0 to count - 1
    int choice(int count) { return raw<std::uint8_t>() % count; }

    /// @return mostly a number from lower to upper, sometimes an invalid one
    double number(double lower, double upper) {
        constexpr double inf = std::numeric_limits<double>::infinity();
        double const odd[] = {std::nan(""),
                              inf,
                              -inf,
                              0.0,
                              -0.0,
                              std::numeric_limits<double>::denorm_min(),
                              (std::numeric_limits<double>::min)(),
                              (std::numeric_limits<double>::max)(),
                              -(std::numeric_limits<double>::max)(),
                              lower,
                              upper,
                              std::nextafter(lower, -inf),
                              std::nextafter(lower, inf),
                              std::nextafter(upper, -inf),
                              std::nextafter(upper, inf),
                              0.5 * (lower + upper)};
        switch (choice(16)) {
        case 0: return odd[choice(static_cast<int>(std::size(odd)))];
        case 1: return raw<double>();
        case 2: return lower + (upper - lower) * std::ldexp(1.0, -choice(60));
        case 3: return upper - (upper - lower) * std::ldexp(1.0, -choice(60));
        default: return lower + (upper - lower) * (raw<std::uint32_t>() / 4294967295.0);
        }
    }
    std::string_view rest() const { return {reinterpret_cast<char const*>(at_), left_}; }

private:
    std::uint8_t const* at_;
    std::size_t left_;
};

/// Runs what may refuse with a refusal, and holds the error to what it promises.
/// @return what f returned, or nothing if it refused
template <class F>
auto unless_refused(F const& f) -> std::optional<decltype(f())> {
    try {
        return f();
    } catch (refusal const& e) {
        HOSTILE_REQUIRE(!e.property().empty());
        HOSTILE_REQUIRE(!e.argument().empty());
        HOSTILE_REQUIRE(std::string_view(e.what()).find('\n') == std::string_view::npos);
        // A bound itself may be refused: the reason says so then ("above the lower one").
        HOSTILE_REQUIRE(!(e.lower() < e.value() && e.value() < e.upper()));
        return std::nullopt;
    }
}

}  // namespace aqueth::hostile
