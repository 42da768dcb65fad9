// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/balling.hpp>
#include <aqueth/correlation/excise_notice_226.hpp>
#include <aqueth/correlation/fermentation.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/plain/status.hpp>
#include <aqueth/plain/wash.hpp>

#include <cmath>
#include <limits>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI {

/// Kinds of sugar for a wash.
enum class sugar {
    sucrose,             ///< table sugar, also maltose
    hexose,              ///< glucose and fructose, anhydrous: without water of crystallization
    glucose_monohydrate  ///< glucose with its water of crystallization: sold as dextrose (common
                         ///< practice)
};

}  // namespace aqueth::inline AQUETH_ABI

namespace aqueth::inline AQUETH_ABI::plain {

/// The greatest strength asked of yeast. Common practice: yeast ends below it. (G. P. Casey, C. A. Magnus and
/// W. M. Ingledew, Applied and Environmental Microbiology 48 (1984) 639, reached 16.2 % vol with well-fed
/// brewer's yeast.)
inline constexpr double greatest_wash_volume_fraction = 0.2;

/// A fermented wash. Not a number where there is no answer.
/// @tparam T float or double
template <number T>
struct fermented {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T volume_fraction = nan;        ///< alcoholic strength at 20 °C of the whole wash
    T ethanol_mass_fraction = nan;  ///< ethanol in the whole wash
    T plato = nan;                  ///< (real) extract, degrees Plato
};

/// What to weigh in for a wash. Not a number where there is no answer.
/// @tparam T float or double
template <number T>
struct sugar_plan {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T least_kg = nan;           ///< sugar, its water of crystallization included, if yeast made nothing but
                                ///< alcohol and carbon dioxide
    T practical_kg = nan;       ///< the same at the yield asked for
    T carbon_dioxide_kg = nan;  ///< gas given off
    T original_plato = nan;     ///< extract of the solution before fermentation, at the practical amount
    T specific_gravity = nan;   ///< its specific gravity 20/20 °C
    T water_kg = nan;           ///< water to add; what the crystals bring is not in it
};

namespace detail {

template <number T>
constexpr status attenuation_range(T original_plato, T now_plato, argument now) {
    status const original = within(argument::original_extract, original_plato, 0.01, highest_plato);
    if (!original.ok) return original;
    return within(now, now_plato, lowest_plato, double(original_plato), limit::nothing_fermented);
}

/// How a gravity is read from a density: a scale that is linear in it. Weighed in air, the mark 0 has a
/// density.
template <number T>
struct gravity_scale {
    T kg_m3_of_one;          ///< density at the mark 1
    T kg_m3_of_zero = T(0);  ///< density at the mark 0

    constexpr T mark(T kg_m3) const { return (kg_m3 - kg_m3_of_zero) / (kg_m3_of_one - kg_m3_of_zero); }
};

/// The wash of an original gravity for which the scale shows `found` at `celsius`; its gravity falls as it
/// ferments.
template <number T>
checked<fermented<T>> fermented_to(T original_gravity, T found, T celsius, gravity_scale<T> const& scale,
                                   argument refused, limit set_by) {
    using answer = checked<fermented<T>>;
    // Extract, gravity and extract again, or one reading corrected on two ways: rounding opens the ends.
    T const slack = std::is_same_v<T, float> ? T(2e-6) : T(1e-9);
    auto const there_and_back = plato_from_specific_gravity(original_gravity);
    if (!there_and_back.status.ok) return no_answer<fermented<T>>(there_and_back.status);
    T const end = std::is_same_v<T, float> ? T(1e-3) : slack;
    T const oe = std::abs(there_and_back.value - T(30)) < end ? T(30) : there_and_back.value;
    status const original = within(argument::original_extract, oe, 0.0, 30.0, limit::balling);
    if (!original.ok) return no_answer<fermented<T>>(original);
    auto const left = [oe](T a) {
        T const re = correlation::balling::real_extract_from_alcohol(oe, a);
        return re > T(0) ? re : T(0);
    };
    auto const shown = [&](T a) {
        return scale.mark(tabarie_density(a / T(100), left(a) / T(100), celsius));
    };
    T const most = correlation::balling::alcohol(oe, T(0));
    T const lowest = shown(most);
    T const highest = shown(T(0));
    if (!(lowest - slack <= found && found <= highest + slack))
        return no_answer<fermented<T>>(
            refuse(refused, double(found), double(lowest), double(highest), set_by));
    T a = numeric::bracketed_root([&](T tried) { return shown(tried) - found; }, T(0), most, T(1e-12));
    if (numeric::is_nan(a)) a = found >= highest ? T(0) : most;  // an end, missed by rounding
    T const rho = tabarie_density(a / T(100), left(a) / T(100), T(20));
    T const pure = correlation::oiml_r22::density(T(1), T(20));
    return answer{{a / T(100) * rho / pure, a / T(100), left(a)}, {}};
}

/// Masses in kg before and after a fermentation that reaches a share of what `yield` would give.
template <number T>
struct sugar_balance {
    T least;      ///< sugar, without water of crystallization, if all of it became alcohol and gas
    T practical;  ///< sugar at the share that is reached
    T gas;        ///< carbon dioxide
    T before;     ///< everything before fermentation

