// SPDX-License-Identifier: BSL-1.0
#include "drawing.hpp"

#include "quantities.hpp"

#include <fmt/format.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstdio>
#include <cstring>
#include <memory>
#include <thread>

#include <fcntl.h>
#include <spawn.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

extern char** environ;  // POSIX wants the program to declare it

namespace program {

namespace {

// --- clean-up when a signal or a lack of memory ends the program ------------------------------------------

constexpr std::array ending_signals{SIGINT, SIGTERM, SIGHUP};

char const* volatile unfinished_file = nullptr;
volatile sig_atomic_t drawing_group = 0;  // process group of gnuplot, or 0

void stop_and_remove() {
    if (drawing_group != 0) kill(-static_cast<pid_t>(drawing_group), SIGKILL);
    if (char const* const name = unfinished_file) unlink(name);
}

extern "C" void end_by_signal(int signal_number) {
    stop_and_remove();
    std::signal(signal_number, SIG_DFL);
    std::raise(signal_number);  // delivered when this handler returns
}

/// Blocks the signals while a file or a process is created and recorded for the clean-up.
class signals_held_off {
public:
    signals_held_off() {
        sigset_t set;
        sigemptyset(&set);
        for (int const each : ending_signals) sigaddset(&set, each);
        sigprocmask(SIG_BLOCK, &set, &before_);
        static bool const prepared = prepare();
        static_cast<void>(prepared);
    }
    ~signals_held_off() { sigprocmask(SIG_SETMASK, &before_, nullptr); }
    signals_held_off(signals_held_off const&) = delete;
    signals_held_off& operator=(signals_held_off const&) = delete;

    sigset_t const& before() const { return before_; }

private:
    static bool prepare() {
        clear_away = stop_and_remove;
        std::signal(SIGPIPE, SIG_IGN);  // a reader that goes away must not leave a file behind
        for (int const each : ending_signals) {
            struct sigaction is = {};
            sigaction(each, nullptr, &is);
            if (is.sa_handler == SIG_IGN) continue;  // as nohup wants it
            is.sa_handler = end_by_signal;
            sigaction(each, &is, nullptr);
        }
        return true;
    }

    sigset_t before_;
};

// --- gnuplot ----------------------------------------------------------------------------------------------

/// A file in memory, gone when it is closed.
class scratch_file {
public:
    scratch_file() : descriptor_(memfd_create("picture", MFD_CLOEXEC)) {
        if (descriptor_ < 0)
            throw failure(fmt::format("a temporary file cannot be created: {}", std::strerror(errno)));
    }
    ~scratch_file() { close(descriptor_); }
    scratch_file(scratch_file const&) = delete;
    scratch_file& operator=(scratch_file const&) = delete;

    int descriptor() const { return descriptor_; }
    void write_all(std::string_view text) const {
        while (!text.empty()) {
            ssize_t const n = write(descriptor_, text.data(), text.size());
            if (n < 0 && errno != EINTR)
                throw failure(fmt::format("a temporary file cannot be written: {}", std::strerror(errno)));
            if (n > 0) text.remove_prefix(static_cast<std::size_t>(n));
        }
        lseek(descriptor_, 0, SEEK_SET);
    }
    std::string read_all() const {
        lseek(descriptor_, 0, SEEK_SET);
        std::string text;
        char buffer[4096];
        for (ssize_t n; (n = read(descriptor_, buffer, sizeof buffer)) != 0;) {
            if (n > 0) text.append(buffer, static_cast<std::size_t>(n));
            if (n < 0 && errno != EINTR)
                throw failure(fmt::format("a temporary file cannot be read: {}", std::strerror(errno)));
        }
        return text;
    }

private:
    int descriptor_;
};

/// A gnuplot process in its own process group, so that its children end with it.
class drawing_process {
public:
    drawing_process(scratch_file const& in, scratch_file const& out, scratch_file const& err) {
        signals_held_off const held;
        posix_spawn_file_actions_t redirections;
        posix_spawn_file_actions_init(&redirections);
        posix_spawn_file_actions_adddup2(&redirections, in.descriptor(), STDIN_FILENO);
        posix_spawn_file_actions_adddup2(&redirections, out.descriptor(), STDOUT_FILENO);
        posix_spawn_file_actions_adddup2(&redirections, err.descriptor(), STDERR_FILENO);
        posix_spawnattr_t attributes;
        posix_spawnattr_init(&attributes);
        posix_spawnattr_setflags(&attributes, POSIX_SPAWN_SETPGROUP | POSIX_SPAWN_SETSIGMASK);
        posix_spawnattr_setpgroup(&attributes, 0);
        posix_spawnattr_setsigmask(&attributes, &held.before());
        char name[] = "gnuplot", no_settings[] = "--default-settings";
        char* const arguments[] = {name, no_settings, nullptr};
        int const error = posix_spawnp(&child_, name, &redirections, &attributes, arguments, environ);
        posix_spawnattr_destroy(&attributes);
        posix_spawn_file_actions_destroy(&redirections);
        if (error != 0) {
            child_ = 0;
            throw failure(
                fmt::format("gnuplot cannot be run: {} (Debian: gnuplot-nox)", std::strerror(error)));
        }
        drawing_group = child_;
    }
    ~drawing_process() {
        signals_held_off const held;
        kill(-child_, SIGKILL);
        if (!ended_) waitpid(child_, nullptr, 0);
        drawing_group = 0;
    }
    drawing_process(drawing_process const&) = delete;
    drawing_process& operator=(drawing_process const&) = delete;

