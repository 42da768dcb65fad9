// SPDX-License-Identifier: BSL-1.0
#include "json.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>

namespace program {

json::json(json const&) = default;
json::json(json&&) noexcept = default;
json& json::operator=(json const&) = default;
json& json::operator=(json&&) noexcept = default;
json::~json() = default;

json::json(std::initializer_list<json> elements) {
    bool const all_are_members = std::all_of(elements.begin(), elements.end(), [](json const& each) {
        auto const* pair = std::get_if<list>(&each.value_);
        return pair && pair->size() == 2 && std::holds_alternative<std::string>(pair->front().value_);
    });
    if (!all_are_members) {
        value_ = list(elements);
        return;
    }
    value_ = members();
    for (json const& each : elements) {
        list const& pair = std::get<list>(each.value_);
        (*this)[std::get<std::string>(pair[0].value_)] = pair[1];
    }
}

json json::array() {
    json result;
    result.value_ = list();
    return result;
}

json json::object() {
    json result;
    result.value_ = members();
    return result;
}

json& json::operator[](std::string_view name) {
    if (std::holds_alternative<std::nullptr_t>(value_)) value_ = members();
    members& all = std::get<members>(value_);
    auto const found =
        std::find_if(all.begin(), all.end(), [&](auto const& each) { return each.first == name; });
    if (found != all.end()) return found->second;
    return all.emplace_back(name, json()).second;
}

json& json::push_back(json element) {
    if (std::holds_alternative<std::nullptr_t>(value_)) value_ = list();
    return std::get<list>(value_).emplace_back(std::move(element));
}

void json::update(json const& other) {
    for (auto const& [name, value] : std::get<members>(other.value_)) (*this)[name] = value;
}

/// Makes the library's value of ours.
struct json_printer {
    using library = nlohmann::ordered_json;

    library operator()(json::list const& elements) const {
        library result = library::array();
        for (json const& each : elements) result.push_back(std::visit(*this, each.value_));
        return result;
    }
    library operator()(json::members const& all) const {
        library result = library::object();
        for (auto const& [name, value] : all) result.emplace(name, std::visit(*this, value.value_));
        return result;
    }
    template <class Plain>
    library operator()(Plain const& plain) const {
        return plain;
    }
};

std::string json::text() const {
    return std::visit(json_printer{}, value_)
        .dump(2, ' ', false, json_printer::library::error_handler_t::replace);
}

}  // namespace program
