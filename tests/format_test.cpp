// SPDX-License-Identifier: BSL-1.0
#include <aqueth/format.hpp>

#include <aqueth/plain/density.hpp>

#include <gtest/gtest.h>

#include <string>

// The formatters of the standard library and of fmt have one implementation. Each is tested where it exists.
#if __has_include(<fmt/format.h>)
#define AQUETH_FORMATS_WITH fmt
#elif defined(__cpp_lib_format)
#define AQUETH_FORMATS_WITH std
#endif

#if defined(AQUETH_FORMATS_WITH)
namespace {

using AQUETH_FORMATS_WITH::format;

TEST(Format, QuantitiesHaveTheirUnits) {
    EXPECT_EQ(format("{}", aqueth::celsius(20)), "20 °C");
    EXPECT_EQ(format("{} at {}", 3 * aqueth::litre, aqueth::by_volume(7)), "3 L at 7 % vol at 20 °C");
    EXPECT_EQ(format("{}", aqueth::specific_gravity(0.95)), "0.95 sg");
    EXPECT_EQ(format("{}", 1.0 / 3.0 * aqueth::litre), "0.3333333333333333 L");
}

TEST(Format, TheFormatIsThatOfANumber) {
    EXPECT_EQ(format("{:.1f}", aqueth::by_volume(40)), "40.0 % vol at 20 °C");
    EXPECT_EQ(format("{:8.2f}|", 3 * aqueth::litre), "    3.00 L|");
    EXPECT_EQ(format("{:.4g}", aqueth::standard_atmosphere), "101.3 kPa");
    EXPECT_EQ(format("{0:.3f} {0:.0f}",
                     aqueth::parcel::of(2.5 * aqueth::kilogram, aqueth::by_volume(40), aqueth::celsius(15))),
              "2.500 kg, 40.000 % vol at 20 °C, 15.000 °C 2 kg, 40 % vol at 20 °C, 15 °C");
}

TEST(Format, RefusalsAreTheirMessages) {
    EXPECT_EQ(format("{}", aqueth::plain::density_kg_m3(0.4, 95.0).status),
              "refused: temperature 95 °C is outside -20 to 82.84463 °C (liquid, up to its boiling point at "
              "101.325 kPa)");
    try {
        static_cast<void>(aqueth::by_volume(140));
        ADD_FAILURE() << "140 % vol was accepted";
    } catch (aqueth::refusal const& error) {
        EXPECT_EQ(format("{}", error), error.what());
    }
}

}  // namespace
#endif