    /// @return whether it succeeded; waits at most until the limit
    bool succeeded(std::chrono::milliseconds limit) {
        auto const end = std::chrono::steady_clock::now() + limit;
        int status = 0;
        for (;;) {
            pid_t const done = waitpid(child_, &status, WNOHANG);
            if (done == child_) break;
            if (std::chrono::steady_clock::now() > end) {
                throw failure(fmt::format("gnuplot did not finish within {} s",
                                          static_cast<double>(limit.count()) / 1000.0));
            }
            std::this_thread::sleep_for(std::chrono::milliseconds(5));
        }
        ended_ = true;
        return WIFEXITED(status) && WEXITSTATUS(status) == 0;
    }

private:
    pid_t child_ = 0;
    bool ended_ = false;
};

/// A message of gnuplot on one line.
std::string one_line(std::string_view text) {
    constexpr std::size_t longest = 1000;
    std::string line;
    for (char const c : text.substr(0, longest)) {
        bool const blank = is_control(c) || c == ' ';
        if (!blank) line += c;
        if (blank && !line.empty() && line.back() != ' ') line += ' ';
    }
    return line.empty() ? "no reason given" : std::string(trimmed(line));
}

// --- the file ---------------------------------------------------------------------------------------------

/// A file in writing: it gets a temporary name first, so that no reader sees half of it.
class coming_file {
public:
    coming_file(given const& g, std::filesystem::path path, bool replace, std::string_view text)
        : from_(g), path_(path.string()), name_(path_ + ".XXXXXX") {
        int descriptor = -1;
        {
            signals_held_off const held;
            descriptor = mkstemp(name_.data());
            if (descriptor >= 0) unfinished_file = name_.c_str();
        }
        if (descriptor < 0) refused();
        bool written = fchmod(descriptor, permissions(replace)) == 0;
        for (std::string_view rest = text; written && !rest.empty();) {
            ssize_t const n = write(descriptor, rest.data(), rest.size());
            written = n >= 0 || errno == EINTR;
            if (n > 0) rest.remove_prefix(static_cast<std::size_t>(n));
        }
        written = written && fsync(descriptor) == 0;
        int reason = written ? 0 : errno;
        if (close(descriptor) != 0 && reason == 0) reason = errno;
        if (reason == 0) return;
        remove();
        errno = reason;
        refused();
    }
    ~coming_file() { remove(); }
    coming_file(coming_file const&) = delete;
    coming_file& operator=(coming_file const&) = delete;

    /// Renames it to its final name, which must be free; it is still removed unless it is kept.
    void appear() {
        signals_held_off const held;
        // Some file systems know only one of the two calls.
        bool linked = renameat2(AT_FDCWD, name_.c_str(), AT_FDCWD, path_.c_str(), RENAME_NOREPLACE) == 0;
        if (!linked && errno != EEXIST) {
            linked = link(name_.c_str(), path_.c_str()) == 0;
            if (linked) unlink(name_.c_str());
        }
        if (!linked && errno == EEXIST) refuse(from_, "the file exists already; --replace overwrites it");
        if (!linked) cannot_be_put_in_place();
        name_ = path_;
        unfinished_file = name_.c_str();
    }
    /// Renames it to its final name, over an existing file.
    void replace() {
        signals_held_off const held;
        if (std::rename(name_.c_str(), path_.c_str()) != 0) cannot_be_put_in_place();
        keep();
    }
    void keep() {
        unfinished_file = nullptr;
        name_.clear();
    }

private:
    /// The permissions of the replaced file, or of a new one.
    mode_t permissions(bool replace) const {
        struct stat old = {};
        if (replace && stat(path_.c_str(), &old) == 0 && S_ISREG(old.st_mode)) return old.st_mode & 07777;
        mode_t const mask = umask(0);
        umask(mask);
        return 0666 & ~mask;
    }
    void remove() {
        signals_held_off const held;
        if (!name_.empty()) unlink(name_.c_str());
        keep();
    }
    [[noreturn]] void cannot_be_put_in_place() const {
        throw failure(fmt::format("{}: cannot be created: {}", label(from_), std::strerror(errno)));
    }
    [[noreturn]] void refused() const {
        bool const fault_of_the_disk = errno == ENOSPC || errno == EDQUOT || errno == EIO;
        std::string const why = fmt::format("cannot be written: {}", std::strerror(errno));
        if (fault_of_the_disk) throw failure(fmt::format("{}: {}", label(from_), why));
        refuse(from_, why);
    }