    sugar_balance(T litres, T volume_fraction, T yield, T share) {
        namespace r22 = correlation::oiml_r22;
        T const w = T(r22::mixture_at_20_celsius(double(volume_fraction)).mass_fraction());
        T const mass = T(1e-3) * litres * r22::density(w, T(20));
        T const ethanol = w * mass;
        least = ethanol / yield;
        practical = least / share;
        gas = T(correlation::fermentation::carbon_dioxide_per_ethanol) * ethanol;
        // Masses close: what is in the vat before is what is in it after, the gas, and the sugar that went
        // elsewhere. (The water that splits a sucrose is then in the water asked for, as it should be.)
        before = mass + gas + (practical - least);
    }

    T plato() const { return T(100) * practical / before; }  ///< extract before fermentation
};

}  // namespace detail

/// @name Attenuation
/// @{

/// Real extract of a fermented wash from the extract before and the apparent one after.
/// @param original_plato extract before fermentation in degrees Plato, 0 to 70
/// @param apparent_plato apparent extract after it, not above the original
/// @return real extract in degrees Plato; refuses what is out of range, and an apparent extract so low that
///         nothing could be left
/// @par Accuracy
/// As `aqueth::real_extract`: an average of beers, 0.05 to 0.19 °P less than measured.
/// @par Source
/// From memory of brewing texts.
template <number T>
constexpr checked<T> real_extract_plato(T original_plato, T apparent_plato) {
    namespace balling = correlation::balling;
    status const original = within(argument::original_extract, original_plato, 0.0, detail::highest_plato);
    if (!original.ok) return no_answer<T>(original);
    T const lowest = T(-balling::weight_of_original / balling::weight_of_apparent) * original_plato;
    status const range = within(argument::apparent_extract, apparent_plato, double(lowest),
                                double(original_plato), limit::nothing_left_to_nothing_fermented);
    if (!range.ok) return no_answer<T>(range);
    T const re = balling::real_extract(original_plato, apparent_plato);
    return {re > T(0) ? re : T(0), {}};
}

/// Share of the extract that has gone, as the saccharometer sees it.
/// @param original_plato extract before fermentation in degrees Plato, 0.01 to 70
/// @param now_plato      apparent extract now, -10 °P to the original
/// @return apparent attenuation; above 1 in a dry wash; refuses what is out of range
template <number T>
constexpr checked<T> apparent_attenuation(T original_plato, T now_plato) {
    status const range = detail::attenuation_range(original_plato, now_plato, argument::apparent_extract);
    if (!range.ok) return no_answer<T>(range);
    return {(original_plato - now_plato) / original_plato, {}};
}

/// Share of the extract that has gone in truth.
/// @param original_plato extract before fermentation in degrees Plato, 0.01 to 70
/// @param real_plato     real extract now, 0 to the original
/// @return real attenuation, 0 to 1; refuses what is out of range
template <number T>
constexpr checked<T> real_attenuation(T original_plato, T real_plato) {
    if (real_plato < T(0))
        return no_answer<T>(within(argument::real_extract, real_plato, 0.0, double(original_plato),
                                   limit::nothing_fermented));
    return apparent_attenuation(original_plato, real_plato);
}
/// @}

/// @name Strength from gravities
/// @{

/// Strength by Balling's balance of extract, alcohol, carbon dioxide and yeast.
/// @param original_plato extract before fermentation in degrees Plato, 0 to 30
/// @param real_plato     real extract after it, 0 to the original
/// @return mass fraction of ethanol; refuses what is out of range
/// @par Accuracy
/// As `aqueth::alcohol_by_balling`.
/// @par Source
/// @ref source_balling
template <number T>
constexpr checked<T> mass_fraction_by_balling(T original_plato, T real_plato) {
    status const original = within(argument::original_extract, original_plato, 0.0, 30.0, limit::balling);
    if (!original.ok) return no_answer<T>(original);
    status const real =
        within(argument::real_extract, real_plato, 0.0, double(original_plato), limit::nothing_fermented);
    if (!real.ok) return no_answer<T>(real);
    return {correlation::balling::alcohol(original_plato, real_plato) / T(100), {}};
}

/// Strength by Balling's printed factors, which give 0.4 % (at 6 °P) to 2.4 % (at 30 °P) less alcohol than
/// his balance with the usual real extract.
/// @param original_plato extract before fermentation in degrees Plato, 6 to 30
/// @param apparent_plato apparent extract after it, -10 °P to the original
/// @return mass fraction of ethanol; refuses what is out of range
/// @par Accuracy
/// As `aqueth::alcohol_by_balling_factors`.
/// @par Source
/// @ref source_balling
template <number T>
constexpr checked<T> mass_fraction_by_balling_factors(T original_plato, T apparent_plato) {
    status const original =
        within(argument::original_extract, original_plato, 6.0, 30.0, limit::balling_printed_table);
    if (!original.ok) return no_answer<T>(original);
    status const apparent = within(argument::apparent_extract, apparent_plato, detail::lowest_plato,
                                   double(original_plato), limit::nothing_fermented);
    if (!apparent.ok) return no_answer<T>(apparent);
    return {correlation::balling::factor(original_plato) * (original_plato - apparent_plato) / T(100), {}};
}

/// Strength by the fall in gravity alone, with the factors of the United Kingdom's excise.
/// @param original_gravity gravity before fermentation
/// @param final_gravity    gravity after it, not above the original, at most 0.1007 below it
/// @return alcoholic strength by volume, 0 to 1; refuses what is out of range
/// @par Accuracy
/// A rule for guidance, made for beer; its factors go in steps of 0.8 %.
/// @par Source
/// @ref source_excise_notice_226
template <number T>
constexpr checked<T> volume_fraction_by_gravity_fall(T original_gravity, T final_gravity) {
    namespace notice = correlation::excise_notice_226;
    for (T const gravity : {original_gravity, final_gravity}) {
        status const range = within(argument::specific_gravity, gravity, 0.5, 2.0);
        if (!range.ok) return no_answer<T>(range);
    }
    T const fall = T(1000) * (original_gravity - final_gravity);
    status const range = within(argument::fall, fall, 0.0, notice::greatest_fall, limit::excise_notice_226);
    if (!range.ok) return no_answer<T>(range);
    return {notice::percent_vol(fall) / T(100), {}};
}

/// The wash that must have come of it: the alcohol and extract that agree both with Balling's balance and
/// with the gravity found, by the library's own densities instead of the usual weights.
/// @param original_gravity gravity 20/20 °C before fermentation, to 30 °P
/// @param final_gravity    gravity 20/20 °C after it, not above the original
/// @return strength and extract of the wash; refuses what is out of range: too low a gravity means more
///         fermented than there was
/// @par Accuracy
/// As `aqueth::fermented_wash`; in `float` 1e-5 in the fractions more.
/// @par Source
/// @ref source_balling, @ref source_wash
template <number T>
checked<fermented<T>> fermented_wash_from_gravity(T original_gravity, T final_gravity) {
    return detail::fermented_to(original_gravity, final_gravity, T(20),
                                detail::gravity_scale<T>{detail::water_at_20_celsius<T>},
                                argument::final_gravity, limit::all_fermented_to_none);
}

/// The same from what a saccharometer shows in the wash as warm or cold as it is. How the wash expands
/// depends on what it holds, which is what is looked for: both come out at once.
/// @param original_gravity gravity 20/20 °C before fermentation, to 30 °P
/// @param reading          what the stem shows after it
/// @param celsius          temperature of the wash and of the instrument, 0 to 80 °C
/// @param kg_m3_of_one     density at which the stem shows 1 at that temperature, kg/m3, 500 to 1500
/// @param kg_m3_of_zero    density at which it would show 0, kg/m3, 0 to 10: above 0 only on a scale for
///                         weighing in air
/// @return strength and extract of the wash; refuses what is out of range
/// @par Accuracy
/// As from a gravity at 20 °C, and that of `true_gravity_from_density`.
/// @par Source
/// @ref source_balling, @ref source_wash
template <number T>
checked<fermented<T>> fermented_wash_from_reading(T original_gravity, T reading, T celsius, T kg_m3_of_one,
                                                  T kg_m3_of_zero = T(0)) {
    status const range = detail::wash_temperature_range(celsius);
    if (!range.ok) return no_answer<fermented<T>>(range);
    status const meter = within(argument::density_behind_the_reading, kg_m3_of_one, 500.0, 1500.0);
    if (!meter.ok) return no_answer<fermented<T>>(meter);
    status const air = within(argument::density, kg_m3_of_zero, 0.0, 10.0);
    if (!air.ok) return no_answer<fermented<T>>(air);
    return detail::fermented_to(original_gravity, reading, celsius,
                                detail::gravity_scale<T>{kg_m3_of_one, kg_m3_of_zero}, argument::reading,
                                limit::all_fermented_to_none_at_that_temperature);
}
/// @}

/// Sugar for a wash of a wanted strength and volume.
/// @param litres          volume of the fermented wash at 20 °C, above 0
/// @param volume_fraction alcoholic strength wanted, up to `greatest_wash_volume_fraction`
/// @param kind            sugar used
/// @param share           share of the stoichiometric yield that is reached, 0.3 to 1. Unless given it is
///                        Balling's yield over that of sucrose, 0.90
/// @return the plan; refuses what is out of range, and a strength for which the wash would begin above 30 °P
///         at that share: the upper bound is then what is reachable. The fermented wash is taken to hold no
///         sugar; yeast solids and nutrients are left out.
/// @par Accuracy
/// As `aqueth::sugar_needed`: the share reached decides.
/// @par Source
/// @ref source_wash
template <number T>
checked<sugar_plan<T>> sugar_needed(T litres, T volume_fraction, sugar kind = sugar::sucrose,
                                    T share = T(correlation::fermentation::practical_share)) {
    namespace f = correlation::fermentation;
    status const volume = within(argument::volume, litres, 1e-6, unlimited);
    if (!volume.ok) return no_answer<sugar_plan<T>>(volume);
    double const weakest = 1e-4;
    status const strength = within(argument::strength, volume_fraction, weakest,
                                   greatest_wash_volume_fraction, limit::yeast_common_practice);
    if (!strength.ok) return no_answer<sugar_plan<T>>(strength);
    status const reached = within(argument::share_of_the_stoichiometric_yield, share, 0.3, 1.0);
    if (!reached.ok) return no_answer<sugar_plan<T>>(reached);
    T const yield = T(kind == sugar::sucrose ? f::ethanol_per_disaccharide : f::ethanol_per_hexose);
    T const crystals = T(kind == sugar::glucose_monohydrate ? f::glucose_monohydrate / f::hexose : 1.0);
    auto const balance = [&](T q) { return detail::sugar_balance<T>(litres, q, yield, share); };
    auto const b = balance(volume_fraction);
    // More is no wash that anything else here would judge, and at poor yields most of it would stay sugar.
    T const most = T(30);
    if (b.plato() > most) {
        auto const excess = [&](T q) { return balance(q).plato() - most; };
        T const reachable = numeric::bracketed_root(excess, T(weakest), volume_fraction, T(1e-11));
        return no_answer<sugar_plan<T>>(refuse(argument::strength, double(volume_fraction), weakest,
                                               double(reachable), limit::begins_above_30_plato));
    }
    T const practical = crystals * b.practical;
    return {{crystals * b.least, practical, b.gas, b.plato(), detail::specific_gravity_of_solution(b.plato()),
             b.before - practical},
            {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
