// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <chrono>
#include <concepts>
#include <cstddef>
#include <string>

namespace program {

/// A progress line on standard error: only on a terminal, only for long work, and erased at the end.
class progress_line {
public:
    explicit progress_line(char const* task);
    ~progress_line();
    progress_line(progress_line const&) = delete;
    progress_line& operator=(progress_line const&) = delete;

    /// @param done callable: -> std::string, the progress; called only if it is shown
    template <std::invocable Done>
    void show(Done const& done) {
        if (terminal_ && clock::now() >= next_) put(done());
    }

private:
    using clock = std::chrono::steady_clock;
    void put(std::string const& done);

    char const* task_;
    bool terminal_;
    clock::time_point next_ = clock::now() + std::chrono::seconds(1);
    std::size_t width_ = 0;  ///< of the line that is shown, in characters
};

}  // namespace program
