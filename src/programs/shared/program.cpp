// SPDX-License-Identifier: BSL-1.0
// What every task does the same way; compiled once for all of them, because CLI11 takes long.
#include "program.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <cstring>
#include <exception>
#include <new>
#include <numeric>
#include <optional>
#include <sstream>
#include <string_view>
#include <tuple>
#include <utility>

#include <unistd.h>

namespace program {

namespace {
struct sources_wanted {};
struct cautions_wanted {};
struct described {};

/// The parser says "--scale: At Most 1 required but received 2" and "--scale: 1 required SCALE missing".
std::string in_plain_words(CLI::ArgumentMismatch const& error) {
    std::string const text = error.what();
    std::string const option = text.substr(0, text.find(':'));
    if (text.find(": At Most 1 required") != std::string::npos) return option + " is given more than once";
    if (text.find(" missing") != std::string::npos) return option + " needs a value";
    return text;
}
}  // namespace

void (*clear_away)() = nullptr;

char const* const all_cautions =
    "Fire. The vapour of ethanol burns in air from about 3 % by volume, and spirit of 40 % vol can be lit "
    "at\n"
    "  about 26 °C. The vapour is heavier than air, collects low and can flash back. Keep flames, sparks "
    "and\n"
    "  glowing elements away, let in fresh air, keep an extinguisher for alcohol and a way out. An alcohol\n"
    "  flame is almost invisible in daylight.\n"
    "Still. Never leave a running still and never close one: a blocked outlet turns it into a pressure "
    "vessel.\n"
    "  Turn on the cooling water before the heat. Leave a third of the pot as head space and put in boiling\n"
    "  stones before heating, to prevent surging. Never boil dry. Let the pot cool before you open it: it "
    "burns\n"
    "  and scalds.\n"
    "Fermentation. Carbon dioxide is heavy and chokes. Let fresh air through cellars and vats.\n"
    "Poison. No figure here says that a liquid may be drunk: density cannot tell methanol from ethanol and\n"
    "  says nothing about lead. Never use denatured or unknown alcohol, or equipment that contains lead.\n"
    "  Discarding the foreshots does not remove methanol, and distilling does not make bad spirit good.\n"
    "Reading. A fresh mixture is warm and full of fine bubbles. Let it stand, stir it, measure its\n"
    "  temperature, and correct the reading (aqueth correct_reading).\n"
    "Law. Distilling and selling spirit is licensed and taxed nearly everywhere. Local codes, an approved\n"
    "  instrument and licensed practice come first.\n";

namespace {
std::string command_in_progress;

/// Called when no memory is left. Unwinding could need some, too: a JSON value allocates while it is
/// destroyed.
[[noreturn]] void end_without_memory() {
    if (clear_away) clear_away();
    for (char const* const text : {command_in_progress.c_str(), ": not enough memory for this answer\n"}) {
        if (write(STDERR_FILENO, text, std::strlen(text)) < 0) break;
    }
    _exit(1);
}
}  // namespace

session::~session() = default;

session::session(about const& who, int argc, char** argv)
    : about_(who),
      command_(fmt::format("aqueth {}", who.name)),
      app_(std::make_unique<CLI::App>(who.purpose, command_)),
      argc_(argc),
      argv_(argv) {
    command_in_progress = command_;
    std::set_new_handler(end_without_memory);
    app_->set_help_flag("-h,--help", "Print this help and exit");
    app_->set_version_flag("--version", fmt::format("aqueth {}", aqueth::version),
                           "Print the version and exit");
    app_->add_flag_callback(
        "--sources", [] { throw sources_wanted(); }, "Print the publications behind the results and exit");
    app_->add_flag_callback(
        "--cautions", [] { throw cautions_wanted(); }, "Print the usual cautions in full and exit");
    app_->get_formatter()->column_width(30);
}

given& session::option(char const* name, char const* type, char const* description, char const* standard,
                       char const* us_standard) {
    given& g = options_.emplace_back(given{name, standard});
    if (*us_standard) us_standards_.emplace_back(&g, us_standard);
    auto const store = [&g](std::string const& text) {
        if (text.starts_with("--")) throw bad_input(g.name + " needs a value");
        g.text = text;
        g.present = true;
    };
    std::string const ending = *us_standard
                                   ? fmt::format(" (default {}; in US units {})", standard, us_standard)
                               : *standard ? fmt::format(" (default {})", standard)
                                           : "";
    last_ = app_->add_option_function<std::string>(name, store, description + ending)->type_name(type);
    return g;
}

given& session::required(char const* name, char const* type, char const* description) {
    given& g = option(name, type, description);
    last_->required();
    return g;
}

given& session::argument(char const* name, char const* description) {
    return required(name, "", description);
}

std::vector<given>& session::repeated(char const* name, char const* type, char const* description,
                                      bool needed) {
    std::vector<given>& all = repeats_.emplace_back();
    auto const store = [&all, name](std::vector<std::string> const& texts) {
        for (std::string const& text : texts) all.push_back({name, text, true});
    };
    app_->add_option_function<std::vector<std::string>>(name, store, description)
        ->type_name(type)
        ->required(needed)
        ->expected(1)
        ->allow_extra_args(false)
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    return all;
}

bool const& session::flag(char const* name, char const* description) {
    bool& is_there = flags_.emplace_back(false);
    app_->add_flag(name, is_there, description);
    return is_there;
}

instrument session::instrument_options() {
    given const& scale = option("--scale", "SCALE", "scale of the instrument, unless the reading gives it",
                                "%vol at 20 C", "proof");
    given const& glass = option("--glass", "GLASS",
                                "soda-lime, borosilicate, or its cubic expansion: '25e-6 /K'", "soda-lime");
    return {scale, glass, correction_option()};
}

given const& session::correction_option() {
    return option("--correction", "LIST",
                  "what its certificate adds to readings, in units of the scale: '+0.2', or "
                  "'+0.2 at 40, -0.1 at 60' (beyond these points the nearest one counts)");
}

surroundings session::surroundings_options() {
    units_ = fmt::format("Pressures: {}. Altitudes: {}.\n", pressure_units, altitude_units);
    given const& pressure =
        option("--pressure", "PRESSURE", "absolute air pressure at the still, not reduced to sea level");
    given const& altitude =
        option("--altitude", "ALTITUDE", "altitude of the still, instead of --pressure", "0 m", "0 ft");
    return {pressure, altitude};
}

void session::carry_on(std::vector<fillable> const& options) {
    if (!from_) {
        from_ = &repeated("--from", "FILE",
                          "an earlier answer in JSON, or '-'; FILE#NAME for one of its lots: fills options "
                          "that are not given",
                          false);
    }
    fillables_.insert(fillables_.end(), options.begin(), options.end());
}

void session::explain(char const* lines) { explanation_ += fmt::format("{}\n", lines); }

void session::offer_us_units() {
    offers_us_ = true;
    app_->add_flag(
        "--us", us_,
        "answer in US units at 60 F; automatic if an option is in proof, gal, qt, pt, fl oz, lb or oz");
    app_->add_flag("--metric", metric_, "answer in metric units, also if options have US units");
}

void session::offer_csv() { app_->add_flag("--csv", csv_, "answer in CSV"); }

std::string session::notes() const {
    return fmt::format(
        "Volumes: {}.\nMasses: {}. Temperatures: {}.\n{}"
        "Strengths: {}.\n"
        "A strength can name its reference: '43 %vol at 60 F', '935 kg/m3 at 15 C', '0.9345 sg "
        "60/60 F in air'.\n"
        "The default is 20 C (sg: 20/20 C in vacuo). Numbers: 43.5, 43,5 or 1 1/2; sums: 4 lb 6 oz.\n"
        "Masses are readings of an ordinary balance in air; JSON gives the true mass as well.\n{}"
        "Exit status: 0 success, 2 wrong option or input, 1 any other failure.\n",
        volume_units, mass_units, temperature_units, units_, strength_units, explanation_);
}

void session::parse() {
    app_->add_flag("--json", json_, "answer in JSON, metric and in full precision");
    record_ = &option("--record", "FILE", "append the answer to a record, whose name ends in .md");
    offer_settings();
    app_->footer(fmt::format("{}\nExample:\n{}\n\n{} --cautions prints more.\n"
                             "The law, local codes and licensed practice come first.",
                             notes(), about_.example, vapour_caution));
    if (only_describes_) throw described();
    parse_command_line();
    take_from_answers();
    apply_settings();
    require_all();
    if (json_ && csv_) throw bad_input("give either --json or --csv");
    if (us_ && (json_ || csv_))
        throw bad_input("--us cannot be used with --json or --csv, which are always metric");
    if (us_ && metric_) throw bad_input("give either --us or --metric");
    if (offers_us_ && !metric_) us_ = us_ || us_customary_typed();
    if (us_) {
        for (auto const& [option, standard] : us_standards_) {
            if (!option->present) option->text = standard;
        }
    }
}

void session::offer_settings() {
    // --glass alone is that of a flask, not of a stem.
    auto const offers = [&](kind_of_table kind) {
        std::span<setting_key const> const keys = setting_keys();
        return std::any_of(keys.begin(), keys.end(), [&](setting_key const& key) {
            return key.in_tables[static_cast<int>(kind)] && !key.plain &&
                   key.name != std::string_view("glass") &&
                   app_->get_option_no_throw(fmt::format("--{}", key.name));
        });
    };
    for (kind_of_table const kind : kinds_of_tables)
        if (offers(kind)) kinds_.push_back(kind);
    for (kind_of_table const kind : kinds_) {
        if (kind == kind_of_table::stem) option("--stem", "NAME", "an instrument of the settings file");
        if (kind == kind_of_table::still) option("--still", "NAME", "a still of the settings file");
    }
    digits_given_ = &option("--digits", "NUMBER", "significant digits of volumes and masses in text", "4");
    settings_file_ = &option("--settings", "FILE", "the settings file ('aqueth settings' explains)");
    no_settings_ = &flag("--no-settings", "read no settings file");
}

/// Parses without asking for required options, because an earlier answer or the settings may give them.
void session::parse_command_line() {
    std::vector<CLI::Option*> const required =
        app_->get_options([](CLI::Option* each) { return each->get_required(); });
    auto const require = [&](bool whether) {
        for (CLI::Option* each : required) each->required(whether);
    };
    require(false);
    try {
        app_->parse(argc_, argv_);
    } catch (...) {
        require(true);  // the help says which they are
        throw;
    }
    require(true);
}

/// An option that is required comes from the command line, from an earlier answer or from the settings.
void session::require_all() const {
    auto const among = [](auto const& filled, CLI::Option const* option) {
        return std::any_of(filled.begin(), filled.end(),
                           [&](auto const& each) { return each.option == option->get_name(); });
    };
    for (CLI::Option const* each : app_->get_options()) {
        if (each->get_required() && each->count() == 0 && !among(taken_, each) && !among(used_, each))
            throw CLI::RequiredError(each->get_name());
    }
}

void session::take_from_answers() {
    if (!from_ || from_->empty()) return;
    taken_ = figures_from(*from_, fillables_);
    for (taken_figure const& each : taken_) {
        given const filled{each.option, each.value, true};
        for (given& mine : options_)
            if (&mine == each.target.option) mine = filled;
        for (std::vector<given>& mine : repeats_)
            if (&mine == each.target.list) mine.push_back(filled);
    }
}

void session::apply_settings() {
    if (*no_settings_ && settings_file_->present) throw bad_input("give either --settings or --no-settings");
    if (!*no_settings_) file_ = find_settings(*settings_file_);

    // The tables chosen: by name on the command line, or the usual ones of the file.
    std::vector<settings_table const*> chosen;
    offered_options options;
    for (given& each : options_) options.push_back(&each);
    for (kind_of_table const kind : kinds_) {
        std::string const name = fmt::format("--{}", name_of(kind));
        given& choice =
            **std::find_if(options.begin(), options.end(), [&](given* g) { return g->name == name; });
        // --balance takes a mass as well.
        bool const is_name =
            choice.present &&
            (kind != kind_of_table::balance || choice.text.find_first_of("0123456789") == std::string::npos ||
             (file_ && file_->find(kind, choice.text)));
        if (is_name && !file_)
            refuse(choice, "no settings file was read; 'aqueth settings' says where it belongs");
        std::string const& wanted = choice.present ? choice.text
                                    : file_        ? file_->usual[static_cast<int>(kind)]
                                                   : "";
        if (choice.present ? !is_name : wanted.empty()) continue;
        settings_table const& table = file_->table(kind, wanted);
        chosen.push_back(&table);
        if (kind == kind_of_table::balance) choice.present = false;
    }
    if (file_) used_ = apply(*file_, chosen, options);
    digits_ = read_count(*digits_given_, 9, 3);
    if (json_ || csv_) without(*digits_given_);
    if (file_ && offers_us_ && !us_ && !metric_) {
        bool const to_us = file_->units == "US" && !json_ && !csv_;
        bool const to_metric = file_->units == "metric" && us_customary_typed();
        us_ = to_us;
        metric_ = to_metric;
        if (to_us || to_metric) used_.push_back({"units", file_->units, file_->units_line, "", "", false});
    }
}

bool session::us_customary_typed() const {
    auto const customary = [](given const& g) { return g.typed() && is_us_customary(g.text); };
    return std::any_of(options_.begin(), options_.end(), customary) ||
           std::any_of(repeats_.begin(), repeats_.end(), [&](std::vector<given> const& all) {
               return std::any_of(all.begin(), all.end(), customary);
           });
}

void session::without(given const& g) {
    std::erase_if(used_, [&](used_setting const& each) { return g.name.starts_with(each.option + " "); });
}

std::string session::answer_in_json(json const& data) const {
    json all{{"task", about_.name}, {"version", aqueth::version}, {"schema", answer_schema}};
    for (taken_figure const& each : taken_) {
        all["taken"].push_back(
            {{"option", each.option}, {"value", each.value}, {"file", each.file}, {"lot", each.lot}});
    }
    for (used_setting const& each : used_) {
        all["settings"].push_back({{"option", each.option},
                                   {"value", each.value},
                                   {"file", file_->file},
                                   {"line", each.line},
                                   {"table", each.table},
                                   {"certificate", each.certificate}});
    }
    all.update(data);
    return all.text() + "\n";
}

record_entry session::entry() const {
    record_entry entry{about_.name, about_.question, {}, text_, about_.sources};
    auto const add = [&](given const& g) {
        if (!g.present || &g == record_) return;
        std::string origin;
        for (taken_figure const& each : taken_)
            if (each.option == g.name && each.value == g.text)
                origin = each.file + (each.lot.empty() ? "" : "#" + each.lot);
        entry.inputs.push_back({g.name, g.text, origin});
    };
    for (given const& each : options_) add(each);
    for (std::vector<given> const& all : repeats_)
        if (&all != from_) std::for_each(all.begin(), all.end(), add);
    return entry;
}

/// Where more rows go: above the last lines, which hold the caution.
static std::size_t end_of_rows(std::string const& text) {
    auto const caution = text.rfind("\nCaution: ");
    if (caution == std::string::npos) return text.size();
    auto const gap = text.rfind("\n\n", caution);
    bool const rows_in_between = gap == std::string::npos || text.compare(gap + 2, 2, "  ") == 0;
    return rows_in_between ? caution + 1 : gap + 1;
}

void session::answer(page const& text, json const& data, std::string const& csv) {
    if (keeps_data_) {
        data_ = data;
        return;
    }
    text_ = text.text();
    std::string from;  // where figures come from: rows below the others, above the caution
    for (taken_figure const& each : taken_) {
        page row;
        row.row(from.empty() ? "taken" : "", "{} '{}' from {}{}{}", each.option, each.value,
                printable(each.file), each.lot.empty() ? "" : "#", printable(each.lot));
        from += row.text();
    }
    if (std::string const settings = in_words(used_); !settings.empty()) {
        page row;
        row.row("settings", "{} ({})", settings, printable(file_->file));
        from += row.text();
    }
    text_.insert(end_of_rows(text_), from);
    output_ = json_ ? answer_in_json(data) : csv_ ? csv : text_;
}

void session::leave_rest() { app_->allow_extras(); }

std::vector<std::string> session::rest() const {
    std::vector<std::string> options = app_->remaining();
    if (settings_file_->present) options.push_back("--settings=" + settings_file_->text);
    if (*no_settings_) options.emplace_back("--no-settings");
    return options;
}

int session::run(std::function<void(session&)> const& body) {
    std::optional<record_file> record;
    auto [status, complaint] = attempt([&] {
        body(*this);
        if (record_->present) record.emplace(*record_);
    });
    if (status != 0) return fail(status, complaint);
    status = print();
    if (status != 0) return status;
    std::tie(status, complaint) = attempt([&] {
        if (last_step_) last_step_();
        if (record) record->append(entry());
    });
    return status == 0 ? 0 : fail(status, complaint);
}

outcome session::ask(std::function<void(session&)> const& body) {
    keeps_data_ = true;
    auto [status, complaint] = attempt([&] { body(*this); });
    std::map<std::string, std::string> from_settings;
    for (used_setting const& each : used_) from_settings[each.option] = each.value;
    return {std::move(data_), status == 0 ? "" : complaint, std::move(from_settings)};
}

std::pair<int, std::string> session::attempt(std::function<void()> const& step) {
    try {
        step();
        return {0, ""};
    } catch (CLI::ArgumentMismatch const& error) {
        return {2, in_plain_words(error)};
    } catch (CLI::ParseError const& error) {
        // A stray word explains more than the option that is missing because of it.
        bool const stray = error.get_exit_code() == static_cast<int>(CLI::ExitCodes::ExtrasError) ||
                           error.get_exit_code() == static_cast<int>(CLI::ExitCodes::RequiredError);
        if (stray && !app_->remaining().empty())
            return {2, in_plain_words_of_stray(app_->remaining().front())};
        std::ostringstream out, err;
        if (app_->exit(error, out, err) != 0) return {2, error.what()};
        output_ = out.str();
        return {0, ""};
    } catch (sources_wanted const&) {
        output_ = in_words(about_.sources);
        return {0, ""};
    } catch (cautions_wanted const&) {
        output_ = all_cautions;
        return {0, ""};
    } catch (bad_input const& error) {
        return {2, error.what()};
    } catch (refusal const& error) {
        return {2, error.what()};
    } catch (failure const& error) {
        return {1, error.what()};
    } catch (std::exception const& error) {
        return {1, fmt::format("internal error: {}", error.what())};
    }
}

/// The message for a word that no option takes: a misspelt option, or a value without quotes.
std::string session::in_plain_words_of_stray(std::string const& stray) const {
    std::string const shown = printable(stray);
    std::vector<std::string> names;
    for (CLI::Option const* each : app_->get_options()) names.push_back(each->get_name());
    auto const nearest_to = [&](std::string option) {
        std::replace(option.begin(), option.end(), '_', '-');
        return nearest(option, names);
    };
    if (stray.starts_with('-')) {
        auto const blank = stray.find(' ');
        std::string const alike = nearest_to(stray.substr(0, blank));
        if (!alike.empty() && blank != std::string::npos) {
            return fmt::format("'{}' is one word: put quotes round the value alone: {} '{}'", shown, alike,
                               printable(trimmed(std::string_view(stray).substr(blank))));
        }
        return fmt::format("there is no option {}; {}", shown,
                           alike.empty() ? "--help lists the options"
                                         : fmt::format("did you mean {}?", alike));
    }
    std::string_view const dashes[] = {"—", "–", "−", ""};  // a word processor makes long ones
    std::string_view word = stray;
    for (std::string_view const dash : dashes) {
        if (!word.starts_with(dash)) continue;
        word.remove_prefix(dash.size());
        break;
    }
    std::string const alike = word.size() < 4 ? "" : nearest_to(fmt::format("--{}", word));
    for (int k = 2; k < argc_; ++k) {
        std::string_view const before = argv_[k - 1];
        if (argv_[k] != stray || before.starts_with("--")) continue;
        for (std::string_view const quote : {"‘", "’", "“", "”", "„"}) {
            if (before.starts_with(quote))
                return fmt::format("'{}' is not expected: quotes must be straight: ' or \"", shown);
        }
        bool const is_number = before.find_first_of("0123456789") < 2 && before.find(' ') == before.npos;
        if (!is_number && !alike.empty()) continue;
        return fmt::format("'{}' is not expected: put quotes round '{} {}'", shown, printable(before), shown);
    }
    if (!alike.empty()) return fmt::format("'{}' is not expected; did you mean {}?", shown, alike);
    return fmt::format("'{}' is not expected; --help lists the options", shown);
}

int session::fail(int status, std::string message) const {
    return program::fail(command_, status, std::move(message));
}

int session::print() const { return program::print(command_, output_); }

description session::describe(std::function<void(session&)> const& body) {
    only_describes_ = true;
    try {
        body(*this);
    } catch (described const&) {
    }
    description d{{}, notes()};
    for (CLI::Option const* each : app_->get_options()) {
        bool const takes_value = each->get_items_expected_max() > 0;
        d.options.push_back({each->get_name(), takes_value ? each->get_type_name() : "",
                             each->get_description(), each->get_required(), ""});
        for (given const& g : options_)
            if (g.name == each->get_name()) d.options.back().standard = g.text;
    }
    return d;
}

namespace {
task const* last_task = nullptr;  // before any constructor runs
}

task::task(about const& who, void (*body)(session&)) : who_(who), body_(body), next_(last_task) {
    last_task = this;
}

int task::run(int argc, char** argv) const { return session(who_, argc, argv).run(body_); }

outcome task::ask(std::vector<std::string> options) const {
    std::string name = who_.name;
    options.emplace_back("--json");
    std::vector<char*> arguments{name.data()};
    for (std::string& each : options) arguments.push_back(each.data());
    arguments.push_back(nullptr);
    std::string const before = std::exchange(command_in_progress, "");
    outcome result = session(who_, static_cast<int>(options.size()) + 1, arguments.data()).ask(body_);
    command_in_progress = before;
    return result;
}

description task::describe() const { return session(who_, 0, nullptr).describe(body_); }

std::vector<task const*> task::all() {
    std::vector<task const*> tasks;
    for (task const* each = last_task; each; each = each->next_) tasks.push_back(each);
    std::sort(tasks.begin(), tasks.end(), [](task const* a, task const* b) {
        return std::string_view(a->who().name) < std::string_view(b->who().name);
    });
    return tasks;
}

std::string in_words(std::vector<correlation::source> const& sources) {
    page text;
    for (correlation::source const& each : sources) {
        text.say("{}\n  valid: {}\n  accuracy: {}", each.citation, each.range, each.accuracy);
    }
    return text.text();
}

std::string nearest(std::string const& written, std::vector<std::string> const& words) {
    auto const begins = [&](std::string const& word) { return word.starts_with(written); };
    if (written.size() > 3 && std::count_if(words.begin(), words.end(), begins) == 1)
        return *std::find_if(words.begin(), words.end(), begins);
    auto const distance = [&](std::string const& word) { return letters_between(written, word); };
    auto const best =
        std::min_element(words.begin(), words.end(), [&](std::string const& a, std::string const& b) {
            return distance(a) < distance(b);
        });
    bool const alike =
        best != words.end() && distance(*best) <= (std::max)(std::size_t{2}, written.size() / 3);
    return alike ? *best : "";
}

int print(std::string const& command, std::string const& text) {
    bool const written = std::fwrite(text.data(), 1, text.size(), stdout) == text.size();
    if (written && std::fflush(stdout) == 0) return 0;
    return fail(command, 1, fmt::format("standard output cannot be written: {}", std::strerror(errno)));
}

int fail(std::string const& command, int status, std::string message) {
    message = well_formed(message);
    for (char& c : message) c = is_control(c) ? ' ' : c;
    std::fputs(fmt::format("{}: {}\n", command, message).c_str(),
               stderr);  // fmt::print would throw if it is closed
    return status;
}

}  // namespace program
