// SPDX-License-Identifier: BSL-1.0
// Whole programs on invalid command lines: they answer (0) or refuse (2), never fail (1). The first byte
// chooses the program, every line behind it is one argument.
#include "hostile.hpp"

#include "drawing.hpp"
#include "points.hpp"
#include "progress.hpp"
#include "still_options.hpp"
#include "still_program.hpp"
#include "uncertainty_program.hpp"

#include <aqueth/array.hpp>
#include <aqueth/correlation/balling.hpp>
#include <aqueth/correlation/excise_notice_226.hpp>
#include <aqueth/correlation/fermentation.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/measured_equilibrium.hpp>

#include <array>
#include <cmath>
#include <functional>
#include <map>
#include <numeric>
#include <set>
#include <tuple>

// Each in a room of its own, all in one translation unit: what they include stands above already.
// draw_equilibrium is left out, and so is the option --draw: they write files and call gnuplot.
namespace blend_lots {
#include "blend_lots.cpp"
}
namespace boiling_point {
#include "boiling_point.cpp"
}
namespace check_label {
#include "check_label.cpp"
}
namespace convert_strength {
#include "convert_strength.cpp"
}
namespace correct_reading {
#include "correct_reading.cpp"
}
namespace dilute_spirit {
#include "dilute_spirit.cpp"
}
namespace equilibrium_table {
#include "equilibrium_table.cpp"
}
namespace fill_bottles_program {
#include "fill_bottles.cpp"
}
namespace fill_jars_program {
#include "fill_jars.cpp"
}
namespace forecast_run {
#include "forecast_run.cpp"
}
namespace judge_uncertainty {
#include "judge_uncertainty.cpp"
}
namespace judge_wash {
#include "judge_wash.cpp"
}
namespace learn_still_program {
#include "learn_still.cpp"
}
namespace plan_season {
#include "plan_season.cpp"
}
namespace print_table {
#include "print_table.cpp"
}
namespace read_thermometer {
#include "read_thermometer.cpp"
}

namespace {
using entry = int (*)(int, char**);
constexpr entry programs[] = {
    blend_lots::main,          boiling_point::main, check_label::main,       convert_strength::main,
    correct_reading::main,     dilute_spirit::main, equilibrium_table::main, fill_bottles_program::main,
    fill_jars_program::main,   forecast_run::main,  judge_uncertainty::main, judge_wash::main,
    learn_still_program::main, plan_season::main,   print_table::main,       read_thermometer::main};
}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    aqueth::hostile::bytes in(data, size);
    auto const which = static_cast<std::size_t>(in.choice(static_cast<int>(std::size(programs))));
    std::vector<std::string> words{"program"};
    std::string_view rest = in.rest();
    while (!rest.empty()) {
        auto const end = (std::min)(rest.find('\n'), rest.size());
        words.emplace_back(rest.substr(0, end));
        rest.remove_prefix((std::min)(end + 1, rest.size()));
        // What would draw, or be slow for good reason: 1e8 draws, states by the hundred thousand.
        for (char const* const word : {"--draw", "--replace", "--draws", "--points", "--rows", "--liquids"})
            if (words.back().starts_with(word)) return 0;
    }
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    int const status = programs[which](static_cast<int>(words.size()), arguments.data());
    HOSTILE_REQUIRE(status == 0 || status == 2);
    return 0;
}
