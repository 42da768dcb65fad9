// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// An answer in JSON, as a plain value. Only json.cpp includes the JSON library, whose header takes 4 s to
/// compile.

#include <concepts>
#include <cstddef>
#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

namespace program {

/// A value of JSON: null, a truth, a number, a text, a list, or an object whose members keep their order.
class json {
public:
    json() = default;  ///< null
    json(std::nullptr_t) {}
    json(bool truth) : value_(truth) {}
    template <std::floating_point T>
    json(T number) : value_(static_cast<double>(number) + 0.0) {}  // a zero has no sign
    template <std::integral T>
    json(T number) : value_(static_cast<long long>(number)) {}
    json(std::string text) : value_(std::move(text)) {}
    json(std::string_view text) : value_(std::string(text)) {}
    json(char const* text) : value_(std::string(text)) {}
    template <class T>
    json(std::vector<T> const& elements) : value_(list(elements.begin(), elements.end())) {}
    /// An object if every element is a pair that begins with a text, else a list.
    json(std::initializer_list<json> elements);
    json(json const&);
    json(json&&) noexcept;
    json& operator=(json const&);
    json& operator=(json&&) noexcept;
    ~json();

    static json array();
    static json object();

    /// The member of that name, made if it is not there. Null becomes an object.
    json& operator[](std::string_view name);
    /// Null becomes a list.
    json& push_back(json element);
    /// Sets all members of another object.
    void update(json const& other);

    /// A value that is neither list nor object, as text; a number with ten significant digits.
    struct leaf {
        std::string name;  ///< "foreshots.volume_L", "jars.1.strength"
        std::string text;
        bool is_number;
    };
    /// All such values of an object, in their order.
    std::vector<leaf> leaves() const;

    /// The text, with line breaks. Invalid UTF-8 is replaced; a number that is not finite becomes null.
    std::string text() const;

private:
    friend struct json_printer;
    using list = std::vector<json>;
    using members = std::vector<std::pair<std::string, json>>;

    std::variant<std::nullptr_t, bool, long long, double, std::string, list, members> value_;
};

}  // namespace program
