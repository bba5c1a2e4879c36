/* SPDX-License-Identifier: Apache-2.0 */
/* The arguments that all functions of a wheel end take. */
#include "extension.h"

#include <access/detoast.h>
#include <catalog/pg_type.h>
#include <mb/pg_wchar.h>
#include <utils/builtins.h>
#include <utils/date.h>
#include <utils/datetime.h>
#include <utils/lsyscache.h>

#include <string.h>

/* A cell of more bytes is no reading. */
#define TEXT_BYTES_MAX 1000

/* How an argument becomes a text. */
typedef enum argument_kind { ARGUMENT_TEXT, ARGUMENT_LITERAL, ARGUMENT_NUMBER, ARGUMENT_DAY } argument_kind;

/* What is known of the arguments of one call in a query, found once. */
typedef struct call_arguments {
    call_cache cache;
    int count;
    argument_kind kind[SQL_ARGUMENTS];
    FmgrInfo output[SQL_ARGUMENTS]; /* of numbers */
    char texts[SQL_ARGUMENTS * (TEXT_BYTES_MAX + 1)];
} call_arguments;

/* --- Types, once a query ------------------------------------------------------------------------------- */

static void refuse_type(int argument, Oid type)
{
    const char *name = sql_argument_name(argument);
    if (type == FLOAT4OID || type == FLOAT8OID)
        ereport(ERROR, (errcode(ERRCODE_DATATYPE_MISMATCH),
                        errmsg("%s is a %s, which is only nearly what was read", name, format_type_be(type)),
                        errhint("Keep readings as text or numeric.")));
    ereport(ERROR, (errcode(ERRCODE_DATATYPE_MISMATCH),
                    errmsg("%s is a %s, which is no reading", name, format_type_be(type)),
                    errhint("Give it as text, a whole number, numeric or a date.")));
}

static argument_kind find_kind(int argument, Oid type, FmgrInfo *output, MemoryContext memory)
{
    char category;
    bool preferred, is_varlena;
    Oid function;
    switch (type) {
    case TEXTOID: return ARGUMENT_TEXT;
    case UNKNOWNOID: return ARGUMENT_LITERAL;
    case DATEOID: return ARGUMENT_DAY;
    case INT2OID:
    case INT4OID:
    case INT8OID:
    case NUMERICOID:
        getTypeOutputInfo(type, &function, &is_varlena);
        fmgr_info_cxt(function, output, memory);
        return ARGUMENT_NUMBER;
    default: break;
    }
    get_type_category_preferred(type, &category, &preferred);
    if (category != TYPCATEGORY_STRING || get_typlen(type) != -1)
        refuse_type(argument, type);
    return ARGUMENT_TEXT;
}

static call_arguments *find_arguments(FunctionCallInfo fcinfo, int first)
{
    call_arguments *found = fcinfo->flinfo->fn_extra;
    if (found != NULL)
        return found;
    if (get_fn_expr_variadic(fcinfo->flinfo))
        ereport(ERROR, (errcode(ERRCODE_FEATURE_NOT_SUPPORTED), errmsg("an array cannot take the place of arguments")));
    if (PG_NARGS() - first > SQL_ARGUMENTS)
        ereport(ERROR, (errcode(ERRCODE_TOO_MANY_ARGUMENTS), errmsg("there are %d arguments, %d are the most",
                                                                    PG_NARGS() - first, SQL_ARGUMENTS)));
    found = MemoryContextAllocZero(fcinfo->flinfo->fn_mcxt, sizeof *found);
    found->count = PG_NARGS() - first;
    for (int i = 0; i < found->count; i++)
        found->kind[i] = find_kind(i, getBaseType(get_fn_expr_argtype(fcinfo->flinfo, first + i)), &found->output[i],
                                   fcinfo->flinfo->fn_mcxt);
    for (int i = 0; i < found->count; i++)
        found->cache.has_column[i] = !PG_ARGISNULL(first + i) || !get_fn_expr_arg_stable(fcinfo->flinfo, first + i);
    fcinfo->flinfo->fn_extra = found;
    return found;
}

