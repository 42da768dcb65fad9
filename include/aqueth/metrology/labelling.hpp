// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/error.hpp>
#include <aqueth/metrology/conformity.hpp>
#include <aqueth/metrology/provenance.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <string_view>

/// @file
/// Legal tolerances of labels. The figures are guidance: laws change, other rules also apply, and local law
/// decides.

namespace aqueth::inline AQUETH_ABI {

/// Permitted difference of a drink's strength from its label.
struct strength_tolerance {
    char const* key;               ///< short name, for programs
    char const* drinks;            ///< which drinks
    double percent_vol;            ///< permitted difference, plus or minus, % vol
    units::temperature reference;  ///< reference temperature of the strength
    provenance seen;               ///< how the figure was obtained
    char const* citation;          ///< where it stands
    char const* remark;            ///< further conditions in the text
    double above = 0.0;    ///< only labels above this strength, % vol; 0 if the text has no such limit
    double up_to = 100.0;  ///< only labels up to this strength, % vol
};

/// Tolerances in law, as of when they were read. Local law decides.
/// @see @ref source_label_tolerances
inline constexpr strength_tolerance strength_tolerances[] = {
    {"eu-spirits", "drinks above 1.2 % vol not listed elsewhere, spirits among them", 0.3,
     at_20_celsius::temperature(), provenance::read, "Regulation (EU) No 1169/2011, annex XII, item 4",
     "without prejudice to the tolerances of the method of analysis", 1.2},
    {"eu-macerated", "drinks that contain macerated fruit or parts of plants", 1.5,
     at_20_celsius::temperature(), provenance::read, "Regulation (EU) No 1169/2011, annex XII, item 3",
     "without prejudice to the tolerances of the method of analysis; for a filtered drink item 4 counts (UK "
     "Government Chemist, 2017)"},
    {"eu-cider", "beer above 5.5 % vol, cider, perry, fruit wine, mead", 1.0, at_20_celsius::temperature(),
     provenance::read, "Regulation (EU) No 1169/2011, annex XII, item 2",
     "without prejudice to the tolerances of the method of analysis"},
    {"eu-beer", "beer up to 5.5 % vol", 0.5, at_20_celsius::temperature(), provenance::read,
     "Regulation (EU) No 1169/2011, annex XII, item 1",
     "without prejudice to the tolerances of the method of analysis", 0.0, 5.5},
    {"us-spirits", "distilled spirits", 0.3, at_60_fahrenheit::temperature(), provenance::read,
     "27 CFR 19.356 (c)", "what a test finds is what counts"},
};

/// @param key short name
/// @return the tolerance of that name, or null
constexpr strength_tolerance const* find_strength_tolerance(std::string_view key) noexcept {
    for (strength_tolerance const& each : strength_tolerances) {
        if (key == each.key) return &each;
    }
    return nullptr;
}

/// The strengths that a label permits.
/// @param label strength on the label, % vol at the reference temperature of the tolerance
/// @param of    tolerance
/// @return permitted strengths in % vol, within 0 to 100
template <class Reference>
constexpr tolerance_interval permitted_strengths(basic_volume_fraction<Reference> label,
                                                 strength_tolerance const& of) {
    return {(std::max)(0.0, label.percent() - of.percent_vol),
            (std::min)(100.0, label.percent() + of.percent_vol)};
}

/// Permitted contents of a single bottle, and the required average of a batch. All volumes are at the
/// reference temperature of the label.
struct [[nodiscard]] fill_limits {
    tolerance_interval single;  ///< permitted contents of a bottle, mL
    /// lowest contents allowed for any bottle, mL; in the EU a few bottles may be between this and `single`
    double least;
    char const* lot;               ///< requirement for the bottles of a batch
    char const* citation;          ///< where it stands
    tolerance_interval average;    ///< permitted average of a batch, mL; infinite limits if the text has none
    units::temperature reference;  ///< reference temperature of the volume on the label
    char const* remark;            ///< evidence for that temperature
};

namespace detail {

/// mL without the rounding of the conversion, which could move a label into another class
inline double millilitres_on_label(units::volume label, double least, double most, char const* why) {
    double const ml = std::round(1e6 * in(label, millilitre)) / 1e6;
    return require_range("filling", argument::label_volume, ml, "mL", least, most, why);
}

}  // namespace detail

/// Prepackages of the European Union, volumes at 20 °C.
///
/// The average of the bottles must not be below the label. A few bottles may be short by more than the
/// tolerable negative error (by the tests of annex II about one in forty), none by more than twice that.
/// @param label volume on the label, 5 mL to 10 L
/// @return limits
/// @throws refusal if the volume is outside the range
/// @par Source
/// Council Directive 76/211/EEC, annex I, 1 and 2.4, @ref source_76_211_eec
inline fill_limits eu_fill_limits(units::volume label) {
    double const ml = detail::millilitres_on_label(label, 5.0, 10000.0, "Directive 76/211/EEC");
    struct {
        double up_to, percent, millilitres;
    } constexpr rows[] = {{50.0, 9.0, 0.0},  {100.0, 0.0, 4.5},   {200.0, 4.5, 0.0},  {300.0, 0.0, 9.0},
                          {500.0, 3.0, 0.0}, {1000.0, 0.0, 15.0}, {10000.0, 1.5, 0.0}};
    auto const* row = rows;
    while (ml > row->up_to) ++row;
    // Shares are rounded up to the next tenth of a millilitre.
    double const error =
        row->percent > 0.0 ? std::ceil(row->percent * ml / 10.0 - 1e-9) / 10.0 : row->millilitres;
    return {{ml - error, unlimited},
            ml - 2.0 * error,
            "on average not below the label, few short by more than the tolerance",
            "Council Directive 76/211/EEC, annex I, 1 and 2.4",
            {ml, unlimited},
            at_20_celsius::temperature(),
            "the label means 20 °C: annex I, 2.2"};
}

/// Evidence that the volume on a label of distilled spirits in the United States is that at 60 °F.
inline constexpr char const* us_label_temperature_remark =
    "27 CFR 19.1 names no temperature for the volume; 60 °F is NIST Handbook 133, from memory";

/// Bottles of distilled spirits in the United States, volumes at 60 °F.
/// @param label volume on the label, 1 mL to 100 L
/// @return limits; in a batch about as many bottles may be overfilled as underfilled
/// @throws refusal if the volume is outside the range
/// @par Source
/// 27 CFR 19.356 (b), @ref source_label_tolerances; 60 °F by @ref source_us_label_volume
inline fill_limits us_fill_limits(units::volume label) {
    double const ml = detail::millilitres_on_label(label, 1.0, 1e5, "");
    // The text has gaps between 100 and 101, 375 and 376, 999 and 1000 mL: the code takes the stricter class.
    double const share = ml <= 100.0 ? 0.045 : ml <= 375.0 ? 0.03 : ml <= 999.0 ? 0.02 : 0.015;
    return {{ml * (1.0 - share), ml * (1.0 + share)},
            ml * (1.0 - share),
            "about as many bottles over as under the label",
            "27 CFR 19.356 (b)",
            {},
            at_60_fahrenheit::temperature(),
            us_label_temperature_remark};
}

}  // namespace aqueth::inline AQUETH_ABI
