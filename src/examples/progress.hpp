// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <chrono>
#include <cstddef>
#include <string>

namespace program {

/// A line on standard error that says how far long work is: on a terminal, after the first second; gone when
/// it is done.
class progress_line {
public:
    explicit progress_line(char const* program);
    ~progress_line();
    progress_line(progress_line const&) = delete;
    progress_line& operator=(progress_line const&) = delete;

    /// @param share what is done, 0 to 1
    /// @param what  of what: "of the charge distilled"
    void show(double share, char const* what);

private:
    using clock = std::chrono::steady_clock;

    char const* program_;
    bool terminal_;
    clock::time_point next_ = clock::now() + std::chrono::seconds(1);
    std::string shown_;
};

}  // namespace program
