// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/numeric/floating_point.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/plain/argument.hpp>
#include <aqueth/plain/limit.hpp>
#include <aqueth/plain/status.hpp>

#include <concepts>
#include <cstdio>
#include <cstdlib>
#include <limits>
#include <stdexcept>
#include <string>
#include <string_view>
#include <utility>

namespace aqueth::inline AQUETH_ABI {

// The upper end of a range that has none, and the degrees of freedom of what is known exactly.
using plain::unlimited;

/// A refused quantity: its code, and words of its own where they say more than the code's, or where there is
/// no code.
class argument_name {
public:
    /// @param code which quantity; `name_of` gives its words
    constexpr argument_name(argument code) : code_(code) {}
    /// @param code  which quantity
    /// @param words its name here; must outlive the call
    constexpr argument_name(argument code, std::string_view words) : code_(code), words_(words) {}
    /// @param words name of a quantity that the library does not know; must outlive the call
    template <class Text>
        requires std::convertible_to<Text const&, std::string_view>
    constexpr argument_name(Text const& words) : words_(words) {}

    /// @return which quantity
    constexpr argument code() const noexcept { return code_; }
    /// @return what it is called
    constexpr std::string_view words() const noexcept {
        return words_.data() == nullptr ? std::string_view(name_of(code_)) : words_;
    }

private:
    argument code_ = argument::other;
    std::string_view words_{};
};

/// The only error of the library: a value outside the valid range.
///
/// Impossible requests are range errors too: a target above the strength of the stock is outside the range
/// that the stock can reach. The bounds then give the reachable range. NaN and infinity are outside every
/// range.
class refusal : public std::runtime_error {
public:
    /// @param property the property being computed, e.g. "density"
    /// @param refused  which quantity was refused, e.g. argument::temperature
    /// @param value    the refused value, in `unit`
    /// @param unit     unit of value and bounds, e.g. "°C"; may be empty
    /// @param lower    least accepted value
    /// @param upper    greatest accepted value; infinity when there is none
    /// @param reason   what sets the range: a published source or a condition
    refusal(std::string property, argument_name const& refused, double value, std::string unit, double lower,
            double upper, std::string reason)
        : std::runtime_error(message(property, refused.words(), value, unit, lower, upper, reason)),
          property_(std::move(property)),
          argument_(refused.words()),
          unit_(std::move(unit)),
          reason_(std::move(reason)),
          code_(refused.code()),
          value_(value),
          lower_(lower),
          upper_(upper) {}

    std::string const& property() const noexcept { return property_; }  ///< @return what was being worked out
    /// @return the refused quantity, in words
    std::string const& argument() const noexcept { return argument_; }
    aqueth::argument code() const noexcept { return code_; }        ///< @return which quantity that is
    std::string const& unit() const noexcept { return unit_; }      ///< @return unit of value and bounds
    std::string const& reason() const noexcept { return reason_; }  ///< @return what sets the range
    double value() const noexcept { return value_; }                ///< @return the refused value
    double lower() const noexcept { return lower_; }                ///< @return least accepted value
    double upper() const noexcept { return upper_; }                ///< @return greatest accepted value

private:
    // Seven digits, or as many as distinguish the refused value from both bounds: "88 is outside 0 to 88"
    // helps no user. Seventeen digits distinguish any two doubles.
    static int digits_for(double value, double lower, double upper) {
        int digits = 7;
        auto const alike = [&](double bound) {
            return value != bound && numeric::text_of(value, digits) == numeric::text_of(bound, digits);
        };
        while (digits < 17 && (alike(lower) || alike(upper))) ++digits;
        return digits;
    }
    static std::string message(std::string const& property, std::string_view words, double value,
                               std::string const& unit, double lower, double upper,
                               std::string const& reason) {
        std::string const tail = unit.empty() ? "" : " " + unit;
        int const digits = digits_for(value, lower, upper);
        std::string text = property + ": ";
        text.append(words).append(1, ' ').append(numeric::text_of(value, digits)).append(tail);
        if (!(lower <= upper)) {
            text += " cannot be met";
        } else if (upper == unlimited) {
            text += " is not a number of at least " + numeric::text_of(lower, digits) + tail;
        } else {
            text += " is outside " + numeric::text_of(lower, digits) + " to " +
                    numeric::text_of(upper, digits) + tail;
        }
        return reason.empty() ? text : text + " (" + reason + ")";
    }