    given from_;
    std::string path_;
    std::string name_;  // the name it has now; empty once it is kept
};

}  // namespace

std::string in_quotes(std::string_view text) {
    std::string result = "'";
    for (char const c : printable(text)) result += c == '\'' ? "''" : std::string(1, c);
    return result + "'";
}

namespace {

/// What gnuplot writes, if it ends as such a picture does.
std::string by_gnuplot(std::string const& script, std::chrono::milliseconds limit, std::string_view ending) {
    scratch_file const in, out, err;
    in.write_all(script);
    bool const succeeded = drawing_process(in, out, err).succeeded(limit);
    std::string picture = out.read_all();
    if (succeeded && picture.find(ending) != std::string::npos) return picture;
    std::string const why = one_line(err.read_all());
    if (why.find("terminal type") != std::string::npos)
        throw failure("this gnuplot cannot draw PNG, because it has no terminal pngcairo: name a file .svg");
    throw failure(fmt::format("gnuplot failed: {}", why));
}

bool is_png(std::filesystem::path const& path) { return path.extension() == ".png"; }

}  // namespace

std::string svg_by_gnuplot(std::string const& script, std::chrono::milliseconds limit) {
    return by_gnuplot(script, limit, "</svg>");
}

std::string png_by_gnuplot(std::string const& script, std::chrono::milliseconds limit) {
    return by_gnuplot(script, limit, "IEND");
}

std::string picture_by_gnuplot(std::filesystem::path const& path, std::string const& script) {
    return is_png(path) ? png_by_gnuplot(script) : svg_by_gnuplot(script);
}

std::string picture_head(std::filesystem::path const& path, int width, int height, std::string_view title) {
    std::string head =
        fmt::format("set encoding utf8\n"
                    "set terminal {} size {},{} font 'sans-serif,{}' background '#ffffff' noenhanced\n"
                    "set border linecolor '#444444'\nset grid linecolor '#dddddd'\nset tics nomirror\n",
                    is_png(path) ? "pngcairo" : "svg", width, height, is_png(path) ? 11 : 14);
    if (!title.empty()) {
        head += fmt::format("set label {} at screen 0.5, screen 0.96 center font ',{}' textcolor '#222222'\n"
                            "set tmargin 4\nset bmargin 6\n"
                            "set key at screen 0.5, screen 0.02 bottom center horizontal\n",
                            in_quotes(title), is_png(path) ? 13 : 17);
    }
    return head;
}

std::string line_style(std::size_t k, double width) {
    constexpr std::array dashes{"1", "(12,5)", "(3,4)", "(14,4,3,4)", "(6,3)"};
    return fmt::format("linewidth {:g} dashtype {} linecolor '{}'", width, dashes[k % dashes.size()],
                       colours[k % colours.size()]);
}

picture_options picture_options::offer(session& s, std::string const& what) {
    std::string const described = what + ", drawn with gnuplot; the name ends in .svg or .png";
    given const& file = s.option("--draw", "FILE", described.c_str());
    bool const& replace = s.flag("--replace", "overwrite an existing picture");
    return {file, replace};
}

std::filesystem::path picture_options::read() const {
    if (replace && !file.present) throw bad_input("--replace needs --draw");
    return file.present ? read_picture_path(file, replace) : std::filesystem::path();
}

void picture_options::draw(session& s, page& text, std::filesystem::path const& path,
                           std::string const& script) const {
    put_file(s, file, path, replace, picture_by_gnuplot(path, script));
    text.row("drawing", "{}", printable(file.text));
}

std::filesystem::path read_new_path(given const& g, bool replace) {
    std::filesystem::path const path(g.text);
    std::error_code ignored;
    auto const there = std::filesystem::symlink_status(path, ignored);
    if (std::filesystem::is_directory(there)) refuse(g, "this is a folder, not a file");
    if (std::filesystem::exists(there) && !replace)
        refuse(g, "the file exists already; --replace overwrites it");
    return path;
}

std::filesystem::path read_picture_path(given const& g, bool replace) {
    std::filesystem::path const path(g.text);
    if (path.extension() != ".svg" && !is_png(path))
        refuse(g, "the picture is an SVG or PNG file: its name must end in .svg or .png");
    return read_new_path(g, replace);
}

void put_file(session& s, given const& g, std::filesystem::path const& path, bool replace,
              std::string_view text) {
    auto const file = std::make_shared<coming_file>(g, path, replace, text);
    if (!replace) file->appear();
    s.once_answered([file, replace] { replace ? file->replace() : file->keep(); });
}

}  // namespace program
