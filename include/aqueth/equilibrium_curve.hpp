// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/error.hpp>
#include <aqueth/units.hpp>

#include <cmath>
#include <cstddef>
#include <vector>

namespace aqueth {

/// The equilibrium at one pressure, tabulated for an integrator's inner loop.
///
/// What is interpolated is the logarithm of the relative volatility (and the boiling temperature), by cubics
/// through values and slopes on an even grid in the model's own skewed fraction. Where the volatility falls
/// steadily from node to node the cubics fall as well (their slopes are held to three times the chords',
/// Fritsch and Carlson 1980), so the curve crosses 1 exactly where the model does and can neither invent nor
/// lose an azeotrope.
/// @par Accuracy
/// within 1e-7 in the vapour's mole fraction and 1e-5 K of the model
/// @par Source
/// Values and slopes of the model, @ref source_excess_gibbs; limit of the slopes @ref source_fritsch_carlson
class equilibrium_curve {
public:
    /// Tabulates the model at a pressure.
    /// @param p absolute pressure at which every mixture boils between 0 and 120 °C: 1.6 to 198 kPa
    /// @throws range_error if the pressure is outside its range
    explicit equilibrium_curve(units::pressure p) : pressure_(p), nodes_(intervals + 1) {
        detail::require_vle_pressure("equilibrium curve", 0.0, p);
        detail::require_vle_pressure("equilibrium curve", 1.0, p);
        for (std::size_t i = 0; i <= intervals; ++i) {
            double const place = static_cast<double>(i) / intervals;
            auto const e = detail::vle::bubble_at_pressure(fraction_at(place), p.value());
            auto const slope = detail::vle::along_isobar(e);
            double const step = fraction_slope_at(place) / intervals;  // change of x per interval
            nodes_[i] = {e.ln_alpha, slope.ln_alpha_x * step, e.temperature - 273.15,
                         slope.temperature_x * step};
        }
        for (std::size_t i = 0; i < intervals; ++i) hold_monotone(nodes_[i], nodes_[i + 1]);
    }

    /// @return the pressure of the curve
    units::pressure pressure() const { return pressure_; }

    /// @param liquid mole fraction of the liquid
    /// @return mole fraction of the vapour over it
    mole_fraction vapour(mole_fraction liquid) const { return mole_fraction(vapour(liquid.value())); }
    /// @param liquid mole fraction of the liquid
    /// @return temperature at which it boils
    units::temperature temperature(mole_fraction liquid) const {
        return celsius(interpolate(liquid.value(), &node::celsius, &node::celsius_slope));
    }
    /// @param liquid mole fraction of the liquid
    /// @return relative volatility of ethanol to water
    double relative_volatility(mole_fraction liquid) const {
        return std::exp(interpolate(liquid.value(), &node::ln_alpha, &node::ln_alpha_slope));
    }

private:
    static constexpr std::size_t intervals = 512;
    static constexpr double skew = 0.1;  // spreads the weak end, where the volatility changes fastest

    struct node {
        double ln_alpha;
        double ln_alpha_slope;  // per interval
        double celsius;
        double celsius_slope;  // per interval
    };

    /// place of a mole fraction in the grid, 0 to 1, and back
    static double place_of(double x) { return x * (1.0 + skew) / (x + skew); }
    static double fraction_at(double place) { return skew * place / (1.0 + skew - place); }
    static double fraction_slope_at(double place) {
        double const rest = 1.0 + skew - place;
        return skew * (1.0 + skew) / (rest * rest);
    }

    double vapour(double x) const {
        double const alpha = std::exp(interpolate(x, &node::ln_alpha, &node::ln_alpha_slope));
        return alpha * x / (1.0 + (alpha - 1.0) * x);
    }

    /// Fritsch and Carlson's condition: where the volatility moves one way from node to node, neither end's
    /// slope may exceed three chords. The model's own slopes are well inside; this makes it certain.
    static void hold_monotone(node& a, node& b) {
        double const chord = b.ln_alpha - a.ln_alpha;
        for (double* const slope : {&a.ln_alpha_slope, &b.ln_alpha_slope}) {
            if (*slope * chord > 3.0 * chord * chord) *slope = 3.0 * chord;
        }
    }

    double interpolate(double x, double node::*value, double node::*slope_per_interval) const {
        double const place = place_of(x) * static_cast<double>(intervals);
        auto const i = static_cast<std::size_t>(place);
        std::size_t const left = i < intervals ? i : intervals - 1;
        double const u = place - static_cast<double>(left);
        node const& a = nodes_[left];
        node const& b = nodes_[left + 1];
        double const rise = b.*value - a.*value;
        double const from = a.*slope_per_interval - rise;
        double const to = rise - b.*slope_per_interval;
        return a.*value + u * (rise + (1.0 - u) * (from * (1.0 - u) + to * u));
    }

    units::pressure pressure_;
    std::vector<node> nodes_;
};

}  // namespace aqueth
