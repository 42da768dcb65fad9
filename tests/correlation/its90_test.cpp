// SPDX-License-Identifier: BSL-1.0
#include <aqueth/correlation/its90.hpp>

#include "published/table.hpp"

#include <gtest/gtest.h>

namespace aqueth::correlation::its90 {
namespace {

TEST(Its90, AgreesWithThePublishedDifferences) {
    // Differences t90 - t68 as tabulated in the CRC Handbook (Conversion of temperatures from the 1948 and
    // 1968 scales to ITS-90), printed to 0.001 K; the polynomial is stated good to 1 mK above
    // and 1.5 mK below 0 °C.
    published::table const table("t90_minus_t68.csv");
    for (auto const& row : table.rows()) {
        double const t90 = row["t90_c"];
        EXPECT_NEAR(t90 - t68_from_t90(t90), row["t90_minus_t68_k"], 0.001) << t90;
    }
}

TEST(Its90, ThereAndBackCloses) {
    for (double t = -50.0; t <= 120.0; t += 0.5) EXPECT_NEAR(t90_from_t68(t68_from_t90(t)), t, 5e-14);
}

TEST(Its90, ScalesMeetAtTheIcePoint) { EXPECT_EQ(t68_from_t90(0.0), 0.0); }

}  // namespace
}  // namespace aqueth::correlation::its90
