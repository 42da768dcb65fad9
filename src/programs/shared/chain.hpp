// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Carrying on: options that were not given are filled from earlier answers in JSON (`--from`). The schema of
/// answers is docs/answers.schema.json.

#include "quantities.hpp"

#include <functional>
#include <initializer_list>
#include <string>
#include <string_view>
#include <vector>

namespace program {

/// The form of answers in JSON. A change that breaks readers raises the number.
inline constexpr char const* answer_schema = "urn:aqueth:answers:1";

/// What an option can take from an earlier answer.
enum class carried {
    weighed,            ///< of a lot, as its balance indication: it does not depend on the temperature
    volume,             ///< of a lot
    strength,           ///< of a lot or a reading
    measured_strength,  ///< of a reading only
    temperature,        ///< of a lot or a reading
    extract,            ///< of a wash
    sugar,              ///< of a liqueur
    original_gravity,   ///< of a wash
    reading,            ///< of a soda-lime hydrometer
    correction,         ///< of the certificate of that hydrometer
    label_volume,       ///< of a bottle
    whole_lot,          ///< 'amount, strength, temperature': a list gets one more lot
    of_the_still,       ///< what was learned of a still, under the name of the option
    uncertainty         ///< standard uncertainty of a strength that was judged
};

/// An option that an earlier answer can fill.
struct fillable {
    using others = std::initializer_list<std::reference_wrapper<given const>>;

    /// @param instead options that take its place: if one of them was given, it stays empty
    fillable(given const& option_, carried what_, others instead_ = {}) : option(&option_), what(what_) {
        for (given const& each : instead_) instead.push_back(&each);
    }
    fillable(std::vector<given> const& list_, char const* name_, carried what_)
        : list(&list_), name(name_), what(what_) {}
    /// The same option, which is filled only if the other one has a value.
    fillable beside(given const& other) const {
        fillable copy = *this;
        copy.companion = &other;
        copy.companion_name = other.name;
        return copy;
    }
    fillable beside(std::vector<given> const& others_, char const* name_of_others) const {
        fillable copy = *this;
        copy.companions = &others_;
        copy.companion_name = name_of_others;
        return copy;
    }

    given const* option = nullptr;             ///< either an option
    std::vector<given> const* list = nullptr;  ///< or a repeatable one,
    std::string name;                          ///< which has this name
    carried what;
    std::vector<given const*> instead;
    given const* companion = nullptr;
    std::vector<given> const* companions = nullptr;
    std::string companion_name;
};

/// An option that was filled.
struct taken_figure {
    fillable target;
    std::string option, value;  ///< "--strength", "10.79 %vol"
    std::string file, lot;      ///< where it comes from; the lot may have no name
};

/// Reads answers and says what each option takes. An option that was given keeps its value; of two answers
/// the first fills an option.
/// @param from  "FILE", "FILE#name of a lot", or "-" for standard input
/// @throws bad_input if one is no answer in JSON, has no such lot, or holds nothing that is missing
std::vector<taken_figure> figures_from(std::vector<given> const& from, std::vector<fillable> const& options);

}  // namespace program
