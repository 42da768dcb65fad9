/* SPDX-License-Identifier: BSL-1.0 */
/* The functions of the C interface as SQL functions of SQLite: aqueth_<function>(...), or aqueth_<function>_<result>(...)
 * where a function has several results. A NULL among the arguments gives NULL. A refusal gives NULL, and
 * aqueth_reason('<SQL function>', <the same arguments>) gives the reason. All functions depend on their arguments alone,
 * so that an index and a generated column may use them. functions.inc is made from src/c/functions.tsv. */
#include <aqueth/c.h>

#include <sqlite3ext.h>
#include <stddef.h>
#include <string.h>
SQLITE_EXTENSION_INIT1

enum { most_arguments = 16, most_results = 16 };

struct code {
    const char* name;
    int number;
};

struct argument {
    const char* name;
    const char* enumeration; /* NULL for a number */
    const struct code* codes;
};

struct function {
    const char* name;
    aqueth_status (*call)(const double* arguments, double* results, aqueth_refusal* refusal);
    int result; /* which of the results this SQL function gives */
    int count;
    const struct argument* arguments;
};

#include "functions.inc"

enum { function_count = sizeof functions / sizeof functions[0] };

enum reading { readable, is_null, no_number, no_code };

/* A code by its name or its number. */
static int find_code(const struct argument* argument, sqlite3_value* value, double* found) {
    const struct code* code;
    if (sqlite3_value_type(value) == SQLITE_TEXT) {
        const char* const name = (const char*)sqlite3_value_text(value);
        for (code = argument->codes; name != NULL && code->name != NULL; ++code)
            if (strcmp(code->name, name) == 0) {
                *found = code->number;
                return 1;
            }
    }
    if (sqlite3_value_numeric_type(value) == SQLITE_INTEGER || sqlite3_value_type(value) == SQLITE_FLOAT) {
        *found = sqlite3_value_double(value);
        for (code = argument->codes; code->name != NULL; ++code)
            if (!(code->number < *found) && !(code->number > *found)) return 1;
    }
    return 0;
}

/* The arguments as numbers; *where is the one that cannot be read. */
static enum reading read_arguments(const struct function* f, sqlite3_value** values, double* numbers,
                                   int* where) {
    int k;
    for (k = 0; k < f->count; ++k)
        if (sqlite3_value_type(values[k]) == SQLITE_NULL) return is_null;
    for (k = 0; k < f->count; ++k) {
        *where = k;
        if (f->arguments[k].codes != NULL) {
            if (!find_code(&f->arguments[k], values[k], &numbers[k])) return no_code;
        } else {
            int const type = sqlite3_value_numeric_type(values[k]);
            if (type != SQLITE_INTEGER && type != SQLITE_FLOAT) return no_number;
            numbers[k] = sqlite3_value_double(values[k]);
        }
    }
    return readable;
}

/* A wrong name of a scale is a fault of the query, not of the data: an error, with the names there are. */
static void report_code(sqlite3_context* context, const struct function* f, int where, sqlite3_value* value) {
    const struct argument* const argument = &f->arguments[where];
    const struct code* code = argument->codes;
    const char* const given = (const char*)sqlite3_value_text(value);
    char* text;
    sqlite3_str* const message = sqlite3_str_new(sqlite3_context_db_handle(context));
    sqlite3_str_appendf(message, "%s: %s '%.40s' is no %s; accepted: ", f->name, argument->name,
                        given == NULL ? "" : given, argument->enumeration);
    for (; code->name != NULL; ++code)
        sqlite3_str_appendf(message, "%s%s", code == argument->codes ? "" : ", ", code->name);
    text = sqlite3_str_finish(message);
    if (text == NULL)
        sqlite3_result_error_nomem(context);
    else
        sqlite3_result_error(context, text, -1);
    sqlite3_free(text);
}

/* Errors that are no refusals. */
static void report_status(sqlite3_context* context, aqueth_status status) {
    if (status == AQUETH_NO_MEMORY)
        sqlite3_result_error_nomem(context);
    else
        sqlite3_result_error(context, "aqueth: internal fault", -1);
}

static void answer(sqlite3_context* context, int count, sqlite3_value** values) {
    const struct function* const f = sqlite3_user_data(context);
    double numbers[most_arguments], results[most_results];
    int where = 0;
    (void)count;
    switch (read_arguments(f, values, numbers, &where)) {
    case readable: {
        aqueth_status const status = f->call(numbers, results, NULL);
        if (status == AQUETH_OK)
            sqlite3_result_double(context,
                                  results[f->result]); /* NaN, which means that there is none, gives NULL */
        else if (status != AQUETH_REFUSED)
            report_status(context, status);
        break;
    }
    case no_code: report_code(context, f, where, values[where]); break;
    case is_null:
    case no_number: break; /* NULL */
    }
}

