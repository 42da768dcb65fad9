// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/number_table.hpp>

#include <gtest/gtest.h>

#include <cstddef>
#include <string>

namespace aqueth::test {

/// Passes if the call raises a text_error at this place whose message has these words.
/// @param call   callable without arguments
/// @param line   line of the text, from 1, or 0 for the whole text
/// @param column name of the column, or empty for the whole line
/// @param words  part of the message
template <class Call>
void expect_text_error(Call const& call, std::size_t line, std::string const& column,
                       std::string const& words) {
    try {
        call();
    } catch (text_error const& error) {
        std::string const message = error.what();
        EXPECT_EQ(error.line(), line) << message;
        EXPECT_EQ(error.column(), column) << message;
        EXPECT_NE(message.find(words), std::string::npos) << message;
        EXPECT_EQ(message.find('\n'), std::string::npos) << message;
        return;
    }
    ADD_FAILURE() << "no text_error with: " << words;
}

}  // namespace aqueth::test
