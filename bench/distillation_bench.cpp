// SPDX-License-Identifier: BSL-1.0
// Cost of the runs of a still: the forecast that a user waits for, and the function that a search for stages
// repeats.
#include <aqueth/boiling_curve.hpp>
#include <aqueth/still/learning.hpp>
#include <aqueth/still/run.hpp>
#include <aqueth/still/traces.hpp>

#include "still/learning_logs.hpp"

#include <benchmark/benchmark.h>

#include <array>
#include <chrono>
#include <cstddef>
#include <span>
#include <vector>

namespace {

using namespace aqueth;

boiling_curve const curve(standard_atmosphere);
wash const charge = wash::of(25.0 * litre, by_volume(11.0), plato(1.5), celsius(20.0));

still five_stages() {
    still s{{2.0 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_stages(5);
    s.neck = neck::condensing(0.05);
    s.head = head::total_condenser(reflux::constant(3.0));
    return s;
}
run_plan plan(int points) {
    run_plan p;
    p.cuts = {{condition::collected(100.0 * millilitre), false},
              {condition::distillate_strength(by_volume(80))}};
    p.ends = {condition::still_strength(by_volume(0.5))};
    p.points = points;
    return p;
}

void make_curve(benchmark::State& timing) {
    for (auto _ : timing) benchmark::DoNotOptimize(boiling_curve(standard_atmosphere));
}
BENCHMARK(make_curve);

void vapour_of_the_curve(benchmark::State& timing) {
    double x = 0.01;
    for (auto _ : timing) benchmark::DoNotOptimize(x = 0.01 + 1e-9 * curve.vapour(x));
}
BENCHMARK(vapour_of_the_curve);

// The forecast that distillation_columns_test.cpp holds against fine steps
// (ForecastOfFiveStagesAgainstFineSteps: collected strength to 1e-8 at the cuts, 2e-8 between), with the
// given number of recorded states.
void forecast_of_five_stages(benchmark::State& timing) {
    auto const s = five_stages();
    auto const p = plan(static_cast<int>(timing.range(0)));
    for (auto _ : timing) benchmark::DoNotOptimize(distil(charge, s, p, curve));
}
BENCHMARK(forecast_of_five_stages)
    ->ArgName("states")
    ->Arg(0)
    ->Arg(200)
    ->Arg(1000)
    ->Unit(benchmark::kMillisecond);

// The same with ten traces: at most half as much again.
void forecast_with_traces(benchmark::State& timing) {
    auto const s = five_stages();
    auto const p = plan(static_cast<int>(timing.range(0)));
    std::vector<trace_amount> amounts;
    for (trace const each : all_traces)
        if (each != trace::furfural) amounts.push_back({each, 1.0 * gram});
    for (auto _ : timing) benchmark::DoNotOptimize(distil_with_traces(charge, amounts, s, p, curve));
}
BENCHMARK(forecast_with_traces)->ArgName("states")->Arg(0)->Arg(1000)->Unit(benchmark::kMillisecond);

// Four plates and a condenser that hold liquid; the run that run_holdup_test.cpp holds against tiny explicit
// steps.
void forecast_with_holdup(benchmark::State& timing) {
    still s{{1.5 * kilowatt, units::heat_capacity(), 3.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_plates(4, 0.6).holding(60.0 * millilitre);
    s.head = head::total_condenser(reflux::constant(3.0)).holding(10.0 * millilitre);
    auto const p = plan(static_cast<int>(timing.range(0)));
    for (auto _ : timing) benchmark::DoNotOptimize(distil(charge, s, p, curve));
}
BENCHMARK(forecast_with_holdup)->ArgName("states")->Arg(0)->Arg(1000)->Unit(benchmark::kMillisecond);

void forecast_by_enthalpy_balance(benchmark::State& timing) {
    auto s = five_stages();
    s.flow = flow_model::enthalpy_balance;
    auto const p = plan(static_cast<int>(timing.range(0)));
    for (auto _ : timing) benchmark::DoNotOptimize(distil(charge, s, p, curve));
}
BENCHMARK(forecast_by_enthalpy_balance)->ArgName("states")->Arg(0)->Arg(1000)->Unit(benchmark::kMillisecond);

// The same five stages, with a reflux that keeps a strength, against a constant one. Both are timed in turn,
// so that the ratio of their times is that of the same minute.
void kept_strength_against_constant_reflux(benchmark::State& timing) {
    using clock = std::chrono::steady_clock;
    std::array stills{five_stages(), five_stages()};
    stills[1].head = head::total_condenser(reflux::constant_strength(by_volume(90), 1000.0));
    for (still& s : stills) s.flow = static_cast<flow_model>(timing.range(1));
    run_plan p;
    p.ends = {condition::still_strength(by_volume(0.5))};
    p.points = static_cast<int>(timing.range(0));
    std::array<std::chrono::duration<double>, 2> spent{};
    for (auto _ : timing) {
        for (std::size_t k = 0; k < 2; ++k) {
            auto const start = clock::now();
            benchmark::DoNotOptimize(distil(charge, stills[k], p, curve));
            spent[k] += clock::now() - start;
        }
    }
    timing.counters["ratio"] = spent[1] / spent[0];
}
BENCHMARK(kept_strength_against_constant_reflux)
    ->ArgNames({"states", "flow"})
    ->Args({0, static_cast<int>(flow_model::constant_molar_overflow)})
    ->Args({1000, static_cast<int>(flow_model::constant_molar_overflow)})
    ->Args({1000, static_cast<int>(flow_model::enthalpy_balance)})
    ->Unit(benchmark::kMillisecond);

// The most expensive valid run: a hundred stages that keep a strength near the azeotrope.
void forecast_that_keeps_a_strength(benchmark::State& timing) {
    auto s = five_stages();
    s.tower = column::of_stages(100);
    s.head = head::total_condenser(reflux::constant_strength(by_volume(97), 1000.0));
    s.flow = flow_model::enthalpy_balance;
    run_plan p;
    p.ends = {condition::still_strength(by_volume(0.5))};
    p.points = static_cast<int>(timing.range(0));
    for (auto _ : timing) benchmark::DoNotOptimize(distil(charge, s, p, curve));
}
BENCHMARK(forecast_that_keeps_a_strength)
    ->ArgName("states")
    ->Arg(0)
    ->Arg(1000)
    ->Unit(benchmark::kMillisecond);

void search_for_stages(benchmark::State& timing) {
    std::array const past{past_run{charge, 100.0 * millilitre, 1.8 * litre, by_volume(88.0)}};
    for (auto _ : timing) {
        benchmark::DoNotOptimize(estimate_stages(std::span<past_run const>(past), reflux::constant(3.0),
                                                 neck::insulated(), 0.5, curve));
    }
}
BENCHMARK(search_for_stages);

// Four figures from the logs of three runs with 12 rows and every quantity: the user waits for it.
void learning_from_three_logs(benchmark::State& timing) {
    still s{{1.5 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin, celsius(20)}};
    s.tower = column::of_plates(4, 0.6);
    s.neck = neck::condensing(0.05);
    std::vector<run_log> logs;
    for (double const ratio : {3.0, 1.5, 6.0}) {
        s.head = head::total_condenser(reflux::constant(ratio));
        test::log_contents const everything{12, 0.25, true, true, true, true, true};
        logs.push_back(test::with_noise(test::log_of(charge, s, everything, curve), 1, 0.5, 0.5, 10.0, 1.0));
        if (ratio != 3.0) logs.back().reflux_ratio = ratio;
    }
    using figure = still_figure;
    std::vector<still_unknown> const unknowns{
        {figure::plate_efficiency}, {figure::neck_share}, {figure::reflux_ratio}, {figure::pot_loss}};
    for (auto _ : timing) {
        benchmark::DoNotOptimize(learn_still(s, std::span<run_log const>(logs),
                                             std::span<still_unknown const>(unknowns), {}, curve));
    }
}
BENCHMARK(learning_from_three_logs)->Unit(benchmark::kMillisecond);

}  // namespace
