// SPDX-License-Identifier: BSL-1.0
//
// OIML R 22, 1973 (edition 1975), general formula, as printed: the library keeps it in other variables, so
// the printed sum is worked out here term by term from the printed coefficients.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/correlation/oiml_r22.hpp>

#include <cmath>
#include <gtest/gtest.h>
#include <string>
#include <vector>

using aqueth::published::deviations;
using aqueth::published::precision;
using aqueth::published::table;

namespace {

struct term {
    long double value;
    int power_of_p;
    int power_of_t;
};

std::vector<term> printed_formula() {
    std::vector<term> result;
    table const t("oiml_r22_coefficients.csv");
    for (auto const& row : t.rows()) {
        int const k = static_cast<int>(row["k"]);
        long double const value = std::stold(row.text("value"));
        auto const& kind = row.text("kind");
        if (kind == "A") result.push_back({value, k - 1, 0});
        if (kind == "B") result.push_back({value, 0, k});
        if (kind == "C") result.push_back({value, k, static_cast<int>(row["i"])});
    }
    return result;
}

}  // namespace

TEST(OimlR22Formula, AsPrinted) {
    auto const formula = printed_formula();
    EXPECT_EQ(formula.size(), 12U + 6U + 11U + 10U + 9U + 4U + 2U);
    deviations d("oiml_r22_formula", "kg/m3", precision::formula(1e-12));
    for (int i = 0; i <= 100; ++i) {
        for (int t = -20; t <= 40; ++t) {
            double const p = i / 100.0;
            long double expected = 0.0L;
            for (auto const& a : formula) {
                expected += a.value * std::pow(static_cast<long double>(p), a.power_of_p) *
                            std::pow(static_cast<long double>(t - 20), a.power_of_t);
            }
            d.add(std::to_string(i) + " % mass, " + std::to_string(t) + " °C",
                  aqueth::correlation::oiml_r22::density(p, static_cast<double>(t)) -
                      static_cast<double>(expected));
        }
    }
    d.judges();  // the last place of 1000 kg/m3 is 1e-13
}
