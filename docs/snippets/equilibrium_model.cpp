// SPDX-License-Identifier: BSL-1.0
// The coefficients of the equilibrium model, and a boiling point worked out by hand from them.
#include <aqueth/equilibrium.hpp>
#include <aqueth/model/excess_gibbs_coefficients.hpp>
#include <aqueth/model/modified_raoult.hpp>

#include <cmath>
#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    namespace model = model::excess_gibbs;

    std::printf("r = %.2f, T0 = %.2f K\n\n", model::skew, model::reference_kelvin);
    std::printf("k              a               b               c               d\n");
    int row = 0;
    for (auto const& c : model::coefficients)
        std::printf("%d %15.9f %15.9f %15.9f %15.9f\n", row++, c[0], c[1], c[2], c[3]);

    // By hand: 10 % mol of ethanol at 86 °C, over an ideal vapour, with the library's saturation pressures.
    double const x1 = 0.10, x2 = 1.0 - x1, T = 86.0 + 273.15, T0 = model::reference_kelvin;
    double const u1 = T0 / T - 1.0, u2 = 1.0 - T0 / T - std::log(T / T0);
    double const u3 = std::log(T / T0) - (T / T0 - T0 / T) / 2.0;
    double const s = (x1 - model::skew * x2) / (x1 + model::skew * x2);
    double const ds = 2.0 * model::skew / std::pow(x1 + model::skew * x2, 2.0);
    double sum = 0.0, slope = 0.0, power = 1.0, lower_power = 0.0;  // S, dS/dx1, s^k, s^(k-1)
    int k = 0;
    for (auto const& c : model::coefficients) {
        double const q = c[0] + c[1] * u1 + c[2] * u2 + c[3] * u3;
        sum += q * power;
        slope += q * k++ * lower_power * ds;
        lower_power = power;
        power *= s;
    }
    double const gamma1 = std::exp(x2 * x2 * (sum + x1 * slope));
    double const gamma2 = std::exp(x1 * x1 * (sum - x2 * slope));
    double const p1 = in(bubble_point(by_moles(100.0), celsius(86.0)).pressure, kilopascal);
    double const p2 = in(bubble_point(by_moles(0.0), celsius(86.0)).pressure, kilopascal);
    double const p = x1 * gamma1 * p1 + x2 * gamma2 * p2;

    auto const library = activity_coefficients_of(by_moles(10.0), celsius(86.0));
    auto const boiling = bubble_point(by_moles(10.0), celsius(86.0));
    std::printf("\n10 %% mol at 86 °C         by hand   library\n");
    std::printf("activity coefficients    %.5f   %.5f of ethanol\n", gamma1, library.ethanol);
    std::printf("                         %.5f   %.5f of water\n", gamma2, library.water);
    std::printf("pressure, kPa            %.3f   %.3f; by hand over an ideal vapour\n", p,
                in(boiling.pressure, kilopascal));
    std::printf("vapour, mole fraction     %.4f    %.4f\n", x1 * gamma1 * p1 / p, boiling.vapour.value());
    // [body]
}
