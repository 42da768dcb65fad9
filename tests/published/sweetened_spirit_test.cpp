// SPDX-License-Identifier: BSL-1.0
//
// Additive apparent volumes against what was measured: solutions of glucose and fructose (CRC Handbook, 102nd
// edition), beers (Wahl and Henius, 1901), white wines (Cortez and others, 2009), the US rule of obscuration.
// Nothing measured beyond these wines (to 14 % vol, at most 22 g/L) and beers (about 5 % vol, to 66 g/L) was
// read.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/attenuation.hpp>
#include <aqueth/density.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/plain/sweetening.hpp>
#include <aqueth/sweetening.hpp>
#include <aqueth/wash.hpp>

#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <string>
#include <vector>

namespace aqueth {
namespace {

using published::precision;

/// Sugar in water, by mass.
sweetened solution(double percent, sweetener kind) {
    return sweetened::of(water((100.0 - percent) * gram, celsius(20)), percent * gram, kind);
}

TEST(SweetenedSpirit, CrcGlucoseAndFructose) {
    published::table const t("crc_solution_density_20c.csv");
    auto const source = precision::stated(0.05, "half a unit of the fourth decimal; typed without its zeros");
    published::deviations glucose("crc_glucose_density", "kg/m3", source);
    published::deviations fructose("crc_fructose_density", "kg/m3", source);
    for (auto const& row : t.rows()) {
        std::string const id = row.text("id");
        if (id == "methanol") continue;
        double const percent = row["mass_percent"];
        auto const kind = id == "glucose" ? sweetener::glucose : sweetener::fructose;
        std::string const cell = row.text("mass_percent") + " % mass";
        auto& report = id == "glucose" ? glucose : fructose;
        if (percent > 100.0 * model::sugar_solution::highest_mass_fraction(kind)) {
            report.leave_out(cell, "the volume bends away above 50 %");
        } else {
            report.add(cell, solution(percent, kind).density().value() - 1000.0 * row["density_g_cm3"]);
        }
    }
    EXPECT_EQ(glucose.cells(), 36);
    EXPECT_EQ(fructose.cells(), 35);
    glucose.fitted({.largest = 0.16});
    fructose.fitted({.largest = 0.068});
}

// The beers as their alcohol and real extract make them, against the gravity that the saccharometer showed.
TEST(SweetenedSpirit, BeersOfWahlAndHenius) {
    published::table const t("wahl_henius_beers.csv");
    auto const source = precision::unknown("averages of several analysts, not stated");
    published::deviations averages("wahl_henius_averages", "kg/m3", source);
    published::deviations cities("wahl_henius_cities", "kg/m3", source);
    published::deviations extracts("tabarie_extract_of_cities", "g/L", source);
    for (auto const& row : t.rows()) {
        std::string const id = row.text("id");
        bool const city = id.rfind("city", 0) == 0;
        double const alcohol = row["alcohol_percent_mass"] / 100.0;
        double const real = row["real_extract_percent"] / 100.0;
        auto const beer = sweetened::of(
            parcel::of((1.0 - real) * kilogram, mass_fraction(alcohol / (1.0 - real)), celsius(17.5)),
            real * kilogram);
        // Balling's degrees are those of sucrose at 17.5 °C
        double const shown = density(plato(row["apparent_extract_percent"]), celsius(17.5)).value();
        (city ? cities : averages).add(id, beer.density().value() - shown);
        if (city) {
            // the expansion from 17.5 to 20 °C is that of the beer itself
            double const at_20 = shown * in(beer.density(celsius(20)), beer.density());
            auto const found = tabarie_extract(at_20 * kilogram_per_cubic_metre, beer.strength());
            extracts.add(id, (found - beer.sugar_concentration()).value());
        }
        EXPECT_TRUE(beer.checked_by_analyses()) << id;
    }
    averages.guards({.largest = 2.81});
    cities.guards({.largest = 0.55});
    extracts.guards({.largest = 1.45});
}

// The liquids that stand for all analyses are rows of the tables, rounded up in the third figure.
TEST(SweetenedSpirit, AnalysedLiquidsAreRows) {
    std::vector<plain::analysed_liquid> rows;
    published::table const wines("white_wines_2009.csv");
    for (auto const& row : wines.rows())
        rows.push_back({row["strength_percent_vol"] / 100.0, row["residual_sugar_g_l"]});
    published::table const beers("wahl_henius_beers.csv");
    for (auto const& row : beers.rows()) {
        double const alcohol = row["alcohol_percent_mass"] / 100.0;
        double const real = row["real_extract_percent"] / 100.0;
        auto const beer = sweetened::of(
            parcel::of((1.0 - real) * kilogram, mass_fraction(alcohol / (1.0 - real)), celsius(17.5)),
            real * kilogram);
        rows.push_back({beer.strength().value(), beer.sugar_concentration().value()});
    }
    for (plain::analysed_liquid const& each : plain::analysed_liquids) {
        auto const is_this = [&each](plain::analysed_liquid const& row) {
            return std::abs(row.volume_fraction - each.volume_fraction) < 1.5e-4 &&
                   std::abs(row.g_per_litre - each.g_per_litre) < 0.1;
        };
        EXPECT_TRUE(std::any_of(rows.begin(), rows.end(), is_this)) << each.volume_fraction;
    }
}

// Middle of the rule's range, 90 degrees of proof.
TEST(SweetenedSpirit, UsObscuration) {
    published::table const t("us_obscuration.csv");
    published::deviations d("us_obscuration", "US proof",
                            precision::unknown("one figure for 80 to 100 degrees of proof"));
    proof_hydrometer const meter;
    for (auto const& row : t.rows()) {
        double const solids = 10.0 * row["solids_g_100ml"];
        auto const spirit =
            sweetened::of(litre, by_volume(45.0), solids * gram_per_litre, at_60_fahrenheit::temperature());
        double const proof = to<us_proof>(by_volume(45.0)).degrees();
        d.add(row.text("id"), proof - reading(meter, spirit).degrees() - row["obscuration_proof"]);
    }
    d.guards({.largest = 0.17});  // 8 % of two degrees
}

/// Least squares of a figure on two others.
struct regression {
    double count = 0.0, mean = 0.0, scatter = 0.0, slope[2] = {}, doubt[2] = {};

