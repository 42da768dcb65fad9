/* SPDX-License-Identifier: BSL-1.0 */
/* Asks the shared library every question of vectors.tsv. usage: check_vectors <vectors.tsv> */
#include "functions.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { most = 16 };

static int numbers_in(const char* text, double* numbers) {
    int count = 0;
    char* end;
    for (; count < most; ++count, text = end) {
        numbers[count] = strtod(text, &end);
        if (end == text) break;
    }
    return count;
}

static int alike(double found, double expected, double tolerance) {
    double const scale = fabs(expected) > 1.0 ? fabs(expected) : 1.0;
    if (expected != expected) return found != found;
    if (fabs(expected) > 1e300) return found == expected;
    return fabs(found - expected) <= tolerance * scale;
}

static const struct function* find(const char* name) {
    size_t k;
    for (k = 0; k < sizeof functions / sizeof functions[0]; ++k)
        if (strcmp(functions[k].name, name) == 0) return &functions[k];
    return NULL;
}

int main(int count, char** words) {
    char line[2048];
    int asked = 0, refused = 0, failed = 0, number = 0;
    FILE* file;
    if (count != 2 || (file = fopen(words[1], "r")) == NULL) {
        fprintf(stderr, "usage: check_vectors <vectors.tsv>\n");
        return 2;
    }
    while (fgets(line, sizeof line, file) != NULL) {
        char* cells[5];
        double arguments[most], expected[most], results[most], tail[most];
        const struct function* f;
        aqueth_refusal why;
        aqueth_status status;
        int k, good;
        ++number;
        if (line[0] == '#' || strncmp(line, "function\t", 9) == 0) continue;
        for (k = 0; k < 5; ++k) cells[k] = strtok(k == 0 ? line : NULL, "\t\n");
        f = cells[4] == NULL ? NULL : find(cells[0]);
        if (f == NULL || numbers_in(cells[1], arguments) != f->arguments) {
            fprintf(stderr, "line %d: no such function or arguments\n", number);
            return 1;
        }
        numbers_in(cells[3], expected);
        numbers_in(cells[4], tail);
        memset(&why, 0, sizeof why);
        why.size = sizeof why;
        status = f->call(arguments, results, &why);
        ++asked;
        if (strcmp(cells[2], "ok") == 0) {
            good = status == AQUETH_OK;
            for (k = 0; k < f->results; ++k) good = good && alike(results[k], expected[k], tail[0]);
        } else {
            ++refused;
            good = status == AQUETH_REFUSED && why.argument == (int)expected[0] &&
                   why.limit == (int)expected[1] && alike(why.lower, tail[0], 1e-9) &&
                   alike(why.upper, tail[1], 1e-9);
            for (k = 0; k < f->results; ++k) good = good && results[k] != results[k];
        }
        if (!good) {
            ++failed;
            fprintf(stderr, "line %d: %s(%s): status %d, first result %.17g\n", number, cells[0], cells[1],
                    (int)status, results[0]);
        }
    }
    fclose(file);
    printf("%d questions, %d of them refused, %d answered wrongly\n", asked, refused, failed);
    return failed != 0 || asked == 0;
}
