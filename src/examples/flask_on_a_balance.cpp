// SPDX-License-Identifier: BSL-1.0
// A strength from three weighings of a flask: empty, with water, with spirit.
#include <aqueth/pycnometer.hpp>
#include <aqueth/strength.hpp>

#include <cstdio>

int main() {
    using namespace aqueth;
    pycnometer const flask{58.42 * gram, 158.13 * gram, celsius(20.0), 149.61 * gram, celsius(21.0)};
    std::printf("The flask holds %.2f mL at 20 °C.\n", in(flask.volume(), millilitre));
    std::printf("The spirit has %.2f kg/m3 at 21 °C: %.2f %% vol.\n", flask.density().value(),
                to<volume_fraction>(flask.composition()).percent());
}
