// SPDX-License-Identifier: BSL-1.0
//
// Worked examples of two textbooks: Perry's Chemical Engineers' Handbook, section 13, simple batch
// distillation, and N. de Nevers, Physical and Chemical Equilibrium for Chemical Engineers, examples 8.9 to
// 8.13. Each is done with the book's own equations or table and with the library, whose deviation is stated.
//
// Printed answers were read for Perry's example and for 8.13: there the book's method must give the book's
// figures. Those of 8.9 to 8.12 were not read; their answers were computed from the book's equations.
// SolversOnTheBooksEquations only shows that two computations with them agree, and the distance of the
// library from them. The column status of the table tells the two kinds apart.
#include "published/deviations.hpp"
#include "published/table.hpp"
#include "published/textbook_van_laar.hpp"

#include <aqueth/model/vapour_liquid.hpp>

#include <cmath>
#include <cstddef>
#include <cstdio>
#include <gtest/gtest.h>
#include <optional>
#include <string>
#include <utility>

namespace vle = aqueth::model::vapour_liquid;
namespace book = aqueth::published::textbook;
using aqueth::published::deviations;
using aqueth::published::precision;
using aqueth::published::table;

namespace {

constexpr double atm = 101325.0;
constexpr double zero = 273.15;

// The rows of one status, read or computed, and how a report calls their figures.
class Examples : public testing::Test {
protected:
    Examples(char const* status, char const* label, precision source, char const* unit)
        : status_(status), label_(label), source_(std::move(source)), unit_(unit) {}

    // The book's own means within the digits of the table, the library within what is stated here.
    void expect(char const* id, double by_the_book, double by_the_library, double deviation) {
        auto const row = table_.where("id", id);
        auto const tabulated = row.printed("value");
        ASSERT_EQ(row.text("status"), status_) << id;
        std::printf("%s: %s %s %s, with the book's means %.5g, library %.5g (%s)\n",
                    row.text("quantity").c_str(), label_, row.text("value").c_str(), row.text("unit").c_str(),
                    by_the_book, by_the_library, row.text("publication").c_str());
        EXPECT_NEAR(by_the_book, tabulated.value, 0.51 * std::pow(10.0, -tabulated.decimals)) << id;
        EXPECT_NEAR(by_the_library, tabulated.value, deviation) << id;
        if (!library_)
            library_.emplace(testing::UnitTest::GetInstance()->current_test_info()->name(), unit_, source_);
        library_->add(id, by_the_library, tabulated);
    }
    // The figures of a test, in one row.
    void guards(double largest) const { library_->guards({.largest = largest}); }

private:
    table table_{"equilibrium_worked_examples.csv"};
    std::string status_;
    char const* label_;
    precision source_;
    char const* unit_;
    std::optional<deviations> library_;
};

class EquilibriumWorkedExamples : public Examples {
protected:
    EquilibriumWorkedExamples() : Examples("read", "book", precision::printed(), "digits") {}
};

class SolversOnTheBooksEquations : public Examples {
protected:
    SolversOnTheBooksEquations()
        : Examples("computed", "computed from the book's equations",
                   precision::unknown("the book's own answers were not seen"), "relative") {}
};

// Integral of dx/(y - x) by Simpson's rule, with y as a function of x.
template <class F>
double rayleigh(F const& y) {
    double sum = 0.0;
    int const n = 1200;
    for (int i = 0; i <= n; ++i) {
        double const x = 0.06 + 0.12 * i / n;
        sum += (i == 0 || i == n ? 1.0 : i % 2 == 1 ? 4.0 : 2.0) / (y(x) - x);
    }
    return sum * 0.12 / n / 3.0;
}

// y from the table of Carey and Lewis, by straight lines, as one reads it.
double carey_lewis(double x) {
    static table const t("carey_lewis_1932.csv");
    auto const rows = t.rows();
    std::size_t k = 1;
    while (k + 1 < rows.size() && rows[k]["x_ethanol"] < x) ++k;
    double const x0 = rows[k - 1]["x_ethanol"], x1 = rows[k]["x_ethanol"];
    double const y0 = rows[k - 1]["y_ethanol"], y1 = rows[k]["y_ethanol"];
    return y0 + (x - x0) / (x1 - x0) * (y1 - y0);
}

struct batch {
    double integral, still, distillate_ethanol, distillate_water;

    explicit batch(double i)
        : integral(i),
          still(100.0 * std::exp(-i)),
          distillate_ethanol(18.0 - 0.06 * still),
          distillate_water(82.0 - 0.94 * still) {}
    double mean() const { return distillate_ethanol / (distillate_ethanol + distillate_water); }
};

}  // namespace

