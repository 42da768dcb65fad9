// SPDX-License-Identifier: BSL-1.0
//
// Effect of rounding on results: the kernels in float, double and long double against themselves in 50
// digits, and a proven bound for those that are plain arithmetic. The constants of the code, which are
// doubles, are the definition here; their relation to printed decimals is checked in tests/oiml_r22_test.cpp.
#include <aqueth/correlation/air_buoyancy.hpp>
#include <aqueth/correlation/balling.hpp>
#include <aqueth/correlation/cipm_2001_water.hpp>
#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/correlation/iapws_liquid_water.hpp>
#include <aqueth/correlation/icao_atmosphere.hpp>
#include <aqueth/correlation/its90.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/correlation/thermal_conductivity_melinder.hpp>
#include <aqueth/correlation/trade_scales.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/model/enthalpy.hpp>
#include <aqueth/model/hot_density.hpp>
#include <aqueth/model/methanol_water.hpp>
#include <aqueth/model/refraction.hpp>
#include <aqueth/model/sample_distillation.hpp>
#include <aqueth/model/sound_speed.hpp>
#include <aqueth/model/sugar_solution.hpp>
#include <aqueth/model/traces.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/model/viscosity.hpp>

#include <boost/multiprecision/cpp_dec_float.hpp>
#include <boost/numeric/interval.hpp>
#include <gtest/gtest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <limits>
#include <string>
#include <type_traits>
#include <vector>

