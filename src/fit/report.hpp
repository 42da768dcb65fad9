// SPDX-License-Identifier: BSL-1.0
#pragma once

#include "sets.hpp"
#include "solver.hpp"

#include "published/vaporization_perry.hpp"

#include <aqueth/model/enthalpy.hpp>

#include <algorithm>
#include <cmath>
#include <cstdarg>
#include <cstddef>
#include <cstdio>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <vector>

/// The report of the fit: every claim about the model, with its figures.
namespace aqueth::fit {

inline constexpr double zero_celsius = 273.15;
inline constexpr double atmosphere = 101325.0;

/// printf into a string.
inline std::string text(char const* format, ...) __attribute__((format(printf, 1, 2)));
inline std::string text(char const* format, ...) {
    char buffer[512];
    va_list arguments;
    va_start(arguments, format);
    std::vsnprintf(buffer, sizeof buffer, format, arguments);
    va_end(arguments);
    return buffer;
}

/// Pads words with blanks; a degree sign is two bytes and one column.
inline std::string padded(std::string words, std::size_t columns) {
    auto const followers =
        std::count_if(words.begin(), words.end(), [](char c) { return (c & 0xC0) == 0x80; });
    words.resize((std::max)(words.size(), columns + static_cast<std::size_t>(followers)), ' ');
    return words;
}

/// Halves [lower, upper] 60 times around the change of sign of f.
template <class F>
double bisect(F const& f, double lower, double upper) {
    bool const below = f(lower) < 0.0;
    for (int i = 0; i < 60; ++i) {
        double const x = 0.5 * (lower + upper);
        ((f(x) < 0.0) == below ? lower : upper) = x;
    }
    return 0.5 * (lower + upper);
}

/// Composition of the azeotrope under a pressure, or 1 if there is none.
inline double azeotrope(model const& m, double pascals) {
    if (m.ln_alpha(1.0, pascals) > 0.0) return 1.0;
    return bisect([&](double x) { return m.ln_alpha(x, pascals); }, 0.5, 1.0);
}

/// Pressure under which the azeotrope reaches pure ethanol.
inline double vanishing_pressure(model const& m) {
    return bisect([&](double p) { return m.ln_alpha(1.0, p); }, 4e3, 3e4);
}

/// One target: a figure and its limits.
struct target {
    std::string name;
    double value, low, high;
    bool met() const { return value >= low && value <= high; }
};

inline std::vector<target> targets(model const& m, std::vector<data_set> const& sets) {
    auto const rows = [&](char const* id) -> std::vector<observation> const& {
        return sets[place(sets, id)].rows;
    };
    double const t25 = 25 + zero_celsius, tiny = 1e-7;
    auto const at_25 = [&](char const* id) {
        std::vector<observation> some;
        for (auto const& o : rows(id))
            if (std::abs(o.kelvin - t25) < 0.01) some.push_back(o);
        return some;
    };
    auto correlated = rows("mash_30");
    for (auto& o : correlated) o.p1 = o.p2 = 0.0;
    double enthalpy = 0.0;
    for (auto const* id : {"dilute", "point", "calvet"})
        enthalpy = (std::max)(enthalpy, compare(m, at_25(id)).largest);
    double const x = azeotrope(m, atmosphere);
    return {
        {"p at 30 °C, own pure pressures, mean %", 100 * compare(m, rows("mash_30")).mean, 0, 0.10},
        {"p at 30 °C, the library's pure pressures, mean %", 100 * compare(m, correlated).mean, 0, 0.15},
        {"p at 90 °C, own pure pressures, mean %", 100 * compare(m, rows("mash_90")).mean, 0, 0.05},
        {"ethanol at infinite dilution, largest %", 100 * std::expm1(compare(m, rows("vrbka")).largest), 0,
         2},
        {"azeotrope at 101.325 kPa, x", x, 0.892, 0.897},
        {"azeotrope at 101.325 kPa, °C", m.boiling_kelvin(x, atmosphere) - zero_celsius, 78.10, 78.16},
        {"azeotrope vanishes below, kPa", 1e-3 * vanishing_pressure(m), 8.5, 10.5},
        {"H at 25 °C, largest off the measured points, J/mol", enthalpy, 0, 25},
        {"H at 25 °C, limiting slope x = 0, kJ/mol (-10.15)", 1e-3 * m.enthalpy(tiny, t25) / tiny,
         -10.15 * 1.08, -10.15 * 0.92},
        {"H at 25 °C, limiting slope x = 1, kJ/mol (-2.09)", 1e-3 * m.enthalpy(1 - tiny, t25) / tiny,
         -2.09 * 1.08, -2.09 * 0.92},
        {"H, Larkin from 50 °C up, mean J/mol", compare(m, rows("larkin")).mean, 0, 10},
        {"Cp at 25 °C, largest off Melinder, J/(mol K)", compare(m, at_25("melinder")).largest, 0, 1.5},
    };
}

inline int met(std::vector<target> const& list) {
    return static_cast<int>(std::count_if(list.begin(), list.end(), [](target const& t) { return t.met(); }));
}

inline std::string list_targets(model const& m, std::vector<data_set> const& sets) {
    std::string out = "1. What was asked for\n\n";
    for (auto const& t : targets(m, sets))
        out += padded(t.name, 52) +
               text(" %9.4f   %8.3f .. %7.3f  %s\n", t.value, t.low, t.high, t.met() ? "met" : "NOT MET");
    return out + "\n";
}

/// Unit a residual is printed in, and the factor to it.
struct unit {
    double factor;
    char const* name;
};

inline unit unit_of(kind k) {
    switch (k) {
    case kind::pressure: return {100, "% p"};
    case kind::boiling_point: return {1, "K"};
    case kind::vapour: return {1, "y"};
    case kind::infinite_dilution: return {100, "% gamma"};
    case kind::azeotrope: return {1, "x"};
    case kind::enthalpy: return {1, "J/mol"};
    case kind::heat_capacity: return {1, "J/mol K"};
    }
    return {1, ""};
}

inline std::string list_sets(assessment const& a, std::vector<data_set> const& sets) {
    std::string out =
        "2. Every set: deviation (calculated less measured) with the set in the fit, and with it left out "
        "and so\n"
        "   predicted. sd: standard deviation given to the set, its weight, the largest where it varies; "
        "bias: mean\n"
        "   deviation. p total pressure, T boiling point, y vapour, g activity coefficient of ethanol at "
        "infinite\n"
        "   dilution, z azeotrope, H excess enthalpy, C excess heat capacity. Nagamachi was found last: a "
        "form chosen\n"
        "   without it (0.30, 6 6 6 3) predicted it blindly, 17.7 J/mol off on average and 31.7 at most.\n\n"
        "                                                             in the fit                  left out\n"
        "set                               n  unit         sd     mean  largest     bias     mean  largest\n";
    for (bool const fitted : {true, false}) {
        if (!fitted) out += "held for checking, never fitted\n";
        for (std::size_t s = 0; s < sets.size(); ++s) {
            if (sets[s].fitted != fitted) continue;
            auto const u = unit_of(sets[s].rows.front().what);
            double sd = 0.0;
            for (auto const& o : sets[s].rows) sd = (std::max)(sd, o.sigma);
            auto const &w = a.with[s], &l = a.without[s];
            out += padded(sets[s].label, 32) +
                   text(" %2zu  %-8s %6.3g %8.4f %8.4f %+8.4f", sets[s].rows.size(), u.name, u.factor * sd,
                        u.factor * w.mean, u.factor * w.largest, u.factor * w.bias);
            out += fitted ? text(" %8.4f %8.4f\n", u.factor * l.mean, u.factor * l.largest) : "\n";
        }
    }
    return out + "\n";
}

inline std::string list_isobars(model const& m, std::string const& folder) {
    std::string out = "3. Boiling points and vapour compositions set by set, all with the library's "
                      "pressures of the pure liquids\n\n"
                      "                                             T, K                   y\n"
                      "set                                   mean  largest   bias     mean largest    bias\n";
    struct entry {
        char const *table, *label;
        double kpa;
    };
    for (entry const& e : {entry{"carey_lewis_1932", "Carey & Lewis 101.3 kPa", 0},
                           {"rieder_thompson_1949", "Rieder & Thompson 101.3 kPa", 0},
                           {"lai_2014", "Lai 101.3 kPa", 0},
                           {"voutsas_2011", "Voutsas 32.86 kPa", 32.86},
                           {"voutsas_2011", "Voutsas 19.71 kPa", 19.71},
                           {"voutsas_2011", "Voutsas 13.15 kPa", 13.15},
                           {"beebe_1942", "Beebe 50.66 kPa (held)", 50.662},
                           {"beebe_1942", "Beebe 25.33 kPa (held)", 25.331},
                           {"beebe_1942", "Beebe 12.67 kPa (held)", 12.666},
                           {"cristino_2013", "Cristino 363 and 381 K (held)", 0},
                           {"pemberton_mash_1978_30c", "Pemberton & Mash 30 °C (y computed)", 0},
                           {"pemberton_mash_1978_90c", "Pemberton & Mash 90 °C", 0},
                           {"landolt_boernstein_2007_50c", "Landolt-Boernstein 50 °C", 0}}) {
        auto const t = read_table(folder + "/" + e.table + ".csv");
        deviations d;
        double n = 0.0;
        for (auto const& o : boiling_points(t, 0.1, e.kpa)) {
            double const off = m.boiling_kelvin(o.x, o.pascals) - o.kelvin;
            d.mean += std::abs(off);
            d.bias += off;
            d.largest = (std::max)(d.largest, std::abs(off));
            n += 1.0;
        }
        out += padded(e.label, 35) + text("%7.3f  %7.3f %+7.3f", d.mean / n, d.largest, d.bias / n);
        auto const with_y = t.has("y_ethanol") ? vapours(t, 0.01, e.kpa) : std::vector<observation>{};
        if (!with_y.empty()) {
            auto const y = compare(m, with_y);
            out += text("  %7.4f %7.4f %+7.4f", y.mean, y.largest, y.bias);
        }
        out += "\n";
    }
    return out + "\n";
}

/// Geometric mean of the relative deviations of the held vapour compositions.
inline double vapour_score(assessment const& a, std::vector<data_set> const& sets) {
    double sum = 0.0, n = 0.0;
    for (std::size_t s = 0; s < sets.size(); ++s)
        if (sets[s].rows.front().what == kind::vapour) {
            sum += std::log(a.with[s].relative);
            n += 1.0;
        }
    return std::exp(sum / n);
}

/// One line of a table of forms.
inline std::string list_form(form const& f, std::vector<data_set> const& sets) {
    auto const a = assess(f, sets);
    return text("%.2f        %d %d %d %d  %2d   %6.3f    %6.3f     %6.3f     %6.3f %6.3f    %2d", f.skew,
                f.terms[0], f.terms[1], f.terms[2], f.terms[3], f.size(), a.mean_with, a.mean_without,
                100 * a.without[place(sets, "mash_30")].mean, 100 * a.without[place(sets, "mash_90")].mean,
                vapour_score(a, sets), met(targets(a.fitted, sets)));
}

inline char const* head_of_forms() {
    return "skew  terms a b c d   N   fitted  left out  30 °C out  90 °C out      y  targets\n";
}

/// One form of the stored search.
struct searched {
    double skew;
    std::array<int, 4> terms;
    int size;
    double left_out;
    int met;
    std::string line;  ///< as it is stored
};

/// Reads what `excess_gibbs TABLES search` wrote.
inline std::vector<searched> read_search(std::string const& path) {
    std::ifstream file(path);
    std::string line;
    if (!std::getline(file, line) || line + "\n" != head_of_forms())
        throw std::runtime_error("no search in " + path);
    std::vector<searched> result;
    while (std::getline(file, line)) {
        searched f{};
        double fitted = 0, warm = 0, hot = 0, y = 0;
        std::istringstream in(line);
        in >> f.skew >> f.terms[0] >> f.terms[1] >> f.terms[2] >> f.terms[3] >> f.size >> fitted >>
            f.left_out >> warm >> hot >> y >> f.met;
        if (!in) throw std::runtime_error(path + ": " + line);
        f.line = line;
        result.push_back(f);
    }
    return result;
}

/// Rank of the chosen form in the search, and the cost of the targets.
inline std::string list_search(form const& chosen, std::vector<data_set> const& sets,
                               std::string const& path) {
    auto const all = read_search(path);
    auto const better = [](searched const& a, searched const& b) { return a.left_out < b.left_out; };
    auto const ours = std::find_if(all.begin(), all.end(), [&](searched const& f) {
        return f.skew == chosen.skew && f.terms == chosen.terms;
    });
    if (ours == all.end()) throw std::runtime_error(path + ": the chosen form is not there");
    auto const count = [&](auto const& which) { return std::count_if(all.begin(), all.end(), which); };
    auto const every = static_cast<int>(targets(solve(chosen, sets), sets).size());
    auto const predicts_better = [&](searched const& f) { return f.left_out < ours->left_out; };
    auto const best = *std::min_element(all.begin(), all.end(), better);
    std::vector<searched> meeting;
    for (auto const& f : all)
        if (f.met == every) meeting.push_back(f);
    auto const best_meeting = *std::min_element(meeting.begin(), meeting.end(), better);
    auto const no_larger = [&](searched const& f) { return predicts_better(f) && f.size <= ours->size; };
    for (auto const& f : all)
        if (no_larger(f) && f.met == every)
            throw std::logic_error("no larger, meets every target and predicts better: " + f.line);
    std::string out =
        text("   The search (docs/form_search.txt): %zu forms, 4 to 8 a and b, 4 to 7 c, 1 to 5 d, skews of "
             "0.20 to 0.40,\n"
             "   up to 24 coefficients. %zu meet every target; chosen is the one of them with the fewest "
             "coefficients (%d,\n"
             "   left out %.3f). The best left-out error of those that meet every target is %.3f.\n",
             all.size(), meeting.size(), ours->size, ours->left_out, best_meeting.left_out);
    out += text("   %td forms predict left-out sets better than the chosen one, %td of them with fewer "
                "coefficients, %td\n"
                "   with no more; none of those %td meets every target. The best of all:\n\n",
                count(predicts_better),
                count([&](searched const& f) { return predicts_better(f) && f.size < ours->size; }),
                count(no_larger), count(no_larger));
    out += std::string(head_of_forms()) + best.line + "\n\n";
    out += text(
        "   So the targets cost %.3f in the left-out error, %.0f %% of it. What the best form misses:\n\n",
        ours->left_out - best.left_out, 100.0 * (ours->left_out / best.left_out - 1.0));
    form const other{best.skew, best.terms, chosen.vapour, chosen.cross_ratio};
    for (auto const& t : targets(solve(other, sets), sets))
        if (!t.met())
            out += "     " + padded(t.name, 52) + text(" %9.4f   %8.3f .. %7.3f\n", t.value, t.low, t.high);
    return out + "\n";
}

inline std::string list_forms(form const& chosen, std::vector<data_set> const& sets,
                              std::string const& search) {
    std::string out =
        "4. Choice of the form, N coefficients. Deviations relative to the sd, root mean square, geometric "
        "mean over\n"
        "   the sets; Pemberton & Mash left out, mean % p; y: held vapour compositions, relative; targets "
        "met of 12.\n\n";
    out += list_search(chosen, sets, search);
    out += head_of_forms();
    auto const add = [&](double skew, std::array<int, 4> const& terms) {
        bool const ours = skew == chosen.skew && terms == chosen.terms;
        out += list_form({skew, terms, chosen.vapour, chosen.cross_ratio}, sets) +
               (ours ? "  <- chosen\n" : "\n");
    };
    for (double const skew : {1.0, 0.5, 0.40, 0.35, 0.30, 0.25, 0.20}) add(skew, chosen.terms);
    std::vector<std::array<int, 4>> const others{{4, 4, 4, 2}, {5, 4, 4, 1}, {5, 5, 4, 3}, {5, 5, 5, 3},
                                                 {4, 6, 6, 3}, {5, 5, 6, 3}, {5, 6, 5, 3}, {5, 6, 6, 2},
                                                 {5, 6, 6, 4}, {6, 6, 6, 3}, {5, 7, 6, 3}, {5, 6, 7, 3},
                                                 {6, 7, 7, 3}, {7, 7, 7, 4}, {8, 8, 8, 8}};
    for (auto const& terms : others) add(chosen.skew, terms);
    return out + "\n";
}

inline std::string list_vapours(form const& chosen, std::vector<data_set> const& sets) {
    std::string out = "5. Choice of the vapour: B11 from the CRC Handbook or from Clapeyron's equation, B12 "
                      "= ratio (B11 + B22)/2.\n"
                      "   Columns as in 4; p out: geometric mean of the four total-pressure sets left out, "
                      "which feel the vapour most.\n\n"
                      "vapour              fitted  left out   p out  30 °C out  90 °C out      y  targets\n";
    std::vector<form> forms{{chosen.skew, chosen.terms, vapour_kind::ideal, 0.0}};
    for (auto const source : {vapour_kind::crc_handbook, vapour_kind::clapeyron})
        for (double const ratio : {0.6, 0.7, 0.8, 0.9, 1.0, 1.2})
            forms.push_back({chosen.skew, chosen.terms, source, ratio});
    std::size_t const p30 = place(sets, "mash_30"), p90 = place(sets, "mash_90");
    for (auto const& f : forms) {
        auto const a = assess(f, sets);
        double pressures = 0.0;
        for (auto const* id : {"mash_30", "landolt_50", "mash_90", "landolt_90"})
            pressures += 0.25 * std::log(a.without[place(sets, id)].relative);
        bool const ours = f.vapour == chosen.vapour && f.cross_ratio == chosen.cross_ratio;
        out += f.vapour == vapour_kind::ideal
                   ? std::string("ideal           ")
                   : text("%-9s  %.1f  ", f.vapour == vapour_kind::clapeyron ? "Clapeyron" : "CRC",
                          f.cross_ratio);
        out += text("  %7.3f   %7.3f %7.3f     %6.3f     %6.3f %6.3f    %2d%s\n", a.mean_with, a.mean_without,
                    std::exp(pressures), 100 * a.without[p30].mean, 100 * a.without[p90].mean,
                    vapour_score(a, sets), met(targets(a.fitted, sets)), ours ? "  <- chosen" : "");
    }
    return out + "\n";
}

inline std::string list_checks(model const& m) {
    std::string out = "6. Physical checks\n\n  p/kPa  azeotrope x     °C\n";
    for (double const kpa :
         {9.0, 10.0, 11.0, 12.666, 19.71, 25.331, 32.86, 50.662, 70.0, 101.325, 143.375, 193.491}) {
        double const x = azeotrope(m, 1e3 * kpa);
        out += x < 1.0
                   ? text("%7.3f       %.4f  %6.2f\n", kpa, x, m.boiling_kelvin(x, 1e3 * kpa) - zero_celsius)
                   : text("%7.3f         none\n", kpa);
    }
    int most = 0;
    double stability = 1e9;
    int monotone_above = -1;
    for (int celsius = 0; celsius <= 120; ++celsius) {
        double const t = celsius + zero_celsius;
        int changes = 0;
        double last = m.bubble(0.0, t).ln_alpha;
        for (int i = 1; i <= 1000; ++i) {
            double const x = 1e-3 * i, now = m.bubble(x, t).ln_alpha;
            if ((now < 0.0) != (last < 0.0)) ++changes;
            if (now > last) monotone_above = celsius;
            last = now;
            if (i == 1000) continue;
            double const h = 1e-6;  // d ln a1/d ln x > 0: the liquid does not split
            double const slope = (m.ln_gamma(x + h, t).first - m.ln_gamma(x - h, t).first) / (2.0 * h);
            stability = (std::min)(stability, 1.0 + x * slope);
        }
        most = (std::max)(most, changes);
    }
    out += text("\nazeotropes at any temperature from 0 to 120 °C, steps of 1 K and 0.001 in x: at most %d\n",
                most);
    out += text("smallest d ln a/d ln x of ethanol there: %.3f (a liquid splits at zero)\n", stability);
    out += text("relative volatility falls with x above %d °C\n\n", monotone_above);
    out += "     °C   gamma ethanol in water   gamma water in ethanol   H slopes, kJ/mol        Cp slopes, "
           "J/(mol K)\n";
    for (int const celsius : {0, 20, 25, 40, 60, 80, 100, 120}) {
        double const t = celsius + zero_celsius, e = 1e-7;
        out += text("    %3d          %7.4f                  %7.4f        %8.3f %8.3f        %8.1f %8.1f\n",
                    celsius, std::exp(m.ln_gamma(0.0, t).first), std::exp(m.ln_gamma(1.0, t).second),
                    1e-3 * m.enthalpy(e, t) / e, 1e-3 * m.enthalpy(1.0 - e, t) / e, m.heat_capacity(e, t) / e,
                    m.heat_capacity(1.0 - e, t) / e);
    }
    out += "\n  x       H, J/mol, at 0, 25, 50, 70, 90, 120 °C                    Cp, J/(mol K), at 0, 25, "
           "70, 120 °C\n";
    for (double const x : {0.02, 0.05, 0.1, 0.15, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 0.95}) {
        out += text("%.2f  ", x);
        for (int const celsius : {0, 25, 50, 70, 90, 120})
            out += text(" %8.1f", m.enthalpy(x, celsius + zero_celsius));
        out += "  ";
        for (int const celsius : {0, 25, 70, 120})
            out += text(" %7.2f", m.heat_capacity(x, celsius + zero_celsius));
        out += "\n";
    }
    return out + "\n";
}

inline std::string list_pure(std::string const& folder) {
    std::string out =
        "7. Pure ethanol: measured saturation pressures, those with a stated uncertainty of at most 0.2 %\n\n"
        "     T/K     p/kPa   measured less calculated, %   source\n";
    auto const t = read_table(folder + "/ethanol_vapour_pressure.csv");
    double mean = 0.0, n = 0.0;
    for (std::size_t i = 0; i < t.rows().size(); ++i) {
        if (t.empty(i, "uncertainty_kpa")) continue;
        double const p = t.number(i, "pressure_kpa"), kelvin = t.kelvin(i);
        if (t.number(i, "uncertainty_kpa") > 0.002 * p) continue;
        double const d = 100.0 * (1e3 * p / ethanol::pressure(kelvin) - 1.0);
        out += text("%9.3f %9.4f           %+7.3f              %s %s\n", kelvin, p, d,
                    t.text(i, "publication").c_str(), t.text(i, "year").c_str());
        mean += std::abs(d);
        n += 1.0;
    }
    out += text("mean %.3f %%; normal boiling points: ethanol %.3f K, water %.4f K\n\n", mean / n,
                ethanol::temperature(atmosphere), water::temperature(atmosphere));

    namespace heat = aqueth::model::enthalpy;
    namespace book = published::vaporization_perry;
    out += "   Enthalpy of vaporization, kJ/mol, by Clapeyron's equation and by a handbook's correlation\n\n"
           "     T/K   ethanol  handbook     water  handbook\n";
    for (double const k : {273.16, 298.15, 323.15, 351.44, 373.15, 390.0})
        out += text("%8.2f   %7.3f   %7.3f   %7.3f   %7.3f\n", k, 1e-3 * heat::ethanol_vaporization(k),
                    1e-3 * book::ethanol(k), 1e-3 * heat::water_vaporization(k), 1e-3 * book::water(k));
    out += "\n     T/K   ethanol, kJ/mol   measured less calculated, %   source\n";
    auto const h = read_table(folder + "/ethanol_vaporization.csv");
    for (std::size_t i = 0; i < h.rows().size(); ++i) {
        double const k = h.kelvin(i), value = h.number(i, "enthalpy_of_vaporization_kj_mol");
        if (k < 400.0)
            out += text("%8.2f        %6.2f               %+7.2f              %s\n", k, value,
                        100.0 * (1e3 * value / heat::ethanol_vaporization(k) - 1.0),
                        h.text(i, "publication").c_str());
    }
    return out + "\n";
}

/// Temperature at which ice and the liquid are in equilibrium: the activity of water from the model, that of
/// ice from its heat of fusion and the difference of the heat capacities (R. Feistel and W. Wagner, Journal
/// of Physical and Chemical Reference Data 35 (2006) 1021; the three figures from memory).
inline double freezing_kelvin(model const& m, double x) {
    constexpr double melting = 273.15, fusion = 6007.0, difference = 38.2;  // K, J/mol, J/(mol K)
    constexpr double r = correlation::gas_constant::molar;
    return bisect(
        [&](double t) {
            double const ice = -(fusion - difference * melting) / r * (1.0 / t - 1.0 / melting) -
                               difference / r * std::log(melting / t);
            return ice - std::log(1.0 - x) - m.ln_gamma(x, t).second;
        },
        220.0, 273.15);
}

inline std::string list_freezing(model const& m, std::string const& folder) {
    std::string out = "8. Freezing points, never fitted and below the range of the model: the activity of "
                      "water at the cold end\n\n"
                      "  mass %    x      published   model, °C   source\n";
    struct entry {
        char const *table, *percent, *celsius, *source;
        double sign;
    };
    for (entry const& e :
         {entry{"crc_freezing_point", "mass_percent", "freezing_depression_k", "CRC Handbook", -1},
          {"lange_freezing_point", "ethanol_mass_percent", "freezing_point_c", "Lange", 1},
          {"melinder_2010_freezing_point", "ethanol_mass_percent", "freezing_point_c", "Melinder", 1}}) {
        auto const t = read_table(folder + "/" + e.table + ".csv");
        for (std::size_t i = 0; i < t.rows().size(); ++i) {
            double const w = t.number(i, e.percent);
            if (w > 40.0) continue;
            double const x = correlation::molar_mass::mole_fraction_from_mass_fraction(w / 100);
            out += text("  %5.1f   %.4f   %8.2f   %8.2f    %s\n", w, x, e.sign * t.number(i, e.celsius),
                        freezing_kelvin(m, x) - zero_celsius, e.source);
        }
    }
    return out;
}

}  // namespace aqueth::fit
