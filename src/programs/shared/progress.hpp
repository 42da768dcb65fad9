// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <chrono>
#include <concepts>
#include <string>

namespace program {

/// A line on standard error that says how far the work is: on a terminal, if it lasts; gone when it is done.
class progress_line {
public:
    explicit progress_line(char const* program);
    ~progress_line();
    progress_line(progress_line const&) = delete;
    progress_line& operator=(progress_line const&) = delete;

    /// @param done callable: -> std::string, how far it is; called only if that is shown
    template <std::invocable Done>
    void show(Done const& done) {
        if (terminal_ && clock::now() >= next_) put(done());
    }

private:
    using clock = std::chrono::steady_clock;
    void put(std::string const& done);

    char const* program_;
    bool terminal_;
    clock::time_point next_ = clock::now() + std::chrono::seconds(1);
    std::string shown_;
};

}  // namespace program
