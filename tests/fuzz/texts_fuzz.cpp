// SPDX-License-Identifier: BSL-1.0
// Every parser of one option's text: what it takes is finite and in range, what it refuses is a bad_input.
// The first byte chooses the parser, the rest is the text.
#include "hostile.hpp"

#include "still_program.hpp"
#include "uncertainty_program.hpp"

#include <algorithm>
#include <cmath>
#include <string>

using namespace program;
using aqueth::hostile::bytes;

namespace {

void parse(int which, given const& g) {
    switch (which) {
    case 0: {
        strength const s = read_strength(g);
        HOSTILE_WITHIN(composition(s).value(), 0.0, 1.0);
        return;
    }
    case 1: {
        auto const amount = read_amount(g);
        double const si = std::visit([](auto const& each) { return each.value(); }, amount);
        HOSTILE_WITHIN(si, 1e-9 * (1 - 1e-12), 1e9);
        return;
    }
    case 2: HOSTILE_WITHIN(in(read_volume(g), litre), 1e-6, 1e9); return;
    case 3: HOSTILE_WITHIN(read_temperature(g).celsius(), -20.0, 40.0); return;
    case 4: HOSTILE_REQUIRE(std::isfinite(read_any_temperature(g).celsius())); return;
    case 5: HOSTILE_REQUIRE(std::isfinite(read_water_temperature(g).celsius())); return;
    case 6: read_pressure(g); return;  // its range is that of whoever asks
    case 7: read_altitude(g); return;
    case 8: HOSTILE_WITHIN(read_count(g, 1000), 1, 1000); return;
    case 9: {
        side const s = read_side(g);
        HOSTILE_WITHIN(static_cast<double>(s.numbers.size()), 1.0, 10000.0);
        HOSTILE_REQUIRE(s.numbers.size() == s.values.size());
        for (double const each : s.numbers) HOSTILE_REQUIRE(std::isfinite(each));
        return;
    }
    case 10: {
        notation const n = read_notation(g, g.text);
        HOSTILE_REQUIRE(!name_of(n).empty());
        return;
    }
    case 11: HOSTILE_WITHIN(read_expansion(g).value(), 0.0, 3e-4); return;
    case 12: {
        given const glass{"--glass", "soda-lime", false}, none{"--correction", "", false};
        stem const meter({g, glass, none});
        HOSTILE_REQUIRE(std::isfinite(meter.scale().reference.celsius()));
        HOSTILE_REQUIRE(!on_scale(meter.scale(), 1.0).empty());
        return;
    }
    case 13: {
        given const scale{"--scale", "%vol", false}, glass{"--glass", "soda-lime", false};
        given const none{"--correction", "", false};
        HOSTILE_REQUIRE(std::isfinite(stem({scale, glass, none}).number(g)));
        return;
    }
    case 14: HOSTILE_WITHIN(read_confidence(g), 0.51, 0.999999); return;
    case 15: HOSTILE_WITHIN(read_strength_difference(g), 0.0, 100.0); return;
    case 16: HOSTILE_WITHIN(read_temperature_difference(g), 0.0, 100.0); return;
    case 17: HOSTILE_WITHIN(read_millilitres(g), 0.0, 1e9); return;
    case 18: HOSTILE_WITHIN(read_plain(g, -5.0, 5.0), -5.0, 5.0); return;
    case 19: HOSTILE_REQUIRE(std::isfinite(read_share(g))); return;
    case 20: HOSTILE_WITHIN(read_extract(g).degrees(), -10.0, 70.0); return;
    case 21: {
        // A comma that is read is a decimal sign.
        std::string with_point = g.text;
        std::replace(with_point.begin(), with_point.end(), ',', '.');
        double const volume = read_as<units::volume>(g).value();
        HOSTILE_REQUIRE(std::isfinite(volume));
        HOSTILE_REQUIRE(read_as<units::volume>({g.name, with_point, true}).value() == volume);
        return;
    }
    case 22: {
        // Parts are the text without its separators.
        std::size_t length = 0;
        std::string_view rest = g.text;
        for (std::size_t end; (end = end_of_part(rest, ",;")) != std::string_view::npos;) {
            length += end + 1;
            rest.remove_prefix(end + 1);
        }
        HOSTILE_REQUIRE(length + rest.size() == g.text.size());
        HOSTILE_REQUIRE(std::isfinite(read_as<units::mass>(g).value()));
        return;
    }
    case 23: {
        certificate const certified(g);
        for (double const reading : {-10.0, 0.0, 40.0, 100.0}) {
            double const correction = certified.correction(reading);
            HOSTILE_REQUIRE(std::isfinite(correction));
            HOSTILE_REQUIRE(std::isfinite(certified.reading(reading)));
        }
        return;
    }
    default:
        for (given const& part : parts_of(g)) HOSTILE_REQUIRE(part.text.find(';') == std::string::npos);
        return;
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(std::uint8_t const* data, std::size_t size) {
    bytes in(data, size);
    int const which = in.choice(25);
    given const g{"--option", std::string(in.rest()), true};
    try {
        parse(which, g);
    } catch (bad_input const& refused) {
        // One line, which printing makes of it; what was written is shortened and has no control characters.
        for (char const* c = refused.what(); *c; ++c) HOSTILE_REQUIRE(!is_control(*c));
    }
    return 0;
}
