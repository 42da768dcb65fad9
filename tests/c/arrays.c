/* SPDX-License-Identifier: BSL-1.0 */
/* Asks every function of the C interface many questions at once, and compares with the answers to one at a time: strides
 * of 0, 1 and 2, a result over an argument, flags of what is refused, calls that cannot be answered. */
#include "../vectors/functions.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

/* more than one block of the library's */
enum { count = 1100, most = 16 };

static double given[most][2 * count];
static double expected[most][count];
static unsigned char expected_refused[count];
static double answers[most][2 * count];
static unsigned char refused[count];
static int failures = 0;

static void fail(const char* function, const char* what, int element) {
    if (++failures < 30) fprintf(stderr, "%s: %s, element %d\n", function, what, element);
}

/* fixed numbers from 0 to 1 that do not repeat */
static double next(void) {
    static unsigned long state = 1;
    state = (1664525UL * state + 1013904223UL) & 0xffffffffUL;
    return (double)state / 4294967296.0;
}

static int alike(double found, double wanted) {
    double const scale = fabs(wanted) > 1.0 ? fabs(wanted) : 1.0;
    if (wanted != wanted) return found != found;
    return fabs(found - wanted) <= 1e-9 * scale;
}

/* The answers one at a time, argument k taken with stride strides[k]. */
static void ask_one_by_one(const struct function* f, const ptrdiff_t* strides) {
    int i, k;
    for (i = 0; i < count; ++i) {
        double arguments[most], results[most];
        aqueth_status status;
        for (k = 0; k < f->arguments; ++k)
            arguments[k] = given[k][f->ranges[k].enumerated ? 0 : i * strides[k]];
        status = f->call(arguments, results, NULL);
        if (status != AQUETH_OK && status != AQUETH_REFUSED) fail(f->name, "a question cannot be asked", i);
        expected_refused[i] = status == AQUETH_REFUSED;
        for (k = 0; k < f->results; ++k) expected[k][i] = results[k];
    }
}

static void compare(const struct function* f, const double* const* results, const ptrdiff_t* strides,
                    const unsigned char* flags, const char* what) {
    int i, k;
    for (i = 0; i < count; ++i) {
        for (k = 0; k < f->results; ++k)
            if (!alike(results[k][i * strides[k]], expected[k][i])) fail(f->name, what, i);
        if (flags != NULL && flags[i] != expected_refused[i]) fail(f->name, "a flag is wrong", i);
    }
}

static int check(const struct function* f) {
    const double* arguments[most];
    double* results[most];
    const double* found[most];
    ptrdiff_t strides[most], result_strides[most];
    int i, k, stride, answered = 0, was_refused = 0;
    for (k = 0; k < f->arguments; ++k) {
        const struct range r = f->ranges[k];
        for (i = 0; i < 2 * count; ++i)
            given[k][i] = r.enumerated ? 1.0 : r.low + (1.04 * next() - 0.02) * (r.high - r.low);
        given[k][0] = r.enumerated ? 1.0 : 0.7 * r.low + 0.3 * r.high;
        given[k][7] = r.enumerated ? 1.0 : (k == 0 ? HUGE_VAL - HUGE_VAL : given[k][7]); /* not a number */
        arguments[k] = given[k];
    }
    for (k = 0; k < f->results; ++k) found[k] = results[k] = answers[k];

    for (stride = 1; stride <= 2; ++stride) {
        for (k = 0; k < most; ++k) strides[k] = result_strides[k] = stride;
        ask_one_by_one(f, strides);
        memset(answers, 0, sizeof answers);
        if (f->call_array(count, arguments, strides, results, result_strides, refused) != AQUETH_OK)
            fail(f->name, "arrays are not accepted", 0);
        compare(f, found, result_strides, refused, stride == 1 ? "stride 1" : "stride 2");
        for (i = 0; i < count; ++i) {
            answered += !expected_refused[i];
            was_refused += expected_refused[i];
        }
        if (stride == 2) /* gaps stay as they are */
            for (k = 0; k < f->results; ++k)
                for (i = 0; i < count; ++i)
                    if (answers[k][2 * i + 1] != 0.0) fail(f->name, "written between elements", i);
    }

    /* one value serves all, and nothing asks for the flags */
    for (k = 0; k < f->arguments; ++k) {
        for (i = 0; i < most; ++i) strides[i] = result_strides[i] = 1;
        strides[k] = 0;
        ask_one_by_one(f, strides);
        if (f->call_array(count, arguments, strides, results, result_strides, NULL) != AQUETH_OK)
            fail(f->name, "a stride of 0 is not accepted", 0);
        compare(f, found, result_strides, NULL, "stride 0");
    }

    /* the first result over the first number among the arguments */
    for (k = 0; f->ranges[k].enumerated; ++k) {}
    for (i = 0; i < most; ++i) strides[i] = result_strides[i] = 1;
    ask_one_by_one(f, strides);
    results[0] = given[k];
    found[0] = given[k];
    if (f->call_array(count, arguments, strides, results, result_strides, refused) != AQUETH_OK)
        fail(f->name, "a result in place is not accepted", 0);
    compare(f, found, result_strides, refused, "in place");
    results[0] = answers[0];

    /* the first result at another place in the first number: it would be read as an argument */
    given[k][0] = given[k][1] = 0.25;
    results[0] = given[k] + 1;
    if (f->call_array(count, arguments, strides, results, result_strides, refused) != AQUETH_BAD_CALL)
        fail(f->name, "a result overlaps an argument", 0);
    if (given[k][1] != 0.25) fail(f->name, "a bad call has written over an argument", 0);
    strides[k] = result_strides[0] = 2; /* columns of one table */
    if (f->call_array(count / 2, arguments, strides, results, result_strides, refused) != AQUETH_OK)
        fail(f->name, "a result between the elements of an argument is not accepted", 0);
    strides[k] = result_strides[0] = 1;
    results[0] = answers[0];

    /* calls that cannot be answered, and one with nothing to do */
    answers[0][0] = 17.0;
    if (f->call_array(0, arguments, strides, results, result_strides, refused) != AQUETH_OK)
        fail(f->name, "no elements are no fault", 0);
    arguments[k] = NULL;
    if (f->call_array(count, arguments, strides, results, result_strides, refused) != AQUETH_BAD_CALL)
        fail(f->name, "NULL for an argument", 0);
    arguments[k] = given[k];
    results[f->results - 1] = NULL;
    if (f->call_array(count, arguments, strides, results, result_strides, refused) != AQUETH_BAD_CALL)
        fail(f->name, "NULL for a result", 0);
    if (answers[0][0] != 17.0) fail(f->name, "a bad call has written", 0);
    for (k = 0; k < f->arguments; ++k) {
        double const before = given[k][0];
        if (!f->ranges[k].enumerated) continue;
        results[f->results - 1] = answers[f->results - 1];
        given[k][0] = 99.0;
        if (f->call_array(count, arguments, strides, results, result_strides, refused) != AQUETH_BAD_CALL)
            fail(f->name, "an unknown code", 0);
        given[k][0] = before;
    }
    if (answered == 0 || was_refused == 0) fail(f->name, "nothing answered or nothing refused", answered);
    return answered;
}

int main(void) {
    int k, answered = 0;
    for (k = 0; k < function_count; ++k) answered += check(&functions[k]);
    printf("%d functions, %d answers compared, %d failures\n", function_count, answered, failures);
    return failures != 0;
}
