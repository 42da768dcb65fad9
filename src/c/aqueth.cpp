// SPDX-License-Identifier: BSL-1.0
// The functions of c.h that are written by hand.
#include "interface.hpp"

#include <aqueth/numeric/number_text.hpp>
#include <aqueth/version.hpp>

#include <cstring>
#include <string>

using namespace aqueth;

extern "C" int aqueth_version(void) {
    return 10000 * AQUETH_VERSION_MAJOR + 100 * AQUETH_VERSION_MINOR + AQUETH_VERSION_PATCH;
}

extern "C" char const* aqueth_argument_name(int argument) { return c::argument_name(argument); }
extern "C" char const* aqueth_limit_name(int limit) { return c::limit_name(limit); }

extern "C" size_t aqueth_refusal_text(aqueth_refusal const* refusal, char* text, size_t room) {
    if (refusal == nullptr || refusal->size < sizeof(aqueth_refusal) || (text == nullptr && room > 0))
        return 0;
    try {
        char const* const name = c::argument_name(refusal->argument);
        char const* const limit = c::limit_name(refusal->limit);
        std::string sentence = name == nullptr ? "argument" : name;
        sentence.append(1, ' ').append(numeric::text_of(refusal->value, 7));
        if (!(refusal->lower <= refusal->upper))
            sentence.append(" cannot be met");
        else if (refusal->upper == plain::unlimited)
            sentence.append(" is not a number of at least ").append(numeric::text_of(refusal->lower, 7));
        else
            sentence.append(" is outside ")
                .append(numeric::text_of(refusal->lower, 7))
                .append(" to ")
                .append(numeric::text_of(refusal->upper, 7));
        if (limit != nullptr && *limit != '\0') sentence.append(" (").append(limit).append(1, ')');
        if (room > 0) {
            std::size_t const kept = std::min(room - 1, sentence.size());
            std::memcpy(text, sentence.data(), kept);
            text[kept] = '\0';
        }
        return sentence.size();
    } catch (...) {  // no memory for a sentence
        if (room > 0) text[0] = '\0';
        return 0;
    }
}
