// SPDX-License-Identifier: BSL-1.0
//
// Losses from casks: the limits of law are those of the table.
#include "published/deviations.hpp"
#include "published/table.hpp"

#include <aqueth/cask.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/correlation/cask_loss_limits.hpp>

#include <gtest/gtest.h>
#include <string>

using namespace aqueth;
using published::deviations;
using published::precision;
using published::table;

TEST(Casks, LimitsAreThoseOfTheLaw) {
    table const t("cask_loss_limits.csv");
    deviations d("cask_loss_limits", "%", precision::printed());
    for (auto const& limit : correlation::cask_loss_limits::limits) {
        auto const row = t.where("id", std::string(limit.goods));
        d.add(std::string(limit.goods) + ", wood", 100.0 * limit.in_wood, row.printed("in_wood_percent"));
        d.add(std::string(limit.goods) + ", tanks", 100.0 * limit.in_tanks, row.printed("in_tanks_percent"));
    }
    EXPECT_EQ(d.cells(), 10);
    d.fitted({.largest = 1e-12, .meeting = 10});
}
