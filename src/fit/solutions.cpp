// SPDX-License-Identifier: BSL-1.0
//
// Fits the refraction and the volume of dissolved ethanol, methanol and sugars to handbook tables at 20 °C.
//
//   solutions tables coefficients > include/aqueth/model/solution_coefficients.hpp
//   solutions tables report
//   solutions tables agreement    1 if the library has other constants
//
// All forms are linear in their coefficients: see include/aqueth/model/sugar_solution.hpp, refraction.hpp and
// methanol_water.hpp. Densities of ethanol and sucrose are those of the library.
#include "table.hpp"

#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/correlation/sucrose_density.hpp>
#include <aqueth/model/solution_coefficients.hpp>

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <exception>
#include <map>
#include <string>
#include <vector>

namespace {

using namespace aqueth;

/// One row: mass fraction of the solute, and the figure printed for it.
struct point {
    double w;
    double figure;
};
using solutes = std::map<std::string, std::vector<point>>;

constexpr int volume_terms = 3;      // of the volume of glucose and fructose beyond sucrose's
constexpr int methanol_terms = 6;    // of the excess volume of methanol-water
constexpr int refraction_terms = 2;  // of every solute

/// Up to where a solute is fitted. The density of sucrose solutions ends at 70 %; glucose bends away above 50
/// %; the indices of the pure alcohols, from another source, are 0.0004 to 0.0006 off the run of the others.
double last(std::string const& solute) { return solute == "sucrose" ? 0.7 : solute == "glucose" ? 0.5 : 1.0; }

double water() { return correlation::oiml_r22::density(0.0, 20.0); }

double sucrose_solution(double c) { return water() + correlation::sucrose_density::excess(c, 20.0).value; }

/// Specific volume of dissolved sugar by the density of its solution, m3/kg.
double apparent_volume(double c, double rho) { return (1.0 / rho - (1.0 - c) / water()) / c; }

solutes read(std::string const& path, char const* column) {
    auto const table = fit::read_table(path);
    solutes result;
    for (std::size_t i = 0; i < table.rows().size(); ++i) {
        double const w = table.number(i, "mass_percent") / 100.0;
        std::string const& solute = table.text(i, "id");
        if (w <= last(solute)) result[solute].push_back({w, table.number(i, column)});
    }
    return result;
}

/// Powers of x from `first`, times `weight`, into a row of the matrix.
void powers(Eigen::Ref<Eigen::RowVectorXd> row, double x, double weight) {
    for (Eigen::Index k = 0; k < row.size(); ++k) {
        row[k] = weight;
        weight *= x;
    }
}

/// Root mean square and largest deviation.
struct deviations {
    double squares = 0.0, largest = 0.0;
    int count = 0;
    void add(double d) {
        squares += d * d;
        largest = (std::max)(largest, std::abs(d));
        ++count;
    }
    double rms() const { return std::sqrt(squares / count); }
};

class fitted {
public:
    explicit fitted(std::string const& tables)
        : densities_(read(tables + "/crc_solution_density_20c.csv", "density_g_cm3")),
          indices_(read(tables + "/crc_refractive_index_20c.csv", "refractive_index")) {
        for (auto& [solute, points] : indices_) std::erase_if(points, [](point p) { return p.w == 1.0; });
        fit_sugar_volume("glucose");
        fit_sugar_volume("fructose");
        fit_methanol_volume();
        fit_refraction();
    }

    void print_header() const;
    void print_report() const;
    bool agrees() const;

private:
    // c (1/rho - (1 - c)/rho_w - c v_sucrose) is linear in the terms; the error of 1/rho is the same
    // everywhere
    void fit_sugar_volume(std::string const& which) {
        auto const& points = densities_.at(which);
        Eigen::MatrixXd a(static_cast<Eigen::Index>(points.size()), volume_terms);
        Eigen::VectorXd b(a.rows());
        for (Eigen::Index i = 0; i < a.rows(); ++i) {
            auto const [c, rho] = points[static_cast<std::size_t>(i)];
            Eigen::RowVectorXd row(volume_terms);
            powers(row, c, c);
            a.row(i) = row;
            b[i] = c * (apparent_volume(c, 1000.0 * rho) - apparent_volume(c, sucrose_solution(c)));
        }
        volume_[which] = a.colPivHouseholderQr().solve(b);
    }

