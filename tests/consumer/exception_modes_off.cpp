// SPDX-License-Identifier: BSL-1.0
#include <aqueth/aqueth.hpp>

double density_without_exceptions(double mass_percent);

double density_without_exceptions(double mass_percent) {
    return aqueth::density(aqueth::by_mass(mass_percent), aqueth::celsius(20.0)).value();
}
