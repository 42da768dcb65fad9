// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities in `std::format` where the standard library has it, and in `fmt::format` where fmt is
/// installed. Not in the front door: include it where you format.

#include <aqueth/error.hpp>
#include <aqueth/text.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <string>
#include <string_view>
#include <version>

#if defined(__cpp_lib_format)
#include <format>
#endif
#if __has_include(<fmt/format.h>)
#include <fmt/format.h>
#endif

namespace aqueth::inline AQUETH_ABI::text {

/// Formats a quantity. The format of a number applies to each of its numbers, and the unit follows: "{:.1f}"
/// gives "40.0 % vol at 20 °C". "{}" is as `text_of`.
/// @tparam Number formatter of a double: of the standard library or of fmt
template <class Number>
class quantity_formatter {
public:
    /// @param context of the format
    /// @return end of the format
    template <class Context>
    constexpr auto parse(Context& context) {
        plain_ = context.begin() == context.end() || *context.begin() == '}';
        return number_.parse(context);
    }
    /// @param quantity what to write
    /// @param context  where to
    /// @return end of the text
    template <has_text Quantity, class Context>
    auto format(Quantity const& quantity, Context& context) const {
        auto const put = [&](std::string_view words) {
            context.advance_to(std::copy(words.begin(), words.end(), context.out()));
        };
        write(
            quantity,
            [&](figure const& f) {
                if (plain_) return put(number_of(f));
                Number number = number_;  // whose `format` is not const in every standard library
                context.advance_to(number.format(f.number, context));
            },
            put);
        return context.out();
    }

private:
    Number number_;
    bool plain_ = true;
};

/// Formats a refusal as its message.
/// @tparam Text formatter of a std::string_view: of the standard library or of fmt
template <class Text>
class refusal_formatter {
public:
    /// @param context of the format
    /// @return end of the format
    template <class Context>
    constexpr auto parse(Context& context) {
        return text_.parse(context);
    }
    /// @param refused a refusal
    /// @param context where to
    /// @return end of the text
    template <class Refusal, class Context>
    auto format(Refusal const& refused, Context& context) const {
        std::string const message = text_of(refused);
        Text formatter = text_;
        return formatter.format(std::string_view(message), context);
    }

private:
    Text text_;
};

}  // namespace aqueth::inline AQUETH_ABI::text

#if defined(__cpp_lib_format)
/// Quantities in std::format.
template <aqueth::text::has_text Quantity>
struct std::formatter<Quantity, char> : aqueth::text::quantity_formatter<std::formatter<double, char>> {};
/// Refusals in std::format.
template <>
struct std::formatter<aqueth::refusal, char>
    : aqueth::text::refusal_formatter<std::formatter<std::string_view, char>> {};
/// The same of the plain floor.
template <>
struct std::formatter<aqueth::plain::status, char>
    : aqueth::text::refusal_formatter<std::formatter<std::string_view, char>> {};
#endif

#if __has_include(<fmt/format.h>)
/// Quantities in fmt::format.
template <aqueth::text::has_text Quantity>
struct fmt::formatter<Quantity, char> : aqueth::text::quantity_formatter<fmt::formatter<double, char>> {};
/// Refusals in fmt::format.
template <>
struct fmt::formatter<aqueth::refusal, char>
    : aqueth::text::refusal_formatter<fmt::formatter<std::string_view, char>> {};
/// The same of the plain floor.
template <>
struct fmt::formatter<aqueth::plain::status, char>
    : aqueth::text::refusal_formatter<fmt::formatter<std::string_view, char>> {};
#endif