    std::string property_;
    std::string argument_;
    std::string unit_;
    std::string reason_;
    aqueth::argument code_;
    double value_;
    double lower_;
    double upper_;
};

/// The only place where the library throws; a build without exceptions prints the message and aborts instead.
/// @param error what to throw
template <std::derived_from<std::runtime_error> Error>
[[noreturn]] void raise_error(Error const& error) {
#if defined(__cpp_exceptions)
    throw error;
#else
    std::fputs(error.what(), stderr);
    std::fputc('\n', stderr);
    std::abort();
#endif
}

namespace detail {

/// How far outside its range rounding may put a computed temperature or density.
inline constexpr double rounding = plain::rounding<double>;

// Out of line, to keep the fast path small.
template <class Argument>
[[noreturn, gnu::cold, gnu::noinline]] void
raise_out_of_range(std::string_view property, Argument refused, double value, std::string_view unit,
                   double lower, double upper, std::string_view reason) {
    raise_error(
        refusal(std::string(property), refused, value, std::string(unit), lower, upper, std::string(reason)));
}

}  // namespace detail

namespace detail {

/// How messages print an argument of the plain floor: the unit, and how many of it make one of the floor's.
struct printed {
    char const* unit = "";
    double per_plain_unit = 1.0;
};

constexpr printed printed_as(argument refused) {
    switch (refused) {
    case argument::reference_temperature:
    case argument::temperature:
    case argument::temperature_of_a_part:
    case argument::temperature_of_the_grain:
    case argument::temperature_of_the_vessel:
    case argument::temperature_of_the_water:
    case argument::temperature_wanted:
    case argument::temperature_of_the_mixture_without_loss_of_heat: return {"°C"};
    case argument::margin_of_temperature: return {"K"};
    case argument::indication:
    case argument::indication_with_the_liquid:
    case argument::indication_with_water:
    case argument::mass:
    case argument::mass_of_the_extract:
    case argument::mass_of_the_grain:
    case argument::mass_of_the_sugar:
    case argument::mass_of_the_water:
    case argument::mass_of_all_parcels: return {"kg"};
    case argument::label_volume:
    case argument::volume:
    case argument::volume_of_the_distillate:
    case argument::volume_of_the_sample: return {"L"};
    case argument::amount_of_ethanol:
    case argument::amount_of_ethanol_and_water:
    case argument::amount_of_water: return {"mol"};
    case argument::density:
    case argument::density_behind_the_reading:
    case argument::density_it_floats_by:
    case argument::density_of_the_air: return {"kg/m3"};
    case argument::ethanol_beside_this_extract:
    case argument::mass_fraction:
    case argument::sugar_in_its_water:
    case argument::strength_of_the_diluent:
    case argument::strength_of_the_stronger_spirit:
    case argument::stronger_spirit_above_the_target_by:
    case argument::target_strength: return {"% mass", 100.0};
    case argument::yearly_loss_of_ethanol:
    case argument::yearly_loss_of_water: return {"%", 100.0};
    case argument::moisture: return {"% mass", 100.0};
    case argument::mole_fraction: return {"% mol", 100.0};
    case argument::alcoholic_strength_by_volume: return {"% vol", 100.0};
    case argument::proof: return {"US proof"};
    case argument::mass_concentration: return {"g/100 mL"};
    case argument::cubic_expansion_of_the_instrument: return {"1/K"};
    case argument::altitude: return {"m"};
    case argument::pressure: return {"kPa"};
    case argument::strength: return {"% vol at 20 °C", 100.0};
    case argument::apparent_extract:
    case argument::extract:
    case argument::original_extract:
    case argument::real_extract: return {"°P"};
    case argument::sugar_concentration: return {"g/L"};
    case argument::refractometer_reading: return {"°Bx"};
    case argument::share_lost_in_distillation: return {"%", 100.0};
    case argument::fall: return {"degrees of gravity"};
    case argument::specific_enthalpy: return {"kJ/kg", 1e-3};
    default: return {};
    }
}

[[noreturn, gnu::cold, gnu::noinline]] inline void
raise_refused(std::string_view property, plain::status const& why, printed const& as) {
    double const factor = as.per_plain_unit;
    raise_error(refusal(std::string(property), why.argument, factor * why.value, as.unit, factor * why.lower,
                        factor * why.upper, name_of(why.limit)));
}
[[noreturn, gnu::cold, gnu::noinline]] inline void raise_refused(std::string_view property,
                                                                 plain::status const& why) {
    raise_refused(property, why, printed_as(why.argument));
}

/// Raises a refusal if the plain floor refused.
/// @param property the property being computed
/// @param found    whether the plain floor answered
[[gnu::always_inline]] constexpr void accept(std::string_view property, plain::status const& found) {
    if (!found.ok) [[unlikely]]
        raise_refused(property, found);
}
/// The same for an argument with a unit of its own in messages.
/// @param property what is being worked out
/// @param found    whether the plain floor answered
/// @param as       how the refused argument is printed
[[gnu::always_inline]] constexpr void accept(std::string_view property, plain::status const& found,
                                             printed const& as) {
    if (!found.ok) [[unlikely]]
        raise_refused(property, found, as);
}

/// @param property the property being computed
/// @param found    what the plain floor answered
/// @return its value; raises a refusal where it refused
template <class T>
[[gnu::always_inline]] constexpr T answer(std::string_view property, plain::checked<T> const& found) {
    accept(property, found.status);
    return found.value;
}

}  // namespace detail

/// Returns a value in the range, and raises a refusal for any other (NaN and infinity included).
/// @param property the property being computed
/// @param refused  which quantity: an `argument`, or an `argument_name` where it has words of its own
/// @param value    its value, in `unit`
/// @param unit     unit of value and bounds
/// @param lower    least accepted value
/// @param upper    greatest accepted value; infinity accepts any finite value from `lower` up
/// @param reason   what sets the range
/// @return value
template <class Argument>
    requires std::convertible_to<Argument const&, argument_name>
[[gnu::always_inline]] constexpr double require_range(std::string_view property, Argument const& refused,
                                                      double value, std::string_view unit, double lower,
                                                      double upper, std::string_view reason = {}) {
    constexpr double highest = (std::numeric_limits<double>::max)();
    if (!(lower <= value && value <= (upper < highest ? upper : highest))) [[unlikely]]
        detail::raise_out_of_range(property, refused, value, unit, lower, upper, reason);
    return value;
}

}  // namespace aqueth::inline AQUETH_ABI
