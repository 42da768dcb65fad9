// SPDX-License-Identifier: BSL-1.0
// Whole tasks on invalid command lines: they answer (0) or refuse (2), never fail (1). The first line chooses the task,
// by its name or by its first byte; every other line is one argument.
#include "hostile.hpp"

#include "program.hpp"

#include <algorithm>
#include <string>
#include <string_view>
#include <vector>

namespace {

std::vector<program::task const*> const& tasks() {
    static std::vector<program::task const*> const some = [] {
        auto all = program::task::all();
        // It writes files and calls gnuplot.
        std::erase_if(all,
                      [](auto const* t) { return t->who().name == std::string_view("draw_equilibrium"); });
        return all;
    }();
    return some;
}

program::task const& chosen(std::string_view word) {
    for (auto const* each : tasks())
        if (word == each->who().name) return *each;
    return *tasks()[word.empty() ? 0 : static_cast<unsigned char>(word.front()) % tasks().size()];
}

/// Takes a line from the text.
std::string_view line_of(std::string_view& text) {
    auto const end = (std::min)(text.find('\n'), text.size());
    std::string_view const line = text.substr(0, end);
    text.remove_prefix((std::min)(end + 1, text.size()));
    return line;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    std::string_view rest = aqueth::hostile::bytes(data, size).rest();
    program::task const& task = chosen(line_of(rest));
    std::vector<std::string> words{task.who().name};
    while (!rest.empty()) {
        words.emplace_back(line_of(rest));
        // What would draw, or be slow for good reason: 1e8 draws, states by the hundred thousand.
        for (char const* const word : {"--draw", "--replace", "--draws", "--points", "--rows", "--liquids"})
            if (words.back().starts_with(word)) return 0;
    }
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    int const status = task.run(static_cast<int>(words.size()), arguments.data());
    HOSTILE_REQUIRE(status == 0 || status == 2);
    return 0;
}
