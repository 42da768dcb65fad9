// SPDX-License-Identifier: BSL-1.0
//
// Worked examples of batch distillation: Perry's simple still; Coulson and Richardson's column of four
// plates. All are graphical solutions, so they are met within what can be read from a diagram.
#include "published/table.hpp"
#include "test_mixtures.hpp"

#include <aqueth/distillation.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <cstddef>
#include <cstdio>
#include <utility>
#include <vector>

namespace aqueth {
namespace {

double amount(parcel const& p) { return detail::amounts(wash::of(p)).volatiles(); }

/// Examples of one book: their figures, and how the library meets them.
class examples {
public:
    explicit examples(char const* file) : table_(file) {}

    double printed(char const* id) const { return table_.where("id", id)["value"]; }
    void expect(char const* id, double computed, double deviation) const {
        auto const row = table_.where("id", id);
        std::printf("%s: book %s, library %.5g\n", row.text("quantity").c_str(), row.text("value").c_str(),
                    computed);
        EXPECT_NEAR(computed, row["value"], deviation) << id;
    }

private:
    published::table table_;
};

/// 18 % mol distilled without a column until 6 % mol is left
template <class M>
void perry(M const& mixture, double of_area, double of_residue, double of_distillate) {
    examples const book("equilibrium_worked_examples.csv");
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
}

// With the equilibrium the handbook takes, its own table of Carey and Lewis with straight lines between the
// rows.
TEST(BatchDistillation, PerrySimpleStillWithItsOwnTable) {
    published::table const t("carey_lewis_1932.csv");
    std::vector<std::pair<double, double>> rows;
    for (auto const& row : t.rows()) rows.emplace_back(row["x_ethanol"], row["y_ethanol"]);
    perry(test::table_mixture(rows), 0.0005, 0.1, 0.002);
}

// With the library's equilibrium, whose vapour is 0.003 to 0.013 richer than that table.
TEST(BatchDistillation, PerrySimpleStillWithTheLibrarysEquilibrium) {
    perry(boiling_curve(standard_atmosphere), 0.01, 0.6, 0.008);
}

/// the column of the examples over its charge
distillation coulson_richardson(examples const& book, reflux const& returned, condition const& end,
                                int points) {
    still s{{1.0 * kilowatt}};
    s.tower = column::of_plates(static_cast<int>(book.printed("plates")), 1.0);
    s.returned = returned;
    run_plan plan;
    plan.ends = {end};
    plan.points = points;
    return distil(parcel::of(1.0 * kilogram, mole_fraction(book.printed("charge_x")), celsius(20)), s, plan);
}

// Example 11.12: the reflux is raised to keep the distillate, until it is at its limit.
TEST(BatchDistillation, CoulsonRichardsonConstantDistillate) {
    examples const book("batch_distillation_examples.csv");
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
    book.expect("reflux_at_start", r.points.front().reflux_ratio, 0.03);
    book.expect("distillate_moles", share, 0.5);
    book.expect("reflux_moles", refluxed, 2.0);
}

// Example 11.13: the same at constant reflux.
TEST(BatchDistillation, CoulsonRichardsonConstantReflux) {
    examples const book("batch_distillation_examples.csv");
    auto const r = coulson_richardson(book, reflux::constant(book.printed("constant_reflux")),
                                      condition::still_strength(mole_fraction(book.printed("final_x"))), 0);
    book.expect("distillate_x_at_start", r.fractions.at(0).begin.distillate.value(), 0.005);
    book.expect("distillate_x_at_end", r.fractions.at(0).end.distillate.value(), 0.005);
}

}  // namespace
}  // namespace aqueth
