// SPDX-License-Identifier: BSL-1.0
// What every program does the same way; compiled once for all of them, because CLI11 takes long.
#include "program.hpp"

#include <CLI/CLI.hpp>
#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstring>
#include <exception>
#include <sstream>

namespace program {

namespace {
struct sources_wanted {};

/// The parser says "--scale: At Most 1 required but received 2" and "--scale: 1 required SCALE missing".
std::string in_plain_words(CLI::ArgumentMismatch const& error) {
    std::string const text = error.what();
    std::string const option = text.substr(0, text.find(':'));
    if (text.find(": At Most 1 required") != std::string::npos) return option + " is given more than once";
    if (text.find(" missing") != std::string::npos) return option + " needs a value";
    return text;
}
}  // namespace

session::~session() = default;

session::session(about const& who, int argc, char** argv)
    : about_(who), app_(std::make_unique<CLI::App>(who.purpose, who.name)), argc_(argc), argv_(argv) {
    app_->set_help_flag("-h,--help", "Print this and exit");
    app_->set_version_flag("--version", fmt::format("{} (aqueth {})", who.name, aqueth::version),
                           "Print the version and exit");
    app_->add_flag_callback(
        "--sources", [] { throw sources_wanted(); }, "Print the publications behind the figures and exit");
    app_->get_formatter()->column_width(30);
}

given& session::option(char const* name, char const* type, char const* description, char const* standard) {
    given& g = options_.emplace_back(given{name, standard});
    auto const store = [&g](std::string const& text) {
        if (text.starts_with("--")) throw bad_input(g.name + " needs a value");
        g.text = text;
        g.present = true;
    };
    std::string const ending = *standard ? fmt::format(" (else '{}')", standard) : "";
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
        ->multi_option_policy(CLI::MultiOptionPolicy::TakeAll);
    return all;
}

bool const& session::flag(char const* name, char const* description) {
    bool& is_there = flags_.emplace_back(false);
    app_->add_flag(name, is_there, description);
    return is_there;
}

instrument session::instrument_options() {
    given const& scale = option("--scale", "SCALE", "what is engraved on the stem", "%vol at 20 C");
    given const& glass =
        option("--glass", "GLASS", "soda-lime, borosilicate, or like '25e-6 /K'", "soda-lime");
    return {scale, glass};
}

surroundings session::surroundings_options() {
    units_ = fmt::format("Pressures: {}. Altitudes: {}.\n", pressure_units, altitude_units);
    given const& pressure =
        option("--pressure", "PRESSURE", "at the still, absolute, not reduced to the sea");
    given const& altitude = option("--altitude", "ALTITUDE", "instead of --pressure", "0 m");
    return {pressure, altitude};
}

void session::explain(char const* lines) { explanation_ += fmt::format("{}\n", lines); }

void session::offer_us_units() {
    app_->add_flag("--us", us_, "text in lb, US gallons, °F and proof; not with --json or --csv");
}

void session::offer_csv() { app_->add_flag("--csv", csv_, "answer in CSV"); }

void session::parse() {
    app_->add_flag("--json", json_, "answer in JSON, metric and in full precision");
    app_->footer(fmt::format(
        "Volumes: {}.\nMasses: {}. Temperatures: {}.\n{}"
        "Strengths: {}.\n"
        "They take a reference: '43 %vol at 60 F', '935 kg/m3 at 15 C', '0.9345 sg 60/60 F in air';\n"
        "without one it is 20 C (sg: 20/20 C in vacuo). Numbers have a decimal point.\n"
        "Masses are true masses; an ordinary balance, in air, shows 0.1 % less.\n{}"
        "Exit status: 0 answered, 2 cannot be answered as asked, 1 fault of the program.\n\n"
        "An example:\n{}\n\n{}\nThe law, local codes and licensed practice come first.",
        volume_units, mass_units, temperature_units, units_, strength_units, explanation_, about_.example,
        vapour_caution));
    app_->parse(argc_, argv_);
    if (json_ && csv_) throw bad_input("give either --json or --csv");
    if (us_ && (json_ || csv_)) throw bad_input("--us is for text; --json and --csv answer in metric units");
}

void session::answer(page const& text, json const& data, std::string const& csv) {
    output_ = json_ ? data.dump(2) + "\n" : csv_ ? csv : text.text();
}

int session::run(std::function<void(session&)> const& body) {
    try {
        body(*this);
        int const status = print();
        if (status == 0 && last_step_) last_step_();
        return status;
    } catch (CLI::ArgumentMismatch const& error) {
        return fail(2, in_plain_words(error));
    } catch (CLI::ParseError const& error) {
        std::ostringstream out, err;
        if (app_->exit(error, out, err) != 0) return fail(2, error.what());
        output_ = out.str();
        return print();
    } catch (sources_wanted const&) {
        output_ = sources();
        return print();
    } catch (bad_input const& error) {
        return fail(2, error.what());
    } catch (range_error const& error) {
        return fail(2, error.what());
    } catch (failure const& error) {
        return fail(1, error.what());
    } catch (std::exception const& error) {
        return fail(1, fmt::format("internal error: {}", error.what()));
    }
}

int session::fail(int status, std::string message) const {
    for (char& c : message) c = is_control(c) ? ' ' : c;
    std::fputs(fmt::format("{}: {}\n", about_.name, message).c_str(),
               stderr);  // fmt::print would throw if it is closed
    return status;
}

int session::print() const {
    bool const written = std::fwrite(output_.data(), 1, output_.size(), stdout) == output_.size();
    if (written && std::fflush(stdout) == 0) return 0;
    return fail(1, fmt::format("standard output cannot be written: {}", std::strerror(errno)));
}

std::string session::sources() const {
    page text;
    for (correlation::source const& each : about_.sources) {
        text.say("{}\n  valid: {}\n  accuracy: {}", each.citation, each.range, each.accuracy);
    }
    return text.text();
}

}  // namespace program