static void report_refusal(sqlite3_context* context, const double* numbers, const struct function* f) {
    double results[most_results];
    aqueth_refusal why;
    aqueth_status status;
    char text[400];
    memset(&why, 0, sizeof why);
    why.size = sizeof why;
    status = f->call(numbers, results, &why);
    if (status == AQUETH_REFUSED) {
        if (aqueth_refusal_text(&why, text, sizeof text) == 0)
            sqlite3_result_error_nomem(context);
        else
            sqlite3_result_text(context, text, -1, SQLITE_TRANSIENT);
    } else if (status != AQUETH_OK) {
        report_status(context, status);
    }
}

/* aqueth_reason('<SQL function>', arguments): why that call is refused; NULL if it is not. It keeps no state: what the
 * connection called before, in which order and on which thread, is of no account. */
static void reason(sqlite3_context* context, int count, sqlite3_value** values) {
    const char* const name = count > 0 ? (const char*)sqlite3_value_text(values[0]) : NULL;
    const struct function* f = NULL;
    double numbers[most_arguments];
    char* text = NULL;
    int k, where = 0;
    for (k = 0; name != NULL && f == NULL && k < function_count; ++k)
        if (strcmp(functions[k].name, name) == 0) f = &functions[k];
    if (f == NULL) {
        if (name == NULL)
            text = sqlite3_mprintf("aqueth_reason: give the name of a function and its arguments, as in "
                                   "aqueth_reason('aqueth_density_kg_m3', mass_fraction, celsius)");
        else
            text = sqlite3_mprintf("aqueth_reason: there is no function '%.60s'", name);
    } else if (count - 1 != f->count) {
        text = sqlite3_mprintf("aqueth_reason: %s takes %d arguments, not %d", name, f->count, count - 1);
    }
    if (f == NULL || count - 1 != f->count) {
        if (text == NULL)
            sqlite3_result_error_nomem(context);
        else
            sqlite3_result_error(context, text, -1);
        sqlite3_free(text);
        return;
    }
    ++values;
    switch (read_arguments(f, values, numbers, &where)) {
    case readable: report_refusal(context, numbers, f); break;
    case no_number:
        if (sqlite3_value_type(values[where]) == SQLITE_BLOB)
            text = sqlite3_mprintf("%s is a blob, not a number", f->arguments[where].name);
        else
            text = sqlite3_mprintf("%s '%.40s' is not a number", f->arguments[where].name,
                                   (const char*)sqlite3_value_text(values[where]));
        if (text == NULL)
            sqlite3_result_error_nomem(context);
        else
            sqlite3_result_text(context, text, -1, sqlite3_free);
        break;
    case no_code: report_code(context, f, where, values[where]); break;
    case is_null: break;
    }
}

static void version(sqlite3_context* context, int count, sqlite3_value** values) {
    int const number = aqueth_version();
    char text[40];
    (void)count;
    (void)values;
    sqlite3_snprintf(sizeof text, text, "%d.%d.%d", number / 10000, number / 100 % 100, number % 100);
    sqlite3_result_text(context, text, -1, SQLITE_TRANSIENT);
}

#if defined(_WIN32)
#define VISIBLE __declspec(dllexport)
#else
#define VISIBLE __attribute__((visibility("default")))
#endif

/* SQLite derives this name from that of the file, aqueth_sqlite. */
VISIBLE int sqlite3_aquethsqlite_init(sqlite3* database, char** error, const sqlite3_api_routines* api);

int sqlite3_aquethsqlite_init(sqlite3* database, char** error, const sqlite3_api_routines* api) {
    int const pure = SQLITE_UTF8 | SQLITE_DETERMINISTIC | SQLITE_INNOCUOUS;
    int k, status;
    SQLITE_EXTENSION_INIT2(api);
    if (sqlite3_libversion_number() < 3031000) {
        *error = sqlite3_mprintf("aqueth needs SQLite 3.31 or newer, not %s", sqlite3_libversion());
        return SQLITE_ERROR;
    }
    status = sqlite3_create_function_v2(database, "aqueth_reason", -1, pure, NULL, reason, NULL, NULL, NULL);
    if (status == SQLITE_OK)
        status =
            sqlite3_create_function_v2(database, "aqueth_version", 0, pure, NULL, version, NULL, NULL, NULL);
    for (k = 0; status == SQLITE_OK && k < function_count;
         ++k) /* SQLite gives the pointer back, and we only read */
        status = sqlite3_create_function_v2(database, functions[k].name, functions[k].count, pure,
                                            (void*)(size_t)&functions[k], answer, NULL, NULL, NULL);
    return status;
}
