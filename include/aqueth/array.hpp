// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/array_operations.hpp>
#include <aqueth/composition.hpp>
#include <aqueth/density.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/error.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/numeric/array_loop.hpp>
#include <aqueth/plain/transport.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <array>
#include <concepts>
#include <cstddef>
#include <cstdint>
#include <span>
#include <type_traits>

/// The properties of the library over arrays of plain numbers.
///
/// An array is any type with contiguous elements: std::vector, std::array, std::span, a vector of Eigen or a
/// part of one. Results go into the caller's array; nothing is allocated. Numbers are double; all functions
/// but `vapour` and `bubble_temperature` take float too.
///
/// An element out of range does not stop the loop: its result is NaN, its flag false, and the function
/// returns the count of such elements. The scalar function raises the error for that element: the function
/// of the same name for `density`, `mass_fraction_from_density`, `thermal_expansion`, `to`, `viscosity`,
/// `speed_of_sound` and `thermal_conductivity`, `hydrometer::strength` for `strength`,
/// `equilibrium_curve::vapour` for `vapour` from a curve, and `bubble_point` for `vapour` and
/// `bubble_temperature` under a pressure. (A float may be 2e-4 kg/m3 outside the pure liquids, its rounding.)
/// Three things raise a refusal before anything is written: arrays of different lengths, a result that
/// overlaps an input partly, and arguments for all elements.
///
/// Densities, expansions, compositions and corrected readings have fast loops up to 40 °C. An element above
/// 40 °C takes as long as the scalar function, and so do viscosities, speeds of sound and conductivities.
///
/// The loops are compiled for several generations of x86-64 processors and choose at run time. The consumer's
/// compiler flags stay unchanged, and -O2 is enough. As with every header-only library, a program whose
/// source files are compiled for different processors runs only on the newest of them. Functions keep no
/// state: any thread may call them at any time. A result may go into one of the inputs.
/// @par Accuracy
/// As the scalar functions. Results may differ from theirs in the last digits, because a processor may or may
/// not fuse a product and a sum: densities by 3e-13 kg/m3, strengths by 1e-14 of their scale, or as float by
/// 2e-4 kg/m3 (above 40 °C 5e-4) and 5e-6 of their scale.
namespace aqueth::inline AQUETH_ABI::arrays {

namespace detail {

template <class A>
using element_of = std::remove_cvref_t<decltype(*std::declval<A&>().data())>;

// Eigen's types state at compile time whether their elements are contiguous; other types always are.
template <class A>
constexpr bool has_gaps() {
    if constexpr (requires { A::InnerStrideAtCompileTime; }) {
        return A::InnerStrideAtCompileTime != 1 || !A::IsVectorAtCompileTime;
    } else {
        return false;
    }
}

}  // namespace detail

/// A readable array: `data()`, `size()`, contiguous elements of double or float.
template <class A>
concept readable = requires(A const& a) {
    { a.size() } -> std::convertible_to<std::size_t>;
    requires std::floating_point<detail::element_of<A const>>;
}
&&!detail::has_gaps<std::remove_cvref_t<A>>();

/// A writable array, of any value category, so that a part of another array is accepted.
template <class A>
concept writable = readable<std::remove_reference_t<A>> && requires(A& a) {
    *a.data() = *a.data();
};

/// Flags, one per element: true for a result, false for arguments out of range.
using flags = std::span<bool>;

namespace detail {

inline void require_same_size(argument what, std::size_t size, std::size_t expected) {
    require_range("array", what, static_cast<double>(size), "elements", static_cast<double>(expected),
                  static_cast<double>(expected), "as many as the first input has");
}

// An array read from another place than the one just written would read results as arguments. `out` is not
// const, or g++ would warn that numbers not yet written are read.
template <class Out, class In>
void refuse_partial_overlap(Out& out, In const& in) {
    auto const begins = reinterpret_cast<std::uintptr_t>(out.data());
    auto const begins_in = reinterpret_cast<std::uintptr_t>(in.data());
    auto const ends = begins + static_cast<std::size_t>(out.size()) * sizeof(element_of<Out const>);
    auto const ends_in = begins_in + static_cast<std::size_t>(in.size()) * sizeof(element_of<In const>);
    bool const same = begins == begins_in && ends == ends_in;
    if (same || ends <= begins_in || ends_in <= begins) return;
    double const shared = static_cast<double>((std::min)(ends, ends_in) - (std::max)(begins, begins_in)) /
                          static_cast<double>(sizeof(element_of<Out const>));
    require_range("array", argument::overlap_of_the_results, shared, "elements", 0.0, 0.0,
                  "they may replace an input, but must not overlap it partly");
}

/// Refuses arrays that do not belong together.
/// @return number of their elements
template <class Out, class First, class... Rest>
std::size_t require_arrays(Out& out, flags valid, First const& first, Rest const&... rest) {
    auto const size = static_cast<std::size_t>(first.size());
    (require_same_size(argument::length_of_an_input, static_cast<std::size_t>(rest.size()), size), ...);
    require_same_size(argument::length_of_the_results, static_cast<std::size_t>(out.size()), size);
    if (!valid.empty()) require_same_size(argument::length_of_the_flags, valid.size(), size);
    refuse_partial_overlap(out, first);
    (refuse_partial_overlap(out, rest), ...);
    return size;
}

template <class T, class Loop, class Out, class First, class... Rest>
std::size_t run_loop(Loop const& loop, Out& out, flags valid, First const& first, Rest const&... rest) {
    static_assert(std::is_same_v<T, float> || std::is_same_v<T, double>);
    static_assert(
        (std::is_same_v<element_of<First const>, T> && ... && std::is_same_v<element_of<Rest const>, T>),
        "inputs and results must all be double or all be float");
    std::size_t const size = require_arrays(out, valid, first, rest...);
    std::array<T const*, 1 + sizeof...(Rest)> const in{first.data(), rest.data()...};
    return loop(in, out.data(), valid.empty() ? nullptr : valid.data(), size);
}

template <class T, class Operation, class Out, class... In>
std::size_t run(Operation const& operation, Out& out, flags valid, In const&... in) {
    return run_loop<T>([&](auto const&... all) { return numeric::for_each_element<T>(operation, all...); },
                       out, valid, in...);
}

template <class T, class Function, class Out, class... In>
std::size_t run_one_by_one(Function const& function, Out& out, flags valid, In const&... in) {
    return run_loop<T>([&](auto const&... all) { return numeric::one_by_one<T>(function, all...); }, out,
                       valid, in...);
}

template <class T>
T require_temperature(char const* property, units::temperature t) {
    aqueth::detail::accept(property, plain::liquid_temperature_range(t.celsius()));
    return T(t.celsius());
}

// Above 40 °C there is no loop: one element after the other is faster than a loop that doubts them all.
template <class T>
bool above_oiml_r22(T celsius) {
    return celsius > T(r22::highest_celsius);
}

}  // namespace detail

/// Densities, each at its own temperature.
/// @param mass_fraction mass fractions of ethanol, 0 to 1
/// @param celsius       temperatures in °C, from freezing, or -20, to boiling at 101.325 kPa
/// @param density       densities in kg/m3
/// @param valid         flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// @ref source_oiml_r22; above 40 °C @ref source_hot_density
template <readable W, readable C, writable R>
std::size_t density(W const& mass_fraction, C const& celsius, R&& density, flags valid = {}) {
    using T = detail::element_of<R>;
    return detail::run<T>(detail::density_operation<T>{}, density, valid, mass_fraction, celsius);
}

/// Densities, all at one temperature: up to 40 °C four to five times as fast.
/// @param mass_fraction mass fractions of ethanol, 0 to 1
/// @param t             temperature, -20 °C to the boiling point; mixtures that would be frozen are out of
///                      range
/// @param density       densities in kg/m3
/// @param valid         flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length, the result overlaps an input partly, or the temperature is
///         outside its range
/// @par Source
/// @ref source_oiml_r22; above 40 °C @ref source_hot_density
template <readable W, writable R>
std::size_t density(W const& mass_fraction, units::temperature t, R&& density, flags valid = {}) {
    using T = detail::element_of<R>;
    T const celsius = detail::require_temperature<T>("density", t);
    if (detail::above_oiml_r22(celsius)) {
        auto const hot = [celsius](T w) { return detail::density_operation<T>{}.careful(w, celsius); };
        return detail::run_one_by_one<T>(hot, density, valid, mass_fraction);
    }
    return detail::run<T>(detail::density_at_operation<T>(celsius), density, valid, mass_fraction);
}

/// Mass fractions from densities, each at its own temperature.
/// @param density       densities in kg/m3, between those of pure ethanol and of water at the temperature
/// @param celsius       temperatures in °C, -20 to the boiling point
/// @param mass_fraction mass fractions of ethanol
/// @param valid         flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// @ref source_oiml_r22; above 40 °C @ref source_hot_density
template <readable D, readable C, writable R>
std::size_t mass_fraction_from_density(D const& density, C const& celsius, R&& mass_fraction,
                                       flags valid = {}) {
    using T = detail::element_of<R>;
    return detail::run<T>(detail::composition_operation<T>{}, mass_fraction, valid, density, celsius);
}

/// Mass fractions from densities, all at one temperature.
/// @param density       densities in kg/m3, between those of pure ethanol and of water at the temperature
/// @param t             temperature, -20 °C to the boiling point
/// @param mass_fraction mass fractions of ethanol
/// @param valid         flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length, the result overlaps an input partly, or the temperature is
///         outside its range
/// @par Source
/// @ref source_oiml_r22; above 40 °C @ref source_hot_density
template <readable D, writable R>
std::size_t mass_fraction_from_density(D const& density, units::temperature t, R&& mass_fraction,
                                       flags valid = {}) {
    using T = detail::element_of<R>;
    T const celsius = detail::require_temperature<T>("mass fraction from density", t);
    if (detail::above_oiml_r22(celsius)) {
        auto const hot = [celsius](T rho) {
            return detail::composition_operation<T>{}.careful(rho, celsius);
        };
        return detail::run_one_by_one<T>(hot, mass_fraction, valid, density);
    }
    return detail::run<T>(detail::composition_at_operation<T>(celsius), mass_fraction, valid, density);
}

/// Cubic expansion coefficients, -(1/rho) d rho/dt at constant composition.
/// @param mass_fraction mass fractions of ethanol, 0 to 1
/// @param celsius       temperatures in °C, from -20 °C or the freezing point to the boiling point at 101.325
///                      kPa
/// @param result        expansion coefficients in 1/K; negative in weak mixtures near their greatest density
/// @param valid         flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// @ref source_oiml_r22, exact derivative; above 40 °C @ref source_hot_density
template <readable W, readable C, writable R>
std::size_t thermal_expansion(W const& mass_fraction, C const& celsius, R&& result, flags valid = {}) {
    using T = detail::element_of<R>;
    return detail::run<T>(detail::thermal_expansion_operation<T>{}, result, valid, mass_fraction, celsius);
}

/// Strengths from one basis into another: `arrays::to<mass_fraction, volume_fraction>(q, w)`. Numbers are
/// those of the kind's constructor: fractions from 0 to 1, degrees of proof, grams per 100 mL.
/// @tparam Target the basis wanted
/// @tparam Source the basis of the input
/// @param strength strengths
/// @param result   the same mixtures in the wanted basis
/// @param valid    flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// as the scalar `to`
template <strength_basis Target, strength_basis Source, readable S, writable R>
std::size_t to(S const& strength, R&& result, flags valid = {}) {
    using T = detail::element_of<R>;
    return detail::run<T>(detail::conversion<T, Target, Source>{}, result, valid, strength);
}

/// True strengths from the readings of an instrument that reads % vol.
/// @param meter    the instrument
/// @param reading  readings, as volume fractions from 0 to 1 at its reference temperature
/// @param celsius  temperatures in °C, -20 to the boiling point of the liquid at 101.325 kPa
/// @param strength alcoholic strengths by volume at the reference temperature, 0 to 1
/// @param valid    flags, or nothing
/// @return how many elements were out of range, or readings that no mixture gives
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// as `hydrometer::strength`
template <class Reference, readable S, readable C, writable R>
std::size_t strength(hydrometer<basic_volume_fraction<Reference>> const& meter, S const& reading,
                     C const& celsius, R&& strength, flags valid = {}) {
    using T = detail::element_of<R>;
    detail::reading_correction<T, Reference> const correction{T(meter.glass().value())};
    return detail::run<T>(correction, strength, valid, reading, celsius);
}

/// Vapours over boiling liquids, from an equilibrium curve.
/// @param curve  the equilibrium at one pressure
/// @param liquid mole fractions of ethanol in the liquid, 0 to 1
/// @param vapour mole fractions of ethanol in the vapour
/// @param valid  flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Accuracy
/// within 1e-7 of the model
/// @par Source
/// as `equilibrium_curve`
template <readable X, writable R>
std::size_t vapour(equilibrium_curve const& curve, X const& liquid, R&& vapour, flags valid = {}) {
    return detail::run<double>(detail::vapour_operation{&curve}, vapour, valid, liquid);
}

/// Vapours over boiling liquids, each under its own pressure, by the model itself.
/// @param liquid mole fractions of ethanol in the liquid, 0 to 1
/// @param pascals absolute pressures in Pa, what each liquid has between 0.01 and 120 °C
/// @param vapour mole fractions of ethanol in the vapour
/// @param valid  flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// as `bubble_point`
template <readable X, readable P, writable R>
std::size_t vapour(X const& liquid, P const& pascals, R&& vapour, flags valid = {}) {
    using operation = detail::bubble_point_operation<&model::vapour_liquid::equilibrium<double>::y>;
    return detail::run<double>(operation{}, vapour, valid, liquid, pascals);
}

/// Boiling temperatures, each under its own pressure, by the model itself.
/// @param liquid mole fractions of ethanol in the liquid, 0 to 1
/// @param pascals absolute pressures in Pa, what each liquid has between 0.01 and 120 °C
/// @param kelvin temperatures in K
/// @param valid  flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// as `bubble_point`
template <readable X, readable P, writable R>
std::size_t bubble_temperature(X const& liquid, P const& pascals, R&& kelvin, flags valid = {}) {
    using operation = detail::bubble_point_operation<&model::vapour_liquid::equilibrium<double>::temperature>;
    return detail::run<double>(operation{}, kelvin, valid, liquid, pascals);
}

/// Any checked function of `aqueth::plain` over arrays, one element after the other, where there is no faster
/// loop: `arrays::apply([](double n) { return plain::brix_from_refractive_index(n); }, brix, {}, n)`.
/// @param function callable: one number of each input -> `plain::checked` number
/// @param result   what it answers; NaN where it refuses. May be one of the inputs
/// @param valid    flags, or nothing: `{}`
/// @param first    arguments
/// @param rest     further arguments
/// @return how many elements were refused
/// @throws refusal if the arrays differ in length or the result overlaps an input partly; an exception of the
///         function passes, with the elements before it written
template <class Function, writable R, readable First, readable... Rest>
std::size_t apply(Function const& function, R&& result, flags valid, First const& first,
                  Rest const&... rest) {
    std::size_t const size = detail::require_arrays(result, valid, first, rest...);
    std::size_t refused = 0;
    for (std::size_t i = 0; i < size; ++i) {
        auto const found = function(first.data()[i], rest.data()[i]...);
        result.data()[i] = found.value;  // NaN where it was refused
        if (!valid.empty()) valid[i] = found.status.ok;
        if (!found.status.ok) ++refused;
    }
    return refused;
}

/// Viscosities, each at its own temperature.
/// @param mass_fraction mass fractions of ethanol, 0 to 1; above 70 °C to 0.6
/// @param celsius       temperatures in °C, 0 to 80
/// @param result        dynamic viscosities in mPa s
/// @param valid         flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// as the scalar function
template <readable W, readable C, writable R>
std::size_t viscosity(W const& mass_fraction, C const& celsius, R&& result, flags valid = {}) {
    using T = detail::element_of<R>;
    return apply([](T w, T t) { return plain::viscosity_mpa_s(w, t); }, result, valid, mass_fraction,
                 celsius);
}

/// Speeds of sound, each at its own temperature.
/// @param mass_fraction mass fractions of ethanol, 0 to 1
/// @param celsius       temperatures in °C, 20 to 35
/// @param result        speeds in m/s
/// @param valid         flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// as the scalar function
template <readable W, readable C, writable R>
std::size_t speed_of_sound(W const& mass_fraction, C const& celsius, R&& result, flags valid = {}) {
    using T = detail::element_of<R>;
    return apply([](T w, T t) { return plain::speed_of_sound_m_s(w, t); }, result, valid, mass_fraction,
                 celsius);
}

/// Thermal conductivities, each at its own temperature.
/// @param mass_fraction mass fractions of ethanol, 0.11 to 0.6
/// @param celsius       temperatures in °C, from the freezing point to 20
/// @param result        thermal conductivities in W/(m K)
/// @param valid         flags, or nothing
/// @return how many elements were out of range
/// @throws refusal if the arrays differ in length or the result overlaps an input partly
/// @par Source
/// as the scalar function
template <readable W, readable C, writable R>
std::size_t thermal_conductivity(W const& mass_fraction, C const& celsius, R&& result, flags valid = {}) {
    using T = detail::element_of<R>;
    return apply([](T w, T t) { return plain::thermal_conductivity_w_m_k(w, t); }, result, valid,
                 mass_fraction, celsius);
}

}  // namespace aqueth::inline AQUETH_ABI::arrays
