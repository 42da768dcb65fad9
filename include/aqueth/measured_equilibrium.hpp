// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/gas_constant.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/equilibrium_points.hpp>
#include <aqueth/error.hpp>
#include <aqueth/number_table.hpp>
#include <aqueth/numeric/monotone_cubic.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/units.hpp>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <string_view>
#include <utility>
#include <vector>

namespace aqueth::inline AQUETH_ABI {

/// A measured pair of liquid and vapour in equilibrium, with the boiling temperature if it was measured too.
struct measured_point {
    mole_fraction liquid;                             ///< ethanol in the liquid
    mole_fraction vapour;                             ///< ethanol in the vapour
    std::optional<units::temperature> temperature{};  ///< boiling temperature
};

/// Reads measured points from CSV text, as parse_equilibrium_points does: each with its vapour, all of one
/// pressure.
/// @param text contents of the file (UTF-8)
/// @return the points, in the order of the lines
/// @throws text_error as parse_equilibrium_points does, and if a point has no vapour or its pressure differs
///         from that of the first by more than 0.5 %
[[nodiscard]] inline std::vector<measured_point> parse_measured_points(std::string_view text) {
    std::vector<equilibrium_point> const all = parse_equilibrium_points(text).points;
    std::vector<measured_point> points;
    for (equilibrium_point const& each : all) {
        if (!each.vapour) number_table::fail(each.line, "", "a boiling point without its vapour");
        if (each.pressure && all.front().pressure && !of_pressure(each, *all.front().pressure))
            number_table::fail(each.line, "", "its pressure is not that of the first point");
        points.push_back({each.liquid, *each.vapour, each.temperature});
    }
    return points;
}

/// Result of a check of measured points against the Gibbs-Duhem equation.
struct [[nodiscard]] consistency {
    double area_percent;                   ///< departure of the area test, % of the sum of both areas' sizes
    double mean_vapour_deviation;          ///< mean of |measured - model| in the vapour's mole fraction
    double largest_vapour_deviation;       ///< largest of them
    double mean_temperature_deviation;     ///< mean of |measured - model| in K; 0 without temperatures
    double largest_temperature_deviation;  ///< largest of them
    double measured_share;  ///< share of the range from pure water to pure ethanol that was measured
    /// area below 10 %, at least half of the range measured, mean deviations from the model below 0.02 in the
    /// vapour and below 1 K in temperature
    bool trusted;
};

/// A table of measured equilibrium points, for use in place of the model.
///
/// A monotone cubic interpolates the logarithm of the relative volatility, so interpolation neither adds nor
/// removes an azeotrope. Nothing is extrapolated.
/// @par Source
/// Monotone cubic @ref source_fritsch_carlson
class [[nodiscard]] measured_equilibrium {
public:
    /// @param points   at least four, of different liquid composition; pure liquids (0 and 1) are allowed and
    ///                 used only for the temperature; either all or none with a temperature
    /// @param pressure absolute pressure of the measurement, 1.6 to 198 kPa
    /// @throws refusal if there are too few points, two have the same liquid, a vapour is 0 or 1 over a
    ///         liquid that is not, only some have temperatures, or the pressure is outside its range
    measured_equilibrium(std::vector<measured_point> points, units::pressure pressure)
        : pressure_(pressure), points_(sorted(std::move(points))), ln_alpha_(volatility()) {
        detail::require_vle_pressure(property, 0.0, pressure);
        detail::require_vle_pressure(property, 1.0, pressure);
        if (has_temperature()) {
            std::vector<double> x;
            std::vector<double> t;
            for (auto const& point : points_) {
                x.push_back(point.liquid.value());
                t.push_back(point.temperature->celsius());
            }
            celsius_.emplace(std::move(x), t);
        }
    }

    /// @return the points, weakest liquid first
    std::vector<measured_point> const& points() const { return points_; }
    /// @return whether temperatures were measured
    bool has_temperature() const { return points_.front().temperature.has_value(); }
    /// @return pressure of the measurement
    units::pressure pressure() const { return pressure_; }

