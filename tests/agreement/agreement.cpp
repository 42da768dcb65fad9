// SPDX-License-Identifier: BSL-1.0
//
// Results of every floor, one per line: name, tolerance, value in decimal and in binary. tests/builds.sh
// compiles this program with several compilers, options and processors, and compares the output. The
// tolerance is the permitted relative difference of builds: see docs/accuracy.md.
#include <aqueth/aqueth.hpp>
#include <aqueth/array.hpp>
#include <aqueth/correlation/its90.hpp>
#include <aqueth/correlation/sucrose_density.hpp>

#include <array>
#include <cstdio>
#include <limits>
#include <vector>

namespace {

// Permitted relative differences of two builds.
constexpr double arithmetic = 5e-16;  // plain arithmetic that loses no digits
constexpr double functions = 5e-15;   // logarithms, exponentials; inverses where they are steep
constexpr double iterations = 5e-14;  // differences of large figures, solutions of several equations
constexpr double runs = 1e-11;        // integrations with adaptive steps

// Prevents the compiler from computing the results itself.
double run_time(double x) {
    double volatile kept = x;
    return kept;
}

void show(char const* name, double tolerance, double value) {
    std::printf("%s\t%g\t%.17g\t%a\n", name, tolerance, value, value);
}

void kernels() {
    namespace c = aqueth::correlation;
    namespace m = aqueth::model;
    double const w = run_time(0.37), q = run_time(0.45), t = run_time(13.7), cold = run_time(-15.3),
                 kelvin = run_time(355.4), x = run_time(0.23);
    show("density", arithmetic, c::oiml_r22::density(w, t));
    show("density_cold", arithmetic, c::oiml_r22::density(w, cold));
    auto const slopes = c::oiml_r22::density_with_derivatives(w, t);
    double const nan = run_time(std::numeric_limits<double>::quiet_NaN());
    double const lost = c::oiml_r22::mass_fraction_from_density(nan, t);
    show("nan_in_nan_out", arithmetic, lost != lost && !c::oiml_r22::covers(nan, t) ? 1.0 : 0.0);
    show("density_slope", functions, slopes.d_mass_fraction);
    show("density_slope_temperature", functions, slopes.d_temperature);
    show("mass_fraction_from_density", functions,
         c::oiml_r22::mass_fraction_from_density(run_time(951.2), t));
    show("mass_fraction_from_volume", arithmetic,
         c::oiml_r22::mass_fraction_from_volume_fraction(q, run_time(15.0)));
    show("volume_fraction", arithmetic, c::oiml_r22::volume_fraction_from_mass_fraction(w, run_time(15.0)));
    show("water_density", arithmetic, c::cipm_2001_water::density(t));
    show("t68", arithmetic, c::its90::t68_from_t90(t));
    show("sucrose", functions, c::sucrose_density::excess(run_time(0.12), t).value);
    show("saturation_ethanol", functions, c::ethanol_saturation_poling::pressure(kelvin));
    show("saturation_water", functions, c::water_saturation_wagner_pruss::pressure(kelvin));
    show("excess_gibbs", functions, m::excess_gibbs::reduced_gibbs(x, kelvin).molar);
    auto const boiling = m::vapour_liquid::bubble_at_temperature(x, kelvin);
    show("bubble_pressure", functions, boiling.pressure);
    show("bubble_vapour", functions, boiling.y);
    show("vaporization_water", functions, m::enthalpy::water_vaporization(kelvin));
    show("vapour_enthalpy", functions, m::enthalpy::vapour(x, kelvin, run_time(50000.0)));
}

void properties_and_operations() {
    using namespace aqueth;
    alcoholometer const meter;
    auto const spirit =
        parcel::of(run_time(2.0) * litre, by_volume(run_time(80.76)), celsius(run_time(31.0)));
    show("density_typed", arithmetic, density(by_mass(run_time(40.0)), celsius(run_time(12.5))).value());
    show("freezing_point", functions, freezing_point(by_mass(run_time(23.4))).celsius());
    show("strength_by_moles", functions, to<mole_fraction>(by_volume(run_time(41.0))).value());
    show("strength_by_proof", arithmetic, to<us_proof>(by_volume(run_time(41.0))).degrees());
    show("true_strength", functions,
         meter.strength(by_volume(run_time(84.0)), celsius(run_time(31.0))).value());
    show("reading", functions, meter.reading(by_mass(run_time(36.5)), celsius(run_time(26.0))).value());
    show("excess_volume", iterations,
         excess_molar_volume(by_mass(run_time(50.0)), celsius(run_time(21.0))).value());
    show("thermal_expansion", functions,
         thermal_expansion(by_mass(run_time(50.0)), celsius(run_time(21.0))).value());
    show("pressure_at_altitude", functions, pressure_at_altitude(run_time(650.0) * metre).value());
    auto const bubble = bubble_point(by_volume(run_time(8.0)), run_time(93.0) * kilopascal);
    show("boiling_temperature", functions, bubble.temperature.celsius());
    show("vapour_strength", functions, bubble.vapour.value());
    show("dew_temperature", functions,
         dew_point(by_moles(run_time(42.0)), run_time(93.0) * kilopascal).temperature.celsius());
    show("azeotrope", iterations, azeotrope(run_time(101.325) * kilopascal).liquid.value());
    show("heat_of_mixing", functions,
         excess_enthalpy(by_moles(run_time(31.0)), celsius(run_time(25.0))).value());
    show("heat_capacity", functions,
         specific_heat_capacity(by_mass(run_time(31.0)), celsius(run_time(25.0))).value());

    auto const plan = dilute(spirit, by_volume(run_time(45.0)), water_at(celsius(run_time(15.0))));
    show("water_to_add", functions, plan.addition.mass().value());
    show("temperature_of_mixture", iterations, plan.product.temperature().celsius());
    show("contraction", iterations, plan.contraction.value());
    show("fill_volume", arithmetic,
         fill_volume(0.5 * litre, spirit.composition(), celsius(run_time(27.0))).value());
    show("proof_gallons", functions, spirit.proof_gallons());
}

void runs_of_a_still() {
    using namespace aqueth;
    boiling_curve const mixture(run_time(95.0) * kilopascal);
    show("reflux_least", iterations,
         minimum_reflux(mixture, by_moles(run_time(5.0)), by_moles(run_time(75.0))));
    show("stages", iterations,
         stages_needed(mixture, by_moles(run_time(5.0)), by_moles(run_time(75.0)), run_time(3.0)));

    // the 25 L pot of the Quillbeck teaching stillhouse with four plates
    still pot{{2.0 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin, celsius(20.0)}};
    pot.tower = column::of_plates(4, 0.6);
    pot.neck = neck::condensing(run_time(0.05));
    pot.head = head::total_condenser(reflux::constant(run_time(3.0)));
    run_plan plan;
    plan.ends = {condition::distillate_strength(by_volume(run_time(20.0)))};
    auto const run = distil(wash::of(25.0 * litre, by_volume(run_time(11.0)), plato(1.5), celsius(20.0)), pot,
                            plan, mixture);
    show("run_ethanol", runs, run.kept_ethanol().value());
    show("run_strength", runs, run.fractions.front().product.composition().value());
    show("run_time", runs, run.boiling_time.value());
    show("run_heat", runs, run.heat.supplied.value());
}

void arrays_and_uncertainty() {
    using namespace aqueth;
    std::vector<double> const w{0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7}, t(w.size(), run_time(18.0));
    std::vector<double> rho(w.size());
    arrays::density(w, t, rho);
    double sum = 0.0;
    for (double const each : rho) sum += each;
    show("array_of_densities", arithmetic, sum);

    std::array const inputs{input_quantity::normal("reading", "% vol", run_time(84.0), 0.1),
                            input_quantity::normal("temperature", "°C", run_time(31.0), 0.2)};
    auto const budget = propagate(
        [](auto const& x) { return measurement_model::mass_fraction_from_reading(x[0] / 100.0, x[1]); },
        inputs);
    show("standard_uncertainty", iterations, budget.standard_uncertainty);
    show("conformance", iterations, conformance_probability({39.7, 40.3}, {run_time(40.2), 0.09}));
}

}  // namespace

int main() {
    kernels();
    properties_and_operations();
    runs_of_a_still();
    arrays_and_uncertainty();
}
