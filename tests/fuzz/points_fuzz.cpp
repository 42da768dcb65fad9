// SPDX-License-Identifier: BSL-1.0
// Files of measured points, and the equilibrium that is laid through them; logs of runs.
#include "hostile.hpp"

#include "points.hpp"

#include <aqueth/measured_equilibrium.hpp>
#include <aqueth/still/run_log.hpp>

#include <sys/mman.h>
#include <unistd.h>

#include <string>

using namespace program;
using namespace aqueth::hostile;

namespace {

/// A file that lives in memory, for a reader that wants a name.
class memory_file {
public:
    explicit memory_file(std::string_view text) : number_(memfd_create("points", 0)) {
        if (number_ < 0 || write(number_, text.data(), text.size()) != static_cast<ssize_t>(text.size()))
            std::abort();
    }
    ~memory_file() { close(number_); }
    memory_file(memory_file const&) = delete;
    memory_file& operator=(memory_file const&) = delete;
    std::string name() const { return fmt::format("/proc/self/fd/{}", number_); }

private:
    int number_;
};

void lay_through(std::vector<measured_point> const& points) {
    if (points.size() > 100) return;  // 400 sums over it: slow, and nothing new
    auto const measured = unless_refused([&] { return measured_equilibrium(points, standard_atmosphere); });
    if (!measured) return;
    double previous = -1.0;
    for (measured_point const& each : measured->points()) {
        HOSTILE_REQUIRE(each.liquid.value() > previous);
        previous = each.liquid.value();
        if (auto const y = unless_refused([&] { return measured->vapour(each.liquid); }))
            HOSTILE_NEAR(y->value(), each.vapour.value(), 1e-9);
    }
    if (auto const c = unless_refused([&] { return measured->check(); })) {
        HOSTILE_WITHIN(c->area_percent, 0.0, 100.0 + 1e-9);
        HOSTILE_WITHIN(c->largest_vapour_deviation, c->mean_vapour_deviation * (1 - 1e-12), 1.0);
    }
    if (auto const curve = unless_refused([&] { return measured->curve(); })) {
        for (double x = 0.0; x <= 1.0; x += 0.0625)
            HOSTILE_WITHIN(curve->vapour(mole_fraction(x)).value(), 0.0, 1.0);
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    std::string_view const text(reinterpret_cast<char const*>(data), size);
    try {
        lay_through(parse_measured_points(text));
    } catch (text_error const& refused) {
        HOSTILE_REQUIRE(*refused.what());
    }
    try {
        for (equilibrium_point const& each : parse_equilibrium_points(text).points) {
            HOSTILE_REQUIRE(each.line > 0 && (each.vapour || each.temperature));
            if (each.temperature) HOSTILE_WITHIN(each.temperature->celsius(), 0.0, 120.01);
            if (each.pressure) HOSTILE_WITHIN(in(*each.pressure, kilopascal), 0.09, 20001.0);
        }
    } catch (text_error const& refused) {
        HOSTILE_REQUIRE(*refused.what());
    }
    try {
        for (log_row const& row : parse_run_log(text).rows) {
            HOSTILE_REQUIRE(row.line > 0 && (row.elapsed || row.collected));
            if (row.strength) HOSTILE_WITHIN(row.strength->value(), 0.0, 1.0);
            if (row.head) HOSTILE_WITHIN(row.head->celsius(), 0.0, 120.01);
        }
    } catch (text_error const& refused) {
        HOSTILE_REQUIRE(*refused.what());
    }

    memory_file const file(text);
    given const g{"--points", file.name(), true};
    try {
        read_points(g, standard_atmosphere);
    } catch (bad_input const& refused) {
        HOSTILE_REQUIRE(*refused.what());
    }
    return 0;
}
