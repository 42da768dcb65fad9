// SPDX-License-Identifier: BSL-1.0
//
// The volatility of traces in boiling ethanol and water: from published activity coefficients, vapour
// pressures and a group contribution to the constants of the library's short form.
//
//   traces tables constants > include/aqueth/model/traces_constants.hpp
//   traces tables report > docs/traces_fit_report.txt
//
// The activity coefficient at infinite dilution is anchored at both ends of the boiling line: to a
// measurement in hot water, to a set fitted to equilibria in ethanol. Between the ends modified UNIFAC
// (Dortmund) gives the shape; what it misses at the ends is taken off in proportion to the composition.
// Three constants reproduce the result.
#include "table.hpp"
#include "unifac.hpp"

#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/model/vapour_liquid.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <cstdio>
#include <exception>
#include <stdexcept>
#include <string>
#include <vector>

namespace {

using namespace aqueth;
using aqueth::fit::molecule;
using aqueth::fit::read_table;
using aqueth::fit::unifac;

constexpr double atmosphere = 101325.0;
constexpr double skew = 0.45;  // z = x/(x + skew (1 - x)): one skew serves all substances

/// A trace: its name in the tables, its groups, its formula, and the published pressure equation used.
struct substance {
    char const* id;
    char const* name;  ///< in the library
    molecule groups;
    std::array<int, 3> atoms;  ///< C, H, O
    char const* pressures;     ///< publication in trace_vapour_pressures.csv
    char const* pressure_kind;
    /// error bands, in percent, at the water end, between the ends, at the ethanol end
    std::array<int, 3> bands;
};

// The bands. 5 % where measurement anchors the end, 10 % where a published set and the group contribution
// differ by as much or the group contribution alone puts an alcohol near an ideal solution of ethanol.
// Between the ends only methanol was measured: there the band is the spread of the shapes that other group
// contributions give. Without a measurement near boiling an end has the band of the middle.
// 2-Methyl-1-butanol: its vapour pressures differ by 8 %. The hot water of acetic acid: two measurements 22
// % apart, and the dimer.
std::vector<substance> const substances{
    {"methanol",
     "methanol",
     {{"CH3OH", 1}},
     {1, 4, 1},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {5, 15, 5}},
    {"acetaldehyde",
     "acetaldehyde",
     {{"CH3", 1}, {"CHO", 1}},
     {2, 4, 1},
     "VDI Heat Atlas 2010",
     "Wagner 2.5 5",
     {30, 30, 30}},
    {"ethyl acetate",
     "ethyl_acetate",
     {{"CH3", 1}, {"CH2", 1}, {"CH3COO", 1}},
     {4, 8, 2},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {5, 20, 10}},
    {"1-propanol",
     "propanol_1",
     {{"CH3", 1}, {"CH2", 2}, {"OH(P)", 1}},
     {3, 8, 1},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {5, 15, 10}},
    {"2-methyl-1-propanol",
     "methyl_2_propanol_1",
     {{"CH3", 2}, {"CH2", 1}, {"CH", 1}, {"OH(P)", 1}},
     {4, 10, 1},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {5, 15, 10}},
    {"1-butanol",
     "butanol_1",
     {{"CH3", 1}, {"CH2", 3}, {"OH(P)", 1}},
     {4, 10, 1},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {5, 15, 10}},
    {"2-methyl-1-butanol",
     "methyl_2_butanol_1",
     {{"CH3", 2}, {"CH2", 2}, {"CH", 1}, {"OH(P)", 1}},
     {5, 12, 1},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {10, 15, 10}},
    {"3-methyl-1-butanol",
     "methyl_3_butanol_1",
     {{"CH3", 2}, {"CH2", 2}, {"CH", 1}, {"OH(P)", 1}},
     {5, 12, 1},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {5, 15, 10}},
    {"1-hexanol",
     "hexanol_1",
     {{"CH3", 1}, {"CH2", 5}, {"OH(P)", 1}},
     {6, 14, 1},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {40, 40, 40}},
    {"furfural",
     "furfural",
     {{"FURFURAL", 1}},
     {5, 4, 2},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {5, 40, 40}},
    {"acetic acid",
     "acetic_acid",
     {{"CH3", 1}, {"COOH", 1}},
     {2, 4, 2},
     "Landolt-Boernstein IV/20",
     "Antoine natural",
     {15, 30, 15}},
};

molecule const ethanol{{"CH3", 1}, {"CH2", 1}, {"OH(P)", 1}};
molecule const water{{"H2O", 1}};

/// Rows of a table with this name.
std::vector<std::size_t> rows_of(fit::table const& t, std::string const& id) {
    std::vector<std::size_t> found;
    for (std::size_t k = 0; k < t.rows().size(); ++k)
        if (t.text(k, "id") == id) found.push_back(k);
    return found;
}

/// ln of the pressure in Pa by a row of trace_vapour_pressures.csv.
double ln_pressure(fit::table const& t, std::size_t row, double kelvin) {
    auto const c = [&](char const* name) { return t.number(row, name); };
    std::string const kind = t.text(row, "kind");
    if (kind == "Antoine natural") return c("c1") - c("c2") / (kelvin + c("c3"));
    if (kind == "Antoine decimal") return std::log(10.0) * (c("c1") - c("c2") / (kelvin + c("c3")));
    if (kind == "DIPPR 101") {
        return c("c1") + c("c2") / kelvin + c("c3") * std::log(kelvin) + c("c4") * std::pow(kelvin, c("c5"));
    }
    double const s = 1.0 - kelvin / c("c6");
    bool const first = kind == "Wagner 2.5 5";
    if (!first && kind != "Wagner 3 6") throw std::runtime_error("no form " + kind);
    return std::log(c("c5")) +
           (c("c1") * s + c("c2") * std::pow(s, 1.5) + c("c3") * std::pow(s, first ? 2.5 : 3.0) +
            c("c4") * std::pow(s, first ? 5.0 : 6.0)) /
               (1.0 - s);
}

/// Temperature at which a row has a pressure, by bisection.
double boiling_kelvin(fit::table const& t, std::size_t row, double pascals) {
    double low = 250.0, high = 460.0;
    for (int i = 0; i < 60; ++i) {
        double const middle = 0.5 * (low + high);
        (ln_pressure(t, row, middle) < std::log(pascals) ? low : high) = middle;
    }
    return 0.5 * (low + high);
}

/// Antoine's constants: ln(p/Pa) = a - b/(T + c).
struct antoine {
    double a, b, c;
    double at(double t) const { return a - b / (t + c); }
};

/// Antoine's equation through three points (T, ln p).
antoine through(std::array<double, 3> const& t, std::array<double, 3> const& ln_p) {
    // (l1 - l0)/(t1 - t0) = b/((t0 + c)(t1 + c)), so two quotients give (t2 + c)/(t0 + c).
    double const s = (ln_p[1] - ln_p[0]) / (t[1] - t[0]) / ((ln_p[2] - ln_p[1]) / (t[2] - t[1]));
    double const c = (t[2] - s * t[0]) / (s - 1.0);
    double const b = (ln_p[1] - ln_p[0]) * (t[0] + c) * (t[1] + c) / (t[1] - t[0]);
    return {ln_p[0] + b / (t[0] + c), b, c};
}

/// Everything known about one trace.
struct anchored {
    substance what;
    double water_kelvin;                ///< of the measurement in water
    double water, water_predicted;      ///< ln gamma there, and by the group contribution
    std::vector<double> sets;           ///< gamma in boiling ethanol by the published sets
    double ethanol_predicted, ethanol;  ///< ln gamma there by the group contribution, and as anchored
    double g_water, g_ethanol, bend;    ///< the constants of the short form
    double misfit, misfit_x;            ///< of the short form, in ln gamma, and where
    double at_80, at_110;               ///< change of the anchored ln gamma with the pressure, largest
    antoine pressure;
};

class fitting {
public:
    explicit fitting(std::string folder)
        : folder_(std::move(folder)),
          groups_(folder_),
          in_water_(read_table(folder_ + "/infinite_dilution_in_water.csv")),
          collected_(read_table(folder_ + "/infinite_dilution_collected.csv")),
          pairs_(read_table(folder_ + "/binary_parameters_dechema.csv")),
          pressures_(read_table(folder_ + "/trace_vapour_pressures.csv")),
          dimer_(read_table(folder_ + "/acetic_acid_dimer_from_memory.csv")) {
        for (substance const& s : substances) all_.push_back(anchor(s));
    }

