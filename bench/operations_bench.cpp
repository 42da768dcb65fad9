// SPDX-License-Identifier: BSL-1.0
// Cost of the operations of the trade. All are far faster than a single calculation needs. The timing shows
// mistakes such as a lost closed form or a needless allocation.
#include <aqueth/blending.hpp>
#include <aqueth/bottling.hpp>
#include <aqueth/lot_blending.hpp>
#include <aqueth/parcel.hpp>

#include <benchmark/benchmark.h>

#include <array>
#include <cstdint>
#include <vector>

namespace {

using namespace aqueth;

parcel const spirit = parcel::of(25.0 * litre, by_volume(78.0), celsius(18.0));

void parcel_from_volume(benchmark::State& timing) {
    for (auto _ : timing) benchmark::DoNotOptimize(parcel::of(25.0 * litre, by_volume(78.0), celsius(18.0)));
}
BENCHMARK(parcel_from_volume);

void mix_two(benchmark::State& timing) {
    parcel const weak = parcel::of(10.0 * litre, by_volume(30.0), celsius(18.0));
    for (auto _ : timing) benchmark::DoNotOptimize(mix({spirit, weak}, celsius(20.0)));
}
BENCHMARK(mix_two);

void dilute_to_bottling_strength(benchmark::State& timing) {
    for (auto _ : timing)
        benchmark::DoNotOptimize(dilute(spirit, by_volume(43.0), water_at(celsius(15.0)), celsius(20.0)));
}
BENCHMARK(dilute_to_bottling_strength);

void blend_three_lots(benchmark::State& timing) {
    std::array const lots{lot{parcel::of(40.0 * litre, by_volume(62.0), celsius(18.0))},
                          lot{parcel::of(40.0 * litre, by_volume(55.0), celsius(18.0))},
                          lot{parcel::of(40.0 * litre, by_volume(38.0), celsius(18.0))}};
    for (auto _ : timing) benchmark::DoNotOptimize(blend_to_strength(lots, by_volume(50.0), celsius(20.0)));
}
BENCHMARK(blend_three_lots);

void blend_many_lots(benchmark::State& timing) {
    std::vector<lot> lots;
    for (std::int64_t k = 0; k < timing.range(0); ++k)
        lots.push_back(
            lot{parcel::of(40.0 * litre, by_volume(20.0 + static_cast<double>(k % 60)), celsius(18.0))});
    for (auto _ : timing) benchmark::DoNotOptimize(blend_to_strength(lots, by_volume(50.0), celsius(20.0)));
    timing.SetComplexityN(timing.range(0));
}
BENCHMARK(blend_many_lots)->RangeMultiplier(10)->Range(100, 100000)->Complexity();

void bottle_count(benchmark::State& timing) {
    for (auto _ : timing) benchmark::DoNotOptimize(fill_bottles(spirit, 700.0 * millilitre));
}
BENCHMARK(bottle_count);

}  // namespace
