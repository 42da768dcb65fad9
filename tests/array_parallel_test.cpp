// SPDX-License-Identifier: BSL-1.0
// The array functions on all cores, against the same functions on one. The preset threads runs the first test
// only: the thread sanitizer cannot see how TBB's compiled library orders its threads, and reports races
// there.
#include <aqueth/array_parallel.hpp>
#include <aqueth/plain/refraction.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>
#if defined(__linux__)
#include <sched.h>
#endif

#include <atomic>
#include <bit>
#include <chrono>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <execution>
#include <limits>
#include <memory>
#include <random>
#include <span>
#include <stdexcept>
#include <string>
#include <thread>
#include <vector>

namespace aqueth {
namespace {

using test::expect_refusal;

constexpr std::size_t size = 50021;  // twelve parts and a remainder that is no whole block

template <class T = double>
std::vector<T> between(double low, double high, unsigned seed, std::size_t count = size) {
    std::mt19937_64 random(seed);
    std::uniform_real_distribution<double> any(low, high);
    std::vector<T> result(count);
    for (T& each : result) each = static_cast<T>(any(random));
    for (std::size_t i = 7; i < count; i += 997) result[i] = std::numeric_limits<T>::quiet_NaN();
    return result;
}

template <class T>
struct output {
    std::vector<T> values = std::vector<T>(size);
    std::unique_ptr<bool[]> storage{new bool[size]};
    std::span<bool> valid{storage.get(), size};
    std::size_t refused = 0;
};

/// Both have the same bits, flags and count; some elements are refused and some are not.
template <class T>
void expect_same(output<T> const& one, output<T> const& many, char const* what) {
    using bits = numeric::bits<T>;
    EXPECT_EQ(one.refused, many.refused) << what;
    EXPECT_GT(one.refused, 0U) << what;
    EXPECT_LT(one.refused, size) << what;
    std::size_t different = 0;
    for (std::size_t i = 0; i < size; ++i) {
        bool const same = std::isnan(one.values[i])
                              ? std::isnan(many.values[i])
                              : std::bit_cast<bits>(one.values[i]) == std::bit_cast<bits>(many.values[i]);
        if (!same || one.valid[i] != many.valid[i]) ++different;
    }
    EXPECT_EQ(different, 0U) << what;
}

/// Four threads that take the next part until none is left.
void by_four_threads(std::vector<arrays::detail::part>& parts, auto const& each) {
    std::atomic<std::size_t> next{0};
    std::vector<std::thread> at_work;
    for (int k = 0; k < 4; ++k) {
        at_work.emplace_back([&] {
            for (std::size_t i = next++; i < parts.size(); i = next++) each(parts[i]);
        });
    }
    for (std::thread& thread : at_work) thread.join();
}

TEST(ArrayParallel, ThreadsShareNothingButTheirParts) {
    auto const w = between(-0.05, 1.05, 1), t = between(-23.0, 43.0, 2), rho = between(755.0, 1020.0, 3);
    equilibrium_curve const curve(standard_atmosphere);
    auto const check = [](char const* what, auto const& function, auto const&... inputs) {
        output<double> one, many;
        one.refused = function(inputs..., one.values, one.valid);
        many.refused =
            arrays::detail::in_parts([](auto& parts, auto const& each) { by_four_threads(parts, each); },
                                     function, inputs..., many.values, many.valid);
        expect_same(one, many, what);
    };
    check(
        "density", [](auto&&... a) { return arrays::density(a...); }, w, t);
    check(
        "composition", [](auto&&... a) { return arrays::mass_fraction_from_density(a...); }, rho,
        celsius(20.0));
    check(
        "correction", [](auto&&... a) { return arrays::strength(a...); }, alcoholometer(), w, t);
    check(
        "vapour from a curve", [](auto&&... a) { return arrays::vapour(a...); }, curve, w);
    check(
        "viscosity", [](auto&&... a) { return arrays::viscosity(a...); }, w, t);
}

/// @param function callable: (policy or nothing, ..., output) -> count
template <class T = double, class Function>
void expect_as_on_one_core(char const* what, Function const& function) {
    output<T> one;
    one.refused = function(one);
    output<T> many;
    many.refused = function(many, std::execution::par);
    expect_same(one, many, what);
    many.refused = function(many, std::execution::par_unseq);
    expect_same(one, many, what);
    many.refused = function(many, std::execution::seq);
    expect_same(one, many, what);
}

TEST(ArrayParallel, EveryFunctionAnswersAsOnOneCore) {
    auto const w = between(-0.05, 1.05, 1), t = between(-23.0, 43.0, 2), rho = between(755.0, 1020.0, 3);
    auto const pascals = between(2e3, 120e3, 4), n = between(1.32, 1.5, 5);
    auto const wf = between<float>(-0.05, 1.05, 6), tf = between<float>(-23.0, 43.0, 7);
    equilibrium_curve const curve(standard_atmosphere);
    alcoholometer const meter;
    expect_as_on_one_core("density", [&](auto& out, auto const&... policy) {
        return arrays::density(policy..., w, t, out.values, out.valid);
    });
    expect_as_on_one_core<float>("density of floats", [&](auto& out, auto const&... policy) {
        return arrays::density(policy..., wf, tf, out.values, out.valid);
    });
    expect_as_on_one_core("density at one temperature", [&](auto& out, auto const&... policy) {
        return arrays::density(policy..., w, celsius(20.0), out.values, out.valid);
    });
    expect_as_on_one_core("thermal expansion", [&](auto& out, auto const&... policy) {
        return arrays::thermal_expansion(policy..., w, t, out.values, out.valid);
    });
    expect_as_on_one_core("composition", [&](auto& out, auto const&... policy) {
        return arrays::mass_fraction_from_density(policy..., rho, t, out.values, out.valid);
    });
    expect_as_on_one_core("composition at one temperature", [&](auto& out, auto const&... policy) {
        return arrays::mass_fraction_from_density(policy..., rho, celsius(5.0), out.values, out.valid);
    });
    expect_as_on_one_core("conversion", [&](auto& out, auto const&... policy) {
        return arrays::to<mass_fraction, volume_fraction>(policy..., w, out.values, out.valid);
    });
    expect_as_on_one_core("correction", [&](auto& out, auto const&... policy) {
        return arrays::strength(policy..., meter, w, t, out.values, out.valid);
    });
    expect_as_on_one_core("vapour from a curve", [&](auto& out, auto const&... policy) {
        return arrays::vapour(policy..., curve, w, out.values, out.valid);
    });
    expect_as_on_one_core("vapour", [&](auto& out, auto const&... policy) {
        return arrays::vapour(policy..., w, pascals, out.values, out.valid);
    });
    expect_as_on_one_core("bubble temperature", [&](auto& out, auto const&... policy) {
        return arrays::bubble_temperature(policy..., w, pascals, out.values, out.valid);
    });
    expect_as_on_one_core("viscosity", [&](auto& out, auto const&... policy) {
        return arrays::viscosity(policy..., w, t, out.values, out.valid);
    });
    expect_as_on_one_core("speed of sound", [&](auto& out, auto const&... policy) {
        return arrays::speed_of_sound(policy..., w, t, out.values, out.valid);
    });
    expect_as_on_one_core("thermal conductivity", [&](auto& out, auto const&... policy) {
        return arrays::thermal_conductivity(policy..., w, t, out.values, out.valid);
    });
    expect_as_on_one_core("apply", [&](auto& out, auto const&... policy) {
        return arrays::apply(
            policy..., [](double x) { return plain::brix_from_refractive_index(x); }, out.values, out.valid,
            n);
    });
}

TEST(ArrayParallel, WithoutFlagsInPlaceAndInShortArrays) {
    for (std::size_t const count :
         {std::size_t{0}, std::size_t{1}, std::size_t{4096}, std::size_t{4097}, size}) {
        auto const w = between(0.0, 1.0, 8, count), t = between(21.0, 39.0, 9, count);
        std::vector<double> one(count), in_place = w;
        std::size_t const refused = arrays::density(w, t, one);
        EXPECT_EQ(arrays::density(std::execution::par, in_place, t, in_place), refused) << count;
        for (std::size_t i = 0; i < count; ++i) {
            ASSERT_TRUE(std::isnan(one[i]) ? std::isnan(in_place[i]) : in_place[i] == one[i])
                << count << ' ' << i;
        }
    }
}

TEST(ArrayParallel, RefusesAsOnOneCoreBeforeWriting) {
    std::vector<double> const w(size, 0.4), t(size, 20.0), short_t(size - 1, 20.0);
    std::vector<double> rho(size, -1.0);
    std::unique_ptr<bool[]> const few(new bool[3]);
    auto const both = [&](char const* argument, auto const& call) {
        auto const one = expect_refusal([&] { return call(); }, argument);
        auto const many = expect_refusal([&] { return call(std::execution::par); }, argument);
        EXPECT_STREQ(one.what(), many.what());
        for (double const each : rho) ASSERT_EQ(each, -1.0);
    };
    both("length of an input",
         [&](auto const&... policy) { return arrays::density(policy..., w, short_t, rho); });
    both("length of the flags", [&](auto const&... policy) {
        return arrays::density(policy..., w, t, rho, std::span<bool>(few.get(), 3));
    });
    both("temperature",
         [&](auto const&... policy) { return arrays::density(policy..., w, celsius(200.0), rho); });
    both("temperature", [&](auto const&... policy) {
        return arrays::density(policy..., std::vector<double>{}, celsius(200.0), std::vector<double>{});
    });
}

// Each part alone would be apart from the result of the same part.
TEST(ArrayParallel, RefusesAResultThatOverlapsAnInputPartly) {
    std::vector<double> all(3 * size, 0.4);
    auto const before = all;
    std::vector<double> const t(size, 20.0);
    std::string const what = "overlap of the results";
    std::span<double> const low = std::span(all).first(size);
    for (std::size_t const offset : {std::size_t{1}, std::size_t{8192}, size - 1}) {
        auto const high = std::span(all).subspan(offset, size);
        auto const index = [](double w) { return plain::brix_from_refractive_index(w); };
        expect_refusal([&] { return arrays::density(std::execution::par, low, t, high); }, what);
        expect_refusal([&] { return arrays::density(std::execution::par, high, celsius(20.0), low); }, what);
        expect_refusal([&] { return arrays::apply(std::execution::par, index, high, {}, low); }, what);
        EXPECT_EQ(all, before);
        std::vector<double> apart(size);
        EXPECT_EQ(arrays::density(std::execution::par, low, high, apart), 0u);  // inputs may overlap
    }
    EXPECT_EQ(arrays::density(std::execution::par, low, t, std::span(all).subspan(size, size)), 0u);
    EXPECT_EQ(arrays::density(std::execution::par, low, t, low, arrays::flags{}), 0u);
}

// The order in which threads take the parts differs from run to run; the exception that arrives must not.
TEST(ArrayParallel, TheExceptionOfTheLowestElementArrives) {
    std::vector<double> x(size), y(size);
    for (std::size_t i = 0; i < size; ++i) x[i] = static_cast<double>(i);
    auto const careless = [](double i) {
        if (i >= 9000.0) throw std::runtime_error(std::to_string(static_cast<int>(i)));
        return plain::brix_from_refractive_index(1.35);
    };
    for (int k = 0; k < 20; ++k) {
        try {
            arrays::apply(std::execution::par, careless, y, {}, x);
            FAIL() << "nothing was thrown";
        } catch (std::runtime_error const& e) {
            EXPECT_STREQ(e.what(), "9000");
        }
    }
}

/// @return how many processors this process may use; `hardware_concurrency` may count those of the machine
int processors() {
#if defined(__linux__)
    cpu_set_t allowed;
    if (sched_getaffinity(0, sizeof allowed, &allowed) == 0) return CPU_COUNT(&allowed);
#endif
    return static_cast<int>(std::thread::hardware_concurrency());
}

// Without TBB, or with its headers found but parts never shared, the policy would mean nothing.
TEST(ArrayParallel, UsesMoreThanOneThread) {
    if (processors() < 2) GTEST_SKIP() << "one processor";
    std::vector<double> const x(1 << 18, 1.35);
    std::vector<double> y(x.size());
    std::atomic<bool> another{false};
    auto const caller = std::this_thread::get_id();
    auto const watched = [&](double n) {
        if (std::this_thread::get_id() != caller) another.store(true, std::memory_order_relaxed);
        return plain::brix_from_refractive_index(n);
    };
    auto const give_up = std::chrono::steady_clock::now() + std::chrono::seconds(30);  // on a busy machine
    while (!another && std::chrono::steady_clock::now() < give_up)
        arrays::apply(std::execution::par, watched, y, {}, x);
    EXPECT_TRUE(another);
}

}  // namespace
}  // namespace aqueth
