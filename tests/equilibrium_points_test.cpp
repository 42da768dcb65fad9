// SPDX-License-Identifier: BSL-1.0
#include <aqueth/equilibrium_points.hpp>

#include "expect_text_error.hpp"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace aqueth {
namespace {

using test::expect_text_error;

equilibrium_point only_point(std::string const& text) {
    auto const read = parse_equilibrium_points(text);
    EXPECT_EQ(read.points.size(), 1u) << text;
    return read.points.empty() ? equilibrium_point() : read.points[0];
}

// x = 0.1, y = 0.44 and 86 °C whatever the order, the case and the unit of the columns.
TEST(EquilibriumPoints, ColumnsCountByTheirNames) {
    for (char const* const text :
         {"0.1,0.44,86\n", "x,y,t\n0.1,0.44,86\n", "y,x,T\n0.44,0.1,86\n", "T;X;Y\n86;0,1;0,44\n",
          "x_ethanol,y_ethanol,temperature_c\n0.1,0.44,86\n",
          "X_Ethanol,Y_Ethanol,Temperature_K\n0.1,0.44,359.15\n", "x,y,temperature_f\n0.1,0.44,186.8\n",
          "x (% mol)\ty (% mol)\tT / K\n10\t44\t359.15\n",
          "liquid_percent_mol,vapour_percent_mol,temperature_C\n10,44,86\n",
          "Liquid [mol %],Vapor [mol %],T [°C]\n10,44,86\n"}) {
        SCOPED_TRACE(text);
        equilibrium_point const point = only_point(text);
        EXPECT_NEAR(point.liquid.value(), 0.1, 1e-15);
        EXPECT_NEAR(point.vapour.value().value(), 0.44, 1e-15);
        EXPECT_NEAR(point.temperature.value().celsius(), 86.0, 1e-9);
        EXPECT_FALSE(point.pressure.has_value());
    }
}

TEST(EquilibriumPoints, PressuresCountInTheirUnit) {
    struct {
        char const* cell;
        double kpa;
    } const all[] = {{"pressure_kPa\n0.1,0.44,101.325", 101.325},
                     {"p_hPa\n0.1,0.44,1013.25", 101.325},
                     {"p/mbar\n0.1,0.44,1013.25", 101.325},
                     {"p_bar\n0.1,0.44,1", 100.0},
                     {"p_pa\n0.1,0.44,101325", 101.325},
                     {"p_mmHg\n0.1,0.44,760", 101.325},
                     {"p_torr\n0.1,0.44,760", 101.325},
                     {"p_inhg\n0.1,0.44,29.92126", 101.325},
                     {"p_atm\n0.1,0.44,1", 101.325},
                     {"p_psi\n0.1,0.44,14.69595", 101.325}};
    for (auto const& [cell, kpa] : all) {
        auto const point = only_point(std::string("x,y,") + cell + "\n");
        EXPECT_NEAR(in(point.pressure.value(), kilopascal), kpa, 1e-4) << cell;
        EXPECT_TRUE(of_pressure(point, kpa * 1.004 * kilopascal)) << cell;
        EXPECT_FALSE(of_pressure(point, kpa * 1.006 * kilopascal)) << cell;
    }
}

// 40 % vol at 20 °C are 33.30 % mass and 16.33 % mol by `to`, which strength_test compares with tables.
TEST(EquilibriumPoints, PercentIsConverted) {
    EXPECT_NEAR(only_point("x_percent_vol,t\n40,84\n").liquid.value(), 0.1633, 1e-4);
    EXPECT_NEAR(only_point("x_percent_vol_20c,t\n40,84\n").liquid.value(), 0.1633, 1e-4);
    EXPECT_NEAR(only_point("x_percent_mass,t\n33.30,84\n").liquid.value(), 0.1633, 1e-4);
    EXPECT_EQ(only_point("x_percent_vol,t\n100,78.3\n").liquid.value(), 1.0);
    EXPECT_EQ(only_point("x_percent_vol,t\n0,99.97\n").liquid.value(), 0.0);
}

TEST(EquilibriumPoints, ColumnsOfOneQuantityMustAgree) {
    // as equilibrium_table --csv writes them: the mole fraction counts
    auto const point =
        only_point("liquid_percent_vol_20C,liquid_percent_mass,liquid_percent_mol,temperature_C\n"
                   "40,33.29964,16.33412,84.1\n");
    EXPECT_EQ(point.liquid.value(), 0.1633412);
    expect_text_error([] { parse_equilibrium_points("x,x_percent_mass,t\n0.16334,40,84\n"); }, 2,
                      "x_percent_mass", "contradicts another column");
    expect_text_error([] { parse_equilibrium_points("x,t_c,t_k\n0.1,86,359.9\n"); }, 2, "t_k", "contradicts");
}

TEST(EquilibriumPoints, ListsWhatItDoesNotUse) {
    auto const read =
        parse_equilibrium_points("id,x,y,x_uncertainty,gamma\na,0.1,0.44,0.01,3\nb,0.2,,0.01,2\n");
    EXPECT_EQ(read.points.size(), 1u);
    EXPECT_EQ(read.empty_lines, 1u);
    EXPECT_EQ(read.ignored_columns, (std::vector<std::string>{"id", "x_uncertainty", "gamma"}));
}

TEST(EquilibriumPoints, RefusesWhatItCannotExplain) {
    auto const reading = [](char const* text) { return [text] { parse_equilibrium_points(text); }; };
    expect_text_error(reading("x,y,temperature_r\n0.1,0.44,646\n"), 1, "temperature_r",
                      "no known unit; accepted are x");
    expect_text_error(reading("x,y,pressure\n0.1,0.44,101\n"), 1, "pressure", "_kpa");
    expect_text_error(reading("liquid,vapour\n0.1,0.44\n"), 1, "liquid", "no known unit");
    expect_text_error(reading("#\nwash,steam\n0.1,0.44\n"), 2, "",
                      "no column holds the liquid: wash, steam; accepted are x");
    expect_text_error(reading("x,p_kpa\n0.1,101\n"), 1, "", "no column holds the vapour or the temperature");
    expect_text_error(reading("0.1\n"), 1, "", "no column holds the vapour");
    expect_text_error(reading("x,y\n,0.44\n"), 2, "", "no number for the liquid");
    expect_text_error(reading("0.1,0.44\n0.2,O.53\n"), 2, "y", "'O.53' is not a number");
}

TEST(EquilibriumPoints, RefusesWhatIsOutOfRange) {
    auto const reading = [](char const* text) { return [text] { parse_equilibrium_points(text); }; };
    expect_text_error(reading("0.1,0.44,359.15\n"), 1, "t",
                      "359.15 is outside 0.01 to 120 °C; are these kelvins? Then name the column t_k");
    expect_text_error(reading("x,t_k\n0.1,86\n"), 2, "t_k",
                      "86 is outside 273.16 to 393.15 K; are these °C?");
    expect_text_error(reading("x,t\n0.1,186.8\n"), 2, "t", "are these °F? Then name the column t_f");
    expect_text_error(reading("x,temperature_c\n0.1,-300\n"), 2, "temperature_c",
                      "-300 is outside 0.01 to 120 °C");
    expect_text_error(reading("x,t_f\n0.1,31\n"), 2, "t_f", "outside 32.018 to 248 °F");
    expect_text_error(reading("10,44,86\n"), 1, "x",
                      "10 is outside 0 to 1; is this percent? Then name the column x_p");
    expect_text_error(reading("0.1,44,86\n"), 1, "y", "Then name the column y_percent_mol");
    expect_text_error(reading("x,y\n-0.1,0.4\n"), 2, "x", "-0.1 is outside 0 to 1");
    expect_text_error(reading("x_percent_mol,t\n101,86\n"), 2, "x_percent_mol", "101 is outside 0 to 100 %");
    expect_text_error(reading("x,t,p_kpa\n0.1,86,101325\n"), 2, "p_kpa",
                      "101325 is outside 0.1 to 20000 kPa");
}

}  // namespace
}  // namespace aqueth
