/* SPDX-License-Identifier: Apache-2.0 */
/* Chunks judged by plans of the library. A plan is for one thread at a time, and DuckDB does not say which thread it
 * calls: so workers lie in a pool, and a call takes one out of it. */
#include "extension.h"

#include <stdatomic.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/* --- The pool ------------------------------------------------------------------------------------------ */

/* Workers that no call uses; they are kept until the program ends. */
#define POOL 64
static _Atomic(worker *) pool[POOL];

static worker *new_worker(void)
{
    worker *made = calloc(1, sizeof *made);
    if (made == NULL)
        return NULL;
    made->plans = calloc(rodt_rules_count(), sizeof *made->plans);
    if (made->plans != NULL)
        return made;
    free(made);
    return NULL;
}

static void free_worker(worker *of)
{
    for (size_t i = 0; i < rodt_rules_count(); i++)
        rodt_text_plan_free(of->plans[i]);
    for (int i = 0; i < SQL_ARGUMENTS; i++) {
        free(of->in.room[i]);
        free(of->texts_in.room[i]);
    }
    free_chunk(&of->kept);
    free(of->plans);
    free(of->judged);
    free(of);
}

/* Where a thread looks first: mostly it finds the worker that it had before, which knows its chunk. */
static size_t first_place(void)
{
    static _Thread_local char here;
    return (size_t)(((uint64_t)(uintptr_t)&here * UINT64_C(0x9E3779B97F4A7C15)) >> 32) % POOL;
}

worker *take_worker(void)
{
    const size_t first = first_place();
    for (size_t i = 0; i < POOL; i++) {
        _Atomic(worker *) *place = &pool[(first + i) % POOL];
        worker *found = atomic_load_explicit(place, memory_order_relaxed) != NULL ? atomic_exchange(place, NULL) : NULL;
        if (found != NULL)
            return found;
    }
    return new_worker();
}

void give_worker(worker *of)
{
    const size_t first = first_place();
    for (size_t i = 0; i < POOL; i++) {
        worker *none = NULL;
        if (atomic_compare_exchange_strong(&pool[(first + i) % POOL], &none, of))
            return;
    }
    free_worker(of);
}

/* --- Rule sets ----------------------------------------------------------------------------------------- */

/* The rule set that a cell names. A zero byte inside would hide what is behind it. */
static const rodt_rules *find_rules(rodt_text_span cell)
{
    char id[100];
    if (cell.text == NULL)
        return rodt_rules_find(RODT_DEFAULT_RULES);
    if (cell.size >= sizeof id || memchr(cell.text, '\0', cell.size) != NULL)
        return NULL;
    memcpy(id, cell.text, cell.size);
    id[cell.size] = '\0';
    return rodt_rules_find(id);
}

static bool say_no_rules(worker *of, rodt_text_span cell)
{
    snprintf(of->said, sizeof of->said, "%s: there is no rule set \"%.*s\"", of->function,
             shown_bytes(cell.text, cell.size), cell.text);
    return false;
}

static bool same_text(rodt_text_span a, rodt_text_span b)
{
    return a.size == b.size && (a.text == NULL) == (b.text == NULL) &&
           (a.size == 0 || memcmp(a.text, b.text, a.size) == 0);
}

/* Rows one after the other that are judged by one rule set. */
typedef struct run {
    idx_t first, rows;
    const rodt_rules *rules;
} run;

static bool next_run(worker *of, run *at)
{
    at->first += at->rows;
    at->rows = of->rows - at->first;
    const rodt_text_span cell = rodt_text_cells_at(&of->in.rules, at->first);
    at->rules = find_rules(cell);
    if (at->rules == NULL)
        return say_no_rules(of, cell);
    if (of->in.rules.layout == RODT_TEXT_LAYOUT_ABSENT)
        return true;
    at->rows = 1;
    while (at->first + at->rows < of->rows &&
           same_text(cell, rodt_text_cells_at(&of->in.rules, at->first + at->rows)))
        at->rows++;
    return true;
}

/* --- Chunks -------------------------------------------------------------------------------------------- */

static bool say_status(worker *of, const char *sentence)
{
    snprintf(of->said, sizeof of->said, "%s: %s", of->function, sentence);
    return false;
}

static rodt_text_plan *plan_of(worker *of, const rodt_rules *rules)
{
    size_t number = 0;
    while (rodt_rules_at(number) != rules)
        number++;
    if (of->plans[number] == NULL && rodt_text_plan_new(rules, NULL, &of->plans[number], NULL) != RODT_OK)
        return NULL;
    return of->plans[number];
}

