/* SPDX-License-Identifier: BSL-1.0 */
/* The C interface apart from its numbers: refusals and their sentences, structures of the wrong size, NULL, parcels in
 * arrays, runs, and memory that runs out at every moment of a run. */
#include <aqueth/c.h>

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static int failures = 0;
#define CHECK(condition)                                                                \
    do {                                                                                \
        if (!(condition)) {                                                             \
            fprintf(stderr, "%s:%d: not so: %s\n", __FILE__, __LINE__, #condition);     \
            ++failures;                                                                 \
        }                                                                               \
    } while (0)

/* Memory that runs out: allocations fail once `allocations_left` have been made. Only where malloc can be replaced so,
 * and not under a sanitizer, which replaces it already. */
#if defined(__has_feature)
#if __has_feature(address_sanitizer) || __has_feature(thread_sanitizer) || __has_feature(memory_sanitizer)
#define SANITIZED
#endif
#endif
#if defined(__GLIBC__) && !defined(SANITIZED) && !defined(__SANITIZE_ADDRESS__) && !defined(__SANITIZE_THREAD__)
#define MEMORY_CAN_FAIL
static long allocations_left = -1; /* negative: unlimited */
extern void* __libc_malloc(size_t size);
void* malloc(size_t size);
void* malloc(size_t size) {
    if (allocations_left == 0) return NULL;
    if (allocations_left > 0) --allocations_left;
    return __libc_malloc(size);
}
#endif

static void refusals(void) {
    aqueth_refusal why;
    char text[200], part[8];
    double kg_m3 = 1.0;
    size_t length;
    memset(&why, 0, sizeof why);
    CHECK(aqueth_density_kg_m3(0.4, 99.0, &kg_m3, NULL) == AQUETH_REFUSED);
    CHECK(kg_m3 != kg_m3);
    CHECK(aqueth_density_kg_m3(0.4, 20.0, NULL, NULL) == AQUETH_BAD_CALL);
    why.size = sizeof why - 1;
    CHECK(aqueth_density_kg_m3(0.4, 99.0, &kg_m3, &why) == AQUETH_BAD_CALL);
    CHECK(why.value == 0.0); /* nothing written */
    CHECK(aqueth_refusal_text(&why, text, sizeof text) == 0);
    why.size = sizeof why;
    CHECK(aqueth_density_kg_m3(0.4, 99.0, &kg_m3, &why) == AQUETH_REFUSED);
    CHECK(why.argument == AQUETH_ARGUMENT_TEMPERATURE);
    CHECK(why.value == 99.0 && why.lower == -20.0 && why.upper > 82.8 && why.upper < 82.9);
    CHECK(strcmp(aqueth_argument_name(why.argument), "temperature") == 0);
    CHECK(aqueth_argument_name(-1) == NULL && aqueth_argument_name(100000) == NULL);
    CHECK(aqueth_limit_name(-1) == NULL && aqueth_limit_name(100000) == NULL);

    length = aqueth_refusal_text(&why, text, sizeof text);
    CHECK(length == strlen(text));
    CHECK(strncmp(text, "temperature 99 is outside -20 to 82.8", 37) == 0);
    memset(part, 'x', sizeof part);
    CHECK(aqueth_refusal_text(&why, part, 5) == length); /* cut, and closed with a zero */
    CHECK(strcmp(part, "temp") == 0 && part[5] == 'x');
    CHECK(aqueth_refusal_text(&why, NULL, 0) == length);
    CHECK(aqueth_refusal_text(&why, NULL, 5) == 0);
    CHECK(aqueth_refusal_text(NULL, text, sizeof text) == 0);
    CHECK(aqueth_volume_litres(-1.0, 0.4, 20.0, 20.0, &kg_m3, &why) == AQUETH_REFUSED);
    aqueth_refusal_text(&why, text, sizeof text);
    CHECK(strncmp(text, "mass -1 is not a number of at least 0", 37) == 0);
    why.lower = 2.0;
    why.upper = 1.0;
    aqueth_refusal_text(&why, text, sizeof text);
    CHECK(strncmp(text, "mass -1 cannot be met", 21) == 0);
}

static void parcels(void) {
    const double kg[] = {2.0, 0.0, 1.0}, w[] = {0.8, 0.5, 0.1}, celsius[] = {20.0, 20.0, 15.0};
    double product_kg, product_w, product_celsius, contraction, two[4];
    aqueth_refusal why;
    why.size = sizeof why;
    CHECK(aqueth_mix_parcels(3, kg, w, celsius, &product_kg, &product_w, &product_celsius, &contraction, &why) ==
          AQUETH_OK);
    CHECK(aqueth_mix(2.0, 0.8, 20.0, 1.0, 0.1, 15.0, &two[0], &two[1], &two[2], &two[3], &why) == AQUETH_OK);
    CHECK(product_kg == two[0] && fabs(product_w - two[1]) < 1e-15);
    CHECK(fabs(product_celsius - two[2]) < 1e-9 && fabs(contraction - two[3]) < 1e-12);
    CHECK(aqueth_mix_parcels(0, NULL, NULL, NULL, &product_kg, &product_w, &product_celsius, &contraction, &why) ==
          AQUETH_REFUSED);
    CHECK(why.argument == AQUETH_ARGUMENT_NUMBER_OF_PARCELS && product_kg != product_kg);
    CHECK(aqueth_mix_parcels(1, NULL, w, celsius, &product_kg, &product_w, &product_celsius, &contraction, &why) ==
          AQUETH_BAD_CALL);
    CHECK(aqueth_mix_parcels(1, kg, w, celsius, NULL, &product_w, &product_celsius, &contraction, &why) ==
          AQUETH_BAD_CALL);
    CHECK(aqueth_mix_parcels((size_t)-1, kg, w, celsius, &product_kg, &product_w, &product_celsius, &contraction,
                             &why) == AQUETH_NO_MEMORY);
}

/* A small run of the teaching stillhouse of Quillbeck: foreshots by volume, then to 40 % vol at the spout. */
static aqueth_condition cuts[1], ends[1];
static aqueth_plan_step steps[1];
static aqueth_run_options options_of_a_run(void) {
    aqueth_run_options options;
    memset(&options, 0x55, sizeof options);
    options.size = sizeof options;
    CHECK(aqueth_run_options_init(&options) == AQUETH_OK);
    CHECK(options.cuts == NULL && options.end_count == 0 && options.murphree_efficiency == 1.0);
    CHECK(fabs(options.kpa - 101.325) < 1e-12 && options.room_celsius == 20.0);
    options.charge_kg = 20.0;
    options.charge_ethanol_mass_fraction = 0.09;
    options.power_watts = 2000.0;
    options.stages = 2.0;
    options.reflux_ratio = 1.0;
    options.points = 5;
    memset(cuts, 0, sizeof cuts);
    cuts[0].size = sizeof cuts[0];
    cuts[0].watched = AQUETH_WATCHED_COLLECTED_VOLUME;
    cuts[0].value = 0.15;
    cuts[0].discard = 1;
    memset(ends, 0, sizeof ends);
    ends[0].size = sizeof ends[0];
    ends[0].watched = AQUETH_WATCHED_DISTILLATE_STRENGTH;
    ends[0].scale = AQUETH_STRENGTH_SCALE_VOLUME_FRACTION_AT_20_CELSIUS;
    ends[0].value = 0.4;
    options.cuts = cuts;
    options.cut_count = 1;
    options.ends = ends;
    options.end_count = 1;
    return options;
}

/* what aqueth_run_new answers to options, with the run freed */
static aqueth_status outcome(const aqueth_run_options* options, aqueth_refusal* why) {
    aqueth_run* run = (aqueth_run*)&failures; /* must become NULL if there is no run */
    aqueth_status const status = aqueth_run_new(options, &run, why);
    CHECK((run != NULL) == (status == AQUETH_OK));
    aqueth_run_free(run);
    return status;
}

static void runs(void) {
    aqueth_run_options options = options_of_a_run();
    aqueth_run* run = NULL;
    aqueth_run_fraction fractions[2];
    aqueth_run_point points[5], begin, end;
    aqueth_run_residue residue;
    aqueth_run_totals totals;
    struct {
        aqueth_run_point known;
        double later[3]; /* members that a later version of the header has */
    } longer[2];
    aqueth_refusal why;
    why.size = sizeof why;
    CHECK(aqueth_run_new(&options, &run, &why) == AQUETH_OK);
    CHECK(aqueth_run_fraction_count(run) == 2 && aqueth_run_point_count(run) == 5);
    fractions[0].size = sizeof fractions[0];
    CHECK(aqueth_run_get_fractions(run, 0, 2, fractions) == AQUETH_OK);
    CHECK(fractions[1].size == sizeof fractions[1]);
    CHECK(fractions[0].kept == 0 && fractions[1].kept == 1);
    points[0].size = sizeof points[0];
    CHECK(aqueth_run_get_points(run, 0, 5, points) == AQUETH_OK);
    begin.size = end.size = sizeof begin;
    CHECK(aqueth_run_get_fraction_ends(run, 0, &begin, &end) == AQUETH_OK);
    CHECK(begin.seconds == 0.0 && fabs(end.collected_litres - 0.15) < 1e-6);
    CHECK(points[4].distilled_moles > points[3].distilled_moles);
    residue.size = sizeof residue;
    CHECK(aqueth_run_get_residue(run, &residue) == AQUETH_OK);
    CHECK(fabs(residue.kg + fractions[0].kg + fractions[1].kg - 20.0) < 1e-6);
    CHECK(fabs(residue.kg * residue.ethanol_mass_fraction + fractions[0].kg * fractions[0].mass_fraction +
               fractions[1].kg * fractions[1].mass_fraction - 20.0 * 0.09) < 1e-6);
    totals.size = sizeof totals;
    CHECK(aqueth_run_get_totals(run, &totals) == AQUETH_OK);
    CHECK(fabs(totals.supplied_joules - 2000.0 * totals.boiling_seconds) < 1e-3);
    CHECK(fabs(totals.kept_alcohol_litres - fractions[1].pure_alcohol_litres) < 1e-9);
    CHECK(totals.strength_lost_seconds != totals.strength_lost_seconds);

    /* elements of a later version, which are longer: each in its place, what is unknown untouched */
    memset(longer, 0, sizeof longer);
    longer[0].known.size = sizeof longer[0];
    longer[1].later[1] = 5.0;
    CHECK(aqueth_run_get_points(run, 3, 2, &longer[0].known) == AQUETH_OK);
    CHECK(longer[1].known.seconds == points[4].seconds && longer[1].known.size == sizeof longer[0]);
    CHECK(longer[0].later[0] == 0.0 && longer[1].later[1] == 5.0);

    /* NULL, sizes and places */
    CHECK(aqueth_run_get_points(run, 5, 0, NULL) == AQUETH_OK);
    CHECK(aqueth_run_get_points(run, 5, 1, points) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_get_points(run, 1, (size_t)-1, points) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_get_points(run, 0, 1, NULL) == AQUETH_BAD_CALL);
    points[0].size = 8;
    points[0].seconds = -3.0;
    CHECK(aqueth_run_get_points(run, 4, 1, points) == AQUETH_BAD_CALL && points[0].seconds == -3.0);
    CHECK(aqueth_run_get_fractions(run, 2, 1, fractions) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_get_fraction_ends(run, 2, &begin, &end) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_get_fraction_ends(run, 0, NULL, &end) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_get_fraction_ends(run, 0, &begin, NULL) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_get_residue(run, NULL) == AQUETH_BAD_CALL);
    totals.size = 3;
    CHECK(aqueth_run_get_totals(run, &totals) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_get_totals(NULL, &totals) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_get_points(NULL, 0, 0, points) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_fraction_count(NULL) == 0 && aqueth_run_point_count(NULL) == 0);
    aqueth_run_free(run);
    aqueth_run_free(NULL);
    CHECK(aqueth_run_new(&options, NULL, &why) == AQUETH_BAD_CALL);
    CHECK(outcome(NULL, &why) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_options_init(NULL) == AQUETH_BAD_CALL);
    options.size += 8; /* of a later version: its options are unknown here */
    CHECK(outcome(&options, &why) == AQUETH_BAD_CALL);
    CHECK(aqueth_run_options_init(&options) == AQUETH_BAD_CALL);
}

static void refused_runs(void) {
    aqueth_run_options options;
    aqueth_refusal why;
    why.size = sizeof why;
    /* each alone, in a run that is otherwise possible */
#define EXPECT_REFUSED(change, refused)                                                       \
    do {                                                                                      \
        options = options_of_a_run();                                                         \
        change;                                                                               \
        why.argument = -1;                                                                    \
        CHECK(outcome(&options, &why) == AQUETH_REFUSED && why.argument == refused);          \
        CHECK(outcome(&options, NULL) == AQUETH_REFUSED);                                     \
    } while (0)
#define EXPECT_BAD_CALL(change)                                                               \
    do {                                                                                      \
        options = options_of_a_run();                                                         \
        change;                                                                               \
        CHECK(outcome(&options, &why) == AQUETH_BAD_CALL);                                    \
    } while (0)
    EXPECT_REFUSED(options.charge_kg = 0.0, AQUETH_ARGUMENT_MASS_OF_THE_CHARGE);
    EXPECT_REFUSED(options.charge_kg = HUGE_VAL, AQUETH_ARGUMENT_MASS_OF_THE_CHARGE);
    EXPECT_REFUSED(options.charge_ethanol_mass_fraction = 1.5, AQUETH_ARGUMENT_MASS_FRACTION);
    CHECK(why.value == 1.5 && why.lower == 0.0 && why.upper == 1.0);
    EXPECT_REFUSED(options.charge_ethanol_mass_fraction = 0.0, AQUETH_ARGUMENT_STRENGTH_OF_THE_CHARGE);
    CHECK(why.value == 0.0 && why.upper < 1.0 && why.upper > 0.96); /* a fraction: the azeotrope by volume */
    EXPECT_REFUSED(options.charge_plato = 71.0, AQUETH_ARGUMENT_EXTRACT);
    EXPECT_REFUSED(options.charge_celsius = 101.0, AQUETH_ARGUMENT_TEMPERATURE);
    EXPECT_REFUSED(options.power_watts = 0.0, AQUETH_ARGUMENT_POWER);
    EXPECT_REFUSED(options.heat_capacity_j_k = -1.0, AQUETH_ARGUMENT_HEAT_CAPACITY);
    EXPECT_REFUSED(options.heat_loss_w_k = -1.0, AQUETH_ARGUMENT_HEAT_LOSS_COEFFICIENT);
    EXPECT_REFUSED(options.room_celsius = 99.0, AQUETH_ARGUMENT_TEMPERATURE_OF_THE_ROOM);
    EXPECT_REFUSED(options.stages = 101.0, AQUETH_ARGUMENT_NUMBER_OF_STAGES);
    EXPECT_REFUSED(options.stages = 2.5; options.murphree_efficiency = 0.6, AQUETH_ARGUMENT_NUMBER_OF_PLATES);
    EXPECT_REFUSED(options.murphree_efficiency = 1.1, AQUETH_ARGUMENT_MURPHREE_EFFICIENCY);
    EXPECT_REFUSED(options.neck_share = 0.95, AQUETH_ARGUMENT_SHARE_OF_THE_VAPOUR_THAT_CONDENSES);
    EXPECT_REFUSED(options.reflux_ratio = -1.0, AQUETH_ARGUMENT_REFLUX_RATIO);
    EXPECT_REFUSED(options.points = 1, AQUETH_ARGUMENT_NUMBER_OF_POINTS);
    EXPECT_REFUSED(options.kpa = 300.0, AQUETH_ARGUMENT_PRESSURE);
    EXPECT_REFUSED(options.cut_count = 2000, AQUETH_ARGUMENT_NUMBER_OF_CUTS);
    EXPECT_REFUSED(options.end_count = 0, AQUETH_ARGUMENT_NUMBER_OF_ENDS_OF_THE_RUN);
    /* a condition is made with the run's options; its strength is refused as it was given */
    options = options_of_a_run();
    ends[0].value = 0.999;
    CHECK(outcome(&options, &why) == AQUETH_REFUSED);
    CHECK(why.argument == AQUETH_ARGUMENT_STRENGTH_OF_THE_DISTILLATE);
    CHECK(fabs(why.value - 0.999) < 1e-12 && why.lower == 0.0 && why.upper > 0.79 && why.upper < 0.81);
    EXPECT_REFUSED(cuts[0].value = 0.0, AQUETH_ARGUMENT_VOLUME_TO_COLLECT);
    EXPECT_REFUSED(options.reflux = AQUETH_REFLUX_TAKE_OFF, AQUETH_ARGUMENT_TAKE_OFF_RATE);
    EXPECT_REFUSED(options.neck_loss_w_k = 1.0; options.neck_share = 0.1,
                   AQUETH_ARGUMENT_SHARE_OF_THE_VAPOUR_THAT_CONDENSES);
    EXPECT_REFUSED(options.head = AQUETH_HEAD_PARTIAL_CONDENSER; options.head_share = 1.0,
                   AQUETH_ARGUMENT_SHARE_OF_THE_VAPOUR_THAT_CONDENSES);
    EXPECT_REFUSED(options.head = AQUETH_HEAD_PARTIAL_CONDENSER_BY_WATER,
                   AQUETH_ARGUMENT_FLOW_OF_THE_COOLING_WATER);
    EXPECT_REFUSED(options.reflux_celsius = 101.0, AQUETH_ARGUMENT_TEMPERATURE_OF_THE_REFLUX);
    EXPECT_REFUSED(options.start_minutes = -1.0, AQUETH_ARGUMENT_TIME_AT_TOTAL_REFLUX);
    EXPECT_REFUSED(options.spout_celsius = 50.0, AQUETH_ARGUMENT_TEMPERATURE_OF_THE_SPOUT);
    EXPECT_REFUSED(options.step_count = 2000; options.steps = steps, AQUETH_ARGUMENT_NUMBER_OF_STEPS_OF_THE_PLAN);
    EXPECT_BAD_CALL(options.reflux = AQUETH_REFLUX_AS_BEFORE);
    EXPECT_BAD_CALL(options.head = 3);
    EXPECT_BAD_CALL(options.reserved = 1);
    EXPECT_BAD_CALL(options.step_count = 1);
    EXPECT_BAD_CALL(options.step_count = 1; options.steps = steps; memset(steps, 0, sizeof steps));
    EXPECT_BAD_CALL(options.step_count = 1; options.steps = steps; steps[0].size = sizeof steps[0]);
    EXPECT_BAD_CALL(options.flow_model = -1);
    EXPECT_BAD_CALL(options.reflux = AQUETH_REFLUX_CONSTANT_STRENGTH; options.kept_scale = 99);
    EXPECT_BAD_CALL(options.cuts = NULL);
    EXPECT_BAD_CALL(options.ends = NULL);
    EXPECT_BAD_CALL(cuts[0].size = 4);
    EXPECT_BAD_CALL(ends[0].size += 8);
    EXPECT_BAD_CALL(ends[0].watched = 8);
    EXPECT_BAD_CALL(ends[0].scale = -1);
    EXPECT_BAD_CALL(cuts[0].discard = 2);
    options = options_of_a_run();
    why.size = 1;
    CHECK(outcome(&options, &why) == AQUETH_BAD_CALL);
}

static void no_memory(void) {
#if defined(MEMORY_CAN_FAIL)
    aqueth_run_options const options = options_of_a_run();
    double const kg[] = {1.0}, w[] = {0.5}, celsius[] = {20.0};
    double a, b, c, d;
    long allowed;
    aqueth_run* run;
    aqueth_status status = AQUETH_NO_MEMORY;
    for (allowed = 0; status == AQUETH_NO_MEMORY && allowed < 100000; ++allowed) {
        run = (aqueth_run*)&failures;
        allocations_left = allowed;
        status = aqueth_run_new(&options, &run, NULL);
        allocations_left = -1;
        CHECK((run == NULL) == (status == AQUETH_NO_MEMORY));
    }
    CHECK(status == AQUETH_OK && allowed > 5);
    aqueth_run_free(run);
    printf("memory ran out at %ld places of a run\n", allowed - 1);
    allocations_left = 0;
    status = aqueth_mix_parcels(1, kg, w, celsius, &a, &b, &c, &d, NULL);
    allocations_left = -1;
    CHECK(status == AQUETH_NO_MEMORY);
#else
    puts("memory cannot be made to run out here");
#endif
}

int main(void) {
    refusals();
    parcels();
    runs();
    refused_runs();
    no_memory();
    printf("%d failures\n", failures);
    return failures != 0;
}
