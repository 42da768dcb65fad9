// SPDX-License-Identifier: BSL-1.0
// Whole programs on invalid command lines: they answer (0) or refuse (2), never fail (1). The first byte
// chooses the program, every line behind it is one argument.
#include "hostile.hpp"

#include <algorithm>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#define AQUETH_PROGRAM(entry) int entry(int, char**);
#include "programs.inc"
#undef AQUETH_PROGRAM

namespace {

using entry = int (*)(int, char**);
constexpr entry programs[] = {
#define AQUETH_PROGRAM(entry) entry,
#include "programs.inc"
#undef AQUETH_PROGRAM
};

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
