// SPDX-License-Identifier: BSL-1.0
#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>

#include <boost/math/differentiation/autodiff.hpp>
#include <boost/multiprecision/cpp_dec_float.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <random>

namespace aqueth::correlation::oiml_r22 {
namespace {

using decimal = boost::multiprecision::cpp_dec_float_50;

TEST(OimlR22Inverse, InverseWorksInMultiprecision) {
    decimal const w = mass_fraction_from_density<decimal>(density<decimal>(decimal("0.37"), 10), 10);
    EXPECT_LT(abs(w - decimal("0.37")), decimal("1e-45"));
}

TEST(OimlR22Inverse, InverseCarriesItsDerivative) {
    // dw/drho at constant t is the reciprocal of drho/dw.
    namespace ad = boost::math::differentiation;
    for (double const w : {0.05, 0.4, 0.8}) {
        auto const rho = ad::make_fvar<double, 1>(density(w, 15.0));
        using scalar = std::decay_t<decltype(rho)>;
        scalar const inverse = mass_fraction_from_density(rho, scalar(15.0));
        EXPECT_NEAR(inverse.derivative(0), w, 1e-14);
        EXPECT_NEAR(inverse.derivative(1) * density_with_derivatives(w, 15.0).d_mass_fraction, 1.0, 1e-12);
    }
}

/// Calls f(w, t, isotherm) for mixtures that are liquid from -20 to 40 °C.
/// @param parts  of the range of mass fractions, pure water left out
/// @param degree step of the temperature
template <class F>
void over_liquids(int parts, double degree, F const& f) {
    for (int i = 1; i <= parts; ++i) {
        double const w = static_cast<double>(i) / parts;
        for (double t = -20.0; t <= 40.0; t += degree) {
            if (freezing_point::covers(w) && t < freezing_point::celsius(w)) continue;
            f(w, t, isotherm<double>(t));
        }
    }
}

TEST(OimlR22Inverse, FirstGuessesForArraysKeepTheirStatedErrors) {
    over_liquids(200, 0.5, [](double w, double t, isotherm<double> const& at_t) {
        isotherm<float> const as_float(static_cast<float>(t));
        double const rho = at_t.density(w), q = w * rho / at_t.density(1.0);
        double const s = guess_composition(static_cast<float>(rho), static_cast<float>(t));
        EXPECT_NEAR(s, 2.0 * w - 1.0, 0.003) << w << " " << t;
        double const from_float = guess_mass_fraction(as_float, static_cast<float>(q));
        EXPECT_NEAR(from_float / w, 1.0, 4e-7) << w << " " << t;
        EXPECT_NEAR(guess_mass_fraction(at_t, q) / w, 1.0, 1e-8) << w << " " << t;  // the step itself
    });
    for (int i = 1; i <= 2000; ++i) {
        double const w = i / 2000.0, q = volume_fraction_from_mass_fraction(w, 20.0);
        double const from_float = guess_mass_fraction_at_20_celsius(static_cast<float>(q));
        EXPECT_NEAR(from_float / w, 1.0, 3.2e-6) << w;
    }
}

/// What loops over arrays do, for one mixture.
template <class T>
refined_mass_fraction<T> as_arrays_do(T rho, T t) {
    T const s = guess_composition(static_cast<float>(rho), static_cast<float>(t));
    auto const residual = density_residual(isotherm<T>(t), rho);
    auto const first = numeric::householder_step(numeric::polynomial_taylor<4>(residual, s));
    return newton_step_to_density(residual, T(s + first.step), first.inverse_slope);
}

TEST(OimlR22Inverse, StepsForArraysConvergeForEveryLiquid) {
    double most = 0.0;
    over_liquids(500, 0.25, [&](double w, double t, isotherm<double> const& at_t) {
        auto const refined = as_arrays_do(at_t.density(w), t);
        EXPECT_GE(refined.convergence_margin, 0.0) << w << " " << t;
        // A density is rounded, and so is its evaluation.
        double const noise = 4e-13 / -at_t.density_and_slope(w).slope;
        EXPECT_NEAR(refined.mass_fraction, w, noise) << w << " " << t;
        most = (std::max)(most, std::abs(refined.mass_fraction - w) / noise);
        auto const as_float = as_arrays_do(static_cast<float>(at_t.density(w)), static_cast<float>(t));
        EXPECT_GE(as_float.convergence_margin, 0.0f) << w << " " << t;
    });
    EXPECT_GT(most, 0.1);  // otherwise the noise is estimated too large
}

TEST(OimlR22Inverse, OneStepFromTheGuessOfAConcentrationIsEnough) {
    auto const expect_mixture = [](isotherm<double> const& at_t, double w, double guess) {
        double const rho = at_t.density(w);
        auto const series = density_series(at_t, guess);
        EXPECT_NEAR(halley_mass_fraction(w * rho, guess, series) / w, 1.0, 1.5e-15) << w;
        EXPECT_NEAR(halley_density(w * rho, guess, series), rho, 5e-13) << w;
    };
    over_liquids(500, 0.5, [&](double w, double t, isotherm<double> const& at_t) {
        float const q = static_cast<float>(volume_fraction_from_mass_fraction(w, t));
        expect_mixture(at_t, w, guess_mass_fraction(isotherm<float>(static_cast<float>(t)), q));
    });
    for (int i = 1; i <= 10000; ++i) {
        double const w = i / 10000.0;
        float const q = static_cast<float>(volume_fraction_from_mass_fraction(w, 20.0));
        expect_mixture(isotherm<double>(20.0), w, guess_mass_fraction_at_20_celsius(q));
    }
}

/// Two numbers that count operations on them: an inverse for one mixture evaluates the formula with such
/// pairs, so that the test can count its steps.
template <class T>
class counting_pair {
public:
    counting_pair() = default;
    counting_pair(T a, T b) : first_(a), second_(b) {}
    T first() const {
        ++looks;
        return first_;
    }
    T second() const { return second_; }
    friend counting_pair operator*(counting_pair const& a, counting_pair const& b) {
        return {a.first_ * b.first_, a.second_ * b.second_};
    }
    friend counting_pair operator+(counting_pair const& a, counting_pair const& b) {
        return {a.first_ + b.first_, a.second_ + b.second_};
    }
    friend counting_pair multiply_add(counting_pair const& a, counting_pair const& b,
                                      counting_pair const& c) {
        ++operations;
        return {a.first_ * b.first_ + c.first_, a.second_ * b.second_ + c.second_};
    }

