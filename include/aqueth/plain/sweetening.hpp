// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/model/sample_distillation.hpp>
#include <aqueth/model/sugar_solution.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/plain/density.hpp>
#include <aqueth/plain/parcel.hpp>
#include <aqueth/plain/status.hpp>
#include <aqueth/plain/strength.hpp>
#include <aqueth/plain/wash.hpp>

#include <array>
#include <cmath>
#include <limits>
#include <type_traits>

namespace aqueth::inline AQUETH_ABI::plain {

/// Unknown error of the sugar's volume where ethanol is present: 1 % to either side. A judgement of this
/// library: nothing measured was read beyond the `analysed_liquids`. The beers allow 1.3 %; the wines alone
/// would allow 5 %, if what else they hold did not depend on their sugar.
inline constexpr double sugar_volume_doubt = 0.01;

/// Strength and sugar of a wine or a beer that was analysed.
struct analysed_liquid {
    double volume_fraction;  ///< alcoholic strength at 20 °C
    double g_per_litre;      ///< sugar of a wine or malt extract of a beer, g/L at 20 °C
};

/// The analysed wines and beers that no other exceeds in both strength and sugar, the strongest first
/// (`tables/white_wines_2009.csv`, `tables/wahl_henius_beers.csv`). The last four are beers.
inline constexpr std::array<analysed_liquid, 13> analysed_liquids{{{0.140, 1.2},
                                                                   {0.137, 4.5},
                                                                   {0.132, 5.45},
                                                                   {0.130, 11.1},
                                                                   {0.115, 14.0},
                                                                   {0.112, 16.2},
                                                                   {0.110, 19.8},
                                                                   {0.088, 20.7},
                                                                   {0.087, 22.0},
                                                                   {0.0564, 48.5},
                                                                   {0.0535, 60.1},
                                                                   {0.0493, 62.9},
                                                                   {0.0486, 65.7}}};

/// A spirit with dissolved sugar. The numbers are not checked until a function uses them.
template <number T>
struct sweetened {
    parcel<T> spirit;                                  ///< the ethanol and water in it
    T sugar_kg = std::numeric_limits<T>::quiet_NaN();  ///< mass of the sugar, kg
    sweetener kind = sweetener::sucrose;               ///< which sugar

    friend constexpr bool operator==(sweetened const&, sweetened const&) = default;  ///< equal in every part
};

/// Composition of a sweetened spirit in mass fractions of the whole.
template <number T>
struct sweet_composition {
    T ethanol = std::numeric_limits<T>::quiet_NaN();  ///< mass fraction of ethanol, 0 to 1
    T sugar = std::numeric_limits<T>::quiet_NaN();    ///< mass fraction of sugar, 0 to 1
};

/// What to weigh for a sweetened spirit.
template <number T>
struct sweetening_plan {
    static constexpr T nan = std::numeric_limits<T>::quiet_NaN();  ///< not answered