// 100 mol of 18 % mol, distilled at 101.3 kPa without a column until 6 % mol is left. The book's means are
// its table and its roundings: of the integral to 0.358, of e^0.358 to 1.43, of the residue to 70.0.
//
// The library's vapour is richer, so less must be boiled off for the same change: from x = 0.06 to 0.18 by
// 0.006 on average. At the table's three rows in there it is 0.003 to 0.007; at 0.06 it is 0.027, because a
// straight line from the row of 0.019 to that of 0.0721 runs far below a curve so bent.
TEST_F(EquilibriumWorkedExamples, PerrySimpleBatch) {
    auto const library = [](double x) { return vle::bubble_at_pressure(x, 101.3e3).y; };
    batch const by_table(rayleigh(carey_lewis));
    batch const by_library(rayleigh(library));
    auto const rounded = [](double v, double unit) { return std::round(v / unit) * unit; };
    batch const as_printed(std::log(rounded(std::exp(rounded(by_table.integral, 0.001)), 0.01)));
    expect("perry_integral", by_table.integral, by_library.integral, 0.0067);
    EXPECT_NEAR(by_table.still, 70.0, 0.1);  // with the digits kept
    expect("perry_still", std::round(as_printed.still), by_library.still, 0.38);
    expect("perry_ethanol_left", 0.06 * as_printed.still, 0.06 * by_library.still, 0.023);
    expect("perry_distillate_ethanol", as_printed.distillate_ethanol, by_library.distillate_ethanol, 0.023);
    expect("perry_distillate_water", 82.0 - 0.94 * std::round(as_printed.still), by_library.distillate_water,
           0.35);
    expect("perry_mean", as_printed.mean(), by_library.mean(), 0.0051);
    guards(6.7);

    double sum = 0.0;
    for (double x = 0.0605; x < 0.18; x += 0.001) sum += library(x) - carey_lewis(x);
    EXPECT_NEAR(sum / 120.0, 0.006, 0.0005);
    EXPECT_NEAR(library(0.06) - carey_lewis(0.06), 0.027, 0.001);
    for (double const x : {0.0721, 0.0966, 0.1238}) {
        EXPECT_GT(library(x) - carey_lewis(x), 0.003);
        EXPECT_LT(library(x) - carey_lewis(x), 0.0075);
    }
}

// Bubble point at 85.3 °C.
TEST_F(SolversOnTheBooksEquations, DeNevers_8_9) {
    auto const b = book::over(0.1238, 85.3);
    auto const e = vle::bubble_at_temperature(0.1238, 85.3 + zero);
    expect("nevers_8_9_p", b.total(), e.pressure / atm, 0.0132);
    expect("nevers_8_9_y", b.vapour(), e.y, 0.0002);
    guards(0.0136);
}

// Bubble point at 1 atm.
TEST_F(SolversOnTheBooksEquations, DeNevers_8_10) {
    double const t = book::boiling_celsius(0.2608);
    auto const e = vle::bubble_at_pressure(0.2608, atm);
    expect("nevers_8_10_t", t, e.temperature - zero, 0.03);
    expect("nevers_8_10_y", book::over(0.2608, t).vapour(), e.y, 0.0084);
    guards(0.0146);
}

// Dew point at 80.7 °C: the liquid is where the curve is flat, so a small difference in y moves x a lot.
TEST_F(SolversOnTheBooksEquations, DeNevers_8_11) {
    double const x = book::root([](double v) { return book::over(v, 80.7).vapour() - 0.6122; }, 0.0, 1.0);
    auto const e = vle::dew_at_temperature(0.6122, 80.7 + zero);
    expect("nevers_8_11_p", book::over(x, 80.7).total(), e.pressure / atm, 0.0082);
    expect("nevers_8_11_x", x, e.x, 0.021);
    guards(0.056);
}

// Dew point at 1 atm.
TEST_F(SolversOnTheBooksEquations, DeNevers_8_12) {
    double const x = book::root(
        [](double v) { return book::over(v, book::boiling_celsius(v)).vapour() - 0.17; }, 0.0, 0.2);
    auto const e = vle::dew_at_pressure(0.17, atm);
    expect("nevers_8_12_t", book::boiling_celsius(x), e.temperature - zero, 0.14);
    expect("nevers_8_12_x", x, e.x, 0.0016);
    guards(0.082);
}

// Isothermal flash at 91.8 °C and 1 atm. At x = 0.04 the book's equations boil 0.6 K higher than the library,
// towards the old boiling points, and a flash is where a small difference in temperature tells.
TEST_F(EquilibriumWorkedExamples, DeNevers_8_13) {
    double const x = book::root([](double v) { return book::over(v, 91.8).total() - 1.0; }, 0.0, 0.3);
    double const y = book::over(x, 91.8).vapour();
    double const lx = book::root(
        [](double v) { return vle::bubble_at_temperature(v, 91.8 + zero).pressure - atm; }, 0.0, 0.3);
    double const ly = vle::bubble_at_temperature(lx, 91.8 + zero).y;
    expect("nevers_8_13_x", x, lx, 0.0045);
    expect("nevers_8_13_y", y, ly, 0.0065);
    expect("nevers_8_13_v", (0.126 - x) / (y - x), (0.126 - lx) / (ly - lx), 0.021);
    guards(210);
}