    static inline int operations = 0;
    static inline int looks = 0;

private:
    T first_{};
    T second_{};
};

/// Operations on pairs during f.
template <class T, class F>
int operations(F const& f) {
    counting_pair<T>::operations = 0;
    f();
    return counting_pair<T>::operations;
}

// A good first guess and a good step show in the number of steps.
template <class T>
void expect_few_steps() {
    using pair = counting_pair<T>;
    int const step = operations<T>([] { numeric::halved_polynomial_taylor(std::array<pair, 6>{}, T(0)); });
    int warm = 0, cold = 0, several_if_warm = 0, several_if_cold = 0, readings = 0, several_for_reading = 0;
    for (int i = 1; i < 200; ++i) {
        T const w = static_cast<T>(i) / T(200), q = w;
        int const table = operations<T>([&] { density_ratio_at_20_celsius<pair, T>(q).value(); });
        for (T t = T(-20); t <= T(40); t += T(1)) {
            auto const is_ice = [&](T const& mass_fraction) {
                return freezing_point::covers(mass_fraction) && t < freezing_point::celsius(mass_fraction);
            };
            T reading = T(0);
            int const from_reading =
                operations<T>([&] { reading = fractions_from_reading<pair>(q, t, T(1)).first(); });
            int const making = operations<T>([&] { isotherm<T, pair>{t}; });
            if (reading > T(0) && reading < T(1) && !is_ice(reading)) {
                int const beside = making + table;
                EXPECT_GE(from_reading, beside + step) << q << " " << t;
                ++readings;
                if (from_reading > beside + step) ++several_for_reading;
            }
            if (is_ice(w)) continue;
            isotherm<T, pair> const at(t);
            T const rho = at.density(w);
            int const from_density = operations<T>([&] { mass_fraction_from_density(at, rho); });
            EXPECT_GE(from_density, step) << w << " " << t;
            // where one is not enough another follows, with an isotherm of its own, before bracketing
            EXPECT_TRUE(from_density == step || from_density >= making + 2 * step) << w << " " << t;
            ++(t < T(0) ? cold : warm);
            if (from_density > step) ++(t < T(0) ? several_if_cold : several_if_warm);
            int const from_concentration =
                operations<T>([&] { mass_fraction_from_concentration(at, w * rho); }) - table;
            EXPECT_GE(from_concentration, step) << w << " " << t;
            EXPECT_LE(from_concentration, t == T(20) ? step : 2 * step) << w << " " << t;
        }
    }
    EXPECT_LT(100 * several_if_warm, 2 * warm);
    EXPECT_LT(100 * several_if_cold, 15 * cold);
    EXPECT_LT(100 * several_for_reading, 5 * readings);
}

TEST(OimlR22Inverse, InversesForOneMixtureTakeFewSteps) {
    expect_few_steps<double>();
    expect_few_steps<float>();
}

// The same for scalars that have no fast inverse. Averages, because rounding decides about the last
// evaluation.
TEST(OimlR22Inverse, BracketingEvaluatesTheFormulaAFewTimes) {
    using scalar = long double;
    if (std::numeric_limits<scalar>::digits != 64) GTEST_SKIP() << "more digits take more looks";
    using pair = counting_pair<scalar>;
    int liquids = 0, for_density = 0, for_concentration = 0;
    auto const looks = [](auto const& f) {
        pair::looks = 0;
        f();
        return pair::looks / 6;  // there are as many pairs of coefficients
    };
    for (int i = 1; i < 100; ++i) {
        double const w = i / 100.0;
        for (double t = -20.0; t <= 40.0; t += 4.0) {
            if (freezing_point::covers(w) && t < freezing_point::celsius(w)) continue;
            isotherm<scalar, pair> const at{scalar(t)};
            scalar const rho = at.density(scalar(w)), concentration = scalar(w) * rho;
            ++liquids;
            for_density += looks([&] { mass_fraction_from_density(at, rho); });
            for_concentration += looks([&] { mass_fraction_from_concentration(at, concentration); });
        }
    }
    EXPECT_LT(10 * for_density, 77 * liquids);
    EXPECT_LT(10 * for_concentration, 57 * liquids);
}

// A reading gives a density, a density the mixture: here by two separate functions.
TEST(OimlR22Inverse, ReadingsGiveTheMixtureOfTheirDensity) {
    // one unit in the last place of a density is 1e-13 kg/m3, and a liquid's falls by 6 kg/m3 at least
    double const noise = 4e-14;
    for (int i = 1; i < 400; ++i) {
        double const q = i / 400.0;
        density_ratio_at_20_celsius<numeric::pair<double>, double> const ratio(q);
        EXPECT_NEAR(ratio.approximate_value(), ratio.value(), 2e-7) << q;
        for (double t = -20.0; t <= 40.0; t += 2.5) {
            for (double const expansion : {0.999, 1.0, 1.0005}) {
                auto const found = mixture_from_reading(q, t, expansion);
                double const w = mass_fraction_from_density(mixture_at_20_celsius(q).density(expansion), t);
                EXPECT_NEAR(found.mass_fraction, w, noise) << q << " " << t;
                EXPECT_NEAR(found.volume_fraction, volume_fraction_from_mass_fraction(w, 20.0), noise)
                    << q << " " << t;
            }
        }
    }
}

// The test measures the start also by the curvature: 3.4 times the slope for the liquid that is hardest to
// invert, so that 3e-6 is too far there and not elsewhere.
TEST(OimlR22Inverse, ConvergenceTestIsStricterWhereTheCurveIsBent) {
    double const allowed = fast_inverse<double>::halley_radius;
    auto const converged_from = [](double w, double t, double off) {
        isotherm<double> const at(t);
        double const s = 2.0 * w - 1.0 + off;
        auto const residual = numeric::polynomial_taylor<3>(density_residual(at, at.density(w)), s);
        return fast_inverse<double>::density_converged(halley_step_to_density(residual, s));
    };
    EXPECT_FALSE(converged_from(0.2925, -19.7, 0.75 * allowed));
    EXPECT_TRUE(converged_from(0.2925, -19.7, 0.2 * allowed));
    EXPECT_TRUE(converged_from(0.5, 20.0, 0.75 * allowed));
    EXPECT_FALSE(converged_from(0.5, 20.0, 1.25 * allowed));
}

TEST(OimlR22Inverse, NewtonStepOfArraysMustBeShort) {
    isotherm<double> const at_20(20.0);
    auto const residual = density_residual(at_20, at_20.density(0.3));
    double const slope = 0.5 * at_20.density_and_slope(0.3).slope;  // in s = 2 w - 1
    for (double const sign : {-1.0, 1.0}) {
        double const allowed = sign * fast_inverse<double>::newton_radius;
        EXPECT_GE(newton_step_to_density(residual, -0.4 + 0.9 * allowed, 1.0 / slope).convergence_margin,
                  0.0);
        EXPECT_LT(newton_step_to_density(residual, -0.4 + 1.1 * allowed, 1.0 / slope).convergence_margin,
                  0.0);
        EXPECT_NEAR(newton_step_to_density(residual, -0.4 + 0.9 * allowed, 1.0 / slope).mass_fraction, 0.3,
                    2e-15);
    }
}

TEST(OimlR22Inverse, ConvergenceTestRejectsDensitiesOfNoMixture) {
    // Densities that no mixture has, and what an iteration might run away from.
    double const nan = std::numeric_limits<double>::quiet_NaN();
    isotherm<double> const at_20(20.0);
    for (double const rho : {-1e300, -1.0, 0.0, 500.0, 788.0, 1000.0, 1200.0, 1e300, nan}) {
        EXPECT_FALSE(fast_inverse<double>::density_converged(as_arrays_do(rho, 20.0))) << rho;
        double const w = mass_fraction_from_density(at_20, rho);
        EXPECT_TRUE(std::isnan(rho) ? std::isnan(w) : w == (rho > 900.0 ? 0.0 : 1.0)) << rho;
    }
    for (double const c : {-1e300, -1.0, 800.0, 1e300, nan}) {
        double const guess = guess_mass_fraction_at_20_celsius(static_cast<float>(c / 789.0));
        double const w = halley_mass_fraction(c, guess, density_series(at_20, guess));
        EXPECT_FALSE(w >= 0.0 && w <= 1.0) << c;
    }
}

TEST(OimlR22Inverse, InversesAreExactAtTheEnds) {
    for (double const t : {-20.0, 0.0, 15.0, 20.0, 40.0}) {
        EXPECT_EQ(mass_fraction_from_density(density(0.0, t), t), 0.0);
        EXPECT_EQ(mass_fraction_from_density(density(1.0, t), t), 1.0);
        EXPECT_EQ(mass_fraction_from_volume_fraction(0.0, t), 0.0);
        EXPECT_DOUBLE_EQ(mass_fraction_from_volume_fraction(1.0, t), 1.0);
    }
}

template <class T>
void expect_nothing_stronger_than_ethanol() {
    for (int i = 0; i <= 1200; ++i) {
        quick_isotherm<T> const at(T(-20) + T(i) / T(20));
        T concentration = at.density(T(1));
        for (int k = 0; k < 10; ++k) {
            EXPECT_LE(mass_fraction_from_concentration(at, concentration), T(1)) << i << " " << k;
            concentration = std::nextafter(concentration, T(0));
        }
    }
}

TEST(OimlR22Inverse, RoundingMakesNothingStrongerThanEthanol) {
    expect_nothing_stronger_than_ethanol<double>();
    expect_nothing_stronger_than_ethanol<float>();
}

TEST(OimlR22Inverse, NaNInNaNOut) {
    double const nan = std::numeric_limits<double>::quiet_NaN();
    EXPECT_TRUE(std::isnan(mass_fraction_from_density(nan, 20.0)));
    EXPECT_TRUE(std::isnan(mass_fraction_from_density(900.0, nan)));
    EXPECT_TRUE(std::isnan(mass_fraction_from_volume_fraction(nan, 20.0)));
}

TEST(OimlR22Inverse, StrengthsAt20CelsiusOutsideZeroToOneGiveNaN) {
    double const infinity = std::numeric_limits<double>::infinity();
    double const nan = std::numeric_limits<double>::quiet_NaN();
    double const past_one = std::nextafter(1.0, 2.0);
    for (double const q :
         {-infinity, -1.0, -std::numeric_limits<double>::denorm_min(), past_one, infinity, nan}) {
        EXPECT_TRUE(std::isnan(mixture_at_20_celsius(q).mass_fraction())) << q;
        EXPECT_TRUE(std::isnan(mixture_at_20_celsius(q).density())) << q;
    }
    EXPECT_EQ(mixture_at_20_celsius(0.0).mass_fraction(), 0.0);
    EXPECT_EQ(mixture_at_20_celsius(1.0).mass_fraction(), 1.0);
}

// Inverses work at compile time with both compilers.
static_assert(mass_fraction_from_volume_fraction(1.0, 20.0) == 1.0);

// long double has no fast inverse.
TEST(OimlR22Inverse, BracketingInvertsConcentrations) {
    for (double const t : {-10.0, 20.0, 40.0}) {
        isotherm<long double> const slow(t);
        for (double w = 0.3; w <= 1.0; w += 0.05) {
            long double const c = w * slow.density(static_cast<long double>(w));
            EXPECT_NEAR(static_cast<double>(mass_fraction_from_concentration(slow, c)), w, 1e-14) << w;
        }
    }
}

// Last, because they take longest.
TEST(OimlR22Inverse, DensityInverseClosesOnAMillionRandomPoints) {
    std::mt19937_64 random(20);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    double worst_relative = 0.0;
    double worst_absolute = 0.0;
    for (int i = 0; i < 1000000; ++i) {
        // a third spread over the decades of weak mixtures, where a relative closure is hardest
        double const w = i % 3 == 0 ? std::pow(10.0, -8.0 * unit(random)) : unit(random);
        double const t = -20.0 + 60.0 * unit(random);
        double const off = std::abs(mass_fraction_from_density(density(w, t), t) - w);
        if (w > 1e-3) {
            worst_relative = (std::max)(worst_relative, off / w);
        } else {
            worst_absolute = (std::max)(worst_absolute, off);
        }
    }
    EXPECT_LE(worst_relative, 1e-12);
    EXPECT_LE(worst_absolute, 1e-14);
}

TEST(OimlR22Inverse, VolumeFractionInverseClosesOnAMillionRandomPoints) {
    std::mt19937_64 random(22);
    std::uniform_real_distribution<double> unit(0.0, 1.0);
    double worst_relative = 0.0;
    for (int i = 0; i < 1000000; ++i) {
        double const w = i % 3 == 0 ? std::pow(10.0, -8.0 * unit(random)) : unit(random);
        double const t = 15.0 + 5.0 * unit(random);
        double const q = volume_fraction_from_mass_fraction(w, t);
        worst_relative =
            (std::max)(worst_relative, std::abs(mass_fraction_from_volume_fraction(q, t) - w) / w);
    }
    EXPECT_LE(worst_relative, 2e-15);
}

}  // namespace
}  // namespace aqueth::correlation::oiml_r22
