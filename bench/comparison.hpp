// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <benchmark/benchmark.h>

#include <cstddef>
#include <cstdio>
#include <map>
#include <string>
#include <utility>
#include <vector>

/// Several ways to do the same thing, timed side by side in one run and printed as ratios.
///
/// Absolute times do not carry over from machine to machine, and on a busy machine not from minute to minute;
/// ratios of medians of interleaved repetitions do. Each way works through the same elements.
namespace aqueth::bench {

/// How many elements every way works through in one go: small enough for the first cache.
inline constexpr std::size_t elements = 1024;

namespace detail {

inline void register_way(std::string const& operation, std::string const& way, auto const& once) {
    auto* const added =
        benchmark::RegisterBenchmark((operation + "/" + way).c_str(), [once](benchmark::State& timing) {
            for (auto _ : timing) once();
        });
    added->MinTime(0.02);
}

}  // namespace detail

/// A way that takes one element at a time.
/// @param operation what is done
/// @param way       how
/// @param f         callable: index of the element -> result
template <class F>
void one_by_one(std::string const& operation, std::string const& way, F f) {
    detail::register_way(operation, way, [f] {
        for (std::size_t i = 0; i < elements; ++i) benchmark::DoNotOptimize(f(i));
        benchmark::ClobberMemory();
    });
}

/// A way that takes all elements at once.
/// @param operation what is done
/// @param way       how
/// @param f         callable without arguments
template <class F>
void all_at_once(std::string const& operation, std::string const& way, F f) {
    detail::register_way(operation, way, [f] {
        f();
        benchmark::ClobberMemory();
    });
}

/// Collects the medians and prints, for each operation, every way's time for one element and its multiple of
/// the library's own: what begins with "aqueth, one by one" and "aqueth, arrays".
class ratios : public benchmark::BenchmarkReporter {
public:
    bool ReportContext(Context const&) override { return true; }

    void ReportRuns(std::vector<Run> const& runs) override {
        for (Run const& run : runs) {
            bool const wanted =
                run.run_type == Run::RT_Aggregate ? run.aggregate_name == "median" : run.repetitions <= 1;
            if (!wanted) continue;
            std::string const name = run.run_name.function_name;
            std::size_t const slash = name.find('/');
            std::string const operation = name.substr(0, slash);
            if (results_.empty() || results_.back().first != operation) {
                bool known = false;
                for (auto& each : results_) {
                    if (each.first == operation) {
                        each.second.push_back({name.substr(slash + 1), nanoseconds(run)});
                        known = true;
                    }
                }
                if (known) continue;
                results_.push_back({operation, {}});
            }
            results_.back().second.push_back({name.substr(slash + 1), nanoseconds(run)});
        }
    }

    void Finalize() override {
        for (auto const& [operation, ways] : results_) {
            double const scalar = fastest(ways, "aqueth, one by one");
            double const array = fastest(ways, "aqueth, arrays");
            std::printf("\n%-58s %9s  %12s  %12s\n", operation.c_str(), "ns", "x one by one", "x arrays");
            for (auto const& [name, time] : ways) {
                std::printf("  %-56s %9.3f", name.c_str(), time);
                for (double const ours : {scalar, array}) {
                    if (ours > 0.0) {
                        std::printf("  %12.2f", time / ours);
                    } else {
                        std::printf("  %12s", "");
                    }
                }
                std::printf("\n");
            }
        }
    }

private:
    using way = std::pair<std::string, double>;

    static double nanoseconds(Run const& run) {
        return run.GetAdjustedCPUTime() * 1e9 / benchmark::GetTimeUnitMultiplier(run.time_unit) /
               static_cast<double>(elements);
    }
    static double fastest(std::vector<way> const& ways, std::string const& beginning) {
        double best = 0.0;
        for (auto const& [name, time] : ways) {
            if (name.rfind(beginning, 0) == 0 && (best == 0.0 || time < best)) best = time;
        }
        return best;
    }

    std::vector<std::pair<std::string, std::vector<way>>> results_;
};

/// Runs what is registered: medians of interleaved repetitions, unless the command line says otherwise.
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
