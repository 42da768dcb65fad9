// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/plain/status.hpp>

#include <gtest/gtest.h>

#include <cmath>

namespace aqueth::test {

/// Expects that a plain function has refused: no value, and the argument, limit and value of the refusal. The
/// value lies outside the bounds.
/// @return the status, for checks of the bounds
template <class T>
plain::status expect_refusal(plain::checked<T> const& found, argument refused, limit set_by, double value) {
    EXPECT_FALSE(found.status.ok);
    EXPECT_TRUE(std::isnan(found.value));
    EXPECT_STREQ(name_of(found.status.argument), name_of(refused));
    EXPECT_STREQ(name_of(found.status.limit), name_of(set_by));
    if (std::isnan(value)) {
        EXPECT_TRUE(std::isnan(found.status.value));
    } else {
        EXPECT_EQ(found.status.value, value);
    }
    bool const inside = found.status.lower <= found.status.value && found.status.value <= found.status.upper;
    EXPECT_FALSE(inside && std::isfinite(found.status.value));
    return found.status;
}

}  // namespace aqueth::test