namespace aqueth::correlation {
namespace {

using decimal = boost::multiprecision::cpp_dec_float_50;
using arguments = std::array<double, 2>;

/// The range of an argument.
struct range {
    double lower, upper;
    bool weak = false;  ///< every third value spread over eight decades of weak mixtures
};

constexpr range strengths{0.0, 1.0, true}, r22_celsius{-20.0, 40.0}, vle_kelvin{273.16, 393.15},
    caloric_kelvin{273.15, 390.0};

/// Points that fill a rectangle evenly without lying on a grid, and its corners.
std::vector<arguments> points(int count, range const& first, range const& second = {0.0, 0.0}) {
    auto const along = [](range const& r, double u, int k) {
        if (r.weak && k % 3 == 0) return r.upper * std::pow(10.0, -8.0 * u);
        return r.lower + u * (r.upper - r.lower);
    };
    std::vector<arguments> result{{first.lower, second.lower},
                                  {first.lower, second.upper},
                                  {first.upper, second.lower},
                                  {first.upper, second.upper}};
    double whole;
    // 1/g and 1/g^2, where g^3 = g + 1: additive recurrence in the plane
    for (int k = 1; k <= count; ++k) {
        result.push_back({along(first, std::modf(0.5 + k * 0.7548776662466927, &whole), k),
                          along(second, std::modf(0.5 + k * 0.5698402909980532, &whole), k)});
    }
    return result;
}

/// The first arguments replaced by what a function gives, in double, so that inverses get realistic
/// arguments.
template <class F>
std::vector<arguments> through(std::vector<arguments> all, F const& f) {
    for (auto& each : all) each[0] = f(each[0], each[1]);
    return all;
}

enum class scale {
    own,     ///< error over the result itself
    largest  ///< error over the largest result of the sweep, for results that pass through zero
};

struct limits {
    double in_float, in_double, in_long_double;
};

/// Compares f in three precisions with f in 50 digits at the same arguments. The limits are the errors
/// reached with g++ 12 and clang 14 on x86-64 (both alike), plus a seventh.
/// @param f called with two scalars of one type
template <class F>
void compare(char const* property, scale by, std::vector<arguments> const& all, F const& f,
             limits const& allowed) {
    struct errors {
        decimal worst = 0;
        bool numbers = true;
        void add(decimal const& value, decimal const& exact, scale s) {
            decimal off = abs(value - exact);
            if (s == scale::own && exact != 0) off /= abs(exact);
            if (!(off == off)) numbers = false;
            if (off > worst) worst = off;
        }
    } in_float, in_double, in_long_double;
    decimal largest = by == scale::own ? 1 : 0;
    for (auto const& each : all) {
        decimal const exact = f(decimal(each[0]), decimal(each[1]));
        in_double.add(decimal(f(each[0], each[1])), exact, by);
        in_long_double.add(decimal(f(static_cast<long double>(each[0]), static_cast<long double>(each[1]))),
                           exact, by);
        float const a = static_cast<float>(each[0]), b = static_cast<float>(each[1]);
        in_float.add(decimal(f(a, b)), f(decimal(a), decimal(b)), by);
        if (by == scale::largest) largest = (std::max)(largest, decimal(abs(exact)));
    }
    auto const shown = [&](errors const& e) { return static_cast<double>(e.worst / largest); };
    std::printf("%-52s %6zu  %-7s %8.1e %9.1e %11.1e\n", property, all.size(),
                by == scale::own ? "own" : "largest", shown(in_float), shown(in_double),
                shown(in_long_double));
    testing::Test::RecordProperty(property, std::to_string(shown(in_double) * 1e16) + "e-16");
    EXPECT_TRUE(in_float.numbers && in_double.numbers && in_long_double.numbers) << property;
    EXPECT_LE(shown(in_float), allowed.in_float) << property;
    EXPECT_LE(shown(in_double), allowed.in_double) << property;
    bool const longer = std::numeric_limits<long double>::digits > std::numeric_limits<double>::digits;
    EXPECT_LE(shown(in_long_double), longer ? allowed.in_long_double : allowed.in_double) << property;
}

constexpr int dense = 2000;  // points for arithmetic
constexpr int sparse = 250;  // points for functions with many logarithms in 50 digits

TEST(ExactArithmetic, EveryPropertyInThreePrecisions) {
    namespace r22 = oiml_r22;
    std::printf("%-52s %6s  %-7s %8s %9s %11s\n", "largest error against 50 digits", "points", "over",
                "float", "double", "long double");

    auto const density = [](auto const& w, auto const& t) { return r22::density(w, t); };
    auto const plane = points(dense, strengths, r22_celsius);
    compare("density, OIML R 22", scale::own, plane, density, {1.3e-7, 1.7e-16, 7.9e-20});
    compare("its slope in mass fraction", scale::largest, plane,
            [](auto const& w, auto const& t) { return r22::density_with_derivatives(w, t).d_mass_fraction; },
            {2.5e-6, 4.3e-15, 2.6e-18});
    compare("its slope in temperature", scale::largest, plane,
            [](auto const& w, auto const& t) { return r22::density_with_derivatives(w, t).d_temperature; },
            {1.9e-6, 3.7e-15, 1.8e-18});
    namespace hot = model::hot_density;
    compare("density above 40 °C", scale::own, points(dense, strengths, {40.0, 100.0}),
            [](auto const& w, auto const& t) { return hot::density(w, t); }, {4.2e-7, 7.0e-16, 2.8e-19});
    compare("its specific volume's slope in temperature", scale::largest,
            points(dense, strengths, {40.0, 100.0}),
            [](auto const& w, auto const& t) { return hot::specific_volume(w, t).slope; },
            {1.4e-5, 1.8e-14, 1.0e-17});
    compare("specific volume of water, IAPWS", scale::own, points(dense, {-20.0, 110.0}),
            [](auto const& t, auto const&) { return iapws_liquid_water::specific_volume(t); },
            {4.7e-7, 7.4e-16, 3.9e-19});
    compare("mass fraction from density", scale::largest,
            through(points(dense, strengths, r22_celsius), density),
            [](auto const& rho, auto const& t) { return r22::mass_fraction_from_density(rho, t); },
            {2.1e-6, 7.9e-15, 4.2e-18});  // a unit of the density's last place, where the slope is least

    compare("viscosity", scale::own, points(dense, strengths, {0.0, 70.0}),
            [](auto const& w, auto const& t) { return model::viscosity::millipascal_seconds(w, t); },
            {2.0e-6, 4.5e-15, 1.2e-18});
    compare("speed of sound", scale::own, points(dense, strengths, {20.0, 35.0}),
            [](auto const& w, auto const& t) { return model::sound_speed::metres_per_second(w, t); },
            {3.0e-7, 4.2e-16, 1.7e-19});
    compare("thermal conductivity", scale::own, points(dense, {0.11, 0.6}, {-20.0, 20.0}),
            [](auto const& w, auto const& t) {
                return thermal_conductivity_melinder::watts_per_metre_kelvin(w, t);
            },
            {3.0e-7, 4.2e-16, 1.7e-19});
    compare("must scale (KMW) from degrees Oechsle", scale::own, points(dense, {1.0, 216.0}),
            [](auto const& degrees, auto const&) { return trade_scales::kmw_of_oechsle(degrees); },
            {2.0e-7, 3.6e-16, 1.7e-19});

    auto const references = points(dense, strengths, {15.0, 20.0});
    compare("volume fraction from mass fraction", scale::own, references,
            [](auto const& w, auto const& t) { return r22::volume_fraction_from_mass_fraction(w, t); },
            {1.8e-7, 3.2e-16, 1.5e-19});
    compare("mass fraction from volume fraction", scale::own, references,
            [](auto const& q, auto const& t) { return r22::mass_fraction_from_volume_fraction(q, t); },
            {2.5e-7, 1.1e-15, 2.0e-19});
    auto const at_20 = points(dense, strengths, {20.0, 20.0});
    compare("the same at 20 degrees, from its table", scale::own, at_20,
            [](auto const& q, auto const& t) {
                using scalar = std::decay_t<decltype(q)>;
                if constexpr (std::is_same_v<scalar, double>) {
                    return r22::mixture_at_20_celsius(q).mass_fraction();
                } else {
                    return r22::mass_fraction_from_volume_fraction(q, t);
                }
            },
            {3.0e-7, 5.0e-16, 2.2e-19});
    compare("mole fraction from mass fraction", scale::own, points(dense, strengths),
            [](auto const& w, auto const&) { return molar_mass::mole_fraction_from_mass_fraction(w); },
            {1.9e-7, 3.2e-16, 1.7e-19});
    compare("mass fraction from mole fraction", scale::own, points(dense, strengths),
            [](auto const& x, auto const&) { return molar_mass::mass_fraction_from_mole_fraction(x); },
            {1.8e-7, 4.0e-16, 1.8e-19});
    compare("indication of a balance over the mass", scale::own, points(dense, {700.0, 1400.0}),
            [](auto const& rho, auto const&) { return air_buoyancy::indication_per_mass(rho); },
            {9.7e-8, 1.5e-16, 9.4e-20});

    auto const readings = points(dense, {0.0, 1.0}, r22_celsius);
    compare("mass fraction from an alcoholometer's reading", scale::largest, readings,
            [](auto const& q, auto const& t) { return measurement_model::mass_fraction_from_reading(q, t); },
            {2.6e-6, 5.0e-15, 2.7e-18});
    compare("strength by volume from the reading", scale::largest, readings,
            [](auto const& q, auto const& t) {
                return measurement_model::volume_fraction(
                    measurement_model::mass_fraction_from_reading(q, t));
            },
            {3.0e-6, 5.8e-15, 3.2e-18});

    compare("density of water, CIPM-2001", scale::own, points(dense, {0.0, 40.0}),
            [](auto const& t, auto const&) { return cipm_2001_water::density(t); },
            {9.8e-8, 1.3e-16, 6.3e-20});
    compare("t68 from t90", scale::largest, points(dense, {-20.0, 120.0}),
            [](auto const& t, auto const&) { return its90::t68_from_t90(t); }, {3.7e-8, 6.8e-17, 3.4e-20});
    compare("t90 from t68", scale::largest, points(dense, {-20.0, 120.0}),
            [](auto const& t, auto const&) { return its90::t90_from_t68(t); }, {3.7e-8, 6.8e-17, 3.4e-20});
    compare("freezing point", scale::largest, points(dense, {0.0, 0.68, true}),
            [](auto const& w, auto const&) { return freezing_point::celsius(w); },
            {9.4e-8, 1.7e-16, 4.2e-20});
    compare("pressure at an altitude", scale::own, points(sparse, {-500.0, 11000.0}),
            [](auto const& h, auto const&) { return icao_atmosphere::pressure(h); },
            {6.0e-7, 1.1e-15, 4.9e-19});

    auto const sugar = points(dense, {0.0, 0.7, true}, {0.0, 80.0});
    compare("density of sucrose solution, beyond water", scale::largest, sugar,
            [](auto const& w, auto const& t) { return sucrose_density::excess(w, t).value; },
            {1.7e-7, 2.9e-16, 1.8e-19});
    auto const liqueurs = points(dense, {0.0, 0.4, true}, {0.0, 0.3});
    compare("density of sweetened spirit, sucrose", scale::own, liqueurs,
            [](auto const& w, auto const& s) {
                using T = std::remove_cvref_t<decltype(w)>;
                return model::sugar_solution::density(w, s, sweetener::sucrose, T(15));
            },
            {1.9e-7, 4.6e-16, 1.5e-19});
    compare("density of sweetened spirit, invert sugar", scale::own, liqueurs,
            [](auto const& w, auto const& s) {
                using T = std::remove_cvref_t<decltype(w)>;
                return model::sugar_solution::density(w, s, sweetener::invert_sugar, T(15));
            },
            {2.3e-7, 4.6e-16, 1.6e-19});
    compare("refractive index of sweetened spirit", scale::own, liqueurs,
            [](auto const& w, auto const& s) { return model::refraction::index(w, s, sweetener::sucrose); },
            {1.4e-7, 2.8e-16, 1.3e-19});
    compare("density of methanol and water", scale::own, points(dense, strengths),
            [](auto const& w, auto const&) { return model::methanol_water::density(w); },
            {2.5e-7, 3.8e-16, 1.6e-19});
    compare("refractive index of methanol and water", scale::own, points(dense, strengths),
            [](auto const& w, auto const&) { return model::methanol_water::index(w); },
            {1.6e-7, 2.7e-16, 1.3e-19});
    compare("strength of a distilled sample", scale::own, points(sparse, {0.01, 0.5}, {5.0, 35.0}),
            [](auto const& w, auto const& t) {
                using T = std::remove_cvref_t<decltype(w)>;
                return model::sample_distillation::volume_fraction(T(1), t, T(1), w, T(20), T(0.002));
            },
            {3.2e-7, 5.9e-16, 2.0e-19});
    auto const worts = points(dense, {6.0, 30.0}, {0.0, 5.9});
    compare("alcohol, Balling", scale::largest, worts,
            [](auto const& oe, auto const& re) { return balling::alcohol(oe, re); },
            {1.7e-7, 1.9e-16, 7.5e-20});
    compare("original extract, Balling", scale::own, points(dense, {0.1, 12.0}, {0.1, 10.0}),
            [](auto const& a, auto const& re) { return balling::original_extract(a, re); },
            {2.1e-7, 3.7e-16, 1.8e-19});
    compare("real extract, Balling", scale::largest, points(dense, {6.0, 30.0}, {0.0, 6.0}),
            [](auto const& oe, auto const& a) { return balling::real_extract_from_alcohol(oe, a); },
            {7.2e-8, 1.2e-16, 5.7e-20});
    compare("alcohol factor, Balling", scale::own, points(dense, {6.0, 30.0}),
            [](auto const& oe, auto const&) { return balling::factor(oe); }, {7.8e-8, 7.9e-17, 3.8e-20});

    compare("saturation pressure of ethanol", scale::own, points(sparse, vle_kelvin),
            [](auto const& t, auto const&) { return ethanol_saturation_poling::pressure(t); },
            {1.9e-6, 5.2e-15, 1.7e-18});
    compare("saturation pressure of water", scale::own, points(sparse, vle_kelvin),
            [](auto const& t, auto const&) { return water_saturation_wagner_pruss::pressure(t); },
            {3.0e-6, 4.8e-15, 2.3e-18});
    compare("boiling temperature of ethanol", scale::own, points(sparse, {700.0, 4.0e5}),
            [](auto const& p, auto const&) { return ethanol_saturation_poling::temperature(p); },
            {2.1e-7, 5.0e-16, 1.9e-19});
    compare("boiling temperature of water", scale::own, points(sparse, {700.0, 1.9e5}),
            [](auto const& p, auto const&) { return water_saturation_wagner_pruss::temperature(p); },
            {2.2e-7, 4.0e-16, 1.9e-19});
    compare("second virial coefficient of water", scale::own, points(dense, vle_kelvin),
            [](auto const& t, auto const&) { return second_virial_crc::water(t).value; },
            {4.6e-7, 6.9e-16, 3.7e-19});

    auto const liquids = points(sparse, strengths, vle_kelvin);
    compare("excess Gibbs energy over RT", scale::largest, liquids,
            [](auto const& x, auto const& t) { return model::excess_gibbs::reduced_gibbs(x, t).molar; },
            {5.6e-7, 1.1e-15, 5.1e-19});
    compare("activity coefficient of ethanol", scale::own, liquids,
            [](auto const& x, auto const& t) {
                using std::exp;
                return std::decay_t<decltype(x)>(exp(model::excess_gibbs::reduced_gibbs(x, t).ethanol));
            },
            {2.9e-6, 5.6e-15, 2.5e-18});
    compare("activity coefficient of water", scale::own, liquids,
            [](auto const& x, auto const& t) {
                using std::exp;
                return std::decay_t<decltype(x)>(exp(model::excess_gibbs::reduced_gibbs(x, t).water));
            },
            {5.8e-7, 6.4e-16, 3.7e-19});
    compare("bubble pressure", scale::own, liquids,
            [](auto const& x, auto const& t) {
                return model::vapour_liquid::bubble_at_temperature(x, t).pressure;
            },
            {3.6e-6, 4.9e-15, 1.9e-18});
    compare("mole fraction in vapour at a temperature", scale::own, liquids,
            [](auto const& x, auto const& t) { return model::vapour_liquid::bubble_at_temperature(x, t).y; },
            {3.6e-6, 1.3e-14, 4.1e-18});
    auto const boiling = points(sparse, strengths, {1.0e4, 1.9e5});
    compare("bubble temperature", scale::own, boiling,
            [](auto const& x, auto const& p) {
                return model::vapour_liquid::bubble_at_pressure(x, p).temperature;
            },
            {2.1e-7, 4.4e-16, 1.8e-19});
    compare("mole fraction in vapour at a pressure", scale::own, boiling,
            [](auto const& x, auto const& p) { return model::vapour_liquid::bubble_at_pressure(x, p).y; },
            {4.0e-6, 9.2e-15, 4.2e-18});
    compare(
        "dew temperature", scale::own, points(30, {0.01, 0.85}, {1.0e4, 1.9e5}),
        [](auto const& y, auto const& p) { return model::vapour_liquid::dew_at_pressure(y, p).temperature; },
        {1.63e-7, 5.2e-16, 1.5e-19});

    compare("volatility of furfural", scale::own, points(sparse, strengths, {345.0, 376.0}),
            [](auto const& x, auto const& t) {
                return model::traces::volatility(trace::furfural, x, t, std::decay_t<decltype(x)>(101325.0));
            },
            {1.5e-6, 3.0e-15, 1.2e-18});

    auto const caloric = points(sparse, strengths, caloric_kelvin);
    compare("heat of mixing", scale::largest, caloric,
            [](auto const& x, auto const& t) { return model::excess_gibbs::enthalpy(x, t).molar; },
            {7.8e-7, 1.1e-15, 6.3e-19});
    compare("heat capacity of a liquid", scale::own, caloric,
            [](auto const& x, auto const& t) { return model::enthalpy::liquid_heat_capacity(x, t); },
            {1.8e-6, 1.4e-15, 7.8e-19});
    compare("enthalpy of a liquid", scale::largest, caloric,
            [](auto const& x, auto const& t) { return model::enthalpy::liquid(x, t); },
            {1.4e-6, 1.3e-15, 5.5e-19});
    compare("enthalpy of a vapour at 50 kPa", scale::own, caloric,
            [](auto const& y, auto const& t) {
                return model::enthalpy::vapour(y, t, std::decay_t<decltype(y)>(50000.0));
            },
            {5.7e-7, 6.9e-16, 3.3e-19});
    compare("heat capacity of a vapour at 50 kPa", scale::own, caloric,
            [](auto const& y, auto const& t) {
                return model::enthalpy::vapour_heat_capacity(y, t, std::decay_t<decltype(y)>(50000.0));
            },
            {2.8e-7, 4.2e-16, 2.3e-19});
    compare("heat of vaporization of ethanol", scale::own, points(sparse, caloric_kelvin),
            [](auto const& t, auto const&) { return model::enthalpy::ethanol_vaporization(t); },
            {3.3e-7, 5.7e-16, 2.8e-19});
    compare("heat of vaporization of water", scale::own, points(sparse, caloric_kelvin),
            [](auto const& t, auto const&) { return model::enthalpy::water_vaporization(t); },
            {4.3e-7, 5.2e-16, 2.3e-19});
}

// --- proof --------------------------------------------------------------------------------------------

/// Rounding for Boost.Interval that needs no rounding mode: to nearest, then one step outwards.
struct outward : boost::numeric::interval_lib::rounded_arith_exact<double> {
    static double down(double x) { return std::nextafter(x, -std::numeric_limits<double>::infinity()); }
    static double up(double x) { return std::nextafter(x, std::numeric_limits<double>::infinity()); }
    double add_down(double a, double b) { return down(a + b); }
    double add_up(double a, double b) { return up(a + b); }
    double sub_down(double a, double b) { return down(a - b); }
    double sub_up(double a, double b) { return up(a - b); }
    double mul_down(double a, double b) { return down(a * b); }
    double mul_up(double a, double b) { return up(a * b); }
    double div_down(double a, double b) { return down(a / b); }
    double div_up(double a, double b) { return up(a / b); }
};
using interval = boost::numeric::interval<
    double, boost::numeric::interval_lib::policies<boost::numeric::interval_lib::save_state_nothing<outward>,
                                                   boost::numeric::interval_lib::checking_base<double>>>;

/// A scalar for all doubles of a box at once: an interval of the exact result, and an upper bound of the
/// double result's error. Every operation adds half a unit in the last place of its result.
class bounded {
public:
    bounded() = default;
    explicit bounded(double constant) : exact_(constant) {}
    bounded(double lower, double upper) : exact_(lower, upper) {}

