/* SPDX-License-Identifier: Apache-2.0 */
/* Aggregates: the wheel ends of a vehicle counted by the roadside criterion. */
#include "extension.h"

#include <string.h>

SQLITE_EXTENSION_INIT3

typedef struct count_function {
    const char *name;
    void (*result)(sqlite3_context *context, const rodt_count *count);
} count_function;

static void result_outcome(sqlite3_context *context, const rodt_count *count)
{
    result_words(context, rodt_outcome_name((rodt_outcome)count->outcome));
}

static void result_defective(sqlite3_context *context, const rodt_count *count)
{
    result_exact(context, count->defective.num, count->defective.den);
}

static void result_share(sqlite3_context *context, const rodt_count *count)
{
    result_exact(context, count->share.num, count->share.den);
}

static void result_sentence(sqlite3_context *context, const rodt_count *count)
{
    char text[RODT_SENTENCE_SIZE];
    if (rodt_count_format(count, text, sizeof text, NULL) == RODT_OK)
        result_words(context, text);
}

static const count_function count_functions[] = {{"rodt_outcome", result_outcome},
                                                 {"rodt_defective", result_defective},
                                                 {"rodt_share", result_share},
                                                 {"rodt_count", result_sentence}};

static void step_count(sqlite3_context *context, int count, sqlite3_value **values)
{
    const count_function *function = sqlite3_user_data(context);
    rodt_tally *tally = sqlite3_aggregate_context(context, sizeof *tally); /* zeros at first */
    sqlite3_value *given[SQL_ARGUMENTS] = {NULL};
    rodt_finding finding;
    rodt_error error;
    char *said = NULL;
    if (tally == NULL) {
        sqlite3_result_error_nomem(context);
        return;
    }
    for (int i = 0; i < count; i++)
        given[i] = values[i];
    int status = judge_values(function->name, given, &finding, &error, &said);
    if (status == SQLITE_OK && rodt_tally_add(tally, &finding, &error) != RODT_OK) {
        said = sqlite3_mprintf("%s: %s", function->name, error.text);
        status = SQLITE_ERROR;
    }
    if (status != SQLITE_OK)
        result_failure(context, status, said);
}

/* Without a row there is no memory, and no brake. */
static void finish_count(sqlite3_context *context)
{
    const count_function *function = sqlite3_user_data(context);
    const rodt_tally *counted = sqlite3_aggregate_context(context, 0);
    const rodt_tally none = {0};
    rodt_count count;
    rodt_error error;
    if (rodt_tally_judge(counted != NULL ? counted : &none, 0, &count, &error) == RODT_OK)
        function->result(context, &count);
    else
        result_failure(context, SQLITE_ERROR, sqlite3_mprintf("%s: %s", function->name, error.text));
}

int register_vehicles(sqlite3 *connection)
{
    int status = SQLITE_OK;
    for (size_t i = 0; i < sizeof count_functions / sizeof *count_functions; i++) {
        for (int count = RODT_FIELD_NEEDED; count <= SQL_ARGUMENTS && status == SQLITE_OK; count++)
            status = sqlite3_create_function_v2(connection, count_functions[i].name, count, PURE,
                                                (void *)(uintptr_t)&count_functions[i], NULL, step_count, finish_count,
                                                NULL);
    }
    return status;
}
