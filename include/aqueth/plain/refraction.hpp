// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/balling.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/model/methanol_water.hpp>
#include <aqueth/model/refraction.hpp>
#include <aqueth/model/sugar_solution.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/plain/attenuation.hpp>
#include <aqueth/plain/status.hpp>
#include <aqueth/plain/sweetening.hpp>
#include <aqueth/plain/wash.hpp>

#include <cmath>
#include <limits>

namespace aqueth::inline AQUETH_ABI::plain {

/// Methanol in an unsweetened spirit, from its density and its refractive index.
template <number T>
struct methanol_in_spirit {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T share = nan;    ///< mass of methanol over that of both alcohols; rounding and noise may pass 0 or 1
    T alcohol = nan;  ///< mass fraction of both alcohols together
    T share_per_index = nan;  ///< what one unit of the index is worth in the share
};

namespace detail {

inline constexpr double highest_brix = 70.0;
/// As far as this may noise put an index outside those of the pure alcohols.
inline constexpr double index_noise = 0.0005;
/// Below this mass fraction methanol and ethanol are too alike.
inline constexpr double least_for_methanol = 0.05;

template <number T>
T sucrose_index(T plato) {
    return model::refraction::index(T(0), plato / T(100), sweetener::sucrose);
}

template <number T>
inline constexpr T accepted_fraction = std::is_same_v<T, float> ? T(1e-6) : T(1e-13);

/// Mass fractions of ethanol and sugar that have one density; their indices rise from one end to the other.
template <number T>
class of_one_density {
public:
    explicit of_one_density(T kg_m3) : kg_m3_(kg_m3) {
        T const water = water_at_20_celsius<T>;
        first_ = kg_m3 < water ? correlation::oiml_r22::mass_fraction_from_density(kg_m3, T(20)) : T(0);
        last_ = T(most_ethanol_);
        auto const saturated = [&](T ethanol) { return density(ethanol, most_sugar(ethanol)) - kg_m3_; };
        if (saturated(last_) < T(0))
            last_ = numeric::bracketed_root(saturated, first_, last_, accepted_fraction<T>);
    }
    T first() const { return first_; }  ///< mass fraction of ethanol at the low end: no sugar, or no ethanol
    T last() const { return last_; }    ///< at the high end: half ethanol, or as much sugar as dissolves

    T sugar(T ethanol) const {
        if (kg_m3_ <= density(ethanol, T(0))) return T(0);
        T const most = most_sugar(ethanol);
        T const found = numeric::bracketed_root([&](T s) { return density(ethanol, s) - kg_m3_; }, T(0), most,
                                                accepted_fraction<T>);
        return numeric::is_nan(found) ? most : found;  // an end, missed by rounding
    }
    T index(T ethanol) const { return model::refraction::index(ethanol, sugar(ethanol), sweetener::sucrose); }

    static T density(T ethanol, T solids) {
        return model::sugar_solution::density(ethanol, solids, sweetener::sucrose, T(20));
    }
    static constexpr double most_ethanol_ = 0.5;

private:
    static T most_sugar(T ethanol) {
        return T(model::sugar_solution::highest_mass_fraction(sweetener::sucrose)) * (T(1) - ethanol);
    }

