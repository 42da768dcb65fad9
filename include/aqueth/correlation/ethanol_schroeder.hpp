// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/correlation/molar_mass.hpp>
#include <aqueth/correlation/source.hpp>

#include <array>
#include <cmath>

/// Density of liquid ethanol by its equation of state of 2014.
namespace aqueth::inline AQUETH_ABI::correlation::ethanol_schroeder {

/// Citation, range and accuracy.
inline constexpr source cited{"J. A. Schroeder, S. G. Penoncello, J. S. Schroeder, A Fundamental Equation of "
                              "State for Ethanol, J. Phys. "
                              "Chem. Ref. Data 43 (2014) 043102",
                              "159 to 650 K (ITS-90), to 280 MPa; used for the liquid at 0.1 MPa",
                              "not read; OIML R 22 is within 0.2 kg/m3 from 0 to 40 °C, measurements of 2005 "
                              "within 0.5 kg/m3 at 50 and "
                              "75 °C"};

inline constexpr double critical_kelvin = 514.71;      ///< temperature at the critical point, K
inline constexpr double critical_mol_per_m3 = 5930.0;  ///< density at the critical point, mol/m3
inline constexpr double gas_constant = 8.314472;       ///< as the authors used it, J/(mol K)

/// A term of the residual Helmholtz energy: n delta^d tau^t exp(-delta^l) exp(-alpha (delta - epsilon)^2 -
/// beta (tau - gamma)^2); without the first exponential if l is 0.
struct term {
    double n;        ///< coefficient
    double t;        ///< power of tau
    int d;           ///< power of delta
    int l;           ///< power of delta in the exponential; 0: no exponential
    double alpha;    ///< of the bell: steepness in delta; 0: no bell
    double beta;     ///< steepness in tau
    double gamma;    ///< middle in tau
    double epsilon;  ///< middle in delta
};
// clang-format off
inline constexpr std::array<term, 25> terms{{
    {5.8200796e-02, 1, 4, 0, 0, 0, 0, 0},
    {9.4391227e-01, 1.04, 1, 0, 0, 0, 0, 0},
    {-8.0941908e-01, 2.72, 1, 0, 0, 0, 0, 0},
    {5.5359038e-01, 1.174, 2, 0, 0, 0, 0, 0},
    {-1.4269032e+00, 1.329, 2, 0, 0, 0, 0, 0},
    {1.3448717e-01, 0.195, 3, 0, 0, 0, 0, 0},
    {4.2671978e-01, 2.43, 1, 1, 0, 0, 0, 0},
    {-1.1700261e+00, 1.274, 1, 1, 0, 0, 0, 0},
    {-9.2405872e-01, 4.16, 1, 2, 0, 0, 0, 0},
    {3.4891808e-01, 3.3, 3, 1, 0, 0, 0, 0},
    {-9.1327720e-01, 4.177, 3, 2, 0, 0, 0, 0},
    {2.2629481e-02, 2.5, 2, 1, 0, 0, 0, 0},
    {-1.5513423e-01, 0.81, 2, 2, 0, 0, 0, 0},
    {2.1055146e-01, 2.02, 6, 1, 0, 0, 0, 0},
    {-2.1997690e-01, 1.606, 6, 1, 0, 0, 0, 0},
    {-6.5857238e-03, 0.86, 8, 1, 0, 0, 0, 0},
    {7.5564749e-01, 2.5, 1, 0, 1.075, 1.207, 1.194, 0.779},
    {1.0694110e-01, 3.72, 1, 0, 0.463, 0.0895, 1.986, 0.805},
    {-6.9533844e-02, 1.19, 2, 0, 0.876, 0.581, 1.583, 1.869},
    {-2.4947395e-01, 3.25, 3, 0, 1.108, 0.947, 0.756, 0.694},
    {2.7177891e-02, 3, 3, 0, 0.741, 2.356, 0.495, 1.312},
    {-9.0539530e-04, 2, 2, 0, 4.032, 27.01, 1.002, 2.054},
    {-1.2310953e-01, 2, 2, 0, 2.453, 4.542, 1.077, 0.441},
    {-8.9779710e-02, 1, 2, 0, 2.3, 1.287, 1.493, 0.793},
    {-3.9512601e-01, 1, 1, 0, 3.143, 3.09, 1.542, 0.313}}};  ///< in the order of the publication
// clang-format on

/// Pressure and its slope.
struct pressure_and_slope {
    double pressure;     ///< pressure, Pa
    double per_density;  ///< its change per mol/m3
};

/// @param kelvin     temperature, K
/// @param mol_per_m3 density
/// @return pressure, and its derivative with respect to the density
inline pressure_and_slope pressure(double kelvin, double mol_per_m3) {
    double const delta = mol_per_m3 / critical_mol_per_m3;
    double const tau = critical_kelvin / kelvin;
    double first = 0.0;   // delta d phi/d delta
    double second = 0.0;  // delta^2 d2 phi/d delta2
    for (term const& k : terms) {
        double const shift = delta - k.epsilon;
        double const decay = k.l > 0 ? std::pow(delta, k.l) : 0.0;
        double const bell = k.alpha * shift * shift + k.beta * (tau - k.gamma) * (tau - k.gamma);
        double const value = k.n * std::pow(delta, k.d) * std::pow(tau, k.t) * std::exp(-decay - bell);
        double const slope = k.d - k.l * decay - 2.0 * k.alpha * delta * shift;            // d ln/d ln delta
        double const bend = -k.l * k.l * decay - 2.0 * k.alpha * delta * (shift + delta);  // of the slope
        first += value * slope;
        second += value * (slope * slope + bend - slope);
    }
    double const ideal = gas_constant * kelvin;
    return {mol_per_m3 * ideal * (1.0 + first), ideal * (1.0 + 2.0 * first + second)};
}

/// @param t temperature, °C (ITS-90), of the liquid; not checked
/// @param p pressure, Pa
/// @return density of liquid ethanol, kg/m3
inline double liquid_density(double t, double p = 1e5) {
    double density = 3.2 * critical_mol_per_m3;  // above that of the liquid: Newton's method descends to it
    for (int i = 0; i < 50; ++i) {
        auto const at = pressure(t + 273.15, density);
        double const step = (p - at.pressure) / at.per_density;
        density += step;
        if (std::abs(step) < 1e-10 * density) break;
    }
    return density * molar_mass::ethanol * 1e-3;
}

}  // namespace aqueth::inline AQUETH_ABI::correlation::ethanol_schroeder