    /// @param liquid mole fraction of the liquid, within the measured range
    /// @return mole fraction of the vapour over it
    /// @throws refusal if the liquid is outside the measured range
    mole_fraction vapour(mole_fraction liquid) const {
        double const x = liquid.value();
        require_range(property, argument::mole_fraction_of_the_liquid, liquid.percent(), mole_fraction::unit,
                      100.0 * lowest_, 100.0 * highest_, "the measured range");
        double const alpha = std::exp(ln_alpha_(x).value);
        return mole_fraction(alpha * x / (1.0 + (alpha - 1.0) * x));
    }
    /// @param liquid mole fraction of the liquid, within the measured range
    /// @return boiling temperature
    /// @throws refusal if the liquid is outside the measured range or no temperatures were measured
    units::temperature temperature(mole_fraction liquid) const {
        require_range(property, argument::number_of_measured_temperatures,
                      has_temperature() ? static_cast<double>(points_.size()) : 0.0, "", 4.0, 1e9);
        require_range(property, argument::mole_fraction_of_the_liquid, liquid.percent(), mole_fraction::unit,
                      points_.front().liquid.percent(), points_.back().liquid.percent(),
                      "the measured range");
        return celsius((*celsius_)(liquid.value()).value);
    }

    /// The measured volatility for an integrator's inner loop. A run of a still passes through every strength
    /// down to water. Outside the measured range the curve has the model's volatility, scaled to join the
    /// measured one. Its boiling temperatures are the model's.
    /// @return the curve
    equilibrium_curve curve() const {
        auto const joined = [this](double x) {
            auto const model = detail::vle::bubble_at_pressure(x, pressure_.value());
            return ln_alpha_(x).value - model.ln_alpha;
        };
        double const below = joined(lowest_);
        double const above = joined(highest_);
        return equilibrium_curve(pressure_, [&](double x, numeric::value_and_slope<double> const& model) {
            if (x < lowest_) return numeric::value_and_slope<double>{model.value + below, model.slope};
            if (x > highest_) return numeric::value_and_slope<double>{model.value + above, model.slope};
            return ln_alpha_(x);
        });
    }

    /// Checks the thermodynamic consistency of the points.
    ///
    /// Area test (Redlich and Kister 1948, with the enthalpy term for constant pressure): the integral over x
    /// from 0 to 1 of ln(gamma1/gamma2) - (H^E/(R T^2)) dT/dx vanishes for consistent data. Saturation
    /// pressures, vapour non-ideality, H^E, and the integrand outside the measured range come from the
    /// library's model. A vanishing area proves little by itself, because errors may cancel. The result
    /// therefore includes the deviations from the model. Below 10 % counts as consistent: common practice.
    /// @return areas and deviations
    /// @par Source
    /// Area test @ref source_redlich_kister; the model it leans on @ref source_excess_gibbs
    consistency check() const {
        double sum = 0.0;
        double size = 0.0;
        constexpr int steps = 400;
        for (int i = 0; i < steps; ++i) {  // midpoints: the ends themselves are never needed
            double const x = (i + 0.5) / steps;
            double const integrand = area_integrand(x);
            sum += integrand / steps;
            size += std::abs(integrand) / steps;
        }
        consistency result{100.0 * std::abs(sum) / size, 0.0, 0.0, 0.0, 0.0, highest_ - lowest_, false};
        double count = 0.0;
        for (auto const& point : points_) {
            auto const model = bubble_point(point.liquid, pressure_);
            double const off = std::abs(point.vapour.value() - model.vapour.value());
            result.mean_vapour_deviation += off;
            result.largest_vapour_deviation = (std::max)(result.largest_vapour_deviation, off);
            if (point.temperature) {
                double const warmer = std::abs((*point.temperature - model.temperature).value());
                result.mean_temperature_deviation += warmer;
                result.largest_temperature_deviation =
                    (std::max)(result.largest_temperature_deviation, warmer);
            }
            count += 1.0;
        }
        result.mean_vapour_deviation /= count;
        result.mean_temperature_deviation /= count;
        result.trusted = result.area_percent < 10.0 && result.measured_share >= 0.5 &&
                         result.mean_vapour_deviation < 0.02 && result.mean_temperature_deviation < 1.0;
        return result;
    }

private:
    static constexpr char const* property = "measured equilibrium";

