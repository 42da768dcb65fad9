// SPDX-License-Identifier: BSL-1.0
//
// Refractive indices against the CRC Handbook, 102nd edition, and methanol against the refractometer of Leach
// and Lythgoe (1905).
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/model/methanol_water.hpp>
#include <aqueth/refraction.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/sweetening.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <map>
#include <string>

namespace aqueth {
namespace {

using published::precision;

double index_of(std::string const& solute, double percent) {
    if (solute == "ethanol") return refractive_index_of(by_mass(percent)).value();
    if (solute == "methanol") return model::methanol_water::index(percent / 100.0);
    auto const kind = solute == "sucrose"   ? sweetener::sucrose
                      : solute == "glucose" ? sweetener::glucose
                                            : sweetener::fructose;
    return refractive_index_of(
               sweetened::of(water((100.0 - percent) * gram, celsius(20)), percent * gram, kind))
        .value();
}

TEST(Refraction, CrcIndices) {
    published::table const t("crc_refractive_index_20c.csv");
    auto const source =
        precision::stated(0.00005, "half a unit of the fourth decimal; typed without its zeros");
    std::map<std::string, double> const last{
        {"ethanol", 98.0}, {"methanol", 98.0}, {"sucrose", 70.0}, {"glucose", 50.0}, {"fructose", 48.0}};
    std::map<std::string, published::deviations> reports;
    std::map<std::string, double> squares;
    for (auto const& [solute, percent] : last)
        reports.try_emplace(solute, "crc_index_of_" + solute, "1", source);
    for (auto const& row : t.rows()) {
        std::string const solute = row.text("id"), cell = row.text("mass_percent") + " % mass";
        double const percent = row["mass_percent"];
        if (percent > last.at(solute)) {
            reports.at(solute).leave_out(
                cell, percent == 100.0 ? "the pure alcohol lies 0.0004 to 0.0006 off the run of the others"
                                       : "beyond the range of the density");
            continue;
        }
        double const miss = index_of(solute, percent) - row["refractive_index"];
        reports.at(solute).add(cell, miss);
        squares[solute] += miss * miss;
    }
    for (auto& [solute, report] : reports) {
        EXPECT_LT(std::sqrt(squares[solute] / report.cells()), 1e-4) << solute;
        report.fitted({.largest = solute == "methanol" ? 0.00027 : solute == "ethanol" ? 0.00012 : 0.00009});
    }
}

TEST(Refraction, CrcMethanolDensity) {
    published::table const t("crc_solution_density_20c.csv");
    published::deviations d("crc_methanol_density", "kg/m3",
                            precision::stated(0.05, "half a unit of the fourth decimal"));
    for (auto const& row : t.rows()) {
        if (row.text("id") != "methanol") continue;
        d.add(row.text("mass_percent") + " % mass",
              model::methanol_water::density(row["mass_percent"] / 100.0) - 1000.0 * row["density_g_cm3"]);
    }
    d.fitted({.largest = 0.21});
}

// They print degrees of a scale, whose value they do not give. It is the same all over the scale: so the
// differences must be in one proportion to those of the library.
TEST(Methanol, LeachAndLythgoe) {
    published::table const t("leach_lythgoe_1905.csv");
    published::deviations d("leach_lythgoe_proportion", "1",
                            precision::stated(0.015, "half a degree of 50.5, and a tenth of 11.2"));
    double const middle = t.where("mass_percent", "50")["difference_scale_degrees"];
    auto const difference = [](double percent) {
        double const w = percent / 100.0;
        return model::refraction::index(w, 0.0, sweetener::sucrose) - model::methanol_water::index(w);
    };
    for (auto const& row : t.rows()) {
        double const percent = row["mass_percent"];
        if (percent == 50.0) continue;
        std::string const cell = row.text("mass_percent") + " % mass";
        if (percent > 98.0) {
            d.leave_out(cell, "beyond the range of the index");
            continue;
        }
        d.add(cell,
              difference(percent) / difference(50.0) / (row["difference_scale_degrees"] / middle) - 1.0);
    }
    d.judges();
}

}  // namespace
}  // namespace aqueth
