// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Pictures: gnuplot draws them, and they reach their file whole or not at all.

#include "program.hpp"
#include "quantities.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>
#include <utility>

#include <spawn.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

extern char** environ;  // POSIX wants the program to declare it

namespace program {

/// A text as gnuplot takes it between single quotes.
inline std::string in_quotes(std::string_view text) {
    std::string result = "'";
    for (char const c : printable(text)) result += c == '\'' ? "''" : std::string(1, c);
    return result + "'";
}

/// A file without a name, gone when it is closed.
class scratch_file {
public:
    scratch_file() : file_(std::tmpfile(), std::fclose) {
        if (!file_) throw failure(fmt::format("no scratch file: {}", std::strerror(errno)));
    }
    int descriptor() const { return fileno(file_.get()); }
    void write(std::string_view text) const {
        bool const written = std::fwrite(text.data(), 1, text.size(), file_.get()) == text.size();
        if (!written || std::fflush(file_.get()) != 0) {
            throw failure(fmt::format("a scratch file cannot be written: {}", std::strerror(errno)));
        }
        std::rewind(file_.get());
    }
    std::string read() const {
        std::rewind(file_.get());
        std::string text;
        char buffer[4096];
        while (std::size_t const n = std::fread(buffer, 1, sizeof buffer, file_.get()))
            text.append(buffer, n);
        return text;
    }

private:
    std::unique_ptr<std::FILE, int (*)(std::FILE*)> file_;
};

/// What gnuplot draws by a script: an SVG picture.
inline std::string svg_by_gnuplot(std::string const& script) {
    scratch_file const in, out, err;
    in.write(script);
    posix_spawn_file_actions_t redirections;
    posix_spawn_file_actions_init(&redirections);
    posix_spawn_file_actions_adddup2(&redirections, in.descriptor(), STDIN_FILENO);
    posix_spawn_file_actions_adddup2(&redirections, out.descriptor(), STDOUT_FILENO);
    posix_spawn_file_actions_adddup2(&redirections, err.descriptor(), STDERR_FILENO);
    char name[] = "gnuplot", no_settings[] = "--default-settings";
    char* const arguments[] = {name, no_settings, nullptr};
    pid_t child = 0;
    int const error = posix_spawnp(&child, name, &redirections, nullptr, arguments, environ);
    posix_spawn_file_actions_destroy(&redirections);
    if (error != 0) {
        throw failure(fmt::format("gnuplot cannot be run: {} (Debian: gnuplot-nox)", std::strerror(error)));
    }
    int status = 0;
    while (waitpid(child, &status, 0) < 0 && errno == EINTR) {
    }
    std::string picture = out.read();
    if (!WIFEXITED(status) || WEXITSTATUS(status) != 0 || picture.find("</svg>") == std::string::npos) {
        throw failure(fmt::format("gnuplot draws nothing: {}", printable(trimmed(err.read()))));
    }
    return picture;
}

/// Where a picture may be put: a new file called .svg, or an old one that may be replaced.
inline std::filesystem::path read_picture_path(given const& g, bool replace) {
    std::filesystem::path const path(g.text);
    if (path.extension() != ".svg") refuse(g, "the picture is an SVG file: a name that ends in .svg");
    std::error_code ignored;
    auto const there = std::filesystem::symlink_status(path, ignored);
    if (std::filesystem::is_directory(there)) refuse(g, "is a folder");
    if (std::filesystem::exists(there) && !replace) refuse(g, "is there already; --replace replaces it");
    return path;
}

/// A text on its way into a file: written beside it, renamed once the answer is out, so that nobody ever sees
/// half of it, nor a picture to which no answer belongs. Gone if nobody puts it in place.
class coming_file {
public:
    coming_file(given const& g, std::filesystem::path path, std::string_view text)
        : from_(g), path_(std::move(path)), beside_(path_.string() + ".XXXXXX") {
        std::signal(SIGPIPE, SIG_IGN);  // a reader that goes away must not leave the file beside
        int const descriptor = mkstemp(beside_.data());
        if (descriptor < 0) refused();
        mode_t const mask = umask(0);
        umask(mask);
        bool written = fchmod(descriptor, 0666 & ~mask) == 0;
        for (std::string_view rest = text; written && !rest.empty();) {
            ssize_t const n = write(descriptor, rest.data(), rest.size());
            written = n >= 0 || errno == EINTR;
            if (n > 0) rest.remove_prefix(static_cast<std::size_t>(n));
        }
        written = written && fsync(descriptor) == 0;
        written = close(descriptor) == 0 && written;
        if (!written) {
            int const reason = errno;
            std::remove(beside_.c_str());
            errno = reason;
            refused();
        }
    }
    ~coming_file() {
        if (!beside_.empty()) std::remove(beside_.c_str());
    }
    coming_file(coming_file const&) = delete;
    coming_file& operator=(coming_file const&) = delete;

    void put_in_place() {
        if (std::rename(beside_.c_str(), path_.c_str()) != 0) {
            throw failure(fmt::format("{}: cannot be put in place: {}", label(from_), std::strerror(errno)));
        }
        beside_.clear();
    }

private:
    [[noreturn]] void refused() const {
        bool const fault_of_the_disk = errno == ENOSPC || errno == EDQUOT || errno == EIO;
        std::string const why = fmt::format("cannot be written: {}", std::strerror(errno));
        if (fault_of_the_disk) throw failure(fmt::format("{}: {}", label(from_), why));
        refuse(from_, why);
    }

    given from_;
    std::filesystem::path path_;
    std::string beside_;  // empty once it is in place
};

/// Writes a picture, which appears when the session's answer is out.
inline void put_picture(session& s, given const& g, std::filesystem::path const& path,
                        std::string_view picture) {
    auto const file = std::make_shared<coming_file>(g, path, picture);
    s.once_answered([file] { file->put_in_place(); });
}

}  // namespace program
