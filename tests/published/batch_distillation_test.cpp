// SPDX-License-Identifier: BSL-1.0
//
// Worked examples of batch distillation: Perry's simple still; Coulson and Richardson's column of four
// plates. All are graphical solutions, so they are met within what can be read from a diagram. And figures of
// simple distillation in a table and a handbook of the 19th and early 20th century, with which the library
// does not agree.
#include "published/deviations.hpp"
#include "published/table.hpp"
#include "test_mixtures.hpp"

#include <aqueth/equilibrium.hpp>
#include <aqueth/still/learning.hpp>
#include <aqueth/still/run.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <cstdio>
#include <span>
#include <string>
#include <utility>
#include <vector>

namespace aqueth {
namespace {

double amount(parcel const& p) { return detail::amounts(wash::of(p)).volatiles(); }

/// Examples of one book: their figures, and how the library meets them.
class examples {
public:
    examples(char const* file, char const* name)
        : table_(file), deviations_(name, "digits", published::precision::printed()) {}

    double printed(char const* id) const { return table_.where("id", id)["value"]; }
    void expect(char const* id, double computed, double deviation) {
        auto const row = table_.where("id", id);
        std::printf("%s: book %s, library %.5g\n", row.text("quantity").c_str(), row.text("value").c_str(),
                    computed);
        EXPECT_NEAR(computed, row["value"], deviation) << id;
        deviations_.add(id, computed, row.printed("value"));
    }
    published::deviations const& deviations() const { return deviations_; }

private:
    published::table table_;
    published::deviations deviations_;
};

/// straight lines between the rows of a table, as one reads it
test::table_mixture lines(char const* file, char const* liquid, char const* vapour, double scale) {
    published::table const t(file);
    std::vector<std::pair<double, double>> rows;
    for (auto const& row : t.rows()) rows.emplace_back(row[liquid] * scale, row[vapour] * scale);
    return test::table_mixture(rows);
}
test::table_mixture carey_lewis() { return lines("carey_lewis_1932.csv", "x_ethanol", "y_ethanol", 1.0); }

/// 18 % mol distilled without a column until 6 % mol is left
template <class M>
published::deviations perry(char const* name, M const& mixture, double of_area, double of_residue,
                            double of_distillate) {
    examples book("equilibrium_worked_examples.csv", name);
    run_plan plan;
    plan.ends = {condition::still_strength(by_moles(6))};
    auto const charge = wash::of(parcel::of(1.0 * kilogram, by_moles(18), celsius(20)));
    auto const r = distil(charge, still{{1.0 * kilowatt}}, plan, mixture);
    auto const& product = r.fractions.at(0).product;
    double const left = amount(r.residue.liquid());
    double const all = left + amount(product);
    book.expect("perry_integral", std::log(all / left), of_area);
    book.expect("perry_still", 100.0 * left / all, of_residue);
    book.expect("perry_mean", to<mole_fraction>(product.composition()).value(), of_distillate);
    return book.deviations();
}

// With the equilibrium the handbook takes, its own table of Carey and Lewis with straight lines between the
// rows. The handbook rounds on its way: e^0.358 to 1.43, and so 69.9 to 70.0.
TEST(BatchDistillation, PerrySimpleStillWithItsOwnTable) {
    perry("perry_still_with_its_own_table", carey_lewis(), 0.0005, 0.1, 0.0012).guards({.largest = 1.12});
}

// With the library's equilibrium, whose vapour is richer by as much as PerrySimpleBatch says in
// equilibrium_worked_examples_test.cpp.
TEST(BatchDistillation, PerrySimpleStillWithTheLibrarysEquilibrium) {
    perry("perry_still", boiling_curve(standard_atmosphere), 0.0067, 0.38, 0.0051).guards({.largest = 6.7});
}

/// the column of the examples over its charge
distillation coulson_richardson(examples const& book, reflux const& returned, condition const& end,
                                int points) {
    still s{{1.0 * kilowatt}};
    s.tower = column::of_plates(static_cast<int>(book.printed("plates")), 1.0);
    s.head = head::total_condenser(returned);
    run_plan plan;
    plan.ends = {end};
    plan.points = points;
    return distil(parcel::of(1.0 * kilogram, mole_fraction(book.printed("charge_x")), celsius(20)), s, plan);
}

// Example 11.12: the reflux is raised to keep the distillate, until it is at its limit.
TEST(BatchDistillation, CoulsonRichardsonConstantDistillate) {
    examples book("batch_distillation_examples.csv", "coulson_richardson_11_12");
    mole_fraction const kept(book.printed("kept_x"));
    auto const r =
        coulson_richardson(book, reflux::constant_strength(kept, book.printed("greatest_reflux")),
                           condition::distillate_strength(mole_fraction(kept.value() - 1e-7)), 2001);
    double const product = amount(r.fractions.at(0).product);
    double const share = 100.0 * product / (product + amount(r.residue.liquid()));
    double refluxed = 0.0;  // trapezoids over the moles distilled
    for (std::size_t i = 1; i < r.points.size(); ++i)
        refluxed += 0.5 * (r.points[i].reflux_ratio + r.points[i - 1].reflux_ratio);
    refluxed *= share / static_cast<double>(r.points.size() - 1);
    book.expect("reflux_at_start", r.points.front().reflux_ratio, 0.021);
    book.expect("distillate_moles", share, 0.27);
    book.expect("reflux_moles", refluxed, 0.87);
    book.deviations().guards({.largest = 8.7});
}

// Example 11.13: the same at constant reflux.
TEST(BatchDistillation, CoulsonRichardsonConstantReflux) {
    examples book("batch_distillation_examples.csv", "coulson_richardson_11_13");
    auto const r = coulson_richardson(book, reflux::constant(book.printed("constant_reflux")),
                                      condition::still_strength(mole_fraction(book.printed("final_x"))), 0);
    book.expect("distillate_x_at_start", r.fractions.at(0).begin.distillate.value(), 0.0035);
    book.expect("distillate_x_at_end", r.fractions.at(0).end.distillate.value(), 0.0035);
    book.deviations().judges({.largest = 3.5});
}

// The same example the other way round: its two distillates, rounded to 0.01, as the log of a run. The four
// plates are found within the interval of 95 %. The example does not say how much was collected; its ethanol
// balance does, with the mean of the two distillates.
TEST(BatchDistillation, CoulsonRichardsonPlatesAreLearned) {
    examples book("batch_distillation_examples.csv", "coulson_richardson_learned");
    double const charge = book.printed("charge_x"), left = book.printed("final_x");
    double const first = book.printed("distillate_x_at_start"), last = book.printed("distillate_x_at_end");
    double const mean = 0.5 * (first + last), moles = (charge - left) / (mean - left);
    auto const parcel_of = [](double amount, double x) {
        return detail::parcel_of_moles(amount, amount * x);
    };
    units::volume const collected = parcel_of(moles, mean).volume(celsius(20));
    auto const strength = [](double x) { return to<volume_fraction>(mole_fraction(x)); };
    run_log const log{
        wash::of(parcel_of(1.0, charge)),
        {log_row{{}, 0.001 * collected, strength(first)}, log_row{{}, collected, strength(last)}}};
    still known{{1.0 * kilowatt}};
    known.head = head::total_condenser(reflux::constant(book.printed("constant_reflux")));
    std::vector<still_unknown> const unknowns{{still_figure::stages}};
    log_uncertainties u;
    u.strength = (strength(last + 0.005).percent() - strength(last).percent()) / std::sqrt(3.0);
    u.volume = 0.01 * collected;
    auto const r =
        learn_still(known, std::span<run_log const>(&log, 1), std::span<still_unknown const>(unknowns), u,
                    boiling_curve(standard_atmosphere));
    double const plates = book.printed("plates");
    std::printf("plates: book %g, learned %.2f, standard uncertainty %.2f\n", plates, r.figures[0].value,
                r.figures[0].uncertainty);
    EXPECT_LE(r.figures[0].lowest, plates);
    EXPECT_GE(r.figures[0].highest, plates);
    EXPECT_LT(r.figures[0].uncertainty, 0.3);
    EXPECT_TRUE(r.consistent);
}

// Vapour over a boiling spirit as the 19th century had it. The library follows the measurements since 1932,
// and the table does not.
TEST(SimpleDistillation, GroeningsTable) {
    published::table const t("groening_vapour_strengths.csv");
    published::deviations strengths("groening_distillates", "% vol", published::precision::printed());
    published::deviations temperatures("groening_temperatures_of_vapour", "K",
                                       published::precision::stated(0.05 / 1.8, "half a digit of 0.1 °F"));
    for (auto const& row : t.rows()) {
        auto const e = bubble_point(by_volume(row["liquid_percent_vol"]), standard_atmosphere);
        std::string const cell = "from " + row.text("liquid_percent_vol") + " % vol";
        strengths.add(cell, to<volume_fraction>(e.vapour).percent(), row.printed("distillate_percent_vol"));
        temperatures.add(cell, e.temperature.celsius() - fahrenheit(row["vapour_f"]).celsius());
    }
    strengths.guards({.largest = 7.9});
    temperatures.guards({.largest = 1.8});
    EXPECT_EQ(strengths.cells(), 17);
    EXPECT_NEAR(strengths.bias(), -2.0, 0.1);
}

// Repeated simple distillation as F. B. Wright tells it, A Practical Handbook on the Distillation of Alcohol
// from Farm Products, 1907: what comes first from 5 % vol has 42, from that 82, from that over 90 % vol.
//
// The library misses the first two by more than 2 % vol, and the third claim is not met. His figures are
// those of Groening's table: 42 from 5, 82 from 40, over 90 from 80. Measured vapours (Carey and Lewis)
// support the library: 0.2 % vol below it and less from 42 and 82, and 3 below it from 5, where a straight
// line from pure water runs below the curve.
TEST(SimpleDistillation, RepeatedAsWrightTellsIt) {
    auto const groening =
        lines("groening_vapour_strengths.csv", "liquid_percent_vol", "distillate_percent_vol", 0.01);
    struct {
        double charge, told, missed_by, above_measured;
        char const* words;
    } constexpr steps[] = {{5, 42, 2.7, 3.3, "42"}, {42, 82, 2.3, 0.2, "82"}, {82, 90, 1.2, 0.05, "over 90"}};
    run_plan plan;
    plan.ends = {condition::collected(20.0 * millilitre)};
    for (auto const& step : steps) {
        auto const r =
            distil(parcel::of(10.0 * litre, by_volume(step.charge), celsius(20)), {{1.0 * kilowatt}}, plan);
        double const first = r.fractions.at(0).product.strength().percent();
        double const x = to<mole_fraction>(by_volume(step.charge)).value();
        double const measured = to<volume_fraction>(mole_fraction(carey_lewis().vapour(x))).percent();
        double const tabulated = 100.0 * groening.vapour(0.01 * step.charge);
        std::printf("first from %g %% vol: Wright %s %% vol, library %.2f; by the table of Groening %.2f, of "
                    "Carey and Lewis %.2f\n",
                    step.charge, step.words, first, tabulated, measured);
        EXPECT_LT(first, step.told);
        EXPECT_GT(first, step.told - step.missed_by);
        EXPECT_GT(first, measured);
        EXPECT_LT(first, measured + step.above_measured);
        EXPECT_NEAR(tabulated, step.told, 0.75);
    }
}

}  // namespace
}  // namespace aqueth
