// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/equilibrium.hpp>
#include <aqueth/equilibrium_curve.hpp>
#include <aqueth/error.hpp>
#include <aqueth/model/vapour_deviations.hpp>
#include <aqueth/numeric/polynomial.hpp>
#include <aqueth/strength.hpp>
#include <aqueth/units.hpp>

#include <cmath>

/// @file
/// Uncertainty of the strength of a vapour. Over washes it is the largest uncertainty of a distillation. At
/// 101 kPa most measured vapours over x = 0.01 to 0.1 are below the model, by 0.016 mole fraction on average.
/// The model follows the static pressures, so the library states the difference as a standard uncertainty and
/// does not correct it.

namespace aqueth::inline AQUETH_ABI {

namespace detail {

namespace measured = model::vapour_deviations;

inline double require_measured_vapours(char const* property, units::pressure p) {
    return require_range(property, argument::pressure, in(p, kilopascal), "kPa", measured::lowest_kilopascal,
                         measured::highest_kilopascal, "where vapours were measured");
}

}  // namespace detail

/// @param p absolute pressure
/// @return whether there are enough measured vapours near p to state an uncertainty: 25 to 300 kPa
[[nodiscard]] inline bool vapour_uncertainty_known(units::pressure p) {
    namespace measured = detail::measured;
    double const kpa = in(p, kilopascal);
    return kpa >= measured::lowest_kilopascal && kpa <= measured::highest_kilopascal;
}

/// Relative standard uncertainty of the model's relative volatility.
/// @param liquid strength of the liquid, in any basis
/// @param p      absolute pressure, 25 to 300 kPa
/// @return relative standard uncertainty: 0.105 over weak washes, 0.04 over a liquid of 50 % mol
/// @throws refusal if the pressure is outside that range: too few vapours were measured there
/// @par Accuracy
/// good to a third: five to seven sets of measurements, each counting once
/// @par Source
/// @ref source_vapour_deviations
template <strength_basis Strength>
[[nodiscard]] double relative_volatility_uncertainty(Strength liquid, units::pressure p) {
    double const x = to<mole_fraction>(liquid).value();
    detail::require_measured_vapours("uncertainty of the relative volatility", p);
    return model::vapour_deviations::uncertainty(x).value;
}

/// Standard uncertainty of the vapour of an equilibrium: y (1 - y) times that of the relative volatility.
/// @param e result of `bubble_point`, `dew_point` or `coexistence`, at 25 to 300 kPa
/// @return standard uncertainty of the mole fraction of the vapour: 0.02 over x = 0.07, 0.003 at x = 0.9
/// @throws refusal if the pressure is outside that range: too few vapours were measured there
/// @par Accuracy
/// good to a third; bias and scatter are both in it, by composition in @ref fit_report, section 9
/// @par Source
/// @ref source_vapour_deviations
[[nodiscard]] inline double vapour_uncertainty(equilibrium const& e) {
    detail::require_measured_vapours("uncertainty of the vapour", e.pressure);
    double const y = e.vapour.value();
    return y * (1.0 - y) * model::vapour_deviations::uncertainty(e.liquid.value()).value;
}

/// Standard uncertainty of the liquid of an equilibrium whose vapour is known, as `dew_point` finds it.
/// @param e result of `dew_point`, at 25 kPa or more and where all mixtures boil below 120 °C
/// @return standard uncertainty of the mole fraction of the liquid
/// @throws refusal if the pressure is outside its range: too few vapours were measured there
/// @par Accuracy
/// as `vapour_uncertainty`, to first order
/// @par Source
/// @ref source_vapour_deviations
[[nodiscard]] inline double liquid_uncertainty(equilibrium const& e) {
    double const of_vapour = vapour_uncertainty(e);
    detail::require_vle_pressure("uncertainty of the liquid", e.liquid.value(), e.pressure);
    auto const there = detail::vle::bubble_at_pressure(e.liquid.value(), e.pressure.value());
    return of_vapour / detail::vle::along_isobar(there).y_x;
}

namespace detail {

/// Shifts the logarithm of a relative volatility by a number of standard uncertainties. The azeotrope does
/// not move: it is known to within 0.005 of the model, far better than single vapours near it. From the last
/// band below the azeotrope on, the shift is proportional to the logarithm itself.
class volatility_shift {
public:
    volatility_shift(units::pressure p, double uncertainties)
        : uncertainties_(require_range("shifted vapour", argument::number_of_standard_uncertainties,
                                       uncertainties, "", -3.0, 3.0)) {
        require_measured_vapours("shifted vapour", p);
        part_ = uncertainties_ * measured::uncertainty(last).value /
                vle::bubble_at_pressure(last, p.value()).ln_alpha;
    }

    /// @param x        mole fraction of the liquid
    /// @param of_model logarithm of the model's relative volatility there, with its slope in x
    /// @return the same, shifted
    numeric::value_and_slope<double> operator()(double x,
                                                numeric::value_and_slope<double> const& of_model) const {
        if (x > last) return {of_model.value * (1.0 + part_), of_model.slope * (1.0 + part_)};
        auto const u = measured::uncertainty(x);
        return {of_model.value + uncertainties_ * u.value, of_model.slope + uncertainties_ * u.slope};
    }

private:
    /// mean composition of the last band below the azeotrope
    static constexpr double last = measured::bands[measured::bands.size() - 2].x;

    double uncertainties_;
    double part_;  ///< of the logarithm, beyond the last band
};

}  // namespace detail

/// The same liquid with a shifted vapour: the model's plus a number of standard uncertainties.
/// @param e             result of `bubble_point`, at 25 kPa or more and where all mixtures boil below 120 °C
/// @param uncertainties how far: -1 is a vapour weaker by one standard uncertainty; -3 to 3. Near the
///                      azeotrope less, because the azeotrope stays where it is
/// @return the equilibrium with another vapour and relative volatility; liquid, temperature and pressure stay
/// @throws refusal if the pressure or the shift is outside its range
/// @par Accuracy
/// as `vapour_uncertainty`
/// @par Source
/// @ref source_vapour_deviations
inline equilibrium with_vapour_shifted(equilibrium const& e, double uncertainties) {
    detail::volatility_shift const shift(e.pressure, uncertainties);
    double const ln_alpha = shift(e.liquid.value(), {std::log(e.relative_volatility), 0.0}).value;
    double const alpha = std::exp(ln_alpha), x = e.liquid.value();
    equilibrium result = e;
    result.relative_volatility = alpha;
    result.vapour = mole_fraction(alpha * x / (1.0 + (alpha - 1.0) * x));
    return result;
}

/// The equilibrium at one pressure with every vapour shifted by a number of standard uncertainties. Two
/// forecasts of a run, with and without the shift, show the effect of the vapour's uncertainty:
/// `boiling_curve(curve_with_vapour_shifted(p, -1.0))` takes the place of `boiling_curve(p)`.
/// @param p             absolute pressure, 25 to 198 kPa
/// @param uncertainties how far: -1 is a vapour weaker by one standard uncertainty; -3 to 3. Near the
///                      azeotrope less, because the azeotrope stays where it is
/// @return the curve; boiling temperatures are the model's
/// @throws refusal if the pressure or the shift is outside its range
/// @par Accuracy
/// as `vapour_uncertainty`
/// @par Source
/// @ref source_vapour_deviations
inline equilibrium_curve curve_with_vapour_shifted(units::pressure p, double uncertainties) {
    return equilibrium_curve(p, detail::volatility_shift(p, uncertainties));
}

}  // namespace aqueth::inline AQUETH_ABI
