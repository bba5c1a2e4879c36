/* SPDX-License-Identifier: Apache-2.0 */
/* Judges calls, with a cache of rows for queries that have many. */
#include "extension.h"

#include <utils/memutils.h>

#include <string.h>

/* A query of fewer rows has no cache, which costs more than they do. */
#define CACHE_FROM 64
#define CACHE_RESULTS 4096
/* Rows between two looks at whether the cache pays. */
#define CACHE_CHUNK 1024

static void judge_form(const rodt_form *form, const rodt_rules *rules, rodt_finding *finding, rodt_error *error)
{
    const rodt_status status = rodt_form_judge_row(form, rules, finding, error);
    if (status != RODT_OK)
        fail(status, rodt_status_text(status));
}

void find_call(FunctionCallInfo fcinfo, int first, rodt_finding *finding, rodt_error *error)
{
    rodt_form form;
    const rodt_rules *rules = read_call(fcinfo, first, &form);
    judge_form(&form, rules, finding, error);
}

static judged result_of(const rodt_finding *finding)
{
    rodt_error error;
    judged result = {.reasons = finding->reasons, .stroke = finding->applied_stroke, .limit = finding->limit,
                     .margin = finding->margin, .verdict = finding->verdict, .defect = rodt_finding_defect(finding)};
    if (rodt_tally_add(&result.brake, finding, &error) != RODT_OK)
        fail((rodt_status)error.status, error.text);
    return result;
}

/* --- The cache ----------------------------------------------------------------------------------------- */

static void free_rows(void *cache) { rodt_row_cache_free(((call_cache *)cache)->rows); }

/* PostgreSQL calls back when the memory of the query goes, also after an error. */
static void open_cache(FunctionCallInfo fcinfo, call_cache *cache, const rodt_rules *rules)
{
    MemoryContextCallback *end = MemoryContextAllocZero(fcinfo->flinfo->fn_mcxt, sizeof *end);
    size_t column[RODT_FIELD_ROOM];
    rodt_form style;
    memset(&style, 0, sizeof style);
    for (size_t i = 0; i < RODT_FIELD_ROOM; i++)
        column[i] = RODT_NO_COLUMN;
    for (int i = 0; i < SQL_ARGUMENTS; i++) {
        if (cache->has_column[i] && sql_argument_field(i) != RODT_FIELD_NONE)
            column[sql_argument_field(i)] = (size_t)i;
    }
    end->func = free_rows;
    end->arg = cache;
    MemoryContextRegisterResetCallback(fcinfo->flinfo->fn_mcxt, end);
    cache->rules = rules;
    if (rodt_row_cache_new(rules, &style, column, sizeof(judged), CACHE_RESULTS, &cache->rows) != RODT_OK)
        cache->rows = NULL; /* without one it is slower */
}

static bool take_hits(void *context, const void *bytes, uint64_t rows)
{
    (void)context;
    (void)bytes;
    (void)rows;
    return true;
}

static bool has_cache(FunctionCallInfo fcinfo, call_cache *cache, const rodt_rules *rules)
{
    cache->calls++;
    if (cache->calls == CACHE_FROM)
        open_cache(fcinfo, cache, rules);
    if (cache->rows == NULL || cache->rules != rules)
        return false;
    if (cache->calls % CACHE_CHUNK == 0) {
        (void)rodt_row_cache_flush(cache->rows, take_hits, NULL);
        (void)rodt_row_cache_begin_chunk(cache->rows);
    }
    return true;
}

static bool find_row(const call_cache *cache, const rodt_form *form, bool counts, judged *result)
{
    rodt_text_span cells[RODT_FIELD_ROOM];
    for (int i = 0; i < SQL_ARGUMENTS; i++) {
        const rodt_field field = sql_argument_field(i);
        const char *text = cache->has_column[i] && field != RODT_FIELD_NONE ? rodt_form_get(form, field) : NULL;
        if (field != RODT_FIELD_NONE)
            cells[field] = (rodt_text_span){text, text != NULL ? strlen(text) : 0};
    }
    rodt_length stroke, margin;
    const judged *found = rodt_row_cache_find_cells(cache->rows, cells);
    if (found == NULL && !counts) {
        found = rodt_row_cache_find_alike_cells(cache->rows, cells, &stroke, &margin);
        if (found != NULL) {
            *result = *found;
            result->stroke = stroke;
            result->margin = margin;
            return true;
        }
    }
    if (found == NULL)
        found = rodt_row_cache_read(cache->rows, cells, form);
    if (found != NULL)
        *result = *found;
    return found != NULL;
}

static void keep_row(const call_cache *cache, const rodt_form *form, bool counts, const judged *result)
{
    judged *kept = rodt_row_cache_keep(cache->rows);
    if (kept != NULL)
        *kept = *result;
    kept = counts ? NULL : rodt_row_cache_keep_alike(cache->rows, form);
    if (kept != NULL)
        *kept = *result;
}

judged judge_call(FunctionCallInfo fcinfo, int first, bool counts)
{
    rodt_form form;
    rodt_finding finding;
    judged result;
    const rodt_rules *rules = read_call(fcinfo, first, &form);
    call_cache *cache = cache_of_call(fcinfo);
    const bool cached = has_cache(fcinfo, cache, rules);
    if (cached && find_row(cache, &form, counts, &result))
        return result;
    judge_form(&form, rules, &finding, NULL);
    result = result_of(&finding);
    if (cached)
        keep_row(cache, &form, counts, &result);
    return result;
}
