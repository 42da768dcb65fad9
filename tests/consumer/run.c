/* SPDX-License-Identifier: BSL-1.0 */
/* A run of the teaching stillhouse in C. */
/* [body] */
#include <aqueth/c.h>

#include <stdio.h>
#include <string.h>

static aqueth_condition when(int watched, double value) {
    aqueth_condition condition;
    memset(&condition, 0, sizeof condition);
    condition.size = sizeof condition;
    condition.watched = watched;
    condition.scale = AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_20_CELSIUS;
    condition.value = value;
    return condition;
}

int main(void) {
    aqueth_condition cuts[2], end;
    aqueth_run_options options;
    aqueth_run* run;
    aqueth_refusal why;
    char text[200];
    size_t k;

    cuts[0] = when(AQUETH_WATCHED_COLLECTED_VOLUME, 0.2); /* litres */
    cuts[0].discard = 1;
    cuts[1] = when(AQUETH_WATCHED_DISTILLATE_STRENGTH, 0.60);
    end = when(AQUETH_WATCHED_BOILING_TEMPERATURE, 99.0);

    options.size = sizeof options;
    aqueth_run_options_init(&options);
    options.charge_kg = 24.0;
    options.charge_ethanol_mass_fraction = 0.09;
    options.power_watts = 2000.0;
    options.stages = 4; /* plates, of efficiency 0.6 */
    options.murphree_efficiency = 0.6;
    options.reflux_ratio = 1.0;
    options.cuts = cuts;
    options.cut_count = 2;
    options.ends = &end;
    options.end_count = 1;

    why.size = sizeof why;
    if (aqueth_run_new(&options, &run, &why) != AQUETH_OK) {
        aqueth_refusal_text(&why, text, sizeof text);
        puts(text);
        return 1;
    }
    for (k = 0; k < aqueth_run_fraction_count(run); ++k) {
        aqueth_run_fraction fraction;
        fraction.size = sizeof fraction;
        aqueth_run_get_fractions(run, k, 1, &fraction);
        printf("%.2f L at %.1f %% vol%s\n", fraction.litres, 100.0 * fraction.volume_fraction,
               fraction.kept ? "" : ", discarded");
    }
    aqueth_run_free(run);
    return 0;
}
/* [body] */