static bool judge_run(worker *of, const run *at)
{
    rodt_text_plan *plan = plan_of(of, at->rules);
    rodt_text_columns columns = of->in.columns;
    rodt_error error;
    const idx_t first = at->first;
    const rodt_column_out out = {.stroke = of->out.stroke + first,
                                 .limit = of->out.limit + first,
                                 .stroke_parts = of->out.parts + first,
                                 .verdict = of->out.verdict + first,
                                 .reasons = of->out.reasons + first};
    if (plan == NULL)
        return say_status(of, rodt_status_text(RODT_E_MEMORY));
    for (int i = 0; i < RODT_READING_FIELDS; i++) {
        columns.field[i].from += first;
        columns.field[i].valid.from += first;
    }
    for (idx_t row = first; row < first + at->rows; row++)
        of->rules[row] = at->rules;
    return rodt_text_plan_judge(plan, &columns, at->rows, &out, &error) == RODT_OK || say_status(of, error.text);
}

bool judge_chunk(worker *of, const char *function, duckdb_data_chunk chunk)
{
    run at = {0};
    of->function = function;
    if (look_at_arguments(function, chunk, &of->in, of->said) != NULL)
        return false;
    of->rows = of->in.rows;
    if (is_repeated(&of->kept, &of->in)) {
        read_again(&of->in);
        return true;
    }
    const bool is_worth_it = begin_chunk(&of->kept, function, &of->in);
    if (read_arguments(function, &of->in, of->said) != NULL)
        return false;
    of->judged_count = 0;
    memset(of->judged_at, 0, sizeof of->judged_at);
    while (at.first + at.rows < of->rows) {
        if (!next_run(of, &at) || !judge_run(of, &at))
            return false;
    }
    if (is_worth_it)
        keep_chunk(&of->kept, &of->in);
    return true;
}

/* --- One row ------------------------------------------------------------------------------------------- */

/* A longer cell is unreadable, as in columns of texts. */
#define CELL_SIZE 256

static bool is_blank(rodt_text_span cell)
{
    for (size_t i = 0; i < cell.size; i++) {
        if (cell.text[i] == '\0' || strchr(" \t\r\n\v\f", cell.text[i]) == NULL)
            return false;
    }
    return true;
}

/* A copy closed by a zero byte; one that cannot be made is a text that no reader takes. NULL = nothing. */
static const char *close_cell(rodt_text_span cell, char *room)
{
    if (cell.text == NULL || is_blank(cell))
        return NULL;
    if (cell.size >= CELL_SIZE || memchr(cell.text, '\0', cell.size) != NULL)
        return SQL_UNREADABLE;
    memcpy(room, cell.text, cell.size);
    room[cell.size] = '\0';
    return room;
}

static rodt_status judge_texts(const worker *of, idx_t row, judged_row *out)
{
    char room[RODT_READING_FIELDS][CELL_SIZE];
    rodt_form form;
    memset(&form, 0, sizeof form);
    for (int i = 0; i < RODT_READING_FIELDS; i++)
        rodt_form_set(&form, (rodt_field)i, close_cell(rodt_text_cells_at(&of->in.columns.field[i], row), room[i]));
    return rodt_form_judge_row(&form, of->rules[row], &out->finding, &out->error);
}

const judged_row *judge_row(worker *of, idx_t row)
{
    if (of->judged_at[row] != 0)
        return &of->judged[of->judged_at[row] - 1];
    if (of->judged == NULL)
        of->judged = malloc(ROWS * sizeof *of->judged);
    judged_row *place = of->judged == NULL ? NULL : &of->judged[of->judged_count];
    const rodt_status status = place == NULL ? RODT_E_MEMORY : judge_texts(of, row, place);
    if (status != RODT_OK) {
        say_status(of, rodt_status_text(status));
        return NULL;
    }
    of->judged_at[row] = ++of->judged_count;
    return place;
}

/* A verdict alone says how a brake counts, unless its stroke is over. Then the limit counts: the rule sets of the
 * library are the law itself, so the one that judged is the law's, if no mark contradicts it. */
bool judge_defect(worker *of, idx_t row, rodt_finding *finding)
{
    const int32_t stroke = of->out.stroke[row], limit = of->out.limit[row];
    const uint64_t reasons = of->out.reasons[row];
    memset(finding, 0, sizeof *finding);
    finding->verdict = of->out.verdict[row];
    if (finding->verdict != RODT_VERDICT_OUT_OF_ADJUSTMENT)
        return true;
    if ((reasons & RODT_REASON_BIT(RODT_REASON_CONFLICTING_MARKS)) != 0 || stroke == RODT_COLUMN_NO_STROKE ||
        limit == RODT_COLUMN_NO_LIMIT ||
        rodt_length_from_inches(stroke, RODT_COLUMN_PER_INCH, &finding->applied_stroke) != RODT_OK ||
        rodt_length_from_inches(limit, RODT_COLUMN_PER_INCH, &finding->law_limit) != RODT_OK) {
        const judged_row *judged = judge_row(of, row);
        if (judged != NULL)
            *finding = judged->finding;
        return judged != NULL;
    }
    finding->reasons = reasons;
    finding->rules = of->rules[row];
    return true;
}
