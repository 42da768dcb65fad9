// SPDX-License-Identifier: BSL-1.0
// Quantities from texts, into texts, and as numbers of a unit.
#include <aqueth/aqueth.hpp>
#include <aqueth/io.hpp>
#include <aqueth/parse.hpp>

#include <iostream>

int main() {
    // [body]
    using namespace aqueth;
    auto const spirit = parcel::of(parse<units::volume>("2 L"), parse<volume_fraction>("168 proof"),
                                   parse<units::temperature>("88 F"));
    std::cout << spirit << '\n'
              << spirit.volume(celsius(20)) << " at " << celsius(20) << '\n'
              << spirit.strength<us_proof>() << '\n';

    double const millilitres = in(spirit.volume(), millilitre);
    double const degrees = in(spirit.temperature(), fahrenheit);
    double const percent = in(spirit.strength(), by_volume);
    std::cout << millilitres << ", " << degrees << ", " << percent << '\n';

    try {
        std::cout << parse<units::volume>("3 kg");
    } catch (text_error const& error) {
        std::cout << error.what() << '\n';
    }
    // [body]
}
