// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <cmath>

/// The equations of a textbook, so that its examples are checked with its own means: N. de Nevers, Physical
/// and Chemical Equilibrium for Chemical Engineers, chapter 8. Van Laar for the liquid, Antoine for the pure
/// liquids, an ideal vapour. They are not part of the library.
///
/// Plain numbers: mole fractions of ethanol, °C, atm.
namespace aqueth::published::textbook {

/// Antoine's equation with the book's constants, mmHg and °C.
inline double ethanol_pressure(double celsius) {
    return std::pow(10.0, 8.04494 - 1554.3 / (celsius + 222.65)) / 760;
}
inline double water_pressure(double celsius) {
    return std::pow(10.0, 7.96681 - 1668.21 / (celsius + 228.0)) / 760;
}

/// Partial pressures over a liquid, atm.
struct partial_pressures {
    double ethanol, water;
    double total() const { return ethanol + water; }
    double vapour() const { return ethanol / total(); }
};

/// Van Laar's equation in decimal logarithms with the book's constants, and Raoult's law.
inline partial_pressures over(double x, double celsius) {
    double const a = 0.7292, b = 0.4104, z = 1.0 - x, d = a * x + b * z;
    return {x * std::pow(10.0, a * b * b * z * z / (d * d)) * ethanol_pressure(celsius),
            z * std::pow(10.0, b * a * a * x * x / (d * d)) * water_pressure(celsius)};
}

/// Halves a bracket until nothing is left of it.
template <class F>
double root(F const& f, double lower, double upper) {
    bool const below = f(lower) < 0.0;
    for (int i = 0; i < 100; ++i) {
        double const middle = 0.5 * (lower + upper);
        ((f(middle) < 0.0) == below ? lower : upper) = middle;
    }
    return 0.5 * (lower + upper);
}

/// Boiling point of a liquid under 1 atm.
inline double boiling_celsius(double x) {
    return root([&](double t) { return over(x, t).total() - 1.0; }, 70.0, 105.0);
}

}  // namespace aqueth::published::textbook
