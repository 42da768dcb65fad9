// SPDX-License-Identifier: BSL-1.0
#include "record.hpp"

#include "program.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <ctime>
#include <string_view>

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

namespace program {

namespace {

/// Options that describe what was measured with.
constexpr std::string_view instruments[] = {"--scale",         "--glass",         "--correction",
                                            "--stem",          "--balance",       "--measure",
                                            "--thermometer",   "--alcoholometer", "--read-to",
                                            "--meter-error",   "--flask-error",   "--thermometer-error",
                                            "--reading-error", "--gravity-error"};

/// Labels of lines that say how sure an answer is, or that warn.
constexpr std::string_view doubts[] = {"uncertainty", "assumed", "equilibrium", "agreement", "not used"};

/// A text for a cell of a table: one line, without marks that Markdown would read.
std::string in_cell(std::string_view text) {
    std::string cell;
    for (char const c : on_one_line(text)) {
        if (c == '|' || c == '\\' || c == '`' || c == '*' || c == '<' || c == '[') cell += '\\';
        cell += c;
    }
    return cell;
}

std::string now() {
    std::time_t const t = std::time(nullptr);
    std::array<char, 40> date{};
    std::tm local{};
    localtime_r(&t, &local);
    return {date.data(), std::strftime(date.data(), date.size(), "%Y-%m-%d %H:%M %z", &local)};
}

}  // namespace

std::string in_markdown(record_entry const& entry, std::string const& date) {
    std::string text = fmt::format("## {}, {}\n\n| | |\n| --- | --- |\n", entry.task, date);
    auto const row = [&](std::string_view label, std::string_view value) {
        text += fmt::format("| {} | {} |\n", label, value);
    };
    row("question", in_cell(entry.question));
    for (record_entry::input const& each : entry.inputs) {
        bool const is_instrument =
            std::find(std::begin(instruments), std::end(instruments), each.option) != std::end(instruments);
        std::string const origin = each.origin.empty() ? "" : fmt::format(" (from {})", in_cell(each.origin));
        row(fmt::format("{} {}", is_instrument ? "instrument" : "input", in_cell(each.option)),
            in_cell(each.value) + origin);
    }
    bool in_doubt = false;  // a doubt can have several lines; those after the first have no label
    for (std::string_view const line : lines_of(entry.result)) {
        bool const unlabelled = line.starts_with("      ");
        if (!unlabelled)
            in_doubt = std::any_of(std::begin(doubts), std::end(doubts), [&](std::string_view label) {
                return line.starts_with(fmt::format("  {} ", label));
            });
        bool const warns = line.starts_with("Caution: ");
        if (in_doubt || warns) row(warns ? "caution" : "doubt", in_cell(trimmed(line.substr(warns ? 9 : 2))));
    }
    for (correlation::source const& each : entry.sources) {
        row("source",
            in_cell(fmt::format("{}; valid: {}; accuracy: {}", each.citation, each.range, each.accuracy)));
    }
    row("computed by", fmt::format("aqueth {}", version));
    row("place", "");
    row("signature", "");
    text += "\n```text\n";
    for (std::string_view const line : lines_of(entry.result))
        if (!line.starts_with("```")) text += fmt::format("{}\n", line);
    return text + "```\n\n";
}

record_file::record_file(given const& g) : given_(g) {
    auto const why = [&](char const* reason) { refuse(g, fmt::format("cannot be written: {}", reason)); };
    if (!g.text.ends_with(".md")) refuse(g, "expected a file whose name ends in .md");
    descriptor_ = open(g.text.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC | O_NONBLOCK);
    if (descriptor_ < 0 && errno == ENOENT) {
        descriptor_ = open(g.text.c_str(), O_WRONLY | O_APPEND | O_CLOEXEC | O_CREAT | O_EXCL, 0666);
        made_ = descriptor_ >= 0;
    }
    if (descriptor_ < 0) why(std::strerror(errno));
    struct stat what {};
    if (fstat(descriptor_, &what) == 0 && S_ISREG(what.st_mode)) return;
    close(descriptor_);
    why("it is no ordinary file");
}

record_file::~record_file() {
    if (made_ && !written_) unlink(given_.text.c_str());
    close(descriptor_);
}

void record_file::append(record_entry const& entry) {
    while (flock(descriptor_, LOCK_EX) != 0 && errno == EINTR) continue;  // two tasks of a script at once
    struct stat before {};
    std::string text = in_markdown(entry, now());
    bool const is_new = fstat(descriptor_, &before) == 0 && before.st_size == 0;
    text.insert(0, is_new ? "# Record\n\n" : "\n");
    ssize_t const written = ::write(descriptor_, text.data(), text.size());
    if (written == static_cast<ssize_t>(text.size()) && fsync(descriptor_) == 0) {
        written_ = true;
        return;
    }
    std::string const reason = written < 0 ? std::strerror(errno) : "the disk is full";
    if (written > 0 && ftruncate(descriptor_, before.st_size) != 0) written_ = true;  // nothing more to do
    throw failure(fmt::format("{} cannot be written: {}", label(given_), reason));
}

}  // namespace program
