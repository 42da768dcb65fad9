// SPDX-License-Identifier: BSL-1.0
//
// The tables themselves: every file is in the format, has its source, stands in the index, and holds the
// figures it held when it was typed, each in its place. And the reader: that it refuses what is not in the
// format.
#include "published/table.hpp"

#include <boost/crc.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <gtest/gtest.h>
#include <iterator>
#include <set>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

using aqueth::published::table;

namespace {

// First word of the status of a file, its rows, the sum of each column of numbers, left to right, over the
// cells that are not empty, and the CRC-32 of its status line and of all names and cells in their order. The
// sums say which column holds a slip; the CRC-32 sees two slips that compensate each other.
struct pin {
    char const* file;
    char const* status;
    std::size_t rows;
    std::uint32_t checksum;
    std::vector<double> sums;
};

// clang-format off
std::vector<pin> const pins{
    {"azeotropes.csv", "read", 8, 0x0d90b94fU, {316.815, 7.5383, 0.077}},
    {"azeotropes_from_memory.csv", "memory", 7, 0x4a0a0546U, {548.528, 6.4678, 2355.89}},
    {"balling_alcohol_factors.csv", "read", 31, 0x5f5d9608U, {528, 13.3117}},
    {"balling_beers.csv", "read", 5, 0x563ab769U, {16.5, 22.16, 4.926, 58.605, 9.078}},
    {"batch_distillation_examples.csv", "read", 11, 0xbac5c484U, {181.275}},
    {"beebe_1942.csv", "read", 67, 0x601c6a0cU, {34.9835, 43.7931, 3440.8, 1887.172}},
    {"bingham_jackson_1918.csv", "read", 95, 0xae6d69c7U, {4610, 3640, 164.37}},
    {"bpc_1911_dilution.csv", "read", 4, 0xe9c5bcd2U, {195, 216.65, 191.7, 3.7231}},
    {"carey_lewis_1932.csv", "read", 15, 0x29f03a4fU, {5.6146, 8.6879, 1241.9, 1519.875}},
    {"cask_loss_limits.csv", "read", 5, 0x1e7e3119U, {29.5, 7.4, 1.5}},
    {"cipm_2001_water.csv", "read", 41, 0xe5b1a119U, {820, 40895.6106}},
    {"cipm_2001_water_coefficients.csv", "read", 5, 0x83d1b17fU, {15, 523896.037725}},
    {"crc_ethanol_20c.csv", "read", 61, 0x8625744fU, {2650.5, 2759.32, 503.192, 56.0595}},
    {"crc_freezing_point.csv", "read", 45, 0xb62da2e9U, {1290.5, 887.72}},
    {"crc_refractive_index_20c.csv", "read", 238, 0xfb1b9e77U, {8076.5, 323.4088}},
    {"crc_solution_density_20c.csv", "read", 137, 0xceb3d462U, {4381.5, 139.4631}},
    {"crc_sucrose_20c.csv", "read", 40, 0x7152e1dfU, {1044.5, 71.306, 36.746, 44.6615}},
    {"cristino_2013.csv", "read", 42, 0x99ee5519U, {18.7527, 25.4334, 15765.4, 9404.5}},
    {"equilibrium_worked_examples.csv", "read", 17, 0xd9619832U, {286.5137}},
    {"ethanol_vaporization.csv", "read", 16, 0x8a54c2ecU, {6071.65, 545.08}},
    {"ethanol_vapour_pressure.csv", "read", 143, 0xf0703dbdU, {47793.114424837, 10454.49892402,
        216.82384156, 281067}},
    {"cutaia_2009_brews.csv", "read", 5, 0x4336f461U, {532, 70.38, 24.45, 24.08, 12.89}},
    {"excess_enthalpy_2006.csv", "read", 20, 0xe2b06985U, {6163, 8.5185, -7513}},
    {"excess_enthalpy_2006_held.csv", "read", 7, 0x3f7bda63U, {2262.05, 3.309, -1264}},
    {"excess_enthalpy_2014.csv", "read", 34, 0x765b2209U, {12607.1, 44763, 12.5724, 6855.1}},
    {"excess_enthalpy_2017.csv", "read", 1, 0x571dec78U, {298.15, 0.102, -706.59, 4.035}},
    {"excess_enthalpy_dilute_2007.csv", "read", 30, 0xa9af0c4aU, {8944.5, 14.889662, -365.98, 15.48}},
    {"excess_enthalpy_from_memory.csv", "memory", 7, 0xe7731cd7U, {2087.05, 2.85, -3727}},
    {"excise_notice_226_factors.csv", "read", 11, 0xff33cd8bU, {537.3, 70.7, 1.43}},
    {"flammability_limits.csv", "read", 3, 0xa5245c69U, {37.8, 9.7, 57}},
    {"flash_points.csv", "read", 10, 0xd72fd8c1U, {546, 261}},
    {"gay_lussac_mouillage.csv", "read", 206, 0x95ea6839U, {17800, 9505, 35508.49}},
    {"ghersi_castoldi_dilution.csv", "read", 117, 0x88c89150U, {9075, 4830, 22475.57}},
    {"glass_hydrometer_60f.csv", "read", 209, 0x0adad8e2U, {9405, 11970, 9334.6}},
    {"groening_vapour_strengths.csv", "read", 17, 0x5bb900f8U, {737, 1248.5, 3150.5}},
    {"hyncica_2004.csv", "read", 30, 0x9ad966a8U, {10414.66, 460320, 14.05828, -127.6782}},
    {"iapws_liquid_water.csv", "read", 3, 0x393166dcU, {933.15, 2951.125083}},
    {"iapws_liquid_water_coefficients.csv", "read", 12, 0xd4955580U, {54, 6787490870.00096}},
    {"heats_of_combustion.csv", "read", 4, 0x1f241bd1U, {12627}},
    {"iapws_saturation.csv", "read", 9, 0x0ad06e4bU, {4103.321339, 48.25268560641, 271.660436693, 4757.15}},
    {"infinite_dilution_held.csv", "read", 6, 0xe5c268bdU, {1914.4, 31.39}},
    {"is_2302_weighing.csv", "read", 6, 0x048bc931U, {377, 467.535}},
    {"ittc_2011_water.csv", "read", 31, 0x5e952eb2U, {775, 30896.5468}},
    {"je060335h_densities.csv", "read", 164, 0xc77c8813U, {2870, 57.33448, 149006.61}},
    {"lai_2014.csv", "read", 16, 0x49b499bdU, {7.933, 9.882, 5699.94, 1620.8}},
    {"landolt_boernstein_2007_50c.csv", "read", 25, 0x13a6047fU, {10.1862, 8078.45, 617.874}},
    {"landolt_boernstein_2007_90c.csv", "read", 25, 0x993c647dU, {12.83235, 9078.15, 3584.7}},
    {"lange_freezing_point.csv", "read", 15, 0x2b710febU, {14.53655, 287.9, 350, -166.7, 179.8}},
    {"larkin_1975.csv", "read", 5, 0x31223dcbU, {9, -0.31448, 0.12963, -0.11074}},
    {"leach_lythgoe_1905.csv", "read", 3, 0xdc757e02U, {160, 150.7}},
    {"malt_specific_heat.csv", "read", 7, 0xcf576769U, {24, 2.78, 14.2}},
    {"melinder_2010_check_values.csv", "computed", 9, 0x587f5f20U, {180, 195, 0.02038217, 8694.46, 33543,
        3.91798}},
    {"melinder_2010_coefficients.csv", "read", 90, 0xe4709392U, {170, 110, 5126.77892198064}},
    {"melinder_2010_conductivity.csv", "read", 104, 0xf94d7ddbU, {4071, -285, 37.6883}},
    {"melinder_2010_density.csv", "read", 495, 0xeca4ace4U, {19656, -1961, 469791.5177527}},
    {"melinder_2010_freezing_point.csv", "read", 11, 0xe35c9d94U, {395, -278.271939232}},
    {"modern_densities.csv", "read", 30, 0xebaff325U, {785, 15.0138, 26269.641}},
    {"nbs_1913_density_45_85.csv", "read", 41, 0x50b739d2U, {2665, 36.37246, 36.20561, 36.03664, 35.8654,
        35.6917, 35.51545,
        35.33656}},
    {"nbs_1913_density_lange.csv", "read", 127, 0x50cdd6f3U, {5799.31, 1260.3, 617.97, 92.23796, 115.32736,
        91.23054, 90.87078,
        91.73914, 91.49727, -407.2}},
    {"oiml_r22_coefficients.csv", "read", 54, 0xd7804ebaU, {84, 278, 788.383646643625}},
    {"pecar_dolecek_2005.csv", "read", 98, 0x41ab608cU, {6125, 26.4818, 87964.7}},
    {"pemberton_mash_1978_30c.csv", "read", 25, 0xcc84ce4eU, {12.55063, 15.8198, 7578.575, 216.506}},
    {"pemberton_mash_1978_90c.csv", "read", 25, 0xb4490a55U, {12.41972, 9078.15, 3377.632}},
    {"perry_heat_capacity.csv", "read", 15, 0x6b3744eaU, {640.98, 335, 12.593}},
    {"proof_spirit.csv", "read", 10, 0x5d3a2e17U, {491.776817}},
    {"pure_component_coefficients.csv", "read", 49, 0x762d188dU, {91.5, 727368.1651402501}},
    {"reduction_table.csv", "read", 153, 0xc64062e4U, {10455, 5610, 23098.7}},
    {"rieder_thompson_1949.csv", "read", 34, 0x1cb149f9U, {8.4037, 15.415, 2937.2, 3445.05}},
    {"schroeder_2014_coefficients.csv", "read", 25, 0x9ba76cdfU, {325, -2.9645336951, 50.255, 63, 13, 16.191, 41.1095, 11.128, 9.06}},
    {"sound_speed_2007.csv", "read", 12, 0xcc95bc42U, {9457.538, 13820.7}},
    {"sound_speed_2018.csv", "read", 56, 0xa1cfe185U, {16741.4, 23.4535, 78533.47}},
    {"sucrose_density_coefficients.csv", "read", 20, 0x619964a6U, {30, 55, 557.3046}},
    {"t90_minus_t68.csv", "read", 18, 0x9ac84553U, {630, -0.171}},
    {"t90_minus_t68_coefficients.csv", "read", 8, 0x9a15cc6dU, {36, -0.125408}},
    {"trade_scales.csv", "read", 7, 0xb3a4fae0U, {1436.562}},
    {"tralles_60f.csv", "read", 101, 0xfaee9d7dU, {5050, 92.9697, 2052}},
    {"us_gauging_volume_factors.csv", "read", 9, 0x786ae787U, {1266.8, 512, 9.014, 545}},
    {"us_gauging_weights.csv", "read", 13, 0xd4f8156eU, {2008, 17116.298014, 388.001}},
    {"us_obscuration.csv", "read", 2, 0x3c28fa54U, {0.6, 2.4}},
    {"usp_29_alcoholometric_table.csv", "read", 34, 0x2438387cU, {561, 457.51, 33.2755, 33.3196, 561,
        683.95, 33.1164, 32.225}},
    {"viscosity_2007.csv", "read", 22, 0xdcab2b6bU, {6554.3, 12.1314, 36.271}},
    {"voutsas_2011.csv", "read", 45, 0x046ca8d3U, {29.667, 10.21, 14275.54, 972.65}},
    {"vrbka_2005_infinite_dilution.csv", "read", 13, 0xd0f6a7dcU, {4245.15, 63.48}},
    {"wahl_henius_beers.csv", "read", 14, 0xf7e74b9fU, {55.82, 183.46, 52.81, 78.86}},
    {"white_wines_2009.csv", "read", 118, 0xd827534cU, {1274.5, 881.55, 117.25747}},
    {"worked_examples.csv", "read", 14, 0x2c03f95fU, {56512.2521689894}},
    {"worked_examples_from_memory.csv", "memory", 2, 0xbf4b910dU, {55.57}},
    {"yang_1979.csv", "read", 9, 0x13dadc36U, {450, 225, 274.5, 428.89}},
{"acetic_acid_dimer_from_memory.csv", "memory", 2, 0x48cff83bU, {3155.5795}},
    {"binary_parameters_dechema.csv", "read", 10, 0xb8da9b13U, {-1.731994446487456287, 368.102924910353144,
        1.731994446487456125, -1275.214507507764268, 1.5079}},
    {"infinite_dilution_collected.csv", "read", 19, 0xfcc177b6U, {1107.9, 4501.68}},
    {"infinite_dilution_in_water.csv", "read", 123, 0x20988f58U, {38915, 9856.43}},
    {"methanol_ethanol_water_1958.csv", "read", 20, 0xdc503b6aU, {5.02, 5.017, 9.963, 7015.4, 7.956, 6.733,
        5.311}},
    {"trace_boiling_points.csv", "read", 11, 0x60b19e40U, {4185.08}},
    {"trace_vapour_pressures.csv", "read", 51, 0x4c1bf941U, {978.435446017287628, -22864.782507929551,
        -1859.4447627, -28.9526245335999999278744, 117802729, 12724.96, 12626.27, 25019.88}},
    {"unifac_dortmund_groups.csv", "read", 11, 0xa44086f6U, {217, 103, 11.0759, 12.4998}},
    {"unifac_dortmund_interactions.csv", "read", 54, 0x4bff42d1U, {580, 580, 15248.931, -33.3767, 0.0622472}},
    {"water_acetic_acid_2011.csv", "read", 18, 0x82f79f26U, {6821.66, 9.5213, 11.1275}},
};
// clang-format on

std::set<std::string> files() {
    std::set<std::string> result;
    for (auto const& entry : std::filesystem::directory_iterator(AQUETH_TABLES)) {
        if (entry.path().extension() == ".csv") result.insert(entry.path().filename().string());
    }
    return result;
}

std::string contents(std::filesystem::path const& path) {
    std::ifstream stream(path);
    return {std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
}

std::string status(table const& t) { return t.header_of(2); }

// "read in a copy" to "read"
std::string first_word(std::string const& text) { return text.substr(0, text.find_first_of(" ,:;.")); }

std::uint32_t checksum(table const& t) {
    boost::crc_32_type crc;
    // The separators keep a digit from moving to the next cell unseen.
    auto const add = [&crc](std::string const& text, char separator) {
        crc.process_bytes(text.data(), text.size());
        crc.process_byte(static_cast<unsigned char>(separator));
    };
    add(status(t), '\n');
    for (auto const& column : t.columns()) add(column, ',');
    for (auto const& row : t.rows()) {
        add({}, '\n');
        for (auto const& column : t.columns()) add(row.text(column), ',');
    }
    return crc.checksum();
}

std::string hexadecimal(std::uint32_t number) {
    char text[16];
    std::snprintf(text, sizeof text, "0x%08xU", number);
    return text;
}

bool begins_with_one_of(std::string const& text, std::vector<std::string> const& words) {
    return std::any_of(words.begin(), words.end(),
                       [&](std::string const& word) { return text.rfind(word, 0) == 0; });
}

}  // namespace

TEST(Tables, EveryFileIsPinned) {
    std::set<std::string> pinned;
    for (auto const& p : pins) pinned.insert(p.file);
    EXPECT_EQ(pinned, files());
}

TEST(Tables, StatusRowsChecksumAndSumsOfColumns) {
    for (auto const& p : pins) {
        SCOPED_TRACE(p.file);
        table const t(p.file);
        EXPECT_EQ(first_word(status(t)), p.status);
        EXPECT_EQ(t.rows().size(), p.rows);
        EXPECT_EQ(hexadecimal(checksum(t)), hexadecimal(p.checksum));
        std::vector<double> sums;
        for (auto const& column : t.columns()) {
            if (table::holds_words(column)) continue;
            double sum = 0.0;
            for (auto const& row : t.rows()) {
                if (!row.empty(column)) sum += row[column];
            }
            sums.push_back(sum);
        }
        ASSERT_EQ(sums.size(), p.sums.size());
        for (std::size_t i = 0; i < sums.size(); ++i) {
            // Far below the last digit of any cell, above the rounding of the sum.
            EXPECT_NEAR(sums[i], p.sums[i], 1e-12 * (1.0 + std::abs(p.sums[i]))) << "number column " << i + 1;
        }
    }
}

// Errors that the sums cannot show: two cells exchanged, two slips that compensate each other, a figure in
// the next column, remembered figures called read.
TEST(Tables, ChecksumSeesWhatSumsCannot) {
    auto const of = [](char const* state, char const* rows) {
        std::istringstream text(std::string("# title: t\n# source: s\n# status: ") + state +
                                "\n# used: fitted\n# units: u\n# doubts: d\n" + rows);
        return checksum(table("example", text));
    };
    auto const original = of("read", "a,b\n1.25,3\n2.50,4\n");
    EXPECT_EQ(of("read", "a,b\n1.25,3\n2.50,4\n"), original);
    EXPECT_NE(of("read", "a,b\n2.50,4\n1.25,3\n"), original);
    EXPECT_NE(of("read", "a,b\n1.26,3\n2.49,4\n"), original);
    EXPECT_NE(of("read", "a,b\n1.25,4\n2.50,3\n"), original);
    EXPECT_NE(of("read", "b,a\n1.25,3\n2.50,4\n"), original);
    EXPECT_NE(of("read", "a,b\n1.25,3\n2.5,4\n"), original);  // the decimals are part of the figure
    EXPECT_NE(of("memory", "a,b\n1.25,3\n2.50,4\n"), original);
    EXPECT_NE(of("read", "a,b\n12,53\n2.50,4\n"), of("read", "a,b\n125,3\n2.50,4\n"));
}

TEST(Tables, HeadersSayWhatTheyMust) {
    for (auto const& file : files()) {
        SCOPED_TRACE(file);
        table const t(file);
        for (std::size_t key = 0; key < table::keys.size(); ++key) EXPECT_FALSE(t.header_of(key).empty());
        EXPECT_TRUE(begins_with_one_of(t.header_of(2), {"read", "memory", "computed"})) << t.header_of(2);
        EXPECT_TRUE(begins_with_one_of(t.header_of(3),
                                       {"fitted", "held for checking", "defines the formula", "not used"}))
            << t.header_of(3);
        EXPECT_EQ(contents(std::filesystem::path(AQUETH_TABLES) / file).find("://"), std::string::npos)
            << "cite the publication, not the address of a copy";
    }
}

TEST(Tables, IndexNamesEveryFileAndItsChecks) {
    std::ifstream index(std::filesystem::path(AQUETH_TABLES) / "README.md");
    ASSERT_TRUE(index);
    std::set<std::string> indexed;
    std::string line;
    while (std::getline(index, line)) {
        if (line.rfind("| `", 0) != 0) continue;
        std::vector<std::string> columns;
        std::istringstream cells(line);
        for (std::string cell; std::getline(cells, cell, '|');) columns.push_back(cell);
        ASSERT_EQ(columns.size(), 7U)
            << line;  // file, source, units, status, checked by, doubts, and one before the first
        std::string const file = columns[1].substr(2, columns[1].size() - 4);
        EXPECT_TRUE(indexed.insert(file).second) << "twice: " << file;
        // every `name` among the checks is a file beside this one
        std::string const& checks = columns[5];
        for (auto from = checks.find('`'); from != std::string::npos;) {
            auto const to = checks.find('`', from + 1);
            ASSERT_NE(to, std::string::npos) << line;
            auto const name = checks.substr(from + 1, to - from - 1);
            auto const test =
                std::filesystem::path(AQUETH_TABLES) / "../tests/published" / (name + "_test.cpp");
            EXPECT_TRUE(std::filesystem::exists(test)) << name;
            if (std::filesystem::exists(test)) {
                EXPECT_NE(contents(test).find('"' + file + '"'), std::string::npos)
                    << name << " does not read " << file;
            }
            from = checks.find('`', to + 1);
        }
    }
    EXPECT_EQ(indexed, files());
}

TEST(Tables, ReaderUnderstandsTheFormat) {
    std::istringstream text("# title: a title that goes on\n#    here\n# source: s\n# status: read\n# used: "
                            "fitted\n# units: u\n# doubts: one\n"
                            "# doubts: two\nid,value_g,other,note\na,1.50,,\nb,2,3e-05,suspect other: "
                            "because\nc,-4,5,suspect: all of it\n");
    table const t("example", text);
    EXPECT_EQ(t.header_of(0), "a title that goes on here");
    EXPECT_EQ(t.doubts(), (std::vector<std::string>{"one", "two"}));
    ASSERT_EQ(t.rows().size(), 3U);
    auto const first = t.rows()[0];
    EXPECT_EQ(first["value_g"], 1.5);
    EXPECT_EQ(first.printed("value_g").decimals, 2);
    EXPECT_TRUE(first.empty("other"));
    EXPECT_TRUE(first.doubt("other").empty());
    EXPECT_THROW(first["other"], std::runtime_error);
    EXPECT_THROW(first["missing"], std::runtime_error);
    auto const second = t.where("id", "b");
    EXPECT_EQ(second["other"], 3e-5);
    EXPECT_EQ(second.doubt("other"), "because");
    EXPECT_TRUE(second.doubt("value_g").empty());
    EXPECT_EQ(t.where("id", "c").doubt("value_g"), "all of it");
    EXPECT_THROW(t.where("id", "d"), std::runtime_error);
}

TEST(Tables, ReaderRefusesAnythingElse) {
    std::string const top = "# title: t\n# source: s\n# status: read\n# used: fitted\n";
    std::string const head = top + "# units: u\n# doubts: none found\n";
    struct refused {
        char const* why;
        std::string text;
    };
    std::vector<refused> const all{
        {"nothing", ""},
        {"no rows", head + "a,b\n"},
        {"no header", "a,b\n1,2\n"},
        {"a line missing", top + "# units: u\na\n1\n"},
        {"out of order", top + "# doubts: d\n# units: u\na\n1\n"},
        {"a line twice", "# title: t\n" + head + "a\n1\n"},
        {"an unknown line", "# colour: red\n" + head + "a\n1\n"},
        {"goes on from nothing", "#   more\n" + head + "a\n1\n"},
        {"no space", "# title:t\n" + head + "a\n1\n"},
        {"an empty line", head + "\na\n1\n"},
        {"too few cells", head + "a,b\n1\n"},
        {"too many cells", head + "a,b\n1,2,3\n"},
        {"a header line below", head + "a\n1\n# doubts: late\n"},
        {"words for a number", head + "a\none\n"},
        {"a space", head + "a\n1 \n"},
        {"a foreign decimal", head + "a\n1;5\n"},
        {"not a number", head + "a\nnan\n"},
        {"not finite", head + "a\ninf\n"},
        {"not snake_case", head + "A\n1\n"},
        {"one name twice", head + "a,a\n1,2\n"},
        {"note not last", head + "note,a\n,1\n"},
        {"a note that marks nothing", head + "a,note\n1,strange\n"},
        {"a note on no column", head + "a,note\n1,suspect b: why\n"},
        {"no words", head + "id,a\n,1\n"},
    };
    for (auto const& [why, text] : all) {
        std::istringstream stream(text);
        EXPECT_THROW(table("example", stream), std::runtime_error) << why;
    }
    std::istringstream good(head + "a\n1\n");
    EXPECT_NO_THROW(table("example", good));
    EXPECT_THROW(table("no_such_file.csv"), std::runtime_error);
}
