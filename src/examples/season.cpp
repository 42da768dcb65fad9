// SPDX-License-Identifier: BSL-1.0
// Lots of 200 L of wash through a pot of 25 L, with tails returned, until a lot is like the one before.
#include <aqueth/aqueth.hpp>

#include <cstdio>

int main() {
    // [body]
    using namespace aqueth;
    auto const lot = wash::of(200.0 * litre, by_volume(9.0), plato(0.0), celsius(20.0));
    still pot{{2.0 * kilowatt, 4000.0 * joule_per_kelvin, 3.0 * watt_per_kelvin}};
    pot.neck = neck::condensing(0.1);
    run_plan strip, spirit;
    strip.ends = {condition::distillate_strength(by_volume(3.0))};
    spirit.cuts = {{condition::collected(150.0 * millilitre), false},
                   {condition::distillate_strength(by_volume(60.0))}};
    spirit.ends = {condition::distillate_strength(by_volume(10.0))};
    season_plan plan{pot, strip, 24.0 * litre, pot, spirit, 24.0 * litre};
    plan.lost = 0.01;
    plan.between_runs = 45.0 * minute;

    auto const s = distil_season(lot, plan, boiling_curve(standard_atmosphere));
    for (std::size_t k = 0; k < 4; ++k) {
        season_cycle const& c = s.cycles[k];
        std::printf(
            "lot %zu   %d spirit runs   hearts %.2f L of %.1f %% vol   returned %.2f L of %.1f %% vol\n",
            k + 1, c.spirit_runs, in(c.hearts.volume(celsius(20.0)), litre), c.hearts.strength().percent(),
            in(c.returned.volume(celsius(20.0)), litre), c.returned.strength().percent());
    }
    std::printf("at last, after %zu lots: %d strips, %d spirit runs, %.0f h, %.0f kWh, %.1f %% in hearts\n",
                s.cycles.size(), s.strips, s.steady().spirit_runs, in(s.duration, hour),
                in(s.energy, kilowatt_hour), 100.0 * s.yield());
    // [body]
}
