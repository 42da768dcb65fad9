// SPDX-License-Identifier: BSL-1.0
// A wash from a hydrometer and a refractometer, with the uncertainty of its strength.
#include <aqueth/density.hpp>
#include <aqueth/metrology/instruments.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/metrology/uncertainty.hpp>
#include <aqueth/refraction.hpp>

#include <cstdio>
#include <vector>

int main() {
    // [body]
    using namespace aqueth;
    specific_gravity const gravity(0.992);
    brix const shown(6.5);
    wash const now = wash_from_gravity_and_index(25.0 * litre, gravity, shown, celsius(20.0));
    wash const also = fermented_wash(25.0 * litre, specific_gravity(1.085), shown, celsius(20.0));

    double const rho = gravity.value() * density(mass_fraction(0.0), celsius(20.0)).value();
    std::vector<input_quantity> const inputs{
        input_quantity::rectangular("density", "kg/m3", rho, 0.5),
        input_quantity::rectangular("index", "1", refractive_index_of(shown).value(), 0.0003),
        refraction_error(),
    };
    measurement_model::alcohol_and_extract<double> const near{in(now.liquid().ethanol(), now.mass()),
                                                              now.extract().value()};
    auto const alcohol = [&near](auto const& x) {
        return 100.0 * measurement_model::from_density_and_index(x[0], x[1] + x[2], near).alcohol;
    };
    std::printf("both readings         %.2f %% vol, %.2f °P\n", now.strength().percent(),
                now.extract().degrees());
    std::printf("standard uncertainty  %.2f %% mass\n", propagate(alcohol, inputs).standard_uncertainty);
    std::printf("original and reading  %.2f %% vol, %.2f °P\n", also.strength().percent(),
                also.extract().degrees());
    // [body]
}
