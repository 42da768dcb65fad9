// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// The day's record: a Markdown file to which an answer is appended (`--record`), for a person to file and
/// sign.

#include "quantities.hpp"

#include <aqueth/correlation/source.hpp>

#include <string>
#include <vector>

namespace program {

/// The part of the record about one answer.
struct record_entry {
    /// An input: its option, its value, and the file it came from, if it did.
    struct input {
        std::string option, value, origin;
    };
    std::string task, question;  ///< "correct_reading", "How strong is the spirit?"
    std::vector<input> inputs;
    std::string result;  ///< the text of the answer
    std::vector<correlation::source> sources;
};

/// @param date such as "2026-11-29 13:00 +0000"
/// @return the entry in Markdown: a table, then the answer. Inputs that are an instrument, and lines of the
/// answer that are about its doubt, have rows of their own.
std::string in_markdown(record_entry const& entry, std::string const& date);

/// A record that is open for one more entry. Earlier entries are never changed.
class record_file {
public:
    /// Opens the file, and makes it if it is not there.
    /// @throws bad_input if the name does not end in .md or nothing can be appended to it
    explicit record_file(given const& g);
    /// A file that was made for an entry that did not come is removed.
    ~record_file();
    record_file(record_file const&) = delete;
    record_file& operator=(record_file const&) = delete;

    /// Appends an entry, dated now.
    /// @throws failure if the disk does not take it; the file is then as it was
    void append(record_entry const& entry);

private:
    given const given_;
    int descriptor_ = -1;
    bool made_ = false, written_ = false;
};

}  // namespace program
