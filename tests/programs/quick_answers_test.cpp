// SPDX-License-Identifier: BSL-1.0
// The loops give the results of the task: a result without a loop would make a million rows fifty times
// slower.
#include "help.hpp"
#include "quick_answers.hpp"

#include <gtest/gtest.h>

#include <map>
#include <string>
#include <variant>

namespace program {
namespace {

std::map<std::string, std::string> answer_of(char const* task, std::vector<std::string> options) {
    options.push_back("--no-settings");
    outcome const one = find_task(task).ask(std::move(options));
    EXPECT_EQ(one.complaint, "");
    std::map<std::string, std::string> results;
    for (json::leaf const& leaf : one.data.leaves()) results[leaf.name] = leaf.text;
    return results;
}

TEST(QuickAnswers, HaveEveryResultOfCorrectReading) {
    for (double const celsius : {25.0, 45.0}) {
        auto const task =
            answer_of("correct_reading", {"--reading=60 %vol", fmt::format("--temperature={} C", celsius),
                                          "--glass=borosilicate", "--correction=+0.2"});
        auto const quick = answer_quickly(
            "correct_reading", {{"--reading", {"%vol", {60.0}}}, {"--temperature", {"C", {celsius}}}},
            {{"--glass", "borosilicate"}, {"--correction", "+0.2"}});
        ASSERT_TRUE(quick);
        ASSERT_TRUE(quick->answered[0]);
        EXPECT_GT(task.size(), 5u);
        for (auto const& [name, text] : task) {
            ASSERT_TRUE(quick->columns.contains(name)) << name;
            quick_column const& column = quick->columns.at(name);
            if (auto const* const words = std::get_if<std::vector<char const*>>(&column)) {
                EXPECT_EQ((*words)[0], text) << name;
            } else if (auto const* const word = std::get_if<std::string>(&column)) {
                EXPECT_EQ(*word, text) << name;
            } else {
                EXPECT_NEAR(std::get<std::vector<double>>(column)[0], std::stod(text), 2e-7) << name;
            }
        }
    }
}

TEST(QuickAnswers, RefuseOptionsThatNoLoopKnows) {
    EXPECT_FALSE(answer_quickly("correct_reading",
                                {{"--reading", {"%vol", {60.0}}}, {"--temperature", {"C", {25.0}}}},
                                {{"--room", "20 C"}}));
    EXPECT_FALSE(answer_quickly("dilute_spirit", {{"--amount", {"L", {1.0}}}}, {}));
}

}  // namespace
}  // namespace program
