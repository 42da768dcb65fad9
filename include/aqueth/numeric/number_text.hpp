// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/version.hpp>

#include <charconv>
#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <system_error>
#include <version>

// Some standard libraries (libc++ before 20) read or write no floating-point numbers in <charconv>.
#if !defined(__cpp_lib_to_chars)
#include <locale>
#include <sstream>
#endif

/// Numbers as text and back, the same in every locale.
namespace aqueth::inline AQUETH_ABI::numeric {

/// @param value  any number
/// @param digits significant digits, 1 to 17
/// @return it with that many digits, without trailing zeros: "20", "0.000125", "1e-06", "inf"
inline std::string text_of(double value, int digits) {
#if defined(__cpp_lib_to_chars)
    char text[32];
    auto const end = std::to_chars(text, text + sizeof text, value, std::chars_format::general, digits).ptr;
    return std::string(text, end);
#else
    std::ostringstream text;
    text.imbue(std::locale::classic());
    text.precision(digits);
    text << value;
    return text.str();
#endif
}

/// @param text decimal number with a point, an exponent allowed; no blanks, no plus sign before it
/// @return the finite number that the text is as a whole; "-0" is 0, which has no sign
inline std::optional<double> number_in(std::string_view text) {
    double value = 0.0;
#if defined(__cpp_lib_to_chars)
    auto const [stop, failure] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (failure != std::errc() || stop != text.data() + text.size()) return std::nullopt;
#else
    if (text.empty() || text.find_first_not_of("0123456789.eE+-") != std::string_view::npos ||
        text.front() == '+')  // which a stream would take
        return std::nullopt;
    std::istringstream stream{std::string(text)};
    stream.imbue(std::locale::classic());
    stream >> value;
    if (stream.fail() || !stream.eof()) return std::nullopt;
#endif
    return std::isfinite(value) ? std::optional(value + 0.0) : std::nullopt;  // -0.0 + 0.0 is 0.0
}

}  // namespace aqueth::inline AQUETH_ABI::numeric
