/* SPDX-License-Identifier: Apache-2.0 */
/* Tables without a database: rodt_limits has the rows of every rule set, rodt_finding the parts of one finding. */
#include "extension.h"

#include <stdio.h>
#include <string.h>

SQLITE_EXTENSION_INIT3

/* A cursor of either table. */
typedef struct table_cursor {
    sqlite3_vtab_cursor base;
    size_t rules, row; /* of rodt_limits; row is also the part of a finding */
    rodt_finding finding;
    rodt_error error;
} table_cursor;

static int open_cursor(sqlite3_vtab *table, sqlite3_vtab_cursor **cursor)
{
    table_cursor *made = sqlite3_malloc64(sizeof *made);
    (void)table;
    if (made == NULL)
        return SQLITE_NOMEM;
    memset(made, 0, sizeof *made);
    *cursor = &made->base;
    return SQLITE_OK;
}

static int close_cursor(sqlite3_vtab_cursor *cursor)
{
    sqlite3_free(cursor);
    return SQLITE_OK;
}

static int connect_table(sqlite3 *connection, const char *schema, sqlite3_vtab **table)
{
    const int status = sqlite3_declare_vtab(connection, schema);
    if (status != SQLITE_OK)
        return status;
    *table = sqlite3_malloc64(sizeof **table);
    if (*table == NULL)
        return SQLITE_NOMEM;
    memset(*table, 0, sizeof **table);
    return sqlite3_vtab_config(connection, SQLITE_VTAB_INNOCUOUS);
}

static int disconnect_table(sqlite3_vtab *table)
{
    sqlite3_free(table);
    return SQLITE_OK;
}

/* --- rodt_limits --------------------------------------------------------------------------------------- */

enum { LIMIT_RULES, LIMIT_FAMILY, LIMIT_SIZE, LIMIT_CLASS, LIMIT_RATED, LIMIT_STROKE, LIMIT_FROM, LIMIT_UNTIL,
       LIMIT_SOURCE, LIMIT_EVIDENCE };

static int connect_limits(sqlite3 *connection, void *context, int count, const char *const *arguments,
                          sqlite3_vtab **table, char **said)
{
    (void)context;
    (void)count;
    (void)arguments;
    (void)said;
    return connect_table(connection, "CREATE TABLE limits(rules TEXT, family TEXT, size TEXT, stroke_class TEXT, "
                         "rated_stroke TEXT, stroke_limit TEXT, from_day TEXT, until_day TEXT, source TEXT, "
                         "evidence TEXT)", table);
}

static int plan_limits(sqlite3_vtab *table, sqlite3_index_info *plan)
{
    (void)table;
    plan->estimatedCost = 1000;
    plan->estimatedRows = 1000;
    return SQLITE_OK;
}

/* A rule set without limits of strokes has no row. */
static void skip_empty(table_cursor *cursor)
{
    while (cursor->rules < rodt_rules_count() && cursor->row >= rodt_rules_limit_count(rodt_rules_at(cursor->rules))) {
        cursor->rules++;
        cursor->row = 0;
    }
}

static int filter_limits(sqlite3_vtab_cursor *base, int number, const char *text, int count, sqlite3_value **values)
{
    table_cursor *cursor = (table_cursor *)base;
    (void)number;
    (void)text;
    (void)count;
    (void)values;
    cursor->rules = cursor->row = 0;
    skip_empty(cursor);
    return SQLITE_OK;
}

static int next_limit(sqlite3_vtab_cursor *base)
{
    table_cursor *cursor = (table_cursor *)base;
    cursor->row++;
    skip_empty(cursor);
    return SQLITE_OK;
}

static int after_limits(sqlite3_vtab_cursor *base)
{
    const table_cursor *cursor = (const table_cursor *)base;
    return cursor->rules >= rodt_rules_count();
}

static int limit_number(sqlite3_vtab_cursor *base, sqlite3_int64 *number)
{
    const table_cursor *cursor = (const table_cursor *)base;
    *number = (sqlite3_int64)(cursor->rules << 20 | cursor->row);
    return SQLITE_OK;
}

static void result_day(sqlite3_context *context, rodt_date day)
{
    char text[RODT_DATE_TEXT_SIZE];
    if (rodt_date_format(day, text, sizeof text, NULL) == RODT_OK)
        result_words(context, text);
}

static void result_source(sqlite3_context *context, const rodt_source *source)
{
    char text[RODT_SOURCE_TEXT_SIZE];
    if (source != NULL && rodt_source_format(source, text, sizeof text, NULL) == RODT_OK)
        result_words(context, text);
}

