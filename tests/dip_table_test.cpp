// SPDX-License-Identifier: BSL-1.0
#include <aqueth/dip_table.hpp>

#include "expect_refusal.hpp"

#include <gtest/gtest.h>

#include <limits>
#include <string>

namespace aqueth {
namespace {

using test::expect_refusal;

units::length mm(double value) { return units::length::from_value(1e-3 * value); }

dip_table example() { return dip_table::read("depth_mm,volume_l\n0,2.5\n400,120.0\n500,150.4\n"); }

TEST(DipTable, IsLinearBetweenRows) {
    EXPECT_NEAR(in(example().volume(mm(0)), litre), 2.5, 1e-12);
    EXPECT_NEAR(in(example().volume(mm(200)), litre), 61.25, 1e-12);
    EXPECT_NEAR(in(example().volume(mm(400)), litre), 120.0, 1e-12);
    EXPECT_NEAR(in(example().volume(mm(432)), litre), 120.0 + 0.32 * 30.4, 1e-12);
    EXPECT_NEAR(in(example().volume(mm(500)), litre), 150.4, 1e-12);
    EXPECT_NEAR(in(example().volume_of_a_millimetre(mm(432)), litre), 0.304, 1e-12);
}

TEST(DipTable, NeverGoesBeyond) {
    for (double const depth :
         {-1.0, 500.001, std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()})
        expect_refusal([&] { static_cast<void>(example().volume(mm(depth))); }, "depth of the liquid");
}

TEST(DipTable, ReadsOtherUnitsAndOrders) {
    auto const table = dip_table::read("volume_gal;note;depth_in\n0;empty;0\n10,5;;12\n");
    EXPECT_NEAR(in(table.volume(mm(152.4)), us_gallon), 5.25, 1e-12);
    auto const large = dip_table::read("depth_m,volume_hl\n0,0\n2,50\n");
    EXPECT_NEAR(in(large.volume(mm(1000)), litre), 2500.0, 1e-9);
}

TEST(DipTable, RefusesWhatIsNoDipTable) {
    auto const complaint = [](char const* text) -> std::string {
        try {
            static_cast<void>(dip_table::read(text));
        } catch (text_error const& error) {
            return error.what();
        }
        return "";
    };
    EXPECT_NE(complaint("depth_mm,volume_l\n400,120\n").find("at least two rows"), std::string::npos);
    EXPECT_NE(complaint("depth_mm,volume_l\n400,120\n300,130\n").find("line 3"), std::string::npos);
    EXPECT_NE(complaint("depth_mm,volume_l\n400,120\n400,130\n").find("above the one before"),
              std::string::npos);
    EXPECT_NE(complaint("depth_mm,volume_l\n400,120\n500,110\n").find("below the one before"),
              std::string::npos);
    EXPECT_NE(complaint("depth_mm,volume_l\n-1,120\n500,130\n").find("from 0 to 100 m"), std::string::npos);
    EXPECT_NE(complaint("depth_mm,volume_l\n1,120\n500,1e12\n").find("1000000 m3"), std::string::npos);
    EXPECT_NE(complaint("depth_mm,volume_l\n1,x\n500,130\n").find("not a number"), std::string::npos);
    EXPECT_NE(complaint("depth_furlongs,volume_l\n1,2\n3,4\n").find("no column of depth"), std::string::npos);
    EXPECT_NE(complaint("").size(), 0u);
}

}  // namespace
}  // namespace aqueth
