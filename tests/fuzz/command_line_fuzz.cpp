// SPDX-License-Identifier: BSL-1.0
// Whole tasks on invalid command lines: they answer (0) or refuse (2), never fail (1). The first line chooses
// the task, by its name or by its first byte; every other line is one argument. What stands behind an empty
// line is a file, whose name is written @: settings in TOML, an earlier answer in JSON, rows or points in
// CSV.
#include "hostile.hpp"

#include "program.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <string>
#include <string_view>
#include <vector>

#include <sys/mman.h>
#include <unistd.h>

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

/// A file in memory.
class file {
public:
    void hold(std::string_view text) {
        HOSTILE_REQUIRE(ftruncate(descriptor_, 0) == 0);
        auto const written = pwrite(descriptor_, text.data(), text.size(), 0);
        HOSTILE_REQUIRE(written == static_cast<ssize_t>(text.size()));
    }
    std::string const& name() const { return name_; }

private:
    int descriptor_ = memfd_create("fuzz", 0);
    std::string name_ = "/proc/self/fd/" + std::to_string(descriptor_);
};

/// What would write files, or be slow for good reason: 1e8 draws, states by the hundred thousand.
bool is_left_out(std::vector<std::string> const& words, std::string_view contents) {
    bool const many = words.front() == "many";
    for (std::size_t k = 1; k < words.size(); ++k) {
        for (char const* const word : {"--draw", "--replace", "--points", "--liquids", "--record", "--out"})
            if (words[k].starts_with(word)) return true;
        bool const rows_in_memory =
            many && words[k] == "--rows" && k + 1 < words.size() && words[k + 1] == "@";
        if (words[k].starts_with("--rows") && !rows_in_memory) return true;  // /dev/zero has no end
    }
    std::string columns(contents);
    for (char& c : columns) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
    return many &&
           (columns.find("draws") != std::string::npos || columns.find("points") != std::string::npos ||
            columns.find("liquids") != std::string::npos || columns.find("rows") != std::string::npos);
}

}  // namespace

// The settings and the input of whoever runs this are no part of the search.
extern "C" int LLVMFuzzerInitialize(int*, char***) {
    unsetenv("AQUETH_SETTINGS");
    setenv("XDG_CONFIG_HOME", "/nonexistent", 1);
    HOSTILE_REQUIRE(std::freopen("/dev/null", "r", stdin) != nullptr);
    return 0;
}

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    std::string_view rest = aqueth::hostile::bytes(data, size).rest();
    program::task const& task = chosen(line_of(rest));
    std::vector<std::string> words{task.who().name};
    while (!rest.empty() && rest.front() != '\n') words.emplace_back(line_of(rest));
    line_of(rest);
    if (is_left_out(words, rest)) return 0;
    static file contents;
    contents.hold(rest);
    for (std::string& word : words)
        if (word.starts_with('@')) word = contents.name() + word.substr(1);  // "@#hearts"
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    int const status = task.run(static_cast<int>(words.size()), arguments.data());
    HOSTILE_REQUIRE(status == 0 || status == 2);
    return 0;
}
