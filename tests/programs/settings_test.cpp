// SPDX-License-Identifier: BSL-1.0
// The settings file: what the reader makes of it, and which settings an option takes.
#include "program.hpp"
#include "settings.hpp"

#include <gtest/gtest.h>

#include <deque>
#include <fstream>
#include <iterator>
#include <set>
#include <string>

namespace program {
namespace {

std::string message(std::string const& text) {
    try {
        static_cast<void>(read_settings(text, "s.toml"));
    } catch (bad_input const& e) {
        return e.what();
    }
    return "accepted";
}

TEST(Settings, ReadsTables) {
    settings const s = read_settings("altitude = \"310 m\"  # comment\n"
                                     "price = 0.32\n"
                                     "[stem.\"no 7\"]\n"
                                     "scale = '%vol at 20 C'\n"
                                     "certificate = \"own # comparison\"\n"
                                     "[still]\n"
                                     "usual = \"q\"\n"
                                     "[still.q]\n"
                                     "plates = 4\n"
                                     "power = \"1.5 kW\"\n",
                                     "s.toml");
    ASSERT_EQ(s.plain.size(), 2u);
    EXPECT_EQ(s.plain[0].key, "altitude");
    EXPECT_EQ(s.plain[0].value, "310 m");
    EXPECT_EQ(s.plain[0].line, 1u);
    EXPECT_EQ(s.plain[1].value, "0.32");
    ASSERT_EQ(s.tables.size(), 2u);
    settings_table const& stem = s.table(kind_of_table::stem, "no 7");
    EXPECT_EQ(stem.certificate, "own # comparison");
    ASSERT_EQ(stem.entries.size(), 1u);
    EXPECT_EQ(stem.entries[0].value, "%vol at 20 C");
    settings_table const& still = s.table(kind_of_table::still, "q");
    ASSERT_EQ(still.entries.size(), 2u);
    EXPECT_EQ(still.entries[0].key, "plates");  // in the order of the file
    EXPECT_EQ(still.entries[0].value, "4");
    EXPECT_EQ(still.entries[1].line, 10u);
    EXPECT_EQ(s.usual[static_cast<int>(kind_of_table::still)], "q");
    EXPECT_EQ(s.find(kind_of_table::balance, "q"), nullptr);
}

TEST(Settings, EmptyFileIsFine) {
    EXPECT_EQ(message(""), "accepted");
    EXPECT_EQ(message("# nothing\n"), "accepted");
}

TEST(Settings, RefusesWithFileAndLine) {
    EXPECT_EQ(message("\n\naltitud = \"1 m\"\n"),
              "s.toml, line 3: there is no setting altitud; did you mean altitude?");
    EXPECT_EQ(message("room = \"20\"\n").rfind("s.toml, line 1: room '20': ", 0), 0u);
    EXPECT_EQ(message("a = \n").rfind("s.toml, line 1: not TOML: ", 0), 0u);
    EXPECT_EQ(message(std::string("a\0b = 1\n", 8)).rfind("s.toml, line 1: ", 0), 0u);
    EXPECT_EQ(message("altitude = \"1 m\\u000A\"\n"),
              "s.toml, line 1: altitude must be one line of text in quotes, or a number");
    EXPECT_EQ(message("altitude = nan\n").rfind("s.toml, line 1: ", 0), 0u);
    EXPECT_EQ(message("price = inf\n").rfind("s.toml, line 1: ", 0), 0u);
    EXPECT_EQ(message("price = -1\n").rfind("s.toml, line 1: price '-1': ", 0), 0u);
    EXPECT_EQ(message("[still.a]\nplates = [4]\n").rfind("s.toml, line 2: plates must be", 0), 0u);
}

struct options {
    std::deque<given> all;
    offered_options offered;
    given& add(given g) {
        all.push_back(std::move(g));
        offered.push_back(&all.back());
        return all.back();
    }
};

TEST(Settings, TypedOptionWins) {
    settings const s = read_settings("altitude = \"310 m\"\nroom = \"18 C\"\nprice = 1\n", "s.toml");
    options o;
    given& altitude = o.add({"--altitude", "5 m", true});
    given& room = o.add({"--room", "20 C"});
    given& loss = o.add({"--pot-loss", "1 W/K", true});
    auto const used = apply(s, {}, o.offered);
    EXPECT_EQ(altitude.text, "5 m");
    EXPECT_TRUE(altitude.typed());
    EXPECT_EQ(room.text, "18 C");
    EXPECT_TRUE(room.present);
    EXPECT_FALSE(room.typed());
    EXPECT_TRUE(loss.typed());
    ASSERT_EQ(used.size(), 1u);
    EXPECT_EQ(used[0].option, "--room");
    EXPECT_EQ(used[0].place(), "line 2");
    EXPECT_EQ(room.name, "--room (s.toml, line 2)");  // so that a refusal says where the value is
}

TEST(Settings, GivesWayToRivals) {
    settings const s = read_settings("altitude = \"310 m\"\n", "s.toml");
    options o;
    given& pressure = o.add({"--pressure", "1 bar", true});
    given& altitude = o.add({"--altitude", "0 m"});
    EXPECT_TRUE(apply(s, {}, o.offered).empty());
    EXPECT_TRUE(pressure.typed());
    EXPECT_EQ(altitude.text, "0 m");
    EXPECT_FALSE(altitude.present);
}

TEST(Settings, GivesWayWithoutWhatItNeeds) {
    // --keep-strength needs --reflux, which needs a column: without one, both give way.
    settings const s =
        read_settings("[still.a]\nreflux = 3\nkeep-strength = \"85 %vol\"\npower = \"1 kW\"\n", "s.toml");
    options o;
    given& power = o.add({"--power", ""});
    given& reflux = o.add({"--reflux", "0"});
    given& keep = o.add({"--keep-strength", ""});
    given& stages = o.add({"--stages", ""});
    auto const& table = s.table(kind_of_table::still, "a");
    EXPECT_EQ(apply(s, {&table}, o.offered).size(), 1u);
    EXPECT_TRUE(power.present);
    EXPECT_FALSE(reflux.present);
    EXPECT_EQ(reflux.text, "0");
    EXPECT_FALSE(keep.present);
    stages = {"--stages", "3", true};
    power = {"--power", ""};
    EXPECT_EQ(apply(s, {&table}, o.offered).size(), 3u);
    EXPECT_TRUE(keep.present);
}

TEST(Settings, EveryKeyIsReachable) {
    std::set<std::string> names;
    for (setting_key const& key : setting_keys()) {
        EXPECT_TRUE(names.insert(key.name).second) << key.name;
        EXPECT_TRUE(key.plain || key.in_tables[0] || key.in_tables[1] || key.in_tables[2]) << key.name;
    }
}

TEST(Settings, ReadsTheExample) {
    std::ifstream file(EXAMPLE);
    std::string const text{std::istreambuf_iterator<char>(file), {}};
    ASSERT_FALSE(text.empty());
    ASSERT_EQ(message(text), "accepted");
    EXPECT_FALSE(read_settings(text, "s.toml").tables.empty());
}

TEST(Certificate, StraightLinesBetweenItsPoints) {
    certificate const c({"--correction", "+0.2 at 40, -0.2 at 60", true});
    EXPECT_NEAR(c.correction(40), 0.2, 1e-12);
    EXPECT_NEAR(c.correction(50), 0.0, 1e-12);
    EXPECT_NEAR(c.correction(55), -0.1, 1e-12);
    EXPECT_NEAR(c.correction(10), 0.2, 1e-12);
    EXPECT_NEAR(c.correction(90), -0.2, 1e-12);
    for (double const reading : {10.0, 40.0, 47.0, 60.0, 90.0})
        EXPECT_NEAR(c.reading(reading + c.correction(reading)), reading, 1e-12);
    EXPECT_EQ(certificate().correction(50), 0.0);
    EXPECT_EQ(certificate({"--correction", "-0.3", true}).correction(7), -0.3);
}

}  // namespace
}  // namespace program