    T spirit_kg = nan;           ///< spirit
    T water_kg = nan;            ///< water to add
    T sugar_kg = nan;            ///< sugar to add
    T litres = nan;              ///< volume of the product at 20 °C
    T contraction_litres = nan;  ///< volume lost by spirit and water in mixing, at 20 °C
    T sugar_litres = nan;        ///< volume that the dissolved sugar adds, at 20 °C
};

/// @param volume_fraction alcoholic strength at 20 °C
/// @param g_per_litre     sugar, g/L at 20 °C
/// @return whether analyses checked the density of such a liquid: whether one of the `analysed_liquids` is at
///         least as strong and as sweet, or there is no sugar
template <number T>
constexpr bool sweetening_checked(T volume_fraction, T g_per_litre) {
    if (g_per_litre == T(0)) return true;
    for (analysed_liquid const& each : analysed_liquids) {
        T const rounding = T(1) + T(1e-6);  // of the conversions
        if (volume_fraction <= T(each.volume_fraction) * rounding &&
            g_per_litre <= T(each.g_per_litre) * rounding)
            return true;
    }
    return false;
}

namespace detail {

/// Where OIML R 22 holds and water is liquid: nothing warmer was compared with anything.
template <number T>
constexpr status sweet_temperature_range(T celsius) {
    return within(argument::temperature, celsius, 0.0, correlation::oiml_r22::highest_celsius,
                  limit::oiml_r22_water_liquid);
}

/// Mass of sugar over mass of water at the end of the sugar's table.
template <number T>
constexpr T most_sugar_per_water(sweetener kind) {
    T const c = T(model::sugar_solution::highest_mass_fraction(kind));
    return c / (T(1) - c);
}

template <number T>
constexpr status dissolved_range(T sugar, T water, sweetener kind) {
    if (sugar == T(0)) return {};
    T const slack = T(16) * std::numeric_limits<T>::epsilon();
    return within(argument::sugar_in_its_water, sugar / (sugar + water) * (T(1) - slack), 0.0,
                  model::sugar_solution::highest_mass_fraction(kind), limit::dissolved_by_its_water);
}

template <number T>
constexpr status sweet_range(T ethanol, T sugar, sweetener kind, T celsius) {
    status range = within(argument::mass_fraction, ethanol, 0.0, 1.0);
    if (range.ok) range = within(argument::sugar_in_its_water, sugar, 0.0, 1.0);
    if (range.ok) range = sweet_temperature_range(celsius);
    if (!range.ok) return range;
    T const water = T(1) - ethanol - sugar;
    return dissolved_range(sugar, water, kind);  // from 0 °C up every mixture is liquid
}

/// Masses in a cubic metre at 20 °C, kg.
template <number T>
struct cubic_metre {
    T ethanol, water, sugar;

