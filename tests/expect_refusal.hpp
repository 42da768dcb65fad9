// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/error.hpp>

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <string>

namespace aqueth::test {

/// Passes if the call raises a refusal about this argument; returns the error for more checks.
/// @param call     callable without arguments
/// @param argument name of the quantity that must be refused
/// @return the error, or one with NaN bounds if none was raised (the test has failed then)
template <class Call>
refusal expect_refusal(Call const& call, std::string const& argument) {
    try {
        static_cast<void>(call());
    } catch (refusal const& error) {
        EXPECT_EQ(error.argument(), argument) << error.what();
        bool const inside = error.lower() <= error.value() && error.value() <= error.upper();
        EXPECT_FALSE(inside && std::isfinite(error.value())) << error.what();
        return error;
    }
    ADD_FAILURE() << "no refusal about " << argument;
    return refusal("", "", 0.0, "", std::numeric_limits<double>::quiet_NaN(), 0.0, "");
}

}  // namespace aqueth::test
