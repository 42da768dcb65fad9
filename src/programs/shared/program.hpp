// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// The run of a program: its options, one way to answer or to refuse, its exit status.

#include "quantities.hpp"
#include "strengths.hpp"
#include "wording.hpp"

#include <aqueth/aqueth.hpp>
#include <aqueth/correlation/source.hpp>

#include <deque>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

namespace CLI {  // its header is for program.cpp alone: it takes long to compile
class App;
class Option;
}  // namespace CLI

namespace program {

/// Something outside the program is missing or fails: gnuplot, space on the disk. Exit status 1.
class failure : public std::runtime_error {
    using runtime_error::runtime_error;
};

/// Cleans up before the program ends without unwinding; null if there is nothing to remove.
extern void (*clear_away)();

/// The name, the purpose and the example of a program.
struct about {
    char const* name;
    char const* purpose;
    /// A situation, the command after "$ ", and the first line of its answer (a test compares it).
    char const* example;
    std::vector<correlation::source> sources;
};

/// One run: options in, one answer out.
class session {
public:
    session(about const& who, int argc, char** argv);
    ~session();
    session(session const&) = delete;
    session& operator=(session const&) = delete;

    /// An option that takes one text.
    /// @param us_standard the default when the answer is in US units, if it is another one
    given& option(char const* name, char const* type, char const* description, char const* standard = "",
                  char const* us_standard = "");
    given& required(char const* name, char const* type, char const* description);
    /// A value on the command line without an option's name.
    given& argument(char const* name, char const* description);
    /// A repeatable option; if needed, it must be given at least once.
    std::vector<given>& repeated(char const* name, char const* type, char const* description,
                                 bool needed = true);
    /// An option without a value.
    bool const& flag(char const* name, char const* description);
    instrument instrument_options();
    surroundings surroundings_options();
    /// Adds lines to the help.
    void explain(char const* lines);
    void offer_us_units();
    void offer_csv();

    void parse();

    /// The units of the answer: US units with --us, or if an option is given in US units.
    wording words() const { return {us_}; }
    bool in_json() const { return json_; }  ///< whether JSON was asked for; known once parsed
    bool in_csv() const { return csv_; }    ///< or CSV

    /// The answer, in the form asked for; printed when the run is over.
    void answer(page const& text, json const& data, std::string const& csv = {});

    /// Sets the last step, which runs only after the answer is printed.
    void once_answered(std::function<void()> last_step) { last_step_ = std::move(last_step); }

    /// Runs the body, and turns every exception into a message and an exit status.
    int run(std::function<void(session&)> const& body);

private:
    int fail(int status, std::string message) const;
    int print() const;
    std::string sources() const;
    std::string in_plain_words_of_stray(std::string const& stray) const;

    about const& about_;
    std::unique_ptr<CLI::App> app_;
    int argc_;
    char** argv_;
    CLI::Option* last_ = nullptr;
    std::deque<given> options_;  // never moves what the programs hold references to
    std::vector<std::pair<given*, char const*>> us_standards_;
    std::deque<std::vector<given>> repeats_;
    std::deque<bool> flags_;
    std::string units_, explanation_;  // of this program alone, for the help
    bool json_ = false, csv_ = false, us_ = false, metric_ = false, offers_us_ = false;
    std::string output_;
    std::function<void()> last_step_;
};

}  // namespace program