    // 1/rho = (1 - w)/rho_w + w v + w (1 - w) (e0 + e1 s + ...), s = 2 w - 1
    void fit_methanol_volume() {
        auto const& points = densities_.at("methanol");
        Eigen::MatrixXd a(static_cast<Eigen::Index>(points.size()), 1 + methanol_terms);
        Eigen::VectorXd b(a.rows());
        for (Eigen::Index i = 0; i < a.rows(); ++i) {
            auto const [w, rho] = points[static_cast<std::size_t>(i)];
            a(i, 0) = w;
            Eigen::RowVectorXd row(methanol_terms);
            powers(row, 2.0 * w - 1.0, w * (1.0 - w));
            a.row(i).tail(methanol_terms) = row;
            b[i] = 1.0 / (1000.0 * rho) - (1.0 - w) / water();
        }
        volume_["methanol"] = a.colPivHouseholderQr().solve(b);
    }

    double density(std::string const& solute, double w) const {
        if (solute == "ethanol") return correlation::oiml_r22::density(w, 20.0);
        if (solute == "sucrose") return sucrose_solution(w);
        Eigen::VectorXd const& v = volume_.at(solute);
        double specific = (1.0 - w) / water();
        if (solute == "methanol") {
            Eigen::RowVectorXd row(methanol_terms);
            powers(row, 2.0 * w - 1.0, w * (1.0 - w));
            specific += w * v[0] + row.dot(v.tail(methanol_terms));
        } else {
            Eigen::RowVectorXd row(volume_terms);
            powers(row, w, w);
            specific += w * apparent_volume(w, sucrose_solution(w)) + row.dot(v);
        }
        return 1.0 / specific;
    }

    // r = r_w + w (a0 + a1 w + ...) for every solute, with one r_w; d n = 0.55 rho d r nearly, so the error
    // of r is the same everywhere
    void fit_refraction() {
        Eigen::Index rows = 0, columns = 1;
        for (auto const& [solute, points] : indices_) {
            rows += static_cast<Eigen::Index>(points.size());
            columns += refraction_terms;
        }
        Eigen::MatrixXd a = Eigen::MatrixXd::Zero(rows, columns);
        Eigen::VectorXd b(rows);
        Eigen::Index i = 0, first = 1;
        for (auto const& [solute, points] : indices_) {
            for (auto const& [w, n] : points) {
                a(i, 0) = 1.0;
                Eigen::RowVectorXd row(refraction_terms);
                powers(row, w, w);
                a.row(i).segment(first, refraction_terms) = row;
                b[i++] = 1000.0 * (n * n - 1.0) / (n * n + 2.0) / density(solute, w);
            }
            first += refraction_terms;
        }
        Eigen::VectorXd const x = a.colPivHouseholderQr().solve(b);
        water_refraction_ = x[0];
        first = 1;
        for (auto const& [solute, points] : indices_) {
            refraction_[solute] = x.segment(first, refraction_terms);
            first += refraction_terms;
        }
    }

    double index(std::string const& solute, double w) const {
        Eigen::VectorXd const& r = refraction_.at(solute);
        Eigen::RowVectorXd row(r.size());
        powers(row, w, w);
        double const x = (water_refraction_ + row.dot(r)) * density(solute, w) / 1000.0;
        return std::sqrt((1.0 + 2.0 * x) / (1.0 - x));
    }