    T volume(sweetener kind, T celsius) const {
        return model::sugar_solution::volume(ethanol, water, sugar, kind, celsius);
    }
    T density(sweetener kind, T celsius) const {
        if (sugar == T(0) && celsius == T(20)) return ethanol + water;
        return (ethanol + water + sugar) / volume(kind, celsius);
    }
};

/// Allowance for the rounding of a density at an end of what dissolves, kg/m3.
template <number T>
inline constexpr double rounding_of_the_ends = std::is_same_v<T, float> ? 2e-3 : 1e-6;

template <number T>
inline constexpr T pure_at_20_celsius = correlation::oiml_r22::density(T(1), T(20));

/// The most sugar that a cubic metre of this strength holds with the water to dissolve it, kg.
template <number T>
T most_sugar(T ethanol, sweetener kind) {
    T const ratio = most_sugar_per_water<T>(kind);
    auto const filled = [&](T s) {
        return model::sugar_solution::volume(ethanol, s / ratio, s, kind, T(20)) - T(1);
    };
    T const least = T(1e-6);
    return filled(least) < T(0) ? numeric::bracketed_root(filled, least, T(1500), T(1e-7)) : T(0);
}

/// The most ethanol in a cubic metre with this much sugar, and the water to dissolve it, kg.
template <number T>
T most_ethanol(T sugar, sweetener kind) {
    if (sugar == T(0)) return pure_at_20_celsius<T>;
    T const water = sugar / most_sugar_per_water<T>(kind);
    auto const filled = [&](T e) {
        return model::sugar_solution::volume(e, water, sugar, kind, T(20)) - T(1);
    };
    return filled(T(0)) < T(0) ? numeric::bracketed_root(filled, T(0), T(800), T(1e-9)) : T(0);
}

/// The water that fills a cubic metre at 20 °C beside ethanol and sugar; both have been checked to fit.
template <number T>
cubic_metre<T> filled_up(T ethanol, T sugar, sweetener kind) {
    if (sugar == T(0)) {
        correlation::oiml_r22::isotherm<T> const at_20(T(20));
        T const w = correlation::oiml_r22::mass_fraction_from_concentration(at_20, ethanol);
        return {ethanol, at_20.density(w) - ethanol, sugar};
    }
    T const least = sugar / most_sugar_per_water<T>(kind);
    auto const filled = [&](T water) {
        return model::sugar_solution::volume(ethanol, water, sugar, kind, T(20)) - T(1);
    };
    T const accepted = std::is_same_v<T, float> ? T(1e-4) : T(1e-11);
    T const water = numeric::bracketed_root(filled, least, T(1100), accepted);
    return {ethanol, numeric::is_nan(water) ? least : water, sugar};  // an end, missed by rounding
}

template <number T>
status sugar_range(T ethanol, T g_per_litre, sweetener kind) {
    status const finite = within(argument::sugar_concentration, g_per_litre, 0.0, unlimited);
    if (!finite.ok || g_per_litre == T(0)) return finite;
    T const most = most_sugar(ethanol, kind);
    T const slack = T(1e-6) * most;
    if (g_per_litre <= most + slack) return {};
    return refuse(argument::sugar_concentration, double(g_per_litre), 0.0, double(most),
                  limit::with_this_strength);
}

/// The recipe of a cubic metre of the product.
template <number T>
checked<cubic_metre<T>> sweet_recipe(T volume_fraction, T g_per_litre, sweetener kind) {
    status const strength = within(argument::alcoholic_strength_by_volume, volume_fraction, 0.0, 1.0);
    if (!strength.ok) return {{}, strength};
    T const ethanol = volume_fraction * pure_at_20_celsius<T>;
    status const sugar = sugar_range(ethanol, g_per_litre, kind);
    if (!sugar.ok) return {{}, sugar};
    return {filled_up(ethanol, g_per_litre, kind), {}};
}

}  // namespace detail

/// Density of a sweetened spirit by additive apparent volumes.
/// @param composition mass fractions of ethanol and sugar in the whole, each 0 to 1, with the water to
///                    dissolve the sugar: sucrose at most 70 % of sugar and water, glucose 50 %, fructose and
///                    invert sugar 48 %
/// @param kind        which sugar
/// @param celsius     temperature, 0 to 40 °C
/// @return density, kg/m3; without sugar that of `density_kg_m3`, to the last digit; refuses what is out of
///         range
/// @par Accuracy
/// Analyses agree: wines to 14 % vol with at most 22 g/L, beers of about 5 % vol with up to 66 g/L of malt
/// extract. Nothing measured was read beyond (`sweetening_checked`): 1 % in the sugar's volume at 300 g/L is
/// 1.9 kg/m3, or 1.0 % vol at 40 % vol.
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<T> sweet_density_kg_m3(sweet_composition<T> const& composition, sweetener kind, T celsius) {
    status const range = detail::sweet_range(composition.ethanol, composition.sugar, kind, celsius);
    if (!range.ok) return no_answer<T>(range);
    if (composition.sugar == T(0))  // a spirit, to the last digit
        return {correlation::oiml_r22::density(composition.ethanol, celsius), {}};
    return {model::sugar_solution::density(composition.ethanol, composition.sugar, kind, celsius), {}};
}

/// @param of_this sweetened spirit
/// @return whether it is one: a parcel of 0 to 40 °C, and sugar that its water dissolves
template <number T>
constexpr status sweetened_range(sweetened<T> const& of_this) {
    status range = parcel_range(of_this.spirit);
    if (range.ok) range = detail::sweet_temperature_range(of_this.spirit.celsius);
    if (range.ok) range = within(argument::mass_of_the_sugar, of_this.sugar_kg, 0.0, unlimited);
    if (!range.ok) return range;
    return detail::dissolved_range(
        of_this.sugar_kg, (T(1) - of_this.spirit.mass_fraction) * of_this.spirit.mass_kg, of_this.kind);
}

/// @param of_this sweetened spirit
/// @param celsius temperature, 0 to 40 °C
/// @return volume it has at that temperature, L; refuses what is out of range
/// @par Accuracy
/// As `sweet_density_kg_m3`.
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<T> sweetened_litres(sweetened<T> const& of_this, T celsius) {
    status range = sweetened_range(of_this);
    if (range.ok) range = detail::sweet_temperature_range(celsius);
    if (!range.ok) return no_answer<T>(range);
    auto const without = detail::volume_m3(of_this.spirit, celsius);
    if (!without.status.ok || of_this.sugar_kg == T(0)) return detail::in_litres(without);
    T const water = (T(1) - of_this.spirit.mass_fraction) * of_this.spirit.mass_kg;
    T const c = of_this.sugar_kg / (of_this.sugar_kg + water);
    T const sugar = of_this.sugar_kg * model::sugar_solution::apparent_volume(of_this.kind, c, celsius);
    return detail::in_litres(checked<T>{without.value + sugar, {}});
}

/// @param of_this sweetened spirit
/// @return alcoholic strength at 20 °C of the whole; 0 of nothing; refuses what is no sweetened spirit
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<T> sweetened_volume_fraction(sweetened<T> const& of_this) {
    auto const litres = sweetened_litres(of_this, T(20));
    if (!litres.status.ok) return litres;
    if (of_this.sugar_kg == T(0))
        return strength_in<volume_basis<at_20_celsius>>(of_this.spirit.mass_fraction);
    return {of_this.spirit.mass_kg * of_this.spirit.mass_fraction / detail::pure_at_20_celsius<T> /
                (litres.value * detail::cubic_metres_per_litre<T>),
            {}};
}

/// @param of_this sweetened spirit
/// @return sugar, g/L at 20 °C; 0 of nothing; refuses what is no sweetened spirit
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<T> sweetened_sugar_g_per_litre(sweetened<T> const& of_this) {
    auto const litres = sweetened_litres(of_this, T(20));
    if (!litres.status.ok) return litres;
    return {of_this.sugar_kg == T(0) ? T(0) : T(1000) * of_this.sugar_kg / litres.value, {}};
}

/// Composition of a sweetened spirit from its strength and sugar.
/// @param volume_fraction alcoholic strength at 20 °C of the whole, 0 to 1
/// @param g_per_litre     sugar, g/L at 20 °C, 0 to what its water dissolves
/// @param kind            which sugar
/// @return mass fractions of the whole; refuses what is out of range
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<sweet_composition<T>> sweet_composition_from_strength(T volume_fraction, T g_per_litre,
                                                              sweetener kind) {
    auto const made = detail::sweet_recipe(volume_fraction, g_per_litre, kind);
    if (!made.status.ok) return no_answer<sweet_composition<T>>(made.status);
    T const whole = made.value.ethanol + made.value.water + made.value.sugar;
    return {{made.value.ethanol / whole, made.value.sugar / whole}, {}};
}

/// Strength behind a density: obscuration undone.
/// @param kg_m3       density at `celsius`, which `hydrometer::density_kg_m3` gives for a reading
/// @param celsius     temperature, 0 to 40 °C
/// @param g_per_litre sugar, g/L at 20 °C
/// @param kind        which sugar
/// @return alcoholic strength at 20 °C of the whole; refuses what is out of range
/// @par Accuracy
/// As `sweet_density_kg_m3`.
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<T> strength_behind_sugar(T kg_m3, T celsius, T g_per_litre, sweetener kind) {
    status const range = detail::sweet_temperature_range(celsius);
    if (!range.ok) return no_answer<T>(range);
    if (g_per_litre == T(0)) {  // a plain spirit, to the last digit
        auto const w = mass_fraction_from_density(kg_m3, celsius);
        if (!w.status.ok) return w;
        return strength_in<volume_basis<at_20_celsius>>(w.value);
    }
    status const sugar = detail::sugar_range(T(0), g_per_litre, kind);
    if (!sugar.ok) return no_answer<T>(sugar);
    auto const density = [&](T ethanol) {
        return detail::filled_up(ethanol, g_per_litre, kind).density(kind, celsius);
    };
    T const most = detail::most_ethanol(g_per_litre, kind);
    double const slack = detail::rounding_of_the_ends<T>;
    T const heaviest = density(T(0)), lightest = density(most);
    status const reachable = within(argument::density_behind_the_reading, kg_m3, double(lightest) - slack,
                                    double(heaviest) + slack, limit::with_this_sugar);
    if (!reachable.ok) return no_answer<T>(reachable);
    T const accepted = std::is_same_v<T, float> ? T(1e-3) : T(1e-9);
    T ethanol =
        numeric::bracketed_root([&](T tried) { return density(tried) - kg_m3; }, T(0), most, accepted);
    if (numeric::is_nan(ethanol)) ethanol = kg_m3 >= heaviest ? T(0) : most;  // an end, missed by rounding
    return {ethanol / detail::pure_at_20_celsius<T>, {}};
}

/// Sugar behind a density and a strength that is known, as from a distilled sample: dry extract by additive
/// apparent volumes.
/// @param kg_m3           density at 20 °C
/// @param volume_fraction alcoholic strength at 20 °C of the whole, 0 to 1
/// @param kind            which sugar
/// @return sugar, g/L at 20 °C; refuses what is out of range
/// @par Accuracy
/// As `sweet_density_kg_m3`: 1 % in the sugar's volume is 1.6 % of the sugar.
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<T> sugar_behind_density_g_per_litre(T kg_m3, T volume_fraction, sweetener kind) {
    status const strength = within(argument::alcoholic_strength_by_volume, volume_fraction, 0.0, 1.0);
    if (!strength.ok) return no_answer<T>(strength);
    T const ethanol = volume_fraction * detail::pure_at_20_celsius<T>;
    auto const density = [&](T sugar) {
        return detail::filled_up(ethanol, sugar, kind).density(kind, T(20));
    };
    T const most = detail::most_sugar(ethanol, kind);
    double const slack = detail::rounding_of_the_ends<T>;
    T const lightest = density(T(0)), heaviest = density(most);
    status const reachable = within(argument::density, kg_m3, double(lightest) - slack,
                                    double(heaviest) + slack, limit::with_this_strength);
    if (!reachable.ok) return no_answer<T>(reachable);
    if (kg_m3 <= lightest + T(slack)) return {T(0), {}};
    T const accepted = std::is_same_v<T, float> ? T(1e-3) : T(1e-9);
    T const sugar =
        numeric::bracketed_root([&](T tried) { return density(tried) - kg_m3; }, T(0), most, accepted);
    return {numeric::is_nan(sugar) ? most : sugar, {}};
}

/// Dry extract by Tabarie's relation: the residue made up to the volume of the sample has its density, less
/// that of the distillate, plus that of water, all at 20 °C.
/// @param kg_m3           density of the sample at 20 °C
/// @param volume_fraction its alcoholic strength at 20 °C, to 18 % mass of ethanol without sugar
/// @return extract counted as sucrose, g/L at 20 °C; refuses what is out of range
/// @par Accuracy
/// Within the uncertainty of measurement below 5 % sucrose and 18 % ethanol by mass (@ref source_wash,
/// Hackbarth). Not for liqueurs: use `sugar_behind_density_g_per_litre`.
/// @par Source
/// @ref source_wash
template <number T>
checked<T> tabarie_extract_g_per_litre(T kg_m3, T volume_fraction) {
    namespace r22 = correlation::oiml_r22;
    r22::isotherm<T> const at_20(T(20));
    T const greatest = T(0.18) * at_20.density(T(0.18)) / detail::pure_at_20_celsius<T>;
    status const strength = within(argument::alcoholic_strength_by_volume, volume_fraction, 0.0,
                                   double(greatest), limit::tabarie);
    if (!strength.ok) return no_answer<T>(strength);
    T const distillate = at_20.density(
        r22::mass_fraction_from_concentration(at_20, T(volume_fraction * detail::pure_at_20_celsius<T>)));
    T const water = detail::water_at_20_celsius<T>;
    T const heaviest = distillate + water * (detail::specific_gravity_of_solution(T(70)) - T(1));
    status const density = within(argument::density, kg_m3, double(distillate) - double(rounding<T>),
                                  double(heaviest), limit::with_this_strength);
    if (!density.ok) return no_answer<T>(density);
    if (kg_m3 <= distillate + rounding<T>) return {T(0), {}};
    T const residue = kg_m3 - distillate + water;
    auto const plato = plato_from_specific_gravity(T(residue / water));
    if (!plato.status.ok) return plato;
    return {plato.value / T(100) * residue, {}};
}

/// What the doubt of the sugar's volume, 1 %, is worth in a strength that is read from a density.
/// @param volume_fraction alcoholic strength at 20 °C of the whole
/// @param g_per_litre     sugar, g/L at 20 °C
/// @param kind            which sugar
/// @param celsius         temperature of the reading, 0 to 40 °C
/// @return half width of the doubt, volume fraction; refuses what is out of range
/// @par Accuracy
/// A judgement: see `sugar_volume_doubt`.
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<T> strength_doubt_from_sugar(T volume_fraction, T g_per_litre, sweetener kind, T celsius = T(20)) {
    status const range = detail::sweet_temperature_range(celsius);
    if (!range.ok) return no_answer<T>(range);
    auto const made = detail::sweet_recipe(volume_fraction, g_per_litre, kind);
    if (!made.status.ok) return no_answer<T>(made.status);
    if (g_per_litre == T(0)) return {T(0), {}};
    auto const& m = made.value;
    T const c = m.sugar / (m.sugar + m.water);
    T const share =
        m.sugar * model::sugar_solution::apparent_volume(kind, c, celsius) / m.volume(kind, celsius);
    T const most = detail::most_ethanol(g_per_litre, kind);
    T const step = T(2);  // kg/m3 of ethanol
    T const low = m.ethanol > step ? m.ethanol - step : T(0);
    T const high = m.ethanol + step < most ? m.ethanol + step : most;
    auto const density = [&](T ethanol) {
        return detail::filled_up(ethanol, g_per_litre, kind).density(kind, celsius);
    };
    T const slope = (density(low) - density(high)) / (high - low);  // lighter with more ethanol
    return {T(sugar_volume_doubt) * share * m.density(kind, celsius) / slope / detail::pure_at_20_celsius<T>,
            {}};
}

/// Water and sugar that turn a spirit into a sweetened one.
/// @param spirit          the spirit
/// @param volume_fraction alcoholic strength wanted, at 20 °C of the whole, above 0
/// @param g_per_litre     sugar wanted, g/L at 20 °C
/// @param kind            which sugar
/// @return the plan; refuses what is out of range, and a strength that this spirit cannot reach with this
///         much sugar
/// @par Accuracy
/// Masses of spirit, water and sugar are exact for the mixture they make. Its volume, and so its strength, is
/// as good as the sugar's volume: 1 % of it at 300 g/L is 0.2 % of the volume.
/// @par Source
/// @ref source_sugar_solution
template <number T>
checked<sweetening_plan<T>> sweeten(parcel<T> const& spirit, T volume_fraction, T g_per_litre,
                                    sweetener kind) {
    using plan = sweetening_plan<T>;
    status range = parcel_range(spirit);
    if (range.ok) range = detail::sweet_temperature_range(spirit.celsius);
    if (range.ok) range = within(argument::alcoholic_strength_by_volume, volume_fraction, 1e-6, 1.0);
    if (range.ok) range = within(argument::mass_fraction, spirit.mass_fraction, 1e-6, 1.0);
    if (!range.ok) return no_answer<plan>(range);
    T const pure = detail::pure_at_20_celsius<T>;
    status const sugar = detail::sugar_range(T(0), g_per_litre, kind);
    if (!sugar.ok) return no_answer<plan>(sugar);
    // The strongest product takes no water: its water is that of the spirit.
    T const water_per_ethanol = (T(1) - spirit.mass_fraction) / spirit.mass_fraction;
    auto const lacking = [&](T ethanol) {
        return detail::filled_up(ethanol, g_per_litre, kind).water - water_per_ethanol * ethanol;
    };
    T most = detail::most_ethanol(g_per_litre, kind);
    if (lacking(most) < T(0)) {
        T const accepted = std::is_same_v<T, float> ? T(1e-3) : T(1e-9);
        most = numeric::bracketed_root(lacking, T(0), most, accepted);
    }
    T const slack = T(64) * std::numeric_limits<T>::epsilon();
    if (!(volume_fraction <= most / pure * (T(1) + slack) + (std::is_same_v<T, float> ? T(1e-5) : T(1e-11))))
        return no_answer<plan>(refuse(argument::alcoholic_strength_by_volume, double(volume_fraction), 0.0,
                                      double(most / pure), limit::reach_of_this_spirit_with_sugar));
    auto const each = detail::filled_up(volume_fraction * pure, g_per_litre, kind);
    T const cubic_metres = spirit.mass_kg * spirit.mass_fraction / each.ethanol;
    T const water = each.water * cubic_metres - (T(1) - spirit.mass_fraction) * spirit.mass_kg;
    plan made;
    made.spirit_kg = spirit.mass_kg;
    made.water_kg = water > T(0) ? water : T(0);
    made.sugar_kg = each.sugar * cubic_metres;
    made.litres = cubic_metres / detail::cubic_metres_per_litre<T>;
    correlation::oiml_r22::isotherm<T> const at_20(T(20));
    T const liquid = each.ethanol + each.water;
    T const unsweetened = liquid / at_20.density(each.ethanol / liquid) * cubic_metres;
    T const before =
        made.spirit_kg / at_20.density(spirit.mass_fraction) + made.water_kg / at_20.density(T(0));
    made.contraction_litres = (before - unsweetened) / detail::cubic_metres_per_litre<T>;
    made.sugar_litres = (cubic_metres - unsweetened) / detail::cubic_metres_per_litre<T>;
    return {made, {}};
}

/// Strength of a sweetened spirit or a wash from a sample that was distilled and made up with water.
/// @param sample_litres      volume of the sample, above 0, L
/// @param sample_celsius     its temperature, 0 to 40 °C
/// @param distillate_litres  volume that the distillate was made up to, above 0, L
/// @param mass_fraction      of the made-up distillate, which a hydrometer gives
/// @param distillate_celsius temperature at which it was made up, 0 to 40 °C
/// @param lost               share of the alcohol lost in distilling, 0 to 0.1
/// @return alcoholic strength at 20 °C of the sample; refuses what is out of range, and more alcohol than the
///         sample has room for
/// @par Accuracy
/// That of the readings. The sample is taken to expand as plain spirit of its strength; volumes measured at
/// one temperature do not depend on that.
/// @par Source
/// @ref source_oiml_r22; the procedure is common practice
template <number T>
checked<T> strength_of_distilled_sample(T sample_litres, T sample_celsius, T distillate_litres,
                                        T mass_fraction, T distillate_celsius, T lost = T(0)) {
    double const least = double((std::numeric_limits<T>::min)());
    status range = within(argument::volume_of_the_sample, sample_litres, least, unlimited);
    if (range.ok) range = within(argument::volume_of_the_distillate, distillate_litres, least, unlimited);
    if (range.ok) range = detail::sweet_temperature_range(sample_celsius);
    if (range.ok) range = detail::sweet_temperature_range(distillate_celsius);
    if (range.ok) range = liquid_range(mass_fraction, distillate_celsius);
    if (range.ok) range = within(argument::share_lost_in_distillation, lost, 0.0, 0.1);
    if (!range.ok) return no_answer<T>(range);
    // Litres of pure alcohol over those of the sample, before expansion.
    T const pure = detail::pure_at_20_celsius<T>;
    T const rho = correlation::oiml_r22::density(mass_fraction, distillate_celsius);
    T const most = (T(1) - lost) * sample_litres * pure * T(0.95) / (mass_fraction * rho);
    if (mass_fraction > T(0)) {
        status const room = within(argument::volume_of_the_distillate, distillate_litres, least, double(most),
                                   limit::alcohol_of_the_sample);
        if (!room.ok) return no_answer<T>(room);
    }
    return {model::sample_distillation::volume_fraction(sample_litres, sample_celsius, distillate_litres,
                                                        mass_fraction, distillate_celsius, lost),
            {}};
}

}  // namespace aqueth::inline AQUETH_ABI::plain
