// SPDX-License-Identifier: BSL-1.0
#pragma once

#include "table.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <map>
#include <stdexcept>
#include <string>
#include <utility>
#include <vector>

/// Modified UNIFAC (Dortmund): activity coefficients from the groups of the molecules. Only the fit of the
/// traces needs it; the library carries its result in a short form.
namespace aqueth::fit {

/// A molecule: how many of each group, by the group's name in the table.
using molecule = std::map<std::string, double>;

class unifac {
public:
    /// @param folder where unifac_dortmund_groups.csv and unifac_dortmund_interactions.csv are
    explicit unifac(std::string const& folder) {
        auto const groups = read_table(folder + "/unifac_dortmund_groups.csv");
        for (std::size_t k = 0; k < groups.rows().size(); ++k) {
            groups_[groups.text(k, "id")] = {groups.text(k, "main_group"), groups.number(k, "r"),
                                             groups.number(k, "q")};
        }
        auto const pairs = read_table(folder + "/unifac_dortmund_interactions.csv");
        for (std::size_t k = 0; k < pairs.rows().size(); ++k) {
            pairs_[{pairs.text(k, "main_group_i"), pairs.text(k, "main_group_j")}] = {
                pairs.number(k, "a_k"), pairs.number(k, "b"), pairs.number(k, "c_per_k")};
        }
    }

    /// Logarithm of the activity coefficient of a trace at infinite dilution.
    /// @param trace    the molecule
    /// @param solvents molecules of the solvent
    /// @param x        their mole fractions
    /// @param t        temperature, K
    /// @return ln gamma, pure liquid as the reference state
    double ln_gamma(molecule const& trace, std::array<molecule, 2> const& solvents,
                    std::array<double, 2> const& x, double t) const {
        double r = 0.0, r34 = 0.0, q = 0.0;
        molecule mixture;
        for (std::size_t i = 0; i < 2; ++i) {
            auto const [ri, qi] = size(solvents[i]);
            r += x[i] * ri;
            r34 += x[i] * std::pow(ri, 0.75);
            q += x[i] * qi;
            for (auto const& [name, number] : solvents[i]) mixture[name] += x[i] * number;
        }
        auto const [own_r, own_q] = size(trace);
        double const v34 = std::pow(own_r, 0.75) / r34, v_over_f = own_r / r / (own_q / q);
        double const combinatorial =
            1.0 - v34 + std::log(v34) - 5.0 * own_q * (1.0 - v_over_f + std::log(v_over_f));
        double residual = 0.0;
        for (auto const& [name, number] : trace)
            residual += number * (ln_group(name, mixture, t) - ln_group(name, trace, t));
        return combinatorial + residual;
    }

private:
    struct group {
        std::string main;
        double r, q;
    };
    struct pair {
        double a, b, c;
    };

    group const& find(std::string const& name) const {
        auto const g = groups_.find(name);
        if (g == groups_.end()) throw std::runtime_error("no group " + name);
        return g->second;
    }
    std::pair<double, double> size(molecule const& m) const {
        double r = 0.0, q = 0.0;
        for (auto const& [name, number] : m) {
            r += number * find(name).r;
            q += number * find(name).q;
        }
        return {r, q};
    }
    double psi(std::string const& n, std::string const& m, double t) const {
        std::string const &first = find(n).main, &second = find(m).main;
        if (first == second) return 1.0;
        auto const p = pairs_.find({first, second});
        if (p == pairs_.end()) throw std::runtime_error("no pair " + first + " " + second);
        return std::exp(-(p->second.a + p->second.b * t + p->second.c * t * t) / t);
    }
    /// logarithm of the activity coefficient of a group in a mixture of groups
    double ln_group(std::string const& k, molecule const& mixture, double t) const {
        double surface = 0.0;
        for (auto const& [name, number] : mixture) surface += number * find(name).q;
        auto const theta = [&](std::string const& name, double number) {
            return number * find(name).q / surface;
        };
        double around = 0.0, beside = 0.0;
        for (auto const& [m, number] : mixture) {
            around += theta(m, number) * psi(m, k, t);
            double sum = 0.0;
            for (auto const& [n, of_n] : mixture) sum += theta(n, of_n) * psi(n, m, t);
            beside += theta(m, number) * psi(k, m, t) / sum;
        }
        return find(k).q * (1.0 - std::log(around) - beside);
    }

    std::map<std::string, group> groups_;
    std::map<std::pair<std::string, std::string>, pair> pairs_;
};

}  // namespace aqueth::fit
