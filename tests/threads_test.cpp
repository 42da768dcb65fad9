// SPDX-License-Identifier: BSL-1.0
// The library from several threads at once: it has no state to share, so every thread gets what one
// thread alone gets. The preset threads runs this under the thread sanitizer, which sees a race even if the
// numbers come out right.
#include <aqueth/aqueth.hpp>

#include <gtest/gtest.h>

#include <array>
#include <atomic>
#include <span>
#include <string_view>
#include <thread>
#include <type_traits>
#include <vector>

namespace aqueth {
namespace {

/// A bit of everything; `shared` is used by all threads.
std::vector<double> a_bit_of_everything(boiling_curve const& shared, double percent) {
    std::vector<double> seen;
    auto const spirit = parcel::of(2.0 * litre, by_volume(percent), celsius(20));
    seen.push_back(alcoholometer().reading(spirit.at(celsius(25))).percent());
    seen.push_back(dilute(spirit, by_volume(20), water_at(celsius(15))).product.volume().value());
    std::array<lot, 2> const lots{{{spirit}, {water(3.0 * kilogram, celsius(20))}}};
    seen.push_back(blend_to_strength(lots, by_volume(22), celsius(20)).product.mass().value());
    seen.push_back(bubble_point(by_volume(percent), standard_atmosphere).temperature.celsius());
    seen.push_back(azeotrope(standard_atmosphere).liquid.value());  // walks the whole range
    seen.push_back(distillate_strength(shared, column::of_stages(4.5), by_volume(10), 2.0).value());

    still const small{{2.0 * kilowatt},
                      column::of_stages(2.0),
                      neck::insulated(),
                      head::total_condenser(reflux::constant(1.0))};
    run_plan plan;
    plan.ends.push_back(condition::still_strength(by_volume(2)));
    auto const run =
        distil(wash::of(parcel::of(20.0 * litre, by_volume(10), celsius(20))), small, plan, shared);
    seen.push_back(run.kept_alcohol().value());

    std::array<input_quantity, 2> const inputs{{input_quantity::normal("strength", "", percent, 0.1),
                                                input_quantity::rectangular("t", "°C", 20, 1)}};
    auto const model = [](auto x) {
        using T = std::decay_t<decltype(x[0])>;
        return measurement_model::mass_fraction_from_reading(T(x[0] / T(100.0)), T(x[1]));
    };
    seen.push_back(propagate(model, inputs).standard_uncertainty);
    seen.push_back(monte_carlo(model, inputs, 1000).standard_uncertainty());
    try {
        static_cast<void>(density(by_mass(10), celsius(95)));
    } catch (refusal const& e) {  // messages are made anew each time
        seen.push_back(static_cast<double>(std::string_view(e.what()).size()));
    }
    return seen;
}

TEST(Threads, EachGetsWhatOneAloneGets) {
    constexpr std::size_t threads = 4;
    constexpr std::array<double, threads> percents{25.0, 40.0, 62.5, 96.0};
    boiling_curve const shared(standard_atmosphere);

    std::array<std::vector<double>, threads> together;
    std::atomic<std::size_t> ready{0};
    std::vector<std::thread> at_work;
    for (std::size_t k = 0; k < threads; ++k) {
        at_work.emplace_back([&, k] {
            ++ready;
            while (ready < threads) std::this_thread::yield();  // so that they really run at the same time
            together[k] = a_bit_of_everything(shared, percents[k]);
        });
    }
    for (std::thread& each : at_work) each.join();

    for (std::size_t k = 0; k < threads; ++k)
        EXPECT_EQ(together[k], a_bit_of_everything(shared, percents[k])) << percents[k];
}

}  // namespace
}  // namespace aqueth