    std::vector<anchored> const& all() const { return all_; }
    fit::table const& pressures() const { return pressures_; }
    std::string const& folder() const { return folder_; }

    /// ln gamma of the group contribution
    double predicted(substance const& s, double x, double t) const {
        return groups_.ln_gamma(s.groups, {ethanol, water}, {x, 1.0 - x}, t);
    }
    /// ln gamma with both ends anchored
    double with_anchors(anchored const& a, double x, double t) const {
        return predicted(a.what, x, t) + (1.0 - x) * (a.water - a.water_predicted) +
               x * (a.ethanol - a.ethanol_predicted);
    }
    static double boiling(double x, double pascals) {
        return model::vapour_liquid::bubble_at_pressure(x, pascals).temperature;
    }
    /// share of the pure acid's vapour pressure that is of single molecules
    double single_share(double kelvin, double pascals) const {
        double const mmhg = pascals / 133.322368;
        double const k = std::pow(10.0, dimer("a") + dimer("b") / kelvin);
        return (std::sqrt(1.0 + 4.0 * k * mmhg) - 1.0) / (2.0 * k * mmhg);
    }
    /// row of the pressure equation in use
    std::size_t pressure_row(substance const& s) const {
        for (std::size_t const k : rows_of(pressures_, s.id))
            if (pressures_.text(k, "publication") == s.pressures &&
                pressures_.text(k, "kind") == s.pressure_kind)
                return k;
        throw std::runtime_error(std::string("no vapour pressure of ") + s.id);
    }

private:
    double dimer(char const* id) const { return dimer_.number(rows_of(dimer_, id).at(0), "value"); }

