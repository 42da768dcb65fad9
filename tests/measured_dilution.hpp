// SPDX-License-Identifier: BSL-1.0
#pragma once

#include <aqueth/array_draws.hpp>
#include <aqueth/metrology/instruments.hpp>
#include <aqueth/metrology/measurement_model.hpp>
#include <aqueth/metrology/uncertainty.hpp>

#include <cstddef>
#include <type_traits>
#include <vector>

namespace aqueth::test {

/// The dilution of the README: two litres that read 84 at 31 °C, diluted to 45 % vol.
struct dilution {
    enum {
        reading,
        meter,
        level,
        temperature,
        thermometer,
        scale,
        glass,
        formula,
        volume,
        measure,
        water,
        balance
    };

    static std::vector<input_quantity> inputs() {
        using input = input_quantity;
        return {
            input::normal("reading", "% vol", 84.0, 0.0),
            error_of(*find_instrument_class("alcoholometer-III")),
            reading_error("alcoholometer", "% vol", 0.25),
            input::normal("temperature", "°C", 31.0, 0.0),
            error_of(*find_instrument_class("thermometer-0.5")),
            temperature_scale_error(celsius(31.0)),
            glass_expansion_of_soda_lime(),
            formula_error(),
            input::normal("volume", "mL", 2000.0, 0.0),
            error_of(*find_instrument_class("cylinder-2000-B")),
            input::normal("water weighed in", "kg", 1.640, 0.0),
            balance_error(1.640 * kilogram, 1.0 * gram),
        };
    }
    template <class X>
    static auto composition(X const& x) {
        auto const t = x[temperature] + x[thermometer] + x[scale];
        auto const shown = (x[reading] + x[meter] + x[level]) / 100.0;
        return measurement_model::mass_fraction_from_reading(shown, t, x[glass], x[formula]);
    }
    template <class X>
    static auto mass(X const& x) {
        auto const t = x[temperature] + x[thermometer] + x[scale];
        auto const rho = measurement_model::density(composition(x), t, x[formula]);
        return (x[volume] + x[measure]) / 1e6 * rho;
    }
};

inline constexpr auto strength_of_spirit = [](auto const& x) {
    return 100.0 * measurement_model::volume_fraction(dilution::composition(x));
};
inline constexpr auto water_to_add = [](auto const& x) {
    using T = std::remove_cvref_t<decltype(x[0])>;
    return measurement_model::water_to_add(dilution::mass(x), dilution::composition(x),
                                           measurement_model::mass_fraction(T(0.45)));
};
inline constexpr auto strength_of_product = [](auto const& x) {
    auto const water = x[dilution::water] + x[dilution::balance];
    return 100.0 * measurement_model::volume_fraction(
                       measurement_model::diluted(dilution::mass(x), dilution::composition(x), water));
};

}  // namespace aqueth::test
