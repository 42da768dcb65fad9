// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/its90.hpp>
#include <aqueth/error.hpp>
#include <aqueth/metrology/provenance.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/model/vapour_deviations.hpp>
#include <aqueth/units.hpp>

#include <cmath>
#include <string>
#include <string_view>
#include <utility>

namespace aqueth::inline AQUETH_ABI {

/// A class of instruments with its maximum permissible error. An instrument's own certificate is better than
/// its class.
struct instrument_class {
    char const* key;                   ///< short name, for programs
    char const* description;           ///< the kind of instrument
    char const* unit;                  ///< unit of division and error
    double division;                   ///< smallest scale division; 0 if it has none
    double maximum_permissible_error;  ///< largest error of indication allowed, plus or minus
    provenance seen;                   ///< how far the source was seen
    char const* citation;              ///< source of the error
    char const* remark = "";           ///< note for a buyer; may be empty
};

namespace detail {
inline constexpr char const* directive_76_765 = "Council Directive 76/765/EEC (= OIML R 44), annex: half a "
                                                "division for classes I and II, one for class III";
inline constexpr char const* sold_today =
    "an old rule: alcoholometers sold today are of the classes I to III of OIML R 44, or have a certificate";
inline constexpr char const* a_standard =
    "the standard of verifiers, by an old rule: alcoholometers sold today "
    "are of the classes I to III of OIML R 44";
inline constexpr char const* for_duty =
    "the class that German law accepts today for the strength of spirits under duty (BrStV, section 3, read)";
inline constexpr char const* ordinance_1885 =
    "Reichsgesetzblatt 1885, verification of alcoholometers (% vol of Tralles), section 72";
inline constexpr char const* ordinance_eo_14 =
    "German Verification Ordinance, annex EO 14-1, glass thermometers, -10 to 110 °C, not wetting liquid";
inline constexpr char const* iso_4788 = "ISO 4788:2005, graduated measuring cylinders, table of errors";
inline constexpr char const* astm_e1272 = "ASTM E1272-02 (2012), graduated cylinders, table 1";
inline constexpr char const* si_1987_51 = "UK SI 1987/51, working standard measures, schedule";
}  // namespace detail

/// Classes of the instruments of a bottling day. Alcoholometers in % vol, thermometers in °C, measures in mL.
/// @see @ref source_instruments
inline constexpr instrument_class instrument_classes[] = {
    {"alcoholometer-I", "alcoholometer, class I", "% vol", 0.1, 0.05, provenance::memory,
     detail::directive_76_765},
    {"alcoholometer-II", "alcoholometer, class II", "% vol", 0.2, 0.1, provenance::memory,
     detail::directive_76_765},
    {"alcoholometer-III", "alcoholometer, class III", "% vol", 0.5, 0.5, provenance::memory,
     detail::directive_76_765, detail::for_duty},
    {"alcoholometer-fifths", "standard alcoholometer in fifths of 1885", "% vol", 0.2, 0.1, provenance::read,
     detail::ordinance_1885, detail::a_standard},
    {"alcoholometer-halves", "alcoholometer in halves, verified", "% vol", 0.5, 0.25, provenance::read,
     detail::ordinance_1885, detail::sold_today},
    {"thermometer-0.1", "glass thermometer in tenths of a degree", "°C", 0.1, 0.2, provenance::second_hand,
     detail::ordinance_eo_14},
    {"thermometer-0.2", "glass thermometer in fifths of a degree", "°C", 0.2, 0.3, provenance::second_hand,
     detail::ordinance_eo_14},
    {"thermometer-0.5", "glass thermometer in half degrees", "°C", 0.5, 0.5, provenance::second_hand,
     detail::ordinance_eo_14},
    {"thermometer-1", "glass thermometer in degrees", "°C", 1.0, 1.0, provenance::second_hand,
     detail::ordinance_eo_14},
    {"cylinder-100-A", "measuring cylinder, 100 mL, class A", "mL", 1.0, 0.5, provenance::read,
     detail::astm_e1272},
    {"cylinder-100-B", "measuring cylinder, 100 mL, class B", "mL", 1.0, 1.0, provenance::read,
     detail::astm_e1272},
    {"cylinder-250-A", "measuring cylinder, 250 mL, class A", "mL", 2.0, 1.0, provenance::read,
     detail::astm_e1272},
    {"cylinder-250-B", "measuring cylinder, 250 mL, class B", "mL", 2.0, 2.0, provenance::read,
     detail::astm_e1272},
    {"cylinder-500-A", "measuring cylinder, 500 mL, class A", "mL", 5.0, 2.5, provenance::memory,
     detail::iso_4788},
    {"cylinder-500-B", "measuring cylinder, 500 mL, class B", "mL", 5.0, 5.0, provenance::memory,
     detail::iso_4788},
    {"cylinder-1000-A", "measuring cylinder, 1000 mL, class A", "mL", 10.0, 5.0, provenance::memory,
     detail::iso_4788},
    {"cylinder-1000-B", "measuring cylinder, 1000 mL, class B", "mL", 10.0, 10.0, provenance::memory,
     detail::iso_4788},
    {"cylinder-2000-A", "measuring cylinder, 2000 mL, class A", "mL", 20.0, 10.0, provenance::memory,
     detail::iso_4788},
    {"cylinder-2000-B", "measuring cylinder, 2000 mL, class B", "mL", 20.0, 20.0, provenance::memory,
     detail::iso_4788},
    {"measure-1000", "capacity measure, 1 L", "mL", 0.0, 2.0, provenance::read, detail::si_1987_51},
    {"measure-2000", "capacity measure, 2 L", "mL", 0.0, 2.0, provenance::read, detail::si_1987_51},
    {"measure-5000", "capacity measure, 5 L", "mL", 0.0, 5.0, provenance::read, detail::si_1987_51},
    {"measure-10000", "capacity measure, 10 L", "mL", 0.0, 10.0, provenance::read, detail::si_1987_51},
};

/// @param key short name
/// @return the class of that name, or null
constexpr instrument_class const* find_instrument_class(std::string_view key) noexcept {
    for (instrument_class const& each : instrument_classes) {
        if (key == each.key) return &each;
    }
    return nullptr;
}

/// The unknown error of an instrument of a class, within the limits of the class.
/// @param of the class
/// @return input quantity of estimate 0, rectangular, in the class's unit
inline input_quantity error_of(instrument_class const& of) {
    return input_quantity::rectangular(std::string("error of the ") + of.description, of.unit, 0.0,
                                       of.maximum_permissible_error);
}

/// Error of reading a scale or display (common practice: the nearest half of a division by eye).
/// @param name     the quantity read, for the budget
/// @param unit     unit of the division, for the budget
/// @param division smallest step that is read, above 0: the last digit of a display, half a division by eye
/// @return input quantity of estimate 0, rectangular, half a step to either side
/// @throws refusal if the division is not positive and finite
/// @par Source
/// GUM F.2.2.1, @ref source_gum
inline input_quantity reading_error(std::string name, std::string unit, double division) {
    require_range(name, argument::smallest_step_read, division, unit, (std::numeric_limits<double>::min)(),
                  unlimited);
    return input_quantity::rectangular("reading of the " + name, std::move(unit), 0.0, 0.5 * division);
}

/// Error of a balance of class III (trade) in use.
/// @param load                        load on the balance, from 0 to 10 000 intervals
/// @param verification_scale_interval e, as engraved, above 0
/// @param name                        name of the balance or its purpose, for the budget
/// @return input quantity of estimate 0, in kg, rectangular
/// @throws refusal if the interval is not positive or the load is outside the range
/// @par Source
/// UK SI 1995/1907, schedule 2, paragraph 4 (= Directive 90/384/EEC, OIML R 76): 0.5 e to 500 e, 1 e to 2000
/// e, 1.5 e above, in service twice as much; @ref source_instruments
inline input_quantity balance_error(units::mass load, units::mass verification_scale_interval,
                                    std::string const& name = "balance, class III") {
    double const e = in(verification_scale_interval, kilogram);
    require_range("balance", argument::verification_scale_interval, e, "kg", 1e-9, 1e9);
    double const intervals = in(load, kilogram) / e;
    require_range("balance", argument::load_in_scale_intervals, intervals, "", 0.0, 10000.0, "class III");
    double const at_verification = intervals <= 500.0 ? 0.5 * e : intervals <= 2000.0 ? e : 1.5 * e;
    return input_quantity::rectangular("error of the " + name, "kg", 0.0, 2.0 * at_verification);
}

/// Error of the formula of OIML R 22 as a model of real mixtures. Where the formula itself is the law, as for
/// duty in most of the world, do not include it.
/// @return input quantity of estimate 0, in kg/m3, rectangular 0.1 kg/m3 to either side
/// @par Accuracy
/// A judgement of this library, and a small one: 287 densities of 1913 lie within 0.10 kg/m3 of the formula.
/// Three sets since 2006 lie 0.07 to 0.29 kg/m3 from it on average, mostly higher, and up to 0.52 (pure
/// ethanol that may have been wet). They differ among themselves by as much. 0.1 kg/m3 is worth 0.02 to 0.14
/// % vol from 0 °C up, and up to 0.24 % vol at -10 °C.
inline input_quantity formula_error() {
    return input_quantity::rectangular("OIML R 22 as a formula", "kg/m3", 0.0, 0.1);
}

/// Error of using ITS-90 temperatures in a formula for IPTS-68, as the library does: the difference of the
/// scales, to either side.
/// @param t temperature, -20 to 40 °C
/// @return input quantity of estimate 0, in K, rectangular
/// @throws refusal if the temperature is outside the range
/// @par Source
/// @ref source_its90
inline input_quantity temperature_scale_error(units::temperature t) {
    require_range("temperature scale", argument::temperature, t.celsius(), "°C", -20.0, 40.0, "OIML R 22");
    double const difference = correlation::its90::t68_from_t90(t.celsius()) - t.celsius();
    return input_quantity::rectangular("temperature scale", "K", 0.0, std::abs(difference));
}

/// Error of the equilibrium model's vapour, from the deviations of measured vapours.
/// @param x mole fraction of ethanol in the liquid, 0 to 1
/// @return input quantity of estimate 0, in ln(alpha), normal: the error of the logarithm of the model's
///         relative volatility, for `measurement_model::vapour_over` at 25 to 300 kPa
/// @throws refusal if the mole fraction is outside its range
/// @par Accuracy
/// good to a third
/// @par Source
/// @ref source_vapour_deviations
inline input_quantity vapour_error(double x) {
    require_range("vapour of the model", argument::mole_fraction_of_the_liquid, x, "", 0.0, 1.0);
    return input_quantity::normal("vapour of the equilibrium model", "ln(alpha)", 0.0,
                                  model::vapour_deviations::uncertainty(x).value);
}

/// Error of the refractive index of the model, for `measurement_model::from_density_and_index` and the like.
/// @return input quantity of estimate 0, normal: the root mean square against the fitted handbook
/// @par Accuracy
/// It leaves out that ethanol and sugar may change each other's refraction: we know of no measurement.
/// @par Source
/// @ref source_refraction
inline input_quantity refraction_error() {
    return input_quantity::normal("refractive index of the model", "1", 0.0, 0.00005);
}

/// Expansion of an instrument's glass: the conventional value and the spread of glasses.
/// @return input quantity of 25e-6 /K, rectangular 2e-6 /K to either side
/// @par Source
/// ISO 1768, @ref source_iso_1768; the width is common practice
inline input_quantity glass_expansion_of_soda_lime() {
    return input_quantity::rectangular("expansion of the glass", "1/K", 25e-6, 2e-6);
}

}  // namespace aqueth::inline AQUETH_ABI