    static std::vector<measured_point> sorted(std::vector<measured_point> points) {
        require_range(property, argument::number_of_points, static_cast<double>(points.size()), "", 4.0, 1e9);
        std::sort(points.begin(), points.end(),
                  [](auto const& a, auto const& b) { return a.liquid < b.liquid; });
        for (std::size_t i = 0; i < points.size(); ++i) {
            if (i > 0) {
                require_range(property, argument::distance_between_the_liquids_of_two_points,
                              points[i].liquid.percent() - points[i - 1].liquid.percent(),
                              mole_fraction::unit, 1e-9, 100.0, "two points of the same liquid");
            }
            bool const with_temperature = points[i].temperature.has_value();
            if (with_temperature != points[0].temperature.has_value()) {
                require_range(property, argument::temperature_of_a_point, std::nan(""), "°C", 0.0, 120.0,
                              "either all points have one or none");
            }
            if (with_temperature) {
                require_range(property, argument::temperature, points[i].temperature->celsius(), "°C", 0.01,
                              120.0, detail::vle_source);
            }
        }
        return points;
    }

    numeric::monotone_cubic volatility() {
        std::vector<double> x;
        std::vector<double> ln_alpha;
        for (auto const& point : points_) {
            double const liquid = point.liquid.value();
            double const vapour = point.vapour.value();
            if (liquid == vapour && (liquid == 0.0 || liquid == 1.0))
                continue;  // a pure liquid has no volatility
            require_range(property, argument::vapour_over_a_mixture, point.vapour.percent(),
                          mole_fraction::unit, 1e-9, 100.0 - 1e-9, "both components must be present");
            require_range(property, argument::liquid_under_a_mixed_vapour, point.liquid.percent(),
                          mole_fraction::unit, 1e-9, 100.0 - 1e-9, "both components must be present");
            x.push_back(liquid);
            ln_alpha.push_back(std::log(vapour / (1.0 - vapour) * (1.0 - liquid) / liquid));
        }
        require_range(property, argument::number_of_mixed_points, static_cast<double>(x.size()), "", 4.0,
                      1e9);
        lowest_ = x.front();
        highest_ = x.back();
        return numeric::monotone_cubic(std::move(x), ln_alpha);
    }

    double area_integrand(double x) const {
        auto const model = detail::vle::bubble_at_pressure(x, pressure_.value());
        bool const inside = x >= lowest_ && x <= highest_;
        bool const with_temperature = inside && celsius_;
        double const t = with_temperature ? (*celsius_)(x).value + 273.15 : model.temperature;
        double const t_slope =
            with_temperature ? (*celsius_)(x).slope : detail::vle::along_isobar(model).temperature_x;
        auto const g = model::excess_gibbs::reduced_gibbs(x, t);
        double const ln_alpha_model = detail::vle::bubble_at_temperature(x, t).ln_alpha;
        double const ln_alpha = inside ? ln_alpha_(x).value : model.ln_alpha;
        // the model's difference of ln alpha and ln(gamma1/gamma2): saturation pressures and the vapour's
        // non-ideality
        double const rest = ln_alpha_model - (g.ethanol - g.water);
        double const excess = model::excess_gibbs::enthalpy(x, t).molar;
        return ln_alpha - rest - excess / (correlation::gas_constant::molar * t * t) * t_slope;
    }

    units::pressure pressure_;
    std::vector<measured_point> points_;
    double lowest_ = 0.0;   // of the liquids with a volatility
    double highest_ = 1.0;  // set by volatility(), hence declared before ln_alpha_
    numeric::monotone_cubic ln_alpha_;
    std::optional<numeric::monotone_cubic> celsius_;
};

}  // namespace aqueth::inline AQUETH_ABI