/* --- Values, once a row -------------------------------------------------------------------------------- */

/* Bytes of the database's encoding as zero-terminated UTF-8 at `room`, which has TEXT_BYTES_MAX + 1 bytes. */
static const char *put_cell(const char *bytes, size_t size, char *room)
{
    const int encoding = GetDatabaseEncoding();
    if (size > TEXT_BYTES_MAX)
        return SQL_UNREADABLE;
    memcpy(room, bytes, size);
    room[size] = '\0';
    /* Bytes of no encoding are read as they are. */
    if (encoding == PG_UTF8 || encoding == PG_SQL_ASCII)
        return room;
    const char *converted = pg_server_to_any(room, (int)size, PG_UTF8);
    return converted == room || strlen(converted) <= TEXT_BYTES_MAX ? converted : SQL_UNREADABLE;
}

/* What is too long is not even fetched. */
static const char *put_text(Datum value, char *room)
{
    if (toast_raw_datum_size(value) - VARHDRSZ > TEXT_BYTES_MAX)
        return SQL_UNREADABLE;
    const text *packed = DatumGetTextPP(value);
    return put_cell(VARDATA_ANY(packed), VARSIZE_ANY_EXHDR(packed), room);
}

/* As ISO 8601 has it, whatever the session shows. */
static const char *put_day(DateADT day, char *room)
{
    int year, month, day_of_month;
    if (DATE_NOT_FINITE(day))
        return SQL_UNREADABLE;
    j2date(day + POSTGRES_EPOCH_JDATE, &year, &month, &day_of_month);
    snprintf(room, TEXT_BYTES_MAX, "%04d-%02d-%02d", year, month, day_of_month);
    return room;
}

static const char *put_argument(call_arguments *arguments, int i, Datum value)
{
    char *room = arguments->texts + (size_t)i * (TEXT_BYTES_MAX + 1);
    const char *written;
    switch (arguments->kind[i]) {
    case ARGUMENT_TEXT: return put_text(value, room);
    case ARGUMENT_DAY: return put_day(DatumGetDateADT(value), room);
    case ARGUMENT_LITERAL: written = DatumGetCString(value); break;
    case ARGUMENT_NUMBER: written = OutputFunctionCall(&arguments->output[i], value); break;
    default: return SQL_UNREADABLE;
    }
    return put_cell(written, strlen(written), room);
}

static const rodt_rules *find_rules(const char *id)
{
    const rodt_rules *rules = rodt_rules_find(id != NULL ? id : RODT_DEFAULT_RULES);
    if (rules == NULL)
        ereport(ERROR, (errcode(ERRCODE_INVALID_PARAMETER_VALUE),
                        errmsg("there is no rule set \"%.*s\"", pg_mbcliplen(id, (int)strlen(id), 40), id)));
    return rules;
}

const rodt_rules *read_call(FunctionCallInfo fcinfo, int first, rodt_form *form)
{
    call_arguments *arguments = find_arguments(fcinfo, first);
    const char *rules = NULL;
    memset(form, 0, sizeof *form);
    for (int i = 0; i < arguments->count; i++) {
        const rodt_field field = sql_argument_field(i);
        const char *cell = PG_ARGISNULL(first + i) ? NULL : put_argument(arguments, i, PG_GETARG_DATUM(first + i));
        if (field == RODT_FIELD_NONE)
            rules = cell;
        else
            rodt_form_set(form, field, cell);
    }
    return find_rules(rules);
}

call_cache *cache_of_call(FunctionCallInfo fcinfo) { return &((call_arguments *)fcinfo->flinfo->fn_extra)->cache; }

const char *cell_of_text(Datum value) { return put_text(value, palloc(TEXT_BYTES_MAX + 1)); }

void fail(rodt_status status, const char *sentence)
{
    ereport(ERROR, (errcode(status == RODT_E_RANGE ? ERRCODE_NUMERIC_VALUE_OUT_OF_RANGE : ERRCODE_DATA_EXCEPTION),
                    errmsg("%s", sentence)));
}
