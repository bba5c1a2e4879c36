/* SPDX-License-Identifier: Apache-2.0 */
/* The arguments that all functions take, and results. */
#include "extension.h"

#include <string.h>

SQLITE_EXTENSION_INIT3

/* A cell of more bytes is no reading. */
#define TEXT_BYTES_MAX 1000

/* --- In ------------------------------------------------------------------------------------------------ */

int value_text(sqlite3_value *value, const char **text)
{
    const int type = value != NULL ? sqlite3_value_type(value) : SQLITE_NULL;
    if (type == SQLITE_FLOAT)
        return SQLITE_ERROR;
    if (type == SQLITE_NULL || type == SQLITE_BLOB) {
        *text = type == SQLITE_NULL ? NULL : SQL_UNREADABLE;
        return SQLITE_OK;
    }
    const char *read = (const char *)sqlite3_value_text(value);
    if (read == NULL)
        return SQLITE_NOMEM;
    const size_t size = (size_t)sqlite3_value_bytes(value);
    /* A zero byte inside would hide what is behind it. */
    *text = size > TEXT_BYTES_MAX || strlen(read) != size ? SQL_UNREADABLE : read;
    return SQLITE_OK;
}

/* The texts as a form, and the rule set. */
static int read_values(const char *function, sqlite3_value *const values[SQL_ARGUMENTS], rodt_form *form,
                       const rodt_rules **rules, char **said)
{
    const char *id = NULL;
    for (int i = 0; i < SQL_ARGUMENTS; i++) {
        const char *text = NULL;
        const int status = value_text(values[i], &text);
        if (status == SQLITE_ERROR)
            *said = sqlite3_mprintf("%s: %s is a REAL, which is only nearly what was read; give it as TEXT", function,
                                    sql_argument_name(i));
        if (status != SQLITE_OK)
            return status;
        if (sql_argument_field(i) == RODT_FIELD_NONE)
            id = text;
        else
            rodt_form_set(form, sql_argument_field(i), text);
    }
    *rules = rodt_rules_find(id != NULL ? id : RODT_DEFAULT_RULES);
    if (*rules != NULL)
        return SQLITE_OK;
    *said = sqlite3_mprintf("%s: there is no rule set \"%!.40s\"", function, id);
    return SQLITE_ERROR;
}

int judge_values(const char *function, sqlite3_value *const values[SQL_ARGUMENTS], rodt_finding *finding,
                 rodt_error *error, char **said)
{
    rodt_form form;
    const rodt_rules *rules = NULL;
    memset(&form, 0, sizeof form);
    *said = NULL;
    const int read = read_values(function, values, &form, &rules, said);
    if (read != SQLITE_OK)
        return read;
    const rodt_status status = rodt_form_judge_row(&form, rules, finding, error);
    if (status == RODT_OK)
        return SQLITE_OK;
    *said = sqlite3_mprintf("%s: %s", function, rodt_status_text(status));
    return SQLITE_ERROR;
}

/* --- Out ----------------------------------------------------------------------------------------------- */

void result_exact(sqlite3_context *context, int64_t num, int64_t den)
{
    char text[SQL_EXACT_SIZE];
    sql_exact_write(num, den, text);
    result_words(context, text);
}

void result_words(sqlite3_context *context, const char *text)
{
    if (text[0] != '\0')
        sqlite3_result_text(context, text, -1, SQLITE_TRANSIENT);
}

void result_reasons(sqlite3_context *context, const rodt_finding *finding)
{
    char text[SQL_REASONS_SIZE];
    sql_reasons_write(finding->reasons, text);
    result_words(context, text);
}

void result_failure(sqlite3_context *context, int status, char *said)
{
    if (status == SQLITE_NOMEM || said == NULL)
        sqlite3_result_error_nomem(context);
    else
        sqlite3_result_error(context, said, -1);
    sqlite3_free(said);
}
