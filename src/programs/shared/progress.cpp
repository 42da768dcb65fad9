// SPDX-License-Identifier: BSL-1.0
#include "progress.hpp"

#include <fmt/format.h>

#include <unistd.h>

#include <cstdio>

namespace program {

namespace {

void write(std::string const& text) {
    std::fputs(text.c_str(), stderr);
    std::fflush(stderr);
}

}  // namespace

progress_line::progress_line(char const* task) : task_(task), terminal_(isatty(STDERR_FILENO) == 1) {}

progress_line::~progress_line() {
    if (!shown_.empty()) write(std::string(shown_.size(), ' ') + "\r");
}

void progress_line::put(std::string const& done) {
    next_ = clock::now() + std::chrono::milliseconds(200);
    shown_ = fmt::format("{:<{}}", fmt::format("aqueth {}: {}", task_, done), shown_.size());
    write(shown_ + "\r");
}

}  // namespace program
