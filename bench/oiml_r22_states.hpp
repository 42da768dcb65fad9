// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/composition.hpp>
#include <aqueth/correlation/oiml_r22.hpp>
#include <aqueth/freezing.hpp>
#include <aqueth/units.hpp>

#include "comparison.hpp"

#include <cstddef>
#include <random>

namespace aqueth::bench {

/// Liquid mixtures over the whole range of OIML R 22, the same every time.
struct states {
    numbers<double> w;    ///< mass fraction
    numbers<double> t;    ///< temperature, °C
    numbers<double> rho;  ///< density, kg/m3
    numbers<double> q;    ///< volume fraction at 20 °C

    /// @param coldest lower end of the temperature range, °C
    explicit states(double coldest) {
        std::mt19937_64 random(22);
        std::uniform_real_distribution<double> fraction(0.0, 1.0);
        std::uniform_real_distribution<double> degrees(coldest, 40.0);
        for (auto* each : {&w, &t, &rho, &q}) each->reserve(elements);
        while (w.size() < elements) {
            double const one_w = fraction(random), one_t = degrees(random);
            if (one_t < aqueth::plain::coldest_liquid_celsius(one_w)) continue;
            w.push_back(one_w);
            t.push_back(one_t);
            rho.push_back(correlation::oiml_r22::density(one_w, one_t));
            q.push_back(correlation::oiml_r22::volume_fraction_from_mass_fraction(one_w, 20.0));
        }
    }
};

}  // namespace aqueth::bench