static int limit_column(sqlite3_vtab_cursor *base, sqlite3_context *context, int column)
{
    const table_cursor *cursor = (const table_cursor *)base;
    const rodt_rules *rules = rodt_rules_at(cursor->rules);
    const rodt_limit *row = rodt_rules_limit_at(rules, cursor->row);
    switch (column) {
    case LIMIT_RULES: result_words(context, rodt_rules_id(rules)); break;
    case LIMIT_FAMILY: result_words(context, rodt_family_name((rodt_family)row->family)); break;
    case LIMIT_SIZE: result_words(context, row->size); break;
    case LIMIT_CLASS: result_words(context, rodt_stroke_class_name((rodt_stroke_class)row->stroke_class)); break;
    case LIMIT_RATED: result_exact(context, row->rated_stroke.num, row->rated_stroke.den); break;
    case LIMIT_STROKE: result_exact(context, row->limit.num, row->limit.den); break;
    case LIMIT_FROM: result_day(context, row->from); break;
    case LIMIT_UNTIL: result_day(context, row->until); break;
    case LIMIT_SOURCE: result_source(context, row->source); break;
    default: result_words(context, rodt_evidence_name((rodt_evidence)row->evidence)); break;
    }
    return SQLITE_OK;
}

static const sqlite3_module limits_module = {.xConnect = connect_limits, .xBestIndex = plan_limits,
    .xDisconnect = disconnect_table, .xOpen = open_cursor, .xClose = close_cursor, .xFilter = filter_limits,
    .xNext = next_limit, .xEof = after_limits, .xColumn = limit_column, .xRowid = limit_number};

/* --- rodt_finding -------------------------------------------------------------------------------------- */

enum { PART_NAME, PART_VALUE, PART_COLUMNS };

/* What is said of a row beside the members of its finding. */
enum { SAID_SENTENCE, SAID_ERROR_STATUS, SAID_ERROR_FIELD, SAID_ERROR_COLUMN, SAID_ERROR_TEXT, SAID_END };
static const char *const said_names[SAID_END] = {"sentence", "error_status", "error_field", "error_column",
                                                 "error_text"};

static int connect_finding(sqlite3 *connection, void *context, int count, const char *const *arguments,
                           sqlite3_vtab **table, char **said)
{
    char schema[600] = "CREATE TABLE finding(name TEXT, value TEXT";
    size_t used = strlen(schema);
    (void)context;
    (void)count;
    (void)arguments;
    (void)said;
    for (int i = 0; i < SQL_ARGUMENTS; i++)
        used += (size_t)snprintf(schema + used, sizeof schema - used, ", %s HIDDEN", sql_argument_name(i));
    snprintf(schema + used, sizeof schema - used, ")");
    return connect_table(connection, schema, table);
}

/* Arguments are equalities with hidden columns; bit i of the plan's number is argument i. Where one is not there yet,
 * SQLite is to find another plan. */
static int plan_finding(sqlite3_vtab *table, sqlite3_index_info *plan)
{
    int at[SQL_ARGUMENTS], next = 0;
    (void)table;
    memset(at, -1, sizeof at);
    for (int i = 0; i < plan->nConstraint; i++) {
        const int argument = plan->aConstraint[i].iColumn - PART_COLUMNS;
        if (argument < 0 || plan->aConstraint[i].op != SQLITE_INDEX_CONSTRAINT_EQ)
            continue;
        if (!plan->aConstraint[i].usable)
            return SQLITE_CONSTRAINT;
        at[argument] = i;
    }
    for (int i = 0; i < SQL_ARGUMENTS; i++) {
        if (at[i] < 0)
            continue;
        plan->idxNum |= 1 << i;
        plan->aConstraintUsage[at[i]].argvIndex = ++next;
        plan->aConstraintUsage[at[i]].omit = 1;
    }
    plan->estimatedCost = 50;
    plan->estimatedRows = 50;
    return SQLITE_OK;
}

static const rodt_member *part_member(size_t part) { return rodt_member_at(rodt_record_find("rodt_finding"), part); }

/* Arrays, reserves and rows of tables have no text. */
static bool has_text(const rodt_member *member)
{
    return member->count == 1 && member->kind != RODT_MEMBER_KIND_RESERVE &&
           member->kind != RODT_MEMBER_KIND_POINTER &&
           (member->kind != RODT_MEMBER_KIND_RECORD_POINTER || member->record == rodt_record_find("rodt_source"));
}

static void skip_textless(table_cursor *cursor)
{
    const rodt_member *member;
    while ((member = part_member(cursor->row)) != NULL && !has_text(member))
        cursor->row++;
}

