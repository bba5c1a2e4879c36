/* SPDX-License-Identifier: Apache-2.0 */
/* A finding as a row whose columns are named as its members, and the rows of every rule set. */
#include "extension.h"

#include <access/htup_details.h>
#include <catalog/pg_type.h>
#include <funcapi.h>
#include <utils/builtins.h>

#include <string.h>

PG_FUNCTION_INFO_V1(rodtpg_finding);
PG_FUNCTION_INFO_V1(rodtpg_limits);

/* --- A finding ----------------------------------------------------------------------------------------- */

static NullableDatum member_value(const rodt_finding *finding, const rodt_member *member)
{
    const rodt_record *record = rodt_record_find("rodt_finding");
    const void *at = (const char *)finding + member->offset;
    char text[RODT_SENTENCE_SIZE];
    rodt_ratio number;
    rodt_date day;
    switch (member->kind) {
    case RODT_MEMBER_KIND_LENGTH:
    case RODT_MEMBER_KIND_PRESSURE:
    case RODT_MEMBER_KIND_RATIO:
        memcpy(&number, at, sizeof number); /* all three are a numerator and a denominator */
        return exact_value(number.num, number.den);
    case RODT_MEMBER_KIND_DATE: memcpy(&day, at, sizeof day); return day_value(day);
    case RODT_MEMBER_KIND_SET: return reasons_value(finding->reasons);
    case RODT_MEMBER_KIND_RECORD_POINTER: return source_value(*(const rodt_source *const *)at);
    default: break;
    }
    if (rodt_record_text_format(record, finding, member->name, text, sizeof text, NULL) != RODT_OK)
        return words_value("");
    return text_value(text);
}

/* What is said of a row beside the members of its finding. */
static NullableDatum said_value(const char *name, const rodt_finding *finding, const rodt_error *error)
{
    char text[RODT_SENTENCE_SIZE];
    if (strcmp(name, "error_status") == 0)
        return words_value(rodt_status_name((rodt_status)error->status));
    if (strcmp(name, "error_field") == 0)
        return words_value(error->field);
    if (strcmp(name, "error_column") == 0)
        return (NullableDatum){.value = Int32GetDatum((int32)error->column)};
    if (strcmp(name, "error_text") == 0)
        return text_value(error->text);
    if (rodt_finding_format(finding, text, sizeof text, NULL) != RODT_OK)
        return words_value("");
    return text_value(text);
}

Datum rodtpg_finding(PG_FUNCTION_ARGS)
{
    TupleDesc row;
    Datum values[MaxTupleAttributeNumber];
    bool nulls[MaxTupleAttributeNumber];
    rodt_finding finding;
    rodt_error error;
    memset(&error, 0, sizeof error);
    find_call(fcinfo, 0, &finding, &error);
    if (get_call_result_type(fcinfo, NULL, &row) != TYPEFUNC_COMPOSITE)
        ereport(ERROR, (errcode(ERRCODE_DATATYPE_MISMATCH), errmsg("the type rodt_finding is another")));
    for (int i = 0; i < row->natts; i++) {
        const char *name = NameStr(TupleDescAttr(row, i)->attname);
        const rodt_member *member = rodt_member_find(rodt_record_find("rodt_finding"), name);
        const NullableDatum value = member != NULL ? member_value(&finding, member)
                                                   : said_value(name, &finding, &error);
        values[i] = value.value;
        nulls[i] = value.isnull;
    }
    return HeapTupleGetDatum(heap_form_tuple(BlessTupleDesc(row), values, nulls));
}

/* --- Rows of rule sets --------------------------------------------------------------------------------- */

/* Where the next row is. */
typedef struct limits_place {
    size_t rules, row;
} limits_place;

/* In the order of the columns of rodt_limits. */
static Datum limit_row(TupleDesc columns, const rodt_rules *rules, const rodt_limit *limit)
{
    const NullableDatum values[] = {
        words_value(rodt_rules_id(rules)),
        words_value(rodt_family_name((rodt_family)limit->family)),
        words_value(limit->size),
        words_value(rodt_stroke_class_name((rodt_stroke_class)limit->stroke_class)),
        exact_value(limit->rated_stroke.num, limit->rated_stroke.den),
        exact_value(limit->limit.num, limit->limit.den),
        day_value(limit->from),
        day_value(limit->until),
        source_value(limit->source),
        words_value(rodt_evidence_name((rodt_evidence)limit->evidence))};
    Datum datums[lengthof(values)];
    bool nulls[lengthof(values)];
    for (size_t i = 0; i < lengthof(values); i++) {
        datums[i] = values[i].value;
        nulls[i] = values[i].isnull;
    }
    return HeapTupleGetDatum(heap_form_tuple(columns, datums, nulls));
}

static void start_limits(FunctionCallInfo fcinfo)
{
    FuncCallContext *calls = SRF_FIRSTCALL_INIT();
    MemoryContext before = MemoryContextSwitchTo(calls->multi_call_memory_ctx);
    TupleDesc columns;
    if (get_call_result_type(fcinfo, NULL, &columns) != TYPEFUNC_COMPOSITE)
        ereport(ERROR, (errcode(ERRCODE_FEATURE_NOT_SUPPORTED), errmsg("rodt_limits gives rows")));
    calls->tuple_desc = BlessTupleDesc(columns);
    calls->user_fctx = palloc0(sizeof(limits_place));
    MemoryContextSwitchTo(before);
}

Datum rodtpg_limits(PG_FUNCTION_ARGS)
{
    if (SRF_IS_FIRSTCALL())
        start_limits(fcinfo);
    FuncCallContext *calls = SRF_PERCALL_SETUP();
    limits_place *place = calls->user_fctx;
    /* A rule set without limits of strokes has no row. */
    while (place->rules < rodt_rules_count() && place->row >= rodt_rules_limit_count(rodt_rules_at(place->rules))) {
        place->rules++;
        place->row = 0;
    }
    if (place->rules >= rodt_rules_count())
        SRF_RETURN_DONE(calls);
    const rodt_rules *rules = rodt_rules_at(place->rules);
    const rodt_limit *limit = rodt_rules_limit_at(rules, place->row++);
    SRF_RETURN_NEXT(calls, limit_row(calls->tuple_desc, rules, limit));
}
