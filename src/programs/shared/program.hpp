// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// The run of a task: its options, one way to answer or to refuse, its exit status; and the list of the
/// tasks.

#include "chain.hpp"
#include "quantities.hpp"
#include "record.hpp"
#include "settings.hpp"
#include "strengths.hpp"
#include "wording.hpp"

#include <aqueth/aqueth.hpp>
#include <aqueth/correlation/source.hpp>

#include <deque>
#include <functional>
#include <map>
#include <memory>
#include <optional>
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

/// The topics of `aqueth help`, in its order.
enum class topic { in_wash, in_still, how_strong, to_strength, in_bottles, how_sure, your_own };

/// The name, the purpose and the example of a task.
struct about {
    char const* name;
    topic listed_under;
    char const* question;  ///< the distiller's question beside the name in `aqueth help`
    char const* purpose;
    /// A situation, the command after "$ ", and the first line of its answer (a test compares it).
    char const* example;
    std::vector<correlation::source> sources;
};

/// An option, for manual pages and completion.
struct described_option {
    std::string name;         ///< "--reading"; without dashes for a value that has no option
    std::string type;         ///< of its value; empty for a flag
    std::string description;  ///< with the default
    bool required;
    std::string standard;  ///< the default
};

/// The options of a task, for manual pages and completion.
struct description {
    std::vector<described_option> options;
    std::string notes;  ///< units, accepted forms and exit status: the lower part of the help
};

/// What a run came to that prints nothing.
struct outcome {
    json data;              ///< the answer
    std::string complaint;  ///< why there is none; else empty
    std::map<std::string, std::string> settings =
        {};  ///< options that the settings file gave, and their values
};

/// One run: options in, one answer out.
class session {
public:
    /// @param argv the task's name and its options
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
    /// The last of them alone, for a task whose instrument has a fixed scale.
    given const& correction_option();
    surroundings surroundings_options();
    /// Offers --from: an earlier answer fills these options if they are not given.
    void carry_on(std::vector<fillable> const& options);
    /// Adds lines to the help.
    void explain(char const* lines);
    void offer_us_units();
    void offer_csv();

    void parse();

    /// The units of the answer: US units with --us, or if an option is given in US units.
    wording words() const { return {us_, digits_}; }
    bool in_json() const { return json_; }  ///< whether JSON was asked for; known once parsed
    bool in_csv() const { return csv_; }    ///< or CSV

    /// The settings file, if one was read; known once parsed.
    std::optional<settings> const& file() const { return file_; }
    /// The settings that this run takes from it.
    std::vector<used_setting> const& used_settings() const { return used_; }
    /// Says that an option has no part in the answer, so that no setting of it is named there.
    void without(given const& g);

    /// The answer, in the form asked for; printed when the run is over.
    void answer(page const& text, json const& data, std::string const& csv = {});

    /// An answer that is rows of cells, printed as they are.
    void answer_rows(std::string rows) { output_ = std::move(rows); }
    /// @return whether the answer goes to a record as well, once parsed
    bool wants_record() const { return record_->present; }

    /// Leaves options that are not of this task, and their values, to `rest`.
    void leave_rest();
    /// @return them, once parsed, and the choice of the settings file, which is of both tasks
    std::vector<std::string> rest() const;

    /// Sets the last step, which runs only after the answer is printed.
    void once_answered(std::function<void()> last_step) { last_step_ = std::move(last_step); }

    /// Runs the body, and turns every exception into a message and an exit status.
    int run(std::function<void(session&)> const& body);

    /// Runs the body and prints nothing.
    outcome ask(std::function<void(session&)> const& body);

    /// Runs the body up to the end of its list of options.
    description describe(std::function<void(session&)> const& body);

private:
    /// Runs a step, and turns every exception into an exit status and a message.
    std::pair<int, std::string> attempt(std::function<void()> const& step);
    int fail(int status, std::string message) const;
    int print() const;
    std::string notes() const;
    void parse_command_line();
    void take_from_answers();
    void require_all() const;
    std::string answer_in_json(json const& data) const;
    record_entry entry() const;
    void offer_settings();
    void apply_settings();
    bool us_customary_typed() const;
    std::string in_plain_words_of_stray(std::string const& stray) const;

    about const& about_;
    std::string command_;  ///< "aqueth correct_reading"
    std::unique_ptr<CLI::App> app_;
    int argc_;
    char** argv_;
    CLI::Option* last_ = nullptr;
    std::deque<given> options_;  // never moves what the programs hold references to
    std::vector<std::pair<given*, char const*>> us_standards_;
    std::deque<std::vector<given>> repeats_;
    std::deque<bool> flags_;
    std::string units_, explanation_;  // of this task alone, for the help
    bool only_describes_ = false;
    bool json_ = false, csv_ = false, us_ = false, metric_ = false, offers_us_ = false;
    std::vector<fillable> fillables_;
    std::vector<given> const* from_ = nullptr;  // null if nothing can be filled
    std::vector<taken_figure> taken_;
    given const* record_ = nullptr;
    std::string text_;    // of the answer, for the record
    std::string output_;  // in the form asked for
    bool keeps_data_ = false;
    json data_;
    int digits_ = usual_digits;
    std::vector<kind_of_table> kinds_;  // those of which this task takes something
    given const *settings_file_ = nullptr, *digits_given_ = nullptr;
    bool const* no_settings_ = nullptr;
    std::optional<settings> file_;
    std::vector<used_setting> used_;
    std::function<void()> last_step_;
};

/// A task of the program aqueth. Every source of src/programs defines one, which joins the list of all tasks.
class task {
public:
    task(about const& who, void (*body)(session&));
    task(task const&) = delete;
    task& operator=(task const&) = delete;

    about const& who() const { return who_; }
    /// @param argv the task's name and its options
    /// @return the exit status
    int run(int argc, char** argv) const;
    description describe() const;
    /// @param options "--reading=81.5 %vol"
    /// @return the answer to them; nothing is printed
    outcome ask(std::vector<std::string> options) const;

    /// @return all tasks, by name
    static std::vector<task const*> all();

private:
    about const& who_;
    void (*body_)(session&);
    task const* next_;
};

/// The usual cautions, in full. docs/cautions.md gives the sources of the figures.
extern char const* const all_cautions;

/// @return each publication with its range of validity and its accuracy
std::string in_words(std::vector<correlation::source> const& sources);

/// @return the only word that begins with what was written; else the nearest, if it is like it; else nothing
std::string nearest(std::string const& written, std::vector<std::string> const& words);

/// Prints the answer on standard output.
/// @return the exit status
int print(std::string const& command, std::string const& text);

/// Prints one line on standard error.
/// @return the status
int fail(std::string const& command, int status, std::string message);

}  // namespace program
