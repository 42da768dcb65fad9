// SPDX-License-Identifier: BSL-1.0
#pragma once

/// @file
/// Strengths as users write them and as scales show them, and the instruments that read them.

#include "quantities.hpp"

#include <aqueth/aqueth.hpp>

#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace program {

// --- strengths ---------------------------------------------------------------------------------------------

/// A strength in the basis in which it was written, so that messages use the same basis.
using strength = any_strength;

mass_fraction composition(strength const& s);

/// Reads "%vol", "%vol at 60 F", "proof", "kg/m3 at 15 C", "sg 60/60 F in air".
notation read_notation(given const& g, std::string_view text);

/// A temperature; 60 °F is kept in °F, because it is a convention.
std::string degrees(units::temperature t);

/// A scale in words, with the temperature it is for.
std::string name_of(notation const& n);

/// The name of a formulation in JSON.
char const* name_of(density_formulation f);

/// The unit of a reading as --reading takes it; empty for scales that are not read in %vol or proof.
std::string unit_as_written(notation const& n);

/// A number on a scale, with the decimals of such a scale.
std::string on_scale(notation const& n, double value);

/// Whether two notations of one kind refer to the same conditions.
bool same_reference(notation const& a, notation const& b);

strength read_strength(given const& g);

// --- instruments -------------------------------------------------------------------------------------------

/// The options that describe an instrument.
struct instrument {
    given const& scale;
    given const& glass;
    given const& correction;
};

/// The corrections of a certificate to the readings of an instrument, between its points along straight
/// lines. Beyond the last points the correction stays the same, and answers say so.
class certificate {
public:
    /// No correction.
    certificate() = default;
    /// Reads "+0.2" or "+0.2 at 40, -0.1 at 60", in units of the scale; none if the text is empty.
    explicit certificate(given const& g);

    double correction(double reading) const;
    /// The reading that the correction turns into a true one.
    double reading(double corrected) const;
    /// A reading beyond the points, in words: "its last point is at 60"; else nothing.
    std::string beyond(double reading) const;

private:
    struct point {
        double reading, correction;
    };
    std::vector<point> points_;
    bool everywhere_ = false;  ///< one correction without a reading
};

units::cubic_expansion read_expansion(given const& g);

/// A hydrometer with the scale that the options describe.
class stem {
public:
    explicit stem(instrument const& options);
    /// The same; without --scale, the scale is the one in which the reading is written.
    stem(instrument const& options, given const& reading);

    /// @return its scale
    notation const& scale() const { return scale_; }
    /// @return whether the scale shows a strength; else it shows a density or a gravity
    bool shows_strength() const { return shows_strength_; }
    /// The number read, without the correction; the unit must be that of the scale.
    double number(given const& reading) const;
    /// The mass fraction behind a reading at a temperature.
    mass_fraction composition(given const& reading, units::temperature t) const {
        return composition_(corrected(reading), reading, t);
    }
    /// The same of a number read, without the correction; an error names no option.
    mass_fraction composition(double number, units::temperature t) const {
        return composition_(number + certified_.correction(number), {}, t);
    }
    /// The density behind a reading at a temperature.
    units::mass_density density(given const& reading, units::temperature t) const {
        return density_(corrected(reading), reading, t);
    }
    /// The reading in a liquid at a temperature.
    double reading(mass_fraction w, units::temperature t) const { return certified_.reading(reading_(w, t)); }
    /// The same in a liquid of any kind.
    double reading(units::mass_density rho, units::temperature t) const {
        return certified_.reading(reading_in_(rho, t));
    }

    /// A number with its unit.
    struct figure {
        double number;
        char const* unit;
    };
    /// A strength in the unit of the scale; % vol at 20 °C if the scale shows no strength.
    figure strength(mass_fraction w) const { return strength_(w); }

private:
    double corrected(given const& reading) const {
        double const read = number(reading);
        return read + certified_.correction(read);
    }

    notation scale_;
    certificate certified_;
    bool shows_strength_ = true;
    std::function<void(given const&, double)> check_;
    std::function<mass_fraction(double, given const&, units::temperature)> composition_;
    std::function<units::mass_density(double, given const&, units::temperature)> density_;
    std::function<double(mass_fraction, units::temperature)> reading_;
    std::function<double(units::mass_density, units::temperature)> reading_in_;
    std::function<figure(mass_fraction)> strength_;
};

}  // namespace program
