// SPDX-License-Identifier: BSL-1.0
//
// Fits the excess volume of ethanol and water from -5 to 100 °C, for the density above 40 °C.
//
//   hot_density tables coefficients > include/aqueth/model/hot_density_coefficients.hpp
//   hot_density tables report       > docs/hot_density_report.txt
//   hot_density tables agreement      exit status 0 if the library's coefficients agree with a fresh fit
#include "table.hpp"

#include <aqueth/correlation/ethanol_schroeder.hpp>
#include <aqueth/correlation/iapws_liquid_water.hpp>
#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/model/hot_density.hpp>
#include <aqueth/model/vapour_liquid.hpp>
#include <aqueth/plain/freezing.hpp>

#include <Eigen/Dense>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <exception>
#include <numbers>
#include <string>
#include <vector>

namespace aqueth::fit {
namespace {

namespace hot = model::hot_density;
namespace mass = correlation::molar_mass;
namespace r22 = correlation::oiml_r22;

constexpr int powers = 7;                                      ///< of 1 - 2x
constexpr std::array<int, powers> terms{3, 3, 3, 3, 3, 2, 2};  ///< of each, powers of the temperature
constexpr int unknowns = 19;
constexpr int boiling_intervals = 200;
constexpr int degree = 6;  ///< of the volumes of the pure liquids

/// A density at 0.1 MPa.
struct observation {
    double mass_fraction, celsius, density;
};
struct data_set {
    std::string name;
    double sigma;  ///< standard deviation that we give it: its weight, kg/m3
    std::vector<observation> rows;
};

/// molar volumes of the pure liquids, cm3/mol
double water_volume(double t) {
    return 1e3 * mass::water * correlation::iapws_liquid_water::specific_volume(t);
}
double ethanol_volume(double t) {
    return 1e3 * mass::ethanol / correlation::ethanol_schroeder::liquid_density(t);
}

/// What each coefficient adds to the molar volume.
Eigen::VectorXd basis(double x, double t) {
    Eigen::VectorXd b(unknowns);
    double const tau = hot::scaled_temperature(t);
    Eigen::Index i = 0;
    double power = x * (1.0 - x);
    for (int k = 0; k < powers; ++k, power *= 1.0 - 2.0 * x) {
        double factor = power;
        for (int j = 0; j < terms[static_cast<std::size_t>(k)]; ++j, factor *= tau) b(i++) = factor;
    }
    return b;
}
double ideal_volume(double x, double t) { return x * ethanol_volume(t) + (1.0 - x) * water_volume(t); }

struct model {
    Eigen::VectorXd coefficients;
    double density(double w, double t) const {
        double const x = mass::mole_fraction_from_mass_fraction(w);
        return 1e3 * mass::mixture(w) / (ideal_volume(x, t) + coefficients.dot(basis(x, t)));
    }
};

std::vector<data_set> published_sets(std::string const& folder) {
    std::vector<data_set> sets(4);
    sets[0] = {"OIML R 22, -5 to 40 °C", 0.1, {}};
    for (double const t : {-5.0, 0.0, 10.0, 20.0, 30.0, 40.0}) {
        for (int i = 0; i <= 40; ++i) {
            double const w = i / 40.0;
            if (plain::liquid_range(w, t).ok) sets[0].rows.push_back({w, t, r22::density(w, t)});
        }
    }
    auto const pecar = read_table(folder + "/pecar_dolecek_2005.csv");
    sets[1] = {"Pecar & Dolecek, 50 °C", 0.3, {}};
    sets[2] = {"Pecar & Dolecek, 75 °C", 0.3, {}};
    for (std::size_t i = 0; i < pecar.rows().size(); ++i) {
        double const t = pecar.number(i, "temperature_c");
        double const x = pecar.number(i, "ethanol_mole_fraction");
        sets[t < 60.0 ? 1 : 2].rows.push_back(
            {mass::mass_fraction_from_mole_fraction(x), t, pecar.number(i, "density_kg_per_m3")});
    }
    // The difference from water, carried from its two lowest pressures to 0.1 MPa along a straight line: by
    // at most 0.013 kg/m3.
    auto const dilute = read_table(folder + "/hyncica_2004.csv");
    sets[3] = {"Hyncica, dilute, 25 to 100 °C", 0.03, {}};
    auto const number = [&](std::size_t i, char const* name) { return dilute.number(i, name); };
    for (std::size_t i = 0; i < dilute.rows().size(); ++i) {
        double const t = number(i, "temperature_k") - 273.15;
        if (number(i, "pressure_kpa") > 3000.0 || t > correlation::iapws_liquid_water::highest_celsius)
            continue;
        double const molality = number(i, "molality_mol_per_kg");
        double const p = number(i, "pressure_kpa");
        double difference = number(i, "difference_kg_per_m3");
        for (std::size_t j = 0; j < dilute.rows().size(); ++j) {
            double const higher = number(j, "pressure_kpa");
            if (std::abs(number(j, "temperature_k") - 273.15 - t) < 0.1 && higher > 3000.0 &&
                higher < 20000.0 && std::abs(number(j, "molality_mol_per_kg") - molality) < 0.001) {
                difference += (100.0 - p) / (higher - p) * (number(j, "difference_kg_per_m3") - difference);
            }
        }
        double const ethanol = molality * mass::ethanol * 1e-3;
        sets[3].rows.push_back({ethanol / (1.0 + ethanol), t,
                                1.0 / correlation::iapws_liquid_water::specific_volume(t) + difference});
    }
    return sets;
}

/// Pulls every coefficient towards zero by this much of a standard deviation per unit: negligible where there
/// are data, but enough to determine a combination that no remaining set determines.
constexpr double ridge = 0.01;

/// Weighted least squares.
/// @param left_out place of a set to leave out; -1: none
model solve(std::vector<data_set> const& sets, int left_out = -1) {
    std::vector<Eigen::VectorXd> rows;
    std::vector<double> right;
    for (std::size_t s = 0; s < sets.size(); ++s) {
        if (static_cast<int>(s) == left_out) continue;
        for (auto const& o : sets[s].rows) {
            double const x = mass::mole_fraction_from_mass_fraction(o.mass_fraction);
            double const molar = mass::mixture(o.mass_fraction);
            double const volume = 1e3 * molar / o.density;
            double const weight = o.density / volume / sets[s].sigma;  // from volume to density
            rows.push_back(weight * basis(x, o.celsius));
            right.push_back(weight * (volume - ideal_volume(x, o.celsius)));
        }
    }
    for (Eigen::Index i = 0; i < unknowns; ++i) {
        rows.push_back(ridge * Eigen::VectorXd::Unit(unknowns, i));
        right.push_back(0.0);
    }
    Eigen::MatrixXd left(static_cast<Eigen::Index>(rows.size()), unknowns);
    for (std::size_t i = 0; i < rows.size(); ++i) left.row(static_cast<Eigen::Index>(i)) = rows[i];
    return {left.colPivHouseholderQr().solve(
        Eigen::Map<Eigen::VectorXd const>(right.data(), static_cast<Eigen::Index>(right.size())))};
}

double boiling_celsius(double w) {
    return aqueth::model::vapour_liquid::bubble_at_pressure(mass::mole_fraction_from_mass_fraction(w),
                                                            101325.0)
               .temperature -
           273.15;
}

/// Polynomial of the scaled temperature through a pure liquid's molar volume, fitted at Chebyshev's points.
template <class Volume>
Eigen::VectorXd polynomial(Volume const& volume) {
    constexpr int points = 40;
    Eigen::MatrixXd left(points, degree + 1);
    Eigen::VectorXd right(points);
    for (int i = 0; i < points; ++i) {
        double const place = std::cos(std::numbers::pi * (i + 0.5) / points);
        double const t = 0.5 * (hot::lowest_celsius + hot::highest_celsius) +
                         0.5 * (hot::highest_celsius - hot::lowest_celsius) * place;
        double power = 1.0;
        for (int k = 0; k <= degree; ++k, power *= hot::scaled_temperature(t)) left(i, k) = power;
        right(i) = volume(t);
    }
    return left.colPivHouseholderQr().solve(right);
}

void print_array(char const* words, char const* name, Eigen::VectorXd const& c) {
    std::printf("/// %s\ninline constexpr std::array<double, %d> %s{", words, static_cast<int>(c.size()),
                name);
    for (Eigen::Index k = 0; k < c.size(); ++k) std::printf("%s%.10e", k > 0 ? ", " : "", c(k));
    std::puts("};");
}

void print_header(model const& m) {
    std::puts("// SPDX-License-Identifier: BSL-1.0\n"
              "// Generated by src/fit/hot_density.cpp from tables/. Do not edit: build the target fit.\n"
              "#pragma once\n\n#include <aqueth/version.hpp>\n\n#include <array>\n\n"
              "namespace aqueth::inline AQUETH_ABI::model::hot_density {\n\n// clang-format off");
    print_array("Molar volume of water, cm3/mol: powers of the scaled temperature.", "water_volume",
                polynomial(water_volume));
    print_array("Molar volume of ethanol, cm3/mol: the same.", "ethanol_volume", polynomial(ethanol_volume));
    std::printf("/// Excess volume, cm3/mol: row k multiplies x (1 - x) (1 - 2x)^k, a polynomial each.\n"
                "inline constexpr std::array<std::array<double, 3>, %d> excess{{\n",
                powers);
    Eigen::Index next = 0;
    for (std::size_t k = 0; k < powers; ++k) {
        std::printf("    {");
        for (int j = 0; j < 3; ++j)
            std::printf("%s%.10e", j > 0 ? ", " : "", j < terms[k] ? m.coefficients(next++) : 0.0);
        std::printf("}%s\n", k + 1 < powers ? "," : "}};");
    }
    std::printf("/// Boiling points at 101.325 kPa, °C, in equal steps of the mass fraction from 0 to 1.\n"
                "inline constexpr std::array<double, %d> boiling_points{",
                boiling_intervals + 1);
    for (int i = 0; i <= boiling_intervals; ++i)
        std::printf("%s%s%.6f", i > 0 ? "," : "", i % 10 == 0 ? "\n    " : " ",
                    boiling_celsius(static_cast<double>(i) / boiling_intervals));
    std::puts("};\n// clang-format on\n\n}  // namespace aqueth::inline AQUETH_ABI::model::hot_density");
}

struct summary {
    double rms = 0.0, bias = 0.0, largest = 0.0;
};
template <class Density>
summary compare(Density const& density, std::vector<observation> const& rows) {
    summary s;
    for (auto const& o : rows) {
        double const d = density(o.mass_fraction, o.celsius) - o.density;
        s.rms += d * d;
        s.bias += d;
        s.largest = (std::max)(s.largest, std::abs(d));
    }
    auto const n = static_cast<double>(rows.size());
    return {std::sqrt(s.rms / n), s.bias / n, s.largest};
}

void print_report(std::vector<data_set> const& sets) {
    auto const m = solve(sets);
    std::puts(
        "Density of ethanol and water above 40 °C: report of the fit, written by src/fit/hot_density.cpp\n\n"
        "V = x V_ethanol(t) + (1 - x) V_water(t) + x (1 - x) sum_k A_k(t) (1 - 2x)^k, k = 0 to 6; A_k of\n"
        "second degree in t, of the first for k = 5 and 6: 19 coefficients. V_water: IAPWS SR6-08. "
        "V_ethanol:\n"
        "equation of state of Schroeder and others, 2014, at 0.1 MPa.\n\n"
        "1. Every set: density calculated less measured, kg/m3, with the set in the fit, and with it left\n"
        "   out and so predicted. sd: standard deviation given to the set, its weight.\n\n"
        "                                               in the fit                 left out\n"
        "set                               n    sd     rms    bias  largest     rms    bias  largest");
    for (std::size_t s = 0; s < sets.size(); ++s) {
        auto const without = solve(sets, static_cast<int>(s));
        auto const in = compare([&](double w, double t) { return m.density(w, t); }, sets[s].rows);
        auto const out = compare([&](double w, double t) { return without.density(w, t); }, sets[s].rows);
        std::string name = sets[s].name;
        name.resize(31 + 1, ' ');  // a degree sign is two bytes
        std::printf("%s %4zu  %.2f  %6.3f  %+6.3f  %6.3f   %6.3f  %+6.3f  %6.3f\n", name.c_str(),
                    sets[s].rows.size(), sets[s].sigma, in.rms, in.bias, in.largest, out.rms, out.bias,
                    out.largest);
    }
    std::puts("\n2. The join. At 40 °C the law's value and slope replace those of the fit; the difference "
              "fades out\n"
              "   until 60 °C. Fit less law at 40 °C, and the law's polynomial continued less the library, "
              "kg/m3.\n\n"
              "% mass   value    slope, 1/K   continued to 50 °C   continued to 75 °C");
    for (int i = 0; i <= 10; ++i) {
        double const w = i / 10.0;
        double const h = 1e-3;
        double const slope = (m.density(w, 40.0 + h) - m.density(w, 40.0 - h)) / (2.0 * h);
        std::printf("%6.0f  %+6.3f    %+8.4f     %+8.2f             %+8.2f\n", 100.0 * w,
                    m.density(w, 40.0) - r22::density(w, 40.0),
                    slope - r22::density_with_derivatives(w, 40.0).d_temperature,
                    r22::density(w, 50.0) - hot::density(w, 50.0),
                    r22::density(w, 75.0) - hot::density(w, 75.0));
    }
    std::puts("\n3. The library itself, joined, against the measurements above 40 °C: calculated less "
              "measured, kg/m3\n\n"
              "set                               n     rms    bias  largest");
    for (std::size_t s = 1; s < sets.size(); ++s) {
        std::vector<observation> hot_rows;
        for (auto const& o : sets[s].rows)
            if (o.celsius > hot::lowest_celsius) hot_rows.push_back(o);
        auto const d = compare([](double w, double t) { return hot::density(w, t); }, hot_rows);
        std::string name = sets[s].name;
        name.resize(31 + 1, ' ');
        std::printf("%s %4zu  %6.3f  %+6.3f  %6.3f\n", name.c_str(), hot_rows.size(), d.rms, d.bias,
                    d.largest);
    }
}

/// Whether the library agrees with a fresh fit where the join no longer acts.
bool agrees(std::vector<data_set> const& sets) {
    auto const m = solve(sets);
    double worst = 0.0;
    for (double t = hot::joined_celsius; t <= hot::highest_celsius; t += 2.5)
        for (int i = 0; i <= 50; ++i) {
            double const d = hot::density(i / 50.0, t) - m.density(i / 50.0, t);
            if (!(std::abs(d) <= worst)) worst = std::abs(d);  // keeps a NaN
        }
    double boiling = 0.0;
    for (int i = 0; i <= 1000; ++i) {
        double const d = hot::boiling_celsius(i * 1e-3) - boiling_celsius(i * 1e-3);
        if (!(std::abs(d) <= boiling)) boiling = std::abs(d);
    }
    std::printf("library less fresh fit, at most: %.1e kg/m3; boiling points %.1e K\n", worst, boiling);
    // What the polynomials for the pure liquids leave, and straight lines between the boiling points.
    return worst <= 1e-4 && boiling < 0.005;
}

}  // namespace
}  // namespace aqueth::fit

int main(int argc, char** argv) try {
    using namespace aqueth::fit;
    std::string const what = argc == 3 ? argv[2] : "";
    if (what != "coefficients" && what != "report" && what != "agreement") {
        std::fputs("usage: hot_density TABLES coefficients|report|agreement\n", stderr);
        return 2;
    }
    auto const sets = published_sets(argv[1]);
    if (what == "coefficients") print_header(solve(sets));
    if (what == "report") print_report(sets);
    return what == "agreement" && !agrees(sets) ? 1 : 0;
} catch (std::exception const& error) {
    std::fprintf(stderr, "hot_density: %s\n", error.what());
    return 2;
}
