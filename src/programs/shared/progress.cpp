// SPDX-License-Identifier: BSL-1.0
#include "progress.hpp"

#include <fmt/format.h>

#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <string_view>

namespace program {

namespace {

/// Whether a byte begins a character of UTF-8.
bool begins(char byte) { return (static_cast<unsigned char>(byte) & 0xC0u) != 0x80u; }

std::size_t characters_in(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), begins));
}

/// The text, or as many of its characters of UTF-8 as there is room for.
std::string first_characters(std::string text, std::size_t most) {
    std::size_t count = 0, at = 0;
    for (; at < text.size(); ++at)
        if (begins(text[at]) && ++count > most) break;
    text.resize(at);
    return text;
}

void write(std::string const& text) {
    std::fputs(text.c_str(), stderr);
    std::fflush(stderr);
}

}  // namespace

progress_line::progress_line(char const* task) : task_(task), terminal_(isatty(STDERR_FILENO) == 1) {}

progress_line::~progress_line() {
    if (width_ > 0) write(std::string(width_, ' ') + "\r");
}

void progress_line::put(std::string const& done) {
    next_ = clock::now() + std::chrono::milliseconds(200);
    // A wider line would leave its rows behind; the last column is left free, because some terminals wrap
    // there.
    winsize terminal{};
    bool const is_known = ioctl(STDERR_FILENO, TIOCGWINSZ, &terminal) == 0 && terminal.ws_col > 0;
    std::size_t const widest = is_known ? terminal.ws_col - 1u : 79u;
    std::string const line = first_characters(fmt::format("aqueth {}: {}", task_, done), widest);
    std::size_t const blanks =
        (std::min)(widest, (std::max)(width_, characters_in(line))) - characters_in(line);
    width_ = characters_in(line);
    write(line + std::string(blanks, ' ') + "\r");
}

}  // namespace program