    /// the hottest measurement in water; repeated ones count with their geometric mean
    std::pair<double, double> hottest(fit::table const& t, std::string const& id) const {
        double kelvin = 0.0, sum = 0.0, n = 0.0;
        for (std::size_t const k : rows_of(t, id)) kelvin = (std::max)(kelvin, t.kelvin(k));
        for (std::size_t const k : rows_of(t, id)) {
            if (t.kelvin(k) < kelvin) continue;
            sum += std::log(t.number(k, "gamma"));
            n += 1.0;
        }
        if (n == 0.0) throw std::runtime_error("no measurement of " + id);
        return {kelvin, sum / n};
    }

    /// gamma at infinite dilution by the published sets of a pair
    std::vector<double> of_pair(std::string const& pair, double t) const {
        std::vector<double> result;
        for (std::size_t const k : rows_of(pairs_, pair)) {
            auto const f = [&](char const* a, char const* b) {
                return pairs_.number(k, a) + pairs_.number(k, b) / t;
            };
            double const forth = f("a_ij", "b_ij"), back = f("a_ji", "b_ji");
            if (pairs_.text(k, "kind") == "NRTL") {
                result.push_back(std::exp(back + forth * std::exp(-pairs_.number(k, "alpha") * forth)));
            } else {
                result.push_back(std::exp(1.0 - forth - std::exp(back)));
            }
        }
        return result;
    }
    static double mean_ln(std::vector<double> const& gammas) {
        double sum = 0.0;
        for (double const g : gammas) sum += std::log(g);
        return sum / static_cast<double>(gammas.size());
    }

