// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <benchmark/benchmark.h>

#include <boost/align/aligned_allocator.hpp>

#include <algorithm>
#include <cstddef>
#include <cstdio>
#include <map>
#include <string>
#include <utility>
#include <vector>

/// Several ways to do the same thing, timed side by side in one run and printed as ratios.
///
/// Absolute times differ from machine to machine, and on a busy machine from minute to minute. Ratios of
/// medians of interleaved repetitions stay the same. Each way processes the same elements.
namespace aqueth::bench {

/// Number of elements in one pass: small enough for the L1 cache. It is not a power of two, because
/// consecutive arrays would then be a multiple of 4096 bytes apart. A processor would then mistake a load
/// from one array for one of a recent store to another (4K aliasing).
inline constexpr std::size_t elements = 960;

/// Elements that begin at a cache line, as in aligned allocations.
template <class T>
using numbers = std::vector<T, boost::alignment::aligned_allocator<T, 64>>;

namespace detail {

/// The registered ways, in order: the runs themselves are interleaved at random.
inline std::vector<std::pair<std::string, std::vector<std::string>>>& registered() {
    static std::vector<std::pair<std::string, std::vector<std::string>>> operations;
    return operations;
}

/// How many elements a way takes in one pass.
inline std::map<std::string, std::size_t>& counts() {
    static std::map<std::string, std::size_t> of;
    return of;
}

inline benchmark::internal::Benchmark& register_way(std::string const& operation, std::string const& way,
                                                    std::size_t count, auto const& once) {
    auto& operations = registered();
    if (operations.empty() || operations.back().first != operation) operations.push_back({operation, {}});
    operations.back().second.push_back(way);
    counts()[operation + "/" + way] = count;
    auto* const added =
        benchmark::RegisterBenchmark((operation + "/" + way).c_str(), [once](benchmark::State& timing) {
            for (auto _ : timing) once();
        });
    return *added->MinTime(0.02);
}

}  // namespace detail

/// A way that takes one element at a time.
/// @param operation what is done
/// @param way       how
/// @param f         callable: index of the element -> result
template <class F>
void one_by_one(std::string const& operation, std::string const& way, F f) {
    detail::register_way(operation, way, elements, [f] {
        for (std::size_t i = 0; i < elements; ++i) benchmark::DoNotOptimize(f(i));
        benchmark::ClobberMemory();
    });
}

/// A way that takes all elements at once.
/// @param operation what is done
/// @param way       how
/// @param f         callable without arguments
/// @param count     how many elements these are
template <class F>
void all_at_once(std::string const& operation, std::string const& way, F f, std::size_t count = elements) {
    detail::register_way(operation, way, count, [f] {
        f();
        benchmark::ClobberMemory();
    });
}

/// A way that takes all elements at once and may use several cores. The clock times it, not the processor, so
/// other programs only add to it: the shortest repetition counts, not the median.
/// @param operation what is done
/// @param way       how
/// @param f         callable without arguments
/// @param count     how many elements these are
template <class F>
void by_the_clock(std::string const& operation, std::string const& way, F f, std::size_t count) {
    detail::register_way(operation, way, count,
                         [f] {
                             f();
                             benchmark::ClobberMemory();
                         })
        .UseRealTime()
        ->ComputeStatistics("shortest", [](std::vector<double> const& times) {
            return *std::min_element(times.begin(), times.end());
        });
}

/// Collects the medians and prints, for each operation, every way's time for one element and its multiple of
/// the library's own time. The library's ways begin with "aqueth, one by one" and "aqueth, arrays".
class ratios : public benchmark::BenchmarkReporter {
public:
    bool ReportContext(Context const&) override { return true; }

    void ReportRuns(std::vector<Run> const& runs) override {
        for (Run const& run : runs) {
            char const* const counts = run.run_name.time_type == "real_time" ? "shortest" : "median";
            bool const wanted =
                run.run_type == Run::RT_Aggregate ? run.aggregate_name == counts : run.repetitions <= 1;
            if (wanted) times_[run.run_name.function_name] = nanoseconds(run);
        }
    }

    void Finalize() override {
        for (auto const& [operation, ways] : detail::registered()) {
            double const scalar = ours(operation, ways, "aqueth, one by one");
            double const array = ours(operation, ways, "aqueth, arrays");
            std::printf("\n%-58s %9s  %12s  %12s\n", operation.c_str(), "ns", "x one by one", "x arrays");
            for (std::string const& way : ways) {
                auto const found = times_.find(operation + "/" + way);
                if (found == times_.end()) continue;  // left out on the command line
                std::printf("  %-56s %9.3f", way.c_str(), found->second);
                for (double const reference : {scalar, array}) {
                    if (reference > 0.0) {
                        std::printf("  %12.2f", found->second / reference);
                    } else {
                        std::printf("  %12s", "");
                    }
                }
                std::printf("\n");
            }
        }
    }

private:
    static double nanoseconds(Run const& run) {
        double const time =
            run.run_name.time_type == "real_time" ? run.GetAdjustedRealTime() : run.GetAdjustedCPUTime();
        return time * 1e9 / benchmark::GetTimeUnitMultiplier(run.time_unit) /
               static_cast<double>(detail::counts()[run.run_name.function_name]);
    }
    double ours(std::string const& operation, std::vector<std::string> const& ways,
                std::string const& beginning) const {
        for (std::string const& way : ways) {
            auto const found = times_.find(operation + "/" + way);
            if (way.rfind(beginning, 0) == 0 && found != times_.end()) return found->second;
        }
        return 0.0;
    }

    std::map<std::string, double> times_;
};

/// Runs the registered ways: medians of interleaved repetitions, unless the command line says otherwise.
/// @param argc as main has it
/// @param argv as main has it
/// @return exit status
inline int run(int argc, char** argv) {
    std::vector<char*> arguments(argv, argv + argc);
    std::string repetitions = "--benchmark_repetitions=15";
    std::string interleaving = "--benchmark_enable_random_interleaving=true";
    if (argc > 0) {
        arguments.insert(arguments.begin() + 1, {repetitions.data(), interleaving.data()});
    }
    auto count = static_cast<int>(arguments.size());
    arguments.push_back(nullptr);
    benchmark::Initialize(&count, arguments.data());
    if (benchmark::ReportUnrecognizedArguments(count, arguments.data())) return 2;
    ratios reporter;
    benchmark::RunSpecifiedBenchmarks(&reporter);
    return 0;
}

}  // namespace aqueth::bench
