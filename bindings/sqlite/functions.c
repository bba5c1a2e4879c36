/* SPDX-License-Identifier: Apache-2.0 */
/* Functions of a wheel end, of single texts, and the order of exact numbers. */
#include "extension.h"

#include <stdlib.h>
#include <string.h>

SQLITE_EXTENSION_INIT3

/* --- A wheel end --------------------------------------------------------------------------------------- */

typedef struct finding_function {
    const char *name;
    void (*result)(sqlite3_context *context, const rodt_finding *finding);
} finding_function;

static void result_verdict(sqlite3_context *context, const rodt_finding *finding)
{
    result_words(context, rodt_verdict_name((rodt_verdict)finding->verdict));
}

static void result_stroke(sqlite3_context *context, const rodt_finding *finding)
{
    result_exact(context, finding->applied_stroke.num, finding->applied_stroke.den);
}

static void result_limit(sqlite3_context *context, const rodt_finding *finding)
{
    result_exact(context, finding->limit.num, finding->limit.den);
}

static void result_margin(sqlite3_context *context, const rodt_finding *finding)
{
    result_exact(context, finding->margin.num, finding->margin.den);
}

static void result_defect(sqlite3_context *context, const rodt_finding *finding)
{
    result_words(context, rodt_defect_name(rodt_finding_defect(finding)));
}

static const finding_function finding_functions[] = {
    {"rodt_verdict", result_verdict}, {"rodt_stroke", result_stroke},   {"rodt_limit", result_limit},
    {"rodt_margin", result_margin},   {"rodt_reasons", result_reasons}, {"rodt_defect", result_defect}};

static void call_finding(sqlite3_context *context, int count, sqlite3_value **values)
{
    const finding_function *function = sqlite3_user_data(context);
    sqlite3_value *given[SQL_ARGUMENTS] = {NULL};
    rodt_finding finding;
    rodt_error error;
    char *said;
    for (int i = 0; i < count; i++)
        given[i] = values[i];
    const int status = judge_values(function->name, given, &finding, &error, &said);
    if (status == SQLITE_OK)
        function->result(context, &finding);
    else
        result_failure(context, status, said);
}

/* --- Single texts -------------------------------------------------------------------------------------- */

/* The text of an argument. False: the result is set, to NULL or a failure. */
static bool read_text(sqlite3_context *context, const char *function, sqlite3_value *value, const char **text)
{
    const int status = value_text(value, text);
    if (status == SQLITE_ERROR)
        result_failure(context, status, sqlite3_mprintf("%s: a REAL is only nearly what was read; give it as TEXT",
                                                        function));
    else if (status != SQLITE_OK)
        sqlite3_result_error_nomem(context);
    return status == SQLITE_OK && *text != NULL;
}

/* A fraction whose blank may be lost has no second value here, so the strict reader. */
static void call_length(sqlite3_context *context, int count, sqlite3_value **values)
{
    const char *text, *unit;
    rodt_style style;
    rodt_length length;
    RODT_ENUM32(rodt_unit) written;
    memset(&style, 0, sizeof style);
    if (!read_text(context, "rodt_length", values[0], &text))
        return;
    if (count > 1) {
        if (!read_text(context, "rodt_length", values[1], &unit) ||
            rodt_unit_parse(unit, &style.unit, NULL) != RODT_OK)
            return;
    }
    if (rodt_length_parse_strict_n(text, strlen(text), &style, &length, &written, NULL) == RODT_OK)
        result_exact(context, length.num, length.den);
}

static void call_date(sqlite3_context *context, int count, sqlite3_value **values)
{
    const char *text;
    rodt_date day;
    char written[RODT_DATE_TEXT_SIZE];
    (void)count;
    if (read_text(context, "rodt_date", values[0], &text) && rodt_date_parse(text, &day, NULL) == RODT_OK &&
        rodt_date_format(day, written, sizeof written, NULL) == RODT_OK)
        result_words(context, written);
}

/* --- Exact numbers ------------------------------------------------------------------------------------- */

/* Exact numbers by their value, and after them every other text by its bytes. */
static int compare_exact(void *context, int a_size, const void *a, int b_size, const void *b)
{
    rodt_ratio first, second;
    const bool is_first = sql_exact_read(a, (size_t)a_size, &first);
    const bool is_second = sql_exact_read(b, (size_t)b_size, &second);
    (void)context;
    if (is_first && is_second)
        return rodt_ratio_compare(first, second);
    if (is_first != is_second)
        return is_first ? -1 : 1;
    const int shorter = a_size < b_size ? a_size : b_size;
    const int order = shorter > 0 ? memcmp(a, b, (size_t)shorter) : 0;
    return order != 0 ? order : a_size - b_size;
}

/* As a tape is read: "2 9/16". */
static void call_length_format(sqlite3_context *context, int count, sqlite3_value **values)
{
    const char *text;
    rodt_ratio number;
    char written[RODT_LENGTH_TEXT_SIZE];
    (void)count;
    if (!read_text(context, "rodt_length_format", values[0], &text) || !sql_exact_read(text, strlen(text), &number))
        return;
    const rodt_length length = {number.num, number.den};
    if (rodt_length_format(length, written, sizeof written, NULL) == RODT_OK)
        result_words(context, written);
}

static void call_tables_edition(sqlite3_context *context, int count, sqlite3_value **values)
{
    (void)count;
    (void)values;
    result_words(context, rodt_tables_edition());
}

/* --- All of them --------------------------------------------------------------------------------------- */

static int register_finding_functions(sqlite3 *connection)
{
    int status = SQLITE_OK;
    for (size_t i = 0; i < sizeof finding_functions / sizeof *finding_functions; i++) {
        /* For SQLite's own sentence on a wrong number of arguments, each number by itself. The pointer is only read. */
        for (int count = RODT_FIELD_NEEDED; count <= SQL_ARGUMENTS && status == SQLITE_OK; count++)
            status = sqlite3_create_function_v2(connection, finding_functions[i].name, count, PURE,
                                                (void *)(uintptr_t)&finding_functions[i], call_finding, NULL, NULL,
                                                NULL);
    }
    return status;
}

int register_functions(sqlite3 *connection)
{
    static const struct {
        const char *name;
        int count;
        void (*call)(sqlite3_context *, int, sqlite3_value **);
    } texts[] = {{"rodt_length", 1, call_length},
                 {"rodt_length", 2, call_length},
                 {"rodt_length_format", 1, call_length_format},
                 {"rodt_date", 1, call_date},
                 {"rodt_tables_edition", 0, call_tables_edition}};
    int status = register_finding_functions(connection);
    for (size_t i = 0; i < sizeof texts / sizeof *texts && status == SQLITE_OK; i++)
        status = sqlite3_create_function_v2(connection, texts[i].name, texts[i].count, PURE, NULL, texts[i].call, NULL,
                                            NULL, NULL);
    return status == SQLITE_OK ? sqlite3_create_collation_v2(connection, "rodt_exact", SQLITE_UTF8, NULL, compare_exact,
                                                             NULL)
                               : status;
}
