// SPDX-License-Identifier: BSL-1.0
#include <aqueth/version.hpp>

#include <cstdio>
#include <gtest/gtest.h>

// The preprocessor can compare versions.
#if AQUETH_VERSION < 100
#error "older than 0.1.0, the first version"
#endif

namespace {

TEST(Version, NumberIsMadeOfItsParts) {
    int major = -1;
    int minor = -1;
    int patch = -1;
    ASSERT_EQ(std::sscanf(aqueth::version, "%d.%d.%d", &major, &minor, &patch), 3);
    EXPECT_EQ(major, AQUETH_VERSION_MAJOR);
    EXPECT_EQ(minor, AQUETH_VERSION_MINOR);
    EXPECT_EQ(patch, AQUETH_VERSION_PATCH);
    EXPECT_EQ(AQUETH_VERSION, 10000 * major + 100 * minor + patch);
    // Each part has two digits, so that the order of the numbers is that of the versions.
    EXPECT_LT(minor, 100);
    EXPECT_LT(patch, 100);
}

}  // namespace