    interval const& exact() const { return exact_; }  ///< encloses the exact results of the box
    double error() const { return error_.upper(); }   ///< bound of |double result - exact result|
    interval computed() const {
        return exact_ + interval(-error(), error());
    }  ///< encloses the double results

    friend bounded operator+(bounded const& a, bounded const& b) {
        return rounded(a.exact_ + b.exact_, a.error_ + b.error_);
    }
    friend bounded operator-(bounded const& a, bounded const& b) {
        return rounded(a.exact_ - b.exact_, a.error_ + b.error_);
    }
    friend bounded operator*(bounded const& a, bounded const& b) {
        return rounded(a.exact_ * b.exact_,
                       abs(a.exact_) * b.error_ + abs(b.exact_) * a.error_ + a.error_ * b.error_);
    }
    friend bounded operator/(bounded const& a, bounded const& b) {
        // (a + da)/(b + db) - a/b = (da - (a/b) db)/(b + db)
        interval const ratio = a.exact_ / b.exact_;
        return rounded(ratio, (a.error_ + abs(ratio) * b.error_) / (abs(b.exact_) - b.error_));
    }
    bounded operator-() const {
        bounded result;
        result.exact_ = -exact_;
        result.error_ = error_;
        return result;
    }

private:
    static bounded rounded(interval const& exact, interval const& inherited) {
        constexpr double half_ulp = std::numeric_limits<double>::epsilon() / 2;
        double const most = inherited.upper();
        bounded result;
        result.exact_ = exact;
        interval const before_rounding = abs(exact) + interval(most);
        result.error_ = interval((interval(most) + before_rounding * interval(half_ulp) +
                                  interval(std::numeric_limits<double>::denorm_min()))
                                     .upper());
        return result;
    }

