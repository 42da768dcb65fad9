// SPDX-License-Identifier: BSL-1.0
//
// Sugar solutions and strengths from gravities against tables: CRC Handbook, 102nd edition; the cubic fit of
// NBS Circular C440; Balling's factors and his own examples; brews of today; Excise Notice 226.
#include "published/deviations.hpp"
#include "published/nbs_1942_brix.hpp"
#include "published/table.hpp"

#include <aqueth/attenuation.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/density.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/weighing.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <string>

namespace aqueth {
namespace {

using published::precision;

TEST(SugarSolution, CrcDensities) {
    published::table const t("crc_sucrose_20c.csv");
    auto const source = precision::stated(0.05, "half a unit of the fourth decimal; typed without its zeros");
    published::deviations weak("crc_sucrose_to_40_percent", "kg/m3", source);
    published::deviations strong("crc_sucrose_above_40_percent", "kg/m3", source);
    for (auto const& row : t.rows()) {
        double const percent = row["mass_percent"];
        std::string const cell = row.text("mass_percent") + " % mass";
        published::deviations& report = percent <= 40.0 ? weak : strong;
        if (percent > 70.0) {
            report.leave_out(cell, "beyond the range in which the library uses the equation");
        } else {
            report.add(cell, density(plato(percent), celsius(20)).value() - 1000.0 * row["density_g_cm3"]);
        }
    }
    EXPECT_EQ(weak.cells(), 31);
    EXPECT_EQ(strong.cells(), 7);
    weak.guards({.largest = 0.096, .mean = 0.0325, .meeting = 24});
    strong.guards({.largest = 0.28, .mean = 0.14});
}

// The equation of ICUMSA (1990) with the coefficients as typed in tables/, term by term. No density of sugar
// solutions at other temperatures than 20 °C could be read that is good enough to check its change with
// temperature, so the coefficients are what holds it from 0 to 40 °C.
TEST(SugarSolution, EquationAsPrinted) {
    published::table const t("sucrose_density_coefficients.csv");
    EXPECT_EQ(t.rows().size(), 20U);
    published::deviations d("icumsa_1990_equation", "kg/m3", precision::formula(1e-12));
    for (int percent = 0; percent <= 70; percent += 2) {
        for (int degrees = 0; degrees <= 40; degrees += 2) {
            double const w = percent / 100.0, tau = (degrees - 20.0) / 100.0;
            double sum = 0.0;
            for (auto const& row : t.rows())
                sum += row["value"] * std::pow(w, row["power_of_w"]) * std::pow(tau, row["power_of_tau"]);
            d.add(std::to_string(percent) + " % mass, " + std::to_string(degrees) + " °C",
                  correlation::sucrose_density::excess(w, static_cast<double>(degrees)).value - sum);
        }
    }
    d.judges();
}

// The classical table is for weighing in air; so is the cubic that was fitted to it.
TEST(SugarSolution, NbsBrix) {
    namespace nbs = published::nbs_1942_brix;
    published::deviations report(
        "nbs_c440_cubic", "deg Brix",
        precision::stated(0.0009, "root mean square of the cubic against the table it was fitted to"));
    auto const water = density_in_air(density(mass_fraction(0.0), celsius(20)));
    for (int p = 1; p <= 40; ++p) {
        auto const gravity = in(density_in_air(density(plato(p), celsius(20))), water);
        report.add(std::to_string(p) + " degrees Brix", p - nbs::brix(gravity));
    }
    report.guards({.largest = 0.0225, .mean = 0.0114});
    EXPECT_NEAR(nbs::brix(1.0), -0.0048, 0.0001);  // as its citation says
}

TEST(Balling, FactorsAreThoseOfTheTable) {
    published::table const t("balling_alcohol_factors.csv");
    for (auto const& row : t.rows()) {
        double const oe = row["original_extract_plato"];
        EXPECT_DOUBLE_EQ(correlation::balling::factor(oe), row["factor"]);
        auto const a = alcohol_by_balling_factors(plato(oe), apparent_extract(0.25 * oe));
        EXPECT_NEAR(a.percent(), row["factor"] * 0.75 * oe, 1e-12);
    }
    EXPECT_EQ(t.rows().size(), correlation::balling::factors.size());
}

// What Balling himself makes of the beers in his book. The factors come from a compilation of another hand,
// and his quotients, which that does not print, follow from it and the balance.
TEST(Balling, HisOwnExamples) {
    namespace b = correlation::balling;
    published::table const t("balling_beers.csv");
    published::deviations weights("usual_weights_on_ballings_beers", "deg Plato", precision::printed());
    published::deviations alcohols("ballings_alcohol", "% mass",
                                   precision::each_cell("half a unit in the last digit, and in his factor"));
    published::deviations quotients("ballings_quotients", "1", precision::printed());
    for (auto const& row : t.rows()) {
        double const oe = row["original_extract_percent"], re = row["real_extract_percent"];
        if (!row.text("alcohol_percent_mass").empty()) {
            // his factor has four decimals
            alcohols.add(row.text("id"),
                         alcohol_by_balling(plato(oe), plato(re)).percent() - row["alcohol_percent_mass"],
                         0.0005 + 0.00005 * (oe - re));
        }
        if (row.text("quotient").empty()) continue;
        double const whole = std::round(oe), ae = row["apparent_extract_percent"];
        quotients.add(row.text("id"), b::alcohol(whole, 0.0) / whole / b::factor(whole),
                      row.printed("quotient"));
        // factor and balance agree on one beer as far as the third decimal of the quotient goes
        EXPECT_NEAR(alcohol_by_balling_factors(plato(oe), apparent_extract(ae)).percent(),
                    alcohol_by_balling(plato(oe), plato(re)).percent(), 0.003);
        weights.add(row.text("id"), real_extract(plato(oe), apparent_extract(ae)).degrees(),
                    row.printed("real_extract_percent"));
    }
    EXPECT_EQ(alcohols.cells(), 2);
    EXPECT_EQ(quotients.cells(), 4);
    alcohols.guards({.largest = 0.0017, .meeting = 1});
    quotients.judges();
    weights.guards({.largest = 0.065});
    EXPECT_LE(weights.bias(), -0.04);  // they are not his
}

// Measured alcohol, means of 532 brews: how good are the ways from two gravities to the strength?
TEST(WashStrength, BrewsOfToday) {
    published::table const t("cutaia_2009_brews.csv");
    published::deviations balance("strength_by_the_balance", "relative", precision::printed());
    published::deviations usual("strength_by_usual_weights", "relative", precision::printed());
    published::deviations factors("strength_by_ballings_factors", "relative", precision::printed());
    published::deviations tabarie("real_extract_by_tabaries_rule", "deg Plato", precision::printed());
    published::deviations weights("real_extract_by_usual_weights", "deg Plato", precision::printed());
    for (auto const& row : t.rows()) {
        std::string const set = row.text("id");
        extract const oe(row["original_extract_plato"]);
        apparent_extract const ae(row["apparent_extract_plato"]);
        auto const alcohol = row.printed("alcohol_percent_mass"), printed = row.printed("real_extract_plato");
        wash const w =
            fermented_wash(1.0 * litre, specific_gravity_of(oe), specific_gravity_of(ae), celsius(20));
        balance.add(set, 100.0 * in(w.liquid().ethanol(), w.mass()), alcohol);
        usual.add(set, alcohol_by_balling(oe, real_extract(oe, ae)).percent(), alcohol);
        factors.add(set, alcohol_by_balling_factors(oe, ae).percent(), alcohol);
        weights.add(set, real_extract(oe, ae).degrees(), printed);
        // what must be dissolved beside the measured alcohol for the density of the apparent extract
        double const rho = specific_gravity_of(ae).value() * density(mass_fraction(0.0), celsius(20)).value();
        double const real = numeric::bracketed_root(
            [&](double s) { return wash::density_of(alcohol.value / 100.0, s, 20.0) - rho; }, 0.0, 0.2,
            1e-12);
        tabarie.add(set, 100.0 * real, printed);
    }
    balance.guards({.largest = 0.025});
    usual.guards({.largest = 0.03});
    factors.guards({.largest = 0.02});
    tabarie.guards({.largest = 0.04});
    weights.guards({.largest = 0.2});
}

TEST(ExciseNotice226, FactorsAndStrengthsOfTheTable) {
    published::table const t("excise_notice_226_factors.csv");
    published::deviations d("excise_notice_226_strengths", "% vol", precision::printed(1.0, "some are cut"));
    for (auto const& row : t.rows()) {
        double const fall = row["greatest_fall_degrees"];
        auto const q = alcohol_by_gravity_fall(specific_gravity(1.0 + fall / 1000.0), specific_gravity(1.0));
        EXPECT_NEAR(q.percent(), fall * row["factor"], 1e-9);
        // the strengths printed beside it, cut or rounded to 0.1; some may be cut
        d.add(row.text("greatest_fall_degrees") + " degrees", q.percent(),
              row.printed("greatest_strength_percent_vol"));
    }
    d.judges();
}

// A row holds up to its greatest fall, which is printed to 0.1 degrees.
TEST(ExciseNotice226, RowsEndWhereTheTableSays) {
    namespace notice = correlation::excise_notice_226;
    published::table const t("excise_notice_226_factors.csv");
    ASSERT_EQ(t.rows().size(), notice::rows.size());
    for (std::size_t k = 0; k < notice::rows.size(); ++k) {
        double const fall = t.rows()[k]["greatest_fall_degrees"], factor = t.rows()[k]["factor"];
        EXPECT_EQ(notice::rows[k].most, fall);
        EXPECT_NEAR(notice::percent_vol(fall + 0.045), (fall + 0.045) * factor, 1e-12) << fall;
        if (k + 1 < notice::rows.size()) {
            EXPECT_NEAR(notice::percent_vol(fall + 0.055), (fall + 0.055) * t.rows()[k + 1]["factor"], 1e-12)
                << fall;
        } else {
            auto const drop = [](double degrees) {
                return alcohol_by_gravity_fall(specific_gravity(1.0 + degrees / 1000.0),
                                               specific_gravity(1.0));
            };
            EXPECT_NO_THROW(static_cast<void>(drop(fall + 0.045)));
            EXPECT_THROW(static_cast<void>(drop(fall + 0.055)), refusal);
        }
    }
}

}  // namespace
}  // namespace aqueth
