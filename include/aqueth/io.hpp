// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Quantities into streams. Not in the front door: include it where you print.

#include <aqueth/error.hpp>
#include <aqueth/text.hpp>
#include <aqueth/units.hpp>

#include <locale>
#include <ostream>
#include <sstream>

namespace aqueth::inline AQUETH_ABI::text {

/// Writes a quantity with its unit into a stream. Precision and notation (`std::fixed`) of the stream apply
/// to each number; width applies to the whole text; the locale does not apply.
/// @param out      where to
/// @param quantity what to write
/// @return out
template <has_text Quantity>
std::ostream& put(std::ostream& out, Quantity const& quantity) {
    std::ostringstream text;
    text.imbue(std::locale::classic());
    text.flags(out.flags());
    text.precision(out.precision());
    write(
        quantity, [&](figure const& f) { text << f.number; }, [&](std::string_view words) { text << words; });
    return out << text.str();
}

}  // namespace aqueth::inline AQUETH_ABI::text

namespace aqueth::inline AQUETH_ABI {

/// @param out      a stream
/// @param quantity temperature, strength, specific gravity, extract, liquid or parcel
/// @return out
template <text::has_text Quantity>
std::ostream& operator<<(std::ostream& out, Quantity const& quantity) {
    return text::put(out, quantity);
}
/// @param out   a stream
/// @param error a refusal; its message is written
/// @return out
inline std::ostream& operator<<(std::ostream& out, refusal const& error) { return out << text_of(error); }

}  // namespace aqueth::inline AQUETH_ABI

// A compiler looks for the operators of a type in the namespace of the type.
namespace aqueth::inline AQUETH_ABI::plain {
/// @param out    a stream
/// @param status what a function answered
/// @return out
inline std::ostream& operator<<(std::ostream& out, status const& status) { return out << text_of(status); }
}  // namespace aqueth::inline AQUETH_ABI::plain

namespace aqueth::inline AQUETH_ABI::units {
using aqueth::operator<<;
}  // namespace aqueth::inline AQUETH_ABI::units

namespace boost::units {
/// @param out      a stream
/// @param quantity one of the quantities of aqueth::units
/// @return out
template <class Unit>
requires aqueth::text::has_text<quantity<Unit>> std::ostream& operator<<(std::ostream& out,
                                                                         quantity<Unit> const& quantity) {
    return aqueth::text::put(out, quantity);
}
}  // namespace boost::units
