// SPDX-License-Identifier: BSL-1.0
//
// First guesses for the inverses of OIML R 22.
//
//   oiml_r22_inverse > include/aqueth/correlation/oiml_r22_inverse_guess.hpp
//
// Each guess has two forms. Loops over arrays evaluate one polynomial over the whole range for many elements at
// once. For one element polynomials by intervals are closer and faster.
#include "guess.hpp"

#include <aqueth/correlation/freezing_point.hpp>
#include <aqueth/correlation/oiml_r22_inverse.hpp>

#include <algorithm>
#include <cstddef>
#include <cstdio>
#include <exception>
#include <vector>

namespace {

namespace r22 = aqueth::correlation::oiml_r22;
using namespace aqueth::fit;

constexpr std::size_t temperature_bands = 6;
constexpr std::size_t density_intervals = 64;
constexpr std::size_t ratio_intervals = 128;

bool liquid(decimal const& w, decimal const& t) {
    namespace ice = aqueth::correlation::freezing_point;
    return !ice::covers(w) || t >= ice::celsius(w);
}

// s = 2 w - 1 of every liquid mixture from -20 to 40 °C, over its scaled density and tau.
std::vector<sample> compositions() {
    std::vector<sample> samples;
    for (decimal const& tau : chebyshev_places(31)) {
        decimal const t = 10 + 30 * tau;
        r22::isotherm<decimal> const at_t(t);
        for (decimal const& s : chebyshev_places(61)) {
            decimal const w = (s + 1) / 2;
            if (!liquid(w, t)) continue;
            samples.push_back(
                {(at_t.density(w) - decimal(r22::middle_density)) / decimal(r22::density_span), tau, s});
        }
    }
    return samples;
}

// The density of the weakest liquid mixture at t.
decimal heaviest_liquid(r22::isotherm<decimal> const& at_t, decimal const& t) {
    decimal frozen = 0, weakest = 1;
    if (liquid(frozen, t)) return at_t.density(frozen);
    for (int k = 0; k < 60; ++k) {
        decimal const middle = (frozen + weakest) / 2;
        (liquid(middle, t) ? weakest : frozen) = middle;
    }
    return at_t.density(weakest);
}

// The same within a band of temperature and an interval of density, over the place in both (0 to 1). Where
// only a part of the cell is liquid, all samples lie in that part.
std::vector<sample> compositions_within(std::size_t band, std::size_t interval) {
    decimal const width =
        decimal(r22::highest_tabulated_density - r22::lowest_tabulated_density) / density_intervals;
    decimal const begins = decimal(r22::lowest_tabulated_density) + width * interval;
    decimal const warmth = decimal(r22::highest_celsius - r22::lowest_celsius) / temperature_bands;
    decimal const coldest = decimal(r22::lowest_celsius) + warmth * band;
    std::vector<sample> samples;
    for (decimal const& y : chebyshev_places(13)) {
        decimal const in_band = (y + 1) / 2, t = coldest + warmth * in_band;
        r22::isotherm<decimal> const at_t(t);
        decimal const from = (std::max)(begins, at_t.density(decimal(1)));
        decimal const to = (std::min)(decimal(begins + width), heaviest_liquid(at_t, t));
        if (from > to) continue;
        for (decimal const& x : chebyshev_places(9)) {
            decimal const rho = from + (to - from) * (x + 1) / 2;
            samples.push_back(
                {(rho - begins) / width, in_band, 2 * r22::mass_fraction_from_density(at_t, rho) - 1});
        }
    }
    return samples;
}

// Density of mixtures at 20 °C over that of ethanol, against a position between two volume fractions. It
// equals q/w; as a ratio it keeps all digits of the weakest mixtures.
// @param first the place of the first: -1 or 0; that of the second is 1
std::vector<sample> density_ratios(decimal const& from, decimal const& to, int first, int count) {
    decimal const t = 20;
    r22::isotherm<decimal> const at_t(t);
    decimal const ethanol = at_t.density(decimal(1));
    std::vector<sample> samples;
    for (decimal const& x : chebyshev_places(count)) {
        decimal const share = (x + 1) / 2, q = from + (to - from) * share;
        decimal const w = r22::mass_fraction_from_concentration(at_t, q * ethanol);
        samples.push_back({first + (1 - first) * share, decimal(0), at_t.density(w) / ethanol});
    }
    return samples;
}

polynomial fit_in_one_variable(std::vector<sample> const& samples, std::size_t terms) {
    return fit(samples, std::vector<std::size_t>(terms, 0));
}

std::vector<decimal> powers_of(polynomial const& in_one_variable) {
    std::vector<decimal> powers;
    for (auto const& each : in_one_variable) powers.push_back(each.front());
    return powers;
}

void print_pairs(std::vector<decimal> const& firsts, std::vector<decimal> const& seconds) {
    std::printf("{{");
    for (std::size_t k = 0; k < firsts.size(); ++k) {
        if (k > 0) std::printf(", ");
        print_braced({firsts[k], seconds[k]});
    }
    std::printf("}}");
}

void print_composition_guess() {
    auto const samples = compositions();
    quotient const fitted = fit(samples, {4, 4, 3, 2, 2, 1, 0}, {3, 3, 2, 2, 1, 0});
    std::puts("/// Numerator of the first guess of s = 2 w - 1 for liquid mixtures: the sum over i of x^i");
    std::puts("/// times polynomial i in tau (lowest power first), with x = (density - middle_density)/");
    std::puts("/// density_span and tau = (t - 10 °C)/(30 °C).");
    std::printf("/// Error of the quotient at most %.4f.\n", worst_error(samples, fitted));
    print_tuple("composition_guess_numerator", fitted.numerator);
    std::puts("/// Denominator of the same guess.");
    print_tuple("composition_guess_denominator", fitted.denominator);
}

void print_composition_table() {
    double worst = 0.0, worst_warm = 0.0;
    std::puts("\n/// First guess of s by bands of temperature and intervals of density: a cubic in the");
    std::puts(
        "/// place within each, 0 to 1. Element [j][i] of a cell belongs to power j of the place in the");
    std::puts("/// band and power i of that in the interval. Cells without a liquid are zero.");
    std::printf(
        "alignas(64) inline constexpr std::array<std::array<std::array<std::array<float, 4>, 4>, %zu>, "
        "%zu> composition_table{{\n",
        density_intervals, temperature_bands);
    for (std::size_t band = 0; band < temperature_bands; ++band) {
        std::puts("    {{");
        for (std::size_t k = 0; k < density_intervals; ++k) {
            auto const within = compositions_within(band, k);
            polynomial const fitted = fit(within, std::vector<std::size_t>(4, 3));
            double const deviation = worst_error(within, fitted);
            worst = (std::max)(worst, deviation);
            if (band >= 2) worst_warm = (std::max)(worst_warm, deviation);
            std::printf("        {{");
            for (std::size_t j = 0; j < 4; ++j) {
                std::printf("%s{", j > 0 ? ", " : "");
                for (std::size_t i = 0; i < 4; ++i)
                    std::printf("%s%.8ef", i > 0 ? ", " : "", static_cast<double>(fitted[i][j]));
                std::printf("}");
            }
            std::puts("}},");
        }
        std::puts("    }},");
    }
    std::printf("}};  // within %.1g, from 0 °C up within %.1g, at the places it is fitted to\n", worst,
                worst_warm);
}

void print_mass_to_volume_fraction_guess() {
    auto samples = density_ratios(0, 1, -1, 61);
    for (sample& each : samples) each.value = 1 / each.value;
    polynomial const fitted = fit_in_one_variable(samples, 17);
    std::puts("\n/// First guess of w/q, mass fraction over volume fraction at 20 °C, in powers of 2 q - 1.");
    std::printf("/// Error at most %.6f.\n", worst_error(samples, fitted));
    std::printf("inline constexpr std::array<double, %zu> mass_to_volume_fraction_guess", fitted.size());
    print_braced(powers_of(fitted));
    std::puts(";");
}

void print_density_ratio_table() {
    constexpr std::size_t pairs = 5;
    double worst = 0.0;
    std::puts(
        "\n/// q/w, which is the density at 20 °C over that of ethanol, by intervals of q: in powers of");
    std::puts("/// the place within each, 0 to 1, even and odd powers in pairs. To the last digit.");
    std::printf(
        "inline constexpr std::array<std::array<numeric::pair<double>, %zu>, %zu> density_ratio_table{{\n",
        pairs, ratio_intervals);
    for (std::size_t k = 0; k < ratio_intervals; ++k) {
        auto const within =
            density_ratios(decimal(k) / ratio_intervals, decimal(k + 1) / ratio_intervals, 0, 30);
        polynomial const fitted = fit_in_one_variable(within, 2 * pairs);
        worst = (std::max)(worst, worst_error(within, fitted));
        std::vector<decimal> even, odd;
        for (std::size_t i = 0; i < fitted.size(); ++i) (i % 2 == 0 ? even : odd).push_back(fitted[i][0]);
        std::printf("    ");
        print_pairs(even, odd);
        std::puts(",");
    }
    std::printf("}};  // within %.1g\n", worst);
}

}  // namespace

int main() try {
    std::puts("// SPDX-License-Identifier: BSL-1.0");
    std::puts("// Generated by src/fit/oiml_r22_inverse.cpp. Do not edit: run the fit again.");
    std::puts("#pragma once\n\n#include <aqueth/version.hpp>\n");
    std::puts("#include <aqueth/numeric/pair.hpp>\n");
    std::puts("#include <array>");
    std::puts("#include <tuple>\n");
    std::puts("namespace aqueth::inline AQUETH_ABI::correlation::oiml_r22 {\n");
    std::puts("// clang-format off");
    print_composition_guess();
    print_composition_table();
    print_mass_to_volume_fraction_guess();
    print_density_ratio_table();
    std::puts("// clang-format on\n");
    std::puts("}  // namespace aqueth::inline AQUETH_ABI::correlation::oiml_r22");
    return 0;
} catch (std::exception const& error) {
    std::fprintf(stderr, "oiml_r22_inverse: %s\n", error.what());
    return 1;
}