    interval exact_{0.0};
    interval error_{0.0};
};

/// Two of them, as the library keeps two doubles in one register: with it the kernel evaluates in the order
/// of its quick path, not in that of constant expressions.
class bounded_pair {
public:
    bounded_pair() = default;
    bounded_pair(bounded const& a, bounded const& b) : first_(a), second_(b) {}
    bounded_pair(double a, double b) : first_(a), second_(b) {}
    bounded const& first() const { return first_; }
    bounded const& second() const { return second_; }
    friend bounded_pair operator*(bounded_pair const& a, bounded_pair const& b) {
        return {a.first_ * b.first_, a.second_ * b.second_};
    }
    friend bounded_pair operator+(bounded_pair const& a, bounded_pair const& b) {
        return {a.first_ + b.first_, a.second_ + b.second_};
    }
    friend bounded_pair multiply_add(bounded_pair const& a, bounded_pair const& b, bounded_pair const& c) {
        return a * b + c;
    }

private:
    bounded first_, second_;
};

/// Covers a rectangle with boxes, bounds the error of f in each, and compares both with points of the box.
template <class F>
void prove(char const* property, range const& first, int columns, range const& second, int rows, F const& f,
           double allowed) {
    double error = 0.0, measured = 0.0;
    auto const edge = [](range const& r, int k, int count) {
        return k == count ? r.upper : r.lower + (r.upper - r.lower) * k / count;
    };
    for (int i = 0; i < columns; ++i) {
        for (int j = 0; j < rows; ++j) {
            SCOPED_TRACE(std::string(property) + ", box " + std::to_string(i) + ", " + std::to_string(j));
            double const a0 = edge(first, i, columns), a1 = edge(first, i + 1, columns);
            double const b0 = edge(second, j, rows), b1 = edge(second, j + 1, rows);
            bounded const result = f(bounded(a0, a1), bounded(b0, b1));
            error = (std::max)(error, result.error());
            interval const inside = result.computed();
            for (double const a : {a0, a0 + 0.3 * (a1 - a0), a1}) {
                for (double const b : {b0, b0 + 0.7 * (b1 - b0), b1}) {
                    double const in_double = f(a, b);
                    decimal const exact = f(decimal(a), decimal(b));
                    EXPECT_TRUE(inside.lower() <= in_double && in_double <= inside.upper());
                    EXPECT_TRUE(exact >= result.exact().lower() && exact <= result.exact().upper());
                    double const off = static_cast<double>(abs(decimal(in_double) - exact));
                    EXPECT_LE(off, result.error());
                    measured = (std::max)(measured, off);
                }
            }
        }
    }
    std::printf("%-52s %6d  %12.1e %12.1e\n", property, columns * rows, error, measured);
    testing::Test::RecordProperty(property, std::to_string(error * 1e16) + "e-16");
    EXPECT_LE(error, allowed) << property;
}

TEST(ExactArithmetic, ProvenBoundsOfPlainArithmetic) {
    std::printf("%-52s %6s  %12s %12s\n", "error of double", "boxes", "proven bound", "largest seen");
    prove(
        "density, OIML R 22, kg/m3", {0.0, 1.0}, 64, {-20.0, 40.0}, 24,
        [](auto const& w, auto const& t) {
            using scalar = std::decay_t<decltype(w)>;
            if constexpr (std::is_same_v<scalar, bounded>) {
                return oiml_r22::isotherm<bounded, bounded_pair>(t).density(w);
            } else {
                return oiml_r22::density(w, t);
            }
        },
        2.0e-12);
    prove(
        "the same in a constant expression", {0.0, 1.0}, 64, {-20.0, 40.0}, 24,
        [](auto const& w, auto const& t) {
            return oiml_r22::isotherm<std::decay_t<decltype(w)>>(t).density(w);
        },
        2.0e-12);
    prove(
        "volume fraction from mass fraction", {0.0, 1.0}, 64, {15.0, 20.0}, 2,
        [](auto const& w, auto const& t) { return oiml_r22::volume_fraction_from_mass_fraction(w, t); },
        2.2e-15);
    prove(
        "mole fraction from mass fraction", {0.0, 1.0}, 256, {0.0, 0.0}, 1,
        [](auto const& w, auto const&) { return molar_mass::mole_fraction_from_mass_fraction(w); }, 5.0e-16);
    prove(
        "mass fraction from mole fraction", {0.0, 1.0}, 256, {0.0, 0.0}, 1,
        [](auto const& x, auto const&) { return molar_mass::mass_fraction_from_mole_fraction(x); }, 5.0e-16);
    prove(
        "density of water, CIPM-2001, kg/m3", {0.0, 40.0}, 256, {0.0, 0.0}, 1,
        [](auto const& t, auto const&) { return cipm_2001_water::density(t); }, 2.6e-13);
    prove(
        "t68 from t90, K", {-20.0, 120.0}, 256, {0.0, 0.0}, 1,
        [](auto const& t, auto const&) { return its90::t68_from_t90(t); }, 1.5e-14);
    prove(
        "density of sucrose solution, beyond water, kg/m3", {0.0, 0.7}, 32, {0.0, 80.0}, 16,
        [](auto const& w, auto const& t) { return sucrose_density::excess(w, t).value; }, 4.7e-13);
    prove(
        "alcohol, Balling, % mass", {6.0, 30.0}, 64, {0.0, 5.9}, 16,
        [](auto const& oe, auto const& re) { return balling::alcohol(oe, re); }, 6.8e-15);
}

}  // namespace
}  // namespace aqueth::correlation