    T kg_m3_, first_, last_;
};

}  // namespace detail

/// Refractive index of ethanol, water and sugar at 20 °C, 589 nm, relative to air.
/// @param composition mass fractions of ethanol and sugar in the whole; ethanol at most 98 % of ethanol and
///                    water, sucrose at most 70 % of sugar and water, glucose 50 %, the others 48 %
/// @param kind        which sugar
/// @return refractive index; refuses what is out of range
/// @par Accuracy
/// Root mean square 0.00005 for ethanol and 0.00004 for sugars against the handbook, whose last digit is
/// 0.0001. The model assumes that ethanol and sugar do not change each other's refraction.
/// @par Source
/// @ref source_refraction
template <number T>
checked<T> refractive_index(sweet_composition<T> const& composition, sweetener kind) {
    status range = detail::sweet_range(composition.ethanol, composition.sugar, kind, T(20));
    if (range.ok)
        range = within(argument::mass_fraction, composition.ethanol / (T(1) - composition.sugar), 0.0,
                       model::refraction::highest_mass_fraction, limit::refraction_tables);
    if (!range.ok) return no_answer<T>(range);
    return {model::refraction::index(composition.ethanol, composition.sugar, kind), {}};
}

/// Refractive index at which a refractometer shows a number of degrees Brix: that of a sucrose solution of
/// that mass percentage at 20 °C.
/// @param brix 0 to 70 °Bx
/// @return refractive index at 589 nm relative to air; refuses what is out of range
/// @par Accuracy
/// Root mean square 0.00003, largest 0.00009 against the handbook: 0.02 and 0.06 °Bx.
/// @par Source
/// @ref source_refraction
template <number T>
checked<T> refractive_index_from_brix(T brix) {
    status const range =
        within(argument::refractometer_reading, brix, 0.0, detail::highest_brix, limit::brix_scale);
    if (!range.ok) return no_answer<T>(range);
    return {detail::sucrose_index(brix), {}};
}

/// What a refractometer in degrees Brix shows: the inverse of `refractive_index_from_brix`.
/// @param refractive_index at 20 °C, 589 nm, relative to air; from that of water to that of 70 °Bx
/// @return °Bx; refuses what is out of range
/// @par Source
/// @ref source_refraction
template <number T>
checked<T> brix_from_refractive_index(T refractive_index) {
    T const water = detail::sucrose_index(T(0)), last = detail::sucrose_index(T(detail::highest_brix));
    T const rounded = T(4) * std::numeric_limits<T>::epsilon();
    status const range = within(argument::refractive_index, refractive_index, double(water - rounded),
                                double(last + rounded), limit::brix_scale);
    if (!range.ok) return no_answer<T>(range);
    if (refractive_index <= water) return {T(0), {}};
    T const found =
        numeric::bracketed_root([&](T brix) { return detail::sucrose_index(brix) - refractive_index; }, T(0),
                                T(detail::highest_brix), std::is_same_v<T, float> ? T(1e-4) : T(1e-11));
    return {numeric::is_nan(found) ? T(detail::highest_brix) : found, {}};
}

/// Alcohol and extract of a wash, or of a sweetened spirit, from its density and its refractive index. Both
/// rise with the extract; ethanol lowers the density and raises the index.
/// @param kg_m3            density at 20 °C
/// @param refractive_index at 20 °C, 589 nm, relative to air
/// @return strength, ethanol and extract counted as sucrose; refuses what is out of range, and an index that
///         no ethanol (to 50 % mass) and sucrose of this density have
/// @par Accuracy
/// An index known to 0.0001 and a density known to 0.1 kg/m3 give the alcohol to 0.08 % mass and the extract
/// to 0.04 %. Where the extract is not sucrose the doubt is larger: dextrins, acids and salts bend light
/// differently for their density.
/// @par Source
/// @ref source_refraction, @ref source_sugar_solution
template <number T>
checked<fermented<T>> wash_from_density_and_index(T kg_m3, T refractive_index) {
    T const lightest = detail::of_one_density<T>::density(T(detail::of_one_density<T>::most_ethanol_), T(0));
    T const heaviest = detail::of_one_density<T>::density(
        T(0), T(model::sugar_solution::highest_mass_fraction(sweetener::sucrose)));
    status const density =
        within(argument::density, kg_m3, double(lightest), double(heaviest), limit::refraction_tables);
    if (!density.ok) return no_answer<fermented<T>>(density);
    detail::of_one_density<T> const line(kg_m3);
    T const low = line.index(line.first()), high = line.index(line.last());
    T const rounded = std::is_same_v<T, float> ? T(1e-6) : T(1e-12);
    status const index = within(argument::refractive_index, refractive_index, double(low - rounded),
                                double(high + rounded), limit::ethanol_and_sugar_of_this_density);
    if (!index.ok) return no_answer<fermented<T>>(index);
    T ethanol = numeric::bracketed_root([&](T tried) { return line.index(tried) - refractive_index; },
                                        line.first(), line.last(), detail::accepted_fraction<T>);
    if (numeric::is_nan(ethanol)) ethanol = refractive_index <= low ? line.first() : line.last();
    return {{ethanol * kg_m3 / detail::pure_at_20_celsius<T>, ethanol, T(100) * line.sugar(ethanol)}, {}};
}

/// The wash of an original gravity in which a refractometer shows a reading now: Balling's balance says how
/// much alcohol and extract there are, the index how far the fermentation is.
/// @param original_gravity specific gravity 20/20 °C before fermentation, to 30 °P
/// @param brix             what a refractometer shows at 20 °C, °Bx
/// @return strength, ethanol and real extract; refuses what is out of range
/// @par Accuracy
/// Of the alcohol, 0.1 °Bx is 0.07 % mass; an extract that is not sucrose adds to it.
/// @par Source
/// @ref source_balling, @ref source_refraction
template <number T>
checked<fermented<T>> wash_from_original_gravity_and_brix(T original_gravity, T brix) {
    using answer = checked<fermented<T>>;
    auto const oe = plato_from_specific_gravity(original_gravity);
    if (!oe.status.ok) return no_answer<fermented<T>>(oe.status);
    T const end = std::is_same_v<T, float> ? T(1e-3) : T(1e-9);
    status const original =
        within(argument::original_extract, oe.value, 0.01, 30.0 + double(end), limit::balling);
    if (!original.ok) return no_answer<fermented<T>>(original);
    auto const left = [&](T a) {
        T const re = correlation::balling::real_extract_from_alcohol(oe.value, a);
        return re > T(0) ? re : T(0);
    };
    auto const shown = [&](T a) {
        return brix_from_refractive_index(
                   model::refraction::index(a / T(100), left(a) / T(100), sweetener::sucrose))
            .value;
    };
    T const most = correlation::balling::alcohol(oe.value, T(0));
    T const lowest = shown(most), highest = shown(T(0));
    status const range = within(argument::refractometer_reading, brix, double(lowest - end),
                                double(highest + end), limit::all_fermented_to_none_at_20_celsius);
    if (!range.ok) return no_answer<fermented<T>>(range);
    T a = numeric::bracketed_root([&](T tried) { return shown(tried) - brix; }, T(0), most,
                                  std::is_same_v<T, float> ? T(1e-4) : T(1e-11));
    if (numeric::is_nan(a)) a = brix >= highest ? T(0) : most;  // an end, missed by rounding
    T const rho = model::sugar_solution::density(a / T(100), left(a) / T(100), sweetener::sucrose, T(20));
    return answer{{a / T(100) * rho / detail::pure_at_20_celsius<T>, a / T(100), left(a)}, {}};
}

/// Methanol put in place of ethanol in an unsweetened spirit: mixtures of equal density differ in their
/// refractive index.
///
/// It finds substitution, not the limits of law: 10 to 1500 g of methanol in 100 L of pure alcohol are 0.01
/// to 2 %, and what it can see is 0.7 to 11 % of the alcohol. A tenth of a gram of sugar in a litre is
/// already 0.000015 in the index. Safety of a spirit needs a laboratory.
/// @param kg_m3            density at 20 °C, between those of 98 and 5 % mass
/// @param refractive_index at 20 °C, 589 nm, relative to air
/// @return share of methanol in the alcohols by mass; refuses what is out of range
/// @par Accuracy
/// An index known to 0.0002 gives the share to 11 % at 5 % mass, 2.2 % at 20, 1.3 % at 40, 0.7 % at 90. That
/// the index is linear in the share at one density is an assumption (Leach and Lythgoe, 1905).
/// @par Source
/// @ref source_methanol_index
template <number T>
checked<methanol_in_spirit<T>> methanol_from_density_and_index(T kg_m3, T refractive_index) {
    using answer = methanol_in_spirit<T>;
    namespace methanol = model::methanol_water;
    T const lightest = methanol::density(T(methanol::highest_mass_fraction));
    T const heaviest = correlation::oiml_r22::density(T(detail::least_for_methanol), T(20));
    status const density =
        within(argument::density, kg_m3, double(lightest), double(heaviest), limit::refraction_tables);
    if (!density.ok) return no_answer<answer>(density);
    T const ethanol = correlation::oiml_r22::mass_fraction_from_density(kg_m3, T(20));
    T const other = numeric::bracketed_root([&](T w) { return methanol::density(w) - kg_m3; }, T(0),
                                            T(methanol::highest_mass_fraction), detail::accepted_fraction<T>);
    T const methanol_mass = numeric::is_nan(other) ? T(methanol::highest_mass_fraction) : other;
    T const pure = model::refraction::index(ethanol, T(0), sweetener::sucrose);
    T const substituted = methanol::index(methanol_mass);
    status const index =
        within(argument::refractive_index, refractive_index, double(substituted) - detail::index_noise,
               double(pure) + detail::index_noise, limit::ethanol_to_methanol_at_this_density);
    if (!index.ok) return no_answer<answer>(index);
    T const per_index = T(1) / (pure - substituted);
    T const share = (pure - refractive_index) * per_index;
    return {{share, share * methanol_mass + (T(1) - share) * ethanol, per_index}, {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
