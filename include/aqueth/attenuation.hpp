// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/fermentation.hpp>
#include <aqueth/error.hpp>
#include <aqueth/hydrometer.hpp>
#include <aqueth/plain/attenuation.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <algorithm>
#include <charconv>
#include <string>

namespace aqueth::inline AQUETH_ABI {

/// @name Attenuation
/// @{

/// Real extract of a fermented wash from the extract before and the apparent one after.
/// @param original extract before fermentation
/// @param apparent apparent extract after it, not above the original
/// @return real extract
/// @throws refusal if the apparent extract is above the original, or so low that nothing could be left
/// @par Accuracy
/// An average of beers, by two weights of the trade, 0.1808 and 0.8192, which are from memory. They give 0.05
/// to 0.06 °P less than Balling's own examples, and 0.10 to 0.19 °P less than the means of five sets of brews
/// (@ref source_balling). A dry sugar wash can be outside their range: use `fermented_wash`.
/// @par Source
/// From memory of brewing texts.
inline extract real_extract(extract original, apparent_extract apparent) {
    return extract(
        detail::answer("attenuation", plain::real_extract_plato(original.degrees(), apparent.degrees())));
}

/// Share of the extract that has fermented, by the apparent extract of a saccharometer.
/// @param original extract before fermentation, above 0
/// @param now      apparent extract now, not above the original
/// @return apparent attenuation; above 1 in a dry wash
/// @throws refusal if an argument is outside its range
[[nodiscard]] inline double apparent_attenuation(extract original, apparent_extract now) {
    return detail::answer("attenuation", plain::apparent_attenuation(original.degrees(), now.degrees()));
}

/// Share of the extract that has fermented, by the real extract.
/// @param original extract before fermentation, above 0
/// @param real     real extract now, not above the original
/// @return real attenuation, 0 to 1
/// @throws refusal if an argument is outside its range
[[nodiscard]] inline double real_attenuation(extract original, extract real) {
    return detail::answer("attenuation", plain::real_attenuation(original.degrees(), real.degrees()));
}
/// @}

/// @name Strength from gravities
/// Four methods for one quantity. They differ by a few percent of the alcohol: a better answer needs a
/// distilled sample.
/// @{

/// Strength by Balling's balance of extract, alcohol, carbon dioxide and yeast.
/// @param original extract before fermentation, 0 to 30 °P
/// @param real     real extract after it, not above the original
/// @return mass fraction of ethanol
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// Beer: with the usual weights of `real_extract` 0.7 % less to 2.8 % more than was measured in the means of
/// five sets of brews; sugar washes up to 5 %.
/// @par Source
/// @ref source_balling
inline mass_fraction alcohol_by_balling(extract original, extract real) {
    return mass_fraction(detail::answer("Balling's balance",
                                        plain::mass_fraction_by_balling(original.degrees(), real.degrees())));
}

/// Strength by Balling's printed factors, which give 0.4 % (at 6 °P) to 2.4 % (at 30 °P) less alcohol than
/// his balance with the usual real extract.
/// @param original extract before fermentation, 6 to 30 °P
/// @param apparent apparent extract after it, not above the original
/// @return mass fraction of ethanol
/// @throws refusal if an argument is outside its range
/// @par Accuracy
/// Beer: 1.8 % less to 2.0 % more than was measured in the means of five sets of brews.
/// @par Source
/// @ref source_balling
inline mass_fraction alcohol_by_balling_factors(extract original, apparent_extract apparent) {
    return mass_fraction(detail::answer("Balling's factors", plain::mass_fraction_by_balling_factors(
                                                                 original.degrees(), apparent.degrees())));
}

/// Strength by the fall in gravity alone, with the factors of the United Kingdom's excise.
/// @param original gravity before fermentation
/// @param final_   gravity after it, not above the original, at most 0.1007 below it
/// @return alcoholic strength by volume
/// @throws refusal if the fall is outside 0 to 100.7 degrees
/// @par Accuracy
/// A rule for guidance, made for beer; its factors go in steps of 0.8 %.
/// @par Source
/// @ref source_excise_notice_226
inline volume_fraction alcohol_by_gravity_fall(specific_gravity original, specific_gravity final_) {
    return volume_fraction(
        detail::answer("strength by fall in gravity",
                       plain::volume_fraction_by_gravity_fall(original.value(), final_.value())));
}

namespace detail {

inline wash typed(plain::checked<plain::fermented<double>> const& found, units::volume volume,
                  units::temperature temperature) {
    // an original gravity that no extract has is refused by the scale of extracts
    auto const e =
        answer(found.status.argument == argument::specific_gravity ? "extract" : "fermented wash", found);
    return wash::of(volume, volume_fraction(e.volume_fraction), extract(e.plato), temperature);
}

}  // namespace detail

/// The fermented wash: its alcohol and extract agree with both Balling's balance and the measured density. It
/// uses the library's own densities instead of the usual weights.
/// @param volume      volume at `temperature`, 0 or more
/// @param original    gravity before fermentation, to 30 °P
/// @param final_      gravity after it, not above the original
/// @param temperature temperature of the wash, 0 to 80 °C
/// @return the fermented wash
/// @throws refusal if a gravity is outside its range: too low means more fermented than there was
/// @par Accuracy
/// That of Balling's yield: 2.4 % less to 1.1 % more alcohol than was measured in the means of five sets of
/// brews (@ref source_balling); up to 5 % for a sugar wash. It lies up to 1.9 % below the usual weights of
/// `real_extract`.
/// @par Source
/// @ref source_balling, @ref source_wash
inline wash fermented_wash(units::volume volume, specific_gravity original, specific_gravity final_,
                           units::temperature temperature) {
    return detail::typed(plain::fermented_wash_from_gravity(original.value(), final_.value()), volume,
                         temperature);
}

/// The same from a saccharometer reading at the temperature of the wash. The expansion of the wash depends on
/// its unknown composition, so the function solves for both together.
/// @param volume      volume at `temperature`, 0 or more
/// @param original    gravity 20/20 °C before fermentation, to 30 °P; `true_gravity` corrects a reading
/// @param reading     reading of the stem after it
/// @param temperature temperature of the wash and of the instrument, 0 to 80 °C
/// @param meter       the instrument: its reference temperature, what its gravity refers to, its glass
/// @return the fermented wash
/// @throws refusal if a gravity or the temperature is outside its range: the bounds are the readings with
///         all extract fermented and with none
/// @par Accuracy
/// As from a gravity at 20 °C, and that of `true_gravity`.
/// @par Source
/// @ref source_balling, @ref source_wash
inline wash fermented_wash(units::volume volume, specific_gravity original, specific_gravity reading,
                           units::temperature temperature, gravity_hydrometer const& meter) {
    detail::accept("fermented wash", plain::detail::wash_temperature_range(temperature.celsius()));
    double const of_one = meter.density(specific_gravity(1.0), temperature).value();
    double const of_half = meter.density(specific_gravity(0.5), temperature).value();
    double const of_zero = (std::max)(0.0, 2.0 * of_half - of_one);  // rounding may pass 0
    return detail::typed(plain::fermented_wash_from_reading(original.value(), reading.value(),
                                                            temperature.celsius(), of_one, of_zero),
                         volume, temperature);
}
/// @}

/// The greatest strength accepted for a fermentation, % vol. Common practice: yeast stops below it. (G. P.
/// Casey, C. A. Magnus and W. M. Ingledew, Applied and Environmental Microbiology 48 (1984) 639, reached 16.2
/// % vol with well-fed brewer's yeast.)
inline constexpr double greatest_wash_strength = 100.0 * plain::greatest_wash_volume_fraction;

/// The sugar and water to add for a wash.
struct [[nodiscard]] sugar_plan {
    units::mass least;           ///< sugar, its water of crystallization included, if yeast made nothing but
                                 ///< alcohol and carbon dioxide
    units::mass practical;       ///< the same at the yield asked for
    units::mass carbon_dioxide;  ///< gas given off
    extract original;            ///< extract of the solution before fermentation, at the practical amount
    specific_gravity gravity;    ///< its specific gravity 20/20 °C
    units::mass water;           ///< water to add, without the water of crystallization
};

namespace detail {

inline std::string share_in_words(double share) {
    return numeric::text_of(100.0 * share, 4) + " % of the stoichiometric yield";
}

}  // namespace detail

/// Sugar for a wash of a wanted strength and volume.
/// @param volume   volume of the fermented wash at 20 °C, above 0
/// @param strength alcoholic strength wanted, up to `greatest_wash_strength`
/// @param kind     sugar used
/// @param share    share of the stoichiometric yield that is reached, 0.3 to 1. By default Balling's yield as
///                 a share of that of sucrose, 0.90
/// @return the plan. The fermented wash is taken to hold no sugar; yeast solids and nutrients are left out.
/// @throws refusal if an argument is outside its range, or if at that share the wash would begin above 30
///         °P: the bounds give the reachable strength
/// @par Accuracy
/// The accuracy is that of the share: 0.93 to 0.95 in careful small trials (Pasteur, 1860), 0.75 to 0.90 and
/// down to 0.55 in rum distilleries (Kervegant, 1946).
/// @par Source
/// @ref source_wash
inline sugar_plan sugar_needed(units::volume volume, volume_fraction strength, sugar kind = sugar::sucrose,
                               double share = correlation::fermentation::practical_share) {
    auto const found = plain::sugar_needed(in(volume, litre), strength.value(), kind, share);
    if (found.status.limit == limit::begins_above_30_plato) {  // the share belongs to the reason
        auto const& why = found.status;
        raise_error(refusal("sugar needed", why.argument, 100.0 * why.value, volume_fraction::unit,
                            100.0 * why.lower, 100.0 * why.upper,
                            "at " + detail::share_in_words(share) + "; " + name_of(why.limit)));
    }
    auto const plan = detail::answer("sugar needed", found);
    return {plan.least_kg * kilogram,
            plan.practical_kg * kilogram,
            plan.carbon_dioxide_kg * kilogram,
            extract(plan.original_plato),
            specific_gravity(plan.specific_gravity),
            plan.water_kg * kilogram};
}

}  // namespace aqueth::inline AQUETH_ABI