static int filter_finding(sqlite3_vtab_cursor *base, int number, const char *text, int count, sqlite3_value **values)
{
    table_cursor *cursor = (table_cursor *)base;
    sqlite3_value *given[SQL_ARGUMENTS] = {NULL};
    char *said = NULL;
    int next = 0;
    (void)text;
    (void)count;
    for (int i = 0; i < SQL_ARGUMENTS; i++) {
        if ((number >> i & 1) != 0)
            given[i] = values[next++];
    }
    const int status = judge_values("rodt_finding", given, &cursor->finding, &cursor->error, &said);
    if (said != NULL) {
        sqlite3_free(base->pVtab->zErrMsg);
        base->pVtab->zErrMsg = said;
    }
    cursor->row = 0;
    skip_textless(cursor);
    return status;
}

static int next_part(sqlite3_vtab_cursor *base)
{
    table_cursor *cursor = (table_cursor *)base;
    cursor->row++;
    skip_textless(cursor);
    return SQLITE_OK;
}

static int after_finding(sqlite3_vtab_cursor *base)
{
    const table_cursor *cursor = (const table_cursor *)base;
    return cursor->row >= rodt_member_count(rodt_record_find("rodt_finding")) + SAID_END;
}

static int part_number(sqlite3_vtab_cursor *base, sqlite3_int64 *number)
{
    const table_cursor *cursor = (const table_cursor *)base;
    *number = (sqlite3_int64)cursor->row;
    return SQLITE_OK;
}

static void result_member(sqlite3_context *context, const rodt_finding *finding, const rodt_member *member)
{
    const rodt_record *record = rodt_record_find("rodt_finding");
    const void *at = (const char *)finding + member->offset;
    char text[RODT_SENTENCE_SIZE];
    rodt_ratio number;
    if (member->kind == RODT_MEMBER_KIND_LENGTH || member->kind == RODT_MEMBER_KIND_PRESSURE ||
        member->kind == RODT_MEMBER_KIND_RATIO) {
        memcpy(&number, at, sizeof number); /* all three are a numerator and a denominator */
        result_exact(context, number.num, number.den);
    } else if (member->kind == RODT_MEMBER_KIND_SET) {
        result_reasons(context, finding);
    } else if (member->kind == RODT_MEMBER_KIND_RECORD_POINTER) {
        const rodt_source *const *source = at;
        result_source(context, *source);
    } else if (rodt_record_text_format(record, finding, member->name, text, sizeof text, NULL) == RODT_OK) {
        result_words(context, text);
    }
}

static void result_said(sqlite3_context *context, const table_cursor *cursor, size_t which)
{
    char text[RODT_SENTENCE_SIZE];
    switch (which) {
    case SAID_SENTENCE:
        if (rodt_finding_format(&cursor->finding, text, sizeof text, NULL) == RODT_OK)
            result_words(context, text);
        break;
    case SAID_ERROR_STATUS: result_words(context, rodt_status_name((rodt_status)cursor->error.status)); break;
    case SAID_ERROR_FIELD: result_words(context, cursor->error.field); break;
    case SAID_ERROR_COLUMN: sqlite3_result_int64(context, cursor->error.column); break;
    default: result_words(context, cursor->error.text); break;
    }
}

/* Hidden columns are arguments; nobody asks them for a value but by name, and then they have none. */
static int finding_column(sqlite3_vtab_cursor *base, sqlite3_context *context, int column)
{
    const table_cursor *cursor = (const table_cursor *)base;
    const rodt_member *member = part_member(cursor->row);
    const size_t which = cursor->row - rodt_member_count(rodt_record_find("rodt_finding"));
    if (column == PART_NAME)
        result_words(context, member != NULL ? member->name : said_names[which]);
    else if (column == PART_VALUE && member != NULL)
        result_member(context, &cursor->finding, member);
    else if (column == PART_VALUE)
        result_said(context, cursor, which);
    return SQLITE_OK;
}

static const sqlite3_module finding_module = {.xConnect = connect_finding, .xBestIndex = plan_finding,
    .xDisconnect = disconnect_table, .xOpen = open_cursor, .xClose = close_cursor, .xFilter = filter_finding,
    .xNext = next_part, .xEof = after_finding, .xColumn = finding_column, .xRowid = part_number};

int register_tables(sqlite3 *connection)
{
    const int status = sqlite3_create_module_v2(connection, "rodt_limits", &limits_module, NULL, NULL);
    return status == SQLITE_OK ? sqlite3_create_module_v2(connection, "rodt_finding", &finding_module, NULL, NULL)
                               : status;
}
