// SPDX-License-Identifier: BSL-1.0
#include "json.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <cmath>

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

std::vector<json::leaf> json::leaves() const {
    std::vector<leaf> result;
    auto const visit = [&result](auto const& self, std::string const& name, json const& value) -> void {
        auto const inside = [&](std::string const& member) {
            return name.empty() ? member : name + "." + member;
        };
        if (auto const* all = std::get_if<members>(&value.value_)) {
            for (auto const& [member, each] : *all) self(self, inside(member), each);
        } else if (auto const* elements = std::get_if<list>(&value.value_)) {
            for (std::size_t k = 0; k < elements->size(); ++k)
                self(self, inside(std::to_string(k + 1)), (*elements)[k]);
        } else if (auto const* text = std::get_if<std::string>(&value.value_)) {
            result.push_back({name, *text, false});
        } else if (auto const* number = std::get_if<double>(&value.value_)) {
            result.push_back({name, std::isfinite(*number) ? fmt::format("{:.10g}", *number) : "", true});
        } else if (auto const* count = std::get_if<long long>(&value.value_)) {
            result.push_back({name, std::to_string(*count), true});
        } else if (auto const* truth = std::get_if<bool>(&value.value_)) {
            result.push_back({name, *truth ? "true" : "false", false});
        } else {
            result.push_back({name, "", false});
        }
    };
    visit(visit, "", *this);
    return result;
}

std::string json::text() const {
    return std::visit(json_printer{}, value_)
        .dump(2, ' ', false, json_printer::library::error_handler_t::replace);
}

}  // namespace program
