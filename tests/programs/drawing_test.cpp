// SPDX-License-Identifier: BSL-1.0
// gnuplot as it may go wrong: a script that is called gnuplot and found first.
#include "drawing.hpp"

#include <gtest/gtest.h>

#include <chrono>
#include <csignal>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <string>
#include <thread>

namespace {

using namespace program;
using namespace std::chrono_literals;

class Drawing : public testing::Test {
protected:
    Drawing() {
        std::string name = (std::filesystem::temp_directory_path() / "drawing.XXXXXX").string();
        if (!mkdtemp(name.data())) std::abort();
        folder = name;
        setenv("PATH", (name + ":" + old_path).c_str(), 1);
    }
    ~Drawing() override {
        setenv("PATH", old_path.c_str(), 1);
        std::filesystem::remove_all(folder);
    }
    void gnuplot_is(std::string const& lines) const {
        std::ofstream(folder / "gnuplot") << "#!/bin/sh\n" << lines << '\n';
        std::filesystem::permissions(folder / "gnuplot", std::filesystem::perms::owner_all);
    }
    static std::string complaint(std::chrono::milliseconds limit = 60s) {
        try {
            return "no complaint about " + svg_by_gnuplot("plot x\n", limit);
        } catch (failure const& why) {
            return why.what();
        }
    }

    std::string old_path = std::getenv("PATH");
    std::filesystem::path folder;
};

TEST_F(Drawing, GivesThePictureAsItIs) {
    gnuplot_is("echo \"<svg>$(cat)</svg>\"");
    EXPECT_EQ(svg_by_gnuplot("plot x\n"), "<svg>plot x</svg>\n");
}

TEST_F(Drawing, StopsAHangingGnuplotAndWhatItStarted) {
    gnuplot_is("sleep 1000 & echo $! >" + (folder / "sleeper").string() + "; wait");
    auto const begin = std::chrono::steady_clock::now();
    EXPECT_EQ(complaint(400ms), "gnuplot did not finish within 0.4 s");
    EXPECT_LT(std::chrono::steady_clock::now() - begin, 30s);
    int sleeper = 0;
    std::ifstream(folder / "sleeper") >> sleeper;
    ASSERT_GT(sleeper, 0);
    bool gone = false;  // or a zombie that nobody has asked for
    for (int k = 0; k < 1000 && !gone; ++k, std::this_thread::sleep_for(10ms)) {
        std::ifstream status("/proc/" + std::to_string(sleeper) + "/stat");
        std::string number, name, state;
        gone = !(status >> number >> name >> state) || state == "Z";
    }
    EXPECT_TRUE(gone);
}

TEST_F(Drawing, GivesTheWholeReason) {
    std::string const reason = "the terminal " + std::string(300, 'x') + " is not known";
    gnuplot_is("echo >&2; echo '" + reason + "' >&2; exit 3");
    EXPECT_EQ(complaint(), "gnuplot failed: " + reason);
    gnuplot_is("exit 3");
    EXPECT_EQ(complaint(), "gnuplot failed: no reason given");
    gnuplot_is("echo 'half a <svg>'");
    EXPECT_EQ(complaint(), "gnuplot failed: no reason given");
    gnuplot_is("kill -9 $$");
    EXPECT_EQ(complaint(), "gnuplot failed: no reason given");
}

// Whatever TMPDIR is and however full the disk with /tmp.
TEST_F(Drawing, NeedsNoScratchFileOnADisk) {
    setenv("TMPDIR", "/nonexistent", 1);
    gnuplot_is("readlink /proc/$$/fd/0 /proc/$$/fd/1 /proc/$$/fd/2 >&2; exit 1");
    std::string const reason = complaint();
    EXPECT_EQ(reason.find("/tmp"), std::string::npos) << reason;
    EXPECT_NE(reason.find("/memfd:"), std::string::npos) << reason;
    unsetenv("TMPDIR");
}

}  // namespace
