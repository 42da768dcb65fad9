/* SPDX-License-Identifier: BSL-1.0 */
/* Every function of the C interface behind one signature, with the ranges of its arguments. */
#ifndef AQUETH_TESTS_FUNCTIONS_H
#define AQUETH_TESTS_FUNCTIONS_H

#include <aqueth/c.h>

struct range {
    double low, high;
    int enumerated;
};

struct function {
    const char* name;
    aqueth_status (*call)(const double* arguments, double* results, aqueth_refusal* refusal);
    aqueth_status (*call_array)(size_t count, const double* const* arguments, const ptrdiff_t* strides,
                                double* const* results, const ptrdiff_t* strides_of_results,
                                unsigned char* refused);
    int arguments;
    int results;
    struct range ranges[16];
};

#include "c_functions.inc"

enum { function_count = (int)(sizeof functions / sizeof functions[0]) };

#endif
