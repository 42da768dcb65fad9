// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/balling.hpp>
#include <aqueth/correlation/excise_notice_226.hpp>
#include <aqueth/correlation/fermentation.hpp>
#include <aqueth/density.hpp>
#include <aqueth/error.hpp>
#include <aqueth/numeric/number_text.hpp>
#include <aqueth/numeric/root.hpp>
#include <aqueth/specific_gravity.hpp>
#include <aqueth/units.hpp>
#include <aqueth/wash.hpp>

#include <cmath>
#include <string>

namespace aqueth {

/// @name Attenuation
/// @{

/// Real extract of a fermented wash from the extract before and the apparent one after.
/// @param original extract before fermentation
/// @param apparent apparent extract after it, not above the original
/// @return real extract
/// @throws range_error if the apparent extract is above the original, or so low that nothing could be left
/// @par Accuracy
/// An average of beers, by two weights of the trade, 0.1808 and 0.8192, which are from memory. They give 0.05
/// to 0.06 °P less than Balling's own examples, and 0.10 to 0.19 °P less than the means of five sets of brews
/// (@ref source_balling). A dry sugar wash can be outside their range: use `fermented_wash`.
/// @par Source
/// From memory of brewing texts.
inline extract real_extract(extract original, apparent_extract apparent) {
    double const re = correlation::balling::real_extract(original.degrees(), apparent.degrees());
    double const lowest = -correlation::balling::weight_of_original /
                          correlation::balling::weight_of_apparent * original.degrees();
    require_range("attenuation", argument::apparent_extract, apparent.degrees(), extract::unit, lowest,
                  original.degrees(), "from no real extract left to nothing fermented");
    return extract(re > 0.0 ? re : 0.0);
}

/// Share of the extract that has fermented, by the apparent extract of a saccharometer.
/// @param original extract before fermentation, above 0
/// @param now      apparent extract now, not above the original
/// @return apparent attenuation; above 1 in a dry wash
/// @throws range_error if an argument is outside its range
inline double apparent_attenuation(extract original, apparent_extract now) {
    require_range("attenuation", argument::original_extract, original.degrees(), extract::unit, 0.01, 70.0);
    require_range("attenuation", argument::apparent_extract, now.degrees(), extract::unit, -10.0,
                  original.degrees(), "nothing fermented is the most");
    return (original.degrees() - now.degrees()) / original.degrees();
}

/// Share of the extract that has fermented, by the real extract.
/// @param original extract before fermentation, above 0
/// @param real     real extract now, not above the original
/// @return real attenuation, 0 to 1
/// @throws range_error if an argument is outside its range
inline double real_attenuation(extract original, extract real) {
    return apparent_attenuation(original, real);
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
/// @throws range_error if an argument is outside its range
/// @par Accuracy
/// Beer: with the usual weights of `real_extract` 0.7 % less to 2.8 % more than was measured in the means of
/// five sets of brews; sugar washes up to 5 %.
/// @par Source
/// @ref source_balling
inline mass_fraction alcohol_by_balling(extract original, extract real) {
    require_range("Balling's balance", argument::original_extract, original.degrees(), extract::unit, 0.0,
                  30.0, "Balling");
    require_range("Balling's balance", argument::real_extract, real.degrees(), extract::unit, 0.0,
                  original.degrees(), "nothing fermented is the most");
    return by_mass(correlation::balling::alcohol(original.degrees(), real.degrees()));
}

/// Strength by Balling's printed factors, which give 0.4 % (at 6 °P) to 2.4 % (at 30 °P) less alcohol than
/// his balance with the usual real extract.
/// @param original extract before fermentation, 6 to 30 °P
/// @param apparent apparent extract after it, not above the original
/// @return mass fraction of ethanol
/// @throws range_error if an argument is outside its range
/// @par Accuracy
/// Beer: 1.8 % less to 2.0 % more than was measured in the means of five sets of brews.
/// @par Source
/// @ref source_balling
inline mass_fraction alcohol_by_balling_factors(extract original, apparent_extract apparent) {
    require_range("Balling's factors", argument::original_extract, original.degrees(), extract::unit, 6.0,
                  30.0, "the printed table");
    require_range("Balling's factors", argument::apparent_extract, apparent.degrees(), extract::unit, -10.0,
                  original.degrees(), "nothing fermented is the most");
    return by_mass(correlation::balling::factor(original.degrees()) *
                   (original.degrees() - apparent.degrees()));
}

/// Strength by the fall in gravity alone, with the factors of the United Kingdom's excise.
/// @param original gravity before fermentation
/// @param final_   gravity after it, not above the original, at most 0.1007 below it
/// @return alcoholic strength by volume
/// @throws range_error if the fall is outside 0 to 100.7 degrees
/// @par Accuracy
/// A rule for guidance, made for beer; its factors go in steps of 0.8 %.
/// @par Source
/// @ref source_excise_notice_226
inline volume_fraction alcohol_by_gravity_fall(specific_gravity original, specific_gravity final_) {
    double const fall = 1000.0 * (original.value() - final_.value());
    require_range("strength by fall in gravity", argument::fall, fall, "degrees of gravity", 0.0,
                  correlation::excise_notice_226::greatest_fall, "Excise Notice 226");
    return by_volume(correlation::excise_notice_226::percent_vol(fall));
}

namespace detail {

/// The wash of original gravity `original` for which `figure` gives `found`. `figure` is a function of the
/// density at `at` and falls during fermentation.
template <class Figure>
wash fermented_to(units::volume volume, specific_gravity original, double found, units::temperature at,
                  units::temperature temperature, argument refused, char const* reason,
                  Figure const& figure) {
    // Allowance for rounding at the ends: extract to gravity and back, or one reading corrected in two ways.
    constexpr double slack = 1e-9;
    double const there_and_back = apparent_extract_of(original).degrees();
    double const oe = std::abs(there_and_back - 30.0) < slack ? 30.0 : there_and_back;
    require_range("fermented wash", argument::original_extract, oe, extract::unit, 0.0, 30.0, "Balling");
    auto const left = [oe](double a) {
        double const re = correlation::balling::real_extract_from_alcohol(oe, a);
        return re > 0.0 ? re : 0.0;
    };
    auto const shown = [&](double a) {
        return figure(wash::density_of(a / 100.0, left(a) / 100.0, at.celsius()));
    };
    double const most = correlation::balling::alcohol(oe, 0.0);
    double const lowest = shown(most);
    double const highest = shown(0.0);
    if (!(lowest - slack <= found && found <= highest + slack))
        raise(range_error("fermented wash", refused, found, "", lowest, highest, reason));
    double a = numeric::bracketed_root([&](double tried) { return shown(tried) - found; }, 0.0, most, 1e-12);
    if (std::isnan(a)) a = found >= highest ? 0.0 : most;  // an end, missed by rounding
    double const rho = wash::density_of(a / 100.0, left(a) / 100.0, 20.0);
    double const pure = density(mass_fraction(1.0), celsius(20)).value();
    return wash::of(volume, volume_fraction(a / 100.0 * rho / pure), extract(left(a)), temperature);
}

}  // namespace detail

/// The fermented wash: its alcohol and extract agree with both Balling's balance and the measured density. It
/// uses the library's own densities instead of the usual weights.
/// @param volume      volume at `temperature`, 0 or more
/// @param original    gravity before fermentation, to 30 °P
/// @param final_      gravity after it, not above the original
/// @param temperature temperature of the wash, 0 to 40 °C
/// @return the fermented wash
/// @throws range_error if a gravity is outside its range: too low means more fermented than there was
/// @par Accuracy
/// That of Balling's yield: 2.4 % less to 1.1 % more alcohol than was measured in the means of five sets of
/// brews (@ref source_balling); up to 5 % for a sugar wash. It lies up to 1.9 % below the usual weights of
/// `real_extract`.
/// @par Source
/// @ref source_balling, @ref source_wash
inline wash fermented_wash(units::volume volume, specific_gravity original, specific_gravity final_,
                           units::temperature temperature) {
    double const water = density(mass_fraction(0.0), celsius(20)).value();
    return detail::fermented_to(volume, original, final_.value(), celsius(20), temperature,
                                argument::final_gravity, "from all extract fermented to none",
                                [water](double rho) { return rho / water; });
}

/// The same from a saccharometer reading at the temperature of the wash. The expansion of the wash depends on
/// its unknown composition, so the function solves for both together.
/// @param volume      volume at `temperature`, 0 or more
/// @param original    gravity 20/20 °C before fermentation, to 30 °P; `true_gravity` corrects a reading
/// @param reading     reading of the stem after it
/// @param temperature temperature of the wash and of the instrument, 0 to 40 °C
/// @param meter       the instrument: its reference temperature, what its gravity refers to, its glass
/// @return the fermented wash
/// @throws range_error if a gravity or the temperature is outside its range: the bounds are the readings with
///         all extract fermented and with none
/// @par Accuracy
/// As from a gravity at 20 °C, and that of `true_gravity`.
/// @par Source
/// @ref source_balling, @ref source_wash
inline wash fermented_wash(units::volume volume, specific_gravity original, specific_gravity reading,
                           units::temperature temperature, gravity_hydrometer const& meter) {
    require_range("fermented wash", argument::temperature, temperature.celsius(), "°C", 0.0, 40.0,
                  "OIML R 22, water liquid");
    double const of_one = meter.density(specific_gravity(1.0), temperature).value();
    return detail::fermented_to(volume, original, reading.value(), temperature, temperature,
                                argument::reading, "at that temperature, from all extract fermented to none",
                                [of_one](double rho) { return rho / of_one; });
}
/// @}

/// The greatest strength accepted for a fermentation, % vol. Common practice: yeast stops below it. (G. P.
/// Casey, C. A. Magnus and W. M. Ingledew, Applied and Environmental Microbiology 48 (1984) 639, reached 16.2
/// % vol with well-fed brewer's yeast.)
inline constexpr double greatest_wash_strength = 20.0;

/// Kinds of sugar for a wash.
enum class sugar {
    sucrose,             ///< table sugar, also maltose
    hexose,              ///< glucose and fructose, anhydrous: without water of crystallization
    glucose_monohydrate  ///< glucose with its water of crystallization: sold as dextrose (common
                         ///< practice)
};

/// The sugar and water to add for a wash.
struct sugar_plan {
    units::mass least;           ///< sugar, its water of crystallization included, if yeast made nothing but
                                 ///< alcohol and carbon dioxide
    units::mass practical;       ///< the same at the yield asked for
    units::mass carbon_dioxide;  ///< gas given off
    extract original;            ///< extract of the solution before fermentation, at the practical amount
    specific_gravity gravity;    ///< its specific gravity 20/20 °C
    units::mass water;           ///< water to add, without the water of crystallization
};

namespace detail {

/// Masses before and after a fermentation that reaches a share of `yield`.
struct sugar_balance {
    units::mass least;      ///< sugar, without water of crystallization, if all of it became alcohol and gas
    units::mass practical;  ///< sugar at the share that is reached
    units::mass gas;        ///< carbon dioxide
    units::mass before;     ///< everything before fermentation

    sugar_balance(parcel const& fermented, double yield, double share)
        : least(fermented.ethanol() / yield),
          practical(least / share),
          gas(correlation::fermentation::carbon_dioxide_per_ethanol * fermented.ethanol()),
          // Mass balance: the vat before holds the vat after, the gas, and the sugar lost otherwise. (The
          // water that splits sucrose is therefore part of the water to add.)
          before(fermented.mass() + gas + (practical - least)) {}

    double degrees() const { return 100.0 * in(practical, before); }  ///< extract before fermentation, °P
};

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
/// @throws range_error if an argument is outside its range, or if at that share the wash would begin above 30
///         °P: the bounds give the reachable strength
/// @par Accuracy
/// The accuracy is that of the share: 0.93 to 0.95 in careful small trials (Pasteur, 1860), 0.75 to 0.90 and
/// down to 0.55 in rum distilleries (Kervegant, 1946).
/// @par Source
/// @ref source_wash
inline sugar_plan sugar_needed(units::volume volume, volume_fraction strength, sugar kind = sugar::sucrose,
                               double share = correlation::fermentation::practical_share) {
    namespace f = correlation::fermentation;
    require_range("sugar needed", argument::volume, in(volume, litre), "L", 1e-6, unlimited);
    require_range("sugar needed", argument::strength, strength.percent(), volume_fraction::unit, 0.01,
                  greatest_wash_strength, "from some alcohol to the most that yeast stands, common practice");
    require_range("sugar needed", argument::share_of_the_stoichiometric_yield, share, "", 0.3, 1.0);
    double const yield = kind == sugar::sucrose ? f::ethanol_per_disaccharide : f::ethanol_per_hexose;
    double const crystals = kind == sugar::glucose_monohydrate ? f::glucose_monohydrate / f::hexose : 1.0;
    auto const balance = [&](double percent) {
        return detail::sugar_balance(parcel::of(volume, by_volume(percent), celsius(20)), yield, share);
    };
    detail::sugar_balance const b = balance(strength.percent());
    // The other functions end at this extract too, and at poor yields most of the sugar would remain.
    constexpr double most = 30.0;
    if (b.degrees() > most) {
        auto const excess = [&](double percent) { return balance(percent).degrees() - most; };
        raise(range_error("sugar needed", argument::strength, strength.percent(), volume_fraction::unit, 0.01,
                          numeric::bracketed_root(excess, 0.01, strength.percent(), 1e-9),
                          "at " + detail::share_in_words(share) + "; more would begin above 30 °P"));
    }
    extract const original(b.degrees());
    return {crystals * b.least, crystals * b.practical,        b.gas,
            original,           specific_gravity_of(original), b.before - crystals * b.practical};
}

}  // namespace aqueth