    anchored anchor(substance const& s) const {
        anchored a{};
        a.what = s;
        std::string const id = s.id;
        double const hot = boiling(0.0, atmosphere), cool = boiling(1.0, atmosphere);
        if (id == "acetaldehyde") {  // measured near 25 °C only, and a part hydrates there
            a.water_kelvin = hot;
            a.water = mean_ln(of_pair("acetaldehyde in water", hot));
        } else if (id == "1-hexanol") {  // the series 1-propanol, 1-butanol, 1-pentanol goes on
            a.water_kelvin = hot;
            double const three = hottest(in_water_, "1-propanol").second;
            double const four = hottest(in_water_, "1-butanol").second;
            double const five = hottest(in_water_, "1-pentanol").second;
            a.water = three - 3.0 * four + 3.0 * five;
        } else {
            bool const other = id == "furfural" || id == "acetic acid";
            auto const h = hottest(other ? collected_ : in_water_, id);
            a.water_kelvin = h.first;
            a.water = h.second;
        }
        a.water_predicted = predicted(s, 0.0, a.water_kelvin);
        a.sets = of_pair(id + " in ethanol", cool);
        a.ethanol_predicted = predicted(s, 1.0, cool);
        a.ethanol = a.sets.empty() ? a.ethanol_predicted : mean_ln(a.sets);
        // The sets of the two branched alcohols are 20 % apart, the group contribution has them alike.
        bool const doubtful = id == "2-methyl-1-propanol" || id == "3-methyl-1-butanol";
        if (doubtful) a.ethanol = 0.5 * (a.ethanol + a.ethanol_predicted);

        a.g_water = with_anchors(a, 0.0, hot);
        a.g_ethanol = with_anchors(a, 1.0, cool);
        double above = 0.0, below = 0.0;
        auto const z_of = [](double x) { return x / (x + skew * (1.0 - x)); };
        for (int i = 1; i < 100; ++i) {
            double const x = 0.01 * i, z = z_of(x), w = z * (1.0 - z);
            double const rest =
                with_anchors(a, x, boiling(x, atmosphere)) - (1.0 - z) * a.g_water - z * a.g_ethanol;
            above += w * rest;
            below += w * w;
        }
        a.bend = above / below;
        for (int i = 1; i < 100; ++i) {
            double const x = 0.01 * i, z = z_of(x);
            double const form = (1.0 - z) * a.g_water + z * a.g_ethanol + a.bend * z * (1.0 - z);
            double const miss = form - with_anchors(a, x, boiling(x, atmosphere));
            if (std::abs(miss) > std::abs(a.misfit)) {
                a.misfit = miss;
                a.misfit_x = x;
            }
        }
        auto const moved = [&](double pascals) {
            double largest = 0.0;
            for (int i = 0; i <= 100; ++i) {
                double const x = 0.01 * i;
                double const by =
                    with_anchors(a, x, boiling(x, pascals)) - with_anchors(a, x, boiling(x, atmosphere));
                if (std::abs(by) > std::abs(largest)) largest = by;
            }
            return largest;
        };
        a.at_80 = moved(80e3);
        a.at_110 = moved(110e3);

        std::size_t const row = pressure_row(s);
        if (s.pressure_kind == std::string("Antoine natural") && id != "acetic acid") {
            a.pressure = {pressures_.number(row, "c1"), pressures_.number(row, "c2"),
                          pressures_.number(row, "c3")};
        } else {
            std::array<double, 3> const at{345.0, 360.0, 375.0};
            std::array<double, 3> ln_p{};
            for (std::size_t i = 0; i < 3; ++i) {
                ln_p[i] = ln_pressure(pressures_, row, at[i]);
                if (id == "acetic acid") ln_p[i] += std::log(single_share(at[i], std::exp(ln_p[i])));
            }
            a.pressure = through(at, ln_p);
        }
        return a;
    }

