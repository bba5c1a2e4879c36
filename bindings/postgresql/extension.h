/* SPDX-License-Identifier: Apache-2.0 */
/* What the files of the extension share: arguments in, values out. Only PostgreSQL's memory is used, which an error
 * gives back, and no error leaves a function of the library. */
#ifndef EXTENSION_H
#define EXTENSION_H

#include <postgres.h>

#include <fmgr.h>

#include "sql.h"

/* What most functions tell of a wheel end; those rows that have it in common share one in a cache. */
typedef struct judged {
    uint64_t reasons;
    rodt_length stroke, limit, margin;
    rodt_tally brake; /* this one, counted */
    uint32_t verdict;
    uint32_t defect;
} judged;

/* Of one call in a query, so of one process and one rule set. The rows live until the query ends, however it ends. */
typedef struct call_cache {
    rodt_row_cache *rows;
    const rodt_rules *rules;
    bool has_column[SQL_ARGUMENTS];
    uint64_t calls;
} call_cache;

/*
 * The arguments of a call from number `first` on as a form, and the rule set that they name: the first is the chamber,
 * and the rest follow in the order of sql.h. NULL is not written. The texts are valid until the next call. Ends in an
 * error of SQL for a type that is no text, whole number, numeric or date, and for a rule set that does not exist.
 */
const rodt_rules *read_call(FunctionCallInfo fcinfo, int first, rodt_form *form);

/* The cache of a call that was read. */
call_cache *cache_of_call(FunctionCallInfo fcinfo);

/* Judges the arguments of a call as a row of a file; error gets the first text that could not be read. */
void find_call(FunctionCallInfo fcinfo, int first, rodt_finding *finding, rodt_error *error);

/* The same with a cache. `counts`: defect and brake are asked for, too, which not all rows of one verdict share. */
judged judge_call(FunctionCallInfo fcinfo, int first, bool counts);

/* Ends in an error of SQL, with the library's sentence. */
void fail(rodt_status status, const char *sentence);

/* Values of SQL. A denominator of zero, an empty text and a day that is not given are NULL. */
NullableDatum exact_value(int64_t num, int64_t den);
NullableDatum words_value(const char *text); /* of the library, ASCII */
NullableDatum text_value(const char *text);  /* UTF-8; may quote a cell */
NullableDatum reasons_value(uint64_t reasons);
NullableDatum day_value(rodt_date day);
NullableDatum source_value(const rodt_source *source);

/* What a function returns. */
Datum returned(FunctionCallInfo fcinfo, NullableDatum value);

/* A text as zero-terminated UTF-8 in memory of the call; what no reader takes for one that is too long to be a cell. */
const char *cell_of_text(Datum value);

#endif
