// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Pictures: gnuplot draws them, and they reach their file whole or not at all.

#include "program.hpp"
#include "quantities.hpp"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <filesystem>
#include <memory>
#include <string>
#include <string_view>

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

/// Puts a text into a file: written beside it, then renamed, so that nobody ever sees half of it.
inline void put_file(given const& g, std::filesystem::path const& path, std::string_view text) {
    std::string beside = path.string() + ".XXXXXX";
    auto const refused = [&] { refuse(g, fmt::format("cannot be written: {}", std::strerror(errno))); };
    int const descriptor = mkstemp(beside.data());
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
    if (!written || std::rename(beside.c_str(), path.c_str()) != 0) {
        int const reason = errno;
        std::remove(beside.c_str());
        errno = reason;
        refused();
    }
}

}  // namespace program