    solutes densities_, indices_;
    std::map<std::string, Eigen::VectorXd> volume_, refraction_;
    double water_refraction_ = 0.0;
};

void print_array(char const* words, std::string const& name, Eigen::VectorXd const& v, double scale) {
    std::printf("/// %s\ninline constexpr std::array<double, %d> %s{", words, static_cast<int>(v.size()),
                name.c_str());
    for (Eigen::Index k = 0; k < v.size(); ++k) std::printf("%s%.7g", k ? ", " : "", scale * v[k]);
    std::puts("};");
}

void fitted::print_header() const {
    std::puts("// SPDX-License-Identifier: BSL-1.0");
    std::puts("// Generated by src/fit/solutions.cpp from tables/crc_solution_density_20c.csv and");
    std::puts("// tables/crc_refractive_index_20c.csv. Do not edit: build the target fit.");
    std::puts("#pragma once\n\n#include <aqueth/version.hpp>\n\n#include <array>\n");
    std::puts("namespace aqueth::inline AQUETH_ABI::model::solution {\n");
    std::puts("// clang-format off");
    std::puts("/// Specific refraction of water, cm3/g.");
    std::printf("inline constexpr double water_refraction = %.7g;\n", water_refraction_);
    for (auto const& [solute, r] : refraction_)
        print_array("What the solute adds to it, per mass fraction w of the solution: powers of w, cm3/g.",
                    solute + "_refraction", r, 1.0);
    for (char const* each : {"glucose", "fructose"})
        print_array(
            "Apparent specific volume in water less that of sucrose: powers of the mass fraction, cm3/g.",
            std::string(each) + "_volume", volume_.at(each), 1000.0);
    print_array("Specific volume of methanol, then the terms of the excess volume in water, cm3/g.",
                "methanol_volume", volume_.at("methanol"), 1000.0);
    std::puts("// clang-format on\n");
    std::puts("}  // namespace aqueth::inline AQUETH_ABI::model::solution");
}

void fitted::print_report() const {
    for (auto const& [solute, points] : densities_) {
        deviations d;
        for (auto const& [w, rho] : points) d.add(density(solute, w) - 1000.0 * rho);
        std::printf("density of %-10s %3d points, rms %.3f, largest %.3f kg/m3\n", solute.c_str(), d.count,
                    d.rms(), d.largest);
    }
    for (auto const& [solute, points] : indices_) {
        deviations d;
        for (auto const& [w, n] : points) d.add(index(solute, w) - n);
        std::printf("index of   %-10s %3d points, rms %.6f, largest %.6f\n", solute.c_str(), d.count, d.rms(),
                    d.largest);
    }
}

/// Whether the constants of the library are those of the fit, to the seven digits that are printed.
bool fitted::agrees() const {
    namespace library = model::solution;
    bool all = true;
    auto const same = [&all](char const* name, double constant, double found) {
        if (std::abs(constant - found) <= 1e-6 * std::abs(found)) return;
        std::printf("%s: %.9g in the library, %.9g by the fit\n", name, constant, found);
        all = false;
    };
    auto const each = [&same](char const* name, auto const& constants, Eigen::VectorXd const& found,
                              double scale) {
        for (std::size_t k = 0; k < constants.size(); ++k)
            same(name, constants[k], scale * found[static_cast<Eigen::Index>(k)]);
    };
    same("water", library::water_refraction, water_refraction_);
    each("ethanol", library::ethanol_refraction, refraction_.at("ethanol"), 1.0);
    each("methanol", library::methanol_refraction, refraction_.at("methanol"), 1.0);
    each("sucrose", library::sucrose_refraction, refraction_.at("sucrose"), 1.0);
    each("glucose", library::glucose_refraction, refraction_.at("glucose"), 1.0);
    each("fructose", library::fructose_refraction, refraction_.at("fructose"), 1.0);
    each("volume of glucose", library::glucose_volume, volume_.at("glucose"), 1000.0);
    each("volume of fructose", library::fructose_volume, volume_.at("fructose"), 1000.0);
    each("volume of methanol", library::methanol_volume, volume_.at("methanol"), 1000.0);
    return all;
}

}  // namespace

int main(int argc, char** argv) try {
    std::string const wanted = argc == 3 ? argv[2] : "";
    if (wanted != "coefficients" && wanted != "report" && wanted != "agreement") {
        std::fputs("usage: solutions tables coefficients|report|agreement\n", stderr);
        return 2;
    }
    fitted const all(argv[1]);
    if (wanted == "agreement") return all.agrees() ? 0 : 1;
    wanted == "coefficients" ? all.print_header() : all.print_report();
    return 0;
} catch (std::exception const& error) {
    std::fprintf(stderr, "solutions: %s\n", error.what());
    return 2;
}