    explicit regression(std::vector<std::array<double, 3>> const& points) {
        double x[2] = {};
        for (auto const& p : points) {
            ++count;
            x[0] += p[0];
            x[1] += p[1];
            mean += p[2];
        }
        mean /= count;
        double squares[2][2] = {}, with[2] = {}, all = 0.0;
        for (auto const& p : points) {
            double const d[2] = {p[0] - x[0] / count, p[1] - x[1] / count}, y = p[2] - mean;
            all += y * y;
            for (int i = 0; i < 2; ++i) {
                with[i] += d[i] * y;
                for (int k = 0; k < 2; ++k) squares[i][k] += d[i] * d[k];
            }
        }
        double const determinant = squares[0][0] * squares[1][1] - squares[0][1] * squares[1][0];
        for (int i = 0; i < 2; ++i)
            slope[i] = (with[i] * squares[1 - i][1 - i] - with[1 - i] * squares[0][1]) / determinant;
        scatter = std::sqrt((all - slope[0] * with[0] - slope[1] * with[1]) / (count - 3.0));
        for (int i = 0; i < 2; ++i) doubt[i] = scatter * std::sqrt(squares[1 - i][1 - i] / determinant);
    }
};

// What the wines hold beside ethanol, water and sugar was not measured: 19 g/L of acids, glycerol and salts
// raise the density by 6 to 8 kg/m3. If volumes are additive, this rest depends neither on the strength nor
// on the sugar.
TEST(SweetenedSpirit, WhiteWines) {
    published::table const t("white_wines_2009.csv");
    std::vector<std::array<double, 3>> rests;
    for (auto const& row : t.rows()) {
        double const strength = row["strength_percent_vol"], sugar = row["residual_sugar_g_l"];
        auto const wine = sweetened::of(litre, by_volume(strength), sugar * gram_per_litre, celsius(20),
                                        sweetener::invert_sugar);
        EXPECT_TRUE(wine.checked_by_analyses());
        rests.push_back({strength, sugar, 1000.0 * row["density_g_cm3"] - wine.density().value()});
    }
    ASSERT_EQ(rests.size(), 118U);
    regression const ends(rests);
    rests.resize(80);  // those that follow each other in the source
    regression const run(rests);
    for (regression const& each : {run, ends}) {
        std::printf(
            "%.0f wines: rest %.2f kg/m3, scatter %.2f; %.3f +- %.3f per %% vol, %.4f +- %.4f per g/L\n",
            each.count, each.mean, each.scatter, each.slope[0], each.doubt[0], each.slope[1], each.doubt[1]);
        EXPECT_GT(each.mean, 6.0);
        EXPECT_LT(each.mean, 8.0);
        EXPECT_LT(each.scatter, 0.7);
        EXPECT_NEAR(each.slope[0], 0.0, 2.0 * each.doubt[0]);
    }
    EXPECT_NEAR(run.slope[1], 0.0, 2.0 * run.doubt[1]);
    // With the sweetest wines, chosen for that, the rest falls with the sugar. It may be less glycerol beside
    // it, or 5 % in its volume: the wines cannot tell.
    EXPECT_LT(ends.slope[1], 0.0);
    EXPECT_GT(ends.slope[1], -0.04);
}

}  // namespace
}  // namespace aqueth
