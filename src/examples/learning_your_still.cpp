// SPDX-License-Identifier: BSL-1.0
// What a still really does, from the log of a run: this header needs Eigen beside Boost.
#include <aqueth/still/learning.hpp>

#include <cstdio>
#include <span>
#include <vector>

namespace {

// [body]
using namespace aqueth;

// a pot still with a long neck; the readings are invented
char const* const log_of_saturday = R"(time_min,collected_ml,strength_percent_vol,pot_temperature_c
8,500,58.5,92.2
16,1010,56.0,92.1
24,1500,53.5,93.2
33,2000,50.0,95.0
43,2500,47.5,94.6
52,3000,42.5,95.6
60,3500,39.5,96.3
70,4010,35.0,97.0
)";

void learn() {
    boiling_curve const curve(standard_atmosphere);
    run_log log{wash::of(parcel::of(25.0 * litre, by_volume(11), celsius(20))), {}, 2.0 * kilowatt};
    log.rows = parse_run_log(log_of_saturday).rows;
    std::vector<still_unknown> const unknowns{{still_figure::neck_share}, {still_figure::pot_loss}};
    still const pot_still{{2.0 * kilowatt}};
    learned_still const learned =
        learn_still(pot_still, std::span<run_log const>(&log, 1), std::span<still_unknown const>(unknowns),
                    log_uncertainties{}, curve);
    for (learned_figure const& f : learned.figures) {
        std::printf("%-10s %.3f, standard uncertainty %.3f, 95 %%: %.3f to %.3f %s\n", name_of(f.what),
                    f.value, f.uncertainty, f.lowest, f.highest, unit_of(f.what));
    }
    std::printf("correlation %.2f; chi-squared %.1f with %.0f degrees of freedom\n",
                learned.correlations[0][1], learned.chi_squared, learned.degrees_of_freedom);
    for (alike_figures const& a : learned.not_told_apart)
        std::printf("%s: %s\n", in_words(a).c_str(), remedy_for(a).c_str());

    // the still found is ready for the next forecast
    run_plan plan;
    plan.ends = {condition::distillate_strength(by_volume(20))};
    still next = learned.found;
    next.pot.power = 2.0 * kilowatt;
    distillation const forecast = distil(log.charge, next, plan, curve);
    std::printf("next run: %.2f L of %.1f %% vol\n",
                in(forecast.fractions[0].product.volume(celsius(20)), litre),
                forecast.fractions[0].product.strength().percent());
}
// [body]

}  // namespace

int main() { learn(); }