    std::string folder_;
    unifac groups_;
    fit::table in_water_, collected_, pairs_, pressures_, dimer_;
    std::vector<anchored> all_;
};

double molar_mass_of(substance const& s) {
    namespace m = correlation::molar_mass;
    return s.atoms[0] * m::carbon + s.atoms[1] * m::hydrogen + s.atoms[2] * m::oxygen;
}

void print_constants(fitting const& f) {
    std::puts("// SPDX-License-Identifier: BSL-1.0");
    std::puts("// Generated by src/fit/traces.cpp from tables/. Do not edit: run it again.");
    std::puts("#pragma once\n\n#include <aqueth/version.hpp>\n\n#include <array>\n");
    std::puts("namespace aqueth::inline AQUETH_ABI::model::traces {\n");
    std::puts("/// The constants of one trace.");
    std::puts("struct constants {");
    std::puts("    double molar_mass;    ///< g/mol");
    std::puts("    double in_water;      ///< ln of the activity coefficient in boiling water");
    std::puts("    double in_ethanol;    ///< the same in boiling ethanol");
    std::puts(
        "    double bend;          ///< deviation from the straight line in z between them, over z (1 - z)");
    std::puts("    double a;             ///< of the vapour pressure of the pure liquid, ln(p/Pa) = a - "
              "b/(T/K + c)");
    std::puts("    double b;             ///< the same, K");
    std::puts("    double c;             ///< the same, K");
    std::puts("    double band_water;    ///< relative error band in water");
    std::puts("    double band_between;  ///< between the ends");
    std::puts("    double band_ethanol;  ///< in ethanol");
    std::puts("};\n");
    std::printf("/// z = x/(x + skew (1 - x)) of the mole fraction x of ethanol.\n");
    std::printf("inline constexpr double skew = %.2f;\n\n", skew);
    std::puts("/// In the order of `trace`.");
    std::puts("// clang-format off");
    std::printf("inline constexpr std::array<constants, %zu> table{{\n", f.all().size());
    for (anchored const& a : f.all()) {
        std::printf("    {%.4f, %.4f, %.4f, %.4f, %.5f, %.3f, %.3f, %.2f, %.2f, %.2f},  // %s\n",
                    molar_mass_of(a.what), a.g_water, a.g_ethanol, a.bend, a.pressure.a, a.pressure.b,
                    a.pressure.c, 0.01 * a.what.bands[0], 0.01 * a.what.bands[1], 0.01 * a.what.bands[2],
                    a.what.id);
    }
    std::puts("}};");
    std::puts("// clang-format on\n");
    std::puts("}  // namespace aqueth::inline AQUETH_ABI::model::traces");
}

void print_report(fitting const& f) {
    std::puts("1. Anchors: activity coefficients at infinite dilution\n");
    std::puts("                        in water                               in boiling ethanol");
    std::puts("                          K   anchor  group contr.  ratio     sets             group contr.  "
              "anchor");
    for (anchored const& a : f.all()) {
        std::printf("%-20s %6.2f  %7.2f       %7.2f   %4.2f    ", a.what.id, a.water_kelvin,
                    std::exp(a.water), std::exp(a.water_predicted), std::exp(a.water - a.water_predicted));
        std::string sets;
        for (double const g : a.sets) {
            char buffer[32];
            std::snprintf(buffer, sizeof buffer, " %.3f", g);
            sets += buffer;
        }
        std::printf("%-18s %10.3f  %8.3f\n", sets.empty() ? " none" : sets.c_str(),
                    std::exp(a.ethanol_predicted), std::exp(a.ethanol));
    }
    std::puts("\n   Acetaldehyde in water: a set fitted to equilibria; 1-hexanol: the series of 1-propanol, "
              "1-butanol");
    std::puts(
        "   and 1-pentanol continued with its second difference; all others measured, the hottest points.\n");

    std::puts("2. The short form ln gamma = (1 - z) g_w + z g_e + c z (1 - z) along the boiling line at "
              "101.325 kPa,");
    std::puts("   and how far pressure moves the anchored ln gamma at the same composition\n");
    std::puts("                        g_w      g_e        c   largest misfit  at x   80 kPa  110 kPa");
    double worst = 0.0, moved = 0.0;
    for (anchored const& a : f.all()) {
        std::printf("%-20s %7.4f  %7.4f  %7.4f      %+6.1f %%     %4.2f  %+5.1f %%  %+5.1f %%\n", a.what.id,
                    a.g_water, a.g_ethanol, a.bend, 100.0 * a.misfit, a.misfit_x, 100.0 * a.at_80,
                    100.0 * a.at_110);
        worst = (std::max)(worst, std::abs(a.misfit));
        moved = (std::max)({moved, std::abs(a.at_80), std::abs(a.at_110)});
    }
    std::printf("\n   largest misfit %.1f %%, largest effect of the pressure %.1f %%\n\n", 100.0 * worst,
                100.0 * moved);

    std::puts(
        "3. Vapour pressures: the equation in use, the spread of the others around it, boiling points\n");
    std::puts(
        "                                                     kPa at                 others    boils at, K");
    std::puts("                      equation in use               80 °C      95 °C          95 °C   "
              "equation   handbook");
    auto const points = read_table(f.folder() + "/trace_boiling_points.csv");
    for (anchored const& a : f.all()) {
        std::size_t const row = f.pressure_row(a.what);
        double const p80 = std::exp(ln_pressure(f.pressures(), row, 353.15));
        double const p95 = std::exp(ln_pressure(f.pressures(), row, 368.15));
        double low = 0.0, high = 0.0;
        for (std::size_t const k : rows_of(f.pressures(), a.what.id)) {
            double const off = std::exp(ln_pressure(f.pressures(), k, 368.15)) / p95 - 1.0;
            low = (std::min)(low, off);
            high = (std::max)(high, off);
        }
        std::printf("%-20s  %-26s %9.3f  %9.3f  %+5.1f %+5.1f %%   %7.2f    %7.2f\n", a.what.id,
                    a.what.pressures, 1e-3 * p80, 1e-3 * p95, 100.0 * low, 100.0 * high,
                    boiling_kelvin(f.pressures(), row, atmosphere),
                    points.number(rows_of(points, a.what.id).at(0), "temperature_k"));
    }
    std::puts("\n4. Acetic acid: single molecules in the vapour over the pure acid\n");
    for (double const t : {350.0, 360.0, 373.15}) {
        std::size_t const row = f.pressure_row(f.all().back().what);
        double const p = std::exp(ln_pressure(f.pressures(), row, t));
        std::printf("   %6.2f K  %6.2f kPa, of single molecules %.3f; by the library's constants %.3f\n", t,
                    1e-3 * p, f.single_share(t, p), std::exp(f.all().back().pressure.at(t)) / p);
    }

    std::puts("\n5. Methanol over ethanol at 101.3 kPa, measured in 1958, and by the constants at the same "
              "proportion of");
    std::puts("   ethanol to water; % mol in the liquid\n");
    std::puts("   methanol  ethanol    water   measured  computed      off");
    auto const t = read_table(f.folder() + "/methanol_ethanol_water_1958.csv");
    anchored const& methanol = f.all().front();
    for (std::size_t k = 0; k < t.rows().size(); ++k) {
        auto const of = [&](char const* name) { return t.number(k, name); };
        double const measured = of("y_methanol") / of("x_methanol") / (of("y_ethanol") / of("x_ethanol"));
        double const x = of("x_ethanol") / (of("x_ethanol") + of("x_water"));
        auto const e = model::vapour_liquid::bubble_at_pressure(x, 101300.0);
        double const z = x / (x + skew * (1.0 - x));
        double const ln_gamma =
            (1.0 - z) * methanol.g_water + z * methanol.g_ethanol + methanol.bend * z * (1.0 - z);
        double const volatility = std::exp(ln_gamma + methanol.pressure.at(e.temperature)) / e.pressure;
        double const computed = volatility / (e.y / x);
        std::printf("   %8.1f %8.1f %8.1f   %8.3f  %8.3f  %+5.1f %%\n", 100.0 * of("x_methanol"),
                    100.0 * of("x_ethanol"), 100.0 * of("x_water"), measured, computed,
                    100.0 * (computed / measured - 1.0));
    }
}

}  // namespace

int main(int argc, char** argv) try {
    if (argc != 3 || (argv[2] != std::string("constants") && argv[2] != std::string("report"))) {
        std::fputs("usage: traces tables constants|report\n", stderr);
        return 2;
    }
    fitting const f(argv[1]);
    argv[2] == std::string("report") ? print_report(f) : print_constants(f);
    return 0;
} catch (std::exception const& error) {
    std::fprintf(stderr, "traces: %s\n", error.what());
    return 2;
}
